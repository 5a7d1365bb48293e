/* The flight: what the engine computes from a case. Plain values; the caller owns the memory
 * (ox_flight is large: keep it on the heap or static), nothing here allocates. */
#ifndef OXBOW_FLIGHT_H
#define OXBOW_FLIGHT_H

#include "oxbow/case.h"
#include "oxbow/entry.h"
#include "oxbow/leg.h"
#include "oxbow/status.h"
#include "oxbow/steady.h"

#define OX_CIRCUITS_MAX 40
#define OX_CONDITIONS_MAX 64
#define OX_LEGS_MAX (16 + 10 * OX_CIRCUITS_MAX + 4 * OX_CONDITIONS_MAX)
#define OX_EVENTS_MAX (16 + 12 * OX_CIRCUITS_MAX + 6 * OX_CONDITIONS_MAX)
#define OX_ADVISORIES_MAX 24

/* What holds from an instant on until the next condition: a wind that has changed, a step of a
 * climb. Within one everything is steady, so every leg stays a closed form. */
typedef struct {
  double from_t_s;
  double altitude_ft;
  double tas_kt, bank_deg, rate_deg_s, radius_nm;
  ox_vec wind_kt;
} ox_condition;

/* The case made ready: everything true, resolved and in one place. */
typedef struct {
  double ias_kt, tas_kt;
  double bank_deg, rate_deg_s, radius_nm;
  bool bank_limits;           /* the bank limit decides, not the rate */
  double inbound_true_deg;
  int sense;                  /* +1 right turns, -1 left */
  double arrival_heading_true_deg;
  double arrival_track_true_deg;
  ox_vec wind_kt;             /* velocity it blows to, x true east y true north */
  double wind_from_true_deg, wind_speed_kt;
  double leg_s;               /* resolved; 0 with distance legs */
  ox_goal goal;
  double goal_value;
  double speed_limit_kias;
  bool has_dme;
  ox_dme dme;                 /* true north */
  double dme_fix_nm;          /* reading over the fix */
  double dme_unseen_nm;       /* a reading asked for that is below the height; the standard time is
                                 flown instead. Otherwise 0 */
  double climb_end_s;         /* when the altitude climbed to is reached; 0 in level flight */
  size_t condition_count;     /* >= 1; the first, from before the arrival on, is the above */
  ox_condition conditions[OX_CONDITIONS_MAX];
} ox_setup;

typedef enum {
  OX_EVENT_FIX,          /* over the fix */
  OX_EVENT_TURN_BEGIN,
  OX_EVENT_WINGS_LEVEL,
  OX_EVENT_ABEAM,        /* abeam the fix, flying outbound */
  OX_EVENT_CLOCK_START,  /* outbound (or entry) timing begins */
  OX_EVENT_INTERCEPT,    /* established on the inbound course */
  OX_EVENT_KIND_COUNT
} ox_event_kind;

typedef struct {
  ox_event_kind kind;
  double t_s;
  int circuit;
} ox_event;

/* What was measured in one circuit. */
typedef struct {
  double fix_t_s;            /* fix passage that begins it */
  double end_t_s;            /* fix passage that ends it */
  double outbound_heading_true_deg;
  double outbound_s;         /* wings level to the start of the inbound turn */
  double timed_s;            /* clock start to the end of the timing; the reaction before the turn
                                comes after it */
  double inbound_s;          /* end of the inbound turn to the fix, an intercept included; the turn
                                ends where it reaches, or had it not been stopped for an intercept
                                would have reached, the inbound heading. 0: fix not regained */
  double rollout_offset_nm;  /* where a plain turn to the inbound heading would roll out: distance
                                from the course, positive on the holding side (undershoot); 0
                                where no heading holds the course */
  ox_vec outbound_end_nm;    /* where the inbound turn begins, true */
  double gate_deg;           /* the gate angle: bearing of that place from the fix, off the
                                outbound course towards the holding side */
  double inbound_error_s;    /* inbound_s less the goal, where the goal is an inbound time, or 0 */
  double next_timed_s;       /* what one correction by the error would time next (floor 30 s) */
  double nonholding_nm;      /* farthest excursion on the non-holding side, >= 0 */
  bool complete;             /* the fix was crossed at its end */
} ox_circuit;

