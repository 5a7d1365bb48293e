#include "svg_support.h"

#include <glib/gstdio.h>
#include <pango/pango.h>

#include "ox_test.h"

/* --- words --------------------------------------------------------------------------------- */

static bool in_xml(gunichar c) { /* XML 1.0, production 2 */
  return c == 0x9 || c == 0xa || c == 0xd || (c >= 0x20 && c <= 0xd7ff) ||
         (c >= 0xe000 && c <= 0xfffd) || (c >= 0x10000 && c <= 0x10ffff);
}

char *svg_normal(const char *words) {
  char *valid = g_utf8_make_valid(words, -1);
  GString *out = g_string_new(NULL);
  bool space = false;
  for (const char *at = valid; *at; at = g_utf8_next_char(at)) {
    gunichar c = g_utf8_get_char(at);
    if (c < 0x20 || (c >= 0x7f && c < 0xa0) || g_unichar_isspace(c)) {
      space = true;
      continue;
    }
    if (space && out->len > 0) g_string_append_c(out, ' ');
    space = false;
    g_string_append_unichar(out, in_xml(c) ? c : 0xfffd);
  }
  g_free(valid);
  return g_string_free(out, FALSE);
}

/* --- structure ----------------------------------------------------------------------------- */

typedef struct {
  svg_read *read;
  GPtrArray *open;   /* names of the open elements */
  GHashTable *ids;
  GPtrArray *wanted; /* ids that are referred to */
  GString *words;
} reader;

static const char *inside(const reader *r) {
  return r->open->len > 0 ? g_ptr_array_index(r->open, r->open->len - 1) : "nothing";
}

static bool among(const char *word, const char *list) {
  char **all = g_strsplit(list, " ", -1);
  bool found = g_strv_contains((const char *const *)all, word);
  g_strfreev(all);
  return found;
}

/* Elements with their parents and attributes, SVG 1.1 second edition, as far as a picture needs
 * them. */
static const struct {
  const char *name, *parents, *attributes;
} grammar[] = {
    {"svg", "nothing", "xmlns xmlns:xlink width height viewBox version xml:lang xml:space direction "
                "text-rendering font-family"},
    {"title", "svg", ""},
    {"desc", "svg", ""},
    {"defs", "svg", ""},
    {"g", "svg g defs mask", "id clip-path clip-rule filter style mask"},
    {"path", "g clipPath", "style d transform clip-rule"},
    {"rect", "g clipPath", "x y width height style"},
    {"clipPath", "defs", "id"},
    {"mask", "defs", "id"},
    {"filter", "defs", "id filterUnits x y width height"},
    {"feColorMatrix", "filter", "type in values"},
    {"image", "defs", "id width height xlink:href"},
    {"use", "g", "id xlink:href transform mask style clip-path"},
    {"text", "g", "x y transform font-size font-weight fill fill-opacity textLength lengthAdjust"},
    {"tspan", "text", "x y textLength lengthAdjust"},
};

static void check_element(const reader *r, const char *name, const char **attributes) {
  for (size_t i = 0; i < sizeof grammar / sizeof *grammar; i++) {
    if (strcmp(grammar[i].name, name) != 0) continue;
    if (!among(inside(r), grammar[i].parents)) fail_msg("<%s> in <%s>", name, inside(r));
    for (; *attributes; attributes++)
      if (!among(*attributes, grammar[i].attributes)) fail_msg("%s of <%s>", *attributes, name);
    return;
  }
  fail_msg("<%s>", name);
}

static void note_reference(reader *r, const char *key, const char *value) {
  if (strcmp(key, "id") == 0) assert_true(g_hash_table_add(r->ids, g_strdup(value)));
  if (strcmp(key, "xlink:href") == 0) {
    if (g_str_has_prefix(value, "data:image/png;base64,")) return;
    assert_int_equal(value[0], '#');
    g_ptr_array_add(r->wanted, g_strdup(value + 1));
  }
  const char *url = strstr(value, "url(");
  if (!url) return;
  assert_true(g_str_has_prefix(url, "url(#"));
  g_ptr_array_add(r->wanted, g_strndup(url + 5, strcspn(url + 5, ")")));
}

static const char *value_of(const char **keys, const char **values, const char *key) {
  for (; *keys; keys++, values++)
    if (strcmp(*keys, key) == 0) return *values;
  return NULL;
}

