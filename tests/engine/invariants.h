/* What must be true of every flight, as checks that record instead of failing: one sweep over many
 * random flights feeds all the tests, and each test asks for its own property. */
#ifndef OX_TESTS_INVARIANTS_H
#define OX_TESTS_INVARIANTS_H

#include "ox_test.h"
#include "oxbow/flight.h"

typedef enum {
  OX_HOLDS_FINITE,        /* every number is finite, every count and code within its limits */
  OX_HOLDS_LEGS_MEET,     /* one leg starts where and when the one before ends */
  OX_HOLDS_LEG_ENDS,      /* ox_leg_at at both ends gives the stored ends */
  OX_HOLDS_HEADINGS,      /* heading is continuous from leg to leg and through turns */
  OX_HOLDS_AIRSPEED,      /* ground velocity minus wind has the length of the TAS */
  OX_HOLDS_QUERIES,       /* ox_flight_at and friends agree with the legs */
  OX_HOLDS_EVENT_ORDER,   /* events in time order and inside the flight */
  OX_HOLDS_TURN_EVENTS,   /* turns begin and end where legs say */
  OX_HOLDS_FIX,           /* fix events and circuit bounds are over the fix */
  OX_HOLDS_ABEAM,         /* abeam events are abeam, flying outbound */
  OX_HOLDS_ESTABLISHED,   /* on the course and on the inbound heading at an intercept event */
  OX_HOLDS_CLOCK,         /* the clock starts at the event that the technique names */
  OX_HOLDS_OUTBOUND_S,    /* measured outbound time and heading are those of the legs */
  OX_HOLDS_INBOUND_S,     /* measured inbound time is from the end of the plain turn */
  OX_HOLDS_ROLLOUT,       /* the roll-out offset is where the plain turn would end */
  OX_HOLDS_NONHOLDING,    /* the excursion is the farthest point of the circuit */
  OX_HOLDS_STEADY,        /* an exact, exact flight is the steady hold, circuit by circuit */
  OX_HOLDS_STEADY_DME,    /* the same where the outbound leg ends at a distance */
  OX_HOLDS_MIRROR,        /* left is the mirror image of right */
  OX_HOLDS_ROTATION,      /* rotating every direction rotates the flight */
  OX_HOLDS_COUNT
} ox_property;

typedef struct {
  long flights, complete, steady; /* seen; with every circuit complete; with a steady hold */
  long checked[OX_HOLDS_COUNT];
  long broken[OX_HOLDS_COUNT];
  char first[OX_HOLDS_COUNT][1000]; /* what was wrong the first time, and the case */
} ox_sweep;

/* Notes one check of a property: broken unless ok. The sentence says what was found. */
void ox_sweep_note(ox_sweep *sweep, ox_property property, bool ok, const ox_case *c,
                   const char *format, ...) __attribute__((format(printf, 5, 6)));

/* invariants_legs.c: the flight as a path. */
void ox_check_legs(ox_sweep *sweep, const ox_case *c, const ox_flight *flight);
/* invariants_events.c: events and what was measured in the circuits. */
void ox_check_events(ox_sweep *sweep, const ox_case *c, const ox_flight *flight);
void ox_check_circuits(ox_sweep *sweep, const ox_case *c, const ox_flight *flight);

/* True when a is within tolerance of b as bearings (degrees). */
bool ox_same_bearing(double a, double b, double tolerance_deg);

#endif
