/* A leg: one closed-form piece of flight, carried by a steady wind. A plain value.
 *
 * Straight: constant heading. Turn: heading changes at a constant rate. Position, heading and
 * ground speed at any instant follow from the start in closed form; there is no stepping. */
#ifndef OXBOW_LEG_H
#define OXBOW_LEG_H

#include "oxbow/angle.h"

/* No leg of a hold lasts longer (s): beyond it the fix counts as out of reach. */
#define OX_LEG_LONGEST_S 7200.0

typedef enum { OX_SHAPE_STRAIGHT, OX_SHAPE_TURN } ox_shape;

typedef enum {
  OX_LEG_ARRIVAL,         /* straight to the fix */
  OX_LEG_REACTION,        /* straight on before a turn (technique roll_s) */
  OX_LEG_ENTRY_TURN,      /* at the fix onto the entry heading */
  OX_LEG_ENTRY_OUTBOUND,  /* the timed parallel or teardrop leg */
  OX_LEG_ENTRY_INBOUND_TURN,
  OX_LEG_OUTBOUND_TURN,
  OX_LEG_OUTBOUND,
  OX_LEG_INBOUND_TURN,
  OX_LEG_INTERCEPT,       /* straight towards the inbound course */
  OX_LEG_INTERCEPT_TURN,  /* the turn onto it */
  OX_LEG_INBOUND,         /* on the inbound course to the fix */
  OX_LEG_DIRECT_TURN,     /* turn until the track leads to the fix */
  OX_LEG_DIRECT_TO_FIX,   /* straight to the fix, off the course */
  OX_LEG_ADRIFT,          /* a last stretch where the fix cannot be regained */
  OX_LEG_ROUTE,           /* on a route to the arrival, or on from the hold (journey.h) */
  OX_LEG_KIND_COUNT
} ox_leg_kind;

/* Which part of the flight a leg belongs to, for drawing and explaining. */
typedef enum { OX_PART_ARRIVAL, OX_PART_ENTRY, OX_PART_CIRCUIT, OX_PART_ROUTE } ox_part;

typedef struct {
  ox_leg_kind kind;
  ox_part part;
  ox_shape shape;
  int circuit; /* 0 for arrival and entry (but a direct entry's first turn is circuit 1) */
  double t0_s, t1_s;
  ox_vec p0_nm, p1_nm;
  double heading0_true_deg, heading1_true_deg; /* [0, 360) */
  double rate_deg_s;  /* 0 when straight; right positive */
  double tas_kt;
  double altitude_ft; /* that the TAS and the wind are taken at */
  ox_vec wind_kt;     /* velocity, true */
} ox_leg;

typedef struct {
  ox_vec p_nm;
  double heading_true_deg; /* [0, 360) */
  double track_true_deg;   /* [0, 360) */
  double gs_kt;
  double drift_deg;        /* track minus heading, right positive */
} ox_state;

/* State at a time (s) on the flight's clock; the time is clamped to the leg. */
ox_state ox_leg_at(const ox_leg *leg, double t_s);
/* Position only; cheaper. */
ox_vec ox_leg_position(const ox_leg *leg, double t_s);
/* A stable identifier: "arrival", "entry turn", "outbound turn", … never NULL. */
const char *ox_leg_name(ox_leg_kind kind);

#endif
