/* The wind arrow (WMO-No. 485) with its figures, and the triangle of velocities.
 *
 * Wind arrow: the shaft points from the circle to where the wind comes from; seen looking
 * downwind the feathers are on the left (northern hemisphere). Half feather 5 kt, feather 10,
 * pennant 50, rounded to the nearest 5; the figures beside it are not rounded so. */
#include <math.h>
#include <stdio.h>

#include "oxbow/text.h"
#include "paint_private.h"

/* --- wind arrow, lengths as shares of the shaft -------------------------------------------- */

static const double FEATHER = 0.36, LEAN_DEG = 113.0, SPACING = 0.135;
static const double PENNANT_BASE = 0.25, PENNANT_GAP = 0.1, SHAFT = 0.86;
static const double ARROW_EM = 4.6, DOT = 0.09;
static const double WORDS_EM = 5.2, APART_EM = 0.25; /* the words below, and what keeps them so */

typedef struct {
  ox_vec tip, out, feather; /* unit along the shaft outwards; unit along a feather */
  double shaft;
} arrow;

static ox_vec on_shaft(const arrow *a, double from_tip) {
  return ox_vec_add(a->tip, ox_vec_scale(a->out, -from_tip * a->shaft));
}

static void pennant(cairo_t *cr, const arrow *a, double from_tip) {
  ox_vec p = on_shaft(a, from_tip), q = on_shaft(a, from_tip + PENNANT_BASE);
  ox_vec top = ox_vec_add(p, ox_vec_scale(a->feather, FEATHER * a->shaft));
  cairo_move_to(cr, p.x, p.y);
  cairo_line_to(cr, top.x, top.y);
  cairo_line_to(cr, q.x, q.y);
  cairo_close_path(cr);
  cairo_fill(cr);
}

static void feather(cairo_t *cr, const arrow *a, double from_tip, double share) {
  ox_vec p = on_shaft(a, from_tip);
  ox_vec q = ox_vec_add(p, ox_vec_scale(a->feather, share * FEATHER * a->shaft));
  cairo_move_to(cr, p.x, p.y);
  cairo_line_to(cr, q.x, q.y);
}

static void flags(cairo_t *cr, const arrow *a, int fives) {
  double at = 0.0;
  for (; fives >= 10; fives -= 10) {
    pennant(cr, a, at);
    at += PENNANT_BASE + (fives - 10 >= 10 ? 0.0 : PENNANT_GAP);
  }
  if (at == 0.0 && fives == 1) at = SPACING; /* a lone half feather is set in */
  for (; fives >= 2; fives -= 2, at += SPACING) feather(cr, a, at, 1.0);
  if (fives == 1) feather(cr, a, at, 0.5);
  cairo_stroke(cr);
}

static int fives_of(const ox_setup *s) { return (int)lround(s->wind_speed_kt / 5.0); }

static arrow arrow_about(const ox_picture *p, ox_vec middle, double size) {
  double from = ox_dev_bearing(p, p->scene.flight->setup.wind_from_true_deg);
  arrow a = {.shaft = SHAFT * size, .out = ox_dev_unit(from)};
  /* Looking downwind (from + 180), left is from + 90: the clockwise side from the circle. */
  a.feather = ox_dev_unit(from + (180.0 - LEAN_DEG));
  a.tip = ox_vec_add(middle, ox_vec_scale(a.out, 0.5 * a.shaft));
  return a;
}

static void wind_arrow(const ox_picture *p, cairo_t *cr, ox_vec middle, double size) {
  int fives = fives_of(&p->scene.flight->setup);
  cairo_set_line_width(cr, fmax(0.045 * size, p->size.course));
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_MITER);
  cairo_set_dash(cr, NULL, 0, 0.0);
  if (fives == 0) {
    cairo_arc(cr, middle.x, middle.y, 0.16 * size, 0.0, 2.0 * 3.14159265358979323846);
    cairo_stroke(cr);
    return;
  }
  arrow a = arrow_about(p, middle, size);
  ox_vec base = on_shaft(&a, 1.0);
  cairo_arc(cr, base.x, base.y, DOT * size, 0.0, 2.0 * 3.14159265358979323846);
  cairo_fill(cr);
  cairo_move_to(cr, base.x, base.y);
  cairo_line_to(cr, a.tip.x, a.tip.y);
  cairo_stroke(cr);
  flags(cr, &a, fives);
}

