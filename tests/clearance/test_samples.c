/* The samples that publications print, with the source beside each. Where a publication gives only
 * the pattern of the phrase, the row fills it in. */
#include "clearance_rows.h"

static const clearance_row us_rows[] = {
    {"7110.65 4-6-4, radial",
     "HOLD NORTHEAST OF LARCH VOR ON THE 045 RADIAL, 2 MINUTE LEGS, LEFT "
     "TURNS, EFC 1815",
     "LARCH VOR", 225, 'L', 120, 0, 0, 1815, ""},
    {"7110.65 4-6-4, course", "HOLD WEST OF LARCH ON THE 090 COURSE, 4 MILE LEGS, EFC 1815",
     "LARCH", 90, 'R', -4, 0, 0, 1815, ""},
    {"7110.65 4-6-4, bearing",
     "HOLD SOUTH OF LARCH NDB ON THE 190 BEARING FROM LARCH, LEFT TURNS, "
     "EFC 0005",
     "LARCH NDB", 10, 'L', 0, 0, 0, 5, ""},
    {"7110.65 4-6-4, track",
     "HOLD EAST OF LARCH WAYPOINT ON THE 270 TRACK, 5 MILE LEGS, RIGHT "
     "TURNS, EFC 1200",
     "LARCH WAYPOINT", 270, 'R', -5, 0, 0, 1200, ""},
    {"7110.65 4-6-4, airway", "HOLD NORTH OF LARCH ON VICTOR TWO ONE, EFC 1815", "LARCH", 180, 'R',
     0, 0, 0, 1815, ""},
    {"7110.65 4-6-4, azimuth", "HOLD NORTH OF THE LARCH TACAN ON THE 350 AZIMUTH, EFC 1815",
     "LARCH TACAN", 170, 'R', 0, 0, 0, 1815, ""},
    {"7110.65 4-6-1 b, charted", "CLEARED TO LARCH, HOLD WEST, AS PUBLISHED, EFC 1815", "LARCH", 90,
     'K', KEPT_LEG, 0, KEPT, 1815, ""},
    {"7110.65 4-6-1 b, no delay", "CLEARED TO LARCH, NO DELAY EXPECTED", "LARCH", 0, 'K', KEPT_LEG,
     0, KEPT, NONE, ""},
    {"7110.65 4-6-1, routing",
     "CLEARED TO LARCH. EXPECT FURTHER CLEARANCE VIA V25 BIRCH. HOLD "
     "SOUTH OF LARCH ON THE 180 RADIAL. EXPECT FURTHER CLEARANCE 1920",
     "LARCH", 360, 'R', 0, 0, 0, 1920, ""},
    {"7110.65 4-6-1, EFC 1920 and 30 minutes at a fix",
     "HOLD WEST OF LARCH ON THE 270 RADIAL, "
     "EXPECT FURTHER CLEARANCE 1920, ANTICIPATE ADDITIONAL 30 MINUTE DELAY AT BIRCH",
     "LARCH", 90, 'R', 0, 0, 0, 1920, ""},
    {"7110.65 4-6-1, EFC 1510 and 30 minutes en route",
     "HOLD WEST OF LARCH ON THE 270 RADIAL, "
     "EXPECT FURTHER CLEARANCE 1510, ANTICIPATE ADDITIONAL 30 MINUTE EN ROUTE DELAY",
     "LARCH", 90, 'R', 0, 0, 0, 1510, ""},
    {"7110.65 4-6-1, hours",
     "HOLD WEST OF LARCH ON THE 270 RADIAL, EXPECT FURTHER CLEARANCE 1510, "
     "ANTICIPATE ADDITIONAL 1 HOUR TERMINAL DELAY",
     "LARCH", 90, 'R', 0, 0, 0, 1510, ""},
    {"AIM 5-3-8 j2(c)",
     "HOLD WEST OF LARCH ON THE 270 RADIAL, MAXIMUM HOLDING AIRSPEED IS 175 "
     "KNOTS, EFC 1510",
     "LARCH", 90, 'R', 0, 0, 175, 1510, ""},
    {"IPH ch. 3", "Hold east of MIKEY intersection as published, EFC 1521", "MIKEY intersection",
     270, 'K', KEPT_LEG, 0, KEPT, 1521, ""},
    {"P340 p. 157", "hold south of REDDI on V115, three mile legs, time now 57, EFC 20", "REDDI",
     360, 'R', -3, 0, 0, NONE, ""},
    {"P801 Fig 10-12, TACAN fix", "hold SE, legs 30\u201320 DME", "20 DME fix", 315, 'R', -10, 0, 0,
     NONE, "EL"},
    {"AIM 5-3-8 j5 example 1: toward, fix 10, leg 5",
     "hold east of the 10 DME fix on the 090 "
     "radial, 5 mile legs, EFC 1510",
     "10 DME fix", 270, 'R', -5, 0, 0, 1510, ""},
    {"AIM 5-3-8 j5 example 2: away, fix 28, leg 8",
     "hold west of the 28 DME fix on the 090 radial, "
     "8 mile legs, EFC 1510",
     "28 DME fix", 90, 'R', -8, 0, 0, 1510, ""},
    {"13.1 row 8, study card", "hold northwest of LARCH on the 332 radial, left turns, EFC 1510",
     "LARCH", 152, 'L', 0, 0, 0, 1510, ""},
    {"13.1 row 12, FAA bank", "hold east of the LARCH VOR on R-090, left turns, EFC 1510",
     "LARCH VOR", 270, 'L', 0, 0, 0, 1510, ""},
    {"13.1 row 13, FAA bank", "hold west of the 15-DME fix on R-086, left turns, EFC 1510",
     "15 DME fix", 86, 'L', 0, 0, 0, 1510, ""},
    {"P871 Fig 4-16", "hold east on R-090 of the LARCH TACAN, EFC 1510", "LARCH TACAN", 270, 'R', 0,
     0, 0, 1510, ""},
    {"P1204, R-090 30 DME", "hold east of LARCH TACAN 30 DME on the 090 radial, EFC 1510",
     "LARCH TACAN 30 DME", 270, 'R', 0, 0, 0, 1510, ""},
};

