/* What a flight says about itself: each remark where it is due, with its numbers, and not where it
 * is not. Tags: F read in the document, C computed from general mathematics. */
#include "ox_test.h"
#include "oxbow/flight.h"
#include "oxbow/units.h"
#include "random_case.h"

static ox_flight flight;

static ox_case windy_case(double tas_kt, double from_deg, double kt) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = tas_kt;
  c.hold.inbound_deg = 360;
  c.hold.leg_s = 60;
  c.arrival.heading_deg = 360;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){.from_deg = from_deg, .kt = kt};
  return c;
}

static const ox_advice *advice_of(ox_advice_kind kind) {
  for (size_t i = 0; i < flight.advice_count; i++)
    if (flight.advice[i].kind == kind) return &flight.advice[i];
  return NULL;
}

static void fly(const ox_case *c) {
  assert_int_not_equal(ox_flight_solve(c, &flight), OX_ERROR);
}

static void a_fast_hold_names_the_speed_and_the_limit(void **state) {
  ox_case c = windy_case(0, 360, 0);
  c.aircraft.ias_kt = 215;
  c.hold.altitude_ft = 6000;
  fly(&c);
  const ox_advice *a = advice_of(OX_ADVICE_SPEED_ABOVE_LIMIT);
  assert_non_null(a);
  assert_close(a->a, 215, 1e-9, "KIAS");
  assert_close(a->b, 200, 0, "AIM TBL 5-3-24 (F)");
  c.hold.limit_kias = 230;
  fly(&c);
  assert_null(advice_of(OX_ADVICE_SPEED_ABOVE_LIMIT));
}

/* P-871 p. 79 (F): the corrected outbound time is never under 30 s. */
static void an_outbound_time_under_thirty_seconds_is_raised_and_said(void **state) {
  ox_case c = windy_case(120, 360, 30);
  c.technique.outbound = OX_OUTBOUND_ADJUST;
  c.technique.circuits = 4;
  fly(&c);
  const ox_advice *a = advice_of(OX_ADVICE_OUTBOUND_FLOOR);
  assert_non_null(a);
  assert_true(a->a < 30);
  assert_close(a->b, 30, 1e-9, "flown");
  assert_close(a->a, 60 + flight.circuits[0].timed_s - flight.circuits[0].inbound_s, 1e-6,
               "wanted");
  c.wind[0].kt = 5;
  fly(&c);
  assert_null(advice_of(OX_ADVICE_OUTBOUND_FLOOR));
}

static void three_times_a_great_drift_is_capped_and_said(void **state) {
  ox_case c = windy_case(90, 90, 45); /* 30 degrees inbound, 90 wanted outbound */
  c.technique.drift = OX_DRIFT_TRIPLE;
  c.technique.outbound = OX_OUTBOUND_NOMINAL;
  fly(&c);
  const ox_advice *a = advice_of(OX_ADVICE_DRIFT_CAPPED);
  assert_non_null(a);
  assert_close(fabs(a->a), 90, 1e-6, "wanted");
  assert_true(fabs(a->b) < fabs(a->a));
  assert_angle_close(flight.circuits[0].outbound_heading_true_deg, 180 - fabs(a->b), 1e-6,
                     "flown");
  c.wind[0].kt = 20;
  fly(&c);
  assert_null(advice_of(OX_ADVICE_DRIFT_CAPPED));
}

static void a_wrong_inbound_time_is_said_from_ten_seconds(void **state) {
  for (double kt = -35; kt <= 30; kt += 2.5) {
    ox_case c = windy_case(120, kt > 0 ? 360 : 180, fabs(kt));
    c.technique.outbound = OX_OUTBOUND_NOMINAL;
    c.technique.circuits = 1;
    fly(&c);
    double off = fabs(flight.circuits[0].inbound_s - 60);
    if (fabs(off - 10) < 0.01) continue;
    const ox_advice *a = advice_of(OX_ADVICE_LONG_INBOUND);
    assert_int_equal(a != NULL, off > 10);
    if (!a) continue;
    assert_close(a->a, flight.circuits[0].inbound_s, 1e-9, "measured");
    assert_close(a->b, 60, 1e-9, "wanted");
  }
}

