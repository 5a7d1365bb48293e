/* track LESSON: the ground track, as CSV (a row at every step and at every end of a leg) or in one
 * of the formats of maps. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "track.h"
#include "oxbow/text.h"

static const double LEAST_STEP_S = 0.001;
static const double MOST_STEP_S = 86400.0;
static const double SAME_S = 1e-6; /* a step this near the end of a leg is that end's row */

/* Where the fix is, for the two columns that --latlon adds; NULL without them. */
typedef const ox_latlon *origin;

static void put_place(FILE *out, origin at, ox_vec p_nm) {
  ox_latlon place;
  if (!at) return;
  if (ox_plane_to_place(*at, p_nm, &place) == OX_OK)
    fprintf(out, ",%s,%s", cli_fixed(place.lat_deg, 9).text, cli_fixed(place.lon_deg, 9).text);
  else
    fputs(",,", out);
}

static void put_row(FILE *out, const ox_case *c, const ox_leg *leg, double t_s, origin at) {
  ox_state s = ox_leg_at(leg, t_s);
  cli_put_field(out, c->name);
  fprintf(out, ",%s,%s,%s,%s,%s,%s,%s", cli_fixed(t_s, 6).text, cli_fixed(s.p_nm.x, 9).text,
          cli_fixed(s.p_nm.y, 9).text, cli_fixed(s.heading_true_deg, 7).text,
          cli_fixed(s.track_true_deg, 7).text, cli_fixed(s.gs_kt, 7).text, ox_leg_name(leg->kind));
  put_place(out, at, s.p_nm);
  fputc('\n', out);
}

/* The steps fall on begin + k S whatever the legs are, so that the rows of two cases compare. */
static void put_flight(FILE *out, const ox_case *c, const ox_flight *f, double step_s,
                       origin at) {
  double begin_s = ox_flight_begin_s(f);
  long k = 0;
  for (size_t i = 0; i < f->leg_count && !ferror(out); i++) {
    const ox_leg *leg = &f->legs[i];
    double t_s = begin_s + (double)k * step_s;
    for (; t_s < leg->t1_s - SAME_S && !ferror(out); t_s = begin_s + (double)++k * step_s)
      put_row(out, c, leg, t_s, at);
    put_row(out, c, leg, leg->t1_s, at);
    if (t_s < leg->t1_s + SAME_S) k++;
  }
}

/* The origin of a case's plane on the earth; false after a message. */
static bool place_fix(cli_io *io, const cli_cases *cases, size_t index, ox_latlon *out) {
  if (cli_fix_place(cases, index, out)) return true;
  fprintf(io->err, _("%s: case \"%s\": --latlon needs a fix with a place\n"), cases->path,
          cli_case(cases, index)->name);
  return false;
}

static int put_track(cli_io *io, const cli_cases *cases, double step_s, bool latlon) {
  ox_flight *flight = malloc(sizeof *flight);
  int code = OX_CLI_DONE;
  if (!flight) {
    fputs(_("oxbow-cli: there is not enough memory\n"), io->err);
    return OX_CLI_INPUT;
  }
  fputs("case,t_s,x_nm,y_nm,heading_true_deg,track_true_deg,gs_kt,leg", io->out);
  fputs(latlon ? ",lat_deg,lon_deg\n" : "\n", io->out);
  for (size_t i = 0; i < cases->count; i++) {
    ox_latlon at;
    if ((!latlon || place_fix(io, cases, i, &at)) && cli_solve(io, cases, i, flight))
      put_flight(io->out, cli_case(cases, i), flight, step_s, latlon ? &at : NULL);
    else
      code = OX_CLI_INPUT;
  }
  free(flight);
  return code;
}

/* Where the format is left out, a file's ending tells. */
static const char *format_of(const cli_track_wishes *w) {
  if (w->format || !w->path) return w->format ? w->format : "csv";
  const char *dot = strrchr(w->path, '.');
  for (int i = 0; dot && i < OX_TRACKOUT_COUNT; i++)
    if (strcmp(dot + 1, ox_trackout_name((ox_trackout_format)i)) == 0) return dot + 1;
  return "csv";
}

static int read_wishes(cli_io *io, cli_track_wishes *w, double *step_s, cli_track_map *map) {
  if (w->step && (!cli_parse_number(w->step, step_s) || *step_s < LEAST_STEP_S ||
                  *step_s > MOST_STEP_S))
    return cli_wrong(io, _("--step: %s is not a time (0.001 to 86400 seconds)"), w->step);
  w->format = format_of(w);
  if (strcmp(w->format, "csv") != 0) return cli_track_map_plan(io, w, *step_s, map);
  if (w->path) return cli_wrong(io, _("-o: %s does not end in .geojson, .kml or .gpx"), w->path);
  if (w->fix_at || w->date)
    return cli_wrong(io, _("%s needs --format geojson, kml or gpx"),
                     w->date ? "--date" : "--fix-at");
  return OX_CLI_DONE;
}

int cli_track(cli_io *io, int argc, char **argv) {
  const char *case_name = NULL;
  bool latlon = false;
  cli_track_wishes w = {0};
  cli_track_map map = {0};
  const cli_option options[] = {{"--case", &case_name, NULL}, {"--step", &w.step, NULL},
                                {"--format", &w.format, NULL}, {"-o", &w.path, NULL},
                                {"--fix-at", &w.fix_at, NULL}, {"--date", &w.date, NULL},
                                {"--latlon", NULL, &latlon}};
  double step_s = 1.0;
  int files;
  if (!cli_options(io, argc, argv, options, sizeof options / sizeof *options, &files))
    return OX_CLI_USAGE;
  if (files != 1) return cli_wrong(io, _("track needs one lesson"));
  int code = read_wishes(io, &w, &step_s, &map);
  if (code != OX_CLI_DONE) return code;
  cli_cases cases;
  code = cli_cases_open(io, argv[0], case_name, &cases);
  if (code != OX_CLI_DONE) return code;
  code = strcmp(w.format, "csv") == 0 ? put_track(io, &cases, step_s, latlon)
                                      : cli_track_map_put(io, &cases, &map);
  cli_cases_close(&cases);
  return code;
}
