/* The furniture's places: bands above and below, and a column (a row on upright boards) beside
 * the map. The map gets what is left, so that nothing here ever hides the track.
 *
 * On small boards whole blocks give way, least important first; the caution stays longest. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "facts.h"
#include "oxbow/words.h"

static const double COLUMN_MOST = 0.34; /* share of the board's width */
static const double ROW_MOST = 0.34;    /* share of the board's height */
static const int LEGEND_ROWS = 6; /* lines that are ever in use together */
static const double BAND_MOST = 0.24;   /* share of the height for either band */

static const char *const legend_words[OX_LINE_COUNT] = {
    [OX_LINE_TRACK] = "track over the ground", [OX_LINE_LATER] = "later circuits",
    [OX_LINE_ENTRY] = "entry",                 [OX_LINE_ARRIVAL] = "arrival",
    [OX_LINE_STILL_AIR] = "hold in still air", [OX_LINE_COURSE] = "inbound course",
    [OX_LINE_ABEAM] = "abeam the fix"};

/* --- texts --------------------------------------------------------------------------------- */

static void make_north(ox_picture *p) {
  ox_furniture *f = &p->furniture;
  double variation_deg = p->scene.c->variation_deg;
  if (variation_deg == 0.0) {
    ox_lettering_make(&f->north_true, p->context, "N", p->size.small, OX_TEXT_BOLD, 0);
    ox_lettering_make(&f->variation, p->context, "var 0°", p->size.small, OX_TEXT_PLAIN, 0);
    return;
  }
  char figure[24], words[40];
  bool whole = fabs(variation_deg - round(variation_deg)) < 0.05;
  ox_number_text(figure, sizeof figure, fabs(variation_deg), whole ? 0 : 1);
  snprintf(words, sizeof words, "var %s° %s", figure, variation_deg < 0 ? "W" : "E");
  ox_lettering_make(&f->north_true, p->context, "T", p->size.small, OX_TEXT_BOLD, 0);
  ox_lettering_make(&f->north_magnetic, p->context, "M", p->size.small, OX_TEXT_BOLD, 0);
  ox_lettering_make(&f->variation, p->context, words, p->size.small, OX_TEXT_PLAIN, 0);
}

static void make_wind(ox_picture *p) {
  const ox_setup *s = &p->scene.flight->setup;
  char words[64], from[24], kt[16];
  ox_wind_from_text(p, from, sizeof from);
  ox_number_text(kt, sizeof kt, s->wind_speed_kt, 0);
  if (s->wind_speed_kt < 0.5)
    snprintf(words, sizeof words, "calm");
  else
    snprintf(words, sizeof words, "%s\n%s kt", from, kt);
  ox_lettering_make(&p->furniture.wind_words, p->context, words, p->size.small,
                    OX_TEXT_BOLD | OX_TEXT_CENTRED, 0);
}

static void make_texts(ox_picture *p) {
  ox_furniture *f = &p->furniture;
  if (ox_has_layer(p, OX_LAYER_FURNITURE)) {
    make_north(p);
    for (int i = 0; i < OX_LINE_COUNT; i++)
      ox_lettering_make(&f->legend[i], p->context, legend_words[i], p->size.small,
                        OX_TEXT_PLAIN, 0);
    ox_lettering_make(&f->scale_words, p->context, "0.05 NM", p->size.small, OX_TEXT_PLAIN, 0);
  }
  if (ox_has_layer(p, OX_LAYER_WIND)) make_wind(p);
  if (!ox_has_layer(p, OX_LAYER_TRIANGLE)) return;
  ox_lettering_make(&f->triangle_head, p->context, "triangle of velocities", p->size.small,
                    OX_TEXT_BOLD, 0);
  ox_lettering_make(&f->row_sample, p->context, "track 888 M  888 kt", p->size.small,
                    OX_TEXT_BOLD, 0);
  for (int i = 0; i < OX_TRIANGLE_ROWS; i++)
    ox_lettering_make(&f->row[i], p->context, "", p->size.small, OX_TEXT_PLAIN, 0);
}

