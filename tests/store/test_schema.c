/* The schema says what the reader says: the same keys, ranges, words and defaults as the table of
 * fields, and the same verdict on every lesson of the tests. */
#include "bad_files.h"
#include "json.h"
#include "mini_schema.h"
#include "oxbow/fix.h"
#include "store_support.h"

static mini_schema schema;

static int load_schema(void **state) {
  char path[4096];
  const char *lessons = getenv("OXBOW_LESSONS");
  if (!lessons) return -1;
  snprintf(path, sizeof path, "%s/../lesson-schema.json", lessons);
  size_t length;
  char *text = file_text(path, &length);
  ox_json_fault fault;
  schema.root = ox_json_parse(text, length, &fault);
  free(text);
  return schema.root ? 0 : -1;
}

static int free_schema(void **state) {
  cJSON_Delete((cJSON *)(uintptr_t)schema.root);
  return 0;
}

/* The first part that is a schema of the kind wanted: the schema itself or one of its anyOf. */
static const cJSON *branch(const cJSON *part, const char *type) {
  const cJSON *own = ox_json_member(part, "type");
  if (cJSON_IsString(own) && strcmp(own->valuestring, type) == 0) return part;
  const cJSON *choices = ox_json_member(part, "anyOf");
  for (const cJSON *any = choices ? choices->child : NULL; any; any = any->next) {
    const cJSON *followed = mini_schema_follow(&schema, any);
    const cJSON *found = branch(followed ? followed : any, type);
    if (found) return found;
  }
  return NULL;
}

static const cJSON *property(const cJSON *object, const char *key) {
  const cJSON *followed = mini_schema_follow(&schema, object);
  const cJSON *type = branch(followed ? followed : object, "object");
  return type ? ox_json_member(ox_json_member(type, "properties"), key) : NULL;
}

/* The schema of a path such as "hold.leg.s" from a schema of an object. */
static const cJSON *schema_at(const cJSON *from, const char *path) {
  char part[48];
  const char *dot = strchr(path, '.');
  snprintf(part, sizeof part, "%.*s", dot ? (int)(dot - path) : (int)strlen(path), path);
  const cJSON *inner = property(from, part);
  return dot && inner ? schema_at(inner, dot + 1) : inner;
}

static const cJSON *definition(const char *name) {
  return ox_json_member(ox_json_member(schema.root, "$defs"), name);
}

static const cJSON *case_schema(void) {
  return definition("case");
}

static double number_at(const cJSON *part, const char *key) {
  const cJSON *number = ox_json_member(part, key);
  return cJSON_IsNumber(number) ? number->valuedouble : (double)NAN;
}

static void check_choices(const ox_field *field, const cJSON *part) {
  const cJSON *words = ox_json_member(part, "enum");
  assert_true(cJSON_IsArray(words));
  int i = 0;
  for (const cJSON *word = words->child; word; word = word->next, i++) {
    assert_non_null(field->choices[i]);
    assert_string_equal(word->valuestring, field->choices[i]);
  }
  assert_null(field->choices[i]);
}

static void check_range(const ox_field *field, const cJSON *part) {
  const char *type = field->kind == OX_FIELD_WHOLE ? "integer" : "number";
  const cJSON *numbers = branch(part, type);
  if (!numbers) print_error("%s has no %s in the schema\n", field->key, type);
  assert_non_null(numbers);
  assert_close(number_at(numbers, "minimum"), field->min, 0, field->key);
  assert_close(number_at(numbers, "maximum"), field->max, 0, field->key);
  cJSON *zero = cJSON_CreateNumber(0), *null = cJSON_CreateNull();
  bool zero_ok = mini_schema_accepts(&schema, part, zero);
  bool null_ok = mini_schema_accepts(&schema, part, null);
  cJSON_Delete(zero);
  cJSON_Delete(null);
  assert_int_equal(zero_ok, ox_field_accepts(field, 0));
  assert_int_equal(null_ok, field->zero_is_absent);
}

