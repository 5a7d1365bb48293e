/* One circuit, and the way back to the fix that it shares with the entry. */
#include "circuit.h"

#include <math.h>

#include "intercept.h"
#include "oxbow/units.h"
#include "outbound.h"

static const double OVERSHOOT_SAID_NM = 0.1; /* less is not seen on an instrument */
static const double LONG_INBOUND_S = 10.0;   /* Doc 8168 Vol II: timing tolerance of 10 s */
static const double LAST_STRETCH_S = 60.0;   /* enough to see where the wind takes it */

static bool lost(ox_pilot *k) {
  pilot_advise(k, OX_ADVICE_NOT_REGAINED, 0, 0, k->circuit);
  pilot_straight_for(k, OX_LEG_ADRIFT, LAST_STRETCH_S);
  return false;
}

static ox_place here(const ox_pilot *k) {
  return (ox_place){k->p, k->heading_deg};
}

typedef enum { REACHED, CHANGED, NO_WAY } progress;

/* Turning only when the course is crossed: it rolls out beyond, and the way back is planned anew,
 * this time with the lead. */
static progress turn_late(ox_pilot *k, const ox_intercept *i) {
  double closing = pilot_velocity(k, k->heading_deg).x;
  double s = closing != 0.0 ? -k->p.x / closing : 0.0;
  k->late = true;
  if (s > 0.0 && s < OX_LEG_LONGEST_S && !pilot_straight(k, OX_LEG_INTERCEPT, s)) return CHANGED;
  pilot_turn(k, OX_LEG_INTERCEPT_TURN, i->turn2_deg, k->in_deg);
  return CHANGED;
}

/* Flies a planned intercept and the inbound course to the fix; CHANGED where the conditions
 * changed on the way and the rest must be planned anew. */
static progress by_the_course(ox_pilot *k, ox_leg_kind turn_kind, const ox_intercept *i) {
  double mid_deg = i->turn2_deg == 0.0 ? k->in_deg : k->heading_deg + i->turn1_deg;
  if (!pilot_turn(k, turn_kind, i->turn1_deg, mid_deg)) return CHANGED;
  if (k->c->technique.lead == OX_LEAD_NONE && !k->late && i->straight_s > 0.0)
    return turn_late(k, i);
  if (!pilot_straight(k, OX_LEG_INTERCEPT, i->straight_s)) return CHANGED;
  if (!pilot_turn(k, OX_LEG_INTERCEPT_TURN, i->turn2_deg, k->in_deg)) return CHANGED;
  k->p.x = 0.0; /* on the course by construction, to rounding */
  if (!k->established) pilot_event(k, OX_EVENT_INTERCEPT, k->t_s);
  k->established = true;
  if (!pilot_straight(k, OX_LEG_INBOUND, -k->p.y / k->gs)) return CHANGED;
  return REACHED;
}

static progress by_the_fix(ox_pilot *k, int sense) {
  ox_direct d = direct_from(k, here(k), sense);
  if (!d.found) return NO_WAY;
  if (!pilot_turn(k, OX_LEG_DIRECT_TURN, d.turn_deg, k->heading_deg + d.turn_deg)) return CHANGED;
  return pilot_straight(k, OX_LEG_DIRECT_TO_FIX, d.straight_s) ? REACHED : CHANGED;
}

/* One plan for the way to the fix, flown as far as the conditions last. `i` is the intercept from
 * here. */
static progress make_way(ox_pilot *k, ox_leg_kind turn_kind, int sense, const ox_intercept *i,
                         bool *direct) {
  if (!k->holds_course) {
    /* Nothing brings it back along the course: show the turn and where the wind takes it. */
    double turn_deg = pilot_turn_needed_deg(k->heading_deg, k->in_deg, sense);
    return pilot_turn(k, turn_kind, sense * turn_deg, k->in_deg) ? NO_WAY : CHANGED;
  }
  if (!*direct) {
    if (i->found && i->end_y_nm <= 0.0 && -i->end_y_nm <= k->gs * OX_LEG_LONGEST_S)
      return by_the_course(k, turn_kind, i);
    if (k->part == OX_PART_CIRCUIT) pilot_advise(k, OX_ADVICE_PAST_FIX, 0, 0, k->circuit);
    *direct = true;
  }
  return by_the_fix(k, sense);
}

bool return_to_fix(ox_pilot *k, ox_leg_kind turn_kind, int sense, bool direct, double *offset_nm,
                   double *inbound_s) {
  *offset_nm = *inbound_s = 0.0;
  k->established = k->late = false;
  bool near = false; /* not in the turn any more: plan from wherever it points */
  double timing_from_s = k->t_s;
  /* Each plan uses up a change of the conditions, or the one late turn. */
  for (size_t plans = 0; plans <= OX_CONDITIONS_MAX + 1; plans++) {
    double needed_deg = pilot_turn_needed_deg(k->heading_deg, k->in_deg, sense);
    ox_intercept i = {0};
    if (k->holds_course && (plans == 0 || !direct))
      i = near ? intercept_near(k, here(k)) : intercept_from(k, here(k), sense);
    if (plans == 0) {
      *offset_nm = i.offset_nm;
      timing_from_s += i.plain_s;
    }
    progress p = make_way(k, turn_kind, sense, &i, &direct);
    if (p == NO_WAY) return lost(k);
    if (p == REACHED) {
      *inbound_s = fmax(0.0, k->t_s - timing_from_s);
      pilot_event(k, OX_EVENT_FIX, k->t_s);
      return true;
    }
    /* While the inbound heading is still ahead in the turn, the turn goes on. */
    near = !k->turning || pilot_turn_needed_deg(k->heading_deg, k->in_deg, sense) > needed_deg;
    if (near) sense = ox_turn_between_deg(k->heading_deg, k->in_deg) >= 0.0 ? 1 : -1;
  }
  return lost(k);
}

