/* Time, fuel and the failed radio in sentences. */
#include "oxbow/endurance.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "oxbow/words.h"
#include "say.h"
#include "when.h"

static const double HOUR_S = 3600.0, LONGEST_S = 99.0 * 3600.0;

const char *ox_words_fuel_unit(ox_fuel_unit unit) {
  switch (unit) {
  case OX_FUEL_LB: return "lb";
  case OX_FUEL_KG: return "kg";
  case OX_FUEL_USGAL:
    return _("US gal");
  case OX_FUEL_L: break;
  }
  return _("litres");
}

/* --- pieces -------------------------------------------------------------------------------- */

words_phrase words_lasting(double lasting_s) {
  words_phrase p;
  words_say s = words_into(p.text, sizeof p.text);
  if (lasting_s > LONGEST_S)
    words_put(&s, _("more than 99 hours"));
  else if (lasting_s < HOUR_S)
    words_put(&s, "%s", words_time(lasting_s).text);
  else
    words_put(&s, "%d h %02d min", (int)(lasting_s / HOUR_S),
              (int)(fmod(lasting_s, HOUR_S) / 60.0));
  return p;
}

words_phrase words_minute(const ox_case *c, int minute) {
  words_phrase p;
  words_say s = words_into(p.text, sizeof p.text);
  int local_min = ((minute + c->clock.utc_offset_min) % 1440 + 1440) % 1440;
  words_put(&s, "%02d:%02d UTC", minute / 60, minute % 60);
  if (c->clock.utc_offset_min != 0)
    words_put(&s, _(" (%02d:%02d local)"), local_min / 60, local_min % 60);
  return p;
}

words_phrase words_moment(const ox_case *c, double t_s) {
  words_phrase p, local;
  words_say s = words_into(p.text, sizeof p.text);
  if (!ox_clock_is_known(c)) {
    words_put(&s, _("%s after the first crossing"), words_lasting(t_s).text);
    return p;
  }
  words_put_clock(&s, ox_clock_utc_s(c, t_s));
  words_put(&s, " UTC");
  if (c->clock.utc_offset_min == 0) return p;
  words_say local_s = words_into(local.text, sizeof local.text);
  words_put_clock(&local_s, ox_clock_local_s(c, t_s));
  words_put(&s, _(" (%s local)"), local.text);
  return p;
}

words_phrase words_fuel(const ox_case *c, double amount) {
  words_phrase p;
  snprintf(p.text, sizeof p.text, "%s %s", words_short(amount, 1).text,
           ox_words_fuel_unit(c->fuel.unit));
  return p;
}

/* --- the EFC ------------------------------------------------------------------------------- */

static void put_met(words_say *s, const ox_efc_plan *plan) {
  if (plan->circuits == 0) {
    words_put(s, _(" The entry alone brings the aircraft over the fix then."));
    return;
  }
  words_put(
      s,
      ox_text_count(" Until then %d circuit is flown; the last one takes %s, with %s outbound by "
                    "the clock, and crosses the fix on time.",
                    " Until then %d circuits are flown; the last one takes %s, with %s outbound by "
                    "the clock, and crosses the fix on time.",
                    (unsigned long)plan->circuits),
      plan->circuits, words_time(plan->last_circuit_s).text, words_time(plan->last_timed_s).text);
}

static void put_missed(words_say *s, const ox_efc_plan *plan) {
  if (plan->later_s > plan->before_s)
    words_put(s,
              _(" The fix cannot be crossed just then: the nearest crossings are %s and %s after "
                "the first."),
              words_lasting(plan->before_s).text, words_lasting(plan->later_s).text);
  else
    words_put(s,
              _(" The fix cannot be crossed just then: the nearest crossing is %s after the "
                "first."),
              words_lasting(plan->before_s).text);
}

