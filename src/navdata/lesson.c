/* A published hold into a lesson: the case, the point of its fix, and how the case names it. */
#include <stdio.h>
#include <string.h>

#include "oxbow/fix.h"
#include "oxbow/navdata.h"

void ox_navdata_lesson_point(const ox_published_point *published, ox_point *out) {
  memset(out, 0, sizeof *out);
  snprintf(out->name, sizeof out->name, "%s", published->key.ident);
  out->kind = OX_POINT_AT;
  out->at = published->at;
  if (published->declination_given)
    out->declination_deg = published->declination_deg;
  else if (published->variation_given)
    out->declination_deg = published->variation_deg;
  if (published->elevation_given) out->elevation_ft = published->elevation_ft;
}

/* Idents are not unique in the world: a namesake elsewhere keeps the name, and the fix of this
 * case has its own place. */
static void name_fix(ox_points *points, const ox_point *point, ox_fix *out) {
  const ox_point *there = ox_points_find(points, point->name);
  ox_latlon at;
  *out = ox_fix_named();
  if (there && ox_points_place(points, point->name, &at, NULL, 0) != OX_ERROR &&
      at.lat_deg == point->at.lat_deg && at.lon_deg == point->at.lon_deg)
    return;
  if (!there && ox_points_add(points, point, NULL, 0) != OX_ERROR) return;
  out->kind = OX_FIX_POINT;
  out->point = *point;
  out->point.name[0] = '\0';
}

ox_status ox_navdata_lesson_case(const ox_navdata *data, size_t index, ox_points *points,
                                 ox_case *c, ox_fix *fix, char *remark, size_t remark_bytes) {
  ox_published_case published;
  ox_published_hold hold;
  ox_published_point at;
  ox_status status = ox_navdata_case(data, index, &published, remark, remark_bytes);
  if (status == OX_ERROR || ox_navdata_hold(data, index, &hold) == OX_ERROR) return OX_ERROR;
  *c = published.c;
  *fix = ox_fix_named();
  if (!published.placed || ox_navdata_point(data, &hold.fix, &at, NULL, 0) != OX_OK) return status;
  ox_point point;
  ox_navdata_lesson_point(&at, &point);
  name_fix(points, &point, fix);
  return status;
}
