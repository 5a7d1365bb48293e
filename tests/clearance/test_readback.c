/* A clearance that was heard is read back with what it said and nothing else (AIM 5-3-8 i: the
 * items, among them the radial, course, bearing, airway as given; altitude only if assigned). */
#include "ox_test.h"

#include "oxbow/clearance.h"

static ox_clearance heard;

static char *read_back(const char *words, const ox_case *base, ox_wording wording) {
  ox_clearance_options reading = ox_clearance_options_default();
  reading.wording = wording;
  assert_int_not_equal(ox_clearance_read(words, base, &reading, &heard), OX_ERROR);
  ox_say_options o = ox_say_options_default();
  o.wording = wording;
  o.heard = &heard;
  assert_true(ox_clearance_tells(&heard, &heard.result));
  return ox_say_readback(&heard.result, &o);
}

static const struct {
  const char *words, *us, *icao;
} rows[] = {
    {"hold southwest of LARCH on the 240 radial, left turns, EFC 1825",
     "Hold southwest of LARCH on the 240 radial, left turns, expect further clearance 1825.",
     "Hold at LARCH, inbound track 060 degrees, left hand pattern, expected approach time 1825."},
    {"cleared to LARCH, hold northeast on the 060 radial, 1 1/2 minute legs, maintain 7000, EFC "
     "1825",
     "Cleared to LARCH, hold northeast on the 060 radial, 1 1/2 minute legs, expect further "
     "clearance 1825, maintain 7,000.",
     "Hold at LARCH, 7000 feet, inbound track 240 degrees, leg time 1 1/2 minutes, expected "
     "approach time 1825."},
    {"hold southwest of LARCH intersection on the BIRCH 060 radial, right turns, EFC 1825",
     "Hold southwest of LARCH intersection on the BIRCH 060 radial, right turns, expect further "
     "clearance 1825.",
     "Hold at LARCH intersection, inbound track 060 degrees, right hand pattern, expected "
     "approach time 1825."},
    {"hold southwest of LARCH on the 060 inbound course, EFC 1825",
     "Hold southwest of LARCH on the 060 inbound course, expect further clearance 1825.",
     "Hold at LARCH, inbound track 060 degrees, expected approach time 1825."},
    {"hold southwest of LARCH on the 240 bearing, 5 mile legs, maximum holding airspeed 175 knots, "
     "EFC 1825",
     "Hold southwest of LARCH on the 240 bearing, 5 mile legs, expect further clearance 1825, "
     "maximum holding airspeed is 175 knots.",
     "Hold at LARCH, inbound track 060 degrees, 5 mile legs, maximum speed 175 knots, expected "
     "approach time 1825."},
    {"hold west of LARCH on V12, EFC 1825",
     "Hold west of LARCH on V12, expect further clearance 1825.",
     "Hold at LARCH, west on V12, expected approach time 1825."},
    {"hold west of LARCH on the localizer, EFC 1825",
     "Hold west of LARCH on the localizer, expect further clearance 1825.",
     "Hold at LARCH, west on the localizer, expected approach time 1825."},
    {"cleared to LARCH, hold west as published, EFC 1825",
     "Cleared to LARCH, hold west as published, expect further clearance 1825.",
     "Hold at LARCH, west as published, expected approach time 1825."},
    /* From memory: the present position is no name and nothing that one is cleared to. */
    {"hold at present position, southwest, inbound course 060, left turns, EFC 1825",
     "Hold at present position, southwest on the 060 inbound course, left turns, expect further "
     "clearance 1825.",
     "Hold at present position, inbound track 060 degrees, left hand pattern, expected approach "
     "time 1825."},
    {"hold at present position, inbound course 060, EFC 1825",
     "Hold at present position on the 060 inbound course, expect further clearance 1825.",
     "Hold at present position, inbound track 060 degrees, expected approach time 1825."},
    {"hold southwest on the 240 radial, EFC 1825",
     "Hold southwest on the 240 radial, expect further clearance 1825.",
     "Hold, inbound track 060 degrees, expected approach time 1825."},
};

/* The base says other things in every item: none of it may come into the words. */
static ox_case published_base(void) {
  ox_case c = ox_case_default();
  c.hold.turns = OX_TURNS_LEFT;
  c.hold.leg_s = 100;
  c.hold.limit_kias = 199;
  c.hold.altitude_ft = 9000;
  return c;
}

static void only_what_was_said_is_read_back(void **state) {
  (void)state;
  ox_case base = published_base();
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    for (int w = 0; w < 2; w++) {
      char *said = read_back(rows[i].words, &base, w ? OX_WORDING_ICAO : OX_WORDING_US);
      assert_non_null(said);
      assert_string_equal(said, w ? rows[i].icao : rows[i].us);
      free(said);
    }
}

/* The controller who hears the read-back understands the same hold. */
static void the_read_back_is_understood_as_what_was_heard(void **state) {
  (void)state;
  ox_case base = published_base();
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    char *said = read_back(rows[i].words, &base, OX_WORDING_US);
    ox_case first = heard.result;
    char *again = read_back(said, &base, OX_WORDING_US);
    assert_string_equal(again, said);
    assert_true(ox_case_equal(&heard.result, &first));
    free(said);
    free(again);
  }
}

