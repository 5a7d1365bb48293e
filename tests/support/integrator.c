/* Numerical integration of a flight: Runge-Kutta Prince-Dormand (8, 9) with adaptive steps. The
 * right-hand side uses its own trigonometry, so that it shares nothing with the engine but the
 * heading programme. */
#include "integrator.h"

#include <gsl/gsl_errno.h>
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
