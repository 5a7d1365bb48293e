/* JSON text to a cJSON tree and back, independent of the process locale. */
#ifndef OX_STORE_JSON_H
#define OX_STORE_JSON_H

#include <cJSON.h>
#include <stdbool.h>
#include <stddef.h>

#include "json_scan.h"
#include "text.h"

#define OX_JSON_NUMBER_TEXT_BYTES 32
#define OX_JSON_COLUMNS 100

/* The tree, freed with cJSON_Delete; NULL when the text is refused (*fault says why) or memory is
 * out (fault->sentence is empty). A number whose shortest form is not the one it was written in
 * keeps the written form in valuestring, so that what is only passed through stays as it was. */
cJSON *ox_json_parse(const char *bytes, size_t length, ox_json_fault *fault);

/* Pretty text with a closing newline: two spaces a level; an object or array that fits within
 * OX_JSON_COLUMNS stands on one line, otherwise one member a line;
 * numbers alone fill their lines. */
void ox_json_print(ox_growing *out, const cJSON *tree);

/* A value for a message: on one line, cut to about `columns` characters with "…". */
void ox_json_print_short(ox_growing *out, const cJSON *value, size_t columns);

/* The shortest text of 15, 16 or 17 digits that reads back as the same double; integers without a
 * point, never -0, "null" for what is not finite. */
void ox_json_number_text(char out[OX_JSON_NUMBER_TEXT_BYTES], double value);

/* The member with exactly this key (the first), or NULL. */
cJSON *ox_json_member(const cJSON *object, const char *key);

#endif
