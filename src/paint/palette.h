/* Colours and relative sizes of the four palettes. Contrast is pinned by tests/paint. */
#ifndef PAINT_PALETTE_H
#define PAINT_PALETTE_H

#include "oxbow/picture.h"

typedef struct {
  double r, g, b; /* sRGB, 0..1 */
} ox_rgb;

typedef enum {
  OX_INK_BOARD,   /* the ground everything lies on */
  OX_INK_TINT,    /* the ground of the holding side */
  OX_INK_TEXT,
  OX_INK_QUIET,   /* text of second rank */
  OX_INK_COURSE,
  OX_INK_STILL_AIR,
  OX_INK_TRACK,
  OX_INK_TRACK_TEXT,
  OX_INK_ENTRY,
  OX_INK_ENTRY_TEXT,
  OX_INK_WIND,
  OX_INK_ROSE,
  OX_INK_HATCH,   /* decoration: the words beside it carry the meaning */
  OX_INK_DIRECT,  /* fills of the entry sectors, decoration like the hatching */
  OX_INK_PARALLEL,
  OX_INK_TEARDROP,
  OX_INK_AIRCRAFT,
  OX_INK_COMPARE,
  OX_INK_COMPARE_TEXT,
  OX_INK_AREA,    /* edge of the protected area */
  OX_INK_BAND,    /* where all runs of a spread went; fewer, fainter */
  OX_INK_COUNT
} ox_ink;

typedef struct {
  const char *name;
  ox_rgb ink[OX_INK_COUNT];
  /* Text sizes as shares of the board's smaller side, and the least size. */
  double key_share, label_share, small_share, title_share, least_text;
  double line_share, least_line; /* width of the flown track, and the least width of any line */
  double fine_share; /* least width of a line as a share of the smaller side */
} ox_palette;

/* Never NULL: an unknown id gives the light palette. */
const ox_palette *ox_palette_get(ox_palette_id id);

#endif
