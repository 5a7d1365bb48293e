/* The route about a hold: the points in the plane, the way to the arrival, the way on, the climb of
 * a missed approach, and what turning too early would do. */
#include "oxbow/journey.h"

#include <math.h>
#include <string.h>

#include "journey_legs.h"
#include "oxbow/text.h"
#include "oxbow/wind.h"
#include "remark.h"

static const double NEAR_NM = 0.02; /* the fix is at a point of the route */

static double apart_nm(ox_vec a, ox_vec b) {
  return hypot(a.x - b.x, a.y - b.y);
}

static ox_way way_of(const ox_setup *s, ox_journey *j) {
  return (ox_way){.legs = j->legs + j->leg_count,
                  .room = OX_JOURNEY_LEGS_MAX - j->leg_count,
                  .tas_kt = s->tas_kt,
                  .rate_deg_s = s->rate_deg_s,
                  .altitude_ft = s->conditions[0].altitude_ft,
                  .wind_kt = s->wind_kt};
}

/* --- the points --- */

static ox_status place_points(const ox_points *points, const ox_route *route, ox_latlon origin,
                              ox_journey *j, char *remark, size_t bytes) {
  ox_latlon before = {0, 0}, at;
  for (size_t i = 0; i < route->count; i++, before = at) {
    ox_journey_point *p = &j->points[i];
    ox_geodesic leg;
    if (ox_points_place(points, route->names[i], &at, remark, bytes) == OX_ERROR) return OX_ERROR;
    if (ox_plane_from_place(origin, at, &p->at_nm) == OX_ERROR) return OX_ERROR;
    memcpy(p->name, route->names[i], sizeof p->name);
    if (i == 0) continue;
    if (ox_geodesic_between(before, at, &leg) == OX_ERROR) return OX_ERROR;
    p->course_true_deg = leg.to_bearing_deg;
    p->nm = leg.distance_nm;
    if (i == 1) j->points[0].course_true_deg = leg.from_bearing_deg;
  }
  j->point_count = route->count;
  return OX_OK;
}

static int point_at_fix(const ox_journey *j, const char *fix) {
  int nearest = -1;
  for (size_t i = 0; i < j->point_count; i++)
    if (hypot(j->points[i].at_nm.x, j->points[i].at_nm.y) < NEAR_NM &&
        (nearest < 0 || strcmp(j->points[i].name, fix) == 0))
      nearest = (int)i;
  return nearest;
}

static void time_points(ox_journey *j, const ox_setup *s) {
  for (size_t i = 1; i < j->point_count; i++) {
    ox_journey_point *p = &j->points[i];
    ox_triangle t = ox_triangle_for_course(p->course_true_deg, s->tas_kt, s->wind_kt);
    if (t.possible && t.gs_kt >= 1.0) p->s = 3600.0 * p->nm / t.gs_kt;
  }
}

/* From the elevation of the missed approach point to the altitude of the hold, and level there. */
static void climb(ox_journey *j, const ox_points *points, const ox_case *c) {
  if (j->missed < 0) return;
  const ox_point *from = ox_points_find(points, j->points[j->missed].name);
  double altitude_ft = from ? from->elevation_ft : 0.0, to_ft = c->hold.altitude_ft;
  for (size_t i = (size_t)j->missed; i < j->point_count; i++) {
    ox_journey_point *p = &j->points[i];
    if ((int)i > j->missed && altitude_ft < to_ft)
      altitude_ft = fmin(to_ft, altitude_ft + c->hold.climb_ft_min * p->s / 60.0);
    p->climbs = true;
    p->altitude_ft = altitude_ft;
  }
}

/* --- the ways --- */

/* From the first point to where the arrival begins; the clock ends when the flight begins. */
static bool fly_before(ox_journey *j, const ox_flight *flight) {
  ox_way w = way_of(&flight->setup, j);
  ox_vec points_nm[OX_ROUTE_POINTS_MAX + 1];
  size_t count = 0;
  ox_vec begin_nm = flight->legs[0].p0_nm;
  for (int i = 1; i < j->hold; i++)
    points_nm[count++] = j->points[i].at_nm;
  points_nm[count++] = begin_nm;
  w.p_nm = j->points[0].at_nm;
  if (!ox_way_along(&w, points_nm, count)) return false;
  double shift_s = ox_flight_begin_s(flight) - w.t_s;
  for (size_t i = 0; i < w.count; i++) {
    w.legs[i].t0_s += shift_s;
    w.legs[i].t1_s += shift_s;
  }
  j->before = w.count;
  j->leg_count = w.count;
  return true;
}

