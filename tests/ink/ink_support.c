#include "ink_support.h"

void add_random_strokes(ox_ink *ink, ox_random *r, int strokes, int points_max, double reach_nm) {
  for (int i = 0; i < strokes; i++) {
    ox_vec p = {ox_random_between(r, -reach_nm, reach_nm), ox_random_between(r, -reach_nm, reach_nm)};
    ox_ink_colour colour = (ox_ink_colour)ox_random_below(r, OX_INK_COLOUR_COUNT);
    ox_ink_width width = (ox_ink_width)ox_random_below(r, OX_INK_WIDTH_COUNT);
    assert_int_equal(ox_ink_begin(ink, colour, width, p), OX_OK);
    double step = reach_nm / 10.0;
    for (int k = ox_random_below(r, points_max); k > 0; k--) {
      p = ox_vec_add(p, (ox_vec){ox_random_between(r, -step, step), ox_random_between(r, -step, step)});
      assert_int_equal(ox_ink_extend(ink, p), OX_OK);
    }
  }
}

ox_ink *random_ink(uint64_t seed, int strokes, int points_max, double reach_nm) {
  ox_random r = {seed};
  ox_ink *ink = ox_ink_new();
  assert_non_null(ink);
  add_random_strokes(ink, &r, strokes, points_max, reach_nm);
  return ink;
}

static double piece_distance_nm(ox_vec p, ox_vec a, ox_vec b) {
  double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
  double t = square > 0.0 ? ((p.x - a.x) * dx + (p.y - a.y) * dy) / square : 0.0;
  t = t < 0.0 ? 0.0 : t > 1.0 ? 1.0 : t;
  return hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

double path_distance_nm(ox_vec p, const ox_vec *path, size_t count) {
  double nearest = hypot(p.x - path[0].x, p.y - path[0].y);
  for (size_t i = 0; i + 1 < count; i++)
    nearest = fmin(nearest, piece_distance_nm(p, path[i], path[i + 1]));
  return nearest;
}

double ink_length_nm(const ox_ink *ink) {
  double length = 0.0;
  for (size_t i = 0; i < ink->stroke_count; i++)
    for (size_t k = 0; k + 1 < ink->strokes[i].count; k++) {
      ox_vec a = ink->strokes[i].points_nm[k], b = ink->strokes[i].points_nm[k + 1];
      length += hypot(b.x - a.x, b.y - a.y);
    }
  return length;
}

void assert_sound(const ox_ink *ink) {
  assert_true(ink->stroke_count <= OX_INK_STROKES_MAX);
  assert_true(ox_ink_point_count(ink) <= OX_INK_POINTS_MAX);
  for (size_t i = 0; i < ink->stroke_count; i++) {
    const ox_ink_stroke *stroke = &ink->strokes[i];
    assert_true(stroke->count >= 1);
    for (size_t k = 0; k < stroke->count; k++) {
      double on_grain[2] = {stroke->points_nm[k].x * 1e4, stroke->points_nm[k].y * 1e4};
      for (int axis = 0; axis < 2; axis++) {
        assert_true(fabs(on_grain[axis]) <= OX_INK_REACH_NM * 1e4);
        assert_close(on_grain[axis], round(on_grain[axis]), 1e-6, "on the grain");
      }
    }
  }
}
