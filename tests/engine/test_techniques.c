/* What each technique does, against published rules and worked numbers. */
#include "ox_test.h"

#include "oxbow/flight.h"
#include "oxbow/presets.h"

static ox_flight flight;

static ox_case hold(double tas_kt, double inbound_deg, double from_deg, double kt) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = tas_kt;
  c.hold.inbound_deg = inbound_deg;
  c.arrival.heading_deg = inbound_deg;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, from_deg, kt, OX_NORTH_TRUE};
  return c;
}

static bool advised(ox_advice_kind kind) {
  for (size_t i = 0; i < flight.advice_count; i++)
    if (flight.advice[i].kind == kind) return true;
  return false;
}

/* holding-standards 14.2, C (V = 120, one-minute legs, wind along the course, + is a headwind
 * inbound): outbound for an exact minute inbound; outbound that keeps the still-air outbound
 * distance; the rule of a second a knot (M, common practice). */
static void three_timing_conventions(void **state) {
  static const struct {
    double wind, inbound_exact_s, outbound_kept_s, rule_s;
  } rows[] = {
      {-20, 108.0, 72.0, 80}, {-10, 81.8, 65.5, 70}, {-5, 70.4, 62.6, 65}, {5, 50.4, 57.6, 55},
      {10, 41.5, 55.4, 50},   {15, 33.3, 53.3, 45},  {20, 25.7, 51.4, 40}, {30, 12.0, 48.0, 30},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = hold(120, 360, rows[i].wind > 0 ? 360 : 180, fabs(rows[i].wind));
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    assert_close(flight.circuits[1].outbound_s, rows[i].inbound_exact_s, 0.06, "inbound exact");
    c.technique.timing = OX_TIMING_OUTBOUND;
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    assert_close(flight.circuits[1].outbound_s, rows[i].outbound_kept_s, 0.06, "distance kept");
    assert_close(flight.steady.outbound_s, rows[i].outbound_kept_s, 0.06, "steady");
    c.technique.outbound = OX_OUTBOUND_RULE;
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    assert_close(flight.circuits[1].timed_s, rows[i].rule_s, 1e-9, "a second a knot");
  }
}

/* AIM 5-3-8 j8(c) (F): 8 degrees left inbound is 24 right outbound; headings 352 and 204 (C). */
static void triple_drift_of_eight_left_is_twentyfour_right(void **state) {
  ox_case c = hold(120, 360, 270, 120 * sin(8 * 3.14159265358979 / 180));
  c.technique.drift = OX_DRIFT_TRIPLE;
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  assert_angle_close(flight.steady.inbound_heading_deg, 352, 1e-6, "inbound");
  assert_angle_close(flight.circuits[0].outbound_heading_true_deg, 204, 1e-6, "outbound");
}

/* P-871 fig 4-16/17 (F): inbound 270, wind north, crab 5: outbound 075; overshoot intercepted on
 * 300 (course and 30 degrees); inbound 50 s where 60 were wanted: ten seconds more outbound. */
static void the_navy_example(void **state) {
  ox_case c = hold(120, 270, 360, 120 * sin(5 * 3.14159265358979 / 180));
  c.technique.drift = OX_DRIFT_TRIPLE;
  c.technique.outbound = OX_OUTBOUND_ADJUST;
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  assert_angle_close(flight.steady.inbound_heading_deg, 275, 1e-6, "inbound");
  assert_angle_close(flight.circuits[0].outbound_heading_true_deg, 75, 1e-6, "outbound");
  for (size_t i = 0; i + 1 < flight.circuit_count; i++) {
    const ox_circuit *m = &flight.circuits[i];
    assert_close(m->next_timed_s, m->timed_s + 60 - m->inbound_s, 1e-9, "add the shortfall");
    assert_close(flight.circuits[i + 1].timed_s, m->next_timed_s, 1e-9, "and it is flown");
  }
  c.technique.drift = OX_DRIFT_NONE; /* no correction: blown through the course, to the south */
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  bool seen = false;
  for (size_t i = 0; i < flight.leg_count; i++)
    if (flight.legs[i].kind == OX_LEG_INTERCEPT) {
      seen = true;
      assert_angle_close(flight.legs[i].heading0_true_deg,
                         flight.circuits[0].rollout_offset_nm < 0 ? 300 : 240, 1e-9, "cut of 30");
    }
  assert_true(seen);
}

