/* Places to text. A point that stood inside what uses it is written there again, by the first that
 * uses it; where nothing uses it any longer it goes into the list, so that none is lost. */
#include <string.h>

#include "json.h"
#include "writing.h"

static size_t index_of(const ox_points *points, const char *name) {
  size_t i = 0;
  while (i < points->count && strcmp(points->points[i].name, name) != 0)
    i++;
  return i;
}

/* How often a point is named by what can have it inside. */
static int uses_of(const ox_lesson *lesson, const char *name) {
  int uses = 0;
  for (size_t i = 0; i < lesson->points.count; i++) {
    const ox_point *p = &lesson->points.points[i];
    if (p->kind != OX_POINT_AT && strcmp(p->from, name) == 0) uses++;
    if (p->kind == OX_POINT_CROSSING && strcmp(p->and_from, name) == 0) uses++;
  }
  for (size_t i = 0; i < lesson->case_count; i++) {
    const ox_fix *fix = &lesson->cases[i].fix;
    const ox_point *p = &fix->point;
    bool own = fix->kind == OX_FIX_POINT;
    if (own && p->kind != OX_POINT_AT && strcmp(p->from, name) == 0) uses++;
    if (own && p->kind == OX_POINT_CROSSING && strcmp(p->and_from, name) == 0) uses++;
    if (strcmp(fix->present, name) == 0) uses++;
    if (strcmp(fix->station, name) == 0 && !fix->station_elevation_given &&
        !ox_key_is_idle(&lesson->cases[i].c, "hold.leg.station"))
      uses++;
  }
  return uses;
}

static bool is_on_route(const ox_lesson *lesson, const char *name) {
  for (size_t i = 0; i < lesson->route.count; i++)
    if (strcmp(lesson->route.names[i], name) == 0) return true;
  return false;
}

static const cJSON *kept_member(const cJSON *kept, const char *key) {
  const cJSON *member = cJSON_IsObject(kept) ? ox_json_member(kept, key) : NULL;
  return cJSON_IsObject(member) ? member : NULL;
}

static void add_place(ox_writing *w, cJSON *object, const ox_point *p, const cJSON *kept);

/* A name, or the point itself where it stands inside and has not been written yet. */
static void add_reference(ox_writing *w, cJSON *object, const char *key, const char *name,
                          const cJSON *kept) {
  const ox_points *points = &w->lesson->points;
  size_t index = index_of(points, name);
  if (index == points->count || !points->points[index].inside || w->written[index]) {
    ox_writing_add_text(w, object, key, name, OX_POINT_NAME_BYTES);
    return;
  }
  const ox_point *p = &points->points[index];
  w->written[index] = true;
  cJSON *inner = ox_writing_add(w, object, key, cJSON_CreateObject());
  if (!inner) return;
  if (!p->unnamed || uses_of(w->lesson, name) > 1 || is_on_route(w->lesson, name))
    ox_writing_add_text(w, inner, "name", name, OX_POINT_NAME_BYTES);
  add_place(w, inner, p, kept_member(kept, key));
}

static void add_number(ox_writing *w, cJSON *object, const ox_point *p, const char *key) {
  ox_writing_add(w, object, key,
                 cJSON_CreateNumber(ox_field_get(ox_point_field_by_key(key), p)));
}

/* Everything of a point but its name. */
static void add_place(ox_writing *w, cJSON *object, const ox_point *p, const cJSON *kept) {
  if (p->kind == OX_POINT_AT) {
    add_number(w, object, p, "lat_deg");
    add_number(w, object, p, "lon_deg");
  } else {
    add_reference(w, object, "from", p->from, kept);
    add_number(w, object, p, "radial_deg");
  }
  if (p->kind == OX_POINT_RADIAL) {
    add_number(w, object, p, "nm");
    if (p->dme) add_number(w, object, p, "altitude_ft");
  } else if (p->kind == OX_POINT_CROSSING) {
    add_reference(w, object, "and", p->and_from, kept);
    add_number(w, object, p, "and_radial_deg");
  }
  if (p->declination_deg != 0.0) add_number(w, object, p, "declination_deg");
  if (p->elevation_ft != 0.0) add_number(w, object, p, "elevation_ft");
  if (kept) ox_writing_keep(w, object, kept, OX_KEYS_POINT);
}

