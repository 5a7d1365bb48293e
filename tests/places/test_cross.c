/* Where two radials cross. */
#include "ox_test.h"

#include "oxbow/place.h"

static const double pi = 3.14159265358979323846;

static ox_crossing cross(ox_station a, double radial_a, ox_station b, double radial_b,
                         ox_status want, const char *what) {
  ox_crossing c = {.cut_deg = -1};
  char remark[OX_REMARK_BYTES];
  ox_status status = ox_radials_cross(a, radial_a, b, radial_b, &c, remark, sizeof remark);
  if (status != want) fail_msg("%s: status %d, \"%s\"", what, (int)status, remark);
  return c;
}

static void equator_and_meridian_cross_where_they_must(void **state) {
  (void)state;
  /* Closed form on the ellipsoid: the equator is an arc of the major axis, and the meridian of B
   * meets it at B's longitude at a right angle. */
  for (double lon = 0.5; lon < 16; lon += 0.7)
    for (double lat = -15; lat <= 15; lat += 6) {
      if (lat == 0) continue;
      ox_station a = {{0, -60}, 0}, b = {{lat, lon - 60}, 0};
      ox_crossing c = cross(a, 90, b, lat > 0 ? 180 : 0, OX_OK, "equator");
      assert_close(c.at.lat_deg, 0, 1e-11, "latitude");
      assert_close(c.at.lon_deg, lon - 60, 1e-11, "longitude");
      assert_close(c.a_nm, 6378137.0 / 1852 * lon * pi / 180, 1e-9, "along the equator");
      assert_close(c.cut_deg, 90, 1e-9, "cut");
    }
}

static void mirrored_radials_meet_on_the_middle_meridian(void **state) {
  (void)state;
  for (double off = 10; off <= 80; off += 10) {
    ox_station a = {{40, 9}, 5}, b = {{40, 13}, -7};
    /* The lines cut at about twice the angle at the base: poorly when flat, and when steep. */
    ox_status want = off == 10 || off == 80 ? OX_ADVISORY : OX_OK;
    ox_crossing c = cross(a, 90 - off - 5, b, 270 + off + 7, want, "mirrored");
    assert_close(c.at.lon_deg, 11, 1e-11, "middle");
    assert_close(c.a_nm, c.b_nm, 1e-9, "same distance");
  }
}

/* Great circles on a sphere of the mean radius, by vectors: an independent closed form. */
static void sphere_point(double lat, double lon, double v[3]) {
  v[0] = cos(lat) * cos(lon);
  v[1] = cos(lat) * sin(lon);
  v[2] = sin(lat);
}
static void product(const double a[3], const double b[3], double out[3]) {
  for (int i = 0; i < 3; i++)
    out[i] = a[(i + 1) % 3] * b[(i + 2) % 3] - a[(i + 2) % 3] * b[(i + 1) % 3];
}
static void circle_normal(double lat, double lon, double bearing, double out[3]) {
  double p[3], north[3] = {-sin(lat) * cos(lon), -sin(lat) * sin(lon), cos(lat)};
  double east[3] = {-sin(lon), cos(lon), 0}, along[3];
  sphere_point(lat, lon, p);
  for (int i = 0; i < 3; i++)
    along[i] = north[i] * cos(bearing) + east[i] * sin(bearing);
  product(p, along, out);
}

static void near_crossings_agree_with_the_sphere(void **state) {
  (void)state;
  /* The earth differs from the sphere by a part in 298 of a length at most; the bearings of short
   * lines by a tenth of a degree. 1 % of the longer distance covers both at good cuts. */
  ox_random random = {77};
  double k = pi / 180;
  for (int i = 0; i < 3000; i++) {
    double lat = ox_random_between(&random, -70, 70), lon = ox_random_between(&random, -170, 170);
    ox_latlon p = {lat, lon}, at_a, at_b;
    double to_a = ox_random_between(&random, 0, 360);
    double to_b = to_a + ox_random_between(&random, 50, 130);
    assert_int_equal(ox_place_along(p, to_a, ox_random_between(&random, 20, 80), &at_a, NULL, NULL,
                                    0), OX_OK);
    assert_int_equal(ox_place_along(p, to_b, ox_random_between(&random, 20, 80), &at_b, NULL, NULL,
                                    0), OX_OK);
    double bearing_a, bearing_b;
    ox_station a = {at_a, 0}, b = {at_b, 0};
    ox_radial_of(a, p, &bearing_a, NULL);
    ox_radial_of(b, p, &bearing_b, NULL);
    ox_crossing c = cross(a, bearing_a, b, bearing_b, OX_OK, "sphere");
    double na[3], nb[3], m[3], q[3];
    circle_normal(at_a.lat_deg * k, at_a.lon_deg * k, bearing_a * k, na);
    circle_normal(at_b.lat_deg * k, at_b.lon_deg * k, bearing_b * k, nb);
    product(na, nb, m);
    sphere_point(c.at.lat_deg * k, c.at.lon_deg * k, q);
    double length = sqrt(m[0] * m[0] + m[1] * m[1] + m[2] * m[2]);
    double dot = (m[0] * q[0] + m[1] * q[1] + m[2] * q[2]) / length;
    double apart_nm = acos(fmin(fabs(dot), 1)) * 6371008.8 / 1852;
    if (apart_nm > 0.01 * fmax(c.a_nm, c.b_nm)) fail_msg("%g NM from the sphere's", apart_nm);
  }
}