/* T6B fig 7-5 (F): course 270, needle 255 (undershoot): stop the turn on 240. */
static void an_undershoot_stops_the_turn_thirty_degrees_early(void **state) {
  ox_case c = hold(120, 270, 0, 0);
  c.technique.drift = OX_DRIFT_NONE;
  c.technique.outbound = OX_OUTBOUND_NOMINAL;
  c.wind[0] = (ox_wind_row){0, 180, 12, OX_NORTH_TRUE}; /* the holding side is north: held off */
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  assert_true(flight.circuits[0].rollout_offset_nm > 0.05);
  for (size_t i = 0; i < flight.leg_count; i++)
    if (flight.legs[i].kind == OX_LEG_INTERCEPT)
      assert_angle_close(flight.legs[i].heading0_true_deg, 240, 1e-9, "heading of the cut");
}

/* P-871 p. 79, P-340 p. 156 (F): not under 30 s. */
static void the_adjusted_time_never_falls_below_thirty_seconds(void **state) {
  ox_case c = hold(100, 360, 20, 30);
  c.technique.drift = OX_DRIFT_TRIPLE;
  c.technique.outbound = OX_OUTBOUND_ADJUST;
  c.technique.circuits = 5;
  assert_int_equal(ox_flight_solve(&c, &flight), OX_ADVISORY);
  assert_true(advised(OX_ADVICE_OUTBOUND_FLOOR));
  for (size_t i = 1; i < flight.circuit_count; i++)
    assert_true(flight.circuits[i].timed_s >= 30 - 1e-9);
}

/* Remark to 14.2 (C): the one-shot correction converges over several circuits. */
static void adding_the_shortfall_converges(void **state) {
  ox_case c = hold(120, 360, 70, 12);
  c.technique.drift = OX_DRIFT_TRIPLE;
  c.technique.outbound = OX_OUTBOUND_ADJUST;
  c.technique.circuits = 6;
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  double first = fabs(flight.circuits[0].inbound_error_s);
  double last = fabs(flight.circuits[5].inbound_error_s);
  assert_true(last < 0.05 * first || last < 0.2);
}

/* Forum note (f): inbound 360, 20 degrees of crab; a parallel track outbound is flown on 160 (turn
 * of 140) with the wind from the right, on 200 (turn of 220) with the wind from the left. */
static void a_parallel_track_turns_by_140_or_220_degrees(void **state) {
  static const struct {
    double from_deg, inbound_deg, outbound_deg, turn_deg;
  } rows[] = {{90, 20, 160, 140}, {270, 340, 200, 220}};
  for (size_t i = 0; i < 2; i++) {
    ox_case c = hold(120, 360, rows[i].from_deg, 120 * sin(20 * 3.14159265358979 / 180));
    c.technique.drift = OX_DRIFT_TRACK;
    c.technique.outbound = OX_OUTBOUND_NOMINAL;
    c.technique.timing = OX_TIMING_OUTBOUND;
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    assert_angle_close(flight.steady.inbound_heading_deg, rows[i].inbound_deg, 1e-6, "inbound");
    assert_angle_close(flight.circuits[0].outbound_heading_true_deg, rows[i].outbound_deg, 1e-6,
                       "outbound");
    assert_angle_close(rows[i].outbound_deg - rows[i].inbound_deg, rows[i].turn_deg, 1e-9, "turn");
  }
}

