/* KML 2.2 (OGC 07-147r2): a folder a case, a placemark for the fix and one for every stretch. Lines
 * stand at the altitude flown; arrival, entry and circuits differ in width as well as in colour. */
#include "trackout_private.h"

/* aabbggrr: the hues of the picture's palette. */
static const char styles[] =
    "<Style id=\"arrival\"><LineStyle><color>ff000000</color><width>2</width></LineStyle></Style>\n"
    "<Style id=\"entry\"><LineStyle><color>ff739e00</color><width>4</width></LineStyle></Style>\n"
    "<Style id=\"circuit\"><LineStyle><color>ffb27200</color><width>3</width></LineStyle>"
    "</Style>\n";

static void put_element(ox_out *out, const char *tag, const char *text) {
  out_text(out, "<");
  out_text(out, tag);
  out_text(out, ">");
  out_xml(out, text);
  out_text(out, "</");
  out_text(out, tag);
  out_text(out, ">\n");
}

static void put_coordinates(ox_out *out, double lon_deg, double lat_deg, double height_m) {
  out_fixed(out, lon_deg, 8);
  out_text(out, ",");
  out_fixed(out, lat_deg, 8);
  out_text(out, ",");
  out_fixed(out, height_m, 1);
}

static void put_span(ox_out *out, const track_file *file, size_t k, const track_stretch *s) {
  char clock[CLOCK_BYTES];
  const track_point *p = &file->tracks[k].points[s->first];
  const ox_case *c = file->cases[k].c;
  if (!clock_text(file->options, c, p[0].t_s, clock)) return;
  out_text(out, "<TimeSpan><begin>");
  out_text(out, clock);
  clock_text(file->options, c, p[s->count - 1].t_s, clock);
  out_text(out, "</begin><end>");
  out_text(out, clock);
  out_text(out, "</end></TimeSpan>\n");
}

static void put_stretch(ox_out *out, const track_file *file, size_t k, const track_stretch *s) {
  const track_point *p = &file->tracks[k].points[s->first];
  out_text(out, "<Placemark>\n");
  put_element(out, "name", s->name);
  put_span(out, file, k, s);
  out_text(out, "<styleUrl>#");
  out_text(out, s->part);
  out_text(out, "</styleUrl>\n<LineString><altitudeMode>absolute</altitudeMode><coordinates>\n");
  for (size_t i = 0; i < s->count; i++) {
    put_coordinates(out, p[i].lon_deg, p[i].lat_deg, p[i].height_m);
    out_text(out, "\n");
  }
  out_text(out, "</coordinates></LineString>\n</Placemark>\n");
}

static void put_case(ox_out *out, const track_file *file, size_t k) {
  const ox_trackout_case *c = &file->cases[k];
  out_text(out, "<Folder>\n");
  put_element(out, "name", c->c->name);
  out_text(out, "<Placemark>\n");
  put_element(out, "name", c->c->hold.fix[0] ? c->c->hold.fix : "Fix");
  out_text(out, "<Point><coordinates>");
  put_coordinates(out, c->fix.lon_deg, c->fix.lat_deg, 0);
  out_text(out, "</coordinates></Point>\n</Placemark>\n");
  for (size_t i = 0; i < file->tracks[k].stretch_count; i++)
    if (file->tracks[k].stretches[i].count > 1)
      put_stretch(out, file, k, &file->tracks[k].stretches[i]);
  out_text(out, "</Folder>\n");
}

void write_kml(ox_out *out, const track_file *file) {
  out_text(out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                "<kml xmlns=\"http://www.opengis.net/kml/2.2\">\n<Document>\n");
  put_element(out, "name", file->options->title ? file->options->title : "Holding pattern");
  put_element(out, "description", file->options->caution);
  out_text(out, styles);
  for (size_t k = 0; k < file->count; k++)
    put_case(out, file, k);
  out_text(out, "</Document>\n</kml>\n");
}
