/* The pen: what is growing, and what becomes of it. Hands are in ox_pen_hands.c. */
#include "ox_pen_private.h"

#include <math.h>

#include "oxbow/text.h"

#define ERASER_PX 10.0
#define TOLERANCE_PX 0.5 /* a point is left out where the line without it runs so near */
#define SPOT_PX 34.0
#define CROSS_PX 9.0

G_DEFINE_FINAL_TYPE(OxPen, ox_pen, GTK_TYPE_WIDGET)

/* ---- the growing stroke ----------------------------------------------------------------- */

static gboolean to_world(OxPen *self, double x, double y, ox_vec *out) {
  ox_viewport viewport;
  if (!self->paper.viewport(self->paper.data, &viewport)) return FALSE;
  *out = ox_viewport_to_world(&viewport, (ox_vec){x, y});
  return TRUE;
}

static double nm_of_px(OxPen *self, double px) {
  ox_viewport viewport;
  return self->paper.viewport(self->paper.data, &viewport) ? px / viewport.dev_per_nm : 0.0;
}

gboolean ox_pen_is_down(OxPen *self) { return !ox_ink_is_empty(self->growing); }

gboolean ox_pen_press(OxPen *self, double x, double y) {
  ox_vec at;
  if (self->tool == OX_PEN_POINTS || ox_pen_is_down(self) || !to_world(self, x, y, &at))
    return FALSE;
  self->erasing = self->tool == OX_PEN_ERASES || self->eraser_end;
  gboolean down = ox_ink_begin(self->growing, self->colour, self->width, at) != OX_ERROR;
  gtk_widget_queue_draw(GTK_WIDGET(self));
  return down;
}

void ox_pen_move(OxPen *self, double x, double y) {
  ox_vec at;
  self->at = (ox_vec){x, y};
  self->inside = TRUE;
  if (ox_pen_is_down(self) && to_world(self, x, y, &at)) ox_ink_extend(self->growing, at);
  if (ox_pen_is_down(self) || self->tool != OX_PEN_DRAWS || self->by_keys)
    gtk_widget_queue_draw(GTK_WIDGET(self));
}

static ox_ink *copy_of_paper(OxPen *self) {
  ox_ink *ink = ox_ink_copy(self->paper.ink(self->paper.data));
  if (!ink) g_error("Out of memory");
  return ink;
}

/* A refused change is one too many: the bell says that nothing came of it. */
static void put_stroke(OxPen *self) {
  ox_ink *ink = copy_of_paper(self);
  ox_ink_simplify_last(self->growing, nm_of_px(self, TOLERANCE_PX));
  if (ox_ink_append(ink, &self->growing->strokes[0]) == OX_ERROR)
    gtk_widget_error_bell(GTK_WIDGET(self));
  else
    self->paper.change(self->paper.data, _("Pen"), ink);
  ox_ink_free(ink);
}

static void wipe(OxPen *self) {
  ox_ink *ink = copy_of_paper(self);
  const ox_ink_stroke *path = &self->growing->strokes[0];
  bool touched = false;
  double radius_nm = nm_of_px(self, ERASER_PX);
  if (ox_ink_erase(ink, path->points_nm, path->count, radius_nm, &touched) == OX_ERROR)
    gtk_widget_error_bell(GTK_WIDGET(self));
  else if (touched)
    self->paper.change(self->paper.data, _("Erase"), ink);
  ox_ink_free(ink);
}

void ox_pen_release(OxPen *self) {
  if (!ox_pen_is_down(self)) return;
  if (self->erasing)
    wipe(self);
  else
    put_stroke(self);
  ox_pen_cancel(self);
}

gboolean ox_pen_cancel(OxPen *self) {
  if (!ox_pen_is_down(self)) return FALSE;
  ox_ink_clear(self->growing);
  gtk_widget_queue_draw(GTK_WIDGET(self));
  return TRUE;
}

void ox_pen_clear(OxPen *self) {
  ox_pen_cancel(self);
  if (!ox_ink_is_empty(self->paper.ink(self->paper.data)))
    self->paper.change(self->paper.data, _("Clear Pen Marks"), NULL);
}

/* ---- drawing ---------------------------------------------------------------------------- */

static void trace(cairo_t *cr, const ox_viewport *viewport, const ox_ink_stroke *stroke) {
  for (size_t i = 0; i < stroke->count; i++) {
    ox_vec p = ox_viewport_to_dev(viewport, stroke->points_nm[i]);
    cairo_line_to(cr, p.x, p.y);
    if (stroke->count == 1) cairo_line_to(cr, p.x, p.y); /* a round cap: a dot */
  }
}

static void draw_growing(OxPen *self, cairo_t *cr) {
  ox_viewport viewport;
  if (!self->paper.viewport(self->paper.data, &viewport)) return;
  ox_palette_id palette = self->paper.palette(self->paper.data);
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
  trace(cr, &viewport, &self->growing->strokes[0]);
  if (self->erasing) {
    cairo_set_source_rgba(cr, 0.5, 0.5, 0.5, 0.35);
    cairo_set_line_width(cr, 2.0 * ERASER_PX);
  } else {
    const double *rgb = ox_pen_rgb(palette, self->growing->strokes[0].colour);
    cairo_set_source_rgb(cr, rgb[0], rgb[1], rgb[2]);
    cairo_set_line_width(cr, self->width == OX_INK_BROAD ? 5.0 : 2.2);
  }
  cairo_stroke(cr);
}

