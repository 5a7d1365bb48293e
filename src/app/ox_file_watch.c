/* A file that other programs may change. */
#include "ox_file_watch.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

/* Programs write in several goes; this long after the last sign it is looked at. */
#define SETTLE_MS 250

struct _OxFileWatch {
  GObject parent_instance;

  /* owned */
  char *path;
  char *digest; /* of the contents last accepted; NULL: there was no such file */
  GFileMonitor *monitor;

  guint timeout;
  ox_file_state state;
};

static guint noticed_signal;

G_DEFINE_FINAL_TYPE(OxFileWatch, ox_file_watch, G_TYPE_OBJECT)

/* ---- contents --------------------------------------------------------------------------- */

/* The digest of a regular file; NULL with errno 0 for something else, else with the reason. */
static char *digest_of(const char *path) {
  struct stat state;
  char block[16384], *digest = NULL;
  int fd = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY);
  if (fd < 0) return NULL;
  errno = 0;
  if (fstat(fd, &state) == 0 && S_ISREG(state.st_mode)) {
    GChecksum *sum = g_checksum_new(G_CHECKSUM_SHA256);
    ssize_t got;
    while ((got = read(fd, block, sizeof block)) > 0 || (got < 0 && errno == EINTR))
      if (got > 0) g_checksum_update(sum, (const guchar *)block, got);
    if (got == 0) digest = g_strdup(g_checksum_get_string(sum));
    g_checksum_free(sum);
  }
  int number = errno;
  close(fd);
  errno = number;
  return digest;
}

/* A file that cannot be read is left alone: that it changed would be a guess. */
static ox_file_state look(OxFileWatch *self) {
  if (!self->path || !self->digest) return OX_FILE_SAME;
  char *digest = digest_of(self->path);
  if (!digest) return errno == ENOENT || errno == ENOTDIR ? OX_FILE_GONE : self->state;
  gboolean same = g_str_equal(digest, self->digest);
  g_free(digest);
  return same ? OX_FILE_SAME : OX_FILE_CHANGED;
}

ox_file_state ox_file_watch_look(OxFileWatch *self) {
  ox_file_state state = look(self);
  g_clear_handle_id(&self->timeout, g_source_remove);
  if (state == self->state) return state;
  self->state = state;
  g_signal_emit(self, noticed_signal, 0);
  return state;
}

/* ---- watching --------------------------------------------------------------------------- */

static gboolean settled_cb(gpointer data) {
  OxFileWatch *self = OX_FILE_WATCH(data);
  self->timeout = 0;
  ox_file_watch_look(self);
  return G_SOURCE_REMOVE;
}

static void monitor_cb(GFileMonitor *monitor, GFile *file, GFile *other, GFileMonitorEvent event,
                       OxFileWatch *self) {
  g_clear_handle_id(&self->timeout, g_source_remove);
  self->timeout = g_timeout_add(SETTLE_MS, settled_cb, self);
}

static void stop(OxFileWatch *self) {
  g_clear_handle_id(&self->timeout, g_source_remove);
  if (self->monitor) {
    g_signal_handlers_disconnect_by_data(self->monitor, self);
    g_file_monitor_cancel(self->monitor);
  }
  g_clear_object(&self->monitor);
}

/* A link is a name for the file that changes; where it leads is what is watched. */
static void start(OxFileWatch *self) {
  char *real = realpath(self->path, NULL);
  GFile *file = g_file_new_for_path(real ? real : self->path);
  self->monitor = g_file_monitor_file(file, G_FILE_MONITOR_WATCH_MOVES, NULL, NULL);
  if (self->monitor) g_signal_connect(self->monitor, "changed", G_CALLBACK(monitor_cb), self);
  g_object_unref(file);
  free(real);
}

void ox_file_watch_accept(OxFileWatch *self) {
  g_clear_pointer(&self->digest, g_free);
  if (self->path) self->digest = digest_of(self->path);
  ox_file_watch_look(self);
}

void ox_file_watch_set_path(OxFileWatch *self, const char *path) {
  if (g_strcmp0(path, self->path) != 0) {
    stop(self);
    g_free(self->path);
    self->path = g_strdup(path);
    if (path) start(self);
  }
  ox_file_watch_accept(self);
}

ox_file_state ox_file_watch_state(OxFileWatch *self) { return self->state; }

gboolean ox_same_file(const char *a, const char *b) {
  struct stat one, other;
  if (!a || !b) return FALSE;
  if (g_str_equal(a, b)) return TRUE;
  return stat(a, &one) == 0 && stat(b, &other) == 0 && one.st_dev == other.st_dev &&
         one.st_ino == other.st_ino;
}

/* ---- the object ------------------------------------------------------------------------- */

static void dispose(GObject *object) {
  stop(OX_FILE_WATCH(object));
  G_OBJECT_CLASS(ox_file_watch_parent_class)->dispose(object);
}

static void finalize(GObject *object) {
  OxFileWatch *self = OX_FILE_WATCH(object);
  g_free(self->path);
  g_free(self->digest);
  G_OBJECT_CLASS(ox_file_watch_parent_class)->finalize(object);
}

static void ox_file_watch_class_init(OxFileWatchClass *class) {
  G_OBJECT_CLASS(class)->dispose = dispose;
  G_OBJECT_CLASS(class)->finalize = finalize;
  noticed_signal = g_signal_new("noticed", OX_TYPE_FILE_WATCH, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 0);
}

static void ox_file_watch_init(OxFileWatch *self) {}

OxFileWatch *ox_file_watch_new(void) { return g_object_new(OX_TYPE_FILE_WATCH, NULL); }
