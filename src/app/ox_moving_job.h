/* A moving picture on its way into a file: drawn frame by frame on a thread of its own, while the
 * window goes on. It shows how far it is, and can be stopped. */
#ifndef OX_MOVING_JOB_H
#define OX_MOVING_JOB_H

#include <gtk/gtk.h>

#include "ox_export_file.h"
#include "ox_snapshot.h"

G_BEGIN_DECLS

#define OX_TYPE_MOVING_JOB (ox_moving_job_get_type())
G_DECLARE_FINAL_TYPE(OxMovingJob, ox_moving_job, OX, MOVING_JOB, GtkWidget)

/* A bar with the progress, and "Stop"; it takes references and copies. "done" (const char *error,
 * NULL: all is well) is emitted once, also after it was stopped; then the bar may be removed. */
GtkWidget *ox_moving_job_new(ox_snapshot *snapshot, size_t index, const ox_scene *shown,
                             const ox_share_choice *choice, const char *path);
/* Stops it as the button does: nothing is left of the file. */
void ox_moving_job_stop(OxMovingJob *self);
gboolean ox_moving_job_stopped(OxMovingJob *self);

G_END_DECLS

#endif
