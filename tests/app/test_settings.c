/* What is remembered from one start to the next. */
#include "app_test.h"

#include <glib/gstdio.h>

#include "ox_settings.h"

static const char *const words[] = {"system", "light", "dark", NULL};

static void what_is_set_is_there_the_next_time(void **state) {
  char *path = app_test_path("settings");
  OxSettings *settings = ox_settings_new(path);
  assert_string_equal(ox_settings_word(settings, "appearance", words), "system");
  assert_int_equal(ox_settings_whole(settings, "width", 300, 9000, 1180), 1180);
  ox_settings_set_word(settings, "appearance", "dark");
  ox_settings_set_whole(settings, "width", 1024);
  g_object_unref(settings); /* writes */
  settings = ox_settings_new(path);
  assert_string_equal(ox_settings_word(settings, "appearance", words), "dark");
  assert_int_equal(ox_settings_whole(settings, "width", 300, 9000, 1180), 1024);
  g_object_unref(settings);
  g_free(path);
}

static void what_makes_no_sense_is_not_taken(void **state) {
  char *path = app_test_path("odd");
  assert_true(g_file_set_contents(
      path, "[oxbow]\nappearance=purple\nwidth=999999999\nheight=tall\n", -1, NULL));
  OxSettings *settings = ox_settings_new(path);
  assert_string_equal(ox_settings_word(settings, "appearance", words), "system");
  assert_int_equal(ox_settings_whole(settings, "width", 300, 9000, 1180), 1180);
  assert_int_equal(ox_settings_whole(settings, "height", 300, 9000, 760), 760);
  g_object_unref(settings);
  assert_true(g_file_set_contents(path, "\x00\xff[[[", 5, NULL));
  settings = ox_settings_new(path);
  assert_string_equal(ox_settings_word(settings, "appearance", words), "system");
  g_object_unref(settings);
  g_free(path);
}

static void a_place_that_cannot_be_written_is_no_harm(void **state) {
  OxSettings *settings = ox_settings_new("/proc/none/settings");
  ox_settings_set_word(settings, "appearance", "light");
  assert_false(ox_settings_flush(settings));
  assert_string_equal(ox_settings_word(settings, "appearance", words), "light");
  g_object_unref(settings);
}

static void nothing_is_written_when_nothing_changed(void **state) {
  char *path = app_test_path("same");
  OxSettings *settings = ox_settings_new(path);
  ox_settings_set_whole(settings, "width", 800);
  assert_true(ox_settings_flush(settings));
  g_remove(path);
  ox_settings_set_whole(settings, "width", 800);
  assert_true(ox_settings_flush(settings));
  assert_false(g_file_test(path, G_FILE_TEST_EXISTS));
  g_object_unref(settings);
  g_free(path);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(what_is_set_is_there_the_next_time),
      cmocka_unit_test(what_makes_no_sense_is_not_taken),
      cmocka_unit_test(a_place_that_cannot_be_written_is_no_harm),
      cmocka_unit_test(nothing_is_written_when_nothing_changed),
  };
  return cmocka_run_group_tests(tests, NULL, app_test_clean);
}
