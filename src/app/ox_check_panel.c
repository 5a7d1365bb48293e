/* The page of the cross-check. */
#include "ox_check_panel.h"

#include "app_id.h"
#include "ox_column_layout.h"
#include "ox_field_rows.h"
#include "oxbow/text.h"

struct _OxCheckPanel {
  GtkWidget parent_instance;

  /* template children */
  GtkWidget *scroller;
  GtkGrid *grid;
  GtkLabel *summary;
  GtkBox *list;

  /* owned */
  OxDocument *document;
  ox_field_rows *rows;

  GtkWidget *icons[OX_CHECK_ITEM_COUNT], *lines[OX_CHECK_ITEM_COUNT];
  GtkLabel *items[OX_CHECK_ITEM_COUNT];
  gboolean stale;
};

G_DEFINE_FINAL_TYPE(OxCheckPanel, ox_check_panel, GTK_TYPE_WIDGET)

static const ox_field_row_plan plans[] = {
    {"shown.fix", N_("_Fix"), N_("The name of the fix, as shown. Empty: not shown"), OX_FORM_PLAIN,
     NULL, NULL, 0, 0, 0},
    {"shown.direction", N_("_Direction"), N_("Where the hold lies from the fix, as drawn or shown"),
     OX_FORM_PLAIN, NULL, NULL, 0, 0, 0},
    {"shown.course_deg", N_("_Course"), N_("The course of the hold, as shown, magnetic"),
     OX_FORM_BEARING, "°", "deg|degrees|degree", 1, 1, 10},
    {"shown.course_is", N_("Co_urse is"),
     N_("Whether that is the course towards the fix or away from it"), OX_FORM_PLAIN, NULL, NULL, 0,
     0, 0},
    {"shown.turns", N_("_Turns"), N_("The side of the turns, as shown"), OX_FORM_PLAIN, NULL, NULL,
     0, 0, 0},
    {"shown.leg_s", N_("_Leg time"), N_("Seconds, or minutes as 1:30"), OX_FORM_SECONDS, "s",
     "s|sec|seconds", 1, 5, 30},
    {"shown.leg_nm", N_("Leg lengt_h"), N_("The length of the leg, as shown"), OX_FORM_PLAIN, "NM",
     "nm|nmi", 2, 0.5, 5},
    {"shown.efc", N_("_EFC"), N_("The time at which the hold is to end, as shown"), OX_FORM_CLOCK,
     "UTC", NULL, 0, 1, 10},
};

/* ---- showing ---------------------------------------------------------------------------- */

static void show_item(OxCheckPanel *self, ox_check_item item, const ox_check_row *row) {
  static const char *const icons[] = {[OX_CHECK_NOT_SHOWN] = "list-remove-symbolic",
                                      [OX_CHECK_SAME] = "object-select-symbolic",
                                      [OX_CHECK_DIFFERS] = "dialog-warning-symbolic"};
  char *text;
  if (row->result == OX_CHECK_NOT_SHOWN)
    text = g_strdup_printf(_("%s: not shown. Cleared %s."), ox_check_item_name(item), row->cleared);
  else
    text = g_strdup_printf(_("%s: %s. Cleared %s, shown %s.%s%s"), ox_check_item_name(item),
                           ox_check_result_name(row->result), row->cleared, row->shown,
                           *row->means ? "\n" : "", row->means);
  gtk_label_set_text(self->items[item], text);
  gtk_image_set_from_icon_name(GTK_IMAGE(self->icons[item]), icons[row->result]);
  if (row->result == OX_CHECK_DIFFERS)
    gtk_widget_add_css_class(self->lines[item], "advice");
  else
    gtk_widget_remove_css_class(self->lines[item], "advice");
  g_free(text);
}

