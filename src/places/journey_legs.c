/* Straight tracks and turns. A turn from one leg onto the next is carried by the wind: its
 * displacement d is a closed form in the two headings, so it begins a before and ends b after the
 * point where a*u1 + b*u2 = d, with u1 and u2 the unit vectors of the legs. */
#include "journey_legs.h"

#include <math.h>

#include "oxbow/units.h"
#include "oxbow/wind.h"

static const double NOTHING_NM = 1e-6;
static const double LEAST_GS_KT = 1.0;

static ox_vec scaled(ox_vec v, double by) {
  return (ox_vec){v.x * by, v.y * by};
}

static double length(ox_vec v) {
  return hypot(v.x, v.y);
}

static bool triangle_to(const ox_way *w, double course_deg, ox_triangle *out) {
  *out = ox_triangle_for_course(course_deg, w->tas_kt, w->wind_kt);
  return out->possible && out->gs_kt >= LEAST_GS_KT;
}

static ox_leg *add(ox_way *w, ox_shape shape, double duration_s) {
  if (w->count >= w->room) return NULL;
  ox_leg *leg = &w->legs[w->count++];
  *leg = (ox_leg){.kind = OX_LEG_ROUTE,
                  .part = OX_PART_ROUTE,
                  .shape = shape,
                  .t0_s = w->t_s,
                  .t1_s = w->t_s + duration_s,
                  .p0_nm = w->p_nm,
                  .heading0_true_deg = w->heading_deg,
                  .heading1_true_deg = w->heading_deg,
                  .tas_kt = w->tas_kt,
                  .altitude_ft = w->altitude_ft,
                  .wind_kt = w->wind_kt};
  w->t_s = leg->t1_s;
  return leg;
}

bool ox_way_straight(ox_way *w, ox_vec to_nm) {
  ox_vec way = ox_vec_sub(to_nm, w->p_nm);
  ox_triangle t;
  if (length(way) < NOTHING_NM) return true;
  if (!triangle_to(w, ox_bearing_deg(way), &t)) return false;
  w->heading_deg = t.heading_deg;
  ox_leg *leg = add(w, OX_SHAPE_STRAIGHT, 3600.0 * length(way) / t.gs_kt);
  if (!leg) return false;
  leg->p1_nm = w->p_nm = to_nm;
  return true;
}

/* A turn of so many degrees (right positive), from here. */
static bool turn(ox_way *w, double degrees) {
  if (fabs(degrees) < 1e-9) return true;
  ox_leg *leg = add(w, OX_SHAPE_TURN, fabs(degrees) / w->rate_deg_s);
  if (!leg) return false;
  leg->rate_deg_s = degrees > 0 ? w->rate_deg_s : -w->rate_deg_s;
  leg->heading1_true_deg = ox_norm360_deg(w->heading_deg + degrees);
  leg->p1_nm = ox_leg_position(leg, leg->t1_s);
  w->heading_deg = leg->heading1_true_deg;
  w->p_nm = leg->p1_nm;
  return true;
}

/* Where the turn would bring the aircraft, without making it. */
static ox_way after_turn(const ox_way *w, double degrees) {
  ox_leg one;
  ox_way copy = *w;
  copy.legs = &one;
  copy.count = 0;
  copy.room = 1;
  turn(&copy, degrees);
  return copy;
}

/* What is left to turn after so many degrees, in the sense of the turn: positive while the track
 * does not lead to the point yet. */
static bool left_to_turn(const ox_way *w, int sense, double degrees, ox_vec to_nm, double *out) {
  ox_way there = after_turn(w, sense * degrees);
  ox_triangle t;
  if (!triangle_to(w, ox_bearing_deg(ox_vec_sub(to_nm, there.p_nm)), &t)) return false;
  *out = sense * ox_turn_between_deg(there.heading_deg, t.heading_deg);
  return true;
}

bool ox_way_turn_to(ox_way *w, ox_vec to_nm) {
  ox_triangle t;
  double left, low = 0.0;
  if (length(ox_vec_sub(to_nm, w->p_nm)) < NOTHING_NM) return true;
  if (!triangle_to(w, ox_bearing_deg(ox_vec_sub(to_nm, w->p_nm)), &t)) return false;
  int sense = ox_turn_between_deg(w->heading_deg, t.heading_deg) >= 0.0 ? 1 : -1;
  /* The first whole degree past which nothing is left; within it, halved. */
  for (double high = 1.0; high <= 540.0; low = high, high += 1.0) {
    if (!left_to_turn(w, sense, high, to_nm, &left)) return false;
    if (left > 0.0 || left < -90.0) continue;
    for (int i = 0; i < 60; i++) {
      double middle = 0.5 * (low + high);
      if (!left_to_turn(w, sense, middle, to_nm, &left)) return false;
      if (left > 0.0) low = middle; else high = middle;
    }
    return turn(w, sense * high);
  }
  return false;
}

/* Turns from this leg onto the next one before the point between them; false, nothing added, when
 * either leg is too short for it. */
static bool turn_before(ox_way *w, ox_vec at_nm, ox_vec next_nm, double *used_nm) {
  ox_vec in = ox_vec_sub(at_nm, w->p_nm), out = ox_vec_sub(next_nm, at_nm);
  ox_triangle first, second;
  if (!triangle_to(w, ox_bearing_deg(in), &first) || !triangle_to(w, ox_bearing_deg(out), &second))
    return false;
  ox_way rolled = *w;
  rolled.heading_deg = first.heading_deg;
  double degrees = ox_turn_between_deg(first.heading_deg, second.heading_deg);
  ox_vec d = ox_vec_sub(after_turn(&rolled, degrees).p_nm, w->p_nm);
  ox_vec u1 = scaled(in, 1.0 / length(in)), u2 = scaled(out, 1.0 / length(out));
  double cross = u1.x * u2.y - u1.y * u2.x;
  if (fabs(cross) < 1e-6) return false; /* straight on, or straight back */
  double a_nm = (d.x * u2.y - d.y * u2.x) / cross, b_nm = (u1.x * d.y - u1.y * d.x) / cross;
  if (a_nm < 0.0 || b_nm < 0.0 || a_nm > length(in) || b_nm > length(out)) return false;
  *used_nm = b_nm;
  if (!ox_way_straight(w, ox_vec_sub(at_nm, scaled(u1, a_nm)))) return false;
  w->heading_deg = first.heading_deg;
  return turn(w, degrees);
}

bool ox_way_along(ox_way *w, const ox_vec *points_nm, size_t count) {
  for (size_t i = 0; i < count; i++) {
    double used_nm;
    bool last = i + 1 == count;
    if (length(ox_vec_sub(points_nm[i], w->p_nm)) < NOTHING_NM) continue;
    if (!last && length(ox_vec_sub(points_nm[i + 1], points_nm[i])) >= NOTHING_NM &&
        turn_before(w, points_nm[i], points_nm[i + 1], &used_nm))
      continue;
    if (!ox_way_straight(w, points_nm[i])) return false;
    if (!last && !ox_way_turn_to(w, points_nm[i + 1])) return false;
  }
  return true;
}
