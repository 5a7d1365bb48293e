/* On paper: sizes, pages and what stands on them, read back from a PDF by another program. */
#include "app_test.h"

#include "ox_print.h"

/* Into a PDF as the dialog would onto paper. */
static GtkPrintOperationResult run_into(GtkPrintOperation *operation, OxWindow *window,
                                        GtkPageSetup *paper, const char *path) {
  GError *fault = NULL;
  gtk_print_operation_set_default_page_setup(operation, paper);
  gtk_print_operation_set_export_filename(operation, path);
  GtkPrintOperationResult result = gtk_print_operation_run(
      operation, GTK_PRINT_OPERATION_ACTION_EXPORT, GTK_WINDOW(window), &fault);
  assert_null(fault);
  return result;
}

static char *print(OxWindow *window, ox_print_choice choice, GtkPageSetup *paper) {
  char *path = app_test_path("printed.pdf");
  GtkPrintOperation *operation =
      ox_print_new(ox_window_document(window), ox_window_board(window), &choice);
  assert_int_equal(run_into(operation, window, paper, path), GTK_PRINT_OPERATION_RESULT_APPLY);
  g_object_unref(operation);
  return path;
}

static GtkPageSetup *paper_new(const char *name, GtkPageOrientation orientation) {
  GtkPageSetup *paper = gtk_page_setup_new();
  GtkPaperSize *size = gtk_paper_size_new(name);
  gtk_page_setup_set_paper_size_and_default_margins(paper, size);
  gtk_page_setup_set_orientation(paper, orientation);
  gtk_paper_size_free(size);
  return paper;
}

static char *run(const char *program, const char *option, const char *path) {
  const char *arguments[] = {program, option, path, g_str_equal(program, "pdftotext") ? "-" : NULL,
                             NULL};
  char *out = NULL;
  int status = -1;
  assert_true(g_spawn_sync(NULL, (char **)arguments, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &out,
                           NULL, &status, NULL));
  assert_int_equal(status, 0);
  return out;
}

/* What is printed, as text. */
static char *printed_text(OxWindow *window, ox_print_choice choice, GtkPageSetup *paper) {
  char *path = print(window, choice, paper), *text = run("pdftotext", "-layout", path);
  g_free(path);
  return text;
}

static double number_after(const char *text, const char *key) {
  const char *at = strstr(text, key);
  assert_non_null(at);
  return g_ascii_strtod(at + strlen(key), NULL);
}

/* A4 is 210 mm x 297 mm (ISO 216), Letter 8.5 in x 11 in; a point is 1/72 in. */
static void a_page_has_the_size_of_its_paper(void **state) {
  static const struct {
    const char *paper;
    GtkPageOrientation orientation;
    double width, height;
  } rows[] = {{GTK_PAPER_NAME_A4, GTK_PAGE_ORIENTATION_LANDSCAPE, 841.9, 595.3},
              {GTK_PAPER_NAME_A4, GTK_PAGE_ORIENTATION_PORTRAIT, 595.3, 841.9},
              {GTK_PAPER_NAME_LETTER, GTK_PAGE_ORIENTATION_LANDSCAPE, 792, 612},
              {GTK_PAPER_NAME_LETTER, GTK_PAGE_ORIENTATION_PORTRAIT, 612, 792}};
  OxWindow *window = app_test_window(NULL);
  for (size_t i = 0; i < G_N_ELEMENTS(rows); i++) {
    GtkPageSetup *paper = paper_new(rows[i].paper, rows[i].orientation);
    char *path = print(window, (ox_print_choice){.what = OX_PRINT_CASE, .pen_marks = TRUE}, paper);
    char *info = run("pdfinfo", "-box", path);
    assert_close(number_after(info, "Pages:"), 1, 0, "size");
    double width = number_after(info, "Page size:"), height = number_after(info, " x ");
    int turned = (int)number_after(info, "Page rot:") % 180 != 0;
    assert_close(turned ? height : width, rows[i].width, 0.5, "size");
    assert_close(turned ? width : height, rows[i].height, 0.5, "size");
    g_free(info);
    g_free(path);
    g_object_unref(paper);
  }
  app_test_close(window);
}

static void a_page_says_what_it_is_and_carries_the_caution(void **state) {
  OxWindow *window = app_test_window(NULL);
  GtkPageSetup *paper = paper_new(GTK_PAPER_NAME_A4, GTK_PAGE_ORIENTATION_LANDSCAPE);
  char *text =
      printed_text(window, (ox_print_choice){.what = OX_PRINT_CASE, .pen_marks = TRUE}, paper);
  static const char *const parts[] = {"For instruction only", "Page 1 of 1", "1 NM is ",
                                      "Oxbow ", "LARCH", "later circuits", "what the wind does"};
  for (size_t i = 0; i < G_N_ELEMENTS(parts); i++)
    if (!strstr(text, parts[i])) fail_msg("no “%s” in:\n%s", parts[i], text);
  double mm = number_after(text, "1 NM is ");
  assert_true(mm > 5 && mm < 80);
  g_free(text);
  g_object_unref(paper);
  app_test_close(window);
}

