/* draw: what was asked for. */
#include <math.h>
#include <string.h>

#include "draw.h"
#include "oxbow/text.h"

typedef struct {
  const char *ending;
  ox_export_format format;
  double width, height;
  ox_palette_id palette;
} format_row;

static const format_row formats[] = {
    {".png", OX_EXPORT_PNG, 1600, 1000, OX_PALETTE_LIGHT},
    {".apng", OX_EXPORT_APNG, 800, 500, OX_PALETTE_LIGHT},
    {".gif", OX_EXPORT_GIF, 800, 500, OX_PALETTE_LIGHT},
    {".svg", OX_EXPORT_SVG, 960, 600, OX_PALETTE_PRINT},
    {".pdf", OX_EXPORT_PDF, 842, 595, OX_PALETTE_PRINT}, /* A4 across */
};

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
  return format->format != OX_EXPORT_SVG && format->format != OX_EXPORT_PDF;
}

/* A centimetre in pixels at the resolution, or in points. */
static void from_cm(const format_row *format, draw_plan *p) {
  double dots = (in_pixels(format) ? p->export.dpi : 72.0) / 2.54;
  p->export.width *= dots;
  p->export.height *= dots;
  if (!in_pixels(format)) return;
  p->export.width = round(p->export.width);
  p->export.height = round(p->export.height);
}

/* "1600x1000"; "16x10cm", which takes a resolution */
static bool parse_size(const char *text, const format_row *format, draw_plan *p) {
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
  for (int i = 0; i < OX_PALETTE_CHOICES; i++) {
    if (strcmp(text, ox_palette_name((ox_palette_id)i)) != 0) continue;
    *out = (ox_palette_id)i;
    return true;
  }
  return false;
}

static bool parse_at(const char *text, draw_plan *p) {
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
    cli_wrong(io, _("%s: %s is not a number from %s to %s"), option, text, cli_number(least).text,
              cli_number(most).text);
    return false;
  }
  *out = value;
  return true;
}


/* The format by the ending; a place for a number makes it frames. */
static int choose_format(cli_io *io, draw_plan *p, const format_row **out) {
  bool fault = false;
  *out = format_of(p->path);
  if (!*out)
    return cli_wrong(io, _("-o: %s does not end in .png, .apng, .gif, .svg or .pdf"), p->path);
  if ((*out)->format == OX_EXPORT_PNG) p->numbered = draw_is_numbered(p->path, &fault);
  if (fault)
    return cli_wrong(io,
                     _("-o: %s has a %% that is not one place for a number (%%d, or %%04d with up "
                       "to 9 figures)"),
                     p->path);
  return OX_CLI_DONE;
}

static bool moves(const draw_plan *p) {
  return p->numbered || p->export.format == OX_EXPORT_APNG || p->export.format == OX_EXPORT_GIF;
}

/* What does not go together. */
static int plan_agrees(cli_io *io, const draw_plan *p, const draw_wishes *w,
                       const format_row *format) {
  if ((w->fps || w->speed) && !moves(p))
    return cli_wrong(io, _("--fps and --speed are for a moving picture: -o FILE.apng, FILE.gif or "
                           "NAME%%04d.png"));
  if (w->dpi && (!in_pixels(format) || format->format == OX_EXPORT_GIF))
    return cli_wrong(io, _("--dpi is for a picture in pixels that names it: .png or .apng"));
  if (p->export.transparent && format->format != OX_EXPORT_PNG)
    return cli_wrong(io, _("--transparent is for a picture in pixels: .png"));
  if (w->moments && moves(p)) return cli_wrong(io,
                                               _("--moments is for a picture that stands still"));
  if (w->at && moves(p)) return cli_wrong(io, _("--at is for a picture that stands still"));
  return OX_CLI_DONE;
}

static bool plan_numbers(cli_io *io, draw_plan *p, const draw_wishes *w) {
  double fps_most = p->export.format == OX_EXPORT_GIF ? OX_GIF_FPS_MOST : 60.0;
  return parse_within(io, "--dpi", w->dpi, 10, 2400, &p->export.dpi) &&
         parse_within(io, "--fps", w->fps, 1, fps_most, &p->export.fps) &&
         parse_within(io, "--speed", w->speed, 0.1, 1000, &p->export.speed);
}

static int plan_picture(cli_io *io, draw_plan *p, const draw_wishes *w) {
  const format_row *format;
  int code = choose_format(io, p, &format);
  if (code != OX_CLI_DONE) return code;
  p->export = (ox_export_options){.format = format->format,
                                  .width = p->numbered ? 800 : format->width,
                                  .height = p->numbered ? 500 : format->height,
                                  .t_s = (double)NAN,
                                  .fps = FPS,
                                  .speed = SPEED,
                                  .dpi = DPI,
                                  .transparent = w->transparent,
                                  .moments = w->moments};
  p->palette = format->palette;
  if (!plan_numbers(io, p, w)) return OX_CLI_USAGE;
  code = plan_agrees(io, p, w, format);
  if (code != OX_CLI_DONE) return code;
  if (w->size && !parse_size(w->size, format, p))
    return cli_wrong(io,
                     in_pixels(format)
                         ? _("--size: %s is not a size (WxH in pixels, 1 to 16384, or WxHcm)")
                         : _("--size: %s is not a size (WxH in points, 1 to 14400, or WxHcm)"),
                     w->size);
  if (w->palette && !parse_palette(w->palette, &p->palette))
    return cli_wrong(io, _("--palette: %s is not light, dark, projector or print"), w->palette);
  if (w->at && !parse_at(w->at, p))
    return cli_wrong(io, _("--at: %s is not a time in seconds, nor none"), w->at);
  return OX_CLI_DONE;
}

static int plan_overlays(cli_io *io, cli_overlay_plan *o, const draw_wishes *w) {
  o->preset = -1;
  o->mistake = -1;
  o->seed = 1;
  o->area = w->area;
  if (w->compare && !cli_parse_compare(w->compare, o))
    return cli_wrong(io, _("--compare: %s is not the key of a technique or of a mistake"),
                     w->compare);
  if (w->seed && !w->spread) return cli_wrong(io, _("--seed needs --spread, --worksheet or --key"));
  if (!cli_parse_runs(io, "--spread", w->spread, &o->spread_runs)) return OX_CLI_USAGE;
  return cli_parse_seed(io, w->seed, &o->seed) ? OX_CLI_DONE : OX_CLI_USAGE;
}

int draw_plan_make(cli_io *io, draw_plan *p, const draw_wishes *w) {
  if (draw_asks_for_sheets(w)) return draw_plan_sheets(io, p, w);
  if (w->per_page || w->paper || w->across)
    return cli_wrong(io, _("--per-page, --paper and --across need --worksheet or --key"));
  int code = plan_picture(io, p, w);
  return code == OX_CLI_DONE ? plan_overlays(io, &p->overlays, w) : code;
}
