/* The fix of a case: where it is, and what of the case follows from that. */
#include "oxbow/fix.h"

#include <math.h>
#include <string.h>

#include "oxbow/flight.h"
#include "oxbow/text.h"
#include "oxbow/wind.h"
#include "remark.h"

ox_fix ox_fix_named(void) {
  ox_fix fix = {.kind = OX_FIX_NAMED};
  return fix;
}

/* --- alike? --- */

bool ox_point_equal(const ox_point *a, const ox_point *b) {
  size_t count;
  const ox_field *fields = ox_point_fields(&count);
  if (strcmp(a->name, b->name) != 0 || a->kind != b->kind || a->inside != b->inside ||
      a->unnamed != b->unnamed || (a->kind == OX_POINT_RADIAL && a->dme != b->dme))
    return false;
  if (a->kind != OX_POINT_AT && strcmp(a->from, b->from) != 0) return false;
  if (a->kind == OX_POINT_CROSSING && strcmp(a->and_from, b->and_from) != 0) return false;
  for (size_t i = 0; i < count; i++)
    if (ox_point_has_field(a, &fields[i]) &&
        ox_field_get(&fields[i], a) != ox_field_get(&fields[i], b))
      return false;
  return true;
}

bool ox_fix_equal(const ox_fix *a, const ox_fix *b) {
  if (a->kind != b->kind || strcmp(a->present, b->present) != 0 ||
      strcmp(a->station, b->station) != 0 ||
      a->station_elevation_given != b->station_elevation_given ||
      (a->station_elevation_given && a->station_elevation_ft != b->station_elevation_ft))
    return false;
  return (a->kind != OX_FIX_POINT || ox_point_equal(&a->point, &b->point)) &&
         (a->kind != OX_FIX_AHEAD_NM || a->ahead_nm == b->ahead_nm) &&
         (a->kind != OX_FIX_AHEAD_S || a->ahead_s == b->ahead_s);
}

bool ox_points_equal(const ox_points *a, const ox_points *b) {
  if (a->count != b->count) return false;
  for (size_t i = 0; i < a->count; i++)
    if (!ox_point_equal(&a->points[i], &b->points[i])) return false;
  return true;
}

bool ox_route_equal(const ox_route *a, const ox_route *b) {
  if (a->count != b->count || a->missed_approach != b->missed_approach) return false;
  for (size_t i = 0; i < a->count; i++)
    if (strcmp(a->names[i], b->names[i]) != 0) return false;
  return true;
}

/* --- where it is --- */

ox_status ox_fix_arrival(const ox_case *c, double *track_true_deg, double *gs_kt) {
  ox_setup setup;
  if (ox_setup_make(c, &setup) == OX_ERROR) return OX_ERROR;
  ox_made_good good =
      ox_made_good_on(setup.arrival_heading_true_deg, setup.tas_kt, setup.wind_kt);
  *track_true_deg = good.track_deg;
  *gs_kt = good.gs_kt;
  return OX_OK;
}

static bool is_ahead(const ox_fix *fix) {
  return fix->kind == OX_FIX_AHEAD_NM || fix->kind == OX_FIX_AHEAD_S;
}

bool ox_fix_has_place(const ox_points *points, const ox_fix *fix, const ox_case *c) {
  if (fix->kind == OX_FIX_POINT) return true;
  if (is_ahead(fix)) return fix->present[0] != '\0';
  return ox_points_find(points, c->hold.fix) != NULL;
}

/* The track and the distance to a fix ahead of the aircraft. */
static ox_status lead(const ox_fix *fix, const ox_case *c, double *track_true_deg, double *nm,
                      char *remark, size_t bytes) {
  double gs_kt;
  if (ox_fix_arrival(c, track_true_deg, &gs_kt) == OX_ERROR)
    return ox_remark(OX_ERROR, remark, bytes, _("The arrival of this case cannot be computed."));
  *nm = fix->kind == OX_FIX_AHEAD_NM ? fix->ahead_nm : fix->ahead_s * gs_kt / 3600.0;
  if (!isfinite(*nm) || *nm < 0.0 || *nm > OX_FIX_AHEAD_MAX_NM)
    return ox_remark(OX_ERROR, remark, bytes, _("A fix ahead may be at most %d NM away."),
                     (int)OX_FIX_AHEAD_MAX_NM);
  return OX_OK;
}

static ox_status place_ahead(const ox_points *points, const ox_fix *fix, const ox_case *c,
                             ox_latlon *out, char *remark, size_t bytes) {
  double track_true_deg, nm;
  ox_latlon present;
  if (!fix->present[0])
    return ox_remark(OX_ERROR, remark, bytes,
                     _("The fix is ahead of the aircraft, and nothing says where that is."));
  ox_status status = ox_points_place(points, fix->present, &present, remark, bytes);
  if (status == OX_ERROR ||
      lead(fix, c, &track_true_deg, &nm, remark, bytes) == OX_ERROR ||
      ox_place_along(present, track_true_deg, nm, out, NULL, NULL, 0) == OX_ERROR)
    return OX_ERROR;
  return status;
}

