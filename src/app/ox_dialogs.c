/* File choosers, questions and messages. */
#include "ox_dialogs.h"

#include <string.h>

#include "oxbow/text.h"

#define MESSAGE_MAX_HEIGHT 280

/* ---- names ------------------------------------------------------------------------------ */

char *ox_dialog_file_name(const char *title, const char *ending) {
  char *name = g_strdup(title);
  g_strdelimit(name, "/\\:*?\"<>|\n\t", '-');
  g_strstrip(name);
  /* A name that begins with a point is hidden from its owner. */
  for (char *at = name; *at == '.'; at++) *at = '-';
  char *whole = g_strconcat(*name ? name : _("Lesson"), ending, NULL);
  g_free(name);
  return whole;
}

char *ox_dialog_chosen_path(GtkNativeDialog *chooser, const char *ending, gboolean *added) {
  GFile *file = gtk_file_chooser_get_file(GTK_FILE_CHOOSER(chooser));
  char *path = file ? g_file_get_path(file) : NULL;
  g_clear_object(&file);
  *added = FALSE;
  if (!path || !ending) return path;
  size_t length = strlen(path), tail = strlen(ending);
  if (length > tail && g_ascii_strcasecmp(path + length - tail, ending) == 0) return path;
  char *whole = g_strconcat(path, ending, NULL);
  g_free(path);
  *added = TRUE;
  return whole;
}

/* ---- choosers --------------------------------------------------------------------------- */

static GtkNativeDialog *chooser_new(GtkWindow *parent, const char *title,
                                    GtkFileChooserAction action, const char *accept) {
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new(title, parent, action, accept,
                                                              _("_Cancel"));
  gtk_native_dialog_set_modal(GTK_NATIVE_DIALOG(chooser), TRUE);
  return GTK_NATIVE_DIALOG(chooser);
}

static void add_filter(GtkNativeDialog *chooser, const char *name, const char *ending) {
  GtkFileFilter *filter = gtk_file_filter_new();
  gtk_file_filter_set_name(filter, name);
  if (ending)
    gtk_file_filter_add_suffix(filter, ending + 1);
  else
    gtk_file_filter_add_pattern(filter, "*");
  gtk_file_chooser_add_filter(GTK_FILE_CHOOSER(chooser), filter);
  g_object_unref(filter);
}

GtkNativeDialog *ox_dialog_open_lesson(GtkWindow *parent) {
  GtkNativeDialog *chooser = chooser_new(parent, _("Open a Lesson"), GTK_FILE_CHOOSER_ACTION_OPEN,
                                         _("_Open"));
  add_filter(chooser, _("Lessons (*.oxbow)"), ".oxbow");
  add_filter(chooser, _("All files"), NULL);
  gtk_native_dialog_show(chooser);
  return chooser;
}

static void suggest(GtkNativeDialog *chooser, const char *path, const char *title,
                    const char *ending) {
  if (path) {
    GFile *file = g_file_new_for_path(path);
    gtk_file_chooser_set_file(GTK_FILE_CHOOSER(chooser), file, NULL);
    g_object_unref(file);
    return;
  }
  char *name = ox_dialog_file_name(title, ending);
  gtk_file_chooser_set_current_name(GTK_FILE_CHOOSER(chooser), name);
  g_free(name);
}

GtkNativeDialog *ox_dialog_open_records(GtkWindow *parent, const char *path) {
  GtkNativeDialog *chooser = chooser_new(parent, _("Open Navigation Records"),
                                         GTK_FILE_CHOOSER_ACTION_OPEN, _("_Open"));
  add_filter(chooser, _("All files"), NULL);
  add_filter(chooser, _("Records (*.txt)"), ".txt");
  if (path) suggest(chooser, path, NULL, NULL);
  gtk_native_dialog_show(chooser);
  return chooser;
}

GtkNativeDialog *ox_dialog_save_lesson(GtkWindow *parent, const char *path, const char *title) {
  GtkNativeDialog *chooser = chooser_new(parent, _("Save the Lesson"), GTK_FILE_CHOOSER_ACTION_SAVE,
                                         _("_Save"));
  add_filter(chooser, _("Lessons (*.oxbow)"), ".oxbow");
  suggest(chooser, path, title, ".oxbow");
  gtk_native_dialog_show(chooser);
  return chooser;
}

GtkNativeDialog *ox_dialog_export(GtkWindow *parent, const char *title, const char *format,
                                  const char *ending, const char *folder) {
  GtkNativeDialog *chooser =
      chooser_new(parent, _("Export"), GTK_FILE_CHOOSER_ACTION_SAVE, _("_Export"));
  GFile *place = folder ? g_file_new_for_uri(folder) : NULL;
  add_filter(chooser, format, ending);
  if (place && g_file_query_exists(place, NULL))
    gtk_file_chooser_set_current_folder(GTK_FILE_CHOOSER(chooser), place, NULL);
  suggest(chooser, NULL, title, ending);
  gtk_native_dialog_show(chooser);
  g_clear_object(&place);
  return chooser;
}

/* ---- questions -------------------------------------------------------------------------- */

static GtkWidget *question_new(GtkWindow *parent, const char *heading, const char *detail) {
  GtkWidget *dialog = gtk_message_dialog_new(
      parent, GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT, GTK_MESSAGE_QUESTION,
      GTK_BUTTONS_NONE, "%s", heading);
  gtk_message_dialog_format_secondary_text(GTK_MESSAGE_DIALOG(dialog), "%s", detail);
  gtk_dialog_add_button(GTK_DIALOG(dialog), _("_Cancel"), GTK_RESPONSE_CANCEL);
  return dialog;
}

