/* Rows of wind. Widgets of a row are made when it is first needed and then hidden, not destroyed:
 * the button that removes a row is inside it. */
#include "ox_wind_rows.h"

#include <string.h>

#include "app_id.h"
#include "ox_choice.h"
#include "ox_display.h"
#include "ox_warning_box.h"
#include "ox_wind_list.h"
#include "oxbow/text.h"

typedef struct {
  OxWindRows *rows;
  int index;
  GtkWidget *grid, *remove_button, *message_box;
  GtkLabel *message;
  GtkWidget *editors[OX_WIND_LIST_FIELDS];
  gulong north_handler;
} wind_row;

struct _OxWindRows {
  GtkWidget parent_instance;

  /* template children */
  GtkWidget *box, *list, *add_button;
  GtkLabel *heading;

  /* owned */
  OxDocument *document;

  ox_wind_rows_kind kind;
  wind_row rows[OX_WIND_ROWS_MAX];
  int made, shown;
};

enum { DONE, SIGNAL_COUNT };
static guint signals[SIGNAL_COUNT];

G_DEFINE_FINAL_TYPE(OxWindRows, ox_wind_rows, GTK_TYPE_WIDGET)

/* ---- edits ------------------------------------------------------------------------------ */

static void complain(wind_row *row) {
  const char *text = NULL;
  for (int i = 0; i < OX_WIND_LIST_FIELDS && !text; i++)
    if (OX_IS_NUMBER_FIELD(row->editors[i]))
      text = ox_number_field_get_message(OX_NUMBER_FIELD(row->editors[i]));
  gtk_label_set_text(row->message, text ? text : "");
  gtk_widget_set_visible(row->message_box, text != NULL);
}

static void message_cb(OxNumberField *field, GParamSpec *pspec, wind_row *row) { complain(row); }

static int field_of(const wind_row *row, gpointer editor) {
  for (int i = 0; i < OX_WIND_LIST_FIELDS; i++)
    if ((gpointer)row->editors[i] == editor) return i;
  return 0;
}

static void number_edited_cb(OxNumberField *field, double value, wind_row *row) {
  OxWindRows *self = row->rows;
  ox_case edited = *ox_document_case(self->document);
  ox_fault fault;
  ox_wind_list_set(&edited, self->kind, row->index, field_of(row, field), value);
  if (ox_document_edit_more(self->document, &edited, &fault) == OX_ERROR)
    ox_number_field_refuse(field, fault.allowed);
}

static void north_cb(GtkDropDown *choice, GParamSpec *pspec, wind_row *row) {
  guint selected = gtk_drop_down_get_selected(choice);
  if (selected == GTK_INVALID_LIST_POSITION) return;
  ox_case edited = *ox_document_case(row->rows->document);
  ox_wind_list_set(&edited, row->rows->kind, row->index, field_of(row, choice), selected);
  ox_document_edit(row->rows->document, &edited, NULL);
}

static void done_cb(wind_row *row) { g_signal_emit(row->rows, signals[DONE], 0); }

/* Adding and removing are whole steps with a name. */
static void take(OxWindRows *self, const ox_case *edited, const char *name) {
  ox_document_begin_step(self->document, name);
  ox_document_edit(self->document, edited, NULL);
  ox_document_end_step(self->document);
}

static gboolean by_altitude(OxWindRows *self) { return self->kind == OX_WIND_BY_ALTITUDE; }

static void add_cb(GtkButton *button, OxWindRows *self) {
  ox_case edited = *ox_document_case(self->document);
  if (!ox_wind_list_add(&edited, self->kind)) return;
  take(self, &edited, by_altitude(self) ? _("Add Wind at an Altitude") : _("Add Change of Wind"));
  if (self->shown > 0) gtk_widget_grab_focus(self->rows[self->shown - 1].editors[0]);
}

static void remove_cb(GtkButton *button, wind_row *row) {
  OxWindRows *self = row->rows;
  ox_case edited = *ox_document_case(self->document);
  ox_wind_list_remove(&edited, self->kind, row->index);
  take(self, &edited,
       by_altitude(self) ? _("Remove Wind at an Altitude") : _("Remove Change of Wind"));
  int next = MIN(row->index, self->shown - 1);
  gtk_widget_grab_focus(next >= 0 ? self->rows[next].remove_button : self->add_button);
}

/* ---- building --------------------------------------------------------------------------- */

static const char *field_name(const char *key) {
  if (strcmp(key, "altitude_ft") == 0) return _("Altitude");
  if (strcmp(key, "at_min") == 0) return _("Minutes after the fix");
  if (strcmp(key, "from_deg") == 0) return _("Wind from");
  return strcmp(key, "kt") == 0 ? _("Wind speed") : _("Direction is");
}

