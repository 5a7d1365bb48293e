/* The pen on a display: what a hand draws is in the lesson, can be undone, and is read again. */
#include "app_test.h"

#include "ox_keys.h"
#include "oxbow/lesson.h"

static void act(OxWindow *window, const char *action, const char *target) {
  g_action_group_activate_action(G_ACTION_GROUP(window), action,
                                 target ? g_variant_new_string(target) : NULL);
  app_test_spin_ms(30);
}

static OxWindow *window_with_pen(OxPen **pen) {
  OxWindow *window = app_test_window(NULL);
  *pen = ox_window_pen(window);
  assert_false(gtk_widget_get_visible(GTK_WIDGET(*pen)));
  act(window, "pen", NULL);
  app_test_spin_ms(100);
  assert_true(gtk_widget_get_mapped(GTK_WIDGET(*pen)));
  assert_ptr_equal(gtk_window_get_focus(GTK_WINDOW(window)), GTK_WIDGET(*pen));
  return window;
}

/* A curve of many points from (x, y) on, px. */
static void draw(OxPen *pen, double x, double y) {
  ox_pen_press(pen, x, y);
  for (int i = 1; i <= 60; i++) ox_pen_move(pen, x + 2 * i, y + 30 * sin(i / 10.0));
  ox_pen_release(pen);
}

static const ox_ink *ink_of(OxWindow *window) {
  return ox_document_ink(ox_window_document(window));
}

static GtkEventController *controller_of(OxPen *pen, GType type) {
  GListModel *all = gtk_widget_observe_controllers(GTK_WIDGET(pen));
  GtkEventController *found = NULL;
  for (guint i = 0; i < g_list_model_get_n_items(all); i++) {
    GtkEventController *controller = g_list_model_get_item(all, i);
    if (G_OBJECT_TYPE(controller) == type) found = controller;
    g_object_unref(controller);
  }
  g_object_unref(all);
  assert_non_null(found);
  return found;
}

static gboolean press_key(OxPen *pen, guint key, GdkModifierType modifiers) {
  gboolean taken = FALSE;
  g_signal_emit_by_name(controller_of(pen, GTK_TYPE_EVENT_CONTROLLER_KEY), "key-pressed", key, 0,
                        modifiers, &taken);
  return taken;
}

static void a_stroke_lies_where_it_was_drawn_and_is_one_step(void **state) {
  OxPen *pen;
  OxWindow *window = window_with_pen(&pen);
  OxDocument *document = ox_window_document(window);
  ox_viewport viewport;
  assert_true(ox_board_get_viewport(ox_window_board(window), &viewport));
  act(window, "pen-tool", "blue");
  act(window, "pen-width", "broad");
  draw(pen, 120, 150);
  const ox_ink *ink = ink_of(window);
  assert_int_equal(ink->stroke_count, 1);
  assert_int_equal(ink->strokes[0].colour, OX_INK_BLUE);
  assert_int_equal(ink->strokes[0].width, OX_INK_BROAD);
  assert_in_range(ink->strokes[0].count, 5, 40); /* 61 points, simplified */
  ox_vec first = ox_viewport_to_dev(&viewport, ink->strokes[0].points_nm[0]);
  assert_close(first.x, 120, 0.1, "x of its first point");
  assert_close(first.y, 150, 0.1, "y of its first point");
  assert_string_equal(ox_document_undo_name(document), "Pen");
  draw(pen, 130, 250);
  assert_int_equal(ink_of(window)->stroke_count, 2);
  ox_document_undo(document);
  assert_int_equal(ink_of(window)->stroke_count, 1);
  ox_document_undo(document);
  assert_null(ink_of(window));
  ox_document_redo(document);
  assert_int_equal(ink_of(window)->stroke_count, 1);
  app_test_close(window);
}

static void what_was_drawn_is_saved_and_read_again(void **state) {
  OxPen *pen;
  OxWindow *window = window_with_pen(&pen);
  draw(pen, 120, 150);
  act(window, "pen-tool", "vermillion");
  draw(pen, 120, 200);
  ox_ink *drawn = ox_ink_copy(ink_of(window));
  char *path = app_test_path("drawn.oxbow");
  assert_true(ox_window_save_path(window, path));
  assert_false(ox_document_modified(ox_window_document(window)));
  app_test_close(window);
  window = app_test_window(NULL);
  assert_true(ox_window_open_path(window, path));
  assert_true(ox_ink_equal(ink_of(window), drawn));
  app_test_spin_ms(100);
  ox_ink_free(drawn);
  g_free(path);
  app_test_close(window);
  app_test_clean(NULL);
}

