/* The places of the blocks beside the map: a column on broad boards, a low row on upright ones.
 *
 * Whole blocks give way where room is short. In the column height is short: the legend goes first
 * (labels name the lines too), then the chart. In the row width is short: the triangle of
 * velocities, the broadest, goes first; a board so tall that the map has height to spare gets a
 * second line of blocks instead. */
#include <math.h>

#include "paint_private.h"

static const double COLUMN_MOST = 0.34; /* share of the board's width */
static const double ROW_MOST = 0.34;    /* share of the board's height */
static const double BROAD = 1.12;       /* width over height from which on there is a column */
static const double MAP_KEEPS = 0.95;   /* of the width as height, before a row is high or double */
/* Height over width of a map that is too low, and how much more a column must leave then. */
static const double SLIT = 0.5, MUCH = 1.3;
static const double LOW_EM = 9.0;       /* height of a line of blocks that is always given */

typedef enum {
  BLOCK_WIND, BLOCK_COMPASS, BLOCK_SCALE, BLOCK_TRIANGLE, BLOCK_CHART, BLOCK_LEGEND, BLOCK_COUNT
} block;

typedef struct {
  bool has[BLOCK_COUNT];
} wanted;

/* --- sizes --------------------------------------------------------------------------------- */

static ox_extent compass_extent(const ox_picture *p) {
  double e = p->size.small;
  const ox_furniture *f = &p->furniture;
  return (ox_extent){fmax(4.4 * e, f->variation.width), 5.0 * e + f->variation.height};
}

static ox_extent wind_extent(const ox_picture *p) {
  double e = p->size.small;
  const ox_lettering *t = &p->furniture.wind_words;
  return (ox_extent){fmax(5.0 * e, t->width), 5.0 * e + t->height};
}

static ox_extent rows_extent(const ox_picture *p) {
  double e = p->size.small;
  double width = fmax(p->furniture.row_sample.width + 2.4 * e, p->furniture.triangle_head.width);
  return (ox_extent){width, OX_TRIANGLE_ROWS * 1.4 * e};
}

static ox_extent scale_extent(const ox_picture *p) {
  return (ox_extent){8.0 * p->size.small, 2.3 * p->size.small};
}

static wanted wanted_blocks(const ox_picture *p) {
  bool furniture = ox_has_layer(p, OX_LAYER_FURNITURE);
  wanted w = {{false}};
  w.has[BLOCK_COMPASS] = furniture;
  w.has[BLOCK_SCALE] = furniture && !p->scene.framed;
  w.has[BLOCK_LEGEND] = furniture && !p->scene.framed && p->furniture.legend.count > 0;
  w.has[BLOCK_WIND] = ox_has_layer(p, OX_LAYER_WIND);
  w.has[BLOCK_TRIANGLE] = ox_has_layer(p, OX_LAYER_TRIANGLE);
  w.has[BLOCK_CHART] = p->furniture.chart.count > 0;
  return w;
}

/* Gives up the first block of a list that is still there; false when none is. */
static bool give_up(wanted *w, const block *order) {
  for (int i = 0; i < BLOCK_COUNT; i++) {
    if (!w->has[order[i]]) continue;
    w->has[order[i]] = false;
    return true;
  }
  return false;
}

/* --- column beside the map ----------------------------------------------------------------- */

static double column_width(const ox_picture *p, const wanted *w) {
  double e = p->size.small, width = 0;
  bool wind = w->has[BLOCK_WIND], compass = w->has[BLOCK_COMPASS];
  if (compass || wind)
    width = (compass ? compass_extent(p).width : 0) + (wind ? wind_extent(p).width : 0) +
            (compass && wind ? 0.8 * e : 0);
  if (w->has[BLOCK_TRIANGLE]) width = fmax(width, rows_extent(p).width);
  if (w->has[BLOCK_CHART]) width = fmax(width, ox_chart_extent(p).width);
  if (w->has[BLOCK_LEGEND]) width = fmax(width, ox_legend_extent(p).width);
  if (w->has[BLOCK_SCALE]) width = fmax(width, scale_extent(p).width);
  return width;
}

/* Compass and wind stand side by side. */
static double top_height(const ox_picture *p, const wanted *w) {
  return fmax(w->has[BLOCK_COMPASS] ? compass_extent(p).height : 0,
              w->has[BLOCK_WIND] ? wind_extent(p).height : 0);
}

static double column_height(const ox_picture *p, const wanted *w, double square) {
  double e = p->size.small, gap = 0.9 * e, height = 0, top = top_height(p, w);
  if (top > 0) height += top + gap;
  if (w->has[BLOCK_TRIANGLE]) height += 1.5 * e + square + rows_extent(p).height + gap;
  if (w->has[BLOCK_CHART]) height += ox_chart_extent(p).height + gap;
  if (w->has[BLOCK_LEGEND]) height += ox_legend_extent(p).height + gap;
  if (w->has[BLOCK_SCALE]) height += scale_extent(p).height + gap;
  return height - gap;
}

