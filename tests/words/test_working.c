/* The working: complete for every case, right for the published ones, the same in every locale. */
#include "../engine/random_case.h"
#include "oxbow/lesson.h"
#include "words_check.h"

static ox_flight flight; /* large */

static ox_working work_out(const ox_case *c) {
  assert_int_not_equal(ox_flight_solve(c, &flight), OX_ERROR);
  ox_working w = ox_working_make(c, &flight);
  assert_true(w.count > 0);
  return w;
}

static const char *const groups[] = {"Entry",  "Technique", "Headings",
                                     "Times",  "Wind",      "Turn and speed",
                                     "Limits", "Time and fuel", "Circuits",
                                     "Against the exact hold"};
#define GROUP_COUNT (sizeof groups / sizeof *groups)

/* Every field is something, and the groups come one after another, each once. */
static void assert_complete(const ox_working *w, const ox_flight *f) {
  size_t group = 0, circuits = 0;
  for (size_t i = 0; i < w->count; i++) {
    const ox_working_row *row = &w->rows[i];
    assert_sound(row->label, "label");
    assert_sound(row->value, row->label);
    assert_sound(row->why, row->label);
    assert_sound(row->source, row->label);
    if (strcmp(row->group, groups[group]) != 0) group++;
    assert_true(group < GROUP_COUNT);
    assert_string_equal(row->group, groups[group]);
    if (strncmp(row->label, "Circuit ", 8) == 0) circuits++;
  }
  assert_int_equal(group, GROUP_COUNT - 1);
  assert_int_equal(circuits, f->circuit_count);
}

static void the_default_case_has_its_rows(void **state) {
  static const char *const labels[] = {
      "Entry",
      "Other entry accepted",
      "Distance to the boundary",
      "Entry heading",
      "Inbound heading",
      "Exact outbound heading",
      "Outbound to inbound correction",
      "Outbound heading flown first",
      "Leg asked for",
      "Inbound time",
      "Whole circuit",
      "Outbound time flown first",
      "Outbound clock starts",
      "Wind",
      "True airspeed",
      "Bank",
      "Rate of turn",
      "Radius of turn",
      "What decides",
      "Speed limit",
      "Airspeed",
      "Circuit 1",
      "Circuit 3",
      "Flown as",
      "Next correction",
      "Where the inbound turn rolls out",
      "Gate angle",
      "Farthest on the non-holding side",
      "Inbound times one after another",
      "The exact hold",
  };
  ox_case c = ox_case_default();
  ox_working w = work_out(&c);
  assert_complete(&w, &flight);
  for (size_t i = 0; i < sizeof labels / sizeof *labels; i++)
    find_row(&w, labels[i]);
  ox_working_clear(&w);
  assert_int_equal(w.count, 0);
}

static void every_demo_case_is_worked_out(void **state) {
  const char *folder = getenv("OXBOW_LESSONS");
  static const char *const files[] = {"demo",      "outbound-timing", "high-and-fast",
                                      "adjusting", "techniques",      "distance"};
  assert_non_null(folder);
  for (size_t i = 0; i < sizeof files / sizeof *files; i++) {
    char path[1000];
    ox_lesson *lesson = NULL;
    ox_messages messages = {0};
    snprintf(path, sizeof path, "%s/%s.oxbow", folder, files[i]);
    assert_int_equal(ox_lesson_read(path, &lesson, &messages), OX_OK);
    for (size_t k = 0; k < lesson->case_count; k++) {
      ox_working w = work_out(&lesson->cases[k].c);
      assert_complete(&w, &flight);
      ox_working_clear(&w);
    }
    ox_lesson_free(lesson);
  }
}

