/* The pen over the board: draws, erases, and points with a soft spot.
 *
 * A widget that lies over the board while the pen is taken up, and takes pointer, finger and stylus
 * for itself. What grows is drawn by the pen alone; on release it goes to the paper as one change.
 * The arrow keys move a pen of their own, and the space bar puts it down and lifts it. */
#ifndef OX_PEN_H
#define OX_PEN_H

#include <gtk/gtk.h>

#include "oxbow/ink.h"
#include "oxbow/picture.h"

G_BEGIN_DECLS

#define OX_TYPE_PEN (ox_pen_get_type())
G_DECLARE_FINAL_TYPE(OxPen, ox_pen, OX, PEN, GtkWidget)

/* What is drawn on. `viewport` is that of the pen's own coordinates; FALSE where there is none.
 * `change` takes the whole ink as it is after a step of that name ("Pen", "Erase", …). */
typedef struct {
  const ox_ink *(*ink)(gpointer data);
  void (*change)(gpointer data, const char *name, const ox_ink *ink);
  gboolean (*viewport)(gpointer data, ox_viewport *out);
  ox_palette_id (*palette)(gpointer data);
  gpointer data;
} ox_pen_paper;

typedef enum { OX_PEN_DRAWS, OX_PEN_ERASES, OX_PEN_POINTS } ox_pen_tool;

GtkWidget *ox_pen_new(const ox_pen_paper *paper);

void ox_pen_set_tool(OxPen *self, ox_pen_tool tool);
ox_pen_tool ox_pen_get_tool(OxPen *self);
void ox_pen_set_ink(OxPen *self, ox_ink_colour colour);
void ox_pen_set_width(OxPen *self, ox_ink_width width);

/* The pointer as the gestures tell of it, px of the pen: down, along and up. Another press while
 * one is down is not taken (FALSE). */
gboolean ox_pen_press(OxPen *self, double x, double y);
void ox_pen_move(OxPen *self, double x, double y);
void ox_pen_release(OxPen *self);
/* Takes back the stroke being drawn; FALSE: none is. */
gboolean ox_pen_cancel(OxPen *self);
gboolean ox_pen_is_down(OxPen *self);
/* Takes all ink away, as one change. */
void ox_pen_clear(OxPen *self);

/* For tests: how often the layer of the pen was drawn. */
guint ox_pen_draw_count(OxPen *self);

G_END_DECLS

#endif
