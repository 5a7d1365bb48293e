/* World to device and back. */
#include "ox_test.h"
#include "oxbow/viewport.h"

static ox_viewport some_view(double up_deg) {
  return ox_viewport_fit((ox_vec){-3, -1}, (ox_vec){5, 3}, (ox_vec){10, 20}, (ox_vec){800, 600}, 30,
                         up_deg);
}

static void north_is_up_and_east_is_right(void **state) {
  (void)state;
  ox_viewport v = some_view(0);
  ox_vec here = ox_viewport_to_dev(&v, (ox_vec){1, 1});
  ox_vec north = ox_viewport_to_dev(&v, (ox_vec){1, 2});
  ox_vec east = ox_viewport_to_dev(&v, (ox_vec){2, 1});
  assert_close(north.x, here.x, 1e-9, "x of north");
  assert_true(north.y < here.y);
  assert_true(east.x > here.x);
  assert_close(east.y, here.y, 1e-9, "y of east");
}

static void the_bearing_that_is_up_points_up(void **state) {
  (void)state;
  ox_viewport v = some_view(240);
  ox_vec fix = ox_viewport_to_dev(&v, (ox_vec){0, 0});
  ox_vec ahead = ox_viewport_to_dev(&v, ox_unit(240));
  assert_close(ahead.x, fix.x, 1e-9, "x straight up");
  assert_close(fix.y - ahead.y, v.dev_per_nm, 1e-9, "one mile up");
  ox_vec right = ox_viewport_to_dev(&v, ox_unit(330));
  assert_true(right.x > fix.x);
}

static void every_point_comes_back(void **state) {
  (void)state;
  ox_random r = {1};
  for (int i = 0; i < 500; i++) {
    ox_viewport v = some_view(ox_random_between(&r, 0, 360));
    ox_vec p = {ox_random_between(&r, -40, 40), ox_random_between(&r, -40, 40)};
    ox_vec back = ox_viewport_to_world(&v, ox_viewport_to_dev(&v, p));
    assert_close(back.x, p.x, 1e-9, "x");
    assert_close(back.y, p.y, 1e-9, "y");
  }
}

static void the_world_fits_with_its_margin(void **state) {
  (void)state;
  for (double up = 0; up < 360; up += 15) {
    ox_viewport v = some_view(up);
    for (int i = 0; i < 4; i++) {
      ox_vec d = ox_viewport_to_dev(&v, (ox_vec){i & 1 ? 5 : -3, i & 2 ? 3 : -1});
      assert_true(d.x >= 40 - 1e-6 && d.x <= 780 + 1e-6);
      assert_true(d.y >= 50 - 1e-6 && d.y <= 590 + 1e-6);
    }
  }
}

static void the_fit_is_tight_one_way(void **state) {
  (void)state;
  ox_viewport v = some_view(0); /* 8 x 4 NM into 740 x 540: the width decides */
  assert_close(v.dev_per_nm, 740.0 / 8.0, 1e-9, "scale");
}

static void no_scale_is_ever_zero_or_without_end(void **state) {
  (void)state;
  const double sizes[] = {0, -5, 1e-9, 1, 1e9, HUGE_VAL, nan("")};
  for (size_t i = 0; i < 7; i++)
    for (size_t j = 0; j < 7; j++) {
      ox_viewport v = ox_viewport_fit((ox_vec){0, 0}, (ox_vec){sizes[i], sizes[i]}, (ox_vec){0, 0},
                                      (ox_vec){sizes[j], sizes[j]}, 10, 0);
      assert_true(isfinite(v.dev_per_nm) && v.dev_per_nm > 0);
    }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(north_is_up_and_east_is_right),
      cmocka_unit_test(the_bearing_that_is_up_points_up),
      cmocka_unit_test(every_point_comes_back),
      cmocka_unit_test(the_world_fits_with_its_margin),
      cmocka_unit_test(the_fit_is_tight_one_way),
      cmocka_unit_test(no_scale_is_ever_zero_or_without_end),
  };
  return cmocka_run_group_tests_name("viewport", tests, NULL, NULL);
}
