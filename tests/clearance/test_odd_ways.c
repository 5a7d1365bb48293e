/* Odd but real ways of saying it: clock times as they are spoken, arcs, and figures that belong to
 * something else than the hold. Where no source stands beside a row it is common practice, with
 * invented names; hours are UTC and of the 24-hour clock (AIM 4-2-12, from memory). */
#include "clearance_rows.h"

#define HOLD "hold southwest of LARCH on the 240 radial, "
#define EFC_ROW(what, words, efc, asks) \
  {what, HOLD words, "LARCH", 60, 'R', 0, 0, 0, efc, asks}

/* No time is known: two readings twelve hours apart stay open and are asked for. */
static const clearance_row hour_rows[] = {
    EFC_ROW("half past one", "expect further clearance at half past one", NONE, "h"),
    EFC_ROW("until", "hold until quarter past six", NONE, "h"),
    EFC_ROW("till", "hold till a quarter to seven", NONE, "h"),
    EFC_ROW("half one, Britain", "EFC half one", NONE, "h"),
    EFC_ROW("o'clock", "expect further clearance at two o'clock", NONE, "h"),
    EFC_ROW("twelve", "EFC half past twelve", NONE, "h"),
    EFC_ROW("UTC", "EFC half past one UTC", 130, ""),
    EFC_ROW("zulu", "EFC ten to one zulu", 50, ""),
    EFC_ROW("afternoon", "EFC half past one in the afternoon", 1330, ""),
    EFC_ROW("morning", "EFC half past one in the morning", 130, ""),
    EFC_ROW("evening", "EFC quarter to eight in the evening", 1945, ""),
    EFC_ROW("twelve in the morning", "EFC half past twelve in the morning", 30, ""),
    EFC_ROW("pm", "EFC 1:30 pm", 1330, ""),
    EFC_ROW("twelve pm", "EFC 12:15 pm", 1215, ""),
    EFC_ROW("zero one", "EFC half past zero one", 130, ""),
    EFC_ROW("thirteen", "EFC ten past thirteen", 1310, ""),
    EFC_ROW("before midnight", "EFC quarter to zero", 2345, ""),
    EFC_ROW("said again in figures", "EFC half past one, I say again, EFC 1330", 1330, ""),
    EFC_ROW("figures before", "EFC 0130, EFC half past one", 130, ""),
    EFC_ROW("said again otherwise", "EFC half past one, EFC 1430", NONE, "ht"),
    EFC_ROW("no such hour", "EFC half past thirty", NONE, "z"),
    EFC_ROW("local, 7110.65 2-4-17 (from memory)", "expect further clearance 1830 local", NONE,
            "z"),
};

/* The time is 1800: the next such time. */
static const clearance_row next_rows[] = {
    EFC_ROW("half past one", "expect further clearance at half past one", 130, ""),
    EFC_ROW("half past six", "expect further clearance at half past six", 1830, ""),
    EFC_ROW("six o'clock is now", "EFC six o'clock", 1800, ""),
    EFC_ROW("ten to six", "EFC ten minutes to six", 550, ""),
    EFC_ROW("top of the hour", "EFC at the top of the hour", 1800, ""),
    EFC_ROW("bottom of the hour", "EFC at the bottom of the hour", 1830, ""),
    EFC_ROW("on the hour", "hold until on the hour", 1800, ""),
    EFC_ROW("half past", "EFC half past", 1830, ""),
    EFC_ROW("half past the hour", "expect further clearance half past the hour", 1830, ""),
    EFC_ROW("after the hour", "expect further clearance at 20 after the hour", 1820, ""),
    EFC_ROW("quarter to the hour", "EFC quarter to the hour", 1845, ""),
    EFC_ROW("past the hour", "EFC 25 minutes past the hour", 1825, ""),
    EFC_ROW("half an hour", "expect further clearance in half an hour", 1830, ""),
    EFC_ROW("an hour", "EFC in an hour", 1900, ""),
    EFC_ROW("an hour and a half", "expect further clearance in an hour and a half", 1930, ""),
    EFC_ROW("two hours", "expect further clearance in two hours", 2000, ""),
    EFC_ROW("hours and minutes", "EFC in one hour and ten minutes", 1910, ""),
    EFC_ROW("thirteen hours", "EFC in thirteen hours", NONE, "z"),
};

