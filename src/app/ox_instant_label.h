/* Where the flight is, in words that are always whole: all of them where there is room, without the
 * circuit where there is less, and the clock alone in very large type. How much is said goes by the
 * longest words of the flight, so that it does not change from leg to leg. */
#ifndef OX_INSTANT_LABEL_H
#define OX_INSTANT_LABEL_H

#include <gtk/gtk.h>

#include "oxbow/flight.h"

G_BEGIN_DECLS

#define OX_TYPE_INSTANT_LABEL (ox_instant_label_get_type())
G_DECLARE_FINAL_TYPE(OxInstantLabel, ox_instant_label, OX, INSTANT_LABEL, GtkWidget)

/* An instant (s) of a flight, which is looked at only here. */
void ox_instant_label_show(OxInstantLabel *self, const ox_flight *flight, double t_s);

/* All of the words, which is also what a screen reader is told; and those that are drawn in the
 * width that the label has. Borrowed until the next show. */
const char *ox_instant_label_words(OxInstantLabel *self);
const char *ox_instant_label_drawn(OxInstantLabel *self);
/* Width of what is drawn (px). */
int ox_instant_label_drawn_width(OxInstantLabel *self);

G_END_DECLS

#endif
