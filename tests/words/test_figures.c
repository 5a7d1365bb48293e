/* Figures as people read them. Bearings: AIM 4-2-10 (three figures, north is 360). Eighths:
 * AIM 5-3-8 i, eight points, each 22.5 degrees either side of its middle. */
#include "words_check.h"

static void bearings_have_three_figures_and_north_is_360(void **state) {
  static const struct {
    double deg;
    const char *shown;
  } rows[] = {
      {0, "360"},      {360, "360"},  {359.6, "360"}, {0.4, "360"},  {0.6, "001"},
      {7, "007"},      {89.5, "090"}, {90, "090"},    {-10, "350"},  {725, "005"},
      {359.49, "359"}, {-0.0, "360"}, {100, "100"},   {-0.3, "360"}, {180, "180"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    char got[4];
    ox_words_bearing(got, rows[i].deg);
    assert_string_equal(got, rows[i].shown);
  }
}

static void a_bearing_that_is_no_number_is_dashes(void **state) {
  char got[4];
  ox_words_bearing(got, (double)NAN);
  assert_string_equal(got, "---");
  ox_words_bearing(got, (double)INFINITY);
  assert_string_equal(got, "---");
}

static void corrections_have_a_side(void **state) {
  static const struct {
    double deg;
    int decimals;
    const char *shown;
  } rows[] = {
      {0, 0, "0°"},         {8, 0, "8° R"},       {-8, 0, "8° L"},  {24, 0, "24° R"},
      {-27.76, 0, "28° L"}, {-8.44, 1, "8.4° L"}, {8.0, 1, "8° R"}, {9.94, 1, "9.9° R"},
      {9.96, 1, "10° R"},   {27.76, 1, "28° R"},  {0.04, 1, "0°"},  {-0.04, 1, "0°"},
      {-0.4, 0, "0°"},      {0.06, 1, "0.1° R"},  {-0.0, 0, "0°"},  {-60, 1, "60° L"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    char got[16];
    ox_words_correction(got, sizeof got, rows[i].deg, rows[i].decimals);
    assert_string_equal(got, rows[i].shown);
  }
}

static void times_are_minutes_and_seconds(void **state) {
  static const struct {
    double s;
    const char *shown;
  } rows[] = {
      {60, "1:00"},   {26, "0:26"},   {-45, "-0:45"}, {59.6, "1:00"},    {59.4, "0:59"},
      {0, "0:00"},    {-0.4, "0:00"}, {90, "1:30"},   {3599.6, "60:00"}, {7200, "120:00"},
      {-60, "-1:00"}, {0.5, "0:01"},  {-0.0, "0:00"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    char got[24];
    ox_words_min_s(got, sizeof got, rows[i].s);
    assert_string_equal(got, rows[i].shown);
  }
}

static void eighths_reach_22_5_degrees_either_side(void **state) {
  static const struct {
    double deg;
    const char *word;
  } rows[] = {
      {0, "north"},        {360, "north"},        {22.4, "north"},     {22.6, "north-east"},
      {45, "north-east"},  {67.4, "north-east"},  {67.6, "east"},      {90, "east"},
      {135, "south-east"}, {180, "south"},        {225, "south-west"}, {270, "west"},
      {315, "north-west"}, {337.4, "north-west"}, {337.6, "north"},    {-45, "north-west"},
      {720, "north"},      {359.99, "north"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    assert_string_equal(ox_words_eighth(rows[i].deg), rows[i].word);
}

static void turns_have_words(void **state) {
  assert_string_equal(ox_words_turns(OX_TURNS_RIGHT), "right");
  assert_string_equal(ox_words_turns(OX_TURNS_LEFT), "left");
}

static void figures_that_are_no_numbers_do_no_harm(void **state) {
  char got[24];
  ox_words_correction(got, sizeof got, (double)NAN, 1);
  assert_string_equal(got, "unknown");
  ox_words_min_s(got, sizeof got, (double)-INFINITY);
  assert_string_equal(got, "unknown");
  assert_string_equal(ox_words_eighth((double)NAN), "unknown");
}

static void figures_do_not_follow_the_locale(void **state) {
  char got[16];
  enter_german();
  ox_words_correction(got, sizeof got, -8.44, 1);
  leave_german();
  assert_string_equal(got, "8.4° L");
}

static void the_caution_is_whole_and_its_line_is_short(void **state) {
  const char *line = ox_words_caution_line(), *whole = ox_words_caution();
  static const char *const parts[] = {"For instruction only, not for navigation.",
                                      "harts",
                                      "clearances",
                                      "operator",
                                      "regulations",
                                      "licensed instructor"};
  for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
    assert_has(line, parts[i], "caution line");
    assert_has(whole, parts[i], "caution");
  }
  assert_true(strlen(line) <= 130);
  assert_null(strchr(line, '\n'));
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(bearings_have_three_figures_and_north_is_360),
      cmocka_unit_test(a_bearing_that_is_no_number_is_dashes),
      cmocka_unit_test(corrections_have_a_side),
      cmocka_unit_test(times_are_minutes_and_seconds),
      cmocka_unit_test(eighths_reach_22_5_degrees_either_side),
      cmocka_unit_test(turns_have_words),
      cmocka_unit_test(figures_that_are_no_numbers_do_no_harm),
      cmocka_unit_test(figures_do_not_follow_the_locale),
      cmocka_unit_test(the_caution_is_whole_and_its_line_is_short),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
