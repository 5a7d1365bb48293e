/* Points, the fix of a case, and the route: objects in the file, names in memory. A point that
 * stands inside what uses it goes into the list as well, marked, so that it can be written there
 * again. Names are looked up when everything has been read, so their order does not matter. */
#include <stdio.h>
#include <string.h>

#include "json.h"
#include "oxbow/text.h"
#include "reading.h"

#define POINT_NAME_ALLOWED N_("a name of one line and 1 to 63 bytes")
#define POINT_ALLOWED N_("the name of a point, or a point")
#define POINTS_ALLOWED N_("a list of at most 128 points")
#define ROUTE_ALLOWED N_("a list of 2 to 32 names of points")
#define KEY_BYTES 96

/* Which forms of a place an object has keys of. */
typedef struct {
  bool at, from, ahead;
  bool crossing;
} forms;

static bool has(const cJSON *object, const char *key) {
  return ox_json_member(object, key) != NULL;
}

static forms forms_of(const cJSON *object) {
  return (forms){
      .at = has(object, "lat_deg") || has(object, "lon_deg"),
      .from = has(object, "from"),
      .ahead = has(object, "ahead_nm") || has(object, "ahead_s"),
      .crossing = has(object, "and") || has(object, "and_radial_deg"),
  };
}

bool ox_reading_is_point(const cJSON *object) {
  forms f = forms_of(object);
  return f.at || f.from || (has(object, "name") && !has(object, "nm"));
}

/* A name of a point into out, or the fault. */
static bool read_name(ox_reading *r, const char *key, const cJSON *value, char *out,
                      const char *allowed) {
  if (cJSON_IsString(value) && ox_text_is_blank(value->valuestring)) {
    ox_reading_refuse(r, "", key, value, allowed);
    return false;
  }
  return ox_reading_line(r, key, value, out, OX_POINT_NAME_BYTES, allowed);
}

/* --- the list --- */

/* A name of ours that no other point has. */
static void name_it(const ox_points *points, ox_point *point) {
  for (size_t number = 1;; number++) {
    snprintf(point->name, sizeof point->name, _("unnamed %zu"), number);
    if (!ox_points_find(points, point->name)) return;
  }
}

/* Into the list. A point inside that is given again in just the same way is the same point. */
static bool take_point(ox_reading *r, const char *key, ox_point *point) {
  if (!point->name[0]) {
    point->unnamed = true;
    name_it(r->points, point);
  }
  const ox_point *there = ox_points_find(r->points, point->name);
  if (there) {
    ox_point alike = *there;
    alike.inside = point->inside;
    if (point->inside && ox_point_equal(&alike, point)) return true;
    char sentence[OX_READING_SENTENCE_BYTES];
    snprintf(sentence, sizeof sentence, _("there is another point named \"%s\""), point->name);
    ox_reading_say(r, "", key, sentence);
    return false;
  }
  if (r->points->count >= OX_POINTS_MAX) {
    ox_reading_say(r, "", key, _("there are more than 128 points in the lesson"));
    return false;
  }
  r->points->points[r->points->count++] = *point;
  return true;
}

/* --- one point --- */

static bool read_reference(ox_reading *r, const char *key, const cJSON *value, char *out);

static void join(char out[KEY_BYTES], const char *prefix, const char *key) {
  snprintf(out, KEY_BYTES, "%s%s%s", prefix, *prefix ? "." : "", key);
}

static bool read_point_member(ox_reading *r, const char *prefix, const cJSON *child,
                              ox_point *out) {
  char key[KEY_BYTES];
  join(key, prefix, child->string);
  const ox_field *field = ox_point_field_by_key(child->string);
  if (field) {
    if (strcmp(field->key, "altitude_ft") == 0) out->dme = true;
    return ox_reading_field(r, prefix, field, out, child->string, child);
  }
  if (strcmp(child->string, "name") == 0)
    return read_name(r, key, child, out->name, POINT_NAME_ALLOWED);
  if (strcmp(child->string, "from") == 0) return read_reference(r, key, child, out->from);
  if (strcmp(child->string, "and") == 0) return read_reference(r, key, child, out->and_from);
  return true;
}

