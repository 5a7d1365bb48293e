/* Predict, then see, on a display: nothing tells the answer before it is given, and everything is
 * there after. */
#include "app_test.h"

#include "ox_number_field.h"

static void act(OxWindow *window, const char *action) {
  g_action_group_activate_action(G_ACTION_GROUP(window), action, NULL);
  app_test_spin_ms(60);
}

static gboolean enabled(OxWindow *window, const char *action) {
  return g_action_group_get_action_enabled(G_ACTION_GROUP(window), action);
}

static gboolean is_on(OxWindow *window, const char *action) {
  GVariant *state = g_action_group_get_action_state(G_ACTION_GROUP(window), action);
  gboolean on = g_variant_get_boolean(state);
  g_variant_unref(state);
  return on;
}

static void type(OxWindow *window, const char *field, const char *text) {
  GtkWidget *editor = ox_answer_panel_field(ox_window_answers(window), field);
  gtk_editable_set_text(GTK_EDITABLE(ox_number_field_get_text(OX_NUMBER_FIELD(editor))), text);
  app_test_spin_ms(30);
}

static void choose(OxWindow *window, ox_entry_kind kind) {
  GtkWidget *button = ox_answer_panel_entry(ox_window_answers(window), kind);
  gtk_toggle_button_set_active(GTK_TOGGLE_BUTTON(button), TRUE);
  app_test_spin_ms(30);
}

static gboolean seen(gpointer widget) { return gtk_widget_get_mapped(widget); }

static void assert_parts_seen(OxWindow *window, gboolean want) {
  app_test_spin_ms(100);
  assert_int_equal(seen(ox_window_transport(window)), want);
  assert_int_equal(seen(ox_window_working(window)), want && is_on(window, "working"));
  assert_int_equal(enabled(window, "working"), want);
}

static gboolean description_tells(OxWindow *window, const char *part) {
  char *mismatch = gtk_test_accessible_check_property(
      GTK_ACCESSIBLE(ox_window_board(window)), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, "");
  gboolean tells = mismatch && strstr(mismatch, part);
  g_free(mismatch);
  return tells;
}

static void sketch(OxWindow *window) {
  act(window, "pen");
  OxPen *pen = ox_window_pen(window);
  ox_pen_press(pen, 150, 200);
  for (int i = 1; i < 20; i++) ox_pen_move(pen, 150 + 8 * i, 200 + 2 * i);
  ox_pen_release(pen);
}

static gboolean board_shows_sketch(OxWindow *window) {
  ox_scene scene = ox_board_scene(ox_window_board(window));
  return scene.path_count > 0 && scene.paths[scene.path_count - 1].kind == OX_PATH_SKETCH;
}

