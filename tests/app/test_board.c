/* Taking hold of the board: pressing, dragging, letting go, and every way in which that can be
 * broken off. The places are those that the board itself names; what must come of them follows from
 * the geometry on the screen. */
#include "app_test.h"

#include "oxbow/handles.h"

static ox_board_counts counts_of(OxWindow *window) {
  return ox_board_get_counts(ox_window_board(window));
}

static void place_of(OxBoard *board, ox_handle h, double *x, double *y) {
  assert_true(ox_board_handle_place(board, h, x, y));
}

/* Presses a handle and moves it by px in a few steps. */
static void drag_by(OxBoard *board, ox_handle h, double dx, double dy, gboolean fine) {
  double x, y;
  place_of(board, h, &x, &y);
  assert_true(ox_board_press(board, x, y));
  for (int i = 1; i <= 4; i++) ox_board_drag_to(board, x + dx * i / 4, y + dy * i / 4, fine);
}

static double inbound(OxWindow *window) {
  return ox_document_case(ox_window_document(window))->hold.inbound_deg;
}

/* ---- what there is ---------------------------------------------------------------------- */

static void every_handle_of_the_demo_lies_on_the_board_and_is_hit_there(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  OxDocument *document = ox_window_document(window);
  for (size_t i = 0; i < ox_document_case_count(document); i++) {
    ox_document_select(document, i);
    app_test_spin_ms(60);
    for (ox_handle h = OX_HANDLE_INBOUND; h < OX_HANDLE_COUNT; h++) {
      double x, y;
      if (h == OX_HANDLE_WIND_KT) continue; /* one place for the wind */
      place_of(board, h, &x, &y);
      assert_true(x >= 0 && x <= gtk_widget_get_width(GTK_WIDGET(board)));
      assert_true(y >= 0 && y <= gtk_widget_get_height(GTK_WIDGET(board)));
      ox_board_point_at(board, x + 3, y - 3);
      const char *name = h == OX_HANDLE_WIND_FROM ? "Wind" : ox_handle_name(h);
      if (!g_str_has_prefix(ox_board_readout(board), name))
        print_error("case %zu: %s is hidden by %s\n", i, name, ox_board_readout(board));
      assert_true(g_str_has_prefix(ox_board_readout(board), name));
    }
  }
  app_test_close(window);
}

static void hovering_lays_out_and_draws_nothing_of_the_picture(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  ox_board_counts before = counts_of(window), after;
  double x, y;
  for (ox_handle h = OX_HANDLE_INBOUND; h < OX_HANDLE_COUNT; h++) {
    ox_board_handle_place(board, h, &x, &y);
    ox_board_point_at(board, x, y);
    app_test_spin_ms(60);
    assert_true(ox_board_readout(board)[0] != '\0');
  }
  ox_board_point_at(board, 5, 5);
  app_test_spin_ms(60);
  assert_string_equal(ox_board_readout(board), "");
  after = counts_of(window);
  assert_int_equal(after.layouts, before.layouts);
  assert_int_equal(after.still, before.still);
  assert_int_equal(after.moving, before.moving);
  app_test_close(window);
}

/* ---- drags ------------------------------------------------------------------------------ */

static void a_drag_of_the_course_is_one_step_that_shows_at_once(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  OxDocument *document = ox_window_document(window);
  double fix_x, fix_y, x, y, was = inbound(window);
  place_of(board, OX_HANDLE_FIX, &fix_x, &fix_y);
  place_of(board, OX_HANDLE_INBOUND, &x, &y);
  /* A quarter round the fix: where the handle was 60 degrees true it is to be 150; the demo's
   * variation is nought, north is up. */
  double to_x = fix_x - (y - fix_y), to_y = fix_y + (x - fix_x);
  assert_true(ox_board_press(board, x, y));
  ox_board_drag_to(board, to_x, to_y, FALSE);
  double want = fmod(was + 90, 360);
  assert_close(inbound(window), want, 1e-9, "course");
  char *readout = g_strdup_printf("Inbound course: %03.0f° magnetic", want);
  assert_string_equal(ox_board_readout(board), readout);
  g_free(readout);
  assert_false(ox_document_can_undo(document)); /* not before it is let go */
  ox_board_release(board);
  assert_string_equal(ox_document_undo_name(document), "Inbound course");
  ox_document_undo(document);
  assert_close(inbound(window), was, 0, "undone");
  assert_false(ox_document_can_undo(document));
  app_test_close(window);
}

