/* The outbound end and the leg that puts it where somebody points.
 *
 * How far out the inbound turn begins depends on the leg through the whole technique, so the leg is
 * found by flying: secants on the distance along the outbound course, kept within the ends. */
#include <math.h>

#include "oxbow/angle.h"
#include "values.h"

enum { TRIES = 8 };
static const double CLOSE_NM = 0.002;

double handles_leg(const ox_case *c, const ox_setup *setup) {
  if (c->hold.leg_by == OX_LEG_BY_DISTANCE) return c->hold.leg_nm;
  return c->hold.leg_s > 0.0 ? c->hold.leg_s : setup->leg_s;
}

void handles_set_leg(ox_case *c, double value) {
  if (c->hold.leg_by == OX_LEG_BY_DISTANCE)
    c->hold.leg_nm = value;
  else
    c->hold.leg_s = value;
}

ox_vec handles_leg_end_nm(const ox_flight *flight) {
  if (flight->circuit_count > 0) {
    ox_vec end = flight->circuits[0].outbound_end_nm;
    if (isfinite(end.x) && isfinite(end.y) && ox_vec_length(end) > 0.0) return end;
  }
  ox_leg still[4];
  ox_still_air_shape(&flight->setup, still);
  return still[1].p1_nm;
}

static double out_nm(const ox_flight *flight) {
  return -ox_vec_dot(handles_leg_end_nm(flight), ox_unit(flight->setup.inbound_true_deg));
}

static double within(double value, double min, double max) { return fmin(fmax(value, min), max); }

double handles_leg_for_place(const ox_case *base, const ox_flight *flight, ox_vec place_nm,
                             double min, double max, ox_flight *scratch) {
  double want = -ox_vec_dot(place_nm, ox_unit(flight->setup.inbound_true_deg));
  double leg = handles_leg(base, &flight->setup), out = out_nm(flight);
  /* The first guess: the ground speed in still air, or a mile a mile. */
  double per_unit = base->hold.leg_by == OX_LEG_BY_TIME ? flight->setup.tas_kt / 3600.0 : 1.0;
  double best = leg, best_off = fabs(out - want);
  for (int i = 0; i < TRIES && best_off > CLOSE_NM; i++) {
    double next = within(leg + (want - out) / per_unit, min, max);
    ox_case trial = *base;
    handles_set_leg(&trial, next);
    if (next == leg || ox_flight_solve(&trial, scratch) == OX_ERROR) break;
    double next_out = out_nm(scratch), slope = (next_out - out) / (next - leg);
    /* Where the end does not follow the leg, as at a floor, the old slope goes on. */
    if (isfinite(slope) && slope > 0.1 * per_unit) per_unit = slope;
    leg = next;
    out = next_out;
    if (fabs(out - want) < best_off) {
      best = leg;
      best_off = fabs(out - want);
    }
  }
  return best;
}
