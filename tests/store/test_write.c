/* Written lessons: the same case again, the same bytes again, nothing lost, readable. */
#include <locale.h>

#include "json.h"
#include "store_support.h"

/* Text, read, written again: equal lessons, equal bytes. Returns the text. */
static char *assert_round_trip(const ox_lesson *lesson, const char *what) {
  char *text = ox_lesson_to_text(lesson);
  assert_non_null(text);
  ox_lesson *again = parse_sound(text, what);
  assert_lessons_equal(lesson, again, what);
  char *text_again = ox_lesson_to_text(again);
  assert_string_equal(text_again, text);
  free(text_again);
  ox_lesson_free(again);
  return text;
}

static void random_cases_come_back_equal(int all, uint64_t seed) {
  int count = ox_test_cases(all);
  ox_random r = {seed};
  for (int i = 0; i < count;) {
    ox_lesson *lesson = ox_lesson_new();
    assert_non_null(lesson);
    lesson->cases[0].c = random_case(&r);
    i++;
    for (int more = ox_random_below(&r, 6); more > 0; more--, i++) {
      ox_case c = random_case(&r);
      size_t at = (size_t)ox_random_below(&r, (int)lesson->case_count + 1);
      assert_int_equal(ox_lesson_insert(lesson, at, &c, NULL), OX_OK);
    }
    free(assert_round_trip(lesson, "random cases"));
    ox_lesson_free(lesson);
  }
}

static void twenty_thousand_random_cases_come_back_equal(void **state) {
  random_cases_come_back_equal(20000, 1);
}

static void the_decimal_comma_changes_nothing(void **state) {
  ox_lesson *lesson = ox_lesson_new();
  lesson->cases[0].c.hold.inbound_deg = 240.5;
  lesson->cases[0].c.variation_deg = -1e-7;
  char *plain = ox_lesson_to_text(lesson);
  bool german = setlocale(LC_ALL, "de_DE.UTF-8") != NULL;
  char half[16];
  snprintf(half, sizeof half, "%.1f", 0.5);
  char *text = ox_lesson_to_text(lesson);
  bool same = strcmp(text, plain) == 0;
  if (german) random_cases_come_back_equal(500, 2);
  ox_lesson *fine = parse_sound(lesson_with("\"variation_deg\": 12.25"), "a point under a comma");
  double variation_deg = fine->cases[0].c.variation_deg;
  bool comma_after = *localeconv()->decimal_point == ',';
  setlocale(LC_ALL, "C");
  ox_lesson_free(fine);
  ox_lesson_free(lesson);
  free(plain);
  free(text);
  if (!german) print_error("the locale de_DE.UTF-8 is needed (tests/run.sh makes it)\n");
  assert_true(german);
  assert_string_equal(half, "0,5"); /* the test means something */
  assert_true(same);
  assert_close(variation_deg, 12.25, 0, "variation");
  assert_true(comma_after); /* the process locale is as it was */
}

