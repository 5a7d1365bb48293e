/* Places and paths: named points, radio aids, the route, a missed approach, a student's guess.
 *
 * Symbols are those of charts where charts have one: a triangle for a fix, a hexagon with a point
 * for a radio aid. The others are ours. */
#include <math.h>

#include "oxbow/units.h"
#include "oxbow/text.h"
#include "paint_private.h"

static const ox_line_kind line_kinds[OX_PATH_KIND_COUNT] = {
    [OX_PATH_ROUTE] = OX_LINE_ROUTE, [OX_PATH_MISSED] = OX_LINE_MISSED,
    [OX_PATH_ALTERNATIVE] = OX_LINE_ALTERNATIVE, [OX_PATH_SKETCH] = OX_LINE_SKETCH};

double ox_symbol_radius(const ox_picture *p) {
  return 0.62 * p->size.label;
}

/* Device place of a mark; false where it is not in the map. */
static bool mark_at(const ox_picture *p, const ox_mark *mark, ox_vec *at) {
  if (!ox_is_finite(mark->at_nm)) return false;
  *at = ox_to_dev(p, mark->at_nm);
  return ox_rect_has(p->map, *at);
}

static ox_hue mark_hue(ox_mark_kind kind) {
  return kind == OX_MARK_GUESS ? OX_HUE_GUESS : OX_HUE_TEXT;
}

/* --- paths --------------------------------------------------------------------------------- */

static void build_path(ox_picture *p, const ox_path *path) {
  double head = 0.8 * p->size.label;
  bool arrows = path->kind == OX_PATH_ROUTE || path->kind == OX_PATH_MISSED;
  for (size_t i = 1; i < path->count; i++) {
    ox_vec a = ox_to_dev(p, path->points_nm[i - 1]), b = ox_to_dev(p, path->points_nm[i]);
    ox_lines_clipped(&p->paths[path->kind], p->map, a, b);
    ox_rect inner = ox_rect_inset(p->map, 0.3 * p->size.label);
    if (!arrows || !ox_is_finite(a) || !ox_is_finite(b) || !ox_rect_clip(inner, &a, &b)) continue;
    ox_vec d = ox_vec_sub(b, a);
    double length = ox_vec_length(d);
    if (length < 4.0 * head) continue;
    ox_vec u = ox_vec_scale(d, 1.0 / length);
    ox_vec tip = ox_vec_add(a, ox_vec_scale(u, 0.5 * (length + head)));
    ox_lines_head(&p->path_heads[path->kind], tip, u, head);
  }
}

void ox_build_paths(ox_picture *p) {
  for (size_t i = 0; i < p->scene.path_count; i++)
    if ((unsigned)p->scene.paths[i].kind < OX_PATH_KIND_COUNT) build_path(p, &p->scene.paths[i]);
}

void ox_layer_paths(const ox_picture *p, cairo_t *cr) {
  for (int i = 0; i < OX_PATH_KIND_COUNT; i++) {
    if (p->paths[i].count == 0) continue;
    ox_path_add(cr, &p->paths[i]);
    ox_line_style_set(p, cr, line_kinds[i]);
    cairo_stroke(cr);
    ox_path_add_heads(cr, &p->path_heads[i]);
    cairo_fill(cr);
  }
}

/* A missed approach is named beside its first long piece; the legend names the others too. */
void ox_label_paths(ox_picture *p) {
  const ox_lines *line = &p->paths[OX_PATH_MISSED];
  double longest = 4.0 * p->size.label;
  ox_anchor anchor = {.kind = OX_ANCHOR_BESIDE};
  for (size_t i = 1; i < line->count; i++) {
    if (line->p[i].move) continue;
    ox_vec a = {line->p[i - 1].x, line->p[i - 1].y}, b = {line->p[i].x, line->p[i].y};
    ox_vec d = ox_vec_sub(b, a);
    double length = ox_vec_length(d);
    if (length <= longest) continue;
    longest = length;
    anchor.a = a;
    anchor.b = b;
    anchor.side = (ox_vec){d.y / length, -d.x / length};
  }
  if (longest > 4.0 * p->size.label)
    ox_label_add(p, _("missed approach"), p->size.label, OX_TEXT_CENTRED, OX_HUE_TEXT, 3, anchor);
}

/* --- marks --------------------------------------------------------------------------------- */

