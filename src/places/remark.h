/* Sentences for people, in their language. */
#ifndef OX_PLACES_REMARK_H
#define OX_PLACES_REMARK_H

#include <stddef.h>

#include "oxbow/status.h"

/* Figures with the decimal point of the language, whatever the locale: fixed decimals 0..9, |value|
 * below 9e8 (larger or not finite values are written as words). Returns buf. */
#define OX_FIGURES_BYTES 32
const char *ox_figures(char buf[OX_FIGURES_BYTES], double value, int decimals);

/* Puts a sentence (no conversions but %s, %d, %c; translated already) and returns the status
 * given. */
ox_status ox_remark(ox_status status, char *remark, size_t bytes, const char *format, ...)
    __attribute__((format(printf, 4, 5)));
/* Empties the remark and returns OX_OK. */
ox_status ox_no_remark(char *remark, size_t bytes);

#endif
