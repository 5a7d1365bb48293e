/* The help: its pages are there, are read and found, and say what is true of the keys. */
#include "app_test.h"

#include "ox_help.h"
#include "ox_keys.h"
#include "oxbow/words.h"

static OxHelp *opened(void) {
  OxHelp *help = OX_HELP(ox_help_new(NULL));
  gtk_window_present(GTK_WINDOW(help));
  app_test_spin_ms(200);
  return help;
}

static void a_page_is_set_without_its_marks(void **state) {
  OxHelp *help = opened();
  assert_true(ox_help_page_count(help) >= 8);
  for (guint i = 0; i < ox_help_page_count(help); i++) {
    ox_help_show(help, i);
    char *text = ox_help_text(help);
    assert_true(g_str_has_prefix(text, ox_help_title(help, i)));
    assert_null(strchr(text, '`'));
    assert_null(strstr(text, "## "));
    assert_true(strlen(text) > 300);
    g_free(text);
  }
  gtk_window_destroy(GTK_WINDOW(help));
}

static void pages_are_found_by_what_is_in_them(void **state) {
  OxHelp *help = opened();
  ox_help_search(help, "ARINC");
  guint found = ox_help_found(help);
  assert_true(found >= 1 && found < ox_help_page_count(help));
  char *text = ox_help_text(help);
  assert_non_null(strstr(text, "ARINC")); /* the first one found is shown */
  g_free(text);
  ox_help_search(help, "no such words anywhere");
  assert_int_equal(ox_help_found(help), 0);
  ox_help_search(help, "");
  assert_int_equal(ox_help_found(help), ox_help_page_count(help));
  gtk_window_destroy(GTK_WINDOW(help));
}

/* Every key that a page names with Ctrl or F is one that there is. */
static gboolean is_a_key(const char *said) {
  size_t count;
  const ox_key *keys = ox_keys(&count);
  for (size_t i = 0; i < count; i++)
    for (const char *const *key = keys[i].keys; *key; key++) {
      guint value;
      GdkModifierType modifiers;
      if (!gtk_accelerator_parse(*key, &value, &modifiers)) continue;
      char *label = gtk_accelerator_get_label(value, modifiers);
      gboolean same = g_ascii_strcasecmp(label, said) == 0;
      g_free(label);
      if (same) return TRUE;
    }
  return FALSE;
}

static void the_keys_it_names_are_the_keys_there_are(void **state) {
  OxHelp *help = opened();
  guint checked = 0;
  for (guint i = 0; i < ox_help_page_count(help); i++) {
    char **parts = g_strsplit(ox_help_source(help, i), "`", -1);
    for (guint k = 1; parts[k] && parts[k + 1]; k += 2) {
      gboolean function = parts[k][0] == 'F' && g_ascii_isdigit(parts[k][1]);
      if (!g_str_has_prefix(parts[k], "Ctrl+") && !function) continue;
      if (!is_a_key(parts[k])) fail_msg("%s is no key", parts[k]);
      checked++;
    }
    assert_int_equal(g_strv_length(parts) % 2, 1); /* the backquotes come in pairs */
    g_strfreev(parts);
  }
  assert_true(checked >= 5);
  gtk_window_destroy(GTK_WINDOW(help));
}

static void the_caution_is_on_the_first_page(void **state) {
  OxHelp *help = opened();
  assert_non_null(strstr(ox_help_source(help, 0), "For instruction only, not for navigation."));
  gtk_window_destroy(GTK_WINDOW(help));
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_page_is_set_without_its_marks),
      cmocka_unit_test(pages_are_found_by_what_is_in_them),
      cmocka_unit_test(the_keys_it_names_are_the_keys_there_are),
      cmocka_unit_test(the_caution_is_on_the_first_page),
  };
  return cmocka_run_group_tests(tests, app_test_init, NULL);
}
