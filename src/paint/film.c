/* The flight frame by frame. */
#include "film.h"

#include <math.h>
#include <string.h>

#include "oxbow/mark.h"

size_t ox_export_frame_count(const ox_flight *flight, const ox_export_options *o) {
  double flown_s = ox_flight_end_s(flight) - ox_flight_begin_s(flight);
  return 1 + (size_t)ceil(flown_s / o->speed * round(o->fps));
}

double ox_export_frame_s(const ox_flight *flight, const ox_export_options *o, size_t index) {
  double t_s = ox_flight_begin_s(flight) + (double)index * o->speed / round(o->fps);
  return fmin(ox_flight_end_s(flight), t_s);
}

cairo_surface_t *ox_film_blank(const ox_film *f) {
  return cairo_image_surface_create(CAIRO_FORMAT_RGB24, f->width, f->height);
}

static const char *refused(const ox_scene *scene, const ox_export_options *o) {
  if (!(o->fps >= 1.0 && o->fps <= 60.0) || !(o->speed >= 0.1 && o->speed <= 1000.0))
    return N_("A moving picture has 1 to 60 frames a second and 0.1 to 1000 times the speed.");
  if (ox_export_frame_count(scene->flight, o) > OX_FRAMES_MOST)
    return N_("The moving picture would have more than 6000 frames: ask for more speed.");
  return NULL;
}

static void draw_still(ox_film *f) {
  cairo_t *cr = cairo_create(f->still);
  ox_picture_draw_still(f->picture, cr);
  cairo_destroy(cr);
}

const char *ox_film_open(ox_film *f, const ox_scene *scene, const ox_export_options *o) {
  const char *fault = refused(scene, o);
  if (fault) return fault;
  ox_scene whole = *scene;
  whole.layers |= OX_LAYER_FURNITURE;
  *f = (ox_film){.o = o,
                 .flight = scene->flight,
                 .width = (int)lround(o->width),
                 .height = (int)lround(o->height),
                 .count = ox_export_frame_count(scene->flight, o)};
  f->picture = ox_picture_new(&whole, o->width, o->height);
  f->still = ox_film_blank(f);
  f->now = ox_film_blank(f);
  if (f->picture && cairo_surface_status(f->still) == CAIRO_STATUS_SUCCESS &&
      cairo_surface_status(f->now) == CAIRO_STATUS_SUCCESS) {
    draw_still(f);
    return NULL;
  }
  ox_film_close(f);
  return N_("There is not enough memory for a picture of this size.");
}

void ox_film_close(ox_film *f) {
  cairo_surface_destroy(f->still);
  cairo_surface_destroy(f->now);
  ox_picture_free(f->picture);
}

const char *ox_film_fault(const ox_film *f) {
  if (f->stopped) return N_("The moving picture was stopped.");
  return f->failed ? N_("The picture could not be made.") : NULL;
}

void ox_film_draw(ox_film *f, size_t index) {
  if (f->o->go_on && !f->o->go_on(f->o->go_on_data, (double)index / (double)f->count)) {
    f->stopped = f->failed = true;
    return;
  }
  double t_s = ox_export_frame_s(f->flight, f->o, index);
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

const uint32_t *ox_film_row(cairo_surface_t *surface, int y) {
  const unsigned char *data = cairo_image_surface_get_data(surface);
  return (const uint32_t *)(const void *)(data + y * cairo_image_surface_get_stride(surface));
}

static bool alike(const void *a, const void *b, int at, size_t pixel) {
  size_t offset = (size_t)at * pixel;
  return memcmp((const char *)a + offset, (const char *)b + offset, pixel) == 0;
}

ox_patch ox_film_changed(const ox_film *f, const void *(*row)(const void *images, int image, int y),
                         const void *images, size_t pixel) {
  int left = f->width, right = -1, top = f->height, bottom = -1;
  for (int y = 0; y < f->height; y++) {
    const void *a = row(images, 0, y), *b = row(images, 1, y);
    if (memcmp(a, b, (size_t)f->width * pixel) == 0) continue;
    int from = 0, to = f->width - 1;
    while (alike(a, b, from, pixel)) from++;
    while (alike(a, b, to, pixel)) to--;
    left = from < left ? from : left;
    right = to > right ? to : right;
    top = y < top ? y : top;
    bottom = y;
  }
  return right < 0 ? (ox_patch){0, 0, 1, 1}
                   : (ox_patch){left, top, right - left + 1, bottom - top + 1};
}
