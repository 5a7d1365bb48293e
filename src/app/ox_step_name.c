/* Names of steps, from the labels that the inputs have in the panel. */
#include "ox_step_name.h"

#include <string.h>

#include "ox_input.h"

static const char *const small_words[] = {"a",  "as", "at", "by", "for", "in",
                                          "is", "of", "on", "or", "the", "to", NULL};

char *ox_step_name_of_label(const char *label) {
  GString *name = g_string_new(NULL);
  for (const char *at = label; *at; at++)
    if (*at != '_') g_string_append_c(name, *at);
  char **words = g_strsplit(name->str, " ", -1);
  g_string_truncate(name, 0);
  for (guint i = 0; words[i]; i++) {
    gboolean small = i > 0 && g_strv_contains(small_words, words[i]);
    if (!small && *words[i]) *words[i] = g_ascii_toupper(*words[i]);
    g_string_append_printf(name, "%s%s", i > 0 ? " " : "", words[i]);
  }
  g_strfreev(words);
  return g_string_free(name, FALSE);
}

/* ---- what differs ----------------------------------------------------------------------- */

static gboolean wind_differs(const ox_case *a, const ox_case *b, const char *key) {
  const ox_input *input = ox_input_by_key(key);
  return input && ox_input_get(input, a) != ox_input_get(input, b);
}

/* The wind as the panel has it, one row. NULL: the same, or more than one input differs. */
static const char *one_wind_key(const ox_case *a, const ox_case *b) {
  static const char *const keys[] = {"wind.from_deg", "wind.north", "wind.kt"};
  const char *found = NULL;
  if (a->wind_count > 1 || b->wind_count > 1) return NULL;
  for (size_t i = 0; i < G_N_ELEMENTS(keys); i++) {
    if (!wind_differs(a, b, keys[i])) continue;
    if (found) return NULL;
    found = keys[i];
  }
  return found;
}

/* A case with the other's wind is the other when nothing else differs. */
static gboolean only_wind_differs(const ox_case *a, const ox_case *b) {
  ox_case c = *a;
  memcpy(c.wind, b->wind, sizeof c.wind);
  c.wind_count = b->wind_count;
  memcpy(c.wind_changes, b->wind_changes, sizeof c.wind_changes);
  c.wind_change_count = b->wind_change_count;
  return ox_case_equal(&c, b);
}

/* What the panel does not show goes by its group: "Aircraft". */
static char *name_of_key(const char *key) {
  const ox_input *input = ox_input_by_key(key);
  if (input) return ox_step_name_of_label(input->label);
  char *group = g_strndup(key, strcspn(key, "._")), *name = ox_step_name_of_label(group);
  g_free(group);
  return name;
}

static gboolean same_group(const char *one, const char *other) {
  size_t length = strcspn(one, ".");
  return strcspn(other, ".") == length && strncmp(one, other, length) == 0;
}

/* Fields that the panel of the hold has no input for are named by what they belong to. */
static char *name_of_group(const char *key) {
  static const struct {
    const char *prefix, *name;
  } groups[] = {{"fuel.", "Fuel"},
                {"clock.", "Local Time"},
                {"lost_radio.", "Lost Radio"},
                {"shown.", "What the Equipment Shows"}};
  for (size_t i = 0; i < G_N_ELEMENTS(groups); i++)
    if (g_str_has_prefix(key, groups[i].prefix)) return g_strdup(groups[i].name);
  return NULL;
}

static char *name_of_fields(const ox_case *a, const ox_case *b) {
  size_t count;
  const ox_field *fields = ox_fields(&count), *first = NULL;
  for (size_t i = 0; i < count; i++) {
    if (ox_field_get(&fields[i], a) == ox_field_get(&fields[i], b)) continue;
    if (first && g_str_has_prefix(first->key, "technique.") &&
        same_group(first->key, fields[i].key))
      return g_strdup("Technique");
    if (!first) first = &fields[i];
  }
  if (!first) return NULL;
  char *name = name_of_group(first->key);
  return name ? name : name_of_key(first->key);
}

char *ox_step_name(const ox_case *a, const ox_case *b) {
  char *name = NULL;
  if (strcmp(a->name, b->name) != 0) return name_of_key("name");
  if (strcmp(a->hold.fix, b->hold.fix) != 0) return name_of_key("hold.fix");
  if (only_wind_differs(a, b)) {
    const char *key = one_wind_key(a, b);
    return key ? name_of_key(key) : g_strdup("Wind");
  }
  if (a->hold.station.given != b->hold.station.given) name = name_of_key("hold.leg.station");
  if (!name) name = name_of_fields(a, b);
  if (!name && a->hold.efc_min != b->hold.efc_min) name = name_of_key("hold.efc");
  if (!name && a->arrival.fix_at_s != b->arrival.fix_at_s) name = name_of_key("arrival.fix_at");
  return name ? name : g_strdup("Change");
}
