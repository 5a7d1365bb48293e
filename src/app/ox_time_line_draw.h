/* How the time line looks: colours, textures and marks, drawn with cairo. */
#ifndef OX_TIME_LINE_DRAW_H
#define OX_TIME_LINE_DRAW_H

#include <cairo.h>
#include <gdk/gdk.h>

#include "ox_stretches.h"

typedef struct {
  GdkRGBA fill[OX_STRETCH_KIND_COUNT];    /* of a stretch */
  GdkRGBA texture[OX_STRETCH_KIND_COUNT]; /* lines and dots on it, and its edge */
  GdkRGBA text;                           /* on every fill */
  cairo_pattern_t *hatch;                 /* of a turn: a mask; owned */
  int scale;                              /* that it was made for */
} ox_time_line_look;

/* By the colour of the window's text, which is light in a dark theme; in high contrast only that
 * colour and its ground are used, and textures tell the kinds. `scale`: pixels to a unit (>= 1).
 * The look was chosen before, or is all zero. */
void ox_time_line_look_choose(ox_time_line_look *look, const GdkRGBA *text, bool high_contrast,
                              int scale);
void ox_time_line_look_clear(ox_time_line_look *look);

typedef struct {
  double x, y, width, height;
} ox_time_line_box;

/* One stretch: its ground, hatched for a turn, dotted where adrift, with an edge. */
void ox_time_line_draw_stretch(cairo_t *cr, const ox_time_line_look *look,
                               const ox_stretch *stretch, ox_time_line_box at);
/* A plain ground behind a name that stands on a texture. */
void ox_time_line_draw_ground(cairo_t *cr, const ox_time_line_look *look,
                              const ox_stretch *stretch, ox_time_line_box at);
/* The mark of an event, each kind a shape of its own, hanging from y. */
void ox_time_line_draw_event(cairo_t *cr, const ox_time_line_look *look, ox_event_kind kind,
                             double x, double y, double height);
/* The play position through the whole height. */
void ox_time_line_draw_position(cairo_t *cr, const ox_time_line_look *look, double x, double top,
                                double bottom);

#endif
