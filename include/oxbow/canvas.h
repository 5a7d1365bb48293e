/* A canvas: an image that keeps what the next picture will need again.
 *
 * While something is dragged, picture follows picture on one board, and most of each is as it was:
 * the rose, the handwriting. A canvas keeps such layers as they were drawn, by what they are made
 * of, and draws the rest. What it shows is what ox_picture_draw would show, but for the rounding
 * of a colour's last step; a draft has coarser edges, for pictures that are seen for an instant
 * only. */
#ifndef OXBOW_CANVAS_H
#define OXBOW_CANVAS_H

#include "oxbow/picture.h"

typedef struct ox_canvas ox_canvas;

ox_canvas *ox_canvas_new(void);     /* NULL: memory is out */
void ox_canvas_free(ox_canvas *canvas); /* NULL is allowed */

/* Draws at `scale` pixels to a user unit (> 0) the still half, and with t_s (NAN: without) the
 * moving half over it. The image is opaque (CAIRO_FORMAT_ARGB32), belongs to the canvas and stays
 * until it is drawn on again; NULL where memory is out or the picture is too large for one. */
cairo_surface_t *ox_canvas_draw(ox_canvas *canvas, ox_picture *picture, double scale, double t_s,
                                bool draft);

/* How many layers were drawn into memory, and how many times one was taken from there, since the
 * canvas is there. */
typedef struct {
  unsigned long kept, used;
} ox_canvas_counts;
ox_canvas_counts ox_canvas_get_counts(const ox_canvas *canvas);

#endif
