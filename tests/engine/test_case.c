/* The case and the table of its fields: every field just inside and just outside its range, with
 * NaN and infinities, and what the checker says of each. */
#include <float.h>
#include <limits.h>
#include <locale.h>

#include "ox_test.h"
#include "oxbow/fields.h"
#include "oxbow/flight.h"

static ox_flight flight, before;

/* A number written into a field as the raw double or int, with no conversion that could refuse. */
static void put_raw(const ox_field *f, void *base, double number, int whole) {
  char *at = (char *)base + f->offset;
  if (f->kind == OX_FIELD_NUMBER) memcpy(at, &number, sizeof number);
  else memcpy(at, &whole, sizeof whole);
}

/* A valid case in which every field counts: two wind rows, distance given too. */
static ox_case full_case(void) {
  ox_case c = ox_case_default();
  c.hold.leg_nm = 5;
  c.wind_count = 2;
  c.wind[0] = (ox_wind_row){.altitude_ft = 1000, .from_deg = 200, .kt = 10};
  c.wind[1] = (ox_wind_row){.altitude_ft = 9000, .from_deg = 220, .kt = 25};
  return c;
}

static void assert_accepted(const ox_case *c, const char *key) {
  ox_fault fault = {{0}, {0}, NULL};
  if (ox_case_check(c, &fault, 1) == 0) return;
  print_error("%s: %s refused: not %s\n", key, fault.value, fault.allowed);
  fail();
}

/* Exactly this field is at fault, and the engine refuses the case and leaves its outputs alone. */
static void assert_refused(const ox_case *c, const char *key, const char *allowed) {
  ox_fault faults[4];
  ox_case kept = *c;
  memset(faults, 0, sizeof faults);
  size_t count = ox_case_check(c, faults, 4);
  if (count == 0) print_error("%s: not refused\n", key);
  assert_int_equal(count, 1);
  assert_string_equal(faults[0].key, key);
  assert_string_equal(faults[0].allowed, allowed);
  assert_true(strlen(faults[0].value) > 0);
  assert_memory_equal(&kept, c, sizeof kept);
  memset(&flight, 0xa5, sizeof flight);
  assert_int_equal(ox_flight_solve(c, &flight), OX_ERROR);
  assert_memory_equal(&flight, &before, sizeof flight);
  ox_setup setup, setup_before;
  memset(&setup, 0xa5, sizeof setup);
  memset(&setup_before, 0xa5, sizeof setup);
  assert_int_equal(ox_setup_make(c, &setup), OX_ERROR);
  assert_memory_equal(&setup, &setup_before, sizeof setup);
}

static int prepare(void **state) {
  memset(&before, 0xa5, sizeof before);
  return 0;
}

static void the_default_case_is_valid_and_calm(void **state) {
  ox_case c = ox_case_default();
  assert_accepted(&c, "default");
  assert_int_equal(c.wind_count, 0);
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  assert_true(flight.circuit_count == (size_t)c.technique.circuits);
}

static void field_keys_are_unique_and_found(void **state) {
  size_t count;
  const ox_field *fields = ox_fields(&count);
  assert_true(count > 20);
  for (size_t i = 0; i < count; i++) {
    assert_ptr_equal(ox_field_by_key(fields[i].key), &fields[i]);
    assert_true(fields[i].min < fields[i].max && strlen(fields[i].allowed) > 0);
    assert_true(fields[i].offset < sizeof(ox_case));
    for (size_t j = 0; j < i; j++) assert_string_not_equal(fields[i].key, fields[j].key);
  }
  assert_null(ox_field_by_key("hold"));
  assert_null(ox_field_by_key(""));
  assert_null(ox_field_by_key("hold.inbound_degrees"));
}

static void choices_count_from_zero_to_max(void **state) {
  size_t count;
  const ox_field *fields = ox_fields(&count);
  for (size_t i = 0; i < count; i++) {
    if (fields[i].kind != OX_FIELD_CHOICE) continue;
    int words = 0;
    while (fields[i].choices[words]) {
      assert_non_null(strstr(fields[i].allowed, fields[i].choices[words]));
      words++;
    }
    assert_true(fields[i].min == 0 && fields[i].max == words - 1);
  }
}

static void setting_a_field_and_getting_it_gives_it_back(void **state) {
  size_t count;
  const ox_field *fields = ox_fields(&count);
  for (size_t i = 0; i < count; i++) {
    ox_case c = full_case();
    for (int step = 0; step <= 4; step++) {
      double value = fields[i].min + (fields[i].max - fields[i].min) * step / 4;
      if (fields[i].kind != OX_FIELD_NUMBER) value = floor(value);
      ox_field_set(&fields[i], &c, value);
      assert_close(ox_field_get(&fields[i], &c), value, 0, fields[i].key);
    }
  }
}

