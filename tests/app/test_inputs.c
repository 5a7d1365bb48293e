/* An edit through each input of the panel, the presets, and when an input is offered. */
#include "app_test.h"

#include "ox_input.h"
#include "ox_number_field.h"
#include "oxbow/presets.h"

static void type(OxInputsPanel *inputs, const char *key, const char *text) {
  GtkWidget *editor = ox_inputs_panel_editor(inputs, key);
  assert_non_null(editor);
  assert_true(gtk_widget_get_sensitive(editor));
  GtkWidget *field = ox_number_field_get_text(OX_NUMBER_FIELD(editor));
  gtk_editable_set_text(GTK_EDITABLE(field), text);
}

static void choose(OxInputsPanel *inputs, const char *key, guint position) {
  gtk_drop_down_set_selected(GTK_DROP_DOWN(ox_inputs_panel_editor(inputs, key)), position);
}

static guint chosen(OxInputsPanel *inputs, const char *key) {
  return gtk_drop_down_get_selected(GTK_DROP_DOWN(ox_inputs_panel_editor(inputs, key)));
}

static void a_preset_is_one_edit_and_shows_itself(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  OxInputsPanel *inputs = ox_window_inputs(window);
  ox_document_set_field(document, ox_field_by_key("technique.intercept_deg"), 45, NULL);
  for (size_t i = 0; i < ox_preset_count(); i++) {
    ox_case want = *ox_document_case(document);
    bool already = ox_preset_of(&want) == (int)i;
    assert_true(ox_preset_apply(i, &want));
    (void)ox_document_flight(document);
    guint solves = ox_document_solve_count(document);
    choose(inputs, "preset", (guint)i);
    assert_true(ox_case_equal(ox_document_case(document), &want));
    (void)ox_document_flight(document);
    assert_int_equal(ox_document_solve_count(document), already ? solves : solves + 1);
    assert_int_equal(chosen(inputs, "preset"), i);
    assert_int_equal(chosen(inputs, "technique.drift"), want.technique.drift);
  }
  app_test_close(window);
}

static void own_technique_is_shown_and_choosing_it_changes_nothing(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  OxInputsPanel *inputs = ox_window_inputs(window);
  guint own = (guint)ox_preset_count();
  choose(inputs, "preset", 1);
  ox_case before = *ox_document_case(document);
  choose(inputs, "preset", own);
  assert_true(ox_case_equal(ox_document_case(document), &before));
  assert_int_equal(chosen(inputs, "preset"), 1);
  type(inputs, "technique.entry_s", "77");
  assert_int_equal(chosen(inputs, "preset"), own);
  app_test_close(window);
}

static void the_choices_of_the_technique_and_the_end_of_the_hold_reach_the_case(void **state) {
  static const char *const keys[] = {"technique.entry_line", "technique.lead", "aircraft.turn_by",
                                     "hold.ends"};
  OxWindow *window = app_test_window(NULL);
  const ox_case *c = ox_document_case(ox_window_document(window));
  for (size_t k = 0; k < G_N_ELEMENTS(keys); k++) {
    const ox_field *field = ox_field_by_key(keys[k]);
    for (double v = field->max; v >= field->min; v--) {
      choose(ox_window_inputs(window), keys[k], (guint)v);
      assert_close(ox_field_get(field, c), v, 0, keys[k]);
      assert_null(ox_inputs_panel_message(ox_window_inputs(window), keys[k]));
    }
  }
  app_test_close(window);
}

/* The ranges are those of the table of fields. */
static void numbers_reach_the_case_and_those_out_of_range_are_explained(void **state) {
  static const struct {
    const char *key, *good, *bad;
    double want;
  } rows[] = {
      {"technique.reaction_s", "4", "16", 4},
      {"hold.climb_to_ft", "9,000", "46000", 9000},
      {"hold.climb_ft_min", "750", "99", 750},
      {"hold.leg.station.radial_deg", "240", "361", 240},
      {"hold.leg.station.nm", "12.5", "201", 12.5},
      {"hold.leg.station.elevation_ft", "1200", "20001", 1200},
      {"arrival.fix_at", "18:20:30", "25:00:00", 66030},
  };
  OxWindow *window = app_test_window(NULL);
  OxInputsPanel *inputs = ox_window_inputs(window);
  const ox_case *c = ox_document_case(ox_window_document(window));
  choose(inputs, "hold.leg.by", OX_LEG_BY_DISTANCE);
  GtkWidget *check = ox_inputs_panel_editor(inputs, "hold.leg.station");
  gtk_check_button_set_active(GTK_CHECK_BUTTON(check), TRUE);
  assert_true(c->hold.station.given);
  for (size_t i = 0; i < G_N_ELEMENTS(rows); i++) {
    const ox_input *input = ox_input_by_key(rows[i].key);
    assert_non_null(input);
    type(inputs, rows[i].key, rows[i].good);
    assert_close(ox_input_get(input, c), rows[i].want, 0, rows[i].key);
    assert_null(ox_inputs_panel_message(inputs, rows[i].key));
    assert_true(ox_inputs_panel_commit(inputs));
    ox_case kept = *c;
    type(inputs, rows[i].key, rows[i].bad);
    assert_false(ox_inputs_panel_commit(inputs));
    assert_non_null(ox_inputs_panel_message(inputs, rows[i].key));
    assert_true(ox_case_equal(c, &kept));
    type(inputs, rows[i].key, rows[i].good);
  }
  app_test_close(window);
}

