/* Named points. What a point is counted from is followed each time it is asked for; so moving one
 * moves all that hang on it, and no place is ever out of date. */
#include <string.h>

#include "oxbow/fix.h"
#include "oxbow/text.h"
#include "remark.h"

static int index_of(const ox_points *points, const char *name) {
  for (size_t i = 0; i < points->count; i++)
    if (strcmp(points->points[i].name, name) == 0) return (int)i;
  return -1;
}

const ox_point *ox_points_find(const ox_points *points, const char *name) {
  int i = index_of(points, name);
  return i < 0 ? NULL : &points->points[i];
}

/* --- where a point is --- */

typedef enum { NOT_ASKED, ASKING, FOUND } progress;

/* Each point is placed once in a search: without that, crossings of crossings would take for ever,
 * and a point counted from itself would never end. */
typedef struct {
  const ox_points *points;
  progress progress[OX_POINTS_MAX];
  ox_latlon at[OX_POINTS_MAX];
  bool advised; /* the first advisory is the one that is kept */
  char *remark;
  size_t bytes;
} search;

static ox_status place_of(search *s, int index);

static ox_status refuse_unknown(const char *name, char *remark, size_t bytes) {
  return ox_remark(OX_ERROR, remark, bytes, _("There is no point named %s."), name);
}

static ox_status station_of(search *s, const char *name, ox_station *out, double *elevation_ft) {
  int i = index_of(s->points, name);
  if (i < 0) return refuse_unknown(name, s->remark, s->bytes);
  if (place_of(s, i) == OX_ERROR) return OX_ERROR;
  *out = (ox_station){s->at[i], s->points->points[i].declination_deg};
  *elevation_ft = s->points->points[i].elevation_ft;
  return OX_OK;
}

static ox_status on_radial(search *s, const ox_point *p, ox_latlon *out) {
  ox_station from;
  double elevation_ft = 0.0, ground_nm = p->nm;
  char why[OX_REMARK_BYTES];
  if (station_of(s, p->from, &from, &elevation_ft) == OX_ERROR) return OX_ERROR;
  if ((p->dme && ox_slant_to_ground_nm(p->nm, elevation_ft, p->altitude_ft, &ground_nm, why,
                                       sizeof why) == OX_ERROR) ||
      ox_radial_place(from, p->radial_deg, ground_nm, out, why, sizeof why) == OX_ERROR)
    return ox_remark(OX_ERROR, s->remark, s->bytes, "%s: %s", p->name, why);
  return OX_OK;
}

static ox_status crossing_of(search *s, const ox_point *p, ox_crossing *out) {
  ox_station a, b;
  double unused_ft;
  char why[OX_REMARK_BYTES];
  if (station_of(s, p->from, &a, &unused_ft) == OX_ERROR ||
      station_of(s, p->and_from, &b, &unused_ft) == OX_ERROR)
    return OX_ERROR;
  ox_status status =
      ox_radials_cross(a, p->radial_deg, b, p->and_radial_deg, out, why, sizeof why);
  if (status == OX_ERROR)
    return ox_remark(OX_ERROR, s->remark, s->bytes, "%s: %s", p->name, why);
  if (status == OX_ADVISORY && !s->advised) {
    s->advised = true;
    ox_remark(OX_ADVISORY, s->remark, s->bytes, "%s: %s", p->name, why);
  }
  return OX_OK;
}

static ox_status on_crossing(search *s, const ox_point *p, ox_latlon *out) {
  ox_crossing crossing;
  if (crossing_of(s, p, &crossing) == OX_ERROR) return OX_ERROR;
  *out = crossing.at;
  return OX_OK;
}

static ox_status at_itself(search *s, const ox_point *p, ox_latlon *out) {
  if (!ox_latlon_valid(p->at))
    return ox_remark(OX_ERROR, s->remark, s->bytes,
                     _("%s: the latitude must be -90 to 90 degrees and the longitude -180 to 180."),
                     p->name);
  *out = p->at;
  return OX_OK;
}

