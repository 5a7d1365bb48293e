/* A choice among words. */
#ifndef OX_CHOICE_H
#define OX_CHOICE_H

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* `words` end with NULL and are marked N_(): they are shown in the reader's language. */
GtkWidget *ox_choice_new(const char *const *words);
/* The same as a model, for a choice that exists. The caller owns it. */
GtkStringList *ox_choice_list(const char *const *words);

G_END_DECLS

#endif
