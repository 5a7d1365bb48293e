/* The lesson's title and its cases as a list: select, rename in place, move by dragging. What the
 * buttons do are actions of the window. */
#ifndef OX_CASES_PANEL_H
#define OX_CASES_PANEL_H

#include <gtk/gtk.h>

#include "ox_document.h"

G_BEGIN_DECLS

#define OX_TYPE_CASES_PANEL (ox_cases_panel_get_type())
G_DECLARE_FINAL_TYPE(OxCasesPanel, ox_cases_panel, OX, CASES_PANEL, GtkWidget)

/* Holds a reference. */
void ox_cases_panel_set_document(OxCasesPanel *self, OxDocument *document);
/* Begins to rename the shown case: its name becomes an entry that has the focus. Return takes the
 * new name, Escape leaves the old one. */
void ox_cases_panel_rename(OxCasesPanel *self);
/* Takes a name that is being typed, if it is good. */
void ox_cases_panel_commit(OxCasesPanel *self);
/* Moves the focus to the row of the shown case. */
void ox_cases_panel_focus(OxCasesPanel *self);

/* Of the case at index, for tests; NULL past the end. */
GtkListBoxRow *ox_cases_panel_row(OxCasesPanel *self, size_t index);
GtkEntry *ox_cases_panel_entry(OxCasesPanel *self, size_t index);

G_END_DECLS

#endif
