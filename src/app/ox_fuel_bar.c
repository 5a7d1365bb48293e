/* The fuel along the time. */
#include "ox_fuel_bar.h"

#include "ox_veil.h"

#include <math.h>

#include "oxbow/text.h"
#include "oxbow/words.h"

#define HEIGHT 20
#define MARGIN 24.0 /* where nothing is measured off */

struct _OxFuelBar {
  GtkWidget parent_instance;

  /* owned */
  OxDocument *document;
  OxPlayer *player;

  GtkWidget *ruler; /* borrowed */
  ox_ruler x_of;
};

G_DEFINE_FINAL_TYPE(OxFuelBar, ox_fuel_bar, GTK_TYPE_WIDGET)

double ox_fuel_bar_x(OxFuelBar *self, double t_s) {
  double begin_s = ox_player_begin_s(self->player), end_s = ox_player_end_s(self->player);
  double x = 0, y = 0;
  if (self->ruler && self->x_of &&
      gtk_widget_translate_coordinates(self->ruler, GTK_WIDGET(self), 0, 0, &x, &y)) {
    /* A ruler may clamp: beyond its ends the scale goes on. */
    double from = x + self->x_of(self->ruler, begin_s), to = x + self->x_of(self->ruler, end_s);
    return end_s > begin_s ? from + (to - from) * (t_s - begin_s) / (end_s - begin_s) : from;
  }
  double width = gtk_widget_get_width(GTK_WIDGET(self)) - 2 * MARGIN;
  return end_s > begin_s ? MARGIN + width * (t_s - begin_s) / (end_s - begin_s) : MARGIN;
}

/* ---- going to an instant ----------------------------------------------------------------- */

/* The line below has the keys for it. */
static void seek_to(OxFuelBar *self, double x) {
  double begin_s = ox_player_begin_s(self->player), end_s = ox_player_end_s(self->player);
  double from = ox_fuel_bar_x(self, begin_s), to = ox_fuel_bar_x(self, end_s);
  if (to > from)
    ox_player_seek(self->player,
                   CLAMP(begin_s + (end_s - begin_s) * (x - from) / (to - from), begin_s, end_s));
}

static void press_cb(GtkGestureDrag *drag, double x, double y, OxFuelBar *self) {
  gtk_gesture_set_state(GTK_GESTURE(drag), GTK_EVENT_SEQUENCE_CLAIMED);
  seek_to(self, x);
}

static void drag_cb(GtkGestureDrag *drag, double dx, double dy, OxFuelBar *self) {
  double x, y;
  if (gtk_gesture_drag_get_start_point(drag, &x, &y)) seek_to(self, x + dx);
}

/* ---- drawing ---------------------------------------------------------------------------- */

typedef struct {
  OxFuelBar *bar;
  cairo_t *cr;
  double from_x, to_x, height;
  double free_from; /* names of marks begin no earlier */
  GdkRGBA text;
} canvas;

/* Hues of Okabe and Ito; lines in other directions tell the parts apart as well. */
typedef struct {
  const char *name;
  double red, green, blue;
  int stripes; /* 0: plain, 1: leaning, 2: crossed */
} part;
static const part parts[] = {{N_("to hold with"), 0.0, 0.45, 0.70, 0},
                             {N_("alternate's"), 0.90, 0.62, 0.0, 1},
                             {N_("reserve"), 0.84, 0.37, 0.0, 2}};

static void stripe(canvas *k, double from, double to, int lean) {
  for (double x = from - k->height; x < to + k->height; x += 8) {
    cairo_move_to(k->cr, x, lean > 0 ? k->height : 0);
    cairo_line_to(k->cr, x + k->height, lean > 0 ? 0 : k->height);
  }
  cairo_stroke(k->cr);
}

