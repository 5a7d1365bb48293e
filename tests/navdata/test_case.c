/* Cases out of published holds. */
#include "navdata_support.h"

#include "oxbow/flight.h"

static ox_published_case case_of(const ox_navdata *data, size_t index, ox_status want,
                                 char remark[OX_REMARK_BYTES]) {
  ox_published_case c;
  ox_status status = ox_navdata_case(data, index, &c, remark, OX_REMARK_BYTES);
  if (status != want) fail_msg("hold %zu: status %d, \"%s\"", index, (int)status, remark);
  assert_int_equal(ox_case_check(&c.c, NULL, 0), 0);
  return c;
}

static void a_hold_with_everything_becomes_a_case_without_a_remark(void **state) {
  (void)state;
  ox_navdata *data = excerpt_open();
  char remark[OX_REMARK_BYTES];
  ox_published_case p = case_of(data, 0, OX_OK, remark);
  assert_string_equal(remark, "");
  assert_string_equal(p.c.name, "1B1 R03, hold at JAPUT");
  assert_string_equal(p.c.hold.fix, "JAPUT");
  assert_close(p.c.hold.inbound_deg, 204.6, 1e-12, "course");
  assert_close(p.c.arrival.heading_deg, 204.6, 1e-12, "arrival along the course");
  assert_int_equal(p.c.hold.leg_by, OX_LEG_BY_DISTANCE);
  assert_close(p.c.hold.leg_nm, 4, 1e-12, "leg");
  assert_close(p.c.hold.altitude_ft, 3200, 0, "altitude");
  assert_int_equal(p.c.hold.ends, OX_HOLD_CIRCUITS);
  assert_true(p.placed);
  assert_close(p.at.lat_deg, 42 + 28 / 60.0 + 21.26 / 3600, 1e-12, "latitude");
  assert_int_equal(p.variation, OX_VARIATION_OF_FIX);
  assert_close(p.c.variation_deg, -13.3, 1e-12, "variation of the waypoint");
  ox_navdata_close(data);
}

static void a_navaid_gives_its_declination(void **state) {
  (void)state;
  ox_navdata *data = excerpt_open();
  char remark[OX_REMARK_BYTES];
  ox_published_case p = case_of(data, 3, OX_OK, remark); /* COL */
  assert_int_equal(p.variation, OX_VARIATION_OF_STATION);
  assert_close(p.c.variation_deg, -11, 1e-12, "declination");
  assert_int_equal(p.c.hold.leg_by, OX_LEG_BY_TIME);
  assert_close(p.c.hold.leg_s, 60, 1e-12, "leg");
  ox_navdata_close(data);
}

static void a_fix_that_is_missing_is_said_and_stays_at_the_origin(void **state) {
  (void)state;
  ox_navdata *data = excerpt_open();
  char remark[OX_REMARK_BYTES];
  /* CAM of KALB: the airport has a variation. */
  ox_published_case p = case_of(data, 7, OX_ADVISORY, remark);
  assert_false(p.placed);
  assert_int_equal(p.variation, OX_VARIATION_OF_AIRPORT);
  assert_close(p.c.variation_deg, -13, 1e-12, "airport");
  assert_non_null(strstr(remark, "CAM (section D, region K6, airport KALB) is not in the file."));
  /* STENY of 3N6: no airport record either. */
  p = case_of(data, 2, OX_ADVISORY, remark);
  assert_false(p.placed);
  assert_int_equal(p.variation, OX_VARIATION_UNKNOWN);
  assert_close(p.c.variation_deg, 0, 0, "none");
  assert_non_null(strstr(remark, "enter it"));
  ox_navdata_close(data);
}

static void hf_ends_with_the_reversal(void **state) {
  (void)state;
  ox_navdata *data = excerpt_open();
  char remark[OX_REMARK_BYTES];
  assert_int_equal(case_of(data, 1, OX_OK, remark).c.hold.ends, OX_HOLD_REVERSAL);
  assert_string_equal(case_of(data, 1, OX_OK, remark).c.name, "1B1 R21 JAPUT, hold at JAPUT");
  ox_navdata_close(data);
}

