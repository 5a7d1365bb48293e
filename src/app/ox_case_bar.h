/* The list of the lesson's cases: choose one, go to the previous or the next. */
#ifndef OX_CASE_BAR_H
#define OX_CASE_BAR_H

#include <gtk/gtk.h>

#include "ox_document.h"
#include "ox_prediction.h"

G_BEGIN_DECLS

#define OX_TYPE_CASE_BAR (ox_case_bar_get_type())
G_DECLARE_FINAL_TYPE(OxCaseBar, ox_case_bar, OX, CASE_BAR, GtkWidget)

/* While its answer is hidden the list shows no names. Before the document; holds a reference. */
void ox_case_bar_set_prediction(OxCaseBar *self, OxPrediction *prediction);
/* Holds a reference. */
void ox_case_bar_set_document(OxCaseBar *self, OxDocument *document);

G_END_DECLS

#endif
