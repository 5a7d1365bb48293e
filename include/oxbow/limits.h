/* Published limits, each with its source. Pure functions, nothing allocates. */
#ifndef OXBOW_LIMITS_H
#define OXBOW_LIMITS_H

/* Maximum holding airspeed (KIAS) at an altitude (ft MSL), United States: AIM 5-3-8 j2,
 * holding speed table. To 6 000 ft 200; 6 001 to 14 000 ft 230; above 265. Between the whole
 * feet of the table the higher band begins just above the boundary. */
double ox_us_speed_limit_kias(double altitude_ft);

/* Leg time (s) where the clearance gives none: 60 at or below 14 000 ft, 90 above:
 * AIM 5-3-8 j4(a). */
double ox_standard_leg_s(double altitude_ft);

#endif
