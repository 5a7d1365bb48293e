/* Radials, DME slant range and the point ahead. */
#include "ox_test.h"

#include "oxbow/place.h"

static const ox_station albany = {{42.747277777777778, -73.803186111111111}, -13};

static void a_radial_is_magnetic_by_the_declination_of_the_station(void **state) {
  (void)state;
  /* Declination 13 W: radial 013 is true north, and so is radial 373. */
  ox_latlon north, same, on_radial;
  assert_int_equal(ox_place_along(albany.at, 0, 20, &north, NULL, NULL, 0), OX_OK);
  assert_int_equal(ox_radial_place(albany, 13, 20, &on_radial, NULL, 0), OX_OK);
  assert_int_equal(ox_radial_place(albany, 373, 20, &same, NULL, 0), OX_OK);
  assert_close(on_radial.lat_deg, north.lat_deg, 1e-12, "latitude");
  assert_close(on_radial.lon_deg, north.lon_deg, 1e-12, "longitude");
  assert_true(same.lat_deg == on_radial.lat_deg && same.lon_deg == on_radial.lon_deg);
  assert_true(on_radial.lat_deg > albany.at.lat_deg);
  assert_close(on_radial.lon_deg, albany.at.lon_deg, 1e-12, "true north keeps the meridian");
}

static void radial_and_distance_are_found_again(void **state) {
  (void)state;
  ox_random random = {31};
  for (int i = 0; i < 20000; i++) {
    ox_station s = {{ox_random_between(&random, -80, 80), ox_random_between(&random, -180, 180)},
                    ox_random_between(&random, -180, 180)};
    double radial = ox_random_between(&random, 0, 360), nm = ox_random_between(&random, 1, 1000);
    double radial_again, nm_again;
    ox_latlon p;
    assert_int_equal(ox_radial_place(s, radial, nm, &p, NULL, 0), OX_OK);
    assert_int_equal(ox_radial_of(s, p, &radial_again, &nm_again), OX_OK);
    assert_close(nm_again, nm, 1e-10, "distance");
    assert_angle_close(radial_again, radial, 1e-9, "radial");
    assert_true(radial_again >= 0 && radial_again < 360);
  }
}

