/* solve as a user runs it: the contract of its JSON, and the numbers of published and derived
 * rows. */
#include <cJSON.h>
#include <ctype.h>

#include "cli_run.h"

/* The array that solve printed for a lesson; freed with cJSON_Delete. */
static cJSON *solve(const char *path) {
  ran r = run_cli_for(0, "solve", path, NULL);
  const char *end = NULL;
  cJSON *tree = cJSON_ParseWithOpts(r.out, &end, 1);
  if (!tree) fail_msg("not JSON near: %.60s", end ? end : "");
  assert_true(cJSON_IsArray(tree));
  ran_clear(&r);
  return tree;
}

static const cJSON *member(const cJSON *object, const char *key) {
  const cJSON *found = cJSON_GetObjectItemCaseSensitive(object, key);
  if (!found) fail_msg("there is no key %s", key);
  return found;
}

static double number(const cJSON *object, const char *key) {
  const cJSON *found = member(object, key);
  assert_true(cJSON_IsNumber(found));
  return found->valuedouble;
}

static const char *string(const cJSON *object, const char *key) {
  const cJSON *found = member(object, key);
  assert_true(cJSON_IsString(found));
  return found->valuestring;
}

/* The keys of an object, in order, separated by spaces. */
static void assert_keys(const cJSON *object, const char *keys) {
  char got[600] = "";
  for (const cJSON *child = object->child; child; child = child->next) {
    if (*got) strncat(got, " ", sizeof got - strlen(got) - 1);
    strncat(got, child->string, sizeof got - strlen(got) - 1);
  }
  assert_string_equal(got, keys);
}

#define CASE_KEYS                                                                                  \
  "case tas_kt bank_deg rate_deg_s radius_nm entry speed_limit_kias steady steady_why legs "       \
  "events circuits advisories preset leave_t_s when "            \
  "cross_check"

static void every_object_has_the_keys_of_the_contract_in_order(void **state) {
  cJSON *tree = solve(lesson_path("demo.oxbow"));
  assert_int_equal(cJSON_GetArraySize(tree), 12);
  int unsteady = 0;
  for (const cJSON *c = tree->child; c; c = c->next) {
    assert_keys(c, CASE_KEYS);
    assert_keys(member(c, "entry"), "kind also boundary_deg heading_deg");
    if (cJSON_IsNull(member(c, "steady"))) {
      assert_true(strlen(string(c, "steady_why")) > 20);
      unsteady++;
    } else {
      assert_keys(member(c, "steady"),
                  "inbound_heading_deg inbound_wca_deg inbound_gs_kt "
                  "outbound_heading_deg outbound_wca_deg outbound_s circuit_s");
      assert_true(cJSON_IsNull(member(c, "steady_why")));
    }
    assert_true(cJSON_GetArraySize(member(c, "legs")) > 4);
    for (const cJSON *leg = member(c, "legs")->child; leg; leg = leg->next)
      assert_keys(leg, "name circuit shape t0_s t1_s x0_nm y0_nm x1_nm y1_nm heading0_true_deg "
                       "heading1_true_deg");
    for (const cJSON *event = member(c, "events")->child; event; event = event->next)
      assert_keys(event, "kind t_s");
    assert_true(cJSON_GetArraySize(member(c, "circuits")) >= 2);
    for (const cJSON *circuit = member(c, "circuits")->child; circuit; circuit = circuit->next)
      assert_keys(circuit,
                  "outbound_s inbound_s rollout_offset_nm timed_s fix_t_s gate_deg inbound_error_s "
                  "next_timed_s nonholding_nm");
    for (const cJSON *text = member(c, "advisories")->child; text; text = text->next)
      assert_true(cJSON_IsString(text) && strlen(text->valuestring) > 20);
  }
  assert_int_equal(unsteady, 1);
  cJSON_Delete(tree);
}

