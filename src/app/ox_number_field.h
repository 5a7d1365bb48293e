/* A number that is typed: what a spin button should have been.
 *
 * It holds the exact value and shows it rounded; losing the focus never rounds the value. Valid
 * typing takes effect at once. Text that is not understood or out of range changes nothing and is
 * explained: the property "message" holds the sentence (NULL: nothing is wrong), the field has
 * the style class "error" and the accessible state INVALID. The wheel works only in the focused
 * field. Enter takes the text and emits "committed"; Escape brings back the value that the field
 * had when it was entered.
 *
 * Signals:
 *   "edited" (double value)  the user gave another acceptable value; a listener that cannot
 *                            take it calls ox_number_field_refuse before it returns
 *   "committed"              Enter, with a good text */
#ifndef OX_NUMBER_FIELD_H
#define OX_NUMBER_FIELD_H

#include <gtk/gtk.h>

#include "ox_number_text.h"

G_BEGIN_DECLS

/* What a field is about. Strings are static. */
typedef struct {
  ox_number_form form;
  const char *unit;    /* shown behind the number; NULL: none */
  const char *units;   /* accepted when typed: "kt|kts|knots"; NULL: none */
  int decimals;        /* most decimals shown */
  double step, page;   /* Up and Down; Page Up and Page Down */
  double min, max;     /* what is accepted, both included */
  gboolean can_be_absent;
  double absent;       /* the value that an empty field stands for, if it can be absent */
  const char *allowed; /* follows "is not": "a course (0 to 360)" */
} ox_number_style;

#define OX_TYPE_NUMBER_FIELD (ox_number_field_get_type())
G_DECLARE_FINAL_TYPE(OxNumberField, ox_number_field, OX, NUMBER_FIELD, GtkWidget)

GtkWidget *ox_number_field_new(const ox_number_style *style);

/* The name for screen readers: of the field, its text and its two buttons. */
void ox_number_field_set_name(OxNumberField *self, const char *name);
/* For an absent value: what the empty field says, and what the first step gives. */
void ox_number_field_set_suggestion(OxNumberField *self, double value, const char *text);

double ox_number_field_get_value(OxNumberField *self);
/* Shows a value from outside. Nothing happens when it is the value already: what is being typed
 * stays. Emits nothing. */
void ox_number_field_set_value(OxNumberField *self, double value);

/* Shows a value whatever is being typed or complained about: another case came into view. */
void ox_number_field_reset(OxNumberField *self, double value);

/* Called by a listener of "edited": the value stays as it was, the reason is shown. */
void ox_number_field_refuse(OxNumberField *self, const char *allowed);

/* Takes the text if it is good (TRUE). If not, says why and, with give_up, shows the kept value
 * again. For Enter, leaving the field, and before saving. */
gboolean ox_number_field_commit(OxNumberField *self, gboolean give_up);

const char *ox_number_field_get_message(OxNumberField *self);
/* The text widget inside, for tests and for focus. */
GtkWidget *ox_number_field_get_text(OxNumberField *self);

G_END_DECLS

#endif
