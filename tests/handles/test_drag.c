/* Dragging: where a handle goes, the case follows. Each drag begins from the case it is given. */
#include "handles_support.h"

#include "oxbow/wind.h"

static ox_flight scratch;

static ox_case dragged(const ox_case *c, ox_handle h, ox_vec to, ox_drag_grid grid) {
  ox_case made = *c;
  fly(c);
  assert_int_equal(ox_handle_drag(h, c, &flight, &reach, to, grid, &scratch, &made), OX_OK);
  assert_int_equal(ox_case_check(&made, NULL, 0), 0);
  return made;
}

/* ---- courses ---------------------------------------------------------------------------- */

static void the_inbound_course_leads_from_the_handle_to_the_fix(void **state) {
  /* true bearing of the handle from the fix; the course wanted: the reciprocal, less the variation
   * of 10 east, to the nearest 5 or 1 */
  static const struct {
    double bearing_deg, coarse_deg, fine_deg;
  } rows[] = {{70, 240, 240},   {71, 240, 241}, {72.6, 245, 243}, {190, 360, 360},
              {188, 360, 358}, {192, 360, 2},  {193, 5, 3},      {9.4, 180, 179}};
  ox_case c = larch();
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case coarse = dragged(&c, OX_HANDLE_INBOUND, at(rows[i].bearing_deg, 5), OX_DRAG_COARSE);
    ox_case fine = dragged(&c, OX_HANDLE_INBOUND, at(rows[i].bearing_deg, 0.1), OX_DRAG_FINE);
    assert_close(coarse.hold.inbound_deg, rows[i].coarse_deg, 1e-9, "coarse");
    assert_close(fine.hold.inbound_deg, rows[i].fine_deg, 1e-9, "fine");
  }
}

static void nothing_else_of_the_case_changes_with_the_course(void **state) {
  ox_case c = larch(), made = dragged(&c, OX_HANDLE_INBOUND, at(10, 4), OX_DRAG_COARSE);
  assert_false(ox_case_equal(&c, &made));
  made.hold.inbound_deg = c.hold.inbound_deg;
  assert_true(ox_case_equal(&c, &made));
}

static void the_arrival_comes_over_the_place_it_was_dragged_to(void **state) {
  ox_case c = larch();
  for (int from_deg = 0; from_deg < 360; from_deg += 7) {
    ox_case made = dragged(&c, OX_HANDLE_ARRIVAL, at(from_deg, 4), OX_DRAG_FINE);
    fly(&made);
    assert_angle_close(flight.setup.arrival_track_true_deg, from_deg + 180.0, 0.75,
                       "track over the place, to half a degree of heading and its drift");
  }
}

static void an_arrival_against_a_wind_above_the_airspeed_takes_the_direction_itself(void **state) {
  ox_case c = larch();
  c.wind[0].kt = 250;
  ox_case made = dragged(&c, OX_HANDLE_ARRIVAL, at(150, 4), OX_DRAG_FINE);
  assert_close(made.arrival.heading_deg, 320, 1e-9, "330 true");
}

static void a_pointer_on_the_fix_means_no_direction(void **state) {
  ox_case c = larch();
  const ox_handle turned[] = {OX_HANDLE_INBOUND, OX_HANDLE_ARRIVAL, OX_HANDLE_TURNS};
  for (size_t i = 0; i < 3; i++) {
    ox_case made = dragged(&c, turned[i], (ox_vec){0, 0}, OX_DRAG_COARSE);
    assert_true(ox_case_equal(&c, &made));
  }
}

/* ---- wind ------------------------------------------------------------------------------- */

static ox_vec wind_place(double from_true_deg, double kt) {
  return ox_vec_add(reach.wind_at_nm,
                    at(from_true_deg, reach.wind_nm + kt * reach.wind_nm_per_kt));
}

