/* Winds by altitude, winds that change, climbs. */
#include "ox_test.h"

#include "oxbow/atmosphere.h"
#include "oxbow/flight.h"
#include "oxbow/wind.h"

static ox_flight flight;

static void wind_between_rows_is_the_mean_of_the_vectors(void **state) {
  ox_case c = ox_case_default();
  c.hold.altitude_ft = 6000;
  c.wind_count = 2;
  c.wind[0] = (ox_wind_row){4000, 360, 20, OX_NORTH_TRUE};
  c.wind[1] = (ox_wind_row){8000, 90, 20, OX_NORTH_TRUE};
  ox_setup s;
  assert_int_equal(ox_setup_make(&c, &s), OX_OK);
  /* C: halfway between 20 kt from north and 20 kt from east: 20/sqrt(2) kt from 045. */
  assert_close(s.wind_speed_kt, 20 / sqrt(2), 1e-12, "speed");
  assert_angle_close(s.wind_from_true_deg, 45, 1e-9, "direction");
}

static void a_changed_wind_is_flown_from_its_minute_on(void **state) {
  ox_case c = ox_case_default();
  c.technique.circuits = 4;
  c.wind_change_count = 1;
  c.wind_changes[0] = (ox_wind_change){5.2, 90, 25, OX_NORTH_TRUE};
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  ox_vec later = ox_wind_velocity_kt(90, 25);
  for (size_t i = 0; i < flight.leg_count; i++) {
    const ox_leg *leg = &flight.legs[i];
    bool after = leg->t0_s >= 312 - 1e-6;
    assert_close(leg->wind_kt.x, after ? later.x : 0, 1e-12, "east");
    assert_true(after || leg->t1_s <= 312 + 1e-6); /* no leg flies through the change */
  }
}

/* The hold is drifted off in the circuit of the change and is steady again two circuits later. */
static void the_hold_is_brought_back_after_a_change(void **state) {
  ox_case c = ox_case_default();
  c.technique.circuits = 6;
  c.wind_change_count = 1;
  c.wind_changes[0] = (ox_wind_change){5.2, 90, 25, OX_NORTH_TRUE};
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  assert_close(flight.circuits[0].inbound_s, 60, 1e-9, "before");
  assert_true(fabs(flight.circuits[1].rollout_offset_nm) > 0.1);
  ox_steady after;
  ox_steady_solve(360, flight.setup.tas_kt, 3, 0, ox_wind_velocity_kt(90, 25), OX_GOAL_INBOUND_S, 60,
                  &after);
  for (int i = 4; i < 6; i++) {
    assert_close(flight.circuits[i].outbound_s, after.outbound_s, 1e-6, "steady again");
    assert_close(flight.circuits[i].inbound_s, 60, 1e-6, "inbound again");
  }
}

static void a_climb_keeps_the_indicated_airspeed(void **state) {
  ox_case c = ox_case_default();
  c.hold.altitude_ft = 5000;
  c.hold.climb_to_ft = 9000;
  c.hold.climb_ft_min = 500;
  c.technique.circuits = 4;
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  assert_close(flight.setup.climb_end_s, 480, 1e-9, "eight minutes");
  assert_close(ox_flight_altitude_ft(&c, &flight, -100), 5000, 0, "before the fix");
  assert_close(ox_flight_altitude_ft(&c, &flight, 240), 7000, 1e-9, "half way");
  assert_close(ox_flight_altitude_ft(&c, &flight, 900), 9000, 0, "level");
  for (size_t i = 0; i < flight.leg_count; i++) {
    const ox_leg *leg = &flight.legs[i];
    assert_close(leg->tas_kt, ox_tas_kt(100, leg->altitude_ft, 0), 1e-9, "TAS of 100 KIAS");
    double mid_s = 0.5 * (leg->t0_s + leg->t1_s);
    /* Each step is flown at the altitude of its middle: never more than half a step off. */
    assert_close(ox_flight_altitude_ft(&c, &flight, mid_s), leg->altitude_ft, 250 + 1e-6, "step");
  }
}

