/* Leaving the fix at a time.
 *
 * AIM 5-3-8 k: adjust the path inside the pattern so as to leave the fix at the exact time. The
 * time of a whole circuit grows with its outbound leg, so the leg that makes it last just so long
 * is one root. Two ways lead back: by the inbound course, and, where the course would be met
 * beyond the fix, straight to the fix. */
#include "leaving.h"

#include <math.h>

#include "intercept.h"
#include "oxbow/endurance.h"
#include "root.h"

static const double SEARCH_S = 10.0; /* step of a search for an outbound time */
enum { EDGE_HALVINGS = 30 };

double leaving_after_s(ox_pilot *k) {
  const ox_case *c = k->c;
  bool no_efc = c->hold.efc_min < 0, no_clock = !ox_clock_is_known(c);
  if (c->hold.ends != OX_HOLD_TO_EFC) return 0.0;
  if (no_efc || no_clock) {
    pilot_advise(k, OX_ADVICE_LEAVE_UNKNOWN, no_efc, no_clock, 0);
    return 0.0;
  }
  double after_s;
  ox_clock_after_s(c, c->hold.efc_min, &after_s);
  if (after_s > 0.0) return after_s;
  pilot_advise(k, OX_ADVICE_LEAVE_BEFORE, -after_s, 0, 0);
  return 0.0;
}

typedef struct {
  ox_pilot *k;
  bool direct;
  double least_s, least_straight_s; /* the shortest circuit this way, and its outbound leg */
  double total_s;                   /* wanted */
} way;

/* From one place both ways are looked at again and again. */
typedef struct {
  way by_course, by_fix;
} ways;

/* Seconds from over the fix back to it; *beyond_nm > 0 where the course is met beyond the fix. */
static double circuit_s(const way *w, double straight_s, double *beyond_nm) {
  ox_pilot *k = w->k;
  double elapsed_s;
  ox_place end = outbound_try(k, straight_s, &elapsed_s);
  *beyond_nm = 0.0;
  if (w->direct) {
    ox_direct d = direct_from(k, end, 1);
    return d.found ? elapsed_s + fabs(d.turn_deg) / k->rate_deg_s + d.straight_s : HUGE_VAL;
  }
  ox_intercept i = intercept_from(k, end, 1);
  *beyond_nm = i.found ? i.end_y_nm : HUGE_VAL;
  /* Beyond the fix the sum still grows with the outbound leg, which keeps the root apart. */
  return elapsed_s + i.total_s - i.end_y_nm / k->gs;
}

static bool leads_back(const way *w, double straight_s, double *total_s) {
  double beyond_nm;
  *total_s = circuit_s(w, straight_s, &beyond_nm);
  return beyond_nm <= 0.0 && isfinite(*total_s);
}

static double excess_s(double straight_s, void *context) {
  const way *w = context;
  double beyond_nm;
  return circuit_s(w, straight_s, &beyond_nm) - w->total_s;
}

/* The outbound time for a circuit of w->total_s: from the long end down, so that the bracket lies
 * where the way leads back to the fix. */
static bool outbound_for(way *w, double *straight_s) {
  if (!(w->total_s >= w->least_s)) return false;
  double high = w->k->reaction_s + w->total_s, f_high = excess_s(high, w);
  double low = high, f_low = f_high, total_s;
  while (f_low > 0.0 && low > w->least_straight_s) {
    high = low;
    f_high = f_low;
    low = fmax(w->least_straight_s, low - SEARCH_S);
    f_low = excess_s(low, w);
  }
  if (!(f_low <= 0.0)) return false;
  /* Beyond the longest leg that leads back the time is infinite: the bracket ends before it. */
  for (int i = 0; i < EDGE_HALVINGS && !isfinite(f_high); i++) {
    double mid = 0.5 * (low + high), f_mid = excess_s(mid, w);
    if (f_mid <= 0.0) {
      low = mid;
      f_low = f_mid;
    } else {
      high = mid;
      f_high = f_mid;
    }
  }
  if (!(f_high >= 0.0) || !isfinite(f_high)) return false;
  *straight_s = ox_root(excess_s, w, low, high, f_low, f_high);
  return leads_back(w, *straight_s, &total_s) && fabs(total_s - w->total_s) < 1e-6;
}

