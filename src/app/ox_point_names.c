/* The names of a lesson's points as a list. */
#include "ox_point_names.h"

#include <string.h>

void ox_point_names_show(GtkStringList *list, const ox_points *points, const char *first) {
  guint count = g_list_model_get_n_items(G_LIST_MODEL(list)), extra = first ? 1 : 0;
  gboolean same = count == points->count + extra;
  for (guint i = 0; same && i < points->count; i++)
    same = g_str_equal(gtk_string_list_get_string(list, i + extra), points->points[i].name);
  if (same) return;
  gtk_string_list_splice(list, 0, count, NULL);
  if (first) gtk_string_list_append(list, first);
  for (size_t i = 0; i < points->count; i++) gtk_string_list_append(list, points->points[i].name);
}

guint ox_point_names_find(const ox_points *points, const char *name) {
  for (size_t i = 0; i < points->count; i++)
    if (strcmp(points->points[i].name, name) == 0) return (guint)i;
  return GTK_INVALID_LIST_POSITION;
}
