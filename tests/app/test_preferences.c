/* Preferences as a person sets them: one window, effective everywhere at once, kept for the next
 * start, and put back. */
#include "app_test.h"

#include "ox_application.h"
#include "ox_preferences.h"
#include "ox_print.h"
#include "ox_share_choice.h"
#include "ox_words_panel.h"

static GTestDBus *bus; /* its own watcher stops it when the test is over */
static OxApplication *application;

static int set_up(void **state) {
  char *display = g_strdup(g_getenv("DISPLAY")), *home = app_test_path("config");
  g_setenv("XDG_CONFIG_HOME", home, TRUE); /* nobody else's settings */
  bus = g_test_dbus_new(G_TEST_DBUS_NONE);
  g_test_dbus_up(bus); /* forgets the display */
  if (display) g_setenv("DISPLAY", display, TRUE);
  g_free(display);
  g_free(home);
  if (app_test_init(state) != 0) return -1;
  application = ox_application_new(G_APPLICATION_NON_UNIQUE);
  if (!g_application_register(G_APPLICATION(application), NULL, NULL)) return -1;
  g_application_activate(G_APPLICATION(application));
  return 0;
}

static OxSettings *settings(void) { return ox_application_settings(application); }

static OxPreferences *preferences(void) {
  g_action_group_activate_action(G_ACTION_GROUP(application), "preferences", NULL);
  app_test_spin_ms(100);
  OxPreferences *found = NULL;
  int count = 0;
  for (GList *at = gtk_application_get_windows(GTK_APPLICATION(application)); at; at = at->next)
    if (OX_IS_PREFERENCES(at->data)) {
      found = at->data;
      count++;
    }
  assert_int_equal(count, 1); /* however often it is asked for */
  return found;
}

static OxWindow *window_at(guint wanted) {
  for (GList *at = gtk_application_get_windows(GTK_APPLICATION(application)); at; at = at->next)
    if (OX_IS_WINDOW(at->data) && wanted-- == 0) return at->data;
  return NULL;
}

static void choose(OxPreferences *self, ox_preference which, guint index) {
  gtk_drop_down_set_selected(GTK_DROP_DOWN(ox_preferences_input(self, which)), index);
  app_test_spin_ms(30);
}

static guint shown(OxPreferences *self, ox_preference which) {
  return gtk_drop_down_get_selected(GTK_DROP_DOWN(ox_preferences_input(self, which)));
}

static gboolean property(const char *name) {
  gboolean value;
  g_object_get(gtk_settings_get_default(), name, &value, NULL);
  return value;
}

static void open_another_window(void) {
  char *path = app_test_path("other.oxbow");
  ox_lesson *lesson = ox_lesson_new();
  ox_messages messages = {0};
  assert_int_equal(ox_lesson_write(lesson, path, &messages), OX_OK);
  ox_lesson_free(lesson);
  ox_document_set_field(ox_window_document(window_at(0)), ox_field_by_key("hold.inbound_deg"), 99,
                        NULL); /* no untouched window to take it */
  GFile *file = g_file_new_for_path(path);
  g_application_open(G_APPLICATION(application), &file, 1, "");
  g_object_unref(file);
  g_free(path);
  app_test_spin_ms(100);
}

/* The table of the window and that of the settings must say the same. */
static void every_row_has_as_many_choices_as_words(void **state) {
  OxPreferences *self = preferences();
  for (int i = 0; i < OX_PREFERENCE_COUNT; i++) {
    GtkWidget *input = ox_preferences_input(self, (ox_preference)i);
    GListModel *model = gtk_drop_down_get_model(GTK_DROP_DOWN(input));
    assert_int_equal(g_list_model_get_n_items(model),
                     g_strv_length((char **)ox_preference_words((ox_preference)i)));
    assert_true(gtk_test_accessible_has_relation(GTK_ACCESSIBLE(input),
                                                 GTK_ACCESSIBLE_RELATION_LABELLED_BY));
    assert_true(gtk_test_accessible_has_relation(GTK_ACCESSIBLE(input),
                                                 GTK_ACCESSIBLE_RELATION_DESCRIBED_BY));
    GList *labels = gtk_widget_list_mnemonic_labels(input);
    assert_int_equal(g_list_length(labels), 1);
    g_list_free(labels);
    assert_int_equal(shown(self, (ox_preference)i), 0);
  }
  assert_ptr_equal(preferences(), self);
}

static void appearance_and_motion_count_at_once_in_every_window(void **state) {
  OxPreferences *self = preferences();
  open_another_window();
  assert_non_null(window_at(1));
  gboolean moved = property("gtk-enable-animations");
  choose(self, OX_PREFER_APPEARANCE, 2);
  assert_true(property("gtk-application-prefer-dark-theme"));
  choose(self, OX_PREFER_APPEARANCE, 3);
  for (guint i = 0; i < 2; i++)
    assert_int_equal(ox_board_palette(ox_window_board(window_at(i))), OX_PALETTE_PROJECTOR);
  /* and the other way round: the menu's choice is shown */
  g_action_group_activate_action(G_ACTION_GROUP(application), "appearance",
                                 g_variant_new_string("light"));
  app_test_spin_ms(30);
  assert_int_equal(shown(self, OX_PREFER_APPEARANCE), 1);
  choose(self, OX_PREFER_MOTION, 1);
  assert_false(property("gtk-enable-animations"));
  choose(self, OX_PREFER_MOTION, 0);
  assert_int_equal(property("gtk-enable-animations"), moved);
}