/* A station or a point of that name: where nothing tells, it is asked for. */
static const clearance_row dme_rows[] = {
    {"after the radial", "hold west of LARCH on the 270 radial, 15 DME, left turns, EFC 1825", "LARCH",
     90, 'L', 0, 0, 0, 1825, "t"},
    {"at", "hold west of LARCH on the 270 radial at 15 DME, EFC 1825", "LARCH", 90, 'R', 0, 0, 0,
     1825, "t"},
    {"towards it", "hold east of LARCH on the 270 radial, 30 DME, EFC 1825", "LARCH", 270, 'R', 0, 0,
     0, 1825, "t"},
    {"limits", "hold east of LARCH on R-270, 30-20 DME, EFC 1825", "LARCH", 270, 'R', -10, 0, 0, 1825,
     "t"},
    {"limits of a station", "hold east of LARCH VOR on R-270, 30-20 DME, EFC 1825",
     "LARCH VOR 30 DME", 270, 'R', -10, 0, 0, 1825, ""},
    {"limits from a station",
     "hold southeast on the 310 radial between 30 and 20 DME of LARCH, EFC 1825", "LARCH 30 DME", 310,
     'R', -10, 0, 0, 1825, ""},
    {"a station", "hold west of LARCH VORTAC on the 270 radial, 15 DME, EFC 1825",
     "LARCH VORTAC 15 DME", 90, 'R', 0, 0, 0, 1825, ""},
    {"a point", "hold west of LARCH intersection on the 270 radial, 15 DME, EFC 1825",
     "LARCH intersection", 90, 'R', 0, 0, 0, 1825, ""},
};

/* Of radials that cross, the one that is said to hold on. */
static const clearance_row crossing_rows[] = {
    {"the second",
     "hold southeast of the intersection of the ABC 130 radial and the DEF 150 radial on the DEF 150 "
     "radial, EFC 2215",
     "ABC 130/DEF 150", 330, 'R', 0, 0, 0, 2215, ""},
    {"the first",
     "hold northeast of the intersection of the DEF 040 radial and the ABC 060 radial, on the DEF 040 "
     "radial, EFC 2215",
     "DEF 040/ABC 060", 220, 'R', 0, 0, 0, 2215, ""},
    {"the other first",
     "hold northeast of the intersection of the DEF 040 radial and the ABC 060 radial, on the ABC 060 "
     "radial, EFC 2215",
     "DEF 040/ABC 060", 240, 'R', 0, 0, 0, 2215, ""},
    {"before it", "hold north of the ABC 090 radial DEF 360 radial intersection on the DEF 360 radial, "
     "EFC 2215",
     "ABC 090/DEF 360", 180, 'R', 0, 0, 0, 2215, ""},
    {"neither",
     "hold southeast of the intersection of the ABC 130 radial and the DEF 150 radial, EFC 2215",
     "ABC 130/DEF 150", 310, 'R', 0, 0, 0, 2215, "t"},
    {"of a name", "hold south of LARCH intersection, ABC 090 radial and DEF 180 radial, on the DEF 180 "
     "radial, EFC 2215",
     "LARCH intersection", 360, 'R', 0, 0, 0, 2215, ""},
};

