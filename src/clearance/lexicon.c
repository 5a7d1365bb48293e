/* The words of the trade that a clearance is made of, full and in pilots' shorthand, in alphabetic
 * order for the search. A word that is not here can only be part of a name. */
#include <string.h>

#include "tokens.h"

enum { LONGEST = 16 };

static const clr_word lexicon[] = {
    {"a", T_ARTICLE, 0}, {"abeam", T_FILLER, 0}, {"about", T_FILLER, 0}, {"above", T_ABOVE, 0},
    {"additional", T_ADDITIONAL, 0}, {"addl", T_ADDITIONAL, 0}, {"advise", T_FILLER, 0},
    {"affirm", T_FILLER, 0}, {"after", T_PAST, 0}, {"afternoon", T_DAYPART, 12},
    {"ahead", T_AHEAD, 0}, {"airspeed", T_SPEED, 0},
    {"airway", T_AIRWAY_WORD, 0}, {"airways", T_AIRWAY_WORD, 0},
    {"ait", T_DIGIT, 8}, {"all", T_FILLER, 0}, {"along", T_ON, 0}, {"alt", T_ALTITUDE, 0},
    {"altitude", T_ALTITUDE, 0}, {"am", T_DAYPART, 0}, {"an", T_ARTICLE, 0}, {"and", T_AND, 0},
    {"anticipate", T_ANTICIPATE, 0}, {"anticipated", T_ANTICIPATE, 0}, {"apch", T_APPROACH, 0},
    {"app", T_APPROACH, 0}, {"approach", T_APPROACH, 0}, {"approximately", T_FILLER, 0},
    {"arc", T_ARC, 0}, {"as", T_AS, 0}, {"at", T_AT, 0}, {"atd", T_DME, 0},
    {"awy", T_AIRWAY_WORD, 0}, {"azimuth", T_RADIAL, 0}, {"be", T_ARTICLE, 0},
    {"beacon", T_STATION, 0}, {"bearing", T_BEARING, 0}, {"below", T_ABOVE, 0},
    {"between", T_BETWEEN, 0}, {"block", T_FILLER, 0}, {"bottom", T_BOTTOM, 0},
    {"brg", T_BEARING, 0}, {"btn", T_BETWEEN, 0}, {"btw", T_BETWEEN, 0}, {"btwn", T_BETWEEN, 0},
    {"by", T_FILLER, 0}, {"cancel", T_CANCEL, 0}, {"cancelled", T_CANCEL, 0},
    {"charted", T_PUBLISHED, 0}, {"cl", T_CLEARED, 0}, {"clear", T_CLEARED, 0},
    {"clearance", T_CLEARANCE, 0}, {"cleared", T_CLEARED, 0}, {"climb", T_CLIMB, 0},
    {"climbing", T_CLIMB, 0}, {"clnc", T_CLEARANCE, 0}, {"clr", T_CLEARED, 0},
    {"clrd", T_CLEARED, 0}, {"clx", T_CLEARANCE, 0}, {"continue", T_CONTINUE, 0},
    {"continuing", T_CONTINUE, 0}, {"copy", T_FILLER, 0}, {"correction", T_CORRECTION, 0},
    {"course", T_COURSE, 0}, {"courses", T_COURSE, 0}, {"cross", T_CROSS, 0},
    {"crossing", T_CROSS, 0}, {"crs", T_COURSE, 0}, {"d", T_D, 0}, {"dct", T_DIRECT, 0},
    {"decimal", T_POINT, 0}, {"deg", T_DEGREES, 0}, {"degree", T_DEGREES, 0},
    {"degrees", T_DEGREES, 0}, {"degs", T_DEGREES, 0}, {"delay", T_DELAY, 0},
    {"delays", T_DELAY, 0}, {"depart", T_LEAVE, 0}, {"depicted", T_PUBLISHED, 0},
    {"descend", T_CLIMB, 0}, {"descending", T_CLIMB, 0}, {"descent", T_CLIMB, 0},
    {"determined", T_UNKNOWN, 0}, {"direct", T_DIRECT, 0}, {"discretion", T_FILLER, 0},
    {"disregard", T_CORRECTION, 0}, {"distance", T_DISTANCE, 0}, {"dla", T_DELAY, 0},
    {"dly", T_DELAY, 0}, {"dme", T_DME, 0}, {"e", T_DIR1, 90}, {"eac", T_EFC, 0},
    {"east", T_DIR, 90}, {"eat", T_EFC, 0}, {"ect", T_EFC, 0}, {"efc", T_EFC, 0},
    {"eight", T_DIGIT, 8}, {"eighteen", T_TEEN, 18}, {"eighty", T_TENS, 80}, {"eleven", T_TEEN, 11},
    {"en", T_ENROUTE, 0}, {"enroute", T_ENROUTE, 0}, {"er", T_FILLER, 0},
    {"evening", T_DAYPART, 12}, {"exceed", T_EXCEED, 0}, {"exp", T_EXPECT, 0},
    {"expct", T_EXPECT, 0}, {"expect", T_EXPECT, 0}, {"expected", T_EXPECT, 0},
    {"expecting", T_EXPECT, 0}, {"extend", T_ADJUST, 0}, {"feet", T_FEET, 0}, {"fife", T_DIGIT, 5},
    {"fifteen", T_TEEN, 15}, {"fifty", T_TENS, 50}, {"final", T_FINAL, 0}, {"five", T_DIGIT, 5},
    {"fix", T_POINT_TYPE, 0}, {"fixes", T_POINT_TYPE, 0}, {"fl", T_FL, 0}, {"flight", T_FLIGHT, 0},
    {"fly", T_FLY, 0}, {"foot", T_FEET, 0}, {"for", T_FOR, 0}, {"forty", T_TENS, 40},
    {"four", T_DIGIT, 4}, {"fourteen", T_TEEN, 14}, {"fower", T_DIGIT, 4}, {"from", T_FROM, 0},
    {"ft", T_FEET, 0}, {"further", T_FURTHER, 0}, {"furthr", T_FURTHER, 0}, {"h", T_H, 0},
    {"half", T_HALF, 0}, {"hand", T_HAND, 0}, {"handed", T_HAND, 0}, {"hdg", T_HEADING, 0},
    {"heading", T_HEADING, 0}, {"hld", T_HOLD, 0}, {"hldg", T_HOLD, 0}, {"hldng", T_HOLD, 0},
    {"hold", T_HOLD, 0}, {"holding", T_HOLD, 0}, {"holds", T_HOLD, 0}, {"hour", T_HOUR, 0},
    {"hours", T_HOUR, 0}, {"hr", T_HOUR, 0}, {"hrs", T_HOUR, 0}, {"hundred", T_HUNDRED, 0},
    {"ias", T_SPEED, 0}, {"ib", T_INBOUND, 0}, {"ils", T_FILLER, 0}, {"in", T_IN, 0},
    {"inb", T_INBOUND, 0}, {"inbd", T_INBOUND, 0}, {"inbound", T_INBOUND, 0},
    {"indefinite", T_UNKNOWN, 0}, {"indicated", T_FILLER, 0}, {"instructions", T_FILLER, 0},
    {"int", T_POINT_TYPE, 0}, {"intersection", T_POINT_TYPE, 0}, {"is", T_ARTICLE, 0},
    {"it", T_FILLER, 0}, {"j", T_AIRWAY_LETTER, 74}, {"jet", T_AIRWAY_LETTER, 74}, {"k", T_K, 0},
    {"kias", T_KNOTS, 0}, {"knot", T_KNOTS, 0}, {"knots", T_KNOTS, 0}, {"kt", T_KNOTS, 0},
    {"kts", T_KNOTS, 0}, {"l", T_LEFT, 0}, {"leave", T_LEAVE, 0}, {"left", T_LEFT, 0},
    {"leg", T_LEG, 0}, {"legs", T_LEG, 0}, {"length", T_LENGTH, 0}, {"lengthen", T_ADJUST, 0},
    {"lengths", T_LENGTH, 0}, {"less", T_MAX, 0}, {"level", T_LEVEL, 0}, {"lh", T_LEFT, 0},
    {"limit", T_LIMIT, 0}, {"limiting", T_LIMIT, 0}, {"limits", T_LIMIT, 0},
    {"loc", T_LOCALIZER, 0}, {"local", T_LOCAL, 0}, {"localiser", T_LOCALIZER, 0},
    {"localizer", T_LOCALIZER, 0}, {"locator", T_STATION, 0}, {"lt", T_LEFT, 0}, {"m", T_M, 0},
    {"magnetic", T_FILLER, 0}, {"maint", T_MAINTAIN, 0}, {"maintain", T_MAINTAIN, 0},
    {"make", T_FILLER, 0}, {"making", T_FILLER, 0}, {"marker", T_POINT_TYPE, 0}, {"max", T_MAX, 0},
    {"maximum", T_MAX, 0}, {"mi", T_MILE, 0}, {"mile", T_MILE, 0}, {"miles", T_MILE, 0},
    {"min", T_MINUTE, 0}, {"mins", T_MINUTE, 0}, {"minus", T_MINUS, 0}, {"minute", T_MINUTE, 0},
    {"minutes", T_MINUTE, 0}, {"mntn", T_MAINTAIN, 0}, {"morning", T_DAYPART, 0},
    {"msl", T_FEET, 0}, {"n", T_DIR1, 0}, {"nautical", T_MILE, 0}, {"ndb", T_STATION, 0},
    {"ne", T_DIR, 45}, {"never", T_NOT, 0}, {"nine", T_DIGIT, 9}, {"niner", T_DIGIT, 9},
    {"nineteen", T_TEEN, 19}, {"ninety", T_TENS, 90}, {"nm", T_MILE, 0}, {"no", T_NO, 0},
    {"non", T_NON, 0}, {"nonstandard", T_NONSTANDARD, 0}, {"north", T_DIR, 0},
    {"northeast", T_DIR, 45}, {"northwest", T_DIR, 315}, {"not", T_NOT, 0}, {"now", T_NOW, 0},
    {"nw", T_DIR, 315}, {"o'clock", T_OCLOCK, 0}, {"ob", T_OUTBOUND, 0}, {"oclock", T_OCLOCK, 0},
    {"of", T_OF, 0}, {"oh", T_DIGIT, 0}, {"ok", T_FILLER, 0}, {"okay", T_FILLER, 0},
    {"on", T_ON, 0}, {"one", T_DIGIT, 1}, {"onward", T_ONWARD, 0}, {"or", T_OR, 0},
    {"orbit", T_PATTERN, 0}, {"orbits", T_PATTERN, 0}, {"outb", T_OUTBOUND, 0},
    {"outbd", T_OUTBOUND, 0}, {"outbound", T_OUTBOUND, 0}, {"over", T_AT, 0}, {"overhead", T_AT, 0},
    {"past", T_PAST, 0}, {"pattern", T_PATTERN, 0}, {"patterns", T_PATTERN, 0},
    {"pilot", T_FILLER, 0}, {"pilot's", T_FILLER, 0}, {"pilots", T_FILLER, 0},
    {"please", T_FILLER, 0}, {"pm", T_DAYPART, 12}, {"point", T_POINT, 0},
    {"position", T_POSITION, 0}, {"present", T_PRESENT, 0}, {"proceed", T_PROCEED, 0},
    {"proceeding", T_PROCEED, 0}, {"publ", T_PUBLISHED, 0}, {"published", T_PUBLISHED, 0},
    {"q", T_AIRWAY_LETTER, 81}, {"qdm", T_QDM, 0}, {"qdr", T_QDR, 0}, {"quarter", T_QUARTER, 0},
    {"quarters", T_QUARTER, 0}, {"r", T_R, 0}, {"racetrack", T_PATTERN, 0}, {"rad", T_RADIAL, 0},
    {"radial", T_RADIAL, 0}, {"rdl", T_RADIAL, 0}, {"ready", T_FILLER, 0},
    {"reduce", T_REDUCE, 0}, {"remain", T_CONTINUE, 0}, {"rh", T_RIGHT, 0}, {"right", T_RIGHT, 0},
    {"rnav", T_FILLER, 0},
    {"roger", T_FILLER, 0}, {"route", T_ROUTE, 0}, {"routing", T_ROUTE, 0}, {"rt", T_RIGHT, 0},
    {"s", T_DIR1, 180}, {"se", T_DIR, 135}, {"sec", T_SECOND, 0}, {"second", T_SECOND, 0},
    {"seconds", T_SECOND, 0}, {"secs", T_SECOND, 0}, {"seven", T_DIGIT, 7},
    {"seventeen", T_TEEN, 17}, {"seventy", T_TENS, 70}, {"shorten", T_ADJUST, 0},
    {"side", T_SIDE_WORD, 0}, {"sir", T_FILLER, 0}, {"six", T_DIGIT, 6}, {"sixteen", T_TEEN, 16},
    {"sixty", T_TENS, 60}, {"slow", T_REDUCE, 0}, {"slower", T_MAX, 0}, {"south", T_DIR, 180},
    {"southeast", T_DIR, 135}, {"southwest", T_DIR, 225}, {"spd", T_SPEED, 0},
    {"speed", T_SPEED, 0}, {"speeds", T_SPEED, 0}, {"stand", T_FILLER, 0},
    {"standard", T_STANDARD, 0}, {"std", T_STANDARD, 0}, {"sw", T_DIR, 225},
    {"t", T_AIRWAY_LETTER, 84}, {"tacan", T_STATION, 0}, {"ten", T_TEEN, 10},
    {"terminal", T_TERMINAL, 0}, {"thank", T_FILLER, 0}, {"thanks", T_FILLER, 0},
    {"that", T_FILLER, 0}, {"the", T_ARTICLE, 0}, {"then", T_FILLER, 0},
    {"thereafter", T_FURTHER, 0}, {"thirteen", T_TEEN, 13}, {"thirty", T_TENS, 30},
    {"this", T_FILLER, 0}, {"thousand", T_THOUSAND, 0}, {"three", T_DIGIT, 3}, {"through", T_TO, 0},
    {"till", T_UNTIL, 0}, {"time", T_TIME, 0}, {"to", T_TO, 0}, {"top", T_TOP, 0},
    {"tousand", T_THOUSAND, 0}, {"track", T_COURSE, 0}, {"traffic", T_TRAFFIC, 0},
    {"transition", T_TRANSITION, 0}, {"tree", T_DIGIT, 3}, {"trk", T_COURSE, 0},
    {"trns", T_TURN, 0}, {"turn", T_TURN, 0}, {"turns", T_TURN, 0}, {"twelve", T_TEEN, 12},
    {"twenty", T_TENS, 20}, {"two", T_DIGIT, 2}, {"uh", T_FILLER, 0}, {"um", T_FILLER, 0},
    {"undetermined", T_UNKNOWN, 0}, {"unknown", T_UNKNOWN, 0}, {"until", T_UNTIL, 0},
    {"utc", T_UTC, 0}, {"v", T_AIRWAY_LETTER, 86}, {"via", T_VIA, 0},
    {"victor", T_AIRWAY_LETTER, 86}, {"vor", T_STATION, 0}, {"vordme", T_STATION, 0},
    {"vortac", T_STATION, 0}, {"w", T_DIR1, 270}, {"waypoint", T_POINT_TYPE, 0},
    {"west", T_DIR, 270}, {"will", T_FILLER, 0}, {"with", T_FILLER, 0}, {"wpt", T_POINT_TYPE, 0},
    {"wun", T_DIGIT, 1}, {"you", T_FILLER, 0}, {"your", T_ARTICLE, 0}, {"z", T_UTC, 0},
    {"zero", T_DIGIT, 0}, {"zulu", T_UTC, 0},
};

const clr_word *clr_lexicon(size_t *count) {
  *count = sizeof lexicon / sizeof *lexicon;
  return lexicon;
}

/* ASCII only: the lexicon has no other letters and the locale must not matter. */
static char lower(char c) {
  return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

const clr_word *clr_lookup(const char *bytes, size_t length) {
  char word[LONGEST + 1];
  if (length == 0 || length > LONGEST) return NULL;
  for (size_t i = 0; i < length; i++)
    word[i] = lower(bytes[i]);
  word[length] = '\0';
  size_t low = 0, high = sizeof lexicon / sizeof *lexicon;
  while (low < high) {
    size_t middle = low + (high - low) / 2;
    int order = strcmp(word, lexicon[middle].word);
    if (order == 0) return &lexicon[middle];
    if (order < 0)
      high = middle;
    else
      low = middle + 1;
  }
  return NULL;
}
