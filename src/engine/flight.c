/* The flight from arrival to the last fix passage, and what is to be said about it. */
#include "oxbow/flight.h"

#include <math.h>

#include "circuit.h"
#include "leaving.h"
#include "oxbow/atmosphere.h"
#include "oxbow/wind.h"
#include "pilot.h"

static const double TAS_AGREES_KT = 1.0;
static const double LEAST_GS_NM_S = 1.0 / 3600.0; /* one knot: slower is not an arrival */

/* --- advice that needs no flight ----------------------------------------------------------- */

static void advise_speeds(ox_pilot *k) {
  const ox_case *c = k->c;
  const ox_setup *s = k->setup;
  if (s->ias_kt > s->speed_limit_kias)
    pilot_advise(k, OX_ADVICE_SPEED_ABOVE_LIMIT, s->ias_kt, s->speed_limit_kias, 0);
  if (s->ias_kt < 90.0) pilot_advise(k, OX_ADVICE_BELOW_FIXED_WING_MIN, s->ias_kt, 90.0, 0);
  if (c->aircraft.ias_kt > 0.0 && c->aircraft.tas_kt > 0.0) {
    double tas_kt = ox_tas_kt(c->aircraft.ias_kt, c->hold.altitude_ft, c->aircraft.isa_dev_c);
    if (fabs(tas_kt - c->aircraft.tas_kt) > TAS_AGREES_KT)
      pilot_advise(k, OX_ADVICE_TAS_CONTRADICTS_IAS, c->aircraft.tas_kt, tas_kt, 0);
  }
}

static void advise_entry(ox_pilot *k) {
  const ox_flight *f = k->flight;
  if (f->flown != f->entry.kind && (int)f->flown != f->entry.also)
    pilot_advise(k, OX_ADVICE_ENTRY_NOT_BY_SECTOR, f->flown, f->entry.kind, 0);
  if (f->entry.also != OX_ENTRY_NONE)
    pilot_advise(k, OX_ADVICE_ENTRY_EITHER, f->entry.kind, f->entry.also,
                 fabs(f->entry.boundary_deg));
  if (f->by_heading.kind != f->by_track.kind)
    pilot_advise(k, OX_ADVICE_TRACK_DIFFERS, f->by_heading.kind, f->by_track.kind, 0);
}

static void advise_dme(ox_pilot *k) {
  const ox_setup *s = k->setup;
  if (s->dme_unseen_nm != 0.0)
    pilot_advise(k, OX_ADVICE_DME_NOT_SEEN, s->dme_unseen_nm, s->dme.height_nm, 0);
}

/* Whether an outbound heading, straight out or away from the course, crosses the limiting radial
 * from abeam the fix two radii out, in still air. */
static bool can_cross_limit(const ox_pilot *k) {
  enum { STEP_DEG = 5, WIDEST_DEG = 60 };
  ox_vec level = {2.0 * k->radius_nm, 0.0};
  for (int off = 0; off <= WIDEST_DEG; off += STEP_DEG) {
    double s = ox_limit_reached_s(&k->dme, level, ox_vec_scale(ox_unit(180.0 - off), k->v));
    if (s >= 0.0 && s < OX_LEG_LONGEST_S) return true;
  }
  return false;
}

static void advise_limit(ox_pilot *k) {
  double radial_deg = k->c->hold.station.limiting_radial_deg;
  if (k->setup->goal == OX_GOAL_OUTBOUND_DME && radial_deg > 0.0 && !can_cross_limit(k))
    pilot_advise(k, OX_ADVICE_RADIAL_NOT_CROSSED, radial_deg, 0, 0);
}

static void advise_wind(ox_pilot *k) {
  const ox_steady *s = &k->flight->steady;
  const ox_case *c = k->c;
  if (s->why != OX_STEADY_EXISTS)
    pilot_advise(k, OX_ADVICE_NO_STEADY, s->why, s->component_kt, s->limit_kt);
  if (c->wind_count > 1 && (c->hold.altitude_ft < c->wind[0].altitude_ft ||
                            c->hold.altitude_ft > c->wind[c->wind_count - 1].altitude_ft))
    pilot_advise(k, OX_ADVICE_WIND_EXTRAPOLATED, c->hold.altitude_ft, 0, 0);
}

/* --- arrival ------------------------------------------------------------------------------- */

/* Straight to the fix on the arrival heading; it ends over the fix at time 0, so the pilot is put
 * back along the track by as much as it flies. */
static void fly_arrival(ox_pilot *k) {
  double distance_nm = k->c->arrival.distance_nm;
  ox_vec velocity = pilot_velocity(k, k->heading_deg);
  double gs = ox_vec_length(velocity);
  k->part = OX_PART_ARRIVAL;
  if (gs < LEAST_GS_NM_S) {
    pilot_advise(k, OX_ADVICE_NO_ARRIVAL, 0, 0, 0);
  } else if (distance_nm > 0.0) {
    double s = distance_nm / gs;
    k->p = ox_vec_scale(velocity, -s);
    k->t_s = -s;
    pilot_straight(k, OX_LEG_ARRIVAL, s);
  }
  k->p = (ox_vec){0, 0};
  k->t_s = 0.0;
  if (k->flight->leg_count > 0) {
    ox_leg *leg = &k->flight->legs[k->flight->leg_count - 1];
    leg->t1_s = 0.0;
    leg->p1_nm = k->p;
  }
  pilot_event(k, OX_EVENT_FIX, 0.0);
  pilot_refresh(k);
}

