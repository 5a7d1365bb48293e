/* Words in an SVG as words.
 *
 * A paragraph is one element, so that it is found and selected whole; each of its lines says where
 * it stands and how wide it was laid out, and keeps that width in another font. */
#include "svg_texts.h"

#include <math.h>
#include <stdbool.h>
#include <string.h>

#define ADDRESS "oxbow-words:"
#define MARK_ROOM_EM 1.0 /* around the ink of words: a clip of the mark must not cut them */

/* The layout's font, and one that is about as wide where that is missing. Words run from left to
 * right whatever the page around the drawing does, and spaces count. */
const char OX_SVG_TEXT_ATTRIBUTES[] =
    " xml:space=\"preserve\" direction=\"ltr\" text-rendering=\"geometricPrecision\""
    " font-family=\"'DejaVu Sans', Verdana, sans-serif\"";

struct ox_svg_texts {
  ox_text_sink sink;
  GPtrArray *elements; /* strings, in the order in which they were shown */
};

/* --- escaping ------------------------------------------------------------------------------ */

static void add_character(GString *out, gunichar c) {
  switch (c) {
  case '&': g_string_append(out, "&amp;"); return;
  case '<': g_string_append(out, "&lt;"); return;
  case '>': g_string_append(out, "&gt;"); return;
  case '"': g_string_append(out, "&quot;"); return;
  case '\n': g_string_append_c(out, '\n'); return;
  case 0xfffe:
  case 0xffff: g_string_append_unichar(out, 0xfffd); return; /* XML 1.0, section 2.2 */
  default: g_string_append_unichar(out, c < 0x20 || (c >= 0x7f && c < 0xa0) ? ' ' : c);
  }
}

void ox_svg_add_escaped(GString *out, const char *text) {
  for (const char *at = text; *at; at = g_utf8_next_char(at))
    add_character(out, g_utf8_get_char(at));
}

/* --- numbers ------------------------------------------------------------------------------- */