static void every_handle_changes_what_it_stands_for_and_nothing_else(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  OxDocument *document = ox_window_document(window);
  ox_document_select(document, 1);
  app_test_spin_ms(60);
  static const ox_handle dragged[] = {OX_HANDLE_INBOUND, OX_HANDLE_ARRIVAL, OX_HANDLE_WIND_FROM,
                                      OX_HANDLE_OUTBOUND, OX_HANDLE_TURNS};
  for (size_t i = 0; i < G_N_ELEMENTS(dragged); i++) {
    ox_case was = *ox_document_case(document), undone;
    double x, y, fix_x, fix_y;
    place_of(board, OX_HANDLE_FIX, &fix_x, &fix_y);
    place_of(board, dragged[i], &x, &y);
    /* The turns go through the fix to the other side, the others aside and outwards. */
    double dx = dragged[i] == OX_HANDLE_TURNS ? 2.5 * (fix_x - x) : 70;
    double dy = dragged[i] == OX_HANDLE_TURNS ? 2.5 * (fix_y - y) : 60;
    drag_by(board, dragged[i], dx, dy, FALSE);
    ox_board_release(board);
    ox_case is = *ox_document_case(document);
    if (ox_case_equal(&was, &is)) print_error("%s\n", ox_handle_name(dragged[i]));
    assert_false(ox_case_equal(&was, &is));
    undone = is;
    undone.hold.inbound_deg = was.hold.inbound_deg;
    undone.arrival.heading_deg = was.arrival.heading_deg;
    undone.hold.turns = was.hold.turns;
    undone.hold.leg_s = was.hold.leg_s;
    memcpy(undone.wind, was.wind, sizeof was.wind);
    undone.wind_count = was.wind_count;
    assert_true(ox_case_equal(&was, &undone));
    ox_document_undo(document);
    assert_true(ox_case_equal(&was, ox_document_case(document)));
    app_test_spin_ms(30);
  }
  app_test_close(window);
}

static void fine_dragging_gives_single_units(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  gboolean between = FALSE;
  for (int px = 4; px < 30; px += 3) {
    drag_by(board, OX_HANDLE_INBOUND, px, px, TRUE);
    assert_close(inbound(window), round(inbound(window)), 1e-9, "whole degrees");
    between |= fmod(inbound(window), 5) != 0;
    ox_board_cancel(board);
    app_test_spin_ms(20);
  }
  assert_true(between);
  app_test_close(window);
}

static void a_press_alone_changes_nothing_not_even_an_odd_value(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  OxDocument *document = ox_window_document(window);
  ox_document_set_field(document, ox_field_by_key("hold.inbound_deg"), 242.4, NULL);
  app_test_spin_ms(60);
  double x, y;
  place_of(board, OX_HANDLE_INBOUND, &x, &y);
  assert_true(ox_board_press(board, x + 6, y));
  ox_board_drag_to(board, x + 7, y + 1, FALSE);
  ox_board_release(board);
  assert_close(inbound(window), 242.4, 0, "course");
  assert_true(gtk_widget_is_focus(ox_board_grip(board, OX_HANDLE_INBOUND)));
  app_test_close(window);
}

static void a_drag_within_one_grid_step_solves_and_lays_out_nothing(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  OxDocument *document = ox_window_document(window);
  double x, y;
  place_of(board, OX_HANDLE_INBOUND, &x, &y);
  ox_board_press(board, x, y);
  ox_board_drag_to(board, x + 40, y + 40, FALSE);
  app_test_spin_ms(100);
  guint solves = ox_document_solve_count(document);
  ox_board_counts before = counts_of(window), after;
  for (int i = 0; i < 20; i++) ox_board_drag_to(board, x + 40 + i % 2, y + 40, FALSE);
  app_test_spin_ms(100);
  after = counts_of(window);
  assert_int_equal(ox_document_solve_count(document), solves);
  assert_int_equal(after.layouts, before.layouts);
  assert_int_equal(after.still, before.still);
  ox_board_release(board);
  app_test_close(window);
}

static void sizing_cb(GdkToplevel *surface, GdkToplevelSize *size, guint *count) { ++*count; }

