/* The fixed list of edge values: signed zeros, the ends of the circle, winds at and above the
 * airspeed, standing still, the limits of circuits and legs; and anything at all as input. */
#include <float.h>
#include <limits.h>

#include "invariants.h"
#include "oxbow/fields.h"
#include "oxbow/units.h"
#include "random_case.h"

static ox_flight flight, other;
static ox_sweep sweep;

static ox_case case_of(double tas, double from, double kt) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = tas;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){.from_deg = from, .kt = kt};
  return c;
}

/* Flies a case that must be accepted and checks the path and everything finite. */
static void fly(const ox_case *c) {
  assert_int_not_equal(ox_flight_solve(c, &flight), OX_ERROR);
  memset(&sweep, 0, sizeof sweep);
  ox_check_legs(&sweep, c, &flight);
  ox_check_events(&sweep, c, &flight);
  static const ox_property path[] = {OX_HOLDS_FINITE,   OX_HOLDS_LEGS_MEET,   OX_HOLDS_LEG_ENDS,
                                     OX_HOLDS_HEADINGS, OX_HOLDS_AIRSPEED,    OX_HOLDS_QUERIES,
                                     OX_HOLDS_FIX,      OX_HOLDS_EVENT_ORDER, OX_HOLDS_ABEAM,
                                     OX_HOLDS_ESTABLISHED};
  for (size_t i = 0; i < sizeof path / sizeof *path; i++) {
    if (sweep.broken[path[i]] == 0) continue;
    print_error("%s\n", sweep.first[path[i]]);
    fail();
  }
}

static double end_distance_nm(void) {
  ox_vec p = ox_flight_at(&flight, ox_flight_end_s(&flight)).p_nm;
  return hypot(p.x, p.y);
}

static bool advised(ox_advice_kind kind) {
  for (size_t i = 0; i < flight.advice_count; i++)
    if (flight.advice[i].kind == kind) return true;
  return false;
}

static void north_is_the_same_as_0_as_minus_0_and_as_360(void **state) {
  static const double norths[] = {0.0, -0.0, 360.0};
  ox_case c = case_of(120, 45, 20);
  c.hold.inbound_deg = 0;
  c.arrival.heading_deg = 250;
  ox_flight_solve(&c, &other);
  for (int i = 0; i < 3; i++)
    for (int j = 0; j < 3; j++) {
      c.hold.inbound_deg = norths[i];
      c.variation_deg = j == 1 ? -0.0 : 0.0;
      c.wind[0].from_deg = 45;
      fly(&c);
      assert_int_equal(flight.leg_count, other.leg_count);
      for (size_t k = 0; k < flight.leg_count; k++) {
        assert_close(flight.legs[k].p1_nm.x, other.legs[k].p1_nm.x, 1e-12, "east");
        assert_close(flight.legs[k].p1_nm.y, other.legs[k].p1_nm.y, 1e-12, "north");
      }
    }
}

static void directions_just_below_360_are_next_to_north(void **state) {
  for (int entry = 0; entry < 3; entry++) {
    ox_case c = case_of(120, 360, 20);
    c.technique.entry = (ox_entry_order)(OX_CHOOSE_DIRECT + entry);
    c.hold.inbound_deg = 0;
    c.arrival.heading_deg = 0;
    fly(&c);
    other = flight;
    c.hold.inbound_deg = 359.9999;
    c.arrival.heading_deg = 359.9999;
    c.wind[0].from_deg = 359.9999;
    fly(&c);
    assert_close(ox_flight_end_s(&flight), ox_flight_end_s(&other), 1e-6, "duration");
    assert_int_equal(flight.flown, other.flown);
    double s, k;
    ox_sincos_deg(-0.0001, &s, &k);
    for (double t = 0; t < ox_flight_end_s(&other); t += 7) {
      ox_vec p = ox_flight_at(&other, t).p_nm, q = ox_flight_at(&flight, t).p_nm;
      assert_close(q.x, p.x * k + p.y * s, 1e-8, "turned by a ten-thousandth of a degree");
      assert_close(q.y, p.y * k - p.x * s, 1e-8, "turned by a ten-thousandth of a degree");
    }
  }
}

