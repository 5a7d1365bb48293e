/* Points of the excerpt and how legs find them. Positions by hand: N42445020 is 42 deg 44 min
 * 50.20 s. */
#include "navdata_support.h"

static double dms(int d, int m, double s) { return d + m / 60.0 + s / 3600; }

typedef struct {
  ox_point_key key;
  double lat_deg, lon_deg;
  const char *declination, *variation, *elevation; /* figures, or NULL: not given */
  const char *name;
} expected;

static void compare(const ox_navdata *data, const expected *want) {
  ox_published_point p;
  char why[OX_REMARK_BYTES];
  if (ox_navdata_point(data, &want->key, &p, why, sizeof why) != OX_OK) fail_msg("%s", why);
  const char *ident = want->key.ident;
  assert_string_equal(p.key.ident, ident);
  assert_close(p.at.lat_deg, want->lat_deg, 1e-12, ident);
  assert_close(p.at.lon_deg, want->lon_deg, 1e-12, ident);
  assert_int_equal(p.declination_given, want->declination != NULL);
  if (want->declination)
    assert_close(p.declination_deg, atof(want->declination), 1e-12, ident);
  assert_int_equal(p.variation_given, want->variation != NULL);
  if (want->variation) assert_close(p.variation_deg, atof(want->variation), 1e-12, ident);
  assert_int_equal(p.elevation_given, want->elevation != NULL);
  if (want->elevation) assert_close(p.elevation_ft, atof(want->elevation), 0, ident);
  assert_string_equal(p.name, want->name);
}

static void points_of_every_kind_are_placed(void **state) {
  (void)state;
  const expected rows[] = {
      /* 3: D, 75-79 W0130 declination, 80-84 00273 */
      {{"ALB", "K6", "D ", ""}, dms(42, 44, 50.20), -dms(73, 48, 11.47), "-13", NULL, "273",
       "ALBANY"},
      {{"COL", "K6", "D ", ""}, dms(40, 18, 41.87), -dms(74, 9, 35.02), "-11", NULL, "129",
       "COLTS NECK"},
      {{"ENE", "K6", "D ", ""}, dms(43, 25, 32.42), -dms(70, 36, 48.69), "-17", NULL, "192",
       "KENNEBUNK"},
      /* asked for from an airport's procedure, a navaid is found among the enroute ones */
      {{"IGN", "K6", "D ", "KSWF"}, dms(41, 39, 55.62), -dms(73, 49, 20.01), "-12", NULL, "582",
       "KINGSTON"},
      /* 7: DB, 75-79 W0010 */
      {{"LQ", "K5", "DB", ""}, dms(39, 54, 42.85), -dms(89, 36, 11.41), NULL, "-1", NULL, "LICOL"},
      /* 8: EA, E0024 */
      {{"ACOLA", "K4", "EA", ""}, dms(29, 27, 35.58), -dms(95, 30, 18.42), NULL, "2.4", NULL,
       "ACOLA"},
      /* 9: HA, 52-56 W0120, 57-61 00078 */
      {{"00NJ", "K6", "HA", ""}, dms(40, 31, 15.37), -dms(74, 28, 28.55), NULL, "-12", "78",
       "COLGATE-PISCATAWAY"},
      /* 10 and 28: PA */
      {{"1B1", "K6", "PA", ""}, dms(42, 17, 28.70), -dms(73, 42, 37.20), NULL, "-13", "198",
       "COLUMBIA COUNTY"},
      {{"KALB", "K6", "PA", ""}, dms(42, 44, 56.82), -dms(73, 48, 7.13), NULL, "-13", "285",
       "ALBANY INTL"},
      /* 11, 30, 31, 45: PC */
      {{"JAPUT", "K6", "PC", "1B1"}, dms(42, 28, 21.26), -dms(73, 39, 36.22), NULL, "-13.3", NULL,
       "JAPUT"},
      {{"IYIYO", "K6", "PC", "KALB"}, dms(42, 30, 39.14), -dms(73, 47, 40.14), NULL, "-13.3", NULL,
       "IYIYO(CNF)"},
      {{"MUJIK", "K6", "PC", "KALB"}, dms(42, 33, 18.21), -dms(73, 47, 46.98), NULL, "-13.3", NULL,
       "MUJIK"},
      {{"COLBE", "K6", "PC", "KSBY"}, dms(38, 16, 37.77), -dms(75, 23, 58.16), NULL, "-11.5", NULL,
       "COLBE"},
      /* 43: PG */
      {{"RW01", "K6", "PG", "KALB"}, dms(42, 44, 13.80), -dms(73, 48, 15.33), NULL, NULL, NULL,
       ""},
  };
  ox_navdata *data = excerpt_open();
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    compare(data, &rows[i]);
  ox_navdata_close(data);
}

