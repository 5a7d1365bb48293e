/* The keyboard and assistive technology do what the pointer does. */
#include <locale.h>

#include "app_test.h"

#include "ox_grip.h"
#include "ox_number_field.h"

static const ox_case *shown(OxWindow *window) {
  return ox_document_case(ox_window_document(window));
}

static GtkWidget *focus_grip(OxWindow *window, ox_handle h) {
  GtkWidget *grip = ox_board_grip(ox_window_board(window), h);
  assert_true(gtk_widget_grab_focus(grip));
  return grip;
}

/* ---- Tab -------------------------------------------------------------------------------- */

static void tab_walks_from_the_board_over_the_handles_and_out(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  gtk_widget_grab_focus(GTK_WIDGET(board));
  for (ox_handle h = 0; h < OX_HANDLE_COUNT; h++) {
    assert_true(gtk_widget_child_focus(GTK_WIDGET(window), GTK_DIR_TAB_FORWARD));
    assert_true(gtk_widget_is_focus(ox_board_grip(board, h)));
  }
  assert_true(gtk_widget_child_focus(GTK_WIDGET(window), GTK_DIR_TAB_FORWARD));
  GtkWidget *after = gtk_root_get_focus(GTK_ROOT(window));
  assert_false(after == GTK_WIDGET(board) || gtk_widget_is_ancestor(after, GTK_WIDGET(board)));
  for (int h = OX_HANDLE_COUNT - 1; h >= 0; h--) {
    assert_true(gtk_widget_child_focus(GTK_WIDGET(window), GTK_DIR_TAB_BACKWARD));
    assert_true(gtk_widget_is_focus(ox_board_grip(board, (ox_handle)h)));
  }
  assert_true(gtk_widget_child_focus(GTK_WIDGET(window), GTK_DIR_TAB_BACKWARD));
  assert_true(gtk_widget_is_focus(GTK_WIDGET(board)));
  app_test_close(window);
}

/* ---- keys ------------------------------------------------------------------------------- */

static void press(OxWindow *window, ox_handle h, guint key, GdkModifierType held, gboolean used) {
  assert_int_equal(ox_board_key(ox_window_board(window), h, key, held), used);
}

static void arrows_step_by_one_and_pages_by_ten_and_ends_are_limits(void **state) {
  static const struct {
    guint key;
    GdkModifierType held;
    double course, kt, leg_s;
  } rows[] = {
      {GDK_KEY_Right, 0, 241, 21, 61},
      {GDK_KEY_Up, 0, 242, 22, 62},
      {GDK_KEY_Left, 0, 241, 21, 61},
      {GDK_KEY_Down, 0, 240, 20, 60},
      {GDK_KEY_Page_Up, 0, 250, 30, 70},
      {GDK_KEY_Right, GDK_SHIFT_MASK, 260, 40, 80},
      {GDK_KEY_Page_Down, 0, 250, 30, 70},
      {GDK_KEY_Left, GDK_SHIFT_MASK, 240, 20, 60},
      {GDK_KEY_Home, 0, 1, 0, 10},
      {GDK_KEY_End, 0, 360, 250, 600},
      {GDK_KEY_Right, 0, 1, 250, 600},
      {GDK_KEY_Left, 0, 360, 249, 599},
  };
  OxWindow *window = app_test_window(NULL);
  ox_document_select(ox_window_document(window), 1);
  ox_case c = *shown(window);
  c.hold.inbound_deg = c.arrival.heading_deg = 240;
  c.wind[0].kt = 20;
  c.hold.leg_s = 60;
  ox_document_edit(ox_window_document(window), &c, NULL);
  for (size_t i = 0; i < G_N_ELEMENTS(rows); i++) {
    press(window, OX_HANDLE_INBOUND, rows[i].key, rows[i].held, TRUE);
    press(window, OX_HANDLE_ARRIVAL, rows[i].key, rows[i].held, TRUE);
    press(window, OX_HANDLE_WIND_KT, rows[i].key, rows[i].held, TRUE);
    press(window, OX_HANDLE_OUTBOUND, rows[i].key, rows[i].held, TRUE);
    assert_close(shown(window)->hold.inbound_deg, rows[i].course, 1e-9, "course");
    assert_close(shown(window)->arrival.heading_deg, rows[i].course, 1e-9, "arrival");
    assert_close(shown(window)->wind[0].kt, rows[i].kt, 1e-9, "wind");
    assert_close(shown(window)->hold.leg_s, rows[i].leg_s, 1e-9, "leg");
  }
  app_test_close(window);
}

