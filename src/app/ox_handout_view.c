/* A page of a handout on the screen. Drawn once for each look and kept: drawing it is setting a
 * page of text. */
#include "ox_handout_view.h"

#include <math.h>

#include "oxbow/text.h"

#define WIDTH 300
#define HEIGHT 372

struct _OxHandoutView {
  GtkWidget parent_instance;

  GtkWidget *box, *area, *previous, *next; /* box is the child, the rest is in it */
  GtkLabel *label;

  ox_handout *handout;    /* owned; NULL: nothing to show */
  cairo_surface_t *drawn; /* of the page, or NULL */
  int drawn_width, drawn_height;
  size_t page;
};

G_DEFINE_FINAL_TYPE(OxHandoutView, ox_handout_view, GTK_TYPE_WIDGET)

/* ---- the page --------------------------------------------------------------------------- */

static void forget(OxHandoutView *self) {
  g_clear_pointer(&self->drawn, cairo_surface_destroy);
  gtk_widget_queue_draw(self->area);
}

/* Into a picture of the widget's size, in device pixels. */
static cairo_surface_t *draw_page(OxHandoutView *self, int width, int height) {
  ox_vec paper = ox_handout_size(self->handout);
  double scale = fmin((width - 2.0) / paper.x, (height - 2.0) / paper.y);
  double device = gtk_widget_get_scale_factor(GTK_WIDGET(self));
  int w = (int)ceil(paper.x * scale * device), h = (int)ceil(paper.y * scale * device);
  cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_ARGB32, w, h);
  cairo_surface_set_device_scale(surface, device, device);
  cairo_t *cr = cairo_create(surface);
  cairo_scale(cr, scale, scale);
  ox_handout_draw(self->handout, cr, self->page, NULL);
  cairo_destroy(cr);
  return surface;
}

static void draw_cb(GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data) {
  OxHandoutView *self = data;
  if (!self->handout || ox_handout_pages(self->handout) == 0 || width < 20 || height < 20) return;
  if (!self->drawn || self->drawn_width != width || self->drawn_height != height) {
    g_clear_pointer(&self->drawn, cairo_surface_destroy);
    self->drawn = draw_page(self, width, height);
    self->drawn_width = width;
    self->drawn_height = height;
  }
  double device = gtk_widget_get_scale_factor(GTK_WIDGET(self));
  double w = cairo_image_surface_get_width(self->drawn) / device;
  double h = cairo_image_surface_get_height(self->drawn) / device;
  double left = floor((width - w) / 2.0), top = 1.0;
  cairo_set_source_surface(cr, self->drawn, left, top);
  cairo_paint(cr);
  cairo_set_source_rgba(cr, 0.5, 0.5, 0.5, 0.8);
  cairo_set_line_width(cr, 1);
  cairo_rectangle(cr, left - 0.5, top - 0.5, w + 1, h + 1);
  cairo_stroke(cr);
}

/* ---- which page ------------------------------------------------------------------------- */

static void show(OxHandoutView *self) {
  size_t pages = self->handout ? ox_handout_pages(self->handout) : 0;
  if (self->page >= pages) self->page = pages > 0 ? pages - 1 : 0;
  char *words = pages > 0 ? g_strdup_printf(_("Page %zu of %zu"), self->page + 1, pages)
                          : g_strdup(_("No page"));
  gtk_label_set_text(self->label, words);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->area), GTK_ACCESSIBLE_PROPERTY_LABEL, words,
                                 -1);
  gtk_widget_set_sensitive(self->previous, self->page > 0);
  gtk_widget_set_sensitive(self->next, self->page + 1 < pages);
  forget(self);
  g_free(words);
}

static void previous_cb(OxHandoutView *self) {
  if (self->page > 0) self->page--;
  show(self);
}

static void next_cb(OxHandoutView *self) {
  self->page++;
  show(self);
}

void ox_handout_view_take(OxHandoutView *self, ox_handout *handout) {
  ox_handout_free(self->handout);
  self->handout = handout;
  show(self);
}

/* ---- together --------------------------------------------------------------------------- */

static GtkWidget *button_new(OxHandoutView *self, const char *icon, const char *name,
                             GCallback pressed) {
  GtkWidget *button = gtk_button_new_from_icon_name(icon);
  gtk_widget_set_tooltip_text(button, name);
  gtk_accessible_update_property(GTK_ACCESSIBLE(button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_swapped(button, "clicked", pressed, self);
  return button;
}

static void dispose(GObject *object) {
  OxHandoutView *self = OX_HANDOUT_VIEW(object);
  if (self->area)
    gtk_drawing_area_set_draw_func(GTK_DRAWING_AREA(self->area), NULL, NULL, NULL);
  self->area = NULL;
  g_clear_pointer(&self->box, gtk_widget_unparent);
  g_clear_pointer(&self->handout, ox_handout_free);
  g_clear_pointer(&self->drawn, cairo_surface_destroy);
  G_OBJECT_CLASS(ox_handout_view_parent_class)->dispose(object);
}

static void ox_handout_view_class_init(OxHandoutViewClass *class) {
  G_OBJECT_CLASS(class)->dispose = dispose;
  gtk_widget_class_set_layout_manager_type(GTK_WIDGET_CLASS(class), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(GTK_WIDGET_CLASS(class), "handoutview");
}

static void ox_handout_view_init(OxHandoutView *self) {
  GtkWidget *bar = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);
  self->box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 6);
  self->area = g_object_new(GTK_TYPE_DRAWING_AREA, "accessible-role", GTK_ACCESSIBLE_ROLE_IMG,
                            NULL);
  gtk_drawing_area_set_content_width(GTK_DRAWING_AREA(self->area), WIDTH);
  gtk_drawing_area_set_content_height(GTK_DRAWING_AREA(self->area), HEIGHT);
  gtk_drawing_area_set_draw_func(GTK_DRAWING_AREA(self->area), draw_cb, self, NULL);
  gtk_widget_set_vexpand(self->area, TRUE);
  self->previous = button_new(self, "go-previous-symbolic", _("Previous Page"),
                              G_CALLBACK(previous_cb));
  self->next = button_new(self, "go-next-symbolic", _("Next Page"), G_CALLBACK(next_cb));
  self->label = GTK_LABEL(gtk_label_new(NULL));
  gtk_widget_add_css_class(GTK_WIDGET(self->label), "figures");
  gtk_widget_set_halign(bar, GTK_ALIGN_CENTER);
  gtk_box_append(GTK_BOX(bar), self->previous);
  gtk_box_append(GTK_BOX(bar), GTK_WIDGET(self->label));
  gtk_box_append(GTK_BOX(bar), self->next);
  gtk_box_append(GTK_BOX(self->box), self->area);
  gtk_box_append(GTK_BOX(self->box), bar);
  gtk_widget_set_parent(self->box, GTK_WIDGET(self));
  show(self);
}

GtkWidget *ox_handout_view_new(void) { return g_object_new(OX_TYPE_HANDOUT_VIEW, NULL); }

size_t ox_handout_view_page(OxHandoutView *self) { return self->page; }

const char *ox_handout_view_words(OxHandoutView *self) { return gtk_label_get_text(self->label); }

GtkWidget *ox_handout_view_button(OxHandoutView *self, gboolean next) {
  return next ? self->next : self->previous;
}
