/* The window's actions: what menu, buttons and keys do. */
#include "ox_window_private.h"

#include "ox_classroom.h"
#include "ox_display.h"

#define STEP_S 1.0

/* ---- files ------------------------------------------------------------------------------ */

static void new_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  ox_window_leave(OX_WINDOW(data), OX_THEN_NEW);
}

static void open_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  ox_window_leave(OX_WINDOW(data), OX_THEN_OPEN);
}

static void save_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  ox_window_save(OX_WINDOW(data));
}

static void save_as_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  ox_window_save_as(OX_WINDOW(data));
}

static void save_copy_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  ox_window_save_copy(OX_WINDOW(data));
}

/* ---- the flight ------------------------------------------------------------------------- */

static void play_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  ox_player_set_playing(self->player, !ox_player_playing(self->player));
}

static void step_back_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  ox_player_seek(self->player, ox_player_time_s(self->player) - STEP_S);
}

static void step_forward_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  ox_player_seek(self->player, ox_player_time_s(self->player) + STEP_S);
}

static void go_to_event(OxWindow *self, int step) {
  double t_s = ox_player_time_s(self->player);
  ox_player_seek(self->player,
                 ox_display_next_event_s(ox_document_whole_flight(self->document), t_s, step));
}

static void previous_event_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  go_to_event(OX_WINDOW(data), -1);
}

static void next_event_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  go_to_event(OX_WINDOW(data), 1);
}

static void slower_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  ox_player_change_speed(OX_WINDOW(data)->player, -1);
}

static void faster_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  ox_player_change_speed(OX_WINDOW(data)->player, 1);
}

static void go_start_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxPlayer *player = OX_WINDOW(data)->player;
  ox_player_seek(player, ox_player_begin_s(player));
}

static void go_end_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxPlayer *player = OX_WINDOW(data)->player;
  ox_player_seek(player, ox_player_end_s(player));
}

/* ---- cases and window ------------------------------------------------------------------- */

static void select_case(OxWindow *self, int step) {
  size_t index = ox_document_case_index(self->document);
  if (step < 0 && index == 0) return;
  ox_inputs_panel_commit(self->inputs);
  ox_document_select(self->document, step < 0 ? index - 1 : index + 1);
}

static void previous_case_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  select_case(OX_WINDOW(data), -1);
}

static void next_case_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  select_case(OX_WINDOW(data), 1);
}

static void working_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  ox_veil_set(self->working_side, OX_VEIL_CLOSED, !g_variant_get_boolean(state));
  g_simple_action_set_state(action, state);
}

static void fullscreen_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  GtkWindow *window = GTK_WINDOW(data);
  if (gtk_window_is_fullscreen(window))
    gtk_window_unfullscreen(window);
  else
    gtk_window_fullscreen(window);
}

/* Escape: out of the classroom display or full screen, or from an input back to the board. */
static void leave_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  if (ox_classroom_escape(self->classroom)) return;
  if (gtk_window_is_fullscreen(GTK_WINDOW(self)))
    gtk_window_unfullscreen(GTK_WINDOW(self));
  else
    gtk_widget_grab_focus(GTK_WIDGET(self->board));
}

static void menu_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  gtk_menu_button_popup(OX_WINDOW(data)->menu_button);
}

static const GActionEntry entries[] = {
    {.name = "new", .activate = new_cb},
    {.name = "open", .activate = open_cb},
    {.name = "save", .activate = save_cb},
    {.name = "save-as", .activate = save_as_cb},
    {.name = "save-copy", .activate = save_copy_cb},
    {.name = "play", .activate = play_cb},
    {.name = "step-back", .activate = step_back_cb},
    {.name = "step-forward", .activate = step_forward_cb},
    {.name = "previous-event", .activate = previous_event_cb},
    {.name = "next-event", .activate = next_event_cb},
    {.name = "slower", .activate = slower_cb},
    {.name = "faster", .activate = faster_cb},
    {.name = "go-start", .activate = go_start_cb},
    {.name = "go-end", .activate = go_end_cb},
    {.name = "previous-case", .activate = previous_case_cb},
    {.name = "next-case", .activate = next_case_cb},
    {.name = "working", .state = "true", .change_state = working_cb},
    {.name = "fullscreen", .activate = fullscreen_cb},
    {.name = "leave", .activate = leave_cb},
    {.name = "menu", .activate = menu_cb},
};

void ox_window_add_actions(OxWindow *self) {
  g_action_map_add_action_entries(G_ACTION_MAP(self), entries, G_N_ELEMENTS(entries), self);
}

static void enable(OxWindow *self, const char *name, gboolean enabled) {
  GAction *action = g_action_map_lookup_action(G_ACTION_MAP(self), name);
  g_simple_action_set_enabled(G_SIMPLE_ACTION(action), enabled);
}

void ox_window_update_actions(OxWindow *self) {
  size_t index = ox_document_case_index(self->document);
  gboolean can_save = !ox_document_read_only(self->document);
  enable(self, "save", can_save);
  enable(self, "save-as", can_save);
  enable(self, "save-copy", can_save);
  enable(self, "previous-case", index > 0);
  enable(self, "next-case", index + 1 < ox_document_case_count(self->document));
  enable(self, "play", ox_document_flight(self->document)->leg_count > 0);
}
