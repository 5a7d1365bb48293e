/* A page: head, the holds in reading order, foot. */
#include "page.h"

#include <inttypes.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oxbow/text.h"

static const double MARGIN_PT = 34.0; /* 12 mm: inside what any printer reaches */
static const double GAP_PT = 18.0;
static const double TITLE_PT = 13.0, LINE_PT = 9.0, FOOT_PT = 8.0;
static const int SOURCE_LINES = 3;

typedef struct {
  const ox_sheets_options *o;
  const ox_scene *scenes;
  size_t total, pages, page; /* page from 0 */
  size_t count;
  sheet_cell cell[SHEET_PER_PAGE_MAX];
  ox_vec size;
} sheet_page;

static double inner_width(const sheet_page *p) {
  return p->size.x - 2.0 * MARGIN_PT;
}

static void order_words(const sheet_page *p, char *buf, size_t bytes) {
  char seed[24];
  snprintf(seed, sizeof seed, "%" PRIu64, p->o->seed); /* its letter differs between machines */
  if (p->o->shuffled)
    snprintf(buf, bytes, _("order from seed %s"), seed);
  else
    snprintf(buf, bytes, "%s", _("in the order of the lesson"));
}

/* --- head ---------------------------------------------------------------------------------- */

static void name_and_date(const sheet_page *p, const sheet_pen *pen, double y) {
  const char *const words[] = {C_("of the student", "Name"), C_("of the lesson", "Date")};
  double x = MARGIN_PT, width = inner_width(p);
  for (int i = 0; i < 2; i++) {
    double end = i == 0 ? MARGIN_PT + 0.62 * width : MARGIN_PT + width;
    double line = x + sheet_text_width(pen, words[i], LINE_PT, SHEET_PLAIN) + 5.0;
    sheet_text(pen, words[i], LINE_PT, SHEET_PLAIN, 1, x, y, width);
    sheet_line(pen, line, y + 11.0, end, y + 11.0);
    x = end + 14.0;
  }
}

/* Returns where the holds begin. */
static double head(const sheet_page *p, const sheet_pen *pen) {
  bool key = p->o->kind == OX_SHEETS_KEY;
  const char *title = p->scenes[0].title;
  char order[96], words[300];
  double width = inner_width(p), y = MARGIN_PT;
  sheet_ink(pen);
  const char *kinds[] = {_("Worksheet"), _("Answer key")};
  double kind = 8.0 + fmax(sheet_text_width(pen, kinds[0], TITLE_PT, SHEET_BOLD),
                           sheet_text_width(pen, kinds[1], TITLE_PT, SHEET_BOLD));
  sheet_text(pen, kinds[key], TITLE_PT, SHEET_BOLD | SHEET_RIGHT, 1,
             MARGIN_PT + width - kind, y, kind);
  y += sheet_text(pen, title && *title ? title : _("Holding patterns"), TITLE_PT, SHEET_BOLD, 1,
                  MARGIN_PT, y, width - kind - 12.0);
  order_words(p, order, sizeof order);
  snprintf(words, sizeof words,
           ox_text_count(
               "%zu hold, %s. True north is up; directions are magnetic unless they say true.",
               "%zu holds, %s. True north is up; directions are magnetic unless they say true.",
               p->total),
           p->total, order);
  y += sheet_text(pen, words, LINE_PT, SHEET_PLAIN, 1, MARGIN_PT, y + 1.0, width) + 1.0;
  if (key)
    sheet_text(pen, _("As flown by the technique given, from the first crossing of the fix to the "
                      "first circuit."),
               LINE_PT, SHEET_PLAIN, 1, MARGIN_PT, y + 5.0, width);
  else
    name_and_date(p, pen, y + 5.0);
  y += 22.0;
  sheet_line(pen, MARGIN_PT, y, MARGIN_PT + width, y);
  return y + 7.0;
}

/* --- foot ---------------------------------------------------------------------------------- */

static bool is_publication(const char *source) {
  const char *own[] = {_("geometry"), _("given with the case"), _("measured on the flight")};
  for (size_t i = 0; i < sizeof own / sizeof *own; i++)
    if (strcmp(source, own[i]) == 0) return false;
  return true;
}

/* Every source of the page's figures once. Which paragraph the entry heading comes from tells the
 * entry, so that a worksheet leaves it out. */
static void sources_words(const sheet_page *p, bool all, char *buf, size_t bytes) {
  size_t used = (size_t)snprintf(buf, bytes, "%s", _("Sources: "));
  bool first = true;
  for (size_t i = 0; i < p->count; i++)
    for (int k = 0; k < p->cell[i].answers.count; k++) {
      const sheet_answer *a = &p->cell[i].answers.answer[k];
      const char *source = a->source;
      if (!all && strcmp(a->key, SHEET_ENTRY_HEADING) == 0) continue;
      if (!is_publication(source) || strstr(buf, source) || used >= bytes) continue;
      used += (size_t)snprintf(buf + used, bytes - used, "%s%s", first ? "" : "; ", source);
      first = false;
    }
  if (used < bytes)
    snprintf(buf + used, bytes - used, "%s%s", first ? "" : "; ", _("the rest is geometry."));
}

