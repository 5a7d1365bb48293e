/* Where a readout stands: beside what it tells of, on the board, and over no label if it can. */
#ifndef OX_READOUT_PLACE_H
#define OX_READOUT_PLACE_H

#include "oxbow/picture.h"

#define OX_READOUT_EDGE 6.0 /* px that the board's edge keeps clear */

/* From the anchor; a sum of none or both. */
enum {
  OX_READOUT_TO_THE_LEFT = 1,
  OX_READOUT_ABOVE = 2,
  OX_READOUT_CORNERS = 4,
  OX_READOUT_ANYWHERE /* no corner yet */
};

/* The upper left corner of a readout of a size (px) that stands `away` px from its anchor, both
 * ways, on a board with so much room. The one of four corners is taken that covers the least of the
 * picture's labels (NULL: of none). *corner is the one it had and becomes the one it has: it stays
 * there unless another is better by more than a little, or a label that moves would have it hop. */
ox_vec ox_readout_place(ox_vec anchor, double away, ox_vec size, ox_vec room,
                        const ox_picture *picture, int *corner);

#endif
