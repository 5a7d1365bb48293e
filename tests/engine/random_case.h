/* Seeded random cases and their mirror and rotated images, for the property tests. */
#ifndef OX_TESTS_RANDOM_CASE_H
#define OX_TESTS_RANDOM_CASE_H

#include "ox_test.h"
#include "oxbow/case.h"

/* A valid case with any technique and entry, 1 to 3 circuits and a wind of up to wind_share of
 * the airspeed (at most 250 kt). */
ox_case ox_random_case(ox_random *r, double wind_share);

/* The case seen in a mirror that swaps east and west, left and right. */
ox_case ox_mirrored_case(const ox_case *c);
/* The case with every direction turned clockwise by an angle (degrees). */
ox_case ox_rotated_case(const ox_case *c, double by_deg);

/* One line with every number of the case, enough to fly it again. */
void ox_case_to_line(const ox_case *c, char *buf, size_t bytes);

#endif
