/* Rectangles and polylines in device units, and legs turned into polylines.
 *
 * cairo keeps coordinates in fixed point, and far points come out wrong without an error; so
 * everything is cut to the map in doubles before cairo sees it. */
#include "geometry.h"

#include <math.h>
#include <stdlib.h>

#include "oxbow/units.h"

/* --- rectangles ---------------------------------------------------------------------------- */

ox_rect ox_rect_inset(ox_rect r, double by) {
  ox_rect out = {r.x + by, r.y + by, r.width - 2 * by, r.height - 2 * by};
  if (out.width < 0) out.x += out.width / 2, out.width = 0;
  if (out.height < 0) out.y += out.height / 2, out.height = 0;
  return out;
}

bool ox_rect_has(ox_rect r, ox_vec p) {
  return p.x >= r.x && p.y >= r.y && p.x <= r.x + r.width && p.y <= r.y + r.height;
}

bool ox_rect_overlaps(ox_rect a, ox_rect b) {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height &&
         b.y < a.y + a.height;
}

bool ox_rect_inside(ox_rect inner, ox_rect outer) {
  return inner.x >= outer.x && inner.y >= outer.y &&
         inner.x + inner.width <= outer.x + outer.width &&
         inner.y + inner.height <= outer.y + outer.height;
}

ox_vec ox_rect_centre(ox_rect r) {
  return (ox_vec){r.x + r.width / 2, r.y + r.height / 2};
}

ox_vec ox_rect_nearest(ox_rect r, ox_vec p) {
  return (ox_vec){fmin(fmax(p.x, r.x), r.x + r.width), fmin(fmax(p.y, r.y), r.y + r.height)};
}

/* One side of Liang and Barsky: keeps the part of the parameter range where d * u <= q. */
static bool keep_side(double d, double q, double *u0, double *u1) {
  if (d == 0.0) return q >= 0.0;
  double u = q / d;
  if (d < 0.0)
    *u0 = fmax(*u0, u);
  else
    *u1 = fmin(*u1, u);
  return *u0 <= *u1;
}

bool ox_rect_clip(ox_rect r, ox_vec *a, ox_vec *b) {
  double u0 = 0.0, u1 = 1.0;
  ox_vec d = ox_vec_sub(*b, *a), from = *a;
  if (!keep_side(-d.x, from.x - r.x, &u0, &u1)) return false;
  if (!keep_side(d.x, r.x + r.width - from.x, &u0, &u1)) return false;
  if (!keep_side(-d.y, from.y - r.y, &u0, &u1)) return false;
  if (!keep_side(d.y, r.y + r.height - from.y, &u0, &u1)) return false;
  if (u1 < 1.0) *b = ox_vec_add(from, ox_vec_scale(d, u1));
  if (u0 > 0.0) *a = ox_vec_add(from, ox_vec_scale(d, u0));
  return true;
}

/* --- polylines ----------------------------------------------------------------------------- */

void ox_lines_clear(ox_lines *lines) {
  free(lines->p);
  *lines = (ox_lines){0};
}

void ox_lines_empty(ox_lines *lines) {
  lines->count = 0;
  lines->failed = false;
}

static void append(ox_lines *lines, ox_vec p, bool move) {
  if (lines->count == lines->room) {
    size_t room = lines->room ? lines->room * 2 : 64;
    ox_line_point *grown = realloc(lines->p, room * sizeof *grown);
    if (!grown) {
      lines->failed = true;
      return;
    }
    lines->p = grown;
    lines->room = room;
  }
  lines->p[lines->count++] = (ox_line_point){p.x, p.y, move};
}

void ox_lines_segment(ox_lines *lines, ox_vec a, ox_vec b) {
  if (!isfinite(a.x) || !isfinite(a.y) || !isfinite(b.x) || !isfinite(b.y)) return;
  const ox_line_point *last = lines->count > 0 ? &lines->p[lines->count - 1] : NULL;
  bool joins = last && fabs(last->x - a.x) < 1e-6 && fabs(last->y - a.y) < 1e-6;
  if (!joins) append(lines, a, true);
  append(lines, b, false);
}

