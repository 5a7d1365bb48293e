/* The light over a part of the picture: a broad band along it, or rings about a place. */
#include "ox_highlight.h"

#include <math.h>

#define BAND_PX 14.0
#define RING_PX 16.0
#define ALPHA 0.45
#define NEAR_PX 9.0

struct _OxHighlight {
  GtkWidget parent_instance;

  /* owned */
  GPtrArray *pictures; /* boards and case views, borrowed */
  OxDocument *document;
  OxPlayer *player;

  ox_feature feature;
};

G_DEFINE_FINAL_TYPE(OxHighlight, ox_highlight, GTK_TYPE_WIDGET)

/* Reddish purple of Okabe and Ito, which the picture's lines do not use. */
static void set_colour(cairo_t *cr, double alpha) {
  cairo_set_source_rgba(cr, 0.80, 0.47, 0.65, alpha);
}

static void draw_place(cairo_t *cr, ox_vec at, gboolean timed) {
  set_colour(cr, ALPHA);
  cairo_set_line_width(cr, 6);
  cairo_arc(cr, at.x, at.y, RING_PX, 0, 2 * G_PI);
  cairo_stroke(cr);
  if (!timed) return;
  /* The hands of a clock. */
  set_colour(cr, 0.9);
  cairo_set_line_width(cr, 3);
  cairo_move_to(cr, at.x, at.y - RING_PX + 4);
  cairo_line_to(cr, at.x, at.y);
  cairo_line_to(cr, at.x + RING_PX - 7, at.y + 4);
  cairo_stroke(cr);
}

static void draw_arrow(cairo_t *cr, ox_vec from, ox_vec to) {
  double angle = atan2(to.y - from.y, to.x - from.x);
  cairo_move_to(cr, to.x + 26 * cos(angle), to.y + 26 * sin(angle));
  cairo_line_to(cr, to.x + 18 * cos(angle + 1.9), to.y + 18 * sin(angle + 1.9));
  cairo_line_to(cr, to.x + 18 * cos(angle - 1.9), to.y + 18 * sin(angle - 1.9));
  cairo_close_path(cr);
  cairo_fill(cr);
}

