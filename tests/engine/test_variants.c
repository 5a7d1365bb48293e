/* Variants of a case: one thing changed, everything else as it was. */
#include "ox_test.h"

#include "oxbow/fields.h"
#include "oxbow/variants.h"
#include "random_case.h"

static ox_flight flight, other;

static ox_case windy(void) {
  ox_case c = ox_case_default();
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){.from_deg = 310, .kt = 30};
  c.variation_deg = -12;
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  return c;
}

static ox_case made(ox_variant variant, const ox_case *c) {
  ox_case v;
  assert_true(ox_variant_make(variant, c, &flight, &v));
  return v;
}

static void each_changes_what_it_says(void **state) {
  (void)state;
  ox_case c = windy();
  assert_close(made(OX_VARIANT_CALM, &c).wind[0].kt, 0, 0, "calm");
  assert_close(made(OX_VARIANT_WIND_DOUBLED, &c).wind[0].kt, 60, 0, "doubled");
  assert_close(made(OX_VARIANT_WIND_TURNED, &c).wind[0].from_deg, 130, 0, "turned");
  assert_int_equal(made(OX_VARIANT_OTHER_TURNS, &c).hold.turns, OX_TURNS_LEFT);
  assert_int_equal(made(OX_VARIANT_DRIFT_TRIPLE, &c).technique.drift, OX_DRIFT_TRIPLE);
  c.wind[0].kt = 200;
  assert_close(made(OX_VARIANT_WIND_DOUBLED, &c).wind[0].kt, 250, 0, "at most the table's");
}

static void what_changes_nothing_is_no_variant(void **state) {
  (void)state;
  ox_case c = windy(), v;
  c.technique.drift = OX_DRIFT_SINGLE;
  assert_false(ox_variant_make(OX_VARIANT_DRIFT_SINGLE, &c, &flight, &v));
  c.wind[0].kt = 0;
  assert_false(ox_variant_make(OX_VARIANT_CALM, &c, &flight, &v));
  assert_false(ox_variant_make(OX_VARIANT_WIND_DOUBLED, &c, &flight, &v));
  assert_false(ox_variant_make(OX_VARIANT_WIND_TURNED, &c, &flight, &v));
  c.technique.sector = OX_SECTOR_TRACK;
  assert_false(ox_variant_make(OX_VARIANT_BOUNDARY_LEFT, &c, &flight, &v));
  c.technique.sector = OX_SECTOR_HEADING;
  c.technique.entry = OX_CHOOSE_PARALLEL;
  assert_false(ox_variant_make(OX_VARIANT_BOUNDARY_RIGHT, &c, &flight, &v));
}

/* Two degrees either side of a boundary the entries by heading are two different ones, and each
 * names the other as well (AIM 5-3-8 j8(d): within 5 degrees either is accepted). */
static void either_side_of_a_boundary_another_entry(void **state) {
  (void)state;
  ox_random random = {41};
  int pairs = 0;
  for (int i = 0, cases = ox_test_cases_from(100, 2000); i < cases; i++) {
    ox_case c = ox_random_case(&random, 0.5), left, right;
    if (ox_flight_solve(&c, &flight) == OX_ERROR) continue;
    if (!ox_variant_make(OX_VARIANT_BOUNDARY_LEFT, &c, &flight, &left) ||
        !ox_variant_make(OX_VARIANT_BOUNDARY_RIGHT, &c, &flight, &right))
      continue;
    assert_int_not_equal(ox_flight_solve(&left, &other), OX_ERROR);
    ox_entry_choice a = other.by_heading;
    assert_int_not_equal(ox_flight_solve(&right, &other), OX_ERROR);
    ox_entry_choice b = other.by_heading;
    assert_close(a.boundary_deg, -2, 1e-9, "left");
    assert_close(b.boundary_deg, 2, 1e-9, "right");
    assert_int_not_equal(a.kind, b.kind);
    assert_int_equal(a.also, (int)b.kind);
    assert_int_equal(b.also, (int)a.kind);
    pairs++;
  }
  assert_true(pairs > ox_test_least(100));
}

static void every_variant_of_any_case_is_sound_and_is_another(void **state) {
  (void)state;
  ox_random random = {42};
  int count = 0;
  for (int i = 0, cases = ox_test_cases_from(100, 2000); i < cases; i++) {
    ox_case c = ox_random_case(&random, 0.5), v;
    if (ox_flight_solve(&c, &flight) == OX_ERROR) continue;
    for (int k = 0; k < OX_VARIANT_COUNT; k++) {
      if (!ox_variant_make((ox_variant)k, &c, &flight, &v)) continue;
      assert_int_equal(ox_case_check(&v, NULL, 0), 0);
      assert_false(ox_case_equal(&v, &c));
      assert_int_not_equal(ox_flight_solve(&v, &other), OX_ERROR);
      count++;
    }
  }
  assert_true(count > ox_test_least(5000));
}

static void names_and_keys_are_all_different(void **state) {
  (void)state;
  for (int i = 0; i < OX_VARIANT_COUNT; i++)
    for (int j = 0; j < i; j++) {
      assert_string_not_equal(ox_variant_name((ox_variant)i), ox_variant_name((ox_variant)j));
      assert_string_not_equal(ox_variant_key((ox_variant)i), ox_variant_key((ox_variant)j));
    }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(each_changes_what_it_says),
      cmocka_unit_test(what_changes_nothing_is_no_variant),
      cmocka_unit_test(either_side_of_a_boundary_another_entry),
      cmocka_unit_test(every_variant_of_any_case_is_sound_and_is_another),
      cmocka_unit_test(names_and_keys_are_all_different),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
