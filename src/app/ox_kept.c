/* Work kept safe from a crash: names, locks, writing and finding. */
#include "ox_kept.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cJSON.h>
#include <glib/gstdio.h>

#include "oxbow/file.h"
#include "oxbow/text.h"

#define GROUP "lesson"
#define INFO_ENDING ".info"
#define LESSON_ENDING ".oxbow"
#define NAME_TRIES 100

char *ox_kept_directory(void) { return g_build_filename(g_get_user_state_dir(), "oxbow", NULL); }

static void kept_free(ox_kept *kept) {
  if (kept->lock_fd >= 0) close(kept->lock_fd);
  g_free(kept->info_path);
  g_free(kept->lesson_path);
  g_free(kept->path);
  g_free(kept->title);
  g_free(kept);
}

void ox_kept_leave(ox_kept *kept) {
  if (kept) kept_free(kept);
}

/* The lesson goes first: an info without a lesson is nothing, a lesson without an info nobody's. */
void ox_kept_discard(ox_kept *kept) {
  if (!kept) return;
  g_unlink(kept->lesson_path);
  g_unlink(kept->info_path);
  kept_free(kept);
}

/* ---- locks ------------------------------------------------------------------------------ */

/* Whether the open file still is what the path leads to. */
static gboolean is_still_there(int fd, const char *path) {
  struct stat open_one, named;
  return fstat(fd, &open_one) == 0 && stat(path, &named) == 0 &&
         open_one.st_dev == named.st_dev && open_one.st_ino == named.st_ino;
}

/* An open file with the lock on it, or -1 with errno: EWOULDBLOCK when its owner lives, ENOENT when
 * it was cleared away meanwhile. */
static int open_locked(const char *path, int flags) {
  int fd = open(path, O_RDWR | O_CLOEXEC | flags, 0600);
  if (fd < 0) return -1;
  if (flock(fd, LOCK_EX | LOCK_NB) == 0) {
    if (is_still_there(fd, path)) return fd;
    errno = ENOENT;
  }
  int number = errno;
  close(fd);
  errno = number;
  return -1;
}

/* ---- making ----------------------------------------------------------------------------- */

static gboolean write_info(const ox_kept *kept) {
  GKeyFile *file = g_key_file_new();
  /* Paths are bytes, a key file is UTF-8. */
  char *escaped = kept->path ? g_uri_escape_bytes((const guint8 *)kept->path, strlen(kept->path),
                                                  "/")
                             : NULL;
  gsize length;
  if (escaped) g_key_file_set_string(file, GROUP, "path", escaped);
  g_key_file_set_string(file, GROUP, "title", kept->title);
  char *text = g_key_file_to_data(file, &length, NULL);
  gboolean good = write(kept->lock_fd, text, length) == (gssize)length &&
                  fsync(kept->lock_fd) == 0;
  g_free(text);
  g_free(escaped);
  g_key_file_free(file);
  return good;
}

static gboolean choose_names(ox_kept *kept, const char *directory) {
  for (int i = 0; i < NAME_TRIES; i++) {
    char *stem = g_strdup_printf("%s/%" G_GINT64_FORMAT "-%ld-%08x", directory,
                                 g_get_real_time() / G_USEC_PER_SEC, (long)getpid(),
                                 g_random_int());
    g_free(kept->info_path);
    g_free(kept->lesson_path);
    kept->info_path = g_strconcat(stem, INFO_ENDING, NULL);
    kept->lesson_path = g_strconcat(stem, LESSON_ENDING, NULL);
    g_free(stem);
    kept->lock_fd = open_locked(kept->info_path, O_CREAT | O_EXCL);
    if (kept->lock_fd >= 0) return TRUE;
    /* Another one who looked for what is left over was faster than the lock. */
    if (errno != EEXIST && errno != EWOULDBLOCK && errno != ENOENT) return FALSE;
  }
  return FALSE;
}

ox_kept *ox_kept_new(const char *directory, const char *path, const char *title, char **error) {
  ox_kept *kept = g_new0(ox_kept, 1);
  kept->lock_fd = -1;
  kept->path = g_strdup(path);
  kept->title = g_utf8_make_valid(title, -1);
  if (g_mkdir_with_parents(directory, 0700) == 0 && choose_names(kept, directory) &&
      write_info(kept))
    return kept;
  *error = g_strdup_printf(_("%s: cannot be written: %s"), directory, g_strerror(errno));
  if (kept->lock_fd >= 0) g_unlink(kept->info_path);
  kept_free(kept);
  return NULL;
}

