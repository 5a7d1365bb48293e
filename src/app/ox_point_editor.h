/* How a place is given: latitude and longitude in any form, radial and distance, crossing radials;
 * and, for the fix of a case, by name alone or ahead of the aircraft. Changing the way of giving it
 * keeps the place.
 *
 * Signal "edited": the user gave something else; the listener takes ox_point_editor_fix. */
#ifndef OX_POINT_EDITOR_H
#define OX_POINT_EDITOR_H

#include <gtk/gtk.h>

#include "oxbow/fix.h"

G_BEGIN_DECLS

#define OX_TYPE_POINT_EDITOR (ox_point_editor_get_type())
G_DECLARE_FINAL_TYPE(OxPointEditor, ox_point_editor, OX, POINT_EDITOR, GtkWidget)

/* Of the fix of a case, or of a point of the list. */
GtkWidget *ox_point_editor_new(gboolean of_fix);

/* What is shown; copied. place is where it is now, or NULL; ahead_nm what a fix ahead would be
 * proposed at, gs_kt the ground speed. Text that is being typed stays. */
typedef struct {
  const char *name;
  ox_fix fix; /* of a point of the list: OX_FIX_POINT */
  const ox_points *points;
  const ox_latlon *place;
  double ahead_nm, gs_kt;
} ox_point_editor_value;
void ox_point_editor_show(OxPointEditor *self, const ox_point_editor_value *value);

/* What was given last. */
const char *ox_point_editor_name(OxPointEditor *self);
const ox_fix *ox_point_editor_fix(OxPointEditor *self);

/* A sentence below: what is wrong, or what is to be said. Empty: nothing. */
void ox_point_editor_say(OxPointEditor *self, const char *sentence, gboolean wrong);
const char *ox_point_editor_sentence(OxPointEditor *self);

/* For tests: "name", "by", "position", "from", "radial", "nm", "dme", "altitude", "and",
 * "and_radial", "ahead", "declination", "elevation". */
GtkWidget *ox_point_editor_input(OxPointEditor *self, const char *key);

G_END_DECLS

#endif