static void mark_button(GtkWidget *dialog, int response, const char *class) {
  GtkWidget *button = gtk_dialog_get_widget_for_response(GTK_DIALOG(dialog), response);
  gtk_widget_add_css_class(button, class);
}

GtkWidget *ox_dialog_unsaved(GtkWindow *parent, const char *title) {
  char *heading = g_strdup_printf(_("Save changes to “%s”?"), title);
  GtkWidget *dialog = question_new(parent, heading,
                                   _("Changes that are not saved are lost for good."));
  gtk_dialog_add_button(GTK_DIALOG(dialog), _("_Discard"), GTK_RESPONSE_REJECT);
  gtk_dialog_add_button(GTK_DIALOG(dialog), _("_Save"), GTK_RESPONSE_ACCEPT);
  gtk_dialog_set_default_response(GTK_DIALOG(dialog), GTK_RESPONSE_ACCEPT);
  mark_button(dialog, GTK_RESPONSE_REJECT, "destructive-action");
  mark_button(dialog, GTK_RESPONSE_ACCEPT, "suggested-action");
  gtk_window_present(GTK_WINDOW(dialog));
  g_free(heading);
  return dialog;
}

static GtkWidget *ask_to_replace(GtkWindow *parent, const char *path, const char *detail) {
  char *name = g_filename_display_basename(path);
  char *heading = g_strdup_printf(_("Replace “%s”?"), name);
  GtkWidget *dialog = question_new(parent, heading, detail);
  gtk_dialog_add_button(GTK_DIALOG(dialog), _("_Replace"), GTK_RESPONSE_ACCEPT);
  gtk_dialog_set_default_response(GTK_DIALOG(dialog), GTK_RESPONSE_CANCEL);
  mark_button(dialog, GTK_RESPONSE_ACCEPT, "destructive-action");
  gtk_window_present(GTK_WINDOW(dialog));
  g_free(heading);
  g_free(name);
  return dialog;
}

GtkWidget *ox_dialog_replace(GtkWindow *parent, const char *path) {
  return ask_to_replace(parent, path,
                        _("A file of this name exists. Its contents will be replaced."));
}

GtkWidget *ox_dialog_over_changed(GtkWindow *parent, const char *path) {
  return ask_to_replace(parent, path,
                        _("Another program changed this file since it was opened or saved here. "
                          "What that program wrote will be replaced."));
}

void ox_dialog_close(GtkWidget *dialog) {
  /* The answer still holds the dialog; it must not look for its window when that has gone. */
  gtk_window_set_transient_for(GTK_WINDOW(dialog), NULL);
  gtk_window_destroy(GTK_WINDOW(dialog));
}

/* ---- messages --------------------------------------------------------------------------- */

static GtkWidget *message_list(const ox_messages *messages) {
  GString *text = g_string_new(NULL);
  for (size_t i = 0; i < messages->count; i++)
    g_string_append_printf(text, "%s%s", i > 0 ? "\n" : "", messages->text[i]);
  char *valid = g_utf8_make_valid(text->str, (gssize)text->len);
  GtkWidget *label = gtk_label_new(valid);
  g_free(valid);
  g_string_free(text, TRUE);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_yalign(GTK_LABEL(label), 0);
  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_label_set_wrap_mode(GTK_LABEL(label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars(GTK_LABEL(label), 60);
  gtk_label_set_selectable(GTK_LABEL(label), TRUE);
  gtk_widget_add_css_class(label, "messages");
  return label;
}

void ox_dialog_messages(GtkWindow *parent, const char *heading, const ox_messages *messages) {
  GtkWidget *dialog = gtk_message_dialog_new(
      parent, GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT, GTK_MESSAGE_WARNING,
      GTK_BUTTONS_CLOSE, "%s", heading);
  GtkWidget *area = gtk_message_dialog_get_message_area(GTK_MESSAGE_DIALOG(dialog));
  GtkWidget *scroller = gtk_scrolled_window_new();
  gtk_scrolled_window_set_policy(GTK_SCROLLED_WINDOW(scroller), GTK_POLICY_NEVER,
                                 GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height(GTK_SCROLLED_WINDOW(scroller), TRUE);
  gtk_scrolled_window_set_max_content_height(GTK_SCROLLED_WINDOW(scroller), MESSAGE_MAX_HEIGHT);
  gtk_scrolled_window_set_child(GTK_SCROLLED_WINDOW(scroller), message_list(messages));
  gtk_box_append(GTK_BOX(area), scroller);
  g_signal_connect(dialog, "response", G_CALLBACK(gtk_window_destroy), NULL);
  GtkWidget *close = gtk_dialog_get_widget_for_response(GTK_DIALOG(dialog), GTK_RESPONSE_CLOSE);
  gtk_window_present(GTK_WINDOW(dialog));
  gtk_widget_grab_focus(close); /* not the list, which would select all its text */
}

void ox_dialog_error(GtkWindow *parent, const char *heading, const char *message) {
  char *text = g_strdup(message);
  ox_messages messages = {.count = 1, .text = &text};
  ox_dialog_messages(parent, heading, &messages);
  g_free(text);
}
