/* Memory that runs out at every allocation in turn: the ink is as it was, and nothing leaks. */
#include "ink_support.h"

void *__real_malloc(size_t bytes);
void *__real_calloc(size_t count, size_t bytes);
void *__real_realloc(void *memory, size_t bytes);
void __real_free(void *memory);
void *__wrap_malloc(size_t bytes);
void *__wrap_calloc(size_t count, size_t bytes);
void *__wrap_realloc(void *memory, size_t bytes);
void __wrap_free(void *memory);

static struct {
  bool watched;
  long until_failure; /* allocations that still succeed */
  long living;
  bool failed;
} heap;

static bool refused(void) {
  if (!heap.watched) return false;
  if (heap.until_failure-- > 0) return false;
  heap.failed = true;
  return true;
}

void *__wrap_malloc(size_t bytes) {
  if (refused()) return NULL;
  if (heap.watched) heap.living++;
  return __real_malloc(bytes);
}

void *__wrap_calloc(size_t count, size_t bytes) {
  if (refused()) return NULL;
  if (heap.watched) heap.living++;
  return __real_calloc(count, bytes);
}

void *__wrap_realloc(void *memory, size_t bytes) {
  if (refused()) return NULL;
  if (heap.watched && !memory) heap.living++;
  return __real_realloc(memory, bytes);
}

void __wrap_free(void *memory) {
  if (heap.watched && memory) heap.living--;
  __real_free(memory);
}

typedef ox_status (*work)(ox_ink *ink);

static ox_status copy_work(ox_ink *ink) {
  ox_ink *copy = ox_ink_copy(ink);
  ox_ink_free(copy);
  return copy ? OX_OK : OX_ERROR;
}

static ox_status begin_work(ox_ink *ink) {
  return ox_ink_begin(ink, OX_INK_BLACK, OX_INK_THIN, (ox_vec){3, 3});
}

static ox_status extend_work(ox_ink *ink) { return ox_ink_extend(ink, (ox_vec){7, 7}); }

static ox_status simplify_work(ox_ink *ink) { return ox_ink_simplify_last(ink, 0.3); }

static ox_status erase_work(ox_ink *ink) {
  ox_vec path[] = {{-3, -3}, {0, 1}, {3, 3}};
  return ox_ink_erase(ink, path, 3, 0.4, NULL);
}

/* Eight strokes of sixteen points: what is added finds no room left over. */
static ox_ink *full_ink(void) {
  ox_ink *ink = ox_ink_new();
  for (int i = 0; i < 8; i++) {
    ox_ink_begin(ink, OX_INK_BLUE, OX_INK_THIN, (ox_vec){-3, i - 4});
    for (int k = 1; k < 16; k++) ox_ink_extend(ink, (ox_vec){-3 + 0.4 * k, i - 4 + 0.2 * (k % 3)});
  }
  return ink;
}

/* How often the n-th allocation could fail before the work went through. */
static long fail_at_each(work what) {
  for (long n = 0;; n++) {
    ox_ink *ink = full_ink(), *before = ox_ink_copy(ink);
    heap.failed = false;
    heap.living = 0;
    heap.until_failure = n;
    heap.watched = true;
    ox_status status = what(ink);
    heap.watched = false;
    assert_int_equal(status, heap.failed ? OX_ERROR : OX_OK);
    if (heap.failed) {
      assert_true(ox_ink_equal(ink, before));
      assert_int_equal(heap.living, 0);
    }
    bool done = !heap.failed;
    ox_ink_free(before);
    ox_ink_free(ink);
    if (done) return n;
  }
}

static void the_ink_stays_as_it_was(void **state) {
  assert_true(fail_at_each(copy_work) >= 10);
  assert_true(fail_at_each(begin_work) >= 2);
  assert_true(fail_at_each(extend_work) >= 1);
  assert_true(fail_at_each(simplify_work) >= 2);
  assert_true(fail_at_each(erase_work) >= 10);
}

int main(void) {
  const struct CMUnitTest tests[] = {cmocka_unit_test(the_ink_stays_as_it_was)};
  return cmocka_run_group_tests(tests, NULL, NULL);
}
