/* A quick brush for drafts. A line is a row of strips, one a piece; each pixel belongs to the strip
 * on whose length its centre lies, so that none is inked twice where pieces meet. */
#include "brush.h"

#include <limits.h>
#include <math.h>

static const double SHARP_COS = 0.97; /* of the angle at a corner: 14 degrees leave a gap */
static const double SHORTEST = 1e-9;  /* pixels */
static const double DOT_MOST = 0.05;  /* a dash no longer than this is a dot */

typedef struct {
  const ox_brush *brush;
  uint32_t even, odd; /* the colour: red and blue, green */
  double half;        /* of the width, pixels */
  double most;        /* a line thinner than a pixel covers no pixel wholly */
  bool round;
} tip;

/* --- pixels -------------------------------------------------------------------------------- */

static uint32_t channel(double share) {
  return (uint32_t)(fmin(fmax(share, 0.0), 1.0) * 255.0 + 0.5);
}

static void ink(const tip *t, uint32_t *pixel, double cover) {
  uint32_t share = (uint32_t)(cover * 256.0 + 0.5), rest = 256u - share;
  uint32_t even = ((*pixel & 0xff00ffu) * rest + t->even * share) >> 8 & 0xff00ffu;
  uint32_t odd = ((*pixel & 0x00ff00u) * rest + t->odd * share) >> 8 & 0x00ff00u;
  *pixel = 0xff000000u | even | odd;
}

/* Rounded up and down, by hand: this is asked for every row of every piece. */
static int at_least(double v, int least) {
  if (v <= least) return least;
  if (v >= INT_MAX) return INT_MAX;
  int whole = (int)v;
  return whole < v ? whole + 1 : whole;
}

static int at_most(double v, int most) {
  if (v >= most) return most;
  if (v <= INT_MIN) return INT_MIN;
  int whole = (int)v;
  return whole > v ? whole - 1 : whole;
}

/* Leaves of the range of x where low <= slope * x + offset <= high; `per` is 1 / slope, or 0 where
 * the slope is none. */
static bool narrow(double *from, double *to, double per, double offset, double low, double high) {
  if (per == 0.0) return offset >= low && offset <= high;
  double a = (low - offset) * per, b = (high - offset) * per;
  double first = a < b ? a : b, last = a < b ? b : a;
  if (first > *from) *from = first;
  if (last < *to) *to = last;
  return *from <= *to;
}

static double one_by(double slope) { return fabs(slope) < 1e-12 ? 0.0 : 1.0 / slope; }

/* A stretch of line from `from` along a unit vector; an end that is cut is smoothed. */
typedef struct {
  ox_vec from, along;
  double length;
  bool cut_begin, cut_end;
  double per_right, per_down; /* 1 by the parts of `along`; 0: it has none */
} strip;

/* Of a pixel so far along the strip: what is beyond neither end. */
static double share_of(const strip *s, double on) {
  double behind_begin = s->cut_begin ? fmin(on + 0.5, 1.0) : 1.0;
  double before_end = s->cut_end ? fmin(s->length + 0.5 - on, 1.0) : 1.0;
  return fmax(behind_begin + before_end - 1.0, 0.0);
}

static void strip_row(const tip *t, const strip *s, int y) {
  const ox_brush *b = t->brush;
  double reach = t->half + 0.5, down = y + 0.5 - s->from.y;
  double begin = s->cut_begin ? -0.5 : 0.0, end = s->length + (s->cut_end ? 0.5 : 0.0);
  double low = -HUGE_VAL, high = HUGE_VAL;
  if (!narrow(&low, &high, -s->per_down, s->along.x * down, -reach, reach) ||
      !narrow(&low, &high, s->per_right, s->along.y * down, begin, end))
    return;
  int first = at_least(low + s->from.x - 0.5, b->left);
  int last = at_most(high + s->from.x - 0.5, b->right - 1);
  uint32_t *row = b->pixels + y * b->stride;
  bool cut = s->cut_begin || s->cut_end;
  for (int x = first; x <= last; x++) {
    double right = x + 0.5 - s->from.x;
    double cover = reach - fabs(s->along.x * down - s->along.y * right);
    if (cover > t->most) cover = t->most;
    if (cut) cover *= share_of(s, s->along.x * right + s->along.y * down);
    if (cover > 0.0) ink(t, &row[x], cover);
  }
}

