/* World to device and back: a plain value. Points are mapped in C; the cairo matrix is never
 * flipped. World: NM, x east y north, true. Device: user units of the cairo context, y down. */
#ifndef OXBOW_VIEWPORT_H
#define OXBOW_VIEWPORT_H

#include "oxbow/angle.h"

typedef struct {
  ox_vec centre_nm;
  ox_vec centre_dev;
  double dev_per_nm; /* > 0 */
  double up_deg;     /* true bearing that points up */
} ox_viewport;

ox_vec ox_viewport_to_dev(const ox_viewport *v, ox_vec world_nm);
ox_vec ox_viewport_to_world(const ox_viewport *v, ox_vec dev);
/* Fits a world rectangle into a device rectangle with a margin (device units each side).
 * Never gives a zero, infinite or NaN scale. */
ox_viewport ox_viewport_fit(ox_vec min_nm, ox_vec max_nm, ox_vec dev_origin, ox_vec dev_size,
                            double margin, double up_deg);

#endif
