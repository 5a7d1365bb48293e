/* Where an outbound leg meets what a DME station sets: a circle of readings, a limiting radial.
 *
 * The circle is a quadratic in the time, the radial is linear. Only crossing the radial outwards
 * counts, and only on the station's side of it: a leg on the way back inside is not limited. */
#include "station.h"

#include <math.h>
#include <stddef.h>

ox_dme station_in_frame(const ox_frame *f, const ox_dme *dme) {
  ox_dme own = *dme;
  own.at_nm = ox_frame_in(f, dme->at_nm);
  own.limit = ox_frame_in(f, dme->limit);
  own.inside_nm = ox_frame_in(f, dme->inside_nm);
  return own;
}

double ox_dme_reached_s(const ox_dme *dme, ox_vec from_nm, ox_vec velocity_nm_s) {
  if (!(dme->end_ground_nm > 0.0)) return -1.0;
  ox_vec r = ox_vec_sub(from_nm, dme->at_nm);
  double a = ox_vec_dot(velocity_nm_s, velocity_nm_s), b = ox_vec_dot(r, velocity_nm_s);
  double c = ox_vec_dot(r, r) - dme->end_ground_nm * dme->end_ground_nm;
  if (dme->outward * c >= 0.0) return 0.0;
  double inside = b * b - a * c;
  if (!(a > 0.0) || inside < 0.0) return -1.0;
  double root = sqrt(inside);
  /* Growing: from inside the circle out, the only positive root. Shrinking: the first crossing. */
  double t = dme->outward > 0 ? (-b + root) / a : (-b - root) / a;
  return t >= 0.0 ? t : -1.0;
}

/* +1 or -1: which side of the radial is the inner one; 0 where there is no telling. */
static int inner_side(const ox_dme *dme) {
  double side = ox_vec_cross(dme->limit, ox_vec_sub(dme->inside_nm, dme->at_nm));
  return side > 0.0 ? 1 : side < 0.0 ? -1 : 0;
}

double ox_limit_beyond_nm(const ox_dme *dme, ox_vec at_nm) {
  return -inner_side(dme) * ox_vec_cross(dme->limit, ox_vec_sub(at_nm, dme->at_nm));
}

double ox_limit_reached_s(const ox_dme *dme, ox_vec from_nm, ox_vec velocity_nm_s) {
  if (!dme->limited || inner_side(dme) == 0) return -1.0;
  double beyond_nm = ox_limit_beyond_nm(dme, from_nm);
  double outwards = -inner_side(dme) * ox_vec_cross(dme->limit, velocity_nm_s);
  if (beyond_nm >= 0.0 ? outwards < 0.0 : outwards <= 0.0) return -1.0;
  double t = beyond_nm >= 0.0 ? 0.0 : -beyond_nm / outwards;
  ox_vec there = ox_vec_add(from_nm, ox_vec_scale(velocity_nm_s, t));
  return ox_vec_dot(dme->limit, ox_vec_sub(there, dme->at_nm)) > 0.0 ? t : -1.0;
}

double ox_station_reached_s(const ox_dme *dme, ox_vec from_nm, ox_vec velocity_nm_s,
                            bool *at_radial) {
  double reading_s = ox_dme_reached_s(dme, from_nm, velocity_nm_s);
  double radial_s = ox_limit_reached_s(dme, from_nm, velocity_nm_s);
  bool radial = radial_s >= 0.0 && (reading_s < 0.0 || radial_s < reading_s);
  if (at_radial) *at_radial = radial;
  return radial ? radial_s : reading_s;
}
