/* Keeps the unsaved changes of a document safe: written within OX_AUTOSAVE_DELAY_MS of the first
 * change that is not kept yet, on a thread of its own, also for lessons that never had a file.
 * Gone as soon as there is nothing unsaved any more.
 *
 * A GObject without GTK.
 * Signals:
 *   "failed" (const char *why)  the work could not be kept; said once until it can be again */
#ifndef OX_AUTOSAVE_H
#define OX_AUTOSAVE_H

#include "ox_document.h"
#include "ox_kept.h"

G_BEGIN_DECLS

#define OX_AUTOSAVE_DELAY_MS 800

#define OX_TYPE_AUTOSAVE (ox_autosave_get_type())
G_DECLARE_FINAL_TYPE(OxAutosave, ox_autosave, OX, AUTOSAVE, GObject)

/* Watches the document, to which it holds a reference. directory NULL: ox_kept_directory(). */
OxAutosave *ox_autosave_new(OxDocument *document, const char *directory);

/* Goes on with what was found after a crash and has just been put into the document: its files
 * stay until others have taken their place. Takes it. */
void ox_autosave_adopt(OxAutosave *self, ox_kept *kept);

/* Ends the watch and removes what was kept: the lesson was saved, or its changes given up. Waits
 * for a writing on its way. Called by the last unref as well. */
void ox_autosave_stop(OxAutosave *self);

/* Where the work is kept now, or NULL; and how often it was written: for tests. */
const char *ox_autosave_path(OxAutosave *self);
guint ox_autosave_count(OxAutosave *self);

G_END_DECLS

#endif
