/* The classroom display. */
#include "ox_classroom.h"

#include <math.h>

#include "ox_display.h"
#include "ox_keys.h"
#include "ox_veil.h"
#include "oxbow/text.h"

#define SHOWN_MS 3000    /* the controls, after the pointer came to rest */
#define MOVED_PX 2.0     /* less is a trembling hand */
#define LARGER_STEP 1.15 /* of the type, a key press */
#define LARGER_MOST 3
#define WIDE_SHARE (1.0 / 32) /* of the width: on an upright screen the figures must fit across */
#define CONTROL_SHARE 0.42 /* type of the controls, of what is pressed */
#define CONTROLS_WIDE_SHARE (1.0 / 64) /* of the width: all of them stand in one bar */
#define CAUTION_SHARE 0.75 /* of the labels */
#define CAUTION_WIDE_SHARE (1.0 / 72) /* of the width: on one line */
#define INSTANT_SHARE 0.8 /* of the figures beside it */

struct ox_classroom {
  OxWindow *window; /* borrowed, like every widget below */
  GPtrArray *hidden;
  GtkWidget *below, *bar, *line, *overlay;
  GtkLabel *instant;
  OxFigureRow *figures;
  GtkCssProvider *look; /* owned; of the controls, which are read at the screen */

  gboolean on, blank, was_fullscreen, was_projector;
  int larger; /* steps of the type, −LARGER_MOST to LARGER_MOST */
  double label_px, figure_px;
  double x, y; /* of the pointer */
  guint hide_source, inhibited;
  gulong layout_handler, focus_handler;
  GtkEventController *keys, *motion, *tab;
};

/* ---- type ------------------------------------------------------------------------------- */

static void set_label_size(GtkLabel *label, double px) {
  PangoAttrList *attributes = pango_attr_list_new();
  pango_attr_list_insert(attributes, pango_attr_size_new_absolute((int)(px * PANGO_SCALE)));
  pango_attr_list_insert(attributes, pango_attr_font_features_new("tnum"));
  gtk_label_set_attributes(label, attributes);
  pango_attr_list_unref(attributes);
}

/* Pressed by a finger at the wall: they grow with the type. So does the window's caution: while the
 * bar lies over the board's own there is no other. */
static void size_controls(ox_classroom *self, int width) {
  double touch = fmax(OX_CLASSROOM_TOUCH_PX, self->label_px);
  double font = fmin(CONTROL_SHARE * touch, CONTROLS_WIDE_SHARE * width);
  double caution = fmin(CAUTION_SHARE * self->label_px, CAUTION_WIDE_SHARE * width);
  int inner = (int)ceil(touch) - 2; /* within a line of 1 px on either side */
  char *css = g_strdup_printf(
      "window.classroom .classroom-bar, window.classroom .penstrip,"
      " window.classroom readout { font-size: %dpx; }"
      "window.classroom .classroom-bar button, window.classroom .penstrip button,"
      " window.classroom readout button { min-width: %dpx; min-height: %dpx; padding: 0 3px; }"
      "window.classroom .caution { font-size: %dpx; }",
      (int)font, inner, inner, (int)caution);
  gtk_css_provider_load_from_data(self->look, css, -1);
  g_free(css);
}

static void size_type(ox_classroom *self, int width, int height) {
  double factor = pow(LARGER_STEP, self->larger);
  double figure_px = fmin(OX_CLASSROOM_FIGURE_SHARE * height * factor, WIDE_SHARE * width);
  double label_px = OX_CLASSROOM_LABEL_SHARE * height * factor;
  if (label_px == self->label_px && figure_px == self->figure_px) return;
  self->label_px = label_px;
  self->figure_px = figure_px;
  ox_window_set_label_size(self->window, self->label_px);
  ox_figure_row_set_size(self->figures, figure_px);
  size_controls(self, width);
  set_label_size(self->instant, fmin(self->label_px, INSTANT_SHARE * figure_px));
}

static void size_type_now(ox_classroom *self) {
  GdkSurface *surface = gtk_native_get_surface(GTK_NATIVE(self->window));
  if (surface) size_type(self, gdk_surface_get_width(surface), gdk_surface_get_height(surface));
}

