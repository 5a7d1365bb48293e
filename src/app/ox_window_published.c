/* Published holds in the window: asked for, and one of them opened as a case. */
#include "ox_window_private.h"

#include "ox_application.h"
#include "ox_document_places.h"
#include "ox_message_bar.h"
#include "oxbow/text.h"

#define BAR "published"

/* What the record leaves open is said above the board. */
static void say(OxWindow *self, const char *remark) {
  if (*remark)
    ox_message_bar_show(self->above_board, BAR, GTK_MESSAGE_WARNING, remark, NULL, NULL);
  else
    ox_message_bar_hide(self->above_board, BAR);
}

static void chosen_cb(OxPublished *published, gulong index, OxWindow *self) {
  char remark[2 * OX_REMARK_BYTES] = "", why[OX_REMARK_BYTES] = "";
  ox_points points = *ox_document_points(self->document);
  ox_case c;
  ox_fix fix;
  ox_inputs_panel_commit(self->inputs);
  ox_status made = ox_navdata_lesson_case(ox_published_data(published), index, &points, &c, &fix,
                                          remark, sizeof remark);
  if (made == OX_ERROR) {
    ox_published_say(published,
                     _("This hold cannot be read any more: the file has changed since it "
                       "was opened. Open it again."));
    return;
  }
  if (ox_document_add_placed_case(self->document, _("Published Hold"), &points, &c, &fix, why,
                                  sizeof why) == OX_ERROR) {
    ox_published_say(published, why);
    return;
  }
  ox_published_say(published, "");
  say(self, remark);
  gtk_window_close(GTK_WINDOW(published));
  gtk_window_present(GTK_WINDOW(self));
  gtk_widget_grab_focus(GTK_WIDGET(self->board));
}

static void make(OxWindow *self) {
  GtkApplication *application = gtk_window_get_application(GTK_WINDOW(self));
  OxSettings *settings = OX_IS_APPLICATION(application)
                             ? ox_application_settings(OX_APPLICATION(application))
                             : NULL;
  self->published = ox_published_new(GTK_WINDOW(self), settings);
  g_object_add_weak_pointer(G_OBJECT(self->published), (gpointer *)&self->published);
  g_signal_connect_object(self->published, "chosen", G_CALLBACK(chosen_cb), self, 0);
}

static void published_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  if (!self->published) make(self);
  ox_published_open_remembered(self->published);
  ox_published_present(self->published);
}

static const GActionEntry entries[] = {{.name = "published", .activate = published_cb}};

/* What was said of one case is not true of another. */
static void document_changed_cb(OxDocument *document, guint what, OxWindow *self) {
  if (what & (OX_DOCUMENT_LESSON | OX_DOCUMENT_SELECTION)) say(self, "");
}

void ox_window_add_published(OxWindow *self) {
  g_action_map_add_action_entries(G_ACTION_MAP(self), entries, G_N_ELEMENTS(entries), self);
  g_signal_connect_object(self->document, "changed", G_CALLBACK(document_changed_cb), self, 0);
}

OxPublished *ox_window_published(OxWindow *self) { return self->published; }
