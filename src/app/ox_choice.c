/* A choice among words, which stand in tables in English. */
#include "ox_choice.h"

#include "oxbow/text.h"

GtkStringList *ox_choice_list(const char *const *words) {
  GtkStringList *list = gtk_string_list_new(NULL);
  for (const char *const *word = words; *word; word++) gtk_string_list_append(list, _(*word));
  return list;
}

GtkWidget *ox_choice_new(const char *const *words) {
  return gtk_drop_down_new(G_LIST_MODEL(ox_choice_list(words)), NULL);
}
