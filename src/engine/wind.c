/* Wind and the triangle of velocities. */
#include "oxbow/wind.h"

#include <math.h>

#include "oxbow/units.h"

ox_vec ox_wind_velocity_kt(double from_deg, double speed_kt) {
  ox_vec from = ox_unit(from_deg);
  return (ox_vec){-from.x * speed_kt + 0.0, -from.y * speed_kt + 0.0};
}

ox_triangle ox_triangle_for_course(double course_deg, double tas_kt, ox_vec wind_kt) {
  ox_vec along = ox_unit(course_deg);
  ox_triangle t = {0};
  t.along_kt = ox_vec_dot(wind_kt, along);
  t.cross_kt = wind_kt.x * along.y - wind_kt.y * along.x; /* towards the right of the course */
  t.possible = fabs(t.cross_kt) < tas_kt;
  if (!t.possible) return t;
  double s = -t.cross_kt / tas_kt;
  t.wca_deg = asin(s) / OX_RAD_PER_DEG + 0.0;
  t.heading_deg = ox_norm360_deg(course_deg + t.wca_deg);
  t.gs_kt = tas_kt * sqrt((1.0 - s) * (1.0 + s)) + t.along_kt;
  return t;
}

ox_made_good ox_made_good_on(double heading_deg, double tas_kt, ox_vec wind_kt) {
  ox_vec ground = ox_vec_add(ox_vec_scale(ox_unit(heading_deg), tas_kt), wind_kt);
  ox_made_good m;
  m.gs_kt = ox_vec_length(ground);
  m.track_deg = ox_bearing_deg(ground);
  m.drift_deg = ox_turn_between_deg(heading_deg, m.track_deg);
  return m;
}
