/* The inputs panel: one row for each entry of the table in ox_input.c. A row knows its input; the
 * document knows the values; nothing is stored here. */
#include "ox_inputs_panel.h"

#include <string.h>

#include "app_id.h"
#include "ox_case_row.h"
#include "ox_choice.h"
#include "ox_display.h"
#include "ox_input.h"
#include "ox_number_field.h"
#include "ox_preset_choice.h"
#include "ox_wind_rows.h"
#include "oxbow/text.h"

typedef struct {
  OxInputsPanel *panel;
  const ox_input *input;
  ox_case_row parts;
  gulong handler; /* on the editor; not for number fields, which do not emit on set */
} input_row;

struct _OxInputsPanel {
  GtkWidget parent_instance;

  /* template children */
  GtkWidget *scroller;
  GtkGrid *case_grid, *hold_grid, *arrival_grid, *aircraft_grid, *wind_grid, *variation_grid,
      *technique_grid;
  GtkBox *wind_lists;
  GtkSizeGroup *editors;

  OxWindRows *wind[2]; /* by kind */

  /* owned */
  OxDocument *document;
  input_row *rows;
  size_t row_count;
};

enum { DONE, SIGNAL_COUNT };
static guint signals[SIGNAL_COUNT];

G_DEFINE_FINAL_TYPE(OxInputsPanel, ox_inputs_panel, GTK_TYPE_WIDGET)

/* ---- messages --------------------------------------------------------------------------- */

static void field_message_cb(OxNumberField *field, GParamSpec *pspec, input_row *row) {
  ox_case_row_complain(&row->parts, ox_number_field_get_message(field));
}

static void text_complain(input_row *row, const char *message) {
  GtkAccessibleInvalidState state =
      message ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE;
  if (message)
    gtk_widget_add_css_class(row->parts.editor, "error");
  else
    gtk_widget_remove_css_class(row->parts.editor, "error");
  gtk_accessible_update_state(GTK_ACCESSIBLE(row->parts.editor), GTK_ACCESSIBLE_STATE_INVALID,
                              state, -1);
  ox_case_row_complain(&row->parts, message);
}

static void show_choice(input_row *row, double value) {
  g_signal_handler_block(row->parts.editor, row->handler);
  gtk_drop_down_set_selected(GTK_DROP_DOWN(row->parts.editor), (guint)value);
  g_signal_handler_unblock(row->parts.editor, row->handler);
}

/* ---- edits ------------------------------------------------------------------------------ */

static void number_edited_cb(OxNumberField *field, double value, input_row *row) {
  ox_case edited = *ox_document_case(row->panel->document);
  ox_fault fault;
  ox_input_apply(row->input, &edited, value);
  if (ox_document_edit_more(row->panel->document, &edited, &fault) == OX_ERROR)
    ox_number_field_refuse(field, fault.allowed);
}

static void choice_edited_cb(GtkDropDown *choice, GParamSpec *pspec, input_row *row) {
  guint selected = gtk_drop_down_get_selected(choice);
  if (selected == GTK_INVALID_LIST_POSITION) return;
  ox_case edited = *ox_document_case(row->panel->document);
  ox_fault fault;
  ox_input_apply(row->input, &edited, selected);
  if (ox_document_edit(row->panel->document, &edited, &fault) == OX_OK) {
    ox_case_row_complain(&row->parts, NULL);
    /* "Own technique" is where the other inputs lead, nothing to be chosen: back to what it is. */
    show_choice(row, ox_input_get(row->input, ox_document_case(row->panel->document)));
    return;
  }
  /* Choices are sound by themselves; a fault lies in what goes with them. */
  char *message = g_strdup_printf(_("%s is not %s."), _(fault.value), _(fault.allowed));
  ox_case_row_complain(&row->parts, message);
  g_free(message);
  show_choice(row, ox_input_get(row->input, ox_document_case(row->panel->document)));
}

static void check_edited_cb(GtkCheckButton *check, input_row *row) {
  ox_case edited = *ox_document_case(row->panel->document);
  ox_input_apply(row->input, &edited, gtk_check_button_get_active(check) ? 1 : 0);
  ox_document_edit(row->panel->document, &edited, NULL);
}

/* As in a lesson file: no line ends, no control characters. */
static gboolean is_one_line(const char *text) {
  for (const char *at = text; *at; at = g_utf8_next_char(at))
    if (g_unichar_iscntrl(g_utf8_get_char(at))) return FALSE;
  return TRUE;
}

