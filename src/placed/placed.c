/* Marks and paths of a lesson's places. */
#include "oxbow/placed.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "oxbow/text.h"

/* Marks farther away say nothing about a hold, and in the plane they would not be true. */
static const double FARTHEST_NM = 200.0;
static const int TURN_PIECES = 12;

static bool is_marked(const ox_placed *p, const char *name) {
  for (size_t i = 0; i < p->mark_count; i++)
    if (strcmp(p->marks[i].name, name) == 0) return true;
  return false;
}

static void add_mark(ox_placed *p, const char *name, ox_vec at_nm, ox_mark_kind kind) {
  if (p->mark_count >= OX_PLACED_MARKS_MAX || hypot(at_nm.x, at_nm.y) > FARTHEST_NM ||
      is_marked(p, name))
    return;
  size_t i = p->mark_count++;
  snprintf(p->names[i], sizeof p->names[i], "%s", name);
  p->marks[i] = (ox_mark){.at_nm = at_nm, .name = p->names[i], .kind = kind};
}

/* A point by its name; the fix itself has its own symbol. */
static void mark_point(ox_placed *p, const ox_points *points, ox_latlon origin, const char *name,
                       ox_mark_kind kind) {
  ox_latlon at;
  ox_vec at_nm;
  if (!name[0] || ox_points_place(points, name, &at, NULL, 0) == OX_ERROR ||
      ox_plane_from_place(origin, at, &at_nm) == OX_ERROR)
    return;
  if (kind == OX_MARK_POINT && hypot(at_nm.x, at_nm.y) < 0.02) return;
  add_mark(p, name, at_nm, kind);
}

static void mark_stations(ox_placed *p, const ox_points *points, ox_latlon origin,
                          const ox_point *point) {
  if (!point || point->kind == OX_POINT_AT) return;
  mark_point(p, points, origin, point->from, OX_MARK_STATION);
  if (point->kind == OX_POINT_CROSSING)
    mark_point(p, points, origin, point->and_from, OX_MARK_STATION);
}

static void mark_route(ox_placed *p, const ox_points *points, ox_latlon origin,
                       const ox_route *route) {
  for (size_t i = 0; i < route->count; i++)
    mark_point(p, points, origin, route->names[i],
               (int)i == route->missed_approach ? OX_MARK_MISSED_APPROACH_POINT : OX_MARK_POINT);
}

/* Where the aircraft is when the hold is set, and where the fix would be ten seconds later. */
static void mark_ahead(ox_placed *p, const ox_fix *fix, const ox_case *c,
                       const ox_flight *flight) {
  if (fix->kind != OX_FIX_AHEAD_NM && fix->kind != OX_FIX_AHEAD_S) return;
  ox_vec along = ox_unit(flight->setup.arrival_track_true_deg);
  double back_nm = -c->arrival.distance_nm, on_nm = ox_fix_delay_nm(c);
  add_mark(p, fix->present[0] ? fix->present : _("Present position"),
           (ox_vec){along.x * back_nm, along.y * back_nm}, OX_MARK_PRESENT_POSITION);
  if (on_nm > 0.0)
    add_mark(p, _("Fix, set 10 s later"), (ox_vec){along.x * on_nm, along.y * on_nm},
             OX_MARK_POINT);
}

/* --- paths --- */

static void add_vertex(ox_placed *p, ox_vec at_nm) {
  if (p->vertex_count < OX_PLACED_VERTICES_MAX) p->vertices_nm[p->vertex_count++] = at_nm;
}

static void add_legs(ox_placed *p, const ox_leg *legs, size_t count) {
  for (size_t i = 0; i < count; i++) {
    int pieces = legs[i].shape == OX_SHAPE_TURN ? TURN_PIECES : 1;
    for (int k = 0; k < pieces; k++)
      add_vertex(p, ox_leg_position(&legs[i], legs[i].t0_s + (legs[i].t1_s - legs[i].t0_s) * k /
                                                                 pieces));
  }
  if (count > 0) add_vertex(p, legs[count - 1].p1_nm);
}

