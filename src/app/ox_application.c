/* The application. */
#include "ox_application.h"

#include <locale.h>
#include <stdio.h>

#include "app_id.h"
#include "ox_help.h"
#include "ox_keys.h"
#include "ox_preferences.h"
#include "ox_recovery.h"
#include "ox_window.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

/* Set by the start-up benchmark: quit as soon as the first frame is drawn. */
#define EXIT_AFTER_FIRST_FRAME "OXBOW_EXIT_AFTER_FIRST_FRAME"

struct _OxApplication {
  GtkApplication parent_instance;
  OxSettings *settings; /* owned */
  gboolean projector;
  ox_recovery *recovery; /* NULL: not looked for yet */
};

G_DEFINE_FINAL_TYPE(OxApplication, ox_application, GTK_TYPE_APPLICATION)

/* ---- windows ---------------------------------------------------------------------------- */

static void first_frame_cb(GdkFrameClock *clock, GApplication *application) {
  g_application_quit(application);
}

static void watch_first_frame(OxApplication *self, OxWindow *window) {
  if (!g_getenv(EXIT_AFTER_FIRST_FRAME)) return;
  GdkFrameClock *clock = gtk_widget_get_frame_clock(GTK_WIDGET(window));
  g_signal_connect_object(clock, "after-paint", G_CALLBACK(first_frame_cb), self, 0);
}

/* The size is remembered, the place is not: that is the window manager's. */
static void remember_size_cb(GtkWindow *window, GParamSpec *pspec, OxApplication *self) {
  int width, height;
  gtk_window_get_default_size(window, &width, &height);
  if (!gtk_window_is_fullscreen(window) && width > 0 && height > 0) {
    ox_settings_set_whole(self->settings, "width", width);
    ox_settings_set_whole(self->settings, "height", height);
  }
}

static OxWindow *new_window(OxApplication *self) {
  OxWindow *window = ox_window_new(GTK_APPLICATION(self));
  int width, height;
  gtk_window_get_default_size(GTK_WINDOW(window), &width, &height);
  gtk_window_set_default_size(GTK_WINDOW(window),
                              ox_settings_whole(self->settings, "width", 300, 16000, width),
                              ox_settings_whole(self->settings, "height", 300, 16000, height));
  g_signal_connect_object(window, "notify::default-width", G_CALLBACK(remember_size_cb), self, 0);
  g_signal_connect_object(window, "notify::default-height", G_CALLBACK(remember_size_cb), self, 0);
  ox_window_set_settings(window, self->settings);
  ox_window_set_projector(window, self->projector);
  return window;
}

/* Once a start, in its first window. */
static void look_for_kept(OxApplication *self, OxWindow *window) {
  if (self->recovery) return;
  self->recovery = ox_recovery_new(GTK_APPLICATION(self), NULL);
  ox_recovery_offer(self->recovery, window);
}

/* The one used last; help and dialogs are no windows of lessons. */
static GtkWindow *last_window(OxApplication *self) {
  for (GList *at = gtk_application_get_windows(GTK_APPLICATION(self)); at; at = at->next)
    if (OX_IS_WINDOW(at->data)) return at->data;
  return NULL;
}

static void activate(GApplication *application) {
  OxApplication *self = OX_APPLICATION(application);
  GtkWindow *window = last_window(self);
  if (!window) window = GTK_WINDOW(new_window(self));
  gtk_window_present(window);
  watch_first_frame(self, OX_WINDOW(window));
  look_for_kept(self, OX_WINDOW(window));
}

/* A window with nothing of its own to lose, or NULL. */
static OxWindow *pristine_window(OxApplication *self) {
  OxWindow *pristine = NULL;
  for (GList *at = gtk_application_get_windows(GTK_APPLICATION(self)); at; at = at->next)
    if (OX_IS_WINDOW(at->data) && ox_window_is_pristine(at->data)) pristine = at->data;
  return pristine;
}

static void open_file(OxApplication *self, GFile *file) {
  char *path = g_file_get_path(file);
  OxWindow *shown = ox_window_find(GTK_APPLICATION(self), path, NULL);
  OxWindow *window = shown ? shown : pristine_window(self);
  if (!window) window = new_window(self);
  gtk_window_present(GTK_WINDOW(window));
  watch_first_frame(self, window);
  look_for_kept(self, window);
  if (!shown) {
    char *uri = path ? NULL : g_file_get_uri(file);
    ox_window_open_path(window, path ? path : uri);
    g_free(uri);
  }
  g_free(path);
}

