#include "cli_run.h"

#include <dirent.h>
#include <locale.h>
#include <unistd.h>

#include "../../src/cli/cli.h"

static char folder[64];

static ran run_list(const char *argument, va_list rest) {
  char words[16][600];
  char *argv[17];
  int argc = 0;
  strcpy(words[argc++], "oxbow-cli");
  for (const char *word = argument; word && argc < 16; word = va_arg(rest, const char *))
    snprintf(words[argc++], sizeof words[0], "%s", word);
  for (int i = 0; i < argc; i++)
    argv[i] = words[i];
  argv[argc] = NULL;
  ran r = {0};
  size_t out_bytes, err_bytes;
  FILE *out = open_memstream(&r.out, &out_bytes), *err = open_memstream(&r.err, &err_bytes);
  assert_non_null(out);
  assert_non_null(err);
  r.code = ox_cli_main(argc, argv, out, err);
  fclose(out);
  fclose(err);
  return r;
}

ran run_cli(const char *argument, ...) {
  va_list rest;
  va_start(rest, argument);
  ran r = run_list(argument, rest);
  va_end(rest);
  return r;
}

ran run_cli_for(int code, const char *argument, ...) {
  va_list rest;
  va_start(rest, argument);
  ran r = run_list(argument, rest);
  va_end(rest);
  if (r.code != code) fail_msg("exit code %d, not %d: %s", r.code, code, r.err);
  if (code == 0)
    assert_string_equal(r.err, "");
  else
    assert_string_not_equal(r.err, "");
  return r;
}

void ran_clear(ran *r) {
  free(r->out);
  free(r->err);
  *r = (ran){0};
}

int folder_make(void **state) {
  const char *base = getenv("TMPDIR");
  int length = snprintf(folder, sizeof folder, "%.40s/oxbow-cli-XXXXXX", base ? base : P_tmpdir);
  return length > 0 && mkdtemp(folder) ? 0 : -1;
}

static int each_file(bool remove_it) {
  DIR *open = opendir(folder);
  int count = 0;
  assert_non_null(open);
  for (struct dirent *entry = readdir(open); entry; entry = readdir(open)) {
    if (strcmp(entry->d_name, ".") == 0 || strcmp(entry->d_name, "..") == 0) continue;
    char path[400];
    snprintf(path, sizeof path, "%s/%s", folder, entry->d_name);
    count++;
    if (remove_it && unlink(path) != 0) rmdir(path);
  }
  closedir(open);
  return count;
}

int folder_count(void) {
  return each_file(false);
}

int folder_remove(void **state) {
  each_file(true);
  return rmdir(folder);
}

const char *in_folder(const char *name) {
  static char paths[8][400];
  static int next;
  char *path = paths[next++ % 8];
  snprintf(path, sizeof paths[0], "%s/%s", folder, name);
  return path;
}

void write_text(const char *path, const char *text) {
  FILE *file = fopen(path, "wb");
  assert_non_null(file);
  assert_int_equal(fwrite(text, 1, strlen(text), file), strlen(text));
  assert_int_equal(fclose(file), 0);
}

char *read_all(const char *path, size_t *length) {
  FILE *file = fopen(path, "rb");
  if (!file) return NULL;
  assert_int_equal(fseek(file, 0, SEEK_END), 0);
  long bytes = ftell(file);
  assert_true(bytes >= 0);
  rewind(file);
  char *text = malloc((size_t)bytes + 1);
  assert_non_null(text);
  assert_int_equal(fread(text, 1, (size_t)bytes, file), (size_t)bytes);
  fclose(file);
  text[bytes] = '\0';
  if (length) *length = (size_t)bytes;
  return text;
}

const char *write_lesson(const char *name, const char *cases) {
  const char *path = in_folder(name);
  size_t bytes = strlen(cases) + 200;
  char *text = malloc(bytes);
  assert_non_null(text);
  snprintf(text, bytes,
           "{\"format\":\"oxbow-lesson\",\"version\":1,\"title\":\"A test\",\"cases\":[%s]}",
           cases);
  write_text(path, text);
  free(text);
  return path;
}

const char *lesson_path(const char *name) {
  static char path[1000];
  const char *base = getenv("OXBOW_LESSONS");
  assert_non_null(base);
  snprintf(path, sizeof path, "%s/%s", base, name);
  return path;
}

int enter_german(void **state) {
  return setlocale(LC_ALL, "de_DE.UTF-8") ? 0 : -1;
}
int leave_german(void **state) {
  return setlocale(LC_ALL, "C") ? 0 : -1;
}
