/* What the circuits teach: the technique by its name, the next correction, where the inbound turn
 * leads, the gate, the non-holding side, and the times one after another. */
#include "../engine/random_case.h"
#include "oxbow/presets.h"
#include "words_check.h"

static ox_flight flight; /* large */

static ox_working work_out(const ox_case *c) {
  assert_int_not_equal(ox_flight_solve(c, &flight), OX_ERROR);
  ox_working w = ox_working_make(c, &flight);
  assert_true(w.count > 0);
  return w;
}

static bool has_row(const ox_working *w, const char *label) {
  for (size_t i = 0; i < w->count; i++)
    if (strcmp(w->rows[i].label, label) == 0) return true;
  return false;
}

static void assert_row(const ox_case *c, const char *label, const char *value, const char *why) {
  ox_working w = work_out(c);
  const ox_working_row *row = find_row(&w, label);
  if (strcmp(row->value, value) != 0)
    fail_msg("%s: want \"%s\", got \"%s\"", label, value, row->value);
  assert_has(row->why, why, label);
  ox_working_clear(&w);
}

/* 120 kt, rate one, one-minute legs on 360. */
static ox_case at_120(double from_deg, double kt) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 120;
  c.arrival.heading_deg = c.hold.inbound_deg;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, from_deg, kt, OX_NORTH_TRUE};
  return c;
}

static void every_preset_is_named_with_its_rule_and_source(void **state) {
  for (size_t i = 0; i < ox_preset_count(); i++) {
    ox_case c = ox_case_default();
    assert_true(ox_preset_apply(i, &c));
    ox_working w = work_out(&c);
    const ox_working_row *row = find_row(&w, "Flown as");
    const ox_preset *preset = ox_preset_at(i);
    assert_string_equal(row->group, "Technique");
    assert_string_equal(row->value, preset->name);
    assert_string_equal(row->why, preset->rule);
    assert_string_equal(row->source, preset->source);
    ox_working_clear(&w);
  }
}

static void a_technique_of_nobody_is_told_by_its_parts(void **state) {
  ox_case c = ox_case_default();
  c.technique.drift = OX_DRIFT_SINGLE;
  c.technique.clock = OX_CLOCK_ABEAM_OR_LEVEL;
  c.aircraft.max_bank_deg = 22.5;
  assert_row(&c, "Flown as", "one of its own", "clock from abeam or level, drift single");
  assert_row(&c, "Flown as", "one of its own", "or 22.5° of bank");
  c.aircraft.turn_by = OX_TURN_BY_BANK;
  assert_row(&c, "Flown as", "one of its own", "heading, 22.5° of bank");
}

/* Along the course: headwind w, V = 120, outbound 60 s: turns drift 120 w outbound, so inbound is
 * [(V + w) 60 + 120 w] / (V − w); at 10 kt [130 × 60 + 1200] / 110 = 81.8 s. The correction by the
 * rule of P-871 p. 76: 60 − 21.8 = 38.2 s. */
static void the_next_correction_is_the_time_less_the_error(void **state) {
  ox_case c = at_120(360, 10);
  c.technique.outbound = OX_OUTBOUND_NOMINAL;
  c.technique.clock = OX_CLOCK_LEVEL;
  c.technique.circuits = 1;
  assert_row(&c, "Circuit 1", "outbound 1:00, inbound 1:22, 22 s too long, rolls out on the course",
             "inbound 81.8 s − 60 s = +21.8 s");
  assert_row(&c, "Next correction", "outbound 0:38", "outbound 60.0 s − error 21.8 s = 38.2 s");
  /* Tailwind 10: [110 × 60 − 1200] / 130 = 41.5 s; 60 + 18.5 = 78.5 s. */
  c.wind[0].from_deg = 180;
  assert_row(&c, "Next correction", "outbound 1:18", "outbound 60.0 s + error 18.5 s = 78.5 s");
  /* 20 kt: [140 × 60 + 2400] / 100 = 108 s; 60 − 48 = 12 s, floor 30 s (P-871 p. 79). */
  c.wind[0] = (ox_wind_row){0, 360, 20, OX_NORTH_TRUE};
  assert_row(&c, "Next correction", "outbound 0:30",
             "= 12.0 s, but a first correction is not below 30 s");
}

static void nothing_is_corrected_where_it_is_as_asked_or_not_timed(void **state) {
  ox_case c = at_120(90, 20);
  assert_row(&c, "Next correction", "none: the inbound leg is as asked", "error 0.0 s");
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = 4;
  ox_working w = work_out(&c);
  assert_false(has_row(&w, "Next correction"));
  assert_false(has_row(&w, "Inbound times one after another"));
  assert_true(has_row(&w, "Gate angle"));
  ox_working_clear(&w);
}

