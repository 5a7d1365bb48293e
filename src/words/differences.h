/* The two halves of the table of differences. Private to the words. */
#ifndef OX_WORDS_DIFFERENCES_H
#define OX_WORDS_DIFFERENCES_H

#include "oxbow/differences.h"
#include "say.h"

typedef struct {
  ox_differences table;
  size_t capacity;
  bool failed; /* memory ran out */
  const ox_case *const *cases;
  const ox_flight *const *flights;
} differences;

/* Takes one text a column. Where they are all the same, a given row is left out. */
void differences_add(differences *d, bool given, const char *label,
                     words_say texts[OX_DIFFERENCES_MAX]);
void differences_given(differences *d);
void differences_flown(differences *d);

#endif
