/* The inputs of the window as one table, grouped as a controller and a pilot think. */
#include "ox_input.h"

#include <math.h>
#include <string.h>

#include <glib.h>

#include "oxbow/atmosphere.h"
#include "oxbow/limits.h"
#include "oxbow/presets.h"
#include "oxbow/text.h"
#include "oxbow/units.h"

#define KT "kt|kts|knot|knots|kias|ktas"
#define DEG "deg|degrees|degree"
#define NM "nm|nmi"
#define FT "ft|feet"
#define SEC "s|sec|seconds"

#define TEXT(group, key, label, tip)                                                             \
  {group, OX_SOURCE_TEXT, key, label, tip, OX_FORM_PLAIN, NULL, NULL, 0, 0, 0}
#define FIELD(group, key, label, tip, form, unit, units, decimals, step, page)                   \
  {group, OX_SOURCE_FIELD, key, label, tip, form, unit, units, decimals, step, page}
#define PICK(group, key, label, tip)                                                             \
  {group, OX_SOURCE_FIELD, key, label, tip, OX_FORM_PLAIN, NULL, NULL, 0, 0, 0}
#define WIND(key, label, tip, form, unit, units, step, page)                                     \
  {OX_GROUP_WIND, OX_SOURCE_WIND, key, label, tip, form, unit, units, 1, step, page}

