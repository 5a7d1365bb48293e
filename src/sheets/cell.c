/* One hold on a page: what is given, the picture, the answers.
 *
 * Every place is measured from the whole picture and the full answers, for worksheet and key
 * alike: both then have the same lay-out, and the map the same scale. */
#include <math.h>
#include <stdio.h>

#include "oxbow/text.h"
#include "page.h"

static const double HEAD_PT = 10.0, TEXT_PT = 8.2, LABEL_PT = 8.0, VALUE_PT = 9.5;
static const double ROW_PT = 29.0;  /* a label and a blank to write in under it */
static const double RULE_PT = 17.0; /* between ruled lines */
static const int RULES_MOST = 8;
static const double GAP_PT = 6.0;
static const double SCALE_PT = 14.0; /* a line for the scale bar */
static const double WHY_LEAST_PT = 40.0;
static const double BESIDE = 1.3;   /* width over height from which on answers stand beside */
static const double ROOM_FOR_WIND_PT = 230.0;
static const int GIVEN_LINES = 6;

/* --- the picture --------------------------------------------------------------------------- */

ox_scene sheet_scene(const sheet_cell *cell, double width, double height) {
  ox_scene s = *cell->scene;
  double side = fmin(width, height);
  s.framed = true;
  s.no_ground = false;
  s.layers = (s.layers | OX_LAYER_FURNITURE) &
             ~(unsigned)(OX_LAYER_TRIANGLE | OX_LAYER_CHART | OX_LAYER_AIRCRAFT);
  if (width < ROOM_FOR_WIND_PT) s.layers &= ~(unsigned)OX_LAYER_WIND; /* the words above say it */
  s.text_scale = fmax(1.0, SHEET_SIDE_FOR_TEXT_PT / side);
  s.fit = NULL;
  s.hide_answer = false;
  return s;
}

/* Draws the picture and, under it, its scale. */
static bool picture(const sheet_pen *pen, const sheet_cell *cell, sheet_box at) {
  double height = at.height - SCALE_PT;
  ox_scene s = sheet_scene(cell, at.width, height);
  ox_fit fit = ox_picture_fit_of(&s, 1, at.width, height);
  s.fit = &fit;
  s.hide_answer = cell->kind == OX_SHEETS_WORKSHEET;
  ox_picture *shown = ox_picture_new(&s, at.width, height);
  if (!shown) return false;
  cairo_save(pen->cr);
  cairo_translate(pen->cr, at.x, at.y);
  cairo_rectangle(pen->cr, 0.0, 0.0, at.width, height);
  cairo_clip(pen->cr);
  ox_picture_draw(shown, pen->cr, (double)NAN);
  cairo_restore(pen->cr);
  ox_picture_scale_bar(shown, pen->cr, at.x, at.y + height + 2.0);
  ox_picture_free(shown);
  sheet_grey(pen);
  cairo_rectangle(pen->cr, at.x, at.y, at.width, height);
  cairo_set_line_width(pen->cr, 0.5);
  cairo_stroke(pen->cr);
  return true;
}

/* --- the answers --------------------------------------------------------------------------- */

static int columns_of(double width) {
  return width >= 240.0 ? 3 : width >= 140.0 ? 2 : 1;
}

static double rows_height(const sheet_cell *cell, double width) {
  int columns = columns_of(width);
  return ROW_PT * ((cell->answers.count + columns - 1) / columns);
}

/* A label over a line; on the key the value stands on the line. */
static void blank(const sheet_pen *pen, const sheet_cell *cell, const sheet_answer *a,
                  sheet_box at) {
  double line = at.y + at.height - 1.0, size = VALUE_PT;
  sheet_grey(pen);
  sheet_text(pen, a->label, LABEL_PT, SHEET_PLAIN, 1, at.x, at.y + 3.0, at.width);
  sheet_line(pen, at.x, line, at.x + at.width, line);
  if (cell->kind == OX_SHEETS_WORKSHEET) return;
  sheet_ink(pen);
  while (size > SHEET_LEAST_PT && sheet_text_width(pen, a->value, size, SHEET_BOLD) > at.width)
    size = fmax(SHEET_LEAST_PT, size - 0.25);
  sheet_text(pen, a->value, size, SHEET_BOLD, 1, at.x, line - 1.35 * size, at.width);
}

