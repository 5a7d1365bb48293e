/* What was given: every field of a case by its label, the wind and the names. */
#include <string.h>

#include "differences.h"
#include "oxbow/fields.h"

typedef enum { FORM_PLAIN, FORM_BEARING, FORM_TIME } form;

/* In the order of the table of fields; a test holds the two together. */
static const struct {
  const char *key, *label, *unit;
  form form;
} labels[] = {
    {"hold.inbound_deg", "Inbound course", "", FORM_BEARING},
    {"hold.turns", "Turns", "", FORM_PLAIN},
    {"hold.leg.by", "Leg by", "", FORM_PLAIN},
    {"hold.leg.s", "Leg time", "", FORM_TIME},
    {"hold.leg.nm", "Leg length", " NM", FORM_PLAIN},
    {"hold.leg.end", "Length of", "", FORM_PLAIN},
    {"hold.leg.station.radial_deg", "Station bearing", "", FORM_BEARING},
    {"hold.leg.station.nm", "Station distance", " NM", FORM_PLAIN},
    {"hold.leg.station.elevation_ft", "Station elevation", " ft", FORM_PLAIN},
    {"hold.leg.station.limiting_radial_deg", "Limiting radial", "", FORM_BEARING},
    {"hold.altitude_ft", "Altitude", " ft", FORM_PLAIN},
    {"hold.limit_kias", "Charted limit", " KIAS", FORM_PLAIN},
    {"hold.ends", "Hold ends by", "", FORM_PLAIN},
    {"hold.climb_to_ft", "Climb to", " ft", FORM_PLAIN},
    {"hold.climb_ft_min", "Rate of climb", " ft/min", FORM_PLAIN},
    {"arrival.heading_deg", "Arrival heading", "", FORM_BEARING},
    {"arrival.distance_nm", "Arrival from", " NM", FORM_PLAIN},
    {"aircraft.ias_kt", "Indicated speed", " kt", FORM_PLAIN},
    {"aircraft.tas_kt", "True speed given", " kt", FORM_PLAIN},
    {"aircraft.isa_dev_c", "ISA deviation", " °C", FORM_PLAIN},
    {"aircraft.rate_deg_s", "Rate of turn asked", "°/s", FORM_PLAIN},
    {"aircraft.max_bank_deg", "Bank limit", "°", FORM_PLAIN},
    {"aircraft.turn_by", "Bank flown", "", FORM_PLAIN},
    {"variation_deg", "Variation, east positive", "°", FORM_PLAIN},
    {"technique.timing", "Time is for", "", FORM_PLAIN},
    {"technique.clock", "Clock starts", "", FORM_PLAIN},
    {"technique.drift", "Outbound drift", "", FORM_PLAIN},
    {"technique.outbound", "Outbound time by", "", FORM_PLAIN},
    {"technique.intercept_deg", "Intercept", "°", FORM_PLAIN},
    {"technique.entry", "Entry ordered", "", FORM_PLAIN},
    {"technique.sector", "Sector by", "", FORM_PLAIN},
    {"technique.entry_s", "Entry time", "", FORM_TIME},
    {"technique.entry_line", "Entry legs as", "", FORM_PLAIN},
    {"technique.reaction_s", "Reaction", " s", FORM_PLAIN},
    {"technique.lead", "Joining the course", "", FORM_PLAIN},
    {"technique.lead_deg", "Lead", "°", FORM_PLAIN},
    {"technique.at_radial", "At the limiting radial", "", FORM_PLAIN},
    {"technique.roll_s", "Rolling in", " s", FORM_PLAIN},
    {"technique.circuits", "Circuits asked", "", FORM_PLAIN},
    {"fuel.on_board", "Fuel on board", "", FORM_PLAIN},
    {"fuel.flow_h", "Fuel flow an hour", "", FORM_PLAIN},
    {"fuel.alternate", "Fuel to the alternate", "", FORM_PLAIN},
    {"fuel.alternate_min", "Time to the alternate", " min", FORM_PLAIN},
    {"fuel.reserve", "Reserve", "", FORM_PLAIN},
    {"fuel.reserve_min", "Time of the reserve", " min", FORM_PLAIN},
    {"fuel.unit", "Unit of fuel", "", FORM_PLAIN},
    {"clock.utc_offset_min", "Local time from UTC", " min", FORM_PLAIN},
    {"lost_radio.limit_starts_approach", "Approach begins at the limit", "", FORM_PLAIN},
    {"shown.direction", "Direction shown", "", FORM_PLAIN},
    {"shown.course_deg", "Course shown", "", FORM_BEARING},
    {"shown.course_is", "Course shown is", "", FORM_PLAIN},
    {"shown.turns", "Turns shown", "", FORM_PLAIN},
    {"shown.leg_s", "Leg time shown", "", FORM_TIME},
    {"shown.leg_nm", "Leg length shown", " NM", FORM_PLAIN},
};

