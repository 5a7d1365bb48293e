/* Getting onto the inbound course, and getting back to the fix.
 *
 * After the plain turn to the inbound heading the aircraft is at an offset x from the course:
 *
 *   not reached yet     stop the turn early on the intercept heading, fly straight, finish the
 *   (undershoot)        turn: the straight stretch alone decides where it rolls out, so its time
 *                       is x over the closing speed.
 *   passed (overshoot)  turn on to the intercept heading on the far side, fly straight, turn back:
 *                       the pair of turns gains a distance of its own; if that alone is more than
 *                       x, a smaller angle without a straight stretch fits exactly.
 *
 * The intercept heading is the course plus or minus the intercept angle, as manuals give it
 * (P-871 fig 4-16: course 270, 30 degrees, fly 300), but never nearer than 10 degrees to the
 * wind-corrected heading, which would not close, and never more than across the course. */
#include "intercept.h"

#include <math.h>

#include "root.h"

static const double CLOSEST_DEG = 10.0;
static const double MISSED_NM = 1e-9; /* an intercept must end on the course */
static const double ON_COURSE_NM = 1e-12; /* below rounding at 100 NM */

static double clamp(double x, double low, double high) {
  return x < low ? low : x > high ? high : x;
}

/* Degrees between the inbound heading and the intercept heading; side is +1 for an intercept
 * heading to the right of the course. */
static double intercept_turn_deg(const ox_pilot *k, int side) {
  double room_deg = 90.0 - side * k->in_deg;
  double wanted_deg = k->c->technique.intercept_deg - side * k->in_deg;
  return clamp(wanted_deg, fmin(CLOSEST_DEG, room_deg), room_deg);
}

typedef struct {
  const ox_pilot *k;
  int sense;
  double need_nm;
} s_turn;

/* Lateral gain, towards the first turn's side, of turning past the inbound heading by an angle
 * and back again, less what is needed. */
static double s_turn_excess_nm(double turn_deg, void *context) {
  const s_turn *s = context;
  const ox_pilot *k = s->k;
  double out_deg = s->sense * turn_deg;
  double gain = pilot_turn_displacement(k, k->in_deg, out_deg).x +
                pilot_turn_displacement(k, k->in_deg + out_deg, -out_deg).x;
  return s->sense * gain - s->need_nm;
}

static void undershoot(const ox_pilot *k, int sense, double whole_deg, ox_intercept *i) {
  double early_deg = fmin(intercept_turn_deg(k, -sense), whole_deg);
  double closing = -sense * pilot_velocity(k, k->in_deg - sense * early_deg).x;
  i->turn1_deg = sense * (whole_deg - early_deg);
  i->turn2_deg = sense * early_deg;
  i->straight_s = sense * i->offset_nm / closing;
  i->found = closing > 0.0;
}

static void overshoot(const ox_pilot *k, int sense, double whole_deg, ox_intercept *i) {
  s_turn s = {k, sense, -sense * i->offset_nm};
  double past_deg = intercept_turn_deg(k, sense);
  double excess_nm = s_turn_excess_nm(past_deg, &s);
  if (excess_nm > 0.0) {
    past_deg = ox_root(s_turn_excess_nm, &s, 0.0, past_deg, -s.need_nm, excess_nm);
    i->straight_s = 0.0;
    i->found = true;
  } else {
    double closing = sense * pilot_velocity(k, k->in_deg + sense * past_deg).x;
    i->straight_s = -excess_nm / closing;
    i->found = closing > 0.0;
  }
  i->turn1_deg = sense * (whole_deg + past_deg);
  i->turn2_deg = -sense * past_deg;
}

/* Checks a plan and adds where and when it ends. */
static ox_intercept finish(const ox_pilot *k, ox_place from, ox_intercept i) {
  if (!i.found || !(i.straight_s >= 0.0) || i.straight_s > OX_LEG_LONGEST_S) {
    i.found = false;
    return i;
  }
  ox_place at = pilot_after_turn(k, from, i.turn1_deg);
  at = pilot_after_straight(k, at, i.straight_s);
  at = pilot_after_turn(k, at, i.turn2_deg);
  if (fabs(at.p.x) > MISSED_NM) i.found = false;
  i.end_y_nm = at.p.y;
  i.total_s = (fabs(i.turn1_deg) + fabs(i.turn2_deg)) / k->rate_deg_s + i.straight_s;
  return i;
}

ox_intercept intercept_from(const ox_pilot *k, ox_place from, int sense) {
  ox_intercept i = {0};
  double whole_deg = pilot_turn_needed_deg(from.heading_deg, k->in_deg, sense);
  ox_place plain = pilot_after_turn(k, from, sense * whole_deg);
  i.plain_s = whole_deg / k->rate_deg_s;
  i.offset_nm = plain.p.x;
  if (fabs(i.offset_nm) < ON_COURSE_NM) {
    i.turn1_deg = sense * whole_deg;
    i.found = true;
    i.end_y_nm = plain.p.y;
    i.total_s = i.plain_s;
    return i;
  } else if (sense * i.offset_nm > 0.0) {
    undershoot(k, sense, whole_deg, &i);
  } else {
    overshoot(k, sense, whole_deg, &i);
  }
  return finish(k, from, i);
}