static double number_of(const char **keys, const char **values, const char *key) {
  const char *value = value_of(keys, values, key);
  if (!value) return (double)NAN;
  char *end;
  double number = g_ascii_strtod(value, &end);
  assert_true(*end == '\0' && isfinite(number));
  return number;
}

static void begin_line(svg_words *w, const char **keys, const char **values) {
  if (w->lines++ == 0) {
    w->x = number_of(keys, values, "x");
    w->y = number_of(keys, values, "y");
    w->length = number_of(keys, values, "textLength");
  }
  const char *adjust = value_of(keys, values, "lengthAdjust");
  bool keeps = number_of(keys, values, "textLength") > 0.0 && adjust &&
               strcmp(adjust, "spacingAndGlyphs") == 0;
  w->keeps_width = w->keeps_width && keeps;
}

static void begin_text(reader *r, const char **keys, const char **values) {
  svg_words *w = g_new0(svg_words, 1);
  w->fill = g_strdup(value_of(keys, values, "fill"));
  w->size = g_strdup(value_of(keys, values, "font-size"));
  w->weight = g_strdup(value_of(keys, values, "font-weight"));
  w->transform = g_strdup(value_of(keys, values, "transform"));
  w->keeps_width = true;
  if (value_of(keys, values, "x")) begin_line(w, keys, values);
  g_ptr_array_add(r->read->texts, w);
}

static void begin(GMarkupParseContext *context, const char *name, const char **keys,
                  const char **values, gpointer data, GError **error) {
  (void)context, (void)error;
  reader *r = data;
  check_element(r, name, keys);
  for (size_t i = 0; keys[i]; i++) note_reference(r, keys[i], values[i]);
  if (strcmp(name, "svg") == 0) {
    r->read->language = g_strdup(value_of(keys, values, "xml:lang"));
    r->read->font = g_strdup(value_of(keys, values, "font-family"));
  }
  if (strcmp(name, "text") == 0) begin_text(r, keys, values);
  if (strcmp(name, "tspan") == 0)
    begin_line(g_ptr_array_index(r->read->texts, r->read->texts->len - 1), keys, values);
  else
    g_string_truncate(r->words, 0);
  g_ptr_array_add(r->open, g_strdup(name));
}

static void end(GMarkupParseContext *context, const char *name, gpointer data, GError **error) {
  (void)context, (void)error;
  reader *r = data;
  g_ptr_array_set_size(r->open, (int)r->open->len - 1);
  if (strcmp(name, "title") == 0) r->read->title = g_strdup(r->words->str);
  if (strcmp(name, "desc") == 0) r->read->description = g_strdup(r->words->str);
  if (strcmp(name, "text") != 0) return;
  svg_words *w = g_ptr_array_index(r->read->texts, r->read->texts->len - 1);
  w->words = svg_normal(r->words->str);
}

static void characters(GMarkupParseContext *context, const char *text, gsize length, gpointer data,
                       GError **error) {
  (void)context, (void)error;
  reader *r = data;
  g_string_append_len(r->words, text, (gssize)length);
  if (among(inside(r), "title desc text tspan")) return;
  for (gsize i = 0; i < length; i++) assert_true(g_ascii_isspace(text[i])); /* no words loose */
}

static void free_words(gpointer data) {
  svg_words *w = data;
  g_free(w->words);
  g_free(w->fill);
  g_free(w->size);
  g_free(w->weight);
  g_free(w->transform);
  g_free(w);
}

static void check_characters(const char *bytes, size_t length) {
  assert_true(g_utf8_validate(bytes, (gssize)length, NULL));
  for (const char *at = bytes; at < bytes + length; at = g_utf8_next_char(at))
    assert_true(in_xml(g_utf8_get_char(at)));
}

svg_read *svg_read_new(const char *bytes, size_t length) {
  static const GMarkupParser parser = {.start_element = begin, .end_element = end,
                                       .text = characters};
  svg_read *read = g_new0(svg_read, 1);
  read->texts = g_ptr_array_new_with_free_func(free_words);
  reader r = {read, g_ptr_array_new_with_free_func(g_free),
              g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL),
              g_ptr_array_new_with_free_func(g_free), g_string_new(NULL)};
  check_characters(bytes, length);
  GError *error = NULL;
  GMarkupParseContext *context = g_markup_parse_context_new(&parser, 0, &r, NULL);
  bool whole = g_markup_parse_context_parse(context, bytes, (gssize)length, &error) &&
               g_markup_parse_context_end_parse(context, &error);
  if (!whole) fail_msg("%s", error->message);
  g_markup_parse_context_free(context);
  for (guint i = 0; i < r.wanted->len; i++)
    assert_true(g_hash_table_contains(r.ids, g_ptr_array_index(r.wanted, i)));
  g_ptr_array_free(r.open, TRUE);
  g_ptr_array_free(r.wanted, TRUE);
  g_hash_table_destroy(r.ids);
  g_string_free(r.words, TRUE);
  return read;
}

