/* What the window says, worked out from values so that it can be tested as text. */
#include "ox_display.h"

#include <string.h>

#include <glib.h>

#include "oxbow/words.h"

#define SAME_EVENT_S 0.01

static const struct {
  const char *key;
  const char *const *words;
} choices[] = {
    {"hold.turns", (const char *const[]){"Right", "Left", NULL}},
    {"hold.leg.by", (const char *const[]){"Time", "Distance", NULL}},
    {"hold.leg.end", (const char *const[]){"Outbound end", "Inbound length", NULL}},
    {"hold.ends", (const char *const[]){"After circuits", "Once inbound", "At altitude",
                                        "At the EFC", NULL}},
    {"aircraft.turn_by", (const char *const[]){"Lesser bank", "Bank limit", NULL}},
    {"technique.timing", (const char *const[]){"Inbound leg", "Outbound leg", NULL}},
    {"technique.clock",
     (const char *const[]){"Abeam or level", "Abeam the fix", "Wings level", NULL}},
    {"technique.drift", (const char *const[]){"None", "Single", "Double", "Triple", "Exact",
                                              "Parallel track", NULL}},
    {"technique.outbound",
     (const char *const[]){"Nominal", "Adjusted", "1 s a knot", "Exact", NULL}},
    {"technique.entry",
     (const char *const[]){"By sector", "Direct", "Parallel", "Teardrop", NULL}},
    {"technique.sector", (const char *const[]){"Heading", "Track", NULL}},
    {"technique.entry_line", (const char *const[]){"Headings", "Tracks", NULL}},
    {"fuel.unit", (const char *const[]){"lb", "kg", "US gal", "litres", NULL}},
    {"lost_radio.limit_starts_approach", (const char *const[]){"Not said", "Yes", "No", NULL}},
    {"shown.direction",
     (const char *const[]){"Not shown", "North", "North-east", "East", "South-east", "South",
                           "South-west", "West", "North-west", NULL}},
    {"shown.course_is", (const char *const[]){"Inbound", "Outbound", NULL}},
    {"shown.turns", (const char *const[]){"Not shown", "Right", "Left", NULL}},
    {"technique.lead", (const char *const[]){"In time", "On crossing", "By degrees", NULL}},
    {"technique.at_radial", (const char *const[]){"Turn inbound", "Follow it", NULL}},
    {"north", (const char *const[]){"True", "Magnetic", NULL}},
};

const char *const *ox_display_choices(const ox_field *field) {
  for (size_t i = 0; i < G_N_ELEMENTS(choices); i++)
    if (strcmp(choices[i].key, field->key) == 0) return choices[i].words;
  return NULL;
}

void ox_display_instant(char *out, size_t bytes, const ox_flight *flight, double t_s) {
  char clock[24];
  if (flight->leg_count == 0) {
    g_strlcpy(out, "No flight", bytes);
    return;
  }
  const ox_leg *leg = &flight->legs[ox_flight_leg_index(flight, t_s)];
  ox_words_min_s(clock, sizeof clock, t_s);
  if (leg->circuit > 0)
    g_snprintf(out, (gulong)bytes, "%s %s, circuit %d", clock, ox_leg_name(leg->kind),
               leg->circuit);
  else
    g_snprintf(out, (gulong)bytes, "%s %s", clock, ox_leg_name(leg->kind));
}

double ox_display_next_event_s(const ox_flight *flight, double t_s, int step) {
  double best_s = step > 0 ? ox_flight_end_s(flight) : ox_flight_begin_s(flight);
  for (size_t i = 0; i < flight->event_count; i++) {
    double at_s = flight->events[i].t_s;
    if (step > 0 && at_s > t_s + SAME_EVENT_S && at_s < best_s) best_s = at_s;
    if (step < 0 && at_s < t_s - SAME_EVENT_S && at_s > best_s) best_s = at_s;
  }
  return best_s;
}

void ox_display_window_title(char *out, size_t bytes, const char *title, int modified,
                             int read_only) {
  g_snprintf(out, (gulong)bytes, "%s%s%s", title, modified ? " •" : "",
             read_only ? " (read only)" : "");
}
