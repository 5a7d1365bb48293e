/* Sentences for people. printf takes its decimal point from the locale of the process, and that of
 * these sentences is their language's; so figures are made from whole numbers. */
#include "remark.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>

#include "oxbow/text.h"

const char *ox_figures(char buf[OX_FIGURES_BYTES], double value, int decimals) {
  if (!isfinite(value) || fabs(value) >= 9e8) {
    snprintf(buf, OX_FIGURES_BYTES, "%s",
             isfinite(value) ? _("too large a number") : _("no number"));
    return buf;
  }
  long long scale = 1;
  for (int i = 0; i < decimals; i++)
    scale *= 10;
  long long units = llround(fabs(value) * (double)scale);
  char figures[24];
  int length = snprintf(figures, sizeof figures, "%0*lld", 10, units);
  if (length < 0 || decimals > 9) length = 0;
  /* At least one figure before the point: the leading noughts beyond that are left out. */
  int skip = 0;
  while (skip < length - decimals - 1 && figures[skip] == '0')
    skip++;
  snprintf(buf, OX_FIGURES_BYTES, "%s%.*s%s%s", value < 0 && units > 0 ? "-" : "",
           length - decimals - skip, figures + skip, decimals > 0 ? ox_text_decimal() : "",
           figures + length - decimals);
  return buf;
}

ox_status ox_remark(ox_status status, char *remark, size_t bytes, const char *format, ...) {
  if (remark && bytes > 0) {
    va_list list;
    va_start(list, format);
    vsnprintf(remark, bytes, format, list);
    va_end(list);
  }
  return status;
}

ox_status ox_no_remark(char *remark, size_t bytes) {
  if (remark && bytes > 0) remark[0] = '\0';
  return OX_OK;
}
