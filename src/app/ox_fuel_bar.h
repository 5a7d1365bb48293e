/* The fuel along the time: a thin bar over the transport's line. How long there is fuel to hold
 * with, then what would be taken from the alternate's and from the reserve, and nothing; the time
 * to leave by and the EFC are marked. Pressed or dragged along, it goes to that instant, as the
 * line below does. Hidden while the case has no fuel. */
#ifndef OX_FUEL_BAR_H
#define OX_FUEL_BAR_H

#include <gtk/gtk.h>

#include "ox_document.h"
#include "ox_player.h"

G_BEGIN_DECLS

#define OX_TYPE_FUEL_BAR (ox_fuel_bar_get_type())
G_DECLARE_FINAL_TYPE(OxFuelBar, ox_fuel_bar, OX, FUEL_BAR, GtkWidget)

/* Holds references. */
GtkWidget *ox_fuel_bar_new(OxDocument *document, OxPlayer *player);
/* Where an instant (s) lies across a widget (px); NULL: even between the bar's margins. */
typedef double (*ox_ruler)(GtkWidget *ruler, double t_s);
void ox_fuel_bar_set_ruler(OxFuelBar *self, GtkWidget *ruler, ox_ruler x_of);

/* Where an instant lies across the bar (px), not clamped. For tests. */
double ox_fuel_bar_x(OxFuelBar *self, double t_s);

G_END_DECLS

#endif
