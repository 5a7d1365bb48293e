/* The cross-check: each item compared, and the case as the equipment would fly it. */
#include "crosscheck.h"

#include <math.h>
#include <string.h>

#include "oxbow/angle.h"
#include "oxbow/limits.h"
#include "oxbow/units.h"
#include "oxbow/words.h"
#include "say.h"

static const double SAME_COURSE_DEG = 1.0, SAME_LEG_S = 1.0, SAME_LEG_NM = 0.05;
static const double SAME_PART = 0.1; /* a length for a time */
static const double HALF_EIGHTH_DEG = 23.0; /* and a little: 22.5 belongs to both */

const char *ox_check_item_name(ox_check_item item) {
  static const char *const names[] = {N_("Fix"),   N_("Direction"), N_("Course"),
                                      N_("Turns"), N_("Leg"),       N_("EFC")};
  return item >= 0 && item < OX_CHECK_ITEM_COUNT ? _(names[item]) : "";
}

const char *ox_check_result_name(ox_check_result result) {
  switch (result) {
  case OX_CHECK_SAME:
    return C_("item of the cross-check", "same");
  case OX_CHECK_DIFFERS:
    return C_("item of the cross-check", "differs");
  case OX_CHECK_NOT_SHOWN: break;
  }
  return C_("item of the cross-check", "not shown");
}

bool ox_shown_is_given(const ox_case *c) {
  const ox_shown *s = &c->shown;
  return s->fix[strspn(s->fix, " ")] != '\0' || s->direction != OX_SHOWN_DIRECTION_NONE ||
         s->course_deg != 0.0 || s->turns != OX_SHOWN_TURNS_NONE || s->leg_s != 0.0 ||
         s->leg_nm != 0.0 || s->efc_min >= 0;
}

double words_shown_inbound_deg(const ox_shown *shown) {
  return ox_norm360_deg(shown->course_deg + (shown->course_is == OX_COURSE_OUTBOUND ? 180.0 : 0.0));
}

static ox_check_result verdict(bool same) {
  return same ? OX_CHECK_SAME : OX_CHECK_DIFFERS;
}

/* --- the items ----------------------------------------------------------------------------- */

/* Without regard to capitals and to blanks at the ends. */
static bool same_name(const char *a, const char *b) {
  a += strspn(a, " ");
  b += strspn(b, " ");
  for (;; a++, b++) {
    char p = *a >= 'a' && *a <= 'z' ? (char)(*a - 'a' + 'A') : *a;
    char q = *b >= 'a' && *b <= 'z' ? (char)(*b - 'a' + 'A') : *b;
    if (p == q && p != '\0') continue;
    return a[strspn(a, " ")] == '\0' && b[strspn(b, " ")] == '\0';
  }
}

static void check_fix(const ox_case *c, ox_check_row *row, words_say *cleared, words_say *shown) {
  words_put(cleared, "%s", c->hold.fix);
  if (c->shown.fix[strspn(c->shown.fix, " ")] == '\0') return;
  words_put(shown, "%s", c->shown.fix);
  row->result = verdict(same_name(c->hold.fix, c->shown.fix));
}

static void check_direction(const ox_case *c, ox_check_row *row, words_say *cleared,
                            words_say *shown) {
  double outbound_deg = c->hold.inbound_deg + 180.0;
  words_put(cleared, _("%s of the fix"), ox_words_eighth(outbound_deg));
  if (c->shown.direction == OX_SHOWN_DIRECTION_NONE) return;
  double shown_deg = ((int)c->shown.direction - 1) * 45.0;
  words_put(shown, _("%s of the fix"), ox_words_eighth(shown_deg));
  row->result = verdict(fabs(ox_turn_between_deg(outbound_deg, shown_deg)) <= HALF_EIGHTH_DEG);
}

static void check_course(const ox_case *c, ox_check_row *row, words_say *cleared,
                         words_say *shown) {
  words_put(cleared, _("inbound %s"), words_shown(c->hold.inbound_deg).text);
  if (c->shown.course_deg == 0.0) return;
  bool outbound = c->shown.course_is == OX_COURSE_OUTBOUND;
  double off_deg = ox_turn_between_deg(c->hold.inbound_deg, words_shown_inbound_deg(&c->shown));
  words_put(shown, outbound ? _("outbound %s") : _("inbound %s"),
            words_shown(c->shown.course_deg).text);
  row->result = verdict(fabs(off_deg) <= SAME_COURSE_DEG);
}

static ox_turns shown_turns(const ox_shown *shown) {
  return shown->turns == OX_SHOWN_TURNS_LEFT ? OX_TURNS_LEFT : OX_TURNS_RIGHT;
}

static void check_turns(const ox_case *c, ox_check_row *row, words_say *cleared,
                        words_say *shown) {
  words_put(cleared, "%s", ox_words_turns(c->hold.turns));
  if (c->shown.turns == OX_SHOWN_TURNS_NONE) return;
  words_put(shown, "%s", ox_words_turns(shown_turns(&c->shown)));
  row->result = verdict(shown_turns(&c->shown) == c->hold.turns);
}

static double cleared_leg_s(const ox_case *c) {
  return c->hold.leg_s > 0.0 ? c->hold.leg_s : ox_standard_leg_s(c->hold.altitude_ft);
}

/* Where both a time and a length are shown, the one that was cleared is compared. */
static bool shown_by_time(const ox_case *c) {
  if (c->shown.leg_s == 0.0) return false;
  return c->shown.leg_nm == 0.0 || c->hold.leg_by == OX_LEG_BY_TIME;
}

