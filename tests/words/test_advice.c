/* Advisories in sentences: every kind has one, with its figures, and no figure breaks it. */
#include "words_check.h"

typedef struct {
  ox_advice advice;
  const char *parts[4]; /* what the sentence must say */
} advice_row;

static const advice_row rows[] = {
    {{OX_ADVICE_SPEED_ABOVE_LIMIT, 240, 230, 0}, {"240 KIAS", "230 KIAS"}},
    {{OX_ADVICE_TAS_CONTRADICTS_IAS, 120, 107.7, 0}, {"120.0 kt", "107.7 kt", "100 KIAS"}},
    {{OX_ADVICE_ENTRY_NOT_BY_SECTOR, OX_ENTRY_DIRECT, OX_ENTRY_PARALLEL, 0},
     {"direct", "parallel"}},
    {{OX_ADVICE_ENTRY_EITHER, OX_ENTRY_TEARDROP, OX_ENTRY_DIRECT, 3.5},
     {"3.5°", "teardrop", "direct", "5°"}},
    {{OX_ADVICE_TRACK_DIFFERS, OX_ENTRY_PARALLEL, OX_ENTRY_DIRECT, 0}, {"parallel", "direct"}},
    {{OX_ADVICE_NO_STEADY, OX_STEADY_TURN_DRIFT, 45, 33.333}, {"45.0 kt", "33.3 kt"}},
    {{OX_ADVICE_DRIFT_CAPPED, 75, 60, 0}, {"75°", "60°"}},
    {{OX_ADVICE_OUTBOUND_FLOOR, 12, 30, 0}, {"0:12", "0:30"}},
    {{OX_ADVICE_NO_ABEAM, 0, 0, 2}, {"circuit 2", "wings level"}},
    {{OX_ADVICE_PAST_FIX, 0, 0, 3}, {"circuit 3"}},
    {{OX_ADVICE_NOT_REGAINED, 0, 0, 1}, {"circuit 1", "cannot be regained"}},
    {{OX_ADVICE_LONG_INBOUND, 95, 60, 1}, {"1:35", "1:00", "35 s too long", "shorter"}},
    {{OX_ADVICE_OVERSHOOT, 0.42, 0, 4}, {"circuit 4", "0.42 NM", "non-holding side"}},
    {{OX_ADVICE_BELOW_FIXED_WING_MIN, 80, 90, 0}, {"80 KIAS", "90 KIAS"}},
    {{OX_ADVICE_NO_ARRIVAL, 0, 0, 0}, {"arrival"}},
    {{OX_ADVICE_WIND_EXTRAPOLATED, 21000, 0, 0}, {"21000 ft"}},
    {{OX_ADVICE_DME_NOT_SEEN, 4, 6.58, 0}, {"4.0 NM", "6.6 NM above"}},
    {{OX_ADVICE_LEAVE_MISSED, 250, 500, 0}, {"4:10", "8:20"}},
    {{OX_ADVICE_LEAVE_BEFORE, 95, 0, 0}, {"1:35"}},
    {{OX_ADVICE_RADIAL_NOT_CROSSED, 45, 0, 0}, {"045", "limiting radial"}},
    {{OX_ADVICE_LEAVE_UNKNOWN, 1, 0, 0}, {"no EFC is given", "circuits"}},
};
#define ROW_COUNT (sizeof rows / sizeof *rows)

static void every_kind_has_a_row_here(void **state) {
  assert_int_equal(ROW_COUNT, OX_ADVICE_KIND_COUNT);
  for (size_t i = 0; i < ROW_COUNT; i++)
    assert_int_equal(rows[i].advice.kind, i);
}

static void every_kind_is_a_sentence_with_its_figures(void **state) {
  ox_case c = ox_case_default();
  for (size_t i = 0; i < ROW_COUNT; i++) {
    char got[600];
    ox_words_advice(got, sizeof got, &c, &rows[i].advice);
    assert_sound(got, "advice");
    assert_true(strlen(got) > 40 && strlen(got) < sizeof got - 1);
    assert_int_equal(got[strlen(got) - 1], '.');
    for (size_t k = 0; k < 4 && rows[i].parts[k]; k++)
      assert_has(got, rows[i].parts[k], "advice");
  }
}