static void the_eraser_cuts_and_clear_takes_all(void **state) {
  OxPen *pen;
  OxWindow *window = window_with_pen(&pen);
  OxDocument *document = ox_window_document(window);
  ox_pen_press(pen, 100, 200);
  ox_pen_move(pen, 300, 200);
  ox_pen_release(pen);
  act(window, "pen-tool", "eraser");
  ox_pen_press(pen, 200, 150);
  ox_pen_move(pen, 200, 250);
  ox_pen_release(pen);
  assert_int_equal(ink_of(window)->stroke_count, 2);
  assert_string_equal(ox_document_undo_name(document), "Erase");
  ox_pen_press(pen, 40, 40); /* beside everything: no step */
  ox_pen_release(pen);
  assert_int_equal(ink_of(window)->stroke_count, 2);
  act(window, "pen-clear", NULL);
  assert_null(ink_of(window));
  assert_string_equal(ox_document_undo_name(document), "Clear Pen Marks");
  ox_document_undo(document);
  assert_int_equal(ink_of(window)->stroke_count, 2);
  ox_document_undo(document);
  assert_int_equal(ink_of(window)->stroke_count, 1);
  app_test_close(window);
}

static void escape_takes_back_the_stroke_and_then_puts_the_pen_down(void **state) {
  OxPen *pen;
  OxWindow *window = window_with_pen(&pen);
  ox_pen_press(pen, 100, 200);
  ox_pen_move(pen, 150, 250);
  assert_true(ox_pen_is_down(pen));
  assert_true(press_key(pen, GDK_KEY_Escape, 0));
  assert_false(ox_pen_is_down(pen));
  ox_pen_release(pen);
  assert_null(ink_of(window));
  assert_true(gtk_widget_get_visible(GTK_WIDGET(pen)));
  assert_true(press_key(pen, GDK_KEY_Escape, 0));
  app_test_spin_ms(50);
  assert_false(gtk_widget_get_visible(GTK_WIDGET(pen)));
  assert_ptr_equal(gtk_window_get_focus(GTK_WINDOW(window)), GTK_WIDGET(ox_window_board(window)));
  app_test_close(window);
}

static void the_keys_draw_alone(void **state) {
  OxPen *pen;
  OxWindow *window = window_with_pen(&pen);
  assert_true(press_key(pen, GDK_KEY_space, 0));
  for (int i = 0; i < 5; i++) assert_true(press_key(pen, GDK_KEY_Right, 0));
  assert_true(press_key(pen, GDK_KEY_Down, GDK_SHIFT_MASK));
  assert_true(press_key(pen, GDK_KEY_space, 0));
  const ox_ink_stroke *stroke = &ink_of(window)->strokes[0];
  ox_viewport viewport;
  ox_board_get_viewport(ox_window_board(window), &viewport);
  ox_vec from = ox_viewport_to_dev(&viewport, stroke->points_nm[0]);
  ox_vec to = ox_viewport_to_dev(&viewport, stroke->points_nm[stroke->count - 1]);
  assert_close(to.x - from.x, 60, 0.1, "five steps");
  assert_close(to.y - from.y, 2, 0.1, "one small one");
  assert_false(press_key(pen, GDK_KEY_z, GDK_CONTROL_MASK)); /* Undo is the window's */
  assert_false(press_key(pen, GDK_KEY_x, 0));
  app_test_close(window);
}

static void only_the_pen_is_drawn_while_a_stroke_grows(void **state) {
  OxPen *pen;
  OxWindow *window = window_with_pen(&pen);
  app_test_spin_ms(100);
  ox_board_counts before = ox_board_get_counts(ox_window_board(window));
  guint drawn = ox_pen_draw_count(pen);
  ox_pen_press(pen, 100, 200);
  for (int i = 0; i < 10; i++) {
    ox_pen_move(pen, 100 + 10 * i, 200);
    app_test_spin_ms(30);
  }
  ox_board_counts after = ox_board_get_counts(ox_window_board(window));
  assert_int_equal(after.layouts, before.layouts);
  assert_int_equal(after.still, before.still);
  assert_true(ox_pen_draw_count(pen) > drawn + 3);
  ox_pen_release(pen);
  app_test_spin_ms(100);
  assert_int_equal(ox_board_get_counts(ox_window_board(window)).layouts, before.layouts + 1);
  app_test_close(window);
}

/* The heel of the hand is on the glass before the stylus, and fingers come after it. */
static void fingers_are_not_listened_to_while_the_stylus_draws(void **state) {
  OxPen *pen;
  OxWindow *window = window_with_pen(&pen);
  GtkEventController *stylus = controller_of(pen, GTK_TYPE_GESTURE_STYLUS);
  GtkEventController *drag = controller_of(pen, GTK_TYPE_GESTURE_DRAG);
  ox_pen_press(pen, 300, 300); /* the heel */
  ox_pen_move(pen, 305, 300);
  g_signal_emit_by_name(stylus, "down", 100.0, 200.0);
  g_signal_emit_by_name(stylus, "motion", 150.0, 210.0);
  g_signal_emit_by_name(drag, "drag-begin", 320.0, 320.0);
  g_signal_emit_by_name(drag, "drag-end", 0.0, 0.0);
  assert_true(ox_pen_is_down(pen));
  g_signal_emit_by_name(stylus, "up", 200.0, 220.0);
  assert_int_equal(ink_of(window)->stroke_count, 1);
  ox_viewport viewport;
  ox_board_get_viewport(ox_window_board(window), &viewport);
  const ox_ink_stroke *stroke = &ink_of(window)->strokes[0];
  assert_close(ox_viewport_to_dev(&viewport, stroke->points_nm[0]).x, 100, 0.1, "from");
  assert_close(ox_viewport_to_dev(&viewport, stroke->points_nm[stroke->count - 1]).x, 200, 0.1,
               "to");
  app_test_close(window);
}

