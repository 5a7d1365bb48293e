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
/* A board beside the first one that is lit as well; borrowed; NULL: none. */
void ox_highlight_set_second(OxHighlight *self, OxBoard *board);
/* Where the light is on a board, in its coordinates, and in how many of OX_FEATURE_POINTS_MAX
 * points. None of what is flown where the board is carried with the air, which lies elsewhere. */
size_t ox_highlight_points(OxHighlight *self, OxBoard *board, ox_vec *out);
void ox_highlight_set_feature(OxHighlight *self, ox_feature feature);
ox_feature ox_highlight_feature(OxHighlight *self);

G_END_DECLS

#endif
