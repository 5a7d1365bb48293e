/* Layers that can be kept as they were drawn, and the keys that tell whether they still are so. */
#ifndef PAINT_KEYS_H
#define PAINT_KEYS_H

#include <cairo.h>
#include <stdbool.h>
#include <stdint.h>

#include "oxbow/picture.h"

/* The ground is the board itself and the layers right over it, together and opaque. */
typedef enum {
  OX_KEPT_GROUND, OX_KEPT_INK, OX_KEPT_COUNT, OX_NOT_KEPT = OX_KEPT_COUNT
} ox_kept_layer;

/* How one layer is drawn. */
typedef struct {
  void (*draw)(const ox_picture *p, cairo_t *cr);
  bool in_map;
  ox_kept_layer kept;
} ox_layer_drawing;

/* The clip that a layer is drawn in. */
void ox_layer_drawing_begin(const ox_layer_drawing *how, const ox_picture *p, cairo_t *cr);

/* Asked before a layer is drawn; true: it stands there already. NULL: nothing is remembered. */
typedef struct {
  bool (*draw)(void *data, const ox_layer_drawing *how, const ox_picture *p, cairo_t *cr);
  void *data;
} ox_layer_memory;
void ox_picture_draw_still_with(ox_picture *p, cairo_t *cr, const ox_layer_memory *memory);
/* All that is kept as the ground. */
void ox_picture_draw_ground(const ox_picture *p, cairo_t *cr);

/* Over everything that such a layer's look depends on; 0: there is nothing to be kept. */
uint64_t ox_layer_key(ox_kept_layer layer, const ox_picture *p);

#endif
