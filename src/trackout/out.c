/* Text and figures into the sink. */
#include <inttypes.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "trackout_private.h"

static void put(ox_out *out, const char *bytes, size_t length) {
  if (out->failed || length == 0) return;
  if (out->sink(out->context, bytes, length) != OX_OK) out->failed = true;
}

void out_text(ox_out *out, const char *text) { put(out, text, strlen(text)); }

void out_whole(ox_out *out, int64_t value) {
  char text[24];
  snprintf(text, sizeof text, "%" PRId64, value);
  out_text(out, text);
}

/* By whole numbers, so that no locale has a say. */
void out_fixed(ox_out *out, double value, int decimals) {
  static const int64_t tens[] = {1,       10,        100,        1000,        10000,
                                 100000,  1000000,   10000000,   100000000,   1000000000};
  int64_t scale = tens[decimals];
  int64_t scaled = llround(value * (double)scale);
  char text[48];
  uint64_t size = scaled < 0 ? (uint64_t)0 - (uint64_t)scaled : (uint64_t)scaled;
  uint64_t whole = size / (uint64_t)scale, rest = size % (uint64_t)scale;
  snprintf(text, sizeof text, "%s%" PRIu64, scaled < 0 ? "-" : "", whole);
  out_text(out, text);
  if (decimals == 0) return;
  snprintf(text, sizeof text, ".%0*" PRIu64, decimals, rest);
  out_text(out, text);
}

/* Bytes that are one of the two characters of UTF-8 which XML 1.0 (2.2) does not allow: U+FFFE and
 * U+FFFF. */
static bool no_character(const unsigned char *at) {
  return at[0] == 0xEFu && at[1] == 0xBFu && (at[2] == 0xBEu || at[2] == 0xBFu);
}

void out_xml(ox_out *out, const char *text) {
  const unsigned char *at = (const unsigned char *)text;
  for (; *at; at++) {
    if (*at == '&')
      out_text(out, "&amp;");
    else if (*at == '<')
      out_text(out, "&lt;");
    else if (*at == '>')
      out_text(out, "&gt;");
    else if (*at == '"')
      out_text(out, "&quot;");
    else if (no_character(at))
      at += 2;
    else if (*at >= 0x20u)
      put(out, (const char *)at, 1);
  }
}

void out_json(ox_out *out, const char *text) {
  out_text(out, "\"");
  for (; *text; text++) {
    unsigned char byte = (unsigned char)*text;
    char escaped[8];
    if (byte == '"' || byte == '\\')
      snprintf(escaped, sizeof escaped, "\\%c", byte);
    else if (byte < 0x20u)
      snprintf(escaped, sizeof escaped, "\\u%04x", byte);
    else
      snprintf(escaped, sizeof escaped, "%c", byte);
    out_text(out, escaped);
  }
  out_text(out, "\"");
}
