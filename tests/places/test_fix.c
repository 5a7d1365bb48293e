/* Where the fix of a case is, what follows from it, and how it keeps up with its points. */
#include "ox_test.h"

#include "oxbow/fix.h"

static ox_points points;
static char remark[OX_REMARK_BYTES];

static void add(ox_point p, const char *name) {
  snprintf(p.name, sizeof p.name, "%s", name);
  assert_int_equal(ox_points_add(&points, &p, remark, sizeof remark), OX_OK);
}

static int two_stations(void **state) {
  points = (ox_points){0};
  add((ox_point){.kind = OX_POINT_AT, .at = {0, 10}, .elevation_ft = 300}, "OAK");
  add((ox_point){.kind = OX_POINT_AT, .at = {0, 11}}, "ELM");
  return 0;
}

static ox_fix crossing(double radial_deg, double and_radial_deg) {
  ox_fix fix = {.kind = OX_FIX_POINT,
                .point = {.kind = OX_POINT_CROSSING,
                          .from = "OAK",
                          .and_from = "ELM",
                          .radial_deg = radial_deg,
                          .and_radial_deg = and_radial_deg}};
  return fix;
}

static void a_name_has_the_place_of_the_point_that_has_it(void **state) {
  ox_case c = ox_case_default();
  ox_fix fix = ox_fix_named();
  ox_latlon at;
  strcpy(c.hold.fix, "LARCH");
  assert_false(ox_fix_has_place(&points, &fix, &c));
  assert_int_equal(ox_fix_place(&points, &fix, &c, &at, remark, sizeof remark), OX_ERROR);
  assert_string_equal(remark, "Nothing says where LARCH is.");
  strcpy(c.hold.fix, "ELM");
  assert_true(ox_fix_has_place(&points, &fix, &c));
  assert_int_equal(ox_fix_place(&points, &fix, &c, &at, remark, sizeof remark), OX_OK);
  assert_close(at.lon_deg, 11, 0, "longitude");
}

/* On the equator and symmetric: the crossing is half-way, at 45 degrees to both, where a spherical
 * triangle with base 1 degree has tan(height) = sin(half a degree) * tan(45). */
static void two_radials_cross_where_spherical_geometry_has_them(void **state) {
  ox_case c = ox_case_default();
  ox_fix fix = crossing(45, 315);
  ox_latlon at;
  assert_int_equal(ox_fix_place(&points, &fix, &c, &at, remark, sizeof remark), OX_OK);
  double half = acos(-1.0) / 360.0;
  assert_close(at.lon_deg, 10.5, 1e-9, "longitude");
  /* the ellipsoid's degree of latitude is 0.67 % shorter at the equator: 0.005 degrees */
  assert_close(at.lat_deg, atan(sin(half)) * 180.0 / acos(-1.0), 0.005, "latitude");
}

static void a_poor_cut_is_advised_by_the_name_of_the_fix(void **state) {
  ox_case c = ox_case_default();
  ox_fix fix = crossing(80, 280);
  ox_latlon at;
  strcpy(c.hold.fix, "LARCH");
  assert_int_equal(ox_fix_place(&points, &fix, &c, &at, remark, sizeof remark), OX_ADVISORY);
  assert_int_equal(strncmp(remark, "LARCH: ", 7), 0);
}

/* Plane geometry by hand: each radial 30 NM long, each 1 degree off, cut 90: 30 tan 1 * sqrt 2. */
static void an_error_of_the_radials_grows_as_the_cut_closes(void **state) {
  ox_crossing right = {.a_nm = 30, .b_nm = 30, .cut_deg = 90};
  assert_close(ox_crossing_error_nm(&right, 1), 30 * tan(acos(-1.0) / 180) * sqrt(2), 1e-12,
               "square cut");
  ox_crossing poor = {.a_nm = 30, .b_nm = 30, .cut_deg = 30};
  assert_close(ox_crossing_error_nm(&poor, 1), 2 * ox_crossing_error_nm(&right, 1), 1e-9,
               "30 degrees doubles it");
  ox_crossing none = {.a_nm = 30, .b_nm = 30, .cut_deg = 0};
  assert_true(isfinite(ox_crossing_error_nm(&none, 1)));
}

/* Not plane geometry: the radials moved by 0.1 degrees each way, and the farthest of the four
 * crossings; the estimate is within a tenth of the root of squares of the two single moves. */
static void the_error_is_what_moving_the_radials_gives(void **state) {
  ox_random r = {4};
  for (int i = 0; i < 500; i++) {
    ox_station a = {{40, -70}, 0}, b = {{40.3, -70.4}, 0};
    double to_b[2] = {ox_random_between(&r, 240, 290), ox_random_between(&r, 190, 220)};
    ox_crossing middle, by_a, by_b;
    if (ox_radials_cross(a, to_b[0], b, to_b[1], &middle, NULL, 0) == OX_ERROR ||
        middle.a_nm < 2 || middle.b_nm < 2 || middle.a_nm > 100 || middle.cut_deg < 10)
      continue;
    ox_geodesic ga, gb;
    if (ox_radials_cross(a, to_b[0] + 0.1, b, to_b[1], &by_a, NULL, 0) == OX_ERROR ||
        ox_radials_cross(a, to_b[0], b, to_b[1] + 0.1, &by_b, NULL, 0) == OX_ERROR)
      continue;
    ox_geodesic_between(middle.at, by_a.at, &ga);
    ox_geodesic_between(middle.at, by_b.at, &gb);
    double want = hypot(ga.distance_nm, gb.distance_nm);
    assert_close(ox_crossing_error_nm(&middle, 0.1), want, 0.1 * want, "error");
  }
}

