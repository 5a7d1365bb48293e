/* The picture: laid out once, drawn layer by layer. Where the world moves on the board, the moving
 * half lays it out anew for its instant, and the still half is the furniture alone. */
#include "oxbow/picture.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "keys.h"
#include "paint_private.h"

static const double LEAST_SIZE = 1.0, MOST_SIZE = 1e6;

/* --- laying out ---------------------------------------------------------------------------- */

/* Every list of lines that a picture owns, one after the other; NULL after the last. */
static ox_lines *lines_at(ox_picture *p, size_t index) {
  ox_lines *fixed[] = {&p->lines.track, &p->lines.later, &p->lines.entry, &p->lines.arrival,
                       &p->lines.still_air, &p->lines.heads_track, &p->lines.heads_entry,
                       &p->lines.ticks, &p->air_lines.circuit, &p->air_lines.entry,
                       &p->air_lines.arrival, &p->air_lines.before, &p->air_lines.heads_circuit,
                       &p->air_lines.heads_entry, &p->rose.ring, &p->rose.ticks, &p->rose.spokes,
                       &p->course.line, &p->course.abeam, &p->course.head, &p->hatch,
                       &p->area.edge, &p->limits.radial, &p->limits.distance};
  const size_t count = sizeof fixed / sizeof *fixed;
  if (index < count) return fixed[index];
  index -= count;
  if (index < OX_PATH_KIND_COUNT) return &p->paths[index];
  index -= OX_PATH_KIND_COUNT;
  if (index < OX_PATH_KIND_COUNT) return &p->path_heads[index];
  index -= OX_PATH_KIND_COUNT;
  if (index >= 2 * p->other_count) return NULL;
  ox_other *other = &p->others[index / 2];
  return index % 2 == 0 ? &other->line : &other->heads;
}

static void forget_labels(ox_picture *p) {
  for (size_t i = 0; i < p->label_count; i++) {
    ox_lettering_clear(&p->labels[i].text);
    ox_lettering_clear(&p->labels[i].narrow);
  }
  memset(p->labels, 0, p->label_count * sizeof *p->labels);
  p->label_count = 0;
}

/* Memory for a flight seen from the air; its own legs are filled in later. */
static ox_flight *seen_new(const ox_flight *flight) {
  ox_flight *seen = malloc(sizeof *seen);
  if (seen) *seen = *flight;
  return seen;
}

/* The flights as they are seen at an instant, and which part of the shown one is named. */
static void see_flights(ox_picture *p, double t_s) {
  const ox_flight *f = p->scene.flight;
  p->named = (ox_stretch){-HUGE_VAL, HUGE_VAL, 1};
  if (!(p->air > 0.0)) return;
  ox_air_see(f, t_s, p->air, p->seen);
  p->flown = p->seen;
  for (size_t i = 0; i < p->other_count; i++) {
    ox_other *o = &p->others[i];
    if (!o->seen) continue;
    ox_air_see(o->flight, t_s, p->air, o->seen);
    o->flown = o->seen;
  }
  if (p->air < 0.5) return;
  p->named = ox_air_stretch(f, t_s);
  if (p->named.circuit >= 0) return;
  ox_stretch next = ox_air_stretch(f, 0.0); /* on the arrival, what comes next is shown too */
  p->named.to_s = next.to_s;
  p->named.circuit = next.circuit;
}

/* Builds everything that stands in the world, as it is at an instant. */
static void lay_world(ox_picture *p, double t_s) {
  ox_lines *lines;
  for (size_t i = 0; (lines = lines_at(p, i)) != NULL; i++) ox_lines_empty(lines);
  forget_labels(p);
  p->obstacles.count = 0;
  p->laid_t_s = t_s;
  p->view = ox_picture_viewport_at(p, t_s);
  see_flights(p, t_s);
  ox_build_track(p);
  ox_build_air_track(p, t_s);
  ox_build_other_lines(p);
  ox_build_paths(p);
  ox_build_area(p);
  ox_build_limits(p);
  ox_build_rose(p);
  ox_build_course_ends(p);
  ox_build_labels(p);
  ox_build_hatch(p);
}

