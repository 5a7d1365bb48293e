/* draw with a comparison, the area and a band; and where the aircraft stands on each sheet. */
#include "../../src/cli/cli_private.h"
#include "cli_run.h"
#include "oxbow/presets.h"

#define CASE "UK-style: twice the drift, a second a knot"
#define TEARDROP "Teardrop entry: arriving from the south-west"

/* Draws a case of a lesson; freed by the caller. Nothing but the file came to be. */
static char *drawn(const char *lesson, const char *name, size_t *length, const char *option,
                   const char *value) {
  const char *path = in_folder("a.svg");
  ran r =
      run_cli_for(0, "draw", lesson_path(lesson), "-o", path, "--case", name, option, value, NULL);
  assert_string_equal(r.out, "");
  ran_clear(&r);
  char *bytes = read_all(path, length);
  assert_non_null(bytes);
  assert_int_equal(folder_count(), 1);
  assert_int_equal(remove(path), 0);
  return bytes;
}

static void assert_differs(const char *a, size_t a_length, const char *b, size_t b_length,
                           const char *what) {
  if (a_length == b_length && memcmp(a, b, a_length) == 0) fail_msg("%s shows nothing", what);
}

static void every_preset_can_be_compared_with(void **state) {
  size_t length, other;
  char *standard = drawn("techniques.oxbow", CASE, &length, NULL, NULL);
  for (size_t i = 0; i < ox_preset_count(); i++) {
    const ox_preset *preset = ox_preset_at(i);
    char *bytes = drawn("techniques.oxbow", CASE, &other, "--compare", preset->key);
    assert_differs(bytes, other, standard, length, preset->key);
    free(bytes);
  }
  free(standard);
}

static void every_mistake_has_a_key_that_draws_it(void **state) {
  static const struct {
    ox_mistake mistake;
    const char *key, *lesson, *name;
  } rows[OX_MISTAKE_COUNT] = {
      {OX_MISTAKE_DRIFT_WRONG_SIDE, "drift-wrong-side", "techniques.oxbow", CASE},
      {OX_MISTAKE_CLOCK_AT_FIX, "clock-at-fix", "techniques.oxbow", CASE},
      {OX_MISTAKE_TEARDROP_WRONG_SIDE, "teardrop-wrong-side", "demo.oxbow", TEARDROP},
      {OX_MISTAKE_PARALLEL_WRONG_TURN, "parallel-wrong-turn", "demo.oxbow",
       "Parallel entry: arriving from the west"},
      {OX_MISTAKE_RADIAL_AS_COURSE, "radial-as-course", "techniques.oxbow", CASE},
      {OX_MISTAKE_LATE_SPEED, "late-speed", "techniques.oxbow", CASE},
  };
  for (size_t i = 0; i < OX_MISTAKE_COUNT; i++) {
    size_t length, other;
    assert_string_equal(cli_mistake_key(rows[i].mistake), rows[i].key);
    char *plain = drawn(rows[i].lesson, rows[i].name, &length, NULL, NULL);
    char *bytes = drawn(rows[i].lesson, rows[i].name, &other, "--compare", rows[i].key);
    assert_differs(bytes, other, plain, length, rows[i].key);
    free(plain);
    free(bytes);
  }
}

/* The picture is drawn, with a remark. */
static void a_mistake_that_does_not_show_is_remarked_on(void **state) {
  size_t length, other;
  const char *path = in_folder("a.svg");
  ran r = run_cli("draw", lesson_path("techniques.oxbow"), "-o", path, "--case", CASE, "--compare",
                  "teardrop-wrong-side", NULL);
  assert_int_equal(r.code, 0);
  assert_non_null(strstr(r.err, "case \"" CASE "\": the mistake does not show here: teardrop"));
  ran_clear(&r);
  char *bytes = read_all(path, &length);
  assert_int_equal(remove(path), 0);
  char *plain = drawn("techniques.oxbow", CASE, &other, NULL, NULL);
  assert_int_equal(length, other);
  assert_memory_equal(bytes, plain, length);
  free(bytes);
  free(plain);
}

static void area_and_spread_show_and_repeat(void **state) {
  size_t plain_length, length, other;
  char *plain = drawn("techniques.oxbow", CASE, &plain_length, NULL, NULL);
  char *area = drawn("techniques.oxbow", CASE, &length, "--area", NULL);
  assert_differs(area, length, plain, plain_length, "--area");
  free(area);
  char *one = drawn("techniques.oxbow", CASE, &length, "--spread", "150");
  char *two = drawn("techniques.oxbow", CASE, &other, "--spread", "150");
  assert_differs(one, length, plain, plain_length, "--spread");
  assert_int_equal(length, other);
  assert_memory_equal(one, two, length);
  free(two);
  const char *path = in_folder("a.svg");
  ran r = run_cli_for(0, "draw", lesson_path("techniques.oxbow"), "-o", path, "--case", CASE,
                      "--spread=150", "--seed=2", "--area", NULL);
  ran_clear(&r);
  two = read_all(path, &other);
  assert_int_equal(remove(path), 0);
  assert_differs(one, length, two, other, "--seed");
  free(one);
  free(two);
  free(plain);
}

static void all_sheets_of_a_pdf_take_all_overlays(void **state) {
  const char *path = in_folder("a.pdf");
  ran r = run_cli_for(0, "draw", lesson_path("techniques.oxbow"), "-o", path, "--compare", "exact",
                      "--area", "--spread", "60", "--seed", "7", NULL);
  ran_clear(&r);
  char *pdf = read_all(path, NULL);
  assert_memory_equal(pdf, "%PDF-", 5);
  free(pdf);
  assert_int_equal(remove(path), 0);
}

