/* Exit codes, messages, help, check; and the program itself in a German environment. */
#include <dirent.h>
#include <sys/wait.h>

#include "../../src/cli/cli.h"
#include "cli_run.h"

static const char *program; /* argv[1] */

/* --- wrong usage --------------------------------------------------------------------------- */

static void assert_usage(ran r, const char *says) {
  assert_int_equal(r.code, 2);
  assert_string_equal(r.out, "");
  if (!strstr(r.err, says)) fail_msg("\"%s\" is not in: %s", says, r.err);
  /* one line of what is wrong, and the pointer to --help */
  const char *end = strchr(r.err, '\n');
  assert_non_null(end);
  assert_string_equal(end + 1, "Try 'oxbow-cli --help'.\n");
  ran_clear(&r);
}

static void wrong_usage_is_said_in_one_line(void **state) {
  const char *demo = lesson_path("demo.oxbow");
  assert_usage(run_cli(NULL, NULL), "a verb is needed");
  assert_usage(run_cli("fly", demo, NULL), "\"fly\" is not a verb");
  assert_usage(run_cli("solve", NULL), "solve needs one lesson");
  assert_usage(run_cli("solve", demo, demo, NULL), "solve needs one lesson");
  assert_usage(run_cli("track", NULL), "track needs one lesson");
  assert_usage(run_cli("draw", "-o", "a.png", NULL), "draw needs one lesson");
  assert_usage(run_cli("check", NULL), "check needs a lesson");
  assert_usage(run_cli("solve", demo, "--case", NULL), "--case needs a value");
  assert_usage(run_cli("solve", demo, "--step", "5", NULL), "no option --step here");
  assert_usage(run_cli("check", demo, "--case", "x", NULL), "no option --case here");
  assert_usage(run_cli("solve", demo, "--case", "x", "--case=y", NULL), "--case is given twice");
  assert_usage(run_cli("solve", demo, "-x", NULL), "no option -x here");
  assert_usage(run_cli("spread", NULL), "spread needs one lesson");
  assert_usage(run_cli("techniques", demo, NULL), "techniques takes no lesson");
}

static void help_and_version_go_to_the_output(void **state) {
  ran r = run_cli_for(0, "--help", NULL);
  static const char *const parts[] = {"solve",
                                      "track",
                                      "draw",
                                      "check",
                                      "--case",
                                      "--step",
                                      "--size",
                                      "--palette",
                                      "--at",
                                      "--compare",
                                      "--area",
                                      "--spread",
                                      "--seed",
                                      "--runs",
                                      "--threads",
                                      "techniques",
                                      "exact",
                                      "drift-wrong-side",
                                      "clock-at-fix",
                                      "teardrop-wrong-side",
                                      "parallel-wrong-turn",
                                      "radial-as-course",
                                      "late-speed",
                                      "--version",
                                      "For instruction only, not for navigation."};
  for (size_t i = 0; i < sizeof parts / sizeof *parts; i++)
    assert_non_null(strstr(r.out, parts[i]));
  for (const char *at = r.out, *end; *at; at = end + 1) {
    end = strchr(at, '\n');
    assert_non_null(end);
    assert_true(end - at <= (strstr(at, "For instruction") == at ? 250 : 100));
  }
  ran_clear(&r);
  r = run_cli_for(0, "solve", "--help", NULL);
  assert_non_null(strstr(r.out, "Usage:"));
  ran_clear(&r);
  r = run_cli_for(0, "--version", NULL);
  assert_memory_equal(r.out, "oxbow-cli ", 10);
  assert_true(r.out[10] >= '0' && r.out[10] <= '9');
  assert_non_null(strstr(r.out, "not for navigation"));
  ran_clear(&r);
}

/* A line a technique, each of four fields; --compare takes every key (test_overlays). */
static void techniques_are_listed_with_rule_and_source(void **state) {
  ran r = run_cli_for(0, "techniques", NULL);
  assert_memory_equal(r.out, "key,name,rule,source\nexact,Exact in this wind,", 41);
  assert_non_null(strstr(r.out, "\naim,\"FAA: inbound timed, triple drift\",\"Three times"));
  assert_non_null(strstr(r.out, "\"AIM 5-3-8 j4, j8(b), j8(c)\"\n"));
  int lines = 0;
  for (const char *at = r.out; *at; at = strchr(at, '\n') + 1) {
    int commas = 0;
    bool quoted = false;
    for (const char *c = at; *c != '\n'; c++) {
      if (*c == '"') quoted = !quoted;
      if (*c == ',' && !quoted) commas++;
    }
    assert_int_equal(commas, 3);
    lines++;
  }
  assert_true(lines >= 10);
  ran_clear(&r);
}

/* --- the input at fault -------------------------------------------------------------------- */