static const ox_input inputs[] = {
    TEXT(OX_GROUP_CASE, "name", N_("Case na_me"), N_("The name of this case in the lesson")),

    TEXT(OX_GROUP_HOLD, "hold.fix", N_("Fi_x"), N_("The name of the holding fix")),
    FIELD(OX_GROUP_HOLD, "hold.inbound_deg", N_("_Inbound course"),
          N_("The course flown towards the fix, magnetic"), OX_FORM_BEARING, "°", DEG, 1, 1, 10),
    PICK(OX_GROUP_HOLD, "hold.turns", N_("T_urns"), N_("Standard turns are to the right")),
    PICK(OX_GROUP_HOLD, "hold.leg.by", N_("Leg b_y"),
         N_("Whether the leg is given in time or distance")),
    FIELD(OX_GROUP_HOLD, "hold.leg.s", N_("_Leg time"),
          N_("Seconds, or minutes as 1:30. Empty: the standard time for the altitude"),
          OX_FORM_SECONDS, "s", SEC, 1, 5, 30),
    FIELD(OX_GROUP_HOLD, "hold.leg.nm", N_("_Leg length"), N_("The length of the leg"),
          OX_FORM_PLAIN, "NM", NM, 2, 0.5, 5),
    PICK(OX_GROUP_HOLD, "hold.leg.end", N_("Length _of"),
         N_("Whether the distance limits the outbound leg or is the length of the inbound leg")),
    {OX_GROUP_HOLD, OX_SOURCE_STATION, "hold.leg.station", N_("DME station"),
     N_("The distance is read as slant range from a DME station. Offered where it ends the "
        "outbound leg"),
     OX_FORM_PLAIN, NULL, NULL, 0, 0, 0},
    FIELD(OX_GROUP_HOLD, "hold.leg.station.radial_deg", N_("Station bearing"),
          N_("The bearing from the fix to the station, magnetic"), OX_FORM_BEARING, "°", DEG, 1, 1,
          10),
    FIELD(OX_GROUP_HOLD, "hold.leg.station.nm", N_("Station distance"),
          N_("From the fix to the station over the ground"), OX_FORM_PLAIN, "NM", NM, 2, 1, 5),
    FIELD(OX_GROUP_HOLD, "hold.leg.station.elevation_ft", N_("Station elevation"),
          N_("The height of the station above the sea: the slant range counts from there"),
          OX_FORM_ALTITUDE, "ft", FT, 1, 100, 1000),
    FIELD(OX_GROUP_HOLD, "hold.leg.station.limiting_radial_deg", N_("Limiting radial"),
          N_("A radial from the station, magnetic, that ends the outbound leg too, if it comes "
             "before the distance. Empty: none"),
          OX_FORM_BEARING, "°", DEG, 1, 1, 10),
    FIELD(OX_GROUP_HOLD, "hold.altitude_ft", N_("_Altitude"),
          N_("Feet, or a flight level as FL180"), OX_FORM_ALTITUDE, "ft", FT, 1, 100, 1000),
    {OX_GROUP_HOLD, OX_SOURCE_EFC, "hold.efc", N_("E_FC"),
     N_("Expect further clearance: a time in UTC. Empty: none was given"), OX_FORM_CLOCK, "UTC",
     NULL, 0, 1, 10},
    FIELD(OX_GROUP_HOLD, "hold.limit_kias", N_("_Charted limit"),
          N_("The speed limit on the chart. Empty: the limit of the regulations for the altitude"),
          OX_FORM_PLAIN, "kt", KT, 1, 5, 10),
    PICK(OX_GROUP_HOLD, "hold.ends", N_("Hold _ends"),
         N_("After the circuits; on the first arrival over the fix established inbound; at the "
            "altitude climbed to; or at the EFC")),
    FIELD(OX_GROUP_HOLD, "hold.climb_to_ft", N_("Climb to"),
          N_("The altitude climbed or descended to from the fix on. Empty: level"),
          OX_FORM_ALTITUDE, "ft", FT, 1, 100, 1000),
    FIELD(OX_GROUP_HOLD, "hold.climb_ft_min", N_("Rate of climb"),
          N_("Feet a minute, up or down; needs an altitude to climb to"), OX_FORM_PLAIN, "ft/min",
          "ft/min|fpm|ft", 1, 50, 500),

    FIELD(OX_GROUP_ARRIVAL, "arrival.heading_deg", N_("_Heading"),
          N_("The heading on crossing the fix, magnetic"), OX_FORM_BEARING, "°", DEG, 1, 1, 10),
    FIELD(OX_GROUP_ARRIVAL, "arrival.distance_nm", N_("_Distance"),
          N_("How far from the fix the picture begins"), OX_FORM_PLAIN, "NM", NM, 2, 1, 5),
    {OX_GROUP_ARRIVAL, OX_SOURCE_FIX_AT, "arrival.fix_at", N_("Over the fix at"),
     N_("When the fix is crossed first: hours, minutes and seconds UTC. Empty: not given"),
     OX_FORM_CLOCK_S, "UTC", NULL, 0, 10, 60},

    FIELD(OX_GROUP_AIRCRAFT, "aircraft.ias_kt", N_("Indicated speed"),
          N_("Indicated airspeed. Empty: only the true airspeed is given"), OX_FORM_PLAIN, "kt", KT,
          1, 1, 10),
    FIELD(OX_GROUP_AIRCRAFT, "aircraft.tas_kt", N_("_True speed"),
          N_("True airspeed. Empty: worked out from the indicated airspeed"), OX_FORM_PLAIN, "kt",
          KT, 1, 1, 10),
    FIELD(OX_GROUP_AIRCRAFT, "aircraft.isa_dev_c", N_("ISA deviation"),
          N_("How much warmer the air is than the standard atmosphere"), OX_FORM_PLAIN, "°C",
          "c|deg c", 1, 1, 10),
    FIELD(OX_GROUP_AIRCRAFT, "aircraft.rate_deg_s", N_("_Rate of turn"),
          N_("The turn is flown at this rate or at the bank limit, whichever is less bank"),
          OX_FORM_PLAIN, "°/s", "deg/s|deg|degrees", 2, 0.5, 1),
    FIELD(OX_GROUP_AIRCRAFT, "aircraft.max_bank_deg", N_("_Bank limit"),
          N_("The turn is flown at the rate of turn or at this bank, whichever is less bank"),
          OX_FORM_PLAIN, "°", DEG, 1, 1, 5),
    PICK(OX_GROUP_AIRCRAFT, "aircraft.turn_by", N_("Ban_k flown"),
         N_("The lesser bank of the rate of turn and the bank limit, or the bank limit always")),

    WIND("wind.from_deg", N_("_Wind from"), N_("The direction the wind comes from"),
         OX_FORM_BEARING, "°", DEG, 10, 30),
    WIND("wind.north", N_("Directio_n is"),
         N_("Forecasts give true, towers and ATIS magnetic directions"), OX_FORM_PLAIN, NULL, NULL,
         0, 0),
    WIND("wind.kt", N_("Wind _speed"), N_("The speed of the wind; 0 is calm"), OX_FORM_PLAIN, "kt",
         KT, 1, 10),

    FIELD(OX_GROUP_VARIATION, "variation_deg", N_("_Variation"),
          N_("Magnetic variation at the fix, as 12 W or 3.5 E"), OX_FORM_VARIATION, NULL, DEG, 1, 1,
          5),

    {OX_GROUP_TECHNIQUE, OX_SOURCE_PRESET, "preset", N_("_Preset"),
     N_("A technique as a publication describes it: sets timing, drift, entry and turn at once"),
     OX_FORM_PLAIN, NULL, NULL, 0, 0, 0},
    PICK(OX_GROUP_TECHNIQUE, "technique.timing", N_("Time is for the"),
         N_("Which leg is to last the leg time")),
    PICK(OX_GROUP_TECHNIQUE, "technique.clock", N_("Clock starts"),
         N_("Where the outbound time begins: at abeam, at wings level or at the later of both")),
    PICK(OX_GROUP_TECHNIQUE, "technique.drift", N_("Outbound drift"),
         N_("The outbound correction: a multiple of the inbound one, or exact")),
    PICK(OX_GROUP_TECHNIQUE, "technique.outbound", N_("Outbound time"),
         N_("How the outbound time is found")),
    PICK(OX_GROUP_TECHNIQUE, "technique.entry", N_("Entry"),
         N_("By the sector, or one that is ordered")),
    PICK(OX_GROUP_TECHNIQUE, "technique.sector", N_("Sector by"),
         N_("Whether the sector is told by the heading or by the track")),
    FIELD(OX_GROUP_TECHNIQUE, "technique.intercept_deg", N_("Intercept"),
          N_("The angle at which the inbound course is intercepted"), OX_FORM_PLAIN, "°", DEG, 1, 5,
          10),
    FIELD(OX_GROUP_TECHNIQUE, "technique.entry_s", N_("Entry time"),
          N_("How long the teardrop or parallel leg is flown"), OX_FORM_SECONDS, "s", SEC, 1, 5,
          30),
    PICK(OX_GROUP_TECHNIQUE, "technique.entry_line", N_("Entry le_gs as"),
         N_("Whether teardrop and parallel legs are headings, or tracks made good")),
    FIELD(OX_GROUP_TECHNIQUE, "technique.reaction_s", N_("Reaction"),
          N_("Seconds flown straight on before each turn: noticing that it is time"),
          OX_FORM_SECONDS, "s", SEC, 1, 1, 5),
    FIELD(OX_GROUP_TECHNIQUE, "technique.roll_s", N_("Rolling in"),
          N_("Seconds flown straight on before each turn: until the bank is on"), OX_FORM_SECONDS,
          "s", SEC, 1, 1, 5),
    PICK(OX_GROUP_TECHNIQUE, "technique.lead", N_("_Join the course"),
         N_("The turn onto the inbound course begins in time, only on crossing it, or so many "
            "degrees before it")),
    FIELD(OX_GROUP_TECHNIQUE, "technique.lead_deg", N_("Lead"),
          N_("The turn begins where the bearing to the fix is so many degrees off the course"),
          OX_FORM_PLAIN, "°", DEG, 1, 1, 5),
    PICK(OX_GROUP_TECHNIQUE, "technique.at_radial", N_("At the radial"),
         N_("On meeting the limiting radial: turn inbound, or follow it to the distance")),
    FIELD(OX_GROUP_TECHNIQUE, "technique.circuits", N_("Circuits"),
          N_("How many times round after the entry"), OX_FORM_PLAIN, NULL, NULL, 0, 1, 5),
};

