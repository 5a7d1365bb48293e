/* Where the handles lie, their values and ends, and stepping them. */
#include <math.h>

#include "oxbow/angle.h"
#include "oxbow/fields.h"
#include "oxbow/text.h"
#include "values.h"

static const double DEGREE_PAGE = 10.0;

double handles_circle_deg(double deg) {
  double d = ox_norm360_deg(deg);
  return d == 0.0 ? 360.0 : d;
}

const char *ox_handle_name(ox_handle h) {
  static const char *const names[OX_HANDLE_COUNT] = {
      [OX_HANDLE_FIX] = N_("Holding fix"),
      [OX_HANDLE_INBOUND] = N_("Inbound course"),
      [OX_HANDLE_ARRIVAL] = N_("Arrival heading"),
      [OX_HANDLE_WIND_FROM] = N_("Wind direction"),
      [OX_HANDLE_WIND_KT] = N_("Wind speed"),
      [OX_HANDLE_OUTBOUND] = N_("Outbound end"),
      [OX_HANDLE_TURNS] = N_("Turn side")};
  return (unsigned)h < OX_HANDLE_COUNT ? _(names[h]) : "";
}

bool ox_handle_is_slider(ox_handle h) { return h != OX_HANDLE_FIX && h != OX_HANDLE_TURNS; }

const char *ox_handle_key(ox_handle h, const ox_case *c) {
  switch (h) {
  case OX_HANDLE_FIX:
    return "hold.fix";
  case OX_HANDLE_INBOUND:
    return "hold.inbound_deg";
  case OX_HANDLE_ARRIVAL:
    return "arrival.heading_deg";
  case OX_HANDLE_WIND_FROM:
    return "wind.from_deg";
  case OX_HANDLE_WIND_KT:
    return "wind.kt";
  case OX_HANDLE_OUTBOUND:
    return c->hold.leg_by == OX_LEG_BY_TIME ? "hold.leg.s" : "hold.leg.nm";
  case OX_HANDLE_TURNS:
    return "hold.turns";
  case OX_HANDLE_COUNT:
    break;
  }
  return "";
}

/* ---- places ----------------------------------------------------------------------------- */

/* The middle of the racetrack, where nothing else is drawn. */
static ox_vec turns_place(const ox_flight *f) {
  ox_leg still[4];
  ox_still_air_shape(&f->setup, still);
  ox_vec outbound = ox_vec_scale(ox_vec_add(still[1].p0_nm, still[1].p1_nm), 0.5);
  ox_vec course = ox_unit(f->setup.inbound_true_deg);
  ox_vec on_course = ox_vec_scale(course, ox_vec_dot(outbound, course));
  return ox_vec_scale(ox_vec_add(outbound, on_course), 0.5);
}

static ox_vec wind_place(const ox_case *c, const ox_flight *f, const ox_handle_reach *reach) {
  const ox_setup *s = &f->setup;
  double from_deg = handles_wind_from_deg(c, s);
  if (handles_wind_north(c) == OX_NORTH_MAGNETIC)
    from_deg = ox_true_deg(from_deg, c->variation_deg);
  double nm = reach->wind_nm + handles_wind_kt(c, s) * reach->wind_nm_per_kt;
  return ox_vec_add(reach->wind_at_nm, ox_vec_scale(ox_unit(from_deg), nm));
}

ox_vec ox_handle_place(ox_handle h, const ox_case *c, const ox_flight *flight,
                       const ox_handle_reach *reach) {
  const ox_setup *s = &flight->setup;
  switch (h) {
  case OX_HANDLE_INBOUND:
    return ox_vec_scale(ox_unit(s->inbound_true_deg), -reach->inbound_nm);
  case OX_HANDLE_ARRIVAL:
    return ox_vec_scale(ox_unit(s->arrival_track_true_deg), -reach->arrival_nm);
  case OX_HANDLE_WIND_FROM:
  case OX_HANDLE_WIND_KT:
    return wind_place(c, flight, reach);
  case OX_HANDLE_OUTBOUND:
    return handles_leg_end_nm(flight);
  case OX_HANDLE_TURNS:
    return turns_place(flight);
  case OX_HANDLE_FIX:
  case OX_HANDLE_COUNT:
    break;
  }
  return (ox_vec){0, 0};
}

/* ---- values ----------------------------------------------------------------------------- */

