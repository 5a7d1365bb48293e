/* The table of a case's fields: the one place where the key, range, unit and choices of each
 * input stand. The checker, the lesson reader and writer and the window's inputs all walk it. */
#ifndef OXBOW_FIELDS_H
#define OXBOW_FIELDS_H

#include "oxbow/case.h"

typedef enum { OX_FIELD_NUMBER, OX_FIELD_WHOLE, OX_FIELD_CHOICE } ox_field_kind;

typedef struct {
  const char *key; /* as in a lesson file, with a dot: "hold.inbound_deg" */
  ox_field_kind kind;
  size_t offset; /* in ox_case: a double, an int or an enum */
  double min, max;
  bool zero_is_absent; /* 0 means "not given" and is accepted besides min..max */
  const char *allowed; /* the phrase after "is not" */
  const char *const *choices; /* for a choice: the words, NULL-terminated, in enum order */
} ox_field;

/* All scalar fields of a case but the wind's rows; *count is set. Static. */
const ox_field *ox_fields(size_t *count);
/* The fields of one wind row: keys "altitude_ft", "from_deg", "kt", "north"; offsets are in
 * ox_wind_row. Static. */
const ox_field *ox_wind_fields(size_t *count);
/* The fields of one wind change: "at_min", "from_deg", "kt", "north"; offsets are in
 * ox_wind_change. Static. */
const ox_field *ox_wind_change_fields(size_t *count);
/* By key, or NULL. */
const ox_field *ox_field_by_key(const char *key);

/* Value of a field as a number (a choice gives its index). base is the struct that the offsets
 * are in. Setting does no check. */
double ox_field_get(const ox_field *field, const void *base);
void ox_field_set(const ox_field *field, void *base, double value);
/* Whether a number is acceptable for the field (finite, in range, whole where it must be). */
bool ox_field_accepts(const ox_field *field, double value);

#endif
