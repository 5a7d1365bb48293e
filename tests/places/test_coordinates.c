/* Latitude and longitude as charts, flight plans and data files write them. Values are worked out
 * by hand: 42 deg 44 min 50.20 s = 42 + 44/60 + 50.20/3600 = 42.747277777… */
#include "ox_test.h"

#include <locale.h>

#include "oxbow/place.h"

#define LAT (42.0 + 44.0 / 60 + 50.20 / 3600)
#define LON (-(73.0 + 48.0 / 60 + 11.47 / 3600))

typedef struct {
  const char *text;
  double lat_deg, lon_deg;
} row;

static const row forms[] = {
    /* decimal degrees: signs */
    {"42.7472777778, -73.8031861111", 42.7472777778, -73.8031861111},
    {"42.7472777778 -73.8031861111", 42.7472777778, -73.8031861111},
    {"42.7472777778;-73.8031861111", 42.7472777778, -73.8031861111},
    {"+42.5-073.25", 42.5, -73.25},
    {"-33.5 151.25", -33.5, 151.25},
    {"-33.5,\t-151.25", -33.5, -151.25},
    {"\xe2\x88\x92" "33.5 / +151.25", -33.5, 151.25},
    {"42.5\xc2\xb0 -73.25\xc2\xb0", 42.5, -73.25},
    {"0 0", 0, 0},
    {"-0 -0", 0, 0},
    {"90 180", 90, 180},
    {"-90 -180", -90, -180},
    /* decimal degrees: letters after, before, either order, small */
    {"42.5N 73.25W", 42.5, -73.25},
    {"42.5N073.25W", 42.5, -73.25},
    {"N42.5 W73.25", 42.5, -73.25},
    {"N 42.5, W 73.25", 42.5, -73.25},
    {"s42.5e73.25", -42.5, 73.25},
    {"73.25W 42.5N", 42.5, -73.25},
    {"W73.25 / N42.5", 42.5, -73.25},
    {"42.5\xc2\xb0N, 73.25\xc2\xb0W", 42.5, -73.25},
    {"5.5S 7E", -5.5, 7},
    /* degrees and minutes */
    {"42 44.837N 073 48.191W", 42 + 44.837 / 60, -(73 + 48.191 / 60)},
    {"N42 44.837 W073 48.191", 42 + 44.837 / 60, -(73 + 48.191 / 60)},
    {"N42\xc2\xb0" "44.837' W073\xc2\xb0" "48.191'", 42 + 44.837 / 60, -(73 + 48.191 / 60)},
    {"42\xc2\xb0 44.837\xe2\x80\xb2 N 73\xc2\xb0 48.191\xe2\x80\xb2 W", 42 + 44.837 / 60,
     -(73 + 48.191 / 60)},
    {"42-44.837N 073-48.191W", 42 + 44.837 / 60, -(73 + 48.191 / 60)},
    {"42:44.837, -73:48.191", 42 + 44.837 / 60, -(73 + 48.191 / 60)},
    {"42 44.837 -73 48.191", 42 + 44.837 / 60, -(73 + 48.191 / 60)},
    {"42 30 73 15", 42.5, 73.25},
    {"-42 30 73 15", -42.5, 73.25},
    {"4244.837N07348.191W", 42 + 44.837 / 60, -(73 + 48.191 / 60)},
    /* degrees, minutes and seconds */
    {"42 44 50.20N 073 48 11.47W", LAT, LON},
    {"42-44-50.20N 073-48-11.47W", LAT, LON},
    {"42-44-50.20N / 073-48-11.47W", LAT, LON},
    {"42:44:50.20N 073:48:11.47W", LAT, LON},
    {"42\xc2\xb0" "44'50.20\"N 73\xc2\xb0" "48'11.47\"W", LAT, LON},
    {"42\xc2\xb0" "44'50.20''N 73\xc2\xb0" "48'11.47''W", LAT, LON},
    {"N42\xc2\xba" "44\xe2\x80\x99" "50.20\xe2\x80\x9d, W073\xcb\x9a" "48\xe2\x80\xb2"
     "11.47\xe2\x80\xb3", LAT, LON},
    {"42 44 50.20 -73 48 11.47", LAT, LON},
    {"42 44 50.20, -73 48 11.47", LAT, LON},
    {"424450.20N0734811.47W", LAT, LON},
    {"N424450.20 W0734811.47", LAT, LON},
    /* flight plan: ICAO Doc 4444, appendix 2, item 15: 46N078W, 4620N07805W */
    {"46N078W", 46, -78},
    {"4620N07805W", 46 + 20.0 / 60, -(78 + 5.0 / 60)},
    {"462030N0780515W", 46 + 20.0 / 60 + 30.0 / 3600, -(78 + 5.0 / 60 + 15.0 / 3600)},
    {"00N000E", 0, 0},
    {"90S180W", -90, -180},
    /* ARINC 424, 5.36 and 5.37 */
    {"N42445020W073481147", LAT, LON},
    {"N42445020 W073481147", LAT, LON},
    {"S00000001E180000000", -0.01 / 3600, 180},
};

