/* What a person may prefer, in one table: each has a key in the settings and a few words, the first
 * of which is meant where nothing was chosen. Whoever goes by one reads it when it is needed, or
 * hears of it by the signal "changed" of the settings. Needs no display. */
#ifndef OX_PREFERENCE_H
#define OX_PREFERENCE_H

#include "ox_settings.h"
#include "oxbow/clearance.h"
#include "oxbow/picture.h"
#include "oxbow/sheets.h"

G_BEGIN_DECLS

typedef enum {
  OX_PREFER_APPEARANCE, /* "system", "light", "dark", "projector" */
  OX_PREFER_MOTION,     /* "system", "never" */
  OX_PREFER_WORDING,    /* "us", "icao" */
  OX_PREFER_PALETTE,    /* of pictures that go out: "light", "dark", "projector", "print" */
  OX_PREFER_PAPER,      /* "locale", "a4", "letter" */
  OX_PREFERENCE_COUNT
} ox_preference;

const char *ox_preference_key(ox_preference which);          /* static */
const char *const *ox_preference_words(ox_preference which); /* static, NULL-terminated */

/* By its place in the words. */
guint ox_preference_get(OxSettings *settings, ox_preference which);
/* What the dialogs remembered of the same (the paper printed on last, the colours exported last)
 * gives way, where it is another choice than before. */
void ox_preference_set(OxSettings *settings, ox_preference which, guint index);
/* All of them as if nothing had ever been chosen. */
void ox_preference_reset(OxSettings *settings);

ox_wording ox_preference_wording(OxSettings *settings);
ox_palette_id ox_preference_palette(OxSettings *settings);
/* Where nothing is chosen that of the locale (LC_PAPER), which is A4 or, for any other, Letter. */
ox_paper ox_preference_paper(OxSettings *settings);

G_END_DECLS

#endif
