/* track as a user runs it: CSV of a fixed shape, from the flight's begin to its end. */
#include "../../src/cli/cli_private.h"
#include "cli_run.h"
#include "oxbow/units.h"

#define HEADER "case,t_s,x_nm,y_nm,heading_true_deg,track_true_deg,gs_kt,leg"
#define CALM_NAMED(name)                                                                           \
  "{\"name\":\"" name "\",\"hold\":{\"inbound_deg\":360},\"arrival\":{\"heading_deg\":360,"        \
  "\"distance_nm\":2},\"aircraft\":{\"tas_kt\":120},\"technique\":{\"circuits\":1}}"
#define CALM CALM_NAMED("Calm")
#define CALM2 CALM_NAMED("Calm too")
#define CALM3 CALM_NAMED("Still calm")

typedef struct {
  char name[100], leg[40];
  double t_s, x_nm, y_nm, heading_deg, track_deg, gs_kt;
} row;

/* The rows of a table without quotes; the number of them. */
static size_t parse(const char *out, row *rows, size_t max) {
  size_t count = 0;
  const char *at = out;
  assert_memory_equal(at, HEADER "\n", strlen(HEADER "\n"));
  at += strlen(HEADER "\n");
  const char *end = at + strlen(at);
  while (at < end) {
    row *r = &rows[count++];
    assert_true(count <= max);
    char line[300]; /* sscanf looks for the end of all that it is given */
    const char *newline = memchr(at, '\n', (size_t)(end - at));
    assert_non_null(newline);
    size_t length = (size_t)(newline - at);
    assert_true(length < sizeof line);
    memcpy(line, at, length);
    line[length] = '\0';
    int got = sscanf(line, "%99[^,],%lf,%lf,%lf,%lf,%lf,%lf,%39[^,]", r->name, &r->t_s, &r->x_nm,
                     &r->y_nm, &r->heading_deg, &r->track_deg, &r->gs_kt, r->leg);
    assert_int_equal(got, 8);
    at += length + 1;
  }
  return count;
}

static row rows[20000];

/* Calm, 120 kt, 2 NM of arrival: begin -60 s; outbound turn, outbound, inbound turn and inbound of
 * 60 s each: ends at 240 s. Every leg end falls on a step. */
static void the_still_air_hold_has_its_rows(void **state) {
  ran r = run_cli_for(0, "track", write_lesson("calm.oxbow", CALM), "--step", "15", NULL);
  size_t count = parse(r.out, rows, 100);
  assert_int_equal(count, 300 / 15 + 1);
  assert_close(rows[0].t_s, -60, 1e-6, "begin");
  assert_close(rows[0].y_nm, -2, 1e-9, "begin");
  for (size_t i = 0; i < count; i++)
    assert_close(rows[i].t_s, -60 + 15.0 * (double)i, 1e-6, "t");
  static const struct {
    size_t at;
    double x_nm, y_nm, heading_deg;
    const char *leg; /* the one that ends there */
  } ends[] = {
      {4, 0, 0, 0, "arrival"},
      {8, 4 / OX_PI, 0, 180, "outbound turn"},
      {12, 4 / OX_PI, -2, 180, "outbound"},
      {16, 0, -2, 0, "inbound turn"},
      {20, 0, 0, 0, "inbound"},
  };
  for (size_t i = 0; i < sizeof ends / sizeof *ends; i++) {
    const row *end = &rows[ends[i].at];
    assert_close(end->x_nm, ends[i].x_nm, 1e-8, ends[i].leg);
    assert_close(end->y_nm, ends[i].y_nm, 1e-8, ends[i].leg);
    assert_angle_close(end->heading_deg, ends[i].heading_deg, 1e-6, ends[i].leg);
    assert_string_equal(end->leg, ends[i].leg);
    assert_close(end->gs_kt, 120, 1e-6, "gs");
  }
  ran_clear(&r);
}

static void the_ends_of_legs_come_between_the_steps(void **state) {
  ran r = run_cli_for(0, "track", write_lesson("calm.oxbow", CALM), "--step=7", NULL);
  size_t count = parse(r.out, rows, 200);
  /* Steps at -60 + 7 k up to 240: 43 of them, none on a leg's end; five ends. */
  assert_int_equal(count, 43 + 5);
  for (size_t i = 1; i < count; i++) {
    assert_true(rows[i].t_s > rows[i - 1].t_s);
    assert_true(rows[i].t_s - rows[i - 1].t_s <= 7 + 1e-6);
  }
  assert_close(rows[count - 1].t_s, 240, 1e-6, "end");
  ran_clear(&r);
}

