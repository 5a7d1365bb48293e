/* The eraser. What it wipes along one straight piece of its path is a capsule: all points nearer
 * than the radius to the piece. A capsule is convex, so it takes one stretch out of a straight
 * line at most, and that stretch is the hull of what its two discs and its rectangle take out. */
#include <math.h>
#include <stdlib.h>

#include "ink_private.h"

/* A stretch of a segment by share of its length; empty where low > high. */
typedef struct {
  double low, high;
} stretch;

static const stretch NOTHING = {HUGE_VAL, -HUGE_VAL};

static stretch hull(stretch a, stretch b) {
  return (stretch){fmin(a.low, b.low), fmax(a.high, b.high)};
}

/* Where a + t·along lies nearer than the radius to the centre. */
static stretch in_disc(ox_vec a, ox_vec along, ox_vec centre, double radius) {
  ox_vec from = ox_vec_sub(a, centre);
  double square = ox_vec_dot(along, along), c = ox_vec_dot(from, from) - radius * radius;
  if (square == 0.0) return c < 0.0 ? (stretch){-HUGE_VAL, HUGE_VAL} : NOTHING;
  double half = ox_vec_dot(from, along) / square, rest = half * half - c / square;
  if (!(rest > 0.0)) return NOTHING;
  return (stretch){-half - sqrt(rest), -half + sqrt(rest)};
}

/* Where low < at + t·rate < high. */
static stretch between(double at, double rate, double low, double high) {
  if (rate == 0.0) return at > low && at < high ? (stretch){-HUGE_VAL, HUGE_VAL} : NOTHING;
  double s = (low - at) / rate, t = (high - at) / rate;
  return (stretch){fmin(s, t), fmax(s, t)};
}

/* Where it lies in the rectangle of the capsule from p to q. */
static stretch in_rectangle(ox_vec a, ox_vec along, ox_vec p, ox_vec q, double radius) {
  ox_vec axis = ox_vec_sub(q, p), from = ox_vec_sub(a, p);
  double length = ox_vec_length(axis);
  if (length == 0.0) return NOTHING;
  axis = ox_vec_scale(axis, 1.0 / length);
  stretch lengthwise = between(ox_vec_dot(from, axis), ox_vec_dot(along, axis), 0.0, length);
  stretch across =
      between(ox_vec_cross(axis, from), ox_vec_cross(axis, along), -radius, radius);
  stretch both = {fmax(lengthwise.low, across.low), fmin(lengthwise.high, across.high)};
  return both.low < both.high ? both : NOTHING;
}

/* What the capsule takes out of the segment from a to b, cut to the segment. */
static stretch taken(ox_vec a, ox_vec b, ox_vec p, ox_vec q, double radius) {
  ox_vec along = ox_vec_sub(b, a);
  stretch all = hull(hull(in_disc(a, along, p, radius), in_disc(a, along, q, radius)),
                     in_rectangle(a, along, p, q, radius));
  stretch cut = {fmax(all.low, 0.0), fmin(all.high, 1.0)};
  return cut.low < cut.high ? cut : NOTHING;
}