static bool same_leg(const ox_case *c, const ox_setup *setup) {
  bool by_time = c->hold.leg_by == OX_LEG_BY_TIME, shown_time = shown_by_time(c);
  double nm_per_s = setup->tas_kt / OX_S_PER_H;
  if (by_time && shown_time) return fabs(c->shown.leg_s - cleared_leg_s(c)) <= SAME_LEG_S;
  if (!by_time && !shown_time) return fabs(c->shown.leg_nm - c->hold.leg_nm) <= SAME_LEG_NM;
  double cleared_nm = by_time ? cleared_leg_s(c) * nm_per_s : c->hold.leg_nm;
  double shown_nm = shown_time ? c->shown.leg_s * nm_per_s : c->shown.leg_nm;
  return fabs(shown_nm - cleared_nm) <= SAME_PART * cleared_nm;
}

static void check_leg(const ox_case *c, const ox_setup *setup, ox_check_row *row,
                      words_say *cleared, words_say *shown) {
  if (c->hold.leg_by == OX_LEG_BY_TIME)
    words_put(cleared, "%s", words_time(cleared_leg_s(c)).text);
  else
    words_put(cleared, "%s NM", words_short(c->hold.leg_nm, 2).text);
  if (c->shown.leg_s == 0.0 && c->shown.leg_nm == 0.0) return;
  if (shown_by_time(c))
    words_put(shown, "%s", words_time(c->shown.leg_s).text);
  else
    words_put(shown, "%s NM", words_short(c->shown.leg_nm, 2).text);
  row->result = verdict(same_leg(c, setup));
}

static void put_minute(words_say *s, int minute) {
  words_put(s, "%02d:%02d UTC", minute / 60, minute % 60);
}

static void check_efc(const ox_case *c, ox_check_row *row, words_say *cleared, words_say *shown) {
  if (c->hold.efc_min >= 0)
    put_minute(cleared, c->hold.efc_min);
  else
    words_put(cleared, "%s", C_("expect further clearance", "none"));
  if (c->shown.efc_min < 0) return;
  put_minute(shown, c->shown.efc_min);
  row->result = verdict(c->shown.efc_min == c->hold.efc_min);
}

/* --- the whole ----------------------------------------------------------------------------- */

static void check_item(const ox_case *c, const ox_setup *setup, ox_check_item item,
                       ox_check_row *row) {
  *row = (ox_check_row){0};
  words_say cleared = words_into(row->cleared, sizeof row->cleared);
  words_say shown = words_into(row->shown, sizeof row->shown);
  switch (item) {
  case OX_CHECK_FIX: check_fix(c, row, &cleared, &shown); break;
  case OX_CHECK_DIRECTION: check_direction(c, row, &cleared, &shown); break;
  case OX_CHECK_COURSE: check_course(c, row, &cleared, &shown); break;
  case OX_CHECK_TURNS: check_turns(c, row, &cleared, &shown); break;
  case OX_CHECK_LEG: check_leg(c, setup, row, &cleared, &shown); break;
  case OX_CHECK_EFC: check_efc(c, row, &cleared, &shown); break;
  case OX_CHECK_ITEM_COUNT: break;
  }
  if (row->result == OX_CHECK_DIFFERS) words_check_means(c, setup, item, row);
}

static bool differs(const ox_crosscheck *k, ox_check_item item) {
  return k->rows[item].result == OX_CHECK_DIFFERS;
}

static void fly_leg_as_shown(const ox_case *c, ox_case *flown) {
  flown->hold.station.given = false;
  if (shown_by_time(c)) {
    flown->hold.leg_by = OX_LEG_BY_TIME;
    flown->hold.leg_s = c->shown.leg_s;
    return;
  }
  /* A length of a leg cleared by time is that of the inbound leg: AIM 5-3-8 j7(a)(4). */
  if (c->hold.leg_by == OX_LEG_BY_TIME) flown->hold.leg_end = OX_LEG_END_INBOUND;
  flown->hold.leg_by = OX_LEG_BY_DISTANCE;
  flown->hold.leg_nm = c->shown.leg_nm;
}

/* Only what differs is changed: 059.6 that is shown as 060 stays what it was. */
static void set_flown(const ox_case *c, ox_crosscheck *k) {
  k->flown = *c;
  if (differs(k, OX_CHECK_FIX)) memcpy(k->flown.hold.fix, c->shown.fix, sizeof c->shown.fix);
  if (differs(k, OX_CHECK_COURSE)) k->flown.hold.inbound_deg = words_shown_inbound_deg(&c->shown);
  if (differs(k, OX_CHECK_TURNS)) k->flown.hold.turns = shown_turns(&c->shown);
  if (differs(k, OX_CHECK_LEG)) fly_leg_as_shown(c, &k->flown);
  if (differs(k, OX_CHECK_EFC)) k->flown.hold.efc_min = c->shown.efc_min;
  bool to_efc = c->hold.ends == OX_HOLD_TO_EFC && ox_clock_is_known(c);
  k->flown_otherwise = differs(k, OX_CHECK_COURSE) || differs(k, OX_CHECK_TURNS) ||
                       differs(k, OX_CHECK_LEG) || (to_efc && differs(k, OX_CHECK_EFC));
}

ox_status ox_crosscheck_make(const ox_case *c, ox_crosscheck *out) {
  ox_setup setup;
  if (ox_setup_make(c, &setup) == OX_ERROR) return OX_ERROR;
  out->shown = out->differ = 0;
  for (int i = 0; i < OX_CHECK_ITEM_COUNT; i++) {
    check_item(c, &setup, (ox_check_item)i, &out->rows[i]);
    if (out->rows[i].result != OX_CHECK_NOT_SHOWN) out->shown++;
    if (out->rows[i].result == OX_CHECK_DIFFERS) out->differ++;
  }
  set_flown(c, out);
  return out->differ > 0 ? OX_ADVISORY : OX_OK;
}