static void put_name(canvas *k, const char *name, double from, double to) {
  PangoLayout *layout = gtk_widget_create_pango_layout(GTK_WIDGET(k->bar), name);
  int width, height;
  pango_layout_get_pixel_size(layout, &width, &height);
  if (width + 12 <= to - from) {
    gdk_cairo_set_source_rgba(k->cr, &k->text);
    cairo_move_to(k->cr, from + 6, (k->height - height) / 2);
    pango_cairo_show_layout(k->cr, layout);
    k->free_from = from + 6 + width;
  }
  g_object_unref(layout);
}

static void put_part(canvas *k, const part *p, double from_s, double to_s) {
  double from = fmax(k->from_x, ox_fuel_bar_x(k->bar, from_s));
  double to = fmin(k->to_x, ox_fuel_bar_x(k->bar, to_s));
  if (!(to > from)) return;
  cairo_save(k->cr);
  cairo_rectangle(k->cr, from, 0, to - from, k->height);
  cairo_clip(k->cr);
  cairo_set_source_rgba(k->cr, p->red, p->green, p->blue, 0.35);
  cairo_paint(k->cr);
  cairo_set_source_rgba(k->cr, p->red, p->green, p->blue, 0.7);
  cairo_set_line_width(k->cr, 1);
  if (p->stripes > 0) stripe(k, from, to, 1);
  if (p->stripes > 1) stripe(k, from, to, -1);
  put_name(k, _(p->name), from, to);
  cairo_restore(k->cr);
}

/* A line with its name to the left of it, where there is room; beyond the end of the flight the
 * name at the end, with an arrow. */
static void put_mark(canvas *k, const char *label, double t_s) {
  double x = round(ox_fuel_bar_x(k->bar, t_s)) + 0.5;
  char name[64];
  gboolean beyond = x > k->to_x + 1;
  if (x < k->from_x) return;
  if (beyond) x = k->to_x - 0.5;
  g_snprintf(name, sizeof name, "%s%s", label, beyond ? " ▸" : "");
  gdk_cairo_set_source_rgba(k->cr, &k->text);
  cairo_set_line_width(k->cr, 2);
  if (!beyond) {
    cairo_move_to(k->cr, x, 0);
    cairo_line_to(k->cr, x, k->height);
    cairo_stroke(k->cr);
  }
  PangoLayout *layout = gtk_widget_create_pango_layout(GTK_WIDGET(k->bar), name);
  int width, height;
  pango_layout_get_pixel_size(layout, &width, &height);
  if (x - width - 12 > k->free_from) {
    cairo_move_to(k->cr, x - width - 5, (k->height - height) / 2);
    pango_cairo_show_layout(k->cr, layout);
  }
  k->free_from = fmax(k->free_from, x);
  g_object_unref(layout);
}

static void put_marks(canvas *k, const ox_case *c, const ox_endurance *e) {
  char name[48];
  double efc_s;
  int s = (int)ox_clock_utc_s(c, fmax(0, e->leave_by_s));
  if (ox_clock_is_known(c))
    g_snprintf(name, sizeof name, _("leave by %02d:%02d"), s / 3600, s / 60 % 60);
  else
    g_strlcpy(name, _("leave by"), sizeof name);
  gboolean has_efc = ox_clock_after_s(c, c->hold.efc_min, &efc_s);
  /* From left to right, so that no name lies on the one before. */
  if (has_efc && efc_s <= e->leave_by_s) put_mark(k, "EFC", efc_s);
  put_mark(k, name, e->leave_by_s);
  if (has_efc && efc_s > e->leave_by_s) put_mark(k, "EFC", efc_s);
}

