/* Checks, samples every flight, and has one of the three writers write. */
#include <math.h>
#include <stdlib.h>

#include "oxbow/text.h"
#include "trackout_private.h"

const char *ox_trackout_name(ox_trackout_format format) {
  static const char *const names[OX_TRACKOUT_COUNT] = {"geojson", "kml", "gpx"};
  return names[format];
}

static const char *fault_of(const ox_trackout_case *cases, size_t count,
                            const ox_trackout_options *o) {
  if (count == 0) return _("there is no case");
  if (!(o->step_s >= 0.1 && o->step_s <= 3600.0)) return _("the step is not 0.1 to 3600 seconds");
  if (o->year != 0 && !ox_trackout_date_valid(o->year, o->month, o->day))
    return _("there is no such date");
  for (size_t i = 0; i < count; i++) {
    if (!ox_latlon_valid(cases[i].fix)) return _("the fix is not on the earth");
    if (cases[i].flight->leg_count == 0) return _("there is no flight to write");
  }
  return NULL;
}

static ox_status fail(const char *reason, const char **error) {
  if (error) *error = reason;
  return OX_ERROR;
}

static bool make_tracks(const ox_trackout_case *cases, size_t count, double step_s,
                        track *tracks) {
  for (size_t i = 0; i < count; i++)
    if (!track_make(&cases[i], step_s, &tracks[i])) return false;
  return true;
}

static void write_file(ox_out *out, const track_file *file) {
  switch (file->options->format) {
  case OX_TRACKOUT_KML:
    write_kml(out, file);
    break;
  case OX_TRACKOUT_GPX:
    write_gpx(out, file);
    break;
  default:
    write_geojson(out, file);
  }
}

ox_status ox_trackout_write(const ox_trackout_case *cases, size_t count,
                            const ox_trackout_options *options, ox_trackout_sink sink,
                            void *context, const char **error) {
  const char *fault = fault_of(cases, count, options);
  if (fault) return fail(fault, error);
  track *tracks = calloc(count, sizeof *tracks);
  if (!tracks) return fail(_("there is not enough memory"), error);
  ox_out out = {sink, context, false};
  bool made = make_tracks(cases, count, options->step_s, tracks);
  if (made) {
    const track_file file = {cases, tracks, count, options};
    write_file(&out, &file);
  }
  for (size_t i = 0; i < count; i++)
    track_clear(&tracks[i]);
  free(tracks);
  if (!made) return fail(_("there is not enough memory"), error);
  if (out.failed) return fail(_("the file could not be written"), error);
  return OX_OK;
}
