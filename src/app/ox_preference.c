/* The table of preferences. */
#include "ox_preference.h"

#include <gtk/gtk.h>
#include <string.h>

/* Keys of what dialogs remember that the preference is about. */
#define REMEMBERED_MOST 3

static const struct {
  const char *key;
  const char *const *words;
  const char *remembered[REMEMBERED_MOST + 1];
} rows[OX_PREFERENCE_COUNT] = {
    [OX_PREFER_APPEARANCE] = {"appearance",
                              (const char *const[]){"system", "light", "dark", "projector", NULL},
                              {NULL}},
    [OX_PREFER_MOTION] = {"motion", (const char *const[]){"system", "never", NULL}, {NULL}},
    [OX_PREFER_WORDING] = {"wording", (const char *const[]){"us", "icao", NULL}, {NULL}},
    [OX_PREFER_PALETTE] = {"picture-palette",
                           (const char *const[]){"light", "dark", "projector", "print", NULL},
                           {"export-palette"}},
    [OX_PREFER_PAPER] = {"paper", (const char *const[]){"locale", "a4", "letter", NULL},
                         {"export-paper", "handout-paper", "print-paper"}},
};

const char *ox_preference_key(ox_preference which) { return rows[which].key; }

const char *const *ox_preference_words(ox_preference which) { return rows[which].words; }

guint ox_preference_get(OxSettings *settings, ox_preference which) {
  const char *const *words = rows[which].words;
  const char *word = ox_settings_word(settings, rows[which].key, words);
  guint index = 0;
  while (words[index] != word) index++;
  return index;
}

static void forget_remembered(OxSettings *settings, ox_preference which) {
  for (const char *const *key = rows[which].remembered; *key; key++)
    ox_settings_forget(settings, *key);
}

void ox_preference_set(OxSettings *settings, ox_preference which, guint index) {
  if (ox_preference_get(settings, which) == index) return;
  forget_remembered(settings, which);
  ox_settings_set_word(settings, rows[which].key, rows[which].words[index]);
}

void ox_preference_reset(OxSettings *settings) {
  for (int i = 0; i < OX_PREFERENCE_COUNT; i++) {
    forget_remembered(settings, (ox_preference)i);
    ox_settings_forget(settings, rows[i].key);
  }
}

ox_wording ox_preference_wording(OxSettings *settings) {
  return ox_preference_get(settings, OX_PREFER_WORDING) == 1 ? OX_WORDING_ICAO : OX_WORDING_US;
}

ox_palette_id ox_preference_palette(OxSettings *settings) {
  const char *word = rows[OX_PREFER_PALETTE].words[ox_preference_get(settings, OX_PREFER_PALETTE)];
  for (int i = 0; i < OX_PALETTE_CHOICES; i++)
    if (strcmp(ox_palette_name((ox_palette_id)i), word) == 0) return (ox_palette_id)i;
  return OX_PALETTE_LIGHT;
}

ox_paper ox_preference_paper(OxSettings *settings) {
  guint chosen = ox_preference_get(settings, OX_PREFER_PAPER);
  if (chosen > 0) return chosen == 1 ? OX_PAPER_A4 : OX_PAPER_LETTER;
  return strcmp(gtk_paper_size_get_default(), GTK_PAPER_NAME_A4) == 0 ? OX_PAPER_A4
                                                                      : OX_PAPER_LETTER;
}
