/* The outbound heading and time.
 *
 * Two questions, each answered by the technique: how long (nominal, adjusted, by rule, exact) and
 * on which heading (a multiple of the inbound correction, or exact). "Exact" means: so that a
 * plain turn to the inbound heading rolls out on the course and, for the time, so that the leg
 * asked for comes out. Both exact from over the fix is closed form, as for the steady hold; the
 * mixed cases are one bracketed root each. */
#include "outbound.h"

#include <math.h>

#include "intercept.h"
#include "oxbow/limits.h"
#include "oxbow/units.h"
#include "oxbow/wind.h"
#include "root.h"

static const double OUT_DEG = 180.0;
/* A pilot's correction beyond this is no longer an outbound leg. Own choice, no source: manuals
 * leave very strong winds to judgement (P-340 p. 155). */
static const double CAP_DEG = 60.0;
static const double EXACT_CAP_DEG = 90.0;
/* Wings level and abeam at once, as in calm air: far below a foot, far above rounding. */
static const double LEVEL_ABEAM_NM = 1e-12;

/* --- over the fix to wings level outbound ------------------------------------------------- */

/* The pattern's own sense, except on arriving from the holding side with the outbound heading a
 * little to the left: then the short way, not round the whole circle. */
static double outbound_turn_deg(const ox_pilot *k, double heading_deg) {
  double left_deg = -ox_turn_between_deg(k->heading_deg, heading_deg);
  if (k->heading_deg > 0.0 && left_deg > 0.0 && left_deg < 90.0) return -left_deg;
  return pilot_turn_needed_deg(k->heading_deg, heading_deg, 1);
}

static ox_place after_reaction(const ox_pilot *k) {
  return pilot_after_straight(k, (ox_place){k->p, k->heading_deg}, k->reaction_s);
}

typedef struct {
  const ox_pilot *k;
  ox_place from;
  int sense;
} turn_y;

static double y_in_turn(double turn_deg, void *context) {
  const turn_y *t = context;
  return pilot_after_turn(t->k, t->from, t->sense * turn_deg).p.y;
}

/* Angles inside a turn at which the motion along the course reverses, in order; at most 3. */
static int reversals(const ox_pilot *k, ox_place from, double turn_deg, double at_deg[4]) {
  double c = -k->w.y / k->v;
  int n = 0;
  if (fabs(c) >= 1.0) return 0;
  double still_deg = acos(c) / OX_RAD_PER_DEG;
  int sense = turn_deg >= 0.0 ? 1 : -1;
  for (int side = -1; side <= 1; side += 2) {
    double to_deg = pilot_turn_needed_deg(from.heading_deg, side * still_deg, sense);
    for (; to_deg < fabs(turn_deg) && n < 4; to_deg += 360.0) at_deg[n++] = to_deg;
  }
  if (n == 2 && at_deg[0] > at_deg[1]) {
    double swap = at_deg[0];
    at_deg[0] = at_deg[1];
    at_deg[1] = swap;
  }
  return n;
}

/* Seconds before the end of the turn at which the aircraft last passed abeam the fix outbound
 * bound, inside reaction and turn; the whole of both when it never was on the far side. */
static double abeam_before_level_s(const ox_pilot *k, ox_place from, double turn_deg) {
  int sense = turn_deg >= 0.0 ? 1 : -1;
  double whole_deg = fabs(turn_deg);
  turn_y t = {k, from, sense};
  double marks[6];
  int n = reversals(k, from, turn_deg, marks + 1) + 1;
  marks[0] = 0.0;
  marks[n] = whole_deg;
  for (int i = n; i > 0; i--) {
    double y0 = y_in_turn(marks[i - 1], &t), y1 = y_in_turn(marks[i], &t);
    if (y0 > 0.0 && y1 <= LEVEL_ABEAM_NM) {
      if (y1 >= 0.0) return (whole_deg - marks[i]) / k->rate_deg_s;
      double at_deg = ox_root(y_in_turn, &t, marks[i - 1], marks[i], y0, y1);
      return (whole_deg - at_deg) / k->rate_deg_s;
    }
  }
  return whole_deg / k->rate_deg_s + k->reaction_s;
}