/* Gives up blocks until the column fits; *square is the side of the triangle's drawing. */
static wanted fitting(ox_picture *p, ox_rect room, double *square) {
  static const block order[BLOCK_COUNT] = {BLOCK_LEGEND, BLOCK_CHART,   BLOCK_TRIANGLE,
                                           BLOCK_SCALE,  BLOCK_COMPASS, BLOCK_WIND};
  double e = p->size.small;
  wanted w = wanted_blocks(p);
  for (;;) {
    *square = fmin(column_width(p, &w) * 0.86, room.height - column_height(p, &w, 0.0));
    bool narrow = column_width(p, &w) <= COLUMN_MOST * p->width;
    if (narrow && (w.has[BLOCK_TRIANGLE] ? *square >= 4.5 * e : *square >= 0.0)) break;
    if (narrow && w.has[BLOCK_LEGEND] && ox_legend_shorten(p)) continue;
    if (!give_up(&w, order)) break;
  }
  *square = fmin(*square, 12.0 * e);
  return w;
}

static void place_top(ox_picture *p, const wanted *w, double x, double y, double width) {
  ox_furniture *f = &p->furniture;
  bool wind = w->has[BLOCK_WIND], compass = w->has[BLOCK_COMPASS];
  if (wind) {
    double wide = compass ? wind_extent(p).width : width;
    f->wind_at = (ox_rect){x, y, wide, wind_extent(p).height};
  }
  if (compass) {
    double wide = wind ? compass_extent(p).width : width;
    f->compass_at = (ox_rect){x + width - wide, y, wide, compass_extent(p).height};
  }
}

/* Takes a rectangle off the foot of the column. */
static ox_rect from_below(double x, double width, double height, double gap, double *bottom) {
  *bottom -= height;
  ox_rect at = {x, *bottom, width, height};
  *bottom -= gap;
  return at;
}

static void place_column(ox_picture *p, ox_rect *room) {
  double e = p->size.small, square = 0;
  wanted w = fitting(p, *room, &square);
  double width = column_width(p, &w);
  if (!(width > 0.0)) return;
  ox_furniture *f = &p->furniture;
  double x = room->x + room->width - width, y = room->y, bottom = room->y + room->height;
  double spare = fmax(0.0, room->height - column_height(p, &w, square));
  double gap = fmin(1.6 * e, 0.9 * e + spare / 5);
  place_top(p, &w, x, y, width);
  if (top_height(p, &w) > 0) y += top_height(p, &w) + gap;
  if (w.has[BLOCK_TRIANGLE])
    f->triangle_at = (ox_rect){x, y, width, 1.5 * e + square + rows_extent(p).height};
  if (w.has[BLOCK_SCALE])
    f->scale_at = from_below(x, width, scale_extent(p).height, gap, &bottom);
  if (w.has[BLOCK_LEGEND])
    f->legend_at = from_below(x, width, ox_legend_extent(p).height, gap, &bottom);
  if (w.has[BLOCK_CHART]) {
    double more = fmin(3.0 * e, fmax(0.0, spare - 4.0 * (gap - 0.9 * e)));
    f->chart_at = from_below(x, width, ox_chart_extent(p).height + more, gap, &bottom);
  }
  room->width -= width + 1.2 * e;
}

/* --- row below the map --------------------------------------------------------------------- */

#define LINES_MOST 2

typedef struct {
  ox_extent size[BLOCK_COUNT];
  int line[BLOCK_COUNT]; /* -1: not there */
  int lines;
  double height[LINES_MOST];
} row_plan;

static void measure_row(const ox_picture *p, row_plan *r) {
  double e = p->size.small;
  *r = (row_plan){.lines = 0};
  r->size[BLOCK_WIND] = wind_extent(p);
  r->size[BLOCK_COMPASS] = compass_extent(p);
  r->size[BLOCK_SCALE] = (ox_extent){6.5 * e, scale_extent(p).height};
  r->size[BLOCK_CHART] = ox_chart_extent(p);
  r->size[BLOCK_LEGEND] = ox_legend_extent(p);
  /* The triangle's drawing is as wide as it is high, and its words stand beside it. */
  r->size[BLOCK_TRIANGLE] = (ox_extent){8.4 * e + rows_extent(p).width, 8.0 * e};
}

/* Sets the blocks one beside the other, in two lines at most; false where they do not fit. */
static bool flow(const ox_picture *p, const wanted *w, double width, row_plan *r) {
  double gap = 1.1 * p->size.small, x = 0.0;
  int line = 0;
  measure_row(p, r);
  for (int i = 0; i < BLOCK_COUNT; i++) {
    r->line[i] = -1;
    if (!w->has[i]) continue;
    if (r->size[i].width > width) return false;
    if (x > 0.0 && x + r->size[i].width > width) {
      line++;
      x = 0.0;
    }
    if (line == LINES_MOST) return false;
    r->line[i] = line;
    r->lines = line + 1;
    r->height[line] = fmax(r->height[line], r->size[i].height);
    x += r->size[i].width + gap;
  }
  return true;
}

