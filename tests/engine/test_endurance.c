/* When to leave: the clock, the fuel, the EFC and the rule without radio. */
#include "ox_test.h"

#include "oxbow/endurance.h"

static ox_flight flight, scratch;

static ox_case still_air(void) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 120;
  c.arrival.fix_at_s = 12 * 3600;
  c.technique.circuits = 6;
  return c;
}

/* --- the clock ----------------------------------------------------------------------------- */

static void the_nearest_day_is_taken_on_both_sides_of_midnight(void **state) {
  static const struct {
    int fix_at_s, minute;
    double after_s;
  } rows[] = {
      {12 * 3600, 12 * 60, 0},
      {12 * 3600, 12 * 60 + 25, 1500},
      {12 * 3600, 11 * 60 + 50, -600},
      {23 * 3600 + 50 * 60, 10, 1200},              /* the EFC is after midnight */
      {10 * 60, 23 * 60 + 50, -1200},               /* the EFC was before midnight */
      {86399, 0, 1},
      {0, 1439, -60},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = still_air();
    double after_s;
    c.arrival.fix_at_s = rows[i].fix_at_s;
    assert_true(ox_clock_after_s(&c, rows[i].minute, &after_s));
    assert_close(after_s, rows[i].after_s, 0, "after the crossing");
  }
}

static void without_a_clock_nothing_is_known_and_nothing_is_nan(void **state) {
  ox_case c = still_air();
  double after_s = 9;
  c.arrival.fix_at_s = -1;
  assert_false(ox_clock_after_s(&c, 600, &after_s));
  assert_close(after_s, 0, 0, "zero");
  assert_close(ox_clock_utc_s(&c, 60), 0, 0, "utc");
  assert_close(ox_clock_local_s(&c, 60), 0, 0, "local");
  c.arrival.fix_at_s = 0;
  assert_false(ox_clock_after_s(&c, -1, &after_s));
  assert_false(ox_clock_after_s(&c, 1440, &after_s));
}

static void utc_and_local_go_round_the_day_apart(void **state) {
  ox_case c = still_air();
  c.arrival.fix_at_s = 23 * 3600 + 59 * 60;
  c.clock.utc_offset_min = -300;
  assert_close(ox_clock_utc_s(&c, 120), 60, 0, "00:01 UTC");
  assert_close(ox_clock_local_s(&c, 120), 19 * 3600 + 60, 0, "19:01 local");
  c.clock.utc_offset_min = 345; /* a quarter of an hour off the hours */
  assert_close(ox_clock_local_s(&c, 0), 5 * 3600 + 44 * 60, 0, "05:44 local, the next day");
  assert_close(ox_clock_utc_s(&c, -24 * 3600), 23 * 3600 + 59 * 60, 0, "a day before");
}

static void minutes_past_are_the_next_such_minute(void **state) {
  static const int rows[][3] = {{25, 18 * 60, 18 * 60 + 25}, {25, 18 * 60 + 25, 18 * 60 + 25},
                                {25, 18 * 60 + 26, 19 * 60 + 25}, {5, 23 * 60 + 50, 5},
                                {0, 1439, 0}, {60, 0, -1}, {-1, 0, -1}, {5, 1440, -1}, {5, -1, -1}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    assert_int_equal(ox_clock_next_past(rows[i][0], rows[i][1]), rows[i][2]);
}

/* --- over the fix -------------------------------------------------------------------------- */

/* Holding-standards 14.1 W1 (C): in still air at rate one with one-minute legs a circuit takes
 * 240 s, so the fix is crossed every four minutes. */
static void in_still_air_the_fix_is_crossed_every_four_minutes(void **state) {
  ox_case c = still_air();
  ox_passage p[OX_PASSAGES_MAX];
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  size_t count = ox_passages(&c, &flight, p, OX_PASSAGES_MAX);
  assert_int_equal(count, 7);
  for (size_t i = 0; i < count; i++) {
    assert_close(p[i].t_s, 240.0 * (double)i, 1e-6, "passage");
    assert_close(ox_clock_utc_s(&c, p[i].t_s), 12 * 3600 + 240.0 * (double)i, 1e-6, "clock");
    assert_int_equal(p[i].number, (int)i + 1);
    assert_close(p[i].left, 0, 0, "no fuel given");
    assert_true(p[i].can_leave);
  }
  assert_int_equal(ox_passages(&c, &flight, p, 3), 3);
  assert_int_equal(ox_passages(&c, &flight, NULL, 0), 0);
}

/* W7 (C): 120 kt, 090 at 20, 360, one minute: a circuit of 246.9 s. */
static void in_wind_the_passages_are_a_steady_circuit_apart(void **state) {
  ox_case c = still_air();
  ox_passage p[OX_PASSAGES_MAX];
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 90, 20, OX_NORTH_TRUE};
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  size_t count = ox_passages(&c, &flight, p, OX_PASSAGES_MAX);
  for (size_t i = 2; i < count; i++)
    assert_close(p[i].t_s - p[i - 1].t_s, 246.9, 0.05, "holding-standards 14.1 W7");
}

