/* Stepping, setting, and what the handles say. */
#include "handles_support.h"

#include "oxbow/fields.h"

static ox_case stepped(const ox_case *c, ox_handle h, int steps) {
  ox_case made = *c;
  fly(c);
  assert_int_equal(ox_handle_step(h, c, &flight, steps, &made), OX_OK);
  assert_int_equal(ox_case_check(&made, NULL, 0), 0);
  return made;
}

static const char *words(ox_handle h, const ox_case *c) {
  static char buf[80];
  fly(c);
  ox_handle_words(buf, sizeof buf, h, c, &flight);
  return buf;
}

static void courses_step_round_the_circle(void **state) {
  static const struct {
    double from, by, want;
  } rows[] = {{240, 1, 241}, {360, 1, 1},   {0, 1, 1},     {1, -1, 360},    {355, 10, 5},
              {5, -10, 355}, {240.4, 1, 241}, {240.4, -1, 240}, {359.6, 1, 360}, {0.4, -1, 360}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = larch();
    c.hold.inbound_deg = c.arrival.heading_deg = c.wind[0].from_deg = rows[i].from;
    int by = (int)rows[i].by;
    assert_close(stepped(&c, OX_HANDLE_INBOUND, by).hold.inbound_deg, rows[i].want, 1e-9, "in");
    assert_close(stepped(&c, OX_HANDLE_ARRIVAL, by).arrival.heading_deg, rows[i].want, 1e-9, "arr");
    assert_close(stepped(&c, OX_HANDLE_WIND_FROM, by).wind[0].from_deg, rows[i].want, 1e-9, "wind");
  }
}

static void speeds_and_legs_stop_at_their_ends(void **state) {
  ox_case c = larch();
  c.wind[0].kt = 245;
  assert_close(stepped(&c, OX_HANDLE_WIND_KT, 10).wind[0].kt, 250, 1e-9, "strongest");
  c.wind[0].kt = 4;
  assert_close(stepped(&c, OX_HANDLE_WIND_KT, -10).wind[0].kt, 0, 1e-9, "calm");
  c.hold.leg_s = 595;
  assert_close(stepped(&c, OX_HANDLE_OUTBOUND, 10).hold.leg_s, 600, 1e-9, "longest");
  c.hold.leg_s = 12;
  assert_close(stepped(&c, OX_HANDLE_OUTBOUND, -10).hold.leg_s, 10, 1e-9, "shortest");
  c.hold.leg_s = 0;
  assert_close(stepped(&c, OX_HANDLE_OUTBOUND, 1).hold.leg_s, 61, 1e-9, "from the standard time");
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = 4;
  for (int i = 0; i < 7; i++) c = stepped(&c, OX_HANDLE_OUTBOUND, 1);
  assert_close(c.hold.leg_nm, 4.7, 1e-12, "seven tenths");
}

static void values_are_set_between_their_ends(void **state) {
  ox_case c = larch(), made;
  fly(&c);
  for (int h = 0; h < OX_HANDLE_COUNT; h++) {
    ox_handle_range r = ox_handle_range_of((ox_handle)h, &c, &flight);
    const double to[] = {r.min, r.max, r.min - 1000.5, r.max + 1000.5, 1e300, -1e300};
    for (size_t i = 0; i < sizeof to / sizeof *to; i++) {
      if (h == OX_HANDLE_FIX) {
        assert_int_equal(ox_handle_set((ox_handle)h, &c, &flight, to[i], &made), OX_ERROR);
        continue;
      }
      assert_int_equal(ox_handle_set((ox_handle)h, &c, &flight, to[i], &made), OX_OK);
      assert_int_equal(ox_case_check(&made, NULL, 0), 0);
    }
    assert_int_equal(ox_handle_set((ox_handle)h, &c, &flight, (double)NAN, &made), OX_ERROR);
    assert_int_equal(ox_handle_set((ox_handle)h, &c, &flight, HUGE_VAL, &made), OX_ERROR);
  }
}

