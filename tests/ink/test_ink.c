/* Strokes: what goes in comes out, what is refused changes nothing, and less says the same. */
#include "ink_support.h"

static void strokes_stand_as_they_were_drawn(void **state) {
  ox_ink *ink = ox_ink_new();
  assert_true(ox_ink_is_empty(ink));
  assert_int_equal(ox_ink_begin(ink, OX_INK_BLUE, OX_INK_BROAD, (ox_vec){1.0, 2.0}), OX_OK);
  assert_int_equal(ox_ink_extend(ink, (ox_vec){1.00004, 2.00004}), OX_OK); /* the same point */
  assert_int_equal(ox_ink_extend(ink, (ox_vec){-1.23456, -0.00001}), OX_OK);
  assert_int_equal(ink->stroke_count, 1);
  assert_int_equal(ink->strokes[0].count, 2);
  assert_int_equal(ink->strokes[0].colour, OX_INK_BLUE);
  assert_int_equal(ink->strokes[0].width, OX_INK_BROAD);
  assert_true(ink->strokes[0].points_nm[1].x == -1.2346);
  assert_true(ink->strokes[0].points_nm[1].y == 0.0 && !signbit(ink->strokes[0].points_nm[1].y));
  assert_int_equal(ox_ink_point_count(ink), 2);
  ox_vec low, high;
  assert_true(ox_ink_bounds(ink, &low, &high));
  assert_true(low.x == -1.2346 && low.y == 0.0 && high.x == 1.0 && high.y == 2.0);
  ox_ink_drop_last(ink);
  ox_ink_drop_last(ink);
  assert_true(ox_ink_is_empty(ink));
  ox_ink_free(ink);
}

static void nothing_is_ink_too(void **state) {
  ox_vec low = {7, 7}, high = {8, 8};
  ox_ink *copy = ox_ink_copy(NULL);
  assert_non_null(copy);
  assert_true(ox_ink_is_empty(NULL) && ox_ink_is_empty(copy));
  assert_true(ox_ink_equal(NULL, NULL) && ox_ink_equal(NULL, copy) && ox_ink_equal(copy, NULL));
  assert_int_equal(ox_ink_point_count(NULL), 0);
  assert_false(ox_ink_bounds(NULL, &low, &high));
  assert_false(ox_ink_bounds(copy, &low, &high));
  assert_true(low.x == 7 && high.y == 8);
  ox_ink_free(copy);
  ox_ink_free(NULL);
}

static void what_cannot_be_held_is_refused(void **state) {
  ox_ink *ink = random_ink(5, 3, 20, 10), *before = ox_ink_copy(ink);
  const double bad[] = {(double)NAN, HUGE_VAL, -HUGE_VAL, OX_INK_REACH_NM + 0.001, -1e300};
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
    assert_int_equal(ox_ink_extend(ink, (ox_vec){bad[i], 0}), OX_ERROR);
    assert_int_equal(ox_ink_extend(ink, (ox_vec){0, bad[i]}), OX_ERROR);
    assert_int_equal(ox_ink_begin(ink, OX_INK_BLACK, OX_INK_THIN, (ox_vec){bad[i], 0}), OX_ERROR);
  }
  ox_vec p = {0, 0};
  assert_int_equal(ox_ink_begin(ink, OX_INK_COLOUR_COUNT, OX_INK_THIN, p), OX_ERROR);
  assert_int_equal(ox_ink_begin(ink, OX_INK_BLACK, OX_INK_WIDTH_COUNT, p), OX_ERROR);
  assert_int_equal(ox_ink_append(ink, &(ox_ink_stroke){.count = 0, .points_nm = &p}), OX_ERROR);
  assert_true(ox_ink_equal(ink, before));
  ox_ink_clear(ink);
  assert_int_equal(ox_ink_extend(ink, p), OX_ERROR); /* no stroke to go on with */
  ox_ink_free(ink);
  ox_ink_free(before);
}

static void the_limits_are_reached_and_not_passed(void **state) {
  ox_ink *ink = ox_ink_new();
  ox_vec p = {0, 0};
  for (int i = 0; i < OX_INK_STROKES_MAX; i++)
    assert_int_equal(ox_ink_begin(ink, OX_INK_BLACK, OX_INK_THIN, p), OX_OK);
  assert_int_equal(ox_ink_begin(ink, OX_INK_BLACK, OX_INK_THIN, p), OX_ERROR);
  for (int i = OX_INK_STROKES_MAX; i < OX_INK_POINTS_MAX; i++) {
    p.x = i % 2;
    assert_int_equal(ox_ink_extend(ink, (ox_vec){1 + i % 2, 3}), OX_OK);
  }
  assert_int_equal(ox_ink_point_count(ink), OX_INK_POINTS_MAX);
  assert_int_equal(ox_ink_extend(ink, (ox_vec){9, 9}), OX_ERROR);
  assert_sound(ink);
  ox_ink_free(ink);
}

