/* Fields that the excerpt does not show: true courses, altitude descriptions, speed limits,
 * flight levels, HA, heliports, enroute holds. The records are made here, column by column, from
 * the published layout (ARINC 424-18). */
#include "navdata_support.h"

/* A leg that is a whole hold, to which a test adds or from which it blanks fields. */
static void base_leg(char record[RECORD_BYTES]) {
  make_record(record, (const put[]){{1, "SUSAP KALBK6FI01"}, {20, "I"}, {27, "060"},
                                    {30, "CAM  K6D 0"}, {40, "VE"}, {44, "R"}, {48, "HM"},
                                    {71, "1602T010"}, {83, "+"}, {85, "05000"},
                                    {124, "133101310"}, {0, NULL}});
}

/* The hold of a record by itself; false when the reader leaves it out as a damaged hold. */
static bool hold_of(const char record[RECORD_BYTES], ox_published_hold *out) {
  ox_navdata *data = open_bytes(record, 133);
  const ox_navdata_report *report = ox_navdata_report_of(data);
  skipped_in_all(data);
  bool is_hold = report->holds == 1;
  assert_int_equal(report->skipped[OX_SKIP_HOLD], is_hold ? 0 : 1);
  if (is_hold) assert_int_equal(ox_navdata_hold(data, 0, out), OX_OK);
  ox_navdata_close(data);
  return is_hold;
}

static ox_published_hold read_with(int column, const char *text) {
  char record[RECORD_BYTES];
  ox_published_hold h = {0};
  base_leg(record);
  put_at(record, column, text);
  if (!hold_of(record, &h)) fail_msg("column %d, \"%s\": left out", column, text);
  return h;
}

static void the_base_record_is_a_whole_hold(void **state) {
  (void)state;
  ox_published_hold h = read_with(1, "S");
  assert_string_equal(h.airport, "KALB");
  assert_string_equal(h.fix.ident, "CAM");
  assert_close(h.inbound_deg, 160.2, 1e-12, "course");
  assert_close(h.leg_s, 60, 1e-12, "leg");
}

static void a_course_may_be_true(void **state) {
  (void)state;
  /* 5.26: T in the last place, whole degrees */
  ox_published_hold h = read_with(71, "347T");
  assert_close(h.inbound_deg, 347, 0, "course");
  assert_int_equal(h.inbound_north, OX_NORTH_TRUE);
  assert_close(read_with(71, "0000").inbound_deg, 0, 0, "000.0");
  assert_close(read_with(71, "3600").inbound_deg, 0, 0, "360.0 is 0");
  assert_close(read_with(71, "360T").inbound_deg, 0, 0, "360 true is 0");
  assert_close(read_with(71, "3599").inbound_deg, 359.9, 1e-12, "359.9");
  assert_int_equal(read_with(71, "3599").inbound_north, OX_NORTH_MAGNETIC);
}

static void a_turn_or_leg_that_is_not_said_is_marked(void **state) {
  (void)state;
  assert_true(read_with(44, "L").turns == OX_TURNS_LEFT && read_with(44, "L").turns_given);
  assert_true(read_with(44, " ").turns == OX_TURNS_RIGHT && !read_with(44, " ").turns_given);
  assert_true(read_with(44, "E").turns == OX_TURNS_RIGHT && !read_with(44, "E").turns_given);
  assert_false(read_with(75, "    ").leg_given);
  assert_false(read_with(75, "0000").leg_given);
  assert_close(read_with(75, "T015").leg_s, 90, 1e-12, "a minute and a half");
  assert_close(read_with(75, "0105").leg_nm, 10.5, 1e-12, "ten and a half miles");
  assert_int_equal(read_with(27, "   ").sequence, -1);
}

