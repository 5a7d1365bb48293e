/* Placing labels so that none touches a line, a symbol or another label.
 *
 * Every label offers candidate places, each with a cost; the cheapest free one wins. "Free" is
 * asked thousands of times, so the lines are drawn once into a coarse grid of cells with a
 * summed-area table over it: whether a rectangle is clear is then four look-ups. Leaders and
 * labels already placed are few and asked one by one. */
#include "labels.h"

#include <limits.h>
#include <math.h>
#include <stdlib.h>

#include "oxbow/units.h"

static const double CLEARANCE_EM = 0.30;  /* between ink and any line */
static const double APART_EM = 0.55;      /* between two labels */
static const double LEADER_FROM_EM = 1.5; /* farther from its object, a label gets a leader */
static const double CROWDED_COST_EM = 0.7;
static const double CROSSED_COST_EM = 1.0; /* a cell of the leader on a line */
static const double LEADER_COST_EM = 2.0;
static const int GRID_MOST = 900;
enum { RASTER_MOST = 2000 };

/* --- the grid ------------------------------------------------------------------------------ */

static void mark(ox_placer *p, ox_vec a, ox_vec b) {
  if (!ox_rect_clip(p->bounds, &a, &b)) return;
  ox_vec d = ox_vec_sub(b, a);
  int n = (int)(ox_vec_length(d) / (0.5 * p->cell)) + 2;
  double column = (a.x - p->bounds.x) / p->cell, row = (a.y - p->bounds.y) / p->cell;
  double right = d.x / p->cell / n, down = d.y / p->cell / n;
  for (int i = 0; i <= n; i++) {
    int x = (int)(column + right * i), y = (int)(row + down * i);
    if (x >= 0 && y >= 0 && x < p->columns && y < p->rows)
      p->cells[(size_t)y * (size_t)p->columns + (size_t)x] = 1;
  }
}

static void sum_up(ox_placer *p) {
  size_t stride = (size_t)p->columns + 1;
  for (int row = 0; row < p->rows; row++) {
    const unsigned char *cells = p->cells + (size_t)row * (size_t)p->columns;
    const unsigned *above = p->sum + (size_t)row * stride + 1;
    unsigned *sum = p->sum + (size_t)(row + 1) * stride + 1, in_row = 0;
    for (int column = 0; column < p->columns; column++) {
      in_row += cells[column];
      sum[column] = above[column] + in_row;
    }
  }
}

void ox_placer_begin(ox_placer *p, ox_rect bounds, double em, const ox_segments *obstacles) {
  *p = (ox_placer){.bounds = bounds, .em = em};
  p->cell = fmax(em / 5.0, fmax(bounds.width, bounds.height) / GRID_MOST);
  if (!(p->cell > 0.0)) return;
  p->columns = (int)ceil(bounds.width / p->cell) + 1;
  p->rows = (int)ceil(bounds.height / p->cell) + 1;
  p->cells = calloc((size_t)p->columns * (size_t)p->rows, 1);
  p->sum = calloc(((size_t)p->columns + 1) * ((size_t)p->rows + 1), sizeof *p->sum);
  if (!p->cells || !p->sum) ox_placer_end(p); /* nothing is free then */
  ox_placer_add(p, obstacles, 0);
}

void ox_placer_add(ox_placer *p, const ox_segments *obstacles, size_t from) {
  if (!p->sum) return;
  for (size_t i = from; i < obstacles->count; i++)
    mark(p, obstacles->s[i].a, obstacles->s[i].b);
  sum_up(p);
}

void ox_placer_end(ox_placer *p) {
  free(p->cells);
  free(p->sum);
  p->cells = NULL;
  p->sum = NULL;
  ox_segments_clear(&p->leaders);
}

/* The whole cell that a place lies in, counted from 0; rounded down, for v is cut at 0 first. */
static int clamp(double v, int most) {
  return v <= 0.0 ? 0 : v >= most ? most : (int)v;
}

