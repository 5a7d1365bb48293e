/* What keeps a window's lesson safe, as its user sees it: undo, files that others change, recent
 * files, work offered again after a crash. */
#include "app_test.h"

#include <glib/gstdio.h>
#include <unistd.h>

#include "ox_application.h"
#include "ox_file_watch.h"
#include "ox_kept.h"
#include "ox_message_bar.h"
#include "ox_number_field.h"
#include "ox_recovery.h"

static GTestDBus *bus; /* its own watcher stops it when the test is over */
static char *home;
static OxApplication *application; /* one for all: a program cannot be registered twice */

static int set_up(void **state) {
  home = g_dir_make_tmp("oxbow-test-XXXXXX", NULL);
  g_setenv("XDG_STATE_HOME", home, TRUE);
  g_setenv("XDG_DATA_HOME", home, TRUE);
  char *display = g_strdup(g_getenv("DISPLAY"));
  bus = g_test_dbus_new(G_TEST_DBUS_NONE);
  g_test_dbus_up(bus); /* forgets the display */
  if (display) g_setenv("DISPLAY", display, TRUE);
  g_free(display);
  return app_test_init(state);
}

static int clean(void **state) {
  char *kept = ox_kept_directory(), *recent = g_build_filename(home, "recently-used.xbel", NULL);
  g_clear_object(&application);
  g_unlink(recent);
  g_rmdir(kept);
  g_rmdir(home);
  g_free(kept);
  g_free(recent);
  g_free(home);
  return app_test_clean(state);
}

static const ox_field *course_field(void) { return ox_field_by_key("hold.inbound_deg"); }

static void set_course(OxWindow *window, double deg) {
  assert_int_equal(
      ox_document_set_field(ox_window_document(window), course_field(), deg, NULL), OX_OK);
}

static double course(OxWindow *window) {
  return ox_document_case(ox_window_document(window))->hold.inbound_deg;
}

static void write_course(const char *path, double deg) {
  ox_lesson *lesson = ox_lesson_new();
  ox_messages messages = {0};
  lesson->cases[0].c.hold.inbound_deg = deg;
  assert_int_equal(ox_lesson_write(lesson, path, &messages), OX_OK);
  ox_lesson_free(lesson);
}

static double read_course(const char *path) {
  ox_lesson *lesson = NULL;
  ox_messages messages = {0};
  assert_int_equal(ox_lesson_read(path, &lesson, &messages), OX_OK);
  double deg = lesson->cases[0].c.hold.inbound_deg;
  ox_lesson_free(lesson);
  return deg;
}

static GtkWidget *bar(OxWindow *window, const char *kind) {
  return ox_message_bar_find(ox_window_messages(window), kind);
}

static gboolean has_file_bar(gpointer window) { return bar(window, "file") != NULL; }

static void answer_bar(OxWindow *window, const char *kind, int response) {
  GtkWidget *found = bar(window, kind);
  assert_non_null(found);
  gtk_info_bar_response(GTK_INFO_BAR(found), response);
  app_test_spin_ms(30);
}

static void act(OxWindow *window, const char *action) {
  g_action_group_activate_action(G_ACTION_GROUP(window), action, NULL);
  app_test_spin_ms(30);
}

static gboolean is_enabled(OxWindow *window, const char *action) {
  return g_action_group_get_action_enabled(G_ACTION_GROUP(window), action);
}

/* ---- undo ------------------------------------------------------------------------------- */

static void the_menu_and_the_buttons_name_what_is_undone(void **state) {
  OxWindow *window = app_test_window(NULL);
  GtkWidget *undo = app_test_find_button(GTK_WIDGET(window), "edit-undo-symbolic");
  GtkWidget *redo = app_test_find_button(GTK_WIDGET(window), "edit-redo-symbolic");
  assert_non_null(undo);
  assert_non_null(redo);
  assert_false(gtk_widget_get_sensitive(undo));
  double before = course(window);
  set_course(window, 111);
  assert_true(gtk_widget_get_sensitive(undo));
  assert_string_equal(gtk_widget_get_tooltip_text(undo), "Undo Inbound Course");
  gtk_test_accessible_assert_property(GTK_ACCESSIBLE(undo), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      "Undo Inbound Course");
  act(window, "undo");
  assert_close(course(window), before, 0, "undone");
  assert_false(is_enabled(window, "undo"));
  assert_string_equal(gtk_widget_get_tooltip_text(redo), "Redo Inbound Course");
  act(window, "redo");
  assert_close(course(window), 111, 0, "redone");
  app_test_close(window);
}

