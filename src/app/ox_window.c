/* The window: puts the parts together and keeps the title. */
#include "ox_window_private.h"

#include "app_id.h"
#include "ox_demo.h"
#include "ox_display.h"
#include "ox_keys.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

G_DEFINE_FINAL_TYPE(OxWindow, ox_window, GTK_TYPE_APPLICATION_WINDOW)

#define WIDE_ENOUGH 1100 /* for inputs, board and working side by side */
#define TITLE_BYTES (OX_LESSON_TITLE_BYTES + 64)

static void show_title(OxWindow *self) {
  char title[TITLE_BYTES];
  ox_display_window_title(title, sizeof title, ox_document_title(self->document),
                          ox_document_modified(self->document),
                          ox_document_read_only(self->document));
  gtk_window_set_title(GTK_WINDOW(self), title);
}

static void document_changed_cb(OxDocument *document, guint what, OxWindow *self) {
  ox_window_update_compare(self);
}

static void document_settled_cb(OxDocument *document, guint what, OxWindow *self) {
  if (what & OX_DOCUMENT_LESSON) show_title(self);
  ox_window_update_actions(self);
  ox_window_update_overlays(self);
}

static void inputs_done_cb(OxWindow *self) { gtk_widget_grab_focus(GTK_WIDGET(self->board)); }

static gboolean close_request(GtkWindow *window) {
  OxWindow *self = OX_WINDOW(window);
  ox_window_leave(self, OX_THEN_CLOSE);
  return TRUE; /* closed from there */
}

/* In a narrow window the board needs the room of the working, which F9 brings back. */
static void fold_when_narrow(OxWindow *self) {
  int width, height, dpi = 0;
  GdkRectangle screen;
  g_object_get(gtk_widget_get_settings(GTK_WIDGET(self)), "gtk-xft-dpi", &dpi, NULL);
  double text_scale = MAX(1.0, dpi / (96.0 * 1024.0)); /* large text takes the room as well */
  GdkSurface *surface = gtk_native_get_surface(GTK_NATIVE(self));
  GdkMonitor *monitor =
      gdk_display_get_monitor_at_surface(gdk_surface_get_display(surface), surface);
  gtk_window_get_default_size(GTK_WINDOW(self), &width, &height);
  if (monitor) {
    gdk_monitor_get_geometry(monitor, &screen);
    width = MIN(width, screen.width);
  }
  if (width < WIDE_ENOUGH * text_scale)
    g_action_group_change_action_state(G_ACTION_GROUP(self), "working",
                                       g_variant_new_boolean(FALSE));
}

static void realize(GtkWidget *widget) {
  GTK_WIDGET_CLASS(ox_window_parent_class)->realize(widget);
  fold_when_narrow(OX_WINDOW(widget));
}

static void dispose(GObject *object) {
  OxWindow *self = OX_WINDOW(object);
  if (self->chooser) gtk_native_dialog_destroy(self->chooser);
  g_clear_object(&self->chooser);
  g_clear_pointer(&self->pending_path, g_free);
  g_clear_pointer(&self->then_path, g_free);
  ox_window_end_keeping(self);
  ox_window_end_share(self);
  ox_window_end_time(self);
  if (self->player) ox_player_set_playing(self->player, FALSE);
  G_OBJECT_CLASS(ox_window_parent_class)->dispose(object);
}

static void finalize(GObject *object) {
  OxWindow *self = OX_WINDOW(object);
  g_clear_object(&self->document);
  g_clear_object(&self->player);
  g_clear_object(&self->overlays);
  g_clear_object(&self->prediction);
  g_clear_object(&self->comparisons);
  g_free(self->history_shown);
  ox_bundle_free(self->bundle);
  G_OBJECT_CLASS(ox_window_parent_class)->finalize(object);
}

