/* Distance legs: DME readings, slant range, and the holds they make. */
#include "ox_test.h"

#include "oxbow/flight.h"
#include "oxbow/units.h"

static ox_flight flight;

/* A hold on a fix on the line of the station, given by the DME reading over the fix. */
static ox_case dme_case(double fix_reading_nm, double leg_nm, double altitude_ft, bool towards) {
  ox_case c = ox_case_default();
  double height_nm = altitude_ft / OX_FT_PER_NM;
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 150;
  c.hold.altitude_ft = altitude_ft;
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = leg_nm;
  c.hold.station.given = true;
  c.hold.station.nm = sqrt(fix_reading_nm * fix_reading_nm - height_nm * height_nm);
  c.hold.station.radial_deg = towards ? 360 : 180; /* inbound 360 */
  c.technique.circuits = 3;
  return c;
}

static double reading_nm(const ox_setup *s, ox_vec p_nm) {
  return hypot(ox_vec_length(ox_vec_sub(p_nm, s->dme.at_nm)), s->dme.height_nm);
}

/* AIM 5-3-8 j5, FIG 5-3-5 note (F): inbound toward the NAVAID, fix at 10 NM, 5 NM legs: the
 * outbound leg ends at 15 DME. FIG 5-3-6 note (F): inbound away, fix 28 NM, 8 NM legs: 20 DME. */
static void the_two_examples_of_the_aim_end_at_15_and_20_dme(void **state) {
  static const struct {
    double fix_nm, leg_nm, end_nm;
    bool towards;
  } rows[] = {{10, 5, 15, true}, {28, 8, 20, false}};
  for (size_t i = 0; i < 2; i++) {
    ox_case c = dme_case(rows[i].fix_nm, rows[i].leg_nm, 10000, rows[i].towards);
    assert_int_equal(ox_flight_solve(&c, &flight), OX_OK);
    assert_close(flight.setup.goal_value, rows[i].end_nm, 1e-9, "reading asked for");
    for (size_t k = 0; k < flight.circuit_count; k++)
      assert_close(reading_nm(&flight.setup, flight.circuits[k].outbound_end_nm), rows[i].end_nm,
                   1e-9, "reading where the inbound turn begins");
  }
}

/* Slant and ground range. P801 Fig 7 (F): at 36 000 ft, taken as 6 NM, 10 DME is 8 NM and 60 DME
 * 59.7 NM; exact values and the rest computed (C). AIM 1-1-7 (F): overhead it reads the height. */
static void ground_distance_follows_from_the_slant_range(void **state) {
  static const struct {
    double height_ft, reading_nm, ground_nm, tolerance_nm;
  } rows[] = {
      {6 * OX_FT_PER_NM, 10, 8.0, 1e-9}, /* F, with the book's 6 NM */
      {36000, 10, 8.056, 5e-4},          /* C */
      {36000, 60, 59.707, 5e-4},         /* C; the book's 59.7 */
      {10000, 10, 9.864, 6e-4},          /* C */
      {10000, 15, 14.909, 6e-4},         /* C */
      {10000, 28, 27.952, 5e-4},         /* C */
      {10000, 20, 19.932, 5e-4},         /* C */
      {5000, 10, 9.966, 5e-4},           /* C */
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = dme_case(rows[i].reading_nm, 0.5, rows[i].height_ft, true);
    ox_setup s;
    assert_int_equal(ox_setup_make(&c, &s), OX_OK);
    assert_close(ox_vec_length(s.dme.at_nm), rows[i].ground_nm, rows[i].tolerance_nm, "ground");
    assert_close(s.dme_fix_nm, rows[i].reading_nm, 1e-9, "reading over the fix");
  }
}