/* The vertices from one index on as a path. */
static void add_path(ox_placed *p, size_t from, size_t to, ox_path_kind kind) {
  if (to < from + 2 || p->path_count >= OX_PLACED_PATHS_MAX) return;
  p->paths[p->path_count++] =
      (ox_path){.points_nm = &p->vertices_nm[from], .count = to - from, .kind = kind};
}

/* The vertex nearest to the missed approach point, or the last where there is none. */
static size_t split_at(const ox_placed *p, size_t from) {
  size_t nearest = p->vertex_count - 1;
  if (p->journey.missed < 0) return nearest;
  ox_vec at = p->journey.points[p->journey.missed].at_nm;
  double least = HUGE_VAL;
  for (size_t i = from; i < p->vertex_count; i++) {
    ox_vec v = ox_vec_sub(p->vertices_nm[i], at);
    if (hypot(v.x, v.y) >= least) continue;
    least = hypot(v.x, v.y);
    nearest = i;
  }
  return nearest;
}

static void add_way_to_hold(ox_placed *p) {
  const ox_journey *j = &p->journey;
  size_t from = p->vertex_count;
  int last = j->hold >= 0 ? j->hold : (int)j->point_count - 1;
  if (j->before > 0) {
    add_legs(p, j->legs, j->before);
    add_vertex(p, (ox_vec){0, 0});
  } else {
    for (int i = 0; i <= last; i++)
      add_vertex(p, j->points[i].at_nm);
  }
  if (p->vertex_count == from) return;
  size_t split = split_at(p, from);
  add_path(p, from, split + 1, OX_PATH_ROUTE);
  add_path(p, split, p->vertex_count, OX_PATH_MISSED);
}

static void add_paths(ox_placed *p) {
  const ox_journey *j = &p->journey;
  if (j->point_count == 0) return;
  add_way_to_hold(p);
  size_t from = p->vertex_count;
  add_legs(p, j->legs + j->before, j->leg_count - j->before);
  add_path(p, from, p->vertex_count, OX_PATH_ROUTE);
  from = p->vertex_count;
  for (size_t i = 0; i < j->early_count; i++)
    add_vertex(p, j->early_nm[i]);
  add_path(p, from, p->vertex_count, OX_PATH_ALTERNATIVE);
}

void ox_placed_make(const ox_points *points, const ox_route *route, const ox_fix *fix,
                    const ox_case *c, const ox_flight *flight, ox_placed *out) {
  ox_latlon origin;
  memset(out, 0, sizeof *out);
  mark_ahead(out, fix, c, flight);
  if (ox_fix_place(points, fix, c, &origin, NULL, 0) == OX_ERROR ||
      ox_journey_make(points, route, fix, c, flight, &out->journey, NULL, 0) == OX_ERROR)
    return;
  /* Stations first: a point may be both, and radials are counted from it. */
  mark_stations(out, points, origin,
                fix->kind == OX_FIX_POINT ? &fix->point : ox_points_find(points, c->hold.fix));
  mark_point(out, points, origin, fix->station, OX_MARK_STATION);
  mark_point(out, points, origin, fix->present, OX_MARK_PRESENT_POSITION);
  mark_route(out, points, origin, route);
  add_paths(out);
}

void ox_placed_add_points(const ox_points *points, const ox_fix *fix, const ox_case *c,
                          ox_placed *out) {
  ox_latlon origin;
  if (ox_fix_place(points, fix, c, &origin, NULL, 0) == OX_ERROR) return;
  for (size_t i = 0; i < points->count; i++)
    mark_point(out, points, origin, points->points[i].name, OX_MARK_POINT);
}

const ox_point *ox_placed_point(const ox_points *points, const ox_mark *mark) {
  return mark->name ? ox_points_find(points, mark->name) : NULL;
}
