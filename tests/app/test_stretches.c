/* The time line's stretches, the places to stop at and the figures of an instant, as values. */
#include "ox_test.h"

#include <glib.h>

#include "../engine/random_case.h"
#include "ox_figures.h"
#include "ox_stops.h"
#include "ox_stretches.h"

static ox_flight flight;
static ox_stretch stretches[OX_LEGS_MAX], parts[OX_LEGS_MAX];
static char names[OX_LEGS_MAX][OX_PART_NAME_BYTES];

/* 120 kt, rate one, inbound 360, arriving on course: calm, each leg and turn a minute. */
static ox_case along_the_course(void) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 120;
  c.arrival.heading_deg = c.hold.inbound_deg;
  c.technique.circuits = 2;
  return c;
}

static void a_flight_is_its_legs_from_end_to_end(void **state) {
  static const struct {
    const char *name, *brief;
    ox_stretch_kind kind;
    bool turn;
  } rows[] = {
      {"arrival", "arrival", OX_STRETCH_ARRIVAL, false},
      {"outbound turn", "turn", OX_STRETCH_ENTRY, true}, /* a direct entry is this turn */
      {"outbound", "out", OX_STRETCH_OUTBOUND, false},
      {"inbound turn", "turn", OX_STRETCH_INBOUND, true},
      {"inbound", "in", OX_STRETCH_INBOUND, false},
      {"outbound turn", "turn", OX_STRETCH_OUTBOUND, true},
  };
  ox_case c = along_the_course();
  assert_true(ox_flight_solve(&c, &flight) != OX_ERROR);
  size_t count = ox_stretches_make(&flight, stretches);
  assert_int_equal(count, 9);
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    assert_string_equal(stretches[i].name, rows[i].name);
    assert_string_equal(stretches[i].brief, rows[i].brief);
    assert_int_equal(stretches[i].kind, rows[i].kind);
    assert_int_equal(stretches[i].turn, rows[i].turn);
  }
  char words[128];
  ox_stretches_words(words, sizeof words, &stretches[2]);
  assert_string_equal(words, "outbound, circuit 1, 1:00 to 2:00 (1:00)");
  size_t part_count = ox_stretches_parts(stretches, count, parts, names);
  assert_int_equal(part_count, 3);
  assert_string_equal(parts[0].name, "arrival");
  assert_string_equal(parts[1].name, "circuit 1");
  assert_string_equal(parts[2].brief, "2");
  assert_close(parts[1].t1_s, 240, 1e-6, "a calm circuit lasts four minutes");
}

static double seven_a_letter(const char *text, void *data) { return 7.0 * (double)strlen(text); }

static void names_are_whole_or_brief_or_not_there(void **state) {
  const ox_stretch s = {.name = "inbound turn", .brief = "turn"};
  assert_string_equal(ox_stretches_label(&s, 84, seven_a_letter, NULL), "inbound turn");
  assert_string_equal(ox_stretches_label(&s, 83.9, seven_a_letter, NULL), "turn");
  assert_string_equal(ox_stretches_label(&s, 28, seven_a_letter, NULL), "turn");
  assert_null(ox_stretches_label(&s, 27.9, seven_a_letter, NULL));
}

static void stretches_of_seeded_cases_touch_and_cover_the_flight(void **state) {
  ox_random r = {77};
  for (int n = 0; n < 1000; n++) {
    ox_case c = ox_random_case(&r, n % 10 / 10.0);
    if (ox_flight_solve(&c, &flight) == OX_ERROR || flight.leg_count == 0) continue;
    size_t count = ox_stretches_make(&flight, stretches);
    assert_true(count > 0 && count <= flight.leg_count);
    assert_close(stretches[0].t0_s, ox_flight_begin_s(&flight), 1e-5, "begin");
    assert_close(stretches[count - 1].t1_s, ox_flight_end_s(&flight), 1e-5, "end");
    for (size_t i = 1; i < count; i++) {
      assert_close(stretches[i].t0_s, stretches[i - 1].t1_s, 1e-5, "touch");
      assert_ptr_equal(ox_stretches_at(stretches, count,
                                       0.5 * (stretches[i].t0_s + stretches[i].t1_s)),
                       &stretches[i]);
    }
    size_t part_count = ox_stretches_parts(stretches, count, parts, names);
    assert_true(part_count <= flight.circuit_count + 2);
  }
}

