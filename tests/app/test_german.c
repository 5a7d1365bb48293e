/* The window in German: no English text of the catalogue is left on a label, a tooltip, a menu or
 * an accessible name; entries have a decimal comma; steps to undo have German names. */
#include "app_test.h"

#include "../engine/random_case.h"
#include "ox_dialogs.h"
#include "ox_figures.h"
#include "ox_german.h"
#include "ox_input.h"
#include "ox_inputs_panel.h"
#include "ox_number_field.h"
#include "ox_overlay_words.h"
#include "ox_said_box.h"
#include "ox_stretches.h"

/* ---- the catalogue ---------------------------------------------------------------------- */

/* English texts whose German differs, without access keys and contexts. */
static GHashTable *english;

static char *bare(const char *text) {
  const char *end_of_context = strchr(text, '\004');
  char **parts = g_strsplit(end_of_context ? end_of_context + 1 : text, "_", -1);
  char *joined = g_strjoinv("", parts);
  g_strfreev(parts);
  return joined;
}

/* A file of gettext's compiler: a magic number, a revision, how many, and where the tables of
 * lengths and places are (GNU gettext manual, "The Format of GNU MO Files"). */
static void read_catalogue(const char *path) {
  char *bytes;
  gsize length;
  GHashTable *german = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
  assert_true(g_file_get_contents(path, &bytes, &length, NULL));
  const guint32 *head = (const guint32 *)(const void *)bytes;
  assert_int_equal(head[0], 0x950412de);
  const guint32 *ids = (const guint32 *)(const void *)(bytes + head[3]);
  const guint32 *texts = (const guint32 *)(const void *)(bytes + head[4]);
  for (guint32 i = 0; i < head[2]; i++) {
    char *id = bare(bytes + ids[2 * i + 1]), *text = bare(bytes + texts[2 * i + 1]);
    if (*id && strcmp(id, text) != 0) g_hash_table_add(english, g_strdup(id));
    g_hash_table_add(german, text);
    g_free(id);
  }
  GHashTableIter at;
  gpointer text;
  g_hash_table_iter_init(&at, german);
  while (g_hash_table_iter_next(&at, &text, NULL)) g_hash_table_remove(english, text);
  g_hash_table_unref(german);
  g_free(bytes);
}

static int set_up(void **state) {
  if (german_set_up(state) != 0) return -1;
  g_setenv("LC_ALL", "de_DE.UTF-8", TRUE);
  if (app_test_init(state) != 0) return -1;
  char *path = g_build_filename(getenv("OXBOW_TEST_LOCALE"), "de", "LC_MESSAGES", "oxbow.mo", NULL);
  english = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
  read_catalogue(path);
  g_free(path);
  speak_german();
  return 0;
}

static int tear_down(void **state) {
  g_hash_table_unref(english);
  return german_tear_down(state);
}

/* ---- the walk --------------------------------------------------------------------------- */

typedef struct {
  size_t texts, left;
} walk;

/* One character alone is a key, in the window of the shortcuts. */
static void look(walk *w, const char *where, const char *text) {
  if (!text || g_utf8_strlen(text, -1) < 2) return;
  char *plain = bare(text);
  const char *word = german_left_over(plain);
  w->texts++;
  if (word || g_hash_table_contains(english, plain)) {
    w->left++;
    print_error("%s: \"%s\"%s%s\n", where, plain, word ? " has English" : "", word ? word : "");
  }
  g_free(plain);
}

static void look_at_menu(walk *w, GMenuModel *menu) {
  for (int i = 0; i < g_menu_model_get_n_items(menu); i++) {
    char *label = NULL;
    if (g_menu_model_get_item_attribute(menu, i, G_MENU_ATTRIBUTE_LABEL, "s", &label))
      look(w, "menu", label);
    g_free(label);
    static const char *const links[] = {G_MENU_LINK_SECTION, G_MENU_LINK_SUBMENU};
    for (size_t k = 0; k < G_N_ELEMENTS(links); k++) {
      GMenuModel *below = g_menu_model_get_item_link(menu, i, links[k]);
      if (below) look_at_menu(w, below);
      g_clear_object(&below);
    }
  }
}

static void look_at_list(walk *w, GtkDropDown *choice) {
  GListModel *list = gtk_drop_down_get_model(choice);
  for (guint i = 0; list && i < g_list_model_get_n_items(list); i++) {
    GtkStringObject *item = g_list_model_get_item(list, i);
    if (GTK_IS_STRING_OBJECT(item)) look(w, "choice", gtk_string_object_get_string(item));
    g_object_unref(item);
  }
}

