/* Clearances that do not fit, and what is asked: the kinds of questions, and one of them word for
 * word. Which clash is which follows from clearance.h; the speeds from AIM 5-3-8 j2 and the table
 * of Doc 8168 Vol I in holding speeds; what must be in a clearance from AIM 5-3-8 i. */
#include "clearance_rows.h"

typedef struct {
  const char *text;
  const char *asks;     /* letters of question_letters */
  const char *question; /* one of the questions in full */
} odd_row;

static bool has_question(const ox_clearance *c, const char *text) {
  for (size_t i = 0; i < c->question_count; i++)
    if (strcmp(c->questions[i].text, text) == 0) return true;
  return false;
}

static bool odd_row_holds(const odd_row *row, const ox_clearance_options *options) {
  ox_clearance c;
  ox_status status = ox_clearance_read(row->text, NULL, options, &c);
  char asked[64];
  asked_letters(&c, asked);
  bool good = status == OX_ADVISORY && same_letters(asked, row->asks) &&
              has_question(&c, row->question) && ox_case_check(&c.result, NULL, 0) == 0;
  if (good) return true;
  print_error("\"%s\": asks \"%s\", wanted \"%s\" with \"%s\"\n", row->text, asked, row->asks,
              row->question);
  for (size_t i = 0; i < c.question_count; i++)
    print_error("  %s\n", c.questions[i].text);
  return false;
}

static void assert_odd(const odd_row *rows, size_t count, const ox_clearance_options *options) {
  size_t wrong = 0;
  for (size_t i = 0; i < count; i++)
    wrong += !odd_row_holds(&rows[i], options);
  assert_int_equal(wrong, 0);
}
#define ASSERT_ODD(rows, options) assert_odd((rows), sizeof(rows) / sizeof *(rows), (options))
#define HOLD "hold southwest of LARCH on the 240 radial, "

static const odd_row direction_rows[] = {
    {"hold southwest on the 045 radial of LARCH, EFC 1825", "d",
     "Verify hold southwest of LARCH on the 045 radial; that places the hold northeast."},
    {"hold southwest of LARCH VOR on the 060 radial, EFC 1825", "d",
     "Verify hold southwest of LARCH VOR on the 060 radial; that places the hold northeast."},
    {"hold southwest of LARCH on the 090 radial, EFC 1825", "d",
     "Verify hold southwest of LARCH on the 090 radial; that places the hold east."},
    {"hold southwest of LARCH VOR on the 202 radial, EFC 1825", "d",
     "Verify hold southwest of LARCH VOR on the 202 radial; that places the hold south."},
    {"hold southwest of LARCH VOR on the 248 radial, EFC 1825", "d",
     "Verify hold southwest of LARCH VOR on the 248 radial; that places the hold west."},
    {"hold southwest of LARCH, inbound course 240, EFC 1825", "d",
     "Verify hold southwest of LARCH on inbound course 240; that places the hold northeast."},
    {"hold southwest of LARCH, outbound course 060, EFC 1825", "d",
     "Verify hold southwest of LARCH on outbound course 060; that places the hold northeast."},
    {"hold north of LARCH on the 090 course, EFC 1825", "d",
     "Verify hold north of LARCH on the 090 course; that places the hold west."},
    {"hold north of LARCH intersection on the ABC 090 radial, EFC 1825", "d",
     "Verify hold north of LARCH intersection on the 090 radial; that places the hold east."},
    {"hold west of LARCH NDB on the 060 bearing, EFC 1825", "d",
     "Verify hold west of LARCH NDB on the 060 bearing; that places the hold northeast."},
    {"hold west of the 15 DME fix on the 180 radial, EFC 1825", "d",
     "Verify hold west of 15 DME fix on the 180 radial; that places the hold south."},
};

