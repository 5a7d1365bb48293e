/* A strict look at JSON text before cJSON reads it. cJSON takes numbers such as 01 and 1., raw
 * line breaks inside strings, bytes that are not UTF-8, and cuts a string at an escaped zero; and
 * it tells neither line nor reason. What passes here means the same to every JSON program. */
#include "json_scan.h"

#include <stdio.h>
#include <string.h>

#include "oxbow/text.h"
#include "text.h"

typedef struct {
  const char *bytes;
  size_t length, at;
  int depth;
  ox_json_fault *fault;
} scanner;

static bool scan_value(scanner *s);

/* The sentence is marked for translators. */
static bool refuse(scanner *s, size_t at, const char *sentence) {
  s->fault->at = at;
  snprintf(s->fault->sentence, sizeof s->fault->sentence, "%s", _(sentence));
  return false;
}

/* "WANTED was expected, not X": X is the character here, or the end. What was wanted is marked for
 * translators. */
static bool refuse_for(scanner *s, const char *wanted) {
  char *out = s->fault->sentence;
  size_t room = sizeof s->fault->sentence;
  wanted = _(wanted);
  s->fault->at = s->at;
  if (s->at >= s->length) {
    snprintf(out, room, _("%s was expected, but the text ends"), wanted);
    return false;
  }
  unsigned char byte = (unsigned char)s->bytes[s->at];
  int width = (int)ox_utf8_length(s->bytes + s->at, s->length - s->at);
  if (byte < 0x20 || byte == 0x7f)
    snprintf(out, room, _("%s was expected, not control character %u"), wanted, (unsigned)byte);
  else
    snprintf(out, room, _("%s was expected, not '%.*s'"), wanted, width, s->bytes + s->at);
  return false;
}

static int peek(const scanner *s) {
  return s->at < s->length ? (unsigned char)s->bytes[s->at] : -1;
}

static bool is_figure(int c) {
  return c >= '0' && c <= '9';
}

static void skip_spaces(scanner *s) {
  while (s->at < s->length && memchr(" \t\r\n", s->bytes[s->at], 4))
    s->at++;
}

static size_t skip_figures(scanner *s) {
  size_t from = s->at;
  while (is_figure(peek(s)))
    s->at++;
  return s->at - from;
}

static bool scan_number(scanner *s) {
  size_t from = s->at;
  if (peek(s) == '-') s->at++;
  bool zero = peek(s) == '0';
  size_t figures = skip_figures(s);
  if (figures == 0) return refuse_for(s, N_("a figure after the minus sign"));
  if (zero && figures > 1) return refuse(s, from, N_("a number begins with a needless 0"));
  if (peek(s) == '.') {
    s->at++;
    if (skip_figures(s) == 0) return refuse_for(s, N_("a figure after the decimal point"));
  }
  if (peek(s) == 'e' || peek(s) == 'E') {
    s->at++;
    if (peek(s) == '+' || peek(s) == '-') s->at++;
    if (skip_figures(s) == 0) return refuse_for(s, N_("a figure in the exponent"));
  }
  if (s->at - from > OX_JSON_NUMBER_BYTES_MAX)
    return refuse(s, from, N_("a number is longer than 63 characters"));
  return true;
}

/* The four figures of \uXXXX; -1 when they are not there. */
static long scan_unit(scanner *s) {
  long unit = 0;
  for (int i = 0; i < 4; i++) {
    int c = peek(s);
    int figure = is_figure(c)           ? c - '0'
                 : c >= 'a' && c <= 'f' ? c - 'a' + 10
                 : c >= 'A' && c <= 'F' ? c - 'A' + 10
                                        : -1;
    if (figure < 0) {
      refuse_for(s, N_("four hexadecimal figures after \\u"));
      return -1;
    }
    unit = unit * 16 + figure;
    s->at++;
  }
  return unit;
}

static bool scan_escape(scanner *s) {
  size_t from = s->at++;
  int c = peek(s);
  if (c != 'u') {
    if (c < 0 || !memchr("\"\\/bfnrt", c, 8)) return refuse_for(s, N_("a JSON escape after \\"));
    s->at++;
    return true;
  }
  s->at++;
  long unit = scan_unit(s);
  if (unit < 0) return false;
  if (unit == 0) return refuse(s, from, N_("\\u0000 stands in a string; no text here holds it"));
  if (unit >= 0xdc00 && unit <= 0xdfff) return refuse(s, from, N_("half a surrogate pair"));
  if (unit < 0xd800 || unit > 0xdbff) return true;
  if (s->length - s->at < 2 || memcmp(s->bytes + s->at, "\\u", 2) != 0)
    return refuse(s, from, N_("half a surrogate pair"));
  s->at += 2;
  long low = scan_unit(s);
  if (low < 0) return false;
  return (low >= 0xdc00 && low <= 0xdfff) || refuse(s, from, N_("half a surrogate pair"));
}

