/* The briefing: what the hold is, how it is entered and what to watch, in a breath or in full. */
#include <math.h>
#include <string.h>

#include "figures.h"
#include "oxbow/angle.h"
#include "oxbow/endurance.h"
#include "oxbow/limits.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

static double magnetic(const ox_case *c, double true_deg) {
  return ox_magnetic_deg(true_deg, c->variation_deg);
}

/* The entry as a noun, and the sector, as people read them. */
static const char *entry_noun(const ox_say_options *o, ox_entry_kind kind) {
  bool us = o->wording == OX_WORDING_US;
  switch (kind) {
  case OX_ENTRY_PARALLEL: return us ? _("Parallel entry") : _("Sector 1, parallel entry");
  case OX_ENTRY_TEARDROP: return us ? _("Teardrop entry") : _("Sector 2, offset entry");
  default: return us ? _("Direct entry") : _("Sector 3, direct entry");
  }
}

static const char *sector_name(const ox_say_options *o, ox_entry_kind kind) {
  if (o->wording == OX_WORDING_US) return _(ox_entry_name(kind));
  static const char *const names[] = {N_("sector 3, direct"), N_("sector 1, parallel"),
                                      N_("sector 2, offset")};
  return _(names[kind]);
}

static clr_figure legs_of(const ox_say_options *o, const ox_case *c) {
  clr_figure legs;
  if (c->hold.leg_by != OX_LEG_BY_DISTANCE)
    return clr_legs(o, c->hold.leg_s > 0 ? c->hold.leg_s : ox_standard_leg_s(c->hold.altitude_ft));
  clr_text t = clr_into(legs.text, sizeof legs.text);
  clr_put(&t, _("%s mile legs"), clr_decimal(o, c->hold.leg_nm).text);
  return legs;
}

static const char *fix_of(const ox_case *c) {
  if (strcmp(c->hold.fix, OX_PRESENT_POSITION) == 0)
    return C_("north or south of", "the present position");
  return c->hold.fix[0] ? c->hold.fix : C_("north or south of", "the fix");
}

static void put_hold(clr_text *t, const ox_say_options *o, const ox_case *c) {
  bool left = c->hold.turns == OX_TURNS_LEFT;
  /* translators: side of the fix, fix, course, "1 minute legs", altitude */
  clr_put(t, left ? _("Hold %s of %s, inbound %s, left turns, %s, %s.")
                  : _("Hold %s of %s, inbound %s, right turns, %s, %s."),
          clr_eighth(c->hold.inbound_deg + 180),
          fix_of(c),
          clr_bearing(o, c->hold.inbound_deg).text, legs_of(o, c).text,
          clr_altitude(o, c->hold.altitude_ft).text);
}

static void put_entry(clr_text *t, const ox_say_options *o, const ox_case *c, const ox_flight *f) {
  clr_figure heading = clr_bearing(o, magnetic(c, f->entry_heading_true_deg));
  clr_next(t);
  if (f->flown == OX_ENTRY_DIRECT)
    clr_put(t, _("%s, heading %s."), entry_noun(o, f->flown), heading.text);
  else /* translators: "Parallel entry, heading 060 for 1:00." */
    clr_put(t, _("%s, heading %s for %s."), entry_noun(o, f->flown), heading.text,
            clr_duration(o, c->technique.entry_s).text);
}

static void put_outbound(clr_text *t, const ox_say_options *o, const ox_case *c,
                         const ox_flight *f) {
  if (f->circuit_count == 0) return;
  const ox_circuit *last = &f->circuits[f->circuit_count - 1];
  clr_next(t);
  clr_put(t, _("Outbound heading %s for %s."),
          clr_bearing(o, magnetic(c, last->outbound_heading_true_deg)).text,
          clr_duration(o, last->timed_s).text);
}

static void put_efc(clr_text *t, const ox_say_options *o, const ox_case *c) {
  bool us = o->wording == OX_WORDING_US;
  clr_next(t);
  if (c->hold.efc_min < 0)
    clr_put(t, "%s", us ? _("No expect further clearance time: ask for one.")
                        : _("No expected approach time: ask for one."));
  else
    clr_put(t, us ? _("Expect further clearance %s.") : _("Expected approach time %s."),
            clr_clock(o, c->hold.efc_min).text);
}

