/* The key moments: the flight's events, those of one instant together, and what the leg that
 * begins there asks of the pilot. */
#include "oxbow/moments.h"

#include <math.h>
#include <stdlib.h>

#include "oxbow/words.h"
#include "say.h"

#define SAME_INSTANT_S 0.01
#define HAS(kind) (1u << (kind))

/* What happens at one instant. */
typedef struct {
  double t_s;
  unsigned kinds;      /* HAS(ox_event_kind) */
  const ox_leg *ends;  /* NULL: none */
  const ox_leg *begins;
} instant;

typedef struct {
  const ox_case *c;
  const ox_flight *f;
  bool established; /* since the last crossing of the fix */
} teller;

const char *ox_moments_event(ox_event_kind kind) {
  switch (kind) {
  case OX_EVENT_FIX:
    return _("over the fix");
  case OX_EVENT_TURN_BEGIN:
    return _("turn begins");
  case OX_EVENT_WINGS_LEVEL:
    return _("wings level");
  case OX_EVENT_ABEAM:
    return _("abeam the fix");
  case OX_EVENT_CLOCK_START:
    return _("clock starts");
  case OX_EVENT_INTERCEPT:
    return _("established inbound");
  case OX_EVENT_KIND_COUNT: break;
  }
  return C_("at an unnamed instant", "event");
}

/* ---- the instants ------------------------------------------------------------------------- */

static instant instant_at(const ox_flight *f, size_t *event) {
  instant at = {.t_s = f->events[*event].t_s};
  while (*event < f->event_count && f->events[*event].t_s <= at.t_s + SAME_INSTANT_S)
    at.kinds |= HAS(f->events[(*event)++].kind);
  for (size_t i = 0; i < f->leg_count; i++) {
    if (fabs(f->legs[i].t1_s - at.t_s) <= SAME_INSTANT_S) at.ends = &f->legs[i];
    if (!at.begins && fabs(f->legs[i].t0_s - at.t_s) <= SAME_INSTANT_S) at.begins = &f->legs[i];
  }
  return at;
}

/* Whether a pilot has something to do or to note. The turn after a reaction belongs to the fix or
 * to the end of the clock before it, and touches of the controls on the course are none. */
static bool is_key(const teller *t, const instant *at) {
  unsigned always = HAS(OX_EVENT_FIX) | HAS(OX_EVENT_ABEAM) | HAS(OX_EVENT_CLOCK_START);
  if (at->kinds & always) return true;
  if (at->kinds & HAS(OX_EVENT_INTERCEPT)) return !t->established;
  if (t->established) return false;
  bool first_turn = at->begins && (at->begins->kind == OX_LEG_OUTBOUND_TURN ||
                                   at->begins->kind == OX_LEG_ENTRY_TURN);
  return !(first_turn && at->ends && at->ends->kind == OX_LEG_REACTION);
}

static const char *turn_name(const ox_leg *turn) {
  switch (turn ? turn->kind : OX_LEG_KIND_COUNT) {
  case OX_LEG_OUTBOUND_TURN:
    return _("Turn outbound");
  case OX_LEG_INBOUND_TURN:
  case OX_LEG_ENTRY_INBOUND_TURN:
    return _("Turn inbound");
  case OX_LEG_INTERCEPT_TURN:
    return _("Turn onto the course");
  case OX_LEG_DIRECT_TURN:
    return _("Turn to the fix");
  default:
    return _("Turn");
  }
}

static const char *what_of(const instant *at) {
  if (at->kinds & HAS(OX_EVENT_FIX)) return _("Over the fix");
  if (at->kinds & HAS(OX_EVENT_ABEAM)) return _("Abeam the fix");
  if (at->kinds & HAS(OX_EVENT_INTERCEPT)) return _("Established inbound");
  if (at->kinds & HAS(OX_EVENT_TURN_BEGIN)) return turn_name(at->begins);
  if (!(at->kinds & HAS(OX_EVENT_WINGS_LEVEL))) return _("Clock starts");
  bool inbound = at->ends && (at->ends->kind == OX_LEG_INBOUND_TURN ||
                              at->ends->kind == OX_LEG_ENTRY_INBOUND_TURN);
  return inbound ? _("Rolled out inbound") : _("Wings level");
}

/* ---- what is to be done ------------------------------------------------------------------- */

