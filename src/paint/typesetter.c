/* One way to set text, and a memory for what was set.
 *
 * Metrics are not hinted and glyph positions not rounded, so that a label takes exactly the same
 * room on screen, in PNG, SVG and PDF. Sizes are absolute: no resolution setting changes them.
 *
 * Shaping text is the dearest part of laying out a picture, and most words are those of the
 * picture before. The memory has two shelves: what is asked for moves to the new one; when that
 * is full it becomes the old one, and what stood there is forgotten. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "lettering.h"

static const char FONT_FAMILY[] = "DejaVu Sans, sans-serif";
static const double LEAST_SIZE = 1.0;
enum { SHELF_MOST = 600 };

struct ox_typesetter {
  PangoContext *context;
  PangoFontDescription *font, *bold;
  GHashTable *fresh, *old; /* entry -> itself */
};

typedef struct {
  ox_lettering text; /* owns a reference to its layout */
  char *words;
} entry;

static guint entry_hash(gconstpointer key) {
  const entry *e = key;
  double numbers[2] = {e->text.size, e->text.max_width};
  guint hash = g_str_hash(e->words) ^ e->text.style * 2654435761u;
  for (int i = 0; i < 2; i++) hash = hash * 31u + g_double_hash(&numbers[i]);
  return hash;
}

static gboolean entry_equal(gconstpointer a, gconstpointer b) {
  const entry *e = a, *f = b;
  return e->text.style == f->text.style && e->text.size == f->text.size &&
         e->text.max_width == f->text.max_width && strcmp(e->words, f->words) == 0;
}

static void entry_free(gpointer data) {
  entry *e = data;
  g_object_unref(e->text.layout);
  g_free(e->words);
  g_free(e);
}

static GHashTable *shelf_new(void) {
  return g_hash_table_new_full(entry_hash, entry_equal, entry_free, NULL);
}

ox_typesetter *ox_typesetter_new(void) {
  ox_typesetter *t = g_new0(ox_typesetter, 1);
  t->context = pango_font_map_create_context(pango_cairo_font_map_get_default());
  cairo_font_options_t *options = cairo_font_options_create();
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(t->context, options);
  cairo_font_options_destroy(options);
  pango_context_set_round_glyph_positions(t->context, FALSE);
  pango_context_set_base_dir(t->context, PANGO_DIRECTION_LTR);
  pango_context_set_language(t->context, pango_language_from_string("en"));
  t->font = pango_font_description_from_string(FONT_FAMILY);
  t->bold = pango_font_description_copy(t->font);
  pango_font_description_set_weight(t->bold, PANGO_WEIGHT_BOLD);
  t->fresh = shelf_new();
  t->old = shelf_new();
  return t;
}

void ox_typesetter_free(ox_typesetter *t) {
  if (!t) return;
  g_hash_table_unref(t->fresh);
  g_hash_table_unref(t->old);
  pango_font_description_free(t->font);
  pango_font_description_free(t->bold);
  g_object_unref(t->context);
  g_free(t);
}

/* --- setting ------------------------------------------------------------------------------- */

static void measure(ox_lettering *text) {
  PangoRectangle ink, logical;
  pango_layout_get_extents(text->layout, &ink, &logical);
  text->ink = (ox_rect){(double)ink.x / PANGO_SCALE, (double)ink.y / PANGO_SCALE,
                        (double)ink.width / PANGO_SCALE, (double)ink.height / PANGO_SCALE};
  text->width = (double)(logical.x + logical.width) / PANGO_SCALE;
  text->height = (double)(logical.y + logical.height) / PANGO_SCALE;
}

static void set_words(ox_lettering *text, const char *words, bool one_line) {
  char *valid = g_utf8_make_valid(words, -1);
  if (one_line)
    for (char *at = valid; *at; at++)
      if ((unsigned char)*at < 0x20 || *at == 0x7f) *at = ' ';
  pango_layout_set_text(text->layout, valid, -1);
  g_free(valid);
  measure(text);
}

