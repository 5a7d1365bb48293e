/* What a sound lesson means: every key, every default, and what a newer program wrote. */
#include "oxbow/fields.h"
#include "store_support.h"

static ox_lesson *read_sound(const char *path) {
  ox_messages messages = {0};
  ox_lesson *lesson = NULL;
  ox_status status = ox_lesson_read(path, &lesson, &messages);
  for (size_t i = 0; i < messages.count; i++) print_error("%s\n", messages.text[i]);
  ox_messages_clear(&messages);
  assert_int_equal(status, OX_OK);
  return lesson;
}

static void every_key_of_the_example_is_read(void **state) {
  ox_lesson *lesson = read_sound(data_path("full.oxbow"));
  assert_string_equal(lesson->title, "Crosswind at the lake");
  assert_false(lesson->read_only);
  assert_int_equal(lesson->case_count, 1);
  const ox_case *c = &lesson->cases[0].c;
  ox_case want = ox_case_default();
  strcpy(want.name, "Twenty knots from the north");
  strcpy(want.hold.fix, "LARCH");
  want.hold.inbound_deg = 240;
  want.hold.leg_s = 60;
  want.hold.efc_min = 18 * 60 + 25;
  want.arrival.heading_deg = 290;
  want.wind_count = 1;
  want.wind[0] = (ox_wind_row){0, 360, 20, OX_NORTH_TRUE};
  want.variation_deg = -12;
  assert_true(ox_case_equal(c, &want));
  ox_lesson_free(lesson);
}

static void what_is_not_given_has_its_default(void **state) {
  ox_lesson *lesson = read_sound(data_path("least.oxbow"));
  ox_case want = ox_case_default();
  strcpy(want.name, "Case 1");
  want.hold.inbound_deg = 7;
  want.arrival.heading_deg = 1;
  want.aircraft.ias_kt = 0;
  want.aircraft.tas_kt = 120;
  assert_true(ox_case_equal(&lesson->cases[0].c, &want));
  assert_string_equal(lesson->title, "");
  ox_lesson_free(lesson);
}

typedef struct {
  const char *members;
  const char *key; /* NULL: the value stands in the wind's rows or the EFC, checked apart */
  double want;
} good_value;

