/* The limiting radial: it ends the outbound leg or is followed, whichever way the hold lies. */
#include "ox_test.h"
#include "oxbow/area.h"
#include "oxbow/flight.h"
#include "oxbow/units.h"
#include "random_case.h"

static ox_flight flight;

/* Away from the station, as Doc 8168 has it (holding-standards 7.6): inbound 090 on radial 090,
 * right turns, so the outbound leg passes south of the course, towards the station. */
static ox_case away(double fix_nm, double leg_nm, double radial_deg) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 180;
  c.hold.altitude_ft = 6000;
  c.hold.inbound_deg = 90;
  c.arrival.heading_deg = 90;
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = leg_nm;
  c.hold.station.given = true;
  c.hold.station.nm = fix_nm;
  c.hold.station.radial_deg = 270;
  c.hold.station.limiting_radial_deg = radial_deg;
  return c;
}

static bool advised(ox_advice_kind kind) {
  for (size_t i = 0; i < flight.advice_count; i++)
    if (flight.advice[i].kind == kind) return true;
  return false;
}

/* Bearing from the station, true. */
static double on_radial_deg(ox_vec p_nm) {
  return ox_bearing_deg(ox_vec_sub(p_nm, flight.setup.dme.at_nm));
}

/* Where the outbound leg ends: geometry in still air. The leg runs at 2r south of the course, so it
 * crosses the radial 2r / tan(radial - 090) from the station. */
static void in_still_air_the_leg_ends_where_the_radial_crosses_it(void **state) {
  ox_case c = away(10, 9, 110);
  assert_int_equal(ox_flight_solve(&c, &flight), OX_OK);
  double across_nm = 2 * flight.setup.radius_nm;
  double from_station_nm = across_nm / tan(20 * OX_RAD_PER_DEG);
  for (size_t i = 0; i < flight.circuit_count; i++) {
    ox_vec end = flight.circuits[i].outbound_end_nm;
    assert_close(end.x, from_station_nm - 10, 1e-9, "along");
    assert_close(end.y, -across_nm, 1e-9, "across");
    assert_angle_close(on_radial_deg(end), 110, 1e-7, "radial");
  }
  assert_close(flight.circuits[2].outbound_s, flight.steady.outbound_s, 1e-7, "steady");
}

/* Doc 8168 Vol II (PO2/470, F): away from the station and too close for the distance to be
 * reached, a limiting radial is required; without one the standard time is flown and said. */
static void too_close_for_the_distance_the_radial_is_what_ends_the_leg(void **state) {
  ox_case c = away(4, 3.6, 0); /* asks for less than the height and the width */
  assert_int_equal(ox_flight_solve(&c, &flight), OX_ADVISORY);
  assert_true(advised(OX_ADVICE_DME_NOT_SEEN));
  c.hold.station.limiting_radial_deg = 150;
  assert_int_equal(ox_flight_solve(&c, &flight), OX_OK);
  assert_false(advised(OX_ADVICE_DME_NOT_SEEN));
  assert_int_equal(flight.steady.why, OX_STEADY_EXISTS);
  assert_angle_close(on_radial_deg(flight.circuits[2].outbound_end_nm), 150, 1e-7, "radial");
}

static void the_distance_ends_the_leg_where_it_comes_first(void **state) {
  ox_case c = away(20, 5, 0), limited = away(20, 5, 150);
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  double outbound_s = flight.circuits[1].outbound_s, steady_s = flight.steady.outbound_s;
  assert_int_equal(ox_flight_solve(&limited, &flight), OX_OK);
  assert_close(flight.circuits[1].outbound_s, outbound_s, 0, "the same leg");
  assert_close(flight.steady.outbound_s, steady_s, 0, "the same steady hold");
}

/* Doc 8168 Vol I (PO1 summary, F): if the radial comes first it is followed until the inbound
 * turn, here to the distance. */
