/* The keys of kept layers. Whoever gives such a layer something new to depend on adds it here; the
 * test that compares canvases with pictures drawn afresh over random cases tells who did not. */
#include "keys.h"

#include <string.h>

#include "paint_private.h"

static const uint64_t PRIME = 0x9E3779B97F4A7C15u; /* 2^64 by the golden ratio: an odd mixer */

static uint64_t mix(uint64_t h, uint64_t value) {
  h = (h ^ value) * PRIME;
  return h ^ (h >> 29);
}

static uint64_t mix_number(uint64_t h, double value) {
  uint64_t bits;
  value += 0.0; /* the two zeros are one */
  memcpy(&bits, &value, sizeof bits);
  return mix(h, bits);
}

static uint64_t mix_vec(uint64_t h, ox_vec v) { return mix_number(mix_number(h, v.x), v.y); }

static uint64_t mix_lines(uint64_t h, const ox_lines *lines) {
  h = mix(h, lines->count);
  for (size_t i = 0; i < lines->count; i++) {
    const ox_line_point *q = &lines->p[i];
    h = mix(mix_number(mix_number(h, q->x), q->y), q->move);
  }
  return h;
}

static uint64_t mix_map(uint64_t h, const ox_picture *p) {
  h = mix_vec(h, (ox_vec){p->map.x, p->map.y});
  return mix_vec(h, (ox_vec){p->map.width, p->map.height});
}

/* What every layer depends on. The map it is cut to is not part of it: that is done later. */
static uint64_t mix_board(uint64_t h, const ox_picture *p) {
  return mix_vec(mix(h, p->scene.palette), (ox_vec){p->width, p->height});
}

/* What lies between its layers, or moves, is not drawn with them: then there is none. */
static uint64_t ground_key(const ox_picture *p) {
  const ox_rose *r = &p->rose;
  const ox_flight *f = p->scene.flight;
  if (p->moves || p->scene.no_ground || p->scene.area || p->scene.spread) return 0;
  uint64_t h = mix(mix_map(mix_board(1, p), p), p->scene.layers);
  h = mix_vec(h, ox_to_dev(p, (ox_vec){0, 0}));
  h = mix_number(h, ox_dev_bearing(p, f->setup.inbound_true_deg));
  h = mix(mix(h, f->setup.sense > 0), (uint64_t)f->entry.kind * 2 + p->scene.hide_answer);
  h = mix_number(mix_number(mix_number(h, r->radius), r->inner), p->size.rose);
  return mix_lines(mix_lines(mix_lines(mix_vec(h, r->centre), &r->ring), &r->ticks), &r->spokes);
}

static uint64_t ink_key(const ox_picture *p) {
  const ox_ink *ink = p->scene.ink;
  if (!ink || ink->stroke_count == 0) return 0;
  uint64_t h = mix_vec(mix_board(2, p), ox_to_dev(p, (ox_vec){0, 0}));
  h = mix_vec(mix_vec(h, ox_to_dev(p, (ox_vec){1, 0})), ox_to_dev(p, (ox_vec){0, 1}));
  h = mix_number(mix_number(h, p->size.pen_thin), p->size.pen_broad);
  if (!ox_ink_on_whole_board(p)) h = mix_map(h, p);
  for (size_t i = 0; i < ink->stroke_count; i++) {
    const ox_ink_stroke *s = &ink->strokes[i];
    h = mix(mix(h, (uint64_t)s->colour * 2 + (uint64_t)s->width), s->count);
    for (size_t k = 0; k < s->count; k++) h = mix_vec(h, s->points_nm[k]);
  }
  return h;
}

uint64_t ox_layer_key(ox_kept_layer layer, const ox_picture *p) {
  switch (layer) {
  case OX_KEPT_GROUND: return ground_key(p);
  case OX_KEPT_INK: return ink_key(p);
  case OX_KEPT_COUNT: break;
  }
  return 0;
}
