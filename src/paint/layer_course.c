/* The inbound course with its figure set on the line, the abeam line, and the fix itself. */
#include <math.h>

#include "paint_private.h"

void ox_build_course_ends(ox_picture *p) {
  ox_course *k = &p->course;
  double inbound = ox_dev_bearing(p, p->scene.flight->setup.inbound_true_deg);
  ox_vec fix = ox_to_dev(p, (ox_vec){0, 0}), u = ox_dev_unit(inbound);
  double far = p->map.width + p->map.height;
  ox_vec a = ox_vec_add(fix, ox_vec_scale(u, -far));
  ox_vec b = ox_vec_add(fix, ox_vec_scale(u, fmax(1.2 * p->rose_radius, 2.5 * p->size.label)));
  if (!ox_rect_clip(p->map, &a, &b)) a = b = fix;
  k->upstream = a;
  k->downstream = b;
  /* The abeam line runs from the fix to just beyond the outbound legs. */
  const ox_flight *f = p->scene.flight;
  ox_vec side = ox_unit(f->setup.inbound_true_deg + 90.0 * f->setup.sense);
  double across_nm = 2.0 * f->setup.radius_nm;
  const ox_leg *outbound = ox_find_leg(f, OX_LEG_OUTBOUND, 1);
  if (outbound && ox_has_layer(p, OX_LAYER_TRACK) && !p->scene.hide_answer)
    across_nm = fmax(across_nm, fmin(ox_vec_dot(outbound->p0_nm, side), 4.0 * f->setup.radius_nm));
  double past_nm = 1.2 * p->size.label / p->view.dev_per_nm;
  ox_vec end = ox_to_dev(p, ox_vec_scale(side, across_nm + past_nm));
  if (ox_has_layer(p, OX_LAYER_COURSE)) ox_lines_clipped(&k->abeam, p->map, fix, end);
}

void ox_build_course_lines(ox_picture *p, const ox_rect *gap) {
  ox_course *k = &p->course;
  ox_vec d = ox_vec_sub(k->downstream, k->upstream);
  double length = ox_vec_length(d), arrow = 0.85 * p->size.label;
  if (!(length > 0.0)) return;
  ox_vec u = ox_vec_scale(d, 1.0 / length);
  ox_vec from = k->upstream, to = k->downstream;
  k->head_at = ox_vec_add(to, ox_vec_scale(u, -0.02 * p->size.label));
  if (gap) {
    ox_rect wide = ox_rect_inset(*gap, -0.35 * p->size.label);
    ox_vec in = from, out = to;
    if (ox_rect_clip(wide, &in, &out)) {
      ox_lines_segment(&k->line, from, in);
      from = out;
      /* The arrow follows the figure, or leads up to it where the line ends too soon. */
      bool follows = ox_vec_dot(ox_vec_sub(to, out), u) > 1.1 * arrow;
      k->head_at = follows ? ox_vec_add(out, ox_vec_scale(u, 1.1 * arrow))
                           : ox_vec_add(in, ox_vec_scale(u, -0.1 * arrow));
    }
  }
  ox_lines_segment(&k->line, from, to);
  ox_lines_head(&k->head, k->head_at, u, arrow);
}

void ox_layer_fix(const ox_picture *p, cairo_t *cr) {
  ox_vec at = ox_to_dev(p, (ox_vec){0, 0});
  double r = 0.72 * p->size.label;
  cairo_new_path(cr);
  for (int i = 0; i < 3; i++) {
    ox_vec q = ox_vec_add(at, ox_vec_scale(ox_dev_unit(i * 120.0), r));
    if (i == 0)
      cairo_move_to(cr, q.x, q.y);
    else
      cairo_line_to(cr, q.x, q.y);
  }
  cairo_close_path(cr);
  cairo_set_dash(cr, NULL, 0, 0.0);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_MITER);
  ox_hue_set(p, cr, OX_HUE_TEXT);
  cairo_fill_preserve(cr);
  ox_hue_set(p, cr, OX_HUE_BOARD);
  cairo_set_line_width(cr, p->size.course);
  cairo_stroke(cr);
}

void ox_layer_course(const ox_picture *p, cairo_t *cr) {
  const ox_course *k = &p->course;
  ox_line_stroke(p, cr, &k->line, OX_LINE_COURSE);
  ox_line_stroke(p, cr, &k->abeam, OX_LINE_ABEAM);
  ox_path_add_heads(cr, &k->head);
  ox_hue_set(p, cr, OX_HUE_COURSE);
  cairo_fill(cr);
}
