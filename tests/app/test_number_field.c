/* The number field on a display: what typing, keys and leaving it do to the value. */
#include "app_test.h"

#include <locale.h>

#include "ox_number_field.h"

typedef struct {
  guint edits, commits;
  double last;
  gboolean refuse;
} heard;

static void edited_cb(OxNumberField *field, double value, heard *h) {
  h->edits++;
  h->last = value;
  if (h->refuse) ox_number_field_refuse(field, "below the speed of sound");
}

static void committed_cb(OxNumberField *field, heard *h) { h->commits++; }

static const ox_number_style course = {.form = OX_FORM_BEARING,
                                       .unit = "°",
                                       .units = "deg",
                                       .decimals = 1,
                                       .step = 1,
                                       .page = 10,
                                       .min = 0,
                                       .max = 360,
                                       .allowed = "a course (0 to 360)"};
static const ox_number_style speed = {.form = OX_FORM_PLAIN,
                                      .unit = "kt",
                                      .units = "kt|kts",
                                      .decimals = 1,
                                      .step = 1,
                                      .page = 10,
                                      .min = 0,
                                      .max = 400,
                                      .allowed = "a speed (0 to 400 kt)"};

static OxNumberField *new_field(const ox_number_style *style, double value, heard *h) {
  OxNumberField *field = OX_NUMBER_FIELD(g_object_ref_sink(ox_number_field_new(style)));
  *h = (heard){0};
  g_signal_connect(field, "edited", G_CALLBACK(edited_cb), h);
  g_signal_connect(field, "committed", G_CALLBACK(committed_cb), h);
  ox_number_field_set_value(field, value);
  return field;
}

static void type(OxNumberField *field, const char *text) {
  gtk_editable_set_text(GTK_EDITABLE(ox_number_field_get_text(field)), text);
}

static const char *shown(OxNumberField *field) {
  return gtk_editable_get_text(GTK_EDITABLE(ox_number_field_get_text(field)));
}

static gboolean press(OxNumberField *field, guint key) {
  gboolean handled = FALSE;
  GListModel *controllers = gtk_widget_observe_controllers(GTK_WIDGET(field));
  for (guint i = 0; i < g_list_model_get_n_items(controllers); i++) {
    GObject *controller = g_list_model_get_item(controllers, i);
    if (GTK_IS_EVENT_CONTROLLER_KEY(controller))
      g_signal_emit_by_name(controller, "key-pressed", key, 0, 0, &handled);
    g_object_unref(controller);
  }
  g_object_unref(controllers);
  return handled;
}

typedef struct {
  const char *text;
  double value; /* afterwards; it was 100 */
  gboolean complains;
} row;

/* Each of these silently made another number in the toolkit's own spin button. */
static const row rows[] = {
    {"12,5", 12.5, FALSE}, {"12.5", 12.5, FALSE}, {"12.5 kt", 12.5, FALSE}, {"", 100, TRUE},
    {"abc", 100, TRUE},    {"nan", 100, TRUE},    {"inf", 100, TRUE},       {"401", 100, TRUE},
    {"-1", 100, TRUE},     {"33.5x", 100, TRUE},  {"400", 400, FALSE},      {"0", 0, FALSE},
};

static void check_rows(const char *locale, const char *twelve_and_a_half) {
  assert_non_null(setlocale(LC_ALL, locale));
  for (size_t i = 0; i < G_N_ELEMENTS(rows); i++) {
    heard h;
    OxNumberField *field = new_field(&speed, 100, &h);
    type(field, rows[i].text);
    assert_close(ox_number_field_get_value(field), rows[i].value, 1e-9, rows[i].text);
    assert_int_equal(ox_number_field_commit(field, FALSE), !rows[i].complains);
    assert_true((ox_number_field_get_message(field) != NULL) == rows[i].complains);
    assert_int_equal(h.edits, rows[i].value != 100 ? 1 : 0);
    if (rows[i].value == 12.5) assert_string_equal(shown(field), twelve_and_a_half);
    g_object_unref(field);
  }
  setlocale(LC_ALL, "C");
}

