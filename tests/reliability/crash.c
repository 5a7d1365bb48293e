/* Kills editing sessions at random moments and looks at what is left.
 *   reliability_crash KILLS SECONDS
 * Each session is a process that edits a lesson fifty times a second, with the autosave of the
 * window, and saves it to a file now and then. After kill -9 the work is to be found and readable,
 * at most SECONDS of it lost, and the file is to be whole. Prints TAP. */
#include "ox_test.h"

#include <glib.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#include "ox_autosave.h"

#define SESSIONS_AT_ONCE 4
#define EDIT_MS 20
#define SAVE_EVERY 150
#define EDITS_MAX 40000

/* Shared with the session: when each edit was made, and which was saved to the file last. */
typedef struct {
  volatile int edits;
  volatile int saved;
  volatile gint64 at_us[EDITS_MAX];
} diary;

typedef struct {
  pid_t pid;
  char *directory, *path;
  diary *diary;
  gint64 until_us;
} session;

/* ---- the session ------------------------------------------------------------------------ */

typedef struct {
  OxDocument *document;
  const char *path;
  diary *diary;
} script;

/* The altitude counts the edits, so that the file tells how far it got. */
static gboolean edit_cb(gpointer data) {
  script *s = data;
  int number = s->diary->edits + 1;
  if (number >= EDITS_MAX) return G_SOURCE_REMOVE;
  ox_document_set_field(s->document, ox_field_by_key("hold.altitude_ft"), number, NULL);
  s->diary->at_us[number] = g_get_monotonic_time();
  s->diary->edits = number;
  if (number % SAVE_EVERY == 0) {
    ox_messages messages = {0};
    if (ox_document_save(s->document, s->path, &messages) == OX_OK) s->diary->saved = number;
    ox_messages_clear(&messages);
  }
  return G_SOURCE_CONTINUE;
}

static void run_session(const session *of) {
  GMainLoop *loop = g_main_loop_new(NULL, FALSE);
  script s = {ox_document_new(), of->path, of->diary};
  OxAutosave *autosave = ox_autosave_new(s.document, of->directory);
  g_timeout_add(EDIT_MS, edit_cb, &s);
  g_main_loop_run(loop);
  g_object_unref(autosave);
  _exit(0);
}

static session begin(ox_random *random) {
  session s = {0};
  s.directory = g_dir_make_tmp("oxbow-crash-XXXXXX", NULL);
  s.path = g_build_filename(s.directory, "mine.lesson", NULL);
  s.diary = mmap(NULL, sizeof *s.diary, PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
  if (!s.directory || s.diary == MAP_FAILED) exit(99);
  s.until_us = g_get_monotonic_time() + (gint64)ox_random_between(random, 0.05e6, 6e6);
  s.pid = fork();
  if (s.pid < 0) exit(99);
  if (s.pid == 0) run_session(&s);
  return s;
}

/* ---- what is left ----------------------------------------------------------------------- */

/* The number of the edit in a lesson file, 0 for a file that is not there, -1 for one that cannot
 * be read. */
static int edit_in(const char *path) {
  ox_lesson *lesson = NULL;
  ox_messages messages = {0};
  if (!g_file_test(path, G_FILE_TEST_EXISTS)) return 0;
  ox_status status = ox_lesson_read(path, &lesson, &messages);
  for (size_t i = 0; i < messages.count; i++) printf("# %s\n", messages.text[i]);
  ox_messages_clear(&messages);
  if (status == OX_ERROR) return -1;
  int number = (int)lesson->cases[0].c.hold.altitude_ft;
  ox_lesson_free(lesson);
  return number;
}

typedef struct {
  double worst_s;
  int found, recovered, unreadable, late;
} tally;

/* Seconds between the first edit that is lost and the kill; 0 when none is. */
static double lost_s(const diary *d, int kept, gint64 end_us) {
  return kept >= d->edits ? 0 : (double)(end_us - d->at_us[kept + 1]) / 1e6;
}

static void examine(session *s, double allowed_s, tally *t) {
  kill(s->pid, SIGKILL);
  gint64 end_us = g_get_monotonic_time();
  waitpid(s->pid, NULL, 0);
  GPtrArray *found = ox_kept_find(s->directory);
  int saved = edit_in(s->path), best = saved;
  /* It died after the rename and before it could tell, or the other way round: never less. */
  if (saved < s->diary->saved) t->unreadable++;
  for (guint i = 0; i < found->len; i++) {
    const ox_kept *kept = g_ptr_array_index(found, i);
    int number = edit_in(kept->lesson_path);
    if (number < 0) t->unreadable++;
    best = MAX(best, number);
    t->found++;
  }
  if (best > 0) t->recovered++;
  double lost = lost_s(s->diary, MAX(best, 0), end_us);
  t->worst_s = MAX(t->worst_s, lost);
  if (lost > allowed_s) {
    t->late++;
    printf("# %.2f s lost: %d edits, kept %d, saved %d\n", lost, s->diary->edits, best, saved);
  }
  g_ptr_array_set_free_func(found, (GDestroyNotify)ox_kept_discard);
  g_ptr_array_unref(found);
}

/* Nothing may be left over but the lesson's own file and what was being written. */
static int clear(session *s) {
  int others = 0;
  GDir *dir = g_dir_open(s->directory, 0, NULL);
  for (const char *name; dir && (name = g_dir_read_name(dir));) {
    char *path = g_build_filename(s->directory, name, NULL);
    if (!g_str_equal(name, "mine.lesson") && !g_str_has_suffix(name, ".part")) {
      printf("# left over: %s\n", name);
      others++;
    }
    g_unlink(path);
    g_free(path);
  }
  if (dir) g_dir_close(dir);
  g_rmdir(s->directory);
  munmap(s->diary, sizeof *s->diary);
  g_free(s->directory);
  g_free(s->path);
  return others;
}

static void say(int number, bool good, const char *what) {
  printf("%sok %d - %s\n", good ? "" : "not ", number, what);
}

int main(int argc, char **argv) {
  int kills = argc > 1 ? atoi(argv[1]) : 6, others = 0, running = 0;
  double allowed_s = argc > 2 ? g_ascii_strtod(argv[2], NULL) : 2;
  ox_random random = {20240601};
  tally t = {0};
  session at_once[SESSIONS_AT_ONCE];
  printf("1..3\n");
  for (int done = 0, begun = 0; done < kills;) {
    while (running < SESSIONS_AT_ONCE && begun < kills) {
      at_once[running++] = begin(&random);
      begun++;
    }
    int next = 0;
    for (int i = 1; i < running; i++)
      if (at_once[i].until_us < at_once[next].until_us) next = i;
    gint64 wait_us = at_once[next].until_us - g_get_monotonic_time();
    if (wait_us > 0) g_usleep((gulong)wait_us);
    examine(&at_once[next], allowed_s, &t);
    others += clear(&at_once[next]);
    at_once[next] = at_once[--running];
    done++;
  }
  printf("# %d kills, work found after %d (kept aside: %d), at most %.2f s lost (allowed %.0f)\n",
         kills, t.recovered, t.found, t.worst_s, allowed_s);
  say(1, t.unreadable == 0 && t.recovered > 0, "every_file_is_whole_and_readable");
  say(2, t.late == 0, "no_more_than_the_allowed_seconds_of_work_are_lost");
  say(3, others == 0, "nothing_is_left_over");
  return t.unreadable == 0 && t.late == 0 && others == 0 && t.recovered > 0 ? 0 : 1;
}
