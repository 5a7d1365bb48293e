/* The key moments of a flight: the instants at which a pilot does something, each with what
 * happens, the figures of that instant and what is to be done. Plain values made from a case and
 * its flight; nothing is allocated. */
#ifndef OXBOW_MOMENTS_H
#define OXBOW_MOMENTS_H

#include <stddef.h>

#include "oxbow/case.h"
#include "oxbow/flight.h"

/* An entry has at most eight, a circuit nine. */
#define OX_MOMENTS_MAX 24

typedef struct {
  double t_s;       /* on the flight's clock */
  int circuit;      /* 0 in the entry */
  char what[40];    /* "Abeam the fix" */
  char figures[48]; /* "1:02, heading 055 M": that clock; M where magnetic and true differ */
  char act[96];     /* "Start the clock: 1:06 to the turn" */
} ox_moment;

typedef struct {
  size_t count;
  ox_moment moment[OX_MOMENTS_MAX];
} ox_moments;

/* The moments of a stretch of the flight, in time order, from the crossing of the fix that begins
 * circuit `first` (0: the first crossing, with the entry) to the one that ends circuit `last`.
 * Empty where the flight has no such circuit; what goes beyond OX_MOMENTS_MAX is left out. */
ox_moments ox_moments_make(const ox_case *c, const ox_flight *flight, int first, int last);

/* "over the fix", "turn begins", "wings level", "abeam the fix", "clock starts", "established
 * inbound". Static. */
const char *ox_moments_event(ox_event_kind kind);

#endif