static void layout_cb(GdkSurface *surface, int width, int height, ox_classroom *self) {
  size_type(self, width, height);
}

static void moved_cb(OxPlayer *player, ox_classroom *self) {
  char text[128];
  if (!self->on) return;
  ox_display_instant(text, sizeof text, ox_document_whole_flight(ox_window_document(self->window)),
                     ox_player_time_s(player));
  if (strcmp(text, gtk_label_get_text(self->instant)) != 0)
    gtk_label_set_text(self->instant, text);
}

/* ---- the controls ----------------------------------------------------------------------- */

static void hide_controls(ox_classroom *self) {
  g_clear_handle_id(&self->hide_source, g_source_remove);
  gtk_widget_set_visible(self->bar, FALSE);
  gtk_widget_set_cursor_from_name(GTK_WIDGET(self->window), self->on ? "none" : NULL);
}

/* They stay while the pointer or the focus is on them. */
static gboolean hide_cb(gpointer data) {
  ox_classroom *self = data;
  GtkStateFlags flags = gtk_widget_get_state_flags(self->bar);
  if (flags & (GTK_STATE_FLAG_PRELIGHT | GTK_STATE_FLAG_FOCUS_WITHIN)) return G_SOURCE_CONTINUE;
  self->hide_source = 0;
  hide_controls(self);
  return G_SOURCE_REMOVE;
}

static void show_controls(ox_classroom *self) {
  if (self->blank) return;
  g_clear_handle_id(&self->hide_source, g_source_remove);
  gtk_widget_set_visible(self->bar, TRUE);
  gtk_widget_set_cursor_from_name(GTK_WIDGET(self->window), NULL);
  self->hide_source = g_timeout_add(SHOWN_MS, hide_cb, self);
}

static void motion_cb(GtkEventControllerMotion *motion, double x, double y, ox_classroom *self) {
  if (hypot(x - self->x, y - self->y) >= MOVED_PX) show_controls(self);
  self->x = x;
  self->y = y;
}

static gboolean key_cb(GtkEventControllerKey *controller, guint key, guint code,
                       GdkModifierType modifiers, ox_classroom *self) {
  if (key == GDK_KEY_Tab || key == GDK_KEY_ISO_Left_Tab) show_controls(self);
  return FALSE;
}

