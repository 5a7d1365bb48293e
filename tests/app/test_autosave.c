/* Unsaved work is kept safe, found again after a crash and cleared away otherwise. Needs no
 * display. */
#include "ox_test.h"

#include <glib.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "ox_autosave.h"

static char *directory;

static int set_up(void **state) {
  directory = g_dir_make_tmp("oxbow-test-XXXXXX", NULL);
  return directory ? 0 : -1;
}

static int tear_down(void **state) {
  GDir *dir = g_dir_open(directory, 0, NULL);
  for (const char *name; dir && (name = g_dir_read_name(dir));) {
    char *path = g_build_filename(directory, name, NULL);
    g_unlink(path);
    g_free(path);
  }
  if (dir) g_dir_close(dir);
  int bad = g_rmdir(directory);
  g_clear_pointer(&directory, g_free);
  return bad;
}

static guint file_count(void) {
  guint count = 0;
  GDir *dir = g_dir_open(directory, 0, NULL);
  while (dir && g_dir_read_name(dir)) count++;
  if (dir) g_dir_close(dir);
  return count;
}

static void set_course(OxDocument *document, double deg) {
  assert_int_equal(
      ox_document_set_field(document, ox_field_by_key("hold.inbound_deg"), deg, NULL), OX_OK);
}

/* Until it was written that often; FALSE after ten seconds. */
static gboolean wait_for_count(OxAutosave *autosave, guint count) {
  gint64 end_us = g_get_monotonic_time() + 10 * G_USEC_PER_SEC;
  while (ox_autosave_count(autosave) < count) {
    if (g_get_monotonic_time() > end_us) return FALSE;
    if (!g_main_context_iteration(NULL, FALSE)) g_usleep(2000);
  }
  return TRUE;
}

static double kept_course(const char *path) {
  ox_lesson *lesson = NULL;
  ox_messages messages = {0};
  assert_int_equal(ox_lesson_read(path, &lesson, &messages), OX_OK);
  double course = lesson->cases[0].c.hold.inbound_deg;
  ox_lesson_free(lesson);
  return course;
}

static void changes_are_kept_and_gone_when_there_are_none(void **state) {
  OxDocument *document = ox_document_new();
  OxAutosave *autosave = ox_autosave_new(document, directory);
  assert_int_equal(file_count(), 0);
  set_course(document, 123);
  assert_true(wait_for_count(autosave, 1));
  assert_close(kept_course(ox_autosave_path(autosave)), 123, 0, "kept");
  set_course(document, 124);
  assert_true(wait_for_count(autosave, 2));
  assert_close(kept_course(ox_autosave_path(autosave)), 124, 0, "kept again");
  assert_int_equal(file_count(), 2);
  ox_document_undo(document);
  ox_document_undo(document);
  assert_null(ox_autosave_path(autosave));
  assert_int_equal(file_count(), 0);
  g_object_unref(autosave);
  g_object_unref(document);
}

/* Going on with changing, twenty times a second, does not put the writing off. */
static void changing_all_the_time_is_kept_all_the_same(void **state) {
  OxDocument *document = ox_document_new();
  OxAutosave *autosave = ox_autosave_new(document, directory);
  gint64 start_us = g_get_monotonic_time();
  for (int i = 0; ox_autosave_count(autosave) < 2; i++) {
    set_course(document, 1 + i * 0.25);
    gint64 until_us = g_get_monotonic_time() + 50000;
    while (g_get_monotonic_time() < until_us)
      if (!g_main_context_iteration(NULL, FALSE)) g_usleep(2000);
    assert_true(g_get_monotonic_time() - start_us < 20 * G_USEC_PER_SEC);
  }
  assert_true(kept_course(ox_autosave_path(autosave)) > 1);
  g_object_unref(autosave);
  assert_int_equal(file_count(), 0); /* the last one who knew it closed it properly */
  g_object_unref(document);
}

static void saving_clears_it_away_and_so_does_opening_another(void **state) {
  OxDocument *document = ox_document_new();
  OxAutosave *autosave = ox_autosave_new(document, directory);
  ox_messages messages = {0};
  char *path = g_build_filename(directory, "mine.oxbow", NULL);
  set_course(document, 123);
  assert_true(wait_for_count(autosave, 1));
  assert_int_equal(ox_document_save(document, path, &messages), OX_OK);
  assert_int_equal(file_count(), 1);
  set_course(document, 125);
  assert_true(wait_for_count(autosave, 2));
  ox_document_take(document, ox_lesson_new(), NULL);
  assert_int_equal(file_count(), 1);
  g_unlink(path);
  g_free(path);
  g_object_unref(autosave);
  g_object_unref(document);
}

