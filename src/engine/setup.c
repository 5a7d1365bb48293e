/* From a case to what the engine flies: norths, airspeed, turn, wind at the altitude, limits. */
#include <math.h>
#include <string.h>

#include "oxbow/atmosphere.h"
#include "oxbow/flight.h"
#include "oxbow/limits.h"
#include "oxbow/turn.h"
#include "oxbow/units.h"
#include "oxbow/wind.h"

static ox_vec row_velocity_kt(const ox_wind_row *row, double variation_deg) {
  double from_deg = row->from_deg;
  if (row->north == OX_NORTH_MAGNETIC) from_deg = ox_true_deg(from_deg, variation_deg);
  return ox_wind_velocity_kt(from_deg, row->kt);
}

static ox_vec change_velocity_kt(const ox_wind_change *change, double variation_deg) {
  ox_wind_row row = {0, change->from_deg, change->kt, change->north};
  return row_velocity_kt(&row, variation_deg);
}

/* Rows are interpolated as vectors, so that a wind that veers with height also weakens between
 * the rows, as the mean of two winds does. Outside the rows the nearest one holds. */
static ox_vec wind_at_altitude_kt(const ox_case *c, double altitude_ft) {
  if (c->wind_count == 0) return (ox_vec){0, 0};
  if (c->wind_count == 1 || altitude_ft <= c->wind[0].altitude_ft)
    return row_velocity_kt(&c->wind[0], c->variation_deg);
  for (int i = 1; i < c->wind_count; i++) {
    const ox_wind_row *low = &c->wind[i - 1], *high = &c->wind[i];
    if (altitude_ft > high->altitude_ft) continue;
    double k = (altitude_ft - low->altitude_ft) / (high->altitude_ft - low->altitude_ft);
    return ox_vec_add(ox_vec_scale(row_velocity_kt(low, c->variation_deg), 1.0 - k),
                      ox_vec_scale(row_velocity_kt(high, c->variation_deg), k));
  }
  return row_velocity_kt(&c->wind[c->wind_count - 1], c->variation_deg);
}

/* The inner side of the limiting radial is the fix's, or, with the fix on the radial or the station
 * at the fix, that of the outbound course. */
static void set_limit(const ox_case *c, const ox_setup *s, ox_dme *dme) {
  static const double OFF_NM = 0.05;
  if (!(c->hold.station.limiting_radial_deg > 0.0)) return;
  dme->limit = ox_unit(ox_true_deg(c->hold.station.limiting_radial_deg, c->variation_deg));
  dme->inside_nm = (ox_vec){0, 0};
  if (fabs(ox_vec_cross(dme->limit, dme->at_nm)) < OFF_NM)
    dme->inside_nm = ox_vec_scale(ox_unit(s->inbound_true_deg), -1.0);
  double side = ox_vec_cross(dme->limit, ox_vec_sub(dme->inside_nm, dme->at_nm));
  dme->limited = fabs(side) > 1e-6; /* along the holding course it limits nothing */
}

/* A leg given as a distance with a DME station ends at a reading: the one over the fix, and the
 * length more (inbound towards the station) or less (away from it): AIM 5-3-8 j5, figures. With
 * the station at the fix the length itself is the reading. */
static void set_dme(const ox_case *c, ox_setup *s) {
  double nm = c->hold.station.nm;
  ox_dme *dme = &s->dme;
  dme->at_nm = ox_vec_scale(ox_unit(ox_true_deg(c->hold.station.radial_deg, c->variation_deg)), nm);
  dme->height_nm = fabs(c->hold.altitude_ft - c->hold.station.elevation_ft) / OX_FT_PER_NM;
  dme->outward = ox_vec_dot(dme->at_nm, ox_unit(s->inbound_true_deg)) >= 0.0 ? 1 : -1;
  s->dme_fix_nm = hypot(nm, dme->height_nm);
  s->goal = OX_GOAL_OUTBOUND_DME;
  s->goal_value = nm > 0.0 ? s->dme_fix_nm + dme->outward * c->hold.leg_nm : c->hold.leg_nm;
  double ground2 = s->goal_value * s->goal_value - dme->height_nm * dme->height_nm;
  dme->end_ground_nm = s->goal_value > 0.0 && ground2 > 0.0 ? sqrt(ground2) : 0.0;
  s->has_dme = true;
  set_limit(c, s, dme);
  if (dme->end_ground_nm > 0.0 || dme->limited) return;
  /* Never seen on the way: the standard time is flown, and everything else follows from it. */
  s->goal = OX_GOAL_INBOUND_S;
  s->leg_s = ox_standard_leg_s(c->hold.altitude_ft);
  s->dme_unseen_nm = s->goal_value;
  s->goal_value = s->leg_s;
  s->has_dme = false;
}

