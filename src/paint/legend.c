/* The legend: which lines it names, in which words, and how they are drawn.
 *
 * Its room is reserved before the lines are built, so the rows are counted from the flight; a row
 * whose line then turns out to be nowhere in the map is left out. Which ones are is settled once a
 * picture: where the world moves, lines come into the map and go, and the legend must not. */
#include <math.h>
#include <stdio.h>

#include "oxbow/text.h"
#include "paint_private.h"

static const double ROW_EM = 1.45, SAMPLE_EM = 2.8, WORDS_AT_EM = 3.4;
static const double NAME_EM = 11.5; /* a comparison's name wraps beyond this width */

/* --- which rows ---------------------------------------------------------------------------- */

static bool has_part(const ox_flight *f, ox_part part) {
  for (size_t i = 0; i < f->leg_count; i++)
    if (f->legs[i].part == part) return true;
  return false;
}

static const ox_other *other_of(const ox_picture *p, ox_line_kind kind) {
  for (size_t i = 0; i < p->other_count; i++)
    if (p->others[i].kind == kind) return &p->others[i];
  return NULL;
}

static bool is_named(ox_line_kind kind) {
  return kind == OX_LINE_COMPARE || kind == OX_LINE_OTHER_1 || kind == OX_LINE_OTHER_2;
}

static bool has_path(const ox_picture *p, ox_path_kind kind) {
  for (size_t i = 0; i < p->scene.path_count; i++)
    if (p->scene.paths[i].kind == kind && p->scene.paths[i].count > 1) return true;
  return false;
}

/* What is flown after the fix. */
static bool tells_answer(ox_line_kind kind) {
  return kind == OX_LINE_TRACK || kind == OX_LINE_LATER || kind == OX_LINE_ENTRY ||
         kind == OX_LINE_STILL_AIR || is_named(kind);
}

/* Before there are lines: whether one of the kind may be drawn. */
static bool may_be_used(const ox_picture *p, ox_line_kind kind) {
  const ox_flight *f = p->scene.flight;
  bool track = ox_has_layer(p, OX_LAYER_TRACK);
  switch (kind) {
  case OX_LINE_TRACK: return track && has_part(f, OX_PART_CIRCUIT);
  case OX_LINE_LATER:
    return track && (p->air >= 0.5 ? f->circuit_count > 1 : ox_later_differs(f));
  case OX_LINE_ENTRY: return track && has_part(f, OX_PART_ENTRY);
  case OX_LINE_ARRIVAL: return track && has_part(f, OX_PART_ARRIVAL);
  case OX_LINE_COMPARE:
  case OX_LINE_OTHER_1:
  case OX_LINE_OTHER_2:
    return track && other_of(p, kind) && other_of(p, kind)->flight->leg_count > 0;
  case OX_LINE_ROUTE: return has_path(p, OX_PATH_ROUTE);
  case OX_LINE_MISSED: return has_path(p, OX_PATH_MISSED);
  case OX_LINE_ALTERNATIVE: return has_path(p, OX_PATH_ALTERNATIVE);
  case OX_LINE_SKETCH: return has_path(p, OX_PATH_SKETCH);
  case OX_LINE_STILL_AIR:
    return ox_has_layer(p, OX_LAYER_STILL_AIR) && f->setup.wind_speed_kt >= 0.5;
  case OX_LINE_SPREAD: return p->spread != NULL;
  case OX_LINE_AREA: return p->scene.area != NULL;
  case OX_LINE_LIMIT: return ox_has_limiting_radial(p) || ox_has_limiting_distance(p);
  case OX_LINE_ABEAM: return ox_has_layer(p, OX_LAYER_COURSE);
  case OX_LINE_COURSE: /* it carries its own figure */
  case OX_LINE_COUNT: break;
  }
  return false;
}