/* Cells with a line in them that the rectangle touches. */
static unsigned touched(const ox_placer *p, ox_rect r) {
  int x0 = clamp((r.x - p->bounds.x) / p->cell, p->columns);
  int y0 = clamp((r.y - p->bounds.y) / p->cell, p->rows);
  int x1 = clamp((r.x + r.width - p->bounds.x) / p->cell + 1.0, p->columns);
  int y1 = clamp((r.y + r.height - p->bounds.y) / p->cell + 1.0, p->rows);
  size_t stride = (size_t)p->columns + 1;
  const unsigned *top = p->sum + (size_t)y0 * stride, *bottom = p->sum + (size_t)y1 * stride;
  return bottom[x1] - bottom[x0] - top[x1] + top[x0];
}

/* --- is a place free? ---------------------------------------------------------------------- */

/* Asked so often that a call to another file would show. */
static bool overlap(const ox_rect *a, const ox_rect *b) {
  return a->x < b->x + b->width && b->x < a->x + a->width && a->y < b->y + b->height &&
         b->y < a->y + a->height;
}

static ox_rect grown(const ox_rect *r, double by) {
  return (ox_rect){r->x - by, r->y - by, r->width + 2.0 * by, r->height + 2.0 * by};
}

static bool meets(ox_segment s, ox_rect r) {
  if (fmax(s.a.x, s.b.x) < r.x || fmin(s.a.x, s.b.x) > r.x + r.width) return false;
  if (fmax(s.a.y, s.b.y) < r.y || fmin(s.a.y, s.b.y) > r.y + r.height) return false;
  return ox_rect_clip(r, &s.a, &s.b);
}

static bool is_free(const ox_placer *p, ox_rect box) {
  if (!p->sum || !ox_rect_inside(box, p->bounds)) return false;
  ox_rect wide = grown(&box, CLEARANCE_EM * p->em);
  if (touched(p, wide) > 0) return false;
  ox_rect apart = grown(&box, APART_EM * p->em);
  for (size_t i = 0; i < p->taken_count; i++)
    if (overlap(&apart, &p->taken[i])) return false;
  for (size_t i = 0; i < p->leaders.count; i++)
    if (meets(p->leaders.s[i], wide)) return false;
  return true;
}

static bool leader_is_free(const ox_placer *p, ox_vec a, ox_vec b) {
  for (size_t i = 0; i < p->taken_count; i++)
    if (meets((ox_segment){a, b}, grown(&p->taken[i], 0.2 * p->em))) return false;
  return true;
}

/* Stops counting once it is more than `limit`. */
static double leader_cost(const ox_placer *p, ox_vec a, ox_vec b, double limit) {
  ox_vec d = ox_vec_sub(b, a);
  int n = (int)(ox_vec_length(d) / p->cell);
  unsigned crossed = 0, most = UINT_MAX;
  double crossings = (limit / p->em - LEADER_COST_EM) / CROSSED_COST_EM;
  if (crossings < 1e6) most = (unsigned)fmax(crossings, 0.0) + 2;
  for (int i = 1; i < n && crossed <= most; i++)
    crossed += touched(p, (ox_rect){a.x + d.x * i / n, a.y + d.y * i / n, 0.0, 0.0});
  return p->em * (LEADER_COST_EM + CROSSED_COST_EM * crossed);
}

/* --- candidates ---------------------------------------------------------------------------- */

typedef struct {
  const ox_placer *placer;
  ox_label *label;
  double best_cost;
  ox_vec best_at; /* centre */
  bool found;
} search;

/* Of two places that cost the same, the one offered first wins; a raster is not walked in its own
 * order, and there the higher one does, or on one row the one to the left. */
static bool is_beaten(const search *s, double cost, const ox_vec *in_raster) {
  if (!s->found || cost < s->best_cost) return false;
  if (cost > s->best_cost || !in_raster) return true;
  return in_raster->y > s->best_at.y ||
         (in_raster->y == s->best_at.y && in_raster->x >= s->best_at.x);
}

static ox_rect box_about(const ox_label *label, ox_vec centre) {
  ox_rect ink = label->text.ink;
  return (ox_rect){centre.x - ink.width / 2, centre.y - ink.height / 2, ink.width, ink.height};
}

/* The point of the segment a-b nearest to p. */
static ox_vec nearest_on(ox_vec a, ox_vec b, ox_vec p) {
  ox_vec d = {b.x - a.x, b.y - a.y};
  double square = d.x * d.x + d.y * d.y;
  double share = square > 0.0 ? ((p.x - a.x) * d.x + (p.y - a.y) * d.y) / square : 0.0;
  share = fmin(fmax(share, 0.0), 1.0);
  return (ox_vec){a.x + d.x * share, a.y + d.y * share};
}

