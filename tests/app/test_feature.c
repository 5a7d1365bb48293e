/* The parts of the picture that words mean, and what the page of words shows, as values. */
#include "ox_test.h"

#include <glib.h>

#include "ox_clearance_words.h"
#include "ox_feature.h"

static ox_flight flight;
static ox_clearance reading;

static ox_case hold(void) {
  ox_case c = ox_case_default();
  strcpy(c.hold.fix, "LARCH");
  c.hold.inbound_deg = 360;
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 120;
  c.arrival.heading_deg = 360;
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  return c;
}

/* North up, 100 px a mile, the fix at 500, 400. */
static const ox_viewport board = {{0, 0}, {500, 400}, 100, 0};

static void every_item_means_something_or_says_nothing(void **state) {
  for (int i = 0; i < OX_ITEM_KIND_COUNT; i++) {
    ox_feature feature = ox_feature_of_item((ox_item_kind)i);
    assert_true(feature >= OX_FEATURE_NONE && feature < OX_FEATURE_COUNT);
    assert_int_equal(*ox_feature_name(feature) == '\0', feature == OX_FEATURE_NONE);
    assert_true(ox_sense_of_item((ox_item_kind)i) < OX_SENSE_COUNT);
  }
  assert_int_equal(ox_feature_of_item(OX_ITEM_RADIAL), OX_FEATURE_COURSE);
  assert_int_equal(ox_feature_of_item(OX_ITEM_TURNS), OX_FEATURE_TURNS);
  assert_int_equal(ox_feature_of_item(OX_ITEM_EFC), OX_FEATURE_TIME);
  assert_string_equal(ox_feature_name((ox_feature)-1), "");
}

/* Still air, inbound north, right turns: the turn at the fix leads to the east, 1.273 NM away
 * (holding-standards 14.4), the inbound leg is 2 NM south of the fix. */
static void the_features_lie_where_the_hold_does(void **state) {
  ox_vec p[OX_FEATURE_POINTS_MAX];
  ox_case c = hold();
  assert_int_equal(ox_feature_points(OX_FEATURE_NONE, &c, &flight, p), 0);
  assert_int_equal(ox_feature_points(OX_FEATURE_FIX, &c, &flight, p), 1);
  assert_close(ox_vec_length(p[0]), 0, 0, "the fix");
  size_t count = ox_feature_points(OX_FEATURE_TURNS, &c, &flight, p);
  assert_true(count > 10);
  assert_close(p[count - 1].x, 1.273, 1e-3, "end of the turn");
  count = ox_feature_points(OX_FEATURE_LEG, &c, &flight, p);
  assert_close(p[0].y, -2, 1e-6, "begin of the inbound leg");
  assert_close(ox_vec_length(p[count - 1]), 0, 1e-9, "its end");
  count = ox_feature_points(OX_FEATURE_LIMITS, &c, &flight, p);
  assert_true(count > 40 && count <= OX_FEATURE_POINTS_MAX);
  memset(&flight, 0, sizeof flight);
  for (int i = 0; i < OX_FEATURE_COUNT; i++)
    assert_int_equal(ox_feature_points((ox_feature)i, &c, &flight, p), 0);
}

static void a_leg_said_outbound_is_the_outbound_one(void **state) {
  ox_vec p[OX_FEATURE_POINTS_MAX];
  ox_case c = hold();
  c.technique.timing = OX_TIMING_OUTBOUND;
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  size_t count = ox_feature_points(OX_FEATURE_LEG, &c, &flight, p);
  assert_close(p[0].x, 1.273, 1e-3, "abeam");
  assert_close(p[count - 1].x, 1.273, 1e-3, "flown straight out");
}

