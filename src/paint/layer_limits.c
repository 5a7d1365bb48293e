/* What a DME station sets: the limiting radial from it, and an arc where the outbound leg ends at a
 * reading. Both are given, so they are shown also where the answer is hidden. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "oxbow/steady.h"
#include "oxbow/units.h"
#include "oxbow/text.h"
#include "paint_private.h"

static const double ARC_RADII = 2.4; /* of the turn, each way along the arc */
static const double ARC_WIDEST_DEG = 70.0;
static const double ARC_LEAST_EM = 2.0;
static const int ARC_PIECES = 48;

bool ox_has_limits(const ox_picture *p) {
  return ox_has_layer(p, OX_LAYER_COURSE) && p->scene.flight->setup.goal == OX_GOAL_OUTBOUND_DME;
}

bool ox_has_limiting_radial(const ox_picture *p) {
  return ox_has_limits(p) && p->scene.flight->setup.dme.limited;
}

bool ox_has_limiting_distance(const ox_picture *p) {
  return ox_has_limits(p) && p->scene.flight->setup.dme.end_ground_nm > 0.0;
}

/* --- lines --------------------------------------------------------------------------------- */

/* True bearing from the station to where a leg midway between course and outbound track meets the
 * arc; where it never does, to the fix. */
static double arc_middle_deg(const ox_setup *s) {
  ox_vec out = ox_unit(s->inbound_true_deg + 180.0);
  ox_vec from = ox_vec_scale(ox_unit(s->inbound_true_deg + 90.0 * s->sense), s->radius_nm);
  double nm = ox_dme_reached_s(&s->dme, from, out); /* at one NM a second */
  ox_vec there = nm >= 0.0 ? ox_vec_add(from, ox_vec_scale(out, nm)) : (ox_vec){0, 0};
  return ox_bearing_deg(ox_vec_sub(there, s->dme.at_nm));
}

static ox_vec on_arc(const ox_dme *dme, double bearing_deg) {
  return ox_vec_add(dme->at_nm, ox_vec_scale(ox_unit(bearing_deg), dme->end_ground_nm));
}

static void build_distance(ox_picture *p) {
  const ox_setup *s = &p->scene.flight->setup;
  double half_nm = fmax(ARC_RADII * s->radius_nm, ARC_LEAST_EM * p->size.label /
                                                      p->view.dev_per_nm);
  double half_deg = fmin(half_nm / s->dme.end_ground_nm / OX_RAD_PER_DEG, ARC_WIDEST_DEG);
  double from_deg = arc_middle_deg(s) - half_deg;
  ox_vec a = ox_to_dev(p, on_arc(&s->dme, from_deg));
  for (int i = 1; i <= ARC_PIECES; i++) {
    ox_vec b = ox_to_dev(p, on_arc(&s->dme, from_deg + 2.0 * half_deg * i / ARC_PIECES));
    ox_lines_clipped(&p->limits.distance, p->map, a, b);
    a = b;
  }
}

static void build_radial(ox_picture *p) {
  const ox_dme *dme = &p->scene.flight->setup.dme;
  ox_vec from = ox_to_dev(p, dme->at_nm);
  ox_vec along = ox_vec_sub(ox_to_dev(p, ox_vec_add(dme->at_nm, dme->limit)), from);
  double length = ox_vec_length(along);
  if (!(length > 0.0)) return;
  double far = ox_vec_length(ox_vec_sub(from, ox_rect_centre(p->map))) + p->map.width +
               p->map.height;
  ox_lines_clipped(&p->limits.radial, p->map, from,
                   ox_vec_add(from, ox_vec_scale(along, far / length)));
}

/* Where the station is in the map and nothing else marks it. */
static void find_station(ox_picture *p) {
  static const double SAME_NM = 0.1;
  const ox_dme *dme = &p->scene.flight->setup.dme;
  p->limits.station = ox_to_dev(p, dme->at_nm);
  p->limits.shows_station = ox_rect_has(p->map, p->limits.station) &&
                            ox_vec_length(dme->at_nm) > SAME_NM;
  for (size_t i = 0; i < p->scene.mark_count; i++)
    if (p->scene.marks[i].kind == OX_MARK_STATION &&
        ox_vec_length(ox_vec_sub(p->scene.marks[i].at_nm, dme->at_nm)) < SAME_NM)
      p->limits.shows_station = false;
}

