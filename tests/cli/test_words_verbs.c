/* The verbs that deal in words and in published records, as a user runs them: clearance, say and
 * holds. What is understood and said is tested where it is made; here it is the command line. */
#include "cli_run.h"

static const char *records(void) {
  static char path[4096];
  snprintf(path, sizeof path, "%s/navdata/cifp-excerpt.txt", getenv("OXBOW_TEST_DATA"));
  return path;
}

/* Read off the records by their columns: KALB I01, leg 040 at MUJIK in the transition MUJIK: HF,
 * right, course 0112, T010 is one minute, + 02600 at or above 2 600 ft. */
static void holds_lists_the_published_holds_of_a_fix(void **state) {
  ran r = run_cli("holds", records(), "--fix", "MUJIK", NULL);
  assert_int_equal(r.code, 0);
  assert_string_equal(r.out,
                      "airport,procedure,transition,fix,terminator,inbound_deg,turns,by,value,"
                      "altitude\n"
                      "KALB,I01,MUJIK,MUJIK,HF,11.2,right,time,60,at or above 2600 ft\n");
  assert_non_null(strstr(r.err, "left out"));
  ran_clear(&r);
}

static void holds_lists_all_without_a_filter(void **state) {
  ran r = run_cli("holds", records(), NULL);
  int lines = 0;
  for (const char *at = r.out; *at; at++) lines += *at == '\n';
  assert_int_equal(r.code, 0);
  assert_int_equal(lines, 13); /* the header and the twelve holds of the excerpt */
  ran_clear(&r);
}

static void holds_says_when_nothing_matches_or_can_be_read(void **state) {
  ran r = run_cli("holds", records(), "--airport", "XXXX", NULL);
  assert_int_equal(r.code, 1);
  assert_non_null(strstr(r.err, "no hold matches"));
  ran_clear(&r);
  r = run_cli("holds", in_folder("none.txt"), NULL);
  assert_int_equal(r.code, 1);
  assert_non_null(strstr(r.err, "none.txt"));
  ran_clear(&r);
  r = run_cli("holds", NULL);
  assert_int_equal(r.code, 2);
  ran_clear(&r);
}

static void a_clearance_becomes_a_lesson_that_check_accepts(void **state) {
  ran r = run_cli("clearance",
                  "hold southwest of LARCH on the 240 radial, left turns, EFC 1825", NULL);
  assert_int_equal(r.code, 0);
  assert_non_null(strstr(r.out, "\"inbound_deg\": 60"));
  assert_non_null(strstr(r.out, "\"turns\": \"left\""));
  assert_non_null(strstr(r.out, "\"efc\": \"18:25\""));
  assert_non_null(strstr(r.err, "read back: Hold southwest of LARCH on the 240 radial, left turns, "
                                "expect further clearance 1825.\n"));
  const char *path = in_folder("cleared.oxbow");
  write_text(path, r.out);
  ran_clear(&r);
  r = run_cli_for(0, "check", path, NULL);
  ran_clear(&r);
}

static void a_doubt_is_a_question_on_the_error_stream(void **state) {
  ran r = run_cli("clearance", "hold northeast of LARCH VOR on the 240 radial, EFC 1825", NULL);
  assert_int_equal(r.code, 0);
  assert_non_null(strstr(r.err, "ask: "));
  ran_clear(&r);
  r = run_cli("clearance", "good morning", NULL);
  assert_int_equal(r.code, 1);
  assert_string_equal(r.out, "");
  ran_clear(&r);
}

static void clearance_refuses_wrong_usage(void **state) {
  static const char *const wrong[][3] = {
      {"--wording", "french", "hold"}, {"--now", "25:00", "hold"}, {"one", "two", NULL}};
  for (size_t i = 0; i < 3; i++) {
    ran r = run_cli("clearance", wrong[i][0], wrong[i][1], wrong[i][2], NULL);
    assert_int_equal(r.code, 2);
    ran_clear(&r);
  }
}

static void say_speaks_every_case_and_ends_with_the_caution(void **state) {
  ran r = run_cli_for(0, "say", lesson_path("demo.oxbow"), NULL);
  int clearances = 0;
  for (const char *at = r.out; (at = strstr(at, "\nClearance\n")); at++) clearances++;
  assert_true(clearances >= 8);
  assert_non_null(strstr(r.out, "Read-back"));
  assert_non_null(strstr(r.out, "Step by step"));
  assert_non_null(strstr(r.out, "not for navigation"));
  assert_null(strstr(r.out, "nan"));
  ran_clear(&r);
}