/* Whether the turn to the fix needs no second round: from here on the time only grows. */
static bool turns_once(const way *w, double straight_s) {
  static const double ONCE_DEG = 300.0;
  if (!w->direct) return true;
  double elapsed_s;
  ox_place end = outbound_try(w->k, straight_s, &elapsed_s);
  return fabs(direct_from(w->k, end, 1).turn_deg) < ONCE_DEG;
}

/* The shortest circuit along a way. Too short a leg meets the course beyond the fix, leaves the fix
 * inside the turn, or turns round once more; longer ones do not, so the edge is found by
 * halving. */
static void find_least(way *w) {
  enum { STEP_S = 4, FARTHEST_S = 120, HALVINGS = 20 };
  double first_s = w->k->reaction_s, total_s, short_of = first_s;
  w->least_s = HUGE_VAL;
  w->least_straight_s = first_s;
  for (int off_s = 0; off_s <= FARTHEST_S; off_s += STEP_S) {
    double straight_s = first_s + off_s;
    if (!leads_back(w, straight_s, &total_s)) continue;
    bool once = turns_once(w, straight_s);
    if (total_s < w->least_s) {
      w->least_s = total_s;
      w->least_straight_s = straight_s;
      short_of = fmax(first_s, straight_s - STEP_S);
    }
    if (once) break;
  }
  for (int i = 0; i < HALVINGS && w->least_straight_s > short_of; i++) {
    double mid = 0.5 * (short_of + w->least_straight_s);
    if (leads_back(w, mid, &total_s) && total_s < w->least_s) {
      w->least_straight_s = mid;
      w->least_s = total_s;
    } else {
      short_of = mid;
    }
  }
}

static ways ways_from(ox_pilot *k) {
  ways both = {{.k = k}, {.k = k, .direct = true}};
  find_least(&both.by_course);
  find_least(&both.by_fix);
  return both;
}

static double shortest_s(const ways *both) {
  return fmin(both->by_course.least_s, both->by_fix.least_s);
}

/* As the technique flies it, and how it then comes back. */
static double usual_s(ox_pilot *k, ox_circuit_order *usual) {
  ox_outbound_plan plan = outbound_choose(k, usual);
  double total_s;
  usual->straight_s = plan.straight_s;
  for (int direct = 0; direct <= 1; direct++) {
    way w = {.k = k, .direct = direct == 1};
    usual->direct = w.direct;
    if (leads_back(&w, plan.straight_s, &total_s)) return total_s;
  }
  return HUGE_VAL;
}

/* Along the course where that fits, else straight back. */
static bool last_so_long(ways *both, double total_s, ox_circuit_order *order) {
  both->by_course.total_s = both->by_fix.total_s = total_s;
  bool by_course = outbound_for(&both->by_course, &order->straight_s);
  if (!by_course && !outbound_for(&both->by_fix, &order->straight_s)) return false;
  order->fixed = true;
  order->direct = !by_course;
  return true;
}

/* --- more than one circuit ----------------------------------------------------------------- */

/* The pilot over the fix again, after a circuit as ordered that lasts so long. */
static ox_pilot after_circuit(ox_pilot *k, const ox_circuit_order *order, double total_s) {
  ox_pilot next = *k;
  next.heading_deg = k->in_deg;
  if (order->direct) {
    double elapsed_s;
    ox_place end = outbound_try(k, order->straight_s, &elapsed_s);
    next.heading_deg = ox_norm180_deg(end.heading_deg + direct_from(k, end, 1).turn_deg);
  }
  next.t_s += total_s;
  pilot_refresh(&next);
  return next;
}

static bool rest_fits(ways *both, double rest_s, int depth);

static bool rest_fits_from(ox_pilot *k, double rest_s, int depth) {
  if (fabs(rest_s) < 1e-6) return true;
  if (rest_s < 0.0 || !k->holds_course) return false;
  ways both = ways_from(k);
  return rest_fits(&both, rest_s, depth);
}

/* The first of several circuits that together last left_s: near the half of it, and so that the
 * rest fits. */
static bool first_of_several(ways *both, double left_s, int depth, ox_circuit_order *order) {
  static const double STEP_S = 5.0;
  double room_s = 0.5 * left_s;
  for (double off_s = 0.0; off_s <= room_s; off_s += STEP_S) {
    for (int side = -1; side <= 1; side += 2) {
      double first_s = 0.5 * left_s + side * off_s;
      if (!last_so_long(both, first_s, order)) continue;
      ox_pilot next = after_circuit(both->by_course.k, order, first_s);
      if (rest_fits_from(&next, left_s - first_s, depth)) return true;
    }
  }
  return false;
}

