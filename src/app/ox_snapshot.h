/* A lesson as it was at one moment: never changes, counted by references, and sharing with the
 * others of its history all that is the same in them. Knows no widget and no document. Safe to be
 * read and let go on any thread.
 *
 * What a lesson and its cases consist of stands in store/lesson_copy.c, and there only. */
#ifndef OX_SNAPSHOT_H
#define OX_SNAPSHOT_H

#include <glib.h>

#include "oxbow/lesson.h"

G_BEGIN_DECLS

typedef struct ox_snapshot ox_snapshot;

/* Of a copy of the lesson. */
ox_snapshot *ox_snapshot_new(const ox_lesson *lesson);
ox_snapshot *ox_snapshot_ref(ox_snapshot *self);
void ox_snapshot_unref(ox_snapshot *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(ox_snapshot, ox_snapshot_unref)

/* The lesson after a change, as a snapshot of its own. Indices are in range; what is handed in is
 * copied. The one with other values of a case shares what else goes with the case. */
ox_snapshot *ox_snapshot_with_values(ox_snapshot *self, size_t index, const ox_case *c);
ox_snapshot *ox_snapshot_with_case(ox_snapshot *self, size_t index, const ox_lesson_case *c);
ox_snapshot *ox_snapshot_with_head(ox_snapshot *self, const ox_lesson *head);
ox_snapshot *ox_snapshot_insert(ox_snapshot *self, size_t index, const ox_lesson_case *c);
ox_snapshot *ox_snapshot_remove(ox_snapshot *self, size_t index);
ox_snapshot *ox_snapshot_move(ox_snapshot *self, size_t from, size_t to);

size_t ox_snapshot_count(const ox_snapshot *self);
const ox_lesson_case *ox_snapshot_case(const ox_snapshot *self, size_t index);
/* A number that a case keeps whatever becomes of its values and its place in the list. */
guint64 ox_snapshot_case_id(const ox_snapshot *self, size_t index);
const ox_lesson *ox_snapshot_head(const ox_snapshot *self); /* has no cases */

/* Whether both would be written as the same file. */
gboolean ox_snapshot_equal(const ox_snapshot *a, const ox_snapshot *b);
/* Whether the list of cases looks the same: which they are, in which order, their names. */
gboolean ox_snapshot_list_equal(const ox_snapshot *a, const ox_snapshot *b);

/* A lesson for reading: its pointers belong to the snapshot, its list of cases to the view, which
 * is used again and again and freed with ox_snapshot_view_clear, never with ox_lesson_free. */
void ox_snapshot_view(const ox_snapshot *self, ox_lesson *view);
void ox_snapshot_view_clear(ox_lesson *view);

/* About how much memory this snapshot takes that the one it was made from does not. */
size_t ox_snapshot_own_bytes(const ox_snapshot *self);

G_END_DECLS

#endif