void ox_build_limits(ox_picture *p) {
  p->limits.shows_station = false;
  if (!ox_has_limits(p)) return;
  if (ox_has_limiting_distance(p)) build_distance(p);
  if (ox_has_limiting_radial(p)) build_radial(p);
  find_station(p);
}

/* --- words --------------------------------------------------------------------------------- */

void ox_limit_nm_text(char *buf, size_t bytes, double nm) {
  double tenths = round(nm * 10.0);
  ox_number_text(buf, bytes, nm, fmod(tenths, 10.0) == 0.0 ? 0 : 1);
}

/* Along the longest piece of a line, on the side away from a place. */
static void label_line(ox_picture *p, const ox_lines *line, ox_vec away_from, const char *words,
                       const char *narrow) {
  ox_anchor anchor = {.kind = OX_ANCHOR_BESIDE};
  if (line->count < 2) return;
  anchor.a = (ox_vec){line->p[0].x, line->p[0].y};
  anchor.b = (ox_vec){line->p[line->count - 1].x, line->p[line->count - 1].y};
  ox_vec d = ox_vec_sub(anchor.b, anchor.a);
  double length = ox_vec_length(d);
  if (!(length > 0.0)) return;
  anchor.side = (ox_vec){-d.y / length, d.x / length};
  if (ox_vec_dot(anchor.side, ox_vec_sub(away_from, anchor.a)) > 0.0)
    anchor.side = ox_vec_scale(anchor.side, -1.0);
  ox_label *label = ox_label_add(p, words, p->size.label, OX_TEXT_CENTRED, OX_HUE_COURSE, 2,
                                 anchor);
  ox_label_narrow(p, label, narrow, p->size.label, OX_TEXT_CENTRED);
}

void ox_label_limits(ox_picture *p) {
  const ox_setup *s = &p->scene.flight->setup;
  char figure[24], words[64], narrow[64];
  ox_vec fix = ox_to_dev(p, (ox_vec){0, 0});
  if (p->limits.radial.count > 0) {
    ox_direction_text(p, figure, sizeof figure, ox_bearing_deg(s->dme.limit));
    snprintf(words, sizeof words, _("limiting radial %s"), figure);
    snprintf(narrow, sizeof narrow, _("limiting\nradial %s"), figure);
    label_line(p, &p->limits.radial, ox_to_dev(p, s->dme.inside_nm), words, narrow);
  }
  if (p->limits.distance.count > 0) {
    ox_limit_nm_text(figure, sizeof figure, s->goal_value);
    snprintf(words, sizeof words, _("limiting %s DME"), figure);
    snprintf(narrow, sizeof narrow, _("limiting\n%s DME"), figure);
    label_line(p, &p->limits.distance, fix, words, narrow);
  }
  if (!p->limits.shows_station) return;
  ox_anchor at = {.kind = OX_ANCHOR_POINT, .a = p->limits.station,
                  .radius = 0.9 * ox_symbol_radius(p)};
  ox_label_add(p, _("DME station"), p->size.label, OX_TEXT_PLAIN, OX_HUE_TEXT, 3, at);
}

void ox_limits_obstacles(ox_picture *p) {
  ox_segments_add_lines(&p->obstacles, &p->limits.radial);
  ox_segments_add_lines(&p->obstacles, &p->limits.distance);
  if (!p->limits.shows_station) return;
  double r = 1.2 * ox_symbol_radius(p);
  ox_vec at = p->limits.station;
  ox_segments_add_rect(&p->obstacles, (ox_rect){at.x - r, at.y - r, 2.0 * r, 2.0 * r});
}

/* --- drawing ------------------------------------------------------------------------------- */

void ox_layer_limits(const ox_picture *p, cairo_t *cr) {
  ox_path_add(cr, &p->limits.radial);
  ox_path_add(cr, &p->limits.distance);
  ox_line_style_set(p, cr, OX_LINE_LIMIT);
  cairo_stroke(cr);
  if (p->limits.shows_station) ox_symbol_draw(p, cr, p->limits.station, OX_MARK_STATION);
}
