/* The window of published holds: a file of records, a search, and the holds it leaves, one of which
 * becomes a case. It keeps file and search while it is hidden.
 *
 * A file is indexed where it is opened: 50 MB take a fraction of a second (tests/bench). Signal
 * "chosen" (gsize index): the user wants that hold; ox_published_data is its file. */
#ifndef OX_PUBLISHED_H
#define OX_PUBLISHED_H

#include <gtk/gtk.h>

#include "ox_settings.h"
#include "oxbow/navdata.h"

G_BEGIN_DECLS

#define OX_TYPE_PUBLISHED (ox_published_get_type())
G_DECLARE_FINAL_TYPE(OxPublished, ox_published, OX, PUBLISHED, GtkWindow)

/* settings (NULL: nothing is remembered) keep the place of the file. */
OxPublished *ox_published_new(GtkWindow *parent, OxSettings *settings);

/* Takes another file; FALSE, and a sentence, when it cannot be read: the one before stays. */
gboolean ox_published_open(OxPublished *self, const char *path);
/* The file of last time, where there is one and none is open yet. */
void ox_published_open_remembered(OxPublished *self);
const ox_navdata *ox_published_data(OxPublished *self); /* or NULL */

/* Shows it with the search selected, to be typed over. */
void ox_published_present(OxPublished *self);
/* A sentence above the list, which closes it again; "" takes it away. */
void ox_published_say(OxPublished *self, const char *sentence);

/* For tests: what is shown. */
GtkEditable *ox_published_search(OxPublished *self);
GListModel *ox_published_rows(OxPublished *self);
GtkWidget *ox_published_view(OxPublished *self);    /* a GtkColumnView */
const char *ox_published_words(OxPublished *self);  /* the line below the list */
const char *ox_published_sentence(OxPublished *self);

G_END_DECLS

#endif
