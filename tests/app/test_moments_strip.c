/* The strip of key moments in the real window: filled when it is shown, followed by the flight, and
 * every tile goes to its moment. */
#include "app_test.h"

static void toggle(OxWindow *window) {
  g_action_group_activate_action(G_ACTION_GROUP(window), "moments", NULL);
  app_test_spin_ms(150);
}

static void it_is_hidden_until_asked_for_and_costs_nothing(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxMomentsStrip *strip = ox_window_moments(window);
  ox_document_select(ox_window_document(window), 2);
  ox_player_seek(ox_window_player(window), 300);
  assert_false(gtk_widget_get_visible(GTK_WIDGET(strip)));
  assert_int_equal(ox_moments_strip_fill_count(strip), 0);
  toggle(window);
  assert_true(gtk_widget_get_visible(GTK_WIDGET(strip)));
  assert_int_equal(ox_moments_strip_fill_count(strip), 1);
  assert_true(ox_moments_strip_count(strip) >= 5);
  toggle(window);
  assert_int_equal(ox_moments_strip_count(strip), 0);
  app_test_close(window);
}

static void each_tile_goes_to_its_moment_and_is_marked(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxMomentsStrip *strip = ox_window_moments(window);
  OxPlayer *player = ox_window_player(window);
  toggle(window);
  size_t count = ox_moments_strip_count(strip);
  assert_int_equal(ox_moments_strip_current(strip), -1); /* on the arrival */
  for (size_t i = 0; i + 1 < count; i++) { /* the last belongs to the next circuit as well */
    double t_s = ox_moments_strip_moments(strip)->moment[i].t_s;
    GtkWidget *tile = ox_moments_strip_tile(strip, i);
    assert_true(gtk_widget_get_focusable(tile));
    g_signal_emit_by_name(tile, "clicked");
    assert_close(ox_player_time_s(player), t_s, 0, "where the tile goes");
    assert_int_equal(ox_moments_strip_current(strip), i);
    assert_true(gtk_widget_has_css_class(tile, "current"));
  }
  app_test_close(window);
}

static void it_follows_the_circuit_and_the_case_and_is_filled_only_then(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxMomentsStrip *strip = ox_window_moments(window);
  OxPlayer *player = ox_window_player(window);
  OxDocument *document = ox_window_document(window);
  toggle(window);
  guint fills = ox_moments_strip_fill_count(strip);
  for (int t_s = -60; t_s < 200; t_s += 5) ox_player_seek(player, t_s);
  assert_int_equal(ox_moments_strip_fill_count(strip), fills);
  const ox_flight *flight = ox_document_flight(document);
  ox_player_seek(player, flight->circuits[1].fix_t_s + 1);
  assert_int_equal(ox_moments_strip_fill_count(strip), fills + 1);
  assert_int_equal(ox_moments_strip_moments(strip)->moment[0].circuit, 2);
  for (size_t i = 0; i < ox_document_case_count(document); i++) {
    ox_document_select(document, i);
    app_test_spin_ms(40);
    assert_true(ox_moments_strip_count(strip) >= 1);
  }
  app_test_close(window);
}

static void its_words_are_whole_for_a_screen_reader(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxMomentsStrip *strip = ox_window_moments(window);
  toggle(window);
  for (size_t i = 0; i < ox_moments_strip_count(strip); i++) {
    const ox_moment *m = &ox_moments_strip_moments(strip)->moment[i];
    char *words = g_strdup_printf("%s, %s. %s.", m->what, m->figures, m->act);
    GtkWidget *tile = ox_moments_strip_tile(strip, i);
    gtk_test_accessible_assert_property(GTK_ACCESSIBLE(tile), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                        words);
    assert_string_equal(gtk_widget_get_tooltip_text(tile), words);
    g_free(words);
  }
  app_test_close(window);
}

static void with_the_strip_the_window_still_fits_in_1024_by_600(void **state) {
  OxWindow *window = app_test_window(NULL);
  int width, height;
  toggle(window);
  g_action_group_activate_action(G_ACTION_GROUP(window), "working", NULL);
  app_test_spin_ms(200);
  gtk_widget_measure(GTK_WIDGET(window), GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL, NULL);
  gtk_widget_measure(GTK_WIDGET(window), GTK_ORIENTATION_VERTICAL, 1024, &height, NULL, NULL,
                     NULL);
  print_message("# the window needs %d x %d\n", width, height);
  assert_true(width <= 1024);
  assert_true(height <= 600);
  app_test_close(window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(it_is_hidden_until_asked_for_and_costs_nothing),
      cmocka_unit_test(each_tile_goes_to_its_moment_and_is_marked),
      cmocka_unit_test(it_follows_the_circuit_and_the_case_and_is_filled_only_then),
      cmocka_unit_test(its_words_are_whole_for_a_screen_reader),
      cmocka_unit_test(with_the_strip_the_window_still_fits_in_1024_by_600),
  };
  return cmocka_run_group_tests_name("moments strip", tests, app_test_init, NULL);
}