static void polygon(cairo_t *cr, ox_vec at, double radius, int corners) {
  cairo_new_sub_path(cr);
  for (int i = 0; i < corners; i++) {
    ox_vec q = ox_vec_add(at, ox_vec_scale(ox_dev_unit(i * 360.0 / corners), radius));
    cairo_line_to(cr, q.x, q.y);
  }
  cairo_close_path(cr);
}

static void circle(cairo_t *cr, ox_vec at, double radius) {
  cairo_new_sub_path(cr);
  cairo_arc(cr, at.x, at.y, radius, 0.0, 2.0 * OX_PI);
}

static void line(cairo_t *cr, ox_vec at, double dx, double dy) {
  cairo_move_to(cr, at.x - dx, at.y - dy);
  cairo_line_to(cr, at.x + dx, at.y + dy);
}

static void outline(cairo_t *cr, ox_vec at, double r, ox_mark_kind kind) {
  switch (kind) {
  case OX_MARK_STATION: polygon(cr, at, r, 6); break;
  case OX_MARK_MISSED_APPROACH_POINT:
    circle(cr, at, 0.8 * r);
    line(cr, at, 0.56 * r, 0.56 * r);
    line(cr, at, 0.56 * r, -0.56 * r);
    break;
  case OX_MARK_PRESENT_POSITION:
    circle(cr, at, 0.7 * r);
    line(cr, at, 1.15 * r, 0.0);
    line(cr, at, 0.0, 1.15 * r);
    break;
  case OX_MARK_GUESS: polygon(cr, at, r, 4); break;
  case OX_MARK_POINT:
  case OX_MARK_KIND_COUNT: polygon(cr, at, r, 3); break;
  }
}

void ox_symbol_draw(const ox_picture *p, cairo_t *cr, ox_vec at, ox_mark_kind kind) {
  double r = ox_symbol_radius(p);
  cairo_set_dash(cr, NULL, 0, 0.0);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_MITER);
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
  outline(cr, at, r, kind);
  ox_hue_set(p, cr, OX_HUE_BOARD); /* a rim of the ground's colour, and the inside */
  cairo_set_line_width(cr, fmax(2.6 * p->size.course, 0.34 * r) + 2.0 * p->size.course);
  cairo_stroke_preserve(cr);
  if (kind != OX_MARK_PRESENT_POSITION) cairo_fill_preserve(cr);
  ox_hue_set(p, cr, mark_hue(kind));
  cairo_set_line_width(cr, fmax(1.3 * p->size.course, 0.17 * r));
  cairo_stroke(cr);
  if (kind != OX_MARK_STATION) return;
  circle(cr, at, 0.2 * r);
  cairo_fill(cr);
}

void ox_layer_marks(const ox_picture *p, cairo_t *cr) {
  for (size_t i = 0; i < p->scene.mark_count; i++) {
    const ox_mark *mark = &p->scene.marks[i];
    ox_vec at;
    if (mark_at(p, mark, &at)) ox_symbol_draw(p, cr, at, mark->kind);
  }
}

void ox_marks_obstacles(ox_picture *p) {
  double r = 1.2 * ox_symbol_radius(p);
  for (size_t i = 0; i < p->scene.mark_count; i++) {
    ox_vec at;
    if (!mark_at(p, &p->scene.marks[i], &at)) continue;
    ox_segments_add_rect(&p->obstacles, (ox_rect){at.x - r, at.y - r, 2.0 * r, 2.0 * r});
  }
}

void ox_label_marks(ox_picture *p) {
  double most = fmin(14.0 * p->size.label, 0.4 * p->map.width);
  for (size_t i = 0; i < p->scene.mark_count; i++) {
    const ox_mark *mark = &p->scene.marks[i];
    ox_anchor anchor = {.kind = OX_ANCHOR_POINT, .radius = 0.9 * ox_symbol_radius(p)};
    if (!mark->name || !*mark->name || !mark_at(p, mark, &anchor.a)) continue;
    ox_label *label = ox_label_add(p, "", p->size.label, OX_TEXT_PLAIN, mark_hue(mark->kind), 2,
                                   anchor);
    if (!label) return;
    unsigned style = OX_TEXT_BOLD | OX_TEXT_TWO_LINES;
    ox_lettering_make(&label->text, p->typesetter, mark->name, p->size.label, style, most);
  }
}