/* 5.29 and 5.30 */
static const struct {
  const char *code, *first, *second;
  ox_altitude_kind kind;
  double low_ft, high_ft;
} altitudes[] = {
    {"+", "03200", "     ", OX_ALTITUDE_AT_OR_ABOVE, 3200, 0},
    {" ", "03200", "     ", OX_ALTITUDE_AT, 3200, 3200},
    {"@", "03200", "     ", OX_ALTITUDE_AT, 3200, 3200},
    {"-", "12000", "     ", OX_ALTITUDE_AT_OR_BELOW, 0, 12000},
    {"B", "06000", "04000", OX_ALTITUDE_BETWEEN, 4000, 6000},
    {"B", "04000", "06000", OX_ALTITUDE_BETWEEN, 4000, 6000},
    {"C", "     ", "05000", OX_ALTITUDE_AT_OR_ABOVE, 5000, 0},
    {"J", "02600", "01900", OX_ALTITUDE_AT_OR_ABOVE, 2600, 0},
    {"H", "02600", "01900", OX_ALTITUDE_AT_OR_ABOVE, 2600, 0},
    {"G", "02600", "01900", OX_ALTITUDE_AT, 2600, 2600},
    {"+", "FL180", "     ", OX_ALTITUDE_AT_OR_ABOVE, 18000, 0},
    {"B", "FL240", "FL190", OX_ALTITUDE_BETWEEN, 19000, 24000},
    {"+", "-0050", "     ", OX_ALTITUDE_AT_OR_ABOVE, -50, 0},
    {" ", "     ", "     ", OX_ALTITUDE_NONE, 0, 0},
    {"+", "UNKNN", "     ", OX_ALTITUDE_NONE, 0, 0},
    {"B", "06000", "     ", OX_ALTITUDE_NONE, 0, 0},
};

static void every_altitude_description_is_read(void **state) {
  (void)state;
  for (size_t i = 0; i < sizeof altitudes / sizeof *altitudes; i++) {
    char record[RECORD_BYTES];
    ox_published_hold h;
    base_leg(record);
    put_at(record, 83, altitudes[i].code);
    put_at(record, 85, altitudes[i].first);
    put_at(record, 90, altitudes[i].second);
    assert_true(hold_of(record, &h));
    if (h.altitude_kind != altitudes[i].kind) fail_msg("row %zu: kind %d", i, h.altitude_kind);
    assert_close(h.altitude_low_ft, altitudes[i].low_ft, 0, altitudes[i].first);
    assert_close(h.altitude_high_ft, altitudes[i].high_ft, 0, altitudes[i].first);
    assert_int_equal(h.altitude_code, altitudes[i].code[0]);
  }
}

static void a_speed_limit_is_read_with_its_description(void **state) {
  (void)state;
  char record[RECORD_BYTES];
  ox_published_hold h;
  base_leg(record);
  put_at(record, 100, "230");
  put_at(record, 118, "-");
  assert_true(hold_of(record, &h));
  assert_close(h.limit_kias, 230, 0, "limit");
  assert_int_equal(h.limit_code, '-');
  assert_close(read_with(100, "   ").limit_kias, 0, 0, "none");
}

static void all_three_path_terminators_in_all_six_sections_are_holds(void **state) {
  (void)state;
  static const char *const names[] = {"HM", "HF", "HA"};
  for (int t = 0; t < 3; t++)
    for (const char *area = "PH"; *area; area++)
      for (const char *sub = "DEF"; *sub; sub++) {
        char record[RECORD_BYTES];
        ox_published_hold h;
        base_leg(record);
        record[4] = *area;
        record[12] = *sub;
        put_at(record, 48, names[t]);
        assert_true(hold_of(record, &h));
        assert_string_equal(ox_terminator_name(h.terminator), names[t]);
        assert_true(h.section[0] == *area && h.section[1] == *sub);
      }
}

