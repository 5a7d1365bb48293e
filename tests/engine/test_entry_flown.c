/* Entries as they are flown, and the still-air hold as a shape. Tags: F read in the document, f in
 * a secondary copy, M from memory, C computed from general mathematics. */
#include "ox_test.h"
#include "oxbow/flight.h"
#include "oxbow/units.h"

static ox_flight flight;

static ox_case entry_case(double inbound_deg, ox_turns turns, double heading_deg) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 120;
  c.hold.inbound_deg = inbound_deg;
  c.hold.turns = turns;
  c.hold.leg_s = 60;
  c.arrival.heading_deg = heading_deg;
  return c;
}

static void fly(const ox_case *c) {
  assert_int_not_equal(ox_flight_solve(c, &flight), OX_ERROR);
}

static const ox_leg *leg_of(ox_leg_kind kind) {
  for (size_t i = 0; i < flight.leg_count; i++)
    if (flight.legs[i].kind == kind) return &flight.legs[i];
  return NULL;
}

static bool advised(ox_advice_kind kind) {
  for (size_t i = 0; i < flight.advice_count; i++)
    if (flight.advice[i].kind == kind) return true;
  return false;
}

/* NM from the course, positive on the holding side. */
static double holding_side_nm(ox_vec p) {
  return -flight.setup.sense * ox_vec_cross(ox_unit(flight.setup.inbound_true_deg), p);
}