/* Forum note (f): 10 degrees of drift inbound want 30 outbound for one-minute legs, 20 for two. */
static void exact_drift_is_three_times_for_one_minute_and_twice_for_two(void **state) {
  static const struct {
    double leg_s, correction_deg;
  } rows[] = {{60, 30}, {120, 20}};
  for (size_t i = 0; i < 2; i++) {
    ox_case c = hold(120, 360, 90, 120 * sin(10 * 3.14159265358979 / 180));
    c.hold.leg_s = rows[i].leg_s;
    c.technique.timing = OX_TIMING_OUTBOUND;
    c.technique.outbound = OX_OUTBOUND_NOMINAL;
    c.technique.clock = OX_CLOCK_LEVEL;
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    double wca = remainder(180 - flight.circuits[2].outbound_heading_true_deg, 360);
    assert_close(wca, rows[i].correction_deg, 1.6, "a rule of thumb, in sines exact");
    assert_close(sin(wca * 3.14159265358979 / 180),
                 (1 + 120 / rows[i].leg_s) * sin(10 * 3.14159265358979 / 180), 1e-6, "sines");
  }
}

/* Gate angle in still air, C: atan(2r/leg): 60 s 32.48, 90 s 23.00, 120 s 17.66, 180 s 11.98; the
 * UK-style note's 30-degree gate (f). */
static void the_gate_angle_in_still_air(void **state) {
  static const double rows[][2] = {{60, 32.48}, {90, 23.00}, {120, 17.66}, {180, 11.98}};
  for (size_t i = 0; i < 4; i++) {
    ox_case c = hold(120, 45, 0, 0);
    c.hold.leg_s = rows[i][0];
    c.hold.turns = i % 2 ? OX_TURNS_LEFT : OX_TURNS_RIGHT;
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    assert_close(flight.circuits[0].gate_deg, rows[i][1], 0.006, "gate");
  }
}

static void a_fixed_bank_gives_its_own_rate(void **state) {
  ox_case c = hold(120, 360, 0, 0);
  c.aircraft.turn_by = OX_TURN_BY_BANK;
  c.aircraft.max_bank_deg = 30;
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  assert_close(flight.setup.rate_deg_s, 5.255, 5e-4, "holding-standards 3.1: 30 deg at 120 kt");
  assert_close(flight.setup.radius_nm, 0.3634, 5e-5, "radius");
}

/* Doc 8168 Vol I 1.4.5 (f): offset entry makes good a track 30 degrees from the reciprocal. */
static void an_entry_by_track_makes_good_the_line(void **state) {
  ox_case c = hold(120, 360, 90, 25);
  c.arrival.heading_deg = 140;
  c.technique.entry_line = OX_ENTRY_LINE_TRACK;
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  assert_int_equal(flight.flown, OX_ENTRY_TEARDROP);
  for (size_t i = 0; i < flight.leg_count; i++)
    if (flight.legs[i].kind == OX_LEG_ENTRY_OUTBOUND)
      assert_angle_close(ox_leg_at(&flight.legs[i], flight.legs[i].t0_s).track_true_deg, 150, 1e-9,
                         "track");
}

static void turning_late_overshoots_and_comes_back(void **state) {
  ox_case c = hold(120, 360, 0, 0);
  c.arrival.heading_deg = 150;
  c.technique.circuits = 1;
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  double exact_end_s = ox_flight_end_s(&flight);
  size_t exact_legs = flight.leg_count;
  c.technique.lead = OX_LEAD_NONE;
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  assert_true(flight.leg_count > exact_legs);
  assert_true(fabs(ox_flight_end_s(&flight) - exact_end_s) > 0.5);
  assert_true(flight.circuits[0].complete);
}

static void every_preset_sets_what_it_is_known_by(void **state) {
  assert_true(ox_preset_count() >= 8);
  for (size_t i = 0; i < ox_preset_count(); i++) {
    const ox_preset *p = ox_preset_at(i);
    assert_true(strlen(p->key) > 1 && strlen(p->name) > 4 && strlen(p->rule) > 20);
    assert_true(strlen(p->source) > 8);
    for (int high = 0; high <= 1; high++) {
      ox_case c = hold(120, 360, 90, 15);
      c.hold.altitude_ft = high ? 16000 : 5000;
      assert_true(ox_preset_apply(i, &c));
      assert_int_equal(ox_case_check(&c, NULL, 0), 0);
      assert_int_equal(ox_preset_of(&c), (int)i);
      assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
      assert_true(flight.circuits[0].complete);
    }
  }
  ox_case c = hold(120, 360, 90, 15), before = c;
  assert_false(ox_preset_apply(ox_preset_count(), &c));
  assert_true(ox_case_equal(&c, &before));
  assert_null(ox_preset_at(ox_preset_count()));
  c.technique.intercept_deg = 45; /* not part of any preset */
  ox_preset_apply(1, &c);
  c.technique.drift = OX_DRIFT_SINGLE;
  assert_int_equal(ox_preset_of(&c), -1);
}

