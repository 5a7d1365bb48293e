/* Handles: what can be taken hold of on the picture, where each lies, what it says, and the case
 * that comes of moving it. Pure: the engine alone, nothing allocates, no globals.
 *
 * A case made here is always one that ox_case_check accepts. Places are in the plane (NM, x east y
 * north, true, the fix at the origin); values are those people read: magnetic courses and
 * headings, the wind in its rows' own north, seconds or NM of leg. */
#ifndef OXBOW_HANDLES_H
#define OXBOW_HANDLES_H

#include <stdbool.h>
#include <stddef.h>

#include "oxbow/case.h"
#include "oxbow/flight.h"
#include "oxbow/status.h"

/* In the order in which the Tab key walks them. */
typedef enum {
  OX_HANDLE_FIX,       /* lies still; its name is what can be edited */
  OX_HANDLE_INBOUND,   /* the inbound course, turned round the fix */
  OX_HANDLE_ARRIVAL,   /* where the aircraft comes from */
  OX_HANDLE_WIND_FROM, /* the wind: dragged it changes direction and speed at once */
  OX_HANDLE_WIND_KT,   /* its speed alone; lies where the direction lies */
  OX_HANDLE_OUTBOUND,  /* where the inbound turn begins: the leg time or distance */
  OX_HANDLE_TURNS,     /* the holding side, flipped over the course */
  OX_HANDLE_COUNT
} ox_handle;

/* Lengths that have a size on the board rather than in the world, as plane lengths of the moment
 * (NM, > 0), and where the wind arrow stands. */
typedef struct {
  double inbound_nm;     /* the course's handle from the fix, upstream */
  double arrival_nm;     /* the arrival's handle from the fix */
  ox_vec wind_at_nm;     /* the middle of the wind arrow */
  double wind_nm;        /* the wind's handle from there in calm air … */
  double wind_nm_per_kt; /* … and this much farther a knot */
} ox_handle_reach;

/* How fine a drag snaps: OX_DRAG_COARSE to 5° of course, 10° and 5 kt of wind, 5 s, 0.5 NM;
 * OX_DRAG_FINE to single units: 1°, 1 kt, 1 s, 0.1 NM. */
typedef enum { OX_DRAG_COARSE, OX_DRAG_FINE } ox_drag_grid;

/* A value that can be stepped. Circular values go round instead of ending at min and max. */
typedef struct {
  double value, min, max;
  double step, page; /* one unit, ten of them */
  bool circular;
} ox_handle_range;

/* "Inbound course". Static. */
const char *ox_handle_name(ox_handle h);
/* What is stepped ("slider") or else pressed ("button"): the fix and the turns. */
bool ox_handle_is_slider(ox_handle h);
/* The input that takes the exact value, as in ox_fields or "hold.fix", "wind.kt". Static. */
const char *ox_handle_key(ox_handle h, const ox_case *c);
/* The value in words with its unit: "240° magnetic", "20 kt", "1:05 a leg" (80 bytes hold it). */
void ox_handle_words(char *buf, size_t bytes, ox_handle h, const ox_case *c,
                     const ox_flight *flight);
/* Where the handle lies. Always finite. */
ox_vec ox_handle_place(ox_handle h, const ox_case *c, const ox_flight *flight,
                       const ox_handle_reach *reach);
/* The value of a slider and its ends; of a button 0 to 1 (the turns: 1 is left). */
ox_handle_range ox_handle_range_of(ox_handle h, const ox_case *c, const ox_flight *flight);

/* The case with the handle dragged to a place, snapped to the grid. `base` and `flight` are those
 * when the drag began, so that the way there does not matter. `scratch` is room for flights tried
 * on the way (the outbound end is put where the pointer is by flying the leg). At the fix itself,
 * where no direction is meant, the case stays as it is.
 *
 * The wind of several rows is turned and scaled as a whole, so that at the hold's altitude it
 * becomes the one asked for and the rows keep their proportions: at least 1 kt, at most so much
 * that no row passes its limit. Rows that cancel out at that altitude all get the same wind added.
 * Winds that change later stay.
 *
 * OX_ERROR, *out untouched, where the place is not finite or the handle cannot be dragged. */
ox_status ox_handle_drag(ox_handle h, const ox_case *base, const ox_flight *flight,
                         const ox_handle_reach *reach, ox_vec place_nm, ox_drag_grid grid,
                         ox_flight *scratch, ox_case *out);
/* The case with a slider's value set: circular values taken to their circle, others to their ends.
 * OX_ERROR, *out untouched, where the value is not finite or the handle is the fix. */
ox_status ox_handle_set(ox_handle h, const ox_case *c, const ox_flight *flight, double value,
                        ox_case *out);
/* The value so many steps on, from a value that lies between two steps to the next one. A button
 * is pressed. */
ox_status ox_handle_step(ox_handle h, const ox_case *c, const ox_flight *flight, int steps,
                         ox_case *out);
/* The turns the other way. */
ox_case ox_handle_flip(const ox_case *c);

#endif
