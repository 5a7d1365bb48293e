/* What anybody answers before the first leg is flown: the outbound course with the correction for
 * the steady wind, and the usual time. The exact technique flies something else on the first
 * circuit, where the fix is not crossed on the inbound heading. */
#include <math.h>

#include "oxbow/guess.h"

static bool is_calm(const ox_flight *flight) {
  for (size_t i = 0; i < flight->setup.condition_count; i++)
    if (ox_vec_length(flight->setup.conditions[i].wind_kt) > 0.0) return false;
  return true;
}

/* The steady hold's correction is one for the first circuit only while nothing changes and the
 * legs are flown for what the steady hold was worked out for. */
static bool is_steady(const ox_case *c, const ox_flight *flight) {
  return flight->steady.why == OX_STEADY_EXISTS && flight->setup.condition_count == 1 &&
         (c->hold.leg_by == OX_LEG_BY_DISTANCE || c->technique.outbound == OX_OUTBOUND_EXACT);
}

bool ox_guess_wind_part(const ox_case *c, const ox_flight *flight, double *correction_deg) {
  if (flight->leg_count == 0 || flight->circuit_count == 0) return false;
  double outbound_deg = flight->setup.inbound_true_deg + 180.0;
  if (is_calm(flight))
    *correction_deg = 0.0;
  else if (c->technique.drift != OX_DRIFT_EXACT) /* a multiple of the drift, and nothing else */
    *correction_deg =
        ox_turn_between_deg(outbound_deg, flight->circuits[0].outbound_heading_true_deg);
  else if (is_steady(c, flight))
    *correction_deg = flight->steady.outbound_wca_deg;
  else
    return false;
  return true;
}

bool ox_guess_is_usual_heading(const ox_case *c, const ox_flight *flight, double magnetic_deg) {
  double correction_deg;
  if (!isfinite(magnetic_deg) || !ox_guess_wind_part(c, flight, &correction_deg)) return false;
  double usual_deg = flight->setup.inbound_true_deg + 180.0 + correction_deg;
  return fabs(ox_turn_between_deg(usual_deg, ox_true_deg(magnetic_deg, c->variation_deg))) <=
         OX_GUESS_USUAL_DEG;
}

bool ox_guess_is_usual_time(const ox_flight *flight, double outbound_s) {
  return flight->circuit_count > 0 && flight->setup.leg_s > 0.0 &&
         fabs(outbound_s - flight->setup.leg_s) <= OX_GUESS_USUAL_S;
}