static void a_wind_of_half_a_knot_is_no_special_case(void **state) {
  for (double from = 0; from < 360; from += 15)
    for (int turns = 0; turns < 2; turns++) {
      ox_case c = case_of(120, from, 0.5);
      c.hold.turns = (ox_turns)turns;
      fly(&c);
      assert_int_equal(flight.steady.why, OX_STEADY_EXISTS);
      assert_close(end_distance_nm(), 0, 1e-9, "ends over the fix");
      assert_close(flight.circuits[2].inbound_s, 60, 1e-8, "a minute inbound");
      assert_close(flight.circuits[2].outbound_s, 60, 3, "near a minute outbound");
      assert_true(fabs(flight.steady.inbound_wca_deg) < 0.25);
    }
}

/* Wind equal to the airspeed and above it from all around, with every technique. */
static void winds_at_and_above_the_airspeed_give_a_whole_flight(void **state) {
  static const double shares[] = {0.999999, 1, 1.000001, 1.5, 2.0};
  for (size_t i = 0; i < sizeof shares / sizeof *shares; i++)
    for (double from = 0; from < 360; from += 30)
      for (int technique = 0; technique < 24; technique++) {
        ox_case c = case_of(100, from, fmin(250, 100 * shares[i]));
        c.technique.drift = (ox_drift)(technique % 6);
        c.technique.outbound = (ox_outbound)(technique / 6);
        c.technique.entry = (ox_entry_order)(technique % 4);
        fly(&c);
        if (shares[i] < 1) continue;
        assert_int_not_equal(flight.steady.why, OX_STEADY_EXISTS);
        assert_true(advised(OX_ADVICE_NO_STEADY));
      }
}

static void a_direct_headwind_stops_the_arrival_and_says_so(void **state) {
  ox_case c = case_of(100, 360, 100); /* heading 360 into 100 kt: standing still */
  fly(&c);
  assert_true(advised(OX_ADVICE_NO_ARRIVAL));
  assert_close(ox_flight_begin_s(&flight), 0, 0, "begins over the fix");
  c.wind[0].kt = 95;
  fly(&c);
  assert_false(advised(OX_ADVICE_NO_ARRIVAL));
  assert_close(ox_flight_begin_s(&flight), -OX_S_PER_H, 1e-6, "5 NM at five knots");
}

/* The zero-outbound limit V/3 (C): with one-minute legs at rate one the turns alone use up the
 * inbound leg. The flight must be whole at, just below and just above it. */
static void a_third_of_the_airspeed_along_the_course_is_flown(void **state) {
  static const double winds[] = {40 - 1e-9, 40, 40 + 1e-9, 39.9, 40.1};
  for (size_t i = 0; i < sizeof winds / sizeof *winds; i++)
    for (double from = 180; from <= 360; from += 180)
      for (int turns = 0; turns < 2; turns++) {
        ox_case c = case_of(120, from, winds[i]);
        c.hold.turns = (ox_turns)turns;
        fly(&c);
        assert_close(end_distance_nm(), 0, 1e-9, "ends over the fix");
        if (from != 180) continue;
        assert_int_equal(flight.steady.why, OX_STEADY_EXISTS); /* a tailwind is no limit */
        /* [(V + w) t + w tau] / (V - w) with t 60, tau 120: 180 s at 40 kt (C). */
        assert_close(flight.circuits[2].outbound_s,
                     ((120 + winds[i]) * 60 + winds[i] * 120) / (120 - winds[i]), 1e-6,
                     "outbound");
      }
}

static void an_arrival_from_no_distance_begins_over_the_fix(void **state) {
  for (double heading = 0; heading < 360; heading += 10) {
    ox_case c = case_of(120, 300, 25);
    c.arrival.distance_nm = 0;
    c.arrival.heading_deg = heading;
    fly(&c);
    assert_close(ox_flight_begin_s(&flight), 0, 0, "begin");
    assert_int_not_equal(flight.legs[0].kind, OX_LEG_ARRIVAL);
    assert_angle_close(flight.legs[0].heading0_true_deg, heading, 1e-12, "heading");
    assert_int_equal(flight.events[0].kind, OX_EVENT_FIX);
    assert_close(flight.events[0].t_s, 0, 0, "over the fix");
  }
}

