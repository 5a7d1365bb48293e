/* The working panel: what the overlays say, the advisories, then every number with how it is found
 * and whose rule it is. The formulas open row by row or all at once. */
#ifndef OX_WORKING_PANEL_H
#define OX_WORKING_PANEL_H

#include <gtk/gtk.h>

#include "ox_document.h"
#include "ox_overlays.h"

G_BEGIN_DECLS

#define OX_TYPE_WORKING_PANEL (ox_working_panel_get_type())
G_DECLARE_FINAL_TYPE(OxWorkingPanel, ox_working_panel, OX, WORKING_PANEL, GtkWidget)

/* Holds a reference. */
void ox_working_panel_set_document(OxWorkingPanel *self, OxDocument *document);

/* What the overlays say stands on top; it holds a reference. Comes before the document. */
void ox_working_panel_set_overlays(OxWorkingPanel *self, OxOverlays *overlays);

/* Numbers of rows and of advisories shown, and how often they were filled: for tests. */
size_t ox_working_panel_row_count(OxWorkingPanel *self);
size_t ox_working_panel_advice_count(OxWorkingPanel *self);
size_t ox_working_panel_overlay_count(OxWorkingPanel *self);
guint ox_working_panel_fill_count(OxWorkingPanel *self);

G_END_DECLS

#endif