static void what_is_pointed_at_is_the_nearest(void **state) {
  ox_case c = hold();
  const struct {
    double x, y;
    ox_feature feature;
  } rows[] = {
      {500, 400, OX_FEATURE_FIX},    {506, 404, OX_FEATURE_FIX},
      {500, 500, OX_FEATURE_LEG},    {504, 560, OX_FEATURE_LEG}, /* on the course as well */
      {500, 632, OX_FEATURE_COURSE},                             /* beyond the leg */
      {563, 336, OX_FEATURE_TURNS},  {700, 100, OX_FEATURE_NONE},
      {450, 500, OX_FEATURE_NONE},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    assert_int_equal(ox_feature_at(&c, &flight, &board, false, (ox_vec){rows[i].x, rows[i].y}, 9),
                     rows[i].feature);
  /* In the air the track lies elsewhere; the course, where the fix is. */
  assert_int_equal(ox_feature_at(&c, &flight, &board, true, (ox_vec){563, 336}, 9),
                   OX_FEATURE_NONE);
  assert_int_equal(ox_feature_at(&c, &flight, &board, true, (ox_vec){500, 500}, 9),
                   OX_FEATURE_COURSE);
}

static const char doubtful[] =
    "good morning, hold northeast of LARCH VOR on the 240 radial, left turns";

static void words_are_found_by_their_bytes_and_explained(void **state) {
  assert_int_not_equal(ox_clearance_read(doubtful, NULL, NULL, &reading), OX_ERROR);
  assert_true(ox_clearance_understood(&reading));
  size_t radial = (size_t)(strstr(doubtful, "240") - doubtful);
  int item = ox_clearance_item_at(&reading, radial);
  assert_true(item >= 0);
  assert_int_equal(reading.items[item].kind, OX_ITEM_RADIAL);
  char *meaning = ox_item_meaning(&reading.items[item]);
  assert_string_equal(meaning, "radial: the inbound course");
  g_free(meaning);
  assert_int_equal(ox_clearance_item_at(&reading, 2), -1);
  assert_int_equal(ox_clearance_item_at(&reading, 100000), -1);
}

static void questions_say_how_grave_they_are(void **state) {
  assert_int_not_equal(ox_clearance_read(doubtful, NULL, NULL, &reading), OX_ERROR);
  char **questions = ox_clearance_questions(&reading);
  gboolean contradiction = FALSE, missing = FALSE;
  for (char **at = questions; *at; at++) {
    contradiction |= g_str_has_prefix(*at, "Contradiction. Ask: ");
    missing |= g_str_has_prefix(*at, "Missing. Ask: ");
  }
  assert_true(contradiction); /* northeast against the 240 radial */
  assert_true(missing);       /* no EFC */
  g_strfreev(questions);
  char **remarks = ox_clearance_remarks(&reading, doubtful);
  gboolean unused = FALSE;
  for (char **at = remarks; *at; at++)
    unused |= g_str_has_prefix(*at, "Not used: ") && strstr(*at, "good morning") != NULL;
  assert_true(unused);
  g_strfreev(remarks);
  for (int i = 0; i <= OX_ASK_KIND_COUNT; i++)
    assert_true(strlen(ox_ask_severity((ox_ask_kind)i)) > 3);
}

static void nothing_of_a_clearance_is_not_understood(void **state) {
  assert_int_not_equal(ox_clearance_read("good morning", NULL, NULL, &reading), OX_ERROR);
  assert_false(ox_clearance_understood(&reading));
}

static void every_text_is_said_in_both_wordings(void **state) {
  ox_case c = hold();
  c.arrival.fix_at_s = 3600;
  c.hold.efc_min = 80;
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  for (int i = 0; i < OX_SAID_COUNT; i++) {
    ox_say_options o = ox_say_options_default();
    assert_non_null(ox_said_names()[i]);
    for (int wording = 0; wording < 2; wording++) {
      o.wording = wording ? OX_WORDING_ICAO : OX_WORDING_US;
      o.spoken = wording;
      char *words = ox_said_words((ox_said)i, &c, &flight, &o);
      assert_true(strlen(words) > 20);
      assert_true(g_utf8_validate(words, -1, NULL));
      g_free(words);
    }
  }
  assert_null(ox_said_names()[OX_SAID_COUNT]);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_item_means_something_or_says_nothing),
      cmocka_unit_test(the_features_lie_where_the_hold_does),
      cmocka_unit_test(a_leg_said_outbound_is_the_outbound_one),
      cmocka_unit_test(what_is_pointed_at_is_the_nearest),
      cmocka_unit_test(words_are_found_by_their_bytes_and_explained),
      cmocka_unit_test(questions_say_how_grave_they_are),
      cmocka_unit_test(nothing_of_a_clearance_is_not_understood),
      cmocka_unit_test(every_text_is_said_in_both_wordings),
  };
  return cmocka_run_group_tests_name("feature", tests, NULL, NULL);
}
