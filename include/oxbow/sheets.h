/* Handouts: pages with several holds each, as a worksheet to fill in or as its answer key. Needs
 * cairo and Pango, never GTK.
 *
 * Worksheet and key are laid out alike: the same hold stands in the same place, at the same scale
 * and in the same order, so that a key laid over a worksheet shows where the drawing is off. */
#ifndef OXBOW_SHEETS_H
#define OXBOW_SHEETS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "oxbow/export.h"

typedef enum { OX_SHEETS_WORKSHEET, OX_SHEETS_KEY } ox_sheets_kind;
typedef enum { OX_PAPER_A4, OX_PAPER_LETTER, OX_PAPER_COUNT } ox_paper;
/* "a4", "letter". */
const char *ox_paper_name(ox_paper paper);

typedef struct {
  ox_sheets_kind kind;
  ox_paper paper;
  bool across;         /* landscape */
  int per_page;        /* 1, 2 or 4 */
  bool shuffled;       /* the order comes from the seed; otherwise it is that of the scenes */
  uint64_t seed;
  const char *program; /* name and version for the foot: "Oxbow 0.1.0"; borrowed */
} ox_sheets_options;

/* Width and height of a page in points, 1/72 inch (ISO 216: A4 is 210 by 297 mm; ANSI: Letter is
 * 8.5 by 11 inches). */
ox_vec ox_sheets_size(const ox_sheets_options *options);
/* How many pages so many holds take. */
size_t ox_sheets_pages(size_t count, const ox_sheets_options *options);
/* The order on paper: order[0..count-1] becomes the indices 0..count-1, shuffled by the seed where
 * that is asked for. Depends on nothing but count, shuffled and seed. */
void ox_sheets_order(size_t *order, size_t count, const ox_sheets_options *options);

/* Draws one page, from 0, in points from the upper left corner. Of a scene, hide_answer, framed
 * and fit are set here. OX_ERROR, with a static sentence in error (may be NULL), where options are
 * out of range, there is no such page or memory is out. */
ox_status ox_sheets_draw(cairo_t *cr, const ox_scene *scenes, size_t count,
                         const ox_sheets_options *options, size_t page, const char **error);

/* All pages as a PDF. Same input, same bytes; nothing reaches the sink before the whole is made.
 * OX_ERROR as above, and where the sink refuses. */
ox_status ox_sheets_make(const ox_scene *scenes, size_t count, const ox_sheets_options *options,
                         ox_export_sink sink, void *context, const char **error);

#endif