static void what_is_being_typed_is_undone_as_well(void **state) {
  OxWindow *window = app_test_window(NULL);
  double before = course(window);
  GtkWidget *field = ox_inputs_panel_editor(ox_window_inputs(window), "hold.inbound_deg");
  GtkWidget *text = ox_number_field_get_text(OX_NUMBER_FIELD(field));
  gtk_widget_grab_focus(text);
  gtk_editable_set_text(GTK_EDITABLE(text), "133");
  act(window, "undo");
  assert_close(course(window), before, 0, "as before the typing");
  act(window, "redo");
  assert_close(course(window), 133, 0, "what was typed is not lost");
  app_test_close(window);
}

static void typing_a_name_is_one_step_within_one_focus(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxDocument *document = ox_window_document(window);
  char *before = g_strdup(ox_document_case(document)->name);
  GtkWidget *name = ox_inputs_panel_editor(ox_window_inputs(window), "name");
  ox_document_set_clock(document, 0); /* fast fingers */
  gtk_widget_grab_focus(name);
  gtk_editable_set_text(GTK_EDITABLE(name), "W");
  gtk_editable_set_text(GTK_EDITABLE(name), "Wi");
  gtk_editable_set_text(GTK_EDITABLE(name), "Wind");
  gtk_widget_grab_focus(GTK_WIDGET(ox_window_board(window)));
  gtk_widget_grab_focus(name);
  gtk_editable_set_text(GTK_EDITABLE(name), "Winds");
  act(window, "undo");
  assert_string_equal(ox_document_case(document)->name, "Wind");
  act(window, "undo");
  assert_string_equal(ox_document_case(document)->name, before);
  g_free(before);
  app_test_close(window);
}

/* ---- a file that others change ---------------------------------------------------------- */

static OxWindow *window_with_file(const char *path, double deg) {
  write_course(path, deg);
  OxWindow *window = app_test_window(NULL);
  assert_true(ox_window_open_path(window, path));
  return window;
}

static void another_program_changed_the_file_and_reload_can_be_undone(void **state) {
  char *path = app_test_path("changed.oxbow");
  OxWindow *window = window_with_file(path, 10);
  set_course(window, 11);
  write_course(path, 20);
  assert_true(app_test_wait(has_file_bar, window, 10000));
  assert_non_null(strstr(ox_message_bar_text(bar(window, "file")), "changed.oxbow"));
  answer_bar(window, "file", GTK_RESPONSE_ACCEPT);
  assert_null(bar(window, "file"));
  assert_close(course(window), 20, 0, "reloaded");
  assert_false(ox_document_modified(ox_window_document(window)));
  act(window, "undo");
  assert_close(course(window), 11, 0, "my own change");
  assert_true(ox_document_modified(ox_window_document(window)));
  g_free(path);
  app_test_close(window);
}

static void mine_can_be_kept_and_then_counts_as_unsaved(void **state) {
  char *path = app_test_path("kept.oxbow");
  OxWindow *window = window_with_file(path, 10);
  write_course(path, 20);
  assert_true(app_test_wait(has_file_bar, window, 10000));
  answer_bar(window, "file", GTK_RESPONSE_REJECT);
  assert_null(bar(window, "file"));
  assert_close(course(window), 10, 0, "mine");
  assert_true(ox_document_modified(ox_window_document(window)));
  act(window, "save"); /* the question was answered */
  assert_null(app_test_dialog());
  assert_close(read_course(path), 10, 0, "mine in the file");
  assert_false(ox_document_modified(ox_window_document(window)));
  g_free(path);
  app_test_close(window);
}

static void saving_over_a_changed_file_asks_first(void **state) {
  char *path = app_test_path("over.oxbow");
  OxWindow *window = window_with_file(path, 10);
  set_course(window, 11);
  write_course(path, 20);
  act(window, "save");
  GtkWidget *dialog = app_test_dialog();
  assert_non_null(dialog);
  gtk_dialog_response(GTK_DIALOG(dialog), GTK_RESPONSE_CANCEL);
  app_test_spin_ms(30);
  assert_close(read_course(path), 20, 0, "theirs is still there");
  assert_true(ox_document_modified(ox_window_document(window)));
  act(window, "save");
  gtk_dialog_response(GTK_DIALOG(app_test_dialog()), GTK_RESPONSE_ACCEPT);
  app_test_spin_ms(30);
  assert_close(read_course(path), 11, 0, "mine");
  assert_null(bar(window, "file"));
  g_free(path);
  app_test_close(window);
}