/* Up to the fitted view. NULL when memory is out or the size is no size. */
static ox_picture *picture_begin(const ox_scene *scene, double width, double height) {
  if (!(width > 0.0) || !(height > 0.0) || !isfinite(width) || !isfinite(height)) return NULL;
  ox_picture *p = calloc(1, sizeof *p);
  if (!p) return NULL;
  p->scene = *scene;
  p->scene.title = NULL; /* kept as a copy: everything else is borrowed */
  p->scene.view = ox_view_limited(scene->view);
  p->title = scene->title ? strdup(scene->title) : NULL;
  p->own_typesetter = scene->typesetter ? NULL : ox_typesetter_new();
  p->typesetter = scene->typesetter ? scene->typesetter : p->own_typesetter;
  p->palette = ox_palette_get(scene->palette);
  p->width = fmin(fmax(width, LEAST_SIZE), MOST_SIZE);
  p->height = fmin(fmax(height, LEAST_SIZE), MOST_SIZE);
  p->flown = scene->flight;
  p->air = scene->hide_answer ? 0.0 : p->scene.view.air;
  p->turns = p->scene.view.up == OX_UP_AIRCRAFT;
  p->moves = p->turns || p->air > 0.0;
  ox_build_sizes(p);
  ox_build_spread(p);
  ox_build_others(p);
  if (p->air > 0.0) p->seen = seen_new(scene->flight);
  for (size_t i = 0; i < p->other_count && p->air > 0.0; i++)
    p->others[i].seen = seen_new(p->others[i].flight);
  if ((scene->title && !p->title) || (p->air > 0.0 && !p->seen)) {
    ox_picture_free(p);
    return NULL;
  }
  ox_build_furniture(p);
  ox_build_view(p);
  return p;
}

ox_picture *ox_picture_new(const ox_scene *scene, double width, double height) {
  ox_picture *p = picture_begin(scene, width, height);
  if (!p) return NULL;
  ox_build_scale(p);
  lay_world(p, ox_instant(p, 0.0));
  ox_legend_settle(p);
  return p;
}

void ox_picture_free(ox_picture *p) {
  if (!p) return;
  ox_lines *lines;
  for (size_t i = 0; (lines = lines_at(p, i)) != NULL; i++) ox_lines_clear(lines);
  forget_labels(p);
  ox_segments_clear(&p->obstacles);
  ox_furniture_clear(&p->furniture);
  for (size_t i = 0; i < p->other_count; i++) free(p->others[i].seen);
  free(p->seen);
  if (p->spread) cairo_surface_destroy(p->spread);
  ox_typesetter_free(p->own_typesetter);
  free(p->title);
  free(p);
}

bool ox_picture_viewport_of(const ox_scene *scene, double width, double height, double t_s,
                            ox_viewport *out) {
  ox_scene free_scene = *scene;
  free_scene.held = NULL;
  ox_picture *p = picture_begin(&free_scene, width, height);
  if (!p) return false;
  *out = ox_picture_viewport_at(p, t_s);
  ox_picture_free(p);
  return true;
}

/* The scale at which a rectangle of the world fills the narrowest of the maps. */
static double scale_for(const ox_fit *f, ox_vec room) {
  ox_viewport v = ox_viewport_fit(f->low_nm, f->high_nm, (ox_vec){0, 0}, room, 0.0, 0.0);
  return v.dev_per_nm;
}

ox_fit ox_picture_fit_of(const ox_scene *scenes, size_t count, double width, double height) {
  ox_fit all = {0, {HUGE_VAL, HUGE_VAL}, {-HUGE_VAL, -HUGE_VAL}};
  ox_vec room = {HUGE_VAL, HUGE_VAL};
  for (size_t i = 0; i < count; i++) {
    ox_scene scene = scenes[i];
    scene.fit = NULL;
    scene.held = NULL;
    scene.view.zoom = 0.0;
    scene.view.pan_nm = (ox_vec){0, 0};
    ox_picture *p = picture_begin(&scene, width, height);
    if (!p) continue;
    all.low_nm.x = fmin(all.low_nm.x, p->fit.low_nm.x);
    all.low_nm.y = fmin(all.low_nm.y, p->fit.low_nm.y);
    all.high_nm.x = fmax(all.high_nm.x, p->fit.high_nm.x);
    all.high_nm.y = fmax(all.high_nm.y, p->fit.high_nm.y);
    room.x = fmin(room.x, p->map.width - 2.0 * p->margin);
    room.y = fmin(room.y, p->map.height - 2.0 * p->margin);
    ox_picture_free(p);
  }
  if (!isfinite(room.x)) return (ox_fit){0};
  all.dev_per_nm = scale_for(&all, room);
  return all;
}

