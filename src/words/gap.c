/* How far two flights of one case are apart. */
#include "gap.h"

#include <math.h>

static const double STEP_S = 0.5;

double words_back_s(const ox_flight *f) {
  for (size_t i = 0; i < f->event_count; i++)
    if (f->events[i].kind == OX_EVENT_FIX && f->events[i].t_s > 1.0) return f->events[i].t_s;
  return -1.0;
}

static double until_s(const ox_flight *right, const ox_flight *wrong) {
  double a = words_back_s(right), b = words_back_s(wrong);
  double end_s = fmin(ox_flight_end_s(right), ox_flight_end_s(wrong));
  if (a > 0.0) end_s = fmin(end_s, a);
  if (b > 0.0) end_s = fmin(end_s, b);
  return end_s;
}

words_gap words_widest_gap(const ox_flight *right, const ox_flight *wrong) {
  words_gap widest = {0, 0, 0};
  double end_s = until_s(right, wrong);
  for (double t_s = 0.0; t_s <= end_s; t_s += STEP_S) {
    ox_vec d = ox_vec_sub(ox_flight_at(wrong, t_s).p_nm, ox_flight_at(right, t_s).p_nm);
    double apart_nm = ox_vec_length(d);
    if (apart_nm > widest.apart_nm) widest = (words_gap){t_s, apart_nm, ox_bearing_deg(d)};
  }
  return widest;
}
