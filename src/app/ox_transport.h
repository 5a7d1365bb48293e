/* The transport bar: play, step from event to event, speed, the time line and where the flight is
 * in words. Runs the player from its own frame clock while it plays. */
#ifndef OX_TRANSPORT_H
#define OX_TRANSPORT_H

#include <gtk/gtk.h>

#include "ox_document.h"
#include "ox_player.h"

G_BEGIN_DECLS

#define OX_TYPE_TRANSPORT (ox_transport_get_type())
G_DECLARE_FINAL_TYPE(OxTransport, ox_transport, OX, TRANSPORT, GtkWidget)

/* Holds a reference to each. */
void ox_transport_set_model(OxTransport *self, OxDocument *document, OxPlayer *player);

/* Whether a frame callback is running: only while the flight plays. */
gboolean ox_transport_ticking(OxTransport *self);
const char *ox_transport_instant(OxTransport *self);

G_END_DECLS

#endif