static void other_keys_go_on_to_the_board(void **state) {
  OxWindow *window = app_test_window(NULL);
  ox_case was = *shown(window);
  const guint other[] = {GDK_KEY_space, GDK_KEY_a, GDK_KEY_bracketleft, GDK_KEY_Tab};
  for (ox_handle h = 0; h < OX_HANDLE_COUNT; h++) {
    for (size_t i = 0; i < G_N_ELEMENTS(other); i++) press(window, h, other[i], 0, FALSE);
    press(window, h, GDK_KEY_Left, GDK_CONTROL_MASK, FALSE); /* pans */
  }
  press(window, OX_HANDLE_FIX, GDK_KEY_Right, 0, FALSE);
  assert_true(ox_case_equal(&was, shown(window)));
  app_test_close(window);
}

static void left_and_right_name_the_turns(void **state) {
  OxWindow *window = app_test_window(NULL);
  press(window, OX_HANDLE_TURNS, GDK_KEY_Left, 0, TRUE);
  assert_int_equal(shown(window)->hold.turns, OX_TURNS_LEFT);
  press(window, OX_HANDLE_TURNS, GDK_KEY_Left, 0, TRUE);
  assert_int_equal(shown(window)->hold.turns, OX_TURNS_LEFT);
  press(window, OX_HANDLE_TURNS, GDK_KEY_Right, 0, TRUE);
  assert_int_equal(shown(window)->hold.turns, OX_TURNS_RIGHT);
  g_signal_emit_by_name(focus_grip(window, OX_HANDLE_TURNS), "clicked");
  assert_int_equal(shown(window)->hold.turns, OX_TURNS_LEFT);
  app_test_close(window);
}

static void keys_in_succession_are_one_step_and_escape_brings_the_value_back(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  ox_case was = *shown(window);
  focus_grip(window, OX_HANDLE_INBOUND);
  ox_document_set_clock(document, 0);
  for (int i = 0; i < 7; i++) press(window, OX_HANDLE_INBOUND, GDK_KEY_Right, 0, TRUE);
  ox_document_undo(document);
  assert_true(ox_case_equal(&was, shown(window)));
  ox_document_redo(document);
  press(window, OX_HANDLE_INBOUND, GDK_KEY_Escape, 0, TRUE);
  assert_true(ox_case_equal(&was, shown(window)));
  press(window, OX_HANDLE_INBOUND, GDK_KEY_Escape, 0, FALSE); /* nothing left: goes to the board */
  app_test_close(window);
}

static void enter_leads_to_the_input_with_the_exact_value(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  ox_document_select(document, 1);
  for (ox_handle h = 0; h < OX_HANDLE_COUNT; h++) {
    if (h == OX_HANDLE_TURNS) continue; /* pressed, not typed */
    GtkWidget *grip = focus_grip(window, h);
    if (ox_handle_is_slider(h))
      press(window, h, GDK_KEY_Return, 0, TRUE);
    else
      g_signal_emit_by_name(grip, "clicked");
    const char *key = ox_handle_key(h, shown(window));
    GtkWidget *editor = ox_inputs_panel_editor(ox_window_inputs(window), key);
    GtkWidget *focus = gtk_root_get_focus(GTK_ROOT(window));
    assert_non_null(focus);
    if (focus != editor && !gtk_widget_is_ancestor(focus, editor))
      print_error("%s does not lead to %s\n", ox_handle_name(h), key);
    assert_true(focus == editor || gtk_widget_is_ancestor(focus, editor));
  }
  app_test_close(window);
}

/* ---- names and values ------------------------------------------------------------------- */

static void every_grip_has_role_name_and_value_that_follow(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  OxDocument *document = ox_window_document(window);
  for (int round = 0; round < 2; round++) {
    for (ox_handle h = 0; h < OX_HANDLE_COUNT; h++) {
      GtkAccessible *grip = GTK_ACCESSIBLE(ox_board_grip(board, h));
      char words[80];
      ox_handle_words(words, sizeof words, h, shown(window), ox_document_flight(document));
      gtk_test_accessible_assert_role(grip, ox_handle_is_slider(h) ? GTK_ACCESSIBLE_ROLE_SLIDER
                                                                   : GTK_ACCESSIBLE_ROLE_BUTTON);
      gtk_test_accessible_assert_property(grip, GTK_ACCESSIBLE_PROPERTY_LABEL, ox_handle_name(h));
      gtk_test_accessible_assert_property(grip, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words);
      if (!ox_handle_is_slider(h)) continue;
      ox_handle_range range = ox_handle_range_of(h, shown(window), ox_document_flight(document));
      gtk_test_accessible_assert_property(grip, GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, words);
      assert_close(ox_grip_value(GTK_WIDGET(grip)), range.value, 1e-9, ox_handle_name(h));
    }
    ox_document_select(document, 1);
  }
  app_test_close(window);
}

