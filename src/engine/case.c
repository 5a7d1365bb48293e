/* The case: default, equality and the one check that every reader, input and engine call uses. */
#include "oxbow/case.h"

#include <math.h>
#include <string.h>

#include "oxbow/atmosphere.h"
#include "oxbow/fields.h"
#include "oxbow/mark.h"

ox_case ox_case_default(void) {
  ox_case c;
  memset(&c, 0, sizeof c);
  strcpy(c.name, N_("A hold"));
  strcpy(c.hold.fix, "FIX");
  c.hold.inbound_deg = 360;
  c.hold.turns = OX_TURNS_RIGHT;
  c.hold.altitude_ft = 5000;
  c.hold.efc_min = -1;
  c.hold.climb_ft_min = 500;
  c.arrival.fix_at_s = -1;
  c.arrival.heading_deg = 360;
  c.arrival.distance_nm = 5;
  c.aircraft.ias_kt = 100;
  c.aircraft.rate_deg_s = 3;
  c.aircraft.max_bank_deg = 30;
  c.technique.drift = OX_DRIFT_EXACT;
  c.technique.outbound = OX_OUTBOUND_EXACT;
  c.technique.intercept_deg = 30;
  c.technique.entry_s = 60;
  c.technique.lead_deg = 5;
  c.technique.circuits = 3;
  c.lost_radio.eta_min = -1;
  c.shown.efc_min = -1;
  return c;
}

static bool rows_equal(const ox_wind_row *a, const ox_wind_row *b) {
  return a->altitude_ft == b->altitude_ft && a->from_deg == b->from_deg && a->kt == b->kt &&
         a->north == b->north;
}

static bool changes_equal(const ox_wind_change *a, const ox_wind_change *b) {
  return a->at_min == b->at_min && a->from_deg == b->from_deg && a->kt == b->kt &&
         a->north == b->north;
}

bool ox_case_equal(const ox_case *a, const ox_case *b) {
  if (strcmp(a->name, b->name) != 0 || strcmp(a->hold.fix, b->hold.fix) != 0 ||
      strcmp(a->shown.fix, b->shown.fix) != 0)
    return false;
  if (a->lost_radio.eta_min != b->lost_radio.eta_min || a->shown.efc_min != b->shown.efc_min)
    return false;
  if (a->hold.efc_min != b->hold.efc_min || a->arrival.fix_at_s != b->arrival.fix_at_s ||
      a->hold.station.given != b->hold.station.given ||
       a->wind_count != b->wind_count ||
      a->wind_change_count != b->wind_change_count)
    return false;
  size_t count;
  const ox_field *fields = ox_fields(&count);
  for (size_t i = 0; i < count; i++)
    if (ox_field_get(&fields[i], a) != ox_field_get(&fields[i], b)) return false;
  for (int i = 0; i < a->wind_count && i < OX_WIND_ROWS_MAX; i++)
    if (!rows_equal(&a->wind[i], &b->wind[i])) return false;
  for (int i = 0; i < a->wind_change_count && i < OX_WIND_CHANGES_MAX; i++)
    if (!changes_equal(&a->wind_changes[i], &b->wind_changes[i])) return false;
  return true;
}

/* A number in figures without the C library's printf, whose point depends on the locale. Six
 * decimals at most, trailing zeros dropped; large numbers as 1e15. */
static void number_text(char *out, size_t bytes, double v) {
  char digits[40];
  size_t n = 0, at = 0;
  if (isnan(v) || isinf(v)) {
    const char *word = isnan(v) ? "not a number" : v > 0 ? "infinity" : "-infinity";
    strncpy(out, word, bytes - 1);
    out[bytes - 1] = '\0';
    return;
  }
  if (v < 0) out[at++] = '-';
  v = fabs(v);
  int exponent = 0;
  while (v >= 1e15) v /= 10, exponent++;
  double whole = floor(v), part = floor((v - whole) * 1e6 + 0.5);
  if (part >= 1e6) whole += 1, part = 0;
  do digits[n++] = (char)('0' + (int)fmod(whole, 10)), whole = floor(whole / 10);
  while (whole >= 1 && n < sizeof digits);
  while (n > 0 && at + 1 < bytes) out[at++] = digits[--n];
  if (part > 0 && at + 8 < bytes) {
    out[at++] = '.';
    for (double unit = 1e5; unit >= 1 && part > 0; unit /= 10) {
      int d = (int)floor(part / unit);
      out[at++] = (char)('0' + d);
      part -= d * unit;
    }
  }
  if (exponent > 0 && at + 5 < bytes) {
    out[at++] = 'e';
    if (exponent >= 100) out[at++] = (char)('0' + exponent / 100);
    if (exponent >= 10) out[at++] = (char)('0' + exponent / 10 % 10);
    out[at++] = (char)('0' + exponent % 10);
  }
  out[at] = '\0';
}

typedef struct {
  ox_fault *faults;
  size_t max, count;
} fault_list;

static void add_fault(fault_list *list, const char *key, double value, const char *allowed) {
  if (list->count < list->max) {
    ox_fault *f = &list->faults[list->count];
    strncpy(f->key, key, sizeof f->key - 1);
    f->key[sizeof f->key - 1] = '\0';
    number_text(f->value, sizeof f->value, value);
    f->allowed = allowed;
  }
  list->count++;
}

static void row_key(char *key, const char *list, int row, bool only, const char *field) {
  char *at = key + strlen(list);
  strcpy(key, list);
  if (!only) {
    *at++ = '[';
    if (row >= 10) *at++ = (char)('0' + row / 10);
    *at++ = (char)('0' + row % 10);
    *at++ = ']';
  }
  *at++ = '.';
  strcpy(at, field);
}

