/* Lesson to text: a tree in the key order of the format, every key written out, and after the
 * known keys of each object those that came with the file and are not known here. */
#include <stdio.h>
#include <string.h>

#include "json.h"
#include "writing.h"

static cJSON *add(cJSON *object, const char *key, cJSON *item, bool *failed) {
  bool added =
      item && !*failed &&
      (key ? cJSON_AddItemToObject(object, key, item) : cJSON_AddItemToArray(object, item));
  if (added) return item;
  cJSON_Delete(item);
  *failed = true;
  return NULL;
}

static void add_text(cJSON *object, const char *key, const char *text, size_t bytes, bool *failed) {
  char line[OX_LESSON_TITLE_BYTES];
  ox_text_line_copy(line, bytes < sizeof line ? bytes : sizeof line, text, bytes);
  add(object, key, cJSON_CreateString(line), failed);
}

/* The field as JSON; NULL with *omit set when the key is better left out. */
static cJSON *field_item(const ox_field *field, const void *base, bool *omit) {
  double value = ox_field_get(field, base);
  *omit = false;
  if (field->kind == OX_FIELD_CHOICE)
    return ox_field_accepts(field, value) ? cJSON_CreateString(field->choices[(int)value])
                                          : cJSON_CreateNull();
  if (field->zero_is_absent && value == 0.0) {
    *omit = strcmp(field->key, "hold.limit_kias") != 0;
    return *omit ? NULL : cJSON_CreateNull();
  }
  return cJSON_CreateNumber(value); /* what is not finite prints as null */
}

/* The object of a path's section ("hold.leg" of "hold.leg.s"), made when it is not there yet;
 * *key is what stands after the last dot. */
static cJSON *section_of(cJSON *object, const char *path, const char **key, bool *failed) {
  const char *dot;
  while (object && (dot = strchr(path, '.'))) {
    char name[OX_KEY_PATH_BYTES];
    size_t length = (size_t)(dot - path);
    memcpy(name, path, length);
    name[length] = '\0';
    cJSON *inner = ox_json_member(object, name);
    object = inner ? inner : add(object, name, cJSON_CreateObject(), failed);
    path = dot + 1;
  }
  *key = path;
  return object;
}

/* The standard leg is a leg that is not there; the end of a leg matters with a distance only. */
static bool leg_key_is_idle(const ox_case *c, const char *path) {
  bool by_time = c->hold.leg_by == OX_LEG_BY_TIME;
  bool end = c->hold.leg_end == OX_LEG_END_OUTBOUND;
  if (strcmp(path, "hold.leg.end") == 0) return by_time && end;
  if (strcmp(path, "hold.leg.by") == 0)
    return by_time && end && c->hold.leg_s == 0.0 && c->hold.leg_nm == 0.0;
  return false;
}

/* Choices of the optional sections, which stand there only when they say something. */
static bool choice_is_idle(const ox_case *c, const ox_field *field) {
  static const char *const sections[] = {"fuel", "lost_radio", "shown"};
  if (field->kind != OX_FIELD_CHOICE || ox_field_get(field, c) != 0.0) return false;
  if (strcmp(field->key, "fuel.unit") == 0)
    return c->fuel.on_board == 0.0 && c->fuel.flow_h == 0.0 && c->fuel.alternate == 0.0 &&
           c->fuel.reserve == 0.0;
  if (strcmp(field->key, "shown.course_is") == 0) return c->shown.course_deg == 0.0;
  for (size_t i = 0; i < sizeof sections / sizeof *sections; i++)
    if (ox_key_is_within(field->key, sections[i])) return true;
  return false;
}

cJSON *ox_writing_add(ox_writing *w, cJSON *object, const char *key, cJSON *item) {
  return add(object, key, item, &w->failed);
}

void ox_writing_add_text(ox_writing *w, cJSON *object, const char *key, const char *text,
                         size_t bytes) {
  add_text(object, key, text, bytes, &w->failed);
}

static void add_wind(cJSON *to, const ox_case *c, const cJSON *kept, bool *failed);
static void add_wind_changes(cJSON *to, const ox_case *c, const cJSON *kept, bool *failed);

static const cJSON *kept_section(const cJSON *kept, const char *path) {
  const cJSON *section = cJSON_IsObject(kept) ? ox_json_member(kept, path) : NULL;
  return cJSON_IsObject(section) ? section : NULL;
}