static void ones_own_saves_and_the_same_contents_are_no_news(void **state) {
  char *path = app_test_path("own.oxbow");
  OxWindow *window = window_with_file(path, 10);
  set_course(window, 11);
  act(window, "save");
  write_course(path, 11); /* another file with the same bytes */
  app_test_spin_ms(800);
  assert_null(bar(window, "file"));
  g_free(path);
  app_test_close(window);
}

static void a_removed_file_is_noticed_and_saving_writes_it_again(void **state) {
  char *path = app_test_path("gone.oxbow");
  OxWindow *window = window_with_file(path, 10);
  g_unlink(path);
  assert_true(app_test_wait(has_file_bar, window, 10000));
  assert_non_null(strstr(ox_message_bar_text(bar(window, "file")), "removed"));
  assert_true(ox_document_modified(ox_window_document(window))); /* closing asks */
  act(window, "save");
  assert_null(app_test_dialog());
  assert_close(read_course(path), 10, 0, "there again");
  assert_false(ox_document_modified(ox_window_document(window)));
  assert_null(bar(window, "file"));
  g_free(path);
  app_test_close(window);
}

static void a_link_is_kept_and_what_it_leads_to_is_watched(void **state) {
  char *target = app_test_path("target.oxbow"), *link = app_test_path("link.oxbow");
  write_course(target, 10);
  assert_int_equal(symlink("target.oxbow", link), 0);
  OxWindow *window = app_test_window(NULL);
  assert_true(ox_window_open_path(window, link));
  set_course(window, 12);
  act(window, "save");
  assert_true(g_file_test(link, G_FILE_TEST_IS_SYMLINK));
  assert_close(read_course(target), 12, 0, "written through");
  write_course(target, 20);
  assert_true(app_test_wait(has_file_bar, window, 10000));
  g_free(target);
  g_free(link);
  app_test_close(window);
}

static void a_file_that_became_nonsense_does_not_replace_the_lesson(void **state) {
  char *path = app_test_path("nonsense.oxbow");
  OxWindow *window = window_with_file(path, 10);
  assert_true(g_file_set_contents(path, "{ half a les", -1, NULL));
  assert_true(app_test_wait(has_file_bar, window, 10000));
  answer_bar(window, "file", GTK_RESPONSE_ACCEPT);
  GtkWidget *dialog = app_test_dialog();
  assert_non_null(dialog);
  gtk_dialog_response(GTK_DIALOG(dialog), GTK_RESPONSE_CLOSE);
  app_test_spin_ms(30);
  assert_close(course(window), 10, 0, "the lesson stays");
  g_free(path);
  app_test_close(window);
}

/* ---- copies, recent files, dropped files ------------------------------------------------ */

static void a_copy_is_written_and_the_lesson_stays_with_its_own_file(void **state) {
  char *path = app_test_path("mine.oxbow"), *copy = app_test_path("copy.oxbow");
  OxWindow *window = window_with_file(path, 10);
  set_course(window, 11);
  assert_true(ox_window_save_copy_path(window, copy));
  assert_close(read_course(copy), 11, 0, "copy");
  assert_close(read_course(path), 10, 0, "own file");
  assert_string_equal(ox_document_path(ox_window_document(window)), path);
  assert_true(ox_document_modified(ox_window_document(window)));
  g_free(path);
  g_free(copy);
  app_test_close(window);
}

static GtkMenuButton *recent_button(GtkWidget *top) {
  if (GTK_IS_MENU_BUTTON(top) &&
      g_strcmp0(gtk_widget_get_tooltip_text(top), "Recent Lessons") == 0)
    return GTK_MENU_BUTTON(top);
  for (GtkWidget *at = gtk_widget_get_first_child(top); at; at = gtk_widget_get_next_sibling(at)) {
    GtkMenuButton *found = recent_button(at);
    if (found) return found;
  }
  return NULL;
}

