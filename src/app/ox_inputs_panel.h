/* The inputs of the shown case, grouped. Every valid change goes into the document at once, as one
 * edit; what is refused is explained below its input. */
#ifndef OX_INPUTS_PANEL_H
#define OX_INPUTS_PANEL_H

#include <gtk/gtk.h>

#include "ox_document.h"
#include "ox_wind_rows.h"

G_BEGIN_DECLS

#define OX_TYPE_INPUTS_PANEL (ox_inputs_panel_get_type())
G_DECLARE_FINAL_TYPE(OxInputsPanel, ox_inputs_panel, OX, INPUTS_PANEL, GtkWidget)

/* Holds a reference. Signal "done": Enter in an input; the board takes the focus. */
void ox_inputs_panel_set_document(OxInputsPanel *self, OxDocument *document);

/* Takes what is being typed before the case is saved, exported or left. FALSE when something
 * typed could not be taken; the field then says what was kept. */
gboolean ox_inputs_panel_commit(OxInputsPanel *self);

/* The editor of an input by its key, for tests; its message, NULL when nothing is wrong. */
GtkWidget *ox_inputs_panel_editor(OxInputsPanel *self, const char *key);
const char *ox_inputs_panel_message(OxInputsPanel *self, const char *key);

/* The rows of wind by altitude or by the minute. */
OxWindRows *ox_inputs_panel_wind(OxInputsPanel *self, ox_wind_rows_kind kind);

G_END_DECLS

#endif
