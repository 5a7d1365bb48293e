/* How long a whole picture takes at 1920 x 1080, beside bare cairo stroking as many segments.
 *
 * The two are timed in turn in the same run, so that the ratio does not depend on the machine. */
#include <cairo.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bench_clock.h"
#include "oxbow/picture.h"
#include "paint_private.h"

enum { RUNS = 300, WIDTH = 1920, HEIGHT = 1080 };

static ox_flight flight;

static ox_case demo(void) {
  ox_case c = ox_case_default();
  strcpy(c.hold.fix, "LARCH");
  c.hold.inbound_deg = 240;
  c.arrival.heading_deg = 90;
  c.variation_deg = -12;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 360, 20, OX_NORTH_TRUE};
  return c;
}

/* Every segment that the picture strokes, as one path with one width. */
static void bare(cairo_t *cr, const ox_picture *p) {
  cairo_set_source_rgb(cr, 1, 1, 1);
  cairo_paint(cr);
  cairo_set_source_rgb(cr, 0, 0.4, 0.7);
  cairo_set_line_width(cr, 2.0);
  size_t count = ox_picture_obstacle_count(p);
  for (size_t i = 0; i < count; i++) {
    ox_vec a, b;
    ox_picture_obstacle(p, i, &a, &b);
    cairo_move_to(cr, a.x, a.y);
    cairo_line_to(cr, b.x, b.y);
  }
  ox_path_add(cr, &p->hatch);
  cairo_stroke(cr);
}

/* The same board with every overlay at once. */
static double overlaid_ms(cairo_t *cr, const ox_case *c, ox_scene scene) {
  static ox_flight other;
  static uint32_t cells[OX_SPREAD_CELLS * OX_SPREAD_CELLS];
  static double took[RUNS];
  ox_flaws flaws = {.mistakes = 1u << OX_MISTAKE_DRIFT_WRONG_SIDE};
  ox_spread spread = {.runs = 1000, .cell_nm = 0.05, .origin_nm = {-4.8, -4.8}, .cells = cells};
  ox_area area = ox_area_make(c, &scene.flight->setup, 0.0);
  for (uint32_t i = 0; i < OX_SPREAD_CELLS * OX_SPREAD_CELLS; i++) cells[i] = i % 997;
  if (ox_flight_solve_flawed(c, &flaws, &other) == OX_ERROR) return 0.0;
  scene.compare = &other;
  scene.compare_name = "drift on the wrong side";
  scene.area = &area;
  scene.spread = &spread;
  ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
  for (int i = 0; i < RUNS && p; i++) {
    double t0 = now_ms();
    ox_picture_draw(p, cr, i * 0.7);
    took[i] = now_ms() - t0;
  }
  ox_picture_free(p);
  return median(took, RUNS);
}

/* A board as it is taught at: five circuits, thirty strokes of two hundred points, two more cases
 * in step; every step solves the case anew, lays out and draws, as dragging does. */
enum { STROKES = 30, POINTS = 200 };

static ox_vec stroke_points[STROKES][POINTS];
static ox_ink_stroke strokes[STROKES];

static ox_ink handwriting(void) {
  for (int i = 0; i < STROKES; i++) {
    strokes[i] = (ox_ink_stroke){.colour = (ox_ink_colour)(i % 3),
                                 .width = (ox_ink_width)(i / 3 % 2),
                                 .count = POINTS,
                                 .points_nm = stroke_points[i]};
    for (int k = 0; k < POINTS; k++) {
      double turn = 1.8 * k, r = 0.06 + 0.0006 * k + 0.01 * sin(k * 0.4);
      ox_vec at = {(i % 6 - 3) * 0.8, (i / 6 - 2) * 0.7};
      stroke_points[i][k] = ox_vec_add(at, ox_vec_scale(ox_unit(turn), r));
    }
  }
  return (ox_ink){.stroke_count = STROKES, .strokes = strokes};
}

