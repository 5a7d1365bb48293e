/* The transport bar: the time line, play, step from event to event, where to stop, speed, and where
 * the flight is in words and figures. Runs the player from its own frame clock while it plays. */
#ifndef OX_TRANSPORT_H
#define OX_TRANSPORT_H

#include <gtk/gtk.h>

#include "ox_document.h"
#include "ox_player.h"
#include "ox_figure_row.h"
#include "ox_time_line.h"

G_BEGIN_DECLS

#define OX_TYPE_TRANSPORT (ox_transport_get_type())
G_DECLARE_FINAL_TYPE(OxTransport, ox_transport, OX, TRANSPORT, GtkWidget)

/* Holds a reference to each. */
void ox_transport_set_model(OxTransport *self, OxDocument *document, OxPlayer *player);

/* Whether a frame callback is running: only while the flight plays. */
gboolean ox_transport_ticking(OxTransport *self);
const char *ox_transport_instant(OxTransport *self);

/* The kinds of event at which playing stops by itself, bits 1 << ox_event_kind. */
void ox_transport_set_stops(OxTransport *self, unsigned kinds);
unsigned ox_transport_stops(OxTransport *self);

/* Borrowed. */
OxTimeLine *ox_transport_time_line(OxTransport *self);
OxFigureRow *ox_transport_figures(OxTransport *self);

G_END_DECLS

#endif
