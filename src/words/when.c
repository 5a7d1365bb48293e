/* Time, fuel and the failed radio in sentences. */
#include "oxbow/endurance.h"

#include <math.h>
#include <stdlib.h>

#include "oxbow/words.h"
#include "say.h"
#include "when.h"

static const double HOUR_S = 3600.0, LONGEST_S = 99.0 * 3600.0;

const char *ox_words_fuel_unit(ox_fuel_unit unit) {
  switch (unit) {
  case OX_FUEL_LB: return "lb";
  case OX_FUEL_KG: return "kg";
  case OX_FUEL_USGAL: return "US gal";
  case OX_FUEL_L: break;
  }
  return "litres";
}

/* --- pieces -------------------------------------------------------------------------------- */

/* "1:40" in minutes and seconds, "2 h 05 min" from an hour on. */
void words_put_lasting(words_say *s, double lasting_s) {
  if (lasting_s > LONGEST_S)
    words_put(s, "more than 99 hours");
  else if (lasting_s < HOUR_S)
    words_put(s, "%s", words_time(lasting_s).text);
  else
    words_put(s, "%d h %02d min", (int)(lasting_s / HOUR_S),
              (int)(fmod(lasting_s, HOUR_S) / 60.0));
}

void words_put_minute(words_say *s, const ox_case *c, int minute) {
  int local_min = ((minute + c->clock.utc_offset_min) % 1440 + 1440) % 1440;
  words_put(s, "%02d:%02d UTC", minute / 60, minute % 60);
  if (c->clock.utc_offset_min != 0)
    words_put(s, " (%02d:%02d local)", local_min / 60, local_min % 60);
}

void words_put_moment(words_say *s, const ox_case *c, double t_s) {
  if (!ox_clock_is_known(c)) {
    words_put_lasting(s, t_s);
    words_put(s, " after the first crossing");
    return;
  }
  words_put_clock(s, ox_clock_utc_s(c, t_s));
  words_put(s, " UTC");
  if (c->clock.utc_offset_min == 0) return;
  words_put(s, " (");
  words_put_clock(s, ox_clock_local_s(c, t_s));
  words_put(s, " local)");
}

void words_put_fuel(words_say *s, const ox_case *c, double amount) {
  words_put(s, "%s %s", words_short(amount, 1).text, ox_words_fuel_unit(c->fuel.unit));
}

static void put_circuits(words_say *s, int circuits) {
  words_put(s, "%d circuit%s", circuits, circuits == 1 ? "" : "s");
}

/* --- the EFC ------------------------------------------------------------------------------- */

static void put_met(words_say *s, const ox_efc_plan *plan) {
  if (plan->circuits == 0) {
    words_put(s, " The entry alone brings the aircraft over the fix then.");
    return;
  }
  words_put(s, " Until then ");
  put_circuits(s, plan->circuits);
  words_put(s, " %s flown; the last one takes %s, with %s outbound by the clock, and crosses the "
               "fix on time.",
            plan->circuits == 1 ? "is" : "are", words_time(plan->last_circuit_s).text,
            words_time(plan->last_timed_s).text);
}

static void put_missed(words_say *s, const ox_efc_plan *plan) {
  words_put(s, " The fix cannot be crossed just then: the nearest crossing%s ",
            plan->later_s > plan->before_s ? "s are" : " is");
  words_put_lasting(s, plan->before_s);
  if (plan->later_s > plan->before_s) {
    words_put(s, " and ");
    words_put_lasting(s, plan->later_s);
  }
  words_put(s, " after the first.");
}

void ox_words_efc(char *buf, size_t bytes, const ox_case *c, const ox_efc_plan *plan) {
  if (bytes == 0) return;
  words_say s = words_into(buf, bytes);
  if (plan->outcome == OX_EFC_NOT_GIVEN) {
    words_put(&s, "No time to expect further clearance: ask for one.");
    return;
  }
  words_put(&s, "Further clearance is expected at ");
  words_put_minute(&s, c, c->hold.efc_min);
  switch (plan->outcome) {
  case OX_EFC_NOT_GIVEN:
    break;
  case OX_EFC_NO_CLOCK:
    words_put(&s, ". When the fix is crossed first is not given, so the circuits until then are "
                  "not counted.");
    break;
  case OX_EFC_BEFORE:
    words_put(&s, ", ");
    words_put_lasting(&s, -plan->after_s);
    words_put(&s, " before the fix is reached: ask for a new one.");
    break;
  case OX_EFC_MET:
  case OX_EFC_MISSED:
  case OX_EFC_NOT_REGAINED:
    words_put(&s, ", ");
    words_put_lasting(&s, plan->after_s);
    words_put(&s, " after the first crossing.");
    if (plan->outcome == OX_EFC_MET) put_met(&s, plan);
    if (plan->outcome == OX_EFC_MISSED) put_missed(&s, plan);
    if (plan->outcome == OX_EFC_NOT_REGAINED)
      words_put(&s, " In this wind the fix is not regained.");
    break;
  }
}

/* --- fuel ---------------------------------------------------------------------------------- */