/* --- bands --------------------------------------------------------------------------------- */

/* The caution whole, in as many lines as it takes, smaller rather than cut. */
static double place_caution(ox_picture *p, double pad) {
  ox_furniture *f = &p->furniture;
  double width = p->width - 2 * pad, size = p->size.small;
  for (int attempt = 0; attempt < 12; attempt++, size *= 0.88) {
    ox_lettering_make(&f->caution, p->context, ox_words_caution_line(), size, OX_TEXT_PLAIN, width);
    if (f->caution.height <= 0.16 * p->height && f->caution.width <= width + 0.5 && size >= 4.0)
      break;
  }
  if (f->caution.height > 0.3 * p->height || width < 24.0) return 0.0;
  f->caution_at = (ox_rect){pad, p->height - 0.7 * pad - f->caution.height, width,
                            f->caution.height};
  return f->caution.height + 1.0 * pad;
}

/* Sets a line at *y where the band above the map has room for it, and moves *y below it. */
static void place_line(const ox_picture *p, const ox_lettering *text, ox_rect *at, double pad,
                       double *y) {
  double width = p->width - 2 * pad;
  if (text->width > width + 0.5 || *y + text->height + 0.5 * pad > BAND_MOST * p->height) return;
  *at = (ox_rect){pad, *y, width, text->height};
  *y += text->height + 0.15 * pad;
}

/* The facts in as much detail as the width takes. */
static void make_facts(ox_picture *p, double width) {
  char words[512];
  for (int detail = 3; detail >= 0; detail--) {
    ox_facts_words(p, words, sizeof words, detail);
    ox_lettering_make(&p->furniture.facts, p->context, words, p->size.small, OX_TEXT_PLAIN, 0);
    if (p->furniture.facts.width <= width) return;
  }
}

/* Returns where the map may begin. */
static double place_title(ox_picture *p, double pad) {
  ox_furniture *f = &p->furniture;
  double width = p->width - 2 * pad, y = 0.7 * pad;
  if (width < 24.0) return pad;
  char words[512];
  ox_title_words(p, words, sizeof words);
  ox_lettering_make(&f->title, p->context, words, p->size.title,
                    OX_TEXT_BOLD | OX_TEXT_ONE_LINE, width);
  place_line(p, &f->title, &f->title_at, pad, &y);
  make_facts(p, width);
  place_line(p, &f->facts, &f->facts_at, pad, &y);
  const char *notice = ox_notice_words(p);
  if (notice) {
    ox_lettering_make(&f->notice, p->context, notice, p->size.label, OX_TEXT_BOLD, width);
    place_line(p, &f->notice, &f->notice_at, pad, &y);
  }
  return y + 0.25 * pad;
}

/* --- blocks -------------------------------------------------------------------------------- */

typedef struct {
  double width, height;
} extent;

static extent compass_extent(const ox_picture *p) {
  double e = p->size.small;
  const ox_furniture *f = &p->furniture;
  return (extent){fmax(4.4 * e, f->variation.width), 5.0 * e + f->variation.height};
}

static extent wind_extent(const ox_picture *p) {
  double e = p->size.small;
  const ox_lettering *t = &p->furniture.wind_words;
  return (extent){fmax(5.0 * e, t->width), 5.0 * e + 2.35 * e};
}

static extent legend_extent(const ox_picture *p) {
  double e = p->size.small, width = 0;
  for (int i = 0; i < OX_LINE_COUNT; i++) width = fmax(width, p->furniture.legend[i].width);
  return (extent){width + 3.4 * e, p->furniture.legend_rows * 1.45 * e};
}

static extent rows_extent(const ox_picture *p) {
  double e = p->size.small;
  double width = fmax(p->furniture.row_sample.width + 2.4 * e, p->furniture.triangle_head.width);
  return (extent){width, OX_TRIANGLE_ROWS * 1.4 * e};
}

