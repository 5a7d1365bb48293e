/* The hold's own frame, in which everything is decided: the fix at the origin, the inbound course
 * up the y axis, the holding side at positive x, turns of the pattern to the right. A left-hand
 * hold is mirrored into it, so mirror and rotation symmetry hold by construction and no later
 * code asks for the side. Private to the engine.
 *
 *                 y | inbound course
 *                   |     ___
 *   non-holding     o   /     \     o = fix
 *   side            |  |       |
 *                   |  |       |  outbound
 *                   |   \ ___ /
 *                   +-----------------> x  holding side
 */
#ifndef OX_ENGINE_FRAME_H
#define OX_ENGINE_FRAME_H

#include "oxbow/angle.h"

typedef struct {
  double course_true_deg;
  int sense; /* +1 right turns, -1 left */
  ox_vec along, right; /* unit vectors of the course and to its right, true */
} ox_frame;

ox_frame ox_frame_make(double course_true_deg, int sense);
/* Points, displacements and velocities. */
ox_vec ox_frame_in(const ox_frame *f, ox_vec true_north);
ox_vec ox_frame_out(const ox_frame *f, ox_vec own);
/* Headings: in gives (-180, 180], out gives [0, 360). */
double ox_frame_heading_in(const ox_frame *f, double true_deg);
double ox_frame_heading_out(const ox_frame *f, double own_deg);

#endif
