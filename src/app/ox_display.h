/* What the window says, as pure functions of values: no widget, no state. */
#ifndef OX_DISPLAY_H
#define OX_DISPLAY_H

#include <stddef.h>

#include "oxbow/fields.h"
#include "oxbow/flight.h"

/* The words that people choose from, in the order of the field's choices, NULL-terminated; NULL
 * for a field that is not a choice. Static. */
const char *const *ox_display_choices(const ox_field *field);

/* How much of it is said: all, "1:02 outbound, circuit 1"; without the circuit; the clock alone. */
typedef enum {
  OX_INSTANT_WHOLE, OX_INSTANT_LEG, OX_INSTANT_CLOCK, OX_INSTANT_FORMS
} ox_instant_form;

/* Where the flight is at an instant (s), in whole. */
void ox_display_instant(char *out, size_t bytes, const ox_flight *flight, double t_s);
/* An instant of a leg; circuit 0: none. */
void ox_display_leg(char *out, size_t bytes, ox_leg_kind kind, int circuit, double t_s,
                    ox_instant_form form);

/* The time (s) of the nearest event after (step > 0) or before (step < 0) an instant, the two ends
 * of the flight included; the instant itself when there is none. Events within 10 ms of t_s are
 * where one is, not where one goes. */
double ox_display_next_event_s(const ox_flight *flight, double t_s, int step);

/* Title of a window: "Title", "Title •" with changes, "Title (read only)". */
void ox_display_window_title(char *out, size_t bytes, const char *title, int modified,
                             int read_only);

#endif
