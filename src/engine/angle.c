/* Degrees, bearings and plane vectors. See oxbow/angle.h for the conventions. */
#include "oxbow/angle.h"

#include <math.h>

#include "oxbow/units.h"

double ox_norm360_deg(double angle_deg) {
  if (angle_deg >= 0.0 && angle_deg < 360.0) return angle_deg + 0.0; /* nearly always */
  double a = fmod(angle_deg, 360.0);
  if (a < 0.0) a += 360.0;
  /* A tiny negative angle rounds up to 360 in the line above; and -0 becomes 0 by the sum. */
  return a >= 360.0 ? 0.0 : a + 0.0;
}

double ox_norm180_deg(double angle_deg) {
  if (angle_deg > -180.0 && angle_deg <= 180.0) return angle_deg + 0.0;
  double a = remainder(angle_deg, 360.0); /* exact, [-180, 180] */
  return a <= -180.0 ? 180.0 : a + 0.0;
}

double ox_turn_between_deg(double from_deg, double to_deg) {
  return ox_norm180_deg(to_deg - from_deg);
}

double ox_turn_in_sense_deg(double from_deg, double to_deg, int sense) {
  return ox_norm360_deg(sense >= 0 ? to_deg - from_deg : from_deg - to_deg);
}

/* Sine and cosine within a quarter of pi: the minimax polynomials of fdlibm (Sun Microsystems,
 * 1993), good to one unit in the last place. Written out here they are the same to the last bit on
 * every machine, whatever its libm, and three times as fast as a call. */
static double sine_near_zero(double x) {
  double z = x * x;
  double r = 8.33333333332248946124e-03 +
             z * (-1.98412698298579493134e-04 +
                  z * (2.75573137070700676789e-06 +
                       z * (-2.50507602534068634195e-08 + z * 1.58969099521155010221e-10)));
  return x + z * x * (-1.66666666666666324348e-01 + z * r);
}

static double cosine_near_zero(double x) {
  double z = x * x;
  double r = z * (4.16666666666666019037e-02 +
                  z * (-1.38888888888741095749e-03 +
                       z * (2.48015872894767294178e-05 +
                            z * (-2.75573143513906633035e-07 +
                                 z * (2.08757232129817482790e-09 -
                                      z * 1.13596475577881948265e-11)))));
  /* 1 - z/2 loses the last figures of z/2; they are put back with the rest. */
  double half = 0.5 * z, most = 1.0 - half;
  return most + (((1.0 - most) - half) + z * r);
}

/* The quarter turn nearest to the angle is taken off exactly, so multiples of 90 give exact zeros
 * and ones. Below a million degrees the product and the difference have no rounding; the sum with
 * 1.5 * 2^52 and back rounds to a whole number without a call. */
void ox_sincos_deg(double angle_deg, double *sin_out, double *cos_out) {
  static const double WHOLE = 6755399441055744.0;
  int quarters = 0;
  double rest_deg;
  if (fabs(angle_deg) < 1e6) {
    double nearest = (angle_deg / 90.0 + WHOLE) - WHOLE;
    rest_deg = angle_deg - 90.0 * nearest;
    quarters = (int)nearest;
  } else {
    rest_deg = remquo(angle_deg, 90.0, &quarters);
  }
  double rest_rad = rest_deg * OX_RAD_PER_DEG;
  double s = sine_near_zero(rest_rad), c = cosine_near_zero(rest_rad);
  switch ((unsigned)quarters & 3u) {
  case 0: *sin_out = s + 0.0; *cos_out = c; break;
  case 1: *sin_out = c; *cos_out = 0.0 - s; break;
  case 2: *sin_out = 0.0 - s; *cos_out = -c; break;
  default: *sin_out = -c; *cos_out = s + 0.0; break;
  }
}

ox_vec ox_unit(double bearing_deg) {
  ox_vec u;
  ox_sincos_deg(bearing_deg, &u.x, &u.y);
  return u;
}

double ox_bearing_deg(ox_vec v) {
  if (v.x == 0.0 && v.y == 0.0) return 0.0;
  return ox_norm360_deg(atan2(v.x, v.y) / OX_RAD_PER_DEG);
}

ox_vec ox_vec_add(ox_vec a, ox_vec b) {
  return (ox_vec){a.x + b.x, a.y + b.y};
}

ox_vec ox_vec_sub(ox_vec a, ox_vec b) {
  return (ox_vec){a.x - b.x, a.y - b.y};
}

ox_vec ox_vec_scale(ox_vec a, double k) {
  return (ox_vec){a.x * k, a.y * k};
}

double ox_vec_dot(ox_vec a, ox_vec b) {
  return a.x * b.x + a.y * b.y;
}

double ox_vec_cross(ox_vec a, ox_vec b) {
  return a.x * b.y - a.y * b.x;
}

double ox_vec_length(ox_vec a) {
  return hypot(a.x, a.y);
}

int ox_shown_deg(double bearing_deg) {
  int whole = (int)ox_norm360_deg(floor(ox_norm360_deg(bearing_deg) + 0.5));
  return whole == 0 ? 360 : whole;
}

double ox_magnetic_deg(double true_deg, double variation_deg) {
  return ox_norm360_deg(true_deg - variation_deg);
}

double ox_true_deg(double magnetic_deg, double variation_deg) {
  return ox_norm360_deg(magnetic_deg + variation_deg);
}
