/* Numbers as people type and read them. Pure functions; no widget, no state but the decimal sign
 * of the locale, which only ox_number_format uses: typing is understood the same everywhere. */
#ifndef OX_NUMBER_TEXT_H
#define OX_NUMBER_TEXT_H

#include <stdbool.h>
#include <stddef.h>

typedef enum {
  OX_FORM_PLAIN,     /* 12.5 */
  OX_FORM_BEARING,   /* 007, 360 for north; steps go round */
  OX_FORM_ALTITUDE,  /* feet; "5,000" and "5.000" are five thousand, "FL180" is 18 000 */
  OX_FORM_SECONDS,   /* 90; "1:30" and "1.5 min" are understood */
  OX_FORM_VARIATION, /* degrees, east positive, as "12 W" */
  OX_FORM_CLOCK,     /* minutes after midnight UTC as "18:25"; steps go round */
  OX_FORM_CLOCK_S,   /* seconds after midnight UTC as "18:25:40"; steps go round */
} ox_number_form;

#define OX_NUMBER_TEXT_BYTES 48

/* A finite value as text, with at most `decimals` (0..6) decimals and no trailing zeros. */
void ox_number_format(char out[OX_NUMBER_TEXT_BYTES], ox_number_form form, int decimals,
                    double value);

typedef enum { OX_PARSE_OK, OX_PARSE_EMPTY, OX_PARSE_BAD } ox_parse;

/* Reads text (UTF-8). Comma and point both are decimal signs; a unit may follow. units lists the
 * accepted ones, lower case, divided by '|' ("kt|kts|knots"; may be NULL). *value is set only with
 * OX_PARSE_OK and is finite; ranges are the caller's business. */
ox_parse ox_number_parse(ox_number_form form, const char *units, const char *text, double *value);

/* The value a step away: bearings (1..360 when whole) and clocks go round, everything else stops
 * at min and max. */
double ox_number_step(ox_number_form form, double value, double step, double min, double max);

#endif
