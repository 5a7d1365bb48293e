/* What the window says and what its inputs do to a case, as functions of values. No display. */
#include "ox_test.h"

#include <glib.h>

#include "ox_display.h"
#include "ox_input.h"
#include "ox_overlay_words.h"
#include "oxbow/presets.h"

static ox_flight flight;

static void every_choice_has_as_many_words_as_the_table_of_fields(void **state) {
  size_t count, wind_count;
  const ox_field *fields = ox_fields(&count), *wind = ox_wind_fields(&wind_count);
  int choices = 0;
  for (size_t i = 0; i < count + wind_count; i++) {
    const ox_field *field = i < count ? &fields[i] : &wind[i - count];
    const char *const *words = ox_display_choices(field);
    if (field->kind != OX_FIELD_CHOICE) {
      assert_null(words);
      continue;
    }
    choices++;
    /* Choices that no input shows need no words. */
    char *key = i < count ? g_strdup(field->key) : g_strconcat("wind.", field->key, NULL);
    if (ox_input_by_key(key)) {
      assert_non_null(words);
      assert_int_equal(g_strv_length((char **)words), g_strv_length((char **)field->choices));
    }
    g_free(key);
  }
  assert_true(choices >= 10);
}

static void every_input_stands_for_a_field_and_reads_back_what_it_sets(void **state) {
  size_t count;
  const ox_input *inputs = ox_inputs(&count);
  for (size_t i = 0; i < count; i++) {
    const ox_field *field = ox_input_field(&inputs[i]);
    bool fieldless = inputs[i].source != OX_SOURCE_FIELD && inputs[i].source != OX_SOURCE_WIND;
    assert_true(fieldless == (field == NULL));
    if (!field) continue;
    ox_case c = ox_case_default();
    ox_input_apply(&inputs[i], &c, field->max);
    assert_close(ox_input_get(&inputs[i], &c), field->max, 0, inputs[i].key);
  }
}

static void a_leg_by_distance_gets_a_length_and_stays_sound(void **state) {
  ox_case c = ox_case_default();
  ox_input_apply(ox_input_by_key("hold.leg.by"), &c, OX_LEG_BY_DISTANCE);
  assert_int_equal(ox_case_check(&c, NULL, 0), 0);
  /* 100 KIAS at 5 000 ft is 108 kt true, 1.8 NM a minute: 2 to the half mile */
  assert_close(c.hold.leg_nm, 2, 0, "length");
  c.hold.leg_nm = 5;
  ox_input_apply(ox_input_by_key("hold.leg.by"), &c, OX_LEG_BY_TIME);
  ox_input_apply(ox_input_by_key("hold.leg.by"), &c, OX_LEG_BY_DISTANCE);
  assert_close(c.hold.leg_nm, 5, 0, "a length that was given stays");
}

static void calm_wind_gets_its_row_with_the_first_figure(void **state) {
  ox_case c = ox_case_default();
  assert_int_equal(c.wind_count, 0);
  assert_close(ox_input_get(ox_input_by_key("wind.kt"), &c), 0, 0, "calm");
  ox_input_apply(ox_input_by_key("wind.kt"), &c, 20);
  assert_int_equal(c.wind_count, 1);
  assert_close(c.wind[0].from_deg, 360, 0, "from");
  assert_int_equal(ox_case_check(&c, NULL, 0), 0);
}

static void an_instant_is_told_with_its_leg_and_circuit(void **state) {
  ox_case c = ox_case_default();
  char text[128];
  assert_true(ox_flight_solve(&c, &flight) != OX_ERROR);
  ox_display_instant(text, sizeof text, &flight, ox_flight_begin_s(&flight));
  assert_non_null(strstr(text, "arrival"));
  assert_null(strstr(text, "circuit"));
  ox_display_instant(text, sizeof text, &flight, 90);
  assert_string_equal(text, "1:30 outbound, circuit 1");
  memset(&flight, 0, sizeof flight);
  ox_display_instant(text, sizeof text, &flight, 90);
  assert_string_equal(text, "No flight");
}

static void stepping_through_the_events_meets_each_one_and_both_ends(void **state) {
  ox_case c = ox_case_default();
  assert_true(ox_flight_solve(&c, &flight) != OX_ERROR);
  double t_s = ox_flight_begin_s(&flight);
  assert_close(ox_display_next_event_s(&flight, t_s, -1), t_s, 0, "nothing before the start");
  size_t steps = 0;
  while (t_s < ox_flight_end_s(&flight) && steps < 1000) {
    double next_s = ox_display_next_event_s(&flight, t_s, 1);
    assert_true(next_s > t_s);
    assert_true(ox_display_next_event_s(&flight, next_s, -1) >= t_s - 0.01);
    t_s = next_s;
    steps++;
  }
  assert_close(t_s, ox_flight_end_s(&flight), 0, "end");
  assert_true(steps > 6 && steps <= flight.event_count + 1);
}

