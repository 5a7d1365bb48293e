/* The strip of key moments. One small picture is laid out and shared by all tiles. */
#include "ox_moments_strip.h"

#include "ox_theme.h"
#include "oxbow/moments_page.h"
#include "oxbow/text.h"

#define PICTURE_WIDTH 164
#define PICTURE_HEIGHT 64
#define ACT_LINES 2
#define JUST_PASSED_S 0.02 /* a seek to a moment counts as having reached it */

struct _OxMomentsStrip {
  GtkWidget parent_instance;

  /* children */
  GtkWidget *scrolled;
  GtkBox *tiles;

  /* owned */
  OxDocument *document;
  OxPlayer *player;
  ox_picture *picture;

  GPtrArray *buttons; /* borrowed from tiles */
  ox_moments moments;
  int circuit; /* shown; -1: none */
  int current;
  guint fills;
};

G_DEFINE_FINAL_TYPE(OxMomentsStrip, ox_moments_strip, GTK_TYPE_WIDGET)

/* ---- a tile ----------------------------------------------------------------------------- */

static void draw_cb(GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data) {
  OxMomentsStrip *self = data;
  size_t i = GPOINTER_TO_SIZE(g_object_get_data(G_OBJECT(area), "moment"));
  if (!self->picture || i >= self->moments.count) return;
  double from_s = self->moments.moment[i > 0 ? i - 1 : 0].t_s;
  ox_moment_picture_draw(self->picture, cr, from_s, self->moments.moment[i].t_s);
}

static void clicked_cb(GtkButton *button, OxMomentsStrip *self) {
  size_t i = GPOINTER_TO_SIZE(g_object_get_data(G_OBJECT(button), "moment"));
  if (i < self->moments.count) ox_player_seek(self->player, self->moments.moment[i].t_s);
}

/* No wider than the picture; of the lines that it may need all are always there, so that the strip
 * keeps its height. */
