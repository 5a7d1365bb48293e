/* A leg in closed form.
 *
 *   straight: p(t) = p0 + (V u(h) + w) t
 *   turn:     p(t) = p0 + w t + (V/omega) [ -cos h(t) + cos h0,  sin h(t) - sin h0 ]
 *
 * with h(t) = h0 + omega t, omega signed (right positive), bearings clockwise from north. */
#include "oxbow/leg.h"

#include <math.h>

#include "oxbow/mark.h"
#include "oxbow/units.h"
#include "oxbow/wind.h"

static double into_leg_s(const ox_leg *leg, double t_s) {
  double dt = t_s - leg->t0_s, whole = leg->t1_s - leg->t0_s;
  if (!(dt > 0.0)) return 0.0;
  return dt > whole ? whole : dt;
}

ox_vec ox_leg_position(const ox_leg *leg, double t_s) {
  double dt = into_leg_s(leg, t_s);
  double drift_s = dt / OX_S_PER_H;
  double s0, c0;
  ox_sincos_deg(leg->heading0_true_deg, &s0, &c0);
  ox_vec p = leg->p0_nm;
  p.x += leg->wind_kt.x * drift_s;
  p.y += leg->wind_kt.y * drift_s;
  if (leg->shape == OX_SHAPE_STRAIGHT) {
    p.x += leg->tas_kt * s0 * drift_s;
    p.y += leg->tas_kt * c0 * drift_s;
    return p;
  }
  /* Chord form of the turn: a displacement of V dt sinc(half) along the mean heading loses no
   * figures for the shortest of turns. */
  double half_deg = 0.5 * leg->rate_deg_s * dt;
  double half_rad = half_deg * OX_RAD_PER_DEG;
  double sm, cm, sh, ch;
  ox_sincos_deg(leg->heading0_true_deg + half_deg, &sm, &cm);
  ox_sincos_deg(half_deg, &sh, &ch);
  double chord = leg->tas_kt * drift_s * (fabs(half_rad) > 1e-8 ? sh / half_rad : 1.0);
  p.x += chord * sm;
  p.y += chord * cm;
  return p;
}

ox_state ox_leg_at(const ox_leg *leg, double t_s) {
  double dt = into_leg_s(leg, t_s);
  ox_state state;
  state.p_nm = ox_leg_position(leg, t_s);
  state.heading_true_deg = ox_norm360_deg(leg->heading0_true_deg + leg->rate_deg_s * dt);
  ox_made_good m = ox_made_good_on(state.heading_true_deg, leg->tas_kt, leg->wind_kt);
  state.track_true_deg = m.track_deg;
  state.gs_kt = m.gs_kt;
  state.drift_deg = m.drift_deg;
  return state;
}

static const char *const leg_names[OX_LEG_KIND_COUNT] = {
    [OX_LEG_ARRIVAL] = N_("arrival"),
    [OX_LEG_REACTION] = N_("reaction"),
    [OX_LEG_ENTRY_TURN] = N_("entry turn"),
    [OX_LEG_ENTRY_OUTBOUND] = N_("entry outbound"),
    [OX_LEG_ENTRY_INBOUND_TURN] = N_("entry inbound turn"),
    [OX_LEG_OUTBOUND_TURN] = N_("outbound turn"),
    [OX_LEG_OUTBOUND] = N_("outbound"),
    [OX_LEG_INBOUND_TURN] = N_("inbound turn"),
    [OX_LEG_INTERCEPT] = N_("intercept"),
    [OX_LEG_INTERCEPT_TURN] = N_("intercept turn"),
    [OX_LEG_INBOUND] = N_("inbound"),
    [OX_LEG_DIRECT_TURN] = N_("turn to the fix"),
    [OX_LEG_DIRECT_TO_FIX] = N_("direct to the fix"),
    [OX_LEG_ADRIFT] = N_("adrift"),
    [OX_LEG_ROUTE] = N_("route"),
};

const char *ox_leg_name(ox_leg_kind kind) {
  unsigned i = (unsigned)kind;
  return i < OX_LEG_KIND_COUNT ? leg_names[i] : "unknown";
}