/* design of format 1: null where it is allowed, ends of the ranges, words in enum order. */
static const good_value good_values[] = {
    {"\"hold\": { \"inbound_deg\": 0 }", "hold.inbound_deg", 0},
    {"\"hold\": { \"inbound_deg\": 360 }", "hold.inbound_deg", 360},
    {"\"hold\": { \"inbound_deg\": 2.4e2 }", "hold.inbound_deg", 240},
    {"\"hold\": { \"inbound_deg\": 240.125 }", "hold.inbound_deg", 240.125},
    {"\"hold\": { \"inbound_deg\": 1, \"turns\": \"left\" }", "hold.turns", OX_TURNS_LEFT},
    {"\"hold\": { \"inbound_deg\": 1, \"turns\": \"\\u006ceft\" }", "hold.turns", OX_TURNS_LEFT},
    {"\"hold\": { \"inbound_deg\": 1, \"leg\": null }", "hold.leg.s", 0},
    {"\"hold\": { \"inbound_deg\": 1, \"leg\": {} }", "hold.leg.by", OX_LEG_BY_TIME},
    {"\"hold\": { \"inbound_deg\": 1, \"leg\": { \"s\": 90 } }", "hold.leg.s", 90},
    {"\"hold\": { \"inbound_deg\": 1, \"leg\": { \"by\": \"time\" } }", "hold.leg.s", 0},
    {"\"hold\": { \"inbound_deg\": 1, \"leg\": { \"by\": \"time\", \"s\": null } }",
     "hold.leg.s", 0},
    {"\"hold\": { \"inbound_deg\": 1, \"leg\": { \"by\": \"time\", \"s\": 600 } }",
     "hold.leg.s", 600},
    {"\"hold\": { \"inbound_deg\": 1, \"leg\": { \"by\": \"distance\", \"nm\": 4 } }",
     "hold.leg.nm", 4},
    {"\"hold\": { \"inbound_deg\": 1, \"leg\": { \"by\": \"distance\", \"nm\": 4 } }",
     "hold.leg.end", OX_LEG_END_OUTBOUND},
    {"\"hold\": { \"inbound_deg\": 1, \"leg\": { \"by\": \"distance\", \"nm\": 0.5,"
     " \"end\": \"inbound\" } }", "hold.leg.end", OX_LEG_END_INBOUND},
    {"\"hold\": { \"inbound_deg\": 1, \"altitude_ft\": -1500 }", "hold.altitude_ft", -1500},
    {"\"hold\": { \"inbound_deg\": 1, \"limit_kias\": null }", "hold.limit_kias", 0},
    {"\"hold\": { \"inbound_deg\": 1, \"limit_kias\": 0 }", "hold.limit_kias", 0},
    {"\"hold\": { \"inbound_deg\": 1, \"limit_kias\": 175 }", "hold.limit_kias", 175},
    {"\"hold\": { \"inbound_deg\": 1, \"ends\": \"reversal\" }", "hold.ends", OX_HOLD_REVERSAL},
    {"\"hold\": { \"inbound_deg\": 1, \"ends\": \"altitude\" }", "hold.ends",
     OX_HOLD_TO_ALTITUDE},
    {"\"hold\": { \"inbound_deg\": 1, \"ends\": \"efc\" }", "hold.ends", OX_HOLD_TO_EFC},
    {"\"hold\": { \"inbound_deg\": 1, \"climb_to_ft\": null }", "hold.climb_to_ft", 0},
    {"\"hold\": { \"inbound_deg\": 1, \"climb_to_ft\": 0 }", "hold.climb_to_ft", 0},
    {"\"hold\": { \"inbound_deg\": 1, \"climb_to_ft\": 9000 }", "hold.climb_ft_min", 500},
    {"\"hold\": { \"inbound_deg\": 1, \"climb_to_ft\": -1500, \"climb_ft_min\": 6000 }",
     "hold.climb_to_ft", -1500},
    {"\"hold\": { \"inbound_deg\": 1, \"climb_ft_min\": 100, \"climb_to_ft\": 9000 }",
     "hold.climb_ft_min", 100},
    {"\"hold\": { \"inbound_deg\": 1, \"climb_ft_min\": 700 }", "hold.climb_ft_min", 500},
    {"\"hold\": { \"inbound_deg\": 1, \"leg\": { \"nm\": 0 } }", "hold.leg.by", OX_LEG_BY_TIME},
    {"\"aircraft\": { \"ias_kt\": 90, \"turn_by\": \"bank\" }", "aircraft.turn_by",
     OX_TURN_BY_BANK},
    {"\"technique\": { \"entry_line\": \"track\" }", "technique.entry_line",
     OX_ENTRY_LINE_TRACK},
    {"\"technique\": { \"lead\": \"none\" }", "technique.lead", OX_LEAD_NONE},
    {"\"technique\": { \"lead_deg\": 8, \"lead\": \"degrees\" }", "technique.lead_deg", 8},
    {"\"technique\": { \"lead_deg\": 8 }", "technique.lead_deg", 5},
    {"\"technique\": { \"at_radial\": \"follow\" }", "technique.at_radial", OX_AT_RADIAL_TURN},
    {"\"hold\": { \"inbound_deg\": 1, \"leg\": { \"by\": \"distance\", \"nm\": 5, \"station\": "
     "{ \"nm\": 9, \"radial_deg\": 1, \"limiting_radial_deg\": 360 } } }",
     "hold.leg.station.limiting_radial_deg", 360},
    {"\"technique\": { \"reaction_s\": 15 }", "technique.reaction_s", 15},
    {"\"arrival\": { \"heading_deg\": 1, \"distance_nm\": 0 }", "arrival.distance_nm", 0},
    {"\"aircraft\": { \"ias_kt\": 90, \"tas_kt\": null }", "aircraft.ias_kt", 90},
    {"\"aircraft\": { \"ias_kt\": null, \"tas_kt\": 110 }", "aircraft.tas_kt", 110},
    {"\"aircraft\": { \"ias_kt\": null, \"tas_kt\": 110 }", "aircraft.ias_kt", 0},
    {"\"aircraft\": { \"ias_kt\": 90, \"tas_kt\": 110 }", "aircraft.ias_kt", 90},
    {"\"variation_deg\": -180", "variation_deg", -180},
    {"\"technique\": {}", "technique.circuits", 3},
    {"\"technique\": { \"circuits\": 40 }", "technique.circuits", 40},
    {"\"technique\": { \"circuits\": 4.0e0 }", "technique.circuits", 4},
    {"\"technique\": { \"drift\": \"track\" }", "technique.drift", OX_DRIFT_TRACK},
    {"\"technique\": { \"outbound\": \"rule\" }", "technique.outbound", OX_OUTBOUND_RULE},
    {"\"technique\": { \"clock\": \"level\" }", "technique.clock", OX_CLOCK_LEVEL},
    {"\"technique\": { \"entry\": \"teardrop\" }", "technique.entry", OX_CHOOSE_TEARDROP},
    {"\"technique\": { \"sector\": \"track\" }", "technique.sector", OX_SECTOR_TRACK},
    {"\"technique\": { \"timing\": \"outbound\" }", "technique.timing", OX_TIMING_OUTBOUND},
};

