/* The classroom display: the picture over the whole screen without controls, its type sized by the
 * height of the screen so that the last row can read it, large figures below it, and the keys of a
 * presenter's clicker.
 *
 * The controls come back over the picture when the pointer moves, on a touch or with Tab, and hide
 * again; nothing is laid out anew for them. One screen is enough: it is the one that is mirrored.
 * Idle blanking is held off for as long as the display lasts. */
#ifndef OX_CLASSROOM_H
#define OX_CLASSROOM_H

#include "ox_window.h"

G_BEGIN_DECLS

/* Shares of the screen's height, at the normal size of type. */
#define OX_CLASSROOM_LABEL_SHARE 0.04
#define OX_CLASSROOM_FIGURE_SHARE 0.05
#define OX_CLASSROOM_TOUCH_PX 44.0 /* across, of what is pressed: for a finger at the wall */

typedef struct ox_classroom ox_classroom;

/* Where it puts its own widgets; all borrowed. */
typedef struct {
  OxWindow *window;
  GtkBox *below_board;
  GtkOverlay *board_overlay;
} ox_classroom_place;

/* Adds the actions win.classroom and those that work only in it. */
ox_classroom *ox_classroom_new(const ox_classroom_place *place);
/* Leaves the display, if it is on. NULL is allowed. */
void ox_classroom_free(ox_classroom *self);

/* A widget that is not seen in the display (ox_veil.h); borrowed, told before it is on. */
void ox_classroom_hides(ox_classroom *self, GtkWidget *widget);

void ox_classroom_set_on(ox_classroom *self, gboolean on);
gboolean ox_classroom_is_on(ox_classroom *self);
/* Takes the black away if it is there, else leaves; FALSE: it was not on. */
gboolean ox_classroom_escape(ox_classroom *self);

/* For tests. */
gboolean ox_classroom_is_blank(ox_classroom *self);
gboolean ox_classroom_inhibits(ox_classroom *self);
double ox_classroom_label_px(ox_classroom *self);
OxFigureRow *ox_classroom_figures(ox_classroom *self);
GtkWidget *ox_classroom_bar(ox_classroom *self);

G_END_DECLS

#endif