static void what_a_living_owner_keeps_is_nobody_elses(void **state) {
  OxDocument *document = ox_document_new();
  OxAutosave *autosave = ox_autosave_new(document, directory);
  set_course(document, 123);
  assert_true(wait_for_count(autosave, 1));
  GPtrArray *found = ox_kept_find(directory);
  assert_int_equal(found->len, 0);
  g_ptr_array_unref(found);
  assert_non_null(ox_autosave_path(autosave));
  assert_true(g_file_test(ox_autosave_path(autosave), G_FILE_TEST_EXISTS));
  g_object_unref(autosave);
  g_object_unref(document);
}

/* In a process of its own, which is killed as soon as it has told that its work is kept. */
static void crash(const char *path, double deg) {
  int ends[2];
  char byte;
  assert_int_equal(pipe(ends), 0);
  pid_t pid = fork();
  assert_true(pid >= 0);
  if (pid == 0) {
    OxDocument *document = ox_document_new();
    if (path) ox_document_take(document, ox_lesson_new(), path);
    char *error = NULL;
    ox_kept *kept = ox_kept_new(directory, path, ox_document_title(document), &error);
    ox_document_set_field(document, ox_field_by_key("hold.inbound_deg"), deg, NULL);
    ox_snapshot *snapshot = ox_document_snapshot(document);
    gboolean good = kept && ox_kept_write(kept, snapshot, &error);
    if (write(ends[1], good ? "y" : "n", 1) == 1) pause();
    _exit(1);
  }
  assert_int_equal(read(ends[0], &byte, 1), 1);
  assert_int_equal(byte, 'y');
  kill(pid, SIGKILL);
  waitpid(pid, NULL, 0);
  close(ends[0]);
  close(ends[1]);
}

static void after_a_crash_it_is_found_with_name_and_path(void **state) {
  crash("/some/where/l\xc3\xa4rch %41.oxbow", 77);
  crash(NULL, 78);
  GPtrArray *found = ox_kept_find(directory), *again = ox_kept_find(directory);
  assert_int_equal(found->len, 2);
  assert_int_equal(again->len, 0); /* two who look do not get the same */
  guint named = 0;
  for (guint i = 0; i < found->len; i++) {
    ox_kept *kept = g_ptr_array_index(found, i);
    assert_true(kept->at_s > 0);
    if (kept->path) {
      named++;
      assert_string_equal(kept->path, "/some/where/l\xc3\xa4rch %41.oxbow");
      assert_string_equal(kept->title, "l\xc3\xa4rch %41.oxbow");
      assert_close(kept_course(kept->lesson_path), 77, 0, "its work");
    } else {
      assert_string_equal(kept->title, "Untitled lesson");
      assert_close(kept_course(kept->lesson_path), 78, 0, "its work");
    }
  }
  assert_int_equal(named, 1);
  g_ptr_array_unref(again);
  g_ptr_array_unref(found); /* leaves them */
  found = ox_kept_find(directory);
  assert_int_equal(found->len, 2);
  g_ptr_array_set_free_func(found, (GDestroyNotify)ox_kept_discard);
  g_ptr_array_unref(found);
  assert_int_equal(file_count(), 0);
}

static void what_was_restored_stays_kept_until_it_is_dealt_with(void **state) {
  crash(NULL, 78);
  GPtrArray *found = ox_kept_find(directory);
  assert_int_equal(found->len, 1);
  ox_kept *kept = g_ptr_array_steal_index(found, 0);
  g_ptr_array_unref(found);

  OxDocument *document = ox_document_new();
  OxAutosave *autosave = ox_autosave_new(document, directory);
  ox_lesson *lesson = NULL;
  ox_messages messages = {0};
  assert_int_equal(ox_lesson_read(kept->lesson_path, &lesson, &messages), OX_OK);
  ox_document_take_unsaved(document, lesson, kept->path);
  ox_autosave_adopt(autosave, kept);
  assert_true(ox_document_modified(document));
  assert_false(ox_document_can_undo(document));
  assert_close(kept_course(ox_autosave_path(autosave)), 78, 0, "still there");
  set_course(document, 79);
  assert_true(wait_for_count(autosave, 1));
  assert_close(kept_course(ox_autosave_path(autosave)), 79, 0, "goes on");
  ox_document_undo(document);
  assert_true(ox_document_modified(document)); /* it is in no file still */
  assert_int_equal(file_count(), 2);
  g_object_unref(autosave);
  assert_int_equal(file_count(), 0);
  g_object_unref(document);
}

