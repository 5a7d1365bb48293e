/* The application: windows, files from the command line, appearance, About. */
#ifndef OX_APPLICATION_H
#define OX_APPLICATION_H

#include <gtk/gtk.h>

#include "ox_settings.h"

G_BEGIN_DECLS

#define OX_TYPE_APPLICATION (ox_application_get_type())
G_DECLARE_FINAL_TYPE(OxApplication, ox_application, OX, APPLICATION, GtkApplication)

/* flags are added to those for opening files; for tests G_APPLICATION_NON_UNIQUE. */
OxApplication *ox_application_new(GApplicationFlags flags);
OxSettings *ox_application_settings(OxApplication *self); /* borrowed */

G_END_DECLS

#endif
