/* What is remembered from one start to the next: appearance, size of the window, what the panels
 * show. One small file, $XDG_CONFIG_HOME/oxbow/settings, read at the start and written beside and
 * renamed after a change; a file that cannot be read or written is as if there were none.
 *
 * A GObject without GTK. Values that make no sense are never returned: the fallback is.
 *
 * Signal:
 *   "changed" (const char *key)  with the key as detail: it has another value, or none any more */
#ifndef OX_SETTINGS_H
#define OX_SETTINGS_H

#include <glib-object.h>

G_BEGIN_DECLS

#define OX_TYPE_SETTINGS (ox_settings_get_type())
G_DECLARE_FINAL_TYPE(OxSettings, ox_settings, OX, SETTINGS, GObject)

/* path NULL: the usual place. */
OxSettings *ox_settings_new(const char *path);
/* Of nobody: remembered as long as it lives. */
OxSettings *ox_settings_new_unkept(void);

/* One of the words of a NULL-terminated list, or the first of them. Static, out of the list. */
const char *ox_settings_word(OxSettings *self, const char *key, const char *const *words);
void ox_settings_set_word(OxSettings *self, const char *key, const char *word);
/* Within min..max, or the fallback. */
int ox_settings_whole(OxSettings *self, const char *key, int min, int max, int fallback);
void ox_settings_set_whole(OxSettings *self, const char *key, int value);

/* Any text, freed with g_free; NULL: none. */
char *ox_settings_text(OxSettings *self, const char *key);
void ox_settings_set_text(OxSettings *self, const char *key, const char *text);

/* As if it had never been set. */
void ox_settings_forget(OxSettings *self, const char *key);

/* Writes now what is waiting to be written; also done when the last reference goes. FALSE when the
 * file could not be written. */
gboolean ox_settings_flush(OxSettings *self);

G_END_DECLS

#endif