/* Everything that the outbound heading decides. */
typedef struct {
  double turn_deg;
  ox_place level;
  ox_vec velocity; /* outbound, NM/s */
  bool abeam_found;
  double abeam_s, clock_s; /* after wings level */
} level_state;

static level_state at_level(const ox_pilot *k, double heading_deg, bool with_clock) {
  level_state s;
  ox_place from = after_reaction(k);
  s.turn_deg = outbound_turn_deg(k, heading_deg);
  s.level = pilot_after_turn(k, from, s.turn_deg);
  s.level.heading_deg = heading_deg;
  s.velocity = pilot_velocity(k, heading_deg);
  s.abeam_found = true;
  s.abeam_s = s.clock_s = 0.0;
  if (!with_clock) return s;
  if (s.level.p.y > LEVEL_ABEAM_NM) {
    s.abeam_found = s.velocity.y < 0.0 && s.level.p.y < -s.velocity.y * OX_LEG_LONGEST_S;
    s.abeam_s = s.abeam_found ? s.level.p.y / -s.velocity.y : 0.0;
  } else {
    s.abeam_s = -abeam_before_level_s(k, from, s.turn_deg);
  }
  switch (k->c->technique.clock) {
  case OX_CLOCK_ABEAM: s.clock_s = s.abeam_s; break;
  case OX_CLOCK_ABEAM_OR_LEVEL: s.clock_s = fmax(s.abeam_s, 0.0); break;
  case OX_CLOCK_LEVEL: break;
  }
  return s;
}

/* --- how long ------------------------------------------------------------------------------ */

typedef enum { BY_CLOCK, BY_LENGTH, BY_END, BY_DME, BY_INBOUND, BY_STRAIGHT } how_long;

typedef struct {
  const ox_pilot *k;
  how_long how;
  double value; /* BY_CLOCK, BY_STRAIGHT: s; BY_LENGTH, BY_END: NM outbound; BY_DME: a reading;
                   BY_INBOUND: NM inbound */
} timing;

/* Where a plain turn from the outbound heading to the inbound one leads, relative to its start. */
static ox_vec inbound_turn(const ox_pilot *k, double heading_deg) {
  double turn_deg = pilot_turn_needed_deg(heading_deg, k->in_deg, 1);
  return pilot_turn_displacement(k, heading_deg, turn_deg);
}

static double over(double distance, double speed) {
  if (!(speed > 0.0)) return distance > 0.0 ? OX_LEG_LONGEST_S : 0.0;
  return fmin(distance / speed, OX_LEG_LONGEST_S);
}

static double until_dme_s(const ox_pilot *k, const level_state *s) {
  double t_s = ox_station_reached_s(&k->dme, s->level.p, s->velocity, NULL);
  return t_s < 0.0 ? OX_LEG_LONGEST_S : fmin(t_s, OX_LEG_LONGEST_S);
}

static double straight_s(const timing *t, const level_state *s, double heading_deg) {
  const ox_pilot *k = t->k;
  double out = -s->velocity.y, y = s->level.p.y, straight = 0.0;
  switch (t->how) {
  case BY_CLOCK: return fmax(0.0, s->clock_s + t->value) + k->reaction_s;
  case BY_END: return fmax(0.0, over(y + t->value, out)) + k->reaction_s;
  case BY_STRAIGHT: return t->value;
  case BY_DME: return until_dme_s(k, s) + k->reaction_s;
  case BY_LENGTH: straight = over(t->value, out); break;
  case BY_INBOUND:
    straight = over(y + inbound_turn(k, heading_deg).y + t->value, out);
    break;
  }
  return fmax(straight, k->reaction_s);
}

