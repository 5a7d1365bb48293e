/* A palette of few colours for a flat drawing. Private to the painter. */
#ifndef OX_PAINT_COLOURS_H
#define OX_PAINT_COLOURS_H

#include <stdint.h>

#include <pango/pango.h> /* for its GLib: hash tables */

#define OX_COLOURS_MOST 255

/* Colours are 0xRRGGBB. */
typedef struct {
  GHashTable *counted; /* colour -> how many pixels were seen */
  GHashTable *known;   /* colour -> index + 1 */
  int count;
  uint32_t colour[OX_COLOURS_MOST];
} ox_colours;

void ox_colours_open(ox_colours *c);
void ox_colours_close(ox_colours *c);
/* Counts a row of pixels; what stands in the highest byte is ignored. */
void ox_colours_see(ox_colours *c, const uint32_t *row, int width);
/* Chooses: the most frequent colours as they are, which are those of the flat areas and lines; of
 * the others, the shades between them, a median cut (Heckbert 1982). Depends only on what was
 * counted. */
void ox_colours_choose(ox_colours *c);
/* The index of the chosen colour, or of the nearest one. */
int ox_colours_index(ox_colours *c, uint32_t pixel);

#endif
