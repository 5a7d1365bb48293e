/* Other ways to look at the board, and what a desktop asks of it: less motion, larger text. */
#include "app_test.h"

static void act(OxWindow *window, const char *action) {
  g_action_group_activate_action(G_ACTION_GROUP(window), action, NULL);
}

static void set_state(OxWindow *window, const char *action, GVariant *state) {
  g_action_group_change_action_state(G_ACTION_GROUP(window), action, state);
}

static gboolean is_on(OxWindow *window, const char *action) {
  GVariant *state = g_action_group_get_action_state(G_ACTION_GROUP(window), action);
  gboolean on = g_variant_get_boolean(state);
  g_variant_unref(state);
  return on;
}

static void set_animations(gboolean on) {
  g_object_set(gtk_settings_get_default(), "gtk-enable-animations", on, NULL);
}

/* ---- zoom, pan, up ---------------------------------------------------------------------- */

static void zooming_in_and_out_again_comes_back_and_fitting_resets(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  guint solves = ox_document_solve_count(ox_window_document(window));
  for (int i = 0; i < 5; i++) act(window, "zoom-in");
  assert_true(ox_board_view(board).zoom > 2);
  for (int i = 0; i < 5; i++) act(window, "zoom-out");
  assert_close(ox_board_view(board).zoom, 1, 1e-9, "zoom");
  for (int i = 0; i < 60; i++) act(window, "zoom-in");
  assert_close(ox_board_view(board).zoom, OX_ZOOM_MOST, 1e-9, "nearest");
  for (int i = 0; i < 60; i++) act(window, "zoom-out");
  assert_close(ox_board_view(board).zoom, OX_ZOOM_LEAST, 1e-9, "farthest");
  act(window, "pan-right");
  act(window, "zoom-fit");
  assert_close(ox_board_view(board).zoom, 1, 0, "fitted");
  assert_close(ox_board_view(board).pan_nm.x, 0, 0, "centred");
  assert_int_equal(ox_document_solve_count(ox_window_document(window)), solves);
  assert_false(ox_document_can_undo(ox_window_document(window))); /* looking is no edit */
  app_test_close(window);
}

static void the_place_under_the_pointer_stays_there_when_the_wheel_zooms(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  double x, y, new_x, new_y;
  assert_true(ox_board_handle_place(board, OX_HANDLE_OUTBOUND, &x, &y));
  ox_board_zoom_about(board, 1.3, x, y);
  app_test_spin_ms(60);
  assert_true(ox_board_handle_place(board, OX_HANDLE_OUTBOUND, &new_x, &new_y));
  assert_close(new_x, x, 0.75, "x");
  assert_close(new_y, y, 0.75, "y");
  app_test_close(window);
}

static void dragging_the_empty_board_takes_the_world_along(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  double x, y, new_x, new_y;
  ox_board_handle_place(board, OX_HANDLE_FIX, &x, &y);
  assert_false(ox_board_press(board, x + 5, y - 25)); /* near the fix there is no handle */
  ox_board_drag_to(board, x + 35, y - 65, FALSE);
  app_test_spin_ms(60);
  ox_board_handle_place(board, OX_HANDLE_FIX, &new_x, &new_y);
  assert_close(new_x, x + 30, 0.75, "x");
  assert_close(new_y, y - 40, 0.75, "y");
  ox_board_cancel(board);
  ox_board_handle_place(board, OX_HANDLE_FIX, &new_x, &new_y);
  assert_close(new_x, x, 0.75, "x, cancelled");
  assert_close(new_y, y, 0.75, "y, cancelled");
  act(window, "pan-right"); /* the eye to the right, the world to the left */
  ox_board_handle_place(board, OX_HANDLE_FIX, &new_x, &new_y);
  assert_true(new_x < x - 10);
  app_test_close(window);
}

static void with_the_inbound_course_up_it_is_below_the_fix(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  double fix_x, fix_y, x, y;
  set_state(window, "view-up", g_variant_new_string("inbound"));
  app_test_spin_ms(60);
  ox_board_handle_place(board, OX_HANDLE_FIX, &fix_x, &fix_y);
  ox_board_handle_place(board, OX_HANDLE_INBOUND, &x, &y);
  assert_close(x, fix_x, 0.5, "straight below");
  assert_true(y > fix_y + 40);
  act(window, "next-up");
  assert_int_equal(ox_board_view(board).up, OX_UP_AIRCRAFT);
  act(window, "next-up");
  assert_int_equal(ox_board_view(board).up, OX_UP_NORTH);
  set_state(window, "view-up", g_variant_new_string("sideways"));
  assert_int_equal(ox_board_view(board).up, OX_UP_NORTH);
  app_test_close(window);
}