const ox_input *ox_inputs(size_t *count) {
  *count = G_N_ELEMENTS(inputs);
  return inputs;
}

const ox_input *ox_input_by_key(const char *key) {
  for (size_t i = 0; i < G_N_ELEMENTS(inputs); i++)
    if (strcmp(inputs[i].key, key) == 0) return &inputs[i];
  return NULL;
}

const ox_field *ox_input_field(const ox_input *input) {
  if (input->source == OX_SOURCE_FIELD) return ox_field_by_key(input->key);
  if (input->source != OX_SOURCE_WIND) return NULL;
  size_t count;
  const ox_field *fields = ox_wind_fields(&count);
  for (size_t i = 0; i < count; i++)
    if (strcmp(fields[i].key, input->key + strlen("wind.")) == 0) return &fields[i];
  return NULL;
}

static ox_wind_row calm_row(void) {
  return (ox_wind_row){.altitude_ft = 0, .from_deg = 360, .kt = 0, .north = OX_NORTH_TRUE};
}

double ox_input_get(const ox_input *input, const ox_case *c) {
  ox_wind_row calm = calm_row();
  switch (input->source) {
  case OX_SOURCE_FIELD:
    return ox_field_get(ox_input_field(input), c);
  case OX_SOURCE_WIND:
    return ox_field_get(ox_input_field(input), c->wind_count > 0 ? &c->wind[0] : &calm);
  case OX_SOURCE_EFC:
    return c->hold.efc_min;
  case OX_SOURCE_FIX_AT:
    return c->arrival.fix_at_s;
  case OX_SOURCE_STATION:
    return c->hold.station.given ? 1 : 0;
  case OX_SOURCE_PRESET: {
    int preset = ox_preset_of(c);
    return preset >= 0 ? preset : (double)ox_preset_count();
  }
  case OX_SOURCE_TEXT:
    break;
  }
  return 0;
}

