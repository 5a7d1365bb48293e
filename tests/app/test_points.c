/* Points of the lesson moved on the board, by pointer and keys, and read back. */
#include "app_test.h"

#include <math.h>

#include "ox_document_places.h"
#include "ox_places_panel.h"

typedef struct {
  OxWindow *window;
  OxDocument *document;
  OxBoard *board;
} scene;

static void show_page(scene *s, const char *page) {
  GtkWidget *stack =
      gtk_widget_get_ancestor(GTK_WIDGET(ox_window_places(s->window)), GTK_TYPE_STACK);
  gtk_stack_set_visible_child_name(GTK_STACK(stack), page);
  app_test_spin_ms(100);
}

static scene open_scene(void) {
  scene s = {.window = app_test_window(NULL)};
  char *path = g_build_filename(g_getenv("OXBOW_LESSONS"), "places.oxbow", NULL);
  ox_messages messages = {0};
  s.document = ox_window_document(s.window);
  s.board = ox_window_board(s.window);
  assert_int_equal(ox_document_open(s.document, path, &messages), OX_OK);
  show_page(&s, "places");
  ox_board_zoom(s.board, -7); /* so that the route's points are in the picture */
  app_test_spin_ms(100);
  g_free(path);
  return s;
}

static ox_latlon place(scene *s, const char *name) {
  ox_latlon at = {0, 0};
  char remark[OX_REMARK_BYTES];
  ox_points_place(ox_document_points(s->document), name, &at, remark, sizeof remark);
  return at;
}

static double apart_nm(ox_latlon a, ox_latlon b) {
  ox_geodesic line;
  ox_geodesic_between(a, b, &line);
  return line.distance_nm;
}

/* A point that the board shows. */
static const char *some_point(scene *s, double *x, double *y) {
  const ox_points *points = ox_document_points(s->document);
  for (size_t i = 0; i < points->count; i++)
    if (ox_board_point_place(s->board, points->points[i].name, x, y))
      return points->points[i].name;
  return NULL;
}

static void the_board_is_calm_while_another_page_is_shown(void **state) {
  scene s = open_scene();
  double x, y;
  const char *name = some_point(&s, &x, &y);
  assert_non_null(name);
  assert_non_null(ox_board_point_grip(s.board, name));
  show_page(&s, "hold");
  assert_null(ox_board_point_grip(s.board, name));
  assert_null(some_point(&s, &x, &y));
  app_test_close(s.window);
}

static void a_drag_is_one_step_and_goes_where_it_leads(void **state) {
  scene s = open_scene();
  double x, y;
  const char *name = some_point(&s, &x, &y);
  char undo[64];
  ox_viewport viewport;
  ox_latlon before = place(&s, name);
  assert_true(ox_board_get_viewport(s.board, &viewport));
  assert_true(ox_board_press(s.board, x, y));
  for (int i = 1; i <= 20; i++) {
    ox_board_drag_to(s.board, x + 2 * i, y + i, TRUE);
    app_test_spin_ms(5);
  }
  assert_non_null(strstr(ox_board_readout(s.board), name));
  assert_non_null(strstr(ox_board_readout(s.board), "NM"));
  ox_board_release(s.board);
  assert_close(apart_nm(before, place(&s, name)), hypot(40, 20) / viewport.dev_per_nm, 0.06,
               "as far as the pointer went");
  g_snprintf(undo, sizeof undo, "Move %s", name);
  assert_string_equal(ox_document_undo_name(s.document), undo);
  ox_document_undo(s.document);
  assert_close(apart_nm(before, place(&s, name)), 0, 1e-9, "back");
  assert_false(ox_document_modified(s.document));
  app_test_close(s.window);
}

static void a_cancelled_drag_and_a_press_alone_change_nothing(void **state) {
  scene s = open_scene();
  double x, y;
  some_point(&s, &x, &y);
  ox_board_press(s.board, x, y);
  ox_board_drag_to(s.board, x + 30, y, FALSE);
  assert_true(ox_board_is_dragging(s.board));
  ox_board_cancel(s.board);
  assert_false(ox_document_modified(s.document));
  ox_board_press(s.board, x, y);
  ox_board_drag_to(s.board, x + 1, y, FALSE);
  ox_board_release(s.board);
  assert_false(ox_document_can_undo(s.document));
  app_test_close(s.window);
}