static void the_scale_stays_while_a_handle_is_dragged(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  double fix_x, fix_y, x, y, now_x, now_y;
  ox_board_handle_place(board, OX_HANDLE_FIX, &fix_x, &fix_y);
  ox_board_handle_place(board, OX_HANDLE_OUTBOUND, &x, &y);
  ox_board_press(board, x, y);
  for (int i = 1; i < 8; i++) {
    ox_board_drag_to(board, x + 12 * i, y - 8 * i, FALSE);
    app_test_spin_ms(30);
    ox_board_handle_place(board, OX_HANDLE_FIX, &now_x, &now_y);
    assert_close(now_x, fix_x, 2, "the fix stays where it is");
    assert_close(now_y, fix_y, 2, "the fix stays where it is");
  }
  ox_board_release(board);
  app_test_close(window);
}

/* ---- air -------------------------------------------------------------------------------- */

static void without_animations_the_air_view_is_there_at_once(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  set_animations(FALSE);
  set_state(window, "air-view", g_variant_new_boolean(TRUE));
  assert_close(ox_board_view(board).air, 1, 0, "in the air");
  set_state(window, "air-view", g_variant_new_boolean(FALSE));
  assert_close(ox_board_view(board).air, 0, 0, "over the ground");
  set_animations(TRUE);
  app_test_close(window);
}

static gboolean half_way(gpointer data) {
  double air = ox_board_view(data).air;
  return air > 0.05 && air < 0.95;
}

static gboolean in_the_air(gpointer data) { return ox_board_view(data).air == 1.0; }

static gboolean on_the_ground(gpointer data) { return ox_board_view(data).air == 0.0; }

static void the_passage_goes_gradually_and_turns_round_on_its_way(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  set_animations(TRUE);
  set_state(window, "air-view", g_variant_new_boolean(TRUE));
  assert_close(ox_board_view(board).air, 0, 0, "not at once");
  assert_true(app_test_wait(half_way, board, 5000));
  double there = ox_board_view(board).air;
  set_state(window, "air-view", g_variant_new_boolean(FALSE));
  assert_close(ox_board_view(board).air, there, 0, "from where it is");
  assert_true(app_test_wait(on_the_ground, board, 5000));
  set_state(window, "air-view", g_variant_new_boolean(TRUE));
  assert_true(app_test_wait(in_the_air, board, 5000));
  ox_board_counts before = ox_board_get_counts(board), after;
  app_test_spin_ms(200);
  after = ox_board_get_counts(board);
  assert_int_equal(after.layouts, before.layouts); /* and then it rests */
  app_test_close(window);
}

static void closing_in_mid_passage_is_safe(void **state) {
  OxWindow *window = app_test_window(NULL);
  set_state(window, "air-view", g_variant_new_boolean(TRUE));
  assert_true(app_test_wait(half_way, ox_window_board(window), 5000));
  app_test_close(window);
}

static void both_views_stand_side_by_side_and_go_again(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  set_state(window, "air-view", g_variant_new_boolean(TRUE));
  set_state(window, "both-views", g_variant_new_boolean(TRUE));
  app_test_spin_ms(500);
  GtkWidget *second = gtk_widget_get_next_sibling(GTK_WIDGET(board));
  assert_true(OX_IS_BOARD(second));
  assert_close(ox_board_view(board).air, 0, 0, "the first is the ground");
  assert_close(ox_board_view(OX_BOARD(second)).air, 1, 0, "the second is the air");
  assert_false(is_on(window, "air-view"));
  assert_false(g_action_group_get_action_enabled(G_ACTION_GROUP(window), "air-view"));
  int widths[] = {gtk_widget_get_width(second), gtk_widget_get_width(GTK_WIDGET(board))};
  assert_true(abs(widths[0] - widths[1]) <= 1); /* an odd pixel goes to one of them */
  ox_player_set_playing(ox_window_player(window), TRUE);
  app_test_spin_ms(200);
  assert_true(ox_board_get_counts(OX_BOARD(second)).moving > 2);
  set_state(window, "both-views", g_variant_new_boolean(FALSE));
  app_test_spin_ms(100);
  assert_null(gtk_widget_get_next_sibling(GTK_WIDGET(board)));
  assert_true(g_action_group_get_action_enabled(G_ACTION_GROUP(window), "air-view"));
  app_test_close(window);
}