/* Whether whole circuits fill what is left. Three and more can share out any time. */
static bool rest_fits(ways *both, double rest_s, int depth) {
  if (fabs(rest_s) < 1e-6) return true;
  double least = shortest_s(both);
  if (rest_s < least) return false;
  ox_circuit_order order = {0};
  if (rest_s >= 3.0 * least || last_so_long(both, rest_s, &order)) return true;
  return depth > 0 && rest_s >= 2.0 * least && first_of_several(both, rest_s, depth - 1, &order);
}

static bool two_halves(ways *both, double left_s, ox_circuit_order *order) {
  if (!last_so_long(both, 0.5 * left_s, order)) return false;
  ox_pilot next = after_circuit(both->by_course.k, order, 0.5 * left_s);
  return rest_fits_from(&next, 0.5 * left_s, 0);
}

static bool fits(ways *both, double left_s) {
  return left_s >= 0.0 && rest_fits(both, left_s, 1);
}

/* The nearest time that can be met on one side of one that cannot; negative where there is none. */
static double nearest_s(ways *both, double left_s, int side) {
  enum { STEP_S = 5, FARTHEST_S = 1800, HALVINGS = 20 };
  for (int off_s = STEP_S; off_s <= FARTHEST_S; off_s += STEP_S) {
    double near_s = left_s + side * (off_s - STEP_S), far_s = left_s + side * off_s;
    if (far_s < 0.0) return -1.0;
    if (!fits(both, far_s)) continue;
    for (int i = 0; i < HALVINGS; i++) {
      double mid_s = 0.5 * (near_s + far_s);
      if (fits(both, mid_s))
        far_s = mid_s;
      else
        near_s = mid_s;
    }
    return far_s;
  }
  return -1.0;
}

static bool missed(ox_pilot *k, double before_s, double after_s) {
  pilot_advise(k, OX_ADVICE_LEAVE_MISSED, before_s, after_s, 0);
  return false;
}

static bool missed_here(ways *both, double left_s) {
  ox_pilot *k = both->by_course.k;
  double least = shortest_s(both);
  size_t advice_count = k->flight->advice_count;
  double before_s = left_s >= least ? fmax(0.0, nearest_s(both, left_s, -1)) : 0.0;
  /* The shortest circuit, but not where the next longer ones do not lead back: nobody flies to a
   * fraction of a second. */
  bool shortest = left_s < least && (!isfinite(least) || fits(both, least + 1.0));
  double after_s = shortest ? least : nearest_s(both, fmax(left_s, least), 1);
  k->flight->advice_count = advice_count;
  bool later = after_s > 0.0 && isfinite(after_s);
  return missed(k, k->t_s + before_s, later ? k->t_s + after_s : k->t_s + before_s);
}

/* As the technique has it, while what is left after that can be filled with circuits; then one
 * circuit, or, where one would be too long, short ones. */
static bool choose(ways *both, double left_s, const ox_circuit_order *usual,
                   ox_circuit_order *order) {
  ox_pilot *k = both->by_course.k;
  ox_circuit_order flown = *usual;
  double one_s = usual_s(k, &flown);
  if (isfinite(one_s)) {
    ox_pilot next = after_circuit(k, &flown, one_s);
    *order = *usual;
    if (left_s > one_s && rest_fits_from(&next, left_s - one_s, 1)) return true;
  }
  if (left_s > 1.02 * one_s && two_halves(both, left_s, order)) return true;
  if (last_so_long(both, left_s, order)) return true;
  return first_of_several(both, left_s, 1, order);
}

bool leaving_order(ox_pilot *k, double leave_s, const ox_circuit_order *usual,
                   ox_circuit_order *order) {
  double left_s = leave_s - k->t_s;
  *order = *usual;
  if (fabs(left_s) < 1e-6) return false;
  if (left_s < 0.0) return missed(k, 0.0, k->t_s); /* the entry took longer */
  if (!k->holds_course) return true;
  size_t advice_count = k->flight->advice_count;
  ways both = ways_from(k);
  bool found = left_s >= shortest_s(&both) && choose(&both, left_s, usual, order);
  k->flight->advice_count = advice_count; /* what was tried is not flown */
  return found || missed_here(&both, left_s);
}