/* A turn may be flown in pieces, one a condition: where the last of them ends. */
static double turn_end_deg(const ox_flight *f, const ox_leg *turn) {
  const ox_leg *last = turn, *end = f->legs + f->leg_count;
  while (last + 1 < end && last[1].shape == OX_SHAPE_TURN && last[1].kind == turn->kind) last++;
  return last->heading1_true_deg;
}

static void put_turn(words_say *s, const teller *t, const ox_leg *turn) {
  words_put(s,
            turn->rate_deg_s < 0.0 ? _("Turn left to heading %s") : _("Turn right to heading %s"),
            words_marked(t->c, turn_end_deg(t->f, turn)).text);
}

/* Time to the next beginning of a turn (s); 0 where there is none. */
static double to_turn_s(const ox_flight *f, double t_s) {
  for (size_t i = 0; i < f->event_count; i++)
    if (f->events[i].kind == OX_EVENT_TURN_BEGIN && f->events[i].t_s > t_s + SAME_INSTANT_S)
      return f->events[i].t_s - t_s;
  return 0.0;
}

/* Whether the outbound leg ends by the clock. */
static bool is_timed(const ox_flight *f, const ox_leg *leg) {
  ox_goal goal = f->setup.goal;
  return leg->kind == OX_LEG_ENTRY_OUTBOUND ||
         (goal != OX_GOAL_OUTBOUND_NM && goal != OX_GOAL_OUTBOUND_DME &&
          goal != OX_GOAL_INBOUND_NM);
}

/* The heading, and where a leg by distance ends. */
static void put_heading(words_say *s, const teller *t, const ox_leg *leg) {
  const ox_setup *setup = &t->f->setup;
  words_figure heading = words_marked(t->c, leg->heading0_true_deg);
  words_figure goal = words_short(setup->goal_value, 1);
  if (!is_timed(t->f, leg) && setup->goal == OX_GOAL_OUTBOUND_NM)
    words_put(s, _("Hold heading %s to %s NM"), heading.text, goal.text);
  else if (!is_timed(t->f, leg) && setup->goal == OX_GOAL_OUTBOUND_DME)
    words_put(s, _("Hold heading %s to %s DME"), heading.text, goal.text);
  else
    words_put(s, _("Hold heading %s"), heading.text);
}

static void put_outbound(words_say *s, const teller *t, const instant *at, const ox_leg *leg) {
  double turn_s = to_turn_s(t->f, at->t_s);
  bool clock = (at->kinds & HAS(OX_EVENT_CLOCK_START)) != 0;
  if (at->begins) put_heading(s, t, leg);
  if (clock && is_timed(t->f, leg))
    words_put(s, "%s", at->begins ? _(", start the clock") : _("Start the clock"));
  if (turn_s > 0.0 && (clock || !at->begins)) {
    if (s->length > 0) words_put(s, ": ");
    words_put(s, _("%s to the turn"), words_time(turn_s).text);
  }
  if (s->length == 0) words_put(s, _("Hold the heading"));
}

static void put_straight(words_say *s, const teller *t, const instant *at, const ox_leg *leg) {
  words_figure heading = words_marked(t->c, leg->heading0_true_deg);
  switch (leg->kind) {
  case OX_LEG_OUTBOUND:
  case OX_LEG_ENTRY_OUTBOUND: put_outbound(s, t, at, leg); break;
  case OX_LEG_INTERCEPT:
    words_put(s, _("Heading %s to the course"), heading.text);
    break;
  case OX_LEG_INBOUND:
    words_put(s, _("Course %s on heading %s"), words_given(t->c, t->c->hold.inbound_deg).text,
              heading.text);
    break;
  case OX_LEG_DIRECT_TO_FIX:
    words_put(s, _("Straight to the fix on heading %s"), heading.text);
    break;
  case OX_LEG_ADRIFT:
    words_put(s, _("The fix cannot be regained"));
    break;
  default:
    words_put(s, _("Heading %s"), heading.text);
    break;
  }
}

static bool clock_starts_later(const ox_flight *f, double t_s) {
  for (size_t i = 0; i < f->event_count; i++) {
    if (f->events[i].t_s <= t_s + SAME_INSTANT_S) continue;
    if (f->events[i].kind == OX_EVENT_CLOCK_START) return true;
    if (f->events[i].kind == OX_EVENT_FIX) return false;
  }
  return false;
}

