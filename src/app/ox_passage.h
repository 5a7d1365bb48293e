/* How a view goes from where it is to where it belongs: in 0.3 s, slow, fast, slow. */
#ifndef OX_PASSAGE_H
#define OX_PASSAGE_H

#include <gtk/gtk.h>

#include "oxbow/viewport.h"

G_BEGIN_DECLS

/* FALSE where nobody sees it, or animations are off. */
gboolean ox_passage_may_move(GtkWidget *widget);
/* How far it is, 0 to 1, of one that began at a frame's time (µs). */
double ox_passage_share(gint64 begun_us, gint64 now_us);
double ox_passage_between(double a, double b, double share);
/* Turned the shorter way; the middle goes straight as the board sees it. */
ox_viewport ox_passage_viewport(const ox_viewport *a, const ox_viewport *b, double share);
/* Nobody would see the difference. */
gboolean ox_passage_same_viewport(const ox_viewport *a, const ox_viewport *b);

G_END_DECLS

#endif