static double row_gap(const ox_picture *p) {
  return 0.9 * p->size.small;
}

static double all_lines(const ox_picture *p, const row_plan *r) {
  double height = 0.0;
  for (int line = 0; line < r->lines; line++) height += r->height[line] + row_gap(p);
  return height;
}

/* One low line is for every board, a high one or two only where the map has height to spare. */
static bool leaves_map(const ox_picture *p, const ox_rect *room, const row_plan *r) {
  double height = all_lines(p, r);
  if (height > ROW_MOST * p->height) return false;
  bool low = r->lines <= 1 && r->height[0] <= LOW_EM * p->size.small;
  return low || room->height - height >= MAP_KEEPS * room->width;
}

/* A long legend may be as low as the other blocks when it is set in columns. */
static bool lowest(ox_picture *p, const wanted *w, const ox_rect *room, row_plan *best) {
  int best_columns = 0;
  row_plan r;
  for (int columns = 1; columns <= 3; columns++) {
    p->furniture.legend.columns = columns;
    if (!flow(p, w, room->width, &r) || !leaves_map(p, room, &r)) continue;
    if (best_columns > 0 && all_lines(p, &r) >= all_lines(p, best)) continue;
    *best = r;
    best_columns = columns;
  }
  p->furniture.legend.columns = best_columns > 0 ? best_columns : 1;
  return best_columns > 0;
}

static wanted fitting_row(ox_picture *p, const ox_rect *room, row_plan *r) {
  static const block order[BLOCK_COUNT] = {BLOCK_TRIANGLE, BLOCK_CHART,   BLOCK_LEGEND,
                                           BLOCK_SCALE,    BLOCK_COMPASS, BLOCK_WIND};
  wanted w = wanted_blocks(p);
  for (;;) {
    if (lowest(p, &w, room, r)) return w;
    bool broad = w.has[BLOCK_TRIANGLE] || w.has[BLOCK_CHART];
    if (w.has[BLOCK_LEGEND] && !broad && ox_legend_shorten(p)) continue;
    if (!give_up(&w, order)) return w;
  }
}

static ox_rect *place_of(ox_furniture *f, block which) {
  switch (which) {
  case BLOCK_WIND: return &f->wind_at;
  case BLOCK_COMPASS: return &f->compass_at;
  case BLOCK_SCALE: return &f->scale_at;
  case BLOCK_TRIANGLE: return &f->triangle_at;
  case BLOCK_CHART: return &f->chart_at;
  case BLOCK_LEGEND:
  case BLOCK_COUNT: break;
  }
  return &f->legend_at;
}

/* One line of blocks, spread over the width; a legend that is not alone stands at the end. */
static void place_line(ox_picture *p, const row_plan *r, int line, ox_rect at) {
  double used = 0.0, e = p->size.small;
  int count = 0;
  for (int i = 0; i < BLOCK_COUNT; i++)
    if (r->line[i] == line) used += r->size[i].width, count++;
  double gap = count > 1 ? fmin((at.width - used) / (count - 1), 5.0 * e) : 0.0, x = at.x;
  for (int i = 0; i < BLOCK_COUNT; i++) {
    if (r->line[i] != line) continue;
    ox_extent size = r->size[i];
    ox_rect place = {x, at.y, size.width, size.height};
    if (i == BLOCK_LEGEND && count > 1) place.x = at.x + at.width - size.width;
    if (i == BLOCK_SCALE) place.y += at.height - size.height - 0.2 * e;
    *place_of(&p->furniture, (block)i) = place;
    x += size.width + gap;
  }
}

static void place_row(ox_picture *p, ox_rect *room) {
  row_plan r = {.lines = 0};
  fitting_row(p, room, &r);
  room->height -= all_lines(p, &r);
  double y = room->y + room->height;
  for (int line = 0; line < r.lines; line++) {
    y += row_gap(p);
    place_line(p, &r, line, (ox_rect){room->x, y, room->width, r.height[line]});
    y += r.height[line];
  }
}

static double lesser_side(const ox_rect *r) { return fmin(r->width, r->height); }

bool ox_is_upright(const ox_picture *p) { return p->upright; }

/* Type that is large for the board leaves a row so high that the map is a slit: a column then takes
 * less, where it leaves clearly more. */
void ox_place_blocks(ox_picture *p, ox_rect *room) {
  ox_rect below = *room, beside = *room;
  ox_furniture before = p->furniture; /* only places and rows are changed */
  p->upright = p->width < BROAD * p->height;
  if (p->upright) {
    place_row(p, &below);
    if (below.height >= SLIT * below.width) {
      *room = below;
      return;
    }
  }
  ox_furniture with_row = p->furniture;
  p->furniture = before;
  place_column(p, &beside);
  p->upright = p->upright && lesser_side(&beside) < MUCH * lesser_side(&below);
  if (p->upright) p->furniture = with_row;
  *room = p->upright ? below : beside;
}
