/* A hold to take hold of: LARCH, inbound 240 magnetic, right turns, a minute, wind 330 true at 20,
 * variation 10 east. Values are ours; what they must become follows from the definitions. */
#ifndef HANDLES_SUPPORT_H
#define HANDLES_SUPPORT_H

#include "ox_test.h"
#include "oxbow/handles.h"

static const ox_handle_reach reach = {2.0, 3.0, {8.0, 6.0}, 0.5, 0.05};
static ox_flight flight;

static inline ox_case larch(void) {
  ox_case c = ox_case_default();
  strcpy(c.hold.fix, "LARCH");
  c.hold.inbound_deg = 240;
  c.hold.leg_s = 60;
  c.arrival.heading_deg = 90;
  c.variation_deg = 10;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 330, 20, OX_NORTH_TRUE};
  return c;
}

static inline void fly(const ox_case *c) {
  assert_int_not_equal(ox_flight_solve(c, &flight), OX_ERROR);
}

/* A place so far from the fix in a true direction. */
static inline ox_vec at(double true_deg, double nm) {
  return ox_vec_scale(ox_unit(true_deg), nm);
}

#endif
