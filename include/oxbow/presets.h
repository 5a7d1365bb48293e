/* Techniques as publications describe them: rows of data that set the technique of a case. */
#ifndef OXBOW_PRESETS_H
#define OXBOW_PRESETS_H

#include "oxbow/case.h"

typedef struct {
  const char *key;    /* stable, for command lines: "aim", "doc8168" … */
  const char *name;   /* for people */
  const char *rule;   /* what it asks for, one sentence */
  const char *source; /* publication and paragraph; says where a part is from memory */
} ox_preset;

/* How many there are, and the one at an index (NULL when there is none). Static. */
size_t ox_preset_count(void);
const ox_preset *ox_preset_at(size_t index);
/* Sets technique and turn of a case by the preset at an index (the entry order, the number of
 * circuits and the order to leave stay). False, and nothing set, for an index that there is not. */
bool ox_preset_apply(size_t index, ox_case *c);
/* The preset whose application would change nothing, or -1. */
int ox_preset_of(const ox_case *c);

#endif
