/* Where playing stops by itself: events of chosen kinds. Pure functions of a flight. */
#ifndef OX_STOPS_H
#define OX_STOPS_H

#include <stddef.h>

#include "oxbow/flight.h"

/* Kinds are chosen as bits 1 << ox_event_kind. The instants (s) in time order, each once; out has
 * room for OX_EVENTS_MAX. Returns their number. */
size_t ox_stops_make(const ox_flight *flight, unsigned kinds, double *out);
/* "Stopped: abeam the fix, 1:02": the chosen events of that instant. out is emptied where there is
 * none. */
void ox_stops_words(char *out, size_t bytes, const ox_flight *flight, unsigned kinds, double t_s);

#endif
