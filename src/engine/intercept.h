/* Getting onto the inbound course from a turn, and getting back to the fix. Private. */
#ifndef OX_ENGINE_INTERCEPT_H
#define OX_ENGINE_INTERCEPT_H

#include "pilot.h"

/* A turn, a straight stretch and a second turn that end on the inbound course, on the inbound
 * heading: found exactly, roll-out lead included. */
typedef struct {
  bool found;
  double turn1_deg;   /* signed, right positive in the frame */
  double straight_s;
  double turn2_deg;
  double offset_nm;   /* x where a plain turn to the inbound heading would roll out */
  double end_y_nm;    /* along the course; beyond the fix when positive */
  double total_s;
  double plain_s;     /* of a plain turn to the inbound heading: where inbound timing starts */
} ox_intercept;

/* From a place, turning first in a sense (+1 right, -1 left in the frame). Needs
 * k->holds_course; found is false where the geometry gives no way. */
ox_intercept intercept_from(const ox_pilot *k, ox_place from, int sense);

/* Seconds straight on, after the first turn, until the turn onto the course begins by the
 * technique's lead; *exact when that is where the plan has it. k is where the stretch begins. */
double intercept_straight_s(const ox_pilot *k, const ox_intercept *i, bool *exact);

/* The same from a heading that is near the inbound one, not in a turn to it: turns the short way
 * onto a heading that closes with the course, straight, and onto the course. */
ox_intercept intercept_near(const ox_pilot *k, ox_place from);

/* A turn until the track over the ground leads to the fix, then straight to it. */
typedef struct {
  bool found;
  double turn_deg; /* signed */
  double straight_s;
} ox_direct;

/* Looks through two full circles in a sense. */
ox_direct direct_from(const ox_pilot *k, ox_place from, int sense);

#endif
