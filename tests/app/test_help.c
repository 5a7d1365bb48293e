/* The help: its pages are there, are read and found, and say what is true of the keys. */
#include "app_test.h"

#include "app_id.h"
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

/* ---- the two languages ------------------------------------------------------------------ */

static char **names_in(const char *folder) {
  char **names = g_resources_enumerate_children(folder, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  assert_non_null(names);
  return names;
}

static char *page_of(const char *folder, const char *name) {
  char *path = g_build_path("/", folder, name, NULL);
  GBytes *bytes = g_resources_lookup_data(path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  if (!bytes) fail_msg("there is no %s", path);
  gsize length;
  const char *text = g_bytes_get_data(bytes, &length);
  char *copy = g_strndup(text, length);
  g_bytes_unref(bytes);
  g_free(path);
  return copy;
}

static guint times(const char *text, const char *what) {
  guint count = 0;
  for (const char *at = text; (at = strstr(at, what)) != NULL; at += strlen(what)) count++;
  return count;
}

/* A key as the other language's keyboard has it on its caps. */
static char *in_english(const char *said) {
  static const char *const keys[][2] = {
      {"Strg", "Ctrl"},         {"Umschalt", "Shift"}, {"Bild ab", "Page Down"},
      {"Bild auf", "Page Up"},  {"Pos1", "Home"},      {"Ende", "End"},
      {"Leertaste", "Space"},   {"Links", "Left"},     {"Rechts", "Right"},
  };
  GString *key = g_string_new(said);
  for (gsize i = 0; i < G_N_ELEMENTS(keys); i++) g_string_replace(key, keys[i][0], keys[i][1], 0);
  return g_string_free(key, FALSE);
}

/* What stands between the backquotes and is a key or is typed: not a word on the screen, which is
 * another one in each language. */
static gboolean is_the_same_everywhere(const char *said) {
  return g_str_has_prefix(said, "Ctrl") || g_str_has_prefix(said, "Shift") ||
         g_str_has_prefix(said, "Page ") || (said[0] == 'F' && g_ascii_isdigit(said[1])) ||
         g_str_has_prefix(said, "oxbow-cli") || g_str_has_prefix(said, "--") ||
         strlen(said) == 1;
}

static GHashTable *keys_of(const char *page) {
  GHashTable *counts = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
  char **parts = g_strsplit(page, "`", -1);
  for (guint k = 1; parts[k] && parts[k + 1]; k += 2) {
    char *said = in_english(parts[k]);
    guint count = GPOINTER_TO_UINT(g_hash_table_lookup(counts, said));
    if (is_the_same_everywhere(said))
      g_hash_table_replace(counts, said, GUINT_TO_POINTER(count + 1));
    else
      g_free(said);
  }
  g_strfreev(parts);
  return counts;
}

static void assert_same_keys(const char *name, const char *page, const char *other) {
  GHashTable *ours = keys_of(page), *theirs = keys_of(other);
  GHashTableIter iter;
  gpointer key, count;
  g_hash_table_iter_init(&iter, ours);
  while (g_hash_table_iter_next(&iter, &key, &count))
    if (g_hash_table_lookup(theirs, key) != count)
      fail_msg("%s: %s is not named as often in German", name, (char *)key);
  assert_int_equal(g_hash_table_size(ours), g_hash_table_size(theirs));
  g_hash_table_unref(ours);
  g_hash_table_unref(theirs);
}

static void every_page_is_there_in_both_languages(void **state) {
  char **names = names_in(OX_RESOURCES "/help/en"), **german = names_in(OX_RESOURCES "/help/de");
  assert_int_equal(g_strv_length(names), g_strv_length(german));
  for (char **name = names; *name; name++) {
    char *page = page_of(OX_RESOURCES "/help/en", *name);
    char *other = page_of(OX_RESOURCES "/help/de", *name);
    static const char *const marks[] = {"\n## ", "\n- ", "\n\n", "`"};
    for (gsize i = 0; i < G_N_ELEMENTS(marks); i++)
      if (times(page, marks[i]) != times(other, marks[i]))
        fail_msg("%s: not as many \"%s\" in German", *name, marks[i]);
    assert_true(g_utf8_validate(other, -1, NULL));
    assert_string_not_equal(page, other);
    assert_same_keys(*name, page, other);
    g_free(page);
    g_free(other);
  }
  g_strfreev(names);
  g_strfreev(german);
}

/* ---- keys ------------------------------------------------------------------------------- */

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
      cmocka_unit_test(every_page_is_there_in_both_languages),
      cmocka_unit_test(the_keys_it_names_are_the_keys_there_are),
      cmocka_unit_test(the_caution_is_on_the_first_page),
  };
  return cmocka_run_group_tests(tests, app_test_init, NULL);
}
