/* The row of figures: a caption above each, both drawn here; in more lines where it is narrow. */
#include "ox_figure_row.h"

#include <math.h>

#include "oxbow/text.h"

#define CAPTION_SHARE 0.72 /* of the figures' size */
#define LEAST_CAPTION_PX 10.5
#define MOST_LINES 3
#define GAP_SHARE 0.6 /* between columns, of the figures' size */

struct _OxFigureRow {
  GtkWidget parent_instance;

  /* owned */
  OxDocument *document;
  OxPlayer *player;
  PangoLayout *figure, *caption;

  ox_figure_text text[OX_FIGURE_COUNT];
  double size_px; /* 0: the window's own */
  int most_lines;
  guint draws;
};

G_DEFINE_FINAL_TYPE(OxFigureRow, ox_figure_row, GTK_TYPE_WIDGET)

/* ---- type ------------------------------------------------------------------------------- */

static double size_of(OxFigureRow *self) {
  if (self->size_px > 0) return self->size_px;
  PangoContext *context = gtk_widget_get_pango_context(GTK_WIDGET(self));
  const PangoFontDescription *font = pango_context_get_font_description(context);
  double size = (double)pango_font_description_get_size(font) / PANGO_SCALE;
  return pango_font_description_get_size_is_absolute(font) ? size : size * 96 / 72;
}

static PangoLayout *layout_of(OxFigureRow *self, double px, gboolean bold) {
  PangoContext *context = gtk_widget_get_pango_context(GTK_WIDGET(self));
  PangoFontDescription *font =
      pango_font_description_copy(pango_context_get_font_description(context));
  PangoLayout *layout = gtk_widget_create_pango_layout(GTK_WIDGET(self), NULL);
  PangoAttrList *attributes = pango_attr_list_new();
  pango_attr_list_insert(attributes, pango_attr_font_features_new("tnum"));
  pango_font_description_set_absolute_size(font, px * PANGO_SCALE);
  if (bold) pango_font_description_set_weight(font, PANGO_WEIGHT_BOLD);
  pango_layout_set_font_description(layout, font);
  pango_layout_set_attributes(layout, attributes);
  pango_attr_list_unref(attributes);
  pango_font_description_free(font);
  return layout;
}

static void make_layouts(OxFigureRow *self) {
  double px = size_of(self);
  g_clear_object(&self->figure);
  g_clear_object(&self->caption);
  self->figure = layout_of(self, px, TRUE);
  self->caption = layout_of(self, MAX(MIN(LEAST_CAPTION_PX, px), CAPTION_SHARE * px), FALSE);
}

static int width_of(PangoLayout *layout, const char *text) {
  int width;
  pango_layout_set_text(layout, text, -1);
  pango_layout_get_pixel_size(layout, &width, NULL);
  return width;
}

static int height_of(PangoLayout *layout) {
  int height;
  pango_layout_set_text(layout, "0", -1);
  pango_layout_get_pixel_size(layout, NULL, &height);
  return height;
}

static int column_width(OxFigureRow *self, int i) {
  return MAX(width_of(self->caption, self->text[i].caption),
             width_of(self->figure, self->text[i].widest));
}

/* ---- drawing ---------------------------------------------------------------------------- */

static void show_at(GtkSnapshot *snapshot, PangoLayout *layout, const GdkRGBA *colour, double x,
                    double y) {
  graphene_point_t at = GRAPHENE_POINT_INIT((float)x, (float)y);
  gtk_snapshot_save(snapshot);
  gtk_snapshot_translate(snapshot, &at);
  gtk_snapshot_append_layout(snapshot, layout, colour);
  gtk_snapshot_restore(snapshot);
}

/* ---- lines ------------------------------------------------------------------------------ */

/* The columns in lines, as many to a line as fit; all lines have the same columns' places, so that
 * figures stand below figures. */
typedef struct {
  int count, lines, a_line; /* columns that are shown; lines; columns in a line at most */
  int column[OX_FIGURE_COUNT];
  int width[OX_FIGURE_COUNT]; /* of the places in a line */
} line_plan;

static int least_gap(OxFigureRow *self) { return (int)(GAP_SHARE * size_of(self)); }

static int total_of(OxFigureRow *self, const line_plan *plan) {
  int total = (plan->a_line - 1) * least_gap(self);
  for (int i = 0; i < plan->a_line; i++) total += plan->width[i];
  return total;
}

static void set_lines(OxFigureRow *self, line_plan *plan, int lines) {
  plan->lines = lines;
  plan->a_line = (plan->count + lines - 1) / lines;
  memset(plan->width, 0, sizeof plan->width);
  for (int i = 0; i < plan->count; i++) {
    int *width = &plan->width[i % plan->a_line];
    *width = MAX(*width, column_width(self, plan->column[i]));
  }
}

/* As few lines as the width allows; < 0: one. */
static line_plan plan_for(OxFigureRow *self, int width) {
  line_plan plan = {0};
  for (int i = 0; i < OX_FIGURE_COUNT; i++)
    if (self->text[i].shown) plan.column[plan.count++] = i;
  int lines = 1, most = MIN(self->most_lines, plan.count);
  if (plan.count > 0) set_lines(self, &plan, lines);
  while (width >= 0 && lines < most && total_of(self, &plan) > width)
    set_lines(self, &plan, ++lines);
  return plan;
}

static int line_height(OxFigureRow *self) {
  return height_of(self->caption) + height_of(self->figure);
}

