/* The local plane about a fix: azimuthal equidistant, by the geodesic itself and not by a series.
 * Distance and bearing from the origin are exact everywhere; 50 NM away lengths across are wrong
 * by a part in 28 000, far less than the width of a line. */
#include "earth.h"

#include <math.h>

ox_status ox_plane_from_place(ox_latlon origin, ox_latlon place, ox_vec *out) {
  if (!ox_latlon_valid(origin) || !ox_latlon_valid(place)) return OX_ERROR;
  ox_geodesic line = ox_earth_inverse(origin, place);
  *out = ox_vec_scale(ox_unit(line.from_bearing_deg), line.distance_nm);
  return OX_OK;
}

ox_status ox_plane_to_place(ox_latlon origin, ox_vec point_nm, ox_latlon *out) {
  if (!ox_latlon_valid(origin) || !isfinite(point_nm.x) || !isfinite(point_nm.y)) return OX_ERROR;
  double distance_nm = ox_vec_length(point_nm);
  if (!(distance_nm <= OX_PLACE_DISTANCE_MAX_NM)) return OX_ERROR;
  *out = ox_earth_direct(origin, ox_bearing_deg(point_nm), distance_nm, NULL);
  return OX_OK;
}
