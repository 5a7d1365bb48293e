/* In German: what is said on the radio stays English word for word; briefing, cards, cues, reasons
 * and what a question is about are German, with the same figures. */
#include <math.h>

#include "ox_german.h"
#include "random_hold.h"

enum { CASES = 500 };

static ox_flight flight;

/* "5,000" and "5000 ft" are one figure. */
static void drop_thousands(char *text) {
  char *to = text;
  for (const char *at = text; *at; at++) {
    bool between = *at == ',' && at > text && isdigit((unsigned char)at[-1]);
    bool three = between && isdigit((unsigned char)at[1]) && isdigit((unsigned char)at[2]) &&
                 isdigit((unsigned char)at[3]);
    if (!three) *to++ = *at;
  }
  *to = '\0';
}

typedef struct {
  char *phrase[4]; /* said on the radio */
  char *briefing[2];
  ox_cue cues[OX_CUES];
  ox_step steps[OX_STEPS_MAX];
  size_t step_count;
} all_said;

static void say_all(const ox_case *c, const ox_say_options *o, all_said *out) {
  out->phrase[0] = ox_say_clearance(c, o);
  out->phrase[1] = ox_say_readback(c, o);
  out->phrase[2] = ox_say_entering(c, 61, o);
  out->phrase[3] = ox_say_leaving(c, 62, o);
  out->briefing[0] = ox_say_briefing(c, &flight, OX_BRIEFING_SHORT, o);
  out->briefing[1] = ox_say_briefing(c, &flight, OX_BRIEFING_LONG, o);
  ox_say_cues(c, &flight, o, out->cues);
  out->step_count = ox_say_steps(c, &flight, o, out->steps, OX_STEPS_MAX);
}

static void free_all(all_said *said) {
  for (int i = 0; i < 4; i++) free(said->phrase[i]);
  for (int i = 0; i < 2; i++) free(said->briefing[i]);
}

static void assert_said_german(char *english, const char *german, bool spoken) {
  drop_thousands(english);
  if (spoken)
    assert_string_not_equal(english, german);
  else
    assert_german(english, german);
}

/* The last cue has the report, which is English. */
static void compare(all_said *english, all_said *german, bool spoken) {
  for (int i = 0; i < 4; i++) assert_string_equal(english->phrase[i], german->phrase[i]);
  for (int i = 0; i < 2; i++) assert_said_german(english->briefing[i], german->briefing[i], spoken);
  for (int i = 0; i + 1 < OX_CUES; i++)
    assert_said_german(english->cues[i].text, german->cues[i].text, spoken);
  const char *report = strstr(english->cues[OX_CUES - 1].text, ": ");
  assert_non_null(report);
  assert_non_null(strstr(german->cues[OX_CUES - 1].text, report));
  assert_int_equal(english->step_count, german->step_count);
  for (size_t i = 0; i < english->step_count; i++)
    assert_said_german(english->steps[i].text, german->steps[i].text, spoken);
}

static void give_fuel(ox_case *c, ox_fuel_unit unit, double on_board, double flow_h) {
  c->fuel.unit = unit;
  c->fuel.on_board = on_board;
  c->fuel.flow_h = flow_h;
  c->fuel.alternate = 5.5;
  c->fuel.reserve = 4.5;
}

static void give_more(ox_random *random, ox_case *c, int i) {
  c->arrival.heading_deg = ox_random_between(random, 0, 360);
  c->wind_count = 1;
  c->wind[0] = (ox_wind_row){.from_deg = ox_random_between(random, 0, 360),
                             .kt = i % 5 == 0 ? 0 : ox_random_between(random, 0, 30)};
  if (i % 3 == 0) give_fuel(c, (ox_fuel_unit)(i % 4), 60 + i % 90, 9.5);
  if (i % 7 == 0) c->technique.sector = OX_SECTOR_TRACK;
}

static void people_read_german_and_the_radio_stays_english(void **state) {
  ox_random random = {23};
  int compared = 0;
  for (int i = 0, cases = ox_test_cases(CASES); i < cases; i++) {
    ox_case c = random_hold(&random, false);
    give_more(&random, &c, i);
    ox_say_options o = {.wording = i % 2 ? OX_WORDING_ICAO : OX_WORDING_US, .spoken = i % 8 == 3};
    if (ox_case_check(&c, NULL, 0) != 0 || ox_flight_solve(&c, &flight) == OX_ERROR) continue;
    all_said english, german;
    speak_english();
    say_all(&c, &o, &english);
    speak_german();
    say_all(&c, &o, &german);
    compare(&english, &german, o.spoken);
    free_all(&english);
    free_all(&german);
    compared++;
  }
  assert_true(compared > ox_test_least(CASES / 2));
}