static void add_station(ox_writing *w, cJSON *to, const ox_fix *fix, const cJSON *kept) {
  const char *key;
  const cJSON *kept_leg = kept_section(kept_section(kept, "hold"), "leg");
  cJSON *leg = section_of(to, "hold.leg.station", &key, &w->failed);
  if (leg && !ox_json_member(leg, "station")) ox_writing_station(w, leg, fix, kept_leg);
}

static void add_fields(ox_writing *w, cJSON *to, const ox_lesson_case *from) {
  const ox_case *c = &from->c;
  const cJSON *kept = from->kept;
  bool *failed = &w->failed;
  size_t count;
  const ox_field *fields = ox_fields(&count);
  bool wind_added = false;
  for (size_t i = 0; i < count && !*failed; i++) {
    const char *path = fields[i].key, *key;
    bool omit;
    if (!wind_added && !strchr(path, '.')) { /* after the aircraft, before the variation */
      add_wind(to, c, kept, failed);
      add_wind_changes(to, c, kept, failed);
      wind_added = true;
    }
    if (leg_key_is_idle(c, path) || ox_key_is_idle(c, path) || choice_is_idle(c, &fields[i]))
      continue;
    if (from->fix.station[0] && ox_key_is_within(path, "hold.leg.station") &&
        strcmp(path, "hold.leg.station.limiting_radial_deg") != 0) {
      add_station(w, to, &from->fix, kept);
      continue;
    }
    cJSON *item = field_item(&fields[i], c, &omit);
    if (omit) continue;
    cJSON *section = section_of(to, path, &key, failed);
    if (section)
      add(section, key, item, failed);
    else
      cJSON_Delete(item);
  }
}

static bool is_minute(int minute) {
  return minute >= 0 && minute < 24 * 60;
}

static void add_minute(cJSON *to, const char *key, int minute, bool *failed) {
  char text[16];
  bool given = is_minute(minute);
  snprintf(text, sizeof text, "%02d:%02d", given ? minute / 60 : 0, given ? minute % 60 : 0);
  add(to, key, given ? cJSON_CreateString(text) : cJSON_CreateNull(), failed);
}

/* The object of a section, made when it is not there yet. */
static cJSON *section(cJSON *object, const char *name, bool *failed) {
  cJSON *inner = ox_json_member(object, name);
  return inner ? inner : add(object, name, cJSON_CreateObject(), failed);
}

/* The keys of the optional sections that are not in the table of fields. */
static void add_optional(cJSON *object, const ox_case *c, bool *failed) {
  char fix[OX_FIX_NAME_BYTES];
  if (is_minute(c->lost_radio.eta_min)) {
    cJSON *radio = section(object, "lost_radio", failed);
    if (radio) add_minute(radio, "eta", c->lost_radio.eta_min, failed);
  }
  ox_text_line_copy(fix, sizeof fix, c->shown.fix, sizeof c->shown.fix);
  if (!*fix && !is_minute(c->shown.efc_min)) return;
  cJSON *shown = section(object, "shown", failed);
  if (shown && *fix) add(shown, "fix", cJSON_CreateString(fix), failed);
  if (shown && is_minute(c->shown.efc_min)) add_minute(shown, "efc", c->shown.efc_min, failed);
}

/* Only when given: most lessons have no clock. */
static void add_fix_at(cJSON *arrival, const ox_case *c, bool *failed) {
  char text[16];
  int time_s = c->arrival.fix_at_s;
  if (time_s < 0 || time_s >= 24 * 3600) return;
  int length = snprintf(text, sizeof text, "%02d:%02d", time_s / 3600, time_s / 60 % 60);
  if (time_s % 60 != 0)
    snprintf(text + length, sizeof text - (size_t)length, ":%02d", time_s % 60);
  add(arrival, "fix_at", cJSON_CreateString(text), failed);
}

/* Copies what the kept object has and the format does not know. Inside a known section the same
 * is done one level deeper; a section that is not there is made when there is something to keep,
 * but a station that is gone takes its keys with it. `from` is for the keys of a case. */
