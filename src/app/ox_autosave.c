/* Unsaved changes, kept safe. The document's snapshot is handed to a thread as it is: it never
 * changes, so nothing is copied and the window does not wait for the disk. */
#include "ox_autosave.h"

#include <gio/gio.h>

#define RETRY_MS 10000

struct _OxAutosave {
  GObject parent_instance;

  /* owned */
  OxDocument *document;
  char *directory;
  ox_kept *kept;        /* NULL: nothing is kept */
  ox_snapshot *written; /* what is kept, or on its way there */

  guint timeout;
  gboolean stopped, failing;
  guint count;

  GMutex mutex;
  GCond idle;
  gboolean writing; /* under the mutex */
};

static guint failed_signal;

G_DEFINE_FINAL_TYPE(OxAutosave, ox_autosave, G_TYPE_OBJECT)

typedef struct {
  const ox_kept *kept;
  ox_snapshot *snapshot;
  char *error;
} job;

static void job_free(gpointer data) {
  job *j = data;
  ox_snapshot_unref(j->snapshot);
  g_free(j->error);
  g_free(j);
}

/* ---- writing ---------------------------------------------------------------------------- */

static void schedule(OxAutosave *self);

static void fail(OxAutosave *self, const char *why) {
  g_clear_pointer(&self->written, ox_snapshot_unref); /* to be tried again */
  if (self->failing) return;
  self->failing = TRUE;
  g_signal_emit(self, failed_signal, 0, why);
}

static void write_on_thread(GTask *task, gpointer source, gpointer data, GCancellable *unused) {
  OxAutosave *self = OX_AUTOSAVE(source);
  job *j = data;
  ox_kept_write(j->kept, j->snapshot, &j->error);
  g_mutex_lock(&self->mutex);
  self->writing = FALSE;
  g_cond_broadcast(&self->idle);
  g_mutex_unlock(&self->mutex);
  g_task_return_boolean(task, j->error == NULL);
}

static void written_cb(GObject *source, GAsyncResult *result, gpointer data) {
  OxAutosave *self = OX_AUTOSAVE(source);
  job *j = g_task_get_task_data(G_TASK(result));
  if (self->stopped) return;
  self->count++;
  if (j->error)
    fail(self, j->error);
  else
    self->failing = FALSE;
  schedule(self); /* there may be more by now, or nothing to keep */
}

static void start_writing(OxAutosave *self) {
  char *error = NULL;
  if (!self->kept)
    self->kept = ox_kept_new(self->directory, ox_document_path(self->document),
                             ox_document_title(self->document), &error);
  if (!self->kept) {
    fail(self, error);
    g_free(error);
    schedule(self);
    return;
  }
  job *j = g_new0(job, 1);
  j->kept = self->kept;
  j->snapshot = ox_document_snapshot(self->document);
  g_clear_pointer(&self->written, ox_snapshot_unref);
  self->written = ox_snapshot_ref(j->snapshot);
  self->writing = TRUE;
  GTask *task = g_task_new(self, NULL, written_cb, NULL);
  g_task_set_task_data(task, j, job_free);
  g_task_run_in_thread(task, write_on_thread);
  g_object_unref(task);
}

/* ---- when ------------------------------------------------------------------------------- */

static void wait_until_idle(OxAutosave *self) {
  g_mutex_lock(&self->mutex);
  while (self->writing) g_cond_wait(&self->idle, &self->mutex);
  g_mutex_unlock(&self->mutex);
}

static void drop(OxAutosave *self) {
  g_clear_handle_id(&self->timeout, g_source_remove);
  wait_until_idle(self);
  g_clear_pointer(&self->written, ox_snapshot_unref);
  g_clear_pointer(&self->kept, ox_kept_discard);
}

static gboolean is_kept(OxAutosave *self) {
  g_autoptr(ox_snapshot) now = ox_document_snapshot(self->document);
  return self->written == now;
}

static gboolean is_writing(OxAutosave *self) {
  g_mutex_lock(&self->mutex);
  gboolean writing = self->writing;
  g_mutex_unlock(&self->mutex);
  return writing;
}

static gboolean timeout_cb(gpointer data) {
  OxAutosave *self = OX_AUTOSAVE(data);
  self->timeout = 0;
  if (!ox_document_modified(self->document))
    drop(self);
  else if (!is_kept(self) && !is_writing(self))
    start_writing(self);
  return G_SOURCE_REMOVE;
}

/* The delay counts from the first change: going on with changing does not put it off. */
static void schedule(OxAutosave *self) {
  if (self->stopped || self->timeout) return;
  if (!ox_document_modified(self->document)) {
    if (self->kept) self->timeout = g_idle_add(timeout_cb, self);
    return;
  }
  if (is_kept(self)) return;
  guint delay_ms = self->failing ? RETRY_MS : OX_AUTOSAVE_DELAY_MS;
  self->timeout = g_timeout_add(delay_ms, timeout_cb, self);
}

static void changed_cb(OxDocument *document, guint what, OxAutosave *self) {
  /* Another lesson: what was kept of the last one went the way its user chose. */
  if (what & OX_DOCUMENT_LESSON) drop(self);
  schedule(self);
}

/* Saved, or undone to what is saved. The file that was written is on the disk by now. */
static void modified_cb(OxAutosave *self) {
  if (!self->stopped && !ox_document_modified(self->document)) drop(self);
}

/* ---- the object ------------------------------------------------------------------------- */

void ox_autosave_adopt(OxAutosave *self, ox_kept *kept) {
  drop(self);
  self->kept = kept;
  self->written = ox_document_snapshot(self->document);
}

void ox_autosave_stop(OxAutosave *self) {
  if (self->stopped) return;
  self->stopped = TRUE;
  if (self->document) g_signal_handlers_disconnect_by_data(self->document, self);
  drop(self);
}

static void dispose(GObject *object) {
  OxAutosave *self = OX_AUTOSAVE(object);
  ox_autosave_stop(self);
  g_clear_object(&self->document);
  G_OBJECT_CLASS(ox_autosave_parent_class)->dispose(object);
}

static void finalize(GObject *object) {
  OxAutosave *self = OX_AUTOSAVE(object);
  g_free(self->directory);
  g_mutex_clear(&self->mutex);
  g_cond_clear(&self->idle);
  G_OBJECT_CLASS(ox_autosave_parent_class)->finalize(object);
}

static void ox_autosave_class_init(OxAutosaveClass *class) {
  G_OBJECT_CLASS(class)->dispose = dispose;
  G_OBJECT_CLASS(class)->finalize = finalize;
  failed_signal = g_signal_new("failed", OX_TYPE_AUTOSAVE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void ox_autosave_init(OxAutosave *self) {
  g_mutex_init(&self->mutex);
  g_cond_init(&self->idle);
}

OxAutosave *ox_autosave_new(OxDocument *document, const char *directory) {
  OxAutosave *self = g_object_new(OX_TYPE_AUTOSAVE, NULL);
  self->document = g_object_ref(document);
  self->directory = directory ? g_strdup(directory) : ox_kept_directory();
  g_signal_connect(document, "changed", G_CALLBACK(changed_cb), self);
  g_signal_connect_swapped(document, "notify::modified", G_CALLBACK(modified_cb), self);
  schedule(self);
  return self;
}

const char *ox_autosave_path(OxAutosave *self) {
  return self->kept ? self->kept->lesson_path : NULL;
}

guint ox_autosave_count(OxAutosave *self) { return self->count; }