static ox_number_style style_of(const ox_field *field) {
  ox_number_style style = {.form = OX_FORM_PLAIN, .decimals = 1, .step = 1, .page = 10,
                           .min = field->min, .max = field->max, .allowed = field->allowed};
  if (strcmp(field->key, "altitude_ft") == 0) {
    style.form = OX_FORM_ALTITUDE;
    style.unit = "ft";
    style.units = "ft|feet";
    style.step = 500;
    style.page = 5000;
  } else if (strcmp(field->key, "at_min") == 0) {
    style.unit = "min";
    style.units = "min|minutes";
  } else if (strcmp(field->key, "from_deg") == 0) {
    style.form = OX_FORM_BEARING;
    style.unit = "°";
    style.units = "deg|degrees|degree";
    style.step = 10;
    style.page = 30;
  } else {
    style.unit = "kt";
    style.units = "kt|kts|knot|knots";
  }
  return style;
}

static GtkWidget *editor_new(wind_row *row, const ox_field *field, const char *name) {
  const char *const *words = ox_display_choices(field);
  if (words) {
    GtkWidget *choice = ox_choice_new(words);
    gtk_accessible_update_property(GTK_ACCESSIBLE(choice), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                   -1);
    row->north_handler = g_signal_connect(choice, "notify::selected", G_CALLBACK(north_cb), row);
    return choice;
  }
  ox_number_style style = style_of(field);
  GtkWidget *editor = ox_number_field_new(&style);
  ox_number_field_set_name(OX_NUMBER_FIELD(editor), name);
  g_signal_connect(editor, "edited", G_CALLBACK(number_edited_cb), row);
  g_signal_connect(editor, "notify::message", G_CALLBACK(message_cb), row);
  g_signal_connect_swapped(editor, "committed", G_CALLBACK(done_cb), row);
  return editor;
}

