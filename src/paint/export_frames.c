/* The flight as a moving picture: an animated PNG (acTL, fcTL and fdAT chunks, PNG specification,
 * third edition).
 *
 * What stands still is drawn once. Each frame after the first is only the rectangle that differs
 * from the frame before, compressed by cairo as a PNG of its own whose data is taken over. */
#include "export_frames.h"

#include <math.h>
#include <string.h>

#include "png_parts.h"

#define FRAMES_MOST 6000
#define LAST_HELD_S 2

static const char NO_MEMORY[] = "There is not enough memory for a picture of this size.";

typedef struct {
  const ox_export_options *o;
  ox_picture *picture;
  cairo_surface_t *still, *now, *before;
  GString *out;
  uint32_t sequence;
  bool failed;
} film;

typedef struct {
  int x, y, width, height;
} patch;

static cairo_status_t keep(void *closure, const unsigned char *data, unsigned length) {
  g_string_append_len(closure, (const char *)data, (gssize)length);
  return CAIRO_STATUS_SUCCESS;
}

static cairo_surface_t *blank(const ox_export_options *o) {
  return cairo_image_surface_create(CAIRO_FORMAT_RGB24, (int)lround(o->width),
                                    (int)lround(o->height));
}

static void draw_frame(film *f, double t_s) {
  cairo_t *cr = cairo_create(f->now);
  if (ox_picture_moves(f->picture)) {
    ox_picture_draw(f->picture, cr, t_s);
  } else {
    cairo_set_source_surface(cr, f->still, 0, 0);
    cairo_paint(cr);
    ox_picture_draw_moving(f->picture, cr, t_s);
  }
  f->failed = f->failed || cairo_status(cr) != CAIRO_STATUS_SUCCESS;
  cairo_destroy(cr);
  cairo_surface_flush(f->now);
}

static const uint32_t *row_of(cairo_surface_t *surface, int y) {
  const unsigned char *data = cairo_image_surface_get_data(surface);
  return (const uint32_t *)(const void *)(data + y * cairo_image_surface_get_stride(surface));
}

/* The smallest rectangle in which two frames differ; one pixel where they do not. */
static patch difference(const film *f) {
  int width = cairo_image_surface_get_width(f->now);
  int height = cairo_image_surface_get_height(f->now);
  int left = width, right = -1, top = height, bottom = -1;
  for (int y = 0; y < height; y++) {
    const uint32_t *a = row_of(f->before, y), *b = row_of(f->now, y);
    if (memcmp(a, b, (size_t)width * sizeof *a) == 0) continue;
    int from = 0, to = width - 1;
    while (a[from] == b[from]) from++;
    while (a[to] == b[to]) to--;
    left = from < left ? from : left;
    right = to > right ? to : right;
    top = y < top ? y : top;
    bottom = y;
  }
  return right < 0 ? (patch){0, 0, 1, 1}
                   : (patch){left, top, right - left + 1, bottom - top + 1};
}

/* The rectangle of the frame as a PNG. */
static GString *compressed(film *f, patch at) {
  int stride = cairo_image_surface_get_stride(f->now);
  unsigned char *data = cairo_image_surface_get_data(f->now);
  cairo_surface_t *part = cairo_image_surface_create_for_data(
      data + at.y * stride + at.x * 4, CAIRO_FORMAT_RGB24, at.width, at.height, stride);
  GString *png = g_string_new(NULL);
  if (cairo_surface_write_to_png_stream(part, keep, png) != CAIRO_STATUS_SUCCESS)
    f->failed = true;
  cairo_surface_destroy(part);
  return png;
}

static void add_control(film *f, patch at, bool last) {
  uint8_t c[26] = {0};
  unsigned fps = (unsigned)lround(f->o->fps);
  png_put_u32(c, f->sequence++);
  png_put_u32(c + 4, (uint32_t)at.width);
  png_put_u32(c + 8, (uint32_t)at.height);
  png_put_u32(c + 12, (uint32_t)at.x);
  png_put_u32(c + 16, (uint32_t)at.y);
  png_put_u16(c + 20, last ? LAST_HELD_S : 1);
  png_put_u16(c + 22, last ? 1 : (uint16_t)fps);
  png_add_part(f->out, "fcTL", c, sizeof c); /* dispose and blend 0: the new pixels replace */
}

