/* What a screen reader is told, and the keys: the shortcuts window shows just those that work. */
#include "app_test.h"

#include "ox_application.h"
#include "ox_input.h"
#include "ox_keys.h"
#include "ox_number_field.h"
#include "oxbow/words.h"

static void the_board_is_an_image_described_in_words_that_follow_each_edit(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  GtkAccessible *board = GTK_ACCESSIBLE(ox_window_board(window));
  gtk_test_accessible_assert_role(board, GTK_ACCESSIBLE_ROLE_IMG);
  assert_true(gtk_widget_get_focusable(GTK_WIDGET(board)));
  for (int i = 0; i < 2; i++) {
    char *words = ox_words_describe(ox_document_case(document), ox_document_flight(document));
    assert_true(strlen(words) > 40);
    gtk_test_accessible_assert_property(board, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words);
    free(words);
    ox_document_set_field(document, ox_field_by_key("hold.inbound_deg"), 123, NULL);
  }
  app_test_close(window);
}

static const char *const icon_buttons[][2] = {
    {"media-playback-start-symbolic", "Play"},
    {"media-skip-backward-symbolic", "Previous Event"},
    {"media-skip-forward-symbolic", "Next Event"},
    {"go-up-symbolic", "Previous Case"},
    {"go-down-symbolic", "Next Case"},
    {"sidebar-show-right-symbolic", "Working Panel"},
};

static void collect_menus(GtkWidget *top, GPtrArray *found) {
  if (GTK_IS_MENU_BUTTON(top)) g_ptr_array_add(found, top);
  for (GtkWidget *at = gtk_widget_get_first_child(top); at; at = gtk_widget_get_next_sibling(at))
    collect_menus(at, found);
}