static void keys_move_it_by_a_tenth_of_a_mile_and_escape_restores(void **state) {
  scene s = open_scene();
  double x, y;
  const char *name = some_point(&s, &x, &y);
  ox_latlon before = place(&s, name);
  gtk_widget_grab_focus(ox_board_point_grip(s.board, name));
  assert_true(ox_board_point_key(s.board, name, GDK_KEY_Up, 0));
  assert_close(apart_nm(before, place(&s, name)), 0.1, 0.05, "a tenth");
  assert_true(ox_board_point_key(s.board, name, GDK_KEY_Right, GDK_SHIFT_MASK));
  assert_close(apart_nm(before, place(&s, name)), hypot(0.1, 1), 0.1, "and a mile");
  assert_true(ox_board_point_key(s.board, name, GDK_KEY_Escape, 0));
  assert_close(apart_nm(before, place(&s, name)), 0, 1e-9, "restored");
  assert_false(ox_board_point_key(s.board, name, GDK_KEY_a, 0));
  app_test_close(s.window);
}

/* A crossing moved onto the line between its stations has no place: the radials do not cross. */
static void what_has_no_place_is_refused_in_words(void **state) {
  scene s = open_scene();
  char remark[OX_REMARK_BYTES];
  double x, y, to_x = 0, to_y = 0;
  ox_points points = *ox_document_points(s.document);
  ox_route route = *ox_document_route(s.document);
  const char *name = NULL, *stations[2] = {"MAPLE", "ALDER"};
  for (size_t i = 0; i < route.count && !name; i++)
    if (ox_board_point_place(s.board, route.names[i], &x, &y) &&
        strcmp(route.names[i], "MAPLE") != 0 && strcmp(route.names[i], "ALDER") != 0)
      name = route.names[i];
  assert_non_null(name);
  ox_latlon at = place(&s, name);
  for (size_t i = 0; i < points.count; i++) {
    ox_point *p = &points.points[i];
    if (strcmp(p->name, name) != 0) continue;
    p->kind = OX_POINT_CROSSING;
    g_strlcpy(p->from, stations[0], sizeof p->from);
    g_strlcpy(p->and_from, stations[1], sizeof p->and_from);
    for (int k = 0; k < 2; k++) {
      const ox_point *station = ox_points_find(&points, stations[k]);
      ox_radial_of((ox_station){place(&s, stations[k]), station->declination_deg}, at,
                   k ? &p->and_radial_deg : &p->radial_deg, NULL);
    }
  }
  assert_int_not_equal(
      ox_document_set_places(s.document, "Point", &points, &route, remark, sizeof remark),
      OX_ERROR);
  app_test_spin_ms(50);
  ox_latlon a = place(&s, stations[0]), b = place(&s, stations[1]), origin;
  ox_vec a_nm, b_nm;
  ox_viewport viewport;
  ox_fix_place(ox_document_points(s.document), ox_document_fix(s.document),
               ox_document_case(s.document), &origin, NULL, 0);
  ox_plane_from_place(origin, a, &a_nm);
  ox_plane_from_place(origin, b, &b_nm);
  ox_board_get_viewport(s.board, &viewport);
  ox_vec middle = ox_viewport_to_dev(
      &viewport, (ox_vec){0.5 * (a_nm.x + b_nm.x), 0.5 * (a_nm.y + b_nm.y)});
  to_x = middle.x;
  to_y = middle.y;
  assert_true(ox_board_point_place(s.board, name, &x, &y));
  assert_true(ox_board_press(s.board, x, y));
  ox_board_drag_to(s.board, to_x, to_y, TRUE);
  char *said = g_strdup(ox_board_readout(s.board));
  ox_board_release(s.board);
  ox_latlon after = place(&s, name);
  /* Refused in words, or put where two radials of a tenth of a degree do cross. */
  assert_true(strstr(said, "radial") != NULL);
  assert_true(isfinite(after.lat_deg) && isfinite(after.lon_deg));
  assert_int_not_equal(ox_points_check(ox_document_points(s.document), &route, remark,
                                       sizeof remark),
                       OX_ERROR);
  g_free(said);
  app_test_close(s.window);
}