/* On from where the flight ends. What cannot be flown is left out. */
static void fly_after(ox_journey *j, const ox_flight *flight) {
  ox_way w = way_of(&flight->setup, j);
  ox_vec points_nm[OX_ROUTE_POINTS_MAX];
  size_t count = 0;
  ox_state end = ox_flight_at(flight, ox_flight_end_s(flight));
  for (size_t i = (size_t)j->hold + 1; i < j->point_count; i++)
    points_nm[count++] = j->points[i].at_nm;
  if (count == 0) return;
  w.p_nm = end.p_nm;
  w.heading_deg = end.heading_true_deg;
  w.t_s = ox_flight_end_s(flight);
  if (ox_way_turn_to(&w, points_nm[0]) && ox_way_along(&w, points_nm, count))
    j->leg_count += w.count;
}

/* The arrival of the case lies on the arriving leg: same track, and not longer. */
static bool is_joined(const ox_journey *j, const ox_flight *flight) {
  const ox_journey_point *to = &j->points[j->hold];
  double track_deg = flight->setup.arrival_track_true_deg;
  return flight->leg_count > 0 && flight->legs[0].kind == OX_LEG_ARRIVAL &&
         fabs(ox_turn_between_deg(track_deg, to->course_true_deg)) <= OX_JOURNEY_SAME_DEG &&
         hypot(flight->legs[0].p0_nm.x, flight->legs[0].p0_nm.y) <= to->nm;
}

static void join(ox_journey *j, const ox_flight *flight) {
  const ox_setup *s = &flight->setup;
  if (j->hold > 0) {
    const ox_journey_point *to = &j->points[j->hold];
    ox_triangle t = ox_triangle_for_course(to->course_true_deg, s->tas_kt, s->wind_kt);
    j->arriving_heading_true_deg = t.possible ? t.heading_deg : to->course_true_deg;
    j->arriving_nm = to->nm;
    j->joined = is_joined(j, flight) && fly_before(j, flight);
  }
  if (j->hold >= 0 && flight->leg_count > 0) fly_after(j, flight);
}

/* --- turning too early --- */

static double off_segment_nm(ox_vec p, ox_vec a, ox_vec b) {
  ox_vec ab = ox_vec_sub(b, a), ap = ox_vec_sub(p, a);
  double square = ab.x * ab.x + ab.y * ab.y;
  double along = square > 0.0 ? (ap.x * ab.x + ap.y * ab.y) / square : 0.0;
  along = fmin(1.0, fmax(0.0, along));
  return apart_nm(p, (ox_vec){a.x + along * ab.x, a.y + along * ab.y});
}

static double off_route_nm(const ox_journey *j, ox_vec p) {
  double nearest = HUGE_VAL;
  for (int i = j->missed; i <= j->hold; i++)
    if (i > 0) nearest = fmin(nearest, off_segment_nm(p, j->points[i - 1].at_nm,
                                                      j->points[i].at_nm));
  return nearest;
}

static void add_early(ox_journey *j, ox_vec p) {
  if (j->early_count >= OX_JOURNEY_PATH_MAX) return;
  j->early_nm[j->early_count++] = p;
  j->early_off_nm = fmax(j->early_off_nm, off_route_nm(j, p));
}

