/* The WGS 84 ellipsoid: semi-major axis 6 378 137 m, flattening 1/298.257223563 (NIMA TR8350.2).
 * The routines are good to some 15 nanometres (C. F. F. Karney, J. Geodesy 87, 2013, 43-55). */
#include "earth.h"

#include <geodesic.h>
#include <math.h>

static const double metres_per_nm = 1852.0;

static struct geod_geodesic wgs84(void) {
  struct geod_geodesic g;
  geod_init(&g, 6378137.0, 1.0 / 298.257223563);
  return g;
}

bool ox_latlon_valid(ox_latlon p) {
  return isfinite(p.lat_deg) && isfinite(p.lon_deg) && fabs(p.lat_deg) <= 90.0 &&
         fabs(p.lon_deg) <= 180.0;
}

ox_latlon ox_earth_direct(ox_latlon from, double bearing_true_deg, double distance_nm,
                          double *arriving_deg) {
  struct geod_geodesic g = wgs84();
  ox_latlon to;
  double azimuth_deg;
  geod_direct(&g, from.lat_deg, from.lon_deg, ox_norm360_deg(bearing_true_deg),
              distance_nm * metres_per_nm, &to.lat_deg, &to.lon_deg, &azimuth_deg);
  if (arriving_deg) *arriving_deg = ox_norm360_deg(azimuth_deg);
  return to;
}

ox_geodesic ox_earth_inverse(ox_latlon from, ox_latlon to) {
  struct geod_geodesic g = wgs84();
  double metres, leaving_deg, arriving_deg;
  geod_inverse(&g, from.lat_deg, from.lon_deg, to.lat_deg, to.lon_deg, &metres, &leaving_deg,
               &arriving_deg);
  return (ox_geodesic){.distance_nm = metres / metres_per_nm,
                       .from_bearing_deg = ox_norm360_deg(leaving_deg),
                       .to_bearing_deg = ox_norm360_deg(arriving_deg)};
}

ox_status ox_geodesic_between(ox_latlon from, ox_latlon to, ox_geodesic *out) {
  if (!ox_latlon_valid(from) || !ox_latlon_valid(to)) return OX_ERROR;
  *out = ox_earth_inverse(from, to);
  return OX_OK;
}
