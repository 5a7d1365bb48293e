/* A window's render nodes, bundled for the renderer that draws with cairo: GTK 4.8's visits every
 * node of a window at every frame, 1 800 of them, whichever small part of it is drawn anew. Here
 * what belongs together, a row of a panel say, becomes one node that holds its drawing, and that is
 * passed over at once where nothing is to be drawn. What a node looks like does not change. */
#ifndef OX_BUNDLE_H
#define OX_BUNDLE_H

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct ox_bundle ox_bundle;

ox_bundle *ox_bundle_new(void);
void ox_bundle_free(ox_bundle *bundle);

/* The same picture in fewer nodes; the caller owns the answer. Nodes that were there in the call
 * before are the same nodes in the answer, so that nothing is drawn anew for it. */
GskRenderNode *ox_bundle_make(ox_bundle *bundle, GskRenderNode *node);

/* How many pictures were recorded since it is there. */
guint ox_bundle_recorded(const ox_bundle *bundle);

/* Whether it serves the window as it is drawn now: with cairo, a pixel to a unit. */
gboolean ox_bundle_serves(GtkWidget *window);

G_END_DECLS

#endif
