/* The working of the times: the leg asked for, the steady circuit, the first outbound leg as it is
 * flown, when its clock starts, and the time to leave. */
#include <math.h>

#include "oxbow/angle.h"
#include "oxbow/units.h"
#include "oxbow/wind.h"
#include "rows.h"

#define GROUP N_("Times")

words_phrase words_leg(const ox_setup *setup) {
  words_phrase p;
  words_say s = words_into(p.text, sizeof p.text);
  words_figure goal = words_short(setup->goal_value, 2);
  switch (setup->goal) {
  case OX_GOAL_INBOUND_S:
    words_put(&s, _("%s inbound"), words_time(setup->goal_value).text);
    break;
  case OX_GOAL_OUTBOUND_AIR:
    words_put(&s, _("%s outbound"), words_time(setup->goal_value).text);
    break;
  case OX_GOAL_INBOUND_NM:
    words_put(&s, _("%s NM inbound"), goal.text);
    break;
  case OX_GOAL_OUTBOUND_NM:
    words_put(&s, _("%s NM outbound"), goal.text);
    break;
  case OX_GOAL_OUTBOUND_DME:
    if (setup->dme.end_ground_nm > 0.0)
      words_put(&s, _("outbound to %s DME"), goal.text);
    else /* a reading that is never seen is no goal unless a radial limits the leg as well */
      words_put(&s, _("outbound to the limiting radial"));
    break;
  }
  return p;
}

static void add_leg(words_rows *r) {
  words_say value = {0}, why = {0};
  const ox_setup *s = &r->f->setup;
  const char *source = "AIM 5-3-8 j4(a)";
  words_put(&value, "%s", words_leg(s).text);
  if (s->goal == OX_GOAL_OUTBOUND_DME) {
    words_put(&why,
              s->dme.outward > 0
                  ? _("%s NM more than the reading over the fix, √(%s² + %s²) = %s DME (slant "
                      "range from %s NM above the station)")
                  : _("%s NM less than the reading over the fix, √(%s² + %s²) = %s DME (slant "
                      "range from %s NM above the station)"),
              words_short(r->c->hold.leg_nm, 2).text, words_short(r->c->hold.station.nm, 2).text,
              words_number(s->dme.height_nm, 2).text, words_number(s->dme_fix_nm, 2).text,
              words_number(s->dme.height_nm, 2).text);
    source = N_("AIM 5-3-8 j5, figures 5-3-5 and 5-3-6; slant range AIM 1-1-7");
  } else if (s->goal == OX_GOAL_OUTBOUND_NM) {
    words_put(&why, _("the outbound leg ends this far beyond the fix, along the course"));
    source = "AIM 5-3-8 j5";
  } else if (s->goal == OX_GOAL_INBOUND_NM) {
    words_put(&why, _("the inbound leg is this long"));
    source = N_("AIM 5-3-8 j7(a)(4): many area navigation systems");
  } else {
    bool given = r->c->hold.leg_s > 0.0;
    words_put(&why, _("%s; standard is 1:00 at or below 14000 ft and 1:30 above"),
              given ? _("given with the clearance") : _("nothing else given"));
    if (s->goal == OX_GOAL_OUTBOUND_AIR) {
      words_put(&why, _("; the time is that of the outbound leg in still air"));
      source = "ICAO Doc 8168 Vol I Part I Section 6 Chapter 1";
    }
  }
  rows_add(r, GROUP, N_("Leg asked for"), &value, &why, source);
}

static void add_inbound(words_rows *r) {
  words_say value = {0}, why = {0};
  const ox_steady *steady = &r->f->steady;
  words_put(&value, "%s", words_time(steady->inbound_s).text);
  words_put(&why, _("%s NM at %s kt over the ground"),
            words_number(steady->inbound_gs_kt * steady->inbound_s / OX_S_PER_H, 2).text,
            words_number(steady->inbound_gs_kt, 1).text);
  rows_add(r, GROUP, N_("Inbound time"), &value, &why, SOURCE_GEOMETRY);
}

