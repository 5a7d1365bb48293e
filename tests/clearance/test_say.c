/* What is said, word for word, and what must be true of it for any flight. */
#include "random_hold.h"

#include <locale.h>

#include "oxbow/words.h"

static ox_flight flight;

/* Hold southwest of LARCH on the 240 radial, arriving from the northeast. */
static ox_case lesson(const char *fix) {
  ox_case c = ox_case_default();
  strcpy(c.hold.fix, fix);
  c.hold.inbound_deg = 60;
  c.hold.altitude_ft = 5000;
  c.hold.efc_min = 18 * 60 + 25;
  c.arrival.heading_deg = 265;
  return c;
}

static void assert_said(char *got, const char *want) {
  assert_non_null(got);
  assert_string_equal(got, want);
  free(got);
}

static ox_say_options us(bool spoken) {
  return (ox_say_options){.wording = OX_WORDING_US, .spoken = spoken};
}
static ox_say_options icao(bool spoken) {
  return (ox_say_options){.wording = OX_WORDING_ICAO, .spoken = spoken};
}

/* Order of items: AIM 5-3-8 i; patterns of the phrases: 7110.65 4-6-1, 4-6-4, AIM 5-3-8 j2(c). */
static void the_us_clearance_has_the_order_of_the_aim(void **state) {
  (void)state;
  ox_case c = lesson("LARCH VOR");
  ox_say_options o = us(false);
  assert_said(ox_say_clearance(&c, &o),
              "Cleared to LARCH VOR, hold southwest on the 240 radial, expect further clearance "
              "1825, maintain 5,000.");
  c.hold.turns = OX_TURNS_LEFT;
  c.hold.leg_s = 90;
  c.hold.limit_kias = 175;
  strcpy(c.hold.fix, "LARCH");
  assert_said(ox_say_clearance(&c, &o),
              "Cleared to LARCH, hold southwest on the 060 inbound course, 1 1/2 minute legs, left "
              "turns, expect further clearance 1825, maintain 5,000, maximum holding airspeed is "
              "175 knots.");
  strcpy(c.hold.fix, "LARCH NDB");
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = 7.5;
  c.hold.limit_kias = 0;
  c.hold.altitude_ft = 18000;
  assert_said(ox_say_clearance(&c, NULL),
              "Cleared to LARCH NDB, hold southwest on the 240 bearing, 7.5 mile legs, left turns, "
              "expect further clearance 1825, maintain FL180.");
}

/* Doc 4444 style sheet: fix, level, inbound track, hand, outbound time, EAT; its example A. */
static void the_icao_clearance_has_the_order_of_the_phrase_sheet(void **state) {
  (void)state;
  ox_case c = lesson("ZAG VOR");
  c.hold.inbound_deg = 218;
  c.hold.altitude_ft = 10000;
  c.hold.leg_s = 60;
  c.technique.timing = OX_TIMING_OUTBOUND;
  ox_say_options o = icao(false);
  assert_said(
      ox_say_clearance(&c, &o),
      "Hold at ZAG VOR, FL100, inbound track 218 degrees, right hand pattern, outbound time "
      "1 minute, expected approach time 1825.");
  o.transition_ft = 12000;
  assert_said(
      ox_say_clearance(&c, &o),
      "Hold at ZAG VOR, 10000 feet, inbound track 218 degrees, right hand pattern, outbound "
      "time 1 minute, expected approach time 1825.");
}

static void numbers_are_spoken_figure_by_figure(void **state) {
  (void)state;
  ox_case c = lesson("LARCH VOR");
  c.hold.leg_s = 90;
  c.hold.altitude_ft = 12500;
  c.hold.limit_kias = 195;
  ox_say_options o = us(true);
  assert_said(ox_say_clearance(&c, &o),
              "Cleared to LARCH VOR, hold southwest on the two fower zero radial, one and one half "
              "minute legs, expect further clearance one eight two fife, maintain one two thousand "
              "fife hundred, maximum holding airspeed is one niner fife knots.");
  c.hold.altitude_ft = 23000;
  o = icao(true);
  assert_said(ox_say_clearance(&c, &o),
              "Hold at LARCH VOR, flight level two tree zero, inbound track zero six zero degrees, "
              "right hand pattern, leg time one and one half minutes, maximum speed one niner fife "
              "knots, expected approach time one eight two fife.");
}