static void every_form_is_read(void **state) {
  (void)state;
  for (size_t i = 0; i < sizeof forms / sizeof *forms; i++) {
    ox_latlon p = {99, 999};
    char why[OX_REMARK_BYTES] = "";
    if (ox_latlon_parse(forms[i].text, &p, why, sizeof why) != OX_OK) {
      print_error("%s: %s\n", forms[i].text, why);
      fail();
    }
    assert_close(p.lat_deg, forms[i].lat_deg, 1e-13, forms[i].text);
    assert_close(p.lon_deg, forms[i].lon_deg, 1e-13, forms[i].text);
    assert_false(signbit(p.lat_deg) && p.lat_deg == 0);
    assert_string_equal(why, "");
  }
}

/* What is refused, and a word that the sentence must hold. */
static const struct {
  const char *text, *says;
} refused[] = {
    {"", "needed"},
    {"   ", "needed"},
    {"42.5", "needed"},
    {"42.5N", "letter"},
    {"N42.5", "letter"},
    {"42.5N 73.25N", "One letter"},
    {"42.5E 73.25W", "One letter"},
    {"42.5N 73.25W 5", "both"},
    {"N42.5 73.25W", "both"},
    {"N42.5N W73.25", "letter"},
    {"-42.5N 73.25W", "sign"},
    {"42.5N -73.25W", "sign"},
    {"90.0001 0", "at most 90"},
    {"91N 000E", "at most 90"},
    {"90 00 00.1N 0 0 0E", "at most 90"},
    {"0 180.0001", "at most 180"},
    {"00N181W", "at most 180"},
    {"42 60N 73 0W", "below 60"},
    {"42 59 60N 73 0 0W", "below 60"},
    {"4260N07300W", "below 60"},
    {"N42445060W073486047", "below 60"},
    {"42.5 30N 73 15W", "Only the last"},
    {"42 30.5 10N 73 15 10W", "Only the last"},
    {"42 30 10 5N 73 15 10W", "more than degrees"},
    {"442N 073W", "packed latitude"},
    {"44N 0737W", "packed longitude"},
    {"42445N0734811W", "packed latitude"},
    {"N42445020.5W073481147", "packed latitude"},
    {"4244.5 -7348.5", "at most two"},
    {"42' 30N 73 15W", "mark"},
    {"42\"N 73W", "mark"},
    {"\xc2\xb0" "42N 73W", "mark"},
    {"42 44 73", "needed"},
    {"42,7473 -73,8032", "comma"},
    {"42.5,,73.25", "comma"},
    {"42.5N,,73.25W", "comma"},
    {"42.5--73.25", "sign"},
    {"42--30N 73W", "sign"},
    {"42-N 73W", "missing"},
    {"N W", "both"},
    {"N, W42", "missing"},
    {"42.5X 73.25W", "'X'"},
    {"42.N 73W", "'.'"},
    {".5N 73W", "'.'"},
    {"1e5 0", "letter"},
    {"nan nan", "'a'"},
    {"0x10 5", "'x'"},
    {"\xff\xfe", "A character"},
    {"42\x01", "A character"},
    {"1234567890123456789N 0E", "more than 18"},
    {"1 2 3 4 5 6 7 8 9 1 2 3 4 5 6 7 8 9 1 2 3 4 5 6 7 8 9 1 2 3 4 5 6 7", "too many"},
};

