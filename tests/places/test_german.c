/* What is said of places in German: every sentence is translated and has the same figures. */
#include "ox_german.h"

#include "oxbow/fix.h"
#include "oxbow/journey.h"
#include "oxbow/place.h"

static char english[OX_REMARK_BYTES], german[OX_REMARK_BYTES];

/* Says something twice, into `english` and into `german`, and compares. */
#define IN_BOTH(call)                   \
  do {                                  \
    char *remark = english;             \
    english[0] = german[0] = '\0';      \
    speak_english();                    \
    (void)(call);                       \
    remark = german;                    \
    speak_german();                     \
    (void)(call);                       \
    speak_english();                    \
    if (english[0] || german[0]) assert_german(english, german); \
  } while (0)

static void coordinates_are_refused_in_german(void **state) {
  static const char *const texts[] = {
      "", "42.5", "42.5N", "42.5N 73.25N", "42.5N 73.25W 5", "-42.5N 73.25W", "91N 000E",
      "0 180.0001", "42 60N 73 0W", "42.5 30N 73 15W", "42 30 10 5N 73 15 10W", "442N 073W",
      "44N 0737W", "4244.5 -7348.5", "42' 30N 73 15W", "42.5,,73.25", "42-N 73W", "42.5X 73.25W",
      "\xff", "1234567890123456789N 0E",
      "1 2 3 4 5 6 7 8 9 1 2 3 4 5 6 7 8 9 1 2 3 4 5 6 7 8 9 1 2 3 4 5 6 7"};
  for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
    ox_latlon unused;
    IN_BOTH(ox_latlon_parse(texts[i], &unused, remark, OX_REMARK_BYTES));
    if (!english[0]) fail_msg("%s is read", texts[i]);
  }
}

static double anything(ox_random *r) {
  return ox_random_between(r, -1, 1) * pow(10, ox_random_between(r, 0, 6));
}

/* Every number beyond its ends, and crossings of every kind; most are refused or remarked. */
static void numbers_and_radials_are_refused_in_german(void **state) {
  ox_random r = {20261125};
  int said = 0, commas = 0;
  for (int i = 0; i < 3000; i++) {
    ox_station a = {{ox_random_between(&r, -60, 60), ox_random_between(&r, -179, 179)},
                    ox_random_between(&r, -30, 30)};
    ox_station b = {{a.at.lat_deg + ox_random_between(&r, -2, 2), a.at.lon_deg + 0.5}, 0};
    double radial_a = ox_random_between(&r, 0, 360), radial_b = ox_random_between(&r, 0, 360);
    double numbers[3] = {anything(&r), anything(&r), anything(&r)};
    ox_crossing crossing;
    ox_latlon place;
    double nm;
    IN_BOTH(ox_radials_cross(a, radial_a, b, radial_b, &crossing, remark, OX_REMARK_BYTES));
    said += english[0] != '\0';
    IN_BOTH(ox_place_ahead(a.at, 90, numbers[1], numbers[2], &place, remark, OX_REMARK_BYTES));
    said += english[0] != '\0';
    IN_BOTH(ox_place_along(a.at, numbers[0], numbers[1], &place, &nm, remark, OX_REMARK_BYTES));
    said += english[0] != '\0';
    commas += strchr(german, ',') != NULL;
    IN_BOTH(ox_slant_to_ground_nm(numbers[0], numbers[1], numbers[2], &nm, remark,
                                  OX_REMARK_BYTES));
    said += english[0] != '\0';
  }
  assert_true(said > 2000);
  assert_true(commas > 500);
}

/* ---- fixes and routes ------------------------------------------------------------------- */

static ox_points points;
static ox_route route;

static void add(const char *name, double lat, double lon, double elevation_ft) {
  ox_point p = {.kind = OX_POINT_AT, .at = {lat, lon}, .elevation_ft = elevation_ft};
  snprintf(p.name, sizeof p.name, "%s", name);
  assert_int_equal(ox_points_add(&points, &p, english, sizeof english), OX_OK);
}

static int a_route(void **state) {
  points = (ox_points){0};
  add("WEST", 0, 9.5, 0);
  add("THRES", 0, 9.8, 200);
  add("LARCH", 0, 10, 0);
  add("NORTH", 0.2, 10, 0);
  route = (ox_route){
      .count = 4, .names = {"WEST", "THRES", "LARCH", "NORTH"}, .missed_approach = -1};
  return 0;
}

static void assert_lines(size_t count, char ours[][OX_REMARK_BYTES], size_t same,
                         char theirs[][OX_REMARK_BYTES]) {
  assert_int_equal(count, same);
  for (size_t i = 0; i < count; i++) assert_german(ours[i], theirs[i]);
}