/* From a mile before the missed approach point straight to the fix. */
static void turn_early(ox_journey *j, const ox_setup *s) {
  if (j->missed < 1 || j->hold <= j->missed) return;
  ox_leg legs[4];
  ox_vec from = j->points[j->missed - 1].at_nm, to = j->points[j->missed].at_nm;
  double whole_nm = apart_nm(from, to);
  if (whole_nm < 1e-3) return;
  double back = fmin(OX_JOURNEY_EARLY_NM, 0.5 * whole_nm) / whole_nm;
  ox_way w = {.legs = legs, .room = 4, .tas_kt = s->tas_kt, .rate_deg_s = s->rate_deg_s,
              .wind_kt = s->wind_kt};
  ox_triangle t = ox_triangle_for_course(j->points[j->missed].course_true_deg, s->tas_kt,
                                         s->wind_kt);
  w.p_nm = (ox_vec){to.x + back * (from.x - to.x), to.y + back * (from.y - to.y)};
  w.heading_deg = t.heading_deg;
  ox_vec fix = {0, 0};
  if (!t.possible || !ox_way_turn_to(&w, fix) || !ox_way_straight(&w, fix)) return;
  for (size_t i = 0; i < w.count; i++)
    for (int k = 0; k < 24; k++)
      add_early(j, ox_leg_position(&legs[i],
                                   legs[i].t0_s + k / 24.0 * (legs[i].t1_s - legs[i].t0_s)));
  add_early(j, fix);
  ox_state end = ox_leg_at(&legs[w.count - 1], legs[w.count - 1].t1_s);
  j->early_course_true_deg = end.track_true_deg;
}

/* --- the whole --- */

ox_status ox_journey_make(const ox_points *points, const ox_route *route, const ox_fix *fix,
                          const ox_case *c, const ox_flight *flight, ox_journey *out,
                          char *remark, size_t remark_bytes) {
  ox_latlon origin;
  ox_no_remark(remark, remark_bytes);
  memset(out, 0, sizeof *out);
  out->hold = out->missed = -1;
  if (ox_case_check(c, NULL, 0) > 0)
    return ox_remark(OX_ERROR, remark, remark_bytes, _("The case has a fault."));
  if (route->count < 2) return OX_OK;
  if (ox_fix_place(points, fix, c, &origin, remark, remark_bytes) == OX_ERROR ||
      place_points(points, route, origin, out, remark, remark_bytes) == OX_ERROR) {
    out->point_count = 0;
    return OX_ERROR;
  }
  out->missed = route->missed_approach;
  out->hold = point_at_fix(out, c->hold.fix);
  out->hold_allowed = true;
  time_points(out, &flight->setup);
  climb(out, points, c);
  if (out->hold >= 0)
    out->hold_allowed =
        ox_route_hold_allowed(route, (size_t)out->hold, remark, remark_bytes) == OX_OK;
  join(out, flight);
  turn_early(out, &flight->setup);
  return out->hold_allowed ? ox_no_remark(remark, remark_bytes) : OX_ADVISORY;
}

double ox_journey_begin_s(const ox_journey *journey, const ox_flight *flight) {
  return journey->before > 0 ? journey->legs[0].t0_s : ox_flight_begin_s(flight);
}

double ox_journey_end_s(const ox_journey *journey, const ox_flight *flight) {
  bool after = journey->leg_count > journey->before;
  return after ? journey->legs[journey->leg_count - 1].t1_s : ox_flight_end_s(flight);
}

ox_state ox_journey_at(const ox_journey *journey, const ox_flight *flight, double t_s) {
  size_t first = 0, last = journey->before;
  if (t_s > ox_flight_end_s(flight)) {
    first = journey->before;
    last = journey->leg_count;
  } else if (t_s >= ox_flight_begin_s(flight)) {
    last = first;
  }
  if (first == last) return ox_flight_at(flight, t_s);
  while (first + 1 < last && journey->legs[first].t1_s < t_s)
    first++;
  return ox_leg_at(&journey->legs[first], t_s);
}

void ox_journey_flight(const ox_journey *journey, const ox_flight *flight, ox_flight *out) {
  size_t room = OX_LEGS_MAX - flight->leg_count, before = journey->before;
  size_t after = journey->leg_count - before;
  if (before > room) before = room;
  if (after > room - before) after = room - before;
  *out = *flight;
  const ox_leg *to_hold = &journey->legs[journey->before - before];
  memcpy(out->legs, to_hold, before * sizeof *out->legs);
  memcpy(out->legs + before, flight->legs, flight->leg_count * sizeof *out->legs);
  memcpy(out->legs + before + flight->leg_count, journey->legs + journey->before,
         after * sizeof *out->legs);
  out->leg_count = before + flight->leg_count + after;
}