static void a_row_a_second_is_the_standard(void **state) {
  ran r = run_cli_for(0, "track", write_lesson("calm.oxbow", CALM), NULL);
  assert_int_equal(parse(r.out, rows, 1000), 301);
  ran_clear(&r);
}

static void all_cases_share_one_header(void **state) {
  const char *path = write_lesson("three.oxbow", CALM "," CALM2 "," CALM3);
  ran r = run_cli_for(0, "track", path, "--step", "15", NULL);
  size_t count = parse(r.out, rows, sizeof rows / sizeof *rows);
  static const char *const names[] = {"Calm", "Calm too", "Still calm"};
  assert_int_equal(count, 3 * 21);
  for (size_t i = 0; i < count; i++)
    assert_string_equal(rows[i].name, names[i / 21]);
  ran_clear(&r);
}

static void one_case_is_chosen_by_name(void **state) {
  ran r = run_cli_for(0, "track", lesson_path("adjusting.oxbow"), "--case",
                      "The same headwind worked out exactly", NULL);
  size_t count = parse(r.out, rows, sizeof rows / sizeof *rows);
  for (size_t i = 0; i < count; i++)
    assert_string_equal(rows[i].name, "The same headwind worked out exactly");
  ran_clear(&r);
}

/* Between two rows a second apart the aircraft goes as far as its ground speed says, and in the
 * direction of its track. */
static void speed_and_track_belong_to_the_positions(void **state) {
  ran r = run_cli_for(0, "track", lesson_path("adjusting.oxbow"), "--case",
                      "A wind on the quarter: time and drift together", "--step", "0.05", NULL);
  static row fine[60000];
  size_t count = parse(r.out, fine, sizeof fine / sizeof *fine);
  assert_true(count > 20000);
  for (size_t i = 1; i < count; i++) {
    double dt_s = fine[i].t_s - fine[i - 1].t_s;
    if (dt_s < 0.04) continue;
    double dx = fine[i].x_nm - fine[i - 1].x_nm, dy = fine[i].y_nm - fine[i - 1].y_nm;
    double gs_kt = 0.5 * (fine[i].gs_kt + fine[i - 1].gs_kt);
    assert_close(hypot(dx, dy) / dt_s * 3600, gs_kt, 0.01, "ground speed");
    double track_deg = atan2(dx, dy) * 180 / OX_PI;
    assert_angle_close(track_deg, fine[i].track_deg, 0.2, "track");
  }
  ran_clear(&r);
}

static void a_name_with_a_comma_or_a_quote_stays_one_field(void **state) {
  const char *path =
      write_lesson("name.oxbow", "{\"name\":\"Wind, a \\\"lot\\\"\",\"hold\":{\"inbound_deg\":90},"
                                 "\"arrival\":{\"heading_deg\":90},\"aircraft\":{\"ias_kt\":100}}");
  ran r = run_cli_for(0, "track", path, "--step", "600", NULL);
  assert_non_null(strstr(r.out, "\n\"Wind, a \"\"lot\"\"\",-"));
  ran_clear(&r);
}

static void a_step_must_be_a_time(void **state) {
  static const char *const bad[] = {"0",   "-1",     "abc",    "",   "1,5", "1e3",   "nan",
                                    "inf", "100000", "0.0001", "5s", " 5",  "1.2.3", "0x10"};
  for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
    ran r = run_cli("track", lesson_path("demo.oxbow"), "--step", bad[i], NULL);
    assert_int_equal(r.code, 2);
    assert_string_equal(r.out, "");
    assert_non_null(strstr(r.err, "--step"));
    assert_non_null(strstr(r.err, "--help"));
    ran_clear(&r);
  }
  static const char *const good[] = {"30", "0.5", "2.50", "+10", "600"};
  for (size_t i = 0; i < sizeof good / sizeof *good; i++) {
    ran r = run_cli_for(0, "track", lesson_path("demo.oxbow"), "--step", good[i], NULL);
    ran_clear(&r);
  }
}

static void the_locale_changes_nothing(void **state) {
  char path[1000];
  snprintf(path, sizeof path, "%s", lesson_path("high-and-fast.oxbow"));
  ran plain = run_cli_for(0, "track", path, "--step", "2.5", NULL);
  assert_int_equal(enter_german(state), 0);
  ran german = run_cli("track", path, "--step", "2.5", NULL);
  assert_int_equal(leave_german(state), 0);
  assert_int_equal(german.code, 0);
  assert_string_equal(plain.out, german.out);
  ran_clear(&plain);
  ran_clear(&german);
}