/* ---- The long form ---- */

static void put_side(clr_text *t, const ox_say_options *o, const ox_case *c) {
  double side_deg = c->hold.inbound_deg + (c->hold.turns == OX_TURNS_LEFT ? -90 : 90);
  clr_next(t);
  clr_put(t, _("The outbound course is %s; the holding side is %s of the inbound course."),
          clr_bearing(o, c->hold.inbound_deg + 180).text, clr_eighth(side_deg));
}

static void put_entry_reason(clr_text *t, const ox_say_options *o, const ox_case *c,
                             const ox_flight *f) {
  bool track = c->technique.sector == OX_SECTOR_TRACK, us = o->wording == OX_WORDING_US;
  double crossing_deg = magnetic(c, track ? f->setup.arrival_track_true_deg
                                          : f->setup.arrival_heading_true_deg);
  clr_figure crossing;
  clr_text said = clr_into(crossing.text, sizeof crossing.text);
  clr_put(&said, track ? C_("crossing the fix on", "track %s")
                       : C_("crossing the fix on", "heading %s"),
          clr_bearing(o, crossing_deg).text);
  clr_next(t); /* translators: "heading 290", an angle, an entry or a sector */
  clr_put(t, us ? _("Crossing the fix on %s, %s degrees from the outbound course, puts the entry "
                    "in the sector called %s.")
                : _("Crossing the fix on %s, %s degrees from the outbound course, puts the entry "
                    "in %s."),
          crossing.text, clr_whole(o, fabs(f->entry.relative_deg)).text,
          sector_name(o, f->entry.kind));
  if (f->entry.also == OX_ENTRY_NONE) return;
  clr_next(t); /* translators: an entry or a sector */
  clr_put(t, _("Within 5 degrees of the boundary: %s is accepted as well."),
          sector_name(o, (ox_entry_kind)f->entry.also));
}

static void put_steady(clr_text *t, const ox_say_options *o, const ox_case *c,
                       const ox_flight *f) {
  double wca_deg = f->steady.inbound_wca_deg;
  clr_figure heading = clr_bearing(o, magnetic(c, f->steady.inbound_heading_deg));
  clr_next(t);
  if (fabs(wca_deg) < 0.5)
    clr_put(t, _("Heading inbound %s."), heading.text);
  else
    clr_put(t, wca_deg < 0 ? _("Heading inbound %s, %s degrees left.")
                           : _("Heading inbound %s, %s degrees right."),
            heading.text, clr_whole(o, fabs(wca_deg)).text);
  clr_next(t);
  clr_put(t, _("A circuit takes %s."), clr_duration(o, f->steady.circuit_s).text);
}

static void put_wind(clr_text *t, const ox_say_options *o, const ox_case *c, const ox_flight *f) {
  clr_next(t);
  if (f->setup.wind_speed_kt < 0.5) {
    clr_put(t, "%s", _("Calm."));
    return;
  }
  clr_put(t, _("Wind %s magnetic, %s."),
          clr_bearing(o, magnetic(c, f->setup.wind_from_true_deg)).text,
          clr_knots(o, f->setup.wind_speed_kt).text);
  if (f->steady.why == OX_STEADY_EXISTS) {
    put_steady(t, o, c, f);
    return;
  }
  clr_next(t);
  clr_put(t, "%s", _("In this wind no circuit repeats itself."));
}

static void put_speed(clr_text *t, const ox_say_options *o, const ox_case *c, const ox_flight *f) {
  clr_next(t);
  clr_put(t, o->wording == OX_WORDING_US
                 ? _("Holding speed %s; slow down from 3 minutes before the fix (AIM 5-3-8 d).")
                 : _("Holding speed %s."),
          clr_holding_speed(o, c, f).text);
  if (o->wording == OX_WORDING_US || c->hold.limit_kias > 0) return;
  clr_next(t); /* both tables are in use: nobody shall take one for the other */
  clr_put(t, _("That limit is of the ICAO table; the advisories go by the one of the United "
               "States, %s (AIM 5-3-8 j2)."),
          clr_knots(o, f->setup.speed_limit_kias).text);
}