static void keep_unknown(cJSON *to, const ox_lesson_case *from, const cJSON *kept,
                         ox_key_table table, const char *prefix, bool *failed) {
  char path[OX_KEY_PATH_BYTES];
  if (!cJSON_IsObject(kept)) return;
  for (const cJSON *child = kept->child; child && !*failed; child = child->next) {
    bool joined = ox_key_join(path, prefix, child->string);
    bool known = joined && !strchr(child->string, '.') && ox_key_is_known(table, path);
    if (!known) {
      add(to, child->string, cJSON_Duplicate(child, true), failed);
      continue;
    }
    if (table != OX_KEYS_CASE || !ox_key_is_section(path) || !cJSON_IsObject(child)) continue;
    if (ox_key_is_idle(&from->c, path)) continue;
    /* A station that is a point has kept its own. */
    if (from->fix.station[0] && strcmp(path, "hold.leg.station") == 0) continue;
    cJSON *inner = ox_json_member(to, child->string);
    if (!inner) inner = add(to, child->string, cJSON_CreateObject(), failed);
    if (!inner) return;
    keep_unknown(inner, from, child, table, path, failed);
    if (!inner->child) cJSON_Delete(cJSON_DetachItemViaPointer(to, inner));
  }
}

void ox_writing_keep(ox_writing *w, cJSON *to, const cJSON *kept, ox_key_table table) {
  keep_unknown(to, NULL, kept, table, "", &w->failed);
}

static cJSON *make_row(const ox_wind_row *row, bool with_altitude, const cJSON *kept,
                       bool *failed) {
  cJSON *object = cJSON_CreateObject();
  size_t count;
  const ox_field *fields = ox_wind_fields(&count);
  for (size_t i = 0; object && i < count; i++) {
    bool altitude = strcmp(fields[i].key, "altitude_ft") == 0;
    /* One row holds at every altitude; its own is written when there is one worth keeping. */
    if (altitude && !with_altitude &&
        (row->altitude_ft == 0.0 || !ox_field_accepts(&fields[i], row->altitude_ft)))
      continue;
    bool omit;
    add(object, fields[i].key, field_item(&fields[i], row, &omit), failed);
  }
  if (object) keep_unknown(object, NULL, kept, OX_KEYS_WIND, "", failed);
  return object;
}

/* One wind is an object, several are a list; one in a list stays in a list. */
static void add_wind(cJSON *to, const ox_case *c, const cJSON *kept, bool *failed) {
  int count = c->wind_count;
  const cJSON *kept_wind = cJSON_IsObject(kept) ? ox_json_member(kept, "wind") : NULL;
  bool kept_rows = cJSON_IsArray(kept_wind);
  if (count <= 0 || count > OX_WIND_ROWS_MAX) {
    add(to, "wind", cJSON_CreateNull(), failed);
  } else if (count == 1 && !kept_rows) {
    add(to, "wind", make_row(&c->wind[0], false, kept_wind, failed), failed);
  } else {
    bool same = kept_rows && cJSON_GetArraySize(kept_wind) == count;
    cJSON *list = add(to, "wind", cJSON_CreateArray(), failed);
    const cJSON *kept_row = same ? kept_wind->child : NULL;
    for (int i = 0; list && i < count && !*failed; i++) {
      add(list, NULL, make_row(&c->wind[i], count > 1, kept_row, failed), failed);
      if (kept_row) kept_row = kept_row->next;
    }
  }
}

static cJSON *make_change(const ox_wind_change *change, const cJSON *kept, bool *failed) {
  cJSON *object = cJSON_CreateObject();
  size_t count;
  const ox_field *fields = ox_wind_change_fields(&count);
  for (size_t i = 0; object && i < count; i++) {
    bool omit;
    add(object, fields[i].key, field_item(&fields[i], change, &omit), failed);
  }
  if (object) keep_unknown(object, NULL, kept, OX_KEYS_CHANGE, "", failed);
  return object;
}

/* Always a list; nothing when the wind stays as it is. */
static void add_wind_changes(cJSON *to, const ox_case *c, const cJSON *kept, bool *failed) {
  int count = c->wind_change_count;
  if (count <= 0 || count > OX_WIND_CHANGES_MAX) return;
  const cJSON *kept_list = cJSON_IsObject(kept) ? ox_json_member(kept, "wind_changes") : NULL;
  bool same = cJSON_IsArray(kept_list) && cJSON_GetArraySize(kept_list) == count;
  cJSON *list = add(to, "wind_changes", cJSON_CreateArray(), failed);
  const cJSON *kept_row = same ? kept_list->child : NULL;
  for (int i = 0; list && i < count && !*failed; i++) {
    add(list, NULL, make_change(&c->wind_changes[i], kept_row, failed), failed);
    if (kept_row) kept_row = kept_row->next;
  }
}

