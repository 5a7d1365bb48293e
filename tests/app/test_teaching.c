/* A lesson is taught with several features at once: classroom display, comparison, both views,
 * prediction and pen, in any order, and the world while something on it is dragged. */
#include "app_test.h"

#include "ox_case_view.h"
#include "ox_classroom.h"
#include "ox_companions.h"
#include "ox_message_bar.h"
#include "oxbow/handles.h"

static void act(OxWindow *window, const char *action) {
  g_action_group_activate_action(G_ACTION_GROUP(window), action, NULL);
  app_test_spin_ms(100);
}

static void set(OxWindow *window, const char *action, gboolean on) {
  g_action_group_change_action_state(G_ACTION_GROUP(window), action, g_variant_new_boolean(on));
  app_test_spin_ms(250);
}

static gboolean is_set(OxWindow *window, const char *action) {
  GVariant *state = g_action_group_get_action_state(G_ACTION_GROUP(window), action);
  gboolean on = g_variant_get_boolean(state);
  g_variant_unref(state);
  return on;
}

static gboolean is_seen(OxWindow *window, const char *type_name) {
  GtkWidget *found = app_test_find_type_name(GTK_WIDGET(window), type_name);
  return found && gtk_widget_get_mapped(found);
}

static void set_animations(gboolean on) {
  g_object_set(gtk_settings_get_default(), "gtk-enable-animations", on, NULL);
}

static OxBoard *air_board(OxWindow *window) {
  GtkWidget *next = gtk_widget_get_next_sibling(GTK_WIDGET(ox_window_board(window)));
  assert_non_null(next);
  return OX_BOARD(next);
}

/* ---- the classroom display ---------------------------------------------------------------- */

static void the_display_hides_panels_strips_and_messages(void **state) {
  OxWindow *window = app_test_window(NULL);
  GtkBox *messages = ox_window_messages(window);
  set(window, "compare-cases", TRUE);
  set(window, "moments", TRUE);
  set(window, "pen", TRUE);
  GtkWidget *bar =
      ox_message_bar_show(messages, "test", GTK_MESSAGE_INFO, "Something to tell", NULL, NULL);
  app_test_spin_ms(100);
  assert_true(is_seen(window, "OxComparePanel") && is_seen(window, "OxMomentsStrip"));
  assert_true(gtk_widget_get_mapped(bar));
  set(window, "classroom", TRUE);
  assert_false(is_seen(window, "OxComparePanel") || is_seen(window, "OxMomentsStrip"));
  assert_false(gtk_widget_get_mapped(bar));
  assert_false(is_set(window, "pen"));
  set(window, "pen", TRUE); /* taken up in the display, with its tools */
  assert_true(gtk_widget_get_mapped(GTK_WIDGET(ox_window_pen(window))));
  set(window, "compare-cases", FALSE); /* closed meanwhile: it stays closed */
  set(window, "classroom", FALSE);
  assert_false(is_seen(window, "OxComparePanel"));
  assert_true(is_seen(window, "OxMomentsStrip") && gtk_widget_get_mapped(bar));
  app_test_close(window);
}

static void the_next_key_flies_what_was_asked_and_nothing_tells_it_before(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxPrediction *prediction = ox_window_prediction(window);
  GtkWidget *transport = GTK_WIDGET(ox_window_transport(window));
  set(window, "predict", TRUE);
  set(window, "classroom", TRUE);
  GtkWidget *line = app_test_find(ox_classroom_bar(ox_window_classroom(window)), OX_TYPE_TIME_LINE);
  GtkWidget *figures = GTK_WIDGET(ox_classroom_figures(ox_window_classroom(window)));
  assert_true(ox_prediction_hides(prediction));
  assert_false(gtk_widget_get_visible(line) || gtk_widget_get_mapped(figures));
  act(window, "show-next");
  assert_int_equal(ox_prediction_get_state(prediction), OX_PREDICTION_SHOWN);
  assert_true(gtk_widget_get_visible(line) && gtk_widget_get_mapped(figures));
  assert_false(gtk_widget_get_mapped(transport)); /* the display still has no controls */
  set(window, "classroom", FALSE);
  assert_true(gtk_widget_get_mapped(transport));
  set(window, "classroom", TRUE);
  ox_document_select(ox_window_document(window), 1); /* is asked anew */
  app_test_spin_ms(100);
  act(window, "show-previous");
  assert_int_equal(ox_document_case_index(ox_window_document(window)), 0);
  assert_true(ox_prediction_hides(prediction));
  set(window, "predict", FALSE);
  assert_false(gtk_widget_get_mapped(transport));
  set(window, "classroom", FALSE);
  assert_true(gtk_widget_get_mapped(transport));
  app_test_close(window);
}