static void altitudes_keep_every_foot(void **state) {
  (void)state;
  static const struct {
    double ft;
    const char *us, *spoken;
  } rows[] = {{0, "0 feet", "zero feet"},
              {500, "500 feet", "fife hundred feet"},
              {5000, "5,000", "fife thousand"},
              {5025, "5,025", "fife zero two fife"},
              {17900, "17,900", "one seven thousand niner hundred"},
              {18000, "FL180", "flight level one eight zero"},
              {-500, "minus 500 feet", "minus fife hundred feet"}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = lesson("LARCH");
    c.hold.altitude_ft = rows[i].ft;
    char want[100];
    ox_say_options o = us(false);
    snprintf(want, sizeof want, "Leaving LARCH, %s.", rows[i].us);
    assert_said(ox_say_leaving(&c, -1, &o), want);
    o.spoken = true;
    snprintf(want, sizeof want, "Leaving LARCH, %s.", rows[i].spoken);
    assert_said(ox_say_leaving(&c, -1, &o), want);
  }
}

/* AIM 4-4-7 for the read-back with the call sign; 5-3-3 a1(f), (g) for the reports. */
static void readback_and_reports_carry_the_call_sign(void **state) {
  (void)state;
  ox_case c = lesson("LARCH VOR");
  ox_say_options o = us(false);
  o.callsign = "N345";
  assert_said(ox_say_clearance(&c, &o),
              "N345, cleared to LARCH VOR, hold southwest on the 240 radial, expect further "
              "clearance 1825, maintain 5,000.");
  assert_said(ox_say_readback(&c, &o),
              "Cleared to LARCH VOR, hold southwest on the 240 radial, expect further clearance "
              "1825, maintain 5,000, N345.");
  assert_said(ox_say_entering(&c, 18 * 60 + 3, &o),
              "N345, LARCH VOR at 1803, 5,000, entering the hold.");
  assert_said(ox_say_leaving(&c, 24 * 60 + 5, &o), "N345, leaving LARCH VOR at 0005, 5,000.");
  o.wording = OX_WORDING_ICAO;
  assert_said(ox_say_entering(&c, 18 * 60 + 3, &o), "N345, LARCH VOR 1803, 5000 feet, entering "
                                                    "hold.");
}

static void a_misleading_fix_stands_in_quotation_marks(void **state) {
  (void)state;
  static const struct {
    const char *fix, *said;
  } rows[] = {{"LARCH", "Cleared to LARCH, "},
              {"Lake Henry", "Cleared to Lake Henry, "},
              {"15 DME fix", "Cleared to the 15 DME fix, "},
              {"EFC 1825", "Cleared to \"EFC 1825\", "},
              {"West, 2", "Cleared to \"West, 2\", "},
              {"Inn \"B\"", "Cleared to \"Inn \"\"B\"\"\", "}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = lesson(rows[i].fix);
    char *said = ox_say_clearance(&c, NULL);
    assert_non_null(said);
    if (strncmp(said, rows[i].said, strlen(rows[i].said)) != 0)
      print_error("said \"%s\", wanted \"%s\"\n", said, rows[i].said);
    assert_int_equal(strncmp(said, rows[i].said, strlen(rows[i].said)), 0);
    free(said);
  }
}

static void a_case_without_a_fix_can_be_said(void **state) {
  (void)state;
  ox_case c = lesson("");
  ox_say_options o = icao(false);
  assert_said(ox_say_clearance(&c, NULL),
              "Hold southwest on the 060 inbound course, expect further "
              "clearance 1825, maintain 5,000.");
  assert_said(ox_say_clearance(&c, &o), "Hold, 5000 feet, inbound track 060 degrees, right hand "
                                        "pattern, leg time 1 minute, expected approach time 1825.");
  assert_said(ox_say_leaving(&c, -1, NULL), "Leaving the fix, 5,000.");
}

/* Heading 265 is 25 degrees right of the outbound course 240: parallel for right turns, teardrop
 * (offset, 30 degrees to the holding side: 270) for left ones: FIG 5-3-4, section 13 rule. */