static void draw(OxFuelBar *self, cairo_t *cr) {
  const ox_case *c = ox_document_case(self->document);
  ox_endurance e = ox_endurance_of(c);
  double begin_s = ox_player_begin_s(self->player), end_s = ox_player_end_s(self->player);
  canvas k = {self, cr, ox_fuel_bar_x(self, begin_s), ox_fuel_bar_x(self, end_s),
              gtk_widget_get_height(GTK_WIDGET(self)), 0, {0, 0, 0, 0}};
  gtk_style_context_get_color(gtk_widget_get_style_context(GTK_WIDGET(self)), &k.text);
  part to_hold = parts[0];
  if (ox_words_no_reserve(c)) to_hold.name = N_("to hold with, no reserve entered");
  put_part(&k, &to_hold, begin_s, e.leave_by_s);
  put_part(&k, &parts[1], e.leave_by_s, e.reserve_s);
  put_part(&k, &parts[2], e.reserve_s, e.empty_s);
  cairo_rectangle(cr, k.from_x + 0.5, 0.5, k.to_x - k.from_x - 1, k.height - 1);
  gdk_cairo_set_source_rgba(cr, &k.text);
  cairo_set_line_width(cr, 1);
  cairo_stroke(cr);
  put_marks(&k, c, &e);
}

static void snapshot(GtkWidget *widget, GtkSnapshot *snapshot) {
  OxFuelBar *self = OX_FUEL_BAR(widget);
  int width = gtk_widget_get_width(widget), height = gtk_widget_get_height(widget);
  if (width <= 0 || height <= 0) return;
  graphene_rect_t bounds = GRAPHENE_RECT_INIT(0, 0, (float)width, (float)height);
  cairo_t *cr = gtk_snapshot_append_cairo(snapshot, &bounds);
  draw(self, cr);
  cairo_destroy(cr);
}

/* ---- the object ------------------------------------------------------------------------- */

static void show_case(OxFuelBar *self) {
  char text[OX_WHEN_BYTES];
  const ox_case *c = ox_document_case(self->document);
  gboolean known = ox_endurance_of(c).known;
  ox_veil_set(GTK_WIDGET(self), OX_VEIL_CLOSED, !known);
  if (!known) return;
  ox_words_endurance(text, sizeof text, c, ox_document_flight(self->document));
  gtk_widget_set_tooltip_text(GTK_WIDGET(self), text);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Fuel"),
                                 GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
  gtk_widget_queue_draw(GTK_WIDGET(self));
}

static void measure(GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                    int *natural, int *minimum_baseline, int *natural_baseline) {
  *minimum = *natural = orientation == GTK_ORIENTATION_VERTICAL ? HEIGHT : 100;
}

static void dispose(GObject *object) {
  OxFuelBar *self = OX_FUEL_BAR(object);
  g_clear_object(&self->document);
  g_clear_object(&self->player);
  G_OBJECT_CLASS(ox_fuel_bar_parent_class)->dispose(object);
}

static void ox_fuel_bar_class_init(OxFuelBarClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  widget_class->snapshot = snapshot;
  widget_class->measure = measure;
  gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name(widget_class, "fuelbar");
}

static void ox_fuel_bar_init(OxFuelBar *self) {
  GtkGesture *drag = gtk_gesture_drag_new();
  g_signal_connect(drag, "drag-begin", G_CALLBACK(press_cb), self);
  g_signal_connect(drag, "drag-update", G_CALLBACK(drag_cb), self);
  gtk_widget_add_controller(GTK_WIDGET(self), GTK_EVENT_CONTROLLER(drag));
}

GtkWidget *ox_fuel_bar_new(OxDocument *document, OxPlayer *player) {
  OxFuelBar *self = g_object_new(OX_TYPE_FUEL_BAR, NULL);
  self->document = g_object_ref(document);
  self->player = g_object_ref(player);
  g_signal_connect_object(document, "changed", G_CALLBACK(show_case), self, G_CONNECT_SWAPPED);
  show_case(self);
  return GTK_WIDGET(self);
}

void ox_fuel_bar_set_ruler(OxFuelBar *self, GtkWidget *ruler, ox_ruler x_of) {
  self->ruler = ruler;
  self->x_of = x_of;
  gtk_widget_queue_draw(GTK_WIDGET(self));
}
