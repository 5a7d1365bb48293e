/* What must hold of every handle of every case, dragged anywhere. */
#include "handles_support.h"
#include "random_case.h"

static ox_flight scratch;

enum { CASES = 400, PLACES = 12 };

static ox_vec random_place(ox_random *r, ox_vec handle) {
  double nm = pow(10, ox_random_between(r, -12, 12));
  switch (ox_random_below(r, 4)) {
  case 0:
    return (ox_vec){0, 0};
  case 1: /* near where it lies */
    return ox_vec_add(handle, at(ox_random_between(r, 0, 360), ox_random_between(r, 0, 1)));
  default:
    return at(ox_random_between(r, 0, 360), nm);
  }
}

static void fail_with(const char *what, ox_handle h, const ox_case *c, ox_vec to) {
  char line[1024];
  ox_case_to_line(c, line, sizeof line);
  print_error("%s: %s to %.17g %.17g\n%s\n", what, ox_handle_name(h), to.x, to.y, line);
  fail();
}

static void every_drag_makes_a_valid_case_and_dragging_again_changes_nothing(void **state) {
  ox_random r = {20260101};
  for (int i = 0; i < CASES; i++) {
    ox_case c = ox_random_case(&r, 0.6), made, again;
    fly(&c);
    for (int k = 0; k < PLACES; k++) {
      ox_handle h = (ox_handle)(1 + ox_random_below(&r, OX_HANDLE_COUNT - 1));
      ox_drag_grid grid = (ox_drag_grid)ox_random_below(&r, 2);
      ox_vec lies = ox_handle_place(h, &c, &flight, &reach), to = random_place(&r, lies);
      assert_true(isfinite(lies.x) && isfinite(lies.y));
      if (ox_handle_drag(h, &c, &flight, &reach, to, grid, &scratch, &made) != OX_OK)
        fail_with("refused", h, &c, to);
      if (ox_case_check(&made, NULL, 0) > 0) fail_with("faulty", h, &c, to);
      ox_handle_drag(h, &c, &flight, &reach, to, grid, &scratch, &again);
      if (!ox_case_equal(&made, &again)) fail_with("not the same twice", h, &c, to);
    }
  }
}

static void every_step_there_and_back_of_a_whole_value_is_where_it_was(void **state) {
  ox_random r = {20260102};
  for (int i = 0; i < CASES; i++) {
    ox_case c = ox_random_case(&r, 0.6), on, back;
    c.hold.inbound_deg = 1 + ox_random_below(&r, 360);
    c.arrival.heading_deg = 1 + ox_random_below(&r, 360);
    for (int h = OX_HANDLE_INBOUND; h < OX_HANDLE_COUNT; h++) {
      int steps = ox_random_below(&r, 2) ? 1 : -10;
      fly(&c);
      ox_handle_range was = ox_handle_range_of((ox_handle)h, &c, &flight);
      assert_int_equal(ox_handle_step((ox_handle)h, &c, &flight, steps, &on), OX_OK);
      assert_int_equal(ox_case_check(&on, NULL, 0), 0);
      fly(&on);
      ox_handle_range is = ox_handle_range_of((ox_handle)h, &on, &flight);
      bool inner = was.value - 10 * was.step > was.min && was.value + 10 * was.step < was.max;
      if (ox_handle_is_slider((ox_handle)h) && inner) assert_true(is.value != was.value);
      assert_int_equal(ox_handle_step((ox_handle)h, &on, &flight, -steps, &back), OX_OK);
      fly(&back);
      double off = ox_handle_range_of((ox_handle)h, &back, &flight).value - was.value;
      if (was.circular && fabs(was.value - round(was.value)) < 1e-9)
        assert_angle_close(off, 0, 1e-6, ox_handle_name((ox_handle)h));
      /* From between two steps the way there is less than a whole one. */
      if (inner && !was.circular)
        assert_true(fabs(off) <= was.step + 1e-6);
    }
  }
}

static void words_of_every_case_fit_and_end(void **state) {
  ox_random r = {20260103};
  char all[80], cut[9];
  for (int i = 0; i < CASES; i++) {
    ox_case c = ox_random_case(&r, 0.6);
    fly(&c);
    for (int h = 0; h < OX_HANDLE_COUNT; h++) {
      ox_handle_words(all, sizeof all, (ox_handle)h, &c, &flight);
      ox_handle_words(cut, sizeof cut, (ox_handle)h, &c, &flight);
      assert_true(strlen(all) > 0 && strlen(all) < sizeof all - 1);
      assert_true(strlen(cut) < sizeof cut);
      assert_null(strstr(all, "nan"));
    }
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_drag_makes_a_valid_case_and_dragging_again_changes_nothing),
      cmocka_unit_test(every_step_there_and_back_of_a_whole_value_is_where_it_was),
      cmocka_unit_test(words_of_every_case_fit_and_end),
  };
  return cmocka_run_group_tests_name("random", tests, NULL, NULL);
}