static void a_namesake_elsewhere_is_not_taken_for_it(void **state) {
  (void)state;
  static const ox_point_key absent[] = {
      {"JAPUT", "K6", "PC", "KALB"}, {"JAPUT", "K5", "PC", "1B1"}, {"JAPUT", "K6", "EA", ""},
      {"JAPUT", "K6", "PC", ""},     {"JAPU", "K6", "PC", "1B1"},  {"STENY", "K6", "PC", "3N6"},
      {"SW", "K6", "PN", "KSWF"},    {"CAM", "K6", "D ", "KALB"},  {"RW06", "K6", "PG", "B19"},
      {"", "", "", ""},              {"ALB", "K6", "D", ""},
  };
  ox_navdata *data = excerpt_open();
  for (size_t i = 0; i < sizeof absent / sizeof *absent; i++) {
    ox_published_point p = {.elevation_ft = 5};
    char why[OX_REMARK_BYTES];
    /* "D" and "D " are one section: the key of the last row is padded. */
    ox_status want = strcmp(absent[i].section, "D") == 0 ? OX_OK : OX_ERROR;
    if (ox_navdata_point(data, &absent[i], &p, why, sizeof why) != want)
      fail_msg("%s %s", absent[i].ident, absent[i].section);
    if (want == OX_OK) continue;
    assert_non_null(strstr(why, "is not in the file"));
    assert_true(p.elevation_ft == 5);
    assert_int_equal(ox_navdata_point(data, &absent[i], &p, NULL, 0), OX_ERROR);
  }
  ox_navdata_close(data);
}

static void the_fixes_of_the_holds_are_resolved_or_missed_as_by_hand(void **state) {
  (void)state;
  /* Not in the excerpt: STENY (hold 2), CAM (7) and SW (10). */
  ox_navdata *data = excerpt_open();
  for (size_t i = 0; i < ox_navdata_hold_count(data); i++) {
    ox_published_hold h;
    ox_published_point p;
    assert_int_equal(ox_navdata_hold(data, i, &h), OX_OK);
    bool missing = i == 2 || i == 7 || i == 10;
    assert_int_equal(ox_navdata_point(data, &h.fix, &p, NULL, 0), missing ? OX_ERROR : OX_OK);
  }
  ox_navdata_close(data);
}

static void a_dme_alone_is_placed_by_its_own_columns(void **state) {
  (void)state;
  char record[RECORD_BYTES];
  copy_line(record, 3);
  put_at(record, 33, "                   ");
  ox_navdata *data = open_bytes(record, 133);
  ox_published_point p;
  ox_point_key key = {"ALB", "K6", "D ", ""};
  assert_int_equal(ox_navdata_point(data, &key, &p, NULL, 0), OX_OK);
  assert_close(p.at.lat_deg, dms(42, 44, 50.20), 1e-12, "DME latitude");
  ox_navdata_close(data);
}

