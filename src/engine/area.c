/* The protected area as an illustration. See oxbow/area.h for what is known and what is not.
 *
 * The area is the convex hull of discs: every place the construction reaches, widened by the wind
 * for the time elapsed. A convex set is known by how far it reaches in each direction, so building
 * it is taking the greatest reach over the discs, and testing a point is comparing reaches. */
#include "oxbow/area.h"

#include <math.h>

#include "frame.h"
#include "oxbow/atmosphere.h"
#include "oxbow/limits.h"
#include "oxbow/turn.h"
#include "oxbow/units.h"

/* Doc 8168 Vol II: 25 degrees of bank or rate one, ISA + 15, w = 2h + 47, tolerances of the
 * template (holding-standards 7.1, 7.2). */
static const double BANK_DEG = 25.0, RATE_DEG_S = 3.0, ISA_DEV_C = 15.0;
static const double LATE_TURN_S = 11.0;       /* reaction 6 s, bank 5 s */
static const double EARLY_END_S = -5.0, LATE_END_S = 21.0;
static const double LINE_DEG = 5.0;

typedef struct {
  ox_area *area;
  ox_vec facing[OX_AREA_SIDES]; /* unit vectors of the directions, in the hold's frame */
  double v, w;                  /* NM/s */
  double rate_deg_s, radius_nm;
} builder;

typedef struct {
  ox_vec p;
  double heading_deg, t_s; /* in the frame; time since the fix */
} place;

static void cover(builder *b, place at) {
  double widened_nm = b->w * at.t_s;
  for (int i = 0; i < OX_AREA_SIDES; i++) {
    double reach = ox_vec_dot(at.p, b->facing[i]) + widened_nm;
    if (reach > b->area->reach_nm[i]) b->area->reach_nm[i] = reach;
  }
}

static place straight(const builder *b, place from, double s) {
  from.p = ox_vec_add(from.p, ox_vec_scale(ox_unit(from.heading_deg), b->v * s));
  from.t_s += s;
  return from;
}

/* Turns right in steps, covering each; the chord form is exact. */
static place turn(builder *b, place from, double turn_deg) {
  enum { STEP_DEG = 5 };
  for (double done = 0.0; done < turn_deg; done += STEP_DEG) {
    double step = fmin(STEP_DEG, turn_deg - done), s, c;
    ox_sincos_deg(0.5 * step, &s, &c);
    ox_vec chord = ox_vec_scale(ox_unit(from.heading_deg + 0.5 * step), 2.0 * b->radius_nm * s);
    from.p = ox_vec_add(from.p, chord);
    from.heading_deg += step;
    from.t_s += step / b->rate_deg_s;
    cover(b, from);
  }
  return from;
}

static void outbound_from(builder *b, place level, double leg_s) {
  for (int side = -1; side <= 1; side++) {
    place line = level;
    line.heading_deg += side * LINE_DEG;
    for (int late = 0; late <= 1; late++) {
      place end = straight(b, line, leg_s + (late ? LATE_END_S : EARLY_END_S));
      cover(b, end);
      turn(b, end, 180.0 - side * LINE_DEG);
    }
  }
}

/* Outbound time of the template: the time itself, or the distance at the template's TAS. */
static double leg_time_s(const ox_setup *s, double v) {
  if (s->leg_s > 0.0) return s->leg_s;
  double nm = s->has_dme ? fabs(s->goal_value - s->dme_fix_nm) : s->goal_value;
  return nm / v;
}

