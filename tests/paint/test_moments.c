/* The page of key moments: whole on every paper and in every palette, and it leaves the context as
 * it was. */
#include "oxbow/moments_page.h"
#include "paint_cases.h"

static cairo_surface_t *page_of(const ox_case *c, ox_palette_id palette, int width, int height) {
  assert_int_not_equal(ox_flight_solve(c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(c, &paint_flight, palette);
  ox_moments moments = ox_moments_make(c, &paint_flight, 0, 1);
  cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create(surface);
  cairo_matrix_t before, after;
  cairo_get_matrix(cr, &before);
  ox_moments_page_draw(cr, &scene, &moments, width, height);
  cairo_get_matrix(cr, &after);
  assert_memory_equal(&before, &after, sizeof before);
  assert_int_equal(cairo_status(cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy(cr);
  cairo_surface_flush(surface);
  return surface;
}

static uint32_t pixel(cairo_surface_t *surface, int x, int y) {
  const unsigned char *row = cairo_image_surface_get_data(surface) +
                             (ptrdiff_t)y * cairo_image_surface_get_stride(surface);
  return ((const uint32_t *)(const void *)row)[x] & 0xffffff;
}

/* Pixels of a rectangle that are not the ground. */
static int inked(cairo_surface_t *surface, int x0, int y0, int x1, int y1) {
  uint32_t ground = pixel(surface, 1, 1);
  int count = 0;
  for (int y = y0; y < y1; y++)
    for (int x = x0; x < x1; x++) count += pixel(surface, x, y) != ground;
  return count;
}

static const int papers[][2] = {{842, 595}, {595, 842}, {792, 612}, {612, 792}, {1600, 1000}};

static void the_margins_stay_free_and_the_page_is_used_on_every_paper(void **state) {
  ox_case parallel = paint_demo_case();
  parallel.arrival.heading_deg = 85;
  for (size_t i = 0; i < sizeof papers / sizeof *papers; i++) {
    int w = papers[i][0], h = papers[i][1], side = w < h ? w : h, margin = side / 40;
    for (int palette = 0; palette < OX_PALETTE_COUNT; palette++) {
      cairo_surface_t *s = page_of(&parallel, (ox_palette_id)palette, w, h);
      assert_int_equal(inked(s, 0, 0, w, margin), 0);
      assert_int_equal(inked(s, 0, h - margin, w, h), 0);
      assert_int_equal(inked(s, 0, 0, margin, h), 0);
      assert_int_equal(inked(s, w - margin, 0, w, h), 0);
      /* the lower band carries the caution, both halves carry pictures */
      assert_true(inked(s, 0, h - 3 * margin, w, h - margin) > 50);
      assert_true(inked(s, 0, h / 2, w, h - 4 * margin) > 500);
      assert_true(inked(s, w / 2, 0, w, h) > 500);
      cairo_surface_destroy(s);
    }
  }
}

static void every_size_and_case_is_drawn_without_an_error(void **state) {
  static const int sizes[][2] = {{1, 1}, {20, 300}, {300, 20}, {90, 90}, {400, 260}};
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(60); seed < seeds; seed++) {
    ox_case c = paint_seeded_case(seed);
    const int *size = sizes[seed % 5];
    cairo_surface_destroy(page_of(&c, (ox_palette_id)(seed % OX_PALETTE_COUNT), size[0], size[1]));
  }
  ox_case c = paint_demo_case();
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
  ox_moments none = {0};
  cairo_surface_t *s = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 200, 200);
  cairo_t *cr = cairo_create(s);
  ox_moments_page_draw(cr, &scene, &none, 200, 200);
  ox_moments_page_draw(cr, &scene, &none, (double)NAN, 200);
  ox_moments_page_draw(cr, &scene, &none, -5, 200);
  assert_int_equal(cairo_status(cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy(cr);
  cairo_surface_destroy(s);
}

static void each_moment_has_a_picture_of_its_own(void **state) {
  ox_case c = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
  ox_picture *picture = ox_moment_picture_new(&scene, 160, 110);
  assert_non_null(picture);
  ox_moments m = ox_moments_make(&c, &paint_flight, 0, 1);
  cairo_surface_t *before = NULL;
  for (size_t i = 0; i < m.count; i++) {
    cairo_surface_t *s = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 160, 110);
    cairo_t *cr = cairo_create(s);
    ox_moment_picture_draw(picture, cr, i > 0 ? m.moment[i - 1].t_s : 0.0, m.moment[i].t_s);
    assert_int_equal(cairo_status(cr), CAIRO_STATUS_SUCCESS);
    cairo_destroy(cr);
    cairo_surface_flush(s);
    int differ = 0;
    for (int y = 0; before && y < 110; y++)
      for (int x = 0; x < 160; x++) differ += pixel(s, x, y) != pixel(before, x, y);
    if (before) {
      assert_true(differ > 40);
      cairo_surface_destroy(before);
    }
    before = s;
  }
  assert_non_null(before);
  cairo_surface_destroy(before);
  ox_picture_free(picture);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_margins_stay_free_and_the_page_is_used_on_every_paper),
      cmocka_unit_test(every_size_and_case_is_drawn_without_an_error),
      cmocka_unit_test(each_moment_has_a_picture_of_its_own),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
