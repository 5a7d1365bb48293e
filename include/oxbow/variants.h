/* The same case with one thing changed: what a class compares it with. */
#ifndef OXBOW_VARIANTS_H
#define OXBOW_VARIANTS_H

#include <stdbool.h>

#include "oxbow/flight.h"

typedef enum {
  OX_VARIANT_CALM,           /* no wind at any height or time */
  OX_VARIANT_WIND_DOUBLED,   /* every wind twice as strong, at most 250 kt */
  OX_VARIANT_WIND_TURNED,    /* every wind from the other side */
  OX_VARIANT_OTHER_TURNS,    /* left for right */
  OX_VARIANT_DRIFT_SINGLE,
  OX_VARIANT_DRIFT_TRIPLE,
  OX_VARIANT_BOUNDARY_LEFT,  /* crossing the fix 2 degrees left of the nearest sector boundary */
  OX_VARIANT_BOUNDARY_RIGHT, /* and 2 degrees right of it */
  OX_VARIANT_COUNT
} ox_variant;

#define OX_VARIANT_BOUNDARY_DEG 2.0

/* For people: "Calm air". Static. */
const char *ox_variant_name(ox_variant variant);
/* For a command line: "calm". Static. */
const char *ox_variant_key(ox_variant variant);

/* Makes the variant of a case; flight is the case's own. False, and *out untouched, where it would
 * be the case itself (calm air in calm air), where the sectors go by the track and so no heading is
 * two degrees from a boundary, or where the values would leave their ranges. */
bool ox_variant_make(ox_variant variant, const ox_case *c, const ox_flight *flight, ox_case *out);

#endif
