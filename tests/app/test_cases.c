/* The list of cases as its user meets it. */
#include "app_test.h"

#include "ox_cases_panel.h"
#include "ox_message_bar.h"

static void act(OxWindow *window, const char *action) {
  g_action_group_activate_action(G_ACTION_GROUP(window), action, NULL);
  app_test_spin_ms(30);
}

static gboolean is_enabled(OxWindow *window, const char *action) {
  return g_action_group_get_action_enabled(G_ACTION_GROUP(window), action);
}

static gboolean list_has_focus(gpointer window) {
  return gtk_window_get_focus(window) == (gpointer)ox_cases_panel_row(ox_window_cases(window), 0);
}

static OxWindow *window_with_list(void) {
  OxWindow *window = app_test_window(NULL);
  act(window, "cases");
  assert_true(app_test_wait(list_has_focus, window, 5000)); /* the list slides in */
  return window;
}

static const char *name_of(OxWindow *window, size_t index) {
  return ox_document_lesson(ox_window_document(window))->cases[index].c.name;
}

/* What the row at index says. */
static GtkWidget *row_label(OxWindow *window, size_t index) {
  GtkListBoxRow *row = ox_cases_panel_row(ox_window_cases(window), index);
  assert_non_null(row);
  return app_test_find_label(GTK_WIDGET(row), name_of(window, index));
}

static void assert_rows_say_what_the_lesson_has(OxWindow *window) {
  OxDocument *document = ox_window_document(window);
  size_t count = ox_document_case_count(document);
  for (size_t i = 0; i < count; i++) assert_non_null(row_label(window, i));
  assert_null(ox_cases_panel_row(ox_window_cases(window), count));
  GtkListBoxRow *shown =
      ox_cases_panel_row(ox_window_cases(window), ox_document_case_index(document));
  assert_true(gtk_list_box_row_is_selected(shown));
}

static gboolean has_focus(OxWindow *window, gpointer widget) {
  return gtk_window_get_focus(GTK_WINDOW(window)) == widget;
}

static void the_list_follows_whatever_becomes_of_the_cases(void **state) {
  OxWindow *window = window_with_list();
  OxDocument *document = ox_window_document(window);
  assert_true(has_focus(window, ox_cases_panel_row(ox_window_cases(window), 0)));
  static const char *const actions[] = {"duplicate-case", "add-case",   "move-case-down",
                                        "move-case-down", "delete-case", "undo",
                                        "undo",           "move-case-up", "undo",
                                        "redo",           "duplicate-case"};
  for (size_t i = 0; i < G_N_ELEMENTS(actions); i++) {
    act(window, actions[i]);
    assert_rows_say_what_the_lesson_has(window);
  }
  ox_document_select(document, 0);
  assert_rows_say_what_the_lesson_has(window);
  ox_document_take(document, ox_lesson_new(), NULL);
  assert_rows_say_what_the_lesson_has(window);
  assert_false(is_enabled(window, "delete-case"));
  assert_false(is_enabled(window, "move-case-up"));
  assert_false(is_enabled(window, "move-case-down"));
  app_test_close(window);
}

static void selecting_a_row_shows_its_case(void **state) {
  OxWindow *window = window_with_list();
  GtkListBoxRow *row = ox_cases_panel_row(ox_window_cases(window), 2);
  gtk_list_box_select_row(GTK_LIST_BOX(gtk_widget_get_parent(GTK_WIDGET(row))), row);
  assert_int_equal(ox_document_case_index(ox_window_document(window)), 2);
  app_test_close(window);
}

static void the_focus_goes_with_a_case_that_moves(void **state) {
  OxWindow *window = window_with_list();
  act(window, "move-case-down");
  act(window, "move-case-down");
  assert_int_equal(ox_document_case_index(ox_window_document(window)), 2);
  assert_true(has_focus(window, ox_cases_panel_row(ox_window_cases(window), 2)));
  app_test_close(window);
}

static void a_case_is_renamed_in_place(void **state) {
  OxWindow *window = window_with_list();
  ox_document_select(ox_window_document(window), 1);
  act(window, "rename-case");
  GtkEntry *entry = ox_cases_panel_entry(ox_window_cases(window), 1);
  assert_string_equal(gtk_editable_get_text(GTK_EDITABLE(entry)), name_of(window, 1));
  gtk_editable_set_text(GTK_EDITABLE(entry), "Gusty");
  g_signal_emit_by_name(entry, "activate");
  app_test_spin_ms(30);
  assert_string_equal(name_of(window, 1), "Gusty");
  assert_rows_say_what_the_lesson_has(window);
  assert_true(has_focus(window, ox_cases_panel_row(ox_window_cases(window), 1)));
  assert_string_equal(ox_document_undo_name(ox_window_document(window)), "Case Name");
  app_test_close(window);
}

static void a_bad_name_is_refused_below_the_list_and_given_up_on_leaving(void **state) {
  OxWindow *window = window_with_list();
  char *before = g_strdup(name_of(window, 0));
  act(window, "rename-case");
  GtkEntry *entry = ox_cases_panel_entry(ox_window_cases(window), 0);
  gtk_editable_set_text(GTK_EDITABLE(entry), "  ");
  g_signal_emit_by_name(entry, "activate");
  GtkWidget *panel = GTK_WIDGET(ox_window_cases(window));
  GtkWidget *why = app_test_find_label(panel, "A name is needed here.");
  assert_non_null(why);
  assert_true(gtk_widget_is_visible(why));
  gtk_widget_grab_focus(GTK_WIDGET(ox_window_board(window)));
  app_test_spin_ms(30);
  assert_string_equal(name_of(window, 0), before);
  assert_false(gtk_widget_is_visible(why));
  g_free(before);
  app_test_close(window);
}

