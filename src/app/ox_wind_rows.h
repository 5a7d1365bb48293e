/* The wind by altitude, or its changes by the minute, as rows that are typed, added and removed.
 *
 * The document knows the values; nothing is stored here. A row is two lines: when (altitude or
 * minute) and in which north, then direction and speed. Signal:
 *   "done"  Enter was pressed on a good number */
#ifndef OX_WIND_ROWS_H
#define OX_WIND_ROWS_H

#include <gtk/gtk.h>

#include "ox_document.h"
#include "ox_number_field.h"

G_BEGIN_DECLS

typedef enum { OX_WIND_BY_ALTITUDE, OX_WIND_BY_MINUTE } ox_wind_rows_kind;

#define OX_TYPE_WIND_ROWS (ox_wind_rows_get_type())
G_DECLARE_FINAL_TYPE(OxWindRows, ox_wind_rows, OX, WIND_ROWS, GtkWidget)

/* Holds a reference to the document. */
GtkWidget *ox_wind_rows_new(OxDocument *document, ox_wind_rows_kind kind);

/* As ox_number_field_commit, for every row shown. */
gboolean ox_wind_rows_commit(OxWindRows *self);

/* How many rows are shown: none while one wind holds at every altitude. */
int ox_wind_rows_shown(OxWindRows *self);
/* The editor of a key of oxbow/fields.h ("altitude_ft", "at_min", "from_deg", "kt": a number field;
 * "north": a drop-down) in a row; NULL where there is none. For tests and for focus. */
GtkWidget *ox_wind_rows_editor(OxWindRows *self, int row, const char *key);
GtkWidget *ox_wind_rows_add_button(OxWindRows *self);
GtkWidget *ox_wind_rows_remove_button(OxWindRows *self, int row);
/* What is complained about in a row, or NULL. */
const char *ox_wind_rows_message(OxWindRows *self, int row);

G_END_DECLS

#endif
