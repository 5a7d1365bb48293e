/* The flight: published and worked cases flown whole. Tags: F read in the document, f in a
 * secondary copy, M from memory, C computed from general mathematics. */
#include "holds.h"
#include "ox_test.h"
#include "oxbow/flight.h"
#include "oxbow/units.h"

static ox_flight flight;

/* TAS 120 in calm air on 360, right turns, exact technique, direct from the south. */
static ox_case plain_case(double tas_kt) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = tas_kt;
  c.aircraft.max_bank_deg = 45; /* the worked tables turn at 3 degrees a second at any speed */
  c.hold.inbound_deg = 360;
  c.hold.leg_s = 60;
  c.arrival.heading_deg = 360;
  return c;
}

static void set_wind(ox_case *c, double from_deg, double kt) {
  c->wind_count = 1;
  c->wind[0] = (ox_wind_row){.from_deg = from_deg, .kt = kt, .north = OX_NORTH_TRUE};
}

static void fly(const ox_case *c) {
  assert_int_not_equal(ox_flight_solve(c, &flight), OX_ERROR);
}

static const ox_leg *leg_of(ox_leg_kind kind, int circuit) {
  for (size_t i = 0; i < flight.leg_count; i++)
    if (flight.legs[i].kind == kind && flight.legs[i].circuit == circuit) return &flight.legs[i];
  return NULL;
}

static double event_s(ox_event_kind kind, int circuit) {
  for (size_t i = 0; i < flight.event_count; i++)
    if (flight.events[i].kind == kind && flight.events[i].circuit == circuit)
      return flight.events[i].t_s;
  return (double)NAN;
}

static bool advised(ox_advice_kind kind) {
  for (size_t i = 0; i < flight.advice_count; i++)
    if (flight.advice[i].kind == kind) return true;
  return false;
}

/* W1 to W18 (C): with exact drift and outbound the measured inbound time is the goal, and from the
 * second circuit on heading and times are those of the table, whichever way the turns are. */
static void worked_holds_are_flown_to_the_goal(void **state) {
  for (size_t i = 0; i < OX_WORKED_HOLD_COUNT; i++)
    for (int turns = 0; turns < 2; turns++) {
      const ox_worked_hold *w = &ox_worked_holds[i];
      ox_case c = plain_case(w->tas_kt);
      c.hold.inbound_deg = w->inbound_deg;
      c.hold.turns = (ox_turns)turns;
      c.hold.leg_s = w->inbound_s;
      c.arrival.heading_deg = w->inbound_deg;
      set_wind(&c, w->wind_from_deg, w->wind_kt);
      fly(&c);
      assert_int_equal(flight.circuit_count, 3);
      for (size_t k = 0; k < 3; k++) {
        const ox_circuit *circuit = &flight.circuits[k];
        assert_true(circuit->complete);
        assert_close(circuit->inbound_s, w->inbound_s, 1e-7, w->name);
        assert_close(circuit->rollout_offset_nm, 0, 1e-9, w->name);
        if (k == 0) continue;
        assert_close(circuit->outbound_s, w->outbound_s, w->outbound_tolerance_s + 1e-6, w->name);
        assert_angle_close(circuit->outbound_heading_true_deg, w->outbound_deg, 0.005 + 1e-6,
                           w->name);
        assert_close(circuit->end_t_s - circuit->fix_t_s, w->circuit_s, 0.0505, w->name);
      }
    }
}

/* When abeam happens (C; rate one, wind along the course, + a headwind inbound), seconds after the
 * fix; roll-out is at 60 s, and the clock starts at the later of the two (AIM 5-3-8 j4(b), F). */
static const struct {
  double tas, wind, abeam, later;
} abeams[] = {{120, 20, 51.16, 60}, {120, 10, 55.34, 60},     {120, 0, 60, 60},
              {120, -10, 65.45, 65.45}, {120, -20, 72.00, 72.00}, {100, 15, 51.97, 60},
              {90, -15, 72.00, 72.00}};

static ox_case along_case(double tas, double headwind) {
  ox_case c = plain_case(tas);
  set_wind(&c, headwind >= 0 ? 360 : 180, fabs(headwind));
  c.technique.outbound = OX_OUTBOUND_NOMINAL;
  return c;
}

