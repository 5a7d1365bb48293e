/* The working as it is put together: each file of the working adds the rows of its groups.
 * Private to the words. */
#ifndef OX_WORDS_ROWS_H
#define OX_WORDS_ROWS_H

#include "oxbow/words.h"
#include "say.h"

#define SOURCE_GEOMETRY N_("geometry")
#define SOURCE_PRACTICE N_("common practice")
#define SOURCE_GIVEN N_("given with the case")
#define SOURCE_MEASURED N_("measured on the flight")

typedef struct {
  ox_working w;
  size_t capacity;
  bool failed; /* memory ran out */
  const ox_case *c;
  const ox_flight *f;
} words_rows;

/* Takes the two sentences; group, label and source are static and marked by N_(): they are
 * translated here, and the English label is the row's key. */
void rows_add(words_rows *r, const char *group, const char *label, words_say *value, words_say *why,
              const char *source);
/* The same with a label of its own, in the language of the reader. */
void rows_add_labelled(words_rows *r, const char *group, const char *key, const char *label,
                       words_say *value, words_say *why, const char *source);
/* Gives the row just added its value without the remark. */
void rows_set_brief(words_rows *r, const char *brief);

void rows_entry(words_rows *r);
void rows_technique(words_rows *r);
void rows_turn(words_rows *r);
void rows_wind(words_rows *r);
void rows_headings(words_rows *r);
void rows_times(words_rows *r);
void rows_station(words_rows *r);
void rows_circuits(words_rows *r);
void rows_limits(words_rows *r);
void rows_when(words_rows *r);
void rows_against_exact(words_rows *r);

/* The case flown by the preset "exact". */
ox_case words_exact_case(const ox_case *c);
/* Straight on before each turn: noticing and rolling in (s). */
double words_reaction_s(const ox_case *c);
/* What holds at an instant: the last condition that has begun. */
const ox_condition *words_condition_at(const ox_setup *setup, double t_s);
/* "1:00 inbound", "5 NM outbound", "15 DME outbound". */
words_phrase words_leg(const ox_setup *setup);
/* "157 (23° L)", "180 (no correction)". */
void words_put_heading(words_say *s, const ox_case *c, double true_deg, double correction_deg);
/* Sets the brief value of the row just added where that of words_put_heading has a remark. */
void rows_set_brief_heading(words_rows *r, double true_deg, double correction_deg);
/* "0.12 NM short of the course, on the holding side (undershoot)", "on the course". */
words_phrase words_rollout(double offset_nm);
/* "calm", "360 at 20 kt", "360 true (012 magnetic) at 20 kt". */
words_phrase words_wind(const ox_case *c, const ox_setup *setup);

#endif