static extent scale_extent(const ox_picture *p) {
  return (extent){8.0 * p->size.small, 2.3 * p->size.small};
}

/* --- column beside the map ----------------------------------------------------------------- */

typedef struct {
  bool compass, wind, triangle, legend, scale;
} wanted;

static wanted wanted_blocks(const ox_picture *p) {
  bool furniture = ox_has_layer(p, OX_LAYER_FURNITURE);
  return (wanted){furniture, ox_has_layer(p, OX_LAYER_WIND), ox_has_layer(p, OX_LAYER_TRIANGLE),
                  furniture, furniture};
}

static double column_width(const ox_picture *p, wanted w) {
  double e = p->size.small, width = 0;
  if (w.compass || w.wind)
    width = (w.compass ? compass_extent(p).width : 0) + (w.wind ? wind_extent(p).width : 0) +
            (w.compass && w.wind ? 0.8 * e : 0);
  if (w.triangle) width = fmax(width, rows_extent(p).width);
  if (w.legend) width = fmax(width, legend_extent(p).width);
  if (w.scale) width = fmax(width, scale_extent(p).width);
  return width;
}

/* Compass and wind stand side by side. */
static double top_height(const ox_picture *p, wanted w) {
  return fmax(w.compass ? compass_extent(p).height : 0, w.wind ? wind_extent(p).height : 0);
}

static double column_height(const ox_picture *p, wanted w, double square) {
  double e = p->size.small, gap = 0.9 * e, height = 0;
  if (w.compass || w.wind)
    height += top_height(p, w) + gap;
  if (w.triangle) height += 1.5 * e + square + rows_extent(p).height + gap;
  if (w.legend) height += legend_extent(p).height + gap;
  if (w.scale) height += scale_extent(p).height + gap;
  return height - gap;
}

/* Gives up blocks until the column fits; *square is the side of the triangle's drawing. */
static wanted fitting(ox_picture *p, wanted w, ox_rect room, double *square) {
  double e = p->size.small;
  for (int round = -1; round < 6; round++) {
    *square = fmin(column_width(p, w) * 0.86,
                   room.height - column_height(p, w, 0.0));
    bool narrow = column_width(p, w) <= COLUMN_MOST * p->width;
    if (narrow && (w.triangle ? *square >= 4.5 * e : *square >= 0.0)) break;
    if (round == -1) p->furniture.legend_rows--; /* abeam goes first: it has a label too */
    if (round == 0) w.legend = false;
    if (round == 1) w.triangle = false;
    if (round == 2) w.scale = false;
    if (round == 3) w.compass = false;
    if (round == 4) w.wind = false;
  }
  *square = fmin(*square, 12.0 * e);
  return w;
}

static void place_column(ox_picture *p, ox_rect *room) {
  double e = p->size.small, square = 0;
  wanted w = fitting(p, wanted_blocks(p), *room, &square);
  double width = column_width(p, w);
  if (!(width > 0.0)) return;
  ox_furniture *f = &p->furniture;
  double x = room->x + room->width - width, y = room->y, bottom = room->y + room->height;
  double gap = fmin(1.6 * e, 0.9 * e + fmax(0.0, room->height - column_height(p, w, square)) / 4);
  double top = top_height(p, w);
  if (w.wind) {
    double wide = w.compass ? wind_extent(p).width : width;
    f->wind_at = (ox_rect){x, y, wide, wind_extent(p).height};
  }
  if (w.compass) {
    double wide = w.wind ? compass_extent(p).width : width;
    f->compass_at = (ox_rect){x + width - wide, y, wide, compass_extent(p).height};
  }
  if (top > 0) y += top + gap;
  if (w.triangle)
    f->triangle_at = (ox_rect){x, y, width, 1.5 * e + square + rows_extent(p).height};
  if (w.scale) {
    bottom -= scale_extent(p).height;
    f->scale_at = (ox_rect){x, bottom, width, scale_extent(p).height};
    bottom -= gap;
  }
  if (w.legend)
    f->legend_at = (ox_rect){x, bottom - legend_extent(p).height, width, legend_extent(p).height};
  room->width -= width + 1.2 * e;
}