/* The hold of line 13 with a change, and the point and airport it needs. */
static ox_published_case changed(int column, const char *text, ox_status want,
                                 char remark[OX_REMARK_BYTES]) {
  char bytes[2 * RECORD_BYTES], record[RECORD_BYTES];
  copy_line(record, 11);
  memcpy(bytes, record, 133);
  copy_line(record, 13);
  put_at(record, column, text);
  memcpy(bytes + 133, record, 133);
  ox_navdata *data = open_bytes(bytes, 2 * 133);
  ox_published_case p = case_of(data, 0, want, remark);
  ox_navdata_close(data);
  return p;
}

static void a_true_course_is_made_magnetic(void **state) {
  (void)state;
  char remark[OX_REMARK_BYTES];
  /* magnetic = true - variation: 191 - (-13.3) */
  ox_published_case p = changed(71, "191T", OX_OK, remark);
  assert_close(p.c.hold.inbound_deg, 204.3, 1e-12, "course");
}

static void ha_climbs_to_its_altitude(void **state) {
  (void)state;
  char remark[OX_REMARK_BYTES];
  ox_published_case p = changed(48, "HA", OX_ADVISORY, remark);
  assert_int_equal(p.c.hold.ends, OX_HOLD_TO_ALTITUDE);
  assert_close(p.c.hold.climb_to_ft, 3200, 0, "to");
  assert_close(p.c.hold.altitude_ft, 2200, 0, "from");
  assert_non_null(strstr(remark, "Where the climb begins"));
}

static void what_a_case_does_not_take_keeps_its_default_and_is_said(void **state) {
  (void)state;
  char remark[OX_REMARK_BYTES];
  ox_case plain = ox_case_default();
  /* A leg of 0.1 NM, one of 99.9 minutes, FL900, a limit of 999 kt. */
  ox_published_case p = changed(75, "0001", OX_ADVISORY, remark);
  assert_int_equal(p.c.hold.leg_by, OX_LEG_BY_TIME);
  assert_close(p.c.hold.leg_s, 0, 0, "standard");
  assert_non_null(strstr(remark, "standard time"));
  p = changed(75, "T999", OX_ADVISORY, remark);
  assert_close(p.c.hold.leg_s, 0, 0, "standard");
  p = changed(85, "FL900", OX_ADVISORY, remark);
  assert_close(p.c.hold.altitude_ft, plain.hold.altitude_ft, 0, "default");
  assert_non_null(strstr(remark, "altitude"));
  p = changed(100, "999", OX_ADVISORY, remark);
  assert_close(p.c.hold.limit_kias, 0, 0, "none");
  p = changed(100, "200", OX_OK, remark);
  assert_close(p.c.hold.limit_kias, 200, 0, "200");
}

static void every_published_hold_can_be_flown(void **state) {
  (void)state;
  ox_navdata *data = excerpt_open();
  ox_flight *flight = calloc(1, sizeof *flight);
  assert_non_null(flight);
  for (size_t i = 0; i < ox_navdata_hold_count(data); i++) {
    ox_published_case p;
    assert_int_not_equal(ox_navdata_case(data, i, &p, NULL, 0), OX_ERROR);
    assert_int_not_equal(ox_flight_solve(&p.c, flight), OX_ERROR);
    assert_true(flight->leg_count > 0);
  }
  free(flight);
  ox_navdata_close(data);
}

static void a_number_beyond_the_last_makes_no_case(void **state) {
  (void)state;
  ox_navdata *data = excerpt_open();
  ox_published_case p = {.placed = true};
  char why[OX_REMARK_BYTES];
  assert_int_equal(ox_navdata_case(data, 12, &p, why, sizeof why), OX_ERROR);
  assert_true(p.placed && strlen(why) > 10);
  ox_navdata_close(data);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_hold_with_everything_becomes_a_case_without_a_remark),
      cmocka_unit_test(a_navaid_gives_its_declination),
      cmocka_unit_test(a_fix_that_is_missing_is_said_and_stays_at_the_origin),
      cmocka_unit_test(hf_ends_with_the_reversal),
      cmocka_unit_test(a_true_course_is_made_magnetic),
      cmocka_unit_test(ha_climbs_to_its_altitude),
      cmocka_unit_test(what_a_case_does_not_take_keeps_its_default_and_is_said),
      cmocka_unit_test(every_published_hold_can_be_flown),
      cmocka_unit_test(a_number_beyond_the_last_makes_no_case),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