static void the_text_is_laid_out_for_people_and_for_differences(void **state) {
  static const char want[] =
      "{\n"
      "  \"format\": \"oxbow-lesson\",\n"
      "  \"version\": 1,\n"
      "  \"title\": \"\",\n"
      "  \"cases\": [\n"
      "    {\n"
      "      \"name\": \"A hold\",\n"
      "      \"hold\": {\n"
      "        \"fix\": \"FIX\",\n"
      "        \"inbound_deg\": 360,\n"
      "        \"turns\": \"left\",\n"
      "        \"leg\": { \"by\": \"distance\", \"nm\": 4.5, \"end\": \"outbound\" },\n"
      "        \"altitude_ft\": 5000,\n"
      "        \"limit_kias\": null,\n"
      "        \"ends\": \"circuits\",\n"
      "        \"efc\": \"07:05\"\n"
      "      },\n"
      "      \"arrival\": { \"heading_deg\": 360, \"distance_nm\": 5 },\n"
      "      \"aircraft\": {\n"
      "        \"ias_kt\": 100,\n"
      "        \"isa_dev_c\": 0,\n"
      "        \"rate_deg_s\": 3,\n"
      "        \"max_bank_deg\": 30,\n"
      "        \"turn_by\": \"lesser\"\n"
      "      },\n"
      "      \"wind\": [\n"
      "        { \"altitude_ft\": 3000, \"from_deg\": 340, \"kt\": 15, \"north\": \"true\" },\n"
      "        { \"altitude_ft\": 6000, \"from_deg\": 360, \"kt\": 25, \"north\": \"magnetic\" }\n"
      "      ],\n"
      "      \"variation_deg\": 0,\n"
      "      \"technique\": {\n"
      "        \"timing\": \"inbound\",\n"
      "        \"clock\": \"abeam_or_level\",\n"
      "        \"drift\": \"exact\",\n"
      "        \"outbound\": \"exact\",\n"
      "        \"intercept_deg\": 30,\n"
      "        \"entry\": \"auto\",\n"
      "        \"sector\": \"heading\",\n"
      "        \"entry_s\": 60,\n"
      "        \"entry_line\": \"heading\",\n"
      "        \"reaction_s\": 0,\n"
      "        \"lead\": \"exact\",\n"
      "        \"roll_s\": 0,\n"
      "        \"circuits\": 3\n"
      "      }\n"
      "    }\n"
      "  ]\n"
      "}\n";
  ox_lesson *lesson = ox_lesson_new();
  ox_case *c = &lesson->cases[0].c;
  c->hold.turns = OX_TURNS_LEFT;
  c->hold.leg_by = OX_LEG_BY_DISTANCE;
  c->hold.leg_nm = 4.5;
  c->hold.efc_min = 7 * 60 + 5;
  c->variation_deg = -0.0;
  c->wind_count = 2;
  c->wind[0] = (ox_wind_row){3000, 340, 15, OX_NORTH_TRUE};
  c->wind[1] = (ox_wind_row){6000, 360, 25, OX_NORTH_MAGNETIC};
  char *text = assert_round_trip(lesson, "laid out");
  assert_string_equal(text, want);
  free(text);
  ox_lesson_free(lesson);
}

static ox_lesson *read_kept(void) {
  size_t length;
  char *text = file_text(data_path("kept.oxbow"), &length);
  ox_lesson *lesson = parse_sound(text, "kept.oxbow");
  free(text);
  return lesson;
}

static void assert_holds(const char *text, const char *fragment) {
  if (!strstr(text, fragment)) print_error("not in the text: %s\n", fragment);
  assert_non_null(strstr(text, fragment));
}

static void unknown_keys_are_kept_at_every_level(void **state) {
  ox_lesson *lesson = read_kept();
  char *text = assert_round_trip(lesson, "kept");
  assert_holds(text, "\"course\": { \"school\": \"Lakeside\", \"lessons\": [1, 2.50, "
                     "12345678901234567890, 1e999] }");
  assert_holds(text, "\"note\": \"shown to the students first\"");
  assert_holds(text, "\"chart\": { \"sheet\": \"NE-2\", \"dated\": null }");
  assert_holds(text, "\"leg\": { \"note\": \"as published\" }");
  assert_holds(text, "\"Inbound_deg\": \"another key\"");
  assert_holds(text, "\"hold.turns\": \"a key with a dot\"");
  assert_holds(text, "\"from\": \"the lake\"");
  assert_holds(text, "\"type\": \"trainer\",");
  assert_holds(text, "\"doors\": true");
  assert_holds(text, "\"kt\": 15, \"north\": \"true\", \"station\": \"a\" }");
  assert_holds(text, "\"kt\": 25, \"north\": \"true\", \"station\": \"b\" }");
  assert_holds(text, "\"why\": [\"drift\", { \"deep\": [[]] }]");
  assert_holds(text, "\"gusts_kt\": 12 }");
  assert_holds(text, "\"elevation_ft\": 0, \"channel\": 57 }");
  assert_holds(text, "\"kt\": 9, \"north\": \"true\", \"heard\": \"tower\" }");
  free(text);
  ox_lesson_free(lesson);
}

