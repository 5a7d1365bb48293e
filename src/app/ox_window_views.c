/* How the window looks at the flight: the menu of views, zoom and pan, the second board with the
 * air view, and the way from a handle to the input that takes its exact value. */
#include "ox_window_private.h"

#include "ox_keys.h"
#include "ox_number_field.h"
#include "oxbow/text.h"

static const char *const ups[] = {"north", "inbound", "aircraft"};

/* Runs on both boards where there are two. */
static void on_boards(OxWindow *self, void (*change)(OxBoard *board, int a, int b), int a, int b) {
  change(self->board, a, b);
  if (self->air_board) change(self->air_board, a, b);
}

static void set_up(OxBoard *board, int up, int unused) { ox_board_set_up(board, (ox_up)up); }
static void zoom(OxBoard *board, int steps, int unused) { ox_board_zoom(board, steps); }
static void fit(OxBoard *board, int unused, int too) { ox_board_zoom_fit(board); }

static void view_up_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  const char *wanted = g_variant_get_string(state, NULL);
  for (int i = 0; i < (int)G_N_ELEMENTS(ups); i++)
    if (g_str_equal(wanted, ups[i])) {
      on_boards(OX_WINDOW(data), set_up, i, 0);
      g_simple_action_set_state(action, state);
    }
}

static void next_up_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  ox_up up = ox_board_view(self->board).up;
  g_action_group_change_action_state(G_ACTION_GROUP(self), "view-up",
                                     g_variant_new_string(ups[((int)up + 1) % 3]));
}

static void zoom_in_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  on_boards(OX_WINDOW(data), zoom, 1, 0);
}

static void zoom_out_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  on_boards(OX_WINDOW(data), zoom, -1, 0);
}

static void zoom_fit_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  on_boards(OX_WINDOW(data), fit, 0, 0);
}

static void pan_left_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  on_boards(OX_WINDOW(data), ox_board_pan, -1, 0);
}

static void pan_right_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  on_boards(OX_WINDOW(data), ox_board_pan, 1, 0);
}

static void pan_up_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  on_boards(OX_WINDOW(data), ox_board_pan, 0, -1);
}

static void pan_down_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  on_boards(OX_WINDOW(data), ox_board_pan, 0, 1);
}

static void air_view_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  ox_board_set_air(OX_WINDOW(data)->board, g_variant_get_boolean(state));
  g_simple_action_set_state(action, state);
}

/* ---- ground and air side by side -------------------------------------------------------- */

static void exact_entry_cb(OxBoard *board, const char *key, OxWindow *self) {
  GtkWidget *editor = ox_inputs_panel_editor(self->inputs, key);
  if (!editor) return;
  ox_window_bring_inputs(self);
  gtk_stack_set_visible_child_name(self->left_pages, "hold");
  if (!gtk_widget_get_visible(editor)) return;
  gtk_widget_grab_focus(OX_IS_NUMBER_FIELD(editor)
                            ? ox_number_field_get_text(OX_NUMBER_FIELD(editor))
                            : editor);
}

static void connect_board(OxWindow *self, OxBoard *board) {
  g_signal_connect_object(board, "exact-entry", G_CALLBACK(exact_entry_cb), self, 0);
}

static void add_air_board(OxWindow *self) {
  GtkWidget *board = g_object_new(OX_TYPE_BOARD, "hexpand", TRUE, "vexpand", TRUE, NULL);
  self->air_board = OX_BOARD(board);
  gtk_accessible_update_property(GTK_ACCESSIBLE(board), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _("Holding pattern, carried with the air"), -1);
  ox_board_set_overlays(self->air_board, self->overlays);
  ox_board_set_prediction(self->air_board, self->prediction);
  ox_board_set_model(self->air_board, self->document, self->player);
  ox_board_set_projector(self->air_board, ox_board_palette(self->board) == OX_PALETTE_PROJECTOR);
  ox_board_set_up(self->air_board, ox_board_view(self->board).up);
  ox_board_set_air(self->air_board, TRUE);
  ox_keys_add(board, OX_KEYS_FLIGHT, GTK_PHASE_BUBBLE);
  connect_board(self, self->air_board);
  gtk_box_append(self->boards, board);
  ox_window_light_picture(self, board);
  g_signal_connect_object(board, "looks-changed", G_CALLBACK(ox_window_update_compare), self,
                          G_CONNECT_SWAPPED);
  ox_window_update_compare(self);
}

