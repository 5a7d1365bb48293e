/* draw LESSON -o FILE: the picture of a case, or of every case on a sheet of its own. */
#include <stdlib.h>
#include <string.h>

#include "draw.h"
#include "oxbow/file.h"
#include "oxbow/text.h"

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

int draw_to_file(cli_io *io, const char *path, draw_maker make, const void *what) {
  char error[512];
  const char *reason = NULL;
  ox_file_writer *writer = ox_file_begin(path, error, sizeof error);
  if (!writer) {
    fprintf(io->err, "%s\n", error);
    return OX_CLI_INPUT;
  }
  if (make(what, to_file, writer, &reason) == OX_OK) {
    if (ox_file_commit(writer, error, sizeof error) == OX_OK) return OX_CLI_DONE;
    fprintf(io->err, "%s\n", error);
    return OX_CLI_INPUT;
  }
  ox_file_abandon(writer);
  fprintf(io->err, _("%s: not written: %s\n"), path, reason ? reason : _("the picture failed"));
  return OX_CLI_INPUT;
}

typedef struct {
  const draw_plan *p;
  const draw_scenes *s;
} drawing;

static ox_status make_picture(const void *what, ox_export_sink sink, void *context,
                              const char **reason) {
  const drawing *d = what;
  ox_export_options o = d->p->export;
  o.t_s = d->s->t_s[0];
  o.t_s_of = d->s->t_s;
  return ox_export(d->s->scenes, d->s->count, &o, sink, context, reason);
}

static int write_out(cli_io *io, const draw_plan *p, const draw_scenes *s) {
  drawing d = {p, s};
  if (p->on_sheets) return draw_write_sheets(io, p, s);
  if (p->numbered) return draw_write_frames(io, p, s);
  return draw_to_file(io, p->path, make_picture, &d);
}

/* --- what is drawn ---------------------------------------------------------------------------- */

static bool scenes_open(draw_scenes *s, size_t count) {
  *s = (draw_scenes){count, calloc(count, sizeof *s->flights), calloc(count, sizeof *s->scenes),
                     calloc(count, sizeof *s->overlays), calloc(count, sizeof *s->placed),
                     calloc(count, sizeof *s->t_s)};
  return s->flights && s->scenes && s->overlays && s->placed && s->t_s;
}

static void scenes_close(draw_scenes *s) {
  for (size_t i = 0; s->overlays && i < s->count; i++)
    cli_overlays_clear(&s->overlays[i]);
  free(s->flights);
  free(s->scenes);
  free(s->overlays);
  free(s->placed);
  free(s->t_s);
}

static bool fill_scene(cli_io *io, const cli_cases *cases, const draw_plan *p, draw_scenes *s,
                       size_t i) {
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

/* PDFs have all cases, everything else the first. */
static size_t wanted(const draw_plan *p, size_t count) {
  return p->on_sheets || p->export.format == OX_EXPORT_PDF ? count : 1;
}

static int draw_cases(cli_io *io, const cli_cases *cases, const draw_plan *p) {
  draw_scenes s;
  int code = OX_CLI_DONE;
  if (!scenes_open(&s, wanted(p, cases->count))) {
    fputs(_("oxbow-cli: there is not enough memory\n"), io->err);
    code = OX_CLI_INPUT;
  }
  for (size_t i = 0; i < s.count && code == OX_CLI_DONE; i++)
    if (!fill_scene(io, cases, p, &s, i)) code = OX_CLI_INPUT;
  if (code == OX_CLI_DONE) code = write_out(io, p, &s);
  scenes_close(&s);
  return code;
}

int cli_draw(cli_io *io, int argc, char **argv) {
  const char *case_name = NULL;
  draw_wishes w = {0};
  draw_plan p = {0};
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
      {"--per-page", &w.per_page, NULL},
      {"--paper", &w.paper, NULL},
      {"--transparent", NULL, &w.transparent},
      {"--area", NULL, &w.area},
      {"--moments", NULL, &w.moments},
      {"--ink", NULL, &p.ink},
      {"--worksheet", NULL, &w.worksheet},
      {"--key", NULL, &w.key},
      {"--across", NULL, &w.across},
  };
  int files;
  if (!cli_options(io, argc, argv, options, sizeof options / sizeof *options, &files))
    return OX_CLI_USAGE;
  if (files != 1) return cli_wrong(io, _("draw needs one lesson"));
  if (!p.path)
    return cli_wrong(io, _("draw needs -o FILE.png, FILE.apng, FILE.gif, FILE.svg or FILE.pdf"));
  int code = draw_plan_make(io, &p, &w);
  if (code != OX_CLI_DONE) return code;
  cli_cases cases;
  code = cli_cases_open(io, argv[0], case_name, &cases);
  if (code != OX_CLI_DONE) return code;
  code = draw_cases(io, &cases, &p);
  cli_cases_close(&cases);
  return code;
}