static void add_remove_button(wind_row *row, const char *which) {
  char *label = g_strdup_printf(_("Remove %s"), which);
  row->remove_button = gtk_button_new_from_icon_name("list-remove-symbolic");
  gtk_widget_add_css_class(row->remove_button, "flat");
  gtk_widget_set_tooltip_text(row->remove_button, label);
  gtk_accessible_update_property(GTK_ACCESSIBLE(row->remove_button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 label, -1);
  g_signal_connect(row->remove_button, "clicked", G_CALLBACK(remove_cb), row);
  gtk_grid_attach(GTK_GRID(row->grid), row->remove_button, 2, 0, 1, 1);
  g_free(label);
}

/* First line: when, and in which north; second line: direction and speed. */
static void make_row(OxWindRows *self, int index) {
  static const int column[OX_WIND_LIST_FIELDS] = {0, 0, 1, 1};
  static const int line[OX_WIND_LIST_FIELDS] = {0, 1, 1, 0};
  wind_row *row = &self->rows[index];
  char *which = g_strdup_printf(by_altitude(self) ? _("wind %d") : _("change of wind %d"),
                                index + 1);
  row->rows = self;
  row->index = index;
  row->grid = gtk_grid_new();
  gtk_grid_set_row_spacing(GTK_GRID(row->grid), 3);
  gtk_grid_set_column_spacing(GTK_GRID(row->grid), 6);
  gtk_accessible_update_property(GTK_ACCESSIBLE(row->grid), GTK_ACCESSIBLE_PROPERTY_LABEL, which,
                                 -1);
  row->message_box = ox_warning_box_new("complaint", 28, &row->message);
  const ox_field *fields = ox_wind_list_fields(self->kind);
  for (int i = 0; i < OX_WIND_LIST_FIELDS; i++) {
    char *name = g_strdup_printf("%s, %s", field_name(fields[i].key), which);
    row->editors[i] = editor_new(row, &fields[i], name);
    gtk_widget_set_tooltip_text(row->editors[i], field_name(fields[i].key));
    gtk_widget_set_hexpand(row->editors[i], TRUE);
    gtk_grid_attach(GTK_GRID(row->grid), row->editors[i], column[i], line[i], 1, 1);
    g_free(name);
  }
  add_remove_button(row, which);
  gtk_grid_attach(GTK_GRID(row->grid), row->message_box, 0, 2, 3, 1);
  gtk_widget_set_visible(row->message_box, FALSE);
  gtk_box_append(GTK_BOX(self->list), row->grid);
  g_free(which);
}

/* ---- showing ---------------------------------------------------------------------------- */

static void show_row(wind_row *row, gboolean fresh) {
  OxWindRows *self = row->rows;
  const ox_case *c = ox_document_case(self->document);
  for (int i = 0; i < OX_WIND_LIST_FIELDS; i++) {
    double value = ox_wind_list_get(c, self->kind, row->index, i);
    if (GTK_IS_DROP_DOWN(row->editors[i])) {
      g_signal_handler_block(row->editors[i], row->north_handler);
      gtk_drop_down_set_selected(GTK_DROP_DOWN(row->editors[i]), (guint)value);
      g_signal_handler_unblock(row->editors[i], row->north_handler);
    } else if (fresh) {
      ox_number_field_reset(OX_NUMBER_FIELD(row->editors[i]), value);
    } else {
      ox_number_field_set_value(OX_NUMBER_FIELD(row->editors[i]), value);
    }
  }
}

static void show(OxWindRows *self, gboolean fresh) {
  const ox_case *c = ox_document_case(self->document);
  int count = ox_wind_list_count(c, self->kind), before = self->shown;
  for (; self->made < count; self->made++) make_row(self, self->made);
  self->shown = count;
  for (int i = 0; i < self->made; i++) {
    gtk_widget_set_visible(self->rows[i].grid, i < count);
    /* After a removal every row stands for another wind. */
    if (i < count) show_row(&self->rows[i], fresh || count != before);
  }
  gtk_widget_set_visible(self->list, count > 0);
  gtk_widget_set_visible(GTK_WIDGET(self->heading), count > 0);
  ox_case tried = *c;
  gtk_widget_set_sensitive(self->add_button, ox_wind_list_add(&tried, self->kind));
}

static void document_changed_cb(OxDocument *document, guint what, OxWindRows *self) {
  show(self, (what & OX_DOCUMENT_SELECTION) != 0);
}

/* ---- the object ------------------------------------------------------------------------- */

static void dispose(GObject *object) {
  OxWindRows *self = OX_WIND_ROWS(object);
  /* Leaving fields commit; from now on there is nobody to commit to. */
  for (int i = 0; i < self->made; i++)
    for (int k = 0; k < OX_WIND_LIST_FIELDS; k++)
      g_signal_handlers_disconnect_by_data(self->rows[i].editors[k], &self->rows[i]);
  self->made = self->shown = 0;
  g_clear_pointer(&self->box, gtk_widget_unparent);
  g_clear_object(&self->document);
  G_OBJECT_CLASS(ox_wind_rows_parent_class)->dispose(object);
}

static void ox_wind_rows_class_init(OxWindRowsClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  signals[DONE] = g_signal_new("done", OX_TYPE_WIND_ROWS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource(widget_class, OX_RESOURCES "/ox_wind_rows.ui");
  gtk_widget_class_bind_template_child(widget_class, OxWindRows, box);
  gtk_widget_class_bind_template_child(widget_class, OxWindRows, list);
  gtk_widget_class_bind_template_child(widget_class, OxWindRows, add_button);
  gtk_widget_class_bind_template_child(widget_class, OxWindRows, heading);
  gtk_widget_class_bind_template_callback(widget_class, add_cb);
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void ox_wind_rows_init(OxWindRows *self) { gtk_widget_init_template(GTK_WIDGET(self)); }

GtkWidget *ox_wind_rows_new(OxDocument *document, ox_wind_rows_kind kind) {
  OxWindRows *self = g_object_new(OX_TYPE_WIND_ROWS, NULL);
  gboolean altitude = kind == OX_WIND_BY_ALTITUDE;
  self->document = g_object_ref(document);
  self->kind = kind;
  gtk_label_set_text(self->heading,
                     altitude ? _("By altitude") : _("From a minute after the fix on"));
  gtk_button_set_label(GTK_BUTTON(self->add_button),
                       altitude ? _("Add Wind at an Altitude") : _("Add Change of Wind"));
  gtk_widget_set_tooltip_text(self->add_button,
                              altitude ? _("Winds at several altitudes; between them it is "
                                           "interpolated")
                                       : _("The wind from a minute of the flight on"));
  g_signal_connect_object(document, "changed", G_CALLBACK(document_changed_cb), self, 0);
  show(self, TRUE);
  return GTK_WIDGET(self);
}

gboolean ox_wind_rows_commit(OxWindRows *self) {
  gboolean good = TRUE;
  for (int i = 0; i < self->shown; i++)
    for (int k = 0; k < OX_WIND_LIST_FIELDS; k++)
      if (OX_IS_NUMBER_FIELD(self->rows[i].editors[k]))
        good &= ox_number_field_commit(OX_NUMBER_FIELD(self->rows[i].editors[k]), TRUE);
  return good;
}

int ox_wind_rows_shown(OxWindRows *self) { return self->shown; }

GtkWidget *ox_wind_rows_editor(OxWindRows *self, int row, const char *key) {
  const ox_field *fields = ox_wind_list_fields(self->kind);
  for (int i = 0; i < OX_WIND_LIST_FIELDS && row < self->shown; i++)
    if (strcmp(fields[i].key, key) == 0) return self->rows[row].editors[i];
  return NULL;
}

GtkWidget *ox_wind_rows_add_button(OxWindRows *self) { return self->add_button; }

GtkWidget *ox_wind_rows_remove_button(OxWindRows *self, int row) {
  return row < self->shown ? self->rows[row].remove_button : NULL;
}

const char *ox_wind_rows_message(OxWindRows *self, int row) {
  if (row >= self->shown || !gtk_widget_get_visible(self->rows[row].message_box)) return NULL;
  return gtk_label_get_text(self->rows[row].message);
}