/* Inside: both ends, the middle, and zero where zero means absent. */
static void check_inside(const ox_field *f, ox_case *c, void *base, const char *key) {
  const double inside[] = {f->min, f->max, floor(0.5 * (f->min + f->max)) + 0.0};
  for (size_t i = 0; i < sizeof inside / sizeof *inside; i++) {
    assert_true(ox_field_accepts(f, inside[i]));
    put_raw(f, base, inside[i], (int)inside[i]);
    assert_accepted(c, key);
  }
  if (f->zero_is_absent) {
    assert_true(ox_field_accepts(f, 0));
    assert_true(ox_field_accepts(f, -0.0));
  }
}

static void check_outside(const ox_field *f, ox_case *c, void *base, const char *key) {
  const double outside[] = {nextafter(f->min, -HUGE_VAL), nextafter(f->max, HUGE_VAL),
                            f->min - 1, f->max + 1, (double)NAN, HUGE_VAL, -HUGE_VAL, 1e300, -1e300,
                            -DBL_MAX};
  const int whole[] = {(int)f->min - 1, (int)f->max + 1, INT_MAX, INT_MIN};
  bool number = f->kind == OX_FIELD_NUMBER;
  size_t count = number ? sizeof outside / sizeof *outside : sizeof whole / sizeof *whole;
  for (size_t i = 0; i < count; i++) {
    double value = number ? outside[i] : whole[i];
    if (f->zero_is_absent && value == 0) continue;
    assert_false(ox_field_accepts(f, value));
    put_raw(f, base, value, number ? 0 : whole[i]);
    assert_refused(c, key, f->allowed);
  }
}

static void every_field_is_accepted_to_its_ends_and_refused_beyond(void **state) {
  size_t count;
  const ox_field *fields = ox_fields(&count);
  for (size_t i = 0; i < count; i++) {
    ox_case c = full_case();
    check_inside(&fields[i], &c, &c, fields[i].key);
    check_outside(&fields[i], &c, &c, fields[i].key);
  }
}

static void every_field_of_a_wind_row_is_accepted_to_its_ends_and_refused_beyond(void **state) {
  size_t count;
  const ox_field *fields = ox_wind_fields(&count);
  assert_int_equal(count, 4);
  for (size_t i = 0; i < count; i++) {
    char key[48];
    ox_case c = full_case();
    c.wind_count = 1;
    /* As in a lesson file: one wind is an object, several are a list. */
    snprintf(key, sizeof key, "wind.%s", fields[i].key);
    check_inside(&fields[i], &c, &c.wind[0], key);
    /* The altitude of a single row is ignored, so it is tested where it counts: in two. */
    if (strcmp(fields[i].key, "altitude_ft") == 0) continue;
    check_outside(&fields[i], &c, &c.wind[0], key);
  }
  ox_case c = full_case();
  c.wind[1].altitude_ft = 60001;
  assert_refused(&c, "wind[1].altitude_ft", fields[0].allowed);
  c = full_case();
  c.wind[1].kt = (double)NAN;
  assert_refused(&c, "wind[1].kt", fields[2].allowed);
}

static void whole_fields_refuse_fractions(void **state) {
  const ox_field *circuits = ox_field_by_key("technique.circuits");
  assert_non_null(circuits);
  assert_true(ox_field_accepts(circuits, 3));
  assert_false(ox_field_accepts(circuits, 2.5));
  assert_false(ox_field_accepts(ox_field_by_key("hold.turns"), 0.5));
}

static void a_speed_and_a_leg_length_must_be_given(void **state) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 0;
  assert_true(ox_case_check(&c, NULL, 0) > 0);
  assert_int_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  c.aircraft.tas_kt = 120;
  assert_accepted(&c, "TAS alone");
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = 0;
  assert_true(ox_case_check(&c, NULL, 0) > 0);
  assert_int_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  c.hold.leg_nm = 4;
  assert_accepted(&c, "leg by distance");
}

static void wind_rows_are_counted_and_ascend(void **state) {
  static const int counts[] = {-1, INT_MIN, OX_WIND_ROWS_MAX + 1, INT_MAX};
  ox_case c = full_case();
  for (size_t i = 0; i < 4; i++) {
    c.wind_count = counts[i];
    assert_true(ox_case_check(&c, NULL, 0) > 0);
    assert_int_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  }
  c = full_case();
  c.wind[1].altitude_ft = 500;
  assert_true(ox_case_check(&c, NULL, 0) > 0);
  c.wind_count = OX_WIND_ROWS_MAX;
  for (int i = 0; i < OX_WIND_ROWS_MAX; i++)
    c.wind[i] = (ox_wind_row){.altitude_ft = 1000 * i, .from_deg = 30 * i, .kt = 10};
  assert_accepted(&c, "twelve rows");
}

