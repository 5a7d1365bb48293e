/* Comparing cases: chosen, drawn over or beside, told in a table; and nothing solved twice. */
#include "app_test.h"

#include "ox_case_view.h"
#include "ox_companions.h"
#include "ox_compare_panel.h"

static OxCompanions *companions_of(OxWindow *window) {
  return ox_overlays_companions(ox_window_overlays(window));
}

static OxWindow *comparing(size_t case_index) {
  OxWindow *window = app_test_window(NULL);
  ox_document_select(ox_window_document(window), case_index);
  g_action_group_change_action_state(G_ACTION_GROUP(window), "compare-cases",
                                     g_variant_new_boolean(TRUE));
  app_test_spin_ms(200);
  return window;
}

static OxComparePanel *panel_of(OxWindow *window) {
  GtkWidget *panel = app_test_find(GTK_WIDGET(window), OX_TYPE_COMPARE_PANEL);
  assert_non_null(panel);
  return OX_COMPARE_PANEL(panel);
}

static const char *row_that_begins(OxComparePanel *panel, const char *with) {
  for (guint i = 0; i < ox_compare_panel_row_count(panel); i++)
    if (g_str_has_prefix(ox_compare_panel_row_words(panel, i), with))
      return ox_compare_panel_row_words(panel, i);
  return NULL;
}

/* The second case of the demo has twenty knots across: calm air is another case. */
static void a_change_is_chosen_and_told(void **state) {
  OxWindow *window = comparing(1);
  OxComparePanel *panel = panel_of(window);
  assert_int_equal(ox_compare_panel_row_count(panel), 0);
  gtk_drop_down_set_selected(ox_compare_panel_choice(panel, 0), 1 + OX_VARIANT_CALM);
  app_test_spin_ms(200);
  assert_string_equal(row_that_begins(panel, "Wind:"),
                      "Wind: 330 true at 20 kt; Calm air: calm. Differs.");
  assert_non_null(strstr(row_that_begins(panel, "True airspeed:"), "The same."));
  size_t count;
  const ox_scene_other *others = ox_companions_others(companions_of(window), &count);
  assert_int_equal(count, 1);
  assert_int_equal(others[0].c->wind_count ? others[0].c->wind[0].kt : 0, 0);
  ox_scene scene = ox_board_scene(ox_window_board(window));
  assert_int_equal(scene.other_count, 1); /* over the shown case */
  app_test_close(window);
}

static void a_choice_that_is_no_other_case_says_so(void **state) {
  OxWindow *window = comparing(0); /* calm already */
  OxComparePanel *panel = panel_of(window);
  gtk_drop_down_set_selected(ox_compare_panel_choice(panel, 0), 1 + OX_VARIANT_CALM);
  app_test_spin_ms(100);
  assert_int_equal(ox_compare_panel_row_count(panel), 0);
  assert_non_null(app_test_find_label(GTK_WIDGET(panel),
                                      "What is chosen changes nothing of the case shown."));
  /* It stays chosen: in a case with wind it is there. */
  ox_document_select(ox_window_document(window), 1);
  app_test_spin_ms(100);
  assert_true(ox_compare_panel_row_count(panel) > 0);
  app_test_close(window);
}

static guint case_views(OxWindow *window) {
  guint count = 0;
  GtkWidget *boards = gtk_widget_get_parent(GTK_WIDGET(ox_window_board(window)));
  for (GtkWidget *at = gtk_widget_get_first_child(boards); at;
       at = gtk_widget_get_next_sibling(at))
    if (OX_IS_CASE_VIEW(at)) count++;
  return count;
}

static void two_cases_stand_beside_it_on_one_scale_and_in_step(void **state) {
  OxWindow *window = comparing(1);
  OxCompanions *companions = companions_of(window);
  ox_companions_choose(companions, 0, (ox_companion){OX_COMPANION_CASE, 2});
  ox_companions_choose(companions, 1, (ox_companion){OX_COMPANION_VARIANT, OX_VARIANT_CALM});
  assert_int_equal(case_views(window), 0);
  ox_companions_set_beside(companions, TRUE);
  app_test_spin_ms(300);
  assert_int_equal(case_views(window), 2);
  ox_scene scene = ox_board_scene(ox_window_board(window));
  assert_int_equal(scene.other_count, 0);
  assert_non_null(scene.fit);
  /* One scale: the shared one. */
  OxCaseView *view =
      OX_CASE_VIEW(gtk_widget_get_next_sibling(GTK_WIDGET(ox_window_board(window))));
  ox_case_view_counts before = ox_case_view_get_counts(view);
  assert_true(before.layouts >= 1);
  ox_player_seek(ox_window_player(window), 42);
  app_test_spin_ms(200);
  ox_case_view_counts after = ox_case_view_get_counts(view);
  assert_true(after.moving > before.moving); /* in step … */
  assert_int_equal(after.layouts, before.layouts); /* … and not laid out again */
  ox_companions_set_beside(companions, FALSE);
  app_test_spin_ms(100);
  assert_int_equal(case_views(window), 0);
  assert_null(ox_board_scene(ox_window_board(window)).fit);
  app_test_close(window);
}

