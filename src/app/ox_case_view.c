/* Another case beside the board: a caption, and the painter's picture under it. */
#include "ox_case_view.h"

#include <stdlib.h>

#include "ox_passage.h"

#include "oxbow/words.h"

#define LEAST_SIDE 160

/* ---- the picture ------------------------------------------------------------------------ */

struct _OxCaseView {
  GtkWidget parent_instance;

  /* children: what stays and what moves, drawn apart so that playing draws the aircraft alone */
  GtkWidget *still, *moving;

  /* owned */
  OxPlayer *player;
  ox_flight *flight;
  ox_picture *picture;

  ox_case c;
  ox_scene scene;
  ox_fit fit;
  ox_held held; /* on the way to another scale, with the board beside it */
  ox_viewport settles_from;
  gint64 settle_us;               /* when that began; -1: with the next frame */
  guint settling;                 /* tick callback; 0: none */
  ox_case_view_counts counts;
};

G_DEFINE_FINAL_TYPE(OxCaseView, ox_case_view, GTK_TYPE_WIDGET)

static void forget_picture(OxCaseView *self) {
  g_clear_pointer(&self->picture, ox_picture_free);
  gtk_widget_queue_draw(self->still);
  gtk_widget_queue_draw(self->moving);
}

static ox_picture *current_picture(OxCaseView *self) {
  if (self->picture || !self->scene.c) return self->picture;
  self->picture = ox_picture_new(&self->scene, gtk_widget_get_width(GTK_WIDGET(self)),
                                 gtk_widget_get_height(GTK_WIDGET(self)));
  self->counts.layouts++;
  return self->picture;
}

static void draw_still(GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data) {
  ox_picture *picture = current_picture(OX_CASE_VIEW(data));
  if (picture) ox_picture_draw_still(picture, cr);
}

static void draw_moving(GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data) {
  OxCaseView *self = OX_CASE_VIEW(data);
  ox_picture *picture = current_picture(self);
  self->counts.moving++;
  if (picture) ox_picture_draw_moving(picture, cr, ox_player_time_s(self->player));
}

/* ---- another scale -------------------------------------------------------------------------- */

static void end_settling(OxCaseView *self) {
  if (self->settling != 0) gtk_widget_remove_tick_callback(GTK_WIDGET(self), self->settling);
  self->settling = 0;
  self->scene.held = NULL;
}

static gboolean where_it_belongs(OxCaseView *self, ox_viewport *out) {
  return ox_picture_viewport_of(&self->scene, gtk_widget_get_width(GTK_WIDGET(self)),
                                gtk_widget_get_height(GTK_WIDGET(self)),
                                ox_player_time_s(self->player), out);
}

static gboolean settle_cb(GtkWidget *widget, GdkFrameClock *clock, gpointer data) {
  OxCaseView *self = OX_CASE_VIEW(widget);
  gint64 now_us = gdk_frame_clock_get_frame_time(clock);
  ox_viewport to;
  if (self->settle_us < 0) self->settle_us = now_us;
  double share = ox_passage_share(self->settle_us, now_us);
  forget_picture(self);
  if (share < 1.0 && where_it_belongs(self, &to)) {
    self->held.world = ox_passage_viewport(&self->settles_from, &to, share);
    return G_SOURCE_CONTINUE;
  }
  self->settling = 0;
  self->scene.held = NULL;
  return G_SOURCE_REMOVE;
}

/* In step with the board that was let go. */
static void settle_from(OxCaseView *self, const ox_viewport *from) {
  ox_viewport to;
  if (!ox_passage_may_move(GTK_WIDGET(self)) || !where_it_belongs(self, &to) ||
      ox_passage_same_viewport(from, &to))
    return;
  self->held.world = self->settles_from = *from;
  self->scene.held = &self->held;
  self->settle_us = -1;
  self->settling = gtk_widget_add_tick_callback(GTK_WIDGET(self), settle_cb, NULL, NULL);
}

/* ---- the widget ------------------------------------------------------------------------- */

static void measure(GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                    int *natural, int *minimum_baseline, int *natural_baseline) {
  *minimum = LEAST_SIDE;
  *natural = 2 * LEAST_SIDE;
}