typedef enum {
  OX_ADVICE_SPEED_ABOVE_LIMIT,   /* a = KIAS, b = limit */
  OX_ADVICE_TAS_CONTRADICTS_IAS, /* a = TAS given, b = TAS from the IAS */
  OX_ADVICE_ENTRY_NOT_BY_SECTOR, /* a = entry flown, b = entry by the sector (ox_entry_kind) */
  OX_ADVICE_ENTRY_EITHER,        /* a, b = the two entries, c = degrees to the boundary */
  OX_ADVICE_TRACK_DIFFERS,       /* a = entry by heading, b = entry by track */
  OX_ADVICE_NO_STEADY,           /* a = ox_steady_why, b = wind component kt, c = limit kt or 0 */
  OX_ADVICE_DRIFT_CAPPED,        /* a = wanted degrees, b = degrees flown */
  OX_ADVICE_OUTBOUND_FLOOR,      /* a = seconds wanted, b = seconds flown */
  OX_ADVICE_NO_ABEAM,            /* circuit in c: never abeam, timed from wings level */
  OX_ADVICE_PAST_FIX,            /* circuit in c: the course is met beyond the fix; flown direct */
  OX_ADVICE_NOT_REGAINED,        /* circuit in c: the fix cannot be regained; the flight ends */
  OX_ADVICE_LONG_INBOUND,        /* circuit in c: a = inbound s, b = wanted s (error above 10 s) */
  OX_ADVICE_OVERSHOOT,           /* circuit in c: a = NM past the course on the non-holding side */
  OX_ADVICE_BELOW_FIXED_WING_MIN,/* a = KIAS below 90 (AIM 5-3-8 j8(a) recommends 90 or more) */
  OX_ADVICE_NO_ARRIVAL,          /* the aircraft makes no way over the ground; arrival left out */
  OX_ADVICE_WIND_EXTRAPOLATED,   /* a = altitude outside the rows; nearest row used */
  OX_ADVICE_DME_NOT_SEEN,        /* a = reading, b = height above the station NM; time is flown */
  OX_ADVICE_LEAVE_MISSED,        /* a, b = the nearest times before and after, seconds after
                                    the first fix passage; b = a where there is none after */
  OX_ADVICE_LEAVE_BEFORE,        /* the EFC is before the aircraft is over the fix; a = s before */
  OX_ADVICE_RADIAL_NOT_CROSSED,  /* a = limiting radial, magnetic: no outbound leg crosses it */
  OX_ADVICE_LEAVE_UNKNOWN,       /* held to the EFC, and what it takes is not given: a = 1 without
                                    an EFC, b = 1 without the time over the fix */
  OX_ADVICE_KIND_COUNT
} ox_advice_kind;

typedef struct {
  ox_advice_kind kind;
  double a, b, c;
} ox_advice;

typedef struct {
  ox_setup setup;
  ox_entry_choice by_heading, by_track;
  ox_entry_choice entry;        /* the one the technique asks for */
  ox_entry_kind flown;          /* entry as flown */
  double entry_heading_true_deg;/* first heading after the fix */
  ox_steady steady;             /* in true degrees */
  size_t leg_count;
  ox_leg legs[OX_LEGS_MAX];     /* in time order, each starts where the one before ends */
  size_t event_count;
  ox_event events[OX_EVENTS_MAX]; /* in time order */
  size_t circuit_count;
  ox_circuit circuits[OX_CIRCUITS_MAX];
  size_t advice_count;
  ox_advice advice[OX_ADVISORIES_MAX];
  double leave_t_s; /* when the fix is to be left (s), in a hold that ends at its EFC; else 0 */
} ox_flight;

/* Resolves a case: TAS, turn, norths, wind at the altitude, limits. OX_ERROR when
 * ox_case_check finds a fault. */
ox_status ox_setup_make(const ox_case *c, ox_setup *out);

/* Puts a faster condition (1.4 times the IAS, at most 250 KIAS or what it is, for the first 90
 * seconds after the fix and on the arrival) before the others: the speed reduced too late. */
void ox_setup_slow_late(const ox_case *c, ox_setup *s);

/* Flies a case. OX_ERROR when ox_case_check finds a fault (the flight is untouched), otherwise
 * OX_OK or, when there is advice, OX_ADVISORY. Always ends; every number is finite. */
ox_status ox_flight_solve(const ox_case *c, ox_flight *out);

/* First and last instant (s); 0 and 0 for a flight without legs. */
double ox_flight_begin_s(const ox_flight *flight);
double ox_flight_end_s(const ox_flight *flight);
/* Index of the leg flown at a time (clamped to the flight); 0 when there is no leg. */
size_t ox_flight_leg_index(const ox_flight *flight, double t_s);
/* Altitude (ft) at a time: climbs evenly from the first fix passage on. */
double ox_flight_altitude_ft(const ox_case *c, const ox_flight *flight, double t_s);
/* State at a time (clamped to the flight). All zero for a flight without legs. */
ox_state ox_flight_at(const ox_flight *flight, double t_s);

/* "fix", "turn", "level", "abeam", "clock", "intercept" */
const char *ox_event_name(ox_event_kind kind);
const char *ox_entry_name(ox_entry_kind kind); /* "direct", "parallel", "teardrop" */
const char *ox_steady_why_name(ox_steady_why why); /* one English sentence without figures */

/* The still-air shape: the same hold with no wind, as four legs from the fix (outbound turn,
 * outbound, inbound turn, inbound), true, origin at the fix. out has room for 4. */
void ox_still_air_shape(const ox_setup *setup, ox_leg out[4]);

/* What ended an outbound leg that a DME station ends, by where the leg ends before the reaction:
 * circuit counts from 1. OTHERWISE too where no station ends it, or neither was ever met. */
typedef enum { OX_ENDED_OTHERWISE, OX_ENDED_BY_DISTANCE, OX_ENDED_BY_RADIAL } ox_ended_by;
ox_ended_by ox_outbound_ended_by(const ox_flight *flight, int circuit);

#endif
