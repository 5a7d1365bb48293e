/* Opens lessons one after the other, edits and undoes a little in each, and looks at the memory.
 *   reliability_open COUNT
 * Prints TAP. What the first tenth needs is taken as the level; growth above it is a leak. */
#include "ox_test.h"

#include <glib.h>
#include <glib/gstdio.h>

#include "ox_document.h"

#define ALLOWED_KB 1024

/* The sanitizer holds freed memory back for a while, to catch its use; there, its own search for
 * leaks is the check. */
#ifdef __SANITIZE_ADDRESS__
#define MEMORY_IS_HELD_BACK true
#else
#define MEMORY_IS_HELD_BACK false
#endif

/* Resident memory in kB, from the kernel's own account of this process. */
static long resident_kb(void) {
  char *text = NULL;
  long pages = 0;
  if (!g_file_get_contents("/proc/self/statm", &text, NULL, NULL)) return -1;
  sscanf(text, "%*d %ld", &pages);
  g_free(text);
  return pages * 4;
}

static GPtrArray *lessons(const char *directory) {
  GPtrArray *paths = g_ptr_array_new_with_free_func(g_free);
  GDir *dir = g_dir_open(directory, 0, NULL);
  for (const char *name; dir && (name = g_dir_read_name(dir));)
    if (g_str_has_suffix(name, ".oxbow"))
      g_ptr_array_add(paths, g_build_filename(directory, name, NULL));
  if (dir) g_dir_close(dir);
  return paths;
}

static bool use(OxDocument *document, const char *path, int number) {
  ox_messages messages = {0};
  if (ox_document_open(document, path, &messages) == OX_ERROR) {
    printf("# %s\n", messages.count > 0 ? messages.text[0] : path);
    ox_messages_clear(&messages);
    return false;
  }
  ox_messages_clear(&messages);
  ox_document_set_field(document, ox_field_by_key("hold.inbound_deg"), number % 360, NULL);
  ox_document_duplicate_case(document, 0);
  ox_document_flight(document);
  while (ox_document_can_undo(document)) ox_document_undo(document);
  return true;
}

int main(int argc, char **argv) {
  int count = argc > 1 ? atoi(argv[1]) : 300, bad = 0;
  const char *directory = g_getenv("OXBOW_LESSONS");
  GPtrArray *paths = lessons(directory ? directory : "data/lessons");
  printf("1..2\n");
  if (paths->len == 0) {
    printf("not ok 1 - there_are_lessons\nnot ok 2 - memory_does_not_grow\n");
    return 1;
  }
  OxDocument *document = ox_document_new();
  long level_kb = 0;
  for (int i = 0; i < count; i++) {
    if (!use(document, g_ptr_array_index(paths, (guint)i % paths->len), i)) bad++;
    if (i == count / 10) level_kb = resident_kb();
  }
  long end_kb = resident_kb();
  printf("# %d lessons: %ld kB after a tenth of them, %ld kB after all\n", count, level_kb, end_kb);
  printf("%sok 1 - every_lesson_opens\n", bad ? "not " : "");
  bool flat = level_kb > 0 && (MEMORY_IS_HELD_BACK || end_kb - level_kb <= ALLOWED_KB);
  if (MEMORY_IS_HELD_BACK) printf("# freed memory is held back here: only leaks count\n");
  printf("%sok 2 - memory_does_not_grow\n", flat ? "" : "not ");
  g_object_unref(document);
  g_ptr_array_unref(paths);
  return bad || !flat;
}
