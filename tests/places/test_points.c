/* Named points: counted from each other, moved, renamed, and kept while they are in use. */
#include "ox_test.h"

#include "oxbow/route.h"

static ox_points points;
static char remark[OX_REMARK_BYTES];

static ox_point at(const char *name, double lat, double lon) {
  ox_point p = {.kind = OX_POINT_AT, .at = {lat, lon}};
  snprintf(p.name, sizeof p.name, "%s", name);
  return p;
}

static ox_point on_radial(const char *name, const char *from, double radial, double nm) {
  ox_point p = {.kind = OX_POINT_RADIAL, .radial_deg = radial, .nm = nm};
  snprintf(p.name, sizeof p.name, "%s", name);
  snprintf(p.from, sizeof p.from, "%s", from);
  return p;
}

static ox_point crossing(const char *name, const char *a, double radial_a, const char *b,
                         double radial_b) {
  ox_point p = on_radial(name, a, radial_a, 0);
  p.kind = OX_POINT_CROSSING;
  snprintf(p.and_from, sizeof p.and_from, "%s", b);
  p.and_radial_deg = radial_b;
  return p;
}

static ox_status add(ox_point p) { return ox_points_add(&points, &p, remark, sizeof remark); }

/* ALB with declination 13 W at 1 000 ft, COL east of it, LARCH on a radial, MAPLE on a crossing. */
static int some_points(void **state) {
  (void)state;
  points = (ox_points){0};
  ox_point alb = at("ALB", 42, -74);
  alb.declination_deg = -13;
  alb.elevation_ft = 1000;
  assert_int_equal(add(alb), OX_OK);
  assert_int_equal(add(at("COL", 42, -73)), OX_OK);
  assert_int_equal(add(on_radial("LARCH", "ALB", 13, 30)), OX_OK);
  assert_int_equal(add(crossing("MAPLE", "ALB", 58, "COL", 315)), OX_OK);
  return 0;
}

static ox_latlon place(const char *name) {
  ox_latlon p = {0};
  ox_status status = ox_points_place(&points, name, &p, remark, sizeof remark);
  if (status == OX_ERROR) fail_msg("%s: %s", name, remark);
  return p;
}

static void points_are_placed_from_what_they_are_counted_from(void **state) {
  (void)state;
  /* Radial 013 of a station with 13 W declination is true north. */
  ox_latlon larch = place("LARCH"), want;
  ox_place_along((ox_latlon){42, -74}, 0, 30, &want, NULL, NULL, 0);
  assert_close(larch.lat_deg, want.lat_deg, 1e-12, "latitude");
  assert_close(larch.lon_deg, -74, 1e-12, "longitude");
  /* 45 true from ALB and 315 true from COL: on the meridian between them. */
  assert_close(place("MAPLE").lon_deg, -73.5, 1e-10, "between");
}

static void a_dme_reading_is_slant_range_above_the_station(void **state) {
  (void)state;
  ox_point p = on_radial("SLANT", "ALB", 13, 10);
  p.dme = true;
  p.altitude_ft = 11000;
  assert_int_equal(add(p), OX_OK);
  ox_geodesic g;
  ox_geodesic_between((ox_latlon){42, -74}, place("SLANT"), &g);
  assert_close(g.distance_nm, 9.864, 6e-4, "10 000 ft above the station");
  strcpy(p.name, "UNDER");
  p.nm = 1;
  assert_int_equal(add(p), OX_ERROR);
  assert_non_null(strstr(remark, "UNDER: A DME cannot read"));
}

static void what_hangs_on_a_point_moves_with_it(void **state) {
  (void)state;
  assert_int_equal(ox_points_move(&points, "ALB", (ox_latlon){43, -75}, remark, sizeof remark),
                   OX_OK);
  assert_close(place("LARCH").lon_deg, -75, 1e-12, "LARCH");
  assert_int_equal(ox_points_move(&points, "LARCH", (ox_latlon){10, 20}, remark, sizeof remark),
                   OX_OK);
  assert_int_equal(ox_points_find(&points, "LARCH")->kind, OX_POINT_AT);
  assert_close(place("LARCH").lat_deg, 10, 0, "put there");
}

