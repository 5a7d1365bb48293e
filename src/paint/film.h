/* The flight frame by frame, for every format of a moving picture. Private to the painter.
 *
 * What stands still is drawn once; a frame is drawn over it. */
#ifndef OX_PAINT_FILM_H
#define OX_PAINT_FILM_H

#include <stdint.h>

#include "oxbow/export.h"

#define OX_FILM_LAST_HELD_S 2

typedef struct {
  const ox_export_options *o;
  const ox_flight *flight;
  ox_picture *picture;
  cairo_surface_t *still, *now;
  int width, height;
  size_t count;
  bool failed;
  bool stopped; /* by who asked for it; then it counts as failed too */
} ox_film;

typedef struct {
  int x, y, width, height;
} ox_patch;

/* NULL, or a static sentence that says what is wrong; then there is nothing to close. */
const char *ox_film_open(ox_film *f, const ox_scene *scene, const ox_export_options *o);
void ox_film_close(ox_film *f);
/* NULL, or a static sentence that says what went wrong on the way. */
const char *ox_film_fault(const ox_film *f);
/* Draws a frame, 0..count-1, into `now`. */
void ox_film_draw(ox_film *f, size_t index);
/* A row of a surface: 0x..RRGGBB a pixel. */
const uint32_t *ox_film_row(cairo_surface_t *surface, int y);
cairo_surface_t *ox_film_blank(const ox_film *f);

/* The smallest rectangle in which two images of `height` rows differ; one pixel where they do not.
 * row gives the bytes of a row (the image is 0 or 1), `pixel` bytes a pixel. */
ox_patch ox_film_changed(const ox_film *f, const void *(*row)(const void *images, int image, int y),
                         const void *images, size_t pixel);

#endif
