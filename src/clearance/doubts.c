/* What does not fit and what is missing, each as a question to put to the controller. The words
 * are the standard ones: "verify" in the US, "confirm" in the ICAO wording, "say again",
 * "request", "unable" in both. */
#include <math.h>
#include <string.h>

#include "oxbow/angle.h"
#include "oxbow/limits.h"
#include "reading.h"

/* Courses on charts and radials differ by rounding and by the station's own variation. */
static const double ALONG_DEG = 5.0;
static const double RECIPROCAL_DEG = 0.5;

/* Holding speeds of Doc 8168 Vol I (the table for all categories), as printed in State AIPs: to
 * 14 000 ft 230 kt, to 20 000 ft 240 kt, to 34 000 ft 265 kt, above Mach 0.83. */
double clr_speed_limit_kias(ox_wording wording, double altitude_ft) {
  if (wording == OX_WORDING_US) return ox_us_speed_limit_kias(altitude_ft);
  if (altitude_ft <= 14000) return 230;
  if (altitude_ft <= 20000) return 240;
  return altitude_ft <= 34000 ? 265 : 0;
}

clr_text clr_ask(clr_reading *r, ox_ask_kind kind, ox_item_kind item, int first, int second) {
  if (r->out->question_count == OX_CLEARANCE_QUESTIONS_MAX)
    return (clr_text){.failed = true, .fixed = true};
  ox_question *q = &r->out->questions[r->out->question_count++];
  *q = (ox_question){.kind = kind, .item = item, .first = first, .second = second};
  return clr_into(q->text, sizeof q->text);
}

static ox_say_options figures_of(const clr_reading *r) {
  return (ox_say_options){.wording = r->o->wording};
}

static const char *verify(const clr_reading *r) {
  return r->o->wording == OX_WORDING_US ? "Verify" : "Confirm";
}

static const char *course(const clr_reading *r) {
  return r->o->wording == OX_WORDING_US ? "course" : "track";
}

static const char *fix_or(const clr_reading *r, const char *otherwise) {
  return r->fix[0] ? r->fix : otherwise;
}

static void put_efc(const clr_reading *r, clr_text *t, int minute) {
  ox_say_options o = figures_of(r);
  clr_put(t, r->o->wording == OX_WORDING_US ? "expect further clearance "
                                            : "expected approach time ");
  clr_put_clock(t, &o, minute);
}

/* ---- Missing ---- */

static bool line_needs_direction(const clr_reading *r) {
  return r->line != CLR_LINE_INBOUND && r->line != CLR_LINE_OUTBOUND &&
         r->line != CLR_LINE_STATION;
}

static void ask_missing(clr_reading *r) {
  bool place = r->fix[0] != '\0' || clr_item(r, OX_ITEM_FIX_DME) || clr_item(r, OX_ITEM_DME_RANGE);
  if (!place) {
    clr_text t = clr_ask(r, OX_ASK_FIX, OX_ITEM_FIX, -1, -1);
    clr_put(&t, "Request the holding fix.");
  }
  bool direction = clr_item(r, OX_ITEM_DIRECTION) != NULL;
  if (!direction && !r->published && line_needs_direction(r)) {
    clr_text t = clr_ask(r, OX_ASK_DIRECTION, OX_ITEM_DIRECTION, -1, -1);
    clr_put(&t, "Request direction of holding from %s.", fix_or(r, "the fix"));
  }
  if (r->line == CLR_LINE_NONE && !r->published && !clr_item(r, OX_ITEM_AIRWAY)) {
    clr_text t = clr_ask(r, OX_ASK_LINE, OX_ITEM_INBOUND, -1, -1);
    clr_put(&t, "Request the radial or inbound %s at %s.", course(r), fix_or(r, "the fix"));
  }
  if (!clr_item(r, OX_ITEM_EFC) && !r->no_delay) {
    clr_text t = clr_ask(r, OX_ASK_EFC, OX_ITEM_EFC, -1, -1);
    clr_put(&t, r->o->wording == OX_WORDING_US ? "Request expect further clearance time."
                                               : "Request expected approach time.");
  }
}

/* ---- Against each other ---- */