ox_status ox_fix_place(const ox_points *points, const ox_fix *fix, const ox_case *c, ox_latlon *out,
                       char *remark, size_t remark_bytes) {
  if (fix->kind == OX_FIX_POINT) {
    ox_point named = fix->point;
    memcpy(named.name, c->hold.fix, sizeof named.name);
    return ox_point_place(points, &named, out, remark, remark_bytes);
  }
  if (is_ahead(fix)) return place_ahead(points, fix, c, out, remark, remark_bytes);
  if (!ox_points_find(points, c->hold.fix))
    return ox_remark(OX_ERROR, remark, remark_bytes, _("Nothing says where %s is."), c->hold.fix);
  return ox_points_place(points, c->hold.fix, out, remark, remark_bytes);
}

/* --- what follows --- */

static bool takes(const char *key, double value) {
  return ox_field_accepts(ox_field_by_key(key), value);
}

static ox_status settle_station(const ox_points *points, const ox_fix *fix, ox_case *c,
                                char *remark, size_t bytes) {
  ox_latlon at, station;
  ox_geodesic line;
  const ox_point *point = ox_points_find(points, fix->station);
  if (ox_fix_place(points, fix, c, &at, remark, bytes) == OX_ERROR ||
      ox_points_place(points, fix->station, &station, remark, bytes) == OX_ERROR)
    return OX_ERROR;
  if (ox_geodesic_between(at, station, &line) != OX_OK) return OX_ERROR;
  if (!takes("hold.leg.station.nm", line.distance_nm))
    return ox_remark(OX_ERROR, remark, bytes, _("The station is more than 200 NM from the fix."));
  c->hold.station.given = true;
  c->hold.station.nm = line.distance_nm;
  c->hold.station.radial_deg = ox_magnetic_deg(line.from_bearing_deg, c->variation_deg);
  c->hold.station.elevation_ft =
      fix->station_elevation_given ? fix->station_elevation_ft : point->elevation_ft;
  return OX_OK;
}

ox_status ox_fix_settle(const ox_points *points, const ox_fix *fix, ox_case *c, char *remark,
                        size_t remark_bytes) {
  ox_case settled = *c;
  bool reads_dme = c->hold.leg_by == OX_LEG_BY_DISTANCE && c->hold.leg_end == OX_LEG_END_OUTBOUND;
  if (is_ahead(fix)) {
    double track_true_deg, nm;
    if (lead(fix, c, &track_true_deg, &nm, remark, remark_bytes) == OX_ERROR) return OX_ERROR;
    settled.arrival.distance_nm = nm;
  }
  if (fix->station[0] && c->hold.station.given && reads_dme &&
      settle_station(points, fix, &settled, remark, remark_bytes) == OX_ERROR)
    return OX_ERROR;
  *c = settled;
  return ox_no_remark(remark, remark_bytes);
}

/* --- its names --- */

static bool is_listed_point(const ox_points *points, const ox_fix *fix, const ox_case *c,
                            const char *name) {
  return fix->kind == OX_FIX_NAMED && strcmp(c->hold.fix, name) == 0 &&
         ox_points_find(points, name);
}

bool ox_fix_uses(const ox_points *points, const ox_fix *fix, const ox_case *c, const char *name) {
  if (strcmp(fix->present, name) == 0 || strcmp(fix->station, name) == 0) return true;
  if (is_listed_point(points, fix, c, name)) return true;
  if (fix->kind != OX_FIX_POINT || fix->point.kind == OX_POINT_AT) return false;
  return strcmp(fix->point.from, name) == 0 ||
         (fix->point.kind == OX_POINT_CROSSING && strcmp(fix->point.and_from, name) == 0);
}

static void follow(char name[OX_POINT_NAME_BYTES], const char *old, const char *new_name) {
  if (strcmp(name, old) != 0) return;
  strncpy(name, new_name, OX_POINT_NAME_BYTES - 1);
  name[OX_POINT_NAME_BYTES - 1] = '\0';
}

_Static_assert(OX_FIX_NAME_BYTES == OX_POINT_NAME_BYTES, "the fix may be a point of the list");

void ox_fix_rename(const ox_points *points, ox_fix *fix, ox_case *c, const char *name,
                   const char *new_name) {
  char old[OX_POINT_NAME_BYTES];
  if (strlen(name) >= sizeof old) return;
  strcpy(old, name); /* it may be the very text that is replaced */
  if (is_listed_point(points, fix, c, old)) follow(c->hold.fix, old, new_name);
  follow(fix->present, old, new_name);
  follow(fix->station, old, new_name);
  follow(fix->point.from, old, new_name);
  follow(fix->point.and_from, old, new_name);
}

double ox_crossing_error_nm(const ox_crossing *crossing, double error_deg) {
  double sine, cosine, sine_cut, unused;
  ox_sincos_deg(error_deg, &sine, &cosine);
  ox_sincos_deg(crossing->cut_deg, &sine_cut, &unused);
  if (sine_cut <= 0.0 || cosine <= 0.0) return OX_PLACE_DISTANCE_MAX_NM;
  double a_nm = crossing->a_nm * sine / cosine, b_nm = crossing->b_nm * sine / cosine;
  return hypot(a_nm, b_nm) / sine_cut;
}
