/* The pages of words, of the cross-check and of time and fuel as their user sees them. */
#include "app_test.h"

#include <math.h>

#include "ox_clearance_words.h"
#include "ox_number_field.h"
#include "ox_said_box.h"

static const char cleared[] = "Cleared to ALDER, hold south on the 180 radial, left turns, "
                              "2 minute legs, EFC 1825, maintain 7000";

static OxWindow *open_page(const char *page) {
  OxWindow *window = app_test_window(NULL);
  char *action = g_strdup_printf("page-%s", page);
  g_action_group_activate_action(G_ACTION_GROUP(window), action, NULL);
  g_free(action);
  app_test_spin_ms(150);
  return window;
}

static GtkTextBuffer *entry_buffer(OxWindow *window) {
  return gtk_text_view_get_buffer(ox_words_panel_entry(ox_window_words(window)));
}

/* A character at a time, as it is typed. */
static void type(OxWindow *window, const char *text) {
  GtkTextView *entry = ox_words_panel_entry(ox_window_words(window));
  for (const char *at = text; *at; at = g_utf8_next_char(at)) {
    char letter[8] = "";
    g_utf8_strncpy(letter, at, 1);
    g_signal_emit_by_name(entry, "insert-at-cursor", letter);
  }
  app_test_spin_ms(50);
}

static void put_caret(OxWindow *window, const char *word) {
  GtkTextIter at;
  const char *found = strstr(cleared, word);
  assert_non_null(found);
  gtk_text_buffer_get_iter_at_offset(entry_buffer(window), &at, (int)(found - cleared));
  gtk_text_buffer_place_cursor(entry_buffer(window), &at);
}

static void press(GtkWidget *button) { g_signal_emit_by_name(button, "clicked"); }

/* ---- words ------------------------------------------------------------------------------ */