#define LABELS (sizeof labels / sizeof *labels)

static size_t label_index(const char *key) {
  size_t i = 0;
  while (i < LABELS && strcmp(labels[i].key, key) != 0)
    i++;
  return i;
}

const char *ox_differences_label(const char *key) {
  size_t i = label_index(key);
  return i < LABELS ? labels[i].label : NULL;
}

/* "abeam_or_level" as people read it. */
static void put_words(words_say *s, const char *word) {
  for (; *word; word++)
    words_put(s, "%c", *word == '_' ? ' ' : *word);
}

static void put_value(words_say *s, const ox_field *field, size_t label, const ox_case *c) {
  double value = ox_field_get(field, c);
  if (field->kind == OX_FIELD_CHOICE)
    put_words(s, field->choices[(size_t)value]);
  else if (field->zero_is_absent && value == 0.0)
    words_put(s, "not given");
  else if (labels[label].form == FORM_BEARING)
    words_put(s, "%s", words_shown(value).text);
  else if (labels[label].form == FORM_TIME)
    words_put(s, "%s", words_time(value).text);
  else
    words_put(s, "%s%s", words_short(value, 2).text, labels[label].unit);
}

/* What a case has no use for is no difference: the DME station's figures without a station. */
static bool is_used(const ox_field *field, const ox_case *c) {
  return c->hold.station.given || strncmp(field->key, "hold.leg.station.", 17) != 0;
}

static void add_field(differences *d, const ox_field *field) {
  words_say texts[OX_DIFFERENCES_MAX] = {{0}};
  size_t label = label_index(field->key);
  if (label == LABELS) return;
  for (size_t i = 0; i < d->table.columns; i++) {
    if (is_used(field, d->cases[i]))
      put_value(&texts[i], field, label, d->cases[i]);
    else
      words_put(&texts[i], "no station");
  }
  differences_add(d, true, labels[label].label, texts);
}

/* --- the wind ------------------------------------------------------------------------------ */

static void put_one_wind(words_say *s, double from_deg, double kt, ox_north north) {
  if (kt == 0.0)
    words_put(s, "calm");
  else
    words_put(s, "%s%s at %s kt", words_shown(from_deg).text,
              north == OX_NORTH_TRUE ? " true" : " magnetic", words_short(kt, 1).text);
}

static void put_winds(words_say *s, const ox_case *c) {
  if (c->wind_count == 0) words_put(s, "calm");
  for (int i = 0; i < c->wind_count; i++) {
    const ox_wind_row *row = &c->wind[i];
    if (i > 0) words_put(s, "; ");
    if (c->wind_count > 1) words_put(s, "%s ft ", words_short(row->altitude_ft, 0).text);
    put_one_wind(s, row->from_deg, row->kt, row->north);
  }
  for (int i = 0; i < c->wind_change_count; i++) {
    const ox_wind_change *change = &c->wind_changes[i];
    words_put(s, "; from minute %s ", words_short(change->at_min, 1).text);
    put_one_wind(s, change->from_deg, change->kt, change->north);
  }
}

static void put_minutes(words_say *s, int efc_min) {
  if (efc_min < 0)
    words_put(s, "not given");
  else
    words_put(s, "%02d:%02d", efc_min / 60, efc_min % 60);
}

static void put_seconds(words_say *s, int fix_at_s) {
  if (fix_at_s < 0)
    words_put(s, "not given");
  else
    words_put_clock(s, fix_at_s);
}

void differences_given(differences *d) {
  words_say fixes[OX_DIFFERENCES_MAX] = {{0}}, winds[OX_DIFFERENCES_MAX] = {{0}};
  words_say stations[OX_DIFFERENCES_MAX] = {{0}}, efcs[OX_DIFFERENCES_MAX] = {{0}};
  words_say crossings[OX_DIFFERENCES_MAX] = {{0}};
  for (size_t i = 0; i < d->table.columns; i++) {
    const ox_case *c = d->cases[i];
    words_put(&fixes[i], "%s", c->hold.fix);
    put_winds(&winds[i], c);
    words_put(&stations[i], "%s", c->hold.station.given ? "given" : "none");
    put_minutes(&efcs[i], c->hold.efc_min);
    put_seconds(&crossings[i], c->arrival.fix_at_s);
  }
  differences_add(d, true, "Fix", fixes);
  differences_add(d, true, "Wind", winds);
  differences_add(d, true, "DME station", stations);
  differences_add(d, true, "EFC", efcs);
  differences_add(d, true, "Over the fix at", crossings);
  size_t count;
  const ox_field *fields = ox_fields(&count);
  for (size_t i = 0; i < count; i++)
    add_field(d, &fields[i]);
}
