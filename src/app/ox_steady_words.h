/* Words whose room grows but does not shrink: a change that fits is drawn and nothing else, while a
 * label would have the whole window laid out anew, at every step of a drag. */
#ifndef OX_STEADY_WORDS_H
#define OX_STEADY_WORDS_H

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define OX_TYPE_STEADY_WORDS (ox_steady_words_get_type())
G_DECLARE_FINAL_TYPE(OxSteadyWords, ox_steady_words, OX, STEADY_WORDS, GtkWidget)

GtkWidget *ox_steady_words_new(void);
/* One line or more. "": nothing, and the room is given up. */
void ox_steady_words_set(OxSteadyWords *self, const char *words);
const char *ox_steady_words_get(OxSteadyWords *self);

G_END_DECLS

#endif
