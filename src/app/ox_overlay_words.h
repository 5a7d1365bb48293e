/* Two of the overlays in words; strings are freed with g_free. */
#ifndef OX_OVERLAY_WORDS_H
#define OX_OVERLAY_WORDS_H

#include "oxbow/flight.h"
#include "oxbow/spread.h"

/* The case's flight beside the exact hold. */
char *ox_overlay_words_exact(const ox_case *c, const ox_flight *flight);
/* How many flights scatter; NULL: they are being flown. */
char *ox_overlay_words_spread(const ox_spread *spread, unsigned runs);

#endif
