/* Handouts as independent readers see them: pdftotext and pdffonts (poppler). */
#include <unistd.h>

#include "answers.h"
#include "oxbow/words.h"
#include "sheets_support.h"

/* What a tool prints of the PDF; freed by the caller. */
static char *read_with(const char *tool, const char *to, const GString *pdf) {
  char path[] = P_tmpdir "/oxbow-sheets-XXXXXX", line[300];
  int file = mkstemp(path);
  assert_true(file >= 0);
  assert_int_equal(write(file, pdf->str, pdf->len), pdf->len);
  close(file);
  snprintf(line, sizeof line, "%s %s %s", tool, path, to);
  FILE *pipe = popen(line, "r");
  assert_non_null(pipe);
  GString *out = g_string_new(NULL);
  char block[4096];
  size_t got;
  while ((got = fread(block, 1, sizeof block, pipe)) > 0)
    g_string_append_len(out, block, (gssize)got);
  int status = pclose(pipe);
  assert_int_equal(remove(path), 0);
  assert_int_equal(status, 0);
  return g_string_free(out, FALSE);
}

/* Everything on one line, single spaces. */
static char *words_of(const GString *pdf) {
  char *text = read_with("pdftotext -raw", "-", pdf), *to = text;
  for (const char *from = text; *from; from++) {
    bool space = *from == ' ' || *from == '\n' || *from == '\f';
    if (space && to > text && to[-1] == ' ') continue;
    *to++ = space ? ' ' : *from;
  }
  *to = '\0';
  return text;
}

static void expect(const char *text, const char *words, bool there) {
  if ((strstr(text, words) != NULL) != there)
    fail_msg("\"%s\" is %s in: %s", words, there ? "not" : "there", text);
}

static GString *made(sheets_holds *h, ox_sheets_kind kind, int per_page) {
  ox_sheets_options o = {.kind = kind, .per_page = per_page, .shuffled = true, .seed = 42,
                         .program = "Oxbow 9.9"};
  return sheets_pdf(h, &o);
}

static void both_say_what_they_are_and_carry_the_caution(void **state) {
  sheets_holds *h = sheets_make_holds(5, 8);
  for (int kind = 0; kind < 2; kind++) {
    GString *pdf = made(h, (ox_sheets_kind)kind, 2);
    char *text = words_of(pdf);
    expect(text, kind ? "Answer key" : "Worksheet", true);
    expect(text, kind ? "Worksheet" : "Answer key", false);
    expect(text, "Name", !kind);
    expect(text, "Crosswind at the lake", true);
    expect(text, "5 holds, order from seed 42", true);
    expect(text, "Oxbow 9.9, order from seed 42", true);
    expect(text, "Page 1 of 3", true);
    expect(text, "Page 3 of 3", true);
    expect(text, "Hold 5", true);
    expect(text, "AIM 5-3-8", true);
    expect(text, " NM", true);
    int cautions = 0;
    for (const char *at = text; (at = strstr(at, ox_words_caution_line())) != NULL; at++)
      cautions++;
    assert_int_equal(cautions, 3); /* one a page */
    g_free(text);
    g_string_free(pdf, TRUE);
  }
}

/* The figures of the key are those of the working; the worksheet has none of them. */
static void the_key_answers_what_the_worksheet_asks(void **state) {
  for (unsigned seed = 1; seed <= 20; seed++) {
    sheets_holds *h = sheets_make_holds(1, seed);
    GString *sheet = made(h, OX_SHEETS_WORKSHEET, 1), *key = made(h, OX_SHEETS_KEY, 1);
    char *asked = words_of(sheet), *answered = words_of(key);
    sheet_answers answers;
    assert_true(sheet_answers_make(&h->cases[0], &h->flights[0], &answers));
    assert_true(answers.count >= 4);
    for (int i = 0; i < answers.count; i++) {
      expect(asked, answers.answer[i].label, true);
      expect(answered, answers.answer[i].label, true);
      expect(answered, answers.answer[i].value, true);
    }
    char entry[32];
    snprintf(entry, sizeof entry, " %s ", ox_entry_name(h->flights[0].flown));
    expect(asked, entry, false);
    expect(answered, entry, true);
    expect(asked, "5-3-8 j3(", false); /* the paragraph of one entry */
    expect(asked, "Case A", false); /* a name may tell the answer */
    expect(answered, "Hold 1 Case A", true);
    sheet_answers_clear(&answers);
    g_free(asked);
    g_free(answered);
    g_string_free(sheet, TRUE);
    g_string_free(key, TRUE);
  }
}

