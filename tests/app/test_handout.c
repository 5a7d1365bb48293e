/* Handouts out of the window: what is chosen in the dialog is what the command line makes of the same
 * choices, byte for byte, and the page that is shown before is that page. */
#include "app_test.h"

#include "ox_export_dialog.h"
#include "ox_export_file.h"
#include "ox_number_field.h"

static const char *command_line; /* path of oxbow-cli */

static char *lesson_path(void) {
  return g_build_filename(g_getenv("OXBOW_LESSONS"), "techniques.oxbow", NULL);
}

static OxWindow *window_with_lesson(void) {
  OxWindow *window = app_test_window(NULL);
  char *path = lesson_path();
  assert_true(ox_window_open_path(window, path));
  app_test_spin_ms(100);
  g_free(path);
  return window;
}

static void act(OxWindow *window, const char *action) {
  g_action_group_activate_action(G_ACTION_GROUP(window), action, NULL);
  app_test_spin_ms(100);
}

static OxExportDialog *dialog_of(OxWindow *window, const char *action) {
  act(window, action);
  GtkWidget *dialog = app_test_top(OX_TYPE_EXPORT_DIALOG);
  assert_non_null(dialog);
  return OX_EXPORT_DIALOG(dialog);
}

static void select_row(GtkWidget *input, guint index) {
  gtk_drop_down_set_selected(GTK_DROP_DOWN(input), index);
  app_test_spin_ms(20);
}

static void press(GtkWidget *button) {
  g_signal_emit_by_name(button, "clicked");
  app_test_spin_ms(20);
}

static void type_seed(OxHandoutRows *rows, const char *text) {
  OxNumberField *seed = OX_NUMBER_FIELD(ox_handout_rows_input(rows, "seed"));
  gtk_editable_set_text(GTK_EDITABLE(ox_number_field_get_text(seed)), text);
  app_test_spin_ms(20);
}

/* ---- the same as the command line ------------------------------------------------------- */

/* draw LESSON -o PATH and the options; waits. */
static void run_command(const char *path, const char *options) {
  char *lesson = lesson_path(), *fault = NULL;
  char **words = g_strsplit(options, " ", -1);
  GPtrArray *arguments = g_ptr_array_new();
  const char *first[] = {command_line, "draw", lesson, "-o", path};
  int status = -1;
  for (size_t i = 0; i < G_N_ELEMENTS(first); i++) g_ptr_array_add(arguments, (char *)first[i]);
  for (char **at = words; *at; at++) g_ptr_array_add(arguments, *at);
  g_ptr_array_add(arguments, NULL);
  assert_true(g_spawn_sync(NULL, (char **)arguments->pdata, NULL, G_SPAWN_DEFAULT, NULL, NULL, NULL,
                           &fault, &status, NULL));
  if (status != 0) fail_msg("%s: %s", options, fault);
  g_free(fault);
  g_ptr_array_unref(arguments);
  g_strfreev(words);
  g_free(lesson);
}

static void assert_same_file(const char *a, const char *b, const char *what) {
  char *bytes[2];
  gsize length[2];
  assert_true(g_file_get_contents(a, &bytes[0], &length[0], NULL));
  assert_true(g_file_get_contents(b, &bytes[1], &length[1], NULL));
  if (length[0] != length[1] || memcmp(bytes[0], bytes[1], length[0]) != 0)
    fail_msg("%s: %zu bytes from the window, %zu from the command line", what, length[0],
             length[1]);
  assert_true(length[0] > 1000);
  g_free(bytes[0]);
  g_free(bytes[1]);
}

static void the_window_writes_what_the_command_line_writes(void **state) {
  static const struct {
    ox_share_what what;
    ox_share_paper paper;
    ox_handout_choice choice;
    const char *options;
  } rows[] = {
      {OX_SHARE_WORKSHEET, OX_SHARE_A4_UPRIGHT, {2, FALSE, 7}, "--worksheet"},
      {OX_SHARE_KEY, OX_SHARE_A4_UPRIGHT, {2, FALSE, 7}, "--key"},
      {OX_SHARE_WORKSHEET, OX_SHARE_LETTER_ACROSS, {4, TRUE, 42},
       "--worksheet --per-page 4 --paper letter --across --seed 42"},
      {OX_SHARE_KEY, OX_SHARE_A4_ACROSS, {1, TRUE, 999999},
       "--key --per-page 1 --paper a4 --across --seed 999999"},
      {OX_SHARE_KEY, OX_SHARE_LETTER_UPRIGHT, {4, TRUE, 0},
       "--key --per-page 4 --paper letter --seed 0"},
  };
  OxWindow *window = window_with_lesson();
  /* what lies over the picture is no business of a handout's */
  ox_overlays_show_area(ox_window_overlays(window), TRUE);
  for (size_t i = 0; i < G_N_ELEMENTS(rows); i++) {
    char *ours = app_test_path("window.pdf"), *theirs = app_test_path("command.pdf");
    ox_share_choice choice = ox_share_choice_default();
    choice.what = rows[i].what;
    choice.handout_paper = rows[i].paper;
    choice.handout = rows[i].choice;
    ox_share_choice_settle(&choice);
    assert_true(ox_window_export_choice(window, &choice, ours));
    run_command(theirs, rows[i].options);
    assert_same_file(ours, theirs, rows[i].options);
    g_free(theirs);
    g_free(ours);
  }
  app_test_close(window);
}