static const odd_row course_rows[] = {
    {"hold southwest of LARCH, inbound 060, outbound 250, EFC 1825", "o",
     "Verify inbound course 060 and outbound course 250; they are not reciprocals."},
    {"hold at LARCH, inbound course 060, outbound course 060, EFC 1825", "o",
     "Verify inbound course 060 and outbound course 060; they are not reciprocals."},
    {"hold at LARCH, inbound 360, outbound 181, EFC 1825", "o",
     "Verify inbound course 360 and outbound course 181; they are not reciprocals."},
    {"hold southwest of LARCH on the 240 radial, inbound 100, EFC 1825", "dr",
     "Verify inbound course 100 on the 240 radial."},
    {"hold southwest of LARCH VOR on the 240 radial, inbound 070, EFC 1825", "dr",
     "Verify inbound course 070 on the 240 radial."},
    {"hold northeast of LARCH VOR on the 240 radial, inbound 240, EFC 1825", "r",
     "Verify inbound course 240 on the 240 radial."},
    {"hold at LARCH on the 090 course, inbound 060, EFC 1825", "r",
     "Verify inbound course 060 on the 090 course."},
    {"hold at LARCH NDB on the 240 bearing, inbound 090, EFC 1825", "r",
     "Verify inbound course 090 on the 240 bearing."},
};

static const odd_row missing_rows[] = {
    {"hold southwest on the 240 radial, EFC 1825", "F", "Request the holding fix."},
    {"hold at LARCH on the 240 radial, EFC 1825", "D", "Request direction of holding from LARCH."},
    {"hold at LARCH on the 240 course, EFC 1825", "D", "Request direction of holding from LARCH."},
    {"hold at the 15 DME fix on the 240 radial, EFC 1825", "D",
     "Request direction of holding from 15 DME fix."},
    {"hold southwest of LARCH, EFC 1825", "L", "Request the radial or inbound course at LARCH."},
    {"hold southwest of LARCH on the 240 radial", "E", "Request expect further clearance time."},
    {"hold at LARCH", "DLE", "Request the radial or inbound course at LARCH."},
    {"hold", "S", "Say again holding clearance."},
    {"cleared to LARCH", "DLE", "Request direction of holding from LARCH."},
    {"hold southwest", "FLE", "Request the holding fix."},
    {"hold southwest of LARCH as published", "E", "Request expect further clearance time."},
    {"left turns, hold, EFC 1825", "FDL", "Request direction of holding from the fix."},
    {HOLD "expect 20 minute delay", "E", "Request expect further clearance time."},
    {"", "S", "Say again holding clearance."},
    {"good morning to you all", "S", "Say again holding clearance."},
    {"the quick brown fox", "S", "Say again holding clearance."},
    {"roger", "S", "Say again holding clearance."},
};

static const odd_row time_rows[] = {
    {HOLD "EFC 1825, time now 1830", "p", "Verify expect further clearance 1825; time is 1830."},
    {HOLD "EFC 2355, time now 0010", "p", "Verify expect further clearance 2355; time is 0010."},
    {HOLD "time 1826, EFC 1825", "p", "Verify expect further clearance 1825; time is 1826."},
    {HOLD "EFC 0700, time now 1800", "p", "Verify expect further clearance 0700; time is 1800."},
    {HOLD "EFC 1825, no delay expected", "n",
     "Verify no delay expected, or expect further clearance 1825."},
    {HOLD "EFC 2561", "z", "Say again the expect further clearance time; 2561 cannot be."},
    {HOLD "EFC 1875", "z", "Say again the expect further clearance time; 1875 cannot be."},
    {HOLD "EFC 18255", "z", "Say again the expect further clearance time; 18255 cannot be."},
    {HOLD "EFC 75", "z", "Say again the expect further clearance time; 75 cannot be."},
    {HOLD "EFC 1825, EFC 1835", "t", "Verify expect further clearance time: 1825 or 1835?"},
};

