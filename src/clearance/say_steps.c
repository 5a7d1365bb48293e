/* The entry and the first circuit as cards, a card a piece of flight, and the cue list for the
 * moment of crossing the fix. Headings are magnetic and come from the flight, not from a rule. */
#include <math.h>
#include <stdlib.h>

#include "figures.h"
#include "oxbow/angle.h"
#include "oxbow/text.h"

static double magnetic(const ox_case *c, double true_deg) {
  return ox_magnetic_deg(true_deg, c->variation_deg);
}

/* What the piece is for. */
static const char *purpose(ox_leg_kind kind) {
  switch (kind) {
  case OX_LEG_REACTION: return _("straight on before the turn");
  case OX_LEG_ENTRY_TURN: return _("over the fix, into the entry");
  case OX_LEG_ENTRY_OUTBOUND: return _("entry, away from the fix");
  case OX_LEG_ENTRY_INBOUND_TURN: return _("back towards the inbound course");
  case OX_LEG_OUTBOUND_TURN: return _("over the fix, outbound turn");
  case OX_LEG_OUTBOUND: return C_("a piece of flight", "outbound");
  case OX_LEG_INBOUND_TURN: return C_("a piece of flight", "inbound turn");
  case OX_LEG_INTERCEPT: return _("intercept the inbound course");
  case OX_LEG_INTERCEPT_TURN: return _("onto the inbound course");
  case OX_LEG_INBOUND: return _("inbound, established, to the fix");
  case OX_LEG_DIRECT_TURN: return _("towards the fix");
  case OX_LEG_DIRECT_TO_FIX: return C_("a piece of flight", "direct to the fix");
  case OX_LEG_ADRIFT: return _("the fix is not regained");
  default: return _("to the fix");
  }
}

/* The last %s of both sentences is the purpose. */
static void put_turn(clr_text *t, const ox_say_options *o, const ox_case *c, const ox_leg *leg) {
  double through_deg = fabs(leg->rate_deg_s) * (leg->t1_s - leg->t0_s);
  clr_put(t, leg->rate_deg_s < 0 ? _("Turn left through %s degrees to heading %s: %s.")
                                 : _("Turn right through %s degrees to heading %s: %s."),
          clr_whole(o, through_deg).text, clr_bearing(o, magnetic(c, leg->heading1_true_deg)).text,
          purpose(leg->kind));
}

static void put_straight(clr_text *t, const ox_say_options *o, const ox_case *c,
                         const ox_leg *leg) {
  clr_put(t, _("Fly heading %s for %s: %s."),
          clr_bearing(o, magnetic(c, leg->heading1_true_deg)).text,
          clr_duration(o, leg->t1_s - leg->t0_s).text, purpose(leg->kind));
}

static void fill_step(ox_step *step, const ox_case *c, const ox_leg *leg,
                      const ox_say_options *o) {
  *step = (ox_step){.leg = leg->kind,
                    .heading_deg = magnetic(c, leg->heading1_true_deg),
                    .duration_s = leg->t1_s - leg->t0_s,
                    .turn = leg->shape == OX_SHAPE_STRAIGHT ? 0 : leg->rate_deg_s < 0 ? -1 : 1};
  clr_text t = clr_into(step->text, sizeof step->text);
  if (leg->shape == OX_SHAPE_TURN)
    put_turn(&t, o, c, leg);
  else
    put_straight(&t, o, c, leg);
}

size_t ox_say_steps(const ox_case *c, const ox_flight *flight, const ox_say_options *options,
                    ox_step *steps, size_t max) {
  ox_say_options o = clr_options(options);
  size_t count = 0;
  for (size_t i = 0; i < flight->leg_count && count < max; i++) {
    const ox_leg *leg = &flight->legs[i];
    bool first = leg->part == OX_PART_ENTRY || (leg->part == OX_PART_CIRCUIT && leg->circuit <= 1);
    /* Pieces of no length come from exact geometry; nobody flies them. */
    if (first && leg->t1_s - leg->t0_s >= 0.5) fill_step(&steps[count++], c, leg, &o);
  }
  return count;
}

/* The first turn after the fix, or NULL. */
static const ox_leg *first_turn(const ox_flight *flight) {
  for (size_t i = 0; i < flight->leg_count; i++)
    if (flight->legs[i].part != OX_PART_ARRIVAL && flight->legs[i].shape == OX_SHAPE_TURN)
      return &flight->legs[i];
  return NULL;
}

static clr_text begin_cue(ox_cue *cue, const char *name) {
  cue->cue = name;
  return clr_into(cue->text, sizeof cue->text);
}

static void cue_turn(ox_cue *cue, const ox_case *c, const ox_flight *flight,
                     const ox_say_options *o) {
  clr_text t = begin_cue(cue, C_("of the five Ts", "Turn"));
  const ox_leg *turn = first_turn(flight);
  clr_put(&t, !turn                  ? _("Heading %s.")
              : turn->rate_deg_s < 0 ? _("Left to heading %s.")
                                     : _("Right to heading %s."),
          clr_bearing(o, magnetic(c, flight->entry_heading_true_deg)).text);
}

static void cue_time(ox_cue *cue, const ox_case *c, const ox_flight *flight,
                     const ox_say_options *o) {
  static const char *const where[] = {N_("abeam the fix or at wings level, the later"),
                                      N_("abeam the fix"), N_("at wings level")};
  clr_text t = begin_cue(cue, C_("of the five Ts", "Time"));
  const char *start = _(where[c->technique.clock]);
  if (flight->flown != OX_ENTRY_DIRECT)
    clr_put(&t, _("Note the time; start the clock at wings level, %s."),
            clr_duration(o, c->technique.entry_s).text);
  else if (c->hold.leg_by == OX_LEG_BY_DISTANCE)
    clr_put(&t, _("Note the time; the leg ends by distance, %s miles."),
            clr_decimal(o, c->hold.leg_nm).text);
  else if (flight->circuit_count == 0)
    clr_put(&t, _("Note the time; start the clock %s."), start);
  else /* translators: where the clock is started, and the time it counts */
    clr_put(&t, _("Note the time; start the clock %s, %s."), start,
            clr_duration(o, flight->circuits[0].timed_s).text);
}

void ox_say_cues(const ox_case *c, const ox_flight *flight, const ox_say_options *options,
                 ox_cue cues[OX_CUES]) {
  ox_say_options o = clr_options(options);
  cue_turn(&cues[0], c, flight, &o);
  cue_time(&cues[1], c, flight, &o);
  clr_text twist = begin_cue(&cues[2], C_("of the five Ts", "Twist"));
  clr_put(&twist, _("Set the inbound course %s."), clr_bearing(&o, c->hold.inbound_deg).text);
  clr_text throttle = begin_cue(&cues[3], C_("of the five Ts", "Throttle"));
  clr_put(&throttle, _("Hold %s."), clr_holding_speed(&o, c, flight).text);
  clr_text talk = begin_cue(&cues[4], C_("of the five Ts", "Talk"));
  char *report = ox_say_entering(c, -1, &o); /* said on the radio: English */
  clr_put(&talk, _("Report with the time: %s"), report ? report : "entering the hold.");
  free(report);
}
