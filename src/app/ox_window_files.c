/* The window's files: open, save, and what becomes of changes that are not saved. */
#include "ox_window_private.h"

#include "ox_dialogs.h"
#include "oxbow/text.h"

/* What is being typed counts. */
static void commit(OxWindow *self) {
  ox_inputs_panel_commit(self->inputs);
  ox_cases_panel_commit(self->cases);
}

/* ---- going on --------------------------------------------------------------------------- */

/* Does what waited for the unsaved changes. The window may be gone afterwards. */
static void go_on(OxWindow *self) {
  ox_window_then then = self->then;
  GtkApplication *application = gtk_window_get_application(GTK_WINDOW(self));
  self->then = OX_THEN_NOTHING;
  switch (then) {
  case OX_THEN_NOTHING:
    break;
  case OX_THEN_NEW:
    ox_window_new_lesson(self);
    break;
  case OX_THEN_OPEN:
    ox_window_open(self);
    break;
  case OX_THEN_OPEN_PATH: {
    char *path = g_steal_pointer(&self->then_path);
    ox_window_open_path(self, path);
    g_free(path);
    break;
  }
  case OX_THEN_CLOSE:
    gtk_window_destroy(GTK_WINDOW(self));
    break;
  case OX_THEN_QUIT:
    if (application) g_object_ref(application);
    gtk_window_destroy(GTK_WINDOW(self));
    if (application) g_action_group_activate_action(G_ACTION_GROUP(application), "quit", NULL);
    g_clear_object(&application);
    break;
  }
}

static void unsaved_response_cb(GtkDialog *dialog, int response, OxWindow *self) {
  self->question = NULL;
  ox_dialog_close(GTK_WIDGET(dialog));
  switch (response) {
  case GTK_RESPONSE_REJECT:
    go_on(self);
    break;
  case GTK_RESPONSE_ACCEPT:
    ox_window_save(self); /* goes on when the file is written */
    break;
  default:
    self->then = OX_THEN_NOTHING;
  }
}

void ox_window_leave(OxWindow *self, ox_window_then then) {
  if (self->question) { /* already asked: the question is what counts */
    gtk_window_present(GTK_WINDOW(self->question));
    return;
  }
  commit(self);
  self->then = then;
  if (!ox_document_modified(self->document)) {
    go_on(self);
    return;
  }
  self->question = ox_dialog_unsaved(GTK_WINDOW(self), ox_document_title(self->document));
  g_signal_connect_object(self->question, "response", G_CALLBACK(unsaved_response_cb), self, 0);
}

void ox_window_leave_for(OxWindow *self, const char *path) {
  OxWindow *other = ox_window_find(gtk_window_get_application(GTK_WINDOW(self)), path, NULL);
  if (other) { /* nothing is left for that */
    gtk_window_present(GTK_WINDOW(other));
    return;
  }
  if (self->question) {
    gtk_window_present(GTK_WINDOW(self->question));
    return;
  }
  char *copy = g_strdup(path);
  g_free(self->then_path);
  self->then_path = copy;
  ox_window_leave(self, OX_THEN_OPEN_PATH);
}

void ox_window_ask_and_quit(OxWindow *self) {
  gtk_window_present(GTK_WINDOW(self));
  ox_window_leave(self, OX_THEN_QUIT);
}

/* ---- lessons ---------------------------------------------------------------------------- */

void ox_window_new_lesson(OxWindow *self) {
  ox_lesson *lesson = ox_lesson_new();
  if (lesson) ox_document_take(self->document, lesson, NULL);
}

OxWindow *ox_window_find(GtkApplication *application, const char *path, OxWindow *but) {
  GList *at = application ? gtk_application_get_windows(application) : NULL;
  for (; at; at = at->next) {
    if (!OX_IS_WINDOW(at->data) || at->data == but) continue;
    if (ox_same_file(ox_document_path(OX_WINDOW(at->data)->document), path)) return at->data;
  }
  return NULL;
}

gboolean ox_window_open_path(OxWindow *self, const char *path) {
  ox_messages messages = {0};
  OxWindow *other = ox_window_find(gtk_window_get_application(GTK_WINDOW(self)), path, self);
  if (other) {
    gtk_window_present(GTK_WINDOW(other));
    return TRUE;
  }
  ox_status status = ox_document_open(self->document, path, &messages);
  if (status == OX_ERROR)
    ox_dialog_messages(GTK_WINDOW(self), _("The lesson could not be opened"), &messages);
  else if (messages.count > 0)
    ox_dialog_messages(GTK_WINDOW(self), _("The lesson is open, with a remark"), &messages);
  ox_messages_clear(&messages);
  if (status != OX_ERROR) ox_window_note_recent(self);
  return status != OX_ERROR;
}

/* Saving over a file that another window shows would leave two of one. */
static gboolean is_open_elsewhere(OxWindow *self, const char *path) {
  if (!ox_window_find(gtk_window_get_application(GTK_WINDOW(self)), path, self)) return FALSE;
  ox_dialog_error(GTK_WINDOW(self), _("The lesson could not be saved"),
                  _("This file is open in another window. Another name is needed."));
  return TRUE;
}

gboolean ox_window_save_copy_path(OxWindow *self, const char *path) {
  ox_messages messages = {0};
  commit(self);
  if (is_open_elsewhere(self, path)) return FALSE;
  if (ox_same_file(path, ox_document_path(self->document))) return ox_window_save_path(self, path);
  ox_status status = ox_lesson_write(ox_document_lesson(self->document), path, &messages);
  if (status == OX_ERROR)
    ox_dialog_messages(GTK_WINDOW(self), _("The copy could not be saved"), &messages);
  ox_messages_clear(&messages);
  return status != OX_ERROR;
}