/* As gestures tell of it. */
static void point_at(GtkWidget *picture, double x, double y) {
  GListModel *controllers = gtk_widget_observe_controllers(picture);
  for (guint i = 0; i < g_list_model_get_n_items(controllers); i++) {
    GObject *controller = g_list_model_get_item(controllers, i);
    if (GTK_IS_EVENT_CONTROLLER_MOTION(controller))
      g_signal_emit_by_name(controller, "motion", x, y);
    g_object_unref(controller);
  }
  g_object_unref(controllers);
}

static gboolean is_marked(OxWindow *window, int offset) {
  return app_test_is_bold(ox_words_panel_entry(ox_window_words(window)), offset);
}

/* What is pointed at on one of them is lit on all, each on its own case, and marked in the words. */
static void every_board_lights_the_words(void **state) {
  OxWindow *window = comparing(1);
  OxCompanions *companions = companions_of(window);
  static const char cleared[] = "hold southwest on the 240 radial, 2 minute legs";
  ox_companions_choose(companions, 0, (ox_companion){OX_COMPANION_CASE, 2});
  ox_companions_choose(companions, 1, (ox_companion){OX_COMPANION_VARIANT, OX_VARIANT_CALM});
  ox_companions_set_beside(companions, TRUE);
  g_action_group_activate_action(G_ACTION_GROUP(window), "page-words", NULL);
  gtk_text_buffer_set_text(
      gtk_text_view_get_buffer(ox_words_panel_entry(ox_window_words(window))), cleared, -1);
  app_test_spin_ms(400);
  OxHighlight *light = ox_window_highlight(window);
  GtkWidget *pictures[3] = {GTK_WIDGET(ox_window_board(window))};
  for (int i = 1; i < 3; i++) pictures[i] = gtk_widget_get_next_sibling(pictures[i - 1]);
  int leg = (int)(strstr(cleared, "minute") - cleared);
  ox_vec legs[3];
  for (int i = 0; i < 3; i++) {
    ox_vec points[OX_FEATURE_POINTS_MAX];
    ox_highlight_set_feature(light, OX_FEATURE_LEG);
    size_t count = ox_highlight_points(light, pictures[i], points);
    assert_int_equal(count, 2); /* a straight leg */
    legs[i] = ox_vec_scale(ox_vec_add(points[0], points[1]), 0.5);
    point_at(pictures[i], 1, 1);
    assert_int_equal(ox_highlight_feature(light), OX_FEATURE_NONE);
    assert_false(is_marked(window, leg));
    point_at(pictures[i], legs[i].x, legs[i].y);
    assert_int_equal(ox_highlight_feature(light), OX_FEATURE_LEG);
    assert_true(is_marked(window, leg));
    app_test_spin_ms(50); /* is drawn */
  }
  assert_true(ox_vec_length(ox_vec_sub(legs[0], legs[2])) > 1.0); /* its own, in the calm */
  ox_companions_set_beside(companions, FALSE);
  app_test_spin_ms(100);
  app_test_close(window);
}

static double scale_of_board(OxBoard *board) {
  ox_viewport v = {0};
  assert_true(ox_board_get_viewport(board, &v));
  return v.dev_per_nm;
}

static double scale_of_view(OxCaseView *view) {
  ox_viewport v = {0};
  assert_true(ox_case_view_get_viewport(view, &v));
  return v.dev_per_nm;
}

/* A leg twice as long needs a smaller scale: nothing swells while the hand is on it, and then all
 * go there together. */
