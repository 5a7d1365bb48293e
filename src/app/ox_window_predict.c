/* Predict, then see, in the window: while the answer is asked for, nothing that tells it is shown;
 * then it is flown. */
#include "ox_window_private.h"

#include "oxbow/text.h"

#define PAGE "answer"

static GAction *action_of(OxWindow *self, const char *name) {
  return g_action_map_lookup_action(G_ACTION_MAP(self), name);
}

static void enable(OxWindow *self, const char *name, gboolean enabled) {
  g_simple_action_set_enabled(G_SIMPLE_ACTION(action_of(self, name)), enabled);
}

/* ---- what is shown ---------------------------------------------------------------------- */

/* Pages with what is given stay; all others could tell the answer. */
static void show_pages(OxWindow *self, gboolean hides, gboolean on) {
  GListModel *pages = G_LIST_MODEL(gtk_stack_get_pages(self->left_pages));
  guint shown = 0;
  for (guint i = 0; i < g_list_model_get_n_items(pages); i++) {
    GtkStackPage *page = g_list_model_get_item(pages, i);
    const char *name = gtk_stack_page_get_name(page);
    gboolean answer = g_strcmp0(name, PAGE) == 0, given = g_strcmp0(name, "hold") == 0;
    gtk_stack_page_set_visible(page, answer ? on : given || !hides);
    if (gtk_stack_page_get_visible(page)) shown++;
    g_object_unref(page);
  }
  gtk_widget_set_visible(self->left_switcher, shown > 1);
  g_object_unref(pages);
}

static void show_parts(OxWindow *self, gboolean hides) {
  ox_veil_set(GTK_WIDGET(self->transport), OX_VEIL_ANSWER, hides);
  ox_veil_set(GTK_WIDGET(self->below_board), OX_VEIL_ANSWER, hides);
  ox_veil_set(self->working_side, OX_VEIL_ANSWER, hides);
  enable(self, "working", !hides);
}

static void set_toggle(OxWindow *self, gboolean on) {
  g_simple_action_set_state(G_SIMPLE_ACTION(action_of(self, "predict")),
                            g_variant_new_boolean(on));
}

static void prediction_changed_cb(OxWindow *self) {
  ox_prediction_state state = ox_prediction_get_state(self->prediction);
  gboolean hides = state == OX_PREDICTION_ASKED, on = state != OX_PREDICTION_OFF;
  if (state != self->prediction_shown) {
    self->prediction_shown = state;
    show_parts(self, hides);
    show_pages(self, hides, on);
    set_toggle(self, on);
  }
  enable(self, "predict-fly", hides);
  enable(self, "predict-again", state == OX_PREDICTION_SHOWN);
  enable(self, "predict-back", hides && !ox_ink_is_empty(ox_prediction_sketch(self->prediction)));
}

/* The flight stands still while it is hidden: where it stops by itself would tell. */
static void playing_cb(OxWindow *self) {
  if (ox_prediction_hides(self->prediction)) ox_player_set_playing(self->player, FALSE);
}

/* ---- actions ---------------------------------------------------------------------------- */

static void ask(OxWindow *self) {
  ox_player_set_playing(self->player, FALSE);
  ox_player_seek(self->player, ox_player_begin_s(self->player));
  ox_prediction_set_state(self->prediction, OX_PREDICTION_ASKED);
  gtk_stack_set_visible_child_name(self->left_pages, PAGE);
  ox_answer_panel_grab(self->answers);
}

static void lay_pen_down(OxWindow *self) {
  g_action_change_state(action_of(self, "pen"), g_variant_new_boolean(FALSE));
}

static void predict_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  if (g_variant_get_boolean(state)) {
    ox_inputs_panel_commit(self->inputs);
    ask(self);
    return;
  }
  lay_pen_down(self);
  ox_prediction_set_state(self->prediction, OX_PREDICTION_OFF);
  gtk_stack_set_visible_child_name(self->left_pages, "hold");
  gtk_widget_grab_focus(GTK_WIDGET(self->board));
}

static void fly_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  ox_answer_panel_commit(self->answers);
  lay_pen_down(self);
  ox_prediction_set_state(self->prediction, OX_PREDICTION_SHOWN);
  gtk_stack_set_visible_child_name(self->left_pages, PAGE);
  gtk_widget_grab_focus(GTK_WIDGET(self->board));
  ox_player_seek(self->player, ox_player_begin_s(self->player));
  ox_player_set_playing(self->player, TRUE);
}

static void again_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  ask(OX_WINDOW(data));
}

static void back_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  ox_prediction_take_back(OX_WINDOW(data)->prediction);
}

static const GActionEntry entries[] = {
    {.name = "predict", .state = "false", .change_state = predict_cb},
    {.name = "predict-fly", .activate = fly_cb},
    {.name = "predict-again", .activate = again_cb},
    {.name = "predict-back", .activate = back_cb},
};

/* ---- together --------------------------------------------------------------------------- */

static void add_to_menu(OxWindow *self) {
  GMenuModel *menu = gtk_menu_button_get_menu_model(self->show_button);
  GMenu *teach = g_menu_new();
  g_menu_append(teach, _("_Pen"), "win.pen");
  g_menu_append(teach, _("Predict, _Then See"), "win.predict");
  g_menu_append_section(G_MENU(menu), _("Teach"), G_MENU_MODEL(teach));
  g_object_unref(teach);
}

void ox_window_add_predict(OxWindow *self) {
  g_action_map_add_action_entries(G_ACTION_MAP(self), entries, G_N_ELEMENTS(entries), self);
  self->answers = OX_ANSWER_PANEL(ox_answer_panel_new(self->prediction));
  GtkStackPage *page =
      gtk_stack_add_titled(self->left_pages, GTK_WIDGET(self->answers), PAGE, _("Your Answer"));
  gtk_stack_page_set_visible(page, FALSE);
  g_signal_connect_object(self->prediction, "changed", G_CALLBACK(prediction_changed_cb), self,
                          G_CONNECT_SWAPPED);
  g_signal_connect_object(self->player, "notify::playing", G_CALLBACK(playing_cb), self,
                          G_CONNECT_SWAPPED);
  add_to_menu(self);
  prediction_changed_cb(self);
}
