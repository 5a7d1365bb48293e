/* Files from elsewhere: the lessons opened last, which the desktop remembers for every program,
 * and files dropped on the window. */
#include "ox_window_private.h"

#include <string.h>

#include "app_id.h"
#include "oxbow/text.h"

#define RECENT_MAX 6
#define MEDIA_TYPE "application/x-oxbow-lesson+json"

/* ---- the lessons opened last ------------------------------------------------------------ */

void ox_window_note_recent(OxWindow *self) {
  const char *path = ox_document_path(self->document);
  /* A pipe is not there to be opened again. */
  if (!path || !g_file_test(path, G_FILE_TEST_IS_REGULAR)) return;
  char *absolute = g_canonicalize_filename(path, NULL);
  char *uri = g_filename_to_uri(absolute, NULL, NULL);
  char media_type[] = MEDIA_TYPE, name[] = OX_APP_NAME, command[] = "oxbow %f";
  GtkRecentData data = {.mime_type = media_type, .app_name = name, .app_exec = command};
  if (uri) gtk_recent_manager_add_full(gtk_recent_manager_get_default(), uri, &data);
  g_free(uri);
  g_free(absolute);
}

static int newest_first(gconstpointer a, gconstpointer b) {
  GDateTime *one = gtk_recent_info_get_modified((GtkRecentInfo *)a);
  GDateTime *other = gtk_recent_info_get_modified((GtkRecentInfo *)b);
  return g_date_time_compare(other, one);
}

static gboolean is_ours(GtkRecentInfo *info) {
  return gtk_recent_info_is_local(info) && gtk_recent_info_has_application(info, OX_APP_NAME) &&
         g_strcmp0(gtk_recent_info_get_mime_type(info), MEDIA_TYPE) == 0 &&
         gtk_recent_info_exists(info);
}

/* Underscores in a file's name are no mnemonics. */
static char *label_of(const char *path) {
  char *name = g_filename_display_basename(path), **parts = g_strsplit(name, "_", -1);
  char *label = g_strjoinv("__", parts);
  g_strfreev(parts);
  g_free(name);
  return label;
}

static void append(GMenu *menu, const char *path) {
  char *label = label_of(path);
  GMenuItem *item = g_menu_item_new(label, NULL);
  GVariant *target = g_variant_new_bytestring(path);
  g_menu_item_set_action_and_target_value(item, "win.open-recent", target);
  g_menu_append_item(menu, item);
  g_object_unref(item);
  g_free(label);
}

static GMenu *recent_menu(void) {
  GMenu *menu = g_menu_new();
  GList *all = gtk_recent_manager_get_items(gtk_recent_manager_get_default());
  int count = 0;
  all = g_list_sort(all, newest_first);
  for (GList *at = all; at && count < RECENT_MAX; at = at->next) {
    if (!is_ours(at->data)) continue;
    char *path = g_filename_from_uri(gtk_recent_info_get_uri(at->data), NULL, NULL);
    if (!path) continue;
    append(menu, path);
    g_free(path);
    count++;
  }
  if (count == 0) g_menu_append(menu, _("No recent lessons"), "win.no-recent");
  g_list_free_full(all, (GDestroyNotify)gtk_recent_info_unref);
  return menu;
}

/* Filled when it is opened: other windows and programs add to the list. */
static void popup_cb(GtkMenuButton *button, gpointer data) {
  GMenu *menu = recent_menu();
  gtk_menu_button_set_menu_model(button, G_MENU_MODEL(menu));
  g_object_unref(menu);
}

static void open_recent_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  ox_window_leave_for(OX_WINDOW(data), g_variant_get_bytestring(parameter));
}

static const GActionEntry entries[] = {
    {.name = "open-recent", .activate = open_recent_cb, .parameter_type = "ay"},
    {.name = "no-recent"},
};

/* ---- dropped files ---------------------------------------------------------------------- */

/* What is dragged out of a window of ours is a picture, no lesson. */
static gboolean accept_cb(GtkDropTarget *target, GdkDrop *drop, gpointer data) {
  return !gdk_drop_get_drag(drop) &&
         gdk_content_formats_match(gtk_drop_target_get_formats(target),
                                   gdk_drop_get_formats(drop));
}

/* The first one is for this window; each other gets one of its own. */
static gboolean drop_cb(GtkDropTarget *target, const GValue *value, double x, double y,
                        OxWindow *self) {
  GSList *files = gdk_file_list_get_files(g_value_get_boxed(value));
  GApplication *application = G_APPLICATION(gtk_window_get_application(GTK_WINDOW(self)));
  char *first = files ? g_file_get_path(files->data) : NULL;
  if (!first) return FALSE;
  for (GSList *at = files->next; at && application; at = at->next)
    g_application_open(application, (GFile **)&at->data, 1, "");
  ox_window_leave_for(self, first);
  g_free(first);
  return TRUE;
}

void ox_window_add_recent(OxWindow *self) {
  g_action_map_add_action_entries(G_ACTION_MAP(self), entries, G_N_ELEMENTS(entries), self);
  GAction *none = g_action_map_lookup_action(G_ACTION_MAP(self), "no-recent");
  g_simple_action_set_enabled(G_SIMPLE_ACTION(none), FALSE);
  gtk_menu_button_set_create_popup_func(self->recent_button, popup_cb, NULL, NULL);
  GtkDropTarget *target = gtk_drop_target_new(GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);
  g_signal_connect(target, "accept", G_CALLBACK(accept_cb), NULL);
  g_signal_connect_object(target, "drop", G_CALLBACK(drop_cb), self, 0);
  gtk_widget_add_controller(GTK_WIDGET(self), GTK_EVENT_CONTROLLER(target));
}
