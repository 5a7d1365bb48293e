/* The window of preferences: each row takes effect in every window as soon as it is chosen, and
 * shows what is chosen elsewhere. */
#ifndef OX_PREFERENCES_H
#define OX_PREFERENCES_H

#include <gtk/gtk.h>

#include "ox_preference.h"

G_BEGIN_DECLS

#define OX_TYPE_PREFERENCES (ox_preferences_get_type())
G_DECLARE_FINAL_TYPE(OxPreferences, ox_preferences, OX, PREFERENCES, GtkWindow)

/* Holds a reference to the settings. */
GtkWidget *ox_preferences_new(GtkApplication *application, OxSettings *settings);

/* For tests: the drop-down of a row, and the button that resets all. */
GtkWidget *ox_preferences_input(OxPreferences *self, ox_preference which);
GtkWidget *ox_preferences_reset_button(OxPreferences *self);

G_END_DECLS

#endif
