/* What is measured in a circuit. */
#include "measure.h"

#include <math.h>

#include "oxbow/units.h"
#include "root.h"

static const double OVERSHOOT_SAID_NM = 0.1; /* less is not seen on an instrument */
static const double ABEAM_NM = 1e-12;        /* far below a foot, far above rounding */
static const double LONG_INBOUND_S = 10.0;   /* Doc 8168 Vol II: timing tolerance of 10 s */

/* In a turn, x is least where the motion across the course stops, on one of the two headings. */
static double least_x_in_turn(const ox_pilot *k, const ox_leg *leg, double still_deg) {
  double least_x = 0.0;
  double h0 = ox_frame_heading_in(&k->frame, leg->heading0_true_deg);
  int sense = k->frame.sense * leg->rate_deg_s >= 0.0 ? 1 : -1;
  double rate = fabs(leg->rate_deg_s), once_s = 360.0 / rate;
  for (int side = 0; side < 2; side++) {
    double to_deg = ox_turn_in_sense_deg(h0, side ? 180.0 - still_deg : still_deg, sense);
    for (double t_s = leg->t0_s + to_deg / rate; t_s < leg->t1_s; t_s += once_s)
      least_x = fmin(least_x, ox_frame_in(&k->frame, ox_leg_position(leg, t_s)).x);
  }
  return least_x;
}

/* Farthest to the non-holding side (NM, >= 0) over the legs from an index on: at a leg's ends, or
 * in a turn where the motion across the course stops: V sin h = -w_x. */
static double nonholding_nm(const ox_pilot *k, size_t from_leg) {
  double least_x = 0.0, still_deg = 0.0;
  ox_vec wind_kt = {0, 0};
  double tas_kt = 0.0;
  for (size_t i = from_leg; i < k->flight->leg_count; i++) {
    const ox_leg *leg = &k->flight->legs[i];
    least_x = fmin(least_x, ox_frame_in(&k->frame, leg->p1_nm).x);
    if (leg->shape != OX_SHAPE_TURN) continue;
    if (leg->tas_kt != tas_kt || leg->wind_kt.x != wind_kt.x || leg->wind_kt.y != wind_kt.y) {
      tas_kt = leg->tas_kt;
      wind_kt = leg->wind_kt;
      double s = -ox_frame_in(&k->frame, wind_kt).x / tas_kt;
      still_deg = fabs(s) < 1.0 ? asin(s) / OX_RAD_PER_DEG : HUGE_VAL;
    }
    if (still_deg != HUGE_VAL) least_x = fmin(least_x, least_x_in_turn(k, leg, still_deg));
  }
  return -least_x + 0.0;
}

/* --- abeam as flown ---------------------------------------------------------------------------
 * In steady conditions the plan knows when the aircraft is abeam. Where they change on the way it
 * is looked for in the legs that were flown. */

typedef struct {
  const ox_pilot *k;
  const ox_leg *leg;
} along;

static double along_nm(double t_s, void *context) {
  const along *a = context;
  return ox_frame_in(&a->k->frame, ox_leg_position(a->leg, t_s)).y;
}

/* Last passage from before the abeam line to beyond it, outbound bound, in one leg. */
static bool passes_abeam(const ox_pilot *k, const ox_leg *leg, double *at_t_s) {
  enum { STEP_DEG = 10 };
  along a = {k, leg};
  double turned_deg = fabs(leg->rate_deg_s) * (leg->t1_s - leg->t0_s);
  int pieces = 1 + (int)(turned_deg / STEP_DEG);
  bool found = false;
  double t0 = leg->t0_s, y0 = along_nm(t0, &a);
  for (int i = 1; i <= pieces; i++) {
    double t1 = i == pieces ? leg->t1_s : leg->t0_s + (leg->t1_s - leg->t0_s) * i / pieces;
    double y1 = along_nm(t1, &a);
    if (y0 > ABEAM_NM && y1 <= ABEAM_NM) {
      *at_t_s = y1 >= 0.0 ? t1 : ox_root(along_nm, &a, t0, t1, y0, y1);
      found = true;
    }
    t0 = t1;
    y0 = y1;
  }
  return found;
}

