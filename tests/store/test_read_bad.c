/* Every way in which a lesson can be at fault, and what is said about it. */
#include "bad_files.h"
#include "store_support.h"

#define HEAD "\"format\": \"oxbow-lesson\", \"version\": 1"
#define HOLD "\"hold\": { \"inbound_deg\": 240"
#define AIRCRAFT "\"aircraft\": { \"ias_kt\": 100"
#define ARRIVAL "\"arrival\": { \"heading_deg\": 290"

static void check_bad(const bad_file *bad) {
  ox_messages messages = {0};
  ox_status status;
  const char *text = bad->place == IN_CASE ? lesson_with(bad->text) : bad->text;
  ox_lesson *lesson = parse_text(text, &status, &messages);
  bool as_wanted = status == OX_ERROR && !lesson && messages.count == 1 &&
                   strncmp(messages.text[0], "x.oxbow: ", 9) == 0;
  for (int i = 0; as_wanted && i < 3 && bad->fragments[i]; i++)
    as_wanted = strstr(messages.text[0], bad->fragments[i]) != NULL;
  if (!as_wanted) {
    print_error("%s: status %d, %zu messages, wanted one with %s\n", bad->what, status,
                messages.count, bad->fragments[0]);
    for (size_t i = 0; i < messages.count; i++) print_error("  %s\n", messages.text[i]);
  }
  ox_messages_clear(&messages);
  ox_lesson_free(lesson);
  assert_true(as_wanted);
}

static void every_fault_is_refused_with_its_place_its_value_and_what_is_allowed(void **state) {
  size_t count;
  const bad_file *files = bad_files(&count);
  assert_true(count >= 60);
  for (size_t i = 0; i < count; i++) check_bad(&files[i]);
}

static void the_lesson_that_the_faults_are_put_into_is_sound(void **state) {
  ox_lesson_free(parse_sound(lesson_with(NULL), "the sound lesson"));
  ox_lesson_free(parse_sound(lesson_with(HOLD " }"), "with its own hold"));
  ox_lesson_free(parse_sound(lesson_with(AIRCRAFT " }"), "with its own aircraft"));
  ox_lesson_free(parse_sound(lesson_with(ARRIVAL " }"), "with its own arrival"));
}

static void assert_messages(const char *text, const char *const *wanted) {
  ox_messages messages = {0};
  ox_status status;
  ox_lesson *lesson = parse_text(text, &status, &messages);
  assert_null(lesson);
  assert_int_equal(status, OX_ERROR);
  size_t count = 0;
  for (; wanted[count]; count++) {
    if (count < messages.count && strcmp(messages.text[count], wanted[count]) == 0) continue;
    print_error("message %zu: want %s\n got %s\n", count, wanted[count],
                count < messages.count ? messages.text[count] : "nothing");
    fail();
  }
  for (size_t i = count; i < messages.count; i++) print_error("too many: %s\n", messages.text[i]);
  assert_int_equal(messages.count, count);
  ox_messages_clear(&messages);
}

