/* What is laid over the picture: computed once, said in words, and the spread from its thread. */
#include "app_test.h"

#include "oxbow/flaws.h"

static gboolean spread_is_there(gpointer overlays) {
  return ox_overlays_spread(OX_OVERLAYS(overlays)) != NULL;
}

static void set_state(OxWindow *window, const char *action, GVariant *state) {
  g_action_group_change_action_state(G_ACTION_GROUP(window), action, state);
}

static gint32 compare_state(OxWindow *window) {
  GVariant *state = g_action_group_get_action_state(G_ACTION_GROUP(window), "compare");
  gint32 compare = g_variant_get_int32(state);
  g_variant_unref(state);
  return compare;
}

/* Folded away, as in a narrow window, it says nothing. */
static OxWindow *window_with_working(void) {
  OxWindow *window = app_test_window(NULL);
  g_action_group_change_action_state(G_ACTION_GROUP(window), "working",
                                     g_variant_new_boolean(TRUE));
  app_test_spin_ms(300);
  return window;
}

static void the_exact_hold_is_flown_once_a_case_and_laid_out_with_it(void **state) {
  OxWindow *window = window_with_working();
  OxOverlays *overlays = ox_window_overlays(window);
  const char *name = NULL;
  guint layouts = ox_board_get_counts(ox_window_board(window)).layouts;
  assert_null(ox_overlays_flight(overlays, &name));
  set_state(window, "compare", g_variant_new_int32(OX_COMPARE_EXACT));
  app_test_spin_ms(300);
  assert_int_equal(ox_board_get_counts(ox_window_board(window)).layouts, layouts + 1);
  const ox_flight *flight = ox_overlays_flight(overlays, &name);
  assert_non_null(flight);
  assert_string_equal(name, "exact hold");
  assert_true(flight->leg_count > 0);
  assert_int_equal(ox_overlays_get_counts(overlays).flights, 1);
  assert_int_equal(ox_overlays_get_counts(overlays).sentences, 2); /* none, and this one */
  assert_int_equal(ox_working_panel_overlay_count(ox_window_working(window)), 1);
  set_state(window, "compare", g_variant_new_int32(OX_COMPARE_EXACT));
  app_test_spin_ms(300);
  assert_int_equal(ox_board_get_counts(ox_window_board(window)).layouts, layouts + 1);
  ox_document_set_field(ox_window_document(window), ox_field_by_key("hold.inbound_deg"), 77, NULL);
  app_test_spin_ms(300);
  (void)ox_overlays_flight(overlays, &name);
  assert_int_equal(ox_overlays_get_counts(overlays).flights, 2);
  assert_int_equal(ox_board_get_counts(ox_window_board(window)).layouts, layouts + 2);
  set_state(window, "compare", g_variant_new_int32(OX_COMPARE_NOTHING));
  assert_int_equal(ox_working_panel_overlay_count(ox_window_working(window)), 0);
  assert_null(ox_overlays_flight(overlays, &name));
  app_test_close(window);
}

static void a_comparison_that_there_is_not_is_refused(void **state) {
  OxWindow *window = app_test_window(NULL);
  set_state(window, "compare", g_variant_new_int32(OX_MISTAKE_COUNT));
  assert_int_equal(compare_state(window), OX_COMPARE_NOTHING);
  set_state(window, "compare", g_variant_new_int32(OX_COMPARE_SAID - 1));
  assert_int_equal(compare_state(window), OX_COMPARE_NOTHING);
  assert_int_equal(ox_overlays_compare(ox_window_overlays(window)), OX_COMPARE_NOTHING);
  app_test_close(window);
}

/* The targets of the section of comparisons: bits 1 << mistake. */
static guint mistakes_offered(OxWindow *window) {
  guint bits = 0;
  GMenuModel *menu = ox_window_show_menu(window);
  GMenuModel *section = g_menu_model_get_item_link(menu, 0, G_MENU_LINK_SECTION);
  for (int i = 0; i < g_menu_model_get_n_items(section); i++) {
    gint32 compare = OX_COMPARE_NOTHING;
    g_menu_model_get_item_attribute(section, i, G_MENU_ATTRIBUTE_TARGET, "i", &compare);
    if (compare >= 0) bits |= 1U << (unsigned)compare;
  }
  g_object_unref(section);
  return bits;
}

static guint mistakes_that_show(OxDocument *document) {
  guint bits = 0;
  for (int i = 0; i < OX_MISTAKE_COUNT; i++)
    if (ox_mistake_shows(ox_document_case(document), ox_document_flight(document), (ox_mistake)i))
      bits |= 1U << (unsigned)i;
  return bits;
}

static void the_menu_offers_the_mistakes_that_show_in_each_case(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  guint first = mistakes_offered(window);
  gboolean differs = FALSE;
  for (int entry = OX_CHOOSE_DIRECT; entry <= OX_CHOOSE_TEARDROP; entry++) {
    ox_document_set_field(document, ox_field_by_key("technique.entry"), entry, NULL);
    assert_int_equal(mistakes_offered(window), mistakes_that_show(document));
    differs |= mistakes_offered(window) != first;
  }
  assert_true(differs);
  app_test_close(window);
}

