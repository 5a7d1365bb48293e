/* What is said of published holds in German. */
#include "navdata_support.h"
#include "ox_german.h"

static void every_reason_to_leave_a_line_out_is_translated(void **state) {
  for (int i = 0; i < OX_SKIP_COUNT; i++) {
    speak_english();
    const char *english = ox_skip_text((ox_skip)i);
    speak_german();
    assert_german(english, ox_skip_text((ox_skip)i));
  }
  speak_english();
}

static void altitudes_are_translated(void **state) {
  for (int kind = OX_ALTITUDE_NONE + 1; kind <= OX_ALTITUDE_BETWEEN; kind++) {
    ox_published_hold h = {.altitude_kind = (ox_altitude_kind)kind,
                           .altitude_low_ft = 4000,
                           .altitude_high_ft = 6000};
    char english[80], german[80];
    speak_english();
    ox_published_altitude_text(&h, english, sizeof english);
    speak_german();
    ox_published_altitude_text(&h, german, sizeof german);
    speak_english();
    assert_german(english, german);
  }
}

static void the_cases_of_a_file_are_named_and_remarked_in_german(void **state) {
  ox_navdata *data = excerpt_open();
  int remarks = 0;
  for (size_t i = 0; i < ox_navdata_hold_count(data); i++) {
    char english[2 * OX_REMARK_BYTES], german[2 * OX_REMARK_BYTES];
    ox_published_case ours, theirs;
    speak_english();
    ox_navdata_case(data, i, &ours, english, sizeof english);
    speak_german();
    ox_navdata_case(data, i, &theirs, german, sizeof german);
    speak_english();
    assert_string_not_equal(ours.c.name, theirs.c.name);
    assert_same_figures(ours.c.name, theirs.c.name);
    if (!english[0]) continue;
    remarks++;
    assert_german(english, german);
  }
  assert_true(remarks > 0);
  ox_navdata_close(data);
}

static void why_a_file_cannot_be_opened_is_german(void **state) {
  static const char *const paths[] = {"/nowhere/x", "/tmp", "/dev/null", "/dev/null/x"};
  for (size_t i = 0; i < sizeof paths / sizeof *paths; i++) {
    char english[OX_REMARK_BYTES], german[OX_REMARK_BYTES];
    ox_navdata *data;
    speak_english();
    assert_int_equal(ox_navdata_open(paths[i], &data, english, sizeof english), OX_ERROR);
    speak_german();
    assert_int_equal(ox_navdata_open(paths[i], &data, german, sizeof german), OX_ERROR);
    speak_english();
    assert_german(english, german);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_reason_to_leave_a_line_out_is_translated),
      cmocka_unit_test(altitudes_are_translated),
      cmocka_unit_test(the_cases_of_a_file_are_named_and_remarked_in_german),
      cmocka_unit_test(why_a_file_cannot_be_opened_is_german),
  };
  return cmocka_run_group_tests(tests, german_set_up, german_tear_down);
}
