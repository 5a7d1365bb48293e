/* The flight as places: a point at every step and at every end of a leg, in stretches. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "oxbow/units.h"
#include "trackout_private.h"

#define METRES_A_FOOT 0.3048 /* exact: international foot */

static const double SAME_S = 1e-6; /* a step this near the end of a leg is that end's point */

static bool add_point(track *t, const ox_trackout_case *c, const ox_leg *leg, double t_s) {
  if (t->point_count == t->point_room) {
    size_t room = t->point_room ? 2 * t->point_room : 256;
    track_point *more = realloc(t->points, room * sizeof *more);
    if (!more) return false;
    t->points = more;
    t->point_room = room;
  }
  ox_latlon at;
  /* A point a thousand miles from the fix, blown adrift, has no place in the plane: left out. */
  if (ox_plane_to_place(c->fix, ox_leg_position(leg, t_s), &at) == OX_ERROR) return true;
  t->points[t->point_count++] =
      (track_point){t_s, at.lat_deg, at.lon_deg,
                    METRES_A_FOOT * ox_flight_altitude_ft(c->c, c->flight, t_s)};
  return true;
}

static const char *part_name(ox_part part) {
  switch (part) {
  case OX_PART_ARRIVAL:
    return "arrival";
  case OX_PART_ENTRY:
    return "entry";
  default:
    return "circuit";
  }
}

/* Begins a stretch when the leg belongs to another part or circuit than the last one. */
static bool enter_stretch(track *t, const ox_leg *leg) {
  const char *part = part_name(leg->part);
  track_stretch *last = t->stretch_count ? &t->stretches[t->stretch_count - 1] : NULL;
  if (last && last->part == part && last->circuit == leg->circuit) return true;
  if (t->stretch_count == t->stretch_room) {
    size_t room = t->stretch_room ? 2 * t->stretch_room : 16;
    track_stretch *more = realloc(t->stretches, room * sizeof *more);
    if (!more) return false;
    t->stretches = more;
    t->stretch_room = room;
  }
  track_stretch *s = &t->stretches[t->stretch_count++];
  *s = (track_stretch){.part = part, .circuit = leg->circuit};
  if (leg->part == OX_PART_CIRCUIT)
    snprintf(s->name, sizeof s->name, "circuit %d", leg->circuit);
  else
    snprintf(s->name, sizeof s->name, "%s", part);
  s->first = t->point_count ? t->point_count - 1 : 0;
  return true;
}

static void close_stretch(track *t) {
  track_stretch *s = &t->stretches[t->stretch_count - 1];
  s->count = t->point_count - s->first;
}

bool track_make(const ox_trackout_case *c, double step_s, track *out) {
  *out = (track){0};
  const ox_flight *f = c->flight;
  double begin_s = ox_flight_begin_s(f);
  long k = 1;
  for (size_t i = 0; i < f->leg_count; i++) {
    const ox_leg *leg = &f->legs[i];
    if (!enter_stretch(out, leg)) return false;
    if (i == 0 && !add_point(out, c, leg, leg->t0_s)) return false;
    double t_s = begin_s + (double)k * step_s;
    for (; t_s < leg->t1_s - SAME_S; t_s = begin_s + (double)++k * step_s)
      if (!add_point(out, c, leg, t_s)) return false;
    if (t_s < leg->t1_s + SAME_S) k++;
    /* A leg of no length is no second point in the same place. */
    if (leg->t1_s > leg->t0_s && !add_point(out, c, leg, leg->t1_s)) return false;
    close_stretch(out);
  }
  return true;
}

void track_clear(track *t) {
  free(t->points);
  free(t->stretches);
  *t = (track){0};
}