static void typing_works_with_a_decimal_point(void **state) { check_rows("C", "12.5"); }

static void typing_works_with_a_decimal_comma(void **state) { check_rows("de_DE.UTF-8", "12,5"); }

static void out_of_range_is_explained_and_the_old_value_kept(void **state) {
  heard h;
  OxNumberField *field = new_field(&course, 240, &h);
  GtkWidget *text = ox_number_field_get_text(field);
  /* as the fingers do it: 3 and 37 are courses, 370 is not */
  type(field, "3");
  type(field, "37");
  assert_close(ox_number_field_get_value(field), 37, 0, "while typing");
  type(field, "370");
  assert_close(ox_number_field_get_value(field), 240, 0, "what was held before");
  assert_false(ox_number_field_commit(field, FALSE));
  assert_string_equal(ox_number_field_get_message(field), "“370” is not a course (0 to 360).");
  assert_string_equal(shown(field), "370");
  assert_true(gtk_widget_has_css_class(gtk_widget_get_parent(text), "error"));
  gtk_test_accessible_assert_state(GTK_ACCESSIBLE(field), GTK_ACCESSIBLE_STATE_INVALID,
                                   GTK_ACCESSIBLE_INVALID_TRUE);
  assert_false(ox_number_field_commit(field, TRUE));
  assert_string_equal(shown(field), "240");
  assert_string_equal(ox_number_field_get_message(field),
                      "“370” is not a course (0 to 360). 240 is kept.");
  type(field, "250");
  assert_null(ox_number_field_get_message(field));
  assert_false(gtk_widget_has_css_class(gtk_widget_get_parent(text), "error"));
  g_object_unref(field);
}

static void a_complaint_waits_for_the_fingers_but_not_for_ever(void **state) {
  heard h;
  OxNumberField *field = new_field(&course, 240, &h);
  type(field, "400");
  assert_null(ox_number_field_get_message(field));
  app_test_spin_ms(1200);
  assert_non_null(ox_number_field_get_message(field));
  g_object_unref(field);
}

static void leaving_the_field_never_rounds_the_value(void **state) {
  heard h;
  OxNumberField *field = new_field(&speed, 12.34, &h);
  assert_string_equal(shown(field), "12.3");
  assert_true(ox_number_field_commit(field, TRUE));
  type(field, "12.");
  type(field, "12.3");
  assert_true(ox_number_field_commit(field, TRUE));
  assert_string_equal(shown(field), "12.3");
  ox_number_field_set_value(field, 12.34);
  h.edits = 0;
  ox_number_field_commit(field, TRUE);
  assert_close(ox_number_field_get_value(field), 12.34, 0, "untouched");
  assert_int_equal(h.edits, 0);
  g_object_unref(field);
}

static void keys_step_a_bearing_round_the_compass(void **state) {
  heard h;
  OxNumberField *field = new_field(&course, 359, &h);
  assert_true(press(field, GDK_KEY_Up));
  assert_string_equal(shown(field), "360");
  press(field, GDK_KEY_Up);
  assert_string_equal(shown(field), "001");
  press(field, GDK_KEY_Down);
  press(field, GDK_KEY_Down);
  assert_string_equal(shown(field), "359");
  press(field, GDK_KEY_Page_Up);
  assert_string_equal(shown(field), "009");
  press(field, GDK_KEY_Page_Down);
  assert_string_equal(shown(field), "359");
  assert_int_equal(h.edits, 6);
  assert_false(press(field, GDK_KEY_space));
  g_object_unref(field);
}

static void escape_brings_back_the_value_and_enter_hands_on(void **state) {
  heard h;
  OxNumberField *field = new_field(&course, 240, &h);
  type(field, "90");
  assert_true(press(field, GDK_KEY_Escape));
  assert_close(ox_number_field_get_value(field), 240, 0, "reverted");
  assert_string_equal(shown(field), "240");
  assert_false(press(field, GDK_KEY_Escape)); /* nothing left to bring back */
  type(field, "90");
  g_signal_emit_by_name(ox_number_field_get_text(field), "activate");
  assert_int_equal(h.commits, 1);
  assert_string_equal(shown(field), "090");
  type(field, "900");
  g_signal_emit_by_name(ox_number_field_get_text(field), "activate");
  assert_int_equal(h.commits, 1);
  g_object_unref(field);
}