static void from_the_question_to_the_comparison(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxPrediction *prediction = ox_window_prediction(window);
  OxAnswerPanel *answers = ox_window_answers(window);
  OxDocument *document = ox_window_document(window);
  gboolean working = is_on(window, "working");
  assert_parts_seen(window, TRUE);
  assert_false(seen(answers));
  assert_true(description_tells(window, "entry"));

  act(window, "predict");
  assert_true(is_on(window, "predict"));
  assert_parts_seen(window, FALSE);
  assert_true(seen(answers));
  assert_false(description_tells(window, "entry"));
  assert_true(description_tells(window, "hidden"));
  double x, y;
  assert_false(ox_board_handle_place(ox_window_board(window), OX_HANDLE_OUTBOUND, &x, &y));
  assert_true(ox_board_handle_place(ox_window_board(window), OX_HANDLE_INBOUND, &x, &y));

  choose(window, OX_ENTRY_TEARDROP);
  choose(window, OX_ENTRY_DIRECT); /* thought again */
  type(window, "heading", "75");
  type(window, "time", "1:05");
  sketch(window);
  ox_guess guess = ox_prediction_guess(prediction);
  assert_int_equal(guess.entry, OX_ENTRY_DIRECT);
  assert_close(guess.outbound_heading_deg, 75, 0, "heading");
  assert_close(guess.outbound_s, 65, 0, "time");
  assert_true(isnan(guess.first_heading_deg));
  assert_int_equal(ox_prediction_sketch(prediction)->stroke_count, 1);
  assert_null(ox_document_ink(document));
  assert_int_equal(ox_answer_panel_result_count(answers), 0);
  assert_true(board_shows_sketch(window));
  assert_true(ox_board_scene(ox_window_board(window)).hide_answer);

  act(window, "predict-fly");
  assert_true(ox_player_playing(ox_window_player(window)));
  assert_parts_seen(window, TRUE);
  assert_false(gtk_widget_get_visible(GTK_WIDGET(ox_window_pen(window))));
  assert_int_equal(ox_answer_panel_result_count(answers), 4);
  assert_non_null(app_test_find_label(
      GTK_WIDGET(answers), ox_prediction_report(prediction)->rows[1].sentence));
  assert_non_null(app_test_find_label(GTK_WIDGET(answers), ox_guess_tolerances()));
  assert_true(description_tells(window, "entry"));
  assert_true(board_shows_sketch(window)); /* both stay in view */
  assert_false(ox_board_scene(ox_window_board(window)).hide_answer);

  act(window, "predict-again");
  assert_parts_seen(window, FALSE);
  assert_int_equal(ox_prediction_guess(prediction).entry, OX_ENTRY_NONE);
  assert_true(ox_ink_is_empty(ox_prediction_sketch(prediction)));
  assert_false(ox_player_playing(ox_window_player(window)));
  act(window, "predict");
  assert_false(is_on(window, "predict"));
  assert_parts_seen(window, TRUE);
  assert_false(seen(answers));
  assert_int_equal(is_on(window, "working"), working);
  assert_false(ox_document_modified(document));
  app_test_close(window);
}

/* What the instructor drew before is not on the board the student answers on, and is not lost. */
static void the_answer_begins_on_a_clean_board(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  OxDocument *document = ox_window_document(window);
  sketch(window); /* no answer is asked for: this is ink of the lesson */
  act(window, "pen");
  assert_non_null(ox_document_ink(document));
  assert_non_null(ox_board_scene(board).ink);
  act(window, "predict");
  assert_null(ox_board_scene(board).ink);
  assert_non_null(ox_document_ink(document));
  sketch(window);
  assert_true(board_shows_sketch(window));
  assert_int_equal(ox_document_ink(document)->stroke_count, 1);
  act(window, "predict-fly");
  assert_non_null(ox_board_scene(board).ink);
  act(window, "predict-again");
  assert_null(ox_board_scene(board).ink);
  act(window, "predict");
  assert_non_null(ox_board_scene(board).ink);
  app_test_close(window);
}

static void a_stroke_of_the_sketch_is_taken_back(void **state) {
  OxWindow *window = app_test_window(NULL);
  act(window, "predict");
  assert_false(enabled(window, "predict-back"));
  sketch(window);
  assert_true(enabled(window, "predict-back"));
  act(window, "predict-back");
  assert_true(ox_ink_is_empty(ox_prediction_sketch(ox_window_prediction(window))));
  assert_false(enabled(window, "predict-back"));
  app_test_close(window);
}

static void nothing_noted_is_no_fault(void **state) {
  OxWindow *window = app_test_window(NULL);
  act(window, "predict");
  type(window, "heading", "many");
  act(window, "predict-fly");
  assert_int_equal(ox_answer_panel_result_count(ox_window_answers(window)), 0);
  assert_non_null(app_test_find_label(GTK_WIDGET(ox_window_answers(window)),
                                      "Nothing was noted this time; the flight is shown."));
  app_test_close(window);
}

static void the_next_case_is_asked_at_once(void **state) {
  OxWindow *window = app_test_window(NULL);
  act(window, "predict");
  choose(window, OX_ENTRY_PARALLEL);
  act(window, "predict-fly");
  act(window, "next-case");
  assert_parts_seen(window, FALSE);
  assert_int_equal(ox_prediction_guess(ox_window_prediction(window)).entry, OX_ENTRY_NONE);
  app_test_close(window);
}