ox_area ox_area_make(const ox_case *c, const ox_setup *setup, double buffer_nm) {
  ox_area area = {{0}, 0, 0, 0, 0};
  double altitude_ft = c->hold.altitude_ft;
  ox_turn_rate rate;
  area.tas_kt = setup->ias_kt * ox_icao_tas_factor(altitude_ft, ISA_DEV_C);
  area.wind_kt = fmax(0.0, 2.0 * altitude_ft / 1000.0 + 47.0);
  rate = ox_turn_rate_for(area.tas_kt, RATE_DEG_S, BANK_DEG);
  area.rate_deg_s = rate.rate_deg_s;
  area.radius_nm = rate.radius_nm;

  builder b = {&area, {{0, 0}}, area.tas_kt / OX_S_PER_H, area.wind_kt / OX_S_PER_H,
               rate.rate_deg_s, rate.radius_nm};
  ox_frame frame = ox_frame_make(setup->inbound_true_deg, setup->sense);
  for (int i = 0; i < OX_AREA_SIDES; i++)
    b.facing[i] = ox_frame_in(&frame, ox_unit(i * 360.0 / OX_AREA_SIDES));
  place fix = {{0, 0}, 0.0, 0.0};
  for (int late = 0; late <= 1; late++) {
    place begin = straight(&b, fix, late ? LATE_TURN_S : 0.0);
    cover(&b, begin);
    outbound_from(&b, turn(&b, begin, 180.0), leg_time_s(setup, b.v));
  }
  for (int i = 0; i < OX_AREA_SIDES; i++) area.reach_nm[i] += buffer_nm;
  return area;
}

double ox_limiting_dme_nm(double ias_kt, double height_ft, double nominal_nm, double leg_s,
                          double *rounded_nm) {
  double tas_kt = ias_kt * ox_icao_tas_factor(height_ft, ISA_DEV_C);
  ox_turn_rate turn = ox_turn_rate_for(tas_kt, RATE_DEG_S, BANK_DEG);
  double h = height_ft / 1000.0, height2 = 0.027 * h * h;
  double fix_nm = sqrt(fmax(0.0, nominal_nm * nominal_nm - height2));
  double out_nm = fix_nm + tas_kt / OX_S_PER_H * leg_s;
  double limit_nm = sqrt(out_nm * out_nm + 4.0 * turn.radius_nm * turn.radius_nm + height2);
  double part = limit_nm - floor(limit_nm);
  *rounded_nm = floor(limit_nm) + (part < (height_ft <= 14000.0 ? 0.25 : 0.5) ? 0.0 : 1.0);
  return limit_nm;
}

void ox_area_outline(const ox_area *area, ox_vec out[OX_AREA_SIDES]) {
  double step_deg = 360.0 / OX_AREA_SIDES, s, c;
  ox_sincos_deg(step_deg, &s, &c);
  for (int i = 0; i < OX_AREA_SIDES; i++) {
    /* Where the edges of two neighbouring directions meet. */
    double r0 = area->reach_nm[i], r1 = area->reach_nm[(i + 1) % OX_AREA_SIDES];
    ox_vec along = ox_unit(i * step_deg), across = ox_unit(i * step_deg + 90.0);
    out[i] = ox_vec_add(ox_vec_scale(along, r0), ox_vec_scale(across, (r1 - r0 * c) / s));
  }
}

double ox_area_margin_nm(const ox_area *area, ox_vec p_nm) {
  double least = HUGE_VAL;
  for (int i = 0; i < OX_AREA_SIDES; i++) {
    double left = area->reach_nm[i] - ox_vec_dot(p_nm, ox_unit(i * 360.0 / OX_AREA_SIDES));
    least = fmin(least, left);
  }
  return least;
}

double ox_area_flight_margin_nm(const ox_area *area, const ox_flight *flight) {
  double least = ox_area_margin_nm(area, (ox_vec){0, 0});
  for (size_t i = 0; i < flight->leg_count; i++) {
    const ox_leg *leg = &flight->legs[i];
    if (leg->t1_s <= 0.0) continue;
    for (double t_s = leg->t0_s; t_s < leg->t1_s; t_s += 1.0)
      least = fmin(least, ox_area_margin_nm(area, ox_leg_position(leg, t_s)));
    least = fmin(least, ox_area_margin_nm(area, leg->p1_nm));
  }
  return least;
}
