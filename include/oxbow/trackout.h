/* The ground track for other people's maps: GeoJSON (RFC 7946), KML 2.2 (OGC 07-147r2) and GPX 1.1
 * (the schema of topografix.com/GPX/1/1), through a byte sink.
 *
 * Every point lies where the plane about the fix has it (place.h), so distance and bearing from the
 * fix are exact. Heights are metres above mean sea level from the altitude flown. The caution is in
 * every file. Same input, same bytes, whatever the locale. */
#ifndef OXBOW_TRACKOUT_H
#define OXBOW_TRACKOUT_H

#include "oxbow/flight.h"
#include "oxbow/place.h"

typedef enum {
  OX_TRACKOUT_GEOJSON, OX_TRACKOUT_KML, OX_TRACKOUT_GPX, OX_TRACKOUT_COUNT
} ox_trackout_format;
/* "geojson", "kml", "gpx": the word and the file's ending. */
const char *ox_trackout_name(ox_trackout_format format);

/* One flight and where its fix is; everything is borrowed. */
typedef struct {
  const ox_case *c;
  const ox_flight *flight;
  ox_latlon fix;
} ox_trackout_case;

typedef struct {
  ox_trackout_format format;
  double step_s;      /* a point at least so often (0.1..3 600), and one at every end of a leg */
  const char *title;  /* of the lesson, UTF-8; may be NULL */
  const char *caution;/* the sentence that goes into the file, never NULL */
  int year, month, day; /* UTC date of the first crossing of the fix; year 0: none. With it, and
                           where arrival.fix_at is given, points have clock times. */
} ox_trackout_options;

/* Takes `length` bytes; anything but OX_OK stops the writing, which then returns OX_ERROR. */
typedef ox_status (*ox_trackout_sink)(void *context, const void *bytes, size_t length);

/* Whether a date exists in the Gregorian calendar, years 1900..2999. */
bool ox_trackout_date_valid(int year, int month, int day);

/* Writes all cases into one file. OX_ERROR, with *error (may be NULL) a static sentence, for a step
 * or date out of range, an invalid fix, a flight without legs, no memory, a sink that stopped. */
ox_status ox_trackout_write(const ox_trackout_case *cases, size_t count,
                            const ox_trackout_options *options, ox_trackout_sink sink,
                            void *context, const char **error);

#endif
