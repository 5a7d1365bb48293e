/* Growing text and the list of messages: everything the store says to people is put together
 * here, so that a file name or a key full of odd bytes can never break a window or a terminal. */
#include "text.h"

#include <cJSON.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

static bool reserve(ox_growing *t, size_t more) {
  if (t->failed) return false;
  if (more < t->capacity - t->length) return true;
  size_t capacity = t->capacity ? t->capacity : 64;
  while (capacity - t->length <= more) {
    if (capacity > (size_t)-1 / 4) {
      t->failed = true;
      return false;
    }
    capacity *= 2;
  }
  char *bytes = cJSON_malloc(capacity);
  if (!bytes) {
    t->failed = true;
    return false;
  }
  if (t->bytes) memcpy(bytes, t->bytes, t->length);
  cJSON_free(t->bytes);
  t->bytes = bytes;
  t->capacity = capacity;
  return true;
}

void ox_growing_put(ox_growing *t, const char *bytes, size_t length) {
  if (!reserve(t, length)) return;
  if (length > 0) memcpy(t->bytes + t->length, bytes, length);
  t->length += length;
  t->bytes[t->length] = '\0';
}

void ox_growing_puts(ox_growing *t, const char *string) {
  ox_growing_put(t, string, strlen(string));
}

void ox_growing_printf(ox_growing *t, const char *format, ...) {
  va_list list;
  va_start(list, format);
  int length = vsnprintf(NULL, 0, format, list);
  va_end(list);
  if (length < 0 || !reserve(t, (size_t)length + 1)) return;
  va_start(list, format);
  vsnprintf(t->bytes + t->length, (size_t)length + 1, format, list);
  va_end(list);
  t->length += (size_t)length;
}

void ox_growing_clear(ox_growing *t) {
  cJSON_free(t->bytes);
  *t = (ox_growing){0};
}

size_t ox_utf8_length(const char *bytes, size_t available) {
  if (available == 0) return 0;
  const unsigned char *b = (const unsigned char *)bytes;
  if (b[0] < 0x80) return 1;
  size_t length = b[0] >= 0xf0 ? 4 : b[0] >= 0xe0 ? 3 : 2;
  if (b[0] < 0xc2 || b[0] > 0xf4 || available < length) return 0;
  for (size_t i = 1; i < length; i++)
    if ((b[i] & 0xc0) != 0x80) return 0;
  if (b[0] == 0xe0 && b[1] < 0xa0) return 0; /* overlong */
  if (b[0] == 0xed && b[1] > 0x9f) return 0; /* a surrogate */
  if (b[0] == 0xf0 && b[1] < 0x90) return 0; /* overlong */
  if (b[0] == 0xf4 && b[1] > 0x8f) return 0; /* above U+10FFFF */
  return length;
}

static bool is_control(unsigned char byte) {
  return byte < 0x20 || byte == 0x7f;
}

static void put_hex(ox_growing *t, const char *before, unsigned char byte) {
  static const char figures[] = "0123456789abcdef";
  char two[3] = {figures[byte >> 4], figures[byte & 15], '\0'};
  ox_growing_puts(t, before);
  ox_growing_puts(t, two);
}

void ox_growing_put_plain(ox_growing *t, const char *bytes, size_t length) {
  for (size_t at = 0; at < length;) {
    size_t step = ox_utf8_length(bytes + at, length - at);
    unsigned char byte = (unsigned char)bytes[at];
    if (step == 0)
      put_hex(t, "\\x", byte);
    else if (byte == '\n')
      ox_growing_puts(t, "\\n");
    else if (byte == '\t')
      ox_growing_puts(t, "\\t");
    else if (byte == '\r')
      ox_growing_puts(t, "\\r");
    else if (is_control(byte))
      put_hex(t, "\\u00", byte);
    else
      ox_growing_put(t, bytes + at, step);
    at += step ? step : 1;
  }
}

bool ox_text_is_line(const char *string) {
  size_t length = strlen(string);
  for (size_t at = 0; at < length;) {
    size_t step = ox_utf8_length(string + at, length - at);
    if (step == 0 || is_control((unsigned char)string[at])) return false;
    at += step;
  }
  return true;
}

bool ox_text_is_blank(const char *string) {
  return string[strspn(string, " ")] == '\0';
}

void ox_text_line_copy(char *out, size_t out_bytes, const char *in, size_t in_bytes) {
  size_t length = strnlen(in, in_bytes), put = 0;
  for (size_t at = 0; at < length;) {
    size_t step = ox_utf8_length(in + at, length - at);
    const char *from = in + at;
    if (step == 0) from = "?";
    if (step == 1 && is_control((unsigned char)*from)) from = " ";
    size_t width = step ? step : 1;
    if (put + width >= out_bytes) break;
    memcpy(out + put, from, width);
    put += width;
    at += width;
  }
  out[put] = '\0';
}

/* The list has room for the next power of two: no field for a capacity is needed. */
static bool reserve_message(ox_messages *m) {
  if (m->count > 0 && (m->count & (m->count - 1)) != 0) return true;
  size_t capacity = m->count ? m->count * 2 : 1;
  char **text = cJSON_malloc(capacity * sizeof *text);
  if (!text) return false;
  if (m->count > 0) memcpy(text, m->text, m->count * sizeof *text);
  cJSON_free(m->text);
  m->text = text;
  return true;
}

bool ox_messages_add(ox_messages *m, ox_growing *text) {
  if (text->failed || !text->bytes || !reserve_message(m)) {
    ox_growing_clear(text);
    return false;
  }
  m->text[m->count++] = text->bytes;
  *text = (ox_growing){0};
  return true;
}

bool ox_messages_say(ox_messages *m, const char *name, const char *sentence) {
  ox_growing text = {0};
  ox_growing_put_plain(&text, name, strlen(name));
  ox_growing_puts(&text, ": ");
  ox_growing_puts(&text, sentence);
  return ox_messages_add(m, &text);
}

void ox_messages_clear(ox_messages *m) {
  for (size_t i = 0; i < m->count; i++)
    cJSON_free(m->text[i]);
  cJSON_free(m->text);
  *m = (ox_messages){0};
}
