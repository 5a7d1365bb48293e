/* The technique beside the exact hold: the right numbers, the right circuits, and a reason where
 * there is nothing to compare. */
#include "../engine/random_case.h"
#include "oxbow/presets.h"
#include "words_check.h"

static ox_flight flight; /* large */

static size_t preset_index(const char *key) {
  for (size_t i = 0; i < ox_preset_count(); i++)
    if (strcmp(ox_preset_at(i)->key, key) == 0) return i;
  fail_msg("there is no preset %s", key);
  return 0;
}

/* 120 kt on 360, rate one, one-minute legs, flown by a preset. */
static ox_case windy(const char *key, double from_deg, double kt) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 120;
  c.arrival.heading_deg = c.hold.inbound_deg;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, from_deg, kt, OX_NORTH_TRUE};
  assert_true(ox_preset_apply(preset_index(key), &c));
  return c;
}

static ox_comparison compare(const ox_case *c) {
  assert_int_not_equal(ox_flight_solve(c, &flight), OX_ERROR);
  return ox_comparison_make(c, &flight);
}

static const ox_comparison_row *row_of(const ox_comparison *t, int circuit, const char *quantity) {
  for (size_t i = 0; i < t->count; i++)
    if (t->rows[i].circuit == circuit && strcmp(t->rows[i].quantity, quantity) == 0)
      return &t->rows[i];
  fail_msg("there is no %s of circuit %d", quantity, circuit);
  return NULL;
}

/* holding-standards W7, derived: 120 kt, 090/20 on 360, one minute: outbound 152.24, 27.76 left,
 * 66.86 s, circuit 246.9 s. Triple drift is 3 × 9.59 = 28.8 left. */
static void the_exact_column_is_the_closed_form(void **state) {
  ox_case c = windy("p871", 90, 20);
  c.technique.circuits = 4;
  ox_comparison t = compare(&c);
  assert_null(t.none);
  assert_false(t.is_exact);
  const ox_comparison_row *row = row_of(&t, 4, "Outbound heading");
  assert_string_equal(row->exact, "152 (28° L)");
  assert_string_equal(row->flown, "151 (29° L)");
  assert_string_equal(row->difference, "1° to the left");
  assert_has(row->why, "−28.8° − (−27.8°) = −1°", "why");
  row = row_of(&t, 4, "Whole circuit");
  assert_string_equal(row->exact, "4:07");
  row = row_of(&t, 4, "Inbound time");
  assert_string_equal(row->exact, "1:00");
  row = row_of(&t, 4, "Roll-out");
  assert_string_equal(row->exact, "on the course");
  row = row_of(&t, 4, "On the non-holding side");
  assert_string_equal(row->exact, "0.00 NM");
  ox_comparison_clear(&t);
  assert_int_equal(t.count, 0);
}

/* An adjusting technique is worst in its first circuit; one that never learns is as bad in all, and
 * then the last is named. */
static void the_last_and_the_worst_circuit_are_compared(void **state) {
  ox_case c = windy("p871", 360, 15);
  c.technique.circuits = 5;
  ox_comparison t = compare(&c);
  assert_int_equal(t.count, 14);
  for (size_t i = 0; i < 7; i++) {
    assert_string_equal(t.rows[i].which, "Last circuit");
    assert_int_equal(t.rows[i].circuit, 5);
    assert_string_equal(t.rows[7 + i].which, "Worst circuit");
    assert_int_equal(t.rows[7 + i].circuit, 1);
    assert_string_equal(t.rows[i].quantity, t.rows[7 + i].quantity);
  }
  /* [135 × 60 + 120 × 15] / 105 = 94.3 s inbound after a minute outbound */
  assert_string_equal(row_of(&t, 1, "Inbound time")->flown, "1:34");
  assert_string_equal(row_of(&t, 1, "Inbound time")->difference, "34 s longer");
  ox_comparison_clear(&t);
  c.technique.circuits = 1;
  t = compare(&c);
  assert_int_equal(t.count, 7);
  assert_string_equal(t.rows[0].which, "Last and worst circuit");
  ox_comparison_clear(&t);
}

static void the_exact_hold_differs_in_nothing_from_itself(void **state) {
  ox_case c = windy("exact", 60, 25);
  ox_comparison t = compare(&c);
  assert_true(t.is_exact);
  assert_true(t.count >= 7);
  for (size_t i = 0; i < t.count; i++) {
    assert_string_equal(t.rows[i].difference, "none");
    assert_string_equal(t.rows[i].flown, t.rows[i].exact);
  }
  ox_comparison_clear(&t);
}

