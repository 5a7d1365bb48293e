/* Numbers as people type and read them, in a locale with a decimal point and in one with a decimal
 * comma. Needs no display. */
#include "ox_test.h"

#include <locale.h>

#include <glib.h>

#include "ox_number_text.h"

typedef struct {
  ox_number_form form;
  const char *units, *text;
  ox_parse want;
  double value;
} typed;

/* The traps of desktop number inputs, each of which silently gave another number: a comma that
 * disappears, a unit that makes 0, an empty field that makes 0. */
static const typed typed_rows[] = {
    {OX_FORM_PLAIN, "kt|kts", "12,5", OX_PARSE_OK, 12.5},
    {OX_FORM_PLAIN, "kt|kts", "12.5", OX_PARSE_OK, 12.5},
    {OX_FORM_PLAIN, "kt|kts", "12.5 kt", OX_PARSE_OK, 12.5},
    {OX_FORM_PLAIN, "kt|kts", "12.5KTS", OX_PARSE_OK, 12.5},
    {OX_FORM_PLAIN, "kt|kts", " 12 ", OX_PARSE_OK, 12},
    {OX_FORM_PLAIN, "kt|kts", "1,5", OX_PARSE_OK, 1.5},
    {OX_FORM_PLAIN, "kt|kts", "\u22125", OX_PARSE_OK, -5},
    {OX_FORM_PLAIN, "kt|kts", "+.5", OX_PARSE_OK, 0.5},
    {OX_FORM_PLAIN, "kt|kts", "-0", OX_PARSE_OK, 0},
    {OX_FORM_PLAIN, "kt|kts", "", OX_PARSE_EMPTY, 0},
    {OX_FORM_PLAIN, "kt|kts", "  ", OX_PARSE_EMPTY, 0},
    {OX_FORM_PLAIN, "kt|kts", "abc", OX_PARSE_BAD, 0},
    {OX_FORM_PLAIN, "kt|kts", "nan", OX_PARSE_BAD, 0},
    {OX_FORM_PLAIN, "kt|kts", "inf", OX_PARSE_BAD, 0},
    {OX_FORM_PLAIN, "kt|kts", "1e3", OX_PARSE_BAD, 0},
    {OX_FORM_PLAIN, "kt|kts", "0x10", OX_PARSE_BAD, 0},
    {OX_FORM_PLAIN, "kt|kts", "12.5 nm", OX_PARSE_BAD, 0},
    {OX_FORM_PLAIN, "kt|kts", "12.5x", OX_PARSE_BAD, 0},
    {OX_FORM_PLAIN, "kt|kts", "1.2.3", OX_PARSE_BAD, 0},
    {OX_FORM_PLAIN, "kt|kts", "1,2.3", OX_PARSE_BAD, 0},
    {OX_FORM_PLAIN, "kt|kts", "12 5", OX_PARSE_BAD, 0},
    {OX_FORM_PLAIN, "kt|kts", "-", OX_PARSE_BAD, 0},
    {OX_FORM_PLAIN, "kt|kts", ".", OX_PARSE_BAD, 0},
    {OX_FORM_PLAIN, "kt|kts", "k", OX_PARSE_BAD, 0},
    {OX_FORM_PLAIN, NULL, "5 kt", OX_PARSE_BAD, 0},
    {OX_FORM_PLAIN, "kt|kts", "1234567890123456789012345678901234567890123456789012345",
     OX_PARSE_BAD, 0},
    {OX_FORM_PLAIN, "kt", "12\u00e9", OX_PARSE_BAD, 0},
    {OX_FORM_BEARING, "deg", "007", OX_PARSE_OK, 7},
    {OX_FORM_BEARING, "deg", "240\u00b0", OX_PARSE_OK, 240},
    {OX_FORM_BEARING, "deg", "0", OX_PARSE_OK, 360},
    {OX_FORM_BEARING, "deg", "370", OX_PARSE_OK, 370},
    {OX_FORM_ALTITUDE, "ft", "5,000", OX_PARSE_OK, 5000},
    {OX_FORM_ALTITUDE, "ft", "5.000", OX_PARSE_OK, 5000},
    {OX_FORM_ALTITUDE, "ft", "5 000 ft", OX_PARSE_OK, 5000},
    {OX_FORM_ALTITUDE, "ft", "12,345.5", OX_PARSE_OK, 12345.5},
    {OX_FORM_ALTITUDE, "ft", "500", OX_PARSE_OK, 500},
    {OX_FORM_ALTITUDE, "ft", "FL180", OX_PARSE_OK, 18000},
    {OX_FORM_ALTITUDE, "ft", "fl 85", OX_PARSE_OK, 8500},
    {OX_FORM_ALTITUDE, "ft", "FL", OX_PARSE_BAD, 0},
    {OX_FORM_ALTITUDE, "ft", "5,000,000", OX_PARSE_BAD, 0},
    {OX_FORM_SECONDS, "s", "90", OX_PARSE_OK, 90},
    {OX_FORM_SECONDS, "s", "90 s", OX_PARSE_OK, 90},
    {OX_FORM_SECONDS, "s", "1:30", OX_PARSE_OK, 90},
    {OX_FORM_SECONDS, "s", "1,5 min", OX_PARSE_OK, 90},
    {OX_FORM_SECONDS, "s", "1:75", OX_PARSE_BAD, 0},
    {OX_FORM_SECONDS, "s", "1:3", OX_PARSE_BAD, 0},
    {OX_FORM_VARIATION, "deg", "12 W", OX_PARSE_OK, -12},
    {OX_FORM_VARIATION, "deg", "12,5w", OX_PARSE_OK, -12.5},
    {OX_FORM_VARIATION, "deg", "W 12", OX_PARSE_OK, -12},
    {OX_FORM_VARIATION, "deg", "3\u00b0E", OX_PARSE_OK, 3},
    {OX_FORM_VARIATION, "deg", "-12", OX_PARSE_OK, -12},
    {OX_FORM_VARIATION, "deg", "0 W", OX_PARSE_OK, 0},
    {OX_FORM_VARIATION, "deg", "-12 W", OX_PARSE_BAD, 0},
    {OX_FORM_VARIATION, "deg", "W", OX_PARSE_BAD, 0},
    {OX_FORM_CLOCK, NULL, "18:25", OX_PARSE_OK, 1105},
    {OX_FORM_CLOCK, NULL, "1825Z", OX_PARSE_OK, 1105},
    {OX_FORM_CLOCK, NULL, "1825 UTC", OX_PARSE_OK, 1105},
    {OX_FORM_CLOCK, NULL, "8:05", OX_PARSE_OK, 485},
    {OX_FORM_CLOCK, NULL, "00:00", OX_PARSE_OK, 0},
    {OX_FORM_CLOCK, NULL, "24:00", OX_PARSE_BAD, 0},
    {OX_FORM_CLOCK, NULL, "18:60", OX_PARSE_BAD, 0},
    {OX_FORM_CLOCK, NULL, "825", OX_PARSE_BAD, 0},
    {OX_FORM_CLOCK_S, NULL, "18:25:40", OX_PARSE_OK, 66340},
    {OX_FORM_CLOCK_S, NULL, "182540Z", OX_PARSE_OK, 66340},
    {OX_FORM_CLOCK_S, NULL, "8.05.09 utc", OX_PARSE_OK, 29109},
    {OX_FORM_CLOCK_S, NULL, "18:25", OX_PARSE_OK, 66300},
    {OX_FORM_CLOCK_S, NULL, "1825", OX_PARSE_OK, 66300},
    {OX_FORM_CLOCK_S, NULL, "18", OX_PARSE_BAD, 0},
    {OX_FORM_CLOCK_S, NULL, "18:25:60", OX_PARSE_BAD, 0},
    {OX_FORM_CLOCK_S, NULL, "18:25:4", OX_PARSE_BAD, 0},
    {OX_FORM_CLOCK_S, NULL, "18:25:401", OX_PARSE_BAD, 0},
    {OX_FORM_CLOCK_S, NULL, "18:25:", OX_PARSE_BAD, 0},
    {OX_FORM_CLOCK_S, NULL, "24:00:00", OX_PARSE_BAD, 0},
};