static ox_status compute(search *s, const ox_point *p, ox_latlon *out) {
  return p->kind == OX_POINT_RADIAL     ? on_radial(s, p, out)
         : p->kind == OX_POINT_CROSSING ? on_crossing(s, p, out)
                                        : at_itself(s, p, out);
}

static ox_status place_of(search *s, int index) {
  const ox_point *p = &s->points->points[index];
  if (s->progress[index] == FOUND) return OX_OK;
  if (s->progress[index] == ASKING)
    return ox_remark(OX_ERROR, s->remark, s->bytes, _("%s is counted from itself."), p->name);
  s->progress[index] = ASKING;
  ox_status status = compute(s, p, &s->at[index]);
  s->progress[index] = FOUND;
  return status;
}

static ox_status place(const ox_points *points, int index, ox_latlon *out, char *remark,
                       size_t bytes) {
  search s = {.points = points, .remark = remark, .bytes = bytes};
  if (place_of(&s, index) == OX_ERROR) return OX_ERROR;
  *out = s.at[index];
  return s.advised ? OX_ADVISORY : ox_no_remark(remark, bytes);
}

ox_status ox_points_place(const ox_points *points, const char *name, ox_latlon *out, char *remark,
                          size_t remark_bytes) {
  int i = index_of(points, name);
  if (i < 0) return refuse_unknown(name, remark, remark_bytes);
  return place(points, i, out, remark, remark_bytes);
}

ox_status ox_point_place(const ox_points *points, const ox_point *point, ox_latlon *out,
                         char *remark, size_t remark_bytes) {
  search s = {.points = points, .remark = remark, .bytes = remark_bytes};
  ox_latlon at;
  if (compute(&s, point, &at) == OX_ERROR) return OX_ERROR;
  *out = at;
  return s.advised ? OX_ADVISORY : ox_no_remark(remark, remark_bytes);
}

ox_status ox_point_crossing(const ox_points *points, const ox_point *point, ox_crossing *out,
                            char *remark, size_t remark_bytes) {
  search s = {.points = points, .remark = remark, .bytes = remark_bytes};
  ox_crossing crossing;
  if (point->kind != OX_POINT_CROSSING)
    return ox_remark(OX_ERROR, remark, remark_bytes, _("That point is not given by two radials."));
  if (crossing_of(&s, point, &crossing) == OX_ERROR) return OX_ERROR;
  *out = crossing;
  return s.advised ? OX_ADVISORY : ox_no_remark(remark, remark_bytes);
}

ox_status ox_points_check(const ox_points *points, const ox_route *route, char *remark,
                          size_t remark_bytes) {
  ox_latlon unused;
  for (size_t i = 0; i < points->count; i++)
    if (place(points, (int)i, &unused, remark, remark_bytes) == OX_ERROR) return OX_ERROR;
  for (size_t i = 0; i < route->count; i++)
    if (index_of(points, route->names[i]) < 0)
      return refuse_unknown(route->names[i], remark, remark_bytes);
  if (route->missed_approach < -1 || route->missed_approach >= (int)route->count)
    return ox_remark(OX_ERROR, remark, remark_bytes,
                     _("The missed approach point is no point of the route."));
  return ox_no_remark(remark, remark_bytes);
}

/* --- changing the list --- */

static ox_status refuse_name(const ox_points *points, const char *name, char *remark,
                             size_t bytes) {
  size_t length = strlen(name), blanks = strspn(name, " ");
  if (length == blanks)
    return ox_remark(OX_ERROR, remark, bytes, _("A point needs a name."));
  if (length >= OX_POINT_NAME_BYTES)
    return ox_remark(OX_ERROR, remark, bytes, _("A point's name has at most %d bytes."),
                     OX_POINT_NAME_BYTES - 1);
  for (size_t i = 0; i < length; i++)
    if ((unsigned char)name[i] < 0x20 || name[i] == 0x7f)
      return ox_remark(OX_ERROR, remark, bytes, _("A point's name has no control characters."));
  if (index_of(points, name) >= 0)
    return ox_remark(OX_ERROR, remark, bytes, _("There is a point named %s already."), name);
  return OX_OK;
}