/* The columns spread over the width, each as wide as its widest figure. */
static void snapshot(GtkWidget *widget, GtkSnapshot *snapshot) {
  OxFigureRow *self = OX_FIGURE_ROW(widget);
  GdkRGBA colour, quiet;
  line_plan plan = plan_for(self, gtk_widget_get_width(widget));
  self->draws++;
  if (plan.count == 0) return;
  gtk_style_context_get_color(gtk_widget_get_style_context(widget), &colour);
  quiet = colour;
  quiet.alpha *= 0.75F;
  double spare = gtk_widget_get_width(widget) - total_of(self, &plan);
  double gap = plan.a_line > 1 ? spare / (plan.a_line - 1) + least_gap(self) : 0;
  double x = 0, height = line_height(self), below = height_of(self->caption);
  gap = fmin(fmax(gap, 0), 3 * size_of(self));
  for (int i = 0; i < plan.count; i++) {
    const ox_figure_text *text = &self->text[plan.column[i]];
    double y = i / plan.a_line * height;
    if (i % plan.a_line == 0) x = 0;
    pango_layout_set_text(self->caption, text->caption, -1);
    show_at(snapshot, self->caption, &quiet, x, y);
    pango_layout_set_text(self->figure, text->value, -1);
    show_at(snapshot, self->figure, &colour, x, y + below);
    x += plan.width[i % plan.a_line] + gap;
  }
}

static GtkSizeRequestMode request_mode(GtkWidget *widget) {
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void measure(GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                    int *natural, int *minimum_baseline, int *natural_baseline) {
  OxFigureRow *self = OX_FIGURE_ROW(widget);
  line_plan plan = plan_for(self, orientation == GTK_ORIENTATION_VERTICAL ? for_size : -1);
  if (orientation == GTK_ORIENTATION_VERTICAL) {
    *minimum = *natural = MAX(plan.lines, 1) * line_height(self);
    return;
  }
  *minimum = *natural = 0;
  if (plan.count == 0) return;
  *natural = total_of(self, &plan);
  set_lines(self, &plan, MIN(self->most_lines, plan.count));
  *minimum = total_of(self, &plan);
}

/* ---- the model -------------------------------------------------------------------------- */

static gboolean same_columns(const ox_figure_text *a, const ox_figure_text *b) {
  for (int i = 0; i < OX_FIGURE_COUNT; i++)
    if (a[i].shown != b[i].shown || strcmp(a[i].caption, b[i].caption) != 0) return FALSE;
  return TRUE;
}

static gboolean same_values(const ox_figure_text *a, const ox_figure_text *b) {
  for (int i = 0; i < OX_FIGURE_COUNT; i++)
    if (strcmp(a[i].value, b[i].value) != 0) return FALSE;
  return TRUE;
}

static void show(OxFigureRow *self) {
  ox_figure_text now[OX_FIGURE_COUNT];
  char words[256];
  const ox_case *c = ox_document_case(self->document);
  ox_figures_make(now, c, ox_document_whole_flight(self->document),
                  ox_player_time_s(self->player));
  gboolean columns = !same_columns(now, self->text);
  if (!columns && same_values(now, self->text)) return;
  memcpy(self->text, now, sizeof now);
  ox_figures_words(words, sizeof words, now, c->variation_deg != 0);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words,
                                 -1);
  if (columns)
    gtk_widget_queue_resize(GTK_WIDGET(self));
  else
    gtk_widget_queue_draw(GTK_WIDGET(self));
}

/* ---- the object ------------------------------------------------------------------------- */

static void css_changed(GtkWidget *widget, GtkCssStyleChange *change) {
  GTK_WIDGET_CLASS(ox_figure_row_parent_class)->css_changed(widget, change);
  make_layouts(OX_FIGURE_ROW(widget));
  gtk_widget_queue_resize(widget);
}

static void dispose(GObject *object) {
  OxFigureRow *self = OX_FIGURE_ROW(object);
  g_clear_object(&self->figure);
  g_clear_object(&self->caption);
  g_clear_object(&self->document);
  g_clear_object(&self->player);
  G_OBJECT_CLASS(ox_figure_row_parent_class)->dispose(object);
}

static void ox_figure_row_class_init(OxFigureRowClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  widget_class->snapshot = snapshot;
  widget_class->get_request_mode = request_mode;
  widget_class->measure = measure;
  widget_class->css_changed = css_changed;
  gtk_widget_class_set_css_name(widget_class, "figurerow");
  gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void ox_figure_row_init(OxFigureRow *self) {
  self->most_lines = MOST_LINES;
  make_layouts(self);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Figures"),
                                 -1);
}

void ox_figure_row_set_model(OxFigureRow *self, OxDocument *document, OxPlayer *player) {
  g_return_if_fail(OX_IS_FIGURE_ROW(self) && !self->document);
  self->document = g_object_ref(document);
  self->player = g_object_ref(player);
  g_signal_connect_object(document, "changed", G_CALLBACK(show), self, G_CONNECT_SWAPPED);
  g_signal_connect_object(player, "moved", G_CALLBACK(show), self, G_CONNECT_SWAPPED);
  show(self);
}

void ox_figure_row_set_size(OxFigureRow *self, double px) {
  if (px == self->size_px) return;
  self->size_px = px;
  make_layouts(self);
  gtk_widget_queue_resize(GTK_WIDGET(self));
}

void ox_figure_row_set_most_lines(OxFigureRow *self, int lines) {
  self->most_lines = MAX(lines, 1);
  gtk_widget_queue_resize(GTK_WIDGET(self));
}

double ox_figure_row_size(OxFigureRow *self) { return size_of(self); }

const char *ox_figure_row_value(OxFigureRow *self, ox_figure figure) {
  return self->text[figure].shown ? self->text[figure].value : NULL;
}

guint ox_figure_row_draw_count(OxFigureRow *self) { return self->draws; }
