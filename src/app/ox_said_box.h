/* What is said of the case: one of several texts, to read, select and copy. */
#ifndef OX_SAID_BOX_H
#define OX_SAID_BOX_H

#include <gtk/gtk.h>

#include "ox_document.h"
#include "oxbow/clearance.h"

G_BEGIN_DECLS

#define OX_TYPE_SAID_BOX (ox_said_box_get_type())
G_DECLARE_FINAL_TYPE(OxSaidBox, ox_said_box, OX, SAID_BOX, GtkWidget)

/* Holds a reference. */
void ox_said_box_set_document(OxSaidBox *self, OxDocument *document);
void ox_said_box_set_wording(OxSaidBox *self, ox_wording wording);
/* The words that the hold of the document came out of: copied; they count while it is theirs. */
void ox_said_box_set_heard(OxSaidBox *self, const ox_clearance *heard);
/* Which text (an ox_said), and whether as spoken. */
void ox_said_box_choose(OxSaidBox *self, guint said, gboolean spoken);
/* The text shown. Freed with g_free. */
char *ox_said_box_text(OxSaidBox *self);

G_END_DECLS

#endif
