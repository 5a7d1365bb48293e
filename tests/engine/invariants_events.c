/* Events and what was measured in each circuit, recomputed here from the legs alone. */
#include "invariants.h"
#include "oxbow/units.h"
#include "oxbow/wind.h"

static ox_vec course_of(const ox_flight *f) { return ox_unit(f->setup.inbound_true_deg); }

/* NM from the course, positive on the holding side. */
static double holding_side_nm(const ox_flight *f, ox_vec p) {
  return -f->setup.sense * ox_vec_cross(course_of(f), p);
}

static bool turn_leg_at(const ox_flight *f, double t_s, bool begins) {
  for (size_t i = 0; i < f->leg_count; i++)
    if (f->legs[i].shape == OX_SHAPE_TURN &&
        fabs((begins ? f->legs[i].t0_s : f->legs[i].t1_s) - t_s) <= 1e-9)
      return true;
  return false;
}

static void check_established(ox_sweep *sweep, const ox_case *c, const ox_flight *f,
                              double t_s, const ox_state *at) {
  /* In the conditions of the leg that the event begins: the inbound leg. */
  const ox_leg *leg = &f->legs[ox_flight_leg_index(f, t_s + 1e-7)];
  ox_triangle t =
      ox_triangle_for_course(f->setup.inbound_true_deg, leg->tas_kt, leg->wind_kt);
  double off = holding_side_nm(f, at->p_nm);
  ox_sweep_note(sweep, OX_HOLDS_ESTABLISHED,
                t.possible && fabs(off) <= 1e-9 &&
                    ox_same_bearing(at->heading_true_deg, t.heading_deg, 1e-7),
                c, "established %.3g NM off on heading %.9f for %.9f", off, at->heading_true_deg,
                t.heading_deg);
}

static void check_abeam(ox_sweep *sweep, const ox_case *c, const ox_flight *f,
                        const ox_state *at) {
  double along = ox_vec_dot(course_of(f), at->p_nm);
  double speed = at->gs_kt * ox_vec_dot(course_of(f), ox_unit(at->track_true_deg));
  ox_sweep_note(sweep, OX_HOLDS_ABEAM, fabs(along) <= 1e-8 && speed < 1e-6 * f->setup.tas_kt, c,
                "abeam %.3g NM along the course at %.6g kt", along, speed);
}

static void check_event(ox_sweep *sweep, const ox_case *c, const ox_flight *f,
                        const ox_event *e) {
  ox_state at = ox_flight_at(f, e->t_s);
  double from_fix = hypot(at.p_nm.x, at.p_nm.y);
  switch (e->kind) {
  case OX_EVENT_FIX:
    ox_sweep_note(sweep, OX_HOLDS_FIX, from_fix <= 1e-8, c, "fix event %.3g NM away at %.9g s",
                  from_fix, e->t_s);
    break;
  case OX_EVENT_TURN_BEGIN:
    ox_sweep_note(sweep, OX_HOLDS_TURN_EVENTS, turn_leg_at(f, e->t_s, true), c,
                  "no turn begins at %.12g s", e->t_s);
    break;
  case OX_EVENT_WINGS_LEVEL:
    ox_sweep_note(sweep, OX_HOLDS_TURN_EVENTS, turn_leg_at(f, e->t_s, false), c,
                  "no turn ends at %.12g s", e->t_s);
    break;
  case OX_EVENT_ABEAM: check_abeam(sweep, c, f, &at); break;
  case OX_EVENT_INTERCEPT: check_established(sweep, c, f, e->t_s, &at); break;
  case OX_EVENT_CLOCK_START:
  case OX_EVENT_KIND_COUNT: break;
  }
}