/* --- fuel ---------------------------------------------------------------------------------- */

/* Arithmetic by hand (C): 60 on board, 30 an hour, 15 to the alternate, reserve 45 minutes (14 CFR
 * 91.167(a)(3)) = 22.5: 22.5 to hold with, 45 minutes. The reserve is touched after 75, empty after
 * 120 minutes. */
static void the_endurance_is_what_is_left_over_alternate_and_reserve(void **state) {
  ox_case c = still_air();
  c.fuel.on_board = 60;
  c.fuel.flow_h = 30;
  c.fuel.alternate = 15;
  c.fuel.reserve_min = 45;
  ox_endurance e = ox_endurance_of(&c);
  assert_true(e.known);
  assert_close(e.reserve, 22.5, 1e-12, "reserve");
  assert_close(e.leave_by_s, 45 * 60, 1e-9, "leave by");
  assert_close(e.reserve_s, 75 * 60, 1e-9, "reserve touched");
  assert_close(e.empty_s, 120 * 60, 1e-9, "empty");
  assert_close(ox_endurance_left(&e, 3600), 30, 1e-12, "an hour later");
  assert_close(ox_endurance_left(&e, 5 * 3600), 0, 0, "never below nothing");
  for (ox_fuel_unit unit = OX_FUEL_LB; unit <= OX_FUEL_L; unit++) {
    c.fuel.unit = unit;
    ox_endurance other = ox_endurance_of(&c);
    assert_close(other.leave_by_s, e.leave_by_s, 0, "any unit");
  }
}

static void an_amount_wins_over_minutes(void **state) {
  ox_case c = still_air();
  c.fuel.on_board = 100;
  c.fuel.flow_h = 60;
  c.fuel.alternate = 10;
  c.fuel.alternate_min = 30;
  assert_close(ox_endurance_of(&c).alternate, 10, 0, "the amount");
  c.fuel.alternate = 0;
  assert_close(ox_endurance_of(&c).alternate, 30, 1e-12, "the minutes at the flow");
}

static void without_board_or_flow_there_is_no_endurance(void **state) {
  ox_case c = still_air();
  assert_false(ox_endurance_of(&c).known);
  c.fuel.on_board = 100;
  assert_false(ox_endurance_of(&c).known);
  c.fuel.on_board = 0;
  c.fuel.flow_h = 10;
  assert_false(ox_endurance_of(&c).known);
  ox_endurance e = ox_endurance_of(&c);
  assert_close(ox_endurance_left(&e, 10), 0, 0, "nothing known");
}

