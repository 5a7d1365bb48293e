/* What a step of the history is called in "Undo …". */
#ifndef OX_STEP_NAME_H
#define OX_STEP_NAME_H

#include <glib.h>

#include "oxbow/case.h"

G_BEGIN_DECLS

/* "Inbound Course": the first input of the panel, in the table's order of fields, in which the two
 * differ; where several of one group do, the group ("Technique"). Freed with g_free. */
char *ox_step_name(const ox_case *before, const ox_case *after);

/* A label of the panel ("_Inbound course") as headings write it ("Inbound Course"). */
char *ox_step_name_of_label(const char *label);

G_END_DECLS

#endif
