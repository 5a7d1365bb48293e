/* Looking closer and elsewhere: a view changed by hand, kept within its limits. */
#include <math.h>

#include "oxbow/viewport.h"

static double limited(double v, double least, double most, double otherwise) {
  return isfinite(v) ? fmin(fmax(v, least), most) : otherwise;
}

ox_view ox_view_limited(ox_view v) {
  if (v.up != OX_UP_INBOUND && v.up != OX_UP_AIRCRAFT) v.up = OX_UP_NORTH;
  v.zoom = v.zoom == 0.0 ? 1.0 : limited(v.zoom, OX_ZOOM_LEAST, OX_ZOOM_MOST, 1.0);
  v.pan_nm.x = limited(v.pan_nm.x, -OX_PAN_MOST_NM, OX_PAN_MOST_NM, 0.0);
  v.pan_nm.y = limited(v.pan_nm.y, -OX_PAN_MOST_NM, OX_PAN_MOST_NM, 0.0);
  v.air = limited(v.air, 0.0, 1.0, 0.0);
  return v;
}

/* With the scale k times what it was, the point under the pointer stays where the middle moves
 * towards it by 1 - 1/k of its distance. */
ox_view ox_view_zoomed(ox_view view, const ox_viewport *now, ox_vec about_dev, double factor) {
  ox_view v = ox_view_limited(view);
  if (!(factor > 0.0) || !isfinite(factor)) return v;
  double zoom = fmin(fmax(v.zoom * factor, OX_ZOOM_LEAST), OX_ZOOM_MOST);
  ox_vec from_middle = ox_vec_sub(ox_viewport_to_world(now, about_dev), now->centre_nm);
  v.pan_nm = ox_vec_add(v.pan_nm, ox_vec_scale(from_middle, 1.0 - v.zoom / zoom));
  v.zoom = zoom;
  return ox_view_limited(v);
}

ox_view ox_view_dragged(ox_view view, const ox_viewport *now, ox_vec by_dev) {
  ox_view v = ox_view_limited(view);
  ox_vec to = ox_viewport_to_world(now, ox_vec_add(now->centre_dev, by_dev));
  v.pan_nm = ox_vec_sub(v.pan_nm, ox_vec_sub(to, now->centre_nm));
  return ox_view_limited(v);
}
