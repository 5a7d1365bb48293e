/* The closed forms against a numerical integration of the same flight: positions over the whole
 * flight agree to 1e-6 NM. The integrator is first checked itself, on what can be done by hand. */
#include "integrator.h"
#include "ox_test.h"
#include "oxbow/units.h"
#include "random_case.h"

enum { FLIGHTS = 400 };

static ox_flight flight;
static ox_vec ends[OX_LEGS_MAX];

static void the_integrator_flies_half_a_turn_of_known_radius(void **state) {
  ox_leg turn = {.shape = OX_SHAPE_TURN, .t0_s = 10, .t1_s = 70, .heading0_true_deg = 0,
                 .rate_deg_s = 3, .tas_kt = 120, .wind_kt = {0, -30}};
  ox_vec p = {1, 1};
  assert_true(ox_integrate_leg(&turn, 70, 1e-11, &p));
  assert_close(p.x, 1 + 2 * 2 / OX_PI, 1e-9, "two radii east");
  assert_close(p.y, 1 - 0.5, 1e-9, "half a mile of wind in a minute");
}

static void the_integrator_flies_a_straight_leg(void **state) {
  ox_leg leg = {.shape = OX_SHAPE_STRAIGHT, .t0_s = 0, .t1_s = 3600, .heading0_true_deg = 90,
                .tas_kt = 100, .wind_kt = {10, 5}};
  ox_vec p = {0, 0};
  assert_true(ox_integrate_leg(&leg, 1800, 1e-11, &p));
  assert_close(p.x, 55, 1e-8, "east");
  assert_close(p.y, 2.5, 1e-8, "north");
}

/* How far the flight's legs are from the integration, at their ends and at three instants within.
 * The integration is never restarted at a leg's stored start: errors would add up. */
static double worst_difference_nm(void) {
  double worst = 0;
  ox_vec start = flight.legs[0].p0_nm;
  for (size_t i = 0; i < flight.leg_count; i++) {
    const ox_leg *leg = &flight.legs[i];
    for (int part = 1; part <= 3; part++) {
      double t = leg->t0_s + (leg->t1_s - leg->t0_s) * part / 4;
      ox_vec p = start, q = ox_flight_at(&flight, t).p_nm;
      if (!ox_integrate_leg(leg, t, 1e-11, &p)) return HUGE_VAL;
      worst = fmax(worst, hypot(p.x - q.x, p.y - q.y));
    }
    worst = fmax(worst, hypot(ends[i].x - leg->p1_nm.x, ends[i].y - leg->p1_nm.y));
    start = ends[i];
  }
  return worst;
}

static void random_flights_agree_with_the_integration(void **state) {
  ox_random r = {121};
  int compared = 0;
  for (int i = 0; i < FLIGHTS; i++) {
    ox_case c = ox_random_case(&r, i % 4 == 0 ? 1.2 : 0.6);
    assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
    if (flight.leg_count == 0) continue;
    assert_true(ox_integrate_flight(&flight, 1e-11, ends));
    double worst = worst_difference_nm();
    if (!(worst <= 1e-6)) {
      char line[1000];
      ox_case_to_line(&c, line, sizeof line);
      print_error("off by %.3g NM: %s\n", worst, line);
      fail();
    }
    compared++;
  }
  assert_true(compared >= 200);
}

/* Over a night of holding the errors must not creep: forty circuits in a strong wind. */
static void forty_circuits_agree_with_the_integration(void **state) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 140;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){.from_deg = 50, .kt = 35};
  c.arrival.heading_deg = 210;
  c.technique.circuits = OX_CIRCUITS_MAX;
  for (int drift = 0; drift < 6; drift++) {
    c.technique.drift = (ox_drift)drift;
    assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
    assert_int_equal(flight.circuit_count, OX_CIRCUITS_MAX);
    assert_true(ox_integrate_flight(&flight, 1e-11, ends));
    assert_close(worst_difference_nm(), 0, 1e-6, "forty circuits");
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_integrator_flies_half_a_turn_of_known_radius),
      cmocka_unit_test(the_integrator_flies_a_straight_leg),
      cmocka_unit_test(random_flights_agree_with_the_integration),
      cmocka_unit_test(forty_circuits_agree_with_the_integration),
  };
  return cmocka_run_group_tests_name("integrator", tests, NULL, NULL);
}