static void check_default(const ox_field *field, const cJSON *part) {
  const cJSON *given = ox_json_member(part, "default");
  ox_case standard = ox_case_default();
  double value = ox_field_get(field, &standard);
  if (!given) { /* what has to be given has no default in the format */
    assert_true(strcmp(field->key, "hold.inbound_deg") == 0 ||
                strcmp(field->key, "hold.leg.station.radial_deg") == 0 ||
                strcmp(field->key, "hold.leg.station.nm") == 0 ||
                strcmp(field->key, "arrival.heading_deg") == 0 ||
                strcmp(field->key, "aircraft.ias_kt") == 0);
  } else if (field->kind == OX_FIELD_CHOICE) {
    assert_string_equal(given->valuestring, field->choices[(int)value]);
  } else if (cJSON_IsNull(given)) {
    assert_close(value, 0, 0, field->key);
  } else {
    assert_close(given->valuedouble, value, 0, field->key);
  }
}

static void check_field(const ox_field *field, const cJSON *part) {
  if (!part) print_error("%s is not in the schema\n", field->key);
  assert_non_null(part);
  if (field->kind == OX_FIELD_CHOICE)
    check_choices(field, part);
  else
    check_range(field, part);
}

static void every_field_stands_in_the_schema_with_its_range_words_and_default(void **state) {
  size_t count;
  const ox_field *fields = ox_fields(&count);
  assert_true(count > 20);
  for (size_t i = 0; i < count; i++) {
    const cJSON *part = schema_at(case_schema(), fields[i].key);
    check_field(&fields[i], part);
    check_default(&fields[i], part);
  }
  fields = ox_wind_fields(&count);
  assert_int_equal(count, 4);
  for (size_t i = 0; i < count; i++)
    check_field(&fields[i], property(definition("wind_row"), fields[i].key));
  fields = ox_wind_change_fields(&count);
  assert_int_equal(count, 4);
  for (size_t i = 0; i < count; i++)
    check_field(&fields[i], property(definition("wind_change"), fields[i].key));
}

static void every_number_of_a_point_stands_in_the_schema(void **state) {
  size_t count;
  const ox_field *fields = ox_point_fields(&count);
  for (size_t i = 0; i < count; i++)
    check_field(&fields[i], property(definition("point"), fields[i].key));
  const cJSON *properties = ox_json_member(definition("point"), "properties");
  /* and its name, and the two that it may be counted from */
  assert_int_equal(cJSON_GetArraySize(properties), (int)count + 3);
}

/* Counts the scalar keys below an object's schema, so that none is there that the table lacks. */
static int count_keys(const cJSON *object) {
  const cJSON *followed = mini_schema_follow(&schema, object);
  const cJSON *type = branch(followed ? followed : object, "object");
  const cJSON *properties = type ? ox_json_member(type, "properties") : NULL;
  if (!properties || type == definition("point")) return 1; /* a point has points inside */
  int count = 0;
  for (const cJSON *key = properties->child; key; key = key->next)
    if (!cJSON_IsFalse(key)) count += count_keys(key);
  return count;
}

static void the_schema_knows_no_other_keys(void **state) {
  size_t count, wind_count, change_count;
  ox_fields(&count);
  ox_wind_fields(&wind_count);
  ox_wind_change_fields(&change_count);
  /* besides the fields: name, hold.fix, hold.efc, arrival.fix_at, arrival.present, lost_radio.eta,
   * shown.fix, shown.efc, the keys of the wind, wind_changes and ink.strokes, which are lists */
  assert_int_equal(count_keys(case_schema()), (int)count + 8 + (int)wind_count + 2);
  assert_int_equal(count_keys(definition("wind_change")), (int)change_count);
}

static bool schema_accepts(const char *text, bool *is_json) {
  ox_json_fault fault;
  cJSON *tree = ox_json_parse(text, strlen(text), &fault);
  *is_json = tree != NULL;
  bool accepted = tree && mini_schema_accepts(&schema, schema.root, tree);
  cJSON_Delete(tree);
  if (schema.unknown) print_error("keyword %s\n", schema.unknown);
  assert_null(schema.unknown);
  return accepted;
}

