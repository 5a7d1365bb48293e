/* The flight as a path: legs meet, headings run on, the airspeed is the airspeed. */
#include "invariants.h"
#include "oxbow/units.h"
#include "random_case.h"

bool ox_same_bearing(double a, double b, double tolerance_deg) {
  return fabs(remainder(a - b, 360)) <= tolerance_deg;
}

void ox_sweep_note(ox_sweep *sweep, ox_property property, bool ok, const ox_case *c,
                   const char *format, ...) {
  sweep->checked[property]++;
  if (ok || sweep->broken[property]++ > 0) return;
  char *text = sweep->first[property];
  size_t bytes = sizeof sweep->first[property];
  va_list args;
  va_start(args, format);
  int length = vsnprintf(text, bytes, format, args);
  va_end(args);
  if (length > 0 && (size_t)length + 8 < bytes) {
    memcpy(text + length, " | ", 4);
    ox_case_to_line(c, text + length + 3, bytes - (size_t)length - 3);
  }
}

static bool all_finite(const double *values, size_t count) {
  for (size_t i = 0; i < count; i++)
    if (!isfinite(values[i])) return false;
  return true;
}

static bool leg_is_finite(const ox_leg *l) {
  const double v[] = {l->t0_s, l->t1_s, l->p0_nm.x, l->p0_nm.y, l->p1_nm.x, l->p1_nm.y,
                      l->heading0_true_deg, l->heading1_true_deg, l->rate_deg_s, l->tas_kt,
                      l->wind_kt.x, l->wind_kt.y};
  return all_finite(v, sizeof v / sizeof *v) && l->heading0_true_deg >= 0 &&
         l->heading0_true_deg < 360 && l->heading1_true_deg >= 0 && l->heading1_true_deg < 360 &&
         (int)l->kind >= 0 && l->kind < OX_LEG_KIND_COUNT && (int)l->part >= 0 &&
         l->part <= OX_PART_CIRCUIT && (l->shape == OX_SHAPE_TURN) == (l->rate_deg_s != 0);
}

static bool circuit_is_finite(const ox_circuit *k) {
  const double v[] = {k->fix_t_s, k->end_t_s, k->outbound_heading_true_deg, k->outbound_s,
                      k->timed_s, k->inbound_s, k->rollout_offset_nm, k->nonholding_nm};
  return all_finite(v, sizeof v / sizeof *v) && k->nonholding_nm >= 0 && k->outbound_s >= 0 &&
         k->outbound_heading_true_deg >= 0 && k->outbound_heading_true_deg < 360;
}

static bool setup_is_finite(const ox_flight *f) {
  const ox_setup *s = &f->setup;
  const ox_steady *h = &f->steady;
  const double v[] = {s->ias_kt, s->tas_kt, s->bank_deg, s->rate_deg_s, s->radius_nm,
                      s->inbound_true_deg, s->arrival_heading_true_deg, s->arrival_track_true_deg,
                      s->wind_kt.x, s->wind_kt.y, s->wind_from_true_deg, s->wind_speed_kt,
                      s->leg_s, s->goal_value, s->speed_limit_kias, h->inbound_heading_deg,
                      h->inbound_wca_deg, h->inbound_gs_kt, h->inbound_s, h->outbound_heading_deg,
                      h->outbound_wca_deg, h->outbound_s, h->circuit_s, h->component_kt,
                      h->limit_kt, f->entry_heading_true_deg, f->entry.relative_deg,
                      f->entry.boundary_deg, f->entry.boundary_at_deg};
  return all_finite(v, sizeof v / sizeof *v) && (s->sense == 1 || s->sense == -1);
}