/* Reasons in order of what is learnt from them, as many as there is room for. */
static void reasons(const sheet_pen *pen, const sheet_cell *cell, sheet_box at) {
  static const int order[SHEET_ANSWERS_MAX] = {0, 2, 3, 1, 4, 5};
  double y = at.y, bottom = at.y + at.height;
  char words[1200];
  sheet_ink(pen);
  for (int k = -1; k < SHEET_ANSWERS_MAX; k++) {
    const sheet_answer *a = k >= 0 ? &cell->answers.answer[order[k]] : NULL;
    if (a ? order[k] >= cell->answers.count : !cell->answers.remark[0]) continue;
    if (a)
      snprintf(words, sizeof words, "%s: %s.", a->label, a->why);
    else
      snprintf(words, sizeof words, "%s", cell->answers.remark);
    double high = sheet_text_height(pen, words, SHEET_LEAST_PT, SHEET_PLAIN, 8, at.width);
    if (y + high > bottom) continue;
    sheet_text(pen, words, SHEET_LEAST_PT, SHEET_PLAIN, 8, at.x, y, at.width);
    y += high + 2.0;
  }
}

static void ruled(const sheet_pen *pen, sheet_box at) {
  sheet_grey(pen);
  const char *why = C_("before lines to write on", "Why");
  sheet_text(pen, why, LABEL_PT, SHEET_PLAIN, 1, at.x, at.y + RULE_PT - 11.0, at.width);
  double indent = sheet_text_width(pen, why, LABEL_PT, SHEET_PLAIN) + 4.0;
  int lines = (int)fmin(RULES_MOST, floor((at.height + 0.01) / RULE_PT));
  for (int i = 1; i <= lines; i++) {
    double y = at.y + i * RULE_PT;
    sheet_line(pen, at.x + indent, y, at.x + at.width, y);
    indent = 0.0;
  }
}

static void answers(const sheet_pen *pen, const sheet_cell *cell, sheet_box at) {
  int columns = columns_of(at.width);
  double gap = 2.0 * GAP_PT, width = (at.width - (columns - 1) * gap) / columns;
  for (int i = 0; i < cell->answers.count; i++) {
    sheet_box one = {at.x + (i % columns) * (width + gap), at.y + (i / columns) * ROW_PT, width,
                     ROW_PT};
    blank(pen, cell, &cell->answers.answer[i], one);
  }
  double used = rows_height(cell, at.width) + GAP_PT;
  sheet_box rest = {at.x, at.y + used, at.width, at.height - used};
  if (cell->kind == OX_SHEETS_WORKSHEET)
    ruled(pen, rest);
  else
    reasons(pen, cell, rest);
}

/* --- together ------------------------------------------------------------------------------ */

/* The name may tell the answer, so that only the key says it; room is made for it on both. */
static double head(const sheet_pen *pen, const sheet_cell *cell, sheet_box at) {
  char number[64], words[OX_CASE_NAME_BYTES + 80];
  const char *name = cell->scene->c->name;
  snprintf(number, sizeof number, _("Hold %zu"), cell->number);
  snprintf(words, sizeof words, "%s%s%s", number, *name ? "  " : "", name);
  sheet_ink(pen);
  sheet_text(pen, cell->kind == OX_SHEETS_KEY ? words : number, HEAD_PT, SHEET_BOLD, 2, at.x, at.y,
             at.width);
  double y = at.y + sheet_text_height(pen, words, HEAD_PT, SHEET_BOLD, 2, at.width) + 1.0;
  y += sheet_text(pen, cell->answers.given, TEXT_PT, SHEET_PLAIN, GIVEN_LINES, at.x, y, at.width);
  return y + 0.7 * GAP_PT - at.y;
}

bool sheet_cell_draw(const sheet_pen *pen, const sheet_cell *cell, sheet_box at) {
  double top = head(pen, cell, at);
  sheet_box body = {at.x, at.y + top, at.width, at.height - top};
  if (body.width >= BESIDE * body.height) {
    double aside = fmin(230.0, 0.46 * body.width);
    sheet_box left = {body.x, body.y, body.width - aside - 2.0 * GAP_PT, body.height};
    sheet_box right = {body.x + body.width - aside, body.y, aside, body.height};
    answers(pen, cell, right);
    return picture(pen, cell, left);
  }
  double room = rows_height(cell, body.width) + GAP_PT + fmax(WHY_LEAST_PT, 0.15 * at.height);
  sheet_box upper = {body.x, body.y, body.width, body.height - room - GAP_PT};
  sheet_box lower = {body.x, body.y + body.height - room, body.width, room};
  answers(pen, cell, lower);
  return picture(pen, cell, upper);
}