void ox_words_efc(char *buf, size_t bytes, const ox_case *c, const ox_efc_plan *plan) {
  if (bytes == 0) return;
  words_say s = words_into(buf, bytes);
  if (plan->outcome == OX_EFC_NOT_GIVEN) {
    words_put(&s, _("No time to expect further clearance: ask for one."));
    return;
  }
  words_put(&s, _("Further clearance is expected at %s"), words_minute(c, c->hold.efc_min).text);
  switch (plan->outcome) {
  case OX_EFC_NOT_GIVEN:
    break;
  case OX_EFC_NO_CLOCK:
    words_put(&s, _(". When the fix is crossed first is not given, so the circuits until then are "
                    "not counted."));
    break;
  case OX_EFC_BEFORE:
    words_put(&s, _(", %s before the fix is reached: ask for a new one."),
              words_lasting(-plan->after_s).text);
    break;
  case OX_EFC_MET:
  case OX_EFC_MISSED:
  case OX_EFC_NOT_REGAINED:
    words_put(&s, _(", %s after the first crossing."), words_lasting(plan->after_s).text);
    if (plan->outcome == OX_EFC_MET) put_met(&s, plan);
    if (plan->outcome == OX_EFC_MISSED) put_missed(&s, plan);
    if (plan->outcome == OX_EFC_NOT_REGAINED)
      words_put(&s, _(" In this wind the fix is not regained."));
    break;
  }
}

/* --- fuel ---------------------------------------------------------------------------------- */

static void put_against_efc(words_say *s, const ox_case *c, double leave_by_s) {
  double after_s;
  if (!ox_clock_after_s(c, c->hold.efc_min, &after_s)) return;
  double room_s = leave_by_s - after_s;
  words_put(s,
            room_s < 0.0 ? _(" It does not last until the EFC, by %s: say so now and ask for an "
                             "earlier time, or for the alternate.")
                         : _(" At the EFC %s of holding is in hand."),
            words_lasting(fabs(room_s)).text);
}

const char *ox_words_no_reserve(const ox_case *c) {
  ox_endurance e = ox_endurance_of(c);
  if (!e.known || e.reserve > 0.0) return NULL;
  return _("No reserve entered: nothing is kept to the last.");
}

static void put_hold_time(words_say *s, const ox_case *c, const ox_flight *flight,
                          const ox_endurance *e) {
  ox_passage passages[OX_PASSAGES_MAX];
  words_put(s, _("%s to hold with. Leave the fix by %s"), words_lasting(e->leave_by_s).text,
            words_moment(c, e->leave_by_s).text);
  size_t count = ox_passages(c, flight, passages, OX_PASSAGES_MAX);
  int last = ox_passage_leave_by(passages, count);
  if (last > 0 && (size_t)last < count)
    words_put(s, _("; the last passage in time is number %d at %s"), last,
              words_moment(c, passages[last - 1].t_s).text);
  words_put(s, ".");
  put_against_efc(s, c, e->leave_by_s);
}

void ox_words_endurance(char *buf, size_t bytes, const ox_case *c, const ox_flight *flight) {
  if (bytes == 0) return;
  words_say s = words_into(buf, bytes);
  ox_endurance e = ox_endurance_of(c);
  const char *no_reserve = ox_words_no_reserve(c);
  if (!e.known) {
    words_put(&s, _("What is on board and the fuel flow are not given: nothing is known of the "
                    "endurance."));
    return;
  }
  /* translators: three amounts of fuel with their unit */
  words_put(&s, _("%s on reaching the fix, %s for alternate and reserve, %s an hour: "),
            words_fuel(c, e.on_board).text, words_fuel(c, e.alternate + e.reserve).text,
            words_fuel(c, e.flow_h).text);
  if (e.leave_by_s < 0.0)
    words_put(&s, _("there is no fuel to hold with; %s is missing already. Leave at once."),
              words_fuel(c, e.alternate + e.reserve - e.on_board).text);
  else
    put_hold_time(&s, c, flight, &e);
  if (no_reserve) words_put(&s, " %s", no_reserve);
}

/* --- without radio ------------------------------------------------------------------------- */

static void put_approach(words_say *s, const ox_lost_radio *r, const char *at) {
  bool by_efc = r->action == OX_RADIO_APPROACH_AT_EFC;
  if (r->before_arrival)
    words_put(s,
              by_efc ? _("an approach begins at this fix: begin it on arrival: the EFC, %s, is "
                         "past then")
                     : _("an approach begins at this fix: begin it on arrival: the ETA, %s, is "
                         "past then"),
              at);
  else if (r->at_min < 0)
    words_put(s, _("an approach begins at this fix: begin it as close as possible to the ETA by "
                   "the time en route filed or amended, which is not given here"));
  else
    words_put(s,
              by_efc ? _("an approach begins at this fix: begin it as close as possible to the "
                         "EFC, %s")
                     : _("an approach begins at this fix: begin it as close as possible to the "
                         "ETA, %s, for no EFC was given"),
              at);
}

