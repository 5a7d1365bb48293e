/* Standard atmosphere and airspeed. Pure functions, nothing allocates.
 *
 * ICAO Standard Atmosphere (Doc 7488; US Standard Atmosphere 1976 agrees up to 65 617 ft):
 * 288.15 K, 1013.25 hPa, lapse 6.5 K/km to 11 km, isothermal above to 20 km. */
#ifndef OXBOW_ATMOSPHERE_H
#define OXBOW_ATMOSPHERE_H

typedef struct {
  double temperature_k;
  double pressure_ratio;   /* p / p0 */
  double density_ratio;    /* rho / rho0, with the temperature deviation */
  double sound_speed_kt;
} ox_air;

/* Air at a pressure altitude (ft, -2 000..65 000) and a deviation from ISA (kelvin). */
ox_air ox_air_at(double altitude_ft, double isa_dev_c);

/* True airspeed (kt) from calibrated/indicated airspeed (kt, >= 0), compressible, subsonic:
 * impact pressure from CAS at sea level, Mach number from it at the pressure, times the speed
 * of sound. */
double ox_tas_kt(double ias_kt, double altitude_ft, double isa_dev_c);
/* The inverse of ox_tas_kt. */
double ox_ias_kt(double tas_kt, double altitude_ft, double isa_dev_c);

/* TAS / IAS by the incompressible ICAO design formula (Doc 8168 Vol II):
 * 171233 * sqrt((288 + dev) - 0.00198 H) / (288 - 0.00198 H)^2.628, H in ft. */
double ox_icao_tas_factor(double altitude_ft, double isa_dev_c);

#endif
