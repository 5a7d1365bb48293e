/* The two lines over the picture: whose picture it is, and what was asked and flown. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "facts.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

void ox_title_words(const ox_picture *p, char *buf, size_t bytes) {
  const char *title = p->title ? p->title : "", *name = p->scene.c->name;
  bool both = *title && *name && strcmp(title, name) != 0;
  snprintf(buf, bytes, "%s%s%s", title, both ? " – " : "", both || !*title ? name : "");
}

/* By a station: to the reading, the radial, or whichever comes first. */
static void station_words(const ox_picture *p, char *buf, size_t bytes) {
  const ox_setup *s = &p->scene.flight->setup;
  char nm[24], radial[16];
  ox_limit_nm_text(nm, sizeof nm, s->goal_value);
  ox_direction_text(p, radial, sizeof radial, ox_bearing_deg(s->dme.limit));
  if (!s->dme.limited)
    snprintf(buf, bytes, _("outbound to %s DME"), nm);
  else if (!(s->dme.end_ground_nm > 0.0))
    snprintf(buf, bytes, _("outbound to limiting radial %s"), radial);
  else
    snprintf(buf, bytes, _("outbound to %s DME or limiting radial %s"), nm, radial);
}

static void leg_words(const ox_picture *p, char *buf, size_t bytes) {
  const ox_setup *s = &p->scene.flight->setup;
  char value[24];
  if (s->goal == OX_GOAL_INBOUND_S || s->goal == OX_GOAL_OUTBOUND_AIR)
    ox_words_min_s(value, sizeof value, s->goal_value);
  else
    ox_number_text(value, sizeof value, s->goal_value, 1);
  switch (s->goal) {
  case OX_GOAL_INBOUND_S: snprintf(buf, bytes, _("%s inbound"), value); break;
  case OX_GOAL_OUTBOUND_AIR: snprintf(buf, bytes, _("%s outbound"), value); break;
  case OX_GOAL_INBOUND_NM: snprintf(buf, bytes, _("%s NM inbound"), value); break;
  case OX_GOAL_OUTBOUND_NM: snprintf(buf, bytes, _("%s NM outbound"), value); break;
  case OX_GOAL_OUTBOUND_DME: station_words(p, buf, bytes); break;
  }
}

void ox_facts_words(const ox_picture *p, char *buf, size_t bytes, int detail) {
  const ox_case *c = p->scene.c;
  const ox_setup *s = &p->scene.flight->setup;
  char direction[16], leg[120], altitude[24], tas[24], bank[24], rate[24], wind[24], kt[16];
  ox_direction_text(p, direction, sizeof direction, s->inbound_true_deg);
  leg_words(p, leg, sizeof leg);
  ox_number_text(altitude, sizeof altitude, c->hold.altitude_ft, 0);
  ox_number_text(tas, sizeof tas, s->tas_kt, 0);
  ox_number_text(bank, sizeof bank, s->bank_deg, 0);
  ox_number_text(rate, sizeof rate, s->rate_deg_s, 1);
  ox_wind_from_text(p, wind, sizeof wind);
  ox_number_text(kt, sizeof kt, s->wind_speed_kt, 0);
  /* translators: course, then the leg as in "1:00 inbound" */
  int n = snprintf(buf, bytes, c->hold.turns == OX_TURNS_RIGHT ? _("inbound %s, right turns, %s")
                                                               : _("inbound %s, left turns, %s"),
                   direction, leg);
  if (detail >= 1 && n > 0 && (size_t)n < bytes)
    n += snprintf(buf + n, bytes - (size_t)n, _("  ·  %s ft, TAS %s kt"), altitude, tas);
  if (detail >= 2 && n > 0 && (size_t)n < bytes)
    n += snprintf(buf + n, bytes - (size_t)n, _("  ·  turn %s°/s, bank %s°"), rate, bank);
  if (detail >= 3 && n > 0 && (size_t)n < bytes) {
    if (s->wind_speed_kt < 0.5)
      snprintf(buf + n, bytes - (size_t)n, "  ·  %s", C_("the wind", "calm"));
    else /* translators: the first %s is "from 360 T" */
      snprintf(buf + n, bytes - (size_t)n, _("  ·  wind %s, %s kt"), wind, kt);
  }
}

const char *ox_notice_words(const ox_picture *p) {
  const ox_flight *f = p->scene.flight;
  if (p->scene.hide_answer) return NULL;
  if (f->steady.why != OX_STEADY_EXISTS) return _(ox_steady_why_name(f->steady.why));
  for (size_t i = 0; i < f->advice_count; i++)
    if (f->advice[i].kind == OX_ADVICE_NOT_REGAINED)
      return _("Flown like this the fix cannot be regained.");
  return NULL;
}
