/* The key moments: what a pilot does, when, in which order. */
#include "../engine/random_case.h"
#include "oxbow/moments.h"
#include "words_check.h"

static ox_flight flight; /* large */

static ox_moments moments_of(const ox_case *c, int first, int last) {
  assert_int_not_equal(ox_flight_solve(c, &flight), OX_ERROR);
  return ox_moments_make(c, &flight, first, last);
}

typedef struct {
  const char *what, *figures, *act;
} row;

static void assert_rows(const ox_moments *m, const row *rows, size_t count) {
  for (size_t i = 0; i < count && i < m->count; i++) {
    assert_string_equal(m->moment[i].what, rows[i].what);
    assert_string_equal(m->moment[i].figures, rows[i].figures);
    assert_string_equal(m->moment[i].act, rows[i].act);
  }
  assert_int_equal(m->count, count);
}

/* 120 kt, rate one, inbound 360, arriving on course. */
static ox_case along_the_course(void) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 120;
  c.arrival.heading_deg = c.hold.inbound_deg;
  return c;
}

/* Calm, one-minute legs, 180 degrees of turn at 3 degrees a second: four minutes a circuit, abeam
 * the fix as the wings are level. AIM 5-3-8 j5: timing begins over or abeam the fix, whichever is
 * later; j6: 3 degrees a second. The times are derived. */
static void in_calm_air_the_moments_are_a_minute_apart(void **state) {
  static const row rows[] = {
      {"Over the fix", "0:00, heading 360", "Direct entry. Turn right to heading 180"},
      {"Abeam the fix", "1:00, heading 180",
       "Hold heading 180, start the clock: 1:00 to the turn"},
      {"Turn inbound", "2:00, heading 180", "Turn right to heading 360"},
      {"Established inbound", "3:00, heading 360", "Course 360 on heading 360"},
      {"Over the fix", "4:00, heading 360", "Turn right to heading 180"},
  };
  ox_case c = along_the_course();
  ox_moments m = moments_of(&c, 0, 1);
  assert_rows(&m, rows, sizeof rows / sizeof *rows);
}

/* A tailwind inbound: level at 1:00 short of abeam, so the clock starts later, abeam (same source).
 * A headwind inbound: abeam in the turn, so the clock waits for the wings to be level. */
static void the_clock_starts_at_the_later_of_abeam_and_wings_level(void **state) {
  ox_case c = along_the_course();
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 180, 20, OX_NORTH_TRUE};
  ox_moments m = moments_of(&c, 1, 1);
  assert_string_equal(m.moment[1].what, "Wings level");
  assert_string_equal(m.moment[1].act, "Hold heading 180");
  assert_string_equal(m.moment[2].what, "Abeam the fix");
  assert_has(m.moment[2].act, "Start the clock: ", "abeam");
  c.wind[0].from_deg = 360;
  m = moments_of(&c, 1, 1);
  assert_string_equal(m.moment[1].what, "Abeam the fix");
  assert_string_equal(m.moment[1].act, "Still turning: the clock waits for wings level");
  assert_string_equal(m.moment[2].what, "Wings level");
  assert_has(m.moment[2].act, "start the clock", "level");
}

/* Magnetic is said where it differs from true: 20 degrees west, on magnetic 360. */
static void magnetic_is_said_where_it_differs_from_true(void **state) {
  ox_case c = along_the_course();
  c.variation_deg = -20;
  ox_moments m = moments_of(&c, 0, 1);
  assert_string_equal(m.moment[0].figures, "0:00, heading 360 M");
  assert_string_equal(m.moment[0].act, "Direct entry. Turn right to heading 180 M");
}

