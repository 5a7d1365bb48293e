/* The strip of key moments: a small picture and two lines of words for each thing the pilot does in
 * the circuit that is flown (or in the entry). A click or Enter goes to that moment.
 *
 * It is filled anew only when the case or the circuit changes, and not at all while hidden. */
#ifndef OX_MOMENTS_STRIP_H
#define OX_MOMENTS_STRIP_H

#include <gtk/gtk.h>

#include "ox_document.h"
#include "ox_player.h"
#include "oxbow/moments.h"

G_BEGIN_DECLS

#define OX_TYPE_MOMENTS_STRIP (ox_moments_strip_get_type())
G_DECLARE_FINAL_TYPE(OxMomentsStrip, ox_moments_strip, OX, MOMENTS_STRIP, GtkWidget)

/* Holds a reference to each. */
OxMomentsStrip *ox_moments_strip_new(OxDocument *document, OxPlayer *player);

/* What it shows; 0 tiles while it is hidden. The tiles are buttons, borrowed. */
size_t ox_moments_strip_count(OxMomentsStrip *self);
GtkWidget *ox_moments_strip_tile(OxMomentsStrip *self, size_t index);
const ox_moments *ox_moments_strip_moments(OxMomentsStrip *self);
int ox_moments_strip_current(OxMomentsStrip *self); /* the last moment passed; -1: none yet */
guint ox_moments_strip_fill_count(OxMomentsStrip *self);

G_END_DECLS

#endif
