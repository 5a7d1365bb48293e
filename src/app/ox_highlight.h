/* A light over the part of the picture that a word means. Lies over the board, takes no input. */
#ifndef OX_HIGHLIGHT_H
#define OX_HIGHLIGHT_H

#include <gtk/gtk.h>

#include "ox_board.h"
#include "ox_case_view.h"
#include "ox_feature.h"

G_BEGIN_DECLS

#define OX_TYPE_HIGHLIGHT (ox_highlight_get_type())
G_DECLARE_FINAL_TYPE(OxHighlight, ox_highlight, OX, HIGHLIGHT, GtkWidget)

/* Follows the document, and the player where the picture moves; holds references. */
GtkWidget *ox_highlight_new(OxDocument *document, OxPlayer *player);
/* A picture that is lit: a board of the document, or the view of another case. Borrowed, and to be
 * taken out before it goes. */
void ox_highlight_add(OxHighlight *self, GtkWidget *picture);
void ox_highlight_remove(OxHighlight *self, GtkWidget *picture);
/* Where the light is on a picture, in its coordinates, and in how many of OX_FEATURE_POINTS_MAX
 * points: that part of the picture's own case. None of what is flown where the picture is carried
 * with the air, which lies elsewhere. */
size_t ox_highlight_points(OxHighlight *self, GtkWidget *picture, ox_vec *out);
/* What the pointer is at on a picture, in its coordinates. */
ox_feature ox_highlight_feature_at(OxHighlight *self, GtkWidget *picture, double x, double y);
void ox_highlight_set_feature(OxHighlight *self, ox_feature feature);
ox_feature ox_highlight_feature(OxHighlight *self);

G_END_DECLS

#endif
