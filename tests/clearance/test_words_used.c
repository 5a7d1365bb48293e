/* Which words were used for what, which were left aside, and which fields they set. */
#include "ox_test.h"

#include "oxbow/clearance.h"

static bool span_is(const char *text, ox_span span, const char *words) {
  bool same = span.length == strlen(words) && strncmp(text + span.at, words, span.length) == 0;
  if (!same) print_error("got \"%.*s\", wanted \"%s\"\n", (int)span.length, text + span.at, words);
  return same;
}

typedef struct {
  ox_item_kind kind;
  const char *words;
} used;

static void assert_used(const char *text, const used *wanted, size_t count) {
  ox_clearance c;
  assert_int_not_equal(ox_clearance_read(text, NULL, NULL, &c), OX_ERROR);
  assert_int_equal(c.item_count, count);
  for (size_t i = 0; i < count; i++) {
    assert_int_equal(c.items[i].kind, wanted[i].kind);
    assert_true(span_is(text, c.items[i].words, wanted[i].words));
  }
}

static void every_item_names_the_words_that_say_it(void **state) {
  (void)state;
  static const used wanted[] = {
      {OX_ITEM_LIMIT, "Cleared to the LARCH VOR"},
      {OX_ITEM_DIRECTION, "hold southwest of"},
      {OX_ITEM_FIX, "LARCH"},
      {OX_ITEM_RADIAL, "two four zero radial"},
      {OX_ITEM_LEG, "one and a half minute legs"},
      {OX_ITEM_TURNS, "left turns"},
      {OX_ITEM_EFC, "expect further clearance at one eight two five zulu"},
      {OX_ITEM_DELAY, "anticipate additional three zero minute delay at BIRCH"},
      {OX_ITEM_ALTITUDE, "maintain flight level one zero zero"},
      {OX_ITEM_SPEED, "maximum holding airspeed is 210 knots"},
      {OX_ITEM_NOW, "time now 1757"}};
  assert_used("Cleared to the LARCH VOR, hold southwest of LARCH on the two four zero radial, one "
              "and a half minute legs, left turns, expect further clearance at one eight two five "
              "zulu, anticipate additional three zero minute delay at BIRCH, maintain flight level "
              "one zero zero, maximum holding airspeed is 210 knots, time now 1757.",
              wanted, sizeof wanted / sizeof *wanted);
}

static void shorthand_is_cut_at_the_right_bytes(void **state) {
  (void)state;
  static const used wanted[] = {{OX_ITEM_DIRECTION, "hold SW"}, {OX_ITEM_RADIAL, "LARCH R-240"},
                                {OX_ITEM_LEG, "1\u00bdmin"},    {OX_ITEM_TURNS, "L"},
                                {OX_ITEM_EFC, "EFC 1825z"},     {OX_ITEM_ALTITUDE, "5,000ft"},
                                {OX_ITEM_SPEED, "200kt"}};
  assert_used("hold SW LARCH R-240/1\u00bdmin/L/EFC 1825z/5,000ft/200kt", wanted,
              sizeof wanted / sizeof *wanted);
}

static void words_of_no_use_are_listed_in_order(void **state) {
  (void)state;
  static const char *const text = "Cessna twelve alpha, uh hold southwest of LARCH on the 240 "
                                  "radial, have a nice day, EFC 1825 "
                                  "over and out";
  static const char *const wanted[] = {"Cessna twelve alpha, uh", "have a nice day", "out"};
  ox_clearance c;
  ox_clearance_read(text, NULL, NULL, &c);
  assert_int_equal(c.ignored_count, 3);
  for (size_t i = 0; i < 3; i++)
    assert_true(span_is(text, c.ignored[i], wanted[i]));
}

static void nothing_is_ignored_in_a_plain_clearance(void **state) {
  (void)state;
  ox_clearance c;
  ox_clearance_read("Hold southwest of the LARCH VOR on the 240 radial, and expect further "
                    "clearance at 1825.",
                    NULL, NULL, &c);
  assert_int_equal(c.ignored_count, 0);
}

static void a_corrected_item_is_only_there_once(void **state) {
  (void)state;
  static const char *const text = "hold southwest of LARCH on the 250 radial, correction, 240 "
                                  "radial, EFC 1825";
  ox_clearance c;
  assert_int_equal(ox_clearance_read(text, NULL, NULL, &c), OX_OK);
  assert_close(ox_clearance_find(&c, OX_ITEM_RADIAL)->value, 240, 0, "radial");
  assert_int_equal(c.item_count, 4);
  assert_int_equal(c.ignored_count, 1);
  assert_true(span_is(text, c.ignored[0], "250 radial"));
}

