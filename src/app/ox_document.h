/* The open lesson: which case is shown, its flight, what can be undone, and whether there is
 * something to save.
 *
 * A GObject without GTK. The document owns the lesson as a snapshot that never changes; every
 * change puts another one in its place and is a step of the history (ox_snapshot.h, ox_history.h).
 * It compares first: nothing is notified when nothing changed. The flight is solved when it is
 * first asked for after a change, and only then.
 *
 * Signals:
 *   "changed" (guint what)  what is a set of OX_DOCUMENT_… bits
 *   "settled" (guint what)  the same for what takes longer than a frame should: right after
 *                           "changed", but while a step is begun only when it pauses, and when it
 *                           ends; then `what` is all that changed since the last time
 *   "history"               other steps can be undone or redone
 *   "saved"                 the lesson and its file are the same: written, or read again
 * Properties (read only, notified on a real change): "modified", "title". */
#ifndef OX_DOCUMENT_H
#define OX_DOCUMENT_H

#include <glib-object.h>

#include "ox_snapshot.h"
#include "oxbow/fields.h"
#include "oxbow/flight.h"
#include "oxbow/lesson.h"

G_BEGIN_DECLS

enum {
  OX_DOCUMENT_CASE = 1 << 0,      /* the shown case has other values */
  OX_DOCUMENT_SELECTION = 1 << 1, /* another case is shown */
  OX_DOCUMENT_LESSON = 1 << 2,    /* another lesson is open */
  OX_DOCUMENT_CASES = 1 << 3,     /* the list of cases: number, order or names */
  OX_DOCUMENT_EXTRAS = 1 << 4,    /* what goes with the shown case or with the lesson besides the
                                     values of cases */
};

#define OX_TYPE_DOCUMENT (ox_document_get_type())
G_DECLARE_FINAL_TYPE(OxDocument, ox_document, OX, DOCUMENT, GObject)

/* Holds ox_lesson_new(), without a path, not modified. */
OxDocument *ox_document_new(void);

/* Takes the lesson (not NULL). path NULL: it has no file yet. Selects the first case, and forgets
 * the history. */
void ox_document_take(OxDocument *self, ox_lesson *lesson, const char *path);
/* The same for what is in no file as it is: it counts as modified until it is saved. */
void ox_document_take_unsaved(OxDocument *self, ox_lesson *lesson, const char *path);
/* Reads a file. On OX_ERROR the lesson that was open stays, and *messages says why. */
ox_status ox_document_open(OxDocument *self, const char *path, ox_messages *messages);
/* Writes to path, which becomes the document's on success. Refused for a read-only lesson. */
ox_status ox_document_save(OxDocument *self, const char *path, ox_messages *messages);

/* Reads the file again, as a step: what was changed here can be had back. On OX_ERROR nothing
 * changes. Not while a step is begun. */
ox_status ox_document_reload(OxDocument *self, ox_messages *messages);
/* The file is not what was saved any more: it counts as modified until it is saved. */
void ox_document_mark_unsaved(OxDocument *self);

/* The lesson for reading, until the next change. */
const ox_lesson *ox_document_lesson(OxDocument *self);
/* The same for keeping: a reference that never changes. */
ox_snapshot *ox_document_snapshot(OxDocument *self);
const char *ox_document_path(OxDocument *self); /* NULL: never saved */
/* The lesson's title, or the file's name, or "Untitled lesson". */
const char *ox_document_title(OxDocument *self);
/* Whether it differs from what was saved or taken, also through undo. */
gboolean ox_document_modified(OxDocument *self);
gboolean ox_document_read_only(OxDocument *self);

size_t ox_document_case_count(OxDocument *self);
size_t ox_document_case_index(OxDocument *self);
/* An index past the end is taken as the last. */
void ox_document_select(OxDocument *self, size_t index);

/* The shown case and its flight; both belong to the document and change with it. */
const ox_case *ox_document_case(OxDocument *self);
const ox_flight *ox_document_flight(OxDocument *self);
/* The flight with the route flown to it and on from it, where the lesson has one: what the player
 * plays. Events and circuits are those of the flight. */
const ox_flight *ox_document_whole_flight(OxDocument *self);

/* Puts other values into the shown case: one undo step, named by the first field that differs,
 * unless a step was begun. A faulty case is refused: OX_ERROR, nothing changes, and *fault (may be
 * NULL) is the first fault. */
ox_status ox_document_edit(OxDocument *self, const ox_case *new_case, ox_fault *fault);
/* The same for what is pressed or typed in quick succession: while the same field is edited again
 * within a second, it stays one step. */
ox_status ox_document_edit_more(OxDocument *self, const ox_case *new_case, ox_fault *fault);
/* Ends such a succession: another input has the focus. */
void ox_document_seal_step(OxDocument *self);
/* ox_document_edit for one field. */
ox_status ox_document_set_field(OxDocument *self, const ox_field *field, double value,
                                ox_fault *fault);
/* Puts another object in the shown case's place, with all that goes with a case: how parts of it
 * that are no values get their steps. The values must be sound. */
void ox_document_replace_case(OxDocument *self, const char *name, const ox_lesson_case *c);
/* The same for what goes with the lesson (its cases are not looked at). */
void ox_document_replace_head(OxDocument *self, const char *name, const ox_lesson *head);

/* What is drawn over the shown case's picture; NULL: nothing. It belongs to the document. */
const ox_ink *ox_document_ink(OxDocument *self);
/* Copies other ink (NULL: none) into its place: a step of that name. */
void ox_document_set_ink(OxDocument *self, const char *name, const ox_ink *ink);

/* Edits from begin to end are one step of that name; not nested. Where nothing differs in the end
 * it is no step. Cancelling restores what was there before. */
void ox_document_begin_step(OxDocument *self, const char *name);
void ox_document_end_step(OxDocument *self);
void ox_document_cancel_step(OxDocument *self);
/* One was begun: a drag is under way. */
gboolean ox_document_in_step(OxDocument *self);

/* Not while a step is begun. The case that the step changed is shown. Names are NULL when there is
 * nothing to undo or redo; they belong to the document. */
gboolean ox_document_can_undo(OxDocument *self);
gboolean ox_document_can_redo(OxDocument *self);
const char *ox_document_undo_name(OxDocument *self);
const char *ox_document_redo_name(OxDocument *self);
void ox_document_undo(OxDocument *self);
void ox_document_redo(OxDocument *self);

/* The list of cases (ox_document_cases.c). Each is one step, and shows the case in question. */

/* Adds a standard case, or a copy of one, below the case at index. OX_ERROR: there are
 * OX_LESSON_CASES_MAX. */
ox_status ox_document_add_case(OxDocument *self, size_t index);
ox_status ox_document_duplicate_case(OxDocument *self, size_t index);
/* The last one stays (OX_ERROR). Then the next case is shown, or the one before. */
ox_status ox_document_delete_case(OxDocument *self, size_t index);
/* Moves a case to where another one is. OX_ERROR: out of range. */
ox_status ox_document_move_case(OxDocument *self, size_t index, size_t to);
/* *why (may be NULL) is a sentence, static, when the name is refused. */
ox_status ox_document_rename_case(OxDocument *self, size_t index, const char *name,
                                  const char **why);
/* In quick succession one step, as with ox_document_edit_more. */
ox_status ox_document_set_title(OxDocument *self, const char *title, const char **why);

/* How often a flight was solved so far: for tests of "one edit, one solve". */
guint ox_document_solve_count(OxDocument *self);
/* For tests: the clock that ox_document_edit_more goes by. */
void ox_document_set_clock(OxDocument *self, gint64 clock_us);

G_END_DECLS

#endif