/* What a value that no property has is told apart from. */
static void look_at_property(walk *w, GtkWidget *widget, GtkAccessibleProperty property) {
  char *value = gtk_test_accessible_check_property(GTK_ACCESSIBLE(widget), property, "\001");
  look(w, "accessible", value);
  g_free(value);
}

/* What is said on the radio is English in every language (ICAO Annex 10, from memory). */
static void look_at(walk *w, GtkWidget *widget) {
  if (OX_IS_SAID_BOX(widget)) return;
  if (GTK_IS_LABEL(widget)) look(w, "label", gtk_label_get_label(GTK_LABEL(widget)));
  if (GTK_IS_WINDOW(widget)) look(w, "title", gtk_window_get_title(GTK_WINDOW(widget)));
  if (GTK_IS_TEXT(widget)) look(w, "placeholder", gtk_text_get_placeholder_text(GTK_TEXT(widget)));
  if (GTK_IS_DROP_DOWN(widget)) look_at_list(w, GTK_DROP_DOWN(widget));
  if (GTK_IS_MENU_BUTTON(widget)) {
    GMenuModel *menu = gtk_menu_button_get_menu_model(GTK_MENU_BUTTON(widget));
    if (menu) look_at_menu(w, menu);
  }
  look(w, "tooltip", gtk_widget_get_tooltip_text(widget));
  if (gtk_test_accessible_has_property(GTK_ACCESSIBLE(widget), GTK_ACCESSIBLE_PROPERTY_LABEL))
    look_at_property(w, widget, GTK_ACCESSIBLE_PROPERTY_LABEL);
  if (gtk_test_accessible_has_property(GTK_ACCESSIBLE(widget), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION))
    look_at_property(w, widget, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
  for (GtkWidget *at = gtk_widget_get_first_child(widget); at; at = gtk_widget_get_next_sibling(at))
    look_at(w, at);
}

/* All windows; at least so many texts must have been found. */
static void assert_all_is_german(size_t least) {
  walk w = {0};
  GList *windows = gtk_window_list_toplevels();
  for (GList *at = windows; at; at = at->next) look_at(&w, at->data);
  g_list_free(windows);
  assert_true(w.texts >= least);
  assert_int_equal(w.left, 0);
}

/* The demo lesson is English: a case of its own name alone is left of it. */
static OxWindow *window_without_names(void) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  while (ox_document_case_count(document) > 2) ox_document_delete_case(document, 0);
  for (size_t i = 0; i < 2; i++)
    ox_document_rename_case(document, i, i == 0 ? "LARCH" : "BIRCH", NULL);
  ox_document_set_title(document, "LARCH", NULL);
  app_test_spin_ms(300);
  return window;
}

static void act(OxWindow *window, const char *action) {
  g_action_group_activate_action(G_ACTION_GROUP(window), action, NULL);
  app_test_spin_ms(300);
}

static void nothing_in_the_window_is_english(void **state) {
  OxWindow *window = window_without_names();
  assert_all_is_german(400);
  static const char *const pages[] = {"page-words", "page-check", "page-time", "page-places",
                                      "cases",      "moments",    "spread",    "area"};
  for (size_t i = 0; i < G_N_ELEMENTS(pages); i++) {
    act(window, pages[i]);
    assert_all_is_german(400);
  }
  act(window, "compare-cases");
  for (int i = -2; i < 6; i++) {
    g_action_group_change_action_state(G_ACTION_GROUP(window), "compare", g_variant_new_int32(i));
    app_test_spin_ms(100);
    assert_all_is_german(400);
  }
  app_test_close(window);
}

/* Every technique has other words; every wind and altitude other figures and advice. */
static void nothing_of_other_cases_is_english(void **state) {
  OxWindow *window = window_without_names();
  OxDocument *document = ox_window_document(window);
  const ox_input *preset = ox_input_by_key("preset");
  for (int i = 0; i < 8; i++) {
    ox_case c = *ox_document_case(document);
    ox_input_apply(preset, &c, i);
    ox_input_apply(ox_input_by_key("wind.kt"), &c, 7.0 * i);
    ox_input_apply(ox_input_by_key("wind.from_deg"), &c, 40.0 * i);
    c.hold.turns = i % 2 == 0 ? OX_TURNS_RIGHT : OX_TURNS_LEFT;
    c.arrival.heading_deg = 45.0 * i + 1;
    if (ox_document_edit(document, &c, NULL) == OX_ERROR) continue;
    app_test_spin_ms(250);
    assert_all_is_german(400);
  }
  app_test_close(window);
}

