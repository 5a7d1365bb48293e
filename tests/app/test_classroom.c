/* The classroom display in the real window: what hides and comes back, how large the type is, the
 * clicker's steps, the black screen and the way out. */
#include "app_test.h"

#include "ox_classroom.h"
#include "oxbow/words.h"

static void turn(OxWindow *window, gboolean on) {
  g_action_group_change_action_state(G_ACTION_GROUP(window), "classroom",
                                     g_variant_new_boolean(on));
  app_test_spin_ms(250);
}

static void act(OxWindow *window, const char *action) {
  g_action_group_activate_action(G_ACTION_GROUP(window), action, NULL);
  app_test_spin_ms(30);
}

static gboolean is_seen(GtkWidget *widget) { return gtk_widget_get_mapped(widget); }

static void controls_go_and_come_back_as_they_were(void **state) {
  OxWindow *window = app_test_window(NULL);
  ox_classroom *classroom = ox_window_classroom(window);
  GtkWidget *transport = GTK_WIDGET(ox_window_transport(window));
  GtkWidget *inputs = GTK_WIDGET(ox_window_inputs(window));
  GtkWidget *working = GTK_WIDGET(ox_window_working(window));
  GtkWidget *figures = GTK_WIDGET(ox_classroom_figures(classroom));
  gboolean had_working = is_seen(working);
  assert_true(is_seen(transport) && is_seen(inputs) && !is_seen(figures));
  for (int round = 0; round < 2; round++) {
    turn(window, TRUE);
    assert_true(ox_classroom_is_on(classroom));
    assert_false(is_seen(transport) || is_seen(inputs) || is_seen(working));
    assert_true(is_seen(figures));
    assert_int_equal(ox_board_palette(ox_window_board(window)), OX_PALETTE_PROJECTOR);
    act(window, "leave");
    app_test_spin_ms(200);
    assert_false(ox_classroom_is_on(classroom));
    assert_true(is_seen(transport) && is_seen(inputs) && !is_seen(figures));
    assert_int_equal(is_seen(working), had_working);
    assert_int_equal(ox_board_palette(ox_window_board(window)), OX_PALETTE_LIGHT);
  }
  app_test_close(window);
}

/* A room reads type from 4 % of the height on (labels), figures from 5 % (AV practice and ISO 9241
 * by way of our projector arithmetic; common practice). */
static void type_is_sized_by_the_height_of_the_screen(void **state) {
  OxWindow *window = app_test_window(NULL);
  ox_classroom *classroom = ox_window_classroom(window);
  turn(window, TRUE);
  GdkSurface *surface = gtk_native_get_surface(GTK_NATIVE(window));
  double height = gdk_surface_get_height(surface);
  OxBoard *board = ox_window_board(window);
  double label_px = ox_classroom_label_px(classroom);
  assert_true(label_px >= 0.04 * height - 1e-6);
  double plain_px = ox_picture_label_size(ox_board_palette(board),
                                          gtk_widget_get_width(GTK_WIDGET(board)),
                                          gtk_widget_get_height(GTK_WIDGET(board)));
  assert_true(label_px / plain_px < 4.0); /* within what the painter scales to */
  assert_true(ox_figure_row_size(ox_classroom_figures(classroom)) >= 0.05 * height - 1e-6);
  ox_board_counts before = ox_board_get_counts(board);
  act(window, "larger");
  app_test_spin_ms(100);
  assert_true(ox_classroom_label_px(classroom) > 1.1 * label_px);
  assert_true(ox_board_get_counts(board).layouts > before.layouts);
  act(window, "smaller");
  assert_close(ox_classroom_label_px(classroom), label_px, 1e-6, "there and back");
  for (int i = 0; i < 20; i++) act(window, "larger");
  assert_true(ox_classroom_label_px(classroom) < 2 * label_px);
  for (int i = 0; i < 20; i++) act(window, "smaller");
  /* However large the wind's arrow is, its grip is beyond the tip. */
  ox_document_select(ox_window_document(window), 1);
  app_test_spin_ms(100);
  ox_vec middle;
  double x, y, reach;
  ox_scene scene = ox_board_scene(board);
  ox_picture *p = ox_picture_new(&scene, gtk_widget_get_width(GTK_WIDGET(board)),
                                 gtk_widget_get_height(GTK_WIDGET(board)));
  assert_true(ox_picture_wind_arrow(p, &middle, &reach));
  assert_true(ox_board_handle_place(board, OX_HANDLE_WIND_FROM, &x, &y));
  assert_true(hypot(x - middle.x, y - middle.y) > reach);
  ox_picture_free(p);
  app_test_close(window); /* closing while it is on lets go of everything */
}

