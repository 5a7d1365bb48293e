/* When: the clock of a flight, its fuel, and when the fix is left. Sums of a steady flow, the
 * rule of 14 CFR 91.185(c)(3), and one flight to the EFC. */
#include "oxbow/endurance.h"

#include <math.h>

#include "oxbow/units.h"
#include "oxbow/wind.h"

static const double DAY_S = 86400.0;
static const int DAY_MIN = 1440;

/* --- the clock ----------------------------------------------------------------------------- */

static double of_day_s(double s) {
  double rest = fmod(s, DAY_S);
  if (rest < 0.0) rest += DAY_S;
  return rest < DAY_S ? rest : 0.0; /* a hair below 0 rounds up to the whole day */
}

bool ox_clock_is_known(const ox_case *c) {
  return c->arrival.fix_at_s >= 0;
}

double ox_clock_utc_s(const ox_case *c, double t_s) {
  return ox_clock_is_known(c) ? of_day_s(c->arrival.fix_at_s + t_s) : 0.0;
}

double ox_clock_local_s(const ox_case *c, double t_s) {
  if (!ox_clock_is_known(c)) return 0.0;
  return of_day_s(c->arrival.fix_at_s + t_s + c->clock.utc_offset_min * 60.0);
}

bool ox_clock_after_s(const ox_case *c, int minute, double *after_s) {
  *after_s = 0.0;
  if (!ox_clock_is_known(c) || minute < 0 || minute >= DAY_MIN) return false;
  *after_s = minute * 60.0 - c->arrival.fix_at_s;
  if (*after_s < -0.5 * DAY_S) *after_s += DAY_S;
  if (*after_s > 0.5 * DAY_S) *after_s -= DAY_S;
  return true;
}

int ox_clock_next_past(int minute_of_hour, int from_min) {
  if (minute_of_hour < 0 || minute_of_hour > 59 || from_min < 0 || from_min >= DAY_MIN) return -1;
  int ahead = (minute_of_hour - from_min % 60 + 60) % 60;
  return (from_min + ahead) % DAY_MIN;
}

/* --- fuel ---------------------------------------------------------------------------------- */

static double amount(double given, double minutes, double flow_h) {
  return given > 0.0 ? given : minutes / 60.0 * flow_h;
}

ox_endurance ox_endurance_of(const ox_case *c) {
  ox_endurance e = {0};
  double flow_h = c->fuel.flow_h;
  if (!(c->fuel.on_board > 0.0) || !(flow_h > 0.0)) return e;
  e.known = true;
  e.on_board = c->fuel.on_board;
  e.flow_h = flow_h;
  e.alternate = amount(c->fuel.alternate, c->fuel.alternate_min, flow_h);
  e.reserve = amount(c->fuel.reserve, c->fuel.reserve_min, flow_h);
  e.leave_by_s = (e.on_board - e.alternate - e.reserve) / flow_h * OX_S_PER_H;
  e.reserve_s = (e.on_board - e.reserve) / flow_h * OX_S_PER_H;
  e.empty_s = e.on_board / flow_h * OX_S_PER_H;
  return e;
}

double ox_endurance_left(const ox_endurance *e, double t_s) {
  return e->known ? fmax(0.0, e->on_board - e->flow_h * t_s / OX_S_PER_H) : 0.0;
}

/* --- over the fix -------------------------------------------------------------------------- */

size_t ox_passages(const ox_case *c, const ox_flight *flight, ox_passage *out, size_t max) {
  const double HAIR_S = 1e-6;
  ox_endurance e = ox_endurance_of(c);
  size_t count = 0;
  for (size_t i = 0; i < flight->event_count && count < max; i++) {
    if (flight->events[i].kind != OX_EVENT_FIX) continue;
    double t_s = flight->events[i].t_s;
    out[count] = (ox_passage){.number = (int)count + 1,
                              .t_s = t_s,
                              .left = ox_endurance_left(&e, t_s),
                              .can_leave = !e.known || t_s <= e.leave_by_s + HAIR_S};
    count++;
  }
  return count;
}

int ox_passage_leave_by(const ox_passage *passages, size_t count) {
  int last = 0;
  for (size_t i = 0; i < count && passages[i].can_leave; i++) last = passages[i].number;
  return last;
}

