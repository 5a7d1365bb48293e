/* Where the flight is, in as many words as fit. */
#include "ox_instant_label.h"

#include "ox_display.h"
#include "oxbow/words.h"

/* What the longest words of a flight go by: to measure each leg at every step of a drag would take
 * longer than the step. */
typedef struct {
  guint with_circuit, without; /* bits 1 << ox_leg_kind */
  int circuit;                 /* the highest; all digits are of one width */
  double clock_s;              /* an instant whose clock is the longest */
  glong clock_chars;
} extent;

struct _OxInstantLabel {
  GtkWidget parent_instance;

  PangoLayout *layout; /* owned */
  char words[OX_INSTANT_FORMS][128];
  extent extent;
  int widest[OX_INSTANT_FORMS]; /* px, of the flight; -1: not measured */
};

G_DEFINE_FINAL_TYPE(OxInstantLabel, ox_instant_label, GTK_TYPE_WIDGET)

/* ---- how wide --------------------------------------------------------------------------- */

static int width_of(OxInstantLabel *self, const char *words) {
  int width;
  pango_layout_set_text(self->layout, words, -1);
  pango_layout_get_pixel_size(self->layout, &width, NULL);
  return width;
}

static void count_clock(extent *e, double t_s) {
  char clock[24];
  ox_words_min_s(clock, sizeof clock, t_s);
  glong chars = g_utf8_strlen(clock, -1);
  if (chars < e->clock_chars) return; /* of two, the second has no sign, but one digit more */
  e->clock_chars = chars;
  e->clock_s = t_s;
}

static extent extent_of(const ox_flight *flight) {
  extent e = {0};
  for (size_t i = 0; i < flight->leg_count; i++) {
    const ox_leg *leg = &flight->legs[i];
    *(leg->circuit > 0 ? &e.with_circuit : &e.without) |= 1u << leg->kind;
    e.circuit = MAX(e.circuit, leg->circuit);
  }
  count_clock(&e, ox_flight_begin_s(flight));
  count_clock(&e, ox_flight_end_s(flight));
  return e;
}

/* Another clock of the same length is as wide. */
static gboolean is_as_wide(const extent *a, const extent *b) {
  return a->with_circuit == b->with_circuit && a->without == b->without &&
         a->circuit == b->circuit && a->clock_chars == b->clock_chars;
}

static int widest_of(OxInstantLabel *self, ox_instant_form form) {
  const extent *e = &self->extent;
  char words[128];
  int widest = width_of(self, self->words[form]);
  for (guint kind = 0; kind < OX_LEG_KIND_COUNT; kind++)
    for (int with = 0; with <= 1; with++) {
      if (!((with ? e->with_circuit : e->without) & 1u << kind)) continue;
      ox_display_leg(words, sizeof words, (ox_leg_kind)kind, with ? e->circuit : 0, e->clock_s,
                     form);
      widest = MAX(widest, width_of(self, words));
    }
  return widest;
}

static int widest(OxInstantLabel *self, ox_instant_form form) {
  if (self->widest[form] < 0) self->widest[form] = widest_of(self, form);
  return self->widest[form];
}

static void measure_anew(OxInstantLabel *self) {
  for (int i = 0; i < OX_INSTANT_FORMS; i++) self->widest[i] = -1;
  gtk_widget_queue_resize(GTK_WIDGET(self));
}

static ox_instant_form form_for(OxInstantLabel *self, int width) {
  ox_instant_form form = OX_INSTANT_WHOLE;
  while (form < OX_INSTANT_CLOCK && widest(self, form) > width) form++;
  return form;
}

/* ---- the widget ------------------------------------------------------------------------- */

static void measure(GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                    int *natural, int *minimum_baseline, int *natural_baseline) {
  OxInstantLabel *self = OX_INSTANT_LABEL(widget);
  if (orientation == GTK_ORIENTATION_HORIZONTAL) {
    *minimum = widest(self, OX_INSTANT_CLOCK);
    *natural = widest(self, OX_INSTANT_WHOLE);
  } else {
    pango_layout_set_text(self->layout, self->words[OX_INSTANT_WHOLE], -1);
    pango_layout_get_pixel_size(self->layout, NULL, minimum);
    *natural = *minimum;
  }
}