static void put_line(const clr_reading *r, clr_text *t, const ox_item *item) {
  ox_say_options o = figures_of(r);
  const char *kind = item->kind == OX_ITEM_RADIAL    ? " radial"
                     : item->kind == OX_ITEM_BEARING ? " bearing"
                                                     : "";
  if (item->kind == OX_ITEM_INBOUND || item->kind == OX_ITEM_OUTBOUND)
    clr_put(t, "%s %s ", item->kind == OX_ITEM_INBOUND ? "inbound" : "outbound", course(r));
  else
    clr_put(t, "the ");
  clr_put_bearing(t, &o, item->value);
  if (item->kind == OX_ITEM_COURSE)
    clr_put(t, " %s", course(r));
  else
    clr_put(t, "%s", kind);
}

static void ask_direction_against_line(clr_reading *r) {
  const ox_item *direction = clr_item(r, OX_ITEM_DIRECTION);
  if (!direction || r->line_item < 0) return;
  if (clr_outbound_in_eighth(r->inbound_deg, direction->value)) return;
  const ox_item *line = &r->out->items[r->line_item];
  clr_text t = clr_ask(r, OX_ASK_DIRECTION_AGAINST_LINE, OX_ITEM_DIRECTION,
                       r->first[OX_ITEM_DIRECTION], r->line_item);
  clr_put(&t, "%s hold %s of %s on ", verify(r), clr_eighth_word(direction->value),
          fix_or(r, "the fix"));
  put_line(r, &t, line);
  clr_put(&t, "; that places the hold %s.", clr_eighth_word(r->inbound_deg + 180));
}

static void ask_inbound_against_outbound(clr_reading *r) {
  const ox_item *in = clr_item(r, OX_ITEM_INBOUND), *out = clr_item(r, OX_ITEM_OUTBOUND);
  if (!in || !out || clr_apart_deg(in->value + 180, out->value) <= RECIPROCAL_DEG) return;
  clr_text t = clr_ask(r, OX_ASK_INBOUND_AGAINST_OUTBOUND, OX_ITEM_INBOUND,
                       r->first[OX_ITEM_INBOUND], r->first[OX_ITEM_OUTBOUND]);
  clr_put(&t, "%s ", verify(r));
  put_line(r, &t, in);
  clr_put(&t, " and ");
  put_line(r, &t, out);
  clr_put(&t, "; they are not reciprocals.");
}

/* Whether an inbound course may belong to a line. A station that surely is the fix allows only
 * the reciprocal of its radial, otherwise both ways along it. */
static bool lies_along(const clr_reading *r, const ox_item *line) {
  bool here = line->kind != OX_ITEM_COURSE && line->name[0] && r->fix[0] &&
              ox_clearance_same_place(line->name, r->fix);
  here = here || (line->kind != OX_ITEM_COURSE && !line->name[0] &&
                  r->facility == OX_FACILITY_STATION && !clr_item(r, OX_ITEM_FIX_DME) &&
                  !clr_item(r, OX_ITEM_DME_RANGE));
  if (clr_apart_deg(r->inbound_deg, line->value + 180) <= ALONG_DEG) return true;
  return !here && clr_apart_deg(r->inbound_deg, line->value) <= ALONG_DEG;
}

static void ask_inbound_against(clr_reading *r, ox_item_kind kind) {
  const ox_item *line = clr_item(r, kind);
  if (!line || (r->line != CLR_LINE_INBOUND && r->line != CLR_LINE_OUTBOUND)) return;
  if (lies_along(r, line)) return;
  clr_text t = clr_ask(r, OX_ASK_INBOUND_AGAINST_LINE, OX_ITEM_INBOUND, r->line_item,
                       r->first[kind]);
  clr_put(&t, "%s ", verify(r));
  put_line(r, &t, &r->out->items[r->line_item]);
  clr_put(&t, " on ");
  put_line(r, &t, line);
  clr_put(&t, ".");
}

static void ask_arc(clr_reading *r) {
  if (!r->on_arc) return;
  clr_text t = clr_ask(r, OX_ASK_ARC, OX_ITEM_FIX, r->first[OX_ITEM_ARC], -1);
  clr_put(&t, "Say again the holding fix; an arc is no fix.");
}

static void ask_place(clr_reading *r) {
  const ox_item *fix = clr_item(r, OX_ITEM_FIX), *limit = clr_item(r, OX_ITEM_LIMIT);
  if (!fix || !limit || ox_clearance_same_place(fix->name, limit->name)) return;
  clr_text t = clr_ask(r, OX_ASK_FIX_AGAINST_LIMIT, OX_ITEM_FIX, r->first[OX_ITEM_FIX],
                       r->first[OX_ITEM_LIMIT]);
  clr_put(&t, "%s hold at %s, clearance limit %s.", verify(r), fix->name, limit->name);
}