static void draw_line(cairo_t *cr, const ox_vec *points, size_t count, gboolean arrow) {
  set_colour(cr, ALPHA);
  cairo_set_line_width(cr, BAND_PX);
  cairo_set_line_cap(cr, arrow ? CAIRO_LINE_CAP_BUTT : CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
  for (size_t i = 0; i < count; i++) cairo_line_to(cr, points[i].x, points[i].y);
  cairo_stroke(cr);
  if (arrow && count > 1) draw_arrow(cr, points[count - 2], points[count - 1]);
}

/* ---- the pictures ------------------------------------------------------------------------- */

typedef struct {
  const ox_case *c;
  const ox_flight *flight;
  ox_viewport viewport;
  gboolean in_air;
} shown;

static gboolean what_is_shown(OxHighlight *self, GtkWidget *picture, shown *out) {
  if (OX_IS_CASE_VIEW(picture)) {
    const ox_scene *scene = ox_case_view_scene(OX_CASE_VIEW(picture));
    *out = (shown){.c = scene->c, .flight = scene->flight, .in_air = scene->view.air > 0.0};
    return scene->c && ox_case_view_get_viewport(OX_CASE_VIEW(picture), &out->viewport);
  }
  *out = (shown){.c = ox_document_case(self->document),
                 .flight = ox_document_flight(self->document),
                 .in_air = ox_board_view(OX_BOARD(picture)).air > 0.0};
  return ox_board_get_viewport(OX_BOARD(picture), &out->viewport);
}

size_t ox_highlight_points(OxHighlight *self, GtkWidget *picture, ox_vec *out) {
  shown s;
  if (!what_is_shown(self, picture, &s)) return 0;
  if (s.in_air && ox_feature_is_flown(self->feature)) return 0;
  size_t count = ox_feature_points(self->feature, s.c, s.flight, out);
  for (size_t i = 0; i < count; i++) out[i] = ox_viewport_to_dev(&s.viewport, out[i]);
  return count;
}

ox_feature ox_highlight_feature_at(OxHighlight *self, GtkWidget *picture, double x, double y) {
  shown s;
  if (!what_is_shown(self, picture, &s)) return OX_FEATURE_NONE;
  return ox_feature_at(s.c, s.flight, &s.viewport, s.in_air, (ox_vec){x, y}, NEAR_PX);
}

/* ---- drawing ------------------------------------------------------------------------------ */

static void draw(OxHighlight *self, GtkWidget *picture, cairo_t *cr) {
  ox_vec points[OX_FEATURE_POINTS_MAX];
  double x, y;
  size_t count = ox_highlight_points(self, picture, points);
  if (count == 0 ||
      !gtk_widget_translate_coordinates(picture, GTK_WIDGET(self), 0, 0, &x, &y))
    return;
  cairo_rectangle(cr, x, y, gtk_widget_get_width(picture), gtk_widget_get_height(picture));
  cairo_clip(cr);
  cairo_translate(cr, x, y);
  if (count == 1)
    draw_place(cr, points[0], self->feature == OX_FEATURE_TIME);
  else
    draw_line(cr, points, count, self->feature == OX_FEATURE_DIRECTION);
}

static void snapshot(GtkWidget *widget, GtkSnapshot *snapshot) {
  OxHighlight *self = OX_HIGHLIGHT(widget);
  int width = gtk_widget_get_width(widget), height = gtk_widget_get_height(widget);
  if (self->feature == OX_FEATURE_NONE || width <= 0 || height <= 0) return;
  graphene_rect_t bounds = GRAPHENE_RECT_INIT(0, 0, (float)width, (float)height);
  cairo_t *cr = gtk_snapshot_append_cairo(snapshot, &bounds);
  for (guint i = 0; i < self->pictures->len; i++) {
    cairo_save(cr);
    draw(self, g_ptr_array_index(self->pictures, i), cr);
    cairo_restore(cr);
  }
  cairo_destroy(cr);
}

static void dispose(GObject *object) {
  OxHighlight *self = OX_HIGHLIGHT(object);
  g_clear_object(&self->document);
  g_clear_object(&self->player);
  G_OBJECT_CLASS(ox_highlight_parent_class)->dispose(object);
}

static void finalize(GObject *object) {
  g_ptr_array_unref(OX_HIGHLIGHT(object)->pictures);
  G_OBJECT_CLASS(ox_highlight_parent_class)->finalize(object);
}

static void ox_highlight_class_init(OxHighlightClass *class) {
  G_OBJECT_CLASS(class)->dispose = dispose;
  G_OBJECT_CLASS(class)->finalize = finalize;
  GTK_WIDGET_CLASS(class)->snapshot = snapshot;
  gtk_widget_class_set_accessible_role(GTK_WIDGET_CLASS(class), GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void ox_highlight_init(OxHighlight *self) {
  self->pictures = g_ptr_array_new();
  gtk_widget_set_can_target(GTK_WIDGET(self), FALSE);
}

static void moved_cb(OxHighlight *self) {
  if (self->feature != OX_FEATURE_NONE) gtk_widget_queue_draw(GTK_WIDGET(self));
}

GtkWidget *ox_highlight_new(OxDocument *document, OxPlayer *player) {
  OxHighlight *self = g_object_new(OX_TYPE_HIGHLIGHT, NULL);
  self->document = g_object_ref(document);
  self->player = g_object_ref(player);
  g_signal_connect_object(document, "changed", G_CALLBACK(moved_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object(player, "moved", G_CALLBACK(moved_cb), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET(self);
}

void ox_highlight_add(OxHighlight *self, GtkWidget *picture) {
  g_return_if_fail(OX_IS_HIGHLIGHT(self));
  g_return_if_fail(OX_IS_BOARD(picture) || OX_IS_CASE_VIEW(picture));
  g_ptr_array_add(self->pictures, picture);
  gtk_widget_queue_draw(GTK_WIDGET(self));
}

void ox_highlight_remove(OxHighlight *self, GtkWidget *picture) {
  g_return_if_fail(OX_IS_HIGHLIGHT(self));
  g_ptr_array_remove(self->pictures, picture);
  gtk_widget_queue_draw(GTK_WIDGET(self));
}

void ox_highlight_set_feature(OxHighlight *self, ox_feature feature) {
  g_return_if_fail(OX_IS_HIGHLIGHT(self));
  if (feature == self->feature) return;
  self->feature = feature;
  gtk_widget_queue_draw(GTK_WIDGET(self));
}

ox_feature ox_highlight_feature(OxHighlight *self) { return self->feature; }
