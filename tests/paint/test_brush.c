/* The quick brush against cairo: the same ink in the same pixels, but for the rounding of edges and
 * the outer tips of sharp corners. */
#include "ox_test.h"

#include <cairo.h>

#include "brush.h"
#include "geometry.h"

enum { WIDTH = 160, HEIGHT = 120, EDGE = 8 };

static const ox_rgb GROUND = {1.0, 0.97, 0.92};

typedef struct {
  cairo_surface_t *image;
  ox_brush brush;
} board;

/* What may be drawn on leaves an edge all round. */
static board board_new(double scale) {
  board b = {.image = cairo_image_surface_create(CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT)};
  cairo_t *cr = cairo_create(b.image);
  cairo_set_source_rgb(cr, GROUND.r, GROUND.g, GROUND.b);
  cairo_paint(cr);
  cairo_destroy(cr);
  cairo_surface_flush(b.image);
  b.brush = (ox_brush){.pixels = (void *)cairo_image_surface_get_data(b.image),
                       .stride = cairo_image_surface_get_stride(b.image) / 4,
                       .left = EDGE, .top = EDGE, .right = WIDTH - EDGE, .bottom = HEIGHT - EDGE,
                       .scale = scale};
  return b;
}

static void stroke_with_cairo(board *b, const ox_lines *lines, const ox_line_look *look) {
  cairo_t *cr = cairo_create(b->image);
  cairo_rectangle(cr, EDGE, EDGE, WIDTH - 2 * EDGE, HEIGHT - 2 * EDGE);
  cairo_clip(cr);
  cairo_scale(cr, b->brush.scale, b->brush.scale);
  for (size_t i = 0; i < lines->count; i++)
    if (lines->p[i].move)
      cairo_move_to(cr, lines->p[i].x, lines->p[i].y);
    else
      cairo_line_to(cr, lines->p[i].x, lines->p[i].y);
  cairo_set_source_rgb(cr, look->colour.r, look->colour.g, look->colour.b);
  cairo_set_line_width(cr, look->width);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap(cr, look->round ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
  cairo_set_dash(cr, look->part, look->parts, 0.0);
  cairo_set_antialias(cr, CAIRO_ANTIALIAS_BEST);
  cairo_stroke(cr);
  cairo_destroy(cr);
  cairo_surface_flush(b->image);
}

static int blue_at(const board *b, int x, int y) {
  return (int)(b->brush.pixels[y * b->brush.stride + x] & 0xff);
}

typedef struct {
  double ink, wanted; /* all there is of it: pixels */
  int pixels, off;    /* that have any; that differ by more than a third of the colour */
} comparison;

static const ox_rgb BLACK = {0, 0, 0};

static comparison compare(const ox_lines *lines, ox_line_look look, double scale) {
  board ours = board_new(scale), cairos = board_new(scale);
  comparison c = {0};
  int ground = blue_at(&ours, 0, 0);
  look.colour = BLACK;
  ox_brush_stroke(&ours.brush, lines, &look);
  stroke_with_cairo(&cairos, lines, &look);
  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++) {
      int got = blue_at(&ours, x, y), want = blue_at(&cairos, x, y);
      c.ink += (double)(ground - got) / ground;
      c.wanted += (double)(ground - want) / ground;
      c.pixels += want != ground;
      c.off += abs(got - want) > ground / 3;
      assert_int_equal(ours.brush.pixels[y * ours.brush.stride + x] >> 24, 255);
    }
  cairo_surface_destroy(ours.image);
  cairo_surface_destroy(cairos.image);
  return c;
}

/* An arc from a random place, as tracks are: smooth, and cut into short pieces. */
static void add_arc(ox_lines *lines, ox_random *r) {
  ox_vec centre = {ox_random_between(r, 20, 140), ox_random_between(r, 20, 100)};
  double from = ox_random_between(r, 0, 360);
  ox_lines_arc(lines, centre, ox_random_between(r, 15, 90), from,
               from + ox_random_between(r, 40, 320));
}

static void add_zigzag(ox_lines *lines, ox_random *r) {
  ox_vec a = {ox_random_between(r, 10, 150), ox_random_between(r, 10, 110)};
  for (int i = 0; i < 4; i++) {
    ox_vec b = {ox_random_between(r, -30, 190), ox_random_between(r, -30, 150)};
    ox_lines_segment(lines, a, b);
    a = b;
  }
}

static ox_line_look random_look(ox_random *r) {
  static const double dashes[][OX_DASHES_MOST] = {
      {5.5, 2.0}, {6.5, 2.2, 1.4, 2.2}, {3.4, 1.6, 1.2, 1.6, 1.2, 1.6}};
  static const int parts[] = {2, 4, 6};
  ox_line_look look = {.width = ox_random_between(r, 0.6, 6.0), .round = ox_random_below(r, 2)};
  int kind = ox_random_below(r, 4);
  if (kind == 3) return look;
  look.parts = parts[kind];
  look.round = false;
  for (int i = 0; i < look.parts; i++) look.part[i] = dashes[kind][i] * look.width;
  return look;
}