static void text_edited_cb(GtkEditable *entry, input_row *row) {
  ox_case edited = *ox_document_case(row->panel->document);
  const char *text = gtk_editable_get_text(entry);
  size_t bytes;
  char *place = ox_input_text(row->input, &edited, &bytes);
  if (strlen(text) >= bytes) {
    char *message = g_strdup_printf(_("A name has at most %zu bytes."), bytes - 1);
    text_complain(row, message);
    g_free(message);
    return;
  }
  if (*text == '\0' || !is_one_line(text)) {
    text_complain(row, *text ? _("A name is one line.") : _("A name is needed here."));
    return;
  }
  text_complain(row, NULL);
  g_strlcpy(place, text, bytes);
  ox_document_edit_more(row->panel->document, &edited, NULL);
}

static void done_cb(input_row *row) { g_signal_emit(row->panel, signals[DONE], 0); }

static void wind_done_cb(OxInputsPanel *self) { g_signal_emit(self, signals[DONE], 0); }

/* ---- showing ---------------------------------------------------------------------------- */

static void show_text(input_row *row, gboolean fresh) {
  ox_case c = *ox_document_case(row->panel->document);
  size_t bytes;
  const char *text = ox_input_text(row->input, &c, &bytes);
  /* While a refused text is being typed, other edits leave it alone. */
  if (!fresh && gtk_widget_has_css_class(row->parts.editor, "error")) return;
  if (strcmp(text, gtk_editable_get_text(GTK_EDITABLE(row->parts.editor))) != 0) {
    g_signal_handler_block(row->parts.editor, row->handler);
    gtk_editable_set_text(GTK_EDITABLE(row->parts.editor), text);
    g_signal_handler_unblock(row->parts.editor, row->handler);
  }
  text_complain(row, NULL);
}

static void show_check(input_row *row, gboolean value) {
  g_signal_handler_block(row->parts.editor, row->handler);
  gtk_check_button_set_active(GTK_CHECK_BUTTON(row->parts.editor), value);
  g_signal_handler_unblock(row->parts.editor, row->handler);
}

static void show_number(input_row *row, double value, gboolean fresh) {
  OxNumberField *field = OX_NUMBER_FIELD(row->parts.editor);
  const ox_case *c = ox_document_case(row->panel->document);
  double in_effect;
  if (fresh)
    ox_number_field_reset(field, value);
  else
    ox_number_field_set_value(field, value);
  if (ox_input_in_effect(row->input, c, &ox_document_flight(row->panel->document)->setup,
                         &in_effect)) {
    char text[OX_NUMBER_TEXT_BYTES];
    ox_number_format(text, row->input->form, 0, in_effect);
    ox_number_field_set_suggestion(field, in_effect, text);
    return;
  }
  const char *absent = ox_input_absent(row->input, c, &in_effect);
  if (absent) ox_number_field_set_suggestion(field, in_effect, absent);
}

static void show_row(input_row *row, gboolean fresh) {
  const ox_case *c = ox_document_case(row->panel->document);
  gboolean shown = ox_input_shown(row->input, c);
  gtk_widget_set_visible(row->parts.label, shown);
  gtk_widget_set_visible(row->parts.editor, shown);
  gtk_widget_set_sensitive(row->parts.editor, ox_input_sensitive(row->input, c));
  if (!shown) ox_case_row_complain(&row->parts, NULL);
  if (row->input->source == OX_SOURCE_TEXT)
    show_text(row, fresh);
  else if (GTK_IS_DROP_DOWN(row->parts.editor))
    show_choice(row, ox_input_get(row->input, c));
  else if (GTK_IS_CHECK_BUTTON(row->parts.editor))
    show_check(row, ox_input_get(row->input, c) != 0);
  else
    show_number(row, ox_input_get(row->input, c), fresh);
}

static void document_changed_cb(OxDocument *document, guint what, OxInputsPanel *self) {
  for (size_t i = 0; i < self->row_count; i++)
    show_row(&self->rows[i], (what & OX_DOCUMENT_SELECTION) != 0);
}

/* ---- building --------------------------------------------------------------------------- */