static void check_typed(void) {
  for (size_t i = 0; i < G_N_ELEMENTS(typed_rows); i++) {
    const typed *row = &typed_rows[i];
    double value = -777;
    ox_parse got = ox_number_parse(row->form, row->units, row->text, &value);
    if (got != row->want) print_error("'%s' was taken as %d\n", row->text, got);
    assert_int_equal(got, row->want);
    assert_close(value, row->want == OX_PARSE_OK ? row->value : -777, 1e-9, row->text);
  }
}

static void typing_is_understood_with_a_decimal_point(void **state) {
  setlocale(LC_ALL, "C");
  check_typed();
}

static void typing_is_understood_the_same_with_a_decimal_comma(void **state) {
  assert_non_null(setlocale(LC_ALL, "de_DE.UTF-8"));
  check_typed();
  setlocale(LC_ALL, "C");
}

typedef struct {
  ox_number_form form;
  int decimals;
  double value;
  const char *point, *comma;
} shown;

static const shown shown_rows[] = {
    {OX_FORM_PLAIN, 1, 12.5, "12.5", "12,5"},
    {OX_FORM_PLAIN, 1, 12.34, "12.3", "12,3"},
    {OX_FORM_PLAIN, 2, 12.0, "12", "12"},
    {OX_FORM_PLAIN, 1, -0.01, "0", "0"},
    {OX_FORM_PLAIN, 0, 100, "100", "100"},
    {OX_FORM_BEARING, 1, 7, "007", "007"},
    {OX_FORM_BEARING, 1, 0, "360", "360"},
    {OX_FORM_BEARING, 1, 360, "360", "360"},
    {OX_FORM_BEARING, 1, 359.99, "360", "360"},
    {OX_FORM_BEARING, 1, 7.25, "007.2", "007,2"},
    {OX_FORM_BEARING, 1, 45.5, "045.5", "045,5"},
    {OX_FORM_VARIATION, 1, -12, "12 W", "12 W"},
    {OX_FORM_VARIATION, 1, 3.5, "3.5 E", "3,5 E"},
    {OX_FORM_VARIATION, 1, 0, "0", "0"},
    {OX_FORM_CLOCK, 0, 1105, "18:25", "18:25"},
    {OX_FORM_CLOCK, 0, 0, "00:00", "00:00"},
    {OX_FORM_CLOCK_S, 0, 66340, "18:25:40", "18:25:40"},
    {OX_FORM_PLAIN, 1, (double)NAN, "", ""},
    {OX_FORM_PLAIN, 1, 1e300, "", ""},
};

