/* The cases that the shown one is compared with: one or two, each another case of the lesson or
 * the shown one with one thing changed.
 *
 * A GObject without GTK, like the overlays: what is chosen is solved when it is first asked for
 * after a change, and only then. A choice that there is not at the moment (a case that is shown or
 * deleted, a change that changes nothing) stays chosen and is left out meanwhile.
 *
 * Signals:
 *   "changed"  another choice, or other layout; not emitted when the document changes, which its
 *              listeners hear from the document itself */
#ifndef OX_COMPANIONS_H
#define OX_COMPANIONS_H

#include "ox_document.h"
#include "oxbow/differences.h"
#include "oxbow/picture.h"
#include "oxbow/variants.h"

G_BEGIN_DECLS

typedef enum { OX_COMPANION_NONE, OX_COMPANION_VARIANT, OX_COMPANION_CASE } ox_companion_kind;
typedef struct {
  ox_companion_kind kind;
  guint index; /* an ox_variant, or a case of the lesson */
} ox_companion;

#define OX_TYPE_COMPANIONS (ox_companions_get_type())
G_DECLARE_FINAL_TYPE(OxCompanions, ox_companions, OX, COMPANIONS, GObject)

/* Holds a reference to the document. To be made before listeners of the document that ask for
 * companions. */
OxCompanions *ox_companions_new(OxDocument *document);

/* place is 0 or 1. */
void ox_companions_choose(OxCompanions *self, guint place, ox_companion choice);
ox_companion ox_companions_chosen(OxCompanions *self, guint place);
/* Over the shown case on its board, or each on a board of its own beside it. */
void ox_companions_set_beside(OxCompanions *self, gboolean beside);
gboolean ox_companions_beside(OxCompanions *self);

/* Those that there are now; they belong to the companions until the next change. */
const ox_scene_other *ox_companions_others(OxCompanions *self, size_t *count);
/* The table of the shown case and its companions; count 0 without companions. Belongs to the
 * companions likewise. */
const ox_differences *ox_companions_table(OxCompanions *self);

/* How often flights were solved and the table was made: for tests. */
typedef struct {
  guint flights, tables;
} ox_companion_counts;
ox_companion_counts ox_companions_get_counts(OxCompanions *self);

G_END_DECLS

#endif