static cJSON *make_stroke(const ox_ink_stroke *stroke, bool *failed) {
  cJSON *object = cJSON_CreateObject();
  if (!object) return NULL;
  add(object, "ink", cJSON_CreateString(ox_ink_colour_name(stroke->colour)), failed);
  add(object, "width", cJSON_CreateString(ox_ink_width_name(stroke->width)), failed);
  cJSON *points = add(object, "points_nm", cJSON_CreateArray(), failed);
  for (size_t i = 0; i < stroke->count && !*failed; i++) {
    add(points, NULL, cJSON_CreateNumber(stroke->points_nm[i].x), failed);
    add(points, NULL, cJSON_CreateNumber(stroke->points_nm[i].y), failed);
  }
  return object;
}

/* Nothing where nothing was drawn, as in every file before there was ink. */
static void add_ink(cJSON *to, const ox_ink *ink, const cJSON *kept, bool *failed) {
  const cJSON *kept_ink = cJSON_IsObject(kept) ? ox_json_member(kept, "ink") : NULL;
  if (ox_ink_is_empty(ink) && !cJSON_IsObject(kept_ink)) return;
  cJSON *object = add(to, "ink", cJSON_CreateObject(), failed);
  cJSON *list = object ? add(object, "strokes", cJSON_CreateArray(), failed) : NULL;
  for (size_t i = 0; list && ink && i < ink->stroke_count && !*failed; i++)
    add(list, NULL, make_stroke(&ink->strokes[i], failed), failed);
  if (object) keep_unknown(object, NULL, kept_ink, OX_KEYS_INK, "", failed);
}

static cJSON *make_case(ox_writing *w, const ox_lesson_case *from) {
  const ox_case *c = &from->c;
  const cJSON *kept = from->kept, *kept_hold = kept_section(kept, "hold");
  cJSON *object = cJSON_CreateObject();
  if (!object) return NULL;
  add_text(object, "name", c->name, sizeof c->name, &w->failed);
  cJSON *hold = add(object, "hold", cJSON_CreateObject(), &w->failed);
  if (hold) ox_writing_fix(w, hold, from, kept_section(kept_hold, "fix"));
  add_fields(w, object, from);
  if (hold) add_minute(hold, "efc", c->hold.efc_min, &w->failed);
  cJSON *arrival = ox_json_member(object, "arrival");
  if (arrival) add_fix_at(arrival, c, &w->failed);
  if (arrival) ox_writing_present(w, arrival, &from->fix, kept_section(kept, "arrival"));
  add_optional(object, c, &w->failed);
  add_ink(object, from->ink, from->kept, &w->failed);
  keep_unknown(object, from, kept, OX_KEYS_CASE, "", &w->failed);
  return object;
}

/* A newer lesson keeps its number: its text, too, is not of this version. */
static cJSON *make_version(const ox_lesson *lesson) {
  const cJSON *version = lesson->kept ? ox_json_member(lesson->kept, "version") : NULL;
  if (lesson->read_only && cJSON_IsNumber(version)) return cJSON_Duplicate(version, true);
  return cJSON_CreateNumber(OX_LESSON_VERSION);
}

static cJSON *make_lesson(ox_writing *w) {
  const ox_lesson *lesson = w->lesson;
  bool *failed = &w->failed;
  cJSON *object = cJSON_CreateObject();
  if (!object) return NULL;
  add(object, "format", cJSON_CreateString("oxbow-lesson"), failed);
  add(object, "version", make_version(lesson), failed);
  add_text(object, "title", lesson->title, sizeof lesson->title, failed);
  ox_writing_places(w, object);
  cJSON *cases = add(object, "cases", cJSON_CreateArray(), failed);
  for (size_t i = 0; cases && i < lesson->case_count && !*failed; i++)
    add(cases, NULL, make_case(w, &lesson->cases[i]), failed);
  keep_unknown(object, NULL, lesson->kept, OX_KEYS_TOP, "", failed);
  return object;
}

char *ox_lesson_to_text(const ox_lesson *lesson) {
  ox_writing w = {.lesson = lesson};
  ox_growing text = {0};
  cJSON *tree = make_lesson(&w);
  if (tree && !w.failed) ox_json_print(&text, tree);
  cJSON_Delete(tree);
  if (!text.failed) return text.bytes;
  ox_growing_clear(&text);
  return NULL;
}
