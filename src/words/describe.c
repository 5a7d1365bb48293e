/* The whole picture in words: what somebody who does not see it needs to follow the lesson. */
#include <math.h>

#include "oxbow/angle.h"
#include "oxbow/words.h"
#include "rows.h"

static void put_limit(words_say *s, const ox_case *c, const ox_setup *setup) {
  if (setup->goal != OX_GOAL_OUTBOUND_DME || !setup->dme.limited) return;
  words_figure radial = words_shown(c->hold.station.limiting_radial_deg);
  if (setup->dme.end_ground_nm > 0.0)
    words_put(s, " or the limiting radial %s from the station, whichever comes first",
              radial.text);
  else
    words_put(s, " %s from the station", radial.text);
}

static void put_hold(words_say *s, const ox_case *c, const ox_flight *f) {
  double inbound_deg = c->hold.inbound_deg;
  if (c->name[0]) words_put(s, "%s. ", c->name);
  words_put(s, "Hold %s of %s at %s feet, inbound course %s, %s turns, ",
            ox_words_eighth(inbound_deg + 180.0), c->hold.fix[0] ? c->hold.fix : "the fix",
            words_short(c->hold.altitude_ft, 0).text,
            words_marked(c, f->setup.inbound_true_deg).text, ox_words_turns(c->hold.turns));
  words_put_leg(s, &f->setup);
  put_limit(s, c, &f->setup);
  words_put(s, ". The picture has true north up. ");
}

static void put_entry(words_say *s, const ox_case *c, const ox_flight *f) {
  const ox_setup *setup = &f->setup;
  words_put(s, "The aircraft flies %s knots true and arrives on heading %s; wind ",
            words_number(setup->tas_kt, 0).text,
            words_marked(c, setup->arrival_heading_true_deg).text);
  words_put_wind(s, c, setup);
  words_put(s, ". It makes a %s entry", ox_entry_name(f->flown));
  if (f->flown == OX_ENTRY_DIRECT)
    words_put(s, ", turning onto heading %s. ", words_marked(c, f->entry_heading_true_deg).text);
  else
    words_put(s, " on heading %s for %s, then turns back to the fix. ",
              words_marked(c, f->entry_heading_true_deg).text,
              words_time(c->technique.entry_s).text);
}

static void put_steady(words_say *s, const ox_case *c, const ox_flight *f) {
  const ox_steady *steady = &f->steady;
  if (steady->why != OX_STEADY_EXISTS) {
    words_put(s, "%s ", ox_steady_why_name(steady->why));
    return;
  }
  words_put(s,
            "The exact hold has heading %s inbound, correction %s, and heading %s outbound, "
            "correction %s, for %s; a circuit takes %s. ",
            words_marked(c, steady->inbound_heading_deg).text,
            words_correction(steady->inbound_wca_deg).text,
            words_marked(c, steady->outbound_heading_deg).text,
            words_correction(steady->outbound_wca_deg).text, words_time(steady->outbound_s).text,
            words_time(steady->circuit_s).text);
}

static void put_changes(words_say *s, const ox_case *c, const ox_flight *f) {
  if (f->setup.climb_end_s > 0.0)
    words_put(s, "From the fix on it %s to %s feet, reached %s later. ",
              c->hold.climb_to_ft > c->hold.altitude_ft ? "climbs" : "descends",
              words_short(c->hold.climb_to_ft, 0).text, words_time(f->setup.climb_end_s).text);
  for (int i = 0; i < c->wind_change_count; i++)
    words_put(s, "%s after the first crossing the wind becomes %s %s at %s kt. ",
              words_time(c->wind_changes[i].at_min * 60.0).text,
              words_shown(c->wind_changes[i].from_deg).text,
              c->wind_changes[i].north == OX_NORTH_MAGNETIC ? "magnetic" : "true",
              words_short(c->wind_changes[i].kt, 1).text);
  if (f->leave_t_s > 0.0)
    words_put(s, "It is to leave the fix %s after first crossing it. ",
              words_time(f->leave_t_s).text);
}

static void put_circuits(words_say *s, const ox_case *c, const ox_flight *f) {
  for (size_t i = 0; i < f->circuit_count; i++) {
    const ox_circuit *m = &f->circuits[i];
    words_put(s, "Circuit %zu: outbound heading %s for %s, ", i + 1,
              words_marked(c, m->outbound_heading_true_deg).text, words_time(m->timed_s).text);
    if (fabs(m->rollout_offset_nm) >= 0.005)
      words_put(s, "rolls out %s NM %s, ", words_number(fabs(m->rollout_offset_nm), 2).text,
                m->rollout_offset_nm > 0 ? "short of the inbound course"
                                         : "beyond the inbound course");
    if (m->complete)
      words_put(s, "inbound %s. ", words_time(m->inbound_s).text);
    else
      words_put(s, "the fix is not regained. ");
  }
}

static void put_advice(words_say *s, const ox_case *c, const ox_flight *f) {
  char sentence[600];
  for (size_t i = 0; i < f->advice_count; i++) {
    ox_words_advice(sentence, sizeof sentence, c, &f->advice[i]);
    words_put(s, "%s ", sentence);
  }
}

char *ox_words_describe(const ox_case *c, const ox_flight *flight) {
  words_say s = {0};
  put_hold(&s, c, flight);
  put_entry(&s, c, flight);
  put_steady(&s, c, flight);
  put_changes(&s, c, flight);
  put_circuits(&s, c, flight);
  put_advice(&s, c, flight);
  while (!s.failed && s.length > 0 && s.text[s.length - 1] == ' ')
    s.text[--s.length] = '\0';
  return words_take(&s);
}