static void draw_strip(const tip *t, const strip *s) {
  const ox_brush *b = t->brush;
  double reach = (t->half + 0.5) * fabs(s->along.x) + 0.5;
  double y0 = s->from.y, y1 = s->from.y + s->along.y * s->length;
  int first = at_least(fmin(y0, y1) - reach - 0.5, b->top);
  int last = at_most(fmax(y0, y1) + reach - 0.5, b->bottom - 1);
  for (int y = first; y <= last; y++) strip_row(t, s, y);
}

static void draw_dot(const tip *t, ox_vec at) {
  const ox_brush *b = t->brush;
  double reach = t->half + 0.5;
  int top = at_least(at.y - reach - 0.5, b->top), left = at_least(at.x - reach - 0.5, b->left);
  int bottom = at_most(at.y + reach - 0.5, b->bottom - 1);
  int right = at_most(at.x + reach - 0.5, b->right - 1);
  for (int y = top; y <= bottom; y++)
    for (int x = left; x <= right; x++) {
      double cover = fmin(reach - hypot(x + 0.5 - at.x, y + 0.5 - at.y), t->most);
      if (cover > 0.0) ink(t, b->pixels + y * b->stride + x, cover);
    }
}

/* One dash, or the part of it that lies on one piece of the line. */
static void draw_dash(const tip *t, strip s) {
  ox_vec end = ox_vec_add(s.from, ox_vec_scale(s.along, s.length));
  if (t->round && s.cut_begin) draw_dot(t, s.from);
  if (t->round && s.cut_end && !(s.cut_begin && s.length < DOT_MOST)) draw_dot(t, end);
  if (t->round) s.cut_begin = s.cut_end = false;
  draw_strip(t, &s);
}

/* --- along the line ------------------------------------------------------------------------ */

typedef struct {
  int part;
  double left; /* pixels of it */
  bool fresh;  /* a dash begins */
} dashing;

static void begin_dashes(dashing *d, const ox_line_look *look, double scale) {
  *d = (dashing){0, look->parts > 0 ? look->part[0] * scale : HUGE_VAL, true};
}

static void next_part(dashing *d, const ox_line_look *look, double scale) {
  d->part = (d->part + 1) % look->parts;
  d->left = fmax(look->part[d->part] * scale, SHORTEST);
  d->fresh = true;
}

static void draw_piece(const tip *t, const ox_line_look *look, dashing *d, strip whole,
                       bool is_last) {
  double at = 0.0;
  for (bool ends = true; ends;) {
    double rest = whole.length - at;
    ends = d->left <= rest; /* here the dash does */
    double length = ends ? d->left : rest;
    if (d->part % 2 == 0)
      draw_dash(t, (strip){ox_vec_add(whole.from, ox_vec_scale(whole.along, at)), whole.along,
                           length, d->fresh, ends || is_last, whole.per_right, whole.per_down});
    d->fresh = false;
    d->left -= length;
    at += length;
    if (ends) next_part(d, look, t->brush->scale);
  }
}

void ox_brush_stroke(const ox_brush *b, const ox_lines *lines, const ox_line_look *look) {
  ox_rgb c = look->colour;
  double width = look->width * b->scale;
  tip t = {b, channel(c.r) << 16 | channel(c.b), channel(c.g) << 8, width / 2.0, fmin(width, 1.0),
           look->round};
  dashing d = {0};
  ox_vec before = {0, 0}; /* the direction; none yet */
  for (size_t i = 0; i < lines->count; i++) {
    const ox_line_point *q = &lines->p[i], *from = i > 0 ? q - 1 : NULL;
    if (q->move || !from) {
      begin_dashes(&d, look, b->scale);
      before = (ox_vec){0, 0};
      continue;
    }
    ox_vec a = {from->x * b->scale, from->y * b->scale};
    ox_vec way = {q->x * b->scale - a.x, q->y * b->scale - a.y};
    double length = ox_vec_length(way);
    if (!(length > SHORTEST)) continue;
    ox_vec along = ox_vec_scale(way, 1.0 / length);
    bool joined = !d.fresh && d.part % 2 == 0;
    if (joined && ox_vec_dot(along, before) < SHARP_COS) draw_dot(&t, a);
    bool is_last = i + 1 == lines->count || lines->p[i + 1].move;
    strip whole = {a, along, length, false, false, one_by(along.x), one_by(along.y)};
    draw_piece(&t, look, &d, whole, is_last);
    before = along;
  }
}