static void the_short_briefing_fits_in_a_breath(void **state) {
  (void)state;
  ox_case c = lesson("LARCH");
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  assert_said(
      ox_say_briefing(&c, &flight, OX_BRIEFING_SHORT, NULL),
      "Hold southwest of LARCH, inbound 060, right turns, 1 minute legs, 5,000. Parallel "
      "entry, heading 240 for 1:00. Outbound heading 240 for 1:00. Expect further clearance "
      "1825.");
  c.hold.turns = OX_TURNS_LEFT;
  c.hold.efc_min = -1;
  ox_say_options o = icao(false);
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  assert_said(ox_say_briefing(&c, &flight, OX_BRIEFING_SHORT, &o),
              "Hold southwest of LARCH, inbound 060, left turns, 1 minute legs, 5000 feet. Sector "
              "2, offset entry, heading 270 for 1:00. Outbound heading 240 for 1:00. No expected "
              "approach time: ask for one.");
}

static void assert_has(const char *text, const char *words) {
  if (!strstr(text, words)) print_error("\"%s\" is not in \"%s\"\n", words, text);
  assert_non_null(strstr(text, words));
}

/* 14 CFR 91.185(c)(3); AIM 5-3-8 d, f, j2. */
static void the_long_briefing_gives_reasons_limits_and_the_caution(void **state) {
  (void)state;
  ox_case c = lesson("LARCH");
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  char *said = ox_say_briefing(&c, &flight, OX_BRIEFING_LONG, NULL);
  assert_non_null(said);
  assert_has(said, "The outbound course is 240; the holding side is southeast");
  assert_has(said, "heading 265, 25 degrees from the outbound course");
  assert_has(said, "Calm.");
  assert_has(said, "at most 200 knots; slow down from 3 minutes before the fix");
  assert_has(said, "Report reaching and leaving the fix.");
  assert_has(said, "at 1825 (14 CFR 91.185)");
  assert_has(said, ox_words_caution_line());
  free(said);
  ox_say_options o = icao(false);
  said = ox_say_briefing(&c, &flight, OX_BRIEFING_LONG, &o);
  assert_non_null(said);
  assert_has(said, "at most 230 knots");
  assert_has(said, "ICAO table; the advisories go by the one of the United States, 200 knots");
  assert_has(said, "the procedure of the State");
  assert_has(said, ox_words_caution_line());
  free(said);
}

static void the_cues_are_turn_time_twist_throttle_talk(void **state) {
  (void)state;
  static const char *const names[OX_CUES] = {"Turn", "Time", "Twist", "Throttle", "Talk"};
  static const char *const texts[OX_CUES] = {
      "Left to heading 240.", "Note the time; start the clock at wings level, 1:00.",
      "Set the inbound course 060.", "Hold 100 knots indicated, at most 200 knots.",
      "Report with the time: LARCH, 5,000, entering the hold."};
  ox_case c = lesson("LARCH");
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  ox_cue cues[OX_CUES];
  ox_say_cues(&c, &flight, NULL, cues);
  for (int i = 0; i < OX_CUES; i++) {
    assert_string_equal(cues[i].cue, names[i]);
    assert_string_equal(cues[i].text, texts[i]);
  }
  c.arrival.heading_deg = 60;
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  ox_say_cues(&c, &flight, NULL, cues);
  assert_string_equal(cues[0].text, "Right to heading 240.");
  assert_has(cues[1].text, "abeam the fix or at wings level, the later");
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = 4;
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  ox_say_cues(&c, &flight, NULL, cues);
  assert_string_equal(cues[1].text, "Note the time; the leg ends by distance, 4 miles.");
}

static void the_cards_of_a_parallel_entry_follow_the_flight(void **state) {
  (void)state;
  ox_case c = lesson("LARCH");
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  ox_step steps[OX_STEPS_MAX];
  size_t count = ox_say_steps(&c, &flight, NULL, steps, OX_STEPS_MAX);
  assert_true(count >= 7);
  assert_string_equal(steps[0].text,
                      "Turn left through 25 degrees to heading 240: over the fix, into the entry.");
  assert_string_equal(steps[1].text, "Fly heading 240 for 1:00: entry, away from the fix.");
  assert_int_equal(steps[0].turn, -1);
  assert_int_equal(steps[1].turn, 0);
  assert_close(steps[1].duration_s, 60, 1e-6, "entry leg");
  assert_int_equal(steps[count - 1].leg, OX_LEG_INBOUND);
  assert_angle_close(steps[count - 1].heading_deg, 60, 1e-6, "inbound heading");
  assert_int_equal(ox_say_steps(&c, &flight, NULL, steps, 2), 2);
  assert_int_equal(ox_say_steps(&c, &flight, NULL, steps, 0), 0);
}

