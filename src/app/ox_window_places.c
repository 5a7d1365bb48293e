/* The page of places. */
#include "ox_window_private.h"

#include "ox_places_panel.h"

void ox_window_add_places(OxWindow *self) {
  self->places = g_object_new(OX_TYPE_PLACES_PANEL, NULL);
  ox_places_panel_set_document(self->places, self->document);
  gtk_stack_add_titled(self->left_pages, GTK_WIDGET(self->places), "places", "Places");
  gtk_widget_set_visible(self->left_switcher, TRUE);
}

OxPlacesPanel *ox_window_places(OxWindow *self) { return self->places; }