/* --- drawing ------------------------------------------------------------------------------- */

/* Each layer starts from the same state and leaves none behind. */
static void begin(cairo_t *cr) {
  cairo_save(cr);
  cairo_new_path(cr);
}

static void end(cairo_t *cr) {
  cairo_new_path(cr);
  cairo_restore(cr);
}

static void layer_board(const ox_picture *p, cairo_t *cr) {
  if (p->scene.no_ground) return;
  ox_hue_set(p, cr, OX_HUE_BOARD);
  cairo_rectangle(cr, 0.0, 0.0, p->width, p->height);
  cairo_fill(cr);
}

/* To whole units: an edge within a pixel would have to be smoothed in every layer. */
static void clip_to_map(const ox_picture *p, cairo_t *cr) {
  double left = floor(p->map.x), top = floor(p->map.y);
  double right = ceil(p->map.x + p->map.width), bottom = ceil(p->map.y + p->map.height);
  cairo_rectangle(cr, left, top, right - left, bottom - top);
  cairo_clip(cr);
}

/* FURNITURE never moves, COMPASS turns with the board, WORLD moves whenever the world does. */
typedef enum { FURNITURE, COMPASS, WORLD } belonging;

typedef struct {
  unsigned layer;
  ox_layer_drawing how;
  belonging to;
} layer;

static const layer layers[] = {
    {0, {layer_board, false, OX_KEPT_GROUND}, FURNITURE}, /* whatever is asked for */
    {OX_LAYER_SIDES, {ox_layer_tint, true, OX_KEPT_GROUND}, WORLD},
    {OX_LAYER_ALL, {ox_layer_area, true, OX_NOT_KEPT}, WORLD},
    {OX_LAYER_ALL, {ox_layer_spread, true, OX_NOT_KEPT}, WORLD},
    {OX_LAYER_ROSE, {ox_layer_rose, true, OX_KEPT_GROUND}, WORLD},
    {OX_LAYER_SIDES, {ox_layer_hatch, true, OX_NOT_KEPT}, WORLD},
    {OX_LAYER_COURSE, {ox_layer_course, true, OX_NOT_KEPT}, WORLD},
    {OX_LAYER_COURSE, {ox_layer_limits, true, OX_NOT_KEPT}, WORLD},
    {OX_LAYER_ALL, {ox_layer_paths, true, OX_NOT_KEPT}, WORLD},
    {OX_LAYER_STILL_AIR, {ox_layer_still_air, true, OX_NOT_KEPT}, WORLD},
    {OX_LAYER_TRACK, {ox_layer_track, true, OX_NOT_KEPT}, WORLD},
    {OX_LAYER_TRACK, {ox_layer_others, true, OX_NOT_KEPT}, WORLD},
    {OX_LAYER_COURSE, {ox_layer_fix, true, OX_NOT_KEPT}, WORLD},
    {OX_LAYER_ALL, {ox_layer_marks, true, OX_NOT_KEPT}, WORLD},
    {OX_LAYER_LABELS | OX_LAYER_ROSE, {ox_layer_labels, false, OX_NOT_KEPT}, WORLD},
    {OX_LAYER_ALL, {ox_layer_ink, false, OX_KEPT_INK}, WORLD},
    {OX_LAYER_WIND, {ox_layer_wind, false, OX_NOT_KEPT}, COMPASS},
    {OX_LAYER_FURNITURE, {ox_layer_furniture, false, OX_NOT_KEPT}, FURNITURE},
    {OX_LAYER_FURNITURE, {ox_layer_compass, false, OX_NOT_KEPT}, COMPASS},
    {OX_LAYER_CHART, {ox_layer_chart, false, OX_NOT_KEPT}, FURNITURE},
};

static bool is_asked_for(const ox_picture *p, const layer *l) {
  return l->layer == 0 || ox_has_layer(p, l->layer);
}

static bool is_moving(const ox_picture *p, belonging to) {
  return (to == WORLD && p->moves) || (to == COMPASS && p->turns);
}