/* --- row below the map --------------------------------------------------------------------- */

static void place_row(ox_picture *p, ox_rect *room) {
  wanted w = wanted_blocks(p);
  double e = p->size.small, gap = 1.6 * e;
  double height = 11.4 * e, x = room->x, y;
  if (height > ROW_MOST * p->height) return;
  ox_furniture *f = &p->furniture;
  y = room->y + room->height - height;
  double end = room->x + room->width;
  extent legend = legend_extent(p), compass = compass_extent(p), wind = wind_extent(p);
  if (w.wind && x + wind.width <= end) {
    f->wind_at = (ox_rect){x, y, wind.width, wind.height};
    x += wind.width + gap;
  }
  if (w.compass && x + compass.width <= end) {
    f->compass_at = (ox_rect){x, y, compass.width, compass.height};
    x += compass.width + gap;
  }
  if (w.legend && end - x >= legend.width) {
    f->legend_at = (ox_rect){end - legend.width, y, legend.width, legend.height};
    end -= legend.width + gap;
  }
  double triangle = height + rows_extent(p).width;
  if (w.triangle && end - x >= triangle) {
    f->triangle_at = (ox_rect){x, y, triangle, height};
    x += triangle + gap;
  }
  if (w.scale) {
    double at = f->legend_at.width > 0 ? f->legend_at.x : end - scale_extent(p).width;
    if (at >= x - gap)
      f->scale_at = (ox_rect){at, y + height - 1.9 * e, scale_extent(p).width, 1.9 * e};
  }
  room->height -= height + 0.9 * e;
}

void ox_build_furniture(ox_picture *p) {
  double side = fmin(p->width, p->height);
  double pad = fmin(0.9 * p->size.label, 0.06 * side);
  ox_rect room = {pad, pad, p->width - 2 * pad, p->height - 2 * pad};
  make_texts(p);
  p->furniture.legend_rows = LEGEND_ROWS;
  if (ox_has_layer(p, OX_LAYER_FURNITURE)) {
    double bottom = place_caution(p, pad);
    room.y = fmax(pad, place_title(p, pad) + 0.2 * pad);
    room.height = p->height - room.y - fmax(pad, bottom + 0.5 * pad);
  }
  if (p->width >= 1.12 * p->height)
    place_column(p, &room);
  else
    place_row(p, &room);
  room.width = fmax(room.width, 1.0);
  room.height = fmax(room.height, 1.0);
  p->map = room;
}

void ox_build_scale(ox_picture *p) {
  ox_furniture *f = &p->furniture;
  if (f->scale_at.width <= 0.0) return;
  double most_nm = f->scale_at.width / p->view.dev_per_nm;
  double decade = pow(10.0, floor(log10(most_nm)));
  double share = most_nm / decade;
  f->scale_nm = decade * (share >= 5.0 ? 5.0 : share >= 2.0 ? 2.0 : 1.0);
  char figure[24], words[40];
  int decimals = f->scale_nm < 0.1 ? 2 : f->scale_nm < 1.0 ? 1 : 0;
  ox_number_text(figure, sizeof figure, f->scale_nm, decimals);
  snprintf(words, sizeof words, "%s NM", figure);
  ox_lettering_change(&f->scale_words, words);
}

void ox_furniture_clear(ox_furniture *f) {
  ox_lettering *all[] = {&f->title, &f->facts, &f->notice, &f->caution, &f->north_true,
                    &f->north_magnetic, &f->variation, &f->wind_words, &f->triangle_head,
                    &f->scale_words, &f->row_sample};
  for (size_t i = 0; i < sizeof all / sizeof *all; i++) ox_lettering_clear(all[i]);
  for (int i = 0; i < OX_TRIANGLE_ROWS; i++) ox_lettering_clear(&f->row[i]);
  for (int i = 0; i < OX_LINE_COUNT; i++) ox_lettering_clear(&f->legend[i]);
}
