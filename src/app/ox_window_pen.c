/* The pen in the window: its tools, the strip of them over the board, and what it writes on: the
 * lesson, or the sketch while a prediction is asked for. */
#include "ox_window_private.h"

#include "app_id.h"

/* ---- the paper -------------------------------------------------------------------------- */

static const ox_ink *paper_ink(gpointer data) {
  OxWindow *self = data;
  return ox_prediction_hides(self->prediction) ? ox_prediction_sketch(self->prediction)
                                               : ox_document_ink(self->document);
}

static void paper_change(gpointer data, const char *name, const ox_ink *ink) {
  OxWindow *self = data;
  if (ox_prediction_hides(self->prediction))
    ox_prediction_set_sketch(self->prediction, ink);
  else
    ox_document_set_ink(self->document, name, ink);
}

static gboolean paper_viewport(gpointer data, ox_viewport *out) {
  return ox_board_get_viewport(OX_WINDOW(data)->board, out);
}

static ox_palette_id paper_palette(gpointer data) {
  return ox_board_palette(OX_WINDOW(data)->board);
}

/* The pen lies over the first board alone: another one shows the same plane elsewhere. */
static gboolean place_cb(GtkOverlay *overlay, GtkWidget *child, GdkRectangle *place,
                         OxWindow *self) {
  graphene_rect_t bounds;
  if (child != GTK_WIDGET(self->pen) ||
      !gtk_widget_compute_bounds(GTK_WIDGET(self->board), GTK_WIDGET(overlay), &bounds))
    return FALSE;
  *place = (GdkRectangle){(int)bounds.origin.x, (int)bounds.origin.y, (int)bounds.size.width,
                          (int)bounds.size.height};
  return TRUE;
}

/* The strip stands beside the boards and not over their labels. */
static void make_room(OxWindow *self) {
  int width = 0;
  if (gtk_widget_get_visible(self->pen_strip))
    gtk_widget_measure(self->pen_strip, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &width, NULL, NULL);
  gtk_widget_set_margin_start(GTK_WIDGET(self->boards), width);
}

/* ---- actions ---------------------------------------------------------------------------- */

static void pen_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  gboolean taken = g_variant_get_boolean(state);
  g_simple_action_set_state(action, state);
  gtk_widget_set_visible(GTK_WIDGET(self->pen), taken);
  ox_veil_set(self->pen_strip, OX_VEIL_CLOSED, !taken);
  gtk_widget_grab_focus(taken ? GTK_WIDGET(self->pen) : GTK_WIDGET(self->board));
}

static void tool_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  const char *tool = g_variant_get_string(state, NULL);
  gboolean known = TRUE;
  if (g_str_equal(tool, "eraser")) {
    ox_pen_set_tool(self->pen, OX_PEN_ERASES);
  } else if (g_str_equal(tool, "spot")) {
    ox_pen_set_tool(self->pen, OX_PEN_POINTS);
  } else {
    known = FALSE;
    for (int i = 0; i < OX_INK_COLOUR_COUNT; i++) {
      if (!g_str_equal(tool, ox_ink_colour_name((ox_ink_colour)i))) continue;
      known = TRUE;
      ox_pen_set_tool(self->pen, OX_PEN_DRAWS);
      ox_pen_set_ink(self->pen, (ox_ink_colour)i);
    }
  }
  if (known) g_simple_action_set_state(action, state);
}

static void width_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  const char *name = g_variant_get_string(state, NULL);
  for (int i = 0; i < OX_INK_WIDTH_COUNT; i++) {
    if (!g_str_equal(name, ox_ink_width_name((ox_ink_width)i))) continue;
    ox_pen_set_width(OX_WINDOW(data)->pen, (ox_ink_width)i);
    g_simple_action_set_state(action, state);
  }
}

static void clear_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  ox_pen_clear(OX_WINDOW(data)->pen);
}

static const GActionEntry entries[] = {
    {.name = "pen", .state = "false", .change_state = pen_cb},
    {.name = "pen-tool", .parameter_type = "s", .state = "'black'", .change_state = tool_cb},
    {.name = "pen-width", .parameter_type = "s", .state = "'thin'", .change_state = width_cb},
    {.name = "pen-clear", .activate = clear_cb},
};

void ox_window_add_pen(OxWindow *self) {
  static const ox_pen_paper paper = {
      .ink = paper_ink,
      .change = paper_change,
      .viewport = paper_viewport,
      .palette = paper_palette,
  };
  ox_pen_paper ours = paper;
  ours.data = self;
  g_action_map_add_action_entries(G_ACTION_MAP(self), entries, G_N_ELEMENTS(entries), self);
  self->pen = OX_PEN(ox_pen_new(&ours));
  GtkBuilder *builder = gtk_builder_new_from_resource(OX_RESOURCES "/pen_strip.ui");
  self->pen_strip = GTK_WIDGET(gtk_builder_get_object(builder, "pen_strip"));
  g_signal_connect_object(self->board_overlay, "get-child-position", G_CALLBACK(place_cb), self,
                          0);
  gtk_overlay_add_overlay(self->board_overlay, GTK_WIDGET(self->pen));
  gtk_overlay_add_overlay(self->board_overlay, self->pen_strip);
  gtk_widget_set_visible(GTK_WIDGET(self->pen), FALSE);
  gtk_widget_set_visible(self->pen_strip, FALSE);
  g_signal_connect_object(self->pen_strip, "notify::visible", G_CALLBACK(make_room), self,
                          G_CONNECT_SWAPPED);
  g_object_unref(builder);
}