static GtkWidget *button_new(const char *label, const char *name, const char *action) {
  GtkWidget *button = gtk_button_new_with_label(label);
  gtk_actionable_set_action_name(GTK_ACTIONABLE(button), action);
  gtk_widget_set_valign(button, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text(button, name);
  gtk_accessible_update_property(GTK_ACCESSIBLE(button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  return button;
}

static GtkWidget *bar_new(OxWindow *window, GtkWidget **line_out) {
  static const struct {
    const char *label, *name, *action;
  } rows[] = {
      {N_("‹ Case"), N_("Previous Case"), "win.previous-case"},
      {N_("Case ›"), N_("Next Case"), "win.next-case"},
      {N_("‹ Event"), N_("Previous Event, then Previous Case"), "win.show-previous"},
      {N_("Play"), N_("Play or Pause"), "win.play"},
      {N_("Event ›"), N_("Next Event, then Next Case"), "win.show-next"},
      {"A−", N_("Smaller Type"), "win.smaller"},
      {"A+", N_("Larger Type"), "win.larger"},
      {N_("Blank"), N_("Blank the Screen"), "win.blank"},
      {N_("Leave"), N_("Leave the Classroom Display"), "win.leave"},
  };
  enum { LINE_AFTER = 4 };
  GtkWidget *bar = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);
  for (size_t i = 0; i < G_N_ELEMENTS(rows); i++) {
    gtk_box_append(GTK_BOX(bar), button_new(_(rows[i].label), _(rows[i].name), rows[i].action));
    if (i != LINE_AFTER) continue;
    GtkWidget *line = g_object_new(OX_TYPE_TIME_LINE, "hexpand", TRUE, "valign",
                                   GTK_ALIGN_CENTER, NULL);
    ox_time_line_set_model(OX_TIME_LINE(line), ox_window_document(window),
                           ox_window_player(window));
    gtk_box_append(GTK_BOX(bar), line);
    *line_out = line;
  }
  gtk_widget_add_css_class(bar, "toolbar");
  gtk_widget_add_css_class(bar, "classroom-bar");
  gtk_widget_set_valign(bar, GTK_ALIGN_FILL); /* of the place it is given */
  gtk_widget_set_visible(bar, FALSE);
  return bar;
}

/* The bar takes the lower edge of the board up to the map, where the caution is: the window's own
 * stays below it. Title and map stay clear. 0: there is no picture yet. */
static int bar_height(ox_classroom *self) {
  OxBoard *board = ox_window_board(self->window);
  ox_vec origin, size;
  int least, height = gtk_widget_get_height(self->overlay);
  graphene_rect_t bounds;
  if (!ox_board_get_map(board, &origin, &size) ||
      !gtk_widget_compute_bounds(GTK_WIDGET(board), self->overlay, &bounds))
    return 0;
  gtk_widget_measure(self->bar, GTK_ORIENTATION_VERTICAL, gtk_widget_get_width(self->overlay),
                     &least, NULL, NULL, NULL);
  return MAX(least, height - (int)ceil((double)bounds.origin.y + origin.y + size.y));
}

/* And the pen's tools end above the bar. */
static gboolean place_cb(GtkOverlay *overlay, GtkWidget *child, GdkRectangle *place,
                         ox_classroom *self) {
  int bar_px = self->on ? bar_height(self) : 0;
  int width = gtk_widget_get_width(self->overlay), height = gtk_widget_get_height(self->overlay);
  gboolean is_bar = child == self->bar;
  if (bar_px == 0 || !(is_bar || gtk_widget_has_css_class(child, "penstrip"))) return FALSE;
  *place = (GdkRectangle){0, is_bar ? height - bar_px : 0, width,
                          is_bar ? bar_px : height - bar_px};
  return TRUE;
}

/* ---- black ------------------------------------------------------------------------------ */

static void set_blank(ox_classroom *self, gboolean blank) {
  self->blank = blank;
  GtkWidget *window = GTK_WIDGET(self->window);
  gtk_widget_set_opacity(gtk_window_get_child(GTK_WINDOW(window)), blank ? 0 : 1);
  if (blank) {
    ox_player_set_playing(ox_window_player(self->window), FALSE);
    hide_controls(self);
    gtk_widget_add_css_class(window, "blank");
  } else {
    gtk_widget_remove_css_class(window, "blank");
  }
}

/* A touch brings the controls; on black it brings the picture back. */
static void pressed_cb(GtkGestureClick *click, int count, double x, double y, ox_classroom *self) {
  if (!self->on) return;
  if (self->blank) set_blank(self, FALSE);
  show_controls(self);
}

/* ---- actions ---------------------------------------------------------------------------- */

static void classroom_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  ox_classroom_set_on(data, g_variant_get_boolean(state));
}

static void select_beside(ox_classroom *self, int way) {
  OxDocument *document = ox_window_document(self->window);
  size_t index = ox_document_case_index(document);
  if (way > 0 && index + 1 < ox_document_case_count(document))
    ox_document_select(document, index + 1);
  else if (way < 0 && index > 0)
    ox_document_select(document, index - 1);
}

/* While a prediction is asked for, the next thing to show is the answer. */
static void step_asked(ox_classroom *self, int way) {
  if (way > 0)
    g_action_group_activate_action(G_ACTION_GROUP(self->window), "predict-fly", NULL);
  else
    select_beside(self, way);
}

/* A step is the next event of the flight; after the last one, the next case. */
static void step(ox_classroom *self, int way) {
  OxPlayer *player = ox_window_player(self->window);
  OxDocument *document = ox_window_document(self->window);
  double t_s = ox_player_time_s(player);
  double to_s = ox_display_next_event_s(ox_document_whole_flight(document), t_s, way);
  size_t index = ox_document_case_index(document);
  if (ox_prediction_hides(ox_window_prediction(self->window))) {
    step_asked(self, way);
    return;
  }
  ox_player_set_playing(player, FALSE);
  if (to_s != t_s) {
    ox_player_seek(player, to_s);
    return;
  }
  select_beside(self, way);
  if (way < 0 && ox_document_case_index(document) != index &&
      !ox_prediction_hides(ox_window_prediction(self->window)))
    ox_player_seek(player, ox_player_end_s(player)); /* so that forth and back are the same way */
}

static void show_next_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  step(data, 1);
}