static void the_title_tells_changes_and_read_only(void **state) {
  char title[64];
  ox_display_window_title(title, sizeof title, "Winds", 0, 0);
  assert_string_equal(title, "Winds");
  ox_display_window_title(title, sizeof title, "Winds", 1, 0);
  assert_string_equal(title, "Winds •");
  ox_display_window_title(title, sizeof title, "Winds", 0, 1);
  assert_string_equal(title, "Winds (read only)");
}

static void the_exact_hold_is_compared_in_the_last_circuit_where_it_differs(void **state) {
  ox_case c = ox_case_default();
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 270, 25, OX_NORTH_TRUE};
  assert_true(ox_flight_solve(&c, &flight) != OX_ERROR);
  char *text = ox_overlay_words_exact(&c, &flight);
  assert_non_null(strstr(text, "is the exact hold: there is no difference"));
  g_free(text);
  c.technique.drift = OX_DRIFT_NONE;
  assert_true(ox_flight_solve(&c, &flight) != OX_ERROR);
  text = ox_overlay_words_exact(&c, &flight);
  assert_non_null(strstr(text, "ircuit:\n"));
  assert_non_null(strstr(text, ", exact "));
  assert_null(strstr(text, "no difference"));
  g_free(text);
}

static void the_spread_is_told_with_its_ranges_and_the_fixes_lost(void **state) {
  ox_spread spread = {.runs = 500,
                      .not_regained = 3,
                      .inbound_s = {52, 60, 70},
                      .rollout_nm = {-0.15, 0, 0.125}};
  char *text = ox_overlay_words_spread(NULL, 500);
  assert_non_null(strstr(text, "500 flights"));
  assert_non_null(strstr(text, "being flown"));
  g_free(text);
  text = ox_overlay_words_spread(&spread, 500);
  assert_non_null(strstr(text, "0:52 to 1:10"));
  assert_non_null(strstr(text, "\u22120.15 to 0.1"));
  assert_non_null(strstr(text, "In 3 of them the fix is not regained."));
  g_free(text);
}

/* Rows of the panel that go together, in both states of what they hang on. */
static void inputs_are_offered_where_they_mean_something(void **state) {
  ox_case c = ox_case_default();
  const ox_input *station = ox_input_by_key("hold.leg.station");
  const ox_input *distance = ox_input_by_key("hold.leg.station.nm");
  double first;
  assert_false(ox_input_shown(station, &c));
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  assert_true(ox_input_shown(station, &c) && ox_input_sensitive(station, &c));
  assert_false(ox_input_sensitive(distance, &c));
  ox_input_apply(station, &c, 1);
  assert_true(c.hold.station.given && ox_input_sensitive(distance, &c));
  c.hold.leg_end = OX_LEG_END_INBOUND;
  assert_false(ox_input_sensitive(station, &c) || ox_input_sensitive(distance, &c));
  assert_string_equal(ox_input_absent(ox_input_by_key("hold.climb_to_ft"), &c, &first), "level");
  assert_close(first, c.hold.altitude_ft + 1000, 0, "the first step of a climb");
  assert_null(ox_input_absent(ox_input_by_key("hold.leg.s"), &c, &first));
  ox_input_apply(ox_input_by_key("preset"), &c, (double)ox_preset_count());
  assert_close(ox_input_get(ox_input_by_key("hold.leg.station"), &c), 1, 0, "nothing was set");
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_choice_has_as_many_words_as_the_table_of_fields),
      cmocka_unit_test(every_input_stands_for_a_field_and_reads_back_what_it_sets),
      cmocka_unit_test(a_leg_by_distance_gets_a_length_and_stays_sound),
      cmocka_unit_test(calm_wind_gets_its_row_with_the_first_figure),
      cmocka_unit_test(inputs_are_offered_where_they_mean_something),
      cmocka_unit_test(the_exact_hold_is_compared_in_the_last_circuit_where_it_differs),
      cmocka_unit_test(the_spread_is_told_with_its_ranges_and_the_fixes_lost),
      cmocka_unit_test(an_instant_is_told_with_its_leg_and_circuit),
      cmocka_unit_test(stepping_through_the_events_meets_each_one_and_both_ends),
      cmocka_unit_test(the_title_tells_changes_and_read_only),
  };
  return cmocka_run_group_tests_name("display", tests, NULL, NULL);
}