static void figures_out_of_range_are_refused_and_the_range_is_named(void **state) {
  (void)state;
  static const struct {
    double declination_deg, radial_deg, nm;
    const char *says;
  } rows[] = {
      {0, 721, 1, "-360 to 720"},  {0, -361, 1, "-360 to 720"},
      {0, (double)NAN, 1, "-360 to 720"},
      {0, 90, -0.1, "0 to 1000 NM"}, {0, 90, 1000.1, "0 to 1000 NM"},
      {0, 90, (double)NAN, "0 to 1000 NM"},
      {180.5, 90, 1, "-180 to 180"}, {(double)NAN, 90, 1, "-180 to 180"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_latlon out = {1, 2};
    char why[OX_REMARK_BYTES];
    ox_station s = {albany.at, rows[i].declination_deg};
    assert_int_equal(ox_radial_place(s, rows[i].radial_deg, rows[i].nm, &out, why, sizeof why),
                     OX_ERROR);
    if (!strstr(why, rows[i].says)) fail_msg("row %zu: \"%s\"", i, why);
    assert_true(out.lat_deg == 1 && out.lon_deg == 2);
  }
  double radial = 5;
  ox_station bad = {albany.at, (double)NAN};
  assert_int_equal(ox_radial_of(bad, albany.at, &radial, NULL), OX_ERROR);
  assert_true(radial == 5);
}

/* Heights above the station, DME reading, ground distance. Rows without a source: sqrt(D2 - h2)
 * with 6 076.12 ft to the NM, worked out by hand. */
static const struct {
  const char *source;
  double height_ft, dme_nm, ground_nm, tolerance_nm;
} slant[] = {
    {"CNATRA P-801 figure 7, 36 000 ft, 10 DME", 36000, 10, 8.056, 5e-4},
    {"CNATRA P-801 figure 7, 36 000 ft, 60 DME", 36000, 60, 59.707, 5e-4},
    {"question bank, 6 000 ft, 5 DME", 6000, 5, 4.902, 5e-4},
    {"question bank, 36 000 ft, ground 15", 36000, 16.128, 15, 6e-4},
    {"10 000 ft, 10 DME", 10000, 10, 9.864, 6e-4},
    {"10 000 ft, 15 DME", 10000, 15, 14.909, 6e-4},
    {"10 000 ft, 28 DME", 10000, 28, 27.952, 6e-4},
    {"10 000 ft, 20 DME", 10000, 20, 19.932, 6e-4},
    {"5 000 ft, 10 DME", 5000, 10, 9.966, 6e-4},
    {"ICAO Doc 8168 Vol II App C-15: 14 000 ft, 30 NM (0.027 h2 there)", 14000, 30, 29.912, 1.5e-3},
    {"sea level", 0, 12.5, 12.5, 1e-12},
};

static void slant_range_agrees_with_the_worked_cases(void **state) {
  (void)state;
  for (size_t i = 0; i < sizeof slant / sizeof *slant; i++) {
    double ground = -1;
    assert_int_equal(
        ox_slant_to_ground_nm(slant[i].dme_nm, 0, slant[i].height_ft, &ground, NULL, 0), OX_OK);
    assert_close(ground, slant[i].ground_nm, slant[i].tolerance_nm, slant[i].source);
    double above = -1;
    assert_int_equal(ox_slant_to_ground_nm(slant[i].dme_nm, 1234, slant[i].height_ft + 1234,
                                           &above, NULL, 0), OX_OK);
    assert_close(above, ground, 1e-12, "only the height above the station counts");
    assert_close(ox_ground_to_slant_nm(ground, 0, slant[i].height_ft), slant[i].dme_nm, 1e-12,
                 slant[i].source);
  }
}

static void overhead_the_dme_reads_the_height_and_never_less(void **state) {
  (void)state;
  /* Height over 6 076.12 ft: 6 000 ft 0.987 NM; 12 000 ft 1.975 NM; 20 000 ft 3.292 NM. */
  static const double rows[][2] = {{6000, 0.987}, {12000, 1.975}, {20000, 3.292}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    double overhead = ox_ground_to_slant_nm(0, 0, rows[i][0]), ground = -1;
    char why[OX_REMARK_BYTES];
    assert_close(overhead, rows[i][1], 6e-4, "overhead");
    assert_int_equal(ox_slant_to_ground_nm(overhead, 0, rows[i][0], &ground, NULL, 0), OX_OK);
    assert_close(ground, 0, 1e-6, "over the station");
    ground = -1;
    assert_int_equal(
        ox_slant_to_ground_nm(overhead - 0.01, 0, rows[i][0], &ground, why, sizeof why), OX_ERROR);
    assert_non_null(strstr(why, "reads the height"));
    assert_true(ground == -1);
  }
}

static void slant_range_refuses_what_is_no_number(void **state) {
  (void)state;
  double ground = -1;
  static const double rows[][3] = {{(double)NAN, 0, 0}, {5, (double)NAN, 0},
                                   {5, 0, (double)NAN},
                                   {-1, 0, 0},    {1001, 0, 0},   {5, 40000, 0},
                                   {5, 0, 300000}, {5, -3000, 0}, {5, 0, -3000}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    assert_int_equal(ox_slant_to_ground_nm(rows[i][0], rows[i][1], rows[i][2], &ground, NULL, 0),
                     OX_ERROR);
  assert_true(ground == -1);
}

static void a_point_ahead_lies_on_the_track_after_the_time(void **state) {
  (void)state;
  /* 45 s at 120 kt are 1.5 NM. */
  ox_latlon by_time, by_distance;
  assert_int_equal(ox_place_ahead(albany.at, 214, 120, 45, &by_time, NULL, 0), OX_OK);
  assert_int_equal(ox_place_along(albany.at, 214, 1.5, &by_distance, NULL, NULL, 0), OX_OK);
  assert_true(by_time.lat_deg == by_distance.lat_deg && by_time.lon_deg == by_distance.lon_deg);
  ox_geodesic g;
  assert_int_equal(ox_geodesic_between(albany.at, by_time, &g), OX_OK);
  assert_close(g.distance_nm, 1.5, 1e-10, "distance");
  assert_angle_close(g.from_bearing_deg, 214, 1e-8, "track");
  ox_latlon here;
  assert_int_equal(ox_place_ahead(albany.at, 214, 0, 600, &here, NULL, 0), OX_OK);
  assert_close(here.lat_deg, albany.at.lat_deg, 1e-13, "no ground speed, no way");
}

static void a_point_ahead_needs_a_speed_and_a_time_in_range(void **state) {
  (void)state;
  ox_latlon out = {1, 2};
  char why[OX_REMARK_BYTES];
  assert_int_equal(ox_place_ahead(albany.at, 0, -1, 10, &out, why, sizeof why), OX_ERROR);
  assert_non_null(strstr(why, "0 to 2000 kt"));
  assert_int_equal(ox_place_ahead(albany.at, 0, 100, -1, &out, why, sizeof why), OX_ERROR);
  assert_non_null(strstr(why, "0 to 36000 seconds"));
  assert_int_equal(ox_place_ahead(albany.at, 0, 2000, 36000, &out, why, sizeof why), OX_ERROR);
  assert_non_null(strstr(why, "0 to 1000 NM"));
  assert_int_equal(ox_place_ahead(albany.at, (double)NAN, 100, 10, &out, NULL, 0), OX_ERROR);
  assert_true(out.lat_deg == 1 && out.lon_deg == 2);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_radial_is_magnetic_by_the_declination_of_the_station),
      cmocka_unit_test(radial_and_distance_are_found_again),
      cmocka_unit_test(figures_out_of_range_are_refused_and_the_range_is_named),
      cmocka_unit_test(slant_range_agrees_with_the_worked_cases),
      cmocka_unit_test(overhead_the_dme_reads_the_height_and_never_less),
      cmocka_unit_test(slant_range_refuses_what_is_no_number),
      cmocka_unit_test(a_point_ahead_lies_on_the_track_after_the_time),
      cmocka_unit_test(a_point_ahead_needs_a_speed_and_a_time_in_range),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