static void a_listener_can_refuse_and_its_reason_is_shown(void **state) {
  heard h;
  OxNumberField *field = new_field(&speed, 100, &h);
  h.refuse = TRUE;
  type(field, "300");
  assert_close(ox_number_field_get_value(field), 100, 0, "kept");
  assert_string_equal(ox_number_field_get_message(field),
                      "“300” is not below the speed of sound.");
  h.refuse = FALSE;
  type(field, "30");
  assert_null(ox_number_field_get_message(field));
  g_object_unref(field);
}

static void an_empty_field_can_stand_for_nothing_given(void **state) {
  heard h;
  ox_number_style style = speed;
  style.can_be_absent = TRUE;
  style.min = 30;
  OxNumberField *field = new_field(&style, 90, &h);
  ox_number_field_set_suggestion(field, 105, "105");
  type(field, "");
  assert_close(ox_number_field_get_value(field), 0, 0, "absent");
  assert_true(ox_number_field_commit(field, TRUE));
  assert_string_equal(shown(field), "");
  press(field, GDK_KEY_Up);
  assert_string_equal(shown(field), "105");
  type(field, "10");
  assert_false(ox_number_field_commit(field, FALSE));
  g_object_unref(field);
}

static void the_wheel_does_nothing_without_the_focus(void **state) {
  heard h;
  OxNumberField *field = new_field(&course, 240, &h);
  GListModel *controllers = gtk_widget_observe_controllers(GTK_WIDGET(field));
  gboolean handled = TRUE, found = FALSE;
  for (guint i = 0; i < g_list_model_get_n_items(controllers); i++) {
    GObject *controller = g_list_model_get_item(controllers, i);
    if (GTK_IS_EVENT_CONTROLLER_SCROLL(controller)) {
      found = TRUE;
      g_signal_emit_by_name(controller, "scroll", 0.0, 1.0, &handled);
    }
    g_object_unref(controller);
  }
  g_object_unref(controllers);
  assert_true(found);
  assert_false(handled);
  assert_close(ox_number_field_get_value(field), 240, 0, "unchanged");
  g_object_unref(field);
}

static void a_value_from_outside_is_shown_and_announced_to_nobody(void **state) {
  heard h;
  OxNumberField *field = new_field(&course, 240, &h);
  ox_number_field_set_value(field, 0);
  assert_string_equal(shown(field), "360");
  assert_int_equal(h.edits, 0);
  type(field, "x");
  ox_number_field_reset(field, 0);
  assert_string_equal(shown(field), "360");
  g_object_unref(field);
}

/* The tests say which locale they want; GTK took that of the environment. */
static int set_up(void **state) {
  int failed = app_test_init(state);
  setlocale(LC_ALL, "C");
  return failed;
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(typing_works_with_a_decimal_point),
      cmocka_unit_test(typing_works_with_a_decimal_comma),
      cmocka_unit_test(out_of_range_is_explained_and_the_old_value_kept),
      cmocka_unit_test(a_complaint_waits_for_the_fingers_but_not_for_ever),
      cmocka_unit_test(leaving_the_field_never_rounds_the_value),
      cmocka_unit_test(keys_step_a_bearing_round_the_compass),
      cmocka_unit_test(escape_brings_back_the_value_and_enter_hands_on),
      cmocka_unit_test(a_listener_can_refuse_and_its_reason_is_shown),
      cmocka_unit_test(an_empty_field_can_stand_for_nothing_given),
      cmocka_unit_test(the_wheel_does_nothing_without_the_focus),
      cmocka_unit_test(a_value_from_outside_is_shown_and_announced_to_nobody),
  };
  return cmocka_run_group_tests_name("number_field", tests, set_up, NULL);
}
