/* The local plane about a fix. */
#include "ox_test.h"

#include "oxbow/place.h"

static void distance_and_bearing_from_the_origin_are_the_geodesics(void **state) {
  (void)state;
  ox_random random = {12};
  for (int i = 0; i < 20000; i++) {
    ox_latlon origin = {ox_random_between(&random, -90, 90), ox_random_between(&random, -180, 180)};
    double bearing = ox_random_between(&random, 0, 360), nm = ox_random_between(&random, 0.1, 900);
    ox_latlon place, again;
    ox_vec v;
    assert_int_equal(ox_place_along(origin, bearing, nm, &place, NULL, NULL, 0), OX_OK);
    assert_int_equal(ox_plane_from_place(origin, place, &v), OX_OK);
    assert_close(ox_vec_length(v), nm, 1e-10, "distance");
    assert_close(v.x, nm * sin(bearing * acos(-1.0) / 180), 1e-9, "east");
    assert_close(v.y, nm * cos(bearing * acos(-1.0) / 180), 1e-9, "north");
    assert_int_equal(ox_plane_to_place(origin, v, &again), OX_OK);
    ox_geodesic gap;
    assert_int_equal(ox_geodesic_between(place, again, &gap), OX_OK);
    assert_close(gap.distance_nm, 0, 1e-9, "there and back");
  }
}

static void the_origin_is_the_origin(void **state) {
  (void)state;
  ox_vec v = {9, 9};
  ox_latlon p, fix = {42.5, -73.5};
  assert_int_equal(ox_plane_from_place(fix, fix, &v), OX_OK);
  assert_close(ox_vec_length(v), 0, 0, "at the fix");
  assert_int_equal(ox_plane_to_place(fix, (ox_vec){0, 0}, &p), OX_OK);
  assert_close(p.lat_deg, fix.lat_deg, 1e-13, "latitude");
  assert_close(p.lon_deg, fix.lon_deg, 1e-13, "longitude");
}

static void near_the_fix_lengths_across_are_true_as_well(void **state) {
  (void)state;
  /* Azimuthal equidistant: across, a length is short by d2 / (6 R2): at 50 NM a part in 28 000. */
  ox_latlon fix = {42.5, -73.5}, a, b;
  assert_int_equal(ox_plane_to_place(fix, (ox_vec){50, -1}, &a), OX_OK);
  assert_int_equal(ox_plane_to_place(fix, (ox_vec){50, 1}, &b), OX_OK);
  ox_geodesic g;
  assert_int_equal(ox_geodesic_between(a, b, &g), OX_OK);
  double radius_nm = 6371008.8 / 1852;
  assert_close(g.distance_nm, 2 * (1 - 50 * 50 / (6 * radius_nm * radius_nm)), 1e-6, "across");
}

static void what_cannot_be_placed_is_refused(void **state) {
  (void)state;
  ox_latlon fix = {0, 0}, p = {1, 2};
  ox_vec v = {3, 4};
  assert_int_equal(ox_plane_to_place(fix, (ox_vec){(double)NAN, 0}, &p), OX_ERROR);
  assert_int_equal(ox_plane_to_place(fix, (ox_vec){0, (double)INFINITY}, &p), OX_ERROR);
  assert_int_equal(ox_plane_to_place(fix, (ox_vec){1000, 10}, &p), OX_ERROR);
  assert_int_equal(ox_plane_to_place((ox_latlon){91, 0}, (ox_vec){0, 0}, &p), OX_ERROR);
  assert_int_equal(ox_plane_from_place(fix, (ox_latlon){(double)NAN, 0}, &v), OX_ERROR);
  assert_int_equal(ox_plane_from_place((ox_latlon){0, 200}, fix, &v), OX_ERROR);
  assert_true(p.lat_deg == 1 && p.lon_deg == 2 && v.x == 3 && v.y == 4);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(distance_and_bearing_from_the_origin_are_the_geodesics),
      cmocka_unit_test(the_origin_is_the_origin),
      cmocka_unit_test(near_the_fix_lengths_across_are_true_as_well),
      cmocka_unit_test(what_cannot_be_placed_is_refused),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
