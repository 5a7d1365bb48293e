/* Text to tree: the strict scan first, then cJSON's parser with the decimal point of the C locale,
 * then the written form of numbers that would otherwise change when they are only passed through.
 */
#include <locale.h>
#include <stdlib.h>
#include <string.h>

#include "json.h"

static bool is_figure(char c) {
  return c >= '0' && c <= '9';
}

/* Moves *at to the next number of a scanned text and returns its length, 0 at the end. */
static size_t next_number(const char **at, const char *end) {
  const char *p = *at;
  while (p < end && *p != '-' && !is_figure(*p)) {
    if (*p == '"')
      for (p++; p < end && *p != '"'; p++)
        if (*p == '\\') p++;
    if (p < end) p++;
  }
  size_t length = 0;
  while (p + length < end && p[length] != '\0' && strchr("+-.0123456789eE", p[length]))
    length++;
  *at = p;
  return length;
}

/* Short integers, which is what most numbers are, print as they are written. */
static bool is_short_integer(const char *text, size_t length) {
  size_t from = text[0] == '-';
  if (length > 15 || (from == 1 && text[1] == '0')) return false;
  for (size_t i = from; i < length; i++)
    if (!is_figure(text[i])) return false;
  return true;
}

static bool keep_written(cJSON *number, const char *text, size_t length) {
  if (is_short_integer(text, length)) return true;
  char shortest[OX_JSON_NUMBER_TEXT_BYTES];
  ox_json_number_text(shortest, number->valuedouble);
  if (strlen(shortest) == length && memcmp(shortest, text, length) == 0) return true;
  number->valuestring = cJSON_malloc(length + 1);
  if (!number->valuestring) return false;
  memcpy(number->valuestring, text, length);
  number->valuestring[length] = '\0';
  return true;
}

/* The tree is in the order of the text, so its numbers are met in the same order. The depth is
 * bounded by the scan. */
static bool keep_numbers(cJSON *value, const char **at, const char *end) {
  if (cJSON_IsNumber(value)) {
    size_t length = next_number(at, end);
    const char *text = *at;
    *at += length;
    return length > 0 && keep_written(value, text, length);
  }
  for (cJSON *child = value->child; child; child = child->next)
    if (!keep_numbers(child, at, end)) return false;
  return true;
}

static cJSON *parse(const char *bytes, size_t length) {
  cJSON *tree = cJSON_ParseWithLengthOpts(bytes, length, NULL, false);
  const char *at = bytes;
  if (tree && !keep_numbers(tree, &at, bytes + length)) {
    cJSON_Delete(tree);
    tree = NULL;
  }
  return tree;
}

cJSON *ox_json_parse(const char *bytes, size_t length, ox_json_fault *fault) {
  fault->sentence[0] = '\0';
  if (!ox_json_scan(bytes, length, fault)) return NULL;
  /* Only this thread, and only for the time of the call. */
  locale_t plain = newlocale(LC_ALL_MASK, "C", (locale_t)0);
  if (!plain) return NULL;
  locale_t before = uselocale(plain);
  cJSON *tree = parse(bytes, length);
  uselocale(before);
  freelocale(plain);
  return tree;
}

cJSON *ox_json_member(const cJSON *object, const char *key) {
  return cJSON_GetObjectItemCaseSensitive(object, key);
}