void ox_layer_drawing_begin(const ox_layer_drawing *how, const ox_picture *p, cairo_t *cr) {
  cairo_set_tolerance(cr, 0.1);
  if (how->in_map) clip_to_map(p, cr);
}

static void draw_layer(const ox_picture *p, cairo_t *cr, const ox_layer_drawing *how) {
  begin(cr);
  ox_layer_drawing_begin(how, p, cr);
  how->draw(p, cr);
  end(cr);
}

static void draw_layers(const ox_picture *p, cairo_t *cr, bool moving,
                        const ox_layer_memory *memory) {
  for (size_t i = 0; i < sizeof layers / sizeof *layers; i++) {
    const layer *l = &layers[i];
    if (!is_asked_for(p, l) || is_moving(p, l->to) != moving) continue;
    if (memory && memory->draw(memory->data, &l->how, p, cr)) continue;
    draw_layer(p, cr, &l->how);
  }
}

void ox_picture_draw_ground(const ox_picture *p, cairo_t *cr) {
  for (size_t i = 0; i < sizeof layers / sizeof *layers; i++)
    if (layers[i].how.kept == OX_KEPT_GROUND && is_asked_for(p, &layers[i]))
      draw_layer(p, cr, &layers[i].how);
}

static void begin_half(cairo_t *cr) {
  begin(cr);
  cairo_set_operator(cr, CAIRO_OPERATOR_OVER);
}

void ox_picture_draw_still_with(ox_picture *p, cairo_t *cr, const ox_layer_memory *memory) {
  begin_half(cr);
  draw_layers(p, cr, false, memory);
  end(cr);
}

void ox_picture_draw_still(ox_picture *p, cairo_t *cr) { ox_picture_draw_still_with(p, cr, NULL); }

static void draw_world(ox_picture *p, cairo_t *cr, double t_s) {
  double at_s = ox_instant(p, t_s);
  if (at_s != p->laid_t_s) lay_world(p, at_s);
  begin_half(cr);
  draw_layers(p, cr, true, NULL);
  end(cr);
}

void ox_picture_draw_triangle(ox_picture *p, cairo_t *cr, double t_s) {
  if (isnan(t_s) || !ox_has_layer(p, OX_LAYER_TRIANGLE)) return;
  begin(cr);
  ox_layer_triangle(p, cr, ox_instant(p, t_s));
  end(cr);
}

void ox_picture_draw_aircraft(ox_picture *p, cairo_t *cr, double t_s) {
  if (isnan(t_s) || !ox_has_layer(p, OX_LAYER_AIRCRAFT)) return;
  begin(cr);
  clip_to_map(p, cr);
  ox_layer_aircraft(p, cr, ox_instant(p, t_s));
  end(cr);
}

void ox_picture_draw_moving(ox_picture *p, cairo_t *cr, double t_s) {
  if (p->moves) draw_world(p, cr, t_s);
  ox_picture_draw_triangle(p, cr, t_s);
  ox_picture_draw_aircraft(p, cr, t_s);
}

void ox_picture_draw(ox_picture *p, cairo_t *cr, double t_s) {
  ox_picture_draw_still(p, cr);
  ox_picture_draw_moving(p, cr, t_s);
}

/* --- asking -------------------------------------------------------------------------------- */

ox_viewport ox_picture_viewport(const ox_picture *p) {
  return p->view;
}

ox_view ox_picture_view(const ox_picture *p) {
  return p->scene.view;
}

bool ox_picture_moves(const ox_picture *p) {
  return p->moves;
}

void ox_picture_map(const ox_picture *p, ox_vec *origin, ox_vec *size) {
  *origin = (ox_vec){p->map.x, p->map.y};
  *size = (ox_vec){p->map.width, p->map.height};
}

size_t ox_picture_label_count(const ox_picture *p) {
  return p->label_count;
}

ox_label_box ox_picture_label(const ox_picture *p, size_t index) {
  const ox_label *label = &p->labels[index];
  return (ox_label_box){pango_layout_get_text(label->text.layout), label->box.x, label->box.y,
                        label->box.width, label->box.height, label->dropped};
}

size_t ox_picture_obstacle_count(const ox_picture *p) {
  return p->obstacles.count;
}

void ox_picture_obstacle(const ox_picture *p, size_t index, ox_vec *a, ox_vec *b) {
  *a = p->obstacles.s[index].a;
  *b = p->obstacles.s[index].b;
}
