/* A quick brush for drafts: lines put straight into an image's pixels.
 *
 * A line drawn with cairo is turned into the outline of its ink, and that into pixels, whatever
 * its shape; of a picture that is drawn anew at every step of a drag this takes half the time.
 * Here a pixel is as dark as the line's edge is near, which for long smooth lines is the same but
 * for a step or two of the colour, at a third of the cost. Sharp corners are round. */
#ifndef PAINT_BRUSH_H
#define PAINT_BRUSH_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "geometry.h"
#include "palette.h"

enum { OX_DASHES_MOST = 6 };

/* How a line is drawn: lengths in device units. */
typedef struct {
  ox_rgb colour;
  double width;                /* > 0 */
  bool round;                  /* its ends */
  int parts;                   /* dashes and gaps in turn; 0: a whole line */
  double part[OX_DASHES_MOST]; /* > 0 each */
} ox_line_look;

typedef struct {
  uint32_t *pixels; /* opaque, CAIRO_FORMAT_ARGB32 */
  ptrdiff_t stride; /* pixels */
  int left, top, right, bottom; /* what may be drawn on, within the image; right and bottom not */
  double scale;                 /* pixels to a device unit */
} ox_brush;

void ox_brush_stroke(const ox_brush *brush, const ox_lines *lines, const ox_line_look *look);

#endif
