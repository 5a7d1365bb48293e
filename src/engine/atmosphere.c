/* Standard atmosphere and airspeed. See oxbow/atmosphere.h for sources. */
#include "oxbow/atmosphere.h"

#include <math.h>

/* ICAO Doc 7488 / US Standard Atmosphere 1976. */
static const double T0_K = 288.15;
static const double LAPSE_K_PER_M = 0.0065;
static const double TROPOPAUSE_M = 11000.0;
static const double G_M_S2 = 9.80665;
static const double R_AIR = 287.05287; /* J/(kg K) */
static const double GAMMA = 1.4;
static const double M_PER_FT = 0.3048;
static const double KT_PER_M_S = 3600.0 / 1852.0;

static double sound_speed_kt(double temperature_k) {
  return sqrt(GAMMA * R_AIR * temperature_k) * KT_PER_M_S;
}

/* The deviation shifts the temperature at a pressure altitude; the pressure is what the altimeter
 * shows and does not change with it. */
ox_air ox_air_at(double altitude_ft, double isa_dev_c) {
  double h_m = altitude_ft * M_PER_FT;
  double exponent = G_M_S2 / (LAPSE_K_PER_M * R_AIR); /* 5.25588 */
  double standard_k, pressure_ratio;
  if (h_m <= TROPOPAUSE_M) {
    standard_k = T0_K - LAPSE_K_PER_M * h_m;
    pressure_ratio = pow(standard_k / T0_K, exponent);
  } else {
    standard_k = T0_K - LAPSE_K_PER_M * TROPOPAUSE_M;
    pressure_ratio = pow(standard_k / T0_K, exponent) *
                     exp(-G_M_S2 * (h_m - TROPOPAUSE_M) / (R_AIR * standard_k));
  }
  ox_air air;
  air.temperature_k = standard_k + isa_dev_c;
  air.pressure_ratio = pressure_ratio;
  air.density_ratio = pressure_ratio * T0_K / air.temperature_k;
  air.sound_speed_kt = sound_speed_kt(air.temperature_k);
  return air;
}

/* Isentropic impact pressure over static pressure at a Mach number, and back. log1p and expm1
 * keep their figures at walking speed. */
static double impact_ratio(double mach) {
  return expm1(GAMMA / (GAMMA - 1.0) * log1p(0.5 * (GAMMA - 1.0) * mach * mach));
}

static double mach_from_impact(double ratio) {
  return sqrt(2.0 / (GAMMA - 1.0) * expm1((GAMMA - 1.0) / GAMMA * log1p(ratio)));
}

double ox_tas_kt(double ias_kt, double altitude_ft, double isa_dev_c) {
  ox_air air = ox_air_at(altitude_ft, isa_dev_c);
  double impact = impact_ratio(ias_kt / sound_speed_kt(T0_K)); /* over sea-level pressure */
  return mach_from_impact(impact / air.pressure_ratio) * air.sound_speed_kt;
}

double ox_ias_kt(double tas_kt, double altitude_ft, double isa_dev_c) {
  ox_air air = ox_air_at(altitude_ft, isa_dev_c);
  double impact = impact_ratio(tas_kt / air.sound_speed_kt) * air.pressure_ratio;
  return mach_from_impact(impact) * sound_speed_kt(T0_K);
}

double ox_icao_tas_factor(double altitude_ft, double isa_dev_c) {
  double t = 288.0 - 0.00198 * altitude_ft;
  return 171233.0 * sqrt(t + isa_dev_c) / pow(t, 2.628);
}
