/* The time line. What stays is kept as a render node; the play position is drawn over it. */
#include "ox_time_line.h"

#include <math.h>

#include "ox_display.h"
#include "ox_stretches.h"
#include "ox_theme.h"
#include "ox_time_line_draw.h"
#include "oxbow/moments.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

#define SIDE_PX 8        /* room for half the handle at both ends */
#define TOP_PX 5         /* of the handle above the stretches */
#define MARKS_PX 9       /* height of the row of event marks */
#define NAME_PAD_PX 3.0  /* between a name and the edge of its stretch */
#define MARKS_MAX 160    /* more events than this would touch: only the fixes are marked */
#define NEAR_PX 4.0      /* of an event that the pointer means */
#define LEAST_WIDTH 160
#define NATURAL_WIDTH 400
#define SCROLL_STEP_S 1.0
#define WORDS_MOST 400      /* that are remembered as they were set */

struct _OxTimeLine {
  GtkWidget parent_instance;

  /* owned */
  OxDocument *document;
  OxPlayer *player;
  GskRenderNode *kept; /* the stretches; NULL: to be drawn anew */
  GArray *stretches;   /* of ox_stretch */
  GArray *names;       /* of ox_time_line_name, as drawn */
  PangoLayout *layout; /* measures a line of text */
  GHashTable *set;     /* name -> its PangoLayout: while dragging the same ones come again */

  ox_time_line_look look;
  int line_px;         /* height of a line of text */
  double drawn_x;      /* of the position in the last frame */
  gboolean was_playing; /* before the button went down */
  char *said;           /* to the screen reader */
  ox_time_line_counts counts;
};

G_DEFINE_FINAL_TYPE(OxTimeLine, ox_time_line, GTK_TYPE_WIDGET)

/* ---- time and place --------------------------------------------------------------------- */

static double span_px(OxTimeLine *self) {
  return MAX(1.0, gtk_widget_get_width(GTK_WIDGET(self)) - 2.0 * SIDE_PX);
}

double ox_time_line_x(OxTimeLine *self, double t_s) {
  double begin_s = ox_player_begin_s(self->player), end_s = ox_player_end_s(self->player);
  double share = end_s > begin_s ? (t_s - begin_s) / (end_s - begin_s) : 0;
  return SIDE_PX + CLAMP(share, 0, 1) * span_px(self);
}

double ox_time_line_time_s(OxTimeLine *self, double x) {
  double begin_s = ox_player_begin_s(self->player), end_s = ox_player_end_s(self->player);
  return begin_s + CLAMP((x - SIDE_PX) / span_px(self), 0, 1) * (end_s - begin_s);
}

static const ox_event *event_near(OxTimeLine *self, double x) {
  const ox_flight *flight = ox_document_flight(self->document);
  const ox_event *nearest = NULL;
  double best = NEAR_PX;
  for (size_t i = 0; i < flight->event_count; i++) {
    double away = fabs(ox_time_line_x(self, flight->events[i].t_s) - x);
    if (away > best || (nearest && away == best)) continue;
    best = away;
    nearest = &flight->events[i];
  }
  return nearest;
}

char *ox_time_line_words_at(OxTimeLine *self, double x) {
  const ox_stretch *stretches = (const ox_stretch *)(void *)self->stretches->data;
  const ox_stretch *stretch =
      ox_stretches_at(stretches, self->stretches->len, ox_time_line_time_s(self, x));
  const ox_event *event = event_near(self, x);
  char words[128], clock[24];
  if (!stretch) return g_strdup("");
  if (!event) {
    ox_stretches_words(words, sizeof words, stretch);
    return g_strdup(words);
  }
  ox_words_min_s(clock, sizeof clock, event->t_s);
  return g_strdup_printf("%s, %s", ox_moments_event(event->kind), clock);
}

/* ---- what stays ------------------------------------------------------------------------- */

static PangoLayout *set_name(OxTimeLine *self, const char *text) {
  PangoLayout *layout = g_hash_table_lookup(self->set, text);
  if (layout) return layout;
  if (g_hash_table_size(self->set) >= WORDS_MOST) g_hash_table_remove_all(self->set);
  layout = gtk_widget_create_pango_layout(GTK_WIDGET(self), text);
  g_hash_table_insert(self->set, g_strdup(text), layout);
  return layout;
}

static double width_of(const char *text, void *data) {
  int width;
  pango_layout_get_pixel_size(set_name(data, text), &width, NULL);
  return width;
}

