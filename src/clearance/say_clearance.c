/* A case as a controller would clear it, and as a pilot reads it back.
 *
 * US: order of items of AIM 5-3-8 i and 7110.65 4-6-4. ICAO: fix, level, inbound track, hand,
 * outbound time, expected approach time (Doc 4444 style, from a phrase sheet). What is standard
 * is left unsaid in the US: right turns, the leg time for the altitude. Of a hold that comes out of
 * words only what they said is said again: its radial, and no altitude that nobody assigned. */
#include <math.h>
#include <string.h>

#include "oxbow/angle.h"
#include "oxbow/limits.h"
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

static bool is_present_position(const char *fix) {
  return strcmp(fix, OX_PRESENT_POSITION) == 0;
}

void clr_put_fix(clr_text *t, const char *fix) {
  if (!fix[0]) {
    clr_put(t, "the fix");
  } else if (is_present_position(fix)) {
    clr_put(t, "present position"); /* no name: as the words are said */
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

/* What was heard of an item of a clearance; NULL where nothing was. */
static const ox_item *heard_item(const ox_say_options *o, ox_item_kind kind) {
  return o->heard ? ox_clearance_find(o->heard, kind) : NULL;
}

/* Whether an item belongs into the sentence: of a case all do, of what was heard what was said. */
static bool is_given(const ox_say_options *o, ox_item_kind kind) {
  return !o->heard || heard_item(o, kind);
}

static bool are_any_given(const ox_say_options *o, const ox_item_kind *kinds, size_t count) {
  for (size_t i = 0; i < count; i++)
    if (is_given(o, kinds[i])) return true;
  return false;
}

/* Whether the words told the course, in whatever way. */
static bool is_line_given(const ox_say_options *o) {
  static const ox_item_kind lines[] = {OX_ITEM_INBOUND, OX_ITEM_OUTBOUND, OX_ITEM_RADIAL,
                                       OX_ITEM_BEARING, OX_ITEM_COURSE};
  return are_any_given(o, lines, sizeof lines / sizeof *lines);
}

bool ox_clearance_tells(const ox_clearance *heard, const ox_case *c) {
  static const ox_item_kind holds[] = {OX_ITEM_FIX, OX_ITEM_FIX_DME, OX_ITEM_DIRECTION,
                                       OX_ITEM_PUBLISHED};
  const ox_say_options o = {.heard = heard};
  if (!is_line_given(&o) && !are_any_given(&o, holds, sizeof holds / sizeof *holds)) return false;
  ox_case as_heard = *c;
  as_heard.hold = heard->result.hold;
  return ox_case_equal(&as_heard, c);
}

/* The words count for the hold that they led to, and no longer when it is another. */
static ox_say_options options_for(const ox_case *c, const ox_say_options *options) {
  ox_say_options o = clr_options(options);
  if (!o.heard || !ox_clearance_tells(o.heard, c)) o.heard = NULL;
  return o;
}

/* ---- The line ---- */

/* Where the station is the fix, the line is its radial or bearing, which is the outbound course;
 * so it is where the fix lies on a radial and the inbound leg leads to the station. */
static void put_line_of_case(clr_text *t, const ox_say_options *o, const ox_case *c) {
  double outbound_deg = c->hold.inbound_deg + 180;
  bool to_station = c->hold.station.given &&
                    fabs(ox_norm180_deg(c->hold.station.radial_deg - c->hold.inbound_deg)) < 0.5;
  clr_put(t, " on the ");
  if (is_station(c->hold.fix) || to_station) {
    clr_put_bearing(t, o, outbound_deg);
    clr_put(t, is_beacon(c->hold.fix) ? " bearing" : " radial");
  } else {
    clr_put_bearing(t, o, c->hold.inbound_deg);
    clr_put(t, " inbound course");
  }
}

/* AIM 5-3-8 i 3: the radial, course, bearing or airway, as it was given. */
static void put_line_heard(clr_text *t, const ox_say_options *o, const ox_case *c) {
  static const struct {
    ox_item_kind kind;
    const char *words;
  } lines[] = {{OX_ITEM_INBOUND, "inbound course"},
               {OX_ITEM_OUTBOUND, "outbound course"},
               {OX_ITEM_RADIAL, "radial"},
               {OX_ITEM_BEARING, "bearing"},
               {OX_ITEM_COURSE, "course"}};
  for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
    const ox_item *line = heard_item(o, lines[i].kind);
    if (!line) continue;
    bool other = line->name[0] && !ox_clearance_same_place(line->name, c->hold.fix) &&
                 lines[i].kind == OX_ITEM_RADIAL;
    clr_put(t, " on the %s%s", other ? line->name : "", other ? " " : "");
    clr_put_bearing(t, o, line->value);
    clr_put(t, " %s", lines[i].words);
    return;
  }
  const ox_item *airway = heard_item(o, OX_ITEM_AIRWAY);
  if (!airway) return;
  bool on_chart = airway->name[0] >= 'a' && airway->name[0] <= 'z'; /* "the localizer" */
  clr_put(t, on_chart ? " on the %s" : " on %s", airway->name);
}

static void put_us_line(clr_text *t, const ox_say_options *o, const ox_case *c) {
  if (!o->heard) put_line_of_case(t, o, c);
  if (o->heard) put_line_heard(t, o, c);
  if (heard_item(o, OX_ITEM_PUBLISHED)) clr_put(t, " as published");
}

/* ---- The rest of the sentence ---- */

static void put_leg(clr_text *t, const ox_say_options *o, const ox_case *c) {
  if (!is_given(o, OX_ITEM_LEG) && !is_given(o, OX_ITEM_DME_RANGE)) return;
  if (c->hold.leg_by == OX_LEG_BY_DISTANCE) {
    clr_put(t, ", ");
    clr_put_decimal(t, o, c->hold.leg_nm);
    clr_put(t, " mile legs");
  } else if (c->hold.leg_s > 0 && o->wording == OX_WORDING_US) {
    clr_put(t, ", ");
    clr_put_leg_time(t, o, c->hold.leg_s, false);
    clr_put(t, " legs");
  } else if (o->wording == OX_WORDING_ICAO) { /* an item of the form: the standard time as well */
    bool outbound = c->technique.timing == OX_TIMING_OUTBOUND;
    double leg_s = c->hold.leg_s > 0 ? c->hold.leg_s : ox_standard_leg_s(c->hold.altitude_ft);
    clr_put(t, outbound ? ", outbound time " : ", leg time ");
    clr_put_leg_time(t, o, leg_s, true);
  }
}

/* The eighth of the course as it is said, which is rounded to whole degrees; NULL where the words
 * named none. */
static const char *eighth_of(const ox_say_options *o, const ox_case *c) {
  const ox_item *direction = heard_item(o, OX_ITEM_DIRECTION);
  if (o->heard) return direction ? clr_eighth_word(direction->value) : NULL;
  return clr_eighth_word(round(c->hold.inbound_deg) + 180);
}

/* The fix, "" where the words named none and the case kept its own. */
static const char *fix_of(const ox_say_options *o, const ox_case *c) {
  if (!o->heard) return c->hold.fix;
  for (size_t i = 0; i < o->heard->field_count; i++)
    if (strcmp(o->heard->fields[i], "hold.fix") == 0) return c->hold.fix;
  return "";
}

/* "cleared to LARCH, hold southwest"; where no limit was said "hold southwest of LARCH"; nobody is
 * cleared to where he is: "hold at present position, southwest" (M). */
static void put_us_place(clr_text *t, const ox_say_options *o, const ox_case *c) {
  const ox_item *limit = heard_item(o, OX_ITEM_LIMIT);
  const char *cleared = o->heard ? (limit ? limit->name : "") : c->hold.fix;
  const char *fix = fix_of(o, c), *eighth = eighth_of(o, c);
  if (is_present_position(cleared)) cleared = "";
  if (cleared[0]) {
    clr_put(t, "cleared to ");
    clr_put_fix(t, cleared);
    clr_put(t, ", ");
  }
  clr_put(t, "hold");
  if (is_present_position(fix)) clr_put(t, " at present position%s", eighth ? "," : "");
  if (eighth) clr_put(t, " %s", eighth);
  if (!fix[0] || is_present_position(fix) || ox_clearance_same_place(cleared, fix)) return;
  clr_put(t, eighth ? " of " : " at ");
  clr_put_fix(t, fix);
}

/* Right turns are the standard: said only where they were heard. */
static void put_us_turns(clr_text *t, const ox_say_options *o, const ox_case *c) {
  bool left = c->hold.turns == OX_TURNS_LEFT;
  if (o->heard ? heard_item(o, OX_ITEM_TURNS) != NULL : left)
    clr_put(t, left ? ", left turns" : ", right turns");
}

static void put_us(clr_text *t, const ox_say_options *o, const ox_case *c) {
  put_us_place(t, o, c);
  put_us_line(t, o, c);
  put_leg(t, o, c);
  put_us_turns(t, o, c);
  if (c->hold.efc_min >= 0) {
    clr_put(t, ", expect further clearance ");
    clr_put_clock(t, o, c->hold.efc_min);
  }
  if (is_given(o, OX_ITEM_ALTITUDE)) {
    clr_put(t, ", maintain ");
    clr_put_altitude(t, o, c->hold.altitude_ft);
  }
  if (c->hold.limit_kias > 0 && is_given(o, OX_ITEM_SPEED)) {
    clr_put(t, ", maximum holding airspeed is ");
    clr_put_knots(t, o, c->hold.limit_kias);
  }
}

/* What stands for the inbound track where the words gave no figure: "west as published". */
static void put_icao_charted(clr_text *t, const ox_say_options *o, const ox_case *c) {
  const char *eighth = eighth_of(o, c);
  if (is_line_given(o)) return;
  clr_put(t, "%s%s", eighth ? ", " : "", eighth ? eighth : "");
  put_line_heard(t, o, c);
}

static void put_icao(clr_text *t, const ox_say_options *o, const ox_case *c) {
  const char *fix = fix_of(o, c);
  clr_put(t, "hold");
  if (fix[0]) {
    clr_put(t, " at ");
    clr_put_fix(t, fix);
  }
  if (is_given(o, OX_ITEM_ALTITUDE)) {
    clr_put(t, ", ");
    clr_put_altitude(t, o, c->hold.altitude_ft);
  }
  if (is_line_given(o)) {
    clr_put(t, ", inbound track ");
    clr_put_bearing(t, o, c->hold.inbound_deg);
    clr_put(t, " degrees");
  }
  put_icao_charted(t, o, c);
  if (heard_item(o, OX_ITEM_PUBLISHED)) clr_put(t, " as published");
  if (is_given(o, OX_ITEM_TURNS))
    clr_put(t, ", %s hand pattern", c->hold.turns == OX_TURNS_LEFT ? "left" : "right");
  put_leg(t, o, c);
  if (c->hold.limit_kias > 0 && is_given(o, OX_ITEM_SPEED)) {
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
  ox_say_options o = options_for(c, options);
  clr_text t = {0};
  if (has_callsign(&o)) clr_put(&t, "%s, ", o.callsign);
  put_clearance(&t, &o, c);
  clr_sentence(&t);
  return clr_take(&t);
}

/* The pilot says the same words; only the call sign changes its place to the end. */
char *ox_say_readback(const ox_case *c, const ox_say_options *options) {
  ox_say_options o = options_for(c, options);
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
  if (is_present_position(c->hold.fix))
    clr_put_fix(&t, c->hold.fix);
  else
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
