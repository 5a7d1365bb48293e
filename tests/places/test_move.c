/* Points moved to a place: they come to lie there as nearly as their numbers are given, in the way
 * in which they are given. Derived: the places are those that ox_points_place gives. */
#include <math.h>

#include "ox_test.h"

#include "oxbow/route.h"
#include "oxbow/units.h"

static ox_points points;
static char remark[OX_REMARK_BYTES];

static ox_point *add(const char *name, ox_point p) {
  snprintf(p.name, sizeof p.name, "%s", name);
  assert_int_not_equal(ox_points_add(&points, &p, remark, sizeof remark), OX_ERROR);
  return &points.points[points.count - 1];
}

/* MAPLE with declination 14 W at 1 000 ft, ALDER south-east of it, one point of each kind, and
 * BIRCH counted from the one that is given by latitude and longitude. */
static int some_points(void **state) {
  (void)state;
  points = (ox_points){0};
  add("MAPLE", (ox_point){.kind = OX_POINT_AT, .at = {46.25, -72.5}, .declination_deg = -14,
                          .elevation_ft = 1000});
  add("ALDER", (ox_point){.kind = OX_POINT_AT, .at = {46.0, -72.1}, .declination_deg = -15});
  add("PLAIN", (ox_point){.kind = OX_POINT_AT, .at = {46.1, -72.6}});
  add("LARCH", (ox_point){.kind = OX_POINT_RADIAL, .from = "MAPLE", .radial_deg = 214, .nm = 13.5});
  add("METER", (ox_point){.kind = OX_POINT_RADIAL, .from = "MAPLE", .radial_deg = 100, .nm = 8,
                          .dme = true, .altitude_ft = 9000});
  add("CROSS", (ox_point){.kind = OX_POINT_CROSSING, .from = "MAPLE", .radial_deg = 190,
                          .and_from = "ALDER", .and_radial_deg = 280});
  add("BIRCH", (ox_point){.kind = OX_POINT_RADIAL, .from = "PLAIN", .radial_deg = 90, .nm = 5});
  return 0;
}

static double away_nm(const char *name, ox_latlon to) {
  ox_latlon at;
  ox_geodesic line;
  assert_int_not_equal(ox_points_place(&points, name, &at, remark, sizeof remark), OX_ERROR);
  assert_int_equal(ox_geodesic_between(at, to, &line), OX_OK);
  return line.distance_nm;
}

static void every_kind_comes_to_lie_where_it_is_wanted(void **state) {
  static const char *const names[] = {"PLAIN", "LARCH", "METER", "CROSS"};
  const ox_latlon to = {45.9871, -72.6234};
  for (size_t i = 0; i < sizeof names / sizeof *names; i++)
    for (int fine = 0; fine < 2; fine++) {
      some_points(state);
      ox_point before = *ox_points_find(&points, names[i]);
      assert_int_not_equal(
          ox_points_bring(&points, names[i], to, fine != 0, remark, sizeof remark), OX_ERROR);
      const ox_point *after = ox_points_find(&points, names[i]);
      assert_int_equal(after->kind, before.kind);
      assert_string_equal(after->from, before.from);
      /* Half a degree at some 17 NM is 0.15 NM; two radials that cut obliquely, twice that. */
      double bound_nm = after->kind == OX_POINT_AT ? 0.07 : after->kind == OX_POINT_RADIAL ? 0.2
                                                                                           : 0.5;
      assert_true(away_nm(names[i], to) <= bound_nm / (fine ? 10 : 1));
    }
}

static void numbers_are_round(void **state) {
  some_points(state);
  ox_points_bring(&points, "PLAIN", (ox_latlon){45.98765, -72.65432}, false, remark, sizeof remark);
  const ox_point *p = ox_points_find(&points, "PLAIN");
  assert_close(p->at.lat_deg, 45 + 59.3 / 60, 1e-12, "59.259 minutes");
  assert_close(p->at.lon_deg, -(72 + 39.3 / 60), 1e-12, "39.259 minutes");
  ox_points_bring(&points, "LARCH", (ox_latlon){45.98765, -72.65432}, false, remark, sizeof remark);
  p = ox_points_find(&points, "LARCH");
  assert_close(p->radial_deg, round(p->radial_deg), 0, "whole degrees");
  assert_close(p->nm * 10, round(p->nm * 10), 1e-9, "tenths");
}

/* BIRCH is counted from PLAIN. */
static void what_is_counted_from_it_moves_along(void **state) {
  some_points(state);
  ox_latlon plain = {46.2, -72.5}, birch_before, birch;
  ox_points_place(&points, "BIRCH", &birch_before, remark, sizeof remark);
  assert_int_equal(ox_points_bring(&points, "PLAIN", plain, false, remark, sizeof remark), OX_OK);
  ox_points_place(&points, "BIRCH", &birch, remark, sizeof remark);
  ox_geodesic line;
  ox_geodesic_between(plain, birch, &line);
  assert_close(line.distance_nm, 5, 1e-9, "still five miles");
  assert_true(fabs(birch.lat_deg - birch_before.lat_deg) > 0.05);
}

/* Over the station a DME reads the height (8 000 ft here), and no less. */
static void a_reading_is_never_less_than_the_height(void **state) {
  some_points(state);
  ox_latlon maple = ox_points_find(&points, "MAPLE")->at;
  assert_int_not_equal(ox_points_bring(&points, "METER", maple, false, remark, sizeof remark),
                       OX_ERROR);
  assert_close(ox_points_find(&points, "METER")->nm, 8000 / OX_FT_PER_NM, 1e-9, "the height");
}

static void what_cannot_be_is_refused_and_nothing_changes(void **state) {
  some_points(state);
  ox_points before = points;
  /* On the line between the stations the radials do not cross. */
  ox_geodesic line;
  ox_latlon between;
  ox_latlon maple = points.points[0].at, alder = points.points[1].at;
  ox_geodesic_between(maple, alder, &line);
  ox_place_along(maple, line.from_bearing_deg, line.distance_nm / 2, &between, NULL, NULL, 0);
  assert_int_equal(ox_points_bring(&points, "CROSS", between, true, remark, sizeof remark),
                   OX_ERROR);
  assert_true(strlen(remark) > 10);
  assert_memory_equal(&points, &before, sizeof points);
  assert_int_equal(ox_points_bring(&points, "OAK", maple, false, remark, sizeof remark), OX_ERROR);
  assert_non_null(strstr(remark, "OAK"));
  assert_int_equal(
      ox_points_bring(&points, "PLAIN", (ox_latlon){(double)NAN, 0}, false, remark, sizeof remark),
      OX_ERROR);
  assert_int_equal(
      ox_points_bring(&points, "PLAIN", (ox_latlon){91, 0}, false, remark, sizeof remark),
      OX_ERROR);
  assert_memory_equal(&points, &before, sizeof points);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_kind_comes_to_lie_where_it_is_wanted),
      cmocka_unit_test(numbers_are_round),
      cmocka_unit_test(what_is_counted_from_it_moves_along),
      cmocka_unit_test(a_reading_is_never_less_than_the_height),
      cmocka_unit_test(what_cannot_be_is_refused_and_nothing_changes),
  };
  return cmocka_run_group_tests_name("move", tests, NULL, NULL);
}
