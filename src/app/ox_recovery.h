/* Offers what was kept before a crash: once a start, one lesson after the other, in a bar of a
 * window. What is not answered is offered at the next start. */
#ifndef OX_RECOVERY_H
#define OX_RECOVERY_H

#include "ox_window.h"

G_BEGIN_DECLS

typedef struct ox_recovery ox_recovery;

/* Looks into a directory (NULL: ox_kept_directory()). */
ox_recovery *ox_recovery_new(GtkApplication *application, const char *directory);
void ox_recovery_free(ox_recovery *self);
/* Offers the next one in the window; nothing when there is none. */
void ox_recovery_offer(ox_recovery *self, OxWindow *window);

G_END_DECLS

#endif
