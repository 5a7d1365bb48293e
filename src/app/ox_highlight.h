/* A light over the part of the picture that a word means. Lies over the board, takes no input. */
#ifndef OX_HIGHLIGHT_H
#define OX_HIGHLIGHT_H

#include <gtk/gtk.h>

#include "ox_board.h"
#include "ox_feature.h"

G_BEGIN_DECLS

#define OX_TYPE_HIGHLIGHT (ox_highlight_get_type())
G_DECLARE_FINAL_TYPE(OxHighlight, ox_highlight, OX, HIGHLIGHT, GtkWidget)

/* Follows the document, and the player where the picture moves; holds references. The board is
 * borrowed: both belong to one window. */
GtkWidget *ox_highlight_new(OxBoard *board, OxDocument *document, OxPlayer *player);
void ox_highlight_set_feature(OxHighlight *self, ox_feature feature);
ox_feature ox_highlight_feature(OxHighlight *self);

G_END_DECLS

#endif