/* Once there are: whether one of the kind is in the map. */
static bool is_there(const ox_picture *p, ox_line_kind kind) {
  const ox_track_lines *l = &p->lines;
  switch (kind) {
  case OX_LINE_TRACK: return l->track.count > 0;
  case OX_LINE_LATER: return p->air >= 0.5 || l->later.count > 0;
  case OX_LINE_ENTRY: return l->entry.count > 0;
  case OX_LINE_ARRIVAL: return l->arrival.count > 0;
  case OX_LINE_COMPARE:
  case OX_LINE_OTHER_1:
  case OX_LINE_OTHER_2: return other_of(p, kind) && other_of(p, kind)->line.count > 0;
  case OX_LINE_ROUTE: return p->paths[OX_PATH_ROUTE].count > 0;
  case OX_LINE_MISSED: return p->paths[OX_PATH_MISSED].count > 0;
  case OX_LINE_ALTERNATIVE: return p->paths[OX_PATH_ALTERNATIVE].count > 0;
  case OX_LINE_SKETCH: return p->paths[OX_PATH_SKETCH].count > 0;
  case OX_LINE_STILL_AIR: return l->still_air.count > 0;
  case OX_LINE_SPREAD: return p->spread != NULL;
  case OX_LINE_AREA: return p->area.corner_count > 0;
  case OX_LINE_LIMIT: return p->limits.radial.count > 0 || p->limits.distance.count > 0;
  case OX_LINE_ABEAM: return p->course.abeam.count > 0;
  case OX_LINE_COURSE:
  case OX_LINE_COUNT: break;
  }
  return false;
}

/* --- words --------------------------------------------------------------------------------- */

static void words_of(const ox_picture *p, ox_line_kind kind, char *buf, size_t bytes) {
  static const char *const plain[OX_LINE_COUNT] = {
      [OX_LINE_TRACK] = N_("track over the ground"),
      [OX_LINE_LATER] = N_("later circuits"),        [OX_LINE_ENTRY] = N_("entry"),
      [OX_LINE_ARRIVAL] = N_("arrival"),             [OX_LINE_STILL_AIR] = N_("hold in still air"),
      [OX_LINE_AREA] = N_("protected area,\nillustrative only"),
      [OX_LINE_ROUTE] = N_("route"),                 [OX_LINE_MISSED] = N_("missed approach"),
      [OX_LINE_ALTERNATIVE] = N_("another way"),     [OX_LINE_SKETCH] = N_("track as expected"),
      [OX_LINE_ABEAM] = N_("abeam the fix")};
  char runs[24];
  const ox_other *other = other_of(p, kind); /* held rows are kept beyond it */
  const char *name = other ? other->name : NULL;
  switch (kind) {
  case OX_LINE_COMPARE:
  case OX_LINE_OTHER_1:
  case OX_LINE_OTHER_2:
    snprintf(buf, bytes, "%s", name && *name ? name : C_("a line", "compared"));
    break;
  case OX_LINE_SPREAD:
    ox_number_text(runs, sizeof runs, (double)p->scene.spread->runs, 0);
    snprintf(buf, bytes, _("where 5 %% or more\nof %s runs went"), runs);
    break;
  case OX_LINE_TRACK:
    snprintf(buf, bytes, "%s", p->air >= 0.5 ? _("path through the air") : _(plain[kind]));
    break;
  case OX_LINE_LIMIT:
    snprintf(buf, bytes, "%s", !ox_has_limiting_radial(p)     ? _("limiting distance")
                               : !ox_has_limiting_distance(p) ? _("limiting radial")
                                                              : _("limiting radial, distance"));
    break;
  case OX_LINE_LATER:
    snprintf(buf, bytes, "%s", p->air >= 0.5 ? _("the stretch before") : _(plain[kind]));
    break;
  default: snprintf(buf, bytes, "%s", plain[kind] ? _(plain[kind]) : ""); break;
  }
}

static const char FIRST_CIRCUIT[] = N_("track, first circuit");

/* Measured with whichever words are wider: which they are depends on the language. */
static void widen(const ox_picture *p, ox_lettering *text, const char *other) {
  ox_lettering wider = {0};
  ox_lettering_make(&wider, p->typesetter, other, text->size, text->style, text->max_width);
  if (wider.width > text->width) ox_lettering_change(text, p->typesetter, other);
  ox_lettering_clear(&wider);
}

static void make_words(ox_picture *p, ox_line_kind kind) {
  char words[400];
  bool named = is_named(kind);
  words_of(p, kind, words, sizeof words);
  ox_lettering_make(&p->furniture.legend.words[kind], p->typesetter, words, p->size.small,
                    named ? OX_TEXT_TWO_LINES : OX_TEXT_PLAIN,
                    named ? NAME_EM * p->size.small : 0.0);
}

