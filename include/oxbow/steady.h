/* The steady hold: the circuit that repeats itself in a steady wind, in closed form.
 *
 * Both turns together make 360 degrees, so their displacement through the air cancels and only
 * their drift is left. With V the TAS, w the wind, tau the time of both turns and L the inbound
 * ground leg along the course: A = L + w (tau + reactions); the outbound air vector must be
 * -(A + w t), so (V2 - w2) t2 - 2 (A.w) t - A.A = 0 gives the outbound time t (derivation in
 * DEVELOPERS.md). Nothing allocates. */
#ifndef OXBOW_STEADY_H
#define OXBOW_STEADY_H

#include <stdbool.h>

#include "oxbow/angle.h"

typedef enum {
  OX_STEADY_EXISTS,
  OX_STEADY_CROSSWIND, /* wind across the course is not less than the TAS */
  OX_STEADY_HEADWIND,  /* headwind inbound is not less than the TAS: the fix is never reached */
  OX_STEADY_TAILWIND,  /* the wind is not less than the TAS, or so near it that flying back outbound
                          would take more than two hours */
  OX_STEADY_TURN_DRIFT,/* the turns alone drift farther outbound than the inbound leg is long */
  OX_STEADY_CROSS_DRIFT, /* the drift across cannot be regained in the outbound time given */
  OX_STEADY_STATION, /* no repeated outbound leg ends at the reading or radial asked for */
} ox_steady_why;

typedef enum {
  OX_GOAL_INBOUND_S,    /* the inbound leg lasts goal seconds */
  OX_GOAL_INBOUND_NM,   /* the inbound leg is goal NM long */
  OX_GOAL_OUTBOUND_AIR, /* outbound made good along the course equals goal seconds at TAS */
  OX_GOAL_OUTBOUND_NM,  /* the outbound leg ends goal NM beyond the fix, along the course */
  OX_GOAL_OUTBOUND_DME, /* the outbound leg ends at a DME reading of goal NM (slant) */
} ox_goal;

/* A DME station as seen from the fix. Slant range: reading2 = ground2 + height2. */
typedef struct {
  ox_vec at_nm;     /* from the fix, in the north of the hold */
  double height_nm; /* of the aircraft above the station */
  double end_ground_nm; /* ground distance at the reading that ends the outbound leg; 0: the
                           reading is less than the height and is never seen */
  int outward;      /* +1: the reading grows outbound (inbound towards the station), -1: shrinks */
  bool limited;     /* there is a limiting radial: */
  ox_vec limit;     /* unit vector from the station along it */
  ox_vec inside_nm; /* a place on its inner side: the fix, or one on the outbound course */
} ox_dme;

typedef struct {
  ox_steady_why why;
  double inbound_heading_deg; /* in the north of inbound_deg, [0, 360) */
  double inbound_wca_deg;     /* right positive */
  double inbound_gs_kt;
  double inbound_s;
  double outbound_heading_deg;
  double outbound_wca_deg;    /* from the reciprocal of the inbound course, right positive */
  double outbound_s;          /* wings level to the start of the inbound turn (with reaction) */
  double circuit_s;
  double component_kt; /* where why is not EXISTS: the wind component that is too strong, >= 0 */
  double limit_kt;     /* and the limit it passed; 0 where that has no closed form */
} ox_steady;

/* inbound_deg and the wind velocity (kt) in one north; tas_kt > 0, rate_deg_s > 0,
 * reaction_s >= 0 flown straight before each turn; goal as above (> 0). Always fills *out; the
 * fields after `why` that exist only with a solution are 0 where there is none. */
void ox_steady_solve(double inbound_deg, double tas_kt, double rate_deg_s, double reaction_s,
                     ox_vec wind_kt, ox_goal goal, double goal_value, ox_steady *out);
/* The same with the station that OX_GOAL_OUTBOUND_DME needs; dme may be NULL for other goals. */
void ox_steady_solve_dme(double inbound_deg, int sense, double tas_kt, double rate_deg_s,
                         double reaction_s, ox_vec wind_kt, ox_goal goal, double goal_value,
                         const ox_dme *dme, ox_steady *out);

/* Seconds until the reading that ends the outbound leg is seen, flying from a place (NM from the
 * fix) at a ground velocity (NM/s); 0 where it is passed already, -1 where it is never seen. */
double ox_dme_reached_s(const ox_dme *dme, ox_vec from_nm, ox_vec velocity_nm_s);
/* Seconds until the limiting radial is crossed outwards; 0 where the aircraft is beyond it and goes
 * on so, -1 where it is never crossed or there is none. */
double ox_limit_reached_s(const ox_dme *dme, ox_vec from_nm, ox_vec velocity_nm_s);
/* The first of both, -1 where neither comes; *at_radial (may be NULL) says whether it is the
 * radial. Doc 8168 Vol I Part I Section 6: limiting distance or radial, whichever is first. */
double ox_station_reached_s(const ox_dme *dme, ox_vec from_nm, ox_vec velocity_nm_s,
                            bool *at_radial);
/* NM beyond the limiting radial, square to it; negative inside. */
double ox_limit_beyond_nm(const ox_dme *dme, ox_vec at_nm);

#endif
