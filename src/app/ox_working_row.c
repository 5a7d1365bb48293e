/* One row of the working. */
#include "ox_working_row.h"

#include "app_id.h"

/* Longer values go below the name. */
#define BESIDE_CHARS 14

struct _OxWorkingRow {
  GtkWidget parent_instance;

  /* template children */
  GtkWidget *box;
  GtkLabel *heading;
  GtkExpander *expander;
  GtkWidget *title;
  GtkLabel *name, *value, *why, *source;
};

G_DEFINE_FINAL_TYPE(OxWorkingRow, ox_working_row, GTK_TYPE_WIDGET)

static void dispose(GObject *object) {
  OxWorkingRow *self = OX_WORKING_ROW(object);
  g_clear_pointer(&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS(ox_working_row_parent_class)->dispose(object);
}

static void ox_working_row_class_init(OxWorkingRowClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  gtk_widget_class_set_template_from_resource(widget_class, OX_RESOURCES "/ox_working_row.ui");
  gtk_widget_class_bind_template_child(widget_class, OxWorkingRow, box);
  gtk_widget_class_bind_template_child(widget_class, OxWorkingRow, heading);
  gtk_widget_class_bind_template_child(widget_class, OxWorkingRow, expander);
  gtk_widget_class_bind_template_child(widget_class, OxWorkingRow, title);
  gtk_widget_class_bind_template_child(widget_class, OxWorkingRow, name);
  gtk_widget_class_bind_template_child(widget_class, OxWorkingRow, value);
  gtk_widget_class_bind_template_child(widget_class, OxWorkingRow, why);
  gtk_widget_class_bind_template_child(widget_class, OxWorkingRow, source);
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(widget_class, "workingrow");
}

static void ox_working_row_init(OxWorkingRow *self) {
  gtk_widget_init_template(GTK_WIDGET(self));
  /* The arrow stands before the title; with titles of two lines it belongs to the first. */
  GtkWidget *arrow = gtk_widget_get_first_child(gtk_widget_get_parent(self->title));
  gtk_widget_set_valign(arrow, GTK_ALIGN_START);
}

GtkWidget *ox_working_row_new(void) { return g_object_new(OX_TYPE_WORKING_ROW, NULL); }

/* A short value stands whole beside its name, a long one below it. */
static void place_value(OxWorkingRow *self, const char *value) {
  gboolean below = g_utf8_strlen(value, -1) > BESIDE_CHARS;
  gtk_orientable_set_orientation(GTK_ORIENTABLE(self->title), below ? GTK_ORIENTATION_VERTICAL
                                                                    : GTK_ORIENTATION_HORIZONTAL);
  gtk_label_set_wrap(self->value, below);
  gtk_label_set_xalign(self->value, below ? 0 : 1);
  gtk_label_set_justify(self->value, below ? GTK_JUSTIFY_LEFT : GTK_JUSTIFY_RIGHT);
  gtk_label_set_max_width_chars(self->value, below ? 34 : BESIDE_CHARS);
  gtk_box_set_spacing(GTK_BOX(self->title), below ? 0 : 12);
}

/* A label that says the same already is left alone; so must be what goes with it. */
static gboolean says(GtkLabel *label, const char *text) {
  return g_strcmp0(gtk_label_get_text(label), text) == 0;
}

void ox_working_row_show(OxWorkingRow *self, const ox_working_row *row, const char *heading) {
  gboolean same = says(self->name, row->label) && says(self->value, row->value);
  gtk_label_set_text(self->heading, heading ? heading : "");
  gtk_widget_set_visible(GTK_WIDGET(self->heading), heading != NULL);
  gtk_label_set_text(self->name, row->label);
  gtk_label_set_text(self->value, row->value);
  if (!same) place_value(self, row->value);
  gtk_label_set_text(self->why, row->why);
  gtk_widget_set_visible(GTK_WIDGET(self->why), row->why[0] != '\0');
  gtk_label_set_text(self->source, row->source);
  if (same) return;
  char *sentence = g_strdup_printf("%s: %s", row->label, row->value);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->expander), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 sentence, -1);
  g_free(sentence);
}

void ox_working_row_open(OxWorkingRow *self, gboolean open) {
  gtk_expander_set_expanded(self->expander, open);
}