/* What random cases do not have: a climb, a wind that changes, a DME, a time to leave. */
static void dress_up(ox_random *r, ox_case *c) {
  if (ox_random_below(r, 3) == 0) {
    c->hold.climb_to_ft = ox_random_between(r, 1000, 20000);
    c->hold.climb_ft_min = ox_random_between(r, 200, 2000);
  }
  c->hold.ends = (ox_hold_ends)ox_random_below(r, 2);
  if (ox_random_below(r, 3) == 0) {
    c->hold.ends = OX_HOLD_TO_EFC;
    c->hold.efc_min = 600;
    c->arrival.fix_at_s = 36000 - (int)ox_random_between(r, -100, 2000);
  }
  if (ox_random_below(r, 3) == 0) {
    c->wind_change_count = 2;
    c->wind_changes[0] = (ox_wind_change){2, 40, 15, OX_NORTH_TRUE};
    c->wind_changes[1] = (ox_wind_change){7.5, 310, 33, OX_NORTH_MAGNETIC};
  }
  if (ox_random_below(r, 2) == 0) {
    c->hold.station.given = true;
    c->hold.station.radial_deg = ox_random_between(r, 0, 360);
    c->hold.station.nm = ox_random_between(r, 0, 40);
  }
  c->aircraft.turn_by = (ox_turn_by)ox_random_below(r, 2);
  c->technique.entry_line = (ox_entry_line)ox_random_below(r, 2);
  c->technique.reaction_s = ox_random_between(r, 0, 6);
  c->technique.lead = (ox_lead)ox_random_below(r, 2);
}

static void dressed_up_cases_are_worked_out(void **state) {
  ox_random r = {20240612};
  int flown = 0;
  for (int i = 0, cases = ox_test_cases(2000); i < cases; i++) {
    ox_case c = ox_random_case(&r, i % 2 ? 0.4 : 1.2);
    dress_up(&r, &c);
    if (ox_case_check(&c, NULL, 0) > 0) continue; /* a climb may pass the speed of sound */
    ox_working w = work_out(&c);
    assert_complete(&w, &flight);
    ox_working_clear(&w);
    char *text = ox_words_describe(&c, &flight);
    assert_sound(text, "description");
    free(text);
    flown++;
  }
  assert_true(flown > ox_test_least(1500));
}

static void random_cases_are_worked_out(void **state) {
  ox_random r = {20240611};
  for (int i = 0, cases = ox_test_cases(3000); i < cases; i++) {
    ox_case c = ox_random_case(&r, i % 2 ? 0.4 : 1.5);
    ox_working w = work_out(&c);
    assert_complete(&w, &flight);
    ox_working_clear(&w);
  }
}

static void assert_value(const ox_case *c, const char *label, const char *value) {
  ox_working w = work_out(c);
  const ox_working_row *row = find_row(&w, label);
  if (strcmp(row->value, value) != 0)
    fail_msg("%s: want \"%s\", got \"%s\"", label, value, row->value);
  ox_working_clear(&w);
}

/* AIM 5-3-8 j8(c): correcting 8 degrees left inbound, 24 degrees right outbound. 120 kt with
 * 120 sin 8 = 16.7008 kt from the left of course 360. */
static void triple_drift_is_that_of_the_manual(void **state) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 120;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 270, 16.700772, OX_NORTH_TRUE};
  c.technique.drift = OX_DRIFT_TRIPLE;
  assert_value(&c, "Inbound heading", "352 (8° L)");
  assert_value(&c, "Outbound heading flown first", "204 (24° R)");
}

/* holding-pattern closed form, 120 kt, 090/20 on course 360, one minute: outbound 152.24
 * (27.76 left), ratio 2.89, 66.86 s, circuit 246.9 s (derived from general mathematics). */
static void the_steady_hold_is_shown_as_solved(void **state) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 120;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 90, 20, OX_NORTH_TRUE};
  assert_value(&c, "Inbound heading", "010 (9.6° R)");
  assert_value(&c, "Inbound ground speed", "118.3 kt");
  assert_value(&c, "Exact outbound heading", "152 (28° L)");
  assert_value(&c, "Outbound to inbound correction", "2.89 times, to the other side");
  assert_value(&c, "Outbound time, wings level to turn", "1:07");
  assert_value(&c, "Whole circuit", "4:07");
  assert_value(&c, "Across the inbound course", "20.0 kt from the right, the holding side");
  c.hold.turns = OX_TURNS_LEFT;
  assert_value(&c, "Across the inbound course", "20.0 kt from the right, the non-holding side");
}

