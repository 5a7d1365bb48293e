/* track --format geojson|kml|gpx: the ground track for other people's maps. */
#include <stdlib.h>
#include <string.h>

#include "cli_private.h"
#include "oxbow/file.h"
#include "oxbow/text.h"
#include "oxbow/words.h"
#include "track.h"

/* --- what was asked for -------------------------------------------------------------------- */

static bool parse_format(const char *text, ox_trackout_format *out) {
  for (int i = 0; i < OX_TRACKOUT_COUNT; i++) {
    if (strcmp(text, ox_trackout_name((ox_trackout_format)i)) != 0) continue;
    *out = (ox_trackout_format)i;
    return true;
  }
  return false;
}

/* Figures from..from+count-1 of the text as a number, -1 for anything else. */
static int part_of(const char *text, size_t from, size_t count) {
  int value = 0;
  for (size_t i = from; i < from + count; i++) {
    if (text[i] < '0' || text[i] > '9') return -1;
    value = 10 * value + (text[i] - '0');
  }
  return value;
}

/* "2026-03-14", the form of ISO 8601. */
static bool parse_date(const char *text, ox_trackout_options *o) {
  if (strlen(text) != 10 || text[4] != '-' || text[7] != '-') return false;
  o->year = part_of(text, 0, 4);
  o->month = part_of(text, 5, 2);
  o->day = part_of(text, 8, 2);
  return ox_trackout_date_valid(o->year, o->month, o->day);
}

int cli_track_map_plan(cli_io *io, const cli_track_wishes *w, double step_s, cli_track_map *map) {
  char remark[OX_REMARK_BYTES];
  map->options = (ox_trackout_options){.step_s = step_s, .caution = ox_words_caution()};
  map->path = w->path;
  if (!parse_format(w->format, &map->options.format))
    return cli_wrong(io, _("--format: %s is not csv, geojson, kml or gpx"), w->format);
  if (step_s < 0.1 || step_s > 3600.0)
    return cli_wrong(io, _("--step: %s is not a time (0.1 to 3600 seconds)"), w->step);
  if (w->date && !parse_date(w->date, &map->options))
    return cli_wrong(io, _("--date: %s is not a date (YYYY-MM-DD, 1900 to 2999)"), w->date);
  if (!w->fix_at) return OX_CLI_DONE;
  map->fix_given = true;
  if (ox_latlon_parse(w->fix_at, &map->fix, remark, sizeof remark) == OX_ERROR)
    return cli_wrong(io, "--fix-at: %s", remark);
  return OX_CLI_DONE;
}

/* --- writing ------------------------------------------------------------------------------- */

static ox_status to_stream(void *context, const void *bytes, size_t length) {
  return fwrite(bytes, 1, length, context) == length ? OX_OK : OX_ERROR;
}

static ox_status to_file(void *context, const void *bytes, size_t length) {
  return ox_file_write(context, bytes, length);
}

static int complain(cli_io *io, const char *where, const char *reason) {
  fprintf(io->err, _("%s: not written: %s\n"), where, reason);
  return OX_CLI_INPUT;
}

static int write_map(cli_io *io, const cli_track_map *map, const ox_trackout_case *cases,
                     size_t count) {
  char error[512];
  const char *reason = NULL;
  if (!map->path) {
    if (ox_trackout_write(cases, count, &map->options, to_stream, io->out, &reason) == OX_OK)
      return OX_CLI_DONE;
    return complain(io, "track", reason);
  }
  ox_file_writer *writer = ox_file_begin(map->path, error, sizeof error);
  if (!writer) {
    fprintf(io->err, "%s\n", error);
    return OX_CLI_INPUT;
  }
  if (ox_trackout_write(cases, count, &map->options, to_file, writer, &reason) != OX_OK) {
    ox_file_abandon(writer);
    return complain(io, map->path, reason);
  }
  if (ox_file_commit(writer, error, sizeof error) == OX_OK) return OX_CLI_DONE;
  fprintf(io->err, "%s\n", error);
  return OX_CLI_INPUT;
}

/* One place stands for one fix: cases with other fixes need places of their own. */
static bool one_fix(cli_io *io, const cli_cases *cases) {
  const char *fix = cli_case(cases, 0)->hold.fix;
  for (size_t i = 1; i < cases->count; i++) {
    if (strcmp(cli_case(cases, i)->hold.fix, fix) == 0) continue;
    cli_wrong(io, _("--fix-at is one place, and the cases hold at more than one fix; choose a case"
                    " with --case"));
    return false;
  }
  return true;
}

static bool place_fix(cli_io *io, const cli_cases *cases, size_t i, const cli_track_map *map,
                      ox_latlon *out) {
  if (map->fix_given) {
    *out = map->fix;
    return true;
  }
  if (cli_fix_place(cases, i, out)) return true;
  fprintf(io->err, _("%s: case \"%s\": hold.fix: no latitude and longitude is known; give them with"
                     " --fix-at\n"),
          cases->path, cli_case(cases, i)->name);
  return false;
}

static int fill_and_write(cli_io *io, const cli_cases *cases, const cli_track_map *map,
                          ox_trackout_case *out, ox_flight *flights) {
  int code = OX_CLI_DONE;
  for (size_t i = 0; i < cases->count; i++) {
    out[i] = (ox_trackout_case){.c = cli_case(cases, i), .flight = &flights[i]};
    if (!place_fix(io, cases, i, map, &out[i].fix) || !cli_solve(io, cases, i, &flights[i]))
      code = OX_CLI_INPUT;
  }
  return code == OX_CLI_DONE ? write_map(io, map, out, cases->count) : code;
}

int cli_track_map_put(cli_io *io, const cli_cases *cases, cli_track_map *map) {
  if (map->fix_given && !one_fix(io, cases)) return OX_CLI_USAGE;
  map->options.title = cases->lesson->title[0] ? cases->lesson->title : NULL;
  ox_trackout_case *out = calloc(cases->count, sizeof *out);
  ox_flight *flights = calloc(cases->count, sizeof *flights);
  int code = OX_CLI_INPUT;
  if (out && flights)
    code = fill_and_write(io, cases, map, out, flights);
  else
    fputs(_("oxbow-cli: there is not enough memory\n"), io->err);
  free(flights);
  free(out);
  return code;
}
