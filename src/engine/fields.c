/* The table of a case's fields: key, range, unit and choices stand here and nowhere else. */
#include "oxbow/fields.h"

#include <math.h>
#include <string.h>

#include "oxbow/mark.h"

static const char *const turns_words[] = {"right", "left", NULL};
static const char *const leg_by_words[] = {"time", "distance", NULL};
static const char *const leg_end_words[] = {"outbound", "inbound", NULL};
static const char *const ends_words[] = {"circuits", "reversal", "altitude", "efc", NULL};
static const char *const turn_by_words[] = {"lesser", "bank", NULL};
static const char *const line_words[] = {"heading", "track", NULL};
static const char *const lead_words[] = {"exact", "none", "degrees", NULL};
static const char *const at_radial_words[] = {"turn", "follow", NULL};
static const char *const north_words[] = {"true", "magnetic", NULL};
static const char *const timing_words[] = {"inbound", "outbound", NULL};
static const char *const clock_words[] = {"abeam_or_level", "abeam", "level", NULL};
static const char *const drift_words[] = {"none", "single", "double", "triple", "exact", "track",
                                          NULL};
static const char *const outbound_words[] = {"nominal", "adjust", "rule", "exact", NULL};
static const char *const entry_words[] = {"auto", "direct", "parallel", "teardrop", NULL};
static const char *const sector_words[] = {"heading", "track", NULL};

static const char *const fuel_words[] = {"lb", "kg", "usgal", "l", NULL};
static const char *const limit_words[] = {"unknown", "yes", "no", NULL};
static const char *const course_words[] = {"inbound", "outbound", NULL};
static const char *const shown_turns_words[] = {"not_shown", "right", "left", NULL};
static const char *const direction_words[] = {"not_shown", "north", "northeast", "east",
                                              "southeast", "south", "southwest", "west",
                                              "northwest", NULL};

#define NUMBER(key, member, min, max, zero, allowed)                                             \
  {key, OX_FIELD_NUMBER, offsetof(ox_case, member), min, max, zero, allowed, NULL}
#define WHOLE(key, member, min, max, allowed)                                                    \
  {key, OX_FIELD_WHOLE, offsetof(ox_case, member), min, max, false, allowed, NULL}
#define CHOICE(key, member, words, allowed)                                                      \
  {key, OX_FIELD_CHOICE, offsetof(ox_case, member), 0,                                           \
   (double)(sizeof words / sizeof *words - 2), false, allowed, words}

