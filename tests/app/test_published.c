/* Published holds as a user finds and opens them. The records are those of tests/data/navdata. */
#include "app_test.h"

#include "ox_application.h"
#include "ox_document_places.h"
#include "ox_message_bar.h"
#include "ox_published_list.h"

static char *excerpt(void) {
  return g_build_filename(g_getenv("OXBOW_TEST_DATA"), "navdata", "cifp-excerpt.txt", NULL);
}

typedef struct {
  OxWindow *window;
  OxPublished *published;
} page;

/* The list as the menu opens it. */
static page open_list(GtkApplication *application) {
  page p = {.window = app_test_window(application)};
  g_action_group_activate_action(G_ACTION_GROUP(p.window), "published", NULL);
  p.published = ox_window_published(p.window);
  assert_non_null(p.published);
  app_test_spin_ms(50);
  return p;
}

static page open_file(void) {
  page p = open_list(NULL);
  char *path = excerpt();
  assert_true(ox_published_open(p.published, path));
  g_free(path);
  return p;
}

static guint shown(page *p) { return g_list_model_get_n_items(ox_published_rows(p->published)); }

static void cell(page *p, guint row, ox_published_column column, char *buf, size_t bytes) {
  OxPublishedRow *item = g_list_model_get_item(ox_published_rows(p->published), row);
  assert_non_null(item);
  ox_published_row_text(item, column, buf, bytes);
  g_object_unref(item);
}

/* The search waits a little while somebody types; its Enter does not. */
static void search(page *p, const char *words) {
  gtk_editable_set_text(ox_published_search(p->published), words);
  g_signal_emit_by_name(ox_published_search(p->published), "search-changed");
}

static void without_a_file_the_list_says_what_to_do(void **state) {
  page p = open_list(NULL);
  assert_int_equal(shown(&p), 0);
  assert_null(ox_published_data(p.published));
  assert_non_null(app_test_find_button(GTK_WIDGET(p.published), "_Open File…"));
  assert_false(ox_published_open(p.published, "/nowhere/records.txt"));
  assert_non_null(strstr(ox_published_sentence(p.published), "records.txt could not be opened"));
  app_test_close(p.window);
}

/* The figures are read out of the records by eye; README.md in the folder says where they are
 * from. */
static void every_hold_stands_in_a_row_with_its_figures(void **state) {
  page p = open_file();
  const ox_navdata_report *report = ox_navdata_report_of(ox_published_data(p.published));
  char text[80];
  assert_true(report->holds > 0);
  assert_int_equal(shown(&p), report->holds);
  g_snprintf(text, sizeof text, "%zu of %zu holds in cifp-excerpt.txt", report->holds,
             report->holds);
  assert_non_null(strstr(ox_published_words(p.published), text));
  for (guint i = 0; i < shown(&p); i++) {
    ox_published_hold hold;
    assert_int_equal(ox_navdata_hold(ox_published_data(p.published), i, &hold), OX_OK);
    cell(&p, i, OX_PUBLISHED_FIX, text, sizeof text);
    assert_string_equal(text, hold.fix.ident);
    cell(&p, i, OX_PUBLISHED_COURSE, text, sizeof text);
    assert_true(g_str_has_suffix(text, hold.inbound_north == OX_NORTH_TRUE ? " T" : " M"));
    assert_angle_close(g_ascii_strtod(text, NULL), hold.inbound_deg, 0.051, "course");
    cell(&p, i, OX_PUBLISHED_TURNS, text, sizeof text);
    assert_true(g_str_has_prefix(text, hold.turns == OX_TURNS_LEFT ? "left" : "right"));
  }
  app_test_close(p.window);
}

static void what_is_left_out_is_said_with_the_reason(void **state) {
  page p = open_file();
  const ox_navdata_report *report = ox_navdata_report_of(ox_published_data(p.published));
  for (int i = 0; i < OX_SKIP_COUNT; i++)
    assert_int_equal(strstr(ox_published_words(p.published), ox_skip_text((ox_skip)i)) != NULL,
                     report->skipped[i] > 0);
  app_test_close(p.window);
}

/* By the records: JAPUT is the fix of two holds, IGN that of one and the transition of another. */
static void words_are_searched_in_fix_airport_and_procedure(void **state) {
  static const struct {
    const char *words;
    guint count;
  } rows[] = {{"japut", 2}, {"IGN", 2}, {"kswf", 2}, {"  KSWF   i09 sw ", 1}, {"s06", 2},
              {"kalb cam", 1}, {"1b1 ign", 0}, {"QQQQQ", 0}, {"   ", 12}, {"", 12}};
  page p = open_file();
  assert_int_equal(shown(&p), 12);
  for (size_t i = 0; i < G_N_ELEMENTS(rows); i++) {
    char text[40];
    search(&p, rows[i].words);
    if (shown(&p) != rows[i].count) print_error("# \"%s\"\n", rows[i].words);
    assert_int_equal(shown(&p), rows[i].count);
    g_snprintf(text, sizeof text, "%u of 12 holds in ", rows[i].count);
    assert_true(g_str_has_prefix(ox_published_words(p.published), text));
  }
  app_test_close(p.window);
}

