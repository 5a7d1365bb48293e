/* A case as a controller would clear it, and as a pilot reads it back.
 *
 * US: order of items of AIM 5-3-8 i and 7110.65 4-6-4. ICAO: fix, level, inbound track, hand,
 * outbound time, expected approach time (Doc 4444 style, from a phrase sheet). What is standard
 * is left unsaid: right turns in the US, the leg time for the altitude. */
#include <math.h>
#include <string.h>

#include "oxbow/angle.h"
#include "text.h"
#include "tokens.h"

/* Whether a fix reads back as itself, and as nothing else, where clearances have it. */
static bool reads_as_itself(const char *fix) {
  static const char *const places[] = {"Cleared to ", "Hold at "};
  for (size_t i = 0; i < sizeof places / sizeof *places; i++) {
    char sentence[OX_FIX_NAME_BYTES + 32];
    clr_text t = clr_into(sentence, sizeof sentence);
    clr_put(&t, "%s%s, hold", places[i], fix);
    ox_clearance read;
    if (ox_clearance_read(sentence, NULL, NULL, &read) == OX_ERROR) return false;
    bool only = read.item_count == 1 && read.ignored_count == 0;
    if (!only || strcmp(read.result.hold.fix, fix) != 0) return false;
  }
  return true;
}

void clr_put_fix(clr_text *t, const char *fix) {
  if (!fix[0]) {
    clr_put(t, "the fix");
  } else if (reads_as_itself(fix)) {
    clr_put(t, "%s%s", fix[0] >= '0' && fix[0] <= '9' ? "the " : "", fix); /* "the 15 DME fix" */
  } else {
    clr_put(t, "\"");
    for (const char *c = fix; *c; c++)
      clr_put(t, *c == '"' ? "\"\"" : "%c", *c);
    clr_put(t, "\"");
  }
}

/* Whether the last word of the fix names a station. */
static bool is_station(const char *fix) {
  const char *last = strrchr(fix, ' ');
  const char *word = last ? last + 1 : fix;
  const clr_word *found = clr_lookup(word, strlen(word));
  return found && found->kind == T_STATION;
}

static bool is_beacon(const char *fix) {
  size_t length = strlen(fix);
  return length >= 3 && strcmp(fix + length - 3, "NDB") == 0;
}

/* Where the station is the fix, the line is its radial or bearing, which is the outbound course. */
static void put_us_line(clr_text *t, const ox_say_options *o, const ox_case *c) {
  double outbound_deg = c->hold.inbound_deg + 180;
  clr_put(t, " on the ");
  if (is_station(c->hold.fix)) {
    clr_put_bearing(t, o, outbound_deg);
    clr_put(t, is_beacon(c->hold.fix) ? " bearing" : " radial");
  } else {
    clr_put_bearing(t, o, c->hold.inbound_deg);
    clr_put(t, " inbound course");
  }
}

static void put_leg(clr_text *t, const ox_say_options *o, const ox_case *c) {
  if (c->hold.leg_by == OX_LEG_BY_DISTANCE) {
    clr_put(t, ", ");
    clr_put_decimal(t, o, c->hold.leg_nm);
    clr_put(t, " mile legs");
  } else if (c->hold.leg_s > 0 && o->wording == OX_WORDING_US) {
    clr_put(t, ", ");
    clr_put_leg_time(t, o, c->hold.leg_s, false);
    clr_put(t, " legs");
  } else if (c->hold.leg_s > 0) {
    bool outbound = c->technique.timing == OX_TIMING_OUTBOUND;
    clr_put(t, outbound ? ", outbound time " : ", leg time ");
    clr_put_leg_time(t, o, c->hold.leg_s, true);
  }
}

/* The eighth of the course as it is said, which is rounded to whole degrees. */
static const char *eighth_of(const ox_case *c) {
  return clr_eighth_word(round(c->hold.inbound_deg) + 180);
}

