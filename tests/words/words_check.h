/* What every text of the words must be: something, finite, one line, the same in every locale. */
#ifndef OX_TESTS_WORDS_CHECK_H
#define OX_TESTS_WORDS_CHECK_H

#include "ox_test.h"
#include "oxbow/words.h"

/* Fails, naming `what`, when the text is empty, has control characters or a number that is none
 * ("nan", "inf", "unknown", "---"), or a comma between two figures. */
void assert_sound(const char *text, const char *what);
/* Fails when the text does not contain the part. */
void assert_has(const char *text, const char *part, const char *what);
/* The row with a label, or a failure. */
const ox_working_row *find_row(const ox_working *w, const char *label);
/* The German locale, whose decimal point is a comma; a failure when the machine has none. */
void enter_german(void);
void leave_german(void);

#endif