gboolean ox_window_save_path(OxWindow *self, const char *path) {
  ox_messages messages = {0};
  commit(self);
  if (is_open_elsewhere(self, path)) {
    self->then = OX_THEN_NOTHING;
    return FALSE;
  }
  ox_status status = ox_document_save(self->document, path, &messages);
  if (status == OX_ERROR) {
    self->then = OX_THEN_NOTHING; /* a failed save cancels what waited for it */
    ox_dialog_messages(GTK_WINDOW(self), _("The lesson could not be saved"), &messages);
  } else {
    ox_window_note_recent(self);
  }
  ox_messages_clear(&messages);
  return status != OX_ERROR;
}

/* ---- choosers --------------------------------------------------------------------------- */

char *ox_window_take_answer(OxWindow *self, int response, const char *ending, gboolean *added) {
  char *path = NULL;
  *added = FALSE;
  if (response == GTK_RESPONSE_ACCEPT) {
    path = ox_dialog_chosen_path(self->chooser, ending, added);
    if (!path)
      ox_dialog_error(GTK_WINDOW(self), _("This place cannot be used"),
                      _("Files are read and written on this computer's file systems only."));
  }
  g_clear_object(&self->chooser);
  return path;
}

static void open_response_cb(GtkNativeDialog *chooser, int response, OxWindow *self) {
  gboolean added;
  char *path = ox_window_take_answer(self, response, NULL, &added);
  if (path) ox_window_open_path(self, path);
  g_free(path);
}

void ox_window_open(OxWindow *self) {
  if (self->chooser) return;
  self->chooser = ox_dialog_open_lesson(GTK_WINDOW(self));
  g_signal_connect_object(self->chooser, "response", G_CALLBACK(open_response_cb), self, 0);
}

static void save_and_go_on(OxWindow *self, const char *path) {
  if (ox_window_save_path(self, path)) go_on(self);
}

static void save_replace_cb(GtkDialog *dialog, int response, OxWindow *self) {
  char *path = g_steal_pointer(&self->pending_path);
  ox_dialog_close(GTK_WIDGET(dialog));
  if (response == GTK_RESPONSE_ACCEPT)
    save_and_go_on(self, path);
  else
    self->then = OX_THEN_NOTHING;
  g_free(path);
}

/* The chooser asked about the name that was typed; with an ending added it is another file. */
gboolean ox_window_must_ask(OxWindow *self, const char *path, gboolean added,
                            GCallback answered) {
  if (!added || !g_file_test(path, G_FILE_TEST_EXISTS)) return FALSE;
  g_free(self->pending_path);
  self->pending_path = g_strdup(path);
  GtkWidget *dialog = ox_dialog_replace(GTK_WINDOW(self), path);
  g_signal_connect_object(dialog, "response", answered, self, 0);
  return TRUE;
}

static void save_response_cb(GtkNativeDialog *chooser, int response, OxWindow *self) {
  gboolean added;
  char *path = ox_window_take_answer(self, response, ".oxbow", &added);
  if (!path)
    self->then = OX_THEN_NOTHING;
  else if (!ox_window_must_ask(self, path, added, G_CALLBACK(save_replace_cb)))
    save_and_go_on(self, path);
  g_free(path);
}

void ox_window_save_as(OxWindow *self) {
  if (self->chooser) return;
  commit(self);
  self->chooser = ox_dialog_save_lesson(GTK_WINDOW(self), ox_document_path(self->document),
                                        ox_document_title(self->document));
  g_signal_connect_object(self->chooser, "response", G_CALLBACK(save_response_cb), self, 0);
}

/* Another program wrote to the file: what it wrote is not replaced unasked. */
static void ask_over_changed(OxWindow *self, const char *path) {
  char *copy = g_strdup(path);
  g_free(self->pending_path);
  self->pending_path = copy;
  GtkWidget *dialog = ox_dialog_over_changed(GTK_WINDOW(self), path);
  g_signal_connect_object(dialog, "response", G_CALLBACK(save_replace_cb), self, 0);
}

void ox_window_save(OxWindow *self) {
  const char *path = ox_document_path(self->document);
  if (!path)
    ox_window_save_as(self);
  else if (ox_file_watch_look(self->watch) == OX_FILE_CHANGED)
    ask_over_changed(self, path);
  else
    save_and_go_on(self, path);
}

static void copy_replace_cb(GtkDialog *dialog, int response, OxWindow *self) {
  char *path = g_steal_pointer(&self->pending_path);
  ox_dialog_close(GTK_WIDGET(dialog));
  if (response == GTK_RESPONSE_ACCEPT) ox_window_save_copy_path(self, path);
  g_free(path);
}

static void copy_response_cb(GtkNativeDialog *chooser, int response, OxWindow *self) {
  gboolean added;
  char *path = ox_window_take_answer(self, response, ".oxbow", &added);
  if (path && !ox_window_must_ask(self, path, added, G_CALLBACK(copy_replace_cb)))
    ox_window_save_copy_path(self, path);
  g_free(path);
}

void ox_window_save_copy(OxWindow *self) {
  if (self->chooser) return;
  commit(self);
  char *title = g_strdup_printf(_("%s, copy"), ox_document_title(self->document));
  self->chooser = ox_dialog_save_lesson(GTK_WINDOW(self), NULL, title);
  g_signal_connect_object(self->chooser, "response", G_CALLBACK(copy_response_cb), self, 0);
  g_free(title);
}