static void snapshot(GtkWidget *widget, GtkSnapshot *snapshot) {
  OxWindow *self = OX_WINDOW(widget);
  if (!ox_bundle_serves(widget)) {
    GTK_WIDGET_CLASS(ox_window_parent_class)->snapshot(widget, snapshot);
    return;
  }
  if (!self->bundle) self->bundle = ox_bundle_new();
  GtkSnapshot *whole = gtk_snapshot_new();
  GTK_WIDGET_CLASS(ox_window_parent_class)->snapshot(widget, whole);
  GskRenderNode *node = gtk_snapshot_free_to_node(whole);
  if (!node) return;
  GskRenderNode *shown = ox_bundle_make(self->bundle, node);
  gtk_snapshot_append_node(snapshot, shown);
  gsk_render_node_unref(shown);
  gsk_render_node_unref(node);
}

static void ox_window_class_init(OxWindowClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  G_OBJECT_CLASS(class)->finalize = finalize;
  widget_class->realize = realize;
  widget_class->snapshot = snapshot;
  GTK_WINDOW_CLASS(class)->close_request = close_request;
  g_type_ensure(OX_TYPE_BOARD);
  g_type_ensure(OX_TYPE_CASE_BAR);
  g_type_ensure(OX_TYPE_INPUTS_PANEL);
  g_type_ensure(OX_TYPE_TRANSPORT);
  g_type_ensure(OX_TYPE_WORKING_PANEL);
  gtk_widget_class_set_template_from_resource(widget_class, OX_RESOURCES "/ox_window.ui");
  gtk_widget_class_bind_template_child(widget_class, OxWindow, board);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, case_bar);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, inputs);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, transport);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, working);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, header);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, left);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, left_pages);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, left_switcher);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, above_board);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, below_board);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, board_overlay);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, boards);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, working_side);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, open_button);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, save_button);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, recent_button);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, undo_button);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, redo_button);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, history_menu);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, working_button);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, show_button);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, menu_button);
  gtk_widget_class_bind_template_child(widget_class, OxWindow, caution);
}

