/* The working panel. Rows are kept and filled again, so that typing a figure costs no widgets. */
#include "ox_working_panel.h"

#include <string.h>

#include "app_id.h"
#include "ox_working_row.h"
#include "ox_warning_box.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

#define ADVICE_BYTES 512

struct _OxWorkingPanel {
  GtkWidget parent_instance;

  /* template children */
  GtkWidget *box;
  GtkToggleButton *formulas;
  GtkBox *overlay_box, *advice_box, *row_box;

  /* owned */
  OxDocument *document;
  OxOverlays *overlays;
  GPtrArray *rows;   /* OxWorkingRow, borrowed from row_box */
  GPtrArray *advice; /* the label of each advisory, borrowed from advice_box */

  size_t row_count, advice_count, overlay_count;
  guint fill_count;
  gboolean stale; /* to be filled when it is shown */
};

G_DEFINE_FINAL_TYPE(OxWorkingPanel, ox_working_panel, GTK_TYPE_WIDGET)

static GtkWidget *advice_new(GtkLabel **text) {
  return ox_warning_box_new("advice", 34, text);
}

static void show_advice(OxWorkingPanel *self, const ox_case *c, const ox_flight *flight) {
  for (size_t i = 0; i < flight->advice_count; i++) {
    char sentence[ADVICE_BYTES], marked[ADVICE_BYTES + 16];
    if (i == self->advice->len) {
      GtkLabel *text;
      gtk_box_append(self->advice_box, advice_new(&text));
      g_ptr_array_add(self->advice, text);
    }
    ox_words_advice(sentence, sizeof sentence, c, &flight->advice[i]);
    g_snprintf(marked, sizeof marked, _("Note: %s"), sentence);
    gtk_label_set_text(g_ptr_array_index(self->advice, i), marked);
  }
  self->advice_count = flight->advice_count;
  for (size_t i = 0; i < self->advice->len; i++) {
    GtkWidget *label = g_ptr_array_index(self->advice, i);
    gtk_widget_set_visible(gtk_widget_get_parent(label), i < self->advice_count);
  }
  gtk_widget_set_visible(GTK_WIDGET(self->advice_box), self->advice_count > 0);
}

/* Few and seldom: made anew each time. */
static void show_overlays(OxWorkingPanel *self) {
  const char *const *at = self->overlays ? ox_overlays_sentences(self->overlays) : NULL;
  for (GtkWidget *old; (old = gtk_widget_get_first_child(GTK_WIDGET(self->overlay_box)));)
    gtk_box_remove(self->overlay_box, old);
  self->overlay_count = 0;
  for (; at && *at; at++, self->overlay_count++) {
    GtkWidget *label = gtk_label_new(*at);
    gtk_label_set_xalign(GTK_LABEL(label), 0);
    gtk_label_set_wrap(GTK_LABEL(label), TRUE);
    gtk_label_set_wrap_mode(GTK_LABEL(label), PANGO_WRAP_WORD_CHAR);
    gtk_label_set_max_width_chars(GTK_LABEL(label), 34);
    gtk_widget_add_css_class(label, "overlay");
    gtk_box_append(self->overlay_box, label);
  }
  gtk_widget_set_visible(GTK_WIDGET(self->overlay_box), self->overlay_count > 0);
}

static void show_rows(OxWorkingPanel *self, const ox_case *c, const ox_flight *flight) {
  ox_working working = ox_working_make(c, flight);
  const char *group = NULL;
  gboolean open = gtk_toggle_button_get_active(self->formulas);
  for (size_t i = 0; i < working.count; i++) {
    const ox_working_row *row = &working.rows[i];
    if (i == self->rows->len) {
      GtkWidget *widget = ox_working_row_new();
      ox_working_row_open(OX_WORKING_ROW(widget), open);
      gtk_box_append(self->row_box, widget);
      g_ptr_array_add(self->rows, widget);
    }
    gboolean first = g_strcmp0(group, row->group) != 0;
    group = row->group;
    ox_working_row_show(g_ptr_array_index(self->rows, i), row, first ? group : NULL);
  }
  self->row_count = working.count;
  for (size_t i = 0; i < self->rows->len; i++)
    gtk_widget_set_visible(g_ptr_array_index(self->rows, i), i < self->row_count);
  ox_working_clear(&working);
}