static bool sets(const ox_clearance *c, const char *key) {
  for (size_t i = 0; i < c->field_count; i++)
    if (strcmp(c->fields[i], key) == 0) return true;
  return false;
}

static void the_fields_set_are_named_by_their_keys(void **state) {
  (void)state;
  ox_clearance c;
  ox_clearance_read("hold southwest of LARCH on the 240 radial, 5 mile legs, EFC 1825, maintain "
                    "5000, max 200 kt",
                    NULL, NULL, &c);
  static const char *const keys[] = {"hold.fix",    "hold.inbound_deg", "hold.turns",
                                     "hold.leg.by", "hold.leg.nm",      "hold.altitude_ft",
                                     "hold.efc",    "hold.limit_kias"};
  for (size_t i = 0; i < sizeof keys / sizeof *keys; i++)
    assert_true(sets(&c, keys[i]));
  assert_int_equal(c.field_count, sizeof keys / sizeof *keys);
  ox_clearance_read("descend and maintain 4000", NULL, NULL, &c);
  assert_int_equal(c.field_count, 1);
  assert_true(sets(&c, "hold.altitude_ft"));
}

static bool left_open(const ox_clearance *c, ox_item_kind kind, const char *words) {
  for (size_t i = 0; i < c->default_count; i++)
    if (c->defaults[i].kind == kind && strstr(c->defaults[i].reason, words)) return true;
  return false;
}

/* AIM 5-3-8 j1 for the turns, j4(a) for the leg, i 2 for the fix. */
static void what_was_left_open_has_its_reason(void **state) {
  (void)state;
  ox_clearance c;
  ox_clearance_read("cleared to LARCH VOR, hold southwest on the 240 radial", NULL, NULL, &c);
  assert_true(left_open(&c, OX_ITEM_FIX, "limit is the holding fix"));
  assert_true(left_open(&c, OX_ITEM_TURNS, "right, the standard pattern (AIM 5-3-8 j1)"));
  assert_true(left_open(&c, OX_ITEM_LEG, "1 minute at or below 14 000 ft (AIM 5-3-8 j4(a))"));
  assert_true(left_open(&c, OX_ITEM_ALTITUDE, "the one of the case stays"));
  assert_true(left_open(&c, OX_ITEM_SPEED, "table for the altitude"));
  assert_false(left_open(&c, OX_ITEM_DIRECTION, ""));
  ox_clearance_read("hold at LARCH VOR on the 240 radial, left turns, 1 minute legs", NULL, NULL,
                    &c);
  assert_true(left_open(&c, OX_ITEM_DIRECTION, "radial is the outbound course"));
  assert_false(left_open(&c, OX_ITEM_TURNS, ""));
  assert_false(left_open(&c, OX_ITEM_LEG, ""));
  ox_clearance_read("hold west of LARCH on V115", NULL, NULL, &c);
  assert_true(left_open(&c, OX_ITEM_INBOUND, "airway stands on the chart"));
}

static void a_clash_points_at_both_items(void **state) {
  (void)state;
  ox_clearance c;
  ox_clearance_read("hold southwest of LARCH on the 045 radial, EFC 1825", NULL, NULL, &c);
  assert_int_equal(c.question_count, 1);
  assert_int_equal(c.items[c.questions[0].first].kind, OX_ITEM_DIRECTION);
  assert_int_equal(c.items[c.questions[0].second].kind, OX_ITEM_RADIAL);
}

static void names_longer_than_a_case_holds_are_cut_at_a_whole_character(void **state) {
  (void)state;
  char text[200] = "hold at \"";
  for (int i = 0; i < 40; i++)
    strcat(text, "\u00c4");
  strcat(text, "\", inbound 060");
  ox_clearance c;
  ox_clearance_read(text, NULL, NULL, &c);
  assert_int_equal(strlen(c.result.hold.fix), 62);
  ox_clearance_read("hold at \"123456789 123456789 123456789 123456789 123456789 123456789 1234\"",
                    NULL, NULL, &c);
  assert_int_equal(strlen(c.result.hold.fix), 63);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_item_names_the_words_that_say_it),
      cmocka_unit_test(shorthand_is_cut_at_the_right_bytes),
      cmocka_unit_test(words_of_no_use_are_listed_in_order),
      cmocka_unit_test(nothing_is_ignored_in_a_plain_clearance),
      cmocka_unit_test(a_corrected_item_is_only_there_once),
      cmocka_unit_test(the_fields_set_are_named_by_their_keys),
      cmocka_unit_test(what_was_left_open_has_its_reason),
      cmocka_unit_test(a_clash_points_at_both_items),
      cmocka_unit_test(names_longer_than_a_case_holds_are_cut_at_a_whole_character),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
