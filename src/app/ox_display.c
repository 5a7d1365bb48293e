/* What the window says, worked out from values so that it can be tested as text. */
#include "ox_display.h"

#include <string.h>

#include <glib.h>

#include "oxbow/text.h"
#include "oxbow/words.h"

#define SAME_EVENT_S 0.01

static const struct {
  const char *key;
  const char *const *words;
} choices[] = {
    {"hold.turns", (const char *const[]){N_("Right"), N_("Left"), NULL}},
    {"hold.leg.by", (const char *const[]){N_("Time"), N_("Distance"), NULL}},
    {"hold.leg.end", (const char *const[]){N_("Outbound end"), N_("Inbound length"), NULL}},
    {"hold.ends", (const char *const[]){N_("After circuits"), N_("Once inbound"), N_("At altitude"),
                                        N_("At the EFC"), NULL}},
    {"aircraft.turn_by", (const char *const[]){N_("Lesser bank"), N_("Bank limit"), NULL}},
    {"technique.timing", (const char *const[]){N_("Inbound leg"), N_("Outbound leg"), NULL}},
    {"technique.clock",
     (const char *const[]){N_("Abeam or level"), N_("Abeam the fix"), N_("Wings level"), NULL}},
    {"technique.drift", (const char *const[]){N_("None"), N_("Single"), N_("Double"), N_("Triple"),
                                              N_("Exact"), N_("Parallel track"), NULL}},
    {"technique.outbound",
     (const char *const[]){N_("Nominal"), N_("Adjusted"), N_("1 s a knot"), N_("Exact"), NULL}},
    {"technique.entry",
     (const char *const[]){N_("By sector"), N_("Direct"), N_("Parallel"), N_("Teardrop"), NULL}},
    {"technique.sector", (const char *const[]){N_("Heading"), N_("Track"), NULL}},
    {"technique.entry_line", (const char *const[]){N_("Headings"), N_("Tracks"), NULL}},
    {"fuel.unit", (const char *const[]){"lb", "kg", N_("US gal"), N_("litres"), NULL}},
    {"lost_radio.limit_starts_approach",
     (const char *const[]){N_("Not said"), N_("Yes"), N_("No"), NULL}},
    {"shown.direction",
     (const char *const[]){N_("Not shown"), N_("North"), N_("North-east"), N_("East"),
                           N_("South-east"), N_("South"), N_("South-west"), N_("West"),
                           N_("North-west"), NULL}},
    {"shown.course_is", (const char *const[]){N_("Inbound"), N_("Outbound"), NULL}},
    {"shown.turns", (const char *const[]){N_("Not shown"), N_("Right"), N_("Left"), NULL}},
    {"technique.lead",
     (const char *const[]){N_("In time"), N_("On crossing"), N_("By degrees"), NULL}},
    {"technique.at_radial", (const char *const[]){N_("Turn inbound"), N_("Follow it"), NULL}},
    {"north", (const char *const[]){N_("True"), N_("Magnetic"), NULL}},
};

const char *const *ox_display_choices(const ox_field *field) {
  for (size_t i = 0; i < G_N_ELEMENTS(choices); i++)
    if (strcmp(choices[i].key, field->key) == 0) return choices[i].words;
  return NULL;
}

void ox_display_leg(char *out, size_t bytes, ox_leg_kind kind, int circuit, double t_s,
                    ox_instant_form form) {
  char clock[24];
  ox_words_min_s(clock, sizeof clock, t_s);
  if (form == OX_INSTANT_CLOCK)
    g_strlcpy(out, clock, bytes);
  else if (form == OX_INSTANT_WHOLE && circuit > 0)
    g_snprintf(out, (gulong)bytes, _("%s %s, circuit %d"), clock, _(ox_leg_name(kind)), circuit);
  else
    g_snprintf(out, (gulong)bytes, "%s %s", clock, _(ox_leg_name(kind)));
}

void ox_display_instant(char *out, size_t bytes, const ox_flight *flight, double t_s) {
  if (flight->leg_count == 0) {
    g_strlcpy(out, _("No flight"), bytes);
    return;
  }
  const ox_leg *leg = &flight->legs[ox_flight_leg_index(flight, t_s)];
  ox_display_leg(out, bytes, leg->kind, leg->circuit, t_s, OX_INSTANT_WHOLE);
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
             read_only ? _(" (read only)") : "");
}