static void every_mistake_that_shows_is_drawn_and_told(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  OxOverlays *overlays = ox_window_overlays(window);
  for (int i = 0; i < OX_MISTAKE_COUNT; i++) {
    const char *name = NULL;
    gboolean shows = (mistakes_that_show(document) >> (unsigned)i) & 1U;
    set_state(window, "compare", g_variant_new_int32(i));
    assert_int_equal(compare_state(window), i);
    assert_int_equal(ox_overlays_flight(overlays, &name) != NULL, shows);
    if (shows) assert_string_equal(name, ox_mistake_name((ox_mistake)i));
    const char *const *told = ox_overlays_sentences(overlays);
    assert_non_null(told[0]);
    assert_null(told[1]);
    assert_true(strlen(told[0]) > 40);
  }
  app_test_spin_ms(100);
  app_test_close(window);
}

static void the_area_is_made_once_a_case_and_told(void **state) {
  OxWindow *window = window_with_working();
  OxOverlays *overlays = ox_window_overlays(window);
  assert_null(ox_overlays_area(overlays));
  g_action_group_activate_action(G_ACTION_GROUP(window), "area", NULL);
  app_test_spin_ms(300);
  assert_non_null(ox_overlays_area(overlays));
  assert_true(ox_overlays_area(overlays)->reach_nm[0] > 0);
  assert_int_equal(ox_overlays_get_counts(overlays).areas, 1);
  assert_int_equal(ox_working_panel_overlay_count(ox_window_working(window)), 1);
  g_action_group_activate_action(G_ACTION_GROUP(window), "area", NULL);
  assert_null(ox_overlays_area(overlays));
  assert_int_equal(ox_working_panel_overlay_count(ox_window_working(window)), 0);
  app_test_close(window);
}

static void the_spread_arrives_from_its_thread_and_is_laid_out(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxOverlays *overlays = ox_window_overlays(window);
  gint64 begin_us = g_get_monotonic_time();
  g_action_group_activate_action(G_ACTION_GROUP(window), "spread", NULL);
  gint64 took_us = g_get_monotonic_time() - begin_us;
  print_message("# switching the spread on held the window for %.1f ms\n",
                (double)took_us / 1000);
  assert_null(ox_overlays_spread(overlays)); /* nobody waited for it */
  assert_true(app_test_wait(spread_is_there, overlays, 60000));
  print_message("# it arrived after %.0f ms\n",
                (double)(g_get_monotonic_time() - begin_us) / 1000);
  assert_int_equal(ox_overlays_spread(overlays)->runs, OX_SPREAD_RUNS);
  assert_int_equal(ox_overlays_get_counts(overlays).spreads, 1);
  guint layouts = ox_board_get_counts(ox_window_board(window)).layouts;
  app_test_spin_ms(500);
  assert_true(ox_board_get_counts(ox_window_board(window)).layouts <= layouts + 1);
  assert_int_equal(ox_overlays_get_counts(overlays).spreads, 1);
  app_test_close(window);
}

static void a_spread_of_a_case_that_has_changed_is_thrown_away_and_flown_again(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxOverlays *overlays = ox_window_overlays(window);
  OxDocument *document = ox_window_document(window);
  g_action_group_activate_action(G_ACTION_GROUP(window), "spread", NULL);
  for (int course = 10; course <= 50; course += 10)
    ox_document_set_field(document, ox_field_by_key("hold.inbound_deg"), course, NULL);
  assert_null(ox_overlays_spread(overlays));
  assert_true(app_test_wait(spread_is_there, overlays, 60000));
  assert_int_equal(ox_overlays_get_counts(overlays).spreads, 2); /* the first and the last */
  ox_spread want;
  ox_tolerances tolerances = ox_tolerances_standard();
  assert_int_not_equal(ox_spread_make(ox_document_case(document), &tolerances, 1, OX_SPREAD_RUNS,
                                      1, &want), OX_ERROR);
  assert_close(ox_overlays_spread(overlays)->inbound_s.middle, want.inbound_s.middle, 0, "middle");
  assert_close(ox_overlays_spread(overlays)->origin_nm.x, want.origin_nm.x, 0, "origin");
  ox_spread_free(&want);
  app_test_close(window);
}

static void a_window_closed_while_the_spread_is_flown_goes_away(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxOverlays *overlays = g_object_ref(ox_window_overlays(window));
  g_action_group_activate_action(G_ACTION_GROUP(window), "spread", NULL);
  app_test_close(window);
  assert_true(app_test_wait(spread_is_there, overlays, 60000));
  g_object_unref(overlays);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_exact_hold_is_flown_once_a_case_and_laid_out_with_it),
      cmocka_unit_test(a_comparison_that_there_is_not_is_refused),
      cmocka_unit_test(the_menu_offers_the_mistakes_that_show_in_each_case),
      cmocka_unit_test(every_mistake_that_shows_is_drawn_and_told),
      cmocka_unit_test(the_area_is_made_once_a_case_and_told),
      cmocka_unit_test(the_spread_arrives_from_its_thread_and_is_laid_out),
      cmocka_unit_test(a_spread_of_a_case_that_has_changed_is_thrown_away_and_flown_again),
      cmocka_unit_test(a_window_closed_while_the_spread_is_flown_goes_away),
  };
  return cmocka_run_group_tests_name("overlays", tests, app_test_init, NULL);
}
