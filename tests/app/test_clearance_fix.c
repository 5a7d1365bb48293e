/* Where the fix of a clearance is: ahead of the aircraft, or a latitude and longitude. Fixes by
 * radial and distance are in test_words_panel.c. */
#include "ox_clearance_fix.h"
#include "ox_test.h"

static ox_fix meant(const char *words, const ox_fix *now, const ox_points *points, char *remark) {
  ox_clearance *c = g_new(ox_clearance, 1);
  ox_case base = ox_case_default();
  assert_int_equal(ox_clearance_read(words, &base, NULL, c), OX_OK);
  ox_fix fix = ox_clearance_fix(c, &c->result, base.hold.fix, now, points, remark,
                                OX_REMARK_BYTES);
  g_free(c);
  return fix;
}

static void a_fix_ahead_is_as_far_as_it_was_said(void **state) {
  static const struct {
    const char *words;
    ox_fix_kind kind;
    double nm, s;
  } rows[] = {
      {"hold 20 miles ahead of your present position, inbound course 300, EFC 1900",
       OX_FIX_AHEAD_NM, 20, 0},
      {"hold one and a half miles ahead, inbound course 300, EFC 1900", OX_FIX_AHEAD_NM, 1.5, 0},
      {"hold two minutes ahead of your present position, inbound course 300, EFC 1900",
       OX_FIX_AHEAD_S, 0, 120},
      {"hold at present position, inbound course 300, EFC 1900", OX_FIX_AHEAD_NM, 0, 0}};
  ox_fix now = ox_fix_named();
  ox_points none = {.count = 0};
  char remark[OX_REMARK_BYTES];
  for (size_t i = 0; i < G_N_ELEMENTS(rows); i++) {
    ox_fix fix = meant(rows[i].words, &now, &none, remark);
    assert_int_equal(fix.kind, rows[i].kind);
    assert_close(fix.ahead_nm, rows[i].nm, 0, "NM");
    assert_close(fix.ahead_s, rows[i].s, 0, "s");
    assert_non_null(strstr(remark, "can be entered on the page Places"));
  }
}

static void a_latitude_and_longitude_is_where_it_says(void **state) {
  static const char *const places[] = {"4230N 07348W", "N42 30 W073 48",
                                       "42 degrees 30 minutes north 073 degrees 48 minutes west"};
  ox_fix now = ox_fix_named();
  ox_points none = {.count = 0};
  char remark[OX_REMARK_BYTES];
  for (size_t i = 0; i < G_N_ELEMENTS(places); i++) {
    char *words = g_strdup_printf("hold at %s, inbound course 090, EFC 1900", places[i]);
    ox_fix fix = meant(words, &now, &none, remark);
    assert_int_equal(fix.kind, OX_FIX_POINT);
    assert_int_equal(fix.point.kind, OX_POINT_AT);
    assert_close(fix.point.at.lat_deg, 42.5, 1e-9, "latitude");
    assert_close(fix.point.at.lon_deg, -73.8, 1e-9, "longitude");
    assert_string_equal(remark, "");
    g_free(words);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_fix_ahead_is_as_far_as_it_was_said),
      cmocka_unit_test(a_latitude_and_longitude_is_where_it_says),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
