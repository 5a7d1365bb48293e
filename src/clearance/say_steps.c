/* The entry and the first circuit as cards, a card a piece of flight, and the cue list for the
 * moment of crossing the fix. Headings are magnetic and come from the flight, not from a rule. */
#include <math.h>
#include <stdlib.h>

#include "oxbow/angle.h"
#include "text.h"

static double magnetic(const ox_case *c, double true_deg) {
  return ox_magnetic_deg(true_deg, c->variation_deg);
}

static const char *hand(double rate_deg_s) {
  return rate_deg_s < 0 ? "left" : "right";
}

static void put_turn(clr_text *t, const ox_say_options *o, const ox_case *c, const ox_leg *leg) {
  double through_deg = fabs(leg->rate_deg_s) * (leg->t1_s - leg->t0_s);
  clr_put(t, "turn %s through ", hand(leg->rate_deg_s));
  clr_put_whole(t, o, through_deg);
  clr_put(t, " degrees to heading ");
  clr_put_bearing(t, o, magnetic(c, leg->heading1_true_deg));
}

static void put_straight(clr_text *t, const ox_say_options *o, const ox_case *c,
                         const ox_leg *leg) {
  clr_put(t, "fly heading ");
  clr_put_bearing(t, o, magnetic(c, leg->heading1_true_deg));
  clr_put(t, " for ");
  clr_put_duration(t, o, leg->t1_s - leg->t0_s);
}

/* What the piece is for. */
static const char *purpose(ox_leg_kind kind) {
  switch (kind) {
  case OX_LEG_REACTION: return "straight on before the turn";
  case OX_LEG_ENTRY_TURN: return "over the fix, into the entry";
  case OX_LEG_ENTRY_OUTBOUND: return "entry, away from the fix";
  case OX_LEG_ENTRY_INBOUND_TURN: return "back towards the inbound course";
  case OX_LEG_OUTBOUND_TURN: return "over the fix, outbound turn";
  case OX_LEG_OUTBOUND: return "outbound";
  case OX_LEG_INBOUND_TURN: return "inbound turn";
  case OX_LEG_INTERCEPT: return "intercept the inbound course";
  case OX_LEG_INTERCEPT_TURN: return "onto the inbound course";
  case OX_LEG_INBOUND: return "inbound, established, to the fix";
  case OX_LEG_DIRECT_TURN: return "towards the fix";
  case OX_LEG_DIRECT_TO_FIX: return "direct to the fix";
  case OX_LEG_ADRIFT: return "the fix is not regained";
  default: return "to the fix";
  }
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
  clr_put(&t, ": %s", purpose(leg->kind));
  clr_sentence(&t);
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
  clr_text t = begin_cue(cue, "Turn");
  const ox_leg *turn = first_turn(flight);
  if (turn)
    clr_put(&t, "%s to heading ", hand(turn->rate_deg_s));
  else
    clr_put(&t, "heading ");
  clr_put_bearing(&t, o, magnetic(c, flight->entry_heading_true_deg));
  clr_sentence(&t);
}

static void cue_time(ox_cue *cue, const ox_case *c, const ox_flight *flight,
                     const ox_say_options *o) {
  clr_text t = begin_cue(cue, "Time");
  if (flight->flown != OX_ENTRY_DIRECT) {
    clr_put(&t, "note the time; start the clock at wings level, ");
    clr_put_duration(&t, o, c->technique.entry_s);
  } else if (c->hold.leg_by == OX_LEG_BY_DISTANCE) {
    clr_put(&t, "note the time; the leg ends by distance, ");
    clr_put_decimal(&t, o, c->hold.leg_nm);
    clr_put(&t, " miles");
  } else {
    static const char *const where[] = {"abeam the fix or at wings level, the later",
                                        "abeam the fix", "at wings level"};
    clr_put(&t, "note the time; start the clock %s", where[c->technique.clock]);
    if (flight->circuit_count > 0) {
      clr_put(&t, ", ");
      clr_put_duration(&t, o, flight->circuits[0].timed_s);
    }
  }
  clr_sentence(&t);
}

void ox_say_cues(const ox_case *c, const ox_flight *flight, const ox_say_options *options,
                 ox_cue cues[OX_CUES]) {
  ox_say_options o = clr_options(options);
  cue_turn(&cues[0], c, flight, &o);
  cue_time(&cues[1], c, flight, &o);
  clr_text twist = begin_cue(&cues[2], "Twist");
  clr_put(&twist, "set the inbound course ");
  clr_put_bearing(&twist, &o, c->hold.inbound_deg);
  clr_sentence(&twist);
  clr_text throttle = begin_cue(&cues[3], "Throttle");
  clr_put(&throttle, "hold ");
  clr_put_speed(&throttle, &o, c, flight);
  clr_sentence(&throttle);
  clr_text talk = begin_cue(&cues[4], "Talk");
  char *report = ox_say_entering(c, -1, &o);
  clr_put(&talk, "Report with the time: %s", report ? report : "entering the hold.");
  free(report);
}
