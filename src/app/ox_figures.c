/* The figures of an instant. */
#include "ox_figures.h"

#include <math.h>

#include <glib.h>

#include "oxbow/text.h"
#include "oxbow/words.h"

typedef struct {
  const char *name, *caption, *widest, *unit;
  bool north; /* M or T hangs on it */
} row;

static const row rows[OX_FIGURE_COUNT] = {
    [OX_FIGURE_HEADING] = {N_("heading"), N_("hdg"), "000", "", true},
    [OX_FIGURE_TRACK] = {N_("track"), N_("track"), "000", "", true},
    [OX_FIGURE_GS] = {N_("ground speed"), N_("gs kt"), "000", " kt", false},
    [OX_FIGURE_DRIFT] = {N_("drift"), N_("drift"), "00° R", "", false},
    [OX_FIGURE_ON_LEG] = {N_("on this leg"), N_("on leg"), "-00:00", "", false},
    [OX_FIGURE_SINCE_FIX] = {N_("since the fix"), N_("since fix"), "-00:00", "", false},
    [OX_FIGURE_ALTITUDE] = {N_("altitude"), N_("altitude ft"), "00000", " ft", false},
};

/* The last crossing of the fix at or before an instant; before the first: that one. */
static double last_fix_s(const ox_flight *flight, double t_s) {
  double fix_s = 0.0;
  for (size_t i = 0; i < flight->event_count && flight->events[i].t_s <= t_s; i++)
    if (flight->events[i].kind == OX_EVENT_FIX) fix_s = flight->events[i].t_s;
  return fix_s;
}

static bool climbs(const ox_case *c, const ox_flight *flight) {
  double first_ft = ox_flight_altitude_ft(c, flight, ox_flight_begin_s(flight));
  return fabs(ox_flight_altitude_ft(c, flight, ox_flight_end_s(flight)) - first_ft) > 0.5;
}

static void values(ox_figure_text *out, const ox_case *c, const ox_flight *flight, double t_s) {
  ox_state state = ox_flight_at(flight, t_s);
  const ox_leg *leg = &flight->legs[ox_flight_leg_index(flight, t_s)];
  size_t bytes = sizeof out->value;
  ox_words_bearing(out[OX_FIGURE_HEADING].value,
                   ox_magnetic_deg(state.heading_true_deg, c->variation_deg));
  ox_words_bearing(out[OX_FIGURE_TRACK].value,
                   ox_magnetic_deg(state.track_true_deg, c->variation_deg));
  g_snprintf(out[OX_FIGURE_GS].value, (gulong)bytes, "%ld", lround(state.gs_kt));
  ox_words_correction(out[OX_FIGURE_DRIFT].value, bytes, state.drift_deg, 0);
  ox_words_min_s(out[OX_FIGURE_ON_LEG].value, bytes, t_s - leg->t0_s);
  ox_words_min_s(out[OX_FIGURE_SINCE_FIX].value, bytes, t_s - last_fix_s(flight, t_s));
  g_snprintf(out[OX_FIGURE_ALTITUDE].value, (gulong)bytes, "%ld",
             10 * lround(ox_flight_altitude_ft(c, flight, t_s) / 10.0));
}

void ox_figures_make(ox_figure_text out[OX_FIGURE_COUNT], const ox_case *c,
                     const ox_flight *flight, double t_s) {
  bool any = flight->leg_count > 0, climbing = any && climbs(c, flight);
  for (int i = 0; i < OX_FIGURE_COUNT; i++) {
    out[i] = (ox_figure_text){.shown = any && (i != OX_FIGURE_ALTITUDE || climbing),
                              .name = _(rows[i].name),
                              .widest = rows[i].widest};
    g_snprintf(out[i].caption, sizeof out[i].caption, "%s%s", _(rows[i].caption),
               rows[i].north && c->variation_deg != 0.0 ? " M" : "");
  }
  if (any) values(out, c, flight, CLAMP(t_s, ox_flight_begin_s(flight), ox_flight_end_s(flight)));
}

void ox_figures_words(char *out, size_t bytes, const ox_figure_text figures[OX_FIGURE_COUNT],
                      bool magnetic) {
  out[0] = '\0';
  for (int i = 0; i < OX_FIGURE_COUNT; i++) {
    char words[64];
    if (!figures[i].shown) continue;
    gboolean time = i == OX_FIGURE_ON_LEG || i == OX_FIGURE_SINCE_FIX;
    if (rows[i].north && magnetic)
      g_snprintf(words, sizeof words, _("%s %s magnetic"), figures[i].name, figures[i].value);
    else
      g_snprintf(words, sizeof words, "%s %s%s", time ? figures[i].value : figures[i].name,
                 time ? figures[i].name : figures[i].value, rows[i].unit);
    if (out[0]) g_strlcat(out, ", ", bytes);
    g_strlcat(out, words, bytes);
  }
}