static GtkWidget *number_editor(input_row *row) {
  const ox_input *input = row->input;
  ox_number_style style = {.form = input->form,
                           .unit = input->unit,
                           .units = input->units,
                           .decimals = input->decimals,
                           .step = input->step,
                           .page = input->page};
  ox_case_row_bound(&style, ox_input_field(input));
  GtkWidget *editor = ox_number_field_new(&style);
  g_signal_connect(editor, "edited", G_CALLBACK(number_edited_cb), row);
  g_signal_connect(editor, "notify::message", G_CALLBACK(field_message_cb), row);
  g_signal_connect_swapped(editor, "committed", G_CALLBACK(done_cb), row);
  return editor;
}

static GtkWidget *choice_editor(input_row *row, const char *const *words) {
  GtkWidget *editor = ox_choice_new(words);
  row->handler = g_signal_connect(editor, "notify::selected", G_CALLBACK(choice_edited_cb), row);
  return editor;
}

static GtkWidget *preset_editor(input_row *row) {
  GtkWidget *editor = ox_preset_choice_new();
  row->handler = g_signal_connect(editor, "notify::selected", G_CALLBACK(choice_edited_cb), row);
  return editor;
}

static GtkWidget *check_editor(input_row *row) {
  GtkWidget *editor = gtk_check_button_new();
  gtk_widget_set_halign(editor, GTK_ALIGN_START);
  row->handler = g_signal_connect(editor, "toggled", G_CALLBACK(check_edited_cb), row);
  return editor;
}

static GtkWidget *text_editor(input_row *row) {
  GtkWidget *editor = gtk_entry_new();
  gtk_editable_set_width_chars(GTK_EDITABLE(editor), 8);
  gtk_editable_set_max_width_chars(GTK_EDITABLE(editor), 12);
  g_object_set(editor, "enable-undo", FALSE, NULL); /* the lesson's undo is the one there is */
  g_object_set(editor, "truncate-multiline", TRUE, NULL);
  row->handler = g_signal_connect(editor, "changed", G_CALLBACK(text_edited_cb), row);
  g_signal_connect_swapped(editor, "activate", G_CALLBACK(done_cb), row);
  return editor;
}

static GtkWidget *editor_for(input_row *row) {
  const ox_field *field = ox_input_field(row->input);
  const char *const *words = field ? ox_display_choices(field) : NULL;
  if (row->input->source == OX_SOURCE_TEXT) return text_editor(row);
  if (row->input->source == OX_SOURCE_PRESET) return preset_editor(row);
  if (row->input->source == OX_SOURCE_STATION) return check_editor(row);
  return words ? choice_editor(row, words) : number_editor(row);
}

static void build_row(input_row *row, GtkGrid *grid, int line, GtkSizeGroup *editors) {
  const ox_input *input = row->input;
  ox_case_row_attach(&row->parts, editor_for(row), _(input->label), _(input->tip), grid, line);
  /* names of cases and presets are long: all the room there is */
  if (input->group == OX_GROUP_CASE || input->source == OX_SOURCE_PRESET) {
    gtk_widget_set_hexpand(row->parts.label, FALSE);
    gtk_widget_set_hexpand(row->parts.editor, TRUE);
  } else {
    gtk_size_group_add_widget(editors, row->parts.editor);
  }
}

static void build_rows(OxInputsPanel *self) {
  GtkGrid *grids[OX_GROUP_COUNT] = {
      [OX_GROUP_CASE] = self->case_grid,         [OX_GROUP_HOLD] = self->hold_grid,
      [OX_GROUP_ARRIVAL] = self->arrival_grid,   [OX_GROUP_AIRCRAFT] = self->aircraft_grid,
      [OX_GROUP_WIND] = self->wind_grid,         [OX_GROUP_VARIATION] = self->variation_grid,
      [OX_GROUP_TECHNIQUE] = self->technique_grid,
  };
  const ox_input *inputs = ox_inputs(&self->row_count);
  self->rows = g_new0(input_row, self->row_count);
  for (size_t i = 0; i < self->row_count; i++) {
    self->rows[i].panel = self;
    self->rows[i].input = &inputs[i];
    build_row(&self->rows[i], grids[inputs[i].group], (int)i * 2, self->editors);
  }
}

/* ---- the object ------------------------------------------------------------------------- */

static void dispose(GObject *object) {
  OxInputsPanel *self = OX_INPUTS_PANEL(object);
  /* Leaving fields commit; from now on there is nobody to commit to. */
  for (size_t i = 0; i < self->row_count; i++)
    g_signal_handlers_disconnect_by_data(self->rows[i].parts.editor, &self->rows[i]);
  self->row_count = 0;
  g_clear_pointer(&self->scroller, gtk_widget_unparent);
  g_clear_object(&self->document);
  G_OBJECT_CLASS(ox_inputs_panel_parent_class)->dispose(object);
}

