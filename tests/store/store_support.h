/* What the tests of the store share: a sound lesson as text, random cases, readings compared. */
#ifndef OX_STORE_SUPPORT_H
#define OX_STORE_SUPPORT_H

#include <stdbool.h>
#include <stddef.h>

#include "oxbow/lesson.h"
#include "ox_test.h"

/* A lesson of one case with the given members besides or instead of the sound ones:
 * lesson_with("\"hold\": { … }") replaces hold. NULL: the sound lesson. In a static buffer. */
const char *lesson_with(const char *case_members);

/* Parses a nul-terminated text under the name "x.oxbow"; the lesson or NULL. */
ox_lesson *parse_text(const char *text, ox_status *status, ox_messages *messages);
/* Parses what has to be sound without a remark, and fails the test with the messages if not. */
ox_lesson *parse_sound(const char *text, const char *what);
/* Fails unless both have the same title, cases and standing. */
void assert_lessons_equal(const ox_lesson *a, const ox_lesson *b, const char *what);

/* A valid case with every field anywhere in its range, rows and changes of wind, station and
 * times included. */
ox_case random_case(ox_random *r);

/* The whole file as nul-terminated text, freed with free(); the test fails when it is not there. */
char *file_text(const char *path, size_t *length);
/* Calls visit for every *.oxbow in a directory, in the order of their names; returns how many. */
int each_lesson(const char *directory, void (*visit)(const char *path, void *context),
                void *context);
/* tests/data/store, or one file in it; in a static buffer. */
const char *data_path(const char *file);

#endif
