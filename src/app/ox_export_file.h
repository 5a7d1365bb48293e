/* A picture into a file: the painter's bytes through the writer that replaces whole files. */
#ifndef OX_EXPORT_FILE_H
#define OX_EXPORT_FILE_H

#include <glib.h>

#include "oxbow/export.h"
#include "oxbow/lesson.h"

/* Writes the case `index` of a lesson as PNG or SVG, or all cases as sheets of a PDF, by the
 * ending of path (".png", ".svg", ".pdf"). t_s: where the aircraft is drawn, for PNG and SVG; NAN:
 * nowhere. shown: what the window lays over that case, or NULL. Always on light ground, for paper
 * and for other people's pages. On OX_ERROR nothing is left at path that was not there before, and
 * *error (freed with g_free) says why. */
ox_status ox_export_file(const ox_lesson *lesson, size_t index, const ox_scene *shown, double t_s,
                         const char *path, char **error);

#endif