ox_status ox_points_add(ox_points *points, const ox_point *point, char *remark,
                        size_t remark_bytes) {
  if (points->count >= OX_POINTS_MAX)
    return ox_remark(OX_ERROR, remark, remark_bytes, _("A lesson has at most %d points."),
                     OX_POINTS_MAX);
  if (refuse_name(points, point->name, remark, remark_bytes) != OX_OK) return OX_ERROR;
  points->points[points->count++] = *point;
  ox_latlon unused;
  ox_status status = ox_points_place(points, point->name, &unused, remark, remark_bytes);
  if (status == OX_ERROR) points->count--;
  return status;
}

ox_status ox_points_move(ox_points *points, const char *name, ox_latlon at, char *remark,
                         size_t remark_bytes) {
  int i = index_of(points, name);
  if (i < 0) return refuse_unknown(name, remark, remark_bytes);
  ox_point before = points->points[i];
  points->points[i].kind = OX_POINT_AT;
  points->points[i].at = at;
  for (size_t k = 0; k < points->count; k++) {
    ox_latlon unused;
    if (place(points, (int)k, &unused, remark, remark_bytes) != OX_ERROR) continue;
    points->points[i] = before;
    return OX_ERROR;
  }
  return ox_no_remark(remark, remark_bytes);
}

static void replace(char name[OX_POINT_NAME_BYTES], const char *old, const char *new_name) {
  if (strcmp(name, old) == 0) strcpy(name, new_name);
}

ox_status ox_points_rename(ox_points *points, ox_route *route, const char *name,
                           const char *new_name, char *remark, size_t remark_bytes) {
  char old[OX_POINT_NAME_BYTES];
  int i = index_of(points, name);
  if (i < 0) return refuse_unknown(name, remark, remark_bytes);
  if (strcmp(name, new_name) == 0) return ox_no_remark(remark, remark_bytes);
  if (refuse_name(points, new_name, remark, remark_bytes) != OX_OK) return OX_ERROR;
  /* `name` may be the very text that is about to be replaced. */
  strcpy(old, points->points[i].name);
  points->points[i].unnamed = false;
  for (size_t k = 0; k < points->count; k++) {
    replace(points->points[k].name, old, new_name);
    replace(points->points[k].from, old, new_name);
    replace(points->points[k].and_from, old, new_name);
  }
  for (size_t k = 0; route && k < route->count; k++)
    replace(route->names[k], old, new_name);
  return ox_no_remark(remark, remark_bytes);
}

static bool counts_from(const ox_point *p, const char *name) {
  if (p->kind == OX_POINT_AT) return false;
  if (strcmp(p->from, name) == 0) return true;
  return p->kind == OX_POINT_CROSSING && strcmp(p->and_from, name) == 0;
}

/* Appends a name to a list "A, B"; a list that is full stays as it is. */
static void append(char *list, size_t bytes, const char *name) {
  size_t length = strlen(list), more = strlen(name) + (length ? 2 : 0);
  if (length + more >= bytes) return;
  if (length) strcat(list, ", ");
  strcat(list, name);
}

ox_status ox_points_remove(ox_points *points, const ox_route *route, const char *name,
                           const char *also_used_by, char *remark, size_t remark_bytes) {
  char users[OX_REMARK_BYTES - OX_POINT_NAME_BYTES - 40] = "";
  int i = index_of(points, name);
  if (i < 0) return refuse_unknown(name, remark, remark_bytes);
  for (size_t k = 0; k < points->count; k++)
    if (counts_from(&points->points[k], name)) append(users, sizeof users, points->points[k].name);
  for (size_t k = 0; route && k < route->count; k++)
    if (strcmp(route->names[k], name) == 0) {
      append(users, sizeof users, _("the route"));
      break;
    }
  if (also_used_by && also_used_by[0]) append(users, sizeof users, also_used_by);
  if (users[0])
    return ox_remark(OX_ERROR, remark, remark_bytes, _("%s is used by %s."), name, users);
  points->count--;
  memmove(&points->points[i], &points->points[i + 1],
          (points->count - (size_t)i) * sizeof points->points[0]);
  return ox_no_remark(remark, remark_bytes);
}
