/* The protected area of the hold, as an illustration only.
 *
 * After the construction of ICAO Doc 8168 Vol II for the basic area: turns begun early and late,
 * outbound lines 5 degrees to either side, the outbound end early and late, each point widened by
 * the omnidirectional wind w = 2h + 47 kt for the time it takes to get there, at ISA + 15 and 25
 * degrees of bank. The wind, TAS, rate and tolerances are read from the document (holding-standards
 * 7.1, 7.2); how the template is drawn from them is from memory (7.5), and the entry areas and the
 * tolerance of the fix are left out. Never to scale for any real chart. Nothing here allocates. */
#ifndef OXBOW_AREA_H
#define OXBOW_AREA_H

#include "oxbow/flight.h"

#define OX_AREA_SIDES 72

/* A convex outline: in direction i (true bearing i * 5 degrees) nothing of the area lies farther
 * from the fix than reach_nm[i]. */
typedef struct {
  double reach_nm[OX_AREA_SIDES];
  double tas_kt, wind_kt, rate_deg_s, radius_nm; /* what it was built with */
} ox_area;

/* For a case and its setup; buffer_nm (>= 0) is added all round. */
ox_area ox_area_make(const ox_case *c, const ox_setup *setup, double buffer_nm);

/* The limiting outbound distance of a hold towards a DME station (Doc 8168 Vol II; holding-
 * standards 7.6): DL = sqrt((Ds + ds)2 + 4 r2 + 0.027 h2) with the nominal distance as a reading D,
 * Ds2 = D2 - 0.027 h2, ds = v t, at ISA + 15 and 25 degrees of bank; h in thousands of ft above the
 * station. *rounded_nm: to the next whole NM, or down where the decimal is below 0.25 (at or below
 * 14 000 ft) or 0.5 (above). Needs D above the height. */
double ox_limiting_dme_nm(double ias_kt, double height_ft, double nominal_nm, double leg_s,
                          double *rounded_nm);

/* The corners of the outline (NM, true), clockwise; out has room for OX_AREA_SIDES. */
void ox_area_outline(const ox_area *area, ox_vec out[OX_AREA_SIDES]);

/* Least distance (NM) of a point, or of a flight from its first fix passage on, from the edge:
 * positive inside, negative outside. The flight is looked at every second and at every leg end. */
double ox_area_margin_nm(const ox_area *area, ox_vec p_nm);
double ox_area_flight_margin_nm(const ox_area *area, const ox_flight *flight);

#endif
