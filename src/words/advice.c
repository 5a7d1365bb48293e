/* Each advisory as one or two sentences for a student: what it is, and what follows from it. */
#include <math.h>
#include <stdio.h>

#include "oxbow/words.h"
#include "say.h"

static const char *entry_word(double kind) {
  int whole = isfinite(kind) ? (int)fmax(-1.0, fmin(kind, 9.0)) : -1;
  return whole >= 0 ? _(ox_entry_name((ox_entry_kind)whole)) : C_("an entry", "different");
}

static void say_no_steady(words_say *s, const ox_advice *a) {
  int why = isfinite(a->a) ? (int)fmax(0.0, fmin(a->a, 99.0)) : 0;
  const char *sentence = _(ox_steady_why_name((ox_steady_why)why));
  if (why == OX_STEADY_STATION) {
    words_put(s, _("%s Each circuit ends its outbound leg elsewhere."), sentence);
    return;
  }
  words_figure kt = words_number(a->b, 1);
  words_put(s, _("No circuit repeats itself in this wind. %s "), sentence);
  if (why == OX_STEADY_TAILWIND)
    words_put(s, _("The wind is %s kt"), kt.text);
  else if (why == OX_STEADY_CROSSWIND || why == OX_STEADY_CROSS_DRIFT)
    words_put(s, _("The component across the course is %s kt"), kt.text);
  else
    words_put(s, _("The component along the course is %s kt"), kt.text);
  if (a->c > 0.0)
    words_put(s, _(" and the limit for this speed and leg %s kt"), words_number(a->c, 1).text);
  words_put(s, ".");
}

static void say_speed(words_say *s, const ox_case *c, const ox_advice *a) {
  words_figure kias = words_short(a->a, 0), other = words_short(a->b, 0);
  if (a->kind == OX_ADVICE_SPEED_ABOVE_LIMIT) {
    /* 200.4 over a limit of 200 must not read as 200 over 200. */
    if (a->a - a->b < 1.0) kias = words_short(a->a, 1);
    words_put(
        s,
        _("%s KIAS is above the maximum holding airspeed of %s KIAS here. Slow down in time to "
          "cross the fix at or below it, or tell the controller that more is needed."),
        kias.text, other.text);
  } else if (a->kind == OX_ADVICE_BELOW_FIXED_WING_MIN) {
    if (a->b - a->a < 1.0) kias = words_short(a->a, 1);
    words_put(s,
              _("%s KIAS is slower than the %s KIAS recommended as the least for aeroplanes in a "
                "hold; the wind then counts for more."),
              kias.text, other.text);
  } else {
    words_put(
        s,
        _("The true airspeed given, %s kt, does not belong to %s KIAS at %s ft: that would be %s "
          "kt. The true airspeed given is flown."),
        words_number(a->a, 1).text, words_short(c->aircraft.ias_kt, 1).text,
        words_short(c->hold.altitude_ft, 0).text, words_number(a->b, 1).text);
  }
}

static void say_entry(words_say *s, const ox_case *c, const ox_advice *a) {
  const char *first = entry_word(a->a), *second = entry_word(a->b);
  switch (a->kind) {
  case OX_ADVICE_ENTRY_NOT_BY_SECTOR:
    words_put(
        s,
        _("The entry flown is %s, but the sector that the aircraft arrives in by %s calls for %s. "
          "The three entries with their sectors are what protected airspace is sized for."),
        first, words_crossing(c), second);
    break;
  case OX_ADVICE_ENTRY_EITHER:
    words_put(
        s,
        _("The %s on crossing the fix is %s° from the boundary between the %s and the %s sector. "
          "Within 5° either entry is accepted: take the one that the wind makes easier."),
        words_crossing(c), words_short(a->c, 1).text, first, second);
    break;
  default:
    words_put(
        s,
        _("By heading the entry is %s, by track over the ground it is %s: the drift puts the track "
          "into another sector. The rule goes by heading; some area navigation equipment goes by "
          "track."),
        first, second);
    break;
  }
}