static void fill(OxWorkingPanel *self) {
  const ox_case *c = ox_document_case(self->document);
  const ox_flight *flight = ox_document_flight(self->document);
  self->fill_count++;
  self->stale = FALSE;
  show_overlays(self);
  show_advice(self, c, flight);
  show_rows(self, c, flight);
}

/* Folded away in a window that is on the screen. */
static gboolean folded(OxWorkingPanel *self) {
  GtkRoot *root = gtk_widget_get_root(GTK_WIDGET(self));
  return root && gtk_widget_get_mapped(GTK_WIDGET(root)) &&
         !gtk_widget_get_mapped(GTK_WIDGET(self));
}

/* Folded, it is filled when it comes back. */
static void document_settled_cb(OxDocument *document, guint what, OxWorkingPanel *self) {
  if (folded(self))
    self->stale = TRUE;
  else
    fill(self);
}

/* What they say follows the case when the case has settled. */
static void overlays_changed_cb(OxWorkingPanel *self) {
  if (self->document && ox_document_in_step(self->document)) return;
  if (folded(self))
    self->stale = TRUE;
  else
    show_overlays(self);
}

static void map(GtkWidget *widget) {
  OxWorkingPanel *self = OX_WORKING_PANEL(widget);
  if (self->stale) fill(self);
  GTK_WIDGET_CLASS(ox_working_panel_parent_class)->map(widget);
}

static void formulas_toggled_cb(GtkToggleButton *button, OxWorkingPanel *self) {
  gboolean open = gtk_toggle_button_get_active(button);
  for (size_t i = 0; i < self->rows->len; i++)
    ox_working_row_open(g_ptr_array_index(self->rows, i), open);
}

static void dispose(GObject *object) {
  OxWorkingPanel *self = OX_WORKING_PANEL(object);
  g_clear_pointer(&self->box, gtk_widget_unparent);
  g_clear_pointer(&self->rows, g_ptr_array_unref);
  g_clear_pointer(&self->advice, g_ptr_array_unref);
  g_clear_object(&self->document);
  g_clear_object(&self->overlays);
  G_OBJECT_CLASS(ox_working_panel_parent_class)->dispose(object);
}

static void ox_working_panel_class_init(OxWorkingPanelClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  widget_class->map = map;
  gtk_widget_class_set_template_from_resource(widget_class, OX_RESOURCES "/ox_working_panel.ui");
  gtk_widget_class_bind_template_child(widget_class, OxWorkingPanel, box);
  gtk_widget_class_bind_template_child(widget_class, OxWorkingPanel, formulas);
  gtk_widget_class_bind_template_child(widget_class, OxWorkingPanel, advice_box);
  gtk_widget_class_bind_template_child(widget_class, OxWorkingPanel, overlay_box);
  gtk_widget_class_bind_template_child(widget_class, OxWorkingPanel, row_box);
  gtk_widget_class_bind_template_callback(widget_class, formulas_toggled_cb);
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(widget_class, "working");
}

static void ox_working_panel_init(OxWorkingPanel *self) {
  self->rows = g_ptr_array_new();
  self->advice = g_ptr_array_new();
  gtk_widget_init_template(GTK_WIDGET(self));
}

void ox_working_panel_set_document(OxWorkingPanel *self, OxDocument *document) {
  g_return_if_fail(OX_IS_WORKING_PANEL(self) && !self->document);
  self->document = g_object_ref(document);
  g_signal_connect_object(document, "settled", G_CALLBACK(document_settled_cb), self, 0);
  fill(self);
}

void ox_working_panel_set_overlays(OxWorkingPanel *self, OxOverlays *overlays) {
  g_return_if_fail(OX_IS_WORKING_PANEL(self) && !self->overlays && !self->document);
  self->overlays = g_object_ref(overlays);
  g_signal_connect_object(overlays, "changed", G_CALLBACK(overlays_changed_cb), self,
                          G_CONNECT_SWAPPED);
}

size_t ox_working_panel_overlay_count(OxWorkingPanel *self) { return self->overlay_count; }

size_t ox_working_panel_row_count(OxWorkingPanel *self) { return self->row_count; }

size_t ox_working_panel_advice_count(OxWorkingPanel *self) { return self->advice_count; }

guint ox_working_panel_fill_count(OxWorkingPanel *self) { return self->fill_count; }
