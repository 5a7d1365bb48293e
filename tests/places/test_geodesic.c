/* The earth. PROJ's own command `geod` is asked in the same run; besides that stand closed forms
 * on the equator and the meridians, and published lines. */
#include "ox_test.h"

#include "oxbow/place.h"

static ox_geodesic line(double lat1, double lon1, double lat2, double lon2) {
  ox_geodesic g = {0};
  assert_int_equal(ox_geodesic_between((ox_latlon){lat1, lon1}, (ox_latlon){lat2, lon2}, &g),
                   OX_OK);
  return g;
}

/* Published lines, all from memory. metres < 0 or bearings < 0: not asked. */
static const struct {
  const char *source;
  double lat1, lon1, lat2, lon2, metres, leaving_deg, arriving_deg, metre_tolerance;
} published[] = {
    {"GeodTest.dat, first line (from memory)", 36.530042355041, 0, -48.164270779097768864,
     5.762344694676510456, 9398502.0434687, 176.125875162171, 175.334308316285410561, 1e-6},
    {"GeographicLib test set, first row (from memory)", 35.60777, -139.44815, -11.17491, -69.95921,
     8935244.5604818305, 111.098748429560326, 129.289270889708762, 1e-6},
    {"GeographicLib manual, 40.6N 73.8W to 51.6N 0.5W (from memory)", 40.6, -73.8, 51.6, -0.5,
     5551759.400319, -1, -1, 1e-5},
    {"Flinders Peak to Buninyong, GDA technical manual, GRS 80 (from memory)",
     -(37 + 57 / 60.0 + 3.72030 / 3600), 144 + 25 / 60.0 + 29.52440 / 3600,
     -(37 + 39 / 60.0 + 10.15610 / 3600), 143 + 55 / 60.0 + 35.38390 / 3600, 54972.271,
     306 + 52 / 60.0 + 5.37 / 3600, 307 + 10 / 60.0 + 25.07 / 3600, 1e-3},
};

static void published_lines_agree(void **state) {
  (void)state;
  for (size_t i = 0; i < sizeof published / sizeof *published; i++) {
    const char *source = published[i].source;
    ox_geodesic g =
        line(published[i].lat1, published[i].lon1, published[i].lat2, published[i].lon2);
    assert_close(g.distance_nm * 1852, published[i].metres, published[i].metre_tolerance, source);
    if (published[i].leaving_deg < 0) continue;
    /* Two decimals of a second are 3e-6 degrees. */
    double tolerance_deg = published[i].metre_tolerance > 1e-4 ? 3e-6 : 1e-12;
    assert_angle_close(g.from_bearing_deg, published[i].leaving_deg, tolerance_deg, source);
    assert_angle_close(g.to_bearing_deg, published[i].arriving_deg, tolerance_deg, source);
  }
}

static void along_the_equator_it_is_an_arc_of_the_major_axis(void **state) {
  (void)state;
  const double a_nm = 6378137.0 / 1852;
  for (double lon = 1; lon < 179; lon += 7) {
    ox_geodesic g = line(0, -20, 0, lon - 20);
    assert_close(g.distance_nm, a_nm * lon * acos(-1.0) / 180, 1e-9, "equator");
    assert_angle_close(g.from_bearing_deg, 90, 1e-12, "equator");
  }
}

static void a_quarter_of_the_meridian_is_the_known_length(void **state) {
  (void)state;
  /* 10 001 965.729 m for WGS 84; and by the series a pi/2 (1 - f/2 + f2/16 + f3/32 ...), with
   * n = f/(2-f): a/(1+n) pi/2 (1 + n2/4 + n4/64 + n6/256), F. R. Helmert. */
  double f = 1 / 298.257223563, n = f / (2 - f);
  double helmert = 6378137.0 / (1 + n) * acos(0.0) *
                   (1 + n * n / 4 + n * n * n * n / 64 + n * n * n * n * n * n / 256);
  ox_geodesic g = line(0, 30, 90, 30);
  assert_close(g.distance_nm * 1852, helmert, 1e-6, "Helmert's series");
  assert_close(g.distance_nm * 1852, 10001965.729, 1e-3, "known length");
  assert_angle_close(g.from_bearing_deg, 0, 1e-12, "north");
}

enum { ASKED = 60 };

/* Runs geod with options on lines of figures; fails the test when it does not answer them all. */
static void ask_geod(const char *options, const char *lines, double answers[ASKED][3]) {
  static char command[16384];
  snprintf(command, sizeof command, "printf -- '%s' | geod +ellps=WGS84 %s", lines, options);
  FILE *pipe = popen(command, "r");
  assert_non_null(pipe);
  int read = 0;
  while (read < ASKED && fscanf(pipe, "%lf %lf %lf", &answers[read][0], &answers[read][1],
                                &answers[read][2]) == 3)
    read++;
  int status = pclose(pipe);
  if (status != 0 || read != ASKED) fail_msg("geod (package proj-bin) answered %d lines", read);
}