static void set_goal(const ox_case *c, ox_setup *s) {
  s->has_dme = false;
  s->dme = (ox_dme){0};
  s->dme_fix_nm = s->dme_unseen_nm = 0.0;
  if (c->hold.leg_by == OX_LEG_BY_DISTANCE) {
    s->leg_s = 0.0;
    s->goal = c->hold.leg_end == OX_LEG_END_INBOUND ? OX_GOAL_INBOUND_NM : OX_GOAL_OUTBOUND_NM;
    s->goal_value = c->hold.leg_nm;
    if (c->hold.station.given && c->hold.leg_end == OX_LEG_END_OUTBOUND) set_dme(c, s);
    return;
  }
  s->leg_s = c->hold.leg_s > 0.0 ? c->hold.leg_s : ox_standard_leg_s(c->hold.altitude_ft);
  s->goal = c->technique.timing == OX_TIMING_OUTBOUND ? OX_GOAL_OUTBOUND_AIR : OX_GOAL_INBOUND_S;
  s->goal_value = s->leg_s;
}

static double tas_at_kt(const ox_case *c, double altitude_ft) {
  if (c->aircraft.tas_kt > 0.0) {
    if (altitude_ft == c->hold.altitude_ft) return c->aircraft.tas_kt;
    /* In a climb the indicated airspeed is what is kept. */
    double ias_kt = ox_ias_kt(c->aircraft.tas_kt, c->hold.altitude_ft, c->aircraft.isa_dev_c);
    return ox_tas_kt(ias_kt, altitude_ft, c->aircraft.isa_dev_c);
  }
  return ox_tas_kt(c->aircraft.ias_kt, altitude_ft, c->aircraft.isa_dev_c);
}

static void set_condition(const ox_case *c, double from_t_s, double altitude_ft,
                          ox_condition *out) {
  out->from_t_s = from_t_s;
  out->altitude_ft = altitude_ft;
  out->tas_kt = tas_at_kt(c, altitude_ft);
  ox_turn_rate turn =
      c->aircraft.turn_by == OX_TURN_BY_BANK
          ? ox_turn_rate_at_bank(out->tas_kt, c->aircraft.max_bank_deg)
          : ox_turn_rate_for(out->tas_kt, c->aircraft.rate_deg_s, c->aircraft.max_bank_deg);
  out->bank_deg = turn.bank_deg;
  out->rate_deg_s = turn.rate_deg_s;
  out->radius_nm = turn.radius_nm;
  out->wind_kt = wind_at_altitude_kt(c, altitude_ft);
  for (int i = 0; i < c->wind_change_count && c->wind_changes[i].at_min * 60.0 <= from_t_s; i++)
    out->wind_kt = change_velocity_kt(&c->wind_changes[i], c->variation_deg);
}

/* A climb is flown in steps, each at the altitude of its middle: the error of position in a step
 * is of second order in its height, a few feet for a step of 500 ft. */
static const double STEP_FT = 500.0;

static int climb_steps(const ox_case *c, double *step_ft, double *step_s) {
  enum { MOST_STEPS = OX_CONDITIONS_MAX - OX_WIND_CHANGES_MAX - 2 };
  if (c->hold.climb_to_ft == 0.0 || c->hold.climb_to_ft == c->hold.altitude_ft) return 0;
  double range_ft = c->hold.climb_to_ft - c->hold.altitude_ft;
  int steps = (int)ceil(fabs(range_ft) / STEP_FT);
  if (steps > MOST_STEPS) steps = MOST_STEPS;
  *step_ft = range_ft / steps;
  *step_s = fabs(*step_ft) / c->hold.climb_ft_min * 60.0;
  return steps;
}