static void wrong_overlays_are_usage_and_write_nothing(void **state) {
  static const struct {
    const char *first, *second, *says;
  } rows[] = {
      {"--compare=nobody", NULL, "--compare: nobody is not the key of a technique or of a mistake"},
      {"--compare=", NULL, "is not the key"},
      {"--compare=EXACT", NULL, "is not the key"},
      {"--area=yes", NULL, "--area takes no value"},
      {"--area", "--area", "--area is given twice"},
      {"--spread=0", NULL, "--spread: 0 is not a number of flights (1 to 10000000)"},
      {"--spread=many", NULL, "1 to 10000000"},
      {"--seed=3", NULL, "--seed needs --spread"},
      {"--spread=9", "--seed=-1", "--seed: -1 is not a seed"},
      {"--spread", NULL, "--spread needs a value"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ran r = run_cli_for(2, "draw", lesson_path("demo.oxbow"), "-o", in_folder("a.png"),
                        rows[i].first, rows[i].second, NULL);
    if (!strstr(r.err, rows[i].says)) fail_msg("\"%s\" is not in: %s", rows[i].says, r.err);
    assert_non_null(strstr(r.err, "--help"));
    ran_clear(&r);
    assert_int_equal(folder_count(), 0);
  }
}

/* Half-way along the first leg flown outbound, whatever entry leads to it: drawing at that instant
 * by hand gives the same bytes. */
static void the_aircraft_stands_on_the_telling_leg_of_its_own_case(void **state) {
  static const struct {
    const char *name;
    ox_leg_kind kind;
  } rows[] = {
      {TEARDROP, OX_LEG_ENTRY_OUTBOUND},
      {"Parallel entry: arriving from the west", OX_LEG_ENTRY_OUTBOUND},
      {"Headwind inbound: the outbound leg is short", OX_LEG_OUTBOUND},
  };
  ox_flight *flight = malloc(sizeof *flight);
  ox_lesson *lesson = NULL;
  ox_messages messages = {0};
  assert_non_null(flight);
  assert_int_equal(ox_lesson_read(lesson_path("demo.oxbow"), &lesson, &messages), OX_OK);
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    size_t length, other;
    char at[40] = "";
    for (size_t k = 0; k < lesson->case_count; k++) {
      if (strcmp(lesson->cases[k].c.name, rows[i].name) != 0) continue;
      assert_int_not_equal(ox_flight_solve(&lesson->cases[k].c, flight), OX_ERROR);
      size_t leg = 0;
      while (leg < flight->leg_count && flight->legs[leg].kind != rows[i].kind)
        leg++;
      assert_true(leg < flight->leg_count);
      snprintf(at, sizeof at, "%.9f", 0.5 * (flight->legs[leg].t0_s + flight->legs[leg].t1_s));
    }
    if (!*at) fail_msg("there is no case %s", rows[i].name);
    char *own = drawn("demo.oxbow", rows[i].name, &length, NULL, NULL);
    char *by_hand = drawn("demo.oxbow", rows[i].name, &other, "--at", at);
    assert_int_equal(length, other);
    assert_memory_equal(own, by_hand, length);
    free(own);
    free(by_hand);
  }
  ox_lesson_free(lesson);
  free(flight);
}

/* The sheets of a PDF each have their own instant: with that of the first for all of them the file
 * is another one, unless there is only the first. */
static void each_sheet_has_an_instant_of_its_own(void **state) {
  static const char direct[] = "{\"hold\":{\"inbound_deg\":90},\"arrival\":{\"heading_deg\":90},"
                               "\"aircraft\":{\"ias_kt\":100}}";
  static const char parallel[] = "{\"hold\":{\"inbound_deg\":90},\"arrival\":{\"heading_deg\":"
                                 "330},\"aircraft\":{\"ias_kt\":100}}";
  char both[600];
  snprintf(both, sizeof both, "%s,%s", direct, parallel);
  for (int sheets = 1; sheets <= 2; sheets++) {
    const char *lesson = write_lesson("two.oxbow", sheets == 1 ? direct : both);
    const char *own = in_folder("own.pdf"), *first = in_folder("first.pdf");
    size_t own_length, first_length;
    ran r = run_cli_for(0, "draw", lesson, "-o", own, NULL);
    ran_clear(&r);
    r = run_cli_for(0, "draw", lesson, "-o", first, "--at", "90", NULL); /* 60 + 60 / 2 s */
    ran_clear(&r);
    char *a = read_all(own, &own_length), *b = read_all(first, &first_length);
    bool same = own_length == first_length && memcmp(a, b, own_length) == 0;
    assert_int_equal(same, sheets == 1);
    free(a);
    free(b);
    assert_int_equal(remove(own), 0);
    assert_int_equal(remove(first), 0);
    assert_int_equal(remove(lesson), 0);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_preset_can_be_compared_with),
      cmocka_unit_test(every_mistake_has_a_key_that_draws_it),
      cmocka_unit_test(a_mistake_that_does_not_show_is_remarked_on),
      cmocka_unit_test(area_and_spread_show_and_repeat),
      cmocka_unit_test(all_sheets_of_a_pdf_take_all_overlays),
      cmocka_unit_test(wrong_overlays_are_usage_and_write_nothing),
      cmocka_unit_test(the_aircraft_stands_on_the_telling_leg_of_its_own_case),
      cmocka_unit_test(each_sheet_has_an_instant_of_its_own),
  };
  return cmocka_run_group_tests(tests, folder_make, folder_remove);
}
