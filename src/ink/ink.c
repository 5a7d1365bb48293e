/* Strokes in memory. Room grows by doubling, and is taken before anything changes, so that ink is
 * never half altered when there is no more of it. */
#include "oxbow/ink.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { ROOM_AT_FIRST = 8 };

const char *ox_ink_colour_name(ox_ink_colour colour) {
  switch (colour) {
    case OX_INK_VERMILLION: return "vermillion";
    case OX_INK_BLUE: return "blue";
    case OX_INK_BLACK:
    case OX_INK_COLOUR_COUNT: break;
  }
  return "black";
}

const char *ox_ink_width_name(ox_ink_width width) {
  return width == OX_INK_BROAD ? "broad" : "thin";
}

/* --- making and freeing --- */

ox_ink *ox_ink_new(void) { return calloc(1, sizeof(ox_ink)); }

void ox_ink_clear(ox_ink *ink) {
  for (size_t i = 0; i < ink->stroke_count; i++) free(ink->strokes[i].points_nm);
  free(ink->strokes);
  *ink = (ox_ink){0};
}

void ox_ink_free(ox_ink *ink) {
  if (!ink) return;
  ox_ink_clear(ink);
  free(ink);
}

ox_ink *ox_ink_copy(const ox_ink *ink) {
  ox_ink *copy = ox_ink_new();
  for (size_t i = 0; copy && ink && i < ink->stroke_count; i++)
    if (ox_ink_append(copy, &ink->strokes[i]) == OX_ERROR) {
      ox_ink_free(copy);
      return NULL;
    }
  return copy;
}

/* --- questions --- */

bool ox_ink_is_empty(const ox_ink *ink) { return !ink || ink->stroke_count == 0; }

size_t ox_ink_point_count(const ox_ink *ink) {
  size_t count = 0;
  for (size_t i = 0; ink && i < ink->stroke_count; i++) count += ink->strokes[i].count;
  return count;
}

static bool same_stroke(const ox_ink_stroke *a, const ox_ink_stroke *b) {
  if (a->colour != b->colour || a->width != b->width || a->count != b->count) return false;
  for (size_t i = 0; i < a->count; i++)
    if (a->points_nm[i].x != b->points_nm[i].x || a->points_nm[i].y != b->points_nm[i].y)
      return false;
  return true;
}

bool ox_ink_equal(const ox_ink *a, const ox_ink *b) {
  if (ox_ink_is_empty(a) || ox_ink_is_empty(b)) return ox_ink_is_empty(a) && ox_ink_is_empty(b);
  if (a->stroke_count != b->stroke_count) return false;
  for (size_t i = 0; i < a->stroke_count; i++)
    if (!same_stroke(&a->strokes[i], &b->strokes[i])) return false;
  return true;
}

bool ox_ink_bounds(const ox_ink *ink, ox_vec *min_nm, ox_vec *max_nm) {
  if (ox_ink_point_count(ink) == 0) return false;
  ox_vec low = ink->strokes[0].points_nm[0], high = low;
  for (size_t i = 0; i < ink->stroke_count; i++)
    for (size_t k = 0; k < ink->strokes[i].count; k++) {
      ox_vec p = ink->strokes[i].points_nm[k];
      low = (ox_vec){fmin(low.x, p.x), fmin(low.y, p.y)};
      high = (ox_vec){fmax(high.x, p.x), fmax(high.y, p.y)};
    }
  *min_nm = low;
  *max_nm = high;
  return true;
}

/* --- adding --- */

static bool can_hold(ox_vec p) {
  return fabs(p.x) <= OX_INK_REACH_NM && fabs(p.y) <= OX_INK_REACH_NM; /* NaN is not */
}

/* A division rounds correctly, so the result is the double that the decimal number reads as; and
 * -0 becomes 0. */
static ox_vec on_grain(ox_vec p) {
  return (ox_vec){round(p.x * 1e4) / 1e4 + 0.0, round(p.y * 1e4) / 1e4 + 0.0};
}

/* Room for one more of `size` bytes: the block, perhaps moved, or NULL and all is as it was. */
static void *with_room(void *block, size_t count, size_t *room, size_t size) {
  if (count < *room) return block;
  size_t more = *room ? 2 * *room : ROOM_AT_FIRST;
  void *moved = realloc(block, more * size);
  if (moved) *room = more;
  return moved;
}

/* Takes over a stroke whose points have memory of their own. */
static bool take_stroke(ox_ink *ink, ox_ink_stroke stroke) {
  ox_ink_stroke *strokes =
      with_room(ink->strokes, ink->stroke_count, &ink->room, sizeof *strokes);
  if (!strokes) return false;
  ink->strokes = strokes;
  ink->strokes[ink->stroke_count++] = stroke;
  return true;
}

static bool has_place(const ox_ink *ink, size_t points) {
  return ink->stroke_count < OX_INK_STROKES_MAX && points <= OX_INK_POINTS_MAX &&
         ox_ink_point_count(ink) <= OX_INK_POINTS_MAX - points;
}

ox_status ox_ink_append(ox_ink *ink, const ox_ink_stroke *stroke) {
  if ((int)stroke->colour < 0 || stroke->colour >= OX_INK_COLOUR_COUNT ||
      (int)stroke->width < 0 || stroke->width >= OX_INK_WIDTH_COUNT)
    return OX_ERROR;
  if (stroke->count < 1 || !has_place(ink, stroke->count)) return OX_ERROR;
  for (size_t i = 0; i < stroke->count; i++)
    if (!can_hold(stroke->points_nm[i])) return OX_ERROR;
  ox_ink_stroke copy = *stroke;
  copy.room = stroke->count;
  copy.points_nm = malloc(copy.room * sizeof *copy.points_nm);
  if (!copy.points_nm) return OX_ERROR;
  for (size_t i = 0; i < copy.count; i++) copy.points_nm[i] = on_grain(stroke->points_nm[i]);
  if (take_stroke(ink, copy)) return OX_OK;
  free(copy.points_nm);
  return OX_ERROR;
}

ox_status ox_ink_begin(ox_ink *ink, ox_ink_colour colour, ox_ink_width width, ox_vec point_nm) {
  return ox_ink_append(ink, &(ox_ink_stroke){colour, width, 1, &point_nm, 0});
}

ox_status ox_ink_extend(ox_ink *ink, ox_vec point_nm) {
  if (ink->stroke_count == 0 || !can_hold(point_nm)) return OX_ERROR;
  if (ox_ink_point_count(ink) >= OX_INK_POINTS_MAX) return OX_ERROR;
  ox_ink_stroke *last = &ink->strokes[ink->stroke_count - 1];
  ox_vec p = on_grain(point_nm), before = last->points_nm[last->count - 1];
  if (p.x == before.x && p.y == before.y) return OX_OK;
  ox_vec *points = with_room(last->points_nm, last->count, &last->room, sizeof *points);
  if (!points) return OX_ERROR;
  last->points_nm = points;
  last->points_nm[last->count++] = p;
  return OX_OK;
}

void ox_ink_drop_last(ox_ink *ink) {
  if (ink->stroke_count > 0) free(ink->strokes[--ink->stroke_count].points_nm);
}
