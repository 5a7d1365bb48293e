/* Clearances as controllers and pilots of several kinds say them or write them down, each with the
 * case it means and the questions it leaves. Invented, with invented names; what they mean follows
 * from the rules in clearance.h. The time is 1800. */
#include "clearance_rows.h"

/* Full words, spoken figures, filler. */
static const clearance_row civil_rows[] = {
    {"civil 1",
     "Hold as published.",
     NULL, 0, 'L', KEPT_LEG, 0, KEPT, NONE, "FE"},
    {"civil 2",
     "Skyhawk 34 Kilo, hold east of LARCH on victor twelve, one minute legs, left turns, "
     "maintain five thousand, expect further clearance 10 minutes from now.",
     "LARCH", 270, 'L', 60, 5000, 0, 1810, ""},
    {"civil 3",
     "H/W LARCH R-270 L EFC 1850",
     "LARCH", 90, 'L', 0, 0, 0, 1850, ""},
    {"civil 4",
     "Hold on the ILS localizer course at BRIAR, inbound, 4 mile legs, left turns, EFC 12",
     "BRIAR", 0, 'L', -4, 0, 0, 1812, "D"},
    {"civil 5",
     "Cleared to the ALDER intersection via direct, hold west on the zero nine zero course"
     " inbound, right turns, two minute legs",
     "ALDER intersection", 90, 'R', 120, 0, 0, NONE, "E"},
    {"civil 6",
     "Maintain own navigation, hold west of LARCH VOR on the two six fife radial, leg "
     "lengths at your discretion",
     "LARCH VOR", 85, 'R', 0, 0, 0, NONE, "E"},
    {"civil 7",
     "Holding instructions: hold SW LARCH, R-225, LT, 2 min legs, EFC 1945, DLA 30 min",
     "LARCH", 45, 'L', 120, 0, 0, 1945, ""},
    {"civil 8",
     "Cleared to PINE, no delay expected",
     "PINE", 0, 'L', KEPT_LEG, 0, KEPT, NONE, ""},
    {"civil 9",
     "November four six bravo, hold north of the outer marker on the localizer course, one"
     " minute legs, right turns, expect approach clearance at one niner hundred, traffic "
     "delays at destination",
     "outer marker", 180, 'R', 60, 0, 0, 1900, ""},
    {"civil 10",
     "Hold inbound 090 to LARCH, left, 1.5 min, EFC 30 past the hour",
     "LARCH", 90, 'L', 90, 0, 0, 1830, ""},
    {"civil 11",
     "Expect to hold at LARCH, north on the 010 radial, EFC 1912, the time is 1801",
     "LARCH", 190, 'R', 0, 0, 0, 1912, ""},
    {"civil 12",
     "Hold north of LARCH, 10 mile legs, left turns, altitude 9000, expect to hold 20 "
     "minutes",
     "LARCH", 180, 'L', -10, 9000, 0, NONE, "LE"},
    {"civil 13",
     "Hold at waypoint ALDER, inbound course three five five magnetic, RNAV four mile "
     "legs, right turns, efc one niner four five zulu",
     "ALDER", 355, 'R', -4, 0, 0, 1945, ""},
    {"civil 14",
     "Turn left heading 270, hold west of LARCH on the 270 radial, EFC 1900",
     "LARCH", 90, 'R', 0, 0, 0, 1900, ""},
    {"civil 15",
     "N5432, cleared to the LARCH NDB, hold north on the 010 bearing, 1 and a half minute "
     "legs, left, EFC 2100, maintain 10,000, traffic ahead",
     "LARCH NDB", 190, 'L', 90, 10000, 0, 2100, ""},
    {"civil 16",
     "You're cleared to BRIAR hold north victor twenty-one, one-minute legs, left-hand "
     "turns, altitude six thousand five hundred, expect further at five five",
     "BRIAR", 180, 'L', 60, 6500, 0, 1855, ""},
};

