/* One case from its JSON object: the keys of the table of fields by walking the object in the
 * order of the file, the others by hand, then what is missing, then what does not fit together. */
#include <stdio.h>
#include <string.h>

#include "json.h"
#include "oxbow/text.h"
#include "reading.h"

#define NAME_ALLOWED N_("a name of one line and at most 159 bytes")
#define FIX_ALLOWED N_("a name of one line and 1 to 63 bytes")
#define EFC_ALLOWED N_("a time of day (\"00:00\" to \"23:59\") or null")
#define FIX_AT_ALLOWED N_("a time of day (\"00:00\" to \"23:59:59\") or null")
#define STATION "hold.leg.station"
#define SHOWN_FIX_ALLOWED N_("a name of one line and at most 63 bytes")

static void read_fix(ox_reading *r, const cJSON *value, ox_case *out) {
  char fix[OX_FIX_NAME_BYTES];
  if (cJSON_IsObject(value))
    ox_reading_fix(r, value, out, r->fix);
  else if (cJSON_IsString(value) && ox_text_is_blank(value->valuestring))
    ox_reading_refuse(r, "", "hold.fix", value, FIX_ALLOWED);
  else if (ox_reading_line(r, "hold.fix", value, fix, sizeof fix, FIX_ALLOWED))
    strcpy(out->hold.fix, fix);
}

/* Two figures below a limit, or -1. */
static int two_figures(const char *at, int limit) {
  for (int i = 0; i < 2; i++)
    if (at[i] < '0' || at[i] > '9') return -1;
  int number = (at[0] - '0') * 10 + at[1] - '0';
  return number < limit ? number : -1;
}

/* Seconds after midnight of "HH:MM" or, where seconds may be given, "HH:MM:SS"; or -1. */
static int time_of_day_s(const cJSON *value, bool with_seconds) {
  const char *text = cJSON_IsString(value) ? value->valuestring : "";
  size_t length = strlen(text);
  if (length != 5 && !(with_seconds && length == 8)) return -1;
  int hours = two_figures(text, 24), minutes = two_figures(text + 3, 60), seconds = 0;
  bool ok = text[2] == ':';
  if (length == 8) {
    seconds = two_figures(text + 6, 60);
    ok = ok && text[5] == ':';
  }
  return ok && hours >= 0 && minutes >= 0 && seconds >= 0
             ? (hours * 60 + minutes) * 60 + seconds
             : -1;
}

/* A time to the minute; null is one that was not given. */
static void read_minute(ox_reading *r, const char *path, const cJSON *value, int *minute) {
  if (cJSON_IsNull(value)) return;
  int time_s = time_of_day_s(value, false);
  if (time_s < 0)
    ox_reading_refuse(r, "", path, value, EFC_ALLOWED);
  else
    *minute = time_s / 60;
}

static void read_fix_at(ox_reading *r, const cJSON *value, ox_case *out) {
  if (cJSON_IsNull(value)) return;
  int time_s = time_of_day_s(value, true);
  if (time_s < 0)
    ox_reading_refuse(r, "arrival", "fix_at", value, FIX_AT_ALLOWED);
  else
    out->arrival.fix_at_s = time_s;
}

static void read_members(ox_reading *r, const cJSON *object, const char *prefix, ox_case *out);
static void read_member(ox_reading *r, const char *path, const cJSON *value, ox_case *out);

static void read_section(ox_reading *r, const char *path, const cJSON *value, ox_case *out) {
  bool station = strcmp(path, STATION) == 0;
  /* No leg is the standard time, no station a distance over the ground. */
  if (cJSON_IsNull(value) && (station || strcmp(path, "hold.leg") == 0)) return;
  if (!ox_reading_object(r, "", path, value)) {
    ox_reading_mark_told(r, path);
    return;
  }
  if (station) out->hold.station.given = true;
  if (station && ox_reading_is_point(value)) {
    ox_reading_station(r, path, value, r->fix);
    const cJSON *limiting = ox_json_member(value, "limiting_radial_deg");
    if (limiting) read_member(r, STATION ".limiting_radial_deg", limiting, out);
    return;
  }
  read_members(r, value, path, out);
}

