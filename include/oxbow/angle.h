/* Degrees, bearings and plane vectors. Nothing here allocates or fails.
 *
 * Conventions: plane x east, y north; bearings clockwise from north in degrees. Trigonometry
 * reduces exactly to ±45° before calling libm, so that cardinal bearings give exact 0 and 1. */
#ifndef OXBOW_ANGLE_H
#define OXBOW_ANGLE_H

/* A point or displacement in NM, or a velocity in NM/s where the name says so. */
typedef struct {
  double x; /* east */
  double y; /* north */
} ox_vec;

/* Any finite angle (degrees) to [0, 360). Never returns 360 or -0. */
double ox_norm360_deg(double angle_deg);
/* Any finite angle (degrees) to (-180, 180]. */
double ox_norm180_deg(double angle_deg);
/* Smallest signed turn from one bearing to another, (-180, 180] (degrees, right positive). */
double ox_turn_between_deg(double from_deg, double to_deg);
/* Turn needed from one bearing to another in the given sense (+1 right, -1 left): [0, 360). */
double ox_turn_in_sense_deg(double from_deg, double to_deg, int sense);

/* Sine and cosine of any finite angle (degrees); exact at multiples of 90. */
void ox_sincos_deg(double angle_deg, double *sin_out, double *cos_out);
/* Unit vector along a bearing (degrees). */
ox_vec ox_unit(double bearing_deg);
/* Bearing of a vector, [0, 360); 0 for the null vector. */
double ox_bearing_deg(ox_vec v);

ox_vec ox_vec_add(ox_vec a, ox_vec b);
ox_vec ox_vec_sub(ox_vec a, ox_vec b);
ox_vec ox_vec_scale(ox_vec a, double k);
double ox_vec_dot(ox_vec a, ox_vec b);
/* z of a × b: positive when b lies to the left of a. */
double ox_vec_cross(ox_vec a, ox_vec b);
double ox_vec_length(ox_vec a);

/* Whole degrees as shown to people: 1..360, north is 360 (AIM 4-2-10: three figures).
 * Rounds first and normalises after, so that 359.6 and 0.2 are both 360. */
int ox_shown_deg(double bearing_deg);

/* Magnetic from true and back; variation is positive east: magnetic = true - variation. */
double ox_magnetic_deg(double true_deg, double variation_deg);
double ox_true_deg(double magnetic_deg, double variation_deg);

#endif
