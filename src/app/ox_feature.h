/* The parts of the picture that the words of a clearance mean: where they lie, and which of them
 * is at a place. Pure functions of values; no widget. */
#ifndef OX_FEATURE_H
#define OX_FEATURE_H

#include "oxbow/clearance.h"
#include "oxbow/viewport.h"

typedef enum {
  OX_FEATURE_NONE,
  OX_FEATURE_FIX,
  OX_FEATURE_DIRECTION, /* from the fix to where the hold lies */
  OX_FEATURE_COURSE,    /* the line of the inbound course */
  OX_FEATURE_TURNS,     /* the turn at the fix */
  OX_FEATURE_LEG,       /* the leg whose time or length is said */
  OX_FEATURE_LIMITS,    /* altitude and speed: all of the hold */
  OX_FEATURE_TIME,      /* the fix, at a time */
  OX_FEATURE_COUNT
} ox_feature;

/* What a word of the clearance means in the picture. */
ox_feature ox_feature_of_item(ox_item_kind kind);
/* "the holding fix", "the inbound course", … Static; "" for none. */
const char *ox_feature_name(ox_feature feature);

#define OX_FEATURE_POINTS_MAX 96
/* The feature as points joined by a line (NM, true); one point is a place. Returns how many, 0
 * where the flight has none of it. */
size_t ox_feature_points(ox_feature feature, const ox_case *c, const ox_flight *flight,
                         ox_vec out[OX_FEATURE_POINTS_MAX]);
/* Whether it is a part of what is flown, which the air view shows elsewhere. */
bool ox_feature_is_flown(ox_feature feature);
/* The feature nearest to a place (device units) and within `near` of it; a point wins over a line.
 * Limits and times are nowhere to be pointed at, and in the air view nothing that is flown. */
ox_feature ox_feature_at(const ox_case *c, const ox_flight *flight, const ox_viewport *viewport,
                         bool in_air, ox_vec place, double near);

#endif