static void abeam_and_the_clock_come_when_the_table_says(void **state) {
  for (size_t i = 0; i < sizeof abeams / sizeof *abeams; i++) {
    ox_case c = along_case(abeams[i].tas, abeams[i].wind);
    fly(&c);
    assert_close(event_s(OX_EVENT_ABEAM, 1), abeams[i].abeam, 0.0051, "abeam");
    assert_close(event_s(OX_EVENT_CLOCK_START, 1), abeams[i].later, 0.0051, "clock");
    assert_close(event_s(OX_EVENT_WINGS_LEVEL, 1), 60, 1e-9, "roll-out");
    if (abeams[i].wind < 0) /* closed form 60 + 60 w / (V - w) */
      assert_close(event_s(OX_EVENT_ABEAM, 1),
                   60 - 60 * abeams[i].wind / (abeams[i].tas + abeams[i].wind), 1e-7, "closed");
  }
}

static void each_clock_starts_at_its_own_event(void **state) {
  for (size_t i = 0; i < sizeof abeams / sizeof *abeams; i++)
    for (int clock = 0; clock < 3; clock++) {
      ox_case c = along_case(abeams[i].tas, abeams[i].wind);
      c.technique.clock = (ox_clock)clock;
      fly(&c);
      const double want[] = {abeams[i].later, abeams[i].abeam, 60};
      assert_close(event_s(OX_EVENT_CLOCK_START, 1), want[clock], 0.0051, "clock");
      assert_close(flight.circuits[0].timed_s, 60, 1e-7, "a minute by the clock");
    }
}

/* One second a knot, V 120, one-minute legs (M): headwind inbound shortens the outbound leg. */
static void the_rule_of_one_second_a_knot_comes_out(void **state) {
  static const struct {
    double headwind, s;
  } rows[] = {{-20, 80}, {-10, 70}, {-5, 65}, {5, 55}, {10, 50}, {15, 45}, {20, 40}, {30, 30}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = along_case(120, rows[i].headwind);
    c.technique.outbound = OX_OUTBOUND_RULE;
    fly(&c);
    for (size_t k = 0; k < 3; k++)
      assert_close(flight.circuits[k].timed_s, rows[i].s, 1e-7, "timed outbound");
  }
}

/* CNATRA P-871 p. 76-77, 79 (F): what the inbound leg lacked is added to the next outbound time
 * (50 s measured: 60 becomes 70), never below 30 s. */
static void the_inbound_shortfall_is_added_to_the_next_outbound_time(void **state) {
  ox_random r = {101};
  int floors = 0;
  for (int i = 0; i < 300; i++) {
    ox_case c = plain_case(120);
    set_wind(&c, ox_random_between(&r, 0, 360), ox_random_between(&r, 0, 35));
    c.technique.outbound = OX_OUTBOUND_ADJUST;
    c.technique.circuits = 6;
    fly(&c);
    assert_close(flight.circuits[0].timed_s, 60, 1e-7, "the first is a minute");
    for (size_t k = 1; k < flight.circuit_count && flight.circuits[k - 1].complete; k++) {
      double wanted = flight.circuits[k - 1].timed_s + 60 - flight.circuits[k - 1].inbound_s;
      assert_close(flight.circuits[k].timed_s, fmax(30, wanted), 1e-6, "adjusted");
      floors += wanted < 30;
    }
  }
  assert_true(floors > 0);
}

static void adjusting_converges_where_the_floor_is_not_met(void **state) {
  for (double headwind = -15; headwind <= 10; headwind += 5) {
    ox_case c = along_case(120, headwind);
    c.technique.outbound = OX_OUTBOUND_ADJUST;
    c.technique.circuits = OX_CIRCUITS_MAX;
    fly(&c);
    assert_close(flight.circuits[OX_CIRCUITS_MAX - 1].inbound_s, 60, 0.01, "a minute inbound");
  }
}

/* AIM 5-3-8 j8(c) (F; headings C): 8 degrees left inbound, 24 right outbound: 352 and 204. */
static void eight_degrees_left_inbound_is_twenty_four_right_outbound(void **state) {
  ox_case c = plain_case(120);
  set_wind(&c, 270, 120 * sin(8 * OX_RAD_PER_DEG));
  c.technique.drift = OX_DRIFT_TRIPLE;
  c.technique.outbound = OX_OUTBOUND_NOMINAL;
  fly(&c);
  assert_angle_close(flight.legs[flight.leg_count - 1].heading0_true_deg, 352, 1e-6, "inbound");
  assert_angle_close(flight.circuits[1].outbound_heading_true_deg, 204, 1e-6, "outbound");
}