static void the_wind_handle_gives_direction_and_speed(void **state) {
  static const struct {
    double deg, kt, coarse_deg, coarse_kt, fine_deg, fine_kt;
  } rows[] = {{270, 20, 270, 20, 270, 20}, {274, 22, 270, 20, 274, 22},
              {277, 23, 280, 25, 277, 23}, {2, 11.6, 360, 10, 2, 12},
              {356, 250, 360, 250, 356, 250}, {90, 400, 90, 250, 90, 250},
              {120, 1, 120, 0, 120, 1}};
  ox_case c = larch();
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_vec to = wind_place(rows[i].deg, rows[i].kt);
    ox_case coarse = dragged(&c, OX_HANDLE_WIND_FROM, to, OX_DRAG_COARSE);
    ox_case fine = dragged(&c, OX_HANDLE_WIND_FROM, to, OX_DRAG_FINE);
    assert_close(coarse.wind[0].from_deg, rows[i].coarse_deg, 1e-9, "direction");
    assert_close(coarse.wind[0].kt, rows[i].coarse_kt, 1e-9, "speed");
    assert_close(fine.wind[0].from_deg, rows[i].fine_deg, 1e-9, "direction, fine");
    assert_close(fine.wind[0].kt, rows[i].fine_kt, 1e-9, "speed, fine");
  }
}

static void a_magnetic_wind_snaps_in_magnetic_degrees(void **state) {
  ox_case c = larch();
  c.wind[0].north = OX_NORTH_MAGNETIC;
  ox_case made = dragged(&c, OX_HANDLE_WIND_FROM, wind_place(284, 20), OX_DRAG_COARSE);
  assert_close(made.wind[0].from_deg, 270, 1e-9, "284 true is 274 magnetic");
  assert_int_equal(made.wind[0].north, OX_NORTH_MAGNETIC);
}

static void calm_air_gets_a_wind_in_true_degrees(void **state) {
  ox_case c = larch();
  c.wind_count = 0;
  ox_case made = dragged(&c, OX_HANDLE_WIND_FROM, wind_place(180, 15), OX_DRAG_COARSE);
  assert_int_equal(made.wind_count, 1);
  assert_close(made.wind[0].from_deg, 180, 1e-9, "direction");
  assert_close(made.wind[0].kt, 15, 1e-9, "speed");
  assert_int_equal(made.wind[0].north, OX_NORTH_TRUE);
}

static ox_case two_rows(double low_deg, double low_kt, double high_deg, double high_kt) {
  ox_case c = larch();
  c.hold.altitude_ft = 5000;
  c.wind_count = 2;
  c.wind[0] = (ox_wind_row){2000, low_deg, low_kt, OX_NORTH_TRUE};
  c.wind[1] = (ox_wind_row){8000, high_deg, high_kt, OX_NORTH_MAGNETIC};
  return c;
}

static void several_rows_are_turned_and_scaled_to_the_wind_at_the_altitude(void **state) {
  ox_case c = two_rows(300, 16, 330, 31);
  ox_case made = dragged(&c, OX_HANDLE_WIND_FROM, wind_place(90, 40), OX_DRAG_COARSE);
  fly(&c);
  double low = c.wind[0].from_deg - flight.setup.wind_from_true_deg;
  fly(&made);
  assert_angle_close(flight.setup.wind_from_true_deg, 90, 1e-9, "direction at the altitude");
  assert_close(flight.setup.wind_speed_kt, 40, 1e-9, "speed at the altitude");
  assert_close(made.wind[1].kt / made.wind[0].kt, 31.0 / 16.0, 1e-9, "proportion of the rows");
  assert_angle_close(made.wind[1].from_deg - made.wind[0].from_deg, 30, 1e-9, "veer");
  assert_angle_close(made.wind[0].from_deg - 90, low, 1e-9, "lower row");
}

