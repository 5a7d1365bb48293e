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
  bool direct;         /* back to the fix by its track, not by the inbound course */
  double timed_s;      /* clock start to the end of the timing (reaction not included) */
} ox_outbound_plan;

/* What the circuits before left behind, and what this one must do. */
typedef struct {
  double previous_timed_s;   /* 0 for the first */
  double previous_inbound_s;
  double total_s;            /* > 0: the whole circuit is to last so long, whatever the technique
                                says of its outbound time */
} ox_circuit_order;

/* Advises where the technique meets one of its limits. */
ox_outbound_plan outbound_choose(ox_pilot *k, const ox_circuit_order *order);

/* The least time (s) a circuit from here takes: rolling level outbound and turning on at once. */
double outbound_least_circuit_s(ox_pilot *k);

/* The time (s) the next circuit takes as the technique flies it; HUGE_VAL where the fix is not
 * regained. Leaves no advice. */
double outbound_circuit_s(ox_pilot *k, const ox_circuit_order *order);

/* The shortest outbound time that one correction may ask for: P-871 p. 79. */
#define OX_ADJUST_FLOOR_S 30.0

#endif
