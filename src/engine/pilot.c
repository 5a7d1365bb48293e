/* The pilot's motion and the writing of the flight. See pilot.h. */
#include "pilot.h"

#include <math.h>

#include "oxbow/units.h"
#include "oxbow/wind.h"
#include "station.h"

static void take_condition(ox_pilot *k, size_t index) {
  const ox_condition *now = &k->setup->conditions[index];
  ox_vec wind_kt = ox_frame_in(&k->frame, now->wind_kt);
  k->condition = index;
  k->v = now->tas_kt / OX_S_PER_H;
  k->w = ox_vec_scale(wind_kt, 1.0 / OX_S_PER_H);
  k->rate_deg_s = now->rate_deg_s;
  k->radius_nm = now->radius_nm;
  ox_triangle in = ox_triangle_for_course(0.0, now->tas_kt, wind_kt);
  k->holds_course = in.possible && in.gs_kt > 0.0;
  /* Against too much wind across, the best a pilot can do is to point straight into it. */
  k->in_deg = in.possible ? in.wca_deg : in.cross_kt > 0.0 ? -90.0 : 90.0;
  k->gs = in.possible ? in.gs_kt / OX_S_PER_H : 0.0;
}

bool pilot_errs(const ox_pilot *k, ox_mistake mistake) {
  return (k->flaws.mistakes >> (unsigned)mistake & 1u) != 0;
}

void pilot_begin(ox_pilot *k, const ox_case *c, const ox_flaws *flaws, ox_flight *flight) {
  const ox_setup *s = &flight->setup;
  flight->leg_count = flight->event_count = flight->circuit_count = flight->advice_count = 0;
  k->flight = flight;
  k->c = c;
  k->setup = s;
  k->flaws = flaws ? *flaws : (ox_flaws){0};
  k->frame = ox_frame_make(s->inbound_true_deg, s->sense);
  k->reaction_s = c->technique.reaction_s + c->technique.roll_s;
  k->dme = station_in_frame(&k->frame, &s->dme);
  take_condition(k, 0);
  k->t_s = 0.0;
  k->p = (ox_vec){0, 0};
  k->heading_deg = ox_frame_heading_in(&k->frame, s->arrival_heading_true_deg);
  k->part = OX_PART_ARRIVAL;
  k->circuit = 0;
  k->turning = k->established = k->late = false;
}

ox_vec pilot_velocity(const ox_pilot *k, double heading_deg) {
  ox_vec u = ox_unit(heading_deg);
  return (ox_vec){k->v * u.x + k->w.x, k->v * u.y + k->w.y};
}

ox_vec pilot_turn_displacement(const ox_pilot *k, double heading_deg, double turn_deg) {
  /* The chord of the arc, along the mean heading: exact also for the smallest turn. */
  double s_half, c_half;
  ox_sincos_deg(0.5 * turn_deg, &s_half, &c_half);
  double chord = 2.0 * k->radius_nm * (turn_deg >= 0.0 ? s_half : -s_half);
  ox_vec mean = ox_unit(heading_deg + 0.5 * turn_deg);
  double s = fabs(turn_deg) / k->rate_deg_s;
  return (ox_vec){chord * mean.x + k->w.x * s, chord * mean.y + k->w.y * s};
}

ox_place pilot_after_turn(const ox_pilot *k, ox_place from, double turn_deg) {
  ox_place to;
  to.p = ox_vec_add(from.p, pilot_turn_displacement(k, from.heading_deg, turn_deg));
  to.heading_deg = ox_norm180_deg(from.heading_deg + turn_deg);
  return to;
}

ox_place pilot_after_straight(const ox_pilot *k, ox_place from, double s) {
  ox_place to = from;
  to.p = ox_vec_add(from.p, ox_vec_scale(pilot_velocity(k, from.heading_deg), s));
  return to;
}

double pilot_turn_needed_deg(double from_deg, double to_deg, int sense) {
  double turn_deg = ox_turn_in_sense_deg(from_deg, to_deg, sense);
  return turn_deg > 360.0 - 1e-9 || turn_deg < 1e-12 ? 0.0 : turn_deg;
}

