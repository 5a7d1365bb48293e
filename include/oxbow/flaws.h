/* Errors and deliberate mistakes: what a pilot gets wrong, laid over a technique that is right.
 * Plain values; nothing allocates. */
#ifndef OXBOW_FLAWS_H
#define OXBOW_FLAWS_H

#include <stdint.h>

#include "oxbow/flight.h"

/* Mistakes to show (holding-standards 15: instructors' and examiners' lists of common errors). */
typedef enum {
  OX_MISTAKE_DRIFT_WRONG_SIDE,    /* the outbound correction is put on the wrong side */
  OX_MISTAKE_CLOCK_AT_FIX,        /* outbound timing starts over the fix, not abeam or level */
  OX_MISTAKE_TEARDROP_WRONG_SIDE, /* 30 degrees added where it should be taken off */
  OX_MISTAKE_PARALLEL_WRONG_TURN, /* the turn back is made away from the holding side */
  OX_MISTAKE_RADIAL_AS_COURSE,    /* the radial is flown as the inbound course */
  OX_MISTAKE_LATE_SPEED,          /* the speed is reduced only after the fix */
  OX_MISTAKE_COUNT
} ox_mistake;

typedef struct {
  double outbound_heading_deg; /* added to every outbound heading, right positive */
  double outbound_s;           /* added to every outbound time */
  double entry_s;              /* added to the entry time */
  unsigned mistakes;           /* bits 1 << ox_mistake */
} ox_flaws;

/* ox_flight_solve with flaws; flaws may be NULL. */
ox_status ox_flight_solve_flawed(const ox_case *c, const ox_flaws *flaws, ox_flight *out);

/* A short name ("drift on the wrong side"), what it causes in one sentence, and whether the case
 * shows it at all (a wrong-side teardrop needs a teardrop). Static texts. */
const char *ox_mistake_name(ox_mistake mistake);
const char *ox_mistake_effect(ox_mistake mistake);
bool ox_mistake_shows(const ox_case *c, const ox_flight *flight, ox_mistake mistake);

/* How far a competent pilot and the forecast are off: half-widths of uniform distributions, but
 * reaction and roll from 0 up. Doc 8168 Vol II, tolerances of the holding template (holding-
 * standards 7.2) for the pilot; the wind's are our choice. */
typedef struct {
  double outbound_s;           /* 10 */
  double reaction_s;           /* 0 to 6 */
  double roll_s;               /* 0 to 5 */
  double heading_deg;          /* 5 */
  double bank_deg;             /* 3: our choice */
  double wind_kt;              /* 5: our choice */
  double wind_from_deg;        /* 15: our choice */
} ox_tolerances;
ox_tolerances ox_tolerances_standard(void);

/* The index-th flight of a series: the same seed and index always give the same flaws and the
 * same case, whatever is computed beside it. */
void ox_spread_sample(const ox_case *c, const ox_tolerances *t, uint64_t seed, uint64_t index,
                      ox_case *sampled, ox_flaws *flaws);

#endif
