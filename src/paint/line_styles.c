/* How each kind of line is drawn: its hue, its width and its dashes, which a legend shows too. */
#include <stddef.h>

#include "paint_private.h"

static const double DOT = 0.001; /* a dash of no length would not be drawn */

/* Widths and dashes are shares of one of the picture's sizes. */
typedef struct {
  ox_hue hue;
  size_t size; /* where it is in ox_sizes */
  double width;
  bool round;
  size_t dash_size;
  int parts; /* dashes and gaps in turn; 0: a whole line */
  double part[OX_DASHES_MOST]; /* a dash of 0 is a dot */
} line_style;

#define OF(member) offsetof(ox_sizes, member)

static const line_style styles[OX_LINE_COUNT] = {
    [OX_LINE_TRACK] = {OX_HUE_TRACK, OF(track), 1.0, true, 0, 0, {0}},
    [OX_LINE_LATER] = {OX_HUE_TRACK, OF(later), 1.0, false, 0, 0, {0}},
    [OX_LINE_ENTRY] = {OX_HUE_ENTRY, OF(entry), 1.0, false, OF(entry), 2, {5.5, 2.0}},
    [OX_LINE_ARRIVAL] = {OX_HUE_ENTRY, OF(arrival), 1.0, false, OF(entry), 2, {5.5, 2.0}},
    [OX_LINE_COMPARE] = {OX_HUE_COMPARE, OF(compare), 1.0, false, OF(compare), 4,
                         {6.5, 2.2, 1.4, 2.2}},
    [OX_LINE_OTHER_1] = {OX_HUE_COMPARE, OF(compare), 1.0, false, OF(compare), 4,
                         {10.0, 2.0, 1.4, 2.0}},
    [OX_LINE_OTHER_2] = {OX_HUE_OTHER, OF(compare), 1.0, false, OF(compare), 6,
                         {3.4, 1.6, 1.2, 1.6, 1.2, 1.6}},
    [OX_LINE_ROUTE] = {OX_HUE_COURSE, OF(course), 1.25, false, OF(course), 2, {20.0, 2.2}},
    [OX_LINE_MISSED] = {OX_HUE_COURSE, OF(later), 1.0, false, OF(label), 2,
                        {1.1, 1.1}}, /* dashed, as charts draw a missed approach */
    [OX_LINE_ALTERNATIVE] = {OX_HUE_QUIET, OF(entry), 1.0, true, OF(entry), 2, {0.0, 2.2}},
    [OX_LINE_SKETCH] = {OX_HUE_GUESS, OF(track), 1.5, true, 0, 0, {0}},
    [OX_LINE_SPREAD] = {OX_HUE_BAND, OF(small), 0.9, false, 0, 0, {0}}, /* a band, for the legend */
    [OX_LINE_AREA] = {OX_HUE_AREA, OF(rose), 1.0, false, OF(label), 2, {1.1, 0.3}},
    [OX_LINE_STILL_AIR] = {OX_HUE_STILL_AIR, OF(still), 1.0, false, OF(label), 2, {0.34, 0.28}},
    [OX_LINE_COURSE] = {OX_HUE_COURSE, OF(course), 1.0, false, 0, 0, {0}},
    [OX_LINE_LIMIT] = {OX_HUE_COURSE, OF(course), 1.35, false, OF(course), 6,
                       {11.0, 3.0, 3.0, 3.0, 3.0, 3.0}},
    [OX_LINE_ABEAM] = {OX_HUE_COURSE, OF(course), 1.35, true, OF(course), 2, {0.0, 4.0}},
};

static double size_at(const ox_sizes *sizes, size_t place) {
  return *(const double *)(const void *)((const char *)sizes + place);
}

static ox_line_look look_of(const ox_picture *p, ox_line_kind kind) {
  const line_style *s = &styles[kind];
  double unit = size_at(&p->size, s->dash_size);
  ox_line_look look = {p->palette->ink[s->hue], s->width * size_at(&p->size, s->size), s->round,
                       s->parts, {0}};
  for (int i = 0; i < s->parts; i++) look.part[i] = s->part[i] > 0.0 ? s->part[i] * unit : DOT;
  return look;
}

void ox_line_style_set(const ox_picture *p, cairo_t *cr, ox_line_kind kind) {
  ox_line_look look = look_of(p, kind);
  ox_hue_set(p, cr, styles[kind].hue);
  cairo_set_line_width(cr, look.width);
  cairo_set_line_cap(cr, look.round ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_dash(cr, look.part, look.parts, 0.0);
}

void ox_line_stroke(const ox_picture *p, cairo_t *cr, const ox_lines *lines, ox_line_kind kind) {
  if (lines->count == 0) return;
  if (p->brush) {
    ox_line_look look = look_of(p, kind);
    cairo_surface_flush(cairo_get_target(cr));
    ox_brush_stroke(p->brush, lines, &look);
    cairo_surface_mark_dirty(cairo_get_target(cr));
    return;
  }
  ox_path_add(cr, lines);
  ox_line_style_set(p, cr, kind);
  cairo_stroke(cr);
}
