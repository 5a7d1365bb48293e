/* Words from a case, a case from the words, and words again: nothing may change on the way. The
 * reader starts from a case in which everything that words carry is something else. */
#include "random_hold.h"

#include "oxbow/limits.h"

enum { CASES = 20000, ODD_CASES = 4000 };

/* The case with all that a clearance says replaced. */
static ox_case scrambled(ox_random *random, const ox_case *c) {
  ox_case other = *c;
  random_said(random, &other);
  strcpy(other.hold.fix, "SCRAMBLED");
  /* Words about time say nothing of miles, nor the other way round. */
  if (c->hold.leg_by == OX_LEG_BY_DISTANCE)
    other.hold.leg_s = c->hold.leg_s;
  else
    other.hold.leg_nm = c->hold.leg_nm;
  if (other.hold.leg_by == OX_LEG_BY_DISTANCE && other.hold.leg_nm == 0)
    other.hold.leg_by = OX_LEG_BY_TIME;
  return other;
}

/* Only a missing EFC and a speed above the table may be asked for in words made by the program. */
static bool no_doubt(const ox_clearance *read) {
  for (size_t i = 0; i < read->question_count; i++)
    if (read->questions[i].kind != OX_ASK_EFC &&
        read->questions[i].kind != OX_ASK_SPEED_ABOVE_LIMIT)
      return false;
  return read->ignored_count == 0;
}

static void print_failure(const char *words, const char *again, const ox_clearance *read) {
  print_error("said \"%s\", then \"%s\"\n", words, again);
  for (size_t i = 0; i < read->question_count; i++)
    print_error("  asks %s\n", read->questions[i].text);
  for (size_t i = 0; i < read->item_count; i++)
    print_error("  read %s %g %s\n", ox_item_name(read->items[i].kind), read->items[i].value,
                read->items[i].name);
}

/* The ICAO form has the outbound time as an item: the standard one comes back as what it is. */
static ox_case as_said(const ox_case *c, const ox_say_options *o) {
  ox_case said = *c;
  if (o->wording == OX_WORDING_ICAO && c->hold.leg_by == OX_LEG_BY_TIME && c->hold.leg_s == 0)
    said.hold.leg_s = ox_standard_leg_s(c->hold.altitude_ft);
  return said;
}

static bool trip_holds(ox_random *random, const ox_case *c, const ox_say_options *o) {
  char *words = ox_say_clearance(c, o);
  if (!words) return false;
  ox_case base = scrambled(random, c), want = as_said(c, o);
  ox_clearance read;
  bool good = ox_clearance_read(words, &base, NULL, &read) != OX_ERROR;
  char *again = good ? ox_say_clearance(&read.result, o) : NULL;
  good = good && again && ox_case_equal(&read.result, &want) && strcmp(words, again) == 0 &&
         no_doubt(&read);
  if (!good) print_failure(words, again ? again : "nothing", &read);
  free(words);
  free(again);
  return good;
}

static void assert_trips(uint64_t seed, int all, ox_wording wording, bool spoken, bool odd_fix) {
  ox_random random = {seed};
  ox_say_options o = {.wording = wording, .spoken = spoken};
  int wrong = 0, cases = ox_test_cases(all);
  for (int i = 0; i < cases && wrong < 5; i++) {
    ox_case c = random_hold(&random, odd_fix);
    assert_int_equal(ox_case_check(&c, NULL, 0), 0);
    wrong += !trip_holds(&random, &c, &o);
  }
  assert_int_equal(wrong, 0);
}

static void us_words_give_the_case_back(void **state) {
  (void)state;
  assert_trips(1, CASES, OX_WORDING_US, false, false);
}

static void icao_words_give_the_case_back(void **state) {
  (void)state;
  assert_trips(2, CASES, OX_WORDING_ICAO, false, false);
}

static void spoken_us_words_give_the_case_back(void **state) {
  (void)state;
  assert_trips(3, CASES, OX_WORDING_US, true, false);
}

static void spoken_icao_words_give_the_case_back(void **state) {
  (void)state;
  assert_trips(4, CASES, OX_WORDING_ICAO, true, false);
}

static void fixes_with_misleading_names_come_back_in_both_wordings(void **state) {
  (void)state;
  assert_trips(5, ODD_CASES, OX_WORDING_US, false, true);
  assert_trips(6, ODD_CASES, OX_WORDING_ICAO, false, true);
}

/* A case between the steps of the words moves to the nearest step, and then stays. */
static void what_words_cannot_carry_is_rounded_once(void **state) {
  (void)state;
  ox_random random = {7};
  for (int i = 0, cases = ox_test_cases(2000); i < cases; i++) {
    ox_case c = random_hold(&random, false);
    ox_say_options o = {.wording = i % 2 ? OX_WORDING_US : OX_WORDING_ICAO};
    c.hold.inbound_deg = ox_random_between(&random, 0, 360);
    c.hold.altitude_ft = ox_random_between(&random, 0, 45000);
    if (c.hold.leg_by == OX_LEG_BY_TIME) c.hold.leg_s = ox_random_between(&random, 10, 600);
    char *words = ox_say_clearance(&c, &o);
    ox_clearance read;
    assert_int_not_equal(ox_clearance_read(words, &c, NULL, &read), OX_ERROR);
    assert_angle_close(read.result.hold.inbound_deg, c.hold.inbound_deg, 0.5 + 1e-9, words);
    assert_close(read.result.hold.altitude_ft, c.hold.altitude_ft, 0.5 + 1e-9, words);
    assert_close(read.result.hold.leg_s, c.hold.leg_s, 0.5 + 1e-9, words);
    free(words);
    assert_true(trip_holds(&random, &read.result, &o));
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(us_words_give_the_case_back),
      cmocka_unit_test(icao_words_give_the_case_back),
      cmocka_unit_test(spoken_us_words_give_the_case_back),
      cmocka_unit_test(spoken_icao_words_give_the_case_back),
      cmocka_unit_test(fixes_with_misleading_names_come_back_in_both_wordings),
      cmocka_unit_test(what_words_cannot_carry_is_rounded_once),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
