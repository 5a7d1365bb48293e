/* Where the fix that a clearance names is, by the points of a lesson: pure functions, no widget, no
 * state. */
#ifndef OX_CLEARANCE_FIX_H
#define OX_CLEARANCE_FIX_H

#include <glib.h>

#include "oxbow/clearance.h"
#include "oxbow/fix.h"

/* The fix as the words say it: at a radial and distance of a station that the points know, where
 * the aircraft is, or by name. `now` is the fix of the case as it stands, which stays while the
 * words name no other. remark (OX_REMARK_BYTES or so; empty: nothing to say) tells what was placed,
 * or what is left to enter so that it has a place. *meant is the case that the words mean; where
 * its fix is a point under a fuller name ("LARCH VOR"), it gets the point's. */
ox_fix ox_clearance_fix(const ox_clearance *c, ox_case *meant, const char *fix_now,
                        const ox_fix *now, const ox_points *points, char *remark,
                        size_t remark_bytes);

#endif