static void check_finite(ox_sweep *sweep, const ox_case *c, const ox_flight *f) {
  bool ok = f->leg_count <= OX_LEGS_MAX && f->event_count <= OX_EVENTS_MAX &&
            f->circuit_count <= (size_t)c->technique.circuits &&
            f->advice_count <= OX_ADVISORIES_MAX && setup_is_finite(f);
  for (size_t i = 0; ok && i < f->leg_count; i++) ok = leg_is_finite(&f->legs[i]);
  for (size_t i = 0; ok && i < f->circuit_count; i++) ok = circuit_is_finite(&f->circuits[i]);
  for (size_t i = 0; ok && i < f->event_count; i++)
    ok = isfinite(f->events[i].t_s) && (int)f->events[i].kind >= 0 &&
         f->events[i].kind < OX_EVENT_KIND_COUNT && f->events[i].circuit >= 0 &&
         f->events[i].circuit <= c->technique.circuits;
  for (size_t i = 0; ok && i < f->advice_count; i++)
    ok = isfinite(f->advice[i].a) && isfinite(f->advice[i].b) && isfinite(f->advice[i].c) &&
         (int)f->advice[i].kind >= 0 && f->advice[i].kind < OX_ADVICE_KIND_COUNT;
  ox_sweep_note(sweep, OX_HOLDS_FINITE, ok, c, "a number or code is out of bounds");
}

static void check_joint(ox_sweep *sweep, const ox_case *c, const ox_leg *a, const ox_leg *b) {
  double gap = hypot(a->p1_nm.x - b->p0_nm.x, a->p1_nm.y - b->p0_nm.y);
  ox_sweep_note(sweep, OX_HOLDS_LEGS_MEET,
                gap <= 1e-9 && fabs(a->t1_s - b->t0_s) <= 1e-9 && b->t1_s >= b->t0_s, c,
                "%s to %s: gap %.3g NM, %.3g s", ox_leg_name(a->kind), ox_leg_name(b->kind), gap,
                b->t0_s - a->t1_s);
  ox_sweep_note(sweep, OX_HOLDS_HEADINGS,
                ox_same_bearing(a->heading1_true_deg, b->heading0_true_deg, 1e-9), c,
                "%s ends on %.12g, %s begins on %.12g", ox_leg_name(a->kind),
                a->heading1_true_deg, ox_leg_name(b->kind), b->heading0_true_deg);
}

static void check_ends(ox_sweep *sweep, const ox_case *c, const ox_leg *l) {
  ox_state s0 = ox_leg_at(l, l->t0_s), s1 = ox_leg_at(l, l->t1_s);
  double off0 = hypot(s0.p_nm.x - l->p0_nm.x, s0.p_nm.y - l->p0_nm.y);
  double off1 = hypot(s1.p_nm.x - l->p1_nm.x, s1.p_nm.y - l->p1_nm.y);
  ox_sweep_note(sweep, OX_HOLDS_LEG_ENDS,
                off0 <= 1e-9 && off1 <= 1e-9 &&
                    ox_same_bearing(s0.heading_true_deg, l->heading0_true_deg, 1e-9) &&
                    ox_same_bearing(s1.heading_true_deg, l->heading1_true_deg, 1e-9),
                c, "%s: ends off by %.3g and %.3g NM", ox_leg_name(l->kind), off0, off1);
  double turned = l->rate_deg_s * (l->t1_s - l->t0_s);
  /* While the wind carries a turning aircraft about the fix, more than one circle may be needed
   * until the track leads there. */
  double most_deg = l->kind == OX_LEG_DIRECT_TURN ? 720 : 360;
  ox_sweep_note(sweep, OX_HOLDS_HEADINGS,
                ox_same_bearing(l->heading0_true_deg + turned, l->heading1_true_deg, 1e-9) &&
                    fabs(turned) <= most_deg + 1e-6,
                c, "%s: turns %.12g from %.12g to %.12g", ox_leg_name(l->kind), turned,
                l->heading0_true_deg, l->heading1_true_deg);
}