static gboolean recent_is_first(gpointer data) {
  static const char want[] = "seven__of seven.oxbow"; /* the underscore is no mnemonic */
  GtkMenuButton *button = data;
  gtk_menu_button_popup(button);
  GMenuModel *menu = gtk_menu_button_get_menu_model(button);
  char *label = NULL;
  gboolean found = menu && g_menu_model_get_n_items(menu) == 6 &&
                   g_menu_model_get_item_attribute(menu, 0, "label", "s", &label) &&
                   strcmp(label, want) == 0;
  g_free(label);
  return found;
}

static void the_six_lessons_opened_last_are_offered_newest_first(void **state) {
  static const char *const files[] = {"one.oxbow",  "two.oxbow", "three.oxbow",
                                      "four.oxbow", "five.oxbow", "six.oxbow",
                                      "seven_of seven.oxbow"};
  OxWindow *window = app_test_window(NULL);
  for (size_t i = 0; i < G_N_ELEMENTS(files); i++) {
    char *path = app_test_path(files[i]);
    write_course(path, (double)i);
    assert_true(ox_window_open_path(window, path));
    g_usleep(2000); /* the desktop's list goes by microseconds at best */
    g_free(path);
  }
  GtkMenuButton *button = recent_button(GTK_WIDGET(window));
  assert_non_null(button);
  assert_true(app_test_wait(recent_is_first, button, 10000));
  gtk_menu_button_popdown(button);
  char *path = app_test_path("two.oxbow");
  g_action_group_activate_action(G_ACTION_GROUP(window), "open-recent",
                                 g_variant_new_bytestring(path));
  app_test_spin_ms(30);
  assert_close(course(window), 1, 0, "opened");
  g_free(path);
  app_test_close(window);
}

static GtkEventController *drop_target(OxWindow *window) {
  GListModel *all = gtk_widget_observe_controllers(GTK_WIDGET(window));
  GtkEventController *found = NULL;
  for (guint i = 0; i < g_list_model_get_n_items(all) && !found; i++) {
    GtkEventController *at = g_list_model_get_item(all, i);
    if (GTK_IS_DROP_TARGET(at)) found = at;
    g_object_unref(at);
  }
  g_object_unref(all);
  return found;
}

static void a_file_dropped_on_the_window_opens_once_changes_are_dealt_with(void **state) {
  char *path = app_test_path("dropped.oxbow");
  OxWindow *window = app_test_window(NULL);
  write_course(path, 44);
  set_course(window, 11);
  GtkEventController *target = drop_target(window);
  assert_non_null(target);
  GFile *file = g_file_new_for_path(path);
  GSList one = {file, NULL};
  GValue value = G_VALUE_INIT;
  gboolean taken = FALSE;
  g_value_init(&value, GDK_TYPE_FILE_LIST);
  g_value_set_boxed(&value, &one);
  g_signal_emit_by_name(target, "drop", &value, 5.0, 5.0, &taken);
  assert_true(taken);
  app_test_spin_ms(50);
  assert_close(course(window), 11, 0, "asked first");
  gtk_dialog_response(GTK_DIALOG(app_test_dialog()), GTK_RESPONSE_REJECT);
  app_test_spin_ms(50);
  assert_close(course(window), 44, 0, "opened");
  g_value_unset(&value);
  g_object_unref(file);
  g_free(path);
  app_test_close(window);
}

/* ---- several windows -------------------------------------------------------------------- */

static void start(void) {
  application = ox_application_new(G_APPLICATION_NON_UNIQUE);
  assert_true(g_application_register(G_APPLICATION(application), NULL, NULL));
  g_application_activate(G_APPLICATION(application));
}

static guint window_count(void) {
  guint count = 0;
  for (GList *at = gtk_application_get_windows(GTK_APPLICATION(application)); at; at = at->next)
    if (OX_IS_WINDOW(at->data)) count++;
  return count;
}

static OxWindow *newest_window(void) {
  for (GList *at = gtk_application_get_windows(GTK_APPLICATION(application)); at; at = at->next)
    if (OX_IS_WINDOW(at->data)) return at->data;
  return NULL;
}

static void open_in_application(const char *path) {
  GFile *file = g_file_new_for_path(path);
  g_application_open(G_APPLICATION(application), &file, 1, "");
  g_object_unref(file);
  app_test_spin_ms(50);
}

