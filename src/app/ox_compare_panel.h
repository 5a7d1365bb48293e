/* The panel under the board where cases to compare with are chosen, and the table of what differs.
 */
#ifndef OX_COMPARE_PANEL_H
#define OX_COMPARE_PANEL_H

#include <gtk/gtk.h>

#include "ox_companions.h"

G_BEGIN_DECLS

#define OX_TYPE_COMPARE_PANEL (ox_compare_panel_get_type())
G_DECLARE_FINAL_TYPE(OxComparePanel, ox_compare_panel, OX, COMPARE_PANEL, GtkWidget)

/* Holds a reference to each. */
GtkWidget *ox_compare_panel_new(OxDocument *document, OxCompanions *companions);

/* The first thing to choose takes the focus. */
void ox_compare_panel_enter(OxComparePanel *self);

/* For tests: what is offered at a place (0, 1), rows of the table, the words of one of them, and
 * how often it was filled. */
GtkDropDown *ox_compare_panel_choice(OxComparePanel *self, guint place);
guint ox_compare_panel_row_count(OxComparePanel *self);
const char *ox_compare_panel_row_words(OxComparePanel *self, guint row);
guint ox_compare_panel_fill_count(OxComparePanel *self);

G_END_DECLS

#endif
