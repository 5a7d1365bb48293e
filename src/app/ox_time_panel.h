/* The page of time and fuel: what is on board and what is to be kept, the clock, what decides
 * without radio; below it what follows, and a table of the passages over the fix. */
#ifndef OX_TIME_PANEL_H
#define OX_TIME_PANEL_H

#include <gtk/gtk.h>

#include "ox_document.h"

G_BEGIN_DECLS

#define OX_TYPE_TIME_PANEL (ox_time_panel_get_type())
G_DECLARE_FINAL_TYPE(OxTimePanel, ox_time_panel, OX, TIME_PANEL, GtkWidget)

/* Holds a reference. */
void ox_time_panel_set_document(OxTimePanel *self, OxDocument *document);

/* For tests and the focus: what edits a key ("fuel.on_board"), what is said, and a cell of the
 * table (row 0 is the head), NULL where there is none. */
GtkWidget *ox_time_panel_editor(OxTimePanel *self, const char *key);
const char *ox_time_panel_words(OxTimePanel *self);
const char *ox_time_panel_cell(OxTimePanel *self, int column, int row);

G_END_DECLS

#endif