static void followed_it_leads_along_the_radial_to_the_distance(void **state) {
  ox_case c = away(12, 9, 104);
  c.technique.at_radial = OX_AT_RADIAL_FOLLOW;
  c.technique.reaction_s = 4;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 20, 25, OX_NORTH_TRUE};
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  int followed = 0;
  for (size_t i = 0; i + 1 < flight.leg_count; i++) {
    const ox_leg *leg = &flight.legs[i];
    if (leg->kind != OX_LEG_OUTBOUND || flight.legs[i - 1].kind != OX_LEG_OUTBOUND_TURN ||
        flight.legs[i - 2].kind != OX_LEG_OUTBOUND)
      continue;
    assert_angle_close(on_radial_deg(leg->p0_nm), 104, 1e-7, "rolls out on the radial");
    assert_angle_close(on_radial_deg(leg->p1_nm), 104, 1e-7, "and stays on it");
    double ground_nm = ox_vec_length(ox_vec_sub(leg->p1_nm, flight.setup.dme.at_nm));
    assert_close(hypot(ground_nm, flight.setup.dme.height_nm), flight.setup.goal_value, 1e-9,
                 "to the distance");
    followed++;
  }
  assert_int_equal(followed, flight.circuit_count);
  assert_true(flight.circuits[0].complete);
}

static void crossed_says_now_never_and_when(void **state) {
  ox_dme d = {.at_nm = {0, 0}, .limited = true, .limit = {0, 1}, .inside_nm = {5, 5}};
  assert_close(ox_limit_reached_s(&d, (ox_vec){2, 5}, (ox_vec){-0.02, 0}), 100, 1e-9, "outwards");
  assert_close(ox_limit_reached_s(&d, (ox_vec){-1, 5}, (ox_vec){-0.02, 0}), 0, 0, "beyond");
  assert_close(ox_limit_reached_s(&d, (ox_vec){-1, 5}, (ox_vec){0.02, 0}), -1, 0, "coming back");
  assert_close(ox_limit_reached_s(&d, (ox_vec){2, 5}, (ox_vec){0.02, 0}), -1, 0, "inwards");
  assert_close(ox_limit_reached_s(&d, (ox_vec){2, -5}, (ox_vec){-0.02, 0}), -1, 0, "behind");
  d.limited = false;
  assert_close(ox_limit_reached_s(&d, (ox_vec){2, 5}, (ox_vec){-0.02, 0}), -1, 0, "none");
}

static void a_radial_that_no_leg_can_cross_is_said(void **state) {
  static const double radials_deg[] = {40, 90, 270}; /* other side, the course itself, behind */
  for (size_t i = 0; i < 3; i++) {
    ox_case c = away(20, 5, radials_deg[i]), plain = away(20, 5, 0);
    assert_int_equal(ox_flight_solve(&c, &flight), OX_ADVISORY);
    assert_true(advised(OX_ADVICE_RADIAL_NOT_CROSSED));
    double end_s = ox_flight_end_s(&flight);
    assert_true(ox_flight_solve(&plain, &flight) >= OX_OK);
    assert_close(end_s, ox_flight_end_s(&flight), 0, "flown by the distance");
  }
}

/* Towards the station the outbound legs run inside a wide radial, and only drift leads across. */
static void towards_the_station_drift_is_what_crosses_it(void **state) {
  ox_case c = away(15, 8, 0);
  c.hold.station.radial_deg = 90; /* ahead: inbound towards it */
  c.hold.station.limiting_radial_deg = 258;
  c.technique.drift = OX_DRIFT_NONE;
  assert_int_equal(ox_flight_solve(&c, &flight), OX_OK);
  double still_s = flight.circuits[0].outbound_s;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 360, 60, OX_NORTH_TRUE}; /* from the course to the holding side */
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  assert_true(flight.circuits[0].outbound_s < still_s);
  assert_angle_close(on_radial_deg(flight.circuits[0].outbound_end_nm), 258, 1e-6, "radial");
}

/* Invariants: no outbound leg ends beyond radial and distance both inside; a leg that is cut ends
 * on the radial; left and right are mirror images. */
