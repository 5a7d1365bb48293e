/* The air view, in closed form: a leg seen from the air is a leg with less wind. */
#include "air.h"

#include <math.h>

#include "oxbow/units.h"

static const double GLIDE_S = 20.0, GLIDE_SHARE = 0.3; /* of the stretch, whichever is shorter */

static ox_vec carried(const ox_leg *leg, double until_s) {
  double dt = fmin(fmax(until_s, leg->t0_s), leg->t1_s) - leg->t0_s;
  return ox_vec_scale(leg->wind_kt, dt / OX_S_PER_H);
}

ox_vec ox_air_carry(const ox_flight *f, double t_s) {
  ox_vec sum = {0, 0};
  for (size_t i = 0; i < f->leg_count && f->legs[i].t0_s < t_s; i++)
    sum = ox_vec_add(sum, carried(&f->legs[i], t_s));
  return sum;
}

/* p(t') - air (W(t') - W(t)), with W the way of the air: within a leg W grows evenly, so that the
 * leg keeps its headings and its speed through the air and only feels less wind. */
void ox_air_see(const ox_flight *f, double t_s, double air, ox_flight *seen) {
  ox_vec now = ox_air_carry(f, t_s), way = {0, 0};
  for (size_t i = 0; i < f->leg_count; i++) {
    const ox_leg *leg = &f->legs[i];
    ox_leg *out = &seen->legs[i];
    ox_vec end = ox_vec_add(way, carried(leg, leg->t1_s));
    out->p0_nm = ox_vec_sub(leg->p0_nm, ox_vec_scale(ox_vec_sub(way, now), air));
    out->p1_nm = ox_vec_sub(leg->p1_nm, ox_vec_scale(ox_vec_sub(end, now), air));
    out->wind_kt = ox_vec_scale(leg->wind_kt, 1.0 - air);
    way = end;
  }
}

ox_stretch ox_air_stretch(const ox_flight *f, double t_s) {
  double end_s = ox_flight_end_s(f);
  double first_s = f->circuit_count > 0 ? f->circuits[0].fix_t_s : end_s;
  if (t_s < 0.0) return (ox_stretch){ox_flight_begin_s(f), 0.0, -1};
  if (f->circuit_count == 0 || t_s < first_s) return (ox_stretch){0.0, first_s, 0};
  size_t k = f->circuit_count - 1;
  while (k > 0 && f->circuits[k].fix_t_s > t_s) k--;
  double to_s = k + 1 < f->circuit_count ? f->circuits[k + 1].fix_t_s : end_s;
  return (ox_stretch){f->circuits[k].fix_t_s, to_s, (int)k + 1};
}

bool ox_stretch_has(const ox_stretch *s, const ox_leg *leg) {
  double middle_s = 0.5 * (leg->t0_s + leg->t1_s);
  return middle_s >= s->from_s && middle_s <= s->to_s;
}

/* Within a stretch, without the glide. On the arrival the fix is where the next stretch begins. */
static ox_vec carried_in(const ox_flight *f, const ox_stretch *s, double t_s) {
  ox_stretch next = s->circuit < 0 ? ox_air_stretch(f, 0.0) : *s;
  double middle_s = 0.5 * (next.from_s + next.to_s);
  return ox_vec_sub(ox_air_carry(f, fmax(t_s, next.from_s)), ox_air_carry(f, middle_s));
}

ox_vec ox_air_camera(const ox_flight *f, double t_s) {
  ox_stretch s = ox_air_stretch(f, t_s);
  t_s = fmin(fmax(t_s, s.from_s), s.to_s);
  ox_vec here = carried_in(f, &s, t_s);
  double glide_s = fmin(GLIDE_S, GLIDE_SHARE * (s.to_s - s.from_s));
  double share = glide_s > 0.0 ? (t_s - s.from_s) / glide_s : 1.0;
  if (s.circuit < 0 || share >= 1.0) return here;
  ox_stretch before = ox_air_stretch(f, s.from_s > 0.0 ? nextafter(s.from_s, 0.0) : -1.0);
  ox_vec jump = ox_vec_sub(carried_in(f, &before, s.from_s), carried_in(f, &s, s.from_s));
  double left = 1.0 - share * share * (3.0 - 2.0 * share);
  return ox_vec_add(here, ox_vec_scale(jump, left));
}