static void enter_opens_the_hold_as_one_step(void **state) {
  page p = open_file();
  OxDocument *document = ox_window_document(p.window);
  size_t cases = ox_document_case_count(document), points = ox_document_points(document)->count;
  guint rows = shown(&p);
  for (guint i = 0; i < rows; i++) {
    ox_published_hold hold;
    ox_published_case made;
    char remark[400];
    ox_navdata_hold(ox_published_data(p.published), i, &hold);
    ox_status status = ox_navdata_case(ox_published_data(p.published), i, &made, remark,
                                       sizeof remark);
    g_signal_emit_by_name(ox_published_view(p.published), "activate", i);
    assert_int_equal(ox_document_case_count(document), cases + 1);
    assert_string_equal(ox_document_undo_name(document), "Published Hold");
    assert_string_equal(ox_document_case(document)->hold.fix, hold.fix.ident);
    assert_angle_close(ox_document_case(document)->hold.inbound_deg, made.c.hold.inbound_deg, 1e-9,
                       "course");
    assert_false(gtk_widget_get_visible(GTK_WIDGET(p.published)));
    assert_int_equal(ox_fix_has_place(ox_document_points(document), ox_document_fix(document),
                                      ox_document_case(document)),
                     made.placed);
    GtkWidget *bar = ox_message_bar_find(ox_window_messages(p.window), "published");
    assert_int_equal(bar != NULL, status == OX_ADVISORY);
    if (bar) assert_string_equal(ox_message_bar_text(bar), remark);
    ox_document_undo(document);
    assert_int_equal(ox_document_case_count(document), cases);
    assert_int_equal(ox_document_points(document)->count, points);
  }
  assert_false(ox_document_modified(document));
  app_test_close(p.window);
}

static void the_search_itself_opens_what_it_found(void **state) {
  page p = open_file();
  gtk_editable_set_text(ox_published_search(p.published), "colbe");
  g_signal_emit_by_name(ox_published_search(p.published), "activate");
  assert_string_equal(ox_document_case(ox_window_document(p.window))->hold.fix, "COLBE");
  search(&p, "QQQQQ");
  size_t cases = ox_document_case_count(ox_window_document(p.window));
  g_signal_emit_by_name(ox_published_search(p.published), "activate");
  assert_int_equal(ox_document_case_count(ox_window_document(p.window)), cases);
  app_test_close(p.window);
}

/* Records without one hold: nothing to open, and the line says what was in it. */
static void a_file_of_something_else_opens_and_says_so(void **state) {
  page p = open_list(NULL);
  char *path = app_test_path("letter.txt");
  assert_true(g_file_set_contents(path, "Dear Sir,\n\n\x01\xff\n", -1, NULL));
  assert_true(ox_published_open(p.published, path));
  assert_int_equal(shown(&p), 0);
  assert_non_null(strstr(ox_published_words(p.published), "0 of 0 holds in letter.txt"));
  assert_non_null(strstr(ox_published_words(p.published), "Left out: "));
  g_free(path);
  app_test_close(p.window);
}

/* Twelve thousand: a row is only read when it is shown. */
static void a_long_file_is_listed_and_searched(void **state) {
  page p = open_list(NULL);
  char *from = excerpt(), *path = app_test_path("long.txt"), *text;
  gsize length;
  assert_true(g_file_get_contents(from, &text, &length, NULL));
  GString *whole = g_string_new(NULL);
  for (int i = 0; i < 900; i++) g_string_append_len(whole, text, (gssize)length);
  assert_true(g_file_set_contents(path, whole->str, (gssize)whole->len, NULL));
  assert_true(ox_published_open(p.published, path));
  assert_true(shown(&p) >= 5000);
  assert_int_equal(shown(&p), ox_navdata_hold_count(ox_published_data(p.published)));
  app_test_spin_ms(100);
  search(&p, "QQQQQ");
  assert_int_equal(shown(&p), 0);
  g_string_free(whole, TRUE);
  g_free(text);
  g_free(from);
  g_free(path);
  app_test_close(p.window);
}

static void the_file_is_remembered(void **state) {
  char *place = app_test_path("settings"), *path = excerpt();
  for (int round = 0; round < 2; round++) {
    OxSettings *settings = ox_settings_new(place);
    OxPublished *published = ox_published_new(NULL, settings);
    ox_published_open_remembered(published);
    assert_int_equal(ox_published_data(published) != NULL, round == 1);
    assert_true(ox_published_open(published, path));
    gtk_window_destroy(GTK_WINDOW(published));
    g_object_unref(settings);
  }
  g_free(place);
  g_free(path);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(without_a_file_the_list_says_what_to_do),
      cmocka_unit_test(every_hold_stands_in_a_row_with_its_figures),
      cmocka_unit_test(what_is_left_out_is_said_with_the_reason),
      cmocka_unit_test(words_are_searched_in_fix_airport_and_procedure),
      cmocka_unit_test(enter_opens_the_hold_as_one_step),
      cmocka_unit_test(the_search_itself_opens_what_it_found),
      cmocka_unit_test(a_file_of_something_else_opens_and_says_so),
      cmocka_unit_test(a_long_file_is_listed_and_searched),
      cmocka_unit_test(the_file_is_remembered),
  };
  return cmocka_run_group_tests_name("published", tests, app_test_init, app_test_clean);
}
