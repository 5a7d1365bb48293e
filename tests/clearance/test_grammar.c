/* Ways of saying a holding clearance, each with the case it means. The meaning follows from the
 * rules in clearance.h: direction from the fix, radial of a station at the fix outbound. */
#include "clearance_rows.h"

/* hold SW of LARCH, 240 radial, and what differs. */
static const clearance_row line_rows[] = {
    {"full words", "hold southwest of LARCH on the 240 radial, EFC 1825", "LARCH", 60, 'R', 0, 0, 0,
     1825, ""},
    {"hyphen", "hold south-west of LARCH on the 240 radial, EFC 1825", "LARCH", 60, 'R', 0, 0, 0,
     1825, ""},
    {"two words", "hold south west of LARCH on the 240 radial, EFC 1825", "LARCH", 60, 'R', 0, 0, 0,
     1825, ""},
    {"capitals", "HOLD SOUTHWEST OF LARCH ON THE 240 RADIAL, EFC 1825", "LARCH", 60, 'R', 0, 0, 0,
     1825, ""},
    {"lower case", "hold sw of larch on the 240 radial, efc 1825", "LARCH", 60, 'R', 0, 0, 0, 1825,
     ""},
    {"R-240", "hold SW of LARCH R-240 EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"R240", "hold SW of LARCH R240 EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"240R", "hold SW of LARCH on 240R EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"240 R", "hold SW of LARCH on 240 R, EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"radial 240", "hold SW of LARCH on radial 240, EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"rdl", "hold SW LARCH 240 rdl EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"degrees", "hold SW of LARCH on the 240 degree radial, EFC 1825", "LARCH", 60, 'R', 0, 0, 0,
     1825, ""},
    {"degree sign", "hold SW of LARCH on the 240\u00b0 radial, EFC 1825", "LARCH", 60, 'R', 0, 0, 0,
     1825, ""},
    {"spoken radial", "hold southwest of LARCH on the two four zero radial, EFC 1825", "LARCH", 60,
     'R', 0, 0, 0, 1825, ""},
    {"two forty", "hold southwest of LARCH on the two forty radial, EFC 1825", "LARCH", 60, 'R', 0,
     0, 0, 1825, ""},
    {"single figures", "hold southwest of LARCH on the 2 4 0 radial, EFC 1825", "LARCH", 60, 'R', 0,
     0, 0, 1825, ""},
    {"radial of the fix", "hold southwest on the 240 radial of LARCH, EFC 1825", "LARCH", 60, 'R',
     0, 0, 0, 1825, ""},
    {"radial from the fix", "hold southwest on the 240 radial from the LARCH VORTAC, EFC 1825",
     "LARCH VORTAC", 60, 'R', 0, 0, 0, 1825, ""},
    {"the fix before its radial", "hold southwest on the LARCH 240 radial, EFC 1825", "LARCH", 60,
     'R', 0, 0, 0, 1825, ""},
    {"north is 360", "hold north of LARCH VOR on the 360 radial, EFC 1825", "LARCH VOR", 180, 'R',
     0, 0, 0, 1825, ""},
    {"000 is 360", "hold south of LARCH VOR, inbound 000, EFC 1825", "LARCH VOR", 360, 'R', 0, 0, 0,
     1825, ""},
    {"radial 180", "hold south of LARCH VOR on the 180 radial, EFC 1825", "LARCH VOR", 360, 'R', 0,
     0, 0, 1825, ""},
    {"edge of the eighth below", "hold southwest of LARCH VOR on the 203 radial, EFC 1825",
     "LARCH VOR", 23, 'R', 0, 0, 0, 1825, ""},
    {"edge of the eighth above", "hold southwest of LARCH VOR on the 247 radial, EFC 1825",
     "LARCH VOR", 67, 'R', 0, 0, 0, 1825, ""},
    {"north across 360", "hold north of LARCH VOR on the 338 radial, EFC 1825", "LARCH VOR", 158,
     'R', 0, 0, 0, 1825, ""},
    {"two figures", "hold NE of LARCH VOR on the 45 radial, EFC 1825", "LARCH VOR", 225, 'R', 0, 0,
     0, 1825, ""},
    {"inbound said", "hold southwest of LARCH, inbound course 060, EFC 1825", "LARCH", 60, 'R', 0,
     0, 0, 1825, ""},
    {"060 inbound", "hold southwest of LARCH, 060 inbound, EFC 1825", "LARCH", 60, 'R', 0, 0, 0,
     1825, ""},
    {"course inbound", "hold southwest of LARCH on the 060 course inbound, EFC 1825", "LARCH", 60,
     'R', 0, 0, 0, 1825, ""},
    {"inbound course figure first", "hold southwest of LARCH on the 060 inbound course, EFC 1825",
     "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"inbound track", "hold at LARCH inbound track 060 EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825,
     ""},
    {"inbd crs", "hold SW LARCH inbd crs 060 EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"course to the fix", "hold southwest of LARCH on the 060 course to LARCH, EFC 1825", "LARCH",
     60, 'R', 0, 0, 0, 1825, ""},
    {"outbound said", "hold southwest of LARCH, outbound course 240, EFC 1825", "LARCH", 60, 'R', 0,
     0, 0, 1825, ""},
    {"240 outbound", "hold southwest of LARCH, 240 outbound, EFC 1825", "LARCH", 60, 'R', 0, 0, 0,
     1825, ""},
    {"outbound track", "hold at LARCH, outbound track 240, EFC 1825", "LARCH", 60, 'R', 0, 0, 0,
     1825, ""},
    {"course, inbound by the direction", "hold southwest of LARCH on the 060 course, EFC 1825",
     "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"course, outbound by the direction", "hold southwest of LARCH on the 240 course, EFC 1825",
     "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"track", "hold southwest of LARCH on the 240 track, EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825,
     ""},
    {"bearing from", "hold southwest of LARCH NDB on the 240 bearing, EFC 1825", "LARCH NDB", 60,
     'R', 0, 0, 0, 1825, ""},
    {"bearing to", "hold southwest of LARCH NDB on the 060 bearing to LARCH, EFC 1825", "LARCH NDB",
     60, 'R', 0, 0, 0, 1825, ""},
    {"QDR", "hold SW of LARCH NDB on QDR 240, EFC 1825", "LARCH NDB", 60, 'R', 0, 0, 0, 1825, ""},
    {"QDM", "hold SW of LARCH NDB on QDM 060, EFC 1825", "LARCH NDB", 60, 'R', 0, 0, 0, 1825, ""},
    {"radial and inbound agree",
     "hold SW of LARCH VOR on the 240 radial, inbound course 060, EFC 1825", "LARCH VOR", 60, 'R',
     0, 0, 0, 1825, ""},
    {"inbound on the radial", "hold southwest of LARCH VOR inbound on the 240 radial, EFC 1825",
     "LARCH VOR", 60, 'R', 0, 0, 0, 1825, ""},
    {"DME fix, toward", "hold southwest of the 15 DME fix on the 240 radial, EFC 1825",
     "15 DME fix", 60, 'R', 0, 0, 0, 1825, ""},
    {"DME fix, away", "hold northeast of the 15 DME fix on the 240 radial, EFC 1825", "15 DME fix",
     240, 'R', 0, 0, 0, 1825, ""},
    {"named DME fix, away", "hold northeast of the ABC 15 DME fix on the ABC 240 radial, EFC 1825",
     "ABC 15 DME", 240, 'R', 0, 0, 0, 1825, ""},
    {"D15", "hold SW of D15 on ABC R-240, EFC 1825", "ABC 15 DME", 60, 'R', 0, 0, 0, 1825, ""},
    {"15 mile fix", "hold southwest of the 15 mile fix on the ABC 240 radial, EFC 1825",
     "ABC 15 DME", 60, 'R', 0, 0, 0, 1825, ""},
    {"intersection, toward", "hold southwest of LARCH intersection on the ABC 240 radial, EFC 1825",
     "LARCH intersection", 60, 'R', 0, 0, 0, 1825, ""},
    {"intersection, away", "hold northeast of LARCH intersection on the ABC 240 radial, EFC 1825",
     "LARCH intersection", 240, 'R', 0, 0, 0, 1825, ""},
    {"station with another name, away",
     "hold northeast of LARCH on the 240 radial of ABC, EFC 1825", "LARCH", 240, 'R', 0, 0, 0, 1825,
     ""},
    {"DME limits, toward", "hold southwest between 15 and 20 DME on the ABC 240 radial, EFC 1825",
     "ABC 15 DME", 60, 'R', -5, 0, 0, 1825, ""},
    {"DME limits, away", "hold northeast between 15 and 20 DME on the ABC 240 radial, EFC 1825",
     "ABC 20 DME", 240, 'R', -5, 0, 0, 1825, ""},
    {"DME limits spoken",
     "hold southwest between one five and two zero DME on the two four zero radial of ABC, EFC "
     "1825",
     "ABC 15 DME", 60, 'R', -5, 0, 0, 1825, ""},
    {"radial and DME of the fix", "hold southwest of the ABC 240 radial 15 DME fix, EFC 1825",
     "ABC 15 DME", 60, 'R', 0, 0, 0, 1825, ""},
    {"named fix at a DME", "hold northeast of LARCH on the 240 radial, 15 DME, EFC 1825", "LARCH",
     240, 'R', 0, 0, 0, 1825, ""},
    {"Victor airway", "hold west of LARCH on Victor 115, EFC 1825", "LARCH", 90, 'R', 0, 0, 0, 1825,
     ""},
    {"V-115", "hold west of LARCH on V-115, EFC 1825", "LARCH", 90, 'R', 0, 0, 0, 1825, ""},
    {"ICAO route", "hold west of LARCH on UL607, EFC 1825", "LARCH", 90, 'R', 0, 0, 0, 1825, ""},
    {"airway A1", "hold west of LARCH on airway A1, EFC 1825", "LARCH", 90, 'R', 0, 0, 0, 1825, ""},
    {"airway and inbound", "hold west of LARCH on J64, inbound 095, EFC 1825", "LARCH", 95, 'R', 0,
     0, 0, 1825, ""},
};

