/* How much of the world is shown: the hold large, the rose whole, the arrival only as far as it
 * helps. */
#include <math.h>

#include "paint_private.h"

/* A flight that drifts away is followed this many lengths of the hold beyond the hold itself. */
static const double FOLLOWED_LENGTHS = 1.6;
/* The protected area is shown as far as this share of the hold's diagonal beyond it. */
static const double AREA_LENGTHS = 0.9;
static const double MARGIN_EM = 2.6; /* room for labels outside the track */
static const double COURSE_FIGURE_EM = 2.2;
static const int LEG_PIECES = 12;

void ox_build_sizes(ox_picture *p) {
  const ox_palette *q = p->palette;
  double side = fmin(p->width, p->height);
  double scale = p->scene.text_scale;
  scale = scale > 0.0 && isfinite(scale) ? fmin(fmax(scale, 0.5), 4.0) : 1.0;
  /* The least size holds down to boards where it would crowd out the picture. */
  double least = fmin(q->least_text, 0.032 * side) / q->small_share;
  double text = fmax(side, least) * scale;
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
}

typedef struct {
  ox_vec min, max;
} box;

static void grow(box *b, ox_vec p) {
  b->min.x = fmin(b->min.x, p.x);
  b->min.y = fmin(b->min.y, p.y);
  b->max.x = fmax(b->max.x, p.x);
  b->max.y = fmax(b->max.y, p.y);
}

static ox_vec within(ox_vec q, const box *limit) {
  return (ox_vec){fmin(fmax(q.x, limit->min.x), limit->max.x),
                  fmin(fmax(q.y, limit->min.y), limit->max.y)};
}

static void grow_by_leg(box *b, const ox_leg *leg, const box *limit) {
  int n = leg->shape == OX_SHAPE_TURN ? LEG_PIECES : 1;
  for (int i = 0; i <= n; i++) {
    ox_vec q = ox_leg_position(leg, leg->t0_s + (leg->t1_s - leg->t0_s) * i / n);
    grow(b, limit ? within(q, limit) : q);
  }
}

static void grow_by_flight(box *b, const ox_flight *f, const box *limit) {
  for (size_t i = 0; i < f->leg_count; i++)
    if (f->legs[i].part != OX_PART_ARRIVAL) grow_by_leg(b, &f->legs[i], limit);
}

static void grow_by_area(box *b, const ox_area *area) {
  double reach = AREA_LENGTHS * ox_vec_length(ox_vec_sub(b->max, b->min));
  box limit = {{b->min.x - reach, b->min.y - reach}, {b->max.x + reach, b->max.y + reach}};
  ox_vec corner[OX_AREA_SIDES];
  ox_area_outline(area, corner);
  for (int i = 0; i < OX_AREA_SIDES; i++)
    if (isfinite(corner[i].x) && isfinite(corner[i].y)) grow(b, within(corner[i], &limit));
}

static box world_box(const ox_picture *p) {
  const ox_flight *f = p->scene.flight;
  box hold = {{0, 0}, {0, 0}};
  ox_leg still[4];
  ox_still_air_shape(&f->setup, still);
  for (int i = 0; i < 4; i++) grow_by_leg(&hold, &still[i], NULL);
  double reach = FOLLOWED_LENGTHS * ox_vec_length(ox_vec_sub(hold.max, hold.min));
  box limit = {{hold.min.x - reach, hold.min.y - reach}, {hold.max.x + reach, hold.max.y + reach}};
  if (ox_has_layer(p, OX_LAYER_TRACK)) {
    grow_by_flight(&hold, f, &limit);
    if (p->scene.compare) grow_by_flight(&hold, p->scene.compare, &limit);
  }
  if (p->scene.area) grow_by_area(&hold, p->scene.area);
  return hold;
}

/* How far the course line runs before it leaves the box on its way upstream (NM). */
static double upstream_of(const box *b, ox_vec up) {
  double x = up.x > 0 ? b->max.x / up.x : up.x < 0 ? b->min.x / up.x : HUGE_VAL;
  double y = up.y > 0 ? b->max.y / up.y : up.y < 0 ? b->min.y / up.y : HUGE_VAL;
  return fmin(x, y);
}

/* The rose and the last of the arrival have a size on the board, not in the world: with each
 * round the scale shrinks a little less, until both fit. */
void ox_build_view(ox_picture *p) {
  const ox_flight *f = p->scene.flight;
  const double em = p->size.label;
  box world = world_box(p);
  double side = fmin(p->map.width, p->map.height);
  double margin = fmin(MARGIN_EM * em, 0.12 * side);
  double rose_share = p->scene.area ? 0.125 : 0.19; /* the area makes the hold small */
  p->rose_radius = ox_has_layer(p, OX_LAYER_ROSE) ? rose_share * side : 0.0;
  double about_fix = p->rose_radius > 0.0 ? p->rose_radius + fmax(0.0, 2.0 * em - margin) : 0.0;
  double arrival = p->rose_radius + 1.5 * em;
  ox_vec up = ox_unit(f->setup.inbound_true_deg + 180.0);
  double upstream_nm = upstream_of(&world, up); /* beyond it stands the course's figure */
  ox_vec origin = {p->map.x, p->map.y}, size = {p->map.width, p->map.height};
  p->view = ox_viewport_fit(world.min, world.max, origin, size, margin, 0.0);
  for (int round = 0; round < 12; round++) {
    double nm = about_fix / p->view.dev_per_nm;
    double arrival_nm = fmin(arrival / p->view.dev_per_nm, p->scene.c->arrival.distance_nm);
    box all = world;
    grow(&all, (ox_vec){-nm, -nm});
    grow(&all, (ox_vec){nm, nm});
    grow(&all, ox_vec_scale(up, upstream_nm + COURSE_FIGURE_EM * em / p->view.dev_per_nm));
    if (ox_has_layer(p, OX_LAYER_TRACK))
      grow(&all, ox_vec_scale(ox_unit(f->setup.arrival_track_true_deg), -arrival_nm));
    p->view = ox_viewport_fit(all.min, all.max, origin, size, margin, 0.0);
  }
}
