/* The pilot: a moving position and heading in the hold's frame, and the flight written as it is
 * flown. Every leg goes through pilot_straight or pilot_turn, so each starts exactly where the
 * one before ended. Private to the engine. */
#ifndef OX_ENGINE_PILOT_H
#define OX_ENGINE_PILOT_H

#include "frame.h"
#include "oxbow/flight.h"

typedef struct {
  ox_flight *flight;
  const ox_case *c;
  const ox_setup *setup;
  ox_frame frame;
  double v;           /* TAS, NM/s */
  ox_vec w;           /* wind velocity in the frame, NM/s */
  double rate_deg_s;
  double radius_nm;   /* still air */
  double reaction_s;
  bool holds_course;  /* some heading makes good the inbound course towards the fix */
  double in_deg;      /* that heading in the frame, or the nearest there is (-90, 90) */
  double gs;          /* inbound ground speed, NM/s; 0 or less where !holds_course */
  /* where the aircraft is */
  double t_s;
  ox_vec p;
  double heading_deg; /* in the frame, (-180, 180] */
  ox_part part;
  int circuit;
} ox_pilot;

/* Position and heading without a flight: for trying things out. */
typedef struct {
  ox_vec p;
  double heading_deg;
} ox_place;

/* No leg lasts longer: beyond it the fix counts as out of reach. */
#define OX_LEG_LONGEST_S 7200.0

/* At the fix at time 0 on the arrival heading; the flight is emptied. setup and c are borrowed. */
void pilot_begin(ox_pilot *k, const ox_case *c, ox_flight *flight);

/* Ground velocity on a heading, NM/s. */
ox_vec pilot_velocity(const ox_pilot *k, double heading_deg);
/* Displacement over the ground of a turn by a signed angle (right positive) from a heading. */
ox_vec pilot_turn_displacement(const ox_pilot *k, double heading_deg, double turn_deg);
ox_place pilot_after_turn(const ox_pilot *k, ox_place from, double turn_deg);
ox_place pilot_after_straight(const ox_pilot *k, ox_place from, double s);
/* Turn needed to a heading in a sense, [0, 360): a hair short of a full circle is no turn. */
double pilot_turn_needed_deg(double from_deg, double to_deg, int sense);

/* Flies on; zero durations and turns leave no leg. */
void pilot_straight(ox_pilot *k, ox_leg_kind kind, double s);
/* By a signed angle; the heading afterwards is exactly to_deg. */
void pilot_turn(ox_pilot *k, ox_leg_kind kind, double turn_deg, double to_deg);
/* The straight stretch before a turn, where the technique has one. */
void pilot_react(ox_pilot *k);

void pilot_event(ox_pilot *k, ox_event_kind kind, double t_s);
/* One of a kind is enough: the first stays. */
void pilot_advise(ox_pilot *k, ox_advice_kind kind, double a, double b, double c);

#endif
