/* The state of one reading: where we are, what was found, and how it is told. */
#ifndef OX_STORE_READING_H
#define OX_STORE_READING_H

#include <cJSON.h>
#include <stdbool.h>

#include "keys.h"
#include "oxbow/fix.h"
#include "oxbow/lesson.h"
#include "text.h"

#define OX_READING_FIELDS_MAX 128
/* Objects with more members are refused: finding what stands twice compares every two. */
#define OX_READING_MEMBERS_MAX 256
/* Room for a value and what is allowed, in any language. */
#define OX_READING_SENTENCE_BYTES 320

typedef struct {
  const char *name; /* of the file */
  ox_messages *messages;
  bool no_memory;
  size_t fault_count;
  ox_ink *ink; /* of the case that was read last, until it is taken; NULL: none */
  ox_points *points; /* of the lesson: those read so far */

  /* The case being read. */
  bool in_case;
  size_t case_number;    /* from 1 */
  const char *case_name; /* or NULL: it has none */
  ox_fix *fix;           /* how its fix is given */
  bool seen[OX_READING_FIELDS_MAX]; /* by index in ox_fields: given and not null */
  bool told[OX_READING_FIELDS_MAX]; /* a fault was told */
} ox_reading;

/* "FILE: case "NAME": PREFIX.KEY: SENTENCE"; an empty prefix or key leaves its part out. The key
 * may be any bytes and is shortened. Counts a fault. */
void ox_reading_say(ox_reading *r, const char *prefix, const char *key, const char *sentence);
/* "…: VALUE is not ALLOWED". What is allowed is marked for translators wherever it is passed on,
 * and translated here. */
void ox_reading_refuse(ox_reading *r, const char *prefix, const char *key, const cJSON *value,
                       const char *allowed);
/* The same of a fault of a whole case. */
void ox_reading_say_fault(ox_reading *r, const ox_fault *fault);
/* "…: is missing: ALLOWED is needed". */
void ox_reading_say_missing(ox_reading *r, const char *prefix, const char *key,
                            const char *allowed);
/* Whether the member may be looked at: says so and returns false when the same key stands
 * before it. */
bool ox_reading_first(ox_reading *r, const char *prefix, const cJSON *object,
                      const cJSON *member);
/* Whether the value is an object of a size that is walked; says what is wrong otherwise. */
bool ox_reading_object(ox_reading *r, const char *prefix, const char *key, const cJSON *value);
/* A field's value into `base`, or the fault. False when refused (base is untouched). */
bool ox_reading_field(ox_reading *r, const char *prefix, const ox_field *field, void *base,
                      const char *key, const cJSON *value);
/* A text of one line into out, or the fault. */
bool ox_reading_line(ox_reading *r, const char *key, const cJSON *value, char *out,
                     size_t out_bytes, const char *allowed);

/* Index of a field of ox_fields, or OX_READING_FIELDS_MAX. */
size_t ox_reading_index(const ox_field *field);
/* Marks every field of a section (or the field itself) as told. */
void ox_reading_mark_told(ox_reading *r, const char *path);
bool ox_reading_was_told(const ox_reading *r, const char *path);
bool ox_reading_was_seen(const ox_reading *r, const char *path);

/* Faults from now on are those of a case, until ox_reading_leave. */
void ox_reading_enter(ox_reading *r, const cJSON *value, size_t number);
void ox_reading_leave(ox_reading *r);
/* A whole case from its JSON value; number from 1. *out is always a case that ox_case_check
 * accepts, with defaults where something was refused. */
void ox_reading_case(ox_reading *r, const cJSON *value, size_t number, ox_case *out,
                     ox_fix *fix);
/* The lesson's points and route. What names them is looked up at the end. */
void ox_reading_points(ox_reading *r, const cJSON *value);
void ox_reading_route(ox_reading *r, const cJSON *value, ox_route *out);
void ox_reading_missed_approach(ox_reading *r, const cJSON *value, ox_route *out);
/* One point from an object; false after a fault. Points inside it are put into the list. */
bool ox_reading_point(ox_reading *r, const char *prefix, const cJSON *value, ox_point *out);
/* A fix that is an object; the present position; a station that is a point. */
void ox_reading_fix(ox_reading *r, const cJSON *value, ox_case *c, ox_fix *out);
void ox_reading_present(ox_reading *r, const cJSON *value, ox_fix *out);
bool ox_reading_is_point(const cJSON *object);
void ox_reading_station(ox_reading *r, const char *path, const cJSON *value, ox_fix *out);
/* Looks up every name of a point, and settles the cases. */
void ox_reading_look_up(ox_reading *r, ox_lesson *lesson);
/* The wind of a case, and its changes. Where something is refused *out stays as it was. */
void ox_reading_wind(ox_reading *r, const cJSON *value, ox_case *out);
void ox_reading_wind_changes(ox_reading *r, const cJSON *value, ox_case *out);
/* The ink of a case into r->ink; where something is refused, without it. */
void ox_reading_ink(ox_reading *r, const cJSON *value);
/* Takes out of a case's object the strokes that were read. */
void ox_reading_forget_strokes(cJSON *kept_case);

#endif
