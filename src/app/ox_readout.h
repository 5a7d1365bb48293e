/* The readout: what a handle is and says, beside it, with buttons that step it. */
#ifndef OX_READOUT_H
#define OX_READOUT_H

#include <gtk/gtk.h>

#include "oxbow/handles.h"

G_BEGIN_DECLS

#define OX_TYPE_READOUT (ox_readout_get_type())
G_DECLARE_FINAL_TYPE(OxReadout, ox_readout, OX, READOUT, GtkWidget)

/* Signal "step" (guint handle, int steps): one of its buttons was pressed. */
GtkWidget *ox_readout_new(void);
/* OX_HANDLE_COUNT: nothing, it is hidden. The wind has a pair of buttons for each of its two
 * values. */
void ox_readout_show(OxReadout *self, ox_handle handle, const char *words, gboolean with_buttons);
/* Words about something that has no buttons. */
void ox_readout_say(OxReadout *self, const char *words);
const char *ox_readout_text(OxReadout *self); /* "Inbound course: 240° magnetic"; "" while hidden */

G_END_DECLS

#endif
