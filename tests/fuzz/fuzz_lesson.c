/* A fuzz target for the lesson reader: any bytes are read or refused, and what was read is printed
 * and read again to the same cases and the same bytes. Not part of the build; from the top folder:
 *
 *   clang -g -O1 -fsanitize=fuzzer,address,undefined -ffp-contract=off -Iinclude \
 *     $(pkg-config --cflags libcjson proj) '-DOX_LOCALE_DIR="."' tests/fuzz/fuzz_lesson.c \
 *     src/store/[a-z]*.c src/ink/[a-z]*.c src/places/[a-z]*.c src/engine/[a-z]*.c src/text/text.c \
 *     $(pkg-config --libs libcjson proj) -lm -o fuzz_lesson
 *   mkdir -p corpus && cp tests/data/store/[a-z]*.oxbow data/lessons/[a-z]*.oxbow corpus
 *   ./fuzz_lesson -max_len=16384 corpus
 */
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "oxbow/lesson.h"

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t length);

static void compare(const ox_lesson *a, const ox_lesson *b) {
  if (a->case_count != b->case_count || a->read_only != b->read_only) abort();
  if (strcmp(a->title, b->title) != 0) abort();
  for (size_t i = 0; i < a->case_count; i++) {
    if (!ox_case_equal(&a->cases[i].c, &b->cases[i].c)) abort();
    if (ox_case_check(&a->cases[i].c, NULL, 0) != 0) abort();
  }
}

static void print_and_read_again(const ox_lesson *lesson) {
  char *text = ox_lesson_to_text(lesson);
  if (!text) abort();
  ox_messages messages = {0};
  ox_lesson *again = NULL;
  size_t length = strlen(text);
  if (length <= OX_LESSON_FILE_MAX_BYTES) {
    if (ox_lesson_parse(text, length, "again", &again, &messages) == OX_ERROR) abort();
    compare(lesson, again);
    char *text_again = ox_lesson_to_text(again);
    if (!text_again || strcmp(text, text_again) != 0) abort();
    free(text_again);
  }
  ox_messages_clear(&messages);
  ox_lesson_free(again);
  free(text);
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t length) {
  ox_messages messages = {0};
  ox_lesson *lesson = NULL;
  ox_status status = ox_lesson_parse((const char *)bytes, length, "fuzz", &lesson, &messages);
  if ((status == OX_ERROR) != (lesson == NULL)) abort();
  if (status != OX_OK && messages.count == 0) abort();
  if (lesson) print_and_read_again(lesson);
  ox_lesson_free(lesson);
  ox_messages_clear(&messages);
  return 0;
}
