/* Bars above the board that tell of something and offer what can be done about it. One of a kind
 * at a time: the next one takes its place. */
#ifndef OX_MESSAGE_BAR_H
#define OX_MESSAGE_BAR_H

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Adds a bar with a sentence and at most two buttons (labels with a mnemonic, NULL: none), whose
 * responses are GTK_RESPONSE_ACCEPT and GTK_RESPONSE_REJECT; one without buttons, or with one, can
 * be closed. Any answer closes it. The bar is borrowed: connect to its "response". `kind` is a
 * short word; it must not change afterwards. */
GtkWidget *ox_message_bar_show(GtkBox *box, const char *kind, GtkMessageType type,
                               const char *text, const char *accept, const char *reject);
/* The bar of a kind, or NULL. */
GtkWidget *ox_message_bar_find(GtkBox *box, const char *kind);
void ox_message_bar_hide(GtkBox *box, const char *kind);
/* Its sentence, borrowed. */
const char *ox_message_bar_text(GtkWidget *bar);

G_END_DECLS

#endif
