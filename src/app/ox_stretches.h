/* The flight as stretches of a time line: what is flown, from when to when, and by what name. Pure
 * functions of a flight; no widget. */
#ifndef OX_STRETCHES_H
#define OX_STRETCHES_H

#include <stdbool.h>
#include <stddef.h>

#include "oxbow/flight.h"

typedef enum {
  OX_STRETCH_ARRIVAL,
  OX_STRETCH_ENTRY,
  OX_STRETCH_OUTBOUND,
  OX_STRETCH_INBOUND,
  OX_STRETCH_ADRIFT,
  OX_STRETCH_KIND_COUNT
} ox_stretch_kind;

typedef struct {
  ox_stretch_kind kind;
  bool turn;
  int circuit; /* 0 in arrival and entry */
  double t0_s, t1_s;
  const char *name;  /* "outbound turn"; static */
  const char *brief; /* "turn", where there is little room; static, may be the name */
} ox_stretch;

/* The stretches in time order; those that only a change of wind or height divides are one. out has
 * room for OX_LEGS_MAX. Returns their number. */
size_t ox_stretches_make(const ox_flight *flight, ox_stretch *out);
/* The parts they belong to: "arrival", "entry", "circuit 1" (brief "1")… The names of circuits are
 * written to names, one of OX_PART_NAME_BYTES a part. */
#define OX_PART_NAME_BYTES 24
size_t ox_stretches_parts(const ox_stretch *stretches, size_t count, ox_stretch *out,
                          char (*names)[OX_PART_NAME_BYTES]);

/* The stretch at an instant (clamped); NULL where there is none. */
const ox_stretch *ox_stretches_at(const ox_stretch *stretches, size_t count, double t_s);
/* "outbound, circuit 1, 0:58 to 2:04 (1:06)" */
void ox_stretches_words(char *out, size_t bytes, const ox_stretch *stretch);

/* The longest of its names that is at most so wide, or NULL: names are whole or not there. `width`
 * measures a text. */
const char *ox_stretches_label(const ox_stretch *stretch, double room,
                               double (*width)(const char *text, void *data), void *data);

#endif