static void a_move_that_would_lose_another_point_is_refused(void **state) {
  (void)state;
  ox_points before = points;
  /* East of COL the two radials run apart. */
  assert_int_equal(ox_points_move(&points, "ALB", (ox_latlon){42, -71}, remark, sizeof remark),
                   OX_ERROR);
  assert_non_null(strstr(remark, "MAPLE"));
  assert_memory_equal(&points, &before, sizeof points);
  assert_int_equal(ox_points_move(&points, "ALB", (ox_latlon){95, 0}, NULL, 0), OX_ERROR);
  assert_int_equal(ox_points_move(&points, "NONE", (ox_latlon){0, 0}, NULL, 0), OX_ERROR);
  assert_memory_equal(&points, &before, sizeof points);
}

static void a_poor_cut_is_an_advisory_wherever_it_is_used(void **state) {
  (void)state;
  assert_int_equal(add(crossing("FLAT", "ALB", 43, "COL", 17)), OX_ADVISORY);
  assert_non_null(strstr(remark, "FLAT: The radials cut at only"));
  assert_int_equal(add(on_radial("BEYOND", "FLAT", 90, 5)), OX_ADVISORY);
  assert_non_null(strstr(remark, "FLAT"));
}

static void bad_points_are_refused_and_nothing_changes(void **state) {
  (void)state;
  ox_points before = points;
  char long_name[OX_POINT_NAME_BYTES + 1];
  memset(long_name, 'x', sizeof long_name - 1);
  long_name[sizeof long_name - 1] = '\0';
  const struct {
    ox_point point;
    const char *says;
  } rows[] = {
      {at("", 1, 1), "needs a name"},
      {at("  ", 1, 1), "needs a name"},
      {at("A\nB", 1, 1), "control"},
      {at("ALB", 1, 1), "already"},
      {at("NEW", 91, 1), "-90 to 90"},
      {at("NEW", (double)NAN, 1), "-90 to 90"},
      {on_radial("NEW", "NONE", 1, 1), "no point named NONE"},
      {on_radial("NEW", "NEW", 1, 1), "counted from itself"},
      {on_radial("NEW", "ALB", 999, 1), "-360 to 720"},
      {on_radial("NEW", "ALB", 1, -1), "0 to 1000"},
      {crossing("NEW", "ALB", 1, "NONE", 1), "no point named NONE"},
      {crossing("NEW", "ALB", 1, "ALB", 9), "same place"},
      {crossing("NEW", "ALB", 283, "COL", 90), "run"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    if (add(rows[i].point) != OX_ERROR || !strstr(remark, rows[i].says))
      fail_msg("row %zu: \"%s\"", i, remark);
    assert_int_equal(points.count, before.count);
  }
  assert_int_equal(ox_points_rename(&points, NULL, "ALB", long_name, NULL, 0), OX_ERROR);
  ox_latlon p = {1, 2};
  assert_int_equal(ox_points_place(&points, "NONE", &p, NULL, 0), OX_ERROR);
  assert_true(p.lat_deg == 1 && p.lon_deg == 2);
}

static void a_circle_of_points_is_refused(void **state) {
  (void)state;
  /* Only a file can bring that: LARCH from ALB, ALB from LARCH. */
  points.points[0] = on_radial("ALB", "LARCH", 90, 5);
  ox_latlon p;
  assert_int_equal(ox_points_place(&points, "LARCH", &p, remark, sizeof remark), OX_ERROR);
  assert_non_null(strstr(remark, "counted from itself"));
  assert_int_equal(ox_points_place(&points, "COL", &p, remark, sizeof remark), OX_OK);
}

static void crossings_of_crossings_end_at_once(void **state) {
  (void)state;
  /* Each is the crossing of the two before it: placed one by one that would be some 10^12 steps. */
  points = (ox_points){0};
  assert_int_equal(add(at("P0", 40, 10)), OX_OK);
  assert_int_equal(add(at("P1", 40, 11)), OX_OK);
  for (int i = 2; i < OX_POINTS_MAX; i++) {
    char name[16], a[16], b[16];
    snprintf(name, sizeof name, "P%d", i);
    snprintf(a, sizeof a, "P%d", i - 2);
    snprintf(b, sizeof b, "P%d", i - 1);
    ox_geodesic g;
    ox_geodesic_between(place(a), place(b), &g);
    double on_deg = fmod(g.from_bearing_deg + 300, 360);
    double back_deg = fmod(g.to_bearing_deg + 240, 360);
    if (add(crossing(name, a, on_deg, b, back_deg)) == OX_ERROR) fail_msg("%s", remark);
  }
  assert_int_equal(points.count, OX_POINTS_MAX);
  assert_int_equal(add(at("MORE", 1, 1)), OX_ERROR);
  assert_non_null(strstr(remark, "at most 128"));
}

static void a_new_name_is_taken_over_everywhere(void **state) {
  (void)state;
  ox_route route = {.count = 2, .names = {"ALB", "LARCH"}, .missed_approach = -1};
  ox_latlon larch = place("LARCH"), maple = place("MAPLE");
  assert_int_equal(ox_points_rename(&points, &route, "ALB", "\xc3\x89RABLE", remark, sizeof remark),
                   OX_OK);
  assert_null(ox_points_find(&points, "ALB"));
  assert_string_equal(route.names[0], "\xc3\x89RABLE");
  assert_string_equal(ox_points_find(&points, "LARCH")->from, "\xc3\x89RABLE");
  assert_true(place("LARCH").lat_deg == larch.lat_deg && place("MAPLE").lat_deg == maple.lat_deg);
  assert_int_equal(ox_points_rename(&points, &route, "LARCH", "COL", remark, sizeof remark),
                   OX_ERROR);
  assert_int_equal(ox_points_rename(&points, &route, "ALB", "X", remark, sizeof remark), OX_ERROR);
  /* The list's own text as the old name, and a name that stays. */
  assert_int_equal(ox_points_rename(&points, NULL, points.points[1].name, "ELM", NULL, 0), OX_OK);
  assert_int_equal(ox_points_rename(&points, NULL, "ELM", "ELM", NULL, 0), OX_OK);
  assert_string_equal(ox_points_find(&points, "MAPLE")->and_from, "ELM");
}

static void a_point_in_use_is_not_removed_and_its_users_are_named(void **state) {
  (void)state;
  ox_route route = {.count = 2, .names = {"ALB", "LARCH"}, .missed_approach = -1};
  assert_int_equal(ox_points_remove(&points, &route, "ALB", "case \"One\"", remark, sizeof remark),
                   OX_ERROR);
  assert_string_equal(remark, "ALB is used by LARCH, MAPLE, the route, case \"One\".");
  assert_int_equal(ox_points_remove(&points, &route, "COL", "", remark, sizeof remark), OX_ERROR);
  assert_string_equal(remark, "COL is used by MAPLE.");
  assert_int_equal(points.count, 4);
  assert_int_equal(ox_points_remove(&points, &route, "MAPLE", NULL, remark, sizeof remark), OX_OK);
  assert_int_equal(ox_points_remove(&points, &route, "COL", NULL, remark, sizeof remark), OX_OK);
  assert_int_equal(points.count, 2);
  assert_non_null(ox_points_find(&points, "LARCH"));
  assert_null(ox_points_find(&points, "COL"));
  assert_int_equal(ox_points_remove(&points, NULL, "COL", NULL, NULL, 0), OX_ERROR);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test_setup(points_are_placed_from_what_they_are_counted_from, some_points),
      cmocka_unit_test_setup(a_dme_reading_is_slant_range_above_the_station, some_points),
      cmocka_unit_test_setup(what_hangs_on_a_point_moves_with_it, some_points),
      cmocka_unit_test_setup(a_move_that_would_lose_another_point_is_refused, some_points),
      cmocka_unit_test_setup(a_poor_cut_is_an_advisory_wherever_it_is_used, some_points),
      cmocka_unit_test_setup(bad_points_are_refused_and_nothing_changes, some_points),
      cmocka_unit_test_setup(a_circle_of_points_is_refused, some_points),
      cmocka_unit_test_setup(crossings_of_crossings_end_at_once, some_points),
      cmocka_unit_test_setup(a_new_name_is_taken_over_everywhere, some_points),
      cmocka_unit_test_setup(a_point_in_use_is_not_removed_and_its_users_are_named, some_points),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