/* One case of many is what --case says. */
static void chosen_cases_alone_are_on_the_pages(void **state) {
  char *lesson = lesson_path(), *ours = app_test_path("one.pdf"), *theirs = app_test_path("c.pdf");
  ox_messages messages = {0};
  ox_lesson *read = NULL;
  assert_int_not_equal(ox_lesson_read(lesson, &read, &messages), OX_ERROR);
  gboolean *wanted = g_new0(gboolean, read->case_count);
  ox_share_choice choice = ox_share_choice_default();
  char *error = NULL;
  wanted[1] = TRUE;
  choice.what = OX_SHARE_KEY;
  choice.format = OX_SHARE_PDF;
  ox_export_job job = {.lesson = read, .wanted = wanted};
  assert_int_equal(ox_export_file(&job, &choice, ours, &error), OX_OK);
  const char *arguments[] = {command_line, "draw", lesson, "-o", theirs, "--key", "--case",
                             read->cases[1].c.name, NULL};
  int status = -1;
  assert_true(g_spawn_sync(NULL, (char **)arguments, NULL, G_SPAWN_DEFAULT, NULL, NULL, NULL, NULL,
                           &status, NULL));
  assert_int_equal(status, 0);
  assert_same_file(ours, theirs, "one case");
  wanted[1] = FALSE;
  assert_int_equal(ox_export_file(&job, &choice, ours, &error), OX_ERROR);
  assert_non_null(error);
  assert_same_file(ours, theirs, "the file before"); /* nothing was written over it */
  g_free(error);
  g_free(wanted);
  ox_lesson_free(read);
  ox_messages_clear(&messages);
  g_free(theirs);
  g_free(ours);
  g_free(lesson);
}

/* ---- the dialog ------------------------------------------------------------------------- */

static void the_dialog_says_how_many_and_shows_each_page(void **state) {
  OxWindow *window = window_with_lesson();
  size_t cases = ox_document_case_count(ox_window_document(window));
  OxExportDialog *dialog = dialog_of(window, "handout");
  OxHandoutRows *rows = ox_export_dialog_handout(dialog);
  OxHandoutView *page = ox_export_dialog_page(dialog);
  assert_int_equal(ox_export_dialog_choice(dialog).what, OX_SHARE_WORKSHEET);
  assert_true(gtk_widget_get_mapped(GTK_WIDGET(page)));
  assert_int_equal(cases, 9);
  assert_string_equal(ox_handout_view_words(page), "Page 1 of 5");
  for (int i = 0; i < 4; i++) press(ox_handout_view_button(page, TRUE));
  assert_string_equal(ox_handout_view_words(page), "Page 5 of 5");
  assert_false(gtk_widget_get_sensitive(ox_handout_view_button(page, TRUE)));
  select_row(ox_handout_rows_input(rows, "per-page"), 2); /* four a page: this page is gone */
  assert_string_equal(ox_handout_view_words(page), "Page 3 of 3");
  press(ox_handout_view_button(page, FALSE));
  assert_string_equal(ox_handout_view_words(page), "Page 2 of 3");
  press(ox_handout_rows_input(rows, "none"));
  assert_string_equal(ox_export_dialog_sentence(dialog), "No case is chosen.");
  assert_false(gtk_widget_get_sensitive(ox_export_dialog_input(dialog, "choose")));
  gtk_check_button_set_active(GTK_CHECK_BUTTON(ox_handout_rows_case(rows, 2)), TRUE);
  app_test_spin_ms(20);
  assert_non_null(strstr(ox_export_dialog_sentence(dialog), "1 page, 1 hold"));
  assert_true(gtk_widget_get_sensitive(ox_export_dialog_input(dialog, "choose")));
  assert_true(ox_export_dialog_wanted(dialog)[2] && !ox_export_dialog_wanted(dialog)[1]);
  press(ox_handout_rows_input(rows, "all"));
  assert_int_equal(ox_handout_rows_wanted_count(rows), cases);
  gtk_window_destroy(GTK_WINDOW(dialog));
  app_test_close(window);
}