/* Entries: inbound 152, left turns, heading 010: teardrop on 002 (published study card); the
 * others by the published sector rule, AIM 5-3-8 j3. */
static void entries_are_those_of_the_sector_rule(void **state) {
  static const struct {
    double inbound_deg, heading_deg;
    ox_turns turns;
    const char *entry, *other, *heading;
  } rows[] = {
      {152, 10, OX_TURNS_LEFT, "teardrop", "none", "002"},
      {10, 150, OX_TURNS_RIGHT, "teardrop", "none", "160"},
      {10, 189, OX_TURNS_RIGHT, "teardrop", "parallel", "160"},
      {10, 250, OX_TURNS_RIGHT, "parallel", "none", "190"},
      {10, 20, OX_TURNS_RIGHT, "direct", "none", "190"},
      {360, 75, OX_TURNS_LEFT, "parallel", "direct", "180"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = ox_case_default();
    c.hold.inbound_deg = rows[i].inbound_deg;
    c.hold.turns = rows[i].turns;
    c.arrival.heading_deg = rows[i].heading_deg;
    assert_value(&c, "Entry", rows[i].entry);
    assert_value(&c, "Other entry accepted", rows[i].other);
    if (strcmp(rows[i].entry, "direct") != 0) assert_value(&c, "Entry heading", rows[i].heading);
  }
}

static void the_entry_is_explained_with_its_angles(void **state) {
  ox_case c = ox_case_default();
  c.hold.inbound_deg = 240;
  c.arrival.heading_deg = 290;
  ox_working w = work_out(&c);
  const ox_working_row *row = find_row(&w, "Entry");
  assert_has(row->why, "Heading 290 is 130° left of the outbound course 060", "entry");
  assert_has(row->why,
             "with right turns 0–70° left of it is teardrop, 0–110° right of it "
             "parallel, the other 180° direct",
             "entry");
  assert_string_equal(find_row(&w, "Distance to the boundary")->value,
                      "60° left of the boundary at 350");
  ox_working_clear(&w);
}

/* AIM 5-3-8 j3(e): left turns mirror the sectors. */
static void the_sectors_of_left_turns_are_mirrored_in_words(void **state) {
  ox_case c = ox_case_default();
  c.hold.turns = OX_TURNS_LEFT;
  ox_working w = work_out(&c);
  assert_has(find_row(&w, "Entry")->why,
             "with left turns 0–70° right of it is teardrop, 0–110° left of it "
             "parallel",
             "entry");
  ox_working_clear(&w);
}

/* AIM 5-3-8 figures: towards the station, fix at 10 DME, 5 mile leg: turn inbound at 15 DME; away
 * from it, fix at 28 DME, 8 mile leg: at 20 DME. At the station's height slant is ground range. */
static void a_leg_by_dme_ends_at_the_reading_of_the_figures(void **state) {
  ox_case c = ox_case_default();
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_end = OX_LEG_END_OUTBOUND;
  c.hold.station.given = true;
  c.hold.station.elevation_ft = c.hold.altitude_ft;
  c.hold.leg_nm = 5;
  c.hold.station.nm = 10;
  c.hold.station.radial_deg = c.hold.inbound_deg;
  assert_value(&c, "Leg asked for", "outbound to 15 DME");
  c.hold.leg_nm = 8;
  c.hold.station.nm = 28;
  c.hold.station.radial_deg = c.hold.inbound_deg - 180;
  assert_value(&c, "Leg asked for", "outbound to 20 DME");
}

static void the_time_to_leave_is_a_clock_time(void **state) {
  ox_case c = ox_case_default();
  c.hold.ends = OX_HOLD_TO_EFC;
  c.hold.efc_min = 18 * 60 + 25;
  c.arrival.fix_at_s = (18 * 60 + 11) * 60 + 30;
  assert_value(&c, "Leave the fix", "18:25:00 UTC");
  ox_working w = work_out(&c);
  assert_has(find_row(&w, "Leave the fix")->why, "13:30 after crossing the fix at 18:11:30", "why");
  ox_working_clear(&w);
}

static void a_reversal_needs_no_circuit(void **state) {
  ox_case c = ox_case_default();
  c.hold.ends = OX_HOLD_REVERSAL;
  c.arrival.heading_deg = 220; /* parallel */
  ox_working w = work_out(&c);
  assert_int_equal(flight.circuit_count, 0);
  assert_string_equal(find_row(&w, "Circuits")->value, "none flown");
  assert_has(find_row(&w, "Circuits")->why, "reversal is complete", "why");
  ox_working_clear(&w);
}

static void climbs_and_changes_of_wind_have_rows(void **state) {
  ox_case c = ox_case_default();
  c.hold.climb_to_ft = 9000;
  c.hold.climb_ft_min = 500;
  c.wind_change_count = 1;
  c.wind_changes[0] = (ox_wind_change){4, 250, 30, OX_NORTH_TRUE};
  assert_value(&c, "In the hold", "climb to 9000 ft in 8:00");
  assert_value(&c, "Then the wind changes", "from 250 at 30 kt");
  c.hold.climb_to_ft = 3000;
  assert_value(&c, "In the hold", "descent to 3000 ft in 4:00");
}

/* Teardrop flown as a track 30 degrees off the outbound course: 152 inbound, left: track 002. With
 * 120 sin 10 = 20.84 kt straight across it from the left the heading is 10 degrees to the left. */
static void an_entry_flown_as_a_track_is_corrected_for_the_wind(void **state) {
  ox_case c = ox_case_default();
  c.hold.inbound_deg = 152;
  c.hold.turns = OX_TURNS_LEFT;
  c.arrival.heading_deg = 10;
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 120;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 272, 20.837781, OX_NORTH_TRUE};
  assert_value(&c, "Entry heading", "002");
  c.technique.entry_line = OX_ENTRY_LINE_TRACK;
  assert_value(&c, "Entry heading", "352");
  ox_working w = work_out(&c);
  assert_has(find_row(&w, "Entry heading")->why, "as a track made good, with the wind 10° L",
             "why");
  ox_working_clear(&w);
}

