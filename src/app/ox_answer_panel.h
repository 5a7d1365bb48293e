/* The student's side of predict, then see: what is asked for, and after the flight each answer
 * beside what was flown. */
#ifndef OX_ANSWER_PANEL_H
#define OX_ANSWER_PANEL_H

#include <gtk/gtk.h>

#include "ox_prediction.h"

G_BEGIN_DECLS

#define OX_TYPE_ANSWER_PANEL (ox_answer_panel_get_type())
G_DECLARE_FINAL_TYPE(OxAnswerPanel, ox_answer_panel, OX, ANSWER_PANEL, GtkWidget)

/* Holds a reference. */
GtkWidget *ox_answer_panel_new(OxPrediction *prediction);

/* Takes what is being typed. */
void ox_answer_panel_commit(OxAnswerPanel *self);
/* The focus to the first thing asked for. */
void ox_answer_panel_grab(OxAnswerPanel *self);

/* The editors, for tests: the three entries by ox_entry_kind; "first", "heading" and "time". */
GtkWidget *ox_answer_panel_entry(OxAnswerPanel *self, ox_entry_kind kind);
GtkWidget *ox_answer_panel_field(OxAnswerPanel *self, const char *name);
/* How many comparisons are shown. */
size_t ox_answer_panel_result_count(OxAnswerPanel *self);

G_END_DECLS

#endif