static void a_value_set_by_assistive_technology_is_an_edit(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  gtk_range_set_value(GTK_RANGE(ox_board_grip(board, OX_HANDLE_INBOUND)), 97);
  assert_close(shown(window)->hold.inbound_deg, 97, 1e-9, "course");
  gtk_range_set_value(GTK_RANGE(ox_board_grip(board, OX_HANDLE_WIND_KT)), 33);
  assert_close(shown(window)->wind[0].kt, 33, 1e-9, "wind");
  assert_true(ox_document_can_undo(ox_window_document(window)));
  app_test_close(window);
}

static void figures_are_the_same_with_a_decimal_comma(void **state) {
  assert_non_null(setlocale(LC_ALL, "de_DE.UTF-8"));
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  ox_document_set_field(ox_window_document(window), ox_field_by_key("hold.inbound_deg"), 240.5,
                        NULL);
  focus_grip(window, OX_HANDLE_INBOUND);
  assert_string_equal(ox_board_readout(board), "Inbound course: 240.5° magnetic");
  press(window, OX_HANDLE_INBOUND, GDK_KEY_Right, 0, TRUE);
  assert_close(shown(window)->hold.inbound_deg, 241, 0, "course");
  app_test_close(window);
  setlocale(LC_ALL, "C.UTF-8");
}

/* ---- seen ------------------------------------------------------------------------------- */

static double linear(double c) { return c <= 0.03928 ? c / 12.92 : pow((c + 0.055) / 1.055, 2.4); }

/* WCAG 2.1, 1.4.3: (L1 + 0.05) / (L2 + 0.05). */
static double contrast(const GdkRGBA *a, const GdkRGBA *b) {
  double light[2];
  const GdkRGBA *both[2] = {a, b};
  for (int i = 0; i < 2; i++)
    light[i] = 0.2126 * linear((double)both[i]->red) + 0.7152 * linear((double)both[i]->green) +
               0.0722 * linear((double)both[i]->blue);
  return (fmax(light[0], light[1]) + 0.05) / (fmin(light[0], light[1]) + 0.05);
}

/* WCAG 2.1, 1.4.11: 3:1 for what one must see to operate it. */
static void rings_and_focus_rings_stand_out_three_to_one_and_targets_are_24_px(void **state) {
  const char *const grounds[] = {"#ffffff", "#fff9ee", "#fff4dc", "#fff6e0",
                                 "#1e1e1e", "#292519", "#000000", "#1c180c"};
  for (int palette = 0; palette < OX_PALETTE_COUNT; palette++) {
    ox_grip_colours k = ox_grip_colours_for((ox_palette_id)palette);
    assert_true(contrast(&k.ring, &k.ground) >= 3);
    assert_true(contrast(&k.focus, &k.ground) >= 3);
    gboolean dark = palette == OX_PALETTE_DARK || palette == OX_PALETTE_CONTRAST_DARK;
    for (size_t i = dark ? 4 : 0; i < (dark ? 8u : 4u); i++) {
      GdkRGBA ground;
      assert_true(gdk_rgba_parse(&ground, grounds[i]));
      assert_true(contrast(&k.ring, &ground) >= 3);
      assert_true(contrast(&k.focus, &ground) >= 3);
    }
  }
  OxWindow *window = app_test_window(NULL);
  for (ox_handle h = 0; h < OX_HANDLE_COUNT; h++) {
    GtkWidget *grip = ox_board_grip(ox_window_board(window), h);
    assert_true(gtk_widget_get_width(grip) >= 24 && gtk_widget_get_height(grip) >= 24);
  }
  app_test_close(window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(tab_walks_from_the_board_over_the_handles_and_out),
      cmocka_unit_test(arrows_step_by_one_and_pages_by_ten_and_ends_are_limits),
      cmocka_unit_test(other_keys_go_on_to_the_board),
      cmocka_unit_test(left_and_right_name_the_turns),
      cmocka_unit_test(keys_in_succession_are_one_step_and_escape_brings_the_value_back),
      cmocka_unit_test(enter_leads_to_the_input_with_the_exact_value),
      cmocka_unit_test(every_grip_has_role_name_and_value_that_follow),
      cmocka_unit_test(a_value_set_by_assistive_technology_is_an_edit),
      cmocka_unit_test(figures_are_the_same_with_a_decimal_comma),
      cmocka_unit_test(rings_and_focus_rings_stand_out_three_to_one_and_targets_are_24_px),
  };
  return cmocka_run_group_tests_name("board keys", tests, app_test_init, NULL);
}
