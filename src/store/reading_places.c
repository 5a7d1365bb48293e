/* What is left when all of a lesson has been read: every name of a point is looked up, every point
 * is placed, and every case takes what follows from the place of its fix. */
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include "json.h"
#include "oxbow/text.h"
#include "reading.h"

static bool known(ox_reading *r, const char *key, const char *name) {
  if (!name[0] || ox_points_find(r->points, name)) return true;
  cJSON value = {.type = cJSON_String, .valuestring = (char *)(uintptr_t)name};
  ox_reading_refuse(r, "", key, &value, N_("the name of a point of the lesson"));
  return false;
}

/* Of a point, with its name in it; what hangs on that has its own word behind it. */
enum { POINT_KEY_BYTES = OX_POINT_NAME_BYTES + 20, KEY_BYTES = POINT_KEY_BYTES + 8 };

static bool known_from(ox_reading *r, const char *prefix, const ox_point *p) {
  char key[KEY_BYTES];
  bool ok = true;
  if (p->kind == OX_POINT_AT) return true;
  snprintf(key, sizeof key, "%s.from", prefix);
  ok = known(r, key, p->from);
  if (p->kind == OX_POINT_RADIAL) return ok;
  snprintf(key, sizeof key, "%s.and", prefix);
  return known(r, key, p->and_from) && ok;
}

static void point_key(char key[POINT_KEY_BYTES], const ox_point *p) {
  snprintf(key, POINT_KEY_BYTES, "points \"%s\"", p->name);
}

static void look_up_points(ox_reading *r) {
  char key[POINT_KEY_BYTES], why[OX_REMARK_BYTES];
  ox_latlon unused;
  bool ok = true;
  for (size_t i = 0; i < r->points->count; i++) {
    point_key(key, &r->points->points[i]);
    ok = known_from(r, key, &r->points->points[i]) && ok;
  }
  /* One that is not known makes others that hang on it faulty, and is said already. */
  for (size_t i = 0; ok && i < r->points->count; i++) {
    const ox_point *p = &r->points->points[i];
    if (ox_points_place(r->points, p->name, &unused, why, sizeof why) != OX_ERROR) continue;
    point_key(key, p);
    ox_reading_say(r, "", key, why);
  }
}

static void look_up_route(ox_reading *r, const ox_route *route) {
  for (size_t i = 0; i < route->count; i++) {
    char key[32];
    snprintf(key, sizeof key, "route[%zu]", i);
    known(r, key, route->names[i]);
  }
}

static void look_up_case(ox_reading *r, ox_lesson_case *lc) {
  const ox_fix *fix = &lc->fix;
  char why[OX_REMARK_BYTES];
  ox_latlon unused;
  bool ok = known(r, "arrival.present", fix->present);
  ok = known(r, "hold.leg.station.name", fix->station) && ok;
  if (fix->kind == OX_FIX_POINT) ok = known_from(r, "hold.fix", &fix->point) && ok;
  if (!ok) return;
  if (ox_fix_has_place(r->points, fix, &lc->c) &&
      ox_fix_place(r->points, fix, &lc->c, &unused, why, sizeof why) == OX_ERROR)
    ox_reading_say(r, "", "hold.fix", why);
  else if (ox_fix_settle(r->points, fix, &lc->c, why, sizeof why) == OX_ERROR)
    ox_reading_say(r, "", fix->station[0] ? "hold.leg.station" : "hold.fix", why);
}

static void forget_places(ox_lesson *lesson) {
  lesson->points = (ox_points){0};
  lesson->route = (ox_route){.missed_approach = -1};
  for (size_t i = 0; i < lesson->case_count; i++) {
    ox_lesson_case *lc = &lesson->cases[i];
    if (lc->fix.station[0]) lc->c.hold.station = ox_case_default().hold.station;
    lc->fix = ox_fix_named();
  }
}

void ox_reading_look_up(ox_reading *r, ox_lesson *lesson) {
  size_t before = r->fault_count;
  look_up_points(r);
  look_up_route(r, &lesson->route);
  /* A point without a place would be told again with every case that hangs on it. */
  bool sound = r->fault_count == before;
  for (size_t i = 0; sound && i < lesson->case_count; i++) {
    ox_lesson_case *lc = &lesson->cases[i];
    ox_reading_enter(r, lc->kept, i + 1);
    look_up_case(r, lc);
  }
  ox_reading_leave(r);
  /* Only a newer lesson is shown in spite of its faults: then without places. */
  if (r->fault_count != before) forget_places(lesson);
}

/* --- remarks --- */

static bool add_remark(ox_messages *messages, const char *name, const char *where,
                       const char *what) {
  ox_growing t = {0};
  ox_growing_put_plain(&t, name, strlen(name));
  ox_growing_puts(&t, ": ");
  ox_growing_puts(&t, where);
  ox_growing_puts(&t, what);
  return ox_messages_add(messages, &t);
}

ox_status ox_lesson_remarks(const ox_lesson *lesson, const char *name, ox_messages *messages) {
  char why[OX_REMARK_BYTES], where[OX_CASE_NAME_BYTES + 60];
  ox_latlon unused;
  bool any = false;
  for (size_t i = 0; i < lesson->points.count; i++) {
    const ox_point *p = &lesson->points.points[i];
    /* What a point is counted from has its own remark. */
    ox_crossing crossing;
    if (p->kind != OX_POINT_CROSSING ||
        ox_point_crossing(&lesson->points, p, &crossing, why, sizeof why) != OX_ADVISORY ||
        crossing.cut_deg >= OX_CUT_POOR_DEG)
      continue;
    any = true;
    add_remark(messages, name, "points: ", why);
  }
  for (size_t i = 0; i < lesson->case_count; i++) {
    const ox_lesson_case *lc = &lesson->cases[i];
    if (lc->fix.kind != OX_FIX_POINT || lc->fix.point.kind != OX_POINT_CROSSING ||
        ox_fix_place(&lesson->points, &lc->fix, &lc->c, &unused, why, sizeof why) != OX_ADVISORY)
      continue;
    any = true;
    snprintf(where, sizeof where, _("case \"%s\": hold.fix: "), lc->c.name);
    add_remark(messages, name, where, why);
  }
  return any ? OX_ADVISORY : OX_OK;
}
