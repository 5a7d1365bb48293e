/* What must hold of a label that is shown: it touches no line, no label, not the edge. */
#ifndef LABEL_CHECK_H
#define LABEL_CHECK_H

#include "ox_test.h"
#include "paint_private.h"

/* Separating axes, written apart from the painter's own clipping. */
static inline bool segment_meets(ox_vec a, ox_vec b, const ox_label_box *r) {
  double x0 = r->x, x1 = r->x + r->width, y0 = r->y, y1 = r->y + r->height;
  if (fmax(a.x, b.x) <= x0 || fmin(a.x, b.x) >= x1) return false;
  if (fmax(a.y, b.y) <= y0 || fmin(a.y, b.y) >= y1) return false;
  double nx = a.y - b.y, ny = b.x - a.x, c = nx * a.x + ny * a.y;
  double lo = HUGE_VAL, hi = -HUGE_VAL;
  for (int i = 0; i < 4; i++) {
    double d = nx * (i & 1 ? x1 : x0) + ny * (i & 2 ? y1 : y0) - c;
    lo = fmin(lo, d);
    hi = fmax(hi, d);
  }
  return lo < 0 && hi > 0;
}

static inline bool boxes_meet(const ox_label_box *a, const ox_label_box *b) {
  return a->x < b->x + b->width && b->x < a->x + a->width && a->y < b->y + b->height &&
         b->y < a->y + a->height;
}

static inline void check_label(const ox_picture *p, size_t i, double width, double height,
                               const char *where) {
  ox_label_box box = ox_picture_label(p, i);
  if (box.dropped) return;
  if (box.x < 0 || box.y < 0 || box.x + box.width > width || box.y + box.height > height) {
    print_error("%s: \"%s\" leaves the board\n", where, box.text);
    fail();
  }
  for (size_t k = 0; k < i; k++) {
    ox_label_box other = ox_picture_label(p, k);
    if (other.dropped || !boxes_meet(&box, &other)) continue;
    print_error("%s: \"%s\" lies on \"%s\"\n", where, box.text, other.text);
    fail();
  }
  for (size_t k = 0; k < ox_picture_obstacle_count(p); k++) {
    ox_vec a, b;
    ox_picture_obstacle(p, k, &a, &b);
    if (!segment_meets(a, b, &box)) continue;
    print_error("%s: \"%s\" lies on a line\n", where, box.text);
    fail();
  }
}

#endif