static const clearance_row icao_rows[] = {
    {"Doc 4444 style sheet, published",
     "Hold at LARCH as published, FL100, expected approach time "
     "1825",
     "LARCH", 0, 'K', KEPT_LEG, 10000, KEPT, 1825, ""},
    {"Doc 4444 style sheet, published, EFC",
     "Hold over LARCH as published, flight level one zero "
     "zero, expect further clearance at one eight two five",
     "LARCH", 0, 'K', KEPT_LEG, 10000, KEPT, 1825, ""},
    {"Doc 4444 style sheet, unpublished",
     "Hold at LARCH, FL100, inbound track 218 degrees, left "
     "hand pattern, outbound time 1 minute, expected approach time 1825",
     "LARCH", 218, 'L', 60, 10000, 0, 1825, ""},
    {"Doc 4444 style sheet, example A",
     "hold at ZAG VOR, FL100, inbound track 218\u00b0, "
     "right-hand, outbound time 1 min",
     "ZAG VOR", 218, 'R', 60, 10000, 0, NONE, "E"},
    {"Doc 4444 style sheet, example B",
     "hold on R-222 of a VOR between 15 and 20 DME, FL100, "
     "inbound track 042, right-hand",
     "VOR 15 DME", 42, 'R', -5, 10000, 0, NONE, "E"},
    {"Doc 4444 phrase for a DME fix (from memory)",
     "Cleared to the 240 radial of the ABC VOR at 15 DME fix, maintain FL120, hold southwest, "
     "right "
     "hand pattern, outbound time 1 minute, expect approach clearance at 1825",
     "ABC VOR 15 DME", 60, 'R', 60, 12000, 0, 1825, ""},
    {"the same, station first",
     "Cleared to the ABC 240 radial 15 DME fix, maintain FL120, hold northeast, expect further "
     "clearance at 1825",
     "ABC 15 DME", 240, 'R', 0, 12000, 0, 1825, ""},
};

/* AIM 5-3-8 i: six items, of which the fix may be left out after the limit. */
static void the_items_come_out_in_the_order_of_the_aim(void **state) {
  (void)state;
  static const ox_item_kind order[] = {OX_ITEM_LIMIT, OX_ITEM_DIRECTION, OX_ITEM_RADIAL,
                                       OX_ITEM_LEG,   OX_ITEM_TURNS,     OX_ITEM_EFC};
  ox_clearance c;
  ox_status status = ox_clearance_read("Cleared to LARCH VOR, hold southwest on the 240 radial, 4 "
                                       "mile legs, left turns, expect further clearance 1825",
                                       NULL, NULL, &c);
  assert_int_equal(status, OX_OK);
  assert_int_equal(c.item_count, sizeof order / sizeof *order);
  for (size_t i = 0; i < c.item_count; i++)
    assert_int_equal(c.items[i].kind, order[i]);
}

/* P340 p. 157: with the hour known from elsewhere, time now 57 and EFC 20 are 23 minutes apart. */
static void minutes_alone_count_from_the_time_now(void **state) {
  (void)state;
  ox_clearance_options o = ox_clearance_options_default();
  o.now_min = 13 * 60 + 50;
  ox_clearance c;
  ox_clearance_read("hold south of REDDI on V115, three mile legs, time now 57, EFC 20", NULL, &o,
                    &c);
  assert_int_equal(c.result.hold.efc_min, 14 * 60 + 20);
  o.now_min = 23 * 60 + 50;
  ox_clearance_read("hold south of REDDI on V115, three mile legs, time now 57, EFC 20", NULL, &o,
                    &c);
  assert_int_equal(c.result.hold.efc_min, 20);
}

static const ox_clearance_options icao = {.wording = OX_WORDING_ICAO, .now_min = -1};

int main(void) {
  const struct CMUnitTest tests[] = {
      CLEARANCE_TABLE("published us samples are understood", us_rows, NULL),
      CLEARANCE_TABLE("published icao samples are understood", icao_rows, &icao),
      cmocka_unit_test(the_items_come_out_in_the_order_of_the_aim),
      cmocka_unit_test(minutes_alone_count_from_the_time_now),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
