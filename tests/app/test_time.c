/* The time line and its company in the real window: names that fit, scrubbing, stops and their
 * reason, figures, and nothing drawn that did not change. */
#include "app_test.h"

static OxTimeLine *line_of(OxWindow *window) {
  return ox_transport_time_line(ox_window_transport(window));
}

static void names_stand_whole_in_their_stretches_and_apart(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxTimeLine *line = line_of(window);
  OxDocument *document = ox_window_document(window);
  size_t seen = 0;
  for (size_t c = 0; c < ox_document_case_count(document); c++) {
    ox_document_select(document, c);
    app_test_spin_ms(80);
    size_t count = ox_time_line_name_count(line);
    assert_true(count >= 3);
    for (size_t i = 0; i < count; i++) {
      ox_time_line_name name = ox_time_line_get_name(line, i);
      if (name.x < name.from_x || name.x + name.width > name.to_x)
        print_error("%s from %g, %g wide, in %g to %g\n", name.text, name.x, name.width,
                    name.from_x, name.to_x);
      assert_true(name.x >= name.from_x && name.x + name.width <= name.to_x);
      seen++;
    }
  }
  assert_true(seen > 50);
  app_test_close(window);
}

static void pointing_at_the_line_tells_stretch_or_event(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxTimeLine *line = line_of(window);
  const ox_flight *flight = ox_document_flight(ox_window_document(window));
  char *words = ox_time_line_words_at(line, ox_time_line_x(line, -60));
  assert_true(g_str_has_prefix(words, "arrival, -"));
  g_free(words);
  words = ox_time_line_words_at(line, ox_time_line_x(line, 0));
  assert_string_equal(words, "over the fix, 0:00");
  g_free(words);
  double middle_s = 0.5 * (flight->circuits[1].fix_t_s + flight->circuits[1].end_t_s);
  for (double x = ox_time_line_x(line, middle_s); x < ox_time_line_x(line, middle_s) + 9; x++) {
    words = ox_time_line_words_at(line, x);
    assert_true(strlen(words) > 4);
    g_free(words);
  }
  assert_close(ox_time_line_time_s(line, ox_time_line_x(line, 100)), 100, 1e-6, "there and back");
  app_test_close(window);
}

/* Hands are played by the gesture's own signals: what GTK sends for a press, a drag, a release. */
static GtkGesture *drag_of(GtkWidget *widget) {
  GListModel *controllers = gtk_widget_observe_controllers(widget);
  GtkGesture *found = NULL;
  for (guint i = 0; i < g_list_model_get_n_items(controllers); i++) {
    GObject *controller = g_list_model_get_item(controllers, i);
    if (GTK_IS_GESTURE_DRAG(controller)) found = GTK_GESTURE(controller);
    g_object_unref(controller);
  }
  g_object_unref(controllers);
  return found;
}

static void scrubbing_moves_the_flight_restores_playing_and_leaves_no_step(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxTimeLine *line = line_of(window);
  OxPlayer *player = ox_window_player(window);
  GtkGesture *drag = drag_of(GTK_WIDGET(line));
  assert_non_null(drag);
  for (int playing = 0; playing < 2; playing++) {
    ox_player_set_playing(player, playing);
    g_signal_emit_by_name(drag, "drag-begin", ox_time_line_x(line, 50), 10.0);
    assert_false(ox_player_playing(player));
    assert_close(ox_player_time_s(player), 50, 1e-6, "pressed");
    g_signal_emit_by_name(drag, "end", NULL);
    assert_int_equal(ox_player_playing(player), playing);
    ox_player_set_playing(player, FALSE);
  }
  assert_ptr_equal(gtk_window_get_focus(GTK_WINDOW(window)), line);
  assert_false(ox_document_modified(ox_window_document(window)));
  assert_false(ox_document_can_undo(ox_window_document(window)));
  app_test_close(window);
}

static void only_what_changed_is_drawn_again(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxTimeLine *line = line_of(window);
  OxFigureRow *figures = ox_transport_figures(ox_window_transport(window));
  OxPlayer *player = ox_window_player(window);
  ox_player_seek(player, 300);
  app_test_spin_ms(150);
  ox_time_line_counts before = ox_time_line_get_counts(line);
  guint figures_before = ox_figure_row_draw_count(figures);
  for (int i = 0; i < 50; i++) { /* far less than half a pixel in all */
    ox_player_seek(player, 300 + 0.0001 * i);
    app_test_spin_ms(4);
  }
  app_test_spin_ms(100);
  assert_int_equal(ox_time_line_get_counts(line).position, before.position);
  assert_int_equal(ox_time_line_get_counts(line).stretches, before.stretches);
  assert_int_equal(ox_figure_row_draw_count(figures), figures_before);
  ox_player_seek(player, 400);
  app_test_spin_ms(150);
  assert_true(ox_time_line_get_counts(line).position > before.position);
  assert_int_equal(ox_time_line_get_counts(line).stretches, before.stretches);
  assert_true(ox_figure_row_draw_count(figures) > figures_before);
  app_test_close(window);
}