static void nothing_in_the_dialogs_is_english(void **state) {
  OxWindow *window = window_without_names();
  static const char *const actions[] = {"export", "published", "predict"};
  for (size_t i = 0; i < G_N_ELEMENTS(actions); i++) {
    act(window, actions[i]);
    assert_all_is_german(420);
    GtkWidget *dialog = app_test_dialog();
    if (dialog) gtk_window_destroy(GTK_WINDOW(dialog));
    app_test_spin_ms(100);
  }
  GtkWidget *asked[] = {ox_dialog_unsaved(GTK_WINDOW(window), "LARCH"),
                        ox_dialog_replace(GTK_WINDOW(window), "/LARCH.oxbow"),
                        ox_dialog_over_changed(GTK_WINDOW(window), "/LARCH.oxbow")};
  assert_all_is_german(420);
  for (size_t i = 0; i < G_N_ELEMENTS(asked); i++) ox_dialog_close(asked[i]);
  app_test_close(window);
}

/* ---- entries ---------------------------------------------------------------------------- */

static const char *text_of(OxWindow *window, const char *key) {
  GtkWidget *field = ox_inputs_panel_editor(ox_window_inputs(window), key);
  return gtk_editable_get_text(GTK_EDITABLE(ox_number_field_get_text(OX_NUMBER_FIELD(field))));
}

static void entries_show_and_take_a_decimal_comma(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  ox_document_set_field(document, ox_field_by_key("aircraft.rate_deg_s"), 2.25, NULL);
  ox_document_set_field(document, ox_field_by_key("hold.inbound_deg"), 123.5, NULL);
  assert_string_equal(text_of(window, "aircraft.rate_deg_s"), "2,25");
  assert_string_equal(text_of(window, "hold.inbound_deg"), "123,5");
  GtkWidget *field = ox_inputs_panel_editor(ox_window_inputs(window), "aircraft.rate_deg_s");
  GtkEditable *entry = GTK_EDITABLE(ox_number_field_get_text(OX_NUMBER_FIELD(field)));
  static const char *const typed[] = {"1,5", "1.75"};
  static const double meant[] = {1.5, 1.75};
  for (size_t i = 0; i < G_N_ELEMENTS(typed); i++) {
    gtk_editable_set_text(entry, typed[i]);
    assert_true(ox_number_field_commit(OX_NUMBER_FIELD(field), TRUE));
    assert_true(ox_document_case(document)->aircraft.rate_deg_s == meant[i]);
  }
  gtk_editable_set_text(entry, "1,5x");
  assert_false(ox_number_field_commit(OX_NUMBER_FIELD(field), FALSE));
  const char *message = ox_number_field_get_message(OX_NUMBER_FIELD(field));
  assert_non_null(strstr(message, "„1,5x“"));
  assert_null(german_left_over(message));
  ox_number_field_reset(OX_NUMBER_FIELD(field), 1.75);
  app_test_close(window);
}

/* ---- steps ------------------------------------------------------------------------------ */

static void steps_to_undo_have_german_names(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  size_t count, tried = 0;
  const ox_input *inputs = ox_inputs(&count);
  for (size_t i = 0; i < count; i++) {
    if (inputs[i].source != OX_SOURCE_FIELD) continue;
    const ox_field *field = ox_input_field(&inputs[i]);
    ox_case c = *ox_document_case(document);
    double value = ox_input_get(&inputs[i], &c);
    ox_input_apply(&inputs[i], &c, value < field->max ? value + 1 : value - 1);
    if (ox_document_edit(document, &c, NULL) == OX_ERROR) continue;
    char *name = bare(ox_text(inputs[i].label));
    assert_string_equal(ox_document_undo_name(document), name);
    char *tip = g_strdup_printf("Rückgängig: %s", name);
    GtkWidget *undo = app_test_find_button(GTK_WIDGET(window), "edit-undo-symbolic");
    assert_string_equal(gtk_widget_get_tooltip_text(undo), tip);
    ox_document_undo(document);
    g_free(tip);
    g_free(name);
    tried++;
  }
  assert_true(tried > 15);
  app_test_close(window);
}

