/* Memory that runs out at every allocation in turn: nothing crashes, nothing leaks, nothing half
 * done comes back. */
#include <cJSON.h>

#include "store_support.h"

static struct {
  long until_failure; /* allocations that still succeed; negative: all do */
  long living;
  bool failed;
} heap;

static void *counted_malloc(size_t bytes) {
  if (heap.until_failure == 0) {
    heap.failed = true;
    return NULL;
  }
  if (heap.until_failure > 0) heap.until_failure--;
  void *memory = malloc(bytes);
  if (memory) heap.living++;
  return memory;
}

static void counted_free(void *memory) {
  if (memory) heap.living--;
  free(memory);
}

static int hook(void **state) {
  cJSON_InitHooks(&(cJSON_Hooks){.malloc_fn = counted_malloc, .free_fn = counted_free});
  heap.until_failure = -1;
  heap.living = 0;
  return 0;
}

static int unhook(void **state) {
  cJSON_InitHooks(NULL);
  return 0;
}

/* Does the work with the n-th allocation failing, n = 0, 1, … until one run meets no failure. The
 * work returns whether it gave a result; it frees what it made. */
static long fail_at_each(bool (*work)(void *context), void *context) {
  for (long n = 0;; n++) {
    long living = heap.living;
    heap.until_failure = n;
    heap.failed = false;
    bool result = work(context);
    heap.until_failure = -1;
    if (heap.living != living) print_error("allocation %ld failing leaks\n", n);
    assert_int_equal(heap.living, living);
    if (!heap.failed) {
      assert_true(result);
      return n;
    }
  }
}

static bool parse_work(void *context) {
  ox_messages messages = {0};
  ox_lesson *lesson = NULL;
  ox_status status = ox_lesson_parse(context, strlen(context), "x", &lesson, &messages);
  bool result = lesson != NULL;
  if (result != (status != OX_ERROR)) abort();
  ox_lesson_free(lesson);
  ox_messages_clear(&messages);
  return result;
}

static void reading_survives_every_failing_allocation(void **state) {
  size_t length;
  char *text = file_text(data_path("kept.oxbow"), &length);
  assert_true(fail_at_each(parse_work, text) > 100);
  free(text);
  text = file_text(data_path("newer.oxbow"), &length); /* with remarks */
  assert_true(fail_at_each(parse_work, text) > 50);
  free(text);
}

static bool refuse_work(void *context) {
  ox_messages messages = {0};
  ox_lesson *lesson = NULL;
  ox_status status = ox_lesson_parse(context, strlen(context), "x", &lesson, &messages);
  if (status != OX_ERROR || lesson) abort();
  bool told = messages.count > 0;
  ox_messages_clear(&messages);
  return told;
}

static void refusing_survives_every_failing_allocation(void **state) {
  static char faulty[] = "{ \"format\": 1, \"version\": 1, \"cases\": [ { \"name\": \"n\","
                         " \"hold\": [ { \"a\": \"long long long long long long long\" } ],"
                         " \"wind_changes\": [ { \"kt\": 2 } ],"
                         " \"wind\": [ 1, { \"kt\": 2 } ] } ] }";
  static char broken[] = "{", empty[] = "";
  fail_at_each(refuse_work, faulty);
  fail_at_each(refuse_work, broken);
  fail_at_each(refuse_work, empty);
}

static bool print_work(void *context) {
  char *text = ox_lesson_to_text(context);
  bool result = text != NULL;
  counted_free(text);
  return result;
}

static void writing_survives_every_failing_allocation(void **state) {
  size_t length;
  char *text = file_text(data_path("kept.oxbow"), &length);
  ox_lesson *lesson = parse_sound(text, "kept.oxbow");
  free(text);
  assert_true(fail_at_each(print_work, lesson) > 100);
  ox_lesson_free(lesson);
}

static bool new_work(void *context) {
  ox_lesson *lesson = ox_lesson_new();
  ox_lesson_free(lesson);
  return lesson != NULL;
}

static bool insert_work(void *context) {
  ox_lesson *lesson = context;
  ox_status status = ox_lesson_insert(lesson, 1, &lesson->cases[0].c, &lesson->cases[0]);
  if ((status == OX_OK) != (lesson->case_count == 3)) abort();
  if (status == OX_OK) ox_lesson_remove(lesson, 1);
  return status == OX_OK;
}

static void making_and_inserting_survive_every_failing_allocation(void **state) {
  assert_int_equal(fail_at_each(new_work, NULL), 2);
  size_t length;
  char *text = file_text(data_path("kept.oxbow"), &length);
  ox_lesson *lesson = parse_sound(text, "kept.oxbow");
  free(text);
  assert_true(fail_at_each(insert_work, lesson) > 10);
  ox_lesson_free(lesson);
}

static bool write_work(void *context) {
  ox_lesson *lesson = ox_lesson_new();
  ox_messages messages = {0};
  bool written = lesson && ox_lesson_write(lesson, context, &messages) == OX_OK;
  ox_messages_clear(&messages);
  ox_lesson *read = NULL;
  bool result = written && ox_lesson_read(context, &read, &messages) == OX_OK;
  ox_messages_clear(&messages);
  ox_lesson_free(read);
  ox_lesson_free(lesson);
  return result;
}

static void files_survive_every_failing_allocation(void **state) {
  char directory[] = P_tmpdir "/oxbow-memory-XXXXXX";
  assert_non_null(mkdtemp(directory));
  char path[64];
  snprintf(path, sizeof path, "%s/a.oxbow", directory);
  fail_at_each(write_work, path);
  assert_int_equal(remove(path), 0);
  assert_int_equal(remove(directory), 0); /* nothing else was left in it */
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test_setup_teardown(reading_survives_every_failing_allocation, hook, unhook),
      cmocka_unit_test_setup_teardown(refusing_survives_every_failing_allocation, hook, unhook),
      cmocka_unit_test_setup_teardown(writing_survives_every_failing_allocation, hook, unhook),
      cmocka_unit_test_setup_teardown(making_and_inserting_survive_every_failing_allocation, hook,
                                      unhook),
      cmocka_unit_test_setup_teardown(files_survive_every_failing_allocation, hook, unhook),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
