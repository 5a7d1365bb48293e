/* Comparing in the window: the panel under the board, and boards beside it for cases that are
 * shown side by side, all on one scale and in step. */
#include "ox_window_private.h"

#include "ox_case_view.h"
#include "ox_classroom.h"
#include "ox_compare_panel.h"
#include "ox_overlays.h"

#define WIDE_ENOUGH_FOR_BOARDS 1500

static OxCompanions *companions_of(OxWindow *self) {
  return ox_overlays_companions(self->overlays);
}

/* ---- side by side ----------------------------------------------------------------------- */

/* The scale on which all of them fit, for boards of one size. */
static ox_fit shared_fit(OxWindow *self, const ox_scene_other *others, size_t count) {
  ox_scene scenes[2 + OX_SCENE_OTHERS_MAX];
  scenes[0] = ox_board_scene(self->board);
  for (size_t i = 0; i < count; i++) {
    scenes[i + 1] = scenes[0];
    scenes[i + 1].c = others[i].c;
    scenes[i + 1].flight = others[i].flight;
    scenes[i + 1].title = others[i].name;
  }
  if (self->air_board) scenes[++count] = ox_board_scene(self->air_board);
  return ox_picture_fit_of(scenes, count + 1, gtk_widget_get_width(GTK_WIDGET(self->board)),
                           gtk_widget_get_height(GTK_WIDGET(self->board)));
}

/* Where a hand let one of them go, all go to the new scale together. */
static void share_fit(OxWindow *self, const ox_fit *fit) {
  gboolean settle = ox_board_is_held(self->board) ||
                    (self->air_board && ox_board_is_held(self->air_board));
  ox_board_share_fit(self->board, fit, settle);
  if (self->air_board) ox_board_share_fit(self->air_board, fit, settle);
}

/* While a hand is on one of them the scale stays: the other ones do not swell and shrink. */
static gboolean is_dragging(OxWindow *self) {
  return ox_board_is_dragging(self->board) ||
         (self->air_board && ox_board_is_dragging(self->air_board));
}

/* Boards side by side need the room of the working, which F9 brings back; it comes back by itself
 * when they go. */
static void make_room(OxWindow *self, gboolean beside) {
  gboolean narrow = gtk_widget_get_width(GTK_WIDGET(self)) < WIDE_ENOUGH_FOR_BOARDS;
  GVariant *state = g_action_group_get_action_state(G_ACTION_GROUP(self), "working");
  gboolean shown = g_variant_get_boolean(state);
  g_variant_unref(state);
  if (beside == self->boards_beside) return;
  self->boards_beside = beside;
  if (beside && narrow && shown) {
    self->working_folded = TRUE;
    g_action_group_change_action_state(G_ACTION_GROUP(self), "working",
                                       g_variant_new_boolean(FALSE));
  } else if (!beside && self->working_folded) {
    self->working_folded = FALSE;
    g_action_group_change_action_state(G_ACTION_GROUP(self), "working",
                                       g_variant_new_boolean(TRUE));
  }
}

static void set_view_count(OxWindow *self, size_t count) {
  for (guint i = 0; i < OX_SCENE_OTHERS_MAX; i++) {
    if (i < count && !self->case_views[i]) {
      GtkWidget *view = ox_case_view_new(self->player);
      self->case_views[i] = view;
      gtk_box_append(self->boards, view);
      ox_window_light_picture(self, view);
    } else if (i >= count && self->case_views[i]) {
      ox_highlight_remove(self->highlight, self->case_views[i]);
      gtk_box_remove(self->boards, self->case_views[i]);
      self->case_views[i] = NULL;
    }
  }
}

void ox_window_update_compare(OxWindow *self) {
  size_t count;
  const ox_scene_other *others = ox_companions_others(companions_of(self), &count);
  /* Boards of other cases would tell what is asked for. */
  if (!ox_companions_beside(companions_of(self)) || ox_prediction_hides(self->prediction))
    count = 0;
  make_room(self, count > 0);
  set_view_count(self, count);
  if (count == 0 && !self->air_board) {
    share_fit(self, NULL);
    return;
  }
  if (!is_dragging(self) || !(self->boards_fit.dev_per_nm > 0.0))
    self->boards_fit = shared_fit(self, others, count);
  ox_scene like = ox_board_scene(self->board);
  share_fit(self, &self->boards_fit);
  for (size_t i = 0; i < count; i++)
    ox_case_view_show(OX_CASE_VIEW(self->case_views[i]), others[i].c, others[i].flight, &like,
                      &self->boards_fit);
}

/* ---- the panel -------------------------------------------------------------------------- */

static void compare_cases_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  gboolean shown = g_variant_get_boolean(state);
  ox_veil_set(self->compare_panel, OX_VEIL_CLOSED, !shown);
  if (shown)
    ox_compare_panel_enter(OX_COMPARE_PANEL(self->compare_panel));
  else if (gtk_widget_get_focus_child(GTK_WIDGET(self->below_board)))
    gtk_widget_grab_focus(GTK_WIDGET(self->board));
  g_simple_action_set_state(action, state);
}

static const GActionEntry entries[] = {
    {.name = "compare-cases", .state = "false", .change_state = compare_cases_cb},
};

void ox_window_add_compare(OxWindow *self) {
  self->compare_panel = ox_compare_panel_new(self->document, companions_of(self));
  gtk_widget_set_visible(self->compare_panel, FALSE);
  gtk_box_append(self->below_board, self->compare_panel);
  ox_classroom_hides(self->classroom, self->compare_panel);
  g_action_map_add_action_entries(G_ACTION_MAP(self), entries, G_N_ELEMENTS(entries), self);
  g_signal_connect_object(companions_of(self), "changed", G_CALLBACK(ox_window_update_compare),
                          self, G_CONNECT_SWAPPED);
  g_signal_connect_object(self->board, "looks-changed", G_CALLBACK(ox_window_update_compare), self,
                          G_CONNECT_SWAPPED);
}