static void tab_reaches_the_points_after_the_handles(void **state) {
  scene s = open_scene();
  double x, y;
  const char *name = some_point(&s, &x, &y);
  gboolean reached = FALSE;
  gtk_widget_grab_focus(GTK_WIDGET(s.board));
  for (int i = 0; i < 20 && !reached; i++) {
    if (!gtk_widget_child_focus(GTK_WIDGET(s.board), GTK_DIR_TAB_FORWARD)) break;
    reached = gtk_widget_has_focus(ox_board_point_grip(s.board, name));
  }
  assert_true(reached);
  assert_non_null(strstr(ox_board_readout(s.board), name));
  g_signal_emit_by_name(ox_board_point_grip(s.board, name), "clicked");
  OxPointEditor *editor = ox_places_panel_point_editor(ox_window_places(s.window));
  assert_string_equal(ox_point_editor_name(editor), name);
  app_test_close(s.window);
}

static ox_vec world_at(scene *s, double x, double y) {
  ox_viewport viewport;
  assert_true(ox_board_get_viewport(s->board, &viewport));
  return ox_viewport_to_world(&viewport, (ox_vec){x, y});
}

/* By the board's menu, which a mouse, a finger and a key open. */
static void a_point_is_added_where_the_menu_was_asked_for(void **state) {
  scene s = open_scene();
  size_t before = ox_document_points(s.document)->count;
  double x, y;
  show_page(&s, "hold");
  ox_vec asked = world_at(&s, gtk_widget_get_width(GTK_WIDGET(s.board)) / 2.0,
                          gtk_widget_get_height(GTK_WIDGET(s.board)) / 2.0);
  g_action_group_activate_action(G_ACTION_GROUP(s.window), "board-menu", NULL);
  app_test_spin_ms(50);
  assert_true(g_action_group_get_action_enabled(G_ACTION_GROUP(s.window), "add-point-here"));
  g_action_group_activate_action(G_ACTION_GROUP(s.window), "add-point-here", NULL);
  app_test_spin_ms(100);
  assert_int_equal(ox_document_points(s.document)->count, before + 1);
  const char *name = ox_document_points(s.document)->points[before].name;
  assert_true(ox_board_point_place(s.board, name, &x, &y)); /* its page is shown */
  /* The same place, though the picture has made room for it. */
  ox_vec lies = world_at(&s, x, y);
  assert_close(lies.x, asked.x, 0.05, "NM east");
  assert_close(lies.y, asked.y, 0.05, "NM north");
  assert_string_equal(
      ox_point_editor_name(ox_places_panel_point_editor(ox_window_places(s.window))), name);
  ox_document_undo(s.document);
  assert_int_equal(ox_document_points(s.document)->count, before);
  app_test_close(s.window);
}

/* A fix without latitude and longitude has nothing to count a place from. */
static void no_point_can_be_added_on_a_board_without_a_place(void **state) {
  OxWindow *window = app_test_window(NULL);
  g_action_group_activate_action(G_ACTION_GROUP(window), "board-menu", NULL);
  app_test_spin_ms(50);
  assert_false(g_action_group_get_action_enabled(G_ACTION_GROUP(window), "add-point-here"));
  app_test_close(window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_board_is_calm_while_another_page_is_shown),
      cmocka_unit_test(a_drag_is_one_step_and_goes_where_it_leads),
      cmocka_unit_test(a_cancelled_drag_and_a_press_alone_change_nothing),
      cmocka_unit_test(keys_move_it_by_a_tenth_of_a_mile_and_escape_restores),
      cmocka_unit_test(what_has_no_place_is_refused_in_words),
      cmocka_unit_test(tab_reaches_the_points_after_the_handles),
      cmocka_unit_test(a_point_is_added_where_the_menu_was_asked_for),
      cmocka_unit_test(no_point_can_be_added_on_a_board_without_a_place),
  };
  return cmocka_run_group_tests_name("points", tests, app_test_init, NULL);
}