static void taught(cairo_t *cr, ox_case c, ox_view view, const char *what, double bare_ms) {
  static ox_flight own, others[2];
  static double solve[RUNS], make[RUNS], still[RUNS], moving[RUNS], whole[RUNS];
  ox_ink ink = handwriting();
  ox_case more[2] = {c, c};
  c.technique.circuits = more[0].technique.circuits = more[1].technique.circuits = 5;
  more[0].technique.drift = OX_DRIFT_NONE;
  more[1].aircraft.ias_kt = 150;
  ox_typesetter *typesetter = ox_typesetter_new();
  ox_scene_other in_step[2] = {{&more[0], &others[0], "no drift"}, {&more[1], &others[1], "faster"}};
  for (int i = 0; i < 2; i++)
    if (ox_flight_solve(&more[i], &others[i]) == OX_ERROR) return;
  for (int i = -20; i < RUNS; i++) {
    int k = i < 0 ? 0 : i;
    c.hold.inbound_deg = 200 + i % 60;
    double t0 = now_ms();
    if (ox_flight_solve(&c, &own) == OX_ERROR) return;
    ox_scene scene = {.c = &c, .flight = &own, .palette = OX_PALETTE_LIGHT, .text_scale = 1.0,
                      .layers = OX_LAYER_ALL, .others = in_step, .other_count = 2, .ink = &ink,
                      .view = view, .typesetter = typesetter};
    double t1 = now_ms();
    ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
    if (!p) return;
    double t2 = now_ms();
    ox_picture_draw_still(p, cr);
    double t3 = now_ms();
    ox_picture_draw_moving(p, cr, 40.0 + i);
    double t4 = now_ms();
    ox_picture_free(p);
    solve[k] = t1 - t0;
    make[k] = t2 - t1;
    still[k] = t3 - t2;
    moving[k] = t4 - t3;
    whole[k] = t4 - t0;
  }
  double w = median(whole, RUNS);
  printf("paint: %s: step %.3f ms, ratio %.2f (solve %.3f, layout %.3f, still %.3f, moving %.3f)\n",
         what, w, w / bare_ms, median(solve, RUNS), median(make, RUNS), median(still, RUNS),
         median(moving, RUNS));
  ox_typesetter_free(typesetter);
}

int main(void) {
  static double draw[RUNS], still[RUNS], moving[RUNS], plain[RUNS], make[RUNS];
  ox_case c = demo();
  if (ox_flight_solve(&c, &flight) == OX_ERROR) return 1;
  ox_scene scene = {.c = &c, .flight = &flight, .title = "Crosswind at the lake",
                    .palette = OX_PALETTE_LIGHT, .text_scale = 1.0, .layers = OX_LAYER_ALL};
  cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create(surface);
  ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
  if (!p) return 1;
  for (int i = -20; i < RUNS; i++) {
    int k = i < 0 ? 0 : i;
    double t0 = now_ms();
    bare(cr, p);
    double t1 = now_ms();
    ox_picture_draw_still(p, cr);
    double t2 = now_ms();
    ox_picture_draw_moving(p, cr, i * 0.7);
    double t3 = now_ms();
    ox_picture *again = ox_picture_new(&scene, WIDTH, HEIGHT);
    double t4 = now_ms();
    ox_picture_free(again);
    plain[k] = t1 - t0;
    still[k] = t2 - t1;
    moving[k] = t3 - t2;
    draw[k] = t3 - t1;
    make[k] = t4 - t3;
  }
  size_t segments = ox_picture_obstacle_count(p) + p->hatch.count / 2;
  double d = median(draw, RUNS), b = median(plain, RUNS);
  printf("paint: %zu segments, %d x %d, medians of %d\n", segments, WIDTH, HEIGHT, RUNS);
  printf("paint: whole picture %.3f ms (still %.3f, moving %.3f)\n", d, median(still, RUNS),
         median(moving, RUNS));
  printf("paint: bare cairo %.3f ms, ratio %.2f\n", b, d / b);
  printf("paint: layout %.3f ms\n", median(make, RUNS));
  double o = overlaid_ms(cr, &c, scene);
  printf("paint: with all overlays %.3f ms, ratio %.2f\n", o, o / b);
  taught(cr, c, (ox_view){0}, "as it is taught at", b);
  taught(cr, c, (ox_view){.air = 1.0}, "the same in the air view", b);
  ox_picture_free(p);
  cairo_destroy(cr);
  cairo_surface_destroy(surface);
  return 0;
}
