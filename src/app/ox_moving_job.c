/* A moving picture on its thread. */
#include "ox_moving_job.h"

#include "ox_case_scene.h"
#include "oxbow/text.h"

#define LOOK_MS 100
#define PARTS 1000

/* What the thread has; it outlives the bar where the window closes first. */
typedef struct {
  gatomicrefcount count;
  ox_snapshot *snapshot;
  ox_lesson lesson;
  size_t index;
  ox_laid_over *shown;
  ox_share_choice choice;
  char *path, *error;
  gint parts, stopped; /* atomic */
} moving_work;

struct _OxMovingJob {
  GtkWidget parent_instance;

  GtkWidget *box, *stop;
  GtkProgressBar *bar;
  moving_work *work;
  guint look; /* source */
};

G_DEFINE_FINAL_TYPE(OxMovingJob, ox_moving_job, GTK_TYPE_WIDGET)

static guint done_signal;

/* ---- the work --------------------------------------------------------------------------- */

static void work_unref(gpointer data) {
  moving_work *work = data;
  if (!g_atomic_ref_count_dec(&work->count)) return;
  ox_snapshot_view_clear(&work->lesson);
  ox_snapshot_unref(work->snapshot);
  ox_laid_over_free(work->shown);
  g_free(work->path);
  g_free(work->error);
  g_free(work);
}

static bool go_on(void *data, double share) {
  moving_work *work = data;
  g_atomic_int_set(&work->parts, (int)(share * PARTS));
  return !g_atomic_int_get(&work->stopped);
}

static void run_on_thread(GTask *task, gpointer source, gpointer data, GCancellable *unused) {
  moving_work *work = data;
  ox_export_job job = {.lesson = &work->lesson,
                       .index = work->index,
                       .shown = ox_laid_over_scene(work->shown),
                       .go_on = go_on,
                       .data = work};
  ox_export_file(&job, &work->choice, work->path, &work->error);
  g_task_return_boolean(task, work->error == NULL);
}

/* The task does not hold the bar: a window that closes must not wait. */
static void arrived_cb(GObject *unused, GAsyncResult *result, gpointer data) {
  GWeakRef *bar = data;
  OxMovingJob *self = g_weak_ref_get(bar);
  if (self) {
    g_clear_handle_id(&self->look, g_source_remove);
    g_signal_emit(self, done_signal, 0, self->work->error);
    g_object_unref(self);
  }
  g_weak_ref_clear(bar);
  g_free(bar);
}

static void start(OxMovingJob *self) {
  GWeakRef *bar = g_new0(GWeakRef, 1);
  g_weak_ref_init(bar, self);
  g_atomic_ref_count_inc(&self->work->count);
  GTask *task = g_task_new(NULL, NULL, arrived_cb, bar);
  g_task_set_task_data(task, self->work, work_unref);
  g_task_run_in_thread(task, run_on_thread);
  g_object_unref(task);
}

/* ---- the bar ---------------------------------------------------------------------------- */

void ox_moving_job_stop(OxMovingJob *self) {
  g_atomic_int_set(&self->work->stopped, 1);
  gtk_widget_set_sensitive(self->stop, FALSE);
}

gboolean ox_moving_job_stopped(OxMovingJob *self) {
  return g_atomic_int_get(&self->work->stopped) != 0;
}

static gboolean look_cb(gpointer data) {
  OxMovingJob *self = OX_MOVING_JOB(data);
  double share = (double)g_atomic_int_get(&self->work->parts) / PARTS;
  gtk_progress_bar_set_fraction(self->bar, CLAMP(share, 0.0, 1.0));
  return G_SOURCE_CONTINUE;
}

static void dispose(GObject *object) {
  OxMovingJob *self = OX_MOVING_JOB(object);
  g_clear_handle_id(&self->look, g_source_remove);
  if (self->work) g_atomic_int_set(&self->work->stopped, 1);
  g_clear_pointer(&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS(ox_moving_job_parent_class)->dispose(object);
}

static void finalize(GObject *object) {
  g_clear_pointer(&OX_MOVING_JOB(object)->work, work_unref);
  G_OBJECT_CLASS(ox_moving_job_parent_class)->finalize(object);
}

static void ox_moving_job_class_init(OxMovingJobClass *class) {
  G_OBJECT_CLASS(class)->dispose = dispose;
  G_OBJECT_CLASS(class)->finalize = finalize;
  gtk_widget_class_set_layout_manager_type(GTK_WIDGET_CLASS(class), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(GTK_WIDGET_CLASS(class), "movingjob");
  done_signal = g_signal_new("done", OX_TYPE_MOVING_JOB, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                             G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void ox_moving_job_init(OxMovingJob *self) {
  self->box = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 12);
  gtk_widget_set_parent(self->box, GTK_WIDGET(self));
  self->bar = GTK_PROGRESS_BAR(gtk_progress_bar_new());
  self->stop = gtk_button_new_with_mnemonic(_("_Stop"));
  gtk_progress_bar_set_show_text(self->bar, TRUE);
  gtk_widget_set_hexpand(GTK_WIDGET(self->bar), TRUE);
  gtk_widget_set_valign(GTK_WIDGET(self->bar), GTK_ALIGN_CENTER);
  gtk_box_append(GTK_BOX(self->box), GTK_WIDGET(self->bar));
  gtk_box_append(GTK_BOX(self->box), self->stop);
  g_signal_connect_swapped(self->stop, "clicked", G_CALLBACK(ox_moving_job_stop), self);
}

GtkWidget *ox_moving_job_new(ox_snapshot *snapshot, size_t index, const ox_scene *shown,
                             const ox_share_choice *choice, const char *path) {
  OxMovingJob *self = g_object_new(OX_TYPE_MOVING_JOB, NULL);
  moving_work *work = g_new0(moving_work, 1);
  g_atomic_ref_count_init(&work->count);
  work->snapshot = ox_snapshot_ref(snapshot);
  ox_snapshot_view(snapshot, &work->lesson);
  work->index = index;
  work->shown = ox_laid_over_copy(shown);
  work->choice = *choice;
  work->path = g_strdup(path);
  self->work = work;
  char *name = g_filename_display_basename(path);
  char *text = g_strdup_printf(_("Drawing “%s”"), name);
  gtk_progress_bar_set_text(self->bar, text);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->bar), GTK_ACCESSIBLE_PROPERTY_LABEL, text,
                                 -1);
  self->look = g_timeout_add(LOOK_MS, look_cb, self);
  start(self);
  g_free(text);
  g_free(name);
  return GTK_WIDGET(self);
}
