/* Time, fuel and the failed radio in words. The decisions and sums themselves are tested with
 * their sources in tests/engine/test_endurance.c. */
#include "words_check.h"

#include "../engine/random_case.h"

static ox_flight flight, scratch;

static ox_case timed(void) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 120;
  c.arrival.fix_at_s = 12 * 3600;
  c.hold.efc_min = 12 * 60 + 16;
  return c;
}

static const char *efc_words(const ox_case *c) {
  static char text[OX_WHEN_BYTES];
  ox_efc_plan plan;
  assert_int_not_equal(ox_efc_plan_make(c, &scratch, &plan), OX_ERROR);
  ox_words_efc(text, sizeof text, c, &plan);
  assert_sound(text, "efc");
  return text;
}

static const char *fuel_words(const ox_case *c) {
  static char text[OX_WHEN_BYTES];
  assert_int_not_equal(ox_flight_solve(c, &flight), OX_ERROR);
  ox_words_endurance(text, sizeof text, c, &flight);
  assert_sound(text, "fuel");
  return text;
}

/* Holding-standards 14.1 W1 (C): circuits of four minutes in still air. */
static void the_circuits_to_the_efc_are_said(void **state) {
  ox_case c = timed();
  const char *text = efc_words(&c);
  assert_has(text, "12:16 UTC, 16:00 after the first crossing", "when");
  assert_has(text, "4 circuits are flown; the last one takes 4:00, with 1:00 outbound", "how");
  c.hold.efc_min = 12 * 60 + 4;
  assert_has(efc_words(&c), "1 circuit is flown", "one");
  c.hold.efc_min = 12 * 60 + 1;
  assert_has(efc_words(&c), "the nearest crossings are 0:00 and 2:00 after the first", "missed");
  c.hold.efc_min = 11 * 60 + 30;
  assert_has(efc_words(&c), "30:00 before the fix is reached: ask for a new one", "past");
  c.arrival.fix_at_s = -1;
  assert_has(efc_words(&c), "When the fix is crossed first is not given", "no clock");
  c.hold.efc_min = -1;
  assert_has(efc_words(&c), "ask for one", "none");
}

static void local_time_stands_apart_from_utc(void **state) {
  ox_case c = timed();
  c.hold.efc_min = 12 * 60 + 16;
  c.clock.utc_offset_min = -13 * 60 + 60; /* the day before */
  assert_has(efc_words(&c), "12:16 UTC (00:16 local)", "local");
  c.clock.utc_offset_min = 840;
  assert_has(efc_words(&c), "12:16 UTC (02:16 local)", "the day after");
}

/* By hand (C): 60 less 15 less 30 is 15, at 60 an hour a quarter of an hour: passages at 0, 4, 8
 * and 12 minutes are in time, the EFC a minute later is not. */
static void what_the_fuel_allows_is_said(void **state) {
  ox_case c = timed();
  c.technique.circuits = 6;
  c.fuel.on_board = 60;
  c.fuel.flow_h = 60;
  c.fuel.alternate = 15;
  c.fuel.reserve_min = 30;
  c.fuel.unit = OX_FUEL_USGAL;
  const char *text = fuel_words(&c);
  assert_has(text, "60 US gal on reaching the fix, 45 US gal for alternate and reserve", "sum");
  assert_has(text, "15:00 to hold with. Leave the fix by 12:15:00 UTC", "leave by");
  assert_has(text, "number 4 at 12:12:00 UTC", "the last passage");
  assert_has(text, "It does not last until the EFC, by 1:00", "against the EFC");
  c.hold.efc_min = 12 * 60 + 5;
  assert_has(fuel_words(&c), "At the EFC 10:00 of holding is in hand", "in hand");
  c.fuel.on_board = 40;
  assert_has(fuel_words(&c), "5 US gal is missing already. Leave at once", "short");
  assert_null(strstr(fuel_words(&c), "reserve entered"));
  assert_null(ox_words_no_reserve(&c));
  c.fuel.on_board = 0;
  assert_has(fuel_words(&c), "not given", "unknown");
}

/* 200 at 60 an hour with nothing kept is 3:20 h, when the tanks are dry: a time that is never told
 * without saying so. 14 CFR 91.167(a)(3) asks for 45 minutes. */
static void a_reserve_that_was_not_entered_is_said_to_be_missing(void **state) {
  static const char caution[] = "No reserve entered: nothing is kept to the last.";
  ox_case c = timed();
  c.fuel.on_board = 200;
  c.fuel.flow_h = 60;
  assert_has(fuel_words(&c), "Leave the fix by 15:20:00 UTC", "leave by");
  assert_has(fuel_words(&c), caution, "words");
  assert_string_equal(ox_words_no_reserve(&c), caution);
  c.fuel.alternate = 300;
  assert_has(fuel_words(&c), caution, "words of too little");
  c.fuel.reserve_min = 45;
  assert_null(ox_words_no_reserve(&c));
  c.fuel = (ox_case){0}.fuel;
  assert_null(ox_words_no_reserve(&c));
}

static void an_endless_endurance_is_said_without_figures_of_nonsense(void **state) {
  ox_case c = timed();
  c.fuel.on_board = 999999;
  c.fuel.flow_h = 0.1;
  assert_has(fuel_words(&c), "more than 99 hours", "long");
}

