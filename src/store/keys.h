/* Which keys format 1 knows, by their path: shared by the reader, which looks them up, and the
 * writer, which keeps all others. */
#ifndef OX_STORE_KEYS_H
#define OX_STORE_KEYS_H

#include <stdbool.h>
#include <stddef.h>

#include "oxbow/fields.h"

#define OX_KEY_PATH_BYTES 48

/* Where a path "hold.turns" is looked up. */
typedef enum {
  OX_KEYS_TOP,    /* the lesson itself */
  OX_KEYS_CASE,   /* a case; paths with dots */
  OX_KEYS_WIND,   /* one row of wind */
  OX_KEYS_CHANGE, /* one change of wind */
  OX_KEYS_INK,    /* the ink of a case */
  OX_KEYS_POINT,  /* a point, a fix that is an object */
} ox_key_table;

/* An object that holds further keys ("hold", "hold.leg", "technique"). */
bool ox_key_is_section(const char *path);
/* Any key the format knows, sections included. */
bool ox_key_is_known(ox_key_table table, const char *path);
/* "PREFIX.KEY" or, with an empty prefix, "KEY". False when it does not fit, and then no known
 * key has this path. */
bool ox_key_join(char path[OX_KEY_PATH_BYTES], const char *prefix, const char *key);
/* Whether the field stands directly or deeper in a section. */
bool ox_key_is_within(const char *path, const char *section);
/* Whether what the case has at the path plays no part in it, so that it is neither kept on reading
 * nor written: a station (the section or a key in it) without an outbound leg that its DME could
 * end, and a rate of climb in level flight. */
bool ox_key_is_idle(const ox_case *c, const char *path);
/* A field of a row, or of a change, of wind by its key, or NULL. */
const ox_field *ox_wind_field_by_key(const char *key);
const ox_field *ox_wind_change_field_by_key(const char *key);

#endif
