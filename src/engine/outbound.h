/* Choosing the outbound heading and time by the technique. Private to the engine. */
#ifndef OX_ENGINE_OUTBOUND_H
#define OX_ENGINE_OUTBOUND_H

#include "pilot.h"

typedef struct {
  double heading_deg;  /* in the frame */
  double turn_deg;     /* signed, from the heading over the fix */
  double straight_s;   /* wings level to the start of the inbound turn, reaction included */
  double clock_s;      /* clock start, seconds after wings level (negative: still in the turn) */
  double abeam_s;      /* abeam, seconds after wings level */
  bool abeam_found;
  double timed_s;      /* clock start to the end of the timing (reaction not included) */
} ox_outbound_plan;

/* previous_timed_s and previous_inbound_s: of the circuit before, 0 for the first. Advises where
 * the technique meets one of its limits. */
ox_outbound_plan outbound_choose(ox_pilot *k, double previous_timed_s, double previous_inbound_s);

#endif
