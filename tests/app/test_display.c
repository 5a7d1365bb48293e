/* What the window says and what its inputs do to a case, as functions of values. No display. */
#include "ox_test.h"

#include <glib.h>

#include "ox_display.h"
#include "ox_input.h"

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

static void winds_by_altitude_are_told_in_words_and_not_offered_for_typing(void **state) {
  ox_case c = ox_case_default();
  char text[512];
  ox_display_wind_rows(text, sizeof text, &c);
  assert_string_equal(text, "");
  c.wind_count = 2;
  c.wind[0] = (ox_wind_row){3000, 0, 15, OX_NORTH_TRUE};
  c.wind[1] = (ox_wind_row){9000, 270, 40, OX_NORTH_MAGNETIC};
  ox_display_wind_rows(text, sizeof text, &c);
  assert_string_equal(text, "3000 ft: from 360 true, 15 kt\n9000 ft: from 270 magnetic, 40 kt");
  assert_false(ox_input_shown(ox_input_by_key("wind.kt"), &c));
  char tight[16];
  ox_display_wind_rows(tight, sizeof tight, &c);
  assert_int_equal(strlen(tight), sizeof tight - 1);
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
  ox_display_motion(text, sizeof text, &c, &flight, 90);
  assert_string_equal(text, "hdg 180, track 180, gs 108 kt");
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

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_choice_has_as_many_words_as_the_table_of_fields),
      cmocka_unit_test(every_input_stands_for_a_field_and_reads_back_what_it_sets),
      cmocka_unit_test(a_leg_by_distance_gets_a_length_and_stays_sound),
      cmocka_unit_test(calm_wind_gets_its_row_with_the_first_figure),
      cmocka_unit_test(winds_by_altitude_are_told_in_words_and_not_offered_for_typing),
      cmocka_unit_test(an_instant_is_told_with_its_leg_and_circuit),
      cmocka_unit_test(stepping_through_the_events_meets_each_one_and_both_ends),
      cmocka_unit_test(the_title_tells_changes_and_read_only),
  };
  return cmocka_run_group_tests_name("display", tests, NULL, NULL);
}