static double rule_s(const ox_pilot *k) {
  /* One second a knot of the component along the course (common practice): a headwind inbound
   * shortens the outbound leg. */
  return fmax(0.0, k->setup->leg_s + k->w.y * OX_S_PER_H);
}

static double adjusted_s(ox_pilot *k, const ox_circuit_order *order) {
  double leg_s = k->setup->leg_s;
  if (order->previous_timed_s <= 0.0 || order->previous_inbound_s <= 0.0 ||
      k->c->technique.timing == OX_TIMING_OUTBOUND)
    return leg_s;
  double wanted_s = order->previous_timed_s + leg_s - order->previous_inbound_s;
  if (wanted_s >= OX_ADJUST_FLOOR_S) return wanted_s;
  pilot_advise(k, OX_ADVICE_OUTBOUND_FLOOR, wanted_s, OX_ADJUST_FLOOR_S, k->circuit);
  return OX_ADJUST_FLOOR_S;
}

static timing choose_timing(ox_pilot *k, const ox_circuit_order *order) {
  const ox_setup *s = k->setup;
  ox_outbound by = k->c->technique.outbound;
  timing t = {k, BY_CLOCK, s->leg_s};
  if (s->goal == OX_GOAL_OUTBOUND_NM) return (timing){k, BY_END, s->goal_value};
  if (s->goal == OX_GOAL_OUTBOUND_DME) return (timing){k, BY_DME, s->goal_value};
  if (s->goal == OX_GOAL_INBOUND_NM) return (timing){k, BY_INBOUND, s->goal_value};
  if (by == OX_OUTBOUND_RULE) t.value = rule_s(k);
  if (by == OX_OUTBOUND_ADJUST) t.value = adjusted_s(k, order);
  if (by == OX_OUTBOUND_EXACT) {
    if (s->goal == OX_GOAL_OUTBOUND_AIR) return (timing){k, BY_LENGTH, k->v * s->leg_s};
    return (timing){k, BY_INBOUND, k->gs * s->leg_s};
  }
  return t;
}

/* --- on which heading ---------------------------------------------------------------------- */

/* x where the plain inbound turn would roll out, for an outbound heading. */
static double rollout_x(double heading_deg, void *context) {
  const timing *t = context;
  level_state s = at_level(t->k, heading_deg, t->how == BY_CLOCK);
  double straight = straight_s(t, &s, heading_deg);
  return s.level.p.x + s.velocity.x * straight + inbound_turn(t->k, heading_deg).x;
}

/* Both exact, from over the fix, both turns in the pattern's sense: closed form (steady.c). */
static bool exact_closed_form(const ox_pilot *k, double inbound_nm, double *heading_deg) {
  double whole_deg = pilot_turn_needed_deg(k->heading_deg, k->in_deg, 1);
  if (whole_deg < 90.0) whole_deg += 360.0;
  double s0, c0, s1, c1;
  ox_sincos_deg(k->heading_deg, &s0, &c0);
  ox_sincos_deg(k->in_deg, &s1, &c1);
  double whole_s = whole_deg / k->rate_deg_s;
  ox_vec a = after_reaction(k).p;
  a.x += k->radius_nm * (c0 - c1) + k->w.x * whole_s;
  a.y += k->radius_nm * (s1 - s0) + k->w.y * whole_s + inbound_nm;
  double spare = k->v * k->v - ox_vec_dot(k->w, k->w), aw = ox_vec_dot(a, k->w);
  if (!(spare > 0.0)) return false;
  double t = (aw + sqrt(aw * aw + spare * ox_vec_dot(a, a))) / spare;
  ox_vec u = {-(a.x + k->w.x * t), -(a.y + k->w.y * t)};
  double h = ox_norm180_deg(ox_bearing_deg(u));
  double turn_deg = outbound_turn_deg(k, h);
  bool one_way = turn_deg >= 0.0 && turn_deg <= whole_deg &&
                 fabs(turn_deg + pilot_turn_needed_deg(h, k->in_deg, 1) - whole_deg) < 1.0;
  *heading_deg = h;
  return one_way && t >= k->reaction_s &&
         fabs(ox_turn_between_deg(OUT_DEG, h)) < EXACT_CAP_DEG;
}

