/* The WGS 84 ellipsoid in NM: the one door to PROJ's geodesic routines. */
#ifndef OX_PLACES_EARTH_H
#define OX_PLACES_EARTH_H

#include "oxbow/place.h"

/* Unchecked: places valid, numbers finite. Longitudes come out in [-180, 180]. */
ox_latlon ox_earth_direct(ox_latlon from, double bearing_true_deg, double distance_nm,
                          double *arriving_deg);
ox_geodesic ox_earth_inverse(ox_latlon from, ox_latlon to);

#endif
