/* The keys of the format: those of the table of fields, and the few that are not scalars. */
#include "keys.h"

#include <stdio.h>
#include <string.h>

static bool is_among(const char *const *words, const char *word) {
  for (; *words; words++)
    if (strcmp(*words, word) == 0) return true;
  return false;
}

static const char *const top_keys[] = {"format", "version", "title", "cases", NULL};
static const char *const case_keys[] = {"name", "hold.fix", "hold.efc", "wind", NULL};

bool ox_key_is_within(const char *path, const char *section) {
  size_t length = strlen(section);
  return strncmp(path, section, length) == 0 && path[length] == '.';
}

bool ox_key_is_section(const char *path) {
  size_t count;
  const ox_field *fields = ox_fields(&count);
  for (size_t i = 0; i < count; i++)
    if (ox_key_is_within(fields[i].key, path)) return true;
  return false;
}

const ox_field *ox_wind_field_by_key(const char *key) {
  size_t count;
  const ox_field *fields = ox_wind_fields(&count);
  for (size_t i = 0; i < count; i++)
    if (strcmp(fields[i].key, key) == 0) return &fields[i];
  return NULL;
}

bool ox_key_is_known(ox_key_table table, const char *path) {
  switch (table) {
    case OX_KEYS_TOP: return is_among(top_keys, path);
    case OX_KEYS_WIND: return ox_wind_field_by_key(path) != NULL;
    case OX_KEYS_CASE: break;
  }
  return ox_field_by_key(path) || is_among(case_keys, path) || ox_key_is_section(path);
}

bool ox_key_join(char path[OX_KEY_PATH_BYTES], const char *prefix, const char *key) {
  int length = snprintf(path, OX_KEY_PATH_BYTES, "%s%s%s", prefix, *prefix ? "." : "", key);
  return length >= 0 && length < OX_KEY_PATH_BYTES;
}
