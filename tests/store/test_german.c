/* What the store says of files, in German: as many messages as in English, about the same place,
 * key and value, with the same figures. */
#include "bad_files.h"
#include "ox_german.h"
#include "store_support.h"

#include <unistd.h>

#include "oxbow/file.h"

static void assert_german_messages(const char *what, const ox_messages *english,
                                   const ox_messages *german) {
  if (english->count != german->count)
    fail_msg("%s: %zu messages, in German %zu", what, english->count, german->count);
  for (size_t i = 0; i < english->count; i++) assert_german(english->text[i], german->text[i]);
}

static void check(const char *what, const char *text) {
  ox_messages english = {0}, german = {0};
  ox_status status, same;
  speak_english();
  ox_lesson *lesson = parse_text(text, &status, &english);
  speak_german();
  ox_lesson *again = parse_text(text, &same, &german);
  speak_english();
  assert_int_equal(status, same);
  assert_german_messages(what, &english, &german);
  ox_messages_clear(&english);
  ox_messages_clear(&german);
  ox_lesson_free(lesson);
  ox_lesson_free(again);
}

static void every_fault_of_a_file_is_told_in_german(void **state) {
  size_t count;
  const bad_file *files = bad_files(&count);
  assert_true(count >= 60);
  for (size_t i = 0; i < count; i++) {
    /* lesson_with() has one buffer: what is read twice is taken out of it. */
    char *text = strdup(files[i].place == IN_CASE ? lesson_with(files[i].text) : files[i].text);
    check(files[i].what, text);
    free(text);
  }
}

/* The key, the value and the name of the case stand in the sentence as they are in the file. */
static void the_parts_of_a_message_keep_their_order(void **state) {
  ox_messages messages = {0};
  ox_status status;
  speak_german();
  ox_lesson *lesson = parse_text(
      "{ \"format\": \"oxbow-lesson\", \"version\": 1, \"cases\": [ { \"name\": \"Eins\","
      " \"hold\": { \"inbound_deg\": 400 }, \"arrival\": { \"heading_deg\": 1 },"
      " \"aircraft\": { \"ias_kt\": 100 } } ] }",
      &status, &messages);
  assert_null(lesson);
  assert_int_equal(messages.count, 1);
  static const char begin[] = "x.oxbow: Fall „Eins“: hold.inbound_deg: 400 passt nicht; ";
  if (strncmp(messages.text[0], begin, strlen(begin)) != 0) fail_msg("%s", messages.text[0]);
  ox_messages_clear(&messages);
}

static void why_a_file_cannot_be_read_or_written_is_german(void **state) {
  static const char *const paths[] = {"/nowhere/x.oxbow", "/tmp", "/dev/null/x.oxbow"};
  for (size_t i = 0; i < sizeof paths / sizeof *paths; i++) {
    ox_messages english = {0}, german = {0};
    char unwritten[400], nicht[400];
    ox_lesson *lesson = NULL;
    speak_english();
    assert_int_equal(ox_lesson_read(paths[i], &lesson, &english), OX_ERROR);
    assert_null(ox_file_begin(paths[i], unwritten, sizeof unwritten));
    speak_german();
    assert_int_equal(ox_lesson_read(paths[i], &lesson, &german), OX_ERROR);
    assert_null(ox_file_begin(paths[i], nicht, sizeof nicht));
    speak_english();
    assert_german_messages(paths[i], &english, &german);
    assert_german(unwritten, nicht);
    ox_messages_clear(&english);
    ox_messages_clear(&german);
  }
}

/* A file is for programs: in every language it is the same to the byte. */
static void what_is_written_knows_no_language(void **state) {
  ox_random r = {20261125};
  for (int i = 0; i < 200; i++) {
    ox_lesson *lesson = ox_lesson_new();
    lesson->cases[0].c = random_case(&r);
    speak_english();
    char *english = ox_lesson_to_text(lesson);
    speak_german();
    char *german = ox_lesson_to_text(lesson);
    speak_english();
    assert_string_equal(english, german);
    free(english);
    free(german);
    ox_lesson_free(lesson);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_fault_of_a_file_is_told_in_german),
      cmocka_unit_test(the_parts_of_a_message_keep_their_order),
      cmocka_unit_test(why_a_file_cannot_be_read_or_written_is_german),
      cmocka_unit_test(what_is_written_knows_no_language),
  };
  return cmocka_run_group_tests(tests, german_set_up, german_tear_down);
}
