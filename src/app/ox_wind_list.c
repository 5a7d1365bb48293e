/* The rows of wind of a case as lists. */
#include "ox_wind_list.h"

#include <string.h>

#define STEP_FT 3000.0
#define STEP_MIN 2.0

const ox_field *ox_wind_list_fields(ox_wind_rows_kind kind) {
  size_t count;
  const ox_field *fields =
      kind == OX_WIND_BY_ALTITUDE ? ox_wind_fields(&count) : ox_wind_change_fields(&count);
  g_assert(count == OX_WIND_LIST_FIELDS);
  return fields;
}

int ox_wind_list_count(const ox_case *c, ox_wind_rows_kind kind) {
  if (kind == OX_WIND_BY_MINUTE) return c->wind_change_count;
  return c->wind_count > 1 ? c->wind_count : 0;
}

double ox_wind_list_get(const ox_case *c, ox_wind_rows_kind kind, int row, int field) {
  const void *base = kind == OX_WIND_BY_ALTITUDE ? (const void *)&c->wind[row]
                                                 : (const void *)&c->wind_changes[row];
  return ox_field_get(&ox_wind_list_fields(kind)[field], base);
}

void ox_wind_list_set(ox_case *c, ox_wind_rows_kind kind, int row, int field, double value) {
  void *base =
      kind == OX_WIND_BY_ALTITUDE ? (void *)&c->wind[row] : (void *)&c->wind_changes[row];
  ox_field_set(&ox_wind_list_fields(kind)[field], base, value);
}

/* A step above the last, or half of what is left; not a hair of it. */
static bool next_place(double last, double step, double max, double *next) {
  *next = last + step <= max ? last + step : 0.5 * (last + max);
  return *next - last >= 0.01 * step;
}

static bool add_altitude(ox_case *c) {
  ox_wind_row calm = {c->hold.altitude_ft, 360, 0, OX_NORTH_TRUE};
  if (c->wind_count >= OX_WIND_ROWS_MAX) return false;
  if (c->wind_count == 0) c->wind[c->wind_count++] = calm;
  if (c->wind_count == 1) c->wind[0].altitude_ft = c->hold.altitude_ft;
  ox_wind_row row = c->wind[c->wind_count - 1];
  double max_ft = ox_wind_list_fields(OX_WIND_BY_ALTITUDE)[0].max;
  if (!next_place(row.altitude_ft, STEP_FT, max_ft, &row.altitude_ft)) return false;
  c->wind[c->wind_count++] = row;
  return true;
}

static bool add_change(ox_case *c) {
  ox_wind_change change = {0, 360, 0, OX_NORTH_TRUE};
  if (c->wind_change_count >= OX_WIND_CHANGES_MAX) return false;
  if (c->wind_change_count > 0) {
    change = c->wind_changes[c->wind_change_count - 1];
  } else if (c->wind_count > 0) {
    change.from_deg = c->wind[0].from_deg;
    change.kt = c->wind[0].kt;
    change.north = c->wind[0].north;
  }
  double max_min = ox_wind_list_fields(OX_WIND_BY_MINUTE)[0].max;
  if (!next_place(change.at_min, STEP_MIN, max_min, &change.at_min)) return false;
  c->wind_changes[c->wind_change_count++] = change;
  return true;
}

bool ox_wind_list_add(ox_case *c, ox_wind_rows_kind kind) {
  return kind == OX_WIND_BY_ALTITUDE ? add_altitude(c) : add_change(c);
}

void ox_wind_list_remove(ox_case *c, ox_wind_rows_kind kind, int row) {
  if (kind == OX_WIND_BY_ALTITUDE) {
    int after = c->wind_count - row - 1;
    memmove(&c->wind[row], &c->wind[row + 1], (size_t)after * sizeof c->wind[0]);
    c->wind_count--;
    if (c->wind_count == 1) c->wind[0].altitude_ft = 0;
  } else {
    int after = c->wind_change_count - row - 1;
    memmove(&c->wind_changes[row], &c->wind_changes[row + 1],
            (size_t)after * sizeof c->wind_changes[0]);
    c->wind_change_count--;
  }
}