static const odd_row value_rows[] = {
    {"hold southwest of LARCH on the 400 radial, EFC 1825", "z",
     "Say again the radial; 400 cannot be."},
    {"hold southwest of LARCH on the two four five zero radial, EFC 1825", "z",
     "Say again the radial; 2450 cannot be."},
    {"hold southwest of LARCH, inbound 361, EFC 1825", "z",
     "Say again the inbound course; 361 cannot be."},
    {"hold southwest of LARCH on the 240.5 radial, EFC 1825", "z",
     "Say again the radial; 240.5 cannot be."},
    {HOLD "20 minute legs, EFC 1825", "z", "Say again the leg length; 20 minutes cannot be."},
    {HOLD "5 second legs, EFC 1825", "z", "Say again the leg length; 5 seconds cannot be."},
    {HOLD "90 mile legs, EFC 1825", "z", "Say again the leg length; 90 miles cannot be."},
    {HOLD "maintain FL600, EFC 1825", "z", "Say again the altitude; FL600 cannot be."},
    {HOLD "maintain 99000, EFC 1825", "z", "Say again the altitude; FL990 cannot be."},
    {HOLD "max 20 knots, EFC 1825", "z", "Say again the speed; 20 knots cannot be."},
    {HOLD "max 900 knots, EFC 1825", "z", "Say again the speed; 900 knots cannot be."},
    {HOLD "standard left turns, EFC 1825", "z",
     "Say again the turns: standard is right, nonstandard is left."},
    {HOLD "nonstandard right turns, EFC 1825", "z",
     "Say again the turns: standard is right, nonstandard is left."},
    {"hold southwest between 15 and 15 DME on the ABC 240 radial, EFC 1825", "z",
     "Say again the DME limits; 15 miles cannot be."},
    {"hold southwest of LARCH on the 99999999999999999999999 radial, EFC 1825", "z",
     "Say again the radial; that figure cannot be."},
};

static const odd_row twice_rows[] = {
    {HOLD "left turns, right turns, EFC 1825", "t", "Verify turns: left or right?"},
    {HOLD "1 minute legs, 5 mile legs, EFC 1825", "t", "Verify leg length: 1 minute or 5 miles?"},
    {HOLD "250 radial, EFC 1825", "t", "Verify radial: 240 or 250?"},
    {HOLD "maintain 5000, maintain 6000, EFC 1825", "t", "Verify altitude: 5,000 or 6,000?"},
    {HOLD "max 175 knots, 180 knots, EFC 1825", "t", "Verify speed: 175 knots or 180 knots?"},
    {"hold southwest of LARCH on the 240 radial, hold at BIRCH, EFC 1825", "t",
     "Verify holding fix: LARCH or BIRCH?"},
    {"hold southwest of LARCH, northeast, on the 240 radial, EFC 1825", "t",
     "Verify direction of holding: southwest or northeast?"},
    {"cleared to BIRCH, hold southwest of LARCH on the 240 radial, EFC 1825", "x",
     "Verify hold at LARCH, clearance limit BIRCH."},
    {"hold southwest between 15 and 20 DME on the ABC 240 radial, 4 mile legs, EFC 1825", "g",
     "Verify the leg length between 15 and 20 DME."},
    {"hold southwest between 15 and 20 DME on the ABC 240 radial, 1 minute legs, EFC 1825", "g",
     "Verify the leg length between 15 and 20 DME."},
};

static const odd_row us_speed_rows[] = {
    {HOLD "maintain 5000, max 250 kt, EFC 1825", "s",
     "Verify maximum holding speed 250 knots at 5,000; the limit there is 200 knots."},
    {HOLD "maintain 6000, max 201 kt, EFC 1825", "s",
     "Verify maximum holding speed 201 knots at 6,000; the limit there is 200 knots."},
    {HOLD "maintain 14000, max 265 kt, EFC 1825", "s",
     "Verify maximum holding speed 265 knots at 14,000; the limit there is 230 knots."},
    {HOLD "FL230, speed 280 knots, EFC 1825", "s",
     "Verify maximum holding speed 280 knots at FL230; the limit there is 265 knots."},
};