/* By degrees: begun where the bearing to the fix is that near to the course, |x| = |y| tan lead,
 * which is linear in the time. */
double intercept_straight_s(const ox_pilot *k, const ox_intercept *i, bool *exact) {
  ox_lead lead = k->c->technique.lead;
  *exact = true;
  if (lead == OX_LEAD_EXACT || k->late || !(i->straight_s > 0.0)) return i->straight_s;
  ox_vec v = pilot_velocity(k, k->heading_deg);
  double sine = 0.0, cosine = 1.0;
  if (lead == OX_LEAD_DEGREES) ox_sincos_deg(k->c->technique.lead_deg, &sine, &cosine);
  double side = k->p.x < 0.0 ? -1.0 : 1.0;
  double left_nm = side * k->p.x * cosine + k->p.y * sine;
  double closing = -(side * v.x * cosine + v.y * sine);
  double s = closing > 0.0 ? fmax(0.0, left_nm / closing) : 0.0;
  *exact = false;
  return fmin(s, OX_LEG_LONGEST_S);
}

typedef struct {
  const ox_pilot *k;
  ox_place from;
  int side; /* of the course that the aircraft is on: +1 at positive x */
} near_turn;

/* The turn onto the intercept heading, the way the plain turn goes: continuous in the angle. */
static double near_turn1_deg(const near_turn *n, double closing_deg) {
  return ox_turn_between_deg(n->from.heading_deg, n->k->in_deg) - n->side * closing_deg;
}

/* Distance left to the course, on the side it came from, after turning to an intercept heading
 * and straight on onto the course's heading. */
static double near_left_nm(double closing_deg, void *context) {
  const near_turn *n = context;
  ox_place at = pilot_after_turn(n->k, n->from, near_turn1_deg(n, closing_deg));
  return n->side * pilot_after_turn(n->k, at, n->side * closing_deg).p.x;
}

ox_intercept intercept_near(const ox_pilot *k, ox_place from) {
  ox_intercept i = {0};
  double plain_deg = ox_turn_between_deg(from.heading_deg, k->in_deg);
  ox_place plain = pilot_after_turn(k, from, plain_deg);
  i.offset_nm = plain.p.x;
  i.plain_s = fabs(plain_deg) / k->rate_deg_s;
  i.found = true;
  if (fabs(i.offset_nm) < ON_COURSE_NM) {
    i.turn1_deg = plain_deg;
    return finish(k, from, i);
  }
  near_turn n = {k, from, i.offset_nm > 0.0 ? 1 : -1};
  double closing_deg = intercept_turn_deg(k, -n.side);
  double left_nm = near_left_nm(closing_deg, &n);
  if (left_nm < 0.0) {
    closing_deg = ox_root(near_left_nm, &n, 0.0, closing_deg, fabs(i.offset_nm), left_nm);
  } else {
    double closing = -n.side * pilot_velocity(k, k->in_deg - n.side * closing_deg).x;
    i.straight_s = left_nm / closing;
    i.found = closing > 0.0;
  }
  i.turn1_deg = near_turn1_deg(&n, closing_deg);
  i.turn2_deg = n.side * closing_deg;
  return finish(k, from, i);
}

typedef struct {
  const ox_pilot *k;
  ox_place from;
  int sense;
} aim;

/* Positive when the fix lies to the left of the track after a turn by turn_deg. */
static double aim_error(double turn_deg, void *context) {
  const aim *a = context;
  ox_place at = pilot_after_turn(a->k, a->from, a->sense * turn_deg);
  ox_vec to_fix = {-at.p.x, -at.p.y};
  return ox_vec_cross(pilot_velocity(a->k, at.heading_deg), to_fix);
}

static bool leads_to_fix(const aim *a, double turn_deg, double *straight_s) {
  ox_place at = pilot_after_turn(a->k, a->from, a->sense * turn_deg);
  ox_vec velocity = pilot_velocity(a->k, at.heading_deg);
  double closing = -ox_vec_dot(velocity, at.p), speed2 = ox_vec_dot(velocity, velocity);
  *straight_s = speed2 > 0.0 ? closing / speed2 : 0.0;
  return closing > 0.0 && *straight_s <= OX_LEG_LONGEST_S;
}

ox_direct direct_from(const ox_pilot *k, ox_place from, int sense) {
  enum { STEP_DEG = 10, SEARCH_DEG = 720 };
  aim a = {k, from, sense};
  ox_direct d = {0};
  double f0 = aim_error(0.0, &a);
  for (int deg = STEP_DEG; deg <= SEARCH_DEG; deg += STEP_DEG) {
    double f1 = aim_error(deg, &a);
    if ((f0 <= 0.0) != (f1 <= 0.0)) {
      double turn_deg = ox_root(aim_error, &a, deg - STEP_DEG, deg, f0, f1);
      if (leads_to_fix(&a, turn_deg, &d.straight_s)) {
        d.found = true;
        d.turn_deg = sense * turn_deg;
        return d;
      }
    }
    f0 = f1;
  }
  return d;
}
