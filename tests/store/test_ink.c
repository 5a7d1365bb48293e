/* Ink in lesson files: what was drawn comes back point for point, and costs few bytes. */
#include <locale.h>

#include "store_support.h"

/* Strokes as a hand draws them, of any ink and width. */
static ox_ink *random_ink(ox_random *r, int strokes) {
  ox_ink *ink = ox_ink_new();
  assert_non_null(ink);
  for (int i = 0; i < strokes; i++) {
    ox_vec p = {ox_random_between(r, -500, 500), ox_random_between(r, -500, 500)};
    ox_ink_colour colour = (ox_ink_colour)ox_random_below(r, OX_INK_COLOUR_COUNT);
    assert_int_equal(ox_ink_begin(ink, colour, (ox_ink_width)ox_random_below(r, 2), p), OX_OK);
    for (int k = ox_random_below(r, 40); k > 0; k--) {
      p.x = fmax(-500, fmin(500, p.x + ox_random_between(r, -1, 1)));
      p.y = fmax(-500, fmin(500, p.y + ox_random_between(r, -1, 1)));
      assert_int_equal(ox_ink_extend(ink, p), OX_OK);
    }
  }
  return ink;
}

static void drawn_written_and_read_is_drawn(void **state) {
  ox_random r = {77};
  for (int i = 0, cases = ox_test_cases(300); i < cases; i++) {
    ox_lesson *lesson = ox_lesson_new();
    lesson->cases[0].c = random_case(&r);
    lesson->cases[0].ink = random_ink(&r, 1 + ox_random_below(&r, 12));
    ox_case second = random_case(&r);
    assert_int_equal(ox_lesson_insert(lesson, 1, &second, NULL), OX_OK);
    char *text = ox_lesson_to_text(lesson);
    ox_lesson *again = parse_sound(text, "with ink");
    assert_lessons_equal(lesson, again, "with ink");
    assert_true(ox_ink_equal(again->cases[0].ink, lesson->cases[0].ink));
    assert_null(again->cases[1].ink);
    char *text_again = ox_lesson_to_text(again);
    assert_string_equal(text_again, text);
    free(text_again);
    free(text);
    ox_lesson_free(again);
    ox_lesson_free(lesson);
  }
}

static void a_case_without_ink_says_nothing_of_it(void **state) {
  ox_lesson *lesson = parse_sound(lesson_with("\"ink\": null"), "null");
  assert_null(lesson->cases[0].ink);
  lesson->cases[0].ink = ox_ink_new(); /* wiped clean */
  char *text = ox_lesson_to_text(lesson);
  assert_null(strstr(text, "ink"));
  free(text);
  ox_lesson_free(lesson);
}

static void what_it_costs_is_little_and_reads_well(void **state) {
  ox_lesson *lesson = ox_lesson_new();
  lesson->cases[0].ink = ox_ink_new();
  ox_ink_begin(lesson->cases[0].ink, OX_INK_BLUE, OX_INK_THIN, (ox_vec){-1.25, 3});
  for (int i = 1; i < 100; i++)
    ox_ink_extend(lesson->cases[0].ink, (ox_vec){-1.25 + i * 0.0123, 3 - i * 0.0456});
  char *text = ox_lesson_to_text(lesson);
  const char *begin = strstr(text, "\"points_nm\": [");
  assert_non_null(begin);
  const char *end = strchr(begin, ']');
  assert_true(end - begin < 100 * 22); /* 22 bytes a point at most */
  assert_non_null(strstr(begin, "[\n              -1.25, 3, -1.2377, 2.9544, "));
  for (const char *line = begin; line < end; line = strchr(line, '\n') + 1)
    assert_true(strchr(line, '\n') - line <= 100);
  free(text);
  ox_lesson_free(lesson);
}

static void the_decimal_comma_changes_nothing(void **state) {
  ox_random r = {5};
  ox_lesson *lesson = ox_lesson_new();
  lesson->cases[0].ink = random_ink(&r, 3);
  char *plain = ox_lesson_to_text(lesson);
  assert_non_null(setlocale(LC_ALL, "de_DE.UTF-8"));
  char *text = ox_lesson_to_text(lesson);
  ox_lesson *again = parse_sound(text, "under a comma");
  setlocale(LC_ALL, "C");
  assert_string_equal(text, plain);
  assert_true(ox_ink_equal(again->cases[0].ink, lesson->cases[0].ink));
  ox_lesson_free(again);
  ox_lesson_free(lesson);
  free(text);
  free(plain);
}