static void check_wind(const ox_case *c, fault_list *list) {
  if (c->wind_count < 0 || c->wind_count > OX_WIND_ROWS_MAX) {
    add_fault(list, "wind", c->wind_count, N_("a number of wind rows (0 to 12)"));
    return;
  }
  size_t count;
  const ox_field *fields = ox_wind_fields(&count);
  bool only = c->wind_count == 1;
  char key[48];
  for (int i = 0; i < c->wind_count; i++) {
    for (size_t f = 0; f < count; f++) {
      if (only && f == 0) continue; /* one row holds at every altitude */
      double value = ox_field_get(&fields[f], &c->wind[i]);
      if (ox_field_accepts(&fields[f], value)) continue;
      row_key(key, "wind", i, only, fields[f].key);
      add_fault(list, key, value, fields[f].allowed);
    }
    if (i > 0 && !(c->wind[i].altitude_ft > c->wind[i - 1].altitude_ft)) {
      row_key(key, "wind", i, false, "altitude_ft");
      add_fault(list, key, c->wind[i].altitude_ft, N_("above the altitude of the row before it"));
    }
  }
}

static void check_wind_changes(const ox_case *c, fault_list *list) {
  if (c->wind_change_count < 0 || c->wind_change_count > OX_WIND_CHANGES_MAX) {
    add_fault(list, "wind_changes", c->wind_change_count, N_("a number of wind changes (0 to 6)"));
    return;
  }
  size_t count;
  const ox_field *fields = ox_wind_change_fields(&count);
  char key[48];
  for (int i = 0; i < c->wind_change_count; i++) {
    const ox_wind_change *change = &c->wind_changes[i];
    for (size_t f = 0; f < count; f++) {
      double value = ox_field_get(&fields[f], change);
      if (ox_field_accepts(&fields[f], value)) continue;
      row_key(key, "wind_changes", i, false, fields[f].key);
      add_fault(list, key, value, fields[f].allowed);
    }
    if (i > 0 && !(change->at_min > change[-1].at_min)) {
      row_key(key, "wind_changes", i, false, "at_min");
      add_fault(list, key, change->at_min, N_("later than the change before it"));
    }
  }
}

static bool ends_in_array(const char *text, size_t bytes) {
  return memchr(text, '\0', bytes) != NULL;
}

/* Faults that lie between fields; asked only when the fields by themselves are sound. */
static void check_together(const ox_case *c, fault_list *list) {
  if (c->hold.leg_by == OX_LEG_BY_DISTANCE && c->hold.leg_nm == 0.0)
    add_fault(list, "hold.leg.nm", 0.0, N_("a leg length (0.5 to 60 NM)"));
  if (c->aircraft.ias_kt == 0.0 && c->aircraft.tas_kt == 0.0) {
    add_fault(list, "aircraft.ias_kt", 0.0, N_("an indicated airspeed (30 to 400 kt)"));
    return;
  }
  /* The true airspeed of one indicated airspeed is nearest to sound at the highest altitude. */
  double top_ft = c->hold.altitude_ft;
  if (c->hold.climb_to_ft != 0.0) top_ft = fmax(top_ft, c->hold.climb_to_ft);
  ox_air air = ox_air_at(top_ft, c->aircraft.isa_dev_c);
  double tas_kt = c->aircraft.tas_kt > 0.0
                      ? c->aircraft.tas_kt
                      : ox_tas_kt(c->aircraft.ias_kt, top_ft, c->aircraft.isa_dev_c);
  if (tas_kt >= air.sound_speed_kt) {
    bool by_tas = c->aircraft.tas_kt > 0.0;
    add_fault(list, by_tas ? "aircraft.tas_kt" : "aircraft.ias_kt",
              by_tas ? c->aircraft.tas_kt : c->aircraft.ias_kt,
              N_("below the speed of sound at this altitude"));
  }
}

static void check_minute(fault_list *list, const char *key, int minute) {
  if (minute < -1 || minute >= 24 * 60)
    add_fault(list, key, minute, N_("a time of day (00:00 to 23:59)"));
}

size_t ox_case_check(const ox_case *c, ox_fault *faults, size_t max) {
  fault_list list = {faults, faults ? max : 0, 0};
  if (!ends_in_array(c->name, sizeof c->name))
    add_fault(&list, "name", (double)sizeof c->name, N_("a name of at most 159 bytes"));
  if (!ends_in_array(c->hold.fix, sizeof c->hold.fix))
    add_fault(&list, "hold.fix", (double)sizeof c->hold.fix, N_("a name of at most 63 bytes"));
  if (!ends_in_array(c->shown.fix, sizeof c->shown.fix))
    add_fault(&list, "shown.fix", (double)sizeof c->shown.fix, N_("a name of at most 63 bytes"));
  size_t count;
  const ox_field *fields = ox_fields(&count);
  for (size_t i = 0; i < count; i++) {
    double value = ox_field_get(&fields[i], c);
    if (!ox_field_accepts(&fields[i], value))
      add_fault(&list, fields[i].key, value, fields[i].allowed);
  }
  check_minute(&list, "hold.efc", c->hold.efc_min);
  check_minute(&list, "lost_radio.eta", c->lost_radio.eta_min);
  check_minute(&list, "shown.efc", c->shown.efc_min);
  if (c->arrival.fix_at_s < -1 || c->arrival.fix_at_s >= 24 * 3600)
    add_fault(&list, "arrival.fix_at", c->arrival.fix_at_s,
              N_("a time of day (00:00:00 to 23:59:59)"));
  check_wind(c, &list);
  check_wind_changes(c, &list);
  if (list.count == 0) check_together(c, &list);
  return list.count;
}
