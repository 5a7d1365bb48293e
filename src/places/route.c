/* A route: its legs, the course that a hold on it takes from the arriving leg, and the rule that a
 * hold of a missed approach comes after the missed approach point. */
#include <math.h>

#include "oxbow/route.h"
#include "oxbow/text.h"
#include "remark.h"

ox_status ox_route_leg(const ox_points *points, const ox_route *route, size_t index,
                       ox_geodesic *out, char *remark, size_t remark_bytes) {
  if (index < 1 || index >= route->count)
    return ox_remark(OX_ERROR, remark, remark_bytes, _("No leg of the route arrives there."));
  ox_latlon from, to;
  ox_status first = ox_points_place(points, route->names[index - 1], &from, remark, remark_bytes);
  if (first == OX_ERROR) return OX_ERROR;
  /* An advisory of the first point is not to be wiped out by the second. */
  char second_remark[OX_REMARK_BYTES];
  ox_status second = ox_points_place(points, route->names[index], &to, second_remark,
                                     sizeof second_remark);
  if (second == OX_ERROR || (second == OX_ADVISORY && first == OX_OK))
    ox_remark(second, remark, remark_bytes, "%s", second_remark);
  if (second == OX_ERROR) return OX_ERROR;
  ox_geodesic leg;
  if (ox_geodesic_between(from, to, &leg) != OX_OK) return OX_ERROR;
  if (leg.distance_nm < 1e-6)
    return ox_remark(OX_ERROR, remark, remark_bytes, _("%s and %s are the same place."),
                     route->names[index - 1], route->names[index]);
  *out = leg;
  return first == OX_ADVISORY ? first : second;
}

ox_status ox_route_inbound_deg(const ox_points *points, const ox_route *route, size_t index,
                               double variation_deg, double *inbound_deg, char *remark,
                               size_t remark_bytes) {
  if (!isfinite(variation_deg) || fabs(variation_deg) > 180.0)
    return ox_remark(OX_ERROR, remark, remark_bytes,
                     _("The variation must be -180 to 180 degrees, east positive."));
  ox_geodesic leg;
  ox_status status =
      ox_route_leg(points, route, index > 0 ? index : 1, &leg, remark, remark_bytes);
  if (status == OX_ERROR) return OX_ERROR;
  double course_deg = index > 0 ? leg.to_bearing_deg : leg.from_bearing_deg;
  *inbound_deg = ox_magnetic_deg(course_deg, variation_deg);
  if (index > 0) return status;
  return ox_remark(OX_ADVISORY, remark, remark_bytes,
                   _("The route begins at %s: the course of its first leg is proposed."),
                   route->names[0]);
}

ox_status ox_route_hold_allowed(const ox_route *route, size_t index, char *remark,
                                size_t remark_bytes) {
  if (index >= route->count)
    return ox_remark(OX_ERROR, remark, remark_bytes, _("That is no point of the route."));
  int missed = route->missed_approach;
  if (missed >= (int)route->count || missed < -1)
    return ox_remark(OX_ERROR, remark, remark_bytes,
                     _("The missed approach point is no point of the route."));
  if (missed >= 0 && (int)index <= missed)
    return ox_remark(OX_ERROR, remark, remark_bytes,
                     _("The hold belongs to the missed approach: it must be after %s, the missed "
                       "approach point."),
                     route->names[missed]);
  return ox_no_remark(remark, remark_bytes);
}
