/* What the items mean for the case: the fix, the inbound course by where the radial's station is,
 * the times; and, said as such, what the words left open. */
#include <math.h>
#include <string.h>

#include "oxbow/angle.h"
#include "oxbow/fields.h"
#include "oxbow/limits.h"
#include "oxbow/text.h"
#include "reading.h"
#include "tokens.h"

/* A direction names an eighth: its middle and half of 45 degrees to each side, ends included. */
static const double EIGHTH_HALF_DEG = 22.5 + 1e-9;

const ox_item *clr_item(const clr_reading *r, ox_item_kind kind) {
  return r->first[kind] < 0 ? NULL : &r->out->items[r->first[kind]];
}

double clr_apart_deg(double a_deg, double b_deg) {
  return fabs(ox_turn_between_deg(a_deg, b_deg));
}

bool clr_outbound_in_eighth(double inbound_deg, double eighth_deg) {
  return clr_apart_deg(inbound_deg + 180, eighth_deg) <= EIGHTH_HALF_DEG;
}

/* ---- Names ---- */

/* Length of a name without the words of its facility at the end. */
static size_t bare_length(const char *name) {
  size_t length = strlen(name);
  for (;;) {
    size_t start = length;
    while (start > 0 && name[start - 1] != ' ')
      start--;
    const clr_word *word = clr_lookup(name + start, length - start);
    bool facility = word && (word->kind == T_STATION || word->kind == T_POINT_TYPE);
    if (!facility || start == 0) return length;
    length = start - 1;
  }
}