static void what_is_said_is_understood_again(void **state) {
  const char *path = write_lesson(
      "one.oxbow", "{\"hold\":{\"fix\":\"LARCH\",\"inbound_deg\":60,\"turns\":\"left\","
                   "\"efc\":\"18:25\"},\"arrival\":{\"heading_deg\":60},"
                   "\"aircraft\":{\"ias_kt\":100}}");
  ran r = run_cli_for(0, "say", path, "--wording", "icao", NULL);
  char *from = strstr(r.out, "Clearance\n  "), *to = from ? strstr(from, "\nRead-back") : NULL;
  assert_non_null(from);
  assert_non_null(to);
  *to = '\0';
  ran again = run_cli("clearance", from + strlen("Clearance\n  "), "--wording", "icao", NULL);
  assert_int_equal(again.code, 0);
  assert_non_null(strstr(again.out, "\"inbound_deg\": 60"));
  assert_non_null(strstr(again.out, "\"turns\": \"left\""));
  ran_clear(&again);
  ran_clear(&r);
}

/* --- compare ------------------------------------------------------------------------------- */

static void cases_stand_side_by_side(void **state) {
  const char *demo = lesson_path("demo.oxbow");
  const char *windy = "Twenty knots across, from the holding side";
  ran r = run_cli_for(0, "compare", demo, "--case", windy, "--with", "calm", "--and",
                      "Left turns: the holding side changes, the corrections stay", NULL);
  assert_non_null(strstr(r.out, "kind,quantity,\"Twenty knots across, from the holding side\","
                                "Calm air,\"Left turns: the holding side changes"));
  assert_non_null(strstr(r.out, "\ngiven,Wind,330 true at 20 kt,calm,"));
  assert_non_null(strstr(r.out, "\nflown,Entry,direct,direct,"));
  ran_clear(&r);
}

static void what_cannot_be_compared_is_explained(void **state) {
  static const struct {
    const char *with;
    int code;
    const char *message;
  } wrong[] = {
      {NULL, 2, "compare needs --with"},
      {"nowhere", 1, "there is no case \"nowhere\", and no change of one by that name"},
      {"calm", 1, "there is no other case to make by calm"}, /* the first case is calm */
  };
  for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++) {
    ran r = run_cli("compare", lesson_path("demo.oxbow"), wrong[i].with ? "--with" : NULL,
                    wrong[i].with, NULL);
    assert_int_equal(r.code, wrong[i].code);
    assert_string_equal(r.out, "");
    if (!strstr(r.err, wrong[i].message)) fail_msg("%s", r.err);
    ran_clear(&r);
  }
}

#define TIMED_CASE                                                                               \
  "{\"hold\":{\"fix\":\"LARCH\",\"inbound_deg\":240,\"efc\":\"18:25\"},"                            \
  "\"arrival\":{\"heading_deg\":240,\"fix_at\":\"18:01\"},\"aircraft\":{\"tas_kt\":120},"           \
  "\"fuel\":{\"on_board\":60,\"flow_h\":60,\"alternate\":15,\"reserve_min\":30},"                   \
  "\"lost_radio\":{\"limit_starts_approach\":\"yes\"}"

static void say_tells_time_fuel_and_the_rule_without_radio(void **state) {
  const char *path = write_lesson("timed.oxbow", TIMED_CASE "}");
  ran r = run_cli_for(0, "say", path, NULL);
  assert_non_null(strstr(r.out, "\nTime and fuel\n  Begin to slow down 3:00"));
  assert_non_null(strstr(r.out, "Leave the fix by 18:16:00 UTC"));
  assert_non_null(strstr(r.out, "(14 CFR 91.185(c)(3)(i))"));
  assert_null(strstr(r.out, "Cross-check"));
  assert_null(strstr(r.out, "Protected area"));
  ran_clear(&r);
  r = run_cli_for(0, "say", path, "--cross-check", "--area", "--mistakes", NULL);
  assert_non_null(strstr(r.out, "Nothing is entered that the equipment shows"));
  assert_non_null(strstr(r.out, "Protected area\n  Against the illustrated area"));
  assert_non_null(strstr(r.out, "Mistakes\n  Drift corrected on the wrong side"));
  ran_clear(&r);
}

