/* Names of the overlays: on another flight's line where it goes its own way, and on the edge of
 * the protected area. */
#include <math.h>

#include "oxbow/text.h"
#include "paint_private.h"

static const int LEGS_LOOKED_AT = 60;
static const double STRAIGHT_BONUS = 1.5; /* words stand better beside a straight line */

/* --- other flights ------------------------------------------------------------------------- */

static ox_vec nearest_of(ox_vec a, ox_vec b, ox_vec p) {
  ox_vec d = {b.x - a.x, b.y - a.y};
  double square = d.x * d.x + d.y * d.y;
  double share = square > 0.0 ? ((p.x - a.x) * d.x + (p.y - a.y) * d.y) / square : 0.0;
  share = fmin(fmax(share, 0.0), 1.0);
  return (ox_vec){a.x + d.x * share, a.y + d.y * share};
}

/* Moves *best to the point of the polylines that is nearest to p, where it is nearer; gives up once
 * it is no farther than `enough`. */
static void nearer(const ox_lines *lines, ox_vec p, double enough, double *distance,
                   ox_vec *best) {
  for (size_t i = 1; i < lines->count && *distance > enough; i++) {
    const ox_line_point *a = &lines->p[i - 1], *b = &lines->p[i];
    if (b->move) continue;
    /* What lies farther off in one direction alone needs no exact look. */
    if (fmin(fabs(a->x - p.x), fabs(b->x - p.x)) - fabs(b->x - a->x) >= *distance ||
        fmin(fabs(a->y - p.y), fabs(b->y - p.y)) - fabs(b->y - a->y) >= *distance)
      continue;
    ox_vec q = nearest_of((ox_vec){a->x, a->y}, (ox_vec){b->x, b->y}, p);
    double d = ox_vec_length(ox_vec_sub(q, p));
    if (d >= *distance) continue;
    *distance = d;
    *best = q;
  }
}

typedef struct {
  const ox_leg *leg;
  ox_vec at, away; /* device; unit, from the flown track to it */
  double score;
} spot;

static void look_at(const ox_picture *p, const ox_leg *leg, double share, spot *best) {
  double t_s = leg->t0_s + share * (leg->t1_s - leg->t0_s);
  ox_vec at = ox_to_dev(p, ox_leg_position(leg, t_s)), from = at;
  if (!ox_rect_has(ox_rect_inset(p->map, 0.5 * p->size.label), at)) return;
  const ox_lines *flown[] = {&p->lines.track, &p->lines.later, &p->lines.entry,
                             &p->air_lines.circuit, &p->air_lines.entry};
  int from_air = p->air >= 0.5 ? 3 : 0, to = p->air >= 0.5 ? 5 : 3;
  double long_em = ox_vec_length(ox_vec_sub(leg->p1_nm, leg->p0_nm)) * p->view.dev_per_nm /
                   p->size.label;
  bool straight = leg->shape == OX_SHAPE_STRAIGHT && long_em > 4.0;
  double bonus = straight ? STRAIGHT_BONUS : 1.0, distance = HUGE_VAL;
  double enough = best->score / bonus - 0.1 * p->size.track; /* to be no better than the best */
  if (enough >= 6.0 * p->size.label) return;
  for (int i = from_air; i < to; i++) nearer(flown[i], at, enough, &distance, &from);
  distance = fmin(distance, 6.0 * p->size.label); /* farther apart is no plainer */
  double score = (distance + 0.1 * p->size.track) * bonus;
  if (score <= best->score) return;
  ox_vec d = ox_vec_sub(at, from);
  double length = ox_vec_length(d);
  *best = (spot){leg, at, {1, 0}, score};
  if (length > 0.0) best->away = ox_vec_scale(d, 1.0 / length);
}

static spot where_it_is_apart(const ox_picture *p, const ox_other *o) {
  const ox_flight *f = o->flown;
  ox_stretch now = ox_air_stretch(o->flight, p->laid_t_s);
  spot best = {.leg = NULL, .score = 0.0};
  int looked = 0;
  for (size_t i = 0; i < f->leg_count && looked < LEGS_LOOKED_AT; i++) {
    if (f->legs[i].part == OX_PART_ARRIVAL) continue;
    if (p->air >= 0.5 && !ox_stretch_has(&now, &f->legs[i])) continue;
    looked++;
    for (int k = 1; k <= 3; k++) look_at(p, &f->legs[i], 0.25 * k, &best);
  }
  return best;
}

static void label_other(ox_picture *p, const ox_other *o) {
  if (o->line.count == 0 || !o->name || !*o->name) return;
  spot s = where_it_is_apart(p, o);
  if (!s.leg) return;
  ox_label *label;
  if (s.leg->shape == OX_SHAPE_STRAIGHT) {
    label = ox_label_beside(p, s.leg, s.away, "", p->size.label, OX_TEXT_PLAIN, o->text_hue, 1);
  } else {
    ox_anchor a = {.kind = OX_ANCHOR_POINT, .a = s.at, .radius = 1.5 * p->size.compare};
    label = ox_label_add(p, "", p->size.label, OX_TEXT_PLAIN, o->text_hue, 1, a);
  }
  if (!label) return;
  double wide = fmin(16.0 * p->size.label, 0.45 * p->map.width);
  unsigned style = OX_TEXT_BOLD | OX_TEXT_CENTRED | OX_TEXT_TWO_LINES;
  ox_lettering_make(&label->text, p->typesetter, o->name, p->size.label, style, wide);
  ox_lettering_make(&label->narrow, p->typesetter, o->name, p->size.label, style, 0.6 * wide);
}

void ox_label_others(ox_picture *p) {
  for (size_t i = 0; i < p->other_count; i++) label_other(p, &p->others[i]);
}

/* --- the protected area -------------------------------------------------------------------- */

/* Beside the longest stretch of the edge that is in the map; where none of it is, the map lies
 * within the area, and the words stand anywhere. */
void ox_label_area(ox_picture *p) {
  const ox_lines *edge = &p->area.edge;
  if (p->area.corner_count < 3) return;
  ox_vec middle = ox_rect_centre(p->map);
  ox_anchor a = {.kind = OX_ANCHOR_REGION, .a = middle, .wish = middle};
  double longest = 0.0;
  for (size_t i = 1; i < edge->count; i++) {
    if (edge->p[i].move) continue;
    ox_vec from = {edge->p[i - 1].x, edge->p[i - 1].y}, to = {edge->p[i].x, edge->p[i].y};
    ox_vec d = ox_vec_sub(to, from);
    double length = ox_vec_length(d);
    if (!(length > longest)) continue;
    longest = length;
    ox_vec out = {d.y / length, -d.x / length}; /* the corners run clockwise */
    a = (ox_anchor){.kind = OX_ANCHOR_BESIDE, .a = from, .b = to, .side = out};
  }
  const char *words = _("protected area, illustrative only:\nnot to scale for any chart");
  const char *narrow = _("protected area,\nillustrative only:\nnot to scale\nfor any chart");
  ox_label *label = ox_label_add(p, words, p->size.small, OX_TEXT_CENTRED, OX_HUE_AREA, 2, a);
  ox_label_narrow(p, label, narrow, p->size.small, OX_TEXT_PLAIN);
}