static const odd_row icao_rows[] = {
    {"hold at LARCH, 14000 feet, inbound track 060, speed 231 knots, EAT 1825", "s",
     "Confirm maximum holding speed 231 knots at FL140; the limit there is 230 knots."},
    {"hold at LARCH, 5000 feet, inbound track 060, speed 240 knots, EAT 1825", "s",
     "Confirm maximum holding speed 240 knots at 5000 feet; the limit there is 230 knots."},
    {"hold at LARCH, FL200, inbound track 060, speed 250 knots, EAT 1825", "s",
     "Confirm maximum holding speed 250 knots at FL200; the limit there is 240 knots."},
    {"hold at LARCH, FL300, inbound track 060, speed 280 knots, EAT 1825", "s",
     "Confirm maximum holding speed 280 knots at FL300; the limit there is 265 knots."},
    {"hold at LARCH, FL100, inbound track 060", "E", "Request expected approach time."},
    {"hold at LARCH, FL100, EAT 1825", "DL", "Request the radial or inbound track at LARCH."},
    {"hold at LARCH, inbound track 060, outbound track 250, EAT 1825", "o",
     "Confirm inbound track 060 and outbound track 250; they are not reciprocals."},
    {"hold southwest of LARCH, inbound track 240, EAT 1825", "d",
     "Confirm hold southwest of LARCH on inbound track 240; that places the hold northeast."},
    {"hold at LARCH, inbound track 060, EAT 1825, time 1830", "p",
     "Confirm expected approach time 1825; time is 1830."},
};

static const odd_row no_distance_rows[] = {
    {HOLD "5 mile legs, EFC 1825", "u", "Unable mile legs, negative DME; request 1 minute legs."},
    {HOLD "5 mile legs, FL200, EFC 1825", "u",
     "Unable mile legs, negative DME; request 1 1/2 minute legs."},
    {"hold southwest of the 15 DME fix on the 240 radial, EFC 1825", "u",
     "Unable DME fix, negative DME; request 1 minute legs at another fix."},
};

static void the_direction_must_lie_along_the_line(void **state) {
  (void)state;
  ASSERT_ODD(direction_rows, NULL);
}

static void inbound_must_fit_outbound_and_radial(void **state) {
  (void)state;
  ASSERT_ODD(course_rows, NULL);
}

static void what_is_missing_is_requested(void **state) {
  (void)state;
  ASSERT_ODD(missing_rows, NULL);
}

static void times_in_the_past_and_times_that_cannot_be_are_asked_for(void **state) {
  (void)state;
  ASSERT_ODD(time_rows, NULL);
}

static void values_out_of_range_are_asked_for_and_not_used(void **state) {
  (void)state;
  ASSERT_ODD(value_rows, NULL);
}

static void two_different_values_are_asked_for(void **state) {
  (void)state;
  ASSERT_ODD(twice_rows, NULL);
}

static void a_speed_above_the_us_table_is_asked_for(void **state) {
  (void)state;
  ASSERT_ODD(us_speed_rows, NULL);
}

static void questions_come_in_the_icao_wording(void **state) {
  (void)state;
  ox_clearance_options icao = ox_clearance_options_default();
  icao.wording = OX_WORDING_ICAO;
  ASSERT_ODD(icao_rows, &icao);
}

static void miles_need_something_that_measures_them(void **state) {
  (void)state;
  ox_clearance_options o = ox_clearance_options_default();
  o.equipment = OX_EQUIPMENT_NO_DISTANCE;
  ASSERT_ODD(no_distance_rows, &o);
}