static void one_circuit_and_forty_are_flown_whole(void **state) {
  for (int technique = 0; technique < 48; technique++) {
    ox_case c = case_of(120, 75, 25);
    c.technique.drift = (ox_drift)(technique % 6);
    c.technique.outbound = (ox_outbound)(technique / 6 % 4);
    c.technique.timing = (ox_timing)(technique / 24);
    c.technique.roll_s = technique % 5;
    c.technique.circuits = 1;
    fly(&c);
    assert_int_equal(flight.circuit_count, 1);
    double first_end = flight.circuits[0].end_t_s;
    c.technique.circuits = OX_CIRCUITS_MAX;
    fly(&c);
    assert_int_equal(flight.circuit_count, OX_CIRCUITS_MAX);
    assert_true(flight.circuits[OX_CIRCUITS_MAX - 1].complete);
    assert_close(flight.circuits[0].end_t_s, first_end, 1e-9, "the first circuit is the same");
    assert_close(end_distance_nm(), 0, 1e-9, "ends over the fix");
  }
}

static void legs_by_distance_are_flown_at_both_ends_of_their_range(void **state) {
  static const double lengths[] = {0.5, 1, 4, 20, 60};
  for (size_t i = 0; i < sizeof lengths / sizeof *lengths; i++)
    for (int end = 0; end < 2; end++)
      for (int turns = 0; turns < 2; turns++) {
        ox_case c = case_of(150, 200, 30);
        c.hold.leg_by = OX_LEG_BY_DISTANCE;
        c.hold.leg_nm = lengths[i];
        c.hold.leg_end = (ox_leg_end)end;
        c.hold.turns = (ox_turns)turns;
        fly(&c);
        assert_close(end_distance_nm(), 0, 1e-9, "ends over the fix");
      }
}

static void all_extremes_of_the_table_together_are_flown(void **state) {
  size_t count;
  const ox_field *fields = ox_fields(&count);
  ox_random r = {91};
  for (int i = 0, cases = ox_test_cases(20000); i < cases; i++) {
    ox_case c = case_of(120, 360.0 * ox_random_below(&r, 2), 250.0 * ox_random_below(&r, 2));
    for (size_t f = 0; f < count; f++) {
      if (strcmp(fields[f].key, "technique.circuits") == 0) continue;
      int which = ox_random_below(&r, 4); /* both ends, or left as it is */
      if (which < 2) ox_field_set(&fields[f], &c, which ? fields[f].max : fields[f].min);
    }
    if (ox_case_check(&c, NULL, 0) > 0) continue;
    fly(&c);
  }
}

/* A double of any kind that is finite: small, usual, huge, zero, negative. */
static double any_finite(ox_random *r) {
  static const double odd[] = {0.0, -0.0, 1, -1, 360, 90, 1e-300, -1e300, DBL_MAX, -DBL_MAX,
                               5e-324, 1e9};
  switch (ox_random_below(r, 4)) {
  case 0: return odd[ox_random_below(r, 12)];
  case 1: return ox_random_between(r, -1, 1) * pow(10, ox_random_between(r, -12, 300));
  default: return ox_random_between(r, 0, 400);
  }
}

static int any_int(ox_random *r) {
  static const int odd[] = {INT_MIN, -1, 7, 41, INT_MAX, 13, 1000};
  return ox_random_below(r, 3) ? ox_random_below(r, 3) : odd[ox_random_below(r, 7)];
}

static void put_anything(ox_random *r, const ox_field *field, void *base) {
  char *at = (char *)base + field->offset;
  if (field->kind == OX_FIELD_NUMBER) {
    double d = any_finite(r);
    memcpy(at, &d, sizeof d);
  } else {
    int i = any_int(r);
    memcpy(at, &i, sizeof i);
  }
}