static void put_us(clr_text *t, const ox_say_options *o, const ox_case *c) {
  if (c->hold.fix[0]) {
    clr_put(t, "cleared to ");
    clr_put_fix(t, c->hold.fix);
    clr_put(t, ", ");
  }
  clr_put(t, "hold %s", eighth_of(c));
  put_us_line(t, o, c);
  put_leg(t, o, c);
  if (c->hold.turns == OX_TURNS_LEFT) clr_put(t, ", left turns");
  if (c->hold.efc_min >= 0) {
    clr_put(t, ", expect further clearance ");
    clr_put_clock(t, o, c->hold.efc_min);
  }
  clr_put(t, ", maintain ");
  clr_put_altitude(t, o, c->hold.altitude_ft);
  if (c->hold.limit_kias > 0) {
    clr_put(t, ", maximum holding airspeed is ");
    clr_put_knots(t, o, c->hold.limit_kias);
  }
}

static void put_icao(clr_text *t, const ox_say_options *o, const ox_case *c) {
  clr_put(t, "hold");
  if (c->hold.fix[0]) {
    clr_put(t, " at ");
    clr_put_fix(t, c->hold.fix);
  }
  clr_put(t, ", ");
  clr_put_altitude(t, o, c->hold.altitude_ft);
  clr_put(t, ", inbound track ");
  clr_put_bearing(t, o, c->hold.inbound_deg);
  clr_put(t, " degrees, %s hand pattern", c->hold.turns == OX_TURNS_LEFT ? "left" : "right");
  put_leg(t, o, c);
  if (c->hold.limit_kias > 0) {
    clr_put(t, ", maximum speed ");
    clr_put_knots(t, o, c->hold.limit_kias);
  }
  if (c->hold.efc_min >= 0) {
    clr_put(t, ", expected approach time ");
    clr_put_clock(t, o, c->hold.efc_min);
  }
}

static void put_clearance(clr_text *t, const ox_say_options *o, const ox_case *c) {
  if (o->wording == OX_WORDING_US)
    put_us(t, o, c);
  else
    put_icao(t, o, c);
}

static bool has_callsign(const ox_say_options *o) {
  return o->callsign && o->callsign[0];
}

char *ox_say_clearance(const ox_case *c, const ox_say_options *options) {
  ox_say_options o = clr_options(options);
  clr_text t = {0};
  if (has_callsign(&o)) clr_put(&t, "%s, ", o.callsign);
  put_clearance(&t, &o, c);
  clr_sentence(&t);
  return clr_take(&t);
}

/* The pilot says the same words; only the call sign changes its place to the end. */
char *ox_say_readback(const ox_case *c, const ox_say_options *options) {
  ox_say_options o = clr_options(options);
  clr_text t = {0};
  put_clearance(&t, &o, c);
  if (has_callsign(&o)) clr_put(&t, ", %s", o.callsign);
  clr_sentence(&t);
  return clr_take(&t);
}

static char *say_report(const ox_case *c, int time_min, const ox_say_options *options,
                        bool leaving) {
  ox_say_options o = clr_options(options);
  clr_text t = {0};
  if (has_callsign(&o)) clr_put(&t, "%s, ", o.callsign);
  if (leaving) clr_put(&t, "leaving ");
  clr_put(&t, "%s", c->hold.fix[0] ? c->hold.fix : "the fix");
  if (time_min >= 0) {
    clr_put(&t, o.wording == OX_WORDING_US ? " at " : " ");
    clr_put_clock(&t, &o, time_min);
  }
  clr_put(&t, ", ");
  clr_put_altitude(&t, &o, c->hold.altitude_ft);
  if (!leaving)
    clr_put(&t, o.wording == OX_WORDING_US ? ", entering the hold" : ", entering hold");
  clr_sentence(&t);
  return clr_take(&t);
}

char *ox_say_entering(const ox_case *c, int time_min, const ox_say_options *o) {
  return say_report(c, time_min, o, false);
}

char *ox_say_leaving(const ox_case *c, int time_min, const ox_say_options *o) {
  return say_report(c, time_min, o, true);
}
