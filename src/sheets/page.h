/* A page put together. Private to the sheets. */
#ifndef OX_SHEETS_PAGE_H
#define OX_SHEETS_PAGE_H

#include "answers.h"
#include "oxbow/sheets.h"
#include "text.h"

#define SHEET_PER_PAGE_MAX 4

/* The painter keeps its least text, 8 pt, from this side on. */
#define SHEET_SIDE_FOR_TEXT_PT 252.0

typedef struct {
  double x, y, width, height;
} sheet_box;

/* One hold of a page. */
typedef struct {
  const ox_scene *scene;
  size_t number; /* on paper, from 1 */
  ox_sheets_kind kind;
  sheet_answers answers;
} sheet_cell;

/* False when memory is out. */
bool sheet_cell_draw(const sheet_pen *pen, const sheet_cell *cell, sheet_box at);

/* The whole picture of a cell at a size: framed, without what belongs to one instant. */
ox_scene sheet_scene(const sheet_cell *cell, double width, double height);

/* The legend of the whole pictures, also on a worksheet; negative when memory is out. */
double sheet_legend_height(const sheet_cell *cells, size_t count, double width);
/* The legend of what is shown; false when memory is out. */
bool sheet_legend_draw(const sheet_pen *pen, const sheet_cell *cells, size_t count, sheet_box at);

#endif
