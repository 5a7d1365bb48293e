/* A sketch against the track. Both are walked in short steps; the distance of each place is that
 * to the other line, piece by piece. */
#include <math.h>
#include <stdlib.h>

#include "oxbow/guess.h"

static const double STEP_NM = 0.05;      /* between places looked at */
static const double PIECE_TURN_DEG = 4.0; /* a chord of a turn leaves it by 0.0006 of its radius */

/* --- the track as pieces -------------------------------------------------------------------- */

static int pieces_of(const ox_leg *leg) {
  if (leg->shape == OX_SHAPE_STRAIGHT) return 1;
  double turned_deg = fabs(leg->rate_deg_s) * (leg->t1_s - leg->t0_s);
  return (int)fmin(1.0 + floor(turned_deg / PIECE_TURN_DEG), 720.0);
}

/* Every leg as points, so that its sines are taken once: those of leg i are points[first[i]] to
 * points[first[i + 1]], its own end included. */
typedef struct {
  const ox_flight *flight;
  ox_vec *points;
  size_t first[OX_LEGS_MAX + 1];
} track;

static bool track_make(track *t, const ox_flight *flight) {
  t->flight = flight;
  t->first[0] = 0;
  for (size_t i = 0; i < flight->leg_count; i++)
    t->first[i + 1] = t->first[i] + (size_t)pieces_of(&flight->legs[i]);
  t->points = malloc((t->first[flight->leg_count] + 1) * sizeof *t->points);
  if (!t->points) return false;
  for (size_t i = 0; i < flight->leg_count; i++) {
    const ox_leg *leg = &flight->legs[i];
    int pieces = pieces_of(leg);
    for (int k = 0; k <= pieces; k++) /* a leg begins where the one before ends */
      t->points[t->first[i] + (size_t)k] =
          ox_leg_position(leg, leg->t0_s + (leg->t1_s - leg->t0_s) * k / pieces);
  }
  return true;
}

/* What is nearest so far; the square of the distance, for it is asked a million times. */
typedef struct {
  ox_vec at;
  double square;
} nearest;

static void consider(ox_vec p, ox_vec a, ox_vec b, nearest *n) {
  double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
  double share = square > 0.0 ? ((p.x - a.x) * dx + (p.y - a.y) * dy) / square : 0.0;
  share = share < 0.0 ? 0.0 : share > 1.0 ? 1.0 : share;
  ox_vec at = {a.x + share * dx, a.y + share * dy};
  double off = (p.x - at.x) * (p.x - at.x) + (p.y - at.y) * (p.y - at.y);
  if (off < n->square) *n = (nearest){at, off};
}

/* How far a leg can reach from its beginning: what is beyond need not be walked. */
static double reach_nm(const ox_leg *leg) {
  double kt = leg->tas_kt + ox_vec_length(leg->wind_kt);
  return kt * (leg->t1_s - leg->t0_s) / 3600.0;
}

static double to_track_nm(const track *t, ox_vec p, ox_vec *at) {
  nearest n = {p, HUGE_VAL};
  for (size_t i = 0; i < t->flight->leg_count; i++) {
    const ox_leg *leg = &t->flight->legs[i];
    double least_nm = ox_vec_length(ox_vec_sub(p, leg->p0_nm)) - reach_nm(leg);
    if (least_nm > 0.0 && least_nm * least_nm >= n.square) continue;
    for (size_t k = t->first[i]; k < t->first[i + 1]; k++)
      consider(p, t->points[k], t->points[k + 1], &n);
  }
  *at = n.at;
  return sqrt(n.square);
}

/* Dots are no part of a line. */
static double to_sketch_nm(const ox_ink *sketch, ox_vec p) {
  nearest n = {p, HUGE_VAL};
  for (size_t i = 0; i < sketch->stroke_count; i++)
    for (size_t k = 0; k + 1 < sketch->strokes[i].count; k++)
      consider(p, sketch->strokes[i].points_nm[k], sketch->strokes[i].points_nm[k + 1], &n);
  return sqrt(n.square);
}

/* --- sums along a line ---------------------------------------------------------------------- */

typedef struct {
  double length_nm, near_nm, area, most_nm;
  ox_vec most_at, most_other;
} sums;

