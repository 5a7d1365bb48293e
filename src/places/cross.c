/* Where two radials cross. Between the stations A and B and the crossing C lies a triangle of
 * which one side and the two angles on it are known:
 *
 *              C
 *            /   \           tan AC = sin c sin B / (cos c cos A sin B + sin A cos B)
 *          /       \         on a sphere (c the side AB), and the same for BC
 *        A --------- B
 *
 * On the ellipsoid that is the first guess only. Newton's method on the two distances finishes it:
 * a point on each geodesic, the gap between them, and the two steps that close the gap. */
#include <math.h>

#include "earth.h"
#include "oxbow/text.h"
#include "oxbow/units.h"
#include "remark.h"

/* Earth's mean radius (IUGG) in NM: for the first guess only. */
static const double mean_radius_nm = 6371008.8 / 1852.0;
/* A step below half of the promised 1e-9 NM ends the search. */
static const double step_end_nm = 5e-10;
/* Angles below this are the geodesic routine's noise, not a side of the base line. */
static const double on_line_deg = 1e-9;

typedef struct {
  double a_deg, b_deg; /* from the base line to each radial, positive on its right, (-180, 180] */
  double base_nm;
} triangle;

typedef struct {
  double a_nm, b_nm;
  ox_latlon at;
  double cut_deg;
} meeting;

static triangle triangle_of(ox_station a, double bearing_a_deg, ox_station b,
                            double bearing_b_deg) {
  ox_geodesic base = ox_earth_inverse(a.at, b.at);
  double back_deg = base.to_bearing_deg + 180.0;
  return (triangle){.a_deg = ox_norm180_deg(bearing_a_deg - base.from_bearing_deg),
                    .b_deg = ox_norm180_deg(back_deg - bearing_b_deg),
                    .base_nm = base.distance_nm};
}

/* +1, -1, or 0 on the base line itself. */
static int side_of(double angle_deg) {
  if (fabs(angle_deg) < on_line_deg || fabs(angle_deg) > 180.0 - on_line_deg) return 0;
  return angle_deg > 0 ? 1 : -1;
}

/* The first guess; needs the radials on one side and at most one of them on the base line. */
static meeting guess(triangle t) {
  double sin_a, cos_a, sin_b, cos_b, c = t.base_nm / mean_radius_nm;
  ox_sincos_deg(fabs(t.a_deg), &sin_a, &cos_a);
  ox_sincos_deg(fabs(t.b_deg), &sin_b, &cos_b);
  double ac = atan2(sin(c) * sin_b, cos(c) * cos_a * sin_b + sin_a * cos_b);
  double bc = atan2(sin(c) * sin_a, cos(c) * cos_b * sin_a + sin_b * cos_a);
  return (meeting){.a_nm = ac * mean_radius_nm, .b_nm = bc * mean_radius_nm};
}

/* One step towards the crossing; returns the larger change in NM. */
static double improve(ox_station a, double bearing_a_deg, ox_station b, double bearing_b_deg,
                      meeting *m) {
  double along_a_deg, along_b_deg;
  ox_latlon p = ox_earth_direct(a.at, bearing_a_deg, m->a_nm, &along_a_deg);
  ox_latlon q = ox_earth_direct(b.at, bearing_b_deg, m->b_nm, &along_b_deg);
  ox_geodesic gap = ox_earth_inverse(p, q);
  ox_vec w = ox_vec_scale(ox_unit(gap.from_bearing_deg), gap.distance_nm);
  ox_vec u = ox_unit(along_a_deg);
  /* The direction at q as seen at p: meridians converge, most of all near the poles. */
  ox_vec v = ox_unit(along_b_deg - (gap.to_bearing_deg - gap.from_bearing_deg));
  double uv = ox_vec_cross(u, v);
  m->at = p;
  m->cut_deg = atan2(fabs(uv), fabs(ox_vec_dot(u, v))) / OX_RAD_PER_DEG;
  if (fabs(uv) < 1e-6) return HUGE_VAL;
  double step_a_nm = ox_vec_cross(w, v) / uv, step_b_nm = ox_vec_cross(w, u) / uv;
  m->a_nm += step_a_nm;
  m->b_nm += step_b_nm;
  return fmax(fabs(step_a_nm), fabs(step_b_nm));
}

static int within_reach(const meeting *m, double margin_nm) {
  double far_nm = OX_PLACE_DISTANCE_MAX_NM + margin_nm;
  return m->a_nm >= -margin_nm && m->b_nm >= -margin_nm && m->a_nm <= far_nm && m->b_nm <= far_nm;
}

