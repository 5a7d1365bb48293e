/* What the two halves of the writer share: the cases, and the places. */
#ifndef OX_STORE_WRITING_H
#define OX_STORE_WRITING_H

#include <cJSON.h>
#include <stdbool.h>

#include "keys.h"
#include "oxbow/lesson.h"

typedef struct {
  const ox_lesson *lesson;
  bool written[OX_POINTS_MAX]; /* points that stand in the text already */
  bool failed;                 /* memory is out */
} ox_writing;

/* Adds the item, or notes that memory is out. A NULL item is one that could not be made; a NULL
 * key is for an array. */
cJSON *ox_writing_add(ox_writing *w, cJSON *object, const char *key, cJSON *item);
/* A text as one line of at most bytes - 1 bytes. */
void ox_writing_add_text(ox_writing *w, cJSON *object, const char *key, const char *text,
                         size_t bytes);
/* What a kept object has that the table does not know. Not for the keys of a case. */
void ox_writing_keep(ox_writing *w, cJSON *to, const cJSON *kept, ox_key_table table);

/* The lesson's points, route and missed approach point, where it has them. */
void ox_writing_places(ox_writing *w, cJSON *lesson);
/* The fix of a case: a name, or an object. `kept` is what it was read from, or NULL. */
void ox_writing_fix(ox_writing *w, cJSON *hold, const ox_lesson_case *from, const cJSON *kept);
void ox_writing_present(ox_writing *w, cJSON *arrival, const ox_fix *fix, const cJSON *kept);
/* A station that is a point. */
void ox_writing_station(ox_writing *w, cJSON *leg, const ox_fix *fix, const cJSON *kept);

#endif
