/* Collecting what labels must keep clear of, placing them, and drawing them. */
#include <math.h>

#include "paint_private.h"

static const double LONG_LEADER_EM = 4.0, LONGEST_LEADER_EM = 7.0;

/* What lies on the picture later, handles for instance: a cross in a square about each, so that
 * nothing set between its sides would be taken for free. */
static void keep_clear(ox_picture *p) {
  const ox_keep_clear *k = &p->scene.keep_clear;
  ox_vec at[OX_KEEP_CLEAR_MAX];
  size_t count = k->at ? k->at(k->data, p, at, OX_KEEP_CLEAR_MAX) : 0;
  double r = k->radius;
  for (size_t i = 0; i < count; i++) {
    if (!ox_is_finite(at[i])) continue;
    ox_segments_add_rect(&p->obstacles, (ox_rect){at[i].x - r, at[i].y - r, 2.0 * r, 2.0 * r});
    ox_segments_add(&p->obstacles, (ox_vec){at[i].x - r, at[i].y - r},
                    (ox_vec){at[i].x + r, at[i].y + r});
  }
}

static void collect_obstacles(ox_picture *p) {
  ox_segments *o = &p->obstacles;
  const ox_track_lines *l = &p->lines;
  const ox_lines *all[] = {&l->track, &l->later, &l->entry, &l->arrival,
                           &l->still_air, &l->heads_track, &l->heads_entry, &l->ticks,
                           &p->rose.ring, &p->rose.ticks, &p->rose.spokes, &p->course.abeam,
                           &p->air_lines.circuit, &p->air_lines.entry, &p->air_lines.arrival,
                           &p->air_lines.before, &p->air_lines.heads_circuit,
                           &p->air_lines.heads_entry, &p->area.edge};
  for (size_t i = 0; i < sizeof all / sizeof *all; i++) ox_segments_add_lines(o, all[i]);
  for (size_t i = 0; i < p->other_count; i++) {
    ox_segments_add_lines(o, &p->others[i].line);
    ox_segments_add_lines(o, &p->others[i].heads);
  }
  for (int i = 0; i < OX_PATH_KIND_COUNT; i++) {
    ox_segments_add_lines(o, &p->paths[i]);
    ox_segments_add_lines(o, &p->path_heads[i]);
  }
  ox_marks_obstacles(p);
  ox_limits_obstacles(p);
  keep_clear(p);
  if (p->rose.radius > 0.0) {
    ox_lines band = {0}; /* the inner edge of the sectors' band */
    ox_lines_arc(&band, p->rose.centre, p->rose.inner, 0.0, 360.0);
    ox_segments_add_lines(o, &band);
    ox_lines_clear(&band);
  }
  if (!ox_has_layer(p, OX_LAYER_COURSE)) return;
  double r = 0.72 * p->size.label;
  ox_vec fix = ox_to_dev(p, (ox_vec){0, 0});
  ox_segments_add_rect(o, (ox_rect){fix.x - 0.87 * r, fix.y - r, 1.74 * r, 1.5 * r});
}

static ox_rect label_bounds(const ox_picture *p) {
  return ox_rect_inset(p->map, 0.25 * p->size.label);
}

/* The course's figure stands on the line itself, so it is placed before the line is there. */
static bool put_on_course(ox_picture *p, ox_placer *placer, ox_label *label) {
  const ox_course *k = &p->course;
  ox_vec fix = ox_to_dev(p, (ox_vec){0, 0});
  label->anchor = (ox_anchor){.kind = OX_ANCHOR_ON_LINE, .a = fix, .b = k->upstream,
                              .radius = 1.6 * p->size.label};
  ox_placer_put(placer, label);
  if (label->dropped) {
    label->anchor.b = k->downstream;
    label->anchor.radius = 0.0;
    ox_placer_put(placer, label);
  }
  return !label->dropped;
}

static void put_beside_course(ox_picture *p, ox_placer *placer, ox_label *label) {
  ox_vec side = ox_dev_unit(ox_dev_bearing(p, p->scene.flight->setup.inbound_true_deg) - 90.0);
  label->anchor = (ox_anchor){.kind = OX_ANCHOR_BESIDE, .a = p->course.upstream,
                              .b = p->course.downstream, .side = side};
  ox_placer_put(placer, label);
}

static void make_smaller(ox_picture *p, ox_lettering *text) {
  if (!text->layout) return;
  char *words = g_strdup(pango_layout_get_text(text->layout));
  unsigned style = OX_TEXT_BOLD | OX_TEXT_CENTRED;
  ox_lettering_make(text, p->typesetter, words, 0.88 * p->size.label, style, 0);
  g_free(words);
}

static double leader_length(const ox_label *label) {
  if (label->dropped || !label->has_leader) return 0.0;
  return ox_vec_length(ox_vec_sub(label->leader_to, label->leader_from));
}

/* The label placed last, put back. */
static void take_back(ox_placer *placer, ox_label *label) {
  if (label->dropped) return;
  placer->taken_count--;
  if (label->has_leader) placer->leaders.count--;
}

/* Where the world slides, a place can be left far behind by what it names: it is looked for anew,
 * and kept only where nothing is much nearer. What is of lower rank is then rather left out. */
