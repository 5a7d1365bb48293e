/* The application itself, on a message bus of its own: first window, files, appearance,
 * quitting. */
#include "app_test.h"

#include "ox_application.h"

static GTestDBus *bus; /* its own watcher stops it when the test is over */
static OxApplication *application;

static int set_up(void **state) {
  /* The application registers on a session bus; without one GTK warns. */
  char *display = g_strdup(g_getenv("DISPLAY"));
  bus = g_test_dbus_new(G_TEST_DBUS_NONE);
  g_test_dbus_up(bus); /* forgets the display */
  if (display) g_setenv("DISPLAY", display, TRUE);
  g_free(display);
  if (app_test_init(state) != 0) return -1;
  application = ox_application_new(G_APPLICATION_NON_UNIQUE);
  return g_application_register(G_APPLICATION(application), NULL, NULL) ? 0 : -1;
}

static OxWindow *first_window(void) {
  for (GList *at = gtk_application_get_windows(GTK_APPLICATION(application)); at; at = at->next)
    if (OX_IS_WINDOW(at->data)) return at->data;
  return NULL;
}

static guint window_count(void) {
  guint count = 0;
  for (GList *at = gtk_application_get_windows(GTK_APPLICATION(application)); at; at = at->next)
    if (OX_IS_WINDOW(at->data)) count++;
  return count;
}

static void a_first_start_shows_the_demo_and_a_second_the_same_window(void **state) {
  g_application_activate(G_APPLICATION(application));
  assert_int_equal(window_count(), 1);
  assert_true(ox_window_is_pristine(first_window()));
  g_application_activate(G_APPLICATION(application));
  assert_int_equal(window_count(), 1);
}

static char *write_lesson(const char *name) {
  char *path = app_test_path(name);
  ox_lesson *lesson = ox_lesson_new();
  ox_messages messages = {0};
  assert_int_equal(ox_lesson_write(lesson, path, &messages), OX_OK);
  ox_lesson_free(lesson);
  return path;
}

static void open_path(const char *path) {
  GFile *file = g_file_new_for_path(path);
  g_application_open(G_APPLICATION(application), &file, 1, "");
  g_object_unref(file);
}

static void a_file_takes_the_untouched_window_and_is_not_opened_twice(void **state) {
  char *one = write_lesson("one.oxbow"), *two = write_lesson("two.oxbow");
  open_path(one);
  assert_int_equal(window_count(), 1);
  assert_string_equal(ox_document_path(ox_window_document(first_window())), one);
  open_path(two);
  assert_int_equal(window_count(), 2);
  open_path(one);
  assert_int_equal(window_count(), 2);
  g_free(one);
  g_free(two);
}

static void the_appearance_is_one_of_four_and_anything_else_is_ignored(void **state) {
  GActionGroup *actions = G_ACTION_GROUP(application);
  gboolean dark;
  g_action_group_activate_action(actions, "appearance", g_variant_new_string("dark"));
  g_object_get(gtk_settings_get_default(), "gtk-application-prefer-dark-theme", &dark, NULL);
  assert_true(dark);
  g_action_group_activate_action(actions, "appearance", g_variant_new_string("projector"));
  g_object_get(gtk_settings_get_default(), "gtk-application-prefer-dark-theme", &dark, NULL);
  assert_false(dark);
  assert_int_equal(ox_board_palette(ox_window_board(first_window())), OX_PALETTE_PROJECTOR);
  g_action_group_activate_action(actions, "appearance", g_variant_new_string("purple"));
  GVariant *state_now = g_action_group_get_action_state(actions, "appearance");
  assert_string_equal(g_variant_get_string(state_now, NULL), "projector");
  g_variant_unref(state_now);
  g_action_group_activate_action(actions, "appearance", g_variant_new_string("system"));
}

static void about_carries_the_version_the_licence_and_the_whole_caution(void **state) {
  g_action_group_activate_action(G_ACTION_GROUP(application), "about", NULL);
  app_test_spin_ms(100);
  GtkWidget *about = app_test_top(GTK_TYPE_ABOUT_DIALOG);
  assert_non_null(about);
  assert_string_equal(gtk_about_dialog_get_program_name(GTK_ABOUT_DIALOG(about)), "Oxbow");
  assert_non_null(gtk_about_dialog_get_version(GTK_ABOUT_DIALOG(about)));
  assert_int_equal(gtk_about_dialog_get_license_type(GTK_ABOUT_DIALOG(about)),
                   GTK_LICENSE_MIT_X11);
  assert_non_null(strstr(gtk_about_dialog_get_comments(GTK_ABOUT_DIALOG(about)),
                         "For instruction only, not for navigation."));
  gtk_widget_set_visible(about, FALSE);
}

static void cancelling_one_question_cancels_quitting_with_two_windows(void **state) {
  assert_int_equal(window_count(), 2);
  ox_document_set_field(ox_window_document(first_window()), ox_field_by_key("hold.inbound_deg"),
                        111, NULL);
  g_action_group_activate_action(G_ACTION_GROUP(application), "quit", NULL);
  app_test_spin_ms(50);
  GtkWidget *dialog = app_test_dialog();
  assert_non_null(dialog);
  gtk_dialog_response(GTK_DIALOG(dialog), GTK_RESPONSE_CANCEL);
  app_test_spin_ms(50);
  assert_int_equal(window_count(), 2);
  assert_null(app_test_dialog());
  while (first_window()) app_test_close(first_window());
}

static int clean(void **state) {
  g_clear_object(&application);
  return app_test_clean(state);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_first_start_shows_the_demo_and_a_second_the_same_window),
      cmocka_unit_test(a_file_takes_the_untouched_window_and_is_not_opened_twice),
      cmocka_unit_test(the_appearance_is_one_of_four_and_anything_else_is_ignored),
      cmocka_unit_test(about_carries_the_version_the_licence_and_the_whole_caution),
      cmocka_unit_test(cancelling_one_question_cancels_quitting_with_two_windows),
  };
  return cmocka_run_group_tests_name("application", tests, set_up, clean);
}
