/* Seeded strokes, as a hand draws them and as no hand would. */
#ifndef OX_INK_SUPPORT_H
#define OX_INK_SUPPORT_H

#include "ox_test.h"
#include "oxbow/ink.h"

/* Adds strokes of 1..points_max points that wander within reach_nm of the fix. */
void add_random_strokes(ox_ink *ink, ox_random *r, int strokes, int points_max, double reach_nm);
/* A fresh ink of them. */
ox_ink *random_ink(uint64_t seed, int strokes, int points_max, double reach_nm);

/* Distance of a point from a path of count >= 1 points, sought point by point, apart from the
 * program. */
double path_distance_nm(ox_vec p, const ox_vec *path, size_t count);
/* Length of all strokes. */
double ink_length_nm(const ox_ink *ink);
/* Every stroke has a point, every point is finite and on the grain, the limits hold. */
void assert_sound(const ox_ink *ink);

#endif
