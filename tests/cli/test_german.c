/* The command line in German: what people read is translated, what programs read is the same to the
 * byte. */
#include "cli_run.h"
#include "ox_german.h"

#include <cJSON.h>

typedef struct {
  ran english, german;
} both;

static both run_both(const char *const *words) {
  both b;
  for (int german = 0; german < 2; german++) {
    if (german) speak_german();
    ran r = run_cli(words[0], words[0] ? words[1] : NULL, words[0] && words[1] ? words[2] : NULL,
                    words[0] && words[1] && words[2] ? words[3] : NULL,
                    words[0] && words[1] && words[2] && words[3] ? words[4] : NULL, NULL);
    if (german)
      b.german = r;
    else
      b.english = r;
  }
  speak_english();
  assert_int_equal(b.english.code, b.german.code);
  return b;
}

static void both_clear(both *b) {
  ran_clear(&b->english);
  ran_clear(&b->german);
}

/* ---- for people ------------------------------------------------------------------------- */

/* The terms of the help, a verb or an option a line, without what they do. */
static char *terms_of(const char *help) {
  char *terms = calloc(1, strlen(help) + 1), *out = terms;
  assert_non_null(terms);
  for (const char *line = help; line && *line; line = strchr(line, '\n'), line += line != NULL) {
    size_t length = strcspn(line, "\n");
    bool term = strncmp(line, "  ", 2) == 0 && (line[2] != ' ' || strncmp(line, "      -", 7) == 0);
    if (!term) continue;
    const char *gap = strstr(line + 6, "   ");
    if (gap && gap < line + length) length = (size_t)(gap - line);
    memcpy(out, line, length);
    out += length;
    *out++ = '\n';
  }
  return terms;
}

static void the_help_has_the_same_terms_and_german_texts(void **state) {
  static const char *const words[] = {"--help", NULL, NULL, NULL, NULL};
  both b = run_both(words);
  char *ours = terms_of(b.english.out), *theirs = terms_of(b.german.out);
  assert_string_equal(ours, theirs);
  assert_true(strlen(ours) > 800);
  assert_german(b.english.out, b.german.out);
  for (const char *line = b.german.out; *line; line += strcspn(line, "\n") + 1) {
    size_t columns = 0;
    for (const char *at = line; *at && *at != '\n'; at++)
      columns += ((unsigned char)*at & 0xc0) != 0x80;
    bool in_the_table = line[0] == ' ';
    if (in_the_table && columns > 95) fail_msg("a line of %zu columns", columns);
  }
  free(ours);
  free(theirs);
  both_clear(&b);
}

