/* What every part of the reader shares: faults put into sentences, and single values. */
#include "reading.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "json.h"
#include "oxbow/text.h"

#define KEY_SHOWN_BYTES 40
#define VALUE_SHOWN_COLUMNS 40

static void put_where(ox_reading *r, ox_growing *t) {
  ox_growing_put_plain(t, r->name, strlen(r->name));
  ox_growing_puts(t, ": ");
  if (!r->in_case) return;
  if (r->case_name) {
    ox_growing name = {0};
    ox_growing_put_plain(&name, r->case_name, strlen(r->case_name));
    ox_growing_printf(t, _("case \"%s\": "), name.bytes ? name.bytes : "");
    t->failed = t->failed || name.failed;
    ox_growing_clear(&name);
  } else {
    ox_growing_printf(t, _("case %zu: "), r->case_number);
  }
}

static void put_key(ox_growing *t, const char *key) {
  size_t length = strlen(key), at = 0;
  while (at < length && at < KEY_SHOWN_BYTES) {
    size_t step = ox_utf8_length(key + at, length - at);
    at += step ? step : 1;
  }
  ox_growing_put_plain(t, key, at);
  if (at < length) ox_growing_puts(t, "…");
}

static void put_path(ox_growing *t, const char *prefix, const char *key) {
  ox_growing_puts(t, prefix);
  if (*prefix && *key) ox_growing_puts(t, ".");
  put_key(t, key);
  if (*prefix || *key) ox_growing_puts(t, ": ");
}

static void tell(ox_reading *r, ox_growing *t) {
  r->fault_count++;
  if (!ox_messages_add(r->messages, t)) r->no_memory = true;
}

void ox_reading_say(ox_reading *r, const char *prefix, const char *key, const char *sentence) {
  ox_growing t = {0};
  put_where(r, &t);
  put_path(&t, prefix, key);
  ox_growing_puts(&t, sentence);
  tell(r, &t);
}

void ox_reading_refuse(ox_reading *r, const char *prefix, const char *key, const cJSON *value,
                       const char *allowed) {
  ox_growing t = {0};
  put_where(r, &t);
  put_path(&t, prefix, key);
  ox_growing shown = {0};
  ox_json_print_short(&shown, value, VALUE_SHOWN_COLUMNS);
  /* translators: a value in a file, and what is allowed there, such as "a radial (0 to 360)" */
  ox_growing_printf(&t, _("%s is not %s"), shown.bytes ? shown.bytes : "?", _(allowed));
  t.failed = t.failed || shown.failed;
  ox_growing_clear(&shown);
  tell(r, &t);
}

void ox_reading_say_fault(ox_reading *r, const ox_fault *fault) {
  char sentence[OX_READING_SENTENCE_BYTES];
  snprintf(sentence, sizeof sentence, _("%s is not %s"), fault->value, _(fault->allowed));
  ox_reading_say(r, "", fault->key, sentence);
}

void ox_reading_say_missing(ox_reading *r, const char *prefix, const char *key,
                            const char *allowed) {
  char sentence[OX_READING_SENTENCE_BYTES];
  snprintf(sentence, sizeof sentence, _("is missing: %s is needed"), _(allowed));
  ox_reading_say(r, prefix, key, sentence);
}

bool ox_reading_first(ox_reading *r, const char *prefix, const cJSON *object, const cJSON *member) {
  for (const cJSON *before = object->child; before != member; before = before->next)
    if (strcmp(before->string, member->string) == 0) {
      ox_reading_say(r, prefix, member->string, _("is given twice"));
      return false;
    }
  return true;
}

bool ox_reading_object(ox_reading *r, const char *prefix, const char *key, const cJSON *value) {
  if (!cJSON_IsObject(value)) {
    ox_reading_refuse(r, prefix, key, value, N_("an object"));
    return false;
  }
  size_t count = 0;
  for (const cJSON *child = value->child; child; child = child->next)
    count++;
  if (count <= OX_READING_MEMBERS_MAX) return true;
  ox_reading_say(r, prefix, key, _("has more than 256 keys"));
  return false;
}

/* The value as the number that ox_field_set takes; NAN when its type is wrong. */
static double field_value(const ox_field *field, const cJSON *value) {
  if (field->kind == OX_FIELD_CHOICE) {
    if (!cJSON_IsString(value)) return (double)NAN;
    for (int i = 0; field->choices[i]; i++)
      if (strcmp(field->choices[i], value->valuestring) == 0) return i;
    return (double)NAN;
  }
  if (cJSON_IsNull(value) && field->zero_is_absent) return 0.0;
  return cJSON_IsNumber(value) ? value->valuedouble : (double)NAN;
}

bool ox_reading_field(ox_reading *r, const char *prefix, const ox_field *field, void *base,
                      const char *key, const cJSON *value) {
  double number = field_value(field, value);
  if (!ox_field_accepts(field, number)) {
    ox_reading_refuse(r, prefix, key, value, field->allowed);
    return false;
  }
  ox_field_set(field, base, number + 0.0); /* -0 becomes 0 */
  return true;
}

bool ox_reading_line(ox_reading *r, const char *key, const cJSON *value, char *out,
                     size_t out_bytes, const char *allowed) {
  if (!cJSON_IsString(value) || strlen(value->valuestring) >= out_bytes ||
      !ox_text_is_line(value->valuestring)) {
    ox_reading_refuse(r, "", key, value, allowed);
    return false;
  }
  strcpy(out, value->valuestring);
  return true;
}

size_t ox_reading_index(const ox_field *field) {
  size_t count;
  const ox_field *fields = ox_fields(&count);
  if (!field || field < fields || field >= fields + count) return OX_READING_FIELDS_MAX;
  size_t index = (size_t)(field - fields);
  return index < OX_READING_FIELDS_MAX ? index : OX_READING_FIELDS_MAX;
}

void ox_reading_mark_told(ox_reading *r, const char *path) {
  size_t count;
  const ox_field *fields = ox_fields(&count);
  for (size_t i = 0; i < count && i < OX_READING_FIELDS_MAX; i++)
    if (strcmp(fields[i].key, path) == 0 || ox_key_is_within(fields[i].key, path))
      r->told[i] = true;
}

static bool flag_of(const bool *flags, const char *path) {
  size_t index = ox_reading_index(ox_field_by_key(path));
  return index < OX_READING_FIELDS_MAX && flags[index];
}

bool ox_reading_was_told(const ox_reading *r, const char *path) {
  return flag_of(r->told, path);
}

bool ox_reading_was_seen(const ox_reading *r, const char *path) {
  return flag_of(r->seen, path);
}
