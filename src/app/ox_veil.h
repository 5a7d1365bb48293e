/* Why a widget is not to be seen. The person who uses the window, the classroom display and a
 * hidden answer each have a reason of their own, and come and go in any order: a widget is visible
 * while nobody has one. */
#ifndef OX_VEIL_H
#define OX_VEIL_H

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef enum {
  OX_VEIL_CLOSED = 1 << 0,    /* put away by its own action */
  OX_VEIL_CLASSROOM = 1 << 1, /* the display shows no controls */
  OX_VEIL_ANSWER = 1 << 2,    /* it would tell what a student is asked for */
  OX_VEIL_NO_ROOM = 1 << 3,   /* the window is too narrow for it as well */
} ox_veil;

/* A widget that was not visible before the first call counts as closed. */
void ox_veil_set(GtkWidget *widget, ox_veil reason, gboolean hidden);

G_END_DECLS

#endif