static void empty_is_level_and_no_time_over_the_fix(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxInputsPanel *inputs = ox_window_inputs(window);
  const ox_case *c = ox_document_case(ox_window_document(window));
  type(inputs, "hold.climb_to_ft", "7000");
  type(inputs, "arrival.fix_at", "18:00:00");
  assert_close(c->hold.climb_to_ft, 7000, 0, "climb");
  assert_int_equal(c->arrival.fix_at_s, 64800);
  type(inputs, "hold.climb_to_ft", "");
  type(inputs, "arrival.fix_at", "");
  assert_close(c->hold.climb_to_ft, 0, 0, "level");
  assert_int_equal(c->arrival.fix_at_s, -1);
  GtkWidget *climb = ox_inputs_panel_editor(inputs, "hold.climb_to_ft");
  GtkWidget *text = ox_number_field_get_text(OX_NUMBER_FIELD(climb));
  assert_string_equal(gtk_text_get_placeholder_text(GTK_TEXT(text)), "level");
  app_test_close(window);
}

static gboolean is_sensitive(OxInputsPanel *inputs, const char *key) {
  return gtk_widget_get_sensitive(ox_inputs_panel_editor(inputs, key));
}

static void the_rate_of_climb_needs_a_climb(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxInputsPanel *inputs = ox_window_inputs(window);
  assert_false(is_sensitive(inputs, "hold.climb_ft_min"));
  type(inputs, "hold.climb_to_ft", "7000");
  assert_true(is_sensitive(inputs, "hold.climb_ft_min"));
  type(inputs, "hold.climb_to_ft", "");
  assert_false(is_sensitive(inputs, "hold.climb_ft_min"));
  app_test_close(window);
}

static void a_station_is_offered_where_the_distance_ends_the_outbound_leg(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxInputsPanel *inputs = ox_window_inputs(window);
  GtkWidget *check = ox_inputs_panel_editor(inputs, "hold.leg.station");
  choose(inputs, "hold.leg.by", OX_LEG_BY_TIME);
  assert_false(gtk_widget_get_visible(check));
  choose(inputs, "hold.leg.by", OX_LEG_BY_DISTANCE);
  choose(inputs, "hold.leg.end", OX_LEG_END_OUTBOUND);
  assert_true(gtk_widget_get_visible(check));
  assert_true(gtk_widget_get_sensitive(check));
  assert_false(is_sensitive(inputs, "hold.leg.station.nm"));
  gtk_check_button_set_active(GTK_CHECK_BUTTON(check), TRUE);
  assert_true(is_sensitive(inputs, "hold.leg.station.nm"));
  choose(inputs, "hold.leg.end", OX_LEG_END_INBOUND);
  assert_false(gtk_widget_get_sensitive(check));
  assert_false(is_sensitive(inputs, "hold.leg.station.nm"));
  app_test_close(window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_preset_is_one_edit_and_shows_itself),
      cmocka_unit_test(own_technique_is_shown_and_choosing_it_changes_nothing),
      cmocka_unit_test(the_choices_of_the_technique_and_the_end_of_the_hold_reach_the_case),
      cmocka_unit_test(numbers_reach_the_case_and_those_out_of_range_are_explained),
      cmocka_unit_test(empty_is_level_and_no_time_over_the_fix),
      cmocka_unit_test(the_rate_of_climb_needs_a_climb),
      cmocka_unit_test(a_station_is_offered_where_the_distance_ends_the_outbound_leg),
  };
  return cmocka_run_group_tests_name("inputs", tests, app_test_init, NULL);
}