/* With at most so many decimals, the same in every locale. */
static void add_number(GString *out, double value, int decimals) {
  char format[8], digits[G_ASCII_DTOSTR_BUF_SIZE + 400];
  g_snprintf(format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd(digits, sizeof digits, format, value);
  size_t length = strlen(digits);
  while (digits[length - 1] == '0') length--;
  if (digits[length - 1] == '.') length--;
  digits[length] = '\0';
  g_string_append(out, strcmp(digits, "-0") == 0 ? "0" : digits);
}

static void add_attribute(GString *out, const char *name, double value, int decimals) {
  g_string_append_printf(out, " %s=\"", name);
  add_number(out, value, decimals);
  g_string_append_c(out, '"');
}

/* --- lines --------------------------------------------------------------------------------- */

/* A line as it is seen. Spaces at its end are not: they are left out. */
typedef struct {
  char *words;        /* NULL: nothing to be seen */
  bool first, spaced; /* of a paragraph; with spaces at its end */
  double x, baseline, width;
} line;

static int by_place(gconstpointer a, gconstpointer b) {
  const PangoGlyphItem *const *first = a, *const *second = b;
  return (*first)->item->offset - (*second)->item->offset;
}

/* The words of a line as they are read, the ellipsis in place of what it stands for. */
static char *words_of(const char *text, const PangoLayoutLine *l) {
  GPtrArray *runs = g_ptr_array_new();
  for (GSList *at = l->runs; at; at = at->next) g_ptr_array_add(runs, at->data);
  g_ptr_array_sort(runs, by_place);
  GString *words = g_string_new(NULL);
  for (guint i = 0; i < runs->len; i++) {
    const PangoItem *item = ((PangoGlyphItem *)g_ptr_array_index(runs, i))->item;
    if (item->analysis.flags & PANGO_ANALYSIS_FLAG_IS_ELLIPSIS)
      g_string_append(words, "…");
    else
      g_string_append_len(words, text + item->offset, item->length);
  }
  g_ptr_array_free(runs, TRUE);
  return g_string_free(words, FALSE);
}

/* Bytes of words without the spaces at their end. */
static size_t seen_bytes(const char *words) {
  const char *end = words + strlen(words);
  while (end > words) {
    const char *before = g_utf8_prev_char(end);
    if (!g_unichar_isspace(g_utf8_get_char(before))) break;
    end = before;
  }
  return (size_t)(end - words);
}

static line line_at(PangoLayout *layout, PangoLayoutIter *at) {
  PangoLayoutLine *l = pango_layout_iter_get_line_readonly(at);
  PangoRectangle logical;
  pango_layout_iter_get_line_extents(at, NULL, &logical);
  char *words = words_of(pango_layout_get_text(layout), l);
  size_t all = strlen(words), seen = seen_bytes(words);
  int width = logical.width;
  if (seen < all)
    pango_layout_line_index_to_x(l, l->start_index + l->length - (int)(all - seen), FALSE, &width);
  words[seen] = '\0';
  if (seen == 0) g_clear_pointer(&words, g_free);
  return (line){words, l->is_paragraph_start, seen < all, (double)logical.x / PANGO_SCALE,
                (double)pango_layout_iter_get_baseline(at) / PANGO_SCALE,
                (double)width / PANGO_SCALE};
}

/* --- elements ------------------------------------------------------------------------------ */

static void add_colour(GString *out, cairo_pattern_t *source) {
  double r, g, b, a;
  cairo_pattern_get_rgba(source, &r, &g, &b, &a);
  g_string_append_printf(out, " fill=\"#%02x%02x%02x\"", (unsigned)lround(255.0 * r),
                         (unsigned)lround(255.0 * g), (unsigned)lround(255.0 * b));
  if (a < 1.0) add_attribute(out, "fill-opacity", a, 3);
}

static void add_font(GString *out, PangoLayout *layout) {
  const PangoFontDescription *font = pango_layout_get_font_description(layout);
  add_attribute(out, "font-size", (double)pango_font_description_get_size(font) / PANGO_SCALE, 3);
  PangoWeight weight = pango_font_description_get_weight(font);
  if (weight != PANGO_WEIGHT_NORMAL)
    g_string_append_printf(out, " font-weight=\"%d\"", (int)weight);
}

static void add_place(GString *out, const line *l, double x, double y) {
  add_attribute(out, "x", x + l->x, 3);
  add_attribute(out, "y", y + l->baseline, 3);
  if (l->width <= 0.0) return; /* a mark over nothing has no width to keep */
  add_attribute(out, "textLength", l->width, 3);
  g_string_append(out, " lengthAdjust=\"spacingAndGlyphs\"");
}

/* Words at x, y in the user's space; where that is only moved, the place is the drawing's. */
static void add_transform(GString *out, const cairo_matrix_t *m) {
  const double part[] = {m->xx, m->yx, m->xy, m->yy, m->x0, m->y0};
  for (int i = 0; i < 6; i++) {
    g_string_append(out, i == 0 ? " transform=\"matrix(" : ",");
    add_number(out, part[i], 6);
  }
  g_string_append(out, ")\"");
}

static bool only_moves(const cairo_matrix_t *m) {
  return m->xx == 1.0 && m->yy == 1.0 && m->xy == 0.0 && m->yx == 0.0;
}

/* The lines that are seen, `spaced` where more than a break in a word is before the next; the
 * caller clears them. */
static GArray *lines_of(PangoLayout *layout) {
  GArray *lines = g_array_new(FALSE, FALSE, sizeof(line));
  PangoLayoutIter *at = pango_layout_get_iter(layout);
  do {
    line l = line_at(layout, at);
    line *before = lines->len > 0 ? &g_array_index(lines, line, lines->len - 1) : NULL;
    if (before) before->spaced = before->spaced || l.first || !l.words;
    if (l.words) g_array_append_val(lines, l);
  } while (pango_layout_iter_next_line(at));
  pango_layout_iter_free(at);
  return lines;
}

/* NULL when there is nothing to be seen. */
static char *element_of(cairo_t *cr, PangoLayout *layout, double x, double y) {
  GArray *lines = lines_of(layout);
  GString *out = g_string_new("<text");
  cairo_matrix_t m;
  cairo_get_matrix(cr, &m);
  if (only_moves(&m))
    cairo_user_to_device(cr, &x, &y);
  else
    add_transform(out, &m);
  add_font(out, layout);
  add_colour(out, cairo_get_source(cr));
  bool alone = lines->len == 1;
  if (!alone) g_string_append_c(out, '>');
  for (guint i = 0; i < lines->len; i++) {
    line *l = &g_array_index(lines, line, i);
    if (!alone) g_string_append(out, "<tspan");
    add_place(out, l, x, y);
    g_string_append_c(out, '>');
    ox_svg_add_escaped(out, l->words);
    if (!alone) g_string_append(out, "</tspan>");
    if (i + 1 < lines->len && l->spaced) g_string_append_c(out, ' ');
    g_free(l->words);
  }
  g_string_append(out, "</text>");
  bool nothing = lines->len == 0;
  g_array_free(lines, TRUE);
  return g_string_free(out, nothing);
}

/* --- marks --------------------------------------------------------------------------------- */

static cairo_surface_t *mark_new(guint number) {
  cairo_surface_t *mark = cairo_image_surface_create(CAIRO_FORMAT_A8, 1, 1);
  unsigned char *pixel = cairo_image_surface_get_data(mark);
  if (pixel) *pixel = 255; /* a clear image would not be painted */
  cairo_surface_mark_dirty(mark);
  char *address = g_strdup_printf(ADDRESS "%u", number);
  cairo_surface_set_mime_data(mark, CAIRO_MIME_TYPE_URI, (const unsigned char *)address,
                              strlen(address), g_free, address);
  return mark;
}

static void put_mark(cairo_t *cr, PangoLayout *layout, double x, double y, guint number) {
  PangoRectangle ink;
  pango_layout_get_extents(layout, &ink, NULL);
  const PangoFontDescription *font = pango_layout_get_font_description(layout);
  double room = MARK_ROOM_EM * pango_font_description_get_size(font);
  cairo_surface_t *mark = mark_new(number);
  cairo_save(cr);
  cairo_translate(cr, x + (ink.x - room) / PANGO_SCALE, y + (ink.y - room) / PANGO_SCALE);
  cairo_scale(cr, (ink.width + 2.0 * room) / PANGO_SCALE, (ink.height + 2.0 * room) / PANGO_SCALE);
  cairo_set_source_surface(cr, mark, 0.0, 0.0);
  cairo_paint(cr);
  cairo_restore(cr);
  cairo_surface_destroy(mark);
}

static void take(void *data, cairo_t *cr, PangoLayout *layout, double x, double y) {
  ox_svg_texts *texts = data;
  if (cairo_pattern_get_type(cairo_get_source(cr)) != CAIRO_PATTERN_TYPE_SOLID) {
    pango_cairo_show_layout(cr, layout); /* not in one colour: these stay outlines */
    return;
  }
  char *element = element_of(cr, layout, x, y);
  if (!element) return;
  g_ptr_array_add(texts->elements, element);
  put_mark(cr, layout, x, y, texts->elements->len - 1);
}

ox_svg_texts *ox_svg_texts_new(cairo_surface_t *surface) {
  ox_svg_texts *texts = g_new0(ox_svg_texts, 1);
  texts->elements = g_ptr_array_new_with_free_func(g_free);
  texts->sink = (ox_text_sink){take, texts};
  ox_text_sink_set(surface, &texts->sink);
  return texts;
}

void ox_svg_texts_free(ox_svg_texts *texts) {
  if (!texts) return;
  g_ptr_array_free(texts->elements, TRUE);
  g_free(texts);
}

/* --- putting the words in ------------------------------------------------------------------ */

static bool number_after(const char *text, const char *end, const char *word, guint *number) {
  const char *at = g_strstr_len(text, end - text, word);
  if (!at) return false;
  *number = (guint)g_ascii_strtoull(at + strlen(word), NULL, 10);
  return true;
}

/* Whether a tag is the image of a mark, or its use; then the words to put there, which for the
 * image are none. `marks` maps the number of an image to 1 and the number of the words. */
static bool is_mark(const ox_svg_texts *texts, GHashTable *marks, const char *tag, const char *end,
                    const char **words) {
  guint image = 0, number = 0;
  *words = "";
  if (g_str_has_prefix(tag, "<image ")) {
    if (!number_after(tag, end, "id=\"image", &image) ||
        !number_after(tag, end, "xlink:href=\"" ADDRESS, &number))
      return false;
    g_hash_table_insert(marks, GUINT_TO_POINTER(image), GUINT_TO_POINTER(1 + number));
    return true;
  }
  if (!g_str_has_prefix(tag, "<use ") || !number_after(tag, end, "xlink:href=\"#image", &image))
    return false;
  number = GPOINTER_TO_UINT(g_hash_table_lookup(marks, GUINT_TO_POINTER(image)));
  if (number == 0 || number > texts->elements->len) return false;
  *words = g_ptr_array_index(texts->elements, number - 1);
  return true;
}

void ox_svg_texts_put(const ox_svg_texts *texts, GString *out, const char *svg) {
  GHashTable *marks = g_hash_table_new(NULL, NULL);
  const char *tag, *end, *words;
  while ((tag = strchr(svg, '<')) != NULL && (end = strchr(tag, '>')) != NULL) {
    bool mark = is_mark(texts, marks, tag, end + 1, &words);
    g_string_append_len(out, svg, (mark ? tag : end + 1) - svg);
    if (mark) g_string_append(out, words);
    svg = end + 1;
    if (mark && !*words && *svg == '\n') svg++;
  }
  g_string_append(out, svg);
  g_hash_table_destroy(marks);
}