/* By the state, and by differences of position over a tenth of a second. */
static void check_airspeed(ox_sweep *sweep, const ox_case *c, const ox_flight *f,
                           const ox_leg *l) {
  double tas = l->tas_kt, middle = 0.5 * (l->t0_s + l->t1_s), s, k;
  ox_state at = ox_leg_at(l, middle);
  ox_sincos_deg(at.track_true_deg, &s, &k);
  double by_state = hypot(at.gs_kt * s - l->wind_kt.x, at.gs_kt * k - l->wind_kt.y);
  /* Over less than a third of a degree of turn, so that the chord is the arc to 1e-5. */
  double turn_s = l->rate_deg_s != 0 ? 0.15 / fabs(l->rate_deg_s) : 1.0;
  double half = fmin(fmin(0.05, turn_s), 0.25 * (l->t1_s - l->t0_s)), by_difference = tas;
  if (half > 0.003) {
    ox_vec a = ox_leg_position(l, middle - half), b = ox_leg_position(l, middle + half);
    double to_kt = OX_S_PER_H / (2 * half);
    by_difference = hypot((b.x - a.x) * to_kt - l->wind_kt.x,
                          (b.y - a.y) * to_kt - l->wind_kt.y);
  }
  bool level = f->setup.condition_count == 1;
  bool as_set_up = tas == f->setup.tas_kt && l->wind_kt.x == f->setup.wind_kt.x &&
                   l->wind_kt.y == f->setup.wind_kt.y;
  ox_sweep_note(sweep, OX_HOLDS_AIRSPEED, !level || as_set_up, c, "%s: not in the wind or at the "
                "TAS of the setup", ox_leg_name(l->kind));
  ox_sweep_note(sweep, OX_HOLDS_AIRSPEED,
                fabs(by_state - tas) <= 1e-8 * tas && fabs(by_difference - tas) <= 1e-5 * tas, c,
                "%s: TAS %.12g, by state %.12g, by difference %.12g", ox_leg_name(l->kind), tas,
                by_state, by_difference);
}

static void check_queries(ox_sweep *sweep, const ox_case *c, const ox_flight *f) {
  if (f->leg_count == 0) {
    ox_sweep_note(sweep, OX_HOLDS_QUERIES,
                  ox_flight_begin_s(f) == 0 && ox_flight_end_s(f) == 0, c, "empty flight");
    return;
  }
  double begin = ox_flight_begin_s(f), end = ox_flight_end_s(f);
  bool ok = begin == f->legs[0].t0_s && end == f->legs[f->leg_count - 1].t1_s;
  for (size_t i = 0; i < f->leg_count; i++) {
    const ox_leg *l = &f->legs[i];
    double middle = 0.5 * (l->t0_s + l->t1_s);
    ox_vec a = ox_flight_at(f, middle).p_nm, b = ox_leg_position(l, middle);
    if (l->t1_s - l->t0_s > 1e-6) ok = ok && ox_flight_leg_index(f, middle) == i;
    ok = ok && hypot(a.x - b.x, a.y - b.y) <= 1e-9;
  }
  ox_vec first = ox_flight_at(f, begin - 1e6).p_nm, last = ox_flight_at(f, end + 1e6).p_nm;
  ox_vec p0 = f->legs[0].p0_nm, p1 = f->legs[f->leg_count - 1].p1_nm;
  ok = ok && hypot(first.x - p0.x, first.y - p0.y) <= 1e-9;
  ok = ok && hypot(last.x - p1.x, last.y - p1.y) <= 1e-9;
  ox_sweep_note(sweep, OX_HOLDS_QUERIES, ok, c, "the flight's state is not the leg's");
}

void ox_check_legs(ox_sweep *sweep, const ox_case *c, const ox_flight *f) {
  check_finite(sweep, c, f);
  for (size_t i = 0; i < f->leg_count; i++) {
    if (i > 0) check_joint(sweep, c, &f->legs[i - 1], &f->legs[i]);
    check_ends(sweep, c, &f->legs[i]);
    check_airspeed(sweep, c, f, &f->legs[i]);
  }
  check_queries(sweep, c, f);
}