/* A point of a name, or a DME from the station of that name? */
static void ask_dme_fix(clr_reading *r) {
  if (!clr_may_be_station(r)) return;
  const ox_item *fix = clr_item(r, OX_ITEM_FIX), *at = clr_item(r, OX_ITEM_FIX_DME);
  ox_say_options o = figures_of(r);
  clr_text t = clr_ask(r, OX_ASK_TWO_VALUES, OX_ITEM_FIX,
                       r->first[fix ? OX_ITEM_FIX : OX_ITEM_LIMIT],
                       r->first[at ? OX_ITEM_FIX_DME : OX_ITEM_DME_RANGE]);
  clr_put(&t, "%s %s: %s or %s ", verify(r), clr_item_word(OX_ITEM_FIX), r->fix, r->fix);
  clr_put_decimal(&t, &o, clr_fix_dme_nm(r));
  clr_put(&t, " DME?");
}

/* Which of two crossing radials the hold is on, where nothing tells. */
static void ask_crossing(clr_reading *r) {
  const ox_item *line = ox_clearance_line(r->out), *second;
  if (!ox_clearance_crossing(r->out, NULL, &second) || line->value2 > 0 || second == line ||
      r->line_item != (int)(line - r->out->items))
    return;
  ox_say_options o = figures_of(r);
  clr_text t = clr_ask(r, OX_ASK_TWO_VALUES, line->kind, r->line_item,
                       (int)(second - r->out->items));
  clr_put(&t, "%s %s to hold on: %s ", verify(r), clr_item_word(line->kind), line->name);
  clr_put_bearing(&t, &o, line->value);
  clr_put(&t, " or %s ", second->name);
  clr_put_bearing(&t, &o, second->value);
  clr_put(&t, "?");
}

static void ask_times(clr_reading *r) {
  const ox_item *efc = clr_item(r, OX_ITEM_EFC);
  int at = r->first[OX_ITEM_EFC];
  if (efc && r->no_delay) {
    clr_text t = clr_ask(r, OX_ASK_EFC_AGAINST_NO_DELAY, OX_ITEM_EFC, at,
                         r->first[OX_ITEM_DELAY]);
    clr_put(&t, "%s no delay expected", verify(r));
    if (r->efc_min >= 0) {
      clr_put(&t, ", or ");
      put_efc(r, &t, r->efc_min);
    }
    clr_put(&t, ".");
  }
  if (efc && efc->value2 > 0 && r->efc_min < 0) {
    ox_say_options o = figures_of(r);
    clr_text t = clr_ask(r, OX_ASK_EFC_HOUR, OX_ITEM_EFC, at, -1);
    clr_put(&t, "%s ", verify(r));
    put_efc(r, &t, (int)efc->value);
    clr_put(&t, " or ");
    clr_put_clock(&t, &o, (int)efc->value + 720);
    clr_put(&t, ".");
  }
  if (!efc || r->efc_min < 0 || r->now_min < 0) return;
  /* Across midnight the shorter way round decides which of the two is earlier. */
  int ahead = (r->efc_min - r->now_min + 1440) % 1440;
  if (ahead <= 720) return;
  ox_say_options o = figures_of(r);
  clr_text t = clr_ask(r, OX_ASK_EFC_PAST, OX_ITEM_EFC, at, r->first[OX_ITEM_NOW]);
  clr_put(&t, "%s ", verify(r));
  put_efc(r, &t, r->efc_min);
  clr_put(&t, "; time is ");
  clr_put_clock(&t, &o, r->now_min);
  clr_put(&t, ".");
}

static void ask_leg(clr_reading *r) {
  const ox_item *leg = clr_item(r, OX_ITEM_LEG), *range = clr_item(r, OX_ITEM_DME_RANGE);
  const ox_item *fix = clr_item(r, OX_ITEM_FIX_DME);
  ox_say_options o = figures_of(r);
  const ox_item *miles = leg && leg->unit == OX_UNIT_NM ? leg : range ? range : fix;
  if (miles && r->o->equipment == OX_EQUIPMENT_NO_DISTANCE) {
    clr_text t = clr_ask(r, OX_ASK_LEG_UNIT, miles->kind, r->first[miles->kind], -1);
    clr_put(&t, miles->kind == OX_ITEM_LEG ? "Unable mile legs, negative DME; request "
                                           : "Unable DME fix, negative DME; request ");
    clr_put_leg_time(&t, &o, ox_standard_leg_s(r->out->result.hold.altitude_ft), false);
    clr_put(&t, miles->kind == OX_ITEM_LEG ? " legs." : " legs at another fix.");
  }
  if (!leg || !range) return;
  double length_nm = range->value2 - range->value;
  if (leg->unit == OX_UNIT_NM && fabs(leg->value - length_nm) < 0.05) return;
  clr_text t = clr_ask(r, OX_ASK_LEG_AGAINST_DME, OX_ITEM_LEG, r->first[OX_ITEM_LEG],
                       r->first[OX_ITEM_DME_RANGE]);
  clr_put(&t, "%s the leg length between ", verify(r));
  clr_put_decimal(&t, &o, range->value);
  clr_put(&t, " and ");
  clr_put_decimal(&t, &o, range->value2);
  clr_put(&t, " DME.");
}