/* Every layout of the window asks the display for the room there is, and waits for the answer. */
static void a_drag_does_not_lay_out_the_window(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  GtkWidget *grip = ox_board_grip(board, OX_HANDLE_OUTBOUND);
  graphene_rect_t before, after;
  double x, y;
  guint sizings = 0;
  place_of(board, OX_HANDLE_OUTBOUND, &x, &y);
  assert_true(ox_board_press(board, x, y));
  ox_board_drag_to(board, x + 25, y - 25, TRUE);
  app_test_spin_ms(200); /* the readout has its room */
  g_signal_connect(gtk_native_get_surface(GTK_NATIVE(window)), "compute-size",
                   G_CALLBACK(sizing_cb), &sizings);
  assert_true(gtk_widget_compute_bounds(grip, GTK_WIDGET(board), &before));
  guint layouts = counts_of(window).layouts;
  for (int i = 0; i < 20; i++) {
    ox_board_drag_to(board, x + 25 - 2 * i, y - 25 + 2 * i, TRUE);
    app_test_spin_ms(25);
  }
  assert_true(counts_of(window).layouts > layouts + 5);
  assert_in_range(sizings, 0, 6); /* of twenty: where words grow */
  assert_true(gtk_widget_compute_bounds(grip, GTK_WIDGET(board), &after));
  assert_true(ox_board_handle_place(board, OX_HANDLE_OUTBOUND, &x, &y));
  graphene_point_t middle;
  graphene_rect_get_center(&after, &middle);
  assert_false(graphene_rect_equal(&before, &after)); /* the grip went along */
  assert_close((double)middle.x, x, 1.5, "the grip's place to the right");
  assert_close((double)middle.y, y, 1.5, "and down");
  ox_board_release(board);
  app_test_close(window);
}

static void a_drag_fills_the_working_once_at_its_end(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  OxDocument *document = ox_window_document(window);
  OxWorkingPanel *working = ox_window_working(window);
  double x, y;
  g_action_group_change_action_state(G_ACTION_GROUP(window), "working",
                                     g_variant_new_boolean(TRUE));
  ox_overlays_set_compare(ox_window_overlays(window), OX_COMPARE_EXACT);
  app_test_spin_ms(200);
  place_of(board, OX_HANDLE_INBOUND, &x, &y);
  guint fills = ox_working_panel_fill_count(working), solves = ox_document_solve_count(document);
  guint sentences = ox_overlays_get_counts(ox_window_overlays(window)).sentences;
  assert_true(ox_board_press(board, x, y));
  /* Across the way from the fix, so that the course turns with every step. */
  for (int i = 0; i < 30; i++) ox_board_drag_to(board, x + 60, y - 45 + 3 * i, TRUE);
  assert_true(ox_document_solve_count(document) > solves + 10); /* the inputs and the time line */
  assert_int_equal(ox_working_panel_fill_count(working), fills);
  assert_int_equal(ox_overlays_get_counts(ox_window_overlays(window)).sentences, sentences);
  ox_board_release(board);
  assert_int_equal(ox_working_panel_fill_count(working), fills + 1);
  assert_int_equal(ox_overlays_get_counts(ox_window_overlays(window)).sentences, sentences + 1);
  app_test_spin_ms(300);
  assert_int_equal(ox_working_panel_fill_count(working), fills + 1);
  app_test_close(window);
}

/* ---- broken off ------------------------------------------------------------------------- */

static void cancelling_brings_back_what_was_and_leaves_no_step(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  OxDocument *document = ox_window_document(window);
  ox_case was = *ox_document_case(document);
  drag_by(board, OX_HANDLE_WIND_FROM, 60, 10, FALSE);
  assert_false(ox_case_equal(&was, ox_document_case(document)));
  ox_board_cancel(board);
  assert_true(ox_case_equal(&was, ox_document_case(document)));
  assert_false(ox_document_can_undo(document));
  assert_false(ox_document_modified(document));
  ox_board_drag_to(board, 10, 10, FALSE); /* the rest of a gesture that was cancelled */
  ox_board_release(board);
  assert_true(ox_case_equal(&was, ox_document_case(document)));
  app_test_close(window);
}

static void another_case_in_mid_drag_ends_it_and_stays_untouched(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  OxDocument *document = ox_window_document(window);
  ox_case other = ox_document_lesson(document)->cases[1].c;
  drag_by(board, OX_HANDLE_INBOUND, 60, 60, FALSE);
  double dragged = inbound(window);
  ox_document_select(document, 1);
  assert_false(ox_board_is_dragging(board));
  ox_board_drag_to(board, 20, 20, FALSE);
  ox_board_release(board);
  assert_true(ox_case_equal(&other, ox_document_case(document)));
  assert_close(ox_document_lesson(document)->cases[0].c.hold.inbound_deg, dragged, 0, "kept");
  ox_document_undo(document);
  assert_int_equal(ox_document_case_index(document), 0);
  assert_false(ox_document_can_undo(document));
  app_test_close(window);
}