static void directions_are_magnetic_and_a_true_one_says_so(void **state) {
  ox_case c = ox_case_default();
  c.hold.inbound_deg = 240;
  c.variation_deg = -12;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 228, 10, OX_NORTH_TRUE}; /* along the course: 240 magnetic */
  assert_value(&c, "Inbound heading", "240 M (no correction)");
  assert_value(&c, "Wind", "228 true (240 magnetic) at 10 kt");
  c.variation_deg = 0;
  c.wind[0].from_deg = 240;
  assert_value(&c, "Wind", "240 at 10 kt");
}

static bool is_direction(const char *at) {
  for (int i = 0; i < 3; i++)
    if (at[i] < '0' || at[i] > '9') return false;
  return !(at[3] >= '0' && at[3] <= '9') && at[3] != '.' && strncmp(at + 3, "°", 2) != 0;
}

static bool says_which(const char *after) {
  return strncmp(after, " M", 2) == 0 || strncmp(after, " true", 5) == 0 ||
         strncmp(after, " magnetic", 9) == 0;
}

/* What follows a word that announces a direction. */
static size_t assert_marked(const char *text, bool marked) {
  static const char *const words[] = {"heading ", "Heading ", "course ", "crossing ",
                                      "boundary ", "boundary at "};
  size_t count = 0;
  for (size_t i = 0; i < sizeof words / sizeof *words; i++)
    for (const char *at = text; (at = strstr(at, words[i])) != NULL;) {
      at += strlen(words[i]);
      if (!is_direction(at)) continue;
      if (says_which(at + 3) != marked) fail_msg("%s", text);
      count++;
    }
  return count;
}

