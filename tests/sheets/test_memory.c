/* Memory that runs out at every allocation of our own in turn: the handouts are made whole or not
 * at all, nothing crashes and nothing leaks. The linker hands our calls to these functions; the
 * libraries keep theirs. */
#include "sheets_support.h"

void *__real_malloc(size_t bytes);
void *__real_calloc(size_t count, size_t bytes);
void *__real_realloc(void *memory, size_t bytes);
void __real_free(void *memory);
void *__wrap_malloc(size_t bytes);
void *__wrap_calloc(size_t count, size_t bytes);
void *__wrap_realloc(void *memory, size_t bytes);
void __wrap_free(void *memory);
char *__wrap_strdup(const char *text);

static struct {
  long until_failure; /* allocations that still succeed; negative: all do */
  long living, made;
  bool failed;
} heap = {.until_failure = -1};

static bool fails(void) {
  heap.made++;
  if (heap.until_failure == 0) {
    heap.failed = true;
    return true;
  }
  if (heap.until_failure > 0) heap.until_failure--;
  return false;
}

void *__wrap_malloc(size_t bytes) {
  void *memory = fails() ? NULL : __real_malloc(bytes);
  if (memory) heap.living++;
  return memory;
}

void *__wrap_calloc(size_t count, size_t bytes) {
  void *memory = fails() ? NULL : __real_calloc(count, bytes);
  if (memory) heap.living++;
  return memory;
}

void *__wrap_realloc(void *memory, size_t bytes) {
  void *moved = fails() ? NULL : __real_realloc(memory, bytes);
  if (moved && !memory) heap.living++;
  return moved;
}

void __wrap_free(void *memory) {
  if (memory) heap.living--;
  __real_free(memory);
}

char *__wrap_strdup(const char *text) {
  size_t bytes = strlen(text) + 1;
  char *copy = __wrap_malloc(bytes);
  return copy ? memcpy(copy, text, bytes) : NULL;
}

/* One page with the n-th allocation failing; whether it met the failure. The steps grow, so that
 * the early allocations, of which each is another, are all tried and the alike ones are sampled. */
static void made_whole_or_not_at_all(void **state) {
  sheets_holds *h = sheets_make_holds(2, 6);
  ox_sheets_options o = {.kind = OX_SHEETS_KEY, .per_page = 2};
  GString *whole = sheets_pdf(h, &o);
  int refusals = 0, runs = 0;
  for (long n = 0;; n += 1 + n / 40) {
    GString *pdf = g_string_new(NULL);
    const char *error = NULL;
    long living = heap.living;
    heap.failed = false;
    heap.until_failure = n;
    ox_status status = ox_sheets_make(h->scenes, h->count, &o, sheets_take, pdf, &error);
    heap.until_failure = -1;
    if (heap.living != living) fail_msg("allocation %ld failing leaks", n);
    if (status == OX_ERROR) {
      assert_non_null(error);
      assert_int_equal(pdf->len, 0);
      refusals++;
    } else {
      assert_memory_equal(pdf->str, "%PDF-", 5);
    }
    bool done = !heap.failed;
    if (done) assert_true(g_string_equal(pdf, whole));
    g_string_free(pdf, TRUE);
    runs++;
    if (done) break;
  }
  assert_true(refusals > 20);
  print_message("# %d runs, %d refused\n", runs, refusals);
  g_string_free(whole, TRUE);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(made_whole_or_not_at_all),
  };
  return cmocka_run_group_tests_name("sheets-memory", tests, NULL, NULL);
}
