/* Saving that fails: a sentence, the lesson and its history in memory, the old file whole. What
 * the writer of files does is tested in the store's suite; here it is the open lesson. Needs no
 * display. */
#include "ox_test.h"

#include <glib.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "ox_autosave.h"

#define NOBODY 65534

static char *directory;

static int set_up(void **state) {
  directory = g_dir_make_tmp("oxbow-test-XXXXXX", NULL);
  return directory ? 0 : -1;
}

static int tear_down(void **state) {
  g_chmod(directory, 0755);
  GDir *dir = g_dir_open(directory, 0, NULL);
  for (const char *name; dir && (name = g_dir_read_name(dir));) {
    char *path = g_build_filename(directory, name, NULL);
    if (g_unlink(path) != 0) g_rmdir(path);
    g_free(path);
  }
  if (dir) g_dir_close(dir);
  int bad = g_rmdir(directory);
  g_clear_pointer(&directory, g_free);
  return bad;
}

/* A document with its file: course 10 in the file, 11 in memory. */
static OxDocument *edited(char **path) {
  OxDocument *document = ox_document_new();
  const ox_field *course = ox_field_by_key("hold.inbound_deg");
  ox_messages messages = {0};
  *path = g_build_filename(directory, "lesson.oxbow", NULL);
  ox_document_set_field(document, course, 10, NULL);
  if (ox_document_save(document, *path, &messages) != OX_OK) return NULL;
  ox_document_set_field(document, course, 11, NULL);
  return document;
}

static double course_in(const char *path) {
  ox_lesson *lesson = NULL;
  ox_messages messages = {0};
  if (ox_lesson_read(path, &lesson, &messages) == OX_ERROR) return -1;
  double course = lesson->cases[0].c.hold.inbound_deg;
  ox_lesson_free(lesson);
  return course;
}

static guint file_count(void) {
  guint count = 0;
  GDir *dir = g_dir_open(directory, 0, NULL);
  while (dir && g_dir_read_name(dir)) count++;
  if (dir) g_dir_close(dir);
  return count;
}

/* 0 when saving to `path` fails as it has to; else which of the checks it was. Makes no check of
 * cmocka: it runs in processes of their own as well. */
static int failure_of(OxDocument *document, const char *path, const char *fragment) {
  ox_messages messages = {0};
  char *before = g_strdup(ox_document_path(document));
  int wrong = 0;
  if (ox_document_save(document, path, &messages) != OX_ERROR) wrong = 1;
  if (!wrong && (messages.count != 1 || !strstr(messages.text[0], fragment))) {
    print_error("%s\n", messages.count > 0 ? messages.text[0] : "no message");
    wrong = 2;
  }
  if (!wrong && !ox_document_modified(document)) wrong = 3;
  if (!wrong && ox_document_case(document)->hold.inbound_deg != 11) wrong = 4;
  if (!wrong && g_strcmp0(ox_document_path(document), before) != 0) wrong = 5;
  if (!wrong && !ox_document_can_undo(document)) wrong = 6;
  g_free(before);
  ox_messages_clear(&messages);
  return wrong;
}

static void a_write_protected_file_is_left_alone(void **state) {
  char *path;
  OxDocument *document = edited(&path);
  assert_int_equal(g_chmod(path, 0444), 0);
  assert_int_equal(failure_of(document, path, "lesson.oxbow"), 0);
  assert_close(course_in(path), 10, 0, "old file");
  assert_int_equal(file_count(), 1);
  assert_int_equal(g_chmod(path, 0644), 0);
  ox_messages messages = {0};
  assert_int_equal(ox_document_save(document, path, &messages), OX_OK); /* and then it works */
  assert_close(course_in(path), 11, 0, "new file");
  g_free(path);
  g_object_unref(document);
}

/* As a user who may not write there: root may everywhere. */
static void a_write_protected_directory_is_left_alone(void **state) {
  char *path;
  int status;
  OxDocument *document = edited(&path);
  assert_int_equal(g_chmod(path, 0666), 0);
  assert_int_equal(g_chmod(directory, 0555), 0);
  pid_t pid = fork();
  assert_true(pid >= 0);
  if (pid == 0) {
    if (getuid() == 0 && setuid(NOBODY) != 0) _exit(90);
    _exit(failure_of(document, path, "lesson.oxbow"));
  }
  assert_int_equal(waitpid(pid, &status, 0), pid);
  assert_true(WIFEXITED(status));
  assert_int_equal(WEXITSTATUS(status), 0);
  assert_close(course_in(path), 10, 0, "old file");
  assert_int_equal(file_count(), 1);
  g_free(path);
  g_object_unref(document);
}

/* The limit of a file's size stands for a disk that is full: the same error at the same place, of
 * a process whose other files it does not harm. */
