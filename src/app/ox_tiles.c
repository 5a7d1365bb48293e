/* An image shown in tiles. */
#include "ox_tiles.h"

#include <gsk/gskcairorenderer.h>
#include <string.h>

/* Textures are squares. Pictures are bands right across: the renderer's way with a picture costs
 * little a pixel and much a picture, and much more where what is to be drawn has many corners. */
enum { SIDE = 128, BAND = 64 };

struct ox_tiles {
  int width, height; /* pixels */
  int tile_width, tile_height, across, down;
  graphene_rect_t bounds;
  ox_tiles_kind kind;
  GskRenderNode **node;    /* a tile each */
  cairo_surface_t **image; /* a tile each over its pixels; NULL: not needed yet */
  guint32 *pixels;         /* what they show, tile by tile */
  guint changed;
};

ox_tiles *ox_tiles_new(void) { return g_new0(ox_tiles, 1); }

static gsize pixels_a_tile(const ox_tiles *self) {
  return (gsize)self->tile_width * (gsize)self->tile_height;
}

/* A node that somebody still has gets a copy of its pixels from cairo when its image goes. */
static void forget(ox_tiles *self) {
  for (int i = 0; i < self->across * self->down; i++) {
    g_clear_pointer(&self->node[i], gsk_render_node_unref);
    g_clear_pointer(&self->image[i], cairo_surface_destroy);
  }
  g_clear_pointer(&self->node, g_free);
  g_clear_pointer(&self->image, g_free);
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
  self->tile_width = kind == OX_TILES_PICTURES ? width : SIDE;
  self->tile_height = kind == OX_TILES_PICTURES ? BAND : SIDE;
  self->across = (width + self->tile_width - 1) / self->tile_width;
  self->down = (height + self->tile_height - 1) / self->tile_height;
  gsize count = (gsize)self->across * (gsize)self->down;
  self->node = g_new0(GskRenderNode *, count);
  self->image = g_new0(cairo_surface_t *, count);
  self->pixels = g_new(guint32, count * pixels_a_tile(self));
}

/* Copies the tile where it differs; the rows before the first that does are not written. */
static gboolean take(guint32 *kept, int room, const guchar *pixels, int stride, int width,
                     int height) {
  gsize bytes = (gsize)width * sizeof *kept;
  int y = 0;
  while (y < height && memcmp(kept + y * room, pixels + (gssize)y * stride, bytes) == 0) y++;
  if (y == height) return FALSE;
  for (; y < height; y++) memcpy(kept + y * room, pixels + (gssize)y * stride, bytes);
  return TRUE;
}

/* The node draws the pixels where they are. They change only when the tile gets another node, and
 * behind cairo's back: told of it, it would first make a copy for the old node, which nobody draws
 * any more. */
static GskRenderNode *cairo_node(ox_tiles *self, int i, guint32 *kept, int width, int height,
                                 const graphene_rect_t *at) {
  GskRenderNode *node = gsk_cairo_node_new(at);
  if (!self->image[i])
    self->image[i] = cairo_image_surface_create_for_data((guchar *)kept, CAIRO_FORMAT_RGB24, width,
                                                         height, 4 * self->tile_width);
  cairo_t *cr = gsk_cairo_node_get_draw_context(node);
  cairo_translate(cr, (double)at->origin.x, (double)at->origin.y);
  cairo_scale(cr, (double)at->size.width / width, (double)at->size.height / height);
  cairo_set_source_surface(cr, self->image[i], 0.0, 0.0);
  cairo_pattern_set_filter(cairo_get_source(cr), CAIRO_FILTER_NEAREST);
  cairo_set_operator(cr, CAIRO_OPERATOR_SOURCE);
  cairo_rectangle(cr, 0.0, 0.0, width, height);
  cairo_fill(cr);
  cairo_destroy(cr);
  return node;
}

static GskRenderNode *node_of(ox_tiles *self, int i, guint32 *kept, int x, int y, int width,
                              int height) {
  float across = self->bounds.size.width / (float)self->width;
  float down = self->bounds.size.height / (float)self->height;
  graphene_rect_t at =
      GRAPHENE_RECT_INIT(self->bounds.origin.x + (float)x * across,
                         self->bounds.origin.y + (float)y * down, (float)width * across,
                         (float)height * down);
  if (self->kind == OX_TILES_PICTURES) return cairo_node(self, i, kept, width, height, &at);
  gsize stride = (gsize)self->tile_width * sizeof *kept;
  GBytes *bytes = g_bytes_new(kept, (gsize)(height - 1) * stride + (gsize)width * sizeof *kept);
  GdkTexture *texture =
      gdk_memory_texture_new(width, height, GDK_MEMORY_DEFAULT, bytes, stride);
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
    int x = i % self->across * self->tile_width, y = i / self->across * self->tile_height;
    int width = MIN(self->tile_width, self->width - x);
    int height = MIN(self->tile_height, self->height - y);
    guint32 *kept = self->pixels + (gsize)i * pixels_a_tile(self);
    gboolean differs =
        take(kept, self->tile_width, pixels + (gssize)y * stride + 4 * x, stride, width, height);
    if (!differs && self->node[i]) continue;
    g_clear_pointer(&self->node[i], gsk_render_node_unref);
    self->node[i] = node_of(self, i, kept, x, y, width, height);
    self->changed++;
  }
}

void ox_tiles_append(ox_tiles *self, GtkSnapshot *snapshot) {
  for (int i = 0; i < self->across * self->down; i++)
    gtk_snapshot_append_node(snapshot, self->node[i]);
}

guint ox_tiles_changed(const ox_tiles *self) { return self->changed; }
