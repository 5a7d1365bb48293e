/* One way to set text.
 *
 * Metrics are not hinted and glyph positions not rounded, so that a label takes exactly the same
 * room on screen, in PNG, SVG and PDF. Sizes are absolute: no resolution setting changes them. */
#include "lettering.h"

#include <math.h>
#include <string.h>

static const char FONT_FAMILY[] = "DejaVu Sans, sans-serif";
static const double LEAST_SIZE = 1.0;

PangoContext *ox_lettering_context_new(void) {
  PangoContext *context = pango_font_map_create_context(pango_cairo_font_map_get_default());
  cairo_font_options_t *options = cairo_font_options_create();
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context, options);
  cairo_font_options_destroy(options);
  pango_context_set_round_glyph_positions(context, FALSE);
  pango_context_set_base_dir(context, PANGO_DIRECTION_LTR);
  pango_context_set_language(context, pango_language_from_string("en"));
  return context;
}

static void measure(ox_lettering *text) {
  PangoRectangle ink, logical;
  pango_layout_get_extents(text->layout, &ink, &logical);
  text->ink = (ox_rect){(double)ink.x / PANGO_SCALE, (double)ink.y / PANGO_SCALE,
                        (double)ink.width / PANGO_SCALE, (double)ink.height / PANGO_SCALE};
  text->width = (double)(logical.x + logical.width) / PANGO_SCALE;
  text->height = (double)(logical.y + logical.height) / PANGO_SCALE;
}

static void set_words(ox_lettering *text, const char *words, bool one_line) {
  char *valid = g_utf8_make_valid(words ? words : "", -1);
  if (one_line)
    for (char *at = valid; *at; at++)
      if ((unsigned char)*at < 0x20 || *at == 0x7f) *at = ' ';
  pango_layout_set_text(text->layout, valid, -1);
  g_free(valid);
  measure(text);
}

void ox_lettering_make(ox_lettering *text, PangoContext *context, const char *words, double size,
                      unsigned style, double max_width) {
  ox_lettering_clear(text);
  PangoFontDescription *font = pango_font_description_from_string(FONT_FAMILY);
  double absolute = fmin(fmax(size, LEAST_SIZE), 2000.0) * PANGO_SCALE;
  pango_font_description_set_absolute_size(font, absolute);
  if (style & OX_TEXT_BOLD) pango_font_description_set_weight(font, PANGO_WEIGHT_BOLD);
  text->layout = pango_layout_new(context);
  pango_layout_set_font_description(text->layout, font);
  pango_font_description_free(font);
  pango_layout_set_auto_dir(text->layout, FALSE);
  if (style & OX_TEXT_CENTRED) pango_layout_set_alignment(text->layout, PANGO_ALIGN_CENTER);
  bool one_line = (style & OX_TEXT_ONE_LINE) != 0, two_lines = (style & OX_TEXT_TWO_LINES) != 0;
  if (one_line) pango_layout_set_single_paragraph_mode(text->layout, TRUE);
  if (max_width > 0.0) {
    pango_layout_set_width(text->layout, (int)(fmin(max_width, 1e6) * PANGO_SCALE));
    if (one_line || two_lines) pango_layout_set_ellipsize(text->layout, PANGO_ELLIPSIZE_END);
    if (!one_line) pango_layout_set_wrap(text->layout, PANGO_WRAP_WORD_CHAR);
    if (two_lines) pango_layout_set_height(text->layout, -2);
  }
  set_words(text, words, one_line || two_lines);
}

void ox_lettering_change(ox_lettering *text, const char *words) {
  if (!text->layout || strcmp(pango_layout_get_text(text->layout), words) == 0) return;
  set_words(text, words, false);
}

void ox_lettering_clear(ox_lettering *text) {
  if (text->layout) g_object_unref(text->layout);
  *text = (ox_lettering){0};
}

void ox_lettering_show(const ox_lettering *text, cairo_t *cr, double x, double y) {
  if (!text->layout) return;
  cairo_move_to(cr, x, y);
  pango_cairo_show_layout(cr, text->layout);
}

void ox_lettering_show_ink(const ox_lettering *text, cairo_t *cr, double x, double y) {
  ox_lettering_show(text, cr, x - text->ink.x, y - text->ink.y);
}
