/* A canvas: the image of a board, with layers that are kept as they were drawn.
 *
 * A kept layer is known by a key over everything that it is made of (ox_layer_key). The first time
 * a key is seen the layer is drawn straight; the second time it is drawn into an image of its own,
 * and from then on only laid over the board, where there is anything of it. */
#include "oxbow/canvas.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "keys.h"
#include "paint_private.h"

enum { TILE = 32, MOST_SIDE = 16384 };

typedef struct {
  uint64_t key, seen;      /* of what is kept; of what was drawn last */
  cairo_surface_t *image;  /* transparent where the layer is not */
  unsigned char *occupied; /* a byte a tile; not of the ground, which is everywhere */
} kept;

struct ox_canvas {
  cairo_surface_t *image;
  int width, height; /* pixels */
  double scale;
  kept layers[OX_KEPT_COUNT];
  bool ground_asked, has_ground; /* of the picture being drawn: all of its layers are there */
  ox_canvas_counts counts;
};

ox_canvas *ox_canvas_new(void) { return calloc(1, sizeof(ox_canvas)); }

static void forget_layer(kept *k) {
  if (k->image) cairo_surface_destroy(k->image);
  free(k->occupied);
  *k = (kept){0};
}

static void forget(ox_canvas *canvas) {
  for (int i = 0; i < OX_KEPT_COUNT; i++) forget_layer(&canvas->layers[i]);
  if (canvas->image) cairo_surface_destroy(canvas->image);
  canvas->image = NULL;
}

void ox_canvas_free(ox_canvas *canvas) {
  if (!canvas) return;
  forget(canvas);
  free(canvas);
}

ox_canvas_counts ox_canvas_get_counts(const ox_canvas *canvas) { return canvas->counts; }

/* --- tiles --------------------------------------------------------------------------------- */

static int tiles(int pixels) { return (pixels + TILE - 1) / TILE; }

static bool any_in_tile(const unsigned char *pixels, int stride, int width, int height) {
  for (int y = 0; y < height; y++) {
    const uint32_t *row = (const void *)(pixels + (ptrdiff_t)y * stride);
    for (int x = 0; x < width; x++)
      if (row[x] != 0) return true;
  }
  return false;
}

static int least(int a, int b) { return a < b ? a : b; }
static int most(int a, int b) { return a > b ? a : b; }

static void find_occupied(const ox_canvas *canvas, kept *k) {
  const unsigned char *pixels = cairo_image_surface_get_data(k->image);
  int stride = cairo_image_surface_get_stride(k->image), across = tiles(canvas->width);
  for (int ty = 0; ty < tiles(canvas->height); ty++)
    for (int tx = 0; tx < across; tx++) {
      int x = tx * TILE, y = ty * TILE;
      k->occupied[ty * across + tx] =
          any_in_tile(pixels + (ptrdiff_t)y * stride + 4 * x, stride,
                      least(TILE, canvas->width - x), least(TILE, canvas->height - y));
    }
}

/* Laid over the board tile by tile, neighbours in a row together. */
static void lay_over(const ox_canvas *canvas, const kept *k, const ox_layer_drawing *how,
                     const ox_picture *p, cairo_t *cr) {
  int across = tiles(canvas->width), down = tiles(canvas->height);
  cairo_save(cr);
  ox_layer_drawing_begin(how, p, cr);
  cairo_identity_matrix(cr);
  cairo_set_source_surface(cr, k->image, 0.0, 0.0);
  cairo_pattern_set_filter(cairo_get_source(cr), CAIRO_FILTER_NEAREST);
  cairo_set_antialias(cr, CAIRO_ANTIALIAS_NONE);
  for (int ty = 0; ty < down; ty++)
    for (int tx = 0; tx < across; tx++) {
      int from = tx;
      while (tx < across && k->occupied[ty * across + tx]) tx++;
      if (tx > from) cairo_rectangle(cr, from * TILE, ty * TILE, (tx - from) * TILE, TILE);
    }
  cairo_fill(cr);
  cairo_restore(cr);
}

static void lay_ground(const kept *k, cairo_t *cr) {
  cairo_save(cr);
  cairo_identity_matrix(cr);
  cairo_set_source_surface(cr, k->image, 0.0, 0.0);
  cairo_set_operator(cr, CAIRO_OPERATOR_SOURCE);
  cairo_paint(cr);
  cairo_restore(cr);
}

/* --- layers -------------------------------------------------------------------------------- */

static cairo_surface_t *blank(const ox_canvas *canvas) {
  cairo_surface_t *image =
      cairo_image_surface_create(CAIRO_FORMAT_ARGB32, canvas->width, canvas->height);
  if (cairo_surface_status(image) == CAIRO_STATUS_SUCCESS) return image;
  cairo_surface_destroy(image);
  return NULL;
}

