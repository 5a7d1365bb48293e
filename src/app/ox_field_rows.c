/* Rows of a grid for fields of the case. */
#include "ox_field_rows.h"

#include <string.h>

#include "ox_case_row.h"
#include "ox_choice.h"
#include "ox_display.h"
#include "oxbow/text.h"

#define TO_SECOND_PX 158

typedef struct {
  ox_field_rows *rows;
  const ox_field_row_plan *plan;
  const ox_field *field; /* NULL: a time of day or a text */
  ox_case_row parts;
  GtkEventController *focus;
  gulong handler; /* on the editor; not for number fields, which do not emit on set */
} field_row;

struct ox_field_rows {
  OxDocument *document; /* borrowed */
  size_t count;
  field_row *row;
};

/* ---- what the table of fields lacks ----------------------------------------------------- */

/* The minute or second of the day at a key, or NULL. */
static int *clock_at(ox_case *c, const char *key) {
  if (strcmp(key, "hold.efc") == 0) return &c->hold.efc_min;
  if (strcmp(key, "arrival.fix_at") == 0) return &c->arrival.fix_at_s;
  if (strcmp(key, "lost_radio.eta") == 0) return &c->lost_radio.eta_min;
  if (strcmp(key, "shown.efc") == 0) return &c->shown.efc_min;
  return NULL;
}

static char *text_at(ox_case *c, const char *key) {
  return strcmp(key, "shown.fix") == 0 ? c->shown.fix : NULL;
}

static double value_of(field_row *row) {
  ox_case c = *ox_document_case(row->rows->document);
  const int *clock = clock_at(&c, row->plan->key);
  if (row->field) return ox_field_get(row->field, &c);
  return clock ? *clock : 0;
}

static void set_value(field_row *row, ox_case *c, double value) {
  int *clock = clock_at(c, row->plan->key);
  if (row->field)
    ox_field_set(row->field, c, value);
  else if (clock)
    *clock = (int)value;
}

/* ---- edits ------------------------------------------------------------------------------ */

static void field_message_cb(OxNumberField *field, GParamSpec *pspec, field_row *row) {
  ox_case_row_complain(&row->parts, ox_number_field_get_message(field));
}

static void number_edited_cb(OxNumberField *field, double value, field_row *row) {
  ox_case edited = *ox_document_case(row->rows->document);
  ox_fault fault;
  set_value(row, &edited, value);
  if (ox_document_edit_more(row->rows->document, &edited, &fault) == OX_ERROR)
    ox_number_field_refuse(field, fault.allowed);
}

static void choice_edited_cb(GtkDropDown *choice, GParamSpec *pspec, field_row *row) {
  guint selected = gtk_drop_down_get_selected(choice);
  if (selected == GTK_INVALID_LIST_POSITION) return;
  ox_case edited = *ox_document_case(row->rows->document);
  set_value(row, &edited, selected);
  ox_document_edit(row->rows->document, &edited, NULL);
}

static const char *wrong_with_text(const char *text) {
  if (strlen(text) >= OX_FIX_NAME_BYTES) return _("A name has at most 63 bytes.");
  for (const char *at = text; *at; at = g_utf8_next_char(at))
    if (g_unichar_iscntrl(g_utf8_get_char(at))) return _("A name is one line.");
  return NULL;
}

static void text_edited_cb(GtkEditable *entry, field_row *row) {
  ox_case edited = *ox_document_case(row->rows->document);
  const char *text = gtk_editable_get_text(entry), *wrong = wrong_with_text(text);
  ox_case_row_complain(&row->parts, wrong);
  if (wrong) return;
  g_strlcpy(text_at(&edited, row->plan->key), text, OX_FIX_NAME_BYTES);
  ox_document_edit_more(row->rows->document, &edited, NULL);
}

static void left_cb(field_row *row) {
  if (row->rows->document) ox_document_seal_step(row->rows->document);
}

/* ---- showing ---------------------------------------------------------------------------- */

static void show_text(field_row *row) {
  ox_case c = *ox_document_case(row->rows->document);
  const char *text = text_at(&c, row->plan->key);
  if (strcmp(text, gtk_editable_get_text(GTK_EDITABLE(row->parts.editor))) == 0) return;
  g_signal_handler_block(row->parts.editor, row->handler);
  gtk_editable_set_text(GTK_EDITABLE(row->parts.editor), text);
  g_signal_handler_unblock(row->parts.editor, row->handler);
  ox_case_row_complain(&row->parts, NULL);
}

