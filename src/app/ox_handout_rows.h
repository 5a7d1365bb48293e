/* The rows of a dialog that say what a handout is like: holds a page, the order and its seed, and
 * which cases are in it. They stand in the grid of the dialog that has them, so that their labels
 * line up with its own.
 *
 * Signal "changed": another choice was made. */
#ifndef OX_HANDOUT_ROWS_H
#define OX_HANDOUT_ROWS_H

#include <gtk/gtk.h>

#include "ox_handout.h"

G_BEGIN_DECLS

#define OX_TYPE_HANDOUT_ROWS (ox_handout_rows_get_type())
G_DECLARE_FINAL_TYPE(OxHandoutRows, ox_handout_rows, OX, HANDOUT_ROWS, GObject)

#define OX_HANDOUT_ROW_COUNT 4 /* of the grid, from the one it begins at */

/* Fills rows of a grid with two columns. The names of the cases are copied; all are wanted. */
OxHandoutRows *ox_handout_rows_new(GtkGrid *grid, int at, const ox_lesson *lesson,
                                   const ox_handout_choice *choice);
void ox_handout_rows_set_visible(OxHandoutRows *self, gboolean visible);

ox_handout_choice ox_handout_rows_choice(OxHandoutRows *self);
/* As ox_handout_new takes it; borrowed until it changes. */
const gboolean *ox_handout_rows_wanted(OxHandoutRows *self);
size_t ox_handout_rows_wanted_count(OxHandoutRows *self);
/* Takes the seed that is typed; FALSE: it is no good, which the field says. */
gboolean ox_handout_rows_commit(OxHandoutRows *self);

/* The inputs, for tests: "per-page", "order", "seed", "another", "all", "none". NULL for another
 * key. */
GtkWidget *ox_handout_rows_input(OxHandoutRows *self, const char *key);
GtkWidget *ox_handout_rows_case(OxHandoutRows *self, size_t index);

G_END_DECLS

#endif