static void the_clicker_steps_from_event_to_event_and_on_to_the_next_case(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  OxPlayer *player = ox_window_player(window);
  turn(window, TRUE);
  ox_player_set_playing(player, TRUE);
  act(window, "show-next");
  assert_false(ox_player_playing(player));
  assert_close(ox_player_time_s(player), 0, 1e-6, "the fix");
  int steps = 1;
  while (ox_document_case_index(document) == 0 && steps < 100) {
    g_action_group_activate_action(G_ACTION_GROUP(window), "show-next", NULL);
    steps++;
  }
  assert_int_equal(ox_document_case_index(document), 1);
  assert_true(steps > 10);
  assert_close(ox_player_time_s(player), ox_player_begin_s(player), 0, "its beginning");
  act(window, "show-previous");
  assert_int_equal(ox_document_case_index(document), 0);
  assert_close(ox_player_time_s(player), ox_player_end_s(player), 0, "the end of the one before");
  while (steps-- > 0) g_action_group_activate_action(G_ACTION_GROUP(window), "show-previous", NULL);
  assert_close(ox_player_time_s(player), ox_player_begin_s(player), 0, "all the way back");
  assert_int_equal(ox_document_case_index(document), 0);
  ox_document_select(document, ox_document_case_count(document) - 1);
  ox_player_seek(player, ox_player_end_s(player));
  act(window, "show-next"); /* nowhere to go */
  assert_close(ox_player_time_s(player), ox_player_end_s(player), 0, "the very end");
  assert_false(ox_document_modified(document));
  app_test_close(window);
}

static void black_stops_the_flight_and_escape_ends_black_before_the_display(void **state) {
  OxWindow *window = app_test_window(NULL);
  ox_classroom *classroom = ox_window_classroom(window);
  turn(window, TRUE);
  ox_player_set_playing(ox_window_player(window), TRUE);
  act(window, "blank");
  assert_true(ox_classroom_is_blank(classroom));
  assert_false(ox_player_playing(ox_window_player(window)));
  assert_close(gtk_widget_get_opacity(gtk_window_get_child(GTK_WINDOW(window))), 0, 0, "black");
  act(window, "leave");
  assert_false(ox_classroom_is_blank(classroom));
  assert_true(ox_classroom_is_on(classroom));
  act(window, "blank");
  act(window, "blank");
  assert_false(ox_classroom_is_blank(classroom));
  act(window, "blank");
  turn(window, FALSE);
  assert_close(gtk_widget_get_opacity(gtk_window_get_child(GTK_WINDOW(window))), 1, 0, "seen");
  app_test_close(window);
}

static gboolean is_hidden(gpointer widget) { return !gtk_widget_get_visible(widget); }

static void controls_show_first_and_on_a_touch_and_hide_without_a_new_layout(void **state) {
  OxWindow *window = app_test_window(NULL);
  ox_classroom *classroom = ox_window_classroom(window);
  GtkWidget *bar = ox_classroom_bar(classroom);
  assert_false(gtk_widget_get_visible(bar));
  turn(window, TRUE);
  assert_true(gtk_widget_get_visible(bar));
  assert_non_null(app_test_find_button(bar, "Leave"));
  ox_board_counts before = ox_board_get_counts(ox_window_board(window));
  assert_true(app_test_wait(is_hidden, bar, 15000));
  app_test_spin_ms(100);
  assert_int_equal(ox_board_get_counts(ox_window_board(window)).layouts, before.layouts);
  app_test_close(window);
}

static void it_plays_with_its_transport_hidden(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxPlayer *player = ox_window_player(window);
  turn(window, TRUE);
  ox_player_seek(player, 10);
  act(window, "play");
  for (int i = 0; i < 200 && ox_player_time_s(player) <= 10.5; i++) app_test_spin_ms(20);
  assert_true(ox_player_time_s(player) > 10.5);
  app_test_close(window);
}

/* What is flown stands whole beside the figures, whose height stays: the board does not jump. */
static void the_name_of_every_leg_is_whole_beside_the_figures(void **state) {
  OxWindow *window = app_test_window(NULL);
  turn(window, TRUE);
  act(window, "larger");
  act(window, "larger");
  act(window, "larger");
  app_test_spin_ms(200);
  GtkWidget *figures = GTK_WIDGET(ox_classroom_figures(ox_window_classroom(window)));
  GtkLabel *instant = GTK_LABEL(gtk_widget_get_prev_sibling(figures));
  const ox_flight *flight = ox_document_whole_flight(ox_window_document(window));
  int height = gtk_widget_get_height(gtk_widget_get_parent(figures));
  assert_true(flight->leg_count > 6);
  for (size_t i = 0; i < flight->leg_count; i++) {
    ox_player_seek(ox_window_player(window), flight->legs[i].t0_s + 0.5);
    app_test_spin_ms(60);
    if (pango_layout_is_ellipsized(gtk_label_get_layout(instant)))
      print_error("\"%s\" is cut\n", gtk_label_get_text(instant));
    assert_false(pango_layout_is_ellipsized(gtk_label_get_layout(instant)));
    assert_int_equal(gtk_widget_get_height(gtk_widget_get_parent(figures)), height);
  }
  app_test_close(window);
}

static graphene_rect_t place_in(GtkWidget *widget, GtkWidget *top) {
  graphene_rect_t bounds;
  assert_true(gtk_widget_compute_bounds(widget, top, &bounds));
  return bounds;
}