static void values_are_taken_as_written(void **state) {
  for (size_t i = 0; i < sizeof good_values / sizeof *good_values; i++) {
    const good_value *good = &good_values[i];
    ox_lesson *lesson = parse_sound(lesson_with(good->members), good->members);
    assert_close(ox_field_get(ox_field_by_key(good->key), &lesson->cases[0].c), good->want, 0.0,
                 good->members);
    ox_lesson_free(lesson);
  }
}

static int efc_of(const char *json) {
  char members[120];
  snprintf(members, sizeof members, "\"hold\": { \"inbound_deg\": 1, \"efc\": %s }", json);
  ox_lesson *lesson = parse_sound(lesson_with(members), json);
  int minutes = lesson->cases[0].c.hold.efc_min;
  ox_lesson_free(lesson);
  return minutes;
}

static void the_further_clearance_is_minutes_after_midnight(void **state) {
  assert_int_equal(efc_of("\"00:00\""), 0);
  assert_int_equal(efc_of("\"09:05\""), 545);
  assert_int_equal(efc_of("\"23:59\""), 1439);
  assert_int_equal(efc_of("null"), -1);
}

static ox_case case_with(const char *members) {
  ox_lesson *lesson = parse_sound(lesson_with(members), members);
  ox_case c = lesson->cases[0].c;
  ox_lesson_free(lesson);
  return c;
}

static int fix_at_of(const char *json) {
  char members[120];
  snprintf(members, sizeof members, "\"arrival\": { \"heading_deg\": 1, \"fix_at\": %s }", json);
  return case_with(members).arrival.fix_at_s;
}

static void the_crossing_of_the_fix_is_seconds_after_midnight(void **state) {
  assert_int_equal(fix_at_of("\"00:00\""), 0);
  assert_int_equal(fix_at_of("\"00:00:00\""), 0);
  assert_int_equal(fix_at_of("\"09:05\""), 32700);
  assert_int_equal(fix_at_of("\"18:05:30\""), 65130);
  assert_int_equal(fix_at_of("\"23:59:59\""), 86399);
  assert_int_equal(fix_at_of("null"), -1);
  assert_int_equal(case_with("\"arrival\": { \"heading_deg\": 1 }").arrival.fix_at_s, -1);
}

