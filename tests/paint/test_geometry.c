/* Cutting and flattening. */
#include "geometry.h"
#include "ox_test.h"
#include "paint_cases.h"

static const ox_rect unit_box = {10, 20, 100, 50};

static void a_segment_inside_is_left_alone(void **state) {
  (void)state;
  ox_vec a = {15, 25}, b = {100, 60};
  assert_true(ox_rect_clip(unit_box, &a, &b));
  assert_close(a.x, 15, 0, "a.x");
  assert_close(b.y, 60, 0, "b.y");
}

static void a_segment_across_is_cut_at_both_edges(void **state) {
  (void)state;
  ox_vec a = {-90, 45}, b = {310, 45};
  assert_true(ox_rect_clip(unit_box, &a, &b));
  assert_close(a.x, 10, 1e-9, "left");
  assert_close(b.x, 110, 1e-9, "right");
  assert_close(a.y, 45, 1e-9, "height kept");
}

static void a_segment_outside_is_refused(void **state) {
  (void)state;
  ox_vec a = {0, 0}, b = {200, 10};
  assert_false(ox_rect_clip(unit_box, &a, &b));
  a = (ox_vec){0, 60}, b = (ox_vec){20, 90}; /* passes the corner outside */
  assert_false(ox_rect_clip(unit_box, &a, &b));
}

static void a_segment_of_a_million_miles_is_cut_to_the_box(void **state) {
  (void)state;
  ox_vec a = {-1e12, 45 - 1e11}, b = {1e12, 45 + 1e11};
  assert_true(ox_rect_clip(unit_box, &a, &b));
  assert_true(ox_rect_has(ox_rect_inset(unit_box, -1e-3), a));
  assert_true(ox_rect_has(ox_rect_inset(unit_box, -1e-3), b));
}

static void points_that_are_no_numbers_are_not_drawn(void **state) {
  (void)state;
  ox_lines lines = {0};
  ox_lines_segment(&lines, (ox_vec){nan(""), 0}, (ox_vec){1, 1});
  ox_lines_clipped(&lines, unit_box, (ox_vec){20, 30}, (ox_vec){HUGE_VAL, 1});
  assert_int_equal(lines.count, 0);
  ox_lines_segment(&lines, (ox_vec){0, 0}, (ox_vec){1, 1});
  assert_int_equal(lines.count, 2);
  ox_lines_clear(&lines);
}

/* Distance of a point from the polyline. */
static double distance_to(const ox_lines *lines, ox_vec p) {
  double best = HUGE_VAL;
  for (size_t i = 1; i < lines->count; i++) {
    if (lines->p[i].move) continue;
    ox_vec a = {lines->p[i - 1].x, lines->p[i - 1].y}, b = {lines->p[i].x, lines->p[i].y};
    ox_vec d = ox_vec_sub(b, a);
    double square = ox_vec_dot(d, d);
    double u = square > 0 ? ox_vec_dot(ox_vec_sub(p, a), d) / square : 0;
    u = fmin(fmax(u, 0), 1);
    best = fmin(best, ox_vec_length(ox_vec_sub(p, ox_vec_add(a, ox_vec_scale(d, u)))));
  }
  return best;
}

static void a_flattened_turn_stays_within_a_tenth_of_the_exact_one(void **state) {
  (void)state;
  ox_random r = {5};
  for (int i = 0; i < 60; i++) {
    ox_leg leg = {.shape = OX_SHAPE_TURN, .t0_s = 0, .t1_s = ox_random_between(&r, 1, 150)};
    leg.rate_deg_s = (ox_random_below(&r, 2) ? 1 : -1) * ox_random_between(&r, 0.5, 6);
    leg.heading0_true_deg = ox_random_between(&r, 0, 360);
    leg.tas_kt = ox_random_between(&r, 60, 400);
    leg.wind_kt = (ox_vec){ox_random_between(&r, -150, 150), ox_random_between(&r, -150, 150)};
    leg.p1_nm = ox_leg_position(&leg, leg.t1_s);
    ox_viewport v = {{0, 0}, {0, 0}, ox_random_between(&r, 20, 800), 0};
    ox_lines lines = {0};
    ox_lines_leg(&lines, &v, (ox_rect){-1e7, -1e7, 2e7, 2e7}, &leg);
    for (int k = 0; k <= 400; k++) {
      ox_vec p = ox_viewport_to_dev(&v, ox_leg_position(&leg, leg.t1_s * k / 400.0));
      assert_true(distance_to(&lines, p) < 0.1);
    }
    ox_lines_clear(&lines);
  }
}

static void an_arc_keeps_its_radius_and_ends(void **state) {
  (void)state;
  ox_lines lines = {0};
  ox_lines_arc(&lines, (ox_vec){50, 60}, 40, 0, 90);
  assert_close(lines.p[0].x, 50, 1e-9, "begins straight up");
  assert_close(lines.p[0].y, 20, 1e-9, "begins straight up");
  const ox_line_point *last = &lines.p[lines.count - 1];
  assert_close(last->x, 90, 1e-9, "ends to the right: clockwise");
  assert_close(last->y, 60, 1e-9, "ends to the right");
  for (size_t i = 0; i < lines.count; i++)
    assert_close(hypot(lines.p[i].x - 50, lines.p[i].y - 60), 40, 1e-9, "radius");
  ox_lines_clear(&lines);
}

static void pieces_that_continue_are_one_polyline(void **state) {
  (void)state;
  ox_lines lines = {0};
  ox_lines_segment(&lines, (ox_vec){0, 0}, (ox_vec){1, 0});
  ox_lines_segment(&lines, (ox_vec){1, 0}, (ox_vec){2, 0});
  ox_lines_segment(&lines, (ox_vec){5, 0}, (ox_vec){6, 0});
  assert_int_equal(lines.count, 5);
  assert_true(lines.p[0].move && lines.p[3].move);
  assert_false(lines.p[2].move);
  ox_lines_clear(&lines);
}

static void a_line_beside_an_arc_is_an_arc_of_another_radius(void **state) {
  (void)state;
  for (int left = 0; left < 2; left++) {
    ox_lines arc = {0}, beside = {0};
    ox_lines_arc(&arc, (ox_vec){0, 0}, 80, 10, 200); /* clockwise: its right is inside */
    ox_lines_beside(&beside, &arc, left ? -5 : 5);
    assert_int_equal(beside.count, arc.count);
    for (size_t i = 0; i < beside.count; i++)
      assert_close(hypot(beside.p[i].x, beside.p[i].y), left ? 85 : 75, 0.2, "radius");
    ox_lines_clear(&arc);
    ox_lines_clear(&beside);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_segment_inside_is_left_alone),
      cmocka_unit_test(a_segment_across_is_cut_at_both_edges),
      cmocka_unit_test(a_segment_outside_is_refused),
      cmocka_unit_test(a_segment_of_a_million_miles_is_cut_to_the_box),
      cmocka_unit_test(points_that_are_no_numbers_are_not_drawn),
      cmocka_unit_test(a_flattened_turn_stays_within_a_tenth_of_the_exact_one),
      cmocka_unit_test(an_arc_keeps_its_radius_and_ends),
      cmocka_unit_test(a_line_beside_an_arc_is_an_arc_of_another_radius),
      cmocka_unit_test(pieces_that_continue_are_one_polyline),
  };
  return cmocka_run_group_tests_name("geometry", tests, NULL, NULL);
}