static const clearance_row fix_rows[] = {
    {"idle talk after the fix", "HOLD SOUTHWEST OF LARCH LOOKS GOOD ON THE 240 RADIAL, EFC 1825",
     "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"idle talk in small letters", "hold southwest of larch looks good on the 240 radial, efc 1825",
     "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"fix is the limit", "cleared to LARCH VOR, hold southwest on the 240 radial, EFC 1825",
     "LARCH VOR", 60, 'R', 0, 0, 0, 1825, ""},
    {"limit and fix",
     "cleared to the LARCH VOR, hold southwest of LARCH on the 240 radial, EFC 1825", "LARCH", 60,
     'R', 0, 0, 0, 1825, ""},
    {"cleared direct", "cleared direct LARCH, hold southwest on the 240 radial, EFC 1825", "LARCH",
     60, 'R', 0, 0, 0, 1825, ""},
    {"proceed direct", "proceed direct to LARCH, hold southwest on the 240 radial, EFC 1825",
     "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"clearance limit", "clearance limit LARCH, hold southwest on the 240 radial, EFC 1825",
     "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"hold at", "hold at LARCH southwest on the 240 radial, EFC 1825", "LARCH", 60, 'R', 0, 0, 0,
     1825, ""},
    {"hold over", "hold over LARCH, southwest on the 240 radial, EFC 1825", "LARCH", 60, 'R', 0, 0,
     0, 1825, ""},
    {"hold name direction", "hold LARCH SW 240R EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"two words", "hold southwest of Lake Henry on the 240 radial, EFC 1825", "Lake Henry", 60, 'R',
     0, 0, 0, 1825, ""},
    {"two words with a station", "hold southwest of the lake henry VOR on the 240 radial, EFC 1825",
     "lake henry VOR", 60, 'R', 0, 0, 0, 1825, ""},
    {"quotation marks", "hold southwest of \"West End, 2\" on the 240 radial, EFC 1825",
     "West End, 2", 60, 'R', 0, 0, 0, 1825, ""},
    {"a waypoint with figures", "hold southwest of CF27R on the 060 inbound course, EFC 1825",
     "CF27R", 60, 'R', 0, 0, 0, 1825, ""},
    {"letters beyond ASCII", "hold southwest of L\u00c4RCHE on the 060 inbound course, EFC 1825",
     "L\u00c4RCHE", 60, 'R', 0, 0, 0, 1825, ""},
    {"a fix named like a word", "hold southwest of MAX on the 240 radial, EFC 1825", "MAX", 60, 'R',
     0, 0, 0, 1825, ""},
    {"present position", "hold at present position, inbound 060, EFC 1825", "PRESENT POSITION", 60,
     'R', 0, 0, 0, 1825, ""},
    {"direction at the end", "hold on the 240 radial, southwest of LARCH, EFC 1825", "LARCH", 60,
     'R', 0, 0, 0, 1825, ""},
    {"single letter", "hold W of LARCH on the 270 radial, EFC 1825", "LARCH", 90, 'R', 0, 0, 0,
     1825, ""},
    {"hold N", "hold N LARCH 360R EFC 1825", "LARCH", 180, 'R', 0, 0, 0, 1825, ""},
    {"side", "hold on the southwest side of LARCH on the 240 radial, EFC 1825", "LARCH", 60, 'R', 0,
     0, 0, 1825, ""},
};

