/* Work kept safe from a crash: files in one directory, two for a lesson with unsaved changes.
 *
 *   STEM.info   whose it is: the lesson's path (if any) and title. Locked as long as its owner
 *               lives; the system lets go of the lock when the owner dies, however it dies.
 *   STEM.oxbow  the lesson, written beside and renamed: whole, or the one before.
 *
 * No globals, no GTK. A lock is of an open file, so two windows of one program are two owners. */
#ifndef OX_KEPT_H
#define OX_KEPT_H

#include <glib.h>

#include "ox_snapshot.h"

G_BEGIN_DECLS

typedef struct {
  char *info_path, *lesson_path;
  char *path;   /* of the lesson's own file, or NULL: it was never saved */
  char *title;  /* for people */
  gint64 at_s;  /* when it was written last, seconds since 1970; 0 for one not written yet */
  int lock_fd;
} ox_kept;

/* $XDG_STATE_HOME/oxbow; freed with g_free. */
char *ox_kept_directory(void);

/* A new pair of names, its info written and locked, the directory made if need be. NULL with
 * *error, a sentence freed with g_free. */
ox_kept *ox_kept_new(const char *directory, const char *path, const char *title, char **error);
/* Writes the lesson; may run on any thread, one at a time. FALSE with *error as above. */
gboolean ox_kept_write(const ox_kept *kept, ox_snapshot *snapshot, char **error);
/* Removes both files and frees it. */
void ox_kept_discard(ox_kept *kept);
/* Frees it and leaves the files, for the next one who looks. */
void ox_kept_leave(ox_kept *kept);

/* Those left behind by owners that are gone, the newest first; each is now locked by the caller,
 * so nobody else finds it. What is left of writing that was interrupted is cleared away. The array
 * frees what is still in it with ox_kept_leave. */
GPtrArray *ox_kept_find(const char *directory);

G_END_DECLS

#endif
