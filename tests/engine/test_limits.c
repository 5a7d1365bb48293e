/* Published limits at their exact boundaries: AIM 5-3-8 j2 (TBL 5-3-24) and j4(a), both F. */
#include "ox_test.h"
#include "oxbow/flight.h"
#include "oxbow/limits.h"

static void holding_speeds_change_just_above_6000_and_14000_feet(void **state) {
  static const struct {
    double ft, kias;
  } rows[] = {
      {-1500, 200}, {0, 200},     {5999, 200},  {6000, 200},  {6001, 230},  {10000, 230},
      {13999, 230}, {14000, 230}, {14001, 265}, {18000, 265}, {45000, 265},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    assert_close(ox_us_speed_limit_kias(rows[i].ft), rows[i].kias, 0, "AIM TBL 5-3-24");
}

static void between_whole_feet_the_higher_band_begins_at_once(void **state) {
  assert_close(ox_us_speed_limit_kias(nextafter(6000, 7000)), 230, 0, "above 6 000");
  assert_close(ox_us_speed_limit_kias(nextafter(6000, 5000)), 200, 0, "below 6 000");
  assert_close(ox_us_speed_limit_kias(nextafter(14000, 15000)), 265, 0, "above 14 000");
  assert_close(ox_us_speed_limit_kias(nextafter(14000, 13000)), 230, 0, "below 14 000");
}

static void the_standard_leg_is_a_minute_to_14000_feet_and_ninety_seconds_above(void **state) {
  static const struct {
    double ft, s;
  } rows[] = {{-1500, 60}, {0, 60}, {13999, 60}, {14000, 60}, {14001, 90}, {45000, 90}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    assert_close(ox_standard_leg_s(rows[i].ft), rows[i].s, 0, "AIM 5-3-8 j4(a)");
  assert_close(ox_standard_leg_s(nextafter(14000, 15000)), 90, 0, "just above 14 000");
}

static void a_case_without_a_leg_time_takes_the_standard_one(void **state) {
  ox_setup setup;
  ox_case c = ox_case_default();
  c.hold.leg_s = 0;
  c.hold.altitude_ft = 14000;
  assert_int_not_equal(ox_setup_make(&c, &setup), OX_ERROR);
  assert_close(setup.leg_s, 60, 0, "14 000 ft");
  c.hold.altitude_ft = 14001;
  assert_int_not_equal(ox_setup_make(&c, &setup), OX_ERROR);
  assert_close(setup.leg_s, 90, 0, "14 001 ft");
  c.hold.leg_s = 120;
  assert_int_not_equal(ox_setup_make(&c, &setup), OX_ERROR);
  assert_close(setup.leg_s, 120, 0, "the clearance's own time");
}

static void a_charted_limit_overrides_the_table(void **state) {
  ox_setup setup;
  ox_case c = ox_case_default();
  c.hold.altitude_ft = 6001;
  assert_int_not_equal(ox_setup_make(&c, &setup), OX_ERROR);
  assert_close(setup.speed_limit_kias, 230, 0, "table");
  c.hold.limit_kias = 175; /* AIM 5-3-8 j2: a bracketed figure inside the racetrack */
  assert_int_not_equal(ox_setup_make(&c, &setup), OX_ERROR);
  assert_close(setup.speed_limit_kias, 175, 0, "charted");
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(holding_speeds_change_just_above_6000_and_14000_feet),
      cmocka_unit_test(between_whole_feet_the_higher_band_begins_at_once),
      cmocka_unit_test(the_standard_leg_is_a_minute_to_14000_feet_and_ninety_seconds_above),
      cmocka_unit_test(a_case_without_a_leg_time_takes_the_standard_one),
      cmocka_unit_test(a_charted_limit_overrides_the_table),
  };
  return cmocka_run_group_tests_name("limits", tests, NULL, NULL);
}
