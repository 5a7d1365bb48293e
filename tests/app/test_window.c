/* The window on a display: one edit shows everywhere once, playing redraws only what moves, and it
 * all fits in 1024 x 600. */
#include "app_test.h"

#include "ox_instant_label.h"
#include "ox_number_field.h"
#include "ox_working_row.h"

static ox_board_counts counts_of(OxWindow *window) {
  return ox_board_get_counts(ox_window_board(window));
}

static void every_template_instantiates_and_finalises(void **state) {
  const GType types[] = {OX_TYPE_BOARD,        OX_TYPE_CASE_BAR,      OX_TYPE_INPUTS_PANEL,
                         OX_TYPE_NUMBER_FIELD, OX_TYPE_TRANSPORT,     OX_TYPE_WORKING_PANEL,
                         OX_TYPE_WORKING_ROW};
  for (size_t i = 0; i < G_N_ELEMENTS(types); i++) {
    GObject *object = g_object_ref_sink(g_object_new(types[i], NULL));
    gpointer gone = object;
    g_object_add_weak_pointer(object, &gone);
    g_object_unref(object);
    if (gone) print_error("%s is not finalised\n", g_type_name(types[i]));
    assert_null(gone);
  }
  app_test_close(ox_window_new(NULL));
}

static void it_opens_with_the_demo_lesson_and_fits_in_1024_by_600(void **state) {
  OxWindow *window = app_test_window(NULL);
  int width, height;
  assert_true(ox_document_case_count(ox_window_document(window)) > 1);
  assert_null(ox_document_path(ox_window_document(window)));
  assert_false(ox_document_modified(ox_window_document(window)));
  assert_true(ox_window_is_pristine(window));
  g_action_group_activate_action(G_ACTION_GROUP(window), "working", NULL);
  app_test_spin_ms(200);
  gtk_widget_measure(GTK_WIDGET(window), GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL, NULL);
  gtk_widget_measure(GTK_WIDGET(window), GTK_ORIENTATION_VERTICAL, 1024, &height, NULL, NULL,
                     NULL);
  print_message("# the window needs %d x %d\n", width, height);
  assert_true(width <= 1024);
  assert_true(height <= 600);
  GtkWidget *board = GTK_WIDGET(ox_window_board(window));
  assert_true(gtk_widget_get_width(board) >= 360);
  assert_true(gtk_widget_get_height(board) >= 360);
  app_test_close(window);
}

static void no_case_of_the_demo_needs_more_room(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  g_action_group_activate_action(G_ACTION_GROUP(window), "working", NULL);
  for (size_t i = 0; i < ox_document_case_count(document); i++) {
    int width, height;
    ox_document_select(document, i);
    app_test_spin_ms(60);
    gtk_widget_measure(GTK_WIDGET(window), GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL,
                       NULL);
    gtk_widget_measure(GTK_WIDGET(window), GTK_ORIENTATION_VERTICAL, 1024, &height, NULL, NULL,
                       NULL);
    assert_true(width <= 1024);
    assert_true(height <= 600);
    assert_true(ox_working_panel_row_count(ox_window_working(window)) > 8);
    assert_int_equal(ox_working_panel_advice_count(ox_window_working(window)),
                     ox_document_flight(document)->advice_count);
  }
  app_test_close(window);
}

static void one_edit_is_one_solve_and_one_layout_and_none_when_nothing_changed(void **state) {
  OxWindow *window = app_test_window(NULL);
  g_action_group_change_action_state(G_ACTION_GROUP(window), "working",
                                     g_variant_new_boolean(TRUE));
  app_test_spin_ms(300);
  OxDocument *document = ox_window_document(window);
  OxInputsPanel *inputs = ox_window_inputs(window);
  ox_case edited = *ox_document_case(document);
  guint solves = ox_document_solve_count(document);
  guint fills = ox_working_panel_fill_count(ox_window_working(window));
  ox_board_counts before = counts_of(window), after;

  ox_document_edit(document, &edited, NULL);
  app_test_spin_ms(300);
  after = counts_of(window);
  assert_int_equal(ox_document_solve_count(document), solves);
  assert_int_equal(after.layouts, before.layouts);
  assert_int_equal(after.still, before.still);
  assert_int_equal(after.moving, before.moving);

  GtkWidget *course = ox_inputs_panel_editor(inputs, "hold.inbound_deg");
  gtk_editable_set_text(GTK_EDITABLE(ox_number_field_get_text(OX_NUMBER_FIELD(course))), "123");
  app_test_spin_ms(300);
  after = counts_of(window);
  assert_close(ox_document_case(document)->hold.inbound_deg, 123, 0, "typed");
  assert_int_equal(ox_document_solve_count(document), solves + 1);
  assert_int_equal(after.layouts, before.layouts + 1);
  assert_int_equal(after.still, before.still + 1);
  assert_int_equal(ox_working_panel_fill_count(ox_window_working(window)), fills + 1);
  assert_true(ox_document_modified(document));
  app_test_close(window);
}