static GtkWidget *caption_new(const char *text, const char *css_class, int lines) {
  GtkWidget *widget = gtk_label_new(text);
  GtkLabel *label = GTK_LABEL(widget);
  gtk_label_set_xalign(label, 0);
  gtk_label_set_yalign(label, 0);
  gtk_label_set_ellipsize(label, PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars(label, 10);
  gtk_label_set_max_width_chars(label, 10);
  gtk_widget_add_css_class(widget, css_class);
  if (lines > 1) {
    gtk_label_set_wrap(label, TRUE);
    gtk_label_set_lines(label, lines);
  }
  return widget;
}

static GtkWidget *tile_new(OxMomentsStrip *self, size_t i) {
  const ox_moment *moment = &self->moments.moment[i];
  GtkWidget *button = gtk_button_new(), *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *area = gtk_drawing_area_new();
  char *words = g_strdup_printf("%s, %s. %s.", moment->what, moment->figures, moment->act);
  gtk_drawing_area_set_content_width(GTK_DRAWING_AREA(area), PICTURE_WIDTH);
  gtk_drawing_area_set_content_height(GTK_DRAWING_AREA(area), PICTURE_HEIGHT);
  gtk_widget_set_halign(area, GTK_ALIGN_CENTER); /* with large text the words are wider */
  gtk_drawing_area_set_draw_func(GTK_DRAWING_AREA(area), draw_cb, self, NULL);
  g_object_set_data(G_OBJECT(area), "moment", GSIZE_TO_POINTER(i));
  g_object_set_data(G_OBJECT(button), "moment", GSIZE_TO_POINTER(i));
  gtk_box_append(GTK_BOX(box), area);
  gtk_box_append(GTK_BOX(box), caption_new(moment->what, "what", 1));
  gtk_box_append(GTK_BOX(box), caption_new(moment->figures, "figures", 1));
  gtk_box_append(GTK_BOX(box), caption_new(moment->act, "act", ACT_LINES));
  gtk_button_set_child(GTK_BUTTON(button), box);
  gtk_widget_add_css_class(button, "flat");
  gtk_widget_set_tooltip_text(button, words);
  gtk_accessible_update_property(GTK_ACCESSIBLE(button), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  g_signal_connect(button, "clicked", G_CALLBACK(clicked_cb), self);
  g_free(words);
  return button;
}

/* ---- filling ---------------------------------------------------------------------------- */

static void forget_picture(OxMomentsStrip *self) {
  g_clear_pointer(&self->picture, ox_picture_free);
}

static void make_picture(OxMomentsStrip *self) {
  ox_scene scene = {.c = ox_document_case(self->document),
                    .flight = ox_document_flight(self->document),
                    .palette = ox_theme_palette(GTK_WIDGET(self))};
  forget_picture(self);
  self->picture = ox_moment_picture_new(&scene, PICTURE_WIDTH, PICTURE_HEIGHT);
}

/* The circuit that is flown; 0 in an entry with legs of its own. */
static int circuit_now(OxMomentsStrip *self) {
  const ox_flight *flight = ox_document_flight(self->document);
  double t_s = ox_player_time_s(self->player);
  int circuit = 1;
  if (flight->circuit_count == 0) return 0;
  if (flight->circuits[0].fix_t_s > 1.0 && t_s < flight->circuits[0].fix_t_s) return 0;
  while (circuit < (int)flight->circuit_count && t_s >= flight->circuits[circuit].fix_t_s)
    circuit++;
  return circuit;
}

static void empty(OxMomentsStrip *self) {
  for (guint i = 0; i < self->buttons->len; i++)
    gtk_box_remove(self->tiles, g_ptr_array_index(self->buttons, i));
  g_ptr_array_set_size(self->buttons, 0);
  self->moments.count = 0;
  self->circuit = -1;
  self->current = -1;
}

static void fill(OxMomentsStrip *self) {
  char head[48];
  int circuit = circuit_now(self);
  empty(self);
  self->circuit = circuit;
  self->moments = ox_moments_make(ox_document_case(self->document),
                                  ox_document_flight(self->document), circuit, circuit);
  if (circuit > 0)
    g_snprintf(head, sizeof head, _("Key moments, circuit %d"), circuit);
  else
    g_strlcpy(head, _("Key moments, entry"), sizeof head);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_LABEL, head, -1);
  make_picture(self);
  for (size_t i = 0; i < self->moments.count; i++) {
    GtkWidget *tile = tile_new(self, i);
    g_ptr_array_add(self->buttons, tile);
    gtk_box_append(self->tiles, tile);
  }
  self->fills++;
}

static void bring_into_sight(OxMomentsStrip *self, GtkWidget *tile) {
  graphene_rect_t at;
  GtkAdjustment *across =
      gtk_scrolled_window_get_hadjustment(GTK_SCROLLED_WINDOW(self->scrolled));
  if (!gtk_widget_compute_bounds(tile, GTK_WIDGET(self->tiles), &at)) return;
  gtk_adjustment_clamp_page(across, (double)at.origin.x,
                            (double)at.origin.x + (double)at.size.width);
}

static void show_current(OxMomentsStrip *self) {
  double t_s = ox_player_time_s(self->player);
  int current = -1;
  for (size_t i = 0; i < self->moments.count; i++)
    if (self->moments.moment[i].t_s <= t_s + JUST_PASSED_S) current = (int)i;
  if (current == self->current) return;
  if (self->current >= 0)
    gtk_widget_remove_css_class(g_ptr_array_index(self->buttons, self->current), "current");
  if (current >= 0) {
    gtk_widget_add_css_class(g_ptr_array_index(self->buttons, current), "current");
    bring_into_sight(self, g_ptr_array_index(self->buttons, current));
  }
  self->current = current;
}

static void moved_cb(OxMomentsStrip *self) {
  if (!gtk_widget_get_visible(GTK_WIDGET(self))) return;
  if (circuit_now(self) != self->circuit) fill(self);
  show_current(self);
}

static void refresh(OxMomentsStrip *self) {
  if (!gtk_widget_get_visible(GTK_WIDGET(self))) {
    empty(self);
    forget_picture(self); /* it borrows the flight */
    return;
  }
  fill(self);
  show_current(self);
}

/* ---- the object ------------------------------------------------------------------------- */

static void css_changed(GtkWidget *widget, GtkCssStyleChange *change) {
  OxMomentsStrip *self = OX_MOMENTS_STRIP(widget);
  GTK_WIDGET_CLASS(ox_moments_strip_parent_class)->css_changed(widget, change);
  if (self->document && self->picture) make_picture(self);
  for (guint i = 0; i < self->buttons->len; i++)
    gtk_widget_queue_draw(gtk_widget_get_first_child(
        gtk_button_get_child(GTK_BUTTON(g_ptr_array_index(self->buttons, i)))));
}

static void dispose(GObject *object) {
  OxMomentsStrip *self = OX_MOMENTS_STRIP(object);
  g_ptr_array_set_size(self->buttons, 0);
  g_clear_pointer(&self->scrolled, gtk_widget_unparent);
  forget_picture(self);
  g_clear_object(&self->document);
  g_clear_object(&self->player);
  G_OBJECT_CLASS(ox_moments_strip_parent_class)->dispose(object);
}

static void finalize(GObject *object) {
  g_ptr_array_unref(OX_MOMENTS_STRIP(object)->buttons);
  G_OBJECT_CLASS(ox_moments_strip_parent_class)->finalize(object);
}

static void ox_moments_strip_class_init(OxMomentsStripClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  G_OBJECT_CLASS(class)->finalize = finalize;
  widget_class->css_changed = css_changed;
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(widget_class, "moments");
  gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void ox_moments_strip_init(OxMomentsStrip *self) {
  self->buttons = g_ptr_array_new();
  self->circuit = self->current = -1;
  self->tiles = GTK_BOX(gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 3));
  self->scrolled = gtk_scrolled_window_new();
  gtk_scrolled_window_set_policy(GTK_SCROLLED_WINDOW(self->scrolled), GTK_POLICY_AUTOMATIC,
                                 GTK_POLICY_NEVER);
  gtk_scrolled_window_set_child(GTK_SCROLLED_WINDOW(self->scrolled), GTK_WIDGET(self->tiles));
  gtk_widget_set_parent(self->scrolled, GTK_WIDGET(self));
  gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _("Key moments"), -1);
}

OxMomentsStrip *ox_moments_strip_new(OxDocument *document, OxPlayer *player) {
  OxMomentsStrip *self = g_object_new(OX_TYPE_MOMENTS_STRIP, NULL);
  self->document = g_object_ref(document);
  self->player = g_object_ref(player);
  g_signal_connect_object(document, "settled", G_CALLBACK(refresh), self, G_CONNECT_SWAPPED);
  g_signal_connect_object(player, "moved", G_CALLBACK(moved_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object(self, "notify::visible", G_CALLBACK(refresh), self, G_CONNECT_SWAPPED);
  return self;
}

size_t ox_moments_strip_count(OxMomentsStrip *self) { return self->moments.count; }

GtkWidget *ox_moments_strip_tile(OxMomentsStrip *self, size_t index) {
  return g_ptr_array_index(self->buttons, index);
}

const ox_moments *ox_moments_strip_moments(OxMomentsStrip *self) { return &self->moments; }

int ox_moments_strip_current(OxMomentsStrip *self) { return self->current; }

guint ox_moments_strip_fill_count(OxMomentsStrip *self) { return self->fills; }
