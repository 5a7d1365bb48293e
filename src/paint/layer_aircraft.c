/* The aircraft: a plain plan view turned to its heading, so that crab shows against the track. */
#include <math.h>

#include "paint_private.h"

static const double OTHER_SIZE = 0.68; /* of the shown one */
static const double WELL_INSIDE = 0.1; /* from the edge, of the map's smaller side */

/* Right half of the outline, nose first, in half spans: x to the right, y forward. */
static const ox_vec outline[] = {{0.00, 1.05}, {0.07, 0.92}, {0.10, 0.66}, {0.10, 0.36},
                                 {1.00, 0.10}, {1.00, -0.10}, {0.10, -0.02}, {0.07, -0.62},
                                 {0.38, -0.80}, {0.38, -0.94}, {0.00, -0.86}};
enum { OUTLINE_COUNT = sizeof outline / sizeof *outline };

static ox_vec corner(int i, ox_vec at, double bearing_deg, double size) {
  ox_vec forward = ox_dev_unit(bearing_deg), right = ox_dev_unit(bearing_deg + 90.0);
  int k = i < OUTLINE_COUNT ? i : 2 * OUTLINE_COUNT - 1 - i;
  double side = i < OUTLINE_COUNT ? 1.0 : -1.0;
  return ox_vec_add(at, ox_vec_add(ox_vec_scale(right, side * outline[k].x * size),
                                   ox_vec_scale(forward, outline[k].y * size)));
}

static void shape_path(cairo_t *cr, ox_vec at, double bearing_deg, double size) {
  cairo_new_path(cr);
  for (int i = 0; i < 2 * OUTLINE_COUNT; i++) {
    ox_vec q = corner(i, at, bearing_deg, size);
    cairo_line_to(cr, q.x, q.y);
  }
  cairo_close_path(cr);
}

/* At the edge it would be cut. Well inside it is shown however large it is. */
static bool is_whole(const ox_picture *p, ox_vec at, double bearing_deg, double size) {
  double side = fmin(p->map.width, p->map.height);
  if (ox_rect_has(ox_rect_inset(p->map, WELL_INSIDE * side), at)) return true;
  for (int i = 0; i < 2 * OUTLINE_COUNT; i++)
    if (!ox_rect_has(p->map, corner(i, at, bearing_deg, size))) return false;
  return true;
}

/* Where the way straight on comes over a rectangle's edge; false: it is inside, or never comes. */
static bool comes_in(ox_rect rect, ox_vec at, ox_vec track, ox_vec *where) {
  double far = ox_vec_length(ox_vec_sub(ox_rect_centre(rect), at)) + rect.width + rect.height;
  ox_vec to = ox_vec_add(at, ox_vec_scale(track, far));
  *where = at;
  return !ox_rect_has(rect, at) && ox_rect_clip(rect, where, &to);
}

/* At the map's edge or beyond it: an arrow that points on to the aircraft, where it will come in if
 * it flies straight on, which an arrival does; else as seen from the middle. */
static void beyond(const ox_picture *p, cairo_t *cr, ox_vec at, ox_vec track, ox_hue hue,
                   double size) {
  ox_rect inner = ox_rect_inset(p->map, 0.2 * size);
  ox_vec middle = ox_rect_centre(p->map), a = middle, b = at;
  if (!ox_is_finite(at) || !ox_rect_clip(inner, &a, &b)) return;
  if (comes_in(inner, at, track, &a))
    b = a;
  else
    a = middle;
  ox_vec d = ox_vec_sub(at, a);
  double length = ox_vec_length(d);
  if (!(length > 0.0)) return;
  ox_lines head = {0};
  ox_lines_head(&head, b, ox_vec_scale(d, 1.0 / length), size);
  ox_path_add_heads(cr, &head);
  ox_hue_set(p, cr, hue);
  cairo_fill(cr);
  ox_lines_clear(&head);
}

static void aircraft(const ox_picture *p, cairo_t *cr, const ox_flight *flight, double t_s,
                     ox_hue hue, double size) {
  if (flight->leg_count == 0) return;
  ox_state s = ox_flight_at(flight, t_s);
  ox_vec at = ox_to_dev(p, s.p_nm);
  double bearing_deg = ox_dev_bearing(p, s.heading_true_deg);
  ox_hue_set(p, cr, hue);
  if (!ox_rect_has(p->map, at) || !is_whole(p, at, bearing_deg, size)) {
    ox_vec track = ox_dev_unit(ox_dev_bearing(p, s.track_true_deg));
    beyond(p, cr, at, track, hue, fmin(size, 1.1 * p->size.label));
    return;
  }
  cairo_set_dash(cr, NULL, 0, 0.0);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
  if (s.gs_kt > 0.5) {
    ox_vec track = ox_dev_unit(ox_dev_bearing(p, s.track_true_deg));
    ox_vec to = ox_vec_add(at, ox_vec_scale(track, 3.0 * size));
    cairo_move_to(cr, at.x, at.y);
    cairo_line_to(cr, to.x, to.y);
    cairo_set_line_width(cr, fmax(p->size.course, 0.4 * p->size.track));
    cairo_stroke(cr);
  }
  shape_path(cr, at, bearing_deg, size);
  ox_hue_set(p, cr, OX_HUE_BOARD);
  cairo_set_line_width(cr, 0.9 * p->size.track);
  cairo_stroke_preserve(cr);
  ox_hue_set(p, cr, hue);
  cairo_fill(cr);
}

/* The other cases' smaller ones first: the one shown flies over them. Each stands where it is over
 * the ground, in every view; the line ahead is where it goes as the view sees it. */
void ox_layer_aircraft(const ox_picture *p, cairo_t *cr, double t_s) {
  double size = 1.1 * p->size.label + 1.0 * p->size.track;
  for (size_t i = 0; i < p->other_count; i++)
    if (p->others[i].in_step)
      aircraft(p, cr, p->others[i].flown, t_s, p->others[i].hue, OTHER_SIZE * size);
  /* On the route, before and after what this picture is about, it stands where the route has it. */
  const ox_flight *f = p->scene.flight;
  bool on_route =
      p->scene.whole && (t_s < ox_flight_begin_s(f) || t_s > ox_flight_end_s(f));
  aircraft(p, cr, on_route ? p->scene.whole : p->flown, t_s, OX_HUE_AIRCRAFT, size);
}