static bool has_steady(const ox_case *c) {
  ox_setup setup;
  ox_steady steady;
  if (ox_setup_make(c, &setup) == OX_ERROR) return false;
  ox_steady_solve_dme(setup.inbound_true_deg, setup.sense, setup.tas_kt, setup.rate_deg_s,
                      c->technique.reaction_s + c->technique.roll_s, setup.wind_kt, setup.goal,
                      setup.goal_value, setup.has_dme ? &setup.dme : NULL, &steady);
  return steady.why == OX_STEADY_EXISTS;
}

static void say_flown(words_say *s, const ox_case *c, const ox_advice *a) {
  words_phrase in; /* circuit 0 is the entry */
  if (a->c >= 1.0)
    snprintf(in.text, sizeof in.text, _("In circuit %s"), words_number(a->c, 0).text);
  else
    snprintf(in.text, sizeof in.text, "%s", _("In the entry"));
  switch (a->kind) {
  case OX_ADVICE_NO_ABEAM:
    words_put(s,
              /* translators: %s is "In circuit 2" or "In the entry", here and below */
              _("%s the aircraft is never abeam the fix flying outbound, so the outbound time "
                "starts at wings level."),
              in.text);
    break;
  case OX_ADVICE_PAST_FIX:
    words_put(s,
              _("%s the inbound course would be met only beyond the fix, so the aircraft turns "
                "straight to the fix instead. A longer outbound leg would leave room to intercept "
                "the course."),
              in.text);
    break;
  case OX_ADVICE_NOT_REGAINED:
    words_put(s,
              _("%s the fix cannot be regained in this wind at this airspeed, so the flight ends "
                "there. Fly faster, hold elsewhere or ask for another clearance."),
              in.text);
    break;
  case OX_ADVICE_LONG_INBOUND: {
    bool is_long = a->a > a->b;
    words_put(s,
              is_long ? _("%s the inbound leg takes %s instead of %s, %s s too long")
                      : _("%s the inbound leg takes %s instead of %s, %s s too short"),
              in.text, words_time(a->a).text, words_time(a->b).text,
              words_number(fabs(a->a - a->b), 0).text);
    if (has_steady(c))
      words_put(s, "%s",
                is_long ? _(": fly the next outbound leg shorter.")
                        : _(": fly the next outbound leg longer."));
    else
      words_put(s, _(", and no outbound time cures that in this wind."));
    break;
  }
  default:
    words_put(s,
              _("%s the inbound turn overshoots: it rolls out %s NM beyond the inbound course on "
                "the non-holding side. Fly the outbound leg farther out on the holding side."),
              in.text, words_number(a->a, 2).text);
    break;
  }
}

static void say_dme_not_seen(words_say *s, const ox_case *c, const ox_advice *a) {
  if (a->a <= 0.0) { /* away from the station the readings grow less on the outbound leg */
    words_put(s,
              _("The leg of %s NM is as long as the way back to the station or longer, so there is "
                "no reading that could end it. The standard time is flown instead; ask for a "
                "shorter leg."),
              words_short(c->hold.leg_nm, 1).text);
    return;
  }
  words_put(s, _("The DME never reads %s NM on the outbound leg"),
            words_number(fmax(a->a, 0.0), 1).text);
  if (a->a < a->b)
    words_put(s, _(": the aircraft is %s NM above the station, and the reading is never less"),
              words_number(a->b, 1).text);
  words_put(s, _(". The standard time is flown instead; ask for another leg length."));
}

/* Clock times "12:07:00" where the arrival says when the fix is crossed, else minutes after it. */
static words_phrase clock_of(const ox_case *c, double after_s) {
  words_phrase p;
  words_say s = words_into(p.text, sizeof p.text);
  if (c->arrival.fix_at_s < 0)
    words_put(&s, _("%s after the first crossing"), words_time(after_s).text);
  else
    words_put_clock(&s, c->arrival.fix_at_s + after_s);
  return p;
}

