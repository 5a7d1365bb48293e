/* Lessons broken at random, always in the same way: whatever the bytes, the reader comes back with
 * a lesson or with a reason, and what it took can be written and read again. */
#include "store_support.h"

#define TEXT_MAX 16384

static size_t seeds_count;
static char *seeds[32];
static size_t seed_lengths[32];

static void visit_seed(const char *path, void *context) {
  if (seeds_count < sizeof seeds / sizeof *seeds) {
    seeds[seeds_count] = file_text(path, &seed_lengths[seeds_count]);
    seeds_count++;
  }
}

static int load_seeds(void **state) {
  char directory[4096];
  snprintf(directory, sizeof directory, "%s", data_path("."));
  each_lesson(directory, visit_seed, NULL);
  return seeds_count >= 4 ? 0 : -1;
}

static int free_seeds(void **state) {
  while (seeds_count > 0) free(seeds[--seeds_count]);
  return 0;
}

static size_t splice(char *text, size_t length, size_t at, size_t removed, const char *put,
                     size_t put_length) {
  if (removed > length - at) removed = length - at;
  if (length - removed + put_length > TEXT_MAX) return length;
  memmove(text + at + put_length, text + at + removed, length - at - removed);
  memcpy(text + at, put, put_length);
  return length - removed + put_length;
}

/* One change: a byte, a piece taken out, doubled or moved, or something a lesson might hold. */
static size_t mutate(ox_random *r, char *text, size_t length) {
  static const char *const pieces[] = {
      "{", "}", "[", "]", ",", ":", "\"", "\\", "null", "true", "-", "0", "1e999", "-1e-999", "360",
      "361", "\\u0000", "\\ud800", "\xff", "\xc3\xa9", "\n", "[[[[[[[[", "\"wind\": [",
      "\"version\": 2,", "\"left\"", "\"distance\"", "\"nm\": 4,", "{}", "\"a\": {},", "-0", "9",
      "\"station\": 1,", "\"12:30\"", "\"station\": { \"nm\": 0 },",
      "\"climb_ft_min\": 700,", "\"climb_to_ft\": 9000,", "\"fix_at\": \"12:30:01\",",
      "\"wind_changes\": [ { \"at_min\": 2, \"kt\": 0 } ],", "\"end\": \"inbound\","};
  size_t at = length ? (size_t)ox_random_below(r, (int)length) : 0;
  size_t span = 1 + (size_t)ox_random_below(r, 24);
  if (span > length - at) span = length - at;
  char copy[32];
  memcpy(copy, text + at, span);
  switch (ox_random_below(r, 7)) {
    case 0: copy[0] = (char)ox_random_bits(r); return splice(text, length, at, 1, copy, 1);
    case 1: return splice(text, length, at, span, "", 0);
    case 2: {
      size_t to = length ? (size_t)ox_random_below(r, (int)length) : 0;
      return splice(text, length, to, 0, copy, span);
    }
    case 3:
    case 4: /* a figure for a figure: mostly still a lesson */
      while (at < length && (text[at] < '0' || text[at] > '9')) at++;
      if (at < length) text[at] = (char)('0' + ox_random_below(r, 10));
      return length;
    default: {
      const char *piece = pieces[ox_random_below(r, (int)(sizeof pieces / sizeof *pieces))];
      return splice(text, length, at, ox_random_below(r, 2) ? span : 0, piece, strlen(piece));
    }
  }
}

static void assert_can_be_written_and_read(const ox_lesson *lesson) {
  char *text = ox_lesson_to_text(lesson);
  assert_non_null(text);
  ox_messages messages = {0};
  ox_status status;
  ox_lesson *again = parse_text(text, &status, &messages);
  assert_non_null(again);
  assert_lessons_equal(lesson, again, text);
  char *text_again = ox_lesson_to_text(again);
  assert_string_equal(text_again, text);
  for (size_t i = 0; i < again->case_count; i++)
    assert_int_equal(ox_case_check(&again->cases[i].c, NULL, 0), 0);
  ox_messages_clear(&messages);
  ox_lesson_free(again);
  free(text_again);
  free(text);
}

static void thirty_thousand_broken_lessons_are_read_or_refused_with_a_reason(void **state) {
  ox_random r = {20};
  int read_count = 0, refused_count = 0;
  static char text[TEXT_MAX + 1];
  for (int i = 0, cases = ox_test_cases(30000); i < cases; i++) {
    size_t seed = (size_t)ox_random_below(&r, (int)seeds_count), length = seed_lengths[seed];
    memcpy(text, seeds[seed], length);
    for (int changes = 1 + ox_random_below(&r, 3); changes > 0; changes--)
      length = mutate(&r, text, length);
    char *exact = malloc(length + 1); /* so that a read beyond the end is seen */
    assert_non_null(exact);
    memcpy(exact, text, length);
    ox_messages messages = {0};
    ox_lesson *lesson = NULL;
    ox_status status = ox_lesson_parse(exact, length, "x", &lesson, &messages);
    free(exact);
    assert_int_equal(lesson != NULL, status != OX_ERROR);
    assert_int_equal(messages.count > 0, status != OX_OK);
    if (lesson) assert_can_be_written_and_read(lesson);
    read_count += lesson != NULL;
    refused_count += lesson == NULL;
    ox_lesson_free(lesson);
    ox_messages_clear(&messages);
  }
  assert_true(read_count > ox_test_least(3000) && refused_count > ox_test_least(10000));
}

static void every_beginning_of_a_lesson_is_refused(void **state) {
  for (size_t s = 0; s < seeds_count; s++) {
    size_t end = seed_lengths[s];
    while (end > 0 && seeds[s][end - 1] != '}') end--;
    for (size_t length = 0; length < end; length++) {
      char *exact = malloc(length + 1);
      assert_non_null(exact);
      memcpy(exact, seeds[s], length);
      ox_messages messages = {0};
      ox_lesson *lesson = NULL;
      ox_status status = ox_lesson_parse(exact, length, "x", &lesson, &messages);
      free(exact);
      assert_int_equal(status, OX_ERROR);
      assert_int_equal(messages.count, 1);
      ox_messages_clear(&messages);
    }
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(thirty_thousand_broken_lessons_are_read_or_refused_with_a_reason),
      cmocka_unit_test(every_beginning_of_a_lesson_is_refused),
  };
  return cmocka_run_group_tests(tests, load_seeds, free_seeds);
}
