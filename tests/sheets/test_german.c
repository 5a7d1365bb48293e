/* Worksheets and keys in German: the same questions and figures, and the same bytes whatever the
 * locale says of numbers. */
#include "answers.h"
#include "ox_german.h"
#include "sheets_support.h"

enum { SEEDS = 150 };

static bool has_letters(const char *text) {
  for (; *text; text++)
    if (isalpha((unsigned char)*text)) return true;
  return false;
}

static ox_case seeded(unsigned seed) {
  ox_random r = {seed};
  ox_case c = paint_mild_case(&r);
  if (seed % 3 == 0) c.hold.efc_min = ox_random_below(&r, 1440);
  if (seed % 4 == 0) c.wind[0].kt = 0.0;
  return c;
}

static void the_same_is_asked_and_answered_with_the_same_figures(void **state) {
  size_t translated = 0;
  for (unsigned seed = 1, seeds = (unsigned)ox_test_cases(SEEDS); seed <= seeds; seed++) {
    ox_case c = seeded(seed);
    sheet_answers english, german;
    assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
    speak_english();
    assert_true(sheet_answers_make(&c, &paint_flight, &english));
    speak_german();
    assert_true(sheet_answers_make(&c, &paint_flight, &german));
    assert_int_equal(english.count, german.count);
    assert_german(english.given, german.given);
    for (int i = 0; i < english.count; i++) {
      const sheet_answer *a = &english.answer[i], *b = &german.answer[i];
      assert_string_equal(a->key, b->key);
      assert_german(a->label, b->label);
      assert_same_figures(a->value, b->value);
      if (has_letters(a->why)) assert_german(a->why, b->why);
      translated++;
    }
    sheet_answers_clear(&english);
    sheet_answers_clear(&german);
  }
  assert_true(translated >= (size_t)ox_test_least(5 * SEEDS));
}

/* Plain text of a PDF by an independent reader; freed by the caller. */
static char *text_of(const GString *pdf) {
  char path[] = P_tmpdir "/oxbow-german-XXXXXX", line[200];
  int file = mkstemp(path);
  assert_true(file >= 0);
  FILE *out = fdopen(file, "wb");
  assert_int_equal(fwrite(pdf->str, 1, pdf->len, out), pdf->len);
  assert_int_equal(fclose(out), 0);
  snprintf(line, sizeof line, "pdftotext -raw %s -", path);
  FILE *pipe = popen(line, "r");
  assert_non_null(pipe);
  GString *text = g_string_new(NULL);
  for (int c; (c = fgetc(pipe)) != EOF;) g_string_append_c(text, c == '\n' ? ' ' : (char)c);
  assert_int_equal(pclose(pipe), 0);
  assert_int_equal(remove(path), 0);
  return g_string_free(text, FALSE);
}

static void a_page_is_german_from_head_to_foot(void **state) {
  static const char *const both[] = {"Warteschleife 1", "Seite 1 von 2", "Nur für den Unterricht",
                                     "Reihenfolge", "Quellen: "};
  speak_german();
  for (int kind = 0; kind < 2; kind++)
    for (size_t count = 1; count <= 3; count += 2) {
      sheets_holds *h = sheets_make_holds(count, 8);
      for (size_t i = 0; i < count; i++) h->scenes[i].title = "Seitenwind am See";
      ox_sheets_options o = {.kind = (ox_sheets_kind)kind, .per_page = 2, .shuffled = true,
                             .seed = 42, .program = "Oxbow 9.9"};
      GString *pdf = sheets_pdf(h, &o);
      char *text = text_of(pdf);
      assert_non_null(strstr(text, kind ? "Lösungsblatt" : "Arbeitsblatt"));
      assert_non_null(strstr(text, count == 1 ? "1 Warteschleife, " : "3 Warteschleifen, "));
      assert_non_null(strstr(text, "missweisend, wo nicht rechtweisend steht.")); /* not cut */
      assert_true((strstr(text, "Datum") != NULL) == !kind);
      for (size_t i = 0; count == 3 && i < sizeof both / sizeof *both; i++)
        if (!strstr(text, both[i])) fail_msg("no \"%s\" in %s", both[i], text);
      const char *word = german_left_over(text);
      if (word && strcmp(word, " a ") != 0) fail_msg("\"%s\" is left in %s", word, text);
      g_free(text);
      g_string_free(pdf, TRUE);
    }
}

static void the_bytes_do_not_depend_on_the_locale_of_numbers(void **state) {
  speak_german();
  for (int kind = 0; kind < 2; kind++) {
    ox_sheets_options o = {.kind = (ox_sheets_kind)kind, .per_page = 4, .program = "Oxbow 9.9"};
    sheets_holds *h = sheets_make_holds(4, 3);
    assert_non_null(setlocale(LC_NUMERIC, "de_DE.UTF-8"));
    GString *comma = sheets_pdf(h, &o);
    assert_non_null(setlocale(LC_NUMERIC, "C"));
    GString *point = sheets_pdf(h, &o);
    assert_true(g_string_equal(comma, point));
    g_string_free(comma, TRUE);
    g_string_free(point, TRUE);
  }
  assert_non_null(setlocale(LC_NUMERIC, "de_DE.UTF-8"));
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_same_is_asked_and_answered_with_the_same_figures),
      cmocka_unit_test(a_page_is_german_from_head_to_foot),
      cmocka_unit_test(the_bytes_do_not_depend_on_the_locale_of_numbers),
  };
  return cmocka_run_group_tests_name("german", tests, german_set_up, german_tear_down);
}
