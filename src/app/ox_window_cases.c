/* The list of cases in the window: its page on the left, and the actions on the shown case. What
 * is deleted is had back by a button, instead of a question before. */
#include "ox_window_private.h"

#include "ox_keys.h"
#include "ox_message_bar.h"
#include "oxbow/text.h"

#define PAGE "cases"
#define DELETED_BAR "deleted"

/* ---- the page --------------------------------------------------------------------------- */

static void cases_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  gboolean shown = g_variant_get_boolean(state);
  ox_inputs_panel_commit(self->inputs);
  gtk_stack_set_visible_child_name(self->left_pages, shown ? PAGE : "hold");
  if (shown) ox_cases_panel_focus(self->cases);
}

/* The page may be left by other ways as well. */
static void page_cb(OxWindow *self) {
  gboolean shown = g_strcmp0(gtk_stack_get_visible_child_name(self->left_pages), PAGE) == 0;
  GAction *action = g_action_map_lookup_action(G_ACTION_MAP(self), "cases");
  g_simple_action_set_state(G_SIMPLE_ACTION(action), g_variant_new_boolean(shown));
}

static void rename_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  gtk_stack_set_visible_child_name(self->left_pages, PAGE);
  ox_cases_panel_rename(self->cases);
}

/* ---- the shown case --------------------------------------------------------------------- */

/* What is being typed belongs to the case as it is. */
static size_t shown_case(OxWindow *self) {
  ox_inputs_panel_commit(self->inputs);
  return ox_document_case_index(self->document);
}

static void add_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  ox_document_add_case(self->document, shown_case(self));
}

static void duplicate_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  ox_document_duplicate_case(self->document, shown_case(self));
}

static void move_up_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  size_t index = shown_case(self);
  if (index > 0) ox_document_move_case(self->document, index, index - 1);
}

static void move_down_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  size_t index = shown_case(self);
  ox_document_move_case(self->document, index, index + 1);
}

static void deleted_response_cb(GtkInfoBar *bar, int response, OxWindow *self) {
  if (response == GTK_RESPONSE_ACCEPT) ox_document_undo(self->document);
}

static void delete_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  size_t index = shown_case(self);
  char *text = g_strdup_printf(_("“%s” was deleted."), ox_document_case(self->document)->name);
  if (ox_document_delete_case(self->document, index) == OX_OK) {
    GtkWidget *bar = ox_message_bar_show(self->above_board, DELETED_BAR, GTK_MESSAGE_INFO, text,
                                         _("_Undo"), NULL);
    g_signal_connect_object(bar, "response", G_CALLBACK(deleted_response_cb), self, 0);
  }
  g_free(text);
}

/* Its button undoes the last step: gone as soon as that is another one. */
static void history_cb(OxWindow *self) { ox_message_bar_hide(self->above_board, DELETED_BAR); }

static const GActionEntry entries[] = {
    {.name = "cases", .state = "false", .change_state = cases_cb},
    {.name = "add-case", .activate = add_cb},
    {.name = "duplicate-case", .activate = duplicate_cb},
    {.name = "rename-case", .activate = rename_cb},
    {.name = "move-case-up", .activate = move_up_cb},
    {.name = "move-case-down", .activate = move_down_cb},
    {.name = "delete-case", .activate = delete_cb},
};

static void enable(OxWindow *self, const char *name, gboolean enabled) {
  GAction *action = g_action_map_lookup_action(G_ACTION_MAP(self), name);
  g_simple_action_set_enabled(G_SIMPLE_ACTION(action), enabled);
}

static void update(OxWindow *self) {
  size_t index = ox_document_case_index(self->document);
  size_t count = ox_document_case_count(self->document);
  enable(self, "add-case", count < OX_LESSON_CASES_MAX);
  enable(self, "duplicate-case", count < OX_LESSON_CASES_MAX);
  enable(self, "move-case-up", index > 0);
  enable(self, "move-case-down", index + 1 < count);
  enable(self, "delete-case", count > 1);
}

void ox_window_add_cases(OxWindow *self) {
  g_action_map_add_action_entries(G_ACTION_MAP(self), entries, G_N_ELEMENTS(entries), self);
  self->cases = g_object_new(OX_TYPE_CASES_PANEL, NULL);
  /* Without a title: the button beside the list of cases leads here, not the switcher. */
  gtk_stack_add_named(self->left_pages, GTK_WIDGET(self->cases), PAGE);
  ox_cases_panel_set_document(self->cases, self->document);
  ox_keys_add(GTK_WIDGET(self->cases), OX_KEYS_CASES, GTK_PHASE_BUBBLE);
  g_signal_connect_object(self->left_pages, "notify::visible-child", G_CALLBACK(page_cb), self,
                          G_CONNECT_SWAPPED);
  g_signal_connect_object(self->document, "history", G_CALLBACK(history_cb), self,
                          G_CONNECT_SWAPPED);
  g_signal_connect_object(self->document, "settled", G_CALLBACK(update), self, G_CONNECT_SWAPPED);
  update(self);
}
