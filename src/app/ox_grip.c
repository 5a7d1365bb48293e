/* Grips: a range and a button that draw themselves alike.
 *
 * GTK 4.8 gives the Value interface of AT-SPI to its own ranges and the Action interface to its own
 * buttons, so a grip is one of them. What they would draw is never drawn. */
#include "ox_grip.h"

#include <math.h>

#include "oxbow/text.h"

typedef struct {
  ox_handle handle;
  ox_grip_look look;
  ox_palette_id palette;
  double scale;
  gboolean seen;
} grip_state;

#define STATE_KEY "ox-grip"
#define TURN (2.0 * G_PI)

#define HEX(hex)                                                                                 \
  {(float)((hex) >> 16 & 0xff) / 255.0F, (float)((hex) >> 8 & 0xff) / 255.0F,                    \
   (float)((hex)&0xff) / 255.0F, 1.0F}

ox_grip_colours ox_grip_colours_for(ox_palette_id palette) {
  static const ox_grip_colours on_light = {HEX(0x16191d), HEX(0xffffff), HEX(0x0060a8)};
  static const ox_grip_colours on_dark = {HEX(0xf2f2f2), HEX(0x1e1e1e), HEX(0x6bb8f2)};
  static const ox_grip_colours on_white = {HEX(0x000000), HEX(0xffffff), HEX(0x004a85)};
  static const ox_grip_colours on_black = {HEX(0xffffff), HEX(0x000000), HEX(0x9dd3ff)};
  switch (palette) {
  case OX_PALETTE_DARK: return on_dark;
  case OX_PALETTE_CONTRAST: return on_white;
  case OX_PALETTE_CONTRAST_DARK: return on_black;
  default: return on_light;
  }
}

static grip_state *state_of(GtkWidget *grip) {
  return g_object_get_data(G_OBJECT(grip), STATE_KEY);
}

/* ---- drawing ---------------------------------------------------------------------------- */

static void stroke(cairo_t *cr, const GdkRGBA *colour, double width) {
  gdk_cairo_set_source_rgba(cr, colour);
  cairo_set_line_width(cr, width);
  cairo_stroke(cr);
}

/* The ring lies on a rim of the board's own colour, so that it shows on any line. */
static void draw_ring(cairo_t *cr, const ox_grip_colours *k, double radius, double scale,
                      gboolean filled) {
  cairo_arc(cr, 0, 0, radius, 0, TURN);
  gdk_cairo_set_source_rgba(cr, filled ? &k->ring : &k->ground);
  cairo_fill(cr);
  cairo_arc(cr, 0, 0, radius + 1.5 * scale, 0, TURN);
  stroke(cr, &k->ground, 1.5 * scale);
  cairo_arc(cr, 0, 0, radius, 0, TURN);
  stroke(cr, &k->ring, 2.0 * scale);
}

/* Two arrowheads, one either way: over to the other side. */
static void draw_flip(cairo_t *cr, const GdkRGBA *colour, double r) {
  gdk_cairo_set_source_rgba(cr, colour);
  for (int side = -1; side <= 1; side += 2) {
    cairo_move_to(cr, side * 0.75 * r, 0);
    cairo_line_to(cr, side * 0.15 * r, -0.5 * r);
    cairo_line_to(cr, side * 0.15 * r, 0.5 * r);
    cairo_close_path(cr);
    cairo_fill(cr);
  }
}

static void snapshot(GtkWidget *widget, GtkSnapshot *snapshot) {
  const grip_state *s = state_of(widget);
  GtkStateFlags flags = gtk_widget_get_state_flags(widget);
  gboolean focused = (flags & GTK_STATE_FLAG_FOCUS_VISIBLE) && gtk_widget_has_focus(widget);
  /* The fix has its own symbol; focus shows the others however they look. */
  gboolean ring = s->handle != OX_HANDLE_FIX && (focused || (s->seen && s->look != OX_GRIP_HIDDEN));
  if (!ring && !focused) return;
  float width = (float)gtk_widget_get_width(widget), height = (float)gtk_widget_get_height(widget);
  graphene_rect_t bounds = GRAPHENE_RECT_INIT(0, 0, width, height);
  cairo_t *cr = gtk_snapshot_append_cairo(snapshot, &bounds);
  ox_grip_colours k = ox_grip_colours_for(s->palette);
  gboolean filled = s->look == OX_GRIP_HELD;
  double radius = (s->look == OX_GRIP_RESTING ? 5.5 : 8.0) * s->scale;
  cairo_translate(cr, (double)width / 2.0, (double)height / 2.0);
  if (ring) {
    draw_ring(cr, &k, radius, s->scale, filled);
    if (s->handle == OX_HANDLE_TURNS) draw_flip(cr, filled ? &k.ground : &k.ring, radius);
  }
  if (focused) {
    cairo_arc(cr, 0, 0, 12.0 * s->scale, 0, TURN);
    stroke(cr, &k.ground, 5.0 * s->scale);
    cairo_arc(cr, 0, 0, 12.0 * s->scale, 0, TURN);
    stroke(cr, &k.focus, 2.5 * s->scale);
  }
  cairo_destroy(cr);
}

static void measure(GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                    int *natural, int *minimum_baseline, int *natural_baseline) {
  const grip_state *s = state_of(widget);
  *minimum = *natural = (int)ceil(OX_GRIP_TARGET * (s ? s->scale : 1.0));
}