/* --- the whole ----------------------------------------------------------------------------- */

static void choose_entry(ox_flight *f, const ox_case *c) {
  const ox_setup *s = &f->setup;
  f->by_heading = ox_entry_choose(s->inbound_true_deg, s->sense, s->arrival_heading_true_deg);
  f->by_track = ox_entry_choose(s->inbound_true_deg, s->sense, s->arrival_track_true_deg);
  f->entry = c->technique.sector == OX_SECTOR_TRACK ? f->by_track : f->by_heading;
  switch (c->technique.entry) {
  case OX_CHOOSE_AUTO: f->flown = f->entry.kind; break;
  case OX_CHOOSE_DIRECT: f->flown = OX_ENTRY_DIRECT; break;
  case OX_CHOOSE_PARALLEL: f->flown = OX_ENTRY_PARALLEL; break;
  case OX_CHOOSE_TEARDROP: f->flown = OX_ENTRY_TEARDROP; break;
  }
}

static void note_entry_heading(ox_flight *f) {
  f->entry_heading_true_deg = f->setup.arrival_heading_true_deg;
  for (size_t i = 0; i < f->leg_count; i++) {
    const ox_leg *leg = &f->legs[i];
    if (leg->kind == OX_LEG_ENTRY_TURN || leg->kind == OX_LEG_OUTBOUND_TURN) {
      f->entry_heading_true_deg = leg->heading1_true_deg;
      return;
    }
    if (leg->kind == OX_LEG_ENTRY_OUTBOUND || leg->kind == OX_LEG_OUTBOUND) return;
  }
}

/* A reversal is complete when established inbound after the entry (AIM 5-4-9 a5): none after a
 * parallel or teardrop entry, and the one that a direct entry begins. */
static int most_circuits(const ox_pilot *k, bool direct) {
  if (k->flight->leave_t_s > 0.0 || k->c->hold.ends == OX_HOLD_TO_ALTITUDE) return OX_CIRCUITS_MAX;
  if (k->c->hold.ends == OX_HOLD_REVERSAL) return direct ? 1 : 0;
  return k->c->technique.circuits;
}

static void fly(ox_pilot *k) {
  ox_flight *f = k->flight;
  bool direct = f->flown == OX_ENTRY_DIRECT;
  fly_arrival(k);
  f->leave_t_s = leaving_after_s(k);
  if (!direct && !entry_fly(k, f->flown)) return;
  int most = most_circuits(k, direct);
  double until_s = k->c->hold.ends == OX_HOLD_TO_ALTITUDE ? f->setup.climb_end_s : HUGE_VAL;
  for (int n = 1; n <= most && k->t_s < until_s; n++) {
    ox_circuit_order usual = circuit_usual_order(k), order = usual;
    if (f->leave_t_s > 0.0 && !leaving_order(k, f->leave_t_s, &usual, &order)) return;
    if (!circuit_fly(k, n, direct && n == 1, &order)) return;
  }
}

ox_status ox_flight_solve(const ox_case *c, ox_flight *out) {
  return ox_flight_solve_flawed(c, NULL, out);
}

/* Mistakes that change the case itself rather than how it is flown. */
static bool mistaken_case(const ox_case *c, const ox_flaws *flaws, ox_case *flown) {
  if (!flaws || !(flaws->mistakes & (1u << OX_MISTAKE_RADIAL_AS_COURSE))) return false;
  *flown = *c;
  flown->hold.inbound_deg = ox_norm360_deg(c->hold.inbound_deg + 180.0);
  return true;
}

ox_status ox_flight_solve_flawed(const ox_case *asked, const ox_flaws *flaws, ox_flight *out) {
  ox_case mistaken;
  /* Another course of a sound case is sound: the one check is that of the setup. */
  const ox_case *c = mistaken_case(asked, flaws, &mistaken) ? &mistaken : asked;
  if (ox_setup_make(c, &out->setup) == OX_ERROR) return OX_ERROR;
  if (flaws && (flaws->mistakes & (1u << OX_MISTAKE_LATE_SPEED)))
    ox_setup_slow_late(c, &out->setup);
  const ox_setup *s = &out->setup;
  choose_entry(out, c);
  ox_steady_solve_dme(s->inbound_true_deg, s->sense, s->tas_kt, s->rate_deg_s,
                      c->technique.reaction_s + c->technique.roll_s, s->wind_kt, s->goal,
                      s->goal_value, s->has_dme ? &s->dme : NULL, &out->steady);
  ox_pilot pilot;
  pilot_begin(&pilot, c, flaws, out);
  advise_speeds(&pilot);
  advise_entry(&pilot);
  advise_wind(&pilot);
  advise_dme(&pilot);
  advise_limit(&pilot);
  fly(&pilot);
  note_entry_heading(out);
  return out->advice_count > 0 ? OX_ADVISORY : OX_OK;
}