static void a_seed_is_asked_for_only_with_an_order_by_chance(void **state) {
  OxWindow *window = window_with_lesson();
  OxExportDialog *dialog = dialog_of(window, "handout");
  OxHandoutRows *rows = ox_export_dialog_handout(dialog);
  GtkWidget *seed = ox_handout_rows_input(rows, "seed");
  assert_false(gtk_widget_get_mapped(seed));
  select_row(ox_handout_rows_input(rows, "order"), 1);
  app_test_spin_ms(100);
  assert_true(gtk_widget_get_mapped(seed));
  type_seed(rows, "4711");
  assert_int_equal(ox_export_dialog_choice(dialog).handout.seed, 4711);
  assert_true(ox_export_dialog_choice(dialog).handout.shuffled);
  type_seed(rows, "2.5"); /* no whole number: as it was before the typing, and it says so */
  assert_int_equal(ox_export_dialog_choice(dialog).handout.seed, 1);
  gtk_widget_activate(ox_export_dialog_input(dialog, "choose"));
  app_test_spin_ms(500);
  assert_true(gtk_widget_get_visible(GTK_WIDGET(dialog)));
  assert_non_null(strstr(ox_number_field_get_message(OX_NUMBER_FIELD(seed)), "whole number"));
  guint before = ox_export_dialog_choice(dialog).handout.seed;
  press(ox_handout_rows_input(rows, "another"));
  assert_true(ox_export_dialog_choice(dialog).handout.seed != before);
  assert_true(ox_export_dialog_choice(dialog).handout.seed <= OX_HANDOUT_SEED_MOST);
  gtk_window_destroy(GTK_WINDOW(dialog));
  app_test_close(window);
}

static void a_key_is_not_shown_while_the_answer_is_hidden(void **state) {
  OxWindow *window = window_with_lesson();
  ox_prediction_set_state(ox_window_prediction(window), OX_PREDICTION_ASKED);
  app_test_spin_ms(50);
  OxExportDialog *dialog = dialog_of(window, "handout");
  assert_true(gtk_widget_get_sensitive(ox_export_dialog_input(dialog, "choose")));
  select_row(ox_export_dialog_input(dialog, "what"), OX_SHARE_KEY);
  assert_false(gtk_widget_get_sensitive(ox_export_dialog_input(dialog, "choose")));
  assert_non_null(strstr(ox_export_dialog_sentence(dialog), "hidden"));
  assert_string_equal(ox_handout_view_words(ox_export_dialog_page(dialog)), "No page");
  gtk_window_destroy(GTK_WINDOW(dialog));
  app_test_close(window);
}

/* The lesson of the dialog is that of the moment it was opened. */
static void a_lesson_that_changes_under_the_dialog_is_no_harm(void **state) {
  OxWindow *window = window_with_lesson();
  OxExportDialog *dialog = dialog_of(window, "handout");
  g_object_ref_sink(dialog);
  ox_document_duplicate_case(ox_window_document(window), 0);
  press(ox_handout_view_button(ox_export_dialog_page(dialog), TRUE));
  app_test_spin_ms(100);
  assert_string_equal(ox_handout_view_words(ox_export_dialog_page(dialog)), "Page 2 of 5");
  gtk_window_destroy(GTK_WINDOW(dialog));
  g_object_unref(dialog);
  app_test_close(window);
}

static void what_was_chosen_is_remembered(void **state) {
  char *path = app_test_path("handout-settings");
  OxSettings *settings = ox_settings_new(path);
  ox_share_choice c = ox_share_choice_default(), back;
  assert_int_equal(ox_share_choice_recall(settings).handout_paper, OX_SHARE_A4_UPRIGHT);
  c.what = OX_SHARE_KEY;
  c.handout_paper = OX_SHARE_LETTER_ACROSS;
  c.handout = (ox_handout_choice){4, TRUE, 123456};
  ox_share_choice_remember(&c, settings);
  g_object_unref(settings);
  settings = ox_settings_new(path);
  back = ox_share_choice_recall(settings);
  assert_int_equal(back.what, OX_SHARE_KEY);
  assert_int_equal(back.format, OX_SHARE_PDF);
  assert_int_equal(back.handout_paper, OX_SHARE_LETTER_ACROSS);
  assert_int_equal(back.handout.per_page, 4);
  assert_true(back.handout.shuffled);
  assert_int_equal(back.handout.seed, 123456);
  ox_settings_set_whole(settings, "handout-per-page", 3); /* as nobody can lay it out */
  ox_settings_set_whole(settings, "handout-seed", -5);
  back = ox_share_choice_recall(settings);
  assert_int_equal(back.handout.per_page, 2);
  assert_int_equal(back.handout.seed, 1);
  g_object_unref(settings);
  g_free(path);
}

int main(int argc, char **argv) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_window_writes_what_the_command_line_writes),
      cmocka_unit_test(chosen_cases_alone_are_on_the_pages),
      cmocka_unit_test(the_dialog_says_how_many_and_shows_each_page),
      cmocka_unit_test(a_seed_is_asked_for_only_with_an_order_by_chance),
      cmocka_unit_test(a_key_is_not_shown_while_the_answer_is_hidden),
      cmocka_unit_test(a_lesson_that_changes_under_the_dialog_is_no_harm),
      cmocka_unit_test(what_was_chosen_is_remembered),
  };
  if (argc < 2) return 1;
  command_line = argv[1];
  return cmocka_run_group_tests_name("handouts in the window", tests, app_test_init, app_test_clean);
}