static void all_faults_of_the_file_are_listed_in_the_order_of_the_file(void **state) {
  static const char *const wanted[] = {
      "x.oxbow: format: \"Lesson\" is not \"oxbow-lesson\"",
      "x.oxbow: case \"One\": hold.inbound_deg: 400 is not a course (0 to 360)",
      "x.oxbow: case \"One\": hold.turns: \"up\" is not \"right\" or \"left\"",
      "x.oxbow: case \"One\": aircraft.ias_kt: 5 is not an indicated airspeed (30 to 400 kt)",
      "x.oxbow: case \"One\": wind[0].kt: -1 is not a wind speed (0 to 250 kt)",
      "x.oxbow: case \"One\": wind[1].altitude_ft: 900 is not above the altitude of the row before "
      "it",
      "x.oxbow: case 2: technique.circuits: 41 is not a number of circuits (1 to 40)",
      "x.oxbow: case 2: hold.inbound_deg: is missing: a course (0 to 360) is needed",
      "x.oxbow: case 2: arrival.heading_deg: is missing: a heading (0 to 360) is needed",
      "x.oxbow: case 2: aircraft.ias_kt: is missing: an indicated airspeed (30 to 400 kt) is "
      "needed, or a true one in aircraft.tas_kt",
      "x.oxbow: case 3: \"three\" is not an object",
      "x.oxbow: title: [] is not a title of one line and at most 199 bytes",
      "x.oxbow: version: is missing: a version (a whole number from 1) is needed",
      NULL,
  };
  assert_messages("{ \"format\": \"Lesson\", \"cases\": [ { \"name\": \"One\","
                  " \"hold\": { \"inbound_deg\": 400, \"turns\": \"up\" },"
                  " \"arrival\": { \"heading_deg\": 1 }, \"aircraft\": { \"ias_kt\": 5 },"
                  " \"wind\": [ { \"altitude_ft\": 1000, \"from_deg\": 1, \"kt\": -1 },"
                  " { \"altitude_ft\": 900, \"from_deg\": 1, \"kt\": 1 } ] },"
                  " { \"technique\": { \"circuits\": 41 } }, \"three\" ], \"title\": [] }",
                  wanted);
}

static void a_fault_is_told_once(void **state) {
  static const char *const section[] = {"x.oxbow: case 1: hold: 5 is not an object",
                                        "x.oxbow: case 1: aircraft: [] is not an object", NULL};
  assert_messages(lesson_with("\"hold\": 5, \"aircraft\": []"), section);
  /* 600 kt is beyond the speed of sound at the default altitude in that cold: only the altitude is
   * at fault here. */
  static const char *const altitude[] = {
      "x.oxbow: case 1: hold.altitude_ft: 99000 is not an altitude (-1500 to 45000 ft)", NULL};
  assert_messages(lesson_with("\"hold\": { \"inbound_deg\": 1, \"altitude_ft\": 99000 },"
                              " \"aircraft\": { \"tas_kt\": 600, \"isa_dev_c\": -60 }"),
                  altitude);
}

static void the_faults_of_stations_and_changes_are_all_told(void **state) {
  static const char *const wanted[] = {
      "x.oxbow: case 1: wind_changes[0].at_min: 0 is not a time (0.1 to 300 minutes)",
      "x.oxbow: case 1: wind_changes[1].kt: is missing: a wind speed (0 to 250 kt) is needed",
      "x.oxbow: case 1: wind_changes[2].at_min: 4 is not later than the change before it",
      "x.oxbow: case 1: hold.leg.station: a station goes only with a leg \"by\" \"distance\" whose "
      "\"end\" is \"outbound\"",
      "x.oxbow: case 1: hold.leg.station.nm: is missing: a distance (0 to 200 NM) is needed",
      "x.oxbow: case 1: hold.leg.station.radial_deg: is missing: a radial (0 to 360) is needed",
      NULL};
  assert_messages(lesson_with("\"hold\": { \"inbound_deg\": 1, \"leg\": { \"by\": \"time\","
                              " \"station\": {} } }, \"wind_changes\": ["
                              " { \"at_min\": 0, \"from_deg\": 1, \"kt\": 1 },"
                              " { \"at_min\": 4, \"from_deg\": 1 },"
                              " { \"at_min\": 4, \"from_deg\": 1, \"kt\": 1 } ]"),
                  wanted);
  /* 400 kt indicated is beyond the speed of sound at many an altitude: only the climb is at
   * fault here. */
  static const char *const climb[] = {
      "x.oxbow: case 1: hold.climb_to_ft: 99000 is not an altitude (-1500 to 45000 ft)", NULL};
  assert_messages(lesson_with("\"hold\": { \"inbound_deg\": 1, \"altitude_ft\": 45000,"
                              " \"climb_to_ft\": 99000 }, \"aircraft\": { \"ias_kt\": 400 }"),
                  climb);
}

