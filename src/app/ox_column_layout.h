/* A layout for a panel at the side: one child that fills it, and asks for no more width than it
 * needs. Text that wraps would like to be one long line, and would push the board aside. */
#ifndef OX_COLUMN_LAYOUT_H
#define OX_COLUMN_LAYOUT_H

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define OX_TYPE_COLUMN_LAYOUT (ox_column_layout_get_type())
G_DECLARE_FINAL_TYPE(OxColumnLayout, ox_column_layout, OX, COLUMN_LAYOUT, GtkLayoutManager)

G_END_DECLS

#endif