/* A name in the middle of its stretch, whole or not at all. */
static void draw_name(OxTimeLine *self, cairo_t *cr, const ox_stretch *stretch, double y,
                      gboolean on_fill) {
  double x0 = ox_time_line_x(self, stretch->t0_s), x1 = ox_time_line_x(self, stretch->t1_s);
  const char *text =
      ox_stretches_label(stretch, x1 - x0 - 2 * NAME_PAD_PX, width_of, self);
  if (!text) return;
  double width = width_of(text, self), x = x0 + 0.5 * (x1 - x0 - width);
  if (on_fill)
    ox_time_line_draw_ground(cr, &self->look, stretch,
                             (ox_time_line_box){x - 2, y + 1, width + 4, self->line_px - 2});
  gdk_cairo_set_source_rgba(cr, &self->look.text);
  cairo_move_to(cr, x, y);
  pango_cairo_show_layout(cr, set_name(self, text));
  ox_time_line_name name = {g_intern_string(text), x, width, x0, x1};
  g_array_append_val(self->names, name);
}

static double band_bottom(OxTimeLine *self) { return TOP_PX + self->line_px + 4; }

static void draw_stretches(OxTimeLine *self, cairo_t *cr) {
  for (guint i = 0; i < self->stretches->len; i++) {
    const ox_stretch *stretch = &g_array_index(self->stretches, ox_stretch, i);
    /* On whole pixels, where an edge is sharp and nothing has to be smoothed. */
    double x0 = round(ox_time_line_x(self, stretch->t0_s));
    double x1 = round(ox_time_line_x(self, stretch->t1_s));
    ox_time_line_box at = {x0, TOP_PX, x1 - x0, self->line_px + 3};
    ox_time_line_draw_stretch(cr, &self->look, stretch, at);
  }
  for (guint i = 0; i < self->stretches->len; i++)
    draw_name(self, cr, &g_array_index(self->stretches, ox_stretch, i), TOP_PX + 2, TRUE);
}

static void draw_events(OxTimeLine *self, cairo_t *cr) {
  const ox_flight *flight = ox_document_flight(self->document);
  gboolean all = flight->event_count <= MARKS_MAX;
  for (size_t i = flight->event_count; i-- > 0;) { /* the fix over the turn that begins there */
    const ox_event *event = &flight->events[i];
    if (!all && event->kind != OX_EVENT_FIX) continue;
    ox_time_line_draw_event(cr, &self->look, event->kind, ox_time_line_x(self, event->t_s),
                            band_bottom(self), MARKS_PX);
  }
}

static void draw_parts(OxTimeLine *self, cairo_t *cr) {
  guint count = self->stretches->len;
  ox_stretch *parts = g_new(ox_stretch, count + 1);
  char(*names)[OX_PART_NAME_BYTES] = g_malloc((count + 1) * sizeof *names);
  const ox_stretch *stretches = (const ox_stretch *)(void *)self->stretches->data;
  size_t part_count = ox_stretches_parts(stretches, count, parts, names);
  for (size_t i = 0; i < part_count; i++)
    draw_name(self, cr, &parts[i], band_bottom(self) + MARKS_PX, FALSE);
  g_free(names);
  g_free(parts);
}

static void choose_look(OxTimeLine *self) {
  GdkRGBA text;
  gtk_style_context_get_color(gtk_widget_get_style_context(GTK_WIDGET(self)), &text);
  ox_time_line_look_choose(&self->look, &text, ox_theme_has_high_contrast(GTK_WIDGET(self)),
                           gtk_widget_get_scale_factor(GTK_WIDGET(self)));
}

/* In pixels: as commands they would be carried out anew whenever a part of the line is shown. */
static void keep(OxTimeLine *self, int width, int height) {
  int scale = gtk_widget_get_scale_factor(GTK_WIDGET(self));
  cairo_surface_t *image =
      cairo_image_surface_create(CAIRO_FORMAT_ARGB32, width * scale, height * scale);
  cairo_surface_set_device_scale(image, scale, scale);
  cairo_t *cr = cairo_create(image);
  g_array_set_size(self->names, 0);
  choose_look(self);
  draw_stretches(self, cr);
  draw_events(self, cr);
  draw_parts(self, cr);
  cairo_destroy(cr);
  graphene_rect_t bounds = GRAPHENE_RECT_INIT(0, 0, (float)width, (float)height);
  self->kept = gsk_cairo_node_new(&bounds);
  cr = gsk_cairo_node_get_draw_context(self->kept);
  cairo_set_source_surface(cr, image, 0.0, 0.0);
  cairo_pattern_set_filter(cairo_get_source(cr), CAIRO_FILTER_NEAREST);
  cairo_paint(cr);
  cairo_destroy(cr);
  cairo_surface_destroy(image);
  self->counts.stretches++;
}