static void keys_of_others_stay_and_finer_points_go_to_the_grain(void **state) {
  ox_lesson *lesson = parse_sound(
      lesson_with("\"ink\": { \"drawn_by\": \"an examiner\", \"strokes\":"
                  " [ { \"points_nm\": [0.12344, -0.00001, 5e2, -500] } ] }"),
      "keys of others");
  const ox_ink *ink = lesson->cases[0].ink;
  assert_int_equal(ink->strokes[0].colour, OX_INK_BLACK); /* the defaults */
  assert_int_equal(ink->strokes[0].width, OX_INK_THIN);
  assert_true(ink->strokes[0].points_nm[0].x == 0.1234 && ink->strokes[0].points_nm[0].y == 0.0);
  char *text = ox_lesson_to_text(lesson);
  assert_non_null(strstr(text, "\"drawn_by\": \"an examiner\""));
  assert_non_null(strstr(text, "[0.1234, 0, 500, -500]"));
  free(text);
  ox_ink_clear(lesson->cases[0].ink);
  text = ox_lesson_to_text(lesson);
  assert_non_null(strstr(text, "\"ink\": { \"strokes\": [], \"drawn_by\": \"an examiner\" }"));
  ox_lesson *again = parse_sound(text, "wiped");
  assert_null(again->cases[0].ink);
  ox_lesson_free(again);
  free(text);
  ox_lesson_free(lesson);
}

static void a_copy_of_a_case_has_its_ink(void **state) {
  ox_random r = {6};
  ox_lesson *lesson = ox_lesson_new();
  lesson->cases[0].ink = random_ink(&r, 4);
  assert_int_equal(ox_lesson_insert(lesson, 1, &lesson->cases[0].c, &lesson->cases[0]), OX_OK);
  assert_true(ox_ink_equal(lesson->cases[0].ink, lesson->cases[1].ink));
  assert_ptr_not_equal(lesson->cases[0].ink, lesson->cases[1].ink);
  assert_int_equal(ox_lesson_remove(lesson, 0), OX_OK);
  assert_int_equal(lesson->cases[0].ink->stroke_count, 4);
  ox_lesson_free(lesson);
}

/* As text: a lesson with strokes of two points each, one of them of `points`. */
static char *many_strokes(int strokes, int points) {
  char *members = malloc((size_t)(strokes + points) * 64 + 100), *at = members;
  at += sprintf(at, "\"ink\": { \"strokes\": [");
  for (int i = 0; i < strokes; i++) {
    at += sprintf(at, "%s{ \"points_nm\": [0, 0", i ? ", " : "");
    for (int k = 1; k < (i == 0 ? points : 2); k++) at += sprintf(at, ", %d, 0", k % 400);
    at += sprintf(at, "] }");
  }
  sprintf(at, "] }");
  return members;
}

static void limit(int strokes, int points, const char *wanted) {
  /* lesson_with has a buffer of its own, and not one as large as this. */
  static const char head[] =
      "{ \"format\": \"oxbow-lesson\", \"version\": 1, \"cases\": [ { \"hold\": { \"inbound_deg\":"
      " 1 }, \"arrival\": { \"heading_deg\": 1 }, \"aircraft\": { \"ias_kt\": 100 }, ";
  char *members = many_strokes(strokes, points);
  char *text = malloc(strlen(head) + strlen(members) + 10);
  sprintf(text, "%s%s } ] }", head, members);
  ox_messages messages = {0};
  ox_status status;
  ox_lesson *lesson = parse_text(text, &status, &messages);
  assert_int_equal(status, wanted ? OX_ERROR : OX_OK);
  if (wanted) assert_non_null(strstr(messages.text[0], wanted));
  ox_messages_clear(&messages);
  ox_lesson_free(lesson);
  free(text);
  free(members);
}

static void limits_are_told(void **state) {
  limit(1000, 2, NULL);
  limit(1001, 2, "ink.strokes: 1001 strokes is not a list of at most 1000 strokes");
  limit(1, 20000, NULL);
  limit(1, 20001, "ink.strokes[0].points_nm: there are more than 20000 points in the strokes");
  limit(2, 19999, "ink.strokes[1].points_nm: there are more than 20000 points in the strokes");
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(drawn_written_and_read_is_drawn),
      cmocka_unit_test(a_case_without_ink_says_nothing_of_it),
      cmocka_unit_test(what_it_costs_is_little_and_reads_well),
      cmocka_unit_test(the_decimal_comma_changes_nothing),
      cmocka_unit_test(keys_of_others_stay_and_finer_points_go_to_the_grain),
      cmocka_unit_test(a_copy_of_a_case_has_its_ink),
      cmocka_unit_test(limits_are_told),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