static void write_leg(ox_pilot *k, ox_leg_kind kind, double s, double rate_deg_s,
                      ox_place to) {
  ox_flight *f = k->flight;
  if (f->leg_count >= OX_LEGS_MAX) return;
  const ox_condition *now = &k->setup->conditions[k->condition];
  ox_leg *leg = &f->legs[f->leg_count++];
  leg->kind = kind;
  leg->part = k->part;
  leg->shape = rate_deg_s == 0.0 ? OX_SHAPE_STRAIGHT : OX_SHAPE_TURN;
  leg->circuit = k->circuit;
  leg->t0_s = k->t_s;
  leg->t1_s = k->t_s + s;
  leg->p0_nm = ox_frame_out(&k->frame, k->p);
  leg->p1_nm = ox_frame_out(&k->frame, to.p);
  leg->heading0_true_deg = ox_frame_heading_out(&k->frame, k->heading_deg);
  leg->heading1_true_deg = ox_frame_heading_out(&k->frame, to.heading_deg);
  leg->rate_deg_s = k->frame.sense * rate_deg_s + 0.0;
  leg->tas_kt = now->tas_kt;
  leg->altitude_ft = now->altitude_ft;
  leg->wind_kt = now->wind_kt;
  k->t_s = leg->t1_s;
  k->p = to.p;
  k->heading_deg = to.heading_deg;
}

/* A change nearer than this to the end of a leg waits for the next leg. */
static const double NO_SLIVER_S = 1e-6;

bool pilot_refresh(ox_pilot *k) {
  const ox_setup *s = k->setup;
  size_t at = k->condition;
  while (at + 1 < s->condition_count && s->conditions[at + 1].from_t_s <= k->t_s + NO_SLIVER_S)
    at++;
  if (at == k->condition) return false;
  take_condition(k, at);
  return true;
}

/* Seconds of a leg that can be flown before the conditions change. */
static double until_change_s(const ox_pilot *k, double s) {
  const ox_setup *setup = k->setup;
  if (k->condition + 1 >= setup->condition_count) return s;
  double left_s = setup->conditions[k->condition + 1].from_t_s - k->t_s;
  return left_s < s - NO_SLIVER_S ? left_s : s;
}

bool pilot_straight(ox_pilot *k, ox_leg_kind kind, double s) {
  if (!(s > 0.0)) return true;
  double flown_s = until_change_s(k, s);
  write_leg(k, kind, flown_s, 0.0,
            pilot_after_straight(k, (ox_place){k->p, k->heading_deg}, flown_s));
  pilot_refresh(k);
  return flown_s == s;
}

bool pilot_turn(ox_pilot *k, ox_leg_kind kind, double turn_deg, double to_deg) {
  if (turn_deg == 0.0) {
    k->heading_deg = ox_norm180_deg(to_deg);
    return true;
  }
  double whole_s = fabs(turn_deg) / k->rate_deg_s, flown_s = until_change_s(k, whole_s);
  bool whole = flown_s == whole_s;
  double flown_deg = whole ? turn_deg : copysign(flown_s * k->rate_deg_s, turn_deg);
  ox_place to = pilot_after_turn(k, (ox_place){k->p, k->heading_deg}, flown_deg);
  if (whole) to.heading_deg = ox_norm180_deg(to_deg);
  bool going_on = k->flight->leg_count > 0 && k->turning;
  if (!going_on) pilot_event(k, OX_EVENT_TURN_BEGIN, k->t_s);
  write_leg(k, kind, flown_s, copysign(k->rate_deg_s, turn_deg), to);
  k->turning = !whole;
  if (whole) pilot_event(k, OX_EVENT_WINGS_LEVEL, k->t_s);
  pilot_refresh(k);
  return whole;
}

void pilot_straight_for(ox_pilot *k, ox_leg_kind kind, double s) {
  double end_t_s = k->t_s + s;
  while (!pilot_straight(k, kind, end_t_s - k->t_s)) continue;
}

void pilot_turn_to(ox_pilot *k, ox_leg_kind kind, double turn_deg, double to_deg) {
  int sense = turn_deg >= 0.0 ? 1 : -1;
  while (!pilot_turn(k, kind, turn_deg, to_deg))
    turn_deg = sense * pilot_turn_needed_deg(k->heading_deg, to_deg, sense);
}

void pilot_react(ox_pilot *k) {
  pilot_straight_for(k, OX_LEG_REACTION, k->reaction_s);
}

void pilot_event(ox_pilot *k, ox_event_kind kind, double t_s) {
  ox_flight *f = k->flight;
  if (f->event_count >= OX_EVENTS_MAX) return;
  size_t at = f->event_count++;
  for (; at > 0 && f->events[at - 1].t_s > t_s; at--) f->events[at] = f->events[at - 1];
  f->events[at] = (ox_event){kind, t_s, k->circuit};
}

void pilot_advise(ox_pilot *k, ox_advice_kind kind, double a, double b, double c) {
  ox_flight *f = k->flight;
  for (size_t i = 0; i < f->advice_count; i++)
    if (f->advice[i].kind == kind) return;
  if (f->advice_count < OX_ADVISORIES_MAX)
    f->advice[f->advice_count++] = (ox_advice){kind, a, b, c};
}
