/* A row of inputs for the case: a label, its editor, and below them what is wrong. */
#ifndef OX_CASE_ROW_H
#define OX_CASE_ROW_H

#include <gtk/gtk.h>

#include "ox_number_field.h"
#include "oxbow/fields.h"

/* Widgets of a grid, which owns them. */
typedef struct {
  GtkWidget *label, *editor, *message_box;
  GtkLabel *message;
} ox_case_row;

/* Puts an editor into two columns of a grid at a line, its complaint into the next; names it for
 * screen readers. The label has its mnemonic; both texts are translated. */
void ox_case_row_attach(ox_case_row *row, GtkWidget *editor, const char *label, const char *tip,
                        GtkGrid *grid, int line);
/* What is wrong, shown while the editor is; NULL: nothing. */
void ox_case_row_complain(ox_case_row *row, const char *message);

/* What a number may be: as its field says; without a field (NULL) it is a time of day, in minutes
 * or, of the form OX_FORM_CLOCK_S, in seconds; -1: none. */
void ox_case_row_bound(ox_number_style *style, const ox_field *field);

#endif
