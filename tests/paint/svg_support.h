/* An SVG read back: that it is one, what it is made of, and its words. */
#ifndef SVG_SUPPORT_H
#define SVG_SUPPORT_H

#include <cairo.h>
#include <glib.h>
#include <stdbool.h>
#include <stddef.h>

#include "oxbow/export.h"

/* One <text>: its words (runs of white space as one space, none at the ends) and its attributes. */
typedef struct {
  char *words;
  char *fill, *size, *weight, *transform; /* as written, or NULL */
  double x, y, length;                    /* of its first line; NAN where it does not say */
  size_t lines;
  bool keeps_width; /* every line has textLength and lengthAdjust */
} svg_words;

typedef struct {
  GPtrArray *texts; /* svg_words */
  char *language, *font, *title, *description;
} svg_read;

/* Fails the test unless the bytes are well-formed XML 1.0 in UTF-8, of SVG 1.1's elements and
 * attributes in places where it allows them, with every reference to something inside. */
svg_read *svg_read_new(const char *bytes, size_t length);
void svg_read_free(svg_read *read);
/* How often there are such words. */
size_t svg_count(const svg_read *read, const char *words);

/* Words as svg_read has them: what is no UTF-8 or no XML replaced, white space as one space. */
char *svg_normal(const char *words);

/* A sink for ox_export into a GString. */
ox_status svg_take(void *string, const void *bytes, size_t length);

/* What rsvg-convert makes of an SVG, a pixel a user unit. Fails the test without the program. */
cairo_surface_t *svg_render(const GString *svg, int width, int height);
/* Fails the test unless xmllint takes every file in a folder. */
void svg_lint(const char *folder);

typedef struct {
  double mean, far; /* mean of the largest difference of a channel (0..255); share over 96, % */
} svg_difference;
/* Two images of one size, in a format of four bytes a pixel. */
svg_difference svg_compare(cairo_surface_t *a, cairo_surface_t *b);

#endif