static void count(sums *s, ox_vec at, ox_vec other, double distance_nm, double length_nm) {
  s->length_nm += length_nm;
  s->area += distance_nm * length_nm;
  if (distance_nm <= OX_GUESS_SKETCH_NM) s->near_nm += length_nm;
  if (distance_nm < s->most_nm) return;
  s->most_nm = distance_nm;
  s->most_at = at;
  s->most_other = other;
}

static int steps_of(ox_vec a, ox_vec b) {
  return (int)ceil(fmin(ox_vec_length(ox_vec_sub(b, a)) / STEP_NM, 20000.0));
}

static ox_vec step_point(ox_vec a, ox_vec b, double share) {
  return ox_vec_add(a, ox_vec_scale(ox_vec_sub(b, a), share));
}

/* The ends of a piece count for where the most is, its middles for the sums. */
static void walk_sketch_piece(const track *t, ox_vec a, ox_vec b, sums *s) {
  int steps = steps_of(a, b);
  double length_nm = steps ? ox_vec_length(ox_vec_sub(b, a)) / steps : 0.0;
  for (int i = 0; i < steps; i++) {
    ox_vec other = a, middle = step_point(a, b, (i + 0.5) / steps);
    double distance_nm = to_track_nm(t, middle, &other);
    count(s, middle, other, distance_nm, length_nm);
  }
  ox_vec other = b;
  double distance_nm = to_track_nm(t, b, &other);
  count(s, b, other, distance_nm, 0.0);
}

static void walk_track_piece(const ox_ink *sketch, ox_vec a, ox_vec b, sums *s) {
  int steps = steps_of(a, b);
  double length_nm = steps ? ox_vec_length(ox_vec_sub(b, a)) / steps : 0.0;
  for (int i = 0; i < steps; i++) {
    ox_vec middle = step_point(a, b, (i + 0.5) / steps);
    count(s, middle, middle, to_sketch_nm(sketch, middle), length_nm);
  }
  count(s, b, b, to_sketch_nm(sketch, b), 0.0);
}

static double asked_until_s(const ox_flight *flight) {
  if (flight->circuit_count > 0 && flight->circuits[0].complete)
    return flight->circuits[0].end_t_s;
  return ox_flight_end_s(flight);
}

static bool is_asked(const ox_leg *leg, double until_s) {
  return leg->part != OX_PART_ARRIVAL && leg->t0_s < until_s;
}

static void walk_sketch(const track *t, const ox_ink *sketch, sums *s) {
  for (size_t i = 0; i < sketch->stroke_count; i++)
    for (size_t k = 0; k + 1 < sketch->strokes[i].count; k++)
      walk_sketch_piece(t, sketch->strokes[i].points_nm[k], sketch->strokes[i].points_nm[k + 1], s);
}

static void walk_track(const track *t, const ox_ink *sketch, sums *s) {
  double until_s = asked_until_s(t->flight);
  for (size_t i = 0; i < t->flight->leg_count; i++)
    for (size_t k = t->first[i]; is_asked(&t->flight->legs[i], until_s) && k < t->first[i + 1]; k++)
      walk_track_piece(sketch, t->points[k], t->points[k + 1], s);
}

bool ox_guess_fit(const ox_flight *flight, const ox_ink *sketch, ox_sketch_fit *out) {
  sums drawn = {.most_nm = -1.0}, flown = {.most_nm = -1.0};
  track t;
  if (!sketch || flight->leg_count == 0 || !track_make(&t, flight)) return false;
  walk_sketch(&t, sketch, &drawn);
  if (drawn.length_nm > 0.0) walk_track(&t, sketch, &flown);
  free(t.points);
  if (drawn.length_nm <= 0.0) return false;
  *out = (ox_sketch_fit){
      .length_nm = drawn.length_nm,
      .most_nm = drawn.most_nm,
      .most_at_nm = drawn.most_at,
      .most_track_nm = drawn.most_other,
      .mean_nm = drawn.area / drawn.length_nm,
      .near_share = fmin(drawn.near_nm / drawn.length_nm, 1.0),
      .missed_nm = fmax(flown.most_nm, 0.0),
      .missed_at_nm = flown.most_at,
      .covered_share = flown.length_nm > 0.0 ? fmin(flown.near_nm / flown.length_nm, 1.0) : 0.0,
  };
  return true;
}
