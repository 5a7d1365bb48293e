/* The air view: the picture carried along with the air mass, where every leg is what the pilot
 * feels. Seen at an instant, each point of a flight is moved by the wind between then and the
 * time it is flown, so that at the aircraft's own place both views agree. */
#ifndef PAINT_AIR_H
#define PAINT_AIR_H

#include "oxbow/flight.h"

/* How far the air has gone (NM) from the flight's first instant to a time (s, clamped to the
 * flight). */
ox_vec ox_air_carry(const ox_flight *flight, double t_s);

/* Changes the legs of `seen`, a copy of the flight, into what is seen at a time: air 0 leaves them
 * as they are, 1 takes all the wind away, between is a passage. Only legs are changed. */
void ox_air_see(const ox_flight *flight, double t_s, double air, ox_flight *seen);

/* The stretch of flight that belongs together in the air view: the arrival, the entry, or a
 * circuit. */
typedef struct {
  double from_s, to_s;
  int circuit; /* 0: the entry; -1: the arrival */
} ox_stretch;
ox_stretch ox_air_stretch(const ox_flight *flight, double t_s);
bool ox_stretch_has(const ox_stretch *stretch, const ox_leg *leg);

/* How far (NM) the middle of the picture is carried from its place over the ground: with the air
 * throughout a stretch, so that the fix is in its place half-way; from one stretch to the next it
 * glides. On the arrival the fix stands still where the entry will find it, so that what is flown
 * next comes to its place without a glide. */
ox_vec ox_air_camera(const ox_flight *flight, double t_s);

#endif