static void it_is_a_slider_that_tells_its_value_in_words(void **state) {
  OxWindow *window = app_test_window(NULL);
  GtkAccessible *line = GTK_ACCESSIBLE(line_of(window));
  gtk_test_accessible_assert_role(line, GTK_ACCESSIBLE_ROLE_SLIDER);
  gtk_test_accessible_assert_property(line, GTK_ACCESSIBLE_PROPERTY_LABEL, "Time line");
  ox_player_seek(ox_window_player(window), 90);
  gtk_test_accessible_assert_property(line, GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT,
                                      ox_transport_instant(ox_window_transport(window)));
  assert_true(gtk_widget_get_focusable(GTK_WIDGET(line)));
  app_test_close(window);
}

static GtkWidget *reason_of(OxWindow *window) {
  return app_test_find_label(GTK_WIDGET(window), "Stopped: abeam the fix, 0:30");
}

/* The first case of the demo is abeam the fix 30 s after it. */
static void it_stops_where_it_was_asked_to_and_says_why(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxPlayer *player = ox_window_player(window);
  GActionGroup *actions = G_ACTION_GROUP(window);
  g_action_group_change_action_state(actions, "stop-abeam", g_variant_new_boolean(TRUE));
  assert_int_equal(ox_transport_stops(ox_window_transport(window)), 1U << OX_EVENT_ABEAM);
  ox_player_seek(player, 20);
  ox_player_set_playing(player, TRUE);
  for (gint64 us = 1000000; ox_player_playing(player) && us < 200000000; us += 16667)
    ox_player_tick(player, us);
  assert_false(ox_player_playing(player));
  assert_close(ox_player_time_s(player), 30, 0.05, "abeam");
  GtkWidget *reason = reason_of(window);
  assert_non_null(reason);
  assert_true(gtk_widget_get_visible(reason));
  gtk_test_accessible_assert_role(GTK_ACCESSIBLE(reason), GTK_ACCESSIBLE_ROLE_ALERT);
  g_action_group_activate_action(actions, "play", NULL); /* the space bar */
  assert_true(ox_player_playing(player));
  assert_false(gtk_widget_get_visible(reason));
  ox_player_set_playing(player, FALSE);
  g_action_group_change_action_state(actions, "stop-abeam", g_variant_new_boolean(FALSE));
  assert_int_equal(ox_transport_stops(ox_window_transport(window)), 0);
  app_test_close(window);
}

static void stops_follow_the_case(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxPlayer *player = ox_window_player(window);
  OxDocument *document = ox_window_document(window);
  g_action_group_change_action_state(G_ACTION_GROUP(window), "stop-fix",
                                     g_variant_new_boolean(TRUE));
  for (size_t i = 0; i < 3; i++) {
    ox_document_select(document, i);
    ox_player_seek(player, 5);
    ox_player_set_playing(player, TRUE);
    for (gint64 us = 1000000; ox_player_playing(player) && us < 900000000; us += 66667)
      ox_player_tick(player, us);
    assert_close(ox_player_time_s(player), ox_document_flight(document)->circuits[0].end_t_s, 0,
                 "the second crossing");
  }
  app_test_close(window);
}

static void the_figures_are_those_of_the_instant(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxFigureRow *figures = ox_transport_figures(ox_window_transport(window));
  ox_player_seek(ox_window_player(window), -10);
  assert_string_equal(ox_figure_row_value(figures, OX_FIGURE_HEADING), "285");
  assert_string_equal(ox_figure_row_value(figures, OX_FIGURE_SINCE_FIX), "-0:10");
  assert_null(ox_figure_row_value(figures, OX_FIGURE_ALTITUDE));
  app_test_close(window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(names_stand_whole_in_their_stretches_and_apart),
      cmocka_unit_test(pointing_at_the_line_tells_stretch_or_event),
      cmocka_unit_test(scrubbing_moves_the_flight_restores_playing_and_leaves_no_step),
      cmocka_unit_test(only_what_changed_is_drawn_again),
      cmocka_unit_test(it_is_a_slider_that_tells_its_value_in_words),
      cmocka_unit_test(it_stops_where_it_was_asked_to_and_says_why),
      cmocka_unit_test(stops_follow_the_case),
      cmocka_unit_test(the_figures_are_those_of_the_instant),
  };
  return cmocka_run_group_tests_name("time", tests, app_test_init, NULL);
}