static bool abeam_as_flown(const ox_pilot *k, const ox_circuit *m, double *at_t_s) {
  bool found = false;
  *at_t_s = m->fix_t_s; /* over the fix itself, where it only ever moves away */
  for (size_t i = k->flight->leg_count; i > 0; i--) {
    const ox_leg *leg = &k->flight->legs[i - 1];
    if (leg->t0_s < m->fix_t_s - 1e-9) break;
    if (passes_abeam(k, leg, at_t_s)) return true;
    found = found || ox_frame_in(&k->frame, leg->p1_nm).y > 1e-9;
  }
  return !found;
}

static bool changed_since(const ox_pilot *k, double t_s) {
  return k->condition > 0 && k->setup->conditions[k->condition].from_t_s > t_s;
}

void measure_outbound(ox_pilot *k, const ox_outbound_plan *plan, ox_circuit *m, double level_t_s,
                      double timed_to_s) {
  bool abeam_found = plan->abeam_found;
  double abeam_t_s = level_t_s + plan->abeam_s, clock_t_s = level_t_s + plan->clock_s;
  if (changed_since(k, m->fix_t_s)) {
    abeam_found = abeam_as_flown(k, m, &abeam_t_s);
    /* The plan's clock start is kept unless the turn took longer than that. */
    if (k->c->technique.clock != OX_CLOCK_ABEAM) clock_t_s = fmax(clock_t_s, level_t_s);
    clock_t_s = fmin(clock_t_s, timed_to_s);
  }
  if (abeam_found)
    pilot_event(k, OX_EVENT_ABEAM, abeam_t_s);
  else
    pilot_advise(k, OX_ADVICE_NO_ABEAM, 0, 0, k->circuit);
  pilot_event(k, OX_EVENT_CLOCK_START, clock_t_s);
  m->outbound_heading_true_deg = ox_frame_heading_out(&k->frame, plan->heading_deg);
  double followed_s = fabs(plan->follow_turn_deg) / k->rate_deg_s + plan->follow_s;
  m->outbound_s = plan->straight_s + (plan->follows ? followed_s : 0.0);
  m->timed_s = fmax(0.0, timed_to_s - clock_t_s);
  m->outbound_end_nm = ox_frame_out(&k->frame, k->p);
  m->gate_deg = ox_turn_between_deg(ox_bearing_deg(k->p), 180.0);
}

static void measure_advise(ox_pilot *k, const ox_circuit *m) {
  const ox_setup *s = k->setup;
  if (m->rollout_offset_nm < -OVERSHOOT_SAID_NM)
    pilot_advise(k, OX_ADVICE_OVERSHOOT, -m->rollout_offset_nm, 0, k->circuit);
  /* A circuit cut so as to leave on time is short on purpose. */
  bool cut = k->flight->leave_t_s > 0.0;
  if (!cut && s->goal == OX_GOAL_INBOUND_S && m->inbound_s > 0.0 &&
      fabs(m->inbound_s - s->goal_value) > LONG_INBOUND_S)
    pilot_advise(k, OX_ADVICE_LONG_INBOUND, m->inbound_s, s->goal_value, k->circuit);
}

static void measure_inbound(const ox_pilot *k, ox_circuit *m) {
  const ox_setup *s = k->setup;
  bool timed = s->goal == OX_GOAL_INBOUND_S && m->inbound_s > 0.0;
  m->inbound_error_s = timed ? m->inbound_s - s->goal_value : 0.0;
  m->next_timed_s = timed ? fmax(OX_ADJUST_FLOOR_S, m->timed_s - m->inbound_error_s) : m->timed_s;
}

void measure_circuit(ox_pilot *k, ox_circuit *m, size_t first_leg) {
  m->nonholding_nm = nonholding_nm(k, first_leg);
  measure_inbound(k, m);
  measure_advise(k, m);
}