static void drift_corrections_are_multiples_of_the_inbound_one(void **state) {
  static const double multiples[] = {0, 1, 2, 3};
  for (int drift = OX_DRIFT_NONE; drift <= OX_DRIFT_TRIPLE; drift++)
    for (double from = 20; from < 360; from += 40) {
      ox_case c = plain_case(120);
      set_wind(&c, from, 18);
      c.technique.drift = (ox_drift)drift;
      c.technique.outbound = OX_OUTBOUND_NOMINAL;
      fly(&c);
      double wca = asin(18 * sin(from * OX_RAD_PER_DEG) / 120) / OX_RAD_PER_DEG;
      assert_angle_close(flight.circuits[1].outbound_heading_true_deg,
                         180 - multiples[drift] * wca, 1e-7, "outbound");
    }
}

/* A published discussion (f): inbound 360 with 20 degrees of crab, parallel track outbound 180 is
 * heading 160, a turn of 140 degrees; with -20 from 340 to 200, a turn of 220. */
static void a_parallel_outbound_track_needs_the_published_turns(void **state) {
  static const struct {
    double from, heading, turn;
  } rows[] = {{90, 160, 140}, {270, 200, 220}};
  for (size_t i = 0; i < 2; i++) {
    ox_case c = plain_case(120);
    set_wind(&c, rows[i].from, 120 * sin(20 * OX_RAD_PER_DEG));
    c.technique.drift = OX_DRIFT_TRACK;
    c.technique.outbound = OX_OUTBOUND_NOMINAL;
    c.arrival.heading_deg = rows[i].from == 90 ? 20 : 340;
    c.technique.entry = OX_CHOOSE_DIRECT;
    fly(&c);
    const ox_leg *turn = leg_of(OX_LEG_OUTBOUND_TURN, 1), *out = leg_of(OX_LEG_OUTBOUND, 1);
    assert_non_null(turn);
    assert_non_null(out);
    assert_angle_close(out->heading0_true_deg, rows[i].heading, 1e-6, "heading");
    assert_angle_close(ox_leg_at(out, out->t0_s).track_true_deg, 180, 1e-6, "track");
    assert_close((turn->t1_s - turn->t0_s) * 3, rows[i].turn, 1e-6, "degrees turned");
  }
}

/* The still-air outbound distance: ICAO timing, 60 V / (V + w) seconds (C). */
static void outbound_timing_keeps_the_still_air_distance(void **state) {
  static const struct {
    double headwind, s;
  } rows[] = {{-20, 72.0}, {-10, 65.5}, {-5, 62.6}, {0, 60}, {5, 57.6},
              {10, 55.4},  {15, 53.3},  {20, 51.4}, {30, 48.0}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = along_case(120, rows[i].headwind);
    c.technique.timing = OX_TIMING_OUTBOUND;
    c.technique.outbound = OX_OUTBOUND_EXACT;
    fly(&c);
    assert_close(flight.circuits[1].outbound_s, rows[i].s, 0.051, "outbound");
  }
}

/* With a reaction time before each turn: the outbound leg runs to the start of the inbound turn,
 * the timing ends where the reaction begins, as their contract says. */
static void measured_times_run_to_the_end_of_leg_and_of_timing(void **state) {
  for (double roll_s = 0; roll_s <= 6; roll_s += 3) {
    ox_case c = along_case(120, -10);
    c.technique.roll_s = roll_s;
    fly(&c);
    const ox_leg *turn = leg_of(OX_LEG_INBOUND_TURN, 2), *first = leg_of(OX_LEG_OUTBOUND_TURN, 2);
    assert_close(flight.circuits[1].outbound_s, turn->t0_s - first->t1_s, 1e-9, "outbound_s");
    double timing_s = turn->t0_s - roll_s - event_s(OX_EVENT_CLOCK_START, 2);
    assert_close(flight.circuits[1].timed_s, timing_s, 1e-9, "timed_s");
  }
}

/* ICAO pilot reaction 0 to 6 s (Doc 8168 Vol II, F): still air, both reactions of a circuit cancel
 * in length; the course is regained without an intercept. */
