/* Rows of a grid for fields of the case: a label, an editor, and what is wrong with what was
 * typed. The table says which; the document knows the values; nothing is stored here. */
#ifndef OX_FIELD_ROWS_H
#define OX_FIELD_ROWS_H

#include <gtk/gtk.h>

#include "ox_document.h"
#include "ox_number_field.h"

/* A field of ox_fields by its key, or one of the times of day and texts that the table of fields
 * lacks. Strings are static. */
typedef struct {
  const char *key;   /* "fuel.on_board", "hold.efc", "shown.fix" */
  const char *label; /* with its mnemonic */
  const char *tip;
  ox_number_form form;
  const char *unit, *units;
  int decimals;
  double step, page;
} ox_field_row_plan;

typedef struct ox_field_rows ox_field_rows;

ox_field_rows *ox_field_rows_new(GtkGrid *grid, const ox_field_row_plan *plans, size_t count);
/* Fills the rows; from now on edits go to the document, which is borrowed and outlives the rows. */
void ox_field_rows_set_document(ox_field_rows *rows, OxDocument *document);
/* Shows the case's values; fresh: whatever is being typed. */
void ox_field_rows_show(ox_field_rows *rows, gboolean fresh);
/* Before the widgets go: leaving fields commit, and there is nobody to commit to any more. */
void ox_field_rows_free(ox_field_rows *rows);
/* What edits a key, or NULL. */
GtkWidget *ox_field_rows_editor(ox_field_rows *rows, const char *key);

#endif