static void the_schema_refuses_what_the_reader_refuses(void **state) {
  size_t count;
  const bad_file *bad = bad_files(&count);
  int judged = 0;
  for (size_t i = 0; i < count; i++) {
    bool is_json;
    bool accepted =
        schema_accepts(bad[i].place == IN_CASE ? lesson_with(bad[i].text) : bad[i].text, &is_json);
    if (!is_json) continue; /* no schema ever sees it */
    bool wanted = bad[i].schema == BLIND;
    if (accepted != wanted) print_error("%s: %s\n", bad[i].what, accepted ? "accepted" : "refused");
    assert_int_equal(accepted, wanted);
    judged++;
  }
  assert_true(judged >= 60);
}

static void assert_accepted(const char *text, const char *what) {
  bool is_json;
  bool accepted = schema_accepts(text, &is_json);
  if (!accepted) print_error("%s: refused by the schema\n", what);
  assert_true(accepted);
}

static void the_schema_accepts_what_the_writer_writes(void **state) {
  ox_random r = {9};
  for (int i = 0, cases = ox_test_cases(2000); i < cases; i++) {
    ox_lesson *lesson = ox_lesson_new();
    lesson->cases[0].c = random_case(&r);
    char *text = ox_lesson_to_text(lesson);
    assert_accepted(text, text);
    free(text);
    ox_lesson_free(lesson);
  }
}

static void visit_example(const char *path, void *context) {
  size_t length;
  char *text = file_text(path, &length);
  assert_accepted(text, path);
  free(text);
}

static void the_schema_accepts_the_examples(void **state) {
  static const char *const files[] = {"full.oxbow", "least.oxbow", "kept.oxbow"};
  for (size_t i = 0; i < sizeof files / sizeof *files; i++)
    visit_example(data_path(files[i]), NULL);
  assert_true(each_lesson(getenv("OXBOW_LESSONS"), visit_example, NULL) >= 1);
}

static const char by_time[] =
    "\"hold\": { \"inbound_deg\": 1, \"leg\": { \"by\": \"time\", \"s\": 60 } },"
    " \"wind\": { \"from_deg\": 1, \"kt\": 9 }, \"technique\": {}";
static const char by_dme[] =
    "\"hold\": { \"inbound_deg\": 1, \"leg\": { \"by\": \"distance\", \"nm\": 4,"
    " \"station\": { \"radial_deg\": 60, \"nm\": 9 } } },"
    " \"wind_changes\": [ { \"at_min\": 4, \"from_deg\": 1, \"kt\": 9 } ], \"technique\": {}";

static const char with_optional[] =
    "\"hold\": { \"inbound_deg\": 1 }, \"fuel\": {}, \"clock\": {}, \"lost_radio\": {},"
    " \"shown\": {}";
static const char at_a_place[] =
    "\"hold\": { \"inbound_deg\": 1, \"fix\": { \"lat_deg\": 46, \"lon_deg\": 7 } },"
    " \"arrival\": { \"heading_deg\": 1, \"present\": { \"radial_deg\": 9, \"nm\": 5,"
    " \"from\": { \"lat_deg\": 46, \"lon_deg\": 7 } } }";
static const char one_ahead[] =
    "\"hold\": { \"inbound_deg\": 1, \"fix\": { \"ahead_nm\": 4 } }";
static const char by_station[] =
    "\"hold\": { \"inbound_deg\": 1, \"fix\": { \"lat_deg\": 46, \"lon_deg\": 7 },"
    " \"leg\": { \"by\": \"distance\", \"nm\": 4, \"station\": { \"lat_deg\": 46,"
    " \"lon_deg\": 7.1 } } }";

/* A sound lesson with the value at a path of its case replaced; "list.0.key" is in the first of a
 * list. */
