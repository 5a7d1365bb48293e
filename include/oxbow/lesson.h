/* Lessons: files with one or more cases (format 1, data/lesson-schema.json).
 *
 * Ownership: every lesson returned here is freed with ox_lesson_free; strings inside belong to
 * the lesson. Keys the program does not know are kept in the lesson and written back.
 *
 * Where the format leaves a choice: a wind needs its speed, and its direction unless it is calm;
 * rows need their altitudes; a leg with a length has to say by what it is flown; names and titles
 * are one line; the charted limit, a leg, its time and length and either airspeed may be null. */
#ifndef OXBOW_LESSON_H
#define OXBOW_LESSON_H

#include "oxbow/case.h"
#include "oxbow/fix.h"
#include "oxbow/ink.h"
#include "oxbow/route.h"
#include "oxbow/status.h"

#define OX_LESSON_TITLE_BYTES 200
#define OX_LESSON_CASES_MAX 200
#define OX_LESSON_FILE_MAX_BYTES (4u * 1024u * 1024u)
#define OX_LESSON_VERSION 1

typedef struct {
  ox_case c;
  ox_fix fix; /* where the fix of the case is */
  ox_ink *ink; /* drawn over its picture, or NULL; owned by the lesson */
  void *kept; /* the JSON object it was read from (unknown keys), or NULL; owned by the lesson */
} ox_lesson_case;

typedef struct {
  char title[OX_LESSON_TITLE_BYTES];
  size_t case_count;
  ox_lesson_case *cases;
  ox_points points; /* every point of the lesson, those that stand inside what uses them too */
  ox_route route;
  void *kept;     /* unknown keys of the top level, or NULL */
  bool read_only; /* written by a newer program: shown, never saved over */
} ox_lesson;

/* What reading or checking found: messages ready for people, each of the form
 *   FILE: case "NAME": hold.inbound_deg: 400 is not a course (0 to 360)
 * (without the case part for faults of the whole file). Freed with ox_messages_clear. */
typedef struct {
  size_t count;
  char **text;
} ox_messages;
void ox_messages_clear(ox_messages *m);

/* A new lesson with one default case. NULL when memory is out. */
ox_lesson *ox_lesson_new(void);
void ox_lesson_free(ox_lesson *lesson); /* NULL is allowed */

/* Reads text (bytes of UTF-8, `name` for messages). All faults are listed, not only the first.
 * OX_OK: *out is the lesson. OX_ADVISORY: the same, with remarks in *messages (newer version).
 * OX_ERROR: *out is untouched and *messages says why. `messages` must be empty on entry. */
ox_status ox_lesson_parse(const char *bytes, size_t length, const char *name, ox_lesson **out,
                          ox_messages *messages);
/* The same from a file. */
ox_status ox_lesson_read(const char *path, ox_lesson **out, ox_messages *messages);

/* The lesson as JSON text (malloc'd, nul-terminated, ends with a newline); NULL when memory is
 * out. Numbers are in the C locale whatever the process locale. The same lesson always gives the
 * same bytes. */
char *ox_lesson_to_text(const ox_lesson *lesson);
/* Writes beside, syncs and renames; on error the old file is whole and *messages says why.
 * Refuses a read_only lesson. */
ox_status ox_lesson_write(const ox_lesson *lesson, const char *path, ox_messages *messages);

/* What is sound but worth a remark, as messages "NAME: …": a poor cut of two radials. OX_ADVISORY
 * when there is any. `messages` must be empty on entry. */
ox_status ox_lesson_remarks(const ox_lesson *lesson, const char *name, ox_messages *messages);

/* Inserts a copy of a case (the fix's place, kept keys and ink of `like` are copied too when
 * it is not NULL) at an index 0..case_count. OX_ERROR when memory is out or OX_LESSON_CASES_MAX is
 * reached. */
ox_status ox_lesson_insert(ox_lesson *lesson, size_t index, const ox_case *c,
                           const ox_lesson_case *like);
/* Removes a case; the last one cannot be removed (OX_ERROR). */
ox_status ox_lesson_remove(ox_lesson *lesson, size_t index);

/* What undo, autosave and "modified" go by (lesson_copy.c): deep copies, and comparisons of what
 * would be written. False and NULL when memory is out, and then `to` is empty. */
bool ox_lesson_case_copy(ox_lesson_case *to, const ox_lesson_case *from);
void ox_lesson_case_clear(ox_lesson_case *c); /* frees what it owns, not the case itself */
bool ox_lesson_case_equal(const ox_lesson_case *a, const ox_lesson_case *b);
/* The same without the values in `c`: kept keys, and what else goes with a case. */
bool ox_lesson_case_rest_equal(const ox_lesson_case *a, const ox_lesson_case *b);
/* Everything but the cases, of which the copy has none; freed with ox_lesson_free. */
ox_lesson *ox_lesson_copy_head(const ox_lesson *lesson);
bool ox_lesson_head_equal(const ox_lesson *a, const ox_lesson *b);
/* About how much memory they take. */
size_t ox_lesson_case_bytes(const ox_lesson_case *c);
size_t ox_lesson_head_bytes(const ox_lesson *lesson);

#endif
