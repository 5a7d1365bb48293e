/* A printed page: frame, picture, title block. cairo and Pango alone, in points on paper. */
#ifndef OX_PRINT_PAGE_H
#define OX_PRINT_PAGE_H

#include <cairo.h>
#include <glib.h>

#include "oxbow/picture.h"

G_BEGIN_DECLS

#define OX_PRINT_BORDER_MM 10.0 /* the least, as on drawing sheets of A4 and A3 */

typedef struct {
  const ox_scene *scene;
  gboolean moments;  /* the key moments instead of the picture */
  const char *name;  /* of the lesson or its file */
  const char *date;  /* "2026-11-25" */
  int page, pages;   /* from 1 */
} ox_print_page;

/* Draws on paper of a size, all within the borders (left, right, top, bottom; each at least
 * OX_PRINT_BORDER_MM). Leaves the context as it found it. */
void ox_print_page_draw(cairo_t *cr, const ox_print_page *page, double width, double height,
                        const double borders[4]);

/* What a mile is on the paper: "1 NM is 12.3 mm, 1 : 150 600". Freed with g_free. */
char *ox_print_scale_words(double points_per_nm);

G_END_DECLS

#endif
