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

double leaving_after_s(ox_pilot *k) {
  const ox_case *c = k->c;
  if (c->hold.ends != OX_HOLD_TO_EFC || c->hold.efc_min < 0 || c->arrival.fix_at_s < 0) return 0.0;
  double after_s;
  ox_clock_after_s(c, c->hold.efc_min, &after_s);
  if (after_s > 0.0) return after_s;
  pilot_advise(k, OX_ADVICE_LEAVE_BEFORE, -after_s, 0, 0);
  return 0.0;
}

typedef struct {
  ox_pilot *k;
  bool direct;
  double total_s;
} way;

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
  double high = w->k->reaction_s + w->total_s, f_high = excess_s(high, w);
  double low = high, f_low = f_high, total_s;
  while (f_low > 0.0 && isfinite(f_low) && low > w->k->reaction_s) {
    high = low;
    f_high = f_low;
    low = fmax(w->k->reaction_s, low - SEARCH_S);
    f_low = excess_s(low, w);
  }
  if (!(f_low <= 0.0) || !(f_high >= 0.0) || !isfinite(f_high)) return false;
  *straight_s = ox_root(excess_s, w, low, high, f_low, f_high);
  return leads_back(w, *straight_s, &total_s) && fabs(total_s - w->total_s) < 1e-6;
}

/* The shortest circuit along a way. Too short a leg meets the course beyond the fix, or leaves the
 * fix inside the turn; longer ones do not, so the edge is found by halving. */
static double least_s(ox_pilot *k, bool direct) {
  way w = {k, direct, 0.0};
  double low = k->reaction_s, high = low + 120.0, best_s, total_s;
  if (leads_back(&w, low, &best_s)) return best_s;
  if (!leads_back(&w, high, &best_s)) return HUGE_VAL;
  for (int i = 0; i < 20; i++) {
    double mid = 0.5 * (low + high);
    if (leads_back(&w, mid, &total_s)) {
      high = mid;
      best_s = total_s;
    } else {
      low = mid;
    }
  }
  return best_s;
}

/* As the technique flies it, and how it then comes back. */
static double usual_s(ox_pilot *k, ox_circuit_order *usual) {
  ox_outbound_plan plan = outbound_choose(k, usual);
  double total_s;
  usual->straight_s = plan.straight_s;
  for (int direct = 0; direct <= 1; direct++) {
    way w = {k, direct == 1, 0.0};
    usual->direct = w.direct;
    if (leads_back(&w, plan.straight_s, &total_s)) return total_s;
  }
  return HUGE_VAL;
}

/* Along the course where that fits, else straight back. */
static bool last_so_long(ox_pilot *k, double total_s, ox_circuit_order *order) {
  for (int direct = 0; direct <= 1; direct++) {
    way w = {k, direct == 1, total_s};
    if (!outbound_for(&w, &order->straight_s)) continue;
    order->fixed = true;
    order->direct = w.direct;
    return true;
  }
  return false;
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

static double shortest_s(ox_pilot *k) {
  return fmin(least_s(k, false), least_s(k, true));
}

static bool rest_fits(ox_pilot *k, double rest_s, int depth);

/* The first of several circuits that together last left_s: near the half of it, and so that the
 * rest fits. */
static bool first_of_several(ox_pilot *k, double left_s, int depth, ox_circuit_order *order) {
  static const double STEP_S = 5.0;
  double room_s = 0.5 * left_s;
  for (double off_s = 0.0; off_s <= room_s; off_s += STEP_S) {
    for (int side = -1; side <= 1; side += 2) {
      double first_s = 0.5 * left_s + side * off_s;
      if (!last_so_long(k, first_s, order)) continue;
      ox_pilot next = after_circuit(k, order, first_s);
      if (rest_fits(&next, left_s - first_s, depth)) return true;
    }
  }
  return false;
}

/* Whether whole circuits fill what is left. Three and more can share out any time. */
static bool rest_fits(ox_pilot *k, double rest_s, int depth) {
  if (fabs(rest_s) < 1e-6) return true;
  if (!k->holds_course) return false;
  double least = shortest_s(k);
  if (rest_s < least) return false;
  ox_circuit_order order = {0};
  if (rest_s >= 3.0 * least || last_so_long(k, rest_s, &order)) return true;
  return depth > 0 && rest_s >= 2.0 * least && first_of_several(k, rest_s, depth - 1, &order);
}

static bool two_halves(ox_pilot *k, double left_s, ox_circuit_order *order) {
  if (!last_so_long(k, 0.5 * left_s, order)) return false;
  ox_pilot next = after_circuit(k, order, 0.5 * left_s);
  return rest_fits(&next, 0.5 * left_s, 0);
}

static bool fits(ox_pilot *k, double left_s) {
  return left_s >= 0.0 && rest_fits(k, left_s, 1);
}

/* The nearest time that can be met on one side of one that cannot; negative where there is none. */
static double nearest_s(ox_pilot *k, double left_s, int side) {
  enum { STEP_S = 5, FARTHEST_S = 1800, HALVINGS = 20 };
  for (int off_s = STEP_S; off_s <= FARTHEST_S; off_s += STEP_S) {
    double near_s = left_s + side * (off_s - STEP_S), far_s = left_s + side * off_s;
    if (far_s < 0.0) return -1.0;
    if (!fits(k, far_s)) continue;
    for (int i = 0; i < HALVINGS; i++) {
      double mid_s = 0.5 * (near_s + far_s);
      if (fits(k, mid_s))
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

static bool missed_here(ox_pilot *k, double left_s, double least) {
  size_t advice_count = k->flight->advice_count;
  double before_s = left_s >= least ? fmax(0.0, nearest_s(k, left_s, -1)) : 0.0;
  /* The shortest circuit, but not where the next longer ones do not lead back: nobody flies to a
   * fraction of a second. */
  bool shortest = left_s < least && (!isfinite(least) || fits(k, least + 1.0));
  double after_s = shortest ? least : nearest_s(k, fmax(left_s, least), 1);
  k->flight->advice_count = advice_count;
  bool later = after_s > 0.0 && isfinite(after_s);
  return missed(k, k->t_s + before_s, later ? k->t_s + after_s : k->t_s + before_s);
}

/* As the technique has it, while what is left after that can be filled with circuits; then one
 * circuit, or, where one would be too long, short ones. */
static bool choose(ox_pilot *k, double left_s, const ox_circuit_order *usual,
                   ox_circuit_order *order) {
  ox_circuit_order flown = *usual;
  double one_s = usual_s(k, &flown);
  if (isfinite(one_s)) {
    ox_pilot next = after_circuit(k, &flown, one_s);
    *order = *usual;
    if (left_s > one_s && rest_fits(&next, left_s - one_s, 1)) return true;
  }
  if (left_s > 1.02 * one_s && two_halves(k, left_s, order)) return true;
  if (last_so_long(k, left_s, order)) return true;
  return first_of_several(k, left_s, 1, order);
}

bool leaving_order(ox_pilot *k, double leave_s, const ox_circuit_order *usual,
                   ox_circuit_order *order) {
  double left_s = leave_s - k->t_s;
  *order = *usual;
  if (fabs(left_s) < 1e-6) return false;
  if (left_s < 0.0) return missed(k, 0.0, k->t_s); /* the entry took longer */
  if (!k->holds_course) return true;
  size_t advice_count = k->flight->advice_count;
  double least = shortest_s(k);
  bool found = left_s >= least && choose(k, left_s, usual, order);
  k->flight->advice_count = advice_count; /* what was tried is not flown */
  return found || missed_here(k, left_s, least);
}