static void say_leaving(words_say *s, const ox_case *c, const ox_advice *a) {
  if (a->kind == OX_ADVICE_LEAVE_BEFORE) {
    words_put(
        s,
        _("The time to leave lies %s before the fix is first crossed, so the hold is flown as if "
          "there were none. Ask for a new time."),
        words_time(a->a).text);
    return;
  }
  words_put(s, _("The fix cannot be crossed at the time to leave. "));
  if (!(a->b > a->a) || !isfinite(a->b)) /* no circuit leads back to it */
    words_put(s, _("The last time before it is %s: tell the controller."), clock_of(c, a->a).text);
  else
    words_put(s, _("The nearest times are %s and %s: tell the controller which."),
              clock_of(c, a->a).text, clock_of(c, a->b).text);
}

static void say_leave_unknown(words_say *s, const ox_advice *a) {
  words_put(s, a->a > 0.0 && a->b > 0.0
                   ? _("The hold ends at the EFC, but neither the EFC nor the time over the fix is "
                       "given")
               : a->a > 0.0 ? _("The hold ends at the EFC, but no EFC is given")
               : _("The hold ends at the EFC, but the time over the fix is not given"));
  words_put(s, _(", so the circuits are flown as they are counted. Enter what is missing, or ask "
                 "the controller for a time."));
}

static void say(words_say *s, const ox_case *c, const ox_advice *a) {
  switch (a->kind) {
  case OX_ADVICE_SPEED_ABOVE_LIMIT:
  case OX_ADVICE_TAS_CONTRADICTS_IAS:
  case OX_ADVICE_BELOW_FIXED_WING_MIN:
    say_speed(s, c, a);
    return;
  case OX_ADVICE_ENTRY_NOT_BY_SECTOR:
  case OX_ADVICE_ENTRY_EITHER:
  case OX_ADVICE_TRACK_DIFFERS:
    say_entry(s, c, a);
    return;
  case OX_ADVICE_NO_STEADY:
    say_no_steady(s, a);
    return;
  case OX_ADVICE_DRIFT_CAPPED:
    words_put(s,
              _("The outbound correction would be %s°; not more than %s° is flown, because beyond "
                "that the leg no longer leads outbound."),
              words_number(a->a, 0).text, words_number(a->b, 0).text);
    return;
  case OX_ADVICE_OUTBOUND_FLOOR:
    words_put(s,
              _("The correction for the last inbound leg would leave %s outbound; it is flown for "
                "%s, the least that a first correction goes down to."),
              a->a > 0.5 ? words_time(a->a).text : _("no time"), words_time(a->b).text);
    return;
  case OX_ADVICE_NO_ARRIVAL:
    words_put(
        s, _("On this heading the aircraft makes no way over the ground against the wind, so the "
             "arrival is left out and the flight begins over the fix."));
    return;
  case OX_ADVICE_WIND_EXTRAPOLATED:
    words_put(s, _("The winds given do not reach %s ft: the nearest row is used as it stands."),
              words_short(a->a, 0).text);
    return;
  case OX_ADVICE_DME_NOT_SEEN:
    say_dme_not_seen(s, c, a);
    return;
  case OX_ADVICE_LEAVE_MISSED:
  case OX_ADVICE_LEAVE_BEFORE:
    say_leaving(s, c, a);
    return;
  case OX_ADVICE_LEAVE_UNKNOWN:
    say_leave_unknown(s, a);
    return;
  case OX_ADVICE_RADIAL_NOT_CROSSED:
    words_put(
        s,
        _("No outbound leg of this hold crosses the limiting radial, %s: it lies elsewhere, or "
          "along the holding course, and only the distance ends the leg."),
        words_shown(a->a).text);
    return;
  case OX_ADVICE_NO_ABEAM:
  case OX_ADVICE_PAST_FIX:
  case OX_ADVICE_NOT_REGAINED:
  case OX_ADVICE_LONG_INBOUND:
  case OX_ADVICE_OVERSHOOT:
    say_flown(s, c, a);
    return;
  case OX_ADVICE_KIND_COUNT:
    break;
  }
  words_put(s, _("Something about this flight deserves a second look."));
}

void ox_words_advice(char *buf, size_t bytes, const ox_case *c, const ox_advice *advice) {
  if (bytes == 0) return;
  words_say s = words_into(buf, bytes);
  say(&s, c, advice);
}
