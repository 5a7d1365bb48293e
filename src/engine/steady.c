/* The steady hold in closed form, or the reason why none exists.
 *
 * In the hold's frame (frame.h), all speeds in NM/s: V the TAS, w the wind, tau = 360/omega the
 * time of both turns, r the reaction before each turn, G the inbound ground speed. The two turns
 * together are a full circle, so through the air they cancel; over the ground they leave w tau.
 * With an inbound leg of length L the circuit closes when
 *
 *     (0, L + G r) + w tau + (V u + w) t = 0          u = unit vector of the outbound heading
 *
 * that is V t u = -(A + w t) with A = (w_x tau, L + G r + w_y tau). Squaring gives
 *
 *     (V2 - w2) t2 - 2 (A.w) t - A.A = 0
 *
 * whose one positive root is the outbound time, reaction included. (holding-standards 14.1) */
#include "oxbow/steady.h"

#include <math.h>
#include <stddef.h>

#include "frame.h"
#include "oxbow/leg.h"
#include "oxbow/units.h"
#include "oxbow/wind.h"
#include "root.h"
#include "station.h"

typedef struct {
  double v, rate_deg_s, tau_s, reaction_s;
  ox_vec w;
  double in_heading_deg; /* in the frame: the wind correction angle */
  double gs;             /* inbound, NM/s */
  ox_dme dme;            /* in the frame, with goal outbound DME */
} problem;

typedef struct {
  double t_s;         /* outbound, reaction included */
  double heading_deg; /* in the frame */
} outbound;

/* Outbound time and heading that close a circuit with an inbound leg of length_nm. */
static outbound close_circuit(const problem *k, double length_nm) {
  ox_vec a = {k->w.x * k->tau_s, length_nm + k->gs * k->reaction_s + k->w.y * k->tau_s};
  double spare = k->v * k->v - ox_vec_dot(k->w, k->w);
  double aw = ox_vec_dot(a, k->w);
  outbound o;
  o.t_s = (aw + sqrt(aw * aw + spare * ox_vec_dot(a, a))) / spare;
  o.heading_deg = ox_bearing_deg((ox_vec){-(a.x + k->w.x * o.t_s), -(a.y + k->w.y * o.t_s)});
  return o;
}

/* For a hold whose outbound leg ends at a place, not at a time: how far beyond it the leg ends
 * when the inbound leg is length_nm long. */
typedef struct {
  const problem *k;
  ox_goal goal;
  double outbound_nm;
  bool limit; /* the limiting radial, not the reading */
} outbound_end;

/* What ends the leg is seen before the reaction, the turn begins after it: where it is seen, and
 * where the wings were level before. */
static ox_vec outbound_seen_nm(const problem *k, double length_nm, outbound *o, ox_vec *velocity) {
  *o = close_circuit(k, length_nm);
  double turn_deg = ox_turn_in_sense_deg(o->heading_deg, k->in_heading_deg, 1);
  double s_in, c_in, s_out, c_out;
  ox_sincos_deg(k->in_heading_deg, &s_in, &c_in);
  ox_sincos_deg(o->heading_deg, &s_out, &c_out);
  double radius_nm = k->v / (k->rate_deg_s * OX_RAD_PER_DEG);
  double turn_s = turn_deg / k->rate_deg_s;
  ox_vec end = {-(radius_nm * (c_out - c_in) + k->w.x * turn_s),
                -length_nm - (radius_nm * (s_in - s_out) + k->w.y * turn_s)};
  ox_vec u = ox_unit(o->heading_deg);
  *velocity = (ox_vec){k->v * u.x + k->w.x, k->v * u.y + k->w.y};
  return ox_vec_sub(end, ox_vec_scale(*velocity, k->reaction_s));
}

static double outbound_end_error_nm(double length_nm, void *context) {
  const outbound_end *e = context;
  const problem *k = e->k;
  outbound o;
  ox_vec velocity, end = outbound_seen_nm(k, length_nm, &o, &velocity);
  if (e->limit) return ox_limit_beyond_nm(&k->dme, end);
  if (e->goal == OX_GOAL_OUTBOUND_NM) return -end.y - e->outbound_nm;
  double ground_nm = ox_vec_length(ox_vec_sub(end, k->dme.at_nm));
  return k->dme.outward * (ground_nm - k->dme.end_ground_nm);
}

/* The shortest inbound leg that the drift in the turns still leaves an outbound leg for. */
static double shortest_inbound_nm(const problem *k) {
  double drift_nm = -(k->gs * k->reaction_s + k->w.y * k->tau_s);
  return drift_nm > 0.0 ? drift_nm : 0.0;
}

