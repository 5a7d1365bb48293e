/* What the page of words shows of a clearance, as pure functions: no widget, no state. */
#ifndef OX_CLEARANCE_WORDS_H
#define OX_CLEARANCE_WORDS_H

#include "oxbow/clearance.h"

/* What kind of thing words mean; each has its own underline. */
typedef enum {
  OX_SENSE_PLACE, OX_SENSE_LINE, OX_SENSE_SHAPE, OX_SENSE_LIMIT, OX_SENSE_TIME, OX_SENSE_COUNT
} ox_sense;
ox_sense ox_sense_of_item(ox_item_kind kind);

/* How grave a question is: "Missing", "Contradiction", … Static. */
const char *ox_ask_severity(ox_ask_kind kind);
/* The index of the item whose words hold a byte of the text, or -1. */
int ox_clearance_item_at(const ox_clearance *c, size_t byte);
/* What words mean: "radial: the inbound course". Freed with g_free. */
char *ox_item_meaning(const ox_item *item);
/* Whether the words of a hold were understood at all. */
bool ox_clearance_understood(const ox_clearance *c);
/* Questions, what was left open and why, and what was not used: a sentence each, NULL-terminated;
 * freed with g_strfreev. `text` is the text that was read. */
char **ox_clearance_questions(const ox_clearance *c);
char **ox_clearance_remarks(const ox_clearance *c, const char *text);

/* What is said of a case. */
typedef enum {
  OX_SAID_CLEARANCE, OX_SAID_READBACK, OX_SAID_REPORTS, OX_SAID_SHORT, OX_SAID_LONG, OX_SAID_CUES,
  OX_SAID_STEPS, OX_SAID_WHEN, OX_SAID_COUNT
} ox_said;
/* "Clearance", "Read-back", …: OX_SAID_COUNT and a NULL. Static. */
const char *const *ox_said_names(void);
/* The words; freed with g_free. */
char *ox_said_words(ox_said said, const ox_case *c, const ox_flight *flight,
                    const ox_say_options *options);

#endif
