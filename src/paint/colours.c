/* Which few colours a drawing is shown in. */
#include "colours.h"

#include <stdbool.h>
#include <stdlib.h>

#define KEPT_AS_THEY_ARE 128
static const uint32_t RGB = 0xffffffu;

typedef struct {
  uint32_t colour;
  unsigned count;
} shade;

typedef struct {
  size_t begin, end; /* of the shades */
  uint64_t weight;
  int channel, spread; /* shift of the broadest channel, and how broad it is */
} box;

void ox_colours_open(ox_colours *c) {
  *c = (ox_colours){.counted = g_hash_table_new(NULL, NULL), .known = g_hash_table_new(NULL, NULL)};
}

void ox_colours_close(ox_colours *c) {
  g_hash_table_unref(c->counted);
  g_hash_table_unref(c->known);
}

static void count(ox_colours *c, uint32_t colour, unsigned pixels) {
  gpointer key = GUINT_TO_POINTER(colour);
  unsigned before = GPOINTER_TO_UINT(g_hash_table_lookup(c->counted, key));
  unsigned sum = before > UINT32_MAX - pixels ? UINT32_MAX : before + pixels;
  g_hash_table_insert(c->counted, key, GUINT_TO_POINTER(sum));
}

/* Neighbours are mostly alike, so runs are counted. */
void ox_colours_see(ox_colours *c, const uint32_t *row, int width) {
  for (int x = 0; x < width;) {
    int from = x;
    while (x < width && ((row[x] ^ row[from]) & RGB) == 0) x++;
    count(c, row[from] & RGB, (unsigned)(x - from));
  }
}

/* --- choosing ------------------------------------------------------------------------------ */

static int by_count(const void *a, const void *b) {
  const shade *s = a, *t = b;
  if (s->count != t->count) return s->count < t->count ? 1 : -1;
  return s->colour < t->colour ? -1 : s->colour > t->colour;
}

static int channel_of(uint32_t colour, int shift) {
  return (int)(colour >> shift & 0xffu);
}

static int compare_by(const shade *s, const shade *t, int shift) {
  int a = channel_of(s->colour, shift), b = channel_of(t->colour, shift);
  if (a != b) return a < b ? -1 : 1;
  return s->colour < t->colour ? -1 : s->colour > t->colour;
}

static int by_red(const void *a, const void *b) { return compare_by(a, b, 16); }
static int by_green(const void *a, const void *b) { return compare_by(a, b, 8); }
static int by_blue(const void *a, const void *b) { return compare_by(a, b, 0); }

static void measure(const shade *shades, box *b) {
  b->weight = 0;
  b->spread = -1;
  for (size_t i = b->begin; i < b->end; i++) b->weight += shades[i].count;
  for (int shift = 16; shift >= 0; shift -= 8) {
    int low = 255, high = 0;
    for (size_t i = b->begin; i < b->end; i++) {
      int value = channel_of(shades[i].colour, shift);
      low = value < low ? value : low;
      high = value > high ? value : high;
    }
    if (high - low <= b->spread) continue;
    b->spread = high - low;
    b->channel = shift;
  }
}

/* At the middle of the weight, with at least one shade on either side. */
static void cut(shade *shades, box *b, box *other) {
  int (*by)(const void *, const void *) = b->channel == 16  ? by_red
                                          : b->channel == 8 ? by_green
                                                            : by_blue;
  qsort(shades + b->begin, b->end - b->begin, sizeof *shades, by);
  uint64_t half = 0;
  size_t at = b->begin;
  while (at + 2 < b->end && (half += shades[at].count) < b->weight / 2) at++;
  *other = (box){.begin = at + 1, .end = b->end};
  b->end = at + 1;
  measure(shades, b);
  measure(shades, other);
}

static uint32_t mean_of(const shade *shades, const box *b) {
  uint32_t mean = 0;
  for (int shift = 16; shift >= 0; shift -= 8) {
    uint64_t sum = 0;
    for (size_t i = b->begin; i < b->end; i++)
      sum += (uint64_t)channel_of(shades[i].colour, shift) * shades[i].count;
    mean |= (uint32_t)((sum + b->weight / 2) / b->weight) << shift;
  }
  return mean;
}

/* The box to cut next: where the most pixels are the most unlike. -1: every box is one colour. */
static int broadest(const box *boxes, int count) {
  int best = -1;
  uint64_t most = 0;
  for (int i = 0; i < count; i++) {
    uint64_t worth = boxes[i].weight * (uint64_t)(boxes[i].spread > 0 ? boxes[i].spread : 0);
    if (worth <= most) continue;
    most = worth;
    best = i;
  }
  return best;
}

static void cut_all(ox_colours *c, shade *shades, size_t shade_count) {
  box boxes[OX_COLOURS_MOST] = {{.begin = 0, .end = shade_count}};
  int most = OX_COLOURS_MOST - c->count, count = 1, next;
  measure(shades, &boxes[0]);
  while (count < most && (next = broadest(boxes, count)) >= 0) {
    cut(shades, &boxes[next], &boxes[count]);
    count++;
  }
  for (int i = 0; i < count; i++) c->colour[c->count++] = mean_of(shades, &boxes[i]);
}

void ox_colours_choose(ox_colours *c) {
  size_t found = g_hash_table_size(c->counted), used = 0;
  shade *shades = g_new(shade, found + 1);
  GHashTableIter iter;
  gpointer key, value;
  g_hash_table_iter_init(&iter, c->counted);
  while (g_hash_table_iter_next(&iter, &key, &value))
    shades[used++] = (shade){(uint32_t)GPOINTER_TO_UINT(key), GPOINTER_TO_UINT(value)};
  qsort(shades, used, sizeof *shades, by_count);
  size_t kept = used <= OX_COLOURS_MOST ? used : KEPT_AS_THEY_ARE;
  for (size_t i = 0; i < kept; i++) c->colour[c->count++] = shades[i].colour;
  if (kept < used) cut_all(c, shades + kept, used - kept);
  g_free(shades);
  for (int i = c->count - 1; i >= 0; i--)
    g_hash_table_insert(c->known, GUINT_TO_POINTER(c->colour[i]), GINT_TO_POINTER(i + 1));
}

/* --- finding ------------------------------------------------------------------------------- */

/* The eye tells greens apart best, then reds. */
static int distance(uint32_t a, uint32_t b) {
  static const int weight[3] = {2, 4, 3}; /* blue, green, red */
  int sum = 0;
  for (int i = 0; i < 3; i++) {
    int d = channel_of(a, 8 * i) - channel_of(b, 8 * i);
    sum += weight[i] * d * d;
  }
  return sum;
}

int ox_colours_index(ox_colours *c, uint32_t pixel) {
  uint32_t colour = pixel & RGB;
  int known = GPOINTER_TO_INT(g_hash_table_lookup(c->known, GUINT_TO_POINTER(colour)));
  if (known > 0) return known - 1;
  int best = 0;
  for (int i = 1; i < c->count; i++)
    if (distance(c->colour[i], colour) < distance(c->colour[best], colour)) best = i;
  g_hash_table_insert(c->known, GUINT_TO_POINTER(colour), GINT_TO_POINTER(best + 1));
  return best;
}