/* Returns where the holds end. */
static double foot(const sheet_page *p, const sheet_pen *pen) {
  char sources[2400], left[160], right[64], order[96];
  double width = inner_width(p), bottom = p->size.y - MARGIN_PT;
  sources_words(p, true, sources, sizeof sources);
  order_words(p, order, sizeof order);
  snprintf(left, sizeof left, "%s, %s", p->o->program ? p->o->program : "Oxbow", order);
  snprintf(right, sizeof right, _("Page %zu of %zu"), p->page + 1, p->pages);
  double line = sheet_text_height(pen, left, FOOT_PT, SHEET_PLAIN, 1, width);
  double caution = sheet_text_height(pen, ox_words_caution_line(), FOOT_PT, SHEET_PLAIN, 2, width);
  double source = sheet_text_height(pen, sources, FOOT_PT, SHEET_PLAIN, SOURCE_LINES, width);
  sources_words(p, p->o->kind == OX_SHEETS_KEY, sources, sizeof sources);
  sheet_ink(pen);
  double y = bottom - line;
  sheet_text(pen, left, FOOT_PT, SHEET_PLAIN, 1, MARGIN_PT, y, 0.7 * width);
  sheet_text(pen, right, FOOT_PT, SHEET_RIGHT, 1, MARGIN_PT + 0.7 * width, y, 0.3 * width);
  y -= caution;
  sheet_text(pen, ox_words_caution_line(), FOOT_PT, SHEET_PLAIN, 2, MARGIN_PT, y, width);
  y -= source;
  sheet_text(pen, sources, FOOT_PT, SHEET_PLAIN, SOURCE_LINES, MARGIN_PT, y, width);
  y -= 4.0;
  sheet_line(pen, MARGIN_PT, y, MARGIN_PT + width, y);
  return y - 3.0;
}

/* --- the holds ----------------------------------------------------------------------------- */

/* Columns and rows of a full page; a page that is not full keeps its places. */
static void grid(const ox_sheets_options *o, int *columns, int *rows) {
  *columns = o->per_page == 4 || (o->per_page == 2 && o->across) ? 2 : 1;
  *rows = o->per_page / *columns;
}

static bool holds(const sheet_page *p, const sheet_pen *pen, double top, double bottom) {
  int columns, rows;
  grid(p->o, &columns, &rows);
  double width = (inner_width(p) - (columns - 1) * GAP_PT) / columns;
  double height = (bottom - top - (rows - 1) * 0.6 * GAP_PT) / rows;
  for (size_t i = 0; i < p->count; i++) {
    int column = (int)i % columns, row = (int)i / columns;
    sheet_box at = {MARGIN_PT + column * (width + GAP_PT), top + row * (height + 0.6 * GAP_PT),
                    width, height};
    if (!sheet_cell_draw(pen, &p->cell[i], at)) return false;
  }
  return true;
}

static bool draw(sheet_page *p, cairo_t *cr) {
  sheet_pen pen;
  sheet_pen_open(&pen, cr);
  cairo_save(cr);
  cairo_set_source_rgb(cr, 1.0, 1.0, 1.0);
  cairo_paint(cr);
  double legend = sheet_legend_height(p->cell, p->count, inner_width(p));
  double top = head(p, &pen), bottom = foot(p, &pen) - legend;
  sheet_box key = {MARGIN_PT, bottom, inner_width(p), legend};
  bool drawn = legend >= 0.0 && sheet_legend_draw(&pen, p->cell, p->count, key) &&
               holds(p, &pen, top, bottom - 6.0);
  cairo_restore(cr);
  sheet_pen_close(&pen);
  return drawn;
}

/* Which holds are on the page, with their answers. */
static bool gather(sheet_page *p) {
  size_t *order = calloc(p->total, sizeof *order);
  if (!order) return false;
  ox_sheets_order(order, p->total, p->o);
  size_t first = p->page * (size_t)p->o->per_page;
  bool good = true;
  while (good && p->count < (size_t)p->o->per_page && first + p->count < p->total) {
    size_t i = p->count++;
    sheet_cell *cell = &p->cell[i];
    const ox_scene *scene = &p->scenes[order[first + i]];
    *cell = (sheet_cell){.scene = scene, .number = first + i + 1, .kind = p->o->kind};
    good = sheet_answers_make(scene->c, scene->flight, &cell->answers);
  }
  free(order);
  return good;
}

static const char *fault_of(size_t count, const ox_sheets_options *o, size_t page) {
  if (count == 0) return N_("There is nothing to draw.");
  if (o->per_page != 1 && o->per_page != 2 && o->per_page != 4)
    return N_("A page has 1, 2 or 4 holds.");
  if ((unsigned)o->paper >= OX_PAPER_COUNT) return N_("The paper is A4 or Letter.");
  if (page >= ox_sheets_pages(count, o)) return N_("There is no such page.");
  return NULL;
}

ox_status ox_sheets_draw(cairo_t *cr, const ox_scene *scenes, size_t count,
                         const ox_sheets_options *o, size_t page, const char **error) {
  const char *fault = fault_of(count, o, page);
  if (!fault) {
    sheet_page *p = calloc(1, sizeof *p);
    if (p) {
      *p = (sheet_page){.o = o, .scenes = scenes, .total = count, .page = page,
                        .pages = ox_sheets_pages(count, o), .size = ox_sheets_size(o)};
      if (!gather(p) || !draw(p, cr)) fault = N_("There is not enough memory for the page.");
      for (size_t i = 0; i < p->count; i++) sheet_answers_clear(&p->cell[i].answers);
      free(p);
    } else {
      fault = N_("There is not enough memory for the page.");
    }
  }
  if (fault && error) *error = _(fault);
  return fault ? OX_ERROR : OX_OK;
}