static void a_fix_ahead_begins_the_arrival_that_far_away(void **state) {
  ox_case c = ox_case_default();
  ox_fix fix = {.kind = OX_FIX_AHEAD_S, .ahead_s = 60};
  double track_deg, gs_kt;
  c.aircraft.tas_kt = 120;
  c.arrival.heading_deg = 90;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){.from_deg = 90, .kt = 60, .north = OX_NORTH_TRUE};
  assert_int_equal(ox_fix_arrival(&c, &track_deg, &gs_kt), OX_OK);
  assert_close(gs_kt, 60, 1e-9, "ground speed");
  assert_int_equal(ox_fix_settle(&points, &fix, &c, remark, sizeof remark), OX_OK);
  assert_close(c.arrival.distance_nm, 1, 1e-12, "a minute at 60 kt");
  ox_case before = c;
  fix = (ox_fix){.kind = OX_FIX_AHEAD_NM, .ahead_nm = 101};
  assert_int_equal(ox_fix_settle(&points, &fix, &c, remark, sizeof remark), OX_ERROR);
  assert_true(ox_case_equal(&c, &before));
  assert_string_equal(remark, "A fix ahead may be at most 100 NM away.");
}

static void the_case_follows_its_station(void **state) {
  ox_case c = ox_case_default();
  ox_fix fix = {.kind = OX_FIX_POINT, .point = {.kind = OX_POINT_AT, .at = {0, 10.5}},
                .station = "OAK"};
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = 5;
  c.hold.station.given = true;
  c.variation_deg = 10;
  assert_int_equal(ox_fix_settle(&points, &fix, &c, remark, sizeof remark), OX_OK);
  /* half a degree of the equator, due west, 10 east variation */
  assert_close(c.hold.station.nm, 6378137.0 / 1852 * acos(-1.0) / 360, 1e-9, "distance");
  assert_angle_close(c.hold.station.radial_deg, 260, 1e-9, "radial");
  assert_close(c.hold.station.elevation_ft, 300, 0, "elevation");
  fix.station_elevation_given = true;
  fix.station_elevation_ft = 20;
  assert_int_equal(ox_fix_settle(&points, &fix, &c, remark, sizeof remark), OX_OK);
  assert_close(c.hold.station.elevation_ft, 20, 0, "its own elevation");
  fix.point.at.lon_deg = 20;
  assert_int_equal(ox_fix_settle(&points, &fix, &c, remark, sizeof remark), OX_ERROR);
  assert_string_equal(remark, "The station is more than 200 NM from the fix.");
}

static void a_fix_follows_the_names_of_its_points(void **state) {
  ox_case c = ox_case_default();
  ox_fix fix = crossing(45, 315);
  strcpy(fix.present, "ELM");
  assert_true(ox_fix_uses(&points, &fix, &c, "OAK"));
  assert_true(ox_fix_uses(&points, &fix, &c, "ELM"));
  assert_false(ox_fix_uses(&points, &fix, &c, "ASH"));
  ox_fix_rename(&points, &fix, &c, "ELM", "ASH");
  assert_string_equal(fix.point.and_from, "ASH");
  assert_string_equal(fix.present, "ASH");
  assert_true(ox_fix_uses(&points, &fix, &c, "ASH"));
  fix = ox_fix_named();
  strcpy(c.hold.fix, "OAK");
  assert_true(ox_fix_uses(&points, &fix, &c, "OAK"));
  ox_fix_rename(&points, &fix, &c, "OAK", "ASH");
  assert_string_equal(c.hold.fix, "ASH");
}

static void every_difference_of_a_fix_is_seen(void **state) {
  ox_fix a = crossing(45, 315), b = a;
  assert_true(ox_fix_equal(&a, &b));
  b.point.and_radial_deg = 316;
  assert_false(ox_fix_equal(&a, &b));
  b = a;
  b.point.at.lat_deg = 5; /* a crossing has no latitude of its own */
  assert_true(ox_fix_equal(&a, &b));
  strcpy(b.station, "OAK");
  assert_false(ox_fix_equal(&a, &b));
  b = a;
  b.kind = OX_FIX_NAMED;
  assert_false(ox_fix_equal(&a, &b));
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test_setup(a_name_has_the_place_of_the_point_that_has_it, two_stations),
      cmocka_unit_test_setup(two_radials_cross_where_spherical_geometry_has_them, two_stations),
      cmocka_unit_test_setup(a_poor_cut_is_advised_by_the_name_of_the_fix, two_stations),
      cmocka_unit_test(an_error_of_the_radials_grows_as_the_cut_closes),
      cmocka_unit_test(the_error_is_what_moving_the_radials_gives),
      cmocka_unit_test_setup(a_fix_ahead_begins_the_arrival_that_far_away, two_stations),
      cmocka_unit_test_setup(the_case_follows_its_station, two_stations),
      cmocka_unit_test_setup(a_fix_follows_the_names_of_its_points, two_stations),
      cmocka_unit_test(every_difference_of_a_fix_is_seen),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
