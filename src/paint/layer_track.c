/* The flown track, the entry, the arrival and the still-air shape.
 *
 * Circuits that fly the same line are drawn once: forty strokes on top of each other would only
 * thicken it. The first circuit is bold, what later ones do differently is thin. */
#include <math.h>

#include "air.h"
#include "paint_private.h"

static const double LEAST_APART_NM = 0.001; /* nearer than any picture can tell two lines */

static bool near(ox_vec a, ox_vec b, double within) {
  return fabs(a.x - b.x) <= within && fabs(a.y - b.y) <= within;
}

static ox_vec middle(const ox_leg *leg) {
  return ox_leg_position(leg, 0.5 * (leg->t0_s + leg->t1_s));
}

static bool same_line(const ox_leg *a, const ox_leg *b, double within_nm) {
  return a->shape == b->shape && near(a->p0_nm, b->p0_nm, within_nm) &&
         near(a->p1_nm, b->p1_nm, within_nm) && near(middle(a), middle(b), within_nm);
}

bool ox_flown_before(const ox_flight *f, ox_part part, size_t index, double within_nm) {
  for (size_t i = 0; i < index; i++)
    if (f->legs[i].part == part && same_line(&f->legs[i], &f->legs[index], within_nm))
      return true;
  return false;
}

bool ox_flown_at_all(const ox_flight *f, const ox_leg *leg, double within_nm) {
  for (size_t i = 0; i < f->leg_count; i++)
    if (f->legs[i].part != OX_PART_ARRIVAL && same_line(&f->legs[i], leg, within_nm)) return true;
  return false;
}

bool ox_later_differs(const ox_flight *f) {
  for (size_t i = 0; i < f->leg_count; i++)
    if (f->legs[i].part == OX_PART_CIRCUIT && f->legs[i].circuit > 1 &&
        !ox_flown_before(f, OX_PART_CIRCUIT, i, LEAST_APART_NM) &&
        !ox_flown_before(f, OX_PART_ENTRY, i, LEAST_APART_NM))
      return true;
  return false;
}

static bool flown_later(const ox_flight *f, size_t index, double within_nm) {
  for (size_t i = index + 1; i < f->leg_count; i++)
    if (f->legs[i].part == OX_PART_CIRCUIT && same_line(&f->legs[i], &f->legs[index], within_nm))
      return true;
  return false;
}

void ox_add_head(ox_picture *p, ox_lines *heads, const ox_leg *leg, double share) {
  double length = 4.2 * p->size.track + 0.12 * p->size.label;
  ox_state s = ox_leg_at(leg, leg->t0_s + share * (leg->t1_s - leg->t0_s));
  double way = s.gs_kt / 3600.0 * (leg->t1_s - leg->t0_s) * p->view.dev_per_nm;
  ox_vec at = ox_to_dev(p, s.p_nm);
  if (way < 4.0 * length || !ox_rect_has(ox_rect_inset(p->map, length), at)) return;
  ox_vec u = ox_dev_unit(ox_dev_bearing(p, s.track_true_deg));
  ox_lines_head(heads, ox_vec_add(at, ox_vec_scale(u, 0.5 * length)), u, length);
}

static void add_circuit_leg(ox_picture *p, size_t index, double within_nm) {
  const ox_leg *leg = &p->flown->legs[index];
  if (ox_flown_before(p->scene.flight, OX_PART_CIRCUIT, index, within_nm)) return;
  /* A turn that a direct entry flew the same belongs to the first circuit's shape. */
  bool first = leg->circuit <= 1 ||
               ox_flown_before(p->scene.flight, OX_PART_ENTRY, index, within_nm);
  ox_lines_leg(first ? &p->lines.track : &p->lines.later, &p->view, p->map, leg);
  if (first && leg->kind != OX_LEG_REACTION) ox_add_head(p, &p->lines.heads_track, leg, 0.5);
}

/* A direct entry may fly the circuit's own turn: the entry is then drawn just outside it, so that
 * both are seen. */
