/* A printed page. What is on the picture (title, what is flown, legend, scale bar, caution) the
 * painter draws; the block below says which paper this is. */
#include "ox_print_page.h"

#include <math.h>
#include <pango/pangocairo.h>

#include "oxbow/moments_page.h"
#include "oxbow/text.h"

#define POINTS_A_MM (72.0 / 25.4)
#define MM_A_NM 1852000.0
#define FRAME_POINTS 0.7
#define TEXT_POINTS 8.5
#define PAD_POINTS 4.0

static double from_mm(double mm) { return mm * POINTS_A_MM; }

/* Four figures are enough for a ruler. */
char *ox_print_scale_words(double points_per_nm) {
  double mm = points_per_nm / POINTS_A_MM, ratio = MM_A_NM / mm;
  double grain = pow(10.0, fmax(0.0, floor(log10(ratio)) - 3.0));
  char *whole = g_strdup_printf("%.0f", round(ratio / grain) * grain);
  GString *spaced = g_string_new(whole);
  for (gssize at = (gssize)spaced->len - 3; at > 0; at -= 3)
    g_string_insert(spaced, at, "\u202f"); /* a narrow space that does not break */
  char *words = g_strdup_printf(_("1 NM is %.1f mm, 1 : %s"), mm, spaced->str);
  g_string_free(spaced, TRUE);
  g_free(whole);
  return words;
}

/* ---- the title block -------------------------------------------------------------------- */

static PangoLayout *text_new(cairo_t *cr, const char *words, double width, PangoAlignment where) {
  PangoLayout *layout = pango_cairo_create_layout(cr);
  PangoFontDescription *font = pango_font_description_from_string("Sans");
  char *valid = g_utf8_make_valid(words, -1);
  pango_font_description_set_absolute_size(font, TEXT_POINTS * PANGO_SCALE);
  pango_layout_set_font_description(layout, font);
  pango_layout_set_text(layout, valid, -1);
  pango_layout_set_width(layout, (int)(fmax(width, 1.0) * PANGO_SCALE));
  pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
  pango_layout_set_single_paragraph_mode(layout, TRUE);
  pango_layout_set_alignment(layout, where);
  pango_font_description_free(font);
  g_free(valid);
  return layout;
}

static void put_text(cairo_t *cr, const char *words, double x, double y, double width,
                     PangoAlignment where) {
  PangoLayout *layout = text_new(cr, words, width, where);
  cairo_move_to(cr, x, y);
  pango_cairo_show_layout(cr, layout);
  g_object_unref(layout);
}

/* Three cells in a line under the picture. */
static void draw_block(cairo_t *cr, const ox_print_page *page, const char *scale, double x,
                       double y, double width, double height) {
  double third = width / 3.0, inner = third - 2.0 * PAD_POINTS;
  const char *name = page->scene->c->name;
  char *what = *name ? g_strdup_printf("%s: %s", page->name, name) : g_strdup(page->name);
  char *which = g_strdup_printf(_("Page %d of %d · %s · Oxbow %s"), page->page, page->pages,
                                page->date, OX_VERSION);
  cairo_move_to(cr, x, y);
  cairo_rel_line_to(cr, width, 0);
  for (int i = 1; i < 3; i++) {
    cairo_move_to(cr, x + i * third, y);
    cairo_rel_line_to(cr, 0, height);
  }
  cairo_stroke(cr);
  double top = y + 0.5 * (height - 1.3 * TEXT_POINTS);
  put_text(cr, what, x + PAD_POINTS, top, inner, PANGO_ALIGN_LEFT);
  put_text(cr, scale, x + third + PAD_POINTS, top, inner, PANGO_ALIGN_CENTER);
  put_text(cr, which, x + 2.0 * third + PAD_POINTS, top, inner, PANGO_ALIGN_RIGHT);
  g_free(which);
  g_free(what);
}

/* ---- the page --------------------------------------------------------------------------- */

/* Draws into a rectangle and says its scale; freed with g_free. */
static char *draw_picture(cairo_t *cr, const ox_scene *scene, double width, double height) {
  ox_scene whole = *scene;
  whole.layers |= OX_LAYER_FURNITURE;
  ox_picture *picture = ox_picture_new(&whole, width, height);
  if (!picture) return g_strdup(_("The picture cannot be laid out at this size."));
  ox_picture_draw(picture, cr, (double)NAN);
  char *words = ox_print_scale_words(
      ox_picture_viewport_at(picture, (double)NAN).dev_per_nm);
  ox_picture_free(picture);
  return words;
}

static char *draw_moments(cairo_t *cr, const ox_scene *scene, double width, double height) {
  ox_moments moments = ox_moments_make(scene->c, scene->flight, 0, 1);
  ox_moments_page_draw(cr, scene, &moments, width, height);
  return g_strdup(_("Key moments of entry and first circuit, not to scale"));
}

void ox_print_page_draw(cairo_t *cr, const ox_print_page *page, double width, double height,
                        const double borders[4]) {
  double edge[4];
  for (int i = 0; i < 4; i++) edge[i] = fmax(borders[i], from_mm(OX_PRINT_BORDER_MM));
  double inner_width = width - edge[0] - edge[1], inner_height = height - edge[2] - edge[3];
  double block = 2.0 * TEXT_POINTS + 2.0;
  double room = inner_height - block;
  if (!(inner_width > 72.0) || !(room > 72.0)) return; /* no paper */
  cairo_save(cr);
  cairo_translate(cr, edge[0], edge[2]);
  cairo_save(cr);
  cairo_rectangle(cr, 0, 0, inner_width, room);
  cairo_clip(cr);
  char *scale = page->moments ? draw_moments(cr, page->scene, inner_width, room)
                              : draw_picture(cr, page->scene, inner_width, room);
  cairo_restore(cr);
  cairo_set_source_rgb(cr, 0, 0, 0);
  cairo_set_line_width(cr, FRAME_POINTS);
  draw_block(cr, page, scale, 0, room, inner_width, block);
  cairo_rectangle(cr, 0, 0, inner_width, inner_height);
  cairo_stroke(cr);
  cairo_restore(cr);
  g_free(scale);
}