static gboolean has_stopped(gpointer player) { return !ox_player_playing(player); }

static void playing_advances_redraws_only_the_aircraft_and_stops_at_the_end(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxPlayer *player = ox_window_player(window);
  double from_s = ox_player_end_s(player) - 15;
  ox_player_set_speed(player, 20);
  ox_player_seek(player, from_s);
  app_test_spin_ms(100);
  ox_board_counts before = counts_of(window);
  assert_false(ox_transport_ticking(ox_window_transport(window)));
  g_action_group_activate_action(G_ACTION_GROUP(window), "play", NULL);
  assert_true(ox_transport_ticking(ox_window_transport(window)));
  assert_true(app_test_wait(has_stopped, player, 20000));
  assert_close(ox_player_time_s(player), ox_player_end_s(player), 0, "end");
  assert_false(ox_transport_ticking(ox_window_transport(window)));
  ox_board_counts after = counts_of(window);
  assert_int_equal(after.layouts, before.layouts);
  assert_int_equal(after.still, before.still);
  assert_true(after.moving > before.moving);

  app_test_spin_ms(100);
  after = counts_of(window);
  app_test_spin_ms(300);
  assert_int_equal(counts_of(window).moving, after.moving); /* at rest nothing is drawn */
  app_test_close(window);
}

static void another_case_while_playing_plays_on_from_its_beginning(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  OxPlayer *player = ox_window_player(window);
  ox_player_seek(player, ox_player_end_s(player) - 5);
  ox_player_set_playing(player, TRUE);
  for (size_t i = 1; i < ox_document_case_count(document); i++) {
    g_action_group_activate_action(G_ACTION_GROUP(window), "next-case", NULL);
    assert_int_equal(ox_document_case_index(document), i);
    assert_true(ox_player_playing(player));
    app_test_spin_ms(80);
    assert_close(ox_player_end_s(player), ox_flight_end_s(ox_document_flight(document)), 0, "end");
    assert_true(ox_player_time_s(player) < ox_player_end_s(player) - 5);
  }
  app_test_close(window);
}

static void enter_in_an_input_goes_to_the_board(void **state) {
  OxWindow *window = app_test_window(NULL);
  GtkWidget *course = ox_inputs_panel_editor(ox_window_inputs(window), "hold.inbound_deg");
  gtk_widget_grab_focus(course);
  GtkWidget *text = ox_number_field_get_text(OX_NUMBER_FIELD(course));
  assert_ptr_equal(gtk_window_get_focus(GTK_WINDOW(window)), text);
  gtk_editable_set_text(GTK_EDITABLE(text), "95");
  g_signal_emit_by_name(text, "activate");
  assert_ptr_equal(gtk_window_get_focus(GTK_WINDOW(window)), ox_window_board(window));
  assert_close(ox_document_case(ox_window_document(window))->hold.inbound_deg, 95, 0, "course");
  app_test_close(window);
}

static void tabbing_through_every_input_changes_nothing(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  ox_case fine = *ox_document_case(document);
  fine.hold.inbound_deg = 12.3456;
  fine.aircraft.ias_kt = 101.23456;
  fine.technique.intercept_deg = 33.33333;
  assert_int_equal(ox_document_edit(document, &fine, NULL), OX_OK);
  for (int i = 0; i < 80; i++) gtk_widget_child_focus(GTK_WIDGET(window), GTK_DIR_TAB_FORWARD);
  assert_true(ox_inputs_panel_commit(ox_window_inputs(window)));
  assert_true(ox_case_equal(ox_document_case(document), &fine));
  app_test_close(window);
}

