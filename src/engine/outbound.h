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
  /* Where the limiting radial is followed: after straight_s a turn onto it, then so long. */
  bool follows;
  double follow_turn_deg, follow_heading_deg, follow_s;
} ox_outbound_plan;

/* What the circuits before left behind, and what this one must do. */
typedef struct {
  double previous_timed_s;   /* 0 for the first */
  double previous_inbound_s;
  bool fixed;                /* the outbound time is ordered, whatever the technique says: */
  double straight_s;
  bool direct;               /* and the way back is straight to the fix, not by the course */
} ox_circuit_order;

/* Advises where the technique meets one of its limits. */
ox_outbound_plan outbound_choose(ox_pilot *k, const ox_circuit_order *order);

/* Where the inbound turn begins when the outbound leg lasts straight_s, on the heading that the
 * technique gives for it, and the time until then. Nothing is flown. */
ox_place outbound_try(ox_pilot *k, double straight_s, double *elapsed_s);

/* The shortest outbound time that one correction may ask for: P-871 p. 79. */
#define OX_ADJUST_FLOOR_S 30.0

#endif
