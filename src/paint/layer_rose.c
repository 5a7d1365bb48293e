/* The compass rose about the fix and the entry sectors inside its rim.
 *
 * The rose is magnetic. An aircraft on heading H comes from the bearing H + 180, so each sector
 * lies on the side you arrive from: with the inbound course at I and right turns, teardrop from
 * I - 70 to I, parallel from I to I + 110, direct elsewhere; left turns mirror this. */
#include <math.h>

#include "oxbow/units.h"
#include "paint_private.h"

void ox_build_rose(ox_picture *p) {
  ox_rose *r = &p->rose;
  r->centre = ox_to_dev(p, (ox_vec){0, 0}); /* its lines keep their memory */
  r->radius = p->rose_radius;
  r->inner = 0.0;
  ox_vec nearest = ox_rect_nearest(p->map, r->centre);
  bool seen = ox_vec_length(ox_vec_sub(nearest, r->centre)) < r->radius;
  if (!seen || !(r->radius > 6.0 * p->size.rose)) {
    r->radius = 0.0;
    return;
  }
  r->inner = r->radius - fmin(0.75 * p->size.label, 0.2 * r->radius);
  r->north_deg = ox_dev_bearing(p, p->scene.c->variation_deg);
  ox_lines_arc(&r->ring, r->centre, r->radius, 0.0, 360.0);
  double room = r->radius * 5.0 * OX_RAD_PER_DEG; /* between two ticks of 5 degrees */
  int step = room > 5.0 * p->size.rose ? 5 : room > 2.0 * p->size.rose ? 10 : 30;
  for (int deg = 0; deg < 360; deg += step) {
    double share = deg % 30 == 0 ? 1.0 : deg % 10 == 0 ? 0.62 : 0.36;
    ox_vec u = ox_dev_unit(r->north_deg + deg);
    double inner = r->radius - share * (r->radius - r->inner);
    ox_lines_segment(&r->ticks, ox_vec_add(r->centre, ox_vec_scale(u, r->radius)),
                     ox_vec_add(r->centre, ox_vec_scale(u, inner)));
  }
  double inbound = ox_dev_bearing(p, p->scene.flight->setup.inbound_true_deg);
  int sense = p->scene.flight->setup.sense;
  if (p->scene.hide_answer) return; /* the sectors tell the entry */
  double spokes[3] = {inbound - sense * 70.0, inbound, inbound + sense * 110.0};
  for (int i = 0; i < 3; i++) {
    ox_vec u = ox_dev_unit(spokes[i]);
    double from = i == 1 ? r->inner : 0.3 * r->radius; /* the middle one lies on the course line */
    ox_lines_segment(&r->spokes, ox_vec_add(r->centre, ox_vec_scale(u, from)),
                     ox_vec_add(r->centre, ox_vec_scale(u, r->radius)));
  }
}

static void sector(const ox_picture *p, cairo_t *cr, double from_deg, double to_deg, ox_hue ink,
                   bool arrival) {
  const ox_rose *r = &p->rose;
  double lo = fmin(from_deg, to_deg), hi = fmax(from_deg, to_deg);
  double inner = arrival ? r->inner - 0.16 * (r->radius - r->inner) : r->inner;
  double a0 = (lo - 90.0) * OX_RAD_PER_DEG, a1 = (hi - 90.0) * OX_RAD_PER_DEG;
  cairo_new_path(cr);
  cairo_arc(cr, r->centre.x, r->centre.y, r->radius, a0, a1);
  cairo_arc_negative(cr, r->centre.x, r->centre.y, inner, a1, a0);
  cairo_close_path(cr);
  ox_hue_set(p, cr, ink);
  cairo_fill(cr);
  if (!arrival) return;
  cairo_new_path(cr);
  cairo_arc(cr, r->centre.x, r->centre.y, r->radius, a0, a1);
  ox_hue_set(p, cr, OX_HUE_ENTRY);
  cairo_set_line_width(cr, 2.6 * p->size.rose);
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
  cairo_stroke(cr);
}

void ox_layer_rose(const ox_picture *p, cairo_t *cr) {
  const ox_rose *r = &p->rose;
  if (r->radius <= 0.0) return;
  const ox_flight *f = p->scene.flight;
  double inbound = ox_dev_bearing(p, f->setup.inbound_true_deg);
  int sense = f->setup.sense;
  struct {
    double from, to;
    ox_hue ink;
    ox_entry_kind kind;
  } sectors[3] = {
      {inbound - sense * 70.0, inbound, OX_HUE_TEARDROP, OX_ENTRY_TEARDROP},
      {inbound, inbound + sense * 110.0, OX_HUE_PARALLEL, OX_ENTRY_PARALLEL},
      {inbound + sense * 110.0, inbound + sense * 290.0, OX_HUE_DIRECT, OX_ENTRY_DIRECT}};
  cairo_set_dash(cr, NULL, 0, 0.0);
  bool told = !p->scene.hide_answer;
  for (int i = 0; i < 3 && told; i++)
    if (sectors[i].kind != f->entry.kind)
      sector(p, cr, sectors[i].from, sectors[i].to, sectors[i].ink, false);
  ox_path_add(cr, &r->ring);
  ox_path_add(cr, &r->ticks);
  ox_path_add(cr, &r->spokes);
  ox_hue_set(p, cr, OX_HUE_ROSE);
  cairo_set_line_width(cr, p->size.rose);
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
  cairo_stroke(cr);
  for (int i = 0; i < 3 && told; i++)
    if (sectors[i].kind == f->entry.kind) {
      sector(p, cr, sectors[i].from, sectors[i].to, sectors[i].ink, true);
      ox_path_add(cr, &r->ticks);
      ox_hue_set(p, cr, OX_HUE_ROSE);
      cairo_set_line_width(cr, p->size.rose);
      cairo_stroke(cr);
    }
}