static void published_entry_headings_are_flown(void **state) {
  static const struct {
    double inbound;
    ox_turns turns;
    double heading;
    ox_entry_kind kind;
    double entry_heading;
    const char *source;
  } rows[] = {
      {152, OX_TURNS_LEFT, 10, OX_ENTRY_TEARDROP, 2, "study card: 332 + 30 (f)"},
      {360, OX_TURNS_RIGHT, 160, OX_ENTRY_TEARDROP, 150, "P-801 p. 128 (F)"},
      {360, OX_TURNS_LEFT, 200, OX_ENTRY_TEARDROP, 210, "P-801 p. 128 (F)"},
      {360, OX_TURNS_RIGHT, 230, OX_ENTRY_PARALLEL, 180, "P-801 Fig 19 (F)"},
      {360, OX_TURNS_LEFT, 130, OX_ENTRY_PARALLEL, 180, "P-801 Fig 19 (F)"},
      {10, OX_TURNS_RIGHT, 30, OX_ENTRY_DIRECT, 190, "question bank (f)"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = entry_case(rows[i].inbound, rows[i].turns, rows[i].heading);
    c.technique.drift = OX_DRIFT_NONE; /* a direct entry then turns to the reciprocal */
    fly(&c);
    assert_int_equal(flight.flown, rows[i].kind);
    assert_angle_close(flight.entry_heading_true_deg, rows[i].entry_heading, 1e-9,
                       rows[i].source);
  }
}

/* Inbound 270 on R-090, left turns: hold east of the fix, on the south side (FAA question bank, M);
 * right turns on the same radial: east, on the north side. */
static void the_pattern_lies_where_the_clearance_says(void **state) {
  ox_case c = entry_case(270, OX_TURNS_LEFT, 270);
  fly(&c);
  const ox_leg *out = leg_of(OX_LEG_OUTBOUND);
  assert_non_null(out);
  assert_true(out->p0_nm.y < -1 && out->p1_nm.y < -1 && out->p1_nm.x > 1.5);
  c.hold.turns = OX_TURNS_RIGHT;
  fly(&c);
  out = leg_of(OX_LEG_OUTBOUND);
  assert_true(out->p0_nm.y > 1 && out->p1_nm.y > 1 && out->p1_nm.x > 1.5);
}

/* AIM 5-3-8 j3(a) (F): turn to parallel the course outbound on the non-holding side for the time,
 * then turn toward the holding side through more than 180 degrees and intercept the course: 180
 * plus the intercept (C). */
static void a_parallel_entry_turns_back_across_the_holding_side(void **state) {
  static const double intercepts[] = {30, 45, 60};
  for (int turns = 0; turns < 2; turns++)
    for (size_t i = 0; i < 3; i++) {
      ox_case c = entry_case(360, (ox_turns)turns, turns == OX_TURNS_RIGHT ? 210 : 150);
      c.technique.intercept_deg = intercepts[i];
      c.technique.entry_s = 90;
      fly(&c);
      assert_int_equal(flight.flown, OX_ENTRY_PARALLEL);
      const ox_leg *out = leg_of(OX_LEG_ENTRY_OUTBOUND), *back = leg_of(OX_LEG_ENTRY_INBOUND_TURN);
      assert_non_null(out);
      assert_non_null(back);
      assert_close(out->t1_s - out->t0_s, 90, 1e-9, "a minute and a half");
      assert_true(holding_side_nm(out->p1_nm) <= 1e-12);
      assert_true(back->rate_deg_s * flight.setup.sense < 0);
      assert_close((back->t1_s - back->t0_s) * 3, 180 + intercepts[i], 1e-6, "degrees turned");
      assert_true(flight.circuits[0].complete);
    }
}

/* The same paragraph allows to return to the fix: after one minute a 30-degree cut would meet the
 * course beyond it (two radii across need 2.2 NM and the roll-out, the leg is 2). */
static void a_parallel_entry_too_short_to_intercept_returns_to_the_fix(void **state) {
  ox_case c = entry_case(360, OX_TURNS_RIGHT, 210);
  fly(&c);
  const ox_leg *turn = leg_of(OX_LEG_DIRECT_TURN), *direct = leg_of(OX_LEG_DIRECT_TO_FIX);
  assert_non_null(turn);
  assert_non_null(direct);
  assert_true(turn->rate_deg_s < 0); /* toward the holding side */
  assert_true((turn->t1_s - turn->t0_s) * 3 > 180);
  assert_close(hypot(direct->p1_nm.x, direct->p1_nm.y), 0, 1e-9, "over the fix");
  assert_angle_close(ox_bearing_deg(ox_vec_scale(direct->p0_nm, -1)), turn->heading1_true_deg,
                     1e-7, "the turn ends on the bearing of the fix");
}

/* 30 degrees for one minute, then rate one through 210 degrees (C): the plain turn misses the
 * course by 0.001566 V on the far side, so the flight must come back to it. */
static void a_one_minute_teardrop_in_still_air_overshoots_and_comes_back(void **state) {
  static const struct {
    double tas, miss;
  } rows[] = {{90, 0.141}, {100, 0.157}, {120, 0.188}, {150, 0.235}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = entry_case(360, OX_TURNS_RIGHT, 150);
    c.aircraft.tas_kt = rows[i].tas;
    fly(&c);
    const ox_leg *turn = leg_of(OX_LEG_ENTRY_INBOUND_TURN), *out = leg_of(OX_LEG_ENTRY_OUTBOUND);
    assert_non_null(turn);
    assert_non_null(out);
    assert_close(out->t1_s - out->t0_s, 60, 1e-9, "one minute");
    double beyond_s = turn->t0_s + 70 - turn->t1_s; /* 210 degrees at 3 a second */
    assert_true(beyond_s < 0); /* the turn went on to come back */
    ox_vec rolled_out = ox_leg_position(turn, turn->t0_s + 70);
    assert_close(-holding_side_nm(rolled_out), rows[i].miss, 0.00051, "miss");
    assert_true(flight.circuits[0].complete);
  }
}

/* Tangent roll-out of the teardrop after 71.28 s (C). */
static void a_teardrop_of_71_seconds_rolls_out_on_the_course(void **state) {
  ox_case c = entry_case(360, OX_TURNS_RIGHT, 150);
  c.technique.entry_s = 71.28;
  fly(&c);
  const ox_leg *turn = leg_of(OX_LEG_ENTRY_INBOUND_TURN);
  assert_non_null(turn);
  ox_leg plain = *turn; /* carried on to the inbound heading, whatever the flight made of it */
  plain.t1_s = plain.t0_s + 70;
  assert_close(holding_side_nm(ox_leg_position(&plain, plain.t1_s)), 0, 1e-4, "tangent");
}

static void widths_and_legs_in_still_air_match_the_table(void **state) {
  static const struct {
    double tas, width, leg; /* C: two radii, and a minute's flight */
  } rows[] = {{90, 0.955, 1.5}, {100, 1.061, 1.667}, {120, 1.273, 2.0}, {150, 1.592, 2.5}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = entry_case(360, OX_TURNS_RIGHT, 360);
    c.aircraft.tas_kt = rows[i].tas;
    fly(&c);
    const ox_leg *out = leg_of(OX_LEG_OUTBOUND);
    assert_non_null(out);
    assert_close(out->p0_nm.x, rows[i].width, 0.00051, "width");
    assert_close(out->p0_nm.y - out->p1_nm.y, rows[i].leg, 0.00051, "leg");
    assert_close(flight.circuits[1].end_t_s - flight.circuits[1].fix_t_s, 240, 1e-7,
                 "about four minutes");
  }
}

static void in_still_air_a_direct_entry_on_course_is_the_still_air_shape(void **state) {
  ox_random r = {111};
  for (int i = 0; i < 2000; i++) {
    double inbound = ox_random_between(&r, 0, 360);
    ox_case c = entry_case(inbound, (ox_turns)ox_random_below(&r, 2), inbound);
    c.aircraft.tas_kt = ox_random_between(&r, 60, 400);
    c.hold.leg_s = ox_random_between(&r, 30, 240);
    c.technique.timing = (ox_timing)ox_random_below(&r, 2);
    if (i % 3 == 0) {
      c.hold.leg_by = OX_LEG_BY_DISTANCE;
      c.hold.leg_nm = ox_random_between(&r, 1, 20);
      c.hold.leg_end = (ox_leg_end)ox_random_below(&r, 2);
    }
    fly(&c);
    ox_leg shape[4];
    ox_still_air_shape(&flight.setup, shape);
    static const ox_leg_kind kinds[4] = {OX_LEG_OUTBOUND_TURN, OX_LEG_OUTBOUND,
                                         OX_LEG_INBOUND_TURN, OX_LEG_INBOUND};
    for (int k = 0; k < 4; k++) {
      const ox_leg *flown = leg_of(kinds[k]);
      assert_non_null(flown);
      assert_int_equal(shape[k].kind, kinds[k]);
      for (double part = 0; part <= 1; part += 0.25) {
        ox_vec a = ox_leg_position(flown, flown->t0_s + part * (flown->t1_s - flown->t0_s));
        ox_vec b = ox_leg_position(&shape[k],
                                   shape[k].t0_s + part * (shape[k].t1_s - shape[k].t0_s));
        assert_close(a.x, b.x, 1e-9, "east");
        assert_close(a.y, b.y, 1e-9, "north");
      }
    }
  }
}

/* The still-air shape of a hold in wind has no wind in it and closes on the fix. */
static void the_still_air_shape_ignores_the_wind(void **state) {
  ox_case c = entry_case(45, OX_TURNS_LEFT, 45);
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){.from_deg = 310, .kt = 35};
  fly(&c);
  ox_leg shape[4];
  ox_still_air_shape(&flight.setup, shape);
  for (int k = 0; k < 4; k++) {
    assert_true(shape[k].wind_kt.x == 0 && shape[k].wind_kt.y == 0);
    const ox_leg *next = &shape[(k + 1) % 4];
    assert_close(shape[k].p1_nm.x, next->p0_nm.x, 1e-12, "closed");
    assert_close(shape[k].p1_nm.y, next->p0_nm.y, 1e-12, "closed");
  }
  assert_close(hypot(shape[0].p0_nm.x, shape[0].p0_nm.y), 0, 1e-12, "begins at the fix");
}