/* Twelve minutes over alternate and reserve: passages at 0, 4, 8 and 12 minutes are in time. */
static void the_last_passage_in_time_is_found_to_the_very_end(void **state) {
  ox_case c = still_air();
  ox_passage p[OX_PASSAGES_MAX];
  c.fuel.on_board = 32;
  c.fuel.flow_h = 60;
  c.fuel.alternate = 15;
  c.fuel.reserve = 5;
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  size_t count = ox_passages(&c, &flight, p, OX_PASSAGES_MAX);
  assert_int_equal(ox_passage_leave_by(p, count), 4);
  assert_close(p[3].left, 20, 1e-6, "just alternate and reserve");
  c.fuel.on_board = 31.9;
  count = ox_passages(&c, &flight, p, OX_PASSAGES_MAX);
  assert_int_equal(ox_passage_leave_by(p, count), 3);
  c.fuel.on_board = 19;
  count = ox_passages(&c, &flight, p, OX_PASSAGES_MAX);
  assert_int_equal(ox_passage_leave_by(p, count), 0);
  assert_true(ox_endurance_of(&c).leave_by_s < 0);
}

static void fuel_and_passages_hang_together_in_random_cases(void **state) {
  ox_random r = {31};
  int checked = 0;
  for (int i = 0; i < 400; i++) {
    ox_case c = still_air();
    c.hold.inbound_deg = ox_random_between(&r, 0, 360);
    c.arrival.heading_deg = ox_random_between(&r, 0, 360);
    c.wind_count = 1;
    c.wind[0] = (ox_wind_row){0, ox_random_between(&r, 0, 360), ox_random_between(&r, 0, 30),
                              OX_NORTH_TRUE};
    c.fuel.on_board = ox_random_between(&r, 10, 100);
    c.fuel.flow_h = ox_random_between(&r, 5, 90);
    c.fuel.reserve = ox_random_between(&r, 0.1, 30);
    c.fuel.alternate_min = ox_random_between(&r, 1, 60);
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    ox_passage p[OX_PASSAGES_MAX];
    ox_endurance e = ox_endurance_of(&c);
    size_t count = ox_passages(&c, &flight, p, OX_PASSAGES_MAX);
    assert_true(e.leave_by_s < e.reserve_s && e.reserve_s < e.empty_s);
    for (size_t k = 0; k < count; k++) {
      assert_true(k == 0 || p[k].t_s > p[k - 1].t_s);
      assert_true(k == 0 || p[k].left <= p[k - 1].left);
      assert_true(p[k].can_leave == (p[k].left >= e.alternate + e.reserve - 1e-7));
      checked++;
    }
  }
  assert_true(checked > 1500);
}

/* --- until the EFC ------------------------------------------------------------------------- */

/* AIM 5-4-10 (holding-standards 14.3 A3 and A4): over the fix at 12:04, to leave at 12:07: one
 * circuit with 30 s outbound; 22.5 s with 10 kt headwind and 37.5 s with as much tailwind. */
static void three_minutes_are_one_circuit_of_the_worked_outbound_time(void **state) {
  static const struct {
    double from_deg, kt, outbound_s;
  } rows[] = {{360, 0, 30.0}, {360, 10, 22.5}, {180, 10, 37.5}};
  for (size_t i = 0; i < 3; i++) {
    ox_case c = still_air();
    ox_efc_plan plan;
    c.arrival.fix_at_s = 12 * 3600 + 4 * 60;
    c.hold.efc_min = 12 * 60 + 7;
    c.technique.clock = OX_CLOCK_LEVEL;
    c.wind_count = 1;
    c.wind[0] = (ox_wind_row){0, rows[i].from_deg, rows[i].kt, OX_NORTH_TRUE};
    assert_true(ox_efc_plan_make(&c, &scratch, &plan) >= OX_OK);
    assert_int_equal(plan.outcome, OX_EFC_MET);
    assert_int_equal(plan.circuits, 1);
    assert_close(plan.last_timed_s, rows[i].outbound_s, 1e-6, "AIM-TA");
    assert_close(plan.last_circuit_s, 180, 1e-6, "the whole circuit");
  }
}

static void the_circuits_are_counted_whatever_ends_the_hold(void **state) {
  ox_case c = still_air();
  ox_efc_plan plan;
  c.hold.efc_min = 12 * 60 + 16; /* four circuits of four minutes */
  c.technique.circuits = 2;
  assert_true(ox_efc_plan_make(&c, &scratch, &plan) >= OX_OK);
  assert_int_equal(plan.outcome, OX_EFC_MET);
  assert_int_equal(plan.circuits, 4);
  assert_close(plan.last_timed_s, 60, 1e-6, "a whole one");
}