static void put_nearer(ox_picture *p, ox_placer *placer, ox_label *label) {
  const double em = p->size.label;
  ox_label was = *label;
  take_back(placer, label);
  label->has_stay = false;
  ox_placer_put(placer, label);
  double now = leader_length(label);
  if (!label->dropped && now <= fmax(0.5 * leader_length(&was), LONG_LEADER_EM * em)) return;
  take_back(placer, label);
  *label = was;
  label->dropped = label->priority > 1 && leader_length(label) > LONGEST_LEADER_EM * em;
  if (label->dropped) return;
  placer->taken[placer->taken_count++] = label->box;
  ox_segments_add(&placer->leaders, label->leader_from, label->leader_to);
}

/* A label of first rank is set smaller rather than left out. */
static void put(ox_picture *p, ox_placer *placer, ox_label *label) {
  ox_placer_put(placer, label);
  if (p->air > 0.0 && leader_length(label) > LONG_LEADER_EM * p->size.label)
    put_nearer(p, placer, label);
  if (!label->dropped || label->priority != 1) return;
  make_smaller(p, &label->text);
  make_smaller(p, &label->narrow);
  ox_placer_put(placer, label);
}

/* --- staying in place where the world moves --------------------------------------------------- */

static ox_vec place_of(const ox_anchor *a) {
  switch (a->kind) {
  case OX_ANCHOR_BESIDE: return ox_vec_scale(ox_vec_add(a->a, a->b), 0.5);
  case OX_ANCHOR_REGION: return a->wish;
  case OX_ANCHOR_POINT:
  case OX_ANCHOR_ON_LINE:
  case OX_ANCHOR_ARC: break;
  }
  return a->a;
}

/* Figures of the rose and of the course have their place anyway. */
static bool may_stay(const ox_label *label) {
  const ox_anchor *a = &label->anchor;
  return a->kind != OX_ANCHOR_ON_LINE && !(a->kind == OX_ANCHOR_ARC && a->from_deg == a->to_deg);
}

/* A displacement on the board turned by so many degrees clockwise. */
static ox_vec turned(ox_vec d, double deg) {
  double s, c;
  ox_sincos_deg(deg, &s, &c);
  return (ox_vec){d.x * c - d.y * s, d.x * s + d.y * c};
}

static void recall_stays(ox_picture *p) {
  for (size_t i = 0; i < p->label_count && i < p->stay_count; i++) {
    ox_label *label = &p->labels[i];
    const ox_stay *was = &p->stays[i];
    if (!was->there || !may_stay(label) || was->priority != label->priority ||
        was->kind != label->anchor.kind)
      continue;
    label->has_stay = true;
    label->stay_narrow = was->narrow;
    label->stay = ox_vec_add(place_of(&label->anchor), turned(was->offset, -p->view.up_deg));
  }
}

static void note_stays(ox_picture *p) {
  p->stay_count = p->label_count;
  for (size_t i = 0; i < p->label_count; i++) {
    const ox_label *label = &p->labels[i];
    ox_vec off = ox_vec_sub(ox_rect_centre(label->box), place_of(&label->anchor));
    p->stays[i] = (ox_stay){label->priority, label->anchor.kind, label->is_narrow,
                            !label->dropped, turned(off, p->view.up_deg)};
  }
}

void ox_build_labels(ox_picture *p) {
  ox_label_content(p);
  if (p->moves) recall_stays(p);
  collect_obstacles(p);
  bool course = ox_has_layer(p, OX_LAYER_COURSE);
  bool figure = course && ox_has_layer(p, OX_LAYER_LABELS) && p->label_count > 0;
  ox_placer placer;
  ox_placer_begin(&placer, label_bounds(p), p->size.label, &p->obstacles);
  bool on_line = figure && put_on_course(p, &placer, &p->labels[0]);
  if (course) ox_build_course_lines(p, on_line ? &p->labels[0].box : NULL);
  size_t before = p->obstacles.count;
  ox_segments_add_lines(&p->obstacles, &p->course.line);
  ox_segments_add_lines(&p->obstacles, &p->course.head);
  ox_placer_add(&placer, &p->obstacles, before);

  for (size_t i = 0; i < p->label_count; i++) {
    if (i == 0 && on_line) continue;
    if (i == 0 && figure)
      put_beside_course(p, &placer, &p->labels[0]);
    else
      put(p, &placer, &p->labels[i]);
  }
  if (p->moves) note_stays(p);
  for (size_t i = 0; i < placer.leaders.count; i++)
    ox_segments_add(&p->obstacles, placer.leaders.s[i].a, placer.leaders.s[i].b);
  ox_placer_end(&placer);
}

void ox_layer_labels(const ox_picture *p, cairo_t *cr) {
  bool leaders = false;
  for (size_t i = 0; i < p->label_count; i++) {
    const ox_label *label = &p->labels[i];
    if (label->dropped || !label->has_leader) continue;
    cairo_move_to(cr, label->leader_from.x, label->leader_from.y);
    cairo_line_to(cr, label->leader_to.x, label->leader_to.y);
    leaders = true;
  }
  if (leaders) {
    ox_hue_set(p, cr, OX_HUE_QUIET);
    cairo_set_dash(cr, NULL, 0, 0.0);
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
    cairo_set_line_width(cr, fmax(0.8 * p->size.course, 0.6));
    cairo_stroke(cr);
  }
  for (size_t i = 0; i < p->label_count; i++) {
    const ox_label *label = &p->labels[i];
    if (label->dropped) continue;
    ox_hue_set(p, cr, label->ink);
    ox_lettering_show_ink(&label->text, cr, label->box.x, label->box.y);
  }
}
