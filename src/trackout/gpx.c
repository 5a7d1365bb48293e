/* GPX 1.1: the fixes as way points, a track a case, a segment a stretch. */
#include "trackout_private.h"

static void put_element(ox_out *out, const char *tag, const char *text) {
  out_text(out, "<");
  out_text(out, tag);
  out_text(out, ">");
  out_xml(out, text);
  out_text(out, "</");
  out_text(out, tag);
  out_text(out, ">\n");
}

static void put_position(ox_out *out, const char *tag, double lat_deg, double lon_deg) {
  out_text(out, "<");
  out_text(out, tag);
  out_text(out, " lat=\"");
  out_fixed(out, lat_deg, 8);
  out_text(out, "\" lon=\"");
  /* The schema's longitude is -180 up to, not including, 180. */
  double lon = lon_deg > 180.0 - 5e-9 ? -180.0 : lon_deg;
  out_fixed(out, lon, 8);
  out_text(out, "\">");
}

static void put_point(ox_out *out, const track_file *file, size_t k, const track_point *p) {
  char clock[CLOCK_BYTES];
  put_position(out, "trkpt", p->lat_deg, p->lon_deg);
  out_text(out, "<ele>");
  out_fixed(out, p->height_m, 1);
  out_text(out, "</ele>");
  if (clock_text(file->options, file->cases[k].c, p->t_s, clock)) {
    out_text(out, "<time>");
    out_text(out, clock);
    out_text(out, "</time>");
  }
  out_text(out, "</trkpt>\n");
}

static void put_track(ox_out *out, const track_file *file, size_t k) {
  const track *t = &file->tracks[k];
  out_text(out, "<trk>\n");
  put_element(out, "name", file->cases[k].c->name);
  put_element(out, "desc", file->options->caution);
  for (size_t i = 0; i < t->stretch_count; i++) {
    const track_stretch *s = &t->stretches[i];
    if (s->count < 2) continue;
    out_text(out, "<trkseg>\n");
    for (size_t j = 0; j < s->count; j++)
      put_point(out, file, k, &t->points[s->first + j]);
    out_text(out, "</trkseg>\n");
  }
  out_text(out, "</trk>\n");
}

void write_gpx(ox_out *out, const track_file *file) {
  out_text(out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                "<gpx xmlns=\"http://www.topografix.com/GPX/1/1\" version=\"1.1\""
                " creator=\"Oxbow\">\n<metadata>\n");
  put_element(out, "name", file->options->title ? file->options->title : "Holding pattern");
  put_element(out, "desc", file->options->caution);
  out_text(out, "</metadata>\n");
  for (size_t k = 0; k < file->count; k++) {
    const ox_trackout_case *c = &file->cases[k];
    put_position(out, "wpt", c->fix.lat_deg, c->fix.lon_deg);
    out_text(out, "\n");
    put_element(out, "name", c->c->hold.fix[0] ? c->c->hold.fix : "Fix");
    out_text(out, "</wpt>\n");
  }
  for (size_t k = 0; k < file->count; k++)
    put_track(out, file, k);
  out_text(out, "</gpx>\n");
}
