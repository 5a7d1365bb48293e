/* Many flights of one case with the errors of a competent pilot and a fair forecast: where they
 * go and how their numbers scatter. The same seed gives the same result on any number of threads.
 *
 * Ownership: a spread made by ox_spread_make is freed with ox_spread_free. */
#ifndef OXBOW_SPREAD_H
#define OXBOW_SPREAD_H

#include <stdint.h>

#include "oxbow/flaws.h"

#define OX_SPREAD_CELLS 192 /* a side of the square grid */
#define OX_SPREAD_RUNS_MAX 10000000u

/* 5th, 50th and 95th percentile. */
typedef struct {
  double low, middle, high;
} ox_scatter;

typedef struct {
  uint64_t seed;
  size_t runs;
  size_t not_regained;       /* runs whose fix was lost */
  ox_scatter inbound_s;      /* of the last circuit */
  ox_scatter rollout_nm;     /* roll-out offset of the last circuit, positive on the holding side */
  ox_scatter nonholding_nm;  /* farthest over the non-holding side in any circuit */
  ox_scatter farthest_nm;    /* from the fix, after its first passage */
  double cell_nm;
  ox_vec origin_nm;          /* south-west corner of cell 0 */
  uint32_t *cells;           /* OX_SPREAD_CELLS squared, rows from the south: in how many runs the
                                aircraft was in the cell after the first fix passage */
} ox_spread;

/* runs 1..OX_SPREAD_RUNS_MAX; threads 1..64, 0 for one a processor. OX_ERROR when the case has a
 * fault, a number is out of range or memory is out (out untouched). */
ox_status ox_spread_make(const ox_case *c, const ox_tolerances *t, uint64_t seed, size_t runs,
                         int threads, ox_spread *out);
void ox_spread_free(ox_spread *spread); /* empties it; one that is all zero is allowed */

#endif
