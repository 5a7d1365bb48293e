/* Files of the window: a bad one keeps the lesson, typing is in the saved file, closing asks. */
#include "app_test.h"

#include "oxbow/flaws.h"

#include "ox_dialogs.h"
#include "ox_number_field.h"

static void write_text(const char *path, const char *text) {
  assert_true(g_file_set_contents(path, text, -1, NULL));
}

static void type_course(OxWindow *window, const char *text) {
  GtkWidget *course = ox_inputs_panel_editor(ox_window_inputs(window), "hold.inbound_deg");
  gtk_editable_set_text(GTK_EDITABLE(ox_number_field_get_text(OX_NUMBER_FIELD(course))), text);
}

static void answer(int response) {
  GtkWidget *dialog = app_test_dialog();
  assert_non_null(dialog);
  gtk_dialog_response(GTK_DIALOG(dialog), response);
  app_test_spin_ms(50);
}

static char *all_text(GtkWidget *top) {
  GString *text = g_string_new(GTK_IS_LABEL(top) ? gtk_label_get_text(GTK_LABEL(top)) : "");
  for (GtkWidget *at = gtk_widget_get_first_child(top); at; at = gtk_widget_get_next_sibling(at)) {
    char *more = all_text(at);
    g_string_append_printf(text, "\n%s", more);
    g_free(more);
  }
  return g_string_free(text, FALSE);
}

static void a_bad_file_keeps_the_lesson_and_every_fault_is_shown(void **state) {
  OxWindow *window = app_test_window(NULL);
  const ox_lesson *before = ox_document_lesson(ox_window_document(window));
  char *path = app_test_path("bad.oxbow");
  write_text(path, "{\"format\": \"oxbow-lesson\", \"version\": 1, \"title\": \"Bad\", \"cases\": ["
                   "{\"name\": \"A\", \"hold\": {\"fix\": \"F\", \"inbound_deg\": 400},"
                   " \"aircraft\": {\"ias_kt\": 5}}]}");
  assert_false(ox_window_open_path(window, path));
  assert_ptr_equal(ox_document_lesson(ox_window_document(window)), before);
  GtkWidget *dialog = app_test_dialog();
  assert_non_null(dialog);
  char *text = all_text(dialog);
  assert_non_null(strstr(text, "400 is not a course (0 to 360)"));
  assert_non_null(strstr(text, "aircraft.ias_kt"));
  g_free(text);
  answer(GTK_RESPONSE_CLOSE);
  assert_null(app_test_dialog());

  write_text(path, "not a lesson at all \xff\xfe");
  assert_false(ox_window_open_path(window, path));
  answer(GTK_RESPONSE_CLOSE);
  assert_ptr_equal(ox_document_lesson(ox_window_document(window)), before);
  g_free(path);
  app_test_close(window);
}

static void what_is_being_typed_is_in_the_saved_file(void **state) {
  OxWindow *window = app_test_window(NULL);
  char *path = app_test_path("saved.oxbow");
  type_course(window, "77,5");
  assert_true(ox_window_save_path(window, path));
  assert_false(ox_document_modified(ox_window_document(window)));
  ox_lesson *lesson = NULL;
  ox_messages messages = {0};
  assert_int_equal(ox_lesson_read(path, &lesson, &messages), OX_OK);
  assert_close(lesson->cases[0].c.hold.inbound_deg, 77.5, 1e-9, "saved course");
  ox_lesson_free(lesson);
  g_free(path);
  app_test_close(window);
}

static void a_failed_save_says_so_and_the_changes_stay_unsaved(void **state) {
  OxWindow *window = app_test_window(NULL);
  type_course(window, "77");
  assert_false(ox_window_save_path(window, "/nowhere/at/all/lesson.oxbow"));
  assert_true(ox_document_modified(ox_window_document(window)));
  assert_null(ox_document_path(ox_window_document(window)));
  answer(GTK_RESPONSE_CLOSE);
  app_test_close(window);
}

static void a_newer_lesson_opens_read_only_with_a_remark(void **state) {
  OxWindow *window = app_test_window(NULL);
  char *path = app_test_path("newer.oxbow");
  write_text(path, "{\"format\": \"oxbow-lesson\", \"version\": 9, \"title\": \"Later\", \"cases\":"
                   " [{\"name\": \"A\", \"hold\": {\"fix\": \"F\", \"inbound_deg\": 90}}]}");
  assert_true(ox_window_open_path(window, path));
  answer(GTK_RESPONSE_CLOSE);
  assert_true(ox_document_read_only(ox_window_document(window)));
  assert_false(g_action_group_get_action_enabled(G_ACTION_GROUP(window), "save"));
  assert_false(g_action_group_get_action_enabled(G_ACTION_GROUP(window), "save-as"));
  assert_non_null(strstr(gtk_window_get_title(GTK_WINDOW(window)), "read only"));
  assert_false(ox_window_save_path(window, path));
  answer(GTK_RESPONSE_CLOSE);
  g_free(path);
  app_test_close(window);
}

static void gone_cb(gpointer data, GObject *where) { *(gboolean *)data = TRUE; }

static void closing_with_changes_asks_and_cancel_cancels(void **state) {
  OxWindow *window = app_test_window(NULL);
  gboolean gone = FALSE;
  g_object_weak_ref(G_OBJECT(window), gone_cb, &gone);
  type_course(window, "77");
  gtk_window_close(GTK_WINDOW(window));
  app_test_spin_ms(50);
  gtk_window_close(GTK_WINDOW(window)); /* asking twice is asking once */
  app_test_spin_ms(50);
  answer(GTK_RESPONSE_CANCEL);
  assert_null(app_test_dialog());
  assert_false(gone);
  assert_true(gtk_widget_get_visible(GTK_WIDGET(window)));
  gtk_window_close(GTK_WINDOW(window));
  app_test_spin_ms(50);
  answer(GTK_RESPONSE_REJECT);
  assert_true(app_test_spin_until(&gone, 5000));
}

