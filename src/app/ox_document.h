/* The open lesson: which case is shown, its flight, and whether there is something to save.
 *
 * A GObject without GTK. The document owns the lesson; every change of a case goes through
 * ox_document_edit, which compares first: nothing is notified when nothing changed. The flight is
 * solved when it is first asked for after a change, and only then.
 *
 * Signals:
 *   "changed" (guint what)  what is a set of OX_DOCUMENT_… bits
 * Properties (read only, notified on a real change): "modified", "title". */
#ifndef OX_DOCUMENT_H
#define OX_DOCUMENT_H

#include <glib-object.h>

#include "oxbow/fields.h"
#include "oxbow/flight.h"
#include "oxbow/lesson.h"

G_BEGIN_DECLS

enum {
  OX_DOCUMENT_CASE = 1 << 0,      /* the shown case has other values */
  OX_DOCUMENT_SELECTION = 1 << 1, /* another case is shown */
  OX_DOCUMENT_LESSON = 1 << 2,    /* another lesson is open */
};

#define OX_TYPE_DOCUMENT (ox_document_get_type())
G_DECLARE_FINAL_TYPE(OxDocument, ox_document, OX, DOCUMENT, GObject)

/* Holds ox_lesson_new(), without a path, not modified. */
OxDocument *ox_document_new(void);

/* Takes the lesson (not NULL). path NULL: it has no file yet. Selects the first case. */
void ox_document_take(OxDocument *self, ox_lesson *lesson, const char *path);
/* Reads a file. On OX_ERROR the lesson that was open stays, and *messages says why. */
ox_status ox_document_open(OxDocument *self, const char *path, ox_messages *messages);
/* Writes to path, which becomes the document's on success. Refused for a read-only lesson. */
ox_status ox_document_save(OxDocument *self, const char *path, ox_messages *messages);

const ox_lesson *ox_document_lesson(OxDocument *self);
const char *ox_document_path(OxDocument *self); /* NULL: never saved */
/* The lesson's title, or the file's name, or "Untitled lesson". */
const char *ox_document_title(OxDocument *self);
gboolean ox_document_modified(OxDocument *self);
gboolean ox_document_read_only(OxDocument *self);

size_t ox_document_case_count(OxDocument *self);
size_t ox_document_case_index(OxDocument *self);
/* An index past the end is taken as the last. */
void ox_document_select(OxDocument *self, size_t index);

/* The shown case and its flight; both belong to the document and change with it. */
const ox_case *ox_document_case(OxDocument *self);
const ox_flight *ox_document_flight(OxDocument *self);

/* Puts other values into the shown case. A faulty case is refused: OX_ERROR, nothing changes, and
 * *fault (may be NULL) is the first fault. */
ox_status ox_document_edit(OxDocument *self, const ox_case *new_case, ox_fault *fault);
/* The same for one field. */
ox_status ox_document_set_field(OxDocument *self, const ox_field *field, double value,
                                ox_fault *fault);

/* How often a flight was solved so far: for tests of "one edit, one solve". */
guint ox_document_solve_count(OxDocument *self);

G_END_DECLS

#endif