static void show_previous_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  step(data, -1);
}

static void blank_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  ox_classroom *self = data;
  set_blank(self, !self->blank);
}

static void change_type(ox_classroom *self, int by) {
  self->larger = CLAMP(self->larger + by, -LARGER_MOST, LARGER_MOST);
  size_type_now(self);
}

static void larger_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  change_type(data, 1);
}

static void smaller_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  change_type(data, -1);
}

static const GActionEntry entries[] = {
    {.name = "classroom", .state = "false", .change_state = classroom_cb},
    {.name = "show-next", .activate = show_next_cb},
    {.name = "show-previous", .activate = show_previous_cb},
    {.name = "blank", .activate = blank_cb},
    {.name = "larger", .activate = larger_cb},
    {.name = "smaller", .activate = smaller_cb},
};

/* All but the first work only in the display. */
static void enable_actions(ox_classroom *self) {
  GActionMap *map = G_ACTION_MAP(self->window);
  for (size_t i = 1; i < G_N_ELEMENTS(entries); i++)
    g_simple_action_set_enabled(G_SIMPLE_ACTION(g_action_map_lookup_action(map, entries[i].name)),
                                self->on);
  g_simple_action_set_state(G_SIMPLE_ACTION(g_action_map_lookup_action(map, "classroom")),
                            g_variant_new_boolean(self->on));
}

/* Whoever takes the focus to a panel that is not seen here would take the keys along. */
static void focus_cb(GtkWindow *window, GParamSpec *pspec, ox_classroom *self) {
  GtkWidget *focus = gtk_window_get_focus(window);
  if (focus && !gtk_widget_get_mapped(focus))
    gtk_widget_grab_focus(GTK_WIDGET(ox_window_board(self->window)));
}

/* ---- coming and going ------------------------------------------------------------------- */

static void listen(ox_classroom *self) {
  GtkWidget *window = GTK_WIDGET(self->window);
  GdkSurface *surface = gtk_native_get_surface(GTK_NATIVE(window));
  if (surface)
    self->layout_handler = g_signal_connect(surface, "layout", G_CALLBACK(layout_cb), self);
  self->keys = ox_keys_add(window, OX_KEYS_CLASSROOM, GTK_PHASE_CAPTURE);
  self->motion = gtk_event_controller_motion_new();
  gtk_event_controller_set_propagation_phase(self->motion, GTK_PHASE_CAPTURE);
  g_signal_connect(self->motion, "motion", G_CALLBACK(motion_cb), self);
  gtk_widget_add_controller(window, self->motion);
  self->tab = gtk_event_controller_key_new();
  gtk_event_controller_set_propagation_phase(self->tab, GTK_PHASE_CAPTURE);
  g_signal_connect(self->tab, "key-pressed", G_CALLBACK(key_cb), self);
  gtk_widget_add_controller(window, self->tab);
  self->focus_handler =
      g_signal_connect(window, "notify::focus-widget", G_CALLBACK(focus_cb), self);
}

static void stop_listening(ox_classroom *self) {
  GtkWidget *window = GTK_WIDGET(self->window);
  GdkSurface *surface = gtk_native_get_surface(GTK_NATIVE(window));
  if (surface && self->layout_handler != 0)
    g_signal_handler_disconnect(surface, self->layout_handler);
  self->layout_handler = 0;
  gtk_widget_remove_controller(window, self->keys);
  gtk_widget_remove_controller(window, self->motion);
  gtk_widget_remove_controller(window, self->tab);
  g_clear_signal_handler(&self->focus_handler, window);
}