static void what_is_no_place_is_refused_with_a_reason(void **state) {
  (void)state;
  for (size_t i = 0; i < sizeof refused / sizeof *refused; i++) {
    ox_latlon p = {12, 34};
    char why[OX_REMARK_BYTES] = "";
    ox_status status = ox_latlon_parse(refused[i].text, &p, why, sizeof why);
    if (status != OX_ERROR || !strstr(why, refused[i].says)) {
      print_error("\"%s\": status %d, \"%s\" without \"%s\"\n", refused[i].text, (int)status, why,
                  refused[i].says);
      fail();
    }
    assert_true(p.lat_deg == 12 && p.lon_deg == 34);
    assert_int_equal(ox_latlon_parse(refused[i].text, &p, NULL, 0), OX_ERROR);
  }
}

static void a_very_long_text_is_refused(void **state) {
  (void)state;
  char text[1000], why[OX_REMARK_BYTES];
  memset(text, ' ', sizeof text - 1);
  text[sizeof text - 1] = '\0';
  ox_latlon p;
  assert_int_equal(ox_latlon_parse(text, &p, why, sizeof why), OX_ERROR);
  assert_non_null(strstr(why, "longer than 200"));
}

static const struct {
  double lat_deg, lon_deg;
  ox_coordinates_form form;
  const char *text;
} printed[] = {
    {LAT, LON, OX_FORM_DECIMAL, "42.747278, -73.803186"},
    {LAT, LON, OX_FORM_DECIMAL_LETTERS, "42.747278N 073.803186W"},
    {LAT, LON, OX_FORM_DEG_MIN, "N42\xc2\xb0" "44.837' W073\xc2\xb0" "48.191'"},
    {LAT, LON, OX_FORM_DEG_MIN_SEC, "N42\xc2\xb0" "44'50.20\" W073\xc2\xb0" "48'11.47\""},
    {LAT, LON, OX_FORM_HYPHENS, "42-44-50.20N 073-48-11.47W"},
    {LAT, LON, OX_FORM_PACKED_DEG, "43N074W"},
    {LAT, LON, OX_FORM_PACKED_DEG_MIN, "4245N07348W"},
    {LAT, LON, OX_FORM_PACKED_SEC, "424450N0734811W"},
    {LAT, LON, OX_FORM_ARINC, "N42445020W073481147"},
    /* rounding carries into minutes and degrees, never to 60 */
    {41.99999999, -72.99999999, OX_FORM_DEG_MIN, "N42\xc2\xb0" "00.000' W073\xc2\xb0" "00.000'"},
    {41.99999999, 9.9999999999, OX_FORM_ARINC, "N42000000E010000000"},
    {59.9999, 179.99999, OX_FORM_PACKED_DEG_MIN, "6000N18000E"},
    {-0.0000001, -0.0000001, OX_FORM_DECIMAL, "0.000000, 0.000000"},
    {-90, -180, OX_FORM_PACKED_SEC, "900000S1800000W"},
    {0, 0, OX_FORM_DECIMAL_LETTERS, "00.000000N 000.000000E"},
};

static void each_form_is_printed(void **state) {
  (void)state;
  for (size_t i = 0; i < sizeof printed / sizeof *printed; i++) {
    char text[OX_COORDINATES_BYTES];
    ox_latlon p = {printed[i].lat_deg, printed[i].lon_deg};
    assert_int_equal(ox_latlon_print(p, printed[i].form, text, sizeof text), OX_OK);
    assert_string_equal(text, printed[i].text);
  }
}

