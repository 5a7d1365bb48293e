/* Two or three cases side by side in a table: what was given differently, and what came of it. */
#ifndef OXBOW_DIFFERENCES_H
#define OXBOW_DIFFERENCES_H

#include <stdbool.h>
#include <stddef.h>

#include "oxbow/flight.h"

#define OX_DIFFERENCES_MAX 3

typedef struct {
  bool given;         /* an input; else flown or computed */
  const char *label;  /* static: "Outbound heading" */
  char *value[OX_DIFFERENCES_MAX]; /* one a case; the rest NULL */
  bool differs;       /* the texts are not all the same */
} ox_difference_row;

/* Of what is given, the rows that differ; of what is flown, all. Given comes first. */
typedef struct {
  size_t columns;
  size_t count;
  ox_difference_row *rows;
} ox_differences;

/* columns is 2..OX_DIFFERENCES_MAX; flights[i] is that of cases[i]. count is 0 when memory is out.
 * Directions are magnetic. Freed with ox_differences_clear. */
ox_differences ox_differences_make(const ox_case *const *cases, const ox_flight *const *flights,
                                   size_t columns);
void ox_differences_clear(ox_differences *d);

/* The label of a case's field ("Inbound course"), or NULL for a key that is none. Static. */
const char *ox_differences_label(const char *key);

#endif
