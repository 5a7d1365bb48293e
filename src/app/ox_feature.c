/* Where the parts of the picture lie that words mean. */
#include "ox_feature.h"

#include <math.h>

#include "oxbow/text.h"

#define TURN_STEPS 24

ox_feature ox_feature_of_item(ox_item_kind kind) {
  switch (kind) {
  case OX_ITEM_LIMIT:
  case OX_ITEM_FIX:
  case OX_ITEM_FIX_DME:
  case OX_ITEM_ARC:
    return OX_FEATURE_FIX;
  case OX_ITEM_DIRECTION:
    return OX_FEATURE_DIRECTION;
  case OX_ITEM_RADIAL:
  case OX_ITEM_BEARING:
  case OX_ITEM_COURSE:
  case OX_ITEM_INBOUND:
  case OX_ITEM_OUTBOUND:
  case OX_ITEM_AIRWAY:
    return OX_FEATURE_COURSE;
  case OX_ITEM_TURNS:
    return OX_FEATURE_TURNS;
  case OX_ITEM_LEG:
  case OX_ITEM_DME_RANGE:
    return OX_FEATURE_LEG;
  case OX_ITEM_ALTITUDE:
  case OX_ITEM_SPEED:
  case OX_ITEM_PUBLISHED:
    return OX_FEATURE_LIMITS;
  case OX_ITEM_EFC:
  case OX_ITEM_DELAY:
  case OX_ITEM_NOW:
    return OX_FEATURE_TIME;
  case OX_ITEM_ROUTE:
  case OX_ITEM_KIND_COUNT:
    break;
  }
  return OX_FEATURE_NONE;
}

const char *ox_feature_name(ox_feature feature) {
  static const char *const names[OX_FEATURE_COUNT] = {
      [OX_FEATURE_NONE] = "",
      [OX_FEATURE_FIX] = N_("the holding fix"),
      [OX_FEATURE_DIRECTION] = N_("where the hold lies from the fix"),
      [OX_FEATURE_COURSE] = N_("the inbound course"),
      [OX_FEATURE_TURNS] = N_("the turn at the fix"),
      [OX_FEATURE_LEG] = N_("the leg"),
      [OX_FEATURE_LIMITS] = N_("the whole hold"),
      [OX_FEATURE_TIME] = N_("over the fix, at a time"),
  };
  return feature >= 0 && feature < OX_FEATURE_COUNT ? _(names[feature]) : "";
}

/* --- points -------------------------------------------------------------------------------- */

typedef struct {
  ox_vec *out;
  size_t count;
} points;

static void add(points *p, ox_vec point) {
  if (p->count < OX_FEATURE_POINTS_MAX) p->out[p->count++] = point;
}

static void add_leg(points *p, const ox_leg *leg) {
  int steps = leg->shape == OX_SHAPE_TURN ? TURN_STEPS : 1;
  if (p->count == 0) add(p, leg->p0_nm);
  for (int i = 1; i <= steps; i++)
    add(p, ox_leg_position(leg, leg->t0_s + (leg->t1_s - leg->t0_s) * i / steps));
}

static const ox_leg *last_of(const ox_flight *f, ox_leg_kind kind) {
  for (size_t i = f->leg_count; i > 0; i--)
    if (f->legs[i - 1].kind == kind) return &f->legs[i - 1];
  return NULL;
}

/* How far the hold reaches along its course. */
static double reach_nm(const ox_flight *f) {
  ox_vec along = ox_unit(f->setup.inbound_true_deg + 180.0);
  double reach = 0.5;
  for (size_t i = 0; i < f->circuit_count; i++)
    reach = fmax(reach, ox_vec_dot(f->circuits[i].outbound_end_nm, along));
  return reach;
}

static void add_outward(points *p, const ox_flight *f, double part) {
  add(p, (ox_vec){0, 0});
  add(p, ox_vec_scale(ox_unit(f->setup.inbound_true_deg + 180.0), part * reach_nm(f)));
}