static void add_entry_leg(ox_picture *p, size_t index, double within_nm) {
  const ox_leg *leg = &p->flown->legs[index];
  if (flown_later(p->scene.flight, index, within_nm)) {
    ox_lines same = {0};
    ox_rect inner = ox_rect_inset(p->map, 2.0 * p->size.track);
    ox_lines_leg(&same, &p->view, inner, leg);
    double gap = 0.75 * (p->size.track + p->size.entry);
    ox_lines_beside(&p->lines.entry, &same, leg->rate_deg_s > 0.0 ? -gap : gap);
    ox_lines_clear(&same);
    return;
  }
  ox_lines_leg(&p->lines.entry, &p->view, p->map, leg);
  if (leg->kind != OX_LEG_INBOUND) ox_add_head(p, &p->lines.heads_entry, leg, 0.5);
}

/* The arrival's arrow stands where the line is seen: between the rose and the map's edge. */
static void add_arrival(ox_picture *p, const ox_leg *leg) {
  ox_lines_leg(&p->lines.arrival, &p->view, p->map, leg);
  double length_dev = ox_vec_length(ox_vec_sub(leg->p1_nm, leg->p0_nm)) * p->view.dev_per_nm;
  double back_dev = p->rose_radius * 0.55;
  double share = length_dev > 0.0 ? fmax(0.0, 1.0 - back_dev / length_dev) : 0.0;
  ox_add_head(p, &p->lines.heads_entry, leg, share);
}

/* A short line across the track at an event. */
static void add_tick(ox_picture *p, const ox_event *event) {
  if (!event) return;
  ox_state s = ox_flight_at(p->flown, event->t_s);
  ox_vec at = ox_to_dev(p, s.p_nm);
  ox_vec u = ox_dev_unit(ox_dev_bearing(p, s.track_true_deg + 90.0));
  ox_vec half = ox_vec_scale(u, 2.4 * p->size.track + 0.1 * p->size.label);
  ox_lines_clipped(&p->lines.ticks, p->map, ox_vec_sub(at, half), ox_vec_add(at, half));
}

static void add_still_air(ox_picture *p) {
  ox_leg still[4];
  ox_still_air_shape(&p->flown->setup, still);
  for (int i = 0; i < 4; i++) ox_lines_leg(&p->lines.still_air, &p->view, p->map, &still[i]);
}

void ox_build_track(ox_picture *p) {
  const ox_flight *f = p->flown;
  bool hide = p->scene.hide_answer;
  double within_nm = OX_SAME_LINE * p->size.track / p->view.dev_per_nm;
  if (ox_has_layer(p, OX_LAYER_STILL_AIR) && !hide) add_still_air(p);
  if (!ox_has_layer(p, OX_LAYER_TRACK)) return;
  for (size_t i = 0; i < f->leg_count; i++) switch (f->legs[i].part) {
    case OX_PART_ARRIVAL: add_arrival(p, &f->legs[i]); break;
    case OX_PART_ENTRY:
      if (!hide) add_entry_leg(p, i, within_nm);
      break;
    case OX_PART_CIRCUIT:
      if (!hide) add_circuit_leg(p, i, within_nm);
      break;
    case OX_PART_ROUTE: break; /* a path of its own */
    }
  if (p->named.circuit > 0 && !hide)
    add_tick(p, ox_find_event(f, OX_EVENT_CLOCK_START, p->named.circuit));
}

/* What the air view shows at an instant: the stretch being flown, the one before it thinly; on
 * the arrival what comes next as well. */
