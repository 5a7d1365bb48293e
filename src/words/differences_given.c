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
    {"hold.inbound_deg", N_("Inbound course"), "", FORM_BEARING},
    {"hold.turns", N_("Turns"), "", FORM_PLAIN},
    {"hold.leg.by", N_("Leg by"), "", FORM_PLAIN},
    {"hold.leg.s", N_("Leg time"), "", FORM_TIME},
    {"hold.leg.nm", N_("Leg length"), " NM", FORM_PLAIN},
    {"hold.leg.end", N_("Length of"), "", FORM_PLAIN},
    {"hold.leg.station.radial_deg", N_("Station bearing"), "", FORM_BEARING},
    {"hold.leg.station.nm", N_("Station distance"), " NM", FORM_PLAIN},
    {"hold.leg.station.elevation_ft", N_("Station elevation"), " ft", FORM_PLAIN},
    {"hold.leg.station.limiting_radial_deg", N_("Limiting radial"), "", FORM_BEARING},
    {"hold.altitude_ft", N_("Altitude"), " ft", FORM_PLAIN},
    {"hold.limit_kias", N_("Charted limit"), " KIAS", FORM_PLAIN},
    {"hold.ends", N_("Hold ends by"), "", FORM_PLAIN},
    {"hold.climb_to_ft", N_("Climb to"), " ft", FORM_PLAIN},
    {"hold.climb_ft_min", N_("Rate of climb"), " ft/min", FORM_PLAIN},
    {"arrival.heading_deg", N_("Arrival heading"), "", FORM_BEARING},
    {"arrival.distance_nm", N_("Arrival from"), " NM", FORM_PLAIN},
    {"aircraft.ias_kt", N_("Indicated speed"), " kt", FORM_PLAIN},
    {"aircraft.tas_kt", N_("True speed given"), " kt", FORM_PLAIN},
    {"aircraft.isa_dev_c", N_("ISA deviation"), " °C", FORM_PLAIN},
    {"aircraft.rate_deg_s", N_("Rate of turn asked"), "°/s", FORM_PLAIN},
    {"aircraft.max_bank_deg", N_("Bank limit"), "°", FORM_PLAIN},
    {"aircraft.turn_by", N_("Bank flown"), "", FORM_PLAIN},
    {"variation_deg", N_("Variation, east positive"), "°", FORM_PLAIN},
    {"technique.timing", N_("Time is for"), "", FORM_PLAIN},
    {"technique.clock", N_("Clock starts"), "", FORM_PLAIN},
    {"technique.drift", N_("Outbound drift"), "", FORM_PLAIN},
    {"technique.outbound", N_("Outbound time by"), "", FORM_PLAIN},
    {"technique.intercept_deg", N_("Intercept"), "°", FORM_PLAIN},
    {"technique.entry", N_("Entry ordered"), "", FORM_PLAIN},
    {"technique.sector", N_("Sector by"), "", FORM_PLAIN},
    {"technique.entry_s", N_("Entry time"), "", FORM_TIME},
    {"technique.entry_line", N_("Entry legs as"), "", FORM_PLAIN},
    {"technique.reaction_s", N_("Reaction"), " s", FORM_PLAIN},
    {"technique.lead", N_("Joining the course"), "", FORM_PLAIN},
    {"technique.lead_deg", N_("Lead"), "°", FORM_PLAIN},
    {"technique.at_radial", N_("At the limiting radial"), "", FORM_PLAIN},
    {"technique.roll_s", N_("Rolling in"), " s", FORM_PLAIN},
    {"technique.circuits", N_("Circuits asked"), "", FORM_PLAIN},
    {"fuel.on_board", N_("Fuel on board"), "", FORM_PLAIN},
    {"fuel.flow_h", N_("Fuel flow an hour"), "", FORM_PLAIN},
    {"fuel.alternate", N_("Fuel to the alternate"), "", FORM_PLAIN},
    {"fuel.alternate_min", N_("Time to the alternate"), " min", FORM_PLAIN},
    {"fuel.reserve", N_("Reserve"), "", FORM_PLAIN},
    {"fuel.reserve_min", N_("Time of the reserve"), " min", FORM_PLAIN},
    {"fuel.unit", N_("Unit of fuel"), "", FORM_PLAIN},
    {"clock.utc_offset_min", N_("Local time from UTC"), " min", FORM_PLAIN},
    {"lost_radio.limit_starts_approach", N_("Approach begins at the limit"), "", FORM_PLAIN},
    {"shown.direction", N_("Direction shown"), "", FORM_PLAIN},
    {"shown.course_deg", N_("Course shown"), "", FORM_BEARING},
    {"shown.course_is", N_("Course shown is"), "", FORM_PLAIN},
    {"shown.turns", N_("Turns shown"), "", FORM_PLAIN},
    {"shown.leg_s", N_("Leg time shown"), "", FORM_TIME},
    {"shown.leg_nm", N_("Leg length shown"), " NM", FORM_PLAIN},
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
  return i < LABELS ? _(labels[i].label) : NULL;
}