static void boards_on_one_scale_settle_together(void **state) {
  double x, y;
  OxWindow *window = comparing(1);
  OxCompanions *companions = companions_of(window);
  OxBoard *board = ox_window_board(window);
  ox_companions_choose(companions, 0, (ox_companion){OX_COMPANION_CASE, 2});
  ox_companions_set_beside(companions, TRUE);
  app_test_spin_ms(400);
  OxCaseView *view = OX_CASE_VIEW(gtk_widget_get_next_sibling(GTK_WIDGET(board)));
  double before = scale_of_board(board);
  assert_close(scale_of_view(view), before, 1e-9 * before, "the scale before");
  ox_viewport v;
  assert_true(ox_board_get_viewport(board, &v));
  assert_true(ox_board_handle_place(board, OX_HANDLE_OUTBOUND, &x, &y));
  assert_true(ox_board_press(board, x, y));
  ox_vec fix = ox_viewport_to_dev(&v, (ox_vec){0, 0});
  for (int i = 1; i <= 20; i++)
    ox_board_drag_to(board, x + (x - fix.x) * 0.08 * i, y + (y - fix.y) * 0.08 * i, FALSE);
  app_test_spin_ms(100);
  assert_close(scale_of_board(board), before, 1e-9 * before, "the scale while dragging");
  assert_close(scale_of_view(view), before, 1e-9 * before, "its scale while dragging");
  ox_board_release(board);
  int on_the_way = 0;
  for (int i = 0; i < 60; i++) {
    app_test_spin_ms(10);
    double now = scale_of_board(board);
    assert_close(scale_of_view(view), now, 1e-6 * now, "on the way");
    on_the_way += now < before * 0.999;
  }
  double after = scale_of_board(board);
  assert_true(after < 0.95 * before);
  assert_true(on_the_way > 0);
  app_test_spin_ms(200);
  assert_close(scale_of_board(board), after, 1e-9 * after, "at rest");
  app_test_close(window);
}

static void nothing_is_solved_when_nothing_changed(void **state) {
  OxWindow *window = comparing(1);
  OxCompanions *companions = companions_of(window);
  ox_companions_choose(companions, 0, (ox_companion){OX_COMPANION_CASE, 2});
  app_test_spin_ms(200);
  ox_companion_counts before = ox_companions_get_counts(companions);
  guint fills = ox_compare_panel_fill_count(panel_of(window));
  ox_player_seek(ox_window_player(window), 30);
  app_test_spin_ms(200);
  ox_companions_choose(companions, 0, (ox_companion){OX_COMPANION_CASE, 2});
  app_test_spin_ms(200);
  ox_companion_counts after = ox_companions_get_counts(companions);
  assert_int_equal(after.flights, before.flights);
  assert_int_equal(after.tables, before.tables);
  assert_int_equal(ox_compare_panel_fill_count(panel_of(window)), fills);
  app_test_close(window);
}

/* Deleted, shown or of another lesson: left out, and no crash. */
static void a_case_that_is_gone_is_left_out(void **state) {
  OxDocument *document = ox_document_new();
  OxCompanions *companions = ox_companions_new(document);
  size_t count;
  ox_companions_choose(companions, 0, (ox_companion){OX_COMPANION_CASE, 7});
  assert_null(ox_companions_others(companions, &count));
  ox_companions_choose(companions, 0, (ox_companion){OX_COMPANION_CASE, 0}); /* the shown one */
  assert_null(ox_companions_others(companions, &count));
  ox_companions_choose(companions, 1, (ox_companion){OX_COMPANION_VARIANT, 99});
  assert_null(ox_companions_others(companions, &count));
  assert_int_equal(ox_companions_table(companions)->count, 0);
  ox_document_take(document, ox_lesson_new(), NULL);
  assert_int_equal(ox_companions_chosen(companions, 0).kind, OX_COMPANION_NONE);
  g_object_unref(companions);
  g_object_unref(document);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_change_is_chosen_and_told),
      cmocka_unit_test(a_choice_that_is_no_other_case_says_so),
      cmocka_unit_test(two_cases_stand_beside_it_on_one_scale_and_in_step),
      cmocka_unit_test(every_board_lights_the_words),
      cmocka_unit_test(boards_on_one_scale_settle_together),
      cmocka_unit_test(nothing_is_solved_when_nothing_changed),
      cmocka_unit_test(a_case_that_is_gone_is_left_out),
  };
  return cmocka_run_group_tests(tests, app_test_init, NULL);
}
