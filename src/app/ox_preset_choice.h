/* The drop-down of techniques that publications describe, "Own technique" last. */
#ifndef OX_PRESET_CHOICE_H
#define OX_PRESET_CHOICE_H

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A GtkDropDown: position i is the preset i, position ox_preset_count() one's own technique. The
 * list says what each asks for and whose it is; the button is short of room and cuts the name. */
GtkWidget *ox_preset_choice_new(void);

G_END_DECLS

#endif