static ox_handle_range circle(double value_deg) {
  return (ox_handle_range){handles_circle_deg(value_deg), 1, 360, 1, DEGREE_PAGE, true};
}

static ox_handle_range within(const ox_field *field, double value, double step) {
  return (ox_handle_range){value, field->min, field->max, step, 10.0 * step, false};
}

ox_handle_range ox_handle_range_of(ox_handle h, const ox_case *c, const ox_flight *flight) {
  const ox_setup *s = &flight->setup;
  size_t count;
  switch (h) {
  case OX_HANDLE_INBOUND:
    return circle(c->hold.inbound_deg);
  case OX_HANDLE_ARRIVAL:
    return circle(c->arrival.heading_deg);
  case OX_HANDLE_WIND_FROM:
    return circle(handles_wind_from_deg(c, s));
  case OX_HANDLE_WIND_KT:
    return within(&ox_wind_fields(&count)[2], handles_wind_kt(c, s), 1.0);
  case OX_HANDLE_OUTBOUND:
    return within(ox_field_by_key(ox_handle_key(h, c)), handles_leg(c, s),
                  c->hold.leg_by == OX_LEG_BY_TIME ? 1.0 : 0.1);
  case OX_HANDLE_TURNS:
    return (ox_handle_range){c->hold.turns == OX_TURNS_LEFT ? 1 : 0, 0, 1, 1, 1, false};
  case OX_HANDLE_FIX:
  case OX_HANDLE_COUNT:
    break;
  }
  return (ox_handle_range){0, 0, 1, 1, 1, false};
}

/* ---- setting and stepping --------------------------------------------------------------- */

ox_case ox_handle_flip(const ox_case *c) {
  ox_case flipped = *c;
  flipped.hold.turns = c->hold.turns == OX_TURNS_RIGHT ? OX_TURNS_LEFT : OX_TURNS_RIGHT;
  return flipped;
}

ox_status ox_handle_set(ox_handle h, const ox_case *c, const ox_flight *flight, double value,
                        ox_case *out) {
  if (!isfinite(value) || h == OX_HANDLE_FIX || (unsigned)h >= OX_HANDLE_COUNT) return OX_ERROR;
  ox_handle_range range = ox_handle_range_of(h, c, flight);
  const ox_setup *s = &flight->setup;
  ox_case made = *c;
  value = range.circular ? handles_circle_deg(value) : fmin(fmax(value, range.min), range.max);
  if (value != range.value) switch (h) {
    case OX_HANDLE_INBOUND:
      made.hold.inbound_deg = value;
      break;
    case OX_HANDLE_ARRIVAL:
      made.arrival.heading_deg = value;
      break;
    case OX_HANDLE_WIND_FROM:
      handles_set_wind(&made, s, value, handles_wind_kt(c, s));
      break;
    case OX_HANDLE_WIND_KT:
      handles_set_wind(&made, s, handles_wind_from_deg(c, s), value);
      break;
    case OX_HANDLE_OUTBOUND:
      handles_set_leg(&made, value);
      break;
    case OX_HANDLE_TURNS:
      made.hold.turns = value >= 0.5 ? OX_TURNS_LEFT : OX_TURNS_RIGHT;
      break;
    case OX_HANDLE_FIX:
    case OX_HANDLE_COUNT:
      break;
    }
  if (ox_case_check(&made, NULL, 0) > 0) return OX_ERROR;
  *out = made;
  return OX_OK;
}

/* From between two steps the first step goes to the next whole one: 240.4 to 241 or 240. */
static double stepped(double value, double step, int steps) {
  const double near = 1e-6;
  double at = value / step;
  double whole = steps > 0 ? floor(at + near) : ceil(at - near);
  double to = (whole + steps) * step;
  return floor(to * 10.0 + 0.5) / 10.0; /* tenths that add up */
}

ox_status ox_handle_step(ox_handle h, const ox_case *c, const ox_flight *flight, int steps,
                         ox_case *out) {
  if (h == OX_HANDLE_TURNS) {
    ox_case flipped = ox_handle_flip(c);
    if (ox_case_check(&flipped, NULL, 0) > 0) return OX_ERROR;
    *out = flipped;
    return OX_OK;
  }
  ox_handle_range range = ox_handle_range_of(h, c, flight);
  double value = steps == 0 ? range.value : stepped(range.value, range.step, steps);
  return ox_handle_set(h, c, flight, value, out);
}