static void a_leg_by_distance_shows_its_length_instead_of_its_time(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxInputsPanel *inputs = ox_window_inputs(window);
  GtkWidget *by = ox_inputs_panel_editor(inputs, "hold.leg.by");
  assert_true(gtk_widget_get_visible(ox_inputs_panel_editor(inputs, "hold.leg.s")));
  gtk_drop_down_set_selected(GTK_DROP_DOWN(by), OX_LEG_BY_DISTANCE);
  const ox_case *c = ox_document_case(ox_window_document(window));
  assert_int_equal(c->hold.leg_by, OX_LEG_BY_DISTANCE);
  assert_true(c->hold.leg_nm > 0);
  assert_false(gtk_widget_get_visible(ox_inputs_panel_editor(inputs, "hold.leg.s")));
  assert_true(gtk_widget_get_visible(ox_inputs_panel_editor(inputs, "hold.leg.nm")));
  app_test_close(window);
}

static void speed_at_the_speed_of_sound_is_explained_at_the_field(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxInputsPanel *inputs = ox_window_inputs(window);
  ox_case high = *ox_document_case(ox_window_document(window));
  high.hold.altitude_ft = 45000;
  ox_document_edit(ox_window_document(window), &high, NULL);
  GtkWidget *ias = ox_inputs_panel_editor(inputs, "aircraft.ias_kt");
  gtk_editable_set_text(GTK_EDITABLE(ox_number_field_get_text(OX_NUMBER_FIELD(ias))), "390");
  assert_non_null(ox_inputs_panel_message(inputs, "aircraft.ias_kt"));
  assert_true(ox_case_equal(ox_document_case(ox_window_document(window)), &high));
  assert_null(ox_inputs_panel_message(inputs, "aircraft.tas_kt"));
  app_test_close(window);
}

static void a_name_must_be_one_line_and_not_empty(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxInputsPanel *inputs = ox_window_inputs(window);
  GtkWidget *fix = ox_inputs_panel_editor(inputs, "hold.fix");
  const ox_case *c = ox_document_case(ox_window_document(window));
  gtk_editable_set_text(GTK_EDITABLE(fix), "BÖLKA");
  assert_string_equal(c->hold.fix, "BÖLKA");
  gtk_editable_set_text(GTK_EDITABLE(fix), "");
  assert_non_null(ox_inputs_panel_message(inputs, "hold.fix"));
  assert_string_equal(c->hold.fix, "BÖLKA");
  char *too_long = g_strnfill(OX_FIX_NAME_BYTES, 'A');
  gtk_editable_set_text(GTK_EDITABLE(fix), too_long);
  g_free(too_long);
  assert_non_null(ox_inputs_panel_message(inputs, "hold.fix"));
  assert_false(ox_inputs_panel_commit(inputs));
  assert_string_equal(gtk_editable_get_text(GTK_EDITABLE(fix)), "BÖLKA");
  app_test_close(window);
}

static void another_name_of_the_case_is_in_the_list_of_cases(void **state) {
  OxWindow *window = app_test_window(NULL);
  ox_document_select(ox_window_document(window), 1);
  GtkWidget *bar = app_test_find(GTK_WIDGET(window), OX_TYPE_CASE_BAR);
  GtkDropDown *cases = GTK_DROP_DOWN(app_test_find(bar, GTK_TYPE_DROP_DOWN));
  assert_int_equal(gtk_drop_down_get_selected(cases), 1);
  GtkWidget *name = ox_inputs_panel_editor(ox_window_inputs(window), "name");
  gtk_editable_set_text(GTK_EDITABLE(name), "Renamed");
  GtkStringObject *item = GTK_STRING_OBJECT(gtk_drop_down_get_selected_item(cases));
  assert_string_equal(gtk_string_object_get_string(item), "2. Renamed");
  assert_int_equal(ox_document_case_index(ox_window_document(window)), 1);
  gtk_drop_down_set_selected(cases, 0);
  assert_int_equal(ox_document_case_index(ox_window_document(window)), 0);
  app_test_close(window);
}

static void f9_folds_the_working_away_and_the_board_takes_its_room(void **state) {
  OxWindow *window = app_test_window(NULL);
  g_action_group_activate_action(G_ACTION_GROUP(window), "working", NULL);
  app_test_spin_ms(200);
  GtkWidget *board = GTK_WIDGET(ox_window_board(window));
  int before = gtk_widget_get_width(board);
  g_action_group_activate_action(G_ACTION_GROUP(window), "working", NULL);
  app_test_spin_ms(200);
  assert_false(gtk_widget_is_visible(GTK_WIDGET(ox_window_working(window))));
  print_message("# the board grew from %d to %d\n", before, gtk_widget_get_width(board));
  assert_true(gtk_widget_get_width(board) > before + 200);
  app_test_close(window);
}