static void no_row_passes_its_limit_and_none_is_lost(void **state) {
  ox_case c = two_rows(300, 10, 300, 200);
  ox_case strong = dragged(&c, OX_HANDLE_WIND_FROM, wind_place(300, 250), OX_DRAG_COARSE);
  assert_close(strong.wind[1].kt, 250, 1e-9, "the stronger row at its limit");
  assert_close(strong.wind[0].kt, 12.5, 1e-9, "the other in proportion");
  ox_case weak = dragged(&c, OX_HANDLE_WIND_FROM, wind_place(300, 0), OX_DRAG_COARSE);
  fly(&weak);
  assert_close(flight.setup.wind_speed_kt, 1, 1e-9, "a knot is left");
  assert_close(weak.wind[1].kt / weak.wind[0].kt, 20, 1e-9, "in proportion");
}

static void rows_that_cancel_out_get_the_same_wind_added(void **state) {
  ox_case c = two_rows(90, 20, 260, 20); /* 260 magnetic is 270 true; half-way they cancel */
  ox_case made = dragged(&c, OX_HANDLE_WIND_FROM, wind_place(180, 30), OX_DRAG_COARSE);
  fly(&made);
  assert_angle_close(flight.setup.wind_from_true_deg, 180, 1e-6, "direction at the altitude");
  assert_close(flight.setup.wind_speed_kt, 30, 1e-6, "speed at the altitude");
}

/* ---- the leg and the turns -------------------------------------------------------------- */

static double out_nm(const ox_case *c) {
  fly(c);
  return -ox_vec_dot(flight.circuits[0].outbound_end_nm, ox_unit(flight.setup.inbound_true_deg));
}

static void the_outbound_end_follows_the_pointer(void **state) {
  for (int drift = OX_DRIFT_NONE; drift <= OX_DRIFT_EXACT; drift++)
    for (int outbound = OX_OUTBOUND_NOMINAL; outbound <= OX_OUTBOUND_EXACT; outbound++)
      for (int timing = OX_TIMING_INBOUND; timing <= OX_TIMING_OUTBOUND; timing++) {
        ox_case c = larch();
        c.technique.drift = (ox_drift)drift;
        c.technique.outbound = (ox_outbound)outbound;
        c.technique.timing = (ox_timing)timing;
        double was = out_nm(&c), want = was + 1.5;
        ox_vec to = ox_vec_add(flight.circuits[0].outbound_end_nm,
                               at(flight.setup.inbound_true_deg + 180, 1.5));
        ox_case made = dragged(&c, OX_HANDLE_OUTBOUND, to, OX_DRAG_FINE);
        double second_nm = flight.setup.tas_kt * 1.3 / 3600;
        assert_close(out_nm(&made), want, second_nm, "within a second of the pointer");
        assert_close(made.hold.leg_s, round(made.hold.leg_s), 1e-9, "whole seconds");
      }
}

static void a_length_snaps_to_half_miles_and_tenths(void **state) {
  ox_case c = larch();
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = 4;
  double was = out_nm(&c);
  ox_vec to = ox_vec_add(flight.circuits[0].outbound_end_nm,
                         at(flight.setup.inbound_true_deg + 180, 1.31));
  assert_close(was, 4, 1e-6, "the leg ends at its length along the course");
  assert_close(dragged(&c, OX_HANDLE_OUTBOUND, to, OX_DRAG_COARSE).hold.leg_nm, 5.5, 1e-9, "half");
  assert_close(dragged(&c, OX_HANDLE_OUTBOUND, to, OX_DRAG_FINE).hold.leg_nm, 5.3, 1e-9, "tenth");
}

static void the_leg_stays_within_its_limits(void **state) {
  ox_case c = larch();
  ox_case longest = dragged(&c, OX_HANDLE_OUTBOUND, at(70, 1e9), OX_DRAG_COARSE);
  ox_case shortest = dragged(&c, OX_HANDLE_OUTBOUND, at(250, 1e9), OX_DRAG_COARSE);
  assert_close(longest.hold.leg_s, 600, 1e-9, "ten minutes");
  assert_close(shortest.hold.leg_s, 10, 1e-9, "ten seconds");
}