static void read_member(ox_reading *r, const char *path, const cJSON *value, ox_case *out) {
  const ox_field *field = ox_field_by_key(path);
  if (field) {
    size_t index = ox_reading_index(field);
    bool ok = ox_reading_field(r, "", field, out, path, value);
    if (index == OX_READING_FIELDS_MAX) return;
    r->seen[index] = !cJSON_IsNull(value);
    r->told[index] = !ok;
  } else if (strcmp(path, "name") == 0) {
    ox_reading_line(r, path, value, out->name, sizeof out->name, NAME_ALLOWED);
  } else if (strcmp(path, "hold.fix") == 0) {
    read_fix(r, value, out);
  } else if (strcmp(path, "hold.efc") == 0) {
    read_minute(r, path, value, &out->hold.efc_min);
  } else if (strcmp(path, "lost_radio.eta") == 0) {
    read_minute(r, path, value, &out->lost_radio.eta_min);
  } else if (strcmp(path, "shown.efc") == 0) {
    read_minute(r, path, value, &out->shown.efc_min);
  } else if (strcmp(path, "shown.fix") == 0) {
    ox_reading_line(r, path, value, out->shown.fix, sizeof out->shown.fix, SHOWN_FIX_ALLOWED);
  } else if (strcmp(path, "arrival.fix_at") == 0) {
    read_fix_at(r, value, out);
  } else if (strcmp(path, "arrival.present") == 0) {
    ox_reading_present(r, value, r->fix);
  } else if (strcmp(path, "wind") == 0) {
    ox_reading_wind(r, value, out);
  } else if (strcmp(path, "wind_changes") == 0) {
    ox_reading_wind_changes(r, value, out);
  } else if (strcmp(path, "ink") == 0) {
    ox_reading_ink(r, value);
  } else if (ox_key_is_section(path)) {
    read_section(r, path, value, out);
  }
}

/* The recursion follows the known sections, so it is as deep as they are. */
static void read_members(ox_reading *r, const cJSON *object, const char *prefix, ox_case *out) {
  char path[OX_KEY_PATH_BYTES];
  for (const cJSON *child = object->child; child; child = child->next)
    if (ox_reading_first(r, prefix, object, child) && !strchr(child->string, '.') &&
        ox_key_join(path, prefix, child->string))
      read_member(r, path, child, out);
}

static void say_missing(ox_reading *r, const char *key) {
  ox_reading_say_missing(r, "", key, ox_field_by_key(key)->allowed);
}

static void check_required(ox_reading *r, const char *key) {
  if (!ox_reading_was_seen(r, key) && !ox_reading_was_told(r, key)) say_missing(r, key);
}

/* A leg by distance needs its length; a length alone does not say that it is meant. */
static void check_leg(ox_reading *r, ox_case *out) {
  bool has_length = ox_reading_was_seen(r, "hold.leg.nm");
  if (out->hold.leg_nm != 0.0) check_required(r, "hold.leg.by");
  if (out->hold.leg_by != OX_LEG_BY_DISTANCE || out->hold.leg_nm != 0.0) return;
  if (!has_length && !ox_reading_was_told(r, "hold.leg.nm")) say_missing(r, "hold.leg.nm");
  if (has_length && !ox_reading_was_told(r, "hold.leg.nm")) return; /* 0: ox_case_check tells */
  out->hold.leg_by = OX_LEG_BY_TIME; /* already told: nothing to tell again */
}

/* A reading of DME can end an outbound leg only, and only one flown by distance. A station at the
 * fix lies in no direction. Nothing is said about what hangs on a key that was told already. */
static void check_station(ox_reading *r, const ox_case *out) {
  static const char by[] = "hold.leg.by", nm[] = STATION ".nm";
  if (!out->hold.station.given) return;
  bool by_is_open = ox_reading_was_told(r, by) ||
                    (!ox_reading_was_seen(r, by) && out->hold.leg_nm != 0.0);
  if (!by_is_open && !ox_reading_was_told(r, "hold.leg.end") &&
      (out->hold.leg_by != OX_LEG_BY_DISTANCE || out->hold.leg_end != OX_LEG_END_OUTBOUND))
    ox_reading_say(r, "", STATION,
                   _("a station goes only with a leg \"by\" \"distance\" whose \"end\" is "
                     "\"outbound\""));
  if (r->fix->station[0]) return; /* a point says where it is */
  check_required(r, nm);
  bool at_fix = ox_reading_was_seen(r, nm) && out->hold.station.nm == 0.0;
  if (!at_fix) check_required(r, STATION ".radial_deg");
}

/* Whether the station was taken whole; a newer lesson is shown also where it was not. */
static bool station_is_whole(const ox_reading *r, const ox_case *c) {
  static const char nm[] = STATION ".nm", radial[] = STATION ".radial_deg";
  if (r->fix->station[0]) return true;
  return ox_reading_was_seen(r, nm) && !ox_reading_was_told(r, nm) &&
         (ox_reading_was_seen(r, radial) || c->hold.station.nm == 0.0) &&
         !ox_reading_was_told(r, radial) && !ox_reading_was_told(r, STATION ".elevation_ft");
}