static void a_place_out_of_range_is_not_printed(void **state) {
  (void)state;
  static const ox_latlon bad[] = {{90.1, 0}, {0, -180.1},
                                  {(double)NAN, 0}, {0, (double)NAN},
                                  {(double)INFINITY, 0}};
  char text[OX_COORDINATES_BYTES] = "as before";
  for (size_t i = 0; i < sizeof bad / sizeof *bad; i++)
    assert_int_equal(ox_latlon_print(bad[i], OX_FORM_ARINC, text, sizeof text), OX_ERROR);
  assert_int_equal(ox_latlon_print((ox_latlon){0, 0}, OX_FORM_COUNT, text, sizeof text), OX_ERROR);
  assert_int_equal(ox_latlon_print((ox_latlon){0, 0}, OX_FORM_ARINC, text, 19), OX_ERROR);
  assert_string_equal(text, "as before");
  assert_int_equal(ox_latlon_print((ox_latlon){0, 0}, OX_FORM_ARINC, text, 20), OX_OK);
}

/* Half of the last figure of each form, in degrees. */
static const double half_unit_deg[OX_FORM_COUNT] = {
    0.5e-6, 0.5e-6, 0.5e-3 / 60, 0.5e-2 / 3600, 0.5e-2 / 3600, 0.5, 0.5 / 60, 0.5 / 3600,
    0.5e-2 / 3600};

static void what_is_printed_is_read_back(void **state) {
  (void)state;
  ox_random random = {2024};
  for (int i = 0; i < 20000; i++) {
    ox_latlon p = {ox_random_between(&random, -90, 90), ox_random_between(&random, -180, 180)};
    for (int form = 0; form < OX_FORM_COUNT; form++) {
      char text[OX_COORDINATES_BYTES], again[OX_COORDINATES_BYTES];
      ox_latlon q;
      assert_int_equal(ox_latlon_print(p, (ox_coordinates_form)form, text, sizeof text), OX_OK);
      if (ox_latlon_parse(text, &q, NULL, 0) != OX_OK) fail_msg("%s was refused", text);
      assert_close(q.lat_deg, p.lat_deg, half_unit_deg[form] * (1 + 1e-6), text);
      assert_close(q.lon_deg, p.lon_deg, half_unit_deg[form] * (1 + 1e-6), text);
      assert_int_equal(ox_latlon_print(q, (ox_coordinates_form)form, again, sizeof again), OX_OK);
      assert_string_equal(again, text);
    }
  }
}

static void any_bytes_are_read_or_refused(void **state) {
  (void)state;
  static const char parts[] = "0123456789.NSEWnsew+-:,;/' \"\xc2\xb0\xe2\x80\xb2x\x01";
  ox_random random = {7};
  size_t read = 0;
  for (int i = 0; i < 200000; i++) {
    char text[40];
    int length = ox_random_below(&random, (int)sizeof text);
    for (int k = 0; k < length; k++)
      text[k] = parts[ox_random_below(&random, (int)sizeof parts - 1)];
    text[length] = '\0';
    ox_latlon p;
    if (ox_latlon_parse(text, &p, NULL, 0) != OX_OK) continue;
    read++;
    assert_true(ox_latlon_valid(p));
  }
  assert_true(read > 100);
}

static void a_decimal_comma_locale_changes_nothing(void **state) {
  (void)state;
  if (!setlocale(LC_ALL, "de_DE.UTF-8")) fail_msg("the locale de_DE.UTF-8 is needed");
  assert_string_equal(localeconv()->decimal_point, ",");
  every_form_is_read(state);
  each_form_is_printed(state);
  setlocale(LC_ALL, "C");
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_form_is_read),
      cmocka_unit_test(what_is_no_place_is_refused_with_a_reason),
      cmocka_unit_test(a_very_long_text_is_refused),
      cmocka_unit_test(each_form_is_printed),
      cmocka_unit_test(a_place_out_of_range_is_not_printed),
      cmocka_unit_test(what_is_printed_is_read_back),
      cmocka_unit_test(any_bytes_are_read_or_refused),
      cmocka_unit_test(a_decimal_comma_locale_changes_nothing),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