/* How far down an arrow about the origin reaches: its circle, or its uppermost feather. */
static double reach_down(const ox_picture *p, double size) {
  if (fives_of(&p->scene.flight->setup) == 0) return 0.0;
  arrow a = arrow_about(p, (ox_vec){0, 0}, size);
  return fmax(a.tip.y + fmax(FEATHER * a.shaft * a.feather.y, 0.0), DOT * size - a.tip.y);
}

/* Words and arrow share the block, either above the other. An arrow whose feathers would reach the
 * words is moved up. */
static ox_vec arrow_middle(const ox_picture *p) {
  const ox_furniture *f = &p->furniture;
  double e = p->size.small, x = f->wind_at.x + f->wind_at.width / 2;
  if (p->scene.wind_words_above)
    return (ox_vec){x, f->wind_at.y + f->wind_words.ink.height + 2.8 * e};
  double lowest = (WORDS_EM - APART_EM) * e - reach_down(p, ARROW_EM * e);
  return (ox_vec){x, f->wind_at.y + fmin(2.6 * e, lowest)};
}

bool ox_picture_wind_arrow(const ox_picture *p, ox_vec *middle, double *reach) {
  ox_rect at = p->furniture.wind_at;
  if (at.width <= 0.0) return false;
  *middle = arrow_middle(p);
  *reach = 0.5 * SHAFT * ARROW_EM * p->size.small;
  return true;
}

void ox_layer_wind(const ox_picture *p, cairo_t *cr) {
  const ox_furniture *f = &p->furniture;
  ox_rect at = f->wind_at;
  if (at.width <= 0.0) return;
  double e = p->size.small;
  ox_hue_set(p, cr, OX_HUE_WIND);
  wind_arrow(p, cr, arrow_middle(p), ARROW_EM * e);
  ox_hue_set(p, cr, OX_HUE_TEXT);
  const ox_lettering *t = &f->wind_words;
  double y = p->scene.wind_words_above ? at.y : at.y + WORDS_EM * e;
  ox_lettering_show_ink(t, cr, at.x + (at.width - t->ink.width) / 2, y);
}

/* --- triangle of velocities ---------------------------------------------------------------- */

static void vector(const ox_picture *p, cairo_t *cr, ox_vec from, ox_vec to, double width) {
  ox_vec d = ox_vec_sub(to, from);
  double length = ox_vec_length(d), head = fmin(0.75 * p->size.small, 0.45 * length);
  if (length < 0.5) return;
  ox_vec u = ox_vec_scale(d, 1.0 / length), neck = ox_vec_add(to, ox_vec_scale(u, -0.7 * head));
  ox_lines tip = {0};
  cairo_set_line_width(cr, width);
  cairo_move_to(cr, from.x, from.y);
  cairo_line_to(cr, neck.x, neck.y);
  cairo_stroke(cr);
  ox_lines_head(&tip, to, u, head);
  cairo_set_dash(cr, NULL, 0, 0.0);
  ox_path_add_heads(cr, &tip);
  cairo_fill(cr);
  ox_lines_clear(&tip);
}

typedef enum { VECTOR_AIR, VECTOR_WIND, VECTOR_GROUND } vector_kind;

static void vector_style(const ox_picture *p, cairo_t *cr, vector_kind kind, double *width) {
  double dashes[2] = {0.42 * p->size.small, 0.26 * p->size.small};
  static const ox_hue inks[] = {OX_HUE_TEXT, OX_HUE_WIND, OX_HUE_TRACK};
  ox_hue_set(p, cr, inks[kind]);
  cairo_set_dash(cr, dashes, kind == VECTOR_AIR ? 2 : 0, 0.0);
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
  *width = kind == VECTOR_GROUND ? p->size.track : fmax(0.55 * p->size.track, p->size.course);
}

