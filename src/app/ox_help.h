/* The help: pages that come with the program, read in a window of their own, without a network.
 *
 * A page is a text of few rules: the first line is its title, "## " begins a heading, "- " an item,
 * an empty line ends a paragraph, and `Ctrl+D` between backquotes is a key or a word on the screen.
 */
#ifndef OX_HELP_H
#define OX_HELP_H

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define OX_TYPE_HELP (ox_help_get_type())
G_DECLARE_FINAL_TYPE(OxHelp, ox_help, OX, HELP, GtkWindow)

/* Shows the first page. */
GtkWidget *ox_help_new(GtkApplication *application);

guint ox_help_page_count(OxHelp *self);
const char *ox_help_title(OxHelp *self, guint page); /* belongs to the help */
const char *ox_help_source(OxHelp *self, guint page);
void ox_help_show(OxHelp *self, guint page);
/* Pages that have the words (in any case of letters) stay in the list; "" for all. */
void ox_help_search(OxHelp *self, const char *words);
guint ox_help_found(OxHelp *self);
/* What is read now; freed with g_free. */
char *ox_help_text(OxHelp *self);

G_END_DECLS

#endif