void ox_lines_clipped(ox_lines *lines, ox_rect clip, ox_vec a, ox_vec b) {
  if (!isfinite(a.x) || !isfinite(a.y) || !isfinite(b.x) || !isfinite(b.y)) return;
  if (ox_rect_clip(clip, &a, &b)) ox_lines_segment(lines, a, b);
}

/* Pieces for a curve whose acceleration over its whole parameter range is known: the chord error
 * of one of n equal pieces is (1/n)^2 |p''| / 8. */
static int pieces_for(double acceleration_dev) {
  double n = ceil(sqrt(fabs(acceleration_dev) / (8.0 * OX_CHORD_ERROR_DEV)));
  return (int)fmin(fmax(n, 1.0), 4000.0);
}

ox_vec ox_dev_unit(double bearing_deg) {
  ox_vec u = ox_unit(bearing_deg);
  return (ox_vec){u.x, -u.y};
}

void ox_lines_arc(ox_lines *lines, ox_vec centre, double radius, double from_deg, double to_deg) {
  double sweep_rad = (to_deg - from_deg) * OX_RAD_PER_DEG;
  int n = pieces_for(radius * sweep_rad * sweep_rad);
  ox_vec a = ox_vec_add(centre, ox_vec_scale(ox_dev_unit(from_deg), radius));
  for (int i = 1; i <= n; i++) {
    double deg = from_deg + (to_deg - from_deg) * i / n;
    ox_vec b = ox_vec_add(centre, ox_vec_scale(ox_dev_unit(deg), radius));
    ox_lines_segment(lines, a, b);
    a = b;
  }
}

void ox_lines_leg(ox_lines *lines, const ox_viewport *v, ox_rect clip, const ox_leg *leg) {
  int n = 1;
  double whole_s = leg->t1_s - leg->t0_s;
  if (leg->shape == OX_SHAPE_TURN) {
    /* The wind is steady and does not bend the path: |p''| is V times the rate of turn. */
    double speed_dev_s = leg->tas_kt / OX_S_PER_H * v->dev_per_nm;
    double rate_rad_s = leg->rate_deg_s * OX_RAD_PER_DEG;
    n = pieces_for(speed_dev_s * rate_rad_s * whole_s * whole_s);
  }
  ox_vec a = ox_viewport_to_dev(v, leg->p0_nm);
  for (int i = 1; i <= n; i++) {
    ox_vec p = i == n ? leg->p1_nm : ox_leg_position(leg, leg->t0_s + whole_s * i / n);
    ox_vec b = ox_viewport_to_dev(v, p);
    ox_lines_clipped(lines, clip, a, b);
    a = b;
  }
}

void ox_lines_beside(ox_lines *lines, const ox_lines *of, double right) {
  for (size_t i = 1; i < of->count; i++) {
    if (of->p[i].move) continue;
    size_t last = i; /* the normal at a joint is taken across both its pieces */
    if (i + 1 < of->count && !of->p[i + 1].move) last = i + 1;
    size_t first = of->p[i - 1].move ? i - 1 : i - 2;
    const ox_line_point *p = &of->p[i - 1], *q = &of->p[i];
    ox_vec at_p = ox_vec_sub((ox_vec){q->x, q->y}, (ox_vec){of->p[first].x, of->p[first].y});
    ox_vec at_q = ox_vec_sub((ox_vec){of->p[last].x, of->p[last].y}, (ox_vec){p->x, p->y});
    double length_p = ox_vec_length(at_p), length_q = ox_vec_length(at_q);
    if (!(length_p > 0.0) || !(length_q > 0.0)) continue;
    ox_vec a = {p->x - at_p.y / length_p * right, p->y + at_p.x / length_p * right};
    ox_vec b = {q->x - at_q.y / length_q * right, q->y + at_q.x / length_q * right};
    ox_lines_segment(lines, a, b);
  }
}
