/* draw --worksheet, --key: the cases of a lesson as handouts. */
#include <string.h>

#include "draw.h"
#include "oxbow/text.h"

static const char PROGRAM[] = "Oxbow " OX_VERSION;

bool draw_asks_for_sheets(const draw_wishes *w) {
  return w->worksheet || w->key;
}

/* The first option given that handouts have no use for; NULL when there is none. */
static const char *out_of_place(const draw_wishes *w) {
  const struct {
    bool given;
    const char *name;
  } rows[] = {{w->size, "--size"},       {w->at, "--at"},           {w->compare, "--compare"},
              {w->spread, "--spread"},   {w->dpi, "--dpi"},         {w->fps, "--fps"},
              {w->speed, "--speed"},     {w->palette, "--palette"}, {w->moments, "--moments"},
              {w->area, "--area"},       {w->transparent, "--transparent"}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    if (rows[i].given) return rows[i].name;
  return NULL;
}

static bool parse_per_page(const char *text, int *out) {
  uint64_t value;
  if (!cli_parse_whole(text, 1, 4, &value) || value == 3) return false;
  *out = (int)value;
  return true;
}

static bool parse_paper(const char *text, ox_paper *out) {
  for (int i = 0; i < OX_PAPER_COUNT; i++) {
    if (strcmp(text, ox_paper_name((ox_paper)i)) != 0) continue;
    *out = (ox_paper)i;
    return true;
  }
  return false;
}

static bool is_pdf(const char *path) {
  size_t length = strlen(path);
  const char *ending = length > 4 ? path + length - 4 : "";
  return strcmp(ending, ".pdf") == 0 || strcmp(ending, ".PDF") == 0;
}

int draw_plan_sheets(cli_io *io, draw_plan *p, const draw_wishes *w) {
  const char *odd = out_of_place(w);
  if (w->worksheet && w->key)
    return cli_wrong(io, _("--worksheet and --key are two files: draw twice with the same --seed"));
  if (p->ink) odd = "--ink";
  if (odd) return cli_wrong(io, _("%s is not for handouts (--worksheet, --key)"), odd);
  if (!is_pdf(p->path)) return cli_wrong(io, _("-o: %s: handouts are written as .pdf"), p->path);
  p->on_sheets = true;
  p->palette = OX_PALETTE_PRINT;
  p->overlays = (cli_overlay_plan){.preset = -1, .mistake = -1};
  p->sheets = (ox_sheets_options){.kind = w->key ? OX_SHEETS_KEY : OX_SHEETS_WORKSHEET,
                                  .across = w->across,
                                  .per_page = 2,
                                  .shuffled = w->seed != NULL,
                                  .program = PROGRAM};
  if (w->per_page && !parse_per_page(w->per_page, &p->sheets.per_page))
    return cli_wrong(io, _("--per-page: %s is not 1, 2 or 4"), w->per_page);
  if (w->paper && !parse_paper(w->paper, &p->sheets.paper))
    return cli_wrong(io, _("--paper: %s is not a4 or letter"), w->paper);
  return cli_parse_seed(io, w->seed, &p->sheets.seed) ? OX_CLI_DONE : OX_CLI_USAGE;
}

typedef struct {
  const draw_plan *p;
  const draw_scenes *s;
} handout;

static ox_status make(const void *what, ox_export_sink sink, void *context, const char **reason) {
  const handout *h = what;
  return ox_sheets_make(h->s->scenes, h->s->count, &h->p->sheets, sink, context, reason);
}

int draw_write_sheets(cli_io *io, const draw_plan *p, const draw_scenes *s) {
  handout h = {p, s};
  return draw_to_file(io, p->path, make, &h);
}
