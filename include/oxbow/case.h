/* The case: one situation, everything a flight is computed from. A plain value: copy it freely,
 * compare it with ox_case_equal. Directions are magnetic unless the comment says otherwise. */
#ifndef OXBOW_CASE_H
#define OXBOW_CASE_H

#include <stdbool.h>
#include <stddef.h>

#define OX_CASE_NAME_BYTES 160 /* UTF-8 with the closing nul */
#define OX_FIX_NAME_BYTES 64
#define OX_WIND_ROWS_MAX 12
#define OX_WIND_CHANGES_MAX 6

typedef enum { OX_TURNS_RIGHT, OX_TURNS_LEFT } ox_turns;
typedef enum { OX_LEG_BY_TIME, OX_LEG_BY_DISTANCE } ox_leg_by;
typedef enum { OX_LEG_END_OUTBOUND, OX_LEG_END_INBOUND } ox_leg_end;
/* What ends the hold: the number of circuits; the first arrival over the fix established inbound
 * (a hold in lieu of a procedure turn, or a single circuit); the altitude climbed to; the EFC, for
 * which the last circuits are flown so that the fix is crossed at that time. */
typedef enum {
  OX_HOLD_CIRCUITS, OX_HOLD_REVERSAL, OX_HOLD_TO_ALTITUDE, OX_HOLD_TO_EFC
} ox_hold_ends;
typedef enum { OX_TURN_BY_LESSER, OX_TURN_BY_BANK } ox_turn_by;
typedef enum { OX_ENTRY_LINE_HEADING, OX_ENTRY_LINE_TRACK } ox_entry_line;
/* When the turn onto the inbound course begins: so that it ends on the course; only on crossing it;
 * by a rule of thumb, so many degrees of bearing to the fix before it. */
typedef enum { OX_LEAD_EXACT, OX_LEAD_NONE, OX_LEAD_DEGREES } ox_lead;
/* On meeting the limiting radial: turn inbound, or follow it to the distance. */
typedef enum { OX_AT_RADIAL_TURN, OX_AT_RADIAL_FOLLOW } ox_at_radial;
typedef enum { OX_NORTH_TRUE, OX_NORTH_MAGNETIC } ox_north;
typedef enum { OX_TIMING_INBOUND, OX_TIMING_OUTBOUND } ox_timing;
typedef enum { OX_CLOCK_ABEAM_OR_LEVEL, OX_CLOCK_ABEAM, OX_CLOCK_LEVEL } ox_clock;
typedef enum {
  OX_DRIFT_NONE, OX_DRIFT_SINGLE, OX_DRIFT_DOUBLE, OX_DRIFT_TRIPLE, OX_DRIFT_EXACT, OX_DRIFT_TRACK
} ox_drift;
typedef enum {
  OX_OUTBOUND_NOMINAL, OX_OUTBOUND_ADJUST, OX_OUTBOUND_RULE, OX_OUTBOUND_EXACT
} ox_outbound;
typedef enum {
  OX_CHOOSE_AUTO, OX_CHOOSE_DIRECT, OX_CHOOSE_PARALLEL, OX_CHOOSE_TEARDROP
} ox_entry_order;
typedef enum { OX_SECTOR_HEADING, OX_SECTOR_TRACK } ox_sector;

typedef enum { OX_FUEL_LB, OX_FUEL_KG, OX_FUEL_USGAL, OX_FUEL_L } ox_fuel_unit;
/* Whether an approach begins at the clearance limit (14 CFR 91.185(c)(3) asks it). */
typedef enum { OX_LIMIT_UNKNOWN, OX_LIMIT_STARTS_APPROACH, OX_LIMIT_EN_ROUTE } ox_limit_kind;
typedef enum { OX_COURSE_INBOUND, OX_COURSE_OUTBOUND } ox_course_kind;
/* A choice that may be absent: 0. */
typedef enum { OX_SHOWN_TURNS_NONE, OX_SHOWN_TURNS_RIGHT, OX_SHOWN_TURNS_LEFT } ox_shown_turns;
/* From the fix; 1 is north, then clockwise by eighths. */
typedef enum { OX_SHOWN_DIRECTION_NONE, OX_SHOWN_DIRECTION_NORTH } ox_shown_direction;

/* What the equipment in the cockpit shows of the hold, as somebody read it off. */
typedef struct {
  char fix[OX_FIX_NAME_BYTES]; /* "": not shown */
  ox_shown_direction direction;
  double course_deg;           /* 1 to 360; 0: not shown */
  ox_course_kind course_is;
  ox_shown_turns turns;
  double leg_s, leg_nm;        /* 0: not shown */
  int efc_min;                 /* minutes after midnight UTC, -1: not shown */
} ox_shown;