/* The shortest way from a box to a stretch that it does not meet: from a corner of the box, or
 * to an end of the stretch. */
static void shortest_way(ox_rect box, const ox_segment *to, ox_vec *from, ox_vec *target) {
  ox_vec corner[4] = {{box.x, box.y},
                      {box.x + box.width, box.y},
                      {box.x, box.y + box.height},
                      {box.x + box.width, box.y + box.height}};
  double best = HUGE_VAL;
  for (int i = 0; i < 6; i++) {
    ox_vec q = i < 4 ? nearest_on(to->a, to->b, corner[i]) : i == 4 ? to->a : to->b;
    ox_vec r = i < 4 ? corner[i] : ox_rect_nearest(box, q);
    double square = (q.x - r.x) * (q.x - r.x) + (q.y - r.y) * (q.y - r.y);
    if (square >= best) continue;
    best = square;
    *from = r;
    *target = q;
  }
}

/* Offers a place; `object` is what a leader would run to: a stretch or a point. */
static void offer_one(search *s, ox_vec centre, double cost, const ox_segment *object,
                      bool raster) {
  const ox_placer *p = s->placer;
  const ox_vec *in_raster = raster ? &centre : NULL;
  if (is_beaten(s, cost, in_raster)) return;
  ox_rect box = box_about(s->label, centre);
  if (!is_free(p, box)) return;
  if (touched(p, grown(&box, 0.9 * p->em)) > 0) cost += CROWDED_COST_EM * p->em;
  if (is_beaten(s, cost, in_raster)) return;
  ox_vec from = {0, 0}, to = {0, 0}, target = {0, 0};
  bool leader = false;
  if (object) {
    shortest_way(grown(&box, 0.25 * p->em), object, &from, &target);
    ox_vec d = ox_vec_sub(target, from);
    double length = ox_vec_length(d);
    leader = length > LEADER_FROM_EM * p->em;
    if (leader) {
      if (is_beaten(s, cost + LEADER_COST_EM * p->em, in_raster)) return;
      to = ox_vec_add(from, ox_vec_scale(d, 1.0 - 0.35 * p->em / length));
      cost += leader_cost(p, from, to, s->found ? s->best_cost - cost : HUGE_VAL);
      if (is_beaten(s, cost, in_raster) || !leader_is_free(p, from, to)) return;
    }
  }
  if (is_beaten(s, cost, in_raster)) return;
  s->found = true;
  s->best_cost = cost;
  s->best_at = centre;
  s->label->box = box;
  s->label->has_leader = leader;
  s->label->leader_from = from;
  s->label->leader_to = to;
}

static void offer(search *s, ox_vec centre, double cost, const ox_segment *object) {
  offer_one(s, centre, cost, object, false);
}

/* Half the extent of the label's box in a direction. */
static double reach(const ox_label *label, ox_vec u) {
  return fabs(u.x) * label->text.ink.width / 2 + fabs(u.y) * label->text.ink.height / 2;
}

static void offer_point(search *s, const ox_anchor *a) {
  const double em = s->placer->em;
  const ox_segment point = {a->a, a->a};
  for (int ring = 0; ring < 16; ring++)
    for (int i = 0; i < 24; i++) {
      ox_vec u = ox_dev_unit(i * 15.0);
      double gap = a->radius + em * (0.45 + 0.55 * ring);
      ox_vec at = ox_vec_add(a->a, ox_vec_scale(u, gap + reach(s->label, u)));
      /* Level with the point or above it reads best. */
      double cost = em * (0.55 * ring + 0.25 * (u.y > 0.3 ? 1.0 : 0.0) + 0.1 * fabs(u.y));
      offer(s, at, cost, &point);
    }
}

