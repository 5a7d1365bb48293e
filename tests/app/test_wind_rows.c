/* Wind by altitude and by the minute: rows typed, added and removed as a user does. */
#include "app_test.h"

#include "ox_wind_list.h"
#include "ox_wind_rows.h"

typedef struct {
  OxWindow *window;
  OxDocument *document;
  OxWindRows *rows;
} place;

static const ox_case *shown(const place *p) { return ox_document_case(p->document); }

static place begin(ox_wind_rows_kind kind) {
  place p = {.window = app_test_window(NULL)};
  p.document = ox_window_document(p.window);
  p.rows = ox_inputs_panel_wind(ox_window_inputs(p.window), kind);
  ox_case c = *shown(&p);
  c.hold.altitude_ft = 5000;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 310, 20, OX_NORTH_TRUE};
  c.wind_change_count = 0;
  assert_int_equal(ox_document_edit(p.document, &c, NULL), OX_OK);
  return p;
}

static void press(GtkWidget *button) {
  assert_true(gtk_widget_get_sensitive(button));
  g_signal_emit_by_name(button, "clicked");
}

static void type(const place *p, int row, const char *key, const char *text) {
  GtkWidget *editor = ox_wind_rows_editor(p->rows, row, key);
  assert_non_null(editor);
  GtkWidget *field = ox_number_field_get_text(OX_NUMBER_FIELD(editor));
  gtk_editable_set_text(GTK_EDITABLE(field), text);
}

static void one_wind_becomes_two_and_one_again(void **state) {
  place p = begin(OX_WIND_BY_ALTITUDE);
  assert_int_equal(ox_wind_rows_shown(p.rows), 0);
  press(ox_wind_rows_add_button(p.rows));
  assert_int_equal(ox_wind_rows_shown(p.rows), 2);
  assert_close(shown(&p)->wind[0].altitude_ft, 5000, 0, "the hold's altitude");
  assert_close(shown(&p)->wind[1].altitude_ft, 8000, 0, "and above it");
  assert_close(shown(&p)->wind[1].kt, 20, 0, "the same wind at first");
  assert_string_equal(ox_document_undo_name(p.document), "Add Wind at an Altitude");
  press(ox_wind_rows_remove_button(p.rows, 0));
  assert_int_equal(ox_wind_rows_shown(p.rows), 0);
  assert_int_equal(shown(&p)->wind_count, 1);
  GtkWidget *single = ox_inputs_panel_editor(ox_window_inputs(p.window), "wind.kt");
  assert_true(gtk_widget_get_visible(single));
  ox_document_undo(p.document);
  assert_int_equal(ox_wind_rows_shown(p.rows), 2);
  app_test_close(p.window);
}

static void what_is_typed_into_a_row_reaches_it(void **state) {
  place p = begin(OX_WIND_BY_ALTITUDE);
  press(ox_wind_rows_add_button(p.rows));
  type(&p, 1, "altitude_ft", "FL090");
  type(&p, 1, "from_deg", "275");
  type(&p, 1, "kt", "42");
  GtkWidget *north = ox_wind_rows_editor(p.rows, 1, "north");
  gtk_drop_down_set_selected(GTK_DROP_DOWN(north), OX_NORTH_MAGNETIC);
  const ox_wind_row *row = &shown(&p)->wind[1];
  assert_close(row->altitude_ft, 9000, 0, "altitude");
  assert_close(row->from_deg, 275, 0, "from");
  assert_close(row->kt, 42, 0, "speed");
  assert_int_equal(row->north, OX_NORTH_MAGNETIC);
  assert_close(shown(&p)->wind[0].kt, 20, 0, "the other row");
  app_test_close(p.window);
}

/* As other number fields: refused, explained, and the kept value shown on leaving. */
static void an_altitude_below_the_row_before_is_refused_with_the_reason(void **state) {
  place p = begin(OX_WIND_BY_ALTITUDE);
  press(ox_wind_rows_add_button(p.rows));
  ox_case before = *shown(&p);
  type(&p, 1, "altitude_ft", "4000");
  assert_false(ox_wind_rows_commit(p.rows));
  assert_non_null(ox_wind_rows_message(p.rows, 1));
  assert_non_null(strstr(ox_wind_rows_message(p.rows, 1), "above the altitude of the row before"));
  assert_true(ox_case_equal(shown(&p), &before));
  type(&p, 1, "kt", "251");
  assert_false(ox_inputs_panel_commit(ox_window_inputs(p.window)));
  assert_true(ox_case_equal(shown(&p), &before));
  app_test_close(p.window);
}

static void changes_by_the_minute_are_added_typed_and_removed(void **state) {
  place p = begin(OX_WIND_BY_MINUTE);
  press(ox_wind_rows_add_button(p.rows));
  press(ox_wind_rows_add_button(p.rows));
  assert_int_equal(shown(&p)->wind_change_count, 2);
  assert_close(shown(&p)->wind_changes[0].at_min, 2, 0, "two minutes after the fix");
  assert_close(shown(&p)->wind_changes[1].at_min, 4, 0, "and two later");
  type(&p, 1, "at_min", "6.5");
  type(&p, 0, "kt", "5");
  assert_close(shown(&p)->wind_changes[1].at_min, 6.5, 0, "minutes");
  press(ox_wind_rows_remove_button(p.rows, 0));
  assert_int_equal(ox_wind_rows_shown(p.rows), 1);
  assert_close(shown(&p)->wind_changes[0].at_min, 6.5, 0, "the later one stays");
  GtkWidget *at = ox_wind_rows_editor(p.rows, 0, "at_min");
  assert_close(ox_number_field_get_value(OX_NUMBER_FIELD(at)), 6.5, 0, "shown in the first row");
  app_test_close(p.window);
}

static void there_is_room_for_so_many_and_no_more(void **state) {
  place p = begin(OX_WIND_BY_MINUTE);
  for (int i = 0; i < OX_WIND_CHANGES_MAX; i++) press(ox_wind_rows_add_button(p.rows));
  assert_false(gtk_widget_get_sensitive(ox_wind_rows_add_button(p.rows)));
  assert_int_equal(ox_case_check(shown(&p), NULL, 0), 0);
  ox_case high = ox_case_default();
  high.hold.altitude_ft = 44000;
  int rows = 0;
  while (ox_wind_list_add(&high, OX_WIND_BY_ALTITUDE)) rows++;
  assert_in_range(rows, 5, OX_WIND_ROWS_MAX);
  assert_int_equal(ox_case_check(&high, NULL, 0), 0);
  app_test_close(p.window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(one_wind_becomes_two_and_one_again),
      cmocka_unit_test(what_is_typed_into_a_row_reaches_it),
      cmocka_unit_test(an_altitude_below_the_row_before_is_refused_with_the_reason),
      cmocka_unit_test(changes_by_the_minute_are_added_typed_and_removed),
      cmocka_unit_test(there_is_room_for_so_many_and_no_more),
  };
  return cmocka_run_group_tests_name("wind rows", tests, app_test_init, NULL);
}