static void size_allocate(GtkWidget *widget, int width, int height, int baseline) {
  OxCaseView *self = OX_CASE_VIEW(widget);
  gboolean resized = width != gtk_widget_get_width(self->still) ||
                     height != gtk_widget_get_height(self->still);
  gtk_widget_allocate(self->still, width, height, -1, NULL);
  gtk_widget_allocate(self->moving, width, height, -1, NULL);
  if (!resized) return;
  end_settling(self);
  forget_picture(self);
}

static void dispose(GObject *object) {
  OxCaseView *self = OX_CASE_VIEW(object);
  end_settling(self);
  g_clear_pointer(&self->picture, ox_picture_free);
  g_clear_pointer(&self->still, gtk_widget_unparent);
  g_clear_pointer(&self->moving, gtk_widget_unparent);
  g_clear_object(&self->player);
  G_OBJECT_CLASS(ox_case_view_parent_class)->dispose(object);
}

static void finalize(GObject *object) {
  g_free(OX_CASE_VIEW(object)->flight);
  G_OBJECT_CLASS(ox_case_view_parent_class)->finalize(object);
}

static void ox_case_view_class_init(OxCaseViewClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  G_OBJECT_CLASS(class)->finalize = finalize;
  widget_class->measure = measure;
  widget_class->size_allocate = size_allocate;
  gtk_widget_class_set_css_name(widget_class, "caseview");
  gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static GtkWidget *layer_new(OxCaseView *self, GtkDrawingAreaDrawFunc draw) {
  GtkWidget *layer = g_object_new(GTK_TYPE_DRAWING_AREA, "accessible-role",
                                  GTK_ACCESSIBLE_ROLE_PRESENTATION, "can-target", FALSE, NULL);
  gtk_drawing_area_set_draw_func(GTK_DRAWING_AREA(layer), draw, self, NULL);
  gtk_widget_set_parent(layer, GTK_WIDGET(self));
  return layer;
}

static void ox_case_view_init(OxCaseView *self) {
  self->flight = g_new0(ox_flight, 1);
  gtk_widget_set_overflow(GTK_WIDGET(self), GTK_OVERFLOW_HIDDEN);
  gtk_widget_set_focusable(GTK_WIDGET(self), TRUE); /* for who listens to the picture */
  self->still = layer_new(self, draw_still);
  self->moving = layer_new(self, draw_moving);
}

static void moved_cb(OxCaseView *self) { gtk_widget_queue_draw(self->moving); }

GtkWidget *ox_case_view_new(OxPlayer *player) {
  OxCaseView *self = g_object_new(OX_TYPE_CASE_VIEW, "hexpand", TRUE, "vexpand", TRUE, NULL);
  self->player = g_object_ref(player);
  g_signal_connect_object(player, "moved", G_CALLBACK(moved_cb), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET(self);
}

void ox_case_view_show(OxCaseView *self, const ox_case *c, const ox_flight *flight,
                       const ox_scene *like, const ox_fit *fit) {
  gboolean goes = like->held && self->picture && self->fit.dev_per_nm > 0.0 &&
                  self->fit.dev_per_nm != fit->dev_per_nm && !ox_picture_moves(self->picture);
  ox_viewport from = {0};
  if (goes) from = ox_picture_viewport(self->picture);
  end_settling(self);
  self->c = *c;
  *self->flight = *flight;
  self->fit = *fit;
  self->scene = (ox_scene){.c = &self->c,
                           .flight = self->flight,
                           .title = self->c.name,
                           .palette = like->palette,
                           .text_scale = like->text_scale,
                           .layers = like->layers,
                           .view = like->view,
                           .fit = &self->fit};
  char *words = ox_words_describe(c, flight);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_LABEL, c->name,
                                 GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
  free(words);
  forget_picture(self);
  if (goes) settle_from(self, &from);
}

const ox_scene *ox_case_view_scene(OxCaseView *self) { return &self->scene; }

gboolean ox_case_view_get_viewport(OxCaseView *self, ox_viewport *out) {
  ox_picture *picture = current_picture(self);
  if (picture) *out = ox_picture_viewport(picture);
  return picture != NULL;
}

ox_case_view_counts ox_case_view_get_counts(OxCaseView *self) { return self->counts; }
