/* The page of words: a clearance that is typed or pasted, understood between the keystrokes, and
 * what is said of the case.
 *
 * Words that were understood are underlined, each sense in its own way and hue; the caret or the
 * pointer in one of them tells which part of the picture it means. What was typed belongs to this
 * page and not to the lesson; "Use It" puts what it means into the case, as one step.
 *
 * Signals:
 *   "worded"  another wording was chosen
 *   "pointed" (int feature)  the caret or the pointer is at words that mean this ox_feature */
#ifndef OX_WORDS_PANEL_H
#define OX_WORDS_PANEL_H

#include <gtk/gtk.h>

#include "ox_document.h"
#include "ox_feature.h"

G_BEGIN_DECLS

#define OX_TYPE_WORDS_PANEL (ox_words_panel_get_type())
G_DECLARE_FINAL_TYPE(OxWordsPanel, ox_words_panel, OX, WORDS_PANEL, GtkWidget)

/* Holds a reference. */
void ox_words_panel_set_document(OxWordsPanel *self, OxDocument *document);
/* Phraseology of the United States or of ICAO; the one that is chosen on the page is told
 * by the signal. */
void ox_words_panel_set_wording(OxWordsPanel *self, ox_wording wording);
ox_wording ox_words_panel_wording(OxWordsPanel *self);
/* The other way round: words that mean this part are marked. */
void ox_words_panel_mark_feature(OxWordsPanel *self, ox_feature feature);

/* What is understood of the text at the moment; belongs to the panel. */
const ox_clearance *ox_words_panel_reading(OxWordsPanel *self);
/* Widgets, for tests and for the focus. */
GtkTextView *ox_words_panel_entry(OxWordsPanel *self);
GtkWidget *ox_words_panel_use_button(OxWordsPanel *self);
const char *ox_words_panel_meaning(OxWordsPanel *self);
/* Sentences listed: questions and remarks. */
guint ox_words_panel_listed(OxWordsPanel *self);

/* What is said of where the fix is; empty: nothing. */
const char *ox_words_panel_place(OxWordsPanel *self);

G_END_DECLS

#endif
