/* The cross-check: every item the same, different and not shown; and the case it would fly. */
#include "oxbow/crosscheck.h"

#include "../engine/random_case.h"
#include "words_check.h"

static ox_flight flight;
static ox_crosscheck check;

static ox_case cleared(void) {
  ox_case c = ox_case_default();
  strcpy(c.hold.fix, "LARCH");
  c.hold.inbound_deg = 240;
  c.hold.efc_min = 18 * 60 + 25;
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 120; /* one minute is 2 NM */
  c.arrival.heading_deg = 240;
  return c;
}

static ox_case shown_alike(void) {
  ox_case c = cleared();
  strcpy(c.shown.fix, " larch");
  c.shown.direction = (ox_shown_direction)2; /* north-east */
  c.shown.course_deg = 240;
  c.shown.turns = OX_SHOWN_TURNS_RIGHT;
  c.shown.leg_s = 60;
  c.shown.efc_min = 18 * 60 + 25;
  return c;
}

static ox_check_result result_of(const ox_case *c, ox_check_item item) {
  assert_int_not_equal(ox_crosscheck_make(c, &check), OX_ERROR);
  return check.rows[item].result;
}

static void nothing_shown_is_nothing_to_check(void **state) {
  ox_case c = cleared();
  assert_false(ox_shown_is_given(&c));
  assert_int_equal(ox_crosscheck_make(&c, &check), OX_OK);
  assert_int_equal(check.shown, 0);
  assert_int_equal(check.differ, 0);
  assert_false(check.flown_otherwise);
  assert_true(ox_case_equal(&check.flown, &c));
  strcpy(c.shown.fix, "  ");
  assert_false(ox_shown_is_given(&c));
}

static void what_agrees_is_the_same(void **state) {
  ox_case c = shown_alike();
  assert_true(ox_shown_is_given(&c));
  assert_int_equal(ox_crosscheck_make(&c, &check), OX_OK);
  assert_int_equal(check.shown, OX_CHECK_ITEM_COUNT);
  assert_int_equal(check.differ, 0);
  assert_false(check.flown_otherwise);
  for (int i = 0; i < OX_CHECK_ITEM_COUNT; i++) {
    assert_int_equal(check.rows[i].result, OX_CHECK_SAME);
    assert_string_equal(check.rows[i].means, "");
  }
}

/* An inbound course and the radial it lies on are the same line: 240 inbound is 060 outbound. */
static void the_course_may_be_shown_from_either_end(void **state) {
  ox_case c = shown_alike();
  c.shown.course_deg = 60;
  c.shown.course_is = OX_COURSE_OUTBOUND;
  assert_int_equal(result_of(&c, OX_CHECK_COURSE), OX_CHECK_SAME);
  c.shown.course_is = OX_COURSE_INBOUND;
  assert_int_equal(result_of(&c, OX_CHECK_COURSE), OX_CHECK_DIFFERS);
  assert_has(check.rows[OX_CHECK_COURSE].means, "exchanged", "reciprocal");
  assert_close(check.flown.hold.inbound_deg, 60, 1e-9, "the other side");
  assert_true(check.flown_otherwise);
}

static void courses_are_compared_across_north(void **state) {
  static const struct {
    double cleared_deg, shown_deg;
    ox_check_result result;
  } rows[] = {{360, 1, OX_CHECK_SAME},     {0, 360, OX_CHECK_SAME},  {359.4, 360, OX_CHECK_SAME},
              {358, 360, OX_CHECK_DIFFERS}, {2, 360, OX_CHECK_DIFFERS}, {240, 241, OX_CHECK_SAME},
              {240, 241.5, OX_CHECK_DIFFERS}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = cleared();
    c.hold.inbound_deg = rows[i].cleared_deg;
    c.shown.course_deg = rows[i].shown_deg;
    assert_int_equal(result_of(&c, OX_CHECK_COURSE), rows[i].result);
  }
}

/* 12 degrees at the end of 2 NM: 2 × 2 × sin 6° = 0.418 NM (C). */
static void a_difference_as_large_as_the_variation_is_remarked_on(void **state) {
  ox_case c = cleared();
  c.variation_deg = -12;
  c.shown.course_deg = 228;
  assert_int_equal(result_of(&c, OX_CHECK_COURSE), OX_CHECK_DIFFERS);
  assert_has(check.rows[OX_CHECK_COURSE].means, "12° to the left", "how far");
  assert_has(check.rows[OX_CHECK_COURSE].means, "0.4 NM", "at the far end");
  assert_has(check.rows[OX_CHECK_COURSE].means, "variation", "why");
  c.shown.course_deg = 200;
  assert_int_equal(result_of(&c, OX_CHECK_COURSE), OX_CHECK_DIFFERS);
  assert_null(strstr(check.rows[OX_CHECK_COURSE].means, "variation"));
}

