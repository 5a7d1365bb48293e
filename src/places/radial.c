/* Places by bearing and distance: along a true track, ahead in time, on a station's radial; and
 * the slant range that a DME shows. */
#include <math.h>

#include "earth.h"
#include "oxbow/text.h"
#include "oxbow/units.h"
#include "remark.h"

/* Whether a number is none or lies beyond its ends; then `got` has its figures for the sentence. */
static bool outside(double value, double min, double max, char got[OX_FIGURES_BYTES]) {
  if (isfinite(value) && value >= min && value <= max) return false;
  ox_figures(got, value, 1);
  return true;
}

static ox_status refuse_place(ox_latlon p, char *remark, size_t bytes) {
  if (ox_latlon_valid(p)) return OX_OK;
  return ox_remark(OX_ERROR, remark, bytes,
                   _("The latitude must be -90 to 90 degrees and the longitude -180 to 180."));
}

ox_status ox_place_along(ox_latlon from, double bearing_true_deg, double distance_nm,
                         ox_latlon *out, double *arriving_deg, char *remark, size_t remark_bytes) {
  char got[OX_FIGURES_BYTES];
  if (refuse_place(from, remark, remark_bytes) != OX_OK) return OX_ERROR;
  if (outside(bearing_true_deg, -360, 720, got))
    return ox_remark(OX_ERROR, remark, remark_bytes,
                     _("The bearing is %s; it must be -360 to 720 degrees."), got);
  if (outside(distance_nm, 0, OX_PLACE_DISTANCE_MAX_NM, got))
    return ox_remark(OX_ERROR, remark, remark_bytes,
                     _("The distance is %s; it must be 0 to 1000 NM."), got);
  *out = ox_earth_direct(from, bearing_true_deg, distance_nm, arriving_deg);
  return ox_no_remark(remark, remark_bytes);
}

ox_status ox_place_ahead(ox_latlon from, double track_true_deg, double gs_kt, double s,
                         ox_latlon *out, char *remark, size_t remark_bytes) {
  char got[OX_FIGURES_BYTES];
  if (outside(gs_kt, 0, 2000, got))
    return ox_remark(OX_ERROR, remark, remark_bytes,
                     _("The ground speed is %s; it must be 0 to 2000 kt."), got);
  if (outside(s, 0, 36000, got))
    return ox_remark(OX_ERROR, remark, remark_bytes,
                     _("The time ahead is %s; it must be 0 to 36000 seconds."), got);
  return ox_place_along(from, track_true_deg, gs_kt * s / OX_S_PER_H, out, NULL, remark,
                        remark_bytes);
}

ox_status ox_slant_to_ground_nm(double dme_nm, double elevation_ft, double altitude_ft,
                                double *ground_nm, char *remark, size_t remark_bytes) {
  char got[OX_FIGURES_BYTES];
  if (outside(dme_nm, 0, OX_PLACE_DISTANCE_MAX_NM, got))
    return ox_remark(OX_ERROR, remark, remark_bytes,
                     _("The DME distance is %s; it must be 0 to 1000 NM."), got);
  if (outside(elevation_ft, -2000, 30000, got))
    return ox_remark(OX_ERROR, remark, remark_bytes,
                     _("The station's elevation is %s; it must be -2000 to 30000 ft."), got);
  if (outside(altitude_ft, -2000, 200000, got))
    return ox_remark(OX_ERROR, remark, remark_bytes,
                     _("The altitude is %s; it must be -2000 to 200000 ft."), got);
  double height_nm = fabs(altitude_ft - elevation_ft) / OX_FT_PER_NM;
  if (dme_nm < height_nm) {
    char dme[OX_FIGURES_BYTES], height[OX_FIGURES_BYTES];
    return ox_remark(OX_ERROR, remark, remark_bytes,
                     _("A DME cannot read %s NM here: over the station itself it reads the height, "
                       "%s NM; give that or more."),
                     ox_figures(dme, dme_nm, 2), ox_figures(height, height_nm, 2));
  }
  *ground_nm = sqrt((dme_nm - height_nm) * (dme_nm + height_nm));
  return ox_no_remark(remark, remark_bytes);
}

double ox_ground_to_slant_nm(double ground_nm, double elevation_ft, double altitude_ft) {
  return hypot(ground_nm, (altitude_ft - elevation_ft) / OX_FT_PER_NM);
}

ox_status ox_radial_place(ox_station from, double radial_deg, double ground_nm, ox_latlon *out,
                          char *remark, size_t remark_bytes) {
  char got[OX_FIGURES_BYTES];
  if (outside(radial_deg, -360, 720, got))
    return ox_remark(OX_ERROR, remark, remark_bytes,
                     _("The radial is %s; it must be -360 to 720 degrees."), got);
  if (outside(from.declination_deg, -180, 180, got))
    return ox_remark(OX_ERROR, remark, remark_bytes,
                     _("The station's declination is %s; it must be -180 to 180 degrees."), got);
  double bearing_deg = ox_true_deg(radial_deg, from.declination_deg);
  return ox_place_along(from.at, bearing_deg, ground_nm, out, NULL, remark, remark_bytes);
}

ox_status ox_radial_of(ox_station from, ox_latlon place, double *radial_deg, double *ground_nm) {
  ox_geodesic line;
  if (!isfinite(from.declination_deg) || fabs(from.declination_deg) > 180.0) return OX_ERROR;
  if (ox_geodesic_between(from.at, place, &line) != OX_OK) return OX_ERROR;
  if (radial_deg) *radial_deg = ox_magnetic_deg(line.from_bearing_deg, from.declination_deg);
  if (ground_nm) *ground_nm = line.distance_nm;
  return OX_OK;
}
