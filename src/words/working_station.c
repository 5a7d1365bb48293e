/* The working of what a DME station limits: the limiting radial, and the limiting distance that a
 * procedure designer would publish for this hold. */
#include <math.h>

#include "oxbow/area.h"
#include "oxbow/limits.h"
#include "rows.h"

#define GROUP N_("Times")
#define DOC_8168 N_("ICAO Doc 8168 Vol I Part I Section 6 (as quoted)")

/* How many circuits turned at the radial: their outbound end is on it. */
static int ended_by_radial(const ox_flight *f) {
  static const double ON_NM = 1e-6;
  int count = 0;
  for (size_t i = 0; i < f->circuit_count; i++) {
    const ox_leg *last = NULL;
    for (size_t k = 0; k < f->leg_count; k++)
      if (f->legs[k].circuit == (int)i + 1 && f->legs[k].kind == OX_LEG_OUTBOUND)
        last = &f->legs[k];
    if (last && fabs(ox_limit_beyond_nm(&f->setup.dme, last->p1_nm)) < ON_NM) count++;
  }
  return count;
}

static void add_radial(words_rows *r) {
  const ox_setup *s = &r->f->setup;
  if (s->goal != OX_GOAL_OUTBOUND_DME || !s->dme.limited) return;
  words_say value = {0}, why = {0};
  int met = ended_by_radial(r->f), all = (int)r->f->circuit_count;
  bool follow = r->c->technique.at_radial == OX_AT_RADIAL_FOLLOW;
  words_put(&value, _("%s from the station"),
            words_shown(r->c->hold.station.limiting_radial_deg).text);
  words_put(&why, "%s",
            follow ? _("radial or distance, whichever comes first; on the radial the aircraft "
                       "follows it until the distance; ")
                   : _("radial or distance, whichever comes first; on the radial the aircraft "
                       "turns inbound; "));
  if (met == 0)
    words_put(&why, _("it is not met on any of %d outbound legs"), all);
  else
    words_put(&why, _("%d of %d outbound legs end on it"), met, all);
  rows_add(r, GROUP, N_("Limiting radial"), &value, &why, DOC_8168);
}

/* The designer's figure is for a hold towards the station, from the height above it. */
static void add_distance(words_rows *r) {
  const ox_setup *s = &r->f->setup;
  if (s->goal != OX_GOAL_OUTBOUND_DME || s->dme.outward < 0) return;
  double height_ft = r->c->hold.altitude_ft - r->c->hold.station.elevation_ft;
  if (!(height_ft > 0.0) || !(s->dme_fix_nm > s->dme.height_nm)) return;
  words_say value = {0}, why = {0};
  double leg_s = ox_standard_leg_s(r->c->hold.altitude_ft), rounded_nm;
  double limit_nm = ox_limiting_dme_nm(s->ias_kt, height_ft, s->dme_fix_nm, leg_s, &rounded_nm);
  words_put(&value, "%s DME", words_number(rounded_nm, 0).text);
  words_put(
      &why,
      _("√((Ds + ds)² + 4r² + 0.027h²) = %s NM for %s outbound from %s DME at %s KIAS, 25° of bank "
        "or 3°/s, ISA + 15; here the leg ends at %s DME"),
      words_number(limit_nm, 2).text, words_time(leg_s).text, words_number(s->dme_fix_nm, 1).text,
      words_short(s->ias_kt, 1).text, words_short(s->goal_value, 2).text);
  rows_add(r, GROUP, N_("Limiting distance by design"), &value, &why,
           N_("ICAO Doc 8168 Vol II, VOR/DME holding"));
}

void rows_station(words_rows *r) {
  add_radial(r);
  add_distance(r);
}