static void replace_value(char *text, size_t bytes, const char *members, const char *path,
                          const char *value) {
  char part[40];
  cJSON *tree = cJSON_Parse(lesson_with(members));
  assert_non_null(tree);
  cJSON *at = ox_json_member(tree, "cases")->child;
  for (const char *dot; (dot = strchr(path, '.')); path = dot + 1) {
    snprintf(part, sizeof part, "%.*s", (int)(dot - path), path);
    at = cJSON_IsArray(at) ? at->child : ox_json_member(at, part);
  }
  cJSON_DeleteItemFromObjectCaseSensitive(at, path);
  cJSON_AddItemToObject(at, path, cJSON_Parse(value));
  bool printed = cJSON_PrintPreallocated(tree, text, (int)bytes, false);
  cJSON_Delete(tree);
  assert_true(printed);
}

/* Whether both take it; the test fails where they differ. */
static bool agreed_verdict(const char *text) {
  bool is_json;
  bool by_schema = schema_accepts(text, &is_json);
  ox_messages messages = {0};
  ox_status status;
  ox_lesson *lesson = parse_text(text, &status, &messages);
  /* A schema sees a name, but not whether a point has it, nor how far places are apart. */
  bool blind = by_schema && messages.count == 1 &&
               (strstr(messages.text[0], "is not the name of a point of the lesson") ||
                strstr(messages.text[0], "is more than 200 NM from the fix"));
  if (!blind && by_schema != (lesson != NULL))
    print_error("%s\nschema: %d, reader: %s\n", text, by_schema,
                messages.count ? messages.text[0] : "accepts");
  if (!blind) assert_int_equal(by_schema, lesson != NULL);
  ox_lesson_free(lesson);
  ox_messages_clear(&messages);
  return by_schema && !blind;
}

static void reader_and_schema_agree(const char *members, const char *const *paths, size_t count) {
  static const char *const values[] = {
      "null",      "0",           "-1",         "1",           "7.5",    "30",       "60",
      "360",       "361",         "5000",       "true",        "\"\"",   "\" \"",    "\"right\"",
      "\"exact\"", "\"track\"",   "\"time\"",   "\"distance\"", "[]",     "{}",       "[{}]",
      "\"true\"",  "\"inbound\"", "\"12:30\"",  "\"24:00\"",  "0.05",   "\"12:30:59\"", "\"bank\"",
      "\"none\"",  "\"efc\"",     "{ \"nm\": 0 }",
  };
  int accepted = 0, refused = 0;
  for (size_t p = 0; p < count; p++)
    for (size_t v = 0; v < sizeof values / sizeof *values; v++) {
      char text[1200];
      replace_value(text, sizeof text, members, paths[p], values[v]);
      if (agreed_verdict(text))
        accepted++;
      else
        refused++;
    }
  assert_true(accepted > 15 && refused > 50);
}