static bool need(ox_reading *r, const char *prefix, const cJSON *object, const char *key) {
  if (has(object, key)) return true;
  const ox_field *field = ox_point_field_by_key(key);
  ox_reading_say_missing(r, prefix, key, field ? field->allowed : POINT_ALLOWED);
  return false;
}

/* Every key that is missing is said, not only the first. */
static bool need_all(ox_reading *r, const char *prefix, const cJSON *object,
                     const char *const *keys) {
  bool all = true;
  for (; *keys; keys++)
    if (!need(r, prefix, object, *keys)) all = false;
  return all;
}

static bool check_forms(ox_reading *r, const char *prefix, const cJSON *object, forms f) {
  if (f.at && f.from) {
    ox_reading_say(r, "", prefix, _("a point is given by its latitude and longitude, or from "
                                    "another point, not by both"));
    return false;
  }
  static const char *const at[] = {"lat_deg", "lon_deg", NULL};
  static const char *const crossing[] = {"from", "radial_deg", "and", "and_radial_deg", NULL};
  static const char *const from[] = {"radial_deg", "nm", NULL};
  if (f.at) return need_all(r, prefix, object, at);
  if (f.crossing) return need_all(r, prefix, object, crossing);
  if (f.from) return need_all(r, prefix, object, from);
  ox_reading_say(r, "", prefix,
                 _("nothing says where it is: lat_deg and lon_deg, or from, radial_deg and nm, or "
                   "from, radial_deg, and and and_radial_deg are needed"));
  return false;
}

bool ox_reading_point(ox_reading *r, const char *prefix, const cJSON *value, ox_point *out) {
  if (!ox_reading_object(r, "", prefix, value)) return false;
  forms f = forms_of(value);
  bool ok = true;
  memset(out, 0, sizeof *out);
  out->kind = f.at ? OX_POINT_AT : f.crossing ? OX_POINT_CROSSING : OX_POINT_RADIAL;
  for (const cJSON *child = value->child; child; child = child->next)
    if (!ox_reading_first(r, prefix, value, child) || !read_point_member(r, prefix, child, out))
      ok = false;
  return ok & check_forms(r, prefix, value, f);
}

/* A name, or a point that stands inside. */
static bool read_reference(ox_reading *r, const char *key, const cJSON *value, char *out) {
  if (!cJSON_IsObject(value)) return read_name(r, key, value, out, POINT_ALLOWED);
  ox_point point;
  if (!ox_reading_point(r, key, value, &point)) return false;
  point.inside = true;
  if (!take_point(r, key, &point)) return false;
  strcpy(out, point.name);
  return true;
}

void ox_reading_points(ox_reading *r, const cJSON *value) {
  if (!cJSON_IsArray(value) || cJSON_GetArraySize(value) > OX_POINTS_MAX) {
    ox_reading_refuse(r, "", "points", value, POINTS_ALLOWED);
    return;
  }
  int number = 0;
  for (const cJSON *child = value->child; child; child = child->next, number++) {
    char prefix[32];
    ox_point point;
    snprintf(prefix, sizeof prefix, "points[%d]", number);
    if (!ox_reading_point(r, prefix, child, &point)) continue;
    if (point.name[0])
      take_point(r, prefix, &point);
    else
      ox_reading_say_missing(r, prefix, "name", POINT_NAME_ALLOWED);
  }
}

/* --- the fix of a case, the present position, the station --- */

static bool read_ahead(ox_reading *r, const char *key, const cJSON *value, double most,
                       const char *allowed, double *out) {
  double number = cJSON_IsNumber(value) ? value->valuedouble : -1.0;
  if (!(number >= 0.0 && number <= most)) {
    ox_reading_refuse(r, "hold.fix", key, value, allowed);
    return false;
  }
  *out = number + 0.0;
  return true;
}