static const ox_field case_fields[] = {
    NUMBER("hold.inbound_deg", hold.inbound_deg, 0, 360, false, N_("a course (0 to 360)")),
    CHOICE("hold.turns", hold.turns, turns_words, N_("\"right\" or \"left\"")),
    CHOICE("hold.leg.by", hold.leg_by, leg_by_words, N_("\"time\" or \"distance\"")),
    NUMBER("hold.leg.s", hold.leg_s, 10, 600, true, N_("a leg time (10 to 600 seconds)")),
    NUMBER("hold.leg.nm", hold.leg_nm, 0.5, 60, true, N_("a leg length (0.5 to 60 NM)")),
    CHOICE("hold.leg.end", hold.leg_end, leg_end_words, N_("\"outbound\" or \"inbound\"")),
    NUMBER("hold.leg.station.radial_deg", hold.station.radial_deg, 0, 360, false,
           N_("a radial (0 to 360)")),
    NUMBER("hold.leg.station.nm", hold.station.nm, 0, 200, false, N_("a distance (0 to 200 NM)")),
    NUMBER("hold.leg.station.elevation_ft", hold.station.elevation_ft, -1500, 20000, false,
           N_("an elevation (-1500 to 20000 ft)")),
    NUMBER("hold.leg.station.limiting_radial_deg", hold.station.limiting_radial_deg, 0.1, 360, true,
           N_("a radial from the station (0.1 to 360, north is 360)")),
    NUMBER("hold.altitude_ft", hold.altitude_ft, -1500, 45000, false,
           N_("an altitude (-1500 to 45000 ft)")),
    NUMBER("hold.limit_kias", hold.limit_kias, 50, 400, true, N_("a speed limit (50 to 400 KIAS)")),
    CHOICE("hold.ends", hold.ends, ends_words,
           N_("\"circuits\", \"reversal\", \"altitude\" or \"efc\"")),
    NUMBER("hold.climb_to_ft", hold.climb_to_ft, -1500, 45000, true,
           N_("an altitude (-1500 to 45000 ft)")),
    NUMBER("hold.climb_ft_min", hold.climb_ft_min, 100, 6000, false,
           N_("a rate of climb (100 to 6000 ft a minute)")),
    NUMBER("arrival.heading_deg", arrival.heading_deg, 0, 360, false, N_("a heading (0 to 360)")),
    NUMBER("arrival.distance_nm", arrival.distance_nm, 0, 100, false,
           N_("a distance (0 to 100 NM)")),
    NUMBER("aircraft.ias_kt", aircraft.ias_kt, 30, 400, true,
           N_("an indicated airspeed (30 to 400 kt)")),
    NUMBER("aircraft.tas_kt", aircraft.tas_kt, 30, 600, true, N_("a true airspeed (30 to 600 kt)")),
    NUMBER("aircraft.isa_dev_c", aircraft.isa_dev_c, -60, 60, false,
           N_("a deviation from the standard temperature (-60 to 60 °C)")),
    NUMBER("aircraft.rate_deg_s", aircraft.rate_deg_s, 0.5, 6, false,
           N_("a rate of turn (0.5 to 6 degrees a second)")),
    NUMBER("aircraft.max_bank_deg", aircraft.max_bank_deg, 5, 45, false,
           N_("a bank limit (5 to 45 degrees)")),
    CHOICE("aircraft.turn_by", aircraft.turn_by, turn_by_words, N_("\"lesser\" or \"bank\"")),
    NUMBER("variation_deg", variation_deg, -180, 180, false,
           N_("a variation (-180 to 180, east positive)")),
    CHOICE("technique.timing", technique.timing, timing_words, N_("\"inbound\" or \"outbound\"")),
    CHOICE("technique.clock", technique.clock, clock_words,
           N_("\"abeam_or_level\", \"abeam\" or \"level\"")),
    CHOICE("technique.drift", technique.drift, drift_words,
           N_("\"none\", \"single\", \"double\", \"triple\", \"exact\" or \"track\"")),
    CHOICE("technique.outbound", technique.outbound, outbound_words,
           N_("\"nominal\", \"adjust\", \"rule\" or \"exact\"")),
    NUMBER("technique.intercept_deg", technique.intercept_deg, 5, 90, false,
           N_("an intercept angle (5 to 90)")),
    CHOICE("technique.entry", technique.entry, entry_words,
           N_("\"auto\", \"direct\", \"parallel\" or \"teardrop\"")),
    CHOICE("technique.sector", technique.sector, sector_words, N_("\"heading\" or \"track\"")),
    NUMBER("technique.entry_s", technique.entry_s, 10, 300, false,
           N_("an entry time (10 to 300 seconds)")),
    CHOICE("technique.entry_line", technique.entry_line, line_words,
           N_("\"heading\" or \"track\"")),
    NUMBER("technique.reaction_s", technique.reaction_s, 0, 15, false,
           N_("a delay (0 to 15 seconds)")),
    CHOICE("technique.lead", technique.lead, lead_words, N_("\"exact\", \"none\" or \"degrees\"")),
    NUMBER("technique.lead_deg", technique.lead_deg, 0.5, 30, false,
           N_("a lead (0.5 to 30 degrees of bearing)")),
    CHOICE("technique.at_radial", technique.at_radial, at_radial_words,
           N_("\"turn\" or \"follow\"")),
    NUMBER("technique.roll_s", technique.roll_s, 0, 15, false, N_("a delay (0 to 15 seconds)")),
    WHOLE("technique.circuits", technique.circuits, 1, 40, N_("a number of circuits (1 to 40)")),
    NUMBER("fuel.on_board", fuel.on_board, 0.1, 999999, true,
           N_("an amount of fuel (0.1 to 999999)")),
    NUMBER("fuel.flow_h", fuel.flow_h, 0.1, 99999, true, N_("a fuel flow an hour (0.1 to 99999)")),
    NUMBER("fuel.alternate", fuel.alternate, 0.1, 999999, true,
           N_("an amount of fuel (0.1 to 999999)")),
    NUMBER("fuel.alternate_min", fuel.alternate_min, 1, 600, true, N_("a time (1 to 600 minutes)")),
    NUMBER("fuel.reserve", fuel.reserve, 0.1, 999999, true,
           N_("an amount of fuel (0.1 to 999999)")),
    NUMBER("fuel.reserve_min", fuel.reserve_min, 1, 600, true, N_("a time (1 to 600 minutes)")),
    CHOICE("fuel.unit", fuel.unit, fuel_words, N_("\"lb\", \"kg\", \"usgal\" or \"l\"")),
    {"clock.utc_offset_min", OX_FIELD_WHOLE, offsetof(ox_case, clock.utc_offset_min), -720, 840,
     true, N_("minutes from UTC to local time (-720 to 840)"), NULL},
    CHOICE("lost_radio.limit_starts_approach", lost_radio.limit_starts_approach, limit_words,
           N_("\"unknown\", \"yes\" or \"no\"")),
    CHOICE("shown.direction", shown.direction, direction_words,
           N_("\"not_shown\", \"north\", \"northeast\", \"east\", \"southeast\", \"south\", "
              "\"southwest\", \"west\" or \"northwest\"")),
    NUMBER("shown.course_deg", shown.course_deg, 1, 360, true, N_("a course (1 to 360)")),
    CHOICE("shown.course_is", shown.course_is, course_words, N_("\"inbound\" or \"outbound\"")),
    CHOICE("shown.turns", shown.turns, shown_turns_words,
           N_("\"not_shown\", \"right\" or \"left\"")),
    NUMBER("shown.leg_s", shown.leg_s, 10, 600, true, N_("a leg time (10 to 600 seconds)")),
    NUMBER("shown.leg_nm", shown.leg_nm, 0.5, 60, true, N_("a leg length (0.5 to 60 NM)")),
};

