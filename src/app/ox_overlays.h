/* What is laid over the picture for comparison: the exact hold or a deliberate mistake, the
 * protected area, the spread of many flights. Belongs to a document and follows its case.
 *
 * A GObject without GTK. Each overlay is computed when it is on and first asked for after the case
 * changed, and only then. The spread is flown on a worker thread; what arrives for a case that has
 * changed meanwhile is thrown away and flown again.
 *
 * Signals:
 *   "changed"  another choice, or the spread has arrived; not emitted when the document changes,
 *              which its listeners hear from the document itself */
#ifndef OX_OVERLAYS_H
#define OX_OVERLAYS_H

#include "ox_companions.h"
#include "ox_document.h"
#include "oxbow/area.h"
#include "oxbow/spread.h"

G_BEGIN_DECLS

#define OX_SPREAD_RUNS 500

/* What is compared with; an ox_mistake from 0 on. */
enum {
  OX_COMPARE_SAID = -4,  /* as the words of a clearance say that is not used yet */
  OX_COMPARE_SHOWN = -3, /* as the equipment would fly it (crosscheck.h) */
  OX_COMPARE_NOTHING = -2,
  OX_COMPARE_EXACT = -1
};

#define OX_TYPE_OVERLAYS (ox_overlays_get_type())
G_DECLARE_FINAL_TYPE(OxOverlays, ox_overlays, OX, OVERLAYS, GObject)

/* Holds a reference to the document. To be made before other listeners of the document, so that
 * they find no overlay of the case before. */
OxOverlays *ox_overlays_new(OxDocument *document);

void ox_overlays_set_compare(OxOverlays *self, int compare);
int ox_overlays_compare(OxOverlays *self);
/* What the words say, copied; NULL: nothing. */
void ox_overlays_set_said(OxOverlays *self, const ox_case *said);
void ox_overlays_show_area(OxOverlays *self, gboolean shown);
gboolean ox_overlays_area_shown(OxOverlays *self);
void ox_overlays_show_spread(OxOverlays *self, gboolean shown);
gboolean ox_overlays_spread_shown(OxOverlays *self);

/* The cases compared with; "changed" is emitted for theirs too. Belongs to the overlays. */
OxCompanions *ox_overlays_companions(OxOverlays *self);

/* Each belongs to the overlays until their "changed" or the document's; NULL: none. The flight to
 * compare with is NULL for a mistake that does not show in this case, and where the equipment shows
 * or the words say no other track; *name is set with it. */
const ox_flight *ox_overlays_flight(OxOverlays *self, const char **name);
const ox_area *ox_overlays_area(OxOverlays *self);
const ox_spread *ox_overlays_spread(OxOverlays *self); /* NULL as well while it is being flown */

/* What the overlays say, a paragraph for each, NULL-terminated; empty when none is on. Belongs to
 * the overlays as above. */
const char *const *ox_overlays_sentences(OxOverlays *self);

/* How often each was computed: for tests. */
typedef struct {
  guint flights, areas, spreads, sentences;
} ox_overlay_counts;
ox_overlay_counts ox_overlays_get_counts(OxOverlays *self);

G_END_DECLS

#endif