static void radials_of_a_known_place_lead_back_to_it(void **state) {
  (void)state;
  ox_random random = {1234};
  int advised = 0;
  for (int i = 0; i < 20000; i++) {
    ox_latlon p = {ox_random_between(&random, -89, 89), ox_random_between(&random, -180, 180)};
    double to_a = ox_random_between(&random, 0, 360);
    double cut = ox_random_between(&random, 4, 176);
    double a_nm = ox_random_between(&random, 1, 900), b_nm = ox_random_between(&random, 1, 900);
    ox_station a = {.declination_deg = ox_random_between(&random, -30, 30)};
    ox_station b = {.declination_deg = ox_random_between(&random, -30, 30)};
    assert_int_equal(ox_place_along(p, to_a, a_nm, &a.at, NULL, NULL, 0), OX_OK);
    assert_int_equal(ox_place_along(p, to_a + cut, b_nm, &b.at, NULL, NULL, 0), OX_OK);
    double radial_a, radial_b;
    assert_int_equal(ox_radial_of(a, p, &radial_a, NULL), OX_OK);
    assert_int_equal(ox_radial_of(b, p, &radial_b, NULL), OX_OK);
    double acute = cut > 90 ? 180 - cut : cut;
    ox_status want = acute < OX_CUT_POOR_DEG ? OX_ADVISORY : OX_OK;
    advised += want == OX_ADVISORY;
    ox_crossing c = cross(a, radial_a, b, radial_b, want, "round trip");
    ox_geodesic gap;
    assert_int_equal(ox_geodesic_between(c.at, p, &gap), OX_OK);
    assert_close(gap.distance_nm, 0, 1e-9, "place");
    assert_close(c.a_nm, a_nm, 1e-9, "distance from A");
    assert_close(c.b_nm, b_nm, 1e-9, "distance from B");
    assert_close(c.cut_deg, acute, 1e-6, "cut");
    ox_crossing d = cross(b, radial_b, a, radial_a, want, "swapped");
    assert_int_equal(ox_geodesic_between(c.at, d.at, &gap), OX_OK);
    assert_close(gap.distance_nm, 0, 1e-9, "A and B swapped");
  }
  assert_true(advised > 3000);
}

static void a_poor_cut_is_an_advisory_with_the_angle(void **state) {
  (void)state;
  ox_station a = {{40, 10}, 0}, b = {{40, 11}, 0};
  ox_crossing c;
  char remark[OX_REMARK_BYTES];
  assert_int_equal(ox_radials_cross(a, 60, b, 40, &c, remark, sizeof remark), OX_ADVISORY);
  assert_non_null(strstr(remark, "cut at only"));
  assert_close(c.cut_deg, 20, 1, "cut");
  assert_int_equal(ox_radials_cross(a, 60, b, 20, &c, remark, sizeof remark), OX_OK);
  assert_string_equal(remark, "");
}

static void a_radial_over_the_other_station_crosses_there(void **state) {
  (void)state;
  ox_station a = {{40, 10}, 0}, b = {{40, 11}, 0};
  double to_b;
  assert_int_equal(ox_radial_of(a, b.at, &to_b, NULL), OX_OK);
  ox_crossing c = cross(a, to_b, b, 180, OX_OK, "over B");
  ox_geodesic gap;
  assert_int_equal(ox_geodesic_between(c.at, b.at, &gap), OX_OK);
  assert_close(gap.distance_nm, 0, 1e-9, "at B");
  assert_close(c.b_nm, 0, 1e-9, "no way from B");
}

