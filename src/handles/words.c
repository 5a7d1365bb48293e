/* The values of the handles in words. Figures are made of whole numbers and the decimal point of
 * the language, for printf's %f follows the locale. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "oxbow/angle.h"
#include "oxbow/text.h"
#include "values.h"

typedef struct {
  char text[32];
} figure;

/* At most one decimal, none where it is nought. */
static figure number(double value) {
  figure f;
  long tenths = lround(value * 10.0);
  if (tenths % 10 == 0)
    snprintf(f.text, sizeof f.text, "%ld", tenths / 10);
  else
    snprintf(f.text, sizeof f.text, "%ld%s%ld", tenths / 10, ox_text_decimal(),
             labs(tenths % 10));
  return f;
}

/* Three figures as spoken, and the tenth where somebody entered one: 007, 240.5. */
static figure bearing(double deg) {
  figure f;
  long tenths = lround(handles_circle_deg(deg) * 10.0) % 3600;
  if (tenths % 10 == 0)
    snprintf(f.text, sizeof f.text, "%03ld", tenths == 0 ? 360 : tenths / 10);
  else
    snprintf(f.text, sizeof f.text, "%03ld%s%ld", tenths / 10, ox_text_decimal(), tenths % 10);
  return f;
}

/* Minutes and seconds, and the tenth where there is one: 1:00, 1:02.5. */
static figure clock(double s) {
  figure f;
  long tenths = lround(s * 10.0), whole = tenths / 10;
  if (tenths % 10 == 0)
    snprintf(f.text, sizeof f.text, "%ld:%02ld", whole / 60, whole % 60);
  else
    snprintf(f.text, sizeof f.text, "%ld:%02ld%s%ld", whole / 60, whole % 60, ox_text_decimal(),
             tenths % 10);
  return f;
}

static void leg_words(char *buf, size_t bytes, const ox_case *c, const ox_setup *s) {
  double leg = handles_leg(c, s);
  if (c->hold.leg_by == OX_LEG_BY_DISTANCE) {
    bool inbound = c->hold.leg_end == OX_LEG_END_INBOUND;
    snprintf(buf, bytes, inbound ? _("%s NM inbound") : _("%s NM outbound"), number(leg).text);
    return;
  }
  bool outbound = c->technique.timing == OX_TIMING_OUTBOUND;
  /* translators: a time such as 1:00 on the outbound or the inbound leg */
  snprintf(buf, bytes, outbound ? _("%s outbound") : _("%s inbound"), clock(leg).text);
}

void ox_handle_words(char *buf, size_t bytes, ox_handle h, const ox_case *c,
                     const ox_flight *flight) {
  const ox_setup *s = &flight->setup;
  switch (h) {
  case OX_HANDLE_FIX:
    snprintf(buf, bytes, "%s", c->hold.fix[0] ? c->hold.fix : _("without a name"));
    return;
  case OX_HANDLE_INBOUND:
    snprintf(buf, bytes, _("%s° magnetic"), bearing(c->hold.inbound_deg).text);
    return;
  case OX_HANDLE_ARRIVAL:
    snprintf(buf, bytes, _("%s° magnetic"), bearing(c->arrival.heading_deg).text);
    return;
  case OX_HANDLE_WIND_FROM:
    snprintf(buf, bytes,
             handles_wind_north(c) == OX_NORTH_MAGNETIC ? _("from %s° magnetic, %s kt")
                                                        : _("from %s° true, %s kt"),
             bearing(handles_wind_from_deg(c, s)).text, number(handles_wind_kt(c, s)).text);
    return;
  case OX_HANDLE_WIND_KT:
    snprintf(buf, bytes, "%s kt", number(handles_wind_kt(c, s)).text);
    return;
  case OX_HANDLE_OUTBOUND:
    leg_words(buf, bytes, c, s);
    return;
  case OX_HANDLE_TURNS:
    snprintf(buf, bytes, "%s",
             c->hold.turns == OX_TURNS_LEFT ? _("left turns") : _("right turns"));
    return;
  case OX_HANDLE_COUNT:
    break;
  }
  if (bytes > 0) buf[0] = '\0';
}