static ox_case leg_case(const char *json) {
  char members[300];
  snprintf(members, sizeof members, "\"hold\": { \"inbound_deg\": 1, \"leg\": %s }", json);
  return case_with(members);
}

static void a_station_is_given_by_being_there(void **state) {
  ox_case c = leg_case("{ \"by\": \"distance\", \"nm\": 4 }");
  assert_false(c.hold.station.given);
  c = leg_case("{ \"by\": \"distance\", \"nm\": 4, \"station\": null }");
  assert_false(c.hold.station.given);
  c = leg_case("{ \"by\": \"time\", \"station\": null }");
  assert_false(c.hold.station.given);
  c = leg_case("{ \"by\": \"distance\", \"nm\": 4, \"station\": { \"nm\": 0 } }");
  assert_true(c.hold.station.given);
  assert_close(c.hold.station.nm, 0, 0, "a station at the fix");
  assert_close(c.hold.station.elevation_ft, 0, 0, "elevation not given");
  c = leg_case("{ \"station\": { \"elevation_ft\": -1500, \"nm\": 200, \"radial_deg\": 360 },"
               " \"end\": \"outbound\", \"nm\": 4, \"by\": \"distance\" }");
  assert_true(c.hold.station.given);
  assert_close(c.hold.station.radial_deg, 360, 0, "radial");
  assert_close(c.hold.station.nm, 200, 0, "distance");
  assert_close(c.hold.station.elevation_ft, -1500, 0, "elevation");
  assert_close(c.hold.leg_nm, 4, 0, "the leg's own length");
}

static void the_wind_changes_in_a_list_by_time(void **state) {
  assert_int_equal(case_with(NULL).wind_change_count, 0);
  assert_int_equal(case_with("\"wind_changes\": null").wind_change_count, 0);
  ox_case c = case_with("\"wind_changes\": [ { \"at_min\": 0.1, \"kt\": 0 },"
                        " { \"north\": \"magnetic\", \"kt\": 18.5, \"from_deg\": 270,"
                        " \"at_min\": 4 },"
                        " { \"at_min\": 300, \"from_deg\": 360, \"kt\": 250 } ]");
  assert_int_equal(c.wind_change_count, 3);
  assert_int_equal(c.wind_count, 0);
  assert_close(c.wind_changes[0].at_min, 0.1, 0, "first time");
  assert_int_equal(c.wind_changes[0].north, OX_NORTH_TRUE);
  assert_close(c.wind_changes[1].from_deg, 270, 0, "direction");
  assert_close(c.wind_changes[1].kt, 18.5, 0, "speed");
  assert_int_equal(c.wind_changes[1].north, OX_NORTH_MAGNETIC);
  assert_close(c.wind_changes[2].at_min, 300, 0, "last time");
  c = case_with("\"wind_changes\": [ { \"at_min\": 1, \"kt\": 0 }, { \"at_min\": 2, \"kt\": 0 },"
                " { \"at_min\": 3, \"kt\": 0 }, { \"at_min\": 4, \"kt\": 0 },"
                " { \"at_min\": 5, \"kt\": 0 }, { \"at_min\": 6, \"kt\": 0 } ]");
  assert_int_equal(c.wind_change_count, OX_WIND_CHANGES_MAX);
}

static ox_case wind_case(const char *json) {
  char members[600];
  snprintf(members, sizeof members, "\"wind\": %s", json);
  return case_with(members);
}

