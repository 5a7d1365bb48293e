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

static const char *const groups[] = {"Entry",          "Headings", "Times",   "Wind",
                                     "Turn and speed", "Limits",   "Circuits"};
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
  static const char *const files[] = {"demo", "outbound-timing", "high-and-fast", "adjusting"};
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

static void random_cases_are_worked_out(void **state) {
  ox_random r = {20240611};
  for (int i = 0; i < 3000; i++) {
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
             "with right turns 0–70° left of it is teardrop, 0–110° right of it parallel, the "
             "other 180° direct",
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
             "with left turns 0–70° right of it is teardrop, 0–110° left of it parallel", "entry");
  ox_working_clear(&w);
}

static void directions_are_magnetic_and_a_true_one_says_so(void **state) {
  ox_case c = ox_case_default();
  c.hold.inbound_deg = 240;
  c.variation_deg = -12;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 228, 10, OX_NORTH_TRUE}; /* along the course: 240 magnetic */
  assert_value(&c, "Inbound heading", "240 (no correction)");
  assert_value(&c, "Wind", "228 true (240 magnetic) at 10 kt");
  c.variation_deg = 0;
  c.wind[0].from_deg = 240;
  assert_value(&c, "Wind", "240 at 10 kt");
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
  for (int i = 0; i < 50; i++) {
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

static void the_description_repeats_every_advisory(void **state) {
  ox_random r = {99};
  for (int i = 0; i < 1000; i++) {
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
      cmocka_unit_test(triple_drift_is_that_of_the_manual),
      cmocka_unit_test(the_steady_hold_is_shown_as_solved),
      cmocka_unit_test(entries_are_those_of_the_sector_rule),
      cmocka_unit_test(the_entry_is_explained_with_its_angles),
      cmocka_unit_test(the_sectors_of_left_turns_are_mirrored_in_words),
      cmocka_unit_test(directions_are_magnetic_and_a_true_one_says_so),
      cmocka_unit_test(the_limits_name_their_band),
      cmocka_unit_test(where_no_hold_closes_the_reason_stands_in_the_rows),
      cmocka_unit_test(the_working_does_not_follow_the_locale),
      cmocka_unit_test(the_description_tells_the_picture),
      cmocka_unit_test(the_description_repeats_every_advisory),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