/* ---- larger text ------------------------------------------------------------------------ */

/* Counts the labels whose words are larger than their place. */
static int clipped(GtkWidget *top) {
  int count = 0;
  if (!gtk_widget_get_mapped(top)) return 0;
  if (GTK_IS_LABEL(top)) {
    int width, height;
    PangoLayout *words = gtk_label_get_layout(GTK_LABEL(top));
    pango_layout_get_pixel_size(words, &width, &height);
    if (gtk_widget_get_width(top) < width || gtk_widget_get_height(top) < height) {
      print_error("%s: %d x %d, needs %d x %d\n", pango_layout_get_text(words),
                  gtk_widget_get_width(top), gtk_widget_get_height(top), width, height);
      count++;
    }
  }
  for (GtkWidget *at = gtk_widget_get_first_child(top); at; at = gtk_widget_get_next_sibling(at))
    count += clipped(at);
  return count;
}

static void text_of_200_percent_is_large_on_the_board_too_and_nothing_is_clipped(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  GtkWidget *grip = ox_board_grip(board, OX_HANDLE_INBOUND);
  gtk_window_set_default_size(GTK_WINDOW(window), 1800, 1000);
  app_test_spin_ms(200);
  ox_board_counts before = ox_board_get_counts(board);
  int small = gtk_widget_get_width(grip), dpi;
  g_object_get(gtk_settings_get_default(), "gtk-xft-dpi", &dpi, NULL);
  g_object_set(gtk_settings_get_default(), "gtk-xft-dpi", 2 * 96 * 1024, NULL);
  gtk_widget_grab_focus(grip);
  app_test_spin_ms(400);
  assert_true(ox_board_get_counts(board).layouts > before.layouts);
  assert_true(gtk_widget_get_width(grip) >= 2 * small);
  assert_int_equal(clipped(GTK_WIDGET(window)), 0);
  g_object_set(gtk_settings_get_default(), "gtk-xft-dpi", dpi, NULL);
  app_test_close(window);
}

/* Large text takes the room of the working in a window of the usual size. */
static void the_working_is_folded_where_text_is_large(void **state) {
  int dpi;
  g_object_get(gtk_settings_get_default(), "gtk-xft-dpi", &dpi, NULL);
  for (int times = 1; times <= 2; times++) {
    g_object_set(gtk_settings_get_default(), "gtk-xft-dpi", times * 96 * 1024, NULL);
    OxWindow *window = ox_window_new(NULL);
    gtk_window_present(GTK_WINDOW(window));
    app_test_spin_ms(300);
    assert_int_equal(is_on(window, "working"), times == 1);
    app_test_close(window);
  }
  g_object_set(gtk_settings_get_default(), "gtk-xft-dpi", dpi, NULL);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(zooming_in_and_out_again_comes_back_and_fitting_resets),
      cmocka_unit_test(the_place_under_the_pointer_stays_there_when_the_wheel_zooms),
      cmocka_unit_test(dragging_the_empty_board_takes_the_world_along),
      cmocka_unit_test(with_the_inbound_course_up_it_is_below_the_fix),
      cmocka_unit_test(the_scale_stays_while_a_handle_is_dragged),
      cmocka_unit_test(without_animations_the_air_view_is_there_at_once),
      cmocka_unit_test(the_passage_goes_gradually_and_turns_round_on_its_way),
      cmocka_unit_test(closing_in_mid_passage_is_safe),
      cmocka_unit_test(both_views_stand_side_by_side_and_go_again),
      cmocka_unit_test(text_of_200_percent_is_large_on_the_board_too_and_nothing_is_clipped),
      cmocka_unit_test(the_working_is_folded_where_text_is_large),
  };
  return cmocka_run_group_tests_name("board views", tests, app_test_init, NULL);
}