static void rows_text(ox_picture *p, const ox_state *s) {
  const ox_setup *setup = &p->scene.flight->setup;
  char words[64], direction[24], kt[16];
  ox_direction_text(p, direction, sizeof direction, s->heading_true_deg);
  ox_number_text(kt, sizeof kt, setup->tas_kt, 0);
  snprintf(words, sizeof words, _("hdg %s  %s kt"), direction, kt);
  ox_lettering_change(&p->furniture.row[VECTOR_AIR], p->typesetter, words);
  ox_wind_from_text(p, direction, sizeof direction);
  ox_number_text(kt, sizeof kt, setup->wind_speed_kt, 0);
  snprintf(words, sizeof words, "%s  %s kt", direction, kt);
  ox_lettering_change(&p->furniture.row[VECTOR_WIND], p->typesetter,
                      setup->wind_speed_kt < 0.5 ? C_("the wind", "calm") : words);
  ox_direction_text(p, direction, sizeof direction, s->track_true_deg);
  ox_number_text(kt, sizeof kt, s->gs_kt, 0);
  snprintf(words, sizeof words, _("track %s  %s kt"), direction, kt);
  ox_lettering_change(&p->furniture.row[VECTOR_GROUND], p->typesetter, words);
}

static void rows(ox_picture *p, cairo_t *cr, double x, double y) {
  double e = p->size.small, width;
  for (int i = 0; i < OX_TRIANGLE_ROWS; i++, y += 1.4 * e) {
    const ox_lettering *t = &p->furniture.row[i];
    vector_style(p, cr, (vector_kind)i, &width);
    vector(p, cr, (ox_vec){x, y + 0.7 * e}, (ox_vec){x + 1.8 * e, y + 0.7 * e}, width);
    ox_hue_set(p, cr, OX_HUE_TEXT);
    ox_lettering_show(t, cr, x + 2.4 * e, y + 0.7 * e - t->height / 2);
  }
}

/* Drawn so large that no heading ever leaves the square: the triangle's sides never exceed the
 * sum of both speeds. */
static void triangle(const ox_picture *p, cairo_t *cr, ox_rect square, const ox_state *s) {
  const ox_setup *setup = &p->scene.flight->setup;
  double most_kt = fmax(setup->tas_kt + setup->wind_speed_kt, 1.0);
  double k = 0.94 * fmin(square.width, square.height) / most_kt, width;
  ox_vec air = ox_vec_scale(ox_dev_unit(ox_dev_bearing(p, s->heading_true_deg)), setup->tas_kt * k);
  ox_vec wind = ox_vec_scale(ox_dev_unit(ox_dev_bearing(p, setup->wind_from_true_deg + 180.0)),
                             setup->wind_speed_kt * k);
  ox_vec ground = ox_vec_add(air, wind);
  ox_vec lo = {fmin(0, fmin(air.x, ground.x)), fmin(0, fmin(air.y, ground.y))};
  ox_vec hi = {fmax(0, fmax(air.x, ground.x)), fmax(0, fmax(air.y, ground.y))};
  ox_vec middle = ox_vec_scale(ox_vec_add(lo, hi), 0.5);
  ox_vec a = ox_vec_sub(ox_rect_centre(square), middle);
  ox_vec b = ox_vec_add(a, air), c = ox_vec_add(a, ground);
  vector_style(p, cr, VECTOR_GROUND, &width);
  vector(p, cr, a, c, width);
  vector_style(p, cr, VECTOR_AIR, &width);
  vector(p, cr, a, b, width);
  vector_style(p, cr, VECTOR_WIND, &width);
  vector(p, cr, b, c, width);
}

void ox_layer_triangle(ox_picture *p, cairo_t *cr, double t_s) {
  ox_rect at = p->furniture.triangle_at;
  if (at.width <= 0.0 || p->scene.flight->leg_count == 0) return;
  double e = p->size.small;
  ox_state s = ox_flight_at(p->scene.whole ? p->scene.whole : p->scene.flight, t_s);
  rows_text(p, &s);
  ox_hue_set(p, cr, OX_HUE_TEXT);
  ox_lettering_show(&p->furniture.triangle_head, cr, at.x, at.y);
  bool beside = at.width > 1.6 * at.height;
  double rows_height = OX_TRIANGLE_ROWS * 1.4 * e;
  ox_rect square = {at.x, at.y + 1.5 * e, at.width, at.height - 1.5 * e - rows_height};
  if (beside) square = (ox_rect){at.x, at.y + 1.5 * e, at.height, at.height - 1.5 * e};
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
  triangle(p, cr, square, &s);
  if (beside)
    rows(p, cr, at.x + at.height + 0.4 * e, at.y + 1.8 * e);
  else
    rows(p, cr, at.x, at.y + at.height - rows_height);
}