static void no_hidden_panel_takes_the_keys_away(void **state) {
  OxWindow *window = app_test_window(NULL);
  set(window, "classroom", TRUE);
  set(window, "compare-cases", TRUE);
  assert_true(gtk_widget_get_mapped(gtk_window_get_focus(GTK_WINDOW(window))));
  set(window, "predict", TRUE);
  assert_true(gtk_widget_get_mapped(gtk_window_get_focus(GTK_WINDOW(window))));
  app_test_close(window);
}

/* GTK says so, and the test fails, when it cannot draw a board. */
static void both_boards_are_drawn_in_the_display(void **state) {
  OxWindow *window = app_test_window(NULL);
  set(window, "both-views", TRUE);
  OxBoard *boards[] = {ox_window_board(window), air_board(window)};
  ox_board_counts before[2];
  for (int round = 0; round < 2; round++) {
    for (int i = 0; i < 2; i++) before[i] = ox_board_get_counts(boards[i]);
    set(window, "classroom", round == 0);
    for (int i = 0; i < 2; i++) {
      assert_true(ox_board_get_counts(boards[i]).still > before[i].still);
      assert_true(gtk_widget_get_mapped(GTK_WIDGET(boards[i])));
    }
  }
  app_test_close(window);
}

/* ---- side by side ------------------------------------------------------------------------- */

static void ground_and_air_have_one_scale_in_every_case(void **state) {
  OxWindow *window = app_test_window(NULL);
  set(window, "both-views", TRUE);
  OxDocument *document = ox_window_document(window);
  for (size_t i = 0; i < ox_document_case_count(document); i++) {
    ox_viewport ground, air;
    ox_document_select(document, i);
    app_test_spin_ms(150);
    assert_true(ox_board_get_viewport(ox_window_board(window), &ground));
    assert_true(ox_board_get_viewport(air_board(window), &air));
    assert_close(ground.dev_per_nm, air.dev_per_nm, 1e-9 * air.dev_per_nm, "scale");
  }
  set(window, "both-views", FALSE);
  ox_viewport alone, fitted;
  assert_true(ox_board_get_viewport(ox_window_board(window), &alone));
  ox_scene scene = ox_board_scene(ox_window_board(window));
  assert_null(scene.fit);
  GtkWidget *board = GTK_WIDGET(ox_window_board(window));
  assert_true(ox_picture_viewport_of(&scene, gtk_widget_get_width(board),
                                     gtk_widget_get_height(board), 0, &fitted));
  assert_close(alone.dev_per_nm, fitted.dev_per_nm, 1e-9 * fitted.dev_per_nm, "its own again");
  app_test_close(window);
}

static void boards_of_other_cases_go_while_the_answer_is_hidden(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxCompanions *companions = ox_overlays_companions(ox_window_overlays(window));
  ox_companions_choose(companions, 0, (ox_companion){OX_COMPANION_CASE, 2});
  ox_companions_set_beside(companions, TRUE);
  app_test_spin_ms(200);
  assert_true(is_seen(window, "OxCaseView"));
  set(window, "predict", TRUE);
  assert_false(is_seen(window, "OxCaseView"));
  act(window, "predict-fly");
  app_test_spin_ms(200);
  assert_true(is_seen(window, "OxCaseView"));
  app_test_close(window);
}

/* ---- the world under the hand --------------------------------------------------------------- */

static void drag_course(OxBoard *board, double dx, double dy) {
  double x, y;
  assert_true(ox_board_handle_place(board, OX_HANDLE_INBOUND, &x, &y));
  assert_true(ox_board_press(board, x, y));
  for (int i = 1; i <= 3; i++) ox_board_drag_to(board, x + dx * i / 3, y + dy * i / 3, FALSE);
}

static double up_of(OxBoard *board) {
  ox_viewport v;
  assert_true(ox_board_get_viewport(board, &v));
  return v.up_deg;
}

static void the_world_does_not_turn_under_the_handle(void **state) {
  static const char *const ups[] = {"inbound", "aircraft"};
  set_animations(FALSE);
  for (size_t i = 0; i < G_N_ELEMENTS(ups); i++) {
    OxWindow *window = app_test_window(NULL);
    OxBoard *board = ox_window_board(window);
    g_action_group_change_action_state(G_ACTION_GROUP(window), "view-up",
                                       g_variant_new_string(ups[i]));
    ox_player_seek(ox_window_player(window), 0); /* over the fix, which is on the board then */
    app_test_spin_ms(100);
    double was_deg = up_of(board), x, y;
    drag_course(board, 90, -20);
    app_test_spin_ms(60);
    assert_close(up_of(board), was_deg, 1e-9, "held");
    assert_true(ox_board_handle_place(board, OX_HANDLE_FIX, &x, &y));
    ox_board_release(board);
    app_test_spin_ms(60);
    if (i == 0) assert_true(fabs(up_of(board) - was_deg) > 5); /* the course is up again */
    ox_document_undo(ox_window_document(window));
    app_test_spin_ms(60);
    assert_close(up_of(board), was_deg, 1e-9, "as it was");
    app_test_close(window);
  }
  set_animations(TRUE);
}

