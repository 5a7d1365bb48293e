/* From a case to what the engine flies: norths, airspeed, turn, wind at the altitude, limits. */
#include <math.h>

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

static void set_goal(const ox_case *c, ox_setup *s) {
  if (c->hold.leg_by == OX_LEG_BY_DISTANCE) {
    s->leg_s = 0.0;
    s->goal = c->hold.leg_end == OX_LEG_END_INBOUND ? OX_GOAL_INBOUND_NM : OX_GOAL_OUTBOUND_NM;
    s->goal_value = c->hold.leg_nm;
    return;
  }
  s->leg_s = c->hold.leg_s > 0.0 ? c->hold.leg_s : ox_standard_leg_s(c->hold.altitude_ft);
  s->goal = c->technique.timing == OX_TIMING_OUTBOUND ? OX_GOAL_OUTBOUND_AIR : OX_GOAL_INBOUND_S;
  s->goal_value = s->leg_s;
}

ox_status ox_setup_make(const ox_case *c, ox_setup *out) {
  if (ox_case_check(c, NULL, 0) > 0) return OX_ERROR;
  ox_setup s;
  double altitude_ft = c->hold.altitude_ft, isa_dev_c = c->aircraft.isa_dev_c;
  s.tas_kt = c->aircraft.tas_kt > 0.0 ? c->aircraft.tas_kt
                                      : ox_tas_kt(c->aircraft.ias_kt, altitude_ft, isa_dev_c);
  s.ias_kt = c->aircraft.ias_kt > 0.0 ? c->aircraft.ias_kt
                                      : ox_ias_kt(s.tas_kt, altitude_ft, isa_dev_c);
  ox_turn_rate turn =
      ox_turn_rate_for(s.tas_kt, c->aircraft.rate_deg_s, c->aircraft.max_bank_deg);
  s.bank_deg = turn.bank_deg;
  s.rate_deg_s = turn.rate_deg_s;
  s.radius_nm = turn.radius_nm;
  s.bank_limits = turn.bank_limits;
  s.inbound_true_deg = ox_true_deg(c->hold.inbound_deg, c->variation_deg);
  s.sense = c->hold.turns == OX_TURNS_RIGHT ? 1 : -1;
  s.wind_kt = wind_at_altitude_kt(c, altitude_ft);
  s.wind_speed_kt = ox_vec_length(s.wind_kt);
  s.wind_from_true_deg = ox_norm360_deg(ox_bearing_deg(s.wind_kt) + (s.wind_speed_kt > 0 ? 180 : 0));
  s.arrival_heading_true_deg = ox_true_deg(c->arrival.heading_deg, c->variation_deg);
  s.arrival_track_true_deg =
      ox_made_good_on(s.arrival_heading_true_deg, s.tas_kt, s.wind_kt).track_deg;
  s.speed_limit_kias =
      c->hold.limit_kias > 0.0 ? c->hold.limit_kias : ox_us_speed_limit_kias(altitude_ft);
  set_goal(c, &s);
  *out = s;
  return OX_OK;
}
