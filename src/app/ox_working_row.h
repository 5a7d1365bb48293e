/* One row of the working: name and value on a line, formula and source below, folded away until
 * they are asked for. */
#ifndef OX_WORKING_ROW_H
#define OX_WORKING_ROW_H

#include <gtk/gtk.h>

#include "oxbow/words.h"

G_BEGIN_DECLS

#define OX_TYPE_WORKING_ROW (ox_working_row_get_type())
G_DECLARE_FINAL_TYPE(OxWorkingRow, ox_working_row, OX, WORKING_ROW, GtkWidget)

GtkWidget *ox_working_row_new(void);
/* heading: shown above the row; NULL for none. */
void ox_working_row_show(OxWorkingRow *self, const ox_working_row *row, const char *heading);
void ox_working_row_open(OxWorkingRow *self, gboolean open);

G_END_DECLS

#endif
