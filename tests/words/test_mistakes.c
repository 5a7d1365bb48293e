/* Mistakes and the illustrated area in words: the figures are those of the flights. */
#include "../engine/random_case.h"
#include "oxbow/area.h"
#include "words_check.h"

static ox_flight right; /* large */

static ox_case windy(double heading_deg) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 120;
  c.arrival.heading_deg = heading_deg;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 90, 20, OX_NORTH_TRUE};
  return c;
}

static void say(char text[800], const ox_case *c, ox_mistake mistake) {
  assert_int_not_equal(ox_flight_solve(c, &right), OX_ERROR);
  ox_words_mistake(text, 800, c, &right, mistake);
  assert_sound(text, "mistake");
  assert_true(strlen(text) < 780);
  assert_int_equal(text[strlen(text) - 1], '.');
}

static void every_mistake_is_told_with_its_effect_and_figures(void **state) {
  static const double headings[OX_MISTAKE_COUNT] = {360, 360, 150, 230, 360, 360};
  for (int m = 0; m < OX_MISTAKE_COUNT; m++) {
    char text[800];
    ox_case c = windy(headings[m]);
    say(text, &c, (ox_mistake)m);
    assert_has(text, ox_mistake_effect((ox_mistake)m), "effect");
    assert_has(text, ox_mistake_name((ox_mistake)m) + 1, "name");
    assert_true(text[0] >= 'A' && text[0] <= 'Z');
    assert_has(text, "In this case it leads at most ", "figures");
    assert_has(text, "back over the fix after ", "figures");
  }
}

/* In calm air at 120 kt, rate one: the clock at the fix makes the minute run out as the turn ends,
 * so the aircraft turns on and is back after 120 s instead of 240 s. At 120 s the right flight is
 * at the far corner, (1.273, -2.0) NM: 2.37 NM apart. */
static void timing_from_the_fix_halves_a_circuit_in_calm_air(void **state) {
  char text[800];
  ox_case c = windy(360);
  c.wind_count = 0;
  c.technique.outbound = OX_OUTBOUND_NOMINAL;
  say(text, &c, OX_MISTAKE_CLOCK_AT_FIX);
  assert_has(text, "at most 2.37 NM away from where the aircraft should be, to the north", "apart");
  assert_has(text, ", 2:00 after the fix", "when");
  assert_has(text, "back over the fix after 2:00 instead of 4:00, 120 s earlier.", "back");
}

static void what_does_not_show_says_what_it_needs(void **state) {
  char text[800];
  ox_case c = windy(360);
  say(text, &c, OX_MISTAKE_TEARDROP_WRONG_SIDE);
  assert_has(text, "It does not show in this case: the entry is not a teardrop.", "teardrop");
  say(text, &c, OX_MISTAKE_PARALLEL_WRONG_TURN);
  assert_has(text, "the entry is not parallel.", "parallel");
  c.wind_count = 0;
  say(text, &c, OX_MISTAKE_DRIFT_WRONG_SIDE);
  assert_has(text, "it needs a correction for a wind across the course.", "drift");
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = 4;
  say(text, &c, OX_MISTAKE_CLOCK_AT_FIX);
  assert_has(text, "the leg is not flown by time.", "clock");
}

static void a_small_buffer_cuts_at_a_whole_character(void **state) {
  ox_case c = windy(360);
  assert_int_not_equal(ox_flight_solve(&c, &right), OX_ERROR);
  for (size_t bytes = 0; bytes < 400; bytes++) {
    char text[800];
    memset(text, 'x', sizeof text);
    ox_words_mistake(text, bytes, &c, &right, OX_MISTAKE_LATE_SPEED);
    assert_true(bytes == 0 ? text[0] == 'x' : strlen(text) < bytes);
    assert_int_equal(text[bytes], 'x');
    memset(text, 'x', sizeof text);
    ox_words_area(text, bytes, &c, &right);
    assert_true(bytes == 0 ? text[0] == 'x' : strlen(text) < bytes);
    assert_int_equal(text[bytes], 'x');
  }
}

static void random_cases_tell_every_mistake(void **state) {
  ox_random r = {20240614};
  for (int i = 0, cases = ox_test_cases(400); i < cases; i++) {
    char text[800];
    ox_case c = ox_random_case(&r, i % 2 ? 0.4 : 1.5);
    for (int m = 0; m < OX_MISTAKE_COUNT; m++)
      say(text, &c, (ox_mistake)m);
  }
}

/* --- the area ------------------------------------------------------------------------------ */

static const char memory[] = "how the outline is drawn from them is from memory";

static void the_area_says_how_far_inside_the_track_stays(void **state) {
  char text[500], margin[40];
  ox_case c = windy(30);
  c.hold.altitude_ft = 6000; /* wind 59 kt: Doc 8168 Vol II, w = 2h + 47 */
  assert_int_not_equal(ox_flight_solve(&c, &right), OX_ERROR);
  ox_area area = ox_area_make(&c, &right.setup, 0);
  double inside_nm = ox_area_flight_margin_nm(&area, &right);
  assert_true(inside_nm > 0.01);
  ox_words_area(text, sizeof text, &c, &right);
  assert_sound(text, "area");
  snprintf(margin, sizeof margin, "stays inside by at least %.2f NM", inside_nm);
  assert_has(text, margin, "margin");
  assert_has(text, "illustrated area, which is to scale for no chart", "illustrative");
  assert_has(text, "wind of 59 kt", "wind");
  assert_has(text, "ICAO Doc 8168 Vol II", "source");
  assert_has(text, memory, "memory");
  assert_true(strlen(text) < 480);
}

static void a_track_that_leaves_the_area_is_said_to(void **state) {
  char text[500];
  ox_case c = windy(360);
  c.wind[0].kt = 100; /* far beyond the wind that the area allows for */
  c.technique.drift = OX_DRIFT_NONE;
  assert_int_not_equal(ox_flight_solve(&c, &right), OX_ERROR);
  ox_words_area(text, sizeof text, &c, &right);
  assert_has(text, "goes outside by up to ", "outside");
  assert_has(text, memory, "memory");
}

static void neither_follows_the_locale(void **state) {
  char plain[800], german[800];
  ox_case c = windy(150);
  assert_int_not_equal(ox_flight_solve(&c, &right), OX_ERROR);
  ox_words_mistake(plain, sizeof plain, &c, &right, OX_MISTAKE_TEARDROP_WRONG_SIDE);
  enter_german();
  ox_words_mistake(german, sizeof german, &c, &right, OX_MISTAKE_TEARDROP_WRONG_SIDE);
  leave_german();
  assert_string_equal(plain, german);
  ox_words_area(plain, sizeof plain, &c, &right);
  enter_german();
  ox_words_area(german, sizeof german, &c, &right);
  leave_german();
  assert_string_equal(plain, german);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_mistake_is_told_with_its_effect_and_figures),
      cmocka_unit_test(timing_from_the_fix_halves_a_circuit_in_calm_air),
      cmocka_unit_test(what_does_not_show_says_what_it_needs),
      cmocka_unit_test(a_small_buffer_cuts_at_a_whole_character),
      cmocka_unit_test(random_cases_tell_every_mistake),
      cmocka_unit_test(the_area_says_how_far_inside_the_track_stays),
      cmocka_unit_test(a_track_that_leaves_the_area_is_said_to),
      cmocka_unit_test(neither_follows_the_locale),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
