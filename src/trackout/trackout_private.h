/* What the three writers share: text into the sink, and the track as places. */
#ifndef OX_TRACKOUT_PRIVATE_H
#define OX_TRACKOUT_PRIVATE_H

#include <stdbool.h>
#include <stdint.h>

#include "oxbow/trackout.h"

typedef struct {
  ox_trackout_sink sink;
  void *context;
  bool failed; /* sticks */
} ox_out;

void out_text(ox_out *out, const char *text);
/* A figure with so many decimals (0..9), a decimal point in every locale, and no sign on zero. */
void out_fixed(ox_out *out, double value, int decimals);
void out_whole(ox_out *out, int64_t value);
/* With the characters that XML or JSON reserve escaped, and those that XML cannot hold left out. */
void out_xml(ox_out *out, const char *text);
void out_json(ox_out *out, const char *text); /* with its quotes */

/* A point of the track. */
typedef struct {
  double t_s;
  double lat_deg, lon_deg;
  double height_m; /* above mean sea level */
} track_point;

/* A stretch of one part and circuit: "arrival", "entry", "circuit 2". */
typedef struct {
  char name[32];
  const char *part; /* "arrival", "entry", "circuit" */
  int circuit;
  size_t first, count; /* points; stretches that follow share the point between them */
} track_stretch;

typedef struct {
  track_point *points;
  size_t point_count, point_room;
  track_stretch *stretches;
  size_t stretch_count, stretch_room;
} track;

/* Samples a flight. False when memory is out. Freed with track_clear in either case. */
bool track_make(const ox_trackout_case *c, double step_s, track *out);
void track_clear(track *t);

/* "2026-03-14T18:02:30.5Z" for an instant on the flight's clock; false where no clock time is
 * known. */
#define CLOCK_BYTES 40
bool clock_text(const ox_trackout_options *o, const ox_case *c, double t_s, char text[CLOCK_BYTES]);

/* The writers: everything but opening and sampling. */
typedef struct {
  const ox_trackout_case *cases;
  const track *tracks;
  size_t count;
  const ox_trackout_options *options;
} track_file;
void write_geojson(ox_out *out, const track_file *file);
void write_kml(ox_out *out, const track_file *file);
void write_gpx(ox_out *out, const track_file *file);

#endif