static void set(ox_typesetter *t, ox_lettering *text, const char *words) {
  unsigned style = text->style;
  PangoFontDescription *font = style & OX_TEXT_BOLD ? t->bold : t->font;
  double absolute = fmin(fmax(text->size, LEAST_SIZE), 2000.0) * PANGO_SCALE;
  pango_font_description_set_absolute_size(font, absolute);
  text->layout = pango_layout_new(t->context);
  pango_layout_set_font_description(text->layout, font);
  pango_layout_set_auto_dir(text->layout, FALSE);
  if (style & OX_TEXT_CENTRED) pango_layout_set_alignment(text->layout, PANGO_ALIGN_CENTER);
  bool one_line = (style & OX_TEXT_ONE_LINE) != 0, two_lines = (style & OX_TEXT_TWO_LINES) != 0;
  if (one_line) pango_layout_set_single_paragraph_mode(text->layout, TRUE);
  if (text->max_width > 0.0) {
    pango_layout_set_width(text->layout, (int)(fmin(text->max_width, 1e6) * PANGO_SCALE));
    if (one_line || two_lines) pango_layout_set_ellipsize(text->layout, PANGO_ELLIPSIZE_END);
    if (!one_line) pango_layout_set_wrap(text->layout, PANGO_WRAP_WORD_CHAR);
    if (two_lines) pango_layout_set_height(text->layout, -2);
  }
  set_words(text, words, one_line || two_lines);
}

/* --- the memory ---------------------------------------------------------------------------- */

static entry *recall(ox_typesetter *t, entry *wanted) {
  entry *found = g_hash_table_lookup(t->fresh, wanted);
  if (found) return found;
  found = g_hash_table_lookup(t->old, wanted);
  if (!found) return NULL;
  g_hash_table_steal(t->old, found);
  g_hash_table_add(t->fresh, found);
  return found;
}

static void make_room(ox_typesetter *t) {
  if (g_hash_table_size(t->fresh) < SHELF_MOST) return;
  g_hash_table_unref(t->old);
  t->old = t->fresh;
  t->fresh = shelf_new();
}

void ox_lettering_make(ox_lettering *text, ox_typesetter *t, const char *words, double size,
                       unsigned style, double max_width) {
  ox_lettering_clear(text);
  entry wanted = {.words = g_strdup(words ? words : "")};
  wanted.text = (ox_lettering){.size = size, .style = style, .max_width = max_width};
  entry *e = recall(t, &wanted);
  if (e) {
    g_free(wanted.words);
  } else {
    make_room(t);
    set(t, &wanted.text, wanted.words);
    e = g_memdup2(&wanted, sizeof wanted);
    g_hash_table_add(t->fresh, e);
  }
  *text = e->text;
  g_object_ref(text->layout);
}

void ox_lettering_change(ox_lettering *text, ox_typesetter *t, const char *words) {
  if (!text->layout || strcmp(pango_layout_get_text(text->layout), words) == 0) return;
  ox_lettering was = *text;
  *text = (ox_lettering){0};
  ox_lettering_make(text, t, words, was.size, was.style, was.max_width);
  ox_lettering_clear(&was);
}

void ox_lettering_clear(ox_lettering *text) {
  if (text->layout) g_object_unref(text->layout);
  *text = (ox_lettering){0};
}

/* --- showing ------------------------------------------------------------------------------- */

static const cairo_user_data_key_t sink_key;

void ox_text_sink_set(cairo_surface_t *surface, ox_text_sink *sink) {
  cairo_surface_set_user_data(surface, &sink_key, sink, NULL);
}

void ox_lettering_show(const ox_lettering *text, cairo_t *cr, double x, double y) {
  if (!text->layout) return;
  const ox_text_sink *sink = cairo_surface_get_user_data(cairo_get_target(cr), &sink_key);
  cairo_move_to(cr, x, y);
  if (sink)
    sink->take(sink->data, cr, text->layout, x, y);
  else
    pango_cairo_show_layout(cr, text->layout);
}

void ox_lettering_show_ink(const ox_lettering *text, cairo_t *cr, double x, double y) {
  ox_lettering_show(text, cr, x - text->ink.x, y - text->ink.y);
}