/* Something noted in the middle of a leg: abeam, or the beginning of the clock. */
static void put_noted(words_say *s, const teller *t, const instant *at) {
  const ox_leg *leg = &t->f->legs[ox_flight_leg_index(t->f, at->t_s)];
  if (leg->shape == OX_SHAPE_STRAIGHT)
    put_outbound(s, t, at, leg);
  else if (at->kinds & HAS(OX_EVENT_CLOCK_START))
    words_put(s, _("Start the clock, still turning"));
  else
    words_put(s, "%s",
              clock_starts_later(t->f, at->t_s)
                  ? _("Still turning: the clock waits for wings level")
                  : _("Still turning"));
}

static void put_fix(words_say *s, const teller *t, const instant *at) {
  const ox_leg *next = at->begins, *end = t->f->legs + t->f->leg_count;
  if (!next) {
    words_put(s, _("The hold ends here"));
    return;
  }
  if (fabs(at->t_s) <= SAME_INSTANT_S)
    words_put(s, "%s",
              t->f->flown == OX_ENTRY_DIRECT     ? _("Direct entry. ")
              : t->f->flown == OX_ENTRY_PARALLEL ? _("Parallel entry. ")
                                                 : _("Teardrop entry. "));
  if (next->kind == OX_LEG_REACTION && next + 1 < end) next++;
  if (next->shape == OX_SHAPE_TURN)
    put_turn(s, t, next);
  else
    put_straight(s, t, at, next);
}

static void put_act(words_say *s, const teller *t, const instant *at) {
  if (at->kinds & HAS(OX_EVENT_FIX))
    put_fix(s, t, at);
  else if (!at->begins)
    put_noted(s, t, at);
  else if (at->begins->shape == OX_SHAPE_TURN)
    put_turn(s, t, at->begins);
  else
    put_straight(s, t, at, at->begins);
}

/* ---- the list ----------------------------------------------------------------------------- */

static void tell(const teller *t, const instant *at, int circuit, ox_moment *out) {
  char clock[24];
  *out = (ox_moment){.t_s = at->t_s, .circuit = circuit};
  words_say what = words_into(out->what, sizeof out->what);
  words_put(&what, "%s", what_of(at));
  ox_words_min_s(clock, sizeof clock, at->t_s);
  words_say figures = words_into(out->figures, sizeof out->figures);
  ox_state state = ox_flight_at(t->f, at->t_s);
  words_put(&figures, _("%s, heading %s"), clock, words_marked(t->c, state.heading_true_deg).text);
  words_say act = words_into(out->act, sizeof out->act);
  put_act(&act, t, at);
}

/* The instants of crossing the fix that begin circuit `first` and end circuit `last`. */
static bool bounds(const ox_flight *f, int first, int last, double *from_s, double *to_s) {
  int count = (int)f->circuit_count;
  if (f->leg_count == 0 || last < first || first > count) return false;
  *from_s = first < 1 ? 0.0 : f->circuits[first - 1].fix_t_s;
  if (last < 1)
    *to_s = count > 0 ? f->circuits[0].fix_t_s : ox_flight_end_s(f);
  else
    *to_s = last <= count ? f->circuits[last - 1].end_t_s : ox_flight_end_s(f);
  return true;
}

static int circuit_of(const ox_flight *f, double t_s) {
  int circuit = 0;
  while (circuit < (int)f->circuit_count &&
         t_s >= f->circuits[circuit].fix_t_s - SAME_INSTANT_S)
    circuit++;
  return circuit;
}

ox_moments ox_moments_make(const ox_case *c, const ox_flight *flight, int first, int last) {
  ox_moments all = {0};
  double from_s, to_s;
  teller t = {.c = c, .f = flight};
  if (!bounds(flight, first, last, &from_s, &to_s)) return all;
  for (size_t i = 0; i < flight->event_count && all.count < OX_MOMENTS_MAX;) {
    instant at = instant_at(flight, &i);
    if (at.t_s < from_s - SAME_INSTANT_S || at.t_s > to_s + SAME_INSTANT_S) continue;
    if (at.kinds & HAS(OX_EVENT_FIX)) t.established = false;
    if (is_key(&t, &at)) tell(&t, &at, circuit_of(flight, at.t_s), &all.moment[all.count++]);
    if (at.kinds & HAS(OX_EVENT_INTERCEPT)) t.established = true;
  }
  return all;
}