static void a_name_being_typed_is_in_the_saved_file(void **state) {
  OxWindow *window = window_with_list();
  char *path = app_test_path("names.oxbow");
  act(window, "rename-case");
  GtkEntry *entry = ox_cases_panel_entry(ox_window_cases(window), 0);
  gtk_editable_set_text(GTK_EDITABLE(entry), "Typed");
  assert_true(ox_window_save_path(window, path));
  ox_lesson *lesson = NULL;
  ox_messages messages = {0};
  assert_int_equal(ox_lesson_read(path, &lesson, &messages), OX_OK);
  assert_string_equal(lesson->cases[0].c.name, "Typed");
  ox_lesson_free(lesson);
  g_free(path);
  app_test_close(window);
}

static GtkWidget *deleted_bar(OxWindow *window) {
  return ox_message_bar_find(ox_window_messages(window), "deleted");
}

static void what_is_deleted_is_had_back_by_a_button(void **state) {
  OxWindow *window = window_with_list();
  OxDocument *document = ox_window_document(window);
  size_t count = ox_document_case_count(document);
  char *name = g_strdup(name_of(window, 0));
  act(window, "delete-case");
  assert_int_equal(ox_document_case_count(document), count - 1);
  GtkWidget *bar = deleted_bar(window);
  assert_non_null(bar);
  assert_non_null(strstr(ox_message_bar_text(bar), name));
  gtk_info_bar_response(GTK_INFO_BAR(bar), GTK_RESPONSE_ACCEPT);
  app_test_spin_ms(30);
  assert_int_equal(ox_document_case_count(document), count);
  assert_string_equal(name_of(window, 0), name);
  assert_null(deleted_bar(window));

  act(window, "delete-case");
  ox_document_set_field(document, ox_field_by_key("hold.inbound_deg"), 123, NULL);
  assert_null(deleted_bar(window)); /* its button would undo something else now */
  g_free(name);
  app_test_close(window);
}

static gpointer controller_below(GtkWidget *top, GType type) {
  GListModel *all = gtk_widget_observe_controllers(top);
  gpointer found = NULL;
  for (guint i = 0; i < g_list_model_get_n_items(all) && !found; i++) {
    gpointer at = g_list_model_get_item(all, i);
    if (G_TYPE_CHECK_INSTANCE_TYPE(at, type)) found = at;
    g_object_unref(at);
  }
  g_object_unref(all);
  for (GtkWidget *at = gtk_widget_get_first_child(top); at && !found;
       at = gtk_widget_get_next_sibling(at))
    found = controller_below(at, type);
  return found;
}

/* The two ends of a drag: what the first row offers, dropped on the third. */
static void a_row_dropped_on_another_takes_its_place(void **state) {
  OxWindow *window = window_with_list();
  OxCasesPanel *cases = ox_window_cases(window);
  char *name = g_strdup(name_of(window, 0));
  GObject *source = controller_below(GTK_WIDGET(ox_cases_panel_row(cases, 0)), GTK_TYPE_DRAG_SOURCE);
  GObject *target = controller_below(GTK_WIDGET(ox_cases_panel_row(cases, 2)), GTK_TYPE_DROP_TARGET);
  assert_non_null(source);
  assert_non_null(target);
  GdkContentProvider *offered = NULL;
  GValue value = G_VALUE_INIT;
  gboolean taken = FALSE;
  g_signal_emit_by_name(source, "prepare", 1.0, 1.0, &offered);
  assert_non_null(offered);
  g_value_init(&value, G_TYPE_INT);
  assert_true(gdk_content_provider_get_value(offered, &value, NULL));
  g_signal_emit_by_name(target, "drop", &value, 1.0, 1.0, &taken);
  assert_true(taken);
  assert_string_equal(name_of(window, 2), name);
  assert_int_equal(ox_document_case_index(ox_window_document(window)), 2);
  assert_rows_say_what_the_lesson_has(window);
  g_object_unref(offered);
  g_free(name);
  app_test_close(window);
}

static void the_title_is_edited_above_the_list(void **state) {
  OxWindow *window = window_with_list();
  OxDocument *document = ox_window_document(window);
  GtkWidget *title = app_test_find(GTK_WIDGET(ox_window_cases(window)), GTK_TYPE_ENTRY);
  ox_document_set_clock(document, 0);
  gtk_editable_set_text(GTK_EDITABLE(title), "W");
  gtk_editable_set_text(GTK_EDITABLE(title), "Winds");
  assert_string_equal(ox_document_title(document), "Winds");
  assert_string_equal(gtk_window_get_title(GTK_WINDOW(window)), "Winds •");
  act(window, "undo");
  assert_string_not_equal(ox_document_title(document), "Winds");
  assert_string_equal(gtk_editable_get_text(GTK_EDITABLE(title)),
                      ox_document_lesson(document)->title);
  assert_false(ox_document_can_undo(document));
  app_test_close(window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_list_follows_whatever_becomes_of_the_cases),
      cmocka_unit_test(selecting_a_row_shows_its_case),
      cmocka_unit_test(the_focus_goes_with_a_case_that_moves),
      cmocka_unit_test(a_case_is_renamed_in_place),
      cmocka_unit_test(a_bad_name_is_refused_below_the_list_and_given_up_on_leaving),
      cmocka_unit_test(a_name_being_typed_is_in_the_saved_file),
      cmocka_unit_test(what_is_deleted_is_had_back_by_a_button),
      cmocka_unit_test(a_row_dropped_on_another_takes_its_place),
      cmocka_unit_test(the_title_is_edited_above_the_list),
  };
  return cmocka_run_group_tests_name("cases", tests, app_test_init, app_test_clean);
}