static void a_lesson_has_one_window_by_whatever_name_it_is_opened(void **state) {
  char *path = app_test_path("named.oxbow"), *link = app_test_path("named-link.oxbow");
  char *other = app_test_path("other.oxbow");
  write_course(path, 10);
  write_course(other, 20);
  assert_int_equal(symlink(path, link), 0);
  open_in_application(path);
  OxWindow *first = newest_window();
  set_course(first, 15); /* not pristine */
  open_in_application(link);
  assert_int_equal(window_count(), 1);
  assert_close(course(first), 15, 0, "raised, not read again");
  open_in_application(other);
  assert_int_equal(window_count(), 2);
  OxWindow *second = ox_window_find(GTK_APPLICATION(application), other, NULL);
  assert_non_null(second);
  assert_true(ox_window_open_path(second, link)); /* raises the first */
  assert_close(course(second), 20, 0, "stays");
  assert_false(ox_window_save_path(second, path)); /* two of one file */
  gtk_dialog_response(GTK_DIALOG(app_test_dialog()), GTK_RESPONSE_CLOSE);
  assert_close(read_course(path), 10, 0, "untouched");
  while (newest_window()) app_test_close(newest_window());
  g_free(path);
  g_free(link);
  g_free(other);
}

static void quitting_with_a_failing_save_does_not_quit(void **state) {
  char *path = app_test_path("unsavable.oxbow");
  write_course(path, 10);
  open_in_application(path);
  OxWindow *window = newest_window();
  set_course(window, 15);
  assert_int_equal(g_chmod(path, 0444), 0); /* write-protected */
  g_action_group_activate_action(G_ACTION_GROUP(application), "quit", NULL);
  app_test_spin_ms(50);
  gtk_dialog_response(GTK_DIALOG(app_test_dialog()), GTK_RESPONSE_ACCEPT); /* save */
  app_test_spin_ms(50);
  assert_int_equal(window_count(), 1);
  assert_true(ox_document_modified(ox_window_document(window)));
  assert_non_null(app_test_dialog()); /* says why */
  gtk_dialog_response(GTK_DIALOG(app_test_dialog()), GTK_RESPONSE_CLOSE);
  assert_close(read_course(path), 10, 0, "the old file is whole");
  app_test_close(window);
  g_free(path);
}

/* ---- after a crash ---------------------------------------------------------------------- */

/* What a program that died leaves: the files, and nobody who holds the lock. */
static void leave_work(const char *path, const char *title, double deg) {
  char *directory = ox_kept_directory(), *error = NULL;
  OxDocument *document = ox_document_new();
  ox_document_set_field(document, course_field(), deg, NULL);
  g_autoptr(ox_snapshot) snapshot = ox_document_snapshot(document);
  ox_kept *kept = ox_kept_new(directory, path, title, &error);
  assert_non_null(kept);
  assert_true(ox_kept_write(kept, snapshot, &error));
  ox_kept_leave(kept);
  g_object_unref(document);
  g_free(directory);
}

static guint left_count(void) {
  char *directory = ox_kept_directory();
  GPtrArray *found = ox_kept_find(directory);
  guint count = found->len;
  g_ptr_array_unref(found);
  g_free(directory);
  return count;
}

static void lost_work_is_offered_at_the_next_start(void **state) {
  char *path = app_test_path("before.oxbow");
  write_course(path, 10);
  leave_work(path, "Before", 31);
  leave_work(NULL, "Never Saved", 32);
  start();
  OxWindow *window = newest_window();
  guint restored_with_path = 0, restored_without = 0;
  for (int i = 0; i < 2; i++) {
    GtkWidget *offered = bar(window, "recovery");
    assert_non_null(offered);
    const char *text = ox_message_bar_text(offered);
    gboolean before = strstr(text, "“Before”") != NULL;
    assert_true(before || strstr(text, "“Never Saved”"));
    answer_bar(window, "recovery", GTK_RESPONSE_ACCEPT);
  }
  assert_null(bar(window, "recovery"));
  for (GList *at = gtk_application_get_windows(GTK_APPLICATION(application)); at; at = at->next) {
    if (!OX_IS_WINDOW(at->data)) continue;
    OxDocument *document = ox_window_document(at->data);
    assert_true(ox_document_modified(document));
    if (ox_document_path(document)) {
      restored_with_path++;
      assert_string_equal(ox_document_path(document), path);
      assert_close(course(at->data), 31, 0, "its work");
    } else {
      restored_without++;
      assert_close(course(at->data), 32, 0, "its work");
    }
  }
  assert_int_equal(restored_with_path, 1);
  assert_int_equal(restored_without, 1);
  assert_int_equal(left_count(), 0); /* they are kept, by windows that live */
  assert_close(read_course(path), 10, 0, "the file itself waits for Save");
  while (newest_window()) app_test_close(newest_window());
  assert_int_equal(left_count(), 0); /* given up properly */
  g_free(path);
}

