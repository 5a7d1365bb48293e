/* The window in German: the access keys of its menus, the keyboard's shortcuts, the help. */
#include "app_test.h"

#include "ox_german.h"
#include "ox_help.h"

/* ---- menus ------------------------------------------------------------------------------ */

/* Items with an access key that were met, in all menus. */
static guint met;

static void take_key(const char *label, GHashTable *taken) {
  const char *mark = strchr(label, '_');
  if (!mark) return;
  gunichar key = g_unichar_tolower(g_utf8_get_char(mark + 1));
  const char *other = g_hash_table_lookup(taken, GUINT_TO_POINTER(key));
  if (other) fail_msg("\"%s\" and \"%s\" have one access key", other, label);
  g_hash_table_insert(taken, GUINT_TO_POINTER(key), g_strdup(label));
  met++;
}

static void check_menu(GMenuModel *menu, GHashTable *taken) {
  for (int i = 0; i < g_menu_model_get_n_items(menu); i++) {
    char *label = NULL;
    GMenuModel *section = g_menu_model_get_item_link(menu, i, G_MENU_LINK_SECTION);
    GMenuModel *submenu = g_menu_model_get_item_link(menu, i, G_MENU_LINK_SUBMENU);
    /* The sections of a menu are one menu to the reader; the heading of one has no key. */
    if (section) check_menu(section, taken);
    if (!section && g_menu_model_get_item_attribute(menu, i, G_MENU_ATTRIBUTE_LABEL, "s", &label))
      take_key(label, taken);
    if (submenu) {
      GHashTable *below = g_hash_table_new_full(NULL, NULL, NULL, g_free);
      check_menu(submenu, below);
      g_hash_table_unref(below);
    }
    g_free(label);
    g_clear_object(&section);
    g_clear_object(&submenu);
  }
}

static GMenuModel *menu_of(GtkWidget *widget) {
  if (GTK_IS_MENU_BUTTON(widget)) return gtk_menu_button_get_menu_model(GTK_MENU_BUTTON(widget));
  if (GTK_IS_POPOVER_MENU(widget)) return gtk_popover_menu_get_menu_model(GTK_POPOVER_MENU(widget));
  return NULL;
}

static guint check_menus_below(GtkWidget *widget) {
  guint menus = 0;
  GMenuModel *menu = menu_of(widget);
  if (menu) {
    GHashTable *taken = g_hash_table_new_full(NULL, NULL, NULL, g_free);
    check_menu(menu, taken);
    g_hash_table_unref(taken);
    menus++;
  }
  for (GtkWidget *child = gtk_widget_get_first_child(widget); child;
       child = gtk_widget_get_next_sibling(child))
    menus += check_menus_below(child);
  return menus;
}

static void no_menu_has_an_access_key_twice(void **state) {
  speak_german();
  OxWindow *window = app_test_window(NULL);
  met = 0;
  assert_true(check_menus_below(GTK_WIDGET(window)) >= 4);
  assert_true(met >= 25);
  app_test_close(window);
  speak_english();
}

/* ---- the window of shortcuts ------------------------------------------------------------ */

static void collect_titles(GtkWidget *widget, GPtrArray *titles) {
  if (GTK_IS_SHORTCUTS_SHORTCUT(widget)) {
    char *title = NULL;
    g_object_get(widget, "title", &title, NULL);
    g_ptr_array_add(titles, title);
    return;
  }
  for (GtkWidget *child = gtk_widget_get_first_child(widget); child;
       child = gtk_widget_get_next_sibling(child))
    collect_titles(child, titles);
}

static GPtrArray *titles_now(void) {
  GPtrArray *titles = g_ptr_array_new_with_free_func(g_free);
  OxWindow *window = app_test_window(NULL);
  collect_titles(
      GTK_WIDGET(gtk_application_window_get_help_overlay(GTK_APPLICATION_WINDOW(window))), titles);
  app_test_close(window);
  return titles;
}

static void every_shortcut_has_a_german_title(void **state) {
  GPtrArray *english = titles_now();
  speak_german();
  GPtrArray *german = titles_now();
  speak_english();
  assert_int_equal(english->len, german->len);
  assert_true(english->len >= 50);
  for (guint i = 0; i < english->len; i++)
    assert_german(g_ptr_array_index(english, i), g_ptr_array_index(german, i));
  g_ptr_array_unref(english);
  g_ptr_array_unref(german);
}

/* ---- the help --------------------------------------------------------------------------- */

static void the_help_is_read_in_german(void **state) {
  speak_german();
  OxHelp *help = OX_HELP(ox_help_new(NULL));
  speak_english();
  gtk_window_present(GTK_WINDOW(help));
  assert_int_equal(ox_help_page_count(help), 9);
  assert_string_equal(ox_help_title(help, 0), "Eine erste Warteschleife");
  for (guint i = 0; i < ox_help_page_count(help); i++)
    assert_null(german_left_over(ox_help_source(help, i)));
  ox_help_search(help, "fehlanflug");
  assert_true(ox_help_found(help) >= 1);
  gtk_window_destroy(GTK_WINDOW(help));
}

static int set_up(void **state) {
  return app_test_init(state) == 0 ? german_set_up(state) : -1;
}

int main(void) {
  const struct CMUnitTest tests[] = {
      /* First: what templates say cannot be made English again. */
      cmocka_unit_test(every_shortcut_has_a_german_title),
      cmocka_unit_test(no_menu_has_an_access_key_twice),
      cmocka_unit_test(the_help_is_read_in_german),
  };
  return cmocka_run_group_tests(tests, set_up, german_tear_down);
}