static void legs_join_and_shapes_are_named(void **state) {
  cJSON *tree = solve(lesson_path("demo.oxbow"));
  for (const cJSON *c = tree->child; c; c = c->next) {
    const cJSON *before = NULL;
    for (const cJSON *leg = member(c, "legs")->child; leg; leg = leg->next) {
      bool turn = strcmp(string(leg, "shape"), "turn") == 0;
      assert_true(turn || strcmp(string(leg, "shape"), "straight") == 0);
      if (!turn)
        assert_angle_close(number(leg, "heading1_true_deg"), number(leg, "heading0_true_deg"), 0,
                           "straight on");
      if (before) {
        assert_close(number(leg, "t0_s"), number(before, "t1_s"), 1e-9, "time");
        assert_close(number(leg, "x0_nm"), number(before, "x1_nm"), 1e-9, "x");
        assert_close(number(leg, "y0_nm"), number(before, "y1_nm"), 1e-9, "y");
      }
      before = leg;
    }
  }
  cJSON_Delete(tree);
}

/* One case: tas, course, wind, leg time; everything true, which is magnetic here. */
static cJSON *solve_wind(double tas_kt, double from_deg, double kt, double course_deg,
                         double leg_s) {
  char text[600];
  snprintf(text, sizeof text,
           "{\"hold\":{\"inbound_deg\":%.0f,\"leg\":{\"by\":\"time\",\"s\":%.0f},"
           "\"altitude_ft\":5000},\"arrival\":{\"heading_deg\":%.0f},"
           "\"aircraft\":{\"tas_kt\":%.0f,\"max_bank_deg\":45},"
           "\"wind\":{\"from_deg\":%.0f,\"kt\":%.0f}}",
           course_deg, leg_s, course_deg, tas_kt, from_deg, kt);
  return solve(write_lesson("wind.oxbow", text));
}

/* Closed form of the steady timed hold, rows W1 to W18: derived from general mathematics
 * (constant TAS, rate 3 degrees a second), printed to the figures here. */
static void the_steady_hold_is_that_of_the_closed_form(void **state) {
  static const struct {
    const char *row;
    double tas_kt, from_deg, kt, course_deg, leg_s;
    double wca_deg, gs_kt, out_heading_deg, out_wca_deg, out_s, circuit_s;
  } rows[] = {
      {"W1", 120, 360, 0, 360, 60, 0, 120.0, 180.0, 0, 60.00, 240.0},
      {"W2", 120, 360, 10, 360, 60, 0, 110.0, 180.0, 0, 41.54, 221.5},
      {"W3", 120, 360, 20, 360, 60, 0, 100.0, 180.0, 0, 25.71, 205.7},
      {"W4", 120, 180, 10, 360, 60, 0, 130.0, 180.0, 0, 81.82, 261.8},
      {"W5", 120, 180, 20, 360, 60, 0, 140.0, 180.0, 0, 108.0, 288.0},
      {"W6", 120, 90, 10, 360, 60, 4.78, 119.58, 165.79, -14.21, 61.68, 241.7},
      {"W7", 120, 90, 20, 360, 60, 9.59, 118.32, 152.24, -27.76, 66.86, 246.9},
      {"W8", 120, 90, 30, 360, 60, 14.48, 116.19, 139.85, -40.15, 76.00, 256.0},
      {"W9", 120, 270, 20, 360, 60, -9.59, 118.32, 207.76, 27.76, 66.86, 246.9},
      {"W10", 120, 45, 20, 360, 60, 6.77, 105.02, 151.06, -28.94, 38.64, 218.6},
      {"W11", 120, 135, 20, 360, 60, 6.77, 133.31, 164.58, -15.42, 95.49, 275.5},
      {"W12", 120, 30, 25, 270, 60, 10.39, 130.53, 66.05, -23.95, 96.03, 276.0},
      {"W13", 150, 90, 20, 360, 60, 7.66, 148.66, 157.54, -22.46, 64.34, 244.3},
      {"W14", 90, 90, 20, 360, 60, 12.84, 87.75, 143.83, -36.17, 72.47, 252.5},
      {"W15", 180, 90, 30, 360, 90, 9.59, 177.48, 157.94, -22.06, 95.75, 305.8},
      {"W16", 120, 90, 20, 360, 120, 9.59, 118.32, 160.95, -19.05, 125.2, 365.2},
      {"W17", 100, 60, 18, 330, 60, 10.37, 98.37, 120.17, -29.83, 68.04, 248.0},
      {"W18", 150, 310, 35, 45, 60, -13.44, 148.94, 260.97, 35.97, 78.60, 258.6},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    cJSON *tree =
        solve_wind(rows[i].tas_kt, rows[i].from_deg, rows[i].kt, rows[i].course_deg, rows[i].leg_s);
    const cJSON *s = member(tree->child, "steady");
    /* half the last printed figure, and a hair for its rounding */
    assert_close(number(s, "inbound_wca_deg"), rows[i].wca_deg, 0.0051, rows[i].row);
    assert_close(number(s, "inbound_gs_kt"), rows[i].gs_kt, 0.0051, rows[i].row);
    assert_angle_close(number(s, "outbound_heading_deg"), rows[i].out_heading_deg, 0.0051,
                       rows[i].row);
    assert_close(number(s, "outbound_wca_deg"), rows[i].out_wca_deg, 0.0051, rows[i].row);
    assert_close(number(s, "outbound_s"), rows[i].out_s, rows[i].out_s >= 100 ? 0.051 : 0.0051,
                 rows[i].row);
    assert_close(number(s, "circuit_s"), rows[i].circuit_s, 0.051, rows[i].row);
    assert_close(number(s, "inbound_heading_deg"),
                 fmod(rows[i].course_deg + number(s, "inbound_wca_deg") + 360, 360), 1e-9,
                 rows[i].row);
    cJSON_Delete(tree);
  }
}