static void random_holds_never_fly_on_beyond_the_radial(void **state) {
  ox_random r = {8168};
  int met = 0;
  for (int i = 0; i < 4000; i++) {
    ox_case c = ox_random_case(&r, 0.4);
    c.hold.leg_by = OX_LEG_BY_DISTANCE;
    c.hold.leg_end = OX_LEG_END_OUTBOUND;
    c.hold.leg_nm = ox_random_between(&r, 1, 12);
    c.hold.station.given = true;
    c.hold.station.nm = ox_random_between(&r, 0, 30);
    c.hold.station.radial_deg =
        ox_random_below(&r, 2) ? c.hold.inbound_deg : ox_random_between(&r, 0, 360);
    c.hold.station.limiting_radial_deg = ox_random_between(&r, 0.1, 360);
    c.technique.reaction_s = c.technique.roll_s = 0;
    c.technique.at_radial = (ox_at_radial)ox_random_below(&r, 2);
    assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
    if (flight.setup.goal != OX_GOAL_OUTBOUND_DME) continue;
    for (size_t k = 0; k < flight.leg_count; k++) {
      const ox_leg *leg = &flight.legs[k];
      if (leg->kind != OX_LEG_OUTBOUND || !flight.setup.dme.limited) continue;
      double before_nm = ox_limit_beyond_nm(&flight.setup.dme, leg->p0_nm);
      double after_nm = ox_limit_beyond_nm(&flight.setup.dme, leg->p1_nm);
      bool ahead = ox_vec_dot(flight.setup.dme.limit,
                              ox_vec_sub(leg->p1_nm, flight.setup.dme.at_nm)) > 1e-9;
      /* where neither comes the standard time is flown */
      if (advised(OX_ADVICE_DME_NOT_SEEN)) continue;
      if (before_nm < -1e-9 && ahead) assert_true(after_nm < 1e-7);
      met += before_nm < -1e-9 && fabs(after_nm) < 1e-7;
    }
    double end_s = ox_flight_end_s(&flight);
    ox_case mirrored = ox_mirrored_case(&c);
    assert_true(ox_flight_solve(&mirrored, &flight) >= OX_OK);
    assert_close(ox_flight_end_s(&flight), end_s, 1e-3 + 1e-6 * end_s, "mirror image");
  }
  assert_true(met > 300);
}

/* Doc 8168 Vol II (PO2/222, Diagram App C-15, F): 220 KIAS, 14 000 ft, 30 DME: 35 DME. A hold flown
 * towards the station with one minute outbound stays within it, also in the design's still air. */
static void the_design_case_of_35_nm_holds_a_minute_of_outbound(void **state) {
  double rounded_nm;
  double limit_nm = ox_limiting_dme_nm(220, 14000, 30, 60, &rounded_nm);
  assert_close(rounded_nm, 35, 0, "PO2/222");
  ox_case c = away(0, 5, 0);
  c.hold.altitude_ft = 14000;
  double height_nm = 14000 / OX_FT_PER_NM;
  c.hold.station.nm = sqrt(30 * 30 - height_nm * height_nm);
  c.hold.station.radial_deg = 90;
  c.aircraft.tas_kt = 280.62; /* C: K 1.2755 at ISA + 15 */
  c.aircraft.max_bank_deg = 25;
  assert_true(ox_flight_solve(&c, &flight) >= OX_OK);
  assert_close(flight.setup.goal_value, 35, 1e-9, "the leg asked for ends at 35 DME");
  assert_close(flight.circuits[0].outbound_s, 60, 1.0, "about a minute outbound");
  assert_close(limit_nm, 35.013, 1e-3, "C");
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(in_still_air_the_leg_ends_where_the_radial_crosses_it),
      cmocka_unit_test(too_close_for_the_distance_the_radial_is_what_ends_the_leg),
      cmocka_unit_test(the_distance_ends_the_leg_where_it_comes_first),
      cmocka_unit_test(followed_it_leads_along_the_radial_to_the_distance),
      cmocka_unit_test(crossed_says_now_never_and_when),
      cmocka_unit_test(a_radial_that_no_leg_can_cross_is_said),
      cmocka_unit_test(towards_the_station_drift_is_what_crosses_it),
      cmocka_unit_test(random_holds_never_fly_on_beyond_the_radial),
      cmocka_unit_test(the_design_case_of_35_nm_holds_a_minute_of_outbound),
  };
  return cmocka_run_group_tests_name("radial limit", tests, NULL, NULL);
}
