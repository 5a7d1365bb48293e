/* The board: the picture of the shown case, with the aircraft where the player's clock is.
 *
 * The picture is laid out when the case, the size or the palette changed, once, on the way to the
 * next frame. Two layers lie on each other: one that stays, and the moving one, which is all that
 * is drawn again while the flight plays. */
#ifndef OX_BOARD_H
#define OX_BOARD_H

#include <gtk/gtk.h>

#include "ox_document.h"
#include "ox_overlays.h"
#include "ox_player.h"
#include "oxbow/picture.h"

G_BEGIN_DECLS

#define OX_TYPE_BOARD (ox_board_get_type())
G_DECLARE_FINAL_TYPE(OxBoard, ox_board, OX, BOARD, GtkWidget)

/* Both are needed before the board draws; it holds a reference to each. */
void ox_board_set_model(OxBoard *self, OxDocument *document, OxPlayer *player);
/* What is laid over the picture; it holds a reference. Comes before the model. */
void ox_board_set_overlays(OxBoard *self, OxOverlays *overlays);
/* The projector's palette, or else the light or the dark one, as the window's own text is dark or
 * light. */
void ox_board_set_projector(OxBoard *self, gboolean projector);
ox_palette_id ox_board_palette(OxBoard *self);

/* Counters for tests: layouts of the picture, drawings of the still and of the moving layer. */
typedef struct {
  guint layouts, still, moving;
} ox_board_counts;
ox_board_counts ox_board_get_counts(OxBoard *self);

G_END_DECLS

#endif