/* Published and rule-derived entries (AIM 5-3-8 j3; question bank for 010; study card for 152). */
static void entries_are_those_of_the_published_rows(void **state) {
  static const struct {
    double inbound_deg;
    const char *turns;
    double heading_deg;
    const char *kind, *also;
  } rows[] = {
      {10, "right", 30, "direct", NULL},          {10, "right", 150, "teardrop", NULL},
      {10, "right", 191, "parallel", "teardrop"}, {10, "right", 250, "parallel", NULL},
      {152, "left", 10, "teardrop", NULL},        {86, "left", 350, "direct", NULL},
      {360, "right", 285, "parallel", "direct"},  {360, "left", 65, "direct", "parallel"},
      {225, "right", 310, "direct", NULL},        {270, "right", 85, "teardrop", "parallel"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    char text[400];
    snprintf(text, sizeof text,
             "{\"hold\":{\"inbound_deg\":%.0f,\"turns\":\"%s\"},"
             "\"arrival\":{\"heading_deg\":%.0f},\"aircraft\":{\"ias_kt\":100}}",
             rows[i].inbound_deg, rows[i].turns, rows[i].heading_deg);
    cJSON *tree = solve(write_lesson("entry.oxbow", text));
    const cJSON *entry = member(tree->child, "entry");
    assert_string_equal(string(entry, "kind"), rows[i].kind);
    if (rows[i].also)
      assert_string_equal(string(entry, "also"), rows[i].also);
    else
      assert_true(cJSON_IsNull(member(entry, "also")));
    cJSON_Delete(tree);
  }
}

/* Study card: inbound 152, left turns, heading 010: teardrop on 002. With any variation, because
 * what is entered and what is shown are magnetic. */
static void headings_are_magnetic_unless_they_say_true(void **state) {
  for (int variation = -30; variation <= 30; variation += 15) {
    char text[400];
    snprintf(text, sizeof text,
             "{\"hold\":{\"inbound_deg\":152,\"turns\":\"left\"},\"arrival\":{\"heading_deg\":10},"
             "\"aircraft\":{\"ias_kt\":100},\"variation_deg\":%d}",
             variation);
    cJSON *tree = solve(write_lesson("north.oxbow", text));
    const cJSON *c = tree->child;
    assert_angle_close(number(member(c, "entry"), "heading_deg"), 2, 1e-9, "entry heading");
    assert_angle_close(number(member(c, "steady"), "inbound_heading_deg"), 152, 1e-9, "inbound");
    assert_angle_close(number(member(c, "steady"), "outbound_heading_deg"), 332, 1e-9, "outbound");
    const cJSON *arrival = member(c, "legs")->child;
    assert_angle_close(number(arrival, "heading0_true_deg"), 10 + variation, 1e-9, "arrival");
    cJSON_Delete(tree);
  }
}

/* V/3 for one-minute legs at rate one: 33.3 kt at 100 kt; both sides of it. */
static void a_wind_above_the_limit_gives_null_and_the_reason(void **state) {
  cJSON *tree = solve_wind(100, 360, 33, 360, 60);
  assert_true(cJSON_IsObject(member(tree->child, "steady")));
  cJSON_Delete(tree);
  tree = solve_wind(100, 360, 34, 360, 60);
  assert_true(cJSON_IsNull(member(tree->child, "steady")));
  assert_non_null(strstr(string(tree->child, "steady_why"), "drift"));
  assert_true(cJSON_GetArraySize(member(tree->child, "advisories")) > 0);
  cJSON_Delete(tree);
}

/* Every number: no -0, and 9 significant figures or more where it has a fraction without end. */
static void numbers_are_written_whole(void **state) {
  ran r = run_cli_for(0, "solve", lesson_path("demo.oxbow"), NULL);
  int long_ones = 0;
  for (const char *at = r.out; *at; at++) {
    if (*at != '-' && !isdigit((unsigned char)*at)) continue;
    if (at > r.out && (isalnum((unsigned char)at[-1]) || at[-1] == '_' || at[-1] == '.')) continue;
    size_t length = strspn(at, "-+.0123456789e");
    if (length == 2 && at[0] == '-' && at[1] == '0') fail_msg("-0 in: %.60s", at);
    if (length >= 16) long_ones++;
    at += length - 1;
  }
  assert_true(long_ones > 500);
  assert_null(strstr(r.out, "nan"));
  assert_null(strstr(r.out, "inf,"));
  ran_clear(&r);
}

static void a_case_is_chosen_by_name(void **state) {
  ran r = run_cli_for(0, "solve", "--case", "The same wind worked out exactly",
                      lesson_path("demo.oxbow"), NULL);
  cJSON *tree = cJSON_Parse(r.out);
  assert_int_equal(cJSON_GetArraySize(tree), 1);
  assert_string_equal(string(tree->child, "case"), "The same wind worked out exactly");
  cJSON_Delete(tree);
  ran_clear(&r);
}

/* Each case of the lesson is flown by one preset, in this order. */
static void the_preset_is_named_by_its_key_or_null(void **state) {
  static const char *const keys[] = {"no-correction",  "exact", "aim", "aim-fd", "doc8168",
                                     "parallel-track", "p871",  "uk",  "canada"};
  cJSON *tree = solve(lesson_path("techniques.oxbow"));
  assert_int_equal(cJSON_GetArraySize(tree), 9);
  const cJSON *c = tree->child;
  for (size_t i = 0; i < 9; i++, c = c->next) {
    assert_string_equal(string(c, "preset"), keys[i]);
    assert_true(cJSON_IsNull(member(c, "leave_t_s")));
  }
  cJSON_Delete(tree);
  tree = solve(write_lesson("own.oxbow", "{\"hold\":{\"inbound_deg\":90},\"arrival\":"
                                         "{\"heading_deg\":90},\"aircraft\":{\"ias_kt\":100},"
                                         "\"technique\":{\"drift\":\"single\"}}"));
  assert_true(cJSON_IsNull(member(tree->child, "preset")));
  cJSON_Delete(tree);
}

/* From 18:11:30 to the EFC at 18:25 it is 810 s, and then the fix is crossed. An EFC alone is not
 * an order to leave. */
static void a_hold_that_ends_at_its_efc_says_when(void **state) {
  static const char form[] =
      "{\"hold\":{\"inbound_deg\":90,\"efc\":\"18:25\",\"ends\":\"%s\"},\"arrival\":"
      "{\"heading_deg\":90,\"fix_at\":\"18:11:30\"},\"aircraft\":{\"ias_kt\":100}}";
  char text[400];
  snprintf(text, sizeof text, form, "efc");
  cJSON *tree = solve(write_lesson("efc.oxbow", text));
  assert_close(number(tree->child, "leave_t_s"), 810, 0, "leave");
  const cJSON *events = member(tree->child, "events");
  const cJSON *last = cJSON_GetArrayItem(events, cJSON_GetArraySize(events) - 1);
  assert_string_equal(string(last, "kind"), "fix");
  assert_close(number(last, "t_s"), 810, 1e-6, "last crossing");
  cJSON_Delete(tree);
  snprintf(text, sizeof text, form, "circuits");
  tree = solve(write_lesson("efc.oxbow", text));
  assert_true(cJSON_IsNull(member(tree->child, "leave_t_s")));
  cJSON_Delete(tree);
}

/* AIM 5-3-8 figures 5-3-5 and 5-3-6: the turn inbound begins at 15 DME (towards the station, fix at
 * 10) and at 20 DME (away from it, fix at 28). The reading is the slant range from 10 000 ft. */
static void the_dme_lessons_turn_at_the_readings_of_the_figures(void **state) {
  static const struct {
    size_t index;
    double station_x_nm, reading_nm;
  } rows[] = {{0, 9.8635, 15}, {1, -27.9515, 20}};
  cJSON *tree = solve(lesson_path("distance.oxbow"));
  for (size_t i = 0; i < 2; i++) {
    const cJSON *c = cJSON_GetArrayItem(tree, (int)rows[i].index);
    int seen = 0;
    for (const cJSON *leg = member(c, "legs")->child; leg; leg = leg->next) {
      if (strcmp(string(leg, "name"), "inbound turn") != 0) continue;
      double x = number(leg, "x0_nm") - rows[i].station_x_nm, y = number(leg, "y0_nm");
      double reading = sqrt(x * x + y * y + pow(10000 / 6076.1155, 2));
      assert_close(reading, rows[i].reading_nm, 1e-3, "DME");
      seen++;
    }
    assert_int_equal(seen, 3);
  }
  cJSON_Delete(tree);
}

static void names_keep_their_quotes_and_accents(void **state) {
  const char *path = write_lesson(
      "name.oxbow",
      "{\"name\":\"Anna's \\\"first\\\" hold \\\\ \xc3\xbc\",\"hold\":{\"inbound_deg\":"
      "90},\"arrival\":{\"heading_deg\":90},\"aircraft\":{\"ias_kt\":100}}");
  cJSON *tree = solve(path);
  assert_string_equal(string(tree->child, "case"), "Anna's \"first\" hold \\ \xc3\xbc");
  cJSON_Delete(tree);
}

/* AIM 5-3-8 j5, FIG 5-3-5: the fix at 10 DME, the outbound end at 15, towards the station; away
 * from it with a radial that comes first (geometry); and where the reading is below the height, so
 * that only the radial is left (Doc 8168 Vol II, as quoted). Other holds have no such object. */
static void what_a_station_limits_is_an_object_of_its_own(void **state) {
  static const struct {
    double radial_deg, station_nm, leg_nm;
    int limiting_deg;
    bool reading;
    const char *ended_by;
  } rows[] = {{90, 9.8636, 5, 0, true, "distance"},
              {270, 10, 6, 110, true, "radial"},
              {270, 4, 3.6, 150, false, "radial"}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    char text[600];
    snprintf(text, sizeof text,
             "{\"hold\":{\"inbound_deg\":90,\"altitude_ft\":10000,\"leg\":{"
             "\"by\":\"distance\",\"nm\":%.4f,\"end\":\"outbound\","
             "\"station\":{\"radial_deg\":%.0f,\"nm\":%.4f,"
             "\"limiting_radial_deg\":%d}}},\"arrival\":{\"heading_deg\":90},"
             "\"aircraft\":{\"ias_kt\":130}}",
             rows[i].leg_nm, rows[i].radial_deg, rows[i].station_nm, rows[i].limiting_deg);
    cJSON *tree = solve(write_lesson("limits.oxbow", text));
    const cJSON *limits = member(tree->child, "limits");
    assert_keys(limits,
                "fix_dme_nm outbound_dme_nm outbound_ground_nm limiting_radial_deg ended_by");
    assert_close(number(limits, "fix_dme_nm"), hypot(rows[i].station_nm, 10000 / 6076.12), 1e-4,
                 "over the fix");
    if (rows[i].reading) {
      double height_nm = 10000 / 6076.12, over_fix_nm = hypot(rows[i].station_nm, height_nm);
      double end_nm = i == 0 ? 15 : over_fix_nm - rows[i].leg_nm;
      assert_close(number(limits, "outbound_dme_nm"), end_nm, 1e-3, "AIM: 15 DME");
      assert_close(number(limits, "outbound_ground_nm"),
                   sqrt(end_nm * end_nm - height_nm * height_nm), 1e-3, "over the ground");
    } else {
      assert_true(cJSON_IsNull(member(limits, "outbound_dme_nm")));
      assert_true(cJSON_IsNull(member(limits, "outbound_ground_nm")));
    }
    if (rows[i].limiting_deg)
      assert_close(number(limits, "limiting_radial_deg"), rows[i].limiting_deg, 0, "radial");
    else
      assert_true(cJSON_IsNull(member(limits, "limiting_radial_deg")));
    const cJSON *ended = member(limits, "ended_by");
    assert_int_equal(cJSON_GetArraySize(ended),
                     cJSON_GetArraySize(member(tree->child, "circuits")));
    for (const cJSON *by = ended->child; by; by = by->next)
      assert_string_equal(by->valuestring, rows[i].ended_by);
    cJSON_Delete(tree);
  }
  cJSON *tree = solve(lesson_path("demo.oxbow"));
  for (const cJSON *c = tree->child; c; c = c->next)
    assert_null(cJSON_GetObjectItemCaseSensitive(c, "limits"));
  cJSON_Delete(tree);
}

static void the_locale_changes_nothing(void **state) {
  char path[1000];
  snprintf(path, sizeof path, "%s", lesson_path("high-and-fast.oxbow"));
  ran plain = run_cli_for(0, "solve", path, NULL);
  assert_int_equal(enter_german(state), 0);
  ran german = run_cli("solve", path, NULL);
  assert_int_equal(leave_german(state), 0);
  assert_int_equal(german.code, 0);
  assert_string_equal(plain.out, german.out);
  ran_clear(&plain);
  ran_clear(&german);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_object_has_the_keys_of_the_contract_in_order),
      cmocka_unit_test(legs_join_and_shapes_are_named),
      cmocka_unit_test(the_steady_hold_is_that_of_the_closed_form),
      cmocka_unit_test(entries_are_those_of_the_published_rows),
      cmocka_unit_test(headings_are_magnetic_unless_they_say_true),
      cmocka_unit_test(a_wind_above_the_limit_gives_null_and_the_reason),
      cmocka_unit_test(numbers_are_written_whole),
      cmocka_unit_test(a_case_is_chosen_by_name),
      cmocka_unit_test(the_preset_is_named_by_its_key_or_null),
      cmocka_unit_test(a_hold_that_ends_at_its_efc_says_when),
      cmocka_unit_test(the_dme_lessons_turn_at_the_readings_of_the_figures),
      cmocka_unit_test(what_a_station_limits_is_an_object_of_its_own),
      cmocka_unit_test(names_keep_their_quotes_and_accents),
      cmocka_unit_test_teardown(the_locale_changes_nothing, leave_german),
  };
  return cmocka_run_group_tests(tests, folder_make, folder_remove);
}