static void every_fault_is_told_with_its_case_and_key(void **state) {
  const char *path =
      write_lesson("bad.oxbow", "{\"name\":\"Too far round\",\"hold\":{\"inbound_deg\":400},"
                                "\"arrival\":{\"heading_deg\":90},\"aircraft\":{\"ias_kt\":100},"
                                "\"wind\":{\"from_deg\":90,\"kt\":-5}},"
                                "{\"name\":\"Too slow\",\"hold\":{\"inbound_deg\":40},"
                                "\"arrival\":{\"heading_deg\":90},\"aircraft\":{\"ias_kt\":5}}");
  static const char *const verbs[] = {"check", "solve", "track"};
  for (size_t i = 0; i < 3; i++) {
    ran r = run_cli(verbs[i], path, NULL);
    char wanted[600];
    assert_int_equal(r.code, 1);
    assert_string_equal(r.out, "");
    snprintf(wanted, sizeof wanted,
             "%s: case \"Too far round\": hold.inbound_deg: 400 is not a course (0 to 360)\n",
             path);
    assert_non_null(strstr(r.err, wanted));
    assert_non_null(strstr(r.err, "case \"Too far round\": wind.kt: -5 is not a wind speed"));
    assert_non_null(strstr(r.err, "case \"Too slow\": aircraft.ias_kt: 5 is not"));
    ran_clear(&r);
  }
  assert_int_equal(remove(path), 0);
}

static void a_lesson_that_is_not_there_is_the_input_at_fault(void **state) {
  ran r = run_cli_for(1, "check", in_folder("none.oxbow"), NULL);
  assert_non_null(strstr(r.err, "none.oxbow: cannot be read"));
  ran_clear(&r);
  r = run_cli_for(1, "solve", in_folder(""), NULL); /* a directory */
  ran_clear(&r);
}

static void an_unknown_case_lists_the_names_there_are(void **state) {
  static const char *const verbs[] = {"solve", "track"};
  for (size_t i = 0; i < 2; i++) {
    ran r = run_cli_for(1, verbs[i], lesson_path("adjusting.oxbow"), "--case", "Nothing", NULL);
    assert_string_equal(r.out, "");
    assert_non_null(strstr(r.err, "there is no case \"Nothing\""));
    assert_non_null(strstr(r.err, "The same headwind worked out exactly"));
    assert_non_null(strstr(r.err, "Six seconds late into every turn"));
    ran_clear(&r);
  }
}

static void check_takes_several_lessons_and_looks_at_all(void **state) {
  const char *good =
      write_lesson("good.oxbow", "{\"hold\":{\"inbound_deg\":90},\"arrival\":"
                                 "{\"heading_deg\":90},\"aircraft\":{\"ias_kt\":99}}");
  ran r = run_cli_for(0, "check", good, good, NULL);
  assert_string_equal(r.out, "");
  ran_clear(&r);
  const char *bad = write_lesson("bad.oxbow", "{}"), *worse = in_folder("worse.oxbow");
  write_text(worse, "not JSON");
  r = run_cli_for(1, "check", bad, good, worse, NULL);
  assert_non_null(strstr(r.err, "bad.oxbow"));
  assert_non_null(strstr(r.err, "worse.oxbow"));
  assert_null(strstr(r.err, "good.oxbow"));
  ran_clear(&r);
}

static void a_newer_lesson_is_read_with_a_remark(void **state) {
  const char *path = in_folder("newer.oxbow");
  write_text(path, "{\"format\":\"oxbow-lesson\",\"version\":2,\"cases\":[{\"hold\":"
                   "{\"inbound_deg\":90},\"arrival\":{\"heading_deg\":90},"
                   "\"aircraft\":{\"ias_kt\":100}}]}");
  ran r = run_cli("solve", path, NULL);
  assert_int_equal(r.code, 0);
  assert_non_null(strstr(r.err, "newer"));
  assert_int_equal(r.out[0], '[');
  ran_clear(&r);
}

static void a_file_whose_name_begins_with_a_dash_follows_two(void **state) {
  ran r = run_cli("check", "--", "-none.oxbow", NULL);
  assert_int_equal(r.code, 1); /* it is looked for, and not there */
  assert_non_null(strstr(r.err, "-none.oxbow: cannot be read"));
  ran_clear(&r);
}

/* /dev/full takes nothing, like a full disk. */
static void an_output_that_is_full_is_a_failure(void **state) {
  static const char *const verbs[] = {"solve",      "track",  "spread",
                                      "techniques", "--help", "--version"};
  for (size_t i = 0; i < 6; i++) {
    char words[3][600] = {"oxbow-cli"}, *text = NULL;
    snprintf(words[1], sizeof words[1], "%s", verbs[i]);
    snprintf(words[2], sizeof words[2], "%s", lesson_path("demo.oxbow"));
    char *argv[] = {words[0], words[1], words[2], NULL};
    size_t bytes;
    FILE *out = fopen("/dev/full", "w"), *err = open_memstream(&text, &bytes);
    assert_non_null(out);
    assert_non_null(err);
    assert_int_equal(ox_cli_main(i == 3 ? 2 : 3, argv, out, err), 1);
    fclose(out);
    fclose(err);
    assert_non_null(strstr(text, "could not be written"));
    free(text);
  }
}

