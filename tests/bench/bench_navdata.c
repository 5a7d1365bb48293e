/* How fast a file of 50 MB is indexed, against `wc -l` on the same file in the same run; how much
 * memory that takes; and how many holds a second are read, made cases of and solved.
 *
 *   bench_navdata RECORDS      RECORDS is a file of records of 132 columns, repeated to 50 MB
 *
 * Ends with 1 when the index of the repeated records takes more than 3 times as long as wc, or
 * either row more memory than the file and a tenth. The second row renames the points in every
 * copy: the table of points is at its fullest, far beyond any real file, and its time has no
 * bound. */
#include <fcntl.h>
#include <math.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "oxbow/flight.h"
#include "oxbow/navdata.h"

enum { ROUNDS = 7, FILE_BYTES = 50000000, LINE_BYTES = 133 };

extern char **environ;
static ox_flight flight;

static double now_s(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static void stop(const char *why) {
  fprintf(stderr, "bench_navdata: %s\n", why);
  exit(1);
}

static char *read_records(const char *path, size_t *length) {
  FILE *file = fopen(path, "rb");
  if (!file) stop("cannot read the records");
  char *bytes = malloc(1 << 20);
  if (!bytes) stop("memory");
  *length = fread(bytes, 1, 1 << 20, file);
  fclose(file);
  if (*length == 0 || *length % LINE_BYTES != 0) stop("the records are not of 132 columns");
  return bytes;
}

/* Three figures of a number in base 36 into columns 15-17, where points have their ident; the
 * first letter stays, and so they differ from each other as before. */
static void rename_points(char *copy, size_t length, unsigned number) {
  static const char figures[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789";
  for (char *line = copy; line < copy + length; line += LINE_BYTES) {
    if (!strchr("DEP", line[4]) || !strchr("ACG ", line[12])) continue;
    unsigned left = number;
    for (int i = 0; i < 3; i++, left /= 36)
      line[14 + i] = figures[left % 36];
  }
}

static size_t write_file(const char *path, const char *records, size_t length, bool renamed) {
  FILE *file = fopen(path, "wb");
  char *copy = malloc(length);
  if (!file || !copy) stop("cannot write the file");
  size_t written = 0;
  for (unsigned n = 0; written < FILE_BYTES; n++, written += length) {
    memcpy(copy, records, length);
    if (renamed) rename_points(copy, length, n);
    if (fwrite(copy, 1, length, file) != length) stop("cannot write the file");
  }
  if (fclose(file) != 0) stop("cannot write the file");
  free(copy);
  return written;
}

static double wc_s(char *path) {
  double best = HUGE_VAL;
  char program[] = "wc", option[] = "-l", *arguments[] = {program, option, path, NULL};
  posix_spawn_file_actions_t quiet;
  posix_spawn_file_actions_init(&quiet);
  posix_spawn_file_actions_addopen(&quiet, 1, "/dev/null", O_WRONLY, 0);
  for (int i = 0; i < ROUNDS; i++) {
    pid_t pid;
    int status = 1;
    double begin = now_s();
    if (posix_spawnp(&pid, "wc", &quiet, NULL, arguments, environ) != 0) stop("cannot run wc");
    waitpid(pid, &status, 0);
    if (status != 0) stop("wc failed");
    best = fmin(best, now_s() - begin);
  }
  posix_spawn_file_actions_destroy(&quiet);
  return best;
}

static ox_navdata *open_file(const char *path) {
  ox_navdata *data = NULL;
  char why[OX_REMARK_BYTES];
  if (ox_navdata_open(path, &data, why, sizeof why) != OX_OK) stop(why);
  return data;
}

static double index_s(const char *path) {
  double best = HUGE_VAL;
  for (int i = 0; i < ROUNDS; i++) {
    double begin = now_s();
    ox_navdata *data = open_file(path);
    best = fmin(best, now_s() - begin);
    ox_navdata_close(data);
  }
  return best;
}

/* The most memory this process has had (VmHWM), in bytes; 0 where the system does not tell. */
static double peak_bytes(void) {
  FILE *file = fopen("/proc/self/status", "r");
  char line[256];
  double kilobytes = 0;
  while (file && fgets(line, sizeof line, file))
    if (sscanf(line, "VmHWM: %lf", &kilobytes) == 1) break;
  if (file) fclose(file);
  return kilobytes * 1024;
}

static void holds_a_second(const ox_navdata *data) {
  size_t count = ox_navdata_hold_count(data), solved = count < 20000 ? count : 20000;
  ox_published_hold hold;
  ox_published_case made;
  double begin = now_s();
  for (size_t i = 0; i < count; i++)
    if (ox_navdata_hold(data, i, &hold) != OX_OK) stop("a hold was refused");
  double read = now_s();
  for (size_t i = 0; i < count; i++)
    if (ox_navdata_case(data, i, &made, NULL, 0) == OX_ERROR) stop("a case was refused");
  double cases = now_s();
  for (size_t i = 0; i < solved; i++) {
    ox_navdata_case(data, i, &made, NULL, 0);
    if (ox_flight_solve(&made.c, &flight) == OX_ERROR) stop("a flight was refused");
  }
  double flown = now_s();
  printf("%zu holds: read %.0f, made a case %.0f, made and solved %.0f a second\n", count,
         (double)count / (read - begin), (double)count / (cases - read),
         (double)solved / (flown - cases));
}

/* True when the bounds are kept. */
static bool row(const char *name, char *path, const char *records, size_t length, bool renamed) {
  double bytes = (double)write_file(path, records, length, renamed);
  double before = peak_bytes();
  ox_navdata *data = open_file(path);
  double taken = peak_bytes() - before;
  const ox_navdata_report *report = ox_navdata_report_of(data);
  double index_bytes = (double)ox_navdata_index_bytes(data);
  double wc = wc_s(path), indexed = index_s(path);
  printf("%-9s %6.1f MB  wc -l %6.1f ms  index %6.1f ms  ratio %4.2f  VmHWM +%.1f MB (%+.1f %%)  "
         "index %.2f MB  %zu holds  %zu points\n",
         name, bytes / 1e6, wc * 1e3, indexed * 1e3, indexed / wc, taken / 1e6,
         (taken / bytes - 1) * 100, index_bytes / 1e6, report->holds, report->points);
  if (!renamed) holds_a_second(data);
  ox_navdata_close(data);
  bool in_time = renamed || indexed <= 3 * wc;
  return in_time && taken <= 1.1 * bytes && index_bytes <= 0.1 * bytes;
}

/* A row in a process of its own: the most memory a process has had never goes back. */
static bool row_apart(const char *name, char *path, const char *records, size_t length,
                      bool renamed) {
  int status = 1;
  fflush(stdout);
  pid_t pid = fork();
  if (pid < 0) stop("cannot fork");
  if (pid == 0) {
    bool kept = row(name, path, records, length, renamed);
    fflush(stdout);
    _exit(kept ? 0 : 1);
  }
  waitpid(pid, &status, 0);
  return status == 0;
}

int main(int argc, char **argv) {
  if (argc != 2) stop("give a file of records");
  size_t length;
  char *records = read_records(argv[1], &length);
  char path[] = "bench-navdata-XXXXXX";
  int file = mkstemp(path);
  if (file < 0) stop("cannot write here");
  close(file);
  bool kept = row_apart("repeated", path, records, length, false);
  kept = row_apart("renamed", path, records, length, true) && kept;
  unlink(path);
  free(records);
  if (!kept) stop("a bound was not kept");
  return 0;
}
