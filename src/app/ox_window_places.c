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
  ox_window_bring_inputs(self);
  ox_places_panel_select_point(self->places, name);
  gtk_widget_grab_focus(
      ox_point_editor_input(ox_places_panel_point_editor(self->places), "name"));
}

/* FALSE: the fix has no place on the earth, or the board shows the air. */
static gboolean place_here(OxWindow *self, ox_latlon *out) {
  ox_viewport viewport;
  ox_latlon origin;
  if (ox_board_air(self->board) || !ox_board_get_viewport(self->board, &viewport) ||
      ox_fix_place(ox_document_points(self->document), ox_document_fix(self->document),
                   ox_document_case(self->document), &origin, NULL, 0) == OX_ERROR)
    return FALSE;
  return ox_plane_to_place(origin, ox_viewport_to_world(&viewport, self->menu_at), out) !=
         OX_ERROR;
}

void ox_window_update_point_here(OxWindow *self) {
  ox_latlon at;
  GAction *action = g_action_map_lookup_action(G_ACTION_MAP(self), "add-point-here");
  g_simple_action_set_enabled(G_SIMPLE_ACTION(action),
                              !ox_prediction_hides(self->prediction) && place_here(self, &at));
}

/* It is named on its page, where it is selected. */
static void add_here_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  ox_latlon at;
  if (!place_here(self, &at)) return;
  gtk_stack_set_visible_child_name(self->left_pages, "places");
  ox_places_panel_add_point_at(self->places, at);
  gtk_widget_grab_focus(
      ox_point_editor_input(ox_places_panel_point_editor(self->places), "name"));
}

static const GActionEntry entries[] = {
    {.name = "add-point-here", .activate = add_here_cb},
};

void ox_window_add_places(OxWindow *self) {
  g_action_map_add_action_entries(G_ACTION_MAP(self), entries, G_N_ELEMENTS(entries), self);
  self->places = g_object_new(OX_TYPE_PLACES_PANEL, NULL);
  ox_places_panel_set_document(self->places, self->document);
  gtk_stack_add_titled(self->left_pages, GTK_WIDGET(self->places), "places", _("Places"));
  gtk_widget_set_visible(self->left_switcher, TRUE);
  g_signal_connect_object(self->left_pages, "notify::visible-child-name", G_CALLBACK(page_cb),
                          self, G_CONNECT_SWAPPED);
  g_signal_connect_object(self->board, "point-entry", G_CALLBACK(point_entry_cb), self, 0);
}

OxPlacesPanel *ox_window_places(OxWindow *self) { return self->places; }