static void smooth_lines_are_as_cairo_strokes_them(void **state) {
  (void)state;
  int cases = ox_test_cases(400);
  for (int seed = 0; seed < cases; seed++) {
    ox_random r = {.state = (uint64_t)seed};
    ox_lines lines = {0};
    double scale = seed % 5 == 0 ? 1.5 : 1.0;
    add_arc(&lines, &r);
    comparison c = compare(&lines, random_look(&r), scale);
    if (fabs(c.ink - c.wanted) > 0.03 * c.wanted + 4.0)
      fail_msg("seed %d: ink for %.1f pixels, not %.1f", seed, c.ink, c.wanted);
    if (c.off > 4 + c.pixels / 30)
      fail_msg("seed %d: %d of %d pixels are another colour", seed, c.off, c.pixels);
    ox_lines_clear(&lines);
  }
}

static void corners_are_joined(void **state) {
  (void)state;
  int cases = ox_test_cases(400);
  for (int seed = 0; seed < cases; seed++) {
    ox_random r = {.state = (uint64_t)seed + 10000};
    ox_lines lines = {0};
    ox_line_look look = {.width = ox_random_between(&r, 1.0, 6.0), .round = true};
    add_zigzag(&lines, &r);
    comparison c = compare(&lines, look, 1.0);
    if (fabs(c.ink - c.wanted) > 0.04 * c.wanted + 6.0)
      fail_msg("seed %d: ink for %.1f pixels, not %.1f", seed, c.ink, c.wanted);
    ox_lines_clear(&lines);
  }
}

/* A straight line of 100 pixels, 2 wide, dashed 10 and 5: seven dashes. */
static void dashes_go_on_from_piece_to_piece(void **state) {
  (void)state;
  ox_line_look look = {.width = 2.0, .parts = 2, .part = {10.0, 5.0}};
  for (int pieces = 1; pieces <= 40; pieces += 13) {
    ox_lines lines = {0};
    for (int i = 0; i < pieces; i++)
      ox_lines_segment(&lines, (ox_vec){30.0 + 100.0 * i / pieces, 60.0},
                       (ox_vec){30.0 + 100.0 * (i + 1) / pieces, 60.0});
    board b = board_new(1.0);
    look.colour = BLACK;
    ox_brush_stroke(&b.brush, &lines, &look);
    int begun = 0;
    for (int x = 1; x < WIDTH; x++)
      begun += blue_at(&b, x, 60) < 60 && blue_at(&b, x - 1, 60) >= 60;
    assert_int_equal(begun, 7);
    cairo_surface_destroy(b.image);
    ox_lines_clear(&lines);
  }
}

static void nothing_is_drawn_beside_the_map(void **state) {
  (void)state;
  int cases = ox_test_cases(300);
  for (int seed = 0; seed < cases; seed++) {
    ox_random r = {.state = (uint64_t)seed + 20000};
    ox_lines lines = {0};
    board b = board_new(1.0);
    uint32_t ground = b.brush.pixels[0];
    add_zigzag(&lines, &r);
    add_arc(&lines, &r);
    ox_line_look look = random_look(&r);
    ox_brush_stroke(&b.brush, &lines, &look);
    for (int y = 0; y < HEIGHT; y++)
      for (int x = 0; x < WIDTH; x++) {
        bool inside = x >= EDGE && x < WIDTH - EDGE && y >= EDGE && y < HEIGHT - EDGE;
        if (!inside) assert_int_equal(b.brush.pixels[y * b.brush.stride + x], ground);
      }
    cairo_surface_destroy(b.image);
    ox_lines_clear(&lines);
  }
}

/* No line, a line of no length, one far outside: nothing, and an end. */
static void lines_that_are_none_leave_no_ink(void **state) {
  (void)state;
  ox_line_look look = {.width = 3.0, .parts = 2, .part = {0.001, 0.5}, .round = true};
  board b = board_new(1.0);
  ox_lines lines = {0};
  uint32_t ground = b.brush.pixels[0];
  ox_brush_stroke(&b.brush, &lines, &look);
  ox_lines_segment(&lines, (ox_vec){50, 50}, (ox_vec){50, 50});
  ox_lines_segment(&lines, (ox_vec){-500, -500}, (ox_vec){-400, -900});
  ox_brush_stroke(&b.brush, &lines, &look);
  b.brush.right = b.brush.left; /* no room */
  ox_lines_segment(&lines, (ox_vec){0, 0}, (ox_vec){150, 100});
  ox_brush_stroke(&b.brush, &lines, &look);
  for (int i = 0; i < WIDTH * HEIGHT; i++) assert_int_equal(b.brush.pixels[i], ground);
  cairo_surface_destroy(b.image);
  ox_lines_clear(&lines);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(smooth_lines_are_as_cairo_strokes_them),
      cmocka_unit_test(corners_are_joined),
      cmocka_unit_test(dashes_go_on_from_piece_to_piece),
      cmocka_unit_test(nothing_is_drawn_beside_the_map),
      cmocka_unit_test(lines_that_are_none_leave_no_ink),
  };
  return cmocka_run_group_tests_name("brush", tests, NULL, NULL);
}