#define HOLD "hold southwest of LARCH on the 240 radial, "
static const clearance_row leg_rows[] = {
    {"1 minute", HOLD "1 minute legs, EFC 1825", "LARCH", 60, 'R', 60, 0, 0, 1825, ""},
    {"1 min", HOLD "1 min, EFC 1825", "LARCH", 60, 'R', 60, 0, 0, 1825, ""},
    {"1min", HOLD "1min legs, EFC 1825", "LARCH", 60, 'R', 60, 0, 0, 1825, ""},
    {"1-minute", HOLD "1-minute legs, EFC 1825", "LARCH", 60, 'R', 60, 0, 0, 1825, ""},
    {"one minute", HOLD "one minute legs, EFC 1825", "LARCH", 60, 'R', 60, 0, 0, 1825, ""},
    {"minute legs", HOLD "minute legs, EFC 1825", "LARCH", 60, 'R', 60, 0, 0, 1825, ""},
    {"1.5 min", HOLD "1.5 min legs, EFC 1825", "LARCH", 60, 'R', 90, 0, 0, 1825, ""},
    {"decimal comma", HOLD "1,5 min legs, EFC 1825", "LARCH", 60, 'R', 90, 0, 0, 1825, ""},
    {"1 1/2", HOLD "1 1/2 minute legs, EFC 1825", "LARCH", 60, 'R', 90, 0, 0, 1825, ""},
    {"1-1/2", HOLD "1-1/2 minute legs, EFC 1825", "LARCH", 60, 'R', 90, 0, 0, 1825, ""},
    {"1\u00bd", HOLD "1\u00bd minute legs, EFC 1825", "LARCH", 60, 'R', 90, 0, 0, 1825, ""},
    {"one and a half", HOLD "one and a half minute legs, EFC 1825", "LARCH", 60, 'R', 90, 0, 0,
     1825, ""},
    {"one and one half", HOLD "one and one-half minute legs, EFC 1825", "LARCH", 60, 'R', 90, 0, 0,
     1825, ""},
    {"one point five", HOLD "one point five minute legs, EFC 1825", "LARCH", 60, 'R', 90, 0, 0,
     1825, ""},
    {"one decimal five", HOLD "one decimal fife minute legs, EFC 1825", "LARCH", 60, 'R', 90, 0, 0,
     1825, ""},
    {"half a minute", HOLD "one half minute legs, EFC 1825", "LARCH", 60, 'R', 30, 0, 0, 1825, ""},
    {"90 seconds", HOLD "90 second legs, EFC 1825", "LARCH", 60, 'R', 90, 0, 0, 1825, ""},
    {"90s", HOLD "90s legs, EFC 1825", "LARCH", 60, 'R', 90, 0, 0, 1825, ""},
    {"minutes and seconds", HOLD "1 minute 30 second legs, EFC 1825", "LARCH", 60, 'R', 90, 0, 0,
     1825, ""},
    {"legs first", HOLD "legs 2 minutes, EFC 1825", "LARCH", 60, 'R', 120, 0, 0, 1825, ""},
    {"leg length", HOLD "leg length 2 minutes, EFC 1825", "LARCH", 60, 'R', 120, 0, 0, 1825, ""},
    {"inbound leg", HOLD "inbound leg 1 minute, EFC 1825", "LARCH", 60, 'R', 60, 0, 0, 1825, ""},
    {"outbound time", HOLD "outbound time one and a half minutes, EFC 1825", "LARCH", 60, 'R', 90,
     0, 0, 1825, ""},
    {"minute pattern", HOLD "2 minute pattern, EFC 1825", "LARCH", 60, 'R', 120, 0, 0, 1825, ""},
    {"miles", HOLD "5 mile legs, EFC 1825", "LARCH", 60, 'R', -5, 0, 0, 1825, ""},
    {"nm", HOLD "5nm legs, EFC 1825", "LARCH", 60, 'R', -5, 0, 0, 1825, ""},
    {"nautical miles in figures", HOLD "7.5 nm legs, EFC 1825", "LARCH", 60, 'R', -7.5, 0, 0, 1825,
     ""},
    {"one zero mile", HOLD "one zero mile legs, EFC 1825", "LARCH", 60, 'R', -10, 0, 0, 1825, ""},
    {"ten mile", HOLD "ten mile legs, EFC 1825", "LARCH", 60, 'R', -10, 0, 0, 1825, ""},
    {"DME legs", HOLD "4 DME legs, EFC 1825", "LARCH", 60, 'R', -4, 0, 0, 1825, ""},
    {"none", HOLD "EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
};

static const clearance_row turn_rows[] = {
    {"left turns", HOLD "left turns, EFC 1825", "LARCH", 60, 'L', 0, 0, 0, 1825, ""},
    {"L turns", HOLD "L turns, EFC 1825", "LARCH", 60, 'L', 0, 0, 0, 1825, ""},
    {"L", HOLD "L, EFC 1825", "LARCH", 60, 'L', 0, 0, 0, 1825, ""},
    {"LH", HOLD "LH, EFC 1825", "LARCH", 60, 'L', 0, 0, 0, 1825, ""},
    {"left hand", HOLD "left-hand pattern, EFC 1825", "LARCH", 60, 'L', 0, 0, 0, 1825, ""},
    {"left handed turns", HOLD "left handed turns, EFC 1825", "LARCH", 60, 'L', 0, 0, 0, 1825, ""},
    {"turns left", HOLD "turns left, EFC 1825", "LARCH", 60, 'L', 0, 0, 0, 1825, ""},
    {"all turns to the left", HOLD "all turns to the left, EFC 1825", "LARCH", 60, 'L', 0, 0, 0,
     1825, ""},
    {"make left turns", HOLD "make left turns, EFC 1825", "LARCH", 60, 'L', 0, 0, 0, 1825, ""},
    {"nonstandard", HOLD "nonstandard turns, EFC 1825", "LARCH", 60, 'L', 0, 0, 0, 1825, ""},
    {"non-standard", HOLD "non-standard pattern, EFC 1825", "LARCH", 60, 'L', 0, 0, 0, 1825, ""},
    {"right turns", HOLD "right turns, EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"R turns", HOLD "R turns, EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"RH", HOLD "RH, EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"standard pattern", HOLD "standard pattern, EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"standard right turns", HOLD "standard right turns, EFC 1825", "LARCH", 60, 'R', 0, 0, 0, 1825,
     ""},
    {"a vector is not the pattern", "turn left heading 300, " HOLD "EFC 1825", "LARCH", 60, 'R', 0,
     0, 0, 1825, ""},
};

static const clearance_row time_rows[] = {
    {"1825z", HOLD "EFC 1825z", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"18:25", HOLD "EFC 18:25", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"1825 UTC", HOLD "EFC at 1825 UTC", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"zulu", HOLD "EFC one eight two five zulu", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"eighteen twenty five", HOLD "EFC eighteen twenty five", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"eighteen hundred", HOLD "EFC eighteen hundred", "LARCH", 60, 'R', 0, 0, 0, 1800, ""},
    {"three figures", HOLD "EFC 925", "LARCH", 60, 'R', 0, 0, 0, 925, ""},
    {"zero zero one fife", HOLD "EFC zero zero one fife", "LARCH", 60, 'R', 0, 0, 0, 15, ""},
    {"midnight", HOLD "EFC 2400", "LARCH", 60, 'R', 0, 0, 0, 0, ""},
    {"expect further clearance", HOLD "expect further clearance at 1825", "LARCH", 60, 'R', 0, 0, 0,
     1825, ""},
    {"after a comma", HOLD "expect further clearance, one eight two five", "LARCH", 60, 'R', 0, 0,
     0, 1825, ""},
    {"expect further clearance time", HOLD "expect further clearance time 1825", "LARCH", 60, 'R',
     0, 0, 0, 1825, ""},
    {"expect approach clearance", HOLD "expect approach clearance at time 1825", "LARCH", 60, 'R',
     0, 0, 0, 1825, ""},
    {"EAT", HOLD "EAT 1825", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"expected approach time", HOLD "expected approach time 1825", "LARCH", 60, 'R', 0, 0, 0, 1825,
     ""},
    {"onward clearance", HOLD "expect onward clearance at 1825", "LARCH", 60, 'R', 0, 0, 0, 1825,
     ""},
    {"no delay", HOLD "no delay expected", "LARCH", 60, 'R', 0, 0, 0, NONE, ""},
    {"delay too", HOLD "EFC 1825, expect 20 minutes delay", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"delay not determined", HOLD "EFC 1825, delay not determined", "LARCH", 60, 'R', 0, 0, 0, 1825,
     ""},
    {"time now before", HOLD "EFC 1825, time 1758", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"time now and minutes", HOLD "time now 1757, EFC 25", "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"time now across the day", HOLD "time now 2350, EFC 0015", "LARCH", 60, 'R', 0, 0, 0, 15, ""},
    {"so many minutes ahead", HOLD "time now 2350, EFC in 25 minutes", "LARCH", 60, 'R', 0, 0, 0,
     15, ""},
};

static const clearance_row level_rows[] = {
    {"maintain 5000", HOLD "EFC 1825, maintain 5000", "LARCH", 60, 'R', 0, 5000, 0, 1825, ""},
    {"5,000", HOLD "EFC 1825, maintain 5,000", "LARCH", 60, 'R', 0, 5000, 0, 1825, ""},
    {"5,000 feet", HOLD "EFC 1825, maintain 5,000 feet", "LARCH", 60, 'R', 0, 5000, 0, 1825, ""},
    {"five thousand", HOLD "EFC 1825, maintain five thousand", "LARCH", 60, 'R', 0, 5000, 0, 1825,
     ""},
    {"five thousand five hundred", HOLD "EFC 1825, maintain fife thousand fife hundred", "LARCH",
     60, 'R', 0, 5500, 0, 1825, ""},
    {"one zero thousand", HOLD "EFC 1825, maintain one zero thousand", "LARCH", 60, 'R', 0, 10000,
     0, 1825, ""},
    {"ten thousand", HOLD "EFC 1825, maintain ten thousand", "LARCH", 60, 'R', 0, 10000, 0, 1825,
     ""},
    {"one two thousand five hundred", HOLD "EFC 1825, maintain one two thousand five hundred",
     "LARCH", 60, 'R', 0, 12500, 0, 1825, ""},
    {"5k", HOLD "EFC 1825, maintain 5k", "LARCH", 60, 'R', 0, 5000, 0, 1825, ""},
    {"M 50", HOLD "EFC 1825, M 5", "LARCH", 60, 'R', 0, 5000, 0, 1825, ""},
    {"M 050", HOLD "EFC 1825, M050", "LARCH", 60, 'R', 0, 5000, 0, 1825, ""},
    {"FL180", HOLD "EFC 1825, FL180", "LARCH", 60, 'R', 0, 18000, 0, 1825, ""},
    {"FL 180", HOLD "EFC 1825, maintain FL 180", "LARCH", 60, 'R', 0, 18000, 0, 1825, ""},
    {"flight level", HOLD "EFC 1825, maintain flight level one eight zero", "LARCH", 60, 'R', 0,
     18000, 0, 1825, ""},
    {"flight level 95", HOLD "EFC 1825, at FL95", "LARCH", 60, 'R', 0, 9500, 0, 1825, ""},
    {"descend and maintain", HOLD "EFC 1825, descend and maintain 4000", "LARCH", 60, 'R', 0, 4000,
     0, 1825, ""},
    {"climb to", HOLD "EFC 1825, climb to flight level two three zero", "LARCH", 60, 'R', 0, 23000,
     0, 1825, ""},
    {"at 4000", HOLD "EFC 1825, at 4000", "LARCH", 60, 'R', 0, 4000, 0, 1825, ""},
    {"at or above", HOLD "EFC 1825, at or above 4000", "LARCH", 60, 'R', 0, 4000, 0, 1825, ""},
    {"altitude", HOLD "EFC 1825, altitude 4000 feet", "LARCH", 60, 'R', 0, 4000, 0, 1825, ""},
    {"800 feet", HOLD "EFC 1825, maintain 800 feet", "LARCH", 60, 'R', 0, 800, 0, 1825, ""},
    {"below sea level", HOLD "EFC 1825, maintain minus 500 feet", "LARCH", 60, 'R', 0, -500, 0,
     1825, ""},
    {"max 200 kt", HOLD "EFC 1825, max 200 kt, maintain 5000", "LARCH", 60, 'R', 0, 5000, 200, 1825,
     ""},
    {"200 knots", HOLD "EFC 1825, 200 knots, maintain 5000", "LARCH", 60, 'R', 0, 5000, 200, 1825,
     ""},
    {"200k", HOLD "EFC 1825, max 200k, maintain 5000", "LARCH", 60, 'R', 0, 5000, 200, 1825, ""},
    {"speed two zero zero", HOLD "EFC 1825, speed two zero zero, maintain 5000", "LARCH", 60, 'R',
     0, 5000, 200, 1825, ""},
    {"reduce speed", HOLD "EFC 1825, reduce speed to 175 knots, maintain 5000", "LARCH", 60, 'R', 0,
     5000, 175, 1825, ""},
    {"do not exceed", HOLD "EFC 1825, do not exceed 175 knots, maintain 5000", "LARCH", 60, 'R', 0,
     5000, 175, 1825, ""},
    {"maintain knots", HOLD "EFC 1825, maintain 175 knots, maintain 5000", "LARCH", 60, 'R', 0,
     5000, 175, 1825, ""},
    {"or less", HOLD "EFC 1825, two hundred and ten knots maximum, FL100", "LARCH", 60, 'R', 0,
     10000, 210, 1825, ""},
    {"KIAS", HOLD "EFC 1825, 175 KIAS, maintain 5000", "LARCH", 60, 'R', 0, 5000, 175, 1825, ""},
};

static const clearance_row order_rows[] = {
    {"the issue's example",
     "hold SW of LARCH on the 240 radial, 1 min legs, L turns, EFC 1825z, maintain 5000, max 200 "
     "kt",
     "LARCH", 60, 'L', 60, 5000, 200, 1825, ""},
    {"backwards",
     "EFC 1825, maintain 5000, left turns, 1 minute legs, 240 radial, hold southwest of LARCH",
     "LARCH", 60, 'L', 60, 5000, 0, 1825, ""},
    {"no punctuation",
     "cleared to LARCH VOR hold southwest on the 240 radial 1 minute legs left turns EFC 1825 "
     "maintain 5000",
     "LARCH VOR", 60, 'L', 60, 5000, 0, 1825, ""},
    {"slashes", "hold SW LARCH/240R/1.5min/L/EFC 1825", "LARCH", 60, 'L', 90, 0, 0, 1825, ""},
    {"lines", "hold SW of LARCH\n240 radial\n1 min\nleft turns\nEFC 1825\n", "LARCH", 60, 'L', 60,
     0, 0, 1825, ""},
    {"filler",
     "uh okay hold please southwest um of LARCH on the the 240 radial sir, EFC is 1825 thanks",
     "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"call sign",
     "Cessna one two three alpha bravo, cleared to LARCH, hold southwest on the 240 radial, EFC "
     "1825",
     "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"call sign in figures", "N345AB cleared to LARCH, hold southwest on the 240 radial, EFC 1825",
     "LARCH", 60, 'R', 0, 0, 0, 1825, ""},
    {"correction", HOLD "left turns, correction, right turns, EFC 1825", "LARCH", 60, 'R', 0, 0, 0,
     1825, ""},
    {"correction of a figure",
     "hold southwest of LARCH on the 250 radial, correction, 240 radial, EFC 1825", "LARCH", 60,
     'R', 0, 0, 0, 1825, ""},
    {"said twice alike", HOLD "EFC 1825, I say again, EFC one eight two five", "LARCH", 60, 'R', 0,
     0, 0, 1825, ""},
    {"amended time only", "EFC now 1915", NULL, 0, 'K', KEPT_LEG, 0, KEPT, 1915, ""},
    {"amended turns only", "make left turns", NULL, 0, 'L', KEPT_LEG, 0, KEPT, KEPT, ""},
    {"amended altitude only", "descend and maintain 4000", NULL, 0, 'K', KEPT_LEG, 4000, KEPT, KEPT,
     ""},
    {"amended legs only", "two minute legs approved", NULL, 0, 'K', 120, 0, KEPT, KEPT, ""},
    {"ICAO order",
     "hold at LARCH, FL100, inbound track two one eight, left-hand pattern, outbound time one "
     "minute, EAT 1825",
     "LARCH", 218, 'L', 60, 10000, 0, 1825, ""},
    {"tabs and blanks", "\thold   SW  of\tLARCH  on the  240   radial ,  EFC   1825 ", "LARCH", 60,
     'R', 0, 0, 0, 1825, ""},
};

static void radials_courses_and_bearings_tell_the_inbound_course(void **state) {
  (void)state;
  ASSERT_ROWS(line_rows, NULL);
}

static void a_fix_is_found_wherever_it_stands(void **state) {
  (void)state;
  ASSERT_ROWS(fix_rows, NULL);
}

static void legs_are_minutes_seconds_or_miles(void **state) {
  (void)state;
  ASSERT_ROWS(leg_rows, NULL);
}

static void turns_are_right_unless_left_is_said(void **state) {
  (void)state;
  ASSERT_ROWS(turn_rows, NULL);
}

static void times_are_understood_in_figures_and_as_spoken(void **state) {
  (void)state;
  ASSERT_ROWS(time_rows, NULL);
}

static void altitudes_and_speeds_are_understood(void **state) {
  (void)state;
  ASSERT_ROWS(level_rows, NULL);
}

static void order_filler_and_corrections_do_not_matter(void **state) {
  (void)state;
  ASSERT_ROWS(order_rows, NULL);
}

/* AIM 5-3-8 j4(a): the standard time follows the altitude. */
static void the_leg_left_out_goes_by_the_altitude(void **state) {
  (void)state;
  static const struct {
    const char *altitude, *said;
  } rows[] = {{"maintain one four thousand", "1 minute"}, {"FL141", "1 1/2 minutes"}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    char text[200];
    snprintf(text, sizeof text, HOLD "%s, EFC 1825", rows[i].altitude);
    ox_clearance c;
    ox_clearance_read(text, NULL, NULL, &c);
    bool found = false;
    for (size_t d = 0; d < c.default_count; d++)
      found = found || (c.defaults[d].kind == OX_ITEM_LEG &&
                        strstr(c.defaults[d].reason, rows[i].said) != NULL);
    assert_true(found);
  }
}

/* Outbound time is the ICAO way to time, inbound leg the US one. */
static void a_timed_leg_says_which_leg_is_timed(void **state) {
  (void)state;
  ox_case base = ox_case_default();
  base.technique.timing = OX_TIMING_INBOUND;
  ox_clearance c;
  ox_clearance_read(HOLD "outbound time 1 minute", &base, NULL, &c);
  assert_int_equal(c.result.technique.timing, OX_TIMING_OUTBOUND);
  ox_clearance_read(HOLD "1 minute legs", &base, NULL, &c);
  assert_int_equal(c.result.technique.timing, OX_TIMING_INBOUND);
  base.technique.timing = OX_TIMING_OUTBOUND;
  ox_clearance_read(HOLD "inbound leg 1 minute", &base, NULL, &c);
  assert_int_equal(c.result.technique.timing, OX_TIMING_INBOUND);
  ox_clearance_read(HOLD "5 mile inbound legs", &base, NULL, &c);
  assert_int_equal(c.result.hold.leg_end, OX_LEG_END_INBOUND);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(radials_courses_and_bearings_tell_the_inbound_course),
      cmocka_unit_test(a_fix_is_found_wherever_it_stands),
      cmocka_unit_test(legs_are_minutes_seconds_or_miles),
      cmocka_unit_test(turns_are_right_unless_left_is_said),
      cmocka_unit_test(times_are_understood_in_figures_and_as_spoken),
      cmocka_unit_test(altitudes_and_speeds_are_understood),
      cmocka_unit_test(order_filler_and_corrections_do_not_matter),
      cmocka_unit_test(the_leg_left_out_goes_by_the_altitude),
      cmocka_unit_test(a_timed_leg_says_which_leg_is_timed),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