/* The heading whose plain inbound turn rolls out on the course, nearest to straight out. */
static bool exact_by_root(const timing *t, double *heading_deg) {
  enum { STEP_DEG = 10 };
  for (int i = 0; i * STEP_DEG < (int)EXACT_CAP_DEG; i++) {
    for (int side = -1; side <= 1; side += 2) {
      double a = OUT_DEG + side * i * STEP_DEG, b = a + side * STEP_DEG;
      double fa = rollout_x(a, (void *)t), fb = rollout_x(b, (void *)t);
      if ((fa <= 0.0) == (fb <= 0.0)) continue;
      double h = ox_root(rollout_x, (void *)t, a, b, fa, fb);
      if (fabs(rollout_x(h, (void *)t)) > 1e-9) continue; /* a jump, not a root */
      *heading_deg = ox_norm180_deg(h);
      return true;
    }
  }
  return false;
}

static double by_multiple(ox_pilot *k, double times) {
  double wanted_deg = -times * k->in_deg;
  double flown_deg = fmax(-CAP_DEG, fmin(CAP_DEG, wanted_deg));
  if (flown_deg != wanted_deg)
    pilot_advise(k, OX_ADVICE_DRIFT_CAPPED, fabs(wanted_deg), CAP_DEG, k->circuit);
  return ox_norm180_deg(OUT_DEG + flown_deg);
}

/* The steady hold's heading, where it solves this circuit too: of two solutions, which a short leg
 * by distance can have, the flight then settles on the one that is reported. */
static bool steady_fits(const ox_pilot *k, const timing *t, double *heading_deg) {
  const ox_steady *steady = &k->flight->steady;
  if (steady->why != OX_STEADY_EXISTS || k->condition != 0 || k->heading_deg != k->in_deg)
    return false;
  *heading_deg = ox_frame_heading_in(&k->frame, steady->outbound_heading_deg);
  return fabs(rollout_x(*heading_deg, (void *)t)) < 1e-10;
}

/* *exact: a plain turn from this heading, after the time that goes with it, ends on the course. */
static double choose_heading(ox_pilot *k, const timing *t, bool *exact) {
  double h;
  *exact = false;
  switch (k->c->technique.drift) {
  case OX_DRIFT_NONE: return OUT_DEG;
  case OX_DRIFT_SINGLE: return by_multiple(k, 1.0);
  case OX_DRIFT_DOUBLE: return by_multiple(k, 2.0);
  case OX_DRIFT_TRIPLE: return by_multiple(k, 3.0);
  case OX_DRIFT_TRACK: return by_multiple(k, 1.0); /* a track parallel is the single correction */
  case OX_DRIFT_EXACT: break;
  }
  if (k->holds_course) {
    *exact = steady_fits(k, t, &h) ||
             (t->how == BY_INBOUND && exact_closed_form(k, t->value, &h)) || exact_by_root(t, &h);
    if (*exact) return h;
  }
  return by_multiple(k, 3.0);
}

/* --- together ------------------------------------------------------------------------------ */

typedef struct {
  const ox_pilot *k;
  double heading_deg, goal_s;
} inbound_goal;

/* Along the course, beyond the fix or not, so that it is continuous where the fix is overflown. */
static double inbound_excess_s(double straight, void *context) {
  const inbound_goal *g = context;
  level_state s = at_level(g->k, g->heading_deg, false);
  ox_intercept i = intercept_from(g->k, pilot_after_straight(g->k, s.level, straight), 1);
  return i.found ? i.total_s - i.plain_s - i.end_y_nm / g->k->gs - g->goal_s : -g->goal_s;
}

