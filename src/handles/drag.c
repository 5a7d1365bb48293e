/* The case that comes of dragging a handle to a place. */
#include <math.h>

#include "oxbow/angle.h"
#include "oxbow/fields.h"
#include "oxbow/wind.h"
#include "values.h"

/* Nearer to the middle than this no direction is meant (NM). */
static const double NO_DIRECTION_NM = 1e-9;
/* Farther away is as good as this: squares of larger numbers would overflow (NM). */
static const double FARTHEST_NM = 1e6;

typedef struct {
  const ox_case *base;
  const ox_flight *flight;
  const ox_handle_reach *reach;
  ox_vec place;
  bool fine;
  ox_flight *scratch;
} drag;

static double to_grid(double value, double grid) { return floor(value / grid + 0.5) * grid; }

static double course_grid(const drag *d) { return d->fine ? 1.0 : 5.0; }

static ox_status drag_inbound(const drag *d, ox_case *out) {
  if (ox_vec_length(d->place) < NO_DIRECTION_NM) return OX_OK;
  double true_deg = ox_bearing_deg(ox_vec_scale(d->place, -1.0));
  double magnetic = ox_magnetic_deg(true_deg, d->base->variation_deg);
  return ox_handle_set(OX_HANDLE_INBOUND, d->base, d->flight, to_grid(magnetic, course_grid(d)),
                       out);
}

/* The aircraft comes over the place to the fix: the heading that makes good that track. Where the
 * wind is too strong for it, the heading is the direction itself. */
static ox_status drag_arrival(const drag *d, ox_case *out) {
  if (ox_vec_length(d->place) < NO_DIRECTION_NM) return OX_OK;
  const ox_setup *s = &d->flight->setup;
  double heading = ox_bearing_deg(ox_vec_scale(d->place, -1.0));
  ox_triangle t = ox_triangle_for_course(heading, s->tas_kt, s->wind_kt);
  if (t.possible && t.gs_kt > 0.0) heading = t.heading_deg;
  double magnetic = ox_magnetic_deg(heading, d->base->variation_deg);
  return ox_handle_set(OX_HANDLE_ARRIVAL, d->base, d->flight, to_grid(magnetic, course_grid(d)),
                       out);
}

static double wind_speed_there(const drag *d, double from_arrow_nm) {
  double kt = (from_arrow_nm - d->reach->wind_nm) / d->reach->wind_nm_per_kt;
  return to_grid(fmax(kt, 0.0), d->fine ? 1.0 : 5.0);
}

static ox_status drag_wind(const drag *d, bool turns, ox_case *out) {
  ox_vec there = ox_vec_sub(d->place, d->reach->wind_at_nm);
  double nm = ox_vec_length(there);
  ox_case turned = *d->base;
  if (turns && nm >= NO_DIRECTION_NM) {
    double from_deg = ox_bearing_deg(there);
    if (handles_wind_north(d->base) == OX_NORTH_MAGNETIC)
      from_deg = ox_magnetic_deg(from_deg, d->base->variation_deg);
    from_deg = handles_circle_deg(to_grid(from_deg, d->fine ? 1.0 : 10.0));
    size_t count;
    double kt = fmin(wind_speed_there(d, nm), ox_wind_fields(&count)[2].max);
    handles_set_wind(&turned, &d->flight->setup, from_deg, kt);
    if (ox_case_check(&turned, NULL, 0) > 0) return OX_ERROR;
    *out = turned;
    return OX_OK;
  }
  return ox_handle_set(OX_HANDLE_WIND_KT, d->base, d->flight, wind_speed_there(d, nm), out);
}

static ox_status drag_outbound(const drag *d, ox_case *out) {
  ox_handle_range range = ox_handle_range_of(OX_HANDLE_OUTBOUND, d->base, d->flight);
  bool by_time = d->base->hold.leg_by == OX_LEG_BY_TIME;
  double grid = by_time ? (d->fine ? 1.0 : 5.0) : (d->fine ? 0.1 : 0.5);
  double leg = handles_leg_for_place(d->base, d->flight, d->place, range.min, range.max,
                                     d->scratch);
  if (leg == range.value) { /* not moved: an odd time stays what it is */
    *out = *d->base;
    return OX_OK;
  }
  double snapped = floor(to_grid(leg, grid) * 10.0 + 0.5) / 10.0;
  return ox_handle_set(OX_HANDLE_OUTBOUND, d->base, d->flight, snapped, out);
}

static ox_status drag_turns(const drag *d, ox_case *out) {
  double inbound_deg = d->flight->setup.inbound_true_deg;
  double right_nm = ox_vec_dot(d->place, ox_unit(inbound_deg + 90.0));
  *out = *d->base;
  if (fabs(right_nm) >= NO_DIRECTION_NM)
    out->hold.turns = right_nm > 0.0 ? OX_TURNS_RIGHT : OX_TURNS_LEFT;
  return OX_OK;
}

ox_status ox_handle_drag(ox_handle h, const ox_case *base, const ox_flight *flight,
                         const ox_handle_reach *reach, ox_vec place_nm, ox_drag_grid grid,
                         ox_flight *scratch, ox_case *out) {
  if (!isfinite(place_nm.x) || !isfinite(place_nm.y)) return OX_ERROR;
  double far = fmax(fabs(place_nm.x), fabs(place_nm.y));
  if (far > FARTHEST_NM) place_nm = ox_vec_scale(place_nm, FARTHEST_NM / far);
  drag d = {base, flight, reach, place_nm, grid == OX_DRAG_FINE, scratch};
  ox_case made = *base;
  ox_status status = OX_ERROR;
  switch (h) {
  case OX_HANDLE_INBOUND:
    status = drag_inbound(&d, &made);
    break;
  case OX_HANDLE_ARRIVAL:
    status = drag_arrival(&d, &made);
    break;
  case OX_HANDLE_WIND_FROM:
    status = drag_wind(&d, true, &made);
    break;
  case OX_HANDLE_WIND_KT:
    status = drag_wind(&d, false, &made);
    break;
  case OX_HANDLE_OUTBOUND:
    status = drag_outbound(&d, &made);
    break;
  case OX_HANDLE_TURNS:
    status = drag_turns(&d, &made);
    break;
  case OX_HANDLE_FIX:
  case OX_HANDLE_COUNT:
    break;
  }
  if (status != OX_ERROR) *out = made;
  return status;
}