static ox_steady_why solve_outbound_end(const outbound_end *e, double *length_nm) {
  const problem *k = e->k;
  double low = shortest_inbound_nm(k) + 1e-6, f_low = outbound_end_error_nm(low, (void *)e);
  if (f_low > 0.0) return OX_STEADY_TURN_DRIFT;
  double step_nm = fmax(e->outbound_nm, 1.0), high = low + step_nm;
  double f_high = outbound_end_error_nm(high, (void *)e);
  for (int i = 0; i < 20 && f_high < 0.0; i++) {
    high += step_nm + k->tau_s * k->v;
    f_high = outbound_end_error_nm(high, (void *)e);
  }
  if (f_high < 0.0) return OX_STEADY_CROSS_DRIFT;
  *length_nm = ox_root(outbound_end_error_nm, (void *)e, low, high, f_low, f_high);
  return OX_STEADY_EXISTS;
}

/* Whether the outbound leg of the circuit with this inbound leg meets the limiting radial no later
 * than it ends, and not on its continuation behind the station. */
static bool meets_limit(const problem *k, double length_nm) {
  outbound o;
  ox_vec velocity, end = outbound_seen_nm(k, length_nm, &o, &velocity);
  double straight_s = o.t_s - k->reaction_s;
  ox_vec level = ox_vec_sub(end, ox_vec_scale(velocity, straight_s));
  double at_s = ox_limit_reached_s(&k->dme, level, velocity);
  return at_s >= 0.0 && at_s <= straight_s + 1e-9;
}

static ox_steady_why solve_outbound_station(const problem *k, double goal_nm, double *length_nm) {
  outbound_end by_reading = {k, OX_GOAL_OUTBOUND_DME, goal_nm, false};
  outbound_end by_limit = {k, OX_GOAL_OUTBOUND_DME, fabs(goal_nm), true};
  ox_steady_why why = OX_STEADY_CROSS_DRIFT;
  double limit_nm = 0.0;
  if (k->dme.end_ground_nm > 0.0) why = solve_outbound_end(&by_reading, length_nm);
  if (!k->dme.limited || (why == OX_STEADY_EXISTS && !meets_limit(k, *length_nm))) return why;
  ox_steady_why limit_why = solve_outbound_end(&by_limit, &limit_nm);
  if (limit_why == OX_STEADY_EXISTS && !meets_limit(k, limit_nm)) return why;
  *length_nm = limit_nm;
  return limit_why;
}

/* Outbound flown so that its length over the ground, along the course, is what it is in still
 * air: with lateral closure V t sin h = -w_x (t + tau) and V t cos h + w_y t = -D,
 *     (V2 - w2) t2 - 2 (w_x2 tau + D w_y) t - (w_x2 tau2 + D2) = 0,  D = V goal_s. */
static ox_steady_why solve_outbound_air(const problem *k, double goal_s, double *length_nm) {
  double d = k->v * goal_s, wx2 = k->w.x * k->w.x;
  double spare = k->v * k->v - ox_vec_dot(k->w, k->w);
  double b = wx2 * k->tau_s + d * k->w.y;
  double c = wx2 * k->tau_s * k->tau_s + d * d;
  double t = (b + sqrt(b * b + spare * c)) / spare;
  if (!(d + k->w.y * t > 0.0)) return OX_STEADY_CROSS_DRIFT;
  *length_nm = d - k->w.y * k->tau_s - k->gs * k->reaction_s;
  return *length_nm > 0.0 ? OX_STEADY_EXISTS : OX_STEADY_TURN_DRIFT;
}

static ox_steady_why inbound_length(const problem *k, ox_goal goal, double value, double *nm) {
  switch (goal) {
  case OX_GOAL_INBOUND_S: *nm = k->gs * value; return OX_STEADY_EXISTS;
  case OX_GOAL_INBOUND_NM: *nm = value; return OX_STEADY_EXISTS;
  case OX_GOAL_OUTBOUND_AIR: return solve_outbound_air(k, value, nm);
  case OX_GOAL_OUTBOUND_NM: return solve_outbound_end(&(outbound_end){k, goal, value, false}, nm);
  case OX_GOAL_OUTBOUND_DME: return solve_outbound_station(k, value, nm);
  }
  return OX_STEADY_TURN_DRIFT;
}

/* Headwind at which the turns alone use up the inbound leg: with GS = V cos(wca) - headwind,
 * (GS)(t_i + r) = headwind tau; V/3 for one-minute legs at rate one with nothing across. */