static void unknown_keys_stay_when_the_case_changes(void **state) {
  ox_lesson *lesson = read_kept();
  ox_case *c = &lesson->cases[0].c;
  c->hold.inbound_deg = 100;
  c->hold.leg_s = 90;
  c->wind[1].kt = 30;
  lesson->cases[1].c.wind_count = 0; /* its shape changes: its keys go with it */
  char *text = assert_round_trip(lesson, "changed");
  assert_holds(text, "\"inbound_deg\": 100,");
  assert_holds(text, "\"leg\": { \"by\": \"time\", \"s\": 90, \"note\": \"as published\" }");
  assert_holds(text, "\"kt\": 30, \"north\": \"true\", \"station\": \"b\" }");
  assert_null(strstr(text, "gusts_kt"));
  assert_holds(text, "\"channel\": 57");
  free(text);
  c = &lesson->cases[1].c;
  c->hold.station.given = false;
  c->wind_change_count = 0;
  text = ox_lesson_to_text(lesson);
  assert_null(strstr(text, "station\": {"));
  assert_null(strstr(text, "channel"));
  assert_null(strstr(text, "wind_changes"));
  assert_null(strstr(text, "heard"));
  ox_lesson_free(parse_sound(text, "without a station"));
  free(text);
  ox_lesson_free(lesson);
}

static void a_known_key_that_was_cleared_does_not_come_back(void **state) {
  ox_lesson *lesson = parse_sound(
      lesson_with("\"aircraft\": { \"ias_kt\": 100, \"tas_kt\": 110 },"
                  " \"arrival\": { \"heading_deg\": 1, \"fix_at\": \"10:00\" },"
                  " \"wind_changes\": [ { \"at_min\": 2, \"kt\": 0 } ],"
                  " \"hold\": { \"inbound_deg\": 1, \"limit_kias\": 175, \"efc\": \"10:00\","
                  " \"climb_to_ft\": 9000, \"climb_ft_min\": 900,"
                  " \"leg\": { \"by\": \"time\", \"s\": 90 } }"),
      "before");
  ox_case *c = &lesson->cases[0].c;
  c->aircraft.tas_kt = 0;
  c->hold.limit_kias = 0;
  c->hold.efc_min = -1;
  c->hold.leg_s = 0;
  c->hold.climb_to_ft = 0;
  c->hold.climb_ft_min = ox_case_default().hold.climb_ft_min;
  c->arrival.fix_at_s = -1;
  c->wind_change_count = 0;
  char *text = assert_round_trip(lesson, "cleared");
  assert_null(strstr(text, "climb"));
  assert_null(strstr(text, "fix_at"));
  assert_null(strstr(text, "wind_changes"));
  assert_null(strstr(text, "tas_kt"));
  assert_null(strstr(text, "leg"));
  assert_holds(text, "\"limit_kias\": null");
  assert_holds(text, "\"efc\": null");
  free(text);
  ox_lesson_free(lesson);
}

static void the_keys_of_climb_station_times_and_changes_stand_in_order(void **state) {
  ox_lesson *lesson = ox_lesson_new();
  ox_case *c = &lesson->cases[0].c;
  c->hold.leg_by = OX_LEG_BY_DISTANCE;
  c->hold.leg_nm = 4;
  c->hold.station.given = true;
  c->hold.station.radial_deg = 60;
  c->hold.station.nm = 12.5;
  c->hold.station.elevation_ft = 800;
  c->hold.ends = OX_HOLD_TO_EFC;
  c->hold.climb_to_ft = 7000;
  c->arrival.fix_at_s = 18 * 3600 + 5 * 60;
  c->wind_change_count = 1;
  c->wind_changes[0] = (ox_wind_change){4.5, 270, 25, OX_NORTH_MAGNETIC};
  char *text = assert_round_trip(lesson, "every new key");
  assert_holds(text, "        \"leg\": {\n"
                     "          \"by\": \"distance\",\n"
                     "          \"nm\": 4,\n"
                     "          \"end\": \"outbound\",\n"
                     "          \"station\": { \"radial_deg\": 60, \"nm\": 12.5,"
                     " \"elevation_ft\": 800 }\n"
                     "        },\n");
  assert_holds(text, "        \"ends\": \"efc\",\n"
                     "        \"climb_to_ft\": 7000,\n"
                     "        \"climb_ft_min\": 500,\n"
                     "        \"efc\": null\n");
  assert_holds(text, "\"distance_nm\": 5, \"fix_at\": \"18:05\" },");
  assert_holds(text, "      \"wind\": null,\n"
                     "      \"wind_changes\": [{ \"at_min\": 4.5,"
                     " \"from_deg\": 270,"
                     " \"kt\": 25, \"north\": \"magnetic\" }],\n"
                     "      \"variation_deg\": 0,\n");
  free(text);
  c->arrival.fix_at_s = 7 * 3600 + 9;
  text = assert_round_trip(lesson, "with seconds");
  assert_holds(text, "\"fix_at\": \"07:00:09\"");
  free(text);
  ox_lesson_free(lesson);
}

