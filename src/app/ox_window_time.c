/* Where playing stops by itself and the reason over the picture, the strip of key moments, and the
 * classroom display. */
#include "ox_window_private.h"

#include "ox_classroom.h"
#include "ox_stops.h"

#define WORDS_BYTES 200

static const char *const stop_actions[OX_EVENT_KIND_COUNT] = {
    [OX_EVENT_FIX] = "stop-fix",         [OX_EVENT_TURN_BEGIN] = "stop-turn",
    [OX_EVENT_WINGS_LEVEL] = "stop-level", [OX_EVENT_ABEAM] = "stop-abeam",
    [OX_EVENT_CLOCK_START] = "stop-clock", [OX_EVENT_INTERCEPT] = "stop-intercept",
};

static void stop_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  const char *name = g_action_get_name(G_ACTION(action));
  unsigned kinds = ox_transport_stops(self->transport);
  for (unsigned i = 0; i < OX_EVENT_KIND_COUNT; i++)
    if (g_str_equal(name, stop_actions[i]))
      kinds = g_variant_get_boolean(state) ? kinds | 1U << i : kinds & ~(1U << i);
  ox_transport_set_stops(self->transport, kinds);
  g_simple_action_set_state(action, state);
}

static void stopped_cb(OxPlayer *player, double t_s, OxWindow *self) {
  char reason[WORDS_BYTES];
  ox_stops_words(reason, sizeof reason, ox_document_flight(self->document),
                 ox_transport_stops(self->transport), t_s);
  gtk_label_set_text(self->stop_reason, reason);
  gtk_widget_set_visible(GTK_WIDGET(self->stop_reason), reason[0] != '\0');
}

static void forget_reason(OxWindow *self) {
  gtk_widget_set_visible(GTK_WIDGET(self->stop_reason), FALSE);
}

static void playing_cb(OxPlayer *player, GParamSpec *pspec, OxWindow *self) {
  if (ox_player_playing(player)) forget_reason(self);
}

static void add_stop_actions(OxWindow *self) {
  for (int i = 0; i < OX_EVENT_KIND_COUNT; i++) {
    GSimpleAction *action =
        g_simple_action_new_stateful(stop_actions[i], NULL, g_variant_new_boolean(FALSE));
    g_signal_connect(action, "change-state", G_CALLBACK(stop_cb), self);
    g_action_map_add_action(G_ACTION_MAP(self), G_ACTION(action));
    g_object_unref(action);
  }
}

/* ---- the strip -------------------------------------------------------------------------- */

static void moments_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  ox_veil_set(GTK_WIDGET(OX_WINDOW(data)->moments), OX_VEIL_CLOSED, !g_variant_get_boolean(state));
  g_simple_action_set_state(action, state);
}

static const GActionEntry entries[] = {
    {.name = "moments", .state = "false", .change_state = moments_cb},
};

static void add_moments(OxWindow *self) {
  self->moments = ox_moments_strip_new(self->document, self->player);
  gtk_widget_set_visible(GTK_WIDGET(self->moments), FALSE);
  gtk_box_append(self->below_board, GTK_WIDGET(self->moments));
  g_action_map_add_action_entries(G_ACTION_MAP(self), entries, G_N_ELEMENTS(entries), self);
}

/* ---- the classroom display -------------------------------------------------------------- */

static void add_classroom(OxWindow *self) {
  GtkWidget *transport = GTK_WIDGET(self->transport);
  GtkWidget *const hidden[] = {self->header,
                               self->left,
                               gtk_widget_get_next_sibling(self->left),
                               self->working_side,
                               GTK_WIDGET(self->moments),
                               gtk_widget_get_prev_sibling(transport),
                               transport,
                               GTK_WIDGET(self->above_board)};
  ox_classroom_place place = {self, self->below_board, self->board_overlay};
  self->classroom = ox_classroom_new(&place);
  for (size_t i = 0; i < G_N_ELEMENTS(hidden); i++) ox_classroom_hides(self->classroom, hidden[i]);
}

/* ---- the reason ------------------------------------------------------------------------- */

void ox_window_add_time(OxWindow *self) {
  self->stop_reason = GTK_LABEL(g_object_new(GTK_TYPE_LABEL, "accessible-role",
                                             GTK_ACCESSIBLE_ROLE_ALERT, NULL));
  GtkWidget *reason = GTK_WIDGET(self->stop_reason);
  gtk_widget_add_css_class(reason, "osd");
  gtk_widget_add_css_class(reason, "stop-reason");
  gtk_widget_set_halign(reason, GTK_ALIGN_CENTER);
  gtk_widget_set_valign(reason, GTK_ALIGN_END);
  gtk_widget_set_can_target(reason, FALSE);
  gtk_widget_set_visible(reason, FALSE);
  gtk_label_set_wrap(self->stop_reason, TRUE);
  gtk_overlay_add_overlay(self->board_overlay, reason);
  add_stop_actions(self);
  add_moments(self);
  add_classroom(self);
  /* Moving to the instant of the stop comes before the reason, every other move takes it away. */
  g_signal_connect_object(self->player, "moved", G_CALLBACK(forget_reason), self,
                          G_CONNECT_SWAPPED);
  g_signal_connect_object(self->player, "notify::playing", G_CALLBACK(playing_cb), self, 0);
  g_signal_connect_object(self->player, "stopped", G_CALLBACK(stopped_cb), self, 0);
}

void ox_window_end_time(OxWindow *self) {
  g_clear_pointer(&self->classroom, ox_classroom_free);
}

ox_classroom *ox_window_classroom(OxWindow *self) { return self->classroom; }

OxMomentsStrip *ox_window_moments(OxWindow *self) { return self->moments; }
