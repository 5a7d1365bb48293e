/* What the window's tests share. Nothing here asserts inside a callback. */
#include "app_test.h"

#include <glib/gstdio.h>

#include "app_id.h"

enum { ALWAYS_BUSY_MS = 2000 };

static char *directory;

int app_test_init(void **state) {
  if (!gtk_init_check()) {
    print_error("there is no display: run it with tests/support/with_display.sh\n");
    return -1;
  }
  GtkCssProvider *style = gtk_css_provider_new();
  gtk_css_provider_load_from_resource(style, OX_RESOURCES "/style.css");
  gtk_style_context_add_provider_for_display(gdk_display_get_default(), GTK_STYLE_PROVIDER(style),
                                             GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  g_object_unref(style);
  return 0;
}

static gboolean set_flag_cb(gpointer data) {
  *(gboolean *)data = TRUE;
  return G_SOURCE_REMOVE;
}

gboolean app_test_spin_until(const gboolean *flag, guint ms) {
  gboolean over = FALSE;
  guint timeout = g_timeout_add(ms, set_flag_cb, &over);
  while (!over && !*flag) g_main_context_iteration(NULL, TRUE);
  if (!over) g_source_remove(timeout);
  return *flag;
}

/* The end has the lowest priority: on a busy machine, too, what was due by then is done by then,
 * frames included. Only a window that has always another frame due does not end this way. */
void app_test_spin_ms(guint ms) {
  gboolean over = FALSE, never = FALSE;
  guint idle = g_timeout_add_full(G_PRIORITY_LOW, ms, set_flag_cb, &over, NULL);
  guint late = g_timeout_add(ms + ALWAYS_BUSY_MS, set_flag_cb, &never);
  while (!over && !never) g_main_context_iteration(NULL, TRUE);
  g_source_remove(over ? late : idle);
}

gboolean app_test_wait(gboolean (*holds)(gpointer data), gpointer data, guint ms) {
  gint64 end_us = g_get_monotonic_time() + (gint64)ms * 1000;
  while (!holds(data)) {
    gboolean never = FALSE;
    if (g_get_monotonic_time() > end_us) return FALSE;
    app_test_spin_until(&never, 1);
  }
  return TRUE;
}

static gboolean is_drawn(gpointer data) {
  ox_board_counts counts = ox_board_get_counts(ox_window_board(OX_WINDOW(data)));
  return counts.still > 0 && counts.moving > 0;
}

OxWindow *app_test_window(GtkApplication *application) {
  OxWindow *window = ox_window_new(application);
  gtk_window_set_default_size(GTK_WINDOW(window), 1024, 600);
  gtk_window_present(GTK_WINDOW(window));
  assert_true(app_test_wait(is_drawn, window, 20000));
  app_test_spin_ms(150); /* focus and first allocations settle */
  return window;
}

static void gone_cb(gpointer data, GObject *where) { *(gboolean *)data = TRUE; }

void app_test_close(OxWindow *window) {
  gboolean gone = FALSE;
  g_object_weak_ref(G_OBJECT(window), gone_cb, &gone);
  gtk_window_destroy(GTK_WINDOW(window));
  assert_true(app_test_spin_until(&gone, 5000));
}

GtkWidget *app_test_find(GtkWidget *top, GType type) {
  if (G_TYPE_CHECK_INSTANCE_TYPE(top, type)) return top;
  for (GtkWidget *at = gtk_widget_get_first_child(top); at; at = gtk_widget_get_next_sibling(at)) {
    GtkWidget *found = app_test_find(at, type);
    if (found) return found;
  }
  return NULL;
}

GtkWidget *app_test_find_type_name(GtkWidget *top, const char *type_name) {
  GType type = g_type_from_name(type_name);
  return type ? app_test_find(top, type) : NULL;
}

GtkWidget *app_test_find_button(GtkWidget *top, const char *icon_or_label) {
  if (GTK_IS_BUTTON(top)) {
    GtkButton *button = GTK_BUTTON(top);
    if (g_strcmp0(gtk_button_get_icon_name(button), icon_or_label) == 0) return top;
    if (g_strcmp0(gtk_button_get_label(button), icon_or_label) == 0) return top;
  }
  for (GtkWidget *at = gtk_widget_get_first_child(top); at; at = gtk_widget_get_next_sibling(at)) {
    GtkWidget *found = app_test_find_button(at, icon_or_label);
    if (found) return found;
  }
  return NULL;
}

GtkWidget *app_test_find_label(GtkWidget *top, const char *text) {
  if (GTK_IS_LABEL(top) && strcmp(gtk_label_get_text(GTK_LABEL(top)), text) == 0) return top;
  for (GtkWidget *at = gtk_widget_get_first_child(top); at; at = gtk_widget_get_next_sibling(at)) {
    GtkWidget *found = app_test_find_label(at, text);
    if (found) return found;
  }
  return NULL;
}

gboolean app_test_is_bold(GtkTextView *view, int offset) {
  GtkTextIter at;
  gboolean bold = FALSE;
  gtk_text_buffer_get_iter_at_offset(gtk_text_view_get_buffer(view), &at, offset);
  GSList *tags = gtk_text_iter_get_tags(&at);
  for (GSList *tag = tags; tag; tag = tag->next) {
    gboolean set;
    g_object_get(tag->data, "weight-set", &set, NULL);
    bold |= set;
  }
  g_slist_free(tags);
  return bold;
}

GtkWidget *app_test_top(GType type) {
  GListModel *toplevels = gtk_window_get_toplevels();
  for (guint i = 0; i < g_list_model_get_n_items(toplevels); i++) {
    GtkWidget *window = g_list_model_get_item(toplevels, i);
    g_object_unref(window); /* the list keeps it */
    if (G_TYPE_CHECK_INSTANCE_TYPE(window, type) && gtk_widget_get_visible(window)) return window;
  }
  return NULL;
}

GtkWidget *app_test_dialog(void) { return app_test_top(GTK_TYPE_MESSAGE_DIALOG); }

char *app_test_path(const char *name) {
  if (!directory) directory = g_dir_make_tmp("oxbow-test-XXXXXX", NULL);
  assert_non_null(directory);
  return g_build_filename(directory, name, NULL);
}

int app_test_clean(void **state) {
  if (!directory) return 0;
  GDir *dir = g_dir_open(directory, 0, NULL);
  for (const char *name; dir && (name = g_dir_read_name(dir));) {
    char *path = g_build_filename(directory, name, NULL);
    g_unlink(path);
    g_free(path);
  }
  if (dir) g_dir_close(dir);
  g_rmdir(directory);
  g_clear_pointer(&directory, g_free);
  return 0;
}