static void discarded_work_is_gone_and_unanswered_work_is_offered_again(void **state) {
  leave_work(NULL, "One", 31);
  leave_work(NULL, "Two", 32);
  OxWindow *window = app_test_window(GTK_APPLICATION(application));
  ox_recovery *recovery = ox_recovery_new(GTK_APPLICATION(application), NULL);
  ox_recovery_offer(recovery, window);
  answer_bar(window, "recovery", GTK_RESPONSE_REJECT);
  assert_non_null(bar(window, "recovery"));
  app_test_close(window); /* one is not answered */
  ox_recovery_free(recovery);
  assert_int_equal(left_count(), 1);
  window = app_test_window(GTK_APPLICATION(application));
  recovery = ox_recovery_new(GTK_APPLICATION(application), NULL);
  ox_recovery_offer(recovery, window);
  answer_bar(window, "recovery", GTK_RESPONSE_REJECT);
  assert_null(bar(window, "recovery"));
  app_test_close(window);
  ox_recovery_free(recovery);
  assert_int_equal(left_count(), 0);
}

static void work_that_cannot_be_read_stays_where_it_is(void **state) {
  leave_work(NULL, "Broken", 31);
  char *directory = ox_kept_directory();
  GPtrArray *found = ox_kept_find(directory);
  ox_kept *kept = g_ptr_array_index(found, 0);
  assert_true(g_file_set_contents(kept->lesson_path, "{", 1, NULL));
  g_ptr_array_unref(found);
  OxWindow *window = app_test_window(GTK_APPLICATION(application));
  ox_recovery *recovery = ox_recovery_new(GTK_APPLICATION(application), NULL);
  ox_recovery_offer(recovery, window);
  answer_bar(window, "recovery", GTK_RESPONSE_ACCEPT);
  assert_non_null(app_test_dialog());
  gtk_dialog_response(GTK_DIALOG(app_test_dialog()), GTK_RESPONSE_CLOSE);
  app_test_close(window);
  ox_recovery_free(recovery);
  found = ox_kept_find(directory);
  assert_int_equal(found->len, 1);
  g_ptr_array_set_free_func(found, (GDestroyNotify)ox_kept_discard);
  g_ptr_array_unref(found);
  g_free(directory);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_menu_and_the_buttons_name_what_is_undone),
      cmocka_unit_test(what_is_being_typed_is_undone_as_well),
      cmocka_unit_test(typing_a_name_is_one_step_within_one_focus),
      cmocka_unit_test(another_program_changed_the_file_and_reload_can_be_undone),
      cmocka_unit_test(mine_can_be_kept_and_then_counts_as_unsaved),
      cmocka_unit_test(saving_over_a_changed_file_asks_first),
      cmocka_unit_test(ones_own_saves_and_the_same_contents_are_no_news),
      cmocka_unit_test(a_removed_file_is_noticed_and_saving_writes_it_again),
      cmocka_unit_test(a_link_is_kept_and_what_it_leads_to_is_watched),
      cmocka_unit_test(a_file_that_became_nonsense_does_not_replace_the_lesson),
      cmocka_unit_test(a_copy_is_written_and_the_lesson_stays_with_its_own_file),
      cmocka_unit_test(the_six_lessons_opened_last_are_offered_newest_first),
      cmocka_unit_test(a_file_dropped_on_the_window_opens_once_changes_are_dealt_with),
      cmocka_unit_test(lost_work_is_offered_at_the_next_start),
      cmocka_unit_test(a_lesson_has_one_window_by_whatever_name_it_is_opened),
      cmocka_unit_test(quitting_with_a_failing_save_does_not_quit),
      cmocka_unit_test(discarded_work_is_gone_and_unanswered_work_is_offered_again),
      cmocka_unit_test(work_that_cannot_be_read_stays_where_it_is),
  };
  return cmocka_run_group_tests_name("keeping", tests, set_up, clean);
}