static void words_of_another_hold_do_not_count(void **state) {
  (void)state;
  char *said = read_back(rows[0].words, NULL, OX_WORDING_US);
  free(said);
  ox_case changed = heard.result;
  changed.hold.altitude_ft = 6000; /* somebody assigned it after the words */
  assert_false(ox_clearance_tells(&heard, &changed));
  const ox_say_options o = {.heard = &heard};
  said = ox_say_readback(&changed, &o);
  assert_string_equal(said, "Cleared to LARCH, hold southwest on the 060 inbound course, left "
                            "turns, expect further clearance 1825, maintain 6,000.");
  free(said);
  assert_int_not_equal(ox_clearance_read("maintain 6000", NULL, NULL, &heard), OX_ERROR);
  assert_false(ox_clearance_tells(&heard, &heard.result));
}

/* A case that knows its station knows the radial, where the inbound leg leads to the station. */
static void a_hold_towards_its_station_is_said_on_the_radial(void **state) {
  (void)state;
  ox_case c = ox_case_default();
  strcpy(c.hold.fix, "LARCH");
  c.hold.inbound_deg = 60;
  c.hold.station.given = true;
  c.hold.station.radial_deg = 60;
  c.hold.station.nm = 15;
  char *said = ox_say_clearance(&c, NULL);
  assert_string_equal(said, "Cleared to LARCH, hold southwest on the 240 radial, maintain 5,000.");
  free(said);
  c.hold.station.radial_deg = 150; /* beside the line: no radial of it is the course */
  said = ox_say_clearance(&c, NULL);
  assert_string_equal(
      said, "Cleared to LARCH, hold southwest on the 060 inbound course, maintain 5,000.");
  free(said);
}

/* A case that holds where the aircraft is: the same words, and they are read as the same case. */
static void a_hold_where_the_aircraft_is_has_no_name(void **state) {
  (void)state;
  ox_case c = ox_case_default();
  strcpy(c.hold.fix, OX_PRESENT_POSITION);
  c.hold.inbound_deg = 60;
  c.hold.efc_min = 1105;
  for (int w = 0; w < 2; w++) {
    ox_say_options o = {.wording = w ? OX_WORDING_ICAO : OX_WORDING_US};
    if (w) c.hold.leg_s = 60; /* which the ICAO form names */
    char *said = ox_say_clearance(&c, &o);
    assert_string_equal(said, w ? "Hold at present position, 5000 feet, inbound track 060 degrees, "
                                  "right hand pattern, leg time 1 minute, expected approach time "
                                  "1825."
                                : "Hold at present position, southwest on the 060 inbound course, "
                                  "expect further clearance 1825, maintain 5,000.");
    assert_int_not_equal(ox_clearance_read(said, &c, NULL, &heard), OX_ERROR);
    assert_int_equal(heard.question_count + heard.ignored_count, 0);
    assert_true(ox_case_equal(&heard.result, &c));
    free(said);
  }
  char *report = ox_say_leaving(&c, 1105, NULL);
  assert_string_equal(report, "Leaving present position at 1825, 5,000.");
  free(report);
}

/* PANS-OPS (Doc 8168) times the outbound leg in still air, AIM 5-3-8 j4(a) the inbound one. */
static void a_leg_that_was_not_said_is_timed_by_the_rules_of_the_wording(void **state) {
  (void)state;
  static const struct {
    ox_wording wording;
    ox_timing timing;
    const char *source;
  } sides[] = {{OX_WORDING_US, OX_TIMING_INBOUND, "AIM 5-3-8 j4(a)"},
               {OX_WORDING_ICAO, OX_TIMING_OUTBOUND, "outbound in still air"}};
  for (size_t i = 0; i < 2; i++) {
    free(read_back(rows[0].words, NULL, sides[i].wording));
    assert_int_equal(heard.result.technique.timing, sides[i].timing);
    assert_close(heard.result.hold.leg_s, 0, 0, "the standard time");
    const char *reason = "";
    for (size_t k = 0; k < heard.default_count; k++)
      if (heard.defaults[k].kind == OX_ITEM_LEG) reason = heard.defaults[k].reason;
    assert_non_null(strstr(reason, sides[i].source));
  }
}

/* The form of Doc 4444 has the outbound time: 1 1/2 minutes above 14 000 ft (PANS-OPS). */
static void the_icao_form_names_the_standard_time(void **state) {
  (void)state;
  const ox_say_options o = {.wording = OX_WORDING_ICAO};
  ox_case c = ox_case_default();
  c.technique.timing = OX_TIMING_OUTBOUND;
  c.hold.altitude_ft = 15000;
  char *said = ox_say_clearance(&c, &o);
  assert_non_null(strstr(said, ", outbound time 1 1/2 minutes"));
  free(said);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(only_what_was_said_is_read_back),
      cmocka_unit_test(the_read_back_is_understood_as_what_was_heard),
      cmocka_unit_test(words_of_another_hold_do_not_count),
      cmocka_unit_test(a_hold_towards_its_station_is_said_on_the_radial),
      cmocka_unit_test(a_hold_where_the_aircraft_is_has_no_name),
      cmocka_unit_test(a_leg_that_was_not_said_is_timed_by_the_rules_of_the_wording),
      cmocka_unit_test(the_icao_form_names_the_standard_time),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