/* Shorthand as it is written down on a clearance; H-W for the direction is common practice. */
static const clearance_row clipped_rows[] = {
    {"clipped 1",
     "hold n larch 360 r rt 1 min efc 1915 mntn 6k",
     "LARCH", 180, 'R', 60, 6000, 0, 1915, ""},
    {"clipped 2",
     "hld se of LRH 140R 4nm L/T EFC 2015Z",
     "LRH", 320, 'L', -4, 0, 0, 2015, ""},
    {"clipped 3",
     "clrd LARCH vor h/n r360 rt trns 5 mi legs efc 25",
     "LARCH vor", 180, 'R', -5, 0, 0, 1825, ""},
    {"clipped 4",
     "cleared to larch, hold north on the localizer, standard turns, EFC 1905, maintain "
     "3000",
     "larch", 180, 'R', 0, 3000, 0, 1905, ""},
    {"clipped 5",
     "cleared direct LARCH maintain 7000 hold south as published expect approach clearance"
     " time 1910",
     "LARCH", 360, 'L', KEPT_LEG, 7000, KEPT, 1910, ""},
    {"clipped 6",
     "hold at LARCH as charted except left turns, 10 mile legs",
     "LARCH", 0, 'L', -10, 0, KEPT, NONE, "E"},
    {"clipped 7",
     "hold w of larch on r270, efc 1:30",
     "LARCH", 90, 'R', 0, 0, 0, 130, ""},
    {"clipped 8",
     "hold w of larch on r270, 1.5 mi legs, efc 0130z",
     "LARCH", 90, 'R', -1.5, 0, 0, 130, ""},
    {"clipped 9",
     "hold S LARCH 180 5 mile legs",
     "LARCH", 360, 'R', -5, 0, 0, NONE, "LE"},
};

/* Fixes by radial and distance, and DME limits. */
static const clearance_row distance_rows[] = {
    {"distance 1",
     "Hold southwest of the LARCH VORTAC 030 radial 15 mile fix, left turns, expect "
     "further clearance one niner two five.",
     "LARCH VORTAC 15 DME", 30, 'L', 0, 0, 0, 1925, ""},
    {"distance 2",
     "LANCE 21, hold northwest of the TORCH TACAN 310 radial 20 DME fix, 10 mile legs, EFC"
     " at 42, time now 18.",
     "TORCH TACAN 20 DME", 130, 'R', -10, 0, 0, 1842, ""},
    {"distance 3",
     "Viper one one, cleared to the BRIAR TACAN three zero zero radial twenty five mile "
     "fix, hold southeast, right turns, ten mile legs, maintain one five thousand, expect "
     "approach clearance at two zero.",
     "BRIAR TACAN 25 DME", 300, 'R', -10, 15000, 0, 1820, ""},
    {"distance 4",
     "Hold 10 miles southwest of the LARCH VOR on the 225 radial, left turns, 5 mile legs,"
     " EFC 1900.",
     "LARCH VOR 10 DME", 45, 'L', -5, 0, 0, 1900, "D"},
    {"distance 5",
     "hold between the 10 and 15 mile DME fixes on the LARCH 240 radial, left turns, EFC "
     "1920",
     "LARCH 10 DME", 60, 'L', -5, 0, 0, 1920, "D"},
    {"distance 6",
     "Hold southeast LARCH 18 DME, 135 radial, inbound to the station, 6 mile legs, non "
     "standard turns, EFC 1855",
     "LARCH 18 DME", 315, 'L', -6, 0, 0, 1855, ""},
    {"distance 7",
     "hold on r090 larch vor btw 15 and 25 dme rt 12000 efc 1930",
     "LARCH VOR 15 DME", 270, 'R', -10, 12000, 0, 1930, "D"},
    {"distance 8",
     "LARCH one eight radial two zero DME hold south left turns fifteen mile legs EFC zero"
     " five",
     "LARCH 20 DME", 18, 'L', -15, 0, 0, 1805, ""},
    {"distance 9",
     "Proceed to the LARCH 090 radial 12 DME fix and hold east, 5 mile legs, maintain "
     "block 8000 to 10000",
     "LARCH 12 DME", 270, 'R', -5, 8000, 0, NONE, "E"},
    {"distance 10",
     "Hold on the 065 from ALDER, 3 mile legs, EFC 40",
     "ALDER", 245, 'R', -3, 0, 0, 1840, ""},
    {"distance 11",
     "Hold at the LARCH 15 DME fix on the 030 radial inbound, southwest, left turns",
     "LARCH 15 DME", 30, 'L', 0, 0, 0, NONE, "E"},
    {"distance 12",
     "Hold northeast of the LARCH 030 radial 15 mile fix",
     "LARCH 15 DME", 210, 'R', 0, 0, 0, NONE, "E"},
    {"distance 13",
     "Hold northwest of LARCH on the 310 radial, legs between 12 and 22 miles, EFC 1905",
     "LARCH", 130, 'R', -10, 0, 0, 1905, "t"},
    {"distance 14",
     "Hold west LARCH 270 radial 10 DME, legs 5 miles, right hand, expect further "
     "clearance at time 1840",
     "LARCH 10 DME", 90, 'R', -5, 0, 0, 1840, ""},
};

