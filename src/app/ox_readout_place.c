/* Where a readout stands. */
#include "ox_readout_place.h"

#include <math.h>

#define LITTLE 0.02 /* of the readout's area */
#define PUSHED 0.1  /* as bad as covering so much of it with labels */

typedef struct {
  ox_vec at, size;
} box;

static double along(double anchor, double away, double size, double room, bool before,
                    bool *pushed) {
  double at = before ? anchor - away - size : anchor + away;
  double kept = fmax(fmin(at, room - OX_READOUT_EDGE - size), OX_READOUT_EDGE);
  *pushed |= kept != at;
  return kept;
}

static double shared(double a, double a_size, double b, double b_size) {
  return fmax(fmin(a + a_size, b + b_size) - fmax(a, b), 0.0);
}

static double covered(const box *readout, const ox_picture *picture) {
  double area = 0.0;
  size_t count = picture ? ox_picture_label_count(picture) : 0;
  for (size_t i = 0; i < count; i++) {
    ox_label_box label = ox_picture_label(picture, i);
    if (!label.dropped)
      area += shared(readout->at.x, readout->size.x, label.x, label.width) *
              shared(readout->at.y, readout->size.y, label.y, label.height);
  }
  return area;
}

/* Pushed back from the board's edge, over the very thing that it is about. */
static bool hides(const box *readout, ox_vec anchor, double away) {
  return shared(readout->at.x, readout->size.x, anchor.x - away, 2.0 * away) > away &&
         shared(readout->at.y, readout->size.y, anchor.y - away, 2.0 * away) > away;
}

ox_vec ox_readout_place(ox_vec anchor, double away, ox_vec size, ox_vec room,
                        const ox_picture *picture, int *corner) {
  box at[OX_READOUT_CORNERS];
  double cost[OX_READOUT_CORNERS], whole = size.x * size.y;
  int best = 0;
  for (int i = 0; i < OX_READOUT_CORNERS; i++) {
    bool pushed = false;
    at[i] = (box){{along(anchor.x, away, size.x, room.x, i & OX_READOUT_TO_THE_LEFT, &pushed),
                   along(anchor.y, away, size.y, room.y, i & OX_READOUT_ABOVE, &pushed)},
                  size};
    cost[i] = covered(&at[i], picture) + (pushed ? PUSHED * whole : 0.0) +
              (hides(&at[i], anchor, away) ? 4.0 * whole : 0.0);
    if (cost[i] < cost[best]) best = i;
  }
  if (*corner == OX_READOUT_ANYWHERE || cost[*corner] > cost[best] + LITTLE * whole)
    *corner = best;
  return at[*corner].at;
}
