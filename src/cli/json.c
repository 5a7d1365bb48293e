/* JSON written member by member. */
#include "json.h"

#include <inttypes.h>

#include "cli_private.h"

static void put_string(FILE *out, const char *text) {
  fputc('"', out);
  for (; *text; text++) {
    unsigned char byte = (unsigned char)*text;
    if (byte == '"' || byte == '\\')
      fprintf(out, "\\%c", byte);
    else if (byte < 0x20u || byte == 0x7fu)
      fprintf(out, "\\u%04x", byte);
    else
      fputc(byte, out);
  }
  fputc('"', out);
}

static bool is_flat(const json *j) {
  return j->flat_from > 0 && j->depth >= j->flat_from;
}

static void new_line(json *j) {
  fputc('\n', j->out);
  for (int i = 0; i < j->depth; i++)
    fputs("  ", j->out);
}

static void begin(json *j, const char *key) {
  if (!j->first) fputs(is_flat(j) ? ", " : ",", j->out);
  if (j->depth > 0 && !is_flat(j)) new_line(j);
  j->first = false;
  if (!key) return;
  put_string(j->out, key);
  fputs(": ", j->out);
}

void json_open(json *j, const char *key, char bracket) {
  begin(j, key);
  fputc(bracket, j->out);
  j->depth++;
  j->first = true;
}

void json_open_flat(json *j, const char *key, char bracket) {
  json_open(j, key, bracket);
  if (j->flat_from == 0) j->flat_from = j->depth;
}

void json_close(json *j, char bracket) {
  bool flat = is_flat(j), empty = j->first;
  if (j->flat_from == j->depth) j->flat_from = 0;
  j->depth--;
  if (!flat && !empty) new_line(j);
  fputc(bracket, j->out);
  j->first = false;
}

void json_number(json *j, const char *key, double value) {
  begin(j, key);
  fputs(cli_number(value).text, j->out);
}

void json_whole(json *j, const char *key, int value) {
  begin(j, key);
  fprintf(j->out, "%d", value);
}

void json_count(json *j, const char *key, uint64_t value) {
  begin(j, key);
  fprintf(j->out, "%" PRIu64, value);
}

void json_string(json *j, const char *key, const char *value) {
  begin(j, key);
  if (value)
    put_string(j->out, value);
  else
    fputs("null", j->out);
}