static void fill(OxCheckPanel *self) {
  ox_crosscheck check;
  char summary[OX_CROSSCHECK_BYTES];
  const ox_case *c = ox_document_case(self->document);
  self->stale = FALSE;
  if (ox_crosscheck_make(c, &check) == OX_ERROR) return;
  ox_words_crosscheck(summary, sizeof summary, c, ox_document_flight(self->document), &check);
  gtk_label_set_text(self->summary, summary);
  for (int i = 0; i < OX_CHECK_ITEM_COUNT; i++)
    show_item(self, (ox_check_item)i, &check.rows[i]);
  gtk_widget_set_visible(GTK_WIDGET(self->list), check.shown > 0);
}

static void document_changed_cb(OxDocument *document, guint what, OxCheckPanel *self) {
  ox_field_rows_show(self->rows, (what & OX_DOCUMENT_SELECTION) != 0);
  if (gtk_widget_get_mapped(GTK_WIDGET(self)))
    fill(self);
  else
    self->stale = TRUE;
}

static void map(GtkWidget *widget) {
  GTK_WIDGET_CLASS(ox_check_panel_parent_class)->map(widget);
  if (OX_CHECK_PANEL(widget)->stale) fill(OX_CHECK_PANEL(widget));
}

/* ---- the object ------------------------------------------------------------------------- */

static void build_item(OxCheckPanel *self, int item) {
  GtkWidget *line = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6), *label = gtk_label_new(NULL);
  GtkWidget *icon = gtk_image_new_from_icon_name("list-remove-symbolic");
  gtk_widget_set_valign(icon, GTK_ALIGN_START);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_label_set_wrap_mode(GTK_LABEL(label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars(GTK_LABEL(label), 32);
  gtk_label_set_selectable(GTK_LABEL(label), TRUE);
  gtk_widget_set_hexpand(label, TRUE);
  gtk_box_append(GTK_BOX(line), icon);
  gtk_box_append(GTK_BOX(line), label);
  gtk_box_append(self->list, line);
  self->icons[item] = icon;
  self->items[item] = GTK_LABEL(label);
  self->lines[item] = line;
}

static void dispose(GObject *object) {
  OxCheckPanel *self = OX_CHECK_PANEL(object);
  g_clear_pointer(&self->rows, ox_field_rows_free);
  g_clear_pointer(&self->scroller, gtk_widget_unparent);
  g_clear_object(&self->document);
  G_OBJECT_CLASS(ox_check_panel_parent_class)->dispose(object);
}

static void ox_check_panel_class_init(OxCheckPanelClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  widget_class->map = map;
  gtk_widget_class_set_template_from_resource(widget_class, OX_RESOURCES "/ox_check_panel.ui");
  gtk_widget_class_bind_template_child(widget_class, OxCheckPanel, scroller);
  gtk_widget_class_bind_template_child(widget_class, OxCheckPanel, grid);
  gtk_widget_class_bind_template_child(widget_class, OxCheckPanel, summary);
  gtk_widget_class_bind_template_child(widget_class, OxCheckPanel, list);
  gtk_widget_class_set_layout_manager_type(widget_class, OX_TYPE_COLUMN_LAYOUT);
  gtk_widget_class_set_css_name(widget_class, "inputs");
}

static void ox_check_panel_init(OxCheckPanel *self) {
  gtk_widget_init_template(GTK_WIDGET(self));
  self->rows = ox_field_rows_new(self->grid, plans, G_N_ELEMENTS(plans));
  for (int i = 0; i < OX_CHECK_ITEM_COUNT; i++) build_item(self, i);
}

void ox_check_panel_set_document(OxCheckPanel *self, OxDocument *document) {
  g_return_if_fail(OX_IS_CHECK_PANEL(self) && !self->document);
  self->document = g_object_ref(document);
  ox_field_rows_set_document(self->rows, document);
  g_signal_connect_object(document, "settled", G_CALLBACK(document_changed_cb), self, 0);
  fill(self);
}

GtkWidget *ox_check_panel_editor(OxCheckPanel *self, const char *key) {
  return ox_field_rows_editor(self->rows, key);
}

const char *ox_check_panel_summary(OxCheckPanel *self) {
  return gtk_label_get_text(self->summary);
}

const char *ox_check_panel_item(OxCheckPanel *self, ox_check_item item) {
  return gtk_label_get_text(self->items[item]);
}
