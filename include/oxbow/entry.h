/* Which entry: sectors about the outbound course by heading or track on crossing the fix.
 *
 * AIM 5-3-8 j3 and FIG 5-3-4; ICAO Doc 8168 Vol I Part I Sect 6 Ch 1 (sectors 1, 2, 3):
 * right turns, rel = heading - outbound course, within (-180, 180]:
 *   teardrop -70..0, parallel 0..110, direct elsewhere; left turns mirror this.
 * The boundary belongs to both sectors, and within 5 degrees of it either entry is accepted
 * (AIM 5-3-8 j8(d); ICAO zone of flexibility). */
#ifndef OXBOW_ENTRY_H
#define OXBOW_ENTRY_H

typedef enum { OX_ENTRY_DIRECT, OX_ENTRY_PARALLEL, OX_ENTRY_TEARDROP } ox_entry_kind;

#define OX_ENTRY_NONE (-1)
#define OX_ENTRY_FLEXIBILITY_DEG 5.0

typedef struct {
  ox_entry_kind kind; /* by the sector rule; on an exact boundary the simpler of the two */
  int also;           /* an ox_entry_kind accepted as well (within 5 degrees), or OX_ENTRY_NONE */
  double relative_deg; /* heading minus outbound course, mirrored to right turns, (-180, 180] */
  double boundary_deg; /* signed degrees from the nearest boundary to the heading, right positive
                          in the real (unmirrored) sense; 0 on the boundary */
  double boundary_at_deg; /* that boundary as a bearing on crossing, [0, 360) */
} ox_entry_choice;

/* Inbound course and crossing heading (or track) in degrees of one north; sense +1 right turns,
 * -1 left. Any finite angles. */
ox_entry_choice ox_entry_choose(double inbound_deg, int sense, double crossing_deg);

#endif