/* Bright within, dark at its rim: seen on any board. */
static void draw_spot(OxPen *self, cairo_t *cr) {
  double x = self->at.x, y = self->at.y;
  cairo_pattern_t *glow = cairo_pattern_create_radial(x, y, 0, x, y, SPOT_PX);
  cairo_pattern_add_color_stop_rgba(glow, 0.0, 1.0, 0.82, 0.2, 0.15);
  cairo_pattern_add_color_stop_rgba(glow, 0.7, 1.0, 0.82, 0.2, 0.45);
  cairo_pattern_add_color_stop_rgba(glow, 1.0, 1.0, 0.82, 0.2, 0.0);
  cairo_set_source(cr, glow);
  cairo_arc(cr, x, y, SPOT_PX, 0, 2 * G_PI);
  cairo_fill(cr);
  cairo_pattern_destroy(glow);
  cairo_set_source_rgba(cr, 0.35, 0.2, 0.0, 0.75);
  cairo_set_line_width(cr, 2.0);
  cairo_arc(cr, x, y, SPOT_PX * 0.7, 0, 2 * G_PI);
  cairo_stroke(cr);
}

static void draw_eraser(OxPen *self, cairo_t *cr) {
  cairo_set_source_rgba(cr, 0.5, 0.5, 0.5, 0.9);
  cairo_set_line_width(cr, 1.5);
  cairo_arc(cr, self->at.x, self->at.y, ERASER_PX, 0, 2 * G_PI);
  cairo_stroke(cr);
}

/* Where the pen of the keys is. */
static void draw_cross(OxPen *self, cairo_t *cr) {
  const double *rgb = ox_pen_rgb(self->paper.palette(self->paper.data), self->colour);
  cairo_set_source_rgb(cr, rgb[0], rgb[1], rgb[2]);
  cairo_set_line_width(cr, ox_pen_is_down(self) ? 3.0 : 1.5);
  cairo_move_to(cr, self->at.x - CROSS_PX, self->at.y);
  cairo_line_to(cr, self->at.x + CROSS_PX, self->at.y);
  cairo_move_to(cr, self->at.x, self->at.y - CROSS_PX);
  cairo_line_to(cr, self->at.x, self->at.y + CROSS_PX);
  cairo_stroke(cr);
}

static void snapshot(GtkWidget *widget, GtkSnapshot *snapshot) {
  OxPen *self = OX_PEN(widget);
  int width = gtk_widget_get_width(widget), height = gtk_widget_get_height(widget);
  self->drawn++;
  if (width <= 0 || height <= 0) return;
  graphene_rect_t bounds = GRAPHENE_RECT_INIT(0, 0, (float)width, (float)height);
  cairo_t *cr = gtk_snapshot_append_cairo(snapshot, &bounds);
  if (ox_pen_is_down(self)) draw_growing(self, cr);
  if (self->inside && self->tool == OX_PEN_POINTS)
    draw_spot(self, cr);
  else if (self->inside && self->tool == OX_PEN_ERASES)
    draw_eraser(self, cr);
  else if (self->inside && self->by_keys)
    draw_cross(self, cr);
  cairo_destroy(cr);
}

/* ---- the object ------------------------------------------------------------------------- */

static void unmap(GtkWidget *widget) {
  ox_pen_cancel(OX_PEN(widget));
  GTK_WIDGET_CLASS(ox_pen_parent_class)->unmap(widget);
}

static void finalize(GObject *object) {
  ox_ink_free(OX_PEN(object)->growing);
  G_OBJECT_CLASS(ox_pen_parent_class)->finalize(object);
}

static void ox_pen_class_init(OxPenClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->finalize = finalize;
  widget_class->snapshot = snapshot;
  widget_class->unmap = unmap;
  gtk_widget_class_set_css_name(widget_class, "pen");
  gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void ox_pen_init(OxPen *self) {
  self->growing = ox_ink_new();
  if (!self->growing) g_error("Out of memory");
  gtk_widget_set_focusable(GTK_WIDGET(self), TRUE);
  gtk_widget_set_cursor_from_name(GTK_WIDGET(self), "crosshair");
  gtk_accessible_update_property(
      GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Pen over the picture"),
      GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
      _("The arrow keys move the pen, with Shift in small steps. Space puts it down and lifts it. "
        "Escape takes back the stroke being drawn."),
      -1);
  ox_pen_add_hands(self);
}

GtkWidget *ox_pen_new(const ox_pen_paper *paper) {
  OxPen *self = g_object_new(OX_TYPE_PEN, NULL);
  self->paper = *paper;
  return GTK_WIDGET(self);
}

void ox_pen_set_tool(OxPen *self, ox_pen_tool tool) {
  ox_pen_cancel(self);
  self->tool = tool;
  gtk_widget_set_cursor_from_name(GTK_WIDGET(self),
                                  tool == OX_PEN_DRAWS ? "crosshair" : "none");
  gtk_widget_queue_draw(GTK_WIDGET(self));
}

ox_pen_tool ox_pen_get_tool(OxPen *self) { return self->tool; }

void ox_pen_set_ink(OxPen *self, ox_ink_colour colour) { self->colour = colour; }

void ox_pen_set_width(OxPen *self, ox_ink_width width) { self->width = width; }

guint ox_pen_draw_count(OxPen *self) { return self->drawn; }