/* What plays no part in the case has its default in memory, and is left out on writing. */
static void settle(const ox_reading *r, ox_case *out) {
  ox_case standard = ox_case_default();
  if (!station_is_whole(r, out) || ox_key_is_idle(out, STATION))
    out->hold.station = standard.hold.station;
  if (!out->hold.station.given) r->fix->station[0] = '\0';
  static const char *const keys[] = {"hold.climb_ft_min", "technique.lead_deg",
                                     "technique.at_radial"};
  for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
    const ox_field *field = ox_field_by_key(keys[i]);
    if (ox_key_is_idle(out, keys[i])) ox_field_set(field, out, ox_field_get(field, &standard));
  }
}

/* One of the two airspeeds. The one that is not given is 0; where neither could be read the
 * default stands in, so that the checks that follow have something to work with. */
static void check_airspeed(ox_reading *r, ox_case *out) {
  if (out->aircraft.ias_kt > 0.0 || out->aircraft.tas_kt > 0.0) return;
  static const char ias[] = "aircraft.ias_kt", tas[] = "aircraft.tas_kt";
  bool told = ox_reading_was_told(r, ias) || ox_reading_was_told(r, tas);
  bool seen = ox_reading_was_seen(r, ias) || ox_reading_was_seen(r, tas);
  if (!told && seen) return; /* a 0: ox_case_check tells */
  if (!told)
    ox_reading_say(r, "", ias,
                   _("is missing: an indicated airspeed (30 to 400 kt) is needed, or a true one in "
                     "aircraft.tas_kt"));
  out->aircraft.ias_kt = ox_case_default().aircraft.ias_kt;
}

/* Faults that lie between keys. An airspeed is judged with the altitude and the temperature, so
 * where one of those was refused the verdict would be on a default. */
static void check_together(ox_reading *r, ox_case *out) {
  ox_fault fault;
  bool dubious = ox_reading_was_told(r, "hold.altitude_ft") ||
                 ox_reading_was_told(r, "hold.climb_to_ft") ||
                 ox_reading_was_told(r, "aircraft.isa_dev_c") ||
                 ox_reading_was_told(r, "aircraft.ias_kt") ||
                 ox_reading_was_told(r, "aircraft.tas_kt");
  ox_case standard = ox_case_default();
  for (int guard = 0; guard < 4 && ox_case_check(out, &fault, 1) > 0; guard++) {
    bool airspeed = ox_key_is_within(fault.key, "aircraft");
    if (!(dubious && airspeed) && !ox_reading_was_told(r, fault.key))
      ox_reading_say_fault(r, &fault);
    /* Mended, so that the next round finds the next fault. */
    if (airspeed) {
      out->aircraft = standard.aircraft;
      out->hold.altitude_ft = standard.hold.altitude_ft;
      out->hold.climb_to_ft = standard.hold.climb_to_ft;
    } else {
      out->hold.leg_by = standard.hold.leg_by;
    }
  }
  if (ox_case_check(out, NULL, 0) > 0) *out = standard;
}

/* The name is needed before the walk, for the messages; NULL when there is none to go by. */
static const char *name_of(const cJSON *value) {
  const cJSON *name = ox_json_member(value, "name");
  if (!cJSON_IsString(name) || strlen(name->valuestring) >= OX_CASE_NAME_BYTES) return NULL;
  return ox_text_is_blank(name->valuestring) ? NULL : name->valuestring;
}

void ox_reading_enter(ox_reading *r, const cJSON *value, size_t number) {
  r->in_case = true;
  r->case_number = number;
  r->case_name = name_of(value);
}

void ox_reading_leave(ox_reading *r) {
  r->in_case = false;
  r->case_name = NULL;
}

void ox_reading_case(ox_reading *r, const cJSON *value, size_t number, ox_case *out,
                     ox_fix *fix) {
  ox_reading_enter(r, value, number);
  r->fix = fix;
  *fix = ox_fix_named();
  memset(r->seen, 0, sizeof r->seen);
  memset(r->told, 0, sizeof r->told);
  *out = ox_case_default();
  snprintf(out->name, sizeof out->name, _("Case %zu"), number);
  if (ox_reading_object(r, "", "", value)) {
    out->aircraft.ias_kt = 0.0;
    read_members(r, value, "", out);
    check_required(r, "hold.inbound_deg");
    check_required(r, "arrival.heading_deg");
    check_airspeed(r, out);
    check_station(r, out);
    check_leg(r, out);
    check_together(r, out);
    settle(r, out);
  }
  ox_reading_leave(r);
}
