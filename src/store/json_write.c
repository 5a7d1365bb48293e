/* Tree to text. cJSON's own printer indents with tabs, breaks every object over lines and gives a
 * double the digits it likes; a lesson should read well in an editor and in a difference between
 * two versions, and give the same bytes everywhere. */
#include <locale.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "json.h"

static void shortest(char *out, double value) {
  for (int digits = 15; digits <= 17; digits++) {
    snprintf(out, OX_JSON_NUMBER_TEXT_BYTES, "%.*g", digits, value);
    if (strtod(out, NULL) == value) return;
  }
}

void ox_json_number_text(char out[OX_JSON_NUMBER_TEXT_BYTES], double value) {
  if (!isfinite(value)) {
    strcpy(out, "null");
    return;
  }
  if (value == 0.0) {
    strcpy(out, "0");
    return;
  }
  locale_t plain = newlocale(LC_ALL_MASK, "C", (locale_t)0);
  locale_t before = plain ? uselocale(plain) : (locale_t)0;
  shortest(out, value);
  if (!plain) return;
  uselocale(before);
  freelocale(plain);
}

static void put_string(ox_growing *t, const char *string) {
  ox_growing_put(t, "\"", 1);
  for (const char *run = string; *run;) {
    size_t plain = 0;
    while (run[plain] && run[plain] != '"' && run[plain] != '\\' &&
           (unsigned char)run[plain] >= 0x20)
      plain++;
    ox_growing_put(t, run, plain);
    run += plain;
    if (!*run) break;
    if (*run == '"' || *run == '\\') {
      ox_growing_put(t, "\\", 1);
      ox_growing_put(t, run, 1);
    } else {
      char escape[8];
      snprintf(escape, sizeof escape, "\\u%04x", (unsigned)(unsigned char)*run);
      ox_growing_puts(t, escape);
    }
    run++;
  }
  ox_growing_put(t, "\"", 1);
}

static void put_scalar(ox_growing *t, const cJSON *value) {
  char number[OX_JSON_NUMBER_TEXT_BYTES];
  if (cJSON_IsString(value)) {
    put_string(t, value->valuestring);
  } else if (cJSON_IsNumber(value)) {
    if (!value->valuestring) ox_json_number_text(number, value->valuedouble);
    ox_growing_puts(t, value->valuestring ? value->valuestring : number);
  } else {
    ox_growing_puts(t, cJSON_IsTrue(value) ? "true" : cJSON_IsFalse(value) ? "false" : "null");
  }
}

static bool is_group(const cJSON *value) {
  return cJSON_IsObject(value) || cJSON_IsArray(value);
}

/* On one line, given up as soon as the text is longer than `limit` bytes. */
static bool put_line(ox_growing *t, const cJSON *value, size_t limit) {
  if (!is_group(value)) {
    put_scalar(t, value);
    return t->length <= limit;
  }
  bool object = cJSON_IsObject(value);
  ox_growing_puts(t, object ? "{" : "[");
  for (const cJSON *child = value->child; child; child = child->next) {
    if (child != value->child) ox_growing_puts(t, ",");
    if (object || child != value->child) ox_growing_puts(t, " ");
    if (object) {
      put_string(t, child->string);
      ox_growing_puts(t, ": ");
    }
    if (!put_line(t, child, limit)) return false;
  }
  ox_growing_puts(t, object ? value->child ? " }" : "}" : "]");
  return t->length <= limit;
}

static bool is_all_numbers(const cJSON *value) {
  if (!cJSON_IsArray(value)) return false;
  for (const cJSON *child = value->child; child; child = child->next)
    if (!cJSON_IsNumber(child)) return false;
  return true;
}

static void new_line(ox_growing *t, size_t depth) {
  ox_growing_put(t, "\n", 1);
  while (depth-- > 0)
    ox_growing_put(t, "  ", 2);
}

/* A long list of numbers: as many on a line as there is room for. */
static void put_numbers(ox_growing *t, const cJSON *list, size_t depth) {
  size_t line = 0;
  ox_growing_puts(t, "[");
  for (const cJSON *child = list->child; child; child = child->next) {
    size_t begin = t->length;
    if (child != list->child) ox_growing_puts(t, " ");
    put_scalar(t, child);
    if (child->next) ox_growing_puts(t, ",");
    if (t->failed) return;
    if (child != list->child && t->length - line <= OX_JSON_COLUMNS) continue;
    t->length = begin;
    new_line(t, depth + 1);
    line = t->length - 2 * (depth + 1);
    put_scalar(t, child);
    if (child->next) ox_growing_puts(t, ",");
  }
  new_line(t, depth);
  ox_growing_puts(t, "]");
}

/* `line` is where the line that is being written begins. */
static void put_value(ox_growing *t, const cJSON *value, size_t depth, size_t line) {
  size_t begin = t->length;
  bool last = !value->next;
  size_t columns = OX_JSON_COLUMNS - (last ? 0 : 1); /* the comma */
  if (put_line(t, value, line + columns) || t->failed || !value->child || !is_group(value)) return;
  t->length = begin;
  if (is_all_numbers(value)) {
    put_numbers(t, value, depth);
    return;
  }
  ox_growing_puts(t, cJSON_IsObject(value) ? "{" : "[");
  for (const cJSON *child = value->child; child; child = child->next) {
    new_line(t, depth + 1);
    size_t child_line = t->length - 2 * (depth + 1);
    if (cJSON_IsObject(value)) {
      put_string(t, child->string);
      ox_growing_puts(t, ": ");
    }
    put_value(t, child, depth + 1, child_line);
    if (child->next) ox_growing_put(t, ",", 1);
  }
  new_line(t, depth);
  ox_growing_puts(t, cJSON_IsObject(value) ? "}" : "]");
}

void ox_json_print(ox_growing *out, const cJSON *tree) {
  put_value(out, tree, 0, out->length);
  ox_growing_put(out, "\n", 1);
}

/* Ends of a cut value: the quote or bracket that its beginning asks for. */
static const char *cut_end(const cJSON *value) {
  return cJSON_IsString(value)   ? "…\""
         : cJSON_IsObject(value) ? "… }"
         : cJSON_IsArray(value)  ? "…]"
                                 : "…";
}

void ox_json_print_short(ox_growing *out, const cJSON *value, size_t columns) {
  ox_growing line = {0};
  put_line(&line, value, 4 * columns);
  if (line.failed) {
    out->failed = true;
    ox_growing_clear(&line);
    return;
  }
  size_t at = 0, seen = 0;
  while (at < line.length && seen < columns) {
    size_t step = ox_utf8_length(line.bytes + at, line.length - at);
    at += step ? step : 1;
    seen++;
  }
  ox_growing_put_plain(out, line.bytes, at);
  if (at < line.length) ox_growing_puts(out, cut_end(value));
  ox_growing_clear(&line);
}
