/* A handout before it is written or printed: one of its pages, as it will be on paper, and two
 * buttons to turn it over. */
#ifndef OX_HANDOUT_VIEW_H
#define OX_HANDOUT_VIEW_H

#include <gtk/gtk.h>

#include "ox_handout.h"

G_BEGIN_DECLS

#define OX_TYPE_HANDOUT_VIEW (ox_handout_view_get_type())
G_DECLARE_FINAL_TYPE(OxHandoutView, ox_handout_view, OX, HANDOUT_VIEW, GtkWidget)

GtkWidget *ox_handout_view_new(void);

/* Takes it; NULL: none. The page that is shown stays where there is still one. The lesson that it
 * was made from must not change before the next call. */
void ox_handout_view_take(OxHandoutView *self, ox_handout *handout);

/* From 0; and "Page 1 of 3". For tests. */
size_t ox_handout_view_page(OxHandoutView *self);
const char *ox_handout_view_words(OxHandoutView *self);
GtkWidget *ox_handout_view_button(OxHandoutView *self, gboolean next);

G_END_DECLS

#endif