static void the_expected_further_clearance_is_a_minute_of_the_day(void **state) {
  ox_case c = ox_case_default();
  static const int good[] = {-1, 0, 1439}, bad[] = {-2, 1440, INT_MAX, INT_MIN};
  for (size_t i = 0; i < 3; i++) {
    c.hold.efc_min = good[i];
    assert_accepted(&c, "hold.efc");
  }
  for (size_t i = 0; i < 4; i++) {
    c.hold.efc_min = bad[i];
    assert_int_equal(ox_case_check(&c, NULL, 0), 1);
  }
}

static void all_faults_are_counted_and_the_first_are_told(void **state) {
  ox_case c = full_case();
  ox_fault faults[8];
  c.hold.inbound_deg = 400;
  c.aircraft.rate_deg_s = (double)NAN;
  c.technique.circuits = 41;
  c.wind[1].kt = -1;
  assert_int_equal(ox_case_check(&c, NULL, 0), 4);
  memset(faults, 0x5a, sizeof faults);
  assert_int_equal(ox_case_check(&c, faults, 2), 4);
  assert_string_equal(faults[0].key, "hold.inbound_deg");
  assert_string_equal(faults[0].value, "400");
  assert_string_equal(faults[0].allowed, "a course (0 to 360)");
  assert_int_equal(faults[2].key[0], 0x5a); /* no more than asked for */
  assert_int_equal(ox_case_check(&c, faults, 8), 4);
  assert_string_equal(faults[1].key, "aircraft.rate_deg_s");
}

static void faults_are_written_with_a_point_in_any_locale(void **state) {
  ox_case c = ox_case_default();
  ox_fault fault;
  c.hold.inbound_deg = 400.5;
  const char *comma = setlocale(LC_NUMERIC, "de_DE.UTF-8"); /* made by tests/run.sh */
  size_t count = ox_case_check(&c, &fault, 1);
  setlocale(LC_NUMERIC, "C");
  assert_non_null(comma);
  assert_int_equal(count, 1);
  assert_string_equal(fault.value, "400.5");
}

static void cases_are_equal_field_by_field(void **state) {
  size_t count;
  const ox_field *fields = ox_fields(&count);
  ox_case a = full_case(), b = full_case();
  assert_true(ox_case_equal(&a, &b));
  memset(b.name + strlen(b.name) + 1, 'x', sizeof b.name - strlen(b.name) - 1);
  assert_true(ox_case_equal(&a, &b)); /* the tail of a string does not count */
  for (size_t i = 0; i < count; i++) {
    b = a;
    double old = ox_field_get(&fields[i], &b);
    ox_field_set(&fields[i], &b, old == fields[i].max ? fields[i].min : fields[i].max);
    if (ox_case_equal(&a, &b)) print_error("%s does not count\n", fields[i].key);
    assert_false(ox_case_equal(&a, &b));
  }
  b = a, b.wind_count = 1;
  assert_false(ox_case_equal(&a, &b));
  b = a, b.wind[1].kt += 1;
  assert_false(ox_case_equal(&a, &b));
  b = a, b.hold.efc_min = 600;
  assert_false(ox_case_equal(&a, &b));
  b = a, strcpy(b.name, "Another");
  assert_false(ox_case_equal(&a, &b));
  b = a, strcpy(b.hold.fix, "LARCH");
  assert_false(ox_case_equal(&a, &b));
}

static void names_without_an_end_do_no_harm(void **state) {
  ox_case c = ox_case_default(), same;
  memset(c.name, 'x', sizeof c.name);
  memset(c.hold.fix, 'y', sizeof c.hold.fix);
  same = c;
  ox_fault fault;
  size_t faults = ox_case_check(&c, &fault, 1);
  assert_int_equal(ox_flight_solve(&c, &flight) == OX_ERROR, faults > 0);
  assert_true(ox_case_equal(&c, &same));
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_default_case_is_valid_and_calm),
      cmocka_unit_test(field_keys_are_unique_and_found),
      cmocka_unit_test(choices_count_from_zero_to_max),
      cmocka_unit_test(setting_a_field_and_getting_it_gives_it_back),
      cmocka_unit_test(every_field_is_accepted_to_its_ends_and_refused_beyond),
      cmocka_unit_test(every_field_of_a_wind_row_is_accepted_to_its_ends_and_refused_beyond),
      cmocka_unit_test(whole_fields_refuse_fractions),
      cmocka_unit_test(a_speed_and_a_leg_length_must_be_given),
      cmocka_unit_test(wind_rows_are_counted_and_ascend),
      cmocka_unit_test(the_expected_further_clearance_is_a_minute_of_the_day),
      cmocka_unit_test(all_faults_are_counted_and_the_first_are_told),
      cmocka_unit_test(faults_are_written_with_a_point_in_any_locale),
      cmocka_unit_test(cases_are_equal_field_by_field),
      cmocka_unit_test(names_without_an_end_do_no_harm),
  };
  return cmocka_run_group_tests_name("case", tests, prepare, NULL);
}
