/* Latitude and longitude as text. A coordinate is rounded once, to a whole number of the smallest
 * unit shown, and then taken apart: so 59.9996 minutes become the next degree, never 60.000. */
#include <math.h>
#include <stdio.h>

#include "oxbow/place.h"

typedef struct {
  const char *negative; /* before the figures */
  long long degrees, minutes, seconds, fraction;
} parts;

/* units: of the smallest shown in one degree; fraction: of it in one minute or second. */
static parts take_apart(double degrees, long long per_degree, long long minutes_in_degree,
                        long long seconds_in_minute) {
  long long units = llround(fabs(degrees) * (double)per_degree);
  long long per_minute = per_degree / minutes_in_degree;
  long long per_second = per_minute / seconds_in_minute;
  return (parts){.negative = degrees < 0 && units > 0 ? "-" : "",
                 .degrees = units / per_degree,
                 .minutes = units / per_minute % minutes_in_degree,
                 .seconds = units / per_second % seconds_in_minute,
                 .fraction = units % per_second};
}

/* One coordinate; width 2 for latitude, 3 for longitude. */
static void print_one(double degrees, ox_coordinates_form form, int width, char *buf,
                      size_t bytes) {
  char letter = width == 2 ? 'N' : 'E';
  if (degrees < 0) letter = width == 2 ? 'S' : 'W';
  parts p = {0};
  switch (form) {
  case OX_FORM_DECIMAL:
    p = take_apart(degrees, 1000000, 1, 1);
    snprintf(buf, bytes, "%s%lld.%06lld", p.negative, p.degrees, p.fraction);
    break;
  case OX_FORM_DECIMAL_LETTERS:
    p = take_apart(degrees, 1000000, 1, 1);
    snprintf(buf, bytes, "%0*lld.%06lld%c", width, p.degrees, p.fraction, letter);
    break;
  case OX_FORM_DEG_MIN:
    p = take_apart(degrees, 60 * 1000, 60, 1);
    snprintf(buf, bytes, "%c%0*lld\xc2\xb0%02lld.%03lld'", letter, width, p.degrees, p.minutes,
             p.fraction);
    break;
  case OX_FORM_DEG_MIN_SEC:
    p = take_apart(degrees, 3600 * 100, 60, 60);
    snprintf(buf, bytes, "%c%0*lld\xc2\xb0%02lld'%02lld.%02lld\"", letter, width, p.degrees,
             p.minutes, p.seconds, p.fraction);
    break;
  case OX_FORM_HYPHENS:
    p = take_apart(degrees, 3600 * 100, 60, 60);
    snprintf(buf, bytes, "%0*lld-%02lld-%02lld.%02lld%c", width, p.degrees, p.minutes, p.seconds,
             p.fraction, letter);
    break;
  case OX_FORM_PACKED_DEG:
    p = take_apart(degrees, 1, 1, 1);
    snprintf(buf, bytes, "%0*lld%c", width, p.degrees, letter);
    break;
  case OX_FORM_PACKED_DEG_MIN:
    p = take_apart(degrees, 60, 60, 1);
    snprintf(buf, bytes, "%0*lld%02lld%c", width, p.degrees, p.minutes, letter);
    break;
  case OX_FORM_PACKED_SEC:
    p = take_apart(degrees, 3600, 60, 60);
    snprintf(buf, bytes, "%0*lld%02lld%02lld%c", width, p.degrees, p.minutes, p.seconds, letter);
    break;
  default:
    p = take_apart(degrees, 3600 * 100, 60, 60);
    snprintf(buf, bytes, "%c%0*lld%02lld%02lld%02lld", letter, width, p.degrees, p.minutes,
             p.seconds, p.fraction);
    break;
  }
}

static const char *between(ox_coordinates_form form) {
  if (form == OX_FORM_DECIMAL) return ", ";
  return form >= OX_FORM_PACKED_DEG ? "" : " ";
}

ox_status ox_latlon_print(ox_latlon p, ox_coordinates_form form, char *buf, size_t bytes) {
  char lat[OX_COORDINATES_BYTES], lon[OX_COORDINATES_BYTES];
  if (!ox_latlon_valid(p) || (int)form < 0 || form >= OX_FORM_COUNT) return OX_ERROR;
  print_one(p.lat_deg, form, 2, lat, sizeof lat);
  print_one(p.lon_deg, form, 3, lon, sizeof lon);
  char text[2 * OX_COORDINATES_BYTES + 4];
  int length = snprintf(text, sizeof text, "%s%s%s", lat, between(form), lon);
  if (length < 0 || (size_t)length >= bytes) return OX_ERROR;
  snprintf(buf, bytes, "%s", text);
  return OX_OK;
}
