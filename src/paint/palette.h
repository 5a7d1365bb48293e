/* Colours and relative sizes of the four palettes. Contrast is pinned by tests/paint. */
#ifndef PAINT_PALETTE_H
#define PAINT_PALETTE_H

#include "oxbow/picture.h"

typedef struct {
  double r, g, b; /* sRGB, 0..1 */
} ox_rgb;

typedef enum {
  OX_HUE_BOARD,   /* the ground everything lies on */
  OX_HUE_TINT,    /* the ground of the holding side */
  OX_HUE_TEXT,
  OX_HUE_QUIET,   /* text of second rank */
  OX_HUE_COURSE,
  OX_HUE_STILL_AIR,
  OX_HUE_TRACK,
  OX_HUE_TRACK_TEXT,
  OX_HUE_ENTRY,
  OX_HUE_ENTRY_TEXT,
  OX_HUE_WIND,
  OX_HUE_ROSE,
  OX_HUE_HATCH,   /* decoration: the words beside it carry the meaning */
  OX_HUE_DIRECT,  /* fills of the entry sectors, decoration like the hatching */
  OX_HUE_PARALLEL,
  OX_HUE_TEARDROP,
  OX_HUE_AIRCRAFT,
  OX_HUE_COMPARE,
  OX_HUE_COMPARE_TEXT,
  OX_HUE_AREA,    /* edge of the protected area */
  OX_HUE_OTHER,   /* a second case in step: line and words */
  OX_HUE_GUESS,   /* what a student expects: sketch, marks and their words */
  OX_HUE_PEN_BLACK, OX_HUE_PEN_VERMILLION, OX_HUE_PEN_BLUE,
  OX_HUE_BAND,    /* where all runs of a spread went; fewer, fainter */
  OX_HUE_COUNT
} ox_hue;

typedef struct {
  const char *name;
  ox_rgb ink[OX_HUE_COUNT];
  /* Text sizes as shares of the board's smaller side, and the least size. */
  double key_share, label_share, small_share, title_share, least_text;
  double line_share, least_line; /* width of the flown track, and the least width of any line */
  double fine_share; /* least width of a line as a share of the smaller side */
} ox_palette;

/* Never NULL: an unknown id gives the light palette. */
const ox_palette *ox_palette_get(ox_palette_id id);

#endif
