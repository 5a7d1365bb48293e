/* 30 000 texts that nobody would send: clearances with bytes flipped, cut, doubled and mixed. Each
 * is read without harm, and what comes out is whole (hostile.h). */
#include "ox_test.h"

#include "hostile.h"

enum { TEXTS = 30000 };

static const char *const seeds[] = {
    "hold SW of LARCH on the 240 radial, 1 min legs, L turns, EFC 1825z, maintain 5000, max 200 kt",
    "Cleared to the LARCH VOR, hold southwest on the two four zero radial, left turns, one and one "
    "half minute legs, expect further clearance one eight two five, maintain one zero thousand",
    "hold south of REDDI on V115, three mile legs, time now 57, EFC 20",
    "hold on R-222 of ZAG VOR between 15 and 20 DME, FL100, inbound track 042\u00b0, right-hand",
    "cleared to \"West \"\"End\"\"\", hold west, as published, EFC 18:25, 1\u00bd min, 1/2, 5,000 "
    "ft",
    "expect further clearance via V25 BIRCH, anticipate additional 30 minute en route delay at X",
    "minus five hundred feet, standard left turns, correction, QDM 060, bearing 240 from LARCH NDB",
    "eighteen hundred and twenty five thousand point five half hundred k R M D L N 9 9 9 9 9 9 9 9 "
    "9",
};
static const char *const inserts[] = {"\"",   "\u00bd", "\u2013", "9",    ",",         "/",
                                      " of ", " 1/2 ",  "-",      " fix", " thousand", " hold ",
                                      "\xff", "\xc2",   ":",      "."};

static void mutate_once(ox_random *random, char *text, size_t bytes) {
  size_t length = strlen(text), at = length ? (size_t)ox_random_below(random, (int)length) : 0;
  const char *insert = inserts[ox_random_below(random, 16)];
  switch (ox_random_below(random, 5)) {
  case 0:
    if (length) text[at] = (char)(1 + ox_random_below(random, 255));
    break;
  case 1:
    if (length) memmove(text + at, text + at + 1, length - at);
    break;
  case 2:
    if (length + strlen(insert) < bytes) {
      memmove(text + at + strlen(insert), text + at, length - at + 1);
      memcpy(text + at, insert, strlen(insert));
    }
    break;
  case 3:
    text[at] = '\0';
    break;
  default: { /* the tail of another text in place of this one's */
    const char *other = seeds[ox_random_below(random, 8)];
    size_t from = (size_t)ox_random_below(random, (int)strlen(other));
    snprintf(text + at, bytes - at, "%s", other + from);
  }
  }
}

static void no_mutated_text_does_harm(void **state) {
  (void)state;
  ox_random random = {2026};
  char text[1200];
  for (int i = 0, texts = ox_test_cases(TEXTS); i < texts; i++) {
    snprintf(text, sizeof text, "%s", seeds[ox_random_below(&random, 8)]);
    int changes = 1 + ox_random_below(&random, 8);
    for (int k = 0; k < changes; k++)
      mutate_once(&random, text, sizeof text);
    ox_clearance_options o = {.wording =
                                  ox_random_below(&random, 2) ? OX_WORDING_ICAO : OX_WORDING_US,
                              .now_min = ox_random_below(&random, 1441) - 1,
                              .equipment = OX_EQUIPMENT_NO_DISTANCE};
    const char *why = hostile_wrong(text, &o);
    if (why) print_error("%s: \"%s\"\n", why, text);
    assert_null(why);
  }
}

static void texts_of_one_thing_over_and_over_do_no_harm(void **state) {
  (void)state;
  static const char *const pieces[] = {
      "hold ", "9",         "1 ",     "\"",    "R",           "1/2 ",         "\u00b0",
      "@",     "A",         "north ", "left ", "400 radial ", "EFC 99 ",      "via a ",
      ",",     "max 1 kt ", "uh ",    "and ",  "x, ",         "hold N of A, "};
  ox_clearance_options o = ox_clearance_options_default();
  for (size_t i = 0; i < sizeof pieces / sizeof *pieces; i++) {
    char text[OX_CLEARANCE_BYTES_MAX + 1] = "";
    size_t step = strlen(pieces[i]);
    for (size_t n = 0; n + step <= OX_CLEARANCE_BYTES_MAX; n += step)
      memcpy(text + n, pieces[i], step + 1);
    const char *why = hostile_wrong(text, &o);
    if (why) print_error("%s: %s...\n", why, pieces[i]);
    assert_null(why);
  }
}

static void a_text_too_long_is_refused_and_changes_nothing(void **state) {
  (void)state;
  char text[OX_CLEARANCE_BYTES_MAX + 2];
  memset(text, 'a', sizeof text - 1);
  text[sizeof text - 1] = '\0';
  ox_clearance c;
  memset(&c, 0x5a, sizeof c);
  ox_clearance before;
  memcpy(&before, &c, sizeof c);
  assert_int_equal(ox_clearance_read(text, NULL, NULL, &c), OX_ERROR);
  assert_memory_equal(&before, &c, sizeof c);
  text[OX_CLEARANCE_BYTES_MAX] = '\0';
  assert_int_equal(ox_clearance_read(text, NULL, NULL, &c), OX_ADVISORY);
}

static void what_cannot_be_read_into_is_refused(void **state) {
  (void)state;
  ox_clearance c;
  ox_case faulty = ox_case_default();
  faulty.hold.inbound_deg = 400;
  assert_int_equal(ox_clearance_read(NULL, NULL, NULL, &c), OX_ERROR);
  assert_int_equal(ox_clearance_read("hold", NULL, NULL, NULL), OX_ERROR);
  assert_int_equal(ox_clearance_read("hold", &faulty, NULL, &c), OX_ERROR);
  faulty.hold.inbound_deg = 40;
  assert_int_equal(ox_clearance_read("hold", &faulty, NULL, &c), OX_ADVISORY);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(no_mutated_text_does_harm),
      cmocka_unit_test(texts_of_one_thing_over_and_over_do_no_harm),
      cmocka_unit_test(a_text_too_long_is_refused_and_changes_nothing),
      cmocka_unit_test(what_cannot_be_read_into_is_refused),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
