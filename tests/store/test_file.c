/* Files replaced whole: whatever goes wrong, the old file is as it was and nothing is left lying
 * about. */
#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "oxbow/file.h"
#include "store_support.h"

static char directory[64];
static char error[512];

static int make_directory(void **state) {
  strcpy(directory, P_tmpdir "/oxbow-file-XXXXXX");
  if (!mkdtemp(directory)) return -1;
  return chmod(directory, 0755);
}

static const char *in_directory(const char *name) {
  static char paths[4][512];
  static int next;
  char *path = paths[next++ % 4];
  snprintf(path, sizeof paths[0], "%s/%s", directory, name);
  return path;
}

/* Names in the directory but "." and "..". */
static int entries(void) {
  DIR *open_directory = opendir(directory);
  int count = -2;
  if (!open_directory) return -1;
  while (readdir(open_directory)) count++;
  closedir(open_directory);
  return count;
}

static int remove_directory(void **state) {
  DIR *open_directory = opendir(directory);
  if (!open_directory) return errno == ENOENT ? 0 : -1;
  for (struct dirent *entry; (entry = readdir(open_directory));)
    if (strcmp(entry->d_name, ".") != 0 && strcmp(entry->d_name, "..") != 0)
      remove(in_directory(entry->d_name));
  closedir(open_directory);
  return rmdir(directory);
}

static void put(const char *path, const char *text) {
  FILE *file = fopen(path, "wb");
  assert_non_null(file);
  fputs(text, file);
  assert_int_equal(fclose(file), 0);
}

static void assert_file(const char *path, const char *want) {
  size_t length;
  char *text = file_text(path, &length);
  assert_string_equal(text, want);
  free(text);
}

static ox_status replace(const char *path, const char *text) {
  ox_file_writer *writer = ox_file_begin(path, error, sizeof error);
  if (!writer) return OX_ERROR;
  ox_file_write(writer, text, strlen(text));
  return ox_file_commit(writer, error, sizeof error);
}

static void assert_error(const char *fragment) {
  if (!strstr(error, fragment)) print_error("wanted %s, got %s\n", fragment, error);
  assert_non_null(strstr(error, fragment));
}

static void a_file_is_made_and_replaced(void **state) {
  const char *path = in_directory("a.oxbow");
  assert_int_equal(replace(path, "one"), OX_OK);
  assert_string_equal(error, "");
  assert_file(path, "one");
  assert_int_equal(replace(path, ""), OX_OK);
  assert_file(path, "");
  assert_int_equal(replace(path, "three"), OX_OK);
  assert_file(path, "three");
  assert_int_equal(entries(), 1);
}

static void the_old_file_is_whole_until_the_commit(void **state) {
  const char *path = in_directory("a.oxbow");
  put(path, "old");
  ox_file_writer *writer = ox_file_begin(path, error, sizeof error);
  assert_non_null(writer);
  for (int i = 0; i < 1000; i++) assert_int_equal(ox_file_write(writer, "new", 3), OX_OK);
  assert_file(path, "old");
  ox_file_abandon(writer);
  assert_file(path, "old");
  assert_int_equal(entries(), 1);
  ox_file_abandon(NULL);
}

static mode_t mode_of(const char *path) {
  struct stat state;
  assert_int_equal(stat(path, &state), 0);
  return state.st_mode & 07777;
}

static void a_new_file_has_the_mode_of_the_mask_and_an_old_one_keeps_its_own(void **state) {
  mode_t before = umask(027);
  ox_status status = replace(in_directory("new"), "x");
  umask(before);
  assert_int_equal(status, OX_OK);
  assert_int_equal(mode_of(in_directory("new")), 0640);
  put(in_directory("old"), "x");
  static const mode_t modes[] = {0600, 0644, 0664, 0666, 0200, 0755};
  for (size_t i = 0; i < sizeof modes / sizeof *modes; i++) {
    assert_int_equal(chmod(in_directory("old"), modes[i]), 0);
    assert_int_equal(replace(in_directory("old"), "y"), OX_OK);
    assert_int_equal(mode_of(in_directory("old")), modes[i]);
  }
}

static bool is_link(const char *path) {
  struct stat state;
  return lstat(path, &state) == 0 && S_ISLNK(state.st_mode);
}

static void a_symbolic_link_is_followed_and_kept(void **state) {
  put(in_directory("real"), "old");
  assert_int_equal(symlink("real", in_directory("near")), 0);
  assert_int_equal(symlink(in_directory("near"), in_directory("far")), 0);
  assert_int_equal(replace(in_directory("far"), "new"), OX_OK);
  assert_file(in_directory("real"), "new");
  assert_true(is_link(in_directory("near")) && is_link(in_directory("far")));
  assert_false(is_link(in_directory("real")));
  assert_int_equal(entries(), 3);
}