static void folded_away_the_working_is_filled_when_it_comes_back(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  OxWorkingPanel *working = ox_window_working(window);
  g_action_group_change_action_state(G_ACTION_GROUP(window), "working",
                                     g_variant_new_boolean(FALSE));
  app_test_spin_ms(100);
  guint fills = ox_working_panel_fill_count(working);
  for (size_t i = 0; i < ox_document_case_count(document); i++) {
    ox_document_select(document, i);
    ox_overlays_set_compare(ox_window_overlays(window),
                            i % 2 ? OX_COMPARE_EXACT : OX_COMPARE_NOTHING);
  }
  ox_document_select(document, 1);
  ox_overlays_set_compare(ox_window_overlays(window), OX_COMPARE_EXACT);
  app_test_spin_ms(200);
  assert_int_equal(ox_working_panel_fill_count(working), fills);
  g_action_group_change_action_state(G_ACTION_GROUP(window), "working",
                                     g_variant_new_boolean(TRUE));
  app_test_spin_ms(200);
  assert_int_equal(ox_working_panel_fill_count(working), fills + 1);
  assert_int_equal(ox_working_panel_advice_count(working),
                   ox_document_flight(document)->advice_count);
  assert_int_equal(ox_working_panel_overlay_count(working), 1);
  app_test_close(window);
}

static void the_board_has_high_contrast_where_the_desktop_asks_for_it(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxBoard *board = ox_window_board(window);
  GtkSettings *settings = gtk_settings_get_default();
  g_object_set(settings, "gtk-theme-name", "HighContrast", NULL);
  app_test_spin_ms(300);
  assert_int_equal(ox_board_palette(board), OX_PALETTE_CONTRAST);
  g_object_set(settings, "gtk-application-prefer-dark-theme", TRUE, NULL);
  app_test_spin_ms(300);
  assert_int_equal(ox_board_palette(board), OX_PALETTE_CONTRAST_DARK);
  ox_window_set_projector(window, TRUE);
  assert_int_equal(ox_board_palette(board), OX_PALETTE_PROJECTOR);
  ox_window_set_projector(window, FALSE);
  gtk_settings_reset_property(settings, "gtk-application-prefer-dark-theme");
  gtk_settings_reset_property(settings, "gtk-theme-name");
  app_test_spin_ms(300);
  assert_int_equal(ox_board_palette(board), OX_PALETTE_LIGHT);
  app_test_close(window);
}

static void the_board_is_dark_in_a_dark_window_and_follows_the_projector(void **state) {
  OxWindow *window = app_test_window(NULL);
  GtkSettings *settings = gtk_settings_get_default();
  assert_int_equal(ox_board_palette(ox_window_board(window)), OX_PALETTE_LIGHT);
  g_object_set(settings, "gtk-application-prefer-dark-theme", TRUE, NULL);
  app_test_spin_ms(300);
  assert_int_equal(ox_board_palette(ox_window_board(window)), OX_PALETTE_DARK);
  ox_window_set_projector(window, TRUE);
  assert_int_equal(ox_board_palette(ox_window_board(window)), OX_PALETTE_PROJECTOR);
  g_object_set(settings, "gtk-application-prefer-dark-theme", FALSE, NULL);
  ox_window_set_projector(window, FALSE);
  app_test_spin_ms(300);
  assert_int_equal(ox_board_palette(ox_window_board(window)), OX_PALETTE_LIGHT);
  app_test_close(window);
}

static gboolean working_open_at(int width) {
  OxWindow *window = ox_window_new(NULL);
  gtk_window_set_default_size(GTK_WINDOW(window), width, 600);
  gtk_window_present(GTK_WINDOW(window));
  app_test_spin_ms(100);
  gboolean open = gtk_widget_is_visible(GTK_WIDGET(ox_window_working(window)));
  GtkWidget *button = app_test_find_button(GTK_WIDGET(window), "sidebar-show-right-symbolic");
  gboolean pressed = gtk_toggle_button_get_active(GTK_TOGGLE_BUTTON(button));
  app_test_close(window);
  assert_int_equal(open, pressed);
  return open;
}

static void the_working_starts_folded_in_a_window_narrower_than_1100(void **state) {
  GdkRectangle screen;
  GListModel *monitors = gdk_display_get_monitors(gdk_display_get_default());
  GdkMonitor *monitor = g_list_model_get_item(monitors, 0);
  gdk_monitor_get_geometry(monitor, &screen);
  g_object_unref(monitor);
  assert_false(working_open_at(1024));
  assert_false(working_open_at(1099));
  assert_int_equal(working_open_at(1100), screen.width >= 1100);
}

