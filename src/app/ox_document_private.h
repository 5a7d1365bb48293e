/* What the files of the document share. */
#ifndef OX_DOCUMENT_PRIVATE_H
#define OX_DOCUMENT_PRIVATE_H

#include "ox_document.h"
#include "ox_history.h"

G_BEGIN_DECLS

struct _OxDocument {
  GObject parent_instance;

  /* owned */
  ox_snapshot *now;   /* the lesson as it is */
  ox_snapshot *saved; /* as it is in the file, or was when it was taken */
  ox_lesson view;     /* `now` for reading */
  ox_history *history;
  char *path;
  char *title;
  ox_flight *flight;
  ox_flight *whole;         /* with the route; NULL: there was none yet */
  char *step_name;          /* of the step that was begun; NULL: none */
  ox_snapshot *step_before; /* and what it began with */

  size_t case_index;
  size_t step_index_before;
  gboolean solved;
  gboolean whole_made, has_route;
  gboolean modified;
  guint unsettled; /* what changed since "settled" was told last */
  guint settling;  /* tells it when nothing happens for a while; 0: it need not */
  guint solve_count;
  gint64 clock_us; /* for tests; negative: the real one */
};

/* Puts another lesson and selection in place, takes `next`, and tells what became different. */
void ox_document_show(OxDocument *self, ox_snapshot *next, size_t index);
/* The same as one step of the history, or as part of the step that was begun. Undone, it shows the
 * case at index_before. `name` is copied. Nothing happens when nothing differs. */
void ox_document_do(OxDocument *self, const char *name, ox_snapshot *next, size_t index_before,
                    size_t index_after, gboolean open_to_more);

G_END_DECLS

#endif