static void entries_are_told_up_to_the_first_circuit(void **state) {
  ox_case c = along_the_course();
  c.arrival.heading_deg = 200; /* a parallel entry: AIM 5-3-8 figure, 110 degrees of headings */
  ox_moments m = moments_of(&c, 0, 0);
  assert_int_equal(flight.flown, OX_ENTRY_PARALLEL);
  assert_has(m.moment[0].act, "Parallel entry. Turn left to heading 180", "act");
  assert_string_equal(m.moment[1].act, "Hold heading 180, start the clock: 1:00 to the turn");
  assert_string_equal(m.moment[m.count - 1].what, "Over the fix");
  assert_close(m.moment[m.count - 1].t_s, flight.circuits[0].fix_t_s, 1e-9, "end of the entry");
  for (size_t i = 0; i + 1 < m.count; i++) assert_int_equal(m.moment[i].circuit, 0);
}

/* A leg by distance is not timed: no clock in its words. */
static void a_leg_by_distance_ends_at_its_distance(void **state) {
  ox_case c = along_the_course();
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = 4;
  ox_moments m = moments_of(&c, 0, 1);
  bool said = false;
  for (size_t i = 0; i < m.count; i++) {
    assert_null(strstr(m.moment[i].act, "clock"));
    said = said || strstr(m.moment[i].act, " to 4 NM");
  }
  assert_true(said);
}

static void the_last_crossing_ends_the_hold(void **state) {
  ox_case c = along_the_course();
  int last = c.technique.circuits;
  ox_moments m = moments_of(&c, last, last);
  assert_string_equal(m.moment[m.count - 1].what, "Over the fix");
  assert_string_equal(m.moment[m.count - 1].act, "The hold ends here");
}

static void circuits_that_are_not_there_have_no_moments(void **state) {
  ox_case c = along_the_course();
  assert_int_equal(moments_of(&c, 2, 1).count, 0);
  assert_int_equal(moments_of(&c, 41, 41).count, 0);
  memset(&flight, 0, sizeof flight);
  assert_int_equal(ox_moments_make(&c, &flight, 0, 1).count, 0);
}

/* Whatever is flown: in order, within the flight, at instants of events, nothing cut short. */
static void moments_are_sound_in_seeded_random_cases(void **state) {
  ox_random r = {20260101};
  size_t seen = 0;
  for (int n = 0, cases = ox_test_cases(3000); n < cases; n++) {
    ox_case c = ox_random_case(&r, n % 10 / 10.0);
    if (ox_flight_solve(&c, &flight) == OX_ERROR) continue;
    ox_moments m = ox_moments_make(&c, &flight, 0, 1 + n % 3);
    assert_true(m.count <= OX_MOMENTS_MAX);
    double before_s = -1e9;
    for (size_t i = 0; i < m.count; i++) {
      const ox_moment *at = &m.moment[i];
      bool event = false;
      for (size_t k = 0; k < flight.event_count; k++)
        event = event || flight.events[k].t_s == at->t_s;
      assert_true(event && at->t_s > before_s);
      assert_true(at->t_s >= -0.011 && at->t_s <= ox_flight_end_s(&flight));
      if (!at->act[0]) print_error("%s, %s has nothing to do\n", at->what, at->figures);
      assert_true(at->what[0] && at->figures[0] && at->act[0]);
      assert_true(strlen(at->what) + 1 < sizeof at->what);
      assert_true(strlen(at->figures) + 1 < sizeof at->figures);
      if (strlen(at->act) + 1 >= sizeof at->act) print_error("cut: %s\n", at->act);
      assert_true(strlen(at->act) + 1 < sizeof at->act);
      assert_null(strstr(at->act, "unknown"));
      before_s = at->t_s;
      seen++;
    }
  }
  print_message("# %zu moments\n", seen);
  assert_true(seen > (size_t)ox_test_least(10000));
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(in_calm_air_the_moments_are_a_minute_apart),
      cmocka_unit_test(the_clock_starts_at_the_later_of_abeam_and_wings_level),
      cmocka_unit_test(magnetic_is_said_where_it_differs_from_true),
      cmocka_unit_test(entries_are_told_up_to_the_first_circuit),
      cmocka_unit_test(a_leg_by_distance_ends_at_its_distance),
      cmocka_unit_test(the_last_crossing_ends_the_hold),
      cmocka_unit_test(circuits_that_are_not_there_have_no_moments),
      cmocka_unit_test(moments_are_sound_in_seeded_random_cases),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
