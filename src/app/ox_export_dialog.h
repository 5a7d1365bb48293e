/* The options of an export, before its file is chosen: what, in which format and size, and in which
 * colours. Only what means something for the choice is shown; what cannot be done says why.
 *
 * Signal:
 *   "chosen"  the choice stands and the file is to be chosen; the dialog closes itself after it */
#ifndef OX_EXPORT_DIALOG_H
#define OX_EXPORT_DIALOG_H

#include <gtk/gtk.h>

#include "ox_handout_rows.h"
#include "ox_handout_view.h"
#include "ox_share_choice.h"
#include "ox_snapshot.h"

G_BEGIN_DECLS

/* What the dialog is to know of the lesson. Copied. */
typedef struct {
  const char *refusals[OX_SHARE_WHAT_COUNT]; /* why something cannot be exported, or NULL */
  ox_snapshot *lesson; /* a reference is taken */
  double flight_s; /* how long the shown case is flown */
} ox_export_facts;

#define OX_TYPE_EXPORT_DIALOG (ox_export_dialog_get_type())
G_DECLARE_FINAL_TYPE(OxExportDialog, ox_export_dialog, OX, EXPORT_DIALOG, GtkWindow)

/* Modal over parent; not shown yet. */
GtkWidget *ox_export_dialog_new(GtkWindow *parent, const ox_export_facts *facts,
                                const ox_share_choice *choice);

ox_share_choice ox_export_dialog_choice(OxExportDialog *self);
/* Which cases a handout has, for each of the lesson; borrowed. */
const gboolean *ox_export_dialog_wanted(OxExportDialog *self);
/* What it comes to, or why it cannot be; for tests. */
const char *ox_export_dialog_sentence(OxExportDialog *self);

/* The inputs, for tests: "what", "format", "unit", "width", "height", "paper", "colours",
 * "transparent", "marks", "speed", "fps", "choose". NULL for another key. */
GtkWidget *ox_export_dialog_input(OxExportDialog *self, const char *key);
OxHandoutRows *ox_export_dialog_handout(OxExportDialog *self);
OxHandoutView *ox_export_dialog_page(OxExportDialog *self);

G_END_DECLS

#endif
