/* The route flown about a hold: continuous, exact at its joints, turned as geometry has it. */
#include "ox_test.h"

#include "oxbow/journey.h"

static ox_points points;
static ox_route route;
static ox_journey journey;
static ox_flight flight;
static char remark[OX_REMARK_BYTES];

static void add(const char *name, double lat, double lon, double elevation_ft) {
  ox_point p = {.kind = OX_POINT_AT, .at = {lat, lon}, .elevation_ft = elevation_ft};
  snprintf(p.name, sizeof p.name, "%s", name);
  assert_int_equal(ox_points_add(&points, &p, remark, sizeof remark), OX_OK);
}

/* East to the fix, then north; near the equator a degree is 60 NM within a per cent. */
static int a_route(void **state) {
  points = (ox_points){0};
  add("WEST", 0, 9.5, 0);
  add("THRES", 0, 9.8, 200);
  add("LARCH", 0, 10, 0);
  add("NORTH", 0.2, 10, 0);
  route = (ox_route){
      .count = 4, .names = {"WEST", "THRES", "LARCH", "NORTH"}, .missed_approach = -1};
  return 0;
}

static ox_case arriving_east(void) {
  ox_case c = ox_case_default();
  strcpy(c.hold.fix, "LARCH");
  c.hold.inbound_deg = 90;
  c.arrival.heading_deg = 90;
  c.arrival.distance_nm = 5;
  c.aircraft.tas_kt = 120;
  c.technique.circuits = 1;
  return c;
}

static ox_status make(const ox_case *c) {
  ox_fix fix = ox_fix_named();
  assert_int_not_equal(ox_flight_solve(c, &flight), OX_ERROR);
  return ox_journey_make(&points, &route, &fix, c, &flight, &journey, remark, sizeof remark);
}

/* Every leg begins where and when the one before ends, with its heading but for the crab. */
static void assert_continuous(size_t first, size_t last) {
  for (size_t i = first; i < last; i++) {
    const ox_leg *leg = &journey.legs[i];
    ox_vec end = ox_leg_position(leg, leg->t1_s);
    assert_close(hypot(end.x - leg->p1_nm.x, end.y - leg->p1_nm.y), 0, 1e-7, "end of the leg");
    if (i + 1 == last) break;
    const ox_leg *next = &journey.legs[i + 1];
    assert_close(next->t0_s, leg->t1_s, 1e-9, "time");
    assert_close(hypot(next->p0_nm.x - leg->p1_nm.x, next->p0_nm.y - leg->p1_nm.y), 0, 1e-7,
                 "place");
  }
}

static void the_route_leads_into_the_arrival_and_on_from_the_hold(void **state) {
  ox_case c = arriving_east();
  assert_int_equal(make(&c), OX_OK);
  assert_int_equal(journey.hold, 2);
  assert_true(journey.joined);
  assert_angle_close(journey.arriving_heading_true_deg, 90, 1e-6, "heading");
  assert_continuous(0, journey.before);
  assert_continuous(journey.before, journey.leg_count);
  const ox_leg *last = &journey.legs[journey.before - 1];
  assert_close(last->t1_s, ox_flight_begin_s(&flight), 1e-9, "when the flight begins");
  assert_close(hypot(last->p1_nm.x - flight.legs[0].p0_nm.x,
                     last->p1_nm.y - flight.legs[0].p0_nm.y),
               0, 1e-9, "where it begins");
  /* 120 kt is two miles a minute: 30 NM less the 5 of the arrival, by the equator's 60.108 NM */
  double to_fix_nm = 6378137.0 / 1852 * acos(-1.0) / 360;
  assert_close(ox_flight_begin_s(&flight) - ox_journey_begin_s(&journey, &flight),
               (to_fix_nm - 5) * 30, 1e-6, "time on the way");
  ox_vec end_nm = journey.legs[journey.leg_count - 1].p1_nm;
  assert_close(hypot(end_nm.x - journey.points[3].at_nm.x, end_nm.y - journey.points[3].at_nm.y),
               0, 1e-7, "the last point");
}

static void an_arrival_off_the_leg_is_not_joined_and_said(void **state) {
  ox_case c = arriving_east();
  char lines[OX_JOURNEY_WORDS_MAX][OX_REMARK_BYTES];
  c.arrival.heading_deg = 120;
  assert_int_equal(make(&c), OX_OK);
  assert_false(journey.joined);
  assert_int_equal(journey.before, 0);
  assert_true(ox_journey_words(&journey, &c, lines) >= 2);
  assert_non_null(strstr(lines[1], "is not on that leg"));
}

