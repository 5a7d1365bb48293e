/* The published holds of an open file as a list: those that a search leaves, in the order of the
 * file. A GListModel without GTK. A hold is read when a row of it is shown, so twelve cost the same
 * as a hundred thousand. */
#ifndef OX_PUBLISHED_LIST_H
#define OX_PUBLISHED_LIST_H

#include <gio/gio.h>

#include "oxbow/navdata.h"

G_BEGIN_DECLS

#define OX_TYPE_PUBLISHED_LIST (ox_published_list_get_type())
G_DECLARE_FINAL_TYPE(OxPublishedList, ox_published_list, OX, PUBLISHED_LIST, GObject)
/* An item: one hold. */
#define OX_TYPE_PUBLISHED_ROW (ox_published_row_get_type())
G_DECLARE_FINAL_TYPE(OxPublishedRow, ox_published_row, OX, PUBLISHED_ROW, GObject)

typedef enum {
  OX_PUBLISHED_AIRPORT, OX_PUBLISHED_PROCEDURE, OX_PUBLISHED_TRANSITION, OX_PUBLISHED_FIX,
  OX_PUBLISHED_COURSE, OX_PUBLISHED_TURNS, OX_PUBLISHED_LEG, OX_PUBLISHED_ALTITUDE,
  OX_PUBLISHED_LIMIT, OX_PUBLISHED_COLUMNS
} ox_published_column;

OxPublishedList *ox_published_list_new(void);
/* Borrowed, until it is replaced; NULL: none. The search stays. */
void ox_published_list_set_data(OxPublishedList *self, const ox_navdata *data);
/* Words, separated by blanks; every one begins the fix, the airport, the procedure or the
 * transition, capitals or not. Empty: all. */
void ox_published_list_search(OxPublishedList *self, const char *words);

/* Its number in the file. */
size_t ox_published_row_index(OxPublishedRow *self);
/* What stands in a column: "347° T", "left", "4 NM", "at or above 3200 ft"; "" where the record is
 * silent. */
void ox_published_row_text(OxPublishedRow *self, ox_published_column column, char *buf,
                           size_t bytes);
const char *ox_published_column_title(ox_published_column column);

G_END_DECLS

#endif
