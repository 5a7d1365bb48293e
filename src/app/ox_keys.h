/* Every key of the window in one table: the accelerators, the keys of board and time line, and
 * what the shortcuts window must say. */
#ifndef OX_KEYS_H
#define OX_KEYS_H

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef enum {
  OX_KEYS_EVERYWHERE, /* an accelerator */
  OX_KEYS_WINDOW,     /* where the focused widget has no use of its own for the key */
  OX_KEYS_CASES,      /* only while the list of cases has the focus */
  OX_KEYS_CLASSROOM, /* in the classroom display, before anything else */
  OX_KEYS_PICTURE,    /* only while the board, or what lies over it, has the focus */
  OX_KEYS_FLIGHT,     /* only while the board or the transport bar has the focus */
} ox_keys_scope;

typedef struct {
  ox_keys_scope scope;
  const char *action;  /* "win.save" */
  const char *keys[3]; /* as GTK writes them, NULL-terminated */
} ox_key;

/* Static. */
const ox_key *ox_keys(size_t *count);

void ox_keys_set_accelerators(GtkApplication *application);
/* Adds the keys of a scope to a widget, which owns the controller. */
GtkEventController *ox_keys_add(GtkWidget *widget, ox_keys_scope scope, GtkPropagationPhase phase);

G_END_DECLS

#endif