/* cairo writes its data in several chunks; each becomes one of the frame's. */
static void add_data(film *f, const GString *png, bool first) {
  size_t at = 8;
  png_part part;
  while (png_next_part(png, &at, &part)) {
    if (memcmp(part.type, "IDAT", 4) != 0) continue;
    if (first) {
      png_add_part(f->out, "IDAT", part.data, part.length);
      continue;
    }
    uint8_t number[4];
    png_put_u32(number, f->sequence++);
    GString *data = g_string_new_len((const char *)number, 4);
    g_string_append_len(data, (const char *)part.data, (gssize)part.length);
    png_add_part(f->out, "fdAT", data->str, data->len);
    g_string_free(data, TRUE);
  }
}

static void add_head(film *f, const GString *png, size_t frames, const char *title,
                     const char *description) {
  uint8_t control[8];
  png_put_u32(control, (uint32_t)frames);
  png_put_u32(control + 4, 0); /* for ever */
  g_string_append_len(f->out, png->str, PNG_HEAD_BYTES);
  png_add_part(f->out, "acTL", control, sizeof control);
  png_add_words(f->out, f->o->dpi, title, description);
}

static void add_frame(film *f, size_t index, size_t frames, const char *title,
                      const char *description) {
  patch whole = {0, 0, cairo_image_surface_get_width(f->now),
                 cairo_image_surface_get_height(f->now)};
  patch at = index == 0 ? whole : difference(f);
  GString *png = compressed(f, at);
  if (!f->failed) {
    if (index == 0) add_head(f, png, frames, title, description);
    add_control(f, at, index + 1 == frames);
    add_data(f, png, index == 0);
  }
  g_string_free(png, TRUE);
  cairo_surface_t *swap = f->before;
  f->before = f->now;
  f->now = swap;
}

static void shoot(film *f, const ox_flight *flight, const char *title, const char *description) {
  double begin_s = ox_flight_begin_s(flight), end_s = ox_flight_end_s(flight);
  size_t frames = ox_export_frame_count(flight, f->o);
  cairo_t *cr = cairo_create(f->still);
  ox_picture_draw_still(f->picture, cr);
  cairo_destroy(cr);
  for (size_t i = 0; i < frames && !f->failed; i++) {
    double t_s = fmin(end_s, begin_s + (double)i * f->o->speed / round(f->o->fps));
    draw_frame(f, t_s);
    if (!f->failed) add_frame(f, i, frames, title, description);
  }
  png_add_part(f->out, "IEND", NULL, 0);
}

size_t ox_export_frame_count(const ox_flight *flight, const ox_export_options *o) {
  double flown_s = ox_flight_end_s(flight) - ox_flight_begin_s(flight);
  return 1 + (size_t)ceil(flown_s / o->speed * round(o->fps));
}

const char *ox_export_frames(const ox_scene *scene, const ox_export_options *o, const char *title,
                             const char *description, GString *out) {
  if (!(o->fps >= 1.0 && o->fps <= 60.0) || !(o->speed >= 0.1 && o->speed <= 1000.0))
    return "A moving picture has 1 to 60 frames a second and 0.1 to 1000 times the speed.";
  if (ox_export_frame_count(scene->flight, o) > FRAMES_MOST)
    return "The moving picture would have more than 6000 frames: ask for more speed.";
  film f = {.o = o, .out = out};
  ox_scene whole = *scene;
  whole.layers |= OX_LAYER_FURNITURE;
  f.picture = ox_picture_new(&whole, o->width, o->height);
  f.still = blank(o);
  f.now = blank(o);
  f.before = blank(o);
  bool good = f.picture && cairo_surface_status(f.still) == CAIRO_STATUS_SUCCESS &&
              cairo_surface_status(f.now) == CAIRO_STATUS_SUCCESS &&
              cairo_surface_status(f.before) == CAIRO_STATUS_SUCCESS;
  if (good) shoot(&f, scene->flight, title, description);
  cairo_surface_destroy(f.still);
  cairo_surface_destroy(f.now);
  cairo_surface_destroy(f.before);
  ox_picture_free(f.picture);
  if (!good) return NO_MEMORY;
  return f.failed ? "The picture could not be made." : NULL;
}
