/* A board that only shows: another case beside the shown one, in step with the player. */
#ifndef OX_CASE_VIEW_H
#define OX_CASE_VIEW_H

#include <gtk/gtk.h>

#include "ox_player.h"
#include "oxbow/picture.h"

G_BEGIN_DECLS

#define OX_TYPE_CASE_VIEW (ox_case_view_get_type())
G_DECLARE_FINAL_TYPE(OxCaseView, ox_case_view, OX, CASE_VIEW, GtkWidget)

/* Holds a reference to the player. */
GtkWidget *ox_case_view_new(OxPlayer *player);

/* What is shown: copied. palette, text_scale, view and fit are those of the board beside it. */
void ox_case_view_show(OxCaseView *self, const ox_case *c, const ox_flight *flight,
                       const ox_scene *like, const ox_fit *fit);
/* What was shown last; borrowed until the next. */
const ox_scene *ox_case_view_scene(OxCaseView *self);
/* Where the world is on it; FALSE: there is no picture. */
gboolean ox_case_view_get_viewport(OxCaseView *self, ox_viewport *out);

/* Layouts of the picture, and drawings of what moves: for tests. */
typedef struct {
  guint layouts, moving;
} ox_case_view_counts;
ox_case_view_counts ox_case_view_get_counts(OxCaseView *self);

G_END_DECLS

#endif
