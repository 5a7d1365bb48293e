/* What several layers need: sources, paths, line styles, figures as text, and finding things in a
 * flight. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "oxbow/words.h"
#include "paint_private.h"

bool ox_has_layer(const ox_picture *p, unsigned layer) {
  return (p->scene.layers & layer) != 0;
}

void ox_hue_set(const ox_picture *p, cairo_t *cr, ox_hue ink) {
  const ox_rgb *c = &p->palette->ink[ink];
  cairo_set_source_rgb(cr, c->r, c->g, c->b);
}

void ox_path_add(cairo_t *cr, const ox_lines *lines) {
  for (size_t i = 0; i < lines->count; i++) {
    const ox_line_point *q = &lines->p[i];
    if (q->move)
      cairo_move_to(cr, q->x, q->y);
    else
      cairo_line_to(cr, q->x, q->y);
  }
}

void ox_path_add_heads(cairo_t *cr, const ox_lines *heads) {
  for (size_t i = 0; i < heads->count; i++) {
    const ox_line_point *q = &heads->p[i];
    if (q->move) {
      if (i > 0) cairo_close_path(cr);
      cairo_move_to(cr, q->x, q->y);
    } else {
      cairo_line_to(cr, q->x, q->y);
    }
  }
  if (heads->count > 0) cairo_close_path(cr);
}

void ox_lines_head(ox_lines *lines, ox_vec tip, ox_vec direction, double length) {
  ox_vec back = ox_vec_add(tip, ox_vec_scale(direction, -length));
  ox_vec across = {-direction.y * length * 0.36, direction.x * length * 0.36};
  ox_vec left = ox_vec_add(back, across), right = ox_vec_sub(back, across);
  ox_lines_segment(lines, left, tip);
  ox_lines_segment(lines, tip, right);
}

static void dash(cairo_t *cr, double a, double b) {
  double both[2] = {a, b};
  cairo_set_dash(cr, both, 2, 0.0);
}

/* Dashes and gaps in widths of the line. */
static void dashes(cairo_t *cr, double width, const double *shares, int count) {
  double scaled[8];
  for (int i = 0; i < count; i++) scaled[i] = shares[i] * width;
  cairo_set_dash(cr, scaled, count, 0.0);
}

void ox_line_style_set(const ox_picture *p, cairo_t *cr, ox_line_kind kind) {
  const ox_sizes *z = &p->size;
  cairo_set_dash(cr, NULL, 0, 0.0);
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
  switch (kind) {
  case OX_LINE_TRACK:
    ox_hue_set(p, cr, OX_HUE_TRACK);
    cairo_set_line_width(cr, z->track);
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_ROUND);
    break;
  case OX_LINE_LATER:
    ox_hue_set(p, cr, OX_HUE_TRACK);
    cairo_set_line_width(cr, z->later);
    break;
  case OX_LINE_ENTRY:
    ox_hue_set(p, cr, OX_HUE_ENTRY);
    cairo_set_line_width(cr, z->entry);
    dash(cr, 5.5 * z->entry, 2.0 * z->entry);
    break;
  case OX_LINE_ARRIVAL:
    ox_hue_set(p, cr, OX_HUE_ENTRY);
    cairo_set_line_width(cr, z->arrival);
    dash(cr, 5.5 * z->entry, 2.0 * z->entry);
    break;
  case OX_LINE_COMPARE:
    ox_hue_set(p, cr, OX_HUE_COMPARE);
    cairo_set_line_width(cr, z->compare);
    dashes(cr, z->compare, (const double[]){6.5, 2.2, 1.4, 2.2}, 4);
    break;
  case OX_LINE_OTHER_1:
    ox_hue_set(p, cr, OX_HUE_COMPARE);
    cairo_set_line_width(cr, z->compare);
    dashes(cr, z->compare, (const double[]){10.0, 2.0, 1.4, 2.0}, 4);
    break;
  case OX_LINE_OTHER_2:
    ox_hue_set(p, cr, OX_HUE_OTHER);
    cairo_set_line_width(cr, z->compare);
    dashes(cr, z->compare, (const double[]){3.4, 1.6, 1.2, 1.6, 1.2, 1.6}, 6);
    break;
  case OX_LINE_ROUTE:
    ox_hue_set(p, cr, OX_HUE_COURSE);
    cairo_set_line_width(cr, 1.25 * z->course);
    dash(cr, 20.0 * z->course, 2.2 * z->course);
    break;
  case OX_LINE_MISSED: /* dashed, as charts draw a missed approach */
    ox_hue_set(p, cr, OX_HUE_COURSE);
    cairo_set_line_width(cr, z->later);
    dash(cr, 1.1 * z->label, 1.1 * z->label);
    break;
  case OX_LINE_ALTERNATIVE:
    ox_hue_set(p, cr, OX_HUE_QUIET);
    cairo_set_line_width(cr, z->entry);
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_ROUND);
    dash(cr, 0.001, 2.2 * z->entry);
    break;
  case OX_LINE_SKETCH:
    ox_hue_set(p, cr, OX_HUE_GUESS);
    cairo_set_line_width(cr, 1.5 * z->track);
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_ROUND);
    break;
  case OX_LINE_SPREAD: /* a band, for the legend */
    ox_hue_set(p, cr, OX_HUE_BAND);
    cairo_set_line_width(cr, 0.9 * z->small);
    break;
  case OX_LINE_AREA:
    ox_hue_set(p, cr, OX_HUE_AREA);
    cairo_set_line_width(cr, z->rose);
    dash(cr, 1.1 * z->label, 0.3 * z->label);
    break;
  case OX_LINE_STILL_AIR:
    ox_hue_set(p, cr, OX_HUE_STILL_AIR);
    cairo_set_line_width(cr, z->still);
    dash(cr, 0.34 * z->label, 0.28 * z->label);
    break;
  case OX_LINE_COURSE:
    ox_hue_set(p, cr, OX_HUE_COURSE);
    cairo_set_line_width(cr, z->course);
    break;
  case OX_LINE_LIMIT:
    ox_hue_set(p, cr, OX_HUE_COURSE);
    cairo_set_line_width(cr, 1.35 * z->course);
    dashes(cr, z->course, (const double[]){11.0, 3.0, 3.0, 3.0, 3.0, 3.0}, 6);
    break;
  case OX_LINE_ABEAM:
  case OX_LINE_COUNT:
    ox_hue_set(p, cr, OX_HUE_COURSE);
    cairo_set_line_width(cr, 1.35 * z->course);
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_ROUND);
    dash(cr, 0.001, 4.0 * z->course);
    break;
  }
}

