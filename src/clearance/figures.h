/* Figures for people, in their language, to be put into a sentence:
 *   clr_put(&t, _("Outbound heading %s."), clr_bearing(&o, 240).text);
 * In figures, or spoken word by word. Private to the clearance. */
#ifndef OX_CLEARANCE_FIGURES_H
#define OX_CLEARANCE_FIGURES_H

#include "text.h"

typedef struct {
  char text[160];
} clr_figure;

clr_figure clr_bearing(const ox_say_options *o, double bearing_deg);
clr_figure clr_whole(const ox_say_options *o, double value);
clr_figure clr_decimal(const ox_say_options *o, double value);
clr_figure clr_altitude(const ox_say_options *o, double altitude_ft);
clr_figure clr_clock(const ox_say_options *o, int minute);
/* "1:07", or spoken "one minute seven seconds". */
clr_figure clr_duration(const ox_say_options *o, double s);
/* "1 1/2 minute legs" */
clr_figure clr_legs(const ox_say_options *o, double leg_s);
/* "100 knots" */
clr_figure clr_knots(const ox_say_options *o, double kt);
/* The holding speed and its limit: the one of the case, else of the wording's table. */
clr_figure clr_holding_speed(const ox_say_options *o, const ox_case *c, const ox_flight *f);
/* "northeast", as in "hold northeast of the fix". Static. */
const char *clr_eighth(double bearing_deg);

#endif