static void each_item_can_differ_alone_and_says_what_follows(void **state) {
  for (int item = 0; item < OX_CHECK_ITEM_COUNT; item++) {
    ox_case c = shown_alike();
    switch ((ox_check_item)item) {
    case OX_CHECK_FIX: strcpy(c.shown.fix, "ALDER"); break;
    case OX_CHECK_DIRECTION: c.shown.direction = (ox_shown_direction)6; break;
    case OX_CHECK_COURSE: c.shown.course_deg = 270; break;
    case OX_CHECK_TURNS: c.shown.turns = OX_SHOWN_TURNS_LEFT; break;
    case OX_CHECK_LEG: c.shown.leg_s = 90; break;
    case OX_CHECK_EFC: c.shown.efc_min += 10; break;
    case OX_CHECK_ITEM_COUNT: break;
    }
    assert_int_equal(ox_crosscheck_make(&c, &check), OX_ADVISORY);
    assert_int_equal(check.differ, 1);
    for (int i = 0; i < OX_CHECK_ITEM_COUNT; i++)
      assert_int_equal(check.rows[i].result, i == item ? OX_CHECK_DIFFERS : OX_CHECK_SAME);
    assert_sound(check.rows[item].means, ox_check_item_name((ox_check_item)item));
    assert_int_equal(ox_case_check(&check.flown, NULL, 0), 0);
    bool drawn = item == OX_CHECK_COURSE || item == OX_CHECK_TURNS || item == OX_CHECK_LEG;
    assert_int_equal(check.flown_otherwise, drawn);
  }
}

/* At 120 kt half a minute more is 1 NM a leg, and two legs take a minute (C). */
static void a_longer_leg_is_told_in_miles_and_minutes(void **state) {
  ox_case c = cleared();
  c.shown.leg_s = 90;
  assert_int_equal(result_of(&c, OX_CHECK_LEG), OX_CHECK_DIFFERS);
  assert_has(check.rows[OX_CHECK_LEG].means, "1.0 NM longer, and a circuit takes 1:00 longer", "leg");
  assert_close(check.flown.hold.leg_s, 90, 0, "flown");
}

/* AIM 5-3-8 j7(a)(4): many area navigation systems take the length as that of the inbound leg. */
static void a_length_stands_for_a_time_within_a_tenth(void **state) {
  ox_case c = cleared();
  c.shown.leg_nm = 2.1;
  assert_int_equal(result_of(&c, OX_CHECK_LEG), OX_CHECK_SAME);
  c.shown.leg_nm = 4;
  assert_int_equal(result_of(&c, OX_CHECK_LEG), OX_CHECK_DIFFERS);
  assert_int_equal(check.flown.hold.leg_by, OX_LEG_BY_DISTANCE);
  assert_int_equal(check.flown.hold.leg_end, OX_LEG_END_INBOUND);
  assert_close(check.flown.hold.leg_nm, 4, 0, "flown");
  c.shown.leg_s = 60; /* both are shown: the time was cleared */
  assert_int_equal(result_of(&c, OX_CHECK_LEG), OX_CHECK_SAME);
}

static void an_efc_across_midnight_is_minutes_apart(void **state) {
  ox_case c = cleared();
  c.hold.efc_min = 23 * 60 + 55;
  c.shown.efc_min = 5;
  assert_int_equal(result_of(&c, OX_CHECK_EFC), OX_CHECK_DIFFERS);
  assert_has(check.rows[OX_CHECK_EFC].means, "10 min too late", "late");
  c.hold.efc_min = 5;
  c.shown.efc_min = 23 * 60 + 55;
  assert_int_equal(result_of(&c, OX_CHECK_EFC), OX_CHECK_DIFFERS);
  assert_has(check.rows[OX_CHECK_EFC].means, "10 min too early", "early");
  c.hold.efc_min = -1;
  assert_int_equal(result_of(&c, OX_CHECK_EFC), OX_CHECK_DIFFERS);
  assert_string_equal(check.rows[OX_CHECK_EFC].cleared, "none");
}

