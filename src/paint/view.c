/* How much of the world is shown: the hold large, the rose whole, the arrival only as far as it
 * helps; and where that is at an instant, in a view that moves.
 *
 * The box round it all is measured as the board sees it: x to the right, y upwards, from the
 * fix. */
#include <math.h>

#include "air.h"
#include "paint_private.h"

/* A flight that drifts away is followed this many lengths of the hold beyond the hold itself. */
static const double FOLLOWED_LENGTHS = 1.6;
/* The protected area, marks and paths are shown as far as this share of the hold's diagonal
 * beyond it. */
static const double AREA_LENGTHS = 0.9;
static const double MARGIN_EM = 2.6; /* room for labels outside the track */
static const double COURSE_FIGURE_EM = 2.2;
static const double ABOUT_AIRCRAFT = 0.72; /* of the diagonal, shown each way about an aircraft */
static const int LEG_PIECES = 12;
static const int STRETCHES_FITTED = 6;
static const double FORESEEN_S = 120.0; /* before the fix, what is flown next is in the map */

/* What the shares of the text sizes are of. The least size holds down to boards where it would
 * crowd out the picture. */
static double text_side(const ox_palette *q, double side) {
  return fmax(side, fmin(q->least_text, 0.032 * side) / q->small_share);
}

double ox_picture_label_size(ox_palette_id palette, double width, double height) {
  const ox_palette *q = ox_palette_get(palette);
  return q->label_share * text_side(q, fmin(width, height));
}

void ox_build_sizes(ox_picture *p) {
  const ox_palette *q = p->palette;
  double side = fmin(p->width, p->height);
  double scale = p->scene.text_scale;
  scale = scale > 0.0 && isfinite(scale) ? fmin(fmax(scale, 0.5), 4.0) : 1.0;
  double text = text_side(q, side) * scale;
  p->size.title = q->title_share * text;
  p->size.key = q->key_share * text;
  p->size.label = q->label_share * text;
  p->size.small = q->small_share * text;
  double track = fmax(q->line_share * side, fmin(1.7, 0.02 * side));
  double fine = fmax(fmax(0.32 * track, q->least_line), q->fine_share * side);
  p->size.track = track;
  p->size.later = fmax(0.62 * track, fine);
  p->size.entry = fmax(0.85 * track, fine);
  p->size.arrival = fmax(0.5 * track, fine);
  p->size.still = fmax(0.45 * track, fine);
  p->size.compare = fmax(0.68 * track, fine); /* the solid track shows on both sides of it */
  p->size.course = fine;
  p->size.rose = fmax(0.85 * fine, q->fine_share * side);
  p->size.pen_thin = 1.15 * track * scale;
  p->size.pen_broad = 3.2 * track * scale;
}

/* --- the box round the world --------------------------------------------------------------- */

typedef struct {
  ox_vec min, max;
  double sin_up, cos_up; /* of the bearing that points up */
} box;

static ox_vec as_seen(const box *b, ox_vec q) {
  return (ox_vec){q.x * b->cos_up - q.y * b->sin_up, q.x * b->sin_up + q.y * b->cos_up};
}

static ox_vec in_world(const box *b, ox_vec q) {
  return (ox_vec){q.x * b->cos_up + q.y * b->sin_up, q.y * b->cos_up - q.x * b->sin_up};
}

static void grow(box *b, ox_vec p) {
  b->min.x = fmin(b->min.x, p.x);
  b->min.y = fmin(b->min.y, p.y);
  b->max.x = fmax(b->max.x, p.x);
  b->max.y = fmax(b->max.y, p.y);
}

static void grow_by_box(box *b, const box *other) {
  grow(b, other->min);
  grow(b, other->max);
}

static ox_vec within(ox_vec q, const box *limit) {
  return (ox_vec){fmin(fmax(q.x, limit->min.x), limit->max.x),
                  fmin(fmax(q.y, limit->min.y), limit->max.y)};
}

static box wider(const box *b, double lengths) {
  double reach = lengths * ox_vec_length(ox_vec_sub(b->max, b->min));
  box limit = *b;
  limit.min = ox_vec_sub(b->min, (ox_vec){reach, reach});
  limit.max = ox_vec_add(b->max, (ox_vec){reach, reach});
  return limit;
}