static void ask_speed(clr_reading *r) {
  const ox_item *speed = clr_item(r, OX_ITEM_SPEED);
  if (!speed) return;
  double altitude_ft = r->out->result.hold.altitude_ft;
  double limit_kias = clr_speed_limit_kias(r->o->wording, altitude_ft);
  if (limit_kias == 0 || speed->value <= limit_kias) return;
  ox_say_options o = figures_of(r);
  clr_text t = clr_ask(r, OX_ASK_SPEED_ABOVE_LIMIT, OX_ITEM_SPEED, r->first[OX_ITEM_SPEED],
                       r->first[OX_ITEM_ALTITUDE]);
  clr_put(&t, "%s maximum holding speed ", verify(r));
  clr_put_knots(&t, &o, speed->value);
  clr_put(&t, " at ");
  clr_put_altitude(&t, &o, altitude_ft);
  clr_put(&t, "; the limit there is ");
  clr_put_knots(&t, &o, limit_kias);
  clr_put(&t, ".");
}

/* ---- Said twice, and values that cannot be ---- */

static void put_degrees(clr_text *t, const ox_say_options *o, const ox_item *item) {
  if (item->kind == OX_ITEM_DIRECTION)
    clr_put(t, "%s", clr_eighth_word(item->value));
  else if (item->sound)
    clr_put_bearing(t, o, item->value);
  else
    clr_put_decimal(t, o, item->value);
}

static void put_value(const clr_reading *r, clr_text *t, const ox_item *item) {
  ox_say_options o = figures_of(r);
  if (fabs(item->value) > 1e6) { /* nobody said that: a slip of the keys */
    clr_put(t, "that figure");
    return;
  }
  switch (item->unit) {
  case OX_UNIT_DEG: put_degrees(t, &o, item); return;
  case OX_UNIT_S: clr_put_leg_time(t, &o, item->value, true); return;
  case OX_UNIT_NM:
    clr_put_decimal(t, &o, item->value);
    clr_put(t, " miles");
    return;
  case OX_UNIT_FT:
  case OX_UNIT_FL: clr_put_altitude(t, &o, item->value); return;
  case OX_UNIT_KT: clr_put_knots(t, &o, item->value); return;
  case OX_UNIT_MIN_OF_DAY:
    if (item->sound)
      clr_put_clock(t, &o, (int)item->value);
    else
      clr_put_whole(t, &o, item->value);
    return;
  case OX_UNIT_NONE:
    if (item->kind == OX_ITEM_TURNS)
      clr_put(t, item->value > 0 ? "right" : "left");
    else
      clr_put(t, "%s", item->name);
    return;
  default: clr_put_decimal(t, &o, item->value);
  }
}

static bool same_value(const ox_item *a, const ox_item *b) {
  if (a->unit == OX_UNIT_NONE && a->kind != OX_ITEM_TURNS)
    return ox_clearance_same_place(a->name, b->name);
  bool face = a->value2 > 0 || b->value2 > 0; /* half past one and 1330 */
  if (a->kind == OX_ITEM_EFC && a->unit == b->unit && a->unit == OX_UNIT_MIN_OF_DAY && face)
    return fmod(a->value, 720) == fmod(b->value, 720);
  bool levels = a->kind == OX_ITEM_ALTITUDE; /* FL180 and 18 000 ft */
  return a->value == b->value && (a->unit == b->unit || levels);
}

/* Two radials of two stations cross, and delays and routings may come in several pieces. */
static bool may_repeat(const ox_item *a, const ox_item *b) {
  if (a->kind == OX_ITEM_DELAY || a->kind == OX_ITEM_ROUTE || a->kind == OX_ITEM_NOW ||
      a->kind == OX_ITEM_PUBLISHED)
    return true;
  return (a->kind == OX_ITEM_RADIAL || a->kind == OX_ITEM_BEARING) && a->name[0] && b->name[0] &&
         !ox_clearance_same_place(a->name, b->name);
}

