/* Which entry. Everything is decided in the picture mirrored to right turns:
 *
 *        outbound course = 0                rel = heading - outbound course
 *   -70 ... 0     teardrop
 *     0 ... 110   parallel
 *   elsewhere     direct
 */
#include "oxbow/entry.h"

#include <math.h>

#include "oxbow/angle.h"

typedef struct {
  double at_deg;            /* rel of the boundary */
  ox_entry_kind below, above; /* sector on the side of smaller and of greater rel */
} boundary;

static const boundary boundaries[] = {
    {-70.0, OX_ENTRY_DIRECT, OX_ENTRY_TEARDROP},
    {0.0, OX_ENTRY_TEARDROP, OX_ENTRY_PARALLEL},
    {110.0, OX_ENTRY_PARALLEL, OX_ENTRY_DIRECT},
};

ox_entry_choice ox_entry_choose(double inbound_deg, int sense, double crossing_deg) {
  double outbound_deg = inbound_deg + 180.0;
  double right_rel_deg = ox_norm180_deg(crossing_deg - outbound_deg);
  double rel_deg = sense >= 0 ? right_rel_deg : ox_norm180_deg(-right_rel_deg);

  const boundary *nearest = &boundaries[0];
  double away_deg = 360.0;
  for (int i = 0; i < 3; i++) {
    double d = ox_norm180_deg(rel_deg - boundaries[i].at_deg);
    if (fabs(d) < fabs(away_deg)) {
      away_deg = d;
      nearest = &boundaries[i];
    }
  }

  ox_entry_choice e;
  e.relative_deg = rel_deg;
  e.boundary_deg = (sense >= 0 ? away_deg : -away_deg) + 0.0;
  e.boundary_at_deg = ox_norm360_deg(outbound_deg + (sense >= 0 ? 1.0 : -1.0) * nearest->at_deg);
  /* On the boundary itself the simpler entry comes first: direct, then teardrop. */
  int above = away_deg > 0.0 || (away_deg == 0.0 && nearest->above == OX_ENTRY_DIRECT);
  e.kind = above ? nearest->above : nearest->below;
  e.also = OX_ENTRY_NONE;
  if (fabs(away_deg) <= OX_ENTRY_FLEXIBILITY_DEG)
    e.also = (int)(above ? nearest->below : nearest->above);
  return e;
}