static void put_leave(words_say *s, const ox_case *c, const ox_lost_radio *r, const char *at) {
  if (r->action == OX_RADIO_LEAVE_ON_ARRIVAL)
    words_put(s, _("no approach begins at this fix: leave it on arriving over it, for no EFC was "
                   "given"));
  else if (r->before_arrival)
    words_put(
        s, _("no approach begins at this fix: leave it on arrival: the EFC, %s, is past then"), at);
  else
    words_put(s, _("no approach begins at this fix: leave it at the EFC, %s"), at);
  words_put(s,
            _(", for a fix from which one begins, and begin it as close as possible to the ETA"));
  if (r->then_approach_min >= 0) words_put(s, ", %s", words_minute(c, r->then_approach_min).text);
}

void ox_words_lost_radio(char *buf, size_t bytes, const ox_case *c) {
  if (bytes == 0) return;
  words_say s = words_into(buf, bytes);
  ox_lost_radio r = ox_lost_radio_of(c);
  words_phrase at = words_minute(c, r.at_min > 0 ? r.at_min : 0);
  words_put(&s, _("Without radio: "));
  switch (r.action) {
  case OX_RADIO_NOT_DECIDED:
    words_put(&s, _("whether an approach begins at the clearance limit decides (14 CFR "
                    "91.185(c)(3)); that is not given."));
    break;
  case OX_RADIO_APPROACH_AT_EFC:
  case OX_RADIO_APPROACH_AT_ETA:
    put_approach(&s, &r, at.text);
    words_put(&s, " (14 CFR 91.185(c)(3)(i)).");
    break;
  case OX_RADIO_LEAVE_AT_EFC:
  case OX_RADIO_LEAVE_ON_ARRIVAL:
    put_leave(&s, c, &r, at.text);
    words_put(&s, " (14 CFR 91.185(c)(3)(ii)).");
    break;
  }
  words_put(&s, _(" Said additional delay plays no part in it (FAA Order 7110.65, 4-6-1 c). These "
                  "are the rules of the United States; for another State read those in its "
                  "aeronautical information publication."));
}

/* --- slowing down -------------------------------------------------------------------------- */

void ox_words_slow_down(char *buf, size_t bytes, const ox_case *c, const ox_flight *flight) {
  if (bytes == 0) return;
  words_say s = words_into(buf, bytes);
  ox_slow_down slow = ox_slow_down_of(flight);
  words_put(&s, _("Begin to slow down 3:00 before the fix"));
  if (ox_clock_is_known(c)) words_put(&s, _(", at %s"), words_moment(c, -OX_SLOW_DOWN_S).text);
  words_put(&s,
            _(", at the latest %s NM from it at %s kt over the ground (AIM 5-3-8 d); whoever is "
              "faster is farther out then."),
            words_number(slow.nm, 1).text, words_number(slow.gs_kt, 0).text);
}

/* --- all of it ----------------------------------------------------------------------------- */

char *ox_words_when(const ox_case *c, const ox_flight *flight) {
  char text[OX_WHEN_BYTES];
  words_say s = {0};
  ox_efc_plan plan;
  ox_flight *scratch = malloc(sizeof *scratch);
  if (!scratch) return NULL;
  ox_words_slow_down(text, sizeof text, c, flight);
  words_put(&s, "%s\n", text);
  if (ox_efc_plan_make(c, scratch, &plan) != OX_ERROR) {
    ox_words_efc(text, sizeof text, c, &plan);
    words_put(&s, "%s\n", text);
  }
  free(scratch);
  if (ox_endurance_of(c).known) {
    ox_words_endurance(text, sizeof text, c, flight);
    words_put(&s, "%s\n", text);
  }
  ox_words_lost_radio(text, sizeof text, c);
  words_put(&s, "%s", text);
  return words_take(&s);
}