static void the_key_of_the_page_puts_the_focus_into_the_clearance(void **state) {
  OxWindow *window = open_page("words");
  GtkWidget *entry = GTK_WIDGET(ox_words_panel_entry(ox_window_words(window)));
  assert_true(gtk_widget_is_focus(entry));
  gtk_test_accessible_assert_property(GTK_ACCESSIBLE(entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      "Clearance");
  assert_false(gtk_widget_get_sensitive(ox_words_panel_use_button(ox_window_words(window))));
  app_test_close(window);
}

static void a_typed_clearance_becomes_the_case_in_one_step_and_is_undone(void **state) {
  OxWindow *window = open_page("words");
  OxDocument *document = ox_window_document(window);
  OxWordsPanel *words = ox_window_words(window);
  ox_case before = *ox_document_case(document);
  type(window, cleared);
  assert_true(gtk_widget_get_sensitive(ox_words_panel_use_button(words)));
  assert_true(ox_case_equal(ox_document_case(document), &before)); /* not before it is used */
  press(ox_words_panel_use_button(words));
  const ox_case *c = ox_document_case(document);
  assert_string_equal(c->hold.fix, "ALDER");
  assert_close(c->hold.inbound_deg, 360, 1e-9, "south on the 180 radial is inbound 360");
  assert_int_equal(c->hold.turns, OX_TURNS_LEFT);
  assert_close(c->hold.leg_s, 120, 0, "leg");
  assert_int_equal(c->hold.efc_min, 18 * 60 + 25);
  assert_close(c->hold.altitude_ft, 7000, 0, "altitude");
  assert_close(c->aircraft.ias_kt, before.aircraft.ias_kt, 0, "the rest stays");
  assert_string_equal(ox_document_undo_name(document), "Clearance");
  ox_document_undo(document);
  assert_true(ox_case_equal(ox_document_case(document), &before));
  ox_document_redo(document);
  assert_string_equal(ox_document_case(document)->hold.fix, "ALDER");
  app_test_close(window);
}

static PangoUnderline underline_at(OxWindow *window, const char *word) {
  GtkTextIter at;
  PangoUnderline underline = PANGO_UNDERLINE_NONE;
  gtk_text_buffer_get_iter_at_offset(entry_buffer(window), &at,
                                     (int)(strstr(cleared, word) - cleared));
  GSList *tags = gtk_text_iter_get_tags(&at);
  if (tags) g_object_get(tags->data, "underline", &underline, NULL);
  g_slist_free(tags);
  return underline;
}

static void words_are_underlined_by_what_they_mean(void **state) {
  OxWindow *window = open_page("words");
  type(window, cleared);
  PangoUnderline place = underline_at(window, "ALDER"), line = underline_at(window, "180"),
                 shape = underline_at(window, "left"), limit = underline_at(window, "7000");
  assert_int_not_equal(place, PANGO_UNDERLINE_NONE);
  assert_int_not_equal(line, PANGO_UNDERLINE_NONE);
  assert_true(place != line && place != shape && line != shape && limit != place &&
              limit != line && limit != shape);
  assert_int_equal(underline_at(window, "2 minute"), shape);
  assert_int_equal(underline_at(window, "the 180"), PANGO_UNDERLINE_NONE);
  app_test_close(window);
}

static void the_caret_in_a_word_lights_the_picture(void **state) {
  static const struct {
    const char *word;
    ox_feature feature;
  } rows[] = {{"ALDER", OX_FEATURE_FIX},    {"south", OX_FEATURE_DIRECTION},
              {"180", OX_FEATURE_COURSE},   {"left", OX_FEATURE_TURNS},
              {"minute", OX_FEATURE_LEG},   {"EFC", OX_FEATURE_TIME},
              {"7000", OX_FEATURE_LIMITS},  {"the 180", OX_FEATURE_NONE}};
  OxWindow *window = open_page("words");
  OxWordsPanel *words = ox_window_words(window);
  type(window, cleared);
  for (size_t i = 0; i < G_N_ELEMENTS(rows); i++) {
    put_caret(window, rows[i].word);
    assert_int_equal(ox_highlight_feature(ox_window_highlight(window)), rows[i].feature);
    assert_int_equal(*ox_words_panel_meaning(words) != '\0', rows[i].feature != OX_FEATURE_NONE);
    app_test_spin_ms(30); /* is drawn */
  }
  put_caret(window, "ALDER");
  g_action_group_activate_action(G_ACTION_GROUP(window), "page-hold", NULL);
  assert_int_equal(ox_highlight_feature(ox_window_highlight(window)), OX_FEATURE_NONE);
  app_test_close(window);
}

/* The fix and its course are what was cleared; turns, leg and limits show where it is flown. */
static void no_light_gives_a_hidden_answer_away(void **state) {
  static const struct {
    const char *word;
    ox_feature open, hidden;
  } rows[] = {{"ALDER", OX_FEATURE_FIX, OX_FEATURE_FIX},
              {"180", OX_FEATURE_COURSE, OX_FEATURE_COURSE},
              {"left", OX_FEATURE_TURNS, OX_FEATURE_NONE},
              {"minute", OX_FEATURE_LEG, OX_FEATURE_NONE},
              {"7000", OX_FEATURE_LIMITS, OX_FEATURE_NONE}};
  OxWindow *window = open_page("words");
  OxHighlight *light = ox_window_highlight(window);
  type(window, cleared);
  put_caret(window, "left");
  assert_int_equal(ox_highlight_feature(light), OX_FEATURE_TURNS);
  g_action_group_activate_action(G_ACTION_GROUP(window), "predict", NULL);
  assert_true(ox_prediction_hides(ox_window_prediction(window)));
  assert_int_equal(ox_highlight_feature(light), OX_FEATURE_NONE);
  for (int hides = 1; hides >= 0; hides--) {
    g_action_group_activate_action(G_ACTION_GROUP(window), "page-words", NULL);
    for (size_t i = 0; i < G_N_ELEMENTS(rows); i++) {
      put_caret(window, rows[i].word);
      assert_int_equal(ox_highlight_feature(light), hides ? rows[i].hidden : rows[i].open);
    }
    put_caret(window, "the 180");
    if (hides) ox_prediction_set_state(ox_window_prediction(window), OX_PREDICTION_SHOWN);
  }
  app_test_close(window);
}

/* The fix lies on both boards where it is seen; what is flown lies elsewhere in the air. */
static void both_boards_are_lit(void **state) {
  OxWindow *window = open_page("words");
  OxHighlight *light = ox_window_highlight(window);
  OxBoard *first = ox_window_board(window);
  ox_vec points[OX_FEATURE_POINTS_MAX];
  type(window, cleared);
  g_action_group_change_action_state(G_ACTION_GROUP(window), "both-views",
                                     g_variant_new_boolean(TRUE));
  app_test_spin_ms(500);
  OxBoard *second = OX_BOARD(gtk_widget_get_next_sibling(GTK_WIDGET(first)));
  OxBoard *boards[] = {first, second};
  put_caret(window, "ALDER");
  for (int i = 0; i < 2; i++) {
    double x, y;
    assert_int_equal(ox_highlight_points(light, GTK_WIDGET(boards[i]), points), 1);
    assert_true(ox_board_handle_place(boards[i], OX_HANDLE_FIX, &x, &y));
    assert_close(points[0].x, x, 1e-6, "x of the fix");
    assert_close(points[0].y, y, 1e-6, "y of the fix");
  }
  put_caret(window, "left");
  assert_true(ox_highlight_points(light, GTK_WIDGET(first), points) > 1);
  assert_int_equal(ox_highlight_points(light, GTK_WIDGET(second), points), 0);
  app_test_spin_ms(60); /* is drawn */
  g_action_group_change_action_state(G_ACTION_GROUP(window), "both-views",
                                     g_variant_new_boolean(FALSE));
  app_test_spin_ms(60);
  app_test_close(window);
}

static gboolean is_bold(OxWindow *window, const char *word) {
  return app_test_is_bold(ox_words_panel_entry(ox_window_words(window)),
                          (int)(strstr(cleared, word) - cleared));
}

static void a_part_of_the_picture_marks_its_words(void **state) {
  OxWindow *window = open_page("words");
  OxWordsPanel *words = ox_window_words(window);
  type(window, cleared);
  ox_words_panel_mark_feature(words, OX_FEATURE_COURSE);
  assert_true(is_bold(window, "180"));
  assert_false(is_bold(window, "left"));
  ox_words_panel_mark_feature(words, OX_FEATURE_NONE);
  assert_false(is_bold(window, "180"));
  app_test_close(window);
}

static void doubts_are_listed_and_nonsense_cannot_be_used(void **state) {
  OxWindow *window = open_page("words");
  OxWordsPanel *words = ox_window_words(window);
  type(window, "good morning");
  assert_false(gtk_widget_get_sensitive(ox_words_panel_use_button(words)));
  assert_true(ox_words_panel_listed(words) >= 2);
  assert_non_null(app_test_find_label(GTK_WIDGET(words), "Not used: “good morning”"));
  gtk_text_buffer_set_text(entry_buffer(window), "", -1);
  assert_int_equal(ox_words_panel_listed(words), 0);
  char *longer = g_strnfill(OX_CLEARANCE_BYTES_MAX + 1, 'x');
  gtk_text_buffer_set_text(entry_buffer(window), longer, -1);
  assert_int_equal(ox_words_panel_listed(words), 1);
  assert_false(gtk_widget_get_sensitive(ox_words_panel_use_button(words)));
  g_free(longer);
  /* What is no letter at all is read without harm. */
  gtk_text_buffer_set_text(entry_buffer(window), "hold 風 of “LARCH” on the ½40 radial 𝄞", -1);
  app_test_spin_ms(50);
  app_test_close(window);
}

/* The time over the fix is the time now: 25 past that is 18:25. */
static void minutes_alone_count_from_the_crossing(void **state) {
  OxWindow *window = open_page("words");
  OxDocument *document = ox_window_document(window);
  ox_case c = *ox_document_case(document);
  c.arrival.fix_at_s = 18 * 3600 + 10 * 60;
  assert_int_equal(ox_document_edit(document, &c, NULL), OX_OK);
  type(window, "hold south of ALDER on the 180 radial, EFC 25");
  assert_int_equal(ox_words_panel_reading(ox_window_words(window))->result.hold.efc_min,
                   18 * 60 + 25);
  app_test_close(window);
}

/* AIM 5-3-8 i: the radial as given, and no altitude that was not assigned. */
static void a_used_clearance_is_read_back_as_it_was_said(void **state) {
  OxWindow *window = open_page("words");
  OxSaidBox *said = OX_SAID_BOX(app_test_find(GTK_WIDGET(window), OX_TYPE_SAID_BOX));
  type(window, "hold southwest of LARCH on the 240 radial, left turns, EFC 1825");
  press(ox_words_panel_use_button(ox_window_words(window)));
  app_test_spin_ms(50);
  ox_said_box_choose(said, OX_SAID_READBACK, FALSE);
  char *text = ox_said_box_text(said);
  assert_string_equal(text, "Hold southwest of LARCH on the 240 radial, left turns, expect "
                            "further clearance 1825.");
  g_free(text);
  ox_document_undo(ox_window_document(window)); /* another hold: the words are not of it */
  app_test_spin_ms(50);
  text = ox_said_box_text(said);
  assert_non_null(strstr(text, ", maintain "));
  g_free(text);
  app_test_close(window);
}

static void what_is_said_follows_the_case_and_its_choices(void **state) {
  OxWindow *window = open_page("words");
  OxDocument *document = ox_window_document(window);
  OxSaidBox *said = OX_SAID_BOX(app_test_find(GTK_WIDGET(window), OX_TYPE_SAID_BOX));
  char *last = ox_said_box_text(said);
  for (int i = 0; i < OX_SAID_COUNT; i++) {
    ox_said_box_choose(said, (guint)i, FALSE);
    char *text = ox_said_box_text(said);
    assert_true(strlen(text) > 20);
    g_free(last);
    last = text;
  }
  ox_said_box_choose(said, OX_SAID_CLEARANCE, FALSE);
  ox_document_set_field(document, ox_field_by_key("hold.altitude_ft"), 8000, NULL);
  char *figures = ox_said_box_text(said);
  assert_non_null(strstr(figures, "8,000"));
  ox_said_box_choose(said, OX_SAID_CLEARANCE, TRUE);
  char *spoken = ox_said_box_text(said);
  assert_non_null(strstr(spoken, "eight thousand"));
  g_free(last);
  g_free(figures);
  g_free(spoken);
  app_test_close(window);
}

/* ---- where the fix is ------------------------------------------------------------------ */

/* The lesson of places, with MAPLE and ALDER among its points. */
static OxWindow *open_places(void) {
  OxWindow *window = open_page("words");
  ox_messages messages = {0};
  char *path = g_build_filename(g_getenv("OXBOW_LESSONS"), "places.oxbow", NULL);
  assert_int_equal(ox_document_open(ox_window_document(window), path, &messages), OX_OK);
  g_free(path);
  return window;
}

static void say(OxWindow *window, const char *text) {
  gtk_text_buffer_set_text(entry_buffer(window), text, -1);
  app_test_spin_ms(50);
}

static const char *place_said(OxWindow *window) {
  return ox_words_panel_place(ox_window_words(window));
}

static void a_fix_at_a_radial_and_distance_is_placed_by_its_station(void **state) {
  OxWindow *window = open_places();
  OxDocument *document = ox_window_document(window);
  ox_fix before = *ox_document_fix(document);
  say(window, "Hold southwest of the MAPLE VORTAC 214 radial 15 mile fix, left turns, EFC 1825, "
              "maintain 5000");
  assert_string_equal(place_said(window),
                      "MAPLE VORTAC 15 DME is placed on the 214 radial of MAPLE at 15 DME.");
  press(ox_words_panel_use_button(ox_window_words(window)));
  const ox_fix *fix = ox_document_fix(document);
  assert_int_equal(fix->kind, OX_FIX_POINT);
  assert_string_equal(fix->point.from, "MAPLE");
  assert_close(fix->point.radial_deg, 214, 0, "radial");
  assert_close(fix->point.nm, 15, 0, "DME");
  assert_true(fix->point.dme);
  assert_close(ox_document_case(document)->hold.inbound_deg, 34, 0, "towards the station");
  ox_document_undo(document);
  assert_true(ox_fix_equal(ox_document_fix(document), &before)); /* one step for both */
  app_test_close(window);
}

static void an_unknown_station_is_said_to_be_missing(void **state) {
  OxWindow *window = open_places();
  OxDocument *document = ox_window_document(window);
  say(window, "Hold north of the TORCH 010 radial 20 DME fix, EFC 1825");
  assert_string_equal(place_said(window),
                      "TORCH 20 DME is on the 010 radial of TORCH at 20 NM. The lesson has no "
                      "point of that name: enter it on the page Places to place the fix.");
  press(ox_words_panel_use_button(ox_window_words(window)));
  assert_int_equal(ox_document_fix(document)->kind, OX_FIX_NAMED);
  assert_string_equal(ox_document_case(document)->hold.fix, "TORCH 20 DME");
  app_test_close(window);
}

static void present_position_is_where_the_aircraft_is(void **state) {
  OxWindow *window = open_places();
  OxDocument *document = ox_window_document(window);
  say(window, "Hold at your present position, right turns, EFC 1845");
  assert_true(g_str_has_prefix(place_said(window), "The fix is where the aircraft is"));
  press(ox_words_panel_use_button(ox_window_words(window)));
  assert_int_equal(ox_document_fix(document)->kind, OX_FIX_AHEAD_NM);
  assert_close(ox_document_fix(document)->ahead_nm, 0, 0, "none ahead");
  assert_close(ox_document_case(document)->arrival.distance_nm, 0, 0, "there already");
  app_test_close(window);
}

static void a_point_under_a_fuller_name_is_that_point(void **state) {
  OxWindow *window = open_places();
  OxDocument *document = ox_window_document(window);
  say(window, "Hold south of the ALDER VOR on the 180 radial, EFC 1845");
  assert_string_equal(place_said(window), "");
  press(ox_words_panel_use_button(ox_window_words(window)));
  assert_string_equal(ox_document_case(document)->hold.fix, "ALDER");
  assert_true(ox_fix_has_place(ox_document_points(document), ox_document_fix(document),
                               ox_document_case(document)));
  app_test_close(window);
}

/* ---- before it is used ------------------------------------------------------------------ */

static void the_hold_of_the_words_can_lie_over_the_case(void **state) {
  OxWindow *window = open_page("words");
  OxOverlays *overlays = ox_window_overlays(window);
  const char *name = NULL;
  say(window, cleared);
  assert_int_equal(ox_overlays_compare(overlays), OX_COMPARE_NOTHING); /* not by itself */
  g_action_group_change_action_state(G_ACTION_GROUP(window), "draw-said",
                                     g_variant_new_boolean(TRUE));
  const ox_flight *flight = ox_overlays_flight(overlays, &name);
  assert_non_null(flight);
  assert_string_equal(name, "as the words say");
  assert_int_equal(flight->setup.sense, -1); /* left turns */
  app_test_spin_ms(100);                     /* is drawn */
  say(window, "Hold south of ALDER on the 180 radial, right turns, EFC 1825");
  flight = ox_overlays_flight(overlays, &name);
  assert_non_null(flight);
  assert_int_equal(flight->setup.sense, 1);
  press(ox_words_panel_use_button(ox_window_words(window)));
  assert_null(ox_overlays_flight(overlays, &name)); /* it is the case now */
  say(window, "nothing of a hold");
  assert_null(ox_overlays_flight(overlays, &name));
  assert_non_null(strstr(*ox_overlays_sentences(overlays), "no clearance"));
  app_test_close(window);
}

static void the_pages_have_their_keys_in_the_order_they_stand_in(void **state) {
  static const char *const names[] = {"hold", "words", "check", "time", "places"};
  OxWindow *window = open_page("hold");
  GtkWidget *stack = gtk_widget_get_ancestor(GTK_WIDGET(ox_window_words(window)), GTK_TYPE_STACK);
  GtkSelectionModel *pages = gtk_stack_get_pages(GTK_STACK(stack));
  guint shown = 0;
  for (guint i = 0; i < g_list_model_get_n_items(G_LIST_MODEL(pages)); i++) {
    GtkStackPage *page = g_list_model_get_item(G_LIST_MODEL(pages), i);
    g_object_unref(page);
    /* Pages without a title are not in the switcher. */
    if (!gtk_stack_page_get_title(page) || !gtk_stack_page_get_visible(page)) continue;
    assert_true(shown < G_N_ELEMENTS(names));
    char *action = g_strdup_printf("page-%s", names[shown]);
    assert_string_equal(gtk_stack_page_get_name(page), names[shown]);
    g_action_group_activate_action(G_ACTION_GROUP(window), action, NULL);
    assert_string_equal(gtk_stack_get_visible_child_name(GTK_STACK(stack)), names[shown]);
    assert_non_null(gtk_window_get_focus(GTK_WINDOW(window)));
    g_free(action);
    shown++;
  }
  assert_int_equal(shown, G_N_ELEMENTS(names));
  g_object_unref(pages);
  app_test_close(window);
}

/* ---- the cross-check -------------------------------------------------------------------- */

static void with_nothing_entered_the_other_pages_are_not_told_of_it(void **state) {
  OxWindow *window = open_page("check");
  OxOverlays *overlays = ox_window_overlays(window);
  assert_int_equal(ox_overlays_compare(overlays), OX_COMPARE_SHOWN);
  g_action_group_activate_action(G_ACTION_GROUP(window), "page-hold", NULL);
  assert_int_equal(ox_overlays_compare(overlays), OX_COMPARE_NOTHING);
  g_action_group_activate_action(G_ACTION_GROUP(window), "page-check", NULL);
  gtk_drop_down_set_selected(
      GTK_DROP_DOWN(ox_check_panel_editor(ox_window_check(window), "shown.turns")),
      OX_SHOWN_TURNS_LEFT);
  app_test_spin_ms(100);
  g_action_group_activate_action(G_ACTION_GROUP(window), "page-hold", NULL);
  assert_int_equal(ox_overlays_compare(overlays), OX_COMPARE_SHOWN);
  app_test_close(window);
}

static void a_difference_is_said_and_both_holds_are_drawn(void **state) {
  OxWindow *window = open_page("check");
  OxDocument *document = ox_window_document(window);
  OxCheckPanel *check = ox_window_check(window);
  const char *name = NULL;
  assert_string_equal(ox_check_panel_summary(check), "Nothing is entered that the equipment shows.");
  assert_int_equal(ox_overlays_compare(ox_window_overlays(window)), OX_COMPARE_SHOWN);
  assert_null(ox_overlays_flight(ox_window_overlays(window), &name));
  gboolean left = ox_document_case(document)->hold.turns == OX_TURNS_LEFT;
  GtkWidget *turns = ox_check_panel_editor(check, "shown.turns");
  gtk_drop_down_set_selected(GTK_DROP_DOWN(turns),
                             left ? OX_SHOWN_TURNS_RIGHT : OX_SHOWN_TURNS_LEFT);
  app_test_spin_ms(150);
  assert_true(g_str_has_prefix(ox_check_panel_summary(check), "1 of 1 items shown differs"));
  assert_true(g_str_has_prefix(ox_check_panel_item(check, OX_CHECK_TURNS), "Turns: differs."));
  assert_true(g_str_has_prefix(ox_check_panel_item(check, OX_CHECK_FIX), "Fix: not shown."));
  const ox_flight *shown = ox_overlays_flight(ox_window_overlays(window), &name);
  assert_non_null(shown);
  assert_string_equal(name, "as the equipment shows it");
  assert_true(shown->setup.sense == -ox_document_flight(document)->setup.sense);
  assert_string_equal(ox_document_undo_name(document), "What the Equipment Shows");
  g_action_group_change_action_state(G_ACTION_GROUP(window), "draw-shown",
                                     g_variant_new_boolean(FALSE));
  assert_int_equal(ox_overlays_compare(ox_window_overlays(window)), OX_COMPARE_NOTHING);
  ox_document_undo(document);
  app_test_spin_ms(50);
  assert_string_equal(ox_check_panel_summary(check), "Nothing is entered that the equipment shows.");
  assert_int_equal(gtk_drop_down_get_selected(GTK_DROP_DOWN(turns)), OX_SHOWN_TURNS_NONE);
  app_test_close(window);
}

static void a_typed_fix_is_compared_as_it_is_typed(void **state) {
  OxWindow *window = open_page("check");
  OxCheckPanel *check = ox_window_check(window);
  GtkEditable *fix = GTK_EDITABLE(ox_check_panel_editor(check, "shown.fix"));
  gtk_editable_set_text(fix, "NOWHERE");
  assert_true(g_str_has_prefix(ox_check_panel_item(check, OX_CHECK_FIX), "Fix: differs."));
  gtk_editable_set_text(fix, ox_document_case(ox_window_document(window))->hold.fix);
  assert_true(g_str_has_prefix(ox_check_panel_item(check, OX_CHECK_FIX), "Fix: same."));
  app_test_close(window);
}

static void every_entry_has_its_name(void **state) {
  static const char *const check_keys[] = {"shown.fix",   "shown.direction", "shown.course_deg",
                                           "shown.course_is", "shown.turns", "shown.leg_s",
                                           "shown.leg_nm", "shown.efc"};
  static const char *const time_keys[] = {
      "arrival.fix_at", "hold.efc", "clock.utc_offset_min", "lost_radio.limit_starts_approach",
      "lost_radio.eta", "fuel.unit", "fuel.on_board", "fuel.flow_h", "fuel.alternate",
      "fuel.alternate_min", "fuel.reserve", "fuel.reserve_min"};
  OxWindow *window = open_page("check");
  for (size_t i = 0; i < G_N_ELEMENTS(check_keys); i++) {
    GtkWidget *editor = ox_check_panel_editor(ox_window_check(window), check_keys[i]);
    assert_non_null(editor);
    assert_true(gtk_test_accessible_has_relation(GTK_ACCESSIBLE(editor),
                                                 GTK_ACCESSIBLE_RELATION_LABELLED_BY));
    assert_non_null(gtk_widget_get_tooltip_text(editor));
  }
  for (size_t i = 0; i < G_N_ELEMENTS(time_keys); i++) {
    GtkWidget *editor = ox_time_panel_editor(ox_window_time(window), time_keys[i]);
    assert_non_null(editor);
    assert_true(gtk_test_accessible_has_relation(GTK_ACCESSIBLE(editor),
                                                 GTK_ACCESSIBLE_RELATION_LABELLED_BY));
  }
  app_test_close(window);
}

/* ---- time and fuel ---------------------------------------------------------------------- */

static void type_number(GtkWidget *field, const char *text) {
  gtk_editable_set_text(GTK_EDITABLE(ox_number_field_get_text(OX_NUMBER_FIELD(field))), text);
  ox_number_field_commit(OX_NUMBER_FIELD(field), TRUE);
}

/* By hand (C): 60 an hour, 5 kept: of 20 there are 15 minutes. */
static void fuel_is_entered_told_and_drawn_along_the_time(void **state) {
  OxWindow *window = open_page("time");
  OxTimePanel *time = ox_window_time(window);
  OxFuelBar *bar = ox_window_fuel_bar(window);
  assert_false(gtk_widget_get_visible(GTK_WIDGET(bar)));
  type_number(ox_time_panel_editor(time, "arrival.fix_at"), "18:00:00");
  type_number(ox_time_panel_editor(time, "fuel.on_board"), "20");
  type_number(ox_time_panel_editor(time, "fuel.flow_h"), "60");
  type_number(ox_time_panel_editor(time, "fuel.reserve"), "5");
  app_test_spin_ms(200);
  assert_close(ox_document_case(ox_window_document(window))->fuel.on_board, 20, 0, "on board");
  assert_non_null(strstr(ox_time_panel_words(time), "Leave the fix by 18:15:00 UTC"));
  assert_string_equal(ox_time_panel_cell(time, 1, 0), "UTC");
  assert_string_equal(ox_time_panel_cell(time, 1, 1), "18:00:00");
  assert_string_equal(ox_time_panel_cell(time, 3, 1), "20");
  assert_null(ox_time_panel_cell(time, 2, 1)); /* no local time asked for */
  type_number(ox_time_panel_editor(time, "clock.utc_offset_min"), "-300");
  app_test_spin_ms(50);
  assert_string_equal(ox_time_panel_cell(time, 2, 1), "13:00:00");
  assert_true(gtk_widget_get_visible(GTK_WIDGET(bar)));
  gtk_test_accessible_assert_role(GTK_ACCESSIBLE(bar), GTK_ACCESSIBLE_ROLE_IMG);
  app_test_close(window);
}

static void the_bar_lies_over_the_time_line(void **state) {
  OxWindow *window = open_page("time");
  OxFuelBar *bar = ox_window_fuel_bar(window);
  OxTimeLine *line = ox_transport_time_line(ox_window_transport(window));
  OxPlayer *player = ox_window_player(window);
  type_number(ox_time_panel_editor(ox_window_time(window), "fuel.on_board"), "20");
  type_number(ox_time_panel_editor(ox_window_time(window), "fuel.flow_h"), "60");
  app_test_spin_ms(200);
  for (int i = 0; i <= 4; i++) {
    double begin_s = ox_player_begin_s(player), end_s = ox_player_end_s(player), x, y;
    double t_s = begin_s + (end_s - begin_s) * i / 4;
    assert_true(gtk_widget_translate_coordinates(GTK_WIDGET(line), GTK_WIDGET(bar),
                                                 ox_time_line_x(line, t_s), 0, &x, &y));
    assert_close(ox_fuel_bar_x(bar, t_s), x, 1.0, "over the line");
  }
  app_test_close(window);
}

static GtkEventController *drag_of(GtkWidget *widget) {
  GtkEventController *found = NULL;
  GListModel *all = gtk_widget_observe_controllers(widget);
  for (guint i = 0; i < g_list_model_get_n_items(all) && !found; i++) {
    GtkEventController *one = g_list_model_get_item(all, i);
    if (GTK_IS_GESTURE_DRAG(one)) found = one;
    g_object_unref(one);
  }
  g_object_unref(all);
  return found;
}

static void the_fuel_pressed_goes_to_that_instant(void **state) {
  OxWindow *window = open_page("time");
  OxFuelBar *bar = ox_window_fuel_bar(window);
  OxPlayer *player = ox_window_player(window);
  type_number(ox_time_panel_editor(ox_window_time(window), "fuel.on_board"), "20");
  type_number(ox_time_panel_editor(ox_window_time(window), "fuel.flow_h"), "60");
  app_test_spin_ms(200);
  GtkEventController *drag = drag_of(GTK_WIDGET(bar));
  assert_non_null(drag);
  double middle_s = (ox_player_begin_s(player) + ox_player_end_s(player)) / 2;
  g_signal_emit_by_name(drag, "drag-begin", ox_fuel_bar_x(bar, middle_s), 5.0);
  assert_close(ox_player_time_s(player), middle_s, 0.5, "pressed");
  g_signal_emit_by_name(drag, "drag-begin", -500.0, 5.0);
  assert_close(ox_player_time_s(player), ox_player_begin_s(player), 1e-6, "before the beginning");
  app_test_close(window);
}

static void an_entry_out_of_range_is_explained_and_changes_nothing(void **state) {
  OxWindow *window = open_page("time");
  GtkWidget *field = ox_time_panel_editor(ox_window_time(window), "fuel.reserve_min");
  gtk_editable_set_text(GTK_EDITABLE(ox_number_field_get_text(OX_NUMBER_FIELD(field))), "900");
  assert_false(ox_number_field_commit(OX_NUMBER_FIELD(field), FALSE));
  assert_non_null(ox_number_field_get_message(OX_NUMBER_FIELD(field)));
  assert_close(ox_document_case(ox_window_document(window))->fuel.reserve_min, 0, 0, "unchanged");
  app_test_close(window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_key_of_the_page_puts_the_focus_into_the_clearance),
      cmocka_unit_test(a_typed_clearance_becomes_the_case_in_one_step_and_is_undone),
      cmocka_unit_test(words_are_underlined_by_what_they_mean),
      cmocka_unit_test(the_caret_in_a_word_lights_the_picture),
      cmocka_unit_test(both_boards_are_lit),
      cmocka_unit_test(no_light_gives_a_hidden_answer_away),
      cmocka_unit_test(a_part_of_the_picture_marks_its_words),
      cmocka_unit_test(doubts_are_listed_and_nonsense_cannot_be_used),
      cmocka_unit_test(minutes_alone_count_from_the_crossing),
      cmocka_unit_test(a_used_clearance_is_read_back_as_it_was_said),
      cmocka_unit_test(what_is_said_follows_the_case_and_its_choices),
      cmocka_unit_test(a_fix_at_a_radial_and_distance_is_placed_by_its_station),
      cmocka_unit_test(an_unknown_station_is_said_to_be_missing),
      cmocka_unit_test(present_position_is_where_the_aircraft_is),
      cmocka_unit_test(a_point_under_a_fuller_name_is_that_point),
      cmocka_unit_test(the_hold_of_the_words_can_lie_over_the_case),
      cmocka_unit_test(the_pages_have_their_keys_in_the_order_they_stand_in),
      cmocka_unit_test(the_fuel_pressed_goes_to_that_instant),
      cmocka_unit_test(with_nothing_entered_the_other_pages_are_not_told_of_it),
      cmocka_unit_test(a_difference_is_said_and_both_holds_are_drawn),
      cmocka_unit_test(a_typed_fix_is_compared_as_it_is_typed),
      cmocka_unit_test(every_entry_has_its_name),
      cmocka_unit_test(fuel_is_entered_told_and_drawn_along_the_time),
      cmocka_unit_test(the_bar_lies_over_the_time_line),
      cmocka_unit_test(an_entry_out_of_range_is_explained_and_changes_nothing),
  };
  return cmocka_run_group_tests_name("words panel", tests, app_test_init, NULL);
}
