/* Small shapes in device units: rectangles, polylines, flattened legs. No cairo here. */
#ifndef PAINT_GEOMETRY_H
#define PAINT_GEOMETRY_H

#include <stdbool.h>
#include <stddef.h>

#include "oxbow/leg.h"
#include "oxbow/viewport.h"

/* Chord error (device units) of a flattened curve: unseen on screen and at print resolution. */
#define OX_CHORD_ERROR_DEV 0.05

typedef struct {
  double x, y, width, height;
} ox_rect;

ox_rect ox_rect_inset(ox_rect r, double by); /* negative: grown */
bool ox_rect_has(ox_rect r, ox_vec p);
bool ox_rect_overlaps(ox_rect a, ox_rect b);
bool ox_rect_inside(ox_rect inner, ox_rect outer);
ox_vec ox_rect_centre(ox_rect r);
/* The point of the rectangle nearest to p (p itself when inside). */
ox_vec ox_rect_nearest(ox_rect r, ox_vec p);
/* Cuts the segment a-b to the rectangle; false when nothing of it is inside. */
bool ox_rect_clip(ox_rect r, ox_vec *a, ox_vec *b);

/* Polylines in one array: a point with `move` begins a new one. Grows by itself; when memory is
 * out it stays as it was and `failed` sticks. Zeroed memory is an empty list. */
typedef struct {
  double x, y;
  bool move;
} ox_line_point;
typedef struct {
  ox_line_point *p;
  size_t count, room;
  bool failed;
} ox_lines;

void ox_lines_clear(ox_lines *lines);
void ox_lines_empty(ox_lines *lines); /* keeps the memory for the next lines */
/* Adds a segment, joined to the last point when it continues there. Not finite: ignored. */
void ox_lines_segment(ox_lines *lines, ox_vec a, ox_vec b);
/* The same, cut to a rectangle first. */
void ox_lines_clipped(ox_lines *lines, ox_rect clip, ox_vec a, ox_vec b);
/* A circular arc between two device angles in the bearing sense (degrees, 0 up, clockwise). */
void ox_lines_arc(ox_lines *lines, ox_vec centre, double radius, double from_deg, double to_deg);
/* A leg from a time on, flattened to OX_CHORD_ERROR_DEV and cut to a rectangle. */
void ox_lines_leg(ox_lines *lines, const ox_viewport *v, ox_rect clip, const ox_leg *leg);

/* The polylines of another list, moved aside to their right (device units; negative: left). */
void ox_lines_beside(ox_lines *lines, const ox_lines *of, double right);

/* Unit vector on the device (y down) along a bearing measured from up. */
ox_vec ox_dev_unit(double bearing_deg);

#endif
