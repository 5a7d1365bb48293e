/* Cases for drawing: the lesson shown first, and seeded ones from mild to absurd. */
#ifndef PAINT_CASES_H
#define PAINT_CASES_H

#include <cairo.h>

#include "oxbow/case.h"
#include "oxbow/fields.h"
#include "oxbow/flight.h"
#include "oxbow/flaws.h"
#include "oxbow/picture.h"
#include "ox_test.h"

static ox_flight paint_flight; /* large, so not on the stack; one at a time is enough */

static inline ox_case paint_demo_case(void) {
  ox_case c = ox_case_default();
  strcpy(c.name, "Twenty knots from the north");
  strcpy(c.hold.fix, "LARCH");
  c.hold.inbound_deg = 240;
  c.arrival.heading_deg = 290;
  c.variation_deg = -12;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 360, 20, OX_NORTH_TRUE};
  return c;
}

/* What somebody would set up: usual speeds and winds, every course, turn and technique. */
static inline ox_case paint_mild_case(ox_random *r) {
  ox_case c = paint_demo_case();
  c.hold.inbound_deg = floor(ox_random_between(r, 0, 361));
  c.hold.turns = ox_random_below(r, 2) ? OX_TURNS_LEFT : OX_TURNS_RIGHT;
  if (ox_random_below(r, 4) == 0) {
    c.hold.leg_by = OX_LEG_BY_DISTANCE;
    c.hold.leg_nm = ox_random_between(r, 3, 10);
  }
  c.hold.altitude_ft = 500 * (2 + ox_random_below(r, 40));
  c.arrival.heading_deg = floor(ox_random_between(r, 0, 361));
  c.arrival.distance_nm = ox_random_between(r, 0, 12);
  c.aircraft.ias_kt = floor(ox_random_between(r, 80, 230));
  c.wind[0].from_deg = floor(ox_random_between(r, 0, 361));
  c.wind[0].kt = floor(ox_random_between(r, 0, 45));
  c.wind[0].north = ox_random_below(r, 2) ? OX_NORTH_MAGNETIC : OX_NORTH_TRUE;
  c.variation_deg = ox_random_below(r, 3) ? floor(ox_random_between(r, -25, 25)) : 0;
  c.technique.drift = (ox_drift)ox_random_below(r, 6);
  c.technique.outbound = (ox_outbound)ox_random_below(r, 4);
  c.technique.timing = (ox_timing)ox_random_below(r, 2);
  c.technique.circuits = 1 + ox_random_below(r, 5);
  return c;
}

/* Anything that the checker lets through. */
static inline ox_case paint_wild_case(ox_random *r) {
  for (;;) {
    ox_case c = ox_case_default();
    size_t count;
    const ox_field *fields = ox_fields(&count);
    for (size_t i = 0; i < count; i++) {
      double v = ox_random_between(r, fields[i].min, fields[i].max);
      if (fields[i].kind != OX_FIELD_NUMBER)
        v = fields[i].min + ox_random_below(r, (int)(fields[i].max - fields[i].min) + 1);
      ox_field_set(&fields[i], &c, v);
    }
    c.wind_count = ox_random_below(r, 2);
    c.wind[0] = (ox_wind_row){0, ox_random_between(r, 0, 360), ox_random_between(r, 0, 250),
                              OX_NORTH_TRUE};
    if (ox_case_check(&c, NULL, 0) == 0) return c;
  }
}

static inline ox_case paint_seeded_case(unsigned seed) {
  ox_random r = {seed * 7919u + 17u};
  return seed % 3 == 2 ? paint_wild_case(&r) : paint_mild_case(&r);
}

static inline ox_scene paint_scene(const ox_case *c, const ox_flight *flight,
                                   ox_palette_id palette) {
  return (ox_scene){.c = c, .flight = flight, .title = "Crosswind at the lake",
                    .palette = palette, .text_scale = 1.0, .layers = OX_LAYER_ALL};
}

/* Solves and lays out; the case must live as long as the picture. */
static inline ox_picture *paint_picture(const ox_case *c, ox_palette_id palette, double width,
                                        double height) {
  assert_int_not_equal(ox_flight_solve(c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(c, &paint_flight, palette);
  ox_picture *p = ox_picture_new(&scene, width, height);
  assert_non_null(p);
  return p;
}

/* The overlays: an exact flight or one with a mistake, and the protected area. */
static ox_flight paint_other;
static ox_area paint_area;

static inline ox_scene paint_overlaid_scene(const ox_case *c, ox_palette_id palette,
                                            unsigned seed) {
  assert_int_not_equal(ox_flight_solve(c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(c, &paint_flight, palette);
  ox_case exact = *c;
  exact.technique.drift = OX_DRIFT_EXACT;
  exact.technique.outbound = OX_OUTBOUND_EXACT;
  ox_mistake mistake = (ox_mistake)(seed % (OX_MISTAKE_COUNT + 1));
  ox_flaws flaws = {.mistakes = mistake < OX_MISTAKE_COUNT ? 1u << mistake : 0u};
  assert_int_not_equal(ox_flight_solve_flawed(flaws.mistakes ? c : &exact, &flaws, &paint_other),
                       OX_ERROR);
  paint_area = ox_area_make(c, &paint_flight.setup, 0.0);
  scene.compare = &paint_other;
  scene.compare_name = flaws.mistakes ? ox_mistake_name(mistake) : "exact";
  scene.area = &paint_area;
  return scene;
}

#endif