static void a_link_to_nothing_makes_the_file_it_names(void **state) {
  assert_int_equal(symlink("later", in_directory("link")), 0);
  assert_int_equal(replace(in_directory("link"), "new"), OX_OK);
  assert_true(is_link(in_directory("link")));
  assert_file(in_directory("later"), "new");
}

static void links_in_a_circle_are_refused(void **state) {
  assert_int_equal(symlink("b", in_directory("a")), 0);
  assert_int_equal(symlink("a", in_directory("b")), 0);
  assert_int_equal(replace(in_directory("a"), "new"), OX_ERROR);
  assert_error("a: cannot be written: the symbolic links lead round in a circle");
  assert_int_equal(entries(), 2);
}

static void a_missing_directory_is_named(void **state) {
  assert_int_equal(replace(in_directory("none/a.oxbow"), "x"), OX_ERROR);
  assert_error("none/a.oxbow: cannot be written: there is no such file or directory");
  put(in_directory("file"), "x");
  assert_int_equal(replace(in_directory("file/a.oxbow"), "x"), OX_ERROR);
  assert_error("a part of the path is not a directory");
  assert_int_equal(replace("", "x"), OX_ERROR);
}

static void a_directory_is_not_overwritten(void **state) {
  assert_int_equal(replace(directory, "x"), OX_ERROR);
  assert_error("it is a directory");
}

static void a_directory_that_vanishes_meanwhile_is_an_error(void **state) {
  ox_file_writer *writer = ox_file_begin(in_directory("a"), error, sizeof error);
  assert_non_null(writer);
  assert_int_equal(ox_file_write(writer, "x", 1), OX_OK);
  assert_int_equal(remove_directory(NULL), 0);
  assert_int_equal(ox_file_commit(writer, error, sizeof error), OX_ERROR);
  assert_error("cannot be written: there is no such file or directory");
}

static void a_write_protected_file_is_left_alone(void **state) {
  put(in_directory("a"), "old");
  assert_int_equal(chmod(in_directory("a"), 0444), 0);
  assert_int_equal(replace(in_directory("a"), "new"), OX_ERROR);
  assert_error("permission is denied");
  assert_file(in_directory("a"), "old");
  assert_int_equal(mode_of(in_directory("a")), 0444);
  assert_int_equal(entries(), 1);
}

/* As an ordinary user, also when the tests run as root. */
static void a_directory_one_may_not_write_to_is_an_error(void **state) {
  put(in_directory("a"), "old");
  assert_int_equal(chmod(in_directory("a"), 0666), 0);
  assert_int_equal(chmod(directory, 0555), 0);
  bool root = geteuid() == 0;
  if (root) assert_int_equal(seteuid(65534), 0);
  ox_status over = replace(in_directory("a"), "new"), beside = replace(in_directory("b"), "new");
  if (root) assert_int_equal(seteuid(0), 0);
  assert_int_equal(chmod(directory, 0755), 0);
  assert_int_equal(over, OX_ERROR);
  assert_int_equal(beside, OX_ERROR);
  assert_error("b: cannot be written: permission is denied");
  assert_file(in_directory("a"), "old");
  assert_int_equal(entries(), 1);
}

static void a_full_disk_is_an_error_that_sticks(void **state) {
  ox_file_writer *writer = ox_file_begin("/dev/full", error, sizeof error);
  assert_non_null(writer);
  assert_int_equal(ox_file_write(writer, "x", 1), OX_ERROR);
  assert_int_equal(ox_file_write(writer, "x", 1), OX_ERROR);
  assert_int_equal(ox_file_commit(writer, error, sizeof error), OX_ERROR);
  assert_string_equal(error, "/dev/full: cannot be written: the disk is full");
}

/* A limit on the size of files stands for a disk that fills up half way; in a child, because the
 * limit cannot be lifted again. */
static int half_way_child(const char *path) {
  struct rlimit limit = {1000, 1000};
  char block[800] = {0};
  signal(SIGXFSZ, SIG_IGN);
  if (setrlimit(RLIMIT_FSIZE, &limit) != 0) return 1;
  ox_file_writer *writer = ox_file_begin(path, error, sizeof error);
  if (!writer) return 2;
  if (ox_file_write(writer, block, sizeof block) != OX_OK) return 3;
  if (ox_file_write(writer, block, sizeof block) != OX_ERROR) return 4;
  if (ox_file_commit(writer, error, sizeof error) != OX_ERROR) return 5;
  return strstr(error, "cannot be written: the file is too large for the disk") ? 0 : 6;
}

