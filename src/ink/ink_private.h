/* What the files of the ink share. */
#ifndef OX_INK_PRIVATE_H
#define OX_INK_PRIVATE_H

#include "oxbow/ink.h"

/* Distance of a point from the straight line between two (NM); the two may be the same. */
double ox_ink_distance_nm(ox_vec p, ox_vec a, ox_vec b);

#endif
