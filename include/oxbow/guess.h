/* A student's answer beside the flight: predict, then see.
 *
 * The answer is a few numbers and a sketch of the track. It is measured against the flight as the
 * case has it flown, and told in sentences that say how far apart the two are and in which sense.
 * The tolerances are common practice in training, not of a regulation. */
#ifndef OXBOW_GUESS_H
#define OXBOW_GUESS_H

#include <stdbool.h>
#include <stddef.h>

#include "oxbow/case.h"
#include "oxbow/flight.h"
#include "oxbow/ink.h"

/* Common practice: what counts as the same in training. */
#define OX_GUESS_HEADING_DEG 5.0
#define OX_GUESS_TIME_S 10.0
#define OX_GUESS_SKETCH_NM 0.2
/* What counts as the usual answer: the same in whole degrees and seconds. */
#define OX_GUESS_USUAL_DEG 1.0
#define OX_GUESS_USUAL_S 1.0

/* What is not answered is OX_ENTRY_NONE or NAN. */
typedef struct {
  int entry;                   /* an ox_entry_kind */
  double first_heading_deg;    /* magnetic: the first one after the fix */
  double outbound_heading_deg; /* magnetic, of the first circuit */
  double outbound_s;           /* timed, of the first circuit */
} ox_guess;
ox_guess ox_guess_none(void);

/* How a sketch and the track lie to each other. The track counts from the arrival on for what is
 * near the sketch; what the sketch leaves out is sought from the first crossing of the fix to the
 * end of the first circuit (or of the flight, where the fix is not regained). NM. */
typedef struct {
  double length_nm;       /* of the sketch */
  double most_nm;         /* of the sketch from the track */
  ox_vec most_at_nm;      /* there, true, from the fix */
  ox_vec most_track_nm;   /* and the place on the track nearest to it */
  double mean_nm;         /* along the sketch */
  double near_share;      /* of the sketch's length within OX_GUESS_SKETCH_NM, 0..1 */
  double missed_nm;       /* the most that the track lies from the sketch */
  ox_vec missed_at_nm;    /* that place on the track */
  double covered_share;   /* of the track's length within OX_GUESS_SKETCH_NM of the sketch, 0..1 */
} ox_sketch_fit;
/* False where there is nothing to compare: no line in the sketch, no legs, or no
 * memory (out untouched).
 * Distances are good to 0.001 NM. Places are seen every 0.05 NM. */
bool ox_guess_fit(const ox_flight *flight, const ox_ink *sketch, ox_sketch_fit *out);

/* Degrees from what is flown to what was guessed, right positive, (-180, 180]. False where it was
 * not answered or is not flown. */
bool ox_guess_first_heading_off(const ox_case *c, const ox_flight *flight, const ox_guess *guess,
                                double *off_deg);
bool ox_guess_heading_off(const ox_case *c, const ox_flight *flight, const ox_guess *guess,
                          double *off_deg);
/* Seconds that the guess is longer than the time flown. */
bool ox_guess_time_off(const ox_flight *flight, const ox_guess *guess, double *off_s);
/* The part of the first circuit's correction that the wind asks for, degrees, right positive; 0 in
 * calm air. What is left of the heading flown is asked for by the way the fix is crossed. False
 * where nothing is flown or the two cannot be told apart: the wind or the altitude changes, or no
 * circuit repeats itself. */
bool ox_guess_wind_part(const ox_case *c, const ox_flight *flight, double *correction_deg);
/* Whether a heading is the outbound course with that correction. AIM 5-3-8 j3(c): a direct entry
 * is a turn to follow the pattern. */
bool ox_guess_is_usual_heading(const ox_case *c, const ox_flight *flight, double magnetic_deg);
/* Whether a time is the one that the first outbound leg is usually flown for: the leg time asked
 * for, else 1 minute at or below 14 000 ft and 1 1/2 above (AIM 5-3-8 j4(a) and its note). Never
 * where the leg ends at a distance. */
bool ox_guess_is_usual_time(const ox_flight *flight, double outbound_s);
/* Whether the entry is one that the rule allows: the sector's, or within 5 degrees of a boundary
 * the other one as well. */
bool ox_guess_entry_fits(const ox_flight *flight, const ox_guess *guess);

/* One answer beside what is flown. */
typedef struct {
  const char *what; /* static: "Entry", "First heading", "Outbound heading", … */
  char *yours;      /* "072" */
  char *flown;      /* "078" */
  bool near;        /* the same, within the tolerance, or the usual answer */
  char *sentence;   /* how they differ, and why */
} ox_guess_row;
typedef struct {
  size_t count; /* 0: nothing was answered, or memory is out */
  ox_guess_row *rows;
} ox_guess_report;
/* Rows for what was answered, in the order above; the sketch last. sketch may be NULL. Freed with
 * ox_guess_report_clear. */
ox_guess_report ox_guess_compare(const ox_case *c, const ox_flight *flight, const ox_guess *guess,
                                 const ox_ink *sketch);
void ox_guess_report_clear(ox_guess_report *report);
/* Where the tolerances come from, in a sentence. Static. */
const char *ox_guess_tolerances(void);

#endif