static void what_keeps_from_the_efc_is_named(void **state) {
  ox_case c = still_air();
  ox_efc_plan plan;
  assert_int_equal(ox_efc_plan_make(&c, &scratch, &plan), OX_OK);
  assert_int_equal(plan.outcome, OX_EFC_NOT_GIVEN);
  c.hold.efc_min = 12 * 60 + 1;
  assert_true(ox_efc_plan_make(&c, &scratch, &plan) >= OX_OK);
  assert_int_equal(plan.outcome, OX_EFC_MISSED);
  assert_close(plan.before_s, 0, 1e-6, "now");
  assert_close(plan.later_s, 120, 1e-6, "after the shortest circuit: two half turns");
  c.hold.efc_min = 11 * 60;
  assert_true(ox_efc_plan_make(&c, &scratch, &plan) >= OX_OK);
  assert_int_equal(plan.outcome, OX_EFC_BEFORE);
  assert_close(plan.after_s, -3600, 0, "an hour ago");
  c.arrival.fix_at_s = -1;
  assert_true(ox_efc_plan_make(&c, &scratch, &plan) >= OX_OK);
  assert_int_equal(plan.outcome, OX_EFC_NO_CLOCK);
  c.hold.inbound_deg = 999;
  plan.circuits = 77;
  assert_int_equal(ox_efc_plan_make(&c, &scratch, &plan), OX_ERROR);
  assert_int_equal(plan.circuits, 77);
}

static void an_efc_farther_than_a_flight_holds_is_missed_and_said(void **state) {
  ox_case c = still_air();
  ox_efc_plan plan;
  c.hold.efc_min = 18 * 60; /* six hours: ninety circuits */
  assert_true(ox_efc_plan_make(&c, &scratch, &plan) >= OX_OK);
  assert_int_equal(plan.outcome, OX_EFC_MISSED);
  assert_int_equal(plan.circuits, OX_CIRCUITS_MAX);
  assert_close(plan.before_s, OX_CIRCUITS_MAX * 240.0, 1e-5, "as far as it goes");
}

/* --- without radio ------------------------------------------------------------------------- */

/* The decision tests of holding-standards section 5 (C, from 14 CFR 91.185(c)(3)). */
static void the_rule_without_radio_decides_the_worked_cases(void **state) {
  static const struct {
    ox_limit_kind limit;
    int efc_min, eta_min, fix_at_min;
    ox_radio_action action;
    int at_min, then_min;
    bool before_arrival;
  } rows[] = {
      /* limit = IAF, EFC 1530, ETA 1512: start the approach at 1530 */
      {OX_LIMIT_STARTS_APPROACH, 930, 912, -1, OX_RADIO_APPROACH_AT_EFC, 930, -1, false},
      /* limit = IAF, no EFC, ETA 1512, arrive 1505: hold to 1512 */
      {OX_LIMIT_STARTS_APPROACH, -1, 912, 905, OX_RADIO_APPROACH_AT_ETA, 912, -1, false},
      /* limit = en-route fix, EFC 1530: leave at 1530 */
      {OX_LIMIT_EN_ROUTE, 930, 945, 905, OX_RADIO_LEAVE_AT_EFC, 930, 945, false},
      /* limit = en-route fix, no EFC: leave on arrival, hold at the approach fix until the ETA */
      {OX_LIMIT_EN_ROUTE, -1, 945, 905, OX_RADIO_LEAVE_ON_ARRIVAL, 905, 945, false},
      /* derived: the time is past on arrival; no ETA; no clock; nothing said */
      {OX_LIMIT_STARTS_APPROACH, -1, 912, 920, OX_RADIO_APPROACH_AT_ETA, 912, -1, true},
      {OX_LIMIT_EN_ROUTE, 900, -1, 905, OX_RADIO_LEAVE_AT_EFC, 900, -1, true},
      {OX_LIMIT_STARTS_APPROACH, -1, -1, 905, OX_RADIO_APPROACH_AT_ETA, -1, -1, false},
      {OX_LIMIT_EN_ROUTE, -1, -1, -1, OX_RADIO_LEAVE_ON_ARRIVAL, -1, -1, false},
      {OX_LIMIT_UNKNOWN, 930, 912, 905, OX_RADIO_NOT_DECIDED, -1, -1, false},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = still_air();
    c.lost_radio.limit_starts_approach = rows[i].limit;
    c.hold.efc_min = rows[i].efc_min;
    c.lost_radio.eta_min = rows[i].eta_min;
    c.arrival.fix_at_s = rows[i].fix_at_min >= 0 ? rows[i].fix_at_min * 60 : -1;
    ox_lost_radio r = ox_lost_radio_of(&c);
    assert_int_equal(r.action, rows[i].action);
    assert_int_equal(r.at_min, rows[i].at_min);
    assert_int_equal(r.then_approach_min, rows[i].then_min);
    assert_int_equal(r.before_arrival, rows[i].before_arrival);
  }
}

