/* A hand on the mouse and the keyboard: real events of the X server, sent by xdotool, through every
 * gesture and key controller of the window. */
#include "app_test.h"

static gboolean xdotool(char *const *argv) {
  GError *error = NULL;
  int status = 1;
  gboolean ran = g_spawn_sync(NULL, (char **)argv, NULL,
                              G_SPAWN_SEARCH_PATH | G_SPAWN_STDOUT_TO_DEV_NULL, NULL, NULL, NULL,
                              NULL, &status, &error);
  if (error) print_error("%s\n", error->message);
  g_clear_error(&error);
  return ran && status == 0;
}

/* Runs xdotool with words parted by spaces, and lets the window answer. */
static void hand(const char *words) {
  char *line = g_strdup_printf("xdotool %s", words);
  char **argv = g_strsplit(line, " ", -1);
  gboolean done = xdotool(argv);
  g_strfreev(argv);
  g_free(line);
  assert_true(done);
  app_test_spin_ms(60);
}

/* Moves the pointer to a place of the board. Without a window manager the window is where the X
 * server put it: in the corner. */
static void point_at(OxBoard *board, double x, double y) {
  GtkWidget *native = GTK_WIDGET(gtk_widget_get_native(GTK_WIDGET(board)));
  double window_x, window_y, shift_x, shift_y;
  assert_true(gtk_widget_translate_coordinates(GTK_WIDGET(board), native, x, y, &window_x,
                                               &window_y));
  gtk_native_get_surface_transform(GTK_NATIVE(native), &shift_x, &shift_y);
  char *words = g_strdup_printf("mousemove %d %d", (int)lround(window_x + shift_x),
                                (int)lround(window_y + shift_y));
  hand(words);
  g_free(words);
}

static double inbound(OxWindow *window) {
  return ox_document_case(ox_window_document(window))->hold.inbound_deg;
}

static void take_hold(OxBoard *board, ox_handle h, double *x, double *y) {
  assert_true(ox_board_handle_place(board, h, x, y));
  point_at(board, *x, *y);
  assert_true(g_str_has_prefix(ox_board_readout(board), ox_handle_name(h)));
  hand("mousedown 1");
  assert_true(ox_board_is_dragging(board));
}

static void a_hand_drags_the_course_and_lets_go(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  double x, y, fix_x, fix_y, was = inbound(window);
  ox_board_handle_place(board, OX_HANDLE_FIX, &fix_x, &fix_y);
  take_hold(board, OX_HANDLE_INBOUND, &x, &y);
  point_at(board, x + 5, y + 8);
  point_at(board, fix_x - (y - fix_y), fix_y + (x - fix_x));
  assert_close(inbound(window), fmod(was + 90, 360), 1e-9, "a quarter round the fix");
  hand("mouseup 1");
  assert_false(ox_board_is_dragging(board));
  assert_string_equal(ox_document_undo_name(ox_window_document(window)), "Inbound course");
  app_test_close(window);
}

static void shift_makes_it_fine_and_escape_brings_it_back(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  double x, y, was = inbound(window);
  gboolean between = FALSE;
  take_hold(board, OX_HANDLE_INBOUND, &x, &y);
  hand("keydown shift");
  for (int i = 1; i <= 8; i++) {
    point_at(board, x + 2 * i, y + 3 * i);
    between |= fmod(inbound(window), 5) != 0;
  }
  hand("keyup shift");
  assert_true(between);
  assert_true(inbound(window) != was);
  hand("key Escape");
  assert_close(inbound(window), was, 0, "restored");
  point_at(board, x + 60, y + 60); /* the button is still down */
  hand("mouseup 1");
  assert_close(inbound(window), was, 0, "and stays so");
  assert_false(ox_document_can_undo(ox_window_document(window)));
  app_test_close(window);
}

static void the_wheel_zooms_and_the_middle_button_pans(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  double x, y, now_x, now_y;
  ox_board_handle_place(board, OX_HANDLE_FIX, &x, &y);
  point_at(board, x, y);
  hand("click 4");
  assert_true(ox_board_view(board).zoom > 1.2);
  hand("click 5");
  assert_close(ox_board_view(board).zoom, 1, 1e-6, "zoom");
  hand("mousedown 2");
  point_at(board, x + 12, y + 8);
  point_at(board, x + 40, y + 25);
  hand("mouseup 2");
  ox_board_handle_place(board, OX_HANDLE_FIX, &now_x, &now_y);
  assert_close(now_x, x + 40, 1.5, "x");
  assert_close(now_y, y + 25, 1.5, "y");
  app_test_close(window);
}

static void keys_walk_to_a_handle_and_turn_it(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  double was = inbound(window), t_s = ox_player_time_s(ox_window_player(window));
  gtk_widget_grab_focus(GTK_WIDGET(board));
  point_at(board, 5, 5);
  hand("key Tab Tab");
  assert_true(gtk_widget_has_focus(ox_board_grip(board, OX_HANDLE_INBOUND)));
  hand("key Right Right Up");
  assert_close(inbound(window), was + 3, 1e-9, "three steps");
  hand("key shift+Left");
  assert_close(inbound(window), was - 7, 1e-9, "ten back");
  assert_close(ox_player_time_s(ox_window_player(window)), t_s, 0, "the flight stands still");
  hand("key Escape");
  assert_close(inbound(window), was, 0, "restored");
  hand("key Escape"); /* nothing to restore: back to the board, whose arrows move the flight */
  assert_true(gtk_widget_has_focus(GTK_WIDGET(board)));
  hand("key Right");
  assert_close(ox_player_time_s(ox_window_player(window)), t_s + 1, 1e-9, "a second on");
  hand("key ctrl+Right");
  assert_true(ox_board_view(board).pan_nm.x != 0);
  hand("key ctrl+Left");
  assert_close(ox_board_view(board).pan_nm.x, 0, 1e-9, "there and back");
  app_test_close(window);
}

static void the_buttons_beside_a_handle_are_pressed_with_the_mouse(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  double x, y, was = inbound(window), button_x, button_y;
  take_hold(board, OX_HANDLE_INBOUND, &x, &y);
  hand("mouseup 1");
  GtkWidget *more = app_test_find_button(GTK_WIDGET(board), "list-add-symbolic");
  assert_true(gtk_widget_is_visible(more));
  gtk_widget_translate_coordinates(more, GTK_WIDGET(board), gtk_widget_get_width(more) / 2.0,
                                   gtk_widget_get_height(more) / 2.0, &button_x, &button_y);
  point_at(board, button_x, button_y);
  hand("click 1");
  hand("click 1");
  assert_close(inbound(window), was + 2, 1e-9, "two more");
  assert_true(gtk_widget_has_focus(ox_board_grip(board, OX_HANDLE_INBOUND)));
  app_test_close(window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_hand_drags_the_course_and_lets_go),
      cmocka_unit_test(shift_makes_it_fine_and_escape_brings_it_back),
      cmocka_unit_test(the_wheel_zooms_and_the_middle_button_pans),
      cmocka_unit_test(keys_walk_to_a_handle_and_turn_it),
      cmocka_unit_test(the_buttons_beside_a_handle_are_pressed_with_the_mouse),
  };
  return cmocka_run_group_tests_name("pointer", tests, app_test_init, NULL);
}
