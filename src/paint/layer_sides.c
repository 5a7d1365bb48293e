/* Holding side and non-holding side: a faint tint on one, hatching along the course on the other.
 *
 * The hatching is a narrow border along the hold, not a filled half of the map: it says enough,
 * stays one colour on every target and costs one stroke. */
#include <math.h>

#include "paint_private.h"

/* Device unit vector to the holding side, across the inbound course. */
static ox_vec holding_side(const ox_picture *p) {
  const ox_setup *s = &p->scene.flight->setup;
  return ox_dev_unit(ox_dev_bearing(p, s->inbound_true_deg) + 90.0 * s->sense);
}

/* A piece of hatching with the labels cut out of it. */
static void add_piece(ox_picture *p, ox_vec a, ox_vec b, size_t label) {
  for (; label < p->label_count; label++) {
    if (p->labels[label].dropped) continue;
    ox_rect wide = ox_rect_inset(p->labels[label].box, -0.3 * p->size.label);
    ox_vec in = a, out = b;
    if (!ox_rect_clip(wide, &in, &out)) continue;
    if (ox_vec_length(ox_vec_sub(in, a)) > 1.0) add_piece(p, a, in, label + 1);
    if (ox_vec_length(ox_vec_sub(b, out)) > 1.0) add_piece(p, out, b, label + 1);
    return;
  }
  ox_lines_clipped(&p->hatch, p->map, a, b);
}

void ox_build_hatch(ox_picture *p) {
  if (!ox_has_layer(p, OX_LAYER_SIDES)) return;
  const ox_setup *s = &p->scene.flight->setup;
  ox_vec fix = ox_to_dev(p, (ox_vec){0, 0});
  ox_vec up = ox_dev_unit(ox_dev_bearing(p, s->inbound_true_deg) + 180.0);
  ox_vec side = ox_vec_scale(holding_side(p), -1.0);
  ox_leg still[4];
  ox_still_air_shape(s, still);
  double hold_nm = ox_vec_length(still[2].p0_nm) + s->radius_nm;
  double em = p->size.label, step = 0.62 * em;
  double from = -fmax(2.0 * em, 0.9 * s->radius_nm * p->view.dev_per_nm);
  double to = hold_nm * p->view.dev_per_nm + 2.0 * em;
  ox_vec slant = ox_vec_add(side, ox_vec_scale(up, 1.0));
  double most = 2.0 * em + p->map.width + p->map.height; /* what is farther from a fix in the map */
  ox_vec nearest = ox_rect_nearest(p->map, fix);         /* is not seen; nor from one outside it */
  most += ox_vec_length(ox_vec_sub(nearest, fix));
  int first = from < -most ? (int)((-most - from) / step) : 0;
  int count = (int)fmin((fmin(to, most) - from) / step, first + 1200.0);
  for (int i = first; i <= count; i++) {
    ox_vec a = ox_vec_add(fix, ox_vec_scale(up, from + i * step));
    add_piece(p, a, ox_vec_add(a, ox_vec_scale(slant, 0.95 * em)), 0);
  }
}

/* The part of the map on the holding side: the map's outline cut by the course line. */
void ox_layer_tint(const ox_picture *p, cairo_t *cr) {
  ox_rect m = p->map;
  ox_vec corner[4] = {{m.x, m.y},
                      {m.x + m.width, m.y},
                      {m.x + m.width, m.y + m.height},
                      {m.x, m.y + m.height}};
  ox_vec fix = ox_to_dev(p, (ox_vec){0, 0}), side = holding_side(p);
  cairo_new_path(cr);
  for (int i = 0; i < 4; i++) {
    ox_vec a = corner[i], b = corner[(i + 1) % 4];
    double da = ox_vec_dot(ox_vec_sub(a, fix), side), db = ox_vec_dot(ox_vec_sub(b, fix), side);
    if (da >= 0.0) cairo_line_to(cr, a.x, a.y);
    if ((da >= 0.0) == (db >= 0.0)) continue;
    ox_vec cut = ox_vec_add(a, ox_vec_scale(ox_vec_sub(b, a), da / (da - db)));
    cairo_line_to(cr, cut.x, cut.y);
  }
  cairo_close_path(cr);
  ox_hue_set(p, cr, OX_HUE_TINT);
  cairo_fill(cr);
}

void ox_layer_hatch(const ox_picture *p, cairo_t *cr) {
  if (p->hatch.count == 0) return;
  ox_path_add(cr, &p->hatch);
  ox_hue_set(p, cr, OX_HUE_HATCH);
  cairo_set_line_width(cr, fmax(0.75 * p->size.course, 0.7));
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_dash(cr, NULL, 0, 0.0);
  cairo_stroke(cr);
}