static void put_against_efc(words_say *s, const ox_case *c, double leave_by_s) {
  double after_s;
  if (!ox_clock_after_s(c, c->hold.efc_min, &after_s)) return;
  double room_s = leave_by_s - after_s;
  words_put(s, room_s < 0.0 ? " It does not last until the EFC, by " : " At the EFC ");
  words_put_lasting(s, fabs(room_s));
  words_put(s, room_s < 0.0 ? ": say so now and ask for an earlier time, or for the alternate."
                            : " of holding is in hand.");
}

void ox_words_endurance(char *buf, size_t bytes, const ox_case *c, const ox_flight *flight) {
  if (bytes == 0) return;
  words_say s = words_into(buf, bytes);
  ox_endurance e = ox_endurance_of(c);
  ox_passage passages[OX_PASSAGES_MAX];
  if (!e.known) {
    words_put(&s, "What is on board and the fuel flow are not given: nothing is known of the "
                  "endurance.");
    return;
  }
  words_put_fuel(&s, c, e.on_board);
  words_put(&s, " on reaching the fix, ");
  words_put_fuel(&s, c, e.alternate + e.reserve);
  words_put(&s, " for alternate and reserve, ");
  words_put_fuel(&s, c, e.flow_h);
  words_put(&s, " an hour: ");
  if (e.leave_by_s < 0.0) {
    words_put(&s, "there is no fuel to hold with; ");
    words_put_fuel(&s, c, e.alternate + e.reserve - e.on_board);
    words_put(&s, " is missing already. Leave at once.");
    return;
  }
  words_put_lasting(&s, e.leave_by_s);
  words_put(&s, " to hold with. Leave the fix by ");
  words_put_moment(&s, c, e.leave_by_s);
  size_t count = ox_passages(c, flight, passages, OX_PASSAGES_MAX);
  int last = ox_passage_leave_by(passages, count);
  if (last > 0 && (size_t)last < count) {
    words_put(&s, "; the last passage in time is number %d at ", last);
    words_put_moment(&s, c, passages[last - 1].t_s);
  }
  words_put(&s, ".");
  put_against_efc(&s, c, e.leave_by_s);
}

/* --- without radio ------------------------------------------------------------------------- */

static void put_action(words_say *s, const ox_case *c, const ox_lost_radio *r) {
  bool approach = r->action == OX_RADIO_APPROACH_AT_EFC || r->action == OX_RADIO_APPROACH_AT_ETA;
  bool by_efc = r->action == OX_RADIO_APPROACH_AT_EFC || r->action == OX_RADIO_LEAVE_AT_EFC;
  words_put(s, approach ? "an approach begins at this fix: begin it "
                        : "no approach begins at this fix: leave it ");
  if (r->action == OX_RADIO_LEAVE_ON_ARRIVAL) {
    words_put(s, "on arriving over it, for no EFC was given");
  } else if (r->before_arrival) {
    words_put(s, "on arrival: the %s, ", by_efc ? "EFC" : "ETA");
    words_put_minute(s, c, r->at_min);
    words_put(s, ", is past then");
  } else if (r->at_min >= 0) {
    words_put(s, approach ? "as close as possible to " : "at ");
    words_put(s, "the %s, ", by_efc ? "EFC" : "ETA");
    words_put_minute(s, c, r->at_min);
    if (!by_efc) words_put(s, ", for no EFC was given");
  } else {
    words_put(s, "as close as possible to the ETA by the time en route filed or amended, which is "
                 "not given here");
  }
  if (approach) return;
  words_put(s, ", for a fix from which one begins, and begin it as close as possible to the ETA");
  if (r->then_approach_min < 0) return;
  words_put(s, ", ");
  words_put_minute(s, c, r->then_approach_min);
}

void ox_words_lost_radio(char *buf, size_t bytes, const ox_case *c) {
  if (bytes == 0) return;
  words_say s = words_into(buf, bytes);
  ox_lost_radio r = ox_lost_radio_of(c);
  words_put(&s, "Without radio: ");
  if (r.action == OX_RADIO_NOT_DECIDED) {
    words_put(&s, "whether an approach begins at the clearance limit decides (14 CFR "
                  "91.185(c)(3)); that is not given.");
  } else {
    bool first = r.action == OX_RADIO_APPROACH_AT_EFC || r.action == OX_RADIO_APPROACH_AT_ETA;
    put_action(&s, c, &r);
    words_put(&s, " (14 CFR 91.185(c)(3)(%s)).", first ? "i" : "ii");
  }
  words_put(&s, " Said additional delay plays no part in it (FAA Order 7110.65, 4-6-1 c). These "
                "are the rules of the United States; for another State read those in its "
                "aeronautical information publication.");
}

/* --- slowing down -------------------------------------------------------------------------- */

void ox_words_slow_down(char *buf, size_t bytes, const ox_case *c, const ox_flight *flight) {
  if (bytes == 0) return;
  words_say s = words_into(buf, bytes);
  ox_slow_down slow = ox_slow_down_of(flight);
  words_put(&s, "Begin to slow down 3:00 before the fix");
  if (ox_clock_is_known(c)) {
    words_put(&s, ", at ");
    words_put_moment(&s, c, -OX_SLOW_DOWN_S);
  }
  words_put(&s, ", at the latest %s NM from it at %s kt over the ground (AIM 5-3-8 d); whoever is "
                "faster is farther out then.",
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
