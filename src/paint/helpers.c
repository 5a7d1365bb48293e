/* What several layers need: sources, paths, figures as text, and finding things in a
 * flight. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "oxbow/text.h"
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
    snprintf(buf, bytes, "%s%ld%s%0*ld", sign, n / unit, ox_text_decimal(), unit == 10 ? 1 : 2,
             n % unit);
}

void ox_direction_text(const ox_picture *p, char *buf, size_t bytes, double true_deg) {
  char bearing[4];
  ox_words_bearing(bearing, ox_magnetic_deg(true_deg, p->scene.c->variation_deg));
  bool differs = p->scene.c->variation_deg != 0.0;
  snprintf(buf, bytes, "%s%s%s", bearing, differs ? " " : "",
           differs ? ox_words_magnetic_mark() : "");
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
  /* translators: where the wind comes from, magnetic or true */
  snprintf(buf, bytes, magnetic ? C_("the wind", "from %s M") : C_("the wind", "from %s T"),
           bearing);
}
