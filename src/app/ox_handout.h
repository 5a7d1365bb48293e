/* A handout out of a lesson: which cases, how they stand on the page, and the pages. What the
 * dialogs preview, what is printed and what is written is the same drawing as that of the command
 * line. Needs no display. */
#ifndef OX_HANDOUT_H
#define OX_HANDOUT_H

#include <glib.h>

#include "ox_settings.h"
#include "oxbow/lesson.h"
#include "oxbow/sheets.h"

G_BEGIN_DECLS

#define OX_HANDOUT_SEED_MOST 999999

typedef struct {
  int per_page;      /* 1, 2 or 4 */
  gboolean shuffled; /* the order comes from the seed */
  guint seed;        /* 0 to OX_HANDOUT_SEED_MOST */
} ox_handout_choice;

/* Two a page, in the order of the lesson. */
ox_handout_choice ox_handout_choice_default(void);
/* What was chosen last; what makes no sense is as in the default. */
ox_handout_choice ox_handout_choice_recall(OxSettings *settings);
void ox_handout_choice_remember(const ox_handout_choice *choice, OxSettings *settings);

typedef struct ox_handout ox_handout;

/* wanted: whether each case of the lesson is in it, or NULL for all. The lesson is borrowed and
 * stays as it is. Freed with ox_handout_free. */
ox_handout *ox_handout_new(const ox_lesson *lesson, const gboolean *wanted,
                           const ox_handout_choice *choice, ox_sheets_kind kind, ox_paper paper,
                           gboolean across);
void ox_handout_free(ox_handout *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(ox_handout, ox_handout_free)

size_t ox_handout_holds(const ox_handout *self); /* 0: nothing can be drawn */
size_t ox_handout_pages(const ox_handout *self);
/* Of a page, in points. */
ox_vec ox_handout_size(const ox_handout *self);

/* A page, from 0, in points from the upper left corner; as ox_sheets_draw. */
ox_status ox_handout_draw(const ox_handout *self, cairo_t *cr, size_t page, const char **error);
/* All of it as a PDF; as ox_sheets_make. */
ox_status ox_handout_make(const ox_handout *self, ox_export_sink sink, void *context,
                          const char **error);

G_END_DECLS

#endif
