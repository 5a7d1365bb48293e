/* Events as places to stop at, and the reason in words. */
#include "ox_stops.h"

#include <glib.h>

#include "oxbow/moments.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

/* Events of one instant differ by rounding at most. */
#define SAME_INSTANT_S 1e-6

static bool chosen(const ox_event *event, unsigned kinds) {
  return (kinds >> (unsigned)event->kind & 1U) != 0;
}

size_t ox_stops_make(const ox_flight *flight, unsigned kinds, double *out) {
  size_t count = 0;
  for (size_t i = 0; i < flight->event_count; i++) {
    const ox_event *event = &flight->events[i];
    if (!chosen(event, kinds)) continue;
    if (count > 0 && event->t_s - out[count - 1] <= SAME_INSTANT_S) continue;
    out[count++] = event->t_s;
  }
  return count;
}

void ox_stops_words(char *out, size_t bytes, const ox_flight *flight, unsigned kinds, double t_s) {
  char clock[24], events[160] = "";
  out[0] = '\0';
  for (size_t i = 0; i < flight->event_count; i++) {
    const ox_event *event = &flight->events[i];
    if (!chosen(event, kinds) || event->t_s < t_s - SAME_INSTANT_S ||
        event->t_s > t_s + SAME_INSTANT_S)
      continue;
    if (events[0]) g_strlcat(events, ", ", sizeof events);
    g_strlcat(events, ox_moments_event(event->kind), sizeof events);
  }
  if (!events[0]) return;
  ox_words_min_s(clock, sizeof clock, t_s);
  /* translators: the events where playing stopped, and the time */
  g_snprintf(out, (gulong)bytes, _("Stopped: %s, %s"), events, clock);
}
