/* The inputs of the window: which fields of a case stand in the panel, in which group and in which
 * form they are typed. Pure values; ranges and choices come from oxbow/fields.h. */
#ifndef OX_INPUT_H
#define OX_INPUT_H

#include <stdbool.h>
#include <stddef.h>

#include "ox_number_text.h"
#include "oxbow/fields.h"
#include "oxbow/flight.h"

typedef enum {
  OX_GROUP_CASE, OX_GROUP_HOLD, OX_GROUP_ARRIVAL, OX_GROUP_AIRCRAFT, OX_GROUP_WIND,
  OX_GROUP_VARIATION, OX_GROUP_TECHNIQUE, OX_GROUP_COUNT
} ox_input_group;

typedef enum {
  OX_SOURCE_FIELD, /* key is in ox_fields */
  OX_SOURCE_WIND,  /* key is in ox_wind_fields: of the one row */
  OX_SOURCE_EFC,
  OX_SOURCE_FIX_AT,  /* when the fix is crossed first */
  OX_SOURCE_STATION, /* whether there is a DME station: 1 or 0 */
  OX_SOURCE_PRESET,  /* index of a preset; their number stands for a technique of one's own */
  OX_SOURCE_TEXT,  /* "name" or "hold.fix" */
} ox_input_source;

typedef struct {
  ox_input_group group;
  ox_input_source source;
  const char *key;   /* unique: "wind.from_deg" for the wind */
  const char *label; /* with a mnemonic */
  const char *tip;
  ox_number_form form;
  const char *unit, *units; /* as in ox_number_style */
  int decimals;
  double step, page;
} ox_input;

/* In reading order. Static. */
const ox_input *ox_inputs(size_t *count);
const ox_input *ox_input_by_key(const char *key);

/* The field behind an input; NULL for those that are none of the table's. */
const ox_field *ox_input_field(const ox_input *input);

/* The value in a case (not for texts). Calm wind reads as 360 true, 0 kt. */
double ox_input_get(const ox_input *input, const ox_case *c);
/* Puts a value in, with what has to go with it: a leg by distance gets a length when it has none,
 * calm wind gets its row. No check. */
void ox_input_apply(const ox_input *input, ox_case *c, double value);

/* Where a text stands in a case, and its room in bytes. */
char *ox_input_text(const ox_input *input, ox_case *c, size_t *bytes);

/* Whether the input means anything in this case: leg time or leg length, one wind or rows. */
bool ox_input_shown(const ox_input *input, const ox_case *c);
/* Whether it can be given as the others stand: a rate of climb needs an altitude to climb to. */
bool ox_input_sensitive(const ox_input *input, const ox_case *c);

/* What an empty field says where nothing takes the value's place ("none", "level"); or NULL. And
 * the value that its first step gives. Static. */
const char *ox_input_absent(const ox_input *input, const ox_case *c, double *first);

/* For an input left empty: the value in effect. False when there is none. */
bool ox_input_in_effect(const ox_input *input, const ox_case *c, const ox_setup *setup,
                        double *value);

#endif