/* As long as the aircraft flies in the leg time, to the half mile. */
static double usual_leg_nm(const ox_case *c) {
  double tas_kt = c->aircraft.tas_kt > 0
                      ? c->aircraft.tas_kt
                      : ox_tas_kt(c->aircraft.ias_kt, c->hold.altitude_ft, c->aircraft.isa_dev_c);
  double leg_s = c->hold.leg_s > 0 ? c->hold.leg_s : ox_standard_leg_s(c->hold.altitude_ft);
  double leg_nm = round(2 * tas_kt * leg_s / OX_S_PER_H) / 2;
  const ox_field *field = ox_field_by_key("hold.leg.nm");
  return CLAMP(leg_nm, field->min, field->max);
}

void ox_input_apply(const ox_input *input, ox_case *c, double value) {
  switch (input->source) {
  case OX_SOURCE_FIELD:
    ox_field_set(ox_input_field(input), c, value);
    if (c->hold.leg_by == OX_LEG_BY_DISTANCE && c->hold.leg_nm == 0 &&
        strcmp(input->key, "hold.leg.by") == 0)
      c->hold.leg_nm = usual_leg_nm(c);
    break;
  case OX_SOURCE_WIND:
    if (c->wind_count == 0) {
      c->wind[0] = calm_row();
      c->wind_count = 1;
    }
    ox_field_set(ox_input_field(input), &c->wind[0], value);
    break;
  case OX_SOURCE_EFC:
    c->hold.efc_min = (int)value;
    break;
  case OX_SOURCE_FIX_AT:
    c->arrival.fix_at_s = (int)value;
    break;
  case OX_SOURCE_STATION:
    c->hold.station.given = value != 0;
    break;
  case OX_SOURCE_PRESET:
    if (value >= 0) ox_preset_apply((size_t)value, c);
    break;
  case OX_SOURCE_TEXT:
    break;
  }
}

char *ox_input_text(const ox_input *input, ox_case *c, size_t *bytes) {
  bool name = strcmp(input->key, "name") == 0;
  *bytes = name ? sizeof c->name : sizeof c->hold.fix;
  return name ? c->name : c->hold.fix;
}

bool ox_input_shown(const ox_input *input, const ox_case *c) {
  bool by_time = c->hold.leg_by == OX_LEG_BY_TIME;
  if (input->source == OX_SOURCE_WIND) return c->wind_count < 2;
  if (strcmp(input->key, "hold.leg.s") == 0) return by_time;
  if (strcmp(input->key, "hold.leg.nm") == 0) return !by_time;
  if (strcmp(input->key, "hold.leg.end") == 0) return !by_time;
  if (g_str_has_prefix(input->key, "hold.leg.station")) return !by_time;
  return true;
}

bool ox_input_sensitive(const ox_input *input, const ox_case *c) {
  bool ends_outbound =
      c->hold.leg_by == OX_LEG_BY_DISTANCE && c->hold.leg_end == OX_LEG_END_OUTBOUND;
  if (input->source == OX_SOURCE_STATION) return ends_outbound;
  if (g_str_has_prefix(input->key, "hold.leg.station."))
    return ends_outbound && c->hold.station.given;
  if (strcmp(input->key, "hold.climb_ft_min") == 0) return c->hold.climb_to_ft != 0;
  if (strcmp(input->key, "technique.lead_deg") == 0)
    return c->technique.lead == OX_LEAD_DEGREES;
  if (strcmp(input->key, "technique.at_radial") == 0)
    return ends_outbound && c->hold.station.given && c->hold.station.limiting_radial_deg > 0;
  return true;
}

const char *ox_input_absent(const ox_input *input, const ox_case *c, double *first) {
  *first = 0;
  if (input->source == OX_SOURCE_EFC || input->source == OX_SOURCE_FIX_AT) return _("none");
  if (strcmp(input->key, "hold.leg.station.limiting_radial_deg") == 0) {
    *first = c->hold.station.radial_deg > 180 ? c->hold.station.radial_deg - 180
                                              : c->hold.station.radial_deg + 180;
    return _("none");
  }
  if (strcmp(input->key, "hold.climb_to_ft") != 0) return NULL;
  *first = c->hold.altitude_ft + 1000;
  return _("level");
}

bool ox_input_in_effect(const ox_input *input, const ox_case *c, const ox_setup *setup,
                        double *value) {
  if (strcmp(input->key, "hold.leg.s") == 0)
    *value = ox_standard_leg_s(c->hold.altitude_ft);
  else if (strcmp(input->key, "hold.limit_kias") == 0)
    *value = ox_us_speed_limit_kias(c->hold.altitude_ft);
  else if (strcmp(input->key, "aircraft.ias_kt") == 0)
    *value = setup->ias_kt;
  else if (strcmp(input->key, "aircraft.tas_kt") == 0)
    *value = setup->tas_kt;
  else
    return false;
  return true;
}