#define ROW(key, kind, member, min, max, allowed, words)                                         \
  {key, kind, offsetof(ox_wind_row, member), min, max, false, allowed, words}

static const ox_field wind_fields[] = {
    ROW("altitude_ft", OX_FIELD_NUMBER, altitude_ft, -1500, 60000,
        N_("an altitude (-1500 to 60000 ft)"), NULL),
    ROW("from_deg", OX_FIELD_NUMBER, from_deg, 0, 360, N_("a wind direction (0 to 360)"), NULL),
    ROW("kt", OX_FIELD_NUMBER, kt, 0, 250, N_("a wind speed (0 to 250 kt)"), NULL),
    ROW("north", OX_FIELD_CHOICE, north, 0, 1, N_("\"true\" or \"magnetic\""), north_words),
};

#define CHANGE(key, kind, member, min, max, allowed, words)                                      \
  {key, kind, offsetof(ox_wind_change, member), min, max, false, allowed, words}

static const ox_field change_fields[] = {
    CHANGE("at_min", OX_FIELD_NUMBER, at_min, 0.1, 300, N_("a time (0.1 to 300 minutes)"), NULL),
    CHANGE("from_deg", OX_FIELD_NUMBER, from_deg, 0, 360, N_("a wind direction (0 to 360)"), NULL),
    CHANGE("kt", OX_FIELD_NUMBER, kt, 0, 250, N_("a wind speed (0 to 250 kt)"), NULL),
    CHANGE("north", OX_FIELD_CHOICE, north, 0, 1, N_("\"true\" or \"magnetic\""), north_words),
};

const ox_field *ox_fields(size_t *count) {
  *count = sizeof case_fields / sizeof *case_fields;
  return case_fields;
}

const ox_field *ox_wind_fields(size_t *count) {
  *count = sizeof wind_fields / sizeof *wind_fields;
  return wind_fields;
}

const ox_field *ox_wind_change_fields(size_t *count) {
  *count = sizeof change_fields / sizeof *change_fields;
  return change_fields;
}

const ox_field *ox_field_by_key(const char *key) {
  for (size_t i = 0; i < sizeof case_fields / sizeof *case_fields; i++)
    if (strcmp(case_fields[i].key, key) == 0) return &case_fields[i];
  return NULL;
}

/* A choice is an enum, which has the size of an int with every compiler of this platform; copying
 * the bytes keeps clear of aliasing. */
_Static_assert(sizeof(ox_turns) == sizeof(int), "an enum is stored as an int");

double ox_field_get(const ox_field *field, const void *base) {
  const char *at = (const char *)base + field->offset;
  if (field->kind == OX_FIELD_NUMBER) {
    double number;
    memcpy(&number, at, sizeof number);
    return number;
  }
  int whole;
  memcpy(&whole, at, sizeof whole);
  return (double)whole;
}

void ox_field_set(const ox_field *field, void *base, double value) {
  char *at = (char *)base + field->offset;
  if (field->kind == OX_FIELD_NUMBER) {
    memcpy(at, &value, sizeof value);
    return;
  }
  int whole = (int)value;
  memcpy(at, &whole, sizeof whole);
}

bool ox_field_accepts(const ox_field *field, double value) {
  if (!isfinite(value)) return false;
  if (field->kind != OX_FIELD_NUMBER && value != floor(value)) return false;
  if (field->zero_is_absent && value == 0.0) return true;
  return value >= field->min && value <= field->max;
}
