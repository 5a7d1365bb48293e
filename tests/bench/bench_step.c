/* What a step of a drag takes in our own part of it, without a window: solving, laying the picture
 * out with the world held, drawing it as a draft on a canvas that keeps layers. The baseline, in
 * the same run, is the same picture drawn afresh.
 *
 *   bench_step [STEPS [parts]]      (600; the time of each layer) */
#include <cairo.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bench_clock.h"
#include "oxbow/canvas.h"
#include "paint_private.h"

enum { MOST = 5000, WIDTH = 954, HEIGHT = 885, STROKES = 10, POINTS = 60 };

static ox_vec points[STROKES][POINTS];
static ox_ink_stroke strokes[STROKES];
static ox_flight flight, other;

/* Ten strokes of sixty points round the hold. */
static ox_ink handwriting(void) {
  for (int s = 0; s < STROKES; s++) {
    strokes[s] = (ox_ink_stroke){.colour = OX_INK_BLUE, .width = OX_INK_BROAD, .count = POINTS,
                                 .points_nm = points[s]};
    for (int i = 0; i < POINTS; i++) {
      double a = 0.1 * i, r = 0.5 + 0.2 * s;
      points[s][i] = (ox_vec){r * cos(a) + 0.05 * sin(9 * a), r * sin(a)};
    }
  }
  return (ox_ink){.stroke_count = STROKES, .strokes = strokes};
}

static ox_case demo(void) {
  ox_case c = ox_case_default();
  strcpy(c.hold.fix, "LARCH");
  c.hold.inbound_deg = 240;
  c.arrival.heading_deg = 90;
  c.variation_deg = -12;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 360, 20, OX_NORTH_TRUE};
  c.technique.circuits = 5;
  c.technique.drift = OX_DRIFT_TRIPLE;
  c.technique.outbound = OX_OUTBOUND_ADJUST;
  return c;
}

typedef struct {
  const char *name;
  void (*draw)(const ox_picture *p, cairo_t *cr);
} part;

static const part parts[] = {
    {"tint", ox_layer_tint}, {"hatch", ox_layer_hatch}, {"rose", ox_layer_rose}, {"course", ox_layer_course},
    {"paths", ox_layer_paths}, {"still air", ox_layer_still_air}, {"track", ox_layer_track},
    {"others", ox_layer_others}, {"fix", ox_layer_fix}, {"labels", ox_layer_labels},
    {"ink", ox_layer_ink}, {"wind", ox_layer_wind}, {"furniture", ox_layer_furniture},
    {"compass", ox_layer_compass}, {"chart", ox_layer_chart}};

static void print_parts(const ox_picture *p) {
  static double took[200];
  cairo_surface_t *image = cairo_image_surface_create(CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create(image);
  cairo_set_antialias(cr, CAIRO_ANTIALIAS_FAST);
  for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
    for (int k = 0; k < 200; k++) {
      double t0 = now_ms();
      cairo_save(cr);
      parts[i].draw(p, cr);
      cairo_restore(cr);
      took[k] = now_ms() - t0;
    }
    printf("step: layer %-10s %.3f ms\n", parts[i].name, median(took, 200));
  }
  printf("step: points: track %zu, later %zu, entry %zu, still air %zu, obstacles %zu, labels %zu\n",
         p->lines.track.count, p->lines.later.count, p->lines.entry.count,
         p->lines.still_air.count, p->obstacles.count, p->label_count);
  cairo_destroy(cr);
  cairo_surface_destroy(image);
}

int main(int argc, char **argv) {
  static double solve[MOST], make[MOST], draw[MOST], afresh[MOST], whole[MOST];
  int steps = argc > 1 ? atoi(argv[1]) : 600;
  size_t count = (size_t)(steps > 0 ? steps : 0);
  if (steps < 1 || steps > MOST) return 1;
  ox_case c = demo();
  ox_case exact = c;
  exact.technique.drift = OX_DRIFT_EXACT;
  ox_ink ink = handwriting();
  if (ox_flight_solve(&c, &flight) == OX_ERROR || ox_flight_solve(&exact, &other) == OX_ERROR)
    return 1;
  ox_scene scene = {.c = &c, .flight = &flight, .palette = OX_PALETTE_LIGHT, .text_scale = 1.0,
                    .layers = OX_LAYER_ALL, .ink = &ink, .compare = &other,
                    .compare_name = "exact drift", .typesetter = ox_typesetter_new()};
  ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
  ox_canvas *canvas = ox_canvas_new();
  cairo_surface_t *image = cairo_image_surface_create(CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create(image);
  if (!p || !canvas) return 1;
  ox_held held = {ox_picture_viewport(p), ox_layout_of(p)};
  scene.held = &held;
  for (int i = -20; i < steps; i++) {
    int k = i < 0 ? 0 : i;
    ox_picture_free(p);
    c.hold.leg_s = 60.0 + 20.0 * sin(0.21 * i);
    double t0 = now_ms();
    if (ox_flight_solve(&c, &flight) == OX_ERROR) return 1;
    double t1 = now_ms();
    p = ox_picture_new(&scene, WIDTH, HEIGHT);
    double t2 = now_ms();
    if (!p || !ox_canvas_draw(canvas, p, 1.0, (double)NAN, true)) return 1;
    double t3 = now_ms();
    ox_picture_draw_still(p, cr);
    double t4 = now_ms();
    solve[k] = t1 - t0;
    make[k] = t2 - t1;
    draw[k] = t3 - t2;
    whole[k] = t3 - t0;
    afresh[k] = t4 - t3;
  }
  if (argc > 2) print_parts(p);
  double drawn = median(draw, count), again = median(afresh, count);
  printf("step: %.3f ms: solved %.3f, laid out %.3f, drawn %.3f; drawn afresh %.3f, ratio %.2f\n",
         median(whole, count), median(solve, count), median(make, count), drawn, again,
         drawn / again);
  ox_canvas_counts counts = ox_canvas_get_counts(canvas);
  printf("step: layers kept %lu times, used %lu times\n", counts.kept, counts.used);
  ox_picture_free(p);
  ox_layout_free((ox_layout *)held.layout);
  ox_canvas_free(canvas);
  ox_typesetter_free(scene.typesetter);
  cairo_destroy(cr);
  cairo_surface_destroy(image);
  return 0;
}