/* Every button below a widget can be hit by a finger: 44 px (WCAG 2.1, 2.5.5). */
static guint count_touchable(GtkWidget *top) {
  guint count = 0;
  if (GTK_IS_BUTTON(top)) {
    graphene_rect_t its = place_in(top, top); /* its lines are pressed as well */
    assert_true(its.size.width >= 44 && its.size.height >= 44);
    return 1;
  }
  for (GtkWidget *at = gtk_widget_get_first_child(top); at; at = gtk_widget_get_next_sibling(at))
    count += count_touchable(at);
  return count;
}

static void what_is_pressed_is_large_and_covers_neither_title_nor_map(void **state) {
  OxWindow *window = app_test_window(NULL);
  GtkWidget *board = GTK_WIDGET(ox_window_board(window));
  GtkWidget *bar = ox_classroom_bar(ox_window_classroom(window));
  GtkWidget *overlay = gtk_widget_get_parent(bar);
  GtkWidget *grip = app_test_find_type_name(board, "OxGripSlider");
  GtkWidget *caution = app_test_find_label(GTK_WIDGET(window), ox_words_caution_line());
  int plain_px = gtk_widget_get_width(grip), caution_px = gtk_widget_get_height(caution);
  turn(window, TRUE);
  g_action_group_change_action_state(G_ACTION_GROUP(window), "pen", g_variant_new_boolean(TRUE));
  GtkWidget *strip = gtk_widget_get_first_child(overlay);
  while (strip && !gtk_widget_has_css_class(strip, "penstrip"))
    strip = gtk_widget_get_next_sibling(strip);
  assert_non_null(strip);
  for (int i = -1; i < 3; i++) { /* the type as it is, and larger */
    if (i >= 0) act(window, "larger");
    app_test_spin_ms(150);
    ox_vec origin, size;
    assert_true(ox_board_get_map(OX_BOARD(board), &origin, &size));
    graphene_rect_t its = place_in(bar, overlay), all = place_in(board, overlay);
    graphene_rect_t tools = place_in(strip, overlay);
    assert_true((double)its.origin.y >= (double)all.origin.y + origin.y + size.y - 1);
    assert_true(its.origin.y + its.size.height <= all.origin.y + all.size.height);
    assert_true(tools.origin.y >= 0);
    assert_true(tools.origin.y + tools.size.height <= its.origin.y);
    assert_true(tools.origin.x + tools.size.width <= all.origin.x);
    assert_true(its.size.width <= (float)gtk_widget_get_width(overlay));
    assert_true(count_touchable(bar) >= 9);
    assert_true(count_touchable(strip) >= 8);
    assert_true(gtk_widget_get_width(grip) >= 44);
    assert_true(gtk_widget_get_mapped(caution));
    assert_true(gtk_widget_get_height(caution) > caution_px);
  }
  turn(window, FALSE);
  assert_int_equal(gtk_widget_get_width(grip), plain_px);
  assert_false(gtk_widget_get_mapped(strip));
  app_test_close(window);
}

static guint controllers_of(OxWindow *window) {
  GListModel *all = gtk_widget_observe_controllers(GTK_WIDGET(window));
  guint count = g_list_model_get_n_items(all);
  g_object_unref(all);
  return count;
}

/* Letters are keys only here: none of the listeners outlasts the display. */
static void its_keys_and_actions_end_with_it(void **state) {
  static const char *const only[] = {"show-next", "show-previous", "blank", "larger", "smaller"};
  OxWindow *window = app_test_window(NULL);
  guint before = controllers_of(window);
  for (int round = 0; round < 2; round++) {
    for (size_t i = 0; i < G_N_ELEMENTS(only); i++)
      assert_false(g_action_group_get_action_enabled(G_ACTION_GROUP(window), only[i]));
    turn(window, TRUE);
    assert_int_equal(controllers_of(window), before + 3);
    for (size_t i = 0; i < G_N_ELEMENTS(only); i++)
      assert_true(g_action_group_get_action_enabled(G_ACTION_GROUP(window), only[i]));
    turn(window, FALSE);
    assert_int_equal(controllers_of(window), before);
  }
  assert_false(ox_classroom_inhibits(ox_window_classroom(window)));
  app_test_close(window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(controls_go_and_come_back_as_they_were),
      cmocka_unit_test(type_is_sized_by_the_height_of_the_screen),
      cmocka_unit_test(the_clicker_steps_from_event_to_event_and_on_to_the_next_case),
      cmocka_unit_test(black_stops_the_flight_and_escape_ends_black_before_the_display),
      cmocka_unit_test(controls_show_first_and_on_a_touch_and_hide_without_a_new_layout),
      cmocka_unit_test(it_plays_with_its_transport_hidden),
      cmocka_unit_test(the_name_of_every_leg_is_whole_beside_the_figures),
      cmocka_unit_test(what_is_pressed_is_large_and_covers_neither_title_nor_map),
      cmocka_unit_test(its_keys_and_actions_end_with_it),
  };
  return cmocka_run_group_tests_name("classroom", tests, app_test_init, NULL);
}