static void the_wording_is_one_for_all_windows_wherever_it_is_chosen(void **state) {
  OxPreferences *self = preferences();
  choose(self, OX_PREFER_WORDING, 1);
  for (guint i = 0; i < 2; i++)
    assert_int_equal(ox_words_panel_wording(ox_window_words(window_at(i))), OX_WORDING_ICAO);
  ox_words_panel_set_wording(ox_window_words(window_at(0)), OX_WORDING_US);
  app_test_spin_ms(30);
  assert_int_equal(shown(self, OX_PREFER_WORDING), 0);
  assert_int_equal(ox_words_panel_wording(ox_window_words(window_at(1))), OX_WORDING_US);
}

static const char *printed_on(void) {
  static char name[80];
  GtkPageSetup *paper = ox_print_paper_recall(settings());
  g_strlcpy(name, gtk_paper_size_get_name(gtk_page_setup_get_paper_size(paper)), sizeof name);
  g_object_unref(paper);
  return name;
}

/* A choice here goes before what a dialog remembered, and the dialog's goes on from there. */
static void paper_and_colours_are_where_the_dialogs_begin(void **state) {
  OxPreferences *self = preferences();
  ox_share_choice c = ox_share_choice_recall(settings());
  c.paper = OX_SHARE_A4_UPRIGHT;
  c.handout_paper = OX_SHARE_A4_ACROSS;
  c.palette = OX_PALETTE_DARK;
  ox_share_choice_remember(&c, settings());
  choose(self, OX_PREFER_PAPER, 2);
  choose(self, OX_PREFER_PALETTE, 3);
  c = ox_share_choice_recall(settings());
  assert_int_equal(c.paper, OX_SHARE_LETTER_ACROSS);
  assert_int_equal(c.handout_paper, OX_SHARE_LETTER_UPRIGHT);
  assert_int_equal(c.palette, OX_PALETTE_PRINT);
  assert_string_equal(printed_on(), GTK_PAPER_NAME_LETTER);
  c.handout_paper = OX_SHARE_A4_UPRIGHT;
  ox_share_choice_remember(&c, settings());
  assert_int_equal(ox_share_choice_recall(settings()).handout_paper, OX_SHARE_A4_UPRIGHT);
  choose(self, OX_PREFER_PAPER, 1);
  assert_string_equal(printed_on(), GTK_PAPER_NAME_A4);
}

static void all_of_it_is_there_after_the_next_start(void **state) {
  OxPreferences *self = preferences();
  choose(self, OX_PREFER_WORDING, 1);
  choose(self, OX_PREFER_APPEARANCE, 2);
  assert_true(ox_settings_flush(settings()));
  OxSettings *next = ox_settings_new(NULL);
  for (int i = 0; i < OX_PREFERENCE_COUNT; i++)
    assert_int_equal(ox_preference_get(next, (ox_preference)i),
                     ox_preference_get(settings(), (ox_preference)i));
  assert_int_equal(ox_preference_get(next, OX_PREFER_WORDING), 1);
  g_object_unref(next);
}

static void reset_puts_everything_back_at_once(void **state) {
  OxPreferences *self = preferences();
  choose(self, OX_PREFER_MOTION, 1);
  choose(self, OX_PREFER_PALETTE, 2);
  g_signal_emit_by_name(ox_preferences_reset_button(self), "clicked");
  app_test_spin_ms(50);
  for (int i = 0; i < OX_PREFERENCE_COUNT; i++)
    assert_int_equal(shown(self, (ox_preference)i), 0);
  assert_int_equal(ox_words_panel_wording(ox_window_words(window_at(0))), OX_WORDING_US);
  assert_false(property("gtk-application-prefer-dark-theme"));
  assert_int_equal(ox_share_choice_recall(settings()).palette, OX_PALETTE_LIGHT);
}

/* ISO 216 in most countries, ANSI in the United States: what the locale says (LC_PAPER). */
static void the_paper_of_the_locale_is_one_of_the_two(void **state) {
  gboolean a4 = g_str_equal(gtk_paper_size_get_default(), GTK_PAPER_NAME_A4);
  assert_int_equal(ox_preference_paper(settings()), a4 ? OX_PAPER_A4 : OX_PAPER_LETTER);
}

static void told_cb(OxSettings *kept, const char *key, int *told) {
  assert_string_equal(key, "paper");
  (*told)++;
}

static void a_setting_is_told_of_when_it_changes_and_only_then(void **state) {
  OxSettings *kept = ox_settings_new_unkept();
  int told = 0;
  g_signal_connect(kept, "changed::paper", G_CALLBACK(told_cb), &told);
  ox_settings_set_word(kept, "paper", "a4");
  ox_settings_set_word(kept, "paper", "a4");
  ox_settings_set_word(kept, "other", "a4");
  assert_int_equal(told, 1);
  ox_settings_forget(kept, "paper");
  ox_settings_forget(kept, "paper");
  assert_int_equal(told, 2);
  g_object_unref(kept);
}

static int clean(void **state) {
  gtk_window_destroy(GTK_WINDOW(preferences()));
  while (window_at(0)) app_test_close(window_at(0));
  g_clear_object(&application);
  return app_test_clean(state);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_row_has_as_many_choices_as_words),
      cmocka_unit_test(appearance_and_motion_count_at_once_in_every_window),
      cmocka_unit_test(the_wording_is_one_for_all_windows_wherever_it_is_chosen),
      cmocka_unit_test(paper_and_colours_are_where_the_dialogs_begin),
      cmocka_unit_test(all_of_it_is_there_after_the_next_start),
      cmocka_unit_test(reset_puts_everything_back_at_once),
      cmocka_unit_test(the_paper_of_the_locale_is_one_of_the_two),
      cmocka_unit_test(a_setting_is_told_of_when_it_changes_and_only_then),
  };
  return cmocka_run_group_tests_name("preferences", tests, set_up, clean);
}
