/* The figures of an instant that follow the aircraft: texts made from values, no widget. */
#ifndef OX_FIGURES_H
#define OX_FIGURES_H

#include <stdbool.h>
#include <stddef.h>

#include "oxbow/flight.h"

typedef enum {
  OX_FIGURE_HEADING,
  OX_FIGURE_TRACK,
  OX_FIGURE_GS,
  OX_FIGURE_DRIFT,
  OX_FIGURE_ON_LEG,
  OX_FIGURE_SINCE_FIX,
  OX_FIGURE_ALTITUDE,
  OX_FIGURE_COUNT
} ox_figure;

typedef struct {
  bool shown;         /* the altitude only where it changes in the hold */
  const char *name;   /* in full, for a screen reader: "heading"; static */
  char caption[16];   /* "hdg M" where magnetic and true differ, else "hdg" */
  char value[16];     /* "029", "28° L", "1:20" */
  const char *widest; /* a value that takes as much room as any; static */
} ox_figure_text;

/* All figures at an instant (s); none shown for a flight without legs. The time since the fix
 * counts from the last crossing, and down to the first one before it ("-0:45"). */
void ox_figures_make(ox_figure_text out[OX_FIGURE_COUNT], const ox_case *c,
                     const ox_flight *flight, double t_s);
/* "heading 029 magnetic, track 029 magnetic, ground speed 102 kt, …" */
void ox_figures_words(char *out, size_t bytes, const ox_figure_text figures[OX_FIGURE_COUNT],
                      bool magnetic);

#endif