static void steps_of_the_list_have_german_names(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  ox_document_duplicate_case(document, 0);
  assert_string_equal(ox_document_undo_name(document), "Fall verdoppeln");
  assert_true(g_str_has_suffix(ox_document_case(document)->name, ", Kopie"));
  ox_document_move_case(document, 0, 1);
  assert_string_equal(ox_document_undo_name(document), "Fall verschieben");
  ox_document_delete_case(document, 0);
  assert_string_equal(ox_document_undo_name(document), "Fall löschen");
  app_test_close(window);
}

/* ---- access keys ------------------------------------------------------------------------ */

static char key_of(const char *label) {
  const char *mark = strchr(ox_text(label), '_');
  return mark ? g_ascii_tolower(mark[1]) : '\0';
}

static void access_keys_are_letters_and_unique(void **state) {
  size_t count;
  const ox_input *inputs = ox_inputs(&count);
  for (size_t i = 0; i < count; i++) {
    char key = key_of(inputs[i].label);
    if (!key) continue;
    assert_true(g_ascii_isalnum(key));
    for (size_t k = 0; k < i; k++) {
      /* leg time and leg length stand in each other's place */
      if (g_str_has_prefix(inputs[i].key, "hold.leg.") &&
          g_str_has_prefix(inputs[k].key, "hold.leg."))
        continue;
      if (key_of(inputs[k].label) == key)
        fail_msg("%s and %s", ox_text(inputs[i].label), ox_text(inputs[k].label));
    }
  }
}

/* ---- sentences with figures ------------------------------------------------------------- */

static void figures_now(char *out, size_t bytes, const ox_case *c, const ox_flight *flight) {
  ox_figure_text figures[OX_FIGURE_COUNT];
  ox_figures_make(figures, c, flight, 30);
  ox_figures_words(out, bytes, figures, c->variation_deg != 0);
}

static void stretch_now(char *out, size_t bytes, const ox_flight *flight, size_t which) {
  ox_stretch *stretches = g_new0(ox_stretch, OX_LEGS_MAX);
  size_t count = ox_stretches_make(flight, stretches);
  out[0] = '\0';
  if (count > 0) ox_stretches_words(out, bytes, &stretches[which % count]);
  g_free(stretches);
}

static void check_words(const ox_case *c, const ox_flight *flight, size_t which) {
  char english_words[400], german_words[400];
  ox_spread spread = {.runs = 500, .not_regained = which % 3,
                      .inbound_s = {.low = 40.5, .high = 90.5},
                      .rollout_nm = {.low = -0.25, .high = 1.5},
                      .nonholding_nm = {.low = 0.5, .high = 2},
                      .farthest_nm = {.low = 4.75, .high = 6}};
  speak_english();
  figures_now(english_words, sizeof english_words, c, flight);
  char *english_exact = ox_overlay_words_exact(c, flight);
  char *english_spread = ox_overlay_words_spread(&spread, 500);
  speak_german();
  figures_now(german_words, sizeof german_words, c, flight);
  char *german_exact = ox_overlay_words_exact(c, flight);
  char *german_spread = ox_overlay_words_spread(&spread, 500);
  assert_german(english_words, german_words);
  assert_german(english_exact, german_exact);
  assert_german(english_spread, german_spread);
  g_free(english_exact);
  g_free(english_spread);
  g_free(german_exact);
  g_free(german_spread);
  speak_english();
  stretch_now(english_words, sizeof english_words, flight, which);
  speak_german();
  stretch_now(german_words, sizeof german_words, flight, which);
  assert_german(english_words, german_words);
}

static void sentences_have_the_same_figures_in_both_languages(void **state) {
  ox_random random = {20261125};
  ox_flight *flight = g_new(ox_flight, 1);
  size_t flown = 0;
  for (size_t i = 0; i < 200; i++) {
    ox_case c = ox_random_case(&random, 0.4);
    if (ox_flight_solve(&c, flight) == OX_ERROR || flight->leg_count == 0) continue;
    check_words(&c, flight, i);
    flown++;
  }
  assert_true(flown > 150);
  g_free(flight);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(nothing_in_the_window_is_english),
      cmocka_unit_test(nothing_of_other_cases_is_english),
      cmocka_unit_test(nothing_in_the_dialogs_is_english),
      cmocka_unit_test(entries_show_and_take_a_decimal_comma),
      cmocka_unit_test(steps_to_undo_have_german_names),
      cmocka_unit_test(steps_of_the_list_have_german_names),
      cmocka_unit_test(access_keys_are_letters_and_unique),
      cmocka_unit_test(sentences_have_the_same_figures_in_both_languages),
  };
  return cmocka_run_group_tests_name("app german", tests, set_up, tear_down);
}