static char lower(char c) {
  return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

bool ox_clearance_same_place(const char *a, const char *b) {
  size_t length = bare_length(a);
  if (length != bare_length(b)) return false;
  for (size_t i = 0; i < length; i++)
    if (lower(a[i]) != lower(b[i])) return false;
  return true;
}

static const ox_item *line_item(const clr_reading *r) { return ox_clearance_line(r->out); }

/* By its two radials: "ABC 130/DEF 150". */
static void name_crossing(clr_reading *r, const ox_item *first, const ox_item *second) {
  clr_text text = clr_into(r->fix, sizeof r->fix);
  clr_put(&text, "%.20s %03.0f/%.20s %03.0f", first->name, first->value, second->name,
          second->value);
  r->facility = OX_FACILITY_POINT;
}

double clr_fix_dme_nm(const clr_reading *r) {
  const ox_item *range = clr_item(r, OX_ITEM_DME_RANGE), *line = line_item(r);
  if (!range) return clr_item(r, OX_ITEM_FIX_DME)->value;
  bool away = line && r->line != CLR_LINE_NONE && clr_apart_deg(r->inbound_deg, line->value) < 90;
  return away ? range->value2 : range->value;
}

/* The fix by its station and DME; a point that has a name of its own keeps it. */
static void name_dme_fix(clr_reading *r) {
  const ox_item *at = clr_item(r, OX_ITEM_FIX_DME), *line = line_item(r);
  if (!at || !at->name[0]) at = clr_item(r, OX_ITEM_DME_RANGE);
  const char *station = at && at->name[0] ? at->name : line ? line->name : "";
  if (!station[0] && r->fix[0] && r->facility != OX_FACILITY_STATION) return;
  if (!station[0]) station = r->fix;
  ox_say_options figures = ox_say_options_default();
  char name[OX_FIX_NAME_BYTES];
  clr_text text = clr_into(name, sizeof name);
  if (station[0]) clr_put(&text, "%s ", station);
  clr_put_decimal(&text, &figures, clr_fix_dme_nm(r));
  clr_put(&text, station[0] ? " DME" : " DME fix");
  memcpy(r->fix, name, sizeof r->fix);
}

static bool has_dme_fix(const clr_reading *r) {
  return clr_item(r, OX_ITEM_FIX_DME) || clr_item(r, OX_ITEM_DME_RANGE);
}

bool clr_may_be_station(const clr_reading *r) {
  const ox_item *fix = clr_item(r, OX_ITEM_FIX), *line = line_item(r);
  if (!fix) fix = clr_item(r, OX_ITEM_LIMIT);
  return has_dme_fix(r) && line && !line->name[0] && fix && strcmp(fix->name, r->fix) == 0 &&
         r->facility == OX_FACILITY_UNSAID;
}

/* "The intersection", and nothing else. */
static bool only_says_what_it_is(const ox_item *fix) {
  const clr_word *word = clr_lookup(fix->name, strlen(fix->name));
  return word && word->kind == T_POINT_TYPE;
}

static void find_fix(clr_reading *r) {
  const ox_item *fix = clr_item(r, OX_ITEM_FIX), *limit = clr_item(r, OX_ITEM_LIMIT);
  const ox_item *line = line_item(r), *arc = clr_item(r, OX_ITEM_ARC);
  r->on_arc = arc && arc->value2 > 0 && !fix && !has_dme_fix(r);
  if (r->on_arc) return;
  const ox_item *first, *second;
  if (ox_clearance_crossing(r->out, &first, &second) && !has_dme_fix(r) &&
      (fix ? only_says_what_it_is(fix) : !limit)) {
    name_crossing(r, first, second);
    return;
  }
  const ox_item *from = fix ? fix : r->leaves ? NULL : limit;
  const ox_item *inbound = clr_item(r, OX_ITEM_INBOUND);
  if (!from && line && line->name[0] && !has_dme_fix(r)) from = line;
  if (!from && inbound && inbound->name[0]) from = inbound;
  if (!from) return;
  strcpy(r->fix, from->name);
  r->facility = from->facility;
  if (fix && limit && r->facility == OX_FACILITY_UNSAID &&
      ox_clearance_same_place(fix->name, limit->name))
    r->facility = limit->facility;
}

/* ---- The inbound course ---- */

static clr_line kind_of_radial(const clr_reading *r, const ox_item *line) {
  if (has_dme_fix(r) || r->on_arc) return CLR_LINE_ELSEWHERE;
  if (line->name[0]) {
    bool here = r->fix[0] == '\0' || ox_clearance_same_place(line->name, r->fix);
    return here ? CLR_LINE_STATION : CLR_LINE_ELSEWHERE;
  }
  if (r->facility == OX_FACILITY_STATION) return CLR_LINE_STATION;
  return r->facility == OX_FACILITY_POINT ? CLR_LINE_ELSEWHERE : CLR_LINE_BARE;
}

static void by_radial(clr_reading *r, const ox_item *line, const ox_item *direction) {
  r->line = kind_of_radial(r, line);
  r->inbound_deg = ox_norm360_deg(line->value + 180);
  if (r->line == CLR_LINE_ELSEWHERE && direction &&
      clr_outbound_in_eighth(line->value, direction->value) &&
      !clr_outbound_in_eighth(r->inbound_deg, direction->value))
    r->inbound_deg = line->value;
}

static void by_course(clr_reading *r, const ox_item *course, const ox_item *direction) {
  r->line = CLR_LINE_COURSE;
  r->inbound_deg = course->value;
  double reciprocal_deg = course->value + 180;
  if (direction && clr_outbound_in_eighth(reciprocal_deg, direction->value))
    r->inbound_deg = reciprocal_deg;
}

static void find_line(clr_reading *r) {
  const ox_item *direction = clr_item(r, OX_ITEM_DIRECTION), *line = line_item(r);
  const ox_item *said = NULL;
  if ((said = clr_item(r, OX_ITEM_INBOUND)) != NULL) {
    r->line = CLR_LINE_INBOUND;
    r->inbound_deg = said->value;
  } else if ((said = clr_item(r, OX_ITEM_OUTBOUND)) != NULL) {
    r->line = CLR_LINE_OUTBOUND;
    r->inbound_deg = said->value + 180;
  } else if ((said = line) != NULL) {
    by_radial(r, line, direction);
  } else if ((said = clr_item(r, OX_ITEM_COURSE)) != NULL) {
    by_course(r, said, direction);
  } else {
    return;
  }
  r->line_item = (int)(said - r->out->items);
  r->inbound_deg = ox_norm360_deg(r->inbound_deg);
  if (r->inbound_deg == 0) r->inbound_deg = 360; /* north as it is said */
}

/* ---- Fields and what was left open ---- */

static void note_field(clr_reading *r, const char *key) {
  for (size_t i = 0; i < r->out->field_count; i++)
    if (r->out->fields[i] == key) return;
  if (r->out->field_count < OX_CLEARANCE_FIELDS_MAX) r->out->fields[r->out->field_count++] = key;
}

/* Items are checked against the same ranges when they are made; a value that the case still
 * refuses is left out. */
static void set_field(clr_reading *r, const char *key, double value) {
  const ox_field *field = ox_field_by_key(key);
  if (!field || !ox_field_accepts(field, value)) return;
  ox_field_set(field, &r->out->result, value);
  note_field(r, field->key);
}

/* `reason` is a sentence in the reader's language. */
static void leave_open(clr_reading *r, ox_item_kind kind, const char *reason) {
  if (r->out->default_count == OX_CLEARANCE_DEFAULTS_MAX) return;
  ox_item_default *d = &r->out->defaults[r->out->default_count++];
  d->kind = kind;
  clr_text text = clr_into(d->reason, sizeof d->reason);
  clr_put(&text, "%s", reason);
}

static void set_fix(clr_reading *r) {
  if (r->fix[0]) {
    strcpy(r->out->result.hold.fix, r->fix);
    note_field(r, "hold.fix");
  }
  if (!r->holds || clr_item(r, OX_ITEM_FIX) || has_dme_fix(r)) return;
  if (r->on_arc)
    leave_open(r, OX_ITEM_FIX, _("An arc is no fix: the one of the case stays"));
  else if (clr_item(r, OX_ITEM_LIMIT))
    leave_open(r, OX_ITEM_FIX, _("The clearance limit is the holding fix: no other was said"));
  else if (r->fix[0] && !line_item(r))
    leave_open(r, OX_ITEM_FIX, _("The point that the course leads to is the holding fix"));
  else if (r->fix[0])
    leave_open(r, OX_ITEM_FIX,
               _("The station of the radial is the holding fix: no other was said"));
  else
    leave_open(r, OX_ITEM_FIX, _("No fix was said: the one of the case stays"));
}

static const char *line_reason(const clr_reading *r) {
  bool direction = clr_item(r, OX_ITEM_DIRECTION) != NULL;
  switch (r->line) {
  case CLR_LINE_STATION: return direction ? NULL : _("The radial is the outbound course");
  case CLR_LINE_BARE:
    return direction ? NULL
                     : _("The radial is taken as the outbound course: no direction was said");
  case CLR_LINE_ELSEWHERE:
    return direction ? NULL
                     : _("No direction was said: the hold is taken to lie beyond the fix, inbound "
                         "towards the station");
  case CLR_LINE_COURSE:
    return direction ? NULL : _("The course is taken as inbound: no direction was said");
  default: return NULL;
  }
}

static const char *airway_course(const ox_item *airway) {
  if (strcmp(airway->name, "localizer") == 0) return _("The localizer course stands on the chart");
  if (strcmp(airway->name, "final approach course") == 0)
    return _("The final approach course stands on the chart");
  return _("The course of the airway stands on the chart");
}

/* Without a figure for the course: the middle of the eighth, unless the case already holds there.
 */
static void guess_line(clr_reading *r) {
  const ox_item *direction = clr_item(r, OX_ITEM_DIRECTION);
  const char *where = r->published ? _("The published inbound course stands on the chart")
                      : clr_item(r, OX_ITEM_AIRWAY) ? airway_course(clr_item(r, OX_ITEM_AIRWAY))
                          : _("No radial or course was said");
  char said[OX_SENTENCE_BYTES];
  clr_text text = clr_into(said, sizeof said);
  if (!direction || clr_outbound_in_eighth(r->out->result.hold.inbound_deg, direction->value)) {
    /* translators: %s is a sentence, as in "No radial or course was said" */
    clr_put(&text, _("%s: the inbound course of the case stays"), where);
    leave_open(r, OX_ITEM_INBOUND, said);
    return;
  }
  double inbound_deg = ox_norm360_deg(direction->value + 180);
  set_field(r, "hold.inbound_deg", inbound_deg == 0 ? 360 : inbound_deg);
  clr_put(&text, _("%s: from the middle of the eighth named, for the picture"), where);
  leave_open(r, OX_ITEM_INBOUND, said);
}

static void set_line(clr_reading *r) {
  if (r->line == CLR_LINE_NONE) {
    if (r->holds) guess_line(r);
    return;
  }
  set_field(r, "hold.inbound_deg", r->inbound_deg);
  const char *reason = line_reason(r);
  if (reason) leave_open(r, OX_ITEM_DIRECTION, reason);
}

static void set_turns(clr_reading *r) {
  const ox_item *turns = clr_item(r, OX_ITEM_TURNS);
  if (turns) {
    set_field(r, "hold.turns", turns->value > 0 ? OX_TURNS_RIGHT : OX_TURNS_LEFT);
  } else if (r->published) {
    leave_open(r, OX_ITEM_TURNS, _("As published: the turns of the case stay"));
  } else if (r->holds) {
    set_field(r, "hold.turns", OX_TURNS_RIGHT);
    leave_open(r, OX_ITEM_TURNS,
               _("No turns were said: right, the standard pattern (AIM 5-3-8 j1)"));
  }
}

static void set_leg_length(clr_reading *r, double leg_nm) {
  set_field(r, "hold.leg.nm", leg_nm);
  set_field(r, "hold.leg.by", OX_LEG_BY_DISTANCE);
}

static void set_standard_leg(clr_reading *r) {
  set_field(r, "hold.leg.by", OX_LEG_BY_TIME);
  set_field(r, "hold.leg.s", 0);
  bool short_leg = ox_standard_leg_s(r->out->result.hold.altitude_ft) <= 60;
  if (r->o->wording == OX_WORDING_ICAO) {
    set_field(r, "technique.timing", OX_TIMING_OUTBOUND);
    leave_open(r, OX_ITEM_LEG,
               short_leg ? _("No leg was said: 1 minute outbound in still air at or below "
                             "14 000 ft (ICAO, PANS-OPS)")
                         : _("No leg was said: 1 1/2 minutes outbound in still air above 14 000 ft "
                             "(ICAO, PANS-OPS)"));
    return;
  }
  leave_open(r, OX_ITEM_LEG,
             short_leg
                 ? _("No leg was said: 1 minute at or below 14 000 ft (AIM 5-3-8 j4(a))")
                 : _("No leg was said: 1 1/2 minutes above 14 000 ft (AIM 5-3-8 j4(a))"));
}

static void set_leg(clr_reading *r) {
  const ox_item *leg = clr_item(r, OX_ITEM_LEG), *range = clr_item(r, OX_ITEM_DME_RANGE);
  if (leg && leg->unit == OX_UNIT_NM) {
    set_leg_length(r, leg->value);
    if (leg->value2 != 0)
      set_field(r, "hold.leg.end", leg->value2 > 0 ? OX_LEG_END_INBOUND : OX_LEG_END_OUTBOUND);
  } else if (leg) {
    set_field(r, "hold.leg.by", OX_LEG_BY_TIME);
    set_field(r, "hold.leg.s", leg->value);
    if (leg->value2 != 0)
      set_field(r, "technique.timing", leg->value2 > 0 ? OX_TIMING_INBOUND : OX_TIMING_OUTBOUND);
  } else if (range) {
    set_leg_length(r, range->value2 - range->value);
  } else if (r->published) {
    leave_open(r, OX_ITEM_LEG, _("As published: the leg of the case stays"));
  } else if (r->holds) {
    set_standard_leg(r);
  }
}

/* Another EFC that tells which half of the day is meant: "half past one, that is 1330". */
static const ox_item *plain_efc(const clr_reading *r, const ox_item *efc) {
  for (size_t i = 0; i < r->out->item_count; i++) {
    const ox_item *other = &r->out->items[i];
    bool plain = other->kind == OX_ITEM_EFC && other->sound && other->value2 == 0 &&
                 other->unit == OX_UNIT_MIN_OF_DAY;
    if (plain && fmod(other->value, 720) == fmod(efc->value, 720)) return other;
  }
  return NULL;
}

/* The time over the fix, the minute begun counted as over; -1 where it is not given. */
static int crossing_min(const clr_reading *r) {
  int fix_at_s = r->out->result.arrival.fix_at_s;
  return fix_at_s < 0 ? -1 : (fix_at_s + 59) / 60 % 1440;
}

/* Minute of the day of an EFC that names it, or only the minute, or how far ahead it is; where
 * the words leave more than one, the next from now on, or from the crossing of the fix. */
static int resolve_efc(clr_reading *r, const ox_item *efc) {
  bool day = efc->unit == OX_UNIT_MIN_OF_DAY;
  const ox_item *plain = day && efc->value2 > 0 ? plain_efc(r, efc) : efc;
  if (day && plain && plain->value2 == 0) return (int)plain->value;
  if (efc->unit == OX_UNIT_MIN_AHEAD)
    return r->now_min < 0 ? -1 : (r->now_min + (int)efc->value) % 1440;
  int from_min = r->now_min >= 0 ? r->now_min : crossing_min(r);
  if (from_min < 0) return -1;
  if (r->now_min < 0)
    leave_open(r, OX_ITEM_EFC,
               _("The hour of the expect further clearance time follows from the time over the "
                 "fix"));
  int period = day ? 720 : 60;
  int ahead = ((int)efc->value - from_min % period + period) % period;
  return (from_min + ahead) % 1440;
}

static void find_times(clr_reading *r) {
  const ox_item *now = clr_item(r, OX_ITEM_NOW), *efc = clr_item(r, OX_ITEM_EFC);
  r->now_min = r->o->now_min >= 0 && r->o->now_min < 1440 ? r->o->now_min : -1;
  if (now && now->unit == OX_UNIT_MIN_OF_DAY)
    r->now_min = (int)now->value;
  else if (now && r->now_min >= 0)
    r->now_min = r->now_min / 60 * 60 + (int)now->value;
  r->efc_min = efc ? resolve_efc(r, efc) : -1;
}

static void set_efc(clr_reading *r) {
  if (clr_item(r, OX_ITEM_EFC) || r->holds || r->no_delay) {
    r->out->result.hold.efc_min = r->efc_min;
    note_field(r, "hold.efc");
  }
  if (clr_item(r, OX_ITEM_EFC) && r->efc_min < 0)
    leave_open(r, OX_ITEM_EFC,
               _("The hour of the expect further clearance time is not known: it is left out"));
  else if (!clr_item(r, OX_ITEM_EFC) && r->no_delay)
    leave_open(r, OX_ITEM_EFC, _("No delay expected: no expect further clearance time"));
}

static void set_altitude(clr_reading *r) {
  const ox_item *altitude = clr_item(r, OX_ITEM_ALTITUDE);
  if (altitude) {
    ox_case before = r->out->result;
    set_field(r, "hold.altitude_ft", altitude->value);
    /* The aircraft of the case may be too fast for that air; the altitude is asked for then. */
    if (ox_case_check(&r->out->result, NULL, 0) == 0) return;
    r->out->result = before;
    r->out->field_count--;
    r->out->items[r->first[OX_ITEM_ALTITUDE]].sound = false;
    r->first[OX_ITEM_ALTITUDE] = -1;
  } else if (r->holds) {
    leave_open(r, OX_ITEM_ALTITUDE, _("No altitude was said: the one of the case stays"));
  }
}

static void set_speed(clr_reading *r) {
  const ox_item *speed = clr_item(r, OX_ITEM_SPEED);
  if (speed) {
    set_field(r, "hold.limit_kias", speed->value);
  } else if (r->published) {
    leave_open(r, OX_ITEM_SPEED, _("As published: the speed limit of the case stays"));
  } else if (r->holds) {
    set_field(r, "hold.limit_kias", 0);
    leave_open(r, OX_ITEM_SPEED, _("No speed was said: the table for the altitude holds"));
  }
}

void clr_mean(clr_reading *r) {
  if (r->cancelled) {
    leave_open(r, OX_ITEM_FIX, _("Holding is cancelled: the case stays as it is"));
    return;
  }
  find_fix(r);
  find_line(r);
  if (has_dme_fix(r)) name_dme_fix(r);
  find_times(r);
  set_fix(r);
  set_line(r);
  set_altitude(r);
  set_turns(r);
  set_leg(r);
  set_efc(r);
  set_speed(r);
}