/* With a heading that is not exact the intercept costs some of the inbound leg; the outbound time
 * is then found so that what is left is what was asked for. */
static double exact_time_s(const ox_pilot *k, double heading_deg, double goal_nm, double guess_s) {
  inbound_goal g = {k, heading_deg, goal_nm / k->gs};
  double low = k->reaction_s, f_low = inbound_excess_s(low, &g);
  if (f_low >= 0.0) return low;
  double high = fmax(guess_s, low + 30.0), f_high = inbound_excess_s(high, &g);
  while (f_high < 0.0 && high < OX_LEG_LONGEST_S) {
    high = fmin(2.0 * high, OX_LEG_LONGEST_S);
    f_high = inbound_excess_s(high, &g);
  }
  if (f_high < 0.0) return guess_s;
  return ox_root(inbound_excess_s, &g, low, high, f_low, f_high);
}

/* Where what should end the leg never comes, the standard time is flown. */
static timing time_instead(const ox_pilot *k) {
  double leg_s = k->setup->leg_s > 0.0 ? k->setup->leg_s
                                       : ox_standard_leg_s(k->c->hold.altitude_ft);
  return (timing){k, BY_CLOCK, leg_s};
}

/* Puts the pilot's errors into the heading that the technique asks for. */
static bool err(const ox_pilot *k, double *heading_deg) {
  double wanted_deg = *heading_deg;
  if (pilot_errs(k, OX_MISTAKE_DRIFT_WRONG_SIDE)) *heading_deg = ox_norm180_deg(-wanted_deg);
  *heading_deg = ox_norm180_deg(*heading_deg + k->frame.sense * k->flaws.outbound_heading_deg);
  return *heading_deg != wanted_deg;
}

/* Timing begun over the fix counts the turn as part of the outbound leg. */
static double started_at_fix_s(const ox_pilot *k, const timing *t, level_state *s,
                               double straight) {
  s->clock_s = -(fabs(s->turn_deg) / k->rate_deg_s + k->reaction_s);
  if (t->how == BY_CLOCK) return fmax(0.0, s->clock_s + t->value) + k->reaction_s;
  return straight + s->clock_s;
}

static double whole_straight_s(const ox_pilot *k, const timing *t, level_state *s, double h,
                               bool exact) {
  double straight = straight_s(t, s, h);
  if (t->how == BY_INBOUND && !exact) straight = exact_time_s(k, h, t->value, straight);
  if (pilot_errs(k, OX_MISTAKE_CLOCK_AT_FIX)) straight = started_at_fix_s(k, t, s, straight);
  return fmax(0.0, fmin(straight + k->flaws.outbound_s, OX_LEG_LONGEST_S));
}

/* The instants that follow from where the wings are level and how long the leg lasts. */
static void set_instants(const ox_pilot *k, const level_state *s, ox_outbound_plan *plan) {
  plan->turn_deg = s->turn_deg;
  plan->abeam_s = s->abeam_s;
  plan->abeam_found = s->abeam_found && s->abeam_s <= plan->straight_s;
  /* Never abeam before the turn: timed from wings level (AIM 5-3-8 j4(b)). */
  plan->clock_s = !plan->abeam_found && s->clock_s > 0.0 ? 0.0 : s->clock_s;
  double turn_s = fabs(plan->follow_turn_deg) / k->rate_deg_s;
  double whole_s = plan->straight_s + (plan->follows ? turn_s + plan->follow_s : 0.0);
  plan->timed_s = fmax(0.0, whole_s - k->reaction_s - plan->clock_s);
}

/* Following the limiting radial until the distance: the turn begins so that it ends on the radial,
 * which is linear in the time before it. Where the distance is not met along the radial, it is
 * turned inbound at it. Doc 8168 Vol I Part I Section 6 (as quoted): the radial is followed until
 * the turn inbound is initiated. */
