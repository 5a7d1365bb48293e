/* The look of the time line. The hues are those of the picture: the circuits blue, the entry
 * green, adrift vermillion; no meaning hangs on them alone, for turns are hatched, what is adrift
 * is dotted, and every stretch has its name. */
#include "ox_time_line_draw.h"

#include <math.h>

#define HATCH_PX 5
#define DOTS_PX 5.0
#define EDGE_PX 1.0

typedef struct {
  unsigned fill[OX_STRETCH_KIND_COUNT], texture[OX_STRETCH_KIND_COUNT], text;
} hues;

static const hues light = {
    .fill = {[OX_STRETCH_ARRIVAL] = 0xe9ebee, [OX_STRETCH_ENTRY] = 0xcfeee1,
             [OX_STRETCH_OUTBOUND] = 0xe0f0fb, [OX_STRETCH_INBOUND] = 0xb5dbf5,
             [OX_STRETCH_ADRIFT] = 0xfbdcc7},
    .texture = {[OX_STRETCH_ARRIVAL] = 0x6e747c, [OX_STRETCH_ENTRY] = 0x00805c,
                [OX_STRETCH_OUTBOUND] = 0x3d8fc4, [OX_STRETCH_INBOUND] = 0x0a6aa6,
                [OX_STRETCH_ADRIFT] = 0xb04e00},
    .text = 0x16191d};

static const hues dark = {
    .fill = {[OX_STRETCH_ARRIVAL] = 0x33373c, [OX_STRETCH_ENTRY] = 0x14402f,
             [OX_STRETCH_OUTBOUND] = 0x182f42, [OX_STRETCH_INBOUND] = 0x144a73,
             [OX_STRETCH_ADRIFT] = 0x56270b},
    .texture = {[OX_STRETCH_ARRIVAL] = 0x989fa8, [OX_STRETCH_ENTRY] = 0x2fb88d,
                [OX_STRETCH_OUTBOUND] = 0x5aa9de, [OX_STRETCH_INBOUND] = 0x64b5ee,
                [OX_STRETCH_ADRIFT] = 0xef8238},
    .text = 0xf4f4f4};

static GdkRGBA rgb(unsigned hex) {
  return (GdkRGBA){(float)(hex >> 16 & 0xff) / 255.0F, (float)(hex >> 8 & 0xff) / 255.0F,
                   (float)(hex & 0xff) / 255.0F, 1.0F};
}

/* One piece of the hatching, drawn once: stroking it anew in every stretch took longer than all the
 * rest of the line. */
static cairo_pattern_t *hatch_new(int scale) {
  int side = HATCH_PX * scale;
  cairo_surface_t *piece = cairo_image_surface_create(CAIRO_FORMAT_A8, side, side);
  cairo_t *cr = cairo_create(piece);
  cairo_set_line_width(cr, scale);
  for (int x = -2 * side; x <= side; x += side) {
    cairo_move_to(cr, x, 2 * side);
    cairo_line_to(cr, x + 3 * side, -side);
  }
  cairo_stroke(cr);
  cairo_destroy(cr);
  cairo_surface_set_device_scale(piece, scale, scale);
  cairo_pattern_t *pattern = cairo_pattern_create_for_surface(piece);
  cairo_surface_destroy(piece);
  cairo_pattern_set_extend(pattern, CAIRO_EXTEND_REPEAT);
  cairo_pattern_set_filter(pattern, CAIRO_FILTER_NEAREST);
  return pattern;
}

void ox_time_line_look_clear(ox_time_line_look *look) {
  g_clear_pointer(&look->hatch, cairo_pattern_destroy);
}

void ox_time_line_look_choose(ox_time_line_look *look, const GdkRGBA *text, bool high_contrast,
                              int scale) {
  bool on_dark = text->red + text->green + text->blue > 1.5F;
  const hues *h = on_dark ? &dark : &light;
  GdkRGBA ground = rgb(on_dark ? 0x000000 : 0xffffff);
  for (int i = 0; i < OX_STRETCH_KIND_COUNT; i++) {
    look->fill[i] = high_contrast ? ground : rgb(h->fill[i]);
    look->texture[i] = high_contrast ? *text : rgb(h->texture[i]);
  }
  look->text = high_contrast ? *text : rgb(h->text);
  if (look->hatch && look->scale == scale) return;
  ox_time_line_look_clear(look);
  look->hatch = hatch_new(scale);
  look->scale = scale;
}

static void path_of(cairo_t *cr, ox_time_line_box at) {
  cairo_rectangle(cr, at.x, at.y, at.width, at.height);
}

