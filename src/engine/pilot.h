/* The pilot: a moving position and heading in the hold's frame, and the flight written as it is
 * flown. Every leg goes through pilot_straight or pilot_turn, so each starts exactly where the
 * one before ended. Private to the engine. */
#ifndef OX_ENGINE_PILOT_H
#define OX_ENGINE_PILOT_H

#include "frame.h"
#include "oxbow/flaws.h"
#include "oxbow/flight.h"

typedef struct {
  ox_flight *flight;
  const ox_case *c;
  const ox_setup *setup;
  ox_flaws flaws;
  ox_frame frame;
  double reaction_s;
  ox_dme dme;         /* in the frame; where setup->has_dme */
  /* what holds now: it changes between two legs, never within one */
  size_t condition;   /* index in setup->conditions */
  double v;           /* TAS, NM/s */
  ox_vec w;           /* wind velocity in the frame, NM/s */
  double rate_deg_s;
  double radius_nm;   /* still air */
  bool holds_course;  /* some heading makes good the inbound course towards the fix */
  double in_deg;      /* that heading in the frame, or the nearest there is (-90, 90) */
  double gs;          /* inbound ground speed, NM/s; 0 or less where !holds_course */
  /* where the aircraft is */
  double t_s;
  ox_vec p;
  double heading_deg; /* in the frame, (-180, 180] */
  ox_part part;
  int circuit;
  bool turning;       /* a turn was interrupted and goes on */
  bool late;          /* has turned onto the course by a rule since the last fix passage */
  bool established;   /* on the inbound course since the last fix passage */
} ox_pilot;

/* Position and heading without a flight: for trying things out. */
typedef struct {
  ox_vec p;
  double heading_deg;
} ox_place;

/* At the fix at time 0 on the arrival heading; the flight is emptied. setup and c are borrowed;
 * flaws may be NULL. */
void pilot_begin(ox_pilot *k, const ox_case *c, const ox_flaws *flaws, ox_flight *flight);
bool pilot_errs(const ox_pilot *k, ox_mistake mistake);

/* Ground velocity on a heading, NM/s. */
ox_vec pilot_velocity(const ox_pilot *k, double heading_deg);
/* Displacement over the ground of a turn by a signed angle (right positive) from a heading. */
ox_vec pilot_turn_displacement(const ox_pilot *k, double heading_deg, double turn_deg);
ox_place pilot_after_turn(const ox_pilot *k, ox_place from, double turn_deg);
ox_place pilot_after_straight(const ox_pilot *k, ox_place from, double s);
/* Turn needed to a heading in a sense, [0, 360): a hair short of a full circle is no turn. */
double pilot_turn_needed_deg(double from_deg, double to_deg, int sense);

/* Flies on; zero durations and turns leave no leg. A leg ends early where the conditions change
 * (a new wind, a step of a climb): then false is returned, and whoever steers by what was planned
 * plans anew. */
bool pilot_straight(ox_pilot *k, ox_leg_kind kind, double s);
/* By a signed angle; the heading afterwards, when not interrupted, is exactly to_deg. */
bool pilot_turn(ox_pilot *k, ox_leg_kind kind, double turn_deg, double to_deg);
/* The same through every change of the conditions: for as long, or to the heading. */
void pilot_straight_for(ox_pilot *k, ox_leg_kind kind, double s);
void pilot_turn_to(ox_pilot *k, ox_leg_kind kind, double turn_deg, double to_deg);
/* The straight stretch before a turn, where the technique has one. */
void pilot_react(ox_pilot *k);
/* Takes over the conditions of the present instant; true when they are others. */
bool pilot_refresh(ox_pilot *k);

void pilot_event(ox_pilot *k, ox_event_kind kind, double t_s);
/* One of a kind is enough: the first stays. */
void pilot_advise(ox_pilot *k, ox_advice_kind kind, double a, double b, double c);

#endif
