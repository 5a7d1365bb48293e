/* Files that are replaced whole or not at all. The new text is written to a file beside the old
 * one, forced to the disk and renamed over it, so that a full disk, a crash or a pulled plug
 * leaves either the old file or the new one.
 *
 * What is no regular file (a pipe, a terminal) cannot be replaced and is written to directly. */
#include "oxbow/file.h"

#include <cJSON.h>
#include <errno.h>
#include <fcntl.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "errno_text.h"
#include "oxbow/text.h"
#include "text.h"

#define LINKS_MAX 40
#define TEMPORARY_TRIES 100
#define SHOWN_PATH_BYTES 240

struct ox_file_writer {
  char *shown;  /* the path as it was asked for */
  char *target; /* with a last symbolic link followed */
  char *beside; /* the temporary file; NULL when the target is written to directly */
  int fd;
  int error; /* errno of the first failure, 0 while all is well */
};

static void say(char *error, size_t error_bytes, const char *path, const char *why) {
  ox_growing text = {0};
  size_t length = strlen(path), from = length > SHOWN_PATH_BYTES ? length - SHOWN_PATH_BYTES : 0;
  while (from > 0 && from < length && ox_utf8_length(path + from, length - from) == 0)
    from++;
  if (from > 0) ox_growing_puts(&text, "…");
  ox_growing_put_plain(&text, path + from, length - from);
  snprintf(error, error_bytes, _("%s: cannot be written: %s"), text.bytes ? text.bytes : _("file"),
           why);
  ox_growing_clear(&text);
}

static char *copy_bytes(const char *bytes, size_t length) {
  char *copy = cJSON_malloc(length + 1);
  if (!copy) return NULL;
  memcpy(copy, bytes, length);
  copy[length] = '\0';
  return copy;
}

/* "DIRECTORY/NAME" where the directory is that of a path; NULL when memory is out. */
static char *beside_path(const char *path, const char *name) {
  const char *slash = strrchr(path, '/');
  size_t directory = slash ? (size_t)(slash - path) + 1 : 0, length = strlen(name);
  char *joined = cJSON_malloc(directory + length + 1);
  if (!joined) return NULL;
  memcpy(joined, path, directory);
  memcpy(joined + directory, name, length + 1);
  return joined;
}

/* Where a symbolic link leads, as a path to be used from here; NULL with errno (EINVAL: the path
 * is no link). */
static char *link_target(const char *path) {
  char to[4096];
  ssize_t length = readlink(path, to, sizeof to - 1);
  if (length < 0) return NULL;
  if ((size_t)length >= sizeof to - 1) {
    errno = ENAMETOOLONG;
    return NULL;
  }
  to[length] = '\0';
  char *next = to[0] == '/' ? copy_bytes(to, (size_t)length) : beside_path(path, to);
  if (!next) errno = ENOMEM;
  return next;
}

/* Whether the path leads to something that can only be written to as it is. Such a path must not
 * be followed by hand: the links of open pipes lead nowhere. */
static bool is_direct(const char *path) {
  struct stat state;
  return stat(path, &state) == 0 && !S_ISREG(state.st_mode);
}

/* The path with its last part followed through symbolic links, also where the last one leads to
 * nothing yet; NULL with errno. */
static char *follow(const char *path) {
  char *now = copy_bytes(path, strlen(path));
  if (!now) errno = ENOMEM;
  if (now && is_direct(path)) return now;
  for (int i = 0; now && i < LINKS_MAX; i++) {
    char *next = link_target(now);
    if (!next && (errno == EINVAL || errno == ENOENT)) return now;
    int number = errno;
    cJSON_free(now);
    now = next;
    if (!now) errno = number;
  }
  if (now) errno = ELOOP;
  cJSON_free(now);
  return NULL;
}

/* Creates the file beside the target; false with w->error. `old` is the target's state, NULL when
 * there is none. Until its mode is set nobody else may read it. */
