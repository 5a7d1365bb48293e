/* What was drawn by hand: round and smooth, over everything in the world.
 *
 * A pointer is sampled more often than a line bends. Points are passed over while the straight way
 * stays within a hair of all of them, and those that are kept are joined by curves through them
 * (Catmull and Rom, with tangents as long as their piece); a sharp corner stays sharp. */
#include <math.h>

#include "oxbow/units.h"
#include "paint_private.h"

static const double HAIR_DEV = 0.3;
static const double CURVE_FROM_DEV = 6.0; /* a shorter piece is straight to the eye */
static const double CORNER_COSINE = 0.6;  /* of the turn: about 53 degrees */
static const double FARTHEST_DEV = 1e6;   /* cairo keeps coordinates in fixed point */

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

static ox_vec unit_of(ox_vec v) {
  double length = sqrt(v.x * v.x + v.y * v.y);
  return length > 0.0 ? (ox_vec){v.x / length, v.y / length} : (ox_vec){0, 0};
}

/* Unit tangent at b for the piece along `chord` (unit), with neighbours a and c. */
static ox_vec tangent(ox_vec a, ox_vec b, ox_vec c, ox_vec chord) {
  ox_vec in = unit_of((ox_vec){b.x - a.x, b.y - a.y});
  ox_vec out = unit_of((ox_vec){c.x - b.x, c.y - b.y});
  if (in.x * out.x + in.y * out.y < CORNER_COSINE) return chord;
  return unit_of((ox_vec){in.x + out.x, in.y + out.y});
}

/* A piece b-c between its neighbours a and d. */
static void piece(cairo_t *cr, ox_vec a, ox_vec b, ox_vec c, ox_vec d) {
  ox_vec along = {c.x - b.x, c.y - b.y};
  double third = sqrt(along.x * along.x + along.y * along.y) / 3.0;
  if (3.0 * third < CURVE_FROM_DEV) {
    cairo_line_to(cr, c.x, c.y);
    return;
  }
  ox_vec chord = unit_of(along), out = tangent(a, b, c, chord), in = tangent(b, c, d, chord);
  cairo_curve_to(cr, b.x + third * out.x, b.y + third * out.y, c.x - third * in.x,
                 c.y - third * in.y, c.x, c.y);
}

/* The points that are kept, as far as they are needed for the next piece; and the directions from
 * the last of them in which a straight way passes all points since within a hair. */
typedef struct {
  cairo_t *cr;
  ox_vec last[4];
  int kept;
  double low, high; /* radians about `towards` */
  double towards;
  ox_vec skipped; /* the newest point not kept */
  bool any_skipped;
} pen;

static void keep(pen *k, ox_vec q) {
  for (int i = 0; i < 3; i++) k->last[i] = k->kept == 0 ? q : k->last[i + 1];
  k->last[3] = q;
  if (k->kept++ == 0)
    cairo_move_to(k->cr, q.x, q.y);
  else if (k->kept > 2)
    piece(k->cr, k->last[0], k->last[1], k->last[2], k->last[3]);
  k->low = -HUGE_VAL;
  k->high = HUGE_VAL;
  k->any_skipped = false;
}

/* Whether the straight way from the last kept point to q passes all that were skipped. */
static bool passes(pen *k, ox_vec q) {
  ox_vec d = {q.x - k->last[3].x, q.y - k->last[3].y};
  double far = sqrt(d.x * d.x + d.y * d.y);
  if (far <= HAIR_DEV) return true;
  double direction = atan2(d.y, d.x), half = asin(HAIR_DEV / far);
  if (k->low == -HUGE_VAL) k->towards = direction;
  double off = remainder(direction - k->towards, 2.0 * OX_PI);
  if (off < k->low || off > k->high) return false;
  k->low = fmax(k->low, off - half);
  k->high = fmin(k->high, off + half);
  return true;
}

static void go_to(pen *k, ox_vec q) {
  if (k->kept == 0) {
    keep(k, q);
    return;
  }
  if (!passes(k, q)) {
    keep(k, k->skipped);
    passes(k, q);
  }
  k->skipped = q;
  k->any_skipped = true;
}

static void lift(pen *k) {
  if (k->any_skipped) keep(k, k->skipped);
  if (k->kept == 1)
    cairo_line_to(k->cr, k->last[3].x, k->last[3].y); /* a dot, by its round ends */
  else if (k->kept > 1)
    piece(k->cr, k->last[1], k->last[2], k->last[3], k->last[3]);
}

static bool beyond(const ox_picture *p, ox_vec low, ox_vec high, double width) {
  return high.x < -width || high.y < -width || low.x > p->width + width ||
         low.y > p->height + width;
}

/* Adds a stroke to the path; nothing of one that is nowhere on the board. */
static void add_stroke(const ox_picture *p, cairo_t *cr, const ox_ink_stroke *s, double width) {
  ox_vec low = {HUGE_VAL, HUGE_VAL}, high = {-HUGE_VAL, -HUGE_VAL};
  /* The board's directions once for all points. */
  ox_vec origin = ox_to_dev(p, (ox_vec){0, 0});
  ox_vec east = ox_vec_sub(ox_to_dev(p, (ox_vec){1, 0}), origin);
  ox_vec north = ox_vec_sub(ox_to_dev(p, (ox_vec){0, 1}), origin);
  for (size_t i = 0; i < s->count; i++) {
    ox_vec n = s->points_nm[i];
    ox_vec q = {origin.x + n.x * east.x + n.y * north.x, origin.y + n.x * east.y + n.y * north.y};
    low = (ox_vec){fmin(low.x, q.x), fmin(low.y, q.y)};
    high = (ox_vec){fmax(high.x, q.x), fmax(high.y, q.y)};
  }
  if (s->count == 0 || beyond(p, low, high, width)) return;
  pen k = {.cr = cr, .low = -HUGE_VAL, .high = HUGE_VAL};
  for (size_t i = 0; i < s->count; i++) {
    ox_vec n = s->points_nm[i];
    ox_vec q = {origin.x + n.x * east.x + n.y * north.x, origin.y + n.x * east.y + n.y * north.y};
    if (ox_is_finite(q)) go_to(&k, clamped(q));
  }
  lift(&k);
}

/* In the picture as it was fitted, ink may go over the map's edge, to ring a figure beside it; it
 * lies under that figure. Zoomed or moved, only the world's part is shown. */
bool ox_ink_on_whole_board(const ox_picture *p) {
  const ox_view *v = &p->scene.view;
  return !p->moves && v->zoom == 1.0 && v->pan_nm.x == 0.0 && v->pan_nm.y == 0.0;
}

void ox_layer_ink(const ox_picture *p, cairo_t *cr) {
  const ox_ink *ink = p->scene.ink;
  if (!ink || ink->stroke_count == 0) return;
  if (!ox_ink_on_whole_board(p)) {
    cairo_rectangle(cr, p->map.x, p->map.y, p->map.width, p->map.height);
    cairo_clip(cr);
  }
  /* Handwriting has a long outline, and that is what smoothing costs: the faster one will do. */
  cairo_set_antialias(cr, CAIRO_ANTIALIAS_FAST);
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