static void show_row(field_row *row, gboolean fresh) {
  double value = value_of(row);
  if (GTK_IS_ENTRY(row->parts.editor)) {
    show_text(row);
  } else if (GTK_IS_DROP_DOWN(row->parts.editor)) {
    g_signal_handler_block(row->parts.editor, row->handler);
    gtk_drop_down_set_selected(GTK_DROP_DOWN(row->parts.editor), (guint)value);
    g_signal_handler_unblock(row->parts.editor, row->handler);
  } else if (fresh) {
    ox_number_field_reset(OX_NUMBER_FIELD(row->parts.editor), value);
  } else {
    ox_number_field_set_value(OX_NUMBER_FIELD(row->parts.editor), value);
  }
}

void ox_field_rows_show(ox_field_rows *rows, gboolean fresh) {
  for (size_t i = 0; i < rows->count; i++) show_row(&rows->row[i], fresh);
}

/* ---- building --------------------------------------------------------------------------- */

static GtkWidget *number_editor(field_row *row) {
  const ox_field_row_plan *plan = row->plan;
  ox_number_style style = {.form = plan->form,
                           .unit = plan->unit,
                           .units = plan->units,
                           .decimals = plan->decimals,
                           .step = plan->step,
                           .page = plan->page};
  ox_case_row_bound(&style, row->field);
  GtkWidget *editor = ox_number_field_new(&style);
  /* hours, minutes and seconds with their unit */
  if (plan->form == OX_FORM_CLOCK_S) gtk_widget_set_size_request(editor, TO_SECOND_PX, -1);
  if (style.can_be_absent)
    ox_number_field_set_suggestion(OX_NUMBER_FIELD(editor), CLAMP(0, style.min, style.max),
                                   _("none"));
  g_signal_connect(editor, "edited", G_CALLBACK(number_edited_cb), row);
  g_signal_connect(editor, "notify::message", G_CALLBACK(field_message_cb), row);
  return editor;
}

static GtkWidget *text_editor(field_row *row) {
  GtkWidget *editor = gtk_entry_new();
  gtk_editable_set_width_chars(GTK_EDITABLE(editor), 8);
  gtk_editable_set_max_width_chars(GTK_EDITABLE(editor), 12);
  g_object_set(editor, "truncate-multiline", TRUE, NULL);
  row->handler = g_signal_connect(editor, "changed", G_CALLBACK(text_edited_cb), row);
  return editor;
}

static GtkWidget *editor_for(field_row *row) {
  ox_case c = ox_case_default();
  const char *const *words = row->field ? ox_display_choices(row->field) : NULL;
  if (text_at(&c, row->plan->key)) return text_editor(row);
  if (!words) return number_editor(row);
  GtkWidget *editor = ox_choice_new(words);
  row->handler = g_signal_connect(editor, "notify::selected", G_CALLBACK(choice_edited_cb), row);
  return editor;
}

static void build_row(field_row *row, GtkGrid *grid, int line) {
  const ox_field_row_plan *plan = row->plan;
  ox_case_row_attach(&row->parts, editor_for(row), _(plan->label), _(plan->tip), grid, line);
  row->focus = gtk_event_controller_focus_new();
  g_signal_connect_swapped(row->focus, "leave", G_CALLBACK(left_cb), row);
  gtk_widget_add_controller(row->parts.editor, row->focus);
}

ox_field_rows *ox_field_rows_new(GtkGrid *grid, const ox_field_row_plan *plans, size_t count) {
  ox_field_rows *rows = g_new0(ox_field_rows, 1);
  rows->count = count;
  rows->row = g_new0(field_row, count);
  for (size_t i = 0; i < count; i++) {
    rows->row[i] = (field_row){.rows = rows, .plan = &plans[i],
                               .field = ox_field_by_key(plans[i].key)};
    build_row(&rows->row[i], grid, 2 * (int)i);
  }
  return rows;
}

void ox_field_rows_set_document(ox_field_rows *rows, OxDocument *document) {
  rows->document = document;
  ox_field_rows_show(rows, TRUE);
}

static void disconnect(field_row *row) {
  g_signal_handlers_disconnect_by_data(row->parts.editor, row);
  g_signal_handlers_disconnect_by_data(row->focus, row);
}

void ox_field_rows_free(ox_field_rows *rows) {
  for (size_t i = 0; i < rows->count; i++)
    disconnect(&rows->row[i]);
  g_free(rows->row);
  g_free(rows);
}

GtkWidget *ox_field_rows_editor(ox_field_rows *rows, const char *key) {
  for (size_t i = 0; i < rows->count; i++)
    if (strcmp(rows->row[i].plan->key, key) == 0) return rows->row[i].parts.editor;
  return NULL;
}
