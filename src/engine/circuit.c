/* One circuit, and the way back to the fix that it shares with the entry. */
#include "circuit.h"

#include <math.h>

#include "intercept.h"
#include "measure.h"
#include "oxbow/units.h"
#include "outbound.h"

static const double NEAR_FROM_DEG = 315.0;
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

/* Turning by a rule: it rolls out beyond the course or short of it, and the way back is planned
 * anew, this time exactly. */
static progress turn_by_rule(ox_pilot *k, const ox_intercept *i, double straight_s) {
  k->late = true;
  if (!pilot_straight(k, OX_LEG_INTERCEPT, straight_s)) return CHANGED;
  pilot_turn(k, OX_LEG_INTERCEPT_TURN, i->turn2_deg, k->in_deg);
  return CHANGED;
}

/* Flies a planned intercept and the inbound course to the fix; CHANGED where the conditions
 * changed on the way and the rest must be planned anew. */
static progress by_the_course(ox_pilot *k, ox_leg_kind turn_kind, const ox_intercept *i) {
  double mid_deg = i->turn2_deg == 0.0 ? k->in_deg : k->heading_deg + i->turn1_deg;
  size_t planned_in = k->condition; /* a change between two legs upsets the plan as well */
  if (!pilot_turn(k, turn_kind, i->turn1_deg, mid_deg) || k->condition != planned_in)
    return CHANGED;
  bool exact;
  double straight_s = intercept_straight_s(k, i, &exact);
  if (!exact) return turn_by_rule(k, i, straight_s);
  if (!pilot_straight(k, OX_LEG_INTERCEPT, straight_s) || k->condition != planned_in)
    return CHANGED;
  if (!pilot_turn(k, OX_LEG_INTERCEPT_TURN, i->turn2_deg, k->in_deg) ||
      k->condition != planned_in)
    return CHANGED;
  k->p.x = 0.0; /* on the course by construction, to rounding */
  if (!k->established) pilot_event(k, OX_EVENT_INTERCEPT, k->t_s);
  k->established = true;
  if (!pilot_straight(k, OX_LEG_INBOUND, -k->p.y / k->gs)) return CHANGED;
  return REACHED;
}

static progress by_the_fix(ox_pilot *k, int sense) {
  ox_direct d = direct_from(k, here(k), sense);
  if (!d.found) return NO_WAY;
  size_t planned_in = k->condition;
  if (!pilot_turn(k, OX_LEG_DIRECT_TURN, d.turn_deg, k->heading_deg + d.turn_deg) ||
      k->condition != planned_in)
    return CHANGED;
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
  /* Not in a turn to the inbound heading (any more): plan from wherever it points. In a wind near
   * the TAS the heading of an entry can be the inbound one, give or take, and no one turns a
   * whole circle for that. */
  bool near = k->part == OX_PART_ENTRY &&
              pilot_turn_needed_deg(k->heading_deg, k->in_deg, sense) > NEAR_FROM_DEG;
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

static void fly_outbound(ox_pilot *k, const ox_outbound_plan *plan, bool direct_entry,
                         ox_circuit *m) {
  k->part = direct_entry ? OX_PART_ENTRY : OX_PART_CIRCUIT;
  pilot_react(k);
  pilot_turn_to(k, OX_LEG_OUTBOUND_TURN, plan->turn_deg, plan->heading_deg);
  k->part = OX_PART_CIRCUIT;
  double level_t_s = k->t_s;
  double last_s = plan->follows ? plan->follow_s : plan->straight_s;
  double reaction_s = fmin(k->reaction_s, last_s);
  if (plan->follows) {
    pilot_straight_for(k, OX_LEG_OUTBOUND, plan->straight_s);
    pilot_turn_to(k, OX_LEG_OUTBOUND_TURN, plan->follow_turn_deg, plan->follow_heading_deg);
  }
  pilot_straight_for(k, OX_LEG_OUTBOUND, last_s - reaction_s);
  double timed_to_s = k->t_s;
  pilot_straight_for(k, OX_LEG_REACTION, reaction_s);
  measure_outbound(k, plan, m, level_t_s, timed_to_s);
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
  fly_outbound(k, &plan, direct_entry, m);
  m->complete = return_to_fix(k, OX_LEG_INBOUND_TURN, 1, plan.direct, &m->rollout_offset_nm,
                              &m->inbound_s);
  m->end_t_s = k->t_s;
  measure_circuit(k, m, first_leg);
  return m->complete;
}