static void faults_between_keys_are_told_beside_others(void **state) {
  static const char *const wanted[] = {
      "x.oxbow: case 1: hold.turns: 7 is not \"right\" or \"left\"",
      "x.oxbow: case 1: aircraft.tas_kt: 600 is not below the speed of sound at this altitude",
      NULL};
  assert_messages(lesson_with("\"hold\": { \"inbound_deg\": 1, \"turns\": 7 },"
                              " \"aircraft\": { \"tas_kt\": 600, \"isa_dev_c\": -60 }"),
                  wanted);
  static const char *const both[] = {
      "x.oxbow: case 1: hold.leg.nm: 0 is not a leg length (0.5 to 60 NM)",
      "x.oxbow: case 1: aircraft.ias_kt: 0 is not an indicated airspeed (30 to 400 kt)", NULL};
  assert_messages(lesson_with("\"hold\": { \"inbound_deg\": 1, \"leg\": { \"by\": \"distance\","
                              " \"nm\": 0 } }, \"aircraft\": { \"ias_kt\": 0 }"),
                  both);
}

static void assert_one(const char *bytes, size_t length, const char *name, const char *fragment) {
  ox_messages messages = {0};
  ox_lesson *lesson = NULL;
  ox_status status = ox_lesson_parse(bytes, length, name, &lesson, &messages);
  bool found = status == OX_ERROR && messages.count == 1 && strstr(messages.text[0], fragment);
  if (!found)
    print_error("wanted %s, got %s\n", fragment, messages.count ? messages.text[0] : "nothing");
  assert_true(found);
  assert_null(lesson);
  ox_messages_clear(&messages);
}

static void nothing_and_zero_bytes_are_named(void **state) {
  assert_one("", 0, "x.oxbow", "x.oxbow: the file is empty");
  assert_one("{ \0 }", 5, "x.oxbow", "line 1, column 3: a zero byte");
  assert_one("{ \"a\": \"\0\" }", 12, "x.oxbow", "line 1, column 9: a zero byte");
  assert_one("\xef\xbb\xbf", 3, "x.oxbow", "a value was expected, but the text ends");
}

static void an_odd_file_name_cannot_break_the_message(void **state) {
  assert_one("", 0, "a\nb\xff\x1b[31m", "a\\nb\\xff\\u001b[31m: the file is empty");
}

static void a_file_over_the_limit_is_refused_and_one_at_the_limit_is_read(void **state) {
  const char *sound = lesson_with(NULL);
  size_t length = strlen(sound), limit = OX_LESSON_FILE_MAX_BYTES;
  char *text = malloc(limit + 1);
  assert_non_null(text);
  memset(text, ' ', limit + 1);
  memcpy(text, sound, length);
  assert_one(text, limit + 1, "x.oxbow", "larger than a lesson may be (4 MiB)");
  ox_messages messages = {0};
  ox_lesson *lesson = NULL;
  assert_int_equal(ox_lesson_parse(text, limit, "x.oxbow", &lesson, &messages), OX_OK);
  ox_lesson_free(lesson);
  free(text);
}

static void nesting_is_bounded(void **state) {
  char text[4096], nest[256];
  for (int depth = 50; depth <= 80; depth++) {
    memset(nest, '[', (size_t)depth);
    memset(nest + depth, ']', (size_t)depth);
    nest[2 * depth] = '\0';
    snprintf(text, sizeof text, "{ \"deep\": %s, %s", nest, lesson_with(NULL) + 1);
    if (depth + 1 <= 64)
      ox_lesson_free(parse_sound(text, "nested as deep as is allowed"));
    else
      assert_one(text, strlen(text), "x.oxbow", "nested more than 64 deep");
  }
  size_t length = 1000000;
  char *open = malloc(length);
  assert_non_null(open);
  memset(open, '[', length);
  assert_one(open, length, "x.oxbow", "line 1, column 65: brackets are nested more than 64 deep");
  free(open);
}