/* Begins of climb steps and times of wind changes, merged in order of time. */
static void set_conditions(const ox_case *c, ox_setup *s) {
  double step_ft = 0.0, step_s = 0.0;
  int steps = climb_steps(c, &step_ft, &step_s);
  int step = 0, change = 0;
  double t_s = 0.0;
  set_condition(c, 0.0, c->hold.altitude_ft, &s->conditions[0]);
  s->condition_count = 1;
  s->climb_end_s = steps * step_s;
  if (steps == 0 && c->wind_change_count == 0) return;
  for (;;) {
    double altitude_ft = c->hold.altitude_ft;
    if (steps > 0)
      altitude_ft = step < steps ? altitude_ft + (step + 0.5) * step_ft : c->hold.climb_to_ft;
    if (s->condition_count < OX_CONDITIONS_MAX)
      set_condition(c, t_s, altitude_ft, &s->conditions[s->condition_count++]);
    double next_step_s = step < steps ? (step + 1) * step_s : HUGE_VAL;
    double next_change_s =
        change < c->wind_change_count ? c->wind_changes[change].at_min * 60.0 : HUGE_VAL;
    t_s = fmin(next_step_s, next_change_s);
    if (t_s == HUGE_VAL) return;
    if (next_step_s == t_s) step++;
    if (next_change_s == t_s) change++;
  }
}

ox_status ox_setup_make(const ox_case *c, ox_setup *out) {
  if (ox_case_check(c, NULL, 0) > 0) return OX_ERROR;
  ox_setup *s = out;
  double altitude_ft = c->hold.altitude_ft;
  set_conditions(c, s);
  const ox_condition *first = &s->conditions[0];
  s->tas_kt = first->tas_kt;
  s->ias_kt = c->aircraft.ias_kt > 0.0
                  ? c->aircraft.ias_kt
                  : ox_ias_kt(c->aircraft.tas_kt, altitude_ft, c->aircraft.isa_dev_c);
  s->bank_deg = first->bank_deg;
  s->rate_deg_s = first->rate_deg_s;
  s->radius_nm = first->radius_nm;
  s->bank_limits = s->rate_deg_s != c->aircraft.rate_deg_s;
  s->wind_kt = first->wind_kt;
  s->inbound_true_deg = ox_true_deg(c->hold.inbound_deg, c->variation_deg);
  s->sense = c->hold.turns == OX_TURNS_RIGHT ? 1 : -1;
  s->wind_speed_kt = ox_vec_length(s->wind_kt);
  s->wind_from_true_deg =
      ox_norm360_deg(ox_bearing_deg(s->wind_kt) + (s->wind_speed_kt > 0 ? 180 : 0));
  s->arrival_heading_true_deg = ox_true_deg(c->arrival.heading_deg, c->variation_deg);
  s->arrival_track_true_deg =
      ox_made_good_on(s->arrival_heading_true_deg, s->tas_kt, s->wind_kt).track_deg;
  s->speed_limit_kias =
      c->hold.limit_kias > 0.0 ? c->hold.limit_kias : ox_us_speed_limit_kias(altitude_ft);
  set_goal(c, s);
  return OX_OK;
}

/* 250 KIAS: 14 CFR 91.117 below 10 000 ft. */
void ox_setup_slow_late(const ox_case *c, ox_setup *s) {
  enum { SLOWED_AFTER_S = 90 };
  ox_case fast = *c;
  fast.aircraft.ias_kt = fmax(s->ias_kt, fmin(1.4 * s->ias_kt, 250.0));
  fast.aircraft.tas_kt = 0.0;
  if (ox_case_check(&fast, NULL, 0) > 0) return;
  /* Conditions that begin before the speed is reduced give way to the fast one. */
  size_t at = 0;
  while (at + 1 < s->condition_count && s->conditions[at + 1].from_t_s <= SLOWED_AFTER_S) at++;
  size_t keep = s->condition_count - at;
  if (keep >= OX_CONDITIONS_MAX) keep = OX_CONDITIONS_MAX - 1;
  memmove(&s->conditions[1], &s->conditions[at], keep * sizeof s->conditions[0]);
  s->condition_count = keep + 1;
  s->conditions[1].from_t_s = SLOWED_AFTER_S;
  set_condition(&fast, 0.0, c->hold.altitude_ft, &s->conditions[0]);
}
