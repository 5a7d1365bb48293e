/* The picture: laid out once, drawn layer by layer. */
#include "oxbow/picture.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "paint_private.h"

static const double LEAST_SIZE = 1.0, MOST_SIZE = 1e6;

ox_picture *ox_picture_new(const ox_scene *scene, double width, double height) {
  if (!(width > 0.0) || !(height > 0.0) || !isfinite(width) || !isfinite(height)) return NULL;
  ox_picture *p = calloc(1, sizeof *p);
  if (!p) return NULL;
  p->scene = *scene;
  p->scene.title = NULL; /* kept as a copy: everything else is borrowed */
  if (scene->title) {
    p->title = strdup(scene->title);
    if (!p->title) {
      free(p);
      return NULL;
    }
  }
  p->palette = ox_palette_get(scene->palette);
  p->width = fmin(fmax(width, LEAST_SIZE), MOST_SIZE);
  p->height = fmin(fmax(height, LEAST_SIZE), MOST_SIZE);
  p->context = ox_lettering_context_new();
  ox_build_sizes(p);
  ox_build_spread(p);
  ox_build_furniture(p);
  ox_build_view(p);
  ox_build_scale(p);
  ox_build_track(p);
  ox_legend_settle(p);
  ox_build_compare(p);
  ox_build_area(p);
  ox_build_rose(p);
  ox_build_course_ends(p);
  ox_build_labels(p);
  ox_build_hatch(p);
  return p;
}

void ox_picture_free(ox_picture *p) {
  if (!p) return;
  ox_lines *all[] = {&p->lines.track, &p->lines.later, &p->lines.entry,
                     &p->lines.arrival, &p->lines.still_air, &p->lines.heads_track,
                     &p->lines.heads_entry, &p->lines.ticks, &p->rose.ring, &p->rose.ticks,
                     &p->rose.spokes, &p->course.line, &p->course.abeam, &p->course.head,
                     &p->hatch, &p->compare.line, &p->compare.heads, &p->area.edge};
  for (size_t i = 0; i < sizeof all / sizeof *all; i++) ox_lines_clear(all[i]);
  for (size_t i = 0; i < p->label_count; i++) {
    ox_lettering_clear(&p->labels[i].text);
    ox_lettering_clear(&p->labels[i].narrow);
  }
  ox_segments_clear(&p->obstacles);
  ox_furniture_clear(&p->furniture);
  if (p->spread) cairo_surface_destroy(p->spread);
  g_object_unref(p->context);
  free(p->title);
  free(p);
}

/* Each layer starts from the same state and leaves none behind. */
static void begin(cairo_t *cr) {
  cairo_save(cr);
  cairo_new_path(cr);
}

static void end(cairo_t *cr) {
  cairo_new_path(cr);
  cairo_restore(cr);
}

static void board(const ox_picture *p, cairo_t *cr) {
  ox_hue_set(p, cr, OX_HUE_BOARD);
  cairo_rectangle(cr, 0.0, 0.0, p->width, p->height);
  cairo_fill(cr);
}

static void clip_to_map(const ox_picture *p, cairo_t *cr) {
  cairo_rectangle(cr, p->map.x, p->map.y, p->map.width, p->map.height);
  cairo_clip(cr);
}

typedef struct {
  unsigned layer;
  void (*draw)(const ox_picture *p, cairo_t *cr);
  bool in_map;
} layer;

static const layer layers[] = {
    {OX_LAYER_SIDES, ox_layer_sides, true},
    {OX_LAYER_ALL, ox_layer_area, true},
    {OX_LAYER_ALL, ox_layer_spread, true},
    {OX_LAYER_ROSE, ox_layer_rose, true},
    {OX_LAYER_COURSE, ox_layer_course, true},
    {OX_LAYER_STILL_AIR, ox_layer_still_air, true},
    {OX_LAYER_TRACK, ox_layer_track, true},
    {OX_LAYER_TRACK, ox_layer_compare, true},
    {OX_LAYER_COURSE, ox_layer_fix, true},
    {OX_LAYER_LABELS | OX_LAYER_ROSE, ox_layer_labels, false},
    {OX_LAYER_WIND, ox_layer_wind, false},
    {OX_LAYER_FURNITURE, ox_layer_furniture, false},
    {OX_LAYER_CHART, ox_layer_chart, false},
};

void ox_picture_draw_still(ox_picture *p, cairo_t *cr) {
  begin(cr);
  cairo_set_operator(cr, CAIRO_OPERATOR_OVER);
  cairo_set_tolerance(cr, 0.1);
  board(p, cr);
  for (size_t i = 0; i < sizeof layers / sizeof *layers; i++) {
    if (!ox_has_layer(p, layers[i].layer)) continue;
    begin(cr);
    if (layers[i].in_map) clip_to_map(p, cr);
    layers[i].draw(p, cr);
    end(cr);
  }
  end(cr);
}

void ox_picture_draw_moving(ox_picture *p, cairo_t *cr, double t_s) {
  if (isnan(t_s)) return;
  begin(cr);
  if (ox_has_layer(p, OX_LAYER_TRIANGLE)) {
    begin(cr);
    ox_layer_triangle(p, cr, t_s);
    end(cr);
  }
  if (ox_has_layer(p, OX_LAYER_AIRCRAFT)) {
    clip_to_map(p, cr);
    ox_layer_aircraft(p, cr, t_s);
  }
  end(cr);
}

void ox_picture_draw(ox_picture *p, cairo_t *cr, double t_s) {
  ox_picture_draw_still(p, cr);
  ox_picture_draw_moving(p, cr, t_s);
}

ox_viewport ox_picture_viewport(const ox_picture *p) {
  return p->view;
}

ox_viewport ox_picture_viewport_at(const ox_picture *p, double t_s) {
  (void)t_s;
  return p->view;
}

bool ox_picture_moves(const ox_picture *p) {
  (void)p;
  return false;
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