static void solve_has_the_times_of_every_passage(void **state) {
  const char *path = write_lesson("timed.oxbow", TIMED_CASE "}");
  ran r = run_cli_for(0, "solve", path, NULL);
  assert_non_null(strstr(r.out, "\"utc\": \"18:01:00\""));
  assert_non_null(strstr(r.out, "\"utc\": \"18:05:00\", \"fuel_left\": 5"));
  assert_non_null(strstr(r.out, "\"outcome\": \"met\""));
  assert_non_null(strstr(r.out, "\"circuits\": 6"));
  assert_non_null(strstr(r.out, "\"leave_by_s\": 900"));
  assert_non_null(strstr(r.out, "\"leave_by_utc\": \"18:16:00\""));
  assert_non_null(strstr(r.out, "\"without_radio\": \"approach at efc\""));
  assert_non_null(strstr(r.out, "\"cross_check\": []"));
  assert_non_null(strstr(r.out, "\"leave_by_caution\": null"));
  ran_clear(&r);
  path = write_lesson("dry.oxbow", "{\"hold\":{\"inbound_deg\":60},\"arrival\":{\"heading_deg\":60},"
                                   "\"aircraft\":{\"ias_kt\":100},"
                                   "\"fuel\":{\"on_board\":200,\"flow_h\":60}}");
  r = run_cli_for(0, "solve", path, NULL);
  assert_non_null(strstr(r.out, "\"leave_by_caution\": \"No reserve entered: "));
  ran_clear(&r);
  r = run_cli_for(0, "say", path, NULL);
  char *briefing = strstr(r.out, "Briefing\n"), *caution = strstr(r.out, "No reserve entered: ");
  assert_non_null(briefing);
  assert_true(caution > briefing);
  assert_non_null(strstr(strstr(r.out, "Time and fuel\n"), "No reserve entered: "));
  ran_clear(&r);
}

static void what_the_equipment_shows_is_checked_said_and_drawn(void **state) {
  const char *path = write_lesson(
      "shown.oxbow", TIMED_CASE ",\"shown\":{\"course_deg\":240,\"turns\":\"left\"}}");
  ran r = run_cli_for(0, "say", path, NULL);
  assert_non_null(strstr(r.out, "1 of 2 items shown differs"));
  assert_non_null(strstr(r.out, "Turns: differs, cleared right, shown left."));
  assert_non_null(strstr(r.out, "Course: same, cleared inbound 240, shown inbound 240."));
  ran_clear(&r);
  r = run_cli_for(0, "solve", path, NULL);
  assert_non_null(strstr(r.out, "{\"item\": \"Turns\", \"result\": \"differs\""));
  ran_clear(&r);
  r = run_cli_for(0, "draw", path, "-o", in_folder("a.svg"), "--compare", "shown", NULL);
  ran_clear(&r);
  char *svg = read_all(in_folder("a.svg"), NULL);
  assert_non_null(strstr(svg, "as the equipment shows it"));
  free(svg);
  path = write_lesson("same.oxbow", TIMED_CASE ",\"shown\":{\"course_deg\":240}}");
  r = run_cli("draw", path, "-o", in_folder("b.svg"), "--compare", "shown", NULL);
  assert_int_equal(r.code, 0);
  assert_non_null(strstr(r.err, "shows no other track"));
  ran_clear(&r);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test_setup_teardown(holds_lists_the_published_holds_of_a_fix, folder_make,
                                      folder_remove),
      cmocka_unit_test_setup_teardown(holds_lists_all_without_a_filter, folder_make, folder_remove),
      cmocka_unit_test_setup_teardown(holds_says_when_nothing_matches_or_can_be_read, folder_make,
                                      folder_remove),
      cmocka_unit_test_setup_teardown(a_clearance_becomes_a_lesson_that_check_accepts, folder_make,
                                      folder_remove),
      cmocka_unit_test_setup_teardown(a_doubt_is_a_question_on_the_error_stream, folder_make,
                                      folder_remove),
      cmocka_unit_test_setup_teardown(clearance_refuses_wrong_usage, folder_make, folder_remove),
      cmocka_unit_test_setup_teardown(say_speaks_every_case_and_ends_with_the_caution, folder_make,
                                      folder_remove),
      cmocka_unit_test_setup_teardown(say_tells_time_fuel_and_the_rule_without_radio, folder_make,
                                      folder_remove),
      cmocka_unit_test_setup_teardown(solve_has_the_times_of_every_passage, folder_make,
                                      folder_remove),
      cmocka_unit_test_setup_teardown(what_the_equipment_shows_is_checked_said_and_drawn,
                                      folder_make, folder_remove),
      cmocka_unit_test_setup_teardown(what_is_said_is_understood_again, folder_make, folder_remove),
      cmocka_unit_test(cases_stand_side_by_side),
      cmocka_unit_test(what_cannot_be_compared_is_explained),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