static void offer_beside(search *s, const ox_anchor *a) {
  static const double shares[] = {0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1, 0.9};
  const double em = s->placer->em;
  const ox_segment stretch = {a->a, a->b};
  for (int away = 0; away < 9; away++)
    for (int other = 0; other < 2; other++)
      for (size_t i = 0; i < sizeof shares / sizeof *shares; i++) {
        ox_vec u = ox_vec_scale(a->side, other ? -1.0 : 1.0);
        ox_vec on = ox_vec_add(a->a, ox_vec_scale(ox_vec_sub(a->b, a->a), shares[i]));
        double gap = em * (0.55 + 0.45 * away);
        ox_vec at = ox_vec_add(on, ox_vec_scale(u, gap + reach(s->label, u)));
        double cost = em * (0.5 * away + 0.6 * other + 1.6 * fabs(shares[i] - 0.5));
        offer(s, at, cost, &stretch);
      }
}

static void offer_on_line(search *s, const ox_anchor *a) {
  ox_vec d = ox_vec_sub(a->b, a->a);
  double length = ox_vec_length(d);
  if (!(length > 0.0)) return;
  double step = 0.4 * s->placer->em;
  if (!(step > 0.0)) return;
  for (double at = a->radius; at <= length; at += step) {
    ox_vec before = ox_vec_add(a->a, ox_vec_scale(d, (at - a->radius) / length));
    if (a->radius > 0.0 && !is_free(s->placer, box_about(s->label, before))) continue;
    offer(s, ox_vec_add(a->a, ox_vec_scale(d, at / length)), at, NULL);
  }
}

/* One figure at its own bearing: outside the circle, or else inside. */
static void offer_figure(search *s, const ox_anchor *a) {
  const double em = s->placer->em;
  ox_vec u = ox_dev_unit(a->from_deg);
  double half = reach(s->label, u);
  int most = s->label->priority <= 3 ? 6 : 3;
  for (int out = 0; out < most; out++) {
    double gap = em * (0.4 + 0.25 * out);
    if (out < 3) offer(s, ox_vec_add(a->a, ox_vec_scale(u, a->radius + gap + half)), gap, NULL);
    offer(s, ox_vec_add(a->a, ox_vec_scale(u, a->inner - gap - half)), gap + 0.5 * em, NULL);
  }
}

static void offer_arc(search *s, const ox_anchor *a) {
  const double em = s->placer->em;
  if (a->from_deg == a->to_deg) {
    offer_figure(s, a);
    return;
  }
  double middle = (a->from_deg + a->to_deg) / 2, half = (a->to_deg - a->from_deg) / 2;
  const int steps = 16;
  for (int out = 0; out < 5; out++)
    for (int i = -steps; i <= steps; i++) {
      double share = (double)i / steps;
      ox_vec u = ox_dev_unit(middle + half * share);
      double gap = a->radius + em * (0.4 + 0.45 * out);
      ox_vec at = ox_vec_add(a->a, ox_vec_scale(u, gap + reach(s->label, u)));
      offer(s, at, em * (0.8 * out + 1.5 * fabs(share)), NULL);
    }
}

/* Whether the whole box lies on the required side of the line through a. */
static bool on_side(const ox_label *label, ox_vec centre, double gap) {
  const ox_anchor *a = &label->anchor;
  return ox_vec_dot(ox_vec_sub(centre, a->a), a->side) > reach(label, a->side) + gap;
}

/* The places of one row of a raster that may still be better than the best. */
static void offer_row(search *s, ox_vec wish, double y, double step, bool sided,
                      const ox_segment *object) {
  const ox_placer *p = s->placer;
  double reach = s->found ? s->best_cost : HUGE_VAL, from = p->bounds.x;
  int first = 0;
  if (wish.x - reach > from) first = (int)floor((wish.x - reach - from) / step);
  double x = from; /* added up as if from the first on, so that places do not depend on `reach` */
  for (int i = 0; i < first; i++) x += step;
  for (; x <= from + p->bounds.width && x <= wish.x + reach; x += step) {
    ox_vec at = {x, y};
    double dx = x - wish.x, dy = y - wish.y;
    if (s->found && dx * dx + dy * dy > s->best_cost * s->best_cost * (1.0 + 1e-12)) continue;
    if (sided && !on_side(s->label, at, 0.4 * p->em)) continue;
    offer_one(s, at, ox_vec_length(ox_vec_sub(at, wish)), object, true);
  }
}