static void leftovers_without_work_are_cleared_away(void **state) {
  char *info = g_build_filename(directory, "1-2-3.info", NULL);
  char *broken = g_build_filename(directory, "4-5-6.info", NULL);
  char *lesson = g_build_filename(directory, "4-5-6.oxbow", NULL);
  char *part = g_build_filename(directory, ".oxbow-2147483646-0.part", NULL);
  char *mine = g_strdup_printf("%s/.oxbow-%ld-0.part", directory, (long)getpid());
  assert_true(g_file_set_contents(info, "", 0, NULL));
  assert_true(g_file_set_contents(broken, "\xff\xfe not a key file", -1, NULL));
  assert_true(g_file_set_contents(lesson, "not a lesson", -1, NULL));
  assert_true(g_file_set_contents(part, "x", 1, NULL));
  assert_true(g_file_set_contents(mine, "x", 1, NULL));
  GPtrArray *found = ox_kept_find(directory);
  assert_int_equal(found->len, 1); /* whatever it is, it may be somebody's work */
  assert_string_equal(((ox_kept *)g_ptr_array_index(found, 0))->title, "A lesson");
  assert_false(g_file_test(info, G_FILE_TEST_EXISTS));
  assert_false(g_file_test(part, G_FILE_TEST_EXISTS));
  assert_true(g_file_test(mine, G_FILE_TEST_EXISTS));
  g_ptr_array_unref(found);
  g_free(info);
  g_free(broken);
  g_free(lesson);
  g_free(part);
  g_free(mine);
}

static void nothing_is_found_where_there_is_no_directory(void **state) {
  GPtrArray *found = ox_kept_find("/nowhere/at/all");
  assert_int_equal(found->len, 0);
  g_ptr_array_unref(found);
}

static void failed_cb(OxAutosave *autosave, const char *why, char **said) {
  assert_null(*said);
  *said = g_strdup(why);
}

static void where_nothing_can_be_kept_it_says_so_once(void **state) {
  OxDocument *document = ox_document_new();
  OxAutosave *autosave = ox_autosave_new(document, "/proc/nowhere");
  char *said = NULL;
  g_signal_connect(autosave, "failed", G_CALLBACK(failed_cb), &said);
  set_course(document, 123);
  gint64 end_us = g_get_monotonic_time() + 10 * G_USEC_PER_SEC;
  while (!said && g_get_monotonic_time() < end_us)
    if (!g_main_context_iteration(NULL, FALSE)) g_usleep(2000);
  assert_non_null(said);
  assert_non_null(strstr(said, "/proc/nowhere"));
  assert_close(ox_document_case(document)->hold.inbound_deg, 123, 0, "nothing is lost");
  g_free(said);
  g_object_unref(autosave);
  g_object_unref(document);
}

static void only_its_owner_can_read_it(void **state) {
  char *below = g_build_filename(directory, "below", NULL), *error = NULL;
  struct stat s;
  ox_kept *kept = ox_kept_new(below, NULL, "T", &error);
  assert_non_null(kept);
  assert_int_equal(stat(below, &s), 0);
  assert_int_equal(s.st_mode & 0777, 0700);
  ox_kept_discard(kept);
  g_rmdir(below);
  g_free(below);
}

#define T(name) cmocka_unit_test_setup_teardown(name, set_up, tear_down)

int main(void) {
  const struct CMUnitTest tests[] = {
      T(changes_are_kept_and_gone_when_there_are_none),
      T(changing_all_the_time_is_kept_all_the_same),
      T(saving_clears_it_away_and_so_does_opening_another),
      T(what_a_living_owner_keeps_is_nobody_elses),
      T(after_a_crash_it_is_found_with_name_and_path),
      T(what_was_restored_stays_kept_until_it_is_dealt_with),
      T(leftovers_without_work_are_cleared_away),
      T(nothing_is_found_where_there_is_no_directory),
      T(where_nothing_can_be_kept_it_says_so_once),
      T(only_its_owner_can_read_it),
  };
  return cmocka_run_group_tests_name("autosave", tests, NULL, NULL);
}