/* Stations 60 NM apart, B east of A; radials are true. */
static const struct {
  double a, b;
  const char *says;
} refused[] = {
    {0, 0, "parallel"},     {45, 45.3, "parallel"}, {0.4, 359.7, "parallel"},
    {0, 180, "parallel"},   {180, 180, "parallel"}, {270, 0, "run apart"},
    {330, 30, "run apart"}, {10, 170, "run apart"}, {200, 60, "run apart"},
    {180, 0, "parallel"},   {200, 20, "parallel"},  {90, 90, "one line"},   {90, 270, "one line"},
    {270, 90, "one line"},  {90.2, 269.9, "one line"},
    {1, 359.5, "1000 NM"},
};

static void radials_that_do_not_cross_are_refused_with_the_reason(void **state) {
  (void)state;
  /* Exactly on the equator, where east is along the base line. */
  ox_station a = {{0, 10}, 0}, b = {{0, 11}, 0};
  for (size_t i = 0; i < sizeof refused / sizeof *refused; i++) {
    ox_crossing c = {.cut_deg = -1};
    char why[OX_REMARK_BYTES] = "";
    ox_status status = ox_radials_cross(a, refused[i].a, b, refused[i].b, &c, why, sizeof why);
    if (status != OX_ERROR || !strstr(why, refused[i].says))
      fail_msg("%g and %g: status %d, \"%s\"", refused[i].a, refused[i].b, (int)status, why);
    assert_true(c.cut_deg == -1);
    assert_int_equal(ox_radials_cross(a, refused[i].a, b, refused[i].b, &c, NULL, 0), OX_ERROR);
  }
}

static void bad_stations_are_refused(void **state) {
  (void)state;
  ox_station a = {{40, 10}, 0}, far = {{-40, 100}, 0}, nowhere = {{95, 0}, 0};
  ox_crossing c;
  char why[OX_REMARK_BYTES];
  assert_int_equal(ox_radials_cross(a, 10, a, 50, &c, why, sizeof why), OX_ERROR);
  assert_non_null(strstr(why, "same place"));
  assert_int_equal(ox_radials_cross(a, 10, far, 50, &c, why, sizeof why), OX_ERROR);
  assert_non_null(strstr(why, "2000 NM"));
  assert_int_equal(ox_radials_cross(a, 10, nowhere, 50, &c, why, sizeof why), OX_ERROR);
  assert_non_null(strstr(why, "-90 to 90"));
  assert_int_equal(ox_radials_cross(a, (double)NAN, far, 50, &c, why, sizeof why), OX_ERROR);
  assert_int_equal(ox_radials_cross(a, 10, far, 800, &c, why, sizeof why), OX_ERROR);
}

static void any_two_radials_end_with_an_answer(void **state) {
  (void)state;
  ox_random random = {8};
  int count[3] = {0};
  for (int i = 0; i < 20000; i++) {
    ox_station a = {{ox_random_between(&random, -90, 90), ox_random_between(&random, -180, 180)},
                    ox_random_between(&random, -180, 180)};
    ox_station b = {.declination_deg = ox_random_between(&random, -180, 180)};
    assert_int_equal(ox_place_along(a.at, ox_random_between(&random, 0, 360),
                                    ox_random_between(&random, 0, 1000), &b.at, NULL, NULL, 0),
                     OX_OK);
    ox_crossing c;
    ox_status status = ox_radials_cross(a, ox_random_between(&random, -360, 720), b,
                                        ox_random_between(&random, -360, 720), &c, NULL, 0);
    count[status == OX_OK ? 0 : status == OX_ADVISORY ? 1 : 2]++;
    if (status == OX_ERROR) continue;
    assert_true(ox_latlon_valid(c.at));
    assert_true(c.a_nm >= 0 && c.a_nm <= 1000.001 && c.b_nm >= 0 && c.b_nm <= 1000.001);
    assert_true(c.cut_deg >= OX_CUT_LEAST_DEG && c.cut_deg <= 90);
  }
  assert_true(count[0] > 1000 && count[1] > 100 && count[2] > 1000);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(equator_and_meridian_cross_where_they_must),
      cmocka_unit_test(mirrored_radials_meet_on_the_middle_meridian),
      cmocka_unit_test(near_crossings_agree_with_the_sphere),
      cmocka_unit_test(radials_of_a_known_place_lead_back_to_it),
      cmocka_unit_test(a_poor_cut_is_an_advisory_with_the_angle),
      cmocka_unit_test(a_radial_over_the_other_station_crosses_there),
      cmocka_unit_test(radials_that_do_not_cross_are_refused_with_the_reason),
      cmocka_unit_test(bad_stations_are_refused),
      cmocka_unit_test(any_two_radials_end_with_an_answer),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
