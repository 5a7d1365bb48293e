/* The pages of words, of the cross-check and of time and fuel, the light over the picture and the
 * fuel along the time: put into the window and joined to each other. */
#include "ox_window_private.h"

#include <string.h>

#include "ox_classroom.h"
#include "ox_preference.h"
#include "ox_number_field.h"
#include "oxbow/crosscheck.h"
#include "oxbow/text.h"

/* While the answer is hidden, no light may show where it lies. */
static ox_feature allowed(OxWindow *self, ox_feature feature) {
  gboolean tells = ox_feature_is_flown(feature) && ox_prediction_hides(self->prediction);
  return tells ? OX_FEATURE_NONE : feature;
}

static void set_highlight(OxWindow *self, ox_feature feature) {
  ox_highlight_set_feature(self->highlight, allowed(self, feature));
}

static void pointed_cb(OxWordsPanel *panel, int feature, OxWindow *self) {
  set_highlight(self, (ox_feature)feature);
}

/* NULL: nothing that could be used. */
static void understood_cb(OxWordsPanel *panel, const ox_case *meant, OxWindow *self) {
  ox_overlays_set_said(self->overlays, meant);
}

static gboolean words_are_shown(OxWindow *self) {
  const char *page = gtk_stack_get_visible_child_name(self->left_pages);
  return g_strcmp0(page, "words") == 0 && gtk_widget_get_mapped(GTK_WIDGET(self->left_pages));
}

static void mark(OxWindow *self, ox_feature feature) {
  ox_words_panel_mark_feature(self->words, allowed(self, feature));
  set_highlight(self, feature);
}

/* From a picture to the words: only while they are on the screen. */
static void picture_motion_cb(GtkEventControllerMotion *motion, double x, double y,
                              OxWindow *self) {
  GtkWidget *picture = gtk_event_controller_get_widget(GTK_EVENT_CONTROLLER(motion));
  if (words_are_shown(self)) mark(self, ox_highlight_feature_at(self->highlight, picture, x, y));
}

static void picture_leave_cb(OxWindow *self) {
  if (words_are_shown(self)) mark(self, OX_FEATURE_NONE);
}

/* Whoever compares with what the equipment shows wants to see both; whoever leaves the page without
 * having entered anything does not want to be told so on the other ones. */
static void page_cb(OxWindow *self) {
  const char *page = gtk_stack_get_visible_child_name(self->left_pages);
  gboolean checks = g_strcmp0(page, "check") == 0;
  int compare = ox_overlays_compare(self->overlays);
  set_highlight(self, OX_FEATURE_NONE);
  if (checks && compare == OX_COMPARE_NOTHING)
    g_action_group_change_action_state(G_ACTION_GROUP(self), "compare",
                                       g_variant_new_int32(OX_COMPARE_SHOWN));
  else if (!checks && compare == OX_COMPARE_SHOWN &&
           !ox_shown_is_given(ox_document_case(self->document)))
    g_action_group_change_action_state(G_ACTION_GROUP(self), "compare",
                                       g_variant_new_int32(OX_COMPARE_NOTHING));
}

/* ---- actions ---------------------------------------------------------------------------- */

static void draw_said_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  int compare = g_variant_get_boolean(state) ? OX_COMPARE_SAID : OX_COMPARE_NOTHING;
  g_action_group_change_action_state(G_ACTION_GROUP(data), "compare",
                                     g_variant_new_int32(compare));
  g_simple_action_set_state(action, state);
}

static void draw_shown_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  int compare = g_variant_get_boolean(state) ? OX_COMPARE_SHOWN : OX_COMPARE_NOTHING;
  g_action_group_change_action_state(G_ACTION_GROUP(data), "compare",
                                     g_variant_new_int32(compare));
  g_simple_action_set_state(action, state);
}

static void overlays_changed_cb(OxWindow *self) {
  static const struct {
    const char *name;
    int compare;
  } draws[] = {{"draw-shown", OX_COMPARE_SHOWN}, {"draw-said", OX_COMPARE_SAID}};
  for (size_t i = 0; i < G_N_ELEMENTS(draws); i++) {
    gboolean drawn = ox_overlays_compare(self->overlays) == draws[i].compare;
    GAction *action = g_action_map_lookup_action(G_ACTION_MAP(self), draws[i].name);
    g_simple_action_set_state(G_SIMPLE_ACTION(action), g_variant_new_boolean(drawn));
  }
}

static void focus_first(OxWindow *self, const char *page) {
  if (strcmp(page, "words") == 0)
    gtk_widget_grab_focus(GTK_WIDGET(ox_words_panel_entry(self->words)));
  else if (strcmp(page, "check") == 0)
    gtk_widget_grab_focus(ox_check_panel_editor(self->check, "shown.fix"));
  else if (strcmp(page, "time") == 0)
    gtk_widget_grab_focus(ox_number_field_get_text(
        OX_NUMBER_FIELD(ox_time_panel_editor(self->time, "arrival.fix_at"))));
  else if (strcmp(page, "places") == 0)
    gtk_widget_child_focus(GTK_WIDGET(self->places), GTK_DIR_TAB_FORWARD);
  else
    gtk_widget_child_focus(gtk_stack_get_visible_child(self->left_pages), GTK_DIR_TAB_FORWARD);
}