static void the_pointer_spot_draws_nothing(void **state) {
  OxPen *pen;
  OxWindow *window = window_with_pen(&pen);
  act(window, "pen-tool", "spot");
  assert_int_equal(ox_pen_get_tool(pen), OX_PEN_POINTS);
  guint drawn = ox_pen_draw_count(pen);
  assert_false(ox_pen_press(pen, 100, 200));
  ox_pen_move(pen, 150, 200);
  app_test_spin_ms(100);
  assert_true(ox_pen_draw_count(pen) > drawn);
  ox_pen_release(pen);
  assert_null(ink_of(window));
  act(window, "pen-tool", "no such tool");
  assert_int_equal(ox_pen_get_tool(pen), OX_PEN_POINTS);
  app_test_close(window);
}

static int count_named(GtkWidget *widget) {
  int named = 0;
  if (GTK_IS_BUTTON(widget)) {
    assert_true(gtk_test_accessible_has_property(GTK_ACCESSIBLE(widget),
                                                 GTK_ACCESSIBLE_PROPERTY_LABEL));
    assert_true(gtk_widget_get_focusable(widget));
    assert_non_null(gtk_widget_get_tooltip_text(widget));
    return 1;
  }
  for (GtkWidget *child = gtk_widget_get_first_child(widget); child;
       child = gtk_widget_get_next_sibling(child))
    named += count_named(child);
  return named;
}

static void every_tool_has_a_name_and_is_reached_by_keys(void **state) {
  OxPen *pen;
  OxWindow *window = window_with_pen(&pen);
  GtkWidget *strip = gtk_widget_get_next_sibling(GTK_WIDGET(pen));
  assert_int_equal(count_named(strip), 9);
  int height;
  gtk_widget_measure(strip, GTK_ORIENTATION_VERTICAL, -1, &height, NULL, NULL, NULL);
  assert_true(height <= gtk_widget_get_height(GTK_WIDGET(ox_window_board(window))));
  /* and it stands on no label of the picture */
  graphene_rect_t tools, board;
  GtkWidget *overlay = gtk_widget_get_parent(strip);
  app_test_spin_ms(100);
  assert_true(gtk_widget_compute_bounds(strip, overlay, &tools));
  assert_true(gtk_widget_compute_bounds(GTK_WIDGET(ox_window_board(window)), overlay, &board));
  assert_true(tools.origin.x + tools.size.width <= board.origin.x);
  app_test_close(window);
}

/* An accelerator is heard before everything else: it must not stand anywhere a second time. */
static void no_key_has_two_meanings(void **state) {
  size_t count;
  const ox_key *keys = ox_keys(&count);
  for (size_t a = 0; a < count; a++)
    for (size_t b = a + 1; b < count; b++) {
      if (keys[a].scope != keys[b].scope && keys[a].scope != OX_KEYS_EVERYWHERE &&
          keys[b].scope != OX_KEYS_EVERYWHERE)
        continue;
      for (int i = 0; i < 3 && keys[a].keys[i]; i++)
        for (int k = 0; k < 3 && keys[b].keys[k]; k++)
          if (g_str_equal(keys[a].keys[i], keys[b].keys[k]))
            fail_msg("%s is %s and %s", keys[a].keys[i], keys[a].action, keys[b].action);
    }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_stroke_lies_where_it_was_drawn_and_is_one_step),
      cmocka_unit_test(what_was_drawn_is_saved_and_read_again),
      cmocka_unit_test(the_eraser_cuts_and_clear_takes_all),
      cmocka_unit_test(escape_takes_back_the_stroke_and_then_puts_the_pen_down),
      cmocka_unit_test(the_keys_draw_alone),
      cmocka_unit_test(only_the_pen_is_drawn_while_a_stroke_grows),
      cmocka_unit_test(fingers_are_not_listened_to_while_the_stylus_draws),
      cmocka_unit_test(the_pointer_spot_draws_nothing),
      cmocka_unit_test(no_key_has_two_meanings),
      cmocka_unit_test(every_tool_has_a_name_and_is_reached_by_keys),
  };
  return cmocka_run_group_tests(tests, app_test_init, NULL);
}