static void a_disk_that_fills_half_way_leaves_the_old_file(void **state) {
  const char *path = in_directory("a");
  put(path, "old");
  pid_t child = fork();
  assert_true(child >= 0);
  if (child == 0) _exit(half_way_child(path));
  int status;
  assert_int_equal(waitpid(child, &status, 0), child);
  assert_true(WIFEXITED(status));
  assert_int_equal(WEXITSTATUS(status), 0);
  assert_file(path, "old");
  assert_int_equal(entries(), 1);
}

static void a_long_or_odd_path_keeps_the_reason_in_the_message(void **state) {
  char path[3000], small[40];
  memset(path, 'n', sizeof path - 1);
  path[sizeof path - 1] = '\0';
  assert_null(ox_file_begin(path, error, sizeof error));
  assert_error("cannot be written: the name is too long");
  assert_int_equal(replace("/nowhere/a\nb\xff", "x"), OX_ERROR);
  assert_error("/nowhere/a\\nb\\xff: cannot be written");
  assert_null(ox_file_begin(path, small, sizeof small));
  assert_true(strlen(small) < sizeof small);
  assert_null(ox_file_begin(path, small, 1));
  assert_string_equal(small, "");
}

static void a_pipe_is_written_to_directly(void **state) {
  int ends[2];
  char path[40], got[8] = "";
  assert_int_equal(pipe(ends), 0);
  snprintf(path, sizeof path, "/dev/fd/%d", ends[1]);
  assert_int_equal(replace(path, "through"), OX_OK);
  assert_int_equal(read(ends[0], got, sizeof got), 7);
  assert_memory_equal(got, "through", 7);
  close(ends[0]);
  close(ends[1]);
}

static void names_left_by_a_crash_do_not_block_saving(void **state) {
  char name[64];
  for (int i = 0; i < 3; i++) {
    snprintf(name, sizeof name, ".oxbow-%ld-%d.part", (long)getpid(), i);
    put(in_directory(name), "left");
  }
  assert_int_equal(replace(in_directory("a"), "new"), OX_OK);
  assert_file(in_directory("a"), "new");
  assert_int_equal(entries(), 4);
}

/* Lessons through the same writer. */

static void assert_not_written(const ox_lesson *lesson, const char *path, const char *fragment) {
  ox_messages messages = {0};
  assert_int_equal(ox_lesson_write(lesson, path, &messages), OX_ERROR);
  assert_true(messages.count >= 1);
  if (!strstr(messages.text[0], fragment)) print_error("got %s\n", messages.text[0]);
  assert_non_null(strstr(messages.text[0], fragment));
  ox_messages_clear(&messages);
}

static void a_lesson_is_written_and_read_again(void **state) {
  ox_random r = {5};
  ox_lesson *lesson = ox_lesson_new();
  lesson->cases[0].c = random_case(&r);
  ox_messages messages = {0};
  assert_int_equal(ox_lesson_write(lesson, in_directory("a.oxbow"), &messages), OX_OK);
  ox_lesson *again = NULL;
  assert_int_equal(ox_lesson_read(in_directory("a.oxbow"), &again, &messages), OX_OK);
  assert_int_equal(messages.count, 0);
  assert_lessons_equal(lesson, again, "from the disk");
  ox_lesson_free(again);
  ox_lesson_free(lesson);
}

static void a_lesson_that_cannot_be_written_leaves_the_old_file_and_itself(void **state) {
  ox_lesson *lesson = ox_lesson_new();
  put(in_directory("a"), "old");
  assert_not_written(lesson, "/dev/full", "/dev/full: cannot be written: the disk is full");
  assert_not_written(lesson, in_directory("none/a"), "there is no such file or directory");
  lesson->read_only = true;
  assert_not_written(lesson, in_directory("a"), "not written: the lesson comes from a newer");
  lesson->read_only = false;
  lesson->cases[0].c.hold.inbound_deg = (double)NAN;
  assert_not_written(lesson, in_directory("a"),
                     "case \"A hold\": hold.inbound_deg: not a number is not a course (0 to 360)");
  assert_file(in_directory("a"), "old");
  assert_int_equal(entries(), 1);
  ox_lesson_free(lesson);
}

static void a_lesson_too_large_to_be_read_again_is_not_written(void **state) {
  size_t zeros = OX_LESSON_FILE_MAX_BYTES / 2 - 1000;
  char *text = malloc(2 * zeros + 1000);
  assert_non_null(text);
  size_t at = (size_t)sprintf(text, "{ \"list\": [");
  for (size_t i = 0; i < zeros; i++) {
    text[at++] = '0';
    text[at++] = i + 1 < zeros ? ',' : ']';
  }
  sprintf(text + at, ", %s", lesson_with(NULL) + 1);
  ox_lesson *lesson = parse_sound(text, "as large as may be");
  free(text);
  assert_not_written(lesson, in_directory("a"), "not written: the lesson is larger than");
  assert_int_equal(entries(), 0);
  ox_lesson_free(lesson);
}