/* Still air (holding-standards 10, derived): tan = (2/π)(60/t): 60 s 32.48°, 90 s 23.00°. */
static void the_gate_of_still_air_is_that_of_the_table(void **state) {
  ox_case c = at_120(360, 0);
  assert_row(&c, "Gate angle", "32.5° off the outbound course", "atan(2r ÷ leg) = 32.5°");
  assert_row(&c, "Gate angle", "32.5° off the outbound course",
             "1.27 NM across and 2.00 NM outbound of the fix");
  c.hold.leg_s = 90;
  assert_row(&c, "Gate angle", "23.0° off the outbound course", "atan(2r ÷ leg) = 23.0°");
}

/* With no correction the wind of a 240 s circuit less the inbound leg carries it across: from the
 * holding side beyond the course, from the other side short of it. 10 kt for the 180 s of turns
 * and outbound are 0.50 NM. */
static void the_roll_out_is_what_the_wind_carries_it(void **state) {
  ox_case c = at_120(90, 10);
  c.technique.drift = OX_DRIFT_NONE;
  c.technique.outbound = OX_OUTBOUND_NOMINAL;
  c.technique.clock = OX_CLOCK_LEVEL;
  c.technique.circuits = 1;
  ox_working w = work_out(&c);
  const ox_working_row *row = find_row(&w, "Where the inbound turn rolls out");
  assert_has(row->value, "beyond the course, on the non-holding side (overshoot)", "overshoot");
  assert_has(find_row(&w, "Farthest on the non-holding side")->value, "NM, in circuit 1", "far");
  ox_working_clear(&w);
  assert_close(flight.circuits[0].rollout_offset_nm, -0.5, 0.03, "roll-out");
  c.wind[0].from_deg = 270;
  w = work_out(&c);
  row = find_row(&w, "Where the inbound turn rolls out");
  assert_has(row->value, "short of the course, on the holding side (undershoot)", "undershoot");
  ox_working_clear(&w);
  c.wind[0].kt = 0;
  assert_row(&c, "Where the inbound turn rolls out", "on the course", "1.27 − 1.27 = 0 NM");
  assert_row(&c, "Farthest on the non-holding side", "never", "the entry is not counted");
}

static void the_times_stand_one_after_another(void **state) {
  ox_case c = at_120(360, 10);
  c.technique.outbound = OX_OUTBOUND_ADJUST;
  c.technique.clock = OX_CLOCK_LEVEL;
  c.technique.circuits = 3;
  /* 81.8 s; then outbound 38.2: [130 × 38.18 + 1200] / 110 = 56.0 s; then 42.1: 60.7 s. The error
   * goes by 1 − 130/110 = −0.18 from one to the next. */
  assert_row(&c, "Inbound times one after another", "1:22; 0:56; 1:01",
             "errors +21.8; −4; +0.7 s; the last is −0.18 of the one before");
  c.technique.circuits = 9;
  ox_working w = work_out(&c);
  assert_has(find_row(&w, "Inbound times one after another")->value, "1:00 … 1:00", "many");
  ox_working_clear(&w);
  c.technique.circuits = 1;
  w = work_out(&c);
  assert_false(has_row(&w, "Inbound times one after another"));
  ox_working_clear(&w);
}

/* A circuit cut to leave at a time has nothing to correct. */
static void a_hold_left_at_a_time_asks_for_no_correction(void **state) {
  ox_case c = at_120(310, 18);
  c.hold.ends = OX_HOLD_TO_EFC;
  c.hold.efc_min = 18 * 60 + 25;
  c.arrival.fix_at_s = (18 * 60 + 11) * 60 + 30;
  ox_working w = work_out(&c);
  assert_true(flight.leave_t_s > 0);
  assert_false(has_row(&w, "Next correction"));
  assert_false(has_row(&w, "Inbound times one after another"));
  ox_working_clear(&w);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_preset_is_named_with_its_rule_and_source),
      cmocka_unit_test(a_technique_of_nobody_is_told_by_its_parts),
      cmocka_unit_test(the_next_correction_is_the_time_less_the_error),
      cmocka_unit_test(nothing_is_corrected_where_it_is_as_asked_or_not_timed),
      cmocka_unit_test(the_gate_of_still_air_is_that_of_the_table),
      cmocka_unit_test(the_roll_out_is_what_the_wind_carries_it),
      cmocka_unit_test(the_times_stand_one_after_another),
      cmocka_unit_test(a_hold_left_at_a_time_asks_for_no_correction),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