static void a_reaction_time_is_flown_straight_before_each_turn(void **state) {
  ox_case c = plain_case(120);
  c.technique.roll_s = 6;
  fly(&c);
  size_t reactions = 0;
  for (size_t i = 0; i + 1 < flight.leg_count; i++) {
    if (flight.legs[i].kind != OX_LEG_REACTION) continue;
    reactions++;
    assert_close(flight.legs[i].t1_s - flight.legs[i].t0_s, 6, 1e-9, "six seconds");
    assert_int_equal(flight.legs[i].shape, OX_SHAPE_STRAIGHT);
    assert_int_equal(flight.legs[i + 1].shape, OX_SHAPE_TURN);
  }
  assert_int_equal(reactions, 6);
  assert_close(flight.circuits[1].inbound_s, 60, 1e-7, "goal");
  assert_close(flight.circuits[1].rollout_offset_nm, 0, 1e-9, "on the course");
}

/* FIG 5-3-5 and 5-3-6 notes of the AIM (F): a 5 NM leg toward the station is turned at 15 DME for
 * a fix at 10, an 8 NM leg away from it at 20 for a fix at 28: the outbound leg ends the leg length
 * beyond the fix, along the course. */
static void a_distance_leg_ends_its_length_beyond_the_fix(void **state) {
  static const double lengths[] = {5, 8};
  for (size_t i = 0; i < 2; i++)
    for (int turns = 0; turns < 2; turns++)
      for (double from = 0; from < 360; from += 45) {
        ox_case c = plain_case(150);
        set_wind(&c, from, 25);
        c.hold.turns = (ox_turns)turns;
        c.hold.leg_by = OX_LEG_BY_DISTANCE;
        c.hold.leg_nm = lengths[i];
        fly(&c);
        for (int k = 1; k <= 3; k++)
          assert_close(-leg_of(OX_LEG_OUTBOUND, k)->p1_nm.y, lengths[i], 1e-8, "outbound end");
      }
}

/* AIM 5-3-8 j7(a)(4) (F): area navigation may take the coded distance as the inbound length. */
static void an_inbound_distance_leg_is_as_long_as_asked_for(void **state) {
  for (double from = 0; from < 360; from += 45) {
    ox_case c = plain_case(150);
    set_wind(&c, from, 25);
    c.hold.leg_by = OX_LEG_BY_DISTANCE;
    c.hold.leg_nm = 6;
    c.hold.leg_end = OX_LEG_END_INBOUND;
    fly(&c);
    const ox_leg *in = leg_of(OX_LEG_INBOUND, 2);
    assert_non_null(in);
    assert_close(hypot(in->p1_nm.x - in->p0_nm.x, in->p1_nm.y - in->p0_nm.y), 6, 1e-8, "inbound");
  }
}

/* The wind between two rows of altitude lies between them, outside it is the nearest row's. */
static void the_wind_is_that_of_the_altitude(void **state) {
  ox_setup s;
  ox_case c = plain_case(120);
  c.wind_count = 2;
  c.wind[0] = (ox_wind_row){.altitude_ft = 4000, .from_deg = 270, .kt = 10};
  c.wind[1] = (ox_wind_row){.altitude_ft = 8000, .from_deg = 270, .kt = 30};
  static const struct {
    double ft, kt;
    bool outside;
  } rows[] = {{4000, 10, false}, {6000, 20, false}, {8000, 30, false}, {7000, 25, false},
              {1000, 10, true},  {9000, 30, true}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    c.hold.altitude_ft = rows[i].ft;
    assert_int_not_equal(ox_setup_make(&c, &s), OX_ERROR);
    assert_close(s.wind_speed_kt, rows[i].kt, 1e-9, "speed");
    assert_angle_close(s.wind_from_true_deg, 270, 1e-9, "direction");
    assert_close(s.wind_kt.x, rows[i].kt, 1e-9, "blows to the east");
    fly(&c);
    assert_int_equal(advised(OX_ADVICE_WIND_EXTRAPOLATED), rows[i].outside);
  }
}

/* Magnetic = true - variation, east positive: 20 degrees east turns all that is magnetic by 20,
 * and leaves a true wind where it is. */
static void variation_turns_what_is_magnetic_and_not_what_is_true(void **state) {
  ox_setup s;
  ox_case c = plain_case(120);
  set_wind(&c, 90, 20);
  c.variation_deg = 20;
  assert_int_not_equal(ox_setup_make(&c, &s), OX_ERROR);
  assert_angle_close(s.inbound_true_deg, 20, 1e-12, "inbound");
  assert_angle_close(s.arrival_heading_true_deg, 20, 1e-12, "heading");
  assert_angle_close(s.wind_from_true_deg, 90, 1e-9, "true wind");
  c.wind[0].north = OX_NORTH_MAGNETIC;
  assert_int_not_equal(ox_setup_make(&c, &s), OX_ERROR);
  assert_angle_close(s.wind_from_true_deg, 110, 1e-9, "magnetic wind");
}

