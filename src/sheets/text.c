/* Words on a page. Metrics are not hinted and sizes absolute, so that what is measured is what is
 * printed. */
#include "text.h"

static const double RULE_PT = 0.5;

void sheet_pen_open(sheet_pen *pen, cairo_t *cr) {
  pen->cr = cr;
  pen->context = pango_font_map_create_context(pango_cairo_font_map_get_default());
  cairo_font_options_t *options = cairo_font_options_create();
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  pango_cairo_context_set_font_options(pen->context, options);
  cairo_font_options_destroy(options);
  pango_context_set_round_glyph_positions(pen->context, FALSE);
  pango_context_set_base_dir(pen->context, PANGO_DIRECTION_LTR);
  pango_context_set_language(pen->context, pango_language_from_string("en"));
}

void sheet_pen_close(sheet_pen *pen) {
  g_object_unref(pen->context);
  pen->context = NULL;
}

static PangoLayout *laid_out(const sheet_pen *pen, const char *words, double size, unsigned style,
                             int lines, double width) {
  PangoLayout *layout = pango_layout_new(pen->context);
  PangoFontDescription *font = pango_font_description_from_string("DejaVu Sans, sans-serif");
  pango_font_description_set_absolute_size(font, size * PANGO_SCALE);
  if (style & SHEET_BOLD) pango_font_description_set_weight(font, PANGO_WEIGHT_BOLD);
  pango_layout_set_font_description(layout, font);
  pango_font_description_free(font);
  char *valid = g_utf8_make_valid(words, -1);
  pango_layout_set_text(layout, valid, -1);
  g_free(valid);
  if (width <= 0.0) return layout;
  pango_layout_set_width(layout, (int)(width * PANGO_SCALE));
  pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_height(layout, -lines);
  pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
  if (style & SHEET_RIGHT) pango_layout_set_alignment(layout, PANGO_ALIGN_RIGHT);
  return layout;
}

static void extent(PangoLayout *layout, double *width, double *height) {
  PangoRectangle logical;
  pango_layout_get_extents(layout, NULL, &logical);
  *width = (double)logical.width / PANGO_SCALE;
  *height = (double)logical.height / PANGO_SCALE;
}

double sheet_text(const sheet_pen *pen, const char *words, double size, unsigned style, int lines,
                  double x, double y, double width) {
  PangoLayout *layout = laid_out(pen, words, size, style, lines, width);
  double broad, high;
  extent(layout, &broad, &high);
  cairo_move_to(pen->cr, x, y);
  pango_cairo_show_layout(pen->cr, layout);
  cairo_new_path(pen->cr);
  g_object_unref(layout);
  return high;
}

double sheet_text_height(const sheet_pen *pen, const char *words, double size, unsigned style,
                         int lines, double width) {
  PangoLayout *layout = laid_out(pen, words, size, style, lines, width);
  double broad, high;
  extent(layout, &broad, &high);
  g_object_unref(layout);
  return high;
}

double sheet_text_width(const sheet_pen *pen, const char *words, double size, unsigned style) {
  PangoLayout *layout = laid_out(pen, words, size, style, 1, 0.0);
  double broad, high;
  extent(layout, &broad, &high);
  g_object_unref(layout);
  return broad;
}

void sheet_ink(const sheet_pen *pen) {
  cairo_set_source_rgb(pen->cr, 0.0, 0.0, 0.0);
}

void sheet_grey(const sheet_pen *pen) {
  cairo_set_source_rgb(pen->cr, 0.35, 0.35, 0.35);
}

void sheet_line(const sheet_pen *pen, double x0, double y0, double x1, double y1) {
  cairo_set_dash(pen->cr, NULL, 0, 0.0);
  cairo_set_line_cap(pen->cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_width(pen->cr, RULE_PT);
  cairo_move_to(pen->cr, x0, y0);
  cairo_line_to(pen->cr, x1, y1);
  cairo_stroke(pen->cr);
}
