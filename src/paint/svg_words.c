/* Finishing an SVG.
 *
 * cairo writes no title and no description, and numbers surfaces and images through the life of the
 * process, so that a second export of the same picture would differ from the first. */
#include "svg_words.h"

#include <string.h>

static void add_words(GString *out, const char *title, const char *description) {
  g_string_append(out, "\n<title>");
  ox_svg_add_escaped(out, title);
  g_string_append(out, "</title>\n<desc>");
  ox_svg_add_escaped(out, description);
  g_string_append(out, "</desc>");
}

/* Length of a name that cairo numbered, with its digits; 0 where there is none. *word is set to the
 * length without them. */
static size_t numbered(const char *text, size_t *word) {
  static const char *const words[] = {"surface", "image"};
  for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
    *word = strlen(words[i]);
    if (strncmp(text, words[i], *word) != 0) continue;
    size_t digits = strspn(text + *word, "0123456789");
    if (digits > 0) return *word + digits;
  }
  return 0;
}

/* Copies text with those names renumbered in order of first appearance. They stand after a quote
 * or a hash, which the data of an image never has. */
static void add_renumbered(GString *out, const char *text) {
  GHashTable *numbers = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
  while (*text) {
    size_t plain = strcspn(text, "\"#"), word = 0;
    if (text[plain]) plain++;
    g_string_append_len(out, text, (gssize)plain);
    text += plain;
    size_t length = numbered(text, &word);
    if (length == 0) continue;
    char *old = g_strndup(text, length);
    guint number = GPOINTER_TO_UINT(g_hash_table_lookup(numbers, old));
    if (number == 0) {
      number = g_hash_table_size(numbers) + 1;
      g_hash_table_insert(numbers, g_strdup(old), GUINT_TO_POINTER(number));
    }
    g_string_append_printf(out, "%.*s%u", (int)word, text, number);
    g_free(old);
    text += length;
  }
  g_hash_table_destroy(numbers);
}

GString *ox_svg_with_words(const GString *svg, const ox_svg_texts *texts, const char *title,
                           const char *description, const char *language) {
  GString *out = g_string_sized_new(svg->len + 4096), *drawn = g_string_sized_new(svg->len);
  const char *tag = strstr(svg->str, "<svg");
  const char *end = tag ? strchr(tag, '>') : NULL;
  const char *rest = svg->str;
  if (end) {
    g_string_append_len(out, svg->str, end - svg->str);
    g_string_append_printf(out, " xml:lang=\"%s\"%s>", language, OX_SVG_TEXT_ATTRIBUTES);
    add_words(out, title, description);
    rest = end + 1;
  }
  add_renumbered(drawn, rest); /* first: the words themselves are left alone */
  ox_svg_texts_put(texts, out, drawn->str);
  g_string_free(drawn, TRUE);
  return out;
}