static void wrong_usage_is_told_in_german(void **state) {
  const char *demo = write_lesson("demo.oxbow", "{\"hold\":{\"inbound_deg\":240},"
                                                "\"arrival\":{\"heading_deg\":290},"
                                                "\"aircraft\":{\"ias_kt\":100}}");
  const char *const rows[][5] = {
      {NULL},
      {"fly", demo},
      {"solve"},
      {"solve", demo, "--case"},
      {"solve", demo, "-x"},
      {"solve", demo, "--case=x", "--case=y"},
      {"track", demo, "--step", "0"},
      {"track", demo, "--step", "0.05", "--format=kml"},
      {"track", demo, "--format", "x"},
      {"track", demo, "-o", "x.csv"},
      {"track", demo, "--date", "x"},
      {"track", demo, "--format=kml"},
      {"track", demo, "--format=kml", "--date=2026-02-30"},
      {"track", demo, "--format=kml", "--fix-at=91N"},
      {"track", demo, "--latlon"},
      {"draw", demo},
      {"draw", demo, "-o", "x"},
      {"draw", demo, "-o", "a%x.png"},
      {"draw", demo, "-o", "x.pdf", "--fps=3"},
      {"draw", demo, "-o", "x.gif", "--fps=300"},
      {"draw", demo, "-o", "x.gif", "--dpi=100"},
      {"draw", demo, "-o", "x.svg", "--transparent"},
      {"draw", demo, "-o", "x.gif", "--moments"},
      {"draw", demo, "-o", "x.gif", "--at=1"},
      {"draw", demo, "-o", "x.png", "--size=1"},
      {"draw", demo, "-o", "x.pdf", "--size=1"},
      {"draw", demo, "-o", "x.png", "--palette=x"},
      {"draw", demo, "-o", "x.png", "--at=x"},
      {"draw", demo, "-o", "x.png", "--compare=x"},
      {"draw", demo, "-o", "x.png", "--seed=1"},
      {"draw", demo, "-o", "x.png", "--spread=0"},
      {"draw", demo, "-o", "x.png", "--across"},
      {"draw", demo, "-o", "x.png", "--worksheet"},
      {"draw", demo, "-o=x.pdf", "--worksheet", "--key"},
      {"draw", demo, "-o=x.pdf", "--worksheet", "--area"},
      {"draw", demo, "-o=x.pdf", "--key", "--paper=x"},
      {"draw", demo, "-o=x.pdf", "--key", "--per-page=3"},
      {"draw", demo, "-o=x.pdf", "--key", "--seed=x"},
      {"draw", demo, "-o", "/nowhere/x.png"},
      {"check"},
      {"check", "/nowhere/x.oxbow"},
      {"spread", demo, "--threads", "0"},
      {"techniques", demo},
      {"clearance"},
      {"clearance", "x", "--now=x"},
      {"clearance", "x", "--wording=x"},
      {"say"},
      {"compare", demo},
      {"compare", demo, "--with=nothing"},
      {"holds"},
      {"holds", "/nowhere/x"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    both b = run_both(rows[i]);
    if (b.english.code == 0) fail_msg("row %zu is done", i);
    assert_string_equal(b.english.out, b.german.out);
    assert_german(b.english.err, b.german.err);
    both_clear(&b);
  }
}

/* The names of the cases are those of the lesson. */
static void a_case_that_is_not_there_is_told_in_german(void **state) {
  const char *const words[5] = {"solve", lesson_path("demo.oxbow"), "--case", "x"};
  both b = run_both(words);
  const char *german = strstr(b.german.err, ": es gibt keinen Fall „x“; die Fälle sind:\n  Calm:");
  assert_non_null(german);
  both_clear(&b);
}

static void say_has_german_headings(void **state) {
  const char *const words[5] = {"say", lesson_path("demo.oxbow"), "--area", "--mistakes",
                                "--cross-check"};
  both b = run_both(words);
  assert_int_equal(b.german.code, 0);
  static const char *const headings[] = {"\nFreigabe\n", "\nRücklesen\n", "\nAm Fix\n",
                                         "\nSchritt für Schritt\n", "\nZeit und Kraftstoff\n",
                                         "\nSchutzraum\n", "\nFehler\n", "\nGegenprüfung\n"};
  for (size_t i = 0; i < sizeof headings / sizeof *headings; i++)
    if (!strstr(b.german.out, headings[i])) fail_msg("%s is not said", headings[i]);
  both_clear(&b);
}

/* ---- for programs ----------------------------------------------------------------------- */

static const char *const lessons[] = {"adjusting.oxbow",       "demo.oxbow",   "distance.oxbow",
                                      "high-and-fast.oxbow",   "places.oxbow", "techniques.oxbow",
                                      "outbound-timing.oxbow"};

static void tables_know_no_language(void **state) {
  int compared = 0;
  for (size_t i = 0; i < sizeof lessons / sizeof *lessons; i++) {
    char path[1000];
    snprintf(path, sizeof path, "%s", lesson_path(lessons[i]));
    const char *const rows[][5] = {{"track", path, "--step=30"},
                                   {"spread", path, "--runs=20"},
                                   {"techniques"},
                                   {"compare", path, "--with=calm", "--and=triple-drift"}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
      both b = run_both(rows[k]);
      /* A change may make no other case, or one that cannot be flown. */
      compared += b.english.code == 0;
      assert_string_equal(b.english.out, b.german.out);
      both_clear(&b);
    }
  }
  assert_true(compared >= 20);
}

static void published_holds_know_no_language(void **state) {
  char records[1000];
  snprintf(records, sizeof records, "%s/navdata/cifp-excerpt.txt", getenv("OXBOW_TEST_DATA"));
  const char *const words[5] = {"holds", records};
  both b = run_both(words);
  assert_int_equal(b.english.code, 0);
  assert_string_equal(b.english.out, b.german.out);
  assert_german(b.english.err, b.german.err); /* what was left out, and why */
  both_clear(&b);
}

/* What is solved, without its advisories, which are sentences for people and are compared as such. */
static char *numbers_of(const char *json) {
  cJSON *tree = cJSON_Parse(json), *c;
  assert_non_null(tree);
  cJSON_ArrayForEach(c, tree) cJSON_DeleteItemFromObject(c, "advisories");
  char *text = cJSON_PrintUnformatted(tree);
  cJSON_Delete(tree);
  return text;
}

static size_t compare_advisories(const char *english, const char *german) {
  cJSON *ours = cJSON_Parse(english), *theirs = cJSON_Parse(german);
  size_t count = 0;
  for (int i = 0; i < cJSON_GetArraySize(ours); i++) {
    const cJSON *a = cJSON_GetObjectItem(cJSON_GetArrayItem(ours, i), "advisories");
    const cJSON *b = cJSON_GetObjectItem(cJSON_GetArrayItem(theirs, i), "advisories");
    assert_int_equal(cJSON_GetArraySize(a), cJSON_GetArraySize(b));
    for (int k = 0; k < cJSON_GetArraySize(a); k++, count++)
      assert_german(cJSON_GetArrayItem(a, k)->valuestring, cJSON_GetArrayItem(b, k)->valuestring);
  }
  cJSON_Delete(ours);
  cJSON_Delete(theirs);
  return count;
}

static void what_is_solved_is_the_same_but_for_whole_sentences(void **state) {
  size_t advisories = 0;
  for (size_t i = 0; i < sizeof lessons / sizeof *lessons; i++) {
    const char *const words[5] = {"solve", lesson_path(lessons[i])};
    both b = run_both(words);
    assert_int_equal(b.english.code, 0);
    char *ours = numbers_of(b.english.out), *theirs = numbers_of(b.german.out);
    assert_string_equal(ours, theirs);
    advisories += compare_advisories(b.english.out, b.german.out);
    cJSON_free(ours);
    cJSON_free(theirs);
    both_clear(&b);
  }
  assert_true(advisories > 0);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_help_has_the_same_terms_and_german_texts),
      cmocka_unit_test_setup_teardown(wrong_usage_is_told_in_german, folder_make, folder_remove),
      cmocka_unit_test(a_case_that_is_not_there_is_told_in_german),
      cmocka_unit_test(say_has_german_headings),
      cmocka_unit_test(tables_know_no_language),
      cmocka_unit_test(published_holds_know_no_language),
      cmocka_unit_test(what_is_solved_is_the_same_but_for_whole_sentences),
  };
  return cmocka_run_group_tests(tests, german_set_up, german_tear_down);
}