static void another_lesson_in_mid_drag_ends_it(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  OxDocument *document = ox_window_document(window);
  drag_by(board, OX_HANDLE_OUTBOUND, 60, -40, FALSE);
  ox_document_take(document, ox_lesson_new(), NULL);
  assert_false(ox_board_is_dragging(board));
  ox_board_drag_to(board, 20, 20, FALSE);
  ox_board_release(board);
  assert_false(ox_document_modified(document));
  assert_false(ox_document_can_undo(document));
  app_test_close(window);
}

static void closing_the_window_in_mid_drag_leaves_the_document_whole(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = g_object_ref(ox_window_document(window));
  drag_by(ox_window_board(window), OX_HANDLE_INBOUND, 60, 60, FALSE);
  app_test_close(window);
  assert_true(ox_document_can_undo(document)); /* the step has an end */
  g_object_unref(document);
}

static void a_window_of_another_size_in_mid_drag_goes_on_from_where_it_is(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  double fix_x, fix_y, x, y;
  drag_by(board, OX_HANDLE_INBOUND, 40, 40, FALSE);
  double before = inbound(window);
  gtk_window_set_default_size(GTK_WINDOW(window), 1300, 800);
  app_test_spin_ms(300);
  assert_true(ox_board_is_dragging(board));
  assert_close(inbound(window), before, 0, "nobody moved it");
  place_of(board, OX_HANDLE_FIX, &fix_x, &fix_y);
  place_of(board, OX_HANDLE_INBOUND, &x, &y);
  assert_true(hypot(x - fix_x, y - fix_y) > 40);
  for (int i = 0; i < 5; i++) ox_board_drag_to(board, x + 10 * i, y + 20 * i, FALSE);
  ox_board_release(board);
  assert_string_equal(ox_document_undo_name(ox_window_document(window)), "Inbound course");
  app_test_close(window);
}

static void dragging_while_it_plays_keeps_the_flight_in_its_range(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  OxPlayer *player = ox_window_player(window);
  ox_player_set_playing(player, TRUE);
  for (int i = 0; i < 6; i++) {
    drag_by(board, OX_HANDLE_OUTBOUND, i % 2 ? -50 : 50, i % 2 ? 40 : -40, FALSE);
    app_test_spin_ms(40);
    ox_board_release(board);
    gtk_window_set_default_size(GTK_WINDOW(window), 1024 + 30 * i, 600 + 20 * i);
    app_test_spin_ms(60);
    assert_true(ox_player_time_s(player) >= ox_player_begin_s(player));
    assert_true(ox_player_time_s(player) <= ox_player_end_s(player));
  }
  app_test_close(window);
}

static void places_that_are_no_places_do_nothing(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  ox_case was = *ox_document_case(ox_window_document(window));
  assert_false(ox_board_press(board, (double)NAN, 3));
  assert_false(ox_board_is_dragging(board));
  ox_board_point_at(board, HUGE_VAL, (double)NAN);
  double x, y;
  place_of(board, OX_HANDLE_ARRIVAL, &x, &y);
  ox_board_press(board, x, y);
  ox_board_drag_to(board, (double)NAN, (double)NAN, FALSE);
  ox_board_drag_to(board, HUGE_VAL, 0, FALSE);
  ox_board_release(board);
  assert_true(ox_case_equal(&was, ox_document_case(ox_window_document(window))));
  app_test_close(window);
}

/* ---- readout ---------------------------------------------------------------------------- */

static void assert_on_board(OxBoard *board) {
  GtkWidget *readout = app_test_find_type_name(GTK_WIDGET(board), "OxReadout");
  graphene_rect_t at;
  assert_non_null(readout);
  assert_true(gtk_widget_get_visible(readout));
  assert_true(gtk_widget_compute_bounds(readout, GTK_WIDGET(board), &at));
  assert_true(at.origin.x >= 0 && at.origin.y >= 0);
  assert_true(at.origin.x + at.size.width <= (float)gtk_widget_get_width(GTK_WIDGET(board)));
  assert_true(at.origin.y + at.size.height <= (float)gtk_widget_get_height(GTK_WIDGET(board)));
}

