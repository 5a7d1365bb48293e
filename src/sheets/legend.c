/* One legend for all pictures of a page. It is set from small pictures of the same holds, so that
 * its height is known before the page is laid out. */
#include "page.h"

static const double SIDE_PT = SHEET_SIDE_FOR_TEXT_PT;

static bool pictures_of(const sheet_cell *cells, size_t count, bool hide, ox_picture **out) {
  for (size_t i = 0; i < count; i++) {
    ox_scene s = sheet_scene(&cells[i], SIDE_PT, SIDE_PT);
    s.hide_answer = hide;
    out[i] = ox_picture_new(&s, SIDE_PT, SIDE_PT);
    if (!out[i]) return false;
  }
  return true;
}

/* Height of the legend, drawn where there is a context; negative when memory is out. */
static double legend(const sheet_cell *cells, size_t count, bool hide, cairo_t *cr, sheet_box at) {
  ox_picture *pictures[SHEET_PER_PAGE_MAX] = {NULL};
  double height = -1.0;
  if (pictures_of(cells, count, hide, pictures))
    height = ox_picture_legend((const ox_picture *const *)pictures, count, cr, at.x, at.y,
                               at.width);
  for (size_t i = 0; i < count; i++) ox_picture_free(pictures[i]);
  return height;
}

double sheet_legend_height(const sheet_cell *cells, size_t count, double width) {
  return legend(cells, count, false, NULL, (sheet_box){0.0, 0.0, width, 0.0});
}

bool sheet_legend_draw(const sheet_pen *pen, const sheet_cell *cells, size_t count, sheet_box at) {
  bool hide = cells[0].kind == OX_SHEETS_WORKSHEET;
  return legend(cells, count, hide, pen->cr, at) >= 0.0;
}
