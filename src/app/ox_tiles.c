/* An image shown in tiles. */
#include "ox_tiles.h"

#include <gsk/gskcairorenderer.h>
#include <string.h>

enum { SIDE = 128 };

struct ox_tiles {
  int width, height, across, down; /* pixels; tiles */
  graphene_rect_t bounds;
  ox_tiles_kind kind;
  GskRenderNode **node; /* a tile each */
  guint32 *pixels;      /* what they show, tile by tile */
  guint changed;
};

ox_tiles *ox_tiles_new(void) { return g_new0(ox_tiles, 1); }

static void forget(ox_tiles *self) {
  for (int i = 0; i < self->across * self->down; i++)
    g_clear_pointer(&self->node[i], gsk_render_node_unref);
  g_clear_pointer(&self->node, g_free);
  g_clear_pointer(&self->pixels, g_free);
  self->across = self->down = 0;
}

void ox_tiles_free(ox_tiles *self) {
  if (!self) return;
  forget(self);
  g_free(self);
}

static void fit_to(ox_tiles *self, int width, int height, const graphene_rect_t *bounds,
                   ox_tiles_kind kind) {
  if (self->node && self->width == width && self->height == height && self->kind == kind &&
      graphene_rect_equal(&self->bounds, bounds))
    return;
  forget(self);
  self->width = width;
  self->height = height;
  self->bounds = *bounds;
  self->kind = kind;
  self->across = (width + SIDE - 1) / SIDE;
  self->down = (height + SIDE - 1) / SIDE;
  self->node = g_new0(GskRenderNode *, (gsize)self->across * (gsize)self->down);
  self->pixels = g_new(guint32, (gsize)self->across * (gsize)self->down * SIDE * SIDE);
}

/* Copies the tile where it differs; the rows before the first that does are not written. */
static gboolean take(guint32 *kept, const guchar *pixels, int stride, int width, int height) {
  gsize bytes = (gsize)width * sizeof *kept;
  int y = 0;
  while (y < height && memcmp(kept + y * SIDE, pixels + (gssize)y * stride, bytes) == 0) y++;
  if (y == height) return FALSE;
  for (; y < height; y++) memcpy(kept + y * SIDE, pixels + (gssize)y * stride, bytes);
  return TRUE;
}

/* An image of its own, which the node then owns alone: cairo need not copy it. */
static GskRenderNode *cairo_node(const guint32 *kept, int width, int height,
                                 const graphene_rect_t *at) {
  GskRenderNode *node = gsk_cairo_node_new(at);
  cairo_surface_t *image = cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height);
  guchar *pixels = cairo_image_surface_get_data(image);
  int stride = cairo_image_surface_get_stride(image);
  for (int y = 0; pixels && y < height; y++)
    memcpy(pixels + (gssize)y * stride, kept + y * SIDE, (gsize)width * sizeof *kept);
  cairo_surface_mark_dirty(image);
  cairo_t *cr = gsk_cairo_node_get_draw_context(node);
  cairo_translate(cr, (double)at->origin.x, (double)at->origin.y);
  cairo_scale(cr, (double)at->size.width / width, (double)at->size.height / height);
  cairo_set_source_surface(cr, image, 0.0, 0.0);
  cairo_pattern_set_filter(cairo_get_source(cr), CAIRO_FILTER_NEAREST);
  cairo_set_operator(cr, CAIRO_OPERATOR_SOURCE);
  cairo_rectangle(cr, 0.0, 0.0, width, height);
  cairo_fill(cr);
  cairo_surface_destroy(image);
  cairo_destroy(cr);
  return node;
}

static GskRenderNode *node_of(ox_tiles *self, const guint32 *kept, int x, int y, int width,
                              int height) {
  float across = self->bounds.size.width / (float)self->width;
  float down = self->bounds.size.height / (float)self->height;
  graphene_rect_t at =
      GRAPHENE_RECT_INIT(self->bounds.origin.x + (float)x * across,
                         self->bounds.origin.y + (float)y * down, (float)width * across,
                         (float)height * down);
  if (self->kind == OX_TILES_PICTURES) return cairo_node(kept, width, height, &at);
  GBytes *bytes = g_bytes_new(kept, ((gsize)(height - 1) * SIDE + (gsize)width) * sizeof *kept);
  GdkTexture *texture =
      gdk_memory_texture_new(width, height, GDK_MEMORY_DEFAULT, bytes, SIDE * sizeof *kept);
  GskRenderNode *node = gsk_texture_node_new(texture, &at);
  g_object_unref(texture);
  g_bytes_unref(bytes);
  return node;
}

ox_tiles_kind ox_tiles_kind_for(GtkWidget *widget) {
  GtkNative *native = gtk_widget_get_native(widget);
  GskRenderer *renderer = native ? gtk_native_get_renderer(native) : NULL;
  return GSK_IS_CAIRO_RENDERER(renderer) ? OX_TILES_PICTURES : OX_TILES_TEXTURES;
}

void ox_tiles_update(ox_tiles *self, cairo_surface_t *image, const graphene_rect_t *bounds,
                     ox_tiles_kind kind) {
  const guchar *pixels = cairo_image_surface_get_data(image);
  int stride = cairo_image_surface_get_stride(image);
  fit_to(self, cairo_image_surface_get_width(image), cairo_image_surface_get_height(image), bounds,
         kind);
  self->changed = 0;
  for (int i = 0; i < self->across * self->down; i++) {
    int x = i % self->across * SIDE, y = i / self->across * SIDE;
    int width = MIN(SIDE, self->width - x), height = MIN(SIDE, self->height - y);
    guint32 *kept = self->pixels + (gsize)i * SIDE * SIDE;
    gboolean differs = take(kept, pixels + (gssize)y * stride + 4 * x, stride, width, height);
    if (!differs && self->node[i]) continue;
    g_clear_pointer(&self->node[i], gsk_render_node_unref);
    self->node[i] = node_of(self, kept, x, y, width, height);
    self->changed++;
  }
}

void ox_tiles_append(ox_tiles *self, GtkSnapshot *snapshot) {
  for (int i = 0; i < self->across * self->down; i++)
    gtk_snapshot_append_node(snapshot, self->node[i]);
}

guint ox_tiles_changed(const ox_tiles *self) { return self->changed; }
