/* A canvas shows what a picture drawn afresh shows, whatever was on it before. */
#include "ox_test.h"

#include "oxbow/canvas.h"
#include "oxbow/ink.h"
#include "paint_cases.h"

enum { WIDTH = 640, HEIGHT = 460 };

/* Laying a kept layer over the board rounds a colour once more, and where lines of the layer lie
 * over each other once for each; a line cut at the map's edge is smoothed a little differently. A
 * layer that should not have been kept is off by far more. */
static const int ROUNDING = 8;

static cairo_surface_t *afresh(ox_picture *p, double scale, double t_s) {
  cairo_surface_t *s = cairo_image_surface_create(
      CAIRO_FORMAT_ARGB32, (int)ceil(WIDTH * scale), (int)ceil(HEIGHT * scale));
  cairo_t *cr = cairo_create(s);
  cairo_scale(cr, scale, scale);
  ox_picture_draw_still(p, cr);
  if (!isnan(t_s)) ox_picture_draw_moving(p, cr, t_s);
  assert_int_equal(cairo_status(cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy(cr);
  cairo_surface_flush(s);
  return s;
}

/* The largest difference of any colour of any pixel, and the mean of them all. */
static int difference(cairo_surface_t *a, cairo_surface_t *b, double *mean) {
  int width = cairo_image_surface_get_width(a), height = cairo_image_surface_get_height(a);
  assert_int_equal(cairo_image_surface_get_width(b), width);
  assert_int_equal(cairo_image_surface_get_height(b), height);
  int most = 0;
  double sum = 0;
  for (int y = 0; y < height; y++) {
    const unsigned char *p = cairo_image_surface_get_data(a) + y * cairo_image_surface_get_stride(a);
    const unsigned char *q = cairo_image_surface_get_data(b) + y * cairo_image_surface_get_stride(b);
    for (int i = 0; i < 4 * width; i++) {
      int d = abs(p[i] - q[i]);
      if (d > most) most = d;
      sum += d;
    }
  }
  if (mean) *mean = sum / (4.0 * width * height);
  return most;
}

/* Two pictures: where the world moves, drawing one lays it out for its instant. */
static void assert_as_afresh(ox_canvas *canvas, const ox_scene *scene, double scale, double t_s,
                             const char *what) {
  ox_picture *p = ox_picture_new(scene, WIDTH, HEIGHT);
  ox_picture *same = ox_picture_new(scene, WIDTH, HEIGHT);
  assert_non_null(p);
  assert_non_null(same);
  cairo_surface_t *shown = ox_canvas_draw(canvas, p, scale, t_s, false);
  cairo_surface_t *want = afresh(same, scale, t_s);
  assert_non_null(shown);
  int most = difference(shown, want, NULL);
  if (most > ROUNDING) fail_msg("%s: a colour is off by %d", what, most);
  cairo_surface_destroy(want);
  ox_picture_free(p);
  ox_picture_free(same);
}

static ox_ink *scribble(ox_random *r) {
  ox_ink *ink = ox_ink_new();
  int strokes = ox_random_below(r, 4);
  for (int s = 0; s < strokes; s++) {
    ox_vec at = {ox_random_between(r, -2, 2), ox_random_between(r, -2, 2)};
    ox_ink_begin(ink, (ox_ink_colour)ox_random_below(r, OX_INK_COLOUR_COUNT),
                 (ox_ink_width)ox_random_below(r, 2), at);
    for (int i = 0; i < 12; i++) {
      at.x += ox_random_between(r, -0.2, 0.2);
      at.y += ox_random_between(r, -0.2, 0.2);
      ox_ink_extend(ink, at);
    }
  }
  return ink;
}

/* One thing about the picture changes, or nothing: what a hand on the board does. */
static void change(ox_random *r, ox_case *c, ox_scene *scene, ox_ink **ink) {
  switch (ox_random_below(r, 13)) {
  case 0: c->hold.inbound_deg = floor(ox_random_between(r, 1, 360)); break;
  case 1: c->hold.leg_s = floor(ox_random_between(r, 30, 120)); break;
  case 2: c->wind[0].kt = floor(ox_random_between(r, 0, 40)); break;
  case 3: c->hold.turns = c->hold.turns == OX_TURNS_LEFT ? OX_TURNS_RIGHT : OX_TURNS_LEFT; break;
  case 4: c->arrival.heading_deg = floor(ox_random_between(r, 1, 360)); break;
  case 5: scene->view.zoom = ox_random_below(r, 2) ? 1.0 : ox_random_between(r, 1, 3); break;
  case 6: scene->view.pan_nm.x = ox_random_between(r, -1, 1); break;
  case 7: scene->view.up = (ox_up)ox_random_below(r, 3); break;
  case 8: scene->palette = (ox_palette_id)ox_random_below(r, OX_PALETTE_COUNT); break;
  case 9: scene->hide_answer = !scene->hide_answer; break;
  case 10:
    if ((*ink)->stroke_count > 0) { /* one point or colour is another, and nothing else */
      ox_ink_stroke *stroke = &(*ink)->strokes[0];
      if (ox_random_below(r, 2))
        stroke->points_nm[stroke->count / 2].x += 0.3;
      else
        stroke->colour = (ox_ink_colour)((stroke->colour + 1) % OX_INK_COLOUR_COUNT);
      break;
    } /* fall through */
  case 11:
    ox_ink_free(*ink);
    *ink = scribble(r);
    break;
  default: break;
  }
}

static void whatever_changes_it_shows_what_is_there(void **state) {
  (void)state;
  unsigned long used = 0;
  int steps = ox_test_cases(60);
  for (unsigned seed = 1; seed <= 12; seed++) {
    ox_random r = {seed};
    ox_canvas *canvas = ox_canvas_new();
    ox_case c = paint_mild_case(&r);
    ox_ink *ink = scribble(&r);
    ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
    scene.view.zoom = 1.0;
    assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
    ox_picture *first = ox_picture_new(&scene, WIDTH, HEIGHT);
    ox_layout *layout = ox_layout_of(first);
    ox_held held = {ox_picture_viewport(first), layout};
    ox_picture_free(first);
    if (seed % 3 != 0) scene.held = &held; /* as while dragging: nothing but what changes moves */
    for (int step = 0; step < steps; step++) {
      char what[64];
      snprintf(what, sizeof what, "seed %u, step %d", seed, step);
      if (step % 3 == 2) change(&r, &c, &scene, &ink);
      if (ox_flight_solve(&c, &paint_flight) == OX_ERROR) continue;
      scene.ink = ink;
      double t_s = step % 4 == 0 ? (double)NAN : 7.0 * step;
      assert_as_afresh(canvas, &scene, seed % 2 + 1.0, t_s, what);
    }
    used += ox_canvas_get_counts(canvas).used;
    ox_layout_free(layout);
    ox_ink_free(ink);
    ox_canvas_free(canvas);
  }
  assert_true(used > (unsigned long)ox_test_least(300));
}

/* The first picture draws rose and ink, the second keeps them, the third only takes them. */
static void what_stays_is_drawn_once(void **state) {
  (void)state;
  ox_random r = {5};
  ox_case c = paint_demo_case();
  ox_canvas *canvas = ox_canvas_new();
  ox_ink *ink = scribble(&r);
  while (ink->stroke_count == 0) {
    ox_ink_free(ink);
    ink = scribble(&r);
  }
  ox_held held = {0};
  for (int i = 0; i < 10; i++) {
    c.hold.leg_s = 60 + i; /* the hold's size, and nothing of rose and ink */
    assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
    ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
    scene.ink = ink;
    if (i == 0) {
      ox_picture *first = ox_picture_new(&scene, WIDTH, HEIGHT);
      held.world = ox_picture_viewport(first);
      ox_picture_free(first);
    }
    scene.held = &held;
    assert_as_afresh(canvas, &scene, 1.0, (double)NAN, "while the leg is dragged");
  }
  ox_canvas_counts counts = ox_canvas_get_counts(canvas);
  assert_int_equal(counts.kept, 2);
  assert_int_equal(counts.used, 18);
  ox_ink_free(ink);
  ox_canvas_free(canvas);
}

static void a_draft_looks_the_same_from_a_step_away(void **state) {
  (void)state;
  for (unsigned seed = 0; seed < 12; seed++) {
    double mean;
    ox_case c = paint_seeded_case(seed);
    ox_picture *p = paint_picture(&c, (ox_palette_id)(seed % OX_PALETTE_COUNT), WIDTH, HEIGHT);
    ox_canvas *canvas = ox_canvas_new();
    cairo_surface_t *want = afresh(p, 1.0, (double)NAN);
    difference(ox_canvas_draw(canvas, p, 1.0, (double)NAN, true), want, &mean);
    if (mean > 0.5) fail_msg("seed %u: colours differ by %.2f of 255 on average", seed, mean);
    cairo_surface_destroy(want);
    ox_canvas_free(canvas);
    ox_picture_free(p);
  }
}

static void the_image_is_opaque_everywhere(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  for (int bare = 0; bare < 3; bare++) {
    assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
    ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_DARK);
    scene.no_ground = bare == 1;
    if (bare == 2) scene.layers = 0; /* the board is there all the same */
    ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
    ox_canvas *canvas = ox_canvas_new();
    cairo_surface_t *s = ox_canvas_draw(canvas, p, 1.5, 10.0, false);
    for (int y = 0; y < cairo_image_surface_get_height(s); y++) {
      const unsigned char *row =
          cairo_image_surface_get_data(s) + y * cairo_image_surface_get_stride(s);
      for (int x = 0; x < cairo_image_surface_get_width(s); x++)
        assert_int_equal(row[4 * x + 3], 255);
    }
    ox_canvas_free(canvas);
    ox_picture_free(p);
  }
}

static void a_size_that_is_none_gives_no_image(void **state) {
  (void)state;
  static const double scales[] = {0.0, -1.0, (double)NAN, 1000.0, HUGE_VAL};
  ox_case c = paint_demo_case();
  ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, WIDTH, HEIGHT);
  ox_canvas *canvas = ox_canvas_new();
  for (size_t i = 0; i < sizeof scales / sizeof *scales; i++)
    assert_null(ox_canvas_draw(canvas, p, scales[i], (double)NAN, false));
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
  assert_as_afresh(canvas, &scene, 1.0, (double)NAN, "after it was refused");
  ox_canvas_free(canvas);
  ox_canvas_free(NULL);
  ox_picture_free(p);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(whatever_changes_it_shows_what_is_there),
      cmocka_unit_test(what_stays_is_drawn_once),
      cmocka_unit_test(a_draft_looks_the_same_from_a_step_away),
      cmocka_unit_test(the_image_is_opaque_everywhere),
      cmocka_unit_test(a_size_that_is_none_gives_no_image),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