/* `count` times the member, as one text; freed with free(). */
static char *repeated(const char *before, const char *format, int count, const char *after) {
  size_t bytes = strlen(before) + strlen(after) + (size_t)count * (strlen(format) + 16) + 1;
  char *text = malloc(bytes);
  assert_non_null(text);
  size_t at = (size_t)snprintf(text, bytes, "%s", before);
  for (int i = 0; i < count; i++) {
    if (i > 0) text[at++] = ',';
    char *number = strchr(format, '#');
    size_t head = number ? (size_t)(number - format) : strlen(format);
    at += (size_t)snprintf(text + at, bytes - at, "%.*s", (int)head, format);
    if (number) at += (size_t)snprintf(text + at, bytes - at, "%d%s", i, number + 1);
  }
  snprintf(text + at, bytes - at, "%s", after);
  return text;
}

static void too_many_cases_rows_and_keys_are_refused(void **state) {
  static const char one_case[] = "{" HOLD "}," ARRIVAL "}," AIRCRAFT "} }";
  char *text = repeated("{ " HEAD ", \"cases\": [", one_case, 201, "] }");
  assert_one(text, strlen(text), "x.oxbow", "cases: 201 cases is not a list of 1 to 200 cases");
  free(text);
  text = repeated("{ " HEAD ", \"cases\": [", one_case, 200, "] }");
  ox_lesson *lesson = parse_sound(text, "200 cases");
  assert_int_equal(lesson->case_count, 200);
  assert_string_equal(lesson->cases[199].c.name, "Case 200");
  ox_lesson_free(lesson);
  free(text);
  text = repeated("{" HEAD ", \"cases\": [ {" HOLD "}," ARRIVAL "}," AIRCRAFT "}, \"wind\": [",
                  "{ \"altitude_ft\": 1#, \"from_deg\": 1, \"kt\": 1 }", 13, "] } ] }");
  assert_one(text, strlen(text), "x.oxbow", "wind: 13 rows is not a number of wind rows");
  free(text);
  text = repeated("{", "\"k#\": 0", 257, "}");
  assert_one(text, strlen(text), "x.oxbow", "x.oxbow: has more than 256 keys");
  free(text);
}

static void names_may_fill_their_bytes_and_no_more(void **state) {
  char member[400], name[161];
  memset(name, 'n', sizeof name);
  name[159] = '\0';
  snprintf(member, sizeof member, "\"name\": \"%s\"", name);
  ox_lesson *lesson = parse_sound(lesson_with(member), "a name of 159 bytes");
  assert_string_equal(lesson->cases[0].c.name, name);
  ox_lesson_free(lesson);
  name[159] = 'n';
  name[160] = '\0';
  snprintf(member, sizeof member, "\"name\": \"%s\"", name);
  assert_one(lesson_with(member), strlen(lesson_with(member)), "x.oxbow",
             "case 1: name: \"nnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnn…\" is not a name");
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_lesson_that_the_faults_are_put_into_is_sound),
      cmocka_unit_test(every_fault_is_refused_with_its_place_its_value_and_what_is_allowed),
      cmocka_unit_test(all_faults_of_the_file_are_listed_in_the_order_of_the_file),
      cmocka_unit_test(a_fault_is_told_once),
      cmocka_unit_test(the_faults_of_stations_and_changes_are_all_told),
      cmocka_unit_test(faults_between_keys_are_told_beside_others),
      cmocka_unit_test(nothing_and_zero_bytes_are_named),
      cmocka_unit_test(an_odd_file_name_cannot_break_the_message),
      cmocka_unit_test(a_file_over_the_limit_is_refused_and_one_at_the_limit_is_read),
      cmocka_unit_test(nesting_is_bounded),
      cmocka_unit_test(too_many_cases_rows_and_keys_are_refused),
      cmocka_unit_test(names_may_fill_their_bytes_and_no_more),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
