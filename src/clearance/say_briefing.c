/* The briefing: what the hold is, how it is entered and what to watch, in a breath or in full. */
#include <math.h>

#include "oxbow/angle.h"
#include "oxbow/endurance.h"
#include "oxbow/limits.h"
#include "oxbow/words.h"
#include "text.h"

static double magnetic(const ox_case *c, double true_deg) {
  return ox_magnetic_deg(true_deg, c->variation_deg);
}

static const char *entry_word(const ox_say_options *o, ox_entry_kind kind) {
  static const char *const us[] = {"direct", "parallel", "teardrop"};
  static const char *const icao[] = {"sector 3, direct", "sector 1, parallel",
                                     "sector 2, offset"};
  return o->wording == OX_WORDING_US ? us[kind] : icao[kind];
}

static void put_leg(clr_text *t, const ox_say_options *o, const ox_case *c) {
  if (c->hold.leg_by == OX_LEG_BY_DISTANCE) {
    clr_put_decimal(t, o, c->hold.leg_nm);
    clr_put(t, " mile legs");
    return;
  }
  double leg_s = c->hold.leg_s > 0 ? c->hold.leg_s : ox_standard_leg_s(c->hold.altitude_ft);
  clr_put_leg_time(t, o, leg_s, false);
  clr_put(t, " legs");
}

static void put_hold(clr_text *t, const ox_say_options *o, const ox_case *c) {
  clr_put(t, "Hold %s of %s, inbound ", clr_eighth_word(c->hold.inbound_deg + 180),
          c->hold.fix[0] ? c->hold.fix : "the fix");
  clr_put_bearing(t, o, c->hold.inbound_deg);
  clr_put(t, ", %s turns, ", c->hold.turns == OX_TURNS_LEFT ? "left" : "right");
  put_leg(t, o, c);
  clr_put(t, ", ");
  clr_put_altitude(t, o, c->hold.altitude_ft);
  clr_put(t, ". ");
}

static void put_entry(clr_text *t, const ox_say_options *o, const ox_case *c, const ox_flight *f) {
  char kind[32];
  clr_text word = clr_into(kind, sizeof kind);
  clr_put(&word, "%s", entry_word(o, f->flown));
  clr_sentence(&word);
  kind[word.length > 0 ? word.length - 1 : 0] = '\0'; /* the capital without the full stop */
  clr_put(t, "%s entry, heading ", kind);
  clr_put_bearing(t, o, magnetic(c, f->entry_heading_true_deg));
  if (f->flown != OX_ENTRY_DIRECT) {
    clr_put(t, " for ");
    clr_put_duration(t, o, c->technique.entry_s);
  }
  clr_put(t, ". ");
}

static void put_outbound(clr_text *t, const ox_say_options *o, const ox_case *c,
                         const ox_flight *f) {
  if (f->circuit_count == 0) return;
  const ox_circuit *last = &f->circuits[f->circuit_count - 1];
  clr_put(t, "Outbound heading ");
  clr_put_bearing(t, o, magnetic(c, last->outbound_heading_true_deg));
  clr_put(t, " for ");
  clr_put_duration(t, o, last->timed_s);
  clr_put(t, ". ");
}

static void put_efc(clr_text *t, const ox_say_options *o, const ox_case *c) {
  if (c->hold.efc_min < 0) {
    clr_put(t, o->wording == OX_WORDING_US ? "No expect further clearance time: ask for one. "
                                           : "No expected approach time: ask for one. ");
    return;
  }
  clr_put(t, o->wording == OX_WORDING_US ? "Expect further clearance " : "Expected approach time ");
  clr_put_clock(t, o, c->hold.efc_min);
  clr_put(t, ". ");
}

/* ---- The long form ---- */

static void put_side(clr_text *t, const ox_say_options *o, const ox_case *c) {
  double side_deg = c->hold.inbound_deg + (c->hold.turns == OX_TURNS_LEFT ? -90 : 90);
  clr_put(t, "The outbound course is ");
  clr_put_bearing(t, o, c->hold.inbound_deg + 180);
  clr_put(t, "; the holding side is %s of the inbound course. ", clr_eighth_word(side_deg));
}

static void put_entry_reason(clr_text *t, const ox_say_options *o, const ox_case *c,
                             const ox_flight *f) {
  double crossing_deg = magnetic(c, c->technique.sector == OX_SECTOR_TRACK
                                        ? f->setup.arrival_track_true_deg
                                        : f->setup.arrival_heading_true_deg);
  clr_put(t, "Crossing the fix on %s ",
          c->technique.sector == OX_SECTOR_TRACK ? "track" : "heading");
  clr_put_bearing(t, o, crossing_deg);
  clr_put(t, ", ");
  clr_put_whole(t, o, fabs(f->entry.relative_deg));
  clr_put(t, " degrees from the outbound course, puts the entry in %s%s. ",
          o->wording == OX_WORDING_US ? "the sector called " : "",
          entry_word(o, f->entry.kind));
  if (f->entry.also == OX_ENTRY_NONE) return;
  clr_put(t, "Within 5 degrees of the boundary: %s is accepted as well. ",
          entry_word(o, (ox_entry_kind)f->entry.also));
}

