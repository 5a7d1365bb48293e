/* What is asked under a picture, and what is given above it, in words. Private to the sheets. */
#ifndef OX_SHEETS_ANSWERS_H
#define OX_SHEETS_ANSWERS_H

#include <stdbool.h>

#include "oxbow/case.h"
#include "oxbow/flight.h"
#include "oxbow/words.h"

#define SHEET_ANSWERS_MAX 6
#define SHEET_ENTRY_HEADING "Entry heading" /* the key of that answer */

typedef struct {
  const char *key;    /* static, the same in every language */
  const char *label;  /* static, for people */
  char value[96];     /* as short as it can be read */
  const char *why;    /* belongs to the working, as the next */
  const char *source;
} sheet_answer;

typedef struct {
  ox_working working;
  int count;
  sheet_answer answer[SHEET_ANSWERS_MAX];
  char given[1000];   /* a few sentences */
  char fuel_why[320];
  char remark[600];  /* what the flight came to, where it is out of the ordinary; or "" */
} sheet_answers;

/* False when memory is out. Freed with sheet_answers_clear in either case. */
bool sheet_answers_make(const ox_case *c, const ox_flight *flight, sheet_answers *out);
void sheet_answers_clear(sheet_answers *answers);

#endif