static void where_there_is_nothing_to_compare_it_says_why(void **state) {
  ox_case c = windy("aim", 360, 60); /* above V/3 = 40 kt */
  ox_comparison t = compare(&c);
  assert_int_equal(t.count, 0);
  assert_has(t.none, "no outbound time makes the circuit close", "no steady hold");
  ox_comparison_clear(&t);
  c = windy("aim", 360, 10);
  c.hold.ends = OX_HOLD_REVERSAL;
  c.arrival.heading_deg = 220;
  t = compare(&c);
  assert_int_equal(t.count, 0);
  assert_string_equal(t.none, "No circuit is flown.");
  ox_comparison_clear(&t);
  ox_comparison_clear(&t); /* empty: allowed */
}

/* The wind changes after eight minutes to one with no exact hold: the circuits are compared as
 * they are, and a lost fix is said. */
static void a_fix_that_is_lost_is_the_worst(void **state) {
  ox_case c = windy("aim", 360, 10);
  c.wind_change_count = 1;
  c.wind_changes[0] = (ox_wind_change){8, 360, 130, OX_NORTH_TRUE};
  c.technique.circuits = 8;
  ox_comparison t = compare(&c);
  assert_null(t.none);
  const ox_circuit *last = &flight.circuits[flight.circuit_count - 1];
  assert_false(last->complete);
  const ox_comparison_row *row = row_of(&t, (int)flight.circuit_count, "Inbound time");
  assert_string_equal(row->which, "Last and worst circuit");
  assert_string_equal(row->flown, "fix not regained");
  ox_comparison_clear(&t);
}

static void the_working_tells_the_terms_of_the_comparison(void **state) {
  ox_case c = windy("uk", 60, 25);
  c.technique.circuits = 1;
  c.aircraft.tas_kt = 250; /* the bank limits at 25 and at 30 degrees */
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  ox_working w = ox_working_make(&c, &flight);
  const ox_working_row *row = find_row(&w, "The exact hold");
  assert_string_equal(row->group, "Against the exact hold");
  assert_string_equal(row->value, "flown beside it");
  assert_has(row->why, "its leg is 1:00 inbound, that asked for here 1:00 outbound", "leg");
  assert_has(row->why, "its bank is 30.0°, here 25.0°", "bank");
  assert_has(find_row(&w, "Last and worst circuit (1): Roll-out")->value, "; exact on the course",
             "row");
  ox_working_clear(&w);
  c = windy("exact", 60, 25);
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  w = ox_working_make(&c, &flight);
  assert_string_equal(find_row(&w, "The exact hold")->value, "it is flown here");
  assert_string_equal(w.rows[w.count - 1].label, "The exact hold");
  ox_working_clear(&w);
  c = windy("aim", 360, 60);
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  w = ox_working_make(&c, &flight);
  assert_string_equal(find_row(&w, "The exact hold")->value, "nothing to compare with");
  ox_working_clear(&w);
}

/* Every random case has rows or a reason, and every text is sound, in any locale. */
static void random_cases_are_compared(void **state) {
  ox_random r = {20240613};
  int tables = 0;
  for (int i = 0, cases = ox_test_cases(1500); i < cases; i++) {
    ox_case c = ox_random_case(&r, i % 2 ? 0.4 : 1.5);
    if (i % 3 == 0) ox_preset_apply((size_t)ox_random_below(&r, 9), &c);
    if (i % 100 == 0) enter_german();
    ox_comparison t = compare(&c);
    if (i % 100 == 0) leave_german();
    if (t.none) {
      assert_sound(t.none, "reason");
      assert_int_equal(t.count, 0);
      continue;
    }
    tables++;
    assert_true(t.count == 7 || t.count == 14);
    for (size_t k = 0; k < t.count; k++) {
      const ox_comparison_row *row = &t.rows[k];
      assert_sound(row->which, "which");
      assert_sound(row->flown, row->quantity);
      assert_sound(row->exact, row->quantity);
      assert_sound(row->difference, row->quantity);
      assert_sound(row->why, row->quantity);
      assert_true(row->circuit >= 1 && (size_t)row->circuit <= flight.circuit_count);
    }
    ox_comparison_clear(&t);
  }
  assert_true(tables > ox_test_least(700));
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_exact_column_is_the_closed_form),
      cmocka_unit_test(the_last_and_the_worst_circuit_are_compared),
      cmocka_unit_test(the_exact_hold_differs_in_nothing_from_itself),
      cmocka_unit_test(where_there_is_nothing_to_compare_it_says_why),
      cmocka_unit_test(a_fix_that_is_lost_is_the_worst),
      cmocka_unit_test(the_working_tells_the_terms_of_the_comparison),
      cmocka_unit_test(random_cases_are_compared),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