/* Of a widget and all below it: labels, tooltips, and the lines of lists. */
static gboolean anything_says(GtkWidget *top, const char *part) {
  const char *tip = gtk_widget_get_tooltip_text(top);
  if (tip && strstr(tip, part)) return TRUE;
  if (GTK_IS_LABEL(top) && gtk_widget_get_mapped(top) &&
      strstr(gtk_label_get_text(GTK_LABEL(top)), part))
    return TRUE;
  if (GTK_IS_DROP_DOWN(top)) {
    GListModel *model = gtk_drop_down_get_model(GTK_DROP_DOWN(top));
    for (guint i = 0; GTK_IS_STRING_LIST(model) && i < g_list_model_get_n_items(model); i++)
      if (gtk_widget_get_mapped(top) &&
          strstr(gtk_string_list_get_string(GTK_STRING_LIST(model), i), part))
        return TRUE;
  }
  for (GtkWidget *at = gtk_widget_get_first_child(top); at; at = gtk_widget_get_next_sibling(at))
    if (anything_says(at, part)) return TRUE;
  return FALSE;
}

static void assert_called(OxWindow *window, const char *name, gboolean named) {
  const ox_lesson *lesson = ox_document_lesson(ox_window_document(window));
  app_test_spin_ms(100);
  assert_string_equal(ox_board_scene(ox_window_board(window)).c->name, name);
  for (size_t i = 0; i < lesson->case_count; i++)
    assert_int_equal(anything_says(GTK_WIDGET(window), lesson->cases[i].c.name), named);
  gboolean listed = !named && !is_on(window, "classroom"); /* which has no list */
  assert_int_equal(anything_says(GTK_WIDGET(window), "Case 1"), listed);
  assert_int_equal(ox_document_modified(ox_window_document(window)), FALSE);
}

/* "Calm: a direct entry ..." is no name to ask under. */
static void no_name_tells_the_answer(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  const char *first = ox_document_lesson(document)->cases[0].c.name;
  const char *second = ox_document_lesson(document)->cases[1].c.name;
  assert_non_null(strstr(first, "direct"));
  assert_called(window, first, TRUE);
  act(window, "predict");
  assert_called(window, "Case 1", FALSE);
  assert_string_equal(ox_document_case(document)->name, first);
  act(window, "predict-fly");
  assert_called(window, first, TRUE);
  act(window, "next-case");
  assert_called(window, "Case 2", FALSE);
  act(window, "classroom");
  assert_called(window, "Case 2", FALSE);
  assert_int_equal(ox_document_case_index(document), 1);
  act(window, "predict-fly");
  assert_string_equal(ox_board_scene(ox_window_board(window)).c->name, second);
  act(window, "classroom");
  act(window, "predict");
  assert_called(window, second, TRUE);
  app_test_close(window);
}

static void it_fits_in_1024_by_600(void **state) {
  OxWindow *window = app_test_window(NULL);
  int width, height;
  act(window, "predict");
  for (int round = 0; round < 2; round++) {
    if (round == 1) {
      choose(window, OX_ENTRY_TEARDROP);
      type(window, "first", "5");
      type(window, "heading", "75");
      type(window, "time", "65");
      sketch(window);
      act(window, "predict-fly");
      if (is_on(window, "working")) act(window, "working");
    }
    app_test_spin_ms(200);
    gtk_widget_measure(GTK_WIDGET(window), GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL,
                       NULL);
    gtk_widget_measure(GTK_WIDGET(window), GTK_ORIENTATION_VERTICAL, 1024, &height, NULL, NULL,
                       NULL);
    assert_true(width <= 1024);
    assert_true(height <= 600);
  }
  assert_int_equal(ox_answer_panel_result_count(ox_window_answers(window)), 5);
  app_test_close(window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(from_the_question_to_the_comparison),
      cmocka_unit_test(the_answer_begins_on_a_clean_board),
      cmocka_unit_test(a_stroke_of_the_sketch_is_taken_back),
      cmocka_unit_test(nothing_noted_is_no_fault),
      cmocka_unit_test(the_next_case_is_asked_at_once),
      cmocka_unit_test(no_name_tells_the_answer),
      cmocka_unit_test(it_fits_in_1024_by_600),
  };
  return cmocka_run_group_tests(tests, app_test_init, NULL);
}
