/* Undo and redo in the window: two actions, their buttons, and a section of the menu that names
 * the steps. */
#include "ox_window_private.h"

#include "oxbow/text.h"

/* What is being typed is a step of its own first: nothing typed is lost without a way back. */
static void undo_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  ox_inputs_panel_commit(self->inputs);
  ox_document_undo(self->document);
}

static void redo_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  ox_inputs_panel_commit(self->inputs);
  ox_document_redo(self->document);
}

static const GActionEntry entries[] = {
    {.name = "undo", .activate = undo_cb},
    {.name = "redo", .activate = redo_cb},
};

static void show_step(OxWindow *self, const char *words, gboolean can, const char *action,
                      GtkWidget *button) {
  char *label = g_strdup_printf("_%s", words), *detailed = g_strdup_printf("win.%s", action);
  GAction *found = g_action_map_lookup_action(G_ACTION_MAP(self), action);
  g_simple_action_set_enabled(G_SIMPLE_ACTION(found), can);
  gtk_widget_set_tooltip_text(button, words);
  gtk_accessible_update_property(GTK_ACCESSIBLE(button), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  g_menu_append(self->history_menu, label, detailed);
  g_free(label);
  g_free(detailed);
}

/* A change of the menu builds its widgets anew, and a tooltip asks the display where the pointer
 * is: too dear for every step of a drag, of which only the first has something new to show. */
static void history_cb(OxWindow *self) {
  const char *undo = ox_document_undo_name(self->document);
  const char *redo = ox_document_redo_name(self->document);
  char *undo_words = undo ? g_strdup_printf(_("Undo %s"), undo) : g_strdup(_("Undo"));
  char *redo_words = redo ? g_strdup_printf(_("Redo %s"), redo) : g_strdup(_("Redo"));
  char *shown = g_strdup_printf("%d %s\n%d %s", undo != NULL, undo_words, redo != NULL, redo_words);
  if (g_strcmp0(shown, self->history_shown) != 0) {
    g_menu_remove_all(self->history_menu);
    show_step(self, undo_words, undo != NULL, "undo", self->undo_button);
    show_step(self, redo_words, redo != NULL, "redo", self->redo_button);
  }
  g_free(self->history_shown);
  self->history_shown = shown;
  g_free(undo_words);
  g_free(redo_words);
}

/* Steps that merge do so within one focus only. */
static void focus_cb(OxWindow *self) { ox_document_seal_step(self->document); }

void ox_window_add_history(OxWindow *self) {
  g_action_map_add_action_entries(G_ACTION_MAP(self), entries, G_N_ELEMENTS(entries), self);
  g_signal_connect_object(self->document, "history", G_CALLBACK(history_cb), self,
                          G_CONNECT_SWAPPED);
  g_signal_connect(self, "notify::focus-widget", G_CALLBACK(focus_cb), NULL);
  history_cb(self);
}
