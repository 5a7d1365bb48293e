/* As much of JSON Schema 2020-12 as data/lesson-schema.json uses, for the tests. A keyword that is
 * not known here is an error, never passed over. */
#ifndef OX_MINI_SCHEMA_H
#define OX_MINI_SCHEMA_H

#include <cJSON.h>
#include <stdbool.h>

typedef struct {
  const cJSON *root;
  const char *unknown; /* the first keyword that is not known, or NULL */
} mini_schema;

/* Whether the value is valid under a schema (a part of root). */
bool mini_schema_accepts(mini_schema *s, const cJSON *schema, const cJSON *value);
/* The schema that a "$ref" of the form "#/$defs/NAME" points to; NULL when there is none. */
const cJSON *mini_schema_follow(const mini_schema *s, const cJSON *schema);

#endif