/* --- until the EFC ------------------------------------------------------------------------- */

static const ox_advice *advice(const ox_flight *f, ox_advice_kind kind) {
  for (size_t i = 0; i < f->advice_count; i++)
    if (f->advice[i].kind == kind) return &f->advice[i];
  return NULL;
}

static void measure_plan(const ox_flight *f, ox_efc_plan *out) {
  const ox_advice *missed = advice(f, OX_ADVICE_LEAVE_MISSED);
  out->circuits = (int)f->circuit_count;
  if (f->circuit_count > 0) {
    const ox_circuit *last = &f->circuits[f->circuit_count - 1];
    out->last_timed_s = last->timed_s;
    out->last_circuit_s = last->complete ? last->end_t_s - last->fix_t_s : 0.0;
  }
  if (missed) {
    out->outcome = OX_EFC_MISSED;
    out->before_s = missed->a;
    out->later_s = missed->b;
  } else if (fabs(ox_flight_end_s(f) - out->after_s) < 0.5) {
    out->outcome = OX_EFC_MET;
  } else if (advice(f, OX_ADVICE_NOT_REGAINED)) {
    out->outcome = OX_EFC_NOT_REGAINED;
  } else { /* as many circuits as a flight holds end before it */
    out->outcome = OX_EFC_MISSED;
    out->before_s = out->later_s = ox_flight_end_s(f);
  }
}

ox_status ox_efc_plan_make(const ox_case *c, ox_flight *scratch, ox_efc_plan *out) {
  if (ox_case_check(c, NULL, 0) > 0) return OX_ERROR;
  *out = (ox_efc_plan){OX_EFC_NOT_GIVEN, 0, 0, 0, 0, 0, 0};
  if (c->hold.efc_min < 0) return OX_OK;
  if (!ox_clock_after_s(c, c->hold.efc_min, &out->after_s)) {
    out->outcome = OX_EFC_NO_CLOCK;
    return OX_OK;
  }
  if (out->after_s <= 0.0) {
    out->outcome = OX_EFC_BEFORE;
    return OX_OK;
  }
  ox_case to_efc = *c;
  to_efc.hold.ends = OX_HOLD_TO_EFC;
  ox_status status = ox_flight_solve(&to_efc, scratch);
  measure_plan(scratch, out);
  return status;
}

/* --- without radio ------------------------------------------------------------------------- */

ox_lost_radio ox_lost_radio_of(const ox_case *c) {
  ox_lost_radio r = {OX_RADIO_NOT_DECIDED, -1, false, -1};
  int efc_min = c->hold.efc_min, eta_min = c->lost_radio.eta_min;
  double after_s;
  switch (c->lost_radio.limit_starts_approach) {
  case OX_LIMIT_UNKNOWN:
    return r;
  case OX_LIMIT_STARTS_APPROACH:
    r.action = efc_min >= 0 ? OX_RADIO_APPROACH_AT_EFC : OX_RADIO_APPROACH_AT_ETA;
    r.at_min = efc_min >= 0 ? efc_min : eta_min;
    break;
  case OX_LIMIT_EN_ROUTE:
    r.then_approach_min = eta_min;
    r.action = efc_min >= 0 ? OX_RADIO_LEAVE_AT_EFC : OX_RADIO_LEAVE_ON_ARRIVAL;
    r.at_min = efc_min;
    if (efc_min < 0 && ox_clock_is_known(c)) r.at_min = c->arrival.fix_at_s / 60;
    break;
  }
  r.before_arrival = r.action != OX_RADIO_LEAVE_ON_ARRIVAL &&
                     ox_clock_after_s(c, r.at_min, &after_s) && after_s < 0.0;
  return r;
}

/* --- slowing down -------------------------------------------------------------------------- */

ox_slow_down ox_slow_down_of(const ox_flight *flight) {
  const ox_setup *s = &flight->setup;
  ox_made_good made = ox_made_good_on(s->arrival_heading_true_deg, s->tas_kt, s->wind_kt);
  return (ox_slow_down){.gs_kt = made.gs_kt,
                        .nm = made.gs_kt * OX_SLOW_DOWN_S / OX_S_PER_H,
                        .shown = ox_flight_begin_s(flight) <= -OX_SLOW_DOWN_S};
}