static void a_given_true_airspeed_wins_and_a_contradiction_is_said(void **state) {
  ox_setup s;
  ox_case c = plain_case(0);
  c.aircraft.ias_kt = 110;
  c.hold.altitude_ft = 6000;
  assert_int_not_equal(ox_setup_make(&c, &s), OX_ERROR);
  assert_close(s.tas_kt, 120.2, 0.051, "110 kt at 6 000 ft (C)");
  c.aircraft.tas_kt = 120.2;
  fly(&c);
  assert_false(advised(OX_ADVICE_TAS_CONTRADICTS_IAS));
  c.aircraft.tas_kt = 140;
  fly(&c);
  assert_close(flight.setup.tas_kt, 140, 0, "TAS wins");
  assert_true(advised(OX_ADVICE_TAS_CONTRADICTS_IAS));
}

static void speeds_above_the_limit_and_below_ninety_are_said(void **state) {
  static const struct {
    double ias, ft;
    bool above, below;
  } rows[] = {{200, 6000, false, false}, {201, 6000, true, false}, {230, 6001, false, false},
              {231, 14000, true, false}, {265, 14001, false, false}, {266, 14001, true, false},
              {90, 5000, false, false},  {89, 5000, false, true}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = plain_case(0);
    c.aircraft.ias_kt = rows[i].ias;
    c.hold.altitude_ft = rows[i].ft;
    fly(&c);
    assert_int_equal(advised(OX_ADVICE_SPEED_ABOVE_LIMIT), rows[i].above);
    assert_int_equal(advised(OX_ADVICE_BELOW_FIXED_WING_MIN), rows[i].below);
  }
}

static void names_are_stable_words(void **state) {
  assert_string_equal(ox_event_name(OX_EVENT_FIX), "fix");
  assert_string_equal(ox_event_name(OX_EVENT_TURN_BEGIN), "turn");
  assert_string_equal(ox_event_name(OX_EVENT_WINGS_LEVEL), "level");
  assert_string_equal(ox_event_name(OX_EVENT_ABEAM), "abeam");
  assert_string_equal(ox_event_name(OX_EVENT_CLOCK_START), "clock");
  assert_string_equal(ox_event_name(OX_EVENT_INTERCEPT), "intercept");
  assert_string_equal(ox_entry_name(OX_ENTRY_DIRECT), "direct");
  assert_string_equal(ox_entry_name(OX_ENTRY_PARALLEL), "parallel");
  assert_string_equal(ox_entry_name(OX_ENTRY_TEARDROP), "teardrop");
  for (int why = 0; why <= OX_STEADY_STATION; why++)
    assert_true(strlen(ox_steady_why_name((ox_steady_why)why)) > 10);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(worked_holds_are_flown_to_the_goal),
      cmocka_unit_test(abeam_and_the_clock_come_when_the_table_says),
      cmocka_unit_test(each_clock_starts_at_its_own_event),
      cmocka_unit_test(the_rule_of_one_second_a_knot_comes_out),
      cmocka_unit_test(the_inbound_shortfall_is_added_to_the_next_outbound_time),
      cmocka_unit_test(adjusting_converges_where_the_floor_is_not_met),
      cmocka_unit_test(eight_degrees_left_inbound_is_twenty_four_right_outbound),
      cmocka_unit_test(drift_corrections_are_multiples_of_the_inbound_one),
      cmocka_unit_test(a_parallel_outbound_track_needs_the_published_turns),
      cmocka_unit_test(outbound_timing_keeps_the_still_air_distance),
      cmocka_unit_test(measured_times_run_to_the_end_of_leg_and_of_timing),
      cmocka_unit_test(a_reaction_time_is_flown_straight_before_each_turn),
      cmocka_unit_test(a_distance_leg_ends_its_length_beyond_the_fix),
      cmocka_unit_test(an_inbound_distance_leg_is_as_long_as_asked_for),
      cmocka_unit_test(the_wind_is_that_of_the_altitude),
      cmocka_unit_test(variation_turns_what_is_magnetic_and_not_what_is_true),
      cmocka_unit_test(a_given_true_airspeed_wins_and_a_contradiction_is_said),
      cmocka_unit_test(speeds_above_the_limit_and_below_ninety_are_said),
      cmocka_unit_test(names_are_stable_words),
  };
  return cmocka_run_group_tests_name("flight", tests, NULL, NULL);
}