static void map_of(OxBoard *board, ox_vec *at, ox_vec *size) {
  ox_scene scene = ox_board_scene(board);
  ox_picture *p = ox_picture_new(&scene, gtk_widget_get_width(GTK_WIDGET(board)),
                                 gtk_widget_get_height(GTK_WIDGET(board)));
  assert_non_null(p);
  ox_picture_map(p, at, size);
  ox_picture_free(p);
}

/* A wind too strong to hold in has a notice over the map, which is lower for it. */
static void the_map_stays_while_the_wind_is_dragged(void **state) {
  set_animations(FALSE);
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  OxDocument *document = ox_window_document(window);
  ox_vec was_at, was_size, at, size;
  double x, y;
  ox_document_select(document, 1);
  app_test_spin_ms(60);
  map_of(board, &was_at, &was_size);
  assert_true(ox_board_handle_place(board, OX_HANDLE_WIND_FROM, &x, &y));
  assert_true(ox_board_press(board, x, y));
  for (int i = 1; i <= 6; i++) {
    ox_board_drag_to(board, x - 30 * i, y - 30 * i, FALSE);
    app_test_spin_ms(20);
    map_of(board, &at, &size);
    assert_memory_equal(&at, &was_at, sizeof at);
    assert_memory_equal(&size, &was_size, sizeof size);
  }
  assert_true(ox_document_flight(document)->steady.why != OX_STEADY_EXISTS);
  ox_board_release(board);
  app_test_spin_ms(60);
  map_of(board, &at, &size);
  assert_true(at.y > was_at.y);
  ox_document_undo(document);
  app_test_spin_ms(60);
  map_of(board, &at, &size);
  assert_memory_equal(&at, &was_at, sizeof at);
  app_test_close(window);
  set_animations(TRUE);
}

static gboolean is_settled(gpointer data) {
  ox_scene scene = ox_board_scene(OX_BOARD(data));
  return scene.held == NULL;
}

static void after_a_drag_the_picture_settles_without_a_jump(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  ox_viewport held, then, last;
  drag_course(board, -150, 60);
  app_test_spin_ms(60);
  assert_true(ox_board_get_viewport(board, &held));
  ox_board_release(board);
  assert_true(ox_board_get_viewport(board, &then));
  assert_close(then.dev_per_nm, held.dev_per_nm, 1e-9, "not at once");
  assert_close(then.centre_nm.x, held.centre_nm.x, 1e-9, "nor elsewhere");
  assert_false(is_settled(board));
  assert_true(app_test_wait(is_settled, board, 3000));
  assert_true(ox_board_get_viewport(board, &last));
  assert_true(hypot(last.centre_nm.x - held.centre_nm.x, last.centre_nm.y - held.centre_nm.y) *
                      held.dev_per_nm > 1 ||
              fabs(last.dev_per_nm / held.dev_per_nm - 1) > 0.001);
  app_test_close(window);
}

/* On its way the picture is taken hold of, zoomed, switched, closed. */
static void settling_can_be_broken_off_in_every_way(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  for (int way = 0; way < 5; way++) {
    drag_course(board, way % 2 ? 150 : -150, 60);
    ox_board_release(board);
    app_test_spin_ms(40);
    switch (way) {
    case 0: drag_course(board, 30, 30); ox_board_cancel(board); break;
    case 1: ox_board_zoom(board, 1); assert_true(is_settled(board)); break;
    case 2: ox_board_zoom_fit(board); assert_true(is_settled(board)); break;
    case 3:
      ox_document_select(ox_window_document(window), 1);
      assert_true(is_settled(board));
      break;
    default: break; /* closed below */
    }
    if (way < 4) assert_true(app_test_wait(is_settled, board, 3000));
  }
  app_test_close(window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_display_hides_panels_strips_and_messages),
      cmocka_unit_test(the_next_key_flies_what_was_asked_and_nothing_tells_it_before),
      cmocka_unit_test(no_hidden_panel_takes_the_keys_away),
      cmocka_unit_test(both_boards_are_drawn_in_the_display),
      cmocka_unit_test(ground_and_air_have_one_scale_in_every_case),
      cmocka_unit_test(boards_of_other_cases_go_while_the_answer_is_hidden),
      cmocka_unit_test(the_world_does_not_turn_under_the_handle),
      cmocka_unit_test(the_map_stays_while_the_wind_is_dragged),
      cmocka_unit_test(after_a_drag_the_picture_settles_without_a_jump),
      cmocka_unit_test(settling_can_be_broken_off_in_every_way),
  };
  return cmocka_run_group_tests_name("teaching", tests, app_test_init, NULL);
}
