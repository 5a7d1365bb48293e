/* Other flights over the one shown: the one it is compared with, and other cases whose aircraft fly
 * in step. */
#include <math.h>

#include "paint_private.h"

static void add(ox_picture *p, const ox_flight *flight, const char *name, ox_other other) {
  if (!flight || p->other_count == OX_OTHERS_MAX) return;
  other.flight = other.flown = flight;
  other.name = name;
  p->others[p->other_count++] = other;
}

void ox_build_others(ox_picture *p) {
  const ox_scene *s = &p->scene;
  static const ox_other looks[OX_OTHERS_MAX] = {
      {.kind = OX_LINE_COMPARE, .hue = OX_HUE_COMPARE, .text_hue = OX_HUE_COMPARE_TEXT},
      {.kind = OX_LINE_OTHER_1, .hue = OX_HUE_COMPARE, .text_hue = OX_HUE_COMPARE_TEXT,
       .in_step = true},
      {.kind = OX_LINE_OTHER_2, .hue = OX_HUE_OTHER, .text_hue = OX_HUE_OTHER, .in_step = true}};
  if (s->hide_answer) return;
  add(p, s->compare, s->compare_name, looks[0]);
  for (size_t i = 0; i < s->other_count && i < OX_SCENE_OTHERS_MAX; i++)
    add(p, s->others[i].flight, s->others[i].name, looks[i + 1]);
}

/* Whether the arrival of another case is not that of the one shown. */
static bool arrives_elsewhere(const ox_picture *p, const ox_other *o) {
  const ox_flight *f = p->scene.flight, *g = o->flight;
  if (!o->in_step || f->leg_count == 0 || g->leg_count == 0) return false;
  double turned_deg = ox_turn_between_deg(f->setup.arrival_track_true_deg,
                                          g->setup.arrival_track_true_deg);
  return fabs(turned_deg) > 1.0;
}

/* Drawn whole, also where both fly the same line: its dashes lie narrower on the solid track, and
 * both are seen. */
static void build(ox_picture *p, ox_other *o) {
  const ox_flight *f = o->flight;
  double within_nm = OX_SAME_LINE * p->size.track / p->view.dev_per_nm;
  bool arrival = arrives_elsewhere(p, o);
  for (size_t i = 0; i < f->leg_count; i++) {
    const ox_leg *leg = &o->flown->legs[i];
    if (leg->part == OX_PART_ARRIVAL && !arrival) continue;
    if (ox_flown_before(f, leg->part, i, within_nm)) continue;
    ox_lines_leg(&o->line, &p->view, p->map, leg);
    bool alone = leg->circuit <= 1 && !ox_flown_at_all(p->scene.flight, &f->legs[i], within_nm);
    if (alone && leg->kind != OX_LEG_REACTION) ox_add_head(p, &o->heads, leg, 0.5);
  }
}

/* In the air view only what each aircraft is flying now. */
static void build_in_air(ox_picture *p, ox_other *o, double t_s) {
  ox_stretch now = ox_air_stretch(o->flight, t_s);
  if (now.circuit < 0) now = ox_air_stretch(o->flight, 0.0);
  for (size_t i = 0; i < o->flight->leg_count; i++) {
    const ox_leg *leg = &o->flown->legs[i];
    if (!ox_stretch_has(&now, leg)) continue;
    ox_lines_leg(&o->line, &p->view, p->map, leg);
    if (leg->kind != OX_LEG_REACTION) ox_add_head(p, &o->heads, leg, 0.5);
  }
}

void ox_build_other_lines(ox_picture *p) {
  if (!ox_has_layer(p, OX_LAYER_TRACK)) return;
  for (size_t i = 0; i < p->other_count; i++) {
    if (p->air >= 0.5)
      build_in_air(p, &p->others[i], p->laid_t_s);
    else
      build(p, &p->others[i]);
  }
}

void ox_layer_others(const ox_picture *p, cairo_t *cr) {
  for (size_t i = 0; i < p->other_count; i++) {
    const ox_other *o = &p->others[i];
    if (o->line.count == 0) continue;
    ox_line_stroke(p, cr, &o->line, o->kind);
    ox_line_style_set(p, cr, o->kind);
    ox_path_add_heads(cr, &o->heads);
    cairo_set_dash(cr, NULL, 0, 0.0);
    cairo_fill(cr);
  }
}
