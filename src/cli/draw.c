/* draw LESSON -o FILE: the picture of a case, or of every case on a sheet of its own. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "cli_private.h"
#include "oxbow/export.h"
#include "oxbow/file.h"

typedef struct {
  const char *ending;
  ox_export_format format;
  double width, height;
  ox_palette_id palette;
} format_row;

static const format_row formats[] = {
    {".png", OX_EXPORT_PNG, 1600, 1000, OX_PALETTE_LIGHT},
    {".svg", OX_EXPORT_SVG, 960, 600, OX_PALETTE_PRINT},
    {".pdf", OX_EXPORT_PDF, 842, 595, OX_PALETTE_PRINT}, /* A4 across */
};

typedef struct {
  const char *path;
  ox_export_options export;
  ox_palette_id palette;
  bool at_given;
} plan;

/* --- what was asked for -------------------------------------------------------------------- */

static char lower(char c) {
  return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static const format_row *format_of(const char *path) {
  size_t length = strlen(path);
  for (size_t i = 0; i < sizeof formats / sizeof *formats; i++) {
    const char *ending = formats[i].ending;
    size_t at = 0;
    if (length <= 4) return NULL;
    while (ending[at] && lower(path[length - 4 + at]) == ending[at])
      at++;
    if (!ending[at] && path[length - 5] != '/') return &formats[i];
  }
  return NULL;
}

/* "1600x1000" */
static bool parse_size(const char *text, const format_row *format, plan *p) {
  char left[32];
  const char *x = strchr(text, 'x');
  if (!x || (size_t)(x - text) >= sizeof left) return false;
  memcpy(left, text, (size_t)(x - text));
  left[x - text] = '\0';
  double *width = &p->export.width, *height = &p->export.height;
  if (!cli_parse_number(left, width) || !cli_parse_number(x + 1, height)) return false;
  bool pixels = format->format == OX_EXPORT_PNG;
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

static int make_plan(cli_io *io, plan *p, const char *size, const char *palette, const char *at) {
  const format_row *format = format_of(p->path);
  if (!format) return cli_wrong(io, "-o: %s does not end in .png, .svg or .pdf", p->path);
  p->export = (ox_export_options){format->format, format->width, format->height, (double)NAN, NULL};
  p->palette = format->palette;
  if (size && !parse_size(size, format, p))
    return cli_wrong(io, "--size: %s is not a size (%s)", size,
                     format->format == OX_EXPORT_PNG ? "WxH in pixels, 1 to 16384"
                                                     : "WxH in points, 1 to 14400");
  if (palette && !parse_palette(palette, &p->palette))
    return cli_wrong(io, "--palette: %s is not light, dark, projector or print", palette);
  if (at && !parse_at(at, p))
    return cli_wrong(io, "--at: %s is not a time in seconds, nor none", at);
  return OX_CLI_DONE;
}

/* --- where the aircraft is ----------------------------------------------------------------- */

static const ox_leg *first_outbound(const ox_flight *f) {
  for (size_t i = 0; i < f->leg_count; i++)
    if (f->legs[i].kind == OX_LEG_OUTBOUND) return &f->legs[i];
  return NULL;
}

/* Half-way along the first outbound leg, where heading and track differ most plainly. One instant
 * serves all sheets: the one at which most of the flights are on that leg. */
static double telling_instant_s(const ox_flight *flights, size_t count) {
  double best_s = 0.5 * (ox_flight_begin_s(&flights[0]) + ox_flight_end_s(&flights[0]));
  size_t best = 0;
  for (size_t i = 0; i < count; i++) {
    const ox_leg *leg = first_outbound(&flights[i]);
    if (!leg) continue;
    double t_s = 0.5 * (leg->t0_s + leg->t1_s);
    size_t on_leg = 0;
    for (size_t k = 0; k < count; k++) {
      const ox_leg *other = first_outbound(&flights[k]);
      if (other && t_s >= other->t0_s && t_s <= other->t1_s) on_leg++;
    }
    if (on_leg <= best) continue;
    best = on_leg;
    best_s = t_s;
  }
  return best_s;
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

static int draw_cases(cli_io *io, const cli_cases *cases, plan *p) {
  size_t count = p->export.format == OX_EXPORT_PDF ? cases->count : 1;
  ox_flight *flights = calloc(count, sizeof *flights);
  ox_scene *scenes = calloc(count, sizeof *scenes);
  int code = flights && scenes ? OX_CLI_DONE : OX_CLI_INPUT;
  if (code != OX_CLI_DONE) fputs("oxbow-cli: there is not enough memory\n", io->err);
  for (size_t i = 0; i < count && code == OX_CLI_DONE; i++) {
    if (!cli_solve(io, cases, i, &flights[i])) code = OX_CLI_INPUT;
    scenes[i] = (ox_scene){.c = cli_case(cases, i),
                           .flight = &flights[i],
                           .title = cases->lesson->title,
                           .palette = p->palette,
                           .text_scale = 1.0,
                           .layers = OX_LAYER_ALL};
  }
  if (code == OX_CLI_DONE) {
    if (!p->at_given) p->export.t_s = telling_instant_s(flights, count);
    code = write_picture(io, p, scenes, count);
  }
  free(scenes);
  free(flights);
  return code;
}

int cli_draw(cli_io *io, int argc, char **argv) {
  const char *case_name = NULL, *size = NULL, *palette = NULL, *at = NULL;
  plan p = {0};
  const cli_option options[] = {
      {"-o", &p.path},         {"--case", &case_name}, {"--size", &size},
      {"--palette", &palette}, {"--at", &at},
  };
  int files;
  if (!cli_options(io, argc, argv, options, sizeof options / sizeof *options, &files))
    return OX_CLI_USAGE;
  if (files != 1) return cli_wrong(io, "draw needs one lesson");
  if (!p.path) return cli_wrong(io, "draw needs -o FILE.png, FILE.svg or FILE.pdf");
  int code = make_plan(io, &p, size, palette, at);
  if (code != OX_CLI_DONE) return code;
  cli_cases cases;
  code = cli_cases_open(io, argv[0], case_name, &cases);
  if (code != OX_CLI_DONE) return code;
  code = draw_cases(io, &cases, &p);
  cli_cases_close(&cases);
  return code;
}
