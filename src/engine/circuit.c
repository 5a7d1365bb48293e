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
  pilot_straight(k, OX_LEG_ADRIFT, LAST_STRETCH_S);
  return false;
}

static void over_the_fix(ox_pilot *k) {
  pilot_event(k, OX_EVENT_FIX, k->t_s);
}

static bool by_the_course(ox_pilot *k, ox_leg_kind turn_kind, const ox_intercept *i,
                          double *inbound_s) {
  double inbound = -i->end_y_nm / k->gs;
  if (!(inbound <= OX_LEG_LONGEST_S)) return false;
  double mid_deg = k->heading_deg + i->turn1_deg;
  bool plain = i->turn2_deg == 0.0;
  pilot_turn(k, turn_kind, i->turn1_deg, plain ? k->in_deg : mid_deg);
  pilot_straight(k, OX_LEG_INTERCEPT, i->straight_s);
  pilot_turn(k, OX_LEG_INTERCEPT_TURN, i->turn2_deg, k->in_deg);
  k->p.x = 0.0; /* on the course by construction, to rounding */
  pilot_event(k, OX_EVENT_INTERCEPT, k->t_s);
  pilot_straight(k, OX_LEG_INBOUND, inbound);
  *inbound_s = i->total_s - i->plain_s + inbound;
  over_the_fix(k);
  return true;
}

static bool by_the_fix(ox_pilot *k, int sense, double plain_s, double *inbound_s) {
  ox_direct d = direct_from(k, (ox_place){k->p, k->heading_deg}, sense);
  if (!d.found) return false;
  pilot_turn(k, OX_LEG_DIRECT_TURN, d.turn_deg, k->heading_deg + d.turn_deg);
  pilot_straight(k, OX_LEG_DIRECT_TO_FIX, d.straight_s);
  *inbound_s = fmax(0.0, fabs(d.turn_deg) / k->rate_deg_s + d.straight_s - plain_s);
  over_the_fix(k);
  return true;
}

bool return_to_fix(ox_pilot *k, ox_leg_kind turn_kind, int sense, double *offset_nm,
                   double *inbound_s) {
  *offset_nm = *inbound_s = 0.0;
  if (!k->holds_course) {
    /* Nothing brings it back along the course: show the turn and where the wind takes it. */
    double turn_deg = pilot_turn_needed_deg(k->heading_deg, k->in_deg, sense);
    pilot_turn(k, turn_kind, sense * turn_deg, k->in_deg);
    return lost(k);
  }
  ox_intercept i = intercept_from(k, (ox_place){k->p, k->heading_deg}, sense);
  *offset_nm = i.offset_nm;
  if (i.found && i.end_y_nm <= 0.0 && by_the_course(k, turn_kind, &i, inbound_s)) return true;
  if (k->part == OX_PART_CIRCUIT) pilot_advise(k, OX_ADVICE_PAST_FIX, 0, 0, k->circuit);
  return by_the_fix(k, sense, i.plain_s, inbound_s) || lost(k);
}

/* Farthest to the non-holding side (NM, >= 0) over the legs from an index on: at a leg's ends, or
 * in a turn where the motion across the course stops: V sin h = -w_x. */
static double nonholding_nm(const ox_pilot *k, size_t from_leg) {
  double least_x = 0.0;
  double s = k->v > 0.0 ? -k->w.x / k->v : 2.0;
  double still_deg = fabs(s) < 1.0 ? asin(s) * (1.0 / OX_RAD_PER_DEG) : 0.0;
  for (size_t i = from_leg; i < k->flight->leg_count; i++) {
    const ox_leg *leg = &k->flight->legs[i];
    least_x = fmin(least_x, ox_frame_in(&k->frame, leg->p0_nm).x);
    least_x = fmin(least_x, ox_frame_in(&k->frame, leg->p1_nm).x);
    if (leg->shape != OX_SHAPE_TURN || fabs(s) >= 1.0) continue;
    double h0 = ox_frame_heading_in(&k->frame, leg->heading0_true_deg);
    double rate = k->frame.sense * leg->rate_deg_s;
    for (int side = 0; side < 2; side++) {
      double to_deg = ox_turn_in_sense_deg(h0, side ? 180.0 - still_deg : still_deg,
                                           rate >= 0.0 ? 1 : -1);
      double t_s = leg->t0_s + to_deg / fabs(rate);
      if (t_s < leg->t1_s)
        least_x = fmin(least_x, ox_frame_in(&k->frame, ox_leg_position(leg, t_s)).x);
    }
  }
  return -least_x + 0.0;
}

static void fly_outbound(ox_pilot *k, const ox_outbound_plan *plan, bool direct_entry) {
  k->part = direct_entry ? OX_PART_ENTRY : OX_PART_CIRCUIT;
  pilot_react(k);
  pilot_turn(k, OX_LEG_OUTBOUND_TURN, plan->turn_deg, plan->heading_deg);
  k->part = OX_PART_CIRCUIT;
  double level_t_s = k->t_s;
  if (plan->abeam_found)
    pilot_event(k, OX_EVENT_ABEAM, level_t_s + plan->abeam_s);
  else
    pilot_advise(k, OX_ADVICE_NO_ABEAM, 0, 0, k->circuit);
  pilot_event(k, OX_EVENT_CLOCK_START, level_t_s + plan->clock_s);
  double reaction_s = fmin(k->reaction_s, plan->straight_s);
  pilot_straight(k, OX_LEG_OUTBOUND, plan->straight_s - reaction_s);
  pilot_straight(k, OX_LEG_REACTION, reaction_s);
}

static void measure_advise(ox_pilot *k, const ox_circuit *m) {
  const ox_setup *s = k->setup;
  if (m->rollout_offset_nm < -OVERSHOOT_SAID_NM)
    pilot_advise(k, OX_ADVICE_OVERSHOOT, -m->rollout_offset_nm, 0, k->circuit);
  if (s->goal == OX_GOAL_INBOUND_S && m->inbound_s > 0.0 &&
      fabs(m->inbound_s - s->goal_value) > LONG_INBOUND_S)
    pilot_advise(k, OX_ADVICE_LONG_INBOUND, m->inbound_s, s->goal_value, k->circuit);
}

bool circuit_fly(ox_pilot *k, int number, bool direct_entry) {
  ox_flight *f = k->flight;
  const ox_circuit *before = number > 1 ? &f->circuits[number - 2] : NULL;
  size_t first_leg = f->leg_count;
  ox_circuit *m = &f->circuits[f->circuit_count++];
  k->circuit = number;
  m->fix_t_s = k->t_s;
  ox_outbound_plan plan = outbound_choose(k, before ? before->timed_s : 0.0,
                                          before ? before->inbound_s : 0.0);
  fly_outbound(k, &plan, direct_entry);
  m->outbound_heading_true_deg = ox_frame_heading_out(&k->frame, plan.heading_deg);
  m->outbound_s = plan.straight_s;
  m->timed_s = plan.timed_s;
  m->complete = return_to_fix(k, OX_LEG_INBOUND_TURN, 1, &m->rollout_offset_nm, &m->inbound_s);
  m->end_t_s = k->t_s;
  m->nonholding_nm = nonholding_nm(k, first_leg);
  measure_advise(k, m);
  return m->complete;
}