static void figures_are_spoken_in_german(void **state) {
  ox_case c = ox_case_default();
  strcpy(c.hold.fix, "LARCH");
  c.hold.inbound_deg = 235;
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = 4.5;
  c.hold.altitude_ft = 3400;
  ox_say_options o = {.wording = OX_WORDING_US, .spoken = true};
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  speak_german();
  char *said = ox_say_briefing(&c, &flight, OX_BRIEFING_SHORT, &o);
  assert_non_null(strstr(said, "zwo drei fünf"));
  assert_non_null(strstr(said, "vier Komma fünf"));
  assert_non_null(strstr(said, "drei tausend vier hundert"));
  free(said);
}

static void fuel_has_its_plurals(void **state) {
  ox_case c = ox_case_default();
  static const struct {
    double on_board;
    const char *said;
  } rows[] = {{11.5, "innerhalb von 1 Minute verlassen."},
              {12.5, "innerhalb von 2 Minuten verlassen."}};
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  speak_german();
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    give_fuel(&c, OX_FUEL_USGAL, rows[i].on_board, 60);
    char *said = ox_say_briefing(&c, &flight, OX_BRIEFING_SHORT, NULL);
    if (!strstr(said, rows[i].said)) fail_msg("no \"%s\" in %s", rows[i].said, said);
    free(said);
  }
}

/* Each asks something, and together they ask every question there is. */
static const char *const doubtful[] = {
    "good morning",
    "hold on the 240 radial",
    "hold northeast",
    "hold southwest of LARCH on the 045 radial, EFC 1825",
    "hold southwest of LARCH, inbound course 060, outbound course 230, EFC 1825",
    "hold southwest of LARCH VOR on the 240 radial, inbound course 010, EFC 1825",
    "hold southwest of LARCH on the 240 radial, EFC 1825, time 1830",
    "hold southwest of LARCH on the 240 radial, EFC 1825, no delay expected",
    "hold southwest of LARCH on the 240 radial, 5 mile legs, between 10 and 20 DME, EFC 1825",
    "hold southwest of LARCH on the 240 radial, maintain 5000, maximum holding speed 260 knots",
    "cleared to BIRCH, hold at LARCH southwest on the 240 radial, EFC 1825",
    "hold southwest of LARCH on the 240 radial, right turns, left turns, EFC 1825",
    "hold southwest of LARCH on the 400 radial, EFC 1825",
    "hold southwest of LARCH on the 240 radial, EFC half past one",
    "hold on the 12 DME arc of LARCH, EFC 1825",
};

static void what_is_asked_stays_english_and_is_explained(void **state) {
  bool met[OX_ASK_KIND_COUNT] = {false};
  static ox_clearance english, german;
  ox_clearance_options o = ox_clearance_options_default();
  o.equipment = OX_EQUIPMENT_NO_DISTANCE;
  for (size_t i = 0; i < sizeof doubtful / sizeof *doubtful; i++) {
    char meaning[OX_SENTENCE_BYTES];
    speak_english();
    assert_int_equal(ox_clearance_read(doubtful[i], NULL, &o, &english), OX_ADVISORY);
    assert_false(ox_question_meaning(meaning, sizeof meaning, &english.questions[0]));
    assert_string_equal(meaning, "");
    speak_german();
    assert_int_equal(ox_clearance_read(doubtful[i], NULL, &o, &german), OX_ADVISORY);
    assert_int_equal(english.question_count, german.question_count);
    for (size_t k = 0; k < german.question_count; k++) {
      assert_string_equal(english.questions[k].text, german.questions[k].text);
      assert_true(ox_question_meaning(meaning, sizeof meaning, &german.questions[k]));
      assert_null(german_left_over(meaning));
      met[german.questions[k].kind] = true;
    }
    assert_int_equal(english.default_count, german.default_count);
    for (size_t k = 0; k < german.default_count; k++)
      assert_german(english.defaults[k].reason, german.defaults[k].reason);
  }
  for (int kind = 0; kind < OX_ASK_KIND_COUNT; kind++)
    if (!met[kind]) fail_msg("question %d was not asked", kind);
}

static void items_have_german_names(void **state) {
  for (int kind = 0; kind < OX_ITEM_KIND_COUNT; kind++) {
    speak_english();
    const char *english = ox_item_name((ox_item_kind)kind);
    speak_german();
    assert_string_not_equal(english, ox_item_name((ox_item_kind)kind));
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(people_read_german_and_the_radio_stays_english),
      cmocka_unit_test(figures_are_spoken_in_german),
      cmocka_unit_test(fuel_has_its_plurals),
      cmocka_unit_test(what_is_asked_stays_english_and_is_explained),
      cmocka_unit_test(items_have_german_names),
  };
  return cmocka_run_group_tests_name("german", tests, german_set_up, german_tear_down);
}
