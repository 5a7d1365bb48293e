/* Names of steps, from the labels that the inputs have in the panel. */
#include "ox_step_name.h"

#include <string.h>

#include "ox_input.h"
#include "oxbow/text.h"

static const char *const small_words[] = {"a",  "as", "at", "by", "for", "in",
                                          "is", "of", "on", "or", "the", "to", NULL};

char *ox_step_name_of_label(const char *label) {
  const char *said = _(label);
  GString *name = g_string_new(NULL);
  for (const char *at = said; *at; at++)
    if (*at != '_') g_string_append_c(name, *at);
  /* Capitals for every word are an English custom. */
  if (said != label) return g_string_free(name, FALSE);
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

/* Fields that the panel of the hold has no input for are named by what they belong to. */
static const char *name_of_group(const char *key) {
  static const struct {
    const char *prefix, *name;
  } groups[] = {{"hold.", N_("Hold")},
                {"arrival.", N_("Arrival")},
                {"aircraft.", N_("Aircraft")},
                {"technique.", N_("Technique")},
                {"fuel.", N_("Fuel")},
                {"clock.", N_("Local Time")},
                {"lost_radio.", N_("Lost Radio")},
                {"shown.", N_("What the Equipment Shows")}};
  for (size_t i = 0; i < G_N_ELEMENTS(groups); i++)
    if (g_str_has_prefix(key, groups[i].prefix)) return _(groups[i].name);
  return _("Change");
}

static char *name_of_key(const char *key) {
  const ox_input *input = ox_input_by_key(key);
  return input ? ox_step_name_of_label(input->label) : g_strdup(name_of_group(key));
}

static gboolean same_group(const char *one, const char *other) {
  size_t length = strcspn(one, ".");
  return strcspn(other, ".") == length && strncmp(one, other, length) == 0;
}

static char *name_of_fields(const ox_case *a, const ox_case *b) {
  size_t count;
  const ox_field *fields = ox_fields(&count), *first = NULL;
  for (size_t i = 0; i < count; i++) {
    if (ox_field_get(&fields[i], a) == ox_field_get(&fields[i], b)) continue;
    if (first && g_str_has_prefix(first->key, "technique.") &&
        same_group(first->key, fields[i].key))
      return g_strdup(_("Technique"));
    if (!first) first = &fields[i];
  }
  return first ? name_of_key(first->key) : NULL;
}

char *ox_step_name(const ox_case *a, const ox_case *b) {
  char *name = NULL;
  if (strcmp(a->name, b->name) != 0) return name_of_key("name");
  if (strcmp(a->hold.fix, b->hold.fix) != 0) return name_of_key("hold.fix");
  if (only_wind_differs(a, b)) {
    const char *key = one_wind_key(a, b);
    return key ? name_of_key(key) : g_strdup(_("Wind"));
  }
  if (a->hold.station.given != b->hold.station.given) name = name_of_key("hold.leg.station");
  if (!name) name = name_of_fields(a, b);
  if (!name && a->hold.efc_min != b->hold.efc_min) name = name_of_key("hold.efc");
  if (!name && a->arrival.fix_at_s != b->arrival.fix_at_s) name = name_of_key("arrival.fix_at");
  return name ? name : g_strdup(_("Change"));
}