/* Two norths apart: every direction says which it counts from; without a variation none does. */
static void every_direction_says_which_north_where_they_differ(void **state) {
  ox_random r = {20240704};
  size_t count[2] = {0, 0};
  for (int i = 0, cases = ox_test_cases(2000); i < cases; i++) {
    ox_case c = ox_random_case(&r, 0.6);
    bool marked = i % 2 == 1;
    c.variation_deg = marked ? ox_random_between(&r, 1, 40) * (i % 4 == 1 ? 1 : -1) : 0;
    ox_working w = work_out(&c);
    for (size_t k = 0; k < w.count; k++) {
      const ox_working_row *row = &w.rows[k];
      count[marked] += assert_marked(row->value, marked) + assert_marked(row->why, marked);
      bool heading = strstr(row->label, "heading") != NULL;
      if (!heading || !is_direction(row->value)) continue;
      if (says_which(row->value + 3) != marked) fail_msg("%s: %s", row->label, row->value);
      count[marked]++;
    }
    char *text = ox_words_describe(&c, &flight);
    count[marked] += assert_marked(text, marked);
    free(text);
    ox_working_clear(&w);
  }
  assert_true(count[0] > (size_t)ox_test_least(5000) && count[1] > (size_t)ox_test_least(5000));
}

static void the_limits_name_their_band(void **state) {
  static const struct {
    double altitude_ft, charted_kias;
    const char *value, *why;
  } rows[] = {
      /* AIM 5-3-8 j2 */
      {6000, 0, "200 KIAS", "up to 6000 ft"},     {6001, 0, "230 KIAS", "6001 to 14000 ft"},
      {14000, 0, "230 KIAS", "6001 to 14000 ft"}, {14001, 0, "265 KIAS", "14001 ft and above"},
      {5000, 175, "175 KIAS", "charted"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = ox_case_default();
    c.hold.altitude_ft = rows[i].altitude_ft;
    c.hold.limit_kias = rows[i].charted_kias;
    ox_working w = work_out(&c);
    assert_string_equal(find_row(&w, "Speed limit")->value, rows[i].value);
    assert_has(find_row(&w, "Speed limit")->why, rows[i].why, "speed limit");
    ox_working_clear(&w);
  }
}

static void where_no_hold_closes_the_reason_stands_in_the_rows(void **state) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 100;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 360, 45, OX_NORTH_TRUE};
  ox_working w = work_out(&c);
  const ox_working_row *row = find_row(&w, "Exact outbound heading");
  assert_string_equal(row->value, "none makes the circuit close");
  assert_has(row->why, "45.0 kt, limit 33.3 kt", "no steady hold"); /* V/3 for one-minute legs */
  assert_complete(&w, &flight);
  ox_working_clear(&w);
}

static void the_working_does_not_follow_the_locale(void **state) {
  ox_random r = {7};
  for (int i = 0, cases = ox_test_cases(50); i < cases; i++) {
    ox_case c = ox_random_case(&r, 0.4);
    ox_working plain = work_out(&c);
    enter_german();
    ox_working german = ox_working_make(&c, &flight);
    leave_german();
    assert_int_equal(plain.count, german.count);
    for (size_t k = 0; k < plain.count; k++) {
      assert_string_equal(plain.rows[k].value, german.rows[k].value);
      assert_string_equal(plain.rows[k].why, german.rows[k].why);
    }
    ox_working_clear(&plain);
    ox_working_clear(&german);
  }
}

/* --- the description ----------------------------------------------------------------------- */

