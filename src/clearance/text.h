/* Sentences that grow. Private to the clearance. */
#ifndef OX_CLEARANCE_TEXT_H
#define OX_CLEARANCE_TEXT_H

#include <stdbool.h>
#include <stddef.h>

#include "oxbow/clearance.h"

/* A text on the heap; or, made by clr_into, in the caller's buffer, cut at a whole character.
 * Start with {0}. When memory runs out `failed` sticks. What is said on the radio is English;
 * figures in a text `for_people` are in the reader's language. */
typedef struct {
  char *text;
  size_t length, capacity;
  bool failed, fixed, for_people;
} clr_text;

clr_text clr_into(char *buf, size_t bytes);
/* Only %s, %d and %c: nothing that the process locale could change. */
void clr_put(clr_text *t, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* The text, the caller's to free; NULL when memory ran out. */
char *clr_take(clr_text *t);
/* Makes the first letter a capital and ends with a full stop. */
void clr_sentence(clr_text *t);
/* A blank where the text has begun: before the next sentence. */
void clr_next(clr_text *t);

/* Numbers in the way the options want them: in figures, or word by word as they are spoken. */
void clr_put_figures(clr_text *t, const ox_say_options *o, const char *figures);
void clr_put_bearing(clr_text *t, const ox_say_options *o, double bearing_deg);
void clr_put_whole(clr_text *t, const ox_say_options *o, double value);
/* At most two decimals. */
void clr_put_decimal(clr_text *t, const ox_say_options *o, double value);
void clr_put_altitude(clr_text *t, const ox_say_options *o, double altitude_ft);
/* Minute of the day as four figures. */
void clr_put_clock(clr_text *t, const ox_say_options *o, int minute);
/* A leg time: "1 minute", "1 1/2 minute", "75 second", plural outside of "legs". */
void clr_put_leg_time(clr_text *t, const ox_say_options *o, double leg_s, bool plural);
/* The knots of a speed. */
void clr_put_knots(clr_text *t, const ox_say_options *o, double kt);

/* The fix as a controller says it, in quotation marks where it could be mistaken. */
void clr_put_fix(clr_text *t, const char *fix);
/* "southwest": the eighth that holds a bearing, as it is said in a clearance. */
const char *clr_eighth_word(double bearing_deg);
/* The English name of an item, as it is said in a question. */
const char *clr_item_word(ox_item_kind kind);
/* Options where NULL was given. */
ox_say_options clr_options(const ox_say_options *o);

#endif
