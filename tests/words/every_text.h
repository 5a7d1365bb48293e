/* Everything the words say of a case, as a list, and cases in which all of it is said. */
#ifndef OX_TESTS_EVERY_TEXT_H
#define OX_TESTS_EVERY_TEXT_H

#include "../engine/random_case.h"

typedef struct {
  char what[64]; /* "working, why" */
  char *text;
  size_t most; /* bytes of the buffer that it was written into; 0: it grew as it had to */
} ox_told;

typedef struct {
  size_t count, capacity;
  ox_told *texts;
} ox_told_list;

/* A random case with a station, fuel, times, a shown hold, a climb, changes of wind now and then. */
ox_case ox_talkative_case(ox_random *r);
/* False, and nothing told, where the case cannot be flown. The answer to compare with comes from
 * the seed, so that the same seed tells the same. */
bool ox_tell_everything(const ox_case *c, uint64_t seed, ox_told_list *list);
void ox_told_clear(ox_told_list *list);

#endif
