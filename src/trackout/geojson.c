/* GeoJSON, RFC 7946: a point for the fix, a line for every stretch of the flight, in the order
 * flown. Coordinates are longitude, latitude, height; a line over the antimeridian is cut there
 * (section 3.1.9). */
#include <math.h>

#include "trackout_private.h"

#define DEGREE_DECIMALS 8 /* about a millimetre */

static void put_position(ox_out *out, double lon_deg, double lat_deg, double height_m) {
  out_text(out, "[");
  out_fixed(out, lon_deg, DEGREE_DECIMALS);
  out_text(out, ",");
  out_fixed(out, lat_deg, DEGREE_DECIMALS);
  out_text(out, ",");
  out_fixed(out, height_m, 1);
  out_text(out, "]");
}

static bool wraps(const track_point *a, const track_point *b) {
  return fabs(a->lon_deg - b->lon_deg) > 180.0;
}

/* Where the line between two points meets the antimeridian, as a share of the way. */
static double share_of_crossing(const track_point *a, const track_point *b) {
  double edge = a->lon_deg > 0 ? 180.0 : -180.0;
  double to = b->lon_deg + (a->lon_deg > 0 ? 360.0 : -360.0);
  return (edge - a->lon_deg) / (to - a->lon_deg);
}

static void put_cut(ox_out *out, const track_point *a, const track_point *b) {
  double edge = a->lon_deg > 0 ? 180.0 : -180.0, share = share_of_crossing(a, b);
  double lat = a->lat_deg + share * (b->lat_deg - a->lat_deg);
  double height = a->height_m + share * (b->height_m - a->height_m);
  out_text(out, ",");
  put_position(out, edge, lat, height);
  out_text(out, "],[");
  put_position(out, -edge, lat, height);
  out_text(out, ",");
}

static void put_line(ox_out *out, const track *t, const track_stretch *s) {
  bool cut = false;
  const track_point *p = &t->points[s->first];
  for (size_t i = 1; i < s->count; i++)
    cut = cut || wraps(&p[i - 1], &p[i]);
  out_text(out, cut ? "{\"type\":\"MultiLineString\",\"coordinates\":[["
                    : "{\"type\":\"LineString\",\"coordinates\":[");
  for (size_t i = 0; i < s->count; i++) {
    if (i > 0 && wraps(&p[i - 1], &p[i]))
      put_cut(out, &p[i - 1], &p[i]);
    else if (i > 0)
      out_text(out, ",");
    put_position(out, p[i].lon_deg, p[i].lat_deg, p[i].height_m);
  }
  out_text(out, cut ? "]]}" : "]}");
}

static void put_member(ox_out *out, const char *key, const char *value) {
  out_text(out, ",\"");
  out_text(out, key);
  out_text(out, "\":");
  out_json(out, value);
}

static void put_stretch(ox_out *out, const track_file *file, size_t k, const track_stretch *s) {
  const ox_case *c = file->cases[k].c;
  const track_point *p = &file->tracks[k].points[s->first];
  char clock[CLOCK_BYTES];
  out_text(out, ",\n{\"type\":\"Feature\",\"properties\":{\"case\":");
  out_json(out, c->name);
  put_member(out, "stretch", s->name);
  put_member(out, "part", s->part);
  out_text(out, ",\"circuit\":");
  out_whole(out, s->circuit);
  out_text(out, ",\"begin_s\":");
  out_fixed(out, p[0].t_s, 3);
  out_text(out, ",\"end_s\":");
  out_fixed(out, p[s->count - 1].t_s, 3);
  if (clock_text(file->options, c, p[0].t_s, clock)) put_member(out, "begin", clock);
  if (clock_text(file->options, c, p[s->count - 1].t_s, clock)) put_member(out, "end", clock);
  out_text(out, "},\"geometry\":");
  put_line(out, &file->tracks[k], s);
  out_text(out, "}");
}

static void put_fix(ox_out *out, const ox_trackout_case *c, bool first) {
  out_text(out, first ? "\n{\"type\":\"Feature\",\"properties\":{\"case\":"
                      : ",\n{\"type\":\"Feature\",\"properties\":{\"case\":");
  out_json(out, c->c->name);
  put_member(out, "fix", c->c->hold.fix);
  out_text(out, "},\"geometry\":{\"type\":\"Point\",\"coordinates\":[");
  out_fixed(out, c->fix.lon_deg, DEGREE_DECIMALS);
  out_text(out, ",");
  out_fixed(out, c->fix.lat_deg, DEGREE_DECIMALS);
  out_text(out, "]}}");
}

void write_geojson(ox_out *out, const track_file *file) {
  out_text(out, "{\"type\":\"FeatureCollection\"");
  if (file->options->title) put_member(out, "title", file->options->title);
  put_member(out, "caution", file->options->caution);
  out_text(out, ",\"features\":[");
  for (size_t k = 0; k < file->count; k++) {
    put_fix(out, &file->cases[k], k == 0);
    for (size_t i = 0; i < file->tracks[k].stretch_count; i++)
      if (file->tracks[k].stretches[i].count > 1)
        put_stretch(out, file, k, &file->tracks[k].stretches[i]);
  }
  out_text(out, "\n]}\n");
}
