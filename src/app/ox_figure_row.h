/* The figures that follow the aircraft, in a row of columns that keep their places while the
 * figures change: heading, track, ground speed, drift, times, and the altitude in a climb. Draws
 * itself anew only when a figure changes. */
#ifndef OX_FIGURE_ROW_H
#define OX_FIGURE_ROW_H

#include <gtk/gtk.h>

#include "ox_document.h"
#include "ox_figures.h"
#include "ox_player.h"

G_BEGIN_DECLS

#define OX_TYPE_FIGURE_ROW (ox_figure_row_get_type())
G_DECLARE_FINAL_TYPE(OxFigureRow, ox_figure_row, OX, FIGURE_ROW, GtkWidget)

/* Holds a reference to each. */
void ox_figure_row_set_model(OxFigureRow *self, OxDocument *document, OxPlayer *player);
/* Height of the figures' type (px); 0: the window's own. */
void ox_figure_row_set_size(OxFigureRow *self, double px);
double ox_figure_row_size(OxFigureRow *self);
/* In how many lines the figures may stand where there is no room for one (>= 1; first 3). */
void ox_figure_row_set_most_lines(OxFigureRow *self, int lines);

/* Borrowed; NULL where the figure is not shown. */
const char *ox_figure_row_value(OxFigureRow *self, ox_figure figure);
guint ox_figure_row_draw_count(OxFigureRow *self);

G_END_DECLS

#endif