static void forget(OxTimeLine *self) {
  g_clear_pointer(&self->kept, gsk_render_node_unref);
  gtk_widget_queue_draw(GTK_WIDGET(self));
}

/* ---- drawing ---------------------------------------------------------------------------- */

/* To half a pixel: what is nearer looks the same. */
static double position_px(OxTimeLine *self) {
  return round(2 * ox_time_line_x(self, ox_player_time_s(self->player))) / 2;
}

static void snapshot(GtkWidget *widget, GtkSnapshot *snapshot) {
  OxTimeLine *self = OX_TIME_LINE(widget);
  int width = gtk_widget_get_width(widget), height = gtk_widget_get_height(widget);
  if (!self->document || width <= 0 || height <= 0) return;
  if (!self->kept) keep(self, width, height);
  if (self->kept) gtk_snapshot_append_node(snapshot, self->kept);
  self->drawn_x = position_px(self);
  self->counts.position++;
  if (self->stretches->len == 0) return;
  graphene_rect_t bounds = GRAPHENE_RECT_INIT((float)self->drawn_x - 8, 0, 16, (float)height);
  cairo_t *cr = gtk_snapshot_append_cairo(snapshot, &bounds);
  ox_time_line_draw_position(cr, &self->look, self->drawn_x, 0, band_bottom(self) + MARKS_PX);
  cairo_destroy(cr);
}

static void measure(GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                    int *natural, int *minimum_baseline, int *natural_baseline) {
  OxTimeLine *self = OX_TIME_LINE(widget);
  if (orientation == GTK_ORIENTATION_HORIZONTAL) {
    *minimum = LEAST_WIDTH;
    *natural = NATURAL_WIDTH;
    return;
  }
  pango_layout_set_text(self->layout, "Xg", -1);
  pango_layout_get_pixel_size(self->layout, NULL, &self->line_px);
  *minimum = *natural = (int)band_bottom(self) + MARKS_PX + self->line_px;
}

static void size_allocate(GtkWidget *widget, int width, int height, int baseline) {
  forget(OX_TIME_LINE(widget));
}

/* ---- the model -------------------------------------------------------------------------- */

