/* The picture dragged out of the window by a button of the header bar; pressed, it copies. Not by
 * the board itself, where dragging changes the case. */
#include "ox_window_private.h"

#include "ox_dialogs.h"
#include "ox_drag_picture.h"
#include "ox_preference.h"
#include "oxbow/text.h"

#define THUMB_WIDTH 160
#define THUMB_HEIGHT 120

static char *file_name(OxWindow *self) {
  char *name = ox_prediction_case_name(self->prediction);
  char *file = ox_dialog_file_name(*name ? name : ox_document_title(self->document), ".png");
  g_free(name);
  return file;
}

static GdkContentProvider *prepare_cb(GtkDragSource *source, double x, double y, OxWindow *self) {
  ox_scene shown;
  char *error = NULL, *folder = ox_drag_picture_folder(), *name;
  ox_export_job job = ox_window_share_job(self, &shown);
  name = file_name(self);
  GdkContentProvider *content =
      ox_drag_picture(&job, ox_preference_palette(self->settings), folder, name, &error);
  g_free(error); /* nothing is dragged then, as from any other place of the header bar */
  g_free(folder);
  g_free(name);
  return content;
}

/* What is dragged is seen at the pointer. */
static void begin_cb(GtkDragSource *source, GdkDrag *drag, OxWindow *self) {
  GValue value = G_VALUE_INIT;
  g_value_init(&value, GDK_TYPE_TEXTURE);
  if (gdk_content_provider_get_value(gdk_drag_get_content(drag), &value, NULL)) {
    GtkSnapshot *snapshot = gtk_snapshot_new();
    graphene_rect_t place = GRAPHENE_RECT_INIT(0, 0, THUMB_WIDTH, THUMB_HEIGHT);
    gtk_snapshot_append_texture(snapshot, g_value_get_object(&value), &place);
    GdkPaintable *thumb = gtk_snapshot_free_to_paintable(snapshot, &place.size);
    gtk_drag_source_set_icon(source, thumb, 0, 0);
    g_object_unref(thumb);
  }
  g_value_unset(&value);
}

/* ---- pressed ---------------------------------------------------------------------------- */

/* The press is taken from the start: the header bar around would move the window. So it is taken
 * from the button too, which is told of it here. */
static void pressed_cb(GtkGesture *source, GdkEventSequence *sequence, GtkWidget *button) {
  gtk_gesture_set_state(source, GTK_EVENT_SEQUENCE_CLAIMED);
  gtk_widget_set_state_flags(button, GTK_STATE_FLAG_ACTIVE, FALSE);
}

static void cancelled_cb(GtkGesture *source, GdkEventSequence *sequence, GtkWidget *button) {
  gtk_widget_unset_state_flags(button, GTK_STATE_FLAG_ACTIVE);
}

static void released_cb(GtkGesture *source, GdkEventSequence *sequence, GtkWidget *button) {
  double x, y;
  gboolean dragged = gtk_drag_source_get_drag(GTK_DRAG_SOURCE(source)) != NULL;
  cancelled_cb(source, sequence, button);
  if (!dragged && gtk_gesture_get_point(source, sequence, &x, &y) &&
      gtk_widget_contains(button, x, y))
    g_signal_emit_by_name(button, "clicked");
}

void ox_window_add_drag(OxWindow *self) {
  GtkWidget *button = gtk_button_new_from_icon_name("image-x-generic-symbolic");
  GtkDragSource *source = gtk_drag_source_new();
  gtk_widget_set_tooltip_text(button, _("Copy the Picture, or Drag It to Another Program"));
  gtk_accessible_update_property(GTK_ACCESSIBLE(button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _("Copy the Picture"), -1);
  gtk_actionable_set_action_name(GTK_ACTIONABLE(button), "win.copy-picture");
  gtk_event_controller_set_propagation_phase(GTK_EVENT_CONTROLLER(source), GTK_PHASE_CAPTURE);
  g_signal_connect_object(source, "prepare", G_CALLBACK(prepare_cb), self, 0);
  g_signal_connect_object(source, "drag-begin", G_CALLBACK(begin_cb), self, 0);
  g_signal_connect(source, "begin", G_CALLBACK(pressed_cb), button);
  g_signal_connect(source, "end", G_CALLBACK(released_cb), button);
  g_signal_connect(source, "cancel", G_CALLBACK(cancelled_cb), button);
  gtk_widget_add_controller(button, GTK_EVENT_CONTROLLER(source));
  gtk_header_bar_pack_end(GTK_HEADER_BAR(self->header), button);
}
