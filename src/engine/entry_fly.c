/* The entry as flown: teardrop and parallel. (A direct entry is the first circuit.)
 *
 * AIM 5-3-8 j3: teardrop on a heading 30 degrees to the holding side of the outbound course for
 * its time, then the turn in the pattern's sense to intercept; parallel on the outbound heading on
 * the non-holding side for its time, then the turn towards the holding side through more than 180
 * degrees, to the inbound course or back to the fix. Timing runs from wings level (P-1215 p. 85).
 * By heading (AIM) the wind moves the leg; by track (Doc 8168 Vol I, "make good a track") the
 * heading is corrected for it. */
#include <math.h>

#include "circuit.h"
#include "oxbow/wind.h"

static const double TEARDROP_DEG = 150.0; /* the outbound course less 30, in the frame */
static const double PARALLEL_DEG = 180.0;

/* The short way; for a parallel entry that needs exactly a half turn, over the non-holding side. */
static double entry_turn_deg(double from_deg, double to_deg, ox_entry_kind kind) {
  double turn_deg = ox_turn_between_deg(from_deg, to_deg);
  return kind == OX_ENTRY_PARALLEL && turn_deg == 180.0 ? -180.0 : turn_deg;
}

static double entry_heading_deg(const ox_pilot *k, double line_deg) {
  if (k->c->technique.entry_line == OX_ENTRY_LINE_HEADING) return line_deg;
  ox_triangle t = ox_triangle_for_course(line_deg, k->v, k->w); /* in NM/s throughout */
  return t.possible ? t.heading_deg : line_deg;
}

bool entry_fly(ox_pilot *k, ox_entry_kind kind) {
  double line_deg = kind == OX_ENTRY_TEARDROP ? TEARDROP_DEG : PARALLEL_DEG;
  if (pilot_errs(k, OX_MISTAKE_TEARDROP_WRONG_SIDE)) line_deg = 360.0 - line_deg;
  double to_deg = entry_heading_deg(k, line_deg);
  int sense = kind == OX_ENTRY_TEARDROP ? 1 : -1;
  if (kind == OX_ENTRY_PARALLEL && pilot_errs(k, OX_MISTAKE_PARALLEL_WRONG_TURN)) sense = 1;
  double turn_deg = entry_turn_deg(k->heading_deg, to_deg, kind);
  k->part = OX_PART_ENTRY;
  if (turn_deg != 0.0) pilot_react(k);
  pilot_turn_to(k, OX_LEG_ENTRY_TURN, turn_deg, to_deg);
  pilot_event(k, OX_EVENT_CLOCK_START, k->t_s);
  double leg_s = fmax(1.0, k->c->technique.entry_s + k->flaws.entry_s);
  pilot_straight_for(k, OX_LEG_ENTRY_OUTBOUND, leg_s);
  pilot_react(k);
  double offset_nm, inbound_s;
  return return_to_fix(k, OX_LEG_ENTRY_INBOUND_TURN, sense, false, &offset_nm, &inbound_s);
}
