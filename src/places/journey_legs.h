/* Straight tracks and turns between points of the plane, in one steady wind. */
#ifndef OX_PLACES_JOURNEY_LEGS_H
#define OX_PLACES_JOURNEY_LEGS_H

#include <stdbool.h>

#include "oxbow/journey.h"

typedef struct {
  ox_leg *legs; /* room for OX_JOURNEY_LEGS_MAX in all */
  size_t count, room;
  double t_s;
  ox_vec p_nm;
  double heading_deg;
  double tas_kt, rate_deg_s, altitude_ft;
  ox_vec wind_kt;
} ox_way;

/* To a point of the plane, on the track that leads there. False when no heading holds it or no way
 * is made; nothing is added then. A point that is nearer than a hand's breadth adds nothing. */
bool ox_way_straight(ox_way *w, ox_vec to_nm);
/* Turns from where the aircraft is until its track leads to a point, the shorter way. False when no
 * such turn exists. */
bool ox_way_turn_to(ox_way *w, ox_vec to_nm);
/* Along the points, from where the aircraft is to the last, heading set already on the first leg.
 * False when a leg cannot be flown. */
bool ox_way_along(ox_way *w, const ox_vec *points_nm, size_t count);

#endif