static void a_copy_is_equal_and_on_its_own(void **state) {
  for (uint64_t seed = 1; seed <= 50; seed++) {
    ox_ink *ink = random_ink(seed, 12, 40, 20), *copy = ox_ink_copy(ink);
    assert_sound(ink);
    assert_true(ox_ink_equal(ink, copy));
    ox_ink_stroke *last = &copy->strokes[copy->stroke_count - 1];
    last->points_nm[0].x += OX_INK_GRAIN_NM;
    assert_false(ox_ink_equal(ink, copy));
    last->points_nm[0] = ink->strokes[ink->stroke_count - 1].points_nm[0];
    last->colour = (ox_ink_colour)((last->colour + 1) % OX_INK_COLOUR_COUNT);
    assert_false(ox_ink_equal(ink, copy));
    ox_ink_drop_last(copy);
    assert_false(ox_ink_equal(ink, copy));
    ox_ink_free(copy);
    ox_ink_free(ink);
  }
}

/* A point that went lies within the tolerance of what stayed; the ends stay; what stayed was
 * there before, in the same order; and simplifying once more changes nothing. */
static void a_simpler_stroke_says_the_same(void **state) {
  for (uint64_t seed = 1; seed <= 200; seed++) {
    ox_random r = {seed};
    double tolerance = ox_random_between(&r, 0.0, 0.5);
    ox_ink *ink = random_ink(seed, 1, 120, 5), *before = ox_ink_copy(ink);
    assert_int_equal(ox_ink_simplify_last(ink, tolerance), OX_OK);
    const ox_ink_stroke *was = &before->strokes[0], *is = &ink->strokes[0];
    for (size_t i = 0; i < was->count; i++)
      assert_true(path_distance_nm(was->points_nm[i], is->points_nm, is->count) <=
                  tolerance + 1e-12);
    assert_memory_equal(&is->points_nm[0], &was->points_nm[0], sizeof(ox_vec));
    assert_memory_equal(&is->points_nm[is->count - 1], &was->points_nm[was->count - 1],
                        sizeof(ox_vec));
    for (size_t i = 0, at = 0; i < is->count; i++, at++)
      while (memcmp(&was->points_nm[at], &is->points_nm[i], sizeof(ox_vec)) != 0)
        assert_true(++at < was->count);
    ox_ink *once = ox_ink_copy(ink);
    assert_int_equal(ox_ink_simplify_last(ink, tolerance), OX_OK);
    assert_true(ox_ink_equal(ink, once));
    ox_ink_free(once);
    ox_ink_free(before);
    ox_ink_free(ink);
  }
}

static void a_straight_line_is_two_points(void **state) {
  ox_ink *ink = ox_ink_new();
  ox_ink_begin(ink, OX_INK_BLACK, OX_INK_THIN, (ox_vec){0, 0});
  assert_int_equal(ox_ink_simplify_last(ink, 0.1), OX_OK); /* a dot stays a dot */
  for (int i = 1; i <= 1000; i++) ox_ink_extend(ink, (ox_vec){i * 0.01, i * 0.02});
  assert_int_equal(ink->strokes[0].count, 1001);
  assert_int_equal(ox_ink_simplify_last(ink, 0.001), OX_OK);
  assert_int_equal(ink->strokes[0].count, 2);
  assert_int_equal(ox_ink_simplify_last(ink, -1.0), OX_ERROR);
  assert_int_equal(ox_ink_simplify_last(ink, (double)NAN), OX_ERROR);
  ox_ink_free(ink);
}

static void words_of_files_are_these(void **state) {
  assert_string_equal(ox_ink_colour_name(OX_INK_BLACK), "black");
  assert_string_equal(ox_ink_colour_name(OX_INK_VERMILLION), "vermillion");
  assert_string_equal(ox_ink_colour_name(OX_INK_BLUE), "blue");
  assert_string_equal(ox_ink_width_name(OX_INK_THIN), "thin");
  assert_string_equal(ox_ink_width_name(OX_INK_BROAD), "broad");
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(strokes_stand_as_they_were_drawn),
      cmocka_unit_test(nothing_is_ink_too),
      cmocka_unit_test(what_cannot_be_held_is_refused),
      cmocka_unit_test(the_limits_are_reached_and_not_passed),
      cmocka_unit_test(a_copy_is_equal_and_on_its_own),
      cmocka_unit_test(a_simpler_stroke_says_the_same),
      cmocka_unit_test(a_straight_line_is_two_points),
      cmocka_unit_test(words_of_files_are_these),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