static void what_plays_no_part_is_not_written(void **state) {
  ox_lesson *lesson = ox_lesson_new();
  ox_case *c = &lesson->cases[0].c;
  c->hold.climb_ft_min = 900; /* in level flight */
  c->hold.station.radial_deg = 60; /* of no station */
  char *text = ox_lesson_to_text(lesson);
  assert_null(strstr(text, "climb"));
  assert_null(strstr(text, "station"));
  assert_null(strstr(text, "fix_at"));
  assert_null(strstr(text, "wind_changes"));
  free(text);
  c->hold.station.given = true; /* but the leg is flown by time, */
  text = ox_lesson_to_text(lesson);
  assert_null(strstr(text, "station"));
  ox_lesson_free(parse_sound(text, "a station for a leg by time"));
  free(text);
  c->hold.leg_by = OX_LEG_BY_DISTANCE; /* or its end is that of the inbound leg */
  c->hold.leg_nm = 4;
  c->hold.leg_end = OX_LEG_END_INBOUND;
  text = ox_lesson_to_text(lesson);
  assert_null(strstr(text, "station"));
  ox_lesson_free(parse_sound(text, "a station for an inbound leg"));
  free(text);
  c->hold.leg_end = OX_LEG_END_OUTBOUND;
  text = ox_lesson_to_text(lesson);
  assert_holds(text, "\"station\": { \"radial_deg\": 60, \"nm\": 0, \"elevation_ft\": 0 }");
  free(text);
  ox_lesson_free(lesson);
}

static void one_row_in_a_list_stays_in_a_list(void **state) {
  ox_lesson *lesson = parse_sound(
      lesson_with("\"wind\": [ { \"from_deg\": 10, \"kt\": 5, \"by\": \"balloon\" } ]"), "a list");
  char *text = assert_round_trip(lesson, "a list of one row");
  assert_holds(text, "\"by\": \"balloon\" }]");
  free(text);
  ox_lesson_free(lesson);
}

static void a_newer_lesson_keeps_its_version_and_its_keys(void **state) {
  ox_messages messages = {0};
  ox_lesson *lesson = NULL;
  assert_int_equal(ox_lesson_read(data_path("newer.oxbow"), &lesson, &messages), OX_ADVISORY);
  ox_messages_clear(&messages);
  char *text = ox_lesson_to_text(lesson);
  assert_holds(text, "\"version\": 7,");
  assert_holds(text, "\"weather\": \"fine\"");
  free(text);
  ox_lesson_free(lesson);
}