/* Where the process writes a decimal comma, and where it does not: the words are the same. */
static void the_locale_changes_no_figure(void **state) {
  (void)state;
  static const char *const locales[] = {"C", "de_DE.UTF-8", "de_DE.utf8", "fr_FR.UTF-8"};
  ox_case c = lesson("LARCH");
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = 7.5;
  for (size_t i = 0; i < sizeof locales / sizeof *locales; i++) {
    setlocale(LC_ALL, locales[i]); /* one that is not installed leaves the one before */
    char *said = ox_say_clearance(&c, NULL);
    assert_non_null(said);
    assert_has(said, ", 7.5 mile legs, ");
    ox_clearance read;
    ox_clearance_read(said, NULL, NULL, &read);
    assert_close(read.result.hold.leg_nm, 7.5, 0, locales[i]);
    free(said);
  }
  setlocale(LC_ALL, "C");
}

static bool decent(const char *text) {
  return text && text[0] && !strstr(text, "nan") && !strstr(text, "inf ") &&
         text[strlen(text) - 1] == '.';
}

static void assert_all_decent(const ox_case *c, const ox_say_options *o) {
  char *texts[] = {ox_say_clearance(c, o),
                   ox_say_readback(c, o),
                   ox_say_entering(c, 61, o),
                   ox_say_leaving(c, -1, o),
                   ox_say_briefing(c, &flight, OX_BRIEFING_SHORT, o),
                   ox_say_briefing(c, &flight, OX_BRIEFING_LONG, o)};
  bool good = true;
  for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
    good = good && decent(texts[i]);
    free(texts[i]);
  }
  ox_cue cues[OX_CUES];
  ox_say_cues(c, &flight, o, cues);
  for (int i = 0; i < OX_CUES; i++)
    good = good && decent(cues[i].text);
  ox_step steps[OX_STEPS_MAX];
  size_t count = ox_say_steps(c, &flight, o, steps, OX_STEPS_MAX);
  for (size_t i = 0; i < count; i++)
    good =
        good && decent(steps[i].text) && isfinite(steps[i].heading_deg) && steps[i].duration_s > 0;
  assert_true(good);
}

static void any_flight_can_be_said_in_whole_sentences(void **state) {
  (void)state;
  ox_random random = {11};
  for (int i = 0, cases = ox_test_cases(1500); i < cases; i++) {
    ox_case c = random_hold(&random, i % 5 == 0);
    if (strpbrk(c.hold.fix, "\n")) continue;
    c.arrival.heading_deg = ox_random_between(&random, 0, 360);
    c.wind_count = 1;
    c.wind[0] = (ox_wind_row){.from_deg = ox_random_between(&random, 0, 360),
                              .kt = ox_random_between(&random, 0, 150)};
    assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
    ox_say_options o = i % 2 ? us(i % 3 == 0) : icao(i % 3 == 0);
    assert_all_decent(&c, &o);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_us_clearance_has_the_order_of_the_aim),
      cmocka_unit_test(the_icao_clearance_has_the_order_of_the_phrase_sheet),
      cmocka_unit_test(numbers_are_spoken_figure_by_figure),
      cmocka_unit_test(altitudes_keep_every_foot),
      cmocka_unit_test(readback_and_reports_carry_the_call_sign),
      cmocka_unit_test(a_misleading_fix_stands_in_quotation_marks),
      cmocka_unit_test(a_case_without_a_fix_can_be_said),
      cmocka_unit_test(the_short_briefing_fits_in_a_breath),
      cmocka_unit_test(the_long_briefing_gives_reasons_limits_and_the_caution),
      cmocka_unit_test(the_cues_are_turn_time_twist_throttle_talk),
      cmocka_unit_test(the_cards_of_a_parallel_entry_follow_the_flight),
      cmocka_unit_test(the_locale_changes_no_figure),
      cmocka_unit_test(any_flight_can_be_said_in_whole_sentences),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
