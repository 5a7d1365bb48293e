/* Text as laid-out paragraphs: made once, drawn often, alike on every target. */
#ifndef PAINT_LETTERING_H
#define PAINT_LETTERING_H

#include <cairo.h>
#include <pango/pangocairo.h>
#include <stdbool.h>

#include "geometry.h"
#include "oxbow/picture.h"

/* Layouts are shared with the typesetter, so they are never changed once they are set. */
typedef struct {
  PangoLayout *layout;   /* NULL: no text */
  ox_rect ink;           /* ink, relative to the layout's origin (device units) */
  double width, height;  /* logical size */
  double size, max_width; /* as it was asked for */
  unsigned style;
} ox_lettering;

typedef enum {
  OX_TEXT_PLAIN = 0,
  OX_TEXT_BOLD = 1 << 0,
  OX_TEXT_CENTRED = 1 << 1,
  OX_TEXT_ONE_LINE = 1 << 2, /* line breaks in the words become spaces; cut with an ellipsis */
  OX_TEXT_TWO_LINES = 1 << 3 /* the same, but wrapped once before it is cut */
} ox_lettering_style;

/* Lays out words (any bytes: what is not UTF-8 is replaced) at a size in device units. max_width
 * > 0 wraps, or with OX_TEXT_ONE_LINE shortens. */
void ox_lettering_make(ox_lettering *text, ox_typesetter *typesetter, const char *words,
                       double size, unsigned style, double max_width);
/* Other words in the same style; nothing is done when they are the same. */
void ox_lettering_change(ox_lettering *text, ox_typesetter *typesetter, const char *words);
void ox_lettering_clear(ox_lettering *text);

/* Where words go instead of being drawn, on a surface that keeps words as words. The layout's
 * corner belongs at x, y, in the colour of the current source. */
typedef struct {
  void (*take)(void *data, cairo_t *cr, PangoLayout *layout, double x, double y);
  void *data;
} ox_text_sink;
/* The sink must live as long as the surface is drawn on. */
void ox_text_sink_set(cairo_surface_t *surface, ox_text_sink *sink);

/* Draws with the current source so that the logical corner is at x, y. */
void ox_lettering_show(const ox_lettering *text, cairo_t *cr, double x, double y);
/* Draws so that the ink's corner is at x, y. */
void ox_lettering_show_ink(const ox_lettering *text, cairo_t *cr, double x, double y);

#endif
