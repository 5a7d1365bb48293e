/* File choosers, questions and messages. What depends on the version of GTK stands here. */
#ifndef OX_DIALOGS_H
#define OX_DIALOGS_H

#include <gtk/gtk.h>

#include "oxbow/lesson.h"

G_BEGIN_DECLS

/* File choosers, shown at once; the caller keeps the reference until "response". */
GtkNativeDialog *ox_dialog_open_lesson(GtkWindow *parent);
/* Navigation records; path is the file before, or NULL. */
GtkNativeDialog *ox_dialog_open_records(GtkWindow *parent, const char *path);
GtkNativeDialog *ox_dialog_save_lesson(GtkWindow *parent, const char *path, const char *title);
/* For one format: its name for people and its ending. folder: a URI to begin in, or NULL. */
GtkNativeDialog *ox_dialog_export(GtkWindow *parent, const char *title, const char *format,
                                  const char *ending, const char *folder);

/* The path chosen, with `ending` (".oxbow"; NULL: none) added where the name has not got it. NULL
 * for a place without a path. *added tells whether it was added, for then the chooser has not
 * asked whether the file may be replaced. Freed with g_free. */
char *ox_dialog_chosen_path(GtkNativeDialog *chooser, const char *ending, gboolean *added);

/* Questions, shown at once. Responses: GTK_RESPONSE_CANCEL, _ACCEPT (save, replace), _REJECT
 * (discard). Closed with ox_dialog_close. */
GtkWidget *ox_dialog_unsaved(GtkWindow *parent, const char *title);
GtkWidget *ox_dialog_replace(GtkWindow *parent, const char *path);
GtkWidget *ox_dialog_over_changed(GtkWindow *parent, const char *path);

/* Closes a question from within its answer, after which the window it was about may go as well. */
void ox_dialog_close(GtkWidget *dialog);

/* Every message, however many, below a heading. */
void ox_dialog_messages(GtkWindow *parent, const char *heading, const ox_messages *messages);
void ox_dialog_error(GtkWindow *parent, const char *heading, const char *message);

/* A name for a file from a title: characters that a file name cannot have become '-'. */
char *ox_dialog_file_name(const char *title, const char *ending);

G_END_DECLS

#endif
