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

/* How somebody looks at the picture. All zero: north up, fitted, over the ground. */
typedef enum { OX_UP_NORTH, OX_UP_INBOUND, OX_UP_AIRCRAFT } ox_up;
typedef struct {
  ox_up up;
  double zoom;   /* times the fitted scale, OX_ZOOM_LEAST to OX_ZOOM_MOST; 0 is 1 */
  ox_vec pan_nm; /* shift of the point in the middle of the map, true */
  double air;    /* 0: over the ground; 1: carried with the air; between: a passage */
} ox_view;
#define OX_ZOOM_LEAST 0.25
#define OX_ZOOM_MOST 20.0
#define OX_PAN_MOST_NM 500.0 /* east or north, either way */

/* A view within its limits; what is not finite becomes the fitted view's. */
ox_view ox_view_limited(ox_view view);
/* Zoomed by a factor (> 0) about a device point that stays where it is, as far as the limits
 * allow. now is the viewport that belongs to the view at this instant. */
ox_view ox_view_zoomed(ox_view view, const ox_viewport *now, ox_vec about_dev, double factor);
/* Panned so that the world follows a device displacement. */
ox_view ox_view_dragged(ox_view view, const ox_viewport *now, ox_vec by_dev);

/* A scale and a part of the world shared by several pictures. */
typedef struct {
  double dev_per_nm;         /* 0: each picture has its own */
  ox_vec low_nm, high_nm;    /* the part, NM from the fix to the right and upwards on the board */
} ox_fit;

ox_vec ox_viewport_to_dev(const ox_viewport *v, ox_vec world_nm);
ox_vec ox_viewport_to_world(const ox_viewport *v, ox_vec dev);
/* Fits a world rectangle into a device rectangle with a margin (device units each side).
 * Never gives a zero, infinite or NaN scale. */
ox_viewport ox_viewport_fit(ox_vec min_nm, ox_vec max_nm, ox_vec dev_origin, ox_vec dev_size,
                            double margin, double up_deg);

#endif