static void the_command_of_the_reference_library_agrees(void **state) {
  (void)state;
  ox_random random = {424};
  static char lines[12288];
  double places[ASKED][4], want[ASKED][3];
  size_t length = 0;
  for (int i = 0; i < ASKED; i++) {
    for (int k = 0; k < 4; k++)
      places[i][k] = ox_random_between(&random, k % 2 ? -180 : -89, k % 2 ? 180 : 89);
    length += (size_t)snprintf(lines + length, sizeof lines - length,
                               "%.12f %.12f %.12f %.12f\\n", places[i][0], places[i][1],
                               places[i][2], places[i][3]);
  }
  ask_geod("-I -f '%.11f' -F '%.7f'", lines, want);
  for (int i = 0; i < ASKED; i++) {
    ox_geodesic g = line(places[i][0], places[i][1], places[i][2], places[i][3]);
    assert_angle_close(g.from_bearing_deg, want[i][0], 1e-9, "leaving");
    /* geod gives the bearing back, from the second place to the first. */
    assert_angle_close(g.to_bearing_deg, want[i][1] + 180, 1e-9, "arriving");
    assert_close(g.distance_nm * 1852, want[i][2], 1e-6, "metres");
  }
}

static void the_direct_command_agrees_as_well(void **state) {
  (void)state;
  ox_random random = {99};
  static char lines[12288];
  double from[ASKED][4], want[ASKED][3]; /* place, bearing, NM */
  size_t length = 0;
  for (int i = 0; i < ASKED; i++) {
    from[i][0] = ox_random_between(&random, -85, 85);
    from[i][1] = ox_random_between(&random, -180, 180);
    from[i][2] = ox_random_between(&random, 0, 360);
    from[i][3] = ox_random_between(&random, 0, 1000);
    length += (size_t)snprintf(lines + length, sizeof lines - length,
                               "%.12f %.12f %.12f %.8f\\n", from[i][0], from[i][1], from[i][2],
                               from[i][3] * 1852);
  }
  ask_geod("-f '%.12f'", lines, want);
  for (int i = 0; i < ASKED; i++) {
    ox_latlon to;
    double arriving;
    assert_int_equal(ox_place_along((ox_latlon){from[i][0], from[i][1]}, from[i][2], from[i][3],
                                    &to, &arriving, NULL, 0), OX_OK);
    assert_close(to.lat_deg, want[i][0], 1e-11, "latitude");
    assert_angle_close(to.lon_deg, want[i][1], 1e-10, "longitude");
    assert_angle_close(arriving, want[i][2] + 180, 1e-9, "arriving");
  }
}

static void there_and_back_is_the_same_place(void **state) {
  (void)state;
  ox_random random = {5};
  for (int i = 0; i < 20000; i++) {
    ox_latlon from = {ox_random_between(&random, -90, 90), ox_random_between(&random, -180, 180)};
    double bearing = ox_random_between(&random, 0, 360), nm = ox_random_between(&random, 0, 1000);
    double arriving;
    ox_latlon to, home;
    assert_int_equal(ox_place_along(from, bearing, nm, &to, &arriving, NULL, 0), OX_OK);
    assert_true(ox_latlon_valid(to));
    assert_int_equal(ox_place_along(to, arriving + 180, nm, &home, NULL, NULL, 0), OX_OK);
    ox_geodesic gap = line(from.lat_deg, from.lon_deg, home.lat_deg, home.lon_deg);
    assert_close(gap.distance_nm, 0, 1e-10, "there and back");
    ox_geodesic g = line(from.lat_deg, from.lon_deg, to.lat_deg, to.lon_deg);
    assert_close(g.distance_nm, nm, 1e-10, "distance");
  }
}

static void places_off_the_earth_are_refused(void **state) {
  (void)state;
  static const ox_latlon bad[] = {{90.5, 0},   {-91, 0},         {0, 181},
                                  {0, -180.5}, {(double)NAN, 0}, {0, (double)NAN}};
  ox_geodesic g = {.distance_nm = 7};
  ox_latlon out = {1, 2}, good = {0, 0};
  char why[OX_REMARK_BYTES];
  for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
    assert_int_equal(ox_geodesic_between(bad[i], good, &g), OX_ERROR);
    assert_int_equal(ox_geodesic_between(good, bad[i], &g), OX_ERROR);
    assert_int_equal(ox_place_along(bad[i], 0, 1, &out, NULL, why, sizeof why), OX_ERROR);
    assert_non_null(strstr(why, "-90 to 90"));
  }
  assert_true(g.distance_nm == 7 && out.lat_deg == 1 && out.lon_deg == 2);
}

static void places_at_the_edges_are_taken(void **state) {
  (void)state;
  static const ox_latlon edge[] = {{90, 0}, {-90, 180}, {0, -180}, {0, 180}, {-0.0, -0.0}};
  for (size_t i = 0; i < sizeof edge / sizeof *edge; i++)
    for (size_t k = 0; k < sizeof edge / sizeof *edge; k++) {
      ox_geodesic g =
          line(edge[i].lat_deg, edge[i].lon_deg, edge[k].lat_deg, edge[k].lon_deg);
      assert_true(isfinite(g.distance_nm) && g.distance_nm >= 0 && g.distance_nm < 10802);
      assert_true(g.from_bearing_deg >= 0 && g.from_bearing_deg < 360);
      assert_true(g.to_bearing_deg >= 0 && g.to_bearing_deg < 360);
      if (i == k) assert_true(g.distance_nm == 0);
    }
  assert_close(line(0, -180, 0, 180).distance_nm, 0, 1e-12, "one meridian, two names");
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(published_lines_agree),
      cmocka_unit_test(along_the_equator_it_is_an_arc_of_the_major_axis),
      cmocka_unit_test(a_quarter_of_the_meridian_is_the_known_length),
      cmocka_unit_test(the_command_of_the_reference_library_agrees),
      cmocka_unit_test(the_direct_command_agrees_as_well),
      cmocka_unit_test(there_and_back_is_the_same_place),
      cmocka_unit_test(places_off_the_earth_are_refused),
      cmocka_unit_test(places_at_the_edges_are_taken),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