static void anything_finite_is_refused_whole_or_flown_whole(void **state) {
  static ox_flight untouched;
  size_t count, wind_count;
  const ox_field *fields = ox_fields(&count), *wind = ox_wind_fields(&wind_count);
  memset(&untouched, 0xa5, sizeof untouched);
  ox_random r = {92};
  int flown = 0, refused = 0;
  for (int i = 0, cases = ox_test_cases(20000); i < cases; i++) {
    ox_case c = ox_random_case(&r, 1.5);
    int spoilt = ox_random_below(&r, 3) ? ox_random_below(&r, 3) : (int)count;
    for (int k = 0; k < spoilt; k++)
      put_anything(&r, &fields[(size_t)ox_random_below(&r, (int)count)], &c);
    if (ox_random_below(&r, 3) == 0) c.wind_count = any_int(&r);
    if (ox_random_below(&r, 3) == 0)
      put_anything(&r, &wind[ox_random_below(&r, 4)], &c.wind[ox_random_below(&r, 12)]);
    bool valid = ox_case_check(&c, NULL, 0) == 0;
    memset(&flight, 0xa5, sizeof flight);
    ox_status status = ox_flight_solve(&c, &flight);
    assert_int_equal(status == OX_ERROR, !valid);
    if (!valid) {
      assert_memory_equal(&flight, &untouched, sizeof flight);
      refused++;
      continue;
    }
    flown++;
    fly(&c);
  }
  assert_true(flown > ox_test_least(2000) && refused > ox_test_least(2000));
}

static void the_status_says_whether_there_is_advice(void **state) {
  ox_random r = {93};
  int quiet = 0;
  for (int i = 0, cases = ox_test_cases(5000); i < cases; i++) {
    ox_case c = ox_random_case(&r, i % 2 ? 0.1 : 0.6);
    ox_status status = ox_flight_solve(&c, &flight);
    assert_int_equal(status, flight.advice_count > 0 ? OX_ADVISORY : OX_OK);
    quiet += flight.advice_count == 0;
  }
  ox_case calm = ox_case_default();
  assert_int_equal(ox_flight_solve(&calm, &flight), OX_OK);
  assert_true(quiet > 0);
}

static void a_flight_without_legs_answers_zero(void **state) {
  memset(&flight, 0, sizeof flight);
  ox_state at = ox_flight_at(&flight, 12), zero;
  memset(&zero, 0, sizeof zero);
  assert_close(ox_flight_begin_s(&flight), 0, 0, "begin");
  assert_close(ox_flight_end_s(&flight), 0, 0, "end");
  assert_int_equal(ox_flight_leg_index(&flight, 12), 0);
  assert_true(at.p_nm.x == 0 && at.p_nm.y == 0 && at.gs_kt == 0 && at.heading_true_deg == 0);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(north_is_the_same_as_0_as_minus_0_and_as_360),
      cmocka_unit_test(directions_just_below_360_are_next_to_north),
      cmocka_unit_test(a_wind_of_half_a_knot_is_no_special_case),
      cmocka_unit_test(winds_at_and_above_the_airspeed_give_a_whole_flight),
      cmocka_unit_test(a_direct_headwind_stops_the_arrival_and_says_so),
      cmocka_unit_test(a_third_of_the_airspeed_along_the_course_is_flown),
      cmocka_unit_test(an_arrival_from_no_distance_begins_over_the_fix),
      cmocka_unit_test(one_circuit_and_forty_are_flown_whole),
      cmocka_unit_test(legs_by_distance_are_flown_at_both_ends_of_their_range),
      cmocka_unit_test(all_extremes_of_the_table_together_are_flown),
      cmocka_unit_test(anything_finite_is_refused_whole_or_flown_whole),
      cmocka_unit_test(the_status_says_whether_there_is_advice),
      cmocka_unit_test(a_flight_without_legs_answers_zero),
  };
  return cmocka_run_group_tests_name("edges", tests, NULL, NULL);
}
