/* The turning aircraft: bank, rate and radius. Pure functions, nothing allocates.
 * Level coordinated turn: tan(bank) = V*omega/g with g = 9.80665 m/s2 (68 625 NM/h2). */
#ifndef OXBOW_TURN_H
#define OXBOW_TURN_H

#include <stdbool.h>

/* Bank (degrees) for a rate (deg/s, > 0) at a TAS (kt, > 0). */
double ox_bank_for_rate_deg(double tas_kt, double rate_deg_s);
/* Rate (deg/s) for a bank (degrees, 0 < bank < 90) at a TAS (kt, > 0). */
double ox_rate_for_bank_deg_s(double tas_kt, double bank_deg);
/* Still-air radius (NM) at a rate (deg/s, > 0) and a TAS (kt). */
double ox_radius_nm(double tas_kt, double rate_deg_s);

typedef struct {
  double bank_deg;
  double rate_deg_s;
  double radius_nm;
  bool bank_limits; /* true: the bank limit, not the wanted rate, decides */
} ox_turn_rate;

/* A bank flown whatever the rate that comes of it. */
ox_turn_rate ox_turn_rate_at_bank(double tas_kt, double bank_deg);

/* The lesser bank of a wanted rate (deg/s) and a bank limit (degrees): AIM 5-3-8 j8(b). */
ox_turn_rate ox_turn_rate_for(double tas_kt, double rate_deg_s, double max_bank_deg);

#endif