static void closing_with_changes_can_save_first(void **state) {
  OxWindow *window = app_test_window(NULL);
  char *path = app_test_path("close.oxbow");
  gboolean gone = FALSE;
  type_course(window, "70");
  assert_true(ox_window_save_path(window, path));
  type_course(window, "71");
  g_object_weak_ref(G_OBJECT(window), gone_cb, &gone);
  gtk_window_close(GTK_WINDOW(window));
  app_test_spin_ms(50);
  answer(GTK_RESPONSE_ACCEPT);
  assert_true(app_test_spin_until(&gone, 5000));
  ox_lesson *lesson = NULL;
  ox_messages messages = {0};
  assert_int_equal(ox_lesson_read(path, &lesson, &messages), OX_OK);
  assert_close(lesson->cases[0].c.hold.inbound_deg, 71, 0, "course");
  ox_lesson_free(lesson);
  g_free(path);
}

static void closing_without_changes_asks_nothing(void **state) {
  OxWindow *window = app_test_window(NULL);
  gboolean gone = FALSE;
  g_object_weak_ref(G_OBJECT(window), gone_cb, &gone);
  gtk_window_close(GTK_WINDOW(window));
  assert_true(app_test_spin_until(&gone, 5000));
}

static void new_with_changes_asks_and_then_shows_a_new_lesson(void **state) {
  OxWindow *window = app_test_window(NULL);
  type_course(window, "77");
  g_action_group_activate_action(G_ACTION_GROUP(window), "new", NULL);
  app_test_spin_ms(50);
  answer(GTK_RESPONSE_REJECT);
  assert_int_equal(ox_document_case_count(ox_window_document(window)), 1);
  assert_false(ox_document_modified(ox_window_document(window)));
  app_test_close(window);
}

static void the_picture_is_written_in_the_three_formats_and_no_other(void **state) {
  static const struct {
    const char *name, *start;
  } files[] = {{"p.png", "\x89PNG"}, {"p.svg", "<?xml"}, {"p.PDF", "%PDF-"}};
  OxWindow *window = app_test_window(NULL);
  for (size_t i = 0; i < G_N_ELEMENTS(files); i++) {
    char *path = app_test_path(files[i].name), *bytes = NULL;
    size_t length = 0;
    assert_true(ox_window_export_path(window, path));
    assert_true(g_file_get_contents(path, &bytes, &length, NULL));
    assert_true(length > 2000);
    assert_memory_equal(bytes, files[i].start, strlen(files[i].start));
    g_free(bytes);
    g_free(path);
  }
  char *path = app_test_path("p.jpg");
  assert_false(ox_window_export_path(window, path));
  assert_false(g_file_test(path, G_FILE_TEST_EXISTS));
  answer(GTK_RESPONSE_CLOSE);
  g_free(path);
  assert_false(ox_window_export_path(window, "/nowhere/at/all/p.png"));
  answer(GTK_RESPONSE_CLOSE);
  app_test_close(window);
}

static void suggested_names_are_names_that_a_file_can_have(void **state) {
  static const struct {
    const char *title, *want;
  } rows[] = {{"Winds", "Winds.oxbow"},
              {"Bass 3.2", "Bass 3.2.oxbow"},
              {"../a/b", "---a-b.oxbow"},
              {".hidden", "-hidden.oxbow"},
              {"", "Lesson.oxbow"},
              {" \n", "-.oxbow"}};
  for (size_t i = 0; i < G_N_ELEMENTS(rows); i++) {
    char *name = ox_dialog_file_name(rows[i].title, ".oxbow");
    assert_string_equal(name, rows[i].want);
    g_free(name);
  }
}

/* What is laid over the picture on the board is in the file as well, and said in its description. */
static void the_picture_shows_what_the_board_shows(void **state) {
  OxWindow *window = app_test_window(NULL);
  char *path = app_test_path("o.svg"), *bytes = NULL;
  for (int on = 0; on <= 1; on++) {
    ox_overlays_set_compare(ox_window_overlays(window), on ? OX_MISTAKE_CLOCK_AT_FIX
                                                           : OX_COMPARE_NOTHING);
    ox_overlays_show_area(ox_window_overlays(window), on);
    assert_true(ox_window_export_path(window, path));
    assert_true(g_file_get_contents(path, &bytes, NULL, NULL));
    assert_int_equal(strstr(bytes, "Beside it, in dashes and dots") != NULL, on);
    assert_int_equal(strstr(bytes, "the protected area, as an illustration") != NULL, on);
    g_free(bytes);
  }
  g_free(path);
  app_test_close(window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_bad_file_keeps_the_lesson_and_every_fault_is_shown),
      cmocka_unit_test(what_is_being_typed_is_in_the_saved_file),
      cmocka_unit_test(a_failed_save_says_so_and_the_changes_stay_unsaved),
      cmocka_unit_test(a_newer_lesson_opens_read_only_with_a_remark),
      cmocka_unit_test(closing_with_changes_asks_and_cancel_cancels),
      cmocka_unit_test(closing_with_changes_can_save_first),
      cmocka_unit_test(closing_without_changes_asks_nothing),
      cmocka_unit_test(new_with_changes_asks_and_then_shows_a_new_lesson),
      cmocka_unit_test(the_picture_is_written_in_the_three_formats_and_no_other),
      cmocka_unit_test(the_picture_shows_what_the_board_shows),
      cmocka_unit_test(suggested_names_are_names_that_a_file_can_have),
  };
  return cmocka_run_group_tests_name("files", tests, app_test_init, app_test_clean);
}
