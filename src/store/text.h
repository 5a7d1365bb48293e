/* Text that grows, UTF-8, and strings of others made fit to stand in a message. */
#ifndef OX_STORE_TEXT_H
#define OX_STORE_TEXT_H

#include <stdbool.h>
#include <stddef.h>

#include "oxbow/lesson.h"

/* Growing text, always nul-terminated once something was put. Memory comes from cJSON_malloc, so
 * that one hook reaches every allocation of the store. When it runs out `failed` sticks and later
 * calls do nothing. Start with {0}. */
typedef struct {
  char *bytes;
  size_t length, capacity;
  bool failed;
} ox_growing;

void ox_growing_put(ox_growing *t, const char *bytes, size_t length);
void ox_growing_puts(ox_growing *t, const char *string);
/* No conversions but %s, %d, %u, %zu and %c: others depend on the locale. */
void ox_growing_printf(ox_growing *t, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
/* Bytes of anything as people may read it: what is not UTF-8 becomes \xNN, control characters
 * their JSON escape. */
void ox_growing_put_plain(ox_growing *t, const char *bytes, size_t length);
void ox_growing_clear(ox_growing *t);

/* Bytes of the UTF-8 character at the beginning (1..4), 0 when there is none (also: surrogates,
 * overlong forms, above U+10FFFF). */
size_t ox_utf8_length(const char *bytes, size_t available);
/* Whether a nul-terminated string is one line of UTF-8: no control characters. */
bool ox_text_is_line(const char *string);
/* Whether there is anything but spaces in it. */
bool ox_text_is_blank(const char *string);
/* Copies at most `in_bytes` bytes (up to a nul) as one line of UTF-8: bad bytes and control
 * characters become a question mark or a space, and a character that does not fit is left out. */
void ox_text_line_copy(char *out, size_t out_bytes, const char *in, size_t in_bytes);

/* Appends a message made of the text, which is emptied. False when memory is out. */
bool ox_messages_add(ox_messages *m, ox_growing *text);
/* Appends "NAME: SENTENCE", the name made plain. */
bool ox_messages_say(ox_messages *m, const char *name, const char *sentence);

#endif