/* In still air a turn of 90 degrees of radius r begins r before the corner and ends r after it. */
static void a_turn_at_a_point_begins_a_radius_before_it(void **state) {
  ox_case c = arriving_east();
  add("SOUTH", -0.3, 9.8, 0);
  route = (ox_route){.count = 3, .names = {"SOUTH", "THRES", "LARCH"}, .missed_approach = -1};
  c.arrival.distance_nm = 2;
  assert_int_equal(make(&c), OX_OK);
  assert_int_equal(journey.before, 3);
  const ox_leg *turn = &journey.legs[1];
  double radius_nm = flight.setup.radius_nm;
  assert_int_equal(turn->shape, OX_SHAPE_TURN);
  assert_close(turn->t1_s - turn->t0_s, 90 / flight.setup.rate_deg_s, 1e-2, "duration");
  assert_close(journey.points[1].at_nm.y - turn->p0_nm.y, radius_nm, 1e-3, "before");
  assert_close(turn->p1_nm.x - journey.points[1].at_nm.x, radius_nm, 1e-3, "after");
}

/* In any wind the turn rolls out on the next leg: its end lies on the line, its heading holds it. */
static void in_any_wind_every_turn_rolls_out_on_the_next_leg(void **state) {
  ox_random r = {77};
  int turns = 0;
  for (int i = 0; i < 3000; i++) {
    ox_case c = arriving_east();
    points.count = 0;
    for (int k = 0; k < 5; k++) {
      char name[16];
      snprintf(name, sizeof name, "P%d", k);
      add(name, ox_random_between(&r, -0.4, 0.4), ox_random_between(&r, 9.6, 10.4), 0);
    }
    add("LARCH", 0, 10, 0);
    route = (ox_route){.count = 6,
                       .names = {"P0", "P1", "LARCH", "P2", "P3", "P4"},
                       .missed_approach = -1};
    c.wind_count = 1;
    c.wind[0] = (ox_wind_row){.from_deg = ox_random_between(&r, 0, 360),
                              .kt = ox_random_between(&r, 0, 60),
                              .north = OX_NORTH_TRUE};
    assert_int_not_equal(make(&c), OX_ERROR);
    c.arrival.heading_deg = journey.arriving_heading_true_deg;
    c.arrival.distance_nm = 0.5;
    assert_int_not_equal(make(&c), OX_ERROR);
    assert_continuous(0, journey.before);
    assert_continuous(journey.before, journey.leg_count);
    for (size_t k = 0; k + 1 < journey.leg_count; k++) {
      const ox_leg *turn = &journey.legs[k], *next = turn + 1;
      if (turn->shape != OX_SHAPE_TURN || k + 1 == journey.before) continue;
      if (next->shape != OX_SHAPE_STRAIGHT) continue;
      assert_angle_close(turn->heading1_true_deg, next->heading0_true_deg, 1e-4, "roll-out");
      turns++;
    }
  }
  assert_true(turns > 3000);
}

static void the_state_is_that_of_the_way_the_flight_and_the_way_on(void **state) {
  ox_case c = arriving_east();
  assert_int_equal(make(&c), OX_OK);
  double begin_s = ox_journey_begin_s(&journey, &flight);
  double end_s = ox_journey_end_s(&journey, &flight);
  assert_true(begin_s < ox_flight_begin_s(&flight) && end_s > ox_flight_end_s(&flight));
  ox_vec before = ox_journey_at(&journey, &flight, begin_s).p_nm;
  for (double t = begin_s; t <= end_s; t += 1) {
    ox_vec p = ox_journey_at(&journey, &flight, t).p_nm;
    /* 120 kt in still air: a thirtieth of a mile a second at most */
    assert_true(hypot(p.x - before.x, p.y - before.y) <= 1 / 30.0 + 1e-9);
    before = p;
  }
  assert_close(ox_journey_at(&journey, &flight, 0).p_nm.x, 0, 1e-6, "over the fix at 0");
}

/* One flight of it all: every leg begins where the one before ends, in place and time, and at any
 * instant its state is the journey's. */
static void the_whole_is_one_flight(void **state) {
  static ox_flight whole;
  ox_case c = arriving_east();
  assert_int_equal(make(&c), OX_OK);
  ox_journey_flight(&journey, &flight, &whole);
  assert_int_equal(whole.leg_count, flight.leg_count + journey.leg_count);
  for (size_t i = 1; i < whole.leg_count; i++) {
    const ox_leg *a = &whole.legs[i - 1], *b = &whole.legs[i];
    assert_close(b->t0_s, a->t1_s, 1e-9, "time");
    assert_close(hypot(b->p0_nm.x - a->p1_nm.x, b->p0_nm.y - a->p1_nm.y), 0, 1e-6, "place");
  }
  double begin_s = ox_flight_begin_s(&whole), end_s = ox_flight_end_s(&whole);
  assert_close(begin_s, ox_journey_begin_s(&journey, &flight), 1e-9, "begin");
  assert_close(end_s, ox_journey_end_s(&journey, &flight), 1e-9, "end");
  for (double t = begin_s; t <= end_s; t += 7) {
    ox_vec p = ox_flight_at(&whole, t).p_nm, q = ox_journey_at(&journey, &flight, t).p_nm;
    assert_close(hypot(p.x - q.x, p.y - q.y), 0, 1e-6, "state");
  }
  assert_int_equal(whole.event_count, flight.event_count);
}