/* AIM 5-3-8 j8(d), j7(a)(1) (F): the entry is by heading; area navigation may use the track, which
 * with a large drift gives another. Inbound 360 right, heading 190: ten degrees past the teardrop
 * sector, and the track well inside it. */
static void by_track_a_large_drift_gives_another_entry(void **state) {
  ox_case c = entry_case(360, OX_TURNS_RIGHT, 190);
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){.from_deg = 270, .kt = 40}; /* drifts the track left, to the east */
  fly(&c);
  assert_int_equal(flight.by_heading.kind, OX_ENTRY_PARALLEL);
  assert_int_equal(flight.by_track.kind, OX_ENTRY_TEARDROP);
  assert_int_equal(flight.flown, OX_ENTRY_PARALLEL);
  assert_true(advised(OX_ADVICE_TRACK_DIFFERS));
  double track = 190 - atan2(40 * cos(10 * OX_RAD_PER_DEG), 120 - 40 * sin(10 * OX_RAD_PER_DEG)) /
                           OX_RAD_PER_DEG;
  assert_angle_close(flight.setup.arrival_track_true_deg, track, 1e-9, "track");
  c.technique.sector = OX_SECTOR_TRACK;
  fly(&c);
  assert_int_equal(flight.flown, OX_ENTRY_TEARDROP);
  assert_int_equal(flight.entry.kind, OX_ENTRY_TEARDROP);
}

static void any_entry_may_be_ordered_and_is_said_to_be_wrong(void **state) {
  for (double heading = 0; heading < 360; heading += 15)
    for (int order = OX_CHOOSE_DIRECT; order <= OX_CHOOSE_TEARDROP; order++) {
      ox_case c = entry_case(360, OX_TURNS_RIGHT, heading);
      c.technique.entry = (ox_entry_order)order;
      fly(&c);
      assert_int_equal(flight.flown, order - OX_CHOOSE_DIRECT);
      bool accepted = flight.flown == flight.entry.kind || (int)flight.flown == flight.entry.also;
      assert_int_equal(advised(OX_ADVICE_ENTRY_NOT_BY_SECTOR), !accepted);
    }
}