static int height_for(GtkWidget *widget, int width) {
  int height;
  gtk_widget_measure(widget, GTK_ORIENTATION_VERTICAL, width, &height, NULL, NULL, NULL);
  return height;
}

/* WCAG 2.1, 1.4.4: with text of twice its size nothing is cut. */
static void figures_stand_in_more_lines_where_there_is_no_room_for_one(void **state) {
  OxWindow *window = app_test_window(NULL);
  GtkWidget *transport = app_test_find_type_name(GTK_WIDGET(window), "OxTransport");
  GtkWidget *row = app_test_find_type_name(transport, "OxFigureRow");
  int least, whole;
  assert_non_null(row);
  gtk_widget_measure(row, GTK_ORIENTATION_HORIZONTAL, -1, &least, &whole, NULL, NULL);
  assert_true(2 * least < whole);
  int line = height_for(row, whole);
  assert_int_equal(height_for(row, whole + 500), line);
  assert_int_equal(height_for(row, whole - 1), 2 * line);
  assert_int_equal(height_for(row, least), 3 * line);
  assert_int_equal(gtk_widget_get_height(row), line); /* at 1024 x 600 one will do */
  app_test_close(window);
}

static void needs(OxWindow *window, int *width, int *height) {
  gtk_widget_measure(GTK_WIDGET(window), GTK_ORIENTATION_HORIZONTAL, -1, width, NULL, NULL, NULL);
  gtk_widget_measure(GTK_WIDGET(window), GTK_ORIENTATION_VERTICAL, 1024, height, NULL, NULL, NULL);
}

static void set_working(OxWindow *window, gboolean shown) {
  g_action_group_change_action_state(G_ACTION_GROUP(window), "working",
                                     g_variant_new_boolean(shown));
  app_test_spin_ms(200);
}

static gboolean has_focus_in(OxWindow *window, GtkWidget *panel) {
  GtkWidget *focus = gtk_window_get_focus(GTK_WINDOW(window));
  return focus && gtk_widget_is_ancestor(focus, panel);
}

/* WCAG 2.1, 1.4.4: text of twice its size, and nothing is lost. Where the three have no room side
 * by side the working takes the place of the inputs, and whatever asks for the inputs has them. */
static void with_text_of_twice_its_size_the_window_keeps_its_width(void **state) {
  GtkSettings *settings = gtk_settings_get_default();
  int dpi, width, height;
  g_object_get(settings, "gtk-xft-dpi", &dpi, NULL);
  g_object_set(settings, "gtk-xft-dpi", 2 * 96 * 1024, NULL);
  OxWindow *window = app_test_window(NULL); /* 1024 wide */
  GtkWidget *working = GTK_WIDGET(ox_window_working(window));
  GtkWidget *inputs = GTK_WIDGET(ox_window_inputs(window));
  GtkWidget *board = GTK_WIDGET(ox_window_board(window));
  set_working(window, FALSE);
  needs(window, &width, &height);
  print_message("# folded, the window needs %d x %d\n", width, height);
  assert_true(width <= 1024 && height <= 760);
  gtk_widget_child_focus(inputs, GTK_DIR_TAB_FORWARD);
  assert_true(has_focus_in(window, inputs));
  set_working(window, TRUE);
  needs(window, &width, &height);
  print_message("# with the working, %d x %d\n", width, height);
  assert_true(width <= 1024 && height <= 760);
  assert_true(gtk_widget_get_mapped(working) && !gtk_widget_get_mapped(inputs));
  assert_true(gtk_widget_get_width(board) >= 500);
  assert_ptr_equal(gtk_window_get_focus(GTK_WINDOW(window)), board);

  g_action_group_activate_action(G_ACTION_GROUP(window), "page-hold", NULL);
  app_test_spin_ms(200);
  assert_true(gtk_widget_get_mapped(inputs) && !gtk_widget_get_mapped(working));
  assert_true(has_focus_in(window, inputs));
  set_working(window, TRUE);
  g_signal_emit_by_name(board, "exact-entry", "hold.inbound_deg");
  app_test_spin_ms(200);
  assert_true(has_focus_in(window, inputs) && !gtk_widget_get_mapped(working));
  set_working(window, TRUE);
  g_action_group_activate_action(G_ACTION_GROUP(window), "rename-case", NULL);
  app_test_spin_ms(200);
  GtkWidget *left = gtk_widget_get_ancestor(inputs, GTK_TYPE_STACK);
  assert_true(has_focus_in(window, left) && !gtk_widget_get_mapped(working));

  set_working(window, TRUE);
  assert_false(gtk_widget_get_mapped(left));
  gtk_window_set_default_size(GTK_WINDOW(window), 1800, 800); /* room for all three */
  app_test_spin_ms(400);
  assert_true(gtk_widget_get_mapped(working) && gtk_widget_get_mapped(left));
  app_test_close(window);
  g_object_set(settings, "gtk-xft-dpi", dpi, NULL);
  app_test_spin_ms(100);
}

