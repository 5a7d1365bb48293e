/* The turning aircraft: bank, rate and radius. */
#include "oxbow/turn.h"

#include <math.h>

#include "oxbow/units.h"

static const double G_NM_H2 = 9.80665 * 3600.0 * 3600.0 / 1852.0; /* 68 625 NM/h2 */

/* tan(bank) = V * omega / g, with V in NM/h and omega in rad/h. */
double ox_bank_for_rate_deg(double tas_kt, double rate_deg_s) {
  return atan(tas_kt * rate_deg_s * OX_RAD_PER_DEG * OX_S_PER_H / G_NM_H2) / OX_RAD_PER_DEG;
}

double ox_rate_for_bank_deg_s(double tas_kt, double bank_deg) {
  return G_NM_H2 * tan(bank_deg * OX_RAD_PER_DEG) / (tas_kt * OX_RAD_PER_DEG * OX_S_PER_H);
}

double ox_radius_nm(double tas_kt, double rate_deg_s) {
  return tas_kt / (OX_S_PER_H * rate_deg_s * OX_RAD_PER_DEG);
}

ox_turn_rate ox_turn_rate_at_bank(double tas_kt, double bank_deg) {
  ox_turn_rate t;
  t.bank_deg = bank_deg;
  t.rate_deg_s = ox_rate_for_bank_deg_s(tas_kt, bank_deg);
  t.radius_nm = ox_radius_nm(tas_kt, t.rate_deg_s);
  t.bank_limits = true;
  return t;
}

ox_turn_rate ox_turn_rate_for(double tas_kt, double rate_deg_s, double max_bank_deg) {
  ox_turn_rate t;
  t.bank_deg = ox_bank_for_rate_deg(tas_kt, rate_deg_s);
  if (t.bank_deg > max_bank_deg) return ox_turn_rate_at_bank(tas_kt, max_bank_deg);
  t.rate_deg_s = rate_deg_s;
  t.radius_nm = ox_radius_nm(tas_kt, rate_deg_s);
  t.bank_limits = false;
  return t;
}