void ox_build_air_track(ox_picture *p, double t_s) {
  if (!(p->air > 0.0) || !ox_has_layer(p, OX_LAYER_TRACK)) return;
  const ox_flight *f = p->flown;
  ox_air_lines *l = &p->air_lines;
  ox_stretch now = ox_air_stretch(p->scene.flight, t_s), before = now, next = now;
  if (now.circuit >= 0) before = ox_air_stretch(p->scene.flight, now.from_s - 0.001);
  if (now.circuit < 0) next = ox_air_stretch(p->scene.flight, 0.0);
  for (size_t i = 0; i < f->leg_count; i++) {
    const ox_leg *leg = &f->legs[i];
    bool turning_in = leg->kind != OX_LEG_REACTION;
    bool shown = ox_stretch_has(&now, leg) || ox_stretch_has(&next, leg);
    if (shown && leg->part == OX_PART_ARRIVAL) {
      ox_lines_leg(&l->arrival, &p->view, p->map, leg);
    } else if (shown && leg->part == OX_PART_ENTRY) {
      ox_lines_leg(&l->entry, &p->view, p->map, leg);
      if (turning_in) ox_add_head(p, &l->heads_entry, leg, 0.5);
    } else if (shown) {
      ox_lines_leg(&l->circuit, &p->view, p->map, leg);
      if (turning_in) ox_add_head(p, &l->heads_circuit, leg, 0.5);
    } else if (ox_stretch_has(&before, leg)) {
      ox_lines_leg(leg->part == OX_PART_ARRIVAL ? &l->arrival : &l->before, &p->view, p->map, leg);
    }
  }
}

void ox_layer_still_air(const ox_picture *p, cairo_t *cr) {
  ox_line_stroke(p, cr, &p->lines.still_air, OX_LINE_STILL_AIR);
}

static void fill_heads(const ox_picture *p, cairo_t *cr, const ox_lines *heads, ox_hue ink) {
  if (heads->count == 0) return;
  ox_path_add_heads(cr, heads);
  ox_hue_set(p, cr, ink);
  cairo_fill(cr);
}

static void ground_lines(const ox_picture *p, cairo_t *cr) {
  const ox_track_lines *l = &p->lines;
  ox_line_stroke(p, cr, &l->arrival, OX_LINE_ARRIVAL);
  ox_line_stroke(p, cr, &l->entry, OX_LINE_ENTRY);
  fill_heads(p, cr, &l->heads_entry, OX_HUE_ENTRY);
  ox_line_stroke(p, cr, &l->later, OX_LINE_LATER);
  ox_line_stroke(p, cr, &l->track, OX_LINE_TRACK);
  fill_heads(p, cr, &l->heads_track, OX_HUE_TRACK);
}

static void air_lines(const ox_picture *p, cairo_t *cr) {
  const ox_air_lines *l = &p->air_lines;
  ox_line_stroke(p, cr, &l->before, OX_LINE_LATER);
  ox_line_stroke(p, cr, &l->arrival, OX_LINE_ARRIVAL);
  ox_line_stroke(p, cr, &l->entry, OX_LINE_ENTRY);
  fill_heads(p, cr, &l->heads_entry, OX_HUE_ENTRY);
  ox_line_stroke(p, cr, &l->circuit, OX_LINE_TRACK);
  fill_heads(p, cr, &l->heads_circuit, OX_HUE_TRACK);
}

/* On the passage to the air view the one set of lines fades into the other, both where they are
 * seen at that moment. */
void ox_layer_track(const ox_picture *p, cairo_t *cr) {
  if (p->air < 1.0) {
    if (p->air > 0.0) cairo_push_group(cr);
    ground_lines(p, cr);
    if (p->air > 0.0) {
      cairo_pop_group_to_source(cr);
      cairo_paint_with_alpha(cr, 1.0 - p->air);
    }
  }
  if (p->air > 0.0) {
    if (p->air < 1.0) cairo_push_group(cr);
    air_lines(p, cr);
    if (p->air < 1.0) {
      cairo_pop_group_to_source(cr);
      cairo_paint_with_alpha(cr, p->air);
    }
  }
  if (p->lines.ticks.count > 0) {
    ox_path_add(cr, &p->lines.ticks);
    ox_hue_set(p, cr, OX_HUE_TRACK);
    cairo_set_line_width(cr, 0.6 * p->size.track + 0.4 * p->size.course);
    cairo_set_dash(cr, NULL, 0, 0.0);
    cairo_stroke(cr);
  }
}
