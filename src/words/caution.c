/* The caution that goes with everything the program shows. */
#include "oxbow/words.h"

#include "oxbow/text.h"

const char *ox_words_caution_line(void) {
  return _("For instruction only, not for navigation. Charts, clearances, operator procedures, "
           "regulations and a licensed instructor rule.");
}

const char *ox_words_caution(void) {
  return _("For instruction only, not for navigation. Charts, clearances, the operator's "
           "procedures, local regulations and a licensed instructor rule. The figures assume a "
           "steady wind, a constant true airspeed and instruments without error.");
}