static const clearance_row place_rows[] = {
    {"miles ahead",
     "hold 20 miles ahead of your present position, inbound course 300, left turns, EFC 1900",
     "20 NM AHEAD", 300, 'L', 0, 0, 0, 1900, ""},
    {"miles ahead, short", "hold 5 miles ahead, inbound course 300, EFC 1900", "5 NM AHEAD", 300, 'R', 0,
     0, 0, 1900, ""},
    {"minutes ahead", "hold two minutes ahead of your present position, inbound 300, EFC 1900",
     "2 MIN AHEAD", 300, 'R', 0, 0, 0, 1900, ""},
    {"too far", "hold 500 miles ahead, inbound course 300, EFC 1900", NULL, 300, 'R', 0, 0, 0, 1900,
     "Fz"},
    {"letters behind", "hold at 4230N 07348W, inbound course 090, EFC 1900",
     "N42°30.000' W073°48.000'", 90, 'R', 0, 0, 0, 1900, ""},
    {"letters before", "hold west of N42 30 W073 48, inbound course 090, EFC 1900",
     "N42°30.000' W073°48.000'", 90, 'R', 0, 0, 0, 1900, ""},
    {"packed", "hold at 4230N07348W, inbound course 090, EFC 1900", "N42°30.000' W073°48.000'", 90, 'R',
     0, 0, 0, 1900, ""},
    {"as it is said",
     "hold at 42 degrees 30 north 073 degrees 48 west, inbound course 090, EFC 1900",
     "N42°30.000' W073°48.000'", 90, 'R', 0, 0, 0, 1900, ""},
    {"figure by figure",
     "hold at four two degrees three zero minutes north, zero seven three degrees four eight minutes "
     "west, inbound course 090, EFC 1900",
     "N42°30.000' W073°48.000'", 90, 'R', 0, 0, 0, 1900, ""},
    {"south and east", "hold at 3355S 15110E, inbound course 340, EFC 1900",
     "S33°55.000' E151°10.000'", 340, 'R', 0, 0, 0, 1900, ""},
    {"a point in a name", "hold west of Sandy Point VOR on the 270 radial, EFC 1825", "Sandy Point VOR",
     90, 'R', 0, 0, 0, 1825, ""},
    {"a point first", "hold west of Point Marsh VOR on the 270 radial, EFC 1825", "Point Marsh VOR", 90,
     'R', 0, 0, 0, 1825, ""},
    {"a point of a number", "hold southwest of LARCH on the 240 radial, one point five minute legs, EFC "
     "1825",
     "LARCH", 60, 'R', 90, 0, 0, 1825, ""},
};