/* When something is begun: a time, or the estimated time of arrival (at_min -1). */
static clr_figure when(const ox_say_options *o, int at_min, bool close) {
  clr_figure said;
  clr_text t = clr_into(said.text, sizeof said.text);
  if (at_min >= 0)
    clr_put(&t, close ? _("as close as possible to %s") : C_("a time", "at %s"),
            clr_clock(o, at_min).text);
  else
    clr_put(&t, "%s", close ? _("as close as possible to the estimated time of arrival")
                            : _("at the estimated time of arrival"));
  return said;
}

/* 14 CFR 91.185(c)(3), where the case says what decides. */
static bool put_decision(clr_text *t, const ox_say_options *o, const ox_case *c) {
  ox_lost_radio r = ox_lost_radio_of(c);
  bool approach = r.action == OX_RADIO_APPROACH_AT_EFC || r.action == OX_RADIO_APPROACH_AT_ETA;
  if (r.action == OX_RADIO_NOT_DECIDED) return false;
  bool arriving = r.before_arrival || r.action == OX_RADIO_LEAVE_ON_ARRIVAL;
  clr_figure at = when(o, r.at_min, approach || r.at_min < 0);
  const char *first = arriving ? _("on arrival") : at.text;
  clr_next(t);
  if (approach) /* translators: %s is a time, as in "on arrival" */
    clr_put(t, _("Without radio: begin the approach %s (14 CFR 91.185)."), first);
  else /* translators: both %s are times, as in "on arrival" and "as close as possible to 1910" */
    clr_put(t, _("Without radio: leave the fix %s and begin the approach from where one begins %s "
                 "(14 CFR 91.185)."),
            first, when(o, r.then_approach_min, r.then_approach_min >= 0).text);
  return true;
}

static void put_fuel(clr_text *t, const ox_say_options *o, const ox_case *c) {
  ox_endurance e = ox_endurance_of(c);
  if (!e.known) return;
  clr_figure on_board = clr_decimal(o, e.on_board), kept = clr_decimal(o, e.alternate + e.reserve);
  const char *unit = ox_words_fuel_unit(c->fuel.unit);
  clr_next(t);
  if (e.leave_by_s < 0.0) {
    clr_put(t, _("Fuel %s %s on reaching the fix, %s kept for alternate and reserve: leave at "
                 "once."),
            on_board.text, unit, kept.text);
  } else if (ox_clock_is_known(c)) {
    /* To the whole minute before: late is short of fuel. */
    int minute = (int)(ox_clock_utc_s(c, e.leave_by_s) / 60.0);
    clr_put(t, _("Fuel %s %s on reaching the fix, %s kept for alternate and reserve: leave by %s."),
            on_board.text, unit, kept.text, clr_clock(o, minute).text);
  } else {
    int minutes = (int)fmin(e.leave_by_s / 60.0, 1e6);
    clr_put(t,
            ox_text_count("Fuel %s %s on reaching the fix, %s kept for alternate and reserve: "
                          "leave within %d minute.",
                          "Fuel %s %s on reaching the fix, %s kept for alternate and reserve: "
                          "leave within %d minutes.",
                          (unsigned long)minutes),
            on_board.text, unit, kept.text, minutes);
  }
  if (!ox_words_no_reserve(c)) return;
  clr_next(t);
  clr_put(t, "%s", ox_words_no_reserve(c));
}

/* AIM 5-3-8 f and 14 CFR 91.185(c)(3). */
static void put_leaving(clr_text *t, const ox_say_options *o, const ox_case *c) {
  clr_next(t);
  clr_put(t, "%s", _("Report reaching and leaving the fix."));
  if (o->wording == OX_WORDING_US && put_decision(t, o, c)) return;
  clr_next(t);
  if (o->wording != OX_WORDING_US)
    clr_put(t, "%s", _("Without radio: the procedure of the State."));
  else if (c->hold.efc_min >= 0)
    clr_put(t, _("Without radio: leave the fix, or begin the approach if one begins there, at %s "
                 "(14 CFR 91.185)."),
            clr_clock(o, c->hold.efc_min).text);
  else
    clr_put(t, "%s", _("Without radio and without a time: if an approach begins at the fix, begin "
                       "it at the estimated time of arrival; otherwise leave the fix on arrival "
                       "over it (14 CFR 91.185)."));
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
  if (full) {
    clr_next(&t);
    clr_put(&t, "%s", ox_words_caution_line());
  }
  return clr_take(&t);
}