static void the_readout_never_leaves_the_board(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  double width = gtk_widget_get_width(GTK_WIDGET(board));
  double height = gtk_widget_get_height(GTK_WIDGET(board)), x, y;
  place_of(board, OX_HANDLE_ARRIVAL, &x, &y);
  ox_board_press(board, x, y);
  const double to[][2] = {{0, 0},      {width, 0},          {0, height},       {width, height},
                          {-500, -50}, {width + 900, 300}, {200, height * 3}, {width / 2, 1}};
  for (size_t i = 0; i < G_N_ELEMENTS(to); i++) {
    ox_board_drag_to(board, to[i][0], to[i][1], FALSE);
    app_test_spin_ms(60);
    assert_on_board(board);
  }
  ox_board_release(board);
  for (ox_handle h = 0; h < OX_HANDLE_COUNT; h++) {
    gtk_widget_grab_focus(ox_board_grip(board, h));
    app_test_spin_ms(60);
    assert_on_board(board);
  }
  app_test_close(window);
}

static void buttons_of_the_readout_step_without_dragging(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  OxDocument *document = ox_window_document(window);
  double x, y, was = inbound(window);
  place_of(board, OX_HANDLE_INBOUND, &x, &y);
  ox_board_press(board, x, y);
  ox_board_release(board);
  app_test_spin_ms(60);
  GtkWidget *more = app_test_find_button(GTK_WIDGET(board), "list-add-symbolic");
  GtkWidget *less = app_test_find_button(GTK_WIDGET(board), "list-remove-symbolic");
  assert_true(gtk_widget_is_visible(more) && gtk_widget_is_visible(less));
  assert_true(gtk_widget_get_width(more) >= 24 && gtk_widget_get_height(more) >= 24);
  gtk_test_accessible_assert_property(GTK_ACCESSIBLE(more), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      "Inbound course More");
  for (int i = 0; i < 3; i++) g_signal_emit_by_name(more, "clicked");
  assert_close(inbound(window), was + 3, 1e-9, "three more");
  g_signal_emit_by_name(less, "clicked");
  assert_close(inbound(window), was + 2, 1e-9, "one less");
  assert_true(gtk_widget_is_focus(ox_board_grip(board, OX_HANDLE_INBOUND)));
  place_of(board, OX_HANDLE_TURNS, &x, &y);
  ox_board_press(board, x, y);
  ox_board_release(board);
  ox_turns turns = ox_document_case(document)->hold.turns;
  g_signal_emit_by_name(app_test_find_button(GTK_WIDGET(board), "Other Side"), "clicked");
  assert_int_not_equal(ox_document_case(document)->hold.turns, turns);
  app_test_close(window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_handle_of_the_demo_lies_on_the_board_and_is_hit_there),
      cmocka_unit_test(hovering_lays_out_and_draws_nothing_of_the_picture),
      cmocka_unit_test(a_drag_of_the_course_is_one_step_that_shows_at_once),
      cmocka_unit_test(every_handle_changes_what_it_stands_for_and_nothing_else),
      cmocka_unit_test(fine_dragging_gives_single_units),
      cmocka_unit_test(a_press_alone_changes_nothing_not_even_an_odd_value),
      cmocka_unit_test(a_drag_within_one_grid_step_solves_and_lays_out_nothing),
      cmocka_unit_test(a_drag_does_not_lay_out_the_window),
      cmocka_unit_test(a_drag_fills_the_working_once_at_its_end),
      cmocka_unit_test(cancelling_brings_back_what_was_and_leaves_no_step),
      cmocka_unit_test(another_case_in_mid_drag_ends_it_and_stays_untouched),
      cmocka_unit_test(another_lesson_in_mid_drag_ends_it),
      cmocka_unit_test(closing_the_window_in_mid_drag_leaves_the_document_whole),
      cmocka_unit_test(a_window_of_another_size_in_mid_drag_goes_on_from_where_it_is),
      cmocka_unit_test(dragging_while_it_plays_keeps_the_flight_in_its_range),
      cmocka_unit_test(places_that_are_no_places_do_nothing),
      cmocka_unit_test(the_readout_never_leaves_the_board),
      cmocka_unit_test(buttons_of_the_readout_step_without_dragging),
  };
  return cmocka_run_group_tests_name("board", tests, app_test_init, NULL);
}
