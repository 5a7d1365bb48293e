/* A student's answer beside the flight: measured right, and told so that it helps. */
#include "../engine/random_case.h"
#include "oxbow/guess.h"
#include "ox_test.h"

static ox_flight flight; /* large */

/* Right turns, inbound 240, no wind, crossing on a heading; times and headings are round. */
static ox_case plain_case(double heading_deg) {
  ox_case c = ox_case_default();
  c.hold.inbound_deg = 240;
  c.arrival.heading_deg = heading_deg;
  c.variation_deg = 0;
  c.wind_count = 0;
  return c;
}

static void fly(const ox_case *c) { assert_true(ox_flight_solve(c, &flight) != OX_ERROR); }

/* The track from the fix to the end of the first circuit, point by point, moved by a vector. */
static ox_ink *traced(double step_s, ox_vec by_nm) {
  ox_ink *ink = ox_ink_new();
  double end_s = flight.circuits[0].complete ? flight.circuits[0].end_t_s : ox_flight_end_s(&flight);
  assert_int_equal(ox_ink_begin(ink, OX_INK_BLUE, OX_INK_THIN,
                                ox_vec_add(ox_flight_at(&flight, 0.0).p_nm, by_nm)), OX_OK);
  for (double t = step_s; t < end_s + step_s; t += step_s)
    assert_int_equal(ox_ink_extend(ink, ox_vec_add(ox_flight_at(&flight, fmin(t, end_s)).p_nm, by_nm)),
                     OX_OK);
  return ink;
}

static void the_track_itself_fits_exactly(void **state) {
  ox_random r = {11};
  int seen = 0, cases = ox_test_cases(40);
  while (seen < cases) {
    ox_case c = ox_random_case(&r, 0.4);
    if (ox_flight_solve(&c, &flight) == OX_ERROR || flight.circuit_count == 0 ||
        !flight.circuits[0].complete ||
        flight.circuits[0].end_t_s > 1500) continue;
    ox_ink *ink = traced(1.0, (ox_vec){0, 0});
    ox_sketch_fit fit;
    assert_true(ox_guess_fit(&flight, ink, &fit));
    assert_close(fit.most_nm, 0, 0.01, "most");
    assert_close(fit.mean_nm, 0, 0.01, "mean");
    assert_close(fit.missed_nm, 0, 0.01, "missed");
    assert_close(fit.near_share, 1, 1e-9, "near");
    assert_close(fit.covered_share, 1, 1e-9, "covered");
    ox_ink_free(ink);
    seen++;
  }
}

/* Moved by d, no place is farther than d from where it was; the mean is not above the most; and
 * the order and the cutting of strokes mean nothing. */
static void a_moved_track_is_off_by_no_more_than_it_was_moved(void **state) {
  ox_random r = {12};
  int seen = 0, cases = ox_test_cases(40);
  while (seen < cases) {
    ox_case c = ox_random_case(&r, 0.4);
    if (ox_flight_solve(&c, &flight) == OX_ERROR || flight.circuit_count == 0 ||
        !flight.circuits[0].complete ||
        flight.circuits[0].end_t_s > 1500) continue;
    double by = ox_random_between(&r, 0.05, 2.0);
    ox_ink *ink = traced(2.0, ox_vec_scale(ox_unit(ox_random_between(&r, 0, 360)), by));
    ox_sketch_fit fit, cut;
    assert_true(ox_guess_fit(&flight, ink, &fit));
    assert_true(fit.most_nm <= by + 0.02 && fit.missed_nm <= by + 0.02);
    assert_true(fit.mean_nm <= fit.most_nm + 1e-9);
    assert_true(fit.near_share >= 0 && fit.near_share <= 1);
    assert_true(fit.covered_share >= 0 && fit.covered_share <= 1);
    assert_close(hypot(fit.most_at_nm.x - fit.most_track_nm.x, fit.most_at_nm.y - fit.most_track_nm.y),
                 fit.most_nm, 1e-9, "between the two places");
    ox_ink *parts = ox_ink_new();
    size_t half = ink->strokes[0].count / 2;
    ox_ink_stroke second = ink->strokes[0], first = second;
    first.count = half + 1;
    second.points_nm += half;
    second.count -= half;
    assert_int_equal(ox_ink_append(parts, &second), OX_OK);
    assert_int_equal(ox_ink_append(parts, &first), OX_OK);
    assert_true(ox_guess_fit(&flight, parts, &cut));
    assert_close(cut.most_nm, fit.most_nm, 1e-9, "cut: most");
    assert_close(cut.mean_nm, fit.mean_nm, 1e-6, "cut: mean");
    assert_close(cut.missed_nm, fit.missed_nm, 1e-9, "cut: missed");
    ox_ink_free(parts);
    ox_ink_free(ink);
    seen++;
  }
}

