/* Variants of a case, each a change of a few fields. */
#include "oxbow/variants.h"

#include <math.h>
#include <stddef.h>

#include "oxbow/angle.h"
#include "oxbow/mark.h"

static const double MOST_WIND_KT = 250.0; /* as in the table of fields */

static const struct {
  const char *key, *name;
} names[OX_VARIANT_COUNT] = {
    [OX_VARIANT_CALM] = {"calm", N_("Calm air")},
    [OX_VARIANT_WIND_DOUBLED] = {"wind-doubled", N_("Twice the wind")},
    [OX_VARIANT_WIND_TURNED] = {"wind-turned", N_("Wind from the other side")},
    [OX_VARIANT_OTHER_TURNS] = {"other-turns", N_("Turns to the other side")},
    [OX_VARIANT_DRIFT_SINGLE] = {"single-drift", N_("Single drift")},
    [OX_VARIANT_DRIFT_TRIPLE] = {"triple-drift", N_("Triple drift")},
    [OX_VARIANT_BOUNDARY_LEFT] = {"boundary-left", N_("2° left of the sector boundary")},
    [OX_VARIANT_BOUNDARY_RIGHT] = {"boundary-right", N_("2° right of the sector boundary")},
};

const char *ox_variant_name(ox_variant variant) { return names[variant].name; }

const char *ox_variant_key(ox_variant variant) { return names[variant].key; }

/* --- wind ---------------------------------------------------------------------------------- */

static void calm(ox_case *c) {
  for (int i = 0; i < c->wind_count; i++)
    c->wind[i].kt = 0.0;
  for (int i = 0; i < c->wind_change_count; i++)
    c->wind_changes[i].kt = 0.0;
}

static void doubled(ox_case *c) {
  for (int i = 0; i < c->wind_count; i++)
    c->wind[i].kt = fmin(2.0 * c->wind[i].kt, MOST_WIND_KT);
  for (int i = 0; i < c->wind_change_count; i++)
    c->wind_changes[i].kt = fmin(2.0 * c->wind_changes[i].kt, MOST_WIND_KT);
}

static double opposite_deg(double from_deg) {
  return from_deg <= 180.0 ? from_deg + 180.0 : from_deg - 180.0;
}

static void turned(ox_case *c) {
  for (int i = 0; i < c->wind_count; i++)
    c->wind[i].from_deg = opposite_deg(c->wind[i].from_deg);
  for (int i = 0; i < c->wind_change_count; i++)
    c->wind_changes[i].from_deg = opposite_deg(c->wind_changes[i].from_deg);
}

static bool any_wind(const ox_case *c) {
  for (int i = 0; i < c->wind_count; i++)
    if (c->wind[i].kt > 0.0) return true;
  for (int i = 0; i < c->wind_change_count; i++)
    if (c->wind_changes[i].kt > 0.0) return true;
  return false;
}

/* --- the sector boundary ------------------------------------------------------------------- */

/* Headings of people are 1 to 360. */
static void beside_boundary(ox_case *c, const ox_flight *flight, double side_deg) {
  double true_deg = flight->by_heading.boundary_at_deg + side_deg;
  double shown_deg = ox_norm360_deg(true_deg - c->variation_deg);
  c->arrival.heading_deg = shown_deg == 0.0 ? 360.0 : shown_deg;
}

static void change(ox_variant variant, const ox_flight *flight, ox_case *c) {
  switch (variant) {
  case OX_VARIANT_CALM:
    calm(c);
    break;
  case OX_VARIANT_WIND_DOUBLED:
    doubled(c);
    break;
  case OX_VARIANT_WIND_TURNED:
    if (any_wind(c)) turned(c);
    break;
  case OX_VARIANT_OTHER_TURNS:
    c->hold.turns = c->hold.turns == OX_TURNS_RIGHT ? OX_TURNS_LEFT : OX_TURNS_RIGHT;
    break;
  case OX_VARIANT_DRIFT_SINGLE:
    c->technique.drift = OX_DRIFT_SINGLE;
    break;
  case OX_VARIANT_DRIFT_TRIPLE:
    c->technique.drift = OX_DRIFT_TRIPLE;
    break;
  case OX_VARIANT_BOUNDARY_LEFT:
    beside_boundary(c, flight, -OX_VARIANT_BOUNDARY_DEG);
    break;
  case OX_VARIANT_BOUNDARY_RIGHT:
    beside_boundary(c, flight, OX_VARIANT_BOUNDARY_DEG);
    break;
  default:
    break;
  }
}

bool ox_variant_make(ox_variant variant, const ox_case *c, const ox_flight *flight, ox_case *out) {
  bool boundary = variant == OX_VARIANT_BOUNDARY_LEFT || variant == OX_VARIANT_BOUNDARY_RIGHT;
  /* By the track the boundary is no heading; and an entry that is ordered knows no boundary. */
  if (boundary && (c->technique.sector != OX_SECTOR_HEADING ||
                   c->technique.entry != OX_CHOOSE_AUTO))
    return false;
  ox_case made = *c;
  change(variant, flight, &made);
  if (ox_case_equal(&made, c) || ox_case_check(&made, NULL, 0) > 0) return false;
  *out = made;
  return true;
}