static void what_is_missing_for_the_efc_is_named(void **state) {
  static const char *const missing[] = {"the time over the fix is not given", "no EFC is given",
                                        "neither the EFC nor the time over the fix"};
  ox_case c = ox_case_default();
  for (int i = 0; i < 3; i++) {
    char got[600];
    ox_advice advice = {OX_ADVICE_LEAVE_UNKNOWN, i != 0, i != 1, 0};
    ox_words_advice(got, sizeof got, &c, &advice);
    assert_has(got, missing[i], "advice");
  }
}

static void no_two_kinds_say_the_same(void **state) {
  ox_case c = ox_case_default();
  char got[OX_ADVICE_KIND_COUNT + 1][600];
  for (size_t i = 0; i < ROW_COUNT; i++)
    ox_words_advice(got[i], sizeof got[i], &c, &rows[i].advice);
  /* and none is what a kind without a sentence of its own would get */
  ox_advice other = {OX_ADVICE_KIND_COUNT, 0, 0, 0};
  ox_words_advice(got[ROW_COUNT], sizeof got[ROW_COUNT], &c, &other);
  for (size_t i = 0; i <= ROW_COUNT; i++)
    for (size_t k = 0; k < i; k++)
      assert_string_not_equal(got[i], got[k]);
}

static void every_reason_for_no_steady_hold_is_said(void **state) {
  ox_case c = ox_case_default();
  for (int why = OX_STEADY_CROSSWIND; why <= OX_STEADY_STATION; why++) {
    char got[600];
    ox_advice advice = {OX_ADVICE_NO_STEADY, why, 51.25, 0};
    ox_words_advice(got, sizeof got, &c, &advice);
    assert_sound(got, "advice");
    assert_has(got, ox_steady_why_name((ox_steady_why)why), "advice");
    if (why == OX_STEADY_STATION) continue; /* no wind of any strength is the reason */
    assert_has(got, "51.3 kt", "advice");
    assert_null(strstr(got, "limit")); /* there is none to tell */
  }
}

static void a_leg_longer_than_the_way_to_the_station_is_said(void **state) {
  ox_case c = ox_case_default();
  c.hold.leg_nm = 12;
  char got[600];
  ox_words_advice(got, sizeof got, &c, &(ox_advice){OX_ADVICE_DME_NOT_SEEN, -2.4, 1.6, 0});
  assert_sound(got, "advice");
  assert_has(got, "leg of 12 NM", "advice");
  assert_has(got, "shorter leg", "advice");
}

static void times_to_leave_are_clock_times_where_the_crossing_has_one(void **state) {
  ox_case c = ox_case_default();
  c.arrival.fix_at_s = 86400 - 250; /* 23:55:50 */
  char got[600];
  ox_advice advice = {OX_ADVICE_LEAVE_MISSED, 190, 500, 0};
  ox_words_advice(got, sizeof got, &c, &advice);
  assert_has(got, "23:59:00 and 00:04:10", "advice");
  /* no later circuit leads back: flight.h says b = a */
  const double none[] = {190, (double)INFINITY};
  for (size_t i = 0; i < 2; i++) {
    advice.b = none[i];
    ox_words_advice(got, sizeof got, &c, &advice);
    assert_sound(got, "advice");
    assert_has(got, "before it is 23:59:00: tell the controller.", "advice");
  }
}

static void a_speed_just_over_the_limit_does_not_read_as_the_limit(void **state) {
  ox_case c = ox_case_default();
  char got[600];
  ox_advice advice = {OX_ADVICE_SPEED_ABOVE_LIMIT, 200.4, 200, 0};
  ox_words_advice(got, sizeof got, &c, &advice);
  assert_has(got, "200.4 KIAS", "advice");
}

static void the_entry_is_not_called_a_circuit(void **state) {
  ox_case c = ox_case_default();
  char got[600];
  ox_advice advice = {OX_ADVICE_NOT_REGAINED, 0, 0, 0};
  ox_words_advice(got, sizeof got, &c, &advice);
  assert_has(got, "In the entry", "advice");
}

static void a_short_inbound_leg_asks_for_a_longer_outbound_one(void **state) {
  ox_case c = ox_case_default();
  char got[600];
  ox_advice advice = {OX_ADVICE_LONG_INBOUND, 40, 60, 1};
  ox_words_advice(got, sizeof got, &c, &advice);
  assert_has(got, "20 s too short: fly the next outbound leg longer", "advice");
}