void ox_check_events(ox_sweep *sweep, const ox_case *c, const ox_flight *f) {
  double last = ox_flight_begin_s(f) - 1e-9, end = ox_flight_end_s(f) + 1e-9;
  for (size_t i = 0; i < f->event_count; i++) {
    double t = f->events[i].t_s;
    ox_sweep_note(sweep, OX_HOLDS_EVENT_ORDER, t >= last && t <= end, c,
                  "%s at %.12g s after %.12g, flight ends %.12g", ox_event_name(f->events[i].kind),
                  t, last, end);
    last = t;
    check_event(sweep, c, f, &f->events[i]);
  }
}

/* First leg of a kind in a circuit (1, 2, ...), or NULL. */
static const ox_leg *leg_of(const ox_flight *f, ox_leg_kind kind, int circuit) {
  for (size_t i = 0; i < f->leg_count; i++)
    if (f->legs[i].kind == kind && f->legs[i].circuit == circuit) return &f->legs[i];
  return NULL;
}

/* Time of the first event of a kind in a circuit, or NAN. */
static double event_s(const ox_flight *f, ox_event_kind kind, int circuit) {
  for (size_t i = 0; i < f->event_count; i++)
    if (f->events[i].kind == kind && f->events[i].circuit == circuit) return f->events[i].t_s;
  return (double)NAN;
}

static void check_clock(ox_sweep *sweep, const ox_case *c, const ox_flight *f, int circuit) {
  const ox_leg *turn = leg_of(f, OX_LEG_OUTBOUND_TURN, circuit);
  double clock = event_s(f, OX_EVENT_CLOCK_START, circuit);
  if (!turn || isnan(clock)) return;
  double level = turn->t1_s, abeam = event_s(f, OX_EVENT_ABEAM, circuit), want = level;
  if (!isnan(abeam) && c->technique.clock == OX_CLOCK_ABEAM) want = abeam;
  if (!isnan(abeam) && c->technique.clock == OX_CLOCK_ABEAM_OR_LEVEL) want = fmax(abeam, level);
  ox_sweep_note(sweep, OX_HOLDS_CLOCK, fabs(clock - want) <= 1e-8, c,
                "circuit %d: clock at %.9g, level %.9g, abeam %.9g", circuit, clock, level, abeam);
}

static void check_outbound(ox_sweep *sweep, const ox_case *c, const ox_flight *f, int circuit) {
  const ox_circuit *k = &f->circuits[circuit - 1];
  const ox_leg *first = leg_of(f, OX_LEG_OUTBOUND_TURN, circuit);
  const ox_leg *second = leg_of(f, OX_LEG_INBOUND_TURN, circuit);
  const ox_leg *out = leg_of(f, OX_LEG_OUTBOUND, circuit);
  if (out)
    ox_sweep_note(sweep, OX_HOLDS_OUTBOUND_S,
                  ox_same_bearing(out->heading0_true_deg, k->outbound_heading_true_deg, 1e-9), c,
                  "circuit %d: outbound on %.9f, measured %.9f", circuit, out->heading0_true_deg,
                  k->outbound_heading_true_deg);
  if (!first || !second) return;
  double flown = second->t0_s - first->t1_s;
  ox_sweep_note(sweep, OX_HOLDS_OUTBOUND_S, fabs(flown - k->outbound_s) <= 1e-8, c,
                "circuit %d: outbound %.9g s flown, %.9g measured", circuit, flown, k->outbound_s);
}