static void numbers_are_shown_in_the_locale_and_north_is_360(void **state) {
  char text[OX_NUMBER_TEXT_BYTES];
  for (size_t i = 0; i < G_N_ELEMENTS(shown_rows); i++) {
    const shown *row = &shown_rows[i];
    setlocale(LC_ALL, "C");
    ox_number_format(text, row->form, row->decimals, row->value);
    assert_string_equal(text, row->point);
    assert_non_null(setlocale(LC_ALL, "de_DE.UTF-8"));
    ox_number_format(text, row->form, row->decimals, row->value);
    assert_string_equal(text, row->comma);
  }
  setlocale(LC_ALL, "C");
}

static void what_is_shown_is_read_back_in_either_locale(void **state) {
  static const char *const locales[] = {"C", "de_DE.UTF-8"};
  static const ox_number_form forms[] = {OX_FORM_PLAIN,   OX_FORM_BEARING,   OX_FORM_ALTITUDE,
                                         OX_FORM_SECONDS, OX_FORM_VARIATION, OX_FORM_CLOCK};
  ox_random random = {20};
  char text[OX_NUMBER_TEXT_BYTES];
  for (size_t l = 0; l < G_N_ELEMENTS(locales); l++) {
    assert_non_null(setlocale(LC_ALL, locales[l]));
    for (size_t f = 0; f < G_N_ELEMENTS(forms); f++)
      for (int i = 0; i < 300; i++) {
        double tenths = ox_random_below(&random, 3600) + 1, got = -1;
        double value = forms[f] == OX_FORM_CLOCK ? floor(tenths / 10) : tenths / 10;
        /* "1.234" is a thousand feet, so altitudes have no three decimals: one here. */
        ox_number_format(text, forms[f], 1, value);
        assert_int_equal(ox_number_parse(forms[f], NULL, text, &got), OX_PARSE_OK);
        assert_close(got, value, 1e-9, text);
      }
  }
  setlocale(LC_ALL, "C");
}

typedef struct {
  ox_number_form form;
  double value, step, want;
} stepped;

static const stepped step_rows[] = {
    {OX_FORM_BEARING, 359, 1, 360},  {OX_FORM_BEARING, 360, 1, 1},
    {OX_FORM_BEARING, 1, -1, 360},   {OX_FORM_BEARING, 360, -1, 359},
    {OX_FORM_BEARING, 355, 10, 5},   {OX_FORM_BEARING, 5, -10, 355},
    {OX_FORM_BEARING, 359.5, 1, 0.5}, {OX_FORM_BEARING, 0, 1, 1},
    {OX_FORM_CLOCK, 1439, 1, 0},     {OX_FORM_CLOCK, 0, -1, 1439},
    {OX_FORM_CLOCK_S, 86399, 1, 0},  {OX_FORM_CLOCK_S, 5, -10, 86395},
    {OX_FORM_PLAIN, 100, 1, 101},    {OX_FORM_PLAIN, 400, 1, 400},
    {OX_FORM_PLAIN, 30, -10, 30},    {OX_FORM_VARIATION, 180, 1, 180},
};

static void bearings_go_round_and_the_rest_stops_at_its_limits(void **state) {
  for (size_t i = 0; i < G_N_ELEMENTS(step_rows); i++) {
    const stepped *row = &step_rows[i];
    double min = row->form == OX_FORM_VARIATION ? -180 : 30;
    double max = row->form == OX_FORM_VARIATION ? 180 : 400;
    assert_close(ox_number_step(row->form, row->value, row->step, min, max), row->want, 1e-12,
                 "step");
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(typing_is_understood_with_a_decimal_point),
      cmocka_unit_test(typing_is_understood_the_same_with_a_decimal_comma),
      cmocka_unit_test(numbers_are_shown_in_the_locale_and_north_is_360),
      cmocka_unit_test(what_is_shown_is_read_back_in_either_locale),
      cmocka_unit_test(bearings_go_round_and_the_rest_stops_at_its_limits),
  };
  return cmocka_run_group_tests_name("number_text", tests, NULL, NULL);
}