static void stops_are_the_chosen_events_each_instant_once(void **state) {
  double t_s[OX_EVENTS_MAX];
  char words[200];
  ox_case c = along_the_course();
  assert_true(ox_flight_solve(&c, &flight) != OX_ERROR);
  assert_int_equal(ox_stops_make(&flight, 0, t_s), 0);
  size_t fixes = ox_stops_make(&flight, 1U << OX_EVENT_FIX, t_s);
  assert_int_equal(fixes, 3);
  assert_close(t_s[1], 240, 1e-6, "the second crossing");
  unsigned both = 1U << OX_EVENT_FIX | 1U << OX_EVENT_TURN_BEGIN;
  assert_int_equal(ox_stops_make(&flight, both, t_s), 5); /* two turns begin at the fix */
  ox_stops_words(words, sizeof words, &flight, both, t_s[0]);
  assert_string_equal(words, "Stopped: over the fix, turn begins, 0:00");
  ox_stops_make(&flight, 1U << OX_EVENT_ABEAM, t_s);
  ox_stops_words(words, sizeof words, &flight, 1U << OX_EVENT_ABEAM, t_s[0]);
  assert_string_equal(words, "Stopped: abeam the fix, 1:00");
  ox_stops_words(words, sizeof words, &flight, 1U << OX_EVENT_ABEAM, 30);
  assert_string_equal(words, "");
}

/* Wind from the left at 20 kt on a track of 360 with 120 kt: asin(20/120) = 9.594 degrees to the
 * left, 120 cos 9.594 = 118.3 kt over the ground (triangle of velocities; the values are derived). */
static void the_figures_follow_the_aircraft(void **state) {
  ox_figure_text f[OX_FIGURE_COUNT];
  char words[256];
  ox_case c = along_the_course();
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 270, 20, OX_NORTH_TRUE};
  c.arrival.heading_deg = 350.406;
  assert_true(ox_flight_solve(&c, &flight) != OX_ERROR);
  ox_figures_make(f, &c, &flight, -30);
  assert_string_equal(f[OX_FIGURE_HEADING].value, "350");
  assert_string_equal(f[OX_FIGURE_TRACK].value, "360");
  assert_string_equal(f[OX_FIGURE_DRIFT].value, "10° R");
  assert_string_equal(f[OX_FIGURE_GS].value, "118");
  assert_string_equal(f[OX_FIGURE_SINCE_FIX].value, "-0:30");
  assert_string_equal(f[OX_FIGURE_HEADING].caption, "hdg");
  assert_false(f[OX_FIGURE_ALTITUDE].shown);
  ox_figures_make(f, &c, &flight, flight.circuits[1].fix_t_s + 15);
  assert_string_equal(f[OX_FIGURE_SINCE_FIX].value, "0:15");
  assert_string_equal(f[OX_FIGURE_ON_LEG].value, "0:15");
  ox_figures_words(words, sizeof words, f, false);
  assert_non_null(strstr(words, "0:15 on this leg, 0:15 since the fix"));
  c.variation_deg = -10;
  assert_true(ox_flight_solve(&c, &flight) != OX_ERROR);
  ox_figures_make(f, &c, &flight, -30);
  assert_string_equal(f[OX_FIGURE_HEADING].caption, "hdg M");
  ox_figures_words(words, sizeof words, f, true);
  assert_non_null(strstr(words, " magnetic, track "));
}

static void a_climb_shows_its_altitude(void **state) {
  ox_figure_text f[OX_FIGURE_COUNT];
  ox_case c = along_the_course();
  c.hold.climb_to_ft = c.hold.altitude_ft + 1000;
  c.hold.climb_ft_min = 500;
  assert_int_equal(ox_case_check(&c, NULL, 0), 0);
  assert_true(ox_flight_solve(&c, &flight) != OX_ERROR);
  ox_figures_make(f, &c, &flight, 60); /* a minute after the fix: 500 ft */
  assert_true(f[OX_FIGURE_ALTITUDE].shown);
  assert_close(atof(f[OX_FIGURE_ALTITUDE].value), c.hold.altitude_ft + 500, 5, "altitude");
}

static void no_flight_has_no_figures_and_no_stretches(void **state) {
  ox_figure_text f[OX_FIGURE_COUNT];
  ox_case c = along_the_course();
  memset(&flight, 0, sizeof flight);
  ox_figures_make(f, &c, &flight, 12);
  for (int i = 0; i < OX_FIGURE_COUNT; i++) assert_false(f[i].shown);
  assert_int_equal(ox_stretches_make(&flight, stretches), 0);
  assert_null(ox_stretches_at(stretches, 0, 5));
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_flight_is_its_legs_from_end_to_end),
      cmocka_unit_test(names_are_whole_or_brief_or_not_there),
      cmocka_unit_test(stretches_of_seeded_cases_touch_and_cover_the_flight),
      cmocka_unit_test(stops_are_the_chosen_events_each_instant_once),
      cmocka_unit_test(the_figures_follow_the_aircraft),
      cmocka_unit_test(a_climb_shows_its_altitude),
      cmocka_unit_test(no_flight_has_no_figures_and_no_stretches),
  };
  return cmocka_run_group_tests_name("stretches", tests, NULL, NULL);
}