static void the_description_tells_the_picture(void **state) {
  ox_case c = ox_case_default();
  strcpy(c.name, "A windy hold");
  strcpy(c.hold.fix, "LARCH");
  c.hold.inbound_deg = 240;
  c.arrival.heading_deg = 100;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 360, 20, OX_NORTH_TRUE};
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  char *text = ox_words_describe(&c, &flight);
  static const char *const parts[] = {"A windy hold. ",
                                      "Hold north-east of LARCH at 5000 feet",
                                      "inbound course 240, right turns",
                                      "1:00 inbound",
                                      "arrives on heading 100",
                                      "wind 360 at 20 kt",
                                      "parallel entry",
                                      "Circuit 1: outbound heading",
                                      "Circuit 3:"};
  assert_sound(text, "description");
  for (size_t i = 0; i < sizeof parts / sizeof *parts; i++)
    assert_has(text, parts[i], "description");
  free(text);
}

/* With a reading and a radial, and (Doc 8168 Vol II, as quoted) too close for the reading. */
static void the_description_names_the_limiting_radial(void **state) {
  ox_case c = ox_case_default();
  c.hold.inbound_deg = 90;
  c.hold.altitude_ft = 10000;
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = 5;
  c.hold.station.given = true;
  c.hold.station.radial_deg = 90;
  c.hold.station.nm = 9.8636;
  c.hold.station.limiting_radial_deg = 214;
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  char *text = ox_words_describe(&c, &flight);
  assert_has(text, "outbound to 15 DME or the limiting radial 214 from the station, whichever "
                   "comes first", "description");
  free(text);
  c.hold.station.radial_deg = 270;
  c.hold.station.nm = 4;
  c.hold.leg_nm = 3.6;
  c.hold.station.limiting_radial_deg = 150;
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  text = ox_words_describe(&c, &flight);
  assert_has(text, "outbound to the limiting radial 150 from the station.", "description");
  free(text);
}

static void the_description_repeats_every_advisory(void **state) {
  ox_random r = {99};
  for (int i = 0, cases = ox_test_cases(1000); i < cases; i++) {
    ox_case c = ox_random_case(&r, 1.2);
    assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
    char *text = ox_words_describe(&c, &flight);
    assert_sound(text, "description");
    assert_int_equal(text[strlen(text) - 1], '.');
    for (size_t k = 0; k < flight.advice_count; k++) {
      char sentence[600];
      ox_words_advice(sentence, sizeof sentence, &c, &flight.advice[k]);
      assert_has(text, sentence, "description");
    }
    free(text);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_default_case_has_its_rows),
      cmocka_unit_test(every_demo_case_is_worked_out),
      cmocka_unit_test(random_cases_are_worked_out),
      cmocka_unit_test(dressed_up_cases_are_worked_out),
      cmocka_unit_test(a_leg_by_dme_ends_at_the_reading_of_the_figures),
      cmocka_unit_test(the_time_to_leave_is_a_clock_time),
      cmocka_unit_test(a_reversal_needs_no_circuit),
      cmocka_unit_test(climbs_and_changes_of_wind_have_rows),
      cmocka_unit_test(an_entry_flown_as_a_track_is_corrected_for_the_wind),
      cmocka_unit_test(triple_drift_is_that_of_the_manual),
      cmocka_unit_test(the_steady_hold_is_shown_as_solved),
      cmocka_unit_test(entries_are_those_of_the_sector_rule),
      cmocka_unit_test(the_entry_is_explained_with_its_angles),
      cmocka_unit_test(the_sectors_of_left_turns_are_mirrored_in_words),
      cmocka_unit_test(directions_are_magnetic_and_a_true_one_says_so),
      cmocka_unit_test(every_direction_says_which_north_where_they_differ),
      cmocka_unit_test(the_limits_name_their_band),
      cmocka_unit_test(where_no_hold_closes_the_reason_stands_in_the_rows),
      cmocka_unit_test(the_working_does_not_follow_the_locale),
      cmocka_unit_test(the_description_tells_the_picture),
      cmocka_unit_test(the_description_names_the_limiting_radial),
      cmocka_unit_test(the_description_repeats_every_advisory),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