/* --- the lead ------------------------------------------------------------------------------ */

/* Undershoot in still air: the turn is stopped on the intercept heading. The bearing to the fix
 * where the turn onto the course begins is off it by the lead; exact by construction (C). */
static void a_lead_in_degrees_begins_the_turn_that_far_off_the_course(void **state) {
  static const double leads_deg[] = {2, 5, 10};
  double last_t_s = HUGE_VAL;
  for (size_t i = 0; i < 3; i++) {
    ox_case c = ox_case_default();
    c.wind_count = 1;
    c.wind[0] = (ox_wind_row){0, 270, 10, OX_NORTH_TRUE}; /* blows to the holding side */
    c.technique.drift = OX_DRIFT_NONE;
    c.hold.leg_s = 120;
    c.technique.outbound = OX_OUTBOUND_NOMINAL;
    c.technique.lead = OX_LEAD_DEGREES;
    c.technique.lead_deg = leads_deg[i];
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    const ox_leg *straight = NULL;
    for (size_t k = 0; k < flight.leg_count && !straight; k++)
      if (flight.legs[k].kind == OX_LEG_INTERCEPT) straight = &flight.legs[k];
    assert_non_null(straight);
    ox_vec p = straight->p1_nm;
    assert_close(atan2(p.x, -p.y) * 180 / acos(-1), leads_deg[i], 1e-9, "bearing off the course");
    assert_true(straight->t1_s < last_t_s); /* more lead, sooner */
    last_t_s = straight->t1_s;
    assert_true(flight.circuits[0].complete);
  }
}

/* A lead of none is a lead of so little that it does not matter. */
static void the_smallest_lead_is_nearly_none(void **state) {
  double begin_s[2];
  for (int degrees = 0; degrees < 2; degrees++) {
    ox_case c = ox_case_default();
    c.wind_count = 1;
    c.wind[0] = (ox_wind_row){0, 270, 10, OX_NORTH_TRUE};
    c.technique.drift = OX_DRIFT_NONE;
    c.hold.leg_s = 120;
    c.technique.outbound = OX_OUTBOUND_NOMINAL;
    c.technique.lead = degrees ? OX_LEAD_DEGREES : OX_LEAD_NONE;
    c.technique.lead_deg = 0.5;
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    for (size_t k = flight.leg_count; k > 0; k--)
      if (flight.legs[k - 1].kind == OX_LEG_INTERCEPT) begin_s[degrees] = flight.legs[k - 1].t1_s;
  }
  assert_true(begin_s[1] < begin_s[0]);
  assert_close(begin_s[1], begin_s[0], 3, "seconds");
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_lead_in_degrees_begins_the_turn_that_far_off_the_course),
      cmocka_unit_test(the_smallest_lead_is_nearly_none),
      cmocka_unit_test(three_timing_conventions),
      cmocka_unit_test(triple_drift_of_eight_left_is_twentyfour_right),
      cmocka_unit_test(the_navy_example),
      cmocka_unit_test(an_undershoot_stops_the_turn_thirty_degrees_early),
      cmocka_unit_test(the_adjusted_time_never_falls_below_thirty_seconds),
      cmocka_unit_test(adding_the_shortfall_converges),
      cmocka_unit_test(a_parallel_track_turns_by_140_or_220_degrees),
      cmocka_unit_test(exact_drift_is_three_times_for_one_minute_and_twice_for_two),
      cmocka_unit_test(the_gate_angle_in_still_air),
      cmocka_unit_test(a_fixed_bank_gives_its_own_rate),
      cmocka_unit_test(an_entry_by_track_makes_good_the_line),
      cmocka_unit_test(turning_late_overshoots_and_comes_back),
      cmocka_unit_test(every_preset_sets_what_it_is_known_by),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
