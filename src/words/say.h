/* Sentences that grow, and figures to put into them. Private to the words.
 *
 * Figures never go through printf's %f: its decimal point follows the process locale, and theirs is
 * that of the catalogue. They are small values with their text inside, so that they can stand as
 * arguments:
 *   words_put(&s, _("%s kt tailwind"), words_number(kt, 1).text);
 * A sentence is one text for the translator, who may put its arguments in another order ("%2$s");
 * what is put behind it is a clause of its own. */
#ifndef OX_WORDS_SAY_H
#define OX_WORDS_SAY_H

#include <stdbool.h>
#include <stddef.h>

#include "oxbow/case.h"
#include "oxbow/text.h"

/* Text that grows on the heap; or, made by words_into, stays in the caller's buffer and is cut at
 * a whole character. Start with {0}. When memory runs out `failed` sticks. */
typedef struct {
  char *text;
  size_t length, capacity;
  bool failed, fixed;
} words_say;

/* A text in a buffer of `bytes` (> 0), always nul-terminated. */
words_say words_into(char *buf, size_t bytes);
void words_put(words_say *s, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* The text, which is the caller's to free; NULL when memory ran out. The sentence is empty after.
 */
char *words_take(words_say *s);
/* "18:25:00" of seconds after midnight; the day goes round. */
void words_put_clock(words_say *s, double s_after_midnight);

typedef struct {
  char text[32];
} words_figure;

/* A piece of a sentence of several words. */
typedef struct {
  char text[160];
} words_phrase;

/* With so many decimals (0..6) behind the language's decimal point; "unknown" where it is not
 * finite. */
words_figure words_number(double value, int decimals);
/* The same without trailing zeros: "3", "4.5". */
words_figure words_short(double value, int most_decimals);
/* With its sign always shown, "+5" or "−5"; "0" when it rounds to that. */
words_figure words_signed(double value, int decimals);
/* Three figures. */
words_figure words_shown(double bearing_deg);
/* The same with "M" behind it where the case has a variation and the two norths differ. */
words_figure words_marked(const ox_case *c, double true_deg);
/* The same of a direction that is magnetic already. */
words_figure words_given(const ox_case *c, double magnetic_deg);
/* Three figures, magnetic, of a true direction of this case. */
words_figure words_magnetic(const ox_case *c, double true_deg);
/* "8.4° L", "24° R", "0°". */
words_figure words_correction(double correction_deg);
/* "1:07" */
words_figure words_time(double s);
/* "left" and "right" of an angle or a turn. Static, as the next two. */
const char *words_side(bool right);
/* "magnetic" and "true" behind a direction. */
const char *words_north(ox_north north);
/* "heading" or "track": by which the sector is chosen. */
const char *words_crossing(const ox_case *c);
/* A word of a lesson file ("abeam_or_level") as people read it. Static. */
const char *words_choice(const char *word);

#endif
