/* Routes: legs, the inbound course from the arriving leg, and the missed approach point. */
#include "ox_test.h"

#include "oxbow/route.h"

static ox_points points;
static ox_route route;
static char remark[OX_REMARK_BYTES];

static void add(const char *name, double lat, double lon) {
  ox_point p = {.kind = OX_POINT_AT, .at = {lat, lon}};
  snprintf(p.name, sizeof p.name, "%s", name);
  assert_int_equal(ox_points_add(&points, &p, remark, sizeof remark), OX_OK);
}

/* North along a meridian, then east along the equator. */
static int a_route(void **state) {
  (void)state;
  points = (ox_points){0};
  add("SOUTH", -1, 10);
  add("CORNER", 0, 10);
  add("EAST", 0, 11);
  add("EAST2", 0, 11);
  route = (ox_route){.count = 4,
                     .names = {"SOUTH", "CORNER", "EAST", "EAST2"},
                     .missed_approach = -1};
  return 0;
}

static void legs_are_the_geodesics_between_the_points(void **state) {
  (void)state;
  ox_geodesic leg;
  assert_int_equal(ox_route_leg(&points, &route, 2, &leg, remark, sizeof remark), OX_OK);
  assert_close(leg.distance_nm, 6378137.0 / 1852 * acos(-1.0) / 180, 1e-9, "a degree of equator");
  assert_angle_close(leg.to_bearing_deg, 90, 1e-12, "east");
}

static void the_inbound_course_is_that_of_the_arriving_leg(void **state) {
  (void)state;
  double inbound = -1;
  assert_int_equal(
      ox_route_inbound_deg(&points, &route, 1, 0, &inbound, remark, sizeof remark), OX_OK);
  assert_angle_close(inbound, 0, 1e-12, "north");
  /* magnetic = true - variation */
  assert_int_equal(
      ox_route_inbound_deg(&points, &route, 2, -13, &inbound, remark, sizeof remark), OX_OK);
  assert_angle_close(inbound, 103, 1e-12, "east, 13 W");
  /* On a long leg east at 50 N the course at its end is not that at its beginning. */
  add("WEST50", 50, 0);
  add("EAST50", 50, 10);
  ox_route along = {.count = 2, .names = {"WEST50", "EAST50"}, .missed_approach = -1};
  assert_int_equal(
      ox_route_inbound_deg(&points, &along, 1, 0, &inbound, remark, sizeof remark), OX_OK);
  assert_close(inbound, 90 + 5 * sin(50 * acos(-1.0) / 180), 0.05, "half the convergence");
}

static void at_the_first_point_the_first_leg_is_proposed_and_said(void **state) {
  (void)state;
  double inbound = -1;
  assert_int_equal(
      ox_route_inbound_deg(&points, &route, 0, 0, &inbound, remark, sizeof remark), OX_ADVISORY);
  assert_angle_close(inbound, 0, 1e-12, "north");
  assert_non_null(strstr(remark, "begins at SOUTH"));
}

static void legs_that_are_not_there_are_refused(void **state) {
  (void)state;
  ox_geodesic leg = {.distance_nm = 5};
  double inbound = 7;
  assert_int_equal(ox_route_leg(&points, &route, 0, &leg, remark, sizeof remark), OX_ERROR);
  assert_int_equal(ox_route_leg(&points, &route, 4, &leg, remark, sizeof remark), OX_ERROR);
  assert_int_equal(ox_route_leg(&points, &route, 3, &leg, remark, sizeof remark), OX_ERROR);
  assert_non_null(strstr(remark, "same place"));
  assert_int_equal(
      ox_route_inbound_deg(&points, &route, 2, (double)NAN, &inbound, remark, sizeof remark),
      OX_ERROR);
  assert_int_equal(ox_route_inbound_deg(&points, &route, 2, 181, &inbound, NULL, 0), OX_ERROR);
  ox_route short_route = {.count = 1, .names = {"SOUTH"}, .missed_approach = -1};
  assert_int_equal(ox_route_inbound_deg(&points, &short_route, 0, 0, &inbound, NULL, 0), OX_ERROR);
  strcpy(route.names[1], "GONE");
  assert_int_equal(ox_route_leg(&points, &route, 2, &leg, remark, sizeof remark), OX_ERROR);
  assert_non_null(strstr(remark, "no point named GONE"));
  assert_true(leg.distance_nm == 5 && inbound == 7);
}

static void a_hold_of_a_missed_approach_is_after_its_point(void **state) {
  (void)state;
  for (size_t i = 0; i < route.count; i++)
    assert_int_equal(ox_route_hold_allowed(&route, i, remark, sizeof remark), OX_OK);
  route.missed_approach = 1;
  for (size_t i = 0; i < route.count; i++)
    assert_int_equal(ox_route_hold_allowed(&route, i, NULL, 0), i > 1 ? OX_OK : OX_ERROR);
  assert_int_equal(ox_route_hold_allowed(&route, 1, remark, sizeof remark), OX_ERROR);
  assert_non_null(strstr(remark, "after CORNER"));
  assert_int_equal(ox_route_hold_allowed(&route, 4, remark, sizeof remark), OX_ERROR);
  route.missed_approach = 4;
  assert_int_equal(ox_route_hold_allowed(&route, 2, remark, sizeof remark), OX_ERROR);
  assert_non_null(strstr(remark, "no point of the route"));
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test_setup(legs_are_the_geodesics_between_the_points, a_route),
      cmocka_unit_test_setup(the_inbound_course_is_that_of_the_arriving_leg, a_route),
      cmocka_unit_test_setup(at_the_first_point_the_first_leg_is_proposed_and_said, a_route),
      cmocka_unit_test_setup(legs_that_are_not_there_are_refused, a_route),
      cmocka_unit_test_setup(a_hold_of_a_missed_approach_is_after_its_point, a_route),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
