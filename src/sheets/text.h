/* Words on a page, laid out alike on every target. Private to the sheets. */
#ifndef OX_SHEETS_TEXT_H
#define OX_SHEETS_TEXT_H

#include <pango/pangocairo.h>

/* Nothing on a handout is smaller. */
#define SHEET_LEAST_PT 8.0

typedef enum {
  SHEET_PLAIN = 0,
  SHEET_BOLD = 1 << 0,
  SHEET_RIGHT = 1 << 1, /* against the right edge of the width */
} sheet_style;

typedef struct {
  cairo_t *cr;
  PangoContext *context;
} sheet_pen;

void sheet_pen_open(sheet_pen *pen, cairo_t *cr);
void sheet_pen_close(sheet_pen *pen);

/* Words (any bytes) at a size in points, wrapped to a width and cut with an ellipsis after so many
 * lines. Both return the height; one only measures. */
double sheet_text(const sheet_pen *pen, const char *words, double size, unsigned style, int lines,
                  double x, double y, double width);
double sheet_text_height(const sheet_pen *pen, const char *words, double size, unsigned style,
                         int lines, double width);
/* The width of one line that is neither wrapped nor cut. */
double sheet_text_width(const sheet_pen *pen, const char *words, double size, unsigned style);

/* Black, and a grey that a laser printer still shows. */
void sheet_ink(const sheet_pen *pen);
void sheet_grey(const sheet_pen *pen);
void sheet_line(const sheet_pen *pen, double x0, double y0, double x1, double y1);

#endif
