/* The values of the handles in words. Figures are made of whole numbers, for printf's %f follows
 * the locale. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "oxbow/angle.h"
#include "values.h"

typedef struct {
  char text[24];
} figure;

/* At most one decimal, none where it is nought. */
static figure number(double value) {
  figure f;
  long tenths = lround(value * 10.0);
  if (tenths % 10 == 0)
    snprintf(f.text, sizeof f.text, "%ld", tenths / 10);
  else
    snprintf(f.text, sizeof f.text, "%ld.%ld", tenths / 10, labs(tenths % 10));
  return f;
}

/* Three figures as spoken, and the tenth where somebody entered one: 007, 240.5. */
static figure bearing(double deg) {
  figure f;
  long tenths = lround(handles_circle_deg(deg) * 10.0) % 3600;
  if (tenths % 10 == 0)
    snprintf(f.text, sizeof f.text, "%03ld", tenths == 0 ? 360 : tenths / 10);
  else
    snprintf(f.text, sizeof f.text, "%03ld.%ld", tenths / 10, tenths % 10);
  return f;
}

static void leg_words(char *buf, size_t bytes, const ox_case *c, const ox_setup *s) {
  double leg = handles_leg(c, s);
  if (c->hold.leg_by == OX_LEG_BY_DISTANCE) {
    snprintf(buf, bytes, "%s NM %s", number(leg).text,
             c->hold.leg_end == OX_LEG_END_INBOUND ? "inbound" : "outbound");
    return;
  }
  long tenths = lround(leg * 10.0), whole = tenths / 10;
  const char *which = c->technique.timing == OX_TIMING_OUTBOUND ? "outbound" : "inbound";
  if (tenths % 10 == 0)
    snprintf(buf, bytes, "%ld:%02ld %s", whole / 60, whole % 60, which);
  else
    snprintf(buf, bytes, "%ld:%02ld.%ld %s", whole / 60, whole % 60, tenths % 10, which);
}

void ox_handle_words(char *buf, size_t bytes, ox_handle h, const ox_case *c,
                     const ox_flight *flight) {
  const ox_setup *s = &flight->setup;
  switch (h) {
  case OX_HANDLE_FIX:
    snprintf(buf, bytes, "%s", c->hold.fix[0] ? c->hold.fix : "without a name");
    return;
  case OX_HANDLE_INBOUND:
    snprintf(buf, bytes, "%s° magnetic", bearing(c->hold.inbound_deg).text);
    return;
  case OX_HANDLE_ARRIVAL:
    snprintf(buf, bytes, "%s° magnetic", bearing(c->arrival.heading_deg).text);
    return;
  case OX_HANDLE_WIND_FROM:
    snprintf(buf, bytes, "from %s° %s, %s kt", bearing(handles_wind_from_deg(c, s)).text,
             handles_wind_north(c) == OX_NORTH_MAGNETIC ? "magnetic" : "true",
             number(handles_wind_kt(c, s)).text);
    return;
  case OX_HANDLE_WIND_KT:
    snprintf(buf, bytes, "%s kt", number(handles_wind_kt(c, s)).text);
    return;
  case OX_HANDLE_OUTBOUND:
    leg_words(buf, bytes, c, s);
    return;
  case OX_HANDLE_TURNS:
    snprintf(buf, bytes, "%s turns", c->hold.turns == OX_TURNS_LEFT ? "left" : "right");
    return;
  case OX_HANDLE_COUNT:
    break;
  }
  if (bytes > 0) buf[0] = '\0';
}