static void add_last(points *p, const ox_flight *f, ox_leg_kind kind) {
  const ox_leg *leg = last_of(f, kind);
  if (leg) add_leg(p, leg);
}

static bool leg_is_inbound(const ox_setup *s) {
  return s->goal == OX_GOAL_INBOUND_S || s->goal == OX_GOAL_INBOUND_NM;
}

/* The last circuit as it was flown. */
static void add_circuit(points *p, const ox_flight *f) {
  int circuit = (int)f->circuit_count;
  for (size_t i = 0; i < f->leg_count && circuit > 0; i++)
    if (f->legs[i].circuit == circuit) add_leg(p, &f->legs[i]);
}

size_t ox_feature_points(ox_feature feature, const ox_case *c, const ox_flight *flight,
                         ox_vec out[OX_FEATURE_POINTS_MAX]) {
  points p = {out, 0};
  if (flight->leg_count == 0) return 0;
  switch (feature) {
  case OX_FEATURE_FIX:
  case OX_FEATURE_TIME:
    add(&p, (ox_vec){0, 0});
    break;
  case OX_FEATURE_DIRECTION:
    add_outward(&p, flight, 0.5);
    break;
  case OX_FEATURE_COURSE:
    add_outward(&p, flight, 1.2);
    break;
  case OX_FEATURE_TURNS:
    add_last(&p, flight, OX_LEG_OUTBOUND_TURN);
    break;
  case OX_FEATURE_LEG:
    add_last(&p, flight, leg_is_inbound(&flight->setup) ? OX_LEG_INBOUND : OX_LEG_OUTBOUND);
    break;
  case OX_FEATURE_LIMITS:
    add_circuit(&p, flight);
    break;
  case OX_FEATURE_NONE:
  case OX_FEATURE_COUNT:
    break;
  }
  return p.count;
}

/* --- what is at a place -------------------------------------------------------------------- */

static double to_segment(ox_vec p, ox_vec a, ox_vec b) {
  ox_vec along = ox_vec_sub(b, a), to = ox_vec_sub(p, a);
  double length2 = ox_vec_dot(along, along);
  double part = length2 > 0.0 ? ox_vec_dot(to, along) / length2 : 0.0;
  part = fmin(1.0, fmax(0.0, part));
  return ox_vec_length(ox_vec_sub(to, ox_vec_scale(along, part)));
}

static double distance(ox_feature feature, const ox_case *c, const ox_flight *flight,
                       const ox_viewport *viewport, ox_vec place) {
  ox_vec world[OX_FEATURE_POINTS_MAX];
  size_t count = ox_feature_points(feature, c, flight, world);
  double least = HUGE_VAL;
  for (size_t i = 0; i < count; i++) {
    ox_vec a = ox_viewport_to_dev(viewport, world[i]);
    ox_vec b = i + 1 < count ? ox_viewport_to_dev(viewport, world[i + 1]) : a;
    least = fmin(least, to_segment(place, a, b));
  }
  return least;
}

bool ox_feature_is_flown(ox_feature feature) {
  return feature == OX_FEATURE_TURNS || feature == OX_FEATURE_LEG || feature == OX_FEATURE_LIMITS;
}

ox_feature ox_feature_at(const ox_case *c, const ox_flight *flight, const ox_viewport *viewport,
                         bool in_air, ox_vec place, double near) {
  static const ox_feature lines[] = {OX_FEATURE_LEG, OX_FEATURE_TURNS, OX_FEATURE_COURSE};
  ox_feature best = OX_FEATURE_NONE;
  double best_at = near;
  if (distance(OX_FEATURE_FIX, c, flight, viewport, place) <= near) return OX_FEATURE_FIX;
  for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
    if (in_air && ox_feature_is_flown(lines[i])) continue;
    double at = distance(lines[i], c, flight, viewport, place);
    /* Where two lie on each other the more particular one comes first. */
    if (at < best_at - 1e-9) {
      best = lines[i];
      best_at = at;
    }
  }
  return best;
}