/* Beside a straight piece the distance is plain: abeam the middle of the inbound leg. */
static void a_line_beside_the_course_is_as_far_as_it_is(void **state) {
  ox_case c = plain_case(240);
  c.hold.inbound_deg = 360;
  c.arrival.heading_deg = 360;
  fly(&c);
  ox_ink *ink = ox_ink_new();
  ox_ink_begin(ink, OX_INK_BLACK, OX_INK_THIN, (ox_vec){-0.5, -1.0});
  ox_ink_extend(ink, (ox_vec){-0.5, -0.5});
  ox_sketch_fit fit;
  assert_true(ox_guess_fit(&flight, ink, &fit));
  assert_close(fit.most_nm, 0.5, 1e-9, "most");
  assert_close(fit.mean_nm, 0.5, 1e-9, "mean");
  assert_close(fit.length_nm, 0.5, 1e-9, "length");
  assert_close(fit.near_share, 0, 0, "near");
  assert_true(fit.missed_nm > 1.0);
  ox_guess none = ox_guess_none();
  ox_guess_report report = ox_guess_compare(&c, &flight, &none, ink);
  assert_int_equal(report.count, 1);
  assert_string_equal(report.rows[0].what, "Track");
  assert_false(report.rows[0].near);
  assert_non_null(strstr(report.rows[0].sentence, "0.5 NM at most"));
  assert_non_null(strstr(report.rows[0].sentence, "too far west, on the non-holding side"));
  ox_guess_report_clear(&report);
  ox_ink_free(ink);
}

static void without_a_line_there_is_no_fit(void **state) {
  ox_case c = plain_case(240);
  fly(&c);
  ox_sketch_fit fit = {.most_nm = 7};
  ox_ink *ink = ox_ink_new();
  assert_false(ox_guess_fit(&flight, NULL, &fit));
  assert_false(ox_guess_fit(&flight, ink, &fit));
  ox_ink_begin(ink, OX_INK_BLACK, OX_INK_THIN, (ox_vec){1, 1}); /* a dot */
  assert_false(ox_guess_fit(&flight, ink, &fit));
  assert_close(fit.most_nm, 7, 0, "untouched");
  ox_guess guess = ox_guess_none();
  ox_guess_report report = ox_guess_compare(&c, &flight, &guess, ink);
  assert_int_equal(report.count, 0);
  ox_guess_report_clear(&report);
  ox_ink_free(ink);
}

static void headings_differ_across_north_as_anywhere(void **state) {
  ox_random r = {13};
  for (int i = 0, cases = ox_test_cases(300); i < cases; i++) {
    ox_case c = ox_random_case(&r, 0.4);
    if (ox_flight_solve(&c, &flight) == OX_ERROR || flight.circuit_count == 0) continue;
    double flown = ox_magnetic_deg(flight.circuits[0].outbound_heading_true_deg, c.variation_deg);
    double first = ox_magnetic_deg(flight.entry_heading_true_deg, c.variation_deg);
    double want = ox_random_between(&r, -179, 179), off;
    ox_guess guess = ox_guess_none();
    assert_false(ox_guess_heading_off(&c, &flight, &guess, &off));
    assert_false(ox_guess_first_heading_off(&c, &flight, &guess, &off));
    guess.outbound_heading_deg = ox_norm360_deg(flown + want);
    guess.first_heading_deg = ox_norm360_deg(first + want);
    assert_true(ox_guess_heading_off(&c, &flight, &guess, &off));
    assert_close(off, want, 1e-9, "outbound heading");
    assert_true(ox_guess_first_heading_off(&c, &flight, &guess, &off));
    assert_close(off, want, 1e-9, "first heading");
  }
}

/* Right turns, inbound 240, outbound 060. The sectors are those of AIM 5-3-8 j3 and FIG 5-3-4: teardrop
 * 350 to 060, parallel 060 to 170, direct elsewhere; within 5 degrees either (AIM 5-3-8 j8(d)). */