static ox_case some_case(ox_random *r) {
  ox_case c = ox_case_default();
  strcpy(c.hold.fix, "LARCH");
  c.hold.inbound_deg = 90;
  c.hold.altitude_ft = ox_random_between(r, 1000, 9000);
  c.hold.climb_ft_min = 500;
  c.arrival.heading_deg = ox_random_between(r, 1, 360);
  c.arrival.distance_nm = ox_random_between(r, 1, 9);
  c.aircraft.tas_kt = ox_random_between(r, 90, 250);
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, ox_random_between(r, 1, 360), ox_random_between(r, 0, 40),
                            OX_NORTH_TRUE};
  return c;
}

static void a_route_is_told_in_german(void **state) {
  static char ours[OX_JOURNEY_WORDS_MAX][OX_REMARK_BYTES],
      theirs[OX_JOURNEY_WORDS_MAX][OX_REMARK_BYTES];
  static ox_flight flight;
  static ox_journey journey;
  ox_random r = {9};
  size_t told = 0;
  for (int i = 0; i < 400; i++) {
    ox_case c = some_case(&r);
    ox_fix fix = ox_fix_named();
    route.missed_approach = (int)ox_random_below(&r, 4) - 1;
    if (ox_random_below(&r, 9) == 0) strcpy(c.hold.fix, "AWAY");
    if (ox_flight_solve(&c, &flight) == OX_ERROR ||
        ox_journey_make(&points, &route, &fix, &c, &flight, &journey, NULL, 0) == OX_ERROR)
      continue;
    speak_english();
    size_t count = ox_journey_words(&journey, &c, ours);
    speak_german();
    size_t same = ox_journey_words(&journey, &c, theirs);
    speak_english();
    assert_lines(count, ours, same, theirs);
    told += count;
  }
  assert_true(told > 400);
}

static void a_fix_is_told_in_german(void **state) {
  static char ours[OX_JOURNEY_WORDS_MAX][OX_REMARK_BYTES],
      theirs[OX_JOURNEY_WORDS_MAX][OX_REMARK_BYTES];
  ox_random r = {10};
  size_t told = 0;
  for (int i = 0; i < 400; i++) {
    ox_case c = some_case(&r);
    ox_fix fix = ox_fix_named();
    if (ox_random_below(&r, 2) == 0) {
      fix.kind = ox_random_below(&r, 2) == 0 ? OX_FIX_AHEAD_NM : OX_FIX_AHEAD_S;
      fix.ahead_nm = 3;
      fix.ahead_s = 60;
      strcpy(fix.present, "WEST");
    } else {
      fix.kind = OX_FIX_POINT;
      fix.point.kind = OX_POINT_CROSSING;
      strcpy(fix.point.from, "WEST");
      strcpy(fix.point.and_from, "NORTH");
      fix.point.radial_deg = ox_random_between(&r, 0, 360);
      fix.point.and_radial_deg = ox_random_between(&r, 0, 360);
    }
    speak_english();
    size_t count = ox_fix_words(&points, &fix, &c, ours);
    speak_german();
    size_t same = ox_fix_words(&points, &fix, &c, theirs);
    speak_english();
    assert_lines(count, ours, same, theirs);
    told += count;
  }
  assert_true(told > 400);
}

static void changing_the_points_is_refused_in_german(void **state) {
  ox_point twice = {.kind = OX_POINT_AT, .name = "WEST"}, nameless = {.kind = OX_POINT_AT};
  IN_BOTH(ox_points_add(&points, &twice, remark, OX_REMARK_BYTES));
  assert_string_equal(german, "Es gibt schon einen Punkt namens WEST.");
  IN_BOTH(ox_points_add(&points, &nameless, remark, OX_REMARK_BYTES));
  IN_BOTH(ox_points_remove(&points, &route, "WEST", NULL, remark, OX_REMARK_BYTES));
  assert_string_equal(german, "WEST wird gebraucht von: der Strecke.");
  IN_BOTH(ox_points_rename(&points, &route, "WEST", "\x01", remark, OX_REMARK_BYTES));
  IN_BOTH(ox_points_remove(&points, &route, "NOWHERE", NULL, remark, OX_REMARK_BYTES));
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(coordinates_are_refused_in_german),
      cmocka_unit_test(numbers_and_radials_are_refused_in_german),
      cmocka_unit_test_setup(a_route_is_told_in_german, a_route),
      cmocka_unit_test_setup(a_fix_is_told_in_german, a_route),
      cmocka_unit_test_setup(changing_the_points_is_refused_in_german, a_route),
  };
  return cmocka_run_group_tests(tests, german_set_up, german_tear_down);
}
