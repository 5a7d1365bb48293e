/* What can be undone and redone: steps, each the lesson before and after it. A history of values
 * that knows neither widget nor document. Bounded in number and memory: the oldest steps go. */
#ifndef OX_HISTORY_H
#define OX_HISTORY_H

#include "ox_snapshot.h"

G_BEGIN_DECLS

#define OX_HISTORY_STEPS_MAX 1000
#define OX_HISTORY_BYTES_MAX (64u * 1024u * 1024u)
/* Presses of one button merge into one step while they follow one another as fast as this. */
#define OX_HISTORY_MERGE_US (1000 * 1000)

typedef struct {
  char *name; /* "Inbound Course" */
  ox_snapshot *before, *after;
  size_t index_before, index_after; /* of the case that was shown */
  gint64 at_us;                     /* when its last edit came */
  gboolean open_to_more;            /* the next edit of the same name may become part of it */
} ox_step;

typedef struct ox_history ox_history;

ox_history *ox_history_new(void);
void ox_history_free(ox_history *self);
void ox_history_clear(ox_history *self);

/* Adds a step and forgets those that were undone. The name and the references are taken. With
 * step.open_to_more it becomes part of the last step, if that one was open as well, has the same
 * name and case and is at most OX_HISTORY_MERGE_US old; a merged step that ends where it began is
 * none, and goes. */
void ox_history_add(ox_history *self, ox_step step);
/* The last step is closed: what comes next is another one. */
void ox_history_seal(ox_history *self);

/* The step that would be undone or redone, or NULL. */
const ox_step *ox_history_undo_step(const ox_history *self);
const ox_step *ox_history_redo_step(const ox_history *self);
/* Goes over that step. */
void ox_history_go_back(ox_history *self);
void ox_history_go_forward(ox_history *self);

guint ox_history_count(const ox_history *self);
size_t ox_history_bytes(const ox_history *self);

G_END_DECLS

#endif