/* The parts that a range or a button brings along get no place, for they are never shown. */
static void size_allocate(GtkWidget *widget, int width, int height, int baseline) {}

static void draw_like_a_grip(GtkWidgetClass *class, const char *css_name) {
  class->snapshot = snapshot;
  class->measure = measure;
  class->size_allocate = size_allocate;
  gtk_widget_class_set_css_name(class, css_name);
}

static void state_flags_changed_cb(GtkWidget *widget) { gtk_widget_queue_draw(widget); }

/* ---- the two widgets -------------------------------------------------------------------- */

#define OX_TYPE_GRIP_SLIDER (ox_grip_slider_get_type())
G_DECLARE_FINAL_TYPE(OxGripSlider, ox_grip_slider, OX, GRIP_SLIDER, GtkRange)
struct _OxGripSlider {
  GtkRange parent_instance;
};
G_DEFINE_FINAL_TYPE(OxGripSlider, ox_grip_slider, GTK_TYPE_RANGE)

static void ox_grip_slider_class_init(OxGripSliderClass *class) {
  draw_like_a_grip(GTK_WIDGET_CLASS(class), "grip");
  gtk_widget_class_set_accessible_role(GTK_WIDGET_CLASS(class), GTK_ACCESSIBLE_ROLE_SLIDER);
}

static void ox_grip_slider_init(OxGripSlider *self) {}

#define OX_TYPE_GRIP_BUTTON (ox_grip_button_get_type())
G_DECLARE_FINAL_TYPE(OxGripButton, ox_grip_button, OX, GRIP_BUTTON, GtkButton)
struct _OxGripButton {
  GtkButton parent_instance;
};
G_DEFINE_FINAL_TYPE(OxGripButton, ox_grip_button, GTK_TYPE_BUTTON)

static void ox_grip_button_class_init(OxGripButtonClass *class) {
  draw_like_a_grip(GTK_WIDGET_CLASS(class), "grip");
}

static void ox_grip_button_init(OxGripButton *self) {}

/* ---- what the board does with them ------------------------------------------------------ */

static GtkWidget *grip_new(GType type, ox_handle handle, const char *name) {
  GtkWidget *grip = g_object_new(type, "can-target", FALSE, "focusable", TRUE, NULL);
  grip_state *s = g_new0(grip_state, 1);
  s->handle = handle;
  s->scale = 1.0;
  g_object_set_data_full(G_OBJECT(grip), STATE_KEY, s, g_free);
  if (OX_IS_GRIP_SLIDER(grip)) gtk_range_set_round_digits(GTK_RANGE(grip), -1);
  gtk_widget_set_layout_manager(grip, NULL); /* a button's would size it by its child */
  for (GtkWidget *at = gtk_widget_get_first_child(grip); at; at = gtk_widget_get_next_sibling(at))
    gtk_widget_set_visible(at, FALSE);
  g_signal_connect(grip, "state-flags-changed", G_CALLBACK(state_flags_changed_cb), NULL);
  gtk_accessible_update_property(GTK_ACCESSIBLE(grip), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 name, -1);
  return grip;
}

GtkWidget *ox_grip_new(ox_handle handle) {
  GType type = ox_handle_is_slider(handle) ? OX_TYPE_GRIP_SLIDER : OX_TYPE_GRIP_BUTTON;
  return grip_new(type, handle, ox_handle_name(handle));
}

GtkWidget *ox_grip_new_point(const char *name) {
  char *whole = g_strdup_printf(_("Point %s"), name);
  GtkWidget *grip = grip_new(OX_TYPE_GRIP_BUTTON, OX_HANDLE_COUNT, whole);
  g_free(whole);
  return grip;
}

void ox_grip_show(GtkWidget *grip, const ox_handle_range *range, const char *words) {
  if (OX_IS_GRIP_SLIDER(grip)) {
    GtkAdjustment *adjustment = gtk_range_get_adjustment(GTK_RANGE(grip));
    gtk_adjustment_configure(adjustment, range->value, range->min, range->max, range->step,
                             range->page, 0.0);
    gtk_accessible_update_property(GTK_ACCESSIBLE(grip), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, words,
                                   -1);
  }
  gtk_accessible_update_property(GTK_ACCESSIBLE(grip), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words,
                                 -1);
}

void ox_grip_set_look(GtkWidget *grip, ox_grip_look look, ox_palette_id palette, double scale) {
  grip_state *s = state_of(grip);
  if (s->look == look && s->palette == palette && s->scale == scale) return;
  gboolean resized = s->scale != scale;
  s->look = look;
  s->palette = palette;
  s->scale = scale;
  if (resized)
    gtk_widget_queue_resize(grip);
  else
    gtk_widget_queue_draw(grip);
}

void ox_grip_set_seen(GtkWidget *grip, gboolean seen) {
  grip_state *s = state_of(grip);
  if (s->seen == seen) return;
  s->seen = seen;
  gtk_widget_queue_draw(grip);
}

ox_grip_look ox_grip_get_look(GtkWidget *grip) { return state_of(grip)->look; }

double ox_grip_value(GtkWidget *grip) {
  return OX_IS_GRIP_SLIDER(grip) ? gtk_range_get_value(GTK_RANGE(grip)) : 0.0;
}