static ox_vec at_share(ox_vec a, ox_vec b, double share) {
  return (ox_vec){a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
}

/* One wiping: the path, and room for what each of its pieces takes out of a segment. All pieces
 * cut a segment at once: cut one after the other its ends would go to the grain each time, and
 * could creep back under a piece that had been there before. */
typedef struct {
  const ox_vec *path;
  size_t points, pieces; /* a path of one point is one piece, from it to itself */
  double radius;
  stretch *found;
} wiping;

static ox_vec end_of(const wiping *w, size_t piece) {
  return w->path[piece + 1 < w->points ? piece + 1 : piece];
}

static int by_low(const void *a, const void *b) {
  double x = ((const stretch *)a)->low, y = ((const stretch *)b)->low;
  return (x > y) - (x < y);
}

/* What is taken out of a segment, in found: apart from each other, in order. Returns how many. */
static size_t find_cuts(const wiping *w, ox_vec a, ox_vec b) {
  size_t count = 0, merged = 0;
  for (size_t i = 0; i < w->pieces; i++) {
    stretch cut = taken(a, b, w->path[i], end_of(w, i), w->radius);
    if (cut.low < cut.high) w->found[count++] = cut;
  }
  if (count == 0) return 0;
  qsort(w->found, count, sizeof *w->found, by_low);
  for (size_t i = 1; i < count; i++)
    if (w->found[i].low <= w->found[merged].high)
      w->found[merged].high = fmax(w->found[merged].high, w->found[i].high);
    else
      w->found[++merged] = w->found[i];
  return merged + 1;
}

/* The parts that a stroke falls into, while they are written: `open` says that the last stroke of
 * `into` can be gone on with. */
typedef struct {
  ox_ink *into;
  const ox_ink_stroke *from;
  bool open, cut, failed;
} parts;

static void go_to(parts *s, ox_vec p) {
  ox_status status = s->open ? ox_ink_extend(s->into, p)
                             : ox_ink_begin(s->into, s->from->colour, s->from->width, p);
  if (status == OX_ERROR) s->failed = true;
  s->open = true;
}

/* Ends the part. One that is no longer than a point, and was not drawn as a dot, is nothing. */
static void stop(parts *s) {
  if (s->open && !s->failed && s->into->strokes[s->into->stroke_count - 1].count == 1)
    ox_ink_drop_last(s->into);
  s->open = false;
}

static void cut_segment(parts *s, ox_vec a, ox_vec b, const stretch *cuts, size_t count) {
  double from = 0.0;
  for (size_t i = 0; i < count; i++) {
    s->cut = true;
    if (cuts[i].low > from) {
      go_to(s, at_share(a, b, from));
      go_to(s, at_share(a, b, cuts[i].low));
    }
    stop(s);
    from = cuts[i].high;
  }
  if (from >= 1.0) return;
  go_to(s, at_share(a, b, from));
  go_to(s, b);
}

/* Whether a dot lies under the path. */
static bool wipes_dot(const wiping *w, ox_vec dot) {
  for (size_t i = 0; i < w->pieces; i++)
    if (ox_ink_distance_nm(dot, w->path[i], end_of(w, i)) < w->radius)
      return true;
  return false;
}

/* What is left of a stroke goes into `into`. False when it cannot. */
static bool cut_stroke(const wiping *w, const ox_ink_stroke *stroke, ox_ink *into,
                       bool *touched) {
  parts s = {.into = into, .from = stroke};
  if (stroke->count == 1) {
    bool wiped = wipes_dot(w, stroke->points_nm[0]);
    if (wiped) *touched = true;
    return wiped || ox_ink_append(into, stroke) != OX_ERROR;
  }
  for (size_t i = 0; i + 1 < stroke->count && !s.failed; i++) {
    ox_vec a = stroke->points_nm[i], b = stroke->points_nm[i + 1];
    size_t count = find_cuts(w, a, b);
    cut_segment(&s, a, b, w->found, count);
  }
  stop(&s);
  if (s.cut) *touched = true;
  return !s.failed;
}

static bool is_sound(const ox_vec *path_nm, size_t count, double radius_nm) {
  if (count < 1 || !(radius_nm > 0.0) || !isfinite(radius_nm)) return false;
  for (size_t i = 0; i < count; i++)
    if (!isfinite(path_nm[i].x) || !isfinite(path_nm[i].y)) return false;
  return true;
}

ox_status ox_ink_erase(ox_ink *ink, const ox_vec *path_nm, size_t count, double radius_nm,
                       bool *touched) {
  if (!is_sound(path_nm, count, radius_nm)) return OX_ERROR;
  bool any = false;
  /* The cut points go to the grain, which may move them towards the eraser by 0.71 of it. */
  wiping w = {.path = path_nm,
              .points = count,
              .pieces = count > 1 ? count - 1 : 1,
              .radius = radius_nm + OX_INK_GRAIN_NM};
  w.found = malloc(w.pieces * sizeof *w.found);
  ox_ink *left = ox_ink_new();
  bool ok = w.found && left;
  for (size_t i = 0; ok && i < ink->stroke_count; i++)
    ok = cut_stroke(&w, &ink->strokes[i], left, &any);
  if (ok && touched) *touched = any;
  if (ok && any) {
    ox_ink old = *ink;
    *ink = *left;
    *left = old;
  }
  free(w.found);
  ox_ink_free(left);
  return ok ? OX_OK : OX_ERROR;
}