static int find(ox_station a, double bearing_a_deg, ox_station b, double bearing_b_deg,
                meeting *m) {
  for (int i = 0; i < 40; i++) {
    double step_nm = improve(a, bearing_a_deg, b, bearing_b_deg, m);
    if (!isfinite(step_nm) || !within_reach(m, OX_PLACE_DISTANCE_MAX_NM)) return 0;
    if (step_nm <= step_end_nm) return within_reach(m, 1e-6);
  }
  return 0;
}

static ox_status refuse_triangle(triangle t, char *remark, size_t bytes) {
  int side_a = side_of(t.a_deg), side_b = side_of(t.b_deg);
  int opposite = side_a * side_b < 0;
  double closing_deg =
      opposite ? fabs(t.a_deg) - fabs(t.b_deg) : 180.0 - fabs(t.a_deg) - fabs(t.b_deg);
  if ((side_a == 0 && side_b == 0) || (!opposite && closing_deg > 180.0 - OX_CUT_LEAST_DEG))
    return ox_remark(OX_ERROR, remark, bytes,
                     _("The two radials run along one line and give no fix; use another station."));
  if (fabs(closing_deg) < OX_CUT_LEAST_DEG)
    return ox_remark(OX_ERROR, remark, bytes,
                     _("The two radials are parallel within 1 degree and give no fix; use another "
                       "radial or station."));
  if (opposite || closing_deg < 0)
    return ox_remark(OX_ERROR, remark, bytes,
                     _("The two radials run apart and do not cross; check each radial, or its "
                       "reciprocal, and the station it is from."));
  return ox_remark(OX_ERROR, remark, bytes,
                   _("The two radials cross farther than 1000 NM from a station; that is not a "
                     "fix."));
}

static ox_status refuse_input(ox_station a, double radial_a_deg, ox_station b, double radial_b_deg,
                              char *remark, size_t bytes) {
  /* The checks of a place on a radial serve here too. */
  ox_latlon unused;
  if (ox_radial_place(a, radial_a_deg, 0, &unused, remark, bytes) != OX_OK ||
      ox_radial_place(b, radial_b_deg, 0, &unused, remark, bytes) != OX_OK)
    return OX_ERROR;
  double base_nm = ox_earth_inverse(a.at, b.at).distance_nm;
  if (base_nm < 0.01)
    return ox_remark(OX_ERROR, remark, bytes,
                     _("Both radials are from the same place; give two different stations."));
  if (base_nm > 2 * OX_PLACE_DISTANCE_MAX_NM)
    return ox_remark(OX_ERROR, remark, bytes,
                     _("The two stations are more than 2000 NM apart; use nearer ones."));
  return OX_OK;
}

ox_status ox_radials_cross(ox_station a, double radial_a_deg, ox_station b, double radial_b_deg,
                           ox_crossing *out, char *remark, size_t remark_bytes) {
  if (refuse_input(a, radial_a_deg, b, radial_b_deg, remark, remark_bytes) != OX_OK)
    return OX_ERROR;
  double bearing_a_deg = ox_true_deg(radial_a_deg, a.declination_deg);
  double bearing_b_deg = ox_true_deg(radial_b_deg, b.declination_deg);
  triangle t = triangle_of(a, bearing_a_deg, b, bearing_b_deg);
  int side_a = side_of(t.a_deg), side_b = side_of(t.b_deg);
  if ((side_a == 0 && side_b == 0) || side_a * side_b < 0)
    return refuse_triangle(t, remark, remark_bytes);

  meeting m = guess(t);
  if (!find(a, bearing_a_deg, b, bearing_b_deg, &m) || m.cut_deg < OX_CUT_LEAST_DEG)
    return refuse_triangle(t, remark, remark_bytes);
  *out = (ox_crossing){.at = m.at,
                       .a_nm = fmax(m.a_nm, 0),
                       .b_nm = fmax(m.b_nm, 0),
                       .cut_deg = m.cut_deg};
  if (m.cut_deg >= OX_CUT_POOR_DEG) return ox_no_remark(remark, remark_bytes);
  char cut[OX_FIGURES_BYTES];
  return ox_remark(OX_ADVISORY, remark, remark_bytes,
                   _("The radials cut at only %s degrees; below 30 degrees a small error of either "
                     "moves the fix far."),
                   ox_figures(cut, m.cut_deg, 1));
}