/* --- figures ------------------------------------------------------------------------------- */

static void numbers_read_back_as_the_same_double(void **state) {
  ox_random r = {5};
  for (int i = 0; i < 20000; i++) {
    double value = ox_random_between(&r, -1, 1) * pow(10.0, ox_random_below(&r, 30) - 10);
    cli_figure f = cli_number(value);
    assert_true(strtod(f.text, NULL) == value);
  }
  assert_string_equal(cli_number(0.1).text, "0.1");
  assert_string_equal(cli_number(-0.0).text, "0");
  assert_string_equal(cli_number(60).text, "60");
  assert_string_equal(cli_number((double)NAN).text, "null");
  assert_string_equal(cli_number(-(double)INFINITY).text, "null");
}

static void columns_have_no_negative_nothing(void **state) {
  assert_string_equal(cli_fixed(-1e-12, 9).text, "0.000000000");
  assert_string_equal(cli_fixed(-0.0, 2).text, "0.00");
  assert_string_equal(cli_fixed(-0.5, 2).text, "-0.50");
  assert_string_equal(cli_fixed(12.345678, 3).text, "12.346");
}

/* --- for maps ------------------------------------------------------------------------------ */

static void a_map_goes_to_a_file_or_to_the_output(void **state) {
  const char *lesson = write_lesson("calm.oxbow", CALM);
  ran r = run_cli_for(0, "track", lesson, "--format", "gpx", "--fix-at", "42.5N 073.8W", NULL);
  assert_non_null(strstr(r.out, "<wpt lat=\"42.50000000\" lon=\"-73.80000000\">"));
  ran_clear(&r);
  r = run_cli_for(0, "track", lesson, "-o", in_folder("t.kml"), "--fix-at", "42.5N 073.8W", NULL);
  assert_string_equal(r.out, "");
  ran_clear(&r);
  char *text = read_all(in_folder("t.kml"), NULL);
  assert_non_null(strstr(text, "<kml xmlns=\"http://www.opengis.net/kml/2.2\">"));
  free(text);
}

static void wrong_map_options_are_explained(void **state) {
  static const struct {
    const char *option[4];
    int code;
    const char *message;
  } wrong[] = {
      {{"--format", "shape"}, 2, "--format: shape is not csv, geojson, kml or gpx"},
      {{"--fix-at", "42N 073W"}, 2, "--fix-at needs --format geojson, kml or gpx"},
      {{"--format", "kml", "--date", "2023-02-29"}, 2, "--date: 2023-02-29 is not a date"},
      {{"--format", "kml", "--fix-at", "nowhere"}, 2, "--fix-at: "},
      {{"--format", "kml", "--step", "0.01"}, 2, "--step: 0.01 is not a time (0.1 to 3600 seconds)"},
      {{"-o", "t.txt"}, 2, "-o: t.txt does not end in .geojson, .kml or .gpx"},
      {{"--format", "kml"}, 1, "hold.fix: no latitude and longitude is known"},
  };
  const char *lesson = write_lesson("calm.oxbow", CALM);
  for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++) {
    const char *const *o = wrong[i].option;
    ran r = run_cli("track", lesson, o[0], o[1], o[2], o[3], NULL);
    assert_int_equal(r.code, wrong[i].code);
    assert_string_equal(r.out, "");
    if (!strstr(r.err, wrong[i].message)) fail_msg("%s", r.err);
    ran_clear(&r);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_still_air_hold_has_its_rows),
      cmocka_unit_test(the_ends_of_legs_come_between_the_steps),
      cmocka_unit_test(a_row_a_second_is_the_standard),
      cmocka_unit_test(all_cases_share_one_header),
      cmocka_unit_test(one_case_is_chosen_by_name),
      cmocka_unit_test(speed_and_track_belong_to_the_positions),
      cmocka_unit_test(a_name_with_a_comma_or_a_quote_stays_one_field),
      cmocka_unit_test(a_step_must_be_a_time),
      cmocka_unit_test_teardown(the_locale_changes_nothing, leave_german),
      cmocka_unit_test(numbers_read_back_as_the_same_double),
      cmocka_unit_test(columns_have_no_negative_nothing),
      cmocka_unit_test(a_map_goes_to_a_file_or_to_the_output),
      cmocka_unit_test(wrong_map_options_are_explained),
  };
  return cmocka_run_group_tests(tests, folder_make, folder_remove);
}