/* The leg moved by so much; limit may be NULL. */
static void grow_by_leg(box *b, const ox_leg *leg, ox_vec moved, const box *limit) {
  int n = leg->shape == OX_SHAPE_TURN ? LEG_PIECES : 1;
  for (int i = 0; i <= n; i++) {
    ox_vec q = ox_leg_position(leg, leg->t0_s + (leg->t1_s - leg->t0_s) * i / n);
    q = as_seen(b, ox_vec_add(q, moved));
    grow(b, limit ? within(q, limit) : q);
  }
}

static void grow_by_flight(box *b, const ox_flight *f, const box *limit) {
  for (size_t i = 0; i < f->leg_count; i++)
    if (f->legs[i].part != OX_PART_ARRIVAL)
      grow_by_leg(b, &f->legs[i], (ox_vec){0, 0}, limit);
}

/* What is seen of the first stretch while it is still to be flown: the longer until then, the
 * farther up the wind it lies. */
static void grow_by_approach(box *b, const ox_picture *p, const ox_stretch *first,
                             const box *limit) {
  const ox_flight *f = p->scene.flight;
  double t_s = fmax(ox_flight_begin_s(f), -FORESEEN_S);
  if (!(t_s < 0.0)) return;
  ox_vec moved = ox_vec_scale(ox_air_camera(f, t_s), -1.0);
  ox_air_see(f, t_s, 1.0, p->seen);
  for (size_t i = 0; i < f->leg_count; i++)
    if (ox_stretch_has(first, &f->legs[i])) grow_by_leg(b, &p->seen->legs[i], moved, limit);
}

/* What the air view shows of the first stretches, and the way that the fix slides in them. */
static void grow_by_air(box *b, const ox_picture *p, const box *limit) {
  const ox_flight *f = p->scene.flight;
  ox_stretch s = ox_air_stretch(f, 0.0);
  grow_by_approach(b, p, &s, limit);
  for (int n = 0; n < STRETCHES_FITTED; n++) {
    double middle_s = 0.5 * (s.from_s + s.to_s);
    ox_air_see(f, middle_s, 1.0, p->seen);
    for (size_t i = 0; i < f->leg_count; i++)
      if (ox_stretch_has(&s, &f->legs[i]))
        grow_by_leg(b, &p->seen->legs[i], (ox_vec){0, 0}, limit);
    ox_vec slid = ox_vec_sub(ox_air_carry(f, s.to_s), ox_air_carry(f, middle_s));
    grow(b, within(as_seen(b, slid), limit));
    grow(b, within(as_seen(b, ox_vec_scale(slid, -1.0)), limit));
    if (!(s.to_s < ox_flight_end_s(f))) break;
    s = ox_air_stretch(f, s.to_s);
  }
}

static void grow_by_area(box *b, const ox_area *area) {
  box limit = wider(b, AREA_LENGTHS);
  ox_vec corner[OX_AREA_SIDES];
  ox_area_outline(area, corner);
  for (int i = 0; i < OX_AREA_SIDES; i++)
    if (isfinite(corner[i].x) && isfinite(corner[i].y))
      grow(b, within(as_seen(b, corner[i]), &limit));
}

static void grow_by_places(box *b, const ox_scene *scene) {
  box limit = wider(b, AREA_LENGTHS);
  for (size_t i = 0; i < scene->mark_count; i++)
    if (ox_is_finite(scene->marks[i].at_nm))
      grow(b, within(as_seen(b, scene->marks[i].at_nm), &limit));
  for (size_t i = 0; i < scene->path_count; i++)
    for (size_t k = 0; k < scene->paths[i].count; k++)
      if (ox_is_finite(scene->paths[i].points_nm[k]))
        grow(b, within(as_seen(b, scene->paths[i].points_nm[k]), &limit));
}

static void blend(box *b, const box *with, double share) {
  b->min = ox_vec_add(b->min, ox_vec_scale(ox_vec_sub(with->min, b->min), share));
  b->max = ox_vec_add(b->max, ox_vec_scale(ox_vec_sub(with->max, b->max), share));
}

