/* The board: the picture of the shown case, with the aircraft where the player's clock is, and
 * handles by which the case is changed on the picture itself.
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
#include "ox_prediction.h"
#include "oxbow/handles.h"
#include "oxbow/picture.h"

G_BEGIN_DECLS

#define OX_TYPE_BOARD (ox_board_get_type())
G_DECLARE_FINAL_TYPE(OxBoard, ox_board, OX, BOARD, GtkWidget)

/* Both are needed before the board draws; it holds a reference to each. */
void ox_board_set_model(OxBoard *self, OxDocument *document, OxPlayer *player);
/* What is laid over the picture; it holds a reference. Comes before the model. */
void ox_board_set_overlays(OxBoard *self, OxOverlays *overlays);
/* What hides the answer and adds a sketch; it holds a reference. Comes before the model. */
void ox_board_set_prediction(OxBoard *self, OxPrediction *prediction);
/* Where the world is on the board now; FALSE before there is a picture. */
gboolean ox_board_get_viewport(OxBoard *self, ox_viewport *out);
/* The part of the board that shows the world (px); FALSE before there is a picture. */
gboolean ox_board_get_map(OxBoard *self, ox_vec *origin, ox_vec *size);
/* The projector's palette, or else the light or the dark one, as the window's own text is dark or
 * light. */
void ox_board_set_projector(OxBoard *self, gboolean projector);
ox_palette_id ox_board_palette(OxBoard *self);
/* The type of the picture's labels (px), for readers far away; 0: as the board's size gives it. */
void ox_board_set_label_size(OxBoard *self, double px);

/* ---- taking hold ------------------------------------------------------------------------
 *
 * The pointer as gestures tell of it; places in px of the board. A press that hits a handle (TRUE)
 * gives it the focus and begins a step of the document, which ends with the release; another press
 * begins a pan. `fine` snaps to single units. Cancelling brings back what was before. */
gboolean ox_board_press(OxBoard *self, double x, double y);
void ox_board_drag_to(OxBoard *self, double x, double y, gboolean fine);
void ox_board_release(OxBoard *self);
void ox_board_cancel(OxBoard *self);
gboolean ox_board_is_dragging(OxBoard *self);
void ox_board_point_at(OxBoard *self, double x, double y); /* hovering */

/* A key on a grip; FALSE: it has no use for it. */
gboolean ox_board_key(OxBoard *self, ox_handle handle, guint key, GdkModifierType modifiers);
/* Emits "exact-entry" (const char *key of the input): the window knows where it is typed. */
void ox_board_ask_for_entry(OxBoard *self, ox_handle handle);
GtkWidget *ox_board_grip(OxBoard *self, ox_handle handle);
const char *ox_board_readout(OxBoard *self); /* "" while it is hidden */
/* Where a handle lies (px); FALSE where the board does not show it. */
gboolean ox_board_handle_place(OxBoard *self, ox_handle handle, double *x, double *y);

/* ---- the lesson's points ----------------------------------------------------------------
 *
 * While they are shown, the symbols of points are taken hold of like handles; each drag is a step
 * "Move NAME". The fix of the case lies in the middle of the picture and is moved by what it is
 * counted from, or on the page of places. */
void ox_board_show_points(OxBoard *self, gboolean shown);
GtkWidget *ox_board_point_grip(OxBoard *self, const char *name); /* NULL: there is none */
gboolean ox_board_point_place(OxBoard *self, const char *name, double *x, double *y);
/* A key on its grip: arrows move it by 0.1 NM, with Shift by 1 NM; Escape brings it back. */
gboolean ox_board_point_key(OxBoard *self, const char *name, guint key, GdkModifierType modifiers);
/* Emits "point-entry" (const char *name): the window knows where it is typed. */
void ox_board_ask_for_point(OxBoard *self, const char *name);

/* ---- views ------------------------------------------------------------------------------ */

ox_view ox_board_view(OxBoard *self);
void ox_board_set_up(OxBoard *self, ox_up up);
void ox_board_zoom(OxBoard *self, int steps); /* about the middle; > 0: nearer */
void ox_board_zoom_about(OxBoard *self, double factor, double x, double y);
void ox_board_zoom_fit(OxBoard *self);
void ox_board_pan(OxBoard *self, int right, int down); /* steps of the eye */
/* Over the ground or carried with the air: a passage of 0.3 s, or at once where animations are
 * off. It can be turned round on its way. */
void ox_board_set_air(OxBoard *self, gboolean air);
gboolean ox_board_air(OxBoard *self); /* where the passage leads */

/* What the board draws, for a picture like it elsewhere; what is borrowed in it is the document's
 * and the overlays'. "looks-changed" is emitted when it may be another one, and when the board has
 * another size. */
ox_scene ox_board_scene(OxBoard *self);
/* A scale shared with other boards; NULL: its own again. */
void ox_board_share_fit(OxBoard *self, const ox_fit *fit, gboolean settle);
/* A hand holds the world, or it is on its way to where it belongs. */
gboolean ox_board_is_held(OxBoard *self);

/* Counters for tests: layouts of the picture, drawings of the still and of the moving layer. */
typedef struct {
  guint layouts, still, moving;
} ox_board_counts;
ox_board_counts ox_board_get_counts(OxBoard *self);

G_END_DECLS

#endif