static void both_views_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  GAction *air = g_action_map_lookup_action(G_ACTION_MAP(self), "air-view");
  gboolean both = g_variant_get_boolean(state);
  if (both && !self->air_board) {
    g_action_change_state(air, g_variant_new_boolean(FALSE)); /* the first one is the ground's */
    add_air_board(self);
  } else if (!both && self->air_board) {
    gtk_widget_grab_focus(GTK_WIDGET(self->board));
    GtkWidget *gone = GTK_WIDGET(self->air_board);
    self->air_board = NULL;
    ox_highlight_remove(self->highlight, gone);
    gtk_box_remove(self->boards, gone);
    ox_window_update_compare(self);
  }
  g_simple_action_set_enabled(G_SIMPLE_ACTION(air), !both);
  g_simple_action_set_state(action, state);
}

static const GActionEntry entries[] = {
    {.name = "view-up", .parameter_type = "s", .state = "'north'", .change_state = view_up_cb},
    {.name = "next-up", .activate = next_up_cb},
    {.name = "zoom-in", .activate = zoom_in_cb},
    {.name = "zoom-out", .activate = zoom_out_cb},
    {.name = "zoom-fit", .activate = zoom_fit_cb},
    {.name = "pan-left", .activate = pan_left_cb},
    {.name = "pan-right", .activate = pan_right_cb},
    {.name = "pan-up", .activate = pan_up_cb},
    {.name = "pan-down", .activate = pan_down_cb},
    {.name = "air-view", .state = "false", .change_state = air_view_cb},
    {.name = "both-views", .state = "false", .change_state = both_views_cb},
};

static GMenuModel *view_menu(void) {
  static const char *const turned[][2] = {{N_("_North Up"), "win.view-up::north"},
                                          {N_("_Inbound Course Up"), "win.view-up::inbound"},
                                          {N_("Air_craft Up"), "win.view-up::aircraft"}};
  GMenu *menu = g_menu_new(), *up = g_menu_new(), *air = g_menu_new(), *scale = g_menu_new();
  for (size_t i = 0; i < G_N_ELEMENTS(turned); i++) 
    g_menu_append(up, _(turned[i][0]), turned[i][1]);
  g_menu_append(air, _("Carried with the _Air"), "win.air-view");
  g_menu_append(air, _("_Ground and Air Side by Side"), "win.both-views");
  g_menu_append(scale, _("_Zoom In"), "win.zoom-in");
  g_menu_append(scale, _("Zoom _Out"), "win.zoom-out");
  g_menu_append(scale, _("_Fit the Board"), "win.zoom-fit");
  g_menu_append_section(menu, NULL, G_MENU_MODEL(up));
  g_menu_append_section(menu, NULL, G_MENU_MODEL(air));
  g_menu_append_section(menu, NULL, G_MENU_MODEL(scale));
  g_object_unref(up);
  g_object_unref(air);
  g_object_unref(scale);
  return G_MENU_MODEL(menu);
}

void ox_window_add_views(OxWindow *self) {
  GMenuModel *menu = view_menu();
  GtkWidget *button = gtk_menu_button_new();
  g_action_map_add_action_entries(G_ACTION_MAP(self), entries, G_N_ELEMENTS(entries), self);
  gtk_menu_button_set_label(GTK_MENU_BUTTON(button), _("View"));
  gtk_menu_button_set_menu_model(GTK_MENU_BUTTON(button), menu);
  gtk_widget_set_tooltip_text(button, _("Look at the Picture Another Way"));
  gtk_accessible_update_property(GTK_ACCESSIBLE(button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _("Look at the Picture Another Way"), -1);
  gtk_header_bar_pack_start(GTK_HEADER_BAR(self->header), button);
  connect_board(self, self->board);
  g_object_unref(menu);
}
