/* What the desktop's theme asks of the board. */
#ifndef OX_THEME_H
#define OX_THEME_H

#include <gtk/gtk.h>

#include "oxbow/picture.h"

G_BEGIN_DECLS

/* Whether the theme of the widget's display is one of high contrast. */
gboolean ox_theme_has_high_contrast(GtkWidget *widget);

/* The palette that goes with a window: light or dark, each of ordinary or of high contrast. */
ox_palette_id ox_theme_palette(GtkWidget *widget);

G_END_DECLS

#endif
