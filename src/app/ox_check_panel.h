/* The page of the cross-check: what the equipment shows is typed, each item is compared with what
 * was cleared, and what follows where they differ. The drawing of both is the window's. */
#ifndef OX_CHECK_PANEL_H
#define OX_CHECK_PANEL_H

#include <gtk/gtk.h>

#include "ox_document.h"
#include "oxbow/crosscheck.h"

G_BEGIN_DECLS

#define OX_TYPE_CHECK_PANEL (ox_check_panel_get_type())
G_DECLARE_FINAL_TYPE(OxCheckPanel, ox_check_panel, OX, CHECK_PANEL, GtkWidget)

/* Holds a reference. */
void ox_check_panel_set_document(OxCheckPanel *self, OxDocument *document);

/* For tests and the focus: what edits a key ("shown.turns"), and what is said. */
GtkWidget *ox_check_panel_editor(OxCheckPanel *self, const char *key);
const char *ox_check_panel_summary(OxCheckPanel *self);
const char *ox_check_panel_item(OxCheckPanel *self, ox_check_item item);

G_END_DECLS

#endif
