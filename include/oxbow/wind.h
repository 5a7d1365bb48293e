/* Wind and the triangle of velocities. Pure functions, nothing allocates. */
#ifndef OXBOW_WIND_H
#define OXBOW_WIND_H

#include <stdbool.h>

#include "oxbow/angle.h"

/* Velocity (kt, direction it blows TO, x east y north of whichever north from_deg uses). */
ox_vec ox_wind_velocity_kt(double from_deg, double speed_kt);

typedef struct {
  bool possible;      /* false: the wind across is not less than the TAS, no heading holds it */
  double heading_deg; /* heading that makes good the course, [0, 360) */
  double wca_deg;     /* heading minus course, right positive, within (-90, 90) */
  double gs_kt;       /* along the course; may be negative in a headwind above the TAS */
  double cross_kt;    /* wind component across, positive when it blows from the left to the right */
  double along_kt;    /* wind component along the course, positive is a tailwind */
} ox_triangle;

/* Heading and ground speed for a course (degrees), a TAS (kt, > 0) and a wind velocity (kt). */
ox_triangle ox_triangle_for_course(double course_deg, double tas_kt, ox_vec wind_kt);

typedef struct {
  double track_deg; /* [0, 360) */
  double gs_kt;
  double drift_deg; /* track minus heading, right positive, (-180, 180] */
} ox_made_good;

/* Track and ground speed from a heading (degrees), a TAS (kt) and a wind velocity (kt). */
ox_made_good ox_made_good_on(double heading_deg, double tas_kt, ox_vec wind_kt);

#endif