void ox_legend_make(ox_picture *p) {
  ox_legend *l = &p->furniture.legend;
  l->columns = 1;
  for (int i = 0; i < OX_LINE_COUNT; i++) {
    ox_line_kind kind = (ox_line_kind)i;
    if (!may_be_used(p, kind)) continue;
    make_words(p, kind);
    if (kind == OX_LINE_TRACK) widen(p, &l->words[i], _(FIRST_CIRCUIT));
    l->row[l->count++] = kind;
  }
}

void ox_legend_hold(ox_picture *p, const ox_legend *held) {
  ox_legend *l = &p->furniture.legend;
  l->columns = held->columns;
  l->count = 0;
  for (int i = 0; i < held->count; i++) {
    ox_line_kind kind = held->row[i];
    if (!held->used[kind]) continue; /* there is no place for it */
    if (!l->words[kind].layout) make_words(p, kind);
    l->row[l->count] = kind;
    l->place[l->count++] = held->place[i];
  }
}

void ox_legend_clear(ox_legend *legend) {
  for (int i = 0; i < OX_LINE_COUNT; i++) ox_lettering_clear(&legend->words[i]);
}

/* --- room ---------------------------------------------------------------------------------- */

static double row_height(const ox_picture *p, ox_line_kind kind) {
  double e = p->size.small;
  return fmax(ROW_EM * e, p->furniture.legend.words[kind].height + 0.3 * e);
}

static double column_width(const ox_picture *p) {
  const ox_legend *l = &p->furniture.legend;
  double width = 0.0;
  for (int i = 0; i < l->count; i++) width = fmax(width, l->words[l->row[i]].width);
  return width + WORDS_AT_EM * p->size.small;
}

/* Rows in the first of two columns, so that both are about as high. */
static int first_rows(const ox_legend *l) {
  return (l->count + l->columns - 1) / l->columns;
}

ox_extent ox_legend_extent(const ox_picture *p) {
  const ox_legend *l = &p->furniture.legend;
  if (l->count == 0) return (ox_extent){0.0, 0.0};
  double width = column_width(p), most = 0.0, height = 0.0;
  int split = first_rows(l);
  for (int i = 0; i < l->count; i++) {
    if (i % split == 0) height = 0.0;
    height += row_height(p, l->row[i]);
    most = fmax(most, height);
  }
  return (ox_extent){l->columns * width + (l->columns - 1) * p->size.small, most};
}

bool ox_legend_shorten(ox_picture *p) {
  /* Lines that have a label of their own in the map. */
  static const ox_line_kind order[] = {OX_LINE_LIMIT, OX_LINE_ABEAM, OX_LINE_ARRIVAL,
                                       OX_LINE_ENTRY, OX_LINE_AREA, OX_LINE_COMPARE,
                                       OX_LINE_OTHER_1, OX_LINE_OTHER_2};
  ox_legend *l = &p->furniture.legend;
  for (size_t k = 0; k < sizeof order / sizeof *order; k++)
    for (int i = 0; i < l->count; i++) {
      if (l->row[i] != order[k]) continue;
      for (l->count--; i < l->count; i++) l->row[i] = l->row[i + 1];
      return true;
    }
  return false;
}

bool ox_legend_names(const ox_picture *p, ox_line_kind kind) {
  const ox_legend *l = &p->furniture.legend;
  bool shown = p->furniture.legend_at.width > 0.0 && ox_has_layer(p, OX_LAYER_FURNITURE);
  for (int i = 0; shown && i < l->count; i++)
    if (l->row[i] == kind) return true;
  return false;
}

/* --- settled ------------------------------------------------------------------------------- */

/* In a column beside the map it stands on the caution, in a row below the map it hangs. */
static double top_of(const ox_picture *p, bool upright) {
  const ox_rect *at = &p->furniture.legend_at;
  const ox_legend *l = &p->furniture.legend;
  double used = 0.0;
  for (int i = 0; i < l->count; i++)
    if (l->used[l->row[i]]) used += row_height(p, l->row[i]);
  return upright ? at->y : at->y + at->height - used;
}

static void place_rows(ox_picture *p) {
  const ox_rect *at = &p->furniture.legend_at;
  ox_legend *l = &p->furniture.legend;
  double x = at->x, y = top_of(p, ox_is_upright(p));
  int split = first_rows(l);
  for (int i = 0; i < l->count; i++) {
    if (i > 0 && i % split == 0) {
      x += column_width(p) + p->size.small;
      y = at->y;
    }
    l->place[i] = (ox_vec){x, y};
    if (l->used[l->row[i]]) y += row_height(p, l->row[i]);
  }
}