static void key_and_worksheet_have_the_same_order(void **state) {
  sheets_holds *h = sheets_make_holds(9, 5);
  size_t order[9];
  ox_sheets_options o = {.shuffled = true, .seed = 42, .per_page = 4};
  ox_sheets_order(order, 9, &o);
  GString *sheet = made(h, OX_SHEETS_WORKSHEET, 4), *key = made(h, OX_SHEETS_KEY, 4);
  char *asked = words_of(sheet), *answered = words_of(key);
  for (size_t i = 0; i < 9; i++) {
    char head[64];
    snprintf(head, sizeof head, "Hold %zu Case %c", i + 1, (char)('A' + (int)order[i]));
    expect(answered, head, true);
    sheet_answers answers; /* what is given stands on both, behind the number */
    assert_true(sheet_answers_make(&h->cases[order[i]], &h->flights[order[i]], &answers));
    snprintf(head, sizeof head, "Hold %zu %.40s", i + 1, answers.given);
    expect(asked, head, true);
    sheet_answers_clear(&answers);
  }
  g_free(asked);
  g_free(answered);
  g_string_free(sheet, TRUE);
  g_string_free(key, TRUE);
}

/* DejaVu Sans is 1.164 of its size high, so that 8 points measure 9.3. */
static void no_text_is_smaller_than_eight_points(void **state) {
  static const int per_page[] = {1, 2, 4};
  sheets_holds *h = sheets_make_holds(8, 77);
  for (int i = 0; i < 3; i++) {
    GString *key = made(h, OX_SHEETS_KEY, per_page[i]);
    char *boxes = read_with("pdftotext -bbox", "-", key);
    int words = 0;
    for (const char *at = boxes; (at = strstr(at, "yMin=\"")) != NULL; at++) {
      const char *end = strstr(at, "yMax=\"");
      double height = g_ascii_strtod(end + 6, NULL) - g_ascii_strtod(at + 6, NULL);
      if (height < 9.25) fail_msg("%.3f points high: %.120s", height, at);
      words++;
    }
    assert_true(words > 300);
    g_free(boxes);
    g_string_free(key, TRUE);
  }
}

static void every_font_is_embedded(void **state) {
  sheets_holds *h = sheets_make_holds(2, 3);
  GString *key = made(h, OX_SHEETS_KEY, 2);
  char *fonts = read_with("pdffonts", "", key), *rest = NULL;
  int count = 0;
  strtok_r(fonts, "\n", &rest);
  strtok_r(NULL, "\n", &rest); /* two lines of heading */
  for (char *line; (line = strtok_r(NULL, "\n", &rest)) != NULL; count++)
    assert_non_null(strstr(line, " yes yes yes "));
  assert_true(count > 0);
  g_free(fonts);
  g_string_free(key, TRUE);
}

static void the_leave_by_of_the_fuel_is_worked_out(void **state) {
  sheets_holds *h = sheets_make_holds(1, 3);
  ox_case c = h->cases[0];
  c.fuel.on_board = 40;
  c.fuel.flow_h = 12;
  c.fuel.alternate = 15;
  c.fuel.reserve = 6; /* (40 - 15 - 6) / 12 h = 1.58333 h = 95:00 */
  c.fuel.unit = OX_FUEL_USGAL;
  sheets_scene(h, 0, &c);
  GString *key = made(h, OX_SHEETS_KEY, 1);
  char *text = words_of(key);
  expect(text, "95:00 after", true);
  expect(text, "(on board 40 − alternate 15 − reserve 6) ÷ 12 US gal an hour", true);
  expect(text, "No reserve entered", false);
  g_free(text);
  g_string_free(key, TRUE);
  c.fuel.reserve = 0;
  sheets_scene(h, 0, &c);
  key = made(h, OX_SHEETS_KEY, 1);
  text = words_of(key);
  expect(text, "No reserve entered", true);
  g_free(text);
  g_string_free(key, TRUE);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(both_say_what_they_are_and_carry_the_caution),
      cmocka_unit_test(the_key_answers_what_the_worksheet_asks),
      cmocka_unit_test(key_and_worksheet_have_the_same_order),
      cmocka_unit_test(no_text_is_smaller_than_eight_points),
      cmocka_unit_test(every_font_is_embedded),
      cmocka_unit_test(the_leave_by_of_the_fuel_is_worked_out),
  };
  return cmocka_run_group_tests_name("sheets-text", tests, NULL, NULL);
}