static void set_label(GtkWidget *widget, const char *label) {
  gtk_accessible_update_property(GTK_ACCESSIBLE(widget), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static void add_help_overlay(OxWindow *self) {
  GtkBuilder *builder = gtk_builder_new_from_resource(OX_RESOURCES "/shortcuts.ui");
  GObject *overlay = gtk_builder_get_object(builder, "help_overlay");
  g_object_set(overlay, "section-name", "flight", NULL); /* what is used most */
  gtk_application_window_set_help_overlay(GTK_APPLICATION_WINDOW(self),
                                          GTK_SHORTCUTS_WINDOW(overlay));
  g_object_unref(builder);
}

static void connect_document(OxWindow *self) {
  g_signal_connect_object(self->document, "changed", G_CALLBACK(document_changed_cb), self, 0);
  g_signal_connect_object(self->document, "settled", G_CALLBACK(document_settled_cb), self, 0);
  g_signal_connect_object(self->document, "notify::title", G_CALLBACK(show_title), self,
                          G_CONNECT_SWAPPED);
  g_signal_connect_object(self->document, "notify::modified", G_CALLBACK(show_title), self,
                          G_CONNECT_SWAPPED);
  ox_case_bar_set_prediction(self->case_bar, self->prediction);
  ox_case_bar_set_document(self->case_bar, self->document);
  ox_inputs_panel_set_document(self->inputs, self->document);
  ox_transport_set_model(self->transport, self->document, self->player);
  ox_board_set_overlays(self->board, self->overlays);
  ox_board_set_prediction(self->board, self->prediction);
  ox_board_set_model(self->board, self->document, self->player);
  ox_working_panel_set_overlays(self->working, self->overlays);
  ox_working_panel_set_document(self->working, self->document);
  g_signal_connect_object(self->inputs, "done", G_CALLBACK(inputs_done_cb), self,
                          G_CONNECT_SWAPPED);
}

static void ox_window_init(OxWindow *self) {
  self->document = ox_document_new();
  self->overlays = ox_overlays_new(self->document); /* hears of a change before the board does */
  self->prediction = ox_prediction_new(self->document); /* likewise */
  self->player = ox_player_new();
  ox_document_take(self->document, ox_demo_lesson(), NULL);
  gtk_widget_init_template(GTK_WIDGET(self));
  gtk_label_set_text(self->caution, ox_words_caution_line());
  gtk_widget_set_tooltip_text(GTK_WIDGET(self->caution), ox_words_caution());
  set_label(self->working_button, _("Working Panel"));
  set_label(GTK_WIDGET(self->recent_button), _("Recent Lessons"));
  set_label(GTK_WIDGET(self->menu_button), _("Main Menu"));
  set_label(GTK_WIDGET(self->show_button), _("Lay More over the Picture"));
  self->settings = ox_settings_new_unkept();
  ox_window_add_actions(self);
  ox_window_add_share(self);
  ox_window_add_drag(self);
  ox_window_add_overlays(self);
  ox_window_add_views(self);
  ox_window_add_published(self);
  ox_window_add_time(self);
  ox_window_add_history(self);
  ox_window_add_keeping(self);
  ox_window_add_cases(self);
  ox_window_add_recent(self);
  ox_window_add_pen(self);
  ox_window_add_predict(self);
  add_help_overlay(self);
  connect_document(self);
  ox_window_add_compare(self);
  ox_window_add_words(self);
  ox_window_add_narrow(self);
  ox_window_add_places(self); /* the last page: their keys count them in this order */
  ox_keys_add(GTK_WIDGET(self), OX_KEYS_WINDOW, GTK_PHASE_BUBBLE);
  ox_keys_add(GTK_WIDGET(self->board), OX_KEYS_FLIGHT, GTK_PHASE_BUBBLE);
  ox_keys_add(GTK_WIDGET(self->board_overlay), OX_KEYS_PICTURE, GTK_PHASE_BUBBLE);
  ox_keys_add(GTK_WIDGET(self->transport), OX_KEYS_FLIGHT, GTK_PHASE_BUBBLE);
  show_title(self);
  ox_window_update_actions(self);
  ox_window_update_overlays(self);
  gtk_window_set_focus(GTK_WINDOW(self), GTK_WIDGET(self->board));
}

OxWindow *ox_window_new(GtkApplication *application) {
  return g_object_new(OX_TYPE_WINDOW, "application", application, NULL);
}

gboolean ox_window_is_pristine(OxWindow *self) {
  return !ox_document_path(self->document) && !ox_document_modified(self->document);
}

void ox_window_set_projector(OxWindow *self, gboolean projector) {
  ox_board_set_projector(self->board, projector);
  if (self->air_board) ox_board_set_projector(self->air_board, projector);
}

void ox_window_set_label_size(OxWindow *self, double px) {
  ox_board_set_label_size(self->board, px);
  if (self->air_board) ox_board_set_label_size(self->air_board, px);
}

OxDocument *ox_window_document(OxWindow *self) { return self->document; }

OxPlayer *ox_window_player(OxWindow *self) { return self->player; }

OxBoard *ox_window_board(OxWindow *self) { return self->board; }

OxInputsPanel *ox_window_inputs(OxWindow *self) { return self->inputs; }

OxTransport *ox_window_transport(OxWindow *self) { return self->transport; }

OxOverlays *ox_window_overlays(OxWindow *self) { return self->overlays; }

OxCasesPanel *ox_window_cases(OxWindow *self) { return self->cases; }

GtkBox *ox_window_messages(OxWindow *self) { return self->above_board; }

GMenuModel *ox_window_show_menu(OxWindow *self) {
  return gtk_menu_button_get_menu_model(self->show_button);
}

OxPen *ox_window_pen(OxWindow *self) { return self->pen; }

OxPrediction *ox_window_prediction(OxWindow *self) { return self->prediction; }

OxAnswerPanel *ox_window_answers(OxWindow *self) { return self->answers; }

OxWorkingPanel *ox_window_working(OxWindow *self) { return self->working; }