/* 14 CFR 91.185(c)(3), the decision tests of holding-standards section 5. */
static void the_rule_without_radio_is_cited_with_its_paragraph(void **state) {
  static const struct {
    ox_limit_kind limit;
    int efc_min, eta_min;
    const char *says, *cites;
  } rows[] = {
      {OX_LIMIT_STARTS_APPROACH, 930, 912, "as close as possible to the EFC, 15:30 UTC", "(3)(i))"},
      {OX_LIMIT_STARTS_APPROACH, -1, 912,
       "as close as possible to the ETA, 15:12 UTC, for no EFC was given", "(3)(i))"},
      {OX_LIMIT_EN_ROUTE, 930, 945, "leave it at the EFC, 15:30 UTC", "(3)(ii))"},
      {OX_LIMIT_EN_ROUTE, -1, 945, "leave it on arriving over it", "(3)(ii))"},
      {OX_LIMIT_EN_ROUTE, -1, 945, "begin it as close as possible to the ETA, 15:45 UTC", "ii"},
      {OX_LIMIT_UNKNOWN, 930, -1, "that is not given", "91.185(c)(3)"},
      {OX_LIMIT_STARTS_APPROACH, -1, -1, "which is not given here", "(3)(i))"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    char text[OX_WHEN_BYTES];
    ox_case c = ox_case_default();
    c.lost_radio.limit_starts_approach = rows[i].limit;
    c.hold.efc_min = rows[i].efc_min;
    c.lost_radio.eta_min = rows[i].eta_min;
    c.arrival.fix_at_s = 905 * 60;
    ox_words_lost_radio(text, sizeof text, &c);
    assert_sound(text, "without radio");
    assert_has(text, rows[i].says, "what");
    assert_has(text, rows[i].cites, "source");
    assert_has(text, "for another State read those in its aeronautical", "other States");
  }
}

static void the_working_has_its_rows_only_where_something_is_given(void **state) {
  ox_case c = ox_case_default();
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  ox_working w = ox_working_make(&c, &flight);
  (void)find_row(&w, "Begin to slow down");
  for (size_t i = 0; i < w.count; i++) assert_string_not_equal(w.rows[i].label, "Leave the fix by");
  ox_working_clear(&w);
  c = timed();
  c.fuel.on_board = 60;
  c.fuel.flow_h = 60;
  c.lost_radio.limit_starts_approach = OX_LIMIT_EN_ROUTE;
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  w = ox_working_make(&c, &flight);
  assert_has(find_row(&w, "Leave the fix by")->value, "13:00:00 UTC", "an hour");
  assert_has(find_row(&w, "Over the fix")->value, "12:00:00, 12:04:00, 12:08:00", "passages");
  assert_has(find_row(&w, "Circuits to the EFC")->value, "4, the last one 1:00 outbound", "plan");
  assert_has(find_row(&w, "Without radio")->value, "leave the fix at the EFC", "radio");
  ox_working_clear(&w);
}

/* Doc 8168 Vol II, Diagram App C-15 (F): 220 KIAS, 14 000 ft, 30 NM: 35 NM. */
static void the_limiting_distance_of_the_document_stands_in_the_working(void **state) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 220;
  c.hold.altitude_ft = 14000;
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = 5;
  c.hold.station.given = true;
  c.hold.station.radial_deg = 360; /* flown towards it */
  c.hold.station.nm = 29.912;
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  ox_working w = ox_working_make(&c, &flight);
  assert_string_equal(find_row(&w, "Limiting distance")->value, "35 DME");
  ox_working_clear(&w);
  c.hold.station.radial_deg = 180; /* away from it: another rule */
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  w = ox_working_make(&c, &flight);
  for (size_t i = 0; i < w.count; i++)
    assert_string_not_equal(w.rows[i].label, "Limiting distance");
  ox_working_clear(&w);
}

static void random_cases_are_said_whole_in_every_locale(void **state) {
  ox_random r = {77};
  for (int i = 0, cases = ox_test_cases(600); i < cases; i++) {
    ox_case c = ox_random_case(&r, 0.5);
    c.arrival.fix_at_s = ox_random_below(&r, 3) ? ox_random_below(&r, 86400) : -1;
    c.hold.efc_min = ox_random_below(&r, 3) ? ox_random_below(&r, 1440) : -1;
    c.lost_radio.eta_min = ox_random_below(&r, 2) ? ox_random_below(&r, 1440) : -1;
    c.lost_radio.limit_starts_approach = (ox_limit_kind)ox_random_below(&r, 3);
    c.clock.utc_offset_min = ox_random_below(&r, 1500) - 700;
    c.fuel.on_board = ox_random_below(&r, 2) ? ox_random_between(&r, 0.1, 9999) : 0;
    c.fuel.flow_h = ox_random_below(&r, 2) ? ox_random_between(&r, 0.1, 999) : 0;
    c.fuel.alternate_min = ox_random_between(&r, 1, 600);
    assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
    if (i % 2) enter_german();
    char *all = ox_words_when(&c, &flight);
    if (i % 2) leave_german();
    assert_non_null(all);
    for (char *line = strtok(all, "\n"); line; line = strtok(NULL, "\n")) {
      assert_sound(line, "a line");
      assert_true(strlen(line) < OX_WHEN_BYTES - 8); /* nothing was cut */
    }
    free(all);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_circuits_to_the_efc_are_said),
      cmocka_unit_test(local_time_stands_apart_from_utc),
      cmocka_unit_test(what_the_fuel_allows_is_said),
      cmocka_unit_test(a_reserve_that_was_not_entered_is_said_to_be_missing),
      cmocka_unit_test(an_endless_endurance_is_said_without_figures_of_nonsense),
      cmocka_unit_test(the_rule_without_radio_is_cited_with_its_paragraph),
      cmocka_unit_test(the_working_has_its_rows_only_where_something_is_given),
      cmocka_unit_test(the_limiting_distance_of_the_document_stands_in_the_working),
      cmocka_unit_test(random_cases_are_said_whole_in_every_locale),
  };
  return cmocka_run_group_tests_name("when", tests, NULL, NULL);
}