static void open_files(GApplication *application, GFile **files, int count, const char *hint) {
  for (int i = 0; i < count; i++) open_file(OX_APPLICATION(application), files[i]);
}

/* ---- actions ---------------------------------------------------------------------------- */

static void quit_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  GList *windows = gtk_application_get_windows(GTK_APPLICATION(data));
  for (GList *at = windows; at; at = at->next) {
    if (!OX_IS_WINDOW(at->data)) continue;
    OxWindow *window = at->data;
    ox_inputs_panel_commit(ox_window_inputs(window));
    if (ox_document_modified(ox_window_document(window))) {
      ox_window_ask_and_quit(window); /* Cancel there ends it; else we come back here */
      return;
    }
  }
  g_application_quit(G_APPLICATION(data));
}

/* One help window is enough. */
static void help_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  GtkWindow *help = NULL;
  for (GList *at = gtk_application_get_windows(GTK_APPLICATION(data)); at; at = at->next)
    if (OX_IS_HELP(at->data)) help = at->data;
  gtk_window_present(help ? help : GTK_WINDOW(ox_help_new(GTK_APPLICATION(data))));
}

/* Nor more than one of the preferences; it stands over the window that asked for it. */
static void preferences_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxApplication *self = OX_APPLICATION(data);
  GtkWindow *shown = NULL, *over = last_window(self);
  for (GList *at = gtk_application_get_windows(GTK_APPLICATION(data)); at; at = at->next)
    if (OX_IS_PREFERENCES(at->data)) shown = at->data;
  if (!shown)
    shown = GTK_WINDOW(ox_preferences_new(GTK_APPLICATION(data), self->settings));
  gtk_window_set_transient_for(shown, over);
  gtk_window_present(shown);
}

/* What a report of a fault should say. */
static char *system_information(void) {
  return g_strdup_printf(_("%s %s\nGTK %u.%u.%u\nLocale: %s\nDisplay: %s\nText: %s\n"), OX_APP_NAME,
                         OX_VERSION, gtk_get_major_version(), gtk_get_minor_version(),
                         gtk_get_micro_version(), setlocale(LC_ALL, NULL),
                         G_OBJECT_TYPE_NAME(gdk_display_get_default()), pango_version_string());
}

static void about_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  GtkWindow *parent = gtk_application_get_active_window(GTK_APPLICATION(data));
  char *comments = g_strdup_printf(
      _("Plots aircraft holding patterns: the entry, the circuits in the wind, and the working "
        "behind every figure.\n\n%s"), ox_words_caution());
  char *information = system_information(), *title = g_strdup_printf(_("About %s"), OX_APP_NAME);
  gtk_show_about_dialog(parent, "program-name", OX_APP_NAME, "version", OX_VERSION, "comments",
                        comments, "license-type", GTK_LICENSE_MIT_X11, "logo-icon-name", OX_APP_ID,
                        "title", title, "copyright", _("© 2026 The Oxbow authors"),
                        "system-information", information, NULL);
  g_free(title);
  g_free(information);
  g_free(comments);
}

static void appearance_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  OxApplication *self = OX_APPLICATION(data);
  const char *name = g_variant_get_string(state, NULL);
  GtkSettings *settings = gtk_settings_get_default();
  if (g_str_equal(name, "system"))
    gtk_settings_reset_property(settings, "gtk-application-prefer-dark-theme");
  else if (g_str_equal(name, "light") || g_str_equal(name, "dark") ||
           g_str_equal(name, "projector"))
    g_object_set(settings, "gtk-application-prefer-dark-theme", g_str_equal(name, "dark"), NULL);
  else
    return; /* another program may ask for anything */
  self->projector = g_str_equal(name, "projector");
  for (GList *at = gtk_application_get_windows(GTK_APPLICATION(self)); at; at = at->next)
    if (OX_IS_WINDOW(at->data)) ox_window_set_projector(at->data, self->projector);
  g_simple_action_set_state(action, state);
  ox_settings_set_word(self->settings, "appearance", name);
}