static void a_faulty_case_is_refused_and_nothing_written(void **state) {
  ox_case c = shown_alike();
  assert_int_equal(ox_crosscheck_make(&c, &check), OX_OK);
  c.hold.inbound_deg = 999;
  check.shown = 77;
  assert_int_equal(ox_crosscheck_make(&c, &check), OX_ERROR);
  assert_int_equal(check.shown, 77);
}

static void the_tracks_are_told_apart_in_figures(void **state) {
  char text[OX_CROSSCHECK_BYTES];
  ox_case c = shown_alike();
  c.shown.turns = OX_SHOWN_TURNS_LEFT;
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  assert_int_equal(ox_crosscheck_make(&c, &check), OX_ADVISORY);
  ox_words_crosscheck(text, sizeof text, &c, &flight, &check);
  assert_sound(text, "the whole");
  assert_has(text, "1 of 6 items shown differs", "count");
  /* Two still-air holds on either side of one line, abeam each other in the outbound turn: twice
   * the diameter of a rate-one turn at 120 kt, 2 × 1.273 NM (holding-standards 14.4). */
  assert_has(text, "up to 2.5 NM", "apart");
}

static void random_cases_give_sound_rows_and_flyable_cases(void **state) {
  ox_random r = {4711};
  int differ = 0;
  for (int i = 0, cases = ox_test_cases(1500); i < cases; i++) {
    char text[OX_CROSSCHECK_BYTES];
    ox_case c = ox_random_case(&r, 0.4);
    c.shown.direction = (ox_shown_direction)ox_random_below(&r, 9);
    c.shown.course_deg = ox_random_below(&r, 3) ? ox_random_between(&r, 1, 360) : 0;
    c.shown.course_is = (ox_course_kind)ox_random_below(&r, 2);
    c.shown.turns = (ox_shown_turns)ox_random_below(&r, 3);
    c.shown.leg_s = ox_random_below(&r, 2) ? ox_random_between(&r, 10, 600) : 0;
    c.shown.leg_nm = ox_random_below(&r, 2) ? ox_random_between(&r, 0.5, 60) : 0;
    c.shown.efc_min = ox_random_below(&r, 1441) - 1;
    assert_int_not_equal(ox_crosscheck_make(&c, &check), OX_ERROR);
    assert_int_equal(ox_case_check(&check.flown, NULL, 0), 0);
    for (int k = 0; k < OX_CHECK_ITEM_COUNT; k++) {
      const ox_check_row *row = &check.rows[k];
      assert_sound(row->cleared, "cleared");
      assert_int_equal(*row->shown != '\0', row->result != OX_CHECK_NOT_SHOWN);
      assert_int_equal(*row->means != '\0', row->result == OX_CHECK_DIFFERS);
      assert_true(strlen(row->means) < sizeof row->means - 4);
    }
    /* Flown as shown, the equipment's own hold agrees with it. */
    ox_case as_shown = check.flown;
    if (check.rows[OX_CHECK_COURSE].result == OX_CHECK_DIFFERS)
      assert_int_not_equal(result_of(&as_shown, OX_CHECK_COURSE), OX_CHECK_DIFFERS);
    assert_int_not_equal(result_of(&as_shown, OX_CHECK_TURNS), OX_CHECK_DIFFERS);
    if (i % 10) continue;
    assert_int_not_equal(ox_crosscheck_make(&c, &check), OX_ERROR);
    assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
    ox_words_crosscheck(text, sizeof text, &c, &flight, &check);
    assert_sound(text, "the whole");
    differ += check.differ > 0;
  }
  assert_true(differ > ox_test_least(100));
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(nothing_shown_is_nothing_to_check),
      cmocka_unit_test(what_agrees_is_the_same),
      cmocka_unit_test(the_course_may_be_shown_from_either_end),
      cmocka_unit_test(courses_are_compared_across_north),
      cmocka_unit_test(a_difference_as_large_as_the_variation_is_remarked_on),
      cmocka_unit_test(each_item_can_differ_alone_and_says_what_follows),
      cmocka_unit_test(a_longer_leg_is_told_in_miles_and_minutes),
      cmocka_unit_test(a_length_stands_for_a_time_within_a_tenth),
      cmocka_unit_test(an_efc_across_midnight_is_minutes_apart),
      cmocka_unit_test(a_faulty_case_is_refused_and_nothing_written),
      cmocka_unit_test(the_tracks_are_told_apart_in_figures),
      cmocka_unit_test(random_cases_give_sound_rows_and_flyable_cases),
  };
  return cmocka_run_group_tests_name("crosscheck", tests, NULL, NULL);
}
