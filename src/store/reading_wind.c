/* The wind of a case: nothing, one object, or rows by altitude. */
#include <stdio.h>
#include <string.h>

#include "json.h"
#include "reading.h"

static void say_missing(ox_reading *r, const char *prefix, const char *key) {
  char sentence[120];
  snprintf(sentence, sizeof sentence, "is missing: %s is needed",
           ox_wind_field_by_key(key)->allowed);
  ox_reading_say(r, prefix, key, sentence);
}

/* One row. Speed and direction have no default: a wind that is half given is a slip, and a guess
 * would be drawn as if it were meant. A calm row needs no direction. False when refused. */
static bool read_row(ox_reading *r, const char *prefix, const cJSON *value, bool needs_altitude,
                     ox_wind_row *row) {
  if (!ox_reading_object(r, "", prefix, value)) return false;
  size_t faults = r->fault_count;
  bool ok = true;
  for (const cJSON *child = value->child; child; child = child->next) {
    const ox_field *field = ox_wind_field_by_key(child->string);
    if (!ox_reading_first(r, prefix, value, child))
      ok = false;
    else if (field)
      ok = ox_reading_field(r, prefix, field, row, child->string, child) && ok;
  }
  if (needs_altitude && !ox_json_member(value, "altitude_ft"))
    say_missing(r, prefix, "altitude_ft");
  const cJSON *kt = ox_json_member(value, "kt");
  if (!kt) say_missing(r, prefix, "kt");
  bool calm = cJSON_IsNumber(kt) && kt->valuedouble == 0.0;
  if (!calm && !ox_json_member(value, "from_deg")) say_missing(r, prefix, "from_deg");
  return ok && r->fault_count == faults;
}

/* The altitude of a row when it is a sound one, so that the order is judged also where something
 * else in the row was refused. */
static bool altitude_of(const cJSON *row, double *altitude_ft) {
  const cJSON *value = cJSON_IsObject(row) ? ox_json_member(row, "altitude_ft") : NULL;
  if (!cJSON_IsNumber(value)) return false;
  *altitude_ft = value->valuedouble;
  return ox_field_accepts(ox_wind_field_by_key("altitude_ft"), *altitude_ft);
}

static bool check_order(ox_reading *r, const char *prefix, const cJSON *row) {
  double low_ft, high_ft;
  if (!row->prev->next || !altitude_of(row->prev, &low_ft) || !altitude_of(row, &high_ft))
    return true;
  if (high_ft > low_ft) return true;
  ox_reading_refuse(r, prefix, "altitude_ft", ox_json_member(row, "altitude_ft"),
                    "above the altitude of the row before it");
  return false;
}

static void read_rows(ox_reading *r, const cJSON *value, ox_case *out) {
  int count = cJSON_GetArraySize(value);
  if (count < 1 || count > OX_WIND_ROWS_MAX) {
    char sentence[80];
    snprintf(sentence, sizeof sentence, "%d rows is not a number of wind rows (1 to 12)", count);
    ox_reading_say(r, "", "wind", sentence);
    return;
  }
  ox_wind_row rows[OX_WIND_ROWS_MAX] = {0};
  bool ok = true;
  int i = 0;
  for (const cJSON *item = value->child; item; item = item->next, i++) {
    char prefix[24];
    snprintf(prefix, sizeof prefix, "wind[%d]", i);
    ok = read_row(r, prefix, item, count > 1, &rows[i]) && ok;
    ok = check_order(r, prefix, item) && ok;
  }
  if (!ok) return;
  memcpy(out->wind, rows, sizeof rows);
  out->wind_count = count;
}

void ox_reading_wind(ox_reading *r, const cJSON *value, ox_case *out) {
  ox_wind_row row = {0};
  if (cJSON_IsNull(value)) return;
  if (cJSON_IsArray(value)) {
    read_rows(r, value, out);
  } else if (!cJSON_IsObject(value)) {
    ox_reading_refuse(r, "", "wind", value, "a wind: an object, a list of 1 to 12 rows, or null");
  } else if (read_row(r, "wind", value, false, &row)) {
    out->wind[0] = row;
    out->wind_count = 1;
  }
}
