/* Notices that another program changed or removed a file. Contents are compared: what was only
 * touched, or written again the same, is no change. What is no regular file is not watched.
 *
 * A GObject without GTK.
 * Signals:
 *   "noticed"  ox_file_watch_state() is another one */
#ifndef OX_FILE_WATCH_H
#define OX_FILE_WATCH_H

#include <gio/gio.h>

G_BEGIN_DECLS

typedef enum {
  OX_FILE_SAME,    /* as it was when it was last accepted, or nothing is watched */
  OX_FILE_CHANGED, /* it has other contents */
  OX_FILE_GONE,    /* there is none */
} ox_file_state;

#define OX_TYPE_FILE_WATCH (ox_file_watch_get_type())
G_DECLARE_FINAL_TYPE(OxFileWatch, ox_file_watch, OX, FILE_WATCH, GObject)

OxFileWatch *ox_file_watch_new(void);

/* Watches a file, as it is now; NULL: none. */
void ox_file_watch_set_path(OxFileWatch *self, const char *path);
/* The file as it is now is no news any more. */
void ox_file_watch_accept(OxFileWatch *self);
/* Looks at once. Besides, it looks whenever the system tells that something happened. */
ox_file_state ox_file_watch_look(OxFileWatch *self);
/* As of the last look. */
ox_file_state ox_file_watch_state(OxFileWatch *self);

/* Whether two paths lead to the same file. Both may be NULL, which is no file. */
gboolean ox_same_file(const char *a, const char *b);

G_END_DECLS

#endif
