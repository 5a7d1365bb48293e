/* Leaving the fix at a time: the last circuits are flown to it exactly. */
#include "ox_test.h"

#include "oxbow/flight.h"

static ox_flight flight;

static ox_case leaving(int minutes) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 120;
  c.arrival.fix_at_s = 12 * 3600 + 4 * 60;
  c.hold.efc_min = 12 * 60 + 4 + minutes;
  c.hold.ends = OX_HOLD_TO_EFC;
  return c;
}

static bool advised(ox_advice_kind kind) {
  for (size_t i = 0; i < flight.advice_count; i++)
    if (flight.advice[i].kind == kind) return true;
  return false;
}

/* AIM 5-4-10 (start times, leave time and wind advice F; the arithmetic M): over the fix 12:04,
 * leave at 12:07, 3 minutes to lose, turns take 2, the minute left is halved: 30 s outbound. With
 * 10 kt along the final course, by t_out = [(V - w)(T - tau) - w tau] / (2V) (C): 22.5 and 37.5. */
static void three_minutes_to_lose_are_thirty_seconds_outbound(void **state) {
  static const struct {
    double from_deg, kt, outbound_s;
  } rows[] = {{360, 0, 30.0}, {360, 10, 22.5}, {180, 10, 37.5}};
  for (size_t i = 0; i < 3; i++) {
    ox_case c = leaving(3);
    c.wind_count = 1;
    c.wind[0] = (ox_wind_row){0, rows[i].from_deg, rows[i].kt, OX_NORTH_TRUE};
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    assert_int_equal(flight.circuit_count, 1);
    assert_close(flight.circuits[0].outbound_s, rows[i].outbound_s, 1e-6, "outbound");
    assert_close(ox_flight_end_s(&flight), 180, 1e-6, "over the fix");
  }
}

static ox_case any_leaving(ox_random *r) {
  ox_case c = leaving(6 + ox_random_below(r, 40));
  c.hold.inbound_deg = ox_random_between(r, 0, 360);
  c.hold.turns = ox_random_below(r, 2) ? OX_TURNS_LEFT : OX_TURNS_RIGHT;
  c.arrival.heading_deg = ox_random_between(r, 0, 360);
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, ox_random_between(r, 0, 360), ox_random_between(r, 0, 40),
                            OX_NORTH_TRUE};
  c.technique.drift = (ox_drift)ox_random_below(r, 6);
  c.technique.outbound = (ox_outbound)ox_random_below(r, 4);
  return c;
}

/* Only where the entry leaves less time than the shortest circuit takes is the time missed: once
 * circuits are begun they are shared out so that it is met. */
static void the_fix_is_crossed_at_the_time_in_any_wind(void **state) {
  ox_random r = {20};
  int left = 0, missed = 0;
  for (int i = 0; i < 3000; i++) {
    ox_case c = any_leaving(&r);
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    if (advised(OX_ADVICE_NOT_REGAINED)) continue;
    if (advised(OX_ADVICE_LEAVE_MISSED)) {
      assert_int_equal(flight.circuit_count, 0);
      missed++;
      continue;
    }
    assert_close(ox_flight_end_s(&flight), flight.leave_t_s, 1e-5, "over the fix");
    left++;
  }
  assert_true(left > 2900);
  assert_in_range(missed, 1, 75);
}

/* The later of the two times named can be met, to the next whole second. */
static void the_time_named_after_a_missed_one_can_be_met(void **state) {
  ox_random r = {21};
  int met = 0;
  for (int i = 0; i < 3000; i++) {
    ox_case c = any_leaving(&r);
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    for (size_t k = 0; k < flight.advice_count; k++) {
      if (flight.advice[k].kind != OX_ADVICE_LEAVE_MISSED) continue;
      double before_s = flight.advice[k].a, after_s = flight.advice[k].b;
      assert_true(before_s < flight.leave_t_s && flight.leave_t_s < after_s);
      ox_case later = c;
      later.arrival.fix_at_s = 8 * 3600;
      int whole_s = (int)ceil(after_s + 1e-3);
      later.hold.efc_min = 8 * 60 + whole_s / 60 + 1;
      later.arrival.fix_at_s += 60 - whole_s % 60;
      assert_true(ox_flight_solve(&later, &flight) >= OX_OK);
      assert_close(flight.leave_t_s, whole_s, 1e-9, "asked");
      assert_false(advised(OX_ADVICE_LEAVE_MISSED));
      assert_close(ox_flight_end_s(&flight), whole_s, 1e-5, "over the fix");
      met++;
      break;
    }
  }
  assert_true(met > 20);
}

static void too_little_time_names_the_two_nearest(void **state) {
  ox_case c = leaving(1);
  assert_int_equal(ox_flight_solve(&c, &flight), OX_ADVISORY);
  assert_int_equal(flight.circuit_count, 0);
  assert_true(advised(OX_ADVICE_LEAVE_MISSED));
  assert_close(flight.advice[0].a, 0, 1e-9, "now");
  assert_close(flight.advice[0].b, 120, 1e-6, "after the shortest circuit: two half turns");
}

static void an_efc_before_the_arrival_is_said_and_the_hold_still_flown(void **state) {
  ox_case c = leaving(-10);
  assert_int_equal(ox_flight_solve(&c, &flight), OX_ADVISORY);
  assert_true(advised(OX_ADVICE_LEAVE_BEFORE));
  assert_int_equal(flight.circuit_count, c.technique.circuits);
}

static void an_efc_past_midnight_is_the_next_day(void **state) {
  ox_case c = leaving(0);
  c.arrival.fix_at_s = 23 * 3600 + 55 * 60;
  c.hold.efc_min = 7;
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  assert_close(flight.leave_t_s, 12 * 60, 1e-9, "twelve minutes");
  assert_close(ox_flight_end_s(&flight), 12 * 60, 1e-6, "over the fix");
}

static void without_a_time_over_the_fix_the_circuits_count(void **state) {
  ox_case c = leaving(9);
  c.arrival.fix_at_s = -1;
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  assert_close(flight.leave_t_s, 0, 0, "no time to reckon from");
  assert_int_equal(flight.circuit_count, c.technique.circuits);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(three_minutes_to_lose_are_thirty_seconds_outbound),
      cmocka_unit_test(the_fix_is_crossed_at_the_time_in_any_wind),
      cmocka_unit_test(the_time_named_after_a_missed_one_can_be_met),
      cmocka_unit_test(too_little_time_names_the_two_nearest),
      cmocka_unit_test(an_efc_before_the_arrival_is_said_and_the_hold_still_flown),
      cmocka_unit_test(an_efc_past_midnight_is_the_next_day),
      cmocka_unit_test(without_a_time_over_the_fix_the_circuits_count),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