static void every_button_without_a_text_has_a_name_and_a_tooltip(void **state) {
  OxWindow *window = app_test_window(NULL);
  for (size_t i = 0; i < G_N_ELEMENTS(icon_buttons); i++) {
    GtkWidget *button = app_test_find_button(GTK_WIDGET(window), icon_buttons[i][0]);
    assert_non_null(button);
    gtk_test_accessible_assert_property(GTK_ACCESSIBLE(button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                        icon_buttons[i][1]);
    assert_string_equal(gtk_widget_get_tooltip_text(button), icon_buttons[i][1]);
  }
  GPtrArray *menus = g_ptr_array_new();
  collect_menus(GTK_WIDGET(window), menus);
  assert_in_range(menus->len, 4, 20);
  for (guint i = 0; i < menus->len; i++) {
    GtkWidget *menu = g_ptr_array_index(menus, i);
    const char *tip = gtk_widget_get_tooltip_text(menu);
    assert_non_null(tip);
    gtk_test_accessible_assert_property(GTK_ACCESSIBLE(menu), GTK_ACCESSIBLE_PROPERTY_LABEL, tip);
  }
  g_ptr_array_unref(menus);
  app_test_close(window);
}

static void the_play_button_says_what_it_would_do(void **state) {
  OxWindow *window = app_test_window(NULL);
  GtkWidget *button = app_test_find_button(GTK_WIDGET(window), "media-playback-start-symbolic");
  ox_player_set_playing(ox_window_player(window), TRUE);
  gtk_test_accessible_assert_property(GTK_ACCESSIBLE(button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      "Pause");
  assert_string_equal(gtk_widget_get_tooltip_text(button), "Pause");
  app_test_close(window);
}

static void every_input_has_its_label_and_its_name(void **state) {
  OxWindow *window = app_test_window(NULL);
  size_t count;
  const ox_input *inputs = ox_inputs(&count);
  for (size_t i = 0; i < count; i++) {
    GtkWidget *editor = ox_inputs_panel_editor(ox_window_inputs(window), inputs[i].key);
    char **parts = g_strsplit(inputs[i].label, "_", -1);
    char *name = g_strjoinv("", parts);
    assert_non_null(editor);
    assert_true(gtk_test_accessible_has_relation(GTK_ACCESSIBLE(editor),
                                                 GTK_ACCESSIBLE_RELATION_LABELLED_BY));
    gtk_test_accessible_assert_property(GTK_ACCESSIBLE(editor), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                        name);
    GList *labels = gtk_widget_list_mnemonic_labels(editor);
    assert_int_equal(g_list_length(labels), 1);
    g_list_free(labels);
    assert_string_equal(gtk_widget_get_tooltip_text(editor), inputs[i].tip);
    g_free(name);
    g_strfreev(parts);
  }
  app_test_close(window);
}

static void mnemonics_are_unique(void **state) {
  size_t count;
  const ox_input *inputs = ox_inputs(&count);
  for (size_t i = 0; i < count; i++)
    for (size_t k = 0; k < i; k++) {
      const char *a = strchr(inputs[i].label, '_'), *b = strchr(inputs[k].label, '_');
      /* leg time and leg length stand in each other's place */
      if (!a || !b || (g_str_has_prefix(inputs[i].key, "hold.leg.") &&
                       g_str_has_prefix(inputs[k].key, "hold.leg.")))
        continue;
      if (g_ascii_tolower(a[1]) == g_ascii_tolower(b[1]))
        print_error("%s and %s\n", inputs[i].label, inputs[k].label);
      assert_true(g_ascii_tolower(a[1]) != g_ascii_tolower(b[1]));
    }
}

/* ---- the shortcuts window --------------------------------------------------------------- */

static void collect(GtkWidget *top, GPtrArray *found) {
  if (GTK_IS_SHORTCUTS_SHORTCUT(top)) g_ptr_array_add(found, top);
  for (GtkWidget *at = gtk_widget_get_first_child(top); at; at = gtk_widget_get_next_sibling(at))
    collect(at, found);
}

static gboolean is_in_table(const char *accelerators, gboolean everywhere) {
  size_t count;
  const ox_key *keys = ox_keys(&count);
  for (size_t i = 0; i < count; i++) {
    char *all = g_strjoinv(" ", (char **)keys[i].keys);
    gboolean same = g_strcmp0(all, accelerators) == 0 &&
                    (keys[i].scope == OX_KEYS_EVERYWHERE) == everywhere;
    g_free(all);
    if (same) return TRUE;
  }
  return FALSE;
}

static void the_shortcuts_window_shows_just_the_keys_that_work(void **state) {
  OxApplication *application = ox_application_new(G_APPLICATION_NON_UNIQUE);
  ox_keys_set_accelerators(GTK_APPLICATION(application));
  OxWindow *window = app_test_window(NULL);
  GtkShortcutsWindow *overlay =
      gtk_application_window_get_help_overlay(GTK_APPLICATION_WINDOW(window));
  assert_non_null(overlay);
  GPtrArray *found = g_ptr_array_new();
  size_t count;
  ox_keys(&count);
  collect(GTK_WIDGET(overlay), found);
  GHashTable *titles = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
  for (guint i = 0; i < found->len; i++) {
    char *accelerators = NULL, *action = NULL, *title = NULL;
    g_object_get(g_ptr_array_index(found, i), "accelerator", &accelerators, "action-name", &action,
                 "title", &title, NULL);
    if (!is_in_table(accelerators, action != NULL)) print_error("%s: %s\n", title, accelerators);
    assert_true(is_in_table(accelerators, action != NULL));
    if (action) {
      char **real = gtk_application_get_accels_for_action(GTK_APPLICATION(application), action);
      char *joined = g_strjoinv(" ", real);
      assert_string_equal(joined, accelerators);
      g_free(joined);
      g_strfreev(real);
    }
    g_free(accelerators);
    g_free(action);
    g_hash_table_add(titles, title);
  }
  /* The search of the shortcuts window has each of them once more. */
  assert_int_equal(g_hash_table_size(titles), count);
  g_hash_table_unref(titles);
  g_ptr_array_unref(found);
  app_test_close(window);
  g_object_unref(application);
}

/* It opens with the keys of the flight, and no section needs a second page. */
static void the_shortcuts_window_opens_with_what_is_used_most(void **state) {
  OxWindow *window = app_test_window(NULL);
  GtkShortcutsWindow *overlay =
      gtk_application_window_get_help_overlay(GTK_APPLICATION_WINDOW(window));
  GPtrArray *found = g_ptr_array_new();
  collect(GTK_WIDGET(overlay), found);
  gtk_window_present(GTK_WINDOW(overlay));
  app_test_spin_ms(200);
  guint sections = 0, shown = 0;
  GtkWidget *section = NULL;
  for (guint i = 0; i < found->len; i++) {
    GtkWidget *row = g_ptr_array_index(found, i);
    GtkWidget *its = gtk_widget_get_ancestor(row, GTK_TYPE_SHORTCUTS_SECTION);
    if (!its) continue; /* one of the search */
    if (its != section) {
      GtkWidget *group = gtk_widget_get_ancestor(row, GTK_TYPE_SHORTCUTS_GROUP);
      GtkWidget *pages = gtk_widget_get_ancestor(group, GTK_TYPE_STACK);
      assert_ptr_equal(gtk_widget_get_ancestor(pages, GTK_TYPE_SHORTCUTS_SECTION), its);
      GtkSelectionModel *all = gtk_stack_get_pages(GTK_STACK(pages));
      assert_int_equal(g_list_model_get_n_items(G_LIST_MODEL(all)), 1);
      g_object_unref(all);
      sections++;
    }
    section = its;
    shown += sections == 1 && gtk_widget_get_mapped(row) ? 1 : 0;
    if (sections > 1) assert_false(gtk_widget_get_mapped(row));
  }
  assert_true(sections >= 4);
  assert_true(shown >= 19); /* all of the flight and of the views */
  g_ptr_array_unref(found);
  gtk_window_close(GTK_WINDOW(overlay));
  app_test_close(window);
}

static void every_key_has_an_action_behind_it(void **state) {
  OxWindow *window = app_test_window(NULL);
  size_t count;
  const ox_key *keys = ox_keys(&count);
  for (size_t i = 0; i < count; i++)
    if (g_str_has_prefix(keys[i].action, "win.")) {
      gboolean there = g_action_group_has_action(G_ACTION_GROUP(window), keys[i].action + 4);
      if (!there) print_error("%s\n", keys[i].action);
      assert_true(there);
    }
  app_test_close(window);
}

static GtkShortcutController *keys_of(GtkWidget *widget, const char *trigger) {
  GListModel *controllers = gtk_widget_observe_controllers(widget);
  GtkShortcutController *found = NULL;
  GtkShortcutTrigger *wanted = gtk_shortcut_trigger_parse_string(trigger);
  for (guint i = 0; i < g_list_model_get_n_items(controllers) && !found; i++) {
    GObject *controller = g_list_model_get_item(controllers, i);
    g_object_unref(controller);
    if (!GTK_IS_SHORTCUT_CONTROLLER(controller)) continue;
    GListModel *shortcuts = G_LIST_MODEL(controller);
    for (guint k = 0; k < g_list_model_get_n_items(shortcuts) && !found; k++) {
      GtkShortcut *shortcut = g_list_model_get_item(shortcuts, k);
      if (gtk_shortcut_trigger_equal(gtk_shortcut_get_trigger(shortcut), wanted))
        found = GTK_SHORTCUT_CONTROLLER(controller);
      g_object_unref(shortcut);
    }
  }
  g_object_unref(wanted);
  g_object_unref(controllers);
  return found;
}

static void space_plays_on_the_board_and_the_transport_bar_but_not_in_the_inputs(void **state) {
  OxWindow *window = app_test_window(NULL);
  assert_non_null(keys_of(GTK_WIDGET(ox_window_board(window)), "space"));
  assert_non_null(keys_of(GTK_WIDGET(ox_window_transport(window)), "space"));
  assert_null(keys_of(GTK_WIDGET(ox_window_inputs(window)), "space"));
  assert_null(keys_of(GTK_WIDGET(ox_window_inputs(window)), "Home"));
  assert_non_null(keys_of(GTK_WIDGET(window), "Page_Down"));
  app_test_close(window);
}

static void the_flight_keys_move_the_flight(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxPlayer *player = ox_window_player(window);
  GActionGroup *actions = G_ACTION_GROUP(window);
  double begin_s = ox_player_begin_s(player);
  g_action_group_activate_action(actions, "step-forward", NULL);
  assert_close(ox_player_time_s(player), begin_s + 1, 1e-9, "one second on");
  g_action_group_activate_action(actions, "step-back", NULL);
  g_action_group_activate_action(actions, "step-back", NULL);
  assert_close(ox_player_time_s(player), begin_s, 0, "not before the start");
  g_action_group_activate_action(actions, "next-event", NULL);
  assert_close(ox_player_time_s(player), 0, 1e-6, "the fix");
  g_action_group_activate_action(actions, "go-end", NULL);
  assert_close(ox_player_time_s(player), ox_player_end_s(player), 0, "end");
  g_action_group_activate_action(actions, "go-start", NULL);
  assert_close(ox_player_time_s(player), begin_s, 0, "start");
  app_test_close(window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_board_is_an_image_described_in_words_that_follow_each_edit),
      cmocka_unit_test(every_button_without_a_text_has_a_name_and_a_tooltip),
      cmocka_unit_test(the_play_button_says_what_it_would_do),
      cmocka_unit_test(every_input_has_its_label_and_its_name),
      cmocka_unit_test(mnemonics_are_unique),
      cmocka_unit_test(the_shortcuts_window_shows_just_the_keys_that_work),
      cmocka_unit_test(the_shortcuts_window_opens_with_what_is_used_most),
      cmocka_unit_test(every_key_has_an_action_behind_it),
      cmocka_unit_test(space_plays_on_the_board_and_the_transport_bar_but_not_in_the_inputs),
      cmocka_unit_test(the_flight_keys_move_the_flight),
  };
  return cmocka_run_group_tests_name("accessible", tests, app_test_init, NULL);
}