static void a_full_disk_leaves_the_old_file(void **state) {
  char *path;
  int status;
  OxDocument *document = edited(&path);
  pid_t pid = fork();
  assert_true(pid >= 0);
  if (pid == 0) {
    struct rlimit limit = {100, 100};
    signal(SIGXFSZ, SIG_IGN);
    if (setrlimit(RLIMIT_FSIZE, &limit) != 0) _exit(90);
    _exit(failure_of(document, path, "lesson.oxbow"));
  }
  assert_int_equal(waitpid(pid, &status, 0), pid);
  assert_true(WIFEXITED(status));
  assert_int_equal(WEXITSTATUS(status), 0);
  assert_close(course_in(path), 10, 0, "old file");
  assert_int_equal(file_count(), 1); /* no half-written one beside it */
  g_free(path);
  g_object_unref(document);
}

static void what_is_kept_aside_stays_whole_on_a_full_disk(void **state) {
  char *path, *error = NULL;
  int status;
  OxDocument *document = edited(&path);
  ox_kept *kept = ox_kept_new(directory, path, "T", &error);
  g_autoptr(ox_snapshot) snapshot = ox_document_snapshot(document);
  assert_non_null(kept);
  assert_true(ox_kept_write(kept, snapshot, &error));
  pid_t pid = fork();
  assert_true(pid >= 0);
  if (pid == 0) {
    struct rlimit limit = {100, 100};
    signal(SIGXFSZ, SIG_IGN);
    if (setrlimit(RLIMIT_FSIZE, &limit) != 0) _exit(90);
    _exit(!ox_kept_write(kept, snapshot, &error) && error ? 0 : 1);
  }
  assert_int_equal(waitpid(pid, &status, 0), pid);
  assert_int_equal(WEXITSTATUS(status), 0);
  assert_close(course_in(kept->lesson_path), 11, 0, "what was kept before");
  ox_kept_discard(kept);
  assert_int_equal(file_count(), 1);
  g_free(path);
  g_object_unref(document);
}

static void a_directory_that_vanished_is_named(void **state) {
  char *path, *gone = g_build_filename(directory, "gone", "lesson.oxbow", NULL);
  OxDocument *document = edited(&path);
  assert_int_equal(failure_of(document, gone, "gone"), 0);
  assert_int_equal(file_count(), 1);
  g_free(path);
  g_free(gone);
  g_object_unref(document);
}

static void a_directory_of_that_name_is_no_file(void **state) {
  char *path, *other = g_build_filename(directory, "other.oxbow", NULL);
  OxDocument *document = edited(&path);
  assert_int_equal(g_mkdir(other, 0755), 0);
  assert_int_equal(failure_of(document, other, "other.oxbow"), 0);
  assert_true(g_file_test(other, G_FILE_TEST_IS_DIR));
  g_free(path);
  g_free(other);
  g_object_unref(document);
}

static void a_link_is_written_through_and_kept(void **state) {
  char *path, *link = g_build_filename(directory, "link.oxbow", NULL);
  OxDocument *document = edited(&path);
  ox_messages messages = {0};
  assert_int_equal(symlink("lesson.oxbow", link), 0);
  assert_int_equal(ox_document_save(document, link, &messages), OX_OK);
  assert_true(g_file_test(link, G_FILE_TEST_IS_SYMLINK));
  assert_false(g_file_test(path, G_FILE_TEST_IS_SYMLINK));
  assert_close(course_in(path), 11, 0, "the file behind the link");
  assert_string_equal(ox_document_path(document), link);
  g_free(path);
  g_free(link);
  g_object_unref(document);
}

static void reloading_what_cannot_be_read_changes_nothing(void **state) {
  char *path;
  OxDocument *document = edited(&path);
  ox_messages messages = {0};
  assert_true(g_file_set_contents(path, "{\"format\"", -1, NULL));
  assert_int_equal(ox_document_reload(document, &messages), OX_ERROR);
  assert_true(messages.count > 0);
  ox_messages_clear(&messages);
  assert_close(ox_document_case(document)->hold.inbound_deg, 11, 0, "mine");
  assert_true(ox_document_modified(document));
  g_free(path);
  g_object_unref(document);
}

#define T(name) cmocka_unit_test_setup_teardown(name, set_up, tear_down)

int main(void) {
  const struct CMUnitTest tests[] = {
      T(a_write_protected_file_is_left_alone),
      T(a_write_protected_directory_is_left_alone),
      T(a_full_disk_leaves_the_old_file),
      T(what_is_kept_aside_stays_whole_on_a_full_disk),
      T(a_directory_that_vanished_is_named),
      T(a_directory_of_that_name_is_no_file),
      T(a_link_is_written_through_and_kept),
      T(reloading_what_cannot_be_read_changes_nothing),
  };
  return cmocka_run_group_tests_name("save fails", tests, NULL, NULL);
}