/* Every place in the map, on a raster. The cost is at least the distance from `wish`, so rows are
 * walked from there outwards, until none can be better. */
static void offer_everywhere(search *s, ox_vec wish, double step_em, bool sided,
                             const ox_segment *object) {
  const ox_placer *p = s->placer;
  double step = fmax(step_em * p->em, p->cell), end = p->bounds.y + p->bounds.height;
  if (!(step > 0.0) || !isfinite(wish.x) || !isfinite(wish.y)) return;
  double rows[RASTER_MOST];
  int count = 0, up, down;
  for (double y = p->bounds.y; y <= end && count < RASTER_MOST; y += step) rows[count++] = y;
  for (down = 0; down < count && rows[down] < wish.y;) down++;
  up = down - 1;
  while (up >= 0 || down < count) {
    bool upwards = down >= count || (up >= 0 && wish.y - rows[up] <= rows[down] - wish.y);
    double y = upwards ? rows[up--] : rows[down++];
    if (s->found && fabs(y - wish.y) > s->best_cost) break;
    offer_row(s, wish, y, step, sided, object);
  }
}

static void search_near(search *s) {
  const ox_anchor *a = &s->label->anchor;
  switch (a->kind) {
  case OX_ANCHOR_POINT: offer_point(s, a); break;
  case OX_ANCHOR_BESIDE: offer_beside(s, a); break;
  case OX_ANCHOR_ON_LINE: offer_on_line(s, a); break;
  case OX_ANCHOR_ARC: offer_arc(s, a); break;
  case OX_ANCHOR_REGION:
    offer_everywhere(s, a->wish, 0.6, a->side.x != 0.0 || a->side.y != 0.0, NULL);
    break;
  }
}

/* What a leader would run to, where one is wanted. */
static const ox_segment *object_of(const ox_anchor *a, ox_segment *room) {
  if (a->kind != OX_ANCHOR_POINT && a->kind != OX_ANCHOR_BESIDE) return NULL;
  *room = (ox_segment){a->a, a->kind == OX_ANCHOR_POINT ? a->a : a->b};
  return room;
}

/* With a leader, wherever there is room. */
static void search_far(search *s) {
  ox_segment object;
  if (s->label->priority > 2 || !object_of(&s->label->anchor, &object)) return;
  ox_vec middle = ox_vec_scale(ox_vec_add(object.a, object.b), 0.5);
  offer_everywhere(s, middle, 0.5, false, &object);
}

static void swap_texts(ox_label *label) {
  label->is_narrow = !label->is_narrow;
  ox_lettering wide = label->text;
  label->text = label->narrow;
  label->narrow = wide;
}

/* The place of a moment ago, while it is free: a label that has moved along with what it names is
 * easier to read than one in the best of places. */
static void stay(search *s) {
  ox_segment room;
  ox_label *label = s->label;
  const ox_anchor *a = &label->anchor;
  bool swap = label->stay_narrow && label->narrow.layout;
  if (swap) swap_texts(label);
  bool sided = a->kind == OX_ANCHOR_REGION && (a->side.x != 0.0 || a->side.y != 0.0);
  if (!sided || on_side(label, label->stay, 0.4 * s->placer->em))
    offer(s, label->stay, 0.0, object_of(a, &room));
  if (swap && !s->found) swap_texts(label);
}

static void search_all(search *s) {
  bool narrow = s->label->narrow.layout != NULL;
  search_near(s);
  for (int far = 0; far < 2; far++) {
    if (far && !s->found) search_far(s);
    if (s->found || !narrow) continue;
    swap_texts(s->label);
    if (far)
      search_far(s);
    else
      search_near(s);
    if (!s->found) swap_texts(s->label);
  }
}

void ox_placer_put(ox_placer *p, ox_label *label) {
  search s = {.placer = p, .label = label};
  bool room = p->taken_count < OX_LABELS_MAX && label->text.ink.width > 0.0;
  if (room && label->has_stay) stay(&s);
  if (room && !s.found) search_all(&s);
  label->dropped = !s.found;
  if (!s.found) {
    label->has_leader = false;
    return;
  }
  p->taken[p->taken_count++] = label->box;
  if (label->has_leader) ox_segments_add(&p->leaders, label->leader_from, label->leader_to);
}
