/* Cases side by side in a table. */
#include "ox_test.h"

#include "oxbow/differences.h"
#include "oxbow/fields.h"
#include "oxbow/variants.h"

static ox_flight flights[OX_DIFFERENCES_MAX];
static ox_case cases[OX_DIFFERENCES_MAX];

static ox_differences table_of(size_t columns) {
  const ox_case *c[OX_DIFFERENCES_MAX];
  const ox_flight *f[OX_DIFFERENCES_MAX];
  for (size_t i = 0; i < columns; i++) {
    assert_int_not_equal(ox_flight_solve(&cases[i], &flights[i]), OX_ERROR);
    c[i] = &cases[i];
    f[i] = &flights[i];
  }
  ox_differences d = ox_differences_make(c, f, columns);
  assert_int_equal(d.columns, columns);
  assert_true(d.count > 0);
  return d;
}

static const ox_difference_row *row_of(const ox_differences *d, const char *label) {
  for (size_t i = 0; i < d->count; i++)
    if (strcmp(d->rows[i].label, label) == 0) return &d->rows[i];
  return NULL;
}

static void assert_row(const ox_differences *d, const char *label, const char *a, const char *b) {
  const ox_difference_row *row = row_of(d, label);
  if (!row) fail_msg("no row %s", label);
  assert_string_equal(row->value[0], a);
  assert_string_equal(row->value[1], b);
  assert_int_equal(row->differs, strcmp(a, b) != 0);
}

/* 120 kt TAS, rate one, one-minute inbound leg, 20 kt across from the holding side (right): the
 * figures of the exact hold against still air. Inbound correction asin(20/120) = 9.6° (wind
 * triangle); in calm air every leg and turn lasts 60 s, 4 minutes round (AIM 5-3-8 j3, j8(b)). */
static void wind_against_calm(void **state) {
  (void)state;
  cases[0] = ox_case_default();
  cases[0].hold.inbound_deg = 360;
  cases[0].arrival.heading_deg = 360;
  cases[0].aircraft.tas_kt = 120;
  cases[0].aircraft.ias_kt = 0;
  cases[0].wind_count = 1;
  cases[0].wind[0] = (ox_wind_row){.from_deg = 90, .kt = 20};
  assert_int_not_equal(ox_flight_solve(&cases[0], &flights[0]), OX_ERROR);
  assert_true(ox_variant_make(OX_VARIANT_CALM, &cases[0], &flights[0], &cases[1]));
  ox_differences d = table_of(2);
  assert_row(&d, "Wind", "090 true at 20 kt", "calm");
  assert_row(&d, "True airspeed", "120 kt", "120 kt");
  assert_row(&d, "Inbound heading", "010 (9.6° R)", "360 (no correction)");
  assert_row(&d, "Exact outbound leg", row_of(&d, "Exact outbound leg")->value[0], "180 for 1:00");
  assert_row(&d, "Last circuit in all", row_of(&d, "Last circuit in all")->value[0], "4:00");
  assert_true(row_of(&d, "Exact outbound leg")->differs);
  assert_null(row_of(&d, "Turns")); /* the same, so not in the table */
  ox_differences_clear(&d);
}

/* The same case twice differs in nothing. */
static void the_same_case_differs_in_nothing(void **state) {
  (void)state;
  cases[0] = cases[1] = cases[2] = ox_case_default();
  ox_differences d = table_of(3);
  for (size_t i = 0; i < d.count; i++) {
    assert_false(d.rows[i].given);
    assert_false(d.rows[i].differs);
    assert_string_equal(d.rows[i].value[0], d.rows[i].value[2]);
  }
  ox_differences_clear(&d);
}

static void every_field_has_a_label_and_a_row(void **state) {
  (void)state;
  size_t count;
  const ox_field *fields = ox_fields(&count);
  for (size_t i = 0; i < count; i++) {
    const char *label = ox_differences_label(fields[i].key);
    if (!label) fail_msg("%s has no label", fields[i].key);
    cases[0] = cases[1] = ox_case_default();
    cases[0].hold.station.given = cases[1].hold.station.given = true;
    double value = ox_field_get(&fields[i], &cases[0]);
    double half = fields[i].kind == OX_FIELD_NUMBER ? 0.5 * (fields[i].min + fields[i].max)
                                                   : fields[i].max;
    ox_field_set(&fields[i], &cases[1], value == half ? fields[i].min : half);
    /* The table is about texts: it does not need the second case to be flown. */
    const ox_case *c[] = {&cases[0], &cases[1]};
    const ox_flight *f[] = {&flights[0], &flights[0]};
    ox_differences d = ox_differences_make(c, f, 2);
    const ox_difference_row *row = row_of(&d, label);
    if (!row) fail_msg("%s has no row", fields[i].key);
    assert_true(row->given && row->differs);
    ox_differences_clear(&d);
  }
  assert_null(ox_differences_label("hold.colour"));
}

/* A station's figures without a station are no difference. */
static void what_is_not_used_is_no_difference(void **state) {
  (void)state;
  cases[0] = cases[1] = ox_case_default();
  cases[1].hold.station.nm = 12;
  ox_differences d = table_of(2);
  assert_null(row_of(&d, "Station distance"));
  ox_differences_clear(&d);
}

static void winds_by_height_and_time_are_told(void **state) {
  (void)state;
  cases[0] = cases[1] = ox_case_default();
  cases[1].wind_count = 2;
  cases[1].wind[0] = (ox_wind_row){3000, 270, 10, OX_NORTH_TRUE};
  cases[1].wind[1] = (ox_wind_row){9000, 300, 25.5, OX_NORTH_MAGNETIC};
  cases[1].wind_change_count = 1;
  cases[1].wind_changes[0] = (ox_wind_change){4.5, 200, 15, OX_NORTH_TRUE};
  ox_differences d = table_of(2);
  assert_row(&d, "Wind", "calm",
             "3000 ft 270 true at 10 kt; 9000 ft 300 magnetic at 25.5 kt; from minute 4.5 "
             "200 true at 15 kt");
  ox_differences_clear(&d);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(wind_against_calm),
      cmocka_unit_test(the_same_case_differs_in_nothing),
      cmocka_unit_test(every_field_has_a_label_and_a_row),
      cmocka_unit_test(what_is_not_used_is_no_difference),
      cmocka_unit_test(winds_by_height_and_time_are_told),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