static box world_box(const ox_picture *p, double up_deg) {
  const ox_flight *f = p->scene.flight;
  box hold = {{0, 0}, {0, 0}, 0, 1};
  ox_sincos_deg(up_deg, &hold.sin_up, &hold.cos_up);
  ox_leg still[4];
  ox_still_air_shape(&f->setup, still);
  for (int i = 0; i < 4; i++) grow_by_leg(&hold, &still[i], (ox_vec){0, 0}, NULL);
  box limit = wider(&hold, FOLLOWED_LENGTHS);
  if (ox_has_layer(p, OX_LAYER_TRACK)) {
    box carried = hold;
    grow_by_flight(&hold, f, &limit);
    for (size_t i = 0; i < p->other_count; i++) grow_by_flight(&hold, p->others[i].flight, &limit);
    if (p->air > 0.0) {
      grow_by_air(&carried, p, &limit);
      grow_by_box(&carried, &hold);
      blend(&hold, &carried, p->air);
    }
  }
  if (p->scene.area) grow_by_area(&hold, p->scene.area);
  if (p->scene.mark_count > 0 || p->scene.path_count > 0) grow_by_places(&hold, &p->scene);
  return hold;
}

/* How far the course line runs before it leaves the box on its way upstream (NM). */
static double upstream_of(const box *b, ox_vec up) {
  double x = up.x > 0 ? b->max.x / up.x : up.x < 0 ? b->min.x / up.x : HUGE_VAL;
  double y = up.y > 0 ? b->max.y / up.y : up.y < 0 ? b->min.y / up.y : HUGE_VAL;
  return fmin(x, y);
}

/* --- the fitted view ----------------------------------------------------------------------- */

static ox_viewport fitted(const ox_picture *p, const box *b, double margin) {
  ox_vec origin = {p->map.x, p->map.y}, size = {p->map.width, p->map.height};
  return ox_viewport_fit(b->min, b->max, origin, size, margin, 0.0);
}

/* The rose and the last of the arrival have a size on the board, not in the world: with each
 * round the scale shrinks a little less, until both fit. */
static box fit_round_rose(ox_picture *p, const box *world, double margin, ox_viewport *v) {
  const ox_flight *f = p->scene.flight;
  const double em = p->size.label;
  double about_fix = p->rose_radius > 0.0 ? p->rose_radius + fmax(0.0, 2.0 * em - margin) : 0.0;
  double arrival = p->rose_radius + 1.5 * em;
  ox_vec up = as_seen(world, ox_unit(f->setup.inbound_true_deg + 180.0));
  ox_vec from = as_seen(world, ox_unit(f->setup.arrival_track_true_deg));
  double upstream_nm = upstream_of(world, up); /* beyond it stands the course's figure */
  ox_vec fix = {0, 0}; /* where it is seen on the arrival */
  if (p->air > 0.0) fix = as_seen(world, ox_vec_scale(ox_air_camera(f, -1.0), -p->air));
  box all = *world;
  *v = fitted(p, world, margin);
  for (int round = 0; round < 12; round++) {
    double nm = about_fix / v->dev_per_nm;
    double arrival_nm = fmin(arrival / v->dev_per_nm, p->scene.c->arrival.distance_nm);
    all = *world;
    grow(&all, (ox_vec){-nm, -nm});
    grow(&all, (ox_vec){nm, nm});
    grow(&all, ox_vec_scale(up, upstream_nm + COURSE_FIGURE_EM * em / v->dev_per_nm));
    if (ox_has_layer(p, OX_LAYER_TRACK))
      grow(&all, ox_vec_sub(fix, ox_vec_scale(from, arrival_nm)));
    *v = fitted(p, &all, margin);
  }
  return all;
}

/* About an aircraft that stays in the middle while the world turns round it. */
static box fit_round_aircraft(ox_picture *p, const box *world, double margin, ox_viewport *v) {
  double reach = ABOUT_AIRCRAFT * ox_vec_length(ox_vec_sub(world->max, world->min));
  box all = {{-reach, -reach}, {reach, reach}, 0, 1};
  *v = fitted(p, &all, fmin(margin, 1.2 * p->size.label));
  return all;
}