static void an_overshoot_says_how_far(void **state) {
  ox_case c = windy_case(120, 90, 25); /* from the holding side: blown across the course */
  c.technique.drift = OX_DRIFT_NONE;
  c.technique.outbound = OX_OUTBOUND_NOMINAL;
  c.technique.circuits = 1;
  fly(&c);
  const ox_advice *a = advice_of(OX_ADVICE_OVERSHOOT);
  assert_non_null(a);
  assert_true(a->a > 0.1 && flight.circuits[0].rollout_offset_nm < 0);
  c.wind[0].from_deg = 270;
  fly(&c);
  assert_null(advice_of(OX_ADVICE_OVERSHOOT));
  assert_true(flight.circuits[0].rollout_offset_nm > 0);
}

static void an_aircraft_never_abeam_is_timed_from_wings_level(void **state) {
  ox_case c = windy_case(100, 180, 120); /* carried past the fix for good */
  c.technique.drift = OX_DRIFT_NONE;
  c.technique.outbound = OX_OUTBOUND_NOMINAL;
  fly(&c);
  const ox_advice *a = advice_of(OX_ADVICE_NO_ABEAM);
  assert_non_null(a);
  assert_close(a->c, 1, 0, "circuit");
  double level = (double)NAN, clock = (double)NAN;
  for (size_t i = 0; i < flight.event_count; i++) {
    if (flight.events[i].circuit != 1) continue;
    if (flight.events[i].kind == OX_EVENT_WINGS_LEVEL && isnan(level))
      level = flight.events[i].t_s;
    if (flight.events[i].kind == OX_EVENT_CLOCK_START) clock = flight.events[i].t_s;
  }
  assert_close(clock, level, 1e-9, "clock at wings level");
}

/* In random flights: the fix is said not to be regained exactly where the flight does not end over
 * it, and there is no steady hold exactly where the solver says so. */
static void lost_fixes_and_missing_holds_are_said_exactly_where_they_are(void **state) {
  ox_random r = {131};
  int lost = 0, none = 0;
  for (int i = 0, cases = ox_test_cases(20000); i < cases; i++) {
    ox_case c = ox_random_case(&r, i % 2 ? 1.5 : 0.6);
    fly(&c);
    ox_vec end = ox_flight_at(&flight, ox_flight_end_s(&flight)).p_nm;
    bool over = hypot(end.x, end.y) <= 1e-8;
    assert_int_equal(advice_of(OX_ADVICE_NOT_REGAINED) != NULL, !over);
    const ox_advice *a = advice_of(OX_ADVICE_NO_STEADY);
    assert_int_equal(a != NULL, flight.steady.why != OX_STEADY_EXISTS);
    if (a) assert_close(a->a, (int)flight.steady.why, 0, "the reason");
    lost += !over;
    none += a != NULL;
  }
  assert_true(lost > ox_test_least(100) && none > ox_test_least(100));
}

static void entries_and_their_alternatives_are_named(void **state) {
  ox_case c = windy_case(120, 360, 0);
  c.arrival.heading_deg = 112; /* two degrees inside the teardrop sector */
  fly(&c);
  const ox_advice *a = advice_of(OX_ADVICE_ENTRY_EITHER);
  assert_non_null(a);
  assert_close(a->a, OX_ENTRY_TEARDROP, 0, "by the sector");
  assert_close(a->b, OX_ENTRY_DIRECT, 0, "the other");
  assert_close(fabs(a->c), 2, 1e-9, "degrees");
  c.technique.entry = OX_CHOOSE_PARALLEL;
  fly(&c);
  a = advice_of(OX_ADVICE_ENTRY_NOT_BY_SECTOR);
  assert_non_null(a);
  assert_close(a->a, OX_ENTRY_PARALLEL, 0, "flown");
  assert_close(a->b, OX_ENTRY_TEARDROP, 0, "by the sector");
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_fast_hold_names_the_speed_and_the_limit),
      cmocka_unit_test(an_outbound_time_under_thirty_seconds_is_raised_and_said),
      cmocka_unit_test(three_times_a_great_drift_is_capped_and_said),
      cmocka_unit_test(a_wrong_inbound_time_is_said_from_ten_seconds),
      cmocka_unit_test(an_overshoot_says_how_far),
      cmocka_unit_test(an_aircraft_never_abeam_is_timed_from_wings_level),
      cmocka_unit_test(lost_fixes_and_missing_holds_are_said_exactly_where_they_are),
      cmocka_unit_test(entries_and_their_alternatives_are_named),
  };
  return cmocka_run_group_tests_name("advice", tests, NULL, NULL);
}
