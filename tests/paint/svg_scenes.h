/* Scenes for the tests of SVG: seeded, with names of any bytes, overlays, marks and views; and the
 * same pictures without words as words. */
#ifndef SVG_SCENES_H
#define SVG_SCENES_H

#include <cairo-svg.h>

#include "lettering.h"
#include "paint_cases.h"
#include "svg_support.h"

enum { SVG_WIDTH = 842, SVG_HEIGHT = 595 };

static ox_case svg_case; /* one at a time, as the flight it goes with */

static inline GString *svg_export(const ox_scene *scene, double width, double height, double t_s,
                                  bool moments) {
  GString *svg = g_string_new(NULL);
  ox_export_options o = {.format = OX_EXPORT_SVG, .width = width, .height = height, .t_s = t_s,
                         .moments = moments};
  const char *error = NULL;
  if (ox_export(scene, 1, &o, svg_take, svg, &error) != OX_OK) fail_msg("%s", error);
  return svg;
}

/* The bytes somebody might paste: markup, controls, other scripts, directions, no UTF-8. */
static inline void svg_fuzz(ox_random *r, char *name, size_t bytes) {
  static const char *const bits[] = {
      "&", "<", ">", "\"", "'", "]]>", "<!--", "-->", "&amp;", "<text>", "</svg>", "\"/>", "#image5",
      "\"surface12\"", "oxbow-words:0", "\x01", "\x1b", "\t", "\n", "\r", "\x7f", "\xc2\x85", "\xff",
      "\xc3", "\xed\xa0\x80", "\xef\xbf\xbe", "\xef\xbf\xbf", "\xf0\x9f\x9b\xa9", "\xe2\x80\xae",
      "\xe2\x80\xac", "\xe2\x81\xa6", "\xe2\x80\xa8", "\xe2\x80\xa9", "\xcc\x81", "  ", "LARCH", "é",
      "الانتظار", "שהייה", "等待航線", "%s", "url(#x)", "…", "\xc2\xad"};
  name[0] = '\0';
  for (int n = ox_random_below(r, 9); n > 0; n--) {
    const char *bit = bits[ox_random_below(r, (int)(sizeof bits / sizeof *bits))];
    if (strlen(name) + strlen(bit) >= bytes) return;
    g_strlcat(name, bit, bytes);
  }
}

/* Any scene; its strings and marks stand until the next. */
static inline ox_scene svg_random_scene(unsigned seed) {
  static char title[200], names[3][100];
  static ox_mark marks[3];
  ox_random r = {seed * 31u + 5u};
  svg_case = paint_seeded_case(seed);
  svg_fuzz(&r, svg_case.name, sizeof svg_case.name);
  svg_fuzz(&r, svg_case.hold.fix, sizeof svg_case.hold.fix);
  svg_fuzz(&r, title, sizeof title);
  ox_scene s = paint_overlaid_scene(&svg_case, (ox_palette_id)(seed % OX_PALETTE_COUNT), seed);
  s.title = title;
  for (int i = 0; i < 3; i++) {
    svg_fuzz(&r, names[i], sizeof names[i]);
    marks[i] = (ox_mark){{ox_random_between(&r, -3, 3), ox_random_between(&r, -3, 3)}, names[i],
                         (ox_mark_kind)ox_random_below(&r, OX_MARK_KIND_COUNT)};
  }
  s.marks = marks;
  s.mark_count = (size_t)ox_random_below(&r, 4);
  s.compare_name = names[0];
  s.text_scale = ox_random_between(&r, 0.7, 1.6);
  if (ox_random_below(&r, 3) == 0) s.compare = NULL;
  if (ox_random_below(&r, 3) == 0) s.area = NULL;
  if (ox_random_below(&r, 4) == 0) s.hide_answer = true;
  if (ox_random_below(&r, 4) == 0) s.view.up = OX_UP_AIRCRAFT;
  /* Never half: cairo 1.16 leaks the groups that fade one track into the other in an SVG. */
  if (ox_random_below(&r, 5) == 0) s.view.air = 1.0;
  return s;
}

/* What the exporter draws. */
static inline ox_picture *svg_picture(const ox_scene *scene, double width, double height) {
  ox_scene whole = *scene;
  whole.layers |= OX_LAYER_FURNITURE;
  ox_picture *p = ox_picture_new(&whole, width, height);
  assert_non_null(p);
  return p;
}

static inline cairo_status_t svg_keep(void *string, const unsigned char *data, unsigned length) {
  g_string_append_len(string, (const char *)data, (gssize)length);
  return CAIRO_STATUS_SUCCESS;
}

/* The same picture as cairo alone writes it: words as outlines. */
static inline GString *svg_outlined(const ox_scene *scene, double width, double height,
                                    double t_s) {
  GString *svg = g_string_new(NULL);
  cairo_surface_t *surface = cairo_svg_surface_create_for_stream(svg_keep, svg, width, height);
  cairo_svg_surface_set_document_unit(surface, CAIRO_SVG_UNIT_PT);
  cairo_t *cr = cairo_create(surface);
  ox_picture *p = svg_picture(scene, width, height);
  ox_picture_draw(p, cr, t_s);
  ox_picture_free(p);
  cairo_destroy(cr);
  cairo_surface_finish(surface);
  cairo_surface_destroy(surface);
  return svg;
}

#endif
