/* The settings: a key file. */
#include "ox_settings.h"

#include <string.h>

#define GROUP "oxbow"
#define WRITE_AFTER_S 1 /* a window that is being resized changes them many times */

struct _OxSettings {
  GObject parent_instance;

  GKeyFile *file; /* owned */
  char *path;     /* owned; NULL: nothing is written */
  guint waiting;  /* source of the write to come; 0: nothing to write */
};

static guint changed_signal;

G_DEFINE_FINAL_TYPE(OxSettings, ox_settings, G_TYPE_OBJECT)

static gboolean write_file(OxSettings *self) {
  if (!self->path) return TRUE;
  gsize length;
  char *text = g_key_file_to_data(self->file, &length, NULL);
  char *folder = g_path_get_dirname(self->path);
  gboolean done = g_mkdir_with_parents(folder, 0700) == 0 &&
                  g_file_set_contents(self->path, text, (gssize)length, NULL);
  g_free(folder);
  g_free(text);
  return done;
}

gboolean ox_settings_flush(OxSettings *self) {
  if (!self->waiting) return TRUE;
  g_clear_handle_id(&self->waiting, g_source_remove);
  return write_file(self);
}

static gboolean write_cb(gpointer data) {
  OxSettings *self = OX_SETTINGS(data);
  self->waiting = 0;
  write_file(self); /* settings that are lost are no harm: nobody is told */
  return G_SOURCE_REMOVE;
}

static void dispose(GObject *object) {
  ox_settings_flush(OX_SETTINGS(object));
  G_OBJECT_CLASS(ox_settings_parent_class)->dispose(object);
}

static void finalize(GObject *object) {
  OxSettings *self = OX_SETTINGS(object);
  g_key_file_unref(self->file);
  g_free(self->path);
  G_OBJECT_CLASS(ox_settings_parent_class)->finalize(object);
}

static void ox_settings_class_init(OxSettingsClass *class) {
  G_OBJECT_CLASS(class)->dispose = dispose;
  G_OBJECT_CLASS(class)->finalize = finalize;
  changed_signal = g_signal_new("changed", OX_TYPE_SETTINGS,
                                G_SIGNAL_RUN_LAST | G_SIGNAL_DETAILED, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void ox_settings_init(OxSettings *self) { self->file = g_key_file_new(); }

OxSettings *ox_settings_new(const char *path) {
  OxSettings *self = g_object_new(OX_TYPE_SETTINGS, NULL);
  self->path = path ? g_strdup(path)
                    : g_build_filename(g_get_user_config_dir(), "oxbow", "settings", NULL);
  if (!g_key_file_load_from_file(self->file, self->path, G_KEY_FILE_KEEP_COMMENTS, NULL)) {
    g_key_file_unref(self->file); /* what was read before the fault counts no more than the rest */
    self->file = g_key_file_new();
  }
  return self;
}

OxSettings *ox_settings_new_unkept(void) { return g_object_new(OX_TYPE_SETTINGS, NULL); }

const char *ox_settings_word(OxSettings *self, const char *key, const char *const *words) {
  char *found = g_key_file_get_string(self->file, GROUP, key, NULL);
  const char *word = words[0];
  for (const char *const *at = words; found && *at; at++)
    if (strcmp(*at, found) == 0) word = *at;
  g_free(found);
  return word;
}

static void changed(OxSettings *self, const char *key) {
  if (!self->waiting) self->waiting = g_timeout_add_seconds(WRITE_AFTER_S, write_cb, self);
  g_signal_emit(self, changed_signal, g_quark_from_string(key), key);
}

void ox_settings_set_text(OxSettings *self, const char *key, const char *text) {
  char *old = g_key_file_get_string(self->file, GROUP, key, NULL);
  if (g_strcmp0(old, text) != 0) {
    g_key_file_set_string(self->file, GROUP, key, text);
    changed(self, key);
  }
  g_free(old);
}

char *ox_settings_text(OxSettings *self, const char *key) {
  return g_key_file_get_string(self->file, GROUP, key, NULL);
}

void ox_settings_set_word(OxSettings *self, const char *key, const char *word) {
  ox_settings_set_text(self, key, word);
}

int ox_settings_whole(OxSettings *self, const char *key, int min, int max, int fallback) {
  GError *error = NULL;
  int value = g_key_file_get_integer(self->file, GROUP, key, &error);
  gboolean good = !error && value >= min && value <= max;
  g_clear_error(&error);
  return good ? value : fallback;
}

void ox_settings_set_whole(OxSettings *self, const char *key, int value) {
  GError *error = NULL;
  int old = g_key_file_get_integer(self->file, GROUP, key, &error);
  if (error || old != value) {
    g_key_file_set_integer(self->file, GROUP, key, value);
    changed(self, key);
  }
  g_clear_error(&error);
}

void ox_settings_forget(OxSettings *self, const char *key) {
  if (g_key_file_remove_key(self->file, GROUP, key, NULL)) changed(self, key);
}