/* A is the inbound leg and what wind and reactions add to it, over the ground: steady.c. */
static void add_outbound(words_rows *r) {
  words_say value = {0}, why = {0};
  const ox_steady *steady = &r->f->steady;
  const ox_setup *s = &r->f->setup;
  double reaction_s = words_reaction_s(r->c);
  double along_nm = steady->inbound_gs_kt * (steady->inbound_s + reaction_s) / OX_S_PER_H;
  ox_vec a = ox_vec_add(ox_vec_scale(ox_unit(s->inbound_true_deg), along_nm),
                        ox_vec_scale(s->wind_kt, 360.0 / s->rate_deg_s / OX_S_PER_H));
  words_put(&value, "%s", words_time(steady->outbound_s).text);
  words_put(&why,
            _("t = [A·w + √((A·w)² + (V² − w²)·A²)] ÷ (V² − w²) = %s s, with A %s NM (inbound leg "
              "and drift in the turns), A·w %s NM·kt, V %s kt, w %s kt"),
            words_number(steady->outbound_s, 1).text, words_number(ox_vec_length(a), 3).text,
            words_number(ox_vec_dot(a, s->wind_kt), 2).text, words_number(s->tas_kt, 1).text,
            words_number(s->wind_speed_kt, 1).text);
  rows_add(r, GROUP, N_("Outbound time, wings level to turn"), &value, &why, SOURCE_GEOMETRY);
}

static void add_circuit_time(words_rows *r) {
  words_say value = {0}, why = {0};
  const ox_steady *steady = &r->f->steady;
  double reaction_s = words_reaction_s(r->c);
  words_put(&value, "%s", words_time(steady->circuit_s).text);
  words_put(&why, _("inbound %s s + turns %s s + outbound %s s"),
            words_number(steady->inbound_s, 1).text,
            words_number(360.0 / r->f->setup.rate_deg_s, 1).text,
            words_number(steady->outbound_s, 1).text);
  if (reaction_s > 0.0)
    words_put(&why, _(" + %s s straight on over the fix"), words_number(reaction_s, 1).text);
  rows_add(r, GROUP, N_("Whole circuit"), &value, &why, SOURCE_GEOMETRY);
}

static void add_no_circuit(words_rows *r) {
  words_say value = {0}, why = {0};
  words_put(&value, _("no outbound time makes the circuit close"));
  words_put(&why, "%s", _(ox_steady_why_name(r->f->steady.why)));
  rows_add(r, GROUP, N_("Outbound time"), &value, &why, SOURCE_GEOMETRY);
}

/* --- the first outbound leg as flown ------------------------------------------------------- */

static const char *put_rule(words_say *s, const words_rows *r) {
  const ox_setup *setup = &r->f->setup;
  switch (r->c->technique.outbound) {
  case OX_OUTBOUND_NOMINAL:
    words_put(s, _("the leg time, whatever the wind"));
    return N_("AIM 5-3-8 j4(a), note: the first outbound leg");
  case OX_OUTBOUND_ADJUST:
    words_put(s, _("the leg time at first; each later leg adds what the inbound leg fell short of "
                   "it, and is never under 0:30"));
    return N_("CNATRA P-871 p. 76-77 and 79");
  case OX_OUTBOUND_RULE: {
    double along_kt =
        ox_triangle_for_course(setup->inbound_true_deg, setup->tas_kt, setup->wind_kt).along_kt;
    words_put(s,
              along_kt < 0 ? _("one second a knot: %s s − %s s for the headwind inbound")
                           : _("one second a knot: %s s + %s s for the tailwind inbound"),
              words_number(setup->leg_s, 0).text, words_number(fabs(along_kt), 1).text);
    return SOURCE_PRACTICE;
  }
  case OX_OUTBOUND_EXACT:
    break;
  }
  if (setup->goal == OX_GOAL_OUTBOUND_AIR)
    words_put(s, _("until as far outbound over the ground as %s s in still air would lead, %s NM"),
              words_number(setup->leg_s, 0).text,
              words_number(setup->tas_kt * setup->leg_s / OX_S_PER_H, 2).text);
  else
    words_put(s, _("so that the inbound leg takes %s"), words_time(setup->goal_value).text);
  return SOURCE_GEOMETRY;
}

static const char *put_duration(words_say *s, const words_rows *r) {
  const ox_setup *setup = &r->f->setup;
  if (setup->goal == OX_GOAL_OUTBOUND_NM) {
    words_put(s, _("until %s NM beyond the fix"), words_short(setup->goal_value, 2).text);
    return "AIM 5-3-8 j5";
  }
  if (setup->goal == OX_GOAL_OUTBOUND_DME) {
    words_put(s, _("until the reading is %s DME"), words_short(setup->goal_value, 2).text);
    return "AIM 5-3-8 j5";
  }
  if (setup->goal == OX_GOAL_INBOUND_NM) {
    words_put(s, _("so that the inbound leg is %s NM long"),
              words_short(setup->goal_value, 2).text);
    return SOURCE_GEOMETRY;
  }
  return put_rule(s, r);
}

