/* The catalogue of translations, through the C library's gettext. */
#include "oxbow/text.h"

#include <libintl.h>
#include <stdatomic.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* What gettext's tools put between a context and its text. */
#define BETWEEN "\004"

#define LETTERS_AND_DIGITS "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789"

enum { LONGEST_KEY = 2048 };

static atomic_bool is_open;
static _Thread_local bool in_english;

static bool is_asked(void) { return atomic_load(&is_open) && !in_english; }

void ox_text_open(const char *folder) {
  if (folder) {
    bindtextdomain(OX_TEXT_DOMAIN, folder);
    bind_textdomain_codeset(OX_TEXT_DOMAIN, "UTF-8");
  }
  atomic_store(&is_open, folder != NULL);
}

bool ox_text_english(bool on) {
  bool before = in_english;
  in_english = on;
  return before;
}

const char *ox_text_folder(void) {
  const char *folder = getenv("OXBOW_LOCALE");
  return folder && *folder ? folder : OX_LOCALE_DIR;
}

/* The empty text is the key of the catalogue's own header. */
const char *ox_text(const char *text) {
  if (!is_asked() || !text || !*text) return text;
  return dgettext(OX_TEXT_DOMAIN, text);
}

const char *ox_text_in(const char *context, const char *text) {
  char key[LONGEST_KEY];
  if (!is_asked()) return text;
  int length = snprintf(key, sizeof key, "%s" BETWEEN "%s", context, text);
  if (length < 0 || length >= LONGEST_KEY) return text;
  const char *found = dgettext(OX_TEXT_DOMAIN, key);
  return found == key ? text : found;
}

const char *ox_text_count(const char *one, const char *many, unsigned long count) {
  if (!is_asked()) return count == 1 ? one : many;
  return dngettext(OX_TEXT_DOMAIN, one, many, count);
}

const char *ox_text_decimal(void) { return ox_text_in("the decimal point of a figure", "."); }

/* The header is the translation of the empty text: a line for each of its fields. */
void ox_text_language(char *out, size_t bytes) {
  static const char field[] = "\nLanguage: ", nothing[] = ""; /* a literal would be collected */
  const char *header = is_asked() ? dgettext(OX_TEXT_DOMAIN, nothing) : nothing;
  const char *found = strstr(header, field);
  const char *tag = found ? found + strlen(field) : "en";
  size_t length = strspn(tag, LETTERS_AND_DIGITS "_-");
  if (length == 0 || length >= bytes) {
    tag = "en";
    length = strlen(tag);
  }
  if (bytes == 0) return;
  snprintf(out, bytes, "%.*s", (int)length, tag);
  for (char *at = out; *at; at++)
    if (*at == '_') *at = '-';
}