static void entries_are_judged_by_the_sectors(void **state) {
  static const struct {
    double heading_deg;
    int guess;
    bool fits;
    const char *says;
  } rows[] = {
      {240, OX_ENTRY_DIRECT, true, "The direct entry is right."},
      {240, OX_ENTRY_PARALLEL, false, "You chose the parallel entry; the direct is the one"},
      {20, OX_ENTRY_TEARDROP, true, "The teardrop entry is right."},
      {20, OX_ENTRY_DIRECT, false, "lies 30° to the right of the boundary at 350"},
      {100, OX_ENTRY_PARALLEL, true, "lies 40° to the right of the boundary at 060"},
      {100, OX_ENTRY_TEARDROP, false, "in the parallel sector"},
      {63, OX_ENTRY_TEARDROP, true, "right as well: within 5° of a boundary either is accepted"},
      {63, OX_ENTRY_PARALLEL, true, "lies 3° to the right of the boundary at 060"},
      {63, OX_ENTRY_DIRECT, false, "You chose the direct entry; the parallel is the one"},
      {168, OX_ENTRY_DIRECT, true, "right as well"},
      {347, OX_ENTRY_TEARDROP, true, "right as well"},
      {344, OX_ENTRY_TEARDROP, false, "in the direct sector"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = plain_case(rows[i].heading_deg);
    fly(&c);
    ox_guess guess = ox_guess_none();
    guess.entry = rows[i].guess;
    assert_int_equal(ox_guess_entry_fits(&flight, &guess), rows[i].fits);
    ox_guess_report report = ox_guess_compare(&c, &flight, &guess, NULL);
    assert_int_equal(report.count, 1);
    assert_int_equal(report.rows[0].near, rows[i].fits);
    if (!strstr(report.rows[0].sentence, rows[i].says)) print_error("%s\n", report.rows[0].sentence);
    assert_non_null(strstr(report.rows[0].sentence, rows[i].says));
    ox_guess_report_clear(&report);
  }
}

/* A case may be flown with another entry than the sector's: the rule is still what is right. */
static void a_forced_entry_does_not_make_the_rule_wrong(void **state) {
  ox_case c = plain_case(100);
  c.technique.entry = OX_CHOOSE_DIRECT;
  fly(&c);
  ox_guess guess = ox_guess_none();
  guess.entry = OX_ENTRY_PARALLEL;
  ox_guess_report report = ox_guess_compare(&c, &flight, &guess, NULL);
  assert_true(report.rows[0].near);
  assert_non_null(strstr(report.rows[0].sentence, "This case is flown with the direct entry."));
  ox_guess_report_clear(&report);
}

/* No wind: the outbound heading is the outbound course (060), and it lasts as long as the inbound
 * leg is to last, a minute. Both follow from geometry. */
static void numbers_are_told_with_their_difference_and_its_sense(void **state) {
  ox_case c = plain_case(240);
  fly(&c);
  ox_guess guess = {OX_ENTRY_DIRECT, 60, 48, 75};
  ox_guess_report report = ox_guess_compare(&c, &flight, &guess, NULL);
  assert_int_equal(report.count, 4);
  assert_string_equal(report.rows[0].what, "Entry");
  assert_string_equal(report.rows[1].sentence, "060 is what is flown.");
  assert_true(report.rows[1].near);
  assert_string_equal(report.rows[2].yours, "048");
  assert_string_equal(report.rows[2].flown, "060");
  assert_string_equal(report.rows[2].sentence,
                      "048 is 12° to the left of what is flown, 060. The outbound course is 060, "
                      "and there is no wind to correct for.");
  assert_false(report.rows[2].near);
  assert_string_equal(report.rows[3].yours, "1:15");
  assert_string_equal(report.rows[3].sentence,
                      "1:15 is 15 s longer than what is flown, 1:00. What is flown makes "
                      "the inbound leg 1:00.");
  assert_false(report.rows[3].near);
  ox_guess_report_clear(&report);
  guess = (ox_guess){OX_ENTRY_NONE, (double)NAN, 64, 52};
  report = ox_guess_compare(&c, &flight, &guess, NULL);
  assert_int_equal(report.count, 2);
  assert_true(report.rows[0].near && report.rows[1].near);
  assert_non_null(strstr(report.rows[0].sentence, "Near enough: 064 is 4° to the right of"));
  assert_non_null(strstr(report.rows[1].sentence, "Near enough: 0:52 is 8 s shorter than"));
  ox_guess_report_clear(&report);
  assert_non_null(strstr(ox_guess_tolerances(), "common practice"));
}

static ox_case exact_case(double heading_deg, double from_deg, double kt) {
  ox_case c = plain_case(heading_deg);
  c.technique.drift = OX_DRIFT_EXACT;
  c.technique.outbound = OX_OUTBOUND_EXACT;
  if (kt > 0) {
    c.wind_count = 1;
    c.wind[0] = (ox_wind_row){0, from_deg, kt, OX_NORTH_TRUE};
  }
  return c;
}

/* AIM 5-3-8 j3(c): a direct entry is a turn to follow the pattern, so to the outbound course; j4(a)
 * and its note: the first outbound leg is flown for a minute at or below 14 000 ft. The exact
 * technique, crossing the fix on 285, flies 053 and a shorter leg to roll out on the course. */
static void the_usual_answer_is_right_in_calm_air(void **state) {
  ox_case c = exact_case(285, 0, 0);
  fly(&c);
  assert_true(fabs(ox_turn_between_deg(60, flight.entry_heading_true_deg)) > OX_GUESS_HEADING_DEG);
  double wind_deg = 9;
  assert_true(ox_guess_wind_part(&c, &flight, &wind_deg));
  assert_close(wind_deg, 0, 0, "calm");
  ox_guess guess = {OX_ENTRY_DIRECT, 60, 60, 60};
  ox_guess_report report = ox_guess_compare(&c, &flight, &guess, NULL);
  assert_int_equal(report.count, 4);
  for (size_t i = 0; i < report.count; i++) {
    assert_true(report.rows[i].near);
    assert_null(strstr(report.rows[i].sentence, "for the wind 6"));
  }
  assert_string_equal(report.rows[2].sentence, report.rows[1].sentence);
  assert_non_null(strstr(report.rows[2].sentence, "060 is right: it is the usual answer"));
  assert_non_null(strstr(report.rows[2].sentence, "to the right of what is flown here, 053."));
  assert_non_null(strstr(report.rows[2].sentence, "there is no wind to correct for. The entry asks "
                                                  "for 6.9° L: the turn outbound begins on 285"));
  assert_non_null(strstr(report.rows[3].sentence, "1:00 is right: the first outbound leg is usually"));
  assert_non_null(strstr(report.rows[3].sentence, "13 s longer than what is flown, 0:47."));
  ox_guess_report_clear(&report);
  guess = (ox_guess){OX_ENTRY_NONE, 66, 66, 75};
  report = ox_guess_compare(&c, &flight, &guess, NULL);
  for (size_t i = 0; i < report.count; i++) assert_false(report.rows[i].near);
  ox_guess_report_clear(&report);
}

/* In wind the usual heading is that of the steady hold, and no other one beside what is flown. */
static void in_wind_only_the_steady_heading_is_usual(void **state) {
  ox_case c = exact_case(300, 330, 20); /* from the right of 240 by 90 */
  fly(&c);
  double wind_deg, usual = flight.steady.outbound_heading_deg;
  assert_true(ox_guess_wind_part(&c, &flight, &wind_deg));
  assert_close(wind_deg, flight.steady.outbound_wca_deg, 1e-9, "the steady hold's");
  assert_true(wind_deg < -10); /* towards the wind, that is to the left outbound */
  assert_true(ox_guess_is_usual_heading(&c, &flight, round(usual)));
  assert_false(ox_guess_is_usual_heading(&c, &flight, usual + 3));
  assert_false(ox_guess_is_usual_heading(&c, &flight, usual - 3));
  assert_false(ox_guess_is_usual_heading(&c, &flight, 60));
  assert_false(ox_guess_is_usual_heading(&c, &flight, (double)NAN));
  double flown = flight.circuits[0].outbound_heading_true_deg;
  assert_true(fabs(ox_turn_between_deg(usual, flown)) > OX_GUESS_HEADING_DEG);
  ox_guess guess = ox_guess_none();
  guess.outbound_heading_deg = 60;
  ox_guess_report report = ox_guess_compare(&c, &flight, &guess, NULL);
  assert_false(report.rows[0].near);
  assert_non_null(strstr(report.rows[0].sentence, "and the correction for the wind"));
  assert_non_null(strstr(report.rows[0].sentence, "° L. The entry asks for"));
  ox_guess_report_clear(&report);
  guess.outbound_heading_deg = round(usual);
  report = ox_guess_compare(&c, &flight, &guess, NULL);
  assert_true(report.rows[0].near);
  ox_guess_report_clear(&report);
  c.technique.drift = OX_DRIFT_TRIPLE; /* the heading flown is the wind's, by the rule */
  fly(&c);
  assert_true(ox_guess_wind_part(&c, &flight, &wind_deg));
  assert_close(ox_turn_between_deg(60 + wind_deg, flight.circuits[0].outbound_heading_true_deg), 0,
               1e-9, "all of it");
}

/* AIM 5-3-8 j4(a). */
static void the_usual_time_goes_by_altitude_or_by_the_leg_asked_for(void **state) {
  static const struct {
    double altitude_ft, leg_s;
    ox_leg_by by;
    double usual_s; /* 0: none */
  } rows[] = {
      {3000, 0, OX_LEG_BY_TIME, 60},   {14000, 0, OX_LEG_BY_TIME, 60},
      {14001, 0, OX_LEG_BY_TIME, 90},  {14001, 60, OX_LEG_BY_TIME, 60},
      {3000, 120, OX_LEG_BY_TIME, 120}, {3000, 0, OX_LEG_BY_DISTANCE, 0},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = exact_case(285, 0, 0);
    c.hold.altitude_ft = rows[i].altitude_ft;
    c.hold.leg_by = rows[i].by;
    c.hold.leg_s = rows[i].leg_s;
    c.hold.leg_nm = 4;
    fly(&c);
    for (int s = 30; s <= 150; s += 15)
      assert_int_equal(ox_guess_is_usual_time(&flight, s), s == rows[i].usual_s);
    assert_false(ox_guess_is_usual_time(&flight, (double)NAN));
  }
}

/* What is said about the entry is so: there is nothing left for it where the fix is crossed as in
 * later circuits, and in calm air nothing is ever put down to the wind. */
static void what_the_wind_does_not_ask_for_comes_of_the_crossing(void **state) {
  ox_random r = {15};
  int seen = 0, cases = ox_test_cases(300);
  for (int i = 0; i < 40 * cases && seen < cases; i++) {
    ox_case c = ox_random_case(&r, 0.4);
    double wind_deg;
    if (i % 3 == 0) c.wind_count = c.wind_change_count = 0;
    if (ox_flight_solve(&c, &flight) == OX_ERROR || flight.circuit_count == 0) continue;
    if (!ox_guess_wind_part(&c, &flight, &wind_deg)) continue;
    if (c.wind_count + c.wind_change_count == 0) assert_close(wind_deg, 0, 0, "calm");
    double crossed = ox_flight_at(&flight, flight.circuits[0].fix_t_s).heading_true_deg;
    if (flight.steady.why != OX_STEADY_EXISTS ||
        fabs(ox_turn_between_deg(crossed, flight.steady.inbound_heading_deg)) > 1e-6)
      continue;
    double whole = ox_turn_between_deg(flight.setup.inbound_true_deg + 180,
                                       flight.circuits[0].outbound_heading_true_deg);
    assert_close(ox_turn_between_deg(whole, wind_deg), 0, 0.01, "the wind's, all of it");
    seen++;
  }
  assert_int_equal(seen, cases);
}

/* Whatever the case and the answer, the report is made and every text is one. */
static void no_case_and_no_answer_is_without_words(void **state) {
  ox_random r = {14};
  for (int i = 0, cases = ox_test_cases(400); i < cases; i++) {
    ox_case c = ox_random_case(&r, 0.4);
    if (ox_flight_solve(&c, &flight) == OX_ERROR) continue;
    ox_guess guess = {ox_random_below(&r, 4) - 1, ox_random_between(&r, 0, 360),
                      ox_random_between(&r, 0, 360), ox_random_between(&r, 0, 600)};
    ox_guess_report report = ox_guess_compare(&c, &flight, &guess, NULL);
    for (size_t k = 0; k < report.count; k++) {
      assert_true(strlen(report.rows[k].sentence) > 10);
      assert_null(strstr(report.rows[k].sentence, "nan"));
      assert_null(strstr(report.rows[k].sentence, "unknown"));
      assert_true(strlen(report.rows[k].yours) > 0 && strlen(report.rows[k].flown) > 0);
    }
    ox_guess_report_clear(&report);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_track_itself_fits_exactly),
      cmocka_unit_test(a_moved_track_is_off_by_no_more_than_it_was_moved),
      cmocka_unit_test(a_line_beside_the_course_is_as_far_as_it_is),
      cmocka_unit_test(without_a_line_there_is_no_fit),
      cmocka_unit_test(headings_differ_across_north_as_anywhere),
      cmocka_unit_test(entries_are_judged_by_the_sectors),
      cmocka_unit_test(a_forced_entry_does_not_make_the_rule_wrong),
      cmocka_unit_test(numbers_are_told_with_their_difference_and_its_sense),
      cmocka_unit_test(the_usual_answer_is_right_in_calm_air),
      cmocka_unit_test(in_wind_only_the_steady_heading_is_usual),
      cmocka_unit_test(the_usual_time_goes_by_altitude_or_by_the_leg_asked_for),
      cmocka_unit_test(what_the_wind_does_not_ask_for_comes_of_the_crossing),
      cmocka_unit_test(no_case_and_no_answer_is_without_words),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
