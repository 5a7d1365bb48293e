/* Latitude and longitude as text. A coordinate is rounded once, to a whole number of the smallest
 * unit shown, and then taken apart: so 59.9996 minutes become the next degree, never 60.000. */
#include <math.h>
#include <stdbool.h>
#include <stdio.h>

#include "oxbow/place.h"

/* More than any whole numbers could fill. */
enum { PART_BYTES = 128 };

typedef struct {
  bool negative; /* of what is shown: -0.0000001 is shown as nought, and nought is north */
  long long degrees, minutes, seconds, fraction;
} parts;

/* Units of the smallest shown in one degree, and how the degree is divided above them. */
typedef struct {
  long long per_degree, minutes_in_degree, seconds_in_minute;
} division;

static const division divisions[OX_FORM_COUNT] = {
    [OX_FORM_DECIMAL] = {1000000, 1, 1},     [OX_FORM_DECIMAL_LETTERS] = {1000000, 1, 1},
    [OX_FORM_DEG_MIN] = {60 * 1000, 60, 1},  [OX_FORM_DEG_MIN_SEC] = {3600 * 100, 60, 60},
    [OX_FORM_HYPHENS] = {3600 * 100, 60, 60}, [OX_FORM_PACKED_DEG] = {1, 1, 1},
    [OX_FORM_PACKED_DEG_MIN] = {60, 60, 1},  [OX_FORM_PACKED_SEC] = {3600, 60, 60},
    [OX_FORM_ARINC] = {3600 * 100, 60, 60},
};

static parts take_apart(double degrees, division d) {
  long long units = llround(fabs(degrees) * (double)d.per_degree);
  long long per_minute = d.per_degree / d.minutes_in_degree;
  long long per_second = per_minute / d.seconds_in_minute;
  return (parts){.negative = degrees < 0 && units > 0,
                 .degrees = units / d.per_degree,
                 .minutes = units / per_minute % d.minutes_in_degree,
                 .seconds = units / per_second % d.seconds_in_minute,
                 .fraction = units % per_second};
}

/* One coordinate; letters NS or EW, width 2 for latitude, 3 for longitude. */
static void print_one(double degrees, ox_coordinates_form form, const char letters[3], int width,
                      char buf[PART_BYTES]) {
  const size_t bytes = PART_BYTES;
  parts p = take_apart(degrees, divisions[form]);
  char letter = letters[p.negative ? 1 : 0];
  switch (form) {
  case OX_FORM_DECIMAL:
    snprintf(buf, bytes, "%s%lld.%06lld", p.negative ? "-" : "", p.degrees, p.fraction);
    break;
  case OX_FORM_DECIMAL_LETTERS:
    snprintf(buf, bytes, "%0*lld.%06lld%c", width, p.degrees, p.fraction, letter);
    break;
  case OX_FORM_DEG_MIN:
    snprintf(buf, bytes, "%c%0*lld\xc2\xb0%02lld.%03lld'", letter, width, p.degrees, p.minutes,
             p.fraction);
    break;
  case OX_FORM_DEG_MIN_SEC:
    snprintf(buf, bytes, "%c%0*lld\xc2\xb0%02lld'%02lld.%02lld\"", letter, width, p.degrees,
             p.minutes, p.seconds, p.fraction);
    break;
  case OX_FORM_HYPHENS:
    snprintf(buf, bytes, "%0*lld-%02lld-%02lld.%02lld%c", width, p.degrees, p.minutes, p.seconds,
             p.fraction, letter);
    break;
  case OX_FORM_PACKED_DEG:
    snprintf(buf, bytes, "%0*lld%c", width, p.degrees, letter);
    break;
  case OX_FORM_PACKED_DEG_MIN:
    snprintf(buf, bytes, "%0*lld%02lld%c", width, p.degrees, p.minutes, letter);
    break;
  case OX_FORM_PACKED_SEC:
    snprintf(buf, bytes, "%0*lld%02lld%02lld%c", width, p.degrees, p.minutes, p.seconds, letter);
    break;
  default:
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
  char lat[PART_BYTES], lon[PART_BYTES];
  if (!ox_latlon_valid(p) || (int)form < 0 || form >= OX_FORM_COUNT) return OX_ERROR;
  print_one(p.lat_deg, form, "NS", 2, lat);
  print_one(p.lon_deg, form, "EW", 3, lon);
  char text[2 * PART_BYTES + 4];
  int length = snprintf(text, sizeof text, "%s%s%s", lat, between(form), lon);
  if (length < 0 || (size_t)length >= bytes) return OX_ERROR;
  snprintf(buf, bytes, "%s", text);
  return OX_OK;
}