static void reader_and_schema_agree_on_every_value_at_every_key(void **state) {
  static const char *const timed[] = {
      "name", "wind", "variation_deg", "technique", "hold.fix", "hold.efc", "hold.leg",
      "hold.turns", "hold.altitude_ft", "hold.limit_kias", "technique.drift",
      "technique.circuits", "hold.leg.by", "hold.leg.s", "hold.leg.nm", "hold.leg.end", "wind.kt",
      "wind.from_deg", "wind.altitude_ft", "wind.north", "aircraft.tas_kt", "aircraft.ias_kt",
      "hold.inbound_deg", "arrival.heading_deg", "hold", "arrival", "aircraft",
      "hold.leg.station", "hold.ends", "hold.climb_to_ft", "hold.climb_ft_min", "arrival.fix_at",
      "wind_changes", "ink", "aircraft.turn_by", "technique.entry_line", "technique.reaction_s",
      "technique.lead", "technique.roll_s", "fuel", "clock", "lost_radio", "shown"};
  static const char *const optional[] = {
      "fuel.on_board", "fuel.flow_h", "fuel.alternate", "fuel.alternate_min", "fuel.reserve",
      "fuel.reserve_min", "fuel.unit", "clock.utc_offset_min", "lost_radio.eta",
      "lost_radio.limit_starts_approach", "shown.fix", "shown.direction", "shown.course_deg",
      "shown.course_is", "shown.turns", "shown.leg_s", "shown.leg_nm", "shown.efc"};
  static const char *const by_distance[] = {
      "hold.leg", "hold.leg.by", "hold.leg.s", "hold.leg.nm", "hold.leg.end", "hold.leg.station",
      "hold.leg.station.radial_deg", "hold.leg.station.nm", "hold.leg.station.elevation_ft",
      "wind_changes", "wind_changes.0.at_min", "wind_changes.0.from_deg", "wind_changes.0.kt",
      "wind_changes.0.north"};
  static const char *const placed[] = {
      "hold.fix", "hold.fix.lat_deg", "hold.fix.lon_deg", "hold.fix.name",
      "hold.fix.declination_deg", "hold.fix.elevation_ft", "hold.fix.ahead_nm", "hold.fix.from",
      "arrival.present", "arrival.present.from", "arrival.present.radial_deg",
      "arrival.present.nm", "arrival.present.altitude_ft", "arrival.present.from.lat_deg",
      "arrival.present.from.name"};
  static const char *const ahead[] = {"hold.fix.ahead_nm", "hold.fix.name", "hold.fix.ahead_s",
                                      "hold.fix.lat_deg", "hold.fix", "arrival.present"};
  static const char *const by_point[] = {
      "hold.leg.station", "hold.leg.station.lat_deg", "hold.leg.station.name",
      "hold.leg.station.elevation_ft", "hold.leg.station.declination_deg"};
  reader_and_schema_agree(at_a_place, placed, sizeof placed / sizeof *placed);
  reader_and_schema_agree(one_ahead, ahead, sizeof ahead / sizeof *ahead);
  reader_and_schema_agree(by_station, by_point, sizeof by_point / sizeof *by_point);
  reader_and_schema_agree(by_time, timed, sizeof timed / sizeof *timed);
  reader_and_schema_agree(with_optional, optional, sizeof optional / sizeof *optional);
  reader_and_schema_agree(by_dme, by_distance, sizeof by_distance / sizeof *by_distance);
}

static const char with_ink[] =
    "\"ink\": { \"strokes\": [ { \"ink\": \"blue\", \"width\": \"broad\","
    " \"points_nm\": [0, 1, 2, 3] } ] }, \"technique\": {}";

static void reader_and_schema_agree_on_ink(void **state) {
  static const char *const paths[] = {"ink", "ink.strokes", "ink.strokes.0.ink",
                                      "ink.strokes.0.width", "ink.strokes.0.points_nm"};
  static const char *const values[] = {
      "null", "0", "true", "\"blue\"", "\"thin\"", "\"red\"", "[]", "{}", "[1, 2]", "[500, -500]",
      "[500.01, 0]", "[0, -500.01]", "[1, null]", "[\"1\", 2]", "[[1, 2]]",
      "{ \"strokes\": [] }", "[ { \"points_nm\": [1, 2] } ]", "{ \"other\": 1 }"};
  int accepted = 0;
  for (size_t p = 0; p < sizeof paths / sizeof *paths; p++)
    for (size_t v = 0; v < sizeof values / sizeof *values; v++) {
      char text[1200];
      replace_value(text, sizeof text, with_ink, paths[p], values[v]);
      if (agreed_verdict(text)) accepted++;
    }
  assert_int_equal(accepted, 4 + 2 + 1 + 1 + 2);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_field_stands_in_the_schema_with_its_range_words_and_default),
      cmocka_unit_test(every_number_of_a_point_stands_in_the_schema),
      cmocka_unit_test(the_schema_knows_no_other_keys),
      cmocka_unit_test(the_schema_refuses_what_the_reader_refuses),
      cmocka_unit_test(the_schema_accepts_what_the_writer_writes),
      cmocka_unit_test(reader_and_schema_agree_on_every_value_at_every_key),
      cmocka_unit_test(reader_and_schema_agree_on_ink),
      cmocka_unit_test(the_schema_accepts_the_examples),
  };
  return cmocka_run_group_tests(tests, load_schema, free_schema);
}
