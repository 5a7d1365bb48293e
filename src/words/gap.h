/* How far two flights of one case are apart. Private to the words. */
#ifndef OX_WORDS_GAP_H
#define OX_WORDS_GAP_H

#include "oxbow/flight.h"

typedef struct {
  double t_s, apart_nm;
  double bearing_true_deg; /* from the right track to the other one */
} words_gap;

/* The first time over the fix again; -1 where it is not regained. */
double words_back_s(const ox_flight *f);
/* The widest gap after the first crossing, until one of them is back over the fix: after that they
 * are on different circuits. */
words_gap words_widest_gap(const ox_flight *right, const ox_flight *wrong);

#endif
