/* When: the clock of a flight, what its fuel lasts for, and when the fix is to be left.
 *
 * Plain values; nothing here allocates. Times t_s are seconds after the first crossing of the fix,
 * as everywhere; clock times are seconds after midnight UTC, or minutes where the name says so.
 * Fuel is in whatever one unit the case has: nothing depends on which. */
#ifndef OXBOW_ENDURANCE_H
#define OXBOW_ENDURANCE_H

#include "oxbow/flight.h"

#define OX_PASSAGES_MAX 64

/* ---- The clock ---- */

/* Whether the case says when the fix is crossed first. */
bool ox_clock_is_known(const ox_case *c);
/* The clock at an instant, [0, 86400); 0 where it is not known. Local: with the case's offset. */
double ox_clock_utc_s(const ox_case *c, double t_s);
double ox_clock_local_s(const ox_case *c, double t_s);
/* When a minute of the day comes, as seconds after the first crossing of the fix. The clock has no
 * date: of yesterday, today and tomorrow the nearest to the crossing is taken, so that an EFC of
 * 00:10 comes after a crossing at 23:50, and one of 23:50 before a crossing at 00:10. False (and
 * *after_s 0) where the clock is not known or the minute is not one (0 to 1439). */
bool ox_clock_after_s(const ox_case *c, int minute, double *after_s);
/* A time said as minutes only ("25 past"): the first minute of the day at or after from_min whose
 * minute of the hour it is; -1 where either is out of range. */
int ox_clock_next_past(int minute_of_hour, int from_min);

/* ---- Fuel ---- */

typedef struct {
  bool known;                /* what is on board and the flow are given; all is 0 otherwise */
  double on_board, flow_h;
  double alternate, reserve; /* amounts, also where minutes were given */
  double leave_by_s;         /* over the fix no later, with alternate and reserve whole; below 0:
                                it is too late on arrival */
  double reserve_s;          /* the reserve is touched, flying on in the hold */
  double empty_s;
} ox_endurance;
/* leave_by = (on board - alternate - reserve) / flow, and so on: the flow is taken as steady. */
ox_endurance ox_endurance_of(const ox_case *c);
/* Fuel left at an instant, never below 0; 0 where nothing is known. */
double ox_endurance_left(const ox_endurance *e, double t_s);

/* ---- Over the fix ---- */

typedef struct {
  int number;     /* from 1 */
  double t_s;
  double left;    /* fuel, 0 where it is not known */
  bool can_leave; /* alternate and reserve are whole; true where nothing is known */
} ox_passage;
/* Every crossing of the fix in order. Writes at most max, returns how many. */
size_t ox_passages(const ox_case *c, const ox_flight *flight, ox_passage *out, size_t max);
/* The number of the last passage from which the fix can be left with alternate and reserve whole;
 * 0: none. */
int ox_passage_leave_by(const ox_passage *passages, size_t count);

/* ---- Until the EFC ---- */

typedef enum {
  OX_EFC_NOT_GIVEN,
  OX_EFC_NO_CLOCK,    /* when the fix is crossed first is not given */
  OX_EFC_BEFORE,      /* it has come before the fix is reached */
  OX_EFC_MET,
  OX_EFC_MISSED,      /* not even a short or a long circuit fits */
  OX_EFC_NOT_REGAINED /* the fix cannot be regained in this wind */
} ox_efc_outcome;
typedef struct {
  ox_efc_outcome outcome;
  double after_s;        /* after the first crossing; below 0 with OX_EFC_BEFORE */
  int circuits;          /* flown until then, the entry not counted */
  double last_timed_s;   /* outbound time of the last one by the clock; 0 without circuits */
  double last_circuit_s; /* all of it */
  double before_s, later_s; /* OX_EFC_MISSED: the nearest times at which the fix is crossed */
} ox_efc_plan;
/* Flies the case so that the fix is crossed at its EFC (AIM 5-3-8 k), whatever ends its hold.
 * `scratch` is overwritten. OX_ERROR, and both untouched, when ox_case_check finds a fault. */
ox_status ox_efc_plan_make(const ox_case *c, ox_flight *scratch, ox_efc_plan *out);

/* ---- Without radio ---- */

/* What 14 CFR 91.185(c)(3) asks; other States differ. */
typedef enum {
  OX_RADIO_NOT_DECIDED,     /* whether an approach begins at the limit is not given */
  OX_RADIO_APPROACH_AT_EFC, /* (i): begin it as close as possible to the EFC */
  OX_RADIO_APPROACH_AT_ETA, /* (i), no EFC: as close as possible to the ETA */
  OX_RADIO_LEAVE_AT_EFC,    /* (ii): leave the limit then, for a fix where an approach begins */
  OX_RADIO_LEAVE_ON_ARRIVAL /* (ii), no EFC: on arriving over it */
} ox_radio_action;
typedef struct {
  ox_radio_action action;
  int at_min;            /* when, minute of the day UTC; -1: not known */
  bool before_arrival;   /* that time is past on reaching the fix: at once */
  int then_approach_min; /* (ii): begin the approach as close as possible to this; -1: ETA not
                            given. -1 in (i) */
} ox_lost_radio;
ox_lost_radio ox_lost_radio_of(const ox_case *c);

/* ---- Slowing down ---- */

/* AIM 5-3-8 d: three minutes or less before the fix, begin to slow down. The distance is that of
 * the ground speed on the arrival track at the holding speed; who is faster covers more. */
#define OX_SLOW_DOWN_S 180.0
typedef struct {
  double gs_kt, nm;
  bool shown; /* the arrival drawn is long enough for it */
} ox_slow_down;
ox_slow_down ox_slow_down_of(const ox_flight *flight);

#endif