void ox_legend_settle(ox_picture *p) {
  ox_legend *l = &p->furniture.legend;
  char words[400];
  for (int i = 0; i < OX_LINE_COUNT; i++) {
    ox_line_kind kind = (ox_line_kind)i;
    bool hidden = p->scene.hide_answer && tells_answer(kind);
    l->used[i] = p->moves ? may_be_used(p, kind) && !hidden : is_there(p, kind);
  }
  /* The bold line is the whole track or the first circuit only. No words take more room than those
   * it was measured with. */
  bool first = l->used[OX_LINE_LATER] && p->air < 0.5;
  words_of(p, OX_LINE_TRACK, words, sizeof words);
  ox_lettering_change(&l->words[OX_LINE_TRACK], p->typesetter, first ? _(FIRST_CIRCUIT) : words);
  if (l->count > 0 && !ox_held_layout(p)) place_rows(p);
}

/* --- drawing ------------------------------------------------------------------------------- */

static void draw_row(const ox_picture *p, cairo_t *cr, ox_line_kind kind, double x, double y) {
  const ox_lettering *words = &p->furniture.legend.words[kind];
  double e = p->size.small, height = row_height(p, kind);
  double middle = y + fmin(height, ROW_EM * e) / 2; /* level with the first of two lines */
  cairo_move_to(cr, x, middle);
  cairo_line_to(cr, x + SAMPLE_EM * e, middle);
  ox_line_style_set(p, cr, kind);
  cairo_stroke(cr);
  ox_hue_set(p, cr, OX_HUE_QUIET);
  ox_lettering_show(words, cr, x + WORDS_AT_EM * e, y + (height - words->height) / 2);
}

void ox_legend_draw(const ox_picture *p, cairo_t *cr) {
  const ox_legend *l = &p->furniture.legend;
  if (p->furniture.legend_at.width <= 0.0) return;
  for (int i = 0; i < l->count; i++)
    if (l->used[l->row[i]]) draw_row(p, cr, l->row[i], l->place[i].x, l->place[i].y);
}

/* --- among the words of a page ------------------------------------------------------------- */

double ox_picture_scale_bar(const ox_picture *p, cairo_t *cr, double x, double y) {
  const ox_furniture *f = &p->furniture;
  double e = p->size.small, length = f->scale_nm * p->home.dev_per_nm, height = ROW_EM * e;
  if (!(f->scale_nm > 0.0)) return 0.0;
  if (!cr) return height;
  cairo_save(cr);
  cairo_new_path(cr);
  ox_scale_bar_draw(p, cr, x + 0.1 * e, y + height / 2 + 0.22 * e);
  ox_lettering_show(&f->scale_words, cr, x + length + 0.7 * e,
                    y + (height - f->scale_words.height) / 2);
  cairo_new_path(cr);
  cairo_restore(cr);
  return height;
}

/* The first picture that has a line of the kind. */
static const ox_picture *user_of(const ox_picture *const *pictures, size_t count,
                                 ox_line_kind kind) {
  for (size_t i = 0; i < count; i++) {
    const ox_legend *l = &pictures[i]->furniture.legend;
    for (int k = 0; k < l->count; k++)
      if (l->row[k] == kind && l->used[kind]) return pictures[i];
  }
  return NULL;
}

double ox_picture_legend(const ox_picture *const *pictures, size_t count, cairo_t *cr, double x,
                         double y, double width) {
  double across = 0.0, used = 0.0, line = 0.0;
  if (cr) cairo_save(cr);
  if (cr) cairo_new_path(cr);
  for (int i = 0; i < OX_LINE_COUNT; i++) {
    ox_line_kind kind = (ox_line_kind)i;
    const ox_picture *p = user_of(pictures, count, kind);
    if (!p) continue;
    double e = p->size.small, broad = WORDS_AT_EM * e + p->furniture.legend.words[kind].width;
    if (across > 0.0 && across + broad > width) {
      used += line;
      across = line = 0.0;
    }
    if (cr) draw_row(p, cr, kind, x + across, y + used);
    across += broad + 1.4 * e;
    line = fmax(line, row_height(p, kind));
  }
  if (cr) cairo_new_path(cr);
  if (cr) cairo_restore(cr);
  return used + line;
}
