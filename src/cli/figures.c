/* Numbers and fields for machines: the same text in every locale. */
#include <locale.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "cli_private.h"

/* printf takes its decimal point from the process locale; a point of several bytes is put back to
 * one. */
static void put_point_back(char *text) {
  const char *point = localeconv()->decimal_point;
  size_t length = strlen(point);
  char *at = length > 0 ? strstr(text, point) : NULL;
  if (!at) return;
  *at = '.';
  memmove(at + 1, at + length, strlen(at + length) + 1);
}

cli_figure cli_number(double value) {
  cli_figure f;
  if (!isfinite(value)) {
    strcpy(f.text, "null");
    return f;
  }
  value += 0.0; /* -0 is written 0 */
  for (int digits = 15; digits <= 17; digits++) {
    snprintf(f.text, sizeof f.text, "%.*g", digits, value);
    if (strtod(f.text, NULL) == value) break;
  }
  put_point_back(f.text);
  return f;
}

cli_figure cli_fixed(double value, int decimals) {
  cli_figure f;
  if (!isfinite(value) || fabs(value) >= 1e15) return cli_number(value);
  snprintf(f.text, sizeof f.text, "%.*f", decimals, value);
  put_point_back(f.text);
  /* What rounds to nothing has no sign. */
  if (f.text[0] == '-' && strspn(f.text, "-0.") == strlen(f.text))
    memmove(f.text, f.text + 1, strlen(f.text));
  return f;
}

void cli_put_field(FILE *out, const char *text) {
  if (!strpbrk(text, ",\"\r\n")) {
    fputs(text, out);
    return;
  }
  fputc('"', out);
  for (; *text; text++) {
    if (*text == '"') fputc('"', out);
    fputc(*text, out);
  }
  fputc('"', out);
}
