/* From the words of a clearance to the place of its fix. */
#include "ox_clearance_fix.h"

#include <math.h>
#include <string.h>

#include "oxbow/angle.h"
#include "oxbow/text.h"

/* The point that a name said means: "LARCH VOR" is the point LARCH. */
static const ox_point *point_said(const ox_points *points, const char *name) {
  for (size_t i = 0; i < points->count && *name; i++)
    if (ox_clearance_same_place(points->points[i].name, name)) return &points->points[i];
  return NULL;
}

static const char *station_said(const ox_clearance *c, const ox_item *at, const ox_item *line) {
  const ox_item *others[] = {ox_clearance_find(c, OX_ITEM_FIX),
                             ox_clearance_find(c, OX_ITEM_LIMIT)};
  if (at && *at->name) return at->name;
  if (line && *line->name) return line->name;
  for (size_t i = 0; i < G_N_ELEMENTS(others); i++)
    if (others[i] && others[i]->facility == OX_FACILITY_STATION) return others[i]->name;
  return "";
}

/* Of two DME limits the one at which the inbound leg ends. */
static double distance_said(const ox_clearance *c, const ox_item *at, const ox_item *range,
                            const ox_item *line) {
  double away_deg = ox_turn_between_deg(c->result.hold.inbound_deg, line->value);
  if (!range) return at->value;
  return fabs(away_deg) < 90 ? range->value2 : range->value;
}

static ox_fix by_radial(const ox_clearance *c, const ox_item *at, const ox_item *range,
                        const ox_points *points, char *remark, size_t bytes) {
  char why[OX_REMARK_BYTES] = "";
  ox_latlon unused;
  ox_fix fix = ox_fix_named();
  const ox_item *line = ox_clearance_line(c);
  const char *station = station_said(c, at, line);
  const ox_point *from = point_said(points, station);
  if (!line || !*station) {
    g_snprintf(remark, bytes,
               !line ? _("%s has no place: the radial was not said.")
                     : _("%s has no place: the station was not said."),
               c->result.hold.fix);
    return fix;
  }
  double nm = distance_said(c, at, range, line);
  if (!from) {
    g_snprintf(remark, bytes,
               _("%s is on the %03.0f radial of %s at %g NM. The lesson has no point of that name: "
                 "enter it on the page Places to place the fix."),
               c->result.hold.fix, line->value, station, nm);
    return fix;
  }
  fix.kind = OX_FIX_POINT;
  fix.point = (ox_point){.kind = OX_POINT_RADIAL, .radial_deg = line->value, .nm = nm,
                         .dme = TRUE, .altitude_ft = c->result.hold.altitude_ft};
  g_strlcpy(fix.point.from, from->name, sizeof fix.point.from);
  if (ox_fix_place(points, &fix, &c->result, &unused, why, sizeof why) == OX_ERROR) {
    g_snprintf(remark, bytes, _("%s is left without a place. %s"), c->result.hold.fix, why);
    return ox_fix_named();
  }
  g_snprintf(remark, bytes, _("%s is placed on the %03.0f radial of %s at %g DME."),
             c->result.hold.fix, line->value, from->name, nm);
  return fix;
}

/* At the present position, or so far ahead of it. */
static ox_fix from_where_one_is(const ox_item *said, const ox_points *points, const ox_fix *now,
                                char *remark, size_t bytes) {
  ox_fix fix = ox_fix_named();
  gboolean ahead = said->unit != OX_UNIT_NONE;
  fix.kind = said->unit == OX_UNIT_S ? OX_FIX_AHEAD_S : OX_FIX_AHEAD_NM;
  if (said->unit == OX_UNIT_NM) fix.ahead_nm = said->value;
  if (said->unit == OX_UNIT_S) fix.ahead_s = said->value;
  if (ox_points_find(points, now->present))
    g_strlcpy(fix.present, now->present, sizeof fix.present);
  if (ahead && *fix.present)
    g_snprintf(remark, bytes, _("The fix is ahead of the aircraft, which is at %s."), fix.present);
  else if (ahead)
    g_snprintf(remark, bytes, _("The fix is ahead of the aircraft. Where that is can be entered on "
                                "the page Places."));
  else if (*fix.present)
    g_snprintf(remark, bytes, _("The fix is where the aircraft is: at %s."), fix.present);
  else
    g_snprintf(remark, bytes, _("The fix is where the aircraft is. Where that is can be entered on "
                                "the page Places."));
  return fix;
}

/* Where the radials of two of the lesson's points cross. */
static gboolean at_crossing(const ox_clearance *c, const ox_points *points, ox_fix *out) {
  const ox_item *one, *other;
  char why[OX_REMARK_BYTES];
  ox_latlon unused;
  if (!ox_clearance_crossing(c, &one, &other)) return FALSE;
  const ox_point *from = point_said(points, one->name), *and = point_said(points, other->name);
  if (!from || !and) return FALSE;
  *out = ox_fix_named();
  out->kind = OX_FIX_POINT;
  out->point = (ox_point){.kind = OX_POINT_CROSSING, .radial_deg = one->value,
                          .and_radial_deg = other->value};
  g_strlcpy(out->point.from, from->name, sizeof out->point.from);
  g_strlcpy(out->point.and_from, and->name, sizeof out->point.and_from);
  return ox_fix_place(points, out, &c->result, &unused, why, sizeof why) != OX_ERROR;
}

/* A latitude and longitude is the name of its place. */
static gboolean at_its_name(const char *name, ox_fix *out) {
  char why[OX_REMARK_BYTES];
  *out = ox_fix_named();
  out->kind = OX_FIX_POINT;
  out->point.kind = OX_POINT_AT;
  return ox_latlon_parse(name, &out->point.at, why, sizeof why) != OX_ERROR;
}

ox_fix ox_clearance_fix(const ox_clearance *c, ox_case *meant, const char *fix_now,
                        const ox_fix *now, const ox_points *points, char *remark,
                        size_t remark_bytes) {
  const ox_item *fix = ox_clearance_find(c, OX_ITEM_FIX);
  const ox_item *at = ox_clearance_find(c, OX_ITEM_FIX_DME);
  const ox_item *range = ox_clearance_find(c, OX_ITEM_DME_RANGE);
  const ox_point *point = point_said(points, meant->hold.fix);
  *remark = '\0';
  ox_fix place;
  if (fix && (strcmp(fix->name, OX_PRESENT_POSITION) == 0 || fix->unit != OX_UNIT_NONE))
    return from_where_one_is(fix, points, now, remark, remark_bytes);
  if (fix && !point && at_its_name(fix->name, &place)) return place;
  if (point) g_strlcpy(meant->hold.fix, point->name, sizeof meant->hold.fix);
  gboolean renamed = strcmp(meant->hold.fix, fix_now) != 0;
  if (point && renamed) return ox_fix_named();
  if (renamed && !at && !range && at_crossing(c, points, &place)) return place;
  if ((at || range) && (renamed || now->kind == OX_FIX_NAMED))
    return by_radial(c, at, range, points, remark, remark_bytes);
  return renamed ? ox_fix_named() : *now;
}
