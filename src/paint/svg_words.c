/* Finishing an SVG.
 *
 * cairo writes no title and no description, and numbers surfaces through the life of the process,
 * so that a second export of the same picture would differ from the first. */
#include "svg_words.h"

#include <string.h>

static const char SURFACE[] = "surface";

static void add_escaped(GString *out, const char *text) {
  for (const char *at = text; *at; at++) switch (*at) {
    case '&': g_string_append(out, "&amp;"); break;
    case '<': g_string_append(out, "&lt;"); break;
    case '>': g_string_append(out, "&gt;"); break;
    case '"': g_string_append(out, "&quot;"); break;
    default: /* most control characters are no XML at all */
      g_string_append_c(out, (unsigned char)*at < 0x20 && *at != '\n' ? ' ' : *at);
    }
}

static void add_words(GString *out, const char *title, const char *description) {
  g_string_append(out, "\n<title>");
  add_escaped(out, title);
  g_string_append(out, "</title>\n<desc>");
  add_escaped(out, description);
  g_string_append(out, "</desc>");
}

/* Copies text with every "surface<number>" renumbered in order of first appearance. */
static void add_renumbered(GString *out, const char *text) {
  GHashTable *numbers = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
  for (const char *at = text; *at;) {
    const char *next = strstr(at, SURFACE);
    if (!next) {
      g_string_append(out, at);
      break;
    }
    next += strlen(SURFACE);
    g_string_append_len(out, at, next - at);
    size_t digits = strspn(next, "0123456789");
    at = next + digits;
    if (digits == 0) continue;
    char *old = g_strndup(next, digits);
    guint number = GPOINTER_TO_UINT(g_hash_table_lookup(numbers, old));
    if (number == 0) {
      number = g_hash_table_size(numbers) + 1;
      g_hash_table_insert(numbers, g_strdup(old), GUINT_TO_POINTER(number));
    }
    g_string_append_printf(out, "%u", number);
    g_free(old);
  }
  g_hash_table_destroy(numbers);
}

GString *ox_svg_with_words(const GString *svg, const char *title, const char *description) {
  GString *out = g_string_sized_new(svg->len + 4096);
  const char *tag = strstr(svg->str, "<svg");
  const char *end = tag ? strchr(tag, '>') : NULL;
  const char *rest = svg->str;
  if (end) {
    g_string_append_len(out, svg->str, end + 1 - svg->str);
    add_words(out, title, description);
    rest = end + 1;
  }
  add_renumbered(out, rest);
  return out;
}
