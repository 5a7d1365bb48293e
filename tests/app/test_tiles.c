/* An image in tiles: what is shown is the image, and only what differs is handed over again. */
#include "ox_test.h"

#include "ox_tiles.h"

enum { WIDTH = 300, HEIGHT = 200 };

static cairo_surface_t *image_new(void) {
  cairo_surface_t *image = cairo_image_surface_create(CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++) {
      guchar *q = cairo_image_surface_get_data(image) + y * cairo_image_surface_get_stride(image);
      q[4 * x] = (guchar)(x * 7 + y);
      q[4 * x + 1] = (guchar)(y * 5);
      q[4 * x + 2] = (guchar)(x ^ y);
      q[4 * x + 3] = 255;
    }
  cairo_surface_mark_dirty(image);
  return image;
}

static guint32 *pixel(cairo_surface_t *image, int x, int y) {
  guchar *row = cairo_image_surface_get_data(image) + y * cairo_image_surface_get_stride(image);
  return (guint32 *)(void *)row + x;
}

/* What the tiles draw, at one pixel a unit. */
static void assert_shows(ox_tiles *tiles, cairo_surface_t *image) {
  GtkSnapshot *snapshot = gtk_snapshot_new();
  ox_tiles_append(tiles, snapshot);
  GskRenderNode *node = gtk_snapshot_free_to_node(snapshot);
  assert_non_null(node);
  cairo_surface_t *shown = cairo_image_surface_create(CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create(shown);
  gsk_render_node_draw(node, cr);
  cairo_destroy(cr);
  cairo_surface_flush(shown);
  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++)
      if (*pixel(shown, x, y) != *pixel(image, x, y))
        fail_msg("%d, %d: %08x, not %08x", x, y, *pixel(shown, x, y), *pixel(image, x, y));
  cairo_surface_destroy(shown);
  gsk_render_node_unref(node);
}

static const graphene_rect_t bounds = {{0, 0}, {WIDTH, HEIGHT}};

static void only_what_differs_is_handed_over(void **state) {
  (void)state;
  for (int kind = OX_TILES_TEXTURES; kind <= OX_TILES_PICTURES; kind++) {
    ox_tiles *tiles = ox_tiles_new();
    cairo_surface_t *image = image_new();
    ox_tiles_update(tiles, image, &bounds, (ox_tiles_kind)kind);
    guint all = ox_tiles_changed(tiles);
    assert_in_range(all, 4, 100);
    assert_shows(tiles, image);
    ox_tiles_update(tiles, image, &bounds, (ox_tiles_kind)kind);
    assert_int_equal(ox_tiles_changed(tiles), 0);
    static const int places[][2] = {{0, 0}, {WIDTH - 1, HEIGHT - 1}, {127, 127}, {128, 128}};
    for (size_t i = 0; i < sizeof places / sizeof *places; i++) {
      *pixel(image, places[i][0], places[i][1]) ^= 0x00ffffffu;
      cairo_surface_mark_dirty(image);
      ox_tiles_update(tiles, image, &bounds, (ox_tiles_kind)kind);
      assert_int_equal(ox_tiles_changed(tiles), 1);
      assert_shows(tiles, image);
    }
    cairo_surface_destroy(image);
    assert_int_equal(ox_tiles_changed(tiles), 1);
    ox_tiles_free(tiles);
  }
}

static void another_kind_or_place_hands_over_everything(void **state) {
  (void)state;
  ox_tiles *tiles = ox_tiles_new();
  cairo_surface_t *image = image_new();
  graphene_rect_t half = {{0, 0}, {WIDTH / 2, HEIGHT / 2}};
  ox_tiles_update(tiles, image, &bounds, OX_TILES_TEXTURES);
  assert_int_equal(ox_tiles_changed(tiles), 6); /* 3 by 2 squares */
  ox_tiles_update(tiles, image, &bounds, OX_TILES_PICTURES);
  guint all = ox_tiles_changed(tiles);
  assert_int_equal(all, 4); /* bands */
  assert_shows(tiles, image);
  ox_tiles_update(tiles, image, &half, OX_TILES_PICTURES); /* two pixels a unit */
  assert_int_equal(ox_tiles_changed(tiles), all);
  cairo_surface_destroy(image);
  ox_tiles_free(tiles);
  ox_tiles_free(NULL);
}

/* An image that was freed or painted over does not change what is shown. */
static void tiles_keep_what_they_show(void **state) {
  (void)state;
  ox_tiles *tiles = ox_tiles_new();
  cairo_surface_t *image = image_new(), *copy = image_new();
  ox_tiles_update(tiles, image, &bounds, OX_TILES_PICTURES);
  memset(cairo_image_surface_get_data(image), 0,
         (size_t)HEIGHT * (size_t)cairo_image_surface_get_stride(image));
  cairo_surface_mark_dirty(image);
  assert_shows(tiles, copy);
  cairo_surface_destroy(image);
  assert_shows(tiles, copy);
  cairo_surface_destroy(copy);
  ox_tiles_free(tiles);
}

/* GTK's render nodes are there once it has been started. */
static int set_up(void **state) {
  (void)state;
  return gtk_init_check() ? 0 : -1;
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(only_what_differs_is_handed_over),
      cmocka_unit_test(another_kind_or_place_hands_over_everything),
      cmocka_unit_test(tiles_keep_what_they_show),
  };
  return cmocka_run_group_tests_name("tiles", tests, set_up, NULL);
}