/* One slip in a word; names have capitals. */
static const clearance_row slip_rows[] = {
    {"several",
     "Hold soutwest of LARCH VOR on the 240 radail, left turns, expect futher clearence 1825",
     "LARCH VOR", 60, 'L', 0, 0, 0, 1825, ""},
    {"too short to be sure", "Hold southwest of LARCH VOR on the 240 radial, lefft turns, EFC 1825",
     "LARCH VOR", 60, 'R', 0, 0, 0, 1825, "z"},
    {"left out", "hold southwst of LARCH on the 240 radial, EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825,
     ""},
    {"put in", "hold at LARCH, innbound course 060, EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"a name", "hold at Radail, inbound course 060, EFC 1825", "Radail", 60, 'R', 0, 0, 0, 1825, ""},
    {"no capitals", "hold at radail, inbound course 060, efc 1825", "RADAIL", 60, 'R', 0, 0, 0, 1825,
     ""},
};

static const clearance_row arc_rows[] = {
    {"an arc of a station", "hold on the 12 DME arc of LARCH, EFC 1825", NULL, 0, 'R', 0, 0, 0,
     1825, "aDL"},
    {"an arc", "hold on the 12 DME arc, EFC 1825", NULL, 0, 'R', 0, 0, 0, 1825, "aDL"},
    {"no figure", "hold on the arc, EFC 1825", NULL, 0, 'R', 0, 0, 0, 1825, "aDL"},
    {"station first", "hold west on the LARCH 12 DME arc, EFC 1825", NULL, 90, 'R', 0, 0, 0, 1825,
     "aL"},
    {"a limit is no way out", "cleared to LARCH, hold on the 12 mile arc, EFC 1825", NULL, 0, 'R',
     0, 0, 0, 1825, "aDL"},
    {"proceed", "proceed to the LARCH 12 DME arc and hold, EFC 1825", NULL, 0, 'R', 0, 0, 0, 1825,
     "aDL"},
    {"no such arc", "hold west on the 300 DME arc, inbound 090, EFC 1825", NULL, 90, 'R', 0, 0, 0,
     1825, "Fz"},
    {"an arc on the way", "join the 12 DME arc, hold at ALDER west on the 270 radial, EFC 1825",
     "ALDER", 90, 'R', 0, 0, 0, 1825, ""},
    {"an arc in the routing",
     "cleared to ALDER via the LARCH 12 DME arc, hold west on the 270 radial, EFC 1825", "ALDER",
     90, 'R', 0, 0, 0, 1825, ""},
    {"a fix on the arc", "hold west of ALDER on the 12 DME arc of LARCH, inbound 090, EFC 1825",
     "ALDER", 90, 'R', 0, 0, 0, 1825, ""},
    {"no arc", "hold west of the LARCH 12 DME fix on the 270 radial, EFC 1825", "LARCH 12 DME", 90,
     'R', 0, 0, 0, 1825, ""},
};

/* Figures beside the hold that must not get into it, and two ways of saying a DME fix. */
static const clearance_row beside_rows[] = {
    EFC_ROW("traffic", "EFC 1825, traffic two o'clock, 5 miles", 1825, ""),
    EFC_ROW("traffic, no pause", "EFC 1825, traffic is at your two o'clock 5 miles", 1825, ""),
    EFC_ROW("traffic by miles", "EFC 1825, traffic 5 miles ahead", 1825, ""),
    EFC_ROW("transition level", "EFC 1825, transition level 70", 1825, ""),
    EFC_ROW("transition altitude", "EFC 1825, transition altitude 5000 feet", 1825, ""),
    EFC_ROW("limiting outbound distance, Doc 8168 (from memory)",
            "EFC 1825, limiting outbound distance 12 DME", 1825, ""),
    EFC_ROW("outbound limit", "EFC 1825, outbound limit 12 DME", 1825, ""),
    EFC_ROW("a crossing, 7110.65 4-5-7 (from memory)", "EFC 1825, cross LARCH at or above 6000",
            1825, ""),
    EFC_ROW("a crossing at a level", "EFC 1825, cross LARCH at FL80", 1825, ""),
    {"a point so many miles from a station",
     "hold northeast of a point 15 miles from ABC on the ABC 240 radial, EFC 1825", "ABC 15 DME",
     240, 'R', 0, 0, 0, 1825, ""},
    {"hold at a point", "hold at a point 10 miles from LARCH on the 270 radial, west, EFC 1825",
     "LARCH 10 DME", 90, 'R', 0, 0, 0, 1825, ""},
    {"limits with their letter",
     "hold west on the LARCH 270 radial between D10 and D20, EFC 1825", "LARCH 10 DME", 90, 'R',
     -10, 0, 0, 1825, ""},
    {"a fix named like a part of a time", "hold north of TOP on the 360 radial, EFC 1825",
     "TOP", 180, 'R', 0, 0, 0, 1825, ""},
    {"a fix named like an arc", "hold at ARC, inbound 090, EFC 1825", "ARC", 90, 'R', 0, 0, 0, 1825,
     ""},
    {"still in the hold", "continue holding, EFC now 1915", NULL, 0, 'K', KEPT_LEG, 0, KEPT, 1915,
     ""},
    {"remain", "remain in the hold, EFC now 1915", NULL, 0, 'K', KEPT_LEG, 0, KEPT, 1915, ""},
    {"continue, but elsewhere", "continue holding at LARCH southwest on the 240 radial, EFC 1915",
     "LARCH", 60, 'R', 0, 0, 0, 1915, ""},
    {"a leg made longer is no leg of that length",
     "shorten your outbound leg by 30 seconds, EFC now 1915", NULL, 0, 'K', KEPT_LEG, 0, KEPT,
     1915, ""},
    {"a leg made so long", "extend the outbound leg to two minutes", NULL, 0, 'K', 120, 0, KEPT,
     KEPT, ""},
};

static void assert_asks(const char *text, const ox_clearance_options *o, const char *question) {
  ox_clearance c;
  assert_int_equal(ox_clearance_read(text, NULL, o, &c), OX_ADVISORY);
  assert_string_equal(c.questions[0].text, question);
}

static void both_hours_are_named(void **state) {
  (void)state;
  ox_clearance_options icao = {.wording = OX_WORDING_ICAO, .now_min = -1};
  assert_asks(HOLD "EFC half past one", NULL, "Verify expect further clearance 0130 or 1330.");
  assert_asks(HOLD "EFC quarter to one", NULL, "Verify expect further clearance 0045 or 1245.");
  assert_asks(HOLD "EAT half past one", &icao, "Confirm expected approach time 0130 or 1330.");
  assert_asks(HOLD "EFC 1830 local", NULL,
              "Say again the expect further clearance time in UTC; 1830 is local.");
  assert_asks("hold on the 12 DME arc of LARCH, EFC 1825", NULL,
              "Say again the holding fix; an arc is no fix.");
}

/* Without the time now, the next such time after the fix is reached. */
static void the_time_over_the_fix_decides(void **state) {
  (void)state;
  static const struct {
    const char *text;
    int fix_at_s, efc_min;
  } rows[] = {
      {HOLD "EFC half past one", 13 * 3600, 13 * 60 + 30},
      {HOLD "EFC half past one", 0, 90},
      {HOLD "EFC half past one", 13 * 3600 + 30 * 60, 13 * 60 + 30},
      {HOLD "EFC half past one", 13 * 3600 + 30 * 60 + 1, 90}, /* just missed */
      {HOLD "EFC half past one, time now 0100", 13 * 3600, 90}, /* the time now goes before */
      {HOLD "EFC 25", 18 * 3600 + 600, 18 * 60 + 25},
      {HOLD "EFC top of the hour", 86399, 0},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case base = ox_case_default();
    base.arrival.fix_at_s = rows[i].fix_at_s;
    ox_clearance c;
    assert_int_equal(ox_clearance_read(rows[i].text, &base, NULL, &c), OX_OK);
    if (c.result.hold.efc_min != rows[i].efc_min) print_error("row %zu\n", i);
    assert_int_equal(c.result.hold.efc_min, rows[i].efc_min);
  }
}

/* Every minute of the day in spoken words, at every full hour of now: never before now, and the
 * minute and the hour on the face of the clock are those that were said. */
static void spoken_times_hold_for_every_minute(void **state) {
  (void)state;
  for (int hour = 1; hour <= 12; hour++) {
    for (int minute = 1; minute < 60; minute++) {
      int now = hour * 97 % 24 * 60 + minute * 7 % 60;
      ox_clearance_options o = {.now_min = now};
      char text[120];
      snprintf(text, sizeof text, HOLD "EFC %d past %d", minute, hour);
      ox_clearance c;
      assert_int_not_equal(ox_clearance_read(text, NULL, &o, &c), OX_ERROR);
      int efc = c.result.hold.efc_min;
      assert_int_equal(efc % 720, hour % 12 * 60 + minute);
      assert_true((efc - now + 1440) % 1440 < 720);
      snprintf(text, sizeof text, HOLD "EFC %d to %d", minute, hour);
      assert_int_not_equal(ox_clearance_read(text, NULL, &o, &c), OX_ERROR);
      assert_int_equal(c.result.hold.efc_min % 720, (hour * 60 - minute + 720) % 720);
    }
  }
}

static void the_words_of_a_time_are_one_item(void **state) {
  (void)state;
  static const char *const text = HOLD "expect further clearance at half past one in the afternoon";
  ox_clearance c;
  assert_int_equal(ox_clearance_read(text, NULL, NULL, &c), OX_OK);
  const ox_item *efc = ox_clearance_find(&c, OX_ITEM_EFC);
  assert_non_null(efc);
  assert_int_equal(efc->words.at, strlen(HOLD));
  assert_int_equal(efc->words.length, strlen(text) - strlen(HOLD));
  assert_int_equal(c.ignored_count, 0);
}

static const ox_clearance_options at_1800 = {.now_min = 18 * 60};

int main(void) {
  const struct CMUnitTest tests[] = {
      CLEARANCE_TABLE("hours on the face of a clock", hour_rows, NULL),
      CLEARANCE_TABLE("the next such time", next_rows, &at_1800),
      CLEARANCE_TABLE("an arc is no fix", arc_rows, NULL),
      CLEARANCE_TABLE("a station or a point", dme_rows, NULL),
      CLEARANCE_TABLE("radials that cross", crossing_rows, NULL),
      CLEARANCE_TABLE("places of all kinds", place_rows, NULL),
      CLEARANCE_TABLE("one slip of the keys", slip_rows, NULL),
      CLEARANCE_TABLE("figures beside the hold", beside_rows, NULL),
      cmocka_unit_test(both_hours_are_named),
      cmocka_unit_test(the_time_over_the_fix_decides),
      cmocka_unit_test(spoken_times_hold_for_every_minute),
      cmocka_unit_test(the_words_of_a_time_are_one_item),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