static const GActionEntry entries[] = {
    {.name = "quit", .activate = quit_cb},
    {.name = "help", .activate = help_cb},
    {.name = "about", .activate = about_cb},
    {.name = "preferences", .activate = preferences_cb},
    {.name = "appearance",
     .parameter_type = "s",
     .state = "'system'",
     .change_state = appearance_cb},
};

/* ---- the object ------------------------------------------------------------------------- */

static void recall_appearance(OxApplication *self) {
  const char *word = ox_preference_words(OX_PREFER_APPEARANCE)[ox_preference_get(
      self->settings, OX_PREFER_APPEARANCE)];
  GVariant *state = g_action_group_get_action_state(G_ACTION_GROUP(self), "appearance");
  if (!g_str_equal(g_variant_get_string(state, NULL), word))
    g_action_group_change_action_state(G_ACTION_GROUP(self), "appearance",
                                       g_variant_new_string(word));
  g_variant_unref(state);
}

/* GTK's own passages go by the same. */
static void recall_motion(OxApplication *self) {
  GtkSettings *settings = gtk_settings_get_default();
  if (ox_preference_get(self->settings, OX_PREFER_MOTION) == 0)
    gtk_settings_reset_property(settings, "gtk-enable-animations");
  else
    g_object_set(settings, "gtk-enable-animations", FALSE, NULL);
}

static void recall_looks(OxApplication *self) {
  static const ox_preference looks[] = {OX_PREFER_APPEARANCE, OX_PREFER_MOTION};
  static void (*const recall[])(OxApplication *self) = {recall_appearance, recall_motion};
  for (size_t i = 0; i < G_N_ELEMENTS(looks); i++) {
    char *signal = g_strconcat("changed::", ox_preference_key(looks[i]), NULL);
    recall[i](self);
    g_signal_connect_object(self->settings, signal, G_CALLBACK(recall[i]), self,
                            G_CONNECT_SWAPPED);
    g_free(signal);
  }
}

static void startup(GApplication *application) {
  G_APPLICATION_CLASS(ox_application_parent_class)->startup(application);
  gtk_window_set_default_icon_name(OX_APP_ID);
  GtkCssProvider *style = gtk_css_provider_new();
  gtk_css_provider_load_from_resource(style, OX_RESOURCES "/style.css");
  gtk_style_context_add_provider_for_display(gdk_display_get_default(), GTK_STYLE_PROVIDER(style),
                                             GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  g_object_unref(style);
  g_action_map_add_action_entries(G_ACTION_MAP(application), entries, G_N_ELEMENTS(entries),
                                  application);
  ox_keys_set_accelerators(GTK_APPLICATION(application));
  recall_looks(OX_APPLICATION(application));
}

static int handle_local_options(GApplication *application, GVariantDict *options) {
  if (!g_variant_dict_contains(options, "version")) return -1;
  printf("%s %s\n", OX_APP_NAME, OX_VERSION);
  return 0;
}

static void finalize(GObject *object) {
  ox_recovery_free(OX_APPLICATION(object)->recovery);
  g_clear_object(&OX_APPLICATION(object)->settings);
  G_OBJECT_CLASS(ox_application_parent_class)->finalize(object);
}

static void ox_application_class_init(OxApplicationClass *class) {
  GApplicationClass *application_class = G_APPLICATION_CLASS(class);
  G_OBJECT_CLASS(class)->finalize = finalize;
  application_class->startup = startup;
  application_class->activate = activate;
  application_class->open = open_files;
  application_class->handle_local_options = handle_local_options;
}

static void ox_application_init(OxApplication *self) {
  self->settings = ox_settings_new(NULL);
  const GOptionEntry options[] = {
      {"version", 0, 0, G_OPTION_ARG_NONE, NULL, _("Show the version"), NULL}, {0}};
  g_application_add_main_option_entries(G_APPLICATION(self), options);
  g_application_set_option_context_parameter_string(G_APPLICATION(self), _("[LESSON]"));
  g_application_set_option_context_summary(G_APPLICATION(self), ox_words_caution_line());
}

OxApplication *ox_application_new(GApplicationFlags flags) {
  return g_object_new(OX_TYPE_APPLICATION, "application-id", OX_APP_ID, "flags",
                      G_APPLICATION_HANDLES_OPEN | flags, "resource-base-path", OX_RESOURCES, NULL);
}

OxSettings *ox_application_settings(OxApplication *self) { return self->settings; }
