/* The wind of a case as one wind at the hold's altitude, read and changed.
 *
 * Rows are interpolated as vectors, so turning every row by one angle and scaling it by one factor
 * turns and scales the wind between them by just as much. */
#include <math.h>

#include "oxbow/angle.h"
#include "oxbow/fields.h"
#include "oxbow/wind.h"
#include "values.h"

/* With several rows: below this the rows' proportions would be lost for good (kt). */
static const double LEAST_OF_ROWS_KT = 1.0;
/* Rows cancel out: there is nothing to be turned or scaled (kt). */
static const double NO_WIND_KT = 0.5;

static double most_kt(void) {
  size_t count;
  return ox_wind_fields(&count)[2].max;
}

ox_north handles_wind_north(const ox_case *c) {
  if (c->wind_count == 0) return OX_NORTH_TRUE;
  for (int i = 0; i < c->wind_count; i++)
    if (c->wind[i].north != OX_NORTH_MAGNETIC) return OX_NORTH_TRUE;
  return OX_NORTH_MAGNETIC;
}

double handles_wind_from_deg(const ox_case *c, const ox_setup *setup) {
  if (c->wind_count == 0) return 360.0;
  if (c->wind_count == 1) return handles_circle_deg(c->wind[0].from_deg);
  double from_deg = setup->wind_from_true_deg;
  if (handles_wind_north(c) == OX_NORTH_MAGNETIC)
    from_deg = ox_magnetic_deg(from_deg, c->variation_deg);
  return handles_circle_deg(from_deg);
}

double handles_wind_kt(const ox_case *c, const ox_setup *setup) {
  return c->wind_count == 1 ? c->wind[0].kt : c->wind_count == 0 ? 0.0 : setup->wind_speed_kt;
}

static void set_only_row(ox_case *c, double from_deg, double kt) {
  if (c->wind_count == 0) {
    if (kt == 0.0 && from_deg == 360.0) return; /* calm as before */
    c->wind_count = 1;
    c->wind[0] = (ox_wind_row){0, from_deg, kt, OX_NORTH_TRUE};
  }
  c->wind[0].from_deg = from_deg;
  c->wind[0].kt = kt;
}

static void turn_and_scale(ox_case *c, double by_deg, double factor) {
  double strongest_kt = 0.0;
  for (int i = 0; i < c->wind_count; i++) strongest_kt = fmax(strongest_kt, c->wind[i].kt);
  factor = fmin(factor, most_kt() / strongest_kt);
  for (int i = 0; i < c->wind_count; i++) {
    ox_wind_row *row = &c->wind[i];
    if (by_deg != 0.0) row->from_deg = handles_circle_deg(row->from_deg + by_deg);
    row->kt = fmin(row->kt * factor, most_kt());
  }
}

static void add_to_rows(ox_case *c, ox_vec true_kt) {
  for (int i = 0; i < c->wind_count; i++) {
    ox_wind_row *row = &c->wind[i];
    double variation = row->north == OX_NORTH_MAGNETIC ? c->variation_deg : 0.0;
    ox_vec old = ox_wind_velocity_kt(ox_true_deg(row->from_deg, variation), row->kt);
    ox_vec sum = ox_vec_add(old, true_kt);
    row->kt = fmin(ox_vec_length(sum), most_kt());
    if (row->kt > 0.0)
      row->from_deg =
          handles_circle_deg(ox_magnetic_deg(ox_bearing_deg(sum) + 180.0, variation));
  }
}

void handles_set_wind(ox_case *c, const ox_setup *setup, double from_deg, double kt) {
  if (c->wind_count <= 1) {
    set_only_row(c, from_deg, kt);
    return;
  }
  kt = fmax(kt, LEAST_OF_ROWS_KT);
  if (setup->wind_speed_kt > NO_WIND_KT) {
    double old_deg = handles_wind_from_deg(c, setup);
    turn_and_scale(c, ox_turn_between_deg(old_deg, from_deg), kt / setup->wind_speed_kt);
    return;
  }
  bool magnetic = handles_wind_north(c) == OX_NORTH_MAGNETIC;
  double from_true_deg = magnetic ? ox_true_deg(from_deg, c->variation_deg) : from_deg;
  add_to_rows(c, ox_vec_sub(ox_wind_velocity_kt(from_true_deg, kt), setup->wind_kt));
}
