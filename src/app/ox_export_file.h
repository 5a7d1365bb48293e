/* Pictures and tracks into files: bytes through the writer that replaces whole files. Needs no
 * display and may run on any thread, on a lesson that does not change meanwhile. */
#ifndef OX_EXPORT_FILE_H
#define OX_EXPORT_FILE_H

#include <glib.h>

#include "ox_share_choice.h"
#include "oxbow/lesson.h"

/* What is exported. Everything is borrowed. */
typedef struct {
  const ox_lesson *lesson;
  size_t index;          /* the shown case */
  const ox_scene *shown; /* what the window lays over it, or NULL */
  double t_s;            /* where the aircraft is drawn in a picture; NAN: nowhere */
  const gboolean *wanted; /* of each case, whether it is on a handout; NULL: all are */
  /* Asked before each frame of a moving picture with the share that is done (0..1); false ends it
   * as an error. NULL: it is not asked. */
  bool (*go_on)(void *data, double share);
  void *data;
} ox_export_job;

/* Writes what the choice says to path. On OX_ERROR nothing is left at path that was not there
 * before, and *error (freed with g_free) says why: an answer that is hidden is not given away, a
 * fix without a place has no track on a map. */
ox_status ox_export_file(const ox_export_job *job, const ox_share_choice *choice, const char *path,
                         char **error);

/* Why the shown case cannot be exported so, or NULL; freed with g_free. */
char *ox_export_refusal(const ox_export_job *job, ox_share_what what);

/* The bytes of the shown case's picture in memory (PNG or SVG), or NULL with *error as above. */
GBytes *ox_export_bytes(const ox_export_job *job, const ox_share_choice *choice, char **error);

#endif