static void ask_twice(clr_reading *r) {
  for (size_t i = 0; i < r->out->item_count; i++) {
    const ox_item *second = &r->out->items[i];
    const ox_item *first = clr_item(r, second->kind);
    if (!second->sound || !first || first == second) continue;
    if (may_repeat(first, second) || same_value(first, second)) continue;
    clr_text t = clr_ask(r, OX_ASK_TWO_VALUES, second->kind, (int)(first - r->out->items), (int)i);
    clr_put(&t, "%s %s: ", verify(r), clr_item_word(second->kind));
    put_value(r, &t, first);
    clr_put(&t, " or ");
    put_value(r, &t, second);
    clr_put(&t, "?");
  }
}

static void ask_local(const clr_reading *r, clr_text *t, const ox_item *efc) {
  ox_say_options o = figures_of(r);
  clr_put(t, "Say again the %s in UTC; ", clr_item_word(efc->kind));
  clr_put_clock(t, &o, (int)efc->value);
  clr_put(t, " is local.");
}

static void ask_range(clr_reading *r) {
  if (r->turns_unclear && r->holds && !r->published && r->first[OX_ITEM_TURNS] < 0) {
    clr_text t = clr_ask(r, OX_ASK_OUT_OF_RANGE, OX_ITEM_TURNS, -1, -1);
    clr_put(&t, "Say again the turns.");
  }
  for (size_t i = 0; i < r->out->item_count; i++) {
    const ox_item *item = &r->out->items[i];
    if (item->sound) continue;
    clr_text t = clr_ask(r, OX_ASK_OUT_OF_RANGE, item->kind, (int)i, -1);
    if (item->kind == OX_ITEM_TURNS) {
      clr_put(&t, "Say again the turns: standard is right, nonstandard is left.");
      continue;
    }
    if (item->kind == OX_ITEM_EFC && item->value2 < 0) {
      ask_local(r, &t, item);
      continue;
    }
    clr_put(&t, "Say again the %s; ", clr_item_word(item->kind));
    put_value(r, &t, item);
    clr_put(&t, " cannot be.");
  }
}

/* Whether a question about an item that cannot be already stands for its being missing. */
static bool unsound(const clr_reading *r, ox_item_kind kind) {
  for (size_t i = 0; i < r->out->item_count; i++)
    if (!r->out->items[i].sound && r->out->items[i].kind == kind) return true;
  return false;
}

static void drop_asked(clr_reading *r) {
  size_t kept = 0;
  for (size_t i = 0; i < r->out->question_count; i++) {
    const ox_question *q = &r->out->questions[i];
    bool line = unsound(r, OX_ITEM_RADIAL) || unsound(r, OX_ITEM_BEARING) ||
                unsound(r, OX_ITEM_COURSE) || unsound(r, OX_ITEM_INBOUND) ||
                unsound(r, OX_ITEM_OUTBOUND);
    bool place = unsound(r, OX_ITEM_FIX_DME) || unsound(r, OX_ITEM_DME_RANGE);
    bool asked = (q->kind == OX_ASK_LINE && line) ||
                 (q->kind == OX_ASK_FIX && (place || r->on_arc)) ||
                 (q->kind == OX_ASK_EFC && unsound(r, OX_ITEM_EFC));
    if (!asked) r->out->questions[kept++] = *q;
  }
  r->out->question_count = kept;
}

void clr_doubt(clr_reading *r) {
  if (r->cancelled) return;
  if (r->out->item_count == 0) {
    clr_text t = clr_ask(r, OX_ASK_SAY_AGAIN, OX_ITEM_FIX, -1, -1);
    clr_put(&t, "Say again holding clearance.");
    return;
  }
  ask_range(r);
  ask_twice(r);
  ask_arc(r);
  ask_place(r);
  ask_dme_fix(r);
  ask_crossing(r);
  ask_direction_against_line(r);
  ask_inbound_against_outbound(r);
  ask_inbound_against(r, OX_ITEM_RADIAL);
  ask_inbound_against(r, OX_ITEM_BEARING);
  ask_inbound_against(r, OX_ITEM_COURSE);
  ask_times(r);
  ask_leg(r);
  ask_speed(r);
  if (r->holds) ask_missing(r);
  drop_asked(r);
}
