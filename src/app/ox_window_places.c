/* The page of places. */
#include "ox_window_private.h"

#include "ox_places_panel.h"
#include "oxbow/text.h"

/* Symbols can be taken hold of while their page is shown, and the board stays calm otherwise. */
static void page_cb(OxWindow *self) {
  const char *page = gtk_stack_get_visible_child_name(self->left_pages);
  ox_board_show_points(self->board, g_strcmp0(page, "places") == 0);
}

static void point_entry_cb(OxBoard *board, const char *name, OxWindow *self) {
  ox_places_panel_select_point(self->places, name);
  gtk_widget_grab_focus(
      ox_point_editor_input(ox_places_panel_point_editor(self->places), "name"));
}

void ox_window_add_places(OxWindow *self) {
  self->places = g_object_new(OX_TYPE_PLACES_PANEL, NULL);
  ox_places_panel_set_document(self->places, self->document);
  gtk_stack_add_titled(self->left_pages, GTK_WIDGET(self->places), "places", _("Places"));
  gtk_widget_set_visible(self->left_switcher, TRUE);
  g_signal_connect_object(self->left_pages, "notify::visible-child-name", G_CALLBACK(page_cb),
                          self, G_CONNECT_SWAPPED);
  g_signal_connect_object(self->board, "point-entry", G_CALLBACK(point_entry_cb), self, 0);
}

OxPlacesPanel *ox_window_places(OxWindow *self) { return self->places; }