typedef struct {
  double altitude_ft; /* ignored while there is one row */
  double from_deg;    /* direction it comes from, in the row's north */
  double kt;
  ox_north north;
} ox_wind_row;

/* From an instant on, one wind at every height: what the forecast did not say. */
typedef struct {
  double at_min; /* minutes after the first crossing of the fix */
  double from_deg;
  double kt;
  ox_north north;
} ox_wind_change;

typedef struct {
  char name[OX_CASE_NAME_BYTES];
  struct {
    char fix[OX_FIX_NAME_BYTES];
    double inbound_deg;
    ox_turns turns;
    ox_leg_by leg_by;
    double leg_s;       /* 0: the standard time for the altitude */
    double leg_nm;      /* with leg_by distance */
    ox_leg_end leg_end; /* with leg_by distance */
    struct {            /* where the distance is read as slant range from a DME station */
      bool given;          /* a fix on or off the station's radial, read by DME */
      double radial_deg;   /* magnetic bearing from the fix to the station */
      double nm;           /* over the ground */
      double elevation_ft;
      double limiting_radial_deg; /* from the station, magnetic; north is 360; 0: none. The
                                     outbound leg ends there too, if it comes first */
    } station;
    double altitude_ft;
    double limit_kias;  /* charted speed limit; 0: the table's */
    ox_hold_ends ends;
    int efc_min;        /* minutes after midnight UTC, -1: none given */
    double climb_to_ft; /* 0: level; otherwise climbs or descends from the fix on */
    double climb_ft_min;/* rate, always positive */
  } hold;
  struct {
    double heading_deg;
    double distance_nm;
    int fix_at_s;       /* first crossing of the fix, seconds after midnight UTC; -1: not given */
  } arrival;
  struct {
    double ias_kt; /* 0: only the TAS is given */
    double tas_kt; /* 0: computed from the IAS; otherwise it wins */
    double isa_dev_c;
    double rate_deg_s;
    double max_bank_deg;
    ox_turn_by turn_by; /* the lesser of rate and bank, or the bank always */
  } aircraft;
  ox_wind_row wind[OX_WIND_ROWS_MAX]; /* ascending altitude */
  int wind_count;                     /* 0: calm */
  ox_wind_change wind_changes[OX_WIND_CHANGES_MAX]; /* ascending time */
  int wind_change_count;
  double variation_deg;               /* east positive */
  struct {
    ox_timing timing;
    ox_clock clock;
    ox_drift drift;
    ox_outbound outbound;
    double intercept_deg;
    ox_entry_order entry;
    ox_sector sector;
    double entry_s;
    ox_entry_line entry_line; /* entry legs as headings or as tracks made good */
    double reaction_s; /* flown straight before each turn: noticing, … */
    double roll_s;     /* … and rolling in */
    ox_lead lead;      /* turning onto the inbound course */
    double lead_deg;   /* with lead degrees */
    ox_at_radial at_radial;
    int circuits;
  } technique;
  struct {             /* fuel in any one unit; nothing is known without on_board and flow_h */
    double on_board;   /* at the first crossing of the fix; 0: not given */
    double flow_h;     /* burnt an hour in the hold; 0: not given */
    double alternate;  /* from the fix to landing at the alternate; 0: see the next */
    double alternate_min; /* the same as minutes at the flow; an amount wins */
    double reserve;
    double reserve_min;
    ox_fuel_unit unit;
  } fuel;
  struct {
    int utc_offset_min; /* local time less UTC; 0: UTC only */
  } clock;
  struct {              /* what decides when the radio fails */
    ox_limit_kind limit_starts_approach;
    int eta_min;        /* over the approach fix by the filed or amended time en route: minutes
                           after midnight UTC; -1: not given */
  } lost_radio;
  ox_shown shown;
} ox_case;

/* A complete, valid case in calm air. */
ox_case ox_case_default(void);

/* Field by field (padding and the tails of strings do not count). */
bool ox_case_equal(const ox_case *a, const ox_case *b);

/* One thing wrong with a case, for a message `KEY: VALUE is not ALLOWED`. */
typedef struct {
  char key[48];        /* as in a lesson file: "hold.inbound_deg"; a single wind is "wind.kt", one
                          of several counts from 0: "wind[2].kt" */
  char value[32];      /* the offending value in C-locale figures */
  const char *allowed; /* a phrase that follows "is not": "a course (0 to 360)"; static */
} ox_fault;

/* Returns the number of faults in the case and writes the first `max` of them (faults may be
 * NULL when max is 0). 0 means that every engine function accepts the case. Never changes it. */
size_t ox_case_check(const ox_case *c, ox_fault *faults, size_t max);

#endif
