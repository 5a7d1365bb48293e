/* A row of inputs for the case. */
#include "ox_case_row.h"

#include "ox_warning_box.h"
#include "oxbow/text.h"

static void name_editor(ox_case_row *row) {
  const char *name = gtk_label_get_text(GTK_LABEL(row->label));
  GtkAccessible *editor = GTK_ACCESSIBLE(row->editor);
  if (OX_IS_NUMBER_FIELD(row->editor))
    ox_number_field_set_name(OX_NUMBER_FIELD(row->editor), name);
  else
    gtk_accessible_update_property(editor, GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_accessible_update_relation(editor, GTK_ACCESSIBLE_RELATION_LABELLED_BY, row->label, NULL,
                                 GTK_ACCESSIBLE_RELATION_DESCRIBED_BY, row->message, NULL, -1);
}

void ox_case_row_attach(ox_case_row *row, GtkWidget *editor, const char *label, const char *tip,
                        GtkGrid *grid, int line) {
  row->editor = editor;
  row->label = gtk_label_new_with_mnemonic(label);
  gtk_label_set_xalign(GTK_LABEL(row->label), 0);
  gtk_widget_set_hexpand(row->label, TRUE);
  gtk_label_set_mnemonic_widget(GTK_LABEL(row->label), editor);
  row->message_box = ox_warning_box_new("complaint", 28, &row->message);
  gtk_widget_set_visible(row->message_box, FALSE);
  gtk_widget_set_tooltip_text(editor, tip);
  name_editor(row);
  gtk_grid_attach(grid, row->label, 0, line, 1, 1);
  gtk_grid_attach(grid, editor, 1, line, 1, 1);
  gtk_grid_attach(grid, row->message_box, 0, line + 1, 2, 1);
}

void ox_case_row_complain(ox_case_row *row, const char *message) {
  gtk_label_set_text(row->message, message ? message : "");
  gtk_widget_set_visible(row->message_box, message && gtk_widget_get_visible(row->editor));
}

void ox_case_row_bound(ox_number_style *style, const ox_field *field) {
  if (field) {
    style->min = field->min;
    style->max = field->max;
    style->can_be_absent = field->zero_is_absent;
    style->allowed = field->allowed;
    return;
  }
  gboolean to_second = style->form == OX_FORM_CLOCK_S;
  style->min = 0;
  style->max = to_second ? 24 * 3600 - 1 : 24 * 60 - 1;
  style->can_be_absent = TRUE;
  style->absent = -1;
  style->allowed = to_second ? N_("a time of day (00:00:00 to 23:59:59)")
                             : N_("a time of day (00:00 to 23:59)");
}