/* The middle stays where something of the world is still in the map. */
static ox_vec pan_within(const ox_picture *p, const box *all, ox_vec middle, ox_vec pan_nm) {
  const ox_flight *f = p->scene.flight;
  box limit = *all;
  if (f->leg_count > 0) grow(&limit, as_seen(all, f->legs[0].p0_nm));
  for (size_t i = 0; i < p->scene.mark_count; i++)
    if (ox_is_finite(p->scene.marks[i].at_nm)) grow(&limit, as_seen(all, p->scene.marks[i].at_nm));
  if (ox_has_limits(p)) grow(&limit, as_seen(all, f->setup.dme.at_nm));
  double reach = 0.45 / p->home.dev_per_nm;
  ox_vec half = {reach * p->map.width, reach * p->map.height};
  limit.min = ox_vec_sub(limit.min, half);
  limit.max = ox_vec_add(limit.max, half);
  ox_vec to = within(ox_vec_add(middle, as_seen(all, pan_nm)), &limit);
  return in_world(all, ox_vec_sub(to, middle));
}

void ox_build_view(ox_picture *p) {
  ox_view *view = &p->scene.view;
  bool with_aircraft = view->up == OX_UP_AIRCRAFT;
  double up_deg = view->up == OX_UP_INBOUND ? p->scene.flight->setup.inbound_true_deg : 0.0;
  box world = world_box(p, up_deg);
  double side = fmin(p->map.width, p->map.height);
  double margin = fmin(MARGIN_EM * p->size.label, 0.12 * side);
  double rose_share = p->scene.area ? 0.125 : 0.19; /* the area makes the hold small */
  p->rose_radius = ox_has_layer(p, OX_LAYER_ROSE) ? rose_share * side : 0.0;
  box all = with_aircraft ? fit_round_aircraft(p, &world, margin, &p->home)
                          : fit_round_rose(p, &world, margin, &p->home);
  p->margin = margin;
  p->fit = (ox_fit){p->home.dev_per_nm, all.min, all.max};
  const ox_fit *shared = p->scene.fit;
  if (shared && shared->dev_per_nm > 0.0 && isfinite(shared->dev_per_nm)) {
    p->home.dev_per_nm = shared->dev_per_nm;
    if (!with_aircraft)
      p->home.centre_nm = ox_vec_scale(ox_vec_add(shared->low_nm, shared->high_nm), 0.5);
  }
  ox_vec middle = p->home.centre_nm;
  p->home.dev_per_nm *= view->zoom;
  p->home.up_deg = up_deg;
  p->home.centre_nm = in_world(&all, middle);
  if (view->pan_nm.x != 0.0 || view->pan_nm.y != 0.0) {
    view->pan_nm = pan_within(p, &all, middle, view->pan_nm);
    p->home.centre_nm = ox_vec_add(p->home.centre_nm, view->pan_nm);
  }
  if (p->scene.held) p->home = p->scene.held->world;
}

/* --- at an instant ------------------------------------------------------------------------- */

double ox_instant(const ox_picture *p, double t_s) {
  if (isnan(t_s)) t_s = 0.0;
  if (p->scene.hide_answer) t_s = fmin(t_s, 0.0);
  return fmin(fmax(t_s, ox_flight_begin_s(p->scene.flight)), ox_flight_end_s(p->scene.flight));
}

ox_viewport ox_picture_viewport_at(const ox_picture *p, double t_s) {
  ox_viewport v = p->home;
  if (!p->moves || p->scene.held || p->scene.flight->leg_count == 0) return v;
  t_s = ox_instant(p, t_s);
  if (p->scene.view.up == OX_UP_AIRCRAFT) {
    ox_state s = ox_flight_at(p->scene.flight, t_s);
    v.up_deg = s.heading_true_deg;
    v.centre_nm = ox_vec_add(s.p_nm, p->scene.view.pan_nm);
  } else {
    ox_vec carried = ox_air_camera(p->scene.flight, t_s);
    v.centre_nm = ox_vec_add(v.centre_nm, ox_vec_scale(carried, p->air));
  }
  return v;
}