static void all_cases_have_a_page_each_in_their_order(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  GtkPageSetup *paper = paper_new(GTK_PAPER_NAME_LETTER, GTK_PAGE_ORIENTATION_LANDSCAPE);
  char *text = printed_text(window, (ox_print_choice){.what = OX_PRINT_CASES}, paper);
  char **pages = g_strsplit(text, "\f", -1);
  size_t count = ox_document_case_count(document);
  assert_true(count > 1);
  assert_int_equal(g_strv_length(pages), count + 1); /* every page ends with a form feed */
  for (size_t i = 0; i < count; i++) {
    char *number = g_strdup_printf("Page %zu of %zu", i + 1, count);
    assert_non_null(strstr(pages[i], number));
    assert_non_null(strstr(pages[i], "For instruction only"));
    assert_non_null(strstr(pages[i], ox_document_lesson(document)->cases[i].c.name));
    g_free(number);
  }
  g_strfreev(pages);
  g_free(text);
  g_object_unref(paper);
  app_test_close(window);
}

static void key_moments_are_printed_unless_the_answer_is_hidden(void **state) {
  OxWindow *window = app_test_window(NULL);
  GtkPageSetup *paper = paper_new(GTK_PAPER_NAME_A4, GTK_PAGE_ORIENTATION_PORTRAIT);
  for (int hidden = 0; hidden <= 1; hidden++) {
    ox_prediction_set_state(ox_window_prediction(window),
                            hidden ? OX_PREDICTION_ASKED : OX_PREDICTION_OFF);
    app_test_spin_ms(50);
    char *text = printed_text(window, (ox_print_choice){.what = OX_PRINT_MOMENTS}, paper);
    assert_int_equal(strstr(text, "Key moments") != NULL, !hidden);
    assert_int_equal(strstr(text, "later circuits") != NULL, 0);
    assert_non_null(strstr(text, "For instruction only"));
    g_free(text);
  }
  g_object_unref(paper);
  app_test_close(window);
}

/* What a user does in the dialog's own page, without the dialog. */
static GtkWidget *options_of(GtkPrintOperation *operation, ox_print_what what) {
  GtkWidget *page = NULL;
  g_signal_emit_by_name(operation, "create-custom-widget", &page);
  assert_non_null(page);
  g_object_ref_sink(page);
  gtk_drop_down_set_selected(GTK_DROP_DOWN(app_test_find(page, GTK_TYPE_DROP_DOWN)), what);
  return page;
}

static OxHandoutRows *rows_of(GtkPrintOperation *operation) { return ox_print_handout(operation); }

/* Several a page, some of the cases, in an order whose seed stands on every page; paper of another
 * shape takes the sheet whole. */
static void a_handout_is_printed_as_its_page_in_the_dialog_says(void **state) {
  static const char *const papers[] = {GTK_PAPER_NAME_A4, GTK_PAPER_NAME_LETTER, GTK_PAPER_NAME_A5};
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  while (ox_document_case_count(document) < 5)
    ox_document_duplicate_case(document, 0);
  for (int i = 0; i < 6; i++) {
    gboolean key = i >= 3;
    GtkPageSetup *paper = paper_new(papers[i % 3], GTK_PAGE_ORIENTATION_PORTRAIT);
    char *path = app_test_path("handout.pdf");
    GtkPrintOperation *operation =
        ox_print_new(document, ox_window_board(window),
                     &(ox_print_choice){.what = OX_PRINT_CASE, .handout.per_page = 1});
    GtkWidget *page = options_of(operation, key ? OX_PRINT_KEY : OX_PRINT_WORKSHEET);
    OxHandoutRows *rows = rows_of(operation);
    gtk_drop_down_set_selected(GTK_DROP_DOWN(ox_handout_rows_input(rows, "per-page")), 1);
    gtk_drop_down_set_selected(GTK_DROP_DOWN(ox_handout_rows_input(rows, "order")), 1);
    gtk_check_button_set_active(GTK_CHECK_BUTTON(ox_handout_rows_case(rows, 1)), FALSE);
    gtk_check_button_set_active(GTK_CHECK_BUTTON(ox_handout_rows_case(rows, 4)), FALSE);
    g_signal_emit_by_name(operation, "custom-widget-apply", page);
    assert_int_equal(run_into(operation, window, paper, path), GTK_PRINT_OPERATION_RESULT_APPLY);
    size_t wanted = ox_document_case_count(document) - 2;
    char *text = run("pdftotext", "-layout", path);
    char *holds = g_strdup_printf("%zu holds, order from seed 0", wanted);
    char *pages = g_strdup_printf("Page 1 of %zu", (wanted + 1) / 2);
    if (!strstr(text, holds) || !strstr(text, pages)) fail_msg("%s", text);
    assert_int_equal(strstr(text, "Answer key") != NULL, key);
    assert_int_equal(strstr(text, "Worksheet") != NULL, !key);
    assert_non_null(strstr(text, "For instruction only"));
    assert_int_equal(ox_print_choice_of(operation).handout.per_page, 2);
    g_free(pages);
    g_free(holds);
    g_free(text);
    g_object_unref(operation);
    g_object_unref(page);
    g_object_unref(paper);
    g_free(path);
  }
  app_test_close(window);
}