/* The refusals' twins: the same clearances where everything fits. */
static void nothing_is_asked_where_everything_fits(void **state) {
  (void)state;
  static const char *const fitting[] = {
      "hold southwest on the 225 radial of LARCH, EFC 1825",
      HOLD "EFC 1835, time now 1830",
      HOLD "EFC 0010, time now 2355",
      HOLD "EFC 1830, time now 1830",
      HOLD "maintain 6000, max 200 kt, EFC 1825",
      HOLD "maintain 6100, max 230 kt, EFC 1825",
      HOLD "maintain 14000, max 230 kt, EFC 1825",
      HOLD "maintain 14100, max 265 kt, EFC 1825",
      HOLD "FL180, maintain 18000, EFC 1825",
      "cleared to LARCH VOR, hold southwest of Larch on the 240 radial, EFC 1825",
      "hold southwest between 15 and 20 DME on the ABC 240 radial, 5 mile legs, EFC 1825",
      "hold southwest of LARCH on the 240 radial, inbound 063, EFC 1825",
      "hold northeast of LARCH on the 240 radial, inbound 240, EFC 1825",
      "hold at LARCH, inbound 060, outbound 240, EFC 1825",
  };
  ox_clearance_options o = ox_clearance_options_default();
  o.equipment = OX_EQUIPMENT_DISTANCE;
  for (size_t i = 0; i < sizeof fitting / sizeof *fitting; i++) {
    ox_clearance c;
    ox_status status = ox_clearance_read(fitting[i], NULL, &o, &c);
    if (status != OX_OK) print_error("\"%s\": %s\n", fitting[i], c.questions[0].text);
    assert_int_equal(status, OX_OK);
  }
}

/* Doc 8168 Vol I: 230 kt to 14 000 ft, 240 kt to 20 000 ft, 265 kt to 34 000 ft, then a Mach
 * number, which a speed in knots is not held against. */
static void speeds_up_to_the_icao_table_are_not_asked_for(void **state) {
  (void)state;
  static const char *const fitting[] = {
      "hold at LARCH, 14000 feet, inbound track 060, speed 230 knots, EAT 1825",
      "hold at LARCH, 14100 feet, inbound track 060, speed 240 knots, EAT 1825",
      "hold at LARCH, FL201, inbound track 060, speed 265 knots, EAT 1825",
      "hold at LARCH, FL350, inbound track 060, speed 300 knots, EAT 1825",
  };
  ox_clearance_options icao = ox_clearance_options_default();
  icao.wording = OX_WORDING_ICAO;
  for (size_t i = 0; i < sizeof fitting / sizeof *fitting; i++) {
    ox_clearance c;
    assert_int_equal(ox_clearance_read(fitting[i], NULL, &icao, &c), OX_OK);
  }
}

/* An altitude at which the aircraft of the case would be supersonic is not put into it. */
static void an_altitude_that_the_case_cannot_have_is_asked_for(void **state) {
  (void)state;
  ox_case base = ox_case_default();
  base.aircraft.ias_kt = 400;
  assert_int_equal(ox_case_check(&base, NULL, 0), 0);
  ox_clearance c;
  ox_clearance_read("hold at LARCH, inbound 060, FL450, EFC 1825", &base, NULL, &c);
  assert_int_equal(ox_case_check(&c.result, NULL, 0), 0);
  assert_close(c.result.hold.altitude_ft, base.hold.altitude_ft, 0, "altitude kept");
  assert_int_equal(c.question_count, 1);
  assert_int_equal(c.questions[0].kind, OX_ASK_OUT_OF_RANGE);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_direction_must_lie_along_the_line),
      cmocka_unit_test(inbound_must_fit_outbound_and_radial),
      cmocka_unit_test(what_is_missing_is_requested),
      cmocka_unit_test(times_in_the_past_and_times_that_cannot_be_are_asked_for),
      cmocka_unit_test(values_out_of_range_are_asked_for_and_not_used),
      cmocka_unit_test(two_different_values_are_asked_for),
      cmocka_unit_test(a_speed_above_the_us_table_is_asked_for),
      cmocka_unit_test(questions_come_in_the_icao_wording),
      cmocka_unit_test(miles_need_something_that_measures_them),
      cmocka_unit_test(nothing_is_asked_where_everything_fits),
      cmocka_unit_test(speeds_up_to_the_icao_table_are_not_asked_for),
      cmocka_unit_test(an_altitude_that_the_case_cannot_have_is_asked_for),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