/* --- the lessons that come with it --------------------------------------------------------- */

static void every_lesson_of_the_project_is_sound(void **state) {
  const char *base = getenv("OXBOW_LESSONS");
  assert_non_null(base);
  DIR *open = opendir(base);
  assert_non_null(open);
  int count = 0;
  for (struct dirent *entry = readdir(open); entry; entry = readdir(open)) {
    if (!strstr(entry->d_name, ".oxbow")) continue;
    ran r = run_cli_for(0, "check", lesson_path(entry->d_name), NULL);
    assert_string_equal(r.out, "");
    ran_clear(&r);
    count++;
  }
  closedir(open);
  assert_true(count >= 6);
}

/* --- the program --------------------------------------------------------------------------- */

/* Runs a shell line in which $CLI is the program and $DEMO the lesson, all in German. */
static int shell(const char *line, char *out, size_t bytes) {
  assert_int_equal(setenv("CLI", program, 1), 0);
  assert_int_equal(setenv("DEMO", lesson_path("demo.oxbow"), 1), 0);
  assert_int_equal(setenv("LC_ALL", "de_DE.UTF-8", 1), 0);
  FILE *pipe = popen(line, "r");
  assert_non_null(pipe);
  size_t got = fread(out, 1, bytes - 1, pipe);
  out[got] = '\0';
  while (fgetc(pipe) != EOF)
    continue;
  int status = pclose(pipe);
  unsetenv("LC_ALL");
  assert_true(WIFEXITED(status));
  return WEXITSTATUS(status);
}

static void the_program_ends_with_the_codes(void **state) {
  static const struct {
    const char *line;
    int code;
    const char *begins;
  } rows[] = {
      {"\"$CLI\" solve \"$DEMO\"", 0, "[\n  {\n    \"case\": "},
      {"\"$CLI\" track \"$DEMO\" --step 20.5", 0, "case,t_s,x_nm,y_nm,"},
      {"\"$CLI\" check \"$DEMO\"", 0, ""},
      {"\"$CLI\" check \"$DEMO.none\" 2>&1", 1, "/"},
      {"\"$CLI\" 2>&1", 2, "oxbow-cli: a verb is needed"},
      {"\"$CLI\" solve \"$DEMO\" 2>&1 >/dev/full", 1, "oxbow-cli: the output could not be written"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    char out[4000];
    int code = shell(rows[i].line, out, sizeof out);
    if (code != rows[i].code) fail_msg("%s: exit code %d", rows[i].line, code);
    if (strncmp(out, rows[i].begins, strlen(rows[i].begins)) != 0)
      fail_msg("%s: begins with %.40s", rows[i].line, out);
  }
}

static void the_program_writes_points_in_german(void **state) {
  char out[4000];
  assert_int_equal(
      shell("\"$CLI\" track \"$DEMO\" --case \"Teardrop entry: arriving from the south-west\"", out,
            sizeof out),
      0);
  const char *line = strchr(out, '\n');
  assert_non_null(line);
  const char *end = strchr(line + 1, '\n');
  int commas = 0, points = 0;
  for (const char *at = line + 1; at < end; at++)
    commas += *at == ',', points += *at == '.';
  assert_int_equal(commas, 7);
  assert_int_equal(points, 6);
}

int main(int argc, char **argv) {
  if (argc != 2) {
    fprintf(stderr, "usage: test_cli_usage OXBOW-CLI\n");
    return 2;
  }
  program = argv[1];
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(wrong_usage_is_said_in_one_line),
      cmocka_unit_test(help_and_version_go_to_the_output),
      cmocka_unit_test(techniques_are_listed_with_rule_and_source),
      cmocka_unit_test(every_fault_is_told_with_its_case_and_key),
      cmocka_unit_test(a_lesson_that_is_not_there_is_the_input_at_fault),
      cmocka_unit_test(an_unknown_case_lists_the_names_there_are),
      cmocka_unit_test(check_takes_several_lessons_and_looks_at_all),
      cmocka_unit_test(a_newer_lesson_is_read_with_a_remark),
      cmocka_unit_test(a_file_whose_name_begins_with_a_dash_follows_two),
      cmocka_unit_test(an_output_that_is_full_is_a_failure),
      cmocka_unit_test(every_lesson_of_the_project_is_sound),
      cmocka_unit_test(the_program_ends_with_the_codes),
      cmocka_unit_test(the_program_writes_points_in_german),
  };
  return cmocka_run_group_tests(tests, folder_make, folder_remove);
}