static void numbers_are_the_shortest_that_read_back(void **state) {
  static const struct {
    double value;
    const char *want;
  } rows[] = {
      {0, "0"},           {-0.0, "0"},          {1, "1"},
      {-12, "-12"},       {240.5, "240.5"},     {0.1, "0.1"},
      {0.1 + 0.2, "0.30000000000000004"},       {1.0 / 3, "0.3333333333333333"},
      {1e22, "1e+22"},    {5e-324, "4.94065645841247e-324"},
      {1.2345678901234568e17, "1.2345678901234568e+17"}, {1e-7, "1e-07"},
      {(double)NAN, "null"},      {(double)INFINITY, "null"},   {-(double)INFINITY, "null"},
      {360, "360"},       {99999, "99999"},     {100000000, "100000000"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    char text[OX_JSON_NUMBER_TEXT_BYTES];
    ox_json_number_text(text, rows[i].value);
    assert_string_equal(text, rows[i].want);
  }
  ox_random r = {3};
  for (int i = 0, cases = ox_test_cases(100000); i < cases; i++) {
    uint64_t bits = ox_random_bits(&r);
    double value;
    memcpy(&value, &bits, sizeof value);
    if (!isfinite(value)) continue;
    char text[OX_JSON_NUMBER_TEXT_BYTES];
    ox_json_number_text(text, value);
    assert_true(strtod(text, NULL) == value);
  }
}

static void what_a_text_cannot_hold_is_made_readable(void **state) {
  ox_lesson *lesson = ox_lesson_new();
  ox_case *c = &lesson->cases[0].c;
  strcpy(c->name, "a\nb\xff");
  memset(c->hold.fix, 'x', sizeof c->hold.fix); /* without an end */
  memset(lesson->title, '\xc3', sizeof lesson->title);
  char *text = ox_lesson_to_text(lesson);
  ox_lesson *again = parse_sound(text, "made readable");
  assert_string_equal(again->cases[0].c.name, "a b?");
  assert_int_equal(strlen(again->cases[0].c.hold.fix), OX_FIX_NAME_BYTES - 1);
  ox_lesson_free(again);
  free(text);
  strcpy(c->hold.fix, "  ");
  text = ox_lesson_to_text(lesson);
  again = parse_sound(text, "a blank fix");
  assert_string_equal(again->cases[0].c.hold.fix, "FIX");
  ox_lesson_free(again);
  free(text);
  ox_lesson_free(lesson);
}

static void cases_are_inserted_copied_and_removed(void **state) {
  ox_lesson *lesson = read_kept();
  const ox_lesson_case *first = &lesson->cases[0];
  assert_int_equal(ox_lesson_insert(lesson, 1, &first->c, first), OX_OK);
  assert_int_equal(lesson->case_count, 3);
  assert_true(ox_case_equal(&lesson->cases[0].c, &lesson->cases[1].c));
  assert_close(lesson->cases[2].c.hold.inbound_deg, 90, 0, "the one that was second");
  char *text = assert_round_trip(lesson, "a copy");
  const char *note = strstr(text, "shown to the students first");
  assert_non_null(note);
  assert_non_null(strstr(note + 1, "shown to the students first"));
  free(text);
  assert_int_equal(ox_lesson_insert(lesson, 4, &lesson->cases[0].c, NULL), OX_ERROR);
  assert_int_equal(ox_lesson_remove(lesson, 3), OX_ERROR);
  assert_int_equal(ox_lesson_remove(lesson, 0), OX_OK);
  assert_int_equal(ox_lesson_remove(lesson, 0), OX_OK);
  assert_close(lesson->cases[0].c.hold.inbound_deg, 90, 0, "the last one");
  assert_int_equal(ox_lesson_remove(lesson, 0), OX_ERROR);
  assert_int_equal(lesson->case_count, 1);
  ox_case c = lesson->cases[0].c;
  while (lesson->case_count < OX_LESSON_CASES_MAX)
    assert_int_equal(ox_lesson_insert(lesson, 0, &c, NULL), OX_OK);
  assert_int_equal(ox_lesson_insert(lesson, 0, &c, NULL), OX_ERROR);
  free(assert_round_trip(lesson, "as many as may be"));
  ox_lesson_free(lesson);
}

static void visit_example(const char *path, void *context) {
  size_t length;
  char *text = file_text(path, &length);
  ox_lesson *lesson = parse_sound(text, path);
  free(assert_round_trip(lesson, path));
  ox_lesson_free(lesson);
  free(text);
}

static void example_lessons_come_back_equal(void **state) {
  const char *directory = getenv("OXBOW_LESSONS");
  assert_non_null(directory);
  assert_true(each_lesson(directory, visit_example, NULL) >= 1);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_text_is_laid_out_for_people_and_for_differences),
      cmocka_unit_test(numbers_are_the_shortest_that_read_back),
      cmocka_unit_test(twenty_thousand_random_cases_come_back_equal),
      cmocka_unit_test(the_decimal_comma_changes_nothing),
      cmocka_unit_test(unknown_keys_are_kept_at_every_level),
      cmocka_unit_test(unknown_keys_stay_when_the_case_changes),
      cmocka_unit_test(a_known_key_that_was_cleared_does_not_come_back),
      cmocka_unit_test(the_keys_of_climb_station_times_and_changes_stand_in_order),
      cmocka_unit_test(what_plays_no_part_is_not_written),
      cmocka_unit_test(one_row_in_a_list_stays_in_a_list),
      cmocka_unit_test(a_newer_lesson_keeps_its_version_and_its_keys),
      cmocka_unit_test(what_a_text_cannot_hold_is_made_readable),
      cmocka_unit_test(cases_are_inserted_copied_and_removed),
      cmocka_unit_test(example_lessons_come_back_equal),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