static void say_value(OxTimeLine *self) {
  char text[128];
  GtkAccessible *accessible = GTK_ACCESSIBLE(self);
  double t_s = ox_player_time_s(self->player);
  ox_display_instant(text, sizeof text, ox_document_whole_flight(self->document), t_s);
  if (g_strcmp0(text, self->said) == 0) return;
  g_free(self->said);
  self->said = g_strdup(text);
  gtk_accessible_update_property(
      accessible, GTK_ACCESSIBLE_PROPERTY_VALUE_MIN, ox_player_begin_s(self->player),
      GTK_ACCESSIBLE_PROPERTY_VALUE_MAX, ox_player_end_s(self->player),
      GTK_ACCESSIBLE_PROPERTY_VALUE_NOW, t_s, GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, text,
      GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

static void show_flight(OxTimeLine *self) {
  const ox_flight *flight = ox_document_whole_flight(self->document);
  g_array_set_size(self->stretches, OX_LEGS_MAX);
  size_t count = ox_stretches_make(flight, (ox_stretch *)(void *)self->stretches->data);
  g_array_set_size(self->stretches, (guint)count);
  forget(self);
  say_value(self);
}

static void moved_cb(OxTimeLine *self) {
  if (position_px(self) != self->drawn_x) gtk_widget_queue_draw(GTK_WIDGET(self));
  say_value(self);
}

/* ---- hands ------------------------------------------------------------------------------ */

static void pressed_cb(GtkGestureDrag *gesture, double x, double y, OxTimeLine *self) {
  gtk_widget_grab_focus(GTK_WIDGET(self));
  self->was_playing = ox_player_playing(self->player);
  ox_player_set_playing(self->player, FALSE);
  ox_player_seek(self->player, ox_time_line_time_s(self, x));
  gtk_gesture_set_state(GTK_GESTURE(gesture), GTK_EVENT_SEQUENCE_CLAIMED);
}

static void dragged_cb(GtkGestureDrag *gesture, double dx, double dy, OxTimeLine *self) {
  double x, y;
  gtk_gesture_drag_get_start_point(gesture, &x, &y);
  ox_player_seek(self->player, ox_time_line_time_s(self, x + dx));
}

static void released_cb(GtkGesture *gesture, GdkEventSequence *sequence, OxTimeLine *self) {
  if (self->was_playing) ox_player_set_playing(self->player, TRUE);
  self->was_playing = FALSE;
}

static gboolean scrolled_cb(GtkEventControllerScroll *scroll, double dx, double dy,
                            OxTimeLine *self) {
  ox_player_seek(self->player, ox_player_time_s(self->player) + (dx + dy) * SCROLL_STEP_S);
  return TRUE;
}

static gboolean query_tooltip(GtkWidget *widget, int x, int y, gboolean keyboard,
                              GtkTooltip *tooltip) {
  OxTimeLine *self = OX_TIME_LINE(widget);
  if (!self->document) return FALSE;
  double at = keyboard ? ox_time_line_x(self, ox_player_time_s(self->player)) : x;
  char *words = ox_time_line_words_at(self, at);
  gtk_tooltip_set_text(tooltip, words);
  gboolean any = words[0] != '\0';
  g_free(words);
  return any;
}

/* ---- the object ------------------------------------------------------------------------- */

static void make_layout(OxTimeLine *self) {
  g_clear_object(&self->layout);
  g_hash_table_remove_all(self->set);
  self->layout = gtk_widget_create_pango_layout(GTK_WIDGET(self), NULL);
}

static void css_changed(GtkWidget *widget, GtkCssStyleChange *change) {
  OxTimeLine *self = OX_TIME_LINE(widget);
  GTK_WIDGET_CLASS(ox_time_line_parent_class)->css_changed(widget, change);
  make_layout(self);
  gtk_widget_queue_resize(widget);
  forget(self);
}

static void dispose(GObject *object) {
  OxTimeLine *self = OX_TIME_LINE(object);
  g_clear_pointer(&self->kept, gsk_render_node_unref);
  g_clear_object(&self->layout);
  g_clear_pointer(&self->set, g_hash_table_unref);
  g_clear_object(&self->document);
  g_clear_object(&self->player);
  G_OBJECT_CLASS(ox_time_line_parent_class)->dispose(object);
}

static void finalize(GObject *object) {
  OxTimeLine *self = OX_TIME_LINE(object);
  g_array_unref(self->stretches);
  g_array_unref(self->names);
  ox_time_line_look_clear(&self->look);
  g_free(self->said);
  G_OBJECT_CLASS(ox_time_line_parent_class)->finalize(object);
}

static void ox_time_line_class_init(OxTimeLineClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  G_OBJECT_CLASS(class)->finalize = finalize;
  widget_class->snapshot = snapshot;
  widget_class->measure = measure;
  widget_class->size_allocate = size_allocate;
  widget_class->css_changed = css_changed;
  widget_class->query_tooltip = query_tooltip;
  gtk_widget_class_set_css_name(widget_class, "timeline");
  gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_SLIDER);
}

static void add_hands(OxTimeLine *self) {
  GtkGesture *drag = gtk_gesture_drag_new();
  g_signal_connect(drag, "drag-begin", G_CALLBACK(pressed_cb), self);
  g_signal_connect(drag, "drag-update", G_CALLBACK(dragged_cb), self);
  g_signal_connect(drag, "end", G_CALLBACK(released_cb), self);
  gtk_widget_add_controller(GTK_WIDGET(self), GTK_EVENT_CONTROLLER(drag));
  GtkEventController *scroll =
      gtk_event_controller_scroll_new(GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  g_signal_connect(scroll, "scroll", G_CALLBACK(scrolled_cb), self);
  gtk_widget_add_controller(GTK_WIDGET(self), scroll);
}

static void ox_time_line_init(OxTimeLine *self) {
  self->stretches = g_array_new(FALSE, TRUE, sizeof(ox_stretch));
  self->names = g_array_new(FALSE, TRUE, sizeof(ox_time_line_name));
  self->set = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_object_unref);
  make_layout(self);
  g_signal_connect(self, "notify::scale-factor", G_CALLBACK(forget), NULL);
  gtk_widget_set_focusable(GTK_WIDGET(self), TRUE);
  gtk_widget_set_has_tooltip(GTK_WIDGET(self), TRUE);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _("Time line"), -1);
}

void ox_time_line_set_model(OxTimeLine *self, OxDocument *document, OxPlayer *player) {
  g_return_if_fail(OX_IS_TIME_LINE(self) && !self->document);
  self->document = g_object_ref(document);
  self->player = g_object_ref(player);
  add_hands(self);
  g_signal_connect_object(document, "changed", G_CALLBACK(show_flight), self, G_CONNECT_SWAPPED);
  g_signal_connect_object(player, "moved", G_CALLBACK(moved_cb), self, G_CONNECT_SWAPPED);
  show_flight(self);
}

ox_time_line_counts ox_time_line_get_counts(OxTimeLine *self) { return self->counts; }

size_t ox_time_line_name_count(OxTimeLine *self) { return self->names->len; }

ox_time_line_name ox_time_line_get_name(OxTimeLine *self, size_t index) {
  return g_array_index(self->names, ox_time_line_name, index);
}