static void a_hold_to_an_altitude_ends_at_the_fix_after_reaching_it(void **state) {
  ox_case c = ox_case_default();
  c.hold.ends = OX_HOLD_TO_ALTITUDE;
  c.hold.climb_to_ft = 8000;
  c.hold.climb_ft_min = 500;
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  double end_s = ox_flight_end_s(&flight);
  assert_true(end_s >= 360);
  assert_true(flight.circuits[flight.circuit_count - 1].fix_t_s < 360);
  c.hold.climb_to_ft = 0; /* nothing to climb: over at the first passage */
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  assert_int_equal(flight.circuit_count, 0);
}

/* AIM 5-4-9 (F): complete when established inbound after the entry. */
static void a_reversal_ends_established_inbound_after_the_entry(void **state) {
  static const struct {
    double heading_deg;
    size_t circuits;
  } rows[] = {{360, 1}, {150, 0}, {230, 0}};
  for (size_t i = 0; i < 3; i++) {
    ox_case c = ox_case_default();
    c.hold.ends = OX_HOLD_REVERSAL;
    c.arrival.heading_deg = rows[i].heading_deg;
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    assert_int_equal(flight.circuit_count, rows[i].circuits);
    ox_state end = ox_flight_at(&flight, ox_flight_end_s(&flight));
    assert_close(ox_vec_length(end.p_nm), 0, 1e-9, "over the fix");
    assert_angle_close(end.heading_true_deg, 360, 1e-9, "inbound");
  }
}

/* Seeded: whatever changes, legs meet, headings run through and the fix is met. */
static void changes_and_climbs_keep_every_invariant(void **state) {
  ox_random r = {3};
  for (int i = 0, cases = ox_test_cases(20000); i < cases; i++) {
    ox_case c = ox_case_default();
    c.hold.inbound_deg = ox_random_between(&r, 0, 360);
    c.hold.turns = ox_random_below(&r, 2) ? OX_TURNS_LEFT : OX_TURNS_RIGHT;
    c.arrival.heading_deg = ox_random_between(&r, 0, 360);
    c.technique.drift = (ox_drift)ox_random_below(&r, 6);
    c.technique.outbound = (ox_outbound)ox_random_below(&r, 4);
    c.technique.lead = (ox_lead)ox_random_below(&r, 2);
    c.technique.reaction_s = ox_random_below(&r, 2) ? 0 : ox_random_between(&r, 0, 8);
    c.wind_change_count = ox_random_below(&r, 5);
    for (int k = 0; k < c.wind_change_count; k++)
      c.wind_changes[k] = (ox_wind_change){0.5 + 3 * k + ox_random_between(&r, 0, 2),
                                           ox_random_between(&r, 0, 360),
                                           ox_random_between(&r, 0, 60), OX_NORTH_TRUE};
    if (ox_random_below(&r, 3) == 0) c.hold.climb_to_ft = ox_random_between(&r, 1000, 12000);
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    for (size_t k = 0; k < flight.leg_count; k++) {
      const ox_leg *leg = &flight.legs[k];
      ox_vec end = ox_leg_position(leg, leg->t1_s);
      assert_close(ox_vec_length(ox_vec_sub(end, leg->p1_nm)), 0, 1e-9, "closed form meets end");
      if (k == 0) continue;
      assert_close(ox_vec_length(ox_vec_sub(leg->p0_nm, leg[-1].p1_nm)), 0, 1e-9, "legs meet");
      assert_angle_close(leg->heading0_true_deg, leg[-1].heading1_true_deg, 1e-9, "heading");
      assert_true(leg->t0_s == leg[-1].t1_s);
    }
    for (size_t k = 0; k < flight.event_count; k++)
      if (flight.events[k].kind == OX_EVENT_FIX)
        assert_close(ox_vec_length(ox_flight_at(&flight, flight.events[k].t_s).p_nm), 0, 1e-8,
                     "fix");
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(wind_between_rows_is_the_mean_of_the_vectors),
      cmocka_unit_test(a_changed_wind_is_flown_from_its_minute_on),
      cmocka_unit_test(the_hold_is_brought_back_after_a_change),
      cmocka_unit_test(a_climb_keeps_the_indicated_airspeed),
      cmocka_unit_test(a_hold_to_an_altitude_ends_at_the_fix_after_reaching_it),
      cmocka_unit_test(a_reversal_ends_established_inbound_after_the_entry),
      cmocka_unit_test(changes_and_climbs_keep_every_invariant),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
