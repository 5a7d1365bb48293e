/* Reading a flight: where it is at an instant, names, and the still-air shape beside it. */
#include <math.h>
#include <string.h>

#include "oxbow/flight.h"
#include "oxbow/mark.h"
#include "oxbow/turn.h"
#include "oxbow/units.h"

double ox_flight_begin_s(const ox_flight *flight) {
  return flight->leg_count > 0 ? flight->legs[0].t0_s : 0.0;
}

double ox_flight_end_s(const ox_flight *flight) {
  return flight->leg_count > 0 ? flight->legs[flight->leg_count - 1].t1_s : 0.0;
}

/* The last leg that begins at or before the time. */
size_t ox_flight_leg_index(const ox_flight *flight, double t_s) {
  size_t low = 0, high = flight->leg_count;
  while (high - low > 1) {
    size_t mid = low + (high - low) / 2;
    if (flight->legs[mid].t0_s <= t_s)
      low = mid;
    else
      high = mid;
  }
  return low;
}

ox_state ox_flight_at(const ox_flight *flight, double t_s) {
  if (flight->leg_count == 0) {
    ox_state none;
    memset(&none, 0, sizeof none);
    return none;
  }
  return ox_leg_at(&flight->legs[ox_flight_leg_index(flight, t_s)], t_s);
}

double ox_flight_altitude_ft(const ox_case *c, const ox_flight *flight, double t_s) {
  double end_s = flight->setup.climb_end_s, from_ft = c->hold.altitude_ft;
  if (!(end_s > 0.0) || t_s <= 0.0) return from_ft;
  return t_s >= end_s ? c->hold.climb_to_ft
                      : from_ft + (c->hold.climb_to_ft - from_ft) * t_s / end_s;
}

const char *ox_event_name(ox_event_kind kind) {
  switch (kind) {
  case OX_EVENT_FIX: return "fix";
  case OX_EVENT_TURN_BEGIN: return "turn";
  case OX_EVENT_WINGS_LEVEL: return "level";
  case OX_EVENT_ABEAM: return "abeam";
  case OX_EVENT_CLOCK_START: return "clock";
  case OX_EVENT_INTERCEPT: return "intercept";
  case OX_EVENT_KIND_COUNT: break;
  }
  return "unknown";
}

const char *ox_entry_name(ox_entry_kind kind) {
  switch (kind) {
  case OX_ENTRY_DIRECT:
    return N_("direct");
  case OX_ENTRY_PARALLEL:
    return N_("parallel");
  case OX_ENTRY_TEARDROP:
    return N_("teardrop");
  }
  return "unknown";
}

const char *ox_steady_why_name(ox_steady_why why) {
  switch (why) {
  case OX_STEADY_EXISTS:
    return N_("A steady hold exists.");
  case OX_STEADY_CROSSWIND:
    return N_("The wind across the inbound course is not less than the true airspeed: no heading "
              "holds the course.");
  case OX_STEADY_HEADWIND:
    return N_("The headwind on the inbound course leaves no ground speed towards the fix.");
  case OX_STEADY_TAILWIND:
    return N_("The wind is as strong as the true airspeed, or nearly: the outbound leg against it "
              "takes hours or never ends.");
  case OX_STEADY_TURN_DRIFT:
    return N_(
        "The turns alone drift farther along the course than the leg asked for is long, so no "
        "outbound time makes the circuit close.");
  case OX_STEADY_CROSS_DRIFT:
    return N_("The drift across the course in the turns cannot be made good on the outbound leg.");
  case OX_STEADY_STATION:
    return N_(
        "With this limiting radial no circuit repeats itself: an outbound leg that ended where "
        "the station asks would not lead back to the same leg.");
  }
  return "unknown";
}

/* Seconds of each straight leg without wind. */
static double still_leg_s(const ox_setup *s) {
  double speed_nm_s = s->tas_kt / OX_S_PER_H;
  if (s->leg_s > 0.0) return s->leg_s;
  if (!s->has_dme) return s->goal_value / speed_nm_s;
  ox_vec out = ox_unit(s->inbound_true_deg + 180.0);
  ox_vec level = ox_vec_scale(ox_unit(s->inbound_true_deg + 90.0 * s->sense), 2.0 * s->radius_nm);
  double limit_s = ox_limit_reached_s(&s->dme, level, ox_vec_scale(out, speed_nm_s));
  double reading_s = fabs(s->dme.end_ground_nm - ox_vec_length(s->dme.at_nm)) / speed_nm_s;
  return limit_s >= 0.0 ? fmin(limit_s, reading_s) : reading_s;
}

void ox_still_air_shape(const ox_setup *setup, ox_leg out[4]) {
  static const ox_leg_kind kinds[4] = {OX_LEG_OUTBOUND_TURN, OX_LEG_OUTBOUND, OX_LEG_INBOUND_TURN,
                                       OX_LEG_INBOUND};
  double leg_s = still_leg_s(setup);
  double turn_s = 180.0 / setup->rate_deg_s;
  double t_s = 0.0, heading_deg = setup->inbound_true_deg;
  ox_vec p = {0, 0};
  for (int i = 0; i < 4; i++) {
    bool turn = i % 2 == 0;
    ox_leg *leg = &out[i];
    leg->kind = kinds[i];
    leg->part = OX_PART_CIRCUIT;
    leg->shape = turn ? OX_SHAPE_TURN : OX_SHAPE_STRAIGHT;
    leg->circuit = 0;
    leg->t0_s = t_s;
    leg->t1_s = t_s + (turn ? turn_s : leg_s);
    leg->p0_nm = p;
    leg->heading0_true_deg = heading_deg;
    leg->heading1_true_deg = turn ? ox_norm360_deg(heading_deg + 180.0) : heading_deg;
    leg->rate_deg_s = turn ? setup->sense * setup->rate_deg_s : 0.0;
    leg->tas_kt = setup->tas_kt;
    leg->altitude_ft = setup->conditions[0].altitude_ft;
    leg->wind_kt = (ox_vec){0, 0};
    leg->p1_nm = p = ox_leg_position(leg, leg->t1_s);
    t_s = leg->t1_s;
    heading_deg = leg->heading1_true_deg;
  }
}

ox_ended_by ox_outbound_ended_by(const ox_flight *flight, int circuit) {
  static const double ON_NM = 1e-6;
  const ox_dme *dme = &flight->setup.dme;
  const ox_leg *last = NULL;
  for (size_t i = 0; i < flight->leg_count; i++)
    if (flight->legs[i].circuit == circuit && flight->legs[i].kind == OX_LEG_OUTBOUND)
      last = &flight->legs[i];
  if (!last || flight->setup.goal != OX_GOAL_OUTBOUND_DME) return OX_ENDED_OTHERWISE;
  double ground_nm = ox_vec_length(ox_vec_sub(last->p1_nm, dme->at_nm));
  if (dme->end_ground_nm > 0.0 && fabs(ground_nm - dme->end_ground_nm) < ON_NM)
    return OX_ENDED_BY_DISTANCE;
  if (dme->limited && fabs(ox_limit_beyond_nm(dme, last->p1_nm)) < ON_NM)
    return OX_ENDED_BY_RADIAL;
  return OX_ENDED_OTHERWISE;
}