/* To a page by a key, with the focus in its first entry. */
static void page_action_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = data;
  const char *page = g_action_get_name(G_ACTION(action)) + strlen("page-");
  if (!gtk_stack_get_child_by_name(self->left_pages, page)) return;
  ox_window_bring_inputs(self);
  gtk_stack_set_visible_child_name(self->left_pages, page);
  focus_first(self, page);
}

static const GActionEntry entries[] = {
    {.name = "draw-said", .state = "false", .change_state = draw_said_cb},
    {.name = "draw-shown", .state = "false", .change_state = draw_shown_cb},
    {.name = "page-hold", .activate = page_action_cb},
    {.name = "page-words", .activate = page_action_cb},
    {.name = "page-check", .activate = page_action_cb},
    {.name = "page-time", .activate = page_action_cb},
    {.name = "page-places", .activate = page_action_cb},
};

/* ---- putting it in ---------------------------------------------------------------------- */

static void add_pages(OxWindow *self) {
  self->words = g_object_new(OX_TYPE_WORDS_PANEL, NULL);
  self->check = g_object_new(OX_TYPE_CHECK_PANEL, NULL);
  self->time = g_object_new(OX_TYPE_TIME_PANEL, NULL);
  ox_words_panel_set_document(self->words, self->document);
  ox_check_panel_set_document(self->check, self->document);
  ox_time_panel_set_document(self->time, self->document);
  gtk_stack_add_titled(self->left_pages, GTK_WIDGET(self->words), "words", _("Words"));
  gtk_stack_add_titled(self->left_pages, GTK_WIDGET(self->check), "check", _("Check"));
  gtk_stack_add_titled(self->left_pages, GTK_WIDGET(self->time), "time", _("Time"));
  gtk_widget_set_visible(self->left_switcher, TRUE);
  g_signal_connect_object(self->left_pages, "notify::visible-child-name", G_CALLBACK(page_cb),
                          self, G_CONNECT_SWAPPED);
}

void ox_window_light_picture(OxWindow *self, GtkWidget *picture) {
  GtkEventController *motion = gtk_event_controller_motion_new();
  g_signal_connect_object(motion, "motion", G_CALLBACK(picture_motion_cb), self, 0);
  g_signal_connect_object(motion, "leave", G_CALLBACK(picture_leave_cb), self, G_CONNECT_SWAPPED);
  gtk_widget_add_controller(picture, motion);
  ox_highlight_add(self->highlight, picture);
}

static void add_highlight(OxWindow *self) {
  GtkWidget *highlight = ox_highlight_new(self->document, self->player);
  self->highlight = OX_HIGHLIGHT(highlight);
  gtk_overlay_add_overlay(self->board_overlay, highlight);
  g_signal_connect_object(self->words, "understood", G_CALLBACK(understood_cb), self, 0);
  g_signal_connect_object(self->words, "pointed", G_CALLBACK(pointed_cb), self, 0);
  ox_window_light_picture(self, GTK_WIDGET(self->board));
}

static double line_x(GtkWidget *line, double t_s) {
  return ox_time_line_x(OX_TIME_LINE(line), t_s);
}

static void worded_cb(OxWindow *self) {
  ox_preference_set(self->settings, OX_PREFER_WORDING,
                    ox_words_panel_wording(self->words) == OX_WORDING_ICAO ? 1 : 0);
}

void ox_window_add_words(OxWindow *self) {
  g_action_map_add_action_entries(G_ACTION_MAP(self), entries, G_N_ELEMENTS(entries), self);
  add_pages(self);
  add_highlight(self);
  self->fuel_bar = OX_FUEL_BAR(ox_fuel_bar_new(self->document, self->player));
  ox_fuel_bar_set_ruler(self->fuel_bar,
                        GTK_WIDGET(ox_transport_time_line(self->transport)), line_x);
  gtk_box_append(self->below_board, GTK_WIDGET(self->fuel_bar));
  ox_classroom_hides(self->classroom, GTK_WIDGET(self->fuel_bar));
  g_signal_connect_object(self->overlays, "changed", G_CALLBACK(overlays_changed_cb), self,
                          G_CONNECT_SWAPPED);
  g_signal_connect_object(self->words, "worded", G_CALLBACK(worded_cb), self, G_CONNECT_SWAPPED);
}

void ox_window_update_words(OxWindow *self) {
  ox_words_panel_set_wording(self->words, ox_preference_wording(self->settings));
}

OxWordsPanel *ox_window_words(OxWindow *self) { return self->words; }

OxCheckPanel *ox_window_check(OxWindow *self) { return self->check; }

OxTimePanel *ox_window_time(OxWindow *self) { return self->time; }

OxHighlight *ox_window_highlight(OxWindow *self) { return self->highlight; }

OxFuelBar *ox_window_fuel_bar(OxWindow *self) { return self->fuel_bar; }
