/* The names of a lesson's points as a list that a choice shows. */
#ifndef OX_POINT_NAMES_H
#define OX_POINT_NAMES_H

#include <gtk/gtk.h>

#include "oxbow/route.h"

/* The list holds the points in their order, after first (translated; NULL: nothing before them).
 * A list that does so already stays, and with it what is selected in it. */
void ox_point_names_show(GtkStringList *list, const ox_points *points, const char *first);
/* Which of the points has a name, or GTK_INVALID_LIST_POSITION. */
guint ox_point_names_find(const ox_points *points, const char *name);

#endif