const ox_leg *ox_find_leg(const ox_flight *flight, ox_leg_kind kind, int circuit) {
  for (size_t i = 0; i < flight->leg_count; i++)
    if (flight->legs[i].kind == kind && flight->legs[i].circuit == circuit)
      return &flight->legs[i];
  return NULL;
}

const ox_event *ox_find_event(const ox_flight *flight, ox_event_kind kind, int circuit) {
  for (size_t i = 0; i < flight->event_count; i++)
    if (flight->events[i].kind == kind && flight->events[i].circuit == circuit)
      return &flight->events[i];
  return NULL;
}

bool ox_is_finite(ox_vec v) {
  return isfinite(v.x) && isfinite(v.y);
}

ox_vec ox_to_dev(const ox_picture *p, ox_vec world_nm) {
  return ox_viewport_to_dev(&p->view, world_nm);
}

double ox_dev_bearing(const ox_picture *p, double true_deg) {
  return ox_norm360_deg(true_deg - p->view.up_deg);
}

const char *ox_magnetic_mark(const ox_picture *p) {
  return p->scene.c->variation_deg != 0.0 ? " M" : "";
}

void ox_number_text(char *buf, size_t bytes, double value, int decimals) {
  static const int units[] = {1, 10, 100};
  int unit = units[decimals < 0 ? 0 : decimals > 2 ? 2 : decimals];
  double scaled = fmin(fmax(round(value * unit), -1e9), 1e9);
  long n = (long)scaled;
  const char *sign = n < 0 ? "-" : "";
  if (n < 0) n = -n;
  if (unit == 1)
    snprintf(buf, bytes, "%s%ld", sign, n);
  else
    snprintf(buf, bytes, "%s%ld.%0*ld", sign, n / unit, unit == 10 ? 1 : 2, n % unit);
}

void ox_direction_text(const ox_picture *p, char *buf, size_t bytes, double true_deg) {
  char bearing[4];
  ox_words_bearing(bearing, ox_magnetic_deg(true_deg, p->scene.c->variation_deg));
  snprintf(buf, bytes, "%s%s", bearing, ox_magnetic_mark(p));
}

void ox_wind_from_text(const ox_picture *p, char *buf, size_t bytes) {
  const ox_case *c = p->scene.c;
  const ox_setup *s = &p->scene.flight->setup;
  bool magnetic = c->wind_count > 0;
  for (int i = 0; i < c->wind_count; i++)
    magnetic = magnetic && c->wind[i].north == OX_NORTH_MAGNETIC;
  double from_deg = s->wind_from_true_deg;
  char bearing[4];
  ox_words_bearing(bearing, magnetic ? ox_magnetic_deg(from_deg, c->variation_deg) : from_deg);
  snprintf(buf, bytes, "from %s %s", bearing, magnetic ? "M" : "T");
}