static bool open_beside(ox_file_writer *w, const struct stat *old) {
  for (int i = 0; i < TEMPORARY_TRIES; i++) {
    char name[64];
    snprintf(name, sizeof name, ".oxbow-%ld-%d.part", (long)getpid(), i);
    w->beside = beside_path(w->target, name);
    if (!w->beside) {
      w->error = ENOMEM;
      return false;
    }
    mode_t mode = old ? S_IRUSR | S_IWUSR : 0666;
    w->fd = open(w->beside, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
    if (w->fd >= 0) return true;
    w->error = errno;
    cJSON_free(w->beside);
    w->beside = NULL;
    if (w->error != EEXIST) return false;
  }
  return false;
}

/* Owner, group and mode as the old file has them. Only root can keep another owner; rights of a
 * group that cannot be kept must not pass to another group. Some disks know no modes at all, so a
 * refusal is no failure. */
static void keep_mode(const ox_file_writer *w, const struct stat *old) {
  mode_t mode = old->st_mode & 0777;
  bool kept =
      fchown(w->fd, old->st_uid, old->st_gid) == 0 || fchown(w->fd, (uid_t)-1, old->st_gid) == 0;
  if (!kept) mode &= (mode_t)~070u;
  kept = fchmod(w->fd, mode) == 0;
  (void)kept;
}

static void open_target(ox_file_writer *w) {
  struct stat old;
  bool exists = stat(w->target, &old) == 0;
  if (!exists && errno != ENOENT) {
    w->error = errno;
  } else if (exists && S_ISDIR(old.st_mode)) {
    w->error = EISDIR;
  } else if (exists && !S_ISREG(old.st_mode)) {
    w->fd = open(w->target, O_WRONLY | O_CLOEXEC | O_NOCTTY | O_NONBLOCK);
    if (w->fd < 0 || fcntl(w->fd, F_SETFL, 0) < 0) w->error = errno;
  } else if (exists && ((old.st_mode & 0222) == 0 || access(w->target, W_OK) != 0)) {
    w->error = EACCES; /* renaming would go around the write protection */
  } else {
    w->error = 0;
    if (open_beside(w, exists ? &old : NULL)) {
      w->error = 0;
      if (exists) keep_mode(w, &old);
    }
  }
}

static void discard(ox_file_writer *w) {
  if (w->fd >= 0) close(w->fd);
  if (w->beside) unlink(w->beside);
  cJSON_free(w->beside);
  cJSON_free(w->target);
  cJSON_free(w->shown);
  cJSON_free(w);
}

ox_file_writer *ox_file_begin(const char *path, char *error, size_t error_bytes) {
  ox_file_writer *w = cJSON_malloc(sizeof *w);
  if (!w) {
    say(error, error_bytes, path, ox_errno_text(ENOMEM));
    return NULL;
  }
  *w = (ox_file_writer){.fd = -1};
  w->shown = copy_bytes(path, strlen(path));
  w->target = w->shown ? follow(path) : NULL;
  if (w->target)
    open_target(w);
  else
    w->error = w->shown ? errno : ENOMEM;
  if (w->error == 0) {
    error[0] = '\0';
    return w;
  }
  say(error, error_bytes, path, ox_errno_text(w->error));
  discard(w);
  return NULL;
}

ox_status ox_file_write(ox_file_writer *w, const void *bytes, size_t length) {
  const char *at = bytes;
  while (w->error == 0 && length > 0) {
    ssize_t written = write(w->fd, at, length);
    if (written < 0) {
      if (errno == EINTR) continue;
      w->error = errno;
    } else {
      at += written;
      length -= (size_t)written;
    }
  }
  return w->error == 0 ? OX_OK : OX_ERROR;
}

/* The rename itself has to reach the disk. Where a directory cannot be opened or synced there is
 * nothing more to be done, and the file is already in its place. */
static void sync_directory(const char *path) {
  char *directory = beside_path(path, ".");
  int fd = directory ? open(directory, O_RDONLY | O_DIRECTORY | O_CLOEXEC) : -1;
  cJSON_free(directory);
  if (fd < 0) return;
  fsync(fd);
  close(fd);
}

/* Pipes and terminals have no disk behind them: EINVAL is no failure there. */
static void finish(ox_file_writer *w) {
  if (w->error == 0 && fsync(w->fd) != 0 && errno != EINVAL && errno != EROFS) w->error = errno;
  if (close(w->fd) != 0 && w->error == 0) w->error = errno;
  w->fd = -1;
  if (w->error == 0 && w->beside && rename(w->beside, w->target) != 0) w->error = errno;
  if (w->error != 0 || !w->beside) return;
  cJSON_free(w->beside);
  w->beside = NULL;
  sync_directory(w->target);
}

ox_status ox_file_commit(ox_file_writer *w, char *error, size_t error_bytes) {
  finish(w);
  ox_status status = w->error == 0 ? OX_OK : OX_ERROR;
  error[0] = '\0';
  if (status != OX_OK) say(error, error_bytes, w->shown, ox_errno_text(w->error));
  discard(w);
  return status;
}

void ox_file_abandon(ox_file_writer *w) {
  if (w) discard(w);
}