static void a_hold_before_the_missed_approach_point_is_refused_in_words(void **state) {
  ox_case c = arriving_east();
  char lines[OX_JOURNEY_WORDS_MAX][OX_REMARK_BYTES];
  route.missed_approach = 3;
  assert_int_equal(make(&c), OX_ADVISORY);
  assert_false(journey.hold_allowed);
  size_t count = ox_journey_words(&journey, &c, lines);
  bool said = false;
  for (size_t i = 0; i < count; i++) said = said || strstr(lines[i], "must be after NORTH");
  assert_true(said);
}

/* From 200 ft at 500 ft a minute over 12.02 NM at 120 kt: 6.01 minutes, 3005 ft more (by hand). */
static void the_missed_approach_climbs_on_its_way(void **state) {
  ox_case c = arriving_east();
  route.missed_approach = 1;
  c.hold.altitude_ft = 5000;
  c.hold.climb_ft_min = 500;
  assert_int_equal(make(&c), OX_OK);
  double minutes = 0.2 * 6378137.0 / 1852 * acos(-1.0) / 180 / 2;
  assert_close(journey.points[1].altitude_ft, 200, 0, "at the missed approach point");
  assert_close(journey.points[2].altitude_ft, 200 + 500 * minutes, 1e-6, "at the fix");
  c.hold.altitude_ft = 2000;
  assert_int_equal(make(&c), OX_OK);
  assert_close(journey.points[2].altitude_ft, 2000, 0, "not above the hold");
}

static void turning_early_is_shown_from_a_mile_before(void **state) {
  ox_case c = arriving_east();
  char lines[OX_JOURNEY_WORDS_MAX][OX_REMARK_BYTES];
  add("RUNWY", 0.1, 9.8, 0);
  route = (ox_route){.count = 3, .names = {"WEST", "RUNWY", "LARCH"}, .missed_approach = 1};
  assert_int_equal(make(&c), OX_OK);
  assert_true(journey.early_count > 10);
  ox_vec first = journey.early_nm[0], map = journey.points[1].at_nm;
  assert_close(hypot(first.x - map.x, first.y - map.y), OX_JOURNEY_EARLY_NM, 1e-9, "a mile");
  ox_vec last = journey.early_nm[journey.early_count - 1];
  assert_close(hypot(last.x, last.y), 0, 1e-9, "the fix");
  assert_true(journey.early_off_nm > 0.05 && journey.early_off_nm < 1.0);
  size_t count = ox_journey_words(&journey, &c, lines);
  bool said = false;
  for (size_t i = 0; i < count; i++) said = said || strstr(lines[i], "Turning to LARCH before RUNWY");
  assert_true(said);
}

/* 90 kt over the ground is a quarter of a mile in ten seconds. */
static void a_delay_moves_a_fix_ahead(void **state) {
  ox_case c = arriving_east();
  ox_fix fix = {.kind = OX_FIX_AHEAD_NM, .ahead_nm = 3};
  char lines[OX_JOURNEY_WORDS_MAX][OX_REMARK_BYTES];
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){.from_deg = 90, .kt = 30, .north = OX_NORTH_TRUE};
  assert_int_equal(ox_fix_settle(&points, &fix, &c, NULL, 0), OX_OK);
  assert_close(ox_fix_delay_nm(&c), 0.25, 1e-12, "delay");
  assert_int_equal(ox_fix_words(&points, &fix, &c, lines), 2);
  assert_string_equal(lines[0],
                      "The fix is 3.00 NM ahead on track 090°M, 120 s at 90 kt over the ground.");
  assert_string_equal(lines[1], "Each 10 s of delay in setting the hold moves it 0.25 NM farther.");
}

static void a_wind_that_no_heading_holds_flies_nothing_and_hurts_nothing(void **state) {
  ox_case c = arriving_east();
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){.from_deg = 360, .kt = 200, .north = OX_NORTH_TRUE};
  assert_int_not_equal(make(&c), OX_ERROR);
  assert_int_equal(journey.leg_count, 0);
  for (size_t i = 0; i < journey.point_count; i++) assert_true(isfinite(journey.points[i].s));
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test_setup(the_route_leads_into_the_arrival_and_on_from_the_hold, a_route),
      cmocka_unit_test_setup(an_arrival_off_the_leg_is_not_joined_and_said, a_route),
      cmocka_unit_test_setup(a_turn_at_a_point_begins_a_radius_before_it, a_route),
      cmocka_unit_test_setup(in_any_wind_every_turn_rolls_out_on_the_next_leg, a_route),
      cmocka_unit_test_setup(the_state_is_that_of_the_way_the_flight_and_the_way_on, a_route),
      cmocka_unit_test_setup(the_whole_is_one_flight, a_route),
      cmocka_unit_test_setup(a_hold_before_the_missed_approach_point_is_refused_in_words, a_route),
      cmocka_unit_test_setup(the_missed_approach_climbs_on_its_way, a_route),
      cmocka_unit_test_setup(turning_early_is_shown_from_a_mile_before, a_route),
      cmocka_unit_test_setup(a_delay_moves_a_fix_ahead, a_route),
      cmocka_unit_test_setup(a_wind_that_no_heading_holds_flies_nothing_and_hurts_nothing, a_route),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