static void dots(cairo_t *cr, ox_time_line_box at) {
  for (double y = at.y + 2.5; y < at.y + at.height; y += DOTS_PX)
    for (double x = floor(at.x / DOTS_PX) * DOTS_PX; x < at.x + at.width; x += DOTS_PX)
      cairo_rectangle(cr, x - 0.75, y - 0.75, 1.5, 1.5);
  cairo_fill(cr);
}

void ox_time_line_draw_stretch(cairo_t *cr, const ox_time_line_look *look,
                               const ox_stretch *stretch, ox_time_line_box at) {
  cairo_save(cr);
  path_of(cr, at);
  cairo_clip(cr);
  gdk_cairo_set_source_rgba(cr, &look->fill[stretch->kind]);
  cairo_paint(cr);
  gdk_cairo_set_source_rgba(cr, &look->texture[stretch->kind]);
  if (stretch->turn) cairo_mask(cr, look->hatch); /* one grid for the whole line */
  if (stretch->kind == OX_STRETCH_ADRIFT) dots(cr, at);
  cairo_restore(cr);
  gdk_cairo_set_source_rgba(cr, &look->texture[stretch->kind]);
  cairo_set_line_width(cr, EDGE_PX);
  cairo_rectangle(cr, at.x + 0.5, at.y + 0.5, at.width, at.height); /* through whole pixels */
  cairo_stroke(cr);
}

void ox_time_line_draw_ground(cairo_t *cr, const ox_time_line_look *look,
                              const ox_stretch *stretch, ox_time_line_box at) {
  if (!stretch->turn && stretch->kind != OX_STRETCH_ADRIFT) return;
  gdk_cairo_set_source_rgba(cr, &look->fill[stretch->kind]);
  path_of(cr, at);
  cairo_fill(cr);
}

static void triangle(cairo_t *cr, double x, double y, double size) {
  cairo_move_to(cr, x, y);
  cairo_line_to(cr, x + size, y + 1.7 * size);
  cairo_line_to(cr, x - size, y + 1.7 * size);
  cairo_close_path(cr);
}

void ox_time_line_draw_event(cairo_t *cr, const ox_time_line_look *look, ox_event_kind kind,
                             double x, double y, double height) {
  double r = 0.36 * height;
  cairo_save(cr);
  cairo_new_path(cr);
  gdk_cairo_set_source_rgba(cr, &look->text);
  cairo_set_line_width(cr, 1.2);
  switch (kind) {
  case OX_EVENT_FIX:
    triangle(cr, x, y + 1.0, 1.15 * r);
    cairo_fill(cr);
    break;
  case OX_EVENT_ABEAM:
    cairo_rectangle(cr, x - r, y + 0.5 * height - r, 2.0 * r, 2.0 * r);
    cairo_fill(cr);
    break;
  case OX_EVENT_CLOCK_START:
    cairo_arc(cr, x, y + 0.5 * height, r, 0.0, 2.0 * G_PI);
    cairo_stroke(cr);
    break;
  case OX_EVENT_INTERCEPT:
    cairo_move_to(cr, x, y + 0.5 * height - 1.2 * r);
    cairo_line_to(cr, x + 1.2 * r, y + 0.5 * height);
    cairo_line_to(cr, x, y + 0.5 * height + 1.2 * r);
    cairo_line_to(cr, x - 1.2 * r, y + 0.5 * height);
    cairo_close_path(cr);
    cairo_fill(cr);
    break;
  case OX_EVENT_TURN_BEGIN:
  case OX_EVENT_WINGS_LEVEL:
  case OX_EVENT_KIND_COUNT:
    cairo_move_to(cr, x, y + 1.0);
    cairo_line_to(cr, x, y + 0.75 * height);
    cairo_stroke(cr);
    break;
  }
  cairo_restore(cr);
}

void ox_time_line_draw_position(cairo_t *cr, const ox_time_line_look *look, double x, double top,
                                double bottom) {
  const GdkRGBA *ground = &look->fill[OX_STRETCH_ARRIVAL];
  cairo_move_to(cr, x, top);
  cairo_line_to(cr, x, bottom);
  cairo_set_line_width(cr, 5.0);
  gdk_cairo_set_source_rgba(cr, ground);
  cairo_stroke_preserve(cr);
  cairo_set_line_width(cr, 2.0);
  gdk_cairo_set_source_rgba(cr, &look->text);
  cairo_stroke(cr);
  cairo_move_to(cr, x - 6.0, top);
  cairo_line_to(cr, x + 6.0, top);
  cairo_line_to(cr, x, top + 8.0);
  cairo_close_path(cr);
  cairo_fill(cr);
}
