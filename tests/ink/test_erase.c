/* The eraser leaves nothing beneath it and takes nothing beside it. */
#include "ink_support.h"

#define SHARES 16 /* places looked at along each straight piece */

static ox_vec between(ox_vec a, ox_vec b, double share) {
  return (ox_vec){a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
}

/* Nothing along any stroke is nearer to the path than the radius. */
static void assert_clean(const ox_ink *ink, const ox_vec *path, size_t count, double radius) {
  for (size_t i = 0; i < ink->stroke_count; i++) {
    const ox_ink_stroke *s = &ink->strokes[i];
    for (size_t k = 0; k < s->count; k++)
      for (int n = 0; n <= SHARES; n++) {
        ox_vec b = s->points_nm[k + 1 < s->count ? k + 1 : k];
        ox_vec p = between(s->points_nm[k], b, n / (double)SHARES);
        assert_true(path_distance_nm(p, path, count) >= radius);
      }
  }
}

/* Everything of `was` that is farther than the radius from the path is still within a grain of
 * ink of its colour. */
static void assert_kept(const ox_ink *was, const ox_ink *is, const ox_vec *path, size_t count,
                        double radius) {
  for (size_t i = 0; i < was->stroke_count; i++) {
    const ox_ink_stroke *s = &was->strokes[i];
    for (size_t k = 0; k < s->count; k++) {
      ox_vec p = s->points_nm[k];
      if (path_distance_nm(p, path, count) < radius + 5 * OX_INK_GRAIN_NM) continue;
      double nearest = HUGE_VAL;
      for (size_t m = 0; m < is->stroke_count; m++)
        if (is->strokes[m].colour == s->colour && is->strokes[m].width == s->width)
          nearest = fmin(nearest, path_distance_nm(p, is->strokes[m].points_nm, is->strokes[m].count));
      assert_true(nearest <= 2 * OX_INK_GRAIN_NM);
    }
  }
}

static void nothing_stays_beneath_and_nothing_goes_beside(void **state) {
  int cut = 0;
  for (uint64_t seed = 1; seed <= 300; seed++) {
    ox_random r = {seed * 977};
    ox_ink *ink = random_ink(seed, 6, 30, 4), *before = ox_ink_copy(ink);
    ox_vec path[12];
    size_t count = 1 + (size_t)ox_random_below(&r, 12);
    double radius = ox_random_between(&r, 0.01, 1.0);
    for (size_t i = 0; i < count; i++)
      path[i] = (ox_vec){ox_random_between(&r, -4, 4), ox_random_between(&r, -4, 4)};
    bool touched = false;
    assert_int_equal(ox_ink_erase(ink, path, count, radius, &touched), OX_OK);
    assert_sound(ink);
    assert_int_equal(touched, !ox_ink_equal(ink, before));
    assert_clean(ink, path, count, radius);
    assert_kept(before, ink, path, count, radius);
    assert_true(ink_length_nm(ink) <= ink_length_nm(before) + 0.01);
    if (touched) cut++;
    ox_ink *once = ox_ink_copy(ink);
    assert_int_equal(ox_ink_erase(ink, path, count, radius, &touched), OX_OK);
    assert_clean(ink, path, count, radius);
    assert_close(ink_length_nm(ink), ink_length_nm(once), 0.01, "erased twice");
    ox_ink_free(once);
    ox_ink_free(before);
    ox_ink_free(ink);
  }
  assert_true(cut > 150); /* the cases are not all misses */
}

static void a_line_is_cut_in_two_where_it_is_crossed(void **state) {
  ox_ink *ink = ox_ink_new();
  ox_ink_begin(ink, OX_INK_VERMILLION, OX_INK_BROAD, (ox_vec){-5, 0});
  ox_ink_extend(ink, (ox_vec){5, 0});
  ox_vec path[] = {{0, -3}, {0, 3}};
  bool touched = false;
  assert_int_equal(ox_ink_erase(ink, path, 2, 0.5, &touched), OX_OK);
  assert_true(touched);
  assert_int_equal(ink->stroke_count, 2);
  assert_close(ink->strokes[0].points_nm[1].x, -0.5001, 1e-9, "end of the first");
  assert_close(ink->strokes[1].points_nm[0].x, 0.5001, 1e-9, "begin of the second");
  for (size_t i = 0; i < 2; i++) {
    assert_int_equal(ink->strokes[i].colour, OX_INK_VERMILLION);
    assert_int_equal(ink->strokes[i].width, OX_INK_BROAD);
    assert_int_equal(ink->strokes[i].count, 2);
  }
  ox_ink_free(ink);
}

static void a_dot_goes_whole_or_stays(void **state) {
  ox_ink *ink = ox_ink_new();
  ox_ink_begin(ink, OX_INK_BLACK, OX_INK_THIN, (ox_vec){1, 1});
  bool touched = true;
  assert_int_equal(ox_ink_erase(ink, &(ox_vec){1, 1.6}, 1, 0.5, &touched), OX_OK);
  assert_false(touched);
  assert_int_equal(ink->stroke_count, 1);
  assert_int_equal(ox_ink_erase(ink, &(ox_vec){1, 1.4}, 1, 0.5, &touched), OX_OK);
  assert_true(touched);
  assert_true(ox_ink_is_empty(ink));
  ox_ink_free(ink);
}

static void bad_erasers_are_refused(void **state) {
  ox_ink *ink = random_ink(3, 4, 20, 3), *before = ox_ink_copy(ink);
  ox_vec path[] = {{0, 0}, {(double)NAN, 1}};
  bool touched = true;
  assert_int_equal(ox_ink_erase(ink, path, 0, 1, &touched), OX_ERROR);
  assert_int_equal(ox_ink_erase(ink, path, 2, 1, &touched), OX_ERROR);
  assert_int_equal(ox_ink_erase(ink, path, 1, 0, &touched), OX_ERROR);
  assert_int_equal(ox_ink_erase(ink, path, 1, (double)NAN, &touched), OX_ERROR);
  assert_int_equal(ox_ink_erase(ink, path, 1, HUGE_VAL, &touched), OX_ERROR);
  assert_true(touched);
  assert_true(ox_ink_equal(ink, before));
  ox_ink_free(before);
  ox_ink_free(ink);
}

/* As many strokes as there may be, and the eraser would make each of them two. */
static void too_many_parts_are_refused_whole(void **state) {
  ox_ink *ink = ox_ink_new();
  for (int i = 0; i < OX_INK_STROKES_MAX; i++) {
    ox_ink_begin(ink, OX_INK_BLACK, OX_INK_THIN, (ox_vec){-5, i * 0.01});
    ox_ink_extend(ink, (ox_vec){5, i * 0.01});
  }
  ox_ink *before = ox_ink_copy(ink);
  ox_vec path[] = {{0, -1}, {0, 20}};
  assert_int_equal(ox_ink_erase(ink, path, 2, 0.5, NULL), OX_ERROR);
  assert_true(ox_ink_equal(ink, before));
  ox_ink_free(before);
  ox_ink_free(ink);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(nothing_stays_beneath_and_nothing_goes_beside),
      cmocka_unit_test(a_line_is_cut_in_two_where_it_is_crossed),
      cmocka_unit_test(a_dot_goes_whole_or_stays),
      cmocka_unit_test(bad_erasers_are_refused),
      cmocka_unit_test(too_many_parts_are_refused_whole),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