static void wind_is_calm_one_object_or_rows(void **state) {
  assert_int_equal(wind_case("null").wind_count, 0);
  ox_case c = wind_case("{ \"from_deg\": 270, \"kt\": 18.5, \"north\": \"magnetic\" }");
  assert_int_equal(c.wind_count, 1);
  assert_close(c.wind[0].from_deg, 270, 0, "from");
  assert_close(c.wind[0].kt, 18.5, 0, "speed");
  assert_int_equal(c.wind[0].north, OX_NORTH_MAGNETIC);
  c = wind_case("{ \"kt\": 0 }");
  assert_int_equal(c.wind_count, 1);
  c = wind_case("[ { \"from_deg\": 90, \"kt\": 5 } ]");
  assert_int_equal(c.wind_count, 1);
  assert_int_equal(c.wind[0].north, OX_NORTH_TRUE);
  c = wind_case("[ { \"altitude_ft\": -100, \"from_deg\": 90, \"kt\": 5 },"
                " { \"altitude_ft\": 6000, \"from_deg\": 120, \"kt\": 25 } ]");
  assert_int_equal(c.wind_count, 2);
  assert_close(c.wind[0].altitude_ft, -100, 0, "low row");
  assert_close(c.wind[1].from_deg, 120, 0, "high row");
}

static void minus_zero_is_read_as_zero(void **state) {
  ox_lesson *lesson = parse_sound(lesson_with("\"variation_deg\": -0.0"), "minus zero");
  assert_false(signbit(lesson->cases[0].c.variation_deg));
  ox_lesson_free(lesson);
}

static void a_byte_order_mark_is_passed_over(void **state) {
  char text[2000];
  snprintf(text, sizeof text, "\xef\xbb\xbf%s\r\n", lesson_with(NULL));
  ox_lesson_free(parse_sound(text, "with a byte order mark"));
}

static void texts_keep_their_characters(void **state) {
  ox_lesson *lesson = parse_sound(
      lesson_with("\"name\": \"\\u00e9 \\ud834\\udd1e \\\"\\\\\\/ 風\","
                  " \"hold\": { \"fix\": \" \xc3\xb8 \", \"inbound_deg\": 1 }"),
      "odd characters");
  assert_string_equal(lesson->cases[0].c.name, "\xc3\xa9 \xf0\x9d\x84\x9e \"\\/ \xe9\xa2\xa8");
  assert_string_equal(lesson->cases[0].c.hold.fix, " \xc3\xb8 ");
  ox_lesson_free(lesson);
}

static bool has_message(const ox_messages *messages, size_t index, const char *fragment) {
  bool found = index < messages->count && strstr(messages->text[index], fragment);
  if (!found) print_error("message %zu lacks: %s\n", index, fragment);
  return found;
}

static void a_newer_lesson_is_read_as_far_as_it_is_understood(void **state) {
  ox_messages messages = {0};
  ox_lesson *lesson = NULL;
  ox_status status = ox_lesson_read(data_path("newer.oxbow"), &lesson, &messages);
  assert_int_equal(status, OX_ADVISORY);
  assert_true(lesson->read_only);
  assert_string_equal(lesson->title, "From a later year");
  assert_int_equal(lesson->case_count, 2);
  assert_close(lesson->cases[0].c.hold.inbound_deg, 240, 0, "what is understood");
  assert_int_equal(lesson->cases[0].c.hold.turns, OX_TURNS_RIGHT);
  assert_string_equal(lesson->cases[1].c.name, "Case 3");
  for (size_t i = 0; i < lesson->case_count; i++)
    assert_int_equal(ox_case_check(&lesson->cases[i].c, NULL, 0), 0);
  assert_true(has_message(&messages, 0, "newer.oxbow: version 7 is newer than this program knows"));
  assert_int_equal(lesson->cases[0].fix.kind, OX_FIX_POINT);
  assert_true(has_message(&messages, 1, "hold.turns: \"either\" is not"));
  assert_true(has_message(&messages, 2, "case 2: \"see the appendix\" is not an object"));
  assert_true(has_message(&messages, 3, "case 3: hold.inbound_deg: is missing"));
  ox_messages_clear(&messages);
  ox_lesson_free(lesson);
}

