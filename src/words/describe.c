/* The whole picture in words: what somebody who does not see it needs to follow the lesson. */
#include <math.h>

#include "oxbow/angle.h"
#include "oxbow/words.h"
#include "rows.h"

static void put_limit(words_say *s, const ox_case *c, const ox_setup *setup) {
  if (setup->goal != OX_GOAL_OUTBOUND_DME || !setup->dme.limited) return;
  words_figure radial = words_shown(c->hold.station.limiting_radial_deg);
  if (setup->dme.end_ground_nm > 0.0)
    words_put(s, _(" or the limiting radial %s from the station, whichever comes first"),
              radial.text);
  else
    words_put(s, _(" %s from the station"), radial.text);
}

static void put_hold(words_say *s, const ox_case *c, const ox_flight *f) {
  double inbound_deg = c->hold.inbound_deg;
  if (c->name[0]) words_put(s, "%s. ", c->name);
  words_put(s, _("Hold %s of %s at %s feet, inbound course %s, %s, "),
            ox_words_eighth(inbound_deg + 180.0),
            c->hold.fix[0] ? c->hold.fix : C_("north of", "the fix"),
            words_short(c->hold.altitude_ft, 0).text,
            words_marked(c, f->setup.inbound_true_deg).text, ox_words_turns_noun(c->hold.turns));
  words_put(s, "%s", words_leg(&f->setup).text);
  put_limit(s, c, &f->setup);
  words_put(s, _(". The picture has true north up. "));
}

static void put_entry(words_say *s, const ox_case *c, const ox_flight *f) {
  const ox_setup *setup = &f->setup;
  words_figure heading = words_marked(c, f->entry_heading_true_deg);
  words_figure time = words_time(c->technique.entry_s);
  words_put(s, _("The aircraft flies %s knots true and arrives on heading %s; wind %s. "),
            words_number(setup->tas_kt, 0).text,
            words_marked(c, setup->arrival_heading_true_deg).text, words_wind(c, setup).text);
  switch (f->flown) {
  case OX_ENTRY_DIRECT:
    words_put(s, _("It makes a direct entry, turning onto heading %s. "), heading.text);
    break;
  case OX_ENTRY_PARALLEL:
    words_put(s, _("It makes a parallel entry on heading %s for %s, then turns back to the fix. "),
              heading.text, time.text);
    break;
  case OX_ENTRY_TEARDROP:
    words_put(s, _("It makes a teardrop entry on heading %s for %s, then turns back to the fix. "),
              heading.text, time.text);
    break;
  }
}

static void put_steady(words_say *s, const ox_case *c, const ox_flight *f) {
  const ox_steady *steady = &f->steady;
  if (steady->why != OX_STEADY_EXISTS) {
    words_put(s, "%s ", _(ox_steady_why_name(steady->why)));
    return;
  }
  words_put(s,
            _("The exact hold has heading %s inbound, correction %s, and heading %s outbound, "
              "correction %s, for %s; a circuit takes %s. "),
            words_marked(c, steady->inbound_heading_deg).text,
            words_correction(steady->inbound_wca_deg).text,
            words_marked(c, steady->outbound_heading_deg).text,
            words_correction(steady->outbound_wca_deg).text, words_time(steady->outbound_s).text,
            words_time(steady->circuit_s).text);
}

static void put_changes(words_say *s, const ox_case *c, const ox_flight *f) {
  if (f->setup.climb_end_s > 0.0)
    words_put(s,
              c->hold.climb_to_ft > c->hold.altitude_ft
                  ? _("From the fix on it climbs to %s feet, reached %s later. ")
                  : _("From the fix on it descends to %s feet, reached %s later. "),
              words_short(c->hold.climb_to_ft, 0).text, words_time(f->setup.climb_end_s).text);
  for (int i = 0; i < c->wind_change_count; i++)
    words_put(s, _("%s after the first crossing the wind becomes %s %s at %s kt. "),
              words_time(c->wind_changes[i].at_min * 60.0).text,
              words_shown(c->wind_changes[i].from_deg).text, words_north(c->wind_changes[i].north),
              words_short(c->wind_changes[i].kt, 1).text);
  if (f->leave_t_s > 0.0)
    words_put(s, _("It is to leave the fix %s after first crossing it. "),
              words_time(f->leave_t_s).text);
}

static void put_circuits(words_say *s, const ox_case *c, const ox_flight *f) {
  for (size_t i = 0; i < f->circuit_count; i++) {
    const ox_circuit *m = &f->circuits[i];
    words_put(s, _("Circuit %zu: outbound heading %s for %s, "), i + 1,
              words_marked(c, m->outbound_heading_true_deg).text, words_time(m->timed_s).text);
    if (fabs(m->rollout_offset_nm) >= 0.005)
      words_put(s,
                m->rollout_offset_nm > 0 ? _("rolls out %s NM short of the inbound course, ")
                                         : _("rolls out %s NM beyond the inbound course, "),
                words_number(fabs(m->rollout_offset_nm), 2).text);
    if (m->complete)
      words_put(s, _("inbound %s. "), words_time(m->inbound_s).text);
    else
      words_put(s, _("the fix is not regained. "));
  }
}

static void put_advice(words_say *s, const ox_case *c, const ox_flight *f) {
  char sentence[OX_ADVICE_BYTES];
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
