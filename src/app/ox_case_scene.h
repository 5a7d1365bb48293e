/* A case of a lesson as a scene for paper and files: its flight, its places, its ink, and what the
 * window lays over it. Needs no display. */
#ifndef OX_CASE_SCENE_H
#define OX_CASE_SCENE_H

#include <glib.h>

#include "oxbow/lesson.h"
#include "oxbow/placed.h"

G_BEGIN_DECLS

/* The scene points into the rest: it stays where it is. */
typedef struct {
  ox_scene scene;
  ox_flight flight;
  ox_placed placed;
  ox_case nameless; /* the case under a neutral name, where the answer is hidden */
} ox_case_scene;

/* index is in range. pen_marks: with the case's ink. shown: what the window lays over the case and
 * how it is turned, or NULL. A sheet is laid out for itself: at its own scale, and at no place that
 * was panned to. Lesson and shown are borrowed; freed with g_free. */
ox_case_scene *ox_case_scene_new(const ox_lesson *lesson, size_t index, ox_palette_id palette,
                                 gboolean pen_marks, const ox_scene *shown);

/* What the window lays over a case, kept while the window goes on: for work in another thread.
 * Marks, paths and ink are not in it. */
typedef struct ox_laid_over ox_laid_over;
ox_laid_over *ox_laid_over_copy(const ox_scene *scene);
void ox_laid_over_free(ox_laid_over *shown);
const ox_scene *ox_laid_over_scene(const ox_laid_over *shown);

G_END_DECLS

#endif
