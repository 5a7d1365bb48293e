/* What keeps the window's lesson safe: unsaved work is written aside, its file is watched, and the
 * session does not end over it unasked. */
#include "ox_window_private.h"

#include "ox_dialogs.h"
#include "ox_message_bar.h"
#include "oxbow/text.h"

#define FILE_BAR "file"
#define KEEP_BAR "keep"

/* ---- the file --------------------------------------------------------------------------- */

static void reload(OxWindow *self) {
  ox_messages messages = {0};
  ox_inputs_panel_commit(self->inputs);
  ox_status status = ox_document_reload(self->document, &messages);
  if (status == OX_ERROR)
    ox_dialog_messages(GTK_WINDOW(self), _("The lesson could not be opened"), &messages);
  ox_messages_clear(&messages);
}

/* What is here is in no file any more. */
static void keep_mine(OxWindow *self) {
  ox_file_watch_accept(self->watch);
  ox_document_mark_unsaved(self->document);
}

static void file_response_cb(GtkInfoBar *bar, int response, OxWindow *self) {
  if (response == GTK_RESPONSE_ACCEPT)
    reload(self);
  else if (ox_file_watch_state(self->watch) == OX_FILE_CHANGED)
    keep_mine(self);
}

static void show_file_state(OxWindow *self, ox_file_state state) {
  const char *path = ox_document_path(self->document);
  char *name = path ? g_filename_display_basename(path) : g_strdup("");
  gboolean changed = state == OX_FILE_CHANGED;
  char *text = g_strdup_printf(
      changed ? _("“%s” was changed by another program. Reload can be undone.")
              : _("“%s” was removed or renamed by another program. Saving writes it again."), name);
  GtkWidget *bar =
      ox_message_bar_show(self->above_board, FILE_BAR, GTK_MESSAGE_WARNING, text,
                          changed ? _("_Reload") : NULL, changed ? _("_Keep Mine") : NULL);
  g_signal_connect_object(bar, "response", G_CALLBACK(file_response_cb), self, 0);
  g_free(text);
  g_free(name);
}

static void noticed_cb(OxWindow *self) {
  ox_file_state state = ox_file_watch_state(self->watch);
  if (state == OX_FILE_SAME) {
    ox_message_bar_hide(self->above_board, FILE_BAR);
    return;
  }
  if (state == OX_FILE_GONE) ox_document_mark_unsaved(self->document);
  show_file_state(self, state);
}

static void follow_file(OxWindow *self) {
  ox_file_watch_set_path(self->watch, ox_document_path(self->document));
}

static void changed_cb(OxDocument *document, guint what, OxWindow *self) {
  if (what & OX_DOCUMENT_LESSON) follow_file(self);
}

/* Not every file system tells what happens on it. */
static void active_cb(OxWindow *self) {
  if (self->watch && gtk_window_is_active(GTK_WINDOW(self))) ox_file_watch_look(self->watch);
}

/* ---- unsaved changes -------------------------------------------------------------------- */

static void failed_cb(OxAutosave *autosave, const char *why, OxWindow *self) {
  char *text = g_strdup_printf(_("Unsaved changes cannot be kept safe from a crash: %s"), why);
  ox_message_bar_show(self->above_board, KEEP_BAR, GTK_MESSAGE_WARNING, text, NULL, NULL);
  g_free(text);
}

static void modified_cb(OxWindow *self) {
  GtkApplication *application = gtk_window_get_application(GTK_WINDOW(self));
  gboolean modified = ox_document_modified(self->document);
  if (application && modified && self->inhibit_cookie == 0)
    self->inhibit_cookie =
        gtk_application_inhibit(application, GTK_WINDOW(self), GTK_APPLICATION_INHIBIT_LOGOUT,
                                _("A lesson has changes that are not saved"));
  else if (application && !modified && self->inhibit_cookie != 0) {
    gtk_application_uninhibit(application, self->inhibit_cookie);
    self->inhibit_cookie = 0;
  }
  if (!modified) ox_message_bar_hide(self->above_board, KEEP_BAR);
}

void ox_window_add_keeping(OxWindow *self) {
  self->autosave = ox_autosave_new(self->document, NULL);
  self->watch = ox_file_watch_new();
  g_signal_connect_object(self->autosave, "failed", G_CALLBACK(failed_cb), self, 0);
  g_signal_connect_object(self->watch, "noticed", G_CALLBACK(noticed_cb), self,
                          G_CONNECT_SWAPPED);
  g_signal_connect_object(self->document, "settled", G_CALLBACK(changed_cb), self, 0);
  g_signal_connect_object(self->document, "saved", G_CALLBACK(follow_file), self,
                          G_CONNECT_SWAPPED);
  g_signal_connect_object(self->document, "notify::modified", G_CALLBACK(modified_cb), self,
                          G_CONNECT_SWAPPED);
  g_signal_connect(self, "notify::is-active", G_CALLBACK(active_cb), NULL);
}

/* The window goes, and with it what its user gave up or saved. */
void ox_window_end_keeping(OxWindow *self) {
  GtkApplication *application = gtk_window_get_application(GTK_WINDOW(self));
  if (application && self->inhibit_cookie != 0)
    gtk_application_uninhibit(application, self->inhibit_cookie);
  self->inhibit_cookie = 0;
  if (self->autosave) ox_autosave_stop(self->autosave);
  g_clear_object(&self->autosave);
  g_clear_object(&self->watch);
}

gboolean ox_window_restore(OxWindow *self, ox_kept *kept) {
  ox_messages messages = {0};
  ox_lesson *lesson = NULL;
  ox_status status = ox_lesson_read(kept->lesson_path, &lesson, &messages);
  if (status == OX_ERROR) {
    ox_dialog_messages(GTK_WINDOW(self), _("The unsaved changes could not be read"), &messages);
    ox_kept_leave(kept);
  } else {
    ox_document_take_unsaved(self->document, lesson, kept->path);
    ox_autosave_adopt(self->autosave, kept);
  }
  ox_messages_clear(&messages);
  return status != OX_ERROR;
}