static void a_field_that_cannot_be_read_leaves_the_hold_out(void **state) {
  (void)state;
  static const put bad[] = {{30, "     "}, {71, "    "}, {71, "36A0"}, {71, "3601"}, {71, "361T"},
                            {71, "1 02"},  {44, "X"},    {75, "T0A0"}, {75, "0 40"}, {75, "X010"},
                            {85, "0320X"}, {85, "FL18A"}, {90, "50 00"}, {100, "2X0"}};
  for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
    char record[RECORD_BYTES];
    ox_published_hold h;
    base_leg(record);
    put_at(record, bad[i].column, bad[i].text);
    if (hold_of(record, &h)) fail_msg("column %d, \"%s\" was taken", bad[i].column, bad[i].text);
  }
}

/* 4.1.5: 40-43 course, 44 turn, 45-47 length, 48-49 time, 50-54 and 55-59 altitudes, 60-62 speed */
static void an_enroute_hold_has_its_own_layout(void **state) {
  (void)state;
  char record[RECORD_BYTES];
  ox_published_hold h;
  make_record(record, (const put[]){{1, "SUSAEPENRTK6"}, {30, "ENE  K6D 0"}, {40, "0875L"},
                                    {48, "15"}, {50, "07000FL240230"}, {0, NULL}});
  assert_true(hold_of(record, &h));
  assert_string_equal(h.section, "EP");
  assert_string_equal(h.airport, "");
  assert_string_equal(h.procedure, "");
  assert_string_equal(h.fix.ident, "ENE");
  assert_string_equal(h.fix.section, "D ");
  assert_int_equal(h.terminator, OX_TERMINATOR_EP);
  assert_close(h.inbound_deg, 87.5, 1e-12, "course");
  assert_int_equal(h.turns, OX_TURNS_LEFT);
  assert_int_equal(h.leg_by, OX_LEG_BY_TIME);
  assert_close(h.leg_s, 90, 1e-12, "1.5 minutes");
  assert_int_equal(h.altitude_kind, OX_ALTITUDE_BETWEEN);
  assert_close(h.altitude_low_ft, 7000, 0, "least");
  assert_close(h.altitude_high_ft, 24000, 0, "greatest");
  assert_close(h.limit_kias, 230, 0, "speed");

  put_at(record, 40, "123TR100  ");
  put_at(record, 55, "     ");
  assert_true(hold_of(record, &h));
  assert_close(h.inbound_deg, 123, 0, "true course");
  assert_int_equal(h.inbound_north, OX_NORTH_TRUE);
  assert_int_equal(h.leg_by, OX_LEG_BY_DISTANCE);
  assert_close(h.leg_nm, 10, 1e-12, "10.0 NM");
  assert_int_equal(h.altitude_kind, OX_ALTITUDE_AT_OR_ABOVE);
  put_at(record, 45, "1X0");
  assert_false(hold_of(record, &h));
}

static void enroute_holds_are_found_by_fix_but_not_by_procedure(void **state) {
  (void)state;
  char record[RECORD_BYTES];
  make_record(record, (const put[]){{1, "SUSAEPENRTK6"}, {30, "ENE  K6D 0"}, {40, "0875L"},
                                    {0, NULL}});
  ox_navdata *data = open_bytes(record, 133);
  size_t i = 9;
  assert_true(ox_navdata_find(data, &(ox_hold_query){.fix = "ENE"}, 0, &i));
  assert_int_equal(i, 0);
  assert_false(ox_navdata_find(data, &(ox_hold_query){.procedure = ""}, 0, &i));
  ox_navdata_close(data);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_base_record_is_a_whole_hold),
      cmocka_unit_test(a_course_may_be_true),
      cmocka_unit_test(a_turn_or_leg_that_is_not_said_is_marked),
      cmocka_unit_test(every_altitude_description_is_read),
      cmocka_unit_test(a_speed_limit_is_read_with_its_description),
      cmocka_unit_test(all_three_path_terminators_in_all_six_sections_are_holds),
      cmocka_unit_test(a_field_that_cannot_be_read_leaves_the_hold_out),
      cmocka_unit_test(an_enroute_hold_has_its_own_layout),
      cmocka_unit_test(enroute_holds_are_found_by_fix_but_not_by_procedure),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