static void add_flown(words_rows *r) {
  words_say value = {0}, why = {0};
  const char *source = SOURCE_GEOMETRY;
  if (r->f->circuit_count == 0) {
    words_put(&value, _("not flown"));
    words_put(&why, _("the flight ends before a first circuit"));
    rows_add(r, GROUP, N_("Outbound time flown first"), &value, &why, source);
  } else {
    const ox_circuit *m = &r->f->circuits[0];
    words_put(&value, _("%s by the clock"), words_time(m->timed_s).text);
    source = put_duration(&why, r);
    words_put(&why, _("; %s s of it wings level"), words_number(m->outbound_s, 1).text);
    rows_add(r, GROUP, N_("Outbound time flown first"), &value, &why, source);
    rows_set_brief(r, words_time(m->timed_s).text);
  }
}

/* --- when the clock starts ----------------------------------------------------------------- */

static bool event_in_first(const ox_flight *f, ox_event_kind kind, double *t_s) {
  for (size_t i = 0; i < f->event_count; i++) {
    if (f->events[i].kind != kind || f->events[i].circuit != 1) continue;
    *t_s = f->events[i].t_s;
    return true;
  }
  return false;
}

/* End of the first turn onto the outbound heading; the fix passage where none is needed. */
static double level_s(const ox_flight *f) {
  for (size_t i = 0; i < f->leg_count; i++)
    if (f->legs[i].kind == OX_LEG_OUTBOUND_TURN && f->legs[i].circuit == 1) return f->legs[i].t1_s;
  return f->circuits[0].fix_t_s;
}

static const char *clock_source(ox_clock clock) {
  switch (clock) {
  case OX_CLOCK_ABEAM:
    return "AIM 5-3-8 j4(b); ICAO Doc 8168 Vol I";
  case OX_CLOCK_LEVEL:
    return N_("AIM 5-3-8 j4(b), where abeam cannot be determined");
  case OX_CLOCK_ABEAM_OR_LEVEL:
    break;
  }
  return N_("AIM 5-3-8 j4(b); later of abeam and wings level as in CNATRA P-871");
}

static const char *clock_rule(ox_clock clock) {
  switch (clock) {
  case OX_CLOCK_ABEAM:
    return _("it starts abeam the fix");
  case OX_CLOCK_LEVEL:
    return _("it starts at wings level");
  case OX_CLOCK_ABEAM_OR_LEVEL:
    break;
  }
  return _("the later of the two starts it");
}

static void put_start(words_say *s, double after_level_s) {
  words_figure seconds = words_number(fabs(after_level_s), 0);
  if (fabs(after_level_s) < 0.5)
    words_put(s, _("at wings level"));
  else
    words_put(s,
              after_level_s > 0 ? _("abeam the fix, %s s after wings level")
                                : _("abeam the fix, %s s before wings level"),
              seconds.text);
}

static void add_clock(words_rows *r) {
  double clock_s, abeam_s;
  if (r->f->circuit_count == 0 || !event_in_first(r->f, OX_EVENT_CLOCK_START, &clock_s)) return;
  words_say value = {0}, why = {0};
  double fix_s = r->f->circuits[0].fix_t_s, level = level_s(r->f);
  put_start(&value, clock_s - level);
  words_figure level_at = words_number(level - fix_s, 1);
  if (event_in_first(r->f, OX_EVENT_ABEAM, &abeam_s))
    words_put(&why, _("after the fix: wings level at %s s, abeam at %s s; %s"), level_at.text,
              words_number(abeam_s - fix_s, 1).text, clock_rule(r->c->technique.clock));
  else
    words_put(&why, _("after the fix: wings level at %s s, abeam not found on this leg"),
              level_at.text);
  rows_add(r, GROUP, N_("Outbound clock starts"), &value, &why,
           clock_source(r->c->technique.clock));
}

/* --- leaving at a time --------------------------------------------------------------------- */

static void add_leaving(words_rows *r) {
  if (!(r->f->leave_t_s > 0.0)) return;
  words_say value = {0}, why = {0};
  double crossing_s = r->c->arrival.fix_at_s;
  words_put_clock(&value, crossing_s + r->f->leave_t_s);
  words_put(&value, " UTC");
  words_phrase crossing;
  words_say at = words_into(crossing.text, sizeof crossing.text);
  words_put_clock(&at, crossing_s);
  words_put(&why, _("%s after crossing the fix at %s; the last circuits are made as long as fits"),
            words_time(r->f->leave_t_s).text, crossing.text);
  rows_add(r, GROUP, N_("Leave the fix"), &value, &why, "AIM 5-3-8 k");
}

void rows_times(words_rows *r) {
  add_leg(r);
  if (r->f->steady.why == OX_STEADY_EXISTS) {
    add_inbound(r);
    add_outbound(r);
    add_circuit_time(r);
  } else {
    add_no_circuit(r);
  }
  add_flown(r);
  add_clock(r);
  add_leaving(r);
}
