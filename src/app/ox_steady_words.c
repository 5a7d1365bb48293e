/* Words whose room grows but does not shrink. */
#include "ox_steady_words.h"

struct _OxSteadyWords {
  GtkWidget parent_instance;
  PangoLayout *layout;
  int width, height; /* the most that was needed since there were no words */
};

G_DEFINE_FINAL_TYPE(OxSteadyWords, ox_steady_words, GTK_TYPE_WIDGET)

static void snapshot(GtkWidget *widget, GtkSnapshot *snapshot) {
  OxSteadyWords *self = OX_STEADY_WORDS(widget);
  GdkRGBA colour;
  int height;
  gtk_style_context_get_color(gtk_widget_get_style_context(widget), &colour);
  pango_layout_get_pixel_size(self->layout, NULL, &height);
  graphene_point_t at =
      GRAPHENE_POINT_INIT(0, (float)((gtk_widget_get_height(widget) - height) / 2));
  gtk_snapshot_save(snapshot);
  gtk_snapshot_translate(snapshot, &at);
  gtk_snapshot_append_layout(snapshot, self->layout, &colour);
  gtk_snapshot_restore(snapshot);
}

static void measure(GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                    int *natural, int *minimum_baseline, int *natural_baseline) {
  OxSteadyWords *self = OX_STEADY_WORDS(widget);
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? self->width : self->height;
}

/* TRUE: more room is needed than before. */
static gboolean grow(OxSteadyWords *self) {
  int width, height;
  pango_layout_get_pixel_size(self->layout, &width, &height);
  if (width <= self->width && height <= self->height) return FALSE;
  self->width = MAX(width, self->width);
  self->height = MAX(height, self->height);
  return TRUE;
}

/* Another font, or another size of all text. */
static void renew(OxSteadyWords *self) {
  pango_layout_context_changed(self->layout);
  self->width = self->height = 0;
  grow(self);
  gtk_widget_queue_resize(GTK_WIDGET(self));
}

static void css_changed(GtkWidget *widget, GtkCssStyleChange *change) {
  GTK_WIDGET_CLASS(ox_steady_words_parent_class)->css_changed(widget, change);
  if (OX_STEADY_WORDS(widget)->layout) renew(OX_STEADY_WORDS(widget));
}

static void system_setting_changed(GtkWidget *widget, GtkSystemSetting setting) {
  GTK_WIDGET_CLASS(ox_steady_words_parent_class)->system_setting_changed(widget, setting);
  if (OX_STEADY_WORDS(widget)->layout) renew(OX_STEADY_WORDS(widget));
}

static void dispose(GObject *object) {
  g_clear_object(&OX_STEADY_WORDS(object)->layout);
  G_OBJECT_CLASS(ox_steady_words_parent_class)->dispose(object);
}

static void ox_steady_words_class_init(OxSteadyWordsClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  widget_class->snapshot = snapshot;
  widget_class->measure = measure;
  widget_class->css_changed = css_changed;
  widget_class->system_setting_changed = system_setting_changed;
  gtk_widget_class_set_css_name(widget_class, "words");
  gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_LABEL);
}

static void ox_steady_words_init(OxSteadyWords *self) {
  PangoAttrList *attributes = pango_attr_list_new();
  self->layout = gtk_widget_create_pango_layout(GTK_WIDGET(self), NULL);
  pango_attr_list_insert(attributes, pango_attr_font_features_new("tnum"));
  pango_layout_set_attributes(self->layout, attributes);
  pango_attr_list_unref(attributes);
}

GtkWidget *ox_steady_words_new(void) { return g_object_new(OX_TYPE_STEADY_WORDS, NULL); }

void ox_steady_words_set(OxSteadyWords *self, const char *words) {
  if (strcmp(words, ox_steady_words_get(self)) == 0) return;
  pango_layout_set_text(self->layout, words, -1);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  gboolean larger = grow(self);
  if (*words == '\0') self->width = self->height = 0;
  if (larger)
    gtk_widget_queue_resize(GTK_WIDGET(self));
  else
    gtk_widget_queue_draw(GTK_WIDGET(self));
}

const char *ox_steady_words_get(OxSteadyWords *self) { return pango_layout_get_text(self->layout); }
