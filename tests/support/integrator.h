/* The flight integrated numerically with GSL, as a second opinion on the closed forms and as the
 * other side of the benchmark. Only tests use it. */
#ifndef OX_TESTS_INTEGRATOR_H
#define OX_TESTS_INTEGRATOR_H

#include "oxbow/flight.h"

/* Integrates dp/dt = V u(heading(t)) + wind from p_nm at the leg's start to t_s on the flight's
 * clock (within the leg), with the heading programme of the leg (first heading and rate). p_nm is
 * replaced by the position there. relative_error: of the step control, e.g. 1e-9. Returns false
 * when GSL reports an error. */
bool ox_integrate_leg(const ox_leg *leg, double t_s, double relative_error, ox_vec *p_nm);

/* Integrates through all legs, each from where the one before ended, starting at the first leg's
 * start; ends_nm[i] is the position at the end of leg i (room for leg_count). */
bool ox_integrate_flight(const ox_flight *flight, double relative_error, ox_vec *ends_nm);

/* What one circuit has to be found by integration: from over the fix on a heading, the outbound
 * heading and time after which the inbound turn rolls out on the course, so far from the fix that
 * the inbound leg lasts as asked for. */
typedef struct {
  double fix_heading_true_deg; /* on crossing the fix */
  double inbound_true_deg, inbound_heading_true_deg, inbound_gs_kt, inbound_s;
  int sense;
  double tas_kt, rate_deg_s;
  ox_vec wind_kt;
} ox_circuit_problem;

/* Finds them by shooting: the two unknowns by GSL's hybrid root finder, each trial flown by the
 * integrator. *outbound_deg and *outbound_s hold the first guess and are replaced; the inbound leg
 * is flown to the fix, whose distance at the end is *miss_nm. False when it does not converge. */
bool ox_shoot_circuit(const ox_circuit_problem *problem, double relative_error,
                      double *outbound_deg, double *outbound_s, double *miss_nm);

#endif
