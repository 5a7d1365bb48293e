/* What was drawn by hand: round and smooth, over everything in the world.
 *
 * Points lie where a pointer was sampled. Far enough apart for corners to show, they are joined by
 * a curve that goes through all of them (Catmull and Rom); nearer, straight pieces look the same
 * and cost less. */
#include <math.h>

#include "paint_private.h"

static const double LEAST_STEP = 0.3;   /* of the width: nearer points change nothing */
static const double CURVE_FROM_DEV = 5.0;
static const double FARTHEST_DEV = 1e6; /* cairo keeps coordinates in fixed point */

static ox_hue hue_of(ox_ink_colour colour) {
  switch (colour) {
  case OX_INK_VERMILLION: return OX_HUE_PEN_VERMILLION;
  case OX_INK_BLUE: return OX_HUE_PEN_BLUE;
  case OX_INK_BLACK:
  case OX_INK_COLOUR_COUNT: break;
  }
  return OX_HUE_PEN_BLACK;
}

static ox_vec clamped(ox_vec q) {
  return (ox_vec){fmin(fmax(q.x, -FARTHEST_DEV), FARTHEST_DEV),
                  fmin(fmax(q.y, -FARTHEST_DEV), FARTHEST_DEV)};
}

/* A piece b-c between its neighbours a and d. */
static void piece(cairo_t *cr, ox_vec a, ox_vec b, ox_vec c, ox_vec d) {
  ox_vec chord = ox_vec_sub(c, b);
  if (fabs(chord.x) + fabs(chord.y) < CURVE_FROM_DEV) {
    cairo_line_to(cr, c.x, c.y);
    return;
  }
  ox_vec out = ox_vec_scale(ox_vec_sub(c, a), 1.0 / 6.0);
  ox_vec in = ox_vec_scale(ox_vec_sub(d, b), 1.0 / 6.0);
  cairo_curve_to(cr, b.x + out.x, b.y + out.y, c.x - in.x, c.y - in.y, c.x, c.y);
}

static bool beyond(const ox_picture *p, ox_vec low, ox_vec high, double width) {
  return high.x < -width || high.y < -width || low.x > p->width + width ||
         low.y > p->height + width;
}

/* Adds a stroke to the path; nothing of one that is nowhere on the board. */
static void add_stroke(const ox_picture *p, cairo_t *cr, const ox_ink_stroke *s, double width) {
  ox_vec last[4] = {{0, 0}, {0, 0}, {0, 0}, {0, 0}};
  ox_vec low = {HUGE_VAL, HUGE_VAL}, high = {-HUGE_VAL, -HUGE_VAL};
  for (size_t i = 0; i < s->count; i++) {
    ox_vec q = ox_to_dev(p, s->points_nm[i]);
    low = (ox_vec){fmin(low.x, q.x), fmin(low.y, q.y)};
    high = (ox_vec){fmax(high.x, q.x), fmax(high.y, q.y)};
  }
  if (s->count == 0 || beyond(p, low, high, width)) return;
  int kept = 0;
  for (size_t i = 0; i < s->count; i++) {
    ox_vec q = clamped(ox_to_dev(p, s->points_nm[i])), step = ox_vec_sub(q, last[3]);
    if (!ox_is_finite(q)) continue;
    bool near = fabs(step.x) + fabs(step.y) < LEAST_STEP * width;
    if (kept > 0 && near && i + 1 < s->count) continue;
    for (int k = 0; k < 3; k++) last[k] = kept == 0 ? q : last[k + 1];
    last[3] = q;
    if (kept++ == 0)
      cairo_move_to(cr, q.x, q.y);
    else if (kept > 2)
      piece(cr, last[0], last[1], last[2], last[3]);
  }
  if (kept == 1)
    cairo_line_to(cr, last[3].x, last[3].y); /* a dot, by its round ends */
  else if (kept > 1)
    piece(cr, last[1], last[2], last[3], last[3]);
}

/* In the picture as it was fitted, ink may go over the map's edge, to ring a figure beside it; it
 * lies under that figure. Zoomed or moved, only the world's part is shown. */
static bool whole_board(const ox_picture *p) {
  const ox_view *v = &p->scene.view;
  return !p->moves && v->zoom == 1.0 && v->pan_nm.x == 0.0 && v->pan_nm.y == 0.0;
}

void ox_layer_ink(const ox_picture *p, cairo_t *cr) {
  const ox_ink *ink = p->scene.ink;
  if (!ink || ink->stroke_count == 0) return;
  if (!whole_board(p)) {
    cairo_rectangle(cr, p->map.x, p->map.y, p->map.width, p->map.height);
    cairo_clip(cr);
  }
  cairo_set_dash(cr, NULL, 0, 0.0);
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
  for (size_t i = 0; i < ink->stroke_count; i++) {
    const ox_ink_stroke *s = &ink->strokes[i];
    double width = s->width == OX_INK_BROAD ? p->size.pen_broad : p->size.pen_thin;
    add_stroke(p, cr, s, width);
    bool last = i + 1 == ink->stroke_count;
    bool same = !last && s[1].colour == s->colour && s[1].width == s->width;
    if (same) continue; /* strokes alike are one path */
    ox_hue_set(p, cr, hue_of(s->colour));
    cairo_set_line_width(cr, width);
    cairo_stroke(cr);
  }
}
