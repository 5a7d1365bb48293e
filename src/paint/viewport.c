/* World to device and back. */
#include "oxbow/viewport.h"

#include <math.h>

/* Scales beyond these draw nothing that can be seen and would overflow further on. */
static const double LEAST_DEV_PER_NM = 1e-6;
static const double MOST_DEV_PER_NM = 1e7;

ox_vec ox_viewport_to_dev(const ox_viewport *v, ox_vec world_nm) {
  double s, c;
  ox_sincos_deg(v->up_deg, &s, &c);
  ox_vec d = ox_vec_sub(world_nm, v->centre_nm);
  double right = d.x * c - d.y * s;
  double up = d.x * s + d.y * c;
  return (ox_vec){v->centre_dev.x + right * v->dev_per_nm, v->centre_dev.y - up * v->dev_per_nm};
}

ox_vec ox_viewport_to_world(const ox_viewport *v, ox_vec dev) {
  double s, c;
  ox_sincos_deg(v->up_deg, &s, &c);
  double right = (dev.x - v->centre_dev.x) / v->dev_per_nm;
  double up = (v->centre_dev.y - dev.y) / v->dev_per_nm;
  return (ox_vec){v->centre_nm.x + right * c + up * s, v->centre_nm.y - right * s + up * c};
}

static double ratio(double room, double size) {
  if (!(room > 0.0)) return LEAST_DEV_PER_NM;
  return size > 0.0 ? room / size : MOST_DEV_PER_NM;
}

ox_viewport ox_viewport_fit(ox_vec min_nm, ox_vec max_nm, ox_vec dev_origin, ox_vec dev_size,
                            double margin, double up_deg) {
  ox_viewport v;
  double s, c;
  ox_sincos_deg(up_deg, &s, &c);
  double dx = max_nm.x - min_nm.x, dy = max_nm.y - min_nm.y;
  double across = fabs(dx * c) + fabs(dy * s); /* the rectangle as seen when turned */
  double along = fabs(dx * s) + fabs(dy * c);
  v.centre_nm = ox_vec_scale(ox_vec_add(min_nm, max_nm), 0.5);
  v.centre_dev = ox_vec_add(dev_origin, ox_vec_scale(dev_size, 0.5));
  v.up_deg = up_deg;
  double scale = fmin(ratio(dev_size.x - 2 * margin, across),
                      ratio(dev_size.y - 2 * margin, along));
  if (!isfinite(scale)) scale = 1.0;
  v.dev_per_nm = fmin(fmax(scale, LEAST_DEV_PER_NM), MOST_DEV_PER_NM);
  return v;
}