static void read_fix_ahead(ox_reading *r, const cJSON *value, forms f, ox_case *c, ox_fix *out) {
  const cJSON *nm = ox_json_member(value, "ahead_nm"), *s = ox_json_member(value, "ahead_s");
  const cJSON *name = ox_json_member(value, "name");
  if (f.at || f.from || (nm && s)) {
    ox_reading_say(r, "", "hold.fix",
                   _("a fix is given by ahead_nm, by ahead_s, or as a point, not by two of them"));
    return;
  }
  for (const cJSON *child = value->child; child; child = child->next)
    ox_reading_first(r, "hold.fix", value, child);
  if (name) read_name(r, "hold.fix.name", name, c->hold.fix, POINT_NAME_ALLOWED);
  if (nm && read_ahead(r, "ahead_nm", nm, OX_FIX_AHEAD_MAX_NM, N_("a distance (0 to 100 NM)"),
                       &out->ahead_nm))
    out->kind = OX_FIX_AHEAD_NM;
  if (s && read_ahead(r, "ahead_s", s, OX_FIX_AHEAD_MAX_S, N_("a time (0 to 3600 seconds)"),
                      &out->ahead_s))
    out->kind = OX_FIX_AHEAD_S;
}

void ox_reading_fix(ox_reading *r, const cJSON *value, ox_case *c, ox_fix *out) {
  static const char key[] = "hold.fix";
  forms f = forms_of(value);
  if (f.ahead) {
    read_fix_ahead(r, value, f, c, out);
    return;
  }
  ox_point point;
  if (!ox_reading_point(r, key, value, &point)) return;
  if (point.name[0]) strcpy(c->hold.fix, point.name);
  point.name[0] = '\0';
  out->kind = OX_FIX_POINT;
  out->point = point;
}

void ox_reading_present(ox_reading *r, const cJSON *value, ox_fix *out) {
  if (!cJSON_IsNull(value)) read_reference(r, "arrival.present", value, out->present);
}

/* A name alone is a point of the list; its elevation may stand beside it. */
void ox_reading_station(ox_reading *r, const char *path, const cJSON *value, ox_fix *out) {
  forms f = forms_of(value);
  char key[KEY_BYTES];
  if (f.at || f.from) {
    read_reference(r, path, value, out->station);
    return;
  }
  join(key, path, "name");
  for (const cJSON *child = value->child; child; child = child->next)
    ox_reading_first(r, path, value, child);
  read_name(r, key, ox_json_member(value, "name"), out->station, POINT_NAME_ALLOWED);
  const cJSON *elevation = ox_json_member(value, "elevation_ft");
  ox_point point = {0};
  if (!elevation || !ox_reading_field(r, path, ox_point_field_by_key("elevation_ft"), &point,
                                      "elevation_ft", elevation))
    return;
  out->station_elevation_given = true;
  out->station_elevation_ft = point.elevation_ft;
}

/* --- the route --- */

void ox_reading_route(ox_reading *r, const cJSON *value, ox_route *out) {
  if (cJSON_IsNull(value)) return;
  int count = cJSON_IsArray(value) ? cJSON_GetArraySize(value) : 0;
  if (count < 2 || count > OX_ROUTE_POINTS_MAX) {
    ox_reading_refuse(r, "", "route", value, ROUTE_ALLOWED);
    return;
  }
  int number = 0;
  for (const cJSON *child = value->child; child; child = child->next, number++) {
    char key[32];
    snprintf(key, sizeof key, "route[%d]", number);
    read_name(r, key, child, out->names[number], POINT_NAME_ALLOWED);
  }
  out->count = (size_t)count;
}

void ox_reading_missed_approach(ox_reading *r, const cJSON *value, ox_route *out) {
  char name[OX_POINT_NAME_BYTES];
  if (cJSON_IsNull(value) ||
      !read_name(r, "missed_approach_point", value, name, N_("the name of a point of the route")))
    return;
  for (size_t i = 0; i < out->count; i++)
    if (strcmp(out->names[i], name) == 0) {
      out->missed_approach = (int)i;
      return;
    }
  ox_reading_refuse(r, "", "missed_approach_point", value, N_("the name of a point of the route"));
}