/* Whether there is memory for it. */
static bool make_room(const ox_canvas *canvas, kept *k) {
  size_t count = (size_t)tiles(canvas->width) * (size_t)tiles(canvas->height);
  if (!k->image) k->image = blank(canvas);
  if (!k->occupied) k->occupied = malloc(count);
  return k->image && k->occupied;
}

static void draw_kept(const ox_picture *p, cairo_t *cr, const ox_layer_drawing *how) {
  if (how->kept == OX_KEPT_GROUND) {
    ox_picture_draw_ground(p, cr);
    return;
  }
  ox_layer_drawing_begin(how, p, cr);
  how->draw(p, cr);
}

static bool keep(ox_canvas *canvas, kept *k, uint64_t key, const ox_picture *p,
                 const ox_layer_drawing *how) {
  k->key = 0;
  if (!make_room(canvas, k)) return false;
  cairo_t *cr = cairo_create(k->image);
  cairo_set_operator(cr, CAIRO_OPERATOR_CLEAR);
  cairo_paint(cr);
  cairo_set_operator(cr, CAIRO_OPERATOR_OVER);
  cairo_scale(cr, canvas->scale, canvas->scale);
  draw_kept(p, cr, how);
  bool good = cairo_status(cr) == CAIRO_STATUS_SUCCESS;
  cairo_destroy(cr);
  if (!good) return false;
  cairo_surface_flush(k->image);
  if (how->kept != OX_KEPT_GROUND) find_occupied(canvas, k);
  k->key = key;
  canvas->counts.kept++;
  return true;
}

/* Takes the place of drawing a layer. */
static bool from_memory(void *data, const ox_layer_drawing *how, const ox_picture *p,
                        cairo_t *cr) {
  ox_canvas *canvas = data;
  if (how->kept == OX_NOT_KEPT) return false;
  bool ground = how->kept == OX_KEPT_GROUND;
  if (ground && canvas->ground_asked) return canvas->has_ground; /* the first layer told */
  canvas->ground_asked |= ground;
  kept *k = &canvas->layers[how->kept];
  uint64_t key = ox_layer_key(how->kept, p);
  bool again = key == k->seen;
  k->seen = key;
  if (key == 0 || (k->key != key && (!again || !keep(canvas, k, key, p, how)))) return false;
  if (ground)
    lay_ground(k, cr);
  else
    lay_over(canvas, k, how, p, cr);
  canvas->has_ground |= ground;
  canvas->counts.used++;
  return true;
}

/* --- drawing ------------------------------------------------------------------------------- */

static bool fit_to(ox_canvas *canvas, const ox_picture *p, double scale) {
  double width = ceil(p->width * scale), height = ceil(p->height * scale);
  if (!(scale > 0.0) || !(width >= 1.0) || !(height >= 1.0) || width > MOST_SIDE ||
      height > MOST_SIDE)
    return false;
  if (canvas->image && canvas->width == (int)width && canvas->height == (int)height &&
      canvas->scale == scale)
    return true;
  forget(canvas);
  canvas->width = (int)width;
  canvas->height = (int)height;
  canvas->scale = scale;
  canvas->image = blank(canvas);
  return canvas->image != NULL;
}

/* On the map and nowhere else. */
static ox_brush brush_for(const ox_canvas *canvas, const ox_picture *p) {
  double s = canvas->scale;
  return (ox_brush){
      .pixels = (void *)cairo_image_surface_get_data(canvas->image),
      .stride = cairo_image_surface_get_stride(canvas->image) / 4,
      .left = most(0, (int)floor(floor(p->map.x) * s)),
      .top = most(0, (int)floor(floor(p->map.y) * s)),
      .right = least(canvas->width, (int)ceil(ceil(p->map.x + p->map.width) * s)),
      .bottom = least(canvas->height, (int)ceil(ceil(p->map.y + p->map.height) * s)),
      .scale = s};
}

cairo_surface_t *ox_canvas_draw(ox_canvas *canvas, ox_picture *p, double scale, double t_s,
                                bool draft) {
  if (!fit_to(canvas, p, scale)) return NULL;
  cairo_t *cr = cairo_create(canvas->image);
  canvas->ground_asked = canvas->has_ground = false;
  if (p->scene.no_ground) { /* an opaque image all the same */
    cairo_set_source_rgb(cr, 1.0, 1.0, 1.0);
    cairo_paint(cr);
  }
  cairo_scale(cr, scale, scale);
  ox_brush brush = brush_for(canvas, p);
  if (draft) cairo_set_antialias(cr, CAIRO_ANTIALIAS_FAST);
  if (draft && !p->moves) p->brush = &brush;
  ox_picture_draw_still_with(p, cr, &(ox_layer_memory){from_memory, canvas});
  p->brush = NULL;
  if (!isnan(t_s)) ox_picture_draw_moving(p, cr, t_s);
  bool good = cairo_status(cr) == CAIRO_STATUS_SUCCESS;
  cairo_destroy(cr);
  cairo_surface_flush(canvas->image);
  return good ? canvas->image : NULL;
}
