/* The keys of the format: those of the table of fields, and the few that are not scalars. */
#include "keys.h"

#include "oxbow/fix.h"

#include <stdio.h>
#include <string.h>

static bool is_among(const char *const *words, const char *word) {
  for (; *words; words++)
    if (strcmp(*words, word) == 0) return true;
  return false;
}

static const char *const top_keys[] = {
    "format", "version", "title", "points", "route", "missed_approach_point", "cases", NULL};
static const char *const ink_keys[] = {"strokes", NULL};
static const char *const point_keys[] = {"name", "from", "and", "ahead_nm", "ahead_s",
                                         "limiting_radial_deg", NULL};
static const char *const case_keys[] = {
    "name", "hold.fix",     "hold.efc", "arrival.fix_at",  "arrival.present", "wind",
    "wind_changes", "ink", "lost_radio.eta", "shown.fix", "shown.efc", NULL};

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

static const ox_field *by_key(const ox_field *fields, size_t count, const char *key) {
  for (size_t i = 0; i < count; i++)
    if (strcmp(fields[i].key, key) == 0) return &fields[i];
  return NULL;
}

const ox_field *ox_wind_field_by_key(const char *key) {
  size_t count;
  const ox_field *fields = ox_wind_fields(&count);
  return by_key(fields, count, key);
}

const ox_field *ox_wind_change_field_by_key(const char *key) {
  size_t count;
  const ox_field *fields = ox_wind_change_fields(&count);
  return by_key(fields, count, key);
}

bool ox_key_is_known(ox_key_table table, const char *path) {
  switch (table) {
    case OX_KEYS_TOP: return is_among(top_keys, path);
    case OX_KEYS_WIND: return ox_wind_field_by_key(path) != NULL;
    case OX_KEYS_CHANGE: return ox_wind_change_field_by_key(path) != NULL;
    case OX_KEYS_INK: return is_among(ink_keys, path);
    case OX_KEYS_POINT: return is_among(point_keys, path) || ox_point_field_by_key(path) != NULL;
    case OX_KEYS_CASE: break;
  }
  /* Of a station that was a point: what would make it one again. */
  static const char station[] = "hold.leg.station";
  if (ox_key_is_within(path, station)) {
    const char *key = path + sizeof station;
    if (strcmp(key, "from") == 0 || strcmp(key, "and") == 0 || ox_point_field_by_key(key))
      return true;
  }
  return ox_field_by_key(path) || is_among(case_keys, path) || ox_key_is_section(path);
}

bool ox_key_is_idle(const ox_case *c, const char *path) {
  static const char station[] = "hold.leg.station";
  if (strcmp(path, "hold.climb_ft_min") == 0) return c->hold.climb_to_ft == 0.0;
  if (strcmp(path, "technique.lead_deg") == 0) return c->technique.lead != OX_LEAD_DEGREES;
  if (strcmp(path, "technique.at_radial") == 0)
    return !c->hold.station.given || c->hold.station.limiting_radial_deg == 0.0;
  if (strcmp(path, station) != 0 && !ox_key_is_within(path, station)) return false;
  return !c->hold.station.given || c->hold.leg_by != OX_LEG_BY_DISTANCE ||
         c->hold.leg_end != OX_LEG_END_OUTBOUND;
}

bool ox_key_join(char path[OX_KEY_PATH_BYTES], const char *prefix, const char *key) {
  int length = snprintf(path, OX_KEY_PATH_BYTES, "%s%s%s", prefix, *prefix ? "." : "", key);
  return length >= 0 && length < OX_KEY_PATH_BYTES;
}