static void inhibit(ox_classroom *self, gboolean on) {
  GtkApplication *application = gtk_window_get_application(GTK_WINDOW(self->window));
  if (on && application)
    self->inhibited = gtk_application_inhibit(application, GTK_WINDOW(self->window),
                                              GTK_APPLICATION_INHIBIT_IDLE, _("Classroom display"));
  if (!on && self->inhibited != 0) {
    if (application) gtk_application_uninhibit(application, self->inhibited);
    self->inhibited = 0;
  }
}

static void veil_controls(ox_classroom *self, gboolean hidden) {
  for (guint i = 0; i < self->hidden->len; i++)
    ox_veil_set(g_ptr_array_index(self->hidden, i), OX_VEIL_CLASSROOM, hidden);
}

/* Its strip of tools is of another size in the display, and is not always wanted there. */
static void put_pen_down(ox_classroom *self) {
  g_action_group_change_action_state(G_ACTION_GROUP(self->window), "pen",
                                     g_variant_new_boolean(FALSE));
}

static void forget_look(ox_classroom *self) {
  gtk_style_context_remove_provider_for_display(gdk_display_get_default(),
                                                GTK_STYLE_PROVIDER(self->look));
}

static void enter(ox_classroom *self) {
  ox_palette_id palette = ox_board_palette(ox_window_board(self->window));
  self->was_fullscreen = gtk_window_is_fullscreen(GTK_WINDOW(self->window));
  self->was_projector = palette == OX_PALETTE_PROJECTOR;
  put_pen_down(self);
  gtk_widget_add_css_class(GTK_WIDGET(self->window), "classroom");
  gtk_style_context_add_provider_for_display(
      gdk_display_get_default(), GTK_STYLE_PROVIDER(self->look),
      GTK_STYLE_PROVIDER_PRIORITY_APPLICATION + 1);
  veil_controls(self, TRUE);
  gtk_widget_set_visible(self->below, TRUE);
  if (palette != OX_PALETTE_DARK && palette != OX_PALETTE_CONTRAST_DARK)
    ox_window_set_projector(self->window, TRUE);
  gtk_window_fullscreen(GTK_WINDOW(self->window));
  gtk_widget_grab_focus(GTK_WIDGET(ox_window_board(self->window)));
  listen(self);
  size_type_now(self);
  inhibit(self, TRUE);
  moved_cb(ox_window_player(self->window), self);
  show_controls(self); /* once, so that the way out has been seen */
}

static void leave(ox_classroom *self) {
  put_pen_down(self);
  set_blank(self, FALSE);
  stop_listening(self);
  inhibit(self, FALSE);
  hide_controls(self);
  gtk_widget_set_visible(self->below, FALSE);
  gtk_widget_remove_css_class(GTK_WIDGET(self->window), "classroom");
  forget_look(self);
  veil_controls(self, FALSE);
  if (!self->was_projector) ox_window_set_projector(self->window, FALSE);
  ox_window_set_label_size(self->window, 0);
  self->label_px = self->figure_px = 0;
  if (!self->was_fullscreen) gtk_window_unfullscreen(GTK_WINDOW(self->window));
  gtk_widget_grab_focus(GTK_WIDGET(ox_window_board(self->window)));
}

void ox_classroom_set_on(ox_classroom *self, gboolean on) {
  if (self->on == on) return;
  self->on = on;
  if (on)
    enter(self);
  else
    leave(self);
  enable_actions(self);
}

/* Out of full screen by the desktop's own ways: then the display is over too. */
static void fullscreened_cb(GtkWindow *window, GParamSpec *pspec, ox_classroom *self) {
  if (!gtk_window_is_fullscreen(window)) ox_classroom_set_on(self, FALSE);
}

/* The bar's time line would tell what is asked for. */
static void prediction_cb(OxPrediction *prediction, ox_classroom *self) {
  ox_veil_set(self->line, OX_VEIL_ANSWER, ox_prediction_hides(prediction));
}

void ox_classroom_hides(ox_classroom *self, GtkWidget *widget) {
  g_return_if_fail(!self->on);
  g_ptr_array_add(self->hidden, widget);
}