/* Farthest to the non-holding side (NM, >= 0) over the legs from an index on: at a leg's ends, or
 * in a turn where the motion across the course stops: V sin h = -w_x. */
static double nonholding_nm(const ox_pilot *k, size_t from_leg) {
  double least_x = 0.0;
  for (size_t i = from_leg; i < k->flight->leg_count; i++) {
    const ox_leg *leg = &k->flight->legs[i];
    least_x = fmin(least_x, ox_frame_in(&k->frame, leg->p0_nm).x);
    least_x = fmin(least_x, ox_frame_in(&k->frame, leg->p1_nm).x);
    double s = -ox_frame_in(&k->frame, leg->wind_kt).x / leg->tas_kt;
    if (leg->shape != OX_SHAPE_TURN || fabs(s) >= 1.0) continue;
    double still_deg = asin(s) / OX_RAD_PER_DEG;
    double h0 = ox_frame_heading_in(&k->frame, leg->heading0_true_deg);
    int sense = k->frame.sense * leg->rate_deg_s >= 0.0 ? 1 : -1;
    for (int side = 0; side < 2; side++) {
      double to_deg = ox_turn_in_sense_deg(h0, side ? 180.0 - still_deg : still_deg, sense);
      double once_s = 360.0 / fabs(leg->rate_deg_s);
      double t_s = leg->t0_s + to_deg / fabs(leg->rate_deg_s);
      for (; t_s < leg->t1_s; t_s += once_s)
        least_x = fmin(least_x, ox_frame_in(&k->frame, ox_leg_position(leg, t_s)).x);
    }
  }
  return -least_x + 0.0;
}

static void fly_outbound(ox_pilot *k, const ox_outbound_plan *plan, bool direct_entry) {
  k->part = direct_entry ? OX_PART_ENTRY : OX_PART_CIRCUIT;
  pilot_react(k);
  pilot_turn_to(k, OX_LEG_OUTBOUND_TURN, plan->turn_deg, plan->heading_deg);
  k->part = OX_PART_CIRCUIT;
  double level_t_s = k->t_s;
  if (plan->abeam_found)
    pilot_event(k, OX_EVENT_ABEAM, level_t_s + plan->abeam_s);
  else
    pilot_advise(k, OX_ADVICE_NO_ABEAM, 0, 0, k->circuit);
  pilot_event(k, OX_EVENT_CLOCK_START, level_t_s + plan->clock_s);
  double reaction_s = fmin(k->reaction_s, plan->straight_s);
  pilot_straight_for(k, OX_LEG_OUTBOUND, plan->straight_s - reaction_s);
  pilot_straight_for(k, OX_LEG_REACTION, reaction_s);
}

static void measure_advise(ox_pilot *k, const ox_circuit *m) {
  const ox_setup *s = k->setup;
  if (m->rollout_offset_nm < -OVERSHOOT_SAID_NM)
    pilot_advise(k, OX_ADVICE_OVERSHOOT, -m->rollout_offset_nm, 0, k->circuit);
  if (s->goal == OX_GOAL_INBOUND_S && m->inbound_s > 0.0 &&
      fabs(m->inbound_s - s->goal_value) > LONG_INBOUND_S)
    pilot_advise(k, OX_ADVICE_LONG_INBOUND, m->inbound_s, s->goal_value, k->circuit);
}

static void measure_end(ox_pilot *k, ox_circuit *m) {
  m->outbound_end_nm = ox_frame_out(&k->frame, k->p);
  m->gate_deg = ox_turn_between_deg(ox_bearing_deg(k->p), 180.0);
}

static void measure_inbound(const ox_pilot *k, ox_circuit *m) {
  const ox_setup *s = k->setup;
  bool timed = s->goal == OX_GOAL_INBOUND_S && m->inbound_s > 0.0;
  m->inbound_error_s = timed ? m->inbound_s - s->goal_value : 0.0;
  m->next_timed_s = timed ? fmax(OX_ADJUST_FLOOR_S, m->timed_s - m->inbound_error_s) : m->timed_s;
}

ox_circuit_order circuit_usual_order(const ox_pilot *k) {
  const ox_flight *f = k->flight;
  ox_circuit_order order = {0};
  if (f->circuit_count > 0) {
    order.previous_timed_s = f->circuits[f->circuit_count - 1].timed_s;
    order.previous_inbound_s = f->circuits[f->circuit_count - 1].inbound_s;
  }
  return order;
}

bool circuit_fly(ox_pilot *k, int number, bool direct_entry, const ox_circuit_order *order) {
  ox_flight *f = k->flight;
  size_t first_leg = f->leg_count;
  ox_circuit *m = &f->circuits[f->circuit_count++];
  k->circuit = number;
  m->fix_t_s = k->t_s;
  ox_outbound_plan plan = outbound_choose(k, order);
  fly_outbound(k, &plan, direct_entry);
  measure_end(k, m);
  m->outbound_heading_true_deg = ox_frame_heading_out(&k->frame, plan.heading_deg);
  m->outbound_s = plan.straight_s;
  m->timed_s = plan.timed_s;
  m->complete = return_to_fix(k, OX_LEG_INBOUND_TURN, 1, plan.direct, &m->rollout_offset_nm, &m->inbound_s);
  m->end_t_s = k->t_s;
  m->nonholding_nm = nonholding_nm(k, first_leg);
  measure_inbound(k, m);
  measure_advise(k, m);
  return m->complete;
}