static void put_wind(clr_text *t, const ox_say_options *o, const ox_case *c, const ox_flight *f) {
  if (f->setup.wind_speed_kt < 0.5) {
    clr_put(t, "Calm. ");
    return;
  }
  clr_put(t, "Wind ");
  clr_put_bearing(t, o, magnetic(c, f->setup.wind_from_true_deg));
  clr_put(t, " magnetic, ");
  clr_put_knots(t, o, f->setup.wind_speed_kt);
  clr_put(t, ". ");
  if (f->steady.why != OX_STEADY_EXISTS) {
    clr_put(t, "In this wind no circuit repeats itself. ");
    return;
  }
  double wca_deg = f->steady.inbound_wca_deg;
  clr_put(t, "Heading inbound ");
  clr_put_bearing(t, o, magnetic(c, f->steady.inbound_heading_deg));
  if (fabs(wca_deg) >= 0.5) {
    clr_put(t, ", ");
    clr_put_whole(t, o, fabs(wca_deg));
    clr_put(t, " degrees %s", wca_deg < 0 ? "left" : "right");
  }
  clr_put(t, ". A circuit takes ");
  clr_put_duration(t, o, f->steady.circuit_s);
  clr_put(t, ". ");
}

static void put_speed(clr_text *t, const ox_say_options *o, const ox_case *c, const ox_flight *f) {
  clr_put(t, "Holding speed ");
  clr_put_speed(t, o, c, f);
  if (o->wording == OX_WORDING_US)
    clr_put(t, "; slow down from 3 minutes before the fix (AIM 5-3-8 d)");
  clr_put(t, ". ");
}

static void put_minute(clr_text *t, const ox_say_options *o, const char *before, int minute) {
  clr_put(t, "%s", before);
  clr_put_clock(t, o, minute);
}

/* 14 CFR 91.185(c)(3), where the case says what decides. */
static bool put_decision(clr_text *t, const ox_say_options *o, const ox_case *c) {
  ox_lost_radio r = ox_lost_radio_of(c);
  bool approach = r.action == OX_RADIO_APPROACH_AT_EFC || r.action == OX_RADIO_APPROACH_AT_ETA;
  if (r.action == OX_RADIO_NOT_DECIDED) return false;
  clr_put(t, "Without radio: %s", approach ? "begin the approach " : "leave the fix ");
  if (r.before_arrival || r.action == OX_RADIO_LEAVE_ON_ARRIVAL)
    clr_put(t, "on arrival");
  else if (r.at_min >= 0)
    put_minute(t, o, approach ? "as close as possible to " : "at ", r.at_min);
  else
    clr_put(t, "as close as possible to the estimated time of arrival");
  if (!approach) {
    clr_put(t, " and begin the approach from where one begins");
    if (r.then_approach_min >= 0)
      put_minute(t, o, " as close as possible to ", r.then_approach_min);
    else
      clr_put(t, " at the estimated time of arrival");
  }
  clr_put(t, " (14 CFR 91.185). ");
  return true;
}

static void put_fuel(clr_text *t, const ox_say_options *o, const ox_case *c) {
  ox_endurance e = ox_endurance_of(c);
  if (!e.known) return;
  clr_put(t, "Fuel ");
  clr_put_decimal(t, o, e.on_board);
  clr_put(t, " %s on reaching the fix, ", ox_words_fuel_unit(c->fuel.unit));
  clr_put_decimal(t, o, e.alternate + e.reserve);
  clr_put(t, " kept for alternate and reserve: ");
  if (e.leave_by_s < 0.0) {
    clr_put(t, "leave at once. ");
  } else if (ox_clock_is_known(c)) {
    /* To the whole minute before: late is short of fuel. */
    put_minute(t, o, "leave by ", (int)(ox_clock_utc_s(c, e.leave_by_s) / 60.0));
    clr_put(t, ". ");
  } else {
    clr_put(t, "leave within %d minutes. ", (int)fmin(e.leave_by_s / 60.0, 1e6));
  }
}

/* AIM 5-3-8 f and 14 CFR 91.185(c)(3). */
static void put_leaving(clr_text *t, const ox_say_options *o, const ox_case *c) {
  clr_put(t, "Report reaching and leaving the fix. ");
  if (o->wording != OX_WORDING_US) {
    clr_put(t, "Without radio: the procedure of the State. ");
    return;
  }
  if (put_decision(t, o, c)) return;
  if (c->hold.efc_min >= 0) {
    clr_put(t, "Without radio: leave the fix, or begin the approach if one begins there, at ");
    clr_put_clock(t, o, c->hold.efc_min);
    clr_put(t, " (14 CFR 91.185). ");
  } else {
    clr_put(t, "Without radio and without a time: if an approach begins at the fix, begin it at "
               "the estimated time of arrival; otherwise leave the fix on arrival over it "
               "(14 CFR 91.185). ");
  }
}

char *ox_say_briefing(const ox_case *c, const ox_flight *flight, ox_briefing length,
                      const ox_say_options *options) {
  ox_say_options o = clr_options(options);
  clr_text t = {0};
  bool full = length == OX_BRIEFING_LONG;
  put_hold(&t, &o, c);
  if (full) put_side(&t, &o, c);
  put_entry(&t, &o, c, flight);
  if (full) put_entry_reason(&t, &o, c, flight);
  if (full) put_wind(&t, &o, c, flight);
  put_outbound(&t, &o, c, flight);
  if (full) put_speed(&t, &o, c, flight);
  put_efc(&t, &o, c);
  put_fuel(&t, &o, c);
  if (full) put_leaving(&t, &o, c);
  if (full) clr_put(&t, "%s", ox_words_caution_line());
  while (!t.failed && t.length > 0 && t.text[t.length - 1] == ' ')
    t.text[--t.length] = '\0';
  return clr_take(&t);
}