static double turn_drift_limit_kt(const problem *k, ox_goal goal, double value, double tas_kt) {
  if (goal != OX_GOAL_INBOUND_S) return 0.0;
  double s, c;
  ox_sincos_deg(k->in_heading_deg, &s, &c);
  double leg_s = value + k->reaction_s;
  return tas_kt * c * leg_s / (leg_s + k->tau_s);
}

static void refuse(ox_steady *out, ox_steady_why why, double component_kt, double limit_kt) {
  *out = (ox_steady){.why = why, .component_kt = component_kt, .limit_kt = limit_kt};
}

/* Limits that depend on the wind alone. True when one is passed. */
static bool wind_refused(const ox_triangle *in, double tas_kt, double wind_kt, ox_steady *out) {
  if (!in->possible) {
    refuse(out, OX_STEADY_CROSSWIND, fabs(in->cross_kt), tas_kt);
  } else if (in->gs_kt <= 0.0) {
    refuse(out, OX_STEADY_HEADWIND, -in->along_kt, in->gs_kt - in->along_kt);
  } else if (wind_kt >= tas_kt) {
    refuse(out, OX_STEADY_TAILWIND, wind_kt, tas_kt);
  } else {
    return false;
  }
  return true;
}

void ox_steady_solve(double inbound_deg, double tas_kt, double rate_deg_s, double reaction_s,
                     ox_vec wind_kt, ox_goal goal, double goal_value, ox_steady *out) {
  ox_steady_solve_dme(inbound_deg, 1, tas_kt, rate_deg_s, reaction_s, wind_kt, goal, goal_value,
                      NULL, out);
}

void ox_steady_solve_dme(double inbound_deg, int sense, double tas_kt, double rate_deg_s,
                         double reaction_s, ox_vec wind_kt, ox_goal goal, double goal_value,
                         const ox_dme *dme, ox_steady *out) {
  ox_triangle in = ox_triangle_for_course(inbound_deg, tas_kt, wind_kt);
  if (wind_refused(&in, tas_kt, ox_vec_length(wind_kt), out)) return;

  ox_frame frame = ox_frame_make(inbound_deg, sense);
  problem k = {0};
  k.v = tas_kt / OX_S_PER_H;
  k.rate_deg_s = rate_deg_s;
  k.tau_s = 360.0 / rate_deg_s;
  k.reaction_s = reaction_s;
  k.w = ox_vec_scale(ox_frame_in(&frame, wind_kt), 1.0 / OX_S_PER_H);
  k.in_heading_deg = sense * in.wca_deg;
  k.gs = in.gs_kt / OX_S_PER_H;
  if (dme) {
    k.dme = station_in_frame(&frame, dme);
  }

  double length_nm = 0.0;
  ox_steady_why why = inbound_length(&k, goal, goal_value, &length_nm);
  if (why == OX_STEADY_EXISTS && !(length_nm > shortest_inbound_nm(&k)))
    why = OX_STEADY_TURN_DRIFT;
  outbound o = {0, 180};
  if (why == OX_STEADY_EXISTS) {
    o = close_circuit(&k, length_nm);
    /* An outbound heading across or back along the course is a closed figure but not a hold. */
    if (o.t_s < reaction_s || fabs(ox_turn_between_deg(180.0, o.heading_deg)) >= 90.0)
      why = OX_STEADY_CROSS_DRIFT;
  }
  if (why == OX_STEADY_EXISTS && o.t_s > OX_LEG_LONGEST_S) {
    refuse(out, OX_STEADY_TAILWIND, ox_vec_length(wind_kt), tas_kt);
    return;
  }
  if (why != OX_STEADY_EXISTS && k.dme.limited) {
    refuse(out, OX_STEADY_STATION, 0.0, 0.0);
    return;
  }
  if (why == OX_STEADY_TURN_DRIFT) {
    refuse(out, why, fabs(in.along_kt), turn_drift_limit_kt(&k, goal, goal_value, tas_kt));
    return;
  }
  if (why != OX_STEADY_EXISTS) {
    refuse(out, why, fabs(in.cross_kt), 0.0);
    return;
  }
  *out = (ox_steady){.why = OX_STEADY_EXISTS};
  out->inbound_heading_deg = in.heading_deg;
  out->inbound_wca_deg = in.wca_deg;
  out->inbound_gs_kt = in.gs_kt;
  out->inbound_s = length_nm / k.gs;
  out->outbound_heading_deg = ox_frame_heading_out(&frame, o.heading_deg);
  out->outbound_wca_deg = sense * ox_turn_between_deg(180.0, o.heading_deg) + 0.0;
  out->outbound_s = o.t_s;
  out->circuit_s = out->inbound_s + reaction_s + k.tau_s + o.t_s;
}