static void a_button_is_pressed_whatever_the_step(void **state) {
  ox_case c = larch();
  assert_int_equal(stepped(&c, OX_HANDLE_TURNS, -3).hold.turns, OX_TURNS_LEFT);
  ox_case flipped = ox_handle_flip(&c), back = ox_handle_flip(&flipped);
  assert_int_equal(flipped.hold.turns, OX_TURNS_LEFT);
  assert_true(ox_case_equal(&c, &back));
}

static void a_step_of_nothing_changes_nothing(void **state) {
  ox_case c = larch();
  c.hold.leg_s = 0;
  c.hold.inbound_deg = 0;
  for (int h = OX_HANDLE_INBOUND; h < OX_HANDLE_TURNS; h++) {
    ox_case same = stepped(&c, (ox_handle)h, 0);
    assert_true(ox_case_equal(&c, &same));
  }
}

static void every_handle_says_its_value_with_its_unit(void **state) {
  ox_case c = larch();
  assert_string_equal(words(OX_HANDLE_FIX, &c), "LARCH");
  assert_string_equal(words(OX_HANDLE_INBOUND, &c), "240° magnetic");
  assert_string_equal(words(OX_HANDLE_ARRIVAL, &c), "090° magnetic");
  assert_string_equal(words(OX_HANDLE_WIND_FROM, &c), "from 330° true, 20 kt");
  assert_string_equal(words(OX_HANDLE_WIND_KT, &c), "20 kt");
  assert_string_equal(words(OX_HANDLE_OUTBOUND, &c), "1:00 inbound");
  assert_string_equal(words(OX_HANDLE_TURNS, &c), "right turns");
  c.hold.inbound_deg = 0.04;
  c.arrival.heading_deg = 7.25;
  c.wind[0].north = OX_NORTH_MAGNETIC;
  c.wind[0].kt = 7.5;
  c.hold.leg_s = 82.5;
  c.technique.timing = OX_TIMING_OUTBOUND;
  c.hold.turns = OX_TURNS_LEFT;
  c.hold.fix[0] = '\0';
  assert_string_equal(words(OX_HANDLE_FIX, &c), "without a name");
  assert_string_equal(words(OX_HANDLE_INBOUND, &c), "360° magnetic");
  assert_string_equal(words(OX_HANDLE_ARRIVAL, &c), "007.3° magnetic");
  assert_string_equal(words(OX_HANDLE_WIND_FROM, &c), "from 330° magnetic, 7.5 kt");
  assert_string_equal(words(OX_HANDLE_OUTBOUND, &c), "1:22.5 outbound");
  assert_string_equal(words(OX_HANDLE_TURNS, &c), "left turns");
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = 4.5;
  assert_string_equal(words(OX_HANDLE_OUTBOUND, &c), "4.5 NM outbound");
}

static void every_handle_has_a_name_and_an_input_of_the_case(void **state) {
  ox_case c = larch();
  for (int h = 0; h < OX_HANDLE_COUNT; h++) {
    const char *key = ox_handle_key((ox_handle)h, &c);
    assert_true(strlen(ox_handle_name((ox_handle)h)) > 5);
    for (int k = 0; k < h; k++)
      assert_string_not_equal(ox_handle_name((ox_handle)h), ox_handle_name((ox_handle)k));
    bool special = strcmp(key, "hold.fix") == 0 || strncmp(key, "wind.", 5) == 0;
    assert_true(special || ox_field_by_key(key) != NULL);
  }
  assert_string_equal(ox_handle_key(OX_HANDLE_OUTBOUND, &c), "hold.leg.s");
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  assert_string_equal(ox_handle_key(OX_HANDLE_OUTBOUND, &c), "hold.leg.nm");
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(courses_step_round_the_circle),
      cmocka_unit_test(speeds_and_legs_stop_at_their_ends),
      cmocka_unit_test(values_are_set_between_their_ends),
      cmocka_unit_test(a_button_is_pressed_whatever_the_step),
      cmocka_unit_test(a_step_of_nothing_changes_nothing),
      cmocka_unit_test(every_handle_says_its_value_with_its_unit),
      cmocka_unit_test(every_handle_has_a_name_and_an_input_of_the_case),
  };
  return cmocka_run_group_tests_name("steps", tests, NULL, NULL);
}