static void follow_radial(const ox_pilot *k, const level_state *s, ox_outbound_plan *plan) {
  bool at_radial;
  double out_s = ox_station_reached_s(&k->dme, s->level.p, s->velocity, &at_radial);
  if (out_s < 0.0 || !at_radial) return;
  bool outward = ox_vec_dot(k->dme.limit, s->velocity) > 0.0;
  double line_deg = ox_bearing_deg(k->dme.limit) + (outward ? 0.0 : 180.0);
  ox_triangle along = ox_triangle_for_course(line_deg, k->v, k->w); /* in NM/s throughout */
  if (!along.possible || !(along.gs_kt > 0.0)) return;
  double turn_deg = ox_turn_between_deg(plan->heading_deg, along.heading_deg);
  ox_vec turn = pilot_turn_displacement(k, plan->heading_deg, turn_deg);
  ox_vec after = ox_vec_add(s->level.p, turn);
  double beyond_nm = ox_limit_beyond_nm(&k->dme, after);
  ox_vec later = ox_vec_add(after, s->velocity);
  double outwards = ox_limit_beyond_nm(&k->dme, later) - beyond_nm; /* NM/s */
  double before_s = outwards > 0.0 ? fmax(0.0, -beyond_nm / outwards) : 0.0;
  after = ox_vec_add(after, ox_vec_scale(s->velocity, before_s));
  double left_s = ox_dme_reached_s(&k->dme, after, pilot_velocity(k, along.heading_deg));
  if (left_s < 0.0 || left_s > OX_LEG_LONGEST_S) return;
  plan->follows = true;
  plan->straight_s = before_s;
  plan->follow_turn_deg = turn_deg;
  plan->follow_heading_deg = ox_norm180_deg(along.heading_deg);
  plan->follow_s = left_s + k->reaction_s;
}

ox_outbound_plan outbound_choose(ox_pilot *k, const ox_circuit_order *order) {
  timing t = choose_timing(k, order);
  if (order->fixed) t = (timing){k, BY_STRAIGHT, order->straight_s};
  if (t.how == BY_INBOUND && !k->holds_course) t = time_instead(k);
  bool exact;
  double h = choose_heading(k, &t, &exact);
  level_state s = at_level(k, h, true);
  if (t.how == BY_DME && ox_station_reached_s(&k->dme, s.level.p, s.velocity, NULL) < 0.0) {
    pilot_advise(k, OX_ADVICE_DME_NOT_SEEN, t.value, k->dme.height_nm, k->circuit);
    t = time_instead(k);
    h = choose_heading(k, &t, &exact);
    s = at_level(k, h, true);
  }
  ox_outbound_plan plan = {.direct = order->fixed && order->direct};
  /* The time is the one meant for the heading meant; an error of the heading comes on top. */
  plan.straight_s = whole_straight_s(k, &t, &s, h, exact);
  double clock_s = s.clock_s;
  if (err(k, &h)) {
    s = at_level(k, h, true);
    if (pilot_errs(k, OX_MISTAKE_CLOCK_AT_FIX)) s.clock_s = clock_s;
  }
  plan.heading_deg = h;
  if (t.how == BY_DME && k->c->technique.at_radial == OX_AT_RADIAL_FOLLOW)
    follow_radial(k, &s, &plan);
  set_instants(k, &s, &plan);
  return plan;
}

ox_place outbound_try(ox_pilot *k, double straight, double *elapsed_s) {
  timing t = {k, BY_STRAIGHT, straight};
  bool exact;
  double h = choose_heading(k, &t, &exact);
  level_state s = at_level(k, h, false);
  *elapsed_s = k->reaction_s + fabs(s.turn_deg) / k->rate_deg_s + straight;
  return pilot_after_straight(k, s.level, straight);
}
