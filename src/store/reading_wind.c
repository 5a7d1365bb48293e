/* The wind of a case (nothing, one object, or rows by altitude) and its changes (nothing, or a list
 * by time): lists of objects of four keys, one of which ascends from one to the next. */
#include <stdio.h>
#include <string.h>

#include "json.h"
#include "oxbow/text.h"
#include "reading.h"

/* What tells the two lists apart. */
typedef struct {
  const char *key; /* of the list */
  const ox_field *(*field_by_key)(const char *key);
  const char *ascending;         /* the key that ascends */
  const char *ascending_allowed; /* what follows "is not" where it does not */
  int count_max;
} row_kind;

static const row_kind altitude_rows = {
    .key = "wind",
    .field_by_key = ox_wind_field_by_key,
    .ascending = "altitude_ft",
    .ascending_allowed = N_("above the altitude of the row before it"),
    .count_max = OX_WIND_ROWS_MAX,
};
static const row_kind changes = {
    .key = "wind_changes",
    .field_by_key = ox_wind_change_field_by_key,
    .ascending = "at_min",
    .ascending_allowed = N_("later than the change before it"),
    .count_max = OX_WIND_CHANGES_MAX,
};

static void say_missing(ox_reading *r, const row_kind *kind, const char *prefix,
                        const char *key) {
  ox_reading_say_missing(r, prefix, key, kind->field_by_key(key)->allowed);
}

/* One row. Speed and direction have no default: a wind that is half given is a slip, and a guess
 * would be drawn as if it were meant. A calm row needs no direction. False when refused. */
static bool read_row(ox_reading *r, const row_kind *kind, const char *prefix, const cJSON *value,
                     bool needs_ascending, void *row) {
  if (!ox_reading_object(r, "", prefix, value)) return false;
  size_t faults = r->fault_count;
  bool ok = true;
  for (const cJSON *child = value->child; child; child = child->next) {
    const ox_field *field = kind->field_by_key(child->string);
    if (!ox_reading_first(r, prefix, value, child))
      ok = false;
    else if (field)
      ok = ox_reading_field(r, prefix, field, row, child->string, child) && ok;
  }
  if (needs_ascending && !ox_json_member(value, kind->ascending))
    say_missing(r, kind, prefix, kind->ascending);
  const cJSON *kt = ox_json_member(value, "kt");
  if (!kt) say_missing(r, kind, prefix, "kt");
  bool calm = cJSON_IsNumber(kt) && kt->valuedouble == 0.0;
  if (!calm && !ox_json_member(value, "from_deg")) say_missing(r, kind, prefix, "from_deg");
  return ok && r->fault_count == faults;
}

/* The value that ascends when it is a sound one, so that the order is judged also where something
 * else in the row was refused. */
static bool ascending_of(const row_kind *kind, const cJSON *row, double *number) {
  const cJSON *value = cJSON_IsObject(row) ? ox_json_member(row, kind->ascending) : NULL;
  if (!cJSON_IsNumber(value)) return false;
  *number = value->valuedouble;
  return ox_field_accepts(kind->field_by_key(kind->ascending), *number);
}

static bool check_order(ox_reading *r, const row_kind *kind, const char *prefix,
                        const cJSON *row) {
  double before, here;
  if (!row->prev->next || !ascending_of(kind, row->prev, &before) ||
      !ascending_of(kind, row, &here))
    return true;
  if (here > before) return true;
  ox_reading_refuse(r, prefix, kind->ascending, ox_json_member(row, kind->ascending),
                    kind->ascending_allowed);
  return false;
}

static bool count_is_allowed(ox_reading *r, const row_kind *kind, int count) {
  char sentence[OX_READING_SENTENCE_BYTES];
  if (count >= 1 && count <= kind->count_max) return true;
  snprintf(sentence, sizeof sentence,
           kind == &changes ? _("%d changes is not a number of wind changes (1 to %d)")
                            : _("%d rows is not a number of wind rows (1 to %d)"),
           count, kind->count_max);
  ox_reading_say(r, "", kind->key, sentence);
  return false;
}

/* The rows of a list whose length is allowed into an array of items of row_bytes. */
static bool read_rows(ox_reading *r, const row_kind *kind, const cJSON *list,
                      bool needs_ascending, void *rows, size_t row_bytes) {
  bool ok = true;
  int i = 0;
  for (const cJSON *item = list->child; item; item = item->next, i++) {
    char prefix[32];
    snprintf(prefix, sizeof prefix, "%s[%d]", kind->key, i);
    void *row = (char *)rows + (size_t)i * row_bytes;
    ok = read_row(r, kind, prefix, item, needs_ascending, row) && ok;
    ok = check_order(r, kind, prefix, item) && ok;
  }
  return ok;
}

static void read_altitude_rows(ox_reading *r, const cJSON *list, ox_case *out) {
  ox_wind_row rows[OX_WIND_ROWS_MAX] = {0};
  int count = cJSON_GetArraySize(list);
  if (!count_is_allowed(r, &altitude_rows, count) ||
      !read_rows(r, &altitude_rows, list, count > 1, rows, sizeof *rows))
    return;
  memcpy(out->wind, rows, sizeof rows);
  out->wind_count = count;
}

void ox_reading_wind(ox_reading *r, const cJSON *value, ox_case *out) {
  ox_wind_row row = {0};
  if (cJSON_IsNull(value)) return;
  if (cJSON_IsArray(value)) {
    read_altitude_rows(r, value, out);
  } else if (!cJSON_IsObject(value)) {
    ox_reading_refuse(r, "", "wind", value,
                      N_("a wind: an object, a list of 1 to 12 rows, or null"));
  } else if (read_row(r, &altitude_rows, "wind", value, false, &row)) {
    out->wind[0] = row;
    out->wind_count = 1;
  }
}

void ox_reading_wind_changes(ox_reading *r, const cJSON *value, ox_case *out) {
  ox_wind_change rows[OX_WIND_CHANGES_MAX] = {0};
  if (cJSON_IsNull(value)) return;
  if (!cJSON_IsArray(value)) {
    ox_reading_refuse(r, "", changes.key, value, N_("a list of 1 to 6 changes of wind, or null"));
    return;
  }
  int count = cJSON_GetArraySize(value);
  if (!count_is_allowed(r, &changes, count) ||
      !read_rows(r, &changes, value, true, rows, sizeof *rows))
    return;
  memcpy(out->wind_changes, rows, sizeof rows);
  out->wind_change_count = count;
}