/* What a point of the list was read from: by its name. */
static const cJSON *kept_point(const ox_lesson *lesson, const char *name) {
  const cJSON *list = lesson->kept ? ox_json_member(lesson->kept, "points") : NULL;
  for (const cJSON *item = cJSON_IsArray(list) ? list->child : NULL; item; item = item->next) {
    const cJSON *own = cJSON_IsObject(item) ? ox_json_member(item, "name") : NULL;
    if (cJSON_IsString(own) && strcmp(own->valuestring, name) == 0) return item;
  }
  return NULL;
}

static void add_points(ox_writing *w, cJSON *lesson) {
  const ox_points *points = &w->lesson->points;
  cJSON *list = NULL;
  for (size_t i = 0; i < points->count && !w->failed; i++) {
    const ox_point *p = &points->points[i];
    if (p->inside && uses_of(w->lesson, p->name) > 0) continue;
    if (!list) list = ox_writing_add(w, lesson, "points", cJSON_CreateArray());
    cJSON *object = list ? ox_writing_add(w, list, NULL, cJSON_CreateObject()) : NULL;
    if (!object) return;
    w->written[i] = true;
    ox_writing_add_text(w, object, "name", p->name, sizeof p->name);
    add_place(w, object, p, kept_point(w->lesson, p->name));
  }
}

void ox_writing_places(ox_writing *w, cJSON *lesson) {
  const ox_route *route = &w->lesson->route;
  add_points(w, lesson);
  if (route->count < 2 || route->count > OX_ROUTE_POINTS_MAX) return;
  cJSON *list = ox_writing_add(w, lesson, "route", cJSON_CreateArray());
  for (size_t i = 0; list && i < route->count && !w->failed; i++)
    ox_writing_add(w, list, NULL, cJSON_CreateString(route->names[i]));
  if (route->missed_approach >= 0 && route->missed_approach < (int)route->count)
    ox_writing_add_text(w, lesson, "missed_approach_point",
                        route->names[route->missed_approach], OX_POINT_NAME_BYTES);
}

/* A blank name could not be read again; without the key the fix has its default name. */
static void add_fix_name(ox_writing *w, cJSON *object, const char *key, const ox_case *c) {
  char line[OX_FIX_NAME_BYTES];
  ox_text_line_copy(line, sizeof line, c->hold.fix, sizeof c->hold.fix);
  if (!ox_text_is_blank(line)) ox_writing_add_text(w, object, key, line, sizeof line);
}

void ox_writing_fix(ox_writing *w, cJSON *hold, const ox_lesson_case *from, const cJSON *kept) {
  const ox_fix *fix = &from->fix;
  if (fix->kind == OX_FIX_NAMED) {
    add_fix_name(w, hold, "fix", &from->c);
    return;
  }
  cJSON *object = ox_writing_add(w, hold, "fix", cJSON_CreateObject());
  if (!object) return;
  add_fix_name(w, object, "name", &from->c);
  if (fix->kind == OX_FIX_POINT) {
    add_place(w, object, &fix->point, kept);
    return;
  }
  bool by_distance = fix->kind == OX_FIX_AHEAD_NM;
  ox_writing_add(w, object, by_distance ? "ahead_nm" : "ahead_s",
                 cJSON_CreateNumber(by_distance ? fix->ahead_nm : fix->ahead_s));
  if (kept) ox_writing_keep(w, object, kept, OX_KEYS_POINT);
}

void ox_writing_present(ox_writing *w, cJSON *arrival, const ox_fix *fix, const cJSON *kept) {
  if (fix->present[0]) add_reference(w, arrival, "present", fix->present, kept);
}

/* An elevation of the station's own stands beside the name of a point of the list. */
void ox_writing_station(ox_writing *w, cJSON *leg, const ox_fix *fix, const cJSON *kept) {
  const ox_points *points = &w->lesson->points;
  size_t index = index_of(points, fix->station);
  bool here = index < points->count && points->points[index].inside && !w->written[index] &&
              !fix->station_elevation_given;
  if (here) {
    add_reference(w, leg, "station", fix->station, kept);
    return;
  }
  cJSON *object = ox_writing_add(w, leg, "station", cJSON_CreateObject());
  if (!object) return;
  ox_writing_add_text(w, object, "name", fix->station, sizeof fix->station);
  if (fix->station_elevation_given)
    ox_writing_add(w, object, "elevation_ft", cJSON_CreateNumber(fix->station_elevation_ft));
  kept = kept_member(kept, "station");
  if (kept) ox_writing_keep(w, object, kept, OX_KEYS_POINT);
}
