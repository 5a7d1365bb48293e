/* The page of places: how the fix of the shown case is given and where that is, the points of the
 * lesson, and the route with its missed approach. */
#ifndef OX_PLACES_PANEL_H
#define OX_PLACES_PANEL_H

#include <gtk/gtk.h>

#include "ox_document_places.h"
#include "ox_point_editor.h"
#include "ox_route_list.h"

G_BEGIN_DECLS

#define OX_TYPE_PLACES_PANEL (ox_places_panel_get_type())
G_DECLARE_FINAL_TYPE(OxPlacesPanel, ox_places_panel, OX, PLACES_PANEL, GtkWidget)

/* Holds a reference. */
void ox_places_panel_set_document(OxPlacesPanel *self, OxDocument *document);

/* For tests. */
OxPointEditor *ox_places_panel_fix_editor(OxPlacesPanel *self);
OxPointEditor *ox_places_panel_point_editor(OxPlacesPanel *self);
GtkDropDown *ox_places_panel_station(OxPlacesPanel *self); /* "No point", then the points */
OxRouteList *ox_places_panel_route(OxPlacesPanel *self);
const char *ox_places_panel_fix_words(OxPlacesPanel *self);
void ox_places_panel_select_point(OxPlacesPanel *self, const char *name);
void ox_places_panel_add_point(OxPlacesPanel *self);
void ox_places_panel_add_point_at(OxPlacesPanel *self, ox_latlon at);
void ox_places_panel_delete_point(OxPlacesPanel *self);

G_END_DECLS

#endif
