/* draw LESSON -o FILE: the picture of a case, or of every case on a sheet of its own. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "cli_private.h"
#include "oxbow/export.h"
#include "oxbow/file.h"
#include "oxbow/placed.h"

typedef struct {
  const char *ending;
  ox_export_format format;
  double width, height;
  ox_palette_id palette;
} format_row;

static const format_row formats[] = {
    {".png", OX_EXPORT_PNG, 1600, 1000, OX_PALETTE_LIGHT},
    {".apng", OX_EXPORT_APNG, 800, 500, OX_PALETTE_LIGHT},
    {".svg", OX_EXPORT_SVG, 960, 600, OX_PALETTE_PRINT},
    {".pdf", OX_EXPORT_PDF, 842, 595, OX_PALETTE_PRINT}, /* A4 across */
};

typedef struct {
  const char *path;
  ox_export_options export;
  ox_palette_id palette;
  bool at_given, moments, ink, transparent;
  cli_overlay_plan overlays;
} plan;

/* The options as they were given; NULL where not. */
typedef struct {
  const char *size, *palette, *at, *compare, *spread, *seed, *dpi, *fps, *speed;
} wishes;

/* --- what was asked for -------------------------------------------------------------------- */

static char lower(char c) {
  return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static const format_row *format_of(const char *path) {
  size_t length = strlen(path);
  for (size_t i = 0; i < sizeof formats / sizeof *formats; i++) {
    const char *ending = formats[i].ending;
    size_t at = 0, tail = strlen(ending);
    if (length <= tail) continue;
    while (ending[at] && lower(path[length - tail + at]) == ending[at])
      at++;
    if (!ending[at] && path[length - tail - 1] != '/') return &formats[i];
  }
  return NULL;
}

static bool in_pixels(const format_row *format) {
  return format->format == OX_EXPORT_PNG || format->format == OX_EXPORT_APNG;
}

/* A centimetre in pixels at the resolution, or in points. */
static void from_cm(const format_row *format, plan *p) {
  double dots = (in_pixels(format) ? p->export.dpi : 72.0) / 2.54;
  p->export.width *= dots;
  p->export.height *= dots;
  if (!in_pixels(format)) return;
  p->export.width = round(p->export.width);
  p->export.height = round(p->export.height);
}

/* "1600x1000"; "16x10cm", which takes a resolution */
static bool parse_size(const char *text, const format_row *format, plan *p) {
  char left[32];
  const char *x = strchr(text, 'x');
  if (!x || (size_t)(x - text) >= sizeof left) return false;
  memcpy(left, text, (size_t)(x - text));
  left[x - text] = '\0';
  double *width = &p->export.width, *height = &p->export.height;
  char right[32];
  size_t length = strlen(x + 1);
  bool cm = length > 2 && strcmp(x + 1 + length - 2, "cm") == 0;
  if (cm) length -= 2;
  if (length >= sizeof right) return false;
  memcpy(right, x + 1, length);
  right[length] = '\0';
  if (!cli_parse_number(left, width) || !cli_parse_number(right, height)) return false;
  if (cm) from_cm(format, p);
  bool pixels = in_pixels(format);
  double most = pixels ? 16384.0 : 14400.0;
  if (pixels && (*width != floor(*width) || *height != floor(*height))) return false;
  return *width >= 1.0 && *width <= most && *height >= 1.0 && *height <= most;
}

static bool parse_palette(const char *text, ox_palette_id *out) {
  for (int i = 0; i < OX_PALETTE_COUNT; i++) {
    if (strcmp(text, ox_palette_name((ox_palette_id)i)) != 0) continue;
    *out = (ox_palette_id)i;
    return true;
  }
  return false;
}

static bool parse_at(const char *text, plan *p) {
  p->at_given = true;
  p->export.t_s = (double)NAN;
  return strcmp(text, "none") == 0 || cli_parse_number(text, &p->export.t_s);
}

static const double FPS = 10.0, SPEED = 10.0, DPI = 150.0;

/* An option that is a number in a range; the value stays where it is not given. */
static bool parse_within(cli_io *io, const char *option, const char *text, double least,
                         double most, double *out) {
  double value;
  if (!text) return true;
  if (!cli_parse_number(text, &value) || !(value >= least && value <= most)) {
    cli_wrong(io, "%s: %s is not a number from %s to %s", option, text, cli_number(least).text,
              cli_number(most).text);
    return false;
  }
  *out = value;
  return true;
}

static int plan_picture(cli_io *io, plan *p, const wishes *w) {
  const format_row *format = format_of(p->path);
  if (!format) return cli_wrong(io, "-o: %s does not end in .png, .apng, .svg or .pdf", p->path);
  p->export = (ox_export_options){.format = format->format,
                                  .width = format->width,
                                  .height = format->height,
                                  .t_s = (double)NAN,
                                  .moments = p->moments};
  p->palette = format->palette;
  p->export.transparent = p->transparent;
  p->export.fps = FPS;
  p->export.speed = SPEED;
  p->export.dpi = DPI;
  if (!parse_within(io, "--dpi", w->dpi, 10, 2400, &p->export.dpi) ||
      !parse_within(io, "--fps", w->fps, 1, 60, &p->export.fps) ||
      !parse_within(io, "--speed", w->speed, 0.1, 1000, &p->export.speed))
    return OX_CLI_USAGE;
  if ((w->fps || w->speed) && format->format != OX_EXPORT_APNG)
    return cli_wrong(io, "--fps and --speed are for a moving picture: -o FILE.apng");
  if ((w->dpi && !in_pixels(format)) || (p->transparent && format->format != OX_EXPORT_PNG))
    return cli_wrong(io, "%s is for a picture in pixels", w->dpi ? "--dpi" : "--transparent");
  if (w->size && !parse_size(w->size, format, p))
    return cli_wrong(io, "--size: %s is not a size (%s)", w->size,
                     in_pixels(format) ? "WxH in pixels, 1 to 16384, or WxHcm"
                                       : "WxH in points, 1 to 14400, or WxHcm");
  if (w->palette && !parse_palette(w->palette, &p->palette))
    return cli_wrong(io, "--palette: %s is not light, dark, projector or print", w->palette);
  if (w->at && !parse_at(w->at, p))
    return cli_wrong(io, "--at: %s is not a time in seconds, nor none", w->at);
  return OX_CLI_DONE;
}

static int plan_overlays(cli_io *io, cli_overlay_plan *o, const wishes *w) {
  o->preset = -1;
  o->mistake = -1;
  o->seed = 1;
  if (w->compare && !cli_parse_compare(w->compare, o))
    return cli_wrong(io, "--compare: %s is not the key of a technique or of a mistake", w->compare);
  if (w->seed && !w->spread) return cli_wrong(io, "--seed needs --spread");
  if (!cli_parse_runs(io, "--spread", w->spread, &o->spread_runs)) return OX_CLI_USAGE;
  return cli_parse_seed(io, w->seed, &o->seed) ? OX_CLI_DONE : OX_CLI_USAGE;
}

/* --- where the aircraft is ----------------------------------------------------------------- */

/* Half-way along the first leg flown outbound, where heading and track differ most plainly: that
 * of a parallel or teardrop entry, else that of the first circuit. */
static double telling_instant_s(const ox_flight *f) {
  for (size_t i = 0; i < f->leg_count; i++) {
    const ox_leg *leg = &f->legs[i];
    if (leg->kind == OX_LEG_ENTRY_OUTBOUND || leg->kind == OX_LEG_OUTBOUND)
      return 0.5 * (leg->t0_s + leg->t1_s);
  }
  return 0.5 * (ox_flight_begin_s(f) + ox_flight_end_s(f));
}

/* --- writing ------------------------------------------------------------------------------- */

static ox_status to_file(void *context, const void *bytes, size_t length) {
  return ox_file_write(context, bytes, length);
}

/* The picture goes to the file whole, or the file stays as it was. */
static int write_picture(cli_io *io, const plan *p, const ox_scene *scenes, size_t count) {
  char error[512];
  const char *reason = NULL;
  ox_file_writer *writer = ox_file_begin(p->path, error, sizeof error);
  if (!writer) {
    fprintf(io->err, "%s\n", error);
    return OX_CLI_INPUT;
  }
  if (ox_export(scenes, count, &p->export, to_file, writer, &reason) == OX_OK) {
    if (ox_file_commit(writer, error, sizeof error) == OX_OK) return OX_CLI_DONE;
    fprintf(io->err, "%s\n", error);
    return OX_CLI_INPUT;
  }
  ox_file_abandon(writer);
  fprintf(io->err, "%s: not written: %s\n", p->path, reason ? reason : "the picture failed");
  return OX_CLI_INPUT;
}

/* A sheet for each case, and what belongs to it. */
typedef struct {
  size_t count;
  ox_flight *flights;
  ox_scene *scenes;
  cli_overlays *overlays;
  ox_placed *placed;
  double *t_s;
} sheets;

static bool sheets_open(sheets *s, size_t count) {
  *s = (sheets){count, calloc(count, sizeof *s->flights), calloc(count, sizeof *s->scenes),
                calloc(count, sizeof *s->overlays), calloc(count, sizeof *s->placed),
                calloc(count, sizeof *s->t_s)};
  return s->flights && s->scenes && s->overlays && s->placed && s->t_s;
}

static void sheets_close(sheets *s) {
  for (size_t i = 0; s->overlays && i < s->count; i++)
    cli_overlays_clear(&s->overlays[i]);
  free(s->flights);
  free(s->scenes);
  free(s->overlays);
  free(s->placed);
  free(s->t_s);
}

static bool fill_sheet(cli_io *io, const cli_cases *cases, const plan *p, sheets *s, size_t i) {
  if (!cli_solve(io, cases, i, &s->flights[i])) return false;
  s->t_s[i] = p->at_given ? p->export.t_s : telling_instant_s(&s->flights[i]);
  s->scenes[i] = (ox_scene){.c = cli_case(cases, i),
                            .flight = &s->flights[i],
                            .title = cases->lesson->title,
                            .palette = p->palette,
                            .text_scale = 1.0,
                            .layers = OX_LAYER_ALL};
  const ox_lesson *lesson = cases->lesson;
  ox_placed_make(&lesson->points, &lesson->route, &lesson->cases[cases->first + i].fix,
                 s->scenes[i].c, s->scenes[i].flight, &s->placed[i]);
  s->scenes[i].marks = s->placed[i].marks;
  s->scenes[i].mark_count = s->placed[i].mark_count;
  s->scenes[i].paths = s->placed[i].paths;
  s->scenes[i].path_count = s->placed[i].path_count;
  if (p->ink) s->scenes[i].ink = cli_ink(cases, i);
  return cli_overlays_make(io, cases->path, &p->overlays, &s->scenes[i], &s->overlays[i]);
}

static int draw_cases(cli_io *io, const cli_cases *cases, plan *p) {
  sheets s;
  int code = OX_CLI_DONE;
  if (!sheets_open(&s, p->export.format == OX_EXPORT_PDF ? cases->count : 1)) {
    fputs("oxbow-cli: there is not enough memory\n", io->err);
    code = OX_CLI_INPUT;
  }
  for (size_t i = 0; i < s.count && code == OX_CLI_DONE; i++)
    if (!fill_sheet(io, cases, p, &s, i)) code = OX_CLI_INPUT;
  if (code == OX_CLI_DONE) {
    p->export.t_s = s.t_s[0];
    p->export.t_s_of = s.t_s;
    code = write_picture(io, p, s.scenes, s.count);
  }
  sheets_close(&s);
  return code;
}

int cli_draw(cli_io *io, int argc, char **argv) {
  const char *case_name = NULL;
  wishes w = {0};
  plan p = {0};
  const cli_option options[] = {
      {"-o", &p.path, NULL},
      {"--case", &case_name, NULL},
      {"--size", &w.size, NULL},
      {"--palette", &w.palette, NULL},
      {"--at", &w.at, NULL},
      {"--compare", &w.compare, NULL},
      {"--spread", &w.spread, NULL},
      {"--seed", &w.seed, NULL},
      {"--dpi", &w.dpi, NULL},
      {"--fps", &w.fps, NULL},
      {"--speed", &w.speed, NULL},
      {"--transparent", NULL, &p.transparent},
      {"--area", NULL, &p.overlays.area},
      {"--moments", NULL, &p.moments},
      {"--ink", NULL, &p.ink},
  };
  int files;
  if (!cli_options(io, argc, argv, options, sizeof options / sizeof *options, &files))
    return OX_CLI_USAGE;
  if (files != 1) return cli_wrong(io, "draw needs one lesson");
  if (!p.path) return cli_wrong(io, "draw needs -o FILE.png, FILE.apng, FILE.svg or FILE.pdf");
  int code = plan_picture(io, &p, &w);
  if (code == OX_CLI_DONE) code = plan_overlays(io, &p.overlays, &w);
  if (code != OX_CLI_DONE) return code;
  cli_cases cases;
  code = cli_cases_open(io, argv[0], case_name, &cases);
  if (code != OX_CLI_DONE) return code;
  code = draw_cases(io, &cases, &p);
  cli_cases_close(&cases);
  return code;
}