static void snapshot(GtkWidget *widget, GtkSnapshot *snapshot) {
  OxInstantLabel *self = OX_INSTANT_LABEL(widget);
  GdkRGBA colour;
  int width, height;
  gtk_style_context_get_color(gtk_widget_get_style_context(widget), &colour);
  pango_layout_set_text(self->layout, ox_instant_label_drawn(self), -1);
  pango_layout_get_pixel_size(self->layout, &width, &height);
  gboolean rtl = gtk_widget_get_direction(widget) == GTK_TEXT_DIR_RTL;
  graphene_point_t at =
      GRAPHENE_POINT_INIT((float)(rtl ? gtk_widget_get_width(widget) - width : 0),
                          (float)((gtk_widget_get_height(widget) - height) / 2));
  gtk_snapshot_save(snapshot);
  gtk_snapshot_translate(snapshot, &at);
  gtk_snapshot_append_layout(snapshot, self->layout, &colour);
  gtk_snapshot_restore(snapshot);
}

static void renew(OxInstantLabel *self) {
  if (!self->layout) return;
  pango_layout_context_changed(self->layout);
  measure_anew(self);
}

static void css_changed(GtkWidget *widget, GtkCssStyleChange *change) {
  GTK_WIDGET_CLASS(ox_instant_label_parent_class)->css_changed(widget, change);
  renew(OX_INSTANT_LABEL(widget));
}

static void system_setting_changed(GtkWidget *widget, GtkSystemSetting setting) {
  GTK_WIDGET_CLASS(ox_instant_label_parent_class)->system_setting_changed(widget, setting);
  renew(OX_INSTANT_LABEL(widget));
}

static void dispose(GObject *object) {
  g_clear_object(&OX_INSTANT_LABEL(object)->layout);
  G_OBJECT_CLASS(ox_instant_label_parent_class)->dispose(object);
}

static void ox_instant_label_class_init(OxInstantLabelClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  widget_class->measure = measure;
  widget_class->snapshot = snapshot;
  widget_class->css_changed = css_changed;
  widget_class->system_setting_changed = system_setting_changed;
  gtk_widget_class_set_css_name(widget_class, "instant");
  gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_LABEL);
}

static void ox_instant_label_init(OxInstantLabel *self) {
  PangoAttrList *attributes = pango_attr_list_new();
  self->layout = gtk_widget_create_pango_layout(GTK_WIDGET(self), NULL);
  pango_attr_list_insert(attributes, pango_attr_font_features_new("tnum"));
  pango_layout_set_attributes(self->layout, attributes);
  pango_attr_list_unref(attributes);
  measure_anew(self);
}

/* ---- the words -------------------------------------------------------------------------- */

void ox_instant_label_show(OxInstantLabel *self, const ox_flight *flight, double t_s) {
  char words[OX_INSTANT_FORMS][128];
  extent now = extent_of(flight);
  const ox_leg *leg =
      flight->leg_count > 0 ? &flight->legs[ox_flight_leg_index(flight, t_s)] : NULL;
  ox_display_instant(words[OX_INSTANT_WHOLE], sizeof *words, flight, t_s);
  for (ox_instant_form form = OX_INSTANT_LEG; form < OX_INSTANT_FORMS; form++)
    if (leg)
      ox_display_leg(words[form], sizeof *words, leg->kind, leg->circuit, t_s, form);
    else
      g_strlcpy(words[form], words[OX_INSTANT_WHOLE], sizeof *words);
  gboolean wide = is_as_wide(&now, &self->extent) && leg;
  self->extent = now;
  if (wide && strcmp(words[OX_INSTANT_WHOLE], self->words[OX_INSTANT_WHOLE]) == 0) return;
  memcpy(self->words, words, sizeof words);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 self->words[OX_INSTANT_WHOLE], -1);
  if (wide)
    gtk_widget_queue_draw(GTK_WIDGET(self));
  else
    measure_anew(self);
}

const char *ox_instant_label_words(OxInstantLabel *self) { return self->words[OX_INSTANT_WHOLE]; }

const char *ox_instant_label_drawn(OxInstantLabel *self) {
  return self->words[form_for(self, gtk_widget_get_width(GTK_WIDGET(self)))];
}

int ox_instant_label_drawn_width(OxInstantLabel *self) {
  return width_of(self, ox_instant_label_drawn(self));
}