static void assert_not_read(const char *path, const char *fragment) {
  ox_messages messages = {0};
  ox_lesson *lesson = NULL;
  assert_int_equal(ox_lesson_read(path, &lesson, &messages), OX_ERROR);
  assert_null(lesson);
  assert_int_equal(messages.count, 1);
  if (!strstr(messages.text[0], fragment)) print_error("got %s\n", messages.text[0]);
  assert_non_null(strstr(messages.text[0], fragment));
  ox_messages_clear(&messages);
}

static void what_cannot_be_read_is_said_plainly(void **state) {
  assert_not_read(directory, "cannot be read: it is a directory");
  assert_not_read(in_directory("none"), "none: cannot be read: there is no such file");
  assert_not_read("/dev/zero", "it is neither a file nor a pipe");
  put(in_directory("empty"), "");
  assert_not_read(in_directory("empty"), "empty: the file is empty");
  assert_int_equal(mkfifo(in_directory("pipe"), 0600), 0);
  assert_not_read(in_directory("pipe"), "pipe: the file is empty"); /* and does not wait */
  put(in_directory("secret"), lesson_with(NULL));
  assert_int_equal(chmod(in_directory("secret"), 0), 0);
  bool root = geteuid() == 0;
  if (root) assert_int_equal(seteuid(65534), 0);
  ox_messages messages = {0};
  ox_lesson *lesson = NULL;
  ox_status status = ox_lesson_read(in_directory("secret"), &lesson, &messages);
  if (root) assert_int_equal(seteuid(0), 0);
  assert_int_equal(status, OX_ERROR);
  assert_non_null(strstr(messages.text[0], "secret: cannot be read: permission is denied"));
  ox_messages_clear(&messages);
}

static void an_oversized_file_is_not_read_to_its_end(void **state) {
  const char *path = in_directory("huge");
  put(path, "");
  assert_int_equal(truncate(path, (off_t)1 << 40), 0); /* takes no room on the disk */
  assert_not_read(path, "huge: the file is larger than a lesson may be (4 MiB)");
}

static void a_lesson_comes_through_a_pipe(void **state) {
  int ends[2];
  char path[40];
  const char *text = lesson_with(NULL);
  assert_int_equal(pipe(ends), 0);
  assert_int_equal(write(ends[1], text, strlen(text)), strlen(text));
  close(ends[1]);
  snprintf(path, sizeof path, "/dev/fd/%d", ends[0]);
  ox_messages messages = {0};
  ox_lesson *lesson = NULL;
  ox_status status = ox_lesson_read(path, &lesson, &messages);
  close(ends[0]);
  assert_int_equal(status, OX_OK);
  ox_lesson_free(lesson);
}

#define IN_DIRECTORY(name) cmocka_unit_test_setup_teardown(name, make_directory, remove_directory)

int main(void) {
  const struct CMUnitTest tests[] = {
      IN_DIRECTORY(a_file_is_made_and_replaced),
      IN_DIRECTORY(the_old_file_is_whole_until_the_commit),
      IN_DIRECTORY(a_new_file_has_the_mode_of_the_mask_and_an_old_one_keeps_its_own),
      IN_DIRECTORY(a_symbolic_link_is_followed_and_kept),
      IN_DIRECTORY(a_link_to_nothing_makes_the_file_it_names),
      IN_DIRECTORY(links_in_a_circle_are_refused),
      IN_DIRECTORY(a_missing_directory_is_named),
      IN_DIRECTORY(a_directory_is_not_overwritten),
      IN_DIRECTORY(a_directory_that_vanishes_meanwhile_is_an_error),
      IN_DIRECTORY(a_write_protected_file_is_left_alone),
      IN_DIRECTORY(a_directory_one_may_not_write_to_is_an_error),
      IN_DIRECTORY(a_full_disk_is_an_error_that_sticks),
      IN_DIRECTORY(a_disk_that_fills_half_way_leaves_the_old_file),
      IN_DIRECTORY(a_long_or_odd_path_keeps_the_reason_in_the_message),
      IN_DIRECTORY(a_pipe_is_written_to_directly),
      IN_DIRECTORY(names_left_by_a_crash_do_not_block_saving),
      IN_DIRECTORY(a_lesson_is_written_and_read_again),
      IN_DIRECTORY(a_lesson_that_cannot_be_written_leaves_the_old_file_and_itself),
      IN_DIRECTORY(a_lesson_too_large_to_be_read_again_is_not_written),
      IN_DIRECTORY(what_cannot_be_read_is_said_plainly),
      IN_DIRECTORY(an_oversized_file_is_not_read_to_its_end),
      IN_DIRECTORY(a_lesson_comes_through_a_pipe),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