ox_classroom *ox_classroom_new(const ox_classroom_place *place) {
  ox_classroom *self = g_new0(ox_classroom, 1);
  OxPlayer *player = ox_window_player(place->window);
  self->window = place->window;
  self->hidden = g_ptr_array_new();
  self->look = gtk_css_provider_new();
  self->below = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 24);
  self->instant = GTK_LABEL(gtk_label_new(""));
  gtk_label_set_xalign(self->instant, 0);
  gtk_label_set_ellipsize(self->instant, PANGO_ELLIPSIZE_END);
  gtk_label_set_wrap(self->instant, TRUE);
  gtk_label_set_lines(self->instant, 2); /* no higher than the figures with their captions */
  gtk_widget_set_hexpand(GTK_WIDGET(self->instant), TRUE);
  self->figures = g_object_new(OX_TYPE_FIGURE_ROW, NULL);
  ox_figure_row_set_most_lines(self->figures, 1); /* the board keeps its height */
  ox_figure_row_set_model(self->figures, ox_window_document(self->window), player);
  gtk_box_append(GTK_BOX(self->below), GTK_WIDGET(self->instant));
  gtk_box_append(GTK_BOX(self->below), GTK_WIDGET(self->figures));
  gtk_widget_add_css_class(self->below, "classroom-figures");
  gtk_widget_set_visible(self->below, FALSE);
  gtk_box_append(place->below_board, self->below);
  self->bar = bar_new(self->window, &self->line);
  self->overlay = GTK_WIDGET(place->board_overlay);
  g_signal_connect(self->overlay, "get-child-position", G_CALLBACK(place_cb), self);
  gtk_overlay_add_overlay(place->board_overlay, self->bar);
  GtkGesture *click = gtk_gesture_click_new();
  gtk_event_controller_set_propagation_phase(GTK_EVENT_CONTROLLER(click), GTK_PHASE_CAPTURE);
  g_signal_connect(click, "pressed", G_CALLBACK(pressed_cb), self);
  gtk_widget_add_controller(GTK_WIDGET(place->board_overlay), GTK_EVENT_CONTROLLER(click));
  g_signal_connect(player, "moved", G_CALLBACK(moved_cb), self);
  g_signal_connect(ox_window_prediction(self->window), "changed", G_CALLBACK(prediction_cb), self);
  g_signal_connect(self->window, "notify::fullscreened", G_CALLBACK(fullscreened_cb), self);
  g_action_map_add_action_entries(G_ACTION_MAP(self->window), entries, G_N_ELEMENTS(entries),
                                  self);
  enable_actions(self);
  return self;
}

void ox_classroom_free(ox_classroom *self) {
  if (!self) return;
  g_clear_handle_id(&self->hide_source, g_source_remove);
  if (self->on) stop_listening(self);
  if (self->on) forget_look(self);
  g_clear_object(&self->look);
  inhibit(self, FALSE);
  g_signal_handlers_disconnect_by_data(ox_window_player(self->window), self);
  g_signal_handlers_disconnect_by_data(ox_window_prediction(self->window), self);
  g_signal_handlers_disconnect_by_data(self->window, self);
  g_signal_handlers_disconnect_by_data(self->overlay, self);
  g_ptr_array_unref(self->hidden);
  g_free(self);
}

gboolean ox_classroom_is_on(ox_classroom *self) { return self->on; }

gboolean ox_classroom_escape(ox_classroom *self) {
  if (!self->on) return FALSE;
  if (self->blank)
    set_blank(self, FALSE);
  else
    ox_classroom_set_on(self, FALSE);
  return TRUE;
}

gboolean ox_classroom_is_blank(ox_classroom *self) { return self->blank; }

gboolean ox_classroom_inhibits(ox_classroom *self) { return self->inhibited != 0; }

double ox_classroom_label_px(ox_classroom *self) { return self->label_px; }

OxFigureRow *ox_classroom_figures(ox_classroom *self) { return self->figures; }

GtkWidget *ox_classroom_bar(ox_classroom *self) { return self->bar; }