static void finalize(GObject *object) {
  g_free(OX_INPUTS_PANEL(object)->rows);
  G_OBJECT_CLASS(ox_inputs_panel_parent_class)->finalize(object);
}

static void ox_inputs_panel_class_init(OxInputsPanelClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  G_OBJECT_CLASS(class)->finalize = finalize;
  signals[DONE] = g_signal_new("done", OX_TYPE_INPUTS_PANEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                               NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource(widget_class, OX_RESOURCES "/ox_inputs_panel.ui");
  gtk_widget_class_bind_template_child(widget_class, OxInputsPanel, scroller);
  gtk_widget_class_bind_template_child(widget_class, OxInputsPanel, case_grid);
  gtk_widget_class_bind_template_child(widget_class, OxInputsPanel, hold_grid);
  gtk_widget_class_bind_template_child(widget_class, OxInputsPanel, arrival_grid);
  gtk_widget_class_bind_template_child(widget_class, OxInputsPanel, aircraft_grid);
  gtk_widget_class_bind_template_child(widget_class, OxInputsPanel, wind_grid);
  gtk_widget_class_bind_template_child(widget_class, OxInputsPanel, variation_grid);
  gtk_widget_class_bind_template_child(widget_class, OxInputsPanel, technique_grid);
  gtk_widget_class_bind_template_child(widget_class, OxInputsPanel, wind_lists);
  gtk_widget_class_bind_template_child(widget_class, OxInputsPanel, editors);
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(widget_class, "inputs");
}

static void ox_inputs_panel_init(OxInputsPanel *self) {
  gtk_widget_init_template(GTK_WIDGET(self));
  build_rows(self);
}

void ox_inputs_panel_set_document(OxInputsPanel *self, OxDocument *document) {
  g_return_if_fail(OX_IS_INPUTS_PANEL(self) && !self->document);
  self->document = g_object_ref(document);
  g_signal_connect_object(document, "changed", G_CALLBACK(document_changed_cb), self, 0);
  document_changed_cb(document, OX_DOCUMENT_SELECTION, self);
  for (int kind = OX_WIND_BY_ALTITUDE; kind <= OX_WIND_BY_MINUTE; kind++) {
    self->wind[kind] = OX_WIND_ROWS(ox_wind_rows_new(document, (ox_wind_rows_kind)kind));
    g_signal_connect_swapped(self->wind[kind], "done", G_CALLBACK(wind_done_cb), self);
    gtk_box_append(self->wind_lists, GTK_WIDGET(self->wind[kind]));
  }
}

gboolean ox_inputs_panel_commit(OxInputsPanel *self) {
  gboolean good = ox_wind_rows_commit(self->wind[OX_WIND_BY_ALTITUDE]);
  good &= ox_wind_rows_commit(self->wind[OX_WIND_BY_MINUTE]);
  for (size_t i = 0; i < self->row_count; i++) {
    input_row *row = &self->rows[i];
    if (OX_IS_NUMBER_FIELD(row->parts.editor))
      good &= ox_number_field_commit(OX_NUMBER_FIELD(row->parts.editor), TRUE);
    else if (row->input->source == OX_SOURCE_TEXT &&
             gtk_widget_has_css_class(row->parts.editor, "error")) {
      show_text(row, TRUE);
      good = FALSE;
    }
  }
  return good;
}

static input_row *row_by_key(OxInputsPanel *self, const char *key) {
  for (size_t i = 0; i < self->row_count; i++)
    if (strcmp(self->rows[i].input->key, key) == 0) return &self->rows[i];
  return NULL;
}

GtkWidget *ox_inputs_panel_editor(OxInputsPanel *self, const char *key) {
  input_row *row = row_by_key(self, key);
  return row ? row->parts.editor : NULL;
}

const char *ox_inputs_panel_message(OxInputsPanel *self, const char *key) {
  input_row *row = row_by_key(self, key);
  if (!row || !gtk_widget_get_visible(row->parts.message_box)) return NULL;
  return gtk_label_get_text(row->parts.message);
}

OxWindRows *ox_inputs_panel_wind(OxInputsPanel *self, ox_wind_rows_kind kind) {
  return self->wind[kind];
}
