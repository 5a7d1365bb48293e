/* The flight as a moving picture. Private to the painter. */
#ifndef OX_PAINT_EXPORT_FRAMES_H
#define OX_PAINT_EXPORT_FRAMES_H

#include <pango/pango.h> /* for its GLib: strings */

#include "oxbow/export.h"

/* Appends an animated PNG. NULL, or a static sentence that says what went wrong. The words are
 * those of a still picture. */
const char *ox_export_frames(const ox_scene *scene, const ox_export_options *o, const char *title,
                             const char *description, GString *out);

/* Appends a GIF; the same otherwise. */
const char *ox_export_gif(const ox_scene *scene, const ox_export_options *o, GString *out);

#endif