static void put_value(words_say *s, const ox_field *field, size_t label, const ox_case *c) {
  double value = ox_field_get(field, c);
  if (field->kind == OX_FIELD_CHOICE)
    words_put(s, "%s", words_choice(field->choices[(size_t)value]));
  else if (field->zero_is_absent && value == 0.0)
    words_put(s, "%s", _("not given"));
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
      words_put(&texts[i], "%s", _("no station"));
  }
  differences_add(d, true, labels[label].label, texts);
}

/* --- the wind ------------------------------------------------------------------------------ */

static void put_one_wind(words_say *s, double from_deg, double kt, ox_north north) {
  if (kt == 0.0)
    words_put(s, "%s", C_("wind", "calm"));
  else
    words_put(s, _("%s %s at %s kt"), words_shown(from_deg).text, words_north(north),
              words_short(kt, 1).text);
}

static void put_winds(words_say *s, const ox_case *c) {
  if (c->wind_count == 0) words_put(s, "%s", C_("wind", "calm"));
  for (int i = 0; i < c->wind_count; i++) {
    const ox_wind_row *row = &c->wind[i];
    if (i > 0) words_put(s, "; ");
    if (c->wind_count > 1) words_put(s, "%s ft ", words_short(row->altitude_ft, 0).text);
    put_one_wind(s, row->from_deg, row->kt, row->north);
  }
  for (int i = 0; i < c->wind_change_count; i++) {
    const ox_wind_change *change = &c->wind_changes[i];
    words_put(s, _("; from minute %s "), words_short(change->at_min, 1).text);
    put_one_wind(s, change->from_deg, change->kt, change->north);
  }
}

static void put_minutes(words_say *s, int efc_min) {
  if (efc_min < 0)
    words_put(s, "%s", _("not given"));
  else
    words_put(s, "%02d:%02d", efc_min / 60, efc_min % 60);
}

static void put_seconds(words_say *s, int fix_at_s) {
  if (fix_at_s < 0)
    words_put(s, "%s", _("not given"));
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
    words_put(&stations[i], "%s",
              c->hold.station.given ? C_("station", "given") : C_("station", "none"));
    put_minutes(&efcs[i], c->hold.efc_min);
    put_seconds(&crossings[i], c->arrival.fix_at_s);
  }
  differences_add(d, true, N_("Fix"), fixes);
  differences_add(d, true, N_("Wind"), winds);
  differences_add(d, true, N_("DME station"), stations);
  differences_add(d, true, N_("EFC"), efcs);
  differences_add(d, true, N_("Over the fix at"), crossings);
  size_t count;
  const ox_field *fields = ox_fields(&count);
  for (size_t i = 0; i < count; i++)
    add_field(d, &fields[i]);
}