static void a_handout_of_no_case_is_not_printed_but_explained(void **state) {
  OxWindow *window = app_test_window(NULL);
  ox_document_duplicate_case(ox_window_document(window), 0);
  GtkPageSetup *paper = paper_new(GTK_PAPER_NAME_A4, GTK_PAGE_ORIENTATION_PORTRAIT);
  char *path = app_test_path("nothing.pdf");
  GtkPrintOperation *operation =
      ox_print_new(ox_window_document(window), ox_window_board(window),
                   &(ox_print_choice){.what = OX_PRINT_CASE, .handout.per_page = 1});
  GtkWidget *page = options_of(operation, OX_PRINT_WORKSHEET);
  g_signal_emit_by_name(ox_handout_rows_input(rows_of(operation), "none"), "clicked");
  g_signal_emit_by_name(operation, "custom-widget-apply", page);
  assert_int_equal(run_into(operation, window, paper, path), GTK_PRINT_OPERATION_RESULT_CANCEL);
  assert_non_null(ox_print_refusal(operation));
  g_object_unref(operation);
  g_object_unref(page);
  g_object_unref(paper);
  g_free(path);
  app_test_close(window);
}

/* A hidden answer is not printed: what is asked for as a key comes as a worksheet. */
static void a_key_is_not_printed_while_the_answer_is_hidden(void **state) {
  OxWindow *window = app_test_window(NULL);
  GtkPageSetup *paper = paper_new(GTK_PAPER_NAME_A4, GTK_PAGE_ORIENTATION_PORTRAIT);
  ox_prediction_set_state(ox_window_prediction(window), OX_PREDICTION_ASKED);
  app_test_spin_ms(50);
  char *text =
      printed_text(window, (ox_print_choice){.what = OX_PRINT_KEY, .handout.per_page = 2}, paper);
  assert_null(strstr(text, "Answer key"));
  assert_non_null(strstr(text, "Worksheet"));
  g_free(text);
  g_object_unref(paper);
  app_test_close(window);
}

static void paper_and_choice_are_remembered(void **state) {
  char *path = app_test_path("print-settings");
  OxSettings *settings = ox_settings_new(path);
  GtkPageSetup *first = ox_print_paper_recall(settings);
  assert_int_equal(gtk_page_setup_get_orientation(first), GTK_PAGE_ORIENTATION_LANDSCAPE);
  g_object_unref(first);
  GtkPageSetup *paper = paper_new(GTK_PAPER_NAME_A5, GTK_PAGE_ORIENTATION_PORTRAIT);
  ox_print_choice choice = {.what = OX_PRINT_MOMENTS};
  ox_print_paper_remember(paper, settings);
  ox_print_choice_remember(&choice, settings);
  g_object_unref(settings);
  settings = ox_settings_new(path);
  GtkPageSetup *back = ox_print_paper_recall(settings);
  assert_string_equal(gtk_paper_size_get_name(gtk_page_setup_get_paper_size(back)),
                      GTK_PAPER_NAME_A5);
  assert_int_equal(gtk_page_setup_get_orientation(back), GTK_PAGE_ORIENTATION_PORTRAIT);
  assert_int_equal(ox_print_choice_recall(settings).what, OX_PRINT_MOMENTS);
  assert_false(ox_print_choice_recall(settings).pen_marks);
  /* What is no paper is the usual one. */
  ox_settings_set_word(settings, "print-paper", "no_such_1x1mm");
  GtkPageSetup *usual = ox_print_paper_recall(settings);
  assert_true(gtk_page_setup_get_paper_width(usual, GTK_UNIT_MM) > 100);
  g_object_unref(usual);
  g_object_unref(back);
  g_object_unref(paper);
  g_object_unref(settings);
  g_free(path);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_page_has_the_size_of_its_paper),
      cmocka_unit_test(a_page_says_what_it_is_and_carries_the_caution),
      cmocka_unit_test(all_cases_have_a_page_each_in_their_order),
      cmocka_unit_test(key_moments_are_printed_unless_the_answer_is_hidden),
      cmocka_unit_test(a_handout_is_printed_as_its_page_in_the_dialog_says),
      cmocka_unit_test(a_handout_of_no_case_is_not_printed_but_explained),
      cmocka_unit_test(a_key_is_not_printed_while_the_answer_is_hidden),
      cmocka_unit_test(paper_and_choice_are_remembered),
  };
  return cmocka_run_group_tests_name("print", tests, app_test_init, app_test_clean);
}