static void the_standard_leg_stays_standard_until_the_end_is_moved(void **state) {
  ox_case c = larch();
  c.hold.leg_s = 0;
  fly(&c);
  ox_case same = dragged(&c, OX_HANDLE_OUTBOUND, flight.circuits[0].outbound_end_nm,
                         OX_DRAG_COARSE);
  assert_close(same.hold.leg_s, 0, 0, "not given");
}

static void the_turns_flip_when_the_handle_crosses_the_course(void **state) {
  ox_case c = larch(); /* 250 true: right of it is 340 */
  assert_int_equal(dragged(&c, OX_HANDLE_TURNS, at(340, 2), OX_DRAG_COARSE).hold.turns,
                   OX_TURNS_RIGHT);
  assert_int_equal(dragged(&c, OX_HANDLE_TURNS, at(160, 2), OX_DRAG_COARSE).hold.turns,
                   OX_TURNS_LEFT);
}

/* ---- refusals --------------------------------------------------------------------------- */

static void places_that_are_no_places_are_refused_and_nothing_is_written(void **state) {
  ox_case c = larch(), made;
  const double bad[] = {(double)NAN, HUGE_VAL, -HUGE_VAL};
  memset(&made, 0x5a, sizeof made);
  ox_case untouched = made;
  fly(&c);
  for (int h = 0; h <= OX_HANDLE_COUNT; h++)
    for (size_t i = 0; i < 3; i++) {
      assert_int_equal(ox_handle_drag((ox_handle)h, &c, &flight, &reach, (ox_vec){bad[i], 1},
                                      OX_DRAG_FINE, &scratch, &made), OX_ERROR);
      assert_int_equal(ox_handle_drag((ox_handle)h, &c, &flight, &reach, (ox_vec){1, bad[i]},
                                      OX_DRAG_FINE, &scratch, &made), OX_ERROR);
    }
  assert_int_equal(ox_handle_drag(OX_HANDLE_FIX, &c, &flight, &reach, at(90, 1), OX_DRAG_FINE,
                                  &scratch, &made), OX_ERROR);
  assert_memory_equal(&made, &untouched, sizeof made);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_inbound_course_leads_from_the_handle_to_the_fix),
      cmocka_unit_test(nothing_else_of_the_case_changes_with_the_course),
      cmocka_unit_test(the_arrival_comes_over_the_place_it_was_dragged_to),
      cmocka_unit_test(an_arrival_against_a_wind_above_the_airspeed_takes_the_direction_itself),
      cmocka_unit_test(a_pointer_on_the_fix_means_no_direction),
      cmocka_unit_test(the_wind_handle_gives_direction_and_speed),
      cmocka_unit_test(a_magnetic_wind_snaps_in_magnetic_degrees),
      cmocka_unit_test(calm_air_gets_a_wind_in_true_degrees),
      cmocka_unit_test(several_rows_are_turned_and_scaled_to_the_wind_at_the_altitude),
      cmocka_unit_test(no_row_passes_its_limit_and_none_is_lost),
      cmocka_unit_test(rows_that_cancel_out_get_the_same_wind_added),
      cmocka_unit_test(the_outbound_end_follows_the_pointer),
      cmocka_unit_test(a_length_snaps_to_half_miles_and_tenths),
      cmocka_unit_test(the_leg_stays_within_its_limits),
      cmocka_unit_test(the_standard_leg_stays_standard_until_the_end_is_moved),
      cmocka_unit_test(the_turns_flip_when_the_handle_crosses_the_course),
      cmocka_unit_test(places_that_are_no_places_are_refused_and_nothing_is_written),
  };
  return cmocka_run_group_tests_name("drag", tests, NULL, NULL);
}