/* --- slowing down -------------------------------------------------------------------------- */

/* Holding-standards 14.3 A8 (C, from AIM 5-3-8 d): 3 minutes at 120, 180, 240 kt over the ground
 * are 6, 9, 12 NM. */
static void three_minutes_before_the_fix_are_the_worked_distances(void **state) {
  static const double rows[][2] = {{120, 6}, {180, 9}, {240, 12}};
  for (size_t i = 0; i < 3; i++) {
    ox_case c = still_air();
    c.hold.altitude_ft = 15000;
    c.aircraft.tas_kt = rows[i][0];
    c.arrival.distance_nm = 10;
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    ox_slow_down s = ox_slow_down_of(&flight);
    assert_close(s.nm, rows[i][1], 1e-9, "A8");
    assert_int_equal(s.shown, rows[i][1] <= 10);
    if (s.shown)
      assert_close(ox_vec_length(ox_flight_at(&flight, -180).p_nm), s.nm, 1e-9, "on the track");
  }
}

/* From wings level at the fix 20 kt of tailwind on the arrival: 140 kt, 7 NM (C). */
static void the_wind_on_the_arrival_counts(void **state) {
  ox_case c = still_air();
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 180, 20, OX_NORTH_TRUE};
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  assert_close(ox_slow_down_of(&flight).nm, 7, 1e-9, "140 kt");
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_nearest_day_is_taken_on_both_sides_of_midnight),
      cmocka_unit_test(without_a_clock_nothing_is_known_and_nothing_is_nan),
      cmocka_unit_test(utc_and_local_go_round_the_day_apart),
      cmocka_unit_test(minutes_past_are_the_next_such_minute),
      cmocka_unit_test(in_still_air_the_fix_is_crossed_every_four_minutes),
      cmocka_unit_test(in_wind_the_passages_are_a_steady_circuit_apart),
      cmocka_unit_test(the_endurance_is_what_is_left_over_alternate_and_reserve),
      cmocka_unit_test(an_amount_wins_over_minutes),
      cmocka_unit_test(without_board_or_flow_there_is_no_endurance),
      cmocka_unit_test(the_last_passage_in_time_is_found_to_the_very_end),
      cmocka_unit_test(fuel_and_passages_hang_together_in_random_cases),
      cmocka_unit_test(three_minutes_are_one_circuit_of_the_worked_outbound_time),
      cmocka_unit_test(the_circuits_are_counted_whatever_ends_the_hold),
      cmocka_unit_test(what_keeps_from_the_efc_is_named),
      cmocka_unit_test(an_efc_farther_than_a_flight_holds_is_missed_and_said),
      cmocka_unit_test(the_rule_without_radio_decides_the_worked_cases),
      cmocka_unit_test(three_minutes_before_the_fix_are_the_worked_distances),
      cmocka_unit_test(the_wind_on_the_arrival_counts),
  };
  return cmocka_run_group_tests_name("endurance", tests, NULL, NULL);
}