static void a_newer_station_that_is_not_understood_is_left_out(void **state) {
  static const char *const legs[] = {
      "{ \"by\": \"distance\", \"nm\": 4, \"station\": { \"nm\": 9 } }",
      "{ \"by\": \"distance\", \"nm\": 4, \"station\": { \"nm\": 999, \"radial_deg\": 9 } }",
      "{ \"by\": \"distance\", \"nm\": 4, \"station\": { \"nm\": 9, \"radial_deg\": \"N\" } }",
      "{ \"by\": \"arc\", \"nm\": 4, \"station\": { \"nm\": 0 } }",
      "{ \"by\": \"distance\", \"station\": { \"nm\": 0 } }",
  };
  for (size_t i = 0; i < sizeof legs / sizeof *legs; i++) {
    char text[600];
    snprintf(text, sizeof text,
             "{ \"format\": \"oxbow-lesson\", \"version\": 2, \"cases\": [ { \"hold\": {"
             " \"inbound_deg\": 1, \"leg\": %s }, \"arrival\": { \"heading_deg\": 1 },"
             " \"aircraft\": { \"ias_kt\": 100 } } ] }", legs[i]);
    ox_messages messages = {0};
    ox_status status;
    ox_lesson *lesson = parse_text(text, &status, &messages);
    assert_int_equal(status, OX_ADVISORY);
    assert_int_equal(messages.count, 2); /* newer, and the one fault */
    assert_false(lesson->cases[0].c.hold.station.given);
    assert_close(lesson->cases[0].c.hold.station.nm, 0, 0, legs[i]);
    ox_messages_clear(&messages);
    ox_lesson_free(lesson);
  }
}

static void a_newer_lesson_without_a_case_is_refused(void **state) {
  ox_messages messages = {0};
  ox_status status;
  assert_null(parse_text("{ \"format\": \"oxbow-lesson\", \"version\": 2, \"cases\": [ 1 ] }",
                         &status, &messages));
  assert_int_equal(status, OX_ERROR);
  assert_true(has_message(&messages, 1, "case 1: 1 is not an object"));
  ox_messages_clear(&messages);
}

static void a_newer_file_of_another_format_is_refused(void **state) {
  ox_messages messages = {0};
  ox_status status;
  assert_null(parse_text("{ \"format\": \"atlas\", \"version\": 2, \"cases\": [ {} ] }", &status,
                         &messages));
  assert_int_equal(status, OX_ERROR);
  assert_true(has_message(&messages, 0, "format: \"atlas\" is not \"oxbow-lesson\""));
  ox_messages_clear(&messages);
}

static void visit_example(const char *path, void *context) {
  ox_lesson_free(read_sound(path));
}

static void every_example_lesson_is_sound(void **state) {
  const char *directory = getenv("OXBOW_LESSONS");
  assert_non_null(directory);
  assert_true(each_lesson(directory, visit_example, NULL) >= 1);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_key_of_the_example_is_read),
      cmocka_unit_test(what_is_not_given_has_its_default),
      cmocka_unit_test(values_are_taken_as_written),
      cmocka_unit_test(the_further_clearance_is_minutes_after_midnight),
      cmocka_unit_test(the_crossing_of_the_fix_is_seconds_after_midnight),
      cmocka_unit_test(a_station_is_given_by_being_there),
      cmocka_unit_test(wind_is_calm_one_object_or_rows),
      cmocka_unit_test(the_wind_changes_in_a_list_by_time),
      cmocka_unit_test(minus_zero_is_read_as_zero),
      cmocka_unit_test(a_byte_order_mark_is_passed_over),
      cmocka_unit_test(texts_keep_their_characters),
      cmocka_unit_test(a_newer_lesson_is_read_as_far_as_it_is_understood),
      cmocka_unit_test(a_newer_station_that_is_not_understood_is_left_out),
      cmocka_unit_test(a_newer_lesson_without_a_case_is_refused),
      cmocka_unit_test(a_newer_file_of_another_format_is_refused),
      cmocka_unit_test(every_example_lesson_is_sound),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
