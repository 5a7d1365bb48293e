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

/* As the technique flies it; whatever it has to advise is advised when it is flown. */
static double usual_s(ox_pilot *k, const ox_circuit_order *usual) {
  size_t advice_count = k->flight->advice_count;
  ox_outbound_plan plan = outbound_choose(k, usual);
  k->flight->advice_count = advice_count;
  way along = {k, false, 0.0}, back = {k, true, 0.0};
  double total_s;
  if (leads_back(&along, plan.straight_s, &total_s)) return total_s;
  return leads_back(&back, plan.straight_s, &total_s) ? total_s : HUGE_VAL;
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

static bool missed(ox_pilot *k, double before_s, double after_s) {
  pilot_advise(k, OX_ADVICE_LEAVE_MISSED, before_s, after_s, 0);
  return false;
}

/* What is left is flown as usual circuits while another one fits after them. The rest is one
 * circuit, or, where one would be too long, two short ones. */
bool leaving_order(ox_pilot *k, double leave_s, const ox_circuit_order *usual,
                   ox_circuit_order *order) {
  double left_s = leave_s - k->t_s;
  *order = *usual;
  if (fabs(left_s) < 1e-6) return false;
  if (left_s < 0.0) return missed(k, 0.0, k->t_s); /* the entry took longer */
  if (!k->holds_course) return true;
  double shortest_s = fmin(least_s(k, false), least_s(k, true));
  if (left_s < shortest_s)
    return missed(k, k->t_s, isfinite(shortest_s) ? k->t_s + shortest_s : k->t_s);
  double one_s = usual_s(k, usual);
  if (left_s >= one_s + shortest_s) return true;
  if (left_s > 1.02 * one_s && left_s >= 2.0 * shortest_s + 1.0 &&
      last_so_long(k, 0.5 * left_s, order))
    return true;
  if (last_so_long(k, left_s, order)) return true;
  return missed(k, k->t_s, isfinite(one_s) ? k->t_s + one_s : k->t_s);
}
