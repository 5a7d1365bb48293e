/* The flight as a moving picture: an animated PNG (acTL, fcTL and fdAT chunks, PNG specification,
 * third edition).
 *
 * Each frame after the first is only the rectangle that differs from the frame before, compressed
 * by cairo as a PNG of its own whose data is taken over. */
#include "export_frames.h"

#include <math.h>
#include <string.h>

#include "film.h"
#include "png_parts.h"

typedef struct {
  ox_film film;
  cairo_surface_t *before;
  GString *out;
  uint32_t sequence;
} apng;

static cairo_status_t keep(void *closure, const unsigned char *data, unsigned length) {
  g_string_append_len(closure, (const char *)data, (gssize)length);
  return CAIRO_STATUS_SUCCESS;
}

static const void *row_of(const void *images, int image, int y) {
  const apng *a = images;
  return ox_film_row(image == 0 ? a->before : a->film.now, y);
}

/* The rectangle of the frame as a PNG. */
static GString *compressed(apng *a, ox_patch at) {
  int stride = cairo_image_surface_get_stride(a->film.now);
  unsigned char *data = cairo_image_surface_get_data(a->film.now);
  cairo_surface_t *part = cairo_image_surface_create_for_data(
      data + at.y * stride + at.x * 4, CAIRO_FORMAT_RGB24, at.width, at.height, stride);
  GString *png = g_string_new(NULL);
  if (cairo_surface_write_to_png_stream(part, keep, png) != CAIRO_STATUS_SUCCESS)
    a->film.failed = true;
  cairo_surface_destroy(part);
  return png;
}

static void add_control(apng *a, ox_patch at, bool last) {
  uint8_t c[26] = {0};
  unsigned fps = (unsigned)lround(a->film.o->fps);
  png_put_u32(c, a->sequence++);
  png_put_u32(c + 4, (uint32_t)at.width);
  png_put_u32(c + 8, (uint32_t)at.height);
  png_put_u32(c + 12, (uint32_t)at.x);
  png_put_u32(c + 16, (uint32_t)at.y);
  png_put_u16(c + 20, last ? OX_FILM_LAST_HELD_S : 1);
  png_put_u16(c + 22, last ? 1 : (uint16_t)fps);
  png_add_part(a->out, "fcTL", c, sizeof c); /* dispose and blend 0: the new pixels replace */
}

/* cairo writes its data in several chunks; each becomes one of the frame's. */
static void add_data(apng *a, const GString *png, bool first) {
  size_t at = 8;
  png_part part;
  while (png_next_part(png, &at, &part)) {
    if (memcmp(part.type, "IDAT", 4) != 0) continue;
    if (first) {
      png_add_part(a->out, "IDAT", part.data, part.length);
      continue;
    }
    uint8_t number[4];
    png_put_u32(number, a->sequence++);
    GString *data = g_string_new_len((const char *)number, 4);
    g_string_append_len(data, (const char *)part.data, (gssize)part.length);
    png_add_part(a->out, "fdAT", data->str, data->len);
    g_string_free(data, TRUE);
  }
}

static void add_head(apng *a, const GString *png, const char *title, const char *description) {
  uint8_t control[8];
  png_put_u32(control, (uint32_t)a->film.count);
  png_put_u32(control + 4, 0); /* for ever */
  g_string_append_len(a->out, png->str, PNG_HEAD_BYTES);
  png_add_part(a->out, "acTL", control, sizeof control);
  png_add_words(a->out, a->film.o->dpi, title, description);
}

static void add_frame(apng *a, size_t index, const char *title, const char *description) {
  ox_patch whole = {0, 0, a->film.width, a->film.height};
  ox_patch at = index == 0 ? whole : ox_film_changed(&a->film, row_of, a, sizeof(uint32_t));
  GString *png = compressed(a, at);
  if (!a->film.failed) {
    if (index == 0) add_head(a, png, title, description);
    add_control(a, at, index + 1 == a->film.count);
    add_data(a, png, index == 0);
  }
  g_string_free(png, TRUE);
  cairo_surface_t *swap = a->before;
  a->before = a->film.now;
  a->film.now = swap;
}

const char *ox_export_frames(const ox_scene *scene, const ox_export_options *o, const char *title,
                             const char *description, GString *out) {
  apng a = {.out = out};
  const char *fault = ox_film_open(&a.film, scene, o);
  if (fault) return fault;
  a.before = ox_film_blank(&a.film);
  if (cairo_surface_status(a.before) != CAIRO_STATUS_SUCCESS) a.film.failed = true;
  for (size_t i = 0; i < a.film.count && !a.film.failed; i++) {
    ox_film_draw(&a.film, i);
    if (!a.film.failed) add_frame(&a, i, title, description);
  }
  png_add_part(out, "IEND", NULL, 0);
  cairo_surface_destroy(a.before);
  ox_film_close(&a.film);
  return ox_film_fault(&a.film);
}
