/* Moving a point: the numbers by which it is given, so that it comes to lie where it is wanted. */
#include <math.h>

#include "oxbow/route.h"
#include "oxbow/text.h"
#include "oxbow/units.h"
#include "remark.h"

typedef struct {
  double minute, degree, nm; /* what numbers are rounded to */
} grid;

static const grid coarse_grid = {0.1, 1.0, 0.1}, fine_grid = {0.01, 0.1, 0.01};

static double to_grid(double value, double step) { return step * round(value / step); }

/* Degrees in parts of a minute: divided last, so that the number prints as it was meant. */
static double minutes_deg(double deg, double minute) {
  double parts = round(1.0 / minute);
  return round(deg * 60.0 * parts) / (60.0 * parts);
}

/* A latitude or longitude beyond its end after rounding is that end. */
static void give_place(ox_point *p, ox_latlon to, const grid *g) {
  p->at.lat_deg = fmax(-90.0, fmin(90.0, minutes_deg(to.lat_deg, g->minute)));
  p->at.lon_deg = fmax(-180.0, fmin(180.0, minutes_deg(to.lon_deg, g->minute)));
}

static ox_status station_of(const ox_points *points, const char *name, ox_station *out,
                            double *elevation_ft, char *remark, size_t bytes) {
  const ox_point *from = ox_points_find(points, name);
  if (!from) return ox_remark(OX_ERROR, remark, bytes, _("There is no point named %s."), name);
  out->declination_deg = from->declination_deg;
  *elevation_ft = from->elevation_ft;
  return ox_points_place(points, name, &out->at, remark, bytes);
}

static ox_status give_radial(const ox_points *points, const char *name, ox_latlon to,
                             const grid *g, double *radial_deg, double *nm, double *elevation_ft,
                             char *remark, size_t bytes) {
  ox_station from;
  if (station_of(points, name, &from, elevation_ft, remark, bytes) == OX_ERROR) return OX_ERROR;
  if (ox_radial_of(from, to, radial_deg, nm) == OX_ERROR)
    return ox_remark(OX_ERROR, remark, bytes, _("That place has no radial from %s."), name);
  *radial_deg = fmod(to_grid(*radial_deg, g->degree), 360.0);
  return OX_OK;
}

static ox_status give(const ox_points *points, ox_point *p, ox_latlon to, const grid *g,
                      char *remark, size_t bytes) {
  double elevation_ft = 0.0, unused_nm = 0.0;
  if (p->kind == OX_POINT_AT) {
    give_place(p, to, g);
    return OX_OK;
  }
  double *nm = p->kind == OX_POINT_RADIAL ? &p->nm : &unused_nm;
  if (give_radial(points, p->from, to, g, &p->radial_deg, nm, &elevation_ft, remark, bytes) ==
      OX_ERROR)
    return OX_ERROR;
  if (p->kind == OX_POINT_CROSSING)
    return give_radial(points, p->and_from, to, g, &p->and_radial_deg, &unused_nm, &elevation_ft,
                       remark, bytes);
  double height_nm = fabs(p->altitude_ft - elevation_ft) / OX_FT_PER_NM;
  if (p->dme) p->nm = ox_ground_to_slant_nm(p->nm, elevation_ft, p->altitude_ft);
  p->nm = to_grid(p->nm, g->nm);
  /* Over the station the reading is the height: no less is one. */
  if (p->dme && p->nm < height_nm) p->nm = height_nm;
  return OX_OK;
}

ox_status ox_points_bring(ox_points *points, const char *name, ox_latlon to, bool fine,
                          char *remark, size_t remark_bytes) {
  const ox_point *found = ox_points_find(points, name);
  ox_latlon unused;
  ox_no_remark(remark, remark_bytes);
  if (!found)
    return ox_remark(OX_ERROR, remark, remark_bytes, _("There is no point named %s."), name);
  if (!ox_latlon_valid(to))
    return ox_remark(OX_ERROR, remark, remark_bytes, _("That is no place on the earth."));
  ox_point *p = &points->points[found - points->points];
  ox_point before = *p;
  if (give(points, p, to, fine ? &fine_grid : &coarse_grid, remark, remark_bytes) != OX_ERROR) {
    ox_status status = ox_points_place(points, name, &unused, remark, remark_bytes);
    if (status != OX_ERROR) return status;
  }
  *p = before;
  return OX_ERROR;
}