static bool scan_string(scanner *s) {
  size_t from = s->at++;
  for (;;) {
    int c = peek(s);
    if (c < 0) return refuse(s, from, N_("a string that begins here does not end"));
    if (c == '"') break;
    if (c == '\n' || c == '\r') return refuse(s, s->at, N_("a line break stands inside a string"));
    if (c < 0x20) return refuse(s, s->at, N_("a control character stands inside a string"));
    if (c != '\\')
      s->at++;
    else if (!scan_escape(s))
      return false;
  }
  s->at++;
  return true;
}

static bool scan_word(scanner *s, const char *word) {
  size_t length = strlen(word);
  if (s->length - s->at < length || memcmp(s->bytes + s->at, word, length) != 0)
    return refuse_for(s, N_("a value"));
  s->at += length;
  return true;
}

static bool scan_key(scanner *s, bool first) {
  if (peek(s) != '"')
    return refuse_for(s,
                      first ? N_("a key in double quotes or '}'") : N_("a key in double quotes"));
  if (!scan_string(s)) return false;
  skip_spaces(s);
  if (peek(s) != ':') return refuse_for(s, N_("':' after the key"));
  s->at++;
  return true;
}

/* The members after '{' or '[', up to and with the closing bracket. */
static bool scan_members(scanner *s, char close) {
  bool object = close == '}';
  s->at++;
  skip_spaces(s);
  if (peek(s) == close) {
    s->at++;
    return true;
  }
  for (bool first = true;; first = false) {
    skip_spaces(s);
    if (object && !scan_key(s, first)) return false;
    if (!scan_value(s)) return false;
    skip_spaces(s);
    if (peek(s) == close) break;
    if (peek(s) != ',') return refuse_for(s, object ? N_("',' or '}'") : N_("',' or ']'"));
    s->at++;
  }
  s->at++;
  return true;
}

static bool scan_value(scanner *s) {
  skip_spaces(s);
  int c = peek(s);
  if (c == '"') return scan_string(s);
  if (c == '-' || is_figure(c)) return scan_number(s);
  if (c == 't') return scan_word(s, "true");
  if (c == 'f') return scan_word(s, "false");
  if (c == 'n') return scan_word(s, "null");
  if (c == '\'') return refuse(s, s->at, N_("strings stand in double quotes"));
  if (c != '{' && c != '[') return refuse_for(s, N_("a value"));
  if (s->depth == OX_JSON_DEPTH_MAX)
    return refuse(s, s->at, N_("brackets are nested more than 64 deep"));
  s->depth++;
  bool ok = scan_members(s, c == '{' ? '}' : ']');
  s->depth--;
  return ok;
}

static bool scan_bytes(scanner *s) {
  if (s->length >= 2 &&
      (memcmp(s->bytes, "\xff\xfe", 2) == 0 || memcmp(s->bytes, "\xfe\xff", 2) == 0))
    return refuse(s, 0, N_("the text is UTF-16; it has to be UTF-8"));
  for (size_t at = 0; at < s->length;) {
    size_t step = ox_utf8_length(s->bytes + at, s->length - at);
    if (step == 0) {
      s->fault->at = at;
      snprintf(s->fault->sentence, sizeof s->fault->sentence, _("byte %02x is not UTF-8"),
               (unsigned)(unsigned char)s->bytes[at]);
      return false;
    }
    if (s->bytes[at] == '\0') return refuse(s, at, N_("a zero byte stands in the text"));
    at += step;
  }
  return true;
}

bool ox_json_scan(const char *bytes, size_t length, ox_json_fault *fault) {
  scanner s = {bytes, length, 0, 0, fault};
  if (!scan_bytes(&s)) return false;
  if (!scan_value(&s)) return false;
  skip_spaces(&s);
  if (s.at < length) return refuse(&s, s.at, N_("text stands after the end of the document"));
  return true;
}

void ox_json_place(const char *bytes, size_t length, size_t at, size_t *line, size_t *column) {
  *line = 1;
  *column = 1;
  for (size_t i = 0; i < at && i < length;) {
    size_t step = ox_utf8_length(bytes + i, length - i);
    *column += 1;
    if (bytes[i] == '\n') {
      *line += 1;
      *column = 1;
    }
    i += step ? step : 1;
  }
}
