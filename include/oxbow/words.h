/* A flight in sentences: the working, the advisories and the description of the picture.
 * Strings returned as char * are malloc'd and belong to the caller; NULL when memory is out.
 * All of them are in the reader's language (text.h), figures with that language's decimal point. */
#ifndef OXBOW_WORDS_H
#define OXBOW_WORDS_H

#include <stdbool.h>

#include "oxbow/case.h"
#include "oxbow/endurance.h"
#include "oxbow/flaws.h"
#include "oxbow/flight.h"

/* A bearing as people read it: "007", "360". buf has room for 4 bytes. */
void ox_words_bearing(char buf[4], double bearing_deg);
/* A correction with its side: "0°", "8° L", "24° R" (buf 16 bytes, one decimal below 10 only when
 * decimals is 1). */
void ox_words_correction(char *buf, size_t bytes, double correction_deg, int decimals);
/* Minutes and seconds: "1:00", "0:26", "-0:45". */
void ox_words_min_s(char *buf, size_t bytes, double s);
/* "right" / "left"; "right turns" / "left turns". Static, as all the next. */
const char *ox_words_turns(ox_turns turns);
const char *ox_words_turns_noun(ox_turns turns);
/* "north-east" etc.: the eighth that contains a bearing. */
const char *ox_words_eighth(double bearing_deg);
/* "M", which stands behind a bearing where magnetic and true differ. */
const char *ox_words_magnetic_mark(void);
/* "teardrop entry" */
const char *ox_words_entry_noun(ox_entry_kind kind);

/* An advisory as a few sentences for a student (OX_ADVICE_BYTES hold the longest). A buffer that is
 * too small cuts it at a whole character. */
#define OX_ADVICE_BYTES 600
void ox_words_advice(char *buf, size_t bytes, const ox_case *c, const ox_advice *advice);

/* The working: rows in reading order, grouped. */
typedef struct {
  const char *group;  /* static: "Entry", "Headings", "Times", "Turn and speed", "Limits", … */
  const char *key;    /* static, in every language the English label: by it code finds a row */
  char *label;        /* "Outbound heading" */
  char *value;        /* "152 (28° L)" */
  char *brief;        /* "1:06" of "1:06 by the clock": the value without its remark; NULL where
                         the value has none */
  char *why;          /* the formula with the numbers put in, one line */
  const char *source; /* static: the publication and paragraph, or "common practice", "geometry",
                         "given with the case" or "measured on the flight" */
} ox_working_row;
typedef struct {
  size_t count;
  ox_working_row *rows;
} ox_working;
/* 0 rows when memory is out. Freed with ox_working_clear. */
ox_working ox_working_make(const ox_case *c, const ox_flight *flight);
void ox_working_clear(ox_working *w);

/* What the case's technique gives beside the exact hold: the same case flown by the preset
 * "exact", compared in the last circuit and in the worst one. The worst is farthest from its
 * counterpart, 10 s of inbound time counting as much as 0.1 NM of roll-out, and a fix that is not
 * regained more than either. */
typedef struct {
  const char *which;    /* static: "Last circuit", "Worst circuit", "Last and worst circuit" */
  int circuit;          /* from 1 */
  const char *quantity; /* static: "Inbound time" */
  char *flown, *exact;  /* "1:17", "1:00" */
  char *difference;     /* "17 s longer", "none" */
  bool differs;         /* whether the difference is one: its word for none is a translation */
  char *why;            /* the difference in figures: "77.2 s − 60.0 s = +17.2 s" */
} ox_comparison_row;
typedef struct {
  const char *none; /* static: the sentence why there is nothing to compare; NULL with rows */
  bool is_exact;    /* the case is flown by that preset as it is */
  size_t count;     /* the rows of one circuit stand together */
  ox_comparison_row *rows;
} ox_comparison;
/* flown is the flight of the case. Freed with ox_comparison_clear. */
ox_comparison ox_comparison_make(const ox_case *c, const ox_flight *flown);
void ox_comparison_clear(ox_comparison *comparison);

/* One sentence on the protected area as an illustration, without a buffer: whether the flown track
 * stays inside, by how much, and what of it is from memory (500 bytes hold it). */
void ox_words_area(char *buf, size_t bytes, const ox_case *c, const ox_flight *flight);

/* A mistake: its name, what it causes, and what it does in this case in figures: where the two
 * tracks are farthest apart until one of them is back at the fix, and when that is. `right` is the
 * flight without it (800 bytes hold it). */
void ox_words_mistake(char *buf, size_t bytes, const ox_case *c, const ox_flight *right,
                      ox_mistake mistake);

/* Time and fuel in sentences; a buffer of OX_WHEN_BYTES holds each. What is not given is said to be
 * so. Clock times are UTC, with the local time beside them where the case has an offset. */
#define OX_WHEN_BYTES 1000
const char *ox_words_fuel_unit(ox_fuel_unit unit); /* "US gal"; static */
/* How the EFC is met: circuits, and the outbound time of the last. */
void ox_words_efc(char *buf, size_t bytes, const ox_case *c, const ox_efc_plan *plan);
/* What the fuel allows, the last passage in time, and whether it lasts until the EFC. */
void ox_words_endurance(char *buf, size_t bytes, const ox_case *c, const ox_flight *flight);
/* "No reserve was entered …": to stand beside a time worked out of fuel, for it counts the reserve
 * as 0; NULL where there is one, or nothing is known of the endurance. */
const char *ox_words_no_reserve(const ox_case *c);
/* What 14 CFR 91.185(c)(3) asks in this case. */
void ox_words_lost_radio(char *buf, size_t bytes, const ox_case *c);
/* Where the speed is to come down. */
void ox_words_slow_down(char *buf, size_t bytes, const ox_case *c, const ox_flight *flight);
/* All four, a line each, the fuel only where it is given. */
char *ox_words_when(const ox_case *c, const ox_flight *flight);

/* The whole picture in words, for a screen reader and for alternative text. */
char *ox_words_describe(const ox_case *c, const ox_flight *flight);

/* The caution, one line and whole. Static. */
const char *ox_words_caution_line(void);
const char *ox_words_caution(void);

#endif