void svg_read_free(svg_read *read) {
  g_ptr_array_free(read->texts, TRUE);
  g_free(read->language);
  g_free(read->font);
  g_free(read->title);
  g_free(read->description);
  g_free(read);
}

size_t svg_count(const svg_read *read, const char *words) {
  char *wanted = svg_normal(words);
  size_t count = 0;
  for (guint i = 0; i < read->texts->len; i++)
    count += strcmp(((svg_words *)g_ptr_array_index(read->texts, i))->words, wanted) == 0;
  g_free(wanted);
  return count;
}

ox_status svg_take(void *string, const void *bytes, size_t length) {
  g_string_append_len(string, bytes, (gssize)length);
  return OX_OK;
}

/* --- other programs ------------------------------------------------------------------------ */

static void run(const char *const *arguments) {
  char *said = NULL;
  int status = -1;
  GError *error = NULL;
  if (!g_spawn_sync(NULL, (char **)(uintptr_t)arguments, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL,
                    NULL, &said, &status, &error))
    fail_msg("%s: %s", arguments[0], error->message);
  if (status != 0) fail_msg("%s: %s", arguments[0], said);
  g_free(said);
}

cairo_surface_t *svg_render(const GString *svg, int width, int height) {
  char *folder = g_dir_make_tmp("oxbow-svg-XXXXXX", NULL);
  assert_non_null(folder);
  char *from = g_build_filename(folder, "a.svg", NULL), *to = g_build_filename(folder, "a.png", NULL);
  assert_true(g_file_set_contents(from, svg->str, (gssize)svg->len, NULL));
  char broad[16], high[16];
  g_snprintf(broad, sizeof broad, "%d", width);
  g_snprintf(high, sizeof high, "%d", height);
  run((const char *const[]){"rsvg-convert", "-w", broad, "-h", high, from, "-o", to, NULL});
  cairo_surface_t *image = cairo_image_surface_create_from_png(to);
  assert_int_equal(cairo_surface_status(image), CAIRO_STATUS_SUCCESS);
  assert_int_equal(cairo_image_surface_get_width(image), width);
  assert_int_equal(cairo_image_surface_get_height(image), height);
  g_remove(from);
  g_remove(to);
  g_rmdir(folder);
  g_free(from);
  g_free(to);
  g_free(folder);
  return image;
}

void svg_lint(const char *folder) {
  GPtrArray *arguments = g_ptr_array_new_with_free_func(g_free);
  g_ptr_array_add(arguments, g_strdup("xmllint"));
  g_ptr_array_add(arguments, g_strdup("--noout"));
  GDir *files = g_dir_open(folder, 0, NULL);
  const char *name;
  while ((name = g_dir_read_name(files)) != NULL)
    g_ptr_array_add(arguments, g_build_filename(folder, name, NULL));
  g_dir_close(files);
  assert_true(arguments->len > 2);
  g_ptr_array_add(arguments, NULL);
  run((const char *const *)arguments->pdata);
  g_ptr_array_free(arguments, TRUE);
}

svg_difference svg_compare(cairo_surface_t *a, cairo_surface_t *b) {
  int width = cairo_image_surface_get_width(a), height = cairo_image_surface_get_height(a);
  assert_int_equal(width, cairo_image_surface_get_width(b));
  assert_int_equal(height, cairo_image_surface_get_height(b));
  double sum = 0.0, far = 0.0;
  for (int y = 0; y < height; y++) {
    const unsigned char *p =
        cairo_image_surface_get_data(a) + (ptrdiff_t)y * cairo_image_surface_get_stride(a);
    const unsigned char *q =
        cairo_image_surface_get_data(b) + (ptrdiff_t)y * cairo_image_surface_get_stride(b);
    for (int x = 0; x < width; x++, p += 4, q += 4) {
      int most = 0;
      for (int k = 0; k < 3; k++) most = abs(p[k] - q[k]) > most ? abs(p[k] - q[k]) : most;
      sum += most;
      far += most > 96;
    }
  }
  double pixels = (double)width * height;
  return (svg_difference){sum / pixels, 100.0 * far / pixels};
}