static void within_five_degrees_of_a_boundary_either_entry_is_said(void **state) {
  static const struct {
    double heading;
    bool either;
  } rows[] = {{114, true}, {116, false}, {176, true}, {174, false}, {294, true}, {296, false}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = entry_case(360, OX_TURNS_RIGHT, rows[i].heading);
    fly(&c);
    assert_int_equal(advised(OX_ADVICE_ENTRY_EITHER), rows[i].either);
  }
}

/* The arrival tracks straight to the fix and crosses it at time zero on the given heading. */
static void the_arrival_is_a_straight_track_to_the_fix(void **state) {
  for (double heading = 0; heading < 360; heading += 20) {
    ox_case c = entry_case(360, OX_TURNS_RIGHT, heading);
    c.arrival.distance_nm = 7;
    c.wind_count = 1;
    c.wind[0] = (ox_wind_row){.from_deg = 70, .kt = 30};
    fly(&c);
    const ox_leg *a = &flight.legs[0];
    assert_int_equal(a->kind, OX_LEG_ARRIVAL);
    assert_close(hypot(a->p0_nm.x, a->p0_nm.y), 7, 1e-9, "7 NM out");
    assert_close(a->t1_s, 0, 0, "time zero");
    assert_angle_close(a->heading0_true_deg, heading, 1e-12, "heading");
    assert_angle_close(ox_bearing_deg(ox_vec_scale(a->p0_nm, -1)),
                       flight.setup.arrival_track_true_deg, 1e-9, "track to the fix");
  }
}

/* Legs say which part of the flight they are: a direct entry's first turn is entry and circuit 1
 * at once, everything after the entry belongs to its circuit. */
static void every_leg_says_which_part_it_belongs_to(void **state) {
  for (int order = OX_CHOOSE_DIRECT; order <= OX_CHOOSE_TEARDROP; order++) {
    ox_case c = entry_case(360, OX_TURNS_RIGHT, 60);
    c.technique.entry = (ox_entry_order)order;
    fly(&c);
    int last_part = OX_PART_ARRIVAL, last_circuit = 0;
    bool direct = order == OX_CHOOSE_DIRECT;
    for (size_t i = 0; i < flight.leg_count; i++) {
      const ox_leg *l = &flight.legs[i];
      bool direct_turn = direct && l->kind == OX_LEG_OUTBOUND_TURN && l->circuit == 1;
      assert_int_equal(l->part == OX_PART_ARRIVAL, l->kind == OX_LEG_ARRIVAL);
      if (direct) assert_int_equal(l->part == OX_PART_ENTRY, direct_turn);
      if (!direct) assert_int_equal(l->part == OX_PART_CIRCUIT, l->circuit > 0);
      assert_true((int)l->part >= last_part && l->circuit >= last_circuit);
      last_part = (int)l->part;
      last_circuit = l->circuit;
    }
    assert_int_equal(last_circuit, 3);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(published_entry_headings_are_flown),
      cmocka_unit_test(the_pattern_lies_where_the_clearance_says),
      cmocka_unit_test(a_parallel_entry_turns_back_across_the_holding_side),
      cmocka_unit_test(a_parallel_entry_too_short_to_intercept_returns_to_the_fix),
      cmocka_unit_test(a_one_minute_teardrop_in_still_air_overshoots_and_comes_back),
      cmocka_unit_test(a_teardrop_of_71_seconds_rolls_out_on_the_course),
      cmocka_unit_test(widths_and_legs_in_still_air_match_the_table),
      cmocka_unit_test(in_still_air_a_direct_entry_on_course_is_the_still_air_shape),
      cmocka_unit_test(the_still_air_shape_ignores_the_wind),
      cmocka_unit_test(by_track_a_large_drift_gives_another_entry),
      cmocka_unit_test(any_entry_may_be_ordered_and_is_said_to_be_wrong),
      cmocka_unit_test(within_five_degrees_of_a_boundary_either_entry_is_said),
      cmocka_unit_test(every_leg_says_which_part_it_belongs_to),
      cmocka_unit_test(the_arrival_is_a_straight_track_to_the_fix),
  };
  return cmocka_run_group_tests_name("entry flown", tests, NULL, NULL);
}