/* The plain turn: begun where the inbound turn begins and carried on to the inbound heading. */
static void check_inbound(ox_sweep *sweep, const ox_case *c, const ox_flight *f, int circuit) {
  const ox_circuit *k = &f->circuits[circuit - 1];
  const ox_leg *turn = leg_of(f, OX_LEG_INBOUND_TURN, circuit);
  ox_triangle t =
      ox_triangle_for_course(f->setup.inbound_true_deg, f->setup.tas_kt, f->setup.wind_kt);
  if (!turn || !t.possible) return;
  double angle = ox_turn_in_sense_deg(turn->heading0_true_deg, t.heading_deg, f->setup.sense);
  double end_s = turn->t0_s + angle / f->setup.rate_deg_s;
  if (angle < 1e-6 || angle > 360 - 1e-6) return; /* rounding decides between none and a full one */
  if (!k->complete) return;
  ox_sweep_note(sweep, OX_HOLDS_INBOUND_S, fabs(k->end_t_s - end_s - k->inbound_s) <= 1e-7, c,
                "circuit %d: inbound %.9g s, measured %.9g", circuit, k->end_t_s - end_s,
                k->inbound_s);
  double a = turn->heading0_true_deg, b = a + f->setup.sense * angle, sa, ca, sb, cb;
  ox_sincos_deg(a, &sa, &ca);
  ox_sincos_deg(b, &sb, &cb);
  double h = (end_s - turn->t0_s) / OX_S_PER_H, r = f->setup.sense * f->setup.radius_nm;
  ox_vec end = {turn->p0_nm.x + r * (ca - cb) + f->setup.wind_kt.x * h,
                turn->p0_nm.y + r * (sb - sa) + f->setup.wind_kt.y * h};
  double offset = holding_side_nm(f, end);
  ox_sweep_note(sweep, OX_HOLDS_ROLLOUT, fabs(offset - k->rollout_offset_nm) <= 1e-7, c,
                "circuit %d: plain turn ends %.9g NM off, measured %.9g", circuit, offset,
                k->rollout_offset_nm);
}

static void check_nonholding(ox_sweep *sweep, const ox_case *c, const ox_flight *f,
                             const ox_circuit *k) {
  if (sweep->flights % 20 != 0) return; /* a dense sampling: every twentieth flight */
  double farthest = 0, end = k->complete ? k->end_t_s : ox_flight_end_s(f);
  int steps = (int)fmin(1500, fmax(200, end - k->fix_t_s));
  for (int i = 0; i <= steps; i++) {
    ox_vec p = ox_flight_at(f, k->fix_t_s + (end - k->fix_t_s) * i / steps).p_nm;
    farthest = fmax(farthest, -holding_side_nm(f, p));
  }
  double step_s = (end - k->fix_t_s) / steps, gs = f->setup.tas_kt + f->setup.wind_speed_kt;
  ox_sweep_note(sweep, OX_HOLDS_NONHOLDING,
                farthest <= k->nonholding_nm + 1e-8 &&
                    (!k->complete || k->nonholding_nm <= farthest + gs * step_s / OX_S_PER_H),
                c, "sampled %.9g NM, measured %.9g", farthest, k->nonholding_nm);
}

static void check_bounds(ox_sweep *sweep, const ox_case *c, const ox_flight *f, size_t i) {
  const ox_circuit *k = &f->circuits[i];
  ox_vec begin = ox_flight_at(f, k->fix_t_s).p_nm;
  bool ok = hypot(begin.x, begin.y) <= 1e-8;
  if (k->complete) {
    ox_vec end = ox_flight_at(f, k->end_t_s).p_nm;
    ok = ok && hypot(end.x, end.y) <= 1e-8 && k->end_t_s > k->fix_t_s;
  } else {
    ok = ok && i + 1 == f->circuit_count && k->inbound_s == 0;
  }
  if (i > 0)
    ok = ok && f->circuits[i - 1].complete &&
         fabs(f->circuits[i - 1].end_t_s - k->fix_t_s) <= 1e-9;
  ox_sweep_note(sweep, OX_HOLDS_FIX, ok, c, "circuit %zu does not run from fix to fix", i + 1);
}

void ox_check_circuits(ox_sweep *sweep, const ox_case *c, const ox_flight *f) {
  for (size_t i = 0; i < f->circuit_count; i++) {
    int circuit = (int)i + 1;
    check_bounds(sweep, c, f, i);
    check_clock(sweep, c, f, circuit);
    check_outbound(sweep, c, f, circuit);
    check_inbound(sweep, c, f, circuit);
    check_nonholding(sweep, c, f, &f->circuits[i]);
  }
}
