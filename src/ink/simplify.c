/* A hand draws a hundred points a second; a few of them say the same. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "ink_private.h"

double ox_ink_distance_nm(ox_vec p, ox_vec a, ox_vec b) {
  ox_vec along = ox_vec_sub(b, a), from = ox_vec_sub(p, a);
  double square = ox_vec_dot(along, along);
  double share = square > 0.0 ? ox_vec_dot(from, along) / square : 0.0;
  share = fmin(fmax(share, 0.0), 1.0);
  return ox_vec_length(ox_vec_sub(from, ox_vec_scale(along, share)));
}

/* The point between two that is farthest from their line; *distance_nm is how far. */
static size_t farthest(const ox_vec *points, size_t first, size_t last, double *distance_nm) {
  size_t found = first;
  *distance_nm = -1.0;
  for (size_t i = first + 1; i < last; i++) {
    double d = ox_ink_distance_nm(points[i], points[first], points[last]);
    if (d <= *distance_nm) continue;
    *distance_nm = d;
    found = i;
  }
  return found;
}

/* stays[i] for every point. Each span is split at its farthest point until none is too far; the
 * spans still to do lie one behind the other, so their right ends are enough. */
static void choose(const ox_vec *points, size_t count, double tolerance_nm, bool *stays,
                   size_t *ends) {
  size_t left = 0, waiting = 0;
  stays[0] = stays[count - 1] = true;
  ends[waiting++] = count - 1;
  while (waiting > 0) {
    double distance_nm;
    size_t middle = farthest(points, left, ends[waiting - 1], &distance_nm);
    if (distance_nm > tolerance_nm) {
      stays[middle] = true;
      ends[waiting++] = middle;
    } else {
      left = ends[--waiting];
    }
  }
}

ox_status ox_ink_simplify_last(ox_ink *ink, double tolerance_nm) {
  if (ink->stroke_count == 0 || !(tolerance_nm >= 0.0)) return OX_ERROR;
  ox_ink_stroke *last = &ink->strokes[ink->stroke_count - 1];
  if (last->count < 3) return OX_OK;
  bool *stays = calloc(last->count, sizeof *stays);
  size_t *ends = malloc(last->count * sizeof *ends);
  if (stays && ends) {
    size_t kept = 0;
    choose(last->points_nm, last->count, tolerance_nm, stays, ends);
    for (size_t i = 0; i < last->count; i++)
      if (stays[i]) last->points_nm[kept++] = last->points_nm[i];
    last->count = kept;
  }
  ox_status status = stays && ends ? OX_OK : OX_ERROR;
  free(stays);
  free(ends);
  return status;
}
