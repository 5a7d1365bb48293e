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

/* Two invented stations; the place itself is what the engine's crossing says. */
static void the_crossing_of_two_radials_is_where_they_cross(void **state) {
  ox_points points = {.count = 2};
  points.points[0] = (ox_point){.name = "ALDER", .kind = OX_POINT_AT, .at = {42.0, -73.0}};
  points.points[1] = (ox_point){.name = "BIRCH", .kind = OX_POINT_AT, .at = {42.0, -72.0}};
  ox_fix now = ox_fix_named();
  ox_crossing cross;
  ox_latlon at;
  char remark[OX_REMARK_BYTES];
  ox_case c = ox_case_default();
  ox_fix fix = meant("hold southwest of the intersection of the ALDER 060 radial and the BIRCH 300 "
                     "radial, on the ALDER 060 radial, EFC 1900",
                     &now, &points, remark);
  assert_int_equal(fix.kind, OX_FIX_POINT);
  assert_int_equal(fix.point.kind, OX_POINT_CROSSING);
  assert_int_equal(ox_fix_place(&points, &fix, &c, &at, remark, sizeof remark), OX_OK);
  assert_int_equal(ox_radials_cross((ox_station){{42.0, -73.0}, 0}, 60,
                                    (ox_station){{42.0, -72.0}, 0}, 300, &cross, remark,
                                    sizeof remark),
                   OX_OK);
  assert_close(at.lat_deg, cross.at.lat_deg, 1e-9, "latitude");
  assert_close(at.lon_deg, cross.at.lon_deg, 1e-9, "longitude");
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_fix_ahead_is_as_far_as_it_was_said),
      cmocka_unit_test(a_latitude_and_longitude_is_where_it_says),
      cmocka_unit_test(the_crossing_of_two_radials_is_where_they_cross),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