/* ---- writing ---------------------------------------------------------------------------- */

gboolean ox_kept_write(const ox_kept *kept, ox_snapshot *snapshot, char **error) {
  char reason[512];
  g_strlcpy(reason, _("there is not enough memory"), sizeof reason);
  ox_lesson view = {0};
  ox_snapshot_view(snapshot, &view);
  char *text = ox_lesson_to_text(&view);
  ox_snapshot_view_clear(&view);
  ox_file_writer *writer =
      text ? ox_file_begin(kept->lesson_path, reason, sizeof reason) : NULL;
  gboolean good = FALSE;
  if (writer) {
    ox_file_write(writer, text, strlen(text));
    good = ox_file_commit(writer, reason, sizeof reason) == OX_OK;
  }
  cJSON_free(text);
  if (!good) *error = g_strdup(reason);
  return good;
}

/* ---- finding ---------------------------------------------------------------------------- */

static void read_info(ox_kept *kept) {
  GKeyFile *file = g_key_file_new();
  if (g_key_file_load_from_file(file, kept->info_path, G_KEY_FILE_NONE, NULL)) {
    char *escaped = g_key_file_get_string(file, GROUP, "path", NULL);
    GBytes *bytes = escaped ? g_uri_unescape_bytes(escaped, -1, NULL, NULL) : NULL;
    if (bytes) {
      gsize length;
      const char *data = g_bytes_get_data(bytes, &length);
      kept->path = g_strndup(data, length);
      g_bytes_unref(bytes);
    }
    g_free(escaped);
    kept->title = g_key_file_get_string(file, GROUP, "title", NULL);
  }
  if (!kept->title) kept->title = g_strdup(_("A lesson"));
  g_key_file_free(file);
}

/* The work of one that is gone, locked; NULL when the owner lives or there is nothing to keep. */
static ox_kept *claim(const char *directory, const char *name) {
  GStatBuf state;
  char *stem = g_strndup(name, strlen(name) - strlen(INFO_ENDING));
  ox_kept *kept = g_new0(ox_kept, 1);
  kept->info_path = g_build_filename(directory, name, NULL);
  kept->lesson_path = g_strconcat(directory, "/", stem, LESSON_ENDING, NULL);
  g_free(stem);
  kept->lock_fd = open_locked(kept->info_path, 0);
  if (kept->lock_fd < 0) {
    kept_free(kept);
    return NULL;
  }
  if (g_stat(kept->lesson_path, &state) != 0) { /* it died before its first writing */
    ox_kept_discard(kept);
    return NULL;
  }
  kept->at_s = state.st_mtime;
  read_info(kept);
  return kept;
}

/* A temporary file of the writer (".oxbow-PID-N.part") whose process is gone. */
static void clear_part(const char *directory, const char *name) {
  static const char start[] = ".oxbow-";
  if (!g_str_has_prefix(name, start) || !g_str_has_suffix(name, ".part")) return;
  gint64 pid = g_ascii_strtoll(name + strlen(start), NULL, 10);
  if (pid <= 0 || pid > G_MAXINT || kill((pid_t)pid, 0) == 0 || errno != ESRCH) return;
  char *path = g_build_filename(directory, name, NULL);
  g_unlink(path);
  g_free(path);
}

static int newest_first(gconstpointer a, gconstpointer b) {
  const ox_kept *one = *(ox_kept *const *)a, *other = *(ox_kept *const *)b;
  if (one->at_s != other->at_s) return one->at_s < other->at_s ? 1 : -1;
  return strcmp(one->info_path, other->info_path);
}

GPtrArray *ox_kept_find(const char *directory) {
  GPtrArray *found = g_ptr_array_new_with_free_func((GDestroyNotify)ox_kept_leave);
  GDir *dir = g_dir_open(directory, 0, NULL);
  for (const char *name; dir && (name = g_dir_read_name(dir));) {
    clear_part(directory, name);
    if (!g_str_has_suffix(name, INFO_ENDING)) continue;
    ox_kept *kept = claim(directory, name);
    if (kept) g_ptr_array_add(found, kept);
  }
  if (dir) g_dir_close(dir);
  g_ptr_array_sort(found, newest_first);
  return found;
}