/* ICAO style: level, track, hand, time, EAT. */
static const clearance_row icao_rows[] = {
    {"icao 1",
     "Hold at LARCH, maintain flight level one two zero, inbound track two seven zero "
     "degrees, left hand pattern, outbound time one and a half minutes, expected approach "
     "time three five.",
     "LARCH", 270, 'L', 90, 12000, 0, 1835, ""},
    {"icao 2",
     "Hold over WOODY NDB, descend to altitude 4000 feet, QDM 085, right hand turns, 1 "
     "minute, EAT 1840, no delay thereafter.",
     "WOODY NDB", 85, 'R', 60, 4000, 0, 1840, ""},
    {"icao 3",
     "Enter the hold at OLNEY, not above 5000 ft, speed not above 210 knots, onward "
     "clearance time 1835.",
     "OLNEY", 0, 'R', 0, 5000, 210, 1835, "DLs"},
    {"icao 4",
     "Hold over LARCH at 8000, standard hold, inbound course 180, EFC 1840",
     "LARCH", 180, 'R', 0, 8000, 0, 1840, ""},
    {"icao 5",
     "Hold as published over LARCH at flight level 90, expect approach time 56, revised",
     "LARCH", 0, 'L', KEPT_LEG, 9000, KEPT, 1856, ""},
    {"icao 6",
     "Cleared LARCH hold, flight level 130, 230 knots or less, EFC 1905, left turns, QDR "
     "270",
     "LARCH", 90, 'L', 0, 13000, 230, 1905, "D"},
    {"icao 7",
     "BRIAR, hold as published, maintain FL150, expect onward clearance at 1915",
     NULL, 0, 'L', KEPT_LEG, 15000, KEPT, 1915, "F"},
    {"icao 8",
     "Hold on the three one five radial of the LARCH VOR between twenty and thirty DME, "
     "flight level two one zero, inbound track one three five, left hand pattern, expected"
     " approach time zero five",
     "LARCH VOR 20 DME", 135, 'L', -10, 21000, 0, 1805, ""},
    {"icao 9",
     "Hold over LARCH VOR, outbound 090, inbound 270, LH, FL70, EAT 55",
     "LARCH VOR", 270, 'L', 0, 7000, 0, 1855, ""},
    {"icao 10",
     "Hold at LARCH 1 minute right hand inbound 300 5000 feet EAT 1812",
     "LARCH", 300, 'R', 60, 5000, 0, 1812, ""},
};

/* Where the aircraft is: there is little to draw from, and much to ask. */
static const clearance_row present_rows[] = {
    {"present 1",
     "Hold present position.",
     "PRESENT POSITION", 0, 'R', 0, 0, 0, NONE, "DLE"},
    {"present 2",
     "N12345, hold at your present position, right turns, EFC 1845, time now 1822.",
     "PRESENT POSITION", 0, 'R', 0, 0, 0, 1845, "DL"},
    {"present 3",
     "Hold in your present position, left turns, any leg length, maintain your own "
     "navigation, expect vectors for the approach in five minutes",
     "PRESENT POSITION", 0, 'L', 0, 0, 0, NONE, "DLE"},
    {"present 4",
     "Hold east on your present course, left turns",
     NULL, 270, 'L', 0, 0, 0, NONE, "FLE"},
    {"present 5",
     "Orbit left at your present position",
     "PRESENT POSITION", 0, 'L', 0, 0, 0, NONE, "DLE"},
};