static void where_no_outbound_time_helps_none_is_advised(void **state) {
  ox_case c = ox_case_default();
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, c.hold.inbound_deg, 60, OX_NORTH_MAGNETIC};
  char got[600];
  ox_advice advice = {OX_ADVICE_LONG_INBOUND, 95, 60, 1};
  ox_words_advice(got, sizeof got, &c, &advice);
  assert_has(got, "no outbound time cures that", "advice");
}

static void odd_figures_never_break_a_sentence(void **state) {
  static const double odd[] = {0, -1, 1e300, -1e300, 99, 1e9, -0.0};
  ox_case c = ox_case_default();
  for (int kind = 0; kind < OX_ADVICE_KIND_COUNT; kind++) {
    for (size_t i = 0; i < sizeof odd / sizeof *odd; i++) {
      char got[600];
      ox_advice advice = {(ox_advice_kind)kind, odd[i], odd[i], odd[i]};
      ox_words_advice(got, sizeof got, &c, &advice);
      assert_true(strlen(got) > 40);
    }
    char got[600];
    ox_advice none = {(ox_advice_kind)kind, (double)NAN, (double)NAN, (double)NAN};
    ox_words_advice(got, sizeof got, &c, &none);
    assert_true(strlen(got) > 40);
    assert_null(strstr(got, "nan"));
  }
}

/* Whether the text ends with a whole character. */
static bool ends_whole(const char *text) {
  size_t length = strlen(text), back = 0;
  while (back < length && ((unsigned char)text[length - 1 - back] & 0xc0u) == 0x80u)
    back++;
  if (back == length) return length == 0;
  unsigned char lead = (unsigned char)text[length - 1 - back];
  size_t needs = lead < 0x80u ? 0 : lead >= 0xf0u ? 3 : lead >= 0xe0u ? 2 : 1;
  return back == needs;
}

static void a_small_buffer_cuts_at_a_whole_character(void **state) {
  ox_case c = ox_case_default();
  ox_advice advice = {OX_ADVICE_ENTRY_EITHER, OX_ENTRY_TEARDROP, OX_ENTRY_DIRECT, 3.5};
  char whole[600];
  ox_words_advice(whole, sizeof whole, &c, &advice);
  for (size_t bytes = 1; bytes <= strlen(whole) + 1; bytes++) {
    char *got = malloc(bytes); /* exactly as large as said, for the sanitizer to watch */
    assert_non_null(got);
    ox_words_advice(got, bytes, &c, &advice);
    assert_true(strlen(got) < bytes);
    assert_memory_equal(got, whole, strlen(got));
    assert_true(ends_whole(got));
    assert_true(strlen(got) + 3 >= bytes - 1);
    free(got);
  }
}

static void advice_does_not_follow_the_locale(void **state) {
  ox_case c = ox_case_default();
  for (size_t i = 0; i < ROW_COUNT; i++) {
    char plain[600], german[600];
    ox_words_advice(plain, sizeof plain, &c, &rows[i].advice);
    enter_german();
    ox_words_advice(german, sizeof german, &c, &rows[i].advice);
    leave_german();
    assert_string_equal(plain, german);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_kind_has_a_row_here),
      cmocka_unit_test(every_kind_is_a_sentence_with_its_figures),
      cmocka_unit_test(what_is_missing_for_the_efc_is_named),
      cmocka_unit_test(no_two_kinds_say_the_same),
      cmocka_unit_test(every_reason_for_no_steady_hold_is_said),
      cmocka_unit_test(a_leg_longer_than_the_way_to_the_station_is_said),
      cmocka_unit_test(times_to_leave_are_clock_times_where_the_crossing_has_one),
      cmocka_unit_test(a_speed_just_over_the_limit_does_not_read_as_the_limit),
      cmocka_unit_test(the_entry_is_not_called_a_circuit),
      cmocka_unit_test(a_short_inbound_leg_asks_for_a_longer_outbound_one),
      cmocka_unit_test(where_no_outbound_time_helps_none_is_advised),
      cmocka_unit_test(odd_figures_never_break_a_sentence),
      cmocka_unit_test(a_small_buffer_cuts_at_a_whole_character),
      cmocka_unit_test(advice_does_not_follow_the_locale),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
