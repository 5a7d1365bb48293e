/* Numerical integration of a flight: Runge-Kutta Prince-Dormand (8, 9) with adaptive steps. The
 * right-hand side uses its own trigonometry, so that it shares nothing with the engine but the
 * heading programme. */
#include "integrator.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_multiroots.h>
#include <gsl/gsl_odeiv2.h>
#include <math.h>
#include <stdint.h>

#include "oxbow/units.h"

/* Position in NM, time in seconds from the start of the leg. */
static int ground_velocity(double s, const double p[], double dpdt[], void *leg_of_flight) {
  const ox_leg *leg = leg_of_flight;
  double heading = (leg->heading0_true_deg + leg->rate_deg_s * s) * OX_RAD_PER_DEG;
  dpdt[0] = (leg->tas_kt * sin(heading) + leg->wind_kt.x) / OX_S_PER_H;
  dpdt[1] = (leg->tas_kt * cos(heading) + leg->wind_kt.y) / OX_S_PER_H;
  return GSL_SUCCESS;
}

bool ox_integrate_leg(const ox_leg *leg, double t_s, double relative_error, ox_vec *p_nm) {
  double duration_s = t_s - leg->t0_s;
  if (!(duration_s > 0)) return true;
  gsl_odeiv2_system system = {ground_velocity, NULL, 2, (void *)(uintptr_t)leg};
  /* First step: a second; absolute error the relative one of a mile. */
  gsl_odeiv2_driver *driver =
      gsl_odeiv2_driver_alloc_y_new(&system, gsl_odeiv2_step_rk8pd, fmin(1, duration_s),
                                    relative_error, relative_error);
  if (!driver) return false;
  double s = 0, p[2] = {p_nm->x, p_nm->y};
  int status = gsl_odeiv2_driver_apply(driver, &s, duration_s, p);
  gsl_odeiv2_driver_free(driver);
  if (status != GSL_SUCCESS) return false;
  *p_nm = (ox_vec){p[0], p[1]};
  return true;
}

bool ox_integrate_flight(const ox_flight *flight, double relative_error, ox_vec *ends_nm) {
  if (flight->leg_count == 0) return true;
  ox_vec p = flight->legs[0].p0_nm;
  for (size_t i = 0; i < flight->leg_count; i++) {
    const ox_leg *leg = &flight->legs[i];
    if (!ox_integrate_leg(leg, leg->t1_s, relative_error, &p)) return false;
    ends_nm[i] = p;
  }
  return true;
}

/* --- a circuit found by shooting ------------------------------------------------------------ */

typedef struct {
  const ox_circuit_problem *p;
  double relative_error;
} shot;

static bool fly(const shot *s, double from_deg, double rate_deg_s, double seconds, ox_vec *p_nm) {
  ox_leg leg = {.shape = rate_deg_s == 0 ? OX_SHAPE_STRAIGHT : OX_SHAPE_TURN,
                .t0_s = 0, .t1_s = seconds, .heading0_true_deg = from_deg,
                .rate_deg_s = rate_deg_s, .tas_kt = s->p->tas_kt, .wind_kt = s->p->wind_kt};
  return ox_integrate_leg(&leg, seconds, s->relative_error, p_nm);
}

static double turn_s(const ox_circuit_problem *p, double from_deg, double to_deg) {
  double deg = fmod((to_deg - from_deg) * p->sense, 360);
  return (deg < 0 ? deg + 360 : deg) / p->rate_deg_s;
}

static bool to_rollout(const shot *s, double outbound_deg, double outbound_s, ox_vec *p_nm) {
  const ox_circuit_problem *p = s->p;
  double rate = p->sense * p->rate_deg_s;
  return fly(s, p->fix_heading_true_deg, rate, turn_s(p, p->fix_heading_true_deg, outbound_deg),
             p_nm) &&
         fly(s, outbound_deg, 0, outbound_s, p_nm) &&
         fly(s, outbound_deg, rate, turn_s(p, outbound_deg, p->inbound_heading_true_deg), p_nm);
}

/* How far the roll-out is from where it should be: across and along the course. */
static int rollout_error(const gsl_vector *x, void *context, gsl_vector *f) {
  const shot *s = context;
  double course = s->p->inbound_true_deg * OX_RAD_PER_DEG;
  ox_vec along = {sin(course), cos(course)}, p = {0, 0};
  if (!to_rollout(s, gsl_vector_get(x, 0), 100 * gsl_vector_get(x, 1), &p)) return GSL_EFAILED;
  double wanted = -s->p->inbound_gs_kt / OX_S_PER_H * s->p->inbound_s;
  gsl_vector_set(f, 0, p.x * along.y - p.y * along.x);
  gsl_vector_set(f, 1, p.x * along.x + p.y * along.y - wanted);
  return GSL_SUCCESS;
}

static bool find_root(shot *s, gsl_vector *x) {
  gsl_multiroot_function f = {rollout_error, 2, s};
  gsl_multiroot_fsolver *solver = gsl_multiroot_fsolver_alloc(gsl_multiroot_fsolver_hybrids, 2);
  int status = gsl_multiroot_fsolver_set(solver, &f, x);
  for (int i = 0; i < 50 && status == GSL_SUCCESS; i++) {
    status = gsl_multiroot_fsolver_iterate(solver);
    if (gsl_multiroot_test_residual(solver->f, 1e-9) == GSL_SUCCESS) break;
  }
  bool found = gsl_multiroot_test_residual(solver->f, 1e-9) == GSL_SUCCESS;
  gsl_vector_memcpy(x, solver->x);
  gsl_multiroot_fsolver_free(solver);
  return found;
}

bool ox_shoot_circuit(const ox_circuit_problem *problem, double relative_error,
                      double *outbound_deg, double *outbound_s, double *miss_nm) {
  shot s = {problem, relative_error};
  gsl_vector *x = gsl_vector_alloc(2);
  gsl_vector_set(x, 0, *outbound_deg);
  gsl_vector_set(x, 1, *outbound_s / 100); /* of the size of degrees, for the step of the finder */
  bool found = find_root(&s, x);
  *outbound_deg = gsl_vector_get(x, 0);
  *outbound_s = 100 * gsl_vector_get(x, 1);
  gsl_vector_free(x);
  ox_vec p = {0, 0};
  found = found && to_rollout(&s, *outbound_deg, *outbound_s, &p) &&
          fly(&s, problem->inbound_heading_true_deg, 0, problem->inbound_s, &p);
  *miss_nm = hypot(p.x, p.y);
  return found;
}