static void a_terminal_navaid_is_found_after_the_enroute_ones(void **state) {
  (void)state;
  /* One ident, twice: the enroute station and one of the airport KABC, one degree north. */
  char both[2 * RECORD_BYTES], record[RECORD_BYTES];
  copy_line(record, 3);
  put_at(record, 7, "KABC");
  put_at(record, 34, "43");
  memcpy(both, record, 133);
  ox_navdata *data = open_bytes(both, 133);
  ox_published_point p;
  ox_point_key from_abc = {"ALB", "K6", "D ", "KABC"}, from_elsewhere = {"ALB", "K6", "D ", "KXYZ"};
  assert_int_equal(ox_navdata_point(data, &from_abc, &p, NULL, 0), OX_OK);
  assert_close(p.at.lat_deg, dms(43, 44, 50.20), 1e-12, "the airport's own");
  assert_int_equal(ox_navdata_point(data, &from_elsewhere, &p, NULL, 0), OX_ERROR);
  ox_navdata_close(data);
  copy_line(record, 3);
  memcpy(both + 133, record, 133);
  data = open_bytes(both, 2 * 133);
  assert_int_equal(ox_navdata_report_of(data)->points, 2);
  assert_int_equal(ox_navdata_point(data, &from_abc, &p, NULL, 0), OX_OK);
  assert_close(p.at.lat_deg, dms(42, 44, 50.20), 1e-12, "the enroute one first");
  ox_navdata_close(data);
}

static void a_station_oriented_to_true_north_has_no_declination(void **state) {
  (void)state;
  static const struct {
    const char *text;
    bool given;
    double deg;
  } rows[] = {{"T0000", true, 0},  {"E0123", true, 12.3}, {"W1800", true, -180},
              {"     ", false, 0}, {"G0000", false, 0},   {"W01 0", false, 0},
              {"E1801", false, 0}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    char record[RECORD_BYTES];
    copy_line(record, 3);
    put_at(record, 75, rows[i].text);
    ox_navdata *data = open_bytes(record, 133);
    ox_published_point p;
    ox_point_key key = {"ALB", "K6", "D ", ""};
    assert_int_equal(ox_navdata_point(data, &key, &p, NULL, 0), OX_OK);
    assert_int_equal(p.declination_given, rows[i].given);
    assert_close(p.declination_deg, rows[i].deg, 1e-12, rows[i].text);
    ox_navdata_close(data);
  }
}

static void a_terminal_ndb_is_read_with_its_airport(void **state) {
  (void)state;
  /* 4.1.3 with N in column 6; SW of KSWF, made up (the excerpt lacks it). */
  char record[RECORD_BYTES];
  make_record(record, (const put[]){{1, "SUSAPNKSWFK6"}, {14, "SW"}, {20, "K6003350HO  "},
                                    {33, "N41300000W074100000"}, {75, "W0120"}, {0, NULL}});
  ox_navdata *data = open_bytes(record, 133);
  ox_published_point p;
  ox_point_key key = {"SW", "K6", "PN", "KSWF"}, enroute = {"SW", "K6", "DB", ""};
  assert_int_equal(ox_navdata_point(data, &key, &p, NULL, 0), OX_OK);
  assert_close(p.at.lat_deg, 41.5, 1e-12, "latitude");
  assert_close(p.variation_deg, -12, 1e-12, "variation");
  assert_int_equal(ox_navdata_point(data, &enroute, &p, NULL, 0), OX_ERROR);
  ox_navdata_close(data);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(points_of_every_kind_are_placed),
      cmocka_unit_test(a_namesake_elsewhere_is_not_taken_for_it),
      cmocka_unit_test(the_fixes_of_the_holds_are_resolved_or_missed_as_by_hand),
      cmocka_unit_test(a_dme_alone_is_placed_by_its_own_columns),
      cmocka_unit_test(a_terminal_navaid_is_found_after_the_enroute_ones),
      cmocka_unit_test(a_station_oriented_to_true_north_has_no_declination),
      cmocka_unit_test(a_terminal_ndb_is_read_with_its_airport),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