/* Beside the transport's buttons, in every width: whole, without the circuit, or the clock. */
static void the_words_of_the_instant_are_never_cut(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxInstantLabel *instant = OX_INSTANT_LABEL(
      app_test_find_type_name(GTK_WIDGET(ox_window_transport(window)), "OxInstantLabel"));
  OxPlayer *player = ox_window_player(window);
  const ox_flight *flight = ox_document_whole_flight(ox_window_document(window));
  int least, whole;
  unsigned seen = 0;
  gtk_widget_measure(GTK_WIDGET(instant), GTK_ORIENTATION_HORIZONTAL, -1, &least, &whole, NULL,
                     NULL);
  assert_true(least < whole / 2);
  for (int width = least; width <= whole; width += 5) {
    size_t longest = 0;
    for (size_t i = 0; i < flight->leg_count; i++) {
      ox_player_seek(player, flight->legs[i].t0_s + 0.5);
      gtk_widget_allocate(GTK_WIDGET(instant), width, 30, -1, NULL);
      const char *drawn = ox_instant_label_drawn(instant);
      const char *words = ox_instant_label_words(instant);
      assert_true(ox_instant_label_drawn_width(instant) <= width);
      assert_true(g_str_has_prefix(words, drawn));
      longest = MAX(longest, strlen(drawn));
      gtk_test_accessible_assert_property(GTK_ACCESSIBLE(instant), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                          words);
    }
    seen |= longest <= 6 ? 1 : longest < 20 ? 2 : 4;
  }
  assert_int_equal(seen, 1 + 2); /* and whole, where there is that much room: */
  gtk_widget_allocate(GTK_WIDGET(instant), whole, 30, -1, NULL);
  assert_string_equal(ox_instant_label_drawn(instant), ox_instant_label_words(instant));
  app_test_close(window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_template_instantiates_and_finalises),
      cmocka_unit_test(it_opens_with_the_demo_lesson_and_fits_in_1024_by_600),
      cmocka_unit_test(no_case_of_the_demo_needs_more_room),
      cmocka_unit_test(one_edit_is_one_solve_and_one_layout_and_none_when_nothing_changed),
      cmocka_unit_test(playing_advances_redraws_only_the_aircraft_and_stops_at_the_end),
      cmocka_unit_test(another_case_while_playing_plays_on_from_its_beginning),
      cmocka_unit_test(enter_in_an_input_goes_to_the_board),
      cmocka_unit_test(tabbing_through_every_input_changes_nothing),
      cmocka_unit_test(a_leg_by_distance_shows_its_length_instead_of_its_time),
      cmocka_unit_test(speed_at_the_speed_of_sound_is_explained_at_the_field),
      cmocka_unit_test(a_name_must_be_one_line_and_not_empty),
      cmocka_unit_test(another_name_of_the_case_is_in_the_list_of_cases),
      cmocka_unit_test(folded_away_the_working_is_filled_when_it_comes_back),
      cmocka_unit_test(f9_folds_the_working_away_and_the_board_takes_its_room),
      cmocka_unit_test(the_working_starts_folded_in_a_window_narrower_than_1100),
      cmocka_unit_test(the_board_has_high_contrast_where_the_desktop_asks_for_it),
      cmocka_unit_test(the_board_is_dark_in_a_dark_window_and_follows_the_projector),
      cmocka_unit_test(figures_stand_in_more_lines_where_there_is_no_room_for_one),
      cmocka_unit_test(with_text_of_twice_its_size_the_window_keeps_its_width),
      cmocka_unit_test(the_words_of_the_instant_are_never_cut),
  };
  return cmocka_run_group_tests_name("window", tests, app_test_init, NULL);
}