/* Missed approaches, delays, amendments, and holds that are called off. */
static const clearance_row stage_rows[] = {
    {"stages 1",
     "Execute the published missed approach and hold at ALDER as published, climb and "
     "maintain four thousand, EFC one eight five zero",
     "ALDER", 0, 'L', KEPT_LEG, 4000, KEPT, 1850, ""},
    {"stages 2",
     "Climb to 3000 then climbing right turn to 5000 direct LARCH and hold, southeast, "
     "right turns, 318 inbound",
     "LARCH", 318, 'R', 0, 5000, 0, NONE, "E"},
    {"stages 3",
     "Hold at 12 miles final, left hand orbits, EFC 1815",
     NULL, 0, 'L', 0, 0, 0, 1815, "FDL"},
    {"stages 4",
     "Make one turn in holding at LARCH, then cleared for the approach",
     "LARCH", 0, 'R', 0, 0, 0, NONE, "DLE"},
    {"stages 5",
     "Cancel holding instructions, cleared to BRIAR direct",
     NULL, 0, 'L', KEPT_LEG, 0, KEPT, KEPT, ""},
    {"stages 6",
     "Leave the hold at time 1830, cleared direct ALDER",
     NULL, 0, 'L', KEPT_LEG, 0, KEPT, 1830, ""},
    {"stages 7",
     "Maintain your present position until further advised",
     "PRESENT POSITION", 0, 'R', 0, 0, 0, NONE, "DLE"},
    {"stages 8",
     "Cancel hold, cleared ILS approach",
     NULL, 0, 'L', KEPT_LEG, 0, KEPT, KEPT, ""},
    {"stages 9",
     "Cancel previous holding, hold at ALDER, east, 080 radial, EFC 1930",
     "ALDER", 260, 'R', 0, 0, 0, 1930, ""},
    {"stages 10",
     "Revised EFC 1955",
     NULL, 0, 'L', KEPT_LEG, 0, KEPT, 1955, ""},
    {"stages 11",
     "EFC now two zero one five",
     NULL, 0, 'L', KEPT_LEG, 0, KEPT, 2015, ""},
    {"stages 12",
     "Amend clearance limit to PINE, hold as published",
     "PINE", 0, 'L', KEPT_LEG, 0, KEPT, NONE, "E"},
    {"stages 13",
     "Descend and maintain FL240, then hold at BRIAR, max 240 kts",
     "BRIAR", 0, 'R', 0, 24000, 240, NONE, "DLE"},
    {"stages 14",
     "Expect holding at LARCH, delay 25 minutes",
     "LARCH", 0, 'R', 0, 0, 0, NONE, "DLE"},
    {"stages 15",
     "Expect 20 minutes holding at LARCH",
     "LARCH", 0, 'R', 0, 0, 0, NONE, "DLE"},
    {"stages 16",
     "Hold as depicted on the missed approach at ALDER",
     "ALDER", 0, 'L', KEPT_LEG, 0, KEPT, NONE, "E"},
};

static const ox_clearance_options at_1800 = {.now_min = 18 * 60};

int main(void) {
  const struct CMUnitTest tests[] = {
      CLEARANCE_TABLE("a controller in full words", civil_rows, &at_1800),
      CLEARANCE_TABLE("a pilot writing it down", clipped_rows, &at_1800),
      CLEARANCE_TABLE("fixes by radial and distance", distance_rows, &at_1800),
      CLEARANCE_TABLE("an icao controller", icao_rows, &at_1800),
      CLEARANCE_TABLE("holding where one is", present_rows, &at_1800),
      CLEARANCE_TABLE("stages of a flight around the hold", stage_rows, &at_1800),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