/* C: on the ground a 5 DME leg from 10 to 15 DME at 10 000 ft is 5.046 NM (holding-standards 12). */
static void a_leg_by_dme_is_longer_over_the_ground_than_its_number(void **state) {
  ox_case c = dme_case(10, 5, 10000, true);
  ox_setup s;
  assert_int_equal(ox_setup_make(&c, &s), OX_OK);
  assert_close(s.dme.end_ground_nm - ox_vec_length(s.dme.at_nm), 5.046, 1e-3, "leg");
}

static void the_flight_settles_on_the_steady_dme_hold(void **state) {
  for (int towards = 0; towards <= 1; towards++) {
    ox_case c = dme_case(20, 6, 8000, towards);
    c.hold.turns = OX_TURNS_LEFT;
    c.wind_count = 1;
    c.wind[0] = (ox_wind_row){0, 70, 30, OX_NORTH_TRUE};
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    assert_int_equal(flight.steady.why, OX_STEADY_EXISTS);
    const ox_circuit *last = &flight.circuits[2];
    assert_close(last->outbound_s, flight.steady.outbound_s, 1e-6, "outbound");
    assert_close(last->inbound_s, flight.steady.inbound_s, 1e-6, "inbound");
    assert_angle_close(last->outbound_heading_true_deg, flight.steady.outbound_heading_deg, 1e-7,
                       "heading");
    assert_close(last->rollout_offset_nm, 0, 1e-9, "roll-out");
  }
}

static void a_reading_below_the_height_is_never_seen_and_time_is_flown(void **state) {
  ox_case c = dme_case(10, 9.5, 10000, false); /* 0.5 DME at 1.6 NM height */
  assert_int_equal(ox_flight_solve(&c, &flight), OX_ADVISORY);
  bool said = false;
  for (size_t i = 0; i < flight.advice_count; i++)
    said = said || flight.advice[i].kind == OX_ADVICE_DME_NOT_SEEN;
  assert_true(said);
  assert_true(flight.circuits[0].complete);
  assert_close(flight.circuits[0].timed_s, 60, 1e-9, "standard time instead");
}

static void a_station_at_the_fix_reads_the_leg_itself(void **state) {
  ox_case c = dme_case(10, 6, 10000, true);
  c.hold.station.nm = 0;
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  assert_close(reading_nm(&flight.setup, flight.circuits[0].outbound_end_nm), 6, 1e-9, "reading");
}

static void reached_says_now_never_and_when(void **state) {
  ox_dme d = {.at_nm = {0, 0}, .height_nm = 0, .end_ground_nm = 5, .outward = 1};
  assert_close(ox_dme_reached_s(&d, (ox_vec){0, 3}, (ox_vec){0, 0.02}), 100, 1e-9, "outward");
  assert_close(ox_dme_reached_s(&d, (ox_vec){0, 6}, (ox_vec){0, 0.02}), 0, 0, "already beyond");
  d.outward = -1;
  assert_close(ox_dme_reached_s(&d, (ox_vec){0, 9}, (ox_vec){0, -0.02}), 200, 1e-9, "inward");
  assert_close(ox_dme_reached_s(&d, (ox_vec){9, 9}, (ox_vec){0, -0.02}), -1, 0, "passes by");
  assert_close(ox_dme_reached_s(&d, (ox_vec){0, 9}, (ox_vec){0, 0.02}), -1, 0, "flies away");
  assert_close(ox_dme_reached_s(&d, (ox_vec){0, 9}, (ox_vec){0, 0}), -1, 0, "stands still");
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_two_examples_of_the_aim_end_at_15_and_20_dme),
      cmocka_unit_test(ground_distance_follows_from_the_slant_range),
      cmocka_unit_test(a_leg_by_dme_is_longer_over_the_ground_than_its_number),
      cmocka_unit_test(the_flight_settles_on_the_steady_dme_hold),
      cmocka_unit_test(a_reading_below_the_height_is_never_seen_and_time_is_flown),
      cmocka_unit_test(a_station_at_the_fix_reads_the_leg_itself),
      cmocka_unit_test(reached_says_now_never_and_when),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
